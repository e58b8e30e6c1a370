//! The rows of the trade's tables that the account folds by, each named once. They are data
//! of the trade, copied into declarations; what else stands in its tables is folded without
//! being known here.

macro_rules! works {
    ($($name:ident = $code:literal),* $(,)?) => {
        $(pub(crate) const $name: &str = $code;)*

        #[cfg(test)]
        const WORKS: &[&str] = &[$($code),*];
    };
}

works! {
    ALIGNMENT = "alignment",
    AXLE_NUT_TORQUE = "axle-nut-torque",
    BALANCE = "balance",
    BED_IN = "bed-in",
    BLEED_BRAKES = "bleed-brakes",
    BLEED_CLUTCH = "bleed-clutch",
    BLEED_COOLING = "bleed-cooling",
    BLEED_STEERING = "bleed-steering",
    CODES_READ = "codes-read",
    FUNCTION_SEEN = "function-seen",
    GAS_LOOK = "gas-look",
    HV_ISOLATION_TEST = "hv-isolation-test",
    HV_RELEASE = "hv-release",
    LEAK_LOOK = "leak-look",
    LEVEL_COLD = "level-cold",
    LEVEL_WARM = "level-warm",
    NEW_FASTENERS = "new-fasteners",
    NEW_SEAL = "new-seal",
    PEDAL_HARD = "pedal-hard",
    RELEARN = "relearn",
    SECOND_CHECK = "second-check",
    TORQUE = "torque",
    TORQUE_AFTER_DISTANCE = "torque-after-distance",
    WATER_TEST = "water-test",
    WHEEL_NUTS_ON = "wheel-nuts-on",
    WHEEL_TORQUE = "wheel-torque",
}

/// What the codes of levels begin with, those of fluids that only border on an item too.
pub(crate) const LEVEL: &str = "level-";

// Sorts of thing.
pub(crate) const WHEEL_NUTS: &str = "wheel-nuts";
pub(crate) const AXLE_NUT: &str = "axle-nut";

#[cfg(test)]
mod tests {
    use super::*;
    use trade::Vocabulary;

    #[test]
    fn each_is_a_row_of_the_trades_tables() {
        let tables = Vocabulary::shipped();
        for code in WORKS {
            assert!(tables.work(code).is_some(), "no work {code:?}");
        }
        for thing in [WHEEL_NUTS, AXLE_NUT] {
            assert!(tables.names().any(|(_, sort)| sort == thing), "{thing:?}");
        }
        assert!(
            tables
                .works()
                .iter()
                .any(|work| work.code.starts_with(LEVEL))
        );
    }
}
