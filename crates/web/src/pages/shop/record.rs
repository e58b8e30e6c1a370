//! The page about the record: where it stands, when it was last copied, and whether it
//! is what was written.

use crate::State;
use crate::pages::people::decided;
use crate::pages::{Shown, Visit, show, trouble_answer};
use crate::phrases::dates::dated;
use crate::phrases::shop as say;
use crate::tap::{Look, button};
use axum::Form;
use axum::body::Body;
use axum::extract;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE, LOCATION};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::json;
use shop::repair::{Field, Rules, Words};
use shop::roles::{self, Act};
use shop::{ClockDoubt, Trouble, TroubleKind, Waiting};
use std::sync::Arc;
use tokio_stream::wrappers::ReceiverStream;

/// What is known about the record beside what stands in it.
#[derive(Debug, Clone, Default)]
pub struct Kept {
    /// Where the shop's folder is.
    pub folder: String,
    /// Where copies go.
    pub backups: String,
    /// How many copies are kept, where one is made each day.
    pub daily: Option<usize>,
    /// What it takes on this machine's disk; `None` if it is kept elsewhere.
    pub bytes: Option<u64>,
    /// The last copy that was made and checked.
    pub last_backup: Option<LastBackup>,
    /// The keys of the shop's network.
    pub keys: Keys,
}

/// How the keys of the shop's network are kept.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Keys {
    /// There are none: the network was never served.
    #[default]
    None,
    /// They lie on this machine alone: no copy holds them.
    Open,
    /// Sealed with a word, they go along with each copy.
    Sealed,
}

/// What looks after the record where it is kept.
pub trait Keeper: Send + Sync {
    /// What is known of it now.
    fn kept(&self) -> Kept;

    /// Copies it and checks the copy.
    ///
    /// # Errors
    /// [`Trouble`]: it could not be copied, or the copy is not sound.
    fn back_up(&self) -> Result<LastBackup, Trouble>;

    /// Seals the keys of the shop's network with a word, so that they go along with each copy.
    ///
    /// # Errors
    /// [`Trouble`]: the word is too short, or they cannot be read or written.
    fn seal_keys(&self, word: &str) -> Result<(), Trouble>;

    /// The key with which the shop signs maps that it sends; made when it is wanted first.
    ///
    /// # Errors
    /// [`Trouble`]: it cannot be read or written.
    fn signer(&self) -> Result<shop::Signer, Trouble>;
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
    let keeper = Arc::clone(&state.keeper);
    let service = Arc::clone(&state.service);
    show(state, headers, move |visit| {
        let waiting = asked(visit, shop::erasures_waiting(&service)?)?;
        let doubt = shop::clock_doubt(&service)?;
        let may = roles::check(visit.snap.caller(), Act::ShopFact("erasure-called-off")).is_ok();
        let kept = keeper.kept();
        let clock = Clock {
            rules: visit.snap.rules(),
            doubt,
        };
        let erasures = erasures(&waiting, &clock, &kept.folder, may);
        page(visit, &kept, &verdict(visit), &erasures)
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
        say::the_record(),
        html! {
            h1 { (say::the_record()) }
            (verdict)
            div class="row" { span class="what" { (say::events_chained()) } span { (head.position) } }
            @if let Some(bytes) = kept.bytes {
                div class="row" { span class="what" { (say::on_this_disk()) } span { (size(bytes)) } }
            }
            (last_backup(kept.last_backup.as_ref(), head.position, visit.snap.now()))
            form method="post" action="/record/backup" class="bare" {
                div class="presses" { button class="press confirm" type="submit" { (say::back_up_now()) small { (say::to_folder(&kept.backups)) } } }
            }
            @if let Some(most) = kept.daily { p class="soft" { (say::made_each_day(most)) code { (say::backups_option()) } "." } }
            @else { p class="soft" { (say::none_by_itself()) } }
            (keys(visit, kept.keys))
            (erasures)
            h2 { (say::is_it_what_was_written()) }
            form method="post" action="/record/verify" class="bare" {
                div class="presses" { button class="press" type="submit" { (say::verify_now()) } }
            }
            p class="soft gap" { (say::head_of_the_chain()) }
            p class="strong gap" { (Words(head.hash).hex()) }
            p class="soft gap" { (say::hold_against_printed()) }
            p class="gap" { code { "buttonup verify --data " (quoted(&kept.folder)) " --head " (Words(head.hash).hex()) } }
            @if roles::check(visit.snap.caller(), Act::See("/record/export")).is_ok() {
                h2 { (say::take_it_elsewhere()) }
                a class="row" href="/record/export" { span class="what strong" { (say::export_the_record()) } span class="soft" { (say::export_hint()) } }
                a class="row" href="/shop/read-in" { span class="what strong" { (say::read_in_customers_and_vehicles()) } span class="soft" { "CSV" } }
            }
        },
    ))
}

