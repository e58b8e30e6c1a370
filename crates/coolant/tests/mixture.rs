//! Properties of mixtures: round trips, order, and what is refused.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{
    Concentrate, CoolantError, Glycol, MarginStanding, Mixture, StrengthStanding, USUAL_LIMITS,
    boiling, density, freezing, margin, opening_cap, specific_heat, steam_pressure,
    strength_from_density, strength_from_freeze_point, strength_standing, viscosity, water_boils,
};
use proptest::prelude::*;

fn any_glycol() -> impl Strategy<Value = Glycol> {
    prop_oneof![Just(Glycol::Ethylene), Just(Glycol::Propylene)]
}

fn by_mass(glycol: Glycol, fraction: f64) -> Mixture {
    Mixture::by_mass(glycol, fraction).unwrap()
}

proptest! {
    #[test]
    fn volume_and_mass_come_back(glycol in any_glycol(), part in 0.0..=1.0_f64) {
        let there = by_mass(glycol, part).volume_fraction();
        let back = Mixture::by_volume(glycol, there).unwrap().mass_fraction();
        prop_assert!((back - part).abs() < 1e-12);
    }

    #[test]
    fn parts_of_concentrate_come_back(
        glycol in any_glycol(), part in 0.0..=1.0_f64, strength in 0.5..=1.0_f64,
    ) {
        let concentrate = Concentrate::new(strength).unwrap();
        let mixture = Mixture::of_concentrate(glycol, part, concentrate).unwrap();
        let back = mixture.concentrate_fraction(concentrate).unwrap();
        prop_assert!((back - part).abs() < 1e-12);
        // Antifreeze is never stronger than as much glycol.
        let pure = Mixture::by_volume(glycol, part).unwrap();
        prop_assert!(mixture.mass_fraction() <= pure.mass_fraction() + 1e-15);
    }

    #[test]
    fn freezing_falls_all_the_way_to_the_limit(
        glycol in any_glycol(), weak in 0.0..0.6_f64, more in 1e-4..0.6_f64,
    ) {
        let strong = (weak + more).min(0.6);
        prop_assume!(strong > weak);
        let at = |part| freezing(by_mass(glycol, part)).unwrap().freeze_c;
        prop_assert!(at(strong) < at(weak));
    }

    #[test]
    fn a_refractometer_reading_comes_back(glycol in any_glycol(), part in 0.005..=0.6_f64) {
        let reading = freezing(by_mass(glycol, part)).unwrap().freeze_c;
        let found = strength_from_freeze_point(glycol, glycol, reading).unwrap();
        prop_assert!((found.mixture.mass_fraction() - part).abs() < 1e-9);
    }

    #[test]
    fn a_hydrometer_reading_comes_back(
        glycol in any_glycol(), part in 0.0..=0.6_f64, t_c in 1.0..=100.0_f64,
    ) {
        let reading = density(by_mass(glycol, part), t_c).unwrap().kg_per_m3;
        let found = strength_from_density(glycol, reading, t_c).unwrap();
        prop_assert!((found.mixture.mass_fraction() - part).abs() < 1e-6);
    }

    #[test]
    fn warm_coolant_is_lighter_and_thinner(
        glycol in any_glycol(), part in 0.1..=0.6_f64, t_c in 5.0..90.0_f64, more in 1.0..10.0_f64,
    ) {
        let mixture = by_mass(glycol, part);
        let (cold, warm) = (density(mixture, t_c).unwrap(), density(mixture, t_c + more).unwrap());
        prop_assert!(warm.kg_per_m3 < cold.kg_per_m3);
        let (thick, thin) = (viscosity(mixture, t_c).unwrap(), viscosity(mixture, t_c + more).unwrap());
        prop_assert!(thin.mpa_s < thick.mpa_s && thin.mpa_s > 0.0);
        let heat = specific_heat(mixture, t_c).unwrap().j_per_kg_k;
        prop_assert!((2800.0..4250.0).contains(&heat));
    }

    #[test]
    fn steam_equations_are_each_others_inverse(kpa in 1.0..2000.0_f64) {
        let back = steam_pressure(water_boils(kpa).unwrap().boil_c).unwrap().absolute_kpa;
        prop_assert!((back / kpa - 1.0).abs() < 1e-9);
    }

    #[test]
    fn boiling_rises_with_strength_and_cap_and_falls_with_altitude(
        glycol in any_glycol(), part in 0.0..0.7_f64, cap in 0.0..200.0_f64, m in 0.0..4000.0_f64,
    ) {
        let boil = |part, cap, m| boiling(by_mass(glycol, part), cap, m).unwrap().boil_c;
        let here = boil(part, cap, m);
        prop_assert!(boil(part + 0.01, cap, m) > here);
        prop_assert!(boil(part, cap + 1.0, m) > here);
        prop_assert!(boil(part, cap, m + 10.0) < here);
        prop_assert!(boil(part, cap, m) >= boiling(by_mass(glycol, part), cap, m).unwrap().boil_open_c);
    }

    #[test]
    fn no_number_makes_it_panic(glycol in any_glycol(), x in any::<f64>(), y in any::<f64>()) {
        let made = [
            Mixture::by_mass(glycol, x),
            Mixture::by_volume(glycol, x),
            Mixture::of_concentrate(glycol, x, Concentrate::default()),
        ];
        for mixture in made.into_iter().flatten() {
            let _ = (freezing(mixture), density(mixture, y), boiling(mixture, y, y));
            let _ = (viscosity(mixture, y), opening_cap(mixture, 0.0, y));
        }
        let _ = (strength_from_density(glycol, x, y), strength_from_freeze_point(glycol, glycol, x));
        let _ = (Concentrate::new(x), water_boils(x), steam_pressure(y), coolant::atmosphere(x));
    }
}

