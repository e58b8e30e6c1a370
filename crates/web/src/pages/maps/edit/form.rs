//! The editor's parts: what is wrong, the list with its fields, and the text.

use super::{Draft, Looked, fields};
use crate::map_drawing::{Sight, narrow_picture};
use crate::phrases::maps as say;
use crate::tap::{Look, button};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::map::{Ground, Map, Pair, Trouble as Fault, Weight, kinds, need_word, places, quoted};
use shop::planning::need_words;
use shop::repair::{ItemId, Kind};

/// The text a new map begins with.
pub fn beginning(vehicle: &str) -> String {
    format!(
        "vehicle = {}\nplace-change = 1\ntool-change = 0.2\n",
        quoted(vehicle.trim())
    )
}

/// So many faults are listed: whoever mends some sees the next.
const LISTED: usize = 20;

/// What is wrong with the draft, and what somebody else has kept meanwhile.
pub fn faults(looked: &Looked<'_>) -> Markup {
    let all = || looked.faults.iter().zip(&looked.places);
    let errors = all().filter(|(fault, _)| fault.weight == Weight::Error);
    let warnings = all().filter(|(fault, _)| fault.weight == Weight::Warning);
    let many = errors.clone().count();
    html! {
        (newer(looked))
        @if many > 0 {
            p class="no gap" role="status" { (say::to_mend_before_a_plan(many)) }
        } @else {
            p class="yes gap" role="status" { (say::a_good_map(looked.map.items.len())) }
        }
        @for (fault, place) in errors.chain(warnings).take(LISTED) { (one_fault(fault, place.as_ref())) }
        @if looked.faults.len() > LISTED { p class="soft gap" { (say::and_more_further_down(looked.faults.len() - LISTED)) } }
    }
}

/// One fault; pressing it opens the item that it is about.
fn one_fault(fault: &Fault, place: Option<&(String, String)>) -> Markup {
    let words = html! {
        span class="what" {
            span class="strong line" {
                @if fault.weight == Weight::Warning { (say::can_this_be_meant()) }
                (fault.what)
            }
            span class="soft line" { (say::mend_at(&fault.mend, fault.line, fault.column)) }
        }
    };
    html! {
        @match place {
            Some((item, key)) => button class="row" form="edit" name="act" value=(act(&["open", item])) data-item=(item) data-at=(key) data-says=(says(fault)) { (words) },
            None => div class="row" { (words) },
        }
    }
}

/// What is wrong and how to mend it, beside the field.
pub fn says(fault: &Fault) -> String {
    say::wrong_and_mend(&fault.what, &fault.mend)
}

/// Who kept another version while this one was worked on, with its text beside.
fn newer(looked: &Looked<'_>) -> Markup {
    let newer = looked
        .newest
        .as_ref()
        .filter(|kept| kept.version > looked.draft.base);
    html! {
        @if let Some(kept) = newer {
            p class="alarm" {
                @if looked.draft.base == 0 { (say::kept_while_new(&looked.newest_by, kept.version)) }
                @else { (say::kept_while_on_version(&looked.newest_by, kept.version, looked.draft.base)) }
            }
            details id="newer" {
                summary class="row" { (say::show_beside_yours(kept.version)) }
                textarea readonly aria-label=(say::version_heading(kept.version)) rows="20" { (kept.text) }
            }
            div class="presses even" {
                button class="press" form="edit" name="act" value=(act(&["both", &kept.version.to_string()])) { (say::bring_both_together()) }
                button class="press" form="edit" name="act" value=(act(&["onto", &kept.version.to_string()])) { (say::mine_in_its_place()) }
                a class="press" href=(format!("/maps/{}/edit", looked.draft.id)) { (say::go_on_from_that_one()) }
            }
        }
    }
}

pub fn act(parts: &[&str]) -> String {
    Value::from(
        parts
            .iter()
            .map(|part| Value::from(*part))
            .collect::<Vec<_>>(),
    )
    .to_string()
}

