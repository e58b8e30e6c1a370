//! The fields of one item, each as the text has it, with what is wrong beside it.

use super::Looked;
use super::form::{act, after, says};
use crate::phrases::maps as say;
use maud::{Markup, html};
use phrases::{Language, spoken};
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
        // It stands outside the items, in the line that gives its date.
        let dates = |fault: &shop::map::Trouble| {
            let line = text.lines().nth(fault.line.saturating_sub(1));
            line.is_some_and(|line| line.contains("date") && line.contains(&source.date))
        };
        let outside = looked.faults.iter().zip(&looked.places);
        let fault = outside
            .filter(|(_, place)| place.is_none())
            .find(|(fault, _)| dates(fault));
        if let Some((fault, _)) = fault {
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
        div class="presses" { button class="press" name="act" value=(act(&["set"])) { (say::set_it()) } }
        div class="presses even" {
            button class="press" name="act" value=(act(&["close"])) { (say::add_another()) }
            button class="press" name="act" value=(act(&["remove"])) { (say::take_it_out()) }
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
            p class="strong gap" { (say::needs_first()) }
            p { (say::stating_takes_its_place(after(form.map, form.name).unwrap_or_else(|| say::nothing_seen().to_owned()))) }
            (another_need(form, "needs"))
        } @else { (needs(form, "needs", say::needs_first())) }
        (times(form, ""))
        @if form.kind == Kind::Fasteners {
            div class="presses" { button class="press" name="act" value=(act(&["crack"])) { (say::crack_them_first()) } }
        }
    }
}

fn two_moves(form: &Form<'_>) -> Markup {
    html! {
        h3 class="gap" { (say::cracked_first()) }
        (needs(form, "crack.needs", say::to_crack_needs()))
        (times(form, "crack."))
        h3 class="gap" { (say::then_out()) }
        (needs(form, "out.needs", say::to_take_out_needs()))
        (times(form, "out."))
        div class="presses" { button class="press" name="act" value=(act(&["whole"])) { (say::one_go_after_all()) } }
    }
}

/// What a move needs, one a row, and how to add to it.
fn needs(form: &Form<'_>, key: &str, heading: &str) -> Markup {
    html! {
        p class="strong gap" { (heading) }
        @for (nth, need) in (form.needs)(key).iter().enumerate() {
            div class="row" {
                span class="what" { (need) }
                button class="press" name="act" value=(act(&["unneed", key, &nth.to_string()])) aria-label=(say::not_any_more(need)) { (say::not()) }
            }
        }
        (form.wrong(key))
        (another_need(form, key))
    }
}

fn another_need(form: &Form<'_>, key: &str) -> Markup {
    let label = match key {
        "crack.needs" => say::to_crack_also_needs(),
        "out.needs" => say::to_take_out_also_needs(),
        "needs" => say::also_needs(),
        _ => say::to_go_back_also_needs(),
    };
    html! {
        div class="fields" {
            (need_select(&format!("first:{key}"), label, form.map, form.name, ""))
            (need_select(&format!("or:{key}"), say::or_if_enough(), form.map, form.name, ""))
        }
        div class="presses" { button class="press" name="act" value=(act(&["need"])) { (say::needs_it_first()) } }
    }
}

