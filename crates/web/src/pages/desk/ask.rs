//! Asking for a yes: what to ask whom in one sentence, and what they answered.

use super::overview::total_block;
use super::papers::{For, payer_name};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::tap::{
    Look, button, chips, field, figure, file, input, needed_when, order_fact, order_request,
    required, sheet, text, text_with, when,
};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::odds_of::odds_of;
use shop::places::{NOT_ADVICE, Place, ToNote, place_of};
use shop::record::v1::codes::{ConsentStepForm, PayerForm};
use shop::view::{AskView, OrderView};

/// Where one goes on after a yes.
#[derive(Debug, Deserialize)]
pub struct Then {
    then: Option<String>,
    /// The sum to begin with, such as one that covers it 9 times in 10.
    sum: Option<String>,
}

impl Then {
    /// Who asked from the vehicle goes on there, everybody else at the desk.
    fn on(&self) -> &'static str {
        match self.then.as_deref() {
            Some("stage") => "stage",
            _ => "desk",
        }
    }

    /// The sum to begin with, if it is one.
    fn sum(&self) -> Option<&str> {
        self.sum
            .as_deref()
            .filter(|sum| sum.parse::<shop::measure::Decimal>().is_ok())
    }
}

pub async fn ask(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(whose): Query<For>,
    Query(then): Query<Then>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let wanted = whose.payer();
        let asked = order
            .asks
            .iter()
            .find(|ask| ask.payer == wanted)
            .ok_or_else(|| Trouble::not_found("nobody is asked about what the shop pays itself"))?;
        let place = place_of(&visit.snap.world().shop);
        // Where no work is priced yet, there is nothing to be sure of.
        let sure = (wanted == PayerForm::Customer)
            .then(|| odds_of(visit.snap, order.number, None).ok())
            .flatten()
            .map(|odds| odds.sentence);
        let total = order.totals.iter().find(|total| total.payer == wanted);
        Ok(Shown::of(
            &order,
            "Ask",
            html! {
                h1 { "Get approval" }
                (whom(&order, asked))
                (apart(asked))
                p class={ "gap large" @if asked.must { " wait" } } { (asked.sentence) }
                @if !asked.phone.is_empty() { p class="beside gap" { "Ring " (asked.phone) } }
                form {
                    div class="columns" {
                        div {
                            (changed(asked))
                            @if let Some(total) = total { (total_block(&order, total)) }
                            @if let Some(place) = place { (place_note(place, asked)) }
                        }
                        div { (answer(&order, asked, place, then.sum(), sure.as_deref())) }
                    }
                    (yes_or_no(&order, asked, then.on()))
                }
                @if asked.can_write_down { (write_down(&order, asked)) }
            },
        ))
    })
    .await
}

/// One link a payer, where there are several.
fn whom(order: &OrderView, asked: &AskView) -> Markup {
    html! {
        @if order.asks.len() > 1 {
            @for other in &order.asks {
                @if other.payer != asked.payer {
                    a class="row" href=(ask_page(order, other)) {
                        span class="what strong" { "Ask " (payer_name(other.payer)) " instead" }
                        @if other.must { span class="wait" { "has to be asked" } }
                    }
                }
            }
        }
    }
}

/// Where a payer is asked.
pub fn ask_page(order: &OrderView, asked: &AskView) -> String {
    format!("/o/{}/ask?payer={}", order.number, code(&asked.payer))
}

fn code(of: &impl serde::Serialize) -> String {
    serde_json::to_value(of)
        .ok()
        .and_then(|value| value.as_str().map(str::to_owned))
        .unwrap_or_default()
}

/// Two answers that did not see each other: both are shown.
pub fn apart(asked: &AskView) -> Markup {
    html! {
        @if !asked.apart.is_empty() {
            div class="caution" {
                p { "Two of us wrote down an answer of " (asked.who) " at the same time. The lower one counts until somebody asks again." }
                @for answer in &asked.apart { p { (answer) } }
            }
        }
    }
}

fn changed(asked: &AskView) -> Markup {
    html! {
        @if asked.agreed && !(asked.added.is_empty() && asked.dropped.is_empty()) {
            h2 { "Since they last agreed" }
            @for entry in &asked.added {
                div class="row" { span class="what" { "Added: " (entry.label) } span class="number strong" { (entry.amount) } }
            }
            @for entry in &asked.dropped {
                div class="row" { span class="what" { "No longer: " (entry.label) } span class="number strong" { "−" (entry.amount) } }
            }
        }
    }
}

/// The tap that charges what was agreed and no more.
pub fn write_down(order: &OrderView, asked: &AskView) -> Markup {
    let ceiling = asked.ceiling.as_deref().unwrap_or("");
    let tax = if asked.with_tax {
        "with tax"
    } else {
        "before tax"
    };
    let request = json!({ "write-down": { "payer": asked.payer, "after": asked.after } });
    html! {
        form { div class="presses" {
            (button(Look::Plain, &format!("Charge {ceiling} {tax} and no more"), "write it down to what was agreed", &[order_request(&order.order, request)], None))
        } }
    }
}

fn place_note(place: &Place, asked: &AskView) -> Markup {
    html! {
        details id="rules" {
            summary class="row" { span class="what strong" { "Rules of " (place.name) } span class="soft" { "as of " (place.as_of) } }
            @if let Some(limit) = &asked.limit { p class="gap" { "Up to " (limit) " may be charged on this without asking again." } }
            @else { p class="gap" { "Anything above what was agreed has to be asked for." } }
            (sources(place))
        }
    }
}

