//! A plain model of what the desk sees to: what was agreed, priced, charged and paid, and
//! where the keys are. Whole sums of one payer, no tax.

use crate::model::Book;
use repair::{CommandId, Decision, Event, Fact, KeyStep, Recorded};
use std::collections::{BTreeMap, BTreeSet};

/// The desk's book.
pub struct Papers {
    /// The most that was agreed to.
    pub agreed: Option<i64>,
    /// What is on invoices. It stays there.
    invoiced: i64,
    /// What is asked for besides.
    pub open: i64,
    /// Whether everything is on an invoice.
    pub charged: bool,
    /// What was paid.
    pub paid: i64,
    /// Sets of keys that hang here.
    pub keys: i64,
}

impl Papers {
    pub fn of(book: &Book<'_>, heard: &[Recorded<Event>]) -> Self {
        let mut out = Self {
            agreed: None,
            invoiced: 0,
            open: 0,
            charged: false,
            paid: 0,
            keys: 0,
        };
        for event in heard {
            match &event.event {
                Event::Decision(Decision::Priced {
                    entries,
                    written_down,
                    ..
                }) => {
                    let sums: i64 = entries.iter().map(|entry| whole(&entry.each)).sum();
                    let off: i64 = written_down.values().map(whole).sum();
                    (out.open, out.charged) = (sums - off, false);
                }
                Event::Decision(Decision::WrittenDown { amount, .. }) => {
                    out.open -= whole(amount);
                }
                Event::Decision(Decision::Charged { .. }) => {
                    out.invoiced += out.open;
                    (out.open, out.charged) = (0, true);
                }
                _ => {}
            }
        }
        let mut yeses: BTreeMap<&str, i64> = BTreeMap::new();
        let mut passed: BTreeSet<&str> = BTreeSet::new();
        // Whoever saw an answer had seen what its author saw, also of one taken back since.
        let saw: BTreeMap<&str, &[CommandId]> = heard
            .iter()
            .filter_map(|event| match &event.event {
                Event::Fact(Fact::Consented { after, .. }) => {
                    Some((event.command.as_str(), after.as_slice()))
                }
                _ => None,
            })
            .collect();
        for (command, fact) in book.facts() {
            match fact {
                Fact::Paid { amount, .. } => out.paid += whole(amount),
                Fact::Keys { step, .. } => {
                    out.keys += match step {
                        KeyStep::Taken => 1,
                        KeyStep::GivenBack => -1,
                    };
                }
                Fact::Consented {
                    amount: Some(amount),
                    after,
                    ..
                } => {
                    yeses.insert(command, whole(amount));
                    let mut seen: Vec<&str> = after.iter().map(CommandId::as_str).collect();
                    while let Some(next) = seen.pop() {
                        if next != command && passed.insert(next) {
                            let far = saw.get(next).into_iter().copied().flatten();
                            seen.extend(far.map(CommandId::as_str));
                        }
                    }
                }
                _ => {}
            }
        }
        yeses.retain(|command, _| !passed.contains(command));
        out.agreed = yeses.into_values().min();
        out
    }

    /// What is asked for in all.
    pub fn net(&self) -> i64 {
        self.invoiced + self.open
    }

    /// How far the sum passes what was agreed.
    pub fn over(&self) -> Option<i64> {
        self.agreed
            .map(|agreed| self.net() - agreed)
            .filter(|over| *over > 0)
    }

    /// Everything on the desk's list by its code, and whether it holds the vehicle here.
    pub fn list(&self) -> BTreeMap<String, bool> {
        let rows = [
            ("no-consent:Customer", false, self.agreed.is_none()),
            ("over-ceiling:Customer", false, self.over().is_some()),
            ("not-charged", true, !self.charged),
            ("unpaid", true, self.paid < self.net()),
            ("keys-here", true, self.keys > 0),
        ];
        rows.into_iter()
            .filter(|(_, _, stands)| *stands)
            .map(|(key, holds, _)| (key.to_owned(), holds))
            .collect()
    }
}

fn whole(amount: &rust_decimal::Decimal) -> i64 {
    amount.normalize().to_string().parse().unwrap()
}
