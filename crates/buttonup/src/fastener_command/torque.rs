//! `buttonup torque`.

use super::{Answer, Wrong, answered, members, number, range, reads_us, written_in, wrong};
use clap::Args;
use fastener::torque::Fate;
use fastener::wrench::Reads;
use measure::{Customary, Range};
use serde_json::{Map, Value, json};
use shop::calculators::threads::ask::{
    self, AdapterQuestion, LeverQuestion, Shares, TorqueQuestion,
};
use shop::calculators::{both_mm, both_n, both_nm};

/// A joint with a clamp or a torque; or a torque wrench with an adapter; or a lever.
#[derive(Debug, Args)]
pub struct Torque {
    #[arg(long)]
    thread: Option<String>,
    /// Clamp to work the torque out for.
    #[arg(long, conflicts_with = "torque")]
    clamp: Option<String>,
    /// Torque to work the clamp out for.
    #[arg(long)]
    torque: Option<String>,
    /// Coefficient of friction, in the thread and under the head.
    #[arg(long)]
    friction: Option<String>,
    /// Or the state of the threads: "zinc dry", oiled, "stainless with paste".
    #[arg(long)]
    condition: Option<String>,
    /// hex, flange, "socket cap" ...; the plain hexagon if left out.
    #[arg(long)]
    head: Option<String>,
    /// Diameter of the face under the head.
    #[arg(long)]
    face: Option<String>,
    /// close, medium, loose, or a diameter.
    #[arg(long)]
    hole: Option<String>,
    /// motosh, iso16047 or short.
    #[arg(long)]
    form: Option<String>,
    /// K of the short form.
    #[arg(long)]
    nut_factor: Option<String>,
    /// Strength class, for the share of the proof load.
    #[arg(long)]
    class: Option<String>,
    /// Torque wanted at the bolt.
    #[arg(long)]
    want: Option<String>,
    /// Length of the wrench, from its drive to the middle of the grip.
    #[arg(long)]
    wrench: Option<String>,
    /// Length of the adapter, from the drive to the bolt.
    #[arg(long)]
    adapter: Option<String>,
    /// Angle of the adapter: 0deg straight ahead, 90deg across.
    #[arg(long)]
    angle: Option<String>,
    /// Length of a second wrench hooked into the first.
    #[arg(long)]
    second: Option<String>,
    /// By how much the two overlap.
    #[arg(long)]
    overlap: Option<String>,
    /// Greatest torque of the torque wrench, to tell whether it can be believed.
    #[arg(long)]
    range: Option<String>,
}

/// Works out what was asked.
pub fn torque(asked: &Torque) -> Result<Answer, Wrong> {
    let answer = answer(asked)?;
    match &asked.range {
        Some(range) => with_range(answer, range),
        None => Ok(answer),
    }
}

/// Adds whether a torque wrench of that range can be believed at the torque found.
fn with_range(mut answer: Answer, range: &str) -> Result<Answer, Wrong> {
    let set_to_nm = ["set_to_nm", "torque_nm"]
        .iter()
        .find_map(|field| answer.json[*field].as_f64())
        .ok_or_else(|| {
            Wrong::input(
                "--range",
                "no torque is set here",
                "leave it out, or ask for a torque or a setting",
            )
        })?;
    let words = match ask::wrench_reads(range, set_to_nm).map_err(wrong)? {
        Reads::Well => "the wrench can be believed at that torque".to_owned(),
        Reads::TooLow { least_nm } => format!(
            "below a fifth of its range the wrench says nothing: take a smaller one, this one \
             reads from {}",
            both_nm(least_nm, written_in(range))
        ),
        Reads::TooHigh { most_nm } => {
            format!(
                "beyond the wrench: it ends at {}",
                both_nm(most_nm, written_in(range))
            )
        }
    };
    answer.text = format!("{}\n{words}", answer.text);
    answer.json["wrench"] = json!(words);
    Ok(answer)
}

fn answer(asked: &Torque) -> Result<Answer, Wrong> {
    match (&asked.clamp, &asked.torque, &asked.want, &asked.wrench) {
        (Some(clamp), _, _, _) => for_clamp(&question(asked)?, clamp),
        (_, Some(torque), _, _) => for_torque(&question(asked)?, torque),
        (_, _, Some(want), Some(wrench)) => match &asked.adapter {
            Some(adapter) => with_adapter(&AdapterQuestion {
                want,
                wrench,
                adapter,
                angle: asked.angle.as_deref(),
            }),
            None => at_lever(&LeverQuestion {
                want,
                wrench,
                second: asked.second.as_deref(),
                overlap: asked.overlap.as_deref(),
            }),
        },
        _ => Err(Wrong::input(
            "torque",
            "nothing is asked",
            "give --thread with --clamp or --torque, or --want with --wrench and perhaps --adapter",
        )),
    }
}

fn question(asked: &Torque) -> Result<TorqueQuestion<'_>, Wrong> {
    let thread = asked.thread.as_deref().ok_or_else(|| {
        Wrong::input(
            "--thread",
            "the thread is missing",
            "add one such as --thread M8x1.25",
        )
    })?;
    Ok(TorqueQuestion {
        thread,
        class: asked.class.as_deref(),
        friction: asked.friction.as_deref(),
        condition: asked.condition.as_deref(),
        head: asked.head.as_deref(),
        face: asked.face.as_deref(),
        hole: asked.hole.as_deref(),
        form: asked.form.as_deref(),
        nut_factor: asked.nut_factor.as_deref(),
    })
}

