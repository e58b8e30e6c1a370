//! PINs: set, checked with counted tries, lifted.

use super::{Access, refused};
use crate::phrases::access as words;
use crate::trouble::{Trouble, TroubleKind};
use argon2::{Argon2, PasswordHasher, PasswordVerifier};
use jiff::{Timestamp, ToSpan};
use serde::{Deserialize, Serialize};
use std::sync::mpsc::{Sender, channel};
use std::sync::{LazyLock, Mutex, PoisonError};

/// The shortest PIN.
pub const SHORTEST_PIN: usize = 4;
/// The longest.
pub const LONGEST_PIN: usize = 8;

/// What is kept of a person's PIN.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Pin {
    /// Nothing where it was taken away: the next who signs in as this person sets one.
    hash: Option<String>,
    /// Tries since the last right one.
    tries: u32,
    /// Until when no further try is looked at.
    wait_until: Option<Timestamp>,
}

/// Wrong tries before one has to wait.
const FREE_TRIES: u32 = 5;
/// Seconds of the first wait; each further wrong try doubles it.
const FIRST_WAIT: i64 = 30;
/// The longest wait, an hour.
const LONGEST_WAIT: i64 = 60 * 60;

type Work = Box<dyn FnOnce() + Send>;

/// One at a time: each takes 19 MiB for a moment, and a flood of tries gets no more of the
/// machine than that. All on one thread, since the allocator keeps that much for each thread that
/// ever took it.
static HASHING: LazyLock<Mutex<Sender<Work>>> = LazyLock::new(|| {
    let (sender, all) = channel::<Work>();
    // Where no thread can be had, nobody receives, and each try is answered so.
    let _ = std::thread::Builder::new()
        .name("pins".to_owned())
        .spawn(move || all.into_iter().for_each(|work| work()));
    Mutex::new(sender)
});

/// Does this on the thread for it, and waits; nothing if that thread is gone.
fn hashing<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Option<T> {
    let (answer, answered) = channel();
    let work: Work = Box::new(move || {
        let _ = answer.send(work());
    });
    let sender = HASHING.lock().unwrap_or_else(PoisonError::into_inner);
    sender.send(work).ok()?;
    drop(sender);
    answered.recv().ok()
}

impl Access<'_> {
    /// Whether a person has a PIN.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn has_pin(&self, person: &str) -> Result<bool, Trouble> {
        let pin: Option<Pin> = self.drawer("pin").get(person)?;
        Ok(pin.is_some_and(|pin| pin.hash.is_some()))
    }

    /// Until when a person's PIN is not looked at.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn waits_until(&self, person: &str) -> Result<Option<Timestamp>, Trouble> {
        let pin: Option<Pin> = self.drawer("pin").get(person)?;
        let until = pin.and_then(|pin| pin.wait_until);
        Ok(until.filter(|until| *until > self.now))
    }

    /// Sets the first PIN of a person, or one in place of a PIN that was taken away.
    ///
    /// # Errors
    /// [`Trouble`], refused: there is one, or it is too easy.
    pub fn set_first_pin(&self, person: &str, pin: &str) -> Result<(), Trouble> {
        check_form(pin)?;
        let hash = hashed(pin)?;
        self.drawer("pin").change(person, |stands: Option<Pin>| {
            if stands.is_some_and(|pin| pin.hash.is_some()) {
                return Err(refused(
                    words::the_pin(),
                    words::has_a_pin(),
                    words::sign_in_with_it(),
                ));
            }
            let fresh = Pin {
                hash: Some(hash.clone()),
                tries: 0,
                wait_until: None,
            };
            Ok((Some(fresh), ()))
        })
    }

    /// Changes a PIN.
    ///
    /// # Errors
    /// [`Trouble`], refused: the old one is wrong, or the new one too easy.
    pub fn change_pin(&self, person: &str, old: &str, new: &str) -> Result<(), Trouble> {
        check_form(new)?;
        self.check_pin(person, old)?;
        let hash = hashed(new)?;
        self.drawer("pin").change(person, |_: Option<Pin>| {
            let fresh = Pin {
                hash: Some(hash.clone()),
                tries: 0,
                wait_until: None,
            };
            Ok((Some(fresh), ()))
        })
    }

    /// Takes a PIN away that was forgotten; the owner does it.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn take_pin_away(&self, person: &str) -> Result<(), Trouble> {
        self.drawer("pin")
            .change(person, |_: Option<Pin>| Ok((None, ())))
    }

    /// Lets a person try again at once; the owner does it.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn lift(&self, person: &str) -> Result<(), Trouble> {
        self.drawer("pin").change(person, |pin: Option<Pin>| {
            let lifted = pin.map(|pin| Pin {
                tries: 0,
                wait_until: None,
                ..pin
            });
            Ok((lifted, ()))
        })
    }

    /// Checks a PIN. A try is counted before it is looked at, so that many at once are no more
    /// tries than one after the other.
    ///
    /// # Errors
    /// [`Trouble`], refused: it is wrong, or it has to be waited.
    pub fn check_pin(&self, person: &str, tried: &str) -> Result<(), Trouble> {
        let hash = self.drawer("pin").change(person, |pin: Option<Pin>| {
            let mut pin = pin.ok_or_else(no_pin)?;
            let hash = pin.hash.clone().ok_or_else(no_pin)?;
            if let Some(until) = pin.wait_until.filter(|until| *until > self.now) {
                return Err(self.has_to_wait(until));
            }
            pin.tries = pin.tries.saturating_add(1);
            if pin.tries >= FREE_TRIES {
                let doublings = (pin.tries - FREE_TRIES).min(16);
                let seconds = (FIRST_WAIT << doublings).min(LONGEST_WAIT);
                pin.wait_until = Some(self.later(seconds.seconds()));
            }
            Ok((Some(pin), hash))
        })?;
        if tried.len() > LONGEST_PIN || !is(tried, &hash) {
            return Err(Trouble::new(
                TroubleKind::Pin,
                words::the_pin(),
                words::not_the_pin(),
                words::type_it_again(),
            ));
        }
        self.lift(person)
    }

    fn has_to_wait(&self, until: Timestamp) -> Trouble {
        let seconds = until.duration_since(self.now).as_secs().max(1);
        let wait = match seconds {
            1..=90 => words::seconds(seconds),
            _ => words::minutes((seconds + 59) / 60),
        };
        Trouble::new(
            TroubleKind::Pin,
            words::the_pin(),
            words::wrong_too_often(wait),
            words::owner_can_lift(),
        )
    }
}

