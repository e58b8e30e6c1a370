//! What to pour, and what is missing after pouring.

use super::{BOTTLE, COUNTED, KIND, strength_rows};
use crate::form::none;
use crate::phrases::coolant as say;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, Say, capital};
use coolant::{
    Amount, Balance, Caution, FillQuestion, FillStanding, FillVerdict, Inhibitor, Measure, MixPlan,
    MixQuestion, Mixture, Shelf, Stock, fill_standing,
};
use drawing::{Drawing, Filling, filling};
use phrases::{Language, speaking};
use serde_json::json;

/// A pan and what is spilt beside it.
pub const PAN_WITHIN_L: f64 = 0.4;
/// A marked jug.
pub const JUG_WITHIN_L: f64 = 0.1;
/// A capacity out of a manual.
const CAPACITY_WITHIN_L: f64 = 0.3;
/// Where nothing is told, an engine at work.
const HOT_C: f64 = 90.0;

const POURING: &[Say] = &[
    || Caution::MakersSpecification.text(),
    || Caution::Poisonous.text(),
    || Caution::Disposal.text(),
];

pub(super) const MIX: Calculator = Calculator {
    code: "mix",
    name: say::what_to_pour,
    what: say::concentrate_premix_water_rounds,
    cautions: POURING,
    how: Vec::new,
    form: &[
        Part::number(
            "capacity",
            say::the_system_holds,
            Holds::VOLUME,
            say::such_as_9_2_l_or,
        ),
        Part::number(
            "left",
            say::still_in_after_draining,
            Holds::VOLUME,
            say::a_cock_gives_half_to_two,
        ),
        Part::text("now", say::strength_now, say::about_0_for_water),
        Part::text("want", say::strength_wanted, say::such_as_50),
        Part::choice("of", say::both_are, COUNTED),
        KIND,
        Part::Heading(say::on_the_shelf),
        Part::tick("has-concentrate", say::concentrate, none),
        Part::tick("has-premix", say::premix, say::its_strength_below),
        Part::tick("has-water", say::distilled_water, none),
        Part::text(
            "premix",
            say::strength_of_the_premix,
            say::about_50_if_empty,
        ),
        Part::number(
            "bottle-size",
            say::a_bottle_holds,
            Holds::VOLUME,
            say::may_stay_empty,
        ),
        Part::Heading(say::specification),
        Part::text(
            "maker",
            say::the_vehicle_maker_asks_for,
            say::as_printed_colour_tells_nothing,
        ),
        Part::text("inside", say::what_is_in_meets, say::as_printed_or_empty),
        Part::text("label", say::the_bottle_meets, say::as_printed_or_empty),
        BOTTLE,
    ],
    at_first: &[("has-concentrate", || "yes"), ("has-water", || "yes")],
    run: mix,
};

pub(super) const BALANCE: Calculator = Calculator {
    code: "balance",
    name: say::what_is_missing,
    what: say::litres_out_and_in_air_trapped,
    cautions: POURING,
    how: Vec::new,
    form: &[
        Part::text("drained", say::caught, say::each_pan_such_as_4_l),
        Part::number(
            "drained-at",
            say::it_was_at,
            Holds::TEMPERATURE,
            say::such_as_40_c_a_cold,
        ),
        Part::number(
            "lost",
            say::spilled_or_gone_with_parts,
            Holds::VOLUME,
            say::a_guess_may_stay_empty,
        ),
        Part::number(
            "low",
            say::low_when_it_came,
            Holds::VOLUME,
            say::may_stay_empty,
        ),
        Part::text("poured", say::poured_in, say::each_jug_such_as_3_l),
        Part::number(
            "poured-at",
            say::it_was_at,
            Holds::TEMPERATURE,
            say::a_cold_shop_if_empty,
        ),
        Part::number(
            "capacity",
            say::the_system_holds,
            Holds::VOLUME,
            say::by_the_manual_may_stay_empty,
        ),
        Part::number(
            "left",
            say::still_in_after_draining,
            Holds::VOLUME,
            say::may_stay_empty,
        ),
        Part::number(
            "below",
            say::level_cold_stands_below_its_mark,
            Holds::VOLUME,
            say::may_stay_empty,
        ),
        Part::number(
            "hot",
            say::hottest_it_gets,
            Holds::TEMPERATURE,
            say::about_90_c_if_empty,
        ),
        Part::number(
            "bottle-area",
            say::the_bottles_area_at_the_marks,
            Holds::AREA,
            say::length_times_width_such_as_150,
        ),
        Part::text("strength", say::strength, say::about_50_if_empty),
        Part::choice("of", say::that_is, COUNTED),
        KIND,
    ],
    at_first: &[],
    run: what_is_missing,
};

