//! Pages, live updates and the JSON door of one shop's program.
//!
//! A page is a typed view and a template. A button carries the command it stands for;
//! a small script fills in what was typed, keeps it on the device and sends it to the
//! JSON door. Nothing here decides anything: it asks `shop`.
//!
//! This room knows nothing of SQL, of hashes, or of how events are stored.

mod again;
mod allowed;
mod assets;
mod bodies;
mod door;
mod entrance;
mod guard;
mod how_to;
mod in_language;
mod layout;
mod live;
mod map_drawing;
mod network;
mod pages;
mod phrases;
mod serve;
mod spoken;
mod tap;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use shop::Service;
use std::sync::Arc;
use std::time::Duration;
use tower_http::compression::CompressionLayer;
use tower_http::timeout::TimeoutLayer;

pub use bodies::Patience;
pub use door::ApiDoc;
pub use how_to::how_to;
pub use live::Live;
pub use network::{Names, Network, Peer};
pub use pages::{Keeper, Kept, Keys, LastBackup};
pub use serve::{Door, Limits, serve, serve_at};

/// What every page and door is given.
#[derive(Clone)]
pub struct State {
    /// The shop's use cases.
    pub service: Arc<Service>,
    /// Who watches for news.
    pub live: Live,
    /// What the program knows of the record beside what stands in it, and copies of it.
    pub keeper: Arc<dyn Keeper>,
    /// How it is reached over the shop's network; nothing where only this machine reaches it.
    /// Then people sign in with PINs.
    pub network: Option<Network>,
}

/// Pages and doors, ready to be served.
pub type Pages = Router;

/// All pages and doors, answering only to the address they are bound to.
pub fn router(state: State, port: u16) -> Router {
    router_with(state, port, Patience::default())
}

/// The same, with as much patience for those who send slowly.
pub fn router_with(state: State, port: u16, patience: Patience) -> Router {
    let doors = Router::new()
        .route("/api/commands", post(door::commands))
        .route("/api/commands/check", post(door::check))
        .route("/api/day", get(door::day))
        .route("/api/orders", get(door::orders))
        .route("/api/openapi.json", get(door::openapi))
        .merge(of_orders(&state))
        .layer(TimeoutLayer::with_status_code(
            axum::http::StatusCode::SERVICE_UNAVAILABLE,
            Duration::from_secs(30),
        ));
    Router::new()
        .merge(pages::routes())
        .merge(doors)
        .layer(CompressionLayer::new())
        .route("/api/live", get(live::live))
        .merge(assets::routes())
        .route_layer(axum::middleware::from_fn_with_state(
            state.clone(),
            allowed::allowed,
        ))
        .route_layer(axum::middleware::from_fn_with_state(
            state.clone(),
            entrance::enter,
        ))
        .fallback(pages::nowhere)
        // One limit, ours: the framework's own for JSON is smaller than a photo.
        .layer(DefaultBodyLimit::disable())
        .layer(axum::middleware::from_fn_with_state(
            bodies::Bodies::new(patience),
            bodies::bodies,
        ))
        .layer(axum::middleware::from_fn(spoken::spoken))
        .layer(axum::middleware::from_fn_with_state(
            guard::Guard {
                port,
                network: state.network.clone(),
            },
            guard::guard,
        ))
        .layer(axum::middleware::from_fn_with_state(
            state.clone(),
            in_language::in_language,
        ))
        .with_state(state)
}

/// What many look at while work goes on: an order's pages and its JSON.
fn of_orders(state: &State) -> Router<State> {
    let kept = (state.clone(), again::Again::default());
    Router::new()
        .merge(pages::of_orders())
        .route("/api/orders/{number}", get(door::order))
        .layer(axum::middleware::from_fn_with_state(kept, again::again))
}
