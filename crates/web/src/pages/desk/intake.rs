//! Taking a vehicle in: one that is known in a few taps, a new one with what has to be known.

use super::papers::payers;
use crate::State;
use crate::pages::shop::address_fields;
use crate::pages::{Shown, Visit, show};
use crate::phrases::desk as say;
use crate::tap::{
    Look, amount, button, chips, field, input, needed_when, new, required, text, when, words,
};
use axum::extract::{self, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::offers::JobOffer;
use shop::repair::{CustomerId, VehicleId};
use shop::view::{
    KnownCustomer, KnownVehicle, PostalView, TakenIn, known_customer, known_vehicle, letterhead,
    offered,
};
use shop::{Trouble, view};

/// What is typed so far, and who or what was picked of what is known.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Typed {
    /// A vehicle that is known, by name in the record.
    of: Option<String>,
    /// A customer who is known, by name in the record.
    by: Option<String>,
    #[serde(default)]
    plate: String,
    #[serde(default)]
    vehicle: String,
    #[serde(default)]
    vin: String,
    #[serde(default)]
    customer: String,
    #[serde(default)]
    phone: String,
    #[serde(default)]
    street: String,
    #[serde(default)]
    postcode: String,
    #[serde(default)]
    town: String,
    #[serde(default)]
    country: String,
    #[serde(default)]
    complaint: String,
    #[serde(default)]
    odometer: String,
    /// When it comes, if it is not here.
    #[serde(default)]
    comes: String,
}

impl Typed {
    /// The address at which a vehicle or customer is picked, with what is typed of the job.
    fn pick(&self, name: &str, id: &str) -> String {
        let mut query = form_urlencoded::Serializer::new(String::new());
        query.append_pair(name, id);
        let own: &[(&str, &String)] = &[
            ("complaint", &self.complaint),
            ("odometer", &self.odometer),
            ("comes", &self.comes),
            ("plate", &self.plate),
            ("vehicle", &self.vehicle),
            ("vin", &self.vin),
        ];
        let kept = if name == "of" { &own[..3] } else { own };
        for (name, value) in kept.iter().filter(|(_, value)| !value.is_empty()) {
            query.append_pair(name, value);
        }
        format!("/new?{}", query.finish())
    }
}

pub async fn take_in(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(typed): Query<Typed>,
) -> Response {
    show(state, headers, move |visit| {
        let content = match (&typed.of, &typed.by) {
            (Some(id), _) => known(visit, &typed, &VehicleId::new(id.clone()))?,
            (None, Some(id)) => {
                let owner = known_customer(visit.snap, &CustomerId::new(id.clone()))?;
                unknown(visit, &typed, Some(&owner))?
            }
            (None, None) => unknown(visit, &typed, None)?,
        };
        Ok(Shown::new(say::check_in_a_vehicle(), content))
    })
    .await
}

