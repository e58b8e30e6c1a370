//! What to pour, and what is missing after pouring.

use super::{BOTTLE, COUNTED, KIND, strength_rows};
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, capital};
use coolant::{
    Amount, Balance, Caution, FillQuestion, FillStanding, FillVerdict, Inhibitor, Measure, MixPlan,
    MixQuestion, Mixture, Shelf, Stock, fill_standing,
};
use drawing::{Drawing, Filling, filling};
use serde_json::json;

/// A pan and what is spilt beside it.
pub const PAN_WITHIN_L: f64 = 0.4;
/// A marked jug.
pub const JUG_WITHIN_L: f64 = 0.1;
/// A capacity out of a manual.
const CAPACITY_WITHIN_L: f64 = 0.3;
/// Where nothing is told, an engine at work.
const HOT_C: f64 = 90.0;

const POURING: &[&str] = &[
    Caution::MakersSpecification.text(),
    Caution::Poisonous.text(),
    Caution::Disposal.text(),
];

pub(super) const MIX: Calculator = Calculator {
    code: "mix",
    name: "What to pour",
    what: "concentrate, premix, water, rounds",
    cautions: POURING,
    how: &[],
    form: &[
        Part::number(
            "capacity",
            "The system holds",
            Holds::VOLUME,
            "such as 9.2 L or 10 qt",
        ),
        Part::number(
            "left",
            "Still in after draining",
            Holds::VOLUME,
            "a cock gives half to two thirds",
        ),
        Part::text("now", "Strength now", "0 % for water"),
        Part::text("want", "Strength wanted", "such as 50 %"),
        Part::choice("of", "Both are", COUNTED),
        KIND,
        Part::Heading("On the shelf"),
        Part::tick("has-concentrate", "Concentrate", ""),
        Part::tick("has-premix", "Premix", "its strength below"),
        Part::tick("has-water", "Distilled water", ""),
        Part::text("premix", "Strength of the premix", "50 % if empty"),
        Part::number(
            "bottle-size",
            "A bottle holds",
            Holds::VOLUME,
            "may stay empty",
        ),
        Part::Heading("Specification"),
        Part::text(
            "maker",
            "The vehicle maker asks for",
            "as printed; colour tells nothing",
        ),
        Part::text("inside", "What is in meets", "as printed, or empty"),
        Part::text("label", "The bottle meets", "as printed, or empty"),
        BOTTLE,
    ],
    at_first: &[("has-concentrate", "yes"), ("has-water", "yes")],
    run: mix,
};

pub(super) const BALANCE: Calculator = Calculator {
    code: "balance",
    name: "What is missing",
    what: "litres out and in, air trapped",
    cautions: POURING,
    how: &[],
    form: &[
        Part::text("drained", "Caught", "each pan, such as 4 L, 1.5 L"),
        Part::number(
            "drained-at",
            "It was at",
            Holds::TEMPERATURE,
            "such as 40 °C; a cold shop if empty",
        ),
        Part::number(
            "lost",
            "Spilled, or gone with parts",
            Holds::VOLUME,
            "a guess, may stay empty",
        ),
        Part::number("low", "Low when it came", Holds::VOLUME, "may stay empty"),
        Part::text("poured", "Poured in", "each jug, such as 3 L, 2 L"),
        Part::number(
            "poured-at",
            "It was at",
            Holds::TEMPERATURE,
            "a cold shop if empty",
        ),
        Part::number(
            "capacity",
            "The system holds",
            Holds::VOLUME,
            "by the manual, may stay empty",
        ),
        Part::number(
            "left",
            "Still in after draining",
            Holds::VOLUME,
            "may stay empty",
        ),
        Part::number(
            "below",
            "Level cold stands below its mark by",
            Holds::VOLUME,
            "may stay empty",
        ),
        Part::number(
            "hot",
            "Hottest it gets",
            Holds::TEMPERATURE,
            "90 °C if empty",
        ),
        Part::number(
            "bottle-area",
            "The bottle's area at the marks",
            Holds::AREA,
            "length times width, such as 150 cm²",
        ),
        Part::text("strength", "Strength", "50 % if empty"),
        Part::choice("of", "That is", COUNTED),
        KIND,
    ],
    at_first: &[],
    run: what_is_missing,
};

