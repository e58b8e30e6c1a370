//! What the shop goes by when it prices: taxes, rates, what goes on top of costs, fees, coins,
//! and the jobs it keeps at a fixed price.

use super::setup::{of_shop, seen};
use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, Visit, show};
use crate::phrases::shop as say;
use crate::tap::{
    Look, button, chips, choices, field, figure, input, link, new, required, text, when,
};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Map, Value, json};
use shop::Amount;
use shop::record::v1::codes::{ByForm, ChargeForm, HoursByForm, PayerForm, RoundForm};
use shop::repair::price::{Band, Bands, Charge, FixedJob, Payer, TaxRule, Uplift};
use shop::repair::{JobId, MoneyRules, Settings, Units, Words};

type Said = fn() -> &'static str;

/// The sorts of charge as a price page calls them.
const CHARGES: [(Charge, Said); 8] = [
    (Charge::Labour, say::charge_labour),
    (Charge::Part, say::charge_parts),
    (Charge::Sublet, say::charge_sublet),
    (Charge::Supplies, say::charge_supplies),
    (Charge::Core, say::charge_cores),
    (Charge::Test, say::charge_tests),
    (Charge::Fee, say::charge_other),
    (Charge::Disposal, say::charge_disposal),
];

const PAYERS: [(Payer, Said); 3] = [
    (Payer::Customer, say::the_customer),
    (Payer::Warranty, say::a_warranty),
    (Payer::Goodwill, say::us_as_goodwill),
];

const ROUNDS: &[(&str, Said)] = &[
    ("half-up", say::half_up),
    ("half-down", say::half_down),
    ("half-even", say::half_to_even),
    ("down", say::round_down),
    ("up", say::round_up),
];

pub async fn prices(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let world = visit.snap.world();
        let Some(settings) = world.shop.settings() else {
            return Ok(Shown::new(
                say::prices(),
                html! { h1 { (say::prices()) } p class="gap" { (say::set_up_first()) } },
            ));
        };
        let rules = world.shop.money();
        Ok(Shown::new(
            say::prices(),
            html! {
                h1 { (say::what_prices_go_by()) }
                p class="gap" { (say::holds_from_now_on()) }
                div class="columns" {
                    div { (taxes(visit, settings)) }
                    div { (jobs(visit)) }
                }
                (money_rules(visit, settings, &rules))
                div class="presses low" { (link(Look::Plain, say::the_shop(), "", "/shop")) }
            },
        )
        .of_part(Part::Shop))
    })
    .await
}

fn said(amount: shop::measure::Decimal) -> String {
    amount.normalize().to_string()
}

/// A tick for one of several.
fn tick(name: &str, label: &str, on: bool) -> Markup {
    html! {
        label class="row" { input type="checkbox" name=(name) value="yes" checked[on]; span { (label) } }
    }
}

/// Every tax, with room for one more.
fn taxes(visit: &Visit<'_>, settings: &Settings) -> Markup {
    let after = seen(visit.snap.world().shop.settings_told());
    let rows: Vec<Option<&TaxRule>> = settings.taxes.iter().map(Some).chain([None]).collect();
    let sent: Vec<Value> = (0..rows.len()).map(tax_sent).collect();
    let units = match settings.units {
        Units::Metric => "metric",
        Units::Us => "us",
    };
    let set = of_shop(json!({ "set": { "after": after, "settings": {
        "name": settings.name.hex(), "rate": settings.rate.to_string(), "currency": settings.currency,
        "minor_digits": settings.minor_digits, "taxes": sent, "units": units, "zone": settings.zone } } }));
    html! {
        h2 { (say::taxes()) }
        form {
            @for (nth, tax) in rows.iter().enumerate() { (tax_row(nth, *tax)) }
            p class="soft" { (say::taxes_hint()) }
            div class="presses" { (button(Look::Plain, say::save_the_taxes(), "", &[set], None)) }
        }
    }
}

fn tax_sent(nth: usize) -> Value {
    let ticked = |what: &str, code: &str| when(&format!("tax-{what}-{code}-{nth}"), json!(code));
    let kinds: Vec<Value> = CHARGES
        .iter()
        .map(|(charge, _)| ticked("on", ChargeForm::word(*charge)))
        .collect();
    let payers: Vec<Value> = PAYERS
        .iter()
        .map(|(payer, _)| ticked("of", PayerForm::word(*payer)))
        .collect();
    when(
        &format!("tax-name-{nth}"),
        json!({
            "name": field(&format!("tax-name-{nth}")), "percent": field(&format!("tax-percent-{nth}")),
            "on": { "labour": false, "parts": false, "other": false }, "kinds": kinds, "payers": payers,
            "compound": { "$flag": format!("tax-compound-{nth}") },
            "included": { "$flag": format!("tax-included-{nth}") },
        }),
    )
}

