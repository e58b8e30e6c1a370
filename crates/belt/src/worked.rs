//! The working of a drive, line by line.

use crate::drive::Fit;
use crate::layout::{Layout, Profile, Side};
use crate::path::{Circle, Path};
use crate::phrases as say;
use crate::{sources, text};
use measure::{Line, Source, Working};
use std::f64::consts::PI;

pub(crate) fn path(
    layout: &Layout,
    worked: Option<&(Vec<Circle>, Path)>,
    length_mm: Option<f64>,
    fit: &Fit,
) -> Working {
    let mut working = Working::new(say::path_title());
    working = profile(layout, working);
    if let Some((circles, path)) = worked {
        for (at, pulley) in layout.pulleys.iter().enumerate() {
            let next = &layout.pulleys[(at + 1) % layout.pulleys.len()];
            working = working
                .line(
                    Line::new(say::wrap_on(&pulley.name), sources::tangents())
                        .formula("w", say::turn_from_run_to_run())
                        .input("r", text::millimetres(circles[at].radius))
                        .value(text::degrees(path.wraps[at].to_degrees())),
                )
                .line(
                    Line::new(
                        say::run_from_to(&pulley.name, &next.name),
                        sources::tangents(),
                    )
                    .formula("l", "sqrt(d² - (si·ri - sj·rj)²)")
                    .value(text::millimetres(path.runs[at].length)),
                );
        }
        working = working.line(
            Line::new(say::length(), sources::tangents())
                .formula("L", say::length_formula())
                .value(text::millimetres(path.length)),
        );
        if let Profile::Pk { .. } = layout.profile {
            let pitch = path.length + 2.0 * PI * layout.profile.pitch_offset_mm();
            working = working.line(
                Line::new(say::length_of_pitch_line(), sources::iso_9981())
                    .formula("Lp", "L + 2·pi·be")
                    .value(text::millimetres(pitch)),
            );
        }
    }
    tensioner(layout, length_mm, fit, working).limit(say::all_in_one_plane())
}

fn profile(layout: &Layout, working: Working) -> Working {
    match layout.profile {
        Profile::AsGiven => working.line(
            Line::new(say::line_of_the_belt(), Source::given()).value(say::on_diameters_given()),
        ),
        Profile::Pk { back_mm } => {
            let working = working
                .line(
                    Line::new(say::effective_length(), sources::effective_length())
                        .value(say::on_effective_diameters()),
                )
                .line(
                    Line::new(say::line_differential(), sources::iso_9981())
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
                Line::new(say::back_to_effective_line(), sources::back())
                    .formula("a", say::unless_measured())
                    .value(text::millimetres(back_mm))
                    .note(say::speeds_on_back()),
            )
        }
        Profile::Toothed { pitch_mm, .. } => working.line(
            Line::new(say::pitch_circle(), Source::derived())
                .formula("d", say::teeth_formula())
                .input("p", text::millimetres(pitch_mm)),
        ),
    }
}

fn tensioner(layout: &Layout, length_mm: Option<f64>, fit: &Fit, mut working: Working) -> Working {
    if let Some((least, most)) = fit.window {
        working = working.line(
            Line::new(say::lengths_tensioner_takes(), sources::tangents())
                .formula(say::window(), say::window_formula())
                .value(say::from_to(
                    text::millimetres(least),
                    text::millimetres(most),
                )),
        );
    }
    if let (Some(stand), Some(length)) = (fit.stand, length_mm) {
        let value = match (stand.arm_deg, stand.along_mm) {
            (Some(angle), _) => text::degrees(angle),
            (_, along) => text::millimetres(along.unwrap_or(0.0)),
        };
        working = working.line(
            Line::new(say::tensioner_with_belt(), sources::tangents())
                .formula(say::place(), say::where_l_equals())
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
        let mut line = Line::new(say::tension_by_tensioner(), sources::virtual_work())
            .formula("T", "M / (dL/da)")
            .input("dL/da", format!("{:.2}\u{202f}mm", growth.abs()));
        if let Some(torque) = tensioner.torque_nm {
            line = line.input("M", text::newton_metres(torque));
        } else if let Some(force) = tensioner.force_n {
            line = line.input(say::force_at_pulley(), text::newtons(force));
        }
        working = working.line(line.value(text::newtons(tension)));
    }
    working
}