/// What to pour, and in how many rounds.
#[must_use]
pub fn mix(asked: &mut Asked) -> Option<Answer> {
    for (field, mend) in [
        ("capacity", "it stands in the vehicle's manual"),
        ("left", "what stayed in; nothing drained is all of it"),
        ("now", "measure it first"),
        ("want", "such as 50 %"),
    ] {
        asked.needed(field, mend);
    }
    let capacity_l = asked.litres("capacity");
    let left_l = asked.litres("left");
    let now = asked.strength("now");
    let want = asked.strength("want");
    let shelf = shelf(asked);
    let inhibitor = |text: &str| (!text.is_empty()).then(|| Inhibitor::new(text));
    let (maker, in_system) = (
        inhibitor(asked.text("maker")),
        inhibitor(asked.text("inside")),
    );
    let question = MixQuestion {
        capacity_l: capacity_l?,
        left_l: left_l?,
        now: now?,
        want: want?,
        shelf: &shelf,
        jug_l: JUG_WITHIN_L,
        maker: maker.as_ref(),
        in_system: in_system.as_ref(),
    };
    let found = coolant::mix(&question);
    let plan = asked.ok("has-concentrate", found)?;
    asked
        .troubles
        .is_empty()
        .then(|| mix_answer(asked, &question, &plan))
}

/// What stands ready, by the boxes ticked.
fn shelf(asked: &mut Asked) -> Vec<Stock> {
    let concentrate = asked.concentrate();
    let bottle_l = asked.litres("bottle-size");
    let label = asked.text("label").to_owned();
    let label = (!label.is_empty()).then(|| Inhibitor::new(&label));
    let stock = |what, bottle_l, inhibitor| Stock {
        what,
        bottle_l,
        inhibitor,
    };
    let mut shelf = Vec::new();
    if !asked.text("has-concentrate").is_empty() {
        let what = Shelf::Concentrate(concentrate);
        shelf.push(stock(what, bottle_l, label.clone()));
    }
    if !asked.text("has-premix").is_empty() {
        asked.or_else("premix", "50 %");
        if let Some(mixture) = asked.strength("premix") {
            shelf.push(stock(Shelf::Premix(mixture), bottle_l, label));
        }
    }
    if !asked.text("has-water").is_empty() {
        shelf.push(stock(Shelf::Water, None, None));
    }
    shelf
}

fn mix_answer(asked: &mut Asked, question: &MixQuestion, plan: &MixPlan) -> Answer {
    let concentrate = asked.concentrate();
    let rounds = plan.rounds.len();
    let mut answer = Answer {
        fact: match rounds {
            0 => "nothing to pour".to_owned(),
            1 => "one fill".to_owned(),
            _ => format!("{rounds} fills"),
        },
        said: match rounds {
            0 => "It is at its strength.".to_owned(),
            1 => "Pour this, then run it warm with the heater hot.".to_owned(),
            _ => "The drain leaves too much behind for one: drain, fill, run it warm, and again."
                .to_owned(),
        },
        tone: "",
        ..Answer::default()
    };
    for (nth, round) in plan.rounds.iter().enumerate() {
        let which = if rounds > 1 {
            format!("fill {}: ", nth + 1)
        } else {
            String::new()
        };
        if round.drain_l > 0.0 {
            answer.row(
                format!("{which}run warm, cool, then drain"),
                asked.show_l(round.drain_l),
            );
        }
        for one in &round.add {
            let bottles = one.bottles.map_or_else(String::new, |bottles| {
                format!(", from {} bottles", bottles.count)
            });
            let poured = format!("{which}pour {}{bottles}", one.what);
            answer.row(poured, asked.show_l(one.jug_l));
        }
    }
    if let Some(whole) = &plan.whole_bottles {
        answer.row(
            format!("or whole bottles of {}", whole.what),
            format!(
                "{}, and {} {}",
                whole.count,
                asked.show_l(whole.made_up_l),
                whole.made_up_with
            ),
        );
    }
    strength_rows(&mut answer, plan.reached, concentrate);
    let uses_water = question
        .shelf
        .iter()
        .any(|stock| stock.what == Shelf::Water);
    if uses_water {
        answer.notes.push(coolant::WATER_QUALITY.to_owned());
    }
    let said = plan.inhibitors.iter();
    answer
        .alarms
        .extend(said.map(|note| capital(&note.to_string())));
    answer.outputs =
        json!({ "rounds": rounds, "reached_volume_fraction": plan.reached.volume_fraction() });
    answer.with_working(&plan.working)
}

