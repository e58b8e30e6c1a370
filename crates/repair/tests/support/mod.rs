//! One order written from one place: what happens, in the sequence it happens, by
//! people who have seen everything before them unless a test says otherwise.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use jiff::{Timestamp, ToSpan, tz::TimeZone};
use price::{Charge, Entry, Payer};
use record::form::Form;
use record::v1::basics::ReasonKeyForm;
use repair::*;
use std::collections::BTreeSet;

/// An order, the time, and who is at it.
pub struct Job {
    pub order: Order,
    pub rules: Rules,
    taxes: Vec<price::TaxRule>,
    next_invoice: u64,
    next_credit: u64,
    pub terms: price::Terms,
    who: &'static str,
    commands: u32,
}

/// An item with so many pieces.
pub fn item(id: &str, kind: Kind, system: System, zone: Zone, pieces: u16) -> Item {
    Item {
        id: ItemId::new(id),
        kind,
        system,
        zone,
        label: Words([1; 32]),
        size: None,
        pieces: (1..=pieces)
            .map(|position| Piece {
                position,
                length: None,
            })
            .collect(),
        pattern: None,
        spent: false,
        may_miss: None,
        put_in: None,
        holds: None,
        trade: None,
    }
}

/// A move by someone who has seen `after`.
pub fn a_move(id: &str, at: &[u16], state: State, after: &[MoveId]) -> Move {
    Move {
        item: ItemId::new(id),
        at: at.to_vec(),
        after: after.to_vec(),
        left: Stand {
            state,
            piece: PieceIs::Original,
        },
        container: None,
    }
}

pub fn written(text: &str) -> Written {
    Written::new(text).unwrap()
}

pub fn words(seed: u8) -> Words {
    Words([seed; 32])
}

pub const LOOSE: State = State::Loose { passes: 0 };

impl Job {
    /// An order opened on 2 March 2026 at eight in the morning.
    pub fn new() -> Self {
        let mut job = Self {
            order: Order::default(),
            rules: Rules {
                now: "2026-03-02T08:00:00Z".parse::<Timestamp>().unwrap(),
                zone: TimeZone::UTC,
                leeway: price::Leeway::default(),
            },
            taxes: vec![],
            next_invoice: 1,
            next_credit: 1,
            terms: price::Terms::default(),
            who: "ana",
            commands: 0,
        };
        job.ask(Request::Open {
            vehicle: VehicleId::new("drayman"),
            customer: CustomerId::new("customer"),
        })
        .unwrap();
        job
    }

    /// From here on prices bear so many per cent of tax.
    pub fn tax(&mut self, percent: i64) {
        let on = price::TaxOn {
            labour: true,
            parts: true,
            other: true,
        };
        self.taxes = vec![price::TaxRule::on_top("tax", percent.into(), on)];
    }

    /// The shop's next credit note gets this number.
    pub fn credits_from(&mut self, number: u64) -> &mut Self {
        self.next_credit = number;
        self
    }

    /// The shop's next invoice gets this number.
    pub fn numbers_from(&mut self, number: u64) -> &mut Self {
        self.next_invoice = number;
        self
    }

    /// From here on somebody else writes.
    pub fn by(&mut self, who: &'static str) -> &mut Self {
        self.who = who;
        self
    }

    pub fn later(&mut self, hours: i64) {
        self.rules.now = self.rules.now.checked_add(hours.hours()).unwrap();
    }

    pub fn file(&mut self, event: Event) -> CommandId {
        self.commands += 1;
        let command = CommandId::new(format!("c{:04}", self.commands));
        let order = std::mem::take(&mut self.order);
        self.order = evolve(
            order,
            Recorded {
                command: command.clone(),
                nth: 0,
                stamp: Stamp {
                    who: PersonId::new(self.who),
                    at: self.rules.now,
                },
                event,
            },
        );
        command
    }

    pub fn record(&mut self, fact: Fact) -> CommandId {
        let events = record(&self.order, fact);
        assert_eq!(events.len(), 1, "one fact makes one event");
        self.file(events[0].clone())
    }

