//! What is asked: fields with their units, limits and choices.

use crate::asked::{Asked, Shop};
use crate::phrases::form as say;
use crate::{Answer, Trouble};
use measure::{Customary, Unit};
use phrases::{Language, speaking};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::ops::Deref;

/// A text in the language that is spoken.
pub type Say = fn() -> &'static str;

/// What may be chosen: as written, and as said.
pub type Choices = &'static [(&'static str, Say)];

/// No text: a hint that is not needed.
pub(crate) fn none() -> &'static str {
    ""
}

/// What may be chosen, with the words as they are said now.
#[must_use]
pub fn choices(of: Choices) -> Vec<(&'static str, &'static str)> {
    of.iter().map(|(code, words)| (*code, words())).collect()
}

/// One question that can be asked with no order.
#[derive(Debug, Clone, Copy)]
pub struct Calculator {
    /// Its name in an address and on the command line, within its room.
    pub code: &'static str,
    pub(crate) name: Say,
    pub(crate) what: Say,
    pub(crate) cautions: &'static [Say],
    pub(crate) how: fn() -> Vec<&'static str>,
    /// The questions, in the sequence in which they are asked.
    pub form: &'static [Part],
    /// What is written there before anybody has written anything.
    pub at_first: &'static [(&'static str, Say)],
    /// From the fields to the answer. Nothing, where something is wrong with a field: then the
    /// trouble stands beside it.
    pub run: fn(&mut Asked) -> Option<Answer>,
}

/// A piece of a form.
#[derive(Debug, Clone, Copy)]
pub enum Part {
    /// A question.
    Field(Field),
    /// A heading over those that follow.
    Heading(Say),
    /// Questions that are written down elsewhere.
    Group(&'static [Part]),
    /// The same questions for each of several things: one row of them a thing. Their fields
    /// are numbered: `across-1`, `across-2`.
    Rows {
        /// Its name within the page.
        id: &'static str,
        /// What one of them is called.
        title: Say,
        /// More than this nobody has.
        most: usize,
        /// What is asked of each.
        parts: &'static [Part],
    },
    /// A square to tap: each tap writes where it was into the next row's two fields.
    Places {
        /// What is tapped, in a few words.
        title: Say,
        /// The field of a row that takes how far to the right, and the one for how far up.
        fields: (&'static str, &'static str),
        /// What is called a row: its name is the number beside the place.
        rows: &'static str,
        /// Left, bottom, right and top of the square, in millimetres.
        corners_mm: (f64, f64, f64, f64),
    },
    /// Questions folded away under a few words.
    More {
        /// Its name within the page.
        id: &'static str,
        /// What it says when folded.
        title: Say,
        /// The questions.
        parts: &'static [Part],
    },
}

/// A question.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Its name in an address and on the command line.
    pub name: &'static str,
    pub(crate) label: Label,
    pub(crate) hint: Say,
    /// What may be written.
    pub takes: Takes,
    /// Not asked while another field holds one of these.
    pub unless: Option<(&'static str, &'static [&'static str])>,
}

/// How a field is asked.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Label {
    /// In words of its own.
    Said(Say),
    /// As the step of a fluid that it ticks.
    Step(&'static fluids::Step),
}

/// What may be written into a field.
#[derive(Debug, Clone, Copy)]
pub enum Takes {
    /// Words.
    Text,
    /// What somebody said: read, and never kept.
    Said,
    /// Several lines of them.
    Lines,
    /// Several lines, or a file: too much for an address.
    File,
    /// Which of several answers a link asks for; never asked of a person.
    Link,
    /// `yes`, or nothing.
    Tick,
    /// One of these: as written, as said. None is chosen beforehand where the answer rests on it.
    Choice {
        /// As written, and as said.
        of: Choices,
        /// Whether the first is meant where nothing is written.
        first: bool,
    },
    /// A quantity; a bare number is in the unit that stands beside the field.
    Number {
        /// The unit of a bare number.
        units: Units,
        /// Least and most that can be meant, in the metric unit.
        limits: Option<(f64, f64)>,
    },
}

/// An answer as an order keeps it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Its room and its own name.
    pub calculator: String,
    /// The version of what is kept.
    pub version: u32,
    /// The fields, as JSON.
    pub inputs: String,
    /// The fact and the figures, as JSON.
    pub outputs: String,
    /// How it was found.
    pub working: String,
}

/// The unit of a bare number, by what the shop reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Units {
    /// Where the shop reads metric units.
    pub metric: Unit,
    /// Where it reads US customary ones.
    pub us: Unit,
}