fn no_pin() -> Trouble {
    Trouble::new(
        TroubleKind::Pin,
        words::the_pin(),
        words::no_pin_yet(),
        words::set_one(),
    )
}

fn is(tried: &str, hash: &str) -> bool {
    let (tried, hash) = (tried.to_owned(), hash.to_owned());
    let verified = hashing(move || Argon2::default().verify_password(tried.as_bytes(), &*hash));
    verified.is_some_and(|verified| verified.is_ok())
}

fn hashed(pin: &str) -> Result<String, Trouble> {
    let pin = pin.to_owned();
    let hash = hashing(move || {
        let hash = Argon2::default().hash_password(pin.as_bytes());
        hash.map(|hash| hash.to_string())
            .map_err(|error| error.to_string())
    });
    let hash = hash.unwrap_or_else(|| Err("no thread".to_owned()));
    hash.map_err(|error| {
        Trouble::new(
            TroubleKind::Record,
            words::the_pin(),
            words::could_not_be_kept(error),
            words::try_again(),
        )
    })
}

/// Four to eight digits that are not the first that anybody tries.
fn check_form(pin: &str) -> Result<(), Trouble> {
    let digits: Vec<u8> = pin.bytes().collect();
    if !(SHORTEST_PIN..=LONGEST_PIN).contains(&digits.len())
        || !digits.iter().all(u8::is_ascii_digit)
    {
        return Err(refused(
            words::the_pin(),
            words::pin_is_digits(),
            words::digits_alone(),
        ));
    }
    if is_easy(&digits) {
        return Err(refused(
            words::the_pin(),
            words::pin_too_easy(),
            words::without_pattern(),
        ));
    }
    Ok(())
}

/// The same digit, steps of one, a part twice, there and back, a year.
fn is_easy(digits: &[u8]) -> bool {
    let steps = |by: i16| {
        let pairs = digits.windows(2);
        pairs
            .map(|pair| (i16::from(pair[1]) - i16::from(pair[0])).rem_euclid(10))
            .all(|step| step == by.rem_euclid(10))
    };
    let length = digits.len();
    let repeats = (1..=length / 2)
        .filter(|part| length.is_multiple_of(*part))
        .any(|part| digits.chunks(part).all(|chunk| chunk == &digits[..part]));
    let mirrored = digits.iter().eq(digits.iter().rev());
    let year = length == 4 && (digits.starts_with(b"19") || digits.starts_with(b"20"));
    // Straight down or round the keys.
    let keys = [&b"2580"[..], b"0852", b"1470", b"1397", b"1379", b"7931"];
    [0, 1, -1].into_iter().any(steps) || repeats || mirrored || year || keys.contains(&digits)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_that_anybody_tries_are_refused() {
        for pin in [
            "0000", "1234", "4321", "9012", "1212", "123123", "2580", "1985", "2024", "1221",
            "11111111", "87654321",
        ] {
            assert!(check_form(pin).is_err(), "{pin}");
        }
        for pin in ["4827", "90417", "380516", "27182845"] {
            assert!(check_form(pin).is_ok(), "{pin}");
        }
        for pin in ["", "123", "123456789", "12a4", "12 4", "١٢٣٥"] {
            assert!(
                check_form(pin).unwrap_err().what.contains("4 to 8 digits"),
                "{pin}"
            );
        }
    }
}
