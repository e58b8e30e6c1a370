//! What is wrong with a routing is said before anybody starts the engine.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod common;

use belt::{Face, Fault, Layout, Profile, Pulley, Sense, Side, Tensioner, TensionerKind, Travel};
use common::{engine, solved, with_belt, words, wrap};

fn at(layout: &Layout, name: &str) -> usize {
    layout
        .pulleys
        .iter()
        .position(|pulley| pulley.name == name)
        .unwrap()
}

fn says(layout: &Layout, words_of: &str) {
    let said = words(&solved(layout));
    assert!(said.iter().any(|word| word.contains(words_of)), "{said:#?}");
}

#[test]
fn a_good_drive_has_nothing_wrong() {
    let found = solved(&engine());
    assert_eq!(words(&found), Vec::<String>::new());
    let sum: f64 = found
        .pulleys
        .iter()
        .map(|pulley| if pulley.side == Side::Ribs { 1.0 } else { -1.0 } * pulley.touches.unwrap().wrap_deg)
        .sum();
    assert!((sum - 360.0).abs() < 1e-9);
    let turns: Vec<Sense> = found.pulleys.iter().map(|pulley| pulley.turns).collect();
    let (cw, ccw) = (Sense::Clockwise, Sense::CounterClockwise);
    assert_eq!(turns, [cw, ccw, cw, ccw, cw]);
    assert!((found.pulleys[2].rpm_ratio - 160.0 / 62.0).abs() < 1e-12);
}

#[test]
fn wrong_side() {
    // Both stand so deep that the belt can only lie on them with its back.
    for (name, x, y) in [("tensioner", -60.0, 116.0), ("idler", 22.0, 150.0)] {
        let mut layout = engine();
        layout.tensioner = None;
        let idler = at(&layout, name);
        (layout.pulleys[idler].x_mm, layout.pulleys[idler].y_mm) = (x, y);
        assert!(words(&solved(&layout)).is_empty());
        layout.pulleys[idler].side = Side::Ribs;
        says(
            &layout,
            &format!("wrong side: {name} has the belt's ribs to it, it wants the back"),
        );
    }
    // As drawn the belt could lie on either side: geometry cannot tell, and that is said.
    let found = solved(&engine());
    assert!(
        found
            .notes
            .iter()
            .any(|note| note.contains("on tensioner with its ribs too")),
        "{:?}",
        found.notes
    );
    let mut layout = engine();
    layout.pulleys[4].side = Side::Back;
    says(&layout, "pump has the belt's back to it, it wants the ribs");
}

#[test]
fn a_face_that_does_not_suit_the_side() {
    let mut layout = engine();
    layout.pulleys[0].face = Some(Face::Ribbed);
    layout.pulleys[1].face = Some(Face::Smooth);
    assert!(solved(&layout).faults.is_empty());
    layout.pulleys[3].face = Some(Face::Ribbed);
    says(
        &layout,
        "wrong side: the back runs on idler, which is ribbed",
    );
    layout.pulleys[4].face = Some(Face::Smooth);
    says(&layout, "wrong side: ribs run on pump, which is smooth");
}

#[test]
fn wrong_sense() {
    let mut layout = engine();
    layout.pulleys[4].turns = Some(Sense::Clockwise);
    assert!(solved(&layout).faults.is_empty());
    layout.pulleys[4].turns = Some(Sense::CounterClockwise);
    says(
        &layout,
        "wrong sense: pump would turn clockwise, it has to turn counter-clockwise",
    );
}

/// The crank's sense contradicts the sequence: said, and the figures are those of the belt.
#[test]
fn the_crank_the_other_way_round() {
    let good = solved(&engine());
    let mut layout = engine();
    layout.pulleys[0].turns = Some(Sense::CounterClockwise);
    says(
        &layout,
        "wrong sense: with crank turning counter-clockwise the belt meets the pulleys the other way round",
    );
    let found = solved(&layout);
    assert!((found.length_mm.unwrap() - good.length_mm.unwrap()).abs() < 1e-9);
    for (one, other) in good.pulleys.iter().zip(&found.pulleys) {
        assert_eq!((&one.name, one.turns), (&other.name, other.turns.other()));
        let (one, other) = (one.touches.unwrap(), other.touches.unwrap());
        assert!((one.wrap_deg - other.wrap_deg).abs() < 1e-9);
    }
    // The run after the crank is now the one that came before it.
    let run = |drive: &belt::Drive, at: usize| drive.pulleys[at].touches.unwrap().span_mm;
    assert!((run(&found, 0) - run(&good, 4)).abs() < 1e-9);
}

