//! Letting a belt off: the slack that each pulley wants, and which one to take last.

use crate::layout::{Layout, PK_GROOVE_DEG, PK_PITCH_MM, Profile, Side};
use crate::phrases as say;
use crate::routing::routed;

/// What it takes to lift the belt off one pulley.
#[derive(Clone, Debug, PartialEq)]
pub struct LetOff {
    pub pulley: String,
    /// Extra length at most, to lift the belt over ribs and flange; nothing where it is not
    /// known how deep the ribs sit.
    pub slack_mm: Option<f64>,
    pub reachable: bool,
    pub flange: bool,
}

/// The pulleys from the best to take last to the worst: within reach first, then without a
/// flange, then by least slack, then by least wrap. Where the belt goes back, it goes on there last too.
pub(crate) fn let_off(layout: &Layout) -> Vec<LetOff> {
    let Ok((circles, path)) = routed(layout) else {
        return Vec::new();
    };
    let mut all: Vec<(LetOff, f64)> = layout
        .pulleys
        .iter()
        .enumerate()
        .map(|(at, pulley)| {
            let lift = rib_mm(layout, at).map(|rib| rib + pulley.flange_mm);
            let slack_mm = lift.and_then(|lift| {
                let mut raised = circles.clone();
                raised[at].radius += lift;
                let high = crate::path::path(&raised).ok()?;
                Some(high.length - path.length)
            });
            let off = LetOff {
                pulley: pulley.name.clone(),
                slack_mm,
                reachable: pulley.reachable,
                flange: pulley.flange_mm > 0.0,
            };
            (off, path.wraps[at])
        })
        .collect();
    all.sort_by(|(one, one_wrap), (other, other_wrap)| {
        (!one.reachable, one.flange)
            .cmp(&(!other.reachable, other.flange))
            .then(at_most(one.slack_mm).total_cmp(&at_most(other.slack_mm)))
            .then(one_wrap.total_cmp(other_wrap))
    });
    all.into_iter().map(|(off, _)| off).collect()
}

/// What is not known comes last.
fn at_most(slack_mm: Option<f64>) -> f64 {
    slack_mm.unwrap_or(f64::INFINITY)
}

/// How deep ribs or teeth can sit in the pulley at most.
///
/// A V of the pitch of the ribs with their angle cannot be deeper than
/// pitch / (2 tan(angle / 2)); a tooth not than half its pitch.
fn rib_mm(layout: &Layout, at: usize) -> Option<f64> {
    if layout.pulleys[at].side == Side::Back {
        return Some(0.0);
    }
    match layout.profile {
        Profile::AsGiven => None,
        Profile::Pk { .. } => {
            Some(PK_PITCH_MM / (2.0 * libm::tan((PK_GROOVE_DEG / 2.0).to_radians())))
        }
        Profile::Toothed { pitch_mm, .. } => Some(pitch_mm / 2.0),
    }
}

/// The words of how a belt comes off and goes on.
pub(crate) fn advice(order: &[LetOff], room_mm: Option<f64>, stretch: bool) -> Vec<String> {
    let Some(last) = order.first() else {
        return Vec::new();
    };
    let mut words = Vec::new();
    if stretch {
        words.push(say::cut_stretch_belt_off().to_owned());
        return words;
    }
    if last.reachable {
        words.push(say::take_it_off_first(&last.pulley));
    } else {
        words.push(say::none_within_reach().to_owned());
    }
    let needed = last.slack_mm.filter(|slack| *slack > 0.0);
    if let (Some(room), Some(needed)) = (room_mm, needed) {
        words.push(if room + 1e-9 < needed {
            say::tensioner_gives_too_little(format_args!("{room:.1}"), format_args!("{needed:.1}"))
        } else {
            say::tensioner_gives_enough(format_args!("{room:.1}"), format_args!("{needed:.1}"))
        });
    }
    words
}