    pub fn context(&self) -> Context {
        Context {
            rules: self.rules.clone(),
            next_number: 1001,
            next_invoice: self.next_invoice,
            next_credit: self.next_credit,
            currency: "EUR".into(),
            minor_digits: 2,
            taxes: self.taxes.clone(),
            terms: self.terms.clone(),
            may_waive: BTreeSet::from([WaivedBy::Desk, WaivedBy::InCharge, WaivedBy::Foreman]),
        }
    }

    pub fn ask(&mut self, request: Request) -> Result<CommandId, Refusal> {
        let events = decide(&self.order, &self.context(), request)?;
        assert_eq!(events.len(), 1, "one decision makes one event");
        Ok(self.file(events[0].clone()))
    }

    pub fn account(&self) -> std::sync::Arc<Account> {
        Account::of(&self.order)
    }

    pub fn declare(&mut self, item: Item) {
        self.record(Fact::Declared { item });
    }

    /// Declares one thing.
    pub fn one(&mut self, id: &str, kind: Kind, system: System, zone: Zone) {
        self.group(id, 1, kind, system, zone);
    }

    /// Declares a group of pieces.
    pub fn group(&mut self, id: &str, pieces: u16, kind: Kind, system: System, zone: Zone) {
        self.declare(item(id, kind, system, zone, pieces));
    }

    /// Declares a thing that is put into the vehicle for the work.
    pub fn put_in(&mut self, id: &str, what: PutIn, system: System, zone: Zone) {
        self.declare(Item {
            put_in: Some(what),
            ..item(id, Kind::PutIn, system, zone, 1)
        });
    }

    /// What somebody up to date names as seen when moving an item: its heads, and those
    /// of the items that its needs look at.
    pub fn seen(&self, id: &str) -> Vec<MoveId> {
        let account = self.account();
        let mut out = account.moves.frontier(&ItemId::new(id));
        for decided in self.order.decisions() {
            let Decision::Adopted { needs, .. } = &decided.decision else {
                continue;
            };
            for need in needs.iter().filter(|need| need.item.as_str() == id) {
                for other in need.need.items() {
                    out.extend(account.moves.frontier(other));
                }
            }
        }
        out.into_iter().collect()
    }

    /// What somebody up to date has seen of everything.
    pub fn all_seen(&self) -> Vec<MoveId> {
        let account = self.account();
        let items: BTreeSet<_> = account.moves.items().cloned().collect();
        items
            .iter()
            .flat_map(|item| account.moves.frontier(item))
            .collect()
    }

    /// The positions meant: those named, or all that are known.
    fn at(&self, id: &str, at: &[u16]) -> Vec<u16> {
        if !at.is_empty() {
            return at.to_vec();
        }
        let all = self.account().positions(&ItemId::new(id));
        if all.is_empty() {
            vec![1]
        } else {
            all.into_iter().collect()
        }
    }

    /// The move somebody up to date would write; no positions named means all.
    pub fn change(&self, id: &str, at: &[u16], state: State) -> Move {
        a_move(id, &self.at(id, at), state, &self.seen(id))
    }

    pub fn moved(&mut self, id: &str, at: &[u16], state: State) -> CommandId {
        let change = self.change(id, at, state);
        self.record(Fact::Moved {
            stage: None,
            moves: vec![change],
        })
    }

    /// The same with another piece than the one that was there.
    pub fn moved_as(&mut self, id: &str, state: State, piece: PieceIs) -> CommandId {
        let mut change = self.change(id, &[], state);
        change.left.piece = piece;
        self.record(Fact::Moved {
            stage: None,
            moves: vec![change],
        })
    }

    /// Several items in one stage, all pieces of each.
    pub fn stage(&mut self, rows: &[(&str, State)]) -> CommandId {
        let moves = rows
            .iter()
            .map(|(id, state)| self.change(id, &[], *state))
            .collect();
        self.record(Fact::Moved { stage: None, moves })
    }

