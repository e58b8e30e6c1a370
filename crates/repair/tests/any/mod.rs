//! Any event at all, from small pools of names so that events meet.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use jiff::{Timestamp, civil::Date};
use price::{Charge, Entry, Payer, TaxOn, TaxRule, Totals};
use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use repair::*;
use rust_decimal::Decimal;

const ITEMS: [&str; 4] = ["bolts", "cover", "coolant", "plug"];

pub fn item_id() -> impl Strategy<Value = ItemId> {
    select(&ITEMS[..]).prop_map(ItemId::new)
}

fn command() -> impl Strategy<Value = CommandId> {
    (0..12u8).prop_map(|n| CommandId::new(format!("c{n}")))
}

fn person() -> impl Strategy<Value = PersonId> {
    select(&["ana", "rui"][..]).prop_map(PersonId::new)
}

fn name() -> impl Strategy<Value = String> {
    select(&["1", "2", "3"][..]).prop_map(String::from)
}

fn words() -> impl Strategy<Value = Words> {
    (0..4u8).prop_map(|seed| Words([seed; 32]))
}

fn written() -> impl Strategy<Value = Written> {
    let made = (
        any::<i64>(),
        select(&["L", "mL", "qt", "Nm", "", "·", "-"][..]),
    )
        .prop_map(|(number, unit)| format!("{number} {unit}"));
    let odd = "[0-9a-zA-Z .,/#'+%°()-]{1,12}";
    prop_oneof![made, odd].prop_filter_map("a value that can be written", |text| {
        Written::new(&text).ok()
    })
}

fn token() -> impl Strategy<Value = Token> {
    "[a-z]{1,4}".prop_filter_map("a code", |text| Token::new(&text).ok())
}

fn file() -> impl Strategy<Value = File> {
    (words(), token()).prop_map(|(words, media)| File { words, media })
}

fn decimal() -> impl Strategy<Value = Decimal> {
    prop_oneof![
        (-500i64..5000, 0u32..3).prop_map(|(number, scale)| Decimal::new(number, scale)),
        Just(Decimal::MAX),
        Just(Decimal::MIN),
    ]
}

/// Times at a working week, and at the two ends of time.
pub fn time() -> impl Strategy<Value = Timestamp> {
    prop_oneof![
        8 => (0i64..500_000).prop_map(|seconds| {
            Timestamp::from_second(1_772_438_400 + seconds).unwrap()
        }),
        1 => Just(Timestamp::MIN),
        1 => Just(Timestamp::MAX),
    ]
}

fn date() -> impl Strategy<Value = Date> {
    select(vec![Date::MIN, Date::MAX, Date::constant(2026, 3, 2)])
}

pub fn kind() -> impl Strategy<Value = Kind> {
    select(&Kind::ALL[..])
}

pub fn state() -> impl Strategy<Value = State> {
    let all: Vec<State> = Kind::ALL
        .into_iter()
        .flat_map(|kind| kind.states().to_vec())
        .chain([State::Loose { passes: 2 }, State::Stub { holds: true }])
        .collect();
    select(all)
}

pub fn system() -> impl Strategy<Value = System> {
    use System::*;
    select(vec![
        Brakes,
        Steering,
        Wheels,
        Suspension,
        Fuel,
        Restraints,
        DriveBelt,
        HighVoltage,
        Cooling,
        Oil,
        Engine,
        Transmission,
        Intake,
        Exhaust,
        Battery,
        Electrical,
        Climate,
        Body,
        Unknown,
    ])
}

fn zone() -> impl Strategy<Value = Zone> {
    use Zone::*;
    select(vec![Above, Below, WheelWell, Cabin, Rear, Outside, Unknown])
}

fn gate() -> impl Strategy<Value = Gate> {
    select(&Gate::ALL[..])
}

fn payer() -> impl Strategy<Value = Payer> {
    select(vec![Payer::Customer, Payer::Warranty, Payer::Goodwill])
}

fn position() -> impl Strategy<Value = u16> {
    prop_oneof![9 => 0..5u16, 1 => Just(u16::MAX)]
}

fn positions() -> impl Strategy<Value = Vec<u16>> {
    vec(position(), 0..4)
}

