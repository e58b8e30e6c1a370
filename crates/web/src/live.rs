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
    position: watch::Sender<u64>,
}

impl Default for Live {
    fn default() -> Self {
        Self {
            position: watch::Sender::new(0),
        }
    }
}

impl Live {
    /// The log has grown to this position.
    pub fn grown(&self, position: u64) {
        self.position.send_if_modified(|known| {
            let newer = position > *known;
            *known = position.max(*known);
            newer
        });
    }
}

/// The door pages listen at.
pub async fn live(
    extract::State(state): extract::State<State>,
) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let news = WatchStream::new(state.live.position.subscribe())
        .map(|position| Ok(Event::default().data(position.to_string())));
    Sse::new(news).keep_alive(KeepAlive::new().interval(Duration::from_secs(15)))
}
