//! What finished work teaches: kinds of vehicles, their steps and questions, their maps.

mod before;
mod history;
mod how_to;
mod kind;
mod kinds;
mod renew;
mod skills;

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
        .route("/o/{number}/how-to", get(how_to::page))
        .route("/o/{number}/before", get(before::page))
        .route("/skills", get(skills::page))
        .route("/history", get(history::of_shop))
}