fn pieces() -> impl Strategy<Value = Vec<Piece>> {
    vec((position(), option::of(written())), 0..5).prop_map(|pieces| {
        let piece = |(position, length)| Piece { position, length };
        pieces.into_iter().map(piece).collect()
    })
}

fn seen() -> impl Strategy<Value = Vec<MoveId>> {
    vec((command(), 0..3u16), 0..4).prop_map(|seen| {
        let id = |(command, nth)| MoveId { command, nth };
        seen.into_iter().map(id).collect()
    })
}

fn told() -> impl Strategy<Value = Vec<CommandId>> {
    vec(command(), 0..3)
}

pub fn any_move() -> impl Strategy<Value = Move> {
    let piece = select(vec![PieceIs::Original, PieceIs::New, PieceIs::Substitute]);
    let parts = (
        item_id(),
        positions(),
        seen(),
        state(),
        piece,
        option::of(token()),
    );
    parts.prop_map(|(item, at, after, state, piece, container)| Move {
        item,
        at,
        after,
        left: Stand { state, piece },
        container,
    })
}

fn moves() -> impl Strategy<Value = Vec<Move>> {
    vec(any_move(), 0..3)
}

pub fn any_item() -> impl Strategy<Value = Item> {
    use PutIn::*;
    let put_in = select(vec![
        Clamp, Plug, Rag, Lamp, Tool, Pin, Cord, Chips, Tang, Other,
    ]);
    let may_miss = (0..4u16, positions());
    let parts = (item_id(), kind(), system(), zone(), pieces());
    let more = (
        any::<bool>(),
        option::of(may_miss),
        option::of(put_in),
        option::of(written()),
        option::of(trade()),
        (words(), option::of(size()), option::of(any_pattern())),
    );
    (parts, more).prop_map(
        |(
            (id, kind, system, zone, pieces),
            (spent, may_miss, put_in, holds, trade, (label, size, pattern)),
        )| Item {
            id,
            kind,
            system,
            zone,
            label,
            size,
            pieces,
            pattern,
            spent,
            may_miss: may_miss.map(|(up_to, never_at)| MayMiss { up_to, never_at }),
            put_in,
            holds,
            trade,
        },
    )
}

fn work_is() -> impl Strategy<Value = WorkIs> {
    use WorkIs::*;
    select(vec![
        Bleed,
        LevelWarm,
        LevelCold,
        LookForLeaks,
        TorqueAgain,
        TorqueAfterDistance,
        PumpPedal,
        Relearn,
        Alignment,
        ClockAndWindows,
        CleanFace,
        Other,
    ])
}

fn work() -> impl Strategy<Value = Work> {
    let parts = (
        work_is(),
        option::of(item_id()),
        option::of(name().prop_map(WorkId::new)),
        option::of(item_id()),
        option::of(sort()),
    );
    parts.prop_map(|(work, item, own, named, sort)| Work {
        work,
        item,
        own,
        named,
        sort,
    })
}

fn trade() -> impl Strategy<Value = Trade> {
    let shared = select(vec![SharedIs::Order, SharedIs::Wheel, SharedIs::Item]);
    let owed = (sort(), vec(gate(), 0..2), shared).prop_map(|(sort, before, shared)| TradeWork {
        sort,
        before,
        shared,
        after: None,
    });
    let sides = select(vec!["front-left", "rear", "all"]);
    let parts = (
        select(vec![SureIs::Sure, SureIs::Likely, SureIs::Unknown]),
        system(),
        option::of(sides.prop_map(|side| Token::new(side).expect("a code"))),
        any::<bool>(),
        vec(gate(), 0..3),
        vec(owed, 0..3),
    );
    parts.prop_map(|(sure, system, side, safety, shuts, owes)| Trade {
        table: 1,
        additions: 0,
        sort: Some(Token::new("wheel-nuts").expect("a code")),
        sure,
        system,
        side,
        safety,
        shuts,
        owes,
        cautions: vec![],
    })
}

fn sort() -> impl Strategy<Value = Token> {
    let codes = select(vec!["bleed-brakes", "alignment", "relearn"]);
    codes.prop_map(|code| Token::new(code).unwrap())
}

fn until() -> impl Strategy<Value = Until> {
    let later = (option::of(date()), option::of(written()));
    prop_oneof![
        gate().prop_map(Until::Before),
        later.prop_map(|(date, distance)| Until::Later { date, distance }),
    ]
}

