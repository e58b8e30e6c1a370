//! Rules 7 and 11: ways to leave, and what comes in after; orders opened by mistake.

use crate::support::*;
use crate::things::*;
use price::Payer;
use repair::*;

/// An order with one trim panel off and everything else in order.
fn trim_off() -> Job {
    let mut job = Job::new();
    job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
    job.moved("trim", &[], State::Off);
    job.road_tested();
    job.papers_in_order();
    job
}

fn collected(boxes: Option<u16>, signed: bool) -> Request {
    Request::HandOver {
        leaves: Leaves::CollectedApart,
        ending: Ending::Repaired,
        boxes,
        signature: None,
        signed_by: signed.then(|| words(4)),
    }
}

#[test]
fn rule_7_it_drives_away_only_with_nothing_open() {
    let mut job = trim_off();
    let refused = job.hand_over();
    assert!(
        matches!(&refused, Err(Refusal::StillOpen { gate: Gate::HandOver, reasons })
            if keys(reasons) == ["open:trim:1=Off"]),
        "{refused:?}"
    );
    job.moved("trim", &[], State::On);
    job.hand_over().unwrap();
    assert_eq!(job.hand_over(), Err(Refusal::HandedOver));
    let handed = papers::handed_over(&job.order).unwrap();
    assert_eq!(handed.ending, Ending::Repaired);
    assert_eq!(handed.known, [], "nothing stood against it");
}

#[test]
fn rule_7_it_moves_in_the_yard_with_trim_off() {
    assert!(trim_off().answer(Gate::Roll).may());
}

#[test]
fn rule_7_it_is_collected_apart_counted_and_signed() {
    let mut job = trim_off();
    assert_eq!(
        job.ask(collected(None, true)),
        Err(Refusal::BoxesNotCounted)
    );
    assert_eq!(job.ask(collected(Some(2), false)), Err(Refusal::NotSigned));
    job.ask(collected(Some(2), true)).unwrap();
    let handed = papers::handed_over(&job.order).unwrap();
    assert_eq!(
        handed.ending,
        Ending::DeclinedApart,
        "whatever was asked for"
    );
    assert_eq!(
        handed.known,
        [reason_key("open:trim:1=Off")],
        "the open list went with it"
    );
    assert_eq!(
        job.alarms(),
        Vec::<String>::new(),
        "it left so, and was known to"
    );
}

#[test]
fn rule_7_collected_apart_still_wants_its_papers() {
    let mut job = trim_off();
    job.paid(-100, PaidBy::Card);
    let refused = job.ask(collected(Some(1), true));
    assert!(
        matches!(&refused, Err(Refusal::StillOpen { reasons, .. }) if keys(reasons) == ["unpaid"]),
        "{refused:?}"
    );
}

/// Handed over with everything in order.
fn gone() -> Job {
    let mut job = Job::new();
    coolant_renewed(&mut job, "9.2 L");
    nuts(&mut job);
    job.papers_in_order();
    job.hand_over().unwrap();
    job
}

#[test]
fn rule_11_what_came_in_after_raises_an_alarm() {
    let mut job = gone();
    assert_eq!(job.alarms(), Vec::<String>::new());
    // Written before it left, on a phone that was out of reach.
    job.by("rui").moved("nuts", &[2], LOOSE);
    assert_eq!(
        job.alarms(),
        ["open:nuts:2=Loose0", "proof-missing:RoadTest"]
    );
    assert!(
        papers::handed_over(&job.order).is_some(),
        "the hand-over answered for what was known"
    );
    job.moved("nuts", &[2], State::Tight);
    job.road_tested();
    assert_eq!(job.alarms(), ["not-checked:nuts"]);
    job.by("ana").checked(CheckIs::SecondPerson, &["nuts"]);
    assert_eq!(job.alarms(), Vec::<String>::new());
}

