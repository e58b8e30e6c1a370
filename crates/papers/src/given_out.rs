//! Papers that were given out, kept with the order byte for byte.
//!
//! What is true of an order goes on changing, so a paper made next year is another one. The one
//! that somebody holds in their hand is kept as a file with the record, under its commitment.

use crate::kinds::{Asked, Made, make};
use crate::phrases as say;
use serde_json::json;
use shop::repair::Words;
use shop::{Caller, Device, Service, Trouble, TroubleKind};

/// A paper that was given out.
#[derive(Debug, Clone)]
pub struct GivenOut {
    /// The name its file is asked for by.
    pub file: String,
    /// The paper.
    pub made: Made,
}

/// Makes a paper and keeps it with the order as given out, with who got it and how.
///
/// # Errors
/// [`Trouble`]: what [`make`] says; or nobody is named who gives it.
pub fn give_out(
    service: &Service,
    caller: &Caller,
    number: u64,
    asked: &Asked,
    given: &str,
) -> Result<GivenOut, Trouble> {
    let person = caller.person.as_ref().ok_or_else(|| {
        Trouble::new(
            TroubleKind::Refused,
            say::the_paper(),
            say::nobody_gives_it(),
            say::pick_who_you_are(),
        )
    })?;
    let (made, order) = service.look(caller, |snap| {
        let order = shop::view::order(snap, number)?.order.clone();
        Ok((make(snap, number, asked)?, order))
    })?;
    let words = match given.trim() {
        "" => made.paper.title.clone(),
        given => format!("{}, {given}", made.paper.title),
    };
    let attached = json!({ "attached": {
        "file": Device::file(&made.pdf, "application/pdf"),
        "item": null,
        "snag": null,
        "words": Device::words(&words),
    } });
    let mut device = Device::new("papers", person.as_str());
    let stream = format!("order:{order}");
    let command = device.command(&stream, service.now(), "fact", attached);
    service.command(caller, command)?;
    let file = kept_as(service, caller, number, &made)?;
    Ok(GivenOut { file, made })
}

/// The file of exactly these bytes among the order's papers: what was written is read again.
fn kept_as(
    service: &Service,
    caller: &Caller,
    number: u64,
    made: &Made,
) -> Result<String, Trouble> {
    let order = service.look(caller, |snap| shop::view::order(snap, number))?;
    for given in order.papers.given.iter().rev() {
        let Some(words) = Words::from_hex(&given.file) else {
            continue;
        };
        let file = service.texts().file(words)?;
        if file.is_some_and(|(_, bytes)| bytes == made.pdf) {
            return Ok(given.file.clone());
        }
    }
    Err(Trouble::new(
        TroubleKind::Record,
        &made.paper.title,
        say::not_found_again(),
        say::check_the_record(),
    ))
}