/// After a restore on another machine every phone asks to be let in anew, unless the keys came
/// along.
fn keys(visit: &Visit<'_>, keys: Keys) -> Markup {
    if keys == Keys::None || roles::check(visit.snap.caller(), Act::See("/record/keys")).is_err() {
        return html! {};
    }
    html! {
        h2 { (say::keys_of_the_network()) }
        @if keys == Keys::Sealed { p class="gap" { (say::sealed_go_along()) code { "buttonup open-keys" } (say::opens_them()) } }
        @else { p class="wait gap" { (say::no_copy_holds_them()) } }
        details id="seal" {
            summary class="row" { span class="what strong" { @if keys == Keys::Sealed { (say::seal_with_another_word()) } @else { (say::seal_with_a_word()) } } }
            form method="post" action="/record/keys" class="narrow" {
                @for (name, label, hint) in [("word", say::the_word(), say::the_word_hint()), ("again", say::once_more(), "")] {
                    label class="field" {
                        span { (label) }
                        @if !hint.is_empty() { span class="soft" { (hint) } }
                        input type="password" name=(name) minlength="10" autocomplete="new-password" required;
                    }
                }
                div class="presses" { button class="press" type="submit" { (say::seal_them()) } }
            }
        }
    }
}

/// The word, typed twice.
#[derive(Debug, Deserialize)]
pub struct Word {
    word: String,
    again: String,
}

/// Seals the keys.
pub async fn seal(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(typed): Form<Word>,
) -> Response {
    let keeper = Arc::clone(&state.keeper);
    let done = decided(&state, &headers, move || {
        if typed.word != typed.again {
            return Err(Trouble::unreadable(
                say::in_the_word(),
                say::the_two_differ(),
                say::type_it_again(),
            ));
        }
        keeper.seal_keys(&typed.word)
    });
    to_record(done.await)
}

fn verdict(visit: &Visit<'_>) -> Markup {
    let (store, log) = visit.snap.record();
    match shop::verify(store, log, None) {
        Ok(found) => html! {
            p class="gap strong" role="status" {
                (say::sound(found.events))
            }
            @for event in &found.unreadable {
                p class="caution" role="alert" {
                    (say::event_unread(event.position, &event.stream, &event.what))
                }
            }
        },
        Err(damage) => html! {
            div class="caution" role="alert" {
                p { (say::not_sound(&damage)) }
                p { (damage.mend()) }
            }
        },
    }
}

fn last_backup(last: Option<&LastBackup>, events: u64, now: Timestamp) -> Markup {
    let Some(last) = last else {
        return html! { p class="caution" { (say::no_backup_is_known()) } };
    };
    let since = events.saturating_sub(last.events);
    html! {
        div class="row" {
            span class="what" { (say::last_backup()) }
            span { (say::since_last_backup(age(last.at, now), since)) }
        }
        p class="soft" { (last.to) }
        @if days(last.at, now) > OLD_DAYS { p class="caution" { (say::older_than_a_week()) } }
    }
}

/// A name as a command line takes it.
fn quoted(name: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || "/._-:\\".contains(c);
    match !name.is_empty() && name.chars().all(plain) {
        true => name.to_owned(),
        false => format!("'{}'", name.replace('\'', "'\\''")),
    }
}

/// Copies the record where it goes by itself each day.
pub async fn back_up(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let keeper = Arc::clone(&state.keeper);
    to_record(decided(&state, &headers, move || keeper.back_up().map(drop)).await)
}

