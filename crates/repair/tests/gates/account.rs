//! Rules 1 to 3: what stands, what is home, what may be missing.

use crate::hold;
use crate::support::*;
use crate::things::*;
use repair::*;

#[test]
fn rule_1_what_nobody_has_seen_past_stands() {
    hold(&[
        (
            "two people apart disagree: open while either is not home",
            |job| {
                screws(job);
                job.moved("screws", &[], State::Out);
                let before = job.seen("screws");
                for (who, state) in [("ana", State::Tight), ("rui", State::Out)] {
                    job.by(who).record(Fact::Moved {
                        stage: None,
                        moves: vec![a_move("screws", &[1], state, &before)],
                    });
                }
                job.moved("screws", &[2, 3, 4, 5, 6], State::Tight);
            },
            Gate::Road,
            &["open:screws:1=Tight+Out"],
        ),
        (
            "somebody looked",
            |job| {
                screws(job);
                job.moved("screws", &[], State::Tight);
                job.record(Fact::Moved {
                    stage: None,
                    moves: vec![a_move("screws", &[1], State::Out, &[])],
                });
                job.looked("screws", &[1], State::Tight);
            },
            Gate::Road,
            &[],
        ),
        (
            "two people apart agree",
            |job| {
                screws(job);
                for who in ["ana", "rui"] {
                    job.by(who).record(Fact::Moved {
                        stage: None,
                        moves: vec![a_move("screws", &[1], State::Tight, &[])],
                    });
                }
            },
            Gate::Road,
            &[],
        ),
        (
            "taken back, it had not been",
            |job| {
                screws(job);
                let slip = job.moved("screws", &[1], State::Cracked);
                job.record(Fact::Undo {
                    command: slip,
                    part: None,
                });
            },
            Gate::Lower,
            &[],
        ),
        (
            "tightened before the belt was on: torque again",
            |job| {
                pulley(job);
                job.moved("belt", &[], State::Off);
                job.out_and_back("pulley", State::Out, State::Tight);
                job.moved("belt", &[], State::On);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &["owed:TorqueAgain:pulley"],
        ),
        (
            "one bolt torqued again does not answer for three",
            |job| {
                pulley(job);
                job.moved("belt", &[], State::Off);
                job.out_and_back("pulley", State::Out, State::Tight);
                job.moved("belt", &[], State::On);
                job.moved("pulley", &[1], State::Tight);
                job.looked("pulley", &[], State::Tight);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &["owed:TorqueAgain:pulley"],
        ),
        (
            "torqued again with the belt on",
            |job| {
                pulley(job);
                job.moved("belt", &[], State::Off);
                job.out_and_back("pulley", State::Out, State::Tight);
                job.moved("belt", &[], State::On);
                job.moved("pulley", &[], State::Tight);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &[],
        ),
        (
            "tightened on a washer that nobody touched: it stands where it belongs",
            |job| tightened_by(job, "washer", State::On),
            Gate::Road,
            &[],
        ),
        (
            "tightened without the holder that nobody put in: torque again",
            |job| tightened_by(job, "holder", State::Inside),
            Gate::Road,
            &["owed:TorqueAgain:screw"],
        ),
        (
            "the belt on and its pulley tightened after it, in one stage",
            |job| {
                pulley(job);
                job.stage(&[("belt", State::Off), ("pulley", State::Out)]);
                job.stage(&[("belt", State::On), ("pulley", State::Tight)]);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &[],
        ),
        (
            "in one stage the other way round: torque again",
            |job| {
                pulley(job);
                job.stage(&[("belt", State::Off), ("pulley", State::Out)]);
                job.stage(&[("pulley", State::Tight), ("belt", State::On)]);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &["owed:TorqueAgain:pulley"],
        ),
        (
            "cracked with the belt off: advice, no debt",
            |job| {
                pulley(job);
                job.moved("belt", &[], State::Off);
                job.moved("pulley", &[], State::Cracked);
                job.moved("pulley", &[], State::Out);
                job.moved("belt", &[], State::On);
                job.moved("pulley", &[], State::Tight);
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["belt", "pulley"]);
            },
            Gate::Road,
            &[],
        ),
        (
            "one move of a stage taken back, the other stands",
            |job| {
                screws(job);
                job.one("airbox", Kind::Part, System::Intake, Zone::Above);
                let stage = job.stage(&[("screws", State::Out), ("airbox", State::Off)]);
                job.record(Fact::Undo {
                    command: stage,
                    part: Some(0),
                });
            },
            Gate::Road,
            &["open:airbox:1=Off"],
        ),
        (
            "one shield under two names: off by one, on by the other",
            |job| {
                job.one("shield", Kind::Cover, System::Exhaust, Zone::Below);
                job.one("the tin", Kind::Cover, System::Exhaust, Zone::Below);
                job.moved("shield", &[], State::Off);
                job.record(Fact::SameAs {
                    item: ItemId::new("shield"),
                    also: ItemId::new("the tin"),
                });
                job.moved("the tin", &[], State::On);
            },
            Gate::Road,
            &[],
        ),
    ]);
}

#[test]
fn rule_2_home_is_what_was_found() {
    hold(&[
        (
            "a clip missing at the walk-round is not ours to find",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.found("screws", &[3], State::Out);
                job.moved("screws", &[1, 2, 4, 5, 6], State::Out);
                job.moved("screws", &[1, 2, 4, 5, 6], State::On);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the same clip, put in after all",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.found("screws", &[3], State::Out);
                job.moved("screws", &[3], State::On);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a clip found missing by someone who had not seen it taken out",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.moved("screws", &[3], State::Out);
                job.by("rui").found("screws", &[3], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:screws:3=Out"],
        ),
        (
            "found missing after the work began is no walk-round",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.out_and_back("screws", State::Out, State::On);
                let change = job.change("screws", &[3], State::Out);
                job.record(Fact::Found {
                    moves: vec![change],
                });
                job.road_tested();
            },
            Gate::HandOver,
            &["open:screws:3=Out"],
        ),
        (
            "found missing by a slip, put right at once, then taken out by us",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.found("screws", &[3], State::Out);
                let right = job.change("screws", &[3], State::On);
                job.record(Fact::Found { moves: vec![right] });
                job.moved("screws", &[3], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:screws:3=Out"],
        ),
        (
            "two walk-rounds that disagree leave it as its kind belongs",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.found("screws", &[3], State::Out);
                job.by("rui").found("screws", &[3], State::On);
            },
            Gate::HandOver,
            &["open:screws:3=On+Out"],
        ),
        (
            "a wheel nut missing at the walk-round",
            |job| {
                nuts(job);
                job.found("nuts", &[4], State::Out);
            },
            Gate::HandOver,
            &["open:nuts:4=Out"],
        ),
        (
            "a wheel nut missing stands already at lower",
            |job| {
                nuts(job);
                job.found("nuts", &[4], State::Out);
            },
            Gate::Lower,
            &["open:nuts:4=Out"],
        ),
        (
            "a wheel nut missing, signed for, still",
            |job| {
                nuts(job);
                job.found("nuts", &[4], State::Out);
                declined(job, "nuts", &[4], true);
            },
            Gate::HandOver,
            &["open:nuts:4=Out"],
        ),
        (
            "a wheel nut missing and the nuts counted as four",
            |job| {
                nuts(job);
                job.found("nuts", &[5], State::Out);
                count(job, "nuts", 4);
            },
            Gate::HandOver,
            &["open:nuts:5=Out"],
        ),
        (
            "an airbag plug found apart and refused, signed",
            |job| {
                job.one("bag", Kind::Connector, System::Restraints, Zone::Cabin);
                job.found("bag", &[1], State::Unplugged);
                declined(job, "bag", &[], true);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the same, not signed",
            |job| {
                job.one("bag", Kind::Connector, System::Restraints, Zone::Cabin);
                job.found("bag", &[1], State::Unplugged);
                declined(job, "bag", &[], false);
            },
            Gate::HandOver,
            &["open:bag:1=Unplugged"],
        ),
        (
            "refused whole, then refused for one piece: still refused whole",
            |job| {
                screws(job);
                job.moved("screws", &[1, 2], State::Out);
                declined(job, "screws", &[], true);
                declined(job, "screws", &[1], true);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "six clips counted as five: the sixth, moved as shown, never was",
            |job| {
                job.group("screws", 6, Kind::Clips, System::Body, Zone::Above);
                job.moved("screws", &[], State::Out);
                count(job, "screws", 5);
                job.moved("screws", &[1, 2, 3, 4, 5], State::On);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a brake bolt missing at the walk-round",
            |job| {
                job.group("bolts", 2, Kind::Fasteners, System::Brakes, Zone::WheelWell);
                job.found("bolts", &[2], State::Out);
                declined(job, "bolts", &[], true);
            },
            Gate::Road,
            &["open:bolts:2=Out"],
        ),
        (
            "the belt found off: its home is on",
            |job| {
                belt(job);
                job.found("belt", &[1], State::Off);
            },
            Gate::HandOver,
            &["open:belt:1=Off"],
        ),
        (
            "a rag found inside at the walk-round is not ours",
            |job| {
                job.put_in("rag", PutIn::Rag, System::Engine, Zone::Above);
                job.found("rag", &[1], State::Inside);
            },
            Gate::HandOver,
            &[],
        ),
    ]);
}

fn declined(job: &mut Job, id: &str, at: &[u16], signed: bool) {
    job.record(Fact::Declined {
        entries: vec![],
        snags: vec![],
        items: vec![ItemId::new(id)],
        at: at.to_vec(),
        words: words(3),
        signature: signed.then(|| File {
            words: words(4),
            media: Token::new("image/png").unwrap(),
        }),
    });
}

fn count(job: &mut Job, id: &str, pieces: u16) {
    job.record(Fact::CountCorrected {
        item: ItemId::new(id),
        pieces: item(id, Kind::Clips, System::Body, Zone::Above, pieces).pieces,
        after: vec![],
    });
}

#[test]
fn rule_3_up_to_n_clips_may_be_missing() {
    hold(&[
        (
            "two of eight, where it may be",
            |job| {
                clips(job);
                job.moved("clips", &[], State::Out);
                job.moved("clips", &[1, 2, 3, 4, 5, 6], State::On);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "three of eight",
            |job| {
                clips(job);
                job.moved("clips", &[6, 7, 8], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:clips:6=Out,7=Out,8=Out"],
        ),
        (
            "one of eight, at the front",
            |job| {
                clips(job);
                job.moved("clips", &[2], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:clips:2=Out"],
        ),
        (
            "two missing before, and one more",
            |job| {
                clips(job);
                job.found("clips", &[7, 8], State::Out);
                job.moved("clips", &[6], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:clips:6=Out"],
        ),
        (
            "two of five wheel nuts, whatever a map says",
            |job| {
                job.declare(Item {
                    may_miss: Some(MayMiss {
                        up_to: 2,
                        never_at: vec![],
                    }),
                    ..item("nuts", Kind::Fasteners, System::Wheels, Zone::WheelWell, 5)
                });
                job.moved("nuts", &[4, 5], State::Out);
            },
            Gate::Lower,
            &["open:nuts:4=Out,5=Out"],
        ),
        (
            "one of six cover screws, where one may be",
            |job| {
                job.declare(Item {
                    may_miss: Some(MayMiss {
                        up_to: 1,
                        never_at: vec![],
                    }),
                    ..item("screws", Kind::Fasteners, System::Body, Zone::Above, 6)
                });
                job.moved("screws", &[5], State::Out);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a cover screw on by hand is not missing, it is loose",
            |job| {
                job.declare(Item {
                    may_miss: Some(MayMiss {
                        up_to: 1,
                        never_at: vec![],
                    }),
                    ..item("screws", Kind::Fasteners, System::Body, Zone::Above, 6)
                });
                job.moved("screws", &[5], LOOSE);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:screws:5=Loose0"],
        ),
        (
            "two clips missing do not hold the tray up",
            |job| {
                clips(job);
                job.moved("clips", &[7, 8], State::Out);
            },
            Gate::Lower,
            &[],
        ),
    ]);
    let mut job = Job::new();
    clips(&mut job);
    job.moved("clips", &[7, 8], State::Out);
    let noted = job.account().closed_short.clone();
    assert_eq!(
        noted,
        [(ItemId::new("clips"), 2)].into(),
        "it closes with a note"
    );
}
