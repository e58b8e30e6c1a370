//! What the steps of a fluid, ticked for an order, close of what the order owes.

use crate::view::{DebtView, ItemView, OrderView};
use record::v1::codes::{KindForm, WorkIsForm};

/// A fluid's step: by which its level is right, if it is, and the works of the trade that it is.
struct Step {
    fluid: &'static str,
    step: &'static str,
    level: bool,
    works: &'static [&'static str],
}

const fn step(
    fluid: &'static str,
    step: &'static str,
    level: bool,
    works: &'static [&'static str],
) -> Step {
    Step {
        fluid,
        step,
        level,
        works,
    }
}

const LEAKS: &[&str] = &["leak-look", "look-for-leaks"];
const GEAR_OIL: &[&str] = &["level-gear-oil", "level-warm"];

/// By the names of the calculators of fluids and their boxes.
const STEPS: &[Step] = &[
    step("engine-oil", "started", false, &["oil-pressure-seen"]),
    step(
        "engine-oil",
        "level-seen",
        true,
        &["level-oil", "level-warm"],
    ),
    step("engine-oil", "leaks-looked-for", false, LEAKS),
    step("brake", "bled", false, &["bleed-brakes", "bleed"]),
    step("brake", "pedal-hard", false, &["pedal-hard", "pump-pedal"]),
    step("brake", "level-seen", true, &["level-brake-fluid"]),
    step("brake", "leaks-looked-for", false, LEAKS),
    step("clutch", "bled", false, &["bleed-clutch", "bleed"]),
    step(
        "clutch",
        "level-seen",
        true,
        &["level-clutch-fluid", "level-warm"],
    ),
    step("clutch", "leaks-looked-for", false, LEAKS),
    step("power-steering", "lock-to-lock", false, &["lock-to-lock"]),
    step(
        "power-steering",
        "foam-gone",
        false,
        &["bleed-steering", "bleed"],
    ),
    step(
        "power-steering",
        "level-seen",
        true,
        &["level-ps-fluid", "level-warm"],
    ),
    step("power-steering", "leaks-looked-for", false, LEAKS),
    step("automatic-gearbox", "level-seen", true, GEAR_OIL),
    step("automatic-gearbox", "leaks-looked-for", false, LEAKS),
    step("manual-gearbox", "filled-to-plug", true, GEAR_OIL),
    step("manual-gearbox", "warm-checked", false, LEAKS),
    step("axle", "filled-to-plug", true, GEAR_OIL),
    step("axle", "warm-checked", false, LEAKS),
    step("refrigerant", "oil-accounted", false, &["ac-oil"]),
    step("refrigerant", "evacuated", false, &["vacuum-hold"]),
    step("refrigerant", "weighed-in", true, &["refrigerant-weighed"]),
    step("refrigerant", "leak-searched", false, LEAKS),
    step("fuel", "filled", true, &[]),
    step("fuel", "primed", false, &["prime-fuel"]),
    step("fuel", "leaks-looked-for", false, LEAKS),
    step("urea", "quality-read", true, &["level-exhaust-fluid"]),
    step("urea", "leaks-looked-for", false, LEAKS),
    step("washer", "tried", true, &["function-seen"]),
    step(
        "battery",
        "memory-restored",
        false,
        &["clock-and-windows", "relearn"],
    ),
    step("battery", "registered", false, &["battery-register"]),
];

/// What ticked steps close.
#[derive(Debug, Clone, PartialEq)]
pub struct Closed<'a> {
    /// Whether the fluid stands at its level now, and did not before.
    pub level: bool,
    /// What was owed and is done.
    pub debts: Vec<&'a DebtView>,
}

/// What the steps of a fluid, done in their sequence, close on its order. Work that other
/// systems owe too, such as one look for leaks for all, stays owed: somebody has to say that
/// the others were looked at.
#[must_use]
pub fn closed<'a>(order: &'a OrderView, item: &ItemView, fluid: &str, done: &[&str]) -> Closed<'a> {
    let steps = || {
        STEPS
            .iter()
            .filter(|step| step.fluid == fluid && done.contains(&step.step))
    };
    let of_this_system = |debt: &DebtView| {
        debt.items.iter().all(|id| {
            *id == item.item
                || order
                    .items
                    .iter()
                    .any(|other| other.item == *id && other.system == item.system)
        })
    };
    let is_done = |debt: &&DebtView| {
        let code = code_of(debt);
        of_this_system(debt) && steps().any(|step| step.works.contains(&code))
    };
    Closed {
        level: item.kind == KindForm::Fluid && !item.home && steps().any(|step| step.level),
        debts: order.debts.iter().filter(is_done).collect(),
    }
}

/// What the trade calls a work, else what sort of work it is.
fn code_of(debt: &DebtView) -> &str {
    match &debt.owed.sort {
        // A work of one wheel carries its wheel.
        Some(sort) => sort.0.split(':').next().unwrap_or_default(),
        None => code_of_work(debt.work),
    }
}

fn code_of_work(work: WorkIsForm) -> &'static str {
    match work {
        WorkIsForm::Bleed => "bleed",
        WorkIsForm::LevelWarm => "level-warm",
        WorkIsForm::LookForLeaks => "look-for-leaks",
        WorkIsForm::PumpPedal => "pump-pedal",
        WorkIsForm::Relearn => "relearn",
        WorkIsForm::ClockAndWindows => "clock-and-windows",
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::STEPS;

    /// Every step named here is a box of the calculator named, and every work is one of the
    /// trade's or one that an order derives by itself.
    #[test]
    fn steps_and_works_exist() {
        let derived = [
            "bleed",
            "level-warm",
            "look-for-leaks",
            "pump-pedal",
            "relearn",
            "clock-and-windows",
        ];
        for step in STEPS {
            let one = calculators::calculator("fluids", step.fluid)
                .unwrap_or_else(|| panic!("no calculator {}", step.fluid));
            let has = calculators::fields(one.form)
                .iter()
                .any(|field| field.name == step.step);
            assert!(has, "{} has no {}", step.fluid, step.step);
            for work in step.works {
                let known = trade::Vocabulary::shipped().work(work).is_some();
                assert!(known || derived.contains(work), "{work}");
            }
        }
    }
}
