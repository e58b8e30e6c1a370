//! A map as it is drawn: what is wanted, all that it needs first, and where that stands.

use crate::phrases::frame as say;
use drawing::{LayerCall, LayerMark, LayerNeed, LayerStand, LayerThing, Layers, layers, svg};
use maud::{Markup, PreEscaped, html};
use shop::map::called as place_name;
use shop::map::{Map, MapItem};
use shop::planning::amount;
use shop::repair::{ItemId, Kind};
use shop::say::capital;
use std::collections::{BTreeMap, BTreeSet};

/// What of a map is drawn, and how it stands.
#[derive(Debug, Default)]
pub struct Sight {
    /// What it all leads to; nothing for the whole map.
    pub wanted: BTreeSet<ItemId>,
    /// What is not at home, and whether only partly out.
    pub away: BTreeMap<ItemId, LayerStand>,
    /// What comes next.
    pub next: BTreeSet<ItemId>,
    /// What a plan leaves where it is, though it would be one of the ways.
    pub left_alone: BTreeSet<ItemId>,
    /// In which stage of a plan things come off, counted from 1.
    pub stages: BTreeMap<ItemId, usize>,
    /// Whether bolts, clips and what is put in stand with the one part that they are of.
    pub folded: bool,
}

/// The width of a telephone's and of a desk's page, within their edges.
const PHONE: f64 = 358.0;
const DESK: f64 = 1216.0;
/// The width that a plan leaves beside its stages, at the desk and on a wide screen.
const BESIDE: f64 = 824.0;
const WIDE_BESIDE: f64 = 1240.0;

/// The way in to what is wanted, or the whole map, drawn for a telephone and for a desk;
/// `link` says where pressing a thing leads.
pub fn picture(map: &Map, sight: &Sight, link: impl Fn(&ItemId) -> String) -> Markup {
    let layers_of = seen(map, sight, link);
    html! {
        div class="on-phone gap" { (PreEscaped(svg(&layers(&layers_of, PHONE)))) }
        div class="on-desk gap" { (PreEscaped(svg(&layers(&layers_of, DESK)))) }
    }
}

/// The same beside the stages of a plan, where there is room for both.
pub fn picture_beside(map: &Map, sight: &Sight, link: impl Fn(&ItemId) -> String) -> Markup {
    let layers_of = seen(map, sight, link);
    html! {
        div class="not-wide" { (PreEscaped(svg(&layers(&layers_of, BESIDE)))) }
        div class="wide" { (PreEscaped(svg(&layers(&layers_of, WIDE_BESIDE)))) }
    }
}

/// The same for a column no wider than a telephone's page.
pub fn narrow_picture(map: &Map, sight: &Sight, link: impl Fn(&ItemId) -> String) -> Markup {
    html! { div class="gap" { (PreEscaped(svg(&layers(&seen(map, sight, link), PHONE)))) } }
}

