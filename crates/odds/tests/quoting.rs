//! A quote: what it has to hold whatever the order, and what is refused.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use odds::{
    Action, Amount, Ask, CauseSort, Condition, Done, Grid, History, Joint, Labour, Learned, Line,
    OddsError, Order, Pieces, Prior, Quote, Range, Rule, SnagHistory, quote,
};
use proptest::prelude::*;

fn fresh() -> Learned {
    let history = History::new(Prior::default(), Grid::default()).unwrap();
    history.fit().unwrap()
}

fn done(kind: &str, book_minutes: f64, minutes: f64) -> Done {
    Done {
        kind: kind.to_owned(),
        person: Some("Ana".to_owned()),
        condition: Condition::default(),
        book_minutes,
        minutes,
        left: false,
    }
}

/// Ten rusty bolts of a housing, a pump, and parts.
fn order() -> Order {
    let bolts = Line {
        what: "housing bolts".to_owned(),
        kind: "fasteners".to_owned(),
        person: Some("Ana".to_owned()),
        book_minutes: 60.0,
        times: 1,
        pieces: Some(Pieces {
            count: 10,
            joint: Joint {
                rust: Some(3),
                ..Joint::default()
            },
            minutes: Range {
                low: 40.0,
                likely: 55.0,
                high: 90.0,
            },
            price: Range::sure(14.0),
        }),
    };
    let pump = Line {
        what: "pump".to_owned(),
        kind: "part".to_owned(),
        book_minutes: 40.0,
        times: 3,
        ..Line::default()
    };
    Order {
        lines: vec![bolts, pump],
        rule: Rule {
            rate: 120.0,
            ..Rule::default()
        },
        amounts: vec![Amount {
            what: "parts".to_owned(),
            price: Range::sure(268.4),
        }],
        ..Order::default()
    }
}

fn rusty() -> SnagHistory {
    let mut snags = SnagHistory::default();
    let joint = Joint {
        rust: Some(3),
        ..Joint::default()
    };
    snags.learn(&joint, 200, 24).unwrap();
    snags.learn(&Joint::default(), 2_000, 10).unwrap();
    snags
}

fn ask(draws: usize) -> Ask {
    Ask {
        draws,
        ceiling: Some(850.0),
        ..Ask::default()
    }
}

fn quoted(order: &Order, draws: usize) -> Quote {
    quote(&fresh(), &rusty(), order, &ask(draws)).unwrap()
}

#[test]
fn the_same_on_any_number_of_threads() {
    let alone = quoted(&order(), 30_000);
    for threads in [2, 3, 7] {
        let ask = Ask {
            threads,
            ..ask(30_000)
        };
        assert_eq!(quote(&fresh(), &rusty(), &order(), &ask).unwrap(), alone);
    }
    let other = Ask {
        seed: 2,
        ..ask(30_000)
    };
    let other = quote(&fresh(), &rusty(), &order(), &other).unwrap();
    assert_ne!(other.hours.mean.to_bits(), alone.hours.mean.to_bits());
    // Another seed says the same, as far as so many draws can.
    for ((_, one, error), (_, two, _)) in alone.hours.quantiles.iter().zip(&other.hours.quantiles) {
        assert!((one - two).abs() < 3.0 * error, "{one} {two} {error}");
    }
}

#[test]
fn chances_of_draws_and_closed_form_agree() {
    let mut history = History::new(Prior::default(), Grid::default()).unwrap();
    for (vehicle, minutes) in [("a", 80.0), ("b", 66.0), ("a", 95.0)] {
        history
            .learn(vehicle, &[done("part", 60.0, minutes)])
            .unwrap();
    }
    let learned = history.fit().unwrap();
    for vehicle in [None, Some("a"), Some("b")] {
        let order = Order {
            vehicle: vehicle.map(str::to_owned),
            lines: vec![Line {
                what: "pump".to_owned(),
                kind: "part".to_owned(),
                person: Some("Ben".to_owned()),
                book_minutes: 60.0,
                times: 1,
                pieces: None,
            }],
            ..Order::default()
        };
        let found = quote(&learned, &SnagHistory::default(), &order, &ask(200_000)).unwrap();
        for (chance, hours, _) in &found.hours.quantiles {
            let ben = Some("Ben");
            let exact = learned.chance_within(vehicle, "part", ben, Condition::default(), *hours);
            let error = 4.0 * (chance * (1.0 - chance) / 200_000.0_f64).sqrt();
            assert!(
                (exact - chance).abs() < error,
                "{vehicle:?} {chance}: {exact}"
            );
        }
    }
}

