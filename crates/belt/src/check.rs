//! Whether what was listed can be reckoned with.

use crate::error::{BeltError, within};
use crate::layout::{Layout, Profile, Pulley, Side, Travel};
use crate::phrases as say;
use std::collections::BTreeSet;
use std::f64::consts::PI;

/// More pulleys than any engine has on one belt.
pub(crate) const MOST_PULLEYS: usize = 24;

/// The layout with diameters of toothed pulleys worked out, if all of it is sound.
pub(crate) fn prepared(layout: &Layout) -> Result<Layout, BeltError> {
    let mut layout = layout.clone();
    if let Profile::Toothed { pitch_mm, .. } = layout.profile {
        for pulley in &mut layout.pulleys {
            if let (Some(teeth), Side::Ribs) = (pulley.teeth, pulley.side) {
                pulley.diameter_mm = f64::from(teeth) * pitch_mm / PI;
            }
        }
    }
    let found = layout.pulleys.len();
    if !(2..=MOST_PULLEYS).contains(&found) {
        return Err(BeltError::PulleyCount {
            found,
            most: MOST_PULLEYS,
        });
    }
    let mut names = BTreeSet::new();
    for pulley in &layout.pulleys {
        if !names.insert(pulley.name.as_str()) {
            return Err(BeltError::SameName {
                name: pulley.name.clone(),
            });
        }
        of_pulley(pulley)?;
    }
    of_crank(&layout)?;
    of_profile(layout.profile)?;
    of_facts(&layout)?;
    of_tensioner(&layout)?;
    Ok(layout)
}

fn of_pulley(pulley: &Pulley) -> Result<(), BeltError> {
    let name = &pulley.name;
    let place = -100_000.0..=100_000.0;
    within(
        say::place_of(name),
        pulley.x_mm,
        "mm",
        place.clone(),
        say::mend_from_one_point(),
    )?;
    within(
        say::place_of(name),
        pulley.y_mm,
        "mm",
        place,
        say::mend_from_one_point(),
    )?;
    within(
        say::diameter_of(name),
        pulley.diameter_mm,
        "mm",
        1.0..=20_000.0,
        say::mend_in_millimetres(),
    )?;
    within(
        say::flange_of(name),
        pulley.flange_mm,
        "mm",
        0.0..=100.0,
        say::mend_flange_above_face(),
    )?;
    if let Some(power) = pulley.power_kw {
        within(
            say::power_of(name),
            power,
            "kW",
            0.0..=500.0,
            say::mend_in_kilowatts(),
        )?;
    }
    if let Some(least) = pulley.least_wrap_deg {
        within(
            say::least_wrap_of(name),
            least,
            "°",
            0.0..=360.0,
            say::mend_in_degrees(),
        )?;
    }
    if let Some(edge) = pulley.edge_mm {
        within(
            say::edge_on(name),
            edge,
            "mm",
            -1000.0..=1000.0,
            say::mend_from_common_plane(),
        )?;
    }
    if let Some(mark) = pulley.mark_deg {
        within(
            say::mark_of(name),
            mark,
            "°",
            -720.0..=720.0,
            say::mend_degrees_from_right(),
        )?;
    }
    Ok(())
}

fn of_crank(layout: &Layout) -> Result<(), BeltError> {
    let drivers: Vec<&Pulley> = layout
        .pulleys
        .iter()
        .filter(|pulley| pulley.drives)
        .collect();
    match drivers[..] {
        [crank] if crank.turns.is_none() => Err(BeltError::NoSense {
            crank: crank.name.clone(),
        }),
        [_] => Ok(()),
        _ => Err(BeltError::Drivers {
            found: drivers.len(),
        }),
    }
}

fn of_profile(profile: Profile) -> Result<(), BeltError> {
    let back = |back_mm| {
        within(
            say::lines_distance_from_back(),
            back_mm,
            "mm",
            0.0..=20.0,
            say::mend_in_millimetres(),
        )
    };
    match profile {
        Profile::AsGiven => {}
        Profile::Pk { back_mm } => {
            back(back_mm)?;
        }
        Profile::Toothed { pitch_mm, back_mm } => {
            within(
                say::pitch_of_teeth(),
                pitch_mm,
                "mm",
                1.0..=50.0,
                say::mend_pitch_as_marked(),
            )?;
            back(back_mm)?;
        }
    }
    Ok(())
}

fn of_facts(layout: &Layout) -> Result<(), BeltError> {
    let facts = &layout.facts;
    let each = [
        (
            say::the_friction(),
            facts.friction,
            "",
            0.0..=2.0,
            say::mend_such_as_03(),
        ),
        (
            say::friction_of_back(),
            facts.back_friction,
            "",
            0.0..=2.0,
            say::mend_such_as_03(),
        ),
        (
            say::groove_angle(),
            facts.groove_deg,
            "°",
            10.0..=180.0,
            say::mend_pk_has_40(),
        ),
        (
            say::the_tension(),
            facts.tension_n,
            "N",
            1.0..=10_000.0,
            say::mend_newtons_one_run(),
        ),
        (
            say::cranks_speed(),
            facts.rpm,
            "rpm",
            1.0..=20_000.0,
            say::mend_revolutions(),
        ),
    ];
    for (what, value, unit, range, mend) in each {
        if let Some(value) = value {
            within(what, value, unit, range, mend)?;
        }
    }
    Ok(())
}

fn of_tensioner(layout: &Layout) -> Result<(), BeltError> {
    let Some(tensioner) = &layout.tensioner else {
        return Ok(());
    };
    for (what, value, unit) in [
        (say::tensioners_torque(), tensioner.torque_nm, "N·m"),
        (say::tensioners_force(), tensioner.force_n, "N"),
    ] {
        if let Some(value) = value {
            within(
                what,
                value,
                unit,
                0.001..=10_000.0,
                say::mend_without_sign(),
            )?;
        }
    }
    let Some((name, travel)) = &tensioner.moves else {
        return Ok(());
    };
    let pulley = layout
        .pulleys
        .iter()
        .find(|pulley| pulley.name == *name)
        .ok_or_else(|| BeltError::UnknownPulley { name: name.clone() })?;
    if pulley.drives {
        return Err(BeltError::DriverMoves { name: name.clone() });
    }
    match *travel {
        Travel::Arc {
            pivot_x_mm,
            pivot_y_mm,
            min_deg,
            max_deg,
        } => {
            if !(min_deg < max_deg && max_deg - min_deg < 360.0 && min_deg.abs() <= 1080.0) {
                return Err(BeltError::Stops { min_deg, max_deg });
            }
            for place in [pivot_x_mm, pivot_y_mm] {
                within(
                    say::pivots_place(),
                    place,
                    "mm",
                    -100_000.0..=100_000.0,
                    say::mend_same_point(),
                )?;
            }
            let arm = libm::hypot(pulley.x_mm - pivot_x_mm, pulley.y_mm - pivot_y_mm);
            if arm < 0.1 {
                Err(BeltError::NoArm)
            } else {
                Ok(())
            }
        }
        Travel::Line {
            from_x_mm,
            from_y_mm,
            to_x_mm,
            to_y_mm,
        } => {
            for place in [from_x_mm, from_y_mm, to_x_mm, to_y_mm] {
                within(
                    say::end_of_slot(),
                    place,
                    "mm",
                    -100_000.0..=100_000.0,
                    say::mend_same_point(),
                )?;
            }
            let long = libm::hypot(to_x_mm - from_x_mm, to_y_mm - from_y_mm);
            if long < 0.1 {
                Err(BeltError::NoTravel)
            } else {
                Ok(())
            }
        }
    }
}
