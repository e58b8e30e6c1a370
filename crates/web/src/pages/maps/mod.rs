//! The shop's maps: looked at, written and mended.

mod edit;
pub mod list;
mod send;
mod versions;

use crate::State;
use axum::Router;
use axum::routing::{get, post};

/// The pages of the maps.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/maps", get(list::maps))
        .route("/maps/{map}", get(list::map))
        .route("/maps/new", get(edit::new))
        .route("/maps/start", get(edit::start))
        .route("/maps/read-in", get(send::read_in).post(send::looked_at))
        .route("/maps/{map}/versions", get(versions::versions))
        .route("/maps/{map}/send", get(send::send))
        .route("/maps/{map}/sent-file", get(send::file))
        .route("/maps/check", post(edit::check))
        .route("/maps/{map}/edit", get(edit::edit).post(edit::change))
        .route("/maps/{map}/file", get(edit::file))
}
