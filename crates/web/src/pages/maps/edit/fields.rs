//! The fields of one item, each as the text has it, with what is wrong beside it.

use super::Looked;
use super::form::{act, after, says};
use maud::{Markup, html};
use shop::map::{Map, kind_word, kinds, need_word, other_words, places, systems};
use shop::repair::{ItemId, Kind};
use std::collections::BTreeMap;

/// One item with its fields.
struct Form<'a> {
    name: &'a str,
    kind: Kind,
    /// What stands in the text, by key.
    written: BTreeMap<String, String>,
    /// What is wrong, by key.
    wrong: BTreeMap<&'a str, String>,
    needs: &'a dyn Fn(&str) -> Vec<String>,
    map: &'a Map,
}

/// The fields of an item, with what it needs before them.
pub fn of(name: &str, looked: &Looked<'_>) -> Markup {
    let text = &looked.draft.text;
    let written = shop::map::fields(text, name);
    let word = written.get("is").map(String::as_str).unwrap_or_default();
    let known = looked.map.items.get(&ItemId::new(name));
    let mut wrong = BTreeMap::new();
    for (fault, place) in looked.faults.iter().zip(&looked.places) {
        if let Some((_, key)) = place.as_ref().filter(|(item, _)| item == name) {
            wrong.entry(key.as_str()).or_insert_with(|| says(fault));
        }
    }
    // A source's own fault is mended where its torque stands.
    let source = written
        .get("torque-from")
        .and_then(|source| looked.map.sources.get(source));
    if let Some(source) = source {
        let no_date = format!("`{}` is no date", source.date);
        let fault = looked.faults.iter().find(|fault| fault.what == no_date);
        if let Some(fault) = fault {
            wrong.entry("date").or_insert_with(|| says(fault));
        }
    }
    let form = Form {
        name,
        kind: known.map_or_else(
            || shop::map::kind_of(word).unwrap_or(Kind::Part),
            |item| item.kind,
        ),
        written,
        wrong,
        needs: &|key| shop::map::needs_written(text, name, key),
        map: &looked.map,
    };
    html! {
        h2 { (name) }
        @if let Some(says) = form.wrong.get("") { p class="no" { (says) } }
        @match form.has("crack") {
            true => (two_moves(&form)),
            false => (one_move(&form)),
        }
        (about(&form))
        @if form.kind.is_counted() { (bolts(&form)) }
        (more(&form))
        div class="presses" { button class="press" name="act" value=(act(&["set"])) { "Set it" } }
        div class="presses even" {
            button class="press" name="act" value=(act(&["close"])) { "Add another" }
            button class="press" name="act" value=(act(&["remove"])) { "Take it out" }
        }
        input type="hidden" name="map" value=(looked.draft.id);
    }
}

impl Form<'_> {
    fn value(&self, key: &str) -> &str {
        self.written
            .get(key)
            .map(String::as_str)
            .unwrap_or_default()
    }

    /// Whether there is a table of that name.
    fn has(&self, key: &str) -> bool {
        let within = format!("{key}.");
        self.map
            .items
            .get(&ItemId::new(self.name))
            .is_some_and(|item| {
                key == "crack" && item.moves.iter().any(|made| made.id.ends_with(".crack"))
            })
            || self.written.keys().any(|name| name.starts_with(&within))
    }

    fn field(&self, key: &str, label: &str, hint: &str) -> Markup {
        let wrong = self.wrong.get(key).map(String::as_str).unwrap_or_default();
        kept(key, label, hint, self.value(key), wrong)
    }

    fn tick(&self, key: &str, words: &str) -> Markup {
        tick(key, words, self.value(key) == "true")
    }

    fn wrong(&self, key: &str) -> Markup {
        beside(
            key,
            self.wrong.get(key).map(String::as_str).unwrap_or_default(),
        )
    }
}

fn one_move(form: &Form<'_>) -> Markup {
    let seen = form
        .map
        .items
        .get(&ItemId::new(form.name))
        .is_some_and(|item| item.as_seen);
    html! {
        @if seen {
            p class="strong gap" { "Needs first" }
            p { (after(form.map, form.name).unwrap_or_else(|| "nothing that was seen".to_owned())) ". Stating a need takes the place of what was seen." }
            (another_need(form, "needs"))
        } @else { (needs(form, "needs", "Needs first")) }
        (times(form, ""))
        @if form.kind == Kind::Fasteners {
            div class="presses" { button class="press" name="act" value=(act(&["crack"])) { "Crack them first, take them out later" } }
        }
    }
}

