//! What is offered where a price is set: fixed-price jobs, prices from costs, supplies, fees,
//! what a discount would come to.

use crate::amount::Amount;
use crate::phrases::offers as words;
use crate::say::of_price;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::customer_of;
use repair::price::{Entry, Fault, HoursBy, Payer, Portion, amount, off_entry, off_order, renewed};
use repair::{Fact, OrderId, Words, papers};
use rust_decimal::Decimal;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A rate that the shop keeps for a kind of work or a grade.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RateOffer {
    /// What it is for.
    pub name: String,
    /// The price of an hour.
    pub hour: Amount,
    /// The grade that it is for, if it is for one.
    pub grade: Option<String>,
}

/// A job at a fixed price.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobOffer {
    /// What it is called.
    pub name: String,
    /// Its price.
    pub price: Amount,
    /// What goes with it, in words.
    pub parts: Vec<String>,
    /// Its entries, with their words still to be salted by the device: `{"$words": …}`.
    pub entries: Vec<Value>,
    /// How its price is made up, as HTML made by the program.
    pub working_html: String,
}

/// A price that follows from a rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PriceOffer {
    /// The price.
    pub price: Amount,
    /// How it was found, as HTML made by the program.
    pub working_html: String,
}

/// What it costs to get rid of something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FeeOffer {
    /// Of what.
    pub of: String,
    /// For one.
    pub each: Amount,
}

/// A price with something taken off, to be sent with its reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OffOffer {
    /// What is taken off in all.
    pub off: Amount,
    /// By each open entry, in sequence: what is taken off it, without the reason of what is
    /// new, which the device puts in the place of null.
    pub less: Vec<Vec<Value>>,
    /// By each open entry: what is left of it.
    pub amounts: Vec<Amount>,
}

fn trouble(fault: Fault) -> Trouble {
    Trouble::unreadable(
        &of_price::place(&fault),
        of_price::what(&fault.wrong),
        &of_price::how(&fault.wrong),
    )
}

fn digits(snap: &Snapshot<'_>) -> u32 {
    let settings = snap.world().shop.settings();
    settings.map_or(2, |settings| settings.minor_digits)
}

/// The rates that the shop keeps beside its own.
#[must_use]
pub fn rates(snap: &Snapshot<'_>) -> Vec<RateOffer> {
    let rules = snap.world().shop.money();
    let named = |rate: &repair::price::Rate| {
        let names = [&rate.work, &rate.grade];
        let names: Vec<&str> = names.into_iter().flatten().map(String::as_str).collect();
        RateOffer {
            name: names.join(", "),
            hour: rate.hour.normalize().into(),
            grade: rate.grade.clone(),
        }
    };
    rules.rates.iter().map(named).collect()
}

/// The grade of who is to work on an order, where one was told of the first of them.
#[must_use]
pub fn grade_of(snap: &Snapshot<'_>, assigned: &[String]) -> Option<String> {
    let first = repair::PersonId::new(assigned.first()?);
    snap.world().shop.grade(&first).map(str::to_owned)
}

/// Hours that the clock ran at an order's stages, as they are charged: in hundredths. Nothing,
/// where no clock ran.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn clock_hours(snap: &Snapshot<'_>, order: &OrderId) -> Result<Option<String>, Trouble> {
    let order = snap.world().order(order)?;
    let stages = crate::odds_of::stages_of(&order, None);
    let minutes: f64 = stages.iter().map(|stage| stage.minutes).sum();
    Ok((minutes > 0.0).then(|| format!("{:.2}", minutes / 60.0)))
}

/// Whether the shop charges by the clock alone.
#[must_use]
pub fn is_by_clock(snap: &Snapshot<'_>) -> bool {
    snap.world().shop.money().hours_by == HoursBy::Clock
}

