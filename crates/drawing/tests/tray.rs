//! The tray: nothing sticks out, nothing overlaps, nothing goes uncounted.

use drawing::{Drawing, Tray, TrayMark, TrayPlace, TrayThing, svg, tray};
use proptest::prelude::*;

fn thing(label: &str, detail: &str, count: u32, mark: TrayMark) -> TrayThing {
    TrayThing {
        label: label.to_owned(),
        detail: detail.to_owned(),
        count,
        mark,
    }
}

fn place(container: &str, stage: &str, things: Vec<TrayThing>) -> TrayPlace {
    TrayPlace {
        container: container.to_owned(),
        stage: stage.to_owned(),
        things,
    }
}

/// A bench after three stages.
fn bench() -> Tray {
    let fluid = |amount: &str| TrayMark::Fluid {
        amount: amount.to_owned(),
    };
    Tray {
        places: vec![
            place(
                "Blue box",
                "Above: engine cover and airbox",
                vec![
                    thing("Airbox screws", "M6 × 25", 2, TrayMark::Fasteners),
                    thing("Engine cover", "", 1, TrayMark::Part),
                    thing(
                        "Tray clips",
                        "2 were missing when it came",
                        18,
                        TrayMark::Fasteners,
                    ),
                ],
            ),
            place(
                "Jugs under the bench",
                "Fluids out",
                vec![thing(
                    "Coolant",
                    "caught clean, goes back",
                    1,
                    fluid("5.5 L"),
                )],
            ),
            place(
                "Tray 3",
                "Oil-cooler housing, from below, left",
                vec![
                    thing(
                        "Housing bolts 1, 2, 4, 5, 7",
                        "M8 × 30",
                        5,
                        TrayMark::Fasteners,
                    ),
                    thing(
                        "Housing bolts 3, 6",
                        "M8 × 75, long",
                        2,
                        TrayMark::Fasteners,
                    ),
                    thing(
                        "Housing",
                        "gasket and 2 O-rings are spent",
                        1,
                        TrayMark::Part,
                    ),
                    thing("Bracket bolts", "M10 × 45", 12, TrayMark::Fasteners),
                    thing("Pump lines", "", 2, TrayMark::Part),
                ],
            ),
        ],
    }
}

fn check(drawn: &Drawing) -> Result<(), TestCaseError> {
    let texts = drawn.texts();
    for (nth, text) in texts.iter().enumerate() {
        let area = text.area();
        prop_assert!(text.size >= 16.0);
        prop_assert!(
            area.x >= -1e-6 && area.right() <= drawn.width + 1e-6,
            "{text:?}"
        );
        prop_assert!(area.y >= 0.0 && area.bottom() <= drawn.height, "{text:?}");
        for other in &texts[nth + 1..] {
            prop_assert!(!area.overlaps(&other.area()), "{text:?} over {other:?}");
        }
    }
    let written = svg(drawn);
    let read = roxmltree::Document::parse(&written);
    prop_assert!(read.is_ok(), "{read:?}");
    Ok(())
}

fn any_thing() -> impl Strategy<Value = TrayThing> {
    let mark = prop_oneof![
        Just(TrayMark::Fasteners),
        Just(TrayMark::Part),
        "\\PC{0,20}".prop_map(|amount| TrayMark::Fluid { amount }),
    ];
    (
        "\\PC{0,80}",
        "\\PC{0,80}",
        prop_oneof![0..30_u32, any::<u32>()],
        mark,
    )
        .prop_map(|(label, detail, count, mark)| thing(&label, &detail, count, mark))
}

fn any_tray() -> impl Strategy<Value = Tray> {
    let things = proptest::collection::vec(any_thing(), 0..4);
    let place = ("\\PC{0,50}", "\\PC{0,80}", things)
        .prop_map(|(container, stage, things)| place(&container, &stage, things));
    proptest::collection::vec(place, 0..5).prop_map(|places| Tray { places })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn no_text_sticks_out_or_lies_on_another(on_bench in any_tray(), width in 200.0..1400.0_f64) {
        check(&tray(&on_bench, width))?;
    }

    #[test]
    fn every_label_is_said_in_full(on_bench in any_tray()) {
        let drawn = tray(&on_bench, 358.0);
        for thing in on_bench.places.iter().flat_map(|place| &place.things) {
            prop_assert!(drawn.description.contains(thing.label.trim()));
            prop_assert!(drawn.description.contains(thing.detail.trim()));
        }
    }
}

#[test]
fn a_width_that_is_no_number_is_drawn_narrow() {
    for width in [f64::NAN, f64::INFINITY, -5.0] {
        assert_eq!(tray(&bench(), width).width.to_bits(), 240.0_f64.to_bits());
    }
}

/// One washer face is a circle of 8 px; nothing else in a tray is.
fn bolt_heads(count: u32) -> usize {
    let things = vec![thing("Bolts", "", count, TrayMark::Fasteners)];
    let drawn = tray(
        &Tray {
            places: vec![place("Box", "", things)],
        },
        358.0,
    );
    svg(&drawn).matches(" r=\"8\"").count()
}

#[test]
fn as_many_heads_as_bolts_until_a_number_counts_better() {
    assert_eq!([0, 1, 7, 12].map(bolt_heads), [0, 1, 7, 12]);
    assert_eq!([13, 400].map(bolt_heads), [1, 1]);
}

#[test]
fn a_figure_is_never_shortened() {
    let fluid = |amount: &str| TrayMark::Fluid {
        amount: amount.to_owned(),
    };
    let things = vec![
        thing("Bolts", "", u32::MAX, TrayMark::Fasteners),
        thing("Steering fluid", "", 1, fluid("0.95 US quarts, about")),
        thing("Brake fluid", "", 1, fluid(" ")),
    ];
    let drawn = tray(
        &Tray {
            places: vec![place("Box", "", things)],
        },
        240.0,
    );
    let shown: Vec<&str> = drawn
        .texts()
        .iter()
        .map(|text| text.text.as_str())
        .collect();
    assert!(shown.contains(&"4294967295"), "{shown:?}");
    assert!(
        shown.join(" ").contains("0.95 US quarts, about"),
        "{shown:?}"
    );
    assert!(shown.contains(&"not measured"), "{shown:?}");
}

#[test]
fn what_came_off_last_stands_first() {
    let drawn = tray(&bench(), 358.0);
    let top = |words: &str| {
        drawn
            .texts()
            .into_iter()
            .find(|text| text.text == words)
            .map(|text| text.at.y)
    };
    assert!(top("Tray 3") < top("Jugs under the bench"));
    assert!(top("Jugs under the bench") < top("Blue box"));
    assert_eq!(top("last off"), top("Tray 3"));
    assert_eq!(drawn.title, "43 pieces on the bench");
}

#[test]
fn a_bench_on_the_phone() {
    insta::assert_snapshot!(svg(&tray(&bench(), 358.0)));
}

#[test]
fn an_empty_bench() {
    insta::assert_snapshot!(svg(&tray(&Tray::default(), 358.0)));
}
