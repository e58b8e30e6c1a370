//! Rules 4 and 10: what hand-over adds, and pieces that are not the old ones.

use crate::hold;
use crate::support::*;
use crate::things::*;
use repair::*;

#[test]
fn rule_4_hand_over_adds_parts_old_parts_and_work_sent_out() {
    hold(&[
        (
            "trim off",
            |job| {
                job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
                job.moved("trim", &[], State::Off);
                job.road_tested();
            },
            Gate::HandOver,
            &["open:trim:1=Off"],
        ),
        (
            "a part ordered and never seen again",
            |job| {
                part_needed(job, false);
                part_step(job, PartStep::Ordered, 2);
            },
            Gate::HandOver,
            &["part:hose"],
        ),
        (
            "one fitted, one lies about",
            |job| {
                part_needed(job, false);
                part_step(job, PartStep::Received, 2);
                part_step(job, PartStep::Fitted, 1);
            },
            Gate::HandOver,
            &["part:hose"],
        ),
        (
            "one fitted, one returned",
            |job| {
                part_needed(job, false);
                part_step(job, PartStep::Received, 2);
                part_step(job, PartStep::Fitted, 1);
                part_step(job, PartStep::Returned, 1);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "one stocked, one cancelled",
            |job| {
                part_needed(job, false);
                part_step(job, PartStep::Stocked, 1);
                part_step(job, PartStep::Cancelled, 1);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "fitted, and nobody knows where the old one is",
            |job| {
                part_needed(job, true);
                part_step(job, PartStep::Fitted, 2);
            },
            Gate::HandOver,
            &["old-part:hose"],
        ),
        (
            "fitted, the old one sent back as a core",
            |job| {
                part_needed(job, true);
                part_step(job, PartStep::Fitted, 2);
                job.record(Fact::OldPart {
                    part: Some(PartId::new("hose")),
                    item: None,
                    fate: OldPartFate::Core,
                });
            },
            Gate::HandOver,
            &[],
        ),
        (
            "never fitted, so there is no old one",
            |job| {
                part_needed(job, true);
                part_step(job, PartStep::Returned, 2);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the housing is at the machine shop",
            |job| sublet_out(job),
            Gate::HandOver,
            &["sublet:face"],
        ),
        (
            "the housing came back",
            |job| {
                sublet_out(job);
                job.record(Fact::SubletBack {
                    sublet: SubletId::new("face"),
                    words: None,
                });
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a snag on the door stands at hand-over",
            |job| {
                job.one("door", Kind::Part, System::Body, Zone::Outside);
                job.snag("s", "door", SnagIs::Other, vec![]);
            },
            Gate::HandOver,
            &["snag:s"],
        ),
        (
            "an old seal put back",
            |job| {
                seal(job);
                job.out_and_back("gasket", State::Off, State::On);
                job.proved("leak", ProofIs::LeakTest, Outcome::Held);
                job.road_tested();
            },
            Gate::HandOver,
            // The proofs were made with the old seal in, so they cover nothing.
            &[
                "open:gasket:1=On",
                "proof-missing:LeakTest",
                "proof-missing:RoadTest",
            ],
        ),
        (
            "a new seal",
            |job| {
                seal(job);
                job.moved("gasket", &[], State::Off);
                job.moved_as("gasket", State::On, PieceIs::New);
                job.proved("leak", ProofIs::LeakTest, Outcome::Held);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
        (
            "rule 10: another kind of seal is home too, and becomes a standing difference",
            |job| {
                seal(job);
                job.moved("gasket", &[], State::Off);
                job.moved_as("gasket", State::On, PieceIs::Substitute);
                job.proved("leak", ProofIs::LeakTest, Outcome::Held);
                job.road_tested();
            },
            Gate::HandOver,
            &[],
        ),
    ]);
}

fn seal(job: &mut Job) {
    job.declare(Item {
        spent: true,
        ..item("gasket", Kind::Seal, System::Cooling, Zone::Above, 1)
    });
}

fn sublet_out(job: &mut Job) {
    job.record(Fact::SubletOut {
        sublet: SubletId::new("face"),
        line: None,
        items: vec![],
        what: words(5),
        to: words(6),
        due: None,
        cost: None,
    });
}
