//! Work that a map states: no two of its works become one, none goes unseen.

use crate::support::*;
use repair::*;

/// A map that makes these works due when the column comes off: name, sort, until.
fn column(job: &mut Job, works: &[(&str, WorkIs, Until)]) {
    job.one("column", Kind::Part, System::Steering, Zone::Cabin);
    let work = works
        .iter()
        .map(|(name, work, until)| StatedWork {
            item: ItemId::new("column"),
            to: State::Off,
            work: *work,
            words: None,
            until: until.clone(),
            named: Some(ItemId::new(*name)),
            sort: None,
        })
        .collect();
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work,
    })
    .unwrap();
    job.out_and_back("column", State::Off, State::On);
    job.by("rui").checked(CheckIs::SecondPerson, &["column"]);
    job.by("ana").road_tested();
}

fn done(job: &mut Job, name: &str) {
    job.record(Fact::WorkDone {
        work: Work {
            work: WorkIs::Other,
            item: None,
            own: None,
            named: Some(ItemId::new(name)),
            sort: None,
        },
        after: job.all_seen(),
        words: None,
    });
}

const BEFORE_HAND_OVER: Until = Until::Before(Gate::HandOver);

#[test]
fn two_works_of_one_move_are_two_though_of_one_sort() {
    let mut job = Job::new();
    column(
        &mut job,
        &[
            ("centre the clock spring", WorkIs::Other, BEFORE_HAND_OVER),
            ("teach the angle sensor", WorkIs::Other, BEFORE_HAND_OVER),
        ],
    );
    assert_eq!(
        job.shut(Gate::HandOver),
        [
            "owed:named:centre the clock spring",
            "owed:named:teach the angle sensor"
        ]
    );
    done(&mut job, "teach the angle sensor");
    assert_eq!(
        job.shut(Gate::HandOver),
        ["owed:named:centre the clock spring"]
    );
    done(&mut job, "centre the clock spring");
    assert!(job.shut(Gate::HandOver).is_empty());
}

#[test]
fn one_work_of_two_moves_is_one_and_must_have_seen_both() {
    let mut job = Job::new();
    job.one("column", Kind::Part, System::Steering, Zone::Cabin);
    job.one("rack", Kind::Part, System::Steering, Zone::Below);
    let stated = |item: &str| StatedWork {
        item: ItemId::new(item),
        to: State::Off,
        work: WorkIs::Alignment,
        words: None,
        until: BEFORE_HAND_OVER,
        named: Some(ItemId::new("alignment")),
        sort: None,
    };
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work: vec![stated("column"), stated("rack")],
    })
    .unwrap();
    job.out_and_back("column", State::Off, State::On);
    done(&mut job, "alignment");
    job.out_and_back("rack", State::Off, State::On);
    job.record(Fact::Checked {
        check: CheckIs::WalkedBack,
        items: vec![ItemId::new("column"), ItemId::new("rack")],
        after: job.all_seen(),
        learns: None,
        alone: None,
    });
    job.road_tested();
    assert_eq!(job.shut(Gate::HandOver), ["owed:named:alignment"]);
    done(&mut job, "alignment");
    assert!(job.shut(Gate::HandOver).is_empty());
}

#[test]
fn of_two_untils_of_one_work_the_stricter_gate_stands() {
    for turned in [false, true] {
        let mut untils = vec![Until::Before(Gate::Roll), BEFORE_HAND_OVER];
        if turned {
            untils.reverse();
        }
        let works: Vec<_> = untils
            .into_iter()
            .map(|until| ("try the lock", WorkIs::Other, until))
            .collect();
        let mut job = Job::new();
        column(&mut job, &works);
        assert_eq!(job.shut(Gate::Roll), ["owed:named:try the lock"]);
        assert_eq!(job.shut(Gate::Road), ["owed:named:try the lock"]);
    }
}

/// Neither of going live and rolling includes the other: both stand.
#[test]
fn untils_that_are_apart_both_stand() {
    let mut job = Job::new();
    let untils = [Gate::Start, Gate::Roll].map(Until::Before);
    column(
        &mut job,
        &untils.map(|until| ("try the lock", WorkIs::Other, until)),
    );
    for (gate, stands) in [
        (Gate::GoLive, false),
        (Gate::Start, true),
        (Gate::Lower, false),
        (Gate::Roll, true),
        (Gate::Road, true),
    ] {
        assert_eq!(!job.shut(gate).is_empty(), stands, "{gate:?}");
    }
}

/// By a gate is stricter than by a date after hand-over.
#[test]
fn a_gate_is_stricter_than_a_day_after() {
    let later = Until::Later {
        date: None,
        distance: Some(written("80 km")),
    };
    for untils in [
        [later.clone(), BEFORE_HAND_OVER],
        [BEFORE_HAND_OVER, later.clone()],
    ] {
        let mut job = Job::new();
        column(
            &mut job,
            &untils.map(|until| ("torque again", WorkIs::TorqueAfterDistance, until)),
        );
        assert_eq!(job.shut(Gate::HandOver), ["owed:named:torque again"]);
    }
}

/// A level that was seen answers the map's own work of that level.
#[test]
fn a_level_that_was_seen_answers_the_maps_work_of_it() {
    let mut job = Job::new();
    job.one("coolant", Kind::Fluid, System::Cooling, Zone::Above);
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work: vec![StatedWork {
            item: ItemId::new("coolant"),
            to: State::Low,
            work: WorkIs::LevelWarm,
            words: None,
            until: BEFORE_HAND_OVER,
            named: Some(ItemId::new("see it warm")),
            sort: None,
        }],
    })
    .unwrap();
    job.out_and_back("coolant", State::Low, State::AtLevel);
    let warm = "owed:named:see it warm".to_owned();
    assert!(job.shut(Gate::HandOver).contains(&warm));
    job.level("coolant", LevelAt::Warm);
    assert!(!job.shut(Gate::HandOver).contains(&warm));
}

/// Adoptions of before works were named read as they did.
#[test]
fn an_older_adoption_reads_as_before() {
    let mut job = Job::new();
    job.one("rod", Kind::Part, System::Steering, Zone::Below);
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work: vec![StatedWork {
            item: ItemId::new("rod"),
            to: State::Off,
            work: WorkIs::Alignment,
            words: None,
            until: BEFORE_HAND_OVER,
            named: None,
            sort: None,
        }],
    })
    .unwrap();
    job.out_and_back("rod", State::Off, State::On);
    let owed = || "owed:Alignment:rod".to_owned();
    assert!(job.shut(Gate::HandOver).contains(&owed()));
    job.done(WorkIs::Alignment, Some("rod"));
    assert!(!job.shut(Gate::HandOver).contains(&owed()));
}