fn seen(map: &Map, sight: &Sight, link: impl Fn(&ItemId) -> String) -> Layers {
    let shown: Vec<ItemId> = match sight.wanted.is_empty() {
        true => map.items.keys().cloned().collect(),
        false => map.way_in(&sight.wanted).into_iter().collect(),
    };
    // Work is done on the way back, and stands in the list; nothing has to come off for it.
    let drawn = |item: &ItemId| map.items.get(item).filter(|known| known.kind != Kind::Work);
    let shown: Vec<(ItemId, &MapItem)> = shown
        .into_iter()
        .filter_map(|item| Some((item.clone(), drawn(&item)?)))
        .collect();
    let with = match sight.folded {
        true => folded(map, sight, &shown),
        false => BTreeMap::new(),
    };
    let stands_with = |item: &ItemId| with.get(item).unwrap_or(item).clone();
    let places = places(&shown);
    let drawn: Vec<&(ItemId, &MapItem)> = shown
        .iter()
        .filter(|(item, _)| !with.contains_key(item))
        .collect();
    let nth: BTreeMap<&ItemId, usize> = drawn
        .iter()
        .enumerate()
        .map(|(at, (item, _))| (item, at))
        .collect();
    let things = drawn
        .iter()
        .map(|(item, known)| {
            let own: Vec<&(ItemId, &MapItem)> = shown
                .iter()
                .filter(|(other, _)| with.get(other) == Some(item))
                .collect();
            let firsts = own.iter().map(|(other, _)| other).chain([item]);
            let mut needs: Vec<LayerNeed> = Vec::new();
            for (first, either) in firsts.flat_map(|item| map.firsts(item)) {
                let Some(&thing) = nth.get(&stands_with(&first)) else {
                    continue;
                };
                if nth.get(item) != Some(&thing) {
                    needs.push(LayerNeed { thing, either });
                }
            }
            LayerThing {
                label: item.as_str().to_owned(),
                detail: detail(item, known, &own, places.len() > 1),
                mark: mark(known.kind),
                stands: sight.away.get(item).copied().unwrap_or(LayerStand::Home),
                call: call(sight, item),
                place: place_of(known).and_then(|at| places.iter().position(|one| *one == at)),
                stage: sight.stages.get(item).copied(),
                link: Some(link(item)),
                needs,
            }
        })
        .collect();
    let title = match sight.wanted.iter().map(ItemId::as_str).collect::<Vec<_>>() {
        names if names.is_empty() => say::in_layers(&map.vehicle),
        names => say::way_in_to(names.join(say::and_between())),
    };
    let names = places.iter().map(|at| capital(place_name(at)));
    Layers {
        title,
        places: names.collect(),
        things,
    }
}

/// Where a thing is worked on when it comes off.
fn place_of(known: &MapItem) -> Option<&str> {
    known.moves.iter().find_map(|step| step.place.as_deref())
}

/// The places of what is drawn, from above to below; none where a thing has none.
fn places<'a>(shown: &[(ItemId, &'a MapItem)]) -> Vec<&'a str> {
    let mut places: Vec<&str> = Vec::new();
    for (_, known) in shown {
        match place_of(known) {
            Some(at) if !places.contains(&at) => places.push(at),
            Some(_) => {}
            None if known.kind == Kind::PutIn => {}
            None => return Vec::new(),
        }
    }
    let depth = |at: &str| match at {
        "above" => 0,
        "below" => 2,
        _ => 1,
    };
    places.sort_by_key(|at| (depth(at), *at));
    places
}

/// What stands with the one part it is of: bolts and clips, and what is put in for it. A step of
/// its own, in another stage or another state, stands alone.
fn folded(map: &Map, sight: &Sight, shown: &[(ItemId, &MapItem)]) -> BTreeMap<ItemId, ItemId> {
    let small = |known: &MapItem| matches!(known.kind, Kind::Fasteners | Kind::Clips | Kind::PutIn);
    let mut with = BTreeMap::new();
    for (item, known) in shown.iter().filter(|(_, known)| small(known)) {
        let of: Vec<&(ItemId, &MapItem)> = shown
            .iter()
            .filter(|(other, _)| map.firsts(other).iter().any(|(first, _)| first == item))
            .collect();
        let [(part, its)] = of.as_slice() else {
            continue;
        };
        let alike = |one: &ItemId, other: &ItemId| {
            sight.stages.get(one) == sight.stages.get(other)
                && sight.away.get(one) == sight.away.get(other)
                && sight.next.contains(one) == sight.next.contains(other)
                && sight.left_alone.contains(one) == sight.left_alone.contains(other)
        };
        let either = map
            .firsts(part)
            .iter()
            .any(|(first, either)| first == item && *either);
        let elsewhere =
            matches!((place_of(known), place_of(its)), (Some(at), Some(of)) if at != of);
        if !small(its) && !either && !elsewhere && !sight.wanted.contains(item) && alike(item, part)
        {
            with.insert(item.clone(), part.clone());
        }
    }
    with
}

fn call(sight: &Sight, item: &ItemId) -> LayerCall {
    if sight.next.contains(item) {
        LayerCall::Next
    } else if sight.wanted.contains(item) {
        LayerCall::Wanted
    } else if sight.left_alone.contains(item) {
        LayerCall::Beside
    } else {
        LayerCall::OnTheWay
    }
}

