//! Asking for a yes: what to ask whom in one sentence, and what they answered.

use super::overview::total_block;
use super::papers::{For, payer_whom};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
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
use shop::Amount;
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
            .ok_or_else(|| Trouble::not_found(say::nobody_is_asked()))?;
        let place = place_of(&visit.snap.world().shop);
        // Where no work is priced yet, there is nothing to be sure of.
        let sure = (wanted == PayerForm::Customer)
            .then(|| odds_of(visit.snap, order.number, None).ok())
            .flatten()
            .map(|odds| odds.sentence);
        let total = order.totals.iter().find(|total| total.payer == wanted);
        Ok(Shown::of(
            &order,
            say::ask_title(),
            html! {
                h1 { (say::get_approval()) }
                (whom(&order, asked))
                (apart(asked))
                p class={ "gap large" @if asked.must { " wait" } } { (asked.sentence) }
                @if !asked.phone.is_empty() { p class="beside gap" { (say::ring_number(&asked.phone)) } }
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
                        span class="what strong" { (say::ask_instead(payer_whom(other.payer))) }
                        @if other.must { span class="wait" { (say::has_to_be_asked()) } }
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
                p { (say::two_answers(&asked.who)) }
                @for answer in &asked.apart { p { (answer) } }
            }
        }
    }
}

fn changed(asked: &AskView) -> Markup {
    html! {
        @if asked.agreed && !(asked.added.is_empty() && asked.dropped.is_empty()) {
            h2 { (say::since_they_agreed()) }
            @for entry in &asked.added {
                div class="row" { span class="what" { (say::added_is(&entry.label)) } span class="number strong" { (entry.amount) } }
            }
            @for entry in &asked.dropped {
                div class="row" { span class="what" { (say::no_longer(&entry.label)) } span class="number strong" { "−" (entry.amount) } }
            }
        }
    }
}

/// The tap that charges what was agreed and no more.
pub fn write_down(order: &OrderView, asked: &AskView) -> Markup {
    let ceiling = asked.ceiling.clone().unwrap_or_default();
    let tax = if asked.with_tax {
        say::with_tax()
    } else {
        say::before_tax()
    };
    let request = json!({ "write-down": { "payer": asked.payer, "after": asked.after } });
    html! {
        form { div class="presses" {
            (button(Look::Plain, &say::charge_no_more(ceiling, tax), say::write_down_to_agreed(), &[order_request(&order.order, request)], None))
        } }
    }
}

fn place_note(place: &Place, asked: &AskView) -> Markup {
    html! {
        details id="rules" {
            summary class="row" { span class="what strong" { (say::rules_of(place.name())) } span class="soft" { (say::as_of(&place.as_of)) } }
            @if let Some(limit) = &asked.limit { p class="gap" { (say::may_charge_up_to(limit)) } }
            @else { p class="gap" { (say::anything_above_asked()) } }
            (sources(place))
        }
    }
}

/// What a place's rules say and where.
pub fn sources(place: &Place) -> Markup {
    html! {
        @for source in &place.sources {
            p class="gap" { (source.says()) }
            p class="soft" { (source.rule) " · " (source.grade_said()) @if !source.note().is_empty() { " · " (source.note()) } }
        }
        @if let Some(years) = place.keep_years() { p class="gap" { (say::papers_are_kept(years)) } }
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
            say::has_to_be_noted()
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
        (chips("step", say::to_what(), &steps(), &code(&asked.step)))
        @if order.lines.len() > 1 { (which_lines(order)) }
        (figure("amount", say::up_to_in_all(), say::most_they_pay(), sum.or(asked.sum.as_ref().map(Amount::exact)).unwrap_or(""), true))
        @if let Some(sure) = sure {
            a class="row" href=(format!("/o/{}/odds", order.number)) {
                span class="what" { span class="strong line" { (say::how_sure_is_that()) } span class="soft line" { (sure) } }
            }
        }
        label class="row" { input type="checkbox" name="tax" value="yes" checked[asked.with_tax]; span class="what" { (say::includes_tax()) } }
        details id="apart" open[asked.step == ConsentStepForm::TakeApart] {
            summary class="row" { span class="what" { (say::strip_down()) } }
            (figure("back", say::of_it_put_back(), say::pay_even_if_not(), "", false))
        }
        (chips("way", say::how(), &ways(), "phone"))
        (required("person", say::who_answered(), hint(ToNote::Person), person))
        @let spoken = if notes(ToNote::NumberCalled) { "way phone" } else { "way" };
        (needed_when("called", say::number_called(), hint(ToNote::NumberCalled), &asked.phone, spoken))
        @let described = if notes(ToNote::PartsAndLabour) { "way phone in-person" } else { "way" };
        (needed_when("added", say::parts_and_labour_for(), hint(ToNote::PartsAndLabour), &added.join(", "), described))
        (input("said", say::what_was_said(), "", ""))
        details id="sign" {
            summary class="row" { span class="what" { (say::here_and_sign()) } }
            (sheet("signature", say::signature()))
        }
        p class="soft gap" { (say::noted_by_themselves()) }
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
                "said": text_with("said", &[(say::parts_and_labour(), "added"), (say::putting_back(), "back")]),
                "number_called": { "$map": "way", "to": { "phone": text("called") } }, "signature": file("signature"), "after": asked.after } }),
        )
    };
    let desk = format!("/o/{}/desk", order.number);
    let on = format!("/o/{}/{on}", order.number);
    html! {
        div class="presses two low" {
            (button(Look::Confirm, say::approved(), "", &[consent(true)], Some(&on)))
            (button(Look::Plain, say::no(), "", &[consent(false)], Some(&desk)))
        }
    }
}

fn steps() -> [(&'static str, &'static str); 4] {
    [
        ("diagnose", say::find_the_fault()),
        ("take-apart", say::take_apart()),
        ("repair", say::repair()),
        ("add", say::do_more()),
    ]
}

fn ways() -> [(&'static str, &'static str); 5] {
    [
        ("phone", say::by_phone()),
        ("in-person", say::in_person()),
        ("message", say::by_message()),
        ("mail", say::by_mail()),
        ("signed", say::signed_paper()),
    ]
}

fn which_lines(order: &OrderView) -> Markup {
    html! {
        fieldset {
            legend { (say::for_which_complaints()) }
            p class="soft" { (say::none_ticked_means_all()) }
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
    use super::{steps, ways};
    use shop::record::v1::codes::{ConsentStepForm, WayForm};

    #[test]
    fn every_choice_on_the_page_is_one_the_record_knows() {
        for (code, _) in steps() {
            assert!(ConsentStepForm::from_word(code).is_some(), "{code}");
        }
        for (code, _) in ways() {
            assert!(WayForm::from_word(code).is_some(), "{code}");
        }
    }
}