/// The units that fields are in.
#[derive(Debug, Clone, Copy)]
pub struct Holds;

impl Holds {
    /// A length at a joint.
    pub const LENGTH: Units = Units::of(Unit::Millimetre, Unit::Inch);
    /// A height above the sea.
    pub const HEIGHT: Units = Units::of(Unit::Metre, Unit::Foot);
    /// A torque.
    pub const TORQUE: Units = Units::of(Unit::NewtonMetre, Unit::PoundFoot);
    /// A force.
    pub const FORCE: Units = Units::of(Unit::Newton, Unit::PoundForce);
    /// An angle.
    pub const ANGLE: Units = Units::of(Unit::Degree, Unit::Degree);
    /// A volume.
    pub const VOLUME: Units = Units::of(Unit::Litre, Unit::UsQuart);
    /// A pressure.
    pub const PRESSURE: Units = Units::of(Unit::Bar, Unit::PoundPerSquareInch);
    /// A temperature.
    pub const TEMPERATURE: Units = Units::of(Unit::Celsius, Unit::Fahrenheit);
    /// A mass of a filling.
    pub const FILLING: Units = Units::of(Unit::Gram, Unit::Ounce);
    /// A share of a whole.
    pub const SHARE: Units = Units::of(Unit::Percent, Unit::Percent);
    /// A difference of temperatures.
    pub const KELVIN: Units = Units::of(Unit::KelvinDifference, Unit::KelvinDifference);
    /// A turning speed.
    pub const TURNING: Units = Units::of(Unit::RevolutionPerMinute, Unit::RevolutionPerMinute);
    /// A road speed.
    pub const SPEED: Units = Units::of(Unit::KilometrePerHour, Unit::MilePerHour);
    /// A voltage.
    pub const VOLTAGE: Units = Units::of(Unit::Volt, Unit::Volt);
    /// A time.
    pub const TIME: Units = Units::of(Unit::Minute, Unit::Minute);
    /// An area.
    pub const AREA: Units = Units::of(Unit::SquareCentimetre, Unit::SquareInch);
}

impl Units {
    const fn of(metric: Unit, us: Unit) -> Units {
        Units { metric, us }
    }

    /// The one that a shop reads.
    #[must_use]
    pub fn read_by(self, customary: Customary) -> Unit {
        match customary {
            Customary::Metric => self.metric,
            Customary::Us => self.us,
        }
    }
}

impl Part {
    const fn field(name: &'static str, label: Say, takes: Takes, hint: Say) -> Part {
        Part::Field(Field {
            name,
            label: Label::Said(label),
            hint,
            takes,
            unless: None,
        })
    }

    /// Words.
    #[must_use]
    pub const fn text(name: &'static str, label: Say, hint: Say) -> Part {
        Part::field(name, label, Takes::Text, hint)
    }

    /// What somebody said, in their words.
    #[must_use]
    pub const fn said(name: &'static str, label: Say, hint: Say) -> Part {
        Part::field(name, label, Takes::Said, hint)
    }

    /// Several lines.
    #[must_use]
    pub const fn lines(name: &'static str, label: Say, hint: Say) -> Part {
        Part::field(name, label, Takes::Lines, hint)
    }

    /// Several lines, or a file.
    #[must_use]
    pub const fn file(name: &'static str, label: Say, hint: Say) -> Part {
        Part::field(name, label, Takes::File, hint)
    }

    /// A box to tick.
    #[must_use]
    pub const fn tick(name: &'static str, label: Say, hint: Say) -> Part {
        Part::field(name, label, Takes::Tick, hint)
    }

    /// One of a few; the first where nothing is written.
    #[must_use]
    pub const fn choice(name: &'static str, label: Say, of: Choices) -> Part {
        Part::field(name, label, Takes::Choice { of, first: true }, none)
    }