fn tax_row(nth: usize, tax: Option<&TaxRule>) -> Markup {
    let name = tax.map_or("", |tax| tax.name.as_str());
    let percent = tax.map_or_else(String::new, |tax| said(tax.percent));
    let falls = |charge: Charge| {
        tax.is_none_or(|tax| {
            let payer = tax.payers.first().copied().unwrap_or(Payer::Customer);
            tax.falls_on(charge, payer)
        })
    };
    let asked =
        |payer: Payer| tax.is_none_or(|tax| tax.payers.is_empty() || tax.payers.contains(&payer));
    html! {
        details id=(format!("tax-{nth}")) {
            summary class="row" { span class="what" { @if tax.is_some() { (name) " " (phrases::number(&percent)) " %" } @else { (say::another_tax()) } } }
            (input(&format!("tax-name-{nth}"), say::name_of_the_tax(), say::name_of_the_tax_hint(), name))
            (figure(&format!("tax-percent-{nth}"), say::tax_rate(), "", &percent, false))
            fieldset {
                legend { (say::it_falls_on()) }
                @for (charge, label) in CHARGES {
                    (tick(&format!("tax-on-{}-{nth}", ChargeForm::word(charge)), label(), falls(charge)))
                }
            }
            fieldset data-one-of=(say::tick_who_is_asked()) {
                legend { (say::it_is_asked_of()) }
                @for (payer, label) in PAYERS {
                    (tick(&format!("tax-of-{}-{nth}", PayerForm::word(payer)), label(), asked(payer)))
                }
            }
            (tick(&format!("tax-compound-{nth}"), say::on_the_taxes_before(), tax.is_some_and(|tax| tax.compound)))
            (tick(&format!("tax-included-{nth}"), say::in_the_price_already(), tax.is_some_and(|tax| tax.included)))
        }
    }
}

