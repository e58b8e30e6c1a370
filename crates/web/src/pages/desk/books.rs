//! A month of money at the desk: what was written, what came in and how, the taxes, what is not
//! paid yet; each list as a file for whoever keeps the books.

use crate::State;
use crate::door::blocking;
use crate::layout::Part;
use crate::pages::desk::overview::{paid_by, paid_by_word};
use crate::pages::{Shown, show, show_anybody};
use crate::phrases::desk as say;
use crate::tap::{Look, button, chips, field, link, order_fact, when};
use axum::extract::{self, Path, Query};
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE, HeaderValue};
use axum::http::{HeaderMap, Uri};
use axum::response::{IntoResponse, Response};
use jiff::civil::Date;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::books::{Books, List, Unpaid, books};
use shop::record::v1::codes::PaidByForm;
use shop::say::{capital, day_words};
use shop::{Amount, Trouble};

/// Which month; the one that it is, if none is named.
#[derive(Debug, Deserialize)]
pub struct Asked {
    month: Option<String>,
}

/// The month's page.
pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let today = visit.snap.rules().today();
        let month = asked.month.unwrap_or_else(|| month_of(today));
        let found = books(visit.snap, &month)?;
        Ok(Shown::new(say::books(), content(&found, today)).of_part(Part::Shop))
    })
    .await
}

/// One of its lists as CSV.
pub async fn list(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    uri: Uri,
    Path(file): Path<String>,
) -> Response {
    let caller = crate::allowed::caller_of(&state, &headers);
    let service = state.service.clone();
    let query = uri.query().unwrap_or_default().to_owned();
    let made = blocking(move || {
        service.look(&caller, |snap| {
            let name = file.strip_suffix(".csv").unwrap_or(&file);
            let list = List::named(name)
                .ok_or_else(|| Trouble::not_found(say::no_list_called(format_args!("{name:?}"))))?;
            let asked = form_urlencoded::parse(query.as_bytes());
            let month = asked.into_iter().find(|(name, _)| name == "month");
            let month = month.map_or_else(
                || month_of(snap.rules().today()),
                |(_, month)| month.into_owned(),
            );
            let found = books(snap, &month)?;
            Ok((
                format!("{}-{}.csv", list.name(), found.month),
                list.csv(&found),
            ))
        })
    });
    match made.await {
        Ok((name, text)) => {
            let mut answer = text.into_response();
            let headers = answer.headers_mut();
            headers.insert(
                CONTENT_TYPE,
                HeaderValue::from_static("text/csv; charset=utf-8"),
            );
            headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
            // The month was read as one, so the name holds letters, figures and hyphens alone.
            if let Ok(place) = HeaderValue::from_str(&format!("attachment; filename=\"{name}\"")) {
                headers.insert(CONTENT_DISPOSITION, place);
            }
            answer
        }
        Err(trouble) => show_anybody(state, headers, move |_| Err(trouble)).await,
    }
}

fn month_of(day: Date) -> String {
    format!("{:04}-{:02}", day.year(), day.month())
}

/// The months beside one, as they are written; nothing beyond the years that a date can have.
fn beside(month: &str) -> Option<(String, String)> {
    let first: Date = format!("{month}-01").parse().ok()?;
    let before = first.yesterday().ok()?;
    let after = first.last_of_month().tomorrow().ok()?;
    Some((month_of(before), month_of(after)))
}

fn name_of(month: &str) -> String {
    let first: Option<Date> = format!("{month}-01").parse().ok();
    first.map_or_else(
        || month.to_owned(),
        |first| say::month_and_year(month_name(first.month()), first.year()),
    )
}

fn month_name(month: i8) -> &'static str {
    match month {
        1 => say::january(),
        2 => say::february(),
        3 => say::march(),
        4 => say::april(),
        5 => say::may(),
        6 => say::june(),
        7 => say::july(),
        8 => say::august(),
        9 => say::september(),
        10 => say::october(),
        11 => say::november(),
        _ => say::december(),
    }
}

fn name_of_list(list: List) -> &'static str {
    match list {
        List::Invoices => say::invoices(),
        List::Payments => say::payments(),
        List::Taxes => say::taxes(),
    }
}

fn content(found: &Books, today: Date) -> Markup {
    let to = |month: &str| format!("/shop/books?month={month}");
    html! {
        h1 { (name_of(&found.month)) }
        @if let Some((before, after)) = beside(&found.month) {
            p class="spread gap" {
                @if found.since.as_ref().is_some_and(|since| *since <= before) { a href=(to(&before)) { "← " (name_of(&before)) } }
                @if after <= month_of(today) { a href=(to(&after)) { (name_of(&after)) " →" } }
            }
        }
        div class="columns" {
            div { (invoiced(found)) (taxes(found)) }
            div { (came_in(found, today)) (unpaid(found)) }
        }
        (lists(found))
    }
}

