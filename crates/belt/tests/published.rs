//! The rows of `checks/published/belt.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod common;

use belt::{GripQuestion, Layout, Sense, Side, code, grip};
use checks::{Row, published};
use common::{layout, solved, wrap};
use std::f64::consts::PI;

fn rows(kind: &str) -> Vec<Row> {
    published("belt").rows(kind).to_vec()
}

fn assert_near(row: &Row, got: f64, expected: &str) {
    row.assert_near(got, expected, "tolerance");
}

fn drive_of(row: &Row) -> Layout {
    let pulleys: Vec<(f64, f64, f64, Side)> = row
        .list("pulleys")
        .iter()
        .map(|pulley| {
            let part = |at: usize| pulley[at].as_float().unwrap();
            let side = if pulley[3].as_str() == Some("back") {
                Side::Back
            } else {
                Side::Ribs
            };
            (part(0), part(1), part(2), side)
        })
        .collect();
    layout(&pulleys, Sense::CounterClockwise)
}

#[test]
fn no_row_goes_unread() {
    let read = [
        "drive",
        "wrap",
        "meets",
        "grip",
        "code",
        "back",
        "line_differential",
    ];
    let counted: usize = read.iter().map(|kind| rows(kind).len()).sum();
    assert_eq!(counted, published("belt").all().count());
}

#[test]
fn drives() {
    for row in rows("drive") {
        let found = solved(&drive_of(&row));
        assert_near(&row, found.length_mm.unwrap(), "expected_mm");
    }
}

#[test]
fn wraps() {
    for row in rows("wrap") {
        let found = solved(&drive_of(&row));
        let on = usize::try_from(row.whole("on")).unwrap();
        assert_near(
            &row,
            found.pulleys[on].touches.unwrap().wrap_deg,
            "expected_deg",
        );
    }
}

#[test]
fn meets() {
    for row in rows("meets") {
        let found = solved(&drive_of(&row));
        let expected = row.list("expected_rad");
        for (pulley, expected) in found.pulleys.iter().zip(expected) {
            let expected = expected.as_float().unwrap();
            let (x, y) = pulley.touches.unwrap().meets;
            let angle = libm::atan2(y - pulley.y_mm, x - pulley.x_mm);
            let angle = if angle < 0.0 { angle + 2.0 * PI } else { angle };
            let off = (angle / expected - 1.0).abs();
            assert!(
                off <= row.real("tolerance"),
                "{row}: {} at {angle}",
                pulley.name
            );
        }
    }
}

#[test]
fn grips() {
    for row in rows("grip") {
        let found = grip(&GripQuestion {
            friction: row.real("friction"),
            wrap_deg: row.real("wrap_deg"),
            groove_deg: row.has("groove_deg").then(|| row.real("groove_deg")),
        });
        assert_near(&row, found.unwrap().ratio, "expected_ratio");
    }
}

#[test]
fn codes() {
    for row in rows("code") {
        let found = code(row.text("code")).unwrap();
        assert_near(&row, found.length_mm, "expected_mm");
        if row.has("ribs") {
            assert_eq!(found.ribs.map(i64::from), Some(row.whole("ribs")), "{row}");
        }
    }
}

#[test]
fn pk_offsets() {
    assert_near(&rows("back")[0], 2.0 * PI * belt::PK_BACK_MM, "expected_mm");
    assert_near(
        &rows("line_differential")[0],
        belt::PK_LINE_DIFFERENTIAL_MM,
        "expected_mm",
    );
}

