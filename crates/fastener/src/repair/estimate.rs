//! What a way costs in time and money, and what the shop weighs.

use super::ways::Way;
use measure::Range;
use std::collections::BTreeMap;

/// Planning figures and weights of a shop.
#[derive(Clone, Debug, PartialEq)]
pub struct Planning {
    pub weights: Weights,
    /// How many times its greatest clamp a repaired thread must bear.
    pub least_strip_margin: f64,
    /// Running torque of a locking insert, added to the torque; 0 for a free-running one.
    pub locking_insert_nm: f64,
    /// Minutes to get a stub out, or to give its thread up: they come before any way.
    pub extraction_minutes: Range<f64>,
    /// Time and money by way. A way that is missing is not estimated.
    pub estimates: BTreeMap<Way, Estimate>,
}

/// Time and money of a way, without the extraction of a stub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    pub minutes: Range<f64>,
    /// Parts and tools used up, in the shop's currency.
    pub cost: Range<f64>,
}

/// How much each consideration counts among the ways that hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weights {
    pub margin: f64,
    pub time: f64,
    pub cost: f64,
    /// How much stays as it was, and what is left for the next repair.
    pub reversibility: f64,
}

impl Default for Weights {
    fn default() -> Weights {
        Weights {
            margin: 0.2,
            time: 0.25,
            cost: 0.2,
            reversibility: 0.35,
        }
    }
}

impl Default for Planning {
    /// Figures to start from; every shop learns its own. A new housing has none: its price and
    /// time depend on the vehicle.
    fn default() -> Planning {
        let estimate = |minutes: (f64, f64, f64), cost: (f64, f64, f64)| Estimate {
            minutes: range(minutes),
            cost: range(cost),
        };
        Planning {
            weights: Weights::default(),
            least_strip_margin: 1.25,
            locking_insert_nm: 0.0,
            extraction_minutes: range((15.0, 20.0, 30.0)),
            estimates: BTreeMap::from([
                (
                    Way::ChaseThread,
                    estimate((5.0, 10.0, 20.0), (0.0, 1.0, 3.0)),
                ),
                (
                    Way::LongerBolt,
                    estimate((5.0, 10.0, 20.0), (1.0, 3.0, 8.0)),
                ),
                (
                    Way::WireInsert,
                    estimate((25.0, 35.0, 60.0), (8.0, 14.0, 25.0)),
                ),
                (
                    Way::SolidBushing,
                    estimate((35.0, 50.0, 90.0), (15.0, 28.0, 60.0)),
                ),
                (
                    Way::Oversize,
                    estimate((30.0, 45.0, 80.0), (3.0, 6.0, 15.0)),
                ),
                (
                    Way::BoltAndNut,
                    estimate((15.0, 25.0, 45.0), (1.0, 3.0, 8.0)),
                ),
                (
                    Way::PlugBushing,
                    estimate((40.0, 60.0, 120.0), (15.0, 30.0, 60.0)),
                ),
                (
                    Way::OversizePlug,
                    estimate((10.0, 15.0, 30.0), (4.0, 8.0, 15.0)),
                ),
            ]),
        }
    }
}

fn range((low, mid, high): (f64, f64, f64)) -> Range<f64> {
    Range::new(low, mid, high).expect("the figures above rise")
}