/// Litres out and in, with what is known of the system.
#[derive(Debug, Clone)]
pub struct Fill {
    /// Of what is in.
    pub mixture: Mixture,
    /// Caught while draining.
    pub drained: Vec<Measure>,
    /// Spilled, or gone with parts.
    pub lost: Option<Amount>,
    /// How far it was low when it came.
    pub low_at_start: Option<Amount>,
    /// All that it holds.
    pub capacity: Option<Amount>,
    /// What stayed in.
    pub left_in: Option<Amount>,
    /// Poured in.
    pub poured: Vec<Measure>,
    /// How far below its cold mark the level stood after heating and cooling.
    pub below_cold_mark: Option<Amount>,
    /// Whether a good cold level is recorded.
    pub cold_level_seen: bool,
    /// How hot it gets.
    pub hot_c: Option<f64>,
    /// The bottle's area in cm².
    pub bottle_cm2: Option<f64>,
}

/// What is missing after filling, by a form's fields.
#[must_use]
pub fn what_is_missing(asked: &mut Asked) -> Option<Answer> {
    asked.or_else("strength", "50 %");
    let mixture = asked.strength("strength")?;
    let measures = |litres: Vec<f64>, within_l: f64, temperature_c: f64| {
        litres
            .into_iter()
            .map(|litres| Measure {
                amount: Amount::new(litres, within_l),
                temperature_c,
            })
            .collect::<Vec<_>>()
    };
    let drained_c = asked.temperature_or_room("drained-at");
    let poured_c = asked.temperature_or_room("poured-at");
    let drained = measures(asked.amounts("drained"), PAN_WITHIN_L, drained_c);
    let poured = measures(asked.amounts("poured"), JUG_WITHIN_L, poured_c);
    let fill = Fill {
        mixture,
        drained,
        lost: asked.litres("lost").map(estimated),
        low_at_start: asked.amount("low", JUG_WITHIN_L),
        capacity: asked.amount("capacity", CAPACITY_WITHIN_L),
        left_in: asked.amount("left", PAN_WITHIN_L),
        poured,
        below_cold_mark: asked.amount("below", JUG_WITHIN_L),
        cold_level_seen: false,
        hot_c: asked.celsius("hot"),
        bottle_cm2: asked.square_centimetres("bottle-area"),
    };
    let answer = balance_of(asked, &fill)?;
    asked.troubles.is_empty().then_some(answer)
}

/// What was spilled is guessed: to the half of it.
pub fn estimated(litres: f64) -> Amount {
    Amount::new(litres, (0.5 * litres).max(JUG_WITHIN_L))
}

/// A capacity as a manual gives it.
pub fn capacity(litres: f64) -> Amount {
    Amount::new(litres, CAPACITY_WITHIN_L)
}

