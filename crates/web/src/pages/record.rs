//! The page about the record: where it stands, when it was last copied, and whether it
//! is what was written.

use super::{Ask, Shown, show};
use crate::State;
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use jiff::Timestamp;
use jiff::civil::Date;
use maud::{Markup, html};
use shop::repair::Words;
use shop::{Trouble, Waiting};
use std::sync::Arc;

/// What is known about the record beside what stands in it.
#[derive(Debug, Clone, Default)]
pub struct Kept {
    /// What it takes on this machine's disk; `None` if it is kept elsewhere.
    pub bytes: Option<u64>,
    /// The last copy that was made and checked.
    pub last_backup: Option<LastBackup>,
}

/// One copy.
#[derive(Debug, Clone)]
pub struct LastBackup {
    /// When it was made.
    pub at: Timestamp,
    /// Where it is.
    pub to: String,
    /// How many events it holds.
    pub events: u64,
}

/// A copy older than this many days gets a warning: a week's work can be told again from
/// papers and memory, more hardly.
const OLD_DAYS: i64 = 7;

pub async fn record(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    about_it(state, headers, |_| html! {}).await
}

pub async fn verify(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    about_it(state, headers, verdict).await
}

async fn about_it(
    state: State,
    headers: HeaderMap,
    verdict: impl FnOnce(&Ask<'_>) -> Markup + Send + 'static,
) -> Response {
    let kept = state.kept.clone();
    let service = Arc::clone(&state.service);
    show(state, headers, move |ask| {
        let waiting = shop::erasures_waiting(&service)?;
        page(ask, &kept(), verdict(ask), &waiting)
    })
    .await
}

fn page(
    ask: &Ask<'_>,
    kept: &Kept,
    verdict: Markup,
    waiting: &[Waiting],
) -> Result<Shown, Trouble> {
    let (store, log) = ask.snap.record();
    let head = store.head(log)?;
    let today = ask.snap.rules().today();
    Ok(Shown::new(
        "The record",
        html! {
            h1 { "The record" }
            (verdict)
            div class="row" { span class="what" { "Events, chained" } span { (head.position) } }
            @if let Some(bytes) = kept.bytes {
                div class="row" { span class="what" { "On this disk" } span { (size(bytes)) } }
            }
            (last_backup(kept.last_backup.as_ref(), head.position, ask.snap.now()))
            (erasures(waiting, today))
            h2 { "Head of the chain" }
            p class="strong gap" { (Words(head.hash).hex()) }
            p class="soft gap" { "It prints on every invoice and backup. " code { "buttonup verify --head" } " holds the record against it." }
            form method="post" action="/record/verify" {
                div class="presses low" { button class="press confirm" type="submit" { "Verify now" } }
            }
        },
    ))
}

fn verdict(ask: &Ask<'_>) -> Markup {
    let (store, log) = ask.snap.record();
    match shop::verify(store, log, None) {
        Ok(found) => html! {
            p class="gap strong" role="status" {
                "Sound: all " (found.events) " events are what was written."
            }
            @for event in &found.unreadable {
                p class="caution" role="alert" {
                    "Event " (event.position) " (" (event.stream) ") cannot be read by this program: " (event.what)
                    ". Use the newer program, if one wrote it; else report this."
                }
            }
        },
        Err(damage) => html! {
            div class="caution" role="alert" {
                p { "Not sound: " (damage) }
                p { (damage.mend()) }
            }
        },
    }
}

fn last_backup(last: Option<&LastBackup>, events: u64, now: Timestamp) -> Markup {
    let Some(last) = last else {
        return html! {
            p class="caution" {
                "No backup is known. Copy the record to another disk: " code { "buttonup backup FOLDER" }
            }
        };
    };
    let since = events.saturating_sub(last.events);
    html! {
        div class="row" {
            span class="what" { "Last backup" }
            span { (age(last.at, now)) ", " (since) " events ago" }
        }
        p class="soft" { (last.to) }
        @if days(last.at, now) > OLD_DAYS {
            p class="caution" {
                "The last backup is older than a week. Copy the record again: " code { "buttonup backup FOLDER" }
            }
        }
    }
}

/// What somebody asked to have erased, and is still kept because a rule wants it.
fn erasures(waiting: &[Waiting], today: Date) -> Markup {
    if waiting.is_empty() {
        return html! {};
    }
    let here = waiting.iter().filter(|one| one.until.is_none()).count();
    let days = || waiting.iter().filter_map(|one| one.until);
    let due = days().filter(|day| *day <= today).count();
    html! {
        div class="row" {
            span class="what" { "Erasures that wait" }
            span {
                (waiting.len())
                @if let Some(first) = days().min() { ", the first until " (first.strftime("%-d %B %Y")) }
            }
        }
        @if here > 0 {
            p class="soft" { (here) " of them until the vehicle has left." }
        }
        @if due > 0 {
            p class="caution" {
                (due) " may be erased now. It is done within the hour while buttonup runs; to do it at once, stop it and run "
                code { "buttonup erase --due" }
            }
        } @else {
            p class="soft" { "Records are kept until then. On that day they are erased while buttonup runs: nothing to press." }
        }
    }
}

fn days(at: Timestamp, now: Timestamp) -> i64 {
    (now - at).as_hours() / 24
}

fn age(at: Timestamp, now: Timestamp) -> String {
    match days(at, now) {
        ..1 => "less than a day ago".to_owned(),
        1 => "1 day ago".to_owned(),
        days => format!("{days} days ago"),
    }
}

fn size(bytes: u64) -> String {
    const KIB: u64 = 1024;
    match bytes {
        0..KIB => format!("{bytes} bytes"),
        KIB..1_048_576 => format!("{} KiB", bytes / KIB),
        _ => format!("{} MiB", bytes / KIB / KIB),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_backup_grows_old() {
        let now: Timestamp = "2026-03-12T08:00:00Z".parse().unwrap();
        let page = |at: &str| {
            let last = LastBackup {
                at: at.parse().unwrap(),
                to: "/stick/shop".to_owned(),
                events: 90,
            };
            last_backup(Some(&last), 100, now).into_string()
        };
        let fresh = page("2026-03-11T09:00:00Z");
        assert!(
            fresh.contains("less than a day ago, 10 events ago"),
            "{fresh}"
        );
        assert!(!fresh.contains("caution"), "{fresh}");
        assert!(!page("2026-03-05T07:59:00Z").contains("caution"));
        assert!(page("2026-03-04T07:59:00Z").contains("8 days ago"));
        assert!(page("2026-03-04T07:59:00Z").contains("caution"));
        assert!(last_backup(None, 1, now).into_string().contains("caution"));
    }

    #[test]
    fn erasures_that_wait_say_until_when() {
        let waits = |until: Option<&str>| Waiting {
            asked: shop::repair::CommandId::new("00000000-0000-7000-8000-000000000001"),
            at: "2026-03-12T08:00:00Z".parse().unwrap(),
            who: shop::repair::PersonId::new("ana"),
            customer: shop::repair::CustomerId::new("c"),
            breadth: shop::Breadth::Person,
            why: shop::repair::Token::new("asked").unwrap(),
            until: until.map(|day| day.parse().unwrap()),
        };
        let page = |today: &str| {
            let waiting = [
                waits(Some("2036-05-04")),
                waits(Some("2036-03-02")),
                waits(None),
            ];
            erasures(&waiting, today.parse().unwrap()).into_string()
        };
        let before = page("2036-03-01");
        assert!(
            before.contains("3, the first until 2 March 2036"),
            "{before}"
        );
        assert!(before.contains("1 of them until the vehicle"), "{before}");
        assert!(before.contains("nothing to press"), "{before}");
        assert!(!before.contains("caution"), "{before}");
        let on_the_day = page("2036-03-02");
        assert!(on_the_day.contains("1 may be erased now"), "{on_the_day}");
        assert!(on_the_day.contains("caution"), "{on_the_day}");
        assert_eq!(erasures(&[], Date::MIN).into_string(), "");
    }

    #[test]
    fn sizes_are_read_at_a_glance() {
        assert_eq!(size(1023), "1023 bytes");
        assert_eq!(size(4096), "4 KiB");
        assert_eq!(size(3 * 1024 * 1024), "3 MiB");
    }
}