fn aimed() -> impl Strategy<Value = Fact> {
    let aim = select(vec![AimIs::Reach, AimIs::Home, AimIs::Roll]);
    let steps = || {
        vec(
            (item_id(), state()).prop_map(|(item, to)| Step { item, to }),
            0..2,
        )
    };
    (aim, vec(item_id(), 0..3), steps(), steps(), told()).prop_map(
        |(aim, targets, without, also, after)| Fact::Aimed {
            aim,
            targets,
            without,
            also,
            places_taken: Vec::new(),
            variants: Vec::new(),
            after,
        },
    )
}

fn any_pattern() -> impl Strategy<Value = Pattern> {
    (0..4u16).prop_map(|passes| Pattern {
        passes: (1..=passes)
            .map(|pass| Written::new(&format!("{} Nm", pass * 30)).expect("short"))
            .collect(),
        sequence: vec![],
        source: None,
    })
}

fn size() -> impl Strategy<Value = Token> {
    let sizes = select(vec!["M8x30 8.8", "M8x35 8.8"]);
    sizes.prop_map(|size| Token::new(size).expect("a code"))
}

/// What is said of items: declared, named, counted, placed.
fn of_items() -> BoxedStrategy<Fact> {
    prop_oneof![
        4 => any_item().prop_map(|item| Fact::Declared { item }),
        1 => (item_id(), item_id()).prop_map(|(item, also)| Fact::SameAs { item, also }),
        1 => (item_id(), pieces(), told())
            .prop_map(|(item, pieces, after)| Fact::CountCorrected { item, pieces, after }),
        1 => (item_id(), words(), told())
            .prop_map(|(item, label, after)| Fact::Renamed { item, label, after }),
        1 => (item_id(), system(), zone(), told()).prop_map(|(item, system, zone, after)| {
            Fact::Located { item, system, zone, after }
        }),
        1 => (item_id(), size(), told())
            .prop_map(|(item, size, after)| Fact::SizeTold { item, size, after }),
        1 => (item_id(), trade(), told())
            .prop_map(|(item, trade, after)| Fact::TradeTold { item, trade, after }),
        1 => (item_id(), any_pattern(), told())
            .prop_map(|(item, pattern, after)| Fact::TorqueTold { item, pattern, after }),
        1 => (name().prop_map(NoteId::new), zone(), option::of(words()), vec(file(), 0..2), option::of(file()))
            .prop_map(|(id, zone, words, photos, voice)| {
                Fact::Observed { id, zone, what: Noted::Leak, words, photos, voice }
            }),
        1 => zone().prop_map(|zone| Fact::Walked { zone }),
        1 => (vec(item_id(), 0..3), positions(), words(), option::of(file())).prop_map(
            |(items, at, words, signature)| Fact::Declined {
                items, at, words, signature, entries: vec![words], snags: vec![],
            }
        ),
        1 => (file(), option::of(item_id())).prop_map(|(file, item)| {
            Fact::Attached { file, item, snag: None, words: None }
        }),
    ]
    .boxed()
}

/// What moves carry.
fn of_moves() -> BoxedStrategy<Fact> {
    let snag = || name().prop_map(SnagId::new);
    let snag_is = select(vec![SnagIs::Snapped, SnagIs::Worn, SnagIs::Missing]);
    let sits = option::of(select(vec![Sits::Proud, Sits::Flush, Sits::Below]));
    prop_oneof![
        2 => moves().prop_map(|moves| Fact::Found { moves }),
        5 => (option::of(name().prop_map(StageId::new)), moves())
            .prop_map(|(stage, moves)| Fact::Moved { stage, moves }),
        2 => moves().prop_map(|moves| Fact::Seen { moves }),
        1 => (snag(), option::of(item_id()), positions(), snag_is, sits, moves()).prop_map(
            |(snag, item, at, what, sits, moves)| Fact::SnagFound {
                snag, item, at, what, sits, words: None, photos: vec![], moves,
                about: None, voice: None,
            }
        ),
        1 => (snag(), moves()).prop_map(|(snag, moves)| Fact::SnagResolved {
            snag, how: Resolved::WireInsert, words: None, calculation: None, moves,
        }),
        3 => (command(), option::of(0..3u16))
            .prop_map(|(command, part)| Fact::Undo { command, part }),
    ]
    .boxed()
}

