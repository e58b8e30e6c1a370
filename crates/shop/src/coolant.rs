//! The coolant of one order: what is known of the vehicle, what came out and went in, what
//! was read, and what follows from it.

use crate::mending::known;
use crate::phrases::coolant as words;
use crate::phrases::order::no_order;
use crate::say::SpokenText;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::vehicle_of;
use calculators::coolant::{
    Fill, JUG_WITHIN_L, PAN_WITHIN_L, Readings, balance_of, capacity as by_the_manual, estimated,
    last_digit, leak_of,
};
use calculators::{Answer, Asked, read};
use coolant::{Amount, Measure, Mixture, Reading};
pub use coolant::{BleedWay, Caution, leak_test_steps};
use jiff::Timestamp;
use measure::{Dimension, Unit};
use phrases::{Language, speaking};
use repair::{Account, Fact, Fate, Filed, ItemId, LevelAt, Order, Vehicle, Written};
use serde_json::Value;
use std::collections::BTreeMap;

/// A figure of the vehicle, as it reads now.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Figure {
    /// As written.
    pub value: String,
    /// The commands that told it, for a device to name as seen.
    pub by: Vec<String>,
    /// Whether the map gave it.
    pub by_map: bool,
}

/// One amount that came out or went in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Litre {
    /// As written.
    pub amount: String,
    /// What became of it, or what it was.
    pub what: String,
    /// Who.
    pub who: String,
}

/// A pressure test under way.
#[derive(Debug, Clone, Default)]
pub struct LeakRun {
    /// When its first reading was taken; empty if there is none.
    pub since: String,
    /// Minutes and pressure as written.
    pub told: Vec<(f64, String)>,
    /// What the readings say so far.
    pub answer: Option<Answer>,
    /// How it was found, as it is kept: in English whoever asked.
    pub working: String,
    /// Why they say nothing yet.
    pub trouble: Option<String>,
    /// How many readings the tester closed on itself has.
    pub blank: usize,
}

/// A strength that was measured and kept.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptStrength {
    /// In words.
    pub said: String,
    /// The part of concentrate by volume, where it is no stronger than that.
    pub concentrate: Option<f64>,
    /// Whether it was measured after filling.
    pub after_filling: bool,
}

/// All of it.
#[derive(Debug, Clone, Default)]
pub struct OrderCoolant {
    /// The vehicle's name in the record.
    pub vehicle: Option<String>,
    /// Figures by what they are.
    pub figures: BTreeMap<&'static str, Figure>,
    /// What came out.
    pub drained: Vec<Litre>,
    /// What went in.
    pub poured: Vec<Litre>,
    /// What is missing.
    pub balance: Option<Answer>,
    /// The strengths that were kept, last one last.
    pub strengths: Vec<KeptStrength>,
    /// The pressure test.
    pub leak: LeakRun,
    /// Litres still in after draining, where capacity and drained litres tell.
    pub left_l: Option<f64>,
    /// The same in words.
    pub left_said: Option<String>,
    /// What it should read cold.
    pub cold: Vec<String>,
}

/// The figures that are kept with a vehicle: the field, what it is stored as, what it is
/// called, and how to write it.
pub const FIGURES: &[(&str, &str, SpokenText, SpokenText)] = &[
    (
        "capacity",
        "coolant capacity",
        SpokenText(words::system_holds),
        SpokenText(words::by_the_manual),
    ),
    (
        "cap",
        "coolant cap",
        SpokenText(words::cap),
        SpokenText(words::stamped_on_it),
    ),
    (
        "want",
        "coolant mix",
        SpokenText(words::concentrate_wanted),
        SpokenText(words::by_the_maker),
    ),
    (
        "glycol",
        "coolant glycol",
        SpokenText(words::glycol),
        SpokenText(words::by_the_label),
    ),
    (
        "maker",
        "coolant specification",
        SpokenText(words::maker_asks_for),
        SpokenText(words::as_printed),
    ),
    (
        "least",
        "coolant least mix",
        SpokenText(words::least_allowed),
        SpokenText(words::forty_if_empty),
    ),
    (
        "most",
        "coolant most mix",
        SpokenText(words::most_allowed),
        SpokenText(words::sixty_if_empty),
    ),
    (
        "table",
        "coolant label points",
        SpokenText(words::points_of_label),
        SpokenText(words::such_as_points),
    ),
    (
        "bottle-area",
        "coolant bottle area",
        SpokenText(words::bottle_area),
        SpokenText(words::such_as_area),
    ),
    (
        "limit",
        "coolant test limit",
        SpokenText(words::test_may_lose),
        SpokenText(words::such_as_bar),
    ),
    (
        "limit-time",
        "coolant test minutes",
        SpokenText(words::in_what_time),
        SpokenText(words::such_as_minutes),
    ),
    (
        "headspace",
        "coolant headspace",
        SpokenText(words::air_above),
        SpokenText(words::such_as_litre),
    ),
];

