//! A belt round its pulleys: to scale, readable, nothing sticks out.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use belt::{Layout, Profile, Pulley, Question, Sense, Side, drive};
use drawing::{Area, BeltPath, BeltPulley, Drawing, Mark, Stroke, WrongRun, belt as draw, svg};
use proptest::prelude::*;

/// What the belt's own room finds, as the drawing wants it.
fn path(layout: Layout) -> BeltPath {
    let found = drive(&Question {
        layout: layout.clone(),
        length_mm: None,
    })
    .unwrap();
    let pulleys = found
        .pulleys
        .iter()
        .zip(&layout.pulleys)
        .map(|(on, pulley)| {
            let touches = on.touches.unwrap();
            BeltPulley {
                name: on.name.clone(),
                x_mm: on.x_mm,
                y_mm: on.y_mm,
                radius_mm: on.line_radius_mm,
                ribbed: on.side == Side::Ribs,
                wrap_deg: touches.wrap_deg,
                clockwise: on.turns == Sense::Clockwise,
                drives: pulley.drives,
                meets_mm: touches.meets,
                leaves_mm: touches.leaves,
            }
        });
    BeltPath {
        title: "The belt".to_owned(),
        pulleys: pulleys.collect(),
        rough: false,
        wrong: None,
    }
}

fn engine() -> BeltPath {
    path(Layout::of(vec![
        Pulley::new("crank", 0.0, 0.0, 160.0).driving(Sense::Clockwise),
        Pulley::new("tensioner", -120.0, 116.0, 72.0).on_back(),
        Pulley::new("alternator", -126.0, 262.0, 62.0),
        Pulley::new("idler", 22.0, 226.0, 68.0).on_back(),
        Pulley::new("pump", 172.0, 196.0, 132.0),
    ]))
}

/// Over the idler instead of under it.
fn engine_wrong() -> BeltPath {
    let mut wrong = engine();
    wrong.wrong = Some(WrongRun {
        points_mm: vec![(-120.0, 293.0), (22.0, 262.0), (172.0, 262.0)],
        cross_mm: (22.0, 262.0),
    });
    wrong
}

fn inside(drawn: &Drawing) -> bool {
    drawn.texts().iter().all(|text| {
        let area = text.area();
        area.x >= -0.5
            && area.right() <= drawn.width + 0.5
            && area.y >= -4.0
            && area.bottom() <= drawn.height + 4.0
    })
}

fn apart(drawn: &Drawing) -> bool {
    let areas: Vec<Area> = drawn.texts().iter().map(|text| text.area()).collect();
    areas.iter().enumerate().all(|(index, one)| {
        areas.iter().skip(index + 1).all(|other| {
            // A name and its degrees stand line under line.
            let shared = (one.bottom().min(other.bottom()) - one.y.max(other.y)).max(0.0);
            !one.overlaps(other) || shared < 5.0
        })
    })
}

#[test]
fn a_belt_on_the_phone() {
    let drawn = draw(&engine(), 358.0, 380.0);
    assert!(
        drawn.width <= 358.0 && drawn.height <= 390.0,
        "{}",
        drawn.height
    );
    assert!(inside(&drawn) && apart(&drawn), "{:#?}", drawn.texts());
    for words in ["crank", "alternator", "tensioner", "idler", "pump"] {
        assert!(
            drawn.texts().iter().any(|text| text.text == words),
            "{words}"
        );
        assert!(drawn.description.contains(words));
    }
    assert!(drawn.texts().iter().all(|text| text.size >= 18.0));
    insta::assert_snapshot!(svg(&drawn));
}

#[test]
fn how_it_lies_now_is_dashed_with_a_cross_and_words() {
    let drawn = draw(&engine_wrong(), 358.0, 380.0);
    assert!(
        drawn
            .texts()
            .iter()
            .any(|text| text.text == "it lies like this")
    );
    assert!(inside(&drawn) && apart(&drawn), "{:#?}", drawn.texts());
    assert!(drawn.description.contains("which is wrong"));
    let written = svg(&drawn);
    assert!(written.contains("stroke-dasharray=\"9 6\"") && written.contains("line-stop"));
    insta::assert_snapshot!(written);
}