#[test]
fn loops_round_the_wrong_pulley() {
    let mut layout = engine();
    layout.pulleys.swap(2, 4);
    says(&layout, "crosses");
    says(&layout, "loops round the wrong pulley");
    let mut ring = Layout::of(vec![
        Pulley::new("crank", 0.0, 0.0, 100.0).driving(Sense::CounterClockwise),
        Pulley::new("pump", 300.0, 0.0, 80.0),
        Pulley::new("alternator", 300.0, 300.0, 60.0),
        Pulley::new("compressor", 0.0, 300.0, 90.0),
        Pulley::new("fan", -150.0, 150.0, 90.0),
    ]);
    assert!(solved(&ring).faults.is_empty());
    ring.pulleys.swap(1, 2);
    says(&ring, "the belt crosses itself");
    says(&ring, "pump belongs between crank and alternator");
}

#[test]
fn it_lies_otherwise_than_it_belongs() {
    let lies = |change: fn(&mut Vec<(String, Side)>)| {
        let mut layout = engine();
        let mut lies: Vec<(String, Side)> = layout
            .pulleys
            .iter()
            .map(|pulley| (pulley.name.clone(), pulley.side))
            .collect();
        change(&mut lies);
        layout.lies = Some(lies);
        words(&solved(&layout))
    };
    assert!(lies(|_| {}).is_empty());
    // Whoever looks may begin anywhere and go either way.
    assert!(lies(|lies| lies.rotate_left(2)).is_empty());
    assert!(lies(|lies| lies.reverse()).is_empty());
    let said = |change| lies(change).join(" ");
    assert!(
        said(|lies| lies[3].1 = Side::Ribs)
            .contains("wrong side: it has its ribs on idler, it belongs there with its back")
    );
    assert!(said(|lies| drop(lies.remove(3))).contains("it passes idler by"));
    assert!(said(|lies| lies.swap(1, 2)).contains("it goes crank, alternator, tensioner"));
    assert!(
        said(|lies| lies[3].0 = "fan".to_owned()).contains("fan, which is no pulley of this belt")
    );
}

#[test]
fn a_pulley_that_the_belt_does_not_reach() {
    let mut layout = engine();
    let idler = at(&layout, "idler");
    // Above the run that it should press down.
    layout.pulleys[idler].y_mm = 420.0;
    says(&layout, "the belt does not lie on idler");
    let mut overlapping = engine();
    overlapping.pulleys[1].x_mm = -80.0;
    overlapping.pulleys[1].y_mm = 40.0;
    says(&overlapping, "crank and tensioner overlap");
}

#[test]
fn wrap_too_small() {
    let slim = |diameter| {
        Layout::of(vec![
            Pulley::new("crank", 0.0, 0.0, 160.0).driving(Sense::Clockwise),
            Pulley::new("pump", 0.0, 300.0, 120.0),
            Pulley::new("alternator", 60.0, 150.0, diameter),
        ])
    };
    let narrow = solved(&slim(60.0));
    assert!(wrap(&narrow, "alternator") < 45.0);
    assert!(
        words(&narrow)
            .join(" ")
            .contains("wrap too small: alternator has")
    );
    let mut stated = engine();
    stated.pulleys[2].least_wrap_deg = Some(wrap(&solved(&stated), "alternator") + 5.0);
    says(&stated, "the maker asks for");
    // A tensioner may have little.
    assert!(wrap(&solved(&engine()), "tensioner") < 60.0);
}

#[test]
fn the_arm_at_its_stop() {
    let layout = engine();
    let (least, most) = solved(&layout).window_mm.unwrap();
    assert!(most - least > 10.0, "{least} {most}");
    let middle = f64::midpoint(least, most);
    let fits = with_belt(&layout, middle);
    assert!(fits.faults.is_empty(), "{:?}", fits.faults);
    assert!((fits.length_mm.unwrap() - middle).abs() < 1e-6);
    let arm = fits.stand.unwrap().arm_deg.unwrap();
    assert!((72.0..=110.0).contains(&arm));
    let short = with_belt(&layout, least - 4.0);
    assert!(
        words(&short)
            .join(" ")
            .contains("arm at its stop: the belt is 4 mm too short")
    );
    let long = with_belt(&layout, most + 2.5);
    assert!(
        words(&long)
            .join(" ")
            .contains("arm at its stop: the belt is 2.5 mm too long")
    );
    let stops = [short, long].map(|found| found.stand.unwrap().arm_deg.unwrap());
    assert!(stops.contains(&72.0) && stops.contains(&110.0), "{stops:?}");
}

