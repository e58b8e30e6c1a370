//! Needs that cannot hold together, and fasteners that are tightened with their load off.

use crate::check::needs_at;
use crate::fields::Fields;
use crate::phrases as say;
use crate::trouble::Troubles;
use crate::value::{Map, MapItem, MapMove};
use crate::words::as_written;
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};

/// One thing that a need asks: an item, at positions (none for all), in one of some states.
type Point<'n> = (&'n ItemId, &'n [Position], &'n BTreeSet<State>);

/// More ways than this by which a need can hold are not looked through.
const WAYS_MOST: usize = 256;

pub(crate) fn check(map: &Map, root: &Fields, troubles: &mut Troubles) {
    for (item, step) in map.moves() {
        let written = [
            ("needs", Some(&step.need)),
            ("needs-back", step.need_back.as_ref()),
        ];
        for (key, need) in written {
            let Some((one, other)) = need.and_then(contradiction) else {
                continue;
            };
            let what = say::needs_both_at_once(
                &step.id,
                as_written(map, &point(one)),
                as_written(map, &point(other)),
            );
            let mend = say::take_one_or_two_ways();
            let span = needs_at(root, item, step, key, troubles);
            troubles.error(&span, what, mend);
        }
    }
    for (item, known) in &map.items {
        if known.kind == Kind::Fluid {
            shut_in(map, item, known, root, troubles);
        }
        match known.moves.as_slice() {
            _ if known.kind != Kind::Fasteners => {}
            [crack, _, ..] => under_load(map, item, crack, root, troubles),
            [only] => axle_nut(map, item, only, root, troubles),
            [] => {}
        }
    }
}

/// What was put into a system (a plug, a clamp, a rag) is out again before its fluid goes in.
fn shut_in(map: &Map, fluid: &ItemId, known: &MapItem, root: &Fields, troubles: &mut Troubles) {
    let put_in = |(_, other): &(&ItemId, &MapItem)| {
        other.kind == Kind::PutIn && other.system.is_some() && other.system == known.system
    };
    for step in &known.moves {
        let back = step.need_back.as_ref().unwrap_or(&step.need);
        for (inside, other) in map.items.iter().filter(put_in) {
            if !holds_without(map, back, inside) {
                continue;
            }
            let removed = (inside, [].as_slice(), &[other.kind.home()].into());
            let what = say::filled_with_it_inside(fluid, inside);
            let mend = say::write_removed_first(as_written(map, &point(removed)), fluid);
            let span = needs_at(root, fluid, step, "needs-back", troubles);
            troubles.warn(&span, what, mend);
        }
    }
}

/// An axle nut gets its last torque with the wheel on the ground: in one move it cannot.
fn axle_nut(map: &Map, item: &ItemId, only: &MapMove, root: &Fields, troubles: &mut Troubles) {
    let name = item.as_str().to_lowercase();
    let axle = [
        "hub nut",
        "axle nut",
        "hub bolt",
        "drive shaft nut",
        "driveshaft nut",
    ];
    let wheel = ItemId::new("wheel");
    let has_wheel = map
        .items
        .get(&wheel)
        .is_some_and(|wheel| wheel.kind == Kind::Part);
    let back = only.need_back.as_ref().unwrap_or(&only.need);
    if !has_wheel
        || !axle.iter().any(|word| name.contains(word))
        || !holds_without(map, back, &wheel)
    {
        return;
    }
    let what = say::would_hang_free(item, "wheel");
    let mend = say::write_two_moves();
    let span = needs_at(root, item, only, "needs-back", troubles);
    troubles.warn(&span, what, mend);
}

