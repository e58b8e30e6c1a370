//! Devices: let in with a code, named, and put out.

use super::{Access, digest, refused, secret};
use crate::phrases::access as words;
use crate::trouble::Trouble;
use jiff::{Span, Timestamp, ToSpan};
use serde::{Deserialize, Serialize};

/// Where a device is used: it decides for how long a page stays open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// At the vehicles: the stage stays on the screen.
    Stall,
    /// At the desk, where customers stand.
    Desk,
}

/// What is known of a device.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DeviceCard {
    /// What people call it.
    pub name: String,
    /// Where it is used.
    pub place: Place,
    /// When it was let in.
    pub joined_at: Timestamp,
    /// When it was put out, and takes nothing but what was tapped on it before.
    pub put_out_at: Option<Timestamp>,
    /// The sign-in that stands on it now.
    pub sign_in: Option<String>,
    /// When somebody last signed in on it.
    pub used_at: Option<Timestamp>,
}

/// A device that was let in just now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Joined {
    /// What it is found by.
    pub device: String,
    /// What it shows from now on; nothing of it is kept here but a digest.
    pub key: String,
}

/// A code that lets one device in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Invitation {
    until: Timestamp,
    by: Option<String>,
}

/// Codes that nobody has, tried one after the other by whoever is not let in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
struct WrongCodes {
    since: Option<Timestamp>,
    tries: u32,
}

/// How long a code lives.
const CODE_LIVES: i64 = 10;
/// Wrong codes in a minute, after which none is looked at.
const MOST_WRONG: u32 = 20;
/// What a name of a device may be long.
const LONGEST_NAME: usize = 60;
/// Letters and digits that nobody mistakes for another.
const LETTERS: &[u8; 32] = b"23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

