//! The few files a page needs, held in the program.

use crate::State;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use axum::routing::get;

/// The style sheet: our own, then the inks of drawings.
fn style() -> String {
    format!("{}\n{}", include_str!("../assets/app.css"), drawing::css())
}

pub fn routes() -> Router<State> {
    Router::new()
        .route(
            "/assets/app.css",
            get(|| async { file("text/css", style()) }),
        )
        .route(
            "/assets/app.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/app.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/files.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/files.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/kept.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/kept.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/icon.svg",
            get(|| async {
                file(
                    "image/svg+xml",
                    include_str!("../assets/icon.svg").to_owned(),
                )
            }),
        )
}

fn file(media: &'static str, content: String) -> impl IntoResponse {
    (
        [
            (CONTENT_TYPE, format!("{media}; charset=utf-8")),
            (CACHE_CONTROL, "no-cache".to_owned()),
        ],
        content,
    )
}
