//! The page about the record: where it stands, when it was last copied, and whether it
//! is what was written.

use crate::State;
use crate::pages::{Shown, Visit, show};
use crate::tap::{Look, button};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use jiff::Timestamp;
use maud::{Markup, html};
use serde_json::json;
use shop::repair::{Field, Rules, Words};
use shop::roles::{self, Act};
use shop::{ClockDoubt, Trouble, Waiting};
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
    verdict: impl FnOnce(&Visit<'_>) -> Markup + Send + 'static,
) -> Response {
    let kept = state.kept.clone();
    let service = Arc::clone(&state.service);
    show(state, headers, move |visit| {
        let waiting = asked(visit, shop::erasures_waiting(&service)?)?;
        let doubt = shop::clock_doubt(&service)?;
        let may = roles::check(visit.snap.caller(), Act::ShopFact("erasure-called-off")).is_ok();
        let erasures = erasures(&waiting, &visit.snap.rules(), doubt.as_ref(), may);
        page(visit, &kept(), &verdict(visit), &erasures)
    })
    .await
}

fn page(
    visit: &Visit<'_>,
    kept: &Kept,
    verdict: &Markup,
    erasures: &Markup,
) -> Result<Shown, Trouble> {
    let (store, log) = visit.snap.record();
    let head = store.head(log)?;
    Ok(Shown::new(
        "The record",
        html! {
            h1 { "The record" }
            (verdict)
            div class="row" { span class="what" { "Events, chained" } span { (head.position) } }
            @if let Some(bytes) = kept.bytes {
                div class="row" { span class="what" { "On this disk" } span { (size(bytes)) } }
            }
            (last_backup(kept.last_backup.as_ref(), head.position, visit.snap.now()))
            (erasures)
            h2 { "Head of the chain" }
            p class="strong gap" { (Words(head.hash).hex()) }
            p class="soft gap" { "It prints on every invoice and backup. " code { "buttonup verify --head" } " holds the record against it." }
            form method="post" action="/record/verify" {
                div class="presses low" { button class="press confirm" type="submit" { "Verify now" } }
            }
        },
    ))
}

fn verdict(visit: &Visit<'_>) -> Markup {
    let (store, log) = visit.snap.record();
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

/// An erasure that waits, with what the customer is called.
struct Asked {
    waiting: Waiting,
    called: String,
}

fn asked(visit: &Visit<'_>, waiting: Vec<Waiting>) -> Result<Vec<Asked>, Trouble> {
    waiting
        .into_iter()
        .map(|waiting| {
            let customer = visit.snap.world().customer(&waiting.customer)?;
            let name = visit.snap.texts().text_of(customer.text(Field::Name).words);
            Ok(Asked {
                called: name.unwrap_or_else(|| waiting.customer.as_str().to_owned()),
                waiting,
            })
        })
        .collect()
}

/// What somebody asked to have erased: until it is carried out it can be called off.
fn erasures(asked: &[Asked], rules: &Rules, doubt: Option<&ClockDoubt>, may: bool) -> Markup {
    if asked.is_empty() {
        return html! {};
    }
    let (now, today) = (rules.now, rules.today());
    let due = asked.iter().filter(|one| one.waiting.is_due(now, today));
    let due = due.count();
    html! {
        h2 { "Erasures that wait" }
        @for Asked { waiting, called } in asked {
            div class="row" {
                span class="what" {
                    span class="strong line" { (called) }
                    span class="soft line" { (when(waiting, rules)) }
                }
            }
            @if may {
                div class="presses" {
                    (button(Look::Plain, "Call it off", called, &[json!({ "stream": "shop",
                        "shop_fact": { "erasure-called-off": { "asked": waiting.asked.as_str() } } })], None))
                }
            }
        }
        @if let (true, Some(doubt)) = (due > 0, doubt) {
            p class="caution" {
                "Is the machine's clock right? It says " (dated(rules, doubt.now)) ", but the last event was written down at " (doubt.last)
                ". Nothing is erased until they agree to a day. With the next event they do; if the clock is right and nothing comes in, stop buttonup and run "
                code { "buttonup erase --due --clock-is-right" }
            }
        } @else if due > 0 {
            p class="caution" {
                (due) " may be erased now. It is done within the hour while buttonup runs; to do it at once, stop it and run "
                code { "buttonup erase --due" }
            }
        } @else {
            p class="soft" { "On that day they are erased while buttonup runs: nothing to press." }
        }
    }
}

/// From when on it is carried out.
fn when(waiting: &Waiting, rules: &Rules) -> String {
    let Some(until) = waiting.until else {
        return "waits until the vehicle has left".to_owned();
    };
    let earliest = waiting.earliest.to_zoned_datetime(rules.zone.clone());
    if until > earliest.date() {
        let day = until.strftime("%-d %B %Y");
        return format!("records are kept until {day}");
    }
    format!("from {} on", dated(rules, waiting.earliest))
}

fn dated(rules: &Rules, at: Timestamp) -> String {
    let at = at.to_zoned_datetime(rules.zone.clone());
    at.strftime("%-d %B %Y, %H:%M").to_string()
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
        let waits = |until: Option<&str>| Asked {
            waiting: Waiting {
                asked: shop::repair::CommandId::new("00000000-0000-7000-8000-000000000001"),
                at: "2026-03-12T08:00:00Z".parse().unwrap(),
                earliest: "2026-03-13T08:00:00Z".parse().unwrap(),
                who: shop::repair::PersonId::new("ana"),
                customer: shop::repair::CustomerId::new("c"),
                breadth: shop::Breadth::Person,
                why: shop::repair::Token::new("asked").unwrap(),
                until: until.map(|day| day.parse().unwrap()),
            },
            called: "Ada Brandt".to_owned(),
        };
        let page = |now: &str, doubt: Option<&ClockDoubt>| {
            let waiting = [
                waits(Some("2036-05-04")),
                waits(Some("2026-03-01")),
                waits(None),
            ];
            erasures(&waiting, &rules(now), doubt, true).into_string()
        };
        let before = page("2026-03-13T07:59:00Z", None);
        for words in [
            "records are kept until 4 May 2036",
            "from 13 March 2026, 08:00 on",
            "waits until the vehicle has left",
            "nothing to press",
            "Call it off",
        ] {
            assert!(before.contains(words), "{words}: {before}");
        }
        assert!(!before.contains("caution"), "{before}");
        let after = page("2026-03-13T08:00:00Z", None);
        assert!(after.contains("1 may be erased now"), "{after}");
        assert!(after.contains("caution"), "{after}");
        let doubt = ClockDoubt {
            now: "2031-03-13T08:00:00Z".parse().unwrap(),
            last: "2026-03-12T08:00:00Z".to_owned(),
        };
        let doubtful = page("2031-03-13T08:00:00Z", Some(&doubt));
        assert!(doubtful.contains("clock right?"), "{doubtful}");
        assert!(!doubtful.contains("may be erased now"), "{doubtful}");
        let nobody = erasures(&[], &rules("2031-03-13T08:00:00Z"), None, true);
        assert_eq!(nobody.into_string(), "");
    }

    fn rules(now: &str) -> Rules {
        Rules {
            now: now.parse().unwrap(),
            zone: jiff::tz::TimeZone::UTC,
            leeway: shop::repair::price::Leeway::default(),
        }
    }

    #[test]
    fn sizes_are_read_at_a_glance() {
        assert_eq!(size(1023), "1023 bytes");
        assert_eq!(size(4096), "4 KiB");
        assert_eq!(size(3 * 1024 * 1024), "3 MiB");
    }
}