    /// One of a few; none until somebody says so.
    #[must_use]
    pub const fn asked(name: &'static str, label: Say, of: Choices) -> Part {
        Part::field(name, label, Takes::Choice { of, first: false }, none)
    }

    /// A quantity.
    #[must_use]
    pub const fn number(name: &'static str, label: Say, units: Units, hint: Say) -> Part {
        let limits = None;
        Part::field(name, label, Takes::Number { units, limits }, hint)
    }

    /// A quantity between two ends, told in the metric unit.
    #[must_use]
    pub const fn within(
        name: &'static str,
        label: Say,
        units: Units,
        limits: (f64, f64),
        hint: Say,
    ) -> Part {
        let limits = Some(limits);
        Part::field(name, label, Takes::Number { units, limits }, hint)
    }

    /// The same question, not asked while `field` holds one of these.
    #[must_use]
    pub const fn unless(self, field: &'static str, holds: &'static [&'static str]) -> Part {
        match self {
            Part::Field(mut own) => {
                own.unless = Some((field, holds));
                Part::Field(own)
            }
            other => other,
        }
    }
}

/// A field of a form under the name that it is written by.
#[derive(Debug, Clone)]
pub struct Named {
    /// Its own name, with the number of its row.
    pub name: String,
    /// How many rows there may be, where it stands in one.
    pub rows: Option<usize>,
    field: &'static Field,
}

impl Deref for Named {
    type Target = Field;

    fn deref(&self) -> &Field {
        self.field
    }
}

/// Every field of a form, those folded away and those of every row too.
#[must_use]
pub fn fields(parts: &'static [Part]) -> Vec<Named> {
    flat(parts, true)
}

/// Every field of a form, those of rows once.
#[must_use]
pub fn fields_once(parts: &'static [Part]) -> Vec<Named> {
    flat(parts, false)
}

fn flat(parts: &'static [Part], every_row: bool) -> Vec<Named> {
    let each = parts.iter().flat_map(|part| match part {
        Part::Field(field) => vec![Named {
            name: field.name.to_owned(),
            rows: None,
            field,
        }],
        Part::Heading(_) | Part::Places { .. } => Vec::new(),
        Part::Group(parts) | Part::More { parts, .. } => flat(parts, every_row),
        Part::Rows { most, parts, .. } => {
            let last = if every_row { *most } else { 1 };
            (1..=last)
                .flat_map(|row| {
                    flat(parts, every_row).into_iter().map(move |one| Named {
                        name: in_row(&one.name, row),
                        rows: Some(*most),
                        ..one
                    })
                })
                .collect()
        }
    });
    each.collect()
}

/// The name of a field in a row, from 1.
#[must_use]
pub fn in_row(name: &str, row: usize) -> String {
    format!("{name}-{row}")
}

impl Field {
    /// How it is asked.
    #[must_use]
    pub fn label(&self) -> &'static str {
        match self.label {
            Label::Said(label) => label(),
            Label::Step(step) => step.text(),
        }
    }

    /// An example, or what is assumed where nothing is written.
    #[must_use]
    pub fn hint(&self) -> &'static str {
        (self.hint)()
    }

    /// How it is asked, with the unit of a bare number.
    #[must_use]
    pub fn label_in(&self, customary: Customary) -> String {
        match self.takes {
            Takes::Number { units, .. } => {
                format!("{}, {}", self.label(), units.read_by(customary).symbol())
            }
            _ => self.label().to_owned(),
        }
    }
}

impl Named {
    fn json(&self) -> Value {
        let (kind, more) = match self.takes {
            Takes::Text | Takes::Said => ("text", json!({})),
            Takes::Lines => ("lines", json!({})),
            Takes::File => ("file", json!({})),
            Takes::Tick => ("tick", json!({})),
            Takes::Link => ("link", json!({})),
            Takes::Choice { of, .. } => {
                let codes: Vec<&str> = of.iter().map(|(code, _)| *code).collect();
                ("choice", json!({ "choices": codes }))
            }
            Takes::Number { units, limits } => (
                "number",
                json!({
                    "unit": units.metric.symbol(),
                    "us_unit": units.us.symbol(),
                    "limits": limits.map(|(least, most)| [least, most]),
                }),
            ),
        };
        let mut out = json!({
            "name": self.name,
            // A soft hyphen is for a narrow page.
            "label": self.label().replace('\u{ad}', ""),
            "hint": self.hint(),
            "kind": kind,
            "rows": self.rows,
        });
        if let (Some(all), Some(more)) = (out.as_object_mut(), more.as_object()) {
            all.extend(more.clone());
        }
        out
    }
}

