//! Facts about the shop that everything else is reckoned by: what no sum, time or ranking
//! could rest on is not read.

use crate::phrases::service as words;
use crate::say::of_price;
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
        words::the_place(),
        words::rules_unknown(version, format!("{place:?}")),
        words::choose_a_listed_place(),
    ))
}

/// Settings that every sum and every time rests on.
pub(super) fn check_settings(settings: &Settings) -> Result<(), Trouble> {
    /// No currency in use has more.
    const MOST_DIGITS: u32 = 4;
    if TimeZone::get(&settings.zone).is_err() {
        return Err(Trouble::unreadable(
            words::the_time_zone(),
            words::no_time_zone(format!("{:?}", settings.zone)),
            words::write_zone_like(),
        ));
    }
    check_sums(settings)?;
    if settings.minor_digits > MOST_DIGITS {
        return Err(Trouble::unreadable(
            words::the_currency(),
            words::too_many_digits(settings.minor_digits, MOST_DIGITS),
            words::give_digits_of_coin(),
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
            words::the_rate(),
            words::no_rate(::phrases::number(&settings.rate.to_string())),
            words::give_hour_cost(),
        ));
    }
    let odd = settings
        .taxes
        .iter()
        .find(|tax| !within(tax.percent, Decimal::ONE_THOUSAND));
    if let Some(tax) = odd {
        return Err(Trouble::unreadable(
            words::the_tax(),
            words::no_tax(&tax.name, ::phrases::number(&tax.percent.to_string())),
            words::give_per_cent(),
        ));
    }
    Taxing::of(&settings.taxes).check().map_err(told)
}

/// A fault of a rule or a figure, as it is told.
fn told(fault: Fault) -> Trouble {
    Trouble::unreadable(
        &of_price::place(&fault),
        of_price::what(&fault.wrong),
        &of_price::how(&fault.wrong),
    )
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
        words::years_kept(),
        words::too_many_years(years, MOST),
        words::say_whole_years(),
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
        words::the_weights(),
        words::weights_out_of_range(),
        words::write_one_for_each(),
    ))
}
