//! What is charged, who pays it, and what is taxed.

use crate::phrases as say;
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
    /// Getting rid of what came off or out: oil, tyres, a battery.
    Disposal,
}

impl Charge {
    /// Every sort, in the order they are listed.
    pub const ALL: [Charge; 8] = [
        Charge::Labour,
        Charge::Part,
        Charge::Sublet,
        Charge::Supplies,
        Charge::Core,
        Charge::Test,
        Charge::Fee,
        Charge::Disposal,
    ];

    /// What it is called in a working.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Charge::Labour => say::labour(),
            Charge::Part => say::part(),
            Charge::Sublet => say::work_sent_out(),
            Charge::Supplies => say::shop_supplies(),
            Charge::Core => say::core_charge(),
            Charge::Test => say::test(),
            Charge::Fee => say::fee(),
            Charge::Disposal => say::disposal(),
        }
    }
}

/// The line of the order an entry belongs to, by its name.
pub type LineRef = String;

/// A commitment to the words that name an entry; the words stand elsewhere.
pub type Label = [u8; 32];

/// What is taken off an entry, and why.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Less {
    /// How much, in the order's currency.
    pub amount: Decimal,
    /// The per cent it was reckoned from, if it was.
    pub percent: Option<Decimal>,
    /// The reason; the words stand elsewhere.
    pub why: Label,
    /// Whether it is this entry's share of a discount on the whole order.
    pub of_order: bool,
}

/// One entry: so many, at so much each. A tax that is included in the price is in it.
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
    /// The price of one, in the order's currency.
    pub each: Decimal,
    /// Who pays.
    pub payer: Payer,
    /// What is taken off it.
    pub less: Vec<Less>,
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
///
/// Taxes are taken in the order of their list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxRule {
    /// What it is called on papers.
    pub name: String,
    /// Per cent of the sums it falls on.
    pub percent: Decimal,
    /// What it falls on.
    pub on: TaxOn,
    /// The sorts of charge it falls on, one by one, where `on` is too coarse; none named means
    /// as `on` says.
    pub kinds: Vec<Charge>,
    /// The payers it is asked of; none named means all.
    pub payers: Vec<Payer>,
    /// Whether it is taken on the taxes before it as well.
    pub compound: bool,
    /// Whether the price of an entry has it in it.
    pub included: bool,
}

impl TaxRule {
    /// A tax on top of what it falls on, for every payer.
    ///
    /// ```
    /// use price::{Charge, Payer, TaxOn, TaxRule};
    /// let on = TaxOn { labour: false, parts: true, other: false };
    /// let tax = TaxRule::on_top("sales tax", 8.into(), on);
    /// assert!(tax.falls_on(Charge::Supplies, Payer::Customer));
    /// assert!(!tax.falls_on(Charge::Labour, Payer::Customer));
    /// ```
    #[must_use]
    pub fn on_top(name: impl Into<String>, percent: Decimal, on: TaxOn) -> TaxRule {
        TaxRule {
            name: name.into(),
            percent,
            on,
            kinds: Vec::new(),
            payers: Vec::new(),
            compound: false,
            included: false,
        }
    }

    /// Whether the tax falls on this sort of charge for this payer.
    #[must_use]
    pub fn falls_on(&self, charge: Charge, payer: Payer) -> bool {
        (self.payers.is_empty() || self.payers.contains(&payer)) && self.falls_on_kind(charge)
    }

    fn falls_on_kind(&self, charge: Charge) -> bool {
        if !self.kinds.is_empty() {
            return self.kinds.contains(&charge);
        }
        match charge {
            Charge::Labour | Charge::Test => self.on.labour,
            Charge::Part | Charge::Supplies => self.on.parts,
            Charge::Sublet | Charge::Core | Charge::Fee | Charge::Disposal => self.on.other,
        }
    }
}

/// A payer of whom taxes are not asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exemption {
    /// The number they are exempt by; it stands elsewhere.
    pub number: Label,
    /// The taxes that are not asked, by name; none named means all.
    pub taxes: Vec<String>,
}

impl Exemption {
    /// Whether this tax is not asked.
    #[must_use]
    pub fn is_from(&self, tax: &TaxRule) -> bool {
        self.taxes.is_empty() || self.taxes.contains(&tax.name)
    }
}