/// What is cracked while something holds it still is finally tightened with that back on,
/// not with it hanging free or held by hand.
fn under_load(map: &Map, item: &ItemId, crack: &MapMove, root: &Fields, troubles: &mut Troubles) {
    let mut on = Vec::new();
    points(&crack.need, &mut on);
    let back = crack.need_back.as_ref().unwrap_or(&crack.need);
    for (load, _, states) in on {
        let home = map.items.get(load).map(|load| load.kind.home());
        let part = map
            .items
            .get(load)
            .is_some_and(|load| load.kind != Kind::PutIn);
        let is_on = part && home.is_some_and(|home| states.contains(&home));
        if !is_on || !holds_without(map, back, load) {
            continue;
        }
        let what = say::would_hang_free(item, load);
        let mend = say::write_needs_back(as_written(
            map,
            &point((load, &[], &[map.items[load].kind.home()].into())),
        ));
        let span = needs_at(root, item, crack, "needs-back", troubles);
        troubles.warn(&span, what, mend);
    }
}

/// Whether a need can hold with one item away and everything else as asked.
fn holds_without(map: &Map, need: &Need, away: &ItemId) -> bool {
    match need {
        Need::Is { item, states, .. } if item == away => map
            .items
            .get(item)
            .is_none_or(|known| states.contains(&known.kind.away())),
        // What holds the load on says that it is on.
        Need::Is { item, states, .. } => !holds_on(map, item, states, away),
        Need::All(needs) => needs.iter().all(|need| holds_without(map, need, away)),
        Need::Any(needs) => needs.iter().any(|need| holds_without(map, need, away)),
    }
}

/// Whether fasteners that must be out for an item to come off are asked to be in.
fn holds_on(map: &Map, fasteners: &ItemId, states: &BTreeSet<State>, load: &ItemId) -> bool {
    let home = map.items.get(fasteners).map(|known| known.kind.home());
    let asked_home = home.is_some_and(|home| states.contains(&home));
    let load_moves = map.items.get(load).into_iter().flat_map(|load| &load.moves);
    asked_home
        && load_moves
            .into_iter()
            .any(|step| step.need.items().contains(fasteners))
}

fn point(point: Point) -> Need {
    Need::Is {
        item: point.0.clone(),
        at: point.1.to_vec(),
        states: point.2.clone(),
    }
}

fn points<'n>(need: &'n Need, into: &mut Vec<Point<'n>>) {
    match need {
        Need::Is { item, at, states } => into.push((item, at, states)),
        Need::All(needs) | Need::Any(needs) => needs.iter().for_each(|need| points(need, into)),
    }
}

/// Two things that a need asks and that can never hold together, if no way round them is left.
fn contradiction(need: &Need) -> Option<(Point<'_>, Point<'_>)> {
    let ways = ways(need)?;
    let mut first = None;
    for way in &ways {
        match clash(way) {
            Some(found) => first = first.or(Some(found)),
            None => return None,
        }
    }
    first
}

fn clash<'n>(way: &[Point<'n>]) -> Option<(Point<'n>, Point<'n>)> {
    let mut of_item: BTreeMap<&ItemId, Vec<Point<'n>>> = BTreeMap::new();
    for asked in way {
        let others = of_item.entry(asked.0).or_default();
        let overlaps = |other: &Point| {
            asked.1.is_empty()
                || other.1.is_empty()
                || asked.1.iter().any(|at| other.1.contains(at))
        };
        let clashes = |other: &&Point<'n>| overlaps(other) && asked.2.is_disjoint(other.2);
        if let Some(other) = others.iter().find(clashes) {
            return Some((*other, *asked));
        }
        others.push(*asked);
    }
    None
}

/// Every way by which a need can hold; nothing where they are too many.
fn ways(need: &Need) -> Option<Vec<Vec<Point<'_>>>> {
    let all = match need {
        Need::Is { item, at, states } => vec![vec![(item, at.as_slice(), states)]],
        Need::Any(needs) => {
            let each: Option<Vec<_>> = needs.iter().map(ways).collect();
            each?.concat()
        }
        Need::All(needs) => {
            let mut all: Vec<Vec<Point>> = vec![Vec::new()];
            for need in needs {
                let more = ways(need)?;
                if all.len() * more.len() > WAYS_MOST {
                    return None;
                }
                let mut joined = Vec::new();
                for way in &all {
                    joined.extend(more.iter().map(|next| [way.as_slice(), next].concat()));
                }
                all = joined;
            }
            all
        }
    };
    (all.len() <= WAYS_MOST).then_some(all)
}
