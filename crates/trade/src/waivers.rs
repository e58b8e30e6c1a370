//! Who may let what through, and the cautions in words.

use crate::branch::Branch;
use crate::gates::Gates;
use crate::table::{self, TableError};
use serde::Deserialize;
use states::Gate;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// What nobody may let through.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Never {
    /// Its id.
    pub id: String,
    /// In words.
    pub what: String,
    /// The works it is about.
    pub works: Vec<String>,
    /// The systems it is about; none where it is about all.
    pub systems: Vec<Branch>,
}

/// What somebody may let through.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiver {
    /// Its id.
    pub id: String,
    /// Who: `foreman` (whom the owner names), `technician` (in charge of the order), `customer`.
    pub who: String,
    /// Whether it needs to be written.
    pub written: bool,
    /// In words.
    pub what: String,
    /// The works it lets wait.
    pub works: Vec<String>,
    /// The gate it opens.
    pub gate: Gate,
    /// What it becomes, where it does not go away.
    pub becomes: Option<String>,
    /// What ends it, where it is for once.
    pub ends_with: Option<String>,
}

/// All waivers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waivers {
    /// The version of the list.
    pub version: u32,
    /// What nobody may let through.
    pub never: Vec<Never>,
    /// What somebody may.
    pub may: Vec<Waiver>,
}

/// A caution in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// In English.
    pub english: String,
    /// In German.
    pub german: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    version: u32,
    never: Vec<RawNever>,
    may: Vec<RawWaiver>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawNever {
    id: String,
    what: String,
    works: Vec<String>,
    systems: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawWaiver {
    id: String,
    who: String,
    written: bool,
    what: String,
    works: Vec<String>,
    gate: String,
    becomes: Option<String>,
    ends_with: Option<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CautionFile {
    #[serde(rename = "version")]
    _version: u32,
    caution: BTreeMap<String, RawCaution>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawCaution {
    english: String,
    german: String,
}

const PLACE: &str = "waivers.toml";

fn read() -> Result<Waivers, TableError> {
    let file: File = table::parse(PLACE, include_str!("../data/waivers.toml"))?;
    let systems = |words: &[String]| {
        words
            .iter()
            .map(|word| table::branch(PLACE, word))
            .collect::<Result<Vec<_>, _>>()
    };
    let never = file
        .never
        .into_iter()
        .map(|raw| {
            Ok(Never {
                systems: systems(&raw.systems)?,
                id: raw.id,
                what: raw.what,
                works: raw.works,
            })
        })
        .collect::<Result<_, TableError>>()?;
    let may = file
        .may
        .into_iter()
        .map(|raw| {
            Ok(Waiver {
                gate: table::gate(PLACE, &raw.gate)?,
                id: raw.id,
                who: raw.who,
                written: raw.written,
                what: raw.what,
                works: raw.works,
                becomes: raw.becomes,
                ends_with: raw.ends_with,
            })
        })
        .collect::<Result<_, TableError>>()?;
    Ok(Waivers {
        version: file.version,
        never,
        may,
    })
}

/// Who may let what through.
///
/// # Panics
///
/// Never: a test reads the list as it is shipped.
#[must_use]
pub fn waivers() -> &'static Waivers {
    static LIST: OnceLock<Waivers> = OnceLock::new();
    LIST.get_or_init(|| read().expect("the shipped list is read by a test of this crate"))
}

/// The cautions in words, by their code.
///
/// # Panics
///
/// Never: a test reads the list as it is shipped.
#[must_use]
pub fn cautions() -> &'static BTreeMap<String, Caution> {
    static LIST: OnceLock<BTreeMap<String, Caution>> = OnceLock::new();
    LIST.get_or_init(|| {
        let file: CautionFile =
            table::parse("cautions.toml", include_str!("../data/cautions.toml"))
                .expect("the shipped list is read by a test of this crate");
        file.caution
            .into_iter()
            .map(|(code, raw)| {
                (
                    code,
                    Caution {
                        english: raw.english,
                        german: raw.german,
                    },
                )
            })
            .collect()
    })
}

impl Waivers {
    /// Who may let this work wait at this gate for a thing of this system; none where nobody may.
    ///
    /// ```
    /// use states::Gate;
    /// use trade::{Branch, waivers};
    ///
    /// let list = waivers();
    /// assert_eq!(list.who("level-cold", Branch::Cooling, Gate::HandOver)[0].who, "foreman");
    /// assert!(list.who("pedal-hard", Branch::Brakes, Gate::Road).is_empty());
    /// assert!(list.who("leak-look", Branch::Fuel, Gate::Road).is_empty());
    /// ```
    #[must_use]
    pub fn who(&self, work: &str, system: Branch, gate: Gate) -> Vec<&Waiver> {
        let open = Gates::NONE.with(gate);
        let barred = |waiver: &Waiver| {
            waiver.id != "push-with-brakes-open"
                && self.never.iter().any(|never| {
                    never.works.iter().any(|known| known == work)
                        && (never.systems.is_empty() || never.systems.contains(&system))
                })
        };
        self.may
            .iter()
            .filter(|waiver| waiver.works.iter().any(|known| known == work))
            .filter(|waiver| waiver.gate == gate && open.has(gate))
            .filter(|waiver| !barred(waiver))
            .collect()
    }
}
