//! What is sent to the program is read here, before any page or door sees it: within limits of
//! size and time, and never more of it at once than there is room for. Who has to wait for room
//! is not read until there is some, so a hundred large commands take no more than a few.

use crate::door::answer;
use crate::phrases::frame as say;
use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{self, Request};
use axum::http::StatusCode;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use futures_util::StreamExt;
use shop::{Trouble, TroubleKind};
use std::sync::Arc;
use std::time::Duration;
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::{Instant, timeout, timeout_at};

/// The largest command: a photo as a phone makes it smaller, in base64.
pub const LARGEST: usize = 6 * 1024 * 1024;

/// Room for what is being read and taken in: four of the largest. Each takes some four times
/// its size until it is written down.
const ROOM: usize = 4 * LARGEST;

/// Room is counted in pieces of so many bytes.
const PIECE: usize = 1024;

/// What one program on a port has room and patience for.
#[derive(Debug, Clone)]
pub struct Bodies {
    room: Arc<Semaphore>,
    patience: Patience,
}

/// How long is waited for a body.
#[derive(Debug, Clone, Copy)]
pub struct Patience {
    /// How long the next piece of it may take.
    pub piece: Duration,
    /// How long all of it may take.
    pub whole: Duration,
    /// How long it may wait for room.
    pub room: Duration,
}

impl Default for Patience {
    fn default() -> Self {
        Self {
            piece: Duration::from_secs(10),
            whole: Duration::from_secs(120),
            room: Duration::from_secs(20),
        }
    }
}

impl Bodies {
    pub fn new(patience: Patience) -> Self {
        Self {
            room: Arc::new(Semaphore::new(ROOM / PIECE)),
            patience,
        }
    }
}

/// Reads what a request brings with it, and hands it on whole.
pub async fn bodies(
    extract::State(bodies): extract::State<Bodies>,
    request: Request<Body>,
    next: Next,
) -> Response {
    if request.body().is_end_stream() {
        return next.run(request).await;
    }
    let (head, body) = request.into_parts();
    // A size that is not told may be the largest.
    let size = body.size_hint().exact();
    let size = size.map_or(LARGEST, |size| usize::try_from(size).unwrap_or(usize::MAX));
    if size > LARGEST {
        return StatusCode::PAYLOAD_TOO_LARGE.into_response();
    }
    let Some(_room) = bodies.room(size).await else {
        return answer(&not_now(say::too_much_at_once()));
    };
    match whole(body, bodies.patience).await {
        Ok(content) => next.run(Request::from_parts(head, content.into())).await,
        Err(Broken::TooLarge) => StatusCode::PAYLOAD_TOO_LARGE.into_response(),
        Err(Broken::TooSlow) => answer(&not_now(say::did_not_arrive_in_time())),
        Err(Broken::Off) => answer(&not_now(say::broke_off())),
    }
}

/// A device keeps what it sent, and sends it again.
fn not_now(what: &str) -> Trouble {
    Trouble::new(
        TroubleKind::Away,
        say::the_request(),
        what,
        say::send_again(),
    )
}

impl Bodies {
    async fn room(&self, size: usize) -> Option<OwnedSemaphorePermit> {
        let pieces = u32::try_from(size.div_ceil(PIECE).max(1)).ok()?;
        let room = Arc::clone(&self.room).acquire_many_owned(pieces);
        timeout(self.patience.room, room).await.ok()?.ok()
    }
}

enum Broken {
    TooLarge,
    TooSlow,
    Off,
}

async fn whole(body: Body, patience: Patience) -> Result<Bytes, Broken> {
    let end = Instant::now() + patience.whole;
    let mut pieces = body.into_data_stream();
    let mut content = Vec::new();
    loop {
        let by = end.min(Instant::now() + patience.piece);
        let next = timeout_at(by, pieces.next()).await;
        match next.map_err(|_| Broken::TooSlow)? {
            None => return Ok(content.into()),
            Some(Err(_)) => return Err(Broken::Off),
            Some(Ok(piece)) => {
                if content.len() + piece.len() > LARGEST {
                    return Err(Broken::TooLarge);
                }
                content.extend_from_slice(&piece);
            }
        }
    }
}