/// Fluids, work, checks, proofs.
fn of_work() -> BoxedStrategy<Fact> {
    use ProofIs::*;
    let proof_is = select(vec![
        RoadTest,
        LeakTest,
        BrakeTest,
        FuelLeakLook,
        RestraintLamp,
        CoolantMix,
        Other,
    ]);
    let outcome = select(vec![Outcome::Held, Outcome::Failed, Outcome::NotProvoked]);
    let proof = || name().prop_map(ProofId::new);
    let fate = select(vec![
        Fate::Kept,
        Fate::Recycled,
        Fate::Disposed,
        Fate::Spilled,
    ]);
    let level = select(vec![LevelAt::Warm, LevelAt::Cold]);
    let check = select(vec![CheckIs::SecondPerson, CheckIs::WalkedBack]);
    let clock = select(vec![
        Clock::Opened,
        Clock::Paused,
        Clock::Resumed,
        Clock::Left,
    ]);
    prop_oneof![
        (item_id(), written(), fate).prop_map(|(item, amount, fate)| Fact::Drained {
            item,
            amount,
            fate,
            temperature: None,
        }),
        (item_id(), written()).prop_map(|(item, amount)| Fact::Poured {
            item,
            amount,
            what: None,
            temperature: None,
        }),
        (
            name().prop_map(NoteId::new),
            option::of(item_id()),
            written(),
            seen()
        )
            .prop_map(|(id, item, value, after)| Fact::ReadOff {
                id,
                item,
                what: Token::new("gauge").unwrap(),
                value,
                temperature: None,
                after,
            }),
        (item_id(), level, any::<bool>(), seen()).prop_map(|(item, level, good, after)| {
            Fact::LevelSeen {
                item,
                level,
                good,
                reading: None,
                temperature: None,
                after,
            }
        }),
        (item_id(), seen()).prop_map(|(item, after)| Fact::BeltLeftOff {
            item,
            words: None,
            after,
        }),
        (work(), seen()).prop_map(|(work, after)| Fact::WorkDone {
            work,
            after,
            words: None
        }),
        (
            name().prop_map(WorkId::new),
            option::of(item_id()),
            words(),
            until()
        )
            .prop_map(|(id, item, words, until)| Fact::WorkDue {
                id,
                item,
                words,
                until
            }),
        (name().prop_map(StageId::new), clock, option::of(decimal())).prop_map(
            |(stage, clock, book_minutes)| Fact::Timed {
                stage,
                clock,
                book_minutes,
                words: None,
                voice: None,
            }
        ),
        (check, vec(item_id(), 0..3), seen()).prop_map(|(check, items, after)| Fact::Checked {
            check,
            items,
            after,
            learns: None,
            alone: None,
        }),
        (proof(), proof_is, outcome, seen(), vec(proof(), 0..2)).prop_map(
            |(id, proof, outcome, after, replaces)| Fact::Proved {
                id,
                line: None,
                proof,
                outcome,
                words: None,
                readings: vec![],
                calculation: None,
                after,
                replaces,
            }
        ),
        (name().prop_map(NoteId::new), token()).prop_map(|(id, calculator)| Fact::Calculated {
            id,
            item: None,
            snag: None,
            calculator,
            version: 1,
            inputs: String::new(),
            outputs: String::new(),
            working: String::new(),
        }),
        (name().prop_map(DifferenceId::new), positions()).prop_map(|(id, at)| {
            Fact::DifferenceNoted {
                id,
                item: None,
                at,
                what: DifferenceIs::Insert,
                size: None,
                torque: None,
                words: None,
            }
        }),
    ]
    .boxed()
}