/// What the calculator of strength is called in the record.
pub const STRENGTH: &str = "coolant strength";

/// What the calculator of the leak test is called in the record.
pub const LEAK: &str = "coolant leak test";

/// The coolant of an order.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn of_order(snap: &Snapshot<'_>, number: u64, item: &str) -> Result<OrderCoolant, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = &*world.order(&id)?;
    let account = Account::of(order);
    let item = ItemId::new(item);
    let item = account.moves.name(&item).clone();
    let vehicle = vehicle_of(order);
    let on_file = vehicle.as_ref().map(|id| world.vehicle(id)).transpose()?;
    let figures = figures(
        on_file.as_deref(),
        account
            .items
            .get(&item)
            .and_then(|item| item.holds.as_ref()),
    );
    let mut asked = Asked::new(BTreeMap::new(), known(world)).at_the_shop();
    for (field, figure) in &figures {
        asked.or_else(field, &figure.value);
    }
    let facts = of_item(order, &account, &item);
    let mut out = OrderCoolant {
        vehicle: vehicle.map(|id| id.as_str().to_owned()),
        figures,
        strengths: strengths(&facts),
        ..OrderCoolant::default()
    };
    let names = crate::say::Names::of(snap, world, order);
    for filed in &facts {
        let who = names.person(&filed.stamp.who);
        let amount = |amount: &Written| amount.as_str().to_owned();
        match &filed.fact {
            Fact::Drained {
                amount: out_, fate, ..
            } => out.drained.push(Litre {
                amount: amount(out_),
                what: fate_word(*fate).to_owned(),
                who,
            }),
            Fact::Poured {
                amount: in_, what, ..
            } => out.poured.push(Litre {
                amount: amount(in_),
                what: what.map(|what| names.text(what)).unwrap_or_default(),
                who,
            }),
            _ => {}
        }
    }
    fill_in(&mut out, &mut asked, &facts, &account, &item);
    out.leak = leak_run(&mut asked, &facts);
    Ok(out)
}

/// A field's figures as a form has them.
#[must_use]
pub fn fields(coolant: &OrderCoolant) -> BTreeMap<String, String> {
    let figures = coolant.figures.iter();
    figures
        .map(|(field, figure)| ((*field).to_owned(), figure.value.clone()))
        .collect()
}

fn figures(vehicle: Option<&Vehicle>, holds: Option<&Written>) -> BTreeMap<&'static str, Figure> {
    let told = vehicle.map(Vehicle::figures).unwrap_or_default();
    let mut out = BTreeMap::new();
    for (field, stored, ..) in FIGURES {
        let found = told.iter().find(|(what, _)| what.as_str() == *stored);
        if let Some((_, (value, by))) = found {
            let by = by.iter().map(|command| command.as_str().to_owned());
            let figure = Figure {
                value: value.as_str().to_owned(),
                by: by.collect(),
                by_map: false,
            };
            out.insert(*field, figure);
        }
    }
    // What somebody read off this vehicle's papers goes before its map.
    if let Some(holds) = holds {
        out.entry("capacity").or_insert(Figure {
            value: holds.as_str().to_owned(),
            by: Vec::new(),
            by_map: true,
        });
    }
    out
}

/// The facts about the coolant, by the clocks of those who told them.
fn of_item<'a>(order: &'a Order, account: &Account, item: &ItemId) -> Vec<&'a Filed> {
    let mut facts: Vec<&Filed> = order
        .beside_moves()
        .map(|(_, filed)| filed)
        .filter(|filed| match &filed.fact {
            Fact::Drained { item: of, .. }
            | Fact::Poured { item: of, .. }
            | Fact::LevelSeen { item: of, .. }
            | Fact::ReadOff { item: Some(of), .. }
            | Fact::Calculated { item: Some(of), .. } => account.moves.name(of) == item,
            _ => false,
        })
        .collect();
    facts.sort_by_key(|filed| filed.stamp.at);
    facts
}

