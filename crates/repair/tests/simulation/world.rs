//! A shop drawn from a seed: a vehicle, three people each with a phone, and a server
//! that hears their facts doubled, late and in any sequence.

use crate::desk;
use crate::model::{Book, Need};
use crate::papers::Papers;
use crate::told::{self, About};
use jiff::{Timestamp, ToSpan, tz::TimeZone};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use repair::*;

pub const NEED: Need = Need {
    to_tighten: "screws",
    wants_on: "shield",
};

/// The things a vehicle may have, their pieces, and where a piece of them may be.
const THINGS: [(&str, u16, &[State]); 9] = [
    (
        "screws",
        3,
        &[
            State::Tight,
            State::Cracked,
            State::Out,
            State::Stub { holds: true },
        ],
    ),
    ("clips", 5, &[State::On, State::Out]),
    (
        "nuts",
        4,
        &[State::Tight, State::Loose { passes: 1 }, State::Out],
    ),
    ("gasket", 1, &[State::On, State::Off]),
    ("coolant", 1, &[State::AtLevel, State::Low]),
    ("plug", 1, &[State::Plugged, State::Unplugged]),
    ("rag", 1, &[State::Outside, State::Inside]),
    ("shield", 1, &[State::On, State::Off]),
    ("battery", 1, &[State::Tight, State::Out]),
];
/// The shield, as a second phone called it.
const ALSO: &str = "shield too";
/// The shield, as a third one called it.
const GUARD: &str = "guard";
pub const SHIELDS: [&str; 3] = ["shield", ALSO, GUARD];

/// What may turn out to be of the safety class, and wants a second look.
const CHECKED: [&str; 6] = ["nuts", "coolant", "screws", "shield", ALSO, GUARD];

pub struct Device {
    pub who: &'static str,
    /// What it has seen: its own facts and those it fetched.
    seen: Vec<usize>,
    outbox: Vec<usize>,
}

pub struct World {
    chance: ChaCha8Rng,
    pub now: Timestamp,
    things: Vec<(&'static str, u16, &'static [State])>,
    /// Every fact written, anywhere.
    written: Vec<Recorded<Event>>,
    devices: Vec<Device>,
    /// What the server heard, doubles and all, and the order it made of it.
    pub heard: Vec<Recorded<Event>>,
    pub order: Order,
    claims: usize,
    /// What people in this shop speak of most.
    talked_of: About,
}

fn item(id: &str, pieces: u16) -> Item {
    let (kind, system, zone) = match id {
        "screws" => (Kind::Fasteners, System::Body, Zone::Below),
        "clips" => (Kind::Clips, System::Body, Zone::Below),
        "nuts" => (Kind::Fasteners, System::Wheels, Zone::WheelWell),
        "gasket" => (Kind::Seal, System::Cooling, Zone::Above),
        "coolant" => (Kind::Fluid, System::Cooling, Zone::Above),
        "plug" => (Kind::Connector, System::Electrical, Zone::Above),
        "rag" => (Kind::PutIn, System::Engine, Zone::Above),
        "battery" => (Kind::Fasteners, System::Battery, Zone::Above),
        _ => (Kind::Cover, System::Unknown, Zone::Unknown),
    };
    Item {
        id: ItemId::new(id),
        kind,
        system,
        zone,
        label: Words([0; 32]),
        size: None,
        pieces: counted(pieces),
        pattern: None,
        spent: id == "gasket",
        may_miss: (id == "clips").then(|| MayMiss {
            up_to: 2,
            never_at: vec![1],
        }),
        put_in: None,
        holds: None,
        trade: None,
    }
}

fn counted(pieces: u16) -> Vec<Piece> {
    let piece = |position| Piece {
        position,
        length: None,
    };
    (1..=pieces).map(piece).collect()
}

fn torque(pass: &str) -> Pattern {
    Pattern {
        passes: vec![Written::new(pass).expect("short")],
        sequence: vec![],
        source: None,
    }
}

