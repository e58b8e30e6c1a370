//! Debts: work owed because of a move. Derived, never stored; only a person's own
//! declaration and the doing of the work are facts.

use crate::account::Account;
use crate::code::{LevelAt, Until, Work, WorkIs};
use crate::decision::{StatedNeed, StatedWork};
use crate::fact::Fact;
use crate::ids::MoveId;
use crate::item::Item;
use crate::moves::{Node, Stated};
use crate::order::{Order, Stamp};
use crate::rules::Rules;
use crate::text::{Token, Words};
use crate::trade::sorts;
use crate::trade::{SharedIs, TradeWork, work_is};
use states::{Gate, ItemId, Kind, Need, Position, State, System};
use std::collections::{BTreeMap, BTreeSet};

/// One piece of work owed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Debt {
    pub work: Work,
    /// Until when; the first of the gates, where there are some.
    pub until: Until,
    /// Every gate it stands before, as far as none of them asks what another asks.
    pub gates: BTreeSet<Gate>,
    /// In words, where a map or a person gave some.
    pub words: Option<Words>,
    /// Since when, and through whom.
    pub since: Stamp,
    /// The moves it comes from: what answers it must have seen them.
    pub causes: BTreeSet<MoveId>,
    /// Whether something of the safety class owes it.
    pub safety: bool,
}

impl Debt {
    /// Owes it until then as well: of two untils the stricter stands, and two gates of
    /// which neither asks what the other asks both stand.
    fn also_until(&mut self, until: &Until) {
        let Until::Before(gate) = until else {
            return;
        };
        if self.gates.iter().any(|stands| gate.includes(*stands)) {
            return;
        }
        self.gates.retain(|stands| !stands.includes(*gate));
        self.gates.insert(*gate);
        if let Some(first) = self.gates.first() {
            self.until = Until::Before(*first);
        }
    }

    /// Whether it stands at this gate.
    #[must_use]
    pub fn stands_at(&self, gate: Gate) -> bool {
        self.gates.iter().any(|before| gate.includes(*before))
    }
}

/// Everything owed on an order.
#[must_use]
pub fn debts(order: &Order, account: &Account, rules: &Rules) -> Vec<Debt> {
    let stated = Adopted::of(order);
    let mut owed: BTreeMap<Work, Debt> = BTreeMap::new();
    for item in account.items.values() {
        for work in item.trade_owes(account) {
            owe_by_trade(&mut owed, item, work, &stated, account, rules);
        }
    }
    let by_system = |item: &&Item| item.known_trade().is_none() || item.told_otherwise();
    let readings = account
        .items
        .values()
        .filter(by_system)
        .flat_map(|item| account.readings(item));
    for item in readings {
        for (work, gate) in usual_work(item) {
            if stated.says(account, item, work) {
                continue;
            }
            let causes = disturbing(account, &item.id, None);
            let until = until(work, gate, account, item, rules);
            let on = (!shared(work)).then(|| item.id.clone());
            // What is done once for all is not owed twice because a map has a name for it.
            let named = shared(work)
                .then(|| stated.named(work, item.system))
                .flatten();
            let owes = named.map_or_else(|| Work::usual(work, on), |stated| stated.owes(account));
            owe(&mut owed, owes, causes, &until);
        }
    }
    for (item, causes) in broken_needs(account, &stated.needs) {
        let work = Work::usual(WorkIs::TorqueAgain, Some(item));
        owe(&mut owed, work, causes, &Until::Before(Gate::Road));
    }
    for work in &stated.work {
        let item = account.moves.name(&work.item);
        let causes = disturbing(account, item, Some(work.to));
        let owes = work.owes(account);
        if let Some(debt) = owe(&mut owed, owes, causes, &work.until) {
            debt.words = debt.words.or(work.words);
        }
    }
    let answers = Answers::of(order, account);
    let mut out: Vec<_> = owed
        .into_values()
        .filter(|debt| !answers.all(debt, account))
        .collect();
    out.extend(own_debts(order, &answers));
    out
}