/// Which hours the shop charges, as it says so.
#[must_use]
pub fn hours(snap: &Snapshot<'_>) -> &'static str {
    match snap.world().shop.money().hours_by {
        HoursBy::Book => words::by_the_book(),
        HoursBy::Clock => words::by_the_clock(),
        HoursBy::Lesser => words::the_lesser(),
    }
}

/// The fixed-price jobs that the shop keeps. Those that add up no more are left out.
#[must_use]
pub fn jobs(snap: &Snapshot<'_>) -> Vec<JobOffer> {
    let digits = digits(snap);
    let text = |label: [u8; 32]| snap.texts().text(Words(label));
    let offered = |job: &repair::price::FixedJob| {
        let entries = job.entries(None, Payer::Customer, digits).ok()?;
        let sent = entries.iter().map(|entry| {
            let label = entry.label.map_or_else(String::new, text);
            json!({ "charge": record::v1::codes::ChargeForm::word(entry.charge), "label": { "$words": label },
                "quantity": entry.quantity.normalize().to_string(), "each": entry.each.to_string() })
        });
        Some(JobOffer {
            name: text(job.name),
            price: crate::say::money(job.price, digits),
            parts: job
                .parts
                .iter()
                .map(|part| {
                    let quantity = Amount::from(part.quantity.normalize());
                    format!("{quantity} × {}", text(part.name))
                })
                .collect(),
            entries: sent.collect(),
            working_html: job.working(digits).html(),
        })
    };
    let world = snap.world();
    let jobs = world.shop.jobs();
    jobs.into_iter()
        .filter_map(|(_, job)| offered(job))
        .collect()
}

/// The fees for getting rid of things.
#[must_use]
pub fn disposal(snap: &Snapshot<'_>) -> Vec<FeeOffer> {
    let rules = snap.world().shop.money();
    let fee = |fee: &repair::price::Disposal| FeeOffer {
        of: fee.of.clone(),
        each: fee.each.normalize().into(),
    };
    rules.disposal.iter().map(fee).collect()
}

/// What a part or work sent out is sold for that costs so much.
///
/// # Errors
/// [`Trouble`]: the cost is no amount, or the shop has no rule that goes so far.
pub fn from_cost(snap: &Snapshot<'_>, cost: &str, sublet: bool) -> Result<PriceOffer, Trouble> {
    let cost: Decimal = plain_number(cost).parse().map_err(|_| {
        Trouble::unreadable(
            words::cost(),
            words::no_amount(format!("{cost:?}")),
            words::write_a_number(),
        )
    })?;
    let rules = snap.world().shop.money();
    let bands = if sublet { &rules.sublet } else { &rules.parts };
    let found = bands.price(cost, digits(snap)).map_err(trouble)?;
    Ok(PriceOffer {
        price: found.price.into(),
        working_html: found.working.html(),
    })
}

/// What each part of an order would be sold for that has a cost and no price.
#[must_use]
pub fn part_prices(snap: &Snapshot<'_>, order: &OrderId) -> BTreeMap<String, PriceOffer> {
    let Ok(order) = snap.world().order(order) else {
        return BTreeMap::new();
    };
    let bands = snap.world().shop.money().parts;
    let digits = papers::minor_digits(&order);
    let needed = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartNeeded {
                part,
                cost: Some(cost),
                price: None,
                ..
            } => Some((part, *cost)),
            _ => None,
        });
    needed
        .filter_map(|(part, cost)| {
            let found = bands.price(cost, digits).ok()?;
            let offer = PriceOffer {
                price: found.price.into(),
                working_html: found.working.html(),
            };
            Some((part.as_str().to_owned(), offer))
        })
        .collect()
}

/// Whether the customer of an order is exempt from taxes, and how that is told otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ExemptOffer {
    /// The customer, by name in the record.
    pub customer: String,
    /// The number they are exempt by.
    pub number: Option<String>,
    /// The tellings seen.
    pub after: Vec<String>,
}

/// What is known of it.
#[must_use]
pub fn exemption(snap: &Snapshot<'_>, order: &OrderId) -> Option<ExemptOffer> {
    let world = snap.world();
    let id = customer_of(world.order(order).ok()?.as_ref())?;
    let customer = world.customer(&id).ok()?;
    let number = customer
        .exemption()
        .map(|exempt| snap.texts().text(Words(exempt.number)));
    let after = customer.exemption_told().into_iter();
    Some(ExemptOffer {
        customer: id.as_str().to_owned(),
        number,
        after: after.map(|command| command.as_str().to_owned()).collect(),
    })
}

/// What shop supplies come to on what is on no invoice; nothing where the shop charges none.
#[must_use]
pub fn supplies(snap: &Snapshot<'_>, order: &OrderId) -> Option<PriceOffer> {
    let rule = snap.world().shop.money().supplies?;
    let order = snap.world().order(order).ok()?;
    let entries = papers::price(&order)?.entries;
    let found = rule.found(&entries, papers::minor_digits(&order)).ok()?;
    (found.sum > Decimal::ZERO).then(|| PriceOffer {
        price: found.sum.into(),
        working_html: found.working.html(),
    })
}

