//! Erasing what a customer is known by, from their own page: asked for here, carried out once
//! nothing holds it any more.

use super::customer::Waits;
use crate::pages::Visit;
use crate::phrases::desk as say;
use crate::tap::{Look, button, field};
use maud::{Markup, html};
use serde_json::json;
use shop::repair::CustomerId;
use shop::roles::{self, Act};

/// The way to have a customer erased, for who may; that it is asked for, where it is.
pub fn of_customer(visit: &Visit<'_>, id: &CustomerId, waits: Waits<'_>) -> Markup {
    let may = roles::check(visit.snap.caller(), Act::ShopFact("erasure-asked")).is_ok();
    let asked = json!({ "stream": "shop", "shop_fact": { "erasure-asked": {
        "customer": id.as_str(), "every_word": { "$flag": "every-word" }, "why": field("why") } } });
    html! {
        @if waits.is_some() {
            a class="row" href="/record" { span class="what wait" { (say::to_be_erased()) } }
        } @else if may {
            details id="erase" {
                summary class="row" { span class="what" { (say::erase_this_customer()) } }
                p class="caution" { (say::erase_does()) }
                form class="narrow" {
                    label class="row" { input type="checkbox" name="every-word" value="yes"; span class="what" { (say::every_word_too()) } }
                    (crate::tap::required("why", say::why(), say::erase_hint(), ""))
                    div class="presses" { (button(Look::Plain, say::erase(), say::tomorrow_earliest(), &[asked], None)) }
                }
            }
        }
    }
}
