//! The few files a page needs, held in the program.

use crate::State;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use axum::routing::get;

/// The style sheet: our own, then the inks of drawings.
fn style() -> String {
    format!(
        "{}\n{}\n{}",
        include_str!("../assets/app.css"),
        places(),
        drawing::css()
    )
}

/// Places in a picture that is tapped. A page may carry no styles of its own, so each place is
/// a class: so many steps from the left, from the top, so many high.
fn places() -> String {
    (0..=crate::pages::GRID_STEPS)
        .map(|steps| {
            let px = steps * crate::pages::GRID_PX;
            let wide = if steps <= 90 {
                format!(".x{steps}{{left:{px}px}}")
            } else {
                String::new()
            };
            format!("{wide}.y{steps}{{top:{px}px}}.h{steps}{{height:{px}px}}\n")
        })
        .collect()
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
            "/assets/anew.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/anew.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/photo.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/photo.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/keys.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/keys.js").to_owned(),
                )
            }),
        )
        .route(
            "/assets/clock.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/clock.js").to_owned(),
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
            "/assets/map.js",
            get(|| async {
                file(
                    "text/javascript",
                    include_str!("../assets/map.js").to_owned(),
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