#[test]
fn a_ceiling_for_a_chance_has_that_chance() {
    let first = quoted(&order(), 50_000);
    let nine = first
        .ceilings
        .iter()
        .find(|covers| covers.chance > 0.85)
        .unwrap();
    let again = Ask {
        ceiling: Some(nine.amount),
        ..ask(50_000)
    };
    let again = quote(&fresh(), &rusty(), &order(), &again).unwrap();
    assert!((again.chance_under_ceiling.unwrap().chance - 0.9).abs() < 1e-3);
    let amounts: Vec<f64> = first.ceilings.iter().map(|covers| covers.amount).collect();
    assert!(
        amounts.windows(2).all(|pair| pair[0] < pair[1]),
        "{amounts:?}"
    );
}

#[test]
fn rusty_bolts_drive_the_price_and_a_soak_is_worth_it() {
    let mut order = order();
    order.actions.push(Action {
        what: "soak overnight".to_owned(),
        line: "housing bolts".to_owned(),
        minutes: Range::sure(5.0),
        price: Range::sure(4.0),
        snag_odds: 0.25,
        time: 1.0,
    });
    order.actions.push(Action {
        what: "nothing".to_owned(),
        line: "pump".to_owned(),
        minutes: Range::default(),
        price: Range::default(),
        snag_odds: 1.0,
        time: 1.0,
    });
    let found = quoted(&order, 50_000);
    let snag = found
        .causes
        .iter()
        .position(|cause| cause.sort == CauseSort::Snag)
        .unwrap();
    assert!(snag <= 1, "{:?}", found.causes);
    assert!(
        found
            .causes
            .windows(2)
            .all(|pair| pair[0].share >= pair[1].share)
    );
    // Ten pieces at about 12 % each.
    assert!(
        (0.6..0.8).contains(&found.snags.chance),
        "{:?}",
        found.snags
    );
    assert!((1.0..1.4).contains(&found.snags.count));
    let (soak, nothing) = (&found.worth[0], &found.worth[1]);
    assert!(soak.price.0 + soak.price.1 < 0.0, "{soak:?}");
    assert!(soak.price_nine_in_ten < 0.0);
    // Common chances: what changes nothing comes to exactly nothing.
    assert_eq!(nothing.price, (0.0, 0.0));
    assert_eq!(nothing.hours, (0.0, 0.0));
}

#[test]
fn labour_at_book_time_lies_still_and_the_lesser_is_the_least() {
    let mut order = order();
    order.lines[0].pieces = None;
    let price = |labour| {
        let mut order = order.clone();
        order.rule.labour = labour;
        quoted(&order, 20_000).price
    };
    let book = price(Labour::Book);
    assert!((book.at(0.1) - 628.4).abs() < 1e-9 && (book.at(0.9) - 628.4).abs() < 1e-9);
    let (clock, lesser) = (price(Labour::Clock), price(Labour::Lesser));
    assert!(lesser.mean < clock.mean && lesser.mean < book.mean);
    order.rule.tax_percent = 19.0;
    order.rule.labour = Labour::Book;
    assert!((quoted(&order, 20_000).price.mean - 628.4 * 1.19).abs() < 1e-9);
}

#[test]
fn the_vehicle_that_was_slow_before_is_quoted_slower_and_snaps_more() {
    let mut history = History::new(Prior::default(), Grid::default()).unwrap();
    for (vehicle, factor) in [("slow", 2.2), ("other", 0.9), ("third", 1.0)] {
        let stages = vec![done("fasteners", 20.0, 20.0 * factor); 8];
        history.learn(vehicle, &stages).unwrap();
    }
    let learned = history.fit().unwrap();
    let of = |vehicle: Option<&str>| {
        let mut order = order();
        order.vehicle = vehicle.map(str::to_owned);
        quote(&learned, &rusty(), &order, &ask(20_000)).unwrap()
    };
    let (slow, unknown) = (of(Some("slow")), of(None));
    assert!(slow.hours.at(0.5) > 1.2 * unknown.hours.at(0.5));
    assert!(slow.snags.count > unknown.snags.count);
    let vehicle = |found: &Quote| {
        found
            .causes
            .iter()
            .find(|cause| cause.sort == CauseSort::Vehicle)
            .unwrap()
            .share
    };
    assert!(vehicle(&slow) < vehicle(&unknown));
}