/// The editor that needs no knowledge of the text.
pub fn on_screen(looked: &Looked<'_>) -> Markup {
    let draft = looked.draft;
    let listed = shop::map::names(&draft.text);
    let map = &looked.map;
    let open = draft
        .item
        .as_deref()
        .filter(|item| listed.iter().any(|name| name == item));
    html! {
        form id="edit" class="narrow" method="post" action=(format!("/maps/{}/edit", draft.id)) data-checked {
            // What the enter key presses, whichever field it is pressed in.
            button hidden name="act" value=(act(&["enter"])) tabindex="-1" { (say::set_it()) }
            input type="hidden" name="base" value=(draft.base);
            input type="hidden" name="item" value=(open.unwrap_or_default());
            textarea name="text" hidden data-copy aria-hidden="true" tabindex="-1" { (draft.text) }
            @match open {
                Some(item) => (fields::of(item, looked)),
                None => {
                    (add(draft, map, &listed))
                    (undecided(map))
                }
            }
            @if open.is_none() { (head(map)) }
        }
        @if let Some(item) = open.filter(|_| looked.is_good()) {
            h2 { (say::way_in_to_it()) }
            @let sight = Sight { wanted: [ItemId::new(item)].into(), ..Sight::default() };
            @let to = |other: &ItemId| format!("/maps/{}?for={}", draft.id, form_urlencoded::byte_serialize(other.as_str().as_bytes()).collect::<String>());
            (narrow_picture(map, &sight, to))
        }
    }
}

/// The items, each leading to its fields.
pub fn listing(looked: &Looked<'_>) -> Markup {
    let listed = shop::map::names(&looked.draft.text);
    let open = looked.draft.item.as_ref();
    html! {
        h2 class="spread" { span { (say::in_this_map()) } span class="soft" { (say::items(listed.len())) } }
        @if listed.is_empty() { p class="gap" { (say::begin_with_first_off()) } }
        (other_side(&looked.draft.text))
        @for name in &listed {
            button class="row" form="edit" name="act" value=(act(&["open", name])) aria-current=[(open == Some(name)).then_some("true")] {
                span class="what" {
                    span class="strong line" { (name) }
                    @if let Some(line) = after(&looked.map, name) { span class="soft line" { (line) } }
                }
            }
        }
    }
}

/// Left and right are written once: the other side is made with one press.
fn other_side(text: &str) -> Markup {
    let lacking = shop::map::one_sided(text);
    html! {
        @if !lacking.is_empty() {
            div class="presses" {
                button class="press" form="edit" name="act" value=(act(&["mirror"])) {
                    (say::make_the_other_side())
                    small { (say::things_such_as(lacking.len(), &lacking[0].1)) }
                }
            }
        }
    }
}

/// What an item needs, in words, and whether that was only seen.
pub fn after(map: &Map, name: &str) -> Option<String> {
    let id = ItemId::new(name);
    let item = map.items.get(&id)?;
    if item.as_seen && item.taught.is_none() {
        let seen = map.seen_first(&id);
        let one = |(first, ground): (&ItemId, &Ground)| match ground {
            Ground::Seen { times: 1, .. } => say::seen_once(first),
            Ground::Seen { times, people } => say::seen_times_by(first, times, people),
            Ground::Stated | Ground::BothWays { .. } => say::as_answered(first),
        };
        let firsts: Vec<String> = seen.iter().map(one).collect();
        return (!firsts.is_empty()).then(|| say::after(firsts.join(say::and_after())));
    }
    let needs: Vec<String> = item
        .moves
        .iter()
        .filter_map(|made| need_words(map, &made.need))
        .collect();
    (!needs.is_empty()).then(|| {
        let needs = needs.join(say::then());
        match item.guessed.is_empty() {
            true => say::after(needs),
            false => say::after_partly_a_guess(needs),
        }
    })
}

fn add(draft: &Draft, map: &Map, listed: &[String]) -> Markup {
    let last = |name: &str| {
        draft
            .last
            .get(&format!("new-{name}"))
            .map_or("", String::as_str)
    };
    let new = |key: &str, label: &str, hint: &str| {
        fields::input(&format!("new-{key}"), label, hint, last(key), "")
    };
    // The next thing mostly comes off after the one before.
    let newest = listed.last().and_then(|name| {
        let kind = map.items.get(&ItemId::new(name))?.kind;
        (kind != Kind::Work).then(|| format!("{name} {}", need_word(kind)))
    });
    let first = draft
        .last
        .get("new-first")
        .cloned()
        .or(newest)
        .unwrap_or_default();
    let is = if last("is").is_empty() {
        "part"
    } else {
        last("is")
    };
    html! {
        h2 { (say::add_what_comes_next()) }
        div class="fields" {
            (new("name", say::what_is_it_called(), say::called_hint()))
            (fields::select("new-is", say::what_is_it(), kinds(), is))
            (new("count", say::how_many(), say::counted_only()))
            (fields::need_select("new-first", say::what_has_to_be_off_first(), map, "", &first))
            (fields::need_select("new-or", say::or_if_that_is_enough(), map, "", last("or")))
            (new("place", say::where_do_you_stand(), &places().join(", ")))
            (new("tools", say::which_tool(), say::tool_hint()))
            (new("minutes.out", say::minutes_off(), say::for_all_of_them()))
            (new("minutes.back", say::minutes_back(), ""))
        }
        div class="presses" { button class="press" name="act" value=(act(&["add"])) { (say::add_it()) } }
    }
}

