//! Erasing a person's words. The books stay whole: events, sums and hashes are kept, and
//! an event says what was erased, when and why.

use super::erased;
use super::waits::{self, Waiting};
use crate::appending;
use crate::device::Device;
use crate::phrases::keep as words;
use crate::phrases::order::no_order;
use crate::roles::{self, Act};
use crate::service::Service;
use crate::trouble::{Trouble, TroubleKind};
use crate::world::{Unread, World, customer_of};
use jiff::Timestamp;
use record::v1::basics::MOST_ERASED;
use record::{AnyEvent, Stream, canonical, encode};
use repair::{
    CommandId, CustomerFact, CustomerId, Decision, Event, Fact, Field, Order, OrderId, ShopFact,
    Token, VehicleFact, VehicleId, Words, papers,
};
use serde_json::json;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use store::{Hash, Store};

/// Whose words are erased.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whom {
    /// A customer by name in the record.
    Customer(CustomerId),
    /// The customer of an order, by the number people call it by.
    OfOrder(u64),
}

/// How much of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Breadth {
    /// What says who the person is: name, telephone, mail, address, plate, vehicle
    /// identification number, and in their orders who agreed, what was said, numbers
    /// called and signatures.
    Person,
    /// That, and every word typed or spoken and every photo taken on their orders and vehicles.
    EveryWord,
}

impl Breadth {
    pub(super) fn of(every_word: bool) -> Self {
        if every_word {
            Self::EveryWord
        } else {
            Self::Person
        }
    }
}

/// What was erased.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Erased {
    /// The customer.
    pub customer: CustomerId,
    /// The commitments whose content is gone now. Empty if it was gone before.
    pub texts: Vec<Words>,
    /// The numbers of the orders that were gone through.
    pub orders: Vec<u64>,
}

/// Takes down in the shop's stream that a person's words are to be erased. Nothing is erased
/// yet: for a day it can be called off, and their records may have to be kept for longer.
///
/// # Errors
/// [`Trouble`]: there is no such person, one of their vehicles is still here, or the
/// record cannot be written.
pub fn ask_to_erase(
    service: &Service,
    whom: &Whom,
    breadth: Breadth,
    who: &str,
    why: &Token,
) -> Result<Waiting, Trouble> {
    let caller = service.caller(Some(who), "buttonup")?;
    roles::check(&caller, Act::ShopFact("erasure-asked"))?;
    let found = find(&*service.world()?, whom, breadth)?;
    waits::wait(service, &found, breadth, who, why)
}

/// Erases what was found, and ends the asking that waited for it, if nothing was written into
/// the shop's stream since it stood at `seq`: the asking may have been called off.
pub(super) fn carry_out(
    service: &Service,
    found: Erased,
    waiting: &Waiting,
    seq: u64,
) -> Result<Erased, Trouble> {
    let (store, log) = service.record();
    let now = service.now().to_string();
    let texts = still_there(store, log, &found.texts)?;
    let said = Saying {
        asked: Some(&waiting.asked),
        who: waiting.who.as_str(),
        why: &waiting.why,
        now: &now,
        expected: [(Stream::Shop.to_string(), seq)].into(),
    };
    append(store, log, &texts, said)?;
    service.catch_up()?;
    Ok(Erased { texts, ..found })
}

/// When an order ended last.
pub(super) fn ended_of(order: &Order) -> Option<Timestamp> {
    let decisions = order.decisions().iter().rev();
    let mut ends = decisions.filter_map(|decided| match &decided.decision {
        Decision::HandedOver { decided_at, .. } => Some(*decided_at),
        _ => None,
    });
    ends.next()
}

/// Erases what was erased before from a record that was restored from an older copy.
/// Answers how many contents were still in it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read or written.
pub fn erase_again(
    store: &dyn Store,
    log: &str,
    erasures: &[Hash],
    now: &str,
) -> Result<u64, Trouble> {
    let erasures: Vec<Words> = erasures.iter().copied().map(Words).collect();
    let texts = still_there(store, log, &erasures)?;
    let why = Token::new("erased before").expect("these words are plain and short");
    let said = Saying {
        asked: None,
        who: "buttonup",
        why: &why,
        now,
        expected: BTreeMap::new(),
    };
    append(store, log, &texts, said)?;
    Ok(texts.len() as u64)
}

/// Every commitment whose content was ever erased from a log.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn erasures(store: &dyn Store, log: &str) -> Result<Vec<Hash>, Trouble> {
    let rows = store.stream(log, &Stream::Shop.to_string(), 0)?;
    let all: BTreeSet<Hash> = rows.iter().flat_map(erased).collect();
    Ok(all.into_iter().collect())
}

