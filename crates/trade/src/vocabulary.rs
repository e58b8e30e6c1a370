//! The tables of the trade, ready to read lines with.

use crate::branch::Branch;
use crate::find::Names;
use crate::fold::fold;
use crate::phrases as say;
use crate::said::Grade;
use crate::table::{
    self, GermanFile, HeadFile, NoneFile, Sort, SortFile, SourceFile, TableError, WordFile,
    WorkFile,
};
use crate::work::{Code, Work, WorkSet};
use rustc_hash::{FxHashMap, FxHashSet};
use states::{Gate, Kind};
use std::sync::OnceLock;

macro_rules! data {
    ($name:literal) => {
        ($name, include_str!(concat!("../data/", $name)))
    };
}

/// The tables of sorts, in the order in which an equal name counts.
pub(crate) const SORTS: [(&str, &str); 24] = [
    data!("brakes.toml"),
    data!("wheels.toml"),
    data!("steering.toml"),
    data!("suspension.toml"),
    data!("fuel.toml"),
    data!("restraints.toml"),
    data!("high-voltage.toml"),
    data!("drive-belt.toml"),
    data!("timing.toml"),
    data!("cooling.toml"),
    data!("oil.toml"),
    data!("engine.toml"),
    data!("transmission.toml"),
    data!("intake.toml"),
    data!("exhaust.toml"),
    data!("battery.toml"),
    data!("electrical.toml"),
    data!("lamps.toml"),
    data!("adas.toml"),
    data!("climate.toml"),
    data!("towing.toml"),
    data!("body.toml"),
    data!("put-ins.toml"),
    data!("work-lines.toml"),
];
const WORKS: (&str, &str) = data!("works.toml");
const SOURCES: (&str, &str) = data!("sources.toml");
const WORDS: (&str, &str) = data!("words.toml");
const GERMAN: (&str, &str) = data!("german.toml");
const HEADS: (&str, &str) = data!("heads.toml");
const NONE: (&str, &str) = data!("none.toml");

/// How a thing named by its last word keeps the works of the thing named before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Keep {
    Fixing,
    All,
    Nothing,
    Electric,
    Joint,
    Bracket,
}

/// What a last word makes of the thing named before it.
#[derive(Debug, Clone)]
pub(crate) struct Head {
    pub kind: Kind,
    pub keep: Keep,
    pub shut: Option<Gate>,
    pub system: Option<Branch>,
}

/// Words that tell what happened to a thing, by id.
#[derive(Debug, Clone, Default)]
pub(crate) struct Asides {
    pub begins: FxHashSet<u32>,
    pub holds: Vec<Vec<u32>>,
    pub accessories: FxHashSet<u32>,
    pub seals: FxHashSet<u32>,
    pub off: FxHashSet<u32>,
    pub back: FxHashSet<u32>,
    pub drained: FxHashSet<u32>,
    pub loosened: FxHashSet<u32>,
    pub opened: FxHashSet<u32>,
    pub disturbed: FxHashSet<u32>,
    pub torqued: FxHashSet<u32>,
    /// "new", "fresh".
    pub fresh: Vec<u32>,
    /// "with", "mit".
    pub with: Vec<u32>,
    /// "unplugged".
    pub unplugged: Vec<u32>,
    pub pins: Vec<u32>,
    pub bolts: Vec<u32>,
    pub alignment: Vec<u32>,
    pub packs: Vec<u32>,
}

/// What people call things, and what follows from opening them: the shipped tables and a
/// shop's additions.
#[derive(Clone)]
pub struct Vocabulary {
    pub(crate) version: u32,
    pub(crate) additions: u32,
    pub(crate) works: Vec<Work>,
    /// Words that mark works as done, in the order of the table of works.
    pub(crate) said_done: Vec<(Vec<u32>, WorkSet)>,
    pub(crate) sorts: Vec<Sort>,
    pub(crate) sort_ids: FxHashMap<Code, u32>,
    pub(crate) words: crate::words::Dictionary,
    pub(crate) names: Names,
    pub(crate) heads: FxHashMap<Box<[u32]>, u32>,
    pub(crate) head_rules: Vec<Head>,
    pub(crate) verbs: FxHashMap<u32, WorkSet>,
    pub(crate) markers: Vec<Vec<u32>>,
    pub(crate) weak: FxHashSet<u32>,
    pub(crate) qualifiers: FxHashSet<u32>,
    pub(crate) work_first: FxHashSet<u32>,
    /// Words of tools that name nothing else.
    pub(crate) tool_words: FxHashSet<u32>,
    pub(crate) short: FxHashMap<u32, FxHashMap<Code, u32>>,
    pub(crate) put_in_at: Vec<(Branch, u32)>,
    pub(crate) none_first: FxHashSet<Box<[u32]>>,
    pub(crate) none_last: FxHashSet<u32>,
    pub(crate) none_names: Names,
    pub(crate) asides: Asides,
    pub(crate) kept: Kept,
    pub(crate) raw_names: Vec<(String, u32)>,
}

