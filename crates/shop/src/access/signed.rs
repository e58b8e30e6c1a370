//! Who is signed in on a device, and whom a tap belongs to.

use super::device::{DeviceCard, Place};
use super::{Access, secret};
use crate::phrases::access as words;
use crate::phrases::service as late;
use crate::trouble::{Trouble, TroubleKind};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

/// A person on a device, from the PIN until they leave it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SignIn {
    /// The device.
    pub device: String,
    /// The person, by name in the record.
    pub person: String,
    /// When it began.
    pub at: Timestamp,
    /// When the PIN was typed, or a decision was taken on it.
    pub proved_at: Timestamp,
    /// When they left it; a tap of before may still come.
    pub ended_at: Option<Timestamp>,
    /// For one tap on somebody else's device: a second check, a clearance.
    #[serde(default)]
    pub beside: bool,
}

/// Whom a tap belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bound {
    /// The device's name.
    pub device: String,
    /// Why it is late, if it is: the device was put out.
    pub late: Option<&'static str>,
}

// Why a fact is marked as late, as it is kept; it is said in what is spoken.
const PUT_OUT: &str = "the device was put out";
/// A person who had left the shop before their fact came.
pub(crate) const LEFT: &str = "the person had left the shop";

/// A fact that came after its device was put out or its person had left the shop: it is kept,
/// and the owner looks at it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LateFact {
    /// When it came.
    pub at: Timestamp,
    /// What it is about: the stream.
    pub stream: String,
    /// Whose tap it was.
    pub person: String,
    /// The device's name.
    pub device: String,
    /// Why it is marked.
    pub why: String,
}

