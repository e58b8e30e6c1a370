//! At the vehicle: what comes off and goes back, what is owed, what the vehicle may do.

mod back;
pub mod choices;
mod coolant;
pub mod due;
pub mod fastener_facts;
pub mod gates;
mod immobile;
mod item;
mod item_told;
mod joint;
mod measures;
mod off;
pub mod open;
pub mod pieces;
pub mod plan;
mod put_ins;
pub mod reach;
mod second;
mod snag;
pub mod snag_found;
mod stage;
mod stage_rows;
mod stage_snag;
mod tighten;
mod tray_count;
pub mod walk;

use crate::State;
use axum::Router;
use axum::routing::get;

/// The pages at the vehicle that depend on more than the record of its order.
pub fn routes() -> Router<State> {
    Router::new()
        .route(
            "/o/{number}/tray/count",
            get(tray_count::page).post(tray_count::sent),
        )
        .route("/api/reach", get(reach::in_work))
        .route("/api/orders/{number}/reach", get(reach::bundle))
        .route("/tray-sheet/{paper}", get(tray_count::sheet_file))
        .route("/o/{number}/plan", get(plan::plan))
        .route("/o/{number}/state", get(plan::state))
        .route("/o/{number}/way", get(plan::drawing::way))
        .route("/o/{number}/two", get(plan::two::two))
        .route("/o/{number}/plan/price", get(plan::price::price))
}

/// The pages at the vehicle that follow from the record of its order alone, and from who looks.
pub fn of_orders() -> Router<State> {
    Router::new()
        .route("/o/{number}/walk", get(walk::walk))
        .route("/o/{number}/off", get(off::off))
        .route("/o/{number}/back", get(back::back))
        .route("/o/{number}/open", get(open::open))
        .route("/o/{number}/tray", get(open::tray))
        .route("/o/{number}/item/{item}", get(item::item))
        .route("/o/{number}/snag", get(item::snag))
        .route("/o/{number}/snag/{snag}", get(snag::snag))
        .route("/o/{number}/due", get(due::due))
        .route("/o/{number}/measures", get(measures::page))
        .route("/o/{number}/second", get(second::second))
        .route("/o/{number}/may", get(gates::may))
        .route("/o/{number}/may/{gate}", get(gates::gate))
        .route("/o/{number}/stage", get(stage::stage))
        .route("/o/{number}/item/{item}/{step}", get(coolant::step))
}
