//! What was said of a hole, a stub and a way back, as it is shown and kept.

use super::{Fields, Texts};
use crate::phrases::mending as say;
use crate::show::{INCH_MM, both_mm, both_nm, trimmed};
use drawing::{Joint, JointMeasure, JointPart, JointPiece};
use fastener::extract::{Extraction, Rung};
use fastener::section::{Measure, Ring, RingKind, Section};
use measure::{Customary, Grade, Input, Line, Source, Working};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One way back with all that it rests on: what is kept with a choice.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Told {
    /// The hole as it was described.
    pub fields: Fields,
    /// Read first.
    pub cautions: Vec<String>,
    /// What a reader should know.
    pub notes: Vec<String>,
    /// The joint as it was found.
    pub found: JointTold,
    /// The ladder for the stub.
    pub stub: Option<StubTold>,
    /// The way.
    pub way: WayTold,
    /// The other ways, and why they stand lower or do not hold.
    pub others: Vec<OtherTold>,
    /// How the other languages say it, by their tags; nothing of it in what was kept before.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub in_other_words: BTreeMap<String, Texts>,
}

/// A way back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct WayTold {
    /// How a snag is then resolved, as stored.
    pub code: String,
    /// In words.
    pub name: String,
    /// Its place, from 1.
    pub rank: usize,
    /// Whether it holds.
    pub holds: bool,
    /// Why it does not.
    pub reasons: Vec<String>,
    /// How its place came about.
    pub why_here: String,
    /// The bolt that goes in.
    pub bolt: String,
    /// The size that holds afterwards, where it is another than before.
    pub size_now: Option<String>,
    /// What a standing difference is, as stored.
    pub difference: Option<String>,
    /// The torque in the reader's units, and in the others.
    pub torque: Option<(String, String)>,
    /// The torque as it is written down.
    pub torque_written: Option<String>,
    /// Whether it is the torque from before.
    pub torque_as_before: bool,
    /// What is worth a line.
    pub figures: Vec<Figure>,
    /// What is done, in sequence; tightening comes when the joint is put together.
    pub steps: Vec<StepTold>,
    /// Parts it needs.
    pub parts: Vec<PartTold>,
    /// Minutes, with those for the stub.
    pub minutes: Option<SpreadTold>,
    /// What its parts come to, before tax.
    pub cost: Option<SpreadTold>,
    /// What a reader should know.
    pub notes: Vec<String>,
    /// What is left for the next repair.
    pub next_repair: String,
    /// The joint afterwards.
    pub joint: JointTold,
    /// How the numbers were found.
    pub working: WorkingTold,
}

/// A label and its value as printed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Figure {
    /// What it is.
    pub label: String,
    /// Its value.
    pub value: String,
}

/// One step of the work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepTold {
    /// What is done.
    pub what: String,
    /// Read before it.
    pub caution: Option<String>,
    /// What it puts in, as stored.
    pub puts_in: Vec<String>,
    /// What it takes out.
    pub takes_out: Vec<String>,
    /// Which of the parts it fits.
    pub fits: Option<usize>,
}

/// A part that a way needs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartTold {
    /// What it is called.
    pub label: String,
    /// What it is sold for, where the shop's figures say so.
    pub price: Option<String>,
}

/// Least, likely and most, as written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SpreadTold {
    /// Least.
    pub low: String,
    /// Likely.
    pub mid: String,
    /// Most.
    pub high: String,
}

/// Another way in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OtherTold {
    /// How a snag would be resolved, as stored.
    pub code: String,
    /// In words.
    pub name: String,
    /// Its place.
    pub rank: usize,
    /// Whether it holds.
    pub holds: bool,
    /// Why it stands there, or does not hold.
    pub reason: String,
}

/// The ladder of ways to get a stub out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StubTold {
    /// Read first.
    pub cautions: Vec<String>,
    /// Least risk first.
    pub rungs: Vec<RungTold>,
    /// How the numbers were found.
    pub working: WorkingTold,
}