/// What the trade says that moving an item leaves. A map that has a work of this sort for
/// the item, or for all, gives it its name; the stricter gate stands.
fn owe_by_trade(
    owed: &mut BTreeMap<Work, Debt>,
    item: &Item,
    work: &TradeWork,
    stated: &Adopted,
    account: &Account,
    rules: &Rules,
) {
    let sort = work.sort.as_str();
    let named = stated.named_by_sort(account, item, work);
    let owes = named.map_or_else(
        || Work {
            sort: Some(sort_of(item, work)),
            ..Work::usual(
                work_is(sort),
                (work.shared == SharedIs::Item).then(|| item.id.clone()),
            )
        },
        |stated| stated.owes(account),
    );
    let untils: Vec<Until> = match (sort, work.before.as_slice()) {
        (sorts::LEVEL_COLD, _) => vec![level_cold(account, item, rules)],
        // What the map says of when comes before what is usual.
        (_, []) => vec![named.and_then(StatedWork::later).unwrap_or(Until::Later {
            date: None,
            distance: work.after.clone(),
        })],
        (_, gates) => gates.iter().copied().map(Until::Before).collect(),
    };
    for until in untils {
        let causes = disturbing(account, &item.id, None);
        if let Some(debt) = owe(owed, owes.clone(), causes, &until) {
            debt.safety |= item.is_safety();
        }
    }
}

/// A work that is owed once a wheel carries the wheel in its code.
fn sort_of(item: &Item, work: &TradeWork) -> Token {
    let side = item.known_trade().and_then(|trade| trade.side.as_ref());
    let wheel = side.filter(|_| work.shared == SharedIs::Wheel);
    wheel
        .and_then(|side| Token::new(&format!("{}:{}", work.sort.as_str(), side.as_str())).ok())
        .unwrap_or_else(|| work.sort.clone())
}

/// The work that moving such an item usually leaves, and the gate it stands before.
/// Facts of the trade; a map may state more, or other times.
fn usual_work(item: &Item) -> Vec<(WorkIs, Gate)> {
    match (item.kind, item.system) {
        (Kind::PutIn | Kind::Work, _) => vec![],
        (Kind::Fluid, System::Cooling) => vec![
            (WorkIs::Bleed, Gate::Road),
            (WorkIs::LevelWarm, Gate::HandOver),
            (WorkIs::LevelCold, Gate::HandOver),
            (WorkIs::LookForLeaks, Gate::HandOver),
        ],
        (Kind::Fluid, System::Brakes) => {
            vec![(WorkIs::Bleed, Gate::Roll), (WorkIs::PumpPedal, Gate::Roll)]
        }
        (Kind::Fluid, System::Steering) => vec![
            (WorkIs::Bleed, Gate::Road),
            (WorkIs::LevelWarm, Gate::HandOver),
            (WorkIs::LookForLeaks, Gate::HandOver),
        ],
        (Kind::Fluid, System::Oil | System::Transmission) => vec![
            (WorkIs::LevelWarm, Gate::HandOver),
            (WorkIs::LookForLeaks, Gate::HandOver),
        ],
        (Kind::Fluid, System::Fuel) => vec![(WorkIs::LookForLeaks, Gate::HandOver)],
        (Kind::Fasteners, System::Wheels) => {
            vec![(WorkIs::TorqueAfterDistance, Gate::HandOver)]
        }
        (_, System::Brakes) => vec![(WorkIs::PumpPedal, Gate::Roll)],
        (_, System::Battery) => vec![(WorkIs::ClockAndWindows, Gate::HandOver)],
        _ => vec![],
    }
}

/// Work that is done once for all items that call for it.
fn shared(work: WorkIs) -> bool {
    matches!(
        work,
        WorkIs::PumpPedal | WorkIs::ClockAndWindows | WorkIs::LookForLeaks
    )
}

fn until(work: WorkIs, gate: Gate, account: &Account, item: &Item, rules: &Rules) -> Until {
    match work {
        WorkIs::TorqueAfterDistance => Until::Later {
            date: None,
            distance: None,
        },
        WorkIs::LevelCold => level_cold(account, item, rules),
        _ => Until::Before(gate),
    }
}