fn mark(kind: Kind) -> LayerMark {
    match kind {
        Kind::Fasteners | Kind::Clips => LayerMark::Pieces,
        Kind::Fluid => LayerMark::Fluid,
        Kind::PutIn => LayerMark::PutIn,
        Kind::Part
        | Kind::Cover
        | Kind::Hose
        | Kind::Seal
        | Kind::Belt
        | Kind::Connector
        | Kind::Work => LayerMark::Part,
    }
}

/// How many or how much, what stands with it, and where, unless that is said above it.
fn detail(
    item: &ItemId,
    known: &MapItem,
    own: &[&(ItemId, &MapItem)],
    place_is_said: bool,
) -> String {
    let many = (known.count > 1).then(|| known.count.to_string());
    let much = known.holds.as_ref().map(amount);
    let with = own.iter().map(|(other, known)| match known.kind {
        Kind::PutIn => say::goes_in(without(other.as_str(), item.as_str())),
        _ => format!("{} {}", known.count, without(other.as_str(), item.as_str())),
    });
    let with: Vec<String> = with.collect();
    let with = (!with.is_empty()).then(|| with.join(", "));
    let place = place_of(known).filter(|_| !place_is_said);
    let place = place.map(|at| place_name(at).to_owned());
    let parts = [many.or(much), with, place];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// A name without that of the part it is of: the tray's "tray screws" are its screws, and the
/// "pinch clamp at the lower hose" is its clamp.
fn without<'n>(name: &'n str, part: &str) -> &'n str {
    const JOINS: [&str; 5] = [" at the", " of the", " in the", " an der", " am"];
    let before = name.strip_suffix(part).map(str::trim_end);
    let before = before.map(|rest| {
        JOINS
            .iter()
            .find_map(|join| rest.strip_suffix(join))
            .unwrap_or(rest)
    });
    let rest = name.strip_prefix(part).or(before).map(str::trim);
    rest.filter(|rest| !rest.is_empty()).unwrap_or(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "vehicle = \"A\"\n[items.nuts]\nis = \"fasteners\"\ncount = 5\nplace = \"wheel well\"\n\
        [items.wheel]\nis = \"part\"\nneeds = [\"nuts out\"]\n\
        [items.oil]\nis = \"fluid\"\nholds = \"6.4 l\"\n\
        [items.look]\nis = \"work\"\nneeds-back = [\"oil at level\"]\n";

    fn shown(sight: &Sight) -> String {
        let map = shop::map::read("a", TEXT).unwrap().map;
        layers(&seen(&map, sight, |item| format!("?for={item}")), 700.0).description
    }

    #[test]
    fn only_what_is_wanted_and_what_that_needs_is_drawn() {
        let wheel = ItemId::new("wheel");
        let mut sight = Sight {
            wanted: [wheel.clone()].into(),
            ..Sight::default()
        };
        assert_eq!(
            shown(&sight),
            "Row 1: nuts, 5 · wheel well. Row 2: wheel, wanted."
        );
        sight.away.insert(ItemId::new("nuts"), LayerStand::Away);
        sight.next.insert(wheel);
        assert_eq!(
            shown(&sight),
            "Row 1: nuts, 5 · wheel well, off. Row 2: wheel, next."
        );
    }

    #[test]
    fn bolts_stand_with_their_part_unless_they_are_a_step_of_their_own() {
        let wheel = ItemId::new("wheel");
        let mut sight = Sight {
            wanted: [wheel.clone()].into(),
            folded: true,
            ..Sight::default()
        };
        assert_eq!(shown(&sight), "Row 1: wheel, 5 nuts, wanted.");
        sight.stages = [(ItemId::new("nuts"), 1), (wheel, 2)].into();
        assert_eq!(
            shown(&sight),
            "Row 1: nuts, 5 · wheel well. Row 2: wheel, wanted."
        );
    }

    #[test]
    fn without_anything_wanted_the_whole_map_is_drawn_but_work() {
        let said = shown(&Sight::default());
        assert!(
            said.contains("oil, 6.4 L") && !said.contains("look"),
            "{said}"
        );
    }
}