/// A vehicle that was never here; its customer may have been.
fn unknown(
    visit: &Visit<'_>,
    typed: &Typed,
    owner: Option<&KnownCustomer>,
) -> Result<Markup, Trouble> {
    let unit = visit.road_unit();
    let (vehicles, customers) = match owner {
        Some(_) => (Vec::new(), Vec::new()),
        None => offered(
            visit.snap,
            &TakenIn {
                plate: typed.plate.clone(),
                vin: typed.vin.clone(),
                name: typed.customer.clone(),
                phone: typed.phone.clone(),
            },
        )?,
    };
    let theirs = match owner {
        Some(owner) => view::vehicles_of(visit.snap, &CustomerId::new(owner.customer.clone()))?,
        None => Vec::new(),
    };
    let jobs = shop::offers::jobs(visit.snap);
    Ok(html! {
        h1 { (say::check_in_a_vehicle()) }
        form method="get" action="/new" data-follows="known vin-says" {
            div class="columns" {
                div {
                    @match owner {
                        Some(owner) => {
                            input type="hidden" name="by" value=(owner.customer);
                            (customer_row(owner, &format!("/c/{}", owner.customer)))
                            @for vehicle in &theirs { (vehicle_row(vehicle, &typed.pick("of", &vehicle.vehicle), say::it_is_this_one())) }
                            a class="row" href="/new" { span class="what soft" { (say::somebody_else()) } }
                            h2 { (say::another_of_theirs()) }
                            (input("plate", say::plate(), "", &typed.plate))
                            (vehicle_fields(typed))
                        }
                        None => {
                            (input("plate", say::plate(), "", &typed.plate))
                            (required("customer", say::customer(), "", &typed.customer))
                            (input("phone", say::telephone(), "", &typed.phone))
                            div id="known" aria-live="polite" { (picks(typed, &vehicles, &customers)) }
                            (vehicle_fields(typed))
                            (where_they_live(visit, "", typed))
                        }
                    }
                }
                div {
                    (job_fields(typed, unit, None))
                    (agreed_now(&jobs))
                    div class="presses low" {
                        (button(Look::Confirm, say::check_it_in(), "", &taking_in(unit, owner, &jobs), Some("/order/{order}")))
                    }
                }
            }
        }
    })
}

/// An address, part by part; the country is the shop's until another is typed.
fn where_they_live(visit: &Visit<'_>, before: &str, typed: &Typed) -> Markup {
    let own = letterhead(visit.snap).postal.country;
    let country = if typed.country.is_empty() {
        own
    } else {
        typed.country.clone()
    };
    let now = PostalView {
        street: typed.street.clone(),
        postcode: typed.postcode.clone(),
        town: typed.town.clone(),
        country,
    };
    html! {
        details id=(format!("{before}address")) {
            summary class="row" { span class="what" { (say::address()) } span class="soft" { (say::for_papers_can_wait()) } }
            (address_fields(before, &now))
        }
    }
}

/// What may be meant by what is typed, each one tap away.
fn picks(typed: &Typed, vehicles: &[KnownVehicle], customers: &[KnownCustomer]) -> Markup {
    html! {
        @if !vehicles.is_empty() || !customers.is_empty() {
            h2 { (say::known_here()) }
            @for vehicle in vehicles { (vehicle_row(vehicle, &typed.pick("of", &vehicle.vehicle), "")) }
            @for customer in customers { (customer_row(customer, &typed.pick("by", &customer.customer))) }
        }
    }
}

/// A vehicle that was here before: what it is is known, and only the job is asked.
fn known(visit: &Visit<'_>, typed: &Typed, id: &VehicleId) -> Result<Markup, Trouble> {
    let unit = visit.road_unit();
    let vehicle = known_vehicle(visit.snap, id)?;
    let jobs = shop::offers::jobs(visit.snap);
    Ok(html! {
        h1 { (say::check_in_a_vehicle()) }
        form method="get" action="/new" {
            div class="columns" {
                div {
                    (vehicle_row(&vehicle, &format!("/v/{}", vehicle.vehicle), ""))
                    @if let Some(number) = vehicle.here {
                        a class="row" href=(format!("/o/{number}")) { span class="what wait" { (say::here_already(number)) } }
                    }
                    details id="owner" {
                        summary class="row" { span class="what" { (say::belongs_to_another()) } }
                        (input("new-owner", say::customer(), "", ""))
                        (input("new-phone", say::telephone(), "", ""))
                        (where_they_live(visit, "new-", &Typed::default()))
                    }
                    a class="row" href="/new" { span class="what soft" { (say::another_vehicle()) } }
                }
                div {
                    (job_fields(typed, unit, vehicle.last.as_ref().and_then(|(_, read)| read.as_deref())))
                    (chips("payer", say::who_pays(), &payers(), "customer"))
                    p class="soft" { (say::comeback_is_goodwill()) }
                    (agreed_now(&jobs))
                    div class="presses low" {
                        (button(Look::Confirm, say::check_it_in(), "", &taking_in_again(visit, &vehicle, unit, &jobs), Some("/order/{order}")))
                    }
                }
            }
        }
    })
}

