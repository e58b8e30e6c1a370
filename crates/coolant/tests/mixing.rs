//! Mixing: the balance, the rounds, and the reasons why not.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{
    Concentrate, CoolantError, Glycol, Inhibitor, InhibitorNote, MixPlan, MixQuestion, Mixture,
    REACHED_WITHIN, Shelf, Stock, WATER_KG_PER_M3, drain_and_replace, mix,
};
use proptest::prelude::*;

fn part(volume: f64) -> Mixture {
    Mixture::by_volume(Glycol::Ethylene, volume).unwrap()
}

fn stock(what: Shelf) -> Stock {
    Stock {
        what,
        bottle_l: None,
        inhibitor: None,
    }
}

fn concentrate_and_water() -> [Stock; 2] {
    [
        stock(Shelf::Concentrate(Concentrate::default())),
        stock(Shelf::Water),
    ]
}

fn question(left_l: f64, now: f64, want: f64, shelf: &[Stock]) -> MixQuestion<'_> {
    MixQuestion {
        capacity_l: 9.5,
        left_l,
        now: part(now),
        want: part(want),
        shelf,
        jug_l: 0.1,
        maker: None,
        in_system: None,
    }
}

/// Kilograms of glycol and of water in litres of a strength, parts measured at 20 °C.
fn kilograms(litres: f64, volume: f64) -> (f64, f64) {
    let glycol = litres * volume * Glycol::Ethylene.kg_per_m3() / 1000.0;
    (glycol, litres * (1.0 - volume) * WATER_KG_PER_M3 / 1000.0)
}

/// Kilograms in the system after a plan, added up bottle by bottle.
fn weighed(question: &MixQuestion, plan: &MixPlan) -> (f64, f64) {
    let mut now = question.now.volume_fraction();
    let mut sum = (0.0, 0.0);
    for round in &plan.rounds {
        sum = kilograms(question.left_l, now);
        for one in &round.add {
            let (glycol, water) =
                kilograms(one.jug_l, one.what.glycol_volume_fraction(Glycol::Ethylene));
            sum = (sum.0 + glycol, sum.1 + water);
        }
        now = Mixture::by_mass(Glycol::Ethylene, sum.0 / (sum.0 + sum.1))
            .unwrap()
            .volume_fraction();
    }
    sum
}

