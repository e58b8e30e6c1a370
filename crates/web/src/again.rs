//! Pages that many look at are made once: whoever looks at the same, as the same person, is
//! shown what was made for another, as long as nothing was written down since.
//!
//! While such a page is made, the others wait for it and no second one is begun. What is made
//! shows at least what stood in the record when it was begun; so whoever asked before that gets
//! it as well, and under many writers a page is made as often as it can be, not as often as it
//! is asked for.

use crate::State;
use crate::door::{answer, blocking};
use crate::pages::{cookie, trouble_answer};
use axum::body::{Body, Bytes, HttpBody, to_bytes};
use axum::extract::{self, Request};
use axum::http::header::CONTENT_TYPE;
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use shop::{Service, Trouble};
use std::collections::HashMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;
use tokio::sync::Mutex as Turn;

/// How many bytes are kept: some hundred pages of open orders.
const MOST_BYTES: u64 = 8 * 1024 * 1024;

/// A page larger than this is made for each who asks, and sent as it is made.
const LARGEST: u64 = 1024 * 1024;

/// What a slot takes beside its page.
const BESIDE: u64 = 512;

/// What was made, and for whom.
#[derive(Clone, Default)]
pub struct Again(Arc<Mutex<Slots>>);

#[derive(Default)]
struct Slots {
    slots: HashMap<Asked, Held>,
    bytes: u64,
    /// Counts who asked: what was asked for last stays longest.
    asked: u64,
    /// How often words were erased when these pages were made.
    forgotten: u64,
}

/// An address as one person sees it.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Asked {
    address: String,
    who: Option<String>,
}

struct Held {
    slot: Arc<Slot>,
    bytes: u64,
    asked: u64,
}

type Slot = Turn<Option<Page>>;

#[derive(Clone)]
struct Page {
    /// When it was begun.
    begun: Instant,
    as_of: AsOf,
    status: StatusCode,
    media: HeaderValue,
    content: Bytes,
}

/// What a page can follow from: the whole record up to a position, and the minute.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct AsOf {
    position: u64,
    minute: i64,
    forgotten: u64,
}

impl AsOf {
    fn now(service: &Service) -> Result<Self, Trouble> {
        let (store, log) = service.record();
        Ok(Self {
            position: store.head(log)?.position,
            minute: service.now().as_second().div_euclid(60),
            forgotten: service.texts().forgotten(),
        })
    }

    /// Whether what is as of this is good enough for who asked then. A minute may have begun
    /// while they waited; a clock that was put back makes everything anew.
    fn serves(self, asked: Self) -> bool {
        self.position >= asked.position
            && self.forgotten == asked.forgotten
            && matches!(self.minute - asked.minute, 0 | 1)
    }
}

/// Shows what was made for another if it still holds, else makes it for all who wait.
pub async fn again(
    extract::State((state, again)): extract::State<(State, Again)>,
    request: Request<Body>,
    next: Next,
) -> Response {
    if request.method() != Method::GET {
        return next.run(request).await;
    }
    let asked_at = Instant::now();
    let asked_as_of = match as_of(&state).await {
        Ok(as_of) => as_of,
        // Waiting for the page to find out as well would take twice as long.
        Err(trouble) => return trouble_at(request.uri().path(), &trouble),
    };
    let asked = Asked {
        address: request.uri().to_string(),
        who: cookie(request.headers(), "who"),
    };
    let slot = again.slots().slot(&asked, asked_as_of.forgotten);
    let mut held = slot.lock().await;
    let good = |page: &&Page| page.serves(asked_at, asked_as_of);
    if let Some(page) = held.as_ref().filter(good) {
        return page.answer();
    }
    let begun = Instant::now();
    let (as_of, response) = match as_of(&state).await {
        Ok(as_of) => (as_of, next.run(request).await),
        Err(trouble) => (asked_as_of, trouble_at(request.uri().path(), &trouble)),
    };
    match kept(response, begun, as_of).await {
        Ok(page) => {
            let answer = page.answer();
            again.slots().weigh(&asked, &slot, page.bytes());
            *held = Some(page);
            answer
        }
        Err(response) => {
            *held = None;
            again.slots().weigh(&asked, &slot, 0);
            *response
        }
    }
}

async fn as_of(state: &State) -> Result<AsOf, Trouble> {
    let service = Arc::clone(&state.service);
    blocking(move || AsOf::now(&service)).await
}

fn trouble_at(path: &str, trouble: &Trouble) -> Response {
    if path.starts_with("/api/") {
        answer(trouble)
    } else {
        trouble_answer(trouble)
    }
}

/// The page in an answer, if it is one to keep: whole, and not too large. A fault is kept for
/// those who waited: each finding it out for themselves would wait for all before them.
async fn kept(response: Response, begun: Instant, as_of: AsOf) -> Result<Page, Box<Response>> {
    let status = response.status();
    let small = response.body().size_hint().exact();
    let small = small.is_some_and(|bytes| bytes <= LARGEST);
    let media = response.headers().get(CONTENT_TYPE).cloned();
    let one_to_keep = small && (status == StatusCode::OK || status.is_server_error());
    let (true, Some(media)) = (one_to_keep, media) else {
        return Err(Box::new(response));
    };
    // A body of known size is there as a whole: nothing is waited for.
    match to_bytes(response.into_body(), usize::MAX).await {
        Ok(content) => Ok(Page {
            begun,
            as_of,
            status,
            media,
            content,
        }),
        Err(_) => Err(Box::new(StatusCode::INTERNAL_SERVER_ERROR.into_response())),
    }
}

