//! News: the position of the log, told to every open page when it grows.

use crate::State;
use axum::extract;
use axum::response::sse::{Event, KeepAlive, Sse};
use futures_util::Stream;
use std::convert::Infallible;
use std::time::Duration;
use tokio::sync::watch;
use tokio_stream::StreamExt;
use tokio_stream::wrappers::WatchStream;

/// Tells whoever watches where the log stands.
#[derive(Debug, Clone)]
pub struct Live {
    /// `None` once the program ends.
    position: watch::Sender<Option<u64>>,
}

impl Default for Live {
    fn default() -> Self {
        Self {
            position: watch::Sender::new(Some(0)),
        }
    }
}

impl Live {
    /// The log has grown to this position.
    pub fn grown(&self, position: u64) {
        self.position.send_if_modified(|known| match known {
            Some(known) if position > *known => {
                *known = position;
                true
            }
            _ => false,
        });
    }

    /// The program ends: no page is told anything any more, and none keeps it from ending.
    pub fn close(&self) {
        self.position.send_replace(None);
    }
}

/// The door pages listen at: where the log stands, and each time it has grown, without an end.
#[utoipa::path(
    get,
    path = "/api/live",
    responses((status = 200, description = "positions, as events", body = String, content_type = "text/event-stream"))
)]
pub async fn live(
    extract::State(state): extract::State<State>,
) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let news = WatchStream::new(state.live.position.subscribe())
        .map_while(|position| Some(Ok(Event::default().data(position?.to_string()))));
    Sse::new(news).keep_alive(KeepAlive::new().interval(Duration::from_secs(15)))
}
