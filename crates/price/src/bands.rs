//! The price of a part, or of work sent out, from what it costs the shop.
//!
//! A markup is a per cent of the cost; a margin is a per cent of the price. 50 % markup on 100
//! is 150, and a third of that is margin; 50 % margin on 100 is 200.

use crate::fault::{Fault, Wrong, amount, percent};
use crate::phrases as say;
use crate::totals::rounded;
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// What goes on top of a cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Uplift {
    /// So many per cent of the cost.
    Markup(Decimal),
    /// So many per cent of the price.
    Margin(Decimal),
}

/// Costs that share an uplift.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Band {
    /// Up to and with this cost; none for whatever is above the others.
    pub up_to: Option<Decimal>,
    /// What goes on top.
    pub uplift: Uplift,
}

/// How prices follow from costs, band by band.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bands {
    /// From the lowest cost up. A cost above all of them has no price.
    pub bands: Vec<Band>,
    /// The least that goes on top of each piece.
    pub least: Option<Decimal>,
}

/// A price found from a cost.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FromCost {
    /// The price of one, in whole coins.
    pub price: Decimal,
    /// How it was found.
    pub working: Working,
}

impl Uplift {
    /// The price with this on top, not rounded; none where it can't be held.
    ///
    /// ```
    /// use price::Uplift;
    /// use rust_decimal::Decimal;
    /// let cost = Decimal::from(100);
    /// assert_eq!(Uplift::Markup(50.into()).on(cost), Some(150.into()));
    /// assert_eq!(Uplift::Margin(50.into()).on(cost), Some(200.into()));
    /// ```
    #[must_use]
    pub fn on(self, cost: Decimal) -> Option<Decimal> {
        let hundred = Decimal::ONE_HUNDRED;
        match self {
            Uplift::Markup(percent) => cost
                .checked_mul(hundred.checked_add(percent)?)?
                .checked_div(hundred),
            Uplift::Margin(percent) => cost
                .checked_mul(hundred)?
                .checked_div(hundred.checked_sub(percent)?),
        }
    }

    /// The other word for it: what margin a markup leaves, what markup a margin asks. None for
    /// a margin of all of the price.
    #[must_use]
    pub fn other(self) -> Option<Uplift> {
        let hundred = Decimal::ONE_HUNDRED;
        match self {
            Uplift::Markup(percent) => percent
                .checked_mul(hundred)?
                .checked_div(hundred.checked_add(percent)?)
                .map(Uplift::Margin),
            Uplift::Margin(percent) => percent
                .checked_mul(hundred)?
                .checked_div(hundred.checked_sub(percent)?)
                .map(Uplift::Markup),
        }
    }

    fn told(self) -> String {
        match self {
            Uplift::Markup(percent) => say::markup_of(number(percent.normalize())),
            Uplift::Margin(percent) => say::margin_of(number(percent.normalize())),
        }
    }

    fn formula(self) -> &'static str {
        match self {
            Uplift::Markup(_) => say::cost_and_markup(),
            Uplift::Margin(_) => say::cost_and_margin(),
        }
    }

    fn check(self, at: &str) -> Result<(), Fault> {
        match self {
            Uplift::Markup(markup) => percent(&format!("{at}, markup"), markup, 10_000),
            Uplift::Margin(margin) if margin >= Decimal::ONE_HUNDRED => Err(Fault::new(
                format!("{at}, margin"),
                Wrong::NothingForTheCost {
                    margin: margin.normalize(),
                },
            )),
            Uplift::Margin(margin) => percent(&format!("{at}, margin"), margin, 99),
        }
    }
}

impl Bands {
    /// The same on top of every cost.
    #[must_use]
    pub fn flat(uplift: Uplift) -> Bands {
        Bands {
            bands: vec![Band {
                up_to: None,
                uplift,
            }],
            least: None,
        }
    }

    /// Refuses bands that make no sense.
    ///
    /// # Errors
    /// [`Fault`], the first there is.
    pub fn check(&self) -> Result<(), Fault> {
        let mut below = Decimal::ZERO;
        for (nth, band) in self.bands.iter().enumerate() {
            let at = format!("band {}", nth.saturating_add(1));
            let last = nth.saturating_add(1) == self.bands.len();
            match band.up_to {
                None if !last => {
                    return Err(Fault::new(at, Wrong::NoEnd));
                }
                None => {}
                Some(up_to) => {
                    amount(&at, up_to)?;
                    if up_to <= below {
                        return Err(Fault::new(at, Wrong::BandsOutOfOrder { up_to, below }));
                    }
                    below = up_to;
                }
            }
            band.uplift.check(&at)?;
        }
        self.least
            .map_or(Ok(()), |least| amount("least on top", least))
    }

    /// The costs at which a band ends and a part that costs a coin more sells for less: the
    /// cost, its price, and the price of the one that costs a coin more.
    #[must_use]
    pub fn dips(&self, minor_digits: u32) -> Vec<(Decimal, Decimal, Decimal)> {
        let coin = Decimal::new(1, minor_digits.min(28));
        let price = |cost| self.price(cost, minor_digits).ok().map(|found| found.price);
        let ends = self.bands.iter().filter_map(|band| band.up_to);
        ends.filter_map(|end| {
            let (at, above) = (price(end)?, price(end.checked_add(coin)?)?);
            (above < at).then_some((end, at, above))
        })
        .collect()
    }