/// The customer that is meant.
pub(super) fn whose(world: &World, whom: &Whom) -> Result<CustomerId, Trouble> {
    match whom {
        Whom::Customer(id) if !world.customer(id)?.is_blank() => Ok(id.clone()),
        Whom::Customer(id) => Err(Trouble::not_found(words::no_customer(format!(
            "{:?}",
            id.as_str()
        )))),
        Whom::OfOrder(number) => {
            let order = match world.order_numbered(*number)? {
                Some(id) => world.order(&id)?,
                None => Arc::default(),
            };
            customer_of(&order).ok_or_else(|| Trouble::not_found(no_order(number)))
        }
    }
}

pub(super) fn find(world: &World, whom: &Whom, breadth: Breadth) -> Result<Erased, Trouble> {
    let customer = whose(world, whom)?;
    let mut vehicles = BTreeSet::new();
    for id in world.vehicles_of(&customer)? {
        vehicles.extend(world.same_vehicles(&id));
    }
    let mut numbers: BTreeMap<u64, OrderId> =
        world.orders_of_customer(&customer)?.into_iter().collect();
    let customers = world.same_customers(&customer);
    for id in &vehicles {
        let changed_hands = !world.vehicle(id)?.owner_told().is_empty();
        for (number, order) in world.orders_of_vehicle(id)? {
            let opened_for = customer_of(&*world.order(&order)?);
            // What was done on it for the owner before is theirs.
            let theirs = opened_for.is_none_or(|owner| customers.contains(&owner));
            if theirs || !changed_hands {
                numbers.insert(number, order);
            }
        }
    }
    let orders: BTreeMap<u64, Arc<Order>> = numbers
        .into_iter()
        .map(|(number, id)| Ok((number, world.order(&id)?)))
        .collect::<Result<_, Trouble>>()?;
    check_read_whole(world, &customers, &vehicles, orders.keys().copied())?;
    if let Some((number, _)) = orders.iter().find(|(_, order)| is_here(order)) {
        return Err(Trouble::new(
            TroubleKind::Refused,
            words::order(number),
            words::vehicle_still_here(),
            words::hand_over_then_erase(),
        ));
    }
    let mut texts = BTreeSet::new();
    for (.., fact) in world.customer(&customer)?.facts() {
        of_customer(fact, &mut texts);
    }
    for id in &vehicles {
        for (.., fact) in world.vehicle(id)?.facts() {
            of_vehicle(fact, breadth, &mut texts);
        }
    }
    for order in orders.values() {
        of_order(order, breadth, &mut texts);
    }
    Ok(Erased {
        customer,
        texts: texts.into_iter().collect(),
        orders: orders.into_keys().collect(),
    })
}

fn is_here(order: &Order) -> bool {
    papers::handed_over(order).is_none() && !papers::is_voided(order)
}

fn of_customer(fact: &CustomerFact, out: &mut BTreeSet<Words>) {
    match fact {
        CustomerFact::Declared { texts } => out.extend(texts.values()),
        CustomerFact::Mended { words, .. } => {
            out.insert(*words);
        }
        CustomerFact::Exempted { number, .. } => out.extend(*number),
        CustomerFact::SameAs { .. } => {}
    }
}

fn of_vehicle(fact: &VehicleFact, breadth: Breadth, out: &mut BTreeSet<Words>) {
    if breadth == Breadth::EveryWord {
        out.extend(every_word(AnyEvent::Vehicle(fact.clone())));
        return;
    }
    match fact {
        VehicleFact::Declared { texts, .. } => {
            // Maker, model and age say nothing of whose it is.
            let telling = texts.iter().filter(|(field, _)| **field != Field::Label);
            out.extend(telling.map(|(_, words)| *words));
        }
        VehicleFact::Mended { field, words, .. } if *field != Field::Label => {
            out.insert(*words);
        }
        _ => {}
    }
}

