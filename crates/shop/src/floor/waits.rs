//! What an order waits for, and when it comes.

use super::left::Around;
use crate::amount::Amount;
use crate::phrases::floor as words;
use crate::say::in_each::InEach;
use crate::say::{Names, day_words};
use crate::view::{must_ask, parts, sublets};
use jiff::civil::Date;
use record::v1::codes::PartStepForm;
use repair::Order;
use rust_decimal::Decimal;
use stalls::{Spread, WaitsFor};

/// What is on its way or away, each with when it comes.
pub type Waits = Vec<(WaitsFor, String, Spread)>;

pub fn waits(around: &Around<'_>, order: &Order) -> Result<Waits, (InEach, &'static str)> {
    let names = Names::of(around.snap, around.snap.world(), order);
    let rules = around.snap.rules();
    let comes = |what: &str, due: Option<&String>| -> Result<Spread, (InEach, &'static str)> {
        let Some(day) = due.and_then(|due| due.parse::<Date>().ok()) else {
            return Err((InEach::of(|| words::no_day_told(what)), "parts"));
        };
        let spread = around.comes_on(day).filter(|_| day >= rules.today());
        spread.ok_or_else(|| {
            let why = InEach::of(|| words::was_due(what, day_words(&day.to_string())));
            (why, "parts")
        })
    };
    let mut out = Vec::new();
    for part in parts(&names, order, &rules) {
        let has = |step| part.steps.get(&step).and_then(Amount::number);
        let has = |step| -> Decimal { has(step).unwrap_or_default() };
        let ordered = has(PartStepForm::Ordered) - has(PartStepForm::Cancelled);
        if ordered > has(PartStepForm::Received) {
            let at = comes(&part.label, part.due.as_ref())?;
            out.push((WaitsFor::Part, part.label, at));
        }
    }
    for sublet in sublets(&names, order, &rules) {
        if !sublet.back {
            let at = comes(&sublet.what, sublet.due.as_ref())?;
            out.push((WaitsFor::Sublet, sublet.what, at));
        }
    }
    Ok(out)
}

/// When the customer answers, where somebody has to be asked.
pub fn asks(around: &Around<'_>, order: &Order) -> Result<Option<Spread>, InEach> {
    if !must_ask(order, &around.snap.rules()) {
        return Ok(None);
    }
    let due = repair::answer_due(order).map(|at| around.calendar.minute(at));
    match due {
        Some(due) if due > around.now => Ok(Some(Spread::sure(due))),
        Some(_) => Err(InEach::of(words::answer_did_not_come)),
        None => Err(InEach::of(words::waits_for_a_yes)),
    }
}
