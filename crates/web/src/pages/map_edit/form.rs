//! The editor's parts: what is wrong, the list with its fields, and the text.

use super::{Draft, Looked};
use crate::map_drawing::{Sight, picture};
use crate::pages::count;
use crate::tap::{Look, button};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::map::{
    Ground, Map, MapItem, Pair, Trouble as Fault, Weight, kinds, need_word, places, quoted,
};
use shop::planning::{need_words, written};
use shop::repair::{ItemId, Kind};

/// The text a new map begins with.
pub fn beginning(vehicle: &str) -> String {
    format!(
        "vehicle = {}\nplace-change = 1\ntool-change = 0.2\n",
        quoted(vehicle.trim())
    )
}

/// What is wrong with the draft, and what somebody else has kept meanwhile.
pub fn faults(looked: &Looked<'_>) -> Markup {
    let (errors, warnings): (Vec<&Fault>, Vec<&Fault>) = looked
        .faults
        .iter()
        .partition(|fault| fault.weight == Weight::Error);
    let one = |fault: &Fault| {
        html! {
            div class="row" {
                span class="what" {
                    span class="strong line" { "Line " (fault.line) ", column " (fault.column) ": " (fault.what) }
                    span class="soft line" { (fault.mend) }
                }
            }
        }
    };
    html! {
        (newer(looked))
        @if !errors.is_empty() {
            p class="no gap" role="status" { (count(errors.len(), "thing to mend", "things to mend")) " before a plan can be made by it" }
            @for fault in &errors { (one(fault)) }
        } @else {
            p class="yes gap" role="status" {
                "A good map"
                @if let Ok(map) = &looked.map { ", " (count(map.items.len(), "item", "items")) }
            }
        }
        @for fault in &warnings { (one(fault)) }
    }
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
                button class="press" form="edit" name="act" value=(act(&["onto", &kept.version.to_string()])) { "Mine comes after it" }
                a class="press" href=(format!("/maps/{}/edit", looked.draft.id)) { "Go on from that one" }
            }
        }
    }
}

fn act(parts: &[&str]) -> String {
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
    let none = Map::default();
    let map = looked.map.as_ref().unwrap_or(&none);
    let open = draft
        .item
        .as_deref()
        .filter(|item| listed.iter().any(|name| name == item));
    html! {
        form id="edit" class="narrow" method="post" action=(format!("/maps/{}/edit", draft.id)) {
            input type="hidden" name="base" value=(draft.base);
            input type="hidden" name="item" value=(open.unwrap_or_default());
            textarea name="text" hidden data-copy aria-hidden="true" tabindex="-1" { (draft.text) }
            @match open {
                Some(item) => (fields_of(item, draft, looked)),
                None => {
                    (add(draft, map, &listed))
                    (undecided(map))
                }
            }
            h2 class="spread" { span { "In this map" } span class="soft" { (count(listed.len(), "item", "items")) } }
            @if listed.is_empty() { p class="gap" { "Nothing yet. Begin with what you take off first." } }
            @for name in &listed {
                button class="row" name="act" value=(act(&["open", name])) aria-current=[(open == Some(name)).then_some("true")] {
                    span class="what" {
                        span class="strong line" { (name) }
                        @if let Some(line) = after(map, name) { span class="soft line" { (line) } }
                    }
                }
            }
            @if open.is_none() { (head(map)) }
        }
        @if let (Some(item), Ok(map)) = (open, &looked.map) {
            h2 { "The way in to it" }
            @let sight = Sight { wanted: [ItemId::new(item)].into(), ..Sight::default() };
            (picture(map, &sight, |_| String::new()))
        }
    }
}

/// What an item needs, in words, and whether that was only seen.
fn after(map: &Map, name: &str) -> Option<String> {
    let id = ItemId::new(name);
    let item = map.items.get(&id)?;
    if item.as_seen {
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
    (!needs.is_empty()).then(|| format!("after {}", needs.join(", then ")))
}

fn input(name: &str, label: &str, hint: &str, value: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(value) autocomplete="off";
        }
    }
}

/// A field with what stood in it, so that only what differs is written.
fn kept_input(name: &str, label: &str, hint: &str, value: &str) -> Markup {
    html! {
        input type="hidden" name=(format!("was-{name}")) value=(value);
        (input(name, label, hint, value))
    }
}

fn select(name: &str, label: &str, choices: &[(String, String)], chosen: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            select name=(name) {
                @for (value, words) in choices { option value=(value) selected[value == chosen] { (words) } }
            }
        }
    }
}

