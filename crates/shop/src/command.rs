//! A command as a device sends it.

use crate::keep::Named;
use crate::phrases::service as say;
use crate::roles::Act;
use crate::trouble::Trouble;
use record::form::Form;
use record::v1::basics::{CommandIdForm, PersonIdForm, ShortForm, TimeForm};
use record::v1::beside::{CustomerFactForm, ShopFactForm, VehicleFactForm};
use record::v1::decisions::RequestForm;
use record::v1::facts::FactForm;
use record::v1::maps::MapFactForm;
use record::{AnyEvent, Private, Stream, canonical, take_texts};
use repair::{CommandId, Event, Fact, PersonId, Request};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use store::Hash;
use utoipa::ToSchema;

/// What a device sends. Exactly one of the facts, or the request, stands in it; words
/// that people typed stand as `{"text": "...", "salt": "64 hexadecimal digits"}`.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SentCommand {
    /// A new uuid; the same one when it is sent again.
    pub command_id: CommandIdForm,
    /// The device's name.
    pub device: ShortForm,
    /// Its place in the device's queue, from 1.
    pub device_seq: u64,
    /// When it happened, by the device's clock.
    pub happened_at: TimeForm,
    /// The person.
    pub who: PersonIdForm,
    /// Over the shop's network: the sign-in that it was tapped under, which says whose tap it
    /// was whenever it is sent. It is no part of what was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sign_in: Option<String>,
    /// `order:…`, `vehicle:…`, `customer:…`, `map:…` or `shop`.
    pub stream: String,
    /// For a request or a map: the last sequence numbers it rests on. Where somebody else was
    /// quicker in a stream that it does not name, a request is read and decided again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expected: Option<BTreeMap<String, u64>>,
    /// A fact of an order.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fact: Option<FactForm>,
    /// A fact of a vehicle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub vehicle_fact: Option<VehicleFactForm>,
    /// A fact of a customer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub customer_fact: Option<CustomerFactForm>,
    /// A version of a map.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub map_fact: Option<MapFactForm>,
    /// A fact of the shop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shop_fact: Option<ShopFactForm>,
    /// A request about an order.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub request: Option<RequestForm>,
}

/// What a command says.
#[expect(
    clippy::large_enum_variant,
    reason = "a command is read once, and nearly all of them are facts"
)]
#[derive(Debug, Clone)]
pub enum Said {
    /// A fact, of whatever stream.
    Fact(AnyEvent),
    /// A request about an order.
    Request(Request),
}

/// A command that could be read.
#[derive(Debug, Clone)]
pub struct ReadCommand {
    /// Its name.
    pub id: CommandId,
    /// The digest of what was sent, its texts replaced by their commitments.
    pub digest: Hash,
    /// The device.
    pub device: String,
    /// Its place in the device's queue.
    pub device_seq: u64,
    /// When, as the device wrote it.
    pub happened_at: String,
    /// The person.
    pub who: PersonId,
    /// The sign-in that it was tapped under, where people sign in.
    pub sign_in: Option<String>,
    /// The stream.
    pub stream: Stream,
    /// The sequence numbers it rests on.
    pub expected: Option<BTreeMap<String, u64>>,
    /// What it says.
    pub said: Said,
    /// The kind of what it says, as it is sent.
    pub kind: String,
    /// The texts and files that came with it.
    pub private: Vec<Private>,
    /// Every commitment it names, whether its text came with it or before.
    pub(crate) named: Vec<Named>,
}

impl ReadCommand {
    /// What it does, for the table of roles.
    #[must_use]
    pub fn act(&self) -> Act<'_> {
        match (&self.said, &self.stream) {
            (Said::Request(_), _) => Act::Request(&self.kind),
            (Said::Fact(_), Stream::Order(_)) => Act::OrderFact(&self.kind),
            (Said::Fact(_), Stream::Shop) => Act::ShopFact(&self.kind),
            (Said::Fact(_), Stream::Vehicle(_)) => Act::Beside("vehicle"),
            (Said::Fact(_), Stream::Customer(_)) => Act::Beside("customer"),
            (Said::Fact(_), Stream::Map(_)) => Act::Beside("map"),
        }
    }
}

