//! The price on a paper: labour, parts, everything else, and what it all comes to.

use super::words::{nought, sum};
use crate::engine::column::{Cell, Column, Kept, Side};
use crate::engine::lines::{bold, plain};
use shop::record::v1::codes::{ChargeForm, PayerForm};
use shop::view::{InvoiceView, LineView, OrderView, PriceEntryView, ShareView};

/// What is listed apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    Labour,
    Parts,
    Other,
}

impl Sort {
    pub const ALL: [Self; 3] = [Self::Labour, Self::Parts, Self::Other];

    pub fn name(self) -> &'static str {
        match self {
            Self::Labour => "Labour",
            Self::Parts => "Parts",
            Self::Other => "Other",
        }
    }

    fn of(charge: ChargeForm) -> Self {
        match charge {
            ChargeForm::Labour | ChargeForm::Test => Self::Labour,
            ChargeForm::Part | ChargeForm::Supplies => Self::Parts,
            ChargeForm::Sublet | ChargeForm::Core | ChargeForm::Fee | ChargeForm::Disposal => {
                Self::Other
            }
        }
    }

    fn columns(self) -> Vec<Kept> {
        let fixed = |head, width_mm, side| Kept {
            head,
            width_mm: Some(width_mm),
            side,
        };
        let open = |head| Kept {
            head,
            width_mm: None,
            side: Side::Left,
        };
        let amount = fixed("Amount", 24.0, Side::Right);
        match self {
            Self::Labour => vec![
                open("Work"),
                fixed("Hours", 20.0, Side::Right),
                fixed("An hour", 22.0, Side::Right),
                amount,
            ],
            Self::Parts => vec![
                fixed("Number", 27.0, Side::Left),
                open("Part"),
                fixed("Count", 18.0, Side::Right),
                fixed("Each", 20.0, Side::Right),
                amount,
            ],
            Self::Other => vec![
                open("What"),
                fixed("Count", 18.0, Side::Right),
                fixed("Each", 20.0, Side::Right),
                amount,
            ],
        }
    }
}

/// The entries of one payer: those of an invoice, or those of the price as it stands.
pub fn entries<'a>(
    order: &'a OrderView,
    payer: PayerForm,
    invoice: Option<&'a InvoiceView>,
) -> Vec<&'a PriceEntryView> {
    let price = order.price.iter();
    let all: Vec<&PriceEntryView> = match invoice {
        Some(invoice) => invoice.entries.iter().collect(),
        None => price.flat_map(|price| &price.entries).collect(),
    };
    all.into_iter()
        .filter(|entry| entry.payer == payer)
        .collect()
}

/// The entries of a sort, as a table; by the order's lines, where there are several.
pub fn table(column: &mut Column<'_>, order: &OrderView, sort: Sort, all: &[&PriceEntryView]) {
    let of_sort: Vec<&PriceEntryView> = all
        .iter()
        .copied()
        .filter(|entry| Sort::of(entry.charge) == sort)
        .collect();
    let groups = grouped(order, &of_sort);
    let several = groups.len() > 1;
    let columns = sort.columns();
    for (nth, (name, entries)) in groups.into_iter().enumerate() {
        if several {
            if nth > 0 {
                column.keep_not();
                column.gap(5.0);
            }
            column.text(&[bold(name)]);
            column.keep();
        }
        let rows: Vec<Vec<Cell>> = entries
            .iter()
            .map(|entry| row(order, sort, entry))
            .collect();
        column.table(&columns, &rows);
    }
}

/// Whether there is any entry of a sort.
pub fn has(sort: Sort, all: &[&PriceEntryView]) -> bool {
    all.iter().any(|entry| Sort::of(entry.charge) == sort)
}

/// The entries by the line they belong to, in the order's sequence; what belongs to none comes last.
fn grouped<'a>(
    order: &OrderView,
    all: &[&'a PriceEntryView],
) -> Vec<(String, Vec<&'a PriceEntryView>)> {
    let of = |line: Option<&LineView>| -> Vec<&'a PriceEntryView> {
        let known = |entry: &&PriceEntryView| {
            order
                .lines
                .iter()
                .find(|line| entry.line.as_deref() == Some(&line.line))
        };
        let same = |entry: &&PriceEntryView| {
            known(entry).map(|line| &line.line) == line.map(|line| &line.line)
        };
        all.iter().copied().filter(same).collect()
    };
    let lines = order
        .lines
        .iter()
        .map(|line| (line.complaint.clone(), of(Some(line))));
    let rest = ("For all of it".to_owned(), of(None));
    lines
        .chain([rest])
        .filter(|(_, entries)| !entries.is_empty())
        .collect()
}

