//! One way back in words.

use super::told::{
    Figure, OtherTold, PartTold, SpreadTold, StepTold, StubTold, WayTold, WorkingTold, joint,
};
use crate::phrases::mending as say;
use crate::show::{both_kn, both_mm, both_nm};
use crate::threads::ask::RepairAnswer;
use fastener::extract::ExtractionWay;
use fastener::holds::Holds;
use fastener::repair::{RepairOption, Step, Way};
use fastener::section::after;
use measure::{Customary, Range};

/// What all ways of one hole share.
pub(super) struct Shared<'a> {
    pub answer: &'a RepairAnswer,
    pub ladder: Option<&'a StubTold>,
    /// Minutes for the stub, where there is one.
    pub extraction: Option<Range<f64>>,
    pub customary: Customary,
}

/// A way: how it is resolved and what difference it leaves, as stored.
fn codes(way: Way) -> (&'static str, Option<&'static str>) {
    match way {
        Way::ChaseThread => ("thread-chased", None),
        Way::LongerBolt => ("longer-bolt", Some("longer")),
        Way::WireInsert => ("wire-insert", Some("insert")),
        Way::SolidBushing => ("bushing", Some("insert")),
        Way::Oversize => ("oversize", Some("larger")),
        Way::NewPart | Way::MakersPart => ("new-part", None),
        Way::PlugBushing => ("bushing", Some("insert")),
        Way::OversizePlug | Way::NextPipeSize => ("oversize", Some("larger")),
        Way::BoltAndNut | Way::WeldedBung => ("other", Some("other")),
        Way::MakersRepair => ("other", None),
    }
}

pub(super) fn told(option: &RepairOption, shared: &Shared<'_>) -> WayTold {
    let (code, difference) = codes(option.way);
    let hole = &shared.answer.hole;
    let customary = shared.customary;
    let torque = option.torque_nm.map(|nm| {
        let both = both_nm(nm, customary);
        let (first, second) = both.split_once(" (").unwrap_or((&both, ""));
        (first.to_owned(), second.trim_end_matches(')').to_owned())
    });
    let parts = parts(option, shared);
    WayTold {
        code: code.to_owned(),
        name: option.way.called(hole.holds).to_owned(),
        rank: option.rank,
        holds: option.holds,
        reasons: option.reasons.iter().map(ToString::to_string).collect(),
        why_here: option.why_here.clone(),
        bolt: option.bolt.clone(),
        size_now: size_now(option),
        difference: difference.map(str::to_owned),
        torque,
        torque_written: option.torque_nm.map(|nm| format!("{} N·m", trimmed(nm))),
        torque_as_before: option.torque_nm.is_some() && option.torque_nm == hole.torque_nm,
        figures: figures(option, shared),
        steps: steps(option, shared, &parts),
        parts,
        minutes: minutes(option, shared),
        cost: option.cost.map(|cost| spread(cost, 2)),
        notes: option.notes.clone(),
        next_repair: option.next_repair.to_owned(),
        joint: joint(&after(hole, option), &option.bolt, customary),
        working: WorkingTold::of(&option.working),
    }
}

/// Another way in one line.
pub(super) fn other(option: &RepairOption, holds: Option<Holds>) -> OtherTold {
    let reasons: Vec<String> = option.reasons.iter().map(ToString::to_string).collect();
    let mut why = vec![match option.other_hole_mm {
        Some(hole) => say::bolt_and_larger_hole(&option.bolt, trimmed(hole)),
        None => say::bolt_of(&option.bolt),
    }];
    why.extend(option.torque_nm.map(|nm| match option.other_hole_mm {
        Some(_) => say::about_for_the_same_clamp(trimmed(nm)),
        None => format!("{} N·m", trimmed(nm)),
    }));
    OtherTold {
        code: codes(option.way).0.to_owned(),
        name: option.way.called(holds).to_owned(),
        rank: option.rank,
        holds: option.holds,
        reason: if option.holds {
            why.join(", ")
        } else {
            reasons.join("; ")
        },
    }
}

