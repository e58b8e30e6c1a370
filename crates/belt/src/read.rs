//! A layout from its text, which is TOML.
//!
//! ```toml
//! profile = "PK"            # or "toothed", with pitch_mm; without it the line runs as given
//! [[pulley]]                # in the sequence in which the belt meets them
//! name = "crank"
//! x_mm = 0                  # seen from the front, y upwards
//! y_mm = 0
//! diameter_mm = 150
//! side = "ribs"             # or "back"
//! drives = true             # the crank, with the way it turns
//! turns = "cw"              # or "ccw"
//! [tensioner]
//! kind = "arm"              # or hydraulic, slot, screw, none
//! pulley = "tensioner"
//! pivot_x_mm = 60           # or from_x_mm, from_y_mm, to_x_mm, to_y_mm for a straight slot
//! pivot_y_mm = 180
//! min_deg = 20              # from the right, counter-clockwise
//! max_deg = 70
//! [belt]
//! friction = 0.3            # ribs, friction, back_friction, groove_deg, tension_n, rpm
//! [[lies]]                  # how it was found
//! pulley = "idler"
//! side = "ribs"
//! ```

use crate::layout::{
    Face, Facts, Layout, PK_BACK_MM, Profile, Pulley, Sense, Side, Tensioner, TensionerKind, Travel,
};
use std::fmt;
use std::ops::Range;
use toml_edit::{Document, Item, TableLike};

/// A layout, and what in its text has no effect.
#[derive(Clone, Debug, PartialEq)]
pub struct Read {
    pub layout: Layout,
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

const ROOT: [&str; 12] = [
    "pulley",
    "tensioner",
    "belt",
    "lies",
    "profile",
    "pitch_mm",
    "back_mm",
    "name",
    "vehicle",
    "source",
    "note",
    "version",
];
const PULLEY: [&str; 16] = [
    "name",
    "x_mm",
    "y_mm",
    "diameter_mm",
    "side",
    "drives",
    "turns",
    "face",
    "grooves",
    "edge_mm",
    "power_kw",
    "least_wrap_deg",
    "flange_mm",
    "reachable",
    "teeth",
    "mark_deg",
];
const TENSIONER: [&str; 12] = [
    "kind",
    "pulley",
    "pivot_x_mm",
    "pivot_y_mm",
    "min_deg",
    "max_deg",
    "from_x_mm",
    "from_y_mm",
    "to_x_mm",
    "to_y_mm",
    "torque_nm",
    "force_n",
];
const BELT: [&str; 6] = [
    "ribs",
    "friction",
    "back_friction",
    "groove_deg",
    "tension_n",
    "rpm",
];

/// Reads a layout.
///
/// `file` is the name that troubles are told under.
///
/// # Errors
///
/// Everything that is wrong, in the sequence of the text: what is no TOML, missing keys,
/// words that are not known, numbers that are none. Unknown keys are warnings, unless they
/// look like a known one misspelt.
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
        name: "the layout".to_owned(),
    };
    let layout = layout(&root, &mut book);
    if book.wrong.is_empty() {
        Ok(Read {
            layout,
            warnings: book.warnings,
        })
    } else {
        book.wrong.sort_by_key(|trouble| trouble.line);
        Err(book.wrong)
    }
}

/// What is wrong so far.
struct Book<'a> {
    file: &'a str,
    text: &'a str,
    wrong: Vec<Trouble>,
    warnings: Vec<Trouble>,
}

impl Book<'_> {
    fn trouble(&self, span: Option<Range<usize>>, what: String, mend: String) -> Trouble {
        let start = span.map_or(0, |span| span.start);
        let before = self.text.as_bytes().get(..start).unwrap_or_default();
        let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
        Trouble {
            file: self.file.to_owned(),
            line,
            what,
            mend,
        }
    }

    fn wrong(&mut self, span: Option<Range<usize>>, what: String, mend: String) {
        let trouble = self.trouble(span, what, mend);
        self.wrong.push(trouble);
    }
}

