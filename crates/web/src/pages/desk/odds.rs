//! How sure a price is: the band of hours, what covers it how often, what drives it; and how
//! good the estimates were that were given.

use crate::State;
use crate::pages::{Shown, count, order_of, show};
use crate::tap::{Look, button, link, new, order_fact};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{OddsCurve, SpreadRow, Spreads, odds_curve, spreads, svg};
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::odds::{Score, Verdict};
use shop::odds_of::{Cover, MOST_SNAGS, OrderOdds, SNAG_MINUTES, odds_of, score};
use shop::view::OrderView;

const PHONE: f64 = 358.0;

/// What is asked beside the order.
#[derive(Debug, Deserialize)]
pub struct Asked {
    /// Snags that come for sure; those that are open, if it is not said.
    snags: Option<u32>,
}

pub async fn odds(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let content = match odds_of(visit.snap, order.number, asked.snags) {
            Ok(found) => {
                let without = (found.snags > 0)
                    .then(|| odds_of(visit.snap, order.number, Some(0)))
                    .transpose()?;
                page(&order, &found, without.as_ref())
            }
            Err(trouble) => not_yet(&order, &trouble),
        };
        Ok(Shown::of(&order, "How sure", content))
    })
    .await
}

fn not_yet(order: &OrderView, trouble: &Trouble) -> Markup {
    html! {
        h1 { "How sure is it?" }
        p class="wait gap" { (shop::say::capital(&trouble.what)) }
        p { (shop::say::capital(&trouble.mend)) }
        div class="presses low" { (link(Look::Confirm, "Price", "", &format!("/o/{}/price", order.number))) }
    }
}

fn page(order: &OrderView, found: &OrderOdds, without: Option<&OrderOdds>) -> Markup {
    let tax = if found.with_tax {
        "with tax"
    } else {
        "before tax"
    };
    html! {
        h1 { "How sure is it?" }
        p class="gap large" { (shop::say::capital(&found.likely)) }
        @if let Some(without) = without {
            p class="soft" {
                "Without the snag: " (without.likely)
                @if let Some(cover) = without.covers.last() { "; " (cover.amount) " covers it " (cover.often) }
            }
        }
        div class="columns" {
            div {
                h2 class="spread" { span { "What covers it" } span class="soft" { (tax) } }
                @for cover in &found.covers { (covers(order, cover)) }
                @if let Some(ceiling) = &found.ceiling {
                    div class="row" {
                        span class={ "what strong" @if ceiling.chance < 0.5 { " wait" } } {
                            "Agreed: covers it " (ceiling.often)
                        }
                        span class="number strong" { (ceiling.amount) }
                    }
                }
                (curve(found, tax))
            }
            div {
                (causes(found))
                (what_if(order, found))
            }
        }
        (given(order, found))
    }
}

/// One amount; pressing it asks for it.
fn covers(order: &OrderView, cover: &Cover) -> Markup {
    let to = format!("/o/{}/ask?sum={}", order.number, cover.amount);
    html! {
        a class="row" href=(to) {
            span class="what" {
                span class="strong line" { (shop::say::capital(&cover.often)) }
                span class="soft line" { (cover.hours) " hours · ask for it" }
            }
            span class="number strong" { (cover.amount) }
        }
    }
}

fn curve(found: &OrderOdds, tax: &str) -> Markup {
    let amounts = &found.quote.price.curve;
    let marked = found.quote.ceilings.iter().zip(&found.covers);
    let curve = OddsCurve {
        amounts: amounts.clone(),
        name: format!("price {tax}"),
        marked: marked
            .map(|(at, cover)| (at.amount.ceil(), format!("covers it {}", cover.often)))
            .collect(),
        ceiling: found.ceiling_amount,
    };
    html! { div class="gap" { (PreEscaped(svg(&odds_curve(&curve, PHONE)))) } }
}

fn causes(found: &OrderOdds) -> Markup {
    html! {
        h2 { "What drives it" }
        @for (words, share) in &found.causes {
            div class="row" { span class="what" { (shop::say::capital(words)) } span class="number" { (share) " %" } }
        }
        p class="soft gap" {
            "How much narrower it would be without. "
            @if found.stages == 0 { "No stage was timed here yet: this is the book with a wide doubt." }
            @else { "Learned from " (found.stages) " timed stages." }
        }
    }
}

