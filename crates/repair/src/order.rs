//! The repair order as a fold of its events.
//!
//! `evolve` only files events away, under the command that carried them; everything
//! else is read off this filing. Facts are kept in a map by command, so that the
//! sequence in which they arrived cannot be seen from here.

use crate::account::Account;
use crate::decision::{Decision, Event};
use crate::fact::Fact;
use crate::grown::GrownMap;
use crate::ids::{CommandId, PersonId};
use jiff::Timestamp;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, OnceLock};

/// Who said it, and when by the device's clock: for clocks and display only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stamp {
    pub who: PersonId,
    /// When, by the device.
    pub at: Timestamp,
}

/// An event as the log holds it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recorded<E> {
    /// The command that carried it.
    pub command: CommandId,
    /// Its place among that command's events.
    pub nth: u32,
    /// Who and when.
    pub stamp: Stamp,
    /// What happened.
    pub event: E,
}

/// One fact as filed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filed {
    /// Who and when.
    pub stamp: Stamp,
    pub fact: Fact,
}

/// One decision as filed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Decided {
    /// The command that asked for it.
    pub command: CommandId,
    /// Who and when.
    pub stamp: Stamp,
    pub decision: Decision,
}

/// Facts by the command that carried them, and as its how manieth.
type Filing = GrownMap<(CommandId, u32), Arc<Filed>>;

/// A repair order: its facts by command, its decisions in sequence.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Order {
    facts: Filing,
    /// Those of them that are no moves: few, however long people work on it.
    beside_moves: Filing,
    decisions: Vec<Decided>,
    /// The events that `decisions` stand for, so that none counts twice.
    decided: BTreeSet<(CommandId, u32)>,
    read: Read,
}

/// What was read off the filing before, until something more is filed. It follows from the
/// filing, so two orders that are filed alike are alike.
#[derive(Debug, Clone, Default)]
struct Read {
    /// What is taken back: the same until more is.
    undone: Arc<OnceLock<Arc<Undone>>>,
    account: Once,
    /// An earlier state that somebody may be reading just now.
    earlier: Option<Earlier>,
}

/// Where everything stands, read once by whoever looks first at this state.
type Once = Arc<OnceLock<Arc<Account>>>;

/// A state that others look at, and what was filed since: once they have read it, it is added.
#[derive(Debug, Clone)]
struct Earlier {
    account: Once,
    since: Vec<(CommandId, Arc<Filed>)>,
}

/// So much may be filed while somebody reads.
const MOST_SINCE: usize = 4_096;

impl Read {
    /// What was read before, with one more fact; where that is not simply added to it, it is
    /// read anew when somebody asks.
    fn go_on(&mut self, command: &CommandId, filed: &Arc<Filed>) {
        if matches!(filed.fact, Fact::Undo { .. }) {
            *self = Self::default();
            return;
        }
        // Where nobody has looked, nothing is gone on with.
        if !self.is_looked_at() {
            return;
        }
        let state = std::mem::take(&mut self.account);
        let earlier = self.earlier.take().filter(Earlier::is_awaited);
        let earlier = earlier.filter(|_| state.get().is_none());
        // Nobody reads a state that nobody else holds.
        let state = Earlier {
            account: state,
            since: Vec::new(),
        };
        let Some(mut earlier) = earlier.or_else(|| state.is_awaited().then_some(state)) else {
            return;
        };
        earlier.since.push((command.clone(), Arc::clone(filed)));
        if earlier.account.get().is_some() {
            self.account = self.brought_up(earlier).map(Once::new).unwrap_or_default();
        } else if earlier.since.len() <= MOST_SINCE {
            self.earlier = Some(earlier);
        }
    }

    fn is_looked_at(&self) -> bool {
        let somebody_holds_it = Arc::strong_count(&self.account) > 1;
        somebody_holds_it || self.account.get().is_some() || self.earlier.is_some()
    }

    /// What an earlier state came to, if that was read by now, with what was filed since.
    fn brought_up(&self, earlier: Earlier) -> Option<OnceLock<Arc<Account>>> {
        let Earlier { account, since } = earlier;
        let account = match Arc::try_unwrap(account) {
            Ok(own) => own.into_inner(),
            Err(shared) => shared.get().cloned(),
        };
        let undone = Arc::clone(self.undone.get()?);
        let mut since = since.iter();
        let account = since.try_fold(account?, |account, (command, filed)| {
            if undone.names(command) {
                return None;
            }
            Account::with(account, command, filed)
        });
        account.map(OnceLock::from)
    }
}

impl Earlier {
    /// Whether it was read, or somebody else holds it, and may read it yet.
    fn is_awaited(&self) -> bool {
        self.account.get().is_some() || Arc::strong_count(&self.account) > 1
    }
}

impl PartialEq for Read {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Eq for Read {}

/// Files one event. Total: any event, in any sequence, any number of times.
#[must_use]
pub fn evolve(mut order: Order, recorded: Recorded<Event>) -> Order {
    let Recorded {
        command,
        nth,
        stamp,
        event,
    } = recorded;
    match event {
        Event::Fact(fact) => {
            let name = (command.clone(), nth);
            if !order.facts.contains_key(&name) {
                let filed = Arc::new(Filed { stamp, fact });
                if !matches!(filed.fact, Fact::Moved { .. }) {
                    order.beside_moves.insert(name.clone(), Arc::clone(&filed));
                }
                order.facts.insert(name, Arc::clone(&filed));
                order.read.go_on(&command, &filed);
            }
        }
        // What is read off here follows from the facts alone.
        Event::Decision(decision) => {
            if order.decided.insert((command.clone(), nth)) {
                order.decisions.push(Decided {
                    command,
                    stamp,
                    decision,
                });
            }
        }
    }
    order
}

impl Order {
    /// The facts that stand, each with the command that carried it: those taken back
    /// are left out, and so are the takings-back themselves.
    pub fn facts(&self) -> impl Iterator<Item = (&CommandId, &Filed)> {
        self.standing(&self.facts)
    }

