//! The few files a page needs, held in the program.

use crate::State;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use axum::routing::get;
use std::hash::{Hash, Hasher};

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

/// A script of the pages, by its name.
macro_rules! script {
    ($name:literal) => {
        (
            concat!("/assets/", $name),
            "text/javascript",
            include_str!(concat!("../assets/", $name)),
        )
    };
}

/// The files that are served as they lie there.
pub const FILES: &[(&str, &str, &str)] = &[
    script!("app.js"),
    script!("anew.js"),
    script!("photo.js"),
    script!("phrases.js"),
    script!("keys.js"),
    script!("clock.js"),
    script!("files.js"),
    script!("map.js"),
    script!("kept.js"),
    script!("sign.js"),
    script!("queue.js"),
    script!("reach.js"),
    script!("rows.js"),
    script!("typing.js"),
    script!("voice.js"),
    (
        "/assets/icon.svg",
        "image/svg+xml",
        include_str!("../assets/icon.svg"),
    ),
];

/// What lets a browser show pages where the network does not reach, told anew with each version
/// of the files: a browser that sees other bytes takes the new ones.
fn service_worker() -> String {
    let mut all = std::hash::DefaultHasher::new();
    style().hash(&mut all);
    for (path, _, text) in FILES {
        (path, text).hash(&mut all);
    }
    let paths: Vec<&str> = FILES.iter().map(|(path, _, _)| *path).collect();
    let list = serde_json::json!([paths, vec!["/assets/app.css"]].concat());
    // It has no page to ask, and runs as one file: the texts stand in it.
    let phrases = include_str!("../assets/phrases.js").replace("export ", "");
    let worker = include_str!("../assets/service-worker.js");
    worker
        .replace("// THE PHRASES", &phrases)
        .replace("\"THE VERSION\"", &format!("\"{:016x}\"", all.finish()))
        .replace("[\"THE FILES\"]", &list.to_string())
}

/// What a phone shows of it among its own programs.
fn manifest() -> String {
    serde_json::json!({
        "name": "buttonup",
        "short_name": "buttonup",
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "orientation": "any",
        "background_color": "#faf8f3",
        "theme_color": "#14171a",
        "icons": [{ "src": "/assets/icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any maskable" }],
    })
    .to_string()
}

pub fn routes() -> Router<State> {
    let style = Router::new().route(
        "/assets/app.css",
        get(|| async { file("text/css", style()) }),
    );
    let style = style
        .route(
            "/service-worker.js",
            get(|| async { file("text/javascript", service_worker()) }),
        )
        .route(
            "/manifest.webmanifest",
            get(|| async { file("application/manifest+json", manifest()) }),
        );
    FILES.iter().fold(style, |routes, (path, media, text)| {
        routes.route(path, get(|| async { file(media, (*text).to_owned()) }))
    })
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