impl Page {
    /// Whether it is good enough for who asked then.
    fn serves(&self, asked_at: Instant, asked: AsOf) -> bool {
        self.begun >= asked_at || self.status == StatusCode::OK && self.as_of.serves(asked)
    }

    fn answer(&self) -> Response {
        let media = [(CONTENT_TYPE, self.media.clone())];
        (self.status, media, self.content.clone()).into_response()
    }

    fn bytes(&self) -> u64 {
        self.content.len() as u64
    }
}

impl Again {
    fn slots(&self) -> MutexGuard<'_, Slots> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Slots {
    /// The slot of what is asked for. Once words were erased, no page that may show them stays.
    fn slot(&mut self, asked: &Asked, forgotten: u64) -> Arc<Slot> {
        if self.forgotten != forgotten {
            self.slots.clear();
            self.bytes = 0;
            self.forgotten = forgotten;
        }
        self.asked += 1;
        let now = self.asked;
        if let Some(held) = self.slots.get_mut(asked) {
            held.asked = now;
            return Arc::clone(&held.slot);
        }
        let held = Held {
            slot: Arc::default(),
            bytes: 0,
            asked: now,
        };
        let slot = Arc::clone(&held.slot);
        self.bytes += held.takes(asked);
        self.slots.insert(asked.clone(), held);
        self.let_go();
        slot
    }

    /// Notes how large a slot's page is now.
    fn weigh(&mut self, asked: &Asked, slot: &Arc<Slot>, bytes: u64) {
        let held = self.slots.get_mut(asked);
        // It may have been let go of meanwhile, and another begun in its place.
        let Some(held) = held.filter(|held| Arc::ptr_eq(&held.slot, slot)) else {
            return;
        };
        let before = std::mem::replace(&mut held.bytes, bytes);
        self.bytes = self.bytes + bytes - before;
        self.let_go();
    }

    /// Keeps what was asked for last, within the half of what may be kept.
    fn let_go(&mut self) {
        if self.bytes <= MOST_BYTES {
            return;
        }
        let mut by_age: Vec<(u64, Asked)> = self
            .slots
            .iter()
            .map(|(asked, held)| (held.asked, asked.clone()))
            .collect();
        by_age.sort_by_key(|(age, _)| *age);
        for (_, asked) in by_age {
            if self.bytes <= MOST_BYTES / 2 {
                return;
            }
            if let Some(held) = self.slots.remove(&asked) {
                self.bytes -= held.takes(&asked);
            }
        }
    }
}

impl Held {
    fn takes(&self, asked: &Asked) -> u64 {
        self.bytes + asked.address.len() as u64 + BESIDE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(nth: usize) -> Asked {
        Asked {
            address: format!("/o/{nth}"),
            who: Some("ana".to_owned()),
        }
    }

    #[test]
    fn what_is_kept_has_a_bound_and_what_is_looked_at_stays() {
        let mut slots = Slots::default();
        let first = slots.slot(&asked(0), 0);
        for nth in 0..1_000 {
            let slot = slots.slot(&asked(nth), 0);
            slots.weigh(&asked(nth), &slot, 40_000);
            assert!(
                Arc::ptr_eq(&first, &slots.slot(&asked(0), 0)),
                "after {nth} others"
            );
            assert!(slots.bytes <= MOST_BYTES);
        }
        let all = slots.slots.iter().map(|(asked, held)| held.takes(asked));
        assert_eq!(all.sum::<u64>(), slots.bytes);
        assert!(slots.slots.contains_key(&asked(999)));
        assert!(!slots.slots.contains_key(&asked(1)));
    }

    #[test]
    fn nothing_stays_once_words_were_erased() {
        let mut slots = Slots::default();
        let slot = slots.slot(&asked(1), 0);
        slots.weigh(&asked(1), &slot, 40_000);
        let after = slots.slot(&asked(2), 1);
        assert!(!slots.slots.contains_key(&asked(1)));
        assert!(!Arc::ptr_eq(&slot, &after));
        // What was made meanwhile for a slot that is gone weighs nothing.
        slots.weigh(&asked(1), &slot, 40_000);
        assert_eq!(slots.bytes, slots.slots[&asked(2)].takes(&asked(2)));
    }

    #[test]
    fn what_was_begun_after_somebody_asked_serves_them() {
        let at = |position, minute, forgotten| AsOf {
            position,
            minute,
            forgotten,
        };
        assert!(at(7, 3, 0).serves(at(7, 3, 0)));
        assert!(at(8, 4, 0).serves(at(7, 3, 0)), "made later");
        assert!(!at(6, 3, 0).serves(at(7, 3, 0)), "news since");
        assert!(!at(7, 3, 0).serves(at(7, 4, 0)), "a minute passed");
        assert!(!at(7, 9, 0).serves(at(7, 3, 0)), "the clock was put back");
        assert!(!at(8, 3, 0).serves(at(8, 3, 1)), "words were erased");
    }
}
