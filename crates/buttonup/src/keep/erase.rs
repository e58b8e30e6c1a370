//! `erase`: a customer's words, here and, when they are restored, in the backups.

use super::notes;
use super::place::Place;
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::json;
use shop::repair::{CustomerId, Token, Words};
use shop::{Breadth, Service, Whom};
use std::path::PathBuf;
use std::sync::Arc;

/// Whose words, and why.
#[derive(Debug, Args)]
pub struct Erase {
    /// The customer, by name in the record.
    #[arg(
        long,
        value_name = "ID",
        required_unless_present = "order",
        conflicts_with = "order"
    )]
    customer: Option<String>,
    /// The customer of the order with this number.
    #[arg(long, value_name = "NUMBER")]
    order: Option<u64>,
    /// Also every word typed and every photo taken on their orders and vehicles.
    #[arg(long)]
    every_word: bool,
    /// Why, in a few plain words, without names.
    #[arg(long, value_name = "WORDS", default_value = "asked by the customer")]
    why: String,
    /// Who does it, by name in the record.
    #[arg(long, value_name = "PERSON")]
    who: String,
    #[command(flatten)]
    place: Place,
}

/// Erases, and writes it beside the backups.
pub fn erase(erase: &Erase) -> Result<Answer, Wrong> {
    let why = Token::new(&erase.why)
        .map_err(|error| Wrong::input("--why", error.to_string(), "say it in a few plain words"))?;
    let whom = match (&erase.customer, erase.order) {
        (Some(customer), _) => Whom::Customer(CustomerId::new(customer.clone())),
        (None, number) => Whom::OfOrder(number.unwrap_or_default()),
    };
    let breadth = if erase.every_word {
        Breadth::EveryWord
    } else {
        Breadth::Person
    };
    let store = erase.place.write_existing()?.shared();
    let service = Service::open(store, &erase.place.log, Arc::new(Timestamp::now))?;
    let done = shop::erase(&service, &whom, breadth, &erase.who, &why)?;
    let (store, log) = service.record();
    let unreached = write_beside_backups(&erase.place, &shop::erasures(store, log)?);
    let head = Words(store.head(log).map_err(shop::Trouble::from)?.hash).hex();
    let names = unreached.iter().map(|to| to.display().to_string());
    let names: Vec<String> = names.collect();
    let also = if names.is_empty() {
        String::new()
    } else {
        format!(
            "\nThese backups could not be told and would bring the words back: {}\n  mend: back up to the same place again, which tells them",
            names.join(", ")
        )
    };
    Ok(Answer {
        text: format!(
            "erased {} texts and files of customer {} (orders: {}); head {head}{also}",
            done.texts.len(),
            done.customer.as_str(),
            orders(&done.orders)
        ),
        json: json!({
            "customer": done.customer.as_str(),
            "erased": done.texts.len(),
            "orders": done.orders,
            "head": head,
            "backups_not_told": names,
        }),
        good: true,
    })
}

fn orders(numbers: &[u64]) -> String {
    if numbers.is_empty() {
        return "none".to_owned();
    }
    let numbers: Vec<String> = numbers.iter().map(u64::to_string).collect();
    numbers.join(", ")
}

/// The backups that are there no more, or can't be reached now.
fn write_beside_backups(place: &Place, erased: &[store::Hash]) -> Vec<PathBuf> {
    notes::noted(place)
        .into_iter()
        .map(|note| note.to)
        .filter(|to| notes::write_erasures(to, erased).is_err())
        .collect()
}
