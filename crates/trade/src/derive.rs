//! What a thing is that was found, or that follows from the thing it belongs to.

use crate::branch::Branch;
use crate::find::Hit;
use crate::gates::Gates;
use crate::said::{Grade, Sure};
use crate::vocabulary::{Head, Keep, Vocabulary};
use crate::work::{Code, WorkSet};
use states::{Gate, Kind, Zone};

/// What a thing was read as, before counts, sides and words of the line are added.
#[derive(Debug, Clone)]
pub(crate) struct Reading {
    /// The sort in the table, or the one it was derived from.
    pub sort: Option<u32>,
    /// Whether it is that sort, not a thing that belongs to it.
    pub itself: bool,
    pub kinds: Vec<Option<Kind>>,
    pub system: Branch,
    pub zone: Zone,
    pub safety: bool,
    pub off: Gates,
    pub owed: WorkSet,
    pub earlier: Vec<(usize, Gate)>,
    pub brings: WorkSet,
    pub caution: Vec<Code>,
    pub sure: Sure,
    pub grade: Grade,
    pub source: Code,
}

impl Reading {
    pub fn kind(&self) -> Option<Kind> {
        self.kinds.first().copied().flatten()
    }

    /// No vehicle item: shuts nothing.
    pub fn none() -> Reading {
        Reading {
            kinds: vec![None],
            system: Branch::None,
            safety: false,
            off: Gates::NONE,
            sure: Sure::Sure,
            ..Reading::unknown(None)
        }
    }

    /// Nobody knows what it is: it may be of the safety class, and shuts every gate.
    pub fn unknown(kind: Option<Kind>) -> Reading {
        Reading {
            sort: None,
            itself: false,
            kinds: vec![Some(kind.unwrap_or(Kind::Part))],
            system: Branch::Unknown,
            zone: Zone::Unknown,
            safety: true,
            off: Gates::ALL,
            owed: WorkSet::default(),
            earlier: Vec::new(),
            brings: WorkSet::default(),
            caution: Vec::new(),
            sure: Sure::Unknown,
            grade: Grade::CommonPractice,
            source: "".into(),
        }
    }
}

impl Vocabulary {
    /// The gates that owed works shut for this thing.
    pub(crate) fn gates_of(&self, owed: WorkSet, earlier: &[(usize, Gate)]) -> Gates {
        let usual = owed
            .iter()
            .filter_map(|at| self.works.get(at))
            .fold(Gates::NONE, |gates, work| gates.and(work.gates()));
        earlier
            .iter()
            .filter(|(at, _)| owed.has(WorkSet::one(*at)))
            .fold(usual, |gates, (_, gate)| gates.with(*gate))
    }

    pub(crate) fn reading_of(&self, hit: Hit) -> Reading {
        let sort = self.sort(hit.sort);
        Reading {
            sort: Some(hit.sort),
            itself: true,
            kinds: sort.kinds.clone(),
            system: sort.system,
            zone: sort.zone,
            safety: sort.safety,
            off: sort.off,
            owed: sort.owed,
            earlier: sort.earlier.clone(),
            brings: sort.brings,
            caution: sort.caution.clone(),
            sure: if hit.left == 0 && !sort.doubt {
                Sure::Sure
            } else {
                Sure::Likely
            },
            grade: sort.grade,
            source: sort.source.clone(),
        }
    }

    pub(crate) fn reading_of_sort(&self, sort: u32) -> Reading {
        self.reading_of(Hit {
            sort,
            mask: 0,
            left: 0,
            solid: 1,
        })
    }

    fn named(&self, id: &str) -> Option<Reading> {
        self.sort_ids.get(id).map(|at| self.reading_of_sort(*at))
    }

