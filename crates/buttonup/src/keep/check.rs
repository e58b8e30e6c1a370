//! `verify` and `rebuild`.

use super::place::Place;
use crate::answer::{Answer, Wrong};
use clap::Args;
use serde_json::json;
use shop::Taken;
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
    verify.place.must_hold(opened.store())?;
    let log = &verify.place.log;
    let found = match shop::verify(opened.store(), log, head) {
        Ok(found) => found,
        Err(damage) => {
            if let Some(asked) = head {
                mistyped(opened.store(), log, asked)?;
            }
            return Ok(not_sound(&damage));
        }
    };
    // What is found by it is shown: it is held against the record as well.
    let index = shop::rebuild(&opened.shared(), log, false)?;
    Ok(sound(&found, &index.differences))
}

/// A hash copied by hand that is off by a digit or two accuses nobody: where the record is sound
/// in itself, that is asked about first.
fn mistyped(store: &dyn Store, log: &str, asked: Hash) -> Result<(), Wrong> {
    const MOST_DIGITS: usize = 2;
    const PAGE: usize = 5_000;
    if shop::verify(store, log, None).is_err() {
        return Ok(());
    }
    let asked = Words(asked).hex();
    let mut from = 0;
    loop {
        let rows = store.log(log, from, PAGE).map_err(shop::Trouble::from)?;
        let Some(last) = rows.last() else {
            return Ok(());
        };
        from = last.position;
        for row in &rows {
            let found = Words(row.hash).hex();
            let differ = found.bytes().zip(asked.bytes()).filter(|(a, b)| a != b);
            let digits = differ.count();
            if digits <= MOST_DIGITS {
                let digits = if digits == 1 {
                    "one digit"
                } else {
                    "two digits"
                };
                return Err(Wrong::input(
                    "--head",
                    format!(
                        "no event has this hash, but that of event {} differs from it in {digits}: {found}",
                        row.position
                    ),
                    "was it copied wrong? Look at the paper again, and give it as it stands there; the record is sound in itself",
                ));
            }
        }
    }
}

fn hash(text: &str) -> Result<Hash, Wrong> {
    // On papers it stands in groups.
    let digits: String = text.split_whitespace().collect();
    Words::from_hex(&digits)
        .map(|words| words.0)
        .ok_or_else(|| {
            Wrong::input(
                "--head",
                format!("{text:?} is no hash"),
                "give its 64 hexadecimal digits",
            )
        })
}

fn sound(found: &Verified, differences: &[String]) -> Answer {
    let index = if differences.is_empty() {
        String::new()
    } else {
        format!(
            "\n  the index beside it says something else: {}\n  mend: stop the program that serves it and run `buttonup rebuild`; the record itself is not touched",
            differences.join(", ")
        )
    };
    let unread: Vec<String> = found
        .unreadable
        .iter()
        .map(|event| {
            format!(
                "\n  event {} ({}) cannot be read by this program: {}",
                event.position, event.stream, event.what
            )
        })
        .collect();
    let mend = if unread.is_empty() {
        ""
    } else {
        "\n  mend: use the newer program, if one wrote them; else report this. Until then these streams can only be looked at"
    };
    let asked = found
        .asked_head_at
        .map(|at| format!("; the hash asked for stands at event {at}"))
        .unwrap_or_default();
    Answer {
        text: format!(
            "sound: {} events, head {}{asked}{}{mend}{index}",
            found.events,
            Words(found.head.hash).hex(),
            unread.concat()
        ),
        json: json!({
            "sound": true,
            "events": found.events,
            "head": Words(found.head.hash).hex(),
            "private": found.private,
            "erased": found.erased,
            "asked_head_at": found.asked_head_at,
            "index_differs": differences,
            "unreadable": found.unreadable.iter().map(|event| json!({
                "position": event.position, "stream": event.stream, "what": event.what,
            })).collect::<Vec<_>>(),
        }),
        good: found.unreadable.is_empty() && differences.is_empty(),
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

/// Fails with exit 1 unless the record is sound, and reads as far as is wanted.
pub fn must_be_sound(
    store: &dyn Store,
    log: &str,
    place: &str,
    taken: Taken,
) -> Result<Verified, Wrong> {
    let wrong = |what: String, mend: String| Wrong {
        code: 1,
        place: place.to_owned(),
        what,
        mend,
    };
    let found = shop::verify(store, log, None).map_err(|damage| {
        wrong(
            format!("it is not sound: {damage}"),
            damage.mend().to_owned(),
        )
    })?;
    match found.unreadable.first() {
        Some(event) if taken == Taken::Readable => Err(wrong(
            format!(
                "{} of its events cannot be read by this program, the first at {} ({}): {}",
                found.unreadable.len(),
                event.position,
                event.stream,
                event.what
            ),
            "use the newer program, if one wrote them; or take them as they are with --unreadable-too: their streams can then only be looked at".to_owned(),
        )),
        _ => Ok(found),
    }
}

/// Whether what cannot be read is taken along.
#[derive(Debug, Clone, Copy, Args)]
pub struct Also {
    /// Take events along that this program cannot read; nothing can be written where they
    /// stand until a program is used that can.
    #[arg(long)]
    unreadable_too: bool,
}

impl Also {
    pub fn taken(self) -> Taken {
        if self.unreadable_too {
            Taken::AsTheyAre
        } else {
            Taken::Readable
        }
    }
}

/// Makes every cache again from the log, and compares the answers.
pub fn rebuild(rebuild: &Rebuild) -> Result<Answer, Wrong> {
    let (opened, free) = rebuild.place.write_if_free()?;
    rebuild.place.must_hold(opened.store())?;
    let log = &rebuild.place.log;
    // Before anything is read by it.
    let mended = if free {
        shop::mend(opened.store(), log)?
    } else {
        Vec::new()
    };
    let made = shop::rebuild(&opened.shared(), log, free)?;
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
    let anew = if mended.is_empty() {
        String::new()
    } else {
        format!(
            "made anew, since it was not what the rows say: {}\n",
            mended.join("; ")
        )
    };
    Ok(Answer {
        text: format!(
            "{anew}made again from {} events: {} orders, {} vehicles, {} customers; {verdict}; {written}",
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
            "mended": mended,
            "written": made.written,
        }),
        good,
    })
}
