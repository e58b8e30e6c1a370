//! The pages. Each is a function from what is true now to markup.

pub mod bench;
pub mod desk;
mod file;
mod maps;
pub mod people;
mod shop;
mod stuck;
mod teaching;
pub mod vehicle;

pub use self::shop::record::{Keeper, Kept, Keys, LastBackup};
pub use self::vehicle::snag_found::{GRID_PX, GRID_STEPS};
use crate::State;
use crate::door::{blocking, status};
use crate::layout::{Frame, Part, page};
use crate::phrases::frame as say;
use ::shop::view::{self, OrderView};
use ::shop::{Caller, Snapshot, Trouble};
use axum::Router;
use axum::extract;
use axum::http::header::{COOKIE, LOCATION, SET_COOKIE};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;

/// What every page is made from.
pub struct Visit<'a> {
    /// The shop as it is at this moment, for who asks.
    pub snap: &'a Snapshot<'a>,
    /// The person, by name in the record.
    pub who: &'a str,
}

impl Visit<'_> {
    /// The unit of an odometer in this shop.
    pub fn road_unit(&self) -> &'static str {
        match ::shop::mending::customary(self.snap.world()) {
            ::shop::measure::Customary::Us => "mi",
            ::shop::measure::Customary::Metric => "km",
        }
    }
}

/// What a page comes to.
pub struct Shown {
    title: String,
    here: (String, String),
    part: Option<Part>,
    content: Markup,
}

impl Shown {
    /// A page that leads back to the floor.
    pub fn new(title: impl Into<String>, content: Markup) -> Self {
        Self {
            title: title.into(),
            here: (say::floor().to_owned(), "/".to_owned()),
            part: None,
            content,
        }
    }

    /// The same, as the first page of a part of the shop.
    #[must_use]
    pub fn of_part(mut self, part: Part) -> Self {
        self.part = Some(part);
        self
    }

    /// Leads back elsewhere than to the floor.
    pub fn leads_to(&mut self, name: &str, address: &str) {
        self.here = (name.to_owned(), address.to_owned());
    }

    /// A page of an order, which leads back to it.
    pub fn of(order: &OrderView, title: &str, content: Markup) -> Self {
        let content = match &order.unread {
            Some(unread) => html! { (stuck::banner(unread)) (content) },
            None => content,
        };
        Self {
            title: format!("{} · {title}", order.number),
            here: (
                format!("{} · {}", order.number, order.row.vehicle),
                format!("/o/{}", order.number),
            ),
            part: None,
            content,
        }
    }
}

/// All pages.
pub fn routes() -> Router<State> {
    Router::new()
        .merge(bench::routes())
        .merge(desk::routes())
        .merge(maps::routes())
        .merge(people::routes())
        .merge(shop::routes())
        .merge(teaching::routes())
        .merge(vehicle::routes())
        .route("/file/{id}", get(file::file))
}

/// The pages of one order that follow from its record alone, and from who looks.
pub fn of_orders() -> Router<State> {
    Router::new()
        .merge(desk::of_orders())
        .merge(vehicle::of_orders())
}

/// A page that is not there.
pub async fn nowhere(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |_| {
        Err(Trouble::not_found(say::no_such_page()))
    })
    .await
}