/// Rates, what goes on top of costs, fees, rounding: one form.
fn money_rules(visit: &Visit<'_>, settings: &Settings, rules: &MoneyRules) -> Markup {
    let after = seen(visit.snap.world().shop.money_told());
    let rate_rows = rules.rates.len().saturating_add(2);
    let fee_rows = rules.disposal.len().saturating_add(2);
    let rates: Vec<Value> = (0..rate_rows)
        .map(|nth| {
            let name = |what: &str| format!("rate-{what}-{nth}");
            when(&name("hour"), json!({ "work": field(&name("work")), "grade": field(&name("grade")), "hour": field(&name("hour")) }))
        })
        .collect();
    let disposal: Vec<Value> = (0..fee_rows)
        .map(|nth| {
            let name = |what: &str| format!("fee-{what}-{nth}");
            when(
                &name("of"),
                json!({ "of": field(&name("of")), "each": field(&name("each")) }),
            )
        })
        .collect();
    let of: Vec<Value> = CHARGES
        .iter()
        .map(|(charge, _)| {
            let code = ChargeForm::word(*charge);
            when(&format!("supplies-of-{code}"), json!(code))
        })
        .collect();
    let told = of_shop(json!({ "money-told": { "after": after, "rules": {
        "rates": rates, "hours_by": field("hours-by"),
        "parts": bands_sent("parts", &rules.parts), "sublet": bands_sent("sublet", &rules.sublet),
        "supplies": when("supplies-percent", json!({ "percent": field("supplies-percent"), "of": of, "most": field("supplies-most") })),
        "disposal": disposal,
        "rounding": { "round": field("tax-round"), "by": field("tax-by") },
        "coin": when("coin", json!({ "smallest": field("coin"), "round": field("coin-round") })) } } }));
    html! {
        form {
            div class="columns" {
                div {
                    h2 { (say::labour()) }
                    p class="soft" { (say::own_rate_is(phrases::number(&said(settings.rate)))) }
                    @for nth in 0..rate_rows { (rate_row(nth, rules)) }
                    (chips("hours-by", say::hours_charged(), &[("book", say::by_book()), ("clock", say::by_clock()), ("lesser", say::the_lesser())], HoursByForm::word(rules.hours_by)))
                    (bands("parts", say::parts_on_top(), &rules.parts, settings))
                    (bands("sublet", say::sublet_on_top(), &rules.sublet, settings))
                }
                div {
                    h2 { (say::shop_supplies()) }
                    @let supplies = rules.supplies.as_ref();
                    (figure("supplies-percent", say::per_cent(), say::none_are_charged(), &supplies.map_or_else(String::new, |rule| said(rule.percent)), false))
                    fieldset {
                        legend { (say::of()) }
                        @for (charge, label) in CHARGES.iter().filter(|(charge, _)| *charge != Charge::Supplies) {
                            (tick(&format!("supplies-of-{}", ChargeForm::word(*charge)), label(), supplies.map_or(*charge == Charge::Labour, |rule| rule.of.contains(charge))))
                        }
                    }
                    (figure("supplies-most", say::most_on_an_order(), "", &supplies.and_then(|rule| rule.most).map_or_else(String::new, said), false))
                    h2 { (say::disposal()) }
                    @for nth in 0..fee_rows {
                        @let fee = rules.disposal.get(nth);
                        div class="fields" {
                            (input(&format!("fee-of-{nth}"), say::of_what(), "", fee.map_or("", |fee| fee.of.as_str())))
                            (figure(&format!("fee-each-{nth}"), say::for_one(), "", &fee.map_or_else(String::new, |fee| said(fee.each)), false))
                        }
                    }
                    h2 { (say::rounding()) }
                    (chips("tax-by", say::a_tax_is_rounded(), &[("total", say::once()), ("line", say::on_each_line())], ByForm::word(rules.rounding.by)))
                    (chips("tax-round", say::to_the_coin(), &choices(ROUNDS), RoundForm::word(rules.rounding.round)))
                    (figure("coin", say::smallest_coin(), say::smallest_coin_hint(), &rules.coin.map_or_else(String::new, |coin| said(coin.smallest)), false))
                    (chips("coin-round", say::cash_between_coins(), &choices(ROUNDS), rules.coin.map_or("half-up", |coin| RoundForm::word(coin.round))))
                }
            }
            div class="presses" { (button(Look::Confirm, say::save(), "", &[told], None)) }
        }
    }
}

fn rate_row(nth: usize, rules: &MoneyRules) -> Markup {
    let rate = rules.rates.get(nth);
    let text = |part: Option<&String>| part.map_or("", String::as_str).to_owned();
    html! {
        div class="fields" {
            (input(&format!("rate-work-{nth}"), say::work(), say::such_as_diagnosis(), &text(rate.and_then(|rate| rate.work.as_ref()))))
            (input(&format!("rate-grade-{nth}"), say::grade(), say::such_as_apprentice(), &text(rate.and_then(|rate| rate.grade.as_ref()))))
            (figure(&format!("rate-hour-{nth}"), say::an_hour(), "", &rate.map_or_else(String::new, |rate| said(rate.hour)), false))
        }
    }
}

fn bands_sent(of: &str, bands: &Bands) -> Value {
    let band = |nth: usize| {
        let name = |what: &str| format!("{of}-{what}-{nth}");
        let percent = field(&name("percent"));
        let uplift = json!({ "$map": name("is"), "to": { "markup": { "markup": percent }, "margin": { "margin": percent } } });
        when(
            &name("percent"),
            json!({ "up_to": field(&name("up-to")), "uplift": uplift }),
        )
    };
    let rows = bands.bands.len().saturating_add(2);
    json!({ "bands": (0..rows).map(band).collect::<Vec<_>>(), "least": field(&format!("{of}-least")) })
}