#[test]
fn an_arm_drawn_past_its_stop() {
    let mut layout = engine();
    if let Some((
        _,
        Travel::Arc {
            min_deg, max_deg, ..
        },
    )) = layout.tensioner.as_mut().unwrap().moves.as_mut()
    {
        (*min_deg, *max_deg) = (95.0, 110.0);
    }
    says(&layout, "arm past its stop: it is drawn at 90°");
    // The same stops a turn further on.
    let mut turned = engine();
    if let Some((
        _,
        Travel::Arc {
            min_deg, max_deg, ..
        },
    )) = turned.tensioner.as_mut().unwrap().moves.as_mut()
    {
        (*min_deg, *max_deg) = (432.0, 470.0);
    }
    assert_eq!(solved(&turned).stand.unwrap().arm_deg, Some(450.0));
}

#[test]
fn slots_screws_and_stretch_belts() {
    let mut layout = engine();
    layout.tensioner = Some(Tensioner {
        kind: TensionerKind::JackScrew,
        moves: Some((
            "alternator".to_owned(),
            Travel::Line {
                from_x_mm: -126.0,
                from_y_mm: 252.0,
                to_x_mm: -126.0,
                to_y_mm: 282.0,
            },
        )),
        torque_nm: None,
        force_n: None,
    });
    let found = solved(&layout);
    let stand = found.stand.unwrap();
    assert_eq!((stand.arm_deg, stand.along_mm), (None, Some(10.0)));
    let (least, most) = found.window_mm.unwrap();
    let fits = with_belt(&layout, f64::midpoint(least, most))
        .stand
        .unwrap();
    assert!(
        fits.along_mm
            .is_some_and(|along| (0.0..30.0).contains(&along))
    );
    layout.tensioner = Some(Tensioner {
        kind: TensionerKind::StretchBelt,
        moves: None,
        torque_nm: None,
        force_n: None,
    });
    let length = solved(&layout).length_mm.unwrap();
    let stretched = with_belt(&layout, length / 1.02);
    assert!((stretched.stretch.unwrap() - 0.02).abs() < 1e-12 && stretched.faults.is_empty());
    assert!(
        stretched
            .notes
            .iter()
            .any(|note| note.contains("never fit it twice"))
    );
    assert!(
        words(&with_belt(&layout, length + 3.0))
            .join("")
            .contains("3 mm too long")
    );
    layout.tensioner = None;
    assert!(
        words(&with_belt(&layout, length - 3.0))
            .join("")
            .contains("3 mm too short and nothing takes that up")
    );
}

#[test]
fn one_rib_off() {
    let mut layout = engine();
    layout.profile = Profile::PK;
    layout.pulleys[0].edge_mm = Some(12.0);
    layout.pulleys[2].edge_mm = Some(12.4);
    assert!(solved(&layout).faults.is_empty());
    layout.pulleys[2].edge_mm = Some(15.5);
    says(
        &layout,
        "one rib off: on alternator the belt lies 3.5 mm out of line",
    );
    layout.pulleys[2].edge_mm = Some(4.9);
    says(&layout, "2 ribs off");
    layout.pulleys[2].edge_mm = Some(13.8);
    says(
        &layout,
        "out of line: on alternator the belt lies 1.8 mm off",
    );
    layout.facts.ribs = Some(6);
    layout.pulleys[4].grooves = Some(5);
    says(&layout, "pump has 5 grooves for 6 ribs");
}

