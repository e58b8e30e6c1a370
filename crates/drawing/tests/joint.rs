//! A joint in section, and bolts with their turns: to scale, readable, nothing sticks out.

use drawing::{
    Area, Drawing, Joint, JointMeasure, JointPart, JointPiece, Mark, Turn, joint, svg, turns,
};
use proptest::prelude::*;

fn piece(is: JointPart, depths: (f64, f64), diameters: (f64, f64)) -> JointPiece {
    JointPiece {
        is,
        top_mm: depths.0,
        bottom_mm: depths.1,
        inner_mm: diameters.0,
        outer_mm: diameters.1,
    }
}

fn measure(label: &str, figure: &str, from: (f64, f64), to: (f64, f64)) -> JointMeasure {
    JointMeasure {
        label: label.to_owned(),
        figure: figure.to_owned(),
        from_mm: from,
        to_mm: to,
    }
}

/// An M8 in a blind hole 26 deep, in metal 19 across, with a wire insert.
fn housing() -> Joint {
    Joint {
        title: "M8x1.25: wire insert".to_owned(),
        bolt: "M8x75".to_owned(),
        edges_known: true,
        blind: true,
        pieces: vec![
            piece(JointPart::Parent, (0.0, 26.0), (0.0, 19.0)),
            piece(JointPart::Hole, (0.0, 26.0), (0.0, 8.4)),
            piece(JointPart::NewThread, (0.6, 16.6), (6.647, 9.62)),
            piece(JointPart::OtherPart, (-8.0, 0.0), (9.0, 19.0)),
            piece(JointPart::Bolt, (-8.0, 15.2), (0.0, 8.0)),
            piece(JointPart::Head, (-13.2, -8.0), (0.0, 12.8)),
        ],
        measures: vec![
            measure("engaged", "15.2 mm", (4.0, 0.0), (4.0, 15.2)),
            measure("hole depth", "26 mm", (9.5, 0.0), (9.5, 26.0)),
            measure("passage", "9 mm", (-4.5, -4.0), (4.5, -4.0)),
            measure("below bolt", "10.8 mm", (0.0, 15.2), (0.0, 26.0)),
            measure("insert", "16 mm", (4.81, 0.6), (4.81, 16.6)),
            measure("wall left", "4.7 mm", (4.81, 7.6), (9.5, 7.6)),
        ],
    }
}

fn inside(drawn: &Drawing) -> bool {
    drawn.texts().iter().all(|text| {
        let area = text.area();
        area.x >= -0.5
            && area.right() <= drawn.width + 0.5
            && area.y >= -2.0
            && area.bottom() <= drawn.height + 4.0
    })
}

fn apart(drawn: &Drawing) -> bool {
    let areas: Vec<Area> = drawn.texts().iter().map(|text| text.area()).collect();
    areas.iter().enumerate().all(|(index, one)| {
        areas.iter().skip(index + 1).all(|other| {
            // Lettering of one label stands line under line.
            let shared = (one.bottom().min(other.bottom()) - one.y.max(other.y)).max(0.0);
            !one.overlaps(other) || shared < 3.0
        })
    })
}

#[test]
fn the_housing_bolt_fits_a_phone_and_says_every_size() {
    let drawn = joint(&housing(), 358.0, 300.0);
    assert!(
        drawn.width <= 358.0 && drawn.height < 360.0,
        "{}",
        drawn.height
    );
    assert!(inside(&drawn), "{:#?}", drawn.texts());
    assert!(apart(&drawn), "{:#?}", drawn.texts());
    assert!(drawn.texts().iter().all(|text| text.size >= 16.0));
    for words in [
        "15.2 mm",
        "26 mm",
        "16 mm",
        "9 mm",
        "wall left 4.7 mm",
        "M8x75",
    ] {
        assert!(
            drawn.texts().iter().any(|text| text.text == words),
            "{words}"
        );
        assert!(drawn.description.contains(words) || words == "M8x75");
    }
    insta::assert_snapshot!(svg(&drawn));
}