/// Bands of costs, each with what goes on top, and where the next band would sell for less.
fn bands(of: &str, title: &str, bands: &Bands, settings: &Settings) -> Markup {
    let rows = bands.bands.len().saturating_add(2);
    let row = |nth: usize| {
        let band: Option<&Band> = bands.bands.get(nth);
        let up_to = band
            .and_then(|band| band.up_to)
            .map_or_else(String::new, said);
        let (is, percent) = match band.map(|band| band.uplift) {
            Some(Uplift::Markup(percent)) => ("markup", said(percent)),
            Some(Uplift::Margin(percent)) => ("margin", said(percent)),
            None => ("markup", String::new()),
        };
        html! {
            div class="fields" {
                (figure(&format!("{of}-up-to-{nth}"), say::cost_up_to(), say::all_above(), &up_to, false))
                (figure(&format!("{of}-percent-{nth}"), say::per_cent(), "", &percent, false))
                (chips(&format!("{of}-is-{nth}"), say::it_is_a(), &[("markup", say::markup()), ("margin", say::margin())], is))
            }
        }
    };
    html! {
        h2 { (title) }
        p class="soft" { (say::markup_and_margin()) }
        @for nth in 0..rows { (row(nth)) }
        (figure(&format!("{of}-least"), say::least_on_top(), "", &bands.least.map_or_else(String::new, said), false))
        @for (end, at, above) in bands.dips(settings.minor_digits) {
            p class="wait gap" { (say::sells_for_less(Amount::from(end), Amount::from(at), Amount::from(above))) }
        }
    }
}

/// The fixed-price jobs, to be changed, dropped, or added to.
fn jobs(visit: &Visit<'_>) -> Markup {
    let world = visit.snap.world();
    html! {
        h2 { (say::jobs_at_a_fixed_price()) }
        @for (id, job) in world.shop.jobs() { (job_row(visit, id, job)) }
        details id="new-job" {
            summary class="row" { span class="what strong" { (say::another_job()) } }
            (job_form(visit, None, &json!([])))
        }
    }
}

fn job_row(visit: &Visit<'_>, id: &JobId, job: &FixedJob) -> Markup {
    let after = seen(visit.snap.world().shop.job_told(id));
    let name = visit.snap.texts().text(Words(job.name));
    let drop = of_shop(json!({ "job-dropped": { "id": id.as_str() } }));
    let settings = visit.snap.world().shop.settings();
    let price = shop::say::money(
        job.price,
        settings.map_or(2, |settings| settings.minor_digits),
    );
    html! {
        details id=(format!("job-{}", id.as_str())) {
            summary class="row" { span class="what" { (name) } span class="number" { (price) } }
            (job_form(visit, Some((id, job)), &json!(after)))
            form { div class="presses" { (button(Look::Plain, say::keep_it_no_more(), "", &[drop], None)) } }
        }
    }
}

fn job_form(visit: &Visit<'_>, known: Option<(&JobId, &FixedJob)>, after: &Value) -> Markup {
    let job = known.map(|(_, job)| job);
    let words = |label: [u8; 32]| visit.snap.texts().text(Words(label));
    let rows = job.map_or(4, |job| job.parts.len().saturating_add(2));
    let parts: Vec<Value> = (0..rows)
        .map(|nth| {
            let name = |what: &str| format!("part-{what}-{nth}");
            when(&name("name"), json!({ "name": text(&name("name")), "quantity": field(&name("quantity")), "each": field(&name("each")) }))
        })
        .collect();
    let id = known.map_or_else(|| new("job"), |(id, _)| json!(id.as_str()));
    let mut kept = Map::new();
    kept.insert("id".to_owned(), id);
    kept.insert("after".to_owned(), after.clone());
    kept.insert("job".to_owned(), json!({ "name": text("job"), "price": field("price"), "parts": parts, "in_one": { "$flag": "in-one" } }));
    let kept = of_shop(json!({ "job-kept": kept }));
    html! {
        form {
            (required("job", say::what_the_job_is_called(), say::such_as_oil_service(), &job.map_or_else(String::new, |job| words(job.name))))
            (figure("price", say::all_of_it(), "", &job.map_or_else(String::new, |job| job.price.to_string()), true))
            @for nth in 0..rows {
                @let part = job.and_then(|job| job.parts.get(nth));
                div class="fields" {
                    (input(&format!("part-name-{nth}"), say::part(), "", &part.map_or_else(String::new, |part| words(part.name))))
                    (figure(&format!("part-quantity-{nth}"), say::how_many(), "", &part.map_or_else(|| "1".to_owned(), |part| said(part.quantity)), false))
                    (figure(&format!("part-each-{nth}"), say::each(), say::within_the_price(), &part.map_or_else(String::new, |part| said(part.each)), false))
                }
            }
            p class="soft gap" { (say::rest_is_labour()) }
            (tick("in-one", say::charge_as_one_line(), job.is_some_and(|job| job.in_one)))
            div class="presses" { (button(Look::Plain, say::save_the_job(), "", &[kept], None)) }
        }
    }
}
