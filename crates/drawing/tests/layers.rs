//! Things in layers: inside the paper, apart, each above what needs it, the same again.

use drawing::{
    Area, Drawing, Group, LayerCall, LayerMark, LayerNeed, LayerStand, LayerThing, Layers, Mark,
    Point, layers, svg,
};
use proptest::prelude::*;

fn thing(label: &str, needs: &[usize]) -> LayerThing {
    LayerThing {
        label: label.to_owned(),
        detail: "above".to_owned(),
        mark: LayerMark::Part,
        stands: LayerStand::Home,
        call: LayerCall::OnTheWay,
        place: None,
        stage: None,
        link: None,
        needs: needs
            .iter()
            .map(|&thing| LayerNeed {
                thing,
                either: false,
            })
            .collect(),
    }
}

fn groups(drawing: &Drawing) -> Vec<&Group> {
    let marks = drawing.marks.iter();
    marks
        .filter_map(|mark| match mark {
            Mark::Group(group) => Some(group),
            _ => None,
        })
        .collect()
}

fn area(group: &Group) -> Area {
    match &group.marks[0] {
        Mark::Rect { area, .. } => *area,
        other => panic!("a box first, not {other:?}"),
    }
}

fn lines(drawing: &Drawing) -> Vec<&Vec<Point>> {
    let marks = drawing.marks.iter();
    marks
        .filter_map(|mark| match mark {
            Mark::Polyline {
                points,
                closed: false,
                ..
            } => Some(points),
            _ => None,
        })
        .collect()
}

/// Whether a line runs through the inside of a box, looked at in short steps.
fn runs_through(points: &[Point], area: Area) -> bool {
    points.windows(2).any(|ends| {
        (1..200).any(|step| {
            let share = f64::from(step) / 200.0;
            let x = ends[0].x + (ends[1].x - ends[0].x) * share;
            let y = ends[0].y + (ends[1].y - ends[0].y) * share;
            area.x + 0.5 < x
                && x < area.right() - 0.5
                && area.y + 0.5 < y
                && y < area.bottom() - 0.5
        })
    })
}

/// What a sum of widths may be off by.
const ROUNDING: f64 = 1e-6;

fn holds(drawing: &Drawing) {
    let boxes: Vec<Area> = groups(drawing).into_iter().map(area).collect();
    for (nth, one) in boxes.iter().enumerate() {
        assert!(
            one.x >= -ROUNDING && one.right() <= drawing.width + ROUNDING,
            "{one:?} sticks out"
        );
        assert!(
            one.y >= -ROUNDING && one.bottom() <= drawing.height + ROUNDING,
            "{one:?} sticks out"
        );
        assert!(
            !boxes[nth + 1..].iter().any(|other| one.overlaps(other)),
            "{one:?} overlaps"
        );
    }
    for text in drawing.texts() {
        assert!(text.size >= 16.0);
        assert!(
            text.area().x >= 0.0 && text.area().right() <= drawing.width + 0.01,
            "{text:?}"
        );
    }
    for points in lines(drawing) {
        for point in points {
            assert!(
                (-ROUNDING..=drawing.width + ROUNDING).contains(&point.x),
                "{point:?} sticks out"
            );
        }
    }
}

#[test]
fn what_is_needed_stands_above_what_needs_it() {
    let things = vec![
        thing("tray", &[1, 2]),
        thing("tray screws", &[]),
        thing("tray clips", &[]),
    ];
    let drawn = layers(
        &Layers {
            title: "Tray".to_owned(),
            places: Vec::new(),
            things,
        },
        700.0,
    );
    holds(&drawn);
    assert_eq!(
        drawn.description,
        "Row 1: tray screws, above; tray clips, above. Row 2: tray, above."
    );
    assert_eq!(lines(&drawn).len(), 2);
}

#[test]
fn a_need_that_others_imply_is_not_drawn_twice() {
    let things = vec![thing("a", &[1, 2]), thing("b", &[2]), thing("c", &[])];
    let drawn = layers(
        &Layers {
            title: String::new(),
            places: Vec::new(),
            things,
        },
        358.0,
    );
    assert_eq!(lines(&drawn).len(), 2, "{drawn:?}");
}

#[test]
fn a_circle_is_drawn_and_ends() {
    let things = vec![
        thing("a", &[1]),
        thing("b", &[2]),
        thing("c", &[0]),
        thing("d", &[3, 9]),
    ];
    let drawn = layers(
        &Layers {
            title: String::new(),
            places: Vec::new(),
            things,
        },
        358.0,
    );
    holds(&drawn);
    assert_eq!(groups(&drawn).len(), 4);
    assert!(lines(&drawn).len() >= 3);
}