proptest! {
    #[test]
    fn mass_balances_and_every_fill_fills(
        left in 0.0..9.0_f64, now in 0.0..0.8_f64, want in 0.0..0.8_f64,
    ) {
        let shelf = concentrate_and_water();
        let question = question(left, now, want, &shelf);
        if let Ok(plan) = mix(&question) {
            for round in &plan.rounds {
                let poured: f64 = round.add.iter().map(|one| one.jug_l).sum();
                prop_assert!((poured - (9.5 - left)).abs() < 1e-9);
                prop_assert!(round.add.iter().all(|one| one.jug_l > 0.0));
            }
            let (glycol, water) = weighed(&question, &plan);
            prop_assert!((glycol / (glycol + water) - plan.reached.mass_fraction()).abs() < 1e-9);
            // Half the jug's step, of a 9.5 L system, is all that may be missing.
            let off = (plan.reached.volume_fraction() - want).abs();
            prop_assert!(off <= REACHED_WITHIN.max(0.05 / 9.5) + 1e-9, "off by {off}");
        }
    }

    #[test]
    fn a_plan_is_refused_only_when_many_rounds_would_not_do(
        left in 0.0..9.0_f64, now in 0.0..0.8_f64, want in 0.02..0.8_f64,
    ) {
        let shelf = concentrate_and_water();
        match mix(&question(left, now, want, &shelf)) {
            Ok(plan) => prop_assert!(plan.rounds.len() <= 8),
            Err(CoolantError::TooManyRounds { reached, .. }) => {
                // Eight fills of the extreme, by the closed form.
                let end = if want > now { Concentrate::default().glycol_volume_fraction(Glycol::Ethylene) } else { 0.0 };
                let closed = end + (now - end) * (left / 9.5_f64).powi(8);
                prop_assert!((reached - closed).abs() < 1e-9);
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }

    #[test]
    fn one_drain_and_replace_balances(now in 0.0..0.5_f64, want in 0.5..0.7_f64, fill in 0.7..1.0_f64) {
        let litres = drain_and_replace(8.0, part(now), part(want), part(fill)).unwrap().litres;
        let got = ((8.0 - litres) * now + litres * fill) / 8.0;
        prop_assert!((got - want).abs() < 1e-9);
    }

    #[test]
    fn no_number_makes_it_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>()) {
        let shelf = concentrate_and_water();
        let mut asked = question(a, 0.3, 0.5, &shelf);
        asked.capacity_l = b;
        asked.jug_l = c;
        let _ = mix(&asked);
        let _ = drain_and_replace(a, part(0.3), part(0.5), part(1.0));
    }
}

#[test]
fn one_fill_of_concentrate_and_water() {
    let shelf = concentrate_and_water();
    let plan = mix(&question(3.5, 0.3, 0.5, &shelf)).unwrap();
    // 0.5·9.5 - 0.3·3.5 = 3.7 L of glycol, in concentrate of 94.45 % by volume.
    let [round] = plan.rounds.as_slice() else {
        panic!("one round");
    };
    assert_eq!(round.add[0].what, shelf[0].what);
    assert!((round.add[0].litres - 3.7 / 0.944_54).abs() < 1e-3);
    assert!((round.add[0].jug_l - 3.9).abs() < 1e-9 && (round.add[1].jug_l - 2.1).abs() < 1e-9);
    assert!(plan.working.text().contains("distilled"));
}

#[test]
fn premix_alone_comes_near_in_rounds() {
    let shelf = [stock(Shelf::Premix(part(0.5)))];
    let plan = mix(&question(4.0, 0.3, 0.5, &shelf)).unwrap();
    // The gap of 20 % shrinks by 4/9.5 a round: 8.4, 3.5, 1.5, 0.6, 0.3 %.
    assert_eq!(plan.rounds.len(), 5);
    assert!(plan.rounds[0].drain_l < 1e-9 && (plan.rounds[1].drain_l - 5.5).abs() < 1e-9);
}

#[test]
fn reasons_why_not_are_told() {
    let premix = [stock(Shelf::Premix(part(0.4)))];
    let refused = |question: &MixQuestion| mix(question).unwrap_err();
    assert!(matches!(
        refused(&question(3.0, 0.3, 0.5, &premix)),
        CoolantError::ShelfTooWeak { .. }
    ));
    assert!(matches!(
        refused(&question(3.0, 0.6, 0.3, &premix)),
        CoolantError::ShelfTooStrong { .. }
    ));
    assert!(matches!(
        refused(&question(9.5, 0.3, 0.5, &premix)),
        CoolantError::NothingDrained { .. }
    ));
    assert_eq!(
        refused(&question(3.0, 0.3, 0.5, &[])),
        CoolantError::EmptyShelf
    );
    let shelf = concentrate_and_water();
    let said = refused(&question(9.4, 0.1, 0.6, &shelf)).to_string();
    assert!(
        said.starts_with("after 8 rounds of draining and filling"),
        "{said}"
    );
    let other = [stock(Shelf::Premix(
        Mixture::by_volume(Glycol::Propylene, 0.5).unwrap(),
    ))];
    assert!(matches!(
        refused(&question(3.0, 0.3, 0.5, &other)),
        CoolantError::TwoGlycols { .. }
    ));
}

#[test]
fn a_full_system_of_the_right_strength_needs_nothing() {
    let shelf = concentrate_and_water();
    let plan = mix(&question(9.5, 0.5, 0.5, &shelf)).unwrap();
    assert!(plan.rounds.is_empty());
    assert_eq!(plan.reached, part(0.5));
}

#[test]
fn whole_bottles_are_offered_with_what_they_reach() {
    let mut shelf = concentrate_and_water();
    shelf[0].bottle_l = Some(1.0);
    let plan = mix(&question(3.5, 0.3, 0.5, &shelf)).unwrap();
    let whole = plan.whole_bottles.unwrap();
    assert_eq!((whole.what, whole.count), (shelf[0].what, 4));
    assert!((whole.made_up_l - 2.0).abs() < 1e-9);
    assert!((whole.reached.volume_fraction() - (3.5 * 0.3 + 4.0 * 0.944_54) / 9.5).abs() < 1e-4);
    let bottles = plan.rounds[0].add[0].bottles.unwrap();
    assert_eq!(bottles.count, 4);
    assert!((bottles.left_over_l - 0.1).abs() < 1e-9);
}

#[test]
fn inhibitors_are_never_mixed_silently() {
    let maker = Inhibitor::new("Korvane K-17 A");
    let other = Inhibitor::new("K-09");
    let mut shelf = concentrate_and_water();
    let mut asked = question(3.5, 0.3, 0.5, &shelf);
    assert_eq!(
        mix(&asked).unwrap().inhibitors,
        [
            InhibitorNote::MakerNotStated,
            InhibitorNote::InSystemNotStated,
            InhibitorNote::ShelfNotStated {
                what: "concentrate".to_owned()
            },
        ]
    );
    asked.maker = Some(&maker);
    asked.in_system = Some(&other);
    let found = mix(&asked).unwrap().inhibitors;
    assert!(matches!(found[0], InhibitorNote::InSystemNotMakers { .. }));

    shelf[0].inhibitor = Some(other.clone());
    let mut asked = question(3.5, 0.3, 0.5, &shelf);
    asked.maker = Some(&maker);
    asked.in_system = Some(&maker);
    let found = mix(&asked).unwrap().inhibitors;
    assert!(matches!(
        found.as_slice(),
        [InhibitorNote::ShelfNotMakers { .. }]
    ));

    shelf[0].inhibitor = Some(Inhibitor::new("korvane k17-a"));
    let mut asked = question(3.5, 0.3, 0.5, &shelf);
    asked.maker = Some(&maker);
    asked.in_system = Some(&maker);
    assert!(mix(&asked).unwrap().inhibitors.is_empty());
}