fn for_clamp(question: &TorqueQuestion, clamp: &str) -> Result<Answer, Wrong> {
    let found = ask::torque(question, clamp).map_err(wrong)?;
    let terms = found.terms;
    let mut json = members(json!({
        "thread": found.thread.name(),
        "clamp_n": number(found.clamp_n),
        "torque_nm": number(terms.total_nm),
        "pitch_nm": number(terms.pitch_nm),
        "thread_nm": number(terms.thread_nm),
        "head_nm": number(terms.head_nm),
        "nut_factor": number(terms.nut_factor),
        "torque_low_nm": number(found.torque_nm.low()),
        "torque_high_nm": number(found.torque_nm.high()),
        "notes": found.notes,
    }));
    json.extend(shares(&found.strength));
    let us = reads_us([clamp].into_iter(), &found.thread);
    let mut lines = verdict(&found.strength);
    lines.push(format!(
        "{}: {} for {} (pitch {:.2}, thread {:.2}, head {:.2} N·m; K {:.3})",
        found.thread.name(),
        both_nm(terms.total_nm, us),
        both_n(found.clamp_n, us),
        terms.pitch_nm,
        terms.thread_nm,
        terms.head_nm,
        terms.nut_factor
    ));
    if found.torque_nm.low() < found.torque_nm.high() {
        lines.push(format!(
            "  {} to {} over the range of friction",
            both_nm(found.torque_nm.low(), us),
            both_nm(found.torque_nm.high(), us)
        ));
    }
    lines.extend(share_lines(&found.strength, us));
    lines.extend(found.notes.iter().map(|note| format!("  {note}")));
    Ok(answered(lines, json, Some(&found.working)))
}

/// One figure where both ends are the same.
fn from_to(range: Range<f64>, us: Customary) -> String {
    let (low, high) = (both_nm(range.low(), us), both_nm(range.high(), us));
    match low == high {
        true => low,
        false => format!("{low} to {high}"),
    }
}

fn for_torque(question: &TorqueQuestion, torque: &str) -> Result<Answer, Wrong> {
    let found = ask::clamp(question, torque).map_err(wrong)?;
    // A broken bolt clamps nothing.
    let clamp_n = Some(found.clamp_n).filter(|_| found.strength.fate != Some(Fate::Breaks));
    let mut json = members(json!({
        "thread": found.thread.name(),
        "torque_nm": number(found.torque_nm),
        "clamp_n": number(clamp_n.map(Range::mid)),
        "clamp_low_n": number(clamp_n.map(Range::low)),
        "clamp_high_n": number(clamp_n.map(Range::high)),
        "shares_of_proof": range(found.shares_of_proof),
        "notes": found.notes,
    }));
    json.extend(shares(&found.strength));
    let us = reads_us([torque].into_iter(), &found.thread);
    let mut lines = verdict(&found.strength);
    lines.extend(clamp_n.map(|clamp| {
        format!(
            "{}: {} at {} ({} to {})",
            found.thread.name(),
            both_n(clamp.mid(), us),
            both_nm(found.torque_nm, us),
            both_n(clamp.low(), us),
            both_n(clamp.high(), us)
        )
    }));
    lines.extend(share_lines(&found.strength, us));
    lines.extend(found.notes.iter().map(|note| format!("  {note}")));
    // A clamp that no bolt bears needs no working.
    let working = clamp_n.map(|_| &found.working);
    Ok(answered(lines, json, working))
}

fn with_adapter(question: &AdapterQuestion) -> Result<Answer, Wrong> {
    let found = ask::adapter(question).map_err(wrong)?;
    let json = members(json!({ "set_to_nm": number(found.set_to_nm) }));
    let lines = vec![format!(
        "set the wrench to {}",
        both_nm(found.set_to_nm, written_in(question.want))
    )];
    Ok(answered(lines, json, Some(&found.working)))
}

fn at_lever(question: &LeverQuestion) -> Result<Answer, Wrong> {
    let found = ask::lever(question).map_err(wrong)?;
    let json = members(json!({
        "lever_mm": number(found.lever_mm),
        "hand_force_n": number(found.hand_force_n),
    }));
    let us = written_in(question.want);
    let lines = vec![format!(
        "{} by hand at {}",
        both_n(found.hand_force_n, us),
        both_mm(found.lever_mm, us)
    )];
    Ok(answered(lines, json, None))
}

fn shares(strength: &Shares) -> Map<String, Value> {
    members(json!({
        "class": strength.class.map(fastener::Class::name),
        "share_of_proof": number(strength.share_of_proof),
        "yield_torque_nm": range(strength.yield_torque_nm),
        "breaking_torque_nm": range(strength.breaking_torque_nm),
        "fate": strength.fate.map(Fate::code),
        "verdict": strength.verdict,
    }))
}

/// What becomes of the bolt, before any figure.
fn verdict(strength: &Shares) -> Vec<String> {
    strength
        .verdict
        .iter()
        .map(|verdict| format!("! {verdict}"))
        .collect()
}

fn share_lines(strength: &Shares, us: Customary) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(share) = strength.share_of_proof {
        lines.push(format!("  {:.0} % of the proof load", 100.0 * share));
    }
    if let Some(torque) = strength.yield_torque_nm {
        lines.push(format!(
            "  begins to yield at {} or more",
            both_nm(torque.low(), us)
        ));
    }
    if let Some(torque) = strength.breaking_torque_nm {
        lines.push(format!("  breaks at {}", from_to(torque, us)));
    }
    lines
}