fn size_now(option: &RepairOption) -> Option<String> {
    let thread = option.bolt_thread.name();
    match option.way {
        Way::ChaseThread | Way::NewPart | Way::MakersPart | Way::MakersRepair => None,
        Way::BoltAndNut => Some(say::bolt_through(thread)),
        Way::PlugBushing => Some(say::in_a_bushing(thread)),
        Way::OversizePlug => Some(say::oversize_plug().to_owned()),
        Way::WeldedBung => Some(say::in_a_bung(thread)),
        Way::NextPipeSize => Some(say::reducer_to(thread)),
        Way::WireInsert => Some(say::insert_and_bolt(thread, &option.bolt)),
        Way::SolidBushing => Some(say::bushing_and_bolt(thread, &option.bolt)),
        Way::LongerBolt | Way::Oversize => Some(say::bolt_of(&option.bolt)),
    }
}

fn figures(option: &RepairOption, shared: &Shared<'_>) -> Vec<Figure> {
    let mut out = Vec::new();
    let mut add = |label: &str, value: Option<String>| {
        if let Some(value) = value {
            out.push(Figure {
                label: label.to_owned(),
                value,
            });
        }
    };
    let mm = |value: f64| both_mm(value, shared.customary);
    add(say::bolt(), Some(option.bolt.clone()));
    add(
        say::drill(),
        option.drill.as_ref().map(|drill| drill.name.clone()),
    );
    add(say::tap(), option.tap.clone());
    add(say::insert(), option.insert_mm.map(mm));
    add(say::other_parts_hole(), option.other_hole_mm.map(mm));
    add(
        say::clamp_low_against_the_original_low(),
        option.clamp_ratio.map(|ratio| format!("{ratio:.2}")),
    );
    add(
        say::clamp(),
        option
            .clamp_n
            .map(|clamp| both_kn(clamp.low(), clamp.high(), shared.customary)),
    );
    add(
        say::thread_strips_at(),
        option
            .strip_margin
            .map(|margin| say::times_the_greatest_clamp(format!("{margin:.1}"))),
    );
    add(say::wall_left(), option.wall_left_mm.map(mm));
    add(
        say::drill_off_centre_at_most(),
        option.centre_tolerance_mm.map(mm),
    );
    add(say::next_time(), Some(option.next_repair.to_owned()));
    out
}

/// The stub's own steps, then those of the way; tightening comes with the joint.
fn steps(option: &RepairOption, shared: &Shared<'_>, parts: &[PartTold]) -> Vec<StepTold> {
    let mut out = Vec::new();
    let drilled = option.drill.is_some();
    if let Some(ladder) = shared.ladder.filter(|_| option.holds) {
        out.extend(stub_steps(ladder));
    }
    // The stub was centred already.
    let skip = usize::from(drilled && !out.is_empty());
    out.extend(
        option
            .steps
            .iter()
            .filter(|step| !step.tightens)
            .skip(skip)
            .map(|step| step_told(step, parts)),
    );
    out
}

fn step_told(step: &Step, parts: &[PartTold]) -> StepTold {
    StepTold {
        what: step.what.clone(),
        caution: step.caution.map(str::to_owned),
        puts_in: step.puts_in.iter().map(|word| put_in(word)).collect(),
        takes_out: step.takes_out.iter().map(|word| put_in(word)).collect(),
        fits: (step.fits && !parts.is_empty()).then_some(0),
    }
}

