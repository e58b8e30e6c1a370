//! Held against rows that others worked out.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use checks::{Row, published};
use odds::{
    Condition, Done, Grid, History, Joint, Learned, Line, Order, Prior, Range, SnagHistory, quote,
    summary, wilson,
};

/// The stages that checks/data/odds/vectors.py learns from: vehicle, kind, person, age, rust,
/// opened before, book minutes, minutes.
type Stage = (
    &'static str,
    &'static str,
    &'static str,
    f64,
    u8,
    bool,
    f64,
    f64,
);
const PAST: [Stage; 8] = [
    ("a", "out", "Ana", 9.0, 2, false, 6.0, 9.5),
    ("a", "out", "Ana", 9.0, 2, false, 12.0, 17.0),
    ("a", "on", "Ben", 9.0, 2, false, 10.0, 11.0),
    ("b", "out", "Ben", 3.0, 0, false, 30.0, 26.0),
    ("b", "on", "Ben", 3.0, 0, false, 20.0, 19.0),
    ("c", "clean", "Ana", 17.0, 3, true, 12.0, 31.0),
    ("c", "out", "Ana", 17.0, 3, true, 5.0, 9.0),
    ("a", "on", "Ana", 9.0, 2, true, 8.0, 10.5),
];

fn rows(kind: &str) -> Vec<Row> {
    published("odds").rows(kind).to_vec()
}

fn one_point(kind: f64, person: f64, condition: f64, vehicle: f64) -> Grid {
    Grid {
        kind: vec![kind],
        person: vec![person],
        condition: vec![condition],
        vehicle: vec![vehicle],
    }
}

fn learned(past: usize, grid: Grid) -> Learned {
    let mut history = History::new(Prior::default(), grid).unwrap();
    for (vehicle, kind, person, age, rust, opened, book_minutes, minutes) in &PAST[..past] {
        let done = Done {
            kind: (*kind).to_owned(),
            person: Some((*person).to_owned()),
            condition: Condition {
                age_years: Some(*age),
                rust: Some(*rust),
                opened_before: Some(*opened),
            },
            book_minutes: *book_minutes,
            minutes: *minutes,
            left: false,
        };
        history.learn(vehicle, &[done]).unwrap();
    }
    history.fit().unwrap()
}

#[test]
fn chances_of_one_stage() {
    let rows = rows("chance");
    assert!(rows.len() >= 20);
    for row in rows {
        let grid = match row.text("grid") {
            "all" => Grid::default(),
            _ => one_point(0.1, 0.1, 0.15, 0.3),
        };
        let past = usize::try_from(row.whole("past")).unwrap();
        let vehicle = Some(row.text("vehicle")).filter(|name| !name.is_empty());
        let condition = Condition {
            age_years: Some(row.real("age_years")),
            rust: Some(u8::try_from(row.whole("rust")).unwrap()),
            opened_before: Some(row.flag("opened")),
        };
        let got = learned(past, grid).chance_within(
            vehicle,
            row.text("of"),
            Some(row.text("person")),
            condition,
            row.real("times_book"),
        );
        row.assert_near(got, "expected", "tolerance");
    }
}

/// Without a past, a single stage is a Student t with `jobs + 2` degrees of freedom.
#[test]
fn students_t() {
    let rows = rows("student");
    assert!(rows.len() >= 20);
    for row in rows {
        let jobs = f64::from(i32::try_from(row.whole("freedom")).unwrap()) - 2.0;
        let prior = Prior {
            jobs,
            ..Prior::default()
        };
        let learned = History::new(prior, one_point(0.1, 0.1, 0.1, 0.3)).unwrap();
        let learned = learned.fit().unwrap();
        let deviation = (1.0_f64 + 1.0 / jobs + 0.1 + 0.3).sqrt() * 1.6_f64.ln();
        let above = |t: f64| {
            let times_book = (deviation * t).exp();
            1.0 - learned.chance_within(None, "x", None, Condition::default(), times_book)
        };
        let (t, half) = (row.real("t"), row.real("tolerance"));
        let wanted = row.real("above");
        assert!(
            above(t - half) >= wanted && wanted >= above(t + half),
            "{row}"
        );
    }
}