/// Back to the page, by way of the PIN where that is asked again.
fn to_record(done: Result<(), Trouble>) -> Response {
    match done {
        Ok(()) => (StatusCode::SEE_OTHER, [(LOCATION, "/record")]).into_response(),
        Err(trouble) if trouble.kind == TroubleKind::Pin => {
            (StatusCode::SEE_OTHER, [(LOCATION, "/prove?back=/record")]).into_response()
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

/// The whole record as lines of JSON, as they are read.
pub async fn export(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    if let Err(trouble) = decided(&state, &headers, || Ok(())).await {
        return match trouble.kind {
            TroubleKind::Pin => (
                StatusCode::SEE_OTHER,
                [(LOCATION, "/prove?back=/record/export")],
            )
                .into_response(),
            _ => trouble_answer(&trouble),
        };
    }
    const AT_ONCE: usize = 64;
    let (tell, told) = tokio::sync::mpsc::channel::<std::io::Result<String>>(AT_ONCE);
    let service = Arc::clone(&state.service);
    tokio::task::spawn_blocking(move || {
        let (store, log) = service.record();
        let gone = |_| std::io::Error::other("nobody reads it any more");
        let written = shop::export(store, log, |line| {
            tell.blocking_send(Ok(format!("{line}\n"))).map_err(gone)
        });
        if let Err(trouble) = written {
            // Whoever reads it sees it break off, and not end as if it were whole.
            let _ = tell.blocking_send(Err(std::io::Error::other(trouble.what)));
        }
    });
    let name = state
        .service
        .now()
        .strftime("shop-%Y-%m-%d.jsonl")
        .to_string();
    let headers = [
        (CONTENT_TYPE, "application/x-ndjson".to_owned()),
        (
            CONTENT_DISPOSITION,
            format!("attachment; filename=\"{name}\""),
        ),
        (CACHE_CONTROL, "no-store".to_owned()),
    ];
    (headers, Body::from_stream(ReceiverStream::new(told))).into_response()
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

/// What the machine's clock says, and whether the record agrees.
struct Clock {
    rules: Rules,
    doubt: Option<ClockDoubt>,
}

/// What somebody asked to have erased: until it is carried out it can be called off.
fn erasures(asked: &[Asked], clock: &Clock, folder: &str, may: bool) -> Markup {
    if asked.is_empty() {
        return html! {};
    }
    let Clock { rules, doubt } = clock;
    let data = quoted(folder);
    let (now, today) = (rules.now, rules.today());
    let due = asked.iter().filter(|one| one.waiting.is_due(now, today));
    let due = due.count();
    html! {
        h2 { (say::erasures_that_wait()) }
        @for Asked { waiting, called } in asked {
            div class="row" {
                span class="what" {
                    span class="strong line" { (called) }
                    span class="soft line" { (when(waiting, rules)) }
                }
            }
            @if may {
                div class="presses" {
                    (button(Look::Plain, say::call_it_off(), called, &[json!({ "stream": "shop",
                        "shop_fact": { "erasure-called-off": { "asked": waiting.asked.as_str() } } })], None))
                }
            }
        }
        @if let (true, Some(doubt)) = (due > 0, doubt) {
            p class="caution" {
                (say::clock_in_doubt(moment(rules, doubt.now), &doubt.last))
                code { "buttonup erase --due --clock-is-right --data " (data) }
            }
        } @else if due > 0 {
            p class="caution" {
                (say::may_be_erased_now(due))
                code { "buttonup erase --due --data " (data) }
            }
        } @else {
            p class="soft" { (say::erased_on_that_day()) }
        }
    }
}

/// From when on it is carried out.
fn when(waiting: &Waiting, rules: &Rules) -> String {
    let Some(until) = waiting.until else {
        return say::until_vehicle_has_left().to_owned();
    };
    let earliest = waiting.earliest.to_zoned_datetime(rules.zone.clone());
    if until > earliest.date() {
        return say::kept_until(dated("%-d %B %Y", until));
    }
    say::from_then_on(moment(rules, waiting.earliest))
}

fn moment(rules: &Rules, at: Timestamp) -> String {
    let at = at.to_zoned_datetime(rules.zone.clone());
    dated("%-d %B %Y, %H:%M", &at)
}

fn days(at: Timestamp, now: Timestamp) -> i64 {
    (now - at).as_hours() / 24
}

fn age(at: Timestamp, now: Timestamp) -> String {
    match days(at, now) {
        ..1 => say::less_than_a_day().to_owned(),
        days => say::days_ago(days),
    }
}

fn size(bytes: u64) -> String {
    const KIB: u64 = 1024;
    match bytes {
        0..KIB => say::bytes(bytes),
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
            let clock = Clock {
                rules: rules(now),
                doubt: doubt.cloned(),
            };
            erasures(&waiting, &clock, "/srv/my shop", true).into_string()
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
        assert!(after.contains("--data '/srv/my shop'"), "{after}");
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
