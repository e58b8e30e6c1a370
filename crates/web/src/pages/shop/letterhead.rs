//! What the shop has printed of itself on its papers: where it is, how it is reached, its tax
//! number, its bank, its picture, and the language of its papers.

use super::setup::{of_shop, seen};
use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, Visit, show};
use crate::phrases::shop as say;
use crate::tap::{Look, button, chips, field, file, input, lines, text};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::codes::LanguageForm;
use shop::view::{LetterheadView, PostalView, letterhead};

/// The page of the letterhead.
pub async fn page(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let now = letterhead(visit.snap);
        let own = html! {
            h1 { (say::on_your_papers()) }
            p class="soft gap" { (say::printed_at_the_head()) }
            div class="columns" {
                form {
                    (fields(&now))
                    (input("mail", say::e_mail(), "", now.mail.as_deref().unwrap_or("")))
                    (lines("terms", say::at_the_end_of_an_invoice(), say::terms_hint(), now.terms.as_deref().unwrap_or("")))
                    (chips("language", say::papers_are_in(), &[("en", say::english()), ("de", say::german())], language(&now)))
                    div class="presses" { (button(Look::Confirm, say::save(), "", &[told(visit, &now), seat_told(visit)], None)) }
                }
                (picture(visit, &now))
            }
        };
        Ok(Shown::new(say::on_your_papers(), own).of_part(Part::Shop))
    })
    .await
}

fn language(now: &LetterheadView) -> &'static str {
    match now.language {
        LanguageForm::English => "en",
        LanguageForm::German => "de",
    }
}

/// What is asked when a shop is set up, too.
pub fn fields(now: &LetterheadView) -> Markup {
    let text = |told: &Option<String>| told.clone().unwrap_or_default();
    html! {
        @if in_lines(now) {
            (lines("address", say::address_of_the_shop(), say::address_hint(), &text(&now.address)))
        }
        (address_fields("seat-", &now.postal))
        (input("phone", say::telephone(), "", &text(&now.phone)))
        (input("tax-number", say::tax_number(), say::tax_number_hint(), &text(&now.tax_number)))
        (input("bank", say::bank(), say::bank_hint(), &text(&now.bank)))
    }
}

/// Whether its address was told in lines, and in no other way since.
fn in_lines(now: &LetterheadView) -> bool {
    now.address.is_some() && now.postal.lines().is_empty()
}

/// An address part by part. The names of the fields begin with this.
pub fn address_fields(before: &str, now: &PostalView) -> Markup {
    let name = |part: &str| format!("{before}{part}");
    html! {
        (input(&name("street"), say::street_and_house(), "", &now.street))
        (input(&name("postcode"), say::postcode(), "", &now.postcode))
        (input(&name("town"), say::town(), "", &now.town))
        (input(&name("country"), say::country(), say::country_hint(), &now.country))
    }
}

fn told(visit: &Visit<'_>, now: &LetterheadView) -> Value {
    let mut letter = letter(json!(field("language")), text("mail"), text("terms"));
    if in_lines(now) {
        letter["address"] = text("address");
    }
    of_shop(json!({ "letterhead-told": { "letterhead": letter,
        "after": seen(visit.snap.world().shop.letterheads_told()) } }))
}

fn seat_told(visit: &Visit<'_>) -> Value {
    of_shop(json!({ "seat-told": { "seat": seat(),
        "after": seen(visit.snap.world().shop.seats_told()) } }))
}

/// Where the shop is, as it is sent.
pub fn seat() -> Value {
    json!({ "street": text("seat-street"), "postcode": text("seat-postcode"),
        "town": text("seat-town"), "country": field("seat-country") })
}

/// The form's fields as they are sent; the address goes part by part.
pub fn letter(language: Value, mail: Value, terms: Value) -> Value {
    json!({ "address": null, "phone": text("phone"), "mail": mail,
        "tax_number": text("tax-number"), "bank": text("bank"), "terms": terms,
        "language": language })
}

fn picture(visit: &Visit<'_>, now: &LetterheadView) -> Markup {
    let after = seen(visit.snap.world().shop.logos_told());
    let logo = |logo: Value| of_shop(json!({ "logo-told": { "logo": logo, "after": after } }));
    html! {
        section {
            h2 { (say::your_picture()) }
            @if let Some(file) = &now.logo {
                p class="gap" { img class="logo" src=(format!("/file/{file}")) alt=(say::picture_on_your_papers()); }
                form { div class="presses" { (button(Look::Plain, say::take_it_off(), "", &[logo(Value::Null)], None)) } }
            }
            form {
                label class="field" { span { (say::picture()) } span class="soft" { (say::picture_hint()) } input type="file" name="logo" accept="image/png,image/jpeg" required; }
                div class="presses" { (button(Look::Plain, say::save_the_picture(), "", &[logo(file("logo"))], None)) }
            }
        }
    }
}

/// The grade that a person's work is charged by, where the shop has rates for grades.
pub fn grade(visit: &Visit<'_>, person: &str) -> Markup {
    let shop = &visit.snap.world().shop;
    let id = shop::repair::PersonId::new(person);
    let rates = shop.money().rates;
    let mut grades: Vec<&str> = rates
        .iter()
        .filter_map(|rate| rate.grade.as_deref())
        .collect();
    grades.sort_unstable();
    grades.dedup();
    if grades.is_empty() {
        return html! {};
    }
    let now = shop.grade(&id).unwrap_or("");
    let choices: Vec<(&str, &str)> = [("", say::the_usual_rate())]
        .into_iter()
        .chain(grades.into_iter().map(|grade| (grade, grade)))
        .collect();
    let told = of_shop(
        json!({ "grade-told": { "person": person, "grade": field("grade"),
        "after": seen(shop.grades_told(&id)) } }),
    );
    html! {
        form {
            (chips("grade", say::charged_as(), &choices, now))
            div class="presses" { (button(Look::Plain, say::save_the_rate(), "", &[told], None)) }
        }
    }
}
