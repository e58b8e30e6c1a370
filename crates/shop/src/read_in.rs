//! Customers and vehicles read in from a table that another program wrote: what would change
//! is shown first, and what is known already is left as it is.

use crate::caller::Caller;
use crate::device::Device;
use crate::phrases::{access, shop as words};
use crate::roles::{self, Act};
use crate::service::Service;
use crate::snapshot::Snapshot;
use crate::trouble::{Trouble, TroubleKind};
use crate::world::squeezed;
use record::{AnyEvent, Stream};
use repair::{CustomerFact, CustomerId, Field, VehicleFact, VehicleId, VinRead, Words};
use std::collections::BTreeMap;

/// What a column may hold.
const COLUMNS: [(Field, phrases::Say, &[&str]); 7] = [
    (
        Field::Name,
        words::column_name,
        &["name", "customer", "kunde", "kundenname", "fullname"],
    ),
    (
        Field::Phone,
        words::column_telephone,
        &[
            "telephone",
            "phone",
            "telefon",
            "mobile",
            "mobil",
            "handy",
            "tel",
        ],
    ),
    (Field::Mail, words::column_mail, &["email", "mail"]),
    (
        Field::Address,
        words::column_address,
        &["address", "adresse", "anschrift", "street"],
    ),
    (
        Field::Plate,
        words::column_plate,
        &[
            "plate",
            "registration",
            "licenseplate",
            "licenceplate",
            "kennzeichen",
        ],
    ),
    (
        Field::Label,
        words::column_vehicle,
        &[
            "vehicle",
            "model",
            "fahrzeug",
            "fahrzeugtyp",
            "modell",
            "car",
        ],
    ),
    (
        Field::Vin,
        words::column_vin,
        &[
            "vin",
            "fin",
            "chassis",
            "fahrgestellnummer",
            "fahrzeugidentnummer",
        ],
    ),
];

/// More rows than a small shop has in decades.
const MOST_ROWS: usize = 20_000;
/// So many rows are written down at a time.
const AT_ONCE: usize = 100;

/// What becomes of a row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Becomes {
    /// Something of it is new.
    New { customer: bool, vehicle: bool },
    /// All of it is known.
    Known,
    /// It cannot be read in, and why.
    Bad(String),
}

/// A row as it was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadRow {
    /// Its line in the table, the head counted.
    pub line: u64,
    /// What it says.
    pub texts: BTreeMap<Field, String>,
    /// What becomes of it.
    pub becomes: Becomes,
}

/// A table as it was read, and what it would change.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ReadIn {
    /// The columns that are taken, as the table calls them and as they are understood.
    pub columns: Vec<(String, &'static str)>,
    /// Those that are not.
    pub passed_over: Vec<String>,
    pub rows: Vec<ReadRow>,
    /// How many customers and vehicles would be new.
    pub customers: usize,
    pub vehicles: usize,
}

impl ReadIn {
    /// How many rows say nothing new.
    #[must_use]
    pub fn known(&self) -> usize {
        let known = |row: &&ReadRow| row.becomes == Becomes::Known;
        self.rows.iter().filter(known).count()
    }

    /// The rows that cannot be read in, each with why.
    pub fn bad(&self) -> impl Iterator<Item = (u64, &str)> {
        self.rows.iter().filter_map(|row| match &row.becomes {
            Becomes::Bad(why) => Some((row.line, why.as_str())),
            _ => None,
        })
    }
}

/// A field's word, for a page.
#[must_use]
pub fn word(field: Field) -> &'static str {
    let found = COLUMNS.iter().find(|(known, ..)| *known == field);
    found.map_or("", |(_, word, _)| word())
}

/// Reads a table: its first line names the columns; commas, semicolons or tabs stand between.
///
/// # Errors
/// [`Trouble`]: it is no such table, and how to mend it; or the record cannot be read.
pub fn look_at(snap: &Snapshot<'_>, text: &str) -> Result<ReadIn, Trouble> {
    plan(snap, text).map(|plan| plan.read)
}

/// Who and what a row is about, once its names in the record are known.
struct Planned {
    row: usize,
    customer: (CustomerId, bool),
    vehicle: Option<(VehicleId, bool)>,
}

struct Plan {
    read: ReadIn,
    planned: Vec<Planned>,
}

fn bad(place: &str, what: impl Into<String>, mend: &str) -> Trouble {
    Trouble::unreadable(place, what, mend)
}