/// A vehicle on one line, with whose it is and when it was here.
pub fn vehicle_row(vehicle: &KnownVehicle, to: &str, beside: &str) -> Markup {
    html! {
        a class="row" href=(to) {
            span class="what" {
                span class="strong line" { (joined(&[&vehicle.plate, &vehicle.label])) }
                span class="soft line" {
                    (joined(&[&vehicle.owner, &vehicle.phone]))
                    @if let Some((day, reading)) = &vehicle.last {
                        (say::last_here(day))
                        @if let Some(reading) = reading { ", " (reading) }
                    }
                }
            }
            @if let Some(number) = vehicle.here { span class="wait" { (say::here_order(number)) } }
            @else if !beside.is_empty() { span class="soft" { (beside) } }
        }
    }
}

/// A customer on one line.
pub fn customer_row(customer: &KnownCustomer, to: &str) -> Markup {
    html! {
        a class="row" href=(to) {
            span class="what" {
                span class="strong line" { (customer.name) }
                span class="soft line" { (joined(&[&customer.phone, &customer.address])) }
            }
            span class="soft" { (say::vehicles_count(customer.vehicles)) }
        }
    }
}

/// What there is of these, with a dot between.
pub fn joined(parts: &[&str]) -> String {
    let there: Vec<&str> = parts
        .iter()
        .copied()
        .filter(|part| !part.is_empty())
        .collect();
    there.join(" · ")
}

fn vehicle_fields(typed: &Typed) -> Markup {
    html! {
        (required("vehicle", say::vehicle(), say::maker_model_year(), &typed.vehicle))
        (input("vin", say::identification_number(), say::seventeen_characters(), &typed.vin))
        div id="vin-says" aria-live="polite" { @if !typed.vin.trim().is_empty() { (vin_word(&typed.vin)) } }
    }
}

/// What is asked about the job itself.
fn job_fields(typed: &Typed, unit: &str, last: Option<&str>) -> Markup {
    html! {
        (required("complaint", say::complaint(), say::in_customers_words(), &typed.complaint))
        details id="comes" open[!typed.comes.is_empty()] {
            summary class="row" { span class="what" { (say::it_comes_another_time()) } span class="soft" { (say::booked_by_phone()) } }
            label class="field" { span { (say::when_it_comes()) } input type="datetime-local" name="comes" value=(typed.comes); }
        }
        // Nobody reads the odometer of what is not here.
        (needed_when("odometer", say::odometer(), &crate::phrases::frame::odometer_in(unit), &typed.odometer, "comes "))
        @if let Some(last) = last { p class="soft" { (say::last_time(last)) } }
        (chips("keys", say::keys(), &[("taken", say::keys_taken()), ("", say::keys_not_here())], "taken"))
    }
}

/// What the number says of itself, and numbers that it may be meant as, each one tap away.
fn vin_word(vin: &str) -> Markup {
    let found = vin::inspect(vin);
    let likely = likely(&found);
    html! {
        @if found.valid {
            p class="yes" { (say::valid()) @if let Some(year) = found.model_year { (say::model_year(year)) }
                @if matches!(found.model_year_basis, vin::YearBasis::Doubted { .. }) { (say::doubtful()) }
            }
        } @else {
            p class="no" { (say::not_valid()) }
            @for problem in &found.problems { p { (shop::say::capital(&problem.to_string())) } }
            @if !likely.is_empty() {
                p { (say::one_of_these()) }
                div class="presses" {
                    @for number in &likely {
                        button class="press" type="button" data-fill="vin" data-value=(number) { (number) }
                    }
                }
            }
            p class="soft" { (say::kept_as_typed()) }
        }
    }
}