/// The states that items come to, as a need says them.
fn needs_to_offer(map: &Map, but: &str) -> Vec<(String, String)> {
    let mut out = vec![(String::new(), "nothing".to_owned())];
    let items = map
        .items
        .iter()
        .filter(|(id, item)| item.kind != Kind::Work && id.as_str() != but);
    out.extend(items.map(|(id, item)| {
        let need = format!("{id} {}", need_word(item.kind));
        (need.clone(), need)
    }));
    out
}

fn kind_choices() -> Vec<(String, String)> {
    kinds()
        .into_iter()
        .map(|kind| (kind.to_owned(), kind.to_owned()))
        .collect()
}

fn add(draft: &Draft, map: &Map, listed: &[String]) -> Markup {
    let last = |name: &str| draft.last.get(name).map(String::as_str).unwrap_or_default();
    let needs = needs_to_offer(map, "");
    // The next thing mostly comes off after the one before.
    let newest = listed.last().map(|name| {
        needs
            .iter()
            .map(|(need, _)| need)
            .find(|need| need.starts_with(&format!("{name} ")))
    });
    let first = newest.flatten().cloned().unwrap_or_default();
    let is = if last("new-is").is_empty() {
        "part"
    } else {
        last("new-is")
    };
    html! {
        h2 { "Add what comes off next" }
        div class="fields" {
            (input("new-name", "What is it called?", "such as tray screws", ""))
            (select("new-is", "What is it?", &kind_choices(), is))
            (input("new-count", "How many?", "screws, nuts and clips only", ""))
            (select("new-first", "What has to be off first?", &needs, &first))
            (select("new-or", "Or, if that is enough", &needs, ""))
            (input("new-place", "Where do you stand?", &places().join(", "), last("new-place")))
            (input("new-tools", "Which tool?", "such as 10 mm socket", last("new-tools")))
            (input("new-out", "Minutes off", "for all of them", ""))
            (input("new-back", "Minutes back", "", ""))
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
    let tenths = |tenths: u32| minutes(tenths);
    html! {
        details id="head" {
            summary class="row" { "The map itself" }
            div class="fields" {
                (kept_input("vehicle", "Vehicle", "", &map.vehicle))
                (kept_input("start", "Where do you begin?", &places().join(", "), map.start.as_deref().unwrap_or_default()))
                (kept_input("place-change", "Minutes to change place", "", &tenths(map.place_change_tenths)))
                (kept_input("tool-change", "Minutes to change tool", "", &tenths(map.tool_change_tenths)))
            }
            div class="presses" { button class="press" name="act" value=(act(&["head"])) { "Set it" } }
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

/// The fields of one item.
fn fields_of(name: &str, draft: &Draft, looked: &Looked<'_>) -> Markup {
    let none = Map::default();
    let map = looked.map.as_ref().unwrap_or(&none);
    let item = map.items.get(&ItemId::new(name));
    html! {
        h2 { (name) }
        @match item {
            None => p class="gap" { "The text has to be mended before its fields can be shown." },
            Some(item) => (known_fields(name, item, map)),
        }
        div class="presses even" {
            button class="press" name="act" value=(act(&["close"])) { "Add another" }
            button class="press" name="act" value=(act(&["remove"])) { "Take it out" }
        }
        input type="hidden" name="map" value=(draft.id);
    }
}

fn known_fields(name: &str, item: &MapItem, map: &Map) -> Markup {
    let needs = needs_to_offer(map, name);
    let first = item.moves.first();
    let two_moves = item.moves.len() > 1;
    html! {
        p class="strong gap" { "Needs first" }
        @if item.as_seen { p { (after(map, name).unwrap_or_else(|| "nothing that was seen".to_owned())) ". Stating a need takes the place of what was seen." } }
        @else {
            @for (nth, need) in stated(item, map).iter().enumerate() {
                div class="row" {
                    span class="what" { (need) }
                    button class="press" name="act" value=(act(&["unneed", &nth.to_string()])) aria-label=(format!("Not any more: {need}")) { "Not" }
                }
            }
        }
        div class="fields" {
            (select("first", "It also needs", &needs, ""))
            (select("or", "or, if that is enough", &needs, ""))
        }
        div class="presses" { button class="press" name="act" value=(act(&["need"])) { "Needs it first" } }
        div class="fields" {
            (kept_input("name", "Name", "", name))
            input type="hidden" name="was-is" value=(kind_word(item.kind));
            (select("is", "What is it?", &kind_choices(), kind_word(item.kind)))
            @if item.kind.is_counted() { (bolts(item, map)) }
            @if item.kind == Kind::Fluid { (kept_input("holds", "How much it holds", "such as 9.2 l", item.holds.as_ref().map(written).unwrap_or_default())) }
            @if item.kind == Kind::Work { (kept_input("due-after", "Due after", "such as 80 km; nothing if at once", item.due_after.as_deref().unwrap_or_default())) }
            @if let Some(step) = first.filter(|_| !two_moves) {
                (kept_input("place", "Where do you stand?", &places().join(", "), step.place.as_deref().unwrap_or_default()))
                (kept_input("tools", "Tools", "with commas between", &step.tools.iter().cloned().collect::<Vec<_>>().join(", ")))
                (kept_input("out", "Minutes off", "for all of them", &minutes(step.minutes.out_tenths)))
                (kept_input("back", "Minutes back", "", &minutes(step.minutes.back_tenths)))
                @if item.kind.is_counted() {
                    (kept_input("each-out", "and for each one, off", "", &minutes(step.minutes.each_out_tenths)))
                    (kept_input("each-back", "and for each one, back", "", &minutes(step.minutes.each_back_tenths)))
                }
                (kept_input("owes", "Work it leaves to be done", "with commas between, such as set the clock", &step.owes.iter().map(ItemId::as_str).collect::<Vec<_>>().join(", ")))
            } @else { p class="soft gap" { "It is cracked first and out later: change its places, tools and minutes in the text." } }
            (kept_input("system", "System", "such as brakes, cooling, body", item.system.as_deref().unwrap_or_default()))
            (kept_input("note", "Note", "", item.note.as_deref().unwrap_or_default()))
        }
        input type="hidden" name="was-spent" value=(if item.spent { "yes" } else { "" });
        label class="row" {
            input type="checkbox" name="spent" value="yes" checked[item.spent];
            span class="what" { "Not used again: a new one goes on" }
        }
        div class="presses" { button class="press" name="act" value=(act(&["set"])) { "Set it" } }
    }
}

fn bolts(item: &MapItem, map: &Map) -> Markup {
    let same = item
        .lengths
        .values()
        .next()
        .filter(|length| item.lengths.values().all(|other| other == *length));
    let torque: Vec<&str> = item.torque.iter().map(written).collect();
    let source = item
        .torque_from
        .as_ref()
        .and_then(|name| map.sources.get(name))
        .or(map.sources.values().last());
    let (title, date) = source.map_or(("", ""), |source| {
        (source.title.as_str(), source.date.as_str())
    });
    html! {
        (kept_input("count", "How many?", "", &item.count.to_string()))
        (kept_input("size", "Size", "such as M6x16 8.8", item.size.as_deref().unwrap_or_default()))
        @if item.lengths.is_empty() || same.is_some() { (kept_input("length", "Length", "such as 16 mm", same.map(written).unwrap_or_default())) }
        @else { p class="soft" { "Of several lengths: change them in the text." } }
        (kept_input("torque", "Torque, pass by pass", "such as 30 Nm, 60 Nm, 90 deg", &torque.join(", ")))
        (kept_input("pattern", "In which sequence", "such as in a star", item.pattern.as_deref().unwrap_or_default()))
        (kept_input("source", "Who says the torque", "such as the maker's manual", title))
        (kept_input("date", "Of which date", "such as 2021-09-15", date))
    }
}

fn kind_word(kind: Kind) -> &'static str {
    shop::map::kind_word(kind)
}

/// The needs as they stand in the text, one a row.
fn stated(item: &MapItem, map: &Map) -> Vec<String> {
    let Some(step) = item.moves.first() else {
        return Vec::new();
    };
    match &step.need {
        shop::repair::Need::All(needs) => needs
            .iter()
            .filter_map(|need| need_words(map, need))
            .collect(),
        need => need_words(map, need).into_iter().collect(),
    }
}

/// The map as text, with what keeps it.
pub fn as_text(looked: &Looked<'_>, kept: bool) -> Markup {
    let draft = looked.draft;
    let fact = json!({
        "stream": format!("map:{}", draft.id),
        "map_fact": { "drafted": {
            "version": draft.next(),
            "text": { "$document": "text", "media": "application/toml" },
        } },
    });
    html! {
        form data-draft=(draft.id) data-base=(draft.base) data-changed=[(!kept).then_some("yes")] {
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