/// Sets of works that rules speak of.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Kept {
    /// Works of an opened joint or a fluid: bolts alone do not owe them.
    pub joint: WorkSet,
    /// What unplugging owes.
    pub electric: WorkSet,
    pub torque: WorkSet,
    pub second_check: WorkSet,
    pub new_seal: WorkSet,
    pub new_fasteners: WorkSet,
    pub codes_read: WorkSet,
    pub nuts_on: WorkSet,
    pub wheel_torque: WorkSet,
    pub axle_nut: WorkSet,
}

const JOINT: [&str; 27] = [
    "bleed-brakes",
    "level-brake-fluid",
    "leak-look",
    "bed-in",
    "bleed-steering",
    "level-ps-fluid",
    "prime-fuel",
    "level-oil",
    "oil-pressure-seen",
    "prime-oil",
    "bleed-cooling",
    "level-warm",
    "level-cold",
    "level-gear-oil",
    "bleed-clutch",
    "level-clutch-fluid",
    "vacuum-hold",
    "refrigerant-weighed",
    "ac-oil",
    "new-seal",
    "gas-look",
    "balance",
    "tyre-pressure",
    "tpms-relearn",
    "injector-code",
    "play-check",
    "belt-seated",
];
const ELECTRIC: [&str; 16] = [
    "codes-read",
    "lamp-works",
    "function-seen",
    "relearn",
    "abs-lamp-check",
    "sas-calibrate",
    "epb-calibrate",
    "handbrake-hold",
    "charge-check",
    "fan-runs",
    "adas-calibrate",
    "srs-lamp-check",
    "tpms-relearn",
    "headlamp-aim",
    "throttle-free",
    "servo-check",
];

impl std::fmt::Debug for Vocabulary {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Vocabulary")
            .field("version", &self.version)
            .field("additions", &self.additions)
            .field("sorts", &self.sorts.len())
            .field("terms", &self.raw_names.len())
            .finish_non_exhaustive()
    }
}

impl Vocabulary {
    /// The tables as they come with the program.
    ///
    /// # Panics
    ///
    /// Never: a test reads the tables as they are shipped.
    #[must_use]
    pub fn shipped() -> &'static Vocabulary {
        static SHIPPED: OnceLock<Vocabulary> = OnceLock::new();
        SHIPPED.get_or_init(|| {
            read_tables().expect("the shipped tables are read by the tests of this crate")
        })
    }

    /// The version of the shipped tables: the sum of the versions of their files, so that a
    /// change of any one makes a newer whole.
    #[must_use]
    pub fn version(&self) -> u32 {
        self.version
    }

    /// How many times a shop has added to it.
    #[must_use]
    pub fn additions(&self) -> u32 {
        self.additions
    }

    /// Every work that can be owed, in the order of the table.
    #[must_use]
    pub fn works(&self) -> &[Work] {
        &self.works
    }

    /// One work by its code.
    #[must_use]
    pub fn work(&self, code: &str) -> Option<&Work> {
        self.works.iter().find(|work| &*work.code == code)
    }

    /// How many names the tables hold.
    #[must_use]
    pub fn terms(&self) -> usize {
        self.raw_names.len()
    }

    /// Every name of the tables with the id of its sort, as written.
    pub fn names(&self) -> impl Iterator<Item = (&str, &str)> {
        self.raw_names
            .iter()
            .map(|(name, sort)| (name.as_str(), &*self.sorts[*sort as usize].id))
    }

    pub(crate) fn sort(&self, at: u32) -> &Sort {
        &self.sorts[at as usize]
    }

    pub(crate) fn set(&self, codes: &[&str]) -> WorkSet {
        set_of(&self.works, codes)
    }
}

pub(crate) fn set_of(works: &[Work], codes: &[&str]) -> WorkSet {
    works
        .iter()
        .enumerate()
        .filter(|(_, work)| codes.contains(&&*work.code))
        .fold(WorkSet::default(), |set, (at, _)| set.and(WorkSet::one(at)))
}

