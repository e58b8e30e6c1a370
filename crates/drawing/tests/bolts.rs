//! The bolts of a joint: inside the paper, apart, their sequence from the ring on, and what is
//! called out beside those that differ.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use drawing::{Anchor, Bolt, BoltStand, Bolts, Drawing, Ink, Mark, Point, bolts, svg};
use proptest::prelude::*;

fn bolt(number: u16, x: f64, y: f64) -> Bolt {
    Bolt {
        x,
        y,
        number,
        stands: BoltStand::Loose,
        called: String::new(),
    }
}

fn five_on_a_circle() -> Bolts {
    let places = [(1.0, 0.0), (2.0, 0.7), (1.6, 1.8), (0.4, 1.8), (0.0, 0.7)];
    Bolts {
        title: "wheel nuts".to_owned(),
        round: true,
        bolts: places
            .iter()
            .zip(1..)
            .map(|(&(x, y), number)| bolt(number, x, y))
            .collect(),
        sequence: vec![1, 3, 5, 2, 4],
    }
}

/// The middles of the bolts' heads.
fn heads(drawn: &Drawing) -> Vec<Point> {
    let marks = drawn.marks.iter();
    marks
        .filter_map(|mark| match mark {
            Mark::Circle {
                centre,
                radius,
                style,
            } if (radius - 19.0).abs() < 1e-9 && style.line.is_some() => Some(*centre),
            _ => None,
        })
        .collect()
}

fn holds(drawn: &Drawing) {
    let heads = heads(drawn);
    for (nth, one) in heads.iter().enumerate() {
        assert!(one.x >= 19.0 && one.x <= drawn.width - 19.0, "{one:?}");
        assert!(one.y >= 19.0 && one.y <= drawn.height - 19.0, "{one:?}");
        for other in &heads[nth + 1..] {
            let apart = (one.x - other.x).hypot(one.y - other.y);
            assert!(apart > 38.0, "{one:?} and {other:?} touch");
        }
    }
    for text in drawn.texts() {
        assert!(text.size >= 16.0);
        let area = text.area();
        assert!(
            area.x >= -0.01 && area.right() <= drawn.width + 0.01,
            "{text:?}"
        );
    }
}

#[test]
fn the_sequence_is_a_way_from_the_ring_on() {
    let drawn = bolts(&five_on_a_circle(), 220.0);
    holds(&drawn);
    assert_eq!(heads(&drawn).len(), 5);
    let rings: Vec<&Mark> = drawn
        .marks
        .iter()
        .filter(|mark| matches!(mark, Mark::Circle { style, .. } if style.line.is_some_and(|pen| pen.ink == Ink::Accent)))
        .collect();
    assert_eq!(rings.len(), 1, "one begins");
    let ways = drawn
        .marks
        .iter()
        .filter(|mark| matches!(mark, Mark::Line { .. }));
    assert_eq!(ways.count(), 4, "from each to the next");
    assert!(
        drawn
            .description
            .ends_with("In the sequence 1, 3, 5, 2, 4."),
        "{}",
        drawn.description
    );
    insta::assert_snapshot!(svg(&drawn));
}

#[test]
fn without_a_sequence_no_bolt_is_the_first() {
    let joint = Bolts {
        sequence: Vec::new(),
        ..five_on_a_circle()
    };
    let drawn = bolts(&joint, 220.0);
    assert!(
        !drawn
            .marks
            .iter()
            .any(|mark| matches!(mark, Mark::Line { .. }))
    );
    assert!(
        !drawn.description.contains("sequence"),
        "{}",
        drawn.description
    );
}

#[test]
fn another_length_is_called_out_at_the_free_side() {
    let mut joint = Bolts {
        title: "housing bolts".to_owned(),
        bolts: vec![
            bolt(1, 0.0, 0.0),
            bolt(2, 1.0, 0.0),
            bolt(3, 0.0, 1.0),
            bolt(4, 1.0, 1.0),
        ],
        ..Bolts::default()
    };
    joint.bolts[0].called = "75 mm".to_owned();
    joint.bolts[3].called = "80 mm".to_owned();
    let drawn = bolts(&joint, 220.0);
    holds(&drawn);
    let side = |words: &str| {
        let texts = drawn.texts();
        texts
            .into_iter()
            .find(|text| text.text == words)
            .map(|text| text.anchor)
    };
    assert_eq!(
        side("75 mm"),
        Some(Anchor::End),
        "at the left of the left one"
    );
    assert_eq!(
        side("80 mm"),
        Some(Anchor::Start),
        "at the right of the right one"
    );
    assert!(
        drawn.description.contains("1 on, not tight, 75 mm"),
        "{}",
        drawn.description
    );
}

#[test]
fn no_bolts_are_an_empty_drawing() {
    assert!(bolts(&Bolts::default(), f64::NAN).marks.is_empty());
    let lost = Bolts {
        bolts: vec![bolt(1, f64::NAN, 0.0)],
        ..Bolts::default()
    };
    assert!(bolts(&lost, 220.0).marks.is_empty());
}

proptest! {
    #[test]
    fn any_bolts_are_drawn_inside_and_apart(
        places in proptest::collection::btree_set((0..6_u16, 0..6_u16), 1..20),
        round in any::<bool>(),
        width in 0.0..600.0_f64,
    ) {
        let all = places.iter().zip(1..).map(|(&(x, y), number)| bolt(number, f64::from(x), f64::from(y)));
        let joint = Bolts { title: "any".to_owned(), round, bolts: all.collect(), sequence: vec![2, 1, 9, 400] };
        let drawn = bolts(&joint, width);
        holds(&drawn);
        prop_assert_eq!(heads(&drawn).len(), joint.bolts.len());
    }
}
