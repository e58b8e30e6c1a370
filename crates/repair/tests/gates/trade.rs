//! What the trade says of things, in the account: what is owed, and which gates stay shut.
//! The rules are those of `checks/data/trade/trade.md`; each case names the ones it is of.

use crate::support::*;
use repair::*;

fn owes(works: &[(&str, &[Gate], SharedIs)]) -> Vec<TradeWork> {
    works
        .iter()
        .map(|(sort, before, shared)| TradeWork {
            sort: Token::new(sort).unwrap(),
            before: before.to_vec(),
            shared: *shared,
            after: None,
        })
        .collect()
}

/// What the trade knows: sort, system, side, gates shut while off, works.
fn trade(
    sort: &str,
    system: System,
    side: &str,
    shuts: &[Gate],
    works: Vec<TradeWork>,
    safety: bool,
) -> Option<Trade> {
    Some(Trade {
        table: 1,
        additions: 0,
        sort: Token::new(sort).ok(),
        sure: SureIs::Sure,
        system,
        side: (!side.is_empty()).then(|| Token::new(side).unwrap()),
        safety,
        shuts: shuts.to_vec(),
        owes: works,
        cautions: vec![],
    })
}

fn thing(job: &mut Job, id: &str, kind: Kind, pieces: u16, trade: Option<Trade>) {
    let system = trade.as_ref().map_or(System::Unknown, |trade| trade.system);
    job.declare(Item {
        trade,
        ..item(id, kind, system, Zone::WheelWell, pieces)
    });
}

const PER_ORDER: SharedIs = SharedIs::Order;

fn pads(job: &mut Job) {
    let works = owes(&[
        ("level-brake-fluid", &[Gate::Road], PER_ORDER),
        ("pedal-hard", &[Gate::Roll], PER_ORDER),
        ("second-check", &[Gate::HandOver], PER_ORDER),
        ("bed-in", &[Gate::HandOver], PER_ORDER),
    ]);
    let known = trade(
        "brake-pads",
        System::Brakes,
        "front",
        &[Gate::Roll],
        works,
        true,
    );
    thing(job, "pads", Kind::Part, 1, known);
}

fn hose(job: &mut Job) {
    let works = owes(&[
        ("bleed-brakes", &[Gate::Roll], PER_ORDER),
        ("level-brake-fluid", &[Gate::Road], PER_ORDER),
        ("pedal-hard", &[Gate::Roll], PER_ORDER),
        ("leak-look", &[Gate::Road], PER_ORDER),
        ("second-check", &[Gate::HandOver], PER_ORDER),
    ]);
    let known = trade(
        "brake-hose",
        System::Brakes,
        "front-left",
        &[Gate::Roll],
        works,
        true,
    );
    thing(job, "hose", Kind::Hose, 1, known);
}

fn wheel(job: &mut Job) {
    let works = owes(&[
        ("wheel-nuts-on", &[Gate::Lower], SharedIs::Wheel),
        ("wheel-torque", &[Gate::Roll], SharedIs::Wheel),
        ("torque-after-distance", &[], SharedIs::Wheel),
    ]);
    let known = trade(
        "wheel",
        System::Wheels,
        "front-left",
        &[Gate::Lower],
        works,
        true,
    );
    thing(job, "wheel", Kind::Part, 1, known);
}

fn nuts(job: &mut Job) {
    let works = owes(&[
        ("wheel-torque", &[Gate::Roll], SharedIs::Wheel),
        ("torque-after-distance", &[], SharedIs::Wheel),
    ]);
    let known = trade(
        "wheel-nuts",
        System::Wheels,
        "front-left",
        &[Gate::Lower],
        works,
        true,
    );
    thing(job, "nuts", Kind::Fasteners, 5, known);
}

fn bulb(job: &mut Job) {
    let works = owes(&[("lamp-works", &[Gate::HandOver], SharedIs::Item)]);
    let known = trade(
        "bulb",
        System::Electrical,
        "left",
        &[Gate::Road],
        works,
        false,
    );
    thing(job, "bulb", Kind::Part, 1, known);
}

fn done(job: &mut Job, sort: &str) {
    done_on(job, sort, None);
}

fn done_on(job: &mut Job, sort: &str, item: Option<&str>) {
    job.record(Fact::WorkDone {
        work: Work {
            sort: Some(Token::new(sort).unwrap()),
            ..Work::usual(WorkIs::Other, item.map(ItemId::new))
        },
        after: job.all_seen(),
        words: None,
    });
}

fn open_gates(job: &Job) -> Vec<Gate> {
    let gates = Gate::ALL.into_iter();
    gates
        .filter(|gate| {
            job.answer(*gate)
                .fit_to_go
                .iter()
                .all(|reason| !reason.shuts())
        })
        .collect()
}