impl Calculator {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &'static str {
        (self.name)()
    }

    /// What it is for, in a line.
    #[must_use]
    pub fn what(&self) -> &'static str {
        (self.what)()
    }

    /// What hurts, before anything is done.
    #[must_use]
    pub fn cautions(&self) -> Vec<&'static str> {
        self.cautions.iter().map(|text| text()).collect()
    }

    /// How it is done at the vehicle, where that is more than reading a figure.
    #[must_use]
    pub fn how(&self) -> Vec<&'static str> {
        (self.how)()
    }

    /// Its fields as written, with the unit of each bare number, and what the shop knows.
    #[must_use]
    pub fn asked(&self, fields: BTreeMap<String, String>, shop: &Shop) -> Asked {
        let mut asked = Asked::new(fields, shop.clone());
        if crate::fields(self.form)
            .iter()
            .any(|field| field.name == "altitude")
        {
            asked = asked.at_the_shop();
        }
        asked.complete(self.form);
        asked
    }

    /// What it answers, for a caller that has no form to show.
    ///
    /// # Errors
    /// [`Trouble`], one for each field that is wrong.
    pub fn answer(
        &self,
        fields: BTreeMap<String, String>,
        shop: &Shop,
    ) -> Result<Answer, Vec<Trouble>> {
        let known = crate::fields(self.form);
        let is_known = |name: &String| known.iter().any(|field| field.name == *name);
        if let Some(name) = fields.keys().find(|name| !is_known(name)) {
            let names: Vec<String> = fields_once(self.form)
                .into_iter()
                .map(|field| field.name)
                .collect();
            return Err(vec![Trouble {
                place: name.clone(),
                what: say::asks_no_such_thing(self.name()),
                mend: say::write_one_of(names.join(", ")),
            }]);
        }
        let mut asked = self.asked(fields, shop);
        let answer = (self.run)(&mut asked);
        match answer {
            Some(answer) if asked.troubles.is_empty() => Ok(answer),
            _ => Err(asked.told()),
        }
    }

    /// What is kept of an answer with an order: `calculator`, `version`, `inputs`, `outputs` and
    /// `working`, all but the last as JSON. What somebody said in their own words is not in it,
    /// nor a whole recording: a record holds no free text. It is kept in English whoever asked,
    /// so that a record does not hang on what was spoken.
    #[must_use]
    pub fn kept(&self, room: &str, asked: &Asked, answer: &Answer) -> Kept {
        let english = speaking(Language::English, || (self.run)(&mut asked.clone()));
        let answer = english.as_ref().unwrap_or(answer);
        let inputs: BTreeMap<String, &str> = fields(self.form)
            .into_iter()
            .filter(|field| !matches!(field.takes, Takes::Said | Takes::Lines | Takes::File))
            .filter_map(|field| Some((field.name.clone(), asked.some(&field.name)?)))
            .collect();
        Kept {
            calculator: format!("{room} {}", self.code),
            version: 1,
            inputs: json!(inputs).to_string(),
            outputs: json!({ "fact": answer.fact, "tone": answer.tone, "figures": answer.outputs })
                .to_string(),
            working: answer.working_text(),
        }
    }

    /// Whether its questions are too long for an address.
    #[must_use]
    pub fn takes_file(&self) -> bool {
        let all = fields(self.form);
        all.iter().any(|field| matches!(field.takes, Takes::File))
    }

    /// What it asks, for a program.
    #[must_use]
    pub fn json(&self) -> Value {
        let fields: Vec<Value> = fields_once(self.form).iter().map(Named::json).collect();
        json!({
            "code": self.code,
            "name": self.name(),
            "what": self.what(),
            "cautions": self.cautions(),
            "fields": fields,
        })
    }
}