/// A cold level needs one full heating and cooling: on the day of filling it cannot be
/// seen, and becomes due on the next; on any later day it stands before hand-over.
fn level_cold(account: &Account, item: &Item, rules: &Rules) -> Until {
    let filled_today = account
        .moves
        .live(&item.id)
        .filter(|(_, node)| {
            node.stated == Stated::Moved && node.change.left.state == State::AtLevel
        })
        .any(|(_, node)| rules.day(node.stamp.at) == rules.today());
    match rules.today().tomorrow() {
        Ok(tomorrow) if filled_today => Until::Later {
            date: Some(tomorrow),
            distance: None,
        },
        _ => Until::Before(Gate::HandOver),
    }
}

/// The moves that disturbed an item; only those to one state, if one is named.
fn disturbing(account: &Account, item: &ItemId, to: Option<State>) -> Vec<(MoveId, Stamp)> {
    account
        .moves
        .live(item)
        .filter(|(_, node)| node.stated == Stated::Moved)
        .filter(|(_, node)| to.is_none_or(|to| node.change.left.state.rung() == to.rung()))
        .map(|(id, node)| (id.clone(), node.stamp.clone()))
        .collect()
}

/// Owes a work, if anything caused it; work that is owed already gets its causes too, and
/// the stricter until.
fn owe<'a>(
    owed: &'a mut BTreeMap<Work, Debt>,
    work: Work,
    causes: Vec<(MoveId, Stamp)>,
    until: &Until,
) -> Option<&'a mut Debt> {
    let since = causes
        .iter()
        .map(|(_, stamp)| stamp)
        .min_by_key(|stamp| (stamp.at, &stamp.who))
        .cloned()?;
    let debt = owed.entry(work.identity()).or_insert_with(|| Debt {
        work,
        until: until.clone(),
        gates: BTreeSet::new(),
        words: None,
        since: since.clone(),
        causes: BTreeSet::new(),
        safety: false,
    });
    debt.also_until(until);
    if (since.at, &since.who) < (debt.since.at, &debt.since.who) {
        debt.since = since;
    }
    debt.causes.extend(causes.into_iter().map(|(id, _)| id));
    Some(debt)
}

/// What a map states for this order: the version adopted last.
#[derive(Debug, Default)]
struct Adopted {
    needs: Vec<StatedNeed>,
    work: Vec<StatedWork>,
}

impl Adopted {
    fn of(order: &Order) -> Self {
        crate::adoption(order).map_or_else(Self::default, |adopted| Self {
            needs: adopted.needs.to_vec(),
            work: adopted.work.to_vec(),
        })
    }

    /// Whether the map itself states this work for the item, which then holds in place
    /// of what is usual.
    fn says(&self, account: &Account, item: &Item, work: WorkIs) -> bool {
        self.work.iter().any(|stated| {
            stated.is(work, item.system) && account.moves.name(&stated.item) == &item.id
        })
    }

    /// The map's own work of a sort of the trade: that of the item, of something on the same
    /// wheel where the trade does it once a wheel, or that of all where it does it once.
    fn named_by_sort(
        &self,
        account: &Account,
        item: &Item,
        work: &TradeWork,
    ) -> Option<&StatedWork> {
        let these = || {
            let named = self.work.iter().filter(|stated| stated.named.is_some());
            named.filter(|stated| stated.sort.as_ref() == Some(&work.sort))
        };
        let shared = |stated: &&StatedWork| match work.shared {
            SharedIs::Order => true,
            SharedIs::Wheel => {
                let owing = account.items.get(account.moves.name(&stated.item));
                owing.is_some_and(|owing| owing.may_be_at_the_wheel_of(item))
            }
            SharedIs::Item => false,
        };
        these()
            .find(|stated| account.moves.name(&stated.item) == &item.id)
            .or_else(|| these().find(shared))
    }

    /// The map's own work of this sort.
    fn named(&self, work: WorkIs, system: System) -> Option<&StatedWork> {
        let mut these = self.work.iter().filter(|stated| stated.named.is_some());
        these.find(|stated| stated.is(work, system))
    }
}

impl StatedWork {
    /// Whether it is what such work on such a system usually is.
    fn is(&self, work: WorkIs, system: System) -> bool {
        match &self.sort {
            Some(sort) => sort_code(work, system) == Some(sort.as_str()),
            None => self.work == work,
        }
    }

    /// When it is due, where that is a date or a distance.
    fn later(&self) -> Option<Until> {
        match &self.until {
            Until::Later {
                date: None,
                distance: None,
            }
            | Until::Before(_) => None,
            until @ Until::Later { .. } => Some(until.clone()),
        }
    }

