//! Customers and vehicles that the shop knows already: found by words, offered to whoever
//! takes one in, and the same that was written down twice.

use super::row::{OrderRow, rows_of};
use super::story;
use crate::phrases::order as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::customer_of;
use repair::{CustomerId, Field, OdometerAt, VehicleId};

/// A vehicle on one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownVehicle {
    /// Its name in the record.
    pub vehicle: String,
    /// Maker, model, year.
    pub label: String,
    pub plate: String,
    pub vin: String,
    /// Whose it is, by name in the record.
    pub customer: Option<String>,
    /// What its owner is called.
    pub owner: String,
    pub phone: String,
    /// The order on which it is here now.
    pub here: Option<u64>,
    /// The day of its last visit, and what the odometer showed.
    pub last: Option<(String, Option<String>)>,
}

/// A customer on one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownCustomer {
    /// Their name in the record.
    pub customer: String,
    pub name: String,
    pub phone: String,
    pub mail: String,
    pub address: String,
    /// How many vehicles of theirs are known.
    pub vehicles: usize,
}

/// What is typed while somebody is taken in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TakenIn {
    pub plate: String,
    pub vin: String,
    pub name: String,
    pub phone: String,
}

/// So few are offered that they are read at a glance.
const MOST_OFFERED: usize = 4;
/// What is shorter says nothing yet.
const SHORTEST: usize = 3;
/// Two letters of a plate are many plates, but three are few.
const SHORTEST_DIGITS: usize = 4;

/// Vehicles found by words, the first few.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn vehicles_saying(
    snap: &Snapshot<'_>,
    words: &str,
    most: usize,
) -> Result<Vec<KnownVehicle>, Trouble> {
    let found = snap.world().vehicles_saying(words, most)?;
    found.iter().map(|id| vehicle(snap, id)).collect()
}

/// Customers found by words, the first few.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn customers_saying(
    snap: &Snapshot<'_>,
    words: &str,
    most: usize,
) -> Result<Vec<KnownCustomer>, Trouble> {
    let found = snap.world().customers_saying(words, most)?;
    found.iter().map(|id| customer(snap, id)).collect()
}

/// Every vehicle by its plate, some at a time: from after this key. Each with its key.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn vehicles_from(
    snap: &Snapshot<'_>,
    after: &str,
    most: usize,
) -> Result<Vec<(String, KnownVehicle)>, Trouble> {
    let found = snap.world().vehicles_from(after, most)?;
    let each = found.into_iter();
    each.map(|(key, id)| Ok((key, vehicle(snap, &id)?)))
        .collect()
}

/// Every customer by name, likewise.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn customers_from(
    snap: &Snapshot<'_>,
    after: &str,
    most: usize,
) -> Result<Vec<(String, KnownCustomer)>, Trouble> {
    let found = snap.world().customers_from(after, most)?;
    let each = found.into_iter();
    each.map(|(key, id)| Ok((key, customer(snap, &id)?)))
        .collect()
}

/// What is known that may be meant by what is typed: vehicles by plate and identification
/// number, customers by telephone number and name.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn offered(
    snap: &Snapshot<'_>,
    typed: &TakenIn,
) -> Result<(Vec<KnownVehicle>, Vec<KnownCustomer>), Trouble> {
    let world = snap.world();
    let long = |text: &str, shortest: usize| {
        text.chars().filter(|c| c.is_alphanumeric()).count() >= shortest
    };
    let mut vehicles: Vec<VehicleId> = Vec::new();
    for text in [&typed.vin, &typed.plate] {
        if long(text, SHORTEST) {
            vehicles.extend(world.vehicles_saying(text, MOST_OFFERED)?);
        }
    }
    let mut customers: Vec<CustomerId> = Vec::new();
    if long(&typed.phone, SHORTEST_DIGITS) {
        customers.extend(world.customers_saying(&typed.phone, MOST_OFFERED)?);
    }
    if long(&typed.name, SHORTEST) {
        customers.extend(world.customers_saying(&typed.name, MOST_OFFERED)?);
    }
    let mut seen = Vec::new();
    vehicles.retain(|id| new(&mut seen, id.as_str()));
    customers.retain(|id| new(&mut seen, id.as_str()));
    vehicles.truncate(MOST_OFFERED);
    customers.truncate(MOST_OFFERED);
    let vehicles = vehicles.iter().map(|id| vehicle(snap, id));
    let customers = customers.iter().map(|id| customer(snap, id));
    Ok((
        vehicles.collect::<Result<_, _>>()?,
        customers.collect::<Result<_, _>>()?,
    ))
}

fn new(seen: &mut Vec<String>, name: &str) -> bool {
    let is_new = !seen.iter().any(|one| one == name);
    if is_new {
        seen.push(name.to_owned());
    }
    is_new
}

