//! Joints that people's lives hang on, special holes, and questions put back to whoever asks.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calculators::threads::ask::{
    ExtractQuestion, RepairQuestion, ThreadQuestion, TorqueQuestion, clamp, extract, repair,
    thread, torque,
};
use fastener::class::Class;
use fastener::designation::read;
use fastener::extract::ExtractionWay;
use fastener::holds::Holds;
use fastener::repair::{Planning, Repairs, Way};
use fastener::torque::Fate;

const HOLE: RepairQuestion = RepairQuestion {
    thread: "M10x1.5",
    joint: None,
    class: Some("8.8"),
    bolt_length: None,
    engaged: "20 mm",
    blind: Some("30 mm"),
    through: None,
    boss: Some("40 mm"),
    wall: None,
    metal: "grey iron class 30",
    damage: Some("stripped"),
    torn: None,
    torque: Some("45 Nm"),
    condition: Some("oiled"),
    head: None,
    seat: None,
    other: None,
    other_hole: None,
    no_drill_room: false,
    tilt: None,
};

fn repairs(question: &RepairQuestion) -> Repairs {
    repair(question, &Planning::default()).unwrap().repairs
}

fn ways(repairs: &Repairs) -> Vec<Way> {
    repairs.options.iter().map(|option| option.way).collect()
}

fn said(repairs: &Repairs, what: &str) -> bool {
    repairs.notes.iter().any(|note| note.contains(what))
}

#[test]
fn where_people_are_hurt_nothing_home_made_is_ranked() {
    for joint in [
        "brake",
        "caliper carrier",
        "steering",
        "suspension",
        "wheel",
        "wheel stud",
        "seat",
        "belt",
        "airbag",
        "fuel",
        "towing",
        "high-voltage",
        "driveshaft",
    ] {
        let found = repairs(&RepairQuestion {
            joint: Some(joint),
            ..HOLE
        });
        let ways = ways(&found);
        assert_eq!(ways.len(), 2, "{joint}: {ways:?}");
        assert!(
            ways.contains(&Way::MakersPart) && ways.contains(&Way::MakersRepair),
            "{joint}"
        );
        assert_eq!(found.options[0].way, Way::MakersPart);
        assert!(
            found.options[0]
                .steps
                .iter()
                .any(|step| step.what.contains("prove it"))
        );
        assert!(said(&found, "nothing home-made"), "{joint}");
    }
}

#[test]
fn a_purpose_in_the_thread_says_what_it_holds() {
    let found = repairs(&RepairQuestion {
        thread: "M12x1.5 wheel stud",
        torque: None,
        class: None,
        ..HOLE
    });
    assert_eq!(found.options[0].way, Way::MakersPart);
    let brake = repairs(&RepairQuestion {
        thread: "brake line M10x1",
        torque: None,
        class: None,
        ..HOLE
    });
    assert_eq!(brake.options[0].way, Way::MakersPart);
}

#[test]
fn sizes_of_wheels_and_lines_are_asked_about() {
    for size in [
        "M12x1.5", "M12x1.25", "M14x1.5", "1/2-20", "7/16-20", "M10x1",
    ] {
        let question = RepairQuestion {
            thread: size,
            torque: None,
            class: None,
            ..HOLE
        };
        let trouble = repair(&question, &Planning::default()).unwrap_err();
        assert_eq!(trouble.field, "joint", "{size}");
        assert!(
            trouble.what.starts_with("what does the joint hold?"),
            "{}",
            trouble.what
        );
        let told = RepairQuestion {
            joint: Some("bracket"),
            ..question
        };
        assert!(repair(&told, &Planning::default()).is_ok(), "{size}");
    }
    // Any other size is answered with the question first.
    let found = repairs(&HOLE);
    assert!(said(&found, "What does the joint hold?"));
    assert!(!said(
        &repairs(&RepairQuestion {
            joint: Some("cover"),
            ..HOLE
        }),
        "What does the joint hold?"
    ));
    let odd = RepairQuestion {
        joint: Some("luck"),
        ..HOLE
    };
    assert_eq!(
        repair(&odd, &Planning::default()).unwrap_err().field,
        "joint"
    );
}

#[test]
fn every_joint_is_read_by_its_code() {
    for holds in Holds::ALL {
        assert_eq!(Holds::read(holds.code()), Some(holds));
    }
}

