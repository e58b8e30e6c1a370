//! Nothing panics on any events, nothing counts twice, and what is true does not depend
//! on the sequence in which facts arrived.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod any;
mod support;

use any::*;
use jiff::tz::TimeZone;
use price::{Ceiling, Payer};
use proptest::collection::vec;
use proptest::prelude::*;
use repair::*;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};
use support::{LOOSE, a_move, item, words};

fn rules() -> Rules {
    Rules {
        now: "2026-03-03T10:00:00Z".parse().unwrap(),
        zone: TimeZone::fixed(jiff::tz::offset(-11)),
        leeway: price::Leeway::default(),
    }
}

/// An order of these events, filed as they come.
fn order<'a>(events: impl IntoIterator<Item = &'a Recorded<Event>>) -> Order {
    events.into_iter().cloned().fold(Order::default(), evolve)
}

/// One item, at home or not: what is known of it, and where each piece stands and belongs.
#[derive(Debug, PartialEq)]
struct Whole {
    known: Option<Item>,
    apart: Option<ToldApart>,
    told_by: Vec<CommandId>,
    places: BTreeMap<Position, (BTreeSet<Stand>, Stand)>,
    frontier: BTreeSet<MoveId>,
    live: Vec<(MoveId, Node)>,
}

fn whole(account: &Account, told: &BTreeMap<ItemId, Vec<CommandId>>, item: &ItemId) -> Whole {
    let place = |at: Position| {
        let stands = account.moves.stands(item, at);
        (at, (stands, account.home(item, at)))
    };
    let live = account.moves.live(item);
    Whole {
        known: account.items.get(item).cloned(),
        apart: account.told_apart.get(item).cloned(),
        told_by: told.get(item).cloned().unwrap_or_default(),
        places: account.positions(item).into_iter().map(place).collect(),
        frontier: account.moves.frontier(item),
        live: live.map(|(id, node)| (id.clone(), node.clone())).collect(),
    }
}

/// All that the readers say of an order's facts.
#[derive(Debug, PartialEq)]
struct Read {
    whole: BTreeMap<ItemId, Whole>,
    open: Vec<OpenItem>,
    closed_short: BTreeMap<ItemId, u16>,
    debts: Vec<Debt>,
    answers: Vec<Answer>,
    lines: Vec<papers::Line>,
    how_to: HowToWritten,
    ceilings: BTreeMap<Payer, Ceiling>,
    alarms: Vec<Reason>,
    litres: BTreeMap<ItemId, Litres>,
    price: Option<papers::Price>,
    paid: Result<Decimal, price::TooLarge>,
    keys_here: bool,
    snags: Vec<snags::OpenSnag>,
    parts: BTreeMap<PartId, BTreeMap<PartStep, Decimal>>,
    proofs: BTreeSet<ProofIs>,
}

fn read(order: &Order) -> Read {
    let account = Account::of(order);
    let rules = rules();
    let told = told_of_items(order, &account.moves);
    let spoken_of = account.moves.items().chain(account.items.keys());
    Read {
        whole: spoken_of
            .chain(told.keys())
            .map(|item| (item.clone(), whole(&account, &told, item)))
            .collect(),
        debts: debts(order, &account, &rules),
        answers: Gate::ALL
            .into_iter()
            .map(|gate| may(order, gate, &rules))
            .collect(),
        lines: papers::lines(order),
        how_to: how_to_written(order),
        ceilings: papers::ceilings(order),
        alarms: late_alarms(order, &rules),
        litres: litres(order, &account),
        price: papers::price(order),
        paid: papers::paid(order, Payer::Customer),
        keys_here: papers::keys_here(order),
        snags: snags::open(order),
        parts: stock::steps(order),
        proofs: proofs_needed(&account),
        open: account.open.clone(),
        closed_short: account.closed_short.clone(),
    }
}

fn requests(entries: Vec<price::Entry>) -> Vec<Request> {
    let words = words(0);
    vec![
        Request::Open {
            vehicle: VehicleId::new("v"),
            customer: CustomerId::new("c"),
        },
        Request::Price {
            entries,
            after: vec![],
        },
        Request::WriteDown {
            payer: Payer::Customer,
            after: vec![CommandId::new("c1")],
        },
        Request::Charge { after: vec![] },
        Request::Credit {
            invoice: CommandId::new("c1"),
            payer: Payer::Customer,
            lines: vec![price::CreditLine {
                line: 0,
                amount: 1.into(),
                keeps_tax: false,
            }],
            words,
        },
        Request::Waive {
            gate: Gate::HandOver,
            reason: ReasonKey::Unpaid,
            figure: String::new(),
            words,
        },
        Request::WithdrawWaiver {
            waiver: CommandId::new("c1"),
        },
        Request::HandOver {
            leaves: Leaves::DrivesAway,
            ending: Ending::Repaired,
            boxes: None,
            signature: None,
            signed_by: None,
        },
        Request::TakeBack { words },
        Request::Void { words },
    ]
}

