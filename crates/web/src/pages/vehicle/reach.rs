//! What a device takes along where the network does not reach: for each order in work the
//! stages that follow, each page as it will be shown when those before it were done as shown.
//!
//! What is done meanwhile is named by the device. A page that is shown before its moves are
//! made names moves that nobody has made yet: they stand under the names given here, stage by
//! stage and command by command, and the page's script puts in what they came to be called.

use super::stage::{Next, Turn, next};
use crate::State;
use crate::allowed::caller_of;
use crate::door::{answer, blocking};
use crate::pages::{Shown, Visit, no_order, order_of, page_text};
use crate::phrases::vehicle as say;
use crate::tap::{
    Look, button, input, needed_when, new, order_fact, photo_field, required, text, voice_field,
};
use axum::Json;
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Serialize;
use serde_json::{Value, json};
use shop::record::Stream;
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::repair::{OrderId, State as Stand};
use shop::view::{OrderView, PictureView, pictures};
use shop::{Device, Snapshot, Supposed, Trouble};
use std::time::{Duration, Instant};
use utoipa::ToSchema;

/// An order that a device takes along.
#[derive(Debug, Serialize, ToSchema)]
pub struct InWork {
    /// The number people call it by.
    number: u64,
    /// How much has happened on it: a copy of another count is old.
    seq: u64,
}

/// What is taken along of one order.
#[derive(Debug, Serialize, ToSchema)]
pub struct Bundle {
    number: u64,
    seq: u64,
    /// The stages in sequence; the last is where it ends.
    stages: Vec<Stage>,
    /// Whether these are all of them. Otherwise they took too long to make at once: asked for
    /// again, there are more.
    whole: bool,
    /// The page for whatever else came off.
    off: String,
    /// The page for whatever went wrong.
    snag: String,
    /// Photos of it that are taken along, the smallest first.
    photos: Vec<PictureView>,
    /// How many more there are for which there is no room.
    photos_left: usize,
}

/// One stage as it will be shown.
#[derive(Debug, Serialize, ToSchema)]
pub struct Stage {
    /// What tells it from others; the same as on its page.
    name: String,
    /// The page.
    page: String,
    /// What the commands of its large press are called in the pages after it.
    names: Vec<String>,
}

/// No job has more; what comes after them is fetched where the network reaches.
const MOST_STAGES: usize = 90;
/// So many bytes of photos are taken along of one order: some thirty as a phone takes them.
const MOST_OF_PHOTOS: u64 = 8 * 1024 * 1024;
/// Nobody waits for it, but the machine has others to answer.
const LONGEST: Duration = Duration::from_secs(20);