fn row(order: &OrderView, sort: Sort, entry: &PriceEntryView) -> Vec<Cell> {
    let amount = Cell::text(sum(&entry.amount));
    let bare = entry.charge == ChargeForm::Test && entry.quantity == "1";
    let (quantity, each) = if bare {
        (String::new(), String::new())
    } else {
        (entry.quantity.clone(), sum(&entry.each))
    };
    let label = Cell {
        runs: vec![plain(named(entry))],
        ..Cell::default()
    };
    let rest = [label, Cell::text(quantity), Cell::text(each), amount];
    match sort {
        Sort::Parts => [Cell::text(number(order, entry))]
            .into_iter()
            .chain(rest)
            .collect(),
        _ => rest.into(),
    }
}

/// What an entry is called, with what was taken off it and why.
fn named(entry: &PriceEntryView) -> String {
    let less = entry.less.iter().map(|less| {
        let percent = less.percent.as_ref();
        let percent = percent.map_or_else(String::new, |percent| format!(" ({percent} %)"));
        format!("; less {}{percent}, {}", sum(&less.amount), less.why)
    });
    let less: String = less.collect();
    format!("{}{less}", entry.label)
}

/// A tax as its row is called.
pub fn share_name(share: &ShareView) -> String {
    if share.exempt {
        return format!("{} {} %, not asked: exempt", share.name, share.percent);
    }
    format!("{} {} % of {}", share.name, share.percent, sum(&share.base))
}

/// The part's number, where the entry is a part's.
fn number(order: &OrderView, entry: &PriceEntryView) -> String {
    let mut parts = order.parts.iter();
    let part = parts
        .find(|part| part.label == entry.label && (part.line.is_none() || part.line == entry.line));
    part.and_then(|part| part.number.clone())
        .unwrap_or_default()
}

/// What it comes to, before tax, the tax, and with it.
pub struct Sums<'a> {
    pub written_down: &'a str,
    pub net: &'a str,
    pub taxes: &'a [String],
    /// Each tax by itself.
    pub shares: &'a [ShareView],
    /// The number that the customer is exempt by.
    pub exempt_by: Option<&'a str>,
    pub tax: &'a str,
    pub gross: &'a str,
}

impl<'a> Sums<'a> {
    /// Of an invoice; else of the price as it stands for a payer.
    pub fn of(
        order: &'a OrderView,
        payer: PayerForm,
        invoice: Option<&'a InvoiceView>,
    ) -> Option<Self> {
        if let Some(invoice) = invoice {
            return Some(Self {
                written_down: &invoice.written_down,
                net: &invoice.net,
                taxes: &invoice.taxes,
                shares: &invoice.shares,
                exempt_by: invoice.exempt_by.as_deref(),
                tax: &invoice.tax,
                gross: &invoice.gross,
            });
        }
        let total = order.totals.iter().find(|total| total.payer == payer)?;
        Some(Self {
            written_down: &total.written_down,
            net: &total.net,
            taxes: order.price.as_ref().map_or(&[], |price| &price.taxes),
            shares: &total.shares,
            exempt_by: None,
            tax: &total.tax,
            gross: &total.gross,
        })
    }

    pub fn put(&self, column: &mut Column<'_>, currency: &str) {
        let mut rows = Vec::new();
        if !nought(self.written_down) {
            rows.push((
                "Discount, before tax".to_owned(),
                format!("-{}", sum(self.written_down)),
            ));
        }
        rows.push(("Before tax".to_owned(), sum(self.net)));
        // One tax needs no row beside that of the tax.
        let apart = self.shares.len() > 1 || self.shares.iter().any(|share| share.exempt);
        if apart {
            for share in self.shares {
                rows.push((share_name(share), sum(&share.tax)));
            }
        }
        let tax = match self.taxes {
            taxes if apart || taxes.is_empty() => "Tax".to_owned(),
            taxes => format!("Tax: {}", taxes.join(", ")),
        };
        rows.push((tax, sum(self.tax)));
        if let Some(number) = self.exempt_by {
            rows.push((format!("Exempt by {number}"), String::new()));
        }
        column.sums(
            &rows,
            Some((&format!("Total, {currency}"), &sum(self.gross))),
        );
    }
}