/// One rung of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RungTold {
    /// In words.
    pub name: String,
    /// Whether it can be tried.
    pub open: bool,
    /// Why not.
    pub reason: Option<String>,
    /// How.
    pub how: Vec<String>,
    /// Its drills with what each allows.
    pub drills: Vec<String>,
    /// The most that may be put on the stub, as a guide.
    pub most_torque: Option<String>,
    /// Where to stop.
    pub stop_when: String,
}

/// A section to draw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct JointTold {
    /// What it shows.
    pub title: String,
    /// The bolt.
    pub bolt: String,
    /// Whether the metal around it was measured.
    pub edges_known: bool,
    /// Whether the hole has a bottom.
    pub blind: bool,
    /// Its rings.
    pub pieces: Vec<PieceTold>,
    /// Its sizes.
    pub measures: Vec<MeasureTold>,
}

/// A ring: what, then top and bottom, inner and outer diameter in millimetres.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PieceTold(pub String, pub f64, pub f64, pub f64, pub f64);

/// A size: label, figure, then radius and depth of its two ends in millimetres.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MeasureTold(pub String, pub String, pub (f64, f64), pub (f64, f64));

/// A working, line by line.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingTold {
    /// Its title.
    pub title: String,
    /// Its lines.
    pub lines: Vec<LineTold>,
    /// Remarks.
    pub remarks: Vec<String>,
    /// Limits.
    pub limits: Vec<String>,
}

/// One line of a working.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LineTold {
    /// What is found.
    pub what: String,
    /// Its symbol.
    pub symbol: Option<String>,
    /// Its formula.
    pub formula: Option<String>,
    /// What went in.
    pub inputs: Vec<InputTold>,
    /// Its value.
    pub value: Option<String>,
    /// On whose word.
    pub source: SourceTold,
    /// A word to the reader.
    pub note: Option<String>,
}

/// What went into a line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct InputTold {
    /// Its name.
    pub name: String,
    /// Its value.
    pub value: String,
}

/// On whose word a line stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SourceTold {
    /// The standard, book or person.
    pub title: String,
    /// Edition, clause, table or page.
    pub detail: String,
    /// How far it can be leaned on.
    pub grade: String,
}

impl WorkingTold {
    /// A working as it is kept: the same members as its JSON.
    #[must_use]
    pub fn of(working: &Working) -> Self {
        serde_json::from_str(&working.json()).unwrap_or_default()
    }

    /// The same as it was found.
    #[must_use]
    pub fn working(&self) -> Working {
        Working {
            title: self.title.clone(),
            lines: self.lines.iter().map(LineTold::line).collect(),
            remarks: self.remarks.clone(),
            limits: self.limits.clone(),
        }
    }
}

impl LineTold {
    fn line(&self) -> Line {
        Line {
            what: self.what.clone(),
            symbol: self.symbol.clone(),
            formula: self.formula.clone(),
            inputs: self
                .inputs
                .iter()
                .map(|input| Input {
                    name: input.name.clone(),
                    value: input.value.clone(),
                })
                .collect(),
            value: self.value.clone(),
            source: Source {
                title: self.source.title.clone(),
                detail: self.source.detail.clone(),
                // A grade that this program does not know is leaned on least.
                grade: Grade::named(&self.source.grade).unwrap_or(Grade::Memory),
            },
            note: self.note.clone(),
        }
    }
}

