//! The drawings of coolant: nothing lies over anything, nothing runs out, and what is shown
//! is also said.

use drawing::{
    Drawing, Filling, Mark, MixChart, MixReading, PressureRun, filling, mix_chart, pressure, svg,
};

fn vessel() -> Filling {
    Filling {
        full: 9.2,
        full_words: "full 9.2 L, cold".into(),
        level: 7.7,
        level_words: "in 7.7 L".into(),
        missing: Some((1.0, 2.0)),
        missing_words: "missing 1.5 L, 1.0 to 2.0 L".into(),
        hot: Some(9.6),
        hot_words: "hot 0.4 L higher".into(),
    }
}

fn run() -> PressureRun {
    PressureRun {
        readings: vec![(0.0, 1.0), (5.0, 0.93), (10.0, 0.85)],
        line: vec![(0.0, 1.0, 0.99, 1.01), (10.0, 0.85, 0.84, 0.86)],
        unit: "bar".into(),
        verdict: "It leaks".into(),
    }
}

fn chart() -> MixChart {
    let curve = |from: f64, by: f64| {
        (0..=6)
            .map(|n| (f64::from(n) * 10.0, from + by * f64::from(n)))
            .collect()
    };
    MixChart {
        strength: "% concentrate by volume".into(),
        unit: "°C".into(),
        freeze: curve(0.0, -8.0),
        boil: curve(120.0, 2.0),
        boil_open: curve(100.0, 1.5),
        published: vec![(33.0, -18.0)],
        reading: Some(MixReading {
            strength: 50.0,
            freeze: -36.0,
            freeze_words: "freezes −36 °C".into(),
            boil: Some(129.0),
            boil_words: "boils 129 °C".into(),
        }),
    }
}

fn sound(drawing: &Drawing) {
    let texts = drawing.texts();
    for (nth, text) in texts.iter().enumerate() {
        assert!(text.size >= 16.0, "{}", text.text);
        let area = text.area();
        assert!(
            area.x >= -1.0 && area.right() <= drawing.width + 1.0,
            "{} runs out",
            text.text
        );
        assert!(
            area.y >= -4.0 && area.bottom() <= drawing.height + 4.0,
            "{} runs out",
            text.text
        );
        for other in &texts[nth + 1..] {
            assert!(
                !area.overlaps(&other.area()),
                "{} over {}",
                text.text,
                other.text
            );
        }
    }
}

#[test]
fn words_lie_apart_and_inside_at_a_phones_width() {
    for width in [280.0, 358.0, 560.0] {
        sound(&filling(&vessel(), width));
        sound(&pressure(&run(), width));
        sound(&mix_chart(&chart(), width));
    }
}

#[test]
fn a_vessel_that_is_nearly_full_keeps_its_words_apart() {
    for level in [9.2, 9.19, 9.0, 0.0] {
        sound(&filling(&Filling { level, ..vessel() }, 358.0));
    }
}

#[test]
fn what_is_shown_is_said() {
    let said = filling(&vessel(), 358.0).description;
    for words in ["full 9.2 L", "in 7.7 L", "missing 1.5 L", "hot 0.4 L"] {
        assert!(said.contains(words), "{said}");
    }
    let said = pressure(&run(), 358.0).description;
    assert_eq!(
        said,
        "3 readings, from 1.00 bar at 0.0 minutes to 0.85 bar at 10.0 minutes. It leaks."
    );
    let said = mix_chart(&chart(), 358.0).description;
    assert_eq!(
        said,
        "At 50 % concentrate by volume it freezes −36 °C; it boils 129 °C."
    );
}

#[test]
fn a_higher_level_stands_higher_on_the_paper() {
    let line = |level: f64| {
        let drawn = filling(
            &Filling {
                level,
                missing: None,
                hot: None,
                ..vessel()
            },
            358.0,
        );
        drawn
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Line { from, to, .. } if from.y == to.y => Some(from.y),
                _ => None,
            })
            .fold(0.0, f64::max)
    };
    assert!(line(8.0) < line(5.0) && line(5.0) < line(1.0));
}

#[test]
fn nothing_read_yet_and_numbers_that_are_none_are_drawn() {
    assert!(svg(&pressure(&PressureRun::default(), 358.0)).contains("No readings yet"));
    let odd = PressureRun {
        readings: vec![(f64::NAN, f64::INFINITY)],
        ..run()
    };
    for drawing in [
        pressure(&odd, f64::NAN),
        filling(
            &Filling {
                full: f64::NAN,
                level: f64::INFINITY,
                ..vessel()
            },
            358.0,
        ),
        mix_chart(&MixChart::default(), 358.0),
    ] {
        assert!(!svg(&drawing).contains("NaN"), "{}", svg(&drawing));
    }
}