/// Lines, consent, money, parts, keys.
fn of_papers() -> BoxedStrategy<Fact> {
    use PartStep::*;
    let line = || name().prop_map(LineId::new);
    let text = select(vec![
        LineText::Complaint,
        LineText::Cause,
        LineText::Correction,
    ]);
    let step = select(vec![
        ConsentStep::Diagnose,
        ConsentStep::Repair,
        ConsentStep::Add,
    ]);
    let note = || name().prop_map(NoteId::new);
    let part = || name().prop_map(PartId::new);
    let part_step = select(vec![
        Ordered, Received, Compared, Fitted, Returned, Stocked, Cancelled,
    ]);
    let sublet = || name().prop_map(SubletId::new);
    let keys = select(vec![KeyStep::Taken, KeyStep::GivenBack]);
    prop_oneof![
        (line(), words(), payer(), vec(system(), 0..2)).prop_map(
            |(line, complaint, payer, about)| Fact::LineOpened {
                line,
                complaint,
                payer,
                about,
            }
        ),
        (words(), told()).prop_map(|(words, after)| Fact::HowToTitled { words, after }),
        (note(), option::of(command()), option::of(words()), told()).prop_map(
            |(note, stage, words, after)| Fact::HowToNoted {
                note,
                stage,
                words,
                after,
            }
        ),
        (vec(note(), 0..3), told())
            .prop_map(|(notes, after)| Fact::HowToSequenced { notes, after }),
        (line(), text, words(), told()).prop_map(|(line, text, words, after)| {
            Fact::LineWorded {
                line,
                text,
                words,
                after,
            }
        }),
        (
            step,
            payer(),
            any::<bool>(),
            option::of(decimal()),
            any::<bool>(),
            told()
        )
            .prop_map(|(step, payer, agreed, amount, tax_included, after)| {
                Fact::Consented {
                    step,
                    payer,
                    lines: vec![],
                    agreed,
                    amount,
                    tax_included,
                    way: Way::Phone,
                    person: None,
                    said: None,
                    number_called: None,
                    signature: None,
                    after,
                }
            }),
        (payer(), decimal()).prop_map(|(payer, amount)| Fact::Paid {
            payer,
            amount,
            by: PaidBy::Card,
            deposit: false,
        }),
        (part(), decimal(), any::<bool>()).prop_map(|(part, quantity, has_old)| {
            Fact::PartNeeded {
                part,
                line: None,
                item: None,
                label: Words([0; 32]),
                number: None,
                quantity,
                cost: None,
                price: None,
                core: None,
                has_old,
            }
        }),
        (part(), decimal(), part_step, option::of(date())).prop_map(
            |(part, quantity, step, due)| Fact::PartStepped {
                part,
                quantity,
                step,
                due,
                words: None,
            }
        ),
        option::of(part()).prop_map(|part| Fact::OldPart {
            part,
            item: None,
            fate: OldPartFate::Scrap,
        }),
        (sublet(), option::of(date())).prop_map(|(sublet, due)| Fact::SubletOut {
            sublet,
            line: None,
            items: vec![],
            what: Words([0; 32]),
            to: Words([0; 32]),
            due,
            cost: None,
        }),
        sublet().prop_map(|sublet| Fact::SubletBack {
            sublet,
            words: None
        }),
        keys.prop_map(|step| Fact::Keys { step, words: None }),
        time().prop_map(|at| Fact::Promised { at }),
        aimed(),
        person().prop_map(|person| Fact::Assigned { person }),
        written().prop_map(|reading| Fact::Odometer {
            reading,
            at: OdometerAt::In
        }),
        Just(Fact::Stood { place: Place::Yard }),
    ]
    .boxed()
}

pub fn any_fact() -> impl Strategy<Value = Fact> {
    prop_oneof![3 => of_items(), 5 => of_moves(), 3 => of_work(), 2 => of_papers()]
}

fn need() -> impl Strategy<Value = Need> {
    let is = (item_id(), positions(), btree_set(state(), 0..3))
        .prop_map(|(item, at, states)| Need::Is { item, at, states });
    is.prop_recursive(3, 8, 3, |inner| {
        prop_oneof![
            vec(inner.clone(), 0..3).prop_map(Need::All),
            vec(inner, 0..3).prop_map(Need::Any),
        ]
    })
}

pub fn adopted() -> impl Strategy<Value = Decision> {
    let to = || prop_oneof![Just(State::Tight), state()];
    let need = (item_id(), positions(), to(), need()).prop_map(|(item, at, to, need)| StatedNeed {
        item,
        at,
        to,
        need,
    });
    let parts = (
        item_id(),
        state(),
        work_is(),
        option::of(words()),
        until(),
        option::of(item_id()),
        option::of(sort()),
    );
    let work = parts.prop_map(|(item, to, work, words, until, named, sort)| StatedWork {
        item,
        to,
        work,
        words,
        until,
        named,
        sort,
    });
    (vec(need, 0..4), vec(work, 0..4)).prop_map(|(needs, work)| Decision::Adopted {
        map: MapId::new("map"),
        version: 1,
        needs,
        work,
    })
}

