//! The rules that a shop prices by, and what stands beside entries and taxes.

use super::basics::*;
use super::codes::*;
use crate::form::{Added, Form, Unreadable, form};
use repair::MoneyRules;
use repair::price::{
    Band, Bands, Coin, CreditLine, Disposal, Exemption, FixedJob, JobPart, Less, Rate, Share,
    Supplies, TaxRounding, Terms, Uplift,
};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

form! { LessForm = Less {
    amount: DecimalForm,
    percent: Option<DecimalForm>,
    why: LabelForm,
    of_order: bool,
} }

form! { ShareForm = Share {
    name: ShortForm,
    percent: DecimalForm,
    base: DecimalForm,
    tax: DecimalForm,
    exempt: bool,
} }

form! { CreditLineForm = CreditLine {
    line: u32,
    amount: DecimalForm,
    keeps_tax: bool,
} }

form! { TaxRoundingForm = TaxRounding {
    round: RoundForm,
    by: ByForm,
} }

form! { ExemptionForm = Exemption {
    number: LabelForm,
    taxes: Vec<ShortForm>,
} }

form! { CoinForm = Coin {
    smallest: DecimalForm,
    round: RoundForm,
} }

form! { TermsForm = Terms {
    rounding: TaxRoundingForm,
    exempt: Option<ExemptionForm>,
    coin: Option<CoinForm>,
} }

form! { RateForm = Rate {
    work: Option<ShortForm>,
    grade: Option<ShortForm>,
    hour: DecimalForm,
} }

/// What goes on top of a cost: `{"markup": "50"}` of the cost, or `{"margin": "40"}` of the
/// price.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
pub enum UpliftForm {
    /// Per cent of the cost.
    #[serde(rename = "markup")]
    Markup(DecimalForm),
    /// Per cent of the price.
    #[serde(rename = "margin")]
    Margin(DecimalForm),
}

impl Form for UpliftForm {
    type Core = Uplift;
    fn of(core: &Uplift) -> Self {
        match core {
            Uplift::Markup(percent) => Self::Markup(DecimalForm::of(percent)),
            Uplift::Margin(percent) => Self::Margin(DecimalForm::of(percent)),
        }
    }
    fn read(self) -> Result<Uplift, Unreadable> {
        match self {
            Self::Markup(percent) => percent
                .read()
                .map(Uplift::Markup)
                .map_err(|bad| bad.within("markup")),
            Self::Margin(percent) => percent
                .read()
                .map(Uplift::Margin)
                .map_err(|bad| bad.within("margin")),
        }
    }
}

form! { BandForm = Band {
    up_to: Option<DecimalForm>,
    uplift: UpliftForm,
} }

form! { BandsForm = Bands {
    bands: Vec<BandForm>,
    least: Option<DecimalForm>,
} }

form! { SuppliesForm = Supplies {
    percent: DecimalForm,
    of: Vec<ChargeForm>,
    most: Option<DecimalForm>,
} }

form! { DisposalForm = Disposal {
    of: ShortForm,
    each: DecimalForm,
} }

form! { MoneyRulesForm = MoneyRules {
    rates: Vec<RateForm>,
    hours_by: HoursByForm,
    parts: BandsForm,
    sublet: BandsForm,
    supplies: Option<SuppliesForm>,
    disposal: Vec<DisposalForm>,
    rounding: TaxRoundingForm,
    coin: Option<CoinForm>,
} }

form! { JobPartForm = JobPart {
    name: LabelForm,
    quantity: DecimalForm,
    each: DecimalForm,
} }

form! { FixedJobForm = FixedJob {
    name: LabelForm,
    price: DecimalForm,
    parts: Vec<JobPartForm>,
    in_one: bool,
} }

/// A flag that was added to a form that had landed says nothing where it is not set.
impl Added for bool {
    fn is_absent(&self) -> bool {
        !self
    }
}
