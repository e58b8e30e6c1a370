//! Putting right what was mistyped when a vehicle was taken in; an order opened by mistake.

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::desk as say;
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
        (Field::Street, "street", say::street(), "", false),
        (Field::Postcode, "postcode", say::postcode(), "", false),
        (Field::Town, "town", say::town(), "", false),
        (
            Field::Country,
            "country",
            say::country(),
            say::country_hint(),
            false,
        ),
    ];
    let fields = [
        (Field::Name, "name", say::customer(), "", true),
        (Field::Phone, "phone", say::telephone(), "", false),
        (Field::Mail, "mail", say::e_mail(), "", false),
        (
            Field::Address,
            "address",
            say::address(),
            say::address_as_told(),
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
        (
            Field::Label,
            "label",
            say::vehicle(),
            say::maker_model_year(),
            true,
        ),
        (Field::Plate, "plate", say::plate(), "", false),
        (Field::Vin, "vin", say::identification_number(), "", false),
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
            div class="presses" { (button(Look::Confirm, say::save(), "", &commands, None)) }
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
            say::edit_details(),
            html! {
                h1 { (say::edit_details()) }
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
            (required(&line(nth), say::complaint(), "", &told.complaint))
        }
        (odometer("odometer", say::odometer_on_the_way_in(), unit, reading))
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
        h2 { (say::opened_by_mistake()) }
        @if order.keys_here {
            form { div class="presses" { (button(Look::Plain, say::keys_given_back(), say::still_have_keys(), &[keys], None)) } }
        }
        form class="narrow" {
            (required("words", say::why(), "", ""))
            div class="presses" { (button(Look::Plain, say::void_this_order(), say::only_while_nothing_done(), &[void], Some("/"))) }
        }
    }
}