/// One effect and nothing else: what the rounds find is held against the posterior worked out
/// on a fine grid by plain sums.
#[test]
fn stages_that_were_left_stand_in_with_what_lies_beyond() {
    let prior = Prior {
        jobs: 1.0,
        ..Prior::default()
    };
    let still = Grid {
        kind: vec![1e-6],
        person: vec![1e-6],
        condition: vec![1e-6],
        vehicle: vec![1e-6],
    };
    let minutes = [9.0, 12.0, 13.0, 16.0, 11.0, 10.0, 14.0, 12.0];
    let left = [14.0, 20.0];
    let mut history = History::new(prior, still).unwrap();
    for (at, minutes) in minutes.iter().enumerate() {
        history
            .learn(&format!("{at}"), &[done("x", 10.0, *minutes)])
            .unwrap();
    }
    for (at, minutes) in left.iter().enumerate() {
        let stage = Done {
            left: true,
            ..done("x", 10.0, *minutes)
        };
        history.learn(&format!("left {at}"), &[stage]).unwrap();
    }
    let learned = history.fit().unwrap();
    let rounds = learned.left_stages();
    assert_eq!((rounds.stages, history.left()), (2, 2));
    assert!(rounds.change < 1e-9 && rounds.rounds < 200, "{rounds:?}");
    assert!((0.05..0.7).contains(&rounds.missing_share), "{rounds:?}");

    let shape = 1.5_f64;
    let scale = shape * 1.6_f64.ln().powi(2);
    let (mut all, mut middle) = (0.0, 0.0);
    for m in -200..=400 {
        for s in 1..=400 {
            let (mean, deviation) = (f64::from(m) * 0.005, f64::from(s) * 0.005);
            let square = deviation * deviation;
            // The inverse gamma, in steps of the deviation; the belief about the shop; the stages.
            let mut log = -(2.0 * shape + 1.0) * deviation.ln() - scale / square;
            log -= deviation.ln() + mean * mean / (2.0 * square);
            for minutes in minutes {
                let off = (minutes / 10.0_f64).ln() - mean;
                log -= deviation.ln() + off * off / (2.0 * square);
            }
            for minutes in left {
                let z = ((minutes / 10.0_f64).ln() - mean) / deviation;
                log += (0.5 * libm::erfc(z / std::f64::consts::SQRT_2)).ln();
            }
            all += log.exp();
            middle += mean * log.exp();
        }
    }
    let exact = (middle / all).exp();
    let (mut low, mut high) = (0.5, 4.0);
    for _ in 0..60 {
        let half = f64::midpoint(low, high);
        let chance = learned.chance_within(None, "x", None, Condition::default(), half);
        if chance < 0.5 {
            low = half;
        } else {
            high = half;
        }
    }
    // The rounds find the top of the posterior, not its mean: half a hundredth apart here.
    assert!((low / exact - 1.0).abs() < 0.01, "{low} {exact}");
}

#[test]
fn one_more_job_and_a_rebuild_come_to_the_same_bits() {
    let mut one = History::new(Prior::default(), Grid::default()).unwrap();
    for at in 0..50 {
        let kind = format!("kind {}", at % 7);
        let stages = vec![done(&kind, 10.0, 9.0 + f64::from(at % 11))];
        one.learn(&format!("vehicle {}", at % 13), &stages).unwrap();
    }
    let mut again = History::new(Prior::default(), Grid::default()).unwrap();
    for at in 0..50 {
        let kind = format!("kind {}", at % 7);
        let stages = vec![done(&kind, 10.0, 9.0 + f64::from(at % 11))];
        again
            .learn(&format!("vehicle {}", at % 13), &stages)
            .unwrap();
        // Looking in between changes nothing.
        again.fit().unwrap();
    }
    assert_eq!(one, again);
}

fn refused(change: impl Fn(&mut Order, &mut Ask)) -> OddsError {
    let (mut order, mut ask) = (order(), ask(2_000));
    change(&mut order, &mut ask);
    quote(&fresh(), &rusty(), &order, &ask).unwrap_err()
}