    /// The same without moves, which are most of a long order and which the account has read.
    pub fn beside_moves(&self) -> impl Iterator<Item = (&CommandId, &Filed)> {
        self.standing(&self.beside_moves)
    }

    fn standing<'a>(
        &self,
        facts: &'a Filing,
    ) -> impl Iterator<Item = (&'a CommandId, &'a Filed)> + use<'a> {
        let undone = self.undone();
        facts
            .iter()
            .filter(move |((command, _), filed)| {
                !undone.commands.contains(command) && !matches!(filed.fact, Fact::Undo { .. })
            })
            .map(|((command, _), filed)| (command, filed.as_ref()))
    }

    /// Every fact ever filed, taken back or not: the story.
    pub fn story(&self) -> impl Iterator<Item = (&CommandId, &Filed)> {
        self.facts
            .iter()
            .map(|((command, _), filed)| (command, filed.as_ref()))
    }

    /// The same without moves.
    pub(crate) fn story_beside_moves(&self) -> impl Iterator<Item = (&CommandId, &Filed)> {
        self.beside_moves
            .iter()
            .map(|((command, _), filed)| (command, filed.as_ref()))
    }

    /// The decisions, in the sequence they were taken.
    #[must_use]
    pub fn decisions(&self) -> &[Decided] {
        &self.decisions
    }

    /// Whether nothing was ever filed.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.facts.is_empty() && self.decisions.is_empty()
    }

    /// Where everything stands, read once for as long as nothing more is filed.
    #[must_use]
    pub fn account(&self) -> Arc<Account> {
        let earlier = || {
            self.read
                .brought_up(self.read.earlier.clone()?)?
                .into_inner()
        };
        let account = self
            .read
            .account
            .get_or_init(|| earlier().unwrap_or_else(|| Arc::new(Account::read(self))));
        Arc::clone(account)
    }

    /// The commands and single moves that are taken back.
    #[must_use]
    pub fn undone(&self) -> Arc<Undone> {
        let undone = self
            .read
            .undone
            .get_or_init(|| Arc::new(self.read_undone()));
        Arc::clone(undone)
    }

    fn read_undone(&self) -> Undone {
        let undos: BTreeMap<&CommandId, Vec<(&CommandId, Option<u16>)>> = self
            .beside_moves
            .iter()
            .filter_map(|((command, _), filed)| match &filed.fact {
                Fact::Undo {
                    command: target,
                    part,
                } => Some((command, (target, *part))),
                _ => None,
            })
            .fold(BTreeMap::new(), |mut all, (command, undo)| {
                all.entry(command).or_insert_with(Vec::new).push(undo);
                all
            });
        let taken_back = taken_back(&undos);
        let mut out = Undone::default();
        for (command, targets) in &undos {
            if taken_back.contains(command) {
                continue;
            }
            for (target, part) in targets {
                match part {
                    None => {
                        out.commands.insert((*target).clone());
                    }
                    Some(nth) => {
                        out.moves.insert(((*target).clone(), *nth));
                    }
                }
            }
        }
        out
    }
}

/// The undos that are themselves undone, found from the newest end: an undo that no
/// other names stands and takes its target back, and so on down. Undos that name each
/// other in a circle all stand, since none of them came first.
fn taken_back<'a>(
    undos: &BTreeMap<&'a CommandId, Vec<(&'a CommandId, Option<u16>)>>,
) -> BTreeSet<&'a CommandId> {
    let undone_by = |command: &CommandId| {
        undos[command]
            .iter()
            .filter(|(target, part)| part.is_none() && undos.contains_key(target))
            .map(|(target, _)| *target)
            .collect::<BTreeSet<_>>()
    };
    let mut open_questions: BTreeMap<&CommandId, usize> = BTreeMap::new();
    for target in undos.keys().flat_map(|command| undone_by(command)) {
        *open_questions.entry(target).or_default() += 1;
    }
    let mut taken = BTreeSet::new();
    let mut settled: BTreeSet<&CommandId> = BTreeSet::new();
    let mut todo: Vec<&CommandId> = undos
        .keys()
        .filter(|command| !open_questions.contains_key(*command))
        .copied()
        .collect();
    while let Some(command) = todo.pop() {
        if !settled.insert(command) {
            continue;
        }
        let stands = !taken.contains(command);
        for target in undone_by(command) {
            if stands {
                taken.insert(target);
                todo.push(target);
            } else if let Some(open) = open_questions.get_mut(target) {
                *open = open.saturating_sub(1);
                if *open == 0 {
                    todo.push(target);
                }
            }
        }
    }
    taken
}

/// What was taken back.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Undone {
    /// Whole commands.
    pub commands: BTreeSet<CommandId>,
    /// Single moves of a command.
    pub moves: BTreeSet<(CommandId, u16)>,
}

impl Undone {
    /// Whether something of this command is taken back.
    fn names(&self, command: &CommandId) -> bool {
        let first = (command.clone(), 0);
        let of_it = self.moves.range(first..).next();
        self.commands.contains(command) || of_it.is_some_and(|(named, _)| named == command)
    }
}
