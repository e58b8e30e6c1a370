//! Which language the screens speak: the shop's, and for whoever wants it otherwise their own.

use crate::State;
use crate::pages::shop::{of_shop, seen};
use crate::pages::{Shown, show};
use crate::phrases::people as say;
use crate::tap::{Look, button, chips, field};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;
use phrases::Language;
use serde_json::json;
use shop::repair::{self, PersonId, Role};

pub async fn page(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let shop = &visit.snap.world().shop;
        let me = PersonId::new(visit.who);
        let every = Language::ALL.map(|language| (language.tag(), language.name()));
        let of_mine: Vec<(&str, &str)> = [("", say::as_the_shop())]
            .into_iter()
            .chain(every)
            .collect();
        let mine = json!({ "person-speaks": { "person": visit.who, "language": field("mine"),
            "after": seen(shop.speaking_told(Some(&me))) } });
        let of_all = json!({ "shop-speaks": { "language": field("shop"),
            "after": seen(shop.speaking_told(None)) } });
        let own = html! {
            h1 { (say::language_of_the_screens()) }
            div class="columns" {
                form {
                    (chips("mine", say::your_own_screens(), &of_mine, shop.speaks_own(&me).map_or("", tag)))
                    div class="presses" { (button(Look::Confirm, say::save(), "", &[of_shop(mine)], Some("/language"))) }
                }
                @if visit.snap.caller().has_any(&[Role::Owner]) {
                    form {
                        (chips("shop", say::screens_of_the_shop(), &every, tag(shop.speaks(None))))
                        p class="soft gap" { (say::papers_have_their_own()) }
                        div class="presses" { (button(Look::Plain, say::save_for_the_shop(), "", &[of_shop(of_all)], Some("/language"))) }
                    }
                }
            }
        };
        Ok(Shown::new(say::language_of_the_screens(), own))
    })
    .await
}

fn tag(language: repair::Language) -> &'static str {
    match language {
        repair::Language::English => Language::English.tag(),
        repair::Language::German => Language::German.tag(),
    }
}