/// Within reach before out of reach, no flange before a flange, little slack before much.
#[test]
fn which_to_take_last() {
    let mut layout = engine();
    // How deep the ribs sit is not known without the profile.
    let bare = solved(&layout).let_off;
    let known: Vec<&str> = bare
        .iter()
        .filter(|off| off.slack_mm.is_some())
        .map(|off| off.pulley.as_str())
        .collect();
    assert_eq!(known, ["tensioner", "idler"]);
    layout.profile = Profile::PK;
    let names = |layout: &Layout| {
        let found = solved(layout);
        found
            .let_off
            .into_iter()
            .map(|off| off.pulley)
            .collect::<Vec<_>>()
    };
    // Smooth pulleys without a flange want no slack.
    let first = names(&layout);
    assert!(
        first[..2].contains(&"idler".to_owned()) && first[..2].contains(&"tensioner".to_owned())
    );
    for name in ["idler", "tensioner"] {
        let smooth = at(&layout, name);
        layout.pulleys[smooth].flange_mm = 2.0;
    }
    let ribbed = names(&layout);
    let slack: Vec<f64> = solved(&layout)
        .let_off
        .iter()
        .map(|off| off.slack_mm.unwrap())
        .collect();
    assert!(slack[0] <= slack[1] && slack[1] <= slack[2], "{slack:?}");
    let first = at(&layout, &ribbed[0]);
    layout.pulleys[first].reachable = false;
    let last = names(&layout);
    assert!(last[0] == ribbed[1] && last[4] == ribbed[0], "{last:?}");
    let found = solved(&layout);
    assert!(found.let_off.iter().all(|off| off.slack_mm.unwrap() > 0.0));
    assert!(
        found
            .notes
            .iter()
            .any(|note| note.contains("The tensioner gives"))
    );
}

/// Virtual work: the tension times the growth of the length is the arm's torque.
#[test]
fn the_spring_makes_the_tension() {
    let mut layout = engine();
    layout.tensioner.as_mut().unwrap().torque_nm = Some(30.0);
    let found = solved(&layout);
    let tension = found.stand.unwrap().tension_n.unwrap();
    let length_at = |turn_deg: f64| {
        let mut turned = engine();
        let arm: f64 = 70.0;
        turned.pulleys[1].x_mm = -120.0 + arm * libm::cos(turn_deg.to_radians());
        turned.pulleys[1].y_mm = 46.0 + arm * libm::sin(turn_deg.to_radians());
        solved(&turned).length_mm.unwrap()
    };
    let growth = (length_at(90.01) - length_at(89.99)) / 0.02_f64.to_radians();
    assert!(
        (tension * growth.abs() - 30_000.0).abs() < 0.5,
        "{tension} {growth}"
    );
}

#[test]
fn slip_margins_add_up_round_the_belt() {
    let mut layout = engine();
    layout.profile = Profile::PK;
    layout.facts.friction = Some(0.3);
    layout.facts.rpm = Some(2000.0);
    layout.facts.tension_n = Some(300.0);
    // Not all loads are known: nothing is made up.
    let open = solved(&layout);
    assert!(
        open.pulleys
            .iter()
            .all(|pulley| pulley.slip_margin.is_none())
    );
    assert!(
        open.notes
            .iter()
            .any(|note| note.contains("power_kw of alternator, idler, pump"))
    );
    for (name, power) in [("alternator", 2.0), ("idler", 0.0), ("pump", 1.0)] {
        let pulley = at(&layout, name);
        layout.pulleys[pulley].power_kw = Some(power);
    }
    let found = solved(&layout);
    // v = pi (160 + 4) mm 2000/min.
    let speed = std::f64::consts::PI * 0.164 * 2000.0 / 60.0;
    let after = |name: &str| found.pulleys[at(&layout, name)].tension_n.unwrap();
    assert!((after("tensioner") - 300.0).abs() < 1e-9);
    assert!((after("alternator") - 300.0 - 2000.0 / speed).abs() < 1e-9);
    assert!((after("pump") - 300.0 - 3000.0 / speed).abs() < 1e-9);
    assert!((after("crank") - 300.0).abs() < 1e-9);
    let alternator = &found.pulleys[2];
    let ratio = alternator.holds_ratio.unwrap();
    let angle = alternator.touches.unwrap().wrap_deg.to_radians();
    assert!((ratio - libm::exp(0.3 / libm::sin(20_f64.to_radians()) * angle)).abs() < 1e-9 * ratio);
    let margin = alternator.slip_margin.unwrap();
    assert!((margin - 300.0 * (ratio - 1.0) / (2000.0 / speed)).abs() < 1e-9 * margin);
    assert!(
        found.pulleys[3].slip_margin.is_none(),
        "an idler carries nothing"
    );
    // Hardly any tension: it slips, and that is said.
    layout.facts.tension_n = Some(5.0);
    says(&layout, "slips");
    // The same bolted fast: the mean over the runs stays what it was at rest.
    layout.facts.tension_n = Some(300.0);
    layout.tensioner = None;
    layout.pulleys[1].power_kw = Some(0.0);
    let fast = solved(&layout);
    let (mut all, mut weighted) = (0.0, 0.0);
    for pulley in &fast.pulleys {
        let span = pulley.touches.unwrap().span_mm;
        all += span;
        weighted += span * pulley.tension_n.unwrap();
    }
    assert!((weighted / all - 300.0).abs() < 1e-9);
}