    /// The work it makes due.
    fn owes(&self, account: &Account) -> Work {
        match &self.named {
            Some(named) => Work {
                sort: self.sort.clone(),
                ..Work::named(account.moves.name(named).clone(), self.work)
            },
            // Adoptions of before works were named: two of one sort on one item are one.
            None => {
                let item = account.moves.name(&self.item).clone();
                Work::usual(self.work, (!shared(self.work)).then_some(item))
            }
        }
    }
}

/// What the trade calls usual work on a system.
fn sort_code(work: WorkIs, system: System) -> Option<&'static str> {
    Some(match (work, system) {
        (WorkIs::Bleed, System::Brakes) => sorts::BLEED_BRAKES,
        (WorkIs::Bleed, System::Steering) => sorts::BLEED_STEERING,
        (WorkIs::Bleed, System::Transmission) => sorts::BLEED_CLUTCH,
        (WorkIs::Bleed, _) => sorts::BLEED_COOLING,
        (WorkIs::LevelWarm, _) => sorts::LEVEL_WARM,
        (WorkIs::LevelCold, _) => sorts::LEVEL_COLD,
        (WorkIs::LookForLeaks, _) => sorts::LEAK_LOOK,
        (WorkIs::TorqueAgain, _) => sorts::TORQUE,
        (WorkIs::TorqueAfterDistance, _) => sorts::TORQUE_AFTER_DISTANCE,
        (WorkIs::PumpPedal, _) => sorts::PEDAL_HARD,
        (WorkIs::Relearn | WorkIs::ClockAndWindows, _) => sorts::RELEARN,
        (WorkIs::Alignment, _) => sorts::ALIGNMENT,
        (WorkIs::CleanFace | WorkIs::Other, _) => return None,
    })
}

/// Tightenings whose stated need did not hold by what their author had seen, unless a
/// later one, with the need met, has seen them. For other moves a need is advice: what
/// came off or went on out of turn leaves nothing to be torqued again.
fn broken_needs(account: &Account, needs: &[StatedNeed]) -> Vec<(ItemId, Vec<(MoveId, Stamp)>)> {
    let mut out = Vec::new();
    for stated in needs.iter().filter(|stated| stated.to == State::Tight) {
        let to_state: Vec<(&MoveId, &Node)> = account
            .moves
            .live(&stated.item)
            .filter(|(_, node)| node.stated == Stated::Moved && node.change.left.state == stated.to)
            .collect();
        let meant = |at: &Position| stated.at.is_empty() || stated.at.contains(at);
        let need = of_what_is_known(&stated.need, account);
        let holds = |id: &MoveId| {
            let stage = account.moves.before_in_stage(id);
            let seen = account.moves.seen_by(stage.chain([id]));
            need.holds(&|item: &ItemId| stands_as_seen(account, item, &seen))
        };
        let good: Vec<_> = to_state.iter().filter(|(id, _)| holds(id)).collect();
        let made_good = |id: &MoveId, at: &Position| {
            good.iter().any(|(later, node)| {
                node.change.at.contains(at) && account.moves.seen_by([*later]).contains(id)
            })
        };
        let broken: Vec<_> = to_state
            .iter()
            .filter(|(id, node)| {
                let at = &node.change.at;
                at.iter().any(|at| meant(at) && !made_good(id, at)) && !holds(id)
            })
            .map(|(id, node)| ((*id).clone(), node.stamp.clone()))
            .collect();
        if !broken.is_empty() {
            out.push((account.moves.name(&stated.item).clone(), broken));
        }
    }
    out
}

/// The need without items that the order does not know and that satisfy it at home: what
/// nobody spoke of stands where it belongs.
fn of_what_is_known(need: &Need, account: &Account) -> Need {
    let known = |item: &ItemId| !account.positions(item).is_empty();
    let at_home = |states: &BTreeSet<State>| {
        let homes = Kind::ALL.iter().map(|kind| kind.home());
        homes.into_iter().any(|home| states.contains(&home))
    };
    let each = |needs: &[Need]| {
        let all = needs.iter().map(|need| of_what_is_known(need, account));
        all.collect()
    };
    match need {
        Need::Is { item, states, .. } if !known(item) && at_home(states) => Need::All(vec![]),
        Need::Is { .. } => need.clone(),
        Need::All(needs) => Need::All(each(needs)),
        Need::Any(needs) => Need::Any(each(needs)),
    }
}

