//! The shop's own words, and the owner's word on working alone.

use crate::pages::Visit;
use crate::phrases::shop as say;
use crate::tap::{Look, button, required, text};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::repair::{CommandId, Words};

fn of_shop(fact: Value) -> Value {
    json!({ "stream": "shop", "shop_fact": fact })
}

/// Words that this shop has added to the trade's, each with what it means.
pub fn own_words(visit: &Visit<'_>) -> Markup {
    let world = visit.snap.world();
    let table = visit.snap.vocabulary();
    let called = |sort: &str| {
        let names = table.names().filter(|(_, of)| *of == sort);
        // The shop's own come first, and the trade's after them.
        let last = names.map(|(name, _)| name.to_owned()).last();
        last.unwrap_or_else(|| sort.replace('-', " "))
    };
    let mut words: Vec<(String, String, Words)> = world
        .shop
        .own_words()
        .into_iter()
        .map(|(name, sort)| (visit.snap.texts().text(name), called(sort.as_str()), name))
        .collect();
    words.sort();
    html! {
        h2 { (say::words_of_this_shop()) }
        @if words.is_empty() { p class="soft gap" { (say::no_words_yet()) } }
        @for (word, means, name) in &words {
            form {
                div class="row" {
                    span class="what" { span class="strong line" { (word) } span class="soft line" { (say::means(means)) } }
                    (button(Look::Plain, say::forget_it(), "", &[of_shop(json!({ "word-removed": { "name": name.hex() } }))], None))
                }
            }
        }
    }
}

/// Whether who works alone may check by walking back: the owner's word, in writing.
pub fn alone(visit: &Visit<'_>) -> Markup {
    let world = visit.snap.world();
    let allowed = world.shop.alone_allowed();
    let after: Vec<&str> = world
        .shop
        .alone_told()
        .into_iter()
        .map(CommandId::as_str)
        .collect();
    let told =
        |words: Value| of_shop(json!({ "alone-allowed": { "words": words, "after": after } }));
    html! {
        h2 { (say::working_alone()) }
        @match allowed {
            Some(words) => {
                p class="gap" { (say::alone_allowed(visit.snap.texts().text(words))) }
                form { div class="presses" {
                    (button(Look::Plain, say::not_any_more(), say::another_person_checks(), &[told(Value::Null)], None))
                } }
            }
            None => {
                p class="soft gap" { (say::alone_hint()) }
                form class="narrow" {
                    (required("words", say::owners_word(), say::owners_word_hint(), ""))
                    div class="presses" { (button(Look::Plain, say::allow_it(), "", &[told(text("words"))], None)) }
                }
            }
        }
    }
}
