//! What an order waits for, and when it comes.

use super::left::Around;
use crate::say::{Names, day_words};
use crate::view::{must_ask, parts, sublets};
use jiff::civil::Date;
use record::v1::codes::PartStepForm;
use repair::Order;
use rust_decimal::Decimal;
use stalls::{Spread, WaitsFor};

/// What is on its way or away, each with when it comes.
pub type Waits = Vec<(WaitsFor, String, Spread)>;

pub fn waits(around: &Around<'_>, order: &Order) -> Result<Waits, (String, &'static str)> {
    let names = Names::of(around.snap, around.snap.world(), order);
    let rules = around.snap.rules();
    let comes = |what: &str, due: Option<&String>| -> Result<Spread, (String, &'static str)> {
        let Some(day) = due.and_then(|due| due.parse::<Date>().ok()) else {
            return Err((format!("no day was told for {what}"), "parts"));
        };
        let spread = around.comes_on(day).filter(|_| day >= rules.today());
        spread.ok_or_else(|| {
            let day = day_words(&day.to_string());
            let why = format!("{what} was due on {day} and is not here: no new day was told");
            (why, "parts")
        })
    };
    let mut out = Vec::new();
    for part in parts(&names, order, &rules) {
        let has = |step| part.steps.get(&step).and_then(|count| count.parse().ok());
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
pub fn asks(around: &Around<'_>, order: &Order) -> Result<Option<Spread>, String> {
    if !must_ask(order, &around.snap.rules()) {
        return Ok(None);
    }
    let due = repair::answer_due(order).map(|at| around.calendar.minute(at));
    match due {
        Some(due) if due > around.now => Ok(Some(Spread::sure(due))),
        Some(_) => Err("the answer was due and did not come: nobody told when it comes".to_owned()),
        None => Err("it waits for a yes, and nobody told when the answer comes".to_owned()),
    }
}
