//! Mixing, and litres out and in.

use super::properties::strength_json;
use super::read::{self, Strength};
use super::{answered, refused};
use crate::answer::{Answer, Wrong};
use clap::Args;
use coolant::{
    Addition, Concentrate, Glycol, Inhibitor, Measure, MixPlan, MixQuestion, Mixture, Shelf, Stock,
};
use serde_json::{Value, json};

/// Mixing.
#[derive(Debug, Args)]
pub struct Mix {
    /// Which glycol.
    #[arg(long, default_value = "ethylene", value_parser = ["ethylene", "propylene"])]
    glycol: String,
    /// All that the system holds.
    #[arg(long)]
    capacity: String,
    /// What is in after draining; a drain cock gives half to two thirds.
    #[arg(long)]
    left: String,
    /// The strength of what is in.
    #[arg(long)]
    now: String,
    /// The wanted strength.
    #[arg(long)]
    want: String,
    /// What the percentages are of, by volume.
    #[arg(long, value_parser = ["glycol", "concentrate"])]
    of: String,
    /// What is there: concentrate, concentrate:95%, premix:50%, water.
    #[arg(long, value_delimiter = ',', required = true)]
    shelf: Vec<String>,
    /// Content of one bottle of concentrate or premix.
    #[arg(long)]
    bottle: Option<String>,
    /// The smallest amount that the jug measures.
    #[arg(long, default_value = "0.1L")]
    jug: String,
    /// The specification that the vehicle maker asks for.
    #[arg(long)]
    maker: Option<String>,
    /// The specification of what is in the system.
    #[arg(long)]
    in_system: Option<String>,
    /// The specification on the bottles.
    #[arg(long)]
    on_bottle: Option<String>,
}

/// Litres out and in.
#[derive(Debug, Args)]
pub struct Balance {
    #[command(flatten)]
    strength: Strength,
    /// Caught while draining; 0.4 L either way if not told.
    #[arg(long = "out")]
    drained: Vec<String>,
    /// Poured in; 0.1 L either way if not told.
    #[arg(long = "in")]
    poured: Vec<String>,
    /// Spilled, or carried off in hoses and parts; 0.2 L either way if not told.
    #[arg(long)]
    lost: Option<String>,
    /// What new parts hold beyond the old ones; 0.1 L either way if not told.
    #[arg(long, allow_hyphen_values = true)]
    new_parts: Option<String>,
    /// How far the level was low at the start; 0.1 L either way if not told.
    #[arg(long, allow_hyphen_values = true)]
    low: Option<String>,
    /// All that the system holds; 0.3 L either way if not told.
    #[arg(long)]
    capacity: Option<String>,
    /// What stayed in; 0.5 L either way if not told.
    #[arg(long)]
    left: Option<String>,
    /// Below the cold mark after one full heating and cooling; 0.1 L either way if not told.
    #[arg(long, allow_hyphen_values = true)]
    below_cold_mark: Option<String>,
    /// The hot temperature for which the rise of the level is asked.
    #[arg(long, requires = "capacity")]
    hot: Option<String>,
    /// Area of the bottle, such as 150cm2.
    #[arg(long, requires = "hot")]
    bottle_area: Option<String>,
}

pub fn mix(args: &Mix) -> Result<Answer, Wrong> {
    let glycol = read::glycol(&args.glycol);
    let bottle_l = optional(args.bottle.as_deref(), |text| {
        read::litres(text, "--bottle")
    })?;
    let on_bottle = args.on_bottle.as_deref().map(Inhibitor::new);
    let concentrate = shelf_concentrate(&args.shelf)?;
    let strength = |text: &str, place: &str| {
        let part = read::fraction(text, place)?;
        told(glycol, part, &args.of, concentrate).map_err(refused(place))
    };
    let stocks = args
        .shelf
        .iter()
        .map(|word| {
            let what = shelf(word, concentrate, &strength)?;
            let has_label = what != Shelf::Water;
            Ok(Stock {
                what,
                bottle_l: bottle_l.filter(|_| has_label),
                inhibitor: on_bottle.clone().filter(|_| has_label),
            })
        })
        .collect::<Result<Vec<_>, Wrong>>()?;
    let (maker, in_system) = (
        args.maker.as_deref().map(Inhibitor::new),
        args.in_system.as_deref().map(Inhibitor::new),
    );
    let plan = coolant::mix(&MixQuestion {
        capacity_l: read::litres(&args.capacity, "--capacity")?,
        left_l: read::litres(&args.left, "--left")?,
        now: strength(&args.now, "--now")?,
        want: strength(&args.want, "--want")?,
        shelf: &stocks,
        jug_l: read::litres(&args.jug, "--jug")?,
        maker: maker.as_ref(),
        in_system: in_system.as_ref(),
    })
    .map_err(refused("coolant mix"))?;
    Ok(mix_answer(&plan, &args.of, concentrate))
}

