//! An order to be quoted, with its history, from its text, which is TOML; or a line as typed.

mod fields;

use crate::history::{Condition, Done, History};
use crate::order::{Action, Amount, Labour, Line, Order, Pieces, Rule};
use crate::prior::{Grid, Prior};
use crate::snags::{Joint, SnagHistory};
use crate::spread::Range;
use crate::{OddsError, score::Given};
use fields::{Book, Fields, table, tables};
use std::fmt;
use toml_edit::Document;

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

/// One thing that is wrong in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// The file, as it was named.
    pub file: String,
    /// From 1.
    pub line: usize,
    pub what: String,
    pub mend: String,
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}:{}: {}; {}",
            self.file, self.line, self.what, self.mend
        )
    }
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
    let mut book = Book {
        file,
        text,
        wrong: Vec::new(),
        warnings: Vec::new(),
    };
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            let said = error.message().lines().collect::<Vec<_>>().join(", ");
            book.wrong(
                error.span(),
                format!("this is no TOML: {said}"),
                "write key = value, texts in quotes".to_owned(),
            );
            return Err(book.wrong);
        }
    };
    let root = Fields {
        table: document.as_table(),
        span: None,
        name: "the file".to_owned(),
    };
    root.only(&ROOT, &mut book);
    let order = order(&root, &mut book);
    let prior = prior(&root, &mut book);
    let history = past(&root, prior, &mut book);
    let snags = past_snags(&root, &mut book);
    let given = tables(&root, "given", &mut book)
        .iter()
        .filter_map(|fields| given(fields, &mut book))
        .collect();
    let ceiling = root.number("ceiling", &mut book);
    match history {
        Some(history) if book.wrong.is_empty() => Ok(Read {
            order,
            history,
            snags,
            ceiling,
            given,
            warnings: book.warnings,
        }),
        _ => {
            book.wrong.sort_by_key(|trouble| trouble.line);
            Err(book.wrong)
        }
    }
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
    let form = format!(
        "`{text}` is no line: write it as \"what, minutes\" or \"what, minutes, times\", with a point in numbers"
    );
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
        return Err(format!(
            "{times} times in `{text}`: write a whole number from 1 to 2000"
        ));
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
    let vehicle = table(root, "vehicle", book);
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
        lines: tables(root, "line", book)
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
        amounts: tables(root, "amount", book)
            .iter()
            .map(|fields| {
                fields.only(&["what", "price", "note"], book);
                Amount {
                    what: fields.name_of("what", book),
                    price: fields.range("price", book).unwrap_or_else(|| {
                        book.missing(fields, "price");
                        Range::default()
                    }),
                }
            })
            .collect(),
        actions: tables(root, "first", book)
            .iter()
            .map(|fields| {
                fields.only(&FIRST, book);
                Action {
                    what: fields.name_of("what", book),
                    line: fields.name_of("line", book),
                    minutes: fields.range("minutes", book).unwrap_or_default(),
                    price: fields.range("price", book).unwrap_or_default(),
                    snag_odds: fields.number("snag_odds", book).unwrap_or(1.0),
                    time: fields.number("time", book).unwrap_or(1.0),
                }
            })
            .collect(),
    }
}

fn one_line(fields: &Fields, vehicle: Condition, book: &mut Book) -> Line {
    fields.only(&LINE, book);
    let what = fields.name_of("what", book);
    let own = condition(fields, book);
    let pieces = fields.count("pieces", book).map(|count| Pieces {
        count,
        joint: Joint {
            rust: own.rust.or(vehicle.rust),
            opened_before: own.opened_before.or(vehicle.opened_before),
            material: fields.text("material", book),
            size: fields.text("size", book),
        },
        minutes: fields.range("snag_minutes", book).unwrap_or_else(|| {
            book.missing(fields, "snag_minutes");
            Range::default()
        }),
        price: fields.range("snag_price", book).unwrap_or_default(),
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
    let said = fields.table.contains_key("opened_before");
    let opened_before = said.then(|| fields.yes("opened_before", false, book));
    Condition {
        age_years: fields.number("age_years", book),
        rust: fields.rust(book),
        opened_before,
    }
}

fn prior(root: &Fields, book: &mut Book) -> Prior {
    let mut prior = Prior::default();
    let Some(fields) = table(root, "prior", book) else {
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

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refuse(fields: &Fields, error: &OddsError, book: &mut Book) {
    let message = error.to_string();
    let (what, mend) = message.split_once(": ").unwrap_or((&message, "check it"));
    book.wrong(fields.span.clone(), what.to_owned(), mend.to_owned());
}

fn past(root: &Fields, prior: Prior, book: &mut Book) -> Option<History> {
    let mut history = match History::new(prior, Grid::default()) {
        Ok(history) => history,
        Err(error) => {
            let fields = table(root, "prior", book);
            refuse(fields.as_ref().unwrap_or(root), &error, book);
            return None;
        }
    };
    for (at, fields) in tables(root, "past", book).iter().enumerate() {
        fields.only(&PAST, book);
        let wrong = book.wrong.len();
        let done = Done {
            kind: fields.name_of("kind", book),
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
        if book.wrong.len() == wrong
            && let Err(error) = history.learn(&vehicle, &[done])
        {
            refuse(fields, &error, book);
        }
    }
    Some(history)
}

fn past_snags(root: &Fields, book: &mut Book) -> SnagHistory {
    let mut snags = SnagHistory::default();
    for fields in &tables(root, "past_snag", book) {
        fields.only(&PAST_SNAG, book);
        let own = condition(fields, book);
        let joint = Joint {
            rust: own.rust,
            opened_before: own.opened_before,
            material: fields.text("material", book),
            size: fields.text("size", book),
        };
        let count = |key, book: &mut Book| {
            if !fields.table.contains_key(key) {
                book.missing(fields, key);
            }
            fields.many(key, book).unwrap_or(0)
        };
        let (pieces, found) = (count("pieces", book), count("snags", book));
        if let Err(error) = snags.learn(&joint, pieces, found) {
            refuse(fields, &error, book);
        }
    }
    snags
}

fn given(fields: &Fields, book: &mut Book) -> Option<Given> {
    fields.only(&GIVEN, book);
    let happened = fields.needed("happened", book);
    let chances = fields.numbers("chances", book)?;
    let values = fields.numbers("values", book)?;
    if chances.len() != values.len() {
        book.wrong(
            fields.span.clone(),
            format!("{} chances and {} values", chances.len(), values.len()),
            "write one value for each chance".to_owned(),
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