fn kept(works: &[Work]) -> Kept {
    Kept {
        joint: set_of(works, &JOINT),
        electric: set_of(works, &ELECTRIC),
        torque: set_of(works, &["torque"]),
        second_check: set_of(works, &["second-check"]),
        new_seal: set_of(works, &["new-seal"]),
        new_fasteners: set_of(works, &["new-fasteners"]),
        codes_read: set_of(works, &["codes-read"]),
        nuts_on: set_of(works, &["wheel-nuts-on"]),
        wheel_torque: set_of(works, &["wheel-torque"]),
        axle_nut: set_of(works, &["axle-nut-torque"]),
    }
}

struct Files {
    words: WordFile,
    german: GermanFile,
    heads: HeadFile,
    none: NoneFile,
    works: WorkFile,
}

/// All words that any table writes, folded.
fn all_words(files: &Files, names: &[(String, u32)]) -> FxHashSet<String> {
    let mut raw = FxHashSet::default();
    let mut add = |text: &str| {
        for word in crate::amounts::words_only(text, &crate::chunks::cut(text)) {
            raw.insert(word);
        }
    };
    names.iter().for_each(|(name, _)| add(name));
    for (to, from) in &files.words.same {
        add(to);
        from.iter().for_each(|words| add(words));
    }
    files.words.sides.iter().for_each(|(word, side)| {
        add(word);
        add(side);
    });
    files.words.numbers.keys().for_each(|word| add(word));
    for list in [
        &files.words.filler,
        &files.words.places,
        &files.words.joins,
        &files.heads.markers,
        &files.heads.weak,
        &files.heads.qualifiers,
        &files.heads.work_first,
    ] {
        list.words.iter().for_each(|word| add(word));
    }
    let asides = &files.words.asides;
    for list in [
        &asides.begins,
        &asides.holds,
        &asides.accessories,
        &asides.off,
        &asides.back,
        &asides.drained,
        &asides.loosened,
        &asides.opened,
        &asides.disturbed,
        &asides.torqued,
        &asides.seals,
    ] {
        list.iter().for_each(|word| add(word));
    }
    files.german.parts.values().for_each(|words| add(words));
    files
        .heads
        .head
        .iter()
        .flat_map(|head| &head.words)
        .for_each(|word| add(word));
    files
        .heads
        .verb
        .iter()
        .flat_map(|verb| &verb.words)
        .for_each(|word| add(word));
    files.heads.short.keys().for_each(|word| add(word));
    for list in [&files.none.first, &files.none.last, &files.none.names] {
        list.iter().for_each(|word| add(word));
    }
    files
        .works
        .work
        .iter()
        .flat_map(|work| &work.said_done)
        .for_each(|word| add(word));
    raw
}

fn read_tables() -> Result<Vocabulary, TableError> {
    let work_file: WorkFile = table::parse(WORKS.0, WORKS.1)?;
    let works = work_file
        .work
        .iter()
        .map(|raw| table::read_work(WORKS.0, raw))
        .collect::<Result<Vec<_>, _>>()?;
    if works.len() > WorkSet::MOST {
        return Err(TableError::TooManyWorks {
            place: WORKS.0.to_string(),
            most: WorkSet::MOST,
        });
    }
    let sources: SourceFile = table::parse(SOURCES.0, SOURCES.1)?;
    let files = Files {
        words: table::parse(WORDS.0, WORDS.1)?,
        german: table::parse(GERMAN.0, GERMAN.1)?,
        heads: table::parse(HEADS.0, HEADS.1)?,
        none: table::parse(NONE.0, NONE.1)?,
        works: work_file,
    };
    let mut version = files.works.version
        + sources.version
        + files.words.version
        + files.german.version
        + files.heads.version
        + files.none.version;
    let (sorts, raw_names, german, sort_version) = read_sorts(&works, &sources)?;
    version += sort_version;
    let mut vocabulary = assemble(&files, works, sorts, raw_names, &german)?;
    vocabulary.version = version;
    Ok(vocabulary)
}

/// Sorts, their names, the words of German names, the sum of the versions.
type Sorts = (Vec<Sort>, Vec<(String, u32)>, FxHashSet<String>, u32);

