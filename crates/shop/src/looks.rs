//! Owed work that is nothing but a look, a measurement or a trial: only whoever made it can say
//! so, and no page says it for them.

use crate::view::DebtView;
use record::v1::codes::WorkIsForm;

/// Works of the trade that leave nothing behind but what somebody has seen.
const LOOKS: &[&str] = &[
    "level-brake-fluid",
    "pedal-hard",
    "handbrake-hold",
    "servo-check",
    "abs-lamp-check",
    "play-check",
    "lock-to-lock",
    "level-ps-fluid",
    "leak-look",
    "gas-look",
    "level-oil",
    "oil-pressure-seen",
    "timing-marks",
    "belt-seated",
    "level-warm",
    "level-cold",
    "fan-runs",
    "throttle-free",
    "level-exhaust-fluid",
    "level-gear-oil",
    "level-clutch-fluid",
    "selector-check",
    "srs-lamp-check",
    "hv-isolation-test",
    "codes-read",
    "charge-check",
    "lamp-works",
    "function-seen",
    "vacuum-hold",
    "latch-check",
    "water-test",
    "coupling-check",
];

/// Whether this is a look: its row is never ticked by itself.
#[must_use]
pub fn is_look(debt: &DebtView) -> bool {
    let by_sort = debt.owed.sort.as_ref();
    by_sort.is_some_and(|sort| LOOKS.contains(&sort.0.as_str()))
        || matches!(
            debt.work,
            WorkIsForm::LevelWarm
                | WorkIsForm::LevelCold
                | WorkIsForm::LookForLeaks
                | WorkIsForm::PumpPedal
        )
}

#[cfg(test)]
mod tests {
    use super::LOOKS;

    #[test]
    fn every_look_is_a_work_of_the_trade() {
        for code in LOOKS {
            assert!(trade::Vocabulary::shipped().work(code).is_some(), "{code}");
        }
    }
}
