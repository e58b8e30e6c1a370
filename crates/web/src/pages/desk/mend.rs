//! Putting right what was mistyped when a vehicle was taken in; an order opened by mistake.

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{
    Look, amount, button, changed, input, odometer, order_fact, order_request, required, text,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::repair::{CustomerId, Field, VehicleId};
use shop::view::OrderView;

/// A text as it reads now, and the commands that told it.
struct Now {
    text: String,
    by: Vec<String>,
}

/// A field of a form that mends a text, with the command that does.
struct Mended {
    name: &'static str,
    label: &'static str,
    hint: &'static str,
    must: bool,
    now: Now,
    command: Value,
}

impl Mended {
    fn field(&self) -> Markup {
        match self.must {
            true => required(self.name, self.label, self.hint, &self.now.text),
            false => input(self.name, self.label, self.hint, &self.now.text),
        }
    }
}

/// The texts of a customer that can be mended.
fn of_customer(visit: &Visit<'_>, id: &str) -> Result<Vec<Mended>, Trouble> {
    let customer = visit.snap.world().customer(&CustomerId::new(id))?;
    let in_lines = now(visit, customer.text(Field::Address));
    let parts = [
        (Field::Street, "street", "Street and house", "", false),
        (Field::Postcode, "postcode", "Postcode", "", false),
        (Field::Town, "town", "Town", "", false),
        (
            Field::Country,
            "country",
            "Country",
            "two letters, such as DE or US",
            false,
        ),
    ];
    let fields = [
        (Field::Name, "name", "Customer", "", true),
        (Field::Phone, "phone", "Telephone", "", false),
        (Field::Mail, "mail", "E-mail", "", false),
        (
            Field::Address,
            "address",
            "Address",
            "as it was told; what is told below stands in its place",
            false,
        ),
    ];
    // Who told their address in lines sees them until they tell it part by part.
    let told = |field: Field| field != Field::Address || !in_lines.text.is_empty();
    let fields = fields.into_iter().filter(|field| told(field.0));
    let each = fields.chain(parts).map(|(field, name, label, hint, must)| {
        let now = now(visit, customer.text(field));
        let mended = json!({ "field": name, "words": text(name), "after": now.by });
        let command =
            json!({ "stream": format!("customer:{id}"), "customer_fact": { "mended": mended } });
        Mended {
            name,
            label,
            hint,
            must,
            now,
            command,
        }
    });
    Ok(each.collect())
}

/// The texts of a vehicle that can be mended.
fn of_vehicle(visit: &Visit<'_>, id: &str) -> Result<Vec<Mended>, Trouble> {
    let vehicle = visit.snap.world().vehicle(&VehicleId::new(id))?;
    let fields = [
        (Field::Label, "label", "Vehicle", "maker, model, year", true),
        (Field::Plate, "plate", "Plate", "", false),
        (
            Field::Vin,
            "vin",
            "Vehicle identification number",
            "",
            false,
        ),
    ];
    let each = fields.into_iter().map(|(field, name, label, hint, must)| {
        let now = now(visit, vehicle.text(field));
        // How far the number could be read follows from the number.
        let mended =
            json!({ "field": name, "words": text(name), "vin_read": null, "after": now.by });
        let command =
            json!({ "stream": format!("vehicle:{id}"), "vehicle_fact": { "mended": mended } });
        Mended {
            name,
            label,
            hint,
            must,
            now,
            command,
        }
    });
    Ok(each.collect())
}

fn now(visit: &Visit<'_>, told: shop::repair::Told) -> Now {
    Now {
        text: visit.snap.texts().text_of(told.words).unwrap_or_default(),
        by: told
            .by
            .iter()
            .map(|command| command.as_str().to_owned())
            .collect(),
    }
}

/// One form for all of it, with one press: what was not changed is not told again.
fn form(mended: &[Mended], more: &Markup, more_commands: Vec<Value>) -> Markup {
    let mut commands: Vec<Value> = mended
        .iter()
        .map(|one| changed(one.name, one.command.clone()))
        .collect();
    commands.extend(more_commands);
    html! {
        form class="narrow" {
            (more)
            @for one in mended { (one.field()) }
            div class="presses" { (button(Look::Confirm, "Save", "", &commands, None)) }
        }
    }
}

/// What a customer is called and how they are reached.
pub fn customer_form(visit: &Visit<'_>, id: &str) -> Result<Markup, Trouble> {
    Ok(form(&of_customer(visit, id)?, &html! {}, Vec::new()))
}

/// What a vehicle is known by.
pub fn vehicle_form(visit: &Visit<'_>, id: &str) -> Result<Markup, Trouble> {
    Ok(form(&of_vehicle(visit, id)?, &html! {}, Vec::new()))
}

pub async fn correct(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let vehicle = order.row.vehicle_id.clone().unwrap_or_default();
        let customer = shop::view::customer_of_order(visit.snap, order.number).unwrap_or_default();
        let mut mended = of_customer(visit, &customer)?;
        mended.extend(of_vehicle(visit, &vehicle)?);
        let (more, commands) = of_the_job(&order, visit.road_unit());
        Ok(Shown::of(
            &order,
            "Edit details",
            html! {
                h1 { "Edit details" }
                (form(&mended, &more, commands))
                (by_mistake(&order))
            },
        ))
    })
    .await
}

/// The complaints and the odometer, with what mends them.
fn of_the_job(order: &OrderView, unit: &str) -> (Markup, Vec<Value>) {
    let line = |nth: usize| format!("complaint-{nth}");
    let reading = order.papers.odometer_in.as_deref().unwrap_or("");
    let fields = html! {
        @for (nth, told) in order.lines.iter().enumerate() {
            (required(&line(nth), "Complaint", "", &told.complaint))
        }
        (odometer("odometer", "Odometer on the way in", unit, reading))
    };
    let mut commands: Vec<Value> = order
        .lines
        .iter()
        .enumerate()
        .map(|(nth, told)| {
            let after = told.told_by.get("complaint").cloned().unwrap_or_default();
            let worded = json!({ "line": told.line, "text": "complaint", "words": text(&line(nth)), "after": after });
            changed(&line(nth), order_fact(&order.order, json!({ "line-worded": worded })))
        })
        .collect();
    commands.push(changed(
        "odometer",
        order_fact(
            &order.order,
            json!({ "odometer": { "reading": amount("odometer", unit), "at": "in" } }),
        ),
    ));
    (fields, commands)
}

fn by_mistake(order: &OrderView) -> Markup {
    let keys = order_fact(
        &order.order,
        json!({ "keys": { "step": "given-back", "words": null } }),
    );
    let void = order_request(&order.order, json!({ "void": { "words": text("words") } }));
    html! {
        h2 { "Opened by mistake?" }
        @if order.keys_here {
            form { div class="presses" { (button(Look::Plain, "Keys given back", "we still have them", &[keys], None)) } }
        }
        form class="narrow" {
            (required("words", "Why", "", ""))
            div class="presses" { (button(Look::Plain, "Void this order", "only while nothing was done on it", &[void], Some("/"))) }
        }
    }
}
