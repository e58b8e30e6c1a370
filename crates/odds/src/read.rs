//! An order to be quoted, with its history, from its text, which is TOML; or a line as typed.

use crate::history::{Condition, Done, History};
use crate::order::{Action, Amount, Labour, Line, Order, Pieces, Rule};
use crate::phrases as say;
use crate::prior::{Grid, Prior};
use crate::snags::{Joint, SnagHistory};
use crate::spread::Range;
use crate::{OddsError, score::Given};
use fields::{Book, Fields, Trouble, number_of, numbers_of};

/// What a text holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Read {
    pub order: Order,
    pub history: History,
    pub snags: SnagHistory,
    pub ceiling: Option<f64>,
    /// Quotes as they were given, of finished jobs.
    pub given: Vec<Given>,
    pub warnings: Vec<Trouble>,
}

const ROOT: [&str; 15] = [
    "line",
    "amount",
    "first",
    "past",
    "past_snag",
    "given",
    "prior",
    "vehicle",
    "rate",
    "labour",
    "tax_percent",
    "ceiling",
    "name",
    "note",
    "version",
];
const VEHICLE: [&str; 5] = ["name", "age_years", "rust", "opened_before", "note"];
const PRIOR: [&str; 7] = [
    "usual",
    "jobs",
    "factor",
    "floor",
    "snag_mean",
    "snag_pieces",
    "vehicle_on_snags",
];
const LINE: [&str; 13] = [
    "what",
    "kind",
    "person",
    "minutes",
    "times",
    "pieces",
    "size",
    "material",
    "rust",
    "opened_before",
    "snag_minutes",
    "snag_price",
    "note",
];
const FIRST: [&str; 6] = ["what", "line", "minutes", "price", "snag_odds", "time"];
const PAST: [&str; 9] = [
    "vehicle",
    "kind",
    "person",
    "book_minutes",
    "minutes",
    "left",
    "age_years",
    "rust",
    "opened_before",
];
const PAST_SNAG: [&str; 6] = [
    "size",
    "material",
    "rust",
    "opened_before",
    "pieces",
    "snags",
];
const GIVEN: [&str; 3] = ["chances", "values", "happened"];

/// Reads an order with its history.
///
/// `file` is the name that troubles are told under.
///
/// # Errors
///
/// Everything that is wrong, in the sequence of the text: what is no TOML, missing keys, words
/// that are not known, numbers that are none. Unknown keys are warnings, unless they look like a
/// known one misspelt.
pub fn read(file: &str, text: &str) -> Result<Read, Vec<Trouble>> {
    let read = fields::read(file, text, say::the_file(), |root, book| {
        root.only(&ROOT, book);
        let order = order(root, book);
        let prior = prior(root, book);
        let history = past(root, prior, book)?;
        let snags = past_snags(root, book);
        let given = root.tables("given", book);
        Some(Read {
            order,
            history,
            snags,
            given: given.iter().filter_map(|one| given_of(one, book)).collect(),
            ceiling: root.number("ceiling", book),
            warnings: Vec::new(),
        })
    })?;
    let all = read.value.expect("what is refused is told as wrong");
    Ok(Read {
        warnings: read.warnings,
        ..all
    })
}

/// Reads a line as typed: `what, minutes` or `what, minutes, times`.
///
/// # Errors
///
/// A line without minutes, or with numbers that are none.
///
/// ```
/// let line = odds::line("housing bolts out, 6, 2")?;
/// assert_eq!((line.what.as_str(), line.book_minutes, line.times), ("housing bolts out", 6.0, 2));
/// # Ok::<(), String>(())
/// ```
pub fn line(text: &str) -> Result<Line, String> {
    let mut parts: Vec<&str> = text.split(',').map(str::trim).collect();
    let number = |text: &str| -> Option<f64> {
        let bare = ["minutes", "min", "times", "x"]
            .iter()
            .find_map(|unit| text.strip_suffix(unit));
        let number: f64 = bare.unwrap_or(text).trim().parse().ok()?;
        number.is_finite().then_some(number)
    };
    let form = say::no_line(text);
    let last = parts.last().and_then(|part| number(part));
    let before = (parts.len() > 2)
        .then(|| number(parts[parts.len() - 2]))
        .flatten();
    let (minutes, times) = match (before, last) {
        (Some(minutes), Some(times)) => {
            parts.truncate(parts.len() - 2);
            (minutes, times)
        }
        (None, Some(minutes)) if parts.len() > 1 => {
            parts.pop();
            (minutes, 1.0)
        }
        _ => return Err(form),
    };
    if times.fract() != 0.0 || !(1.0..=2000.0).contains(&times) {
        return Err(say::no_times(times, text));
    }
    let what = parts.join(", ");
    if what.is_empty() {
        return Err(form);
    }
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole and from 1 to 2000"
    )]
    let times = times as u32;
    Ok(Line {
        kind: what.clone(),
        what,
        book_minutes: minutes,
        times,
        ..Line::default()
    })
}

