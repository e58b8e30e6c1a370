//! Events as bytes: which stream, which kind, which version.

use crate::form::{Form, Unreadable, quoted};
use crate::v1::beside::{CustomerFactForm, ShopFactForm, VehicleFactForm};
use crate::v1::decisions::DecisionForm;
use crate::v1::facts::FactForm;
use crate::v1::maps::MapFactForm;
use crate::words::canonical;
use repair::{
    CustomerFact, CustomerId, Event, MapFact, MapId, OrderId, ShopFact, VehicleFact, VehicleId,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::fmt;
use thiserror::Error;

/// A stream of the log.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stream {
    Order(OrderId),
    Vehicle(VehicleId),
    Customer(CustomerId),
    Map(MapId),
    /// The shop's own.
    Shop,
}

/// An event of any stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AnyEvent {
    Order(Event),
    Vehicle(VehicleFact),
    Customer(CustomerFact),
    Map(MapFact),
    Shop(ShopFact),
}

/// An event as it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stored {
    pub kind: String,
    /// The version of its form.
    pub version: u32,
    /// JSON.
    pub body: Vec<u8>,
}

impl Stream {
    /// Reads a stream's name.
    ///
    /// # Errors
    /// [`Unreadable`], if there is no such family of streams.
    ///
    /// ```
    /// use record::Stream;
    /// assert_eq!(Stream::read("shop"), Ok(Stream::Shop));
    /// assert!(Stream::read("order:").is_err());
    /// ```
    pub fn read(text: &str) -> Result<Self, Unreadable> {
        use crate::v1::basics::{CustomerIdForm, MapIdForm, OrderIdForm, VehicleIdForm};
        let (family, name) = text.split_once(':').unwrap_or((text, ""));
        let name = name.to_owned();
        match family {
            "order" => OrderIdForm(name).read().map(Self::Order),
            "vehicle" => VehicleIdForm(name).read().map(Self::Vehicle),
            "customer" => CustomerIdForm(name).read().map(Self::Customer),
            "map" => MapIdForm(name).read().map(Self::Map),
            "shop" if text == "shop" => Ok(Self::Shop),
            _ => Err(Unreadable::value(format!(
                "{} is no stream; use order:…, vehicle:…, customer:…, map:… or shop",
                quoted(text)
            ))),
        }
    }
}

impl fmt::Display for Stream {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Stream::Order(id) => write!(f, "order:{id}"),
            Stream::Vehicle(id) => write!(f, "vehicle:{id}"),
            Stream::Customer(id) => write!(f, "customer:{id}"),
            Stream::Map(id) => write!(f, "map:{id}"),
            Stream::Shop => f.write_str("shop"),
        }
    }
}

/// The newest version of any form.
const NEWEST: u32 = 3;

/// Writes an event as it is kept. Its body has its keys in order and no blanks, so that
/// one event is one row of bytes whatever JSON library settings a program is built with.
#[must_use]
pub fn encode(event: &AnyEvent) -> Stored {
    let (tagged, version) = match event {
        AnyEvent::Order(Event::Fact(fact)) => written::<FactForm>(fact),
        AnyEvent::Order(Event::Decision(decision)) => written::<DecisionForm>(decision),
        AnyEvent::Vehicle(fact) => written::<VehicleFactForm>(fact),
        AnyEvent::Customer(fact) => written::<CustomerFactForm>(fact),
        AnyEvent::Map(fact) => written::<MapFactForm>(fact),
        AnyEvent::Shop(fact) => written::<ShopFactForm>(fact),
    };
    let (kind, body) = match tagged {
        Value::Object(map) => map.into_iter().next().unwrap_or_default(),
        other => (String::new(), other),
    };
    Stored {
        kind,
        version,
        body: canonical(&body).into_bytes(),
    }
}

fn written<F: Form + Serialize>(core: &F::Core) -> (Value, u32) {
    let form = F::of(core);
    let value = serde_json::to_value(&form)
        .expect("forms hold only strings, numbers, lists and plain keys");
    (value, form.version())
}

/// Why an event is not fit to be kept.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{}", crate::phrases::would_not_read_back(format_args!("{:?}", .kind), .stream, .why))]
pub struct Unkept {
    pub stream: Stream,
    /// The kind of the event.
    pub kind: String,
    /// What the reader says of it.
    pub why: String,
}

/// Writes an event as it is kept, and reads it again before anybody keeps it: what is once in
/// a log cannot be mended there.
///
/// # Errors
/// [`Unkept`]: the reader refuses it, or reads something else.
pub fn encode_checked(stream: &Stream, event: &AnyEvent) -> Result<Stored, Unkept> {
    let stored = encode(event);
    let why = match decode(stream, &stored) {
        Ok(read) if read == *event => return Ok(stored),
        Ok(_) => "it reads as another event".to_owned(),
        Err(unreadable) => unreadable.to_string(),
    };
    Err(Unkept {
        stream: stream.clone(),
        kind: stored.kind,
        why,
    })
}

/// Reads an event as it was kept in a stream.
///
/// # Errors
/// [`Unreadable`]: a kind or version that this program does not know (the log is newer),
/// or a body that does not fit its kind.
pub fn decode(stream: &Stream, stored: &Stored) -> Result<AnyEvent, Unreadable> {
    let kind = stored.kind.as_str();
    let version = stored.version;
    if version == 0 || version > NEWEST {
        return Err(Unreadable::value(format!(
            "version {} of {kind:?} is newer than this program; use the newer program",
            stored.version
        )));
    }
    let body: Value = serde_json::from_slice(&stored.body)
        .map_err(|e| Unreadable::value(format!("the body of {kind:?} is no JSON: {e}")))?;
    let tagged = Value::Object(Map::from_iter([(kind.to_owned(), body)]));
    match stream {
        Stream::Order(_) if DecisionForm::KINDS.contains(&kind) => {
            read::<DecisionForm>(tagged, version).map(|d| AnyEvent::Order(Event::Decision(d)))
        }
        Stream::Order(_) => {
            read::<FactForm>(tagged, version).map(|f| AnyEvent::Order(Event::Fact(f)))
        }
        Stream::Vehicle(_) => read::<VehicleFactForm>(tagged, version).map(AnyEvent::Vehicle),
        Stream::Customer(_) => read::<CustomerFactForm>(tagged, version).map(AnyEvent::Customer),
        Stream::Map(_) => read::<MapFactForm>(tagged, version).map(AnyEvent::Map),
        Stream::Shop => read::<ShopFactForm>(tagged, version).map(AnyEvent::Shop),
    }
}

fn read<F: Form + DeserializeOwned>(tagged: Value, version: u32) -> Result<F::Core, Unreadable> {
    let form: F = serde_json::from_value(tagged).map_err(|e| Unreadable::value(e.to_string()))?;
    if form.version() != version {
        return Err(Unreadable::value(format!(
            "it is marked as version {version}, and says what version {} has",
            form.version()
        )));
    }
    form.read()
}
