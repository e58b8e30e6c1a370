//! The working of a drive, line by line.

use crate::drive::Fit;
use crate::layout::{Layout, Profile, Side};
use crate::path::{Circle, Path};
use crate::{sources, text};
use measure::{Line, Source, Working};
use std::f64::consts::PI;

pub(crate) fn path(
    layout: &Layout,
    worked: Option<&(Vec<Circle>, Path)>,
    length_mm: Option<f64>,
    fit: &Fit,
) -> Working {
    let mut working = Working::new("Belt path");
    working = profile(layout, working);
    if let Some((circles, path)) = worked {
        for (at, pulley) in layout.pulleys.iter().enumerate() {
            let next = &layout.pulleys[(at + 1) % layout.pulleys.len()];
            working = working
                .line(
                    Line::new(format!("wrap on {}", pulley.name), sources::tangents())
                        .formula("w", "turn from run to run")
                        .input("r", text::millimetres(circles[at].radius))
                        .value(text::degrees(path.wraps[at].to_degrees())),
                )
                .line(
                    Line::new(
                        format!("run from {} to {}", pulley.name, next.name),
                        sources::tangents(),
                    )
                    .formula("l", "sqrt(d² - (si·ri - sj·rj)²)")
                    .value(text::millimetres(path.runs[at].length)),
                );
        }
        working = working.line(
            Line::new("length", sources::tangents())
                .formula("L", "sum of runs + sum of r·w")
                .value(text::millimetres(path.length)),
        );
        if let Profile::Pk { .. } = layout.profile {
            let pitch = path.length + 2.0 * PI * layout.profile.pitch_offset_mm();
            working = working.line(
                Line::new("length of the pitch line", sources::iso_9981())
                    .formula("Lp", "L + 2·pi·be")
                    .value(text::millimetres(pitch)),
            );
        }
    }
    tensioner(layout, length_mm, fit, working)
        .limit("All pulleys in one plane, no sag, no stretch under load. Half a millimetre in a pulley's place moves the length by up to a millimetre.")
}

fn profile(layout: &Layout, working: Working) -> Working {
    match layout.profile {
        Profile::AsGiven => working.line(
            Line::new("the line of the belt", Source::given()).value("runs on the diameters given"),
        ),
        Profile::Pk { back_mm } => {
            let working = working
                .line(
                    Line::new("effective length", sources::effective_length())
                        .value("runs on the effective diameters"),
                )
                .line(
                    Line::new("line differential, for speeds", sources::iso_9981())
                        .symbol("be")
                        .value(text::millimetres(layout.profile.pitch_offset_mm())),
                );
            if layout
                .pulleys
                .iter()
                .all(|pulley| pulley.side == Side::Ribs)
            {
                return working;
            }
            working.line(
                Line::new("from the back to the effective line", sources::back())
                    .formula("a", "14 mm / (2·pi), unless measured")
                    .value(text::millimetres(back_mm))
                    .note("Speeds of pulleys on the back are good to about one in a hundred."),
            )
        }
        Profile::Toothed { pitch_mm, .. } => working.line(
            Line::new("pitch circle of a toothed pulley", Source::derived())
                .formula("d", "teeth·p/pi")
                .input("p", text::millimetres(pitch_mm)),
        ),
    }
}

fn tensioner(layout: &Layout, length_mm: Option<f64>, fit: &Fit, mut working: Working) -> Working {
    if let Some((least, most)) = fit.window {
        working = working.line(
            Line::new("lengths that the tensioner can take", sources::tangents())
                .formula("window", "L at its stops, or where L turns between them")
                .value(format!(
                    "{} to {}",
                    text::millimetres(least),
                    text::millimetres(most)
                )),
        );
    }
    if let (Some(stand), Some(length)) = (fit.stand, length_mm) {
        let value = match (stand.arm_deg, stand.along_mm) {
            (Some(angle), _) => text::degrees(angle),
            (_, along) => text::millimetres(along.unwrap_or(0.0)),
        };
        working = working.line(
            Line::new("tensioner with this belt", sources::tangents())
                .formula("place", "where L equals the belt's length")
                .input("L", text::millimetres(length))
                .value(value),
        );
    }
    let known = layout.tensioner.as_ref().filter(|tensioner| {
        layout.facts.tension_n.is_none()
            && (tensioner.torque_nm.is_some() || tensioner.force_n.is_some())
    });
    if let (Some(tensioner), Some(stand), Some(growth)) = (known, fit.stand, fit.growth)
        && let Some(tension) = stand.tension_n
    {
        let mut line = Line::new("tension by the tensioner", sources::virtual_work())
            .formula("T", "M / (dL/da)")
            .input("dL/da", format!("{:.2}\u{202f}mm", growth.abs()));
        if let Some(torque) = tensioner.torque_nm {
            line = line.input("M", text::newton_metres(torque));
        } else if let Some(force) = tensioner.force_n {
            line = line.input("force at the pulley", text::newtons(force));
        }
        working = working.line(line.value(text::newtons(tension)));
    }
    working
}
