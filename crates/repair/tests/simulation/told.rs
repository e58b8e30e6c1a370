//! A plain model of what people tell of things after they were declared: how many pieces,
//! what it is called, where it belongs, its size, its torque.
//!
//! By the rules: what stands is what nobody has seen past, whatever name the thing went by
//! and through whomever it was seen; of several, all stand. A telling that was taken back
//! says nothing, and still its author had seen what it names.

use repair::{CommandId, Fact, ItemId, System, Zone};
use std::collections::BTreeSet;

/// What a telling is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    Count,
    Name,
    Place,
    Size,
    Torque,
}

impl About {
    pub const ALL: [Self; 5] = [
        Self::Count,
        Self::Name,
        Self::Place,
        Self::Size,
        Self::Torque,
    ];
}

/// One telling, as it was heard.
struct Telling<'a> {
    command: &'a str,
    about: About,
    thing: &'a ItemId,
    fact: &'a Fact,
    saw: &'a [CommandId],
    stands: bool,
}

/// All that was told.
#[derive(Default)]
pub struct Tellings<'a>(Vec<Telling<'a>>);

/// What a fact tells, of what, and what its author had seen.
pub fn telling(fact: &Fact) -> Option<(About, &ItemId, &[CommandId])> {
    Some(match fact {
        Fact::CountCorrected { item, after, .. } => (About::Count, item, after),
        Fact::Renamed { item, after, .. } => (About::Name, item, after),
        Fact::Located { item, after, .. } => (About::Place, item, after),
        Fact::SizeTold { item, after, .. } => (About::Size, item, after),
        Fact::TorqueTold { item, after, .. } => (About::Torque, item, after),
        _ => return None,
    })
}

impl<'a> Tellings<'a> {
    pub fn hear(&mut self, command: &'a str, fact: &'a Fact, stands: bool) {
        if let Some((about, thing, saw)) = telling(fact) {
            self.0.push(Telling {
                command,
                about,
                thing,
                fact,
                saw,
                stands,
            });
        }
    }

    /// Everything a telling had seen, near and far.
    fn seen(&self, telling: &Telling<'a>) -> BTreeSet<&'a str> {
        let mut seen: BTreeSet<&str> = telling.saw.iter().map(CommandId::as_str).collect();
        loop {
            let before = seen.len();
            for other in &self.0 {
                if seen.contains(other.command) {
                    seen.extend(other.saw.iter().map(CommandId::as_str));
                }
            }
            if seen.len() == before {
                return seen;
            }
        }
    }

    /// What was told of a thing and nobody has seen past.
    pub fn last(&self, about: About, is_it: impl Fn(&ItemId) -> bool) -> Vec<(&'a str, &'a Fact)> {
        let all: Vec<&Telling<'_>> = self
            .0
            .iter()
            .filter(|telling| telling.stands && telling.about == about && is_it(telling.thing))
            .collect();
        let passed: BTreeSet<&str> = all.iter().flat_map(|one| self.seen(one)).collect();
        all.iter()
            .filter(|one| !passed.contains(one.command))
            .map(|one| (one.command, one.fact))
            .collect()
    }

    /// Everything that was told of a thing and stands.
    pub fn all(&self, about: About, is_it: impl Fn(&ItemId) -> bool) -> Vec<&'a str> {
        let of_it = |one: &&Telling<'_>| one.stands && one.about == about && is_it(one.thing);
        self.0.iter().filter(of_it).map(|one| one.command).collect()
    }
}

/// A thing as people tell of it: more than one of each, where they tell it apart.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Known {
    /// What it may be called: one of these.
    pub names: BTreeSet<[u8; 32]>,
    /// Where it belongs; who does not know says nothing beside one who does.
    pub places: BTreeSet<(System, Zone)>,
    /// Each count as its positions.
    pub counts: BTreeSet<Vec<u16>>,
    pub sizes: BTreeSet<String>,
    pub torques: BTreeSet<Vec<String>>,
}

impl Known {
    /// Takes in a telling, or what a declaration says.
    pub fn take(&mut self, fact: &Fact, about: About) {
        match (fact, about) {
            (Fact::CountCorrected { pieces, .. }, _) => {
                self.counts.insert(positions(pieces));
            }
            (Fact::Declared { item }, About::Count) => {
                self.counts.insert(positions(&item.pieces));
            }
            (Fact::Renamed { label, .. }, _) => {
                self.names.insert(label.0);
            }
            (Fact::Declared { item }, About::Name) => {
                self.names.insert(item.label.0);
            }
            (Fact::Located { system, zone, .. }, _) => {
                self.places.insert((*system, *zone));
            }
            (Fact::Declared { item }, About::Place) => {
                self.places.insert((item.system, item.zone));
            }
            (Fact::SizeTold { size, .. }, _) => {
                self.sizes.insert(size.as_str().to_owned());
            }
            (Fact::Declared { item }, About::Size) => {
                let size = item.size.iter();
                self.sizes.extend(size.map(|size| size.as_str().to_owned()));
            }
            (Fact::TorqueTold { pattern, .. }, _) => {
                self.torques.insert(passes(pattern));
            }
            (Fact::Declared { item }, About::Torque) => {
                self.torques.extend(item.pattern.iter().map(passes));
            }
            _ => {}
        }
    }

    /// Who does not know where it belongs claims nothing beside somebody who does.
    pub fn settle(&mut self) {
        let told = |(system, _): &(System, Zone)| *system != System::Unknown;
        if self.places.iter().any(told) {
            self.places.retain(told);
        }
    }

    /// Every position that anybody counts.
    pub fn positions(&self) -> BTreeSet<u16> {
        self.counts.iter().flatten().copied().collect()
    }

    pub fn may_be(&self, system: System) -> bool {
        self.places.iter().any(|(told, _)| *told == system)
    }
}

fn positions(pieces: &[repair::Piece]) -> Vec<u16> {
    pieces.iter().map(|piece| piece.position).collect()
}

pub fn passes(pattern: &repair::Pattern) -> Vec<String> {
    let passes = pattern.passes.iter();
    passes.map(|pass| pass.as_str().to_owned()).collect()
}