fn order(root: &Fields, book: &mut Book) -> Order {
    let vehicle = root.table("vehicle", book);
    let condition = vehicle
        .as_ref()
        .map(|fields| {
            fields.only(&VEHICLE, book);
            condition(fields, book)
        })
        .unwrap_or_default();
    let labour = root.word("labour", &Labour::ALL.map(Labour::name), book);
    Order {
        vehicle: vehicle.and_then(|fields| fields.text("name", book)),
        condition,
        lines: root
            .tables("line", book)
            .iter()
            .map(|fields| one_line(fields, condition, book))
            .collect(),
        rule: Rule {
            rate: root.number("rate", book).unwrap_or(0.0),
            labour: Labour::ALL
                .into_iter()
                .find(|one| labour == Some(one.name()))
                .unwrap_or_default(),
            tax_percent: root.number("tax_percent", book).unwrap_or(0.0),
        },
        amounts: root
            .tables("amount", book)
            .iter()
            .map(|fields| {
                fields.only(&["what", "price", "note"], book);
                Amount {
                    what: fields.needed_text("what", book),
                    price: range(fields, "price", book).unwrap_or_else(|| {
                        fields.missing("price", book);
                        Range::default()
                    }),
                }
            })
            .collect(),
        actions: root
            .tables("first", book)
            .iter()
            .map(|fields| {
                fields.only(&FIRST, book);
                Action {
                    what: fields.needed_text("what", book),
                    line: fields.needed_text("line", book),
                    minutes: range(fields, "minutes", book).unwrap_or_default(),
                    price: range(fields, "price", book).unwrap_or_default(),
                    snag_odds: fields.number("snag_odds", book).unwrap_or(1.0),
                    time: fields.number("time", book).unwrap_or(1.0),
                }
            })
            .collect(),
    }
}

fn one_line(fields: &Fields, vehicle: Condition, book: &mut Book) -> Line {
    fields.only(&LINE, book);
    let what = fields.needed_text("what", book);
    let own = condition(fields, book);
    let pieces = fields.count("pieces", book).map(|count| Pieces {
        count,
        joint: Joint {
            rust: own.rust.or(vehicle.rust),
            opened_before: own.opened_before.or(vehicle.opened_before),
            material: fields.text("material", book),
            size: fields.text("size", book),
        },
        minutes: range(fields, "snag_minutes", book).unwrap_or_else(|| {
            fields.missing("snag_minutes", book);
            Range::default()
        }),
        price: range(fields, "snag_price", book).unwrap_or_default(),
    });
    Line {
        kind: fields.text("kind", book).unwrap_or_else(|| what.clone()),
        what,
        person: fields.text("person", book),
        book_minutes: fields.needed("minutes", book),
        times: fields.count("times", book).unwrap_or(1),
        pieces,
    }
}

fn condition(fields: &Fields, book: &mut Book) -> Condition {
    let said = fields.has("opened_before");
    let opened_before = said.then(|| fields.yes("opened_before", false, book));
    Condition {
        age_years: fields.number("age_years", book),
        rust: rust(fields, book),
        opened_before,
    }
}

fn prior(root: &Fields, book: &mut Book) -> Prior {
    let mut prior = Prior::default();
    let Some(fields) = root.table("prior", book) else {
        return prior;
    };
    fields.only(&PRIOR, book);
    for (key, place) in [
        ("usual", &mut prior.usual),
        ("jobs", &mut prior.jobs),
        ("factor", &mut prior.factor),
        ("floor", &mut prior.floor),
        ("snag_mean", &mut prior.snag_mean),
        ("snag_pieces", &mut prior.snag_pieces),
        ("vehicle_on_snags", &mut prior.vehicle_on_snags),
    ] {
        if let Some(number) = fields.number(key, book) {
            *place = number;
        }
    }
    prior
}

