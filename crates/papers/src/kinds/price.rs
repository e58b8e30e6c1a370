//! The price on a paper: labour, parts, everything else, and what it all comes to.

use super::words::{nought, sum};
use crate::engine::column::{Cell, Column, Kept, Side};
use crate::engine::lines::{bold, plain};
use crate::wording::Wording;
use shop::Amount;
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

    pub fn name(self, wording: &Wording) -> &'static str {
        match self {
            Self::Labour => wording.labour,
            Self::Parts => wording.parts,
            Self::Other => wording.other,
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

    /// Its columns; that of numbers where any part has one.
    fn columns(self, wording: &Wording, has_numbers: bool) -> Vec<Kept> {
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
        let amount = fixed(wording.amount, 24.0, Side::Right);
        match self {
            Self::Labour => vec![
                open(wording.work),
                fixed(wording.hours, 20.0, Side::Right),
                fixed(wording.an_hour, 22.0, Side::Right),
                amount,
            ],
            Self::Parts if has_numbers => vec![
                fixed(wording.number, 27.0, Side::Left),
                open(wording.part),
                fixed(wording.count, 18.0, Side::Right),
                fixed(wording.each, 20.0, Side::Right),
                amount,
            ],
            Self::Parts => vec![
                open(wording.part),
                fixed(wording.count, 18.0, Side::Right),
                fixed(wording.each, 20.0, Side::Right),
                amount,
            ],
            Self::Other => vec![
                open(wording.what),
                fixed(wording.count, 18.0, Side::Right),
                fixed(wording.each, 20.0, Side::Right),
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
pub fn table(
    column: &mut Column<'_>,
    wording: &Wording,
    order: &OrderView,
    sort: Sort,
    all: &[&PriceEntryView],
) {
    let of_sort: Vec<&PriceEntryView> = all
        .iter()
        .copied()
        .filter(|entry| Sort::of(entry.charge) == sort)
        .collect();
    let groups = grouped(wording, order, &of_sort);
    let several = groups.len() > 1;
    let has_numbers = of_sort.iter().any(|entry| !number(order, entry).is_empty());
    let columns = sort.columns(wording, has_numbers);
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
            .map(|entry| row(wording, order, has_numbers && sort == Sort::Parts, entry))
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
    wording: &Wording,
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
    let rest = (wording.for_all.to_owned(), of(None));
    lines
        .chain([rest])
        .filter(|(_, entries)| !entries.is_empty())
        .collect()
}

fn row(wording: &Wording, order: &OrderView, numbered: bool, entry: &PriceEntryView) -> Vec<Cell> {
    let amount = Cell::text(sum(wording, &entry.amount));
    let bare = entry.charge == ChargeForm::Test && entry.quantity == "1";
    let (quantity, each) = if bare {
        (String::new(), String::new())
    } else {
        (
            wording.figures(entry.quantity.exact()),
            sum(wording, &entry.each),
        )
    };
    let label = Cell {
        runs: vec![plain(named(wording, entry))],
        ..Cell::default()
    };
    let rest = [label, Cell::text(quantity), Cell::text(each), amount];
    if numbered {
        [Cell::text(number(order, entry))]
            .into_iter()
            .chain(rest)
            .collect()
    } else {
        rest.into()
    }
}

/// What an entry is called, with what was taken off it and why.
fn named(wording: &Wording, entry: &PriceEntryView) -> String {
    let less = entry.less.iter().map(|less| {
        let percent = less.percent.as_ref();
        let percent = percent.map_or_else(String::new, |percent| {
            format!(" ({} %)", wording.figures(percent.exact()))
        });
        (wording.less)(&percent, &sum(wording, &less.amount), &less.why)
    });
    let less: String = less.collect();
    format!("{}{less}", entry.label)
}

/// A tax as its row is called.
pub fn share_name(wording: &Wording, share: &ShareView) -> String {
    let percent = wording.figures(share.percent.exact());
    if share.exempt {
        return (wording.not_asked)(&share.name, &percent);
    }
    (wording.share_of)(&share.name, &percent, &sum(wording, &share.base))
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
    pub written_down: &'a Amount,
    pub net: &'a Amount,
    pub taxes: &'a [String],
    /// Each tax by itself.
    pub shares: &'a [ShareView],
    /// The number that the customer is exempt by.
    pub exempt_by: Option<&'a str>,
    pub tax: &'a Amount,
    pub gross: &'a Amount,
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

    pub fn put(&self, column: &mut Column<'_>, wording: &Wording, currency: &str) {
        let mut rows = Vec::new();
        if !nought(self.written_down) {
            rows.push((
                wording.discount.to_owned(),
                format!("-{}", sum(wording, self.written_down)),
            ));
        }
        rows.push((wording.before_tax.to_owned(), sum(wording, self.net)));
        // One tax needs no row beside that of the tax.
        let apart = self.shares.len() > 1 || self.shares.iter().any(|share| share.exempt);
        if apart {
            for share in self.shares {
                rows.push((share_name(wording, share), sum(wording, &share.tax)));
            }
        }
        let tax = match self.taxes {
            taxes if apart || taxes.is_empty() => wording.tax.to_owned(),
            taxes => format!("{}: {}", wording.tax, wording.figures(&taxes.join(", "))),
        };
        rows.push((tax, sum(wording, self.tax)));
        if let Some(number) = self.exempt_by {
            rows.push(((wording.exempt_by)(number), String::new()));
        }
        column.sums(
            &rows,
            Some((
                &format!("{}, {currency}", wording.total),
                &sum(wording, self.gross),
            )),
        );
    }
}