/// Whole numbers that a mistyped one may be meant as: letters that no number contains read as
/// what they look like, or else one character changed, or two neighbours.
fn likely(found: &vin::Inspection) -> Vec<String> {
    const MOST: usize = 6;
    let characters: Vec<char> = found.number.chars().collect();
    let mut looked = characters.clone();
    for problem in &found.problems {
        let change = match problem {
            vin::Problem::LookAlike {
                position, meant, ..
            } => Some((*position, *meant)),
            vin::Problem::NotDigit {
                position,
                meant: Some(meant),
                ..
            } => Some((*position, *meant)),
            _ => None,
        };
        if let Some((position, meant)) = change
            && let Some(place) = looked.get_mut(position - 1)
        {
            *place = meant;
        }
    }
    let mut out: Vec<String> = Vec::new();
    let mut add = |number: String| {
        if vin::inspect(&number).valid && !out.contains(&number) && out.len() < MOST {
            out.push(number);
        }
    };
    if looked != characters {
        add(looked.iter().collect());
    }
    // The check digit itself is as soon misread as another, and one look at it tells.
    let (at_check, elsewhere): (Vec<&vin::Change>, Vec<&vin::Change>) = found
        .suspects
        .iter()
        .partition(|change| change.position == vin::CHECK_DIGIT_POSITION);
    for change in at_check.into_iter().chain(elsewhere) {
        let mut one = characters.clone();
        if let Some(place) = one.get_mut(change.position - 1) {
            *place = change.character;
        }
        add(one.iter().collect());
    }
    for swap in &found.swaps {
        let mut one = characters.clone();
        if swap.position < one.len() {
            one.swap(swap.position - 1, swap.position);
        }
        add(one.iter().collect());
    }
    out
}

/// A fact or request of the order that is opened.
fn of_order(part: &str, content: Value) -> Value {
    json!({ "stream": { "$join": ["order:", new("order")] }, part: content })
}

/// What a form says of texts: those that are filled in.
fn texts(pairs: &[(&str, &str)]) -> Value {
    pairs
        .iter()
        .map(|(field, name)| ((*field).to_owned(), when(name, text(name))))
        .collect::<serde_json::Map<_, _>>()
        .into()
}

/// What is said of the job itself.
fn job(unit: &str, payer: Value) -> [Value; 4] {
    let here = |then: Value| json!({ "$when": "comes", "is": [""], "then": then });
    [
        of_order(
            "fact",
            json!({ "line-opened": { "line": new("line"), "complaint": text("complaint"), "payer": payer } }),
        ),
        when(
            "comes",
            of_order(
                "fact",
                json!({ "expected": { "at": { "$time": "comes" }, "after": [] } }),
            ),
        ),
        here(of_order(
            "fact",
            json!({ "odometer": { "reading": amount("odometer", unit), "at": "in" } }),
        )),
        here(when(
            "keys",
            of_order(
                "fact",
                json!({ "keys": { "step": "taken", "words": null } }),
            ),
        )),
    ]
}

/// A job at a fixed price that they agree to as they stand there.
fn agreed_now(jobs: &[JobOffer]) -> Markup {
    html! {
        @if !jobs.is_empty() {
            fieldset {
                legend { (say::agreed_here_and_now()) }
                label class="row" { input type="radio" name="job" value="" checked; span class="what" { (say::no_price_yet_choice()) } }
                @for (nth, job) in jobs.iter().enumerate() {
                    label class="row" {
                        input type="radio" name="job" value=(nth);
                        span class="what" { (job.name) }
                        span class="number" { (job.price) }
                    }
                }
            }
        }
    }
}