impl JointTold {
    /// As it is drawn. A ring of a kind that this program does not know is left out.
    #[must_use]
    pub fn drawn(&self) -> Joint {
        Joint {
            title: self.title.clone(),
            bolt: self.bolt.clone(),
            edges_known: self.edges_known,
            blind: self.blind,
            pieces: self
                .pieces
                .iter()
                .filter_map(|PieceTold(is, top_mm, bottom_mm, inner_mm, outer_mm)| {
                    let (_, _, is) = PARTS.iter().find(|(_, word, _)| word == is)?;
                    Some(JointPiece {
                        is: *is,
                        top_mm: *top_mm,
                        bottom_mm: *bottom_mm,
                        inner_mm: *inner_mm,
                        outer_mm: *outer_mm,
                    })
                })
                .collect(),
            measures: self
                .measures
                .iter()
                .map(|MeasureTold(label, figure, from_mm, to_mm)| JointMeasure {
                    label: label.clone(),
                    figure: figure.clone(),
                    from_mm: *from_mm,
                    to_mm: *to_mm,
                })
                .collect(),
        }
    }
}

const PARTS: [(RingKind, &str, JointPart); 9] = [
    (RingKind::Parent, "parent", JointPart::Parent),
    (RingKind::OtherPart, "other-part", JointPart::OtherPart),
    (RingKind::Hole, "hole", JointPart::Hole),
    (RingKind::Thread, "thread", JointPart::Thread),
    (RingKind::LostThread, "lost-thread", JointPart::LostThread),
    (RingKind::NewThread, "new-thread", JointPart::NewThread),
    (RingKind::Bushing, "bushing", JointPart::Bushing),
    (RingKind::Bolt, "bolt", JointPart::Bolt),
    (RingKind::Head, "head", JointPart::Head),
];

/// A section with its sizes in the reader's units.
pub(super) fn joint(section: &Section, bolt: &str, customary: Customary) -> JointTold {
    let ring = |ring: &Ring| {
        let (_, word, _) = PARTS.iter().find(|(kind, ..)| *kind == ring.what)?;
        Some(PieceTold(
            (*word).to_owned(),
            thousandth(ring.top_mm),
            thousandth(ring.bottom_mm),
            thousandth(ring.inner_mm),
            thousandth(ring.outer_mm),
        ))
    };
    let size = |measure: &Measure| {
        let figure = short_mm(measure.value_mm, customary);
        let point = |(radius, depth)| (thousandth(radius), thousandth(depth));
        MeasureTold(
            measure.label.clone(),
            figure,
            point(measure.from_mm),
            point(measure.to_mm),
        )
    };
    JointTold {
        title: section.title.clone(),
        bolt: bolt.to_owned(),
        edges_known: section.boss_mm.is_some(),
        blind: section.blind,
        pieces: section.rings.iter().filter_map(ring).collect(),
        measures: section.measures.iter().map(size).collect(),
    }
}

/// Nothing is drawn finer, and so short a number reads back as it was written.
fn thousandth(mm: f64) -> f64 {
    (mm * 1000.0).round() / 1000.0
}

/// The ladder in words.
pub(super) fn stub(found: &Extraction, customary: Customary) -> StubTold {
    let rung = |rung: &Rung| RungTold {
        name: rung.way.name().to_owned(),
        open: rung.open,
        reason: rung.reason.clone(),
        how: rung.how.clone(),
        drills: rung
            .drills
            .iter()
            .map(|step| {
                let most = both_mm(step.centre_tolerance_mm, customary);
                say::drill_off_centre(&step.drill.name, most)
            })
            .collect(),
        most_torque: rung.most_torque_nm.map(|nm| both_nm(nm, customary)),
        stop_when: rung.stop_when.to_owned(),
    };
    StubTold {
        cautions: found
            .cautions
            .iter()
            .map(|text| (*text).to_owned())
            .collect(),
        rungs: found.ladder.iter().map(rung).collect(),
        working: WorkingTold::of(&found.working),
    }
}

/// A length in the reader's units alone, to a tenth of a millimetre: for a drawing.
fn short_mm(mm: f64, customary: Customary) -> String {
    match customary {
        Customary::Metric => format!("{} mm", trimmed(mm, 1)),
        Customary::Us => format!("{} in", trimmed(mm / INCH_MM, 3)),
    }
}
