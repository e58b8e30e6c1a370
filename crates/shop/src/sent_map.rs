//! A map on its way from one shop to another: one file that says where it comes from and bears a
//! signature. Whoever reads it in sees who signed it, that nothing of it was changed since, and
//! what it would change in the map that is there.
//!
//! ```text
//!  { "is": "a map sent by a shop", "form": 1,
//!    "content": "{ … the map's text, its shop, its version … }",
//!    "key": "…", "signature": "…" }          Ed25519 over the bytes of `content`
//! ```

use crate::caller::Caller;
use crate::phrases::shop as words;
use crate::service::Service;
use crate::snapshot::Snapshot;
use crate::teaching;
use crate::trouble::{Trouble, TroubleKind};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use map::{Change, Map};
use repair::MapId;
use ring::rand::SystemRandom;
use ring::signature::{ED25519, Ed25519KeyPair, KeyPair, UnparsedPublicKey};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fmt::Write;

/// What the file says it is.
const IS: &str = "a map sent by a shop";
/// The form of the file that is written.
const FORM: u32 = 1;
/// The largest file that is read: the largest map with what stands around it.
const LARGEST: usize = 1024 * 1024;

/// What goes along with a map. Nobody's name is in it but the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SentMap {
    /// Its name in addresses.
    pub map: String,
    /// The vehicle, as people call it.
    pub vehicle: String,
    /// The version that was sent.
    pub version: u32,
    /// The day on which it was kept.
    pub kept: String,
    /// The shop's name.
    pub from: String,
    /// How many finished orders of this kind the shop had: what stands behind it.
    pub orders: usize,
    /// The text.
    pub text: String,
}

/// A map as it was read from a file: whole, and signed with this key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReceivedMap {
    pub sent: SentMap,
    /// The mark of the key, as people compare it; or [the log](log_beside) of a shop that is in the
    /// same database.
    pub key: String,
}

/// What reading a map in would change.
#[derive(Debug, Clone, PartialEq)]
pub struct WouldChange {
    /// The map it becomes a version of, or a new one.
    pub map: MapId,
    /// The version it would be kept as.
    pub version: u32,
    /// What differs from the version that is there; nothing of a new map.
    pub changes: Option<Vec<String>>,
    /// How many things it has.
    pub items: usize,
    /// What is wrong with it.
    pub faults: Vec<String>,
    /// The maps that came signed with the same key before.
    pub before: Vec<String>,
    /// Whether the text is the one that is there.
    pub same: bool,
}

#[derive(Serialize, Deserialize)]
struct FileForm {
    is: String,
    form: u32,
    content: String,
    key: String,
    signature: String,
}

/// The shop's own key for maps.
pub struct Signer(Ed25519KeyPair);

impl std::fmt::Debug for Signer {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Signer({})", mark(self.0.public_key().as_ref()))
    }
}

impl Signer {
    /// A new key, as it is kept (PKCS #8).
    ///
    /// # Errors
    /// [`Trouble`]: the system gives no random numbers.
    pub fn make() -> Result<Vec<u8>, Trouble> {
        let made = Ed25519KeyPair::generate_pkcs8(&SystemRandom::new());
        let made = made.map_err(|_| {
            let what = words::no_random_numbers();
            Trouble::new(
                TroubleKind::Record,
                words::key_for_maps(),
                what,
                words::try_it_again(),
            )
        })?;
        Ok(made.as_ref().to_vec())
    }

    /// A key that was kept.
    ///
    /// # Errors
    /// [`Trouble`]: it is none.
    pub fn read(kept: &[u8]) -> Result<Self, Trouble> {
        let pair = Ed25519KeyPair::from_pkcs8(kept);
        pair.map(Self).map_err(|_| {
            Trouble::unreadable(
                words::key_for_maps(),
                words::no_such_key(),
                words::put_key_back(),
            )
        })
    }

    /// The mark by which others know this key.
    #[must_use]
    pub fn mark(&self) -> String {
        mark(self.0.public_key().as_ref())
    }