fn strengths(facts: &[&Filed]) -> Vec<KeptStrength> {
    let mut filled = false;
    let mut out = Vec::new();
    for filed in facts {
        match &filed.fact {
            Fact::Poured { .. } => filled = true,
            Fact::Calculated {
                calculator,
                outputs,
                ..
            } if calculator.as_str() == STRENGTH => {
                let outputs: Value = serde_json::from_str(outputs).unwrap_or_default();
                let said = outputs["said"].as_str().map(str::to_owned);
                out.extend(said.map(|said| KeptStrength {
                    said,
                    concentrate: outputs["concentrate_fraction"].as_f64(),
                    after_filling: filled,
                }));
            }
            _ => {}
        }
    }
    out
}

fn fate_word(fate: Fate) -> &'static str {
    match fate {
        Fate::Kept => words::kept(),
        Fate::Recycled => words::recycled(),
        Fate::Disposed => words::disposed_of(),
        Fate::Spilled => words::spilled(),
    }
}

fn litres(written: &Written) -> Option<f64> {
    read(
        written.as_str(),
        Dimension::Volume,
        Unit::Litre,
        Unit::Litre,
    )
    .ok()
}

fn celsius(written: Option<&Written>) -> Option<f64> {
    let written = written?.as_str();
    read(
        written,
        Dimension::Temperature,
        Unit::Celsius,
        Unit::Celsius,
    )
    .ok()
}

/// Where nobody read it.
const ROOM_C: f64 = 20.0;

/// What is missing, what is left in, and what the bottle should read cold.
fn fill_in(
    out: &mut OrderCoolant,
    asked: &mut Asked,
    facts: &[&Filed],
    account: &Account,
    item: &ItemId,
) {
    let mixture = wanted(asked);
    let Some(mixture) = mixture else { return };
    let capacity = asked.litres("capacity");
    let mut fill = Fill {
        mixture,
        drained: Vec::new(),
        lost: None,
        low_at_start: None,
        capacity: capacity.map(by_the_manual),
        left_in: None,
        poured: Vec::new(),
        below_cold_mark: None,
        cold_level_seen: false,
        hot_c: None,
        bottle_cm2: asked.square_centimetres("bottle-area"),
    };
    let measured = |amount: &Written, temperature: Option<&Written>, within_l| {
        litres(amount).map(|litres| Measure {
            amount: Amount::new(litres, within_l),
            temperature_c: celsius(temperature).unwrap_or(ROOM_C),
        })
    };
    let mut lost_l = 0.0;
    for filed in facts {
        match &filed.fact {
            Fact::Drained {
                amount,
                fate: Fate::Spilled,
                ..
            } => {
                lost_l += litres(amount).unwrap_or(0.0);
            }
            Fact::Drained {
                amount,
                temperature,
                ..
            } => {
                fill.drained
                    .extend(measured(amount, temperature.as_ref(), PAN_WITHIN_L));
            }
            Fact::Poured {
                amount,
                temperature,
                ..
            } => {
                fill.poured
                    .extend(measured(amount, temperature.as_ref(), JUG_WITHIN_L));
            }
            Fact::LevelSeen {
                level: LevelAt::Cold,
                good,
                reading,
                ..
            } => {
                fill.cold_level_seen = *good;
                let below = reading.as_ref().filter(|_| !good).and_then(litres);
                fill.below_cold_mark = below.map(|litres| Amount::new(litres, JUG_WITHIN_L));
            }
            _ => {}
        }
    }
    fill.lost = (lost_l > 0.0).then(|| estimated(lost_l));
    let drained_l: f64 = fill.drained.iter().map(|one| one.amount.litres).sum();
    out.left_l = capacity
        .filter(|_| drained_l > 0.0)
        .map(|capacity| (capacity - drained_l - lost_l).max(0.0));
    out.left_said = out
        .left_l
        .map(|left_l| words::stays_in(asked.show_l(left_l)));
    // Topping up a system that was never drained has nothing to balance.
    if !fill.drained.is_empty() && (!fill.poured.is_empty() || !account.is_disturbed(item)) {
        out.balance = balance_of(asked, &fill);
    }
    if let Some(capacity) = capacity {
        let rise = coolant::swell(mixture, capacity, ROOM_C, 90.0, fill.bottle_cm2).ok();
        out.cold.extend(rise.map(|rise| {
            let height = rise
                .bottle_mm
                .map_or_else(String::new, |mm| words::in_the_bottle(format!("{mm:.0}")));
            words::goes_down(asked.show_l(rise.litres), height)
        }));
    }
}

