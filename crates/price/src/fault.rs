//! A rule or a figure that makes no sense.

use crate::entry::Charge;
use rust_decimal::Decimal;
use std::fmt;
use thiserror::Error;

/// Where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{at}: {}; {}", .wrong.what(), .wrong.how())]
pub struct Fault {
    /// Where.
    pub at: String,
    /// What is wrong.
    pub wrong: Wrong,
}

impl Fault {
    pub(crate) fn new(at: impl Into<String>, wrong: Wrong) -> Fault {
        Fault {
            at: at.into(),
            wrong,
        }
    }
}

/// Which time of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Time {
    /// By the book.
    Book,
    /// By the clock.
    Clock,
}

impl fmt::Display for Time {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Book => "book time",
            Self::Clock => "clock time",
        })
    }
}

/// What is wrong with a rule or a figure.
#[derive(Debug, Clone, PartialEq, Eq)]
#[allow(missing_docs, reason = "figures are called what they are")]
pub enum Wrong {
    /// An amount below nought.
    BelowNought { amount: Decimal },
    /// An amount beyond all measure.
    TooLarge { amount: Decimal },
    /// A per cent below nought.
    PercentBelowNought { percent: Decimal },
    /// A per cent above the most there may be.
    PercentTooMuch { percent: Decimal, most: u32 },
    /// A coin worth nothing.
    NoCoin { smallest: Decimal },
    /// A coin worth less than there is.
    BelowTheUnit { smallest: Decimal, digits: u32 },
    /// A coin worth too much.
    MoreThanACoin { smallest: Decimal },
    /// A rate that is for nothing.
    RateForNothing,
    /// Two rates for the same.
    SameRate,
    /// The hours that are charged are not known.
    NotKnown { time: Time },
    /// Minutes beyond all measure.
    TooLong { minutes: u32 },
    /// A rate below nought.
    HourBelowNought { hour: Decimal },
    /// A rate beyond all measure.
    HourTooMuch { hour: Decimal },
    /// Supplies as a per cent of nothing.
    OfWhatPercent,
    /// Supplies as a per cent of supplies.
    OfThemselves,
    /// Disposal of nothing.
    OfWhat,
    /// A core that comes back for another charge.
    NoCore { charge: Charge },
    /// No core came back.
    NoneCameBack,
    /// More cores came back than were charged.
    MoreCameBack { pieces: Decimal, charged: Decimal },
    /// Sums beyond all measure.
    SumTooLarge,
    /// A deposit above the sum.
    MoreThanInAll { asked: Decimal, total: Decimal },
    /// A discount above what is there.
    MoreThanThere { taken: Decimal, there: Decimal },
    /// A margin of all.
    NothingForTheCost { margin: Decimal },
    /// A band without an end that is not the last.
    NoEnd,
    /// Bands that are mixed up.
    BandsOutOfOrder { up_to: Decimal, below: Decimal },
    /// A cost above every band.
    NoBand { cost: Decimal },
    /// A price beyond all measure.
    PriceTooLarge,
    /// A job that costs nothing.
    NoPrice,
    /// A part of which there is none.
    NoneGoesIn,
    /// A job's parts cost more than it.
    PartsComeToMore {
        parts: Option<Decimal>,
        price: Decimal,
    },
    /// A credit note of nothing.
    NothingBack,
    /// A line that the invoice has not.
    NoSuchLine { lines: usize },
    /// A line that is credited twice.
    LineTwice,
    /// An amount finer than the currency.
    NotInCoins { amount: Decimal, digits: u32 },
    /// More is credited than was billed.
    MoreThanLeft { amount: Decimal, left: Decimal },
    /// Too many taxes.
    TooManyTaxes { taxes: usize, most: usize },
    /// A tax without a name.
    NoName,
    /// Two taxes of one name.
    TaxTwice { name: String },
    /// An exemption from a tax that is not there.
    NoSuchTax { name: String },
}

