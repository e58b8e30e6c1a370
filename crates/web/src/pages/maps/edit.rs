//! Writing and mending a map: on the screen, and as text. Nothing is kept until it is
//! saved; every button but that one only changes the draft that the page carries along.

mod acts;
mod fields;
mod form;

use crate::State;
use crate::door::blocking;
use crate::pages::{Shown, Visit, show};
use crate::phrases::maps as say;
use axum::Form;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;
use shop::map::{Map, Trouble as Fault, Weight};
use shop::planning::{learned, map_id};
use shop::repair::MapId;
use shop::{KeptMap, Trouble};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A map as it is being changed.
#[derive(Debug, Clone, Default)]
struct Draft {
    id: String,
    /// The version it grew from; 0 for a new map.
    base: u32,
    text: String,
    /// The item whose fields are open.
    item: Option<String>,
    /// What the last button did.
    said: String,
    /// Whether something was done to it; a page that was only asked for brings no draft.
    touched: bool,
    /// The version that somebody else kept meanwhile, to be brought together with this.
    onto: Option<u32>,
    /// What was filled in last, to be offered again.
    last: BTreeMap<String, String>,
}

impl Draft {
    /// The version it would be kept as. The page says what it grew from, whatever it says.
    fn next(&self) -> u32 {
        self.base.saturating_add(1)
    }
}

/// A draft, what is wrong with it, and what others have kept meanwhile.
struct Looked<'a> {
    draft: &'a Draft,
    /// The map, as far as it can be read.
    map: Map,
    faults: Vec<Fault>,
    /// Of each fault, the item and the field it is about.
    places: Vec<Option<(String, String)>>,
    newest: Option<Arc<KeptMap>>,
    newest_by: String,
}

/// What the address asks for.
#[derive(Debug, Deserialize)]
pub struct Asked {
    vehicle: Option<String>,
    item: Option<String>,
    order: Option<u64>,
    version: Option<u32>,
    /// A kind of vehicle whose finished work is taken over.
    taught: Option<String>,
}

/// Asks what a new map is for.
pub async fn new(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |_| {
        let mut page = Shown::new(say::new_map(), html! {
            h1 { (say::a_new_map()) }
            p class="gap" { (say::what_a_map_says()) }
            form class="narrow" method="get" action="/maps/start" {
                (crate::tap::required("vehicle", say::which_vehicle(), say::which_vehicle_hint(), ""))
                div class="presses low" { button class="press confirm" type="submit" { (say::begin()) } }
            }
        });
        page.leads_to(say::maps(), "/maps");
        Ok(page)
    })
    .await
}

/// Leads to the map of a vehicle, there or new.
pub async fn start(Query(asked): Query<Asked>) -> Redirect {
    let vehicle = asked.vehicle.unwrap_or_default();
    let mut query = form_urlencoded::Serializer::new(String::new());
    query.append_pair("vehicle", vehicle.trim());
    Redirect::to(&format!(
        "/maps/{}/edit?{}",
        map_id(&vehicle),
        query.finish()
    ))
}

pub async fn edit(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let newest = visit.snap.map(&MapId::new(&id), None).ok();
        let vehicle = asked
            .vehicle
            .clone()
            .unwrap_or_else(|| id.replace('-', " "));
        let mut draft = Draft {
            text: match &newest {
                Some(kept) => kept.text.clone(),
                None => form::beginning(&vehicle),
            },
            base: newest.as_ref().map_or(0, |kept| kept.version),
            item: asked.item,
            id,
            ..Draft::default()
        };
        if let Some(number) = asked.order {
            from_order(visit, number, &mut draft)?;
        }
        if let Some(kind) = &asked.taught {
            let kind = shop::teaching::vehicle_kind(visit.snap, kind)?;
            let taught = shop::teaching::renewed(visit.snap, &kind)?;
            draft.said = say::orders_stand_in_it(kind.finished.len());
            draft.text = taught.text;
            draft.base = taught.from;
            draft.touched = true;
            draft.id = taught.map.as_str().to_owned();
        }
        page(visit, &draft)
    })
    .await
}

/// Takes over what an order has shown.
fn from_order(visit: &Visit<'_>, number: u64, draft: &mut Draft) -> Result<(), Trouble> {
    let order = shop::view::order(visit.snap, number)?;
    let taught = learned(visit.snap, number, &order.row.vehicle)?;
    draft.said = say::added_from_order(number, taught.things);
    draft.text = taught.text;
    draft.base = taught.from;
    draft.touched = true;
    draft.id = taught.map.as_str().to_owned();
    Ok(())
}

