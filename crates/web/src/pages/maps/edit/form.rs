//! The editor's parts: what is wrong, the list with its fields, and the text.

use super::{Draft, Looked, fields};
use crate::map_drawing::{Sight, narrow_picture};
use crate::pages::count;
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
            p class="no gap" role="status" { (count(many, "thing to mend", "things to mend")) " before a plan can be made by it" }
        } @else {
            p class="yes gap" role="status" { "A good map, " (count(looked.map.items.len(), "item", "items")) }
        }
        @for (fault, place) in errors.chain(warnings).take(LISTED) { (one_fault(fault, place.as_ref())) }
        @if looked.faults.len() > LISTED { p class="soft gap" { "and " (looked.faults.len() - LISTED) " more further down" } }
    }
}

/// One fault; pressing it opens the item that it is about.
fn one_fault(fault: &Fault, place: Option<&(String, String)>) -> Markup {
    let words = html! {
        span class="what" {
            span class="strong line" {
                @if fault.weight == Weight::Warning { "Can this be meant? " }
                (fault.what)
            }
            span class="soft line" { (fault.mend) ". Line " (fault.line) ", column " (fault.column) }
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
    format!("{}; {}", fault.what, fault.mend)
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
                (looked.newest_by) " kept version " (kept.version) " of this map while you worked on "
                @if looked.draft.base == 0 { "a new one" } @else { "version " (looked.draft.base) } "."
            }
            details id="newer" {
                summary class="row" { "Show version " (kept.version) " beside yours" }
                textarea readonly aria-label=(format!("Version {}", kept.version)) rows="20" { (kept.text) }
            }
            div class="presses even" {
                button class="press" form="edit" name="act" value=(act(&["both", &kept.version.to_string()])) { "Bring both together" }
                button class="press" form="edit" name="act" value=(act(&["onto", &kept.version.to_string()])) { "Mine in its place" }
                a class="press" href=(format!("/maps/{}/edit", looked.draft.id)) { "Go on from that one" }
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
            button hidden name="act" value=(act(&["enter"])) tabindex="-1" { "Set it" }
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
            h2 { "The way in to it" }
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
        h2 class="spread" { span { "In this map" } span class="soft" { (count(listed.len(), "item", "items")) } }
        @if listed.is_empty() { p class="gap" { "Nothing yet. Begin with what you take off first." } }
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
                    "Make the other side"
                    small { (count(lacking.len(), "thing", "things")) ", such as " (lacking[0].1) }
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
            Ground::Seen { times: 1, .. } => format!("{first}, seen once"),
            Ground::Seen { times, people } => format!("{first}, seen {times} times by {people}"),
            Ground::Stated | Ground::BothWays { .. } => format!("{first}, as answered"),
        };
        let firsts: Vec<String> = seen.iter().map(one).collect();
        return (!firsts.is_empty()).then(|| format!("after {}", firsts.join("; after ")));
    }
    let needs: Vec<String> = item
        .moves
        .iter()
        .filter_map(|made| need_words(map, &made.need))
        .collect();
    let guess = match item.guessed.is_empty() {
        true => "",
        false => ", partly a guess",
    };
    (!needs.is_empty()).then(|| format!("after {}{guess}", needs.join(", then ")))
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
        h2 { "Add what comes off next" }
        div class="fields" {
            (new("name", "What is it called?", "such as tray screws"))
            (fields::select("new-is", "What is it?", kinds(), is))
            (new("count", "How many?", "screws, nuts and clips only"))
            (fields::need_select("new-first", "What has to be off first?", map, "", &first))
            (fields::need_select("new-or", "Or, if that is enough", map, "", last("or")))
            (new("place", "Where do you stand?", &places().join(", ")))
            (new("tools", "Which tool?", "such as 10 mm socket"))
            (new("minutes.out", "Minutes off", "for all of them"))
            (new("minutes.back", "Minutes back", ""))
        }
        div class="presses" { button class="press" name="act" value=(act(&["add"])) { "Add it" } }
    }
}

/// The pairs that were seen both ways: one tap each.
fn undecided(map: &Map) -> Markup {
    let pairs = map.undecided();
    let counts = |pair: &Pair| match pair.ground {
        Ground::BothWays { there, back } => format!("seen {there} times first, {back} times after"),
        Ground::Stated | Ground::Seen { .. } => String::new(),
    };
    html! {
        @if !pairs.is_empty() {
            h2 { "Which comes off first?" }
            @for pair in &pairs {
                @let (a, b) = (pair.first.as_str(), pair.second.as_str());
                p class="gap" { span class="strong" { (a) } " and " span class="strong" { (b) } span class="soft line" { (a) " " (counts(pair)) } }
                div class="presses" {
                    button class="press" name="act" value=(act(&["settle", a, b, "first"])) { (a) " first" }
                    button class="press" name="act" value=(act(&["settle", b, a, "first"])) { (b) " first" }
                    button class="press" name="act" value=(act(&["settle", a, b, "either"])) { "Either way" }
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
            summary class="row" { "The map itself" }
            div class="fields" {
                (kept("vehicle", "Vehicle", "", &map.vehicle))
                (kept("start", "Where do you begin?", &places().join(", "), map.start.as_deref().unwrap_or_default()))
                (kept("place-change", "Minutes to change place", "", &minutes(map.place_change_tenths)))
                (kept("tool-change", "Minutes to change tool", "", &minutes(map.tool_change_tenths)))
                (kept("variants", "What only some of them have", "with commas between, such as air conditioning", &variants.join(", ")))
            }
            div class="presses" { button class="press" name="act" value=(act(&["head"])) { "Set the map" } }
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
                summary class="row" { "The map as text" }
                label class="field" {
                    span { "Text" }
                    span class="soft" { "Checked while you write. How it is written stands in docs/maps.md." }
                    textarea name="text" class="code" rows="24" spellcheck="false" autocapitalize="off" autocomplete="off" data-text { (draft.text) }
                }
                label class="field" {
                    span { "Or read it from a file" }
                    input type="file" accept=".toml,text/plain" data-read-into="text";
                }
                @if looked.newest.is_some() { a class="row" href=(format!("/maps/{}/file", draft.id)) { span class="what strong" { "Save the kept version as a file" } } }
            }
            div class="presses low" {
                (button(Look::Confirm, "Keep it", &format!("as version {}", draft.next()), &[fact], Some(&format!("/maps/{}", draft.id))))
            }
        }
    }
}
