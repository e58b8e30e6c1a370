//! An invoice or a credit note line by line before tax, each line under its one tax: as the
//! programs of others read it.

use super::desk::entry_label;
use crate::snapshot::Snapshot;
use record::form::Form;
use record::v1::codes::ChargeForm;
use repair::price::{self, Billed, ByTax, Credit, Entry, NotByTax};

/// Lines before tax, and the taxes they stand under.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxedView {
    pub lines: Vec<TaxedLineView>,
    pub groups: Vec<TaxGroupView>,
}

/// One line before tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxedLineView {
    /// What it is called.
    pub label: String,
    /// What sort of charge.
    pub charge: ChargeForm,
    /// How many, to the last digit.
    pub quantity: String,
    /// Before tax, and before what was written down.
    pub net: String,
    /// The place of its tax among the groups.
    pub group: usize,
}

/// A tax, and what the lines under it come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxGroupView {
    /// What the tax is called.
    pub name: String,
    /// Per cent.
    pub percent: String,
    /// Whether it is not asked, because the customer is exempt.
    pub exempt: bool,
    /// Taken off before tax.
    pub off: String,
    /// Before tax, after that.
    pub net: String,
    /// The tax.
    pub tax: String,
}

/// Why lines do not stand under one tax each, with what the line is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotTaxed {
    /// No tax falls on it.
    NoTax(String),
    /// More than one tax falls on it.
    SeveralTaxes(String),
    /// Its tax is kept.
    TaxKept(String),
    /// They do not add up.
    Uneven,
}

/// An invoice, parted by its taxes; or what was taken back of it.
pub(super) fn taxed(
    snap: &Snapshot<'_>,
    billed: &Billed,
    credit: Option<&Credit>,
    entries: &[&Entry],
    digits: u32,
) -> Result<TaxedView, NotTaxed> {
    let label = |line: usize| {
        let entry = entries.get(line);
        entry.map_or_else(String::new, |entry| entry_label(snap, entry))
    };
    let parted = match credit {
        Some(credit) => billed.credited_by_tax(credit),
        None => billed.by_tax(),
    };
    let parted: ByTax = parted.map_err(|why| match why {
        NotByTax::NoTax(line) => NotTaxed::NoTax(label(line)),
        NotByTax::SeveralTaxes(line) => NotTaxed::SeveralTaxes(label(line)),
        NotByTax::TaxKept(line) => NotTaxed::TaxKept(label(line)),
        NotByTax::Uneven => NotTaxed::Uneven,
    })?;
    let lines = parted.lines.iter().filter_map(|line| {
        let entry = entries.get(line.line)?;
        Some(TaxedLineView {
            label: entry_label(snap, entry),
            charge: ChargeForm::of(&entry.charge),
            quantity: match credit {
                Some(_) => "1".to_owned(),
                None => entry.quantity.normalize().to_string(),
            },
            net: price::rounded(line.net, digits).to_string(),
            group: line.group,
        })
    });
    let groups = parted.groups.iter().filter_map(|group| {
        let share = billed.shares.get(group.share)?;
        Some(TaxGroupView {
            name: share.name.clone(),
            percent: share.percent.normalize().to_string(),
            exempt: share.exempt,
            off: price::rounded(group.off, digits).to_string(),
            net: price::rounded(group.net, digits).to_string(),
            tax: price::rounded(group.tax, digits).to_string(),
        })
    });
    Ok(TaxedView {
        lines: lines.collect(),
        groups: groups.collect(),
    })
}
