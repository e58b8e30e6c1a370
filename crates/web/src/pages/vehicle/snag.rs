//! From a snag that was found to a sound joint: what is not known is asked, the ways are
//! ranked, one is taken, its steps are done, and the snag is at its end.

mod chosen;
mod getting_out;
mod put_right;
mod questions;
mod take;
mod ways;

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::vehicle as say;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use put_right::put_right;
use shop::Trouble;
use shop::calculators::Asked;
use shop::calculators::threads::{hole, told};
use shop::mending::{Fields, known, ways};
use shop::odds_of::{OrderOdds, odds_of};
use shop::record::v1::codes::{KindForm, SitsForm, SnagIsForm};
use shop::view::{ItemView, MendingView, OrderView, mending};

pub async fn snag(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, id)): Path<(String, String)>,
    Query(query): Query<Fields>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let found = mending(visit.snap, order.number, &id)?;
        let page = content(visit, &order, &found, query)?;
        let page = html! { (page) @if found.resolved.is_none() { (what_it_does(visit, &order)) } };
        Ok(Shown::of(&order, say::snag(), page))
    })
    .await
}

/// What the open snags do to hours and price: as it is likely now, and as it was without.
fn what_it_does(visit: &Visit<'_>, order: &OrderView) -> Markup {
    let sure = |snags: Option<u32>| odds_of(visit.snap, order.number, snags).ok();
    let (Some(now), Some(before)) = (sure(None), sure(Some(0))) else {
        return html! {};
    };
    if now.snags == 0 {
        return html! {};
    }
    let prices = visit.snap.caller().sees_prices();
    let covers = |odds: &OrderOdds| {
        let most = odds.covers.last().filter(|_| prices);
        most.map_or_else(String::new, |cover| {
            say::covers_it(&cover.amount, &cover.often)
        })
    };
    html! {
        section {
            h2 { (say::what_it_does_to_the_job()) }
            div class="row" { span class="what" { (say::now_it_is()) (now.likely) span class="soft line" { (covers(&now)) } } }
            div class="row" { span class="what soft" { (say::without_it()) (before.likely) span class="soft line" { (covers(&before)) } } }
            @if prices { a class="row" href=(format!("/o/{}/odds", order.number)) { span class="what strong" { (say::how_sure()) } } }
        }
    }
}

/// What the page stands on.
struct Sheet<'a> {
    order: &'a OrderView,
    found: &'a MendingView,
    item: Option<&'a ItemView>,
}

impl Sheet<'_> {
    /// A snag that names nothing may be a fastener's.
    fn is_of_fasteners(&self) -> bool {
        self.item
            .is_none_or(|item| item.kind == KindForm::Fasteners)
    }

    fn path(&self) -> String {
        format!("/o/{}/snag/{}", self.order.number, self.found.snag)
    }

    /// How a stub sits, in the calculator's word; nothing where there is none.
    fn stub(&self) -> Option<&'static str> {
        let sits = match self.found.sits {
            Some(SitsForm::Proud) => Some("proud"),
            Some(SitsForm::Flush) => Some("flush"),
            Some(SitsForm::Below) => Some("below"),
            None => None,
        };
        sits.filter(|_| self.found.what == SnagIsForm::Snapped)
    }
}

fn content(
    visit: &Visit<'_>,
    order: &OrderView,
    found: &MendingView,
    query: Fields,
) -> Result<Markup, Trouble> {
    let item = found
        .item
        .as_ref()
        .and_then(|id| order.items.iter().find(|item| item.item == *id));
    let sheet = Sheet { order, found, item };
    let again = query.contains_key("again");
    if let Some(choice) = found
        .choice
        .as_ref()
        .filter(|_| !again || found.resolved.is_some())
    {
        return Ok(chosen::chosen(&sheet, choice));
    }
    if found.resolved.is_some() {
        return Ok(over(&sheet));
    }
    if let Some(fails) = getting_out::fails(&sheet) {
        return Ok(getting_out::getting_out(&sheet, fails, &query));
    }
    if !is_of_a_thread(&sheet) {
        return Ok(html! {
            h1 class="no" { (shop::say::capital(&found.text)) }
            (about(&sheet))
            (put_right(order, found))
        });
    }
    let (shop, rate, digits) = {
        let world = visit.snap.world();
        let settings = world.shop.settings();
        (
            known(world),
            settings.map(|settings| settings.rate).unwrap_or_default(),
            settings.map_or(2, |settings| settings.minor_digits),
        )
    };
    let mut asked = Asked::new(fields_of(found, query), shop.clone());
    asked.complete(hole::BOLT);
    asked.complete(hole::HOLE);
    if asked.some("asked").is_some() && asked.troubles.is_empty() {
        let fields = asked.fields();
        match ways(fields, sheet.stub(), &shop.planning, shop.customary) {
            Ok(all) => {
                let money = ways::Money { rate, digits };
                return Ok(ways::ways(&sheet, fields, &all, &money, &shop));
            }
            Err(trouble) => told(&mut asked, &trouble, hole::SHOWN),
        }
    }
    asked.set("stands", sheet.stub().unwrap_or("none"));
    Ok(questions::questions(&sheet, &asked))
}

/// What was written in the address over what the item says.
fn fields_of(found: &MendingView, query: Fields) -> Fields {
    let mut fields = if query.contains_key("asked") {
        Fields::new()
    } else {
        found.known.clone()
    };
    fields.extend(query);
    // What the system says stands, whatever an address claims.
    if let Some(joint) = found.known.get("joint") {
        fields.insert("joint".to_owned(), joint.clone());
    }
    fields.retain(|_, text| !text.trim().is_empty());
    fields
}

/// Whether the snag is one of a thread, for which ways can be found.
fn is_of_a_thread(sheet: &Sheet<'_>) -> bool {
    let of_fasteners = sheet.is_of_fasteners();
    of_fasteners && matches!(sheet.found.what, SnagIsForm::Snapped | SnagIsForm::Stripped)
}

fn about(sheet: &Sheet<'_>) -> Markup {
    html! {
        p class="soft gap" { (say::found_by()) (sheet.found.found) }
        @if let Some(words) = &sheet.found.words { p { (say::quoted(words)) } }
        (crate::tap::spoken(sheet.found.voice.as_ref()))
    }
}

/// A snag that ended without a way of the calculator.
fn over(sheet: &Sheet<'_>) -> Markup {
    html! {
        h1 { (shop::say::capital(&sheet.found.text)) }
        (about(sheet))
        @if let Some((how, by)) = &sheet.found.resolved {
            p class="yes gap" { (say::was_put_right()) (chosen::how(*how)) }
            p class="soft" { (by) }
        }
    }
}
