//! Threads as people write them.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fastener::designation::{Kind, Unreadable, read, read_clamping};
use fastener::head::Head;
use fastener::near_miss::{Ends, compare, near_misses};
use fastener::purpose::Purpose;
use fastener::{Class, Series, Thread};

fn name(written: &str) -> String {
    match read(written) {
        Ok(found) => match found.kind {
            Kind::Screw { thread, .. } => thread.name().to_owned(),
            Kind::Pipe(pipe) => pipe.name(),
        },
        Err(trouble) => panic!("{written}: {trouble}"),
    }
}

fn trouble(written: &str) -> String {
    read(written).unwrap_err().to_string()
}

#[test]
fn the_ways_in_which_people_write_threads() {
    let cases = [
        ("M8", "M8x1.25"),
        ("m8 x 1.25", "M8x1.25"),
        ("M8-1.25", "M8x1.25"),
        ("M 8 × 1,25", "M8x1.25"),
        ("M8x1.25-6g", "M8x1.25"),
        ("M10x1", "M10x1"),
        ("M10 x 1.0 mm", "M10x1"),
        ("M12x1.5 LH", "M12x1.5 LH"),
        ("5/16-18", "5/16-18 UNC"),
        ("5/16\"-18 UNC", "5/16-18 UNC"),
        ("5/16-18 UNC-2A", "5/16-18 UNC"),
        ("1/4-20", "1/4-20 UNC"),
        ("1/4 UNF", "1/4-28 UNF"),
        (".250-20", "1/4-20 UNC"),
        ("7/16-20 UNF", "7/16-20 UNF"),
        ("1-1/8-7", "1-1/8-7 UNC"),
        ("1 1/8 - 7", "1-1/8-7 UNC"),
        ("1-8", "1-8 UNC"),
        ("#10-24", "#10-24 UNC"),
        ("# 10-32", "#10-32 UNF"),
        ("No. 10-32", "#10-32 UNF"),
        ("10-24", "#10-24 UNC"),
        ("1/8 NPT", "1/8-27 NPT"),
        ("1/8-27 NPT", "1/8-27 NPT"),
        ("R 1/4", "R 1/4"),
        ("G1/4", "G 1/4"),
        ("3/8 BSPP", "G 3/8"),
    ];
    for (written, expected) in cases {
        assert_eq!(name(written), expected, "{written}");
    }
}

#[test]
fn a_length_after_the_thread_is_a_length() {
    let length = |written: &str| read(written).unwrap().length_mm;
    assert_eq!(length("M8x75"), Some(75.0));
    assert_eq!(length("M8x1.25x75"), Some(75.0));
    assert_eq!(length("M8x1.25"), None);
    let inches = length("1/4-20 x 1-1/2").unwrap();
    assert!((inches - 38.1).abs() < 1e-9);
}

#[test]
fn a_class_after_the_thread_is_a_class() {
    let class = |written: &str| read(written).unwrap().class;
    assert_eq!(class("M6x25 8.8"), Some(Class::C8_8));
    assert_eq!(class("M8x1.25x75 10.9"), Some(Class::C10_9));
    assert_eq!(class("1/4-20 grade 5"), Some(Class::Sae5));
    assert_eq!(class("M8 A2-70"), Some(Class::A2_70));
    assert_eq!(class("M8x1.25"), None);
    assert_eq!(class("M 8 x 1.25"), None);
    assert_eq!(read("M6x25 8.8").unwrap().length_mm, Some(25.0));
}

/// Grades are for inch bolts, classes for metric ones: neither is guessed for the other.
#[test]
fn classes_and_grades_keep_to_their_threads() {
    let m8 = read_clamping("M8").unwrap();
    let quarter = read_clamping("1/4-20").unwrap();
    assert!(Class::Sae5.loads(&m8).is_err() && Class::C8_8.loads(&quarter).is_err());
    assert!(Class::C9_8.loads(&read_clamping("M20").unwrap()).is_err());
}

#[test]
fn heads_are_known_by_their_standards() {
    let m8 = read_clamping("M8").unwrap();
    assert_eq!(Head::named("ISO 4014", &m8), Some(Head::Hex));
    assert_eq!(Head::named("DIN 912", &m8), Some(Head::SocketCap));
    assert_eq!(Head::named("din933", &m8), Some(Head::HexOld));
    assert_eq!(
        Head::named("12-point socket", &m8),
        Some(Head::TwelvePointSocket)
    );
    assert_eq!(Head::named("ISO 9999", &m8), None);
}