#[test]
fn snags_by_class() {
    let mut snags = SnagHistory::default();
    let joint = |rust: u8, opened: bool, material: &str, size: &str| Joint {
        rust: Some(rust),
        opened_before: Some(opened),
        material: Some(material.to_owned()),
        size: Some(size.to_owned()),
    };
    for (rust, opened, material, size, pieces, found) in [
        (2, false, "aluminium", "M8", 40, 3),
        (2, false, "steel", "M8", 55, 1),
        (2, true, "aluminium", "M6", 12, 0),
        (3, false, "aluminium", "M8", 20, 4),
        (0, false, "aluminium", "M8", 150, 0),
        (3, false, "steel", "M10", 33, 2),
    ] {
        let joint = joint(rust, opened, material, size);
        snags.learn(&joint, pieces, found).unwrap();
    }
    let rows = rows("snag");
    assert!(rows.len() >= 6);
    for row in rows {
        let rust = u8::try_from(row.whole("rust")).unwrap();
        let joint = joint(
            rust,
            row.flag("opened"),
            row.text("material"),
            row.text("size"),
        );
        let found = snags.chance(&joint, &Prior::default()).unwrap();
        row.assert_near(found.mean, "expected", "tolerance");
    }
}

#[test]
fn snags_of_the_shop() {
    for row in rows("shop_snag") {
        let count = |name| u32::try_from(row.whole(name)).unwrap();
        let mut snags = SnagHistory::default();
        snags
            .learn(&Joint::default(), count("pieces"), count("snags"))
            .unwrap();
        let prior = Prior {
            snag_mean: row.real("mean"),
            snag_pieces: row.real("worth"),
            ..Prior::default()
        };
        row.assert_near(snags.shop(&prior).unwrap(), "expected", "tolerance");
    }
}

#[test]
fn ranges() {
    let rows = rows("range");
    assert!(rows.len() >= 4);
    for row in rows {
        let range = Range {
            low: row.real("low"),
            likely: row.real("likely"),
            high: row.real("high"),
        };
        row.assert_near(range.mean(), "expected", "tolerance");
        row.assert_near(range.deviation(), "expected_deviation", "tolerance");
    }
}

#[test]
fn intervals() {
    let rows = rows("interval");
    assert!(rows.len() >= 7);
    for row in rows {
        let count = |name| usize::try_from(row.whole(name)).unwrap();
        let (low, high) = wilson(count("found"), count("of"));
        row.assert_near(low, "expected_low", "tolerance");
        row.assert_near(high, "expected_high", "tolerance");
    }
}

#[test]
fn univariate() {
    for row in rows("univariate") {
        let mut values = vec![row.real("first")];
        for at in 1..row.whole("values") {
            values.push(row.real(if at % 2 == 1 { "low" } else { "high" }));
        }
        let found = summary(&values).unwrap();
        row.assert_near(found.mean, "expected", "tolerance");
        row.assert_near(found.deviation, "expected_deviation", "tolerance");
    }
}

/// A belief of ten thousand jobs leaves no doubt about the shop, and the vehicle's effect is the
/// factor that all stages share. So the draws are held against the moments of log-normal sums.
#[test]
fn sums_of_log_normal_times() {
    for row in rows("sum") {
        let (sigma, shared) = (row.real("sigma"), row.real("shared"));
        let prior = Prior {
            jobs: 10_000.0,
            factor: sigma.exp(),
            ..Prior::default()
        };
        let grid = one_point(1e-6, 1e-6, 1e-6, (shared / sigma) * (shared / sigma));
        let learned = History::new(prior, grid).unwrap().fit().unwrap();
        let line = Line {
            what: "work".to_owned(),
            kind: "work".to_owned(),
            book_minutes: 60.0,
            times: u32::try_from(row.whole("times")).unwrap(),
            ..Line::default()
        };
        let order = Order {
            lines: vec![line],
            ..Order::default()
        };
        let ask = odds::Ask {
            draws: 400_000,
            threads: 2,
            ..odds::Ask::default()
        };
        let hours = quote(&learned, &SnagHistory::default(), &order, &ask)
            .unwrap()
            .hours;
        let near = |got: f64, name| {
            let wanted = row.real(name);
            let off = (got / wanted - 1.0).abs();
            assert!(off <= row.real("tolerance"), "{row}: {got}");
        };
        near(hours.mean, "expected");
        // 1.96 standard errors of the mean were told.
        near(
            hours.mean_error / 1.96 * 400_000_f64.sqrt(),
            "expected_deviation",
        );
    }
}