/// Reads a command.
///
/// # Errors
/// [`Trouble`]: where in the command, what is wrong, how to mend it.
pub fn read(mut sent: Value) -> Result<ReadCommand, Trouble> {
    let hash = |parts: &[&[u8]]| -> Hash {
        match parts {
            [salt, content] => <[u8; 32]>::try_from(*salt)
                .map(|salt| store::commitment(&salt, content))
                .unwrap_or_default(),
            _ => Hash::default(),
        }
    };
    let private = take_texts(&mut sent, &hash).map_err(|e| {
        Trouble::unreadable(
            say::the_commands_texts(),
            e.to_string(),
            say::mend_the_text(),
        )
    })?;
    private.iter().try_for_each(crate::picture::check)?;
    private.iter().try_for_each(crate::recording::check)?;
    let sign_in = sent.as_object_mut().and_then(|sent| sent.remove("sign_in"));
    let digest = Sha256::digest(canonical(&sent).as_bytes()).into();
    let named = crate::keep::named(&sent);
    let kind = kind_of(&sent);
    let command: SentCommand = serde_json::from_value(sent)
        .map_err(|e| Trouble::unreadable(say::the_command(), e.to_string(), say::see_the_form()))?;
    let bad = |e: record::form::Unreadable| {
        Trouble::unreadable(say::the_command(), e.to_string(), say::mend_that_field())
    };
    let stream = Stream::read(&command.stream).map_err(|e| bad(e.within("stream")))?;
    let said = said(&command, &stream).map_err(bad)?;
    Ok(ReadCommand {
        id: command
            .command_id
            .read()
            .map_err(|e| bad(e.within("command_id")))?,
        digest,
        device: command.device.read().map_err(|e| bad(e.within("device")))?,
        device_seq: command.device_seq,
        happened_at: command
            .happened_at
            .read()
            .map_err(|e| bad(e.within("happened_at")))?
            .to_string(),
        who: command.who.read().map_err(|e| bad(e.within("who")))?,
        sign_in: sign_in.and_then(|id| Some(id.as_str()?.to_owned())),
        stream,
        expected: command.expected,
        said,
        kind,
        private,
        named,
    })
}

/// The one key of the fact or request.
fn kind_of(sent: &Value) -> String {
    let parts = [
        "fact",
        "vehicle_fact",
        "customer_fact",
        "map_fact",
        "shop_fact",
        "request",
    ];
    let said = parts
        .into_iter()
        .find_map(|part| sent.get(part)?.as_object());
    let kind = said.and_then(|said| said.keys().next());
    kind.cloned().unwrap_or_default()
}

fn said(command: &SentCommand, stream: &Stream) -> Result<Said, record::form::Unreadable> {
    let SentCommand {
        fact,
        vehicle_fact,
        customer_fact,
        map_fact,
        shop_fact,
        request,
        ..
    } = command.clone();
    let parts = [
        fact.is_some(),
        vehicle_fact.is_some(),
        customer_fact.is_some(),
        map_fact.is_some(),
        shop_fact.is_some(),
        request.is_some(),
    ];
    if parts.iter().filter(|there| **there).count() != 1 {
        return Err(record::form::Unreadable::value(say::exactly_one_of()));
    }
    let wrong_stream = || record::form::Unreadable::value(say::wrong_stream(stream));
    match (
        fact,
        vehicle_fact,
        customer_fact,
        map_fact,
        shop_fact,
        request,
        stream,
    ) {
        (Some(fact), .., Stream::Order(_)) => {
            let fact = fact.read().map_err(|e| e.within("fact"))?;
            // A move of no piece says nothing, and would be lost without a word.
            if fact.moves().iter().any(|moved| moved.at.is_empty()) {
                return Err(record::form::Unreadable::value(say::no_position()));
            }
            if let Some(voice) = fact.voice()
                && !crate::recording::SORTS.contains(&voice.media.as_str())
            {
                return Err(record::form::Unreadable::value(format!(
                    "fact.voice: a recording is one of {}",
                    crate::recording::SORTS.join(", ")
                )));
            }
            if matches!(&fact, Fact::Declined { items, entries, snags, .. }
                if items.is_empty() && entries.is_empty() && snags.is_empty())
            {
                return Err(record::form::Unreadable::value(say::nothing_declined()));
            }
            Ok(Said::Fact(AnyEvent::Order(Event::Fact(fact))))
        }
        (_, Some(fact), .., Stream::Vehicle(_)) => fact
            .read()
            .map(|fact| Said::Fact(AnyEvent::Vehicle(fact)))
            .map_err(|e| e.within("vehicle_fact")),
        (_, _, Some(fact), .., Stream::Customer(_)) => fact
            .read()
            .map(|fact| Said::Fact(AnyEvent::Customer(fact)))
            .map_err(|e| e.within("customer_fact")),
        (_, _, _, Some(fact), .., Stream::Map(_)) => fact
            .read()
            .map(|fact| Said::Fact(AnyEvent::Map(fact)))
            .map_err(|e| e.within("map_fact")),
        (_, _, _, _, Some(fact), _, Stream::Shop) => match fact {
            // Whoever could say that an erasure was carried out could make it never be.
            ShopFactForm::NumberGiven { .. }
            | ShopFactForm::InvoiceNumberGiven { .. }
            | ShopFactForm::CreditNumberGiven { .. }
            | ShopFactForm::Erased { .. }
            | ShopFactForm::ErasureEnded { .. } => {
                Err(record::form::Unreadable::value(say::only_by_the_program()))
            }
            fact => fact
                .read()
                .map(|fact| Said::Fact(AnyEvent::Shop(fact)))
                .map_err(|e| e.within("shop_fact")),
        },
        (_, _, _, _, _, Some(request), Stream::Order(_)) => request
            .read()
            .map(Said::Request)
            .map_err(|e| e.within("request")),
        _ => Err(wrong_stream()),
    }
}
