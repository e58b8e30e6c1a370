//! A way as it is kept: in the words of whoever took it, and beside them how every other language
//! says the same, so that each reader reads their own.

use super::{Fields, Told, ways};
use fastener::repair::Planning;
use measure::Customary;
use phrases::{Language, speaking, spoken};
use serde_json::Value;
use std::collections::BTreeMap;

/// Texts by their place in what is kept, as a JSON pointer (RFC 6901).
pub type Texts = BTreeMap<String, String>;

/// A way with what every other language says of it. A language in which it does not come to the
/// same lines is left out.
#[must_use]
pub fn kept(told: &Told, sits: Option<&str>, planning: &Planning, customary: Customary) -> Told {
    let own = texts(told);
    let other = |language: Language| {
        let again = speaking(language, || said(told, sits, planning, customary))?;
        let again = texts(&again);
        let differs =
            |(at, text): (String, String)| (own.get(&at) != Some(&text)).then_some((at, text));
        own.keys().eq(again.keys()).then(|| {
            let texts = again.into_iter().filter_map(differs).collect();
            (language.tag().to_owned(), texts)
        })
    };
    let others = Language::ALL.into_iter().filter(|one| *one != spoken());
    Told {
        in_other_words: others.filter_map(other).collect(),
        ..told.clone()
    }
}

/// The same way, as it is said in what is spoken.
fn said(
    told: &Told,
    sits: Option<&str>,
    planning: &Planning,
    customary: Customary,
) -> Option<Told> {
    let fields: &Fields = &told.fields;
    let all = ways(fields, sits, planning, customary).ok()?;
    let mut all = all.into_iter();
    all.find(|other| other.way.rank == told.way.rank && other.way.code == told.way.code)
}

impl Told {
    /// As it is read in what is spoken; as it was said, where that was not kept.
    #[must_use]
    pub fn in_spoken_words(self) -> Self {
        let Some(texts) = self.in_other_words.get(spoken().tag()) else {
            return self;
        };
        let mut value = value_of(&self);
        for (at, text) in texts {
            if let Some(found) = value.pointer_mut(at) {
                *found = Value::String(text.clone());
            }
        }
        serde_json::from_value(value).unwrap_or(self)
    }

    /// What each of its steps is called as it was said, and how it is read in what is spoken.
    pub fn steps_read(self) -> impl Iterator<Item = (String, String)> {
        let read = self.clone().in_spoken_words();
        let said = self.way.steps.into_iter().map(|step| step.what);
        said.zip(read.way.steps.into_iter().map(|step| step.what))
    }
}

/// Every text of it but what was typed.
fn texts(told: &Told) -> Texts {
    let mut value = value_of(told);
    if let Some(members) = value.as_object_mut() {
        members.remove("fields");
        members.remove("in_other_words");
    }
    let mut out = Texts::new();
    gather(&value, "", &mut out);
    out
}

fn value_of(told: &Told) -> Value {
    serde_json::to_value(told).expect("words, numbers and lists are always JSON")
}

fn gather(value: &Value, at: &str, out: &mut Texts) {
    match value {
        Value::String(text) => {
            out.insert(at.to_owned(), text.clone());
        }
        Value::Array(all) => {
            for (nth, one) in all.iter().enumerate() {
                gather(one, &format!("{at}/{nth}"), out);
            }
        }
        Value::Object(members) => {
            for (name, one) in members {
                gather(one, &format!("{at}/{name}"), out);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}