/// Orders in work, with how much has happened on each.
#[utoipa::path(
    get,
    path = "/api/reach",
    responses(
        (status = 200, description = "orders that a device takes along where the network does not reach", body = Vec<InWork>),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn in_work(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let caller = caller_of(&state, &headers);
    let found = blocking(move || {
        state.service.look(&caller, |snap| {
            let here = snap.world().orders_here()?.into_iter();
            let each = here.map(|(number, id)| {
                let seq = snap.world().seq(&Stream::Order(id))?;
                Ok(InWork { number, seq })
            });
            each.collect::<Result<Vec<_>, Trouble>>()
        })
    });
    match found.await {
        Ok(orders) => Json(orders).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// The pages of one order that a device takes along.
#[utoipa::path(
    get,
    path = "/api/orders/{number}/reach",
    params(("number" = u64, Path, description = "the number people call it by")),
    responses(
        (status = 200, description = "its stages, as they will be shown", body = Bundle),
        (status = 404, description = "there is no such order", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn bundle(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    let caller = caller_of(&state, &headers);
    let made = blocking(move || {
        let number: u64 = number.parse().map_err(|_| no_order(&number))?;
        state.service.look(&caller, |snap| bundle_of(snap, number))
    });
    match made.await {
        Ok(bundle) => Json(bundle).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

fn bundle_of(snap: &Snapshot<'_>, number: u64) -> Result<Bundle, Trouble> {
    let id = snap.world().order_numbered(number)?;
    let id = id.ok_or_else(|| Trouble::not_found(say::no_order(number)))?;
    let plain = |make: fn(&OrderView) -> (&'static str, Markup)| {
        page_text(snap, |visit| {
            let order = order_of(visit, &number.to_string())?;
            let (title, content) = make(&order);
            Ok(Shown::of(&order, title, content))
        })
    };
    let mut photos = pictures(snap, number)?;
    let photos_left = photos.split_off(fitting(&photos, MOST_OF_PHOTOS)).len();
    let (stages, whole) = stages(snap, number, &id)?;
    Ok(Bundle {
        photos,
        photos_left,
        number,
        seq: snap.world().seq(&Stream::Order(id.clone()))?,
        stages,
        whole,
        off: plain(came_off)?,
        snag: plain(went_wrong)?,
    })
}

/// How many of these, from the first, come to no more than so many bytes.
fn fitting(photos: &[PictureView], most: u64) -> usize {
    let mut all = 0_u64;
    let fits = photos.iter().take_while(|photo| {
        all = all.saturating_add(photo.bytes);
        all <= most
    });
    fits.count()
}

/// Does stage after stage as shown, in a world of its own, while there is time; and whether that
/// was all of them. Plans found on the way are kept, so that the next who ask get farther.
fn stages(snap: &Snapshot<'_>, number: u64, id: &OrderId) -> Result<(Vec<Stage>, bool), Trouble> {
    let begun = Instant::now();
    let mut supposed = Supposed::of(snap);
    let mut out = Vec::new();
    while out.len() < MOST_STAGES {
        if begun.elapsed() >= LONGEST {
            return Ok((out, false));
        }
        let (page, name, as_shown) = supposed.look(snap, |snap| shown(snap, number))?;
        let names: Vec<String> = as_shown.iter().map(|_| Device::name()).collect();
        let done = names.iter().zip(&as_shown);
        for (name, template) in done.filter(|(_, template)| !template.is_null()) {
            let Some(part) = as_pressed(template) else {
                continue;
            };
            let who = snap.caller().person.as_ref().map_or("", |who| who.as_str());
            let mut sent = json!({
                "command_id": name, "device": "reach", "device_seq": 1,
                "happened_at": snap.now().to_string(), "who": who,
                "stream": format!("order:{}", id.as_str()),
            });
            sent["fact"] = part["fact"].clone();
            supposed.done(snap, sent)?;
        }
        let ends = names.is_empty();
        out.push(Stage { name, page, names });
        if ends {
            break;
        }
    }
    Ok((out, true))
}

fn shown(snap: &Snapshot<'_>, number: u64) -> Result<(String, String, Vec<Value>), Trouble> {
    let mut told = (String::new(), Vec::new());
    let page = page_text(snap, |visit: &Visit<'_>| {
        let Next {
            shown,
            name,
            as_shown,
        } = next(visit, &number.to_string(), &Turn::default())?;
        told = (name, as_shown);
        Ok(shown)
    })?;
    Ok((page, told.0, told.1))
}

/// A command as its press makes it where nothing on the page was changed; nothing if it is
/// left out then.
fn as_pressed(template: &Value) -> Option<Value> {
    let holes = match template {
        Value::Object(holes) => holes,
        Value::Array(parts) => return Some(parts.iter().filter_map(as_pressed).collect()),
        other => return Some(other.clone()),
    };
    let named = |hole: &str| holes.get(hole).and_then(Value::as_str).unwrap_or("");
    let hole = holes.keys().find(|key| key.starts_with('$'));
    let Some(hole) = hole else {
        let parts = holes.iter();
        let parts = parts.filter_map(|(key, part)| Some((key.clone(), as_pressed(part)?)));
        return Some(Value::Object(parts.collect()));
    };
    match hole.as_str() {
        // Rows and positions are ticked; fields are empty.
        "$when" => {
            let field = named("$when");
            let ticked = field.starts_with("row-") || field.starts_with("at-");
            ticked.then(|| as_pressed(&holes["then"])).flatten()
        }
        "$new" => Some(json!(Device::name())),
        "$words" => Some(Device::words(named("$words"))),
        "$map" => {
            let to = holes.get("else").unwrap_or(&Value::Null);
            as_pressed(to)
        }
        "$flag" => Some(json!(false)),
        "$files" | "$numbers" => Some(json!([])),
        _ => Some(Value::Null),
    }
}

/// Whatever else came off, in plain words: what it is in the trade is read when it is sent.
fn came_off(order: &OrderView) -> (&'static str, Markup) {
    let declared = order_fact(
        &order.order,
        json!({ "declared": { "item": {
            "id": new("item"), "kind": "part", "system": "unknown", "zone": "unknown",
            "label": text("label"), "size": null, "pieces": [{ "position": 1, "length": null }],
            "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null,
        } } }),
    );
    let moved = order_fact(
        &order.order,
        json!({ "moved": { "stage": null, "moves": [{
            "item": new("item"), "at": [1], "after": [], "left": { "state": StateForm::of(&Stand::Off), "piece": "original" },
            "container": crate::tap::field("container"),
        }] } }),
    );
    let content = html! {
        h1 { (say::what_came_off()) }
        p class="gap" { (say::out_of_reach_came_off()) }
        form class="narrow" {
            (required("label", say::what(), say::such_as_clips_or_heat_shield(), ""))
            (input("container", say::stored_in(), "", say::tray_a()))
            div class="presses low" { (button(Look::Confirm, say::it_is_off(), "", &[declared, moved], Some(&format!("/o/{}/stage", order.number)))) }
        }
    };
    (say::off(), content)
}

/// Whatever went wrong or was found, with a photo.
fn went_wrong(order: &OrderView) -> (&'static str, Markup) {
    let found = order_fact(
        &order.order,
        json!({ "snag-found": {
            "snag": new("snag"), "item": null, "at": [], "what": "other", "sits": null,
            "words": text("words"), "photos": crate::tap::files("photos"),
            "voice": crate::tap::file("voice"), "moves": [],
        } }),
    );
    let content = html! {
        h1 { (say::what_went_wrong()) }
        p class="gap" { (say::out_of_reach_went_wrong()) }
        form class="narrow" {
            // Words are wanted where nothing was said.
            (needed_when("words", say::what_you_see(), say::such_as_bolt_snapped(), "", "voice "))
            (photo_field("photos"))
            (voice_field("voice"))
            div class="presses low" { (button(Look::Confirm, say::put_it_down(), "", &[found], Some(&format!("/o/{}/stage", order.number)))) }
        }
    };
    (say::snag(), content)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn so_many_photos_fit_from_the_first() {
        let photos: Vec<PictureView> = [3, 5, 8, 8]
            .into_iter()
            .map(|bytes| PictureView {
                bytes,
                file: String::new(),
            })
            .collect();
        for (most, fit) in [(0, 0), (2, 0), (3, 1), (8, 2), (15, 2), (16, 3), (100, 4)] {
            assert_eq!(fitting(&photos, most), fit, "{most}");
        }
    }
}