fn context() -> Context {
    Context {
        rules: rules(),
        next_number: 1,
        next_invoice: 1,
        next_credit: 1,
        currency: "EUR".into(),
        minor_digits: 2,
        taxes: vec![],
        terms: price::Terms::default(),
        may_waive: BTreeSet::from([WaivedBy::Desk, WaivedBy::InCharge, WaivedBy::Foreman]),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn no_events_make_anything_panic(
        events in vec(any_event(), 0..50), entries in entries(), fact in any_fact(),
    ) {
        let order = order(&events);
        let read = read(&order);
        for answer in &read.answers {
            prop_assert_eq!(answer.may(), !answer.reasons().any(Reason::shuts));
        }
        prop_assert_eq!(record(&order, fact.clone()), vec![Event::Fact(fact)]);
        for request in requests(entries) {
            if let Ok(events) = decide(&order, &context(), request) {
                prop_assert!(!events.is_empty(), "what is accepted leaves an event");
            }
        }
    }

    #[test]
    fn what_is_read_on_is_what_is_read_at_once(
        events in vec(any_event(), 0..40), moved in facts(40), looks in any::<u64>(),
    ) {
        for events in [events, moved] {
            // Somebody looks now and then; what they read is gone on with.
            let mut looked_at = Order::default();
            for (nth, event) in events.iter().enumerate() {
                looked_at = evolve(looked_at, event.clone());
                if looks >> (nth % 64) & 1 == 0 {
                    let before = looked_at.account();
                    prop_assert_eq!(read(&looked_at), read(&order(&events[..=nth])));
                    // Whoever holds what they read keeps it as it was.
                    drop(before);
                }
            }
            let at_once = order(&events);
            prop_assert_eq!(read(&looked_at), read(&at_once));
            let (on, once) = (looked_at.account(), at_once.account());
            for item in once.moves.items() {
                prop_assert_eq!(on.moves.frontier(item), once.moves.frontier(item));
                let lives = |account: &Account| -> Vec<MoveId> {
                    account.moves.live(item).map(|(id, _)| id.clone()).collect()
                };
                prop_assert_eq!(lives(&on), lives(&once));
            }
        }
    }

    /// Whoever holds a state may read it long after more was filed: what they read is what was so
    /// then, and what is gone on with from it is what is so now.
    #[test]
    fn what_somebody_reads_late_is_gone_on_with(
        events in vec(any_event(), 0..40), moved in facts(40), holds in any::<u64>(),
        later in vec(0_usize..12, 64),
    ) {
        for events in [events, moved] {
            let mut filed = Order::default();
            let mut held: Vec<(usize, usize, Order)> = Vec::new();
            for (nth, event) in events.iter().enumerate() {
                if holds >> (nth % 64) & 1 == 0 {
                    held.push((nth + later[nth % 64], nth, filed.clone()));
                }
                filed = evolve(filed, event.clone());
                let (due, waiting) = held.into_iter().partition(|(at, ..)| *at <= nth);
                held = waiting;
                for (_, before, state) in due {
                    prop_assert_eq!(read(&state), read(&order(&events[..before])));
                }
            }
            prop_assert_eq!(read(&filed), read(&order(&events)));
        }
    }

    #[test]
    fn an_event_filed_twice_counts_once(
        events in vec(any_event(), 0..30), again in vec(any::<prop::sample::Index>(), 0..10),
    ) {
        let once = order(&events);
        let mut doubled = events.clone();
        if !events.is_empty() {
            doubled.extend(again.iter().map(|index| index.get(&events).clone()));
        }
        prop_assert_eq!(order(&doubled), once);
    }

    /// Facts arrive in any sequence, some twice, and some only after the vehicle was adopted
    /// or has left.
    #[test]
    fn the_sequence_of_arrival_cannot_be_seen(
        (sent, mut arrived) in facts(40).prop_flat_map(|facts| {
            (Just(facts.clone()), Just(facts).prop_shuffle())
        }),
        again in vec((any::<prop::sample::Index>(), any::<prop::sample::Index>()), 0..10),
        adopted in adopted(),
        late in any::<prop::sample::Index>(),
    ) {
        for (which, place) in again {
            if !sent.is_empty() {
                arrived.insert(place.index(arrived.len() + 1), which.get(&sent).clone());
            }
        }
        let decided = |command: &str, decision| Recorded {
            command: CommandId::new(command),
            nth: 0,
            stamp: Stamp { who: PersonId::new("ana"), at: rules().now },
            event: Event::Decision(decision),
        };
        let decided = [decided("adopt", adopted), decided("left", handed_over(rules().now))];
        let sent = order(decided.iter().chain(&sent));
        let (before, after) = arrived.split_at(late.index(arrived.len() + 1));
        let arrived = order(before.iter().chain(&decided).chain(after));
        prop_assert_eq!(read(&arrived), read(&sent));
    }

    /// However names are said to be one, they end as one thing under the least of them.
    #[test]
    fn names_of_one_thing_come_together(
        (names, arrived) in (2..7usize).prop_flat_map(|count| {
            let chain: Vec<_> = (1..count).map(|n| (n - 1, n)).collect();
            (Just(count), Just(chain).prop_shuffle())
        }),
        turned in vec(any::<bool>(), 6),
        circle in any::<bool>(),
    ) {
        let name = |n: usize| ItemId::new(format!("n{n}"));
        let mut said: Vec<_> = arrived
            .iter()
            .zip(&turned)
            .map(|((a, b), turn)| if *turn { (*b, *a) } else { (*a, *b) })
            .collect();
        if circle {
            said.push((names - 1, 0));
        }
        let mut facts: Vec<Fact> = said
            .into_iter()
            .map(|(a, b)| Fact::SameAs { item: name(a), also: name(b) })
            .collect();
        facts.push(Fact::Moved {
            stage: None,
            moves: vec![a_move("n1", &[1], State::Off, &[])],
        });
        let account = Account::of(&told(&facts));
        for n in 0..names {
            let name = name(n);
            prop_assert_eq!(account.moves.name(&name).as_str(), "n0");
            prop_assert!(account.open_item(&name).is_some(), "whatever it is called");
        }
        prop_assert_eq!(account.open.len(), 1);
    }

    /// In one hand, what was done last is what stands.
    #[test]
    fn one_hand_after_another_leaves_the_last_state(
        states in vec(state(), 1..12), kind in kind(),
    ) {
        let mut facts = vec![declared(kind)];
        for (nth, state) in states.iter().enumerate() {
            let after: Vec<_> = (0..nth).map(|n| id(&format!("c{:04}", n + 1))).collect();
            facts.push(moved(*state, &after));
        }
        let account = Account::of(&told(&facts));
        let stands = account.moves.stands(&ItemId::new("thing"), 1);
        let states: Vec<_> = stands.iter().map(|stand| stand.state).collect();
        prop_assert_eq!(states.as_slice(), &facts_last(&facts));
    }

    /// Two devices apart: both claims are kept, and one look settles it.
    #[test]
    fn two_hands_apart_are_both_kept_until_somebody_looks(
        a in state(), b in state(), kind in kind(), settled in state(),
    ) {
        let mut facts = vec![declared(kind), moved(a, &[]), moved(b, &[])];
        let apart = Account::of(&told(&facts));
        let thing = ItemId::new("thing");
        let stands: Vec<_> = apart.moves.stands(&thing, 1).into_iter().map(|s| s.state).collect();
        prop_assert!(stands.contains(&a) && stands.contains(&b));
        let open = a != kind.home() || b != kind.home();
        prop_assert_eq!(apart.open_item(&thing).is_some(), open);
        prop_assert_eq!(apart.open_item(&thing).is_some_and(|open| open.disputed), a != b);

        facts.push(Fact::Seen {
            moves: vec![a_move("thing", &[1], settled, &[id("c0001"), id("c0002")])],
        });
        let looked = Account::of(&told(&facts));
        prop_assert_eq!(looked.open_item(&thing).is_some(), settled != kind.home());
        prop_assert!(looked.open.iter().all(|open| !open.disputed));
    }

    /// Taking a command back, before or after it arrives, is as if it had never been.
    #[test]
    fn what_is_taken_back_had_not_been(
        facts in facts(24), taken in any::<prop::sample::Index>(), first in any::<bool>(),
    ) {
        prop_assume!(!facts.is_empty());
        let undone = taken.get(&facts).command.clone();
        let facts: Vec<_> = facts
            .into_iter()
            // Who had seen the move that is taken back is another story, told below; and
            // an undo taken back brings something again.
            .filter(|event| match &event.event {
                Event::Fact(Fact::Undo { .. }) => false,
                Event::Fact(fact) => {
                    event.command == undone || commands_seen(fact).all(|seen| *seen != undone)
                }
                Event::Decision(_) => true,
            })
            .collect();
        let never = order(facts.iter().filter(|event| event.command != undone));
        let undo = Recorded {
            command: CommandId::new("undo"),
            nth: 0,
            stamp: Stamp { who: PersonId::new("ana"), at: rules().now },
            event: Event::Fact(Fact::Undo { command: undone, part: None }),
        };
        let taken_back = if first {
            order([&undo].into_iter().chain(&facts))
        } else {
            order(facts.iter().chain([&undo]))
        };
        prop_assert_eq!(read(&taken_back), read(&never));
    }

    /// An undo of an undo of an undo: the move stands if it was taken back an even
    /// number of times.
    #[test]
    fn an_undo_can_be_undone(times in 0..9usize, turned in any::<bool>()) {
        let mut facts = vec![declared(Kind::Cover), moved(State::Off, &[])];
        facts.extend((1..=times).map(|n| undo(&format!("c{n:04}"))));
        let order = told_in(&facts, turned);
        prop_assert_eq!(Account::of(&order).open.len(), usize::from(times % 2 == 0));
    }
}

/// The commands of which the author of a fact had seen something.
fn commands_seen(fact: &Fact) -> impl Iterator<Item = &CommandId> {
    let told: &[CommandId] = match fact {
        Fact::CountCorrected { after, .. }
        | Fact::Renamed { after, .. }
        | Fact::Located { after, .. }
        | Fact::SizeTold { after, .. }
        | Fact::TorqueTold { after, .. }
        | Fact::TradeTold { after, .. }
        | Fact::LineWorded { after, .. }
        | Fact::Consented { after, .. }
        | Fact::HowToTitled { after, .. }
        | Fact::HowToNoted { after, .. }
        | Fact::HowToSequenced { after, .. }
        | Fact::Aimed { after, .. } => after,
        _ => &[],
    };
    moves_seen(fact).map(|id| &id.command).chain(told)
}

/// The moves that the author of a fact had seen.
fn moves_seen(fact: &Fact) -> impl Iterator<Item = &MoveId> {
    let own: &[MoveId] = match fact {
        Fact::LevelSeen { after, .. }
        | Fact::BeltLeftOff { after, .. }
        | Fact::WorkDone { after, .. }
        | Fact::Checked { after, .. }
        | Fact::Proved { after, .. } => after,
        _ => &[],
    };
    let moves = fact.moves().iter();
    moves.flat_map(|change| &change.after).chain(own)
}

fn declared(kind: Kind) -> Fact {
    Fact::Declared {
        item: item("thing", kind, System::Body, Zone::Above, 1),
    }
}

fn moved(state: State, after: &[MoveId]) -> Fact {
    Fact::Moved {
        stage: None,
        moves: vec![a_move("thing", &[1], state, after)],
    }
}

fn undo(command: &str) -> Fact {
    Fact::Undo {
        command: CommandId::new(command),
        part: None,
    }
}

fn id(command: &str) -> MoveId {
    MoveId {
        command: CommandId::new(command),
        nth: 0,
    }
}

fn facts_last(facts: &[Fact]) -> [State; 1] {
    [facts.last().unwrap().moves()[0].left.state]
}

/// An order of these facts, each its own command: c0000, c0001 and so on.
fn told(facts: &[Fact]) -> Order {
    told_in(facts, false)
}

fn told_in(facts: &[Fact], turned: bool) -> Order {
    let mut events: Vec<_> = facts
        .iter()
        .enumerate()
        .map(|(nth, fact)| Recorded {
            command: CommandId::new(format!("c{nth:04}")),
            nth: 0,
            stamp: Stamp {
                who: PersonId::new("ana"),
                at: rules().now,
            },
            event: Event::Fact(fact.clone()),
        })
        .collect();
    if turned {
        events.reverse();
    }
    order(&events)
}

fn stands(order: &Order) -> Vec<State> {
    let account = Account::of(order);
    let stands = account.moves.stands(&ItemId::new("thing"), 1);
    stands.into_iter().map(|stand| stand.state).collect()
}

#[test]
fn a_taken_back_move_still_passes_on_what_its_author_had_seen() {
    let order = told(&[
        declared(Kind::Cover),
        moved(State::Off, &[]),
        moved(State::On, &[id("c0001")]),
        // Seen past by somebody before it was taken back.
        moved(State::Off, &[id("c0002")]),
        undo("c0002"),
    ]);
    assert_eq!(stands(&order), [State::Off]);
    let order = told(&[
        declared(Kind::Cover),
        moved(State::Off, &[]),
        moved(State::On, &[id("c0001")]),
        undo("c0002"),
    ]);
    assert_eq!(stands(&order), [State::Off], "it is off again");
}

#[test]
fn one_move_of_a_stage_is_taken_back_alone() {
    let mut stage = vec![declared(Kind::Cover)];
    stage.push(Fact::Moved {
        stage: None,
        moves: vec![
            a_move("thing", &[1], State::Off, &[]),
            a_move("other", &[1], State::Off, &[]),
        ],
    });
    stage.push(Fact::Undo {
        command: CommandId::new("c0001"),
        part: Some(1),
    });
    let account = Account::of(&told(&stage));
    assert!(account.open_item(&ItemId::new("thing")).is_some());
    assert!(account.open_item(&ItemId::new("other")).is_none());
}

#[test]
fn undos_that_name_each_other_all_stand() {
    let order = told(&[
        declared(Kind::Cover),
        moved(State::Off, &[]),
        undo("c0003"),
        undo("c0002"),
        undo("c0004"),
    ]);
    let undone = order.undone().commands.clone();
    let named: Vec<_> = undone.iter().map(CommandId::as_str).collect();
    assert_eq!(named, ["c0002", "c0003", "c0004"]);
    assert_eq!(stands(&order), [State::Off]);
}

#[test]
fn a_very_long_chain_of_undos_is_followed_to_its_end() {
    let mut facts = vec![declared(Kind::Cover), moved(State::Off, &[])];
    facts.extend((1..=20_000).map(|n| undo(&format!("c{n:04}"))));
    assert_eq!(stands(&told(&facts)), [State::Off]);
    facts.push(undo("c20001"));
    assert_eq!(stands(&told(&facts)), []);
}

#[test]
fn moves_that_claim_to_have_seen_each_other_are_all_kept() {
    let order = told(&[
        declared(Kind::Fasteners),
        moved(State::Out, &[id("c0002")]),
        moved(LOOSE, &[id("c0003")]),
        moved(State::Tight, &[id("c0001")]),
    ]);
    assert_eq!(stands(&order), [State::Tight, State::Out, LOOSE]);
    let order = told(&[declared(Kind::Cover), moved(State::Off, &[id("c0001")])]);
    assert_eq!(stands(&order), [State::Off], "one that names itself");
}

#[test]
fn what_has_not_arrived_yet_hides_nothing() {
    let order = told(&[
        declared(Kind::Cover),
        moved(State::Off, &[]),
        // Its author had seen a move that is still on another phone.
        moved(State::On, &[id("elsewhere")]),
    ]);
    assert_eq!(stands(&order), [State::On, State::Off]);
}

#[test]
fn a_command_with_two_facts_counts_its_moves_through_both() {
    let event = |nth, fact| Recorded {
        command: CommandId::new("stage"),
        nth,
        stamp: Stamp {
            who: PersonId::new("ana"),
            at: rules().now,
        },
        event: Event::Fact(fact),
    };
    let other = |state, after: &[MoveId]| Fact::Moved {
        stage: None,
        moves: vec![a_move("other", &[1], state, after)],
    };
    let second = MoveId {
        command: CommandId::new("stage"),
        nth: 1,
    };
    let events = [
        event(0, moved(State::Off, &[])),
        event(1, other(State::Out, &[])),
        Recorded {
            command: CommandId::new("later"),
            ..event(0, other(State::Cracked, &[second]))
        },
    ];
    let account = Account::of(&order(&events));
    let states = |id: &str| -> Vec<State> {
        let stands = account.moves.stands(&ItemId::new(id), 1);
        stands.into_iter().map(|stand| stand.state).collect()
    };
    assert_eq!(states("thing"), [State::Off]);
    assert_eq!(states("other"), [State::Cracked]);
}