impl World {
    pub fn new(seed: u64) -> Self {
        let mut world = Self {
            chance: ChaCha8Rng::seed_from_u64(seed),
            now: "2026-03-02T08:00:00Z".parse().unwrap(),
            things: vec![],
            written: vec![],
            devices: ["ana", "rui", "eva"]
                .into_iter()
                .map(|who| Device {
                    who,
                    seen: vec![],
                    outbox: vec![],
                })
                .collect(),
            heard: vec![],
            order: Order::default(),
            claims: 0,
            talked_of: About::Count,
        };
        world.talked_of = About::ALL[world.draw(About::ALL.len())];
        world.things = THINGS.into_iter().filter(|_| !world.one_in(3)).collect();
        if world.things.is_empty() {
            world.things.push(THINGS[0]);
        }
        world.open_the_order();
        world
    }

    fn open_the_order(&mut self) {
        let is = |item: &str, states: &[State]| repair::Need::Is {
            item: ItemId::new(item),
            at: vec![],
            states: states.iter().copied().collect(),
        };
        let request = |world: &mut Self, request| {
            world.ask(request).expect("nothing speaks against it yet");
        };
        request(
            self,
            Request::Open {
                vehicle: VehicleId::new("v"),
                customer: CustomerId::new("c"),
            },
        );
        request(
            self,
            Request::Adopt {
                map: MapId::new("map"),
                version: 1,
                needs: vec![StatedNeed {
                    item: ItemId::new(NEED.to_tighten),
                    at: vec![],
                    to: State::Tight,
                    need: is(NEED.wants_on, &[State::On]),
                }],
                work: vec![],
            },
        );
        let first = self.tell(0, desk::agreed(100, vec![]));
        let paid = self.tell(0, desk::paid(100));
        self.hear(first);
        self.hear(paid);
        let priced = desk::priced(self, 100);
        request(self, priced);
        request(self, Request::Charge { after: vec![] });
    }

    pub fn rules(&self) -> Rules {
        Rules {
            now: self.now,
            zone: TimeZone::UTC,
            leeway: price::Leeway::default(),
        }
    }

