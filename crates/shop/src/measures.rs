//! What is measured on nearly every vehicle: linings, discs, treads, the battery at rest. What
//! was read on this visit stands beside what it was before, and beside the least that is allowed,
//! where somebody told it of this vehicle.

use crate::phrases::shop as words;
use crate::say::Tongue;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::known_vehicle;
use crate::world::vehicle_of;
use measure::{Dimension, read};
use repair::{Fact, Order, OrderId, Token};

/// Things of one sort that are measured, with the least that is allowed of each.
struct Sort {
    title: fn() -> &'static str,
    unit: &'static str,
    dimension: Dimension,
    /// The least that is allowed, as a figure of the vehicle.
    least: &'static str,
    /// What has to be known of it.
    hint: fn() -> &'static str,
    /// What each is called in the record and in English, and in German.
    each: &'static [(&'static str, &'static str)],
}

const SORTS: [Sort; 6] = [
    Sort {
        title: words::brake_pads_front,
        unit: "mm",
        dimension: Dimension::Length,
        least: "least brake pad front",
        hint: words::hint_lining,
        each: &[
            ("brake pad front left", "Bremsbelag vorne links"),
            ("brake pad front right", "Bremsbelag vorne rechts"),
        ],
    },
    Sort {
        title: words::brake_pads_rear,
        unit: "mm",
        dimension: Dimension::Length,
        least: "least brake pad rear",
        hint: words::hint_lining,
        each: &[
            ("brake pad rear left", "Bremsbelag hinten links"),
            ("brake pad rear right", "Bremsbelag hinten rechts"),
        ],
    },
    Sort {
        title: words::brake_discs_front,
        unit: "mm",
        dimension: Dimension::Length,
        least: "least brake disc front",
        hint: words::hint_disc,
        each: &[
            ("brake disc front left", "Bremsscheibe vorne links"),
            ("brake disc front right", "Bremsscheibe vorne rechts"),
        ],
    },
    Sort {
        title: words::brake_discs_rear,
        unit: "mm",
        dimension: Dimension::Length,
        least: "least brake disc rear",
        hint: words::hint_drum,
        each: &[
            ("brake disc rear left", "Bremsscheibe hinten links"),
            ("brake disc rear right", "Bremsscheibe hinten rechts"),
        ],
    },
    Sort {
        title: words::tyre_tread,
        unit: "mm",
        dimension: Dimension::Length,
        least: "least tyre tread",
        hint: words::hint_tread,
        each: &[
            ("tyre tread front left", "Reifenprofil vorne links"),
            ("tyre tread front right", "Reifenprofil vorne rechts"),
            ("tyre tread rear left", "Reifenprofil hinten links"),
            ("tyre tread rear right", "Reifenprofil hinten rechts"),
        ],
    },
    Sort {
        title: words::battery_at_rest,
        unit: "V",
        dimension: Dimension::Voltage,
        least: "least battery voltage",
        hint: words::hint_battery,
        each: &[("battery voltage", "Batteriespannung in Ruhe")],
    },
];

/// A sort of things with what was read of each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measures {
    pub title: &'static str,
    pub unit: &'static str,
    /// The least that is allowed, and by what name it is told of the vehicle.
    pub least: Option<String>,
    pub least_name: &'static str,
    /// The commands that told it.
    pub least_told: Vec<String>,
    pub hint: &'static str,
    pub each: Vec<Measured>,
}

/// One thing as it was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measured {
    /// What it is called in the record.
    pub name: &'static str,
    /// On this visit.
    pub now: Option<String>,
    /// On the visit before on which it was read: what, and when.
    pub before: Option<(String, String)>,
    /// Whether it is less than the least that is allowed.
    pub below: bool,
}

impl Measured {
    /// What it is called on a screen: `brake pad front left`.
    #[must_use]
    pub fn said(&self) -> &'static str {
        said(self.name)
    }
}

