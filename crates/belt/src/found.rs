//! How the belt lies now, held against how it belongs.

use crate::fault::Fault;
use crate::layout::{Layout, Lies, Side};
use crate::phrases as say;

/// What differs between how it lies and how it belongs, in words.
pub(crate) fn lies(layout: &Layout) -> Option<Fault> {
    let lies = layout.lies.as_ref()?;
    let what = differs(layout, lies)?;
    Some(Fault::LiesWrong { what })
}

fn differs(layout: &Layout, lies: &Lies) -> Option<String> {
    if let Some((name, _)) = lies
        .iter()
        .find(|(name, _)| layout.pulleys.iter().all(|pulley| pulley.name != *name))
    {
        return Some(say::goes_round_no_pulley(name));
    }
    if let Some(missed) = layout
        .pulleys
        .iter()
        .find(|pulley| lies.iter().all(|(name, _)| *name != pulley.name))
    {
        return Some(say::passes_by(&missed.name));
    }
    for pulley in &layout.pulleys {
        let (_, side) = lies.iter().find(|(name, _)| *name == pulley.name)?;
        if *side != pulley.side {
            return Some(match side {
                Side::Ribs => say::has_ribs_belongs_back(&pulley.name),
                Side::Back => say::has_back_belongs_ribs(&pulley.name),
            });
        }
    }
    let belongs: Vec<&str> = layout
        .pulleys
        .iter()
        .map(|pulley| pulley.name.as_str())
        .collect();
    let found: Vec<&str> = lies.iter().map(|(name, _)| name.as_str()).collect();
    (!same_round(&belongs, &found))
        .then(|| say::goes_but_belongs(found.join(", "), belongs.join(", ")))
}

/// Whether two loops meet the same pulleys in the same sequence, from any start and either
/// way round: whoever looks may begin anywhere.
fn same_round(one: &[&str], other: &[&str]) -> bool {
    let count = one.len();
    let turned = |backwards: bool| {
        (0..count).any(|start| {
            (0..count).all(|step| {
                let at = if backwards {
                    (start + count - step) % count
                } else {
                    (start + step) % count
                };
                one.get(step) == other.get(at)
            })
        })
    };
    count == other.len() && (turned(false) || turned(true))
}