#[test]
fn an_order_ends_in_one_of_four_ways() {
    let leave = |leaves, ending| Request::HandOver {
        leaves,
        ending,
        boxes: Some(1),
        signature: None,
        signed_by: Some(words(4)),
    };
    for (ending, leaves, becomes) in [
        (Ending::Repaired, Leaves::DrivesAway, Ending::Repaired),
        (
            Ending::NotReproduced,
            Leaves::DrivesAway,
            Ending::NotReproduced,
        ),
        (
            Ending::DeclinedPutBack,
            Leaves::DrivesAway,
            Ending::DeclinedPutBack,
        ),
        (
            Ending::Repaired,
            Leaves::CollectedApart,
            Ending::DeclinedApart,
        ),
    ] {
        let mut job = trim_off();
        let asked = job.ask(leave(leaves, ending));
        // Put back means put back: nothing open, whatever the end is called.
        assert_eq!(
            asked.is_ok(),
            leaves == Leaves::CollectedApart,
            "{ending:?}"
        );
        if asked.is_err() {
            job.moved("trim", &[], State::On);
            job.ask(leave(leaves, ending)).unwrap();
        }
        assert_eq!(papers::handed_over(&job.order).unwrap().ending, becomes);
    }
}

#[test]
fn rule_11_whatever_opens_something_raises_an_alarm() {
    type Late = (&'static str, fn(&mut Job), &'static [&'static str]);
    let rows: &[Late] = &[
        (
            "a clamp still in",
            |job| {
                job.put_in("clamp", PutIn::Clamp, System::Cooling, Zone::Above);
                job.moved("clamp", &[], State::Inside);
            },
            &["open:clamp:1=Inside"],
        ),
        (
            "something that nobody declared",
            |job| {
                job.moved("thing", &[], State::Off);
            },
            &["open:thing:1=Off"],
        ),
        (
            "a snag",
            |job| {
                job.snag("late", "coolant", SnagIs::Leaking, vec![]);
            },
            &["snag:late"],
        ),
        (
            "a test that failed",
            |job| {
                job.proved("late", ProofIs::RoadTest, Outcome::Failed);
            },
            &["proof-failed:RoadTest"],
        ),
        (
            "the check was a slip",
            |job| {
                let check = job
                    .order
                    .facts()
                    .find(|(_, filed)| matches!(filed.fact, Fact::Checked { .. }))
                    .map(|(command, _)| command.clone());
                job.record(Fact::Undo {
                    command: check.unwrap(),
                    part: None,
                });
            },
            &["not-checked:coolant"],
        ),
        (
            "three litres more had come out",
            |job| drained(job, "coolant", "3 L"),
            &["much-missing:coolant"],
        ),
        (
            "a new part that nobody fitted",
            |job| part_needed(job, false),
            &["part:hose"],
        ),
        (
            "work that somebody said is owed before it leaves",
            |job| {
                job.record(Fact::WorkDue {
                    id: WorkId::new("w"),
                    item: None,
                    words: words(8),
                    until: Until::Before(Gate::HandOver),
                });
            },
            &["owed:own:w"],
        ),
        (
            "work that is due later",
            |job| {
                job.record(Fact::WorkDue {
                    id: WorkId::new("w"),
                    item: None,
                    words: words(8),
                    until: Until::Later {
                        date: None,
                        distance: None,
                    },
                });
            },
            &[],
        ),
        (
            "a clip that was found missing before anybody touched it",
            |job| {
                clips(job);
                job.found("clips", &[1], State::Out);
            },
            &[],
        ),
    ];
    for (name, late, expected) in rows {
        let mut job = gone();
        late(job.by("rui"));
        job.alarms_are(name, expected);
    }
}

#[test]
fn rule_11_the_next_morning_raises_none() {
    let mut job = gone();
    job.later(24);
    assert_eq!(
        job.alarms(),
        Vec::<String>::new(),
        "the cold level was due later"
    );
}

/// Tray screws that were left out on purpose, known and waived when it left.
fn gone_with_screws_out() -> Job {
    let mut job = Job::new();
    screws(&mut job);
    job.moved("screws", &[], State::Out);
    job.moved("screws", &[1, 2, 3], State::Tight);
    job.road_tested();
    job.papers_in_order();
    job.waive(Gate::HandOver, "open:screws:4=Out,5=Out,6=Out")
        .unwrap();
    job.hand_over().unwrap();
    job
}

#[test]
fn rule_11_what_was_known_and_is_nearer_home_raises_none() {
    type Late = (&'static str, fn(&mut Job), &'static [&'static str]);
    let rows: &[Late] = &[
        ("nothing came in", |_| {}, &[]),
        (
            "one of three was in after all",
            |job| {
                job.moved("screws", &[4], State::Tight);
            },
            &[],
        ),
        (
            "one of three was in by hand",
            |job| {
                job.moved("screws", &[5], LOOSE);
            },
            &[],
        ),
        (
            "a fourth one was out too",
            |job| {
                job.moved("screws", &[3], State::Out);
            },
            &["open:screws:3=Out,4=Out,5=Out,6=Out"],
        ),
        (
            "one had come out that was tight, another went in",
            |job| {
                job.moved("screws", &[4, 5, 6], State::Tight);
                job.moved("screws", &[1], State::Out);
            },
            &["open:screws:1=Out"],
        ),
        (
            "one is snapped, not merely out",
            |job| {
                job.moved("screws", &[6], State::Stub { holds: false });
            },
            &["open:screws:4=Out,5=Out,6=Snapped"],
        ),
        (
            "two phones disagree whether one went in",
            |job| {
                let unseen = job.seen("screws");
                job.moved("screws", &[4], State::Tight);
                let change = a_move("screws", &[4], State::Out, &unseen);
                job.record(Fact::Moved {
                    stage: None,
                    moves: vec![change],
                });
            },
            &[],
        ),
    ];
    for (name, late, expected) in rows {
        let mut job = gone_with_screws_out();
        late(job.by("rui"));
        job.alarms_are(name, expected);
    }
}

#[test]
fn rule_11_a_level_found_low_after_it_left_raises_an_alarm() {
    let mut job = gone();
    job.level_is("coolant", LevelAt::Cold, false);
    assert_eq!(job.alarms(), ["open:coolant:1=Low"]);
    job.level_is("coolant", LevelAt::Cold, true);
    assert_eq!(job.alarms(), Vec::<String>::new());
}

#[test]
fn rule_11_taken_back_in_it_is_an_order_again() {
    let mut job = gone();
    let back = Request::TakeBack { words: words(1) };
    job.by("rui").moved("nuts", &[2], LOOSE);
    assert_eq!(
        job.ask(Request::Price {
            entries: vec![],
            after: vec![]
        }),
        Err(Refusal::HandedOver)
    );
    job.ask(back.clone()).unwrap();
    assert_eq!(job.alarms(), Vec::<String>::new(), "it is here");
    assert_eq!(job.ask(back), Err(Refusal::NotHandedOver));
    assert!(matches!(job.hand_over(), Err(Refusal::StillOpen { .. })));
}

#[test]
fn an_order_opened_by_mistake_is_voided_only_untouched() {
    let void = || Request::Void { words: words(1) };
    let mut job = Job::new();
    job.found("clips", &[1], State::Out);
    job.ask(void()).unwrap();
    assert_eq!(job.ask(void()), Err(Refusal::Voided));
    assert_eq!(job.hand_over(), Err(Refusal::Voided));

    let mut job = Job::new();
    let slip = job.moved("clips", &[1], State::Out);
    let item = ItemId::new("clips");
    let standing = |job: &mut Job| match job.ask(void()) {
        Err(Refusal::NotVoidable { standing }) => standing,
        other => panic!("{other:?}"),
    };
    assert_eq!(standing(&mut job), [Standing::Moved { item }]);
    job.record(Fact::Undo {
        command: slip,
        part: None,
    });
    job.paid(50, PaidBy::Cash);
    assert_eq!(
        standing(&mut job),
        [Standing::Money {
            payer: Payer::Customer,
            amount: Some(50.into())
        }]
    );
    job.paid(-50, PaidBy::Cash);
    job.ask(void()).unwrap();
}

/// Everything that stands is shown at once, and goes from the list as it is ended.
#[test]
fn what_stands_on_an_order_keeps_it_from_being_voided() {
    type Ends = fn(&mut Job);
    let part = || PartId::new("pump");
    let rows: [(&str, Ends, &[&str], Ends); 6] = [
        (
            "keys",
            |job| hang(job, KeyStep::Taken),
            &["Keys"],
            |job| hang(job, KeyStep::GivenBack),
        ),
        (
            "a part on order",
            |job| {
                needed(job, None);
                step(job, PartStep::Ordered, 2);
            },
            &["Part"],
            |job| step(job, PartStep::Cancelled, 2),
        ),
        (
            "one of two came, with a core",
            |job| {
                needed(job, Some(60));
                step(job, PartStep::Ordered, 2);
                step(job, PartStep::Received, 1);
                step(job, PartStep::Cancelled, 1);
            },
            &["Part", "Core"],
            |job| step(job, PartStep::Returned, 1),
        ),
        (
            "work sent out",
            |job| {
                job.record(Fact::SubletOut {
                    sublet: SubletId::new("head"),
                    line: None,
                    items: vec![],
                    what: words(1),
                    to: words(2),
                    due: None,
                    cost: None,
                });
            },
            &["Sublet"],
            |job| {
                job.record(Fact::SubletBack {
                    sublet: SubletId::new("head"),
                    words: None,
                });
            },
        ),
        (
            "money of the warranty",
            |job| warranty_paid(job, 40),
            &["Money"],
            |job| warranty_paid(job, -40),
        ),
        (
            "a part that is only wanted",
            |job| needed(job, Some(60)),
            &[],
            |_| {},
        ),
    ];
    for (name, begin, expected, end) in rows {
        let mut job = Job::new();
        begin(&mut job);
        let asked = job.ask(Request::Void { words: words(1) });
        let found = match asked {
            Err(Refusal::NotVoidable { standing }) => standing,
            Ok(_) if expected.is_empty() => continue,
            other => panic!("{name}: {other:?}"),
        };
        let found: Vec<String> = found.iter().map(|one| format!("{one:?}")).collect();
        let names: Vec<_> = found
            .iter()
            .filter_map(|one| one.split(' ').next())
            .collect();
        assert_eq!(names, expected, "{name}");
        end(&mut job);
        job.ask(Request::Void { words: words(1) })
            .unwrap_or_else(|refused| panic!("{name}: {refused:?}"));
    }
    let mut job = Job::new();
    needed(&mut job, None);
    step(&mut job, PartStep::Fitted, 1);
    job.record(Fact::Poured {
        item: ItemId::new("coolant"),
        amount: written("2 L"),
        what: None,
        temperature: None,
    });
    hang(&mut job, KeyStep::Taken);
    let refused = job.ask(Request::Void { words: words(1) });
    let standing = vec![
        Standing::Fluid {
            item: ItemId::new("coolant"),
        },
        Standing::Part {
            part: part(),
            quantity: 1.into(),
        },
        Standing::OldPart { part: part() },
        Standing::Keys,
    ];
    assert_eq!(refused, Err(Refusal::NotVoidable { standing }));
}

#[test]
fn an_order_with_an_invoice_is_not_voided() {
    let mut job = Job::new();
    job.papers_in_order();
    job.paid(-100, PaidBy::Card);
    let refused = job.ask(Request::Void { words: words(1) });
    assert_eq!(
        refused,
        Err(Refusal::NotVoidable {
            standing: vec![Standing::Invoice]
        })
    );
}

fn hang(job: &mut Job, step: KeyStep) {
    job.record(Fact::Keys { step, words: None });
}

fn needed(job: &mut Job, core: Option<i64>) {
    job.record(Fact::PartNeeded {
        part: PartId::new("pump"),
        line: None,
        item: None,
        label: words(3),
        number: None,
        quantity: 2.into(),
        cost: None,
        price: None,
        core: core.map(Into::into),
        has_old: true,
    });
}

fn step(job: &mut Job, step: PartStep, quantity: i64) {
    job.record(Fact::PartStepped {
        part: PartId::new("pump"),
        quantity: quantity.into(),
        step,
        due: None,
        words: None,
    });
}

fn warranty_paid(job: &mut Job, amount: i64) {
    job.record(Fact::Paid {
        payer: Payer::Warranty,
        amount: amount.into(),
        by: PaidBy::Transfer,
        deposit: false,
    });
}

#[test]
fn an_order_is_opened_once_and_first() {
    let mut job = Job::new();
    let open = || Request::Open {
        vehicle: VehicleId::new("v"),
        customer: CustomerId::new("c"),
    };
    assert_eq!(job.ask(open()), Err(Refusal::AlreadyOpen));
    job.order = Order::default();
    assert_eq!(job.charged(), Err(Refusal::NotOpen));
    job.ask(open()).unwrap();
}