fn said(name: &'static str) -> &'static str {
    (Tongue::spoken().measured)(name)
}

/// What was measured on an order.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn measures(snap: &Snapshot<'_>, order: &OrderId) -> Result<Vec<Measures>, Trouble> {
    /// So many visits before are looked at.
    const VISITS: usize = 6;
    let world = snap.world();
    let own = world.order(order)?;
    let vehicle = vehicle_of(&own);
    let known = vehicle.as_ref().map(|id| world.vehicle(id)).transpose()?;
    let figures = known
        .as_ref()
        .map(|known| known.figures())
        .unwrap_or_default();
    let mut earlier = Vec::new();
    if let Some(id) = &vehicle {
        for (_, other) in world.orders_of_vehicle(id)? {
            if other != *order && earlier.len() < VISITS {
                earlier.push(world.order(&other)?);
            }
        }
    }
    let before = |name: &str| {
        earlier.iter().find_map(|visit| {
            let (at, value) = last_read(visit, name)?;
            Some((value, crate::view::day_of(&snap.rules(), at)))
        })
    };
    Ok(SORTS
        .iter()
        .map(|sort| {
            let told = Token::new(sort.least).ok();
            let told = told.as_ref().and_then(|token| figures.get(token));
            let least = told.map(|(value, _)| value.as_str().to_owned());
            let each = sort.each.iter().map(|(name, _)| {
                let now = last_read(&own, name).map(|(_, value)| value);
                Measured {
                    name,
                    below: is_below(now.as_deref(), least.as_deref(), sort.dimension),
                    before: before(name),
                    now,
                }
            });
            Measures {
                title: (sort.title)(),
                unit: sort.unit,
                each: each.collect(),
                least_name: sort.least,
                least_told: told.map_or_else(Vec::new, |(_, by)| {
                    by.iter()
                        .map(|command| command.as_str().to_owned())
                        .collect()
                }),
                hint: (sort.hint)(),
                least,
            }
        })
        .collect())
}

/// What was read, one line a sort that anything was read of: `Tyre tread: front left 4.5 mm`.
///
/// # Errors
/// [`Trouble`], as [`measures`].
pub fn in_lines(
    tongue: &Tongue,
    snap: &Snapshot<'_>,
    order: &OrderId,
) -> Result<Vec<MeasuredLine>, Trouble> {
    let all = measures(snap, order)?;
    let each = all.into_iter().flat_map(|sort| {
        let least = sort.least.clone();
        sort.each.into_iter().filter_map(move |one| {
            Some(MeasuredLine {
                name: (tongue.measured)(one.name).to_owned(),
                value: one.now?,
                least: least.clone(),
                below: one.below,
            })
        })
    });
    Ok(each.collect())
}

/// What is measured, in German.
pub(crate) fn in_german(name: &'static str) -> &'static str {
    let mut all = SORTS.iter().flat_map(|sort| sort.each);
    all.find(|(known, _)| *known == name)
        .map_or(name, |(_, german)| german)
}

/// One thing that was read, for a paper.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize, utoipa::ToSchema)]
pub struct MeasuredLine {
    /// What.
    pub name: String,
    /// As it was read.
    pub value: String,
    /// The least that is allowed, where somebody told it.
    pub least: Option<String>,
    /// Whether it is less than that.
    pub below: bool,
}

/// The last reading of this name on an order, and when.
fn last_read(order: &Order, name: &str) -> Option<(jiff::Timestamp, String)> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::ReadOff { what, value, .. } if what.as_str() == name => {
                Some(((filed.stamp.at, command), value.as_str().to_owned()))
            }
            _ => None,
        })
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|((at, _), value)| (at, value))
}

/// Whether it is less than is allowed; what cannot be read is not judged.
fn is_below(now: Option<&str>, least: Option<&str>, dimension: Dimension) -> bool {
    let found = |text: Option<&str>| read(text?, dimension).ok();
    let (Some(now), Some(least)) = (found(now), found(least)) else {
        return false;
    };
    now.convert(least.unit())
        .is_ok_and(|now| now.number() < least.number())
}

/// Everything that is measured on a vehicle, as it was read last.
///
/// # Errors
/// [`Trouble`], if there is no such vehicle or the record cannot be read.
pub fn of_vehicle(
    snap: &Snapshot<'_>,
    vehicle: &repair::VehicleId,
) -> Result<Vec<(String, String, String)>, Trouble> {
    let world = snap.world();
    known_vehicle(snap, vehicle)?;
    let mut out = Vec::new();
    let visits = world.orders_of_vehicle(vehicle)?;
    for (name, _) in SORTS.iter().flat_map(|sort| sort.each) {
        for (_, order) in &visits {
            if let Some((at, value)) = last_read(&*world.order(order)?, name) {
                let day = crate::view::day_of(&snap.rules(), at);
                out.push((said(name).to_owned(), value, day));
                break;
            }
        }
    }
    Ok(out)
}