fn of_order(order: &Order, breadth: Breadth, out: &mut BTreeSet<Words>) {
    // Taken back or not: what was typed once still stands beside the log.
    for (_, filed) in order.story() {
        match &filed.fact {
            fact if breadth == Breadth::EveryWord => {
                out.extend(every_word(AnyEvent::Order(Event::Fact(fact.clone()))));
            }
            Fact::Consented {
                person,
                said,
                number_called,
                signature,
                ..
            } => {
                out.extend([person, said, number_called].into_iter().flatten());
                out.extend(signature.iter().map(|file| file.words));
            }
            Fact::Declined { signature, .. } => {
                out.extend(signature.iter().map(|file| file.words));
            }
            // A paper that was given out bears their name.
            Fact::Attached { file, words, .. } if file.media.as_str() == crate::view::PAPER => {
                out.insert(file.words);
                out.extend(words);
            }
            _ => {}
        }
    }
    for decided in order.decisions() {
        match &decided.decision {
            decision if breadth == Breadth::EveryWord => {
                out.extend(every_word(AnyEvent::Order(Event::Decision(
                    decision.clone(),
                ))));
            }
            Decision::HandedOver {
                signature,
                signed_by,
                ..
            } => {
                out.extend(signed_by);
                out.extend(signature.iter().map(|file| file.words));
            }
            _ => {}
        }
    }
}

/// Every commitment in an event, read off its stored form.
fn every_word(event: AnyEvent) -> Vec<Words> {
    let body = serde_json::from_slice(&encode(&event).body).unwrap_or_default();
    let mut out = Vec::new();
    super::gather(&body, &mut out);
    out.into_iter().map(|named| Words(named.id)).collect()
}

/// Those whose content has not been erased before.
fn still_there(store: &dyn Store, log: &str, texts: &[Words]) -> Result<Vec<Words>, Trouble> {
    let mut there = Vec::new();
    for words in texts {
        if store.private(log, &words.0)?.is_some() {
            there.push(*words);
        }
    }
    Ok(there)
}

/// What cannot be read may hold words of theirs, and they would stay.
fn check_read_whole(
    world: &World,
    customers: &[CustomerId],
    vehicles: &BTreeSet<VehicleId>,
    orders: impl Iterator<Item = u64>,
) -> Result<(), Trouble> {
    let mut streams: Vec<Stream> = customers.iter().cloned().map(Stream::Customer).collect();
    streams.extend(vehicles.iter().cloned().map(Stream::Vehicle));
    for number in orders {
        streams.extend(world.order_numbered(number)?.map(Stream::Order));
    }
    for stream in streams {
        if let Some(unread) = world.unread(&stream)? {
            return Err(Trouble::new(
                TroubleKind::Refused,
                stream.to_string(),
                words::words_not_all_found(unread.sentence()),
                Unread::mend(),
            ));
        }
    }
    Ok(())
}

/// What is said of an erasure.
struct Saying<'a> {
    /// The asking that it ends.
    asked: Option<&'a CommandId>,
    who: &'a str,
    why: &'a Token,
    now: &'a str,
    /// The sequence numbers that it rests on.
    expected: BTreeMap<String, u64>,
}

/// Deletes the contents and appends the events that say so, together or not at all. However
/// many they are: no event holds more than reads back.
fn append(store: &dyn Store, log: &str, texts: &[Words], said: Saying<'_>) -> Result<(), Trouble> {
    const DEVICE: &str = "buttonup";
    let Saying {
        asked,
        who,
        why,
        now,
        expected,
    } = said;
    let erased = texts.chunks(MOST_ERASED).map(|texts| ShopFact::Erased {
        texts: texts.to_vec(),
        why: why.clone(),
    });
    let ended = asked.map(|asked| ShopFact::ErasureEnded {
        asked: asked.clone(),
    });
    let events: Vec<(Stream, AnyEvent)> = erased
        .chain(ended)
        .map(|fact| (Stream::Shop, AnyEvent::Shop(fact)))
        .collect();
    if events.is_empty() {
        return Ok(());
    }
    let command_id = Device::name();
    let said = json!({ "command_id": command_id, "erased": texts.iter().map(Words::hex).collect::<Vec<_>>(),
        "asked": asked.map(CommandId::as_str) });
    let command = store::Command {
        log: log.to_owned(),
        command_id,
        digest: Sha256::digest(canonical(&said).as_bytes()).into(),
        who: who.to_owned(),
        device: DEVICE.to_owned(),
        device_seq: store.device_seq(log, DEVICE)?.unwrap_or(0) + 1,
        happened_at: now.to_owned(),
        recorded_at: now.to_owned(),
        expected,
        events: Vec::new(),
        private: Vec::new(),
        erase: texts.iter().map(|words| words.0).collect(),
    };
    if store.landing(log)?.is_some() {
        return appending::append_to_copy(store, command, &events).map(drop);
    }
    appending::append(store, command, &events).map(drop)
}
