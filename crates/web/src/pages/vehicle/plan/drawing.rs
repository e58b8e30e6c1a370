//! The plan of an order as a drawing: the way in, what is off, and what comes next.

use super::query::Query;
use super::{aim_words, found_by, picked};
use crate::State;
use crate::map_drawing::{Sight, picture, picture_beside};
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, link};
use axum::extract::{self, Path, RawQuery};
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::LayerStand;
use maud::{Markup, html};
use shop::Trouble;
use shop::planning::{OrderMap, Shown as Plan, in_order};
use shop::repair::ItemId;
use shop::view::OrderView;
use std::collections::BTreeSet;

pub async fn way(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let words = query.unwrap_or_default();
        let query = Query::read(&words);
        let (map, version) = picked(visit, &order, &query)?
            .ok_or_else(|| Trouble::not_found(say::no_map_is_picked()))?;
        let on = found_by(visit, &order, &map, version, &query)?;
        let plan = on.plan(visit.snap).ok();
        let sight = sight(&on, plan.as_ref());
        let known = |item: &ItemId| page_of(&order, &on, item);
        Ok(Shown::of(&order, say::the_way_in(), html! {
            h1 { (aim_words(&on.asked)) }
            p class="soft gap" { (say::how_to_read_the_drawing()) }
            (picture(&on.map, &sight, known))
            div class="presses low" {
                (link(Look::Confirm, say::as_a_list(), "", &format!("/o/{}/plan?{words}", order.number)))
            }
        }))
    })
    .await
}

/// The drawing as it stands beside the stages.
pub fn beside(order: &OrderView, on: &OrderMap, plan: &Plan) -> Markup {
    picture_beside(&on.map, &sight(on, Some(plan)), |item| {
        page_of(order, on, item)
    })
}

/// The page of a thing: on the order if that knows it, else on its map.
fn page_of(order: &OrderView, on: &OrderMap, item: &ItemId) -> String {
    let id = on.id(item);
    if order.items.iter().any(|one| one.item == id.as_str()) {
        format!("/o/{}/item/{}", order.number, in_order(id))
    } else {
        format!("/maps/{}#{}", on.kept.id, in_order(item))
    }
}

/// Where things stand, what the plan does next, and what it leaves alone.
fn sight(on: &OrderMap, plan: Option<&Plan>) -> Sight {
    let mut sight = Sight {
        wanted: on.asked.targets.clone(),
        folded: true,
        ..Sight::default()
    };
    for (item, known) in &on.map.items {
        let away = on
            .stands(item)
            .iter()
            .filter(|(_, state)| *state != known.kind.home())
            .count();
        match away {
            0 => {}
            away if away < usize::from(known.count) => {
                sight.away.insert(item.clone(), LayerStand::Partly);
            }
            _ => {
                sight.away.insert(item.clone(), LayerStand::Away);
            }
        }
    }
    if let Some(plan) = plan {
        let first = plan.off.first().or(plan.back.first());
        let rows = first.into_iter().flat_map(|stage| &stage.rows);
        sight.next = rows.map(|row| row.item.clone()).collect();
        for (nth, stage) in plan.off.iter().enumerate() {
            for row in &stage.rows {
                sight.stages.entry(row.item.clone()).or_insert(nth + 1);
            }
        }
        let moved: BTreeSet<&ItemId> = plan
            .off
            .iter()
            .flat_map(|stage| &stage.rows)
            .map(|row| &row.item)
            .collect();
        let left = on
            .map
            .items
            .keys()
            .filter(|item| !moved.contains(item) && !sight.away.contains_key(*item));
        sight.left_alone = left.cloned().collect();
    }
    sight
}