#[test]
fn special_holes_have_ways_of_their_own() {
    let plug = repairs(&RepairQuestion {
        thread: "spark plug M14x1.25",
        class: None,
        engaged: "19 mm",
        through: Some("19 mm"),
        blind: None,
        metal: "aluminium",
        torque: Some("25 Nm"),
        ..HOLE
    });
    assert_eq!(ways(&plug)[0], Way::PlugBushing);
    assert!(!ways(&plug).contains(&Way::WireInsert) && !ways(&plug).contains(&Way::Oversize));
    let steps: Vec<&str> = plug.options[0]
        .steps
        .iter()
        .map(|step| step.what.as_str())
        .collect();
    assert!(
        steps
            .iter()
            .any(|step| step.contains("chips out of the cylinder")),
        "{steps:?}"
    );
    assert!(
        steps.iter().any(|step| step.contains("25 N·m")),
        "{steps:?}"
    );
    // A plug's torque stands for no clamp.
    assert_eq!(plug.original_clamp_n, None);
    assert_eq!(plug.options[0].clamp_n, None);

    let drain = repairs(&RepairQuestion {
        thread: "drain plug M14x1.5",
        class: None,
        engaged: "14 mm",
        through: Some("15 mm"),
        blind: None,
        metal: "aluminium",
        ..HOLE
    });
    let holding = ways(&drain);
    for way in [Way::WireInsert, Way::OversizePlug, Way::NewPart] {
        assert!(holding.contains(&way), "{holding:?}");
    }
    let insert = drain
        .options
        .iter()
        .find(|option| option.way == Way::WireInsert)
        .unwrap();
    assert_eq!(insert.insert_mm, Some(14.0));

    let banjo = ways(&repairs(&RepairQuestion {
        thread: "banjo M12x1.5",
        class: None,
        ..HOLE
    }));
    assert!(!banjo.contains(&Way::Oversize) && !banjo.contains(&Way::LongerBolt));
    let pipe = repairs(&RepairQuestion {
        thread: "1/4 NPT",
        class: None,
        torque: None,
        ..HOLE
    });
    assert!(ways(&pipe).contains(&Way::NextPipeSize));
    let sensor = repairs(&RepairQuestion {
        thread: "M18x1.5",
        joint: Some("sensor"),
        class: None,
        ..HOLE
    });
    assert!(ways(&sensor).contains(&Way::WeldedBung) && ways(&sensor).contains(&Way::PlugBushing));
    let exhaust = repairs(&RepairQuestion {
        joint: Some("exhaust"),
        ..HOLE
    });
    assert!(said(&exhaust, "nickel compound"));
}

#[test]
fn a_through_hole_takes_a_bolt_and_a_nut() {
    let question = RepairQuestion {
        joint: Some("bracket"),
        blind: None,
        through: Some("25 mm"),
        ..HOLE
    };
    let found = repairs(&question);
    let nut = found
        .options
        .iter()
        .find(|option| option.way == Way::BoltAndNut)
        .unwrap();
    assert!(nut.holds, "{:?}", nut.reasons);
    // The nut carries what its bolt does: M10 8.8 breaks at 46 400 N (ISO 898-1).
    assert_eq!(nut.thread_bears_n, Some(46_400.0));
    assert!(
        !ways(&repairs(&RepairQuestion {
            joint: Some("bracket"),
            ..HOLE
        }))
        .contains(&Way::BoltAndNut)
    );
}

#[test]
fn magnesium_burns_and_rots() {
    let found = repairs(&RepairQuestion {
        joint: Some("cover"),
        metal: "magnesium",
        torque: Some("20 Nm"),
        ..HOLE
    });
    assert!(said(&found, "chips and dust burn") && said(&found, "rots"));
    let drilled = found
        .options
        .iter()
        .find(|option| option.way == Way::WireInsert && option.holds)
        .unwrap();
    assert!(drilled.steps[0].caution.unwrap().contains("burn"));
    let stub = extract(&ExtractQuestion {
        metal: "magnesium",
        room_to_weld: true,
        ..STUB
    })
    .unwrap();
    assert!(
        stub.cautions
            .iter()
            .any(|caution| caution.contains("chips burn"))
    );
}

#[test]
fn a_bolt_that_stood_on_the_bottom_is_noticed() {
    let bottomed = RepairQuestion {
        joint: Some("cover"),
        engaged: "29.5 mm",
        ..HOLE
    };
    assert!(said(&repairs(&bottomed), "stood on the bottom"));
    assert!(!said(
        &repairs(&RepairQuestion {
            joint: Some("cover"),
            ..HOLE
        }),
        "stood on the bottom"
    ));
    let stub = extract(&ExtractQuestion {
        engaged: "25.9 mm",
        ..STUB
    })
    .unwrap();
    assert!(
        stub.cautions
            .iter()
            .any(|caution| caution.contains("stood on the bottom"))
    );
}

