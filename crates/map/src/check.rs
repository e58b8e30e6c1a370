//! Whether every move of a map can be reached by starting from what is free.

use crate::contradict;
use crate::fields::Fields;
use crate::phrases as say;
use crate::reach::Reach;
use crate::trouble::{Span, Troubles};
use crate::value::{Map, MapMove, MoveTimes};
use crate::words::as_written;
use states::{ItemId, Need};
use std::collections::BTreeSet;

/// Reports moves that nothing free can ever support, on any vehicle the map is for, and
/// alternatives that can never support anything.
pub(crate) fn check(map: &Map, root: &Fields, troubles: &mut Troubles) {
    let one_each = map.variants.iter().map(|variant| [variant.clone()].into());
    let some: Vec<BTreeSet<String>> = match map.variants.is_empty() {
        true => Vec::new(),
        false => one_each.chain([BTreeSet::new()]).collect(),
    };
    check_renewed(map, root, troubles);
    contradict::check(map, root, troubles);
    if troubles.any_error() {
        return;
    }
    check_reach(map, "", root, troubles);
    for variants in some {
        if troubles.any_error() {
            return;
        }
        let names: Vec<_> = variants.iter().map(String::as_str).collect();
        let on = match names.as_slice() {
            [] => say::on_no_variant().to_owned(),
            names => say::on_variant(names.join(say::and())),
        };
        check_reach(&map.of_variant(&variants), &on, root, troubles);
    }
    if !troubles.any_error() {
        warn_of_useless(map, root, troubles);
    }
}

/// So many moves of a circle are shown; a longer one is shown with its rest counted.
const SHOWN: usize = 12;

/// What is renewed with a move costs no time of its own: the plan has it go with the move.
fn check_renewed(map: &Map, root: &Fields, troubles: &mut Troubles) {
    for (item, step) in map.moves() {
        let seals = step.renews.iter();
        for (seal, known) in seals.filter_map(|seal| map.items.get_key_value(seal)) {
            let own = known.moves.iter().map(|own| own.minutes);
            let (what, mend) = if !known.spent {
                (
                    say::renewed_may_go_back(seal, item),
                    say::write_spent().to_owned(),
                )
            } else if own
                .into_iter()
                .any(|minutes| minutes != MoveTimes::default())
            {
                (
                    say::renewed_has_minutes(seal, item),
                    say::add_to_those_of(item),
                )
            } else {
                continue;
            };
            let items = root.table("items", troubles);
            let table = items.and_then(|items| items.table(seal.as_str(), troubles));
            let span = table.and_then(|table| table.span);
            troubles.error(&span, what, mend);
        }
    }
}

fn check_reach(map: &Map, on: &str, root: &Fields, troubles: &mut Troubles) {
    let reach = Reach::new(map);
    let reached = reach.all(None, false);
    let steps = reach.steps();
    // What each move that cannot be made waits for.
    let waits: Vec<Option<usize>> = (0..steps.len())
        .map(|at| {
            (!reached.made[at])
                .then(|| reach.waits_for(at, &reached))
                .flatten()
        })
        .collect();
    for (at, (item, step)) in steps.iter().enumerate() {
        if !reached.made[at] && waits[at].is_none() {
            let need = reach.unmet(at, &reached);
            let need = need.map_or_else(
                || say::what_it_starts_from().to_owned(),
                |need| format!("`{}`", as_written(map, need)),
            );
            let what = say::can_never_be_made(on, &step.id, need);
            let mend = say::mend_or_another_way();
            let span = needs_of(root, item, step, troubles);
            troubles.error(&span, what, mend);
        }
    }
    for circle in circles(&waits) {
        // Told where the text has its first move.
        let spans = circle.iter().map(|at| {
            let (item, step) = steps[*at];
            needs_of(root, item, step, troubles)
        });
        let (first, span) = spans
            .enumerate()
            .min_by_key(|(_, span)| span.as_ref().map_or(0, |span| span.start))
            .unwrap_or_default();
        let name = |nth: usize| steps[circle[(first + nth) % circle.len()]].1.id.as_str();
        let mut names: Vec<String> = (0..circle.len().min(SHOWN))
            .map(|nth| name(nth).to_owned())
            .collect();
        if circle.len() > SHOWN {
            names.push(say::more_of_which_the_last(circle.len() - SHOWN));
        }
        names.push(name(0).to_owned());
        let what = say::wait_for_each_other(on, names.join(say::needs_between()));
        let mend = say::take_one_need_away();
        troubles.error(&span, what, mend);
    }
}

/// The circles among moves that each wait for one other.
fn circles(waits: &[Option<usize>]) -> Vec<Vec<usize>> {
    let mut met: Vec<Option<usize>> = vec![None; waits.len()];
    let mut circles = Vec::new();
    for start in 0..waits.len() {
        let mut path = Vec::new();
        let mut at = start;
        while met[at].is_none() {
            met[at] = Some(start);
            path.push(at);
            match waits[at] {
                Some(next) => at = next,
                None => break,
            }
        }
        let own = met[at] == Some(start) && waits[at].is_some();
        if let Some(begin) = path.iter().position(|step| *step == at).filter(|_| own) {
            circles.push(path.split_off(begin));
        }
    }
    circles
}

/// Where the needs of a move are written, else its item.
fn needs_of(root: &Fields, item: &ItemId, step: &MapMove, troubles: &mut Troubles) -> Span {
    needs_at(root, item, step, "needs", troubles)
}

/// The same for one of the two keys of needs.
pub(crate) fn needs_at(
    root: &Fields,
    item: &ItemId,
    step: &MapMove,
    key: &str,
    troubles: &mut Troubles,
) -> Span {
    let items = root.table("items", troubles)?;
    let fields = items.table(item.as_str(), troubles)?;
    let verb = step.id.rsplit('.').next().unwrap_or_default();
    let within = fields
        .has("crack")
        .then(|| fields.table(verb, troubles))
        .flatten();
    let within = within.unwrap_or(fields);
    within.at(key).or_else(|| within.at("needs"))
}

/// An alternative that holds only once the move itself is made can never support it.
fn warn_of_useless(map: &Map, root: &Fields, troubles: &mut Troubles) {
    let reach = Reach::new(map);
    // Moves are made as late as can be while some of their alternatives do not hold: what
    // holds by then holds without them, and most alternatives need no closer look.
    let late = reach.all(None, true);
    for (at, (item, step)) in reach.steps().iter().enumerate() {
        let mut alternatives = Vec::new();
        collect(&step.need, &mut alternatives);
        alternatives.retain(|need| !reach.held(need, at, &late));
        if alternatives.is_empty() {
            continue;
        }
        let without = reach.all(Some(at), false);
        for need in alternatives {
            if !reach.holds(need, &without) {
                let what = say::way_supports_nothing(as_written(map, need), &step.id);
                let mend = say::take_out_of_any();
                let span = needs_of(root, item, step, troubles);
                troubles.warn(&span, what, mend);
            }
        }
    }
}

fn collect<'n>(need: &'n Need, into: &mut Vec<&'n Need>) {
    match need {
        Need::Is { .. } => {}
        Need::All(needs) => needs.iter().for_each(|need| collect(need, into)),
        Need::Any(needs) => {
            into.extend(needs);
            needs.iter().for_each(|need| collect(need, into));
        }
    }
}
