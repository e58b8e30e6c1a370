//! The shop itself: its people and settings, its own words, its record.

mod hours;
mod letterhead;
mod prices;
pub mod record;
mod setup;
mod words;

use crate::State;
use axum::Router;
use axum::routing::get;

/// The pages of the shop itself.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/who", get(setup::who))
        .route("/who/{person}", get(setup::is))
        .route("/setup", get(setup::setup))
        .route("/shop", get(setup::shop))
        .route("/shop/prices", get(prices::prices))
        .route("/shop/letterhead", get(letterhead::page))
        .route("/record", get(record::record))
        .route("/record/verify", get(record::record).post(record::verify))
}