fn plan(snap: &Snapshot<'_>, text: &str) -> Result<Plan, Trouble> {
    let text = text.trim_start_matches('\u{feff}');
    let first = text.lines().next().unwrap_or_default();
    let count = |mark: char| first.matches(mark).count();
    let marks = [',', ';', '\t'];
    let between = marks.into_iter().max_by_key(|mark| count(*mark));
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(u8::try_from(between.unwrap_or(',')).unwrap_or(b','))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let head = reader.headers().map_err(|error| unread(&error))?.clone();
    let mut read = ReadIn::default();
    let mut columns: Vec<Option<Field>> = Vec::new();
    for name in &head {
        let plain = squeezed(name);
        let found = COLUMNS.iter().find(|(field, _, names)| {
            names.contains(&plain.as_str()) && !columns.contains(&Some(*field))
        });
        match found {
            Some((_, word, _)) => read.columns.push((name.to_owned(), word())),
            None => read.passed_over.push(name.to_owned()),
        }
        columns.push(found.map(|(field, ..)| *field));
    }
    if !columns.contains(&Some(Field::Name)) {
        return Err(bad(
            &words::line(1),
            words::no_column(list(&head)),
            words::name_the_columns(),
        ));
    }
    let mut known = Known::default();
    let mut planned = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|error| unread(&error))?;
        let line = record.position().map_or(0, csv::Position::line);
        if read.rows.len() >= MOST_ROWS {
            return Err(bad(
                &words::line(line),
                words::more_than_rows(MOST_ROWS),
                words::split_the_table(),
            ));
        }
        let texts: BTreeMap<Field, String> = columns
            .iter()
            .zip(&record)
            .filter_map(|(field, text)| Some(((*field)?, text.to_owned())))
            .filter(|(_, text)| !text.is_empty())
            .collect();
        if texts.is_empty() {
            continue;
        }
        let row = read.rows.len();
        let becomes = match fault(&texts) {
            Some(why) => Becomes::Bad(why),
            None => {
                let (customer, vehicle) = known.row(snap, &texts)?;
                let new = (customer.1, vehicle.as_ref().is_some_and(|(_, new)| *new));
                read.customers += usize::from(new.0);
                read.vehicles += usize::from(new.1);
                planned.push(Planned {
                    row,
                    customer,
                    vehicle,
                });
                match new {
                    (false, false) => Becomes::Known,
                    (customer, vehicle) => Becomes::New { customer, vehicle },
                }
            }
        };
        read.rows.push(ReadRow {
            line,
            texts,
            becomes,
        });
    }
    Ok(Plan { read, planned })
}

fn unread(error: &csv::Error) -> Trouble {
    let line = error.position().map_or(1, csv::Position::line);
    bad(&words::line(line), error.to_string(), words::save_as_csv())
}

fn list(head: &csv::StringRecord) -> String {
    const MOST: usize = 12;
    let names: Vec<&str> = head.iter().take(MOST).collect();
    match names.is_empty() {
        true => words::nothing().to_owned(),
        false => names.join(", "),
    }
}

/// Why a row cannot be read in.
fn fault(texts: &BTreeMap<Field, String>) -> Option<String> {
    const LONGEST: usize = 500;
    if let Some((field, _)) = texts
        .iter()
        .find(|(_, text)| text.chars().count() > LONGEST)
    {
        return Some(words::longer_than(word(*field), LONGEST));
    }
    if !texts.contains_key(&Field::Name) {
        return Some(words::names_no_customer().to_owned());
    }
    let of_vehicle = |field: &&Field| matches!(field, Field::Plate | Field::Vin | Field::Label);
    if texts.keys().any(|field| of_vehicle(&field)) && !texts.contains_key(&Field::Label) {
        let says = texts.get(&Field::Plate).or(texts.get(&Field::Vin));
        let says = says.map_or("", String::as_str);
        return Some(words::has_no_vehicle(says));
    }
    None
}

/// Who and what is known, in the record and in the rows before.
#[derive(Default)]
struct Known {
    customers: BTreeMap<String, CustomerId>,
    vehicles: BTreeMap<String, VehicleId>,
}

/// Somebody's name in the record, and whether it is new.
type Named<Id> = (Id, bool);

impl Known {
    fn row(
        &mut self,
        snap: &Snapshot<'_>,
        texts: &BTreeMap<Field, String>,
    ) -> Result<(Named<CustomerId>, Option<Named<VehicleId>>), Trouble> {
        let text = |field| texts.get(&field).map(String::as_str).unwrap_or_default();
        let customer = self.customer(snap, text(Field::Name), text(Field::Phone))?;
        let vehicle = match text(Field::Label) {
            "" => None,
            label => {
                let name = match (text(Field::Vin), text(Field::Plate)) {
                    ("", "") => format!("{} {}", customer.0, squeezed(label)),
                    ("", plate) => format!("plate {}", squeezed(plate)),
                    (vin, _) => format!("vin {}", squeezed(vin)),
                };
                Some(self.vehicle(snap, name, [text(Field::Vin), text(Field::Plate)])?)
            }
        };
        Ok((customer, vehicle))
    }