/// The pairs that were seen both ways: one tap each.
fn undecided(map: &Map) -> Markup {
    let pairs = map.undecided();
    let counts = |pair: &Pair| match pair.ground {
        Ground::BothWays { there, back } => {
            say::seen_first_and_after(pair.first.as_str(), there, back)
        }
        Ground::Stated | Ground::Seen { .. } => pair.first.as_str().to_owned(),
    };
    html! {
        @if !pairs.is_empty() {
            h2 { (say::which_comes_off_first()) }
            @for pair in &pairs {
                @let (a, b) = (pair.first.as_str(), pair.second.as_str());
                p class="gap" { span class="strong" { (a) } (say::and_between()) span class="strong" { (b) } span class="soft line" { (counts(pair)) } }
                div class="presses" {
                    button class="press" name="act" value=(act(&["settle", a, b, "first"])) { (say::this_first(a)) }
                    button class="press" name="act" value=(act(&["settle", b, a, "first"])) { (say::this_first(b)) }
                    button class="press" name="act" value=(act(&["settle", a, b, "either"])) { (say::either_way()) }
                }
            }
        }
    }
}

fn head(map: &Map) -> Markup {
    let variants: Vec<&str> = map.variants.iter().map(String::as_str).collect();
    let kept = |name: &str, label: &str, hint: &str, value: &str| {
        fields::kept(name, label, hint, value, "")
    };
    html! {
        details id="head" {
            summary class="row" { (say::the_map_itself()) }
            div class="fields" {
                (kept("vehicle", say::vehicle(), "", &map.vehicle))
                (kept("start", say::where_do_you_begin(), &places().join(", "), map.start.as_deref().unwrap_or_default()))
                (kept("place-change", say::minutes_to_change_place(), "", &minutes(map.place_change_tenths)))
                (kept("tool-change", say::minutes_to_change_tool(), "", &minutes(map.tool_change_tenths)))
                (kept("variants", say::what_only_some_have(), say::only_some_hint(), &variants.join(", ")))
            }
            div class="presses" { button class="press" name="act" value=(act(&["head"])) { (say::set_the_map()) } }
        }
    }
}

/// Tenths of a minute as a person writes minutes; nothing for none.
fn minutes(tenths: u32) -> String {
    match (tenths / 10, tenths % 10) {
        (0, 0) => String::new(),
        (whole, 0) => whole.to_string(),
        (whole, tenth) => format!("{whole}.{tenth}"),
    }
}

/// The map as text, with what keeps it.
pub fn as_text(looked: &Looked<'_>, changed: bool) -> Markup {
    let draft = looked.draft;
    let fact = json!({
        "stream": format!("map:{}", draft.id),
        "map_fact": { "drafted": {
            "version": draft.next(),
            "text": { "$document": "text", "media": "application/toml" },
        } },
    });
    html! {
        form data-draft=(draft.id) data-base=(draft.base) data-changed=[changed.then_some("yes")] {
            details id="as-text" open[draft.text.lines().count() < 8] {
                summary class="row" { (say::map_as_text()) }
                label class="field" {
                    span { (say::text()) }
                    span class="soft" { (say::checked_while_you_write()) }
                    textarea name="text" class="code" rows="24" spellcheck="false" autocapitalize="off" autocomplete="off" data-text { (draft.text) }
                }
                label class="field" {
                    span { (say::or_read_from_a_file()) }
                    input type="file" accept=".toml,text/plain" data-read-into="text";
                }
                @if looked.newest.is_some() { a class="row" href=(format!("/maps/{}/file", draft.id)) { span class="what strong" { (say::save_kept_version()) } } }
            }
            div class="presses low" {
                (button(Look::Confirm, say::keep_it(), &say::as_version(draft.next()), &[fact], Some(&format!("/maps/{}", draft.id))))
            }
        }
    }
}