impl Wrong {
    /// What is wrong, in English.
    #[must_use]
    pub fn what(&self) -> String {
        match self {
            Self::BelowNought { amount } => format!("{amount} is below nought"),
            Self::TooLarge { amount } => format!("{amount} is too large"),
            Self::PercentBelowNought { percent } => format!("{percent} % is below nought"),
            Self::PercentTooMuch { percent, .. } => format!("{percent} % is too much"),
            Self::NoCoin { smallest } => format!("{smallest} is no coin"),
            Self::BelowTheUnit { smallest, .. } => {
                format!("{smallest} is less than the currency's smallest unit")
            }
            Self::MoreThanACoin { smallest } => format!("{smallest} is more than a coin is worth"),
            Self::RateForNothing => "it says neither for which work nor for whom".to_owned(),
            Self::SameRate => "another rate is for the same work and grade".to_owned(),
            Self::NotKnown { time } => format!("the {time} is not known"),
            Self::TooLong { minutes } => format!("{minutes} minutes are more than any job takes"),
            Self::HourBelowNought { hour } => format!("{hour} an hour is below nought"),
            Self::HourTooMuch { hour } => format!("{hour} an hour is too much"),
            Self::OfWhatPercent => "it is not said of what they are a per cent".to_owned(),
            Self::OfThemselves => "they can't be a per cent of themselves".to_owned(),
            Self::OfWhat => "it is not said of what".to_owned(),
            Self::NoCore { charge } => format!("that line is {}, not a core charge", charge.name()),
            Self::NoneCameBack => "none came back".to_owned(),
            Self::MoreCameBack { pieces, charged } => {
                format!("{pieces} came back, and {charged} were charged")
            }
            Self::SumTooLarge => "the sum can't be reckoned".to_owned(),
            Self::MoreThanInAll { asked, total } => {
                format!("{asked} is more than the {total} in all")
            }
            Self::MoreThanThere { taken, there } => {
                format!("{taken} is more than the {there} there is")
            }
            Self::NothingForTheCost { margin } => {
                format!("{margin} % of the price leaves nothing for the cost")
            }
            Self::NoEnd => "it has no end, and others stand after it".to_owned(),
            Self::BandsOutOfOrder { up_to, below } => {
                format!("it ends at {up_to}, and the one before at {below}")
            }
            Self::NoBand { cost } => format!("no band goes as far as {cost}"),
            Self::PriceTooLarge => "the price is too large".to_owned(),
            Self::NoPrice => "it is nought".to_owned(),
            Self::NoneGoesIn => "none goes in".to_owned(),
            Self::PartsComeToMore { parts, price } => {
                let parts = parts.map_or_else(|| "too much".to_owned(), |parts| parts.to_string());
                format!("its parts come to {parts}, more than the {price} of the job")
            }
            Self::NothingBack => "nothing is taken back on it".to_owned(),
            Self::NoSuchLine { lines } => format!("the invoice has {lines} lines"),
            Self::LineTwice => "it stands there twice".to_owned(),
            Self::NotInCoins { amount, .. } => format!("{amount} is not in whole coins"),
            Self::MoreThanLeft { amount, left } => {
                format!("{amount} goes back, and {left} is left of it")
            }
            Self::TooManyTaxes { taxes, .. } => format!("{taxes} of them"),
            Self::NoName => "it has no name".to_owned(),
            Self::TaxTwice { name } => format!("{name} stands there twice"),
            Self::NoSuchTax { name } => format!("there is no tax {name}"),
        }
    }

