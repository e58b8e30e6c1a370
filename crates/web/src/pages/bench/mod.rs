//! At the bench: every calculator from its form, with no order and for one.

pub mod answer;
pub mod calc;
pub mod form;
pub mod of_order;

use crate::State;
use axum::Router;
use axum::routing::get;

/// The calculators; threads and coolant answer at the addresses that they always had, too.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/calc", get(calc::all))
        .route("/calc/{room}", get(calc::room))
        .route(
            "/calc/{room}/{calculator}",
            get(calc::page).post(calc::sent),
        )
        .route(
            "/o/{number}/calc/{room}/{calculator}",
            get(of_order::page).post(of_order::sent),
        )
        .route("/threads", get(calc::old_room))
        .route("/threads/{calculator}", get(calc::old_page))
        .route("/coolant", get(calc::old_room))
        .route("/coolant/{calculator}", get(calc::old_page))
        .route("/api/calc", get(calc::described))
        .route(
            "/api/calc/{room}/{calculator}",
            get(calc::asked).post(calc::asked_in_full),
        )
}