    /// The price of one that costs so much.
    ///
    /// # Errors
    /// [`Fault`], where no band goes so far, or the cost makes no sense.
    ///
    /// ```
    /// use price::{Band, Bands, Uplift};
    /// let bands = Bands {
    ///     bands: vec![
    ///         Band { up_to: Some(10.into()), uplift: Uplift::Markup(100.into()) },
    ///         Band { up_to: None, uplift: Uplift::Margin(40.into()) },
    ///     ],
    ///     least: Some(2.into()),
    /// };
    /// let price = |cost: &str| bands.price(cost.parse().unwrap(), 2).unwrap().price.to_string();
    /// assert_eq!(price("0.80"), "2.80");
    /// assert_eq!(price("10"), "20.00");
    /// assert_eq!(price("90"), "150.00");
    /// ```
    pub fn price(&self, cost: Decimal, minor_digits: u32) -> Result<FromCost, Fault> {
        amount("cost", cost)?;
        let fits = |band: &&Band| band.up_to.is_none_or(|up_to| cost <= up_to);
        let band = self
            .bands
            .iter()
            .find(fits)
            .ok_or_else(|| Fault::new("cost", Wrong::NoBand { cost }))?;
        let too_large = || Fault::new("cost", Wrong::PriceTooLarge);
        let exact = band.uplift.on(cost).ok_or_else(too_large)?;
        let least = self.least.unwrap_or_default();
        let lifted = exact.max(cost.checked_add(least).ok_or_else(too_large)?);
        let price = rounded(lifted, minor_digits);
        amount("price", price)?;
        let mut line = Line::new(say::price_of_one(), Source::given())
            .formula(say::price(), band.uplift.formula())
            .input(say::cost(), number(cost))
            .input(say::on_top(), band.uplift.told());
        if let Some(least) = self.least {
            line = line.input(say::least_on_top(), number(least));
        }
        if lifted > exact {
            line = line.note(say::least_counts());
        }
        Ok(FromCost {
            price,
            working: Working::new(say::price_from_cost()).line(line.value(number(price))),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn uplift() -> impl Strategy<Value = Uplift> {
        (any::<bool>(), 0i64..9_900).prop_map(|(margin, percent)| {
            let percent = Decimal::new(percent, 2);
            if margin {
                Uplift::Margin(percent)
            } else {
                Uplift::Markup(percent)
            }
        })
    }

    proptest! {
        /// A markup is of the cost and a margin of the price, to the last digit that is held.
        #[test]
        fn a_margin_is_of_the_price_and_a_markup_of_the_cost(uplift in uplift(), cents in 1i64..10_000_000) {
            let cost = Decimal::new(cents, 2);
            let price = uplift.on(cost).unwrap();
            let gain = price - cost;
            let (percent, of) = match uplift {
                Uplift::Markup(percent) => (percent, cost),
                Uplift::Margin(percent) => (percent, price),
            };
            prop_assert!((of * percent / Decimal::ONE_HUNDRED - gain).abs() < Decimal::new(1, 12));
            // Said by its other word, it is the same price.
            let other = uplift.other().unwrap().on(cost).unwrap();
            prop_assert!((other - price).abs() < Decimal::new(1, 8), "{other} {price}");
        }

        #[test]
        fn a_price_is_never_below_cost_and_the_least(uplift in uplift(), cents in 0i64..10_000_000, least in 0i64..1_000) {
            let bands = Bands { least: Some(Decimal::new(least, 2)), ..Bands::flat(uplift) };
            let cost = Decimal::new(cents, 2);
            let price = bands.price(cost, 2).unwrap().price;
            prop_assert!(price >= cost + Decimal::new(least, 2));
        }
    }

    fn band(up_to: Option<i64>, uplift: Uplift) -> Band {
        Band {
            up_to: up_to.map(Into::into),
            uplift,
        }
    }

    #[test]
    fn bands_that_make_no_sense_are_refused_in_words() {
        let markup = |percent: i64| Uplift::Markup(percent.into());
        let margin = |percent: i64| Uplift::Margin(percent.into());
        let bad = |bands: Vec<Band>| {
            let bands = Bands { bands, least: None };
            bands.check().unwrap_err().to_string()
        };
        assert!(
            bad(vec![band(None, margin(100))]).starts_with("band 1, margin: 100 % of the price")
        );
        assert!(bad(vec![band(None, markup(-5))]).contains("below nought"));
        assert!(
            bad(vec![band(None, markup(5)), band(Some(10), markup(5))]).starts_with("band 1: ")
        );
        assert!(
            bad(vec![band(Some(10), markup(5)), band(Some(10), markup(5))]).starts_with("band 2: ")
        );
        let open = Bands {
            bands: vec![band(Some(10), markup(50))],
            least: None,
        };
        assert!(open.check().is_ok());
        assert!(
            open.price(11.into(), 2)
                .unwrap_err()
                .to_string()
                .starts_with("cost: no band goes")
        );
        assert!(open.price((-1).into(), 2).is_err());
    }

    #[test]
    fn where_the_next_band_sells_for_less_is_told() {
        let bands = Bands {
            bands: vec![
                band(Some(10), Uplift::Markup(100.into())),
                band(None, Uplift::Markup(50.into())),
            ],
            least: None,
        };
        let (end, at, above) = bands.dips(2)[0];
        assert_eq!((end, at), (10.into(), 20.into()));
        assert_eq!(above.to_string(), "15.02");
    }
}
