//! What friction can hold on a pulley, and how near a drive is to slipping.

use crate::error::{BeltError, within};
use crate::layout::{Layout, PK_GROOVE_DEG, Profile, Side};
use crate::phrases as say;
use crate::{sources, text};
use measure::{Line, Source, Working};

/// A belt round a pulley.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GripQuestion {
    /// Of the faces that touch, 0 to 2.
    pub friction: f64,
    /// 0 to 3600 degrees.
    pub wrap_deg: f64,
    /// The whole angle of a groove; nothing where it runs on a flat face or its back.
    pub groove_deg: Option<f64>,
}

/// What it can hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    /// Tight side over slack side, at which it starts to slip.
    pub ratio: f64,
    pub working: Working,
}

/// The ratio of tensions at which a belt starts to slip on a pulley.
///
/// Formula: T1/T2 = exp(mu theta), with mu / sin(half the groove angle) in ribs.
///
/// Inputs: see [`GripQuestion`].
///
/// Returns the ratio, at least 1.
///
/// # Errors
///
/// [`BeltError::OutOfRange`].
///
/// # Limits
///
/// Centrifugal force, which eats into the grip of a fast belt, is left out. Oil, water or
/// glaze on the ribs changes the friction more than anything reckoned here.
///
/// # Source
///
/// Euler-Eytelwein.
///
/// ```
/// use belt::{GripQuestion, grip};
/// let flat = grip(&GripQuestion { friction: 0.3, wrap_deg: 180.0, groove_deg: None })?;
/// let ribs = grip(&GripQuestion { friction: 0.3, wrap_deg: 180.0, groove_deg: Some(40.0) })?;
/// assert!((flat.ratio - 2.566).abs() < 1e-3 && (ribs.ratio - 15.73).abs() < 0.01);
/// # Ok::<(), belt::BeltError>(())
/// ```
pub fn grip(question: &GripQuestion) -> Result<Grip, BeltError> {
    let mu = within(
        say::the_friction(),
        question.friction,
        "",
        0.0..=2.0,
        say::mend_such_as_03(),
    )?;
    let wrap = within(
        say::the_wrap(),
        question.wrap_deg,
        "°",
        0.0..=3600.0,
        say::mend_check_it(),
    )?;
    let wedge = match question.groove_deg {
        Some(groove) => {
            within(
                say::groove_angle(),
                groove,
                "°",
                10.0..=180.0,
                say::mend_pk_has_40(),
            )?;
            libm::sin((groove / 2.0).to_radians())
        }
        None => 1.0,
    };
    let ratio = libm::exp(mu / wedge * wrap.to_radians());
    let mut line = Line::new(say::ratio_it_holds(), sources::euler())
        .input("mu", text::plain(mu))
        .input("theta", text::degrees(wrap))
        .value(text::plain(ratio));
    line = match question.groove_deg {
        Some(groove) => line
            .formula("T1/T2", say::grip_groove_formula())
            .input(say::groove(), text::degrees(groove)),
        None => line.formula("T1/T2", "exp(mu·theta)"),
    };
    let working = Working::new(say::grip_title())
        .line(line)
        .limit(say::centrifugal_left_out());
    Ok(Grip { ratio, working })
}

/// What of the load is known at a pulley.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Hold {
    /// The ratio that friction holds, where friction is known.
    pub ratio: Option<f64>,
    /// How many times its load the pulley could carry.
    pub margin: Option<f64>,
    /// Tension of the run after it.
    pub tension_n: Option<f64>,
}

/// What is needed beside the layout; pulleys in the sequence of travel.
pub(crate) struct Load<'a> {
    pub layout: &'a Layout,
    pub wraps_rad: &'a [f64],
    pub spans_mm: &'a [f64],
    /// Of the pulley that the tensioner moves.
    pub tensioned: Option<usize>,
    /// In the runs at a tensioner that follows; else the mean of all runs at rest.
    pub tension_n: Option<f64>,
    pub follows: bool,
}

/// Why no margin can be given, in words.
pub(crate) fn missing(load: &Load) -> Option<String> {
    let facts = &load.layout.facts;
    let unknown: Vec<&str> = load
        .layout
        .pulleys
        .iter()
        .enumerate()
        .filter(|(at, pulley)| {
            !pulley.drives && pulley.power_kw.is_none() && Some(*at) != load.tensioned
        })
        .map(|(_, pulley)| pulley.name.as_str())
        .collect();
    let mut wants = Vec::new();
    if facts.friction.is_none() {
        wants.push(say::friction().to_owned());
    }
    if facts.rpm.is_none() {
        wants.push(say::rpm_of_crank().to_owned());
    }
    if load.tension_n.is_none() {
        wants.push(say::tension_or_torque().to_owned());
    }
    if !unknown.is_empty() {
        wants.push(say::power_of_unknown(unknown.join(", ")));
    }
    (!wants.is_empty()).then(|| say::no_slip_margin_without(wants.join("; ")))
}