#[test]
fn off_next_and_wanted_are_said_and_drawn() {
    let mut things = vec![
        thing("housing", &[1]),
        thing("housing bolts", &[2]),
        thing("tray", &[]),
    ];
    things[0].call = LayerCall::Wanted;
    things[1].call = LayerCall::Next;
    things[2].stands = LayerStand::Away;
    let drawn = layers(
        &Layers {
            title: "Way in".to_owned(),
            places: Vec::new(),
            things,
        },
        358.0,
    );
    let spoken: Vec<_> = groups(&drawn)
        .iter()
        .filter_map(|group| group.label.clone())
        .collect();
    assert_eq!(
        spoken,
        [
            "tray, above, off",
            "housing bolts, above, next",
            "housing, above, wanted"
        ]
    );
    insta::assert_snapshot!(svg(&drawn));
}

#[test]
fn nothing_at_all_is_a_drawing_too() {
    let drawn = layers(&Layers::default(), f64::NAN);
    assert_eq!(drawn.width, 240.0);
    holds(&drawn);
}

/// Any needs: circles, needs of itself and of things that are not there included.
fn any_layers() -> impl Strategy<Value = Layers> {
    let need = (0..20_usize, any::<bool>()).prop_map(|(thing, either)| LayerNeed { thing, either });
    let one = (
        "[a-z]{1,14}( [a-z]{1,14})?",
        proptest::collection::vec(need, 0..4),
    );
    proptest::collection::vec(one, 0..18).prop_map(|all| Layers {
        title: "any".to_owned(),
        places: Vec::new(),
        things: all
            .into_iter()
            .map(|(label, needs)| LayerThing {
                needs,
                ..thing(&label, &[])
            })
            .collect(),
    })
}

/// The same under three places.
fn in_places(mut any: Layers) -> Layers {
    any.places = ["above", "wheel well", "below"].map(str::to_owned).into();
    for (at, thing) in any.things.iter_mut().enumerate() {
        thing.place = Some(at * 7 % 3);
        thing.stage = (at % 2 == 0).then_some(at + 1);
    }
    any
}

#[test]
fn each_thing_stands_under_its_place_with_its_stage_beside_it() {
    let mut all = in_places(Layers {
        title: String::new(),
        places: Vec::new(),
        things: vec![
            thing("housing", &[1, 2, 3]),
            thing("tray", &[]),
            thing("wheel", &[]),
            thing("coolant", &[1]),
        ],
    });
    all.things[3].place = Some(2);
    let drawn = layers(&all, 824.0);
    holds(&drawn);
    let named = |name: &str| drawn.texts().into_iter().find(|text| text.text == name);
    let begins = ["above", "wheel well", "below"].map(|name| named(name).map(|text| text.at.x));
    assert!(begins.is_sorted() && begins[0] == Some(0.0), "{begins:?}");
    for (name, place) in [("housing", 0), ("tray", 1), ("wheel", 2), ("coolant", 2)] {
        let x = named(name).map(|text| text.at.x);
        assert!(
            x > begins[place],
            "{name} stands at {x:?}, under {begins:?}"
        );
        let next = begins.get(place + 1);
        assert!(
            next.is_none_or(|next| x < *next),
            "{name} at {x:?}, under {begins:?}"
        );
    }
    assert!(named("3").is_some(), "the stage of the wheel");
    assert!(
        drawn
            .marks
            .iter()
            .all(|mark| !matches!(mark, Mark::Rect { .. })),
        "no box"
    );
}

#[test]
fn places_that_need_more_room_than_there_is_are_left_out() {
    let things = (0..3).map(|_| thing("a", &[])).collect();
    let mut all = in_places(Layers {
        title: String::new(),
        places: Vec::new(),
        things,
    });
    all.places = (0..9).map(|nth| format!("place {nth}")).collect();
    let drawn = layers(&all, 640.0);
    holds(&drawn);
    assert!(
        drawn
            .texts()
            .iter()
            .all(|text| !text.text.starts_with("place"))
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_needs_are_drawn_inside_and_apart(any in any_layers(), width in 240.0..1300.0_f64) {
        let drawn = layers(&any, width);
        holds(&drawn);
        prop_assert_eq!(groups(&drawn).len(), any.things.len());
        prop_assert_eq!(&drawn, &layers(&any, width));
    }

    #[test]
    fn without_circles_no_line_runs_through_a_thing_and_all_run_down(
        any in any_layers(),
        width in prop_oneof![Just(358.0), Just(700.0), Just(824.0), Just(1216.0)],
        by_place in any::<bool>(),
    ) {
        let mut any = if by_place { in_places(any) } else { any };
        for (at, thing) in any.things.iter_mut().enumerate() {
            thing.needs.retain(|need| need.thing > at);
        }
        let drawn = layers(&any, width);
        let boxes: Vec<Area> = groups(&drawn).into_iter().map(area).collect();
        for points in lines(&drawn) {
            prop_assert!(points.windows(2).all(|ends| ends[0].y <= ends[1].y));
            for area in &boxes {
                prop_assert!(!runs_through(points, *area), "{points:?} runs through {area:?}");
            }
        }
    }
}
