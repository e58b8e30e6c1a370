//! The tables as they are written: TOML, one file a system.

use crate::branch::Branch;
use crate::gates::Gates;
use crate::phrases as say;
use crate::said::Grade;
use crate::work::{Code, Shared, Work, WorkSet};
use serde::Deserialize;
use states::{Gate, Kind, Zone};
use std::collections::BTreeMap;
use thiserror::Error;

/// Why a table cannot be used. Each says where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[allow(missing_docs, reason = "the messages say it")]
pub enum TableError {
    #[error("{}", say::not_toml(.place, .what))]
    NotToml { place: String, what: String },
    #[error("{}", say::no_such_word(.place, .word, .meant, .known))]
    NoSuchWord {
        place: String,
        word: String,
        meant: &'static str,
        known: String,
    },
    #[error("{}", say::too_many_works(.place, .most))]
    TooManyWorks { place: String, most: usize },
    #[error("{}", say::stands_there_twice(.place, .id))]
    Twice { place: String, id: String },
    #[error("{}", say::may_not_be_laxer(.place, .name, .means))]
    Laxer {
        place: String,
        name: String,
        means: String,
    },
    #[error("{}", say::holds_no_word(.place, .name))]
    NoWord { place: String, name: String },
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SortFile {
    pub version: u32,
    pub system: String,
    pub zone: String,
    #[serde(default)]
    pub sort: Vec<RawSort>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub(crate) struct RawSort {
    pub id: String,
    pub kind: String,
    pub kinds: Vec<String>,
    pub system: String,
    pub zone: String,
    pub safety: bool,
    pub shut: Vec<String>,
    pub owed: Vec<String>,
    pub torque_shuts: String,
    pub lamp_shuts: String,
    pub brings: Vec<String>,
    pub proves: Option<bool>,
    pub keeps_kind: bool,
    pub doubt: bool,
    pub anywhere: bool,
    pub along_with: Vec<String>,
    pub unless_with: Vec<String>,
    pub reads_as: String,
    pub caution: Vec<String>,
    pub source: String,
    pub names: Vec<String>,
    pub german: Vec<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WorkFile {
    pub version: u32,
    pub work: Vec<RawWork>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RawWork {
    pub code: String,
    pub system: String,
    pub shuts: Option<String>,
    #[serde(default)]
    pub said_done: Vec<String>,
    pub shared: String,
    pub english: String,
    pub german: String,
    pub done_when: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SourceFile {
    pub version: u32,
    pub source: BTreeMap<String, RawSource>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RawSource {
    pub grade: String,
    pub text: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WordFile {
    pub version: u32,
    pub same: BTreeMap<String, Vec<String>>,
    pub sides: BTreeMap<String, String>,
    pub numbers: BTreeMap<String, u16>,
    pub filler: Words,
    pub places: Words,
    pub joins: Words,
    pub asides: Asides,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Words {
    pub words: Vec<String>,
}

/// Clauses that say something about the thing before them and name no thing of their own.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asides {
    pub begins: Vec<String>,
    pub holds: Vec<String>,
    pub accessories: Vec<String>,
    pub seals: Vec<String>,
    pub off: Vec<String>,
    pub back: Vec<String>,
    pub drained: Vec<String>,
    pub loosened: Vec<String>,
    pub opened: Vec<String>,
    pub disturbed: Vec<String>,
    pub torqued: Vec<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct GermanFile {
    pub version: u32,
    pub parts: BTreeMap<String, String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HeadFile {
    pub version: u32,
    pub head: Vec<RawHead>,
    pub verb: Vec<RawVerb>,
    pub markers: Words,
    pub work_first: Words,
    pub weak: Words,
    pub qualifiers: Words,
    pub put_in_at: BTreeMap<String, String>,
    pub short: BTreeMap<String, BTreeMap<String, String>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RawHead {
    pub kind: String,
    pub keep: String,
    #[serde(default)]
    pub shut: String,
    #[serde(default)]
    pub system: String,
    pub words: Vec<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RawVerb {
    pub words: Vec<String>,
    pub owed: Vec<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct NoneFile {
    pub version: u32,
    pub first: Vec<String>,
    pub last: Vec<String>,
    pub names: Vec<String>,
}

/// One sort of thing.
#[derive(Debug, Clone)]
pub(crate) struct Sort {
    pub id: Code,
    /// More than one for what comes as a kit; none for what is no vehicle item.
    pub kinds: Vec<Option<Kind>>,
    pub system: Branch,
    pub zone: Zone,
    pub safety: bool,
    pub off: Gates,
    pub owed: WorkSet,
    pub earlier: Vec<(usize, Gate)>,
    pub brings: WorkSet,
    pub proves: bool,
    /// Its kind stays whatever the last word of its name is: a bleed screw is a part.
    pub keeps_kind: bool,
    /// Its name may mean more or less: the worse is taken, and asked.
    pub doubt: bool,
    /// A thing put in that belongs to whatever it was left in.
    pub anywhere: bool,
    pub along_with: Vec<Code>,
    pub unless_with: Vec<Code>,
    pub reads_as: Option<Code>,
    pub caution: Vec<Code>,
    pub grade: Grade,
    pub source: Code,
}

impl Sort {
    pub fn kind(&self) -> Option<Kind> {
        self.kinds.first().copied().flatten()
    }
}

pub(crate) fn parse<T: for<'de> Deserialize<'de>>(
    place: &str,
    text: &str,
) -> Result<T, TableError> {
    toml::from_str(text).map_err(|error| TableError::NotToml {
        place: place.to_string(),
        what: error.to_string(),
    })
}

fn no_such(place: &str, word: &str, meant: &'static str, known: String) -> TableError {
    TableError::NoSuchWord {
        place: place.to_string(),
        word: word.to_string(),
        meant,
        known,
    }
}

const KINDS: [(&str, Kind); 11] = [
    ("part", Kind::Part),
    ("cover", Kind::Cover),
    ("hose", Kind::Hose),
    ("seal", Kind::Seal),
    ("belt", Kind::Belt),
    ("fasteners", Kind::Fasteners),
    ("clips", Kind::Clips),
    ("connector", Kind::Connector),
    ("fluid", Kind::Fluid),
    ("put-in", Kind::PutIn),
    ("work", Kind::Work),
];

const ZONES: [(&str, Zone); 7] = [
    ("above", Zone::Above),
    ("below", Zone::Below),
    ("wheel-well", Zone::WheelWell),
    ("cabin", Zone::Cabin),
    ("rear", Zone::Rear),
    ("outside", Zone::Outside),
    ("unknown", Zone::Unknown),
];

/// The code of a kind; `none` for what is no vehicle item.
#[must_use]
pub fn kind_code(kind: Option<Kind>) -> &'static str {
    kind.and_then(|kind| KINDS.into_iter().find(|(_, known)| *known == kind))
        .map_or("none", |(code, _)| code)
}

/// The code of a zone.
#[must_use]
pub fn zone_code(zone: Zone) -> &'static str {
    ZONES
        .into_iter()
        .find(|(_, known)| *known == zone)
        .map_or("unknown", |(code, _)| code)
}

pub(crate) fn kind(place: &str, word: &str) -> Result<Option<Kind>, TableError> {
    if word == "none" {
        return Ok(None);
    }
    KINDS
        .into_iter()
        .find(|(code, _)| *code == word)
        .map(|(_, kind)| Some(kind))
        .ok_or_else(|| {
            let known: Vec<_> = KINDS.iter().map(|(code, _)| *code).collect();
            no_such(place, word, say::kind(), known.join(", "))
        })
}

fn zone(place: &str, word: &str) -> Result<Zone, TableError> {
    ZONES
        .into_iter()
        .find(|(code, _)| *code == word)
        .map(|(_, zone)| zone)
        .ok_or_else(|| {
            let known: Vec<_> = ZONES.iter().map(|(code, _)| *code).collect();
            no_such(place, word, say::zone(), known.join(", "))
        })
}

pub(crate) fn branch(place: &str, word: &str) -> Result<Branch, TableError> {
    Branch::read(word).ok_or_else(|| {
        let known: Vec<_> = Branch::all().map(Branch::code).collect();
        no_such(place, word, say::system(), known.join(", "))
    })
}

pub(crate) fn gate(place: &str, word: &str) -> Result<Gate, TableError> {
    Gates::gate(word)
        .ok_or_else(|| no_such(place, word, say::gate(), Gates::ALL.codes().join(", ")))
}

pub(crate) fn works(place: &str, known: &[Work], words: &[String]) -> Result<WorkSet, TableError> {
    words.iter().try_fold(WorkSet::default(), |set, word| {
        let at = known
            .iter()
            .position(|work| *work.code == **word)
            .ok_or_else(|| {
                no_such(
                    place,
                    word,
                    say::work(),
                    say::those_of_the_works().to_string(),
                )
            })?;
        Ok(set.and(WorkSet::one(at)))
    })
}

pub(crate) fn read_work(place: &str, raw: &RawWork) -> Result<Work, TableError> {
    let shared = match raw.shared.as_str() {
        "order" => Shared::Order,
        "wheel" => Shared::Wheel,
        "item" => Shared::Item,
        other => {
            return Err(no_such(
                place,
                other,
                say::share(),
                "order, wheel, item".to_string(),
            ));
        }
    };
    Ok(Work {
        code: raw.code.as_str().into(),
        system: branch(place, &raw.system)?,
        shuts: raw
            .shuts
            .as_deref()
            .map(|word| gate(place, word))
            .transpose()?,
        shared,
        english: raw.english.as_str().into(),
        german: raw.german.as_str().into(),
        done_when: raw.done_when.as_str().into(),
    })
}

/// Finds a source by its id.
pub(crate) type Sources<'a> = dyn Fn(&str) -> Result<(Grade, Code), TableError> + 'a;

/// A sort from its written form. `file` gives system and zone where the sort names none.
pub(crate) fn read_sort(
    place: &str,
    file: (Branch, Zone),
    raw: &RawSort,
    known: &[Work],
    source: &Sources<'_>,
) -> Result<Sort, TableError> {
    let place = &format!("{place}, {}", raw.id);
    let kinds = if raw.kinds.is_empty() {
        vec![kind(place, &raw.kind)?]
    } else {
        raw.kinds
            .iter()
            .map(|word| kind(place, word))
            .collect::<Result<_, _>>()?
    };
    let mut off = Gates::NONE;
    for word in &raw.shut {
        off = off.with(gate(place, word)?);
    }
    let mut earlier = Vec::new();
    for (work, word) in [
        ("torque", &raw.torque_shuts),
        ("lamp-works", &raw.lamp_shuts),
    ] {
        if !word.is_empty() {
            let at = known.iter().position(|known| &*known.code == work);
            earlier.push((at.unwrap_or_default(), gate(place, word)?));
        }
    }
    let owed = works(place, known, &raw.owed)?;
    if kinds[0] == Some(Kind::Work) {
        for at in owed.iter() {
            off = off.and(known[at].gates());
        }
    }
    let codes = |words: &[String]| words.iter().map(|word| word.as_str().into()).collect();
    let (grade, source) = source(&raw.source)?;
    Ok(Sort {
        id: raw.id.as_str().into(),
        kinds,
        system: if raw.system.is_empty() {
            file.0
        } else {
            branch(place, &raw.system)?
        },
        zone: if raw.zone.is_empty() {
            file.1
        } else {
            zone(place, &raw.zone)?
        },
        safety: raw.safety,
        off,
        owed,
        earlier,
        brings: works(place, known, &raw.brings)?,
        proves: raw.proves.unwrap_or(true),
        keeps_kind: raw.keeps_kind,
        doubt: raw.doubt,
        anywhere: raw.anywhere,
        along_with: codes(&raw.along_with),
        unless_with: codes(&raw.unless_with),
        reads_as: (!raw.reads_as.is_empty()).then(|| raw.reads_as.as_str().into()),
        caution: codes(&raw.caution),
        grade,
        source,
    })
}

/// The system and zone that a file gives to its sorts.
pub(crate) fn file_default(place: &str, file: &SortFile) -> Result<(Branch, Zone), TableError> {
    Ok((branch(place, &file.system)?, zone(place, &file.zone)?))
}

pub(crate) fn grade(place: &str, word: &str) -> Result<Grade, TableError> {
    Ok(match word {
        "published" => Grade::Published,
        "common-practice" => Grade::CommonPractice,
        "memory" => Grade::Memory,
        "shop" => Grade::Shop,
        other => {
            return Err(no_such(
                place,
                other,
                say::grade(),
                "published, common-practice, memory".to_string(),
            ));
        }
    })
}