    /// The file of a map.
    #[must_use]
    pub fn file(&self, sent: &SentMap) -> String {
        let content = serde_json::to_string(sent).expect("plain values are JSON");
        let file = FileForm {
            is: IS.to_owned(),
            form: FORM,
            key: STANDARD.encode(self.0.public_key().as_ref()),
            signature: STANDARD.encode(self.0.sign(content.as_bytes()).as_ref()),
            content,
        };
        serde_json::to_string_pretty(&file).expect("plain values are JSON") + "\n"
    }
}

/// The first 64 bits of a key's hash, four digits at a time.
fn mark(key: &[u8]) -> String {
    let hash = Sha256::digest(key);
    hash.chunks(2).take(4).fold(String::new(), |mut out, two| {
        let gap = if out.is_empty() { "" } else { " " };
        for (nth, byte) in two.iter().enumerate() {
            let gap = if nth == 0 { gap } else { "" };
            // Writing to a string does not fail.
            let _ = write!(out, "{gap}{byte:02x}");
        }
        out
    })
}

/// A version of a map as it is sent; the newest without a number.
///
/// # Errors
/// [`Trouble`]: there is no such map or version, it has errors, or the record cannot be read.
pub fn sent_map(snap: &Snapshot<'_>, id: &MapId, version: Option<u32>) -> Result<SentMap, Trouble> {
    let kept = snap.map(id, version)?;
    let map = kept.sound()?;
    let orders = match teaching::known_kind(snap, &map.vehicle)? {
        Some(kind) => {
            let kind = teaching::vehicle_kind(snap, kind.as_str())?;
            kind.finished.len()
        }
        None => 0,
    };
    let settings = snap.world().shop.settings();
    Ok(SentMap {
        map: kept.id.as_str().to_owned(),
        vehicle: map.vehicle.clone(),
        version: kept.version,
        kept: snap.rules().day(kept.by.at).to_string(),
        from: settings.map_or_else(String::new, |settings| snap.texts().text(settings.name)),
        orders,
        text: kept.text.clone(),
    })
}

/// The people of the shop whose names stand in a text: what is sent should name nobody.
#[must_use]
pub fn people_named(snap: &Snapshot<'_>, text: &str) -> Vec<String> {
    let words: Vec<&str> = text.split(|c: char| !c.is_alphanumeric()).collect();
    let people = snap.world().shop.everyone();
    let mut named: Vec<String> = people
        .values()
        .map(|(name, _)| snap.texts().text(*name))
        .filter(|name| {
            let mut parts = name
                .split_whitespace()
                .filter(|part| part.chars().count() > 1);
            parts.any(|part| {
                words
                    .iter()
                    .any(|word| word.to_lowercase() == part.to_lowercase())
            })
        })
        .collect();
    named.sort();
    named.dedup();
    named
}

/// Reads a file that another shop has sent.
///
/// # Errors
/// [`Trouble`]: it is no such file, of a newer form, or was changed since it was signed.
pub fn received_map(text: &str) -> Result<ReceivedMap, Trouble> {
    let (place, again) = (words::maps_file(), words::ask_for_it_again());
    if text.len() > LARGEST {
        let what = words::bytes_at_most(text.len(), LARGEST);
        return Err(Trouble::unreadable(place, what, again));
    }
    let none = |what: &str| {
        Trouble::unreadable(place, words::no_sent_map(what), words::choose_as_it_came())
    };
    let file: FileForm = serde_json::from_str(text).map_err(|error| none(&error.to_string()))?;
    if file.is != IS {
        return Err(none(words::says_something_else()));
    }
    if file.form != FORM {
        let what = words::of_another_form(file.form, FORM);
        return Err(Trouble::unreadable(place, what, words::use_newer_program()));
    }
    let changed = || {
        let what = words::signature_does_not_fit();
        Trouble::unreadable(place, what, again)
    };
    let key = STANDARD.decode(&file.key).map_err(|_| changed())?;
    let signature = STANDARD.decode(&file.signature).map_err(|_| changed())?;
    UnparsedPublicKey::new(&ED25519, &key)
        .verify(file.content.as_bytes(), &signature)
        .map_err(|_| changed())?;
    let sent: SentMap =
        serde_json::from_str(&file.content).map_err(|error| none(&error.to_string()))?;
    Ok(ReceivedMap {
        sent,
        key: mark(&key),
    })
}

