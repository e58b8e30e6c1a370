//! A map as it is drawn: what is wanted, all that it needs first, and where that stands.

use crate::phrases::frame as say;
use drawing::{LayerCall, LayerMark, LayerNeed, LayerStand, LayerThing, Layers, layers, svg};
use maud::{Markup, PreEscaped, html};
use shop::map::{Map, MapItem};
use shop::repair::{ItemId, Kind};
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
}

/// The width of a telephone's and of a desk's page, within their edges.
const PHONE: f64 = 358.0;
const DESK: f64 = 1216.0;

/// The way in to what is wanted, or the whole map, drawn for a telephone and for a desk;
/// `link` says where pressing a thing leads.
pub fn picture(map: &Map, sight: &Sight, link: impl Fn(&ItemId) -> String) -> Markup {
    let layers_of = seen(map, sight, link);
    html! {
        div class="on-phone gap" { (PreEscaped(svg(&layers(&layers_of, PHONE)))) }
        div class="on-desk gap" { (PreEscaped(svg(&layers(&layers_of, DESK)))) }
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
    let place: BTreeMap<&ItemId, usize> = shown
        .iter()
        .enumerate()
        .map(|(at, (item, _))| (item, at))
        .collect();
    let things = shown
        .iter()
        .map(|(item, known)| LayerThing {
            label: item.as_str().to_owned(),
            detail: detail(known),
            mark: mark(known.kind),
            stands: sight.away.get(item).copied().unwrap_or(LayerStand::Home),
            call: call(sight, item),
            link: Some(link(item)),
            needs: map
                .firsts(item)
                .iter()
                .filter_map(|(first, either)| {
                    let thing = *place.get(first)?;
                    Some(LayerNeed {
                        thing,
                        either: *either,
                    })
                })
                .collect(),
        })
        .collect();
    let title = match sight.wanted.iter().map(ItemId::as_str).collect::<Vec<_>>() {
        names if names.is_empty() => say::in_layers(&map.vehicle),
        names => say::way_in_to(names.join(say::and_between())),
    };
    Layers { title, things }
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

/// How many or how much, and where.
fn detail(known: &MapItem) -> String {
    let many = (known.count > 1).then(|| known.count.to_string());
    let much = known.holds.as_ref().map(|holds| holds.written().to_owned());
    let place = known.moves.iter().find_map(|step| step.place.as_deref());
    let place = place.map(|place| shop::map::called(place).to_owned());
    let parts = [many.or(much), place];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
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
    fn without_anything_wanted_the_whole_map_is_drawn_but_work() {
        let said = shown(&Sight::default());
        assert!(
            said.contains("oil, 6.4 l") && !said.contains("look"),
            "{said}"
        );
    }
}