/// Rule 2: pads ask for a hard pedal, the level and bedding in, and nothing asks to bleed.
#[test]
fn pads_back_on_and_the_pedal_still_goes_to_the_floor() {
    let mut job = Job::new();
    pads(&mut job);
    job.out_and_back("pads", State::Off, State::On);
    assert_eq!(open_gates(&job), [Gate::GoLive, Gate::Start, Gate::Lower]);
    assert_eq!(job.shut(Gate::Roll), ["owed:pedal-hard:"]);
    assert_eq!(
        job.shut(Gate::Road),
        [
            "not-checked:pads",
            "owed:level-brake-fluid:",
            "owed:pedal-hard:"
        ]
    );
    done(&mut job, "pedal-hard");
    done(&mut job, "level-brake-fluid");
    assert_eq!(job.shut(Gate::Road), ["not-checked:pads"]);
    job.by("rui").checked(CheckIs::SecondPerson, &["pads"]);
    assert!(job.shut(Gate::Road).is_empty());
    assert!(
        job.shut(Gate::HandOver)
            .contains(&"owed:bed-in:".to_owned())
    );
}

/// Rule 1 and scenario 3: a hose that is back and not bled holds roll and road.
#[test]
fn a_brake_hose_that_is_back_and_not_bled() {
    let mut job = Job::new();
    hose(&mut job);
    job.out_and_back("hose", State::Off, State::On);
    assert_eq!(open_gates(&job), [Gate::GoLive, Gate::Start, Gate::Lower]);
    assert_eq!(
        job.shut(Gate::Roll),
        ["owed:bleed-brakes:", "owed:pedal-hard:"]
    );
}

/// Scenario 2: a wheel that is back says nothing of its nuts; who names them and tightens
/// them is asked nothing more, and the distance prints and blocks nothing.
#[test]
fn a_wheel_back_on_asks_for_its_nuts() {
    let mut job = Job::new();
    wheel(&mut job);
    job.out_and_back("wheel", State::Off, State::On);
    assert_eq!(job.shut(Gate::Lower), ["owed:wheel-nuts-on:front-left:"]);
    nuts(&mut job);
    job.moved("nuts", &[], State::Out);
    job.moved("nuts", &[], LOOSE);
    assert!(
        job.shut(Gate::Lower).is_empty(),
        "hand-tight is enough to lower"
    );
    let shut = job.shut(Gate::Roll);
    assert!(
        shut.contains(&"owed:wheel-torque:front-left:".to_owned()),
        "{shut:?}"
    );
    job.moved("nuts", &[], State::Tight);
    assert!(job.shut(Gate::Roll).is_empty());
    let later = debts(&job.order, &job.account(), &job.rules);
    let key = |debt: &Debt| spelled(&ReasonKey::Owed(debt.work.identity()));
    let later: Vec<_> = later.iter().map(key).collect();
    assert_eq!(
        later,
        ["owed:torque-after-distance:front-left:"],
        "owed once, by wheel and nuts"
    );
}

/// A map that says when the nuts are tightened again says it for the whole wheel: it is owed
/// once, by the map's name, after the map's distance and not the usual one.
#[test]
fn what_a_map_says_of_the_nuts_holds_for_their_wheel() {
    let mut job = Job::new();
    wheel(&mut job);
    nuts(&mut job);
    let of_the_map = Until::Later {
        date: None,
        distance: Some(written("80 km")),
    };
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work: vec![StatedWork {
            item: ItemId::new("nuts"),
            to: State::Out,
            work: WorkIs::TorqueAfterDistance,
            words: None,
            until: of_the_map.clone(),
            named: Some(ItemId::new("torque the nuts again")),
            sort: Token::new("torque-after-distance").ok(),
        }],
    })
    .unwrap();
    for (item, away) in [("nuts", State::Out), ("wheel", State::Off)] {
        job.moved(item, &[], away);
    }
    job.moved("wheel", &[], State::On);
    job.moved("nuts", &[], State::Tight);
    let later = debts(&job.order, &job.account(), &job.rules);
    let later: Vec<_> = later
        .iter()
        .map(|debt| {
            let key = spelled(&ReasonKey::Owed(debt.work.identity()));
            (key, debt.until.clone())
        })
        .collect();
    let named = "owed:named:torque the nuts again".to_owned();
    assert_eq!(later, [(named, of_the_map)]);
}