/// A table, with its place and name for what is missing in it.
struct Fields<'t> {
    table: &'t dyn TableLike,
    span: Option<Range<usize>>,
    name: String,
}

impl Fields<'_> {
    fn at(&self, key: &str) -> Option<Range<usize>> {
        self.table
            .get(key)
            .and_then(Item::span)
            .or_else(|| self.span.clone())
    }

    fn only(&self, known: &[&str], book: &mut Book) {
        for (key, item) in self.table.iter() {
            if known.contains(&key) {
                continue;
            }
            let span = self
                .table
                .get_key_value(key)
                .and_then(|(name, _)| name.span())
                .or_else(|| item.span());
            let what = format!("`{key}` is no key of {}", self.name);
            match known.iter().find(|word| alike(key, word)) {
                Some(meant) => book.wrong(span, what, format!("did you mean `{meant}`?")),
                None => {
                    let trouble = book.trouble(
                        span,
                        what,
                        format!("it is not used; the keys here are {}", known.join(", ")),
                    );
                    book.warnings.push(trouble);
                }
            }
        }
    }

    fn number(&self, key: &str, book: &mut Book) -> Option<f64> {
        let item = self.table.get(key)?;
        #[allow(
            clippy::cast_precision_loss,
            reason = "ranges are checked later; no sound value is that large"
        )]
        let number = item
            .as_float()
            .or_else(|| item.as_integer().map(|whole| whole as f64));
        let number = number.filter(|number| number.is_finite());
        if number.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no number", self.name),
                format!("write it such as {key} = 12.5"),
            );
        }
        number
    }

    fn needed(&self, key: &str, book: &mut Book) -> f64 {
        if !self.table.contains_key(key) {
            book.wrong(
                self.span.clone(),
                format!("{} has no `{key}`", self.name),
                format!("add {key} = ..."),
            );
        }
        self.number(key, book).unwrap_or(0.0)
    }

    fn count(&self, key: &str, book: &mut Book) -> Option<u32> {
        let item = self.table.get(key)?;
        let count = item
            .as_integer()
            .and_then(|count| u32::try_from(count).ok())
            .filter(|count| (1..=1000).contains(count));
        if count.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no count", self.name),
                "write a whole number from 1".to_owned(),
            );
        }
        count
    }

    fn yes(&self, key: &str, otherwise: bool, book: &mut Book) -> bool {
        let Some(item) = self.table.get(key) else {
            return otherwise;
        };
        item.as_bool().unwrap_or_else(|| {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is neither true nor false", self.name),
                "write true or false".to_owned(),
            );
            otherwise
        })
    }

    fn word<'w>(&self, key: &str, known: &[&'w str], book: &mut Book) -> Option<&'w str> {
        let item = self.table.get(key)?;
        let word = item.as_str().and_then(|word| {
            known
                .iter()
                .copied()
                .find(|one| one.eq_ignore_ascii_case(word))
        });
        if word.is_none() {
            let what = format!(
                "`{key}` of {} is {}, which is not known",
                self.name,
                item.to_string().trim()
            );
            book.wrong(
                self.at(key),
                what,
                format!("write one of \"{}\"", known.join("\", \"")),
            );
        }
        word
    }

    fn text(&self, key: &str, book: &mut Book) -> Option<String> {
        let text = self
            .table
            .get(key)?
            .as_str()
            .map(str::trim)
            .filter(|text| !text.is_empty());
        if text.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no text", self.name),
                "write a name in quotes".to_owned(),
            );
        }
        text.map(str::to_owned)
    }
}

/// Whether one word is another misspelt: one letter more, less or different, or the other
/// without its unit.
fn alike(written: &str, known: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (written.chars().collect(), known.chars().collect());
    let same_start = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let same_end = one
        .iter()
        .rev()
        .zip(other.iter().rev())
        .take_while(|(a, b)| a == b)
        .count();
    let (shorter, longer) = (one.len().min(other.len()), one.len().max(other.len()));
    let one_letter = longer - shorter <= 1 && shorter >= 3 && same_start + same_end + 1 >= longer;
    one_letter
        || known
            .rsplit_once('_')
            .is_some_and(|(bare, _)| bare.len() > 2 && bare == written)
}