/// Where an item stood, by what someone had seen: home, if they had seen nothing of it.
fn stands_as_seen(
    account: &Account,
    item: &ItemId,
    seen: &BTreeSet<&MoveId>,
) -> Vec<(Position, State)> {
    account
        .positions(item)
        .into_iter()
        .flat_map(|position| {
            let heads = account.moves.heads_seen(item, position, seen);
            if heads.is_empty() {
                return vec![(position, account.home(item, position).state)];
            }
            heads
                .iter()
                .map(|(_, node)| (position, node.change.left.state))
                .collect()
        })
        .collect()
}

/// The doings of work, and the moves each had seen.
#[derive(Debug, Default)]
struct Answers {
    /// By the work's identity.
    work: BTreeMap<Work, BTreeSet<MoveId>>,
    /// Levels seen good, by the fluid.
    levels: BTreeMap<(LevelAt, ItemId), BTreeSet<MoveId>>,
}

impl Answers {
    fn of(order: &Order, account: &Account) -> Self {
        let mut out = Self::default();
        let seen = |after: &[MoveId]| -> Vec<MoveId> {
            account.moves.seen_by(after).into_iter().cloned().collect()
        };
        let one_name = |item: &ItemId| account.moves.name(item).clone();
        for (_, filed) in order.beside_moves() {
            match &filed.fact {
                Fact::WorkDone { work, after, .. } => {
                    let work = Work {
                        item: work.item.as_ref().map(one_name),
                        named: work.named.as_ref().map(one_name),
                        ..work.clone()
                    };
                    let answered = out.work.entry(work.identity()).or_default();
                    answered.extend(seen(after));
                }
                Fact::LevelSeen {
                    item,
                    level,
                    good: true,
                    after,
                    ..
                } => {
                    let answered = out.levels.entry((*level, one_name(item))).or_default();
                    answered.extend(seen(after));
                }
                _ => {}
            }
        }
        out
    }

    /// Whether everything that made a debt due was answered by somebody who had seen it.
    fn all(&self, debt: &Debt, account: &Account) -> bool {
        // A level seen cold, after a full heating and cooling, answers the warm one too.
        let levels: &[LevelAt] = match debt.work.work {
            WorkIs::LevelWarm => &[LevelAt::Warm, LevelAt::Cold],
            WorkIs::LevelCold => &[LevelAt::Cold],
            _ => &[],
        };
        let done = self.work.get(&debt.work.identity());
        let done_cold = (debt.work.work == WorkIs::LevelWarm)
            .then(|| Work::usual(WorkIs::LevelCold, debt.work.item.clone()))
            .and_then(|cold| self.work.get(&cold));
        debt.causes.iter().all(|cause| {
            let Some(node) = account.moves.get(cause).filter(|node| node.live) else {
                return true;
            };
            let fluid = account.moves.name(&node.change.item);
            let level_seen = levels.iter().any(|level| {
                let seen = self.levels.get(&(*level, fluid.clone()));
                seen.is_some_and(|seen| seen.contains(cause))
            });
            level_seen
                || [done, done_cold]
                    .into_iter()
                    .flatten()
                    .any(|seen| seen.contains(cause))
        })
    }

    /// Whether a person's own declaration was said to be done.
    fn own(&self, work: &Work) -> bool {
        self.work.contains_key(&work.identity())
    }
}

/// What people said is due, until they say it is done.
fn own_debts(order: &Order, answers: &Answers) -> Vec<Debt> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::WorkDue {
                id,
                item,
                words,
                until,
            } => Some(Debt {
                work: Work::declared(id.clone(), item.clone()),
                until: until.clone(),
                gates: match until {
                    Until::Before(gate) => BTreeSet::from([*gate]),
                    Until::Later { .. } => BTreeSet::new(),
                },
                words: Some(*words),
                since: filed.stamp.clone(),
                causes: BTreeSet::new(),
                safety: false,
            }),
            _ => None,
        })
        .filter(|debt| !answers.own(&debt.work))
        .collect()
}