fn what_if(order: &OrderView, found: &OrderOdds) -> Markup {
    let to = |snags: u32| format!("/o/{}/odds?snags={snags}", order.number);
    html! {
        h2 { "What if" }
        @if found.snags > 0 {
            a class="row" href=(to(found.snags - 1)) {
                span class="mark home" {}
                span class="what" {
                    span class="line" { @if found.snags == 1 { "One snag comes for sure" } @else { (found.snags) " snags come for sure" } }
                    span class="soft line" { "take one out, if its repair is on the price already" }
                }
            }
        }
        @if found.snags < MOST_SNAGS {
            a class="row" href=(to(found.snags + 1)) {
                span class="mark" {}
                span class="what" {
                    span class="line" { @if found.snags == 0 { "A snag comes" } @else { "One snag more" } }
                    span class="soft line" { (SNAG_MINUTES.low) " to " (SNAG_MINUTES.high) " minutes, likely " (SNAG_MINUTES.likely) }
                }
            }
        }
    }
}

/// The sentence for whoever is asked, and the tap that keeps what was said.
fn given(order: &OrderView, found: &OrderOdds) -> Markup {
    let mut fact: Value = found.fact.clone();
    fact["id"] = new("note");
    fact["item"] = Value::Null;
    fact["snag"] = Value::Null;
    let keep = order_fact(&order.order, json!({ "calculated": fact }));
    html! {
        p class="gap" { (found.sentence) }
        details id="working" {
            summary class="row" { span class="what strong" { "How it was found" } }
            (PreEscaped(found.quote.working.html()))
        }
        @if found.given.is_some() { p class="soft gap" { "An estimate was given and kept. The first one is scored when the vehicle has left." } }
        a class="row" href="/estimates" { span class="what strong" { "How good are our estimates?" } }
        form { div class="presses low" {
            (button(Look::Confirm, "Keep as told", "it is scored when the vehicle has left", &[keep], None))
        } }
    }
}

pub async fn estimates(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
) -> Response {
    show(state, headers, |visit| {
        let found = score(visit.snap)?;
        Ok(Shown::new(
            "Estimates",
            html! {
                h1 { "How good are our estimates?" }
                p class="soft gap" { "The first estimate kept on each order, against what it came to. None is worked out again." }
                (scored(&found.all))
                (reliability(&found.all))
                @for (title, groups) in [("By sort of work", &found.kinds), ("By who worked on it", &found.people)] {
                    @if groups.len() > 1 {
                        h2 { (title) }
                        @for (name, score) in groups {
                            h3 class="spread" { span { (shop::say::capital(name)) } span class="soft" { (count(score.quotes, "estimate", "estimates")) } }
                            (scored(score))
                        }
                    }
                }
                @for month in &found.months {
                    h2 class="spread" { span { (month.month) } span class="soft" { (month.score.quotes) } }
                    (scored(&month.score))
                }
            },
        ))
    })
    .await
}

/// What was said and how often it came so, on one line each: the line is where it truly lies,
/// as far as so many can tell.
fn reliability(score: &Score) -> Markup {
    const WIDE: f64 = 560.0;
    if matches!(score.verdict, Verdict::TooFew { .. }) {
        return html! {};
    }
    let rows = score.reliability.iter().map(|row| {
        #[expect(clippy::cast_precision_loss, reason = "some hundred estimates")]
        let share = 10.0 * row.under as f64 / row.quotes.max(1) as f64;
        SpreadRow {
            name: format!("said {:.0} of 10", 10.0 * row.said),
            words: format!("{share:.1} of 10 came to that or less"),
            values: (10.0 * row.low, share, 10.0 * row.high),
        }
    });
    let drawn = spreads(
        &Spreads {
            title: "What was said, and how often it came so".to_owned(),
            scale: "of 10".to_owned(),
            mark: None,
            rows: rows.collect(),
        },
        WIDE,
    );
    html! { (PreEscaped(svg(&drawn))) }
}

fn scored(score: &Score) -> Markup {
    let (class, verdict) = match score.verdict {
        Verdict::TooFew { quotes, needed } => (
            "soft",
            format!(
                "{quotes} {} so far: too few to judge, {needed} are needed.",
                if quotes == 1 { "estimate" } else { "estimates" }
            ),
        ),
        Verdict::Holds => ("yes", "Eight in ten were eight in ten.".to_owned()),
        Verdict::TooNarrow => (
            "wait",
            "Too narrow: more fell outside than was said.".to_owned(),
        ),
        Verdict::TooWide => (
            "wait",
            "Too wide: fewer fell outside than was said.".to_owned(),
        ),
    };
    let judged = !matches!(score.verdict, Verdict::TooFew { .. });
    html! {
        p class={ (class) " gap" } { (verdict) }
        @if judged {
            @for band in &score.bands {
                div class="row" {
                    span class="what" {
                        span class="line" { (tens(band.said)) " of 100 were said to lie within" }
                        span class="soft line" { (band.below) " came out below, " (band.above) " above" }
                    }
                    span class="number strong" { (band.inside) " of " (band.quotes) }
                }
            }
        }
    }
}

fn tens(share: f64) -> String {
    format!("{:.0}", 100.0 * share)
}
