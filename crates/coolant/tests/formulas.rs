//! Figures worked out by hand: no source prints them.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{Glycol, Mixture, boiling};

/// Raoult's law with a glycol that does not evaporate: the mixture boils where water would at the
/// pressure divided by the share of water among the molecules. Densities 1113.5, 1036.1 and
/// 998.2 kg/m³, water after IAPWS-IF97; by volume, open and under 15 psi.
#[test]
fn mixtures_boil_after_raoult() {
    let cap_kpa = 15.0 * 6.894_757;
    let rows = [
        (0.3, [103.66, 125.13], [102.80, 124.16]),
        (0.4, [105.54, 127.27], [104.28, 125.84]),
        (0.5, [108.03, 130.10], [106.25, 128.08]),
        (0.6, [111.46, 134.00], [109.01, 131.21]),
        (0.7, [116.54, 139.80], [113.19, 135.97]),
    ];
    for (fraction, ethylene, propylene) in rows {
        for (glycol, expected) in [(Glycol::Ethylene, ethylene), (Glycol::Propylene, propylene)] {
            let mixture = Mixture::by_volume(glycol, fraction).unwrap();
            for (cap_kpa, expected) in [0.0, cap_kpa].into_iter().zip(expected) {
                let got = boiling(mixture, cap_kpa, 0.0).unwrap().boil_c;
                let place = format!("{glycol:?} {fraction} under {cap_kpa}");
                assert!(
                    (got - expected).abs() <= 0.02,
                    "{place}: {got}, not {expected}"
                );
            }
        }
    }
}
