//! Drives as the tests write them.

#![allow(dead_code, reason = "each test file uses some of these")]

use belt::{Drive, Layout, Pulley, Question, Sense, Side, drive};

/// Pulleys called `a`, `b` and so on; the first drives.
pub fn layout(pulleys: &[(f64, f64, f64, Side)], turns: Sense) -> Layout {
    let names = "abcdefghijklmnopqrstuvwx";
    let pulleys = pulleys
        .iter()
        .zip(names.chars())
        .map(|(&(x, y, diameter, side), name)| Pulley {
            side,
            ..Pulley::new(name.to_string(), x, y, diameter)
        });
    let mut pulleys: Vec<Pulley> = pulleys.collect();
    pulleys[0].drives = true;
    pulleys[0].turns = Some(turns);
    Layout::of(pulleys)
}

pub fn solved(layout: &Layout) -> Drive {
    drive(&Question {
        layout: layout.clone(),
        length_mm: None,
    })
    .unwrap()
}

pub fn with_belt(layout: &Layout, length_mm: f64) -> Drive {
    drive(&Question {
        layout: layout.clone(),
        length_mm: Some(length_mm),
    })
    .unwrap()
}

pub fn wrap(found: &Drive, name: &str) -> f64 {
    let pulley = found
        .pulleys
        .iter()
        .find(|pulley| pulley.name == name)
        .unwrap();
    pulley.touches.unwrap().wrap_deg
}

pub fn words(found: &Drive) -> Vec<String> {
    found.faults.iter().map(ToString::to_string).collect()
}

/// A drive such as an engine's: crank, tensioner on the back, alternator, idler, pump.
pub fn engine() -> Layout {
    belt::read("engine.toml", ENGINE).unwrap().layout
}

pub const ENGINE: &str = r#"
[[pulley]]
name = "crank"
x_mm = 0
y_mm = 0
diameter_mm = 160
drives = true
turns = "cw"

[[pulley]]
name = "tensioner"
x_mm = -120
y_mm = 116
diameter_mm = 72
side = "back"

[[pulley]]
name = "alternator"
x_mm = -126
y_mm = 262
diameter_mm = 62

[[pulley]]
name = "idler"
x_mm = 22
y_mm = 226
diameter_mm = 68
side = "back"

[[pulley]]
name = "pump"
x_mm = 172
y_mm = 196
diameter_mm = 132

[tensioner]
pulley = "tensioner"
pivot_x_mm = -120
pivot_y_mm = 46
min_deg = 72
max_deg = 110
"#;