fn read_sorts(works: &[Work], sources: &SourceFile) -> Result<Sorts, TableError> {
    let mut sorts: Vec<Sort> = Vec::new();
    let mut names = Vec::new();
    let mut german = FxHashSet::default();
    let mut version = 0;
    for (place, text) in SORTS {
        let file: SortFile = table::parse(place, text)?;
        version += file.version;
        let default = table::file_default(place, &file)?;
        let source = |id: &str| -> Result<(Grade, Code), TableError> {
            let raw = sources
                .source
                .get(id)
                .ok_or_else(|| TableError::NoSuchWord {
                    place: place.to_string(),
                    word: id.to_string(),
                    meant: say::source(),
                    known: say::those_of_the_sources().to_string(),
                })?;
            Ok((
                table::grade(SOURCES.0, &raw.grade)?,
                raw.text.as_str().into(),
            ))
        };
        for raw in &file.sort {
            let at = u32::try_from(sorts.len()).unwrap_or(u32::MAX);
            let sort = table::read_sort(place, default, raw, works, &source)?;
            if sorts.iter().any(|known| known.id == sort.id) {
                return Err(TableError::Twice {
                    place: place.to_string(),
                    id: raw.id.clone(),
                });
            }
            names.extend(
                raw.names
                    .iter()
                    .chain(&raw.german)
                    .map(|name| (name.clone(), at)),
            );
            for name in &raw.german {
                german.extend(crate::amounts::words_only(name, &crate::chunks::cut(name)));
            }
            sorts.push(sort);
        }
    }
    Ok((sorts, names, german, version))
}

fn assemble(
    files: &Files,
    works: Vec<Work>,
    sorts: Vec<Sort>,
    raw_names: Vec<(String, u32)>,
    german: &FxHashSet<String>,
) -> Result<Vocabulary, TableError> {
    let raw = all_words(files, &raw_names);
    let words = crate::words::Dictionary::build(&raw, german, &files.words, &files.german);
    let sort_ids: FxHashMap<Code, u32> = sorts
        .iter()
        .zip(0..)
        .map(|(sort, at)| (sort.id.clone(), at))
        .collect();
    let names = build_names(&words, &raw_names);
    let (heads, head_rules) = read_heads(&words, &files.heads)?;
    let mut verbs = FxHashMap::default();
    for verb in &files.heads.verb {
        let owed = table::works(HEADS.0, &works, &verb.owed)?;
        for id in verb.words.iter().flat_map(|word| words.name(word)) {
            verbs.insert(id, owed);
        }
    }
    let kept = kept(&works);
    let said_done = done_words(&words, &files.works);
    Ok(Vocabulary {
        version: 0,
        additions: 0,
        said_done,
        names,
        heads,
        head_rules,
        verbs,
        markers: files
            .heads
            .markers
            .words
            .iter()
            .map(|word| words.name(word))
            .collect(),
        qualifiers: files
            .heads
            .qualifiers
            .words
            .iter()
            .flat_map(|word| words.name(word))
            .collect(),
        work_first: files
            .heads
            .work_first
            .words
            .iter()
            .flat_map(|word| words.name(word))
            .collect(),
        tool_words: tool_words(&words, &raw_names, &sorts),
        weak: files
            .heads
            .weak
            .words
            .iter()
            .flat_map(|word| words.name(word))
            .collect(),
        short: read_short(&words, &files.heads, &sort_ids)?,
        put_in_at: read_put_in_at(&files.heads, &sort_ids)?,
        none_first: files
            .none
            .first
            .iter()
            .map(|word| words.name(word).into())
            .collect(),
        none_last: files
            .none
            .last
            .iter()
            .flat_map(|word| words.name(word))
            .collect(),
        none_names: Names::build(
            files
                .none
                .names
                .iter()
                .map(|name| (words.name(name), 0))
                .collect(),
            &|_| false,
        ),
        asides: read_asides(&words, &files.words.asides),
        kept,
        works,
        sorts,
        sort_ids,
        words,
        raw_names,
    })
}

fn tool_words(
    words: &crate::words::Dictionary,
    raw_names: &[(String, u32)],
    sorts: &[Sort],
) -> FxHashSet<u32> {
    let of = |tools: bool| -> FxHashSet<u32> {
        raw_names
            .iter()
            .filter(|(_, sort)| (sorts[*sort as usize].kind() == Some(Kind::PutIn)) == tools)
            .flat_map(|(name, _)| words.name(name))
            .collect()
    };
    let things = of(false);
    of(true)
        .into_iter()
        .filter(|id| !things.contains(id))
        .collect()
}

pub(crate) fn build_names(words: &crate::words::Dictionary, raw_names: &[(String, u32)]) -> Names {
    Names::build(
        raw_names
            .iter()
            .map(|(name, sort)| (words.name(name), *sort))
            .collect(),
        &|id| words.role_of(id).filler || words.role_of(id).place,
    )
}