pub fn balance(args: &Balance) -> Result<Answer, Wrong> {
    let mixture = args.strength.mixture()?;
    let measures = |texts: &[String], usual_l: f64, place: &str| {
        texts
            .iter()
            .map(|text| {
                let (amount, temperature_c) = read::amount_at(text, usual_l, place)?;
                Ok(Measure {
                    amount,
                    temperature_c,
                })
            })
            .collect::<Result<Vec<_>, Wrong>>()
    };
    let amount = |text: &Option<String>, usual_l: f64, place: &str| {
        optional(text.as_deref(), |text| read::amount(text, usual_l, place))
    };
    let capacity = amount(&args.capacity, 0.3, "--capacity")?;
    let found = coolant::balance(&coolant::FillQuestion {
        mixture,
        drained: &measures(&args.drained, 0.4, "--out")?,
        lost: amount(&args.lost, 0.2, "--lost")?,
        new_parts: amount(&args.new_parts, 0.1, "--new-parts")?,
        low_at_start: amount(&args.low, 0.1, "--low")?,
        capacity,
        left_in: amount(&args.left, 0.5, "--left")?,
        poured: &measures(&args.poured, 0.1, "--in")?,
        below_cold_mark: amount(&args.below_cold_mark, 0.1, "--below-cold-mark")?,
    })
    .map_err(refused("coolant balance"))?;

    let missing = found.missing_l;
    let half_l = (missing.high() - missing.low()) / 2.0;
    let mut lines = vec![
        found.verdict.to_string(),
        format!("missing {:.2} L, within {half_l:.2} L", missing.mid()),
    ];
    let mut own = json!({
        "out_l": found.out_l,
        "in_l": found.in_l,
        "missing_l": missing.mid(),
        "low": missing.low(),
        "high": missing.high(),
        "verdict": found.verdict.to_string(),
        "in_bottle_l": found.split.map(|split| split.in_bottle.litres),
        "air_or_block_l": found.split.map(|split| split.air_or_block.litres),
        "stayed_in_l": found.stayed_in.map(|amount| amount.litres),
        "notes": found.notes.iter().map(ToString::to_string).collect::<Vec<_>>(),
    });
    lines.extend(found.notes.iter().map(ToString::to_string));
    let mut working = found.working;
    if let (Some(hot), Some(capacity)) = (&args.hot, capacity) {
        let hot_c = read::celsius(hot, "--hot")?;
        let area = optional(args.bottle_area.as_deref(), |text| {
            read::square_centimetres(text, "--bottle-area")
        })?;
        let swell = coolant::swell(mixture, capacity.litres, 20.0, hot_c, area)
            .map_err(refused("--hot"))?;
        lines.push(format!(
            "rises by {:.2} L from 20 °C to {hot_c:.0} °C",
            swell.litres
        ));
        own["rise_l"] = json!(swell.litres);
        own["rise_mm"] = json!(swell.bottle_mm);
        working = working.then(swell.working);
    }
    let concentrate = args.strength.concentrate()?;
    Ok(answered(
        lines,
        &[own, strength_json(mixture, concentrate)],
        &working,
    ))
}

/// The strength of the concentrate on the shelf, or the usual one.
fn shelf_concentrate(shelf: &[String]) -> Result<Concentrate, Wrong> {
    shelf
        .iter()
        .find_map(|word| word.strip_prefix("concentrate:"))
        .map_or(Ok(Concentrate::default()), |text| {
            read::concentrate(text, "--shelf")
        })
}