fn row(what: &str, small: &str, amount: &Amount) -> Markup {
    html! {
        div class="row" {
            span class="what" { (what) @if !small.is_empty() { span class="soft line" { (small) } } }
            span class="number" { (amount) }
        }
    }
}

fn invoiced(found: &Books) -> Markup {
    html! {
        h2 class="spread" { span { (say::invoices()) } span class="soft" { (found.currency) } }
        @if found.written.is_empty() { p class="soft gap" { (say::none_written()) } }
        @for one in &found.written {
            a class="row" href=(format!("/order/{}", one.order)) {
                span class="what" {
                    span class="strong line" { @if one.number.is_empty() { (say::order_numbered(one.order)) } @else { (one.number) } " · " (one.customer) }
                    span class="soft line" { (day_words(&one.day)) @if let Some(of) = &one.of_invoice { (say::of_that_invoice(of)) } }
                }
                span class="number" { (one.gross) }
            }
        }
        @if !found.written.is_empty() {
            (row(say::sum_before_tax(), "", &found.net))
            (row(say::tax(), "", &found.tax))
            div class="row" { span class="what strong" { (say::total()) } span class="number strong" { (found.gross) } }
        }
    }
}

fn taxes(found: &Books) -> Markup {
    html! {
        @if !found.taxes.is_empty() {
            h2 { (say::taxes()) }
            @for tax in &found.taxes {
                (row(&format!("{} {} %", tax.name, tax.percent), &if tax.exempt { say::on_base_exempt(&tax.base) } else { say::on_base(&tax.base) }, &tax.tax))
            }
        }
    }
}

/// What came in, in which way; today's by itself, for who counts the till.
fn came_in(found: &Books, today: Date) -> Markup {
    let today = today.to_string();
    let of_today: Vec<_> = found
        .payments
        .iter()
        .filter(|one| one.day == today)
        .collect();
    html! {
        h2 { (say::came_in()) }
        @if found.by_way.is_empty() { p class="soft gap" { (say::nothing_was_paid()) } }
        @for (by, amount) in &found.by_way { (row(&way(*by), "", amount)) }
        @if !of_today.is_empty() {
            details id="today" open {
                summary class="row" { span class="strong" { (say::today()) } }
                @for one in of_today { (row(&format!("{} · {}", one.order, one.customer), &way(one.by), &one.amount)) }
            }
        }
        @if !found.payments.is_empty() {
            details id="payments" {
                summary class="row" { span class="strong" { (say::each_payment()) } }
                @for one in &found.payments { (row(&format!("{} · {}", one.order, one.customer), &format!("{}, {}", way(one.by), day_words(&one.day)), &one.amount)) }
            }
        }
    }
}

fn way(by: PaidByForm) -> String {
    capital(paid_by_word(by))
}

/// What is written and not paid, whenever it was; several are settled in one go.
fn unpaid(found: &Books) -> Markup {
    let commands: Vec<Value> = found
        .unpaid
        .iter()
        .enumerate()
        .flat_map(|(nth, one)| {
            paid(one)
                .into_iter()
                .map(move |paid| when(&format!("row-{nth}"), paid))
        })
        .collect();
    html! {
        h2 { (say::not_paid_yet()) }
        @if found.unpaid.is_empty() { p class="yes gap" { (say::every_invoice_paid()) } }
        @else {
            form {
                fieldset data-one-of=(say::tick_what_was_paid()) {
                    legend class="skip" { (say::what_was_paid()) }
                    @for (nth, one) in found.unpaid.iter().enumerate() {
                        label class="row" {
                            input type="checkbox" name=(format!("row-{nth}")) value="yes";
                            span class="what" {
                                span class="strong line" { (one.number) " · " (one.customer) }
                                span class="soft line" { (day_words(&one.day)) @if one.on_account { (say::is_on_account()) } }
                            }
                            span class="number" { (one.amount) }
                        }
                    }
                }
                (chips("by", say::paid_by(), &paid_by()[..4], "transfer"))
                div class="presses" { (button(Look::Plain, say::paid_as_ticked(), say::in_full(), &commands, None)) }
            }
        }
    }
}

/// The rest of an order comes in; what stood on account stands there no longer.
fn paid(one: &Unpaid) -> Vec<Value> {
    let paid = |amount: Amount, by: Value| {
        order_fact(
            &one.order,
            json!({ "paid": { "payer": one.payer, "amount": amount, "by": by, "deposit": false } }),
        )
    };
    let off = one
        .on_account
        .then(|| paid(one.amount.turned_round(), json!("on-account")));
    off.into_iter()
        .chain([paid(one.amount.clone(), field("by"))])
        .collect()
}

fn lists(found: &Books) -> Markup {
    html! {
        h2 { (say::for_bookkeeper()) }
        div class="presses even" {
            @for list in List::ALL {
                (link(Look::Plain, name_of_list(list), "CSV", &format!("/shop/books/{}.csv?month={}", list.name(), found.month)))
            }
        }
    }
}