#[test]
fn too_strong_is_said_with_the_limit() {
    let said = freezing(by_mass(Glycol::Ethylene, 0.7))
        .unwrap_err()
        .to_string();
    assert_eq!(
        said,
        "ethylene glycol at 70 % by mass: past 68 % the freezing point turns back up and \
         laboratories differ; thin it"
    );
    let said = density(by_mass(Glycol::Ethylene, 0.68), 20.0)
        .unwrap_err()
        .to_string();
    assert_eq!(
        said,
        "the part of glycol by mass is 0.68 of the whole, outside 0 to 0.6 of the whole: \
         stronger mixtures were not measured here: thin it, or ask the coolant's maker for the curve"
    );
}

#[test]
fn a_number_that_is_none_is_refused() {
    assert!(Mixture::by_mass(Glycol::Ethylene, f64::NAN).is_err());
    assert!(Mixture::by_volume(Glycol::Ethylene, 50.0).is_err());
}

#[test]
fn one_glycols_scale_is_not_read_on_the_other() {
    let found = strength_from_freeze_point(Glycol::Propylene, Glycol::Ethylene, -20.0);
    assert_eq!(
        found.unwrap_err(),
        CoolantError::WrongScale {
            scale: Glycol::Ethylene,
            coolant: Glycol::Propylene
        }
    );
}

#[test]
fn a_margin_is_thin_before_it_is_gone() {
    let half = Mixture::by_volume(Glycol::Ethylene, 0.5).unwrap();
    let found = boiling(half, 110.0, 0.0).unwrap();
    let standing = |reading| margin(&found, reading).unwrap().standing;
    assert_eq!(standing(found.boil_c - 10.5), MarginStanding::Ample);
    assert_eq!(standing(found.boil_c - 9.5), MarginStanding::Thin);
    assert_eq!(standing(found.boil_c), MarginStanding::Boils);
}

#[test]
fn a_hot_cap_says_how_far_above_boiling() {
    let half = Mixture::by_volume(Glycol::Ethylene, 0.5).unwrap();
    let hot = opening_cap(half, 1500.0, 115.0).unwrap();
    let hot_c = 115.0 - hot.above_boiling_k;
    assert!(hot.boils_over && hot.above_boiling_k > 10.0);
    assert!(hot.caution.starts_with("Do not open"));
    let near = opening_cap(half, 1500.0, hot_c - 5.0).unwrap();
    assert!(!near.boils_over && near.caution.starts_with("Do not open"));
    let cool = opening_cap(half, 1500.0, 30.0).unwrap();
    assert!(cool.above_boiling_k < 0.0 && cool.caution.contains("maker's instructions"));
}

#[test]
fn limits_are_the_makers_or_the_usual_ones() {
    let usual = Concentrate::default();
    let standing = |part: f64, limits| {
        let mixture = Mixture::of_concentrate(Glycol::Ethylene, part, usual).unwrap();
        strength_standing(mixture, usual, limits).unwrap()
    };
    for (part, expected) in [
        (0.39, StrengthStanding::TooWeak),
        (0.4, StrengthStanding::Within),
        (0.6, StrengthStanding::Within),
        (0.61, StrengthStanding::TooStrong),
    ] {
        assert_eq!(standing(part, USUAL_LIMITS), expected, "{part}");
    }
    assert_eq!(standing(0.68, (0.5, 0.7)), StrengthStanding::Within);
    let pure = by_mass(Glycol::Ethylene, 1.0);
    let found = strength_standing(pure, usual, USUAL_LIMITS).unwrap();
    assert_eq!(found, StrengthStanding::TooStrong);
    assert!(strength_standing(pure, usual, (0.6, 0.4)).is_err());
}