pub fn entries() -> impl Strategy<Value = Vec<Entry>> {
    let entry = (decimal(), decimal(), payer()).prop_map(|(quantity, each, payer)| Entry {
        line: None,
        charge: Charge::Part,
        label: None,
        quantity,
        each,
        payer,
        less: Vec::new(),
    });
    vec(entry, 0..4)
}

/// It drove away, and nothing stood against it.
pub fn handed_over(decided_at: Timestamp) -> Decision {
    Decision::HandedOver {
        leaves: Leaves::DrivesAway,
        ending: Ending::Repaired,
        known: vec![],
        boxes: None,
        signature: None,
        signed_by: None,
        decided_at,
    }
}

fn reason_key() -> impl Strategy<Value = ReasonKey> {
    let away = vec![Away {
        position: 1,
        states: vec![State::Off],
    }];
    let open = ReasonKey::Open {
        item: ItemId::new("cover"),
        away,
    };
    select(vec![open, ReasonKey::Unpaid])
}

fn any_decision() -> BoxedStrategy<Decision> {
    let totals = |payer, net, tax, gross| [(payer, Totals { net, tax, gross })].into();
    let sums = || (payer(), decimal(), decimal(), decimal());
    let words = || Words([0; 32]);
    prop_oneof![
        (any::<u64>(), 0..40u32).prop_map(|(number, minor_digits)| Decision::Opened {
            number,
            vehicle: VehicleId::new("v"),
            customer: CustomerId::new("c"),
            currency: "EUR".into(),
            minor_digits,
        }),
        adopted(),
        (entries(), decimal(), sums(), vec(command(), 0..3)).prop_map(
            move |(entries, percent, (p, n, t, g), after)| {
                let on = TaxOn {
                    labour: true,
                    parts: true,
                    other: true,
                };
                let taxes = vec![TaxRule::on_top("tax", percent, on)];
                Decision::Priced {
                    entries,
                    taxes,
                    totals: totals(p, n, t, g),
                    written_down: if n.is_zero() {
                        [].into()
                    } else {
                        [(p, n)].into()
                    },
                    invoiced: after.clone(),
                    after,
                    terms: None,
                }
            }
        ),
        (payer(), decimal(), vec(command(), 0..3), sums()).prop_map(
            |(payer, amount, after, (p, net, tax, gross))| Decision::WrittenDown {
                payer,
                amount,
                left: (p == payer).then_some(Totals { net, tax, gross }),
                after,
            },
        ),
        sums().prop_map(move |(p, n, t, g)| Decision::Charged {
            totals: totals(p, n, t, g),
            written_down: [(p, n)].into(),
            numbers: if t.is_zero() {
                [].into()
            } else {
                [(p, 7)].into()
            },
        }),
        (command(), sums(), 0u32..4).prop_map(|(invoice, (p, net, tax, gross), line)| {
            Decision::Credited {
                invoice,
                payer: p,
                lines: vec![price::CreditLine {
                    line,
                    amount: net,
                    keeps_tax: tax.is_zero(),
                }],
                shares: vec![],
                totals: Totals { net, tax, gross },
                number: u64::from(line),
                words: Words([1; 32]),
            }
        }),
        (gate(), reason_key()).prop_map(move |(gate, key)| {
            Decision::Waived {
                gate,
                reason: key,
                figure: String::new(),
                prints: true,
                words: words(),
            }
        }),
        command().prop_map(|waiver| Decision::WaiverWithdrawn { waiver }),
        time().prop_map(handed_over),
        Just(Decision::TakenBack { words: words() }),
        Just(Decision::Voided { words: words() }),
    ]
    .boxed()
}

pub fn stamp() -> impl Strategy<Value = Stamp> {
    (person(), time()).prop_map(|(who, at)| Stamp { who, at })
}

pub fn any_event() -> impl Strategy<Value = Recorded<Event>> {
    let event = prop_oneof![
        4 => any_fact().prop_map(Event::Fact),
        1 => any_decision().prop_map(Event::Decision),
    ];
    (command(), 0..3u32, stamp(), event).prop_map(|(command, nth, stamp, event)| Recorded {
        command,
        nth,
        stamp,
        event,
    })
}