#[test]
fn an_unlisted_pitch_is_taken_and_marked() {
    assert_eq!(
        read_clamping("M9x1.1").unwrap().series(),
        Series::NotPreferred
    );
    assert_eq!(
        read_clamping("1/4-27").unwrap().series(),
        Series::NotPreferred
    );
    assert_eq!(read_clamping("M8x1").unwrap().series(), Series::Fine);
}

#[test]
fn what_is_no_clamp_joint_is_known_for_what_it_is() {
    let purpose = |written: &str| match read(written).unwrap().kind {
        Kind::Screw { purpose, .. } => purpose,
        Kind::Pipe(_) => panic!("{written} is no pipe"),
    };
    assert_eq!(purpose("spark plug M14x1.25"), Purpose::SparkPlug);
    assert_eq!(purpose("M14x1.5 drain plug"), Purpose::DrainPlug);
    assert_eq!(purpose("brake line 3/8-24"), Purpose::BrakeLine);
    assert_eq!(purpose("M10x1 banjo bolt"), Purpose::Banjo);
    assert_eq!(purpose("M12x1.5 wheel stud"), Purpose::WheelStud);
    for written in ["spark plug M14x1.25", "M12x1.5 wheel nut"] {
        assert!(
            matches!(
                read_clamping(written),
                Err(Unreadable::NotForClamping { .. })
            ),
            "{written}"
        );
    }
    assert!(matches!(
        read_clamping("1/8 NPT"),
        Err(Unreadable::PipeThread { .. })
    ));
}

#[test]
fn troubles_say_how_to_mend_them() {
    assert!(trouble("").contains("write one such as M8x1.25"));
    assert!(trouble("M9").contains("M9x1"));
    assert!(trouble("1/4").contains("1/4-20 or 1/4-28"));
    assert!(trouble("#10").contains("#10-24 or #10-32"));
    assert!(trouble("5/16-24 UNC").contains("5/16-18 or 5/16-24"));
    assert!(trouble("5/16 NPT").contains("1/8, 1/4"));
    assert!(trouble("M8x0.01").contains("between"));
    assert!(trouble("bolt").contains("not a thread"));
    assert!(trouble(&"9".repeat(500)).contains("too long"));
}

fn ends(bolt: &str, hole: &str) -> Ends {
    compare(&read_clamping(bolt).unwrap(), &read_clamping(hole).unwrap()).ends
}

/// The pairs that a shop with two tap sets meets. The pitches differ by 0.16 and 0.27 mm.
#[test]
fn near_misses_bind_within_two_turns() {
    for (bolt, hole) in [("5/16-18", "M8x1.25"), ("M6x1", "1/4-20")] {
        let Ends::Binds {
            turns_low,
            turns_high,
        } = ends(bolt, hole)
        else {
            panic!("{bolt} in {hole}")
        };
        assert!(
            turns_low > 0.2 && turns_high < 2.0,
            "{bolt} in {hole}: {turns_low} to {turns_high}"
        );
    }
    assert_eq!(ends("1/4-20", "M6x1"), Ends::DoesNotStart);
}

/// The worse ones: a smaller bolt of nearly the same pitch runs all the way in and holds by a part
/// of its thread.
#[test]
fn some_near_misses_never_bind() {
    assert_eq!(ends("M12x1.25", "1/2-20"), Ends::NeverBinds);
    assert_eq!(ends("#10-32", "M5x0.8"), Ends::NeverBinds);
    let half_inch = compare(
        &Thread::metric(12.0, 1.25).unwrap(),
        &read_clamping("1/2-20").unwrap(),
    );
    assert!(half_inch.overlap < 0.6, "{}", half_inch.overlap);
}

#[test]
fn the_list_of_near_misses_names_them() {
    let names = |written: &str| -> Vec<String> {
        near_misses(&read_clamping(written).unwrap())
            .iter()
            .map(|miss| format!("{} in {}", miss.bolt.name(), miss.hole.name()))
            .collect()
    };
    assert!(names("5/16-18").contains(&"5/16-18 UNC in M8x1.25".to_owned()));
    assert!(names("1/4-20").contains(&"M6x1 in 1/4-20 UNC".to_owned()));
    assert!(names("1/2-20").contains(&"M12x1.25 in 1/2-20 UNF".to_owned()));
}

/// The hexagon of a plug is its maker's: that of a bolt with its thread is another.
#[test]
fn a_plug_is_not_given_the_wrench_of_a_bolt() {
    let asked = |thread| calculators::threads::ask::ThreadQuestion {
        thread,
        ..Default::default()
    };
    let plug = calculators::threads::ask::thread(&asked("spark plug M14x1.25")).unwrap();
    assert!(plug.wrench.is_none() && plug.wrenches.is_empty());
    let bolt = calculators::threads::ask::thread(&asked("M14x1.5")).unwrap();
    assert!(bolt.wrench.is_some());
}