/// What a place's rules say and where.
pub fn sources(place: &Place) -> Markup {
    html! {
        @for source in &place.sources {
            p class="gap" { (source.says) }
            p class="soft" { (source.rule) " · " (source.grade) @if !source.note.is_empty() { " · " (source.note) } }
        }
        @if let Some(years) = place.keep_years() { p class="gap" { "Papers are kept for at least " (years) " years." } }
        p class="gap wait" { (NOT_ADVICE) }
    }
}

/// What they answered.
fn answer(
    order: &OrderView,
    asked: &AskView,
    place: Option<&Place>,
    sum: Option<&str>,
    sure: Option<&str>,
) -> Markup {
    let notes = |note: ToNote| place.is_some_and(|place| place.spoken().contains(&note));
    let hint = |note: ToNote| {
        if notes(note) {
            "has to be noted here"
        } else {
            ""
        }
    };
    let person = if asked.phone.is_empty() {
        ""
    } else {
        asked.who.as_str()
    };
    let added: Vec<String> = asked
        .added
        .iter()
        .map(|entry| format!("{} {}", entry.label, entry.amount))
        .collect();
    html! {
        (chips("step", "To", STEPS, &code(&asked.step)))
        @if order.lines.len() > 1 { (which_lines(order)) }
        (figure("amount", "Up to, in all", "the most they will pay, with what was agreed before", sum.or(asked.sum.as_deref()).unwrap_or(""), true))
        @if let Some(sure) = sure {
            a class="row" href=(format!("/o/{}/odds", order.number)) {
                span class="what" { span class="strong line" { "How sure is that?" } span class="soft line" { (sure) } }
            }
        }
        label class="row" { input type="checkbox" name="tax" value="yes" checked[asked.with_tax]; span class="what" { "Amount includes tax" } }
        details id="apart" open[asked.step == ConsentStepForm::TakeApart] {
            summary class="row" { span class="what" { "Strip-down needed" } }
            (figure("back", "Of it, putting it back if they then say no", "they pay this much even if nothing is repaired", "", false))
        }
        (chips("way", "How", WAYS, "phone"))
        (required("person", "Who answered", hint(ToNote::Person), person))
        @let spoken = if notes(ToNote::NumberCalled) { "way phone" } else { "way" };
        (needed_when("called", "Number called", hint(ToNote::NumberCalled), &asked.phone, spoken))
        @let described = if notes(ToNote::PartsAndLabour) { "way phone in-person" } else { "way" };
        (needed_when("added", "Parts and labour it is for", hint(ToNote::PartsAndLabour), &added.join(", "), described))
        (input("said", "What was said", "", ""))
        details id="sign" {
            summary class="row" { span class="what" { "They are here and sign" } }
            (sheet("signature", "Signature"))
        }
        p class="soft gap" { "The day and the hour are noted by themselves, and that you asked." }
    }
}

fn yes_or_no(order: &OrderView, asked: &AskView, on: &str) -> Markup {
    let lines: Vec<Value> = order
        .lines
        .iter()
        .map(|line| when(&format!("line-{}", line.line), json!(line.line)))
        .collect();
    let consent = |agreed: bool| {
        order_fact(
            &order.order,
            json!({ "consented": {
                "step": field("step"), "payer": asked.payer, "lines": lines, "agreed": agreed,
                "amount": if agreed { field("amount") } else { Value::Null },
                "tax_included": { "$flag": "tax" }, "way": field("way"), "person": text("person"),
                "said": text_with("said", &[("Parts and labour: ", "added"), ("Putting it back, if declined: ", "back")]),
                "number_called": { "$map": "way", "to": { "phone": text("called") } }, "signature": file("signature"), "after": asked.after } }),
        )
    };
    let desk = format!("/o/{}/desk", order.number);
    let on = format!("/o/{}/{on}", order.number);
    html! {
        div class="presses two low" {
            (button(Look::Confirm, "Approved", "", &[consent(true)], Some(&on)))
            (button(Look::Plain, "No", "", &[consent(false)], Some(&desk)))
        }
    }
}

const STEPS: &[(&str, &str)] = &[
    ("diagnose", "find the fault"),
    ("take-apart", "take apart"),
    ("repair", "repair"),
    ("add", "do more"),
];

const WAYS: &[(&str, &str)] = &[
    ("phone", "phone"),
    ("in-person", "in person"),
    ("message", "message"),
    ("mail", "mail"),
    ("signed", "signed paper"),
];

fn which_lines(order: &OrderView) -> Markup {
    html! {
        fieldset {
            legend { "For which complaints" }
            p class="soft" { "None ticked means all of them." }
            @for line in &order.lines {
                label class="row" {
                    input type="checkbox" name=(format!("line-{}", line.line)) value="yes";
                    span class="what" { (line.complaint) }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{STEPS, WAYS};
    use shop::record::v1::codes::{ConsentStepForm, WayForm};

    #[test]
    fn every_choice_on_the_page_is_one_the_record_knows() {
        for (code, _) in STEPS {
            assert!(ConsentStepForm::from_word(code).is_some(), "{code}");
        }
        for (code, _) in WAYS {
            assert!(WayForm::from_word(code).is_some(), "{code}");
        }
    }
}