/// How rusty something is, from 0 to 3.
fn rust(fields: &Fields, book: &mut Book) -> Option<u8> {
    let item = fields.item("rust")?;
    let rust = item.as_integer().and_then(|rust| u8::try_from(rust).ok());
    let rust = rust.filter(|rust| *rust <= 3);
    if rust.is_none() {
        let mend = say::write_rust_class().to_owned();
        fields.unsound("rust", say::no_class_of_rust(), mend, book);
    }
    rust
}

/// One number, or least, likely and most.
fn range(fields: &Fields, key: &str, book: &mut Book) -> Option<Range> {
    let item = fields.item(key)?;
    let alone = item.as_value().and_then(number_of).map(Range::sure);
    let three = numbers_of(item).and_then(|three| match three[..] {
        [low, likely, high] => Some(Range { low, likely, high }),
        _ => None,
    });
    let found = alone.or(three);
    if found.is_none() {
        let mend = say::write_range(key);
        fields.unsound(key, say::neither_number_nor_three(), mend, book);
    }
    found
}

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refuse(fields: &Fields, error: &OddsError, book: &mut Book) {
    let message = error.to_string();
    let (what, mend) = message
        .split_once(": ")
        .unwrap_or((&message, say::check_it()));
    book.wrong(fields.place(), what.to_owned(), mend.to_owned());
}

fn past(root: &Fields, prior: Prior, book: &mut Book) -> Option<History> {
    let mut history = match History::new(prior, Grid::default()) {
        Ok(history) => history,
        Err(error) => {
            let fields = root.table("prior", book);
            refuse(fields.as_ref().unwrap_or(root), &error, book);
            return None;
        }
    };
    for (at, fields) in root.tables("past", book).iter().enumerate() {
        fields.only(&PAST, book);
        let wrong = book.faults();
        let done = Done {
            kind: fields.needed_text("kind", book),
            person: fields.text("person", book),
            condition: condition(fields, book),
            book_minutes: fields.needed("book_minutes", book),
            minutes: fields.needed("minutes", book),
            left: fields.yes("left", false, book),
        };
        // Without a name each stage is a vehicle of its own.
        let vehicle = fields
            .text("vehicle", book)
            .unwrap_or_else(|| format!("past {}", at + 1));
        if book.faults() == wrong
            && let Err(error) = history.learn(&vehicle, &[done])
        {
            refuse(fields, &error, book);
        }
    }
    Some(history)
}

fn past_snags(root: &Fields, book: &mut Book) -> SnagHistory {
    let mut snags = SnagHistory::default();
    for fields in &root.tables("past_snag", book) {
        fields.only(&PAST_SNAG, book);
        let own = condition(fields, book);
        let joint = Joint {
            rust: own.rust,
            opened_before: own.opened_before,
            material: fields.text("material", book),
            size: fields.text("size", book),
        };
        let count = |key, book: &mut Book| {
            if !fields.has(key) {
                fields.missing(key, book);
            }
            fields.whole(key, 0, u32::MAX, book).unwrap_or(0)
        };
        let (pieces, found) = (count("pieces", book), count("snags", book));
        if let Err(error) = snags.learn(&joint, pieces, found) {
            refuse(fields, &error, book);
        }
    }
    snags
}

fn given_of(fields: &Fields, book: &mut Book) -> Option<Given> {
    fields.only(&GIVEN, book);
    let happened = fields.needed("happened", book);
    let chances = fields.numbers("chances", book)?;
    let values = fields.numbers("values", book)?;
    if chances.len() != values.len() {
        book.wrong(
            fields.place(),
            say::chances_and_values(chances.len(), values.len()),
            say::one_value_each().to_owned(),
        );
        return None;
    }
    let given = Given {
        quantiles: chances.into_iter().zip(values).collect(),
        happened,
    };
    if let Err(error) = crate::score(std::slice::from_ref(&given)) {
        refuse(fields, &error, book);
    }
    Some(given)
}
