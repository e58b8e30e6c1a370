//! How sure a price is: the band of hours, what covers it how often, what drives it; and how
//! good the estimates were that were given.

use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button, link, new, order_fact};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{OddsCurve, SpreadRow, Spreads, odds_curve, spreads, svg};
use maud::{Markup, PreEscaped, html};
use phrases::{Language, spoken};
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
        Ok(Shown::of(&order, say::how_sure_title(), content))
    })
    .await
}

fn not_yet(order: &OrderView, trouble: &Trouble) -> Markup {
    html! {
        h1 { (say::how_sure_is_it()) }
        p class="wait gap" { (shop::say::capital(&trouble.what)) }
        p { (shop::say::capital(&trouble.mend)) }
        div class="presses low" { (link(Look::Confirm, say::price(), "", &format!("/o/{}/price", order.number))) }
    }
}

fn page(order: &OrderView, found: &OrderOdds, without: Option<&OrderOdds>) -> Markup {
    let tax = if found.with_tax {
        say::with_tax()
    } else {
        say::before_tax()
    };
    html! {
        h1 { (say::how_sure_is_it()) }
        p class="gap large" { (shop::say::capital(&found.likely)) }
        @if let Some(without) = without {
            p class="soft" {
                (say::without_snag(&without.likely))
                @if let Some(cover) = without.covers.last() { (say::amount_covers(&cover.amount, &cover.often)) }
            }
        }
        div class="columns" {
            div {
                h2 class="spread" { span { (say::what_covers_it()) } span class="soft" { (tax) } }
                @for cover in &found.covers { (covers(order, cover)) }
                @if let Some(ceiling) = &found.ceiling {
                    div class="row" {
                        span class={ "what strong" @if ceiling.chance < 0.5 { " wait" } } {
                            (say::agreed_covers(&ceiling.often))
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
    let to = format!("/o/{}/ask?sum={}", order.number, cover.amount.exact());
    html! {
        a class="row" href=(to) {
            span class="what" {
                span class="strong line" { (shop::say::capital(&cover.often)) }
                span class="soft line" { (say::hours_ask(&cover.hours)) }
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
        name: say::price_taxed(tax),
        marked: marked
            .map(|(at, cover)| (at.amount.ceil(), say::covers_it(&cover.often)))
            .collect(),
        ceiling: found.ceiling_amount,
    };
    html! { div class="gap" { (PreEscaped(svg(&odds_curve(&curve, PHONE)))) } }
}

fn causes(found: &OrderOdds) -> Markup {
    html! {
        h2 { (say::what_drives_it()) }
        @for (words, share) in &found.causes {
            div class="row" { span class="what" { (shop::say::capital(words)) } span class="number" { (share) " %" } }
        }
        p class="soft gap" {
            (say::how_much_narrower())
            @if found.stages == 0 { (say::no_stage_timed()) }
            @else { (say::learned_from(found.stages)) }
        }
    }
}

fn what_if(order: &OrderView, found: &OrderOdds) -> Markup {
    let to = |snags: u32| format!("/o/{}/odds?snags={snags}", order.number);
    html! {
        h2 { (say::what_if()) }
        @if found.snags > 0 {
            a class="row" href=(to(found.snags - 1)) {
                span class="mark home" {}
                span class="what" {
                    span class="line" { @if found.snags == 1 { (say::one_snag_sure()) } @else { (say::snags_sure(found.snags)) } }
                    span class="soft line" { (say::take_one_out()) }
                }
            }
        }
        @if found.snags < MOST_SNAGS {
            a class="row" href=(to(found.snags + 1)) {
                span class="mark" {}
                span class="what" {
                    span class="line" { @if found.snags == 0 { (say::a_snag_comes()) } @else { (say::one_snag_more()) } }
                    span class="soft line" { (say::minutes_range(SNAG_MINUTES.low, SNAG_MINUTES.high, SNAG_MINUTES.likely)) }
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
            summary class="row" { span class="what strong" { (say::how_it_was_found()) } }
            (PreEscaped(found.quote.working.html()))
        }
        @if found.given.is_some() { p class="soft gap" { (say::estimate_was_kept()) } }
        a class="row" href="/estimates" { span class="what strong" { (say::how_good()) } }
        form { div class="presses low" {
            (button(Look::Confirm, say::keep_as_told(), say::scored_when_left(), &[keep], None))
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
            say::estimates(),
            html! {
                h1 { (say::how_good()) }
                p class="soft gap" { (say::what_is_scored()) }
                (scored(&found.all))
                (reliability(&found.all))
                @for (title, groups) in [(say::by_sort(), &found.kinds), (say::by_who(), &found.people)] {
                    @if groups.len() > 1 {
                        h2 { (title) }
                        @for (name, score) in groups {
                            h3 class="spread" { span { (shop::say::capital(name)) } span class="soft" { (say::estimates_count(score.quotes)) } }
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
            name: say::said_of_ten(format_args!("{:.0}", 10.0 * row.said)),
            words: say::came_to_less(tenths(share)),
            values: (10.0 * row.low, share, 10.0 * row.high),
        }
    });
    let drawn = spreads(
        &Spreads {
            title: say::said_and_came().to_owned(),
            scale: say::of_ten().to_owned(),
            mark: None,
            rows: rows.collect(),
        },
        WIDE,
    );
    html! { (PreEscaped(svg(&drawn))) }
}

fn scored(score: &Score) -> Markup {
    let (class, verdict) = match score.verdict {
        Verdict::TooFew { quotes, needed } => ("soft", say::too_few(quotes, needed)),
        Verdict::Holds => ("yes", say::eight_in_ten().to_owned()),
        Verdict::TooNarrow => ("wait", say::too_narrow().to_owned()),
        Verdict::TooWide => ("wait", say::too_wide().to_owned()),
    };
    let judged = !matches!(score.verdict, Verdict::TooFew { .. });
    html! {
        p class={ (class) " gap" } { (verdict) }
        @if judged {
            @for band in &score.bands {
                div class="row" {
                    span class="what" {
                        span class="line" { (say::said_within(tens(band.said))) }
                        span class="soft line" { (say::below_above(band.below, band.above)) }
                    }
                    span class="number strong" { (say::inside_of(band.inside, band.quotes)) }
                }
            }
        }
    }
}

/// With one figure behind the point, or the comma where one is written.
fn tenths(share: f64) -> String {
    let figures = format!("{share:.1}");
    match spoken() {
        Language::English => figures,
        Language::German => figures.replace('.', ","),
    }
}

fn tens(share: f64) -> String {
    format!("{:.0}", 100.0 * share)
}
