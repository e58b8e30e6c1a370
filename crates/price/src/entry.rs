//! What is charged, who pays it, and what is taxed.

use rust_decimal::Decimal;

/// Who pays for a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Payer {
    /// The customer.
    Customer,
    /// A warranty, the maker's or another.
    Warranty,
    /// The shop itself, out of goodwill.
    Goodwill,
}

/// What sort of charge an entry is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Charge {
    /// Hours of work at a rate.
    Labour,
    /// A part.
    Part,
    /// Work sent out.
    Sublet,
    /// Shop supplies.
    Supplies,
    /// A core charge.
    Core,
    /// A test or look-over at a fixed price.
    Test,
    /// Anything else.
    Fee,
}

/// The line of the order an entry belongs to, by its name.
pub type LineRef = String;

/// A commitment to the words that name an entry; the words stand elsewhere.
pub type Label = [u8; 32];

/// One entry: so many, at so much each, before tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The order's line it belongs to.
    pub line: Option<LineRef>,
    /// What sort of charge.
    pub charge: Charge,
    /// What it is called.
    pub label: Option<Label>,
    /// How many: hours for labour, pieces for parts.
    pub quantity: Decimal,
    /// The price of one, before tax, in the order's currency.
    pub each: Decimal,
    /// Who pays.
    pub payer: Payer,
}

/// The kinds of charge a tax falls on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TaxOn {
    /// Labour and tests.
    pub labour: bool,
    /// Parts and supplies.
    pub parts: bool,
    /// Everything else.
    pub other: bool,
}

/// One tax, as it held when the price was set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxRule {
    /// What it is called on papers.
    pub name: String,
    /// Per cent of the sums it falls on.
    pub percent: Decimal,
    /// What it falls on.
    pub on: TaxOn,
}

impl TaxRule {
    /// Whether the tax falls on this kind of charge.
    #[must_use]
    pub fn falls_on(&self, charge: Charge) -> bool {
        match charge {
            Charge::Labour | Charge::Test => self.on.labour,
            Charge::Part | Charge::Supplies => self.on.parts,
            Charge::Sublet | Charge::Core | Charge::Fee => self.on.other,
        }
    }
}