    /// The thing that a last word makes of the thing named before it.
    pub(crate) fn derive(&self, of: &Reading, head: &Head) -> Reading {
        let mut out = of.clone();
        out.itself = false;
        out.brings = WorkSet::default();
        out.grade = if of.sure == Sure::Sure {
            of.grade
        } else {
            Grade::CommonPractice
        };
        let kind = match head.kind {
            Kind::Clips if of.kind() == Some(Kind::Hose) => Kind::Part,
            kind => kind,
        };
        out.kinds = vec![Some(kind)];
        match head.keep {
            Keep::All => {
                if of.sort.is_none() {
                    return out;
                }
                out.kinds = if head.kind == Kind::Part {
                    // "pan gasket and filter": the filter is of the pan, and no seal.
                    let sort = of.sort.filter(|_| of.itself);
                    let kinds = sort.map_or(&of.kinds, |at| &self.sort(at).kinds);
                    kinds[..1].to_vec()
                } else {
                    out.kinds
                };
                out.sure = out.sure.max(Sure::Likely);
            }
            Keep::Fixing => self.fixing(&mut out, kind),
            Keep::Joint => {
                if out.off != Gates::NONE.with(Gate::HandOver) {
                    out.owed = out.owed.and(self.kept.new_seal);
                }
            }
            Keep::Electric => return self.electric(out, kind),
            Keep::Nothing => return self.cover(out, head),
            // Their place is what they are calibrated to.
            Keep::Bracket if out.system == Branch::Adas => {}
            Keep::Bracket => {
                out.caution.clear();
                out.earlier.clear();
                out.owed = if out.safety {
                    self.kept.torque.and(self.kept.second_check)
                } else {
                    WorkSet::default()
                };
                if out.off.has(Gate::Road) {
                    out.off = Gates::NONE.with(Gate::Road);
                }
                out.sure = out.sure.max(Sure::Likely);
            }
        }
        out
    }

    /// Bolts and clips: the works of mounting stay; those of an opened joint stay only where the
    /// thing is no safety item, for there the bolts are what holds its joint shut.
    fn fixing(&self, out: &mut Reading, kind: Kind) {
        if !out.safety || out.system == Branch::HighVoltage {
            return;
        }
        let carries =
            out.off.has(Gate::Lower) || out.caution.iter().any(|caution| &**caution == "airbag");
        out.owed = out
            .owed
            .without(self.kept.joint)
            .and(self.kept.second_check);
        if kind == Kind::Fasteners {
            out.owed = out.owed.and(self.kept.torque);
        }
        if !carries {
            out.caution.clear();
        }
    }

    /// A plug, a sensor, a relay: what unplugging the thing owes.
    fn electric(&self, mut out: Reading, kind: Kind) -> Reading {
        let instead = match out.system {
            Branch::Restraints => self.named("airbag-plug"),
            Branch::HighVoltage => self.named("hv-cable"),
            _ => None,
        };
        if let Some(mut instead) = instead {
            instead.kinds = vec![Some(kind)];
            instead.sure = instead.sure.max(out.sure);
            instead.itself = false;
            return instead;
        }
        out.owed = out.owed.both(self.kept.electric);
        if out.owed.is_empty() {
            out.owed = self.kept.codes_read;
        }
        if out.safety {
            out.owed = out.owed.and(self.kept.second_check);
        }
        out.earlier.clear();
        out.caution.clear();
        let fed = matches!(out.system, Branch::Battery | Branch::Electrical);
        let burns = matches!(out.system, Branch::Fuel | Branch::Engine | Branch::Battery);
        out.off = if fed && out.off.has(Gate::GoLive) {
            Gates::NONE.with(Gate::GoLive)
        } else if burns && out.off.has(Gate::Start) {
            Gates::NONE.with(Gate::Start)
        } else if out.off.has(Gate::Road) {
            Gates::NONE.with(Gate::Road)
        } else {
            Gates::NONE.with(Gate::HandOver)
        };
        out
    }

    /// A cover of the thing: it owes nothing, save where high voltage lies under it.
    fn cover(&self, mut out: Reading, head: &Head) -> Reading {
        if out.system == Branch::HighVoltage {
            return self.named("hv-battery-module").map_or(out, |mut cover| {
                cover.kinds = vec![Some(Kind::Cover)];
                cover.itself = false;
                cover
            });
        }
        out.owed = WorkSet::default();
        out.earlier.clear();
        out.caution.clear();
        out.safety = false;
        out.system = head.system.unwrap_or(out.system);
        out.off = Gates::NONE.with(head.shut.unwrap_or(Gate::HandOver));
        out
    }
}