/// Stands before the name of a log in place of a key's mark.
const LOG: &str = "log ";

/// A map of another shop whose record is in the same database. It bears no signature: the shops
/// share their database, and so their trust.
///
/// # Errors
/// [`Trouble`]: there is no such map, it has errors, or the other record cannot be read.
pub fn map_beside(other: &Service, log: &str, id: &MapId) -> Result<ReceivedMap, Trouble> {
    let sent = other.look(&Caller::program(), |snap| sent_map(snap, id, None))?;
    Ok(ReceivedMap {
        sent,
        key: format!("{LOG}{log}"),
    })
}

/// The log that a map came from, where its shop is in the same database; nothing where it came
/// signed.
#[must_use]
pub fn log_beside(key: &str) -> Option<&str> {
    key.strip_prefix(LOG)
}

/// What reading it in would change here.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn would_change(snap: &Snapshot<'_>, received: &ReceivedMap) -> Result<WouldChange, Trouble> {
    let sent = &received.sent;
    let id = home_of(snap, sent);
    let (new, faults) = map::look(words::line_of_text(), &sent.text);
    let known = snap.map(&id, None).ok();
    let changes = known.as_ref().map(|kept| {
        let (old, _) = map::look("line", &kept.text);
        differ(&old, &new)
    });
    let mut before = Vec::new();
    for other in snap.world().maps()? {
        let drafts = snap.world().map(&other)?;
        let received_before = drafts.received();
        if received_before
            .values()
            .any(|(_, key)| key.as_str() == received.key)
        {
            let vehicle = snap.map(&other, None)?;
            let vehicle = vehicle.sound().map_or_else(
                |_| other.as_str().replace('-', " "),
                |map| map.vehicle.clone(),
            );
            before.push(vehicle);
        }
    }
    Ok(WouldChange {
        version: known
            .as_ref()
            .map_or(1, |kept| kept.version.saturating_add(1)),
        same: known.is_some_and(|kept| kept.text == sent.text),
        map: id,
        changes,
        items: new.items.len(),
        faults: faults.iter().map(ToString::to_string).collect(),
        before,
    })
}

/// The map here that it becomes a version of: the one of its name, unless that is of another
/// vehicle. A vehicle may have several maps, so the vehicle alone does not say which.
fn home_of(snap: &Snapshot<'_>, sent: &SentMap) -> MapId {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let named = match sent.map.as_str() {
        name if !name.is_empty() && name.len() <= 60 && name.chars().all(plain) => MapId::new(name),
        odd => crate::planning::map_id(odd),
    };
    let of_vehicle = crate::planning::map_id(&sent.vehicle);
    let other = snap.map(&named, None).is_ok_and(|kept| {
        let vehicle = kept
            .sound()
            .map(|map| crate::planning::map_id(&map.vehicle));
        vehicle.is_ok_and(|vehicle| vehicle != of_vehicle)
    });
    if other { of_vehicle } else { named }
}

fn differ(old: &Map, new: &Map) -> Vec<String> {
    let changes = map::difference(old, new);
    changes.iter().map(Change::to_string).collect()
}

/// From which shop a version came, and the mark of its key.
#[must_use]
pub fn came_from(snap: &Snapshot<'_>, id: &MapId, version: u32) -> Option<(String, String)> {
    let drafts = snap.world().map(id).ok()?;
    let (from, key) = drafts.received().get(&version).copied()?;
    Some((snap.texts().text(*from), key.as_str().to_owned()))
}