/// What is missing, and what that means.
pub fn balance_of(asked: &mut Asked, fill: &Fill) -> Option<Answer> {
    let found = coolant::balance(&FillQuestion {
        mixture: fill.mixture,
        drained: &fill.drained,
        lost: fill.lost,
        new_parts: None,
        low_at_start: fill.low_at_start,
        capacity: fill.capacity,
        left_in: fill.left_in,
        poured: &fill.poured,
        below_cold_mark: fill.below_cold_mark,
    });
    let balance = asked.ok("drained", found)?;
    let missing = balance.missing_l;
    let fact = match balance.verdict {
        FillVerdict::Full => "full".to_owned(),
        FillVerdict::Short { about_l } => format!("short {}", asked.large_l(about_l)),
        FillVerdict::CannotTell => "can't tell yet".to_owned(),
        FillVerdict::TooMuch { about_l } => format!("{} too much", asked.large_l(about_l)),
    };
    let mut answer = Answer {
        fact,
        said: capital(&balance.verdict.to_string()),
        tone: match fill_standing(balance.verdict, fill.cold_level_seen) {
            FillStanding::Quiet => "yes",
            FillStanding::Warns => "wait",
            FillStanding::Blocks => "no",
        },
        ..Answer::default()
    };
    answer.row("out", asked.show_l(balance.out_l));
    answer.row("in", asked.show_l(balance.in_l));
    answer.row(
        "missing, 95 times in 100",
        format!(
            "{:.1} to {}",
            tenth(missing.low()),
            asked.show_l(tenth(missing.high()))
        ),
    );
    causes(asked, &mut answer, &balance);
    answer
        .notes
        .extend(balance.notes.iter().map(|note| capital(&note.to_string())));
    let mut working = balance.working.clone();
    let swell = fill.capacity.and_then(|capacity| {
        let hot_c = fill.hot_c.unwrap_or(HOT_C);
        let found = coolant::swell(fill.mixture, capacity.litres, 20.0, hot_c, fill.bottle_cm2);
        Some((asked.ok("hot", found)?, hot_c))
    });
    if let Some((swell, hot_c)) = &swell {
        let height = swell.bottle_mm.map_or_else(String::new, |mm| {
            format!(", {mm:.0}\u{202f}mm in the bottle")
        });
        answer.row(
            format!("rises from cold to {}, and back", asked.show_c(*hot_c)),
            format!("{}{height}", asked.show_l(swell.litres)),
        );
        working = working.then(swell.working.clone());
    }
    answer.drawings.extend(fill.capacity.map(|capacity| {
        gauge(
            asked,
            &balance,
            capacity,
            swell.map(|(swell, _)| swell.litres),
        )
    }));
    answer.outputs = json!({
        "verdict": balance.verdict.to_string(), "missing_l": missing.mid(),
        "low_l": missing.low(), "high_l": missing.high(),
    });
    Some(answer.with_working(&working))
}

fn causes(asked: &Asked, answer: &mut Answer, balance: &Balance) {
    let within = |amount: Amount| {
        format!(
            "{} \u{b1} {:.1}\u{202f}L",
            asked.show_l(tenth(amount.litres)),
            amount.within_l
        )
    };
    if let Some(stayed_in) = balance.stayed_in {
        answer.row("stayed in the block", within(stayed_in));
    }
    if let Some(split) = balance.split {
        answer.row("missing in the bottle", within(split.in_bottle));
        answer.row(
            "air trapped, or not drained from the block",
            within(split.air_or_block),
        );
    }
}

/// Nobody measures finer.
fn tenth(litres: f64) -> f64 {
    let tenth = (litres * 10.0).round() / 10.0;
    if tenth == 0.0 { 0.0 } else { tenth }
}

fn gauge(asked: &Asked, balance: &Balance, capacity: Amount, rise_l: Option<f64>) -> Drawing {
    let missing = balance.missing_l;
    let level = capacity.litres - missing.mid();
    filling(
        &Filling {
            full: capacity.litres,
            full_words: format!("full cold: {}", asked.show_l(capacity.litres)),
            level,
            level_words: format!("in: about {}", asked.show_l(tenth(level))),
            missing: (missing.high() > 0.05).then_some((missing.low().max(0.0), missing.high())),
            missing_words: format!(
                "missing: {:.1} to {}",
                tenth(missing.low().max(0.0)),
                asked.show_l(tenth(missing.high()))
            ),
            hot: rise_l.map(|rise_l| capacity.litres + rise_l),
            hot_words: rise_l.map_or_else(String::new, |rise_l| {
                format!("hot: {} higher", asked.show_l(rise_l))
            }),
        },
        PHONE_PX,
    )
}