/// A vehicle as it is known.
///
/// # Errors
/// [`Trouble`]: there is none of that name, or the record cannot be read.
pub fn vehicle(snap: &Snapshot<'_>, id: &VehicleId) -> Result<KnownVehicle, Trouble> {
    let world = snap.world();
    let vehicle = world.vehicle(id)?;
    if vehicle.is_blank() {
        return Err(Trouble::not_found(words::no_vehicle()));
    }
    let text = |field| {
        let words = vehicle.text(field).words;
        snap.texts().text_of(words).unwrap_or_default()
    };
    let owner = vehicle.customer().map(|owner| world.customer(owner));
    let owner = owner.transpose()?;
    let of_owner = |field| {
        let words = owner.as_ref().and_then(|owner| owner.text(field).words);
        snap.texts().text_of(words).unwrap_or_default()
    };
    let goes_by = world.same_vehicles(id).into_iter().next();
    let orders = world.orders_of_vehicle(id)?;
    let mut here = None;
    let mut last = None;
    if let Some((number, order)) = orders.first() {
        let order = world.order(order)?;
        let over =
            repair::papers::handed_over(&order).is_some() || repair::papers::is_voided(&order);
        here = (!over).then_some(*number);
        let opened = order.decisions().first().map(|decided| decided.stamp.at);
        last = opened.map(|at| {
            let read = |at| crate::doubts::odometer(&order, at);
            let reading = read(OdometerAt::Out).or_else(|| read(OdometerAt::In));
            (story::dated(&snap.rules(), at), reading)
        });
    }
    Ok(KnownVehicle {
        vehicle: goes_by.as_ref().unwrap_or(id).as_str().to_owned(),
        label: text(Field::Label),
        plate: text(Field::Plate),
        vin: text(Field::Vin),
        customer: vehicle.customer().map(|owner| {
            let goes_by = world.same_customers(owner).into_iter().next();
            goes_by.as_ref().unwrap_or(owner).as_str().to_owned()
        }),
        owner: of_owner(Field::Name),
        phone: of_owner(Field::Phone),
        here,
        last,
    })
}

/// A customer as they are known.
///
/// # Errors
/// [`Trouble`]: there is none of that name, or the record cannot be read.
pub fn customer(snap: &Snapshot<'_>, id: &CustomerId) -> Result<KnownCustomer, Trouble> {
    let world = snap.world();
    let known = world.customer(id)?;
    if known.is_blank() {
        return Err(Trouble::not_found(words::no_customer()));
    }
    let text = |field| {
        let words = known.text(field).words;
        snap.texts().text_of(words).unwrap_or_default()
    };
    let goes_by = world.same_customers(id).into_iter().next();
    Ok(KnownCustomer {
        customer: goes_by.as_ref().unwrap_or(id).as_str().to_owned(),
        name: text(Field::Name),
        phone: text(Field::Phone),
        mail: text(Field::Mail),
        address: match text(Field::Street) {
            street if street.is_empty() => text(Field::Address),
            street => [street, text(Field::Postcode), text(Field::Town)].join(" "),
        },
        vehicles: vehicles_of(snap, id)?.len(),
    })
}

/// A customer's vehicles, each once.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn vehicles_of(snap: &Snapshot<'_>, id: &CustomerId) -> Result<Vec<KnownVehicle>, Trouble> {
    let mut seen = Vec::new();
    let mut out = Vec::new();
    for id in snap.world().vehicles_of(id)? {
        let known = vehicle(snap, &id)?;
        if new(&mut seen, &known.vehicle) {
            out.push(known);
        }
    }
    Ok(out)
}

/// Every order of a customer, newest first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rows_of_customer(snap: &Snapshot<'_>, id: &CustomerId) -> Result<Vec<OrderRow>, Trouble> {
    let world = snap.world();
    rows_of(snap, world, world.orders_of_customer(id)?)
}

/// Vehicles that this one may be written down as already: those of the same plate or
/// identification number, and those found by words.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn twins_of_vehicle(
    snap: &Snapshot<'_>,
    id: &VehicleId,
    words: &str,
) -> Result<Vec<KnownVehicle>, Trouble> {
    let own = vehicle(snap, id)?;
    let mut out = Vec::new();
    for (text, exact) in [(&*own.plate, true), (&own.vin, true), (words, false)] {
        for found in vehicles_saying(snap, text, MOST_OFFERED)? {
            let alike = [&found.plate, &found.vin]
                .iter()
                .any(|other| crate::world::squeezed(other) == crate::world::squeezed(text));
            if found.vehicle != own.vehicle && !out.contains(&found) && (alike || !exact) {
                out.push(found);
            }
        }
    }
    Ok(out)
}

/// Customers that this one may be written down as already: those of the same telephone number
/// or name, and those found by words.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn twins_of_customer(
    snap: &Snapshot<'_>,
    id: &CustomerId,
    words: &str,
) -> Result<Vec<KnownCustomer>, Trouble> {
    let own = customer(snap, id)?;
    let mut out = Vec::new();
    for (text, exact) in [(&*own.phone, true), (&own.name, true), (words, false)] {
        for found in customers_saying(snap, text, MOST_OFFERED)? {
            let alike = [&found.phone, &found.name]
                .iter()
                .any(|other| crate::world::squeezed(other) == crate::world::squeezed(text));
            if found.customer != own.customer && !out.contains(&found) && (alike || !exact) {
                out.push(found);
            }
        }
    }
    Ok(out)
}

/// The name of an order's customer in the record, as they go by.
#[must_use]
pub fn customer_of_order(snap: &Snapshot<'_>, number: u64) -> Option<String> {
    let world = snap.world();
    let id = world.order_numbered(number).ok()??;
    let customer = customer_of(world.order(&id).ok()?.as_ref())?;
    let goes_by = world.same_customers(&customer).into_iter().next();
    Some(goes_by.unwrap_or(customer).as_str().to_owned())
}
