//! `verify` and `rebuild`.

use super::place::Place;
use crate::answer::{Answer, Wrong};
use clap::Args;
use serde_json::json;
use shop::repair::Words;
use store::{Damage, Hash, Store, Verified};

/// Which record, and what it is held against.
#[derive(Debug, Args)]
pub struct Verify {
    #[command(flatten)]
    place: Place,
    /// A head hash printed on an invoice or backup.
    #[arg(long, value_name = "HASH")]
    head: Option<String>,
}

/// Which record.
#[derive(Debug, Args)]
pub struct Rebuild {
    #[command(flatten)]
    place: Place,
}

/// Checks every row, and says where the record stops being what was written.
pub fn verify(verify: &Verify) -> Result<Answer, Wrong> {
    let head = verify.head.as_deref().map(hash).transpose()?;
    let opened = verify.place.read()?;
    Ok(
        match shop::verify(opened.store(), &verify.place.log, head) {
            Ok(found) => sound(&found),
            Err(damage) => not_sound(&damage),
        },
    )
}

fn hash(text: &str) -> Result<Hash, Wrong> {
    Words::from_hex(text).map(|words| words.0).ok_or_else(|| {
        Wrong::input(
            "--head",
            format!("{text:?} is no hash"),
            "give its 64 hexadecimal digits",
        )
    })
}

fn sound(found: &Verified) -> Answer {
    let asked = found
        .asked_head_at
        .map(|at| format!("; the hash asked for stands at event {at}"))
        .unwrap_or_default();
    Answer {
        text: format!(
            "sound: {} events, head {}{asked}",
            found.events,
            Words(found.head.hash).hex()
        ),
        json: json!({
            "sound": true,
            "events": found.events,
            "head": Words(found.head.hash).hex(),
            "private": found.private,
            "erased": found.erased,
            "asked_head_at": found.asked_head_at,
        }),
        good: true,
    }
}

/// The first bad row, and what is wrong with it.
pub fn not_sound(damage: &Damage) -> Answer {
    Answer {
        text: format!("not sound: {damage}\n  mend: {}", damage.mend()),
        json: json!({
            "sound": false,
            "position": damage.position(),
            "what": damage.to_string(),
            "mend": damage.mend(),
        }),
        good: false,
    }
}

/// Fails with exit 1 unless the record is sound.
pub fn must_be_sound(store: &dyn Store, log: &str, place: &str) -> Result<Verified, Wrong> {
    shop::verify(store, log, None).map_err(|damage| Wrong {
        code: 1,
        place: place.to_owned(),
        what: format!("it is not sound: {damage}"),
        mend: damage.mend().to_owned(),
    })
}

/// Makes every cache again from the log, and compares the answers.
pub fn rebuild(rebuild: &Rebuild) -> Result<Answer, Wrong> {
    let (opened, free) = rebuild.place.write_if_free()?;
    let made = shop::rebuild(&opened.shared(), &rebuild.place.log, free)?;
    let good = made.differences.is_empty();
    let verdict = match (made.index_stood_at, good) {
        (_, false) => format!(
            "not the same: {}\n  mend: report this; the record itself is not touched",
            made.differences.join(", ")
        ),
        (None, true) => "there was no index to compare it with".to_owned(),
        (Some(position), true) => {
            format!("the answers are the same (the index stood at event {position})")
        }
    };
    let written = match (made.written, free) {
        (true, _) => "the index made again is in use from now on",
        (false, true) => "the index was left as it was",
        (false, false) => {
            "the index was left as it was: another program serves the record, or it may not be written to"
        }
    };
    Ok(Answer {
        text: format!(
            "made again from {} events: {} orders, {} vehicles, {} customers; {verdict}; {written}",
            made.events, made.orders, made.vehicles, made.customers
        ),
        json: json!({
            "same": good,
            "events": made.events,
            "orders": made.orders,
            "vehicles": made.vehicles,
            "customers": made.customers,
            "index_stood_at": made.index_stood_at,
            "differences": made.differences,
            "written": made.written,
        }),
        good,
    })
}