fn two_moves(form: &Form<'_>) -> Markup {
    html! {
        h3 class="gap" { "Cracked first" }
        (needs(form, "crack.needs", "To crack them it needs first"))
        (times(form, "crack."))
        h3 class="gap" { "Then out" }
        (needs(form, "out.needs", "To take them out it needs first"))
        (times(form, "out."))
        div class="presses" { button class="press" name="act" value=(act(&["whole"])) { "Out in one go after all" } }
    }
}

/// What a move needs, one a row, and how to add to it.
fn needs(form: &Form<'_>, key: &str, heading: &str) -> Markup {
    html! {
        p class="strong gap" { (heading) }
        @for (nth, need) in (form.needs)(key).iter().enumerate() {
            div class="row" {
                span class="what" { (need) }
                button class="press" name="act" value=(act(&["unneed", key, &nth.to_string()])) aria-label=(format!("Not any more: {need}")) { "Not" }
            }
        }
        (form.wrong(key))
        (another_need(form, key))
    }
}

fn another_need(form: &Form<'_>, key: &str) -> Markup {
    let label = match key {
        "crack.needs" => "To crack them it also needs",
        "out.needs" => "To take them out it also needs",
        "needs" => "It also needs",
        _ => "To go back it also needs",
    };
    html! {
        div class="fields" {
            (need_select(&format!("first:{key}"), label, form.map, form.name, ""))
            (need_select(&format!("or:{key}"), "or, if that is enough", form.map, form.name, ""))
        }
        div class="presses" { button class="press" name="act" value=(act(&["need"])) { "Needs it first" } }
    }
}

/// Where, with what, how long, and what it leaves to be done.
fn times(form: &Form<'_>, of: &str) -> Markup {
    let field = |key: &str, label: &str, hint: &str| form.field(&format!("{of}{key}"), label, hint);
    html! {
        div class="fields" {
            (field("place", "Where do you stand?", &places().join(", ")))
            (field("tools", "Tools", "with commas between"))
            (field("minutes.out", "Minutes off", "for all of them"))
            (field("minutes.back", "Minutes back", ""))
            @if form.kind.is_counted() {
                (field("minutes.each-out", "and for each one, off", ""))
                (field("minutes.each-back", "and for each one, back", ""))
            }
            (field("owes", "Work it leaves to be done", "with commas between, such as set the clock"))
        }
        (form.wrong(&format!("{of}minutes")))
    }
}

fn about(form: &Form<'_>) -> Markup {
    let only = |variant: &String| {
        let item = form.map.items.get(&ItemId::new(form.name));
        item.is_some_and(|item| item.only_with.contains(variant))
    };
    html! {
        h3 class="gap" { "What it is" }
        div class="fields" {
            (kept("name", "Name", "", form.name, ""))
            div {
                input type="hidden" name="was-is" value=(form.value("is"));
                (select("is", "What is it?", kinds(), kind_word(form.kind)))
                (form.wrong("is"))
            }
            @if form.kind.is_counted() { (form.field("count", "How many?", "")) (form.field("size", "Size", "such as M6x16 8.8")) }
            @if form.kind == Kind::Fluid { (form.field("holds", "How much it holds", "such as 9.2 l")) (form.field("drains", "How much its cock gives", "such as 5.5 l")) }
            @if form.kind == Kind::Work { (sort_of_work(form)) (form.field("due-after", "Due after", "such as 80 km; nothing if at once")) }
            (form.field("note", "Note", ""))
        }
        (form.tick("spent", "Not used again: a new one goes on"))
        @for variant in &form.map.variants {
            (tick(&format!("only:{variant}"), &format!("Only on vehicles with {variant}"), only(variant)))
        }
        (form.wrong("only-with"))
    }
}

/// What sort of work it is decides which gate waits for it; nobody guesses that from its name.
fn sort_of_work(form: &Form<'_>) -> Markup {
    let now = form.value("sort");
    let works = shop::trade::Vocabulary::shipped().works();
    let mut works: Vec<(&str, &str)> = works
        .iter()
        .map(|work| (&*work.code, &*work.english))
        .collect();
    works.sort_by_key(|(_, words)| *words);
    let known = works.iter().any(|(code, _)| *code == now) || now.is_empty();
    html! {
        div {
            input type="hidden" name="was-sort" value=(now);
            label class="field" {
                span { "What sort of work" }
                span class="soft" { "not said: it waits before hand-over" }
                select name="sort" {
                    option value="" selected[now.is_empty()] { "not said" }
                    @if !known { option value=(now) selected { (now) } }
                    @for (code, words) in &works { option value=(code) selected[*code == now] { (words) } }
                }
            }
            (form.wrong("sort"))
        }
    }
}