/// A number as people write it, with a point as the program reads it: of a comma and a point the
/// last one is the decimal sign. One of them alone before three digits stands between thousands
/// where the program writes thousands so itself in what is spoken: a comma in English, a point in
/// German.
#[must_use]
pub fn plain_number(text: &str) -> String {
    let bare: String = text
        .chars()
        .filter(|c| !c.is_whitespace() && *c != '\'')
        .map(|c| if c == '\u{2212}' { '-' } else { c })
        .collect();
    let thousands = ::phrases::spoken().thousands();
    let parts_thousands = |mark: char| {
        let mut groups = bare.trim_start_matches('-').split(mark);
        let first = groups.next().unwrap_or_default();
        let begins = (1..=3).contains(&first.len()) && !first.starts_with('0');
        mark == thousands && begins && groups.all(|group| group.len() == 3)
    };
    match (bare.rfind(','), bare.rfind('.')) {
        (None, None) => bare,
        (None, Some(_)) if parts_thousands('.') => bare.replace('.', ""),
        (None, Some(_)) => bare,
        (Some(comma), Some(point)) if point > comma => bare.replace(',', ""),
        (Some(_), None) if parts_thousands(',') => bare.replace(',', ""),
        (Some(_), _) => bare.replace('.', "").replace(',', "."),
    }
}

/// What a discount would come to: on the entry of this place among those on no invoice, or on
/// all that the customer pays of them.
///
/// # Errors
/// [`Trouble`]: it is no per cent or amount, or more than there is.
pub fn discount(
    snap: &Snapshot<'_>,
    order: &OrderId,
    off: &str,
    entry: Option<usize>,
) -> Result<OffOffer, Trouble> {
    let (text, is_percent) = match off.trim().strip_suffix('%') {
        Some(percent) => (percent.trim(), true),
        None => (off.trim(), false),
    };
    let number: Decimal = plain_number(text).parse().map_err(|_| {
        Trouble::unreadable(
            words::discount(),
            words::no_per_cent_no_amount(format!("{off:?}")),
            words::write_per_cent_or_amount(),
        )
    })?;
    let portion = if is_percent {
        Portion::Percent(number)
    } else {
        Portion::Amount(number)
    };
    let order = snap.world().order(order)?;
    let digits = papers::minor_digits(&order);
    let entries = papers::price(&order).map_or_else(Vec::new, |price| price.entries);
    // Told apart from what stands by a reason that no words can have.
    let new = [0; 32];
    let less = match entry {
        None => off_order(&entries, Payer::Customer, portion, new, digits).map_err(trouble)?,
        Some(nth) => {
            let mut all = entries.clone();
            let entry = all
                .get_mut(nth)
                .ok_or_else(|| Trouble::not_found(words::entry_is_gone()))?;
            // As it is once it is set: a discount on the order is of what is left of the line.
            let less = off_entry(entry, portion, new, digits).map_err(trouble)?;
            *entry = renewed(&less, digits);
            all
        }
    };
    let sum = |all: &[Entry]| -> Decimal {
        let amounts = all.iter().filter_map(|entry| amount(entry, digits).ok());
        amounts.fold(Decimal::ZERO, Decimal::saturating_add)
    };
    let taken = sum(&entries).saturating_sub(sum(&less));
    let sent = |less: &repair::price::Less| {
        let why = (less.why != new).then(|| Words(less.why).hex());
        json!({ "amount": less.amount.to_string(), "percent": less.percent.map(|percent| percent.to_string()),
            "why": why, "of_order": less.of_order })
    };
    Ok(OffOffer {
        off: crate::say::money(taken, digits),
        less: less
            .iter()
            .map(|entry| entry.less.iter().map(sent).collect())
            .collect(),
        amounts: less
            .iter()
            .map(|entry| {
                amount(entry, digits).map_or_else(
                    |bad| Amount::new(bad.to_string()),
                    |sum| crate::say::money(sum, digits),
                )
            })
            .collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::plain_number;

    #[test]
    fn a_number_is_read_as_it_is_meant() {
        for (typed, meant) in [
            ("12.5", "12.5"),
            ("12,5", "12.5"),
            ("12,50", "12.50"),
            ("1,440", "1440"),
            ("1,440.00", "1440.00"),
            ("1.440,00", "1440.00"),
            ("1 440,00", "1440.00"),
            ("1'440.50", "1440.50"),
            ("0,125", "0.125"),
            ("\u{2212}3,5", "-3.5"),
            ("", ""),
        ] {
            assert_eq!(plain_number(typed), meant, "{typed}");
        }
        for (typed, meant) in [
            ("12.5", "12.5"),
            ("12,5", "12.5"),
            ("1.440", "1440"),
            ("1.440,00", "1440.00"),
            ("1,440.00", "1440.00"),
            ("1.234.567", "1234567"),
            ("0.125", "0.125"),
            ("1,125", "1.125"),
        ] {
            let read = phrases::speaking(phrases::Language::German, || plain_number(typed));
            assert_eq!(read, meant, "{typed}");
        }
    }
}
