//! What is wrong with a rule of prices, a figure or a line, in words.

use crate::phrases::price as words;
use repair::EntryFault;
use repair::price::{Charge, Fault, Time, Wrong};
use rust_decimal::Decimal;

fn number(decimal: &Decimal) -> String {
    ::phrases::number(&decimal.to_string())
}

/// Where it is: words of the price, and names that somebody gave.
pub(crate) fn place(fault: &Fault) -> String {
    let said: Vec<String> = fault.at.split(", ").map(one_place).collect();
    said.join(", ")
}

fn one_place(at: &str) -> String {
    let fixed = match at {
        "rate" => words::rate(),
        "markup" => words::markup(),
        "margin" => words::margin(),
        "least on top" => words::least_on_top(),
        "cost" => words::cost(),
        "price" => words::price(),
        "hours" => words::hours(),
        "shop supplies" => words::shop_supplies(),
        "disposal" => words::disposal(),
        "core" => words::core(),
        "price of the job" => words::price_of_the_job(),
        "discount" => words::discount(),
        "discount on the order" => words::discount_on_the_order(),
        "deposit" => words::deposit(),
        "taxes" => words::taxes(),
        "exempt from" => words::exempt_from(),
        "smallest coin" => words::smallest_coin(),
        "credit note" => words::credit_note(),
        "parts" => words::parts(),
        "work sent out" => words::work_sent_out(),
        _ => return numbered(at),
    };
    fixed.to_owned()
}

fn numbered(at: &str) -> String {
    if let Some(what) = at.strip_prefix("disposal of ") {
        return words::disposal_of(what);
    }
    let Some((word, nth)) = at.split_once(' ') else {
        return at.to_owned();
    };
    if nth.parse::<u64>().is_err() {
        return at.to_owned();
    }
    match word {
        "rate" => words::rate_number(nth),
        "band" => words::band(nth),
        "part" => words::part(nth),
        "tax" => words::tax(nth),
        "line" => words::line(nth),
        _ => at.to_owned(),
    }
}

fn charge(charge: Charge) -> &'static str {
    match charge {
        Charge::Labour => words::labour(),
        Charge::Part => words::a_part(),
        Charge::Sublet => words::work_sent_out(),
        Charge::Supplies => words::shop_supplies(),
        Charge::Core => words::core_charge(),
        Charge::Test => words::test(),
        Charge::Fee => words::fee(),
        Charge::Disposal => words::disposal(),
    }
}

/// What is wrong.
pub(crate) fn what(wrong: &Wrong) -> String {
    let fixed = match wrong {
        Wrong::BelowNought { amount } => return words::amount_below_nought(number(amount)),
        Wrong::TooLarge { amount } => return words::amount_too_large(number(amount)),
        Wrong::PercentBelowNought { percent } => {
            return words::percent_below_nought(number(percent));
        }
        Wrong::PercentTooMuch { percent, .. } => return words::percent_too_much(number(percent)),
        Wrong::NoCoin { smallest } => return words::no_coin(number(smallest)),
        Wrong::BelowTheUnit { smallest, .. } => return words::below_the_unit(number(smallest)),
        Wrong::MoreThanACoin { smallest } => return words::more_than_a_coin(number(smallest)),
        Wrong::TooLong { minutes } => return words::minutes_too_long(minutes),
        Wrong::HourBelowNought { hour } => return words::hour_below_nought(number(hour)),
        Wrong::HourTooMuch { hour } => return words::hour_too_much(number(hour)),
        Wrong::NoCore { charge: of } => return words::not_a_core_charge(charge(*of)),
        Wrong::MoreCameBack { pieces, charged } => {
            return words::more_came_back(number(pieces), number(charged));
        }
        Wrong::MoreThanInAll { asked, total } => {
            return words::more_than_in_all(number(asked), number(total));
        }
        Wrong::MoreThanThere { taken, there } => {
            return words::more_than_there(number(taken), number(there));
        }
        Wrong::NothingForTheCost { margin } => return words::nothing_for_the_cost(number(margin)),
        Wrong::BandsOutOfOrder { up_to, below } => {
            return words::ends_before(number(up_to), number(below));
        }
        Wrong::NoBand { cost } => return words::no_band(number(cost)),
        Wrong::PartsComeToMore { parts, price } => {
            let parts = (parts.as_ref()).map_or_else(|| words::too_much().to_owned(), number);
            return words::parts_come_to_more(parts, number(price));
        }
        Wrong::NoSuchLine { lines } => return words::no_such_line(lines),
        Wrong::NotInCoins { amount, .. } => return words::not_in_coins(number(amount)),
        Wrong::MoreThanLeft { amount, left } => {
            return words::more_than_left(number(amount), number(left));
        }
        Wrong::TooManyTaxes { taxes, .. } => return words::so_many_taxes(taxes),
        Wrong::TaxTwice { name } => return words::tax_twice(name),
        Wrong::NoSuchTax { name } => return words::no_such_tax(name),
        Wrong::NotKnown { time: Time::Book } => words::book_not_known(),
        Wrong::NotKnown { time: Time::Clock } => words::clock_not_known(),
        Wrong::RateForNothing => words::rate_for_nothing(),
        Wrong::SameRate => words::same_rate(),
        Wrong::OfWhatPercent => words::of_what_percent(),
        Wrong::OfThemselves => words::of_themselves(),
        Wrong::OfWhat => words::of_what(),
        Wrong::NoneCameBack => words::none_came_back(),
        Wrong::SumTooLarge => words::sum_not_reckoned(),
        Wrong::NoEnd => words::no_end(),
        Wrong::PriceTooLarge => words::price_too_large(),
        Wrong::NoPrice => words::price_is_nought(),
        Wrong::NoneGoesIn => words::none_goes_in(),
        Wrong::NothingBack => words::nothing_back(),
        Wrong::LineTwice => words::line_twice(),
        Wrong::NoName => words::no_name(),
    };
    fixed.to_owned()
}

