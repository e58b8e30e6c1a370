//! Facts about the shop that everything else is reckoned by: what no sum, time or ranking
//! could rest on is not read.

use crate::trouble::Trouble;
use jiff::tz::TimeZone;
use repair::price::{Fault, Taxing};
use repair::{MoneyRules, Settings};
use rust_decimal::Decimal;

/// Rules that this program does not have would silently let nothing pass.
pub(super) fn check_place(place: &str, version: u32) -> Result<(), Trouble> {
    if crate::places::place(place, version).is_some() {
        return Ok(());
    }
    Err(Trouble::unreadable(
        "the place whose rules hold",
        format!("version {version} of {place:?} is not among the rules this program has"),
        "choose one that the page of the shop lists, or none",
    ))
}

/// Settings that every sum and every time rests on.
pub(super) fn check_settings(settings: &Settings) -> Result<(), Trouble> {
    /// No currency in use has more.
    const MOST_DIGITS: u32 = 4;
    if TimeZone::get(&settings.zone).is_err() {
        return Err(Trouble::unreadable(
            "the shop's time zone",
            format!("{:?} is no time zone", settings.zone),
            "write it like Europe/Lisbon or America/Chicago",
        ));
    }
    check_sums(settings)?;
    if settings.minor_digits > MOST_DIGITS {
        return Err(Trouble::unreadable(
            "the shop's currency",
            format!(
                "{} digits after the point; no currency has more than {MOST_DIGITS}",
                settings.minor_digits
            ),
            "give the digits of the smallest coin: 2 for cents",
        ));
    }
    Ok(())
}

/// A rate or tax below nought would pay the customer for the work.
fn check_sums(settings: &Settings) -> Result<(), Trouble> {
    // Beyond it is a slip of the finger.
    const LARGEST_RATE: i64 = 1_000_000_000;
    let within = |sum: Decimal, most: Decimal| (Decimal::ZERO..=most).contains(&sum);
    if !within(settings.rate, LARGEST_RATE.into()) {
        return Err(Trouble::unreadable(
            "the shop's rate",
            format!("{} is no rate of an hour", settings.rate),
            "give what an hour costs before tax: nought or more",
        ));
    }
    let odd = settings
        .taxes
        .iter()
        .find(|tax| !within(tax.percent, Decimal::ONE_THOUSAND));
    if let Some(tax) = odd {
        return Err(Trouble::unreadable(
            "the shop's tax",
            format!("{}: {} per cent is no tax", tax.name, tax.percent),
            "give its per cent: nought or more, such as 20",
        ));
    }
    Taxing::of(&settings.taxes).check().map_err(told)
}

/// A fault of a rule or a figure, as it is told.
fn told(fault: Fault) -> Trouble {
    Trouble::unreadable(&fault.at, fault.what, &fault.how)
}

/// Rules that every price rests on.
pub(super) fn check_money(rules: &MoneyRules, settings: Option<&Settings>) -> Result<(), Trouble> {
    let hour = settings.map_or(Decimal::ZERO, |settings| settings.rate);
    let digits = settings.map_or(2, |settings| settings.minor_digits);
    rules.check(hour, digits).map_err(told)
}

/// A job at a fixed price that does not add up has none.
pub(super) fn check_job(
    job: &repair::price::FixedJob,
    settings: Option<&Settings>,
) -> Result<(), Trouble> {
    let digits = settings.map_or(2, |settings| settings.minor_digits);
    job.check(digits).map_err(told)
}

/// Nobody keeps records for ever, and no year is that far.
pub(super) fn check_years(years: u32) -> Result<(), Trouble> {
    const MOST: u32 = 100;
    if years <= MOST {
        return Ok(());
    }
    Err(Trouble::unreadable(
        "the years that records are kept",
        format!("{years} years; nobody keeps records for more than {MOST}"),
        "say it in whole years, as the law or your accountant does",
    ))
}

/// Weights of which none counts, or of which one counts less than nothing, rank nothing.
pub(super) fn check_weights(weights: &repair::Weights) -> Result<(), Trouble> {
    let all = [
        weights.margin,
        weights.time,
        weights.cost,
        weights.reversibility,
    ];
    let most = Decimal::ONE_THOUSAND;
    let within = all
        .iter()
        .all(|weight| !weight.is_sign_negative() && *weight <= most);
    if within && all.iter().any(|weight| !weight.is_zero()) {
        return Ok(());
    }
    Err(Trouble::unreadable(
        "the weights",
        "each must be between 0 and 1000, and one above 0",
        "write 1 for each to count them alike",
    ))
}