/// The belt is one closed line 5 px wide: each run ends where the next arc begins.
#[test]
fn the_belt_is_closed_and_to_scale() {
    let drawn = draw(&engine(), 358.0, 380.0);
    let belts = drawn.marks.iter().filter(|mark| match mark {
        Mark::Line { pen, .. } | Mark::Arc { pen, .. } => pen.stroke == Stroke::Belt,
        _ => false,
    });
    let mut end: Option<(f64, f64)> = None;
    let mut count = 0;
    for mark in belts {
        count += 1;
        match *mark {
            Mark::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
                ..
            } => {
                let at = |deg: f64| {
                    (
                        centre.x + radius * deg.to_radians().cos(),
                        centre.y + radius * deg.to_radians().sin(),
                    )
                };
                if let Some(end) = end {
                    let start = at(start_deg);
                    assert!((start.0 - end.0).hypot(start.1 - end.1) < 1e-6);
                }
                end = Some(at(start_deg + sweep_deg));
            }
            Mark::Line { from, to, .. } => {
                let end_of_arc = end.unwrap();
                assert!((from.x - end_of_arc.0).hypot(from.y - end_of_arc.1) < 1e-6);
                end = Some((to.x, to.y));
            }
            _ => {}
        }
    }
    assert_eq!(count, 10);
    // Rims as large as their pulleys: crank 160 and pump 132.
    let radii: Vec<f64> = drawn
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Circle { radius, style, .. } if style.fill == Some(drawing::Ink::Paper) => {
                Some(*radius)
            }
            _ => None,
        })
        .collect();
    assert!((radii[0] / radii[4] - 160.0 / 132.0).abs() < 1e-9);
    // A second ring inside the ribbed ones alone.
    let rings = drawn
        .marks
        .iter()
        .filter(|mark| matches!(mark, Mark::Circle { style, .. } if style.fill.is_none()));
    assert_eq!(rings.count(), 3);
}

#[test]
fn nothing_and_nonsense_are_survived() {
    assert!(draw(&BeltPath::default(), f64::NAN, 0.0).marks.is_empty());
    let mut broken = engine();
    broken.pulleys[0].x_mm = f64::INFINITY;
    assert!(draw(&broken, 358.0, 380.0).marks.is_empty());
    let mut wrong = engine_wrong();
    wrong.wrong = Some(WrongRun {
        points_mm: vec![(f64::NAN, 0.0), (1.0, 1.0)],
        cross_mm: (0.0, 0.0),
    });
    assert!(
        !draw(&wrong, 358.0, 380.0)
            .texts()
            .iter()
            .any(|text| text.text == "it lies like this")
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever the pulleys: lettering stays on the paper and no name lies over another.
    #[test]
    fn any_belt_can_be_read(
        radii in proptest::collection::vec(20.0..90.0_f64, 2..7),
        far in 180.0..320.0_f64,
        name in "[a-z ]{1,30}",
        pk: bool,
    ) {
        #[allow(clippy::cast_precision_loss)]
        let step = std::f64::consts::TAU / radii.len() as f64;
        let pulleys = radii.iter().enumerate().map(|(at, radius)| {
            #[allow(clippy::cast_precision_loss)]
            let angle = step * at as f64;
            Pulley::new(format!("{name}{at}"), far * angle.cos(), far * angle.sin(), 2.0 * radius)
        });
        let mut layout = Layout::of(pulleys.collect());
        layout.pulleys[0] = layout.pulleys[0].clone().driving(Sense::CounterClockwise);
        if pk {
            layout.profile = Profile::PK;
        }
        let drawn = draw(&path(layout), 358.0, 380.0);
        prop_assert!(inside(&drawn), "{:#?}", drawn.texts());
        prop_assert!(apart(&drawn), "{:#?}", drawn.texts());
        prop_assert!(roxmltree::Document::parse(&svg(&drawn)).is_ok());
    }
}