#[test]
fn iron_is_known_by_its_grade() {
    let shear = |name: &str| fastener::parent::named(name).unwrap();
    assert_eq!(shear("EN-GJL-250").tensile_mpa, 250.0);
    assert_eq!(
        shear("ductile iron").family,
        fastener::parent::Family::DuctileIron
    );
    assert!(shear("ductile iron").note.is_some());
    assert_eq!(shear("65-45-12").tensile_mpa, 448.0);
    assert!(shear("EN-GJS-500-7").shear_mpa > shear("grey iron class 50").shear_mpa);
}

/// Soft metal and a torque for steel: before the world is doubted, the question is.
#[test]
fn where_nothing_holds_the_question_is_doubted() {
    let found = repairs(&RepairQuestion {
        joint: Some("cover"),
        thread: "M8",
        class: Some("12.9"),
        engaged: "6 mm",
        blind: Some("12 mm"),
        boss: Some("12 mm"),
        metal: "aluminium",
        torque: Some("40 Nm"),
        ..HOLE
    });
    assert!(
        found.options.iter().all(|option| !option.holds),
        "{:?}",
        found.options
    );
    assert!(said(
        &found,
        "look again at the metal and its alloy, the torque"
    ));
}

const STUB: ExtractQuestion = ExtractQuestion {
    thread: "M8",
    joint: None,
    class: Some("8.8"),
    stands: "below",
    by: Some("2 mm"),
    engaged: "18 mm",
    blind: Some("26 mm"),
    through: None,
    metal: "aluminium",
    room_to_weld: false,
    no_drill_room: false,
    tilt: None,
};

#[test]
fn a_left_hand_stub_is_turned_out_clockwise() {
    let found = extract(&ExtractQuestion {
        thread: "M8 LH",
        ..STUB
    })
    .unwrap();
    let ways: Vec<ExtractionWay> = found.ladder.iter().map(|rung| rung.way).collect();
    assert!(!ways.contains(&ExtractionWay::LeftHandDrill), "{ways:?}");
    let drills = found
        .ladder
        .iter()
        .find(|rung| rung.way == ExtractionWay::RightHandDrill)
        .unwrap();
    assert!(drills.open && drills.how.iter().any(|how| how.contains("running forward")));
    let all = format!("{:?}", found.ladder);
    assert!(!all.contains("in reverse"), "{all}");
    assert!(
        found
            .cautions
            .iter()
            .any(|caution| caution.contains("clockwise"))
    );
}

#[test]
fn a_stub_that_holds_a_brake_gets_no_insert() {
    let found = extract(&ExtractQuestion {
        joint: Some("caliper"),
        ..STUB
    })
    .unwrap();
    let repair = found
        .ladder
        .iter()
        .find(|rung| rung.way == ExtractionWay::DrillForRepair)
        .unwrap();
    assert!(!repair.open && repair.reason.as_ref().unwrap().contains("maker's part"));
    assert!(
        found
            .cautions
            .iter()
            .any(|caution| caution.contains("People are hurt"))
    );
}

const M8: TorqueQuestion = TorqueQuestion {
    thread: "M8",
    class: Some("8.8"),
    friction: Some("0.15"),
    condition: None,
    head: None,
    face: None,
    hole: None,
    form: None,
    nut_factor: None,
};

#[test]
fn a_torque_that_breaks_the_bolt_says_so() {
    let found = clamp(&M8, "500 Nm").unwrap();
    assert_eq!(found.strength.fate, Some(Fate::Breaks));
    assert_eq!(found.strength.share_of_proof, None);
    assert_eq!(found.shares_of_proof, None);
    assert!(
        found
            .strength
            .verdict
            .unwrap()
            .contains("no bolt of M8x1.25 bears that")
    );
    // 45 N·m breaks a class 8.8 and not a 12.9.
    let hard = clamp(&M8, "45 Nm").unwrap().strength;
    assert!(hard.fate >= Some(Fate::Yields), "{hard:?}");
    assert!(
        clamp(
            &TorqueQuestion {
                class: Some("12.9"),
                ..M8
            },
            "40 Nm"
        )
        .unwrap()
        .strength
        .fate
            < Some(Fate::Yields)
    );
    assert_eq!(
        clamp(&M8, "22 Nm").unwrap().strength.fate,
        Some(Fate::Bears)
    );
    // The class is not known, and still no bolt bears it.
    let unknown = clamp(&TorqueQuestion { class: None, ..M8 }, "500 Nm").unwrap();
    assert!(
        unknown
            .strength
            .verdict
            .unwrap()
            .contains("look at the figure and its unit again")
    );
    let breaks = torque(&M8, "40000 N").unwrap();
    assert_eq!(breaks.strength.fate, Some(Fate::Breaks));
}