/// The price of the job that was picked, and their yes to it.
fn agreed(jobs: &[JobOffer], payer: &Value, person: &Value) -> Vec<Value> {
    let mut out = Vec::new();
    for (nth, job) in jobs.iter().enumerate() {
        let entries: Vec<Value> = job
            .entries
            .iter()
            .map(|entry| {
                let mut entry = entry.clone();
                entry["line"] = new("line");
                entry["payer"] = payer.clone();
                entry
            })
            .collect();
        let consent = json!({ "consented": {
            "step": "repair", "payer": payer, "lines": [], "agreed": true, "amount": job.price,
            "tax_included": false, "way": "in-person", "person": person, "said": null,
            "number_called": null, "signature": null, "after": [] } });
        for command in [
            of_order("request", json!({ "add-to-price": { "entries": entries } })),
            of_order("fact", consent),
        ] {
            out.push(json!({ "$when": "job", "is": [nth.to_string()], "then": command }));
        }
    }
    out
}

fn taking_in(unit: &str, owner: Option<&KnownCustomer>, jobs: &[JobOffer]) -> Vec<Value> {
    let join = |family: &str, name: &str| json!({ "$join": [family, new(name)] });
    let customer = owner.map_or_else(|| new("customer"), |owner| json!(owner.customer));
    let mut out = Vec::new();
    if owner.is_none() {
        out.push(
            json!({ "stream": join("customer:", "customer"), "customer_fact": { "declared": {
            "texts": texts(&[("name", "customer"), ("phone", "phone"), ("street", "street"), ("postcode", "postcode"),
                ("town", "town"), ("country", "country")]) } } }),
        );
    }
    // How far the number could be read follows from the number.
    out.push(
        json!({ "stream": join("vehicle:", "vehicle"), "vehicle_fact": { "declared": {
            "texts": texts(&[("label", "vehicle"), ("plate", "plate"), ("vin", "vin")]),
            "vin_read": "none-readable", "rust": null, "customer": customer } } }),
    );
    out.push(of_order(
        "request",
        json!({ "open": { "vehicle": new("vehicle"), "customer": customer } }),
    ));
    out.extend(job(unit, json!("customer")));
    let person = owner.map_or_else(|| text("customer"), |owner| words(&owner.name));
    out.extend(agreed(jobs, &json!("customer"), &person));
    out
}

fn taking_in_again(
    visit: &Visit<'_>,
    known: &KnownVehicle,
    unit: &str,
    jobs: &[JobOffer],
) -> Vec<Value> {
    let vehicle = known.vehicle.as_str();
    let told = visit.snap.world().vehicle(&VehicleId::new(vehicle));
    let after: Vec<String> = told.map_or_else(
        |_| Vec::new(),
        |told| {
            let told = told.owner_told().into_iter();
            told.map(|command| command.as_str().to_owned()).collect()
        },
    );
    // Whoever is typed as its new owner is a new customer, and the order is theirs.
    let opened = |customer: Value| {
        of_order(
            "request",
            json!({ "open": { "vehicle": vehicle, "customer": customer } }),
        )
    };
    let unless = |then: Value| json!({ "$when": "new-owner", "is": [""], "then": then });
    let mut out = vec![
        when(
            "new-owner",
            json!({ "stream": { "$join": ["customer:", new("customer")] }, "customer_fact": { "declared": {
                "texts": texts(&[("name", "new-owner"), ("phone", "new-phone"), ("street", "new-street"),
                    ("postcode", "new-postcode"), ("town", "new-town"), ("country", "new-country")]) } } }),
        ),
        when(
            "new-owner",
            json!({ "stream": format!("vehicle:{vehicle}"), "vehicle_fact": {
                "owner-told": { "customer": new("customer"), "after": after } } }),
        ),
        when("new-owner", opened(new("customer"))),
    ];
    let owner = known.customer.as_ref();
    out.extend(owner.map(|owner| unless(opened(json!(owner)))));
    out.extend(job(unit, field("payer")));
    let person = json!({ "$text": "new-owner", "or": known.owner });
    out.extend(agreed(jobs, &json!("customer"), &person));
    out
}
