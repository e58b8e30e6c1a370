//! Erasing what a customer is known by, from their own page: asked for here, carried out once
//! nothing holds it any more.

use super::customer::Waits;
use crate::pages::Visit;
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
            a class="row" href="/record" { span class="what wait" { "To be erased: see the record" } }
        } @else if may {
            details id="erase" {
                summary class="row" { span class="what" { "Erase this customer" } }
                p class="caution" { "Name, telephone, addresses, plates, identification numbers and signatures are deleted for good, here and in every copy that is put back. Sums and dates stay. It waits a day, in which it can be called off, and as long as the shop has to keep its records." }
                form class="narrow" {
                    label class="row" { input type="checkbox" name="every-word" value="yes"; span class="what" { "Every word and photo on their orders as well" } }
                    (crate::tap::required("why", "Why", "such as: asked by letter", ""))
                    div class="presses" { (button(Look::Plain, "Erase", "tomorrow at the earliest", &[asked], None)) }
                }
            }
        }
    }
}