fn done_words(words: &crate::words::Dictionary, file: &WorkFile) -> Vec<(Vec<u32>, WorkSet)> {
    let mut out: Vec<(Vec<u32>, WorkSet)> = Vec::new();
    for (at, raw) in file.work.iter().enumerate() {
        let own = [&raw.english, &raw.german];
        for said in raw.said_done.iter().chain(own) {
            let mut ids = words.name(said);
            ids.sort_unstable();
            ids.dedup();
            match out.iter_mut().find(|(known, _)| *known == ids) {
                Some((_, set)) => *set = set.and(WorkSet::one(at)),
                None => out.push((ids, WorkSet::one(at))),
            }
        }
    }
    out
}

type Heads = (FxHashMap<Box<[u32]>, u32>, Vec<Head>);

fn read_heads(words: &crate::words::Dictionary, file: &HeadFile) -> Result<Heads, TableError> {
    let mut by_words = FxHashMap::default();
    let mut rules = Vec::new();
    for (raw, at) in file.head.iter().zip(0..) {
        let kind = table::kind(HEADS.0, &raw.kind)?.unwrap_or(Kind::Part);
        let keep = match raw.keep.as_str() {
            "fixing" => Keep::Fixing,
            "none" => Keep::Nothing,
            "electric" => Keep::Electric,
            "joint" => Keep::Joint,
            "bracket" => Keep::Bracket,
            _ => Keep::All,
        };
        rules.push(Head {
            kind,
            keep,
            shut: (!raw.shut.is_empty())
                .then(|| table::gate(HEADS.0, &raw.shut))
                .transpose()?,
            system: (!raw.system.is_empty())
                .then(|| table::branch(HEADS.0, &raw.system))
                .transpose()?,
        });
        for word in &raw.words {
            by_words.entry(words.name(word).into()).or_insert(at);
        }
    }
    Ok((by_words, rules))
}

fn read_short(
    words: &crate::words::Dictionary,
    file: &HeadFile,
    sort_ids: &FxHashMap<Code, u32>,
) -> Result<FxHashMap<u32, FxHashMap<Code, u32>>, TableError> {
    let mut out: FxHashMap<u32, FxHashMap<Code, u32>> = FxHashMap::default();
    for (word, by) in &file.short {
        let Some(id) = words.name(word).first().copied() else {
            continue;
        };
        for (by, sort) in by {
            let at = sort_ids.get(sort.as_str()).ok_or_else(|| no_sort(sort))?;
            out.entry(id).or_default().insert(by.as_str().into(), *at);
        }
    }
    Ok(out)
}

fn read_put_in_at(
    file: &HeadFile,
    sort_ids: &FxHashMap<Code, u32>,
) -> Result<Vec<(Branch, u32)>, TableError> {
    file.put_in_at
        .iter()
        .map(|(system, sort)| {
            let at = sort_ids.get(sort.as_str()).ok_or_else(|| no_sort(sort))?;
            Ok((table::branch(HEADS.0, system)?, *at))
        })
        .collect()
}

fn no_sort(sort: &str) -> TableError {
    TableError::NoSuchWord {
        place: HEADS.0.to_string(),
        word: sort.to_string(),
        meant: say::sort(),
        known: say::those_of_the_tables_of_sorts().to_string(),
    }
}

fn read_asides(words: &crate::words::Dictionary, raw: &table::Asides) -> Asides {
    let set = |list: &[String]| list.iter().flat_map(|word| words.name(word)).collect();
    let one = |list: &[String]| {
        list.iter()
            .filter_map(|word| words.id(&fold(word)))
            .collect()
    };
    let known = |list: &[&str]| {
        list.iter()
            .filter_map(|word| words.id(word))
            .collect::<Vec<u32>>()
    };
    Asides {
        begins: one(&raw.begins),
        holds: raw.holds.iter().map(|words_| words.name(words_)).collect(),
        accessories: set(&raw.accessories),
        seals: set(&raw.seals),
        off: one(&raw.off),
        back: one(&raw.back),
        drained: one(&raw.drained),
        loosened: one(&raw.loosened),
        opened: one(&raw.opened),
        disturbed: one(&raw.disturbed),
        torqued: one(&raw.torqued),
        fresh: known(&[
            "new", "neu", "neue", "neuer", "neues", "neuen", "neuem", "fresh",
        ]),
        with: known(&["with", "mit", "w", "inkl", "incl", "including"]),
        unplugged: known(&["unplugged", "unplug", "abgesteckt"]),
        pins: known(&["pin", "splint"]),
        bolts: known(&["bolt", "stud", "pin"]),
        alignment: known(&["alignment", "drive"]),
        packs: known(&["pair", "paar", "dozen", "dutzend"]),
    }
}
