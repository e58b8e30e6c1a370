//! What finished work teaches: kinds of vehicles, their steps and questions, their maps.

mod history;
mod kind;
mod kinds;
mod renew;

use crate::State;
use axum::Router;
use axum::routing::get;

/// The pages of what work has taught.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/kinds", get(kinds::kinds))
        .route("/kinds/{kind}", get(kind::kind))
        .route("/kinds/{kind}/map", get(renew::renew))
        .route("/kinds/{kind}/history", get(history::of_kind))
        .route("/history", get(history::of_shop))
}