/// Answers with a page, or with the way to the shop's set-up or the list of people.
pub async fn show(
    state: State,
    headers: HeaderMap,
    make: impl FnOnce(&Visit<'_>) -> Result<Shown, Trouble> + Send + 'static,
) -> Response {
    answer(state, headers, true, make).await
}

/// The same for a page that needs no person yet.
pub async fn show_anybody(
    state: State,
    headers: HeaderMap,
    make: impl FnOnce(&Visit<'_>) -> Result<Shown, Trouble> + Send + 'static,
) -> Response {
    answer(state, headers, false, make).await
}

async fn answer(
    state: State,
    headers: HeaderMap,
    needs_person: bool,
    make: impl FnOnce(&Visit<'_>) -> Result<Shown, Trouble> + Send + 'static,
) -> Response {
    let who = cookie(&headers, "who");
    let made = blocking(move || {
        let caller = state.service.caller(who.as_deref(), "page")?;
        state
            .service
            .look(&caller, |snap| answered(snap, &caller, needs_person, make))
    });
    match made.await {
        Ok(Made::Page(markup, status)) => (status, markup).into_response(),
        Ok(Made::Elsewhere(to)) => (StatusCode::SEE_OTHER, [(LOCATION, to)]).into_response(),
        Err(trouble) => bare(&trouble),
    }
}

fn answered(
    snap: &Snapshot<'_>,
    caller: &Caller,
    needs_person: bool,
    make: impl FnOnce(&Visit<'_>) -> Result<Shown, Trouble>,
) -> Result<Made, Trouble> {
    let people = snap.world().shop.people();
    let person = caller.person.as_ref();
    let known = person.and_then(|person| people.get_key_value(person));
    let (who, who_name) = known.map_or(("", String::new()), |(person, (name, _))| {
        (person.as_str(), snap.texts().text(*name))
    });
    let set_up = snap.world().shop.settings().is_some() && !people.is_empty();
    if needs_person && !set_up {
        return Ok(Made::Elsewhere("/setup"));
    }
    if needs_person && who.is_empty() {
        return Ok(Made::Elsewhere("/who"));
    }
    let (shown, status) = match make(&Visit { snap, who }) {
        Ok(shown) => (shown, StatusCode::OK),
        Err(trouble) => (trouble_page(&trouble), status(&trouble)),
    };
    let settings = snap.world().shop.settings();
    let shop = settings.map(|settings| snap.texts().text(settings.name));
    let frame = Frame {
        title: &shown.title,
        shop: shop.as_deref().unwrap_or("buttonup"),
        who,
        who_name: &who_name,
        position: snap.world().position,
        here: shown.here.clone(),
        part: shown.part,
    };
    Ok(Made::Page(page(&frame, &shown.content), status))
}

/// A page as it would be sent to who looks, from what is looked at.
pub fn page_text(
    snap: &Snapshot<'_>,
    make: impl FnOnce(&Visit<'_>) -> Result<Shown, Trouble>,
) -> Result<String, Trouble> {
    match answered(snap, snap.caller(), true, make)? {
        Made::Page(markup, _) => Ok(markup.into_string()),
        Made::Elsewhere(_) => Err(Trouble::not_found(say::nobody_is_signed_in())),
    }
}

/// A page about trouble that is nobody's.
fn bare(trouble: &Trouble) -> Response {
    let mut answer = bare_page(trouble_page(trouble));
    *answer.status_mut() = status(trouble);
    answer
}

/// What went wrong, as a page of nobody's.
pub fn trouble_answer(trouble: &Trouble) -> Response {
    bare(trouble)
}

/// A page for whoever is nobody here yet.
pub fn bare_page(shown: Shown) -> Response {
    let frame = Frame {
        title: &shown.title,
        shop: "buttonup",
        who: "",
        who_name: "",
        position: 0,
        here: shown.here.clone(),
        part: None,
    };
    page(&frame, &shown.content).into_response()
}

enum Made {
    Page(Markup, StatusCode),
    Elsewhere(&'static str),
}

/// The one page for whatever went wrong, with ways out.
fn trouble_page(trouble: &Trouble) -> Shown {
    Shown::new(
        say::trouble(),
        html! {
            h1 { (::shop::say::capital(&trouble.what)) }
            @for reason in &trouble.reasons { p class="gap" { (reason) } }
            p class="gap" { (::shop::say::capital(&trouble.mend)) }
            p class="soft gap" { (say::where_it_is(&trouble.place)) }
            div class="presses low" {
                a class="press confirm" href="/" { (say::to_the_floor()) }
                a class="press" href="/find" { (say::find_an_order()) }
            }
        },
    )
}

/// What stands in an address where an order's number should be.
pub fn no_order(number: &str) -> Trouble {
    let number = ::shop::say::shortened(number);
    Trouble::not_found(say::no_orders_number(format!("{number:?}")))
}

/// An order by the number in the address.
pub fn order_of(visit: &Visit<'_>, number: &str) -> Result<Arc<OrderView>, Trouble> {
    let number = number.parse().map_err(|_| no_order(number))?;
    view::order(visit.snap, number)
}

/// The value of a cookie.
pub fn cookie(headers: &HeaderMap, name: &str) -> Option<String> {
    let all = headers.get(COOKIE)?.to_str().ok()?;
    all.split(';')
        .filter_map(|pair| pair.trim().split_once('='))
        .find(|(key, _)| *key == name)
        .map(|(_, value)| value.to_owned())
}

/// Sends the browser elsewhere with the person remembered.
pub fn remember(who: &str, to: &str) -> Response {
    let cookie = format!("who={who}; Path=/; SameSite=Strict; Max-Age=31536000; HttpOnly");
    (
        StatusCode::SEE_OTHER,
        [(LOCATION, to.to_owned()), (SET_COOKIE, cookie)],
    )
        .into_response()
}
