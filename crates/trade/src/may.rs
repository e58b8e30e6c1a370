//! What a vehicle may do, from what is off, what is back, and what was done.

use crate::gates::Gates;
use crate::read::{says, says_after};
use crate::said::{Happens, Said, Sure};
use crate::side::Side;
use crate::vocabulary::Vocabulary;
use crate::work::{Code, WorkSet};
use states::Kind;

/// Where a thing stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Stands {
    /// Off, open, unplugged, low; for work: due.
    Off,
    /// Back in its place, its own fasteners home; a put-in: out; for work: done.
    Back,
    /// In the vehicle, of a thing put in for the work.
    In,
}

/// A thing as typed, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Thing {
    /// The line as typed.
    pub line: String,
    /// Where it stands.
    pub stands: Stands,
}

/// One reason why a gate is shut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Why {
    /// The words of the thing.
    pub text: String,
    /// The work that is owed; none where the thing itself is out of its place, or not known.
    pub work: Option<Code>,
    /// The gates it shuts.
    pub shuts: Gates,
}

/// What a vehicle may do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// The gates that are shut, closed under the laws.
    pub shut: Gates,
    /// The works still owed, each once, in the order of the table.
    pub owed: Vec<Code>,
    /// Every reason.
    pub why: Vec<Why>,
    /// What was said to be done and could not be understood: it counts for nothing.
    pub not_understood: Vec<String>,
}

/// Says what a vehicle may do.
///
/// A thing that is off shuts its gates and owes its works. A thing that is back owes what it
/// owed, less what was done since; each work owed shuts its own gates. Work is done by its code,
/// by its spoken words, or by what the line of a thing says ("torqued", "with new washers"). A
/// proof counts for nothing while the thing it proves is off.
///
/// ```
/// use states::Gate;
/// use trade::{Stands, Thing, Vocabulary, may};
///
/// let hose = Thing { line: "brake hose front left".into(), stands: Stands::Back };
/// let answer = may(&[hose], &[], Vocabulary::shipped());
/// assert!(answer.shut.has(Gate::Roll), "tight, and still no brake");
/// assert!(!answer.shut.has(Gate::Lower));
/// ```
#[must_use]
pub fn may(things: &[Thing], done: &[String], vocabulary: &Vocabulary) -> Answer {
    let mut account = Account::read(things, vocabulary);
    account.take_done(done);
    account.answer()
}

struct Account<'a> {
    vocabulary: &'a Vocabulary,
    said: Vec<Said>,
    stands: Vec<Stands>,
    done: WorkSet,
    not_understood: Vec<String>,
}