/// What to pour, and in how many rounds.
#[must_use]
pub fn mix(asked: &mut Asked) -> Option<Answer> {
    for (field, mend) in [
        ("capacity", say::it_stands_in_the_vehicles_manual()),
        ("left", say::what_stayed_in_nothing_drained_is()),
        ("now", say::measure_it_first()),
        ("want", say::such_as_50()),
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
            0 => say::nothing_to_pour().to_owned(),
            _ => say::fills(rounds),
        },
        said: match rounds {
            0 => say::it_is_at_its_strength().to_owned(),
            1 => say::pour_this_then_run_it_warm().to_owned(),
            _ => say::the_drain_leaves_too_much_behind().to_owned(),
        },
        tone: "",
        ..Answer::default()
    };
    for (nth, round) in plan.rounds.iter().enumerate() {
        let which = if rounds > 1 {
            format!("{}: ", say::fill_number(nth + 1))
        } else {
            String::new()
        };
        if round.drain_l > 0.0 {
            answer.row(
                format!("{which}{}", say::run_warm_cool_drain()),
                asked.show_l(round.drain_l),
            );
        }
        for one in &round.add {
            let bottles = one.bottles.map_or_else(String::new, |bottles| {
                format!(", {}", say::from_bottles(bottles.count))
            });
            let poured = format!("{which}{}{bottles}", say::pour(one.what));
            answer.row(poured, asked.show_l(one.jug_l));
        }
    }
    if let Some(whole) = &plan.whole_bottles {
        answer.row(
            say::or_whole_bottles_of(whole.what),
            say::bottles_and_more(
                whole.count,
                asked.show_l(whole.made_up_l),
                whole.made_up_with,
            ),
        );
    }
    strength_rows(&mut answer, plan.reached, concentrate);
    let uses_water = question
        .shelf
        .iter()
        .any(|stock| stock.what == Shelf::Water);
    if uses_water {
        answer.notes.push(coolant::water_quality().to_owned());
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
        FillVerdict::Full => say::full().to_owned(),
        FillVerdict::Short { about_l } => say::short_by(asked.large_l(about_l)),
        FillVerdict::CannotTell => say::cant_tell_yet().to_owned(),
        FillVerdict::TooMuch { about_l } => say::too_much_by(asked.large_l(about_l)),
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
    answer.row(say::out(), asked.show_l(balance.out_l));
    answer.row(say::word_in(), asked.show_l(balance.in_l));
    answer.row(
        say::missing_95_times_in_100(),
        say::from_to(
            format!("{:.1}", tenth(missing.low())),
            asked.show_l(tenth(missing.high())),
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
            format!(", {}", say::mm_in_the_bottle(format!("{mm:.0}")))
        });
        answer.row(
            say::rises_from_cold_to(asked.show_c(*hot_c)),
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
        "verdict": speaking(Language::English, || balance.verdict.to_string()), "missing_l": missing.mid(),
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
        answer.row(say::stayed_in_the_block(), within(stayed_in));
    }
    if let Some(split) = balance.split {
        answer.row(say::missing_in_the_bottle(), within(split.in_bottle));
        answer.row(
            say::air_trapped_or_not_drained_from(),
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
            full_words: say::full_cold(asked.show_l(capacity.litres)),
            level,
            level_words: say::in_about(asked.show_l(tenth(level))),
            missing: (missing.high() > 0.05).then_some((missing.low().max(0.0), missing.high())),
            missing_words: say::missing_from_to(
                format!("{:.1}", tenth(missing.low().max(0.0))),
                asked.show_l(tenth(missing.high())),
            ),
            hot: rise_l.map(|rise_l| capacity.litres + rise_l),
            hot_words: rise_l
                .map_or_else(String::new, |rise_l| say::hot_higher(asked.show_l(rise_l))),
        },
        PHONE_PX,
    )
}
