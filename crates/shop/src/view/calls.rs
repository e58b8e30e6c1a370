//! Whom to ring now and what is waited for, over all orders that are here.

use super::ask::{AskView, asks};
use super::planned::{kept, planned};
use super::row::{OrderRow, promised, row};
use super::{goods, story};
use crate::floor::days;
use crate::say::{Names, day_words};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::World;
use record::v1::codes::{PartStepForm, PayerForm};
use repair::{Order, Rules, papers};
use rust_decimal::Decimal;
use serde::Serialize;
use utoipa::ToSchema;

/// What sort of thing is to be seen to, the most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CallKind {
    /// It left, and something came in after.
    Left,
    /// Somebody has to be asked.
    Ask,
    /// What was promised will not be kept.
    Promise,
    /// It can be collected.
    Ready,
    /// Something is late.
    Late,
    /// Something is on its way, or away.
    Waits,
    /// An old part has to go back.
    Core,
}

impl CallKind {
    /// Whether somebody has to be rung now.
    #[must_use]
    pub fn rings(self) -> bool {
        self <= Self::Ready
    }
}

/// One thing to see to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct CallView {
    /// What sort.
    pub kind: CallKind,
    /// What to do, or what is waited for, in one sentence.
    pub what: String,
    /// The number to ring; empty if nobody is to be rung, or none is known.
    pub phone: String,
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// The customer.
    pub customer: String,
    /// What is left under the customer's ceiling, if there is one and it holds.
    pub left: Option<String>,
    /// The page of the order where it is seen to.
    pub page: String,
}

/// Everything to ring about or wait for, the most pressing first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn calls(snap: &Snapshot<'_>) -> Result<Vec<CallView>, Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    let mut out = Vec::new();
    for (number, id) in world.orders_here()? {
        let order = world.order(&id)?;
        if !papers::is_voided(&order) {
            out.extend(of_order(snap, world, &rules, &order, number)?);
        }
    }
    slipping(snap, &mut out)?;
    out.sort_by_key(|call| (call.kind, call.number));
    Ok(out)
}

/// Promises that the plan of the days ahead hardly keeps, where nobody is rung about them yet.
fn slipping(snap: &Snapshot<'_>, calls: &mut Vec<CallView>) -> Result<(), Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    for promise in planned(&*days(snap)?).promises {
        let rung = |call: &CallView| call.number == promise.number && call.kind.rings();
        let Some(hour) = promise.promised.filter(|_| promise.slips) else {
            continue;
        };
        let Some(id) = world.order_numbered(promise.number)? else {
            continue;
        };
        if calls.iter().any(rung) {
            continue;
        }
        let order = world.order(&id)?;
        let asks = asks(snap, world, &order, &rules)?;
        let customer = asks.iter().find(|ask| ask.payer == PayerForm::Customer);
        calls.push(CallView {
            kind: CallKind::Promise,
            what: format!(
                "Ring {}: promised for {hour}, {}; say {}",
                promise.customer,
                kept(promise.chance.unwrap_or_default()),
                promise.say
            ),
            phone: phone(customer, CallKind::Promise),
            number: promise.number,
            vehicle: promise.vehicle,
            customer: promise.customer,
            left: customer.and_then(|ask| ask.left.clone()),
            page: "promise".to_owned(),
        });
    }
    Ok(())
}