impl<'a> Account<'a> {
    fn read(things: &[Thing], vocabulary: &'a Vocabulary) -> Account<'a> {
        let mut said: Vec<Said> = Vec::new();
        let mut stands = Vec::new();
        for thing in things {
            for one in says_after(&thing.line, vocabulary, &said) {
                stands.push(thing.stands);
                said.push(one);
            }
        }
        // What is only understood by what was named later.
        for at in 0..said.len() {
            if said[at].sure != Sure::Unknown {
                continue;
            }
            let others: Vec<Said> = said
                .iter()
                .enumerate()
                .filter(|(other, one)| *other != at && one.sure != Sure::Unknown)
                .map(|(_, one)| one.clone())
                .collect();
            if let [again] = says_after(&said[at].text, vocabulary, &others).as_slice() {
                said[at] = again.clone();
            }
        }
        vocabulary.along(&mut said);
        Account {
            vocabulary,
            said,
            stands,
            done: WorkSet::default(),
            not_understood: Vec::new(),
        }
    }

    /// Every work that some thing owes.
    fn ever_owed(&self) -> WorkSet {
        self.said
            .iter()
            .fold(WorkSet::default(), |set, said| set.and(said.works))
    }

    fn take_done(&mut self, done: &[String]) {
        for words in done {
            for part in words.split([',', ';', '\n']) {
                let part = part.trim();
                if !part.is_empty() && !self.take_one(part) {
                    self.not_understood.push(part.to_string());
                }
            }
        }
    }

    fn take_one(&mut self, words: &str) -> bool {
        let works = &self.vocabulary.works;
        if let Some(at) = works.iter().position(|work| &*work.code == words) {
            self.done = self.done.and(WorkSet::one(at));
            return true;
        }
        let ids = self.vocabulary.words.name(words);
        let not = ["not", "nicht", "never", "yet", "kein", "keine", "un"];
        if not.iter().any(|word| {
            self.vocabulary
                .words
                .id(word)
                .is_some_and(|id| ids.contains(&id))
        }) || words.split_whitespace().any(|word| not.contains(&word))
        {
            return false;
        }
        if let Some(set) = self.vocabulary.done_by(&ids, self.ever_owed()) {
            self.done = self.done.and(set);
            return true;
        }
        let mut understood = false;
        for said in says(words, self.vocabulary) {
            let proves = said
                .sort
                .as_ref()
                .and_then(|sort| self.vocabulary.sort_ids.get(sort))
                .is_some_and(|at| self.vocabulary.sort(*at).proves);
            if said.kind == Some(Kind::Work) && proves {
                self.done = self.done.and(said.works);
                understood = true;
            } else if matches!(
                said.happens,
                Some(Happens::ComesOff | Happens::Drained | Happens::Opened)
            ) && said.kind.is_some()
                && said.kind != Some(Kind::Work)
                && said.sure != Sure::Unknown
            {
                self.said.push(said);
                self.stands.push(Stands::Off);
                understood = true;
            }
        }
        understood
    }

    /// What one thing still owes.
    fn owes(&self, at: usize) -> WorkSet {
        let said = &self.said[at];
        let out = self.stands[at] != Stands::Back;
        if said.kind == Some(Kind::Work) {
            return if out {
                said.works.without(self.done)
            } else {
                WorkSet::default()
            };
        }
        if out {
            return said.works;
        }
        let own = self.vocabulary.set(
            &said
                .said_done
                .iter()
                .map(|code| &**code)
                .collect::<Vec<_>>(),
        );
        said.works
            .without(self.done)
            .without(own)
            .without(said.brings)
            .without(self.met_by_others(at))
    }

    /// Works of a thing that the things it is fastened or sealed with have met.
    fn met_by_others(&self, at: usize) -> WorkSet {
        let kept = &self.vocabulary.kept;
        let mut met = WorkSet::default();
        let this = &self.said[at];
        let near = |other: &Said| Side::may_mean(this.side, other.side);
        for (other, stands) in self.said.iter().zip(&self.stands) {
            let says_done = |set: WorkSet| {
                let own = self.vocabulary.set(
                    &other
                        .said_done
                        .iter()
                        .map(|code| &**code)
                        .collect::<Vec<_>>(),
                );
                own.has(set)
            };
            if *stands != Stands::Back || !near(other) {
                continue;
            }
            let wheel_nuts = other.sort.as_deref() == Some("wheel-nuts");
            if wheel_nuts {
                met = met.and(kept.nuts_on);
                if says_done(kept.wheel_torque) {
                    met = met.and(kept.wheel_torque);
                }
            }
            if other.sort.as_deref() == Some("axle-nut") {
                for set in [kept.axle_nut, kept.new_fasteners] {
                    if says_done(set) {
                        met = met.and(set);
                    }
                }
            }
            let same = other.system == this.system && this.kind != Some(Kind::Fasteners);
            if same && other.kind == Some(Kind::Fasteners) && !self.slack(this, kept.torque) {
                for set in [kept.torque, kept.new_fasteners] {
                    if says_done(set) {
                        met = met.and(set);
                    }
                }
            }
            if other.system == this.system
                && other.kind == Some(Kind::Seal)
                && says_done(kept.new_seal)
            {
                met = met.and(kept.new_seal);
            }
        }
        if self.any_nuts_off(this) {
            met = met.without(kept.nuts_on).without(kept.wheel_torque);
        }
        met
    }

    /// Fasteners of the same system that were not said to be torqued.
    fn slack(&self, this: &Said, torque: WorkSet) -> bool {
        self.said.iter().any(|other| {
            let own = self.vocabulary.set(
                &other
                    .said_done
                    .iter()
                    .map(|code| &**code)
                    .collect::<Vec<_>>(),
            );
            other.kind == Some(Kind::Fasteners)
                && other.system == this.system
                && Side::may_mean(this.side, other.side)
                && other.works.has(torque)
                && !own.has(torque)
        })
    }

    fn any_nuts_off(&self, this: &Said) -> bool {
        self.said.iter().zip(&self.stands).any(|(other, stands)| {
            other.sort.as_deref() == Some("wheel-nuts")
                && *stands != Stands::Back
                && Side::may_mean(this.side, other.side)
        })
    }

    fn answer(self) -> Answer {
        // Work that is done meets what others owe.
        let mut account = self;
        for at in 0..account.said.len() {
            let said = &account.said[at];
            let proves = said
                .sort
                .as_ref()
                .and_then(|sort| account.vocabulary.sort_ids.get(sort))
                .is_some_and(|sort| account.vocabulary.sort(*sort).proves);
            if said.kind == Some(Kind::Work) && account.stands[at] == Stands::Back && proves {
                account.done = account.done.and(said.works);
            }
        }
        let mut shut = Gates::NONE;
        let mut owed = WorkSet::default();
        let mut why = Vec::new();
        for at in 0..account.said.len() {
            let said = &account.said[at];
            if said.kind.is_none() {
                continue;
            }
            let out = account.stands[at] != Stands::Back;
            let unknown = said.sure == Sure::Unknown && said.safety;
            let stands_open = if out && said.kind != Some(Kind::Work) {
                said.gates_shut_off
            } else if unknown {
                Gates::ALL
            } else {
                Gates::NONE
            };
            if !stands_open.is_empty() {
                why.push(Why {
                    text: said.text.clone(),
                    work: None,
                    shuts: stands_open,
                });
            }
            shut = shut.and(stands_open);
            let owes = account.owes(at);
            owed = owed.and(owes);
            for owes in said
                .owed
                .iter()
                .filter(|one| owes.has(account.vocabulary.set(&[&one.work])))
            {
                // While a thing is off its own gates are what it shuts; what it owes shuts with it.
                let shuts = if out && said.kind != Some(Kind::Work) {
                    Gates::NONE
                } else {
                    owes.shuts
                };
                shut = shut.and(shuts);
                why.push(Why {
                    text: said.text.clone(),
                    work: Some(owes.work.clone()),
                    shuts,
                });
            }
        }
        Answer {
            shut,
            owed: owed
                .iter()
                .map(|at| account.vocabulary.works[at].code.clone())
                .collect(),
            why,
            not_understood: account.not_understood,
        }
    }
}

impl Vocabulary {
    /// The works that words mark as done, of those that are owed. Words that may mean several
    /// works count only where one of them is owed.
    pub(crate) fn done_by(&self, ids: &[u32], owed: WorkSet) -> Option<WorkSet> {
        let longest = self
            .said_done
            .iter()
            .filter(|(words, _)| words.iter().all(|id| ids.contains(id)))
            .map(|(words, _)| words.len())
            .max()?;
        let set = self
            .said_done
            .iter()
            .filter(|(words, _)| words.len() == longest && words.iter().all(|id| ids.contains(id)))
            .fold(WorkSet::default(), |set, (_, works)| set.and(*works));
        let met = set.both(owed);
        (met.iter().count() == 1).then_some(met)
    }
}