fn layout(root: &Fields, book: &mut Book) -> Layout {
    root.only(&ROOT, book);
    let pulleys = tables(root, "pulley", book);
    if pulleys.is_empty() {
        book.wrong(
            root.at("pulley"),
            "no pulley is listed".to_owned(),
            "write [[pulley]] for each, in the sequence in which the belt meets them".to_owned(),
        );
    }
    let pulleys = pulleys.iter().map(|fields| pulley(fields, book)).collect();
    let lies: Vec<(String, Side)> = tables(root, "lies", book)
        .iter()
        .map(|fields| {
            fields.only(&["pulley", "side"], book);
            if !fields.table.contains_key("pulley") {
                book.wrong(
                    fields.span.clone(),
                    "a [[lies]] names no pulley".to_owned(),
                    "add pulley = \"...\"".to_owned(),
                );
            }
            (
                fields.text("pulley", book).unwrap_or_default(),
                side(fields, book),
            )
        })
        .collect();
    Layout {
        pulleys,
        tensioner: table(root, "tensioner", book).map(|fields| tensioner(&fields, book)),
        profile: profile(root, book),
        facts: table(root, "belt", book)
            .map(|fields| facts(&fields, book))
            .unwrap_or_default(),
        lies: (!lies.is_empty()).then_some(lies),
    }
}

fn tables<'t>(root: &Fields<'t>, key: &str, book: &mut Book) -> Vec<Fields<'t>> {
    let Some(item) = root.table.get(key) else {
        return Vec::new();
    };
    let each: Option<Vec<&'t dyn TableLike>> = match item {
        Item::ArrayOfTables(list) => {
            Some(list.iter().map(|table| table as &dyn TableLike).collect())
        }
        Item::Value(toml_edit::Value::Array(list)) => list
            .iter()
            .map(|value| value.as_inline_table().map(|table| table as &dyn TableLike))
            .collect(),
        _ => None,
    };
    let Some(each) = each else {
        book.wrong(
            item.span().or_else(|| root.at(key)),
            format!("`{key}` is no list"),
            format!("write [[{key}]], in two brackets, for each"),
        );
        return Vec::new();
    };
    each.into_iter()
        .enumerate()
        .map(|(at, table)| {
            let name = table.get("name").and_then(Item::as_str);
            let name = name.map_or_else(|| format!("{key} {}", at + 1), str::to_owned);
            Fields {
                table,
                span: place(table),
                name,
            }
        })
        .collect()
}

/// Where a table stands: at its first key.
fn place(table: &dyn TableLike) -> Option<Range<usize>> {
    let keys = table.iter().filter_map(|(key, item)| {
        table
            .get_key_value(key)
            .and_then(|(name, _)| name.span())
            .or_else(|| item.span())
    });
    keys.min_by_key(|span| span.start)
}

fn table<'t>(root: &Fields<'t>, key: &str, book: &mut Book) -> Option<Fields<'t>> {
    let item = root.table.get(key)?;
    let Some(table) = item.as_table_like() else {
        book.wrong(
            item.span(),
            format!("`{key}` is no table"),
            format!("write [{key}], with its lines below"),
        );
        return None;
    };
    let span = item.span().or_else(|| place(table));
    Some(Fields {
        table,
        span,
        name: format!("the {key}"),
    })
}

