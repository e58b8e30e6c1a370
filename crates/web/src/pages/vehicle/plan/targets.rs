//! What a plan gets at: found by words, or picked from the list.

use super::query::address;
use super::rows::Here;
use crate::phrases::vehicle as say;
use crate::tap::{Look, link};
use maud::{Markup, html};
use shop::planning::{Asked, OrderMap};
use shop::repair::{AimIs, ItemId, Kind};
use shop::view::OrderView;

/// What to get at: found by words, or picked from the list.
pub fn targets(order: &OrderView, on: &OrderMap, here: &Here<'_>, find: &str) -> Markup {
    let asked_words: Vec<String> = find
        .to_lowercase()
        .split_whitespace()
        .map(str::to_owned)
        .collect();
    let stem = |word: &str| word.trim_end_matches('s').to_owned();
    let fits = |item: &ItemId| {
        let name = item.as_str().to_lowercase();
        asked_words
            .iter()
            .filter(|word| name.contains(&stem(word)))
            .count()
    };
    let mut items: Vec<(&ItemId, usize)> = on
        .map
        .items
        .iter()
        .filter(|(_, known)| !matches!(known.kind, Kind::Work | Kind::PutIn))
        .map(|(item, _)| (item, fits(item)))
        .filter(|(_, fit)| find.is_empty() || *fit > 0)
        .collect();
    items.sort_by_key(|(item, fit)| (std::cmp::Reverse(*fit), item.as_str().to_lowercase()));
    let chosen = on.asked.targets.len();
    let go = address(
        order.number,
        on.kept.id.as_str(),
        &on_asked_reach(&on.asked),
    );
    html! {
        h1 { (say::what_to_get_at()) }
        form method="get" action=(format!("/o/{}/plan", order.number)) {
            input type="hidden" name="map" value=(on.kept.id);
            @for item in &on.asked.targets { input type="hidden" name="for" value=(item); }
            (crate::tap::input("find", say::find_it_by_a_word(), say::such_as_gasket(), find))
            div class="presses" { button class="press" type="submit" { (say::find()) } }
        }
        @if on.anything_off() {
            a class="row" href=(here.with(|asked| back_to(asked, AimIs::Roll))) {
                span class="what strong" { (say::button_it_up_to_roll()) }
            }
            a class="row" href=(here.with(|asked| back_to(asked, AimIs::Home))) {
                span class="what strong" { (say::everything_home_again()) }
            }
        }
        @if items.is_empty() { p class="gap" { (say::nothing_is_called_that()) } }
        @for (item, _) in &items {
            @let on_it = on.asked.targets.contains(*item);
            @let to = here.with(|asked| { asked.aim = AimIs::Reach; if !asked.targets.remove(*item) { asked.targets.insert((*item).clone()); } });
            a class="row" href=(if chosen > 0 { format!("{to}&pick=yes") } else { to }) {
                span class={ "mark " @if on_it { "home" } } {}
                span class="what" { (item) }
                span class="soft" { @if on_it { (say::wanted()) } }
            }
        }
        @if chosen > 0 { div class="presses low" { (link(Look::Confirm, say::show_the_plan(), &say::things_wanted(chosen), &go)) } }
    }
}

/// Turns to a way back: what was ruled out on the way out does not bind it.
fn back_to(asked: &mut Asked, aim: AimIs) {
    *asked = asked.straight();
    asked.aim = aim;
    asked.targets.clear();
}

fn on_asked_reach(asked: &Asked) -> Asked {
    Asked {
        aim: AimIs::Reach,
        ..asked.clone()
    }
}
