//! The shop itself: its people and settings, its own words, its record.

mod hours;
mod letterhead;
mod prices;
mod read_in;
pub mod record;
mod setup;
mod stall;
mod words;

pub use letterhead::address_fields;
pub use setup::{of_shop, seen};
pub use stall::{not_read, units};

use crate::State;
use axum::Router;
use axum::routing::{get, post};

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
        .route("/record/backup", post(record::back_up))
        .route("/record/keys", post(record::seal))
        .route("/record/export", get(record::export))
        .route("/shop/read-in", get(read_in::page).post(read_in::looked_at))
        .route("/shop/read-in/done", post(read_in::done))
}