/// What is twice as long in metal is twice as long on the paper, in both directions.
#[test]
fn it_is_to_scale() {
    let drawn = joint(&housing(), 358.0, 300.0);
    let head = drawn.marks.iter().rev().find_map(|mark| match mark {
        Mark::Rect { area, .. } => Some(*area),
        _ => None,
    });
    let head = head.unwrap();
    assert!(
        (head.width / head.height - 12.8 / 5.2).abs() < 1e-6,
        "{head:?}"
    );
}

#[test]
fn an_unmeasured_edge_is_said_and_nothing_at_all_is_survived() {
    let open = Joint {
        edges_known: false,
        ..housing()
    };
    assert!(
        joint(&open, 358.0, 300.0)
            .description
            .contains("not measured")
    );
    assert!(joint(&Joint::default(), f64::NAN, 0.0).marks.is_empty());
    let mut broken = housing();
    broken.pieces[0].outer_mm = f64::INFINITY;
    assert!(joint(&broken, 358.0, 300.0).marks.is_empty());
}

#[test]
fn every_bolt_has_its_turn_written_in_it() {
    let bolts: Vec<Turn> = [(0.0, 0.0, 3), (1.0, 0.0, 1), (2.0, 0.0, 2)]
        .map(|(x, y, turn)| Turn { x, y, turn })
        .to_vec();
    let drawn = turns("Three in a row", &bolts, 358.0);
    let written: Vec<&str> = drawn
        .texts()
        .iter()
        .map(|text| text.text.as_str())
        .collect();
    assert_eq!(written, ["3", "1", "2"]);
    assert!(inside(&drawn) && apart(&drawn));
    assert!(turns("None", &[], 358.0).marks.is_empty());
}

proptest! {
    /// Whatever the sizes: lettering stays on the paper and no label lies over another.
    #[test]
    fn any_joint_can_be_read(
        d in 3.0..24.0_f64,
        deep in 1.0..5.0_f64,
        engaged in 0.5..1.0_f64,
        wall in 0.1..3.0_f64,
        blind: bool,
    ) {
        let (depth, reach) = (deep * d, deep * d * engaged);
        let outside = d * (1.0 + 2.0 * wall);
        let mut made = housing();
        made.blind = blind;
        made.pieces = vec![
            piece(JointPart::Parent, (0.0, depth), (0.0, outside)),
            piece(JointPart::Hole, (0.0, depth), (0.0, 0.85 * d)),
            piece(JointPart::LostThread, (0.0, reach), (0.83 * d, d)),
            piece(JointPart::OtherPart, (-d, 0.0), (1.1 * d, outside.max(2.0 * d))),
            piece(JointPart::Bolt, (-d, reach), (0.0, d)),
            piece(JointPart::Head, (-1.65 * d, -d), (0.0, 1.6 * d)),
        ];
        made.measures = vec![
            measure("engaged", "18.05 mm", (d / 2.0, 0.0), (d / 2.0, reach)),
            measure("hole depth", "26 mm", (outside / 2.0, 0.0), (outside / 2.0, depth)),
            measure("passage", "9 mm", (-0.55 * d, -d / 2.0), (0.55 * d, -d / 2.0)),
            measure("below bolt", "10.8 mm", (0.0, reach), (0.0, depth)),
            measure("torn thread", "16 mm", (d / 2.0, 0.0), (d / 2.0, reach)),
            measure("wall left", "4.7 mm", (0.6 * d, reach / 2.0), (outside / 2.0, reach / 2.0)),
        ];
        let drawn = joint(&made, 358.0, 300.0);
        prop_assert!(drawn.width <= 358.0 && drawn.height < 360.0);
        prop_assert!(inside(&drawn), "{:#?}", drawn.texts());
        prop_assert!(apart(&drawn), "{:#?}", drawn.texts());
        let written = svg(&drawn);
        prop_assert!(roxmltree::Document::parse(&written).is_ok());
    }
}