impl Access<'_> {
    /// Makes a code that lets one device in, for ten minutes.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn invite(&self, by: Option<&str>) -> Result<String, Trouble> {
        // 12 letters of 32: 60 bits. Whoever tries them has ten minutes and few tries.
        let bytes = uuid::Uuid::new_v4().into_bytes();
        let code: String = bytes
            .iter()
            // These two bytes hold the uuid's version.
            .enumerate()
            .filter(|(at, _)| ![6, 8].contains(at))
            .take(12)
            .map(|(_, byte)| char::from(LETTERS[usize::from(byte % 32)]))
            .collect();
        let until = self.later(CODE_LIVES.minutes());
        let drawer = self.drawer("invitation");
        for (old, invitation) in drawer.all::<Invitation>()? {
            if invitation.until < self.now {
                drawer.change(&old, |_: Option<Invitation>| Ok((None, ())))?;
            }
        }
        let invitation = Invitation {
            until,
            by: by.map(str::to_owned),
        };
        drawer.put(&digest(&code), &invitation)?;
        Ok(code)
    }

    /// Whether a code would let a device in now.
    ///
    /// # Errors
    /// [`Trouble`], refused: it does not, and why.
    pub fn check_code(&self, code: &str) -> Result<(), Trouble> {
        self.check_guesses()?;
        let found: Option<Invitation> = self.drawer("invitation").get(&digest(&plain(code)))?;
        match found {
            Some(invitation) if invitation.until >= self.now => Ok(()),
            _ => {
                self.count_guess()?;
                Err(no_code())
            }
        }
    }

    /// Lets a device in: the code is used up.
    ///
    /// # Errors
    /// [`Trouble`], refused: the code is none, or was used, or is over; the name is none.
    pub fn join(&self, code: &str, name: &str, place: Place) -> Result<Joined, Trouble> {
        let name = named(name)?;
        self.check_code(code)?;
        let used = self.drawer("invitation").change(
            &digest(&plain(code)),
            |found: Option<Invitation>| {
                let is = found.is_some_and(|one| one.until >= self.now);
                Ok((None, is))
            },
        )?;
        if !used {
            return Err(no_code());
        }
        self.let_in(name, place)
    }

    /// Lets the machine in that the program itself runs on: whoever sits at it could read the
    /// record's files anyway.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn join_this_machine(&self) -> Result<Joined, Trouble> {
        self.let_in("this computer", Place::Desk)
    }

    fn let_in(&self, name: &str, place: Place) -> Result<Joined, Trouble> {
        let key = secret();
        let device = digest(&key);
        let card = DeviceCard {
            name: name.to_owned(),
            place,
            joined_at: self.now,
            put_out_at: None,
            sign_in: None,
            used_at: None,
        };
        self.drawer("device").put(&device, &card)?;
        Ok(Joined { device, key })
    }

    /// The device that shows this key.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn device_with(&self, key: &str) -> Result<Option<(String, DeviceCard)>, Trouble> {
        let device = digest(key);
        let card = self.drawer("device").get(&device)?;
        Ok(card.map(|card| (device, card)))
    }

    /// All devices that ever joined, the last first.
    ///
    /// # Errors
    /// [`Trouble`], if they cannot be read.
    pub fn devices(&self) -> Result<Vec<(String, DeviceCard)>, Trouble> {
        let mut all: Vec<(String, DeviceCard)> = self.drawer("device").all()?;
        all.sort_by_key(|(_, card)| std::cmp::Reverse(card.joined_at));
        Ok(all)
    }

    /// Puts a device out, and ends what is signed in on it. What was tapped on it before is
    /// still taken, and marked.
    ///
    /// # Errors
    /// [`Trouble`], if there is no such device.
    pub fn put_out(&self, device: &str) -> Result<(), Trouble> {
        self.sign_out(device)?;
        self.with_device(device, |card| {
            card.put_out_at.get_or_insert(self.now);
        })
    }

    /// Calls a device something else.
    ///
    /// # Errors
    /// [`Trouble`], refused: no name; or there is no such device.
    pub fn rename(&self, device: &str, name: &str) -> Result<(), Trouble> {
        let name = named(name)?.to_owned();
        self.with_device(device, |card| card.name.clone_from(&name))
    }

    pub(super) fn with_device<R>(
        &self,
        device: &str,
        change: impl Fn(&mut DeviceCard) -> R,
    ) -> Result<R, Trouble> {
        self.drawer("device").change(device, |card| {
            let mut card = card.ok_or_else(|| Trouble::not_found(words::no_such_device()))?;
            let answer = change(&mut card);
            Ok((Some(card), answer))
        })
    }

    /// So many wrong codes in one minute are no slips.
    fn check_guesses(&self) -> Result<(), Trouble> {
        let wrong: WrongCodes = self.drawer("guesses").get("code")?.unwrap_or_default();
        if wrong.tries >= MOST_WRONG && self.is_within_a_minute(wrong.since) {
            return Err(refused(
                words::the_code(),
                words::too_many_wrong_codes(),
                words::wait_and_scan(),
            ));
        }
        Ok(())
    }

    fn count_guess(&self) -> Result<(), Trouble> {
        self.drawer("guesses").change("code", |wrong| {
            let mut wrong: WrongCodes = wrong.unwrap_or_default();
            if !self.is_within_a_minute(wrong.since) {
                wrong = WrongCodes {
                    since: Some(self.now),
                    tries: 0,
                };
            }
            wrong.tries += 1;
            Ok((Some(wrong), ()))
        })
    }

    fn is_within_a_minute(&self, since: Option<Timestamp>) -> bool {
        let minute = jiff::SignedDuration::from_secs(60);
        since.is_some_and(|since| since <= self.now && self.now.duration_since(since) < minute)
    }

    pub(super) fn later(&self, span: Span) -> Timestamp {
        // The clock's last year is far away.
        self.now.checked_add(span).unwrap_or(Timestamp::MAX)
    }
}

fn named(name: &str) -> Result<&str, Trouble> {
    let name = name.trim();
    let letters = name.chars().count();
    if letters == 0 || letters > LONGEST_NAME || name.chars().any(char::is_control) {
        return Err(refused(
            words::the_name(),
            words::device_needs_name(),
            words::write_what_people_call_it(),
        ));
    }
    Ok(name)
}

/// A code as it was typed: without the gaps it is shown with, in capitals.
fn plain(code: &str) -> String {
    let letters = code.chars().filter(char::is_ascii_alphanumeric);
    letters.map(|letter| letter.to_ascii_uppercase()).collect()
}

fn no_code() -> Trouble {
    refused(
        words::the_code(),
        words::code_lets_nobody_in(),
        words::ask_for_new_code(),
    )
}