impl Access<'_> {
    /// Signs a person in on a device with their PIN. Whoever was signed in on it is out.
    ///
    /// # Errors
    /// [`Trouble`], refused: the PIN is wrong or has to wait; the device was put out.
    pub fn sign_in(&self, device: &str, person: &str, pin: &str) -> Result<String, Trouble> {
        self.check_stands(device)?;
        self.check_pin(person, pin)?;
        let before = self.with_device(device, |card| card.sign_in.take())?;
        if let Some(before) = before {
            self.end(&before)?;
        }
        let id = self.begin(device, person, false)?;
        self.with_device(device, |card| {
            card.sign_in = Some(id.clone());
            card.used_at = Some(self.now);
        })?;
        Ok(id)
    }

    /// Another person proves on somebody's device who they are, for one tap: a second check,
    /// an apprentice's clearance. Who is signed in stays so.
    ///
    /// # Errors
    /// See [`Access::sign_in`].
    pub fn sign_beside(&self, device: &str, person: &str, pin: &str) -> Result<String, Trouble> {
        self.check_stands(device)?;
        self.check_pin(person, pin)?;
        self.begin(device, person, true)
    }

    /// The one who is signed in types the PIN again, before a decision.
    ///
    /// # Errors
    /// [`Trouble`], refused: the PIN is wrong, or nobody is signed in.
    pub fn prove(&self, device: &str, pin: &str) -> Result<(), Trouble> {
        let (id, signed) = self.standing(device)?.ok_or_else(nobody)?;
        self.check_pin(&signed.person, pin)?;
        self.proved(&id)
    }

    /// Ends what is signed in on a device.
    ///
    /// # Errors
    /// [`Trouble`], if there is no such device.
    pub fn sign_out(&self, device: &str) -> Result<(), Trouble> {
        let before = self.with_device(device, |card| card.sign_in.take())?;
        before.map_or(Ok(()), |before| self.end(&before))
    }

    /// Ends what is signed in anywhere as this person: they left the shop, or their PIN was
    /// taken away.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn sign_out_everywhere(&self, person: &str) -> Result<(), Trouble> {
        for (device, card) in self.devices()? {
            let Some(id) = &card.sign_in else { continue };
            let signed: Option<SignIn> = self.drawer("sign-in").get(id)?;
            if signed.is_some_and(|signed| signed.person == person) {
                self.sign_out(&device)?;
            }
        }
        Ok(())
    }

    /// Who is signed in on a device.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn standing(&self, device: &str) -> Result<Option<(String, SignIn)>, Trouble> {
        let card: Option<DeviceCard> = self.drawer("device").get(device)?;
        let Some(id) = card.and_then(|card| card.sign_in) else {
            return Ok(None);
        };
        let signed: Option<SignIn> = self.drawer("sign-in").get(&id)?;
        Ok(signed.map(|signed| (id, signed)))
    }

    /// Whether a page is still shown on a device: at a desk not after a while of nothing.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn is_idle(&self, card: &DeviceCard, used_at: Timestamp) -> Result<bool, Trouble> {
        let minutes = i64::from(self.limits()?.desk);
        let idle = self.now.duration_since(used_at).as_mins();
        Ok(card.place == Place::Desk && idle >= minutes)
    }

    /// Whom a tap belongs to that was made under a sign-in, whenever it comes. What was tapped
    /// before the device was put out is kept, and marked.
    ///
    /// # Errors
    /// [`Trouble`], refused: it was not this device's, or not this person's.
    pub fn bound(&self, device: &str, sign_in: &str, who: &str) -> Result<Bound, Trouble> {
        let card: Option<DeviceCard> = self.drawer("device").get(device)?;
        let signed: Option<SignIn> = self.drawer("sign-in").get(sign_in)?;
        let (Some(card), Some(signed)) = (card, signed) else {
            return Err(not_theirs());
        };
        if signed.device != device || signed.person != who {
            return Err(not_theirs());
        }
        Ok(Bound {
            device: card.name,
            late: card.put_out_at.map(|_| PUT_OUT),
        })
    }

    /// Whether a decision may be taken under a sign-in now.
    ///
    /// # Errors
    /// [`Trouble`]: the PIN has to be typed again; or it is over.
    pub fn check_fresh(&self, device: &str, sign_in: &str) -> Result<(), Trouble> {
        self.check_stands(device)?;
        let signed: Option<SignIn> = self.drawer("sign-in").get(sign_in)?;
        let signed = signed
            .filter(|one| one.ended_at.is_none())
            .ok_or_else(nobody)?;
        let minutes = i64::from(self.limits()?.decision);
        if self.now.duration_since(signed.proved_at).as_mins() >= minutes {
            return Err(Trouble::new(
                TroubleKind::Pin,
                words::the_pin(),
                words::decided_with_pin(),
                words::type_your_pin(),
            ));
        }
        Ok(())
    }

    /// The PIN was typed, or a decision was taken: the time that runs begins anew.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn proved(&self, sign_in: &str) -> Result<(), Trouble> {
        self.drawer("sign-in")
            .change(sign_in, |signed: Option<SignIn>| {
                let mut signed = signed.ok_or_else(nobody)?;
                signed.proved_at = self.now;
                Ok((Some(signed), ()))
            })
    }

    /// Marks a fact that came late.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn mark_late(&self, command: &str, fact: &LateFact) -> Result<(), Trouble> {
        self.drawer("late").put(command, fact)
    }

    /// Facts that came late, the oldest first.
    ///
    /// # Errors
    /// [`Trouble`], if they cannot be read.
    pub fn late_facts(&self) -> Result<Vec<(String, LateFact)>, Trouble> {
        let mut all: Vec<(String, LateFact)> = self.drawer("late").all()?;
        all.sort_by_key(|(_, fact)| fact.at);
        for (_, fact) in &mut all {
            let said = match fact.why.as_str() {
                PUT_OUT => late::device_was_put_out(),
                LEFT => late::person_had_left(),
                _ => continue,
            };
            said.clone_into(&mut fact.why);
        }
        Ok(all)
    }

    /// The owner has looked at one.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn seen_late(&self, command: &str) -> Result<(), Trouble> {
        self.drawer("late")
            .change(command, |_: Option<LateFact>| Ok((None, ())))
    }

    fn begin(&self, device: &str, person: &str, beside: bool) -> Result<String, Trouble> {
        let id = secret()[..32].to_owned();
        let signed = SignIn {
            device: device.to_owned(),
            person: person.to_owned(),
            at: self.now,
            proved_at: self.now,
            ended_at: None,
            beside,
        };
        self.drawer("sign-in").put(&id, &signed)?;
        Ok(id)
    }

    fn end(&self, id: &str) -> Result<(), Trouble> {
        self.drawer("sign-in").change(id, |signed: Option<SignIn>| {
            let ended = signed.map(|mut signed| {
                signed.ended_at.get_or_insert(self.now);
                signed
            });
            Ok((ended, ()))
        })
    }

    /// Whether a device is let in now.
    ///
    /// # Errors
    /// [`Trouble`]: it was put out, or never joined.
    pub fn check_stands(&self, device: &str) -> Result<(), Trouble> {
        let card: Option<DeviceCard> = self.drawer("device").get(device)?;
        match card {
            Some(card) if card.put_out_at.is_none() => Ok(()),
            Some(_) => Err(put_out()),
            None => Err(Trouble::not_found(words::no_such_device())),
        }
    }
}

/// What a device is told that was put out.
pub(super) fn put_out() -> Trouble {
    Trouble::new(
        TroubleKind::SignIn,
        words::this_device(),
        words::was_put_out(),
        words::ask_to_be_let_in(),
    )
}

fn nobody() -> Trouble {
    Trouble::new(
        TroubleKind::SignIn,
        words::this_device(),
        words::nobody_signed_in(),
        words::pick_your_name(),
    )
}

fn not_theirs() -> Trouble {
    Trouble::new(
        TroubleKind::Refused,
        words::who_it_was(),
        words::not_signed_in_here(),
        words::sign_in_and_do_again(),
    )
}