/// The mix that goes in: what is wanted, or half and half, which changes a density by less
/// than any jug shows.
fn wanted(asked: &mut Asked) -> Option<Mixture> {
    asked.or_else("want", "50 %");
    asked.strength("want")
}

/// The readings since the test was started last, as far as they are told in order.
fn leak_run(asked: &mut Asked, facts: &[&Filed]) -> LeakRun {
    let system = series(facts, "gauge");
    let tester = series(facts, "tester");
    let mut run = LeakRun {
        since: system.since.map(|at| at.to_string()).unwrap_or_default(),
        told: system.told,
        blank: tester.table.readings.len(),
        trouble: system.unread,
        ..LeakRun::default()
    };
    if run.told.is_empty() {
        return run;
    }
    for field in ["limit", "limit-time"] {
        if asked.text(field).is_empty() {
            run.trouble = Some(words::say_first_what_it_may_lose().to_owned());
            return run;
        }
    }
    if system.cold {
        asked.or_else("cold", "yes");
    }
    let blank = (tester.table.readings.len() > 3).then_some(&tester.table);
    run.answer = leak_of(asked, &system.table, blank);
    // A record does not hang on what was spoken.
    let english = speaking(Language::English, || {
        leak_of(&mut asked.clone(), &system.table, blank)
    });
    run.working = english
        .map(|answer| answer.working_text())
        .unwrap_or_default();
    if run.answer.is_none() && run.trouble.is_none() {
        run.trouble = asked.troubles.values().next().cloned();
    }
    run
}

struct Series {
    since: Option<Timestamp>,
    told: Vec<(f64, String)>,
    table: Readings,
    cold: bool,
    unread: Option<String>,
}

fn series(facts: &[&Filed], what: &str) -> Series {
    let mut out = Series {
        since: None,
        told: Vec::new(),
        table: no_readings(),
        cold: false,
        unread: None,
    };
    let start = format!("{what} start");
    let cold = format!("{what} cold");
    for filed in facts {
        let Fact::ReadOff {
            what: of,
            value,
            temperature,
            ..
        } = &filed.fact
        else {
            continue;
        };
        if of.as_str() == start {
            out = Series {
                since: Some(filed.stamp.at),
                told: Vec::new(),
                table: no_readings(),
                cold: false,
                unread: None,
            };
        } else if of.as_str() == cold && out.since.is_some() {
            out.cold = true;
            continue;
        } else if of.as_str() != what || out.since.is_none() {
            continue;
        }
        let minutes = out
            .since
            .map_or(0.0, |since| minutes_between(since, filed.stamp.at));
        let pressure = |text: &str| read(text, Dimension::Pressure, Unit::Kilopascal, Unit::Bar);
        let in_order = out
            .table
            .readings
            .last()
            .is_none_or(|last| last.minutes < minutes);
        match pressure(value.as_str()) {
            Ok(gauge_kpa) if in_order => {
                let unit = value
                    .as_str()
                    .trim_start_matches(|c: char| !c.is_alphabetic());
                let step = pressure(&format!("{} {unit}", last_digit(value.as_str())));
                out.table.step_kpa = out.table.step_kpa.min(step.unwrap_or(f64::INFINITY));
                out.table.readings.push(Reading {
                    minutes,
                    gauge_kpa,
                    temperature_c: celsius(temperature.as_ref()),
                });
                out.table.lines.push(out.told.len() + 1);
                out.told.push((minutes, value.as_str().to_owned()));
            }
            Ok(_) => {}
            Err(error) => out.unread = Some(crate::say::capital(&error)),
        }
    }
    out
}

fn no_readings() -> Readings {
    Readings {
        readings: Vec::new(),
        step_kpa: f64::INFINITY,
        lines: Vec::new(),
    }
}

#[expect(clippy::cast_precision_loss, reason = "tests last hours")]
fn minutes_between(from: Timestamp, to: Timestamp) -> f64 {
    (to.as_millisecond() - from.as_millisecond()).max(0) as f64 / 60_000.0
}