/// Facts as a log holds them: no two under one name; up to two to a command. What their
/// authors had seen is now anything at all, now what others told or moved before.
pub fn facts(most: usize) -> impl Strategy<Value = Vec<Recorded<Event>>> {
    vec((stamp(), any_fact(), knows()), 0..most).prop_map(|facts| {
        let mut told = Told::default();
        (0u32..)
            .zip(facts)
            .map(|(index, (stamp, mut fact, knows))| {
                let command = CommandId::new(format!("c{}", index / 2));
                told.note(&command, &mut fact, knows);
                Recorded {
                    command,
                    nth: index % 2,
                    stamp,
                    event: Event::Fact(fact),
                }
            })
            .collect()
    })
}

/// How much of what was said before its author knows.
#[derive(Debug, Clone, Copy)]
enum Knows {
    /// Anything at all, also what nobody said.
    Anything,
    /// What was said last of it.
    TheLast,
    /// Everything said of it.
    All,
}

fn knows() -> impl Strategy<Value = Knows> {
    prop_oneof![
        1 => Just(Knows::Anything),
        1 => Just(Knows::TheLast),
        2 => Just(Knows::All),
    ]
}

/// What was told and moved so far.
#[derive(Default)]
struct Told {
    /// Tellings of one sort, whatever item they are of: it may be the same.
    tellings: Vec<(std::mem::Discriminant<Fact>, CommandId)>,
    moves: Vec<(ItemId, MoveId)>,
    /// The command told last, and how many moves it has so far.
    nth: (Option<CommandId>, u16),
}

impl Told {
    /// Fills in what the author knew, and keeps what they say.
    fn note(&mut self, command: &CommandId, fact: &mut Fact, knows: Knows) {
        let sort = std::mem::discriminant(fact);
        if let Some(after) = tellings_seen(fact) {
            let these = self.tellings.iter().filter(|(of, _)| *of == sort);
            choose(after, these.map(|(_, id)| id), knows);
            self.tellings.push((sort, command.clone()));
        }
        if self.nth.0.as_ref() != Some(command) {
            self.nth = (Some(command.clone()), 0);
        }
        for change in moves_of(fact) {
            let these = self.moves.iter().filter(|(of, _)| *of == change.item);
            choose(&mut change.after, these.map(|(_, id)| id), knows);
            let id = MoveId {
                command: command.clone(),
                nth: self.nth.1,
            };
            self.moves.push((change.item.clone(), id));
            self.nth.1 += 1;
        }
        if let Some(after) = moves_seen(fact) {
            choose(after, self.moves.iter().map(|(_, id)| id), knows);
        }
        // A level that was looked at is a move of its fluid.
        if let Fact::LevelSeen { item, .. } = fact {
            let id = MoveId {
                command: command.clone(),
                nth: self.nth.1,
            };
            self.moves.push((item.clone(), id));
            self.nth.1 += 1;
        }
    }
}

fn choose<'a, T: Clone + 'a>(
    after: &mut Vec<T>,
    said: impl DoubleEndedIterator<Item = &'a T>,
    knows: Knows,
) {
    match knows {
        Knows::Anything => {}
        Knows::TheLast => *after = said.rev().take(1).cloned().collect(),
        Knows::All => *after = said.cloned().collect(),
    }
}

/// The tellings that the author of one had seen.
fn tellings_seen(fact: &mut Fact) -> Option<&mut Vec<CommandId>> {
    match fact {
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
        | Fact::Aimed { after, .. } => Some(after),
        _ => None,
    }
}

/// The moves that the author of one had seen, who moved nothing.
fn moves_seen(fact: &mut Fact) -> Option<&mut Vec<MoveId>> {
    match fact {
        Fact::LevelSeen { after, .. }
        | Fact::BeltLeftOff { after, .. }
        | Fact::WorkDone { after, .. }
        | Fact::Checked { after, .. }
        | Fact::Proved { after, .. } => Some(after),
        _ => None,
    }
}

fn moves_of(fact: &mut Fact) -> &mut [Move] {
    match fact {
        Fact::Found { moves }
        | Fact::Seen { moves }
        | Fact::Moved { moves, .. }
        | Fact::SnagFound { moves, .. }
        | Fact::SnagResolved { moves, .. } => moves,
        _ => &mut [],
    }
}