    /// Out and back again.
    pub fn out_and_back(&mut self, id: &str, away: State, home: State) {
        self.moved(id, &[], away);
        self.moved(id, &[], home);
    }

    pub fn found(&mut self, id: &str, at: &[u16], state: State) -> CommandId {
        let change = a_move(id, at, state, &[]);
        self.record(Fact::Found {
            moves: vec![change],
        })
    }

    pub fn looked(&mut self, id: &str, at: &[u16], state: State) -> CommandId {
        let change = self.change(id, at, state);
        self.record(Fact::Seen {
            moves: vec![change],
        })
    }

    pub fn done(&mut self, work: WorkIs, id: Option<&str>) -> CommandId {
        self.record(Fact::WorkDone {
            work: Work::usual(work, id.map(ItemId::new)),
            after: self.all_seen(),
            words: None,
        })
    }

    pub fn level(&mut self, id: &str, level: LevelAt) -> CommandId {
        self.level_is(id, level, true)
    }

    pub fn level_is(&mut self, id: &str, level: LevelAt, good: bool) -> CommandId {
        self.record(Fact::LevelSeen {
            item: ItemId::new(id),
            level,
            good,
            reading: None,
            temperature: None,
            after: self.seen(id),
        })
    }

    pub fn belt_left_off(&mut self, id: &str) -> CommandId {
        self.record(Fact::BeltLeftOff {
            item: ItemId::new(id),
            words: None,
            after: self.seen(id),
        })
    }

    pub fn checked(&mut self, check: CheckIs, ids: &[&str]) -> CommandId {
        self.record(Fact::Checked {
            check,
            items: ids.iter().map(|id| ItemId::new(*id)).collect(),
            after: self.all_seen(),
            learns: None,
            alone: None,
        })
    }

    pub fn proved(&mut self, id: &str, proof: ProofIs, outcome: Outcome) -> CommandId {
        self.proved_instead(id, proof, outcome, &[])
    }

    pub fn proved_instead(
        &mut self,
        id: &str,
        proof: ProofIs,
        outcome: Outcome,
        replaces: &[&str],
    ) -> CommandId {
        self.record(Fact::Proved {
            id: ProofId::new(id),
            line: None,
            proof,
            outcome,
            words: None,
            readings: vec![],
            calculation: None,
            after: self.all_seen(),
            replaces: replaces.iter().map(|id| ProofId::new(*id)).collect(),
        })
    }

    pub fn road_tested(&mut self) {
        self.proved("road", ProofIs::RoadTest, Outcome::Held);
    }

    pub fn snag(&mut self, id: &str, on: &str, what: SnagIs, moves: Vec<Move>) -> CommandId {
        self.record(Fact::SnagFound {
            snag: SnagId::new(id),
            item: Some(ItemId::new(on)),
            at: vec![],
            what,
            sits: None,
            words: None,
            photos: vec![],
            moves,
            about: None,
            voice: None,
        })
    }

    pub fn snag_ended(&mut self, id: &str, how: Resolved, moves: Vec<Move>) -> CommandId {
        self.record(Fact::SnagResolved {
            snag: SnagId::new(id),
            how,
            words: None,
            calculation: None,
            moves,
        })
    }

    pub fn consented(&mut self, step: ConsentStep, amount: Option<i64>) -> CommandId {
        let after = self
            .order
            .facts()
            .filter(|(_, filed)| matches!(filed.fact, Fact::Consented { .. }))
            .map(|(command, _)| command.clone())
            .collect();
        self.record(Fact::Consented {
            step,
            payer: Payer::Customer,
            lines: vec![],
            agreed: true,
            amount: amount.map(Into::into),
            tax_included: false,
            way: Way::Phone,
            person: None,
            said: None,
            number_called: None,
            signature: None,
            after,
        })
    }

    /// A yes up to a sum with tax, by somebody who had seen no answer before it.
    pub fn agreed_with_tax(&mut self, amount: i64) {
        self.record(Fact::Consented {
            step: ConsentStep::Repair,
            payer: Payer::Customer,
            lines: vec![],
            agreed: true,
            amount: Some(amount.into()),
            tax_included: true,
            way: Way::Phone,
            person: None,
            said: None,
            number_called: None,
            signature: None,
            after: vec![],
        });
    }