/// Rule 20 and scenario 8: a bulb asks for a look at the lamp and for nothing else.
#[test]
fn a_bulb_shuts_nothing_superfluous() {
    let mut job = Job::new();
    bulb(&mut job);
    job.moved("bulb", &[], State::Off);
    assert_eq!(
        open_gates(&job),
        [Gate::GoLive, Gate::Start, Gate::Lower, Gate::Roll]
    );
    job.moved("bulb", &[], State::On);
    assert_eq!(job.shut(Gate::HandOver), ["owed:lamp-works:bulb"]);
    done_on(&mut job, "lamp-works", Some("bulb"));
    assert!(
        job.shut(Gate::HandOver).is_empty(),
        "no road test for a bulb"
    );
}

/// What is not named stays a question, also when it is home again.
#[test]
fn what_nobody_knows_and_may_be_of_safety_shuts_every_gate_home_or_not() {
    let mut job = Job::new();
    let unknown = trade("", System::Unknown, "", &Gate::ALL, vec![], true).map(|trade| Trade {
        sort: None,
        sure: SureIs::Unknown,
        ..trade
    });
    thing(&mut job, "thing", Kind::Part, 1, unknown);
    job.out_and_back("thing", State::Off, State::On);
    for gate in Gate::ALL {
        assert!(
            job.shut(gate).contains(&"not-known:thing".to_owned()),
            "{gate:?}"
        );
    }
    job.record(Fact::Located {
        item: ItemId::new("thing"),
        system: System::Body,
        zone: Zone::Outside,
        after: vec![],
    });
    assert!(job.shut(Gate::Road).is_empty());
}

/// What a map or a person says beside the name counts too; neither takes from the other.
#[test]
fn a_system_told_beside_the_name_adds_to_it() {
    let mut job = Job::new();
    bulb(&mut job);
    job.record(Fact::Located {
        item: ItemId::new("bulb"),
        system: System::Brakes,
        zone: Zone::Rear,
        after: vec![],
    });
    job.moved("bulb", &[], State::Off);
    assert!(!job.shut(Gate::Roll).is_empty(), "by the system told");
    assert!(!job.shut(Gate::Road).is_empty());
    assert!(job.account().items[&ItemId::new("bulb")].is_safety());
}

/// A snag of a safety item shuts what the item would.
#[test]
fn a_brake_hose_found_leaking_holds_the_vehicle() {
    let mut job = Job::new();
    hose(&mut job);
    job.snag("s1", "hose", SnagIs::Leaking, vec![]);
    assert_eq!(job.shut(Gate::Roll), ["snag:s1"]);
    assert!(job.shut(Gate::Lower).is_empty());
}

/// The same work by two causes is owed once, and must have seen both.
#[test]
fn one_work_by_two_causes_is_owed_once() {
    let mut job = Job::new();
    pads(&mut job);
    hose(&mut job);
    job.out_and_back("pads", State::Off, State::On);
    done(&mut job, "pedal-hard");
    job.out_and_back("hose", State::Off, State::On);
    let owed = |job: &Job| job.shut(Gate::Roll);
    assert_eq!(owed(&job), ["owed:bleed-brakes:", "owed:pedal-hard:"]);
    done(&mut job, "bleed-brakes");
    done(&mut job, "pedal-hard");
    assert!(owed(&job).is_empty());
}

/// A map that names such a work gives it its words; the stricter gate stands.
#[test]
fn the_maps_own_work_of_the_sort_is_the_same_work() {
    let mut job = Job::new();
    pads(&mut job);
    job.ask(Request::Adopt {
        map: MapId::new("fjell"),
        version: 1,
        needs: vec![],
        work: vec![StatedWork {
            item: ItemId::new("pads"),
            to: State::Off,
            work: WorkIs::PumpPedal,
            words: None,
            until: Until::Before(Gate::HandOver),
            named: Some(ItemId::new("pump it")),
            sort: Some(Token::new("pedal-hard").unwrap()),
        }],
    })
    .unwrap();
    job.out_and_back("pads", State::Off, State::On);
    assert_eq!(job.shut(Gate::Roll), ["owed:named:pump it"]);
}

/// A complaint about brakes, steering, tyres or wheels: somebody has looked before the road.
#[test]
fn a_complaint_about_brakes_is_looked_at_before_the_road() {
    let mut job = Job::new();
    job.record(Fact::LineOpened {
        line: LineId::new("1"),
        complaint: words(7),
        payer: price::Payer::Customer,
        about: vec![System::Brakes],
    });
    assert_eq!(job.shut(Gate::Road), ["complaint:1"]);
    assert!(job.shut(Gate::Roll).is_empty());
    job.record(Fact::LineWorded {
        line: LineId::new("1"),
        text: LineText::Cause,
        words: words(8),
        after: vec![],
    });
    assert!(job.shut(Gate::Road).is_empty());
}