pub async fn change(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> Response {
    show(state, headers, move |visit| {
        let mut draft = acts::done(id, fields.into_iter().collect());
        both_together(visit, &mut draft)?;
        page(visit, &draft)
    })
    .await
}

/// Two people's edits over the version that both began from.
fn both_together(visit: &Visit<'_>, draft: &mut Draft) -> Result<(), Trouble> {
    let Some(onto) = draft.onto.take() else {
        return Ok(());
    };
    let id = MapId::new(&draft.id);
    let base = match draft.base {
        0 => String::new(),
        version => visit.snap.map(&id, Some(version))?.text.clone(),
    };
    let theirs = visit.snap.map(&id, Some(onto))?;
    let file = format!("{id}.toml");
    let Ok(both) = shop::map::reconcile(&file, &base, &draft.text, &theirs.text) else {
        draft.said = say::mend_the_text_first().to_owned();
        return Ok(());
    };
    draft.text = both.text;
    draft.base = onto;
    draft.touched = true;
    draft.said = match both.conflicts.as_slice() {
        [] => say::both_are_in_it().to_owned(),
        conflicts => {
            let each: Vec<String> = conflicts.iter().map(ToString::to_string).collect();
            say::both_but_for(each.join(". "))
        }
    };
    Ok(())
}

/// What is wrong with a text, as the part of a page that says so.
pub async fn check(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(fields): Form<Vec<(String, String)>>,
) -> Response {
    let service = state.service.clone();
    let draft = acts::done(String::new(), fields.into_iter().collect());
    let caller = crate::allowed::caller_of(&state, &headers);
    let told = blocking(move || {
        service.look(&caller, |snap| {
            let visit = Visit { snap, who: "" };
            Ok(form::faults(&looked(&visit, &draft)).into_string())
        })
    });
    match told.await {
        Ok(told) => ([(CONTENT_TYPE, "text/html; charset=utf-8")], told).into_response(),
        Err(trouble) => crate::door::answer(&trouble),
    }
}

/// The text of a version as a file.
pub async fn file(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    let service = state.service.clone();
    let map = MapId::new(&id);
    let caller = crate::allowed::caller_of(&state, &headers);
    let found = blocking(move || service.look(&caller, |snap| snap.map(&map, asked.version)));
    match found.await {
        Ok(kept) => attached(
            &format!("{}.toml", kept.id),
            "application/toml",
            kept.text.clone(),
        ),
        Err(trouble) => show(state, headers, move |_| Err(trouble)).await,
    }
}

/// A text that is saved as a file of this name.
pub(super) fn attached(name: &str, media: &str, text: String) -> Response {
    let headers = [
        (CONTENT_TYPE, media.to_owned()),
        (
            CONTENT_DISPOSITION,
            format!("attachment; filename=\"{name}\""),
        ),
    ];
    (headers, text).into_response()
}

impl Looked<'_> {
    /// Whether a plan can be made by it.
    fn is_good(&self) -> bool {
        self.faults
            .iter()
            .all(|fault| fault.weight != Weight::Error)
    }
}

fn looked<'a>(visit: &Visit<'_>, draft: &'a Draft) -> Looked<'a> {
    let (map, faults) = shop::map::look("line", &draft.text);
    let places = shop::map::placed(&draft.text, &faults);
    let newest = visit.snap.map(&MapId::new(&draft.id), None).ok();
    let newest_by = newest.as_ref().and_then(|kept| {
        let world = visit.snap.world();
        let people = world.shop.everyone();
        people
            .get(&kept.by.who)
            .map(|(name, _)| visit.snap.texts().text(*name))
    });
    Looked {
        draft,
        map,
        faults,
        places,
        newest,
        newest_by: newest_by.unwrap_or_else(|| say::somebody().to_owned()),
    }
}

fn page(visit: &Visit<'_>, draft: &Draft) -> Result<Shown, Trouble> {
    let looked = looked(visit, draft);
    let mut page = Shown::new(say::change_a_map(), content(&looked));
    match &looked.newest {
        Some(_) => page.leads_to(say::the_map(), &format!("/maps/{}", draft.id)),
        None => page.leads_to(say::maps(), "/maps"),
    }
    Ok(page)
}

fn content(looked: &Looked<'_>) -> Markup {
    let draft = looked.draft;
    let kept = looked
        .newest
        .as_ref()
        .is_some_and(|kept| kept.text == draft.text);
    html! {
        h1 { @if looked.map.vehicle.trim().is_empty() { (draft.id) } @else { (looked.map.vehicle) } }
        p class="soft gap" {
            @if kept { (say::as_version_has_it(draft.base)) }
            @else if draft.base == 0 { (say::new_nothing_kept()) }
            @else { (say::changed_from_version(draft.base)) }
        }
        @if !draft.said.is_empty() { p class="yes gap" role="status" { (draft.said) } }
        div data-unkept hidden {}
        div data-faults { (form::faults(looked)) }
        div class="columns" {
            div { (form::on_screen(looked)) }
            div { (form::listing(looked)) (form::as_text(looked, draft.touched && !kept)) }
        }
    }
}
