//! `erase`: a customer's words, here and, when they are restored, in the backups.

use super::notes;
use super::place::Place;
use crate::answer::{Answer, Wrong};
use clap::{ArgGroup, Args};
use jiff::Timestamp;
use serde_json::json;
use shop::repair::{CustomerId, Token, Words};
use shop::{Breadth, Device, Erased, Service, Waiting, Whom};
use std::path::PathBuf;
use std::sync::Arc;

/// Whose words, and why.
#[derive(Debug, Args)]
#[command(group(ArgGroup::new("whom").required(true)))]
pub struct Erase {
    /// The customer, by name in the record.
    #[arg(long, value_name = "ID", group = "whom")]
    customer: Option<String>,
    /// The customer of the order with this number.
    #[arg(long, value_name = "NUMBER", group = "whom")]
    order: Option<u64>,
    /// Only carry out what was asked for before and has waited long enough. A shop that is
    /// served does so by itself.
    #[arg(long, group = "whom")]
    due: bool,
    /// The machine's clock is right, though the last events are of another day.
    #[arg(long, requires = "due")]
    clock_is_right: bool,
    /// What was asked for is not wanted after all: nothing that waits for them is erased.
    #[arg(long, conflicts_with_all = ["due", "every_word"])]
    call_off: bool,
    /// Also every word typed or spoken and every photo taken on their orders and vehicles.
    #[arg(long)]
    every_word: bool,
    /// Why, in a few plain words, without names.
    #[arg(long, value_name = "WORDS", default_value = "asked by the customer")]
    why: String,
    /// Who does it, by name in the record.
    #[arg(long, value_name = "PERSON", required_unless_present = "due")]
    who: Option<String>,
    #[command(flatten)]
    place: Place,
}

/// For how long records are kept.
#[derive(Debug, Args)]
pub struct KeepFor {
    /// Whole years after an order's end.
    #[arg(value_name = "YEARS", value_parser = clap::value_parser!(u32).range(..=100))]
    years: u32,
    /// Who says so, by name in the record.
    #[arg(long, value_name = "PERSON")]
    who: String,
    #[command(flatten)]
    place: Place,
}

/// Says for how many years records are kept; until then erasures wait.
pub fn keep_for(keep: &KeepFor) -> Result<Answer, Wrong> {
    let service = open(&keep.place)?;
    must_be_known(&service, &keep.who)?;
    let told: Vec<String> = service
        .world()?
        .shop
        .records_kept_told()
        .into_iter()
        .map(|command| command.as_str().to_owned())
        .collect();
    let fact = json!({ "records-kept": { "years": keep.years, "after": told } });
    let mut device = Device::new("buttonup", &keep.who);
    let caller = service.caller(Some(&keep.who), "buttonup")?;
    service.command(
        &caller,
        device.command("shop", service.now(), "shop_fact", fact),
    )?;
    let years = shop::kept_years(&*service.world()?);
    let longer = if years > keep.years {
        "; the rules of the place that the shop chose want so many"
    } else {
        ""
    };
    Ok(Answer {
        text: format!("records are kept for {years} years after an order's end{longer}"),
        json: json!({ "years": years }),
        good: true,
    })
}

/// Takes down what is to be erased, calls it off, or carries out what has waited long enough
/// and writes it beside the backups.
pub fn erase(erase: &Erase) -> Result<Answer, Wrong> {
    let why = Token::new(&erase.why)
        .map_err(|error| Wrong::input("--why", error.to_string(), "say it in a few plain words"))?;
    let service = open(&erase.place)?;
    let (whom, who) = match (&erase.customer, erase.order, &erase.who) {
        (Some(customer), _, Some(who)) => (Whom::Customer(CustomerId::new(customer.clone())), who),
        (None, Some(number), Some(who)) => (Whom::OfOrder(number), who),
        _ => {
            if !erase.clock_is_right {
                clock_agrees(&service)?;
            }
            return erased(erase_due(&erase.place, &service)?);
        }
    };
    must_be_known(&service, who)?;
    if erase.call_off {
        return Ok(called_off(&shop::call_off(&service, &whom, who)?));
    }
    let breadth = if erase.every_word {
        Breadth::EveryWord
    } else {
        Breadth::Person
    };
    let waiting = shop::ask_to_erase(&service, &whom, breadth, who, &why)?;
    waits(&service, &waiting)
}

fn open(place: &Place) -> Result<Service, Wrong> {
    let store = place.write_existing()?.shared();
    place.must_hold(store.as_ref())?;
    Ok(Service::open(store, &place.log, Arc::new(Timestamp::now))?)
}

