//! Whether a problem names only what it has, and times that can be counted.

use crate::{Minutes, PlanError, Problem};
use states::{ItemId, Need};
use std::collections::BTreeSet;

pub(crate) fn check_names(problem: &Problem) -> Result<(), PlanError> {
    let mut seen = BTreeSet::new();
    let known = |item: &ItemId, named_by: &str| {
        if problem.items.contains_key(item) {
            return Ok(());
        }
        Err(PlanError::NoSuchItem {
            item: item.clone(),
            named_by: named_by.to_owned(),
        })
    };
    for step in &problem.moves {
        if !seen.insert(&step.id) {
            return Err(PlanError::SameName {
                id: step.id.clone(),
            });
        }
        let needs = [Some(&step.need), step.back_need.as_ref()];
        let needed = needs.into_iter().flatten().flat_map(Need::items);
        for item in needed.chain([&step.item]).chain(&step.makes_due) {
            known(item, step.id.as_str())?;
        }
        if needs
            .iter()
            .flatten()
            .any(|need| need.items().contains(&step.item))
        {
            return Err(PlanError::NeedsItself {
                id: step.id.clone(),
                item: step.item.clone(),
            });
        }
    }
    Ok(())
}

/// Far below what the counters hold, so that no sum on the way can be too large.
const MOST_TENTHS: u32 = 1 << 28;

pub(crate) fn check_times(problem: &Problem) -> Result<(), PlanError> {
    let changes = &problem.changes;
    let longest = changes.between.values().chain([&changes.place]).max();
    let longest = u64::from(longest.copied().unwrap_or_default().in_tenths());
    let mut sum = 0_u64;
    for step in &problem.moves {
        let pieces = problem.items[&step.item].stands.len() as u64;
        let once = [step.out.set_up, step.back.set_up, step.lost, step.snag_risk];
        let each = [step.out.per_piece, step.back.per_piece];
        let tools = u64::from(changes.tool.in_tenths()) * step.tools.len() as u64;
        let tenths = |minutes: &Minutes| u64::from(minutes.in_tenths());
        sum += once.iter().map(tenths).sum::<u64>() + 2 * (tools + longest);
        sum += pieces * each.iter().map(tenths).sum::<u64>();
    }
    if sum > u64::from(MOST_TENTHS) {
        return Err(PlanError::TooLong {
            limit: Minutes::tenths(MOST_TENTHS),
        });
    }
    Ok(())
}