#[test]
fn a_makers_torque_that_no_bolt_bears_is_questioned() {
    let question = RepairQuestion {
        joint: Some("cover"),
        torque: Some("500 Nm"),
        ..HOLE
    };
    let trouble = repair(&question, &Planning::default()).unwrap_err();
    assert_eq!(trouble.field, "torque");
    assert!(
        trouble.what.contains("even of class 12.9"),
        "{}",
        trouble.what
    );
}

#[test]
fn what_has_no_strength_does_not_strip_at_nothing() {
    let plastic = thread(&ThreadQuestion {
        thread: "M6",
        class: Some("8.8"),
        metal: Some("plastic"),
        depth: Some("12 mm"),
        percent: None,
    })
    .unwrap();
    assert_eq!(plastic.stripping, None);
    assert!(
        plastic
            .notes
            .iter()
            .any(|note| note.contains("No strength of plastic"))
    );
    let negative = thread(&ThreadQuestion {
        thread: "M6",
        class: Some("8.8"),
        metal: Some("steel"),
        depth: Some("-12 mm"),
        percent: None,
    })
    .unwrap_err();
    assert_eq!(negative.field, "depth");
}

/// T = K F d: 0.2 · 34 225.8 N · 12 mm is 82.14 N·m (worked example of a textbook), and of
/// M64 nobody lists a head.
#[test]
fn the_short_form_needs_no_head() {
    let short = |thread| TorqueQuestion {
        thread,
        class: None,
        friction: None,
        nut_factor: Some("0.2"),
        ..M8
    };
    let found = torque(&short("M12"), "34225.8 N").unwrap();
    assert!(
        (found.terms.total_nm - 82.14).abs() < 0.005,
        "{}",
        found.terms.total_nm
    );
    let large = torque(&short("M64x6"), "100000 N").unwrap();
    assert!((large.terms.total_nm - 1280.0).abs() < 1e-6);
}

#[test]
fn a_metric_thread_without_its_m_is_asked_about() {
    let says = |text: &str| read(text).unwrap_err().to_string();
    for (text, meant) in [
        ("8x1.25", "M8x1.25"),
        ("8 mm", "M8"),
        ("8mm", "M8"),
        ("10x1.5", "M10x1.5"),
    ] {
        assert!(
            says(text).contains(&format!("may be the metric {meant}")),
            "{}",
            says(text)
        );
    }
    assert!(
        says("M8x3").contains("no pitch of 3 mm"),
        "{}",
        says("M8x3")
    );
    assert_eq!(read("M8x16").unwrap().length_mm, Some(16.0));
    assert!(read("10-24").is_ok() && read("#10-24").is_ok());
}

#[test]
fn the_steel_alone_is_no_class() {
    let says = Class::read("A2").unwrap_err().to_string();
    assert!(says.contains("A2-70"), "{says}");
    assert_eq!(Class::read("A4-50").unwrap(), Class::A4_50);
    assert_eq!(Class::read("a4-100").unwrap(), Class::A4_100);
}

/// The factors that a working prints multiply to what it prints.
#[test]
fn printed_factors_multiply_to_the_printed_result() {
    let found = repairs(&RepairQuestion {
        joint: Some("cover"),
        metal: "A380",
        torque: Some("30 Nm"),
        ..HOLE
    });
    let number = |text: &str| -> f64 { text.split_whitespace().next().unwrap().parse().unwrap() };
    let mut checked = 0;
    for option in &found.options {
        for line in &option.working.lines {
            let product = matches!(
                line.what.as_str(),
                "thread in the part bears" | "bolt's own thread bears"
            );
            let quotient = line.what == "strip margin";
            if !(product || quotient) {
                continue;
            }
            let inputs: Vec<f64> = line
                .inputs
                .iter()
                .map(|input| number(&input.value))
                .collect();
            let value = number(line.value.as_deref().unwrap());
            let worked = if product {
                inputs.iter().product()
            } else {
                inputs[0] / inputs[1]
            };
            let within = if product { 0.51 } else { 0.0006 };
            assert!(
                (worked - value).abs() <= within,
                "{}: {worked} {value}",
                line.what
            );
            checked += 1;
        }
        let (sum, total) = option.why_here.rsplit_once(": ").unwrap();
        let worked: f64 = sum
            .split(", ")
            .map(|term| {
                let (weight, share) = term.split_once(" × ").unwrap();
                number(weight.rsplit(' ').next().unwrap()) * number(share)
            })
            .sum();
        assert!((worked - number(total)).abs() < 1e-9, "{}", option.why_here);
    }
    assert!(checked >= 6);
}