/// Tensions all round and what is left of each pulley's grip.
pub(crate) fn holds(load: &Load) -> (Vec<Hold>, Option<Working>) {
    let mut holds: Vec<Hold> = (0..load.layout.pulleys.len())
        .map(|at| Hold {
            ratio: ratio(load, at),
            ..Hold::default()
        })
        .collect();
    if load.layout.profile.is_toothed() || missing(load).is_some() {
        return (holds, None);
    }
    let Some((pulls, speed)) = pulls(load) else {
        return (holds, None);
    };
    let tensions = tensions(load, &pulls);
    let count = tensions.len();
    for (at, hold) in holds.iter_mut().enumerate() {
        let (before, after) = (tensions[(at + count - 1) % count], tensions[at]);
        hold.tension_n = Some(after);
        let asked = (after - before).abs();
        if asked > 1e-9 {
            let slack = before.min(after).max(0.0);
            hold.margin = hold.ratio.map(|ratio| slack * (ratio - 1.0) / asked);
        }
    }
    (holds, Some(working(load, &tensions, speed)))
}

fn ratio(load: &Load, at: usize) -> Option<f64> {
    let facts = &load.layout.facts;
    let side = load.layout.pulleys[at].side;
    let groove_deg = match (side, load.layout.profile) {
        (Side::Back, _) => None,
        (Side::Ribs, Profile::Pk { .. }) => Some(facts.groove_deg.unwrap_or(PK_GROOVE_DEG)),
        (Side::Ribs, _) => facts.groove_deg,
    };
    let friction = match side {
        Side::Ribs => facts.friction,
        Side::Back => facts.back_friction.or(facts.friction),
    }?;
    let question = GripQuestion {
        friction,
        wrap_deg: load.wraps_rad[at].to_degrees(),
        groove_deg,
    };
    grip(&question).ok().map(|grip| grip.ratio)
}

/// By how much the tension rises over each pulley, and the belt's speed in m/s.
fn pulls(load: &Load) -> Option<(Vec<f64>, f64)> {
    let crank = load.layout.pulleys.iter().find(|pulley| pulley.drives)?;
    let radius_m = load.layout.pitch_radius_mm(crank) / 1000.0;
    let speed = 2.0 * std::f64::consts::PI * radius_m * load.layout.facts.rpm? / 60.0;
    let taken: f64 = load
        .layout
        .pulleys
        .iter()
        .filter_map(|pulley| pulley.power_kw)
        .sum();
    let pull = |power_kw: f64| power_kw * 1000.0 / speed;
    let pulls = load.layout.pulleys.iter().map(|pulley| {
        if pulley.drives {
            -pull(taken)
        } else {
            pull(pulley.power_kw.unwrap_or(0.0))
        }
    });
    (speed > 0.0).then(|| (pulls.collect(), speed))
}

/// Tension of the run after each pulley.
fn tensions(load: &Load, pulls: &[f64]) -> Vec<f64> {
    let given = load.tension_n.unwrap_or(0.0);
    let count = pulls.len();
    let start = load.tensioned.filter(|_| load.follows).unwrap_or(0);
    let mut above = vec![0.0; count];
    for step in 1..count {
        let at = (start + step) % count;
        above[at] = above[(at + count - 1) % count] + pulls[at];
    }
    if load.follows {
        return above.iter().map(|rise| given + rise).collect();
    }
    // Nothing gives way: the belt as a whole is as long as at rest.
    let all: f64 = load.spans_mm.iter().sum();
    let mean: f64 = above
        .iter()
        .zip(load.spans_mm)
        .map(|(rise, span)| rise * span)
        .sum::<f64>()
        / all;
    above.iter().map(|rise| given + rise - mean).collect()
}

fn working(load: &Load, tensions: &[f64], speed: f64) -> Working {
    let mut working = Working::new(say::slip_title()).line(
        Line::new(say::speed_of_belt(), Source::derived())
            .formula("v", "pi·d·n")
            .value(format!("{speed:.1}\u{202f}m/s")),
    );
    for (pulley, tension) in load.layout.pulleys.iter().zip(tensions) {
        working = working.line(
            Line::new(say::tension_after(&pulley.name), Source::derived())
                .formula("T", say::tension_before_formula())
                .value(text::newtons(*tension)),
        );
    }
    working
        .line(
            Line::new(say::how_many_times_its_load(), sources::euler())
                .formula("m", say::carry_formula())
                .value(say::see_each_pulley()),
        )
        .limit(say::steady_running())
}
