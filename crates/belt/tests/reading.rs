//! Layouts as text, length codes, gauges and straight edges; and what is wrong with them.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod common;

use belt::{
    AlignQuestion, BeltError, Layout, Profile, Pulley, Question, Sense, Shape, Side, Tensioner,
    TensionerKind, Travel, WearQuestion, WearVerdict, alignment, code, drive, read, wear,
};
use common::ENGINE;
use proptest::prelude::*;

fn wrong(text: &str) -> String {
    let troubles = read("l.toml", text).unwrap_err();
    troubles
        .iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn a_layout_is_read() {
    let found = read("engine.toml", ENGINE).unwrap();
    assert!(found.warnings.is_empty());
    assert_eq!(found.layout.pulleys.len(), 5);
    assert_eq!(found.layout.pulleys[3].side, Side::Back);
    assert_eq!(
        found.layout.tensioner.unwrap().kind,
        TensionerKind::SpringArm
    );
    let more = format!(
        "profile = \"PK\"\ncolour = 1\n{ENGINE}kind = \"hydraulic\"\ntorque_nm = 20\n[belt]\nribs = 6\n[[lies]]\npulley = \"crank\"\n"
    );
    let found = read("engine.toml", &more).unwrap();
    assert_eq!(found.layout.profile, Profile::PK);
    assert_eq!(found.warnings.len(), 1);
    assert!(
        found.warnings[0]
            .to_string()
            .starts_with("engine.toml:2: `colour` is no key of the layout; it is not used")
    );
    assert_eq!(
        found.layout.lies,
        Some(vec![("crank".to_owned(), Side::Ribs)])
    );
}

#[test]
fn bad_layouts_say_where_what_and_how() {
    assert!(wrong("x = ").contains("l.toml:1: this is no TOML"));
    assert!(wrong("").contains("no pulley is listed; write [[pulley]]"));
    assert!(wrong("pulley = 3").contains("`pulley` is no list; write [[pulley]]"));
    let one = "[[pulley]]\nname = \"crank\"\nx_mm = 0\ny_mm = 0\n";
    assert!(wrong(one).contains("l.toml:2: crank has no `diameter_mm`; add diameter_mm = ..."));
    assert!(wrong(&format!("{one}diametr_mm = 5")).contains("did you mean `diameter_mm`?"));
    assert!(wrong(&format!("{one}diameter = 5")).contains("did you mean `diameter_mm`?"));
    assert!(
        wrong(&format!("{one}diameter_mm = \"big\""))
            .contains("l.toml:5: `diameter_mm` of crank is no number")
    );
    assert!(wrong(&format!("{one}diameter_mm = nan")).contains("is no number"));
    assert!(
        wrong(&format!("{one}diameter_mm = 5\nside = \"front\""))
            .contains("write one of \"ribs\", \"back\"")
    );
    assert!(wrong(&format!("{one}diameter_mm = 5\ndrives = 1")).contains("write true or false"));
    assert!(
        wrong(&format!("{one}diameter_mm = 5\nturns = \"left\""))
            .contains("write one of \"cw\", \"ccw\"")
    );
    assert!(
        wrong(&format!("{one}diameter_mm = 5\n[tensioner]\n"))
            .contains("the tensioner names no pulley")
    );
    assert!(
        wrong(&format!("tensioner = 3\n{one}diameter_mm = 5")).contains("`tensioner` is no table")
    );
    assert!(
        wrong(&format!("profile = \"toothed\"\n{one}diameter_mm = 5"))
            .contains("has no `pitch_mm`")
    );
}

fn refused(change: impl Fn(&mut Layout)) -> String {
    let mut layout = common::engine();
    change(&mut layout);
    drive(&Question {
        layout,
        length_mm: None,
    })
    .unwrap_err()
    .to_string()
}

#[test]
fn layouts_that_cannot_be_reckoned_with() {
    assert!(refused(|layout| layout.pulleys.truncate(1)).contains("list at least two"));
    assert!(
        refused(|layout| layout.pulleys[1].name = "crank".to_owned())
            .contains("two pulleys are called crank")
    );
    assert!(refused(|layout| layout.pulleys[0].drives = false).contains("0 pulleys drive"));
    assert!(
        refused(|layout| layout.pulleys[0].turns = None).contains("add turns = \"cw\" or \"ccw\"")
    );
    assert!(
        refused(|layout| layout.pulleys[2].diameter_mm = -3.0)
            .contains("the diameter of alternator is -3 mm")
    );
    assert!(
        refused(|layout| layout.pulleys[2].x_mm = f64::NAN).contains("the place of alternator")
    );
    assert!(
        refused(
            |layout| layout.tensioner.as_mut().unwrap().moves.as_mut().unwrap().0 = "x".to_owned()
        )
        .contains("no pulley is called x")
    );
    assert!(
        refused(
            |layout| layout.tensioner.as_mut().unwrap().moves.as_mut().unwrap().0 =
                "crank".to_owned()
        )
        .contains("crank drives")
    );
    let travel = |travel| {
        move |layout: &mut Layout| {
            layout.tensioner.as_mut().unwrap().moves = Some(("tensioner".to_owned(), travel));
        }
    };
    assert!(
        refused(travel(Travel::Arc {
            pivot_x_mm: 0.0,
            pivot_y_mm: 0.0,
            min_deg: 30.0,
            max_deg: 10.0
        }))
        .contains("write the lesser first")
    );
    assert!(
        refused(travel(Travel::Arc {
            pivot_x_mm: -120.0,
            pivot_y_mm: 116.0,
            min_deg: 0.0,
            max_deg: 10.0
        }))
        .contains("stands on its pivot")
    );
    assert!(
        refused(travel(Travel::Line {
            from_x_mm: 1.0,
            from_y_mm: 1.0,
            to_x_mm: 1.0,
            to_y_mm: 1.0
        }))
        .contains("no length")
    );
    let length = drive(&Question {
        layout: common::engine(),
        length_mm: Some(-1.0),
    });
    assert!(matches!(length, Err(BeltError::OutOfRange { .. })));
}

#[test]
fn codes_in_every_form() {
    let ribbed = code(" 6 pk 1285 ").unwrap();
    assert_eq!(
        (ribbed.shape, ribbed.ribs, ribbed.length_mm),
        (Shape::Ribbed, Some(6), 1285.0)
    );
    assert!(code("6DPK1285").unwrap().double_sided && code("6EPK1022").unwrap().stretch);
    assert!(code("K060505SF").unwrap().stretch && code("DK060955").unwrap().double_sided);
    for inch in ["K060505", "6K505", "505K6", "0505K6"] {
        let found = code(inch).unwrap();
        assert_eq!(
            (found.ribs, libm::round(found.length_mm * 10.0)),
            (Some(6), 12827.0),
            "{inch}"
        );
    }
    let vee = code("AVX10x1000 La").unwrap();
    assert_eq!(
        (vee.shape, vee.width_mm, vee.length_mm),
        (Shape::Vee, Some(10.0), 1000.0)
    );
    assert_eq!(code("10×1000").unwrap().width_mm, Some(10.0));
    let toothed = code("1200-8M-20").unwrap();
    assert_eq!(
        (toothed.teeth, toothed.pitch_mm, toothed.width_mm),
        (Some(150), Some(8.0), Some(20.0))
    );
    let inch = code("450H100").unwrap();
    assert_eq!((inch.teeth, inch.pitch_mm), (Some(90), Some(12.7)));
    assert!((inch.width_mm.unwrap() - 25.4).abs() < 1e-9);
    let car = code("124 ZA 19").unwrap();
    assert!((car.length_mm - 124.0 * 9.525).abs() < 1e-9);
    for bad in [
        "",
        "PK",
        "6PK",
        "PK1285",
        "6QK1285",
        "K6505",
        "6PK1285X9",
        "99999999999PK1",
        "0PK1285",
        "6PK5",
        "6-",
        "K06.505",
        "ÄÖ",
        "6PK1e9",
    ] {
        assert!(code(bad).is_err(), "{bad}");
    }
    assert!(
        code("belt")
            .unwrap_err()
            .to_string()
            .contains("write it as printed, such as 6PK1285")
    );
}

#[test]
fn straight_edges() {
    let ask = |near_mm, far_mm, limit_deg| {
        alignment(&AlignQuestion {
            near_mm,
            far_mm,
            apart_mm: 150.0,
            span_mm: Some(300.0),
            limit_deg,
        })
    };
    let flush = ask(0.0, 0.0, Some(0.3)).unwrap();
    assert_eq!((flush.tilt_deg, flush.within_limit), (0.0, Some(true)));
    let off = ask(2.0, 2.0, Some(0.3)).unwrap();
    assert!(off.tilt_deg == 0.0 && off.within_limit == Some(false));
    assert!((off.offset_deg.unwrap() - 0.38197).abs() < 1e-5);
    assert_eq!(ask(2.0, 2.0, None).unwrap().within_limit, None);
    assert!(
        ask(900.0, 0.0, None)
            .unwrap_err()
            .to_string()
            .contains("the near reading")
    );
}

#[test]
fn gauges() {
    let said = |question: WearQuestion| wear(&question).unwrap();
    let none = WearQuestion::default();
    assert_eq!(said(none).verdict, WearVerdict::CannotTell);
    assert_eq!(
        said(WearQuestion {
            groove_mm: Some((1.9, 2.4)),
            ..none
        })
        .verdict,
        WearVerdict::Good
    );
    assert_eq!(
        said(WearQuestion {
            pin_level_or_below: Some(true),
            ..none
        })
        .verdict,
        WearVerdict::Worn
    );
    assert_eq!(
        said(WearQuestion {
            damage_seen: Some(true),
            groove_mm: Some((1.9, 2.4)),
            ..none
        })
        .verdict,
        WearVerdict::Worn
    );
    // No damage seen proves nothing.
    assert_eq!(
        said(WearQuestion {
            damage_seen: Some(false),
            ..none
        })
        .verdict,
        WearVerdict::CannotTell
    );
    let long = WearQuestion {
        length_mm: Some((1285.0, 1297.85)),
        ..none
    };
    assert!((said(long).stretch_percent.unwrap() - 1.0).abs() < 1e-9);
    assert_eq!(
        said(long).verdict,
        WearVerdict::CannotTell,
        "no limit was stated"
    );
    assert_eq!(
        said(WearQuestion {
            stretch_limit_percent: Some(1.0),
            length_mm: Some((1000.0, 1020.0)),
            ..none
        })
        .verdict,
        WearVerdict::Worn
    );
    assert!(
        wear(&WearQuestion {
            groove_mm: Some((-1.0, 2.0)),
            ..none
        })
        .is_err()
    );
}

fn any_pulley() -> impl Strategy<Value = (f64, f64, f64, bool)> {
    (
        -400.0..400.0_f64,
        -400.0..400.0_f64,
        20.0..200.0_f64,
        any::<bool>(),
    )
}

fn of(pulleys: &[(f64, f64, f64, bool)]) -> Layout {
    let each: Vec<(f64, f64, f64, Side)> = pulleys
        .iter()
        .map(|(x, y, d, back)| (*x, *y, *d, if *back { Side::Back } else { Side::Ribs }))
        .collect();
    common::layout(&each, Sense::Clockwise)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Whatever is listed: an answer or an error, never a panic; and where the belt lies well
    /// the wraps add up to a turn, at least as long as the straight way round the centres.
    #[test]
    fn any_layout_is_answered(
        pulleys in proptest::collection::vec(any_pulley(), 2..8),
        moves in 1..7_usize,
        pivot in (-300.0..300.0_f64, -300.0..300.0_f64),
        stops in (-90.0..90.0_f64, 1.0..120.0_f64),
        belt in proptest::option::of(200.0..4000.0_f64),
    ) {
        let mut layout = of(&pulleys);
        if moves < pulleys.len() {
            layout.tensioner = Some(Tensioner {
                kind: TensionerKind::SpringArm,
                moves: Some((layout.pulleys[moves].name.clone(), Travel::Arc {
                    pivot_x_mm: pivot.0, pivot_y_mm: pivot.1, min_deg: stops.0, max_deg: stops.0 + stops.1,
                })),
                torque_nm: Some(20.0),
                force_n: None,
            });
        }
        let found = drive(&Question { layout, length_mm: belt });
        let found = found.unwrap();
        let lies_well = !found.faults.iter().any(|fault| matches!(fault,
            belt::Fault::CrossesItself { .. } | belt::Fault::CrossesPulley { .. } | belt::Fault::NoPlainLoop { .. }
            | belt::Fault::NoWayBetween { .. } | belt::Fault::WrongWayRound { .. }));
        if let Some(length) = found.length_mm {
            prop_assert!(length.is_finite() && length > 0.0);
            if lies_well {
                let sum: f64 = found.pulleys.iter().map(|pulley| {
                    let sign = if pulley.turns == Sense::Clockwise { 1.0 } else { -1.0 };
                    sign * pulley.touches.unwrap().wrap_deg
                }).sum();
                prop_assert!((sum.abs() - 360.0).abs() < 1e-6, "{sum}");
            }
        }
        if let Some((least, most)) = found.window_mm {
            prop_assert!(least <= most + 1e-9);
        }
        for fault in &found.faults {
            prop_assert!(!fault.to_string().is_empty());
        }
    }

    /// Moving and turning the whole drive, or mirroring it with the senses, changes no length.
    #[test]
    fn the_place_on_the_paper_does_not_matter(
        shift in (-500.0..500.0_f64, -500.0..500.0_f64),
        turn in 0.0..std::f64::consts::TAU,
    ) {
        let good = common::solved(&common::engine());
        let mut moved = common::engine();
        moved.tensioner = None;
        for pulley in &mut moved.pulleys {
            let (x, y) = (pulley.x_mm, pulley.y_mm);
            pulley.x_mm = shift.0 + x * libm::cos(turn) - y * libm::sin(turn);
            pulley.y_mm = shift.1 + x * libm::sin(turn) + y * libm::cos(turn);
        }
        let found = common::solved(&moved);
        prop_assert!((found.length_mm.unwrap() - good.length_mm.unwrap()).abs() < 1e-8);
        for pulley in &mut moved.pulleys {
            pulley.x_mm = -pulley.x_mm;
        }
        moved.pulleys[0].turns = Some(Sense::CounterClockwise);
        let mirrored = common::solved(&moved);
        prop_assert!((mirrored.length_mm.unwrap() - good.length_mm.unwrap()).abs() < 1e-8);
        prop_assert!(mirrored.faults.is_empty(), "{:?}", mirrored.faults);
    }

    /// Two pulleys: both closed forms, at any size.
    #[test]
    fn two_pulleys_follow_the_closed_forms(
        large in 20.0..300.0_f64,
        small in 10.0..300.0_f64,
        gap in 5.0..500.0_f64,
    ) {
        let centre = large + small + gap;
        let two = |side| {
            let found = common::solved(&common::layout(
                &[(0.0, 0.0, 2.0 * large, Side::Ribs), (centre, 0.0, 2.0 * small, side)], Sense::CounterClockwise));
            found.length_mm.unwrap()
        };
        let open = libm::asin((large - small) / centre);
        let closed = 2.0 * centre * libm::cos(open) + std::f64::consts::PI * (large + small) + 2.0 * open * (large - small);
        prop_assert!((two(Side::Ribs) - closed).abs() < 1e-8);
        let cross = libm::asin((large + small) / centre);
        let crossed = 2.0 * centre * libm::cos(cross) + (std::f64::consts::PI + 2.0 * cross) * (large + small);
        prop_assert!((two(Side::Back) - crossed).abs() < 1e-8);
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,200}") {
        let _ = read("t", &text);
        let _ = code(&text);
    }

    /// Keys and values in any mixture.
    #[test]
    fn any_pulley_text_is_read_or_refused(
        lines in proptest::collection::vec((0..16_usize, 0..7_usize), 0..24),
    ) {
        let keys = ["[[pulley]]", "name", "x_mm", "y_mm", "diameter_mm", "side", "drives", "turns", "[tensioner]",
            "pivot_x_mm", "[[lies]]", "pulley", "profile", "kind", "teeth", "[belt]"];
        let values = ["1", "-1e308", "\"cw\"", "true", "[]", "\"PK\"", "{}"];
        let text: String = lines.iter().map(|(key, value)| match keys[*key] {
            table if table.starts_with('[') => format!("{table}\n"),
            key => format!("{key} = {}\n", values[*value]),
        }).collect();
        if let Ok(found) = read("t", &text) {
            let _ = drive(&Question { layout: found.layout, length_mm: None });
        }
    }
}

#[test]
fn a_pulley_can_be_built_in_code() {
    let pump = Pulley::new("pump", 1.0, 2.0, 3.0).on_back();
    assert_eq!(pump.side, Side::Back);
}

/// The layout that the document shows is read without a word.
#[test]
fn the_documents_layout_is_read() {
    let document = include_str!("../../../docs/belt.md");
    let text = document
        .split("```toml")
        .nth(1)
        .unwrap()
        .split("```")
        .next()
        .unwrap();
    let found = read("belt.md", text).unwrap();
    assert!(found.warnings.is_empty(), "{:?}", found.warnings);
    assert_eq!(found.layout.pulleys.len(), 2);
    assert_eq!(found.layout.tensioner.unwrap().torque_nm, Some(30.0));
}