    /// How it is mended, in English.
    #[must_use]
    pub fn how(&self) -> String {
        match self {
            Self::BelowNought { .. } => "write an amount of nought or more".to_owned(),
            Self::TooLarge { .. } => "look for a digit too many".to_owned(),
            Self::PercentBelowNought { .. } => "write a per cent of nought or more".to_owned(),
            Self::PercentTooMuch { most, .. } => {
                format!("write at most {most} %, as 7.5 for 7.5 %")
            }
            Self::NoCoin { .. } => {
                "write what the smallest coin is worth, such as 0.05, or leave it empty".to_owned()
            }
            Self::BelowTheUnit { digits, .. } => {
                format!("write it with at most {digits} digits after the point")
            }
            Self::MoreThanACoin { .. } => {
                "write what the smallest coin is worth, such as 0.05".to_owned()
            }
            Self::RateForNothing => {
                "name the work or the grade, or change the shop's own rate".to_owned()
            }
            Self::SameRate => "leave one of them out".to_owned(),
            Self::NotKnown { time } => format!("give the {time}, or charge by the other"),
            Self::TooLong { .. } => "look for a digit too many".to_owned(),
            Self::HourBelowNought { .. } => {
                "write what an hour costs; a discount stands on the line it is for".to_owned()
            }
            Self::HourTooMuch { .. } => "look for a digit too many".to_owned(),
            Self::OfWhatPercent => "tick labour, parts, or both".to_owned(),
            Self::OfThemselves => "take shop supplies out".to_owned(),
            Self::OfWhat => "write what is got rid of, such as waste oil".to_owned(),
            Self::NoCore { .. } => "choose the line of the core charge".to_owned(),
            Self::NoneCameBack => "count the cores that came back".to_owned(),
            Self::MoreCameBack { .. } => "count again, or choose the other line".to_owned(),
            Self::SumTooLarge => {
                "the sum is too large to be reckoned; look at quantities, prices and taxes again"
                    .to_owned()
            }
            Self::MoreThanInAll { .. } => "ask for less".to_owned(),
            Self::MoreThanThere { .. } => "take off less".to_owned(),
            Self::NothingForTheCost { .. } => {
                "write less than 100, or say markup if it is a per cent of the cost".to_owned()
            }
            Self::NoEnd => "put it last, or say up to which cost it goes".to_owned(),
            Self::BandsOutOfOrder { .. } => {
                "put the bands in order, the lowest cost first".to_owned()
            }
            Self::NoBand { .. } => "write the price itself, or add a band with no end".to_owned(),
            Self::PriceTooLarge => "look for a digit too many".to_owned(),
            Self::NoPrice => "write what the job costs, parts and labour".to_owned(),
            Self::NoneGoesIn => "write how many go in".to_owned(),
            Self::PartsComeToMore { .. } => {
                "raise the price, or lower what the parts count for".to_owned()
            }
            Self::NothingBack => "write on each line how much goes back".to_owned(),
            Self::NoSuchLine { .. } => "choose one of them".to_owned(),
            Self::LineTwice => "put both together".to_owned(),
            Self::NotInCoins { digits, .. } => {
                format!("write at most {digits} digits after the point")
            }
            Self::MoreThanLeft { .. } => "take back at most what is left".to_owned(),
            Self::TooManyTaxes { most, .. } => format!("keep to {most}"),
            Self::NoName => "write what papers call it".to_owned(),
            Self::TaxTwice { .. } => {
                "give each tax a name of its own, with its rate if need be".to_owned()
            }
            Self::NoSuchTax { .. } => "name one of the taxes, or none for all of them".to_owned(),
        }
    }
}

/// The most a single price, rate or amount may be: what is above is a slip of the finger.
pub const MOST: Decimal = Decimal::from_parts(1_000_000_000, 0, 0, false, 0);

/// An amount of money from nought to [`MOST`].
pub(crate) fn amount(at: &str, amount: Decimal) -> Result<(), Fault> {
    if amount < Decimal::ZERO {
        return Err(Fault::new(at, Wrong::BelowNought { amount }));
    }
    if amount >= MOST {
        return Err(Fault::new(at, Wrong::TooLarge { amount }));
    }
    Ok(())
}

/// A per cent from nought to `most`.
pub(crate) fn percent(at: &str, percent: Decimal, most: u32) -> Result<(), Fault> {
    if percent < Decimal::ZERO {
        return Err(Fault::new(at, Wrong::PercentBelowNought { percent }));
    }
    if percent > Decimal::from(most) {
        return Err(Fault::new(at, Wrong::PercentTooMuch { percent, most }));
    }
    Ok(())
}