/// Where, with what, how long, and what it leaves to be done.
fn times(form: &Form<'_>, of: &str) -> Markup {
    let field = |key: &str, label: &str, hint: &str| form.field(&format!("{of}{key}"), label, hint);
    html! {
        div class="fields" {
            (field("place", say::where_do_you_stand(), &places().join(", ")))
            (field("tools", say::tools(), say::commas_between()))
            (field("minutes.out", say::minutes_off(), say::for_all_of_them()))
            (field("minutes.back", say::minutes_back(), ""))
            @if form.kind.is_counted() {
                (field("minutes.each-out", say::each_off(), ""))
                (field("minutes.each-back", say::each_back(), ""))
            }
            (field("owes", say::work_it_leaves(), say::work_it_leaves_hint()))
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
        h3 class="gap" { (say::what_it_is()) }
        div class="fields" {
            (kept("name", say::name(), "", form.name, ""))
            div {
                input type="hidden" name="was-is" value=(form.value("is"));
                (select("is", say::what_is_it(), kinds(), kind_word(form.kind)))
                (form.wrong("is"))
            }
            @if form.kind.is_counted() { (form.field("count", say::how_many(), "")) (form.field("size", say::size(), say::size_hint())) }
            @if form.kind == Kind::Fluid { (form.field("holds", say::how_much_it_holds(), say::holds_hint())) (form.field("drains", say::how_much_its_cock_gives(), say::drains_hint())) }
            @if form.kind == Kind::Work { (sort_of_work(form)) (form.field("due-after", say::due_after(), say::due_after_hint())) }
            (form.field("note", say::note(), ""))
        }
        (form.tick("spent", say::not_used_again()))
        @for variant in &form.map.variants {
            (tick(&format!("only:{variant}"), &say::only_with(variant), only(variant)))
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
        .map(|work| match spoken() {
            Language::English => (&*work.code, &*work.english),
            Language::German => (&*work.code, &*work.german),
        })
        .collect();
    works.sort_by_key(|(_, words)| *words);
    let known = works.iter().any(|(code, _)| *code == now) || now.is_empty();
    html! {
        div {
            input type="hidden" name="was-sort" value=(now);
            label class="field" {
                span { (say::what_sort_of_work()) }
                span class="soft" { (say::waits_before_hand_over()) }
                select name="sort" {
                    option value="" selected[now.is_empty()] { (say::not_said()) }
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
            (form.field("length", say::length(), say::length_hint()))
            (form.field("torque", say::torque_passes(), say::torque_hint()))
            (form.field("pattern", say::in_which_sequence(), say::sequence_hint()))
            (kept("source", say::who_says_the_torque(), say::source_hint(), title, ""))
            (kept("date", say::of_which_date(), say::date_hint(), date, form.wrong.get("date").map_or("", String::as_str)))
        }
        (form.wrong("torque-from"))
        @if count > 1 {
            details id="lengths" open[form.has("length-at")] {
                summary class="row" { (say::where_length_differs()) }
                div class="fields" {
                    @for nth in 1..=count { (form.field(&at(nth), &say::length_of(nth), "")) }
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
            summary class="row" { (say::more_about_it()) }
            div class="fields" {
                (one_of("system", say::system(), systems()))
                (one_of("zone", say::where_it_sits(), places()))
                @if form.kind.is_counted() {
                    (form.field("may-miss.up-to", say::may_be_missing(), ""))
                    (form.field("may-miss.never-at", say::never_at(), say::positions_hint()))
                }
                (form.field(&of_move("renews"), say::what_is_renewed(), say::renewed_hint()))
                (form.field(&of_move("lost"), say::minutes_lost(), ""))
                (form.field(&of_move("risk"), say::minutes_at_risk(), ""))
            }
            (form.field(&of_move("place-back"), say::where_do_you_stand_for_the_way_back(), &places().join(", ")))
            (form.tick(&of_move("by-itself"), say::runs_by_itself()))
            (needs(form, &of_move("needs-back"), say::to_go_back_needs()))
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

/// What a word of a map's text is called where it is chosen.
fn called(word: &str) -> &str {
    match word {
        "" => say::not_said(),
        other => shop::map::called(other),
    }
}

pub fn select(name: &str, label: &str, choices: Vec<&str>, chosen: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            select name=(name) {
                @for word in choices { option value=(word) selected[word == chosen] { (called(word)) } }
            }
        }
    }
}

/// The states that items come to, as a need says them: first what has left its place.
pub fn need_select(name: &str, label: &str, map: &Map, but: &str, chosen: &str) -> Markup {
    let items = || map.items.iter().filter(|(id, _)| id.as_str() != but);
    let away = items()
        .filter(|(_, item)| item.kind != Kind::Work)
        .map(|(id, item)| (id, need_word(item.kind)));
    let other = items().flat_map(|(id, item)| {
        let words = other_words(item.kind).iter();
        words.map(move |word| (id, *word))
    });
    let option = |(id, word): (&ItemId, &str)| {
        let need = format!("{id} {word}");
        html! { option value=(need) selected[need == chosen] { (say::stands(id, shop::map::state_called(word))) } }
    };
    html! {
        label class="field" {
            span { (label) }
            select name=(name) {
                option value="" { (say::nothing()) }
                @for need in away { (option(need)) }
                optgroup label=(say::or_stands_otherwise()) { @for need in other { (option(need)) } }
            }
        }
    }
}
