//! Things that a newer table of the trade, or the shop's own words since, read otherwise than the
//! order does. They are offered; what an order rests on changes only when somebody takes it.

use crate::phrases::order as words;
use crate::say::sort_of_work;
use crate::snapshot::Snapshot;
use crate::trade_read::trade_of;
use crate::trouble::Trouble;
use record::form::Form;
use record::v1::facts::TradeForm;
use repair::{Account, Kind, Trade};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// One thing that would be read otherwise now.
#[derive(Debug, Clone, PartialEq)]
pub struct NewerView {
    /// What it is called.
    pub label: String,
    /// What would be otherwise, in words.
    pub says: Vec<String>,
    /// The fact that takes the newer reading over.
    pub fact: Value,
}

/// What would be read otherwise, for an order that is not over.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn newer(snap: &Snapshot<'_>, number: u64) -> Result<Vec<NewerView>, Trouble> {
    let world = snap.world();
    let Some(id) = world.order_numbered(number)? else {
        return Err(Trouble::not_found(words::no_order(number)));
    };
    let order = world.order(&id)?;
    let account = Account::of(&order);
    let table = snap.vocabulary();
    let stale =
        |trade: &Trade| (trade.table, trade.additions) < (table.version(), table.additions());
    let mut out = Vec::new();
    for item in account
        .items
        .values()
        .filter(|item| item.kind != Kind::Work)
    {
        let Some(known) = item.trade.as_ref().filter(|trade| stale(trade)) else {
            continue;
        };
        let label = snap.texts().text(item.label);
        let Some(now) = trade_of(&label, &table) else {
            continue;
        };
        let says = differences(known, &now);
        if says.is_empty() {
            continue;
        }
        let told = order.beside_moves().filter(|(_, filed)| {
            matches!(&filed.fact, repair::Fact::TradeTold { item: of, .. } if account.moves.name(of) == &item.id)
        });
        let after: Vec<&str> = told.map(|(command, _)| command.as_str()).collect();
        out.push(NewerView {
            fact: json!({ "trade-told": { "item": item.id.as_str(), "trade": TradeForm::of(&now), "after": after } }),
            label,
            says,
        });
    }
    Ok(out)
}

/// What one reading says and the other does not.
fn differences(known: &Trade, now: &Trade) -> Vec<String> {
    let mut out = Vec::new();
    match (known.is_known(), now.is_known()) {
        (false, true) => out.push(words::word_known_now().to_owned()),
        (true, false) => out.push(words::word_not_known_now().to_owned()),
        _ => {}
    }
    if known.system != now.system {
        out.push(words::belongs_to(crate::say::system_name(now.system)));
    }
    if known.safety != now.safety {
        out.push(match now.safety {
            true => words::people_are_hurt().to_owned(),
            false => words::stricter_no_more().to_owned(),
        });
    }
    let works = |trade: &Trade| -> BTreeSet<String> {
        trade
            .owes
            .iter()
            .map(|work| work.sort.as_str().to_owned())
            .collect()
    };
    let (before, after) = (works(known), works(now));
    let word = |sort: &String| sort_of_work(sort).unwrap_or_else(|| sort.replace('-', " "));
    out.extend(
        after
            .difference(&before)
            .map(|sort| words::owed_too(word(sort))),
    );
    out.extend(
        before
            .difference(&after)
            .map(|sort| words::not_owed(word(sort))),
    );
    if out.is_empty() && (&known.shuts, &known.owes) != (&now.shuts, &now.owes) {
        out.push(words::other_gates().to_owned());
    }
    out
}