fn of_order(
    snap: &Snapshot<'_>,
    world: &World,
    rules: &Rules,
    order: &Order,
    number: u64,
) -> Result<Vec<CallView>, Trouble> {
    let names = Names::of(snap, world, order);
    let row = row(snap, &names, number)?;
    let asks = asks(snap, world, order, rules)?;
    let mut found = Vec::new();
    if row.handed_over {
        if !names.reading().alarms().is_empty() {
            let what = "Left, and something came in after: look, then ring".to_owned();
            found.push((CallKind::Left, what, String::new()));
        }
    } else {
        for ask in asks.iter().filter(|ask| ask.must) {
            found.push((CallKind::Ask, ask.sentence.clone(), "ask".to_owned()));
        }
        found.extend(promise(order, rules, &row));
        if row.word == "ready" {
            found.push((
                CallKind::Ready,
                ready(order, &row.customer),
                "hand-over".to_owned(),
            ));
        }
        found.extend(away(&names, order, rules));
    }
    let customer = asks.iter().find(|ask| ask.payer == PayerForm::Customer);
    Ok(found
        .into_iter()
        .map(|(kind, what, page)| CallView {
            kind,
            what,
            phone: phone(customer, kind),
            number,
            vehicle: row.vehicle.clone(),
            customer: row.customer.clone(),
            left: customer.and_then(|ask| ask.left.clone()),
            page,
        })
        .collect())
}

fn phone(customer: Option<&AskView>, kind: CallKind) -> String {
    customer
        .filter(|_| kind.rings())
        .map(|ask| ask.phone.clone())
        .unwrap_or_default()
}

/// A promise that is past, or that a part or sublet cannot keep.
fn promise(order: &Order, rules: &Rules, row: &OrderRow) -> Option<(CallKind, String, String)> {
    let at = promised(order)?;
    if row.word == "ready" {
        return None;
    }
    let hour = story::hour(rules, at);
    let open = row.open + row.inside;
    let what = if at <= rules.now {
        format!(
            "Ring {}: promised for {hour}, and it is not ready ({open} open)",
            row.customer
        )
    } else {
        let due = goods::last_due(order).filter(|due| *due > rules.day(at))?;
        format!(
            "Ring {}: promised for {hour}, but something comes only on {}",
            row.customer,
            day_words(&due.to_string())
        )
    };
    Some((CallKind::Promise, what, String::new()))
}

fn ready(order: &Order, customer: &str) -> String {
    let owes = papers::price(order)
        .and_then(|price| price.totals.get(&repair::price::Payer::Customer).cloned())
        .map_or(Decimal::ZERO, |totals| totals.gross);
    let paid = papers::paid(order, repair::price::Payer::Customer).unwrap_or_default();
    let balance = owes.saturating_sub(paid);
    if balance > Decimal::ZERO {
        return format!("Ring {customer}: ready to collect, {balance} to pay");
    }
    format!("Ring {customer}: ready to collect")
}

/// What is on its way to us, away from us, or has to go back.
fn away(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<(CallKind, String, String)> {
    let mut out = Vec::new();
    let due = |due: &Option<String>| {
        due.as_ref()
            .map_or(String::new(), |due| format!(", due {}", day_words(due)))
    };
    let kind = |late| {
        if late {
            CallKind::Late
        } else {
            CallKind::Waits
        }
    };
    for part in goods::parts(names, order, rules) {
        let has = |step| part.steps.contains_key(&step);
        let from = part
            .from
            .as_ref()
            .map_or(String::new(), |from| format!(" from {from}"));
        if has(PartStepForm::Ordered) && !has(PartStepForm::Received) && part.adrift != "0" {
            let word = if part.late { "Late" } else { "On its way" };
            let what = format!(
                "{word}: {} × {}{from}{}",
                part.quantity,
                part.label,
                due(&part.due)
            );
            out.push((kind(part.late), what, "parts".to_owned()));
        }
        if part.core.is_some() && part.old.is_none() && has(PartStepForm::Fitted) {
            let what = format!("Send the old one back as a core: {}", part.label);
            out.push((CallKind::Core, what, "parts".to_owned()));
        }
    }
    for sublet in goods::sublets(names, order, rules)
        .iter()
        .filter(|one| !one.back)
    {
        let what = format!(
            "{} at {}: {}, since {}{}",
            if sublet.late { "Late" } else { "Away" },
            sublet.to,
            sublet.what,
            sublet.since,
            due(&sublet.due)
        );
        out.push((kind(sublet.late), what, "parts".to_owned()));
    }
    out
}
