//! People and devices where the program is reached over the shop's network: letting a device
//! in, signing in with a PIN, and the owner's page of both.

mod devices;
mod join;
mod language;
pub mod sign_in;

use crate::State;
use crate::door::blocking;
use crate::pages::cookie;
use axum::Router;
use axum::http::HeaderMap;
use axum::routing::{get, post};
use shop::Trouble;
use std::sync::Arc;

/// The pages of people and devices.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/join", get(join::by_hand).post(join::join))
        .route("/join/{code}", get(join::by_code))
        .route(
            "/sign-in/{person}",
            get(sign_in::ask).post(sign_in::sign_in),
        )
        .route("/sign-out", post(sign_in::sign_out))
        .route("/prove", get(sign_in::ask_again).post(sign_in::proved))
        .route("/pin", get(sign_in::change).post(sign_in::changed))
        .route("/api/pin", post(sign_in::prove))
        .route("/api/pin/beside", post(sign_in::beside))
        .route("/language", get(language::page))
        .route("/devices", get(devices::devices))
        .route("/devices/opened", get(devices::opened))
        .route("/devices/invite", post(devices::invite))
        .route("/devices/change", post(devices::change))
}

/// Does what is decided with the PIN, where people sign in.
pub async fn decided(
    state: &State,
    headers: &HeaderMap,
    act: impl FnOnce() -> Result<(), Trouble> + Send + 'static,
) -> Result<(), Trouble> {
    let service = Arc::clone(&state.service);
    let signs_in = state.network.is_some();
    let own = (cookie(headers, "device-id"), cookie(headers, "sign-in"));
    blocking(move || {
        let signed = match own {
            (Some(device), Some(sign_in)) if signs_in => Some((device, sign_in)),
            _ => None,
        };
        if let Some((device, sign_in)) = &signed {
            service.access().check_fresh(device, sign_in)?;
        }
        act()?;
        match &signed {
            Some((_, sign_in)) => service.access().proved(sign_in),
            None => Ok(()),
        }
    })
    .await
}