fn stub_steps(ladder: &StubTold) -> Vec<StepTold> {
    let rung = |way: ExtractionWay| {
        ladder
            .rungs
            .iter()
            .find(|rung| rung.name == way.name() && rung.open)
    };
    // Against the stub's own hand.
    let against = [ExtractionWay::LeftHandDrill, ExtractionWay::RightHandDrill];
    let found = against.into_iter().find_map(|way| Some((way, rung(way)?)));
    let Some((way, drills)) = found else {
        return Vec::new();
    };
    let name = way.name();
    let turning = if way == ExtractionWay::LeftHandDrill {
        say::in_reverse()
    } else {
        say::running_forward()
    };
    let sizes: Vec<&str> = drills
        .drills
        .iter()
        .filter_map(|drill| drill.split(':').next())
        .collect();
    let step = |what: String, puts_in: &[&str]| StepTold {
        what,
        caution: None,
        puts_in: puts_in.iter().map(|word| (*word).to_owned()).collect(),
        takes_out: Vec::new(),
        fits: None,
    };
    vec![
        step(say::rag_in_the_opening_centre_the().to_owned(), &["rag"]),
        StepTold {
            caution: Some(say::eye_protection_stop_the_drill_at().to_owned()),
            ..step(
                say::drills_that_walk_it_out(name, sizes.join(", "), turning),
                &["chips"],
            )
        },
    ]
}

/// What is put in, as stored.
fn put_in(word: &str) -> String {
    match word {
        "insert tang" => "tang".to_owned(),
        other => other.to_owned(),
    }
}

/// The insert or bushing first, at the shop's figure, then a bolt where the old one is gone.
fn parts(option: &RepairOption, shared: &Shared<'_>) -> Vec<PartTold> {
    let price = option.cost.map(|cost| format!("{:.2}", cost.mid()));
    let thread = option.bolt_thread.name();
    let length = option.insert_mm.map(trimmed).unwrap_or_default();
    let mut out = Vec::new();
    let mut need = |label: String| {
        out.push(PartTold { label, price: None });
    };
    match option.way {
        Way::WireInsert => need(say::wire_insert(thread, length)),
        Way::SolidBushing => need(say::solid_bushing(thread, length)),
        Way::PlugBushing => need(say::bushing_for(thread)),
        Way::OversizePlug => need(say::oversize_plug_and_its_washer().to_owned()),
        Way::WeldedBung => need(say::bung(thread)),
        Way::NextPipeSize => need(say::reducer_to(thread)),
        Way::MakersPart => need(say::the_makers_part().to_owned()),
        Way::NewPart => need(option.way.called(shared.answer.hole.holds).to_owned()),
        Way::BoltAndNut => need(say::nut_and_washer(thread)),
        Way::ChaseThread | Way::LongerBolt | Way::Oversize | Way::MakersRepair => {}
    }
    let new_bolt = matches!(
        option.way,
        Way::LongerBolt | Way::Oversize | Way::BoltAndNut
    );
    let by_maker = matches!(
        option.way,
        Way::NewPart | Way::MakersPart | Way::MakersRepair | Way::OversizePlug
    );
    if new_bolt || (shared.ladder.is_some() && !by_maker) {
        let class = shared.answer.hole.class.map(fastener::Class::name);
        need(
            say::new_bolt(&option.bolt, class.unwrap_or_default())
                .trim()
                .to_owned(),
        );
    }
    if let Some(first) = out.first_mut() {
        first.price = price;
    }
    out
}

fn minutes(option: &RepairOption, shared: &Shared<'_>) -> Option<SpreadTold> {
    let own = option.minutes?;
    let total = match shared.extraction {
        Some(stub) => Range::new(
            own.low() + stub.low(),
            own.mid() + stub.mid(),
            own.high() + stub.high(),
        )
        .ok()?,
        None => own,
    };
    Some(spread(total, 0))
}

fn spread(range: Range<f64>, decimals: usize) -> SpreadTold {
    let text = |value: f64| format!("{value:.decimals$}");
    SpreadTold {
        low: text(range.low()),
        mid: text(range.mid()),
        high: text(range.high()),
    }
}

/// At most one decimal, none where it is nought.
fn trimmed(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}