/// Whoever types a name here is not at the vehicle: a slip is asked about, not kept for ever.
fn must_be_known(service: &Service, who: &str) -> Result<(), Wrong> {
    let world = service.world()?;
    let people = world.shop.people();
    if people.keys().any(|person| person.as_str() == who) {
        return Ok(());
    }
    let known: Vec<&str> = people.keys().map(|person| person.as_str()).collect();
    Err(Wrong::input(
        "--who",
        format!("there is nobody called {who:?} in the record"),
        format!("name one of these: {}", known.join(", ")),
    ))
}

/// What is erased does not come back. A clock that is years ahead would have everything be due:
/// it is believed where what was written last was written within a day of it.
pub fn clock_agrees(service: &Service) -> Result<(), Wrong> {
    let Some(doubt) = shop::clock_doubt(service)? else {
        return Ok(());
    };
    Err(Wrong {
        code: 1,
        place: "the machine's clock".to_owned(),
        what: format!(
            "it says {}, but the last event was written down at {}: one of them may be wrong",
            doubt.now, doubt.last
        ),
        mend: "look at the clock; if it is right, run `buttonup erase --due --clock-is-right`, or go on working: with the next event it agrees".to_owned(),
    })
}

/// What was erased, and what became of it elsewhere.
pub struct Due {
    done: Vec<Erased>,
    head: String,
    not_told: Vec<String>,
}

/// Carries out the erasures that have waited long enough.
pub fn erase_due(place: &Place, service: &Service) -> Result<Due, Wrong> {
    let done = shop::erase_due(service)?;
    let told = tell_backups(place, service)?;
    Ok(Due { done, ..told })
}

fn tell_backups(place: &Place, service: &Service) -> Result<Due, Wrong> {
    let (store, log) = service.record();
    let unreached = write_beside_backups(place, &shop::erasures(store, log)?);
    Ok(Due {
        done: Vec::new(),
        head: Words(store.head(log).map_err(shop::Trouble::from)?.hash).hex(),
        not_told: unreached
            .iter()
            .map(|to| to.display().to_string())
            .collect(),
    })
}

fn waits(service: &Service, waiting: &Waiting) -> Result<Answer, Wrong> {
    let zone = service.rules(&*service.world()?).zone;
    let earliest = waiting.earliest.to_zoned_datetime(zone);
    let until = waiting.until.filter(|until| *until > earliest.date());
    let when = match until {
        Some(until) => format!("records are kept up to {until}"),
        None => format!("it is done from {} on", earliest.strftime("%Y-%m-%d %H:%M")),
    };
    let customer = waiting.customer.as_str();
    Ok(Answer {
        text: format!(
            "taken down, and nothing is erased yet: {when}\n  then a shop that is served erases by itself, or `buttonup erase --due` does\n  not wanted after all? `buttonup erase --customer {customer} --call-off`, or the page about the record"
        ),
        json: json!({
            "customer": customer,
            "erased": 0,
            "asked": waiting.asked.as_str(),
            "earliest": waiting.earliest.to_string(),
            "waits_until": waiting.until.map(|until| until.max(earliest.date()).to_string()),
        }),
        good: true,
    })
}

fn called_off(waiting: &[Waiting]) -> Answer {
    let asked: Vec<&str> = waiting.iter().map(|one| one.asked.as_str()).collect();
    Answer {
        text: match waiting.len() {
            1 => "called off: nothing is erased".to_owned(),
            several => format!("called off, {several} askings: nothing is erased"),
        },
        json: json!({ "called_off": asked, "erased": 0 }),
        good: true,
    }
}

fn erased(due: Due) -> Result<Answer, Wrong> {
    let Due {
        done,
        head,
        not_told,
    } = due;
    let also = if not_told.is_empty() {
        String::new()
    } else {
        format!(
            "\nThese backups could not be told and would bring the words back: {}\n  mend: back up to the same place again, which tells them",
            not_told.join(", ")
        )
    };
    let lines: Vec<String> = done
        .iter()
        .map(|done| {
            format!(
                "erased {} texts and files of customer {} (orders: {})",
                done.texts.len(),
                done.customer.as_str(),
                orders(&done.orders)
            )
        })
        .collect();
    let text = if lines.is_empty() {
        "nothing has waited long enough".to_owned()
    } else {
        lines.join("\n")
    };
    let texts: usize = done.iter().map(|done| done.texts.len()).sum();
    let numbers: Vec<u64> = done.iter().flat_map(|done| done.orders.clone()).collect();
    let customers: Vec<&str> = done.iter().map(|done| done.customer.as_str()).collect();
    Ok(Answer {
        text: format!("{text}; head {head}{also}"),
        json: json!({
            "customer": customers.first(),
            "customers": customers,
            "erased": texts,
            "orders": numbers,
            "head": head,
            "backups_not_told": not_told,
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