#[test]
fn what_makes_no_sense_is_refused_in_words() {
    let said = |change: &dyn Fn(&mut Order, &mut Ask)| refused(change).to_string();
    for (said, part) in [
        (said(&|order, _| order.lines.clear()), "no line says"),
        (
            said(&|order, _| order.lines[0].book_minutes = -5.0),
            "the book time of housing bolts is -5",
        ),
        (
            said(&|order, _| order.lines[0].book_minutes = f64::NAN),
            "NaN",
        ),
        (
            said(&|order, _| order.lines[1].times = 0),
            "how often of pump is 0",
        ),
        (
            said(&|order, _| order.lines[1].what = " ".to_owned()),
            "a line has no name",
        ),
        (
            said(&|order, _| order.rule.rate = f64::INFINITY),
            "the rate is inf",
        ),
        (
            said(&|order, _| order.condition.rust = Some(4)),
            "rust is 4",
        ),
        (
            said(&|order, _| order.condition.age_years = Some(-1.0)),
            "age is -1",
        ),
        (said(&|_, ask| ask.draws = 10), "the number of draws is 10"),
        (
            said(&|_, ask| ask.ceiling = Some(f64::NAN)),
            "the ceiling is NaN",
        ),
        (
            said(&|_, ask| ask.chances = vec![9.0]),
            "write 0.9 for nine in ten",
        ),
        (
            said(&|order, _| order.amounts[0].price.high = 1.0),
            "least, likely and most",
        ),
        (
            said(&|order, _| order.lines = vec![order.lines[1].clone(); 10_000]),
            "30000 stages, more than 2000",
        ),
        (
            said(&|order, ask| {
                order.lines[1].times = 1_999;
                ask.draws = 1_000_000;
            }),
            "ask for at most 500000 draws",
        ),
        (
            said(&|order, _| {
                order.actions.push(Action {
                    what: "soak".to_owned(),
                    line: "bolts".to_owned(),
                    minutes: Range::default(),
                    price: Range::default(),
                    snag_odds: 1.0,
                    time: 1.0,
                });
            }),
            "soak names the line bolts",
        ),
    ] {
        assert!(said.contains(part), "{said}");
        assert!(said.contains(": "), "{said}");
    }
    let mut history = History::new(Prior::default(), Grid::default()).unwrap();
    for minutes in [f64::NAN, -1.0, 0.0, f64::INFINITY] {
        assert!(history.learn("a", &[done("x", 10.0, minutes)]).is_err());
    }
    assert_eq!(history.stages(), 0);
    let mut snags = SnagHistory::default();
    assert!(snags.learn(&Joint::default(), 3, 4).is_err());
    let silly = Prior {
        usual: f64::NAN,
        ..Prior::default()
    };
    assert!(History::new(silly, Grid::default()).is_err());
    let empty = Grid {
        kind: Vec::new(),
        ..Grid::default()
    };
    assert!(History::new(Prior::default(), empty).is_err());
}

#[test]
fn one_job_and_all_equal_are_no_trouble() {
    let mut history = History::new(Prior::default(), Grid::default()).unwrap();
    history.learn("a", &[done("part", 10.0, 10.0)]).unwrap();
    let one = quote(&history.fit().unwrap(), &rusty(), &order(), &ask(5_000)).unwrap();
    for at in 0..500 {
        history
            .learn(&format!("{at}"), &[done("part", 10.0, 10.0)])
            .unwrap();
    }
    let many = quote(&history.fit().unwrap(), &rusty(), &order(), &ask(5_000)).unwrap();
    assert!(many.hours.width() < one.hours.width() && many.hours.width() > 0.0);
    // A time far below the floor counts as just above it.
    let floor = Prior {
        floor: 0.5,
        ..Prior::default()
    };
    let mut history = History::new(floor, Grid::default()).unwrap();
    history.learn("a", &[done("part", 10.0, 1.0)]).unwrap();
    let learned = history.fit().unwrap();
    let low = learned.chance_within(None, "part", None, Condition::default(), 0.5);
    assert_eq!(low.to_bits(), 0.0_f64.to_bits());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever is learned, hours are above nothing and below the cap, quantiles rise, and
    /// chances are chances.
    #[test]
    fn hours_keep_their_bounds(
        past in prop::collection::vec((0_usize..4, 1.0_f64..300.0, 0.05_f64..20.0, any::<bool>()), 0..40),
        minutes in 0.1_f64..500.0,
        times in 1_u32..5,
        pieces in 1_u32..40,
        seed in any::<u64>(),
    ) {
        let mut history = History::new(Prior::default(), Grid::default()).unwrap();
        for (kind, book_minutes, factor, left) in past {
            let mut stage = done(&format!("kind {kind}"), book_minutes, book_minutes * factor);
            stage.left = left;
            history.learn(&format!("vehicle {}", kind % 2), &[stage]).unwrap();
        }
        let learned = history.fit().unwrap();
        let mut order = order();
        order.vehicle = Some("vehicle 1".to_owned());
        order.lines[0].book_minutes = minutes;
        order.lines[0].times = times;
        order.lines[0].kind = "kind 1".to_owned();
        order.lines[0].pieces.as_mut().unwrap().count = pieces;
        let ask = Ask { seed, ..ask(1_000) };
        let found = quote(&learned, &rusty(), &order, &ask).unwrap();
        let values: Vec<f64> = found.hours.quantiles.iter().map(|(_, value, _)| *value).collect();
        prop_assert!(values.windows(2).all(|pair| pair[0] <= pair[1]));
        let most = 8.0 * found.book_hours + f64::from(pieces) * 1.5;
        prop_assert!(values[0] > 0.0 && values[8] <= most + 1e-9, "{:?}", values);
        prop_assert!((0.0..=1.0).contains(&found.snags.chance));
        prop_assert!((0.0..=1.0).contains(&found.capped));
        prop_assert!(found.causes.iter().all(|cause| (0.0..=1.0).contains(&cause.share)));
        prop_assert!(found.price.mean.is_finite() && found.hours.mean_error >= 0.0);
    }
}