/// Closed forms: open L = 2C cos a + pi(R+r) + 2a(R-r) with sin a = (R-r)/C; crossed
/// L = 2C cos a + (pi+2a)(R+r) with sin a = (R+r)/C. Digits worked out from them by hand.
#[test]
fn closed_forms() {
    let two = |large: f64, small: f64, centre: f64, side: Side| {
        let pulleys = [
            (0.0, 0.0, 2.0 * large, Side::Ribs),
            (centre, 0.0, 2.0 * small, side),
        ];
        solved(&layout(&pulleys, Sense::Clockwise))
    };
    for (large, small, centre, expected) in [
        (800.0, 250.0, 12000.0, Some(27_323.885)),
        (8.0, 5.0, 26.0, Some(93.18724)),
        (196.5, 52.5, 697.0, Some(2206.1141)),
        (50.0, 50.0, 300.0, Some(914.15927)),
        (80.0, 50.0, 300.0, None),
    ] {
        let found = two(large, small, centre, Side::Ribs);
        let a = libm::asin((large - small) / centre);
        let closed = 2.0 * centre * libm::cos(a) + PI * (large + small) + 2.0 * a * (large - small);
        // The same another way: 2 R (pi - b + tan b) + 2 r (b - tan b), cos b = (R - r)/C.
        let b = libm::acos((large - small) / centre);
        let other = 2.0 * large * (PI - b + libm::tan(b)) + 2.0 * small * (b - libm::tan(b));
        let length = found.length_mm.unwrap();
        assert!((length / closed - 1.0).abs() < 1e-13);
        assert!(large == small || (length / other - 1.0).abs() < 1e-12);
        assert!(
            expected.is_none_or(|expected: f64| (length - expected).abs() < 5e-5),
            "{length}"
        );
        assert!(found.faults.is_empty(), "{:?}", found.faults);
    }
    for (large, small, centre, expected) in [
        (80.0, 50.0, 300.0, Some(1065.67619)),
        (800.0, 250.0, 12000.0, Some(27_390.606)),
        (8.0, 5.0, 26.0, Some(99.4876)),
    ] {
        let found = two(large, small, centre, Side::Back);
        let a = libm::asin((large + small) / centre);
        let closed = 2.0 * centre * libm::cos(a) + (PI + 2.0 * a) * (large + small);
        let length = found.length_mm.unwrap();
        assert!((length / closed - 1.0).abs() < 1e-13);
        assert!(
            expected.is_none_or(|expected: f64| (length - expected).abs() < 5e-5),
            "{length}"
        );
        // Right, and yet no way to run ribs.
        assert!(
            common::words(&found)
                .iter()
                .any(|word| word.starts_with("the belt crosses itself"))
        );
    }
    let small = two(196.5, 52.5, 697.0, Side::Ribs);
    assert!((wrap(&small, "b") - 156.15368).abs() < 5e-6);
}

/// Three pulleys, worked out in two ways outside this project.
#[test]
fn three_pulleys() {
    let ribs = Side::Ribs;
    let found = solved(&layout(
        &[
            (0.0, 0.0, 150.0, ribs),
            (300.0, 0.0, 80.0, ribs),
            (150.0, 200.0, 60.0, ribs),
        ],
        Sense::CounterClockwise,
    ));
    assert!((found.length_mm.unwrap() - 1_116.586_979_7).abs() < 1e-7);
    let touches: Vec<_> = found
        .pulleys
        .iter()
        .map(|pulley| pulley.touches.unwrap())
        .collect();
    for (touch, (span, wrap)) in touches.iter().zip([
        (297.95134, 143.93942),
        (249.79992, 122.46258),
        (245.91665, 93.59800),
    ]) {
        assert!(
            (touch.span_mm - span).abs() < 5e-6 && (touch.wrap_deg - wrap).abs() < 5e-6,
            "{touch:?}"
        );
    }
}

/// Grip at 180 degrees and friction 0.3, flat and in a groove of 40 degrees.
#[test]
fn grip_of_the_capstan() {
    for (friction, wrap_deg, groove_deg, expected) in [
        (0.2, 180.0, None, 1.874_456_1),
        (0.3, 720.0, None, 43.376_21),
        (0.3, 180.0, None, 2.566_332_4),
        (0.3, 180.0, Some(40.0), 15.730_802_4),
    ] {
        let found = grip(&GripQuestion {
            friction,
            wrap_deg,
            groove_deg,
        })
        .unwrap()
        .ratio;
        assert!((found / expected - 1.0).abs() < 2e-7, "{found}");
    }
    let ratio = grip(&GripQuestion {
        friction: 0.2,
        wrap_deg: 180.0,
        groove_deg: None,
    })
    .unwrap()
    .ratio;
    // 500 N of difference leave 571.784 N on the slack side.
    assert!((500.0 / (ratio - 1.0) - 571.784).abs() < 5e-4);
}

/// Effective length on two equal pulleys of 300 mm effective circumference: 2C + 300.
#[test]
fn effective_length_of_pk() {
    let across = 300.0 / PI;
    let mut two = layout(
        &[
            (0.0, 0.0, across, Side::Ribs),
            (500.0, 0.0, across, Side::Ribs),
        ],
        Sense::Clockwise,
    );
    two.profile = belt::Profile::PK;
    let found = solved(&two);
    assert!((found.length_mm.unwrap() - 1300.0).abs() < 1e-9);
    assert!((found.pitch_length_mm.unwrap() - 1300.0 - 4.0 * PI).abs() < 1e-9);
    // Speeds go by the pitch diameters, de + 4 mm.
    two.pulleys[1].diameter_mm = 50.0;
    assert!((solved(&two).pulleys[1].rpm_ratio - (across + 4.0) / 54.0).abs() < 1e-12);
}