    /// A customer by telephone number, or by name where the row has none.
    fn customer(
        &mut self,
        snap: &Snapshot<'_>,
        name: &str,
        phone: &str,
    ) -> Result<Named<CustomerId>, Trouble> {
        let key = match squeezed(phone).as_str() {
            "" => format!("name {}", squeezed(name)),
            phone => format!("{} {phone}", squeezed(name)),
        };
        if let Some(id) = self.customers.get(&key) {
            return Ok((id.clone(), false));
        }
        let sought = if phone.is_empty() { name } else { phone };
        let world = snap.world();
        for id in world.customers_saying(sought, 50)? {
            let known = world.customer(&id)?;
            let says = |field| {
                let words = known.text(field).words;
                squeezed(&snap.texts().text_of(words).unwrap_or_default())
            };
            let same_name = says(Field::Name) == squeezed(name);
            let told = says(Field::Phone);
            let same_phone = phone.is_empty() || told.is_empty() || told == squeezed(phone);
            if same_name && same_phone {
                self.customers.insert(key, id.clone());
                return Ok((id, false));
            }
        }
        let id = CustomerId::new(Device::name());
        self.customers.insert(key, id.clone());
        Ok((id, true))
    }

    fn vehicle(
        &mut self,
        snap: &Snapshot<'_>,
        key: String,
        sought: [&str; 2],
    ) -> Result<Named<VehicleId>, Trouble> {
        if let Some(id) = self.vehicles.get(&key) {
            return Ok((id.clone(), false));
        }
        for text in sought.into_iter().filter(|text| !text.is_empty()) {
            for known in crate::view::vehicles_saying(snap, text, 50)? {
                let alike = [&known.plate, &known.vin]
                    .iter()
                    .any(|other| squeezed(other) == squeezed(text));
                if alike {
                    let id = VehicleId::new(known.vehicle);
                    self.vehicles.insert(key, id.clone());
                    return Ok((id, false));
                }
            }
        }
        let id = VehicleId::new(Device::name());
        self.vehicles.insert(key, id.clone());
        Ok((id, true))
    }
}

/// Writes down what is new in a table. Answers how many customers and vehicles that were.
/// Told again, it finds them known.
///
/// # Errors
/// [`Trouble`]: who asks may not, it is no such table, or the record cannot be written.
pub fn read_in(service: &Service, caller: &Caller, text: &str) -> Result<(usize, usize), Trouble> {
    roles::check(caller, Act::See("/shop/read-in/done"))?;
    let plan = service.look(caller, |snap| plan(snap, text))?;
    let mut written = (0, 0);
    for some in plan.planned.chunks(AT_ONCE) {
        let mut events = Vec::new();
        let mut private = Vec::new();
        for planned in some {
            let texts = &plan.read.rows[planned.row].texts;
            let mut said = |fields: &[Field]| -> BTreeMap<Field, Words> {
                let there = fields
                    .iter()
                    .filter_map(|field| Some((*field, texts.get(field)?)));
                there
                    .map(|(field, text)| (field, salted(text, &mut private)))
                    .collect()
            };
            let (customer, new) = &planned.customer;
            if *new {
                let texts = said(&[Field::Name, Field::Phone, Field::Mail, Field::Address]);
                let declared = CustomerFact::Declared { texts };
                let stream = Stream::Customer(customer.clone());
                events.push((stream, AnyEvent::Customer(declared)));
                written.0 += 1;
            }
            if let Some((vehicle, true)) = &planned.vehicle {
                let vin = texts.get(&Field::Vin);
                let declared = VehicleFact::Declared {
                    texts: said(&[Field::Label, Field::Plate, Field::Vin]),
                    vin_read: match vin.map(|vin| vin::inspect(vin).valid) {
                        None => VinRead::NoneReadable,
                        Some(true) => VinRead::Valid,
                        Some(false) => VinRead::KeptAnyway,
                    },
                    rust: None,
                    customer: customer.clone(),
                };
                let stream = Stream::Vehicle(vehicle.clone());
                events.push((stream, AnyEvent::Vehicle(declared)));
                written.1 += 1;
            }
        }
        if !events.is_empty() {
            service.write_down(caller, events, private)?;
        }
    }
    Ok(written)
}

/// A text that came without a salt, kept beside the record under its commitment.
fn salted(text: &str, private: &mut Vec<store::Private>) -> Words {
    let salt = Device::salt();
    let id = store::commitment(&salt, text.as_bytes());
    private.push(store::Private {
        id,
        salt,
        media: "text/plain".to_owned(),
        content: text.as_bytes().to_vec(),
    });
    Words(id)
}

/// Who asked, where nobody is known.
pub(crate) fn nobody() -> Trouble {
    Trouble::new(
        TroubleKind::Refused,
        access::who(),
        access::nobody_of_that_name(),
        access::pick_a_person(),
    )
}