/// Lengths, torque with who says it, and what may be missing.
fn bolts(form: &Form<'_>) -> Markup {
    let count = form.value("count").parse::<u16>().unwrap_or(1).min(200);
    let at = |nth: u16| format!("length-at.{nth}");
    let source = form.map.sources.get(form.value("torque-from"));
    let source = source.or(form.map.sources.values().last());
    let (title, date) = source.map_or(("", ""), |source| (&*source.title, &*source.date));
    html! {
        div class="fields" {
            (form.field("length", "Length", "such as 16 mm"))
            (form.field("torque", "Torque, pass by pass", "such as 30 Nm, 60 Nm, 90 deg"))
            (form.field("pattern", "In which sequence", "such as in a star"))
            (kept("source", "Who says the torque", "such as the maker's manual", title, ""))
            (kept("date", "Of which date", "such as 2021-09-15", date, form.wrong.get("date").map_or("", String::as_str)))
        }
        (form.wrong("torque-from"))
        @if count > 1 {
            details id="lengths" open[form.has("length-at")] {
                summary class="row" { "Where the length is another" }
                div class="fields" {
                    @for nth in 1..=count { (form.field(&at(nth), &format!("Length of {nth}"), "")) }
                }
            }
            (form.wrong("length-at"))
        }
    }
}

/// What most items do without.
fn more(form: &Form<'_>) -> Markup {
    let one_of = |key: &str, label: &str, words: &[&'static str]| {
        let choices = [""].into_iter().chain(words.iter().copied()).collect();
        html! {
            div {
                input type="hidden" name=(format!("was-{key}")) value=(form.value(key));
                (select(key, label, choices, form.value(key)))
                (form.wrong(key))
            }
        }
    };
    let out = if form.has("crack") { "out." } else { "" };
    let of_move = |key: &str| format!("{out}{key}");
    html! {
        details id="more" {
            summary class="row" { "More about it" }
            div class="fields" {
                (one_of("system", "System", systems()))
                (one_of("zone", "Where it sits", places()))
                @if form.kind.is_counted() {
                    (form.field("may-miss.up-to", "So many may be missing", ""))
                    (form.field("may-miss.never-at", "but never at", "positions, such as 1, 2"))
                }
                (form.field(&of_move("renews"), "What is renewed with it", "with commas between, such as washer"))
                (form.field(&of_move("lost"), "Minutes for what is lost or renewed", ""))
                (form.field(&of_move("risk"), "Minutes for what may go wrong", ""))
            }
            (form.tick(&of_move("by-itself"), "It runs by itself once started"))
            (needs(form, &of_move("needs-back"), "To go back it needs, where that is another"))
        }
    }
}

/// A field with its label, and what is wrong with it.
pub fn input(name: &str, label: &str, hint: &str, value: &str, wrong: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(value) autocomplete="off" aria-invalid=[(!wrong.is_empty()).then_some("true")];
            (beside(name, wrong))
        }
    }
}

/// What is wrong with a field; empty until something is.
fn beside(name: &str, wrong: &str) -> Markup {
    html! { span class="no line" role="status" data-wrong=(name) { (wrong) } }
}

/// A field with what stood in it, so that only what differs is written.
pub fn kept(name: &str, label: &str, hint: &str, value: &str, wrong: &str) -> Markup {
    html! {
        div {
            input type="hidden" name=(format!("was-{name}")) value=(value);
            (input(name, label, hint, value, wrong))
        }
    }
}

fn tick(name: &str, words: &str, ticked: bool) -> Markup {
    html! {
        label class="row" {
            input type="hidden" name=(format!("was-{name}")) value=(if ticked { "true" } else { "" });
            input type="checkbox" name=(name) value="true" checked[ticked];
            span class="what" { (words) }
        }
    }
}

pub fn select(name: &str, label: &str, choices: Vec<&str>, chosen: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            select name=(name) {
                @for word in choices { option value=(word) selected[word == chosen] { @if word.is_empty() { "not said" } @else { (word) } } }
            }
        }
    }
}

/// The states that items come to, as a need says them: first what has left its place.
pub fn need_select(name: &str, label: &str, map: &Map, but: &str, chosen: &str) -> Markup {
    let items = || map.items.iter().filter(|(id, _)| id.as_str() != but);
    let away = items()
        .filter(|(_, item)| item.kind != Kind::Work)
        .map(|(id, item)| format!("{id} {}", need_word(item.kind)));
    let other = items().flat_map(|(id, item)| {
        let words = other_words(item.kind).iter();
        words.map(move |word| format!("{id} {word}"))
    });
    let option = |need: &str| html! { option value=(need) selected[need == chosen] { (need) } };
    html! {
        label class="field" {
            span { (label) }
            select name=(name) {
                option value="" { "nothing" }
                @for need in away { (option(&need)) }
                optgroup label="or stands otherwise" { @for need in other { (option(&need)) } }
            }
        }
    }
}