    /// A price of one entry.
    pub fn priced(&mut self, net: i64) {
        self.ask(Request::Price {
            entries: vec![Entry {
                line: None,
                charge: Charge::Labour,
                label: None,
                quantity: 1.into(),
                each: net.into(),
                payer: Payer::Customer,
                less: Vec::new(),
            }],
            after: self.price_seen(),
        })
        .unwrap();
    }

    /// What somebody has seen who looks at the price now.
    pub fn price_seen(&self) -> Vec<CommandId> {
        papers::priced_by(&self.order)
            .cloned()
            .into_iter()
            .collect()
    }

    /// What somebody has seen who looks at what a payer is asked now.
    pub fn ask_seen(&self, payer: Payer) -> Vec<CommandId> {
        let answers = papers::standing_answers(&self.order).remove(&payer);
        let answers = answers
            .into_iter()
            .flatten()
            .map(|(command, _)| command.clone());
        answers.chain(self.price_seen()).collect()
    }

    /// Written down by somebody who sees it as it is.
    pub fn written_down(&mut self, payer: Payer) -> Result<CommandId, Refusal> {
        let after = self.ask_seen(payer);
        self.ask(Request::WriteDown { payer, after })
    }

    /// Whatever stands is charged.
    pub fn charged(&mut self) -> Result<CommandId, Refusal> {
        self.ask(Request::Charge { after: vec![] })
    }

    pub fn paid(&mut self, amount: i64, by: PaidBy) {
        self.record(Fact::Paid {
            payer: Payer::Customer,
            amount: amount.into(),
            by,
            deposit: false,
        });
    }

    /// Agreed, priced, charged and paid: papers in order.
    pub fn papers_in_order(&mut self) {
        self.consented(ConsentStep::Repair, Some(100));
        self.priced(100);
        self.charged().unwrap();
        self.paid(100, PaidBy::Card);
    }

    pub fn waive(&mut self, gate: Gate, key: &str) -> Result<CommandId, Refusal> {
        let answer = self.answer(gate);
        let mut reasons = answer.reasons();
        let seen = reasons.find(|reason| spelled(&reason.key) == key);
        let figure = seen.map(|reason| reason.figure.clone()).unwrap_or_default();
        self.ask(Request::Waive {
            gate,
            reason: reason_key(key),
            figure,
            words: words(9),
        })
    }

    pub fn hand_over(&mut self) -> Result<CommandId, Refusal> {
        self.ask(Request::HandOver {
            leaves: Leaves::DrivesAway,
            ending: Ending::Repaired,
            boxes: None,
            signature: None,
            signed_by: None,
        })
    }

    pub fn answer(&self, gate: Gate) -> Answer {
        may(&self.order, gate, &self.rules)
    }

    /// The reasons on the technician's list that shut the gate.
    pub fn shut(&self, gate: Gate) -> Vec<String> {
        keys(&self.answer(gate).fit_to_go)
    }

    pub fn alarms_are(&self, name: &str, expected: &[&str]) {
        assert_eq!(self.alarms(), expected, "{name}");
    }

    pub fn alarms(&self) -> Vec<String> {
        keys(&late_alarms(&self.order, &self.rules))
    }
}

/// The name of a reason as it is spelled where it is stored.
pub fn spelled(key: &ReasonKey) -> String {
    ReasonKeyForm::of(key).0
}

/// The name of a reason that is spelled so.
pub fn reason_key(spelled: &str) -> ReasonKey {
    let form = ReasonKeyForm(spelled.to_owned());
    form.read().expect("short enough for a name")
}

/// The keys of the reasons that shut, sorted.
pub fn keys(reasons: &[Reason]) -> Vec<String> {
    let mut out: Vec<_> = reasons
        .iter()
        .filter(|reason| reason.shuts())
        .map(|reason| spelled(&reason.key))
        .collect();
    out.sort();
    out
}