/// A toothed belt over crank, cam and pump: counted in teeth, no slip.
#[test]
fn toothed_belts() {
    let pitch = 9.525;
    let mut layout = Layout::of(vec![
        Pulley::new("crank", 0.0, 0.0, 1.0).driving(Sense::Clockwise),
        Pulley::new("tensioner", -75.0, 150.0, 60.0).on_back(),
        Pulley::new("cam", 0.0, 300.0, 1.0),
    ]);
    layout.profile = Profile::Toothed {
        pitch_mm: pitch,
        back_mm: 0.0,
    };
    layout.pulleys[0].teeth = Some(20);
    layout.pulleys[2].teeth = Some(40);
    layout.pulleys[0].mark_deg = Some(90.0);
    layout.pulleys[2].mark_deg = Some(90.0);
    let found = solved(&layout);
    assert_eq!(found.pulleys[2].rpm_ratio, 0.5);
    assert!(found.cautions.contains(&belt::Caution::Interference));
    assert!(
        found
            .notes
            .iter()
            .any(|note| note.contains("no slip is reckoned"))
    );
    let teeth: f64 = found
        .between_marks
        .iter()
        .map(|between| between.teeth)
        .sum();
    assert!((teeth - found.length_mm.unwrap() / pitch).abs() < 1e-9);
    // Turning the cam by one tooth moves one tooth from one side of the marks to the other.
    layout.pulleys[2].mark_deg = Some(90.0 - 9.0);
    let turned = solved(&layout);
    let first = |drive: &belt::Drive| drive.between_marks[0].teeth;
    assert!((first(&turned) - first(&found) - 1.0).abs() < 1e-9);
    // Put to whole teeth, half a tooth off is said.
    let part = first(&found) - libm::round(first(&found));
    layout.pulleys[2].mark_deg = Some(90.0 + 9.0 * part);
    let whole = words(&solved(&layout)).join(" ");
    assert!(!whole.contains("crank and cam lie"), "{whole}");
    layout.pulleys[2].mark_deg = Some(90.0 + 9.0 * part + 4.5);
    says(&layout, "between the marks of crank and cam lie");
}

#[test]
fn a_toothed_belt_is_tensioned_where_it_leaves_the_crank() {
    let with = |turns: Sense| {
        let mut pulleys = vec![
            Pulley::new("crank", 0.0, 0.0, 60.0).driving(turns),
            Pulley::new("tensioner", -75.0, 150.0, 60.0).on_back(),
            Pulley::new("cam", 0.0, 300.0, 120.0),
        ];
        if turns == Sense::CounterClockwise {
            pulleys[1..].reverse();
        }
        let mut layout = Layout::of(pulleys);
        layout.profile = Profile::Toothed {
            pitch_mm: 8.0,
            back_mm: 0.0,
        };
        layout.tensioner = Some(Tensioner {
            kind: TensionerKind::SpringArm,
            moves: Some((
                "tensioner".to_owned(),
                Travel::Arc {
                    pivot_x_mm: -120.0,
                    pivot_y_mm: 150.0,
                    min_deg: -20.0,
                    max_deg: 20.0,
                },
            )),
            torque_nm: None,
            force_n: None,
        });
        words(&solved(&layout)).join(" ")
    };
    assert!(!with(Sense::Clockwise).contains("tight run"));
    assert!(with(Sense::CounterClockwise).contains("tensioner stands in the tight run"));
    let mut two = Layout::of(vec![
        Pulley::new("a", 0.0, 0.0, 60.0).driving(Sense::Clockwise),
        Pulley::new("b", 0.0, 300.0, 60.0),
    ]);
    two.profile = Profile::Toothed {
        pitch_mm: 8.0,
        back_mm: 0.0,
    };
    let half = with_belt(&two, 788.5).faults;
    assert!(
        half.iter()
            .any(|fault| matches!(fault, Fault::NoWholeTeeth { .. })),
        "{half:?}"
    );
}