    /// The model's book of what the server has heard.
    pub fn book(&self) -> Book<'_> {
        Book::of(&self.heard, Some(&NEED), self.now)
    }

    /// The model's book of the desk.
    pub fn papers(&self) -> Papers {
        Papers::of(&self.book(), &self.heard)
    }

    /// One of so many.
    pub fn draw(&mut self, of: usize) -> usize {
        usize::try_from(self.chance.next_u32()).expect("32 bits fit") % of
    }

    pub fn one_in(&mut self, of: usize) -> bool {
        self.draw(of) == 0
    }

    /// Asks the server; what it decides is filed at once.
    pub fn ask(&mut self, request: Request) -> Result<Decision, Refusal> {
        let context = Context {
            rules: self.rules(),
            next_number: 1001,
            next_invoice: 1,
            next_credit: 1,
            currency: "EUR".into(),
            minor_digits: 2,
            taxes: vec![],
            terms: price::Terms::default(),
            may_waive: std::collections::BTreeSet::from([
                WaivedBy::Desk,
                WaivedBy::InCharge,
                WaivedBy::Foreman,
            ]),
        };
        let events = decide(&self.order, &context, request)?;
        let Some(Event::Decision(decision)) = events.first().cloned() else {
            panic!("a decision leaves one event, not {events:?}");
        };
        let event = self.event("desk", events[0].clone());
        self.file(event);
        Ok(decision)
    }

    fn event(&self, who: &str, event: Event) -> Recorded<Event> {
        let count = self.written.len() + self.heard.len();
        Recorded {
            command: CommandId::new(format!("{who}-{count:04}")),
            nth: 0,
            stamp: Stamp {
                who: PersonId::new(who),
                at: self.now,
            },
            event,
        }
    }

    fn file(&mut self, event: Recorded<Event>) {
        self.heard.push(event.clone());
        self.order = evolve(std::mem::take(&mut self.order), event);
    }

    /// A device writes a fact, which waits there to be sent.
    pub fn tell(&mut self, device: usize, fact: Fact) -> usize {
        self.claims += match &fact {
            Fact::Found { moves } | Fact::Seen { moves } | Fact::Moved { moves, .. } => moves.len(),
            Fact::SnagFound { .. } | Fact::SnagResolved { .. } => 1,
            _ => 0,
        };
        let event = self.event(self.devices[device].who, Event::Fact(fact));
        self.written.push(event);
        let index = self.written.len() - 1;
        self.devices[device].seen.push(index);
        self.devices[device].outbox.push(index);
        index
    }

    fn hear(&mut self, index: usize) {
        self.file(self.written[index].clone());
    }

    /// One waiting fact gets through, any of them first; the answer may be lost, and
    /// then it is sent again.
    pub fn send(&mut self, device: usize) {
        let waiting = self.devices[device].outbox.len();
        if waiting == 0 {
            return;
        }
        let which = self.draw(waiting);
        let index = self.devices[device].outbox[which];
        self.hear(index);
        if !self.one_in(4) {
            self.devices[device].outbox.swap_remove(which);
        }
    }

    pub fn send_all(&mut self, device: usize) {
        while !self.devices[device].outbox.is_empty() {
            self.send(device);
        }
    }

    pub fn everything_arrives(&mut self) {
        for device in 0..self.devices.len() {
            self.send_all(device);
        }
    }

    /// A device fetches all that the server has heard.
    pub fn fetch(&mut self, device: usize) {
        let known: Vec<usize> = (0..self.written.len())
            .filter(|index| {
                self.heard
                    .iter()
                    .any(|e| e.command == self.written[*index].command)
            })
            .collect();
        self.devices[device].seen.extend(known);
    }

    fn view(&self, device: usize) -> Book<'_> {
        let seen = self.devices[device]
            .seen
            .iter()
            .map(|index| &self.written[*index]);
        Book::of(seen, Some(&NEED), self.now)
    }

    /// What a device names as seen of some things: all of it, or only what stands last.
    fn seen(&mut self, device: usize, things: &[&str]) -> Vec<MoveId> {
        let only_last = self.one_in(2);
        self.view(device).known(things, only_last)
    }

    fn change(&mut self, device: usize, thing: &str, at: Vec<u16>, state: State) -> Move {
        let wanted = if thing == NEED.to_tighten {
            vec![thing, NEED.wants_on, ALSO, GUARD]
        } else {
            vec![thing, "shield"]
        };
        let looks_at = if thing == NEED.to_tighten || [ALSO, GUARD].contains(&thing) {
            wanted.as_slice()
        } else {
            &wanted[..1]
        };
        let piece = match self.draw(4) {
            0 => PieceIs::New,
            1 if thing == "gasket" => PieceIs::Substitute,
            _ => PieceIs::Original,
        };
        Move {
            item: ItemId::new(thing),
            at,
            after: self.seen(device, looks_at),
            left: Stand { state, piece },
            container: None,
        }
    }

    fn declare_first(&mut self, device: usize, thing: &str, pieces: u16) {
        if !self.view(device).is_declared(thing) && !self.one_in(8) {
            let by = u8::try_from(device).expect("three devices");
            let size = self.one_in(4).then(|| self.size());
            let pattern = self.one_in(8).then(|| self.torque());
            let item = Item {
                label: Words([by; 32]),
                size,
                pattern,
                ..item(thing, pieces)
            };
            self.tell(device, Fact::Declared { item });
        }
    }

    fn size(&mut self) -> Token {
        let size = ["M6x16 8.8", "M6x20 8.8"][self.draw(2)];
        Token::new(size).expect("short")
    }

    fn torque(&mut self) -> Pattern {
        torque(["9 Nm", "12 Nm"][self.draw(2)])
    }

    /// Something is told of a thing, by somebody who knows what their phone knows: nothing of
    /// it, all that was told, or only what stands last.
    fn told(&mut self, device: usize, thing: &str) -> Fact {
        let about = match self.one_in(3) {
            true => About::ALL[self.draw(About::ALL.len())],
            false => self.talked_of,
        };
        let thing = match (about, thing) {
            (About::Place, _) => [SHIELDS[device], "screws"][self.draw(2)],
            (About::Count, _) => ["clips", "nuts"][self.draw(2)],
            (About::Torque, _) => ["screws", "nuts"][self.draw(2)],
            (About::Size, _) => ["screws", "clips"][self.draw(2)],
            (About::Name, thing) => thing,
        };
        let named = THINGS.iter().find(|(name, ..)| *name == thing);
        let pieces = named.map_or(1, |(_, pieces, _)| *pieces);
        self.declare_first(device, thing, pieces);
        let after = match self.draw(4) {
            0 => vec![],
            1 | 2 => self.view(device).tellings_of(thing, about, true),
            _ => self.view(device).tellings_of(thing, about, false),
        };
        let item = ItemId::new(thing);
        match about {
            About::Count => Fact::CountCorrected {
                pieces: counted([3, 4, 5][self.draw(3)]),
                item,
                after,
            },
            About::Name => Fact::Renamed {
                label: Words([[11, 12][self.draw(2)]; 32]),
                item,
                after,
            },
            About::Place => {
                let systems = [
                    System::Exhaust,
                    System::Body,
                    System::Wheels,
                    System::Unknown,
                ];
                Fact::Located {
                    system: systems[self.draw(4)],
                    zone: [Zone::Below, Zone::WheelWell][self.draw(2)],
                    item,
                    after,
                }
            }
            About::Size => Fact::SizeTold {
                size: self.size(),
                item,
                after,
            },
            About::Torque => Fact::TorqueTold {
                pattern: self.torque(),
                item,
                after,
            },
        }
    }

    fn same_as(&mut self) -> Fact {
        Fact::SameAs {
            item: ItemId::new(SHIELDS[self.draw(3)]),
            also: ItemId::new(SHIELDS[self.draw(3)]),
        }
    }

    /// Somebody tells something, thinks again, and now and then takes a word of it back.
    fn told_and_told_better(&mut self, device: usize, thing: &str) -> Fact {
        while !self.one_in(3) {
            let said = match self.one_in(6) {
                true => self.same_as(),
                false => self.told(device, thing),
            };
            self.tell(device, said);
        }
        match self.one_in(3) {
            true => self.slip(device),
            false => self.told(device, thing),
        }
    }

    /// Somebody careful settles where a thing belongs, and which torque holds.
    fn settle_what_is_told(&mut self, device: usize) {
        for thing in ["shield", ALSO, GUARD, "screws", "nuts"] {
            let view = self.view(device);
            let Some(known) = view.known_as(thing).cloned() else {
                continue;
            };
            let seen = |about| view.tellings_of(thing, about, false);
            let (places, torques) = (seen(About::Place), seen(About::Torque));
            let lost = known.may_be(System::Unknown) || known.places.len() > 1;
            let item = ItemId::new(thing);
            if lost && thing != "nuts" {
                let (system, zone) = (System::Exhaust, Zone::Below);
                self.tell(
                    device,
                    Fact::Located {
                        item: item.clone(),
                        system,
                        zone,
                        after: places,
                    },
                );
            }
            if known.torques.len() > 1 && !self.one_in(24) {
                let pattern = torque("9 Nm");
                self.tell(
                    device,
                    Fact::TorqueTold {
                        item,
                        pattern,
                        after: torques,
                    },
                );
            }
        }
    }

    /// Somebody does something, knowing what their phone knows.
    pub fn act(&mut self, device: usize) {
        if self.claims > 90 {
            return;
        }
        let which = self.draw(self.things.len());
        let (thing, pieces, states) = self.things[which];
        self.declare_first(device, thing, pieces);
        let mut thing = thing;
        if thing == "shield" && device > 0 && self.one_in(2) {
            thing = SHIELDS[device];
            self.declare_first(device, thing, pieces);
        }
        let state = states[self.draw(states.len())];
        let all: Vec<u16> = (1..=pieces).collect();
        let mut at: Vec<u16> = all.iter().copied().filter(|_| self.one_in(2)).collect();
        if at.is_empty() {
            at = all;
        }
        let kind = self.draw(26);
        let fact = match kind {
            0..=9 => Fact::Moved {
                stage: None,
                moves: self.stage(device, thing, at, state),
            },
            10 => {
                let change = self.change(device, thing, at, state);
                let walk_round = !self.one_in(3);
                let after = if walk_round { vec![] } else { change.after };
                Fact::Found {
                    moves: vec![Move { after, ..change }],
                }
            }
            11 => Fact::Seen {
                moves: vec![self.change(device, thing, at, state)],
            },
            12 | 13 => self.slip(device),
            14 => Fact::Declined {
                entries: vec![],
                snags: vec![],
                items: vec![ItemId::new(thing)],
                at: if self.one_in(2) { at } else { vec![] },
                words: Words([0; 32]),
                signature: (!self.one_in(3)).then(|| File {
                    words: Words([1; 32]),
                    media: Token::new("image/png").unwrap(),
                }),
            },
            20..=25 => self.told_and_told_better(device, thing),
            _ => self.beside(device),
        };
        self.tell(device, fact);
    }

    /// One thing moves; now and then another goes with it in the same stage.
    fn stage(&mut self, device: usize, thing: &str, at: Vec<u16>, state: State) -> Vec<Move> {
        let mut moves = vec![self.change(device, thing, at, state)];
        if self.one_in(4) {
            let which = self.draw(self.things.len());
            let (other, pieces, states) = self.things[which];
            if other != thing && ![ALSO, GUARD].contains(&thing) {
                self.declare_first(device, other, pieces);
                let state = states[self.draw(states.len())];
                moves.push(self.change(device, other, (1..=pieces).collect(), state));
            }
        }
        moves
    }

    /// Something is taken back, whole or one move of it, perhaps itself a taking-back.
    fn slip(&mut self, device: usize) -> Fact {
        let seen = self.devices[device].seen.clone();
        if seen.is_empty() {
            return Fact::Walked { zone: Zone::Above };
        }
        // A telling as likely as anything else.
        let told = seen.iter().copied().filter(|index| {
            let event = &self.written[*index].event;
            matches!(event, Event::Fact(fact) if told::telling(fact).is_some())
        });
        let told: Vec<usize> = told.collect();
        let among = match !told.is_empty() && self.one_in(2) {
            true => told,
            false => seen,
        };
        let index = among[self.draw(among.len())];
        Fact::Undo {
            command: self.written[index].command.clone(),
            part: self.one_in(3).then(|| u16::from(self.one_in(2))),
        }
    }

    /// Fluids, snags, parts, checks, proofs, names.
    fn beside(&mut self, device: usize) -> Fact {
        let coolant = || ItemId::new("coolant");
        let litres = |tenths: usize| Written::new(&format!("{}.{} L", tenths / 10, tenths % 10));
        match self.draw(15) {
            12..=14 => desk::told(self, device),
            0 => Fact::Drained {
                item: coolant(),
                amount: litres(self.draw(30)).unwrap(),
                fate: Fate::Kept,
                temperature: None,
            },
            1 => Fact::Poured {
                item: coolant(),
                amount: litres(self.draw(30)).unwrap(),
                what: None,
                temperature: None,
            },
            2 => {
                let stub = State::Stub { holds: true };
                Fact::SnagFound {
                    snag: SnagId::new(format!("snag {}", self.draw(3))),
                    item: Some(ItemId::new("screws")),
                    at: vec![1],
                    what: SnagIs::Stuck,
                    sits: None,
                    words: None,
                    photos: vec![],
                    moves: vec![self.change(device, "screws", vec![1], stub)],
                    about: None,
                    voice: None,
                }
            }
            3 => self.snag_ends(device),
            4 => self.work(device),
            5 => self.check(device, &CHECKED),
            6 => self.proof(device, &[]),
            7 => Fact::PartNeeded {
                part: PartId::new("pad"),
                line: None,
                item: None,
                label: Words([0; 32]),
                number: None,
                quantity: 1.into(),
                cost: None,
                price: None,
                core: None,
                has_old: true,
            },
            8 => self.part_goes(),
            9 => self.same_as(),
            _ => Fact::Located {
                item: ItemId::new("shield"),
                system: System::Exhaust,
                zone: Zone::Below,
                after: vec![],
            },
        }
    }

    fn snag_ends(&mut self, device: usize) -> Fact {
        Fact::SnagResolved {
            snag: SnagId::new(format!("snag {}", self.draw(3))),
            how: Resolved::AsBefore,
            words: None,
            calculation: None,
            moves: vec![self.change(device, "screws", vec![1], State::Tight)],
        }
    }

    fn part_goes(&mut self) -> Fact {
        let steps = [PartStep::Received, PartStep::Fitted, PartStep::Stocked];
        match self.draw(4) {
            3 => Fact::OldPart {
                part: Some(PartId::new("pad")),
                item: None,
                fate: OldPartFate::Scrap,
            },
            nth => Fact::PartStepped {
                part: PartId::new("pad"),
                quantity: 1.into(),
                step: steps[nth],
                due: None,
                words: None,
            },
        }
    }

    fn work(&mut self, device: usize) -> Fact {
        let (work, thing) = [
            (WorkIs::Bleed, Some("coolant")),
            (WorkIs::LookForLeaks, None),
            (WorkIs::ClockAndWindows, None),
            (WorkIs::TorqueAgain, Some("screws")),
            (WorkIs::LevelWarm, Some("coolant")),
            (WorkIs::LevelCold, Some("coolant")),
        ][self.draw(6)];
        let good = !self.one_in(5);
        self.work_done(device, work, thing, good)
    }

    fn work_done(&mut self, device: usize, work: WorkIs, thing: Option<&str>, good: bool) -> Fact {
        let after = self.seen(device, &["coolant", "battery", "screws"]);
        let level = match work {
            WorkIs::LevelWarm => Some(LevelAt::Warm),
            WorkIs::LevelCold => Some(LevelAt::Cold),
            _ => None,
        };
        if let Some(level) = level {
            return Fact::LevelSeen {
                item: ItemId::new("coolant"),
                level,
                good,
                reading: None,
                temperature: None,
                after,
            };
        }
        Fact::WorkDone {
            work: Work::usual(work, thing.map(ItemId::new)),
            after,
            words: None,
        }
    }

    fn check(&mut self, device: usize, things: &[&str]) -> Fact {
        Fact::Checked {
            check: if self.one_in(3) {
                CheckIs::WalkedBack
            } else {
                CheckIs::SecondPerson
            },
            items: things.iter().map(|thing| ItemId::new(*thing)).collect(),
            after: self.seen(device, things),
            learns: None,
            alone: None,
        }
    }

    fn proof(&mut self, device: usize, replaces: &[ProofId]) -> Fact {
        let proof = [ProofIs::RoadTest, ProofIs::LeakTest][self.draw(2)];
        let outcome = match self.draw(6) {
            0 if replaces.is_empty() => Outcome::Failed,
            1 => Outcome::NotProvoked,
            _ => Outcome::Held,
        };
        self.proved(device, proof, outcome, replaces)
    }

    fn proved(
        &mut self,
        device: usize,
        proof: ProofIs,
        outcome: Outcome,
        replaces: &[ProofId],
    ) -> Fact {
        Fact::Proved {
            id: ProofId::new(format!("proof {}", self.written.len())),
            line: None,
            proof,
            outcome,
            words: None,
            readings: vec![],
            calculation: None,
            after: self.seen(device, &["nuts", "gasket", "shield", ALSO, GUARD, "screws"]),
            replaces: replaces.to_vec(),
        }
    }

    pub fn time_passes(&mut self) {
        let hours = i64::try_from(self.draw(20)).expect("a few hours");
        self.now = self.now.checked_add(hours.hours()).unwrap();
    }

    /// Somebody careful brings home what their phone knows to be open, and does what is
    /// left to do; now and then they forget one thing.
    pub fn close(&mut self, device: usize) {
        self.fetch(device);
        self.settle_what_is_told(device);
        for (thing, pieces) in self.view(device).open() {
            let Some((name, count, states)) = THINGS.into_iter().find(|(name, _, _)| {
                *name == thing || *name == "shield" && SHIELDS.contains(&thing.as_str())
            }) else {
                continue;
            };
            self.declare_first(device, name, count);
            if self.one_in(24) {
                continue;
            }
            let at = pieces.keys().copied().collect();
            let mut change = self.change(device, &thing, at, states[0]);
            if name == "gasket" {
                change.left.piece = PieceIs::New;
            }
            self.tell(
                device,
                Fact::Moved {
                    stage: None,
                    moves: vec![change],
                },
            );
        }
        self.finish(device);
        self.send_all(device);
        desk::settle(self, device);
    }

    fn finish(&mut self, device: usize) {
        let snags: Vec<SnagId> = self.seen_facts(device, |fact| match fact {
            Fact::SnagFound { snag, .. } => Some(snag.clone()),
            _ => None,
        });
        for snag in snags {
            self.tell(
                device,
                Fact::SnagResolved {
                    snag,
                    how: Resolved::AsBefore,
                    words: None,
                    calculation: None,
                    moves: vec![],
                },
            );
        }
        for (work, thing) in [
            (WorkIs::Bleed, Some("coolant")),
            (WorkIs::LevelWarm, Some("coolant")),
            (WorkIs::LevelCold, Some("coolant")),
            (WorkIs::LookForLeaks, None),
            (WorkIs::ClockAndWindows, None),
            (WorkIs::TorqueAgain, Some("screws")),
        ] {
            if !self.one_in(40) {
                let fact = self.work_done(device, work, thing, true);
                self.tell(device, fact);
            }
        }
        let owed: Vec<WorkId> = self.seen_facts(device, |fact| match fact {
            Fact::WorkDue { id, .. } => Some(id.clone()),
            _ => None,
        });
        for own in owed {
            self.tell(device, desk::done(&own));
        }
        let failed: Vec<ProofId> = self.seen_facts(device, |fact| match fact {
            Fact::Proved { id, .. } => Some(id.clone()),
            _ => None,
        });
        for proof in [ProofIs::RoadTest, ProofIs::LeakTest] {
            let fact = self.proved(device, proof, Outcome::Held, &failed);
            self.tell(device, fact);
        }
        let after = self.seen(device, &CHECKED);
        self.tell(
            device,
            Fact::Checked {
                check: CheckIs::WalkedBack,
                items: CHECKED.into_iter().map(ItemId::new).collect(),
                after,
                learns: None,
                alone: None,
            },
        );
        let parts = self.seen_facts(device, |fact| match fact {
            Fact::PartNeeded { part, .. } => Some(part.clone()),
            _ => None,
        });
        for part in parts {
            self.tell(
                device,
                Fact::PartStepped {
                    part: part.clone(),
                    quantity: 1.into(),
                    step: PartStep::Stocked,
                    due: None,
                    words: None,
                },
            );
            self.tell(
                device,
                Fact::OldPart {
                    part: Some(part),
                    item: None,
                    fate: OldPartFate::Scrap,
                },
            );
        }
    }

    /// The commands of such facts that a device has seen.
    pub fn seen_commands(&self, device: usize, such: impl Fn(&Fact) -> bool) -> Vec<CommandId> {
        self.devices[device]
            .seen
            .iter()
            .map(|index| &self.written[*index])
            .filter(|event| matches!(&event.event, Event::Fact(fact) if such(fact)))
            .map(|event| event.command.clone())
            .collect()
    }

    fn seen_facts<T>(&self, device: usize, pick: impl Fn(&Fact) -> Option<T>) -> Vec<T> {
        self.devices[device]
            .seen
            .iter()
            .filter_map(|index| match &self.written[*index].event {
                Event::Fact(fact) => pick(fact),
                Event::Decision(_) => None,
            })
            .collect()
    }
}