/// How it is mended.
pub(crate) fn how(wrong: &Wrong) -> String {
    let fixed = match wrong {
        Wrong::PercentTooMuch { most, .. } => return words::write_at_most_percent(most),
        Wrong::BelowTheUnit { digits, .. } => return words::write_it_with_digits(digits),
        Wrong::NotInCoins { digits, .. } => return words::write_at_most_digits(digits),
        Wrong::TooManyTaxes { most, .. } => return words::keep_to(most),
        Wrong::TooLarge { .. }
        | Wrong::TooLong { .. }
        | Wrong::HourTooMuch { .. }
        | Wrong::PriceTooLarge => words::a_digit_too_many(),
        Wrong::BelowNought { .. } => words::write_nought_or_more(),
        Wrong::PercentBelowNought { .. } => words::write_percent_from_nought(),
        Wrong::NoCoin { .. } => words::write_coin_or_empty(),
        Wrong::MoreThanACoin { .. } => words::write_coin(),
        Wrong::RateForNothing => words::name_work_or_grade(),
        Wrong::SameRate => words::leave_one_out(),
        Wrong::NotKnown { time: Time::Book } => words::give_book_time(),
        Wrong::NotKnown { time: Time::Clock } => words::give_clock_time(),
        Wrong::HourBelowNought { .. } => words::write_what_an_hour_costs(),
        Wrong::OfWhatPercent => words::tick_labour_or_parts(),
        Wrong::OfThemselves => words::take_supplies_out(),
        Wrong::OfWhat => words::write_what_is_got_rid_of(),
        Wrong::NoCore { .. } => words::choose_the_core_charge(),
        Wrong::NoneCameBack => words::count_the_cores(),
        Wrong::MoreCameBack { .. } => words::count_again(),
        Wrong::SumTooLarge => words::look_at_quantities(),
        Wrong::MoreThanInAll { .. } => words::ask_for_less(),
        Wrong::MoreThanThere { .. } => words::take_off_less(),
        Wrong::NothingForTheCost { .. } => words::write_less_or_markup(),
        Wrong::NoEnd => words::put_it_last(),
        Wrong::BandsOutOfOrder { .. } => words::put_bands_in_order(),
        Wrong::NoBand { .. } => words::write_price_or_add_band(),
        Wrong::NoPrice => words::write_what_it_costs(),
        Wrong::NoneGoesIn => words::write_how_many(),
        Wrong::PartsComeToMore { .. } => words::raise_the_price(),
        Wrong::NothingBack => words::write_how_much_back(),
        Wrong::NoSuchLine { .. } => words::choose_one(),
        Wrong::LineTwice => words::put_both_together(),
        Wrong::MoreThanLeft { .. } => words::take_back_what_is_left(),
        Wrong::NoName => words::write_what_papers_call_it(),
        Wrong::TaxTwice { .. } => words::own_names(),
        Wrong::NoSuchTax { .. } => words::name_a_tax(),
    };
    fixed.to_owned()
}

/// What is wrong with a line of the price, and how it is mended.
pub(crate) fn entry(fault: EntryFault) -> (&'static str, Option<&'static str>) {
    match fault {
        EntryFault::TooMany => (words::more_than_500(), Some(words::put_some_together())),
        EntryFault::NoQuantity => (words::quantity_above_nought(), None),
        EntryFault::RateBelowNought => {
            (words::rate_below_nought(), Some(words::as_another_charge()))
        }
        EntryFault::TooLarge => (words::line_too_large(), Some(words::look_at_quantity())),
        EntryFault::DiscountBelowNought => (
            words::discount_below_nought(),
            Some(words::more_on_the_price()),
        ),
        EntryFault::MoreOff => (words::more_off_than_there(), Some(words::take_off_less())),
        EntryFault::OnInvoice => (words::on_an_invoice(), Some(words::leave_it_out())),
    }
}