fn told(
    glycol: Glycol,
    part: f64,
    of: &str,
    concentrate: Concentrate,
) -> Result<Mixture, coolant::CoolantError> {
    if of == "concentrate" {
        Mixture::of_concentrate(glycol, part, concentrate)
    } else {
        Mixture::by_volume(glycol, part)
    }
}

fn shelf(
    word: &str,
    concentrate: Concentrate,
    strength: &impl Fn(&str, &str) -> Result<Mixture, Wrong>,
) -> Result<Shelf, Wrong> {
    match word.split_once(':') {
        None if word == "concentrate" => Ok(Shelf::Concentrate(concentrate)),
        None if word == "water" => Ok(Shelf::Water),
        Some(("concentrate", part)) => read::concentrate(part, "--shelf").map(Shelf::Concentrate),
        Some(("premix", part)) => strength(part, "--shelf").map(Shelf::Premix),
        _ => Err(Wrong::input(
            "--shelf",
            format!("`{word}` is nothing that stands on a shelf here"),
            "use concentrate, concentrate:95%, premix:50%, water",
        )),
    }
}

fn mix_answer(plan: &MixPlan, of: &str, concentrate: Concentrate) -> Answer {
    let reached = if of == "concentrate" {
        plan.reached.concentrate_fraction(concentrate)
    } else {
        Some(plan.reached.volume_fraction())
    };
    let mut lines = Vec::new();
    for (index, round) in plan.rounds.iter().enumerate() {
        if round.drain_l > 0.0 {
            lines.push(format!("run it warm, then drain {:.1} L", round.drain_l));
        }
        for one in &round.add {
            lines.push(format!(
                "round {}: pour {:.2} L {}",
                index + 1,
                one.jug_l,
                one.what
            ));
        }
    }
    if let Some(part) = reached {
        lines.push(format!("reaches {:.1} % {of} by volume", part * 100.0));
    }
    if let Some(whole) = &plan.whole_bottles {
        lines.push(format!(
            "or in the last round {} whole bottles of {} and {:.2} L {}",
            whole.count, whole.what, whole.made_up_l, whole.made_up_with
        ));
    }
    lines.extend(plan.inhibitors.iter().map(ToString::to_string));
    let own = json!({
        "add": totals(plan),
        "reached": reached,
        "rounds": plan.rounds.len(),
        "steps": plan.rounds.iter().map(|round| json!({
            "drain_l": round.drain_l,
            "add": round.add.iter().map(addition).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "whole_bottles": plan.whole_bottles.as_ref().map(|whole| json!({
            "what": whole.what.to_string(),
            "count": whole.count,
            "made_up_with": whole.made_up_with.to_string(),
            "made_up_l": whole.made_up_l,
        })),
        "inhibitors": plan.inhibitors.iter().map(ToString::to_string).collect::<Vec<_>>(),
    });
    answered(
        lines,
        &[own, strength_json(plan.reached, concentrate)],
        &plan.working,
    )
}

/// What to fetch: each thing once, over all rounds.
fn totals(plan: &MixPlan) -> Vec<Value> {
    let mut totals: Vec<(Shelf, f64)> = Vec::new();
    for one in plan.rounds.iter().flat_map(|round| &round.add) {
        match totals.iter_mut().find(|(what, _)| *what == one.what) {
            Some((_, litres)) => *litres += one.jug_l,
            None => totals.push((one.what, one.jug_l)),
        }
    }
    totals
        .iter()
        .map(|(what, litres)| json!({"what": what.to_string(), "litres": litres}))
        .collect()
}

fn addition(one: &Addition) -> Value {
    json!({
        "what": one.what.to_string(),
        "litres": one.jug_l,
        "calculated_l": one.litres,
        "bottles": one.bottles.map(|bottles| bottles.count),
    })
}

fn optional<T>(
    text: Option<&str>,
    read: impl FnOnce(&str) -> Result<T, Wrong>,
) -> Result<Option<T>, Wrong> {
    text.map(read).transpose()
}