fn pulley(fields: &Fields, book: &mut Book) -> Pulley {
    fields.only(&PULLEY, book);
    if !fields.table.contains_key("name") {
        book.wrong(
            fields.span.clone(),
            format!("{} has no name", fields.name),
            "add name = \"...\"".to_owned(),
        );
    }
    let name = fields
        .text("name", book)
        .unwrap_or_else(|| fields.name.clone());
    let teeth = fields.count("teeth", book);
    let (x_mm, y_mm) = (fields.needed("x_mm", book), fields.needed("y_mm", book));
    let diameter_mm = match (teeth, fields.table.contains_key("diameter_mm")) {
        // Worked out from the pitch.
        (Some(_), false) => 1.0,
        _ => fields.needed("diameter_mm", book),
    };
    Pulley {
        side: side(fields, book),
        drives: fields.yes("drives", false, book),
        turns: fields
            .word("turns", &["cw", "ccw"], book)
            .map(|word| match word {
                "cw" => Sense::Clockwise,
                _ => Sense::CounterClockwise,
            }),
        face: fields
            .word("face", &["ribbed", "smooth"], book)
            .map(|word| match word {
                "ribbed" => Face::Ribbed,
                _ => Face::Smooth,
            }),
        grooves: fields.count("grooves", book),
        edge_mm: fields.number("edge_mm", book),
        power_kw: fields.number("power_kw", book),
        least_wrap_deg: fields.number("least_wrap_deg", book),
        flange_mm: fields.number("flange_mm", book).unwrap_or(0.0),
        reachable: fields.yes("reachable", true, book),
        teeth,
        mark_deg: fields.number("mark_deg", book),
        ..Pulley::new(name, x_mm, y_mm, diameter_mm)
    }
}

fn side(fields: &Fields, book: &mut Book) -> Side {
    match fields.word("side", &["ribs", "back", "teeth"], book) {
        Some("back") => Side::Back,
        _ => Side::Ribs,
    }
}

fn profile(root: &Fields, book: &mut Book) -> Profile {
    let back_mm = root.number("back_mm", book);
    match root.word("profile", &["PK", "toothed"], book) {
        Some("PK") => Profile::Pk {
            back_mm: back_mm.unwrap_or(PK_BACK_MM),
        },
        Some(_) => Profile::Toothed {
            pitch_mm: root.needed("pitch_mm", book),
            back_mm: back_mm.unwrap_or(0.0),
        },
        None => Profile::AsGiven,
    }
}

fn facts(fields: &Fields, book: &mut Book) -> Facts {
    fields.only(&BELT, book);
    Facts {
        ribs: fields.count("ribs", book),
        friction: fields.number("friction", book),
        back_friction: fields.number("back_friction", book),
        groove_deg: fields.number("groove_deg", book),
        tension_n: fields.number("tension_n", book),
        rpm: fields.number("rpm", book),
    }
}

fn tensioner(fields: &Fields, book: &mut Book) -> Tensioner {
    fields.only(&TENSIONER, book);
    let names = TensionerKind::ALL.map(TensionerKind::name);
    let word = fields.word("kind", &names, book);
    let kind = TensionerKind::ALL
        .into_iter()
        .find(|kind| word == Some(kind.name()))
        .unwrap_or(TensionerKind::SpringArm);
    let moves = (kind != TensionerKind::StretchBelt).then(|| {
        if !fields.table.contains_key("pulley") {
            book.wrong(
                fields.span.clone(),
                "the tensioner names no pulley".to_owned(),
                "add pulley = \"...\", the one that moves".to_owned(),
            );
        }
        let name = fields.text("pulley", book).unwrap_or_default();
        (name, travel(fields, book))
    });
    Tensioner {
        kind,
        moves,
        torque_nm: fields.number("torque_nm", book),
        force_n: fields.number("force_n", book),
    }
}

fn travel(fields: &Fields, book: &mut Book) -> Travel {
    if fields.table.contains_key("from_x_mm") || fields.table.contains_key("to_x_mm") {
        return Travel::Line {
            from_x_mm: fields.needed("from_x_mm", book),
            from_y_mm: fields.needed("from_y_mm", book),
            to_x_mm: fields.needed("to_x_mm", book),
            to_y_mm: fields.needed("to_y_mm", book),
        };
    }
    Travel::Arc {
        pivot_x_mm: fields.needed("pivot_x_mm", book),
        pivot_y_mm: fields.needed("pivot_y_mm", book),
        min_deg: fields.needed("min_deg", book),
        max_deg: fields.needed("max_deg", book),
    }
}
