//! The shop's maps: looked at, written and mended.

mod edit;
pub mod list;

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
        .route("/maps/check", post(edit::check))
        .route("/maps/{map}/edit", get(edit::edit).post(edit::change))
        .route("/maps/{map}/file", get(edit::file))
}
