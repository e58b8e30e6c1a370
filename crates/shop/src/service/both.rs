//! What two people decided about the same thing at the same time: both are shown.

use crate::phrases::service as words;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use crate::trouble::{Both, Trouble, TroubleKind};
use repair::price::{Ceiling, Clash, Entry, Totals};
use repair::{Order, Reason, Refusal, Words, papers};
use rust_decimal::Decimal;

/// A refusal that only means that somebody else was quicker, as a conflict.
pub(super) fn conflict(snap: &Snapshot<'_>, order: &Order, refusal: &Refusal) -> Option<Trouble> {
    let names = Names::of(snap, snap.world(), order);
    let both: Vec<Both> = match refusal {
        Refusal::PriceChanged { clashes, .. } => clashes
            .iter()
            .map(|clash| clashed(snap, order, clash))
            .collect(),
        Refusal::SumChanged(sums) => vec![Both {
            what: words::what_payer_pays(say::payer_name(sums.payer)),
            yours: sums.seen.as_ref().map(|seen| sum(order, seen, sums.agreed)),
            now: Some(sum(order, &sums.now, Some(sums.ceiling))),
        }],
        Refusal::FigureChanged { seen, now } => vec![figure(&names, seen, now)],
        _ => return None,
    };
    let what = match refusal {
        Refusal::PriceChanged { by, .. } => {
            let rules = snap.rules();
            let mut decided = order.decisions().iter().rev();
            let who = decided
                .find(|decided| decided.command == *by)
                .map(|decided| {
                    let hour = crate::view::hour_of(&rules, decided.stamp.at);
                    words::by_whom_when(names.person(&decided.stamp.who), hour)
                });
            words::price_changed(who.unwrap_or_default())
        }
        other => say::refusal(other),
    };
    let mut trouble = Trouble::new(
        TroubleKind::Conflict,
        words::the_order(),
        what,
        words::look_at_both(),
    );
    trouble.reasons = both.iter().map(said).collect();
    trouble.both = Some(both.into());
    Some(trouble)
}

/// One thing and both sides of it, in a line.
fn said(both: &Both) -> String {
    let side = |side: &Option<String>| {
        let side = side.clone();
        side.unwrap_or_else(|| words::not_there().to_owned())
    };
    words::you_and_now(&both.what, side(&both.yours), side(&both.now))
}

fn clashed(snap: &Snapshot<'_>, order: &Order, clash: &Clash) -> Both {
    let digits = papers::minor_digits(order);
    let any = clash
        .yours
        .as_ref()
        .or(clash.theirs.as_ref())
        .or(clash.before.as_ref());
    let label = any.and_then(|entry| entry.label);
    let side = |entry: &Option<Entry>| entry.as_ref().map(|entry| counted(entry, digits));
    Both {
        what: label.map_or_else(
            || words::entry_without_words().to_owned(),
            |label| snap.texts().text(Words(label)),
        ),
        yours: side(&clash.yours),
        now: side(&clash.theirs),
    }
}

/// `3 × 10.00 = 30.00`.
fn counted(entry: &Entry, digits: u32) -> String {
    let amount = repair::price::amount(entry, digits)
        .map_or_else(|_| say::too_large().to_owned(), |sum| sum.to_string());
    let counted = format!(
        "{} × {} = {amount}",
        entry.quantity.round_dp(4).normalize(),
        entry.each
    );
    say::figures(&counted)
}

fn sum(order: &Order, totals: &Totals, agreed: Option<Ceiling>) -> String {
    let digits = papers::minor_digits(order);
    let money = |amount: Decimal| say::money(amount, digits);
    let with_tax = agreed.is_some_and(|ceiling| ceiling.tax_included);
    let agreed = agreed.map_or_else(
        || words::nothing_agreed().to_owned(),
        |ceiling| words::so_much_agreed(money(ceiling.amount)),
    );
    match with_tax {
        true => words::sum_with_tax(money(totals.gross), agreed),
        false => words::sum_before_tax(money(totals.net), agreed),
    }
}

fn figure(names: &Names<'_>, seen: &str, now: &Reason) -> Both {
    Both {
        what: names.reason(now),
        yours: Some(seen)
            .filter(|seen| !seen.is_empty())
            .map(str::to_owned),
        now: Some(now.figure.clone()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_sides_are_in_one_line() {
        let both = Both {
            what: "Gasket".into(),
            yours: Some("3 × 10 = 30.00".into()),
            now: None,
        };
        assert_eq!(said(&both), "Gasket: you 3 × 10 = 30.00, now not there");
    }
}
