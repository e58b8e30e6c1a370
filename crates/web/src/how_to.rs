//! The page in plain HTTP that says how a device comes to trust the shop's own certificate. It
//! is all that is answered in the open, and it shows nothing of the shop.

use crate::network::Network;
use crate::phrases::frame as say;
use axum::Router;
use axum::extract::State;
use axum::http::header::{
    CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_SECURITY_POLICY, CONTENT_TYPE,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{DOCTYPE, Markup, html};
use phrases::spoken;
use std::sync::Arc;

/// What it hands out.
#[derive(Clone)]
struct Certificate {
    network: Network,
    /// The authority's certificate; nothing where the shop has one that devices trust already.
    authority: Option<Arc<[u8]>>,
}

const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// The page, its files, and the certificate to install.
pub fn how_to(network: Network, authority: Option<Vec<u8>>) -> Router {
    let certificate = Certificate {
        network,
        authority: authority.map(Arc::from),
    };
    Router::new()
        .route("/authority.crt", get(authority_file))
        .route("/join.js", get(|| async { script() }))
        .route("/app.css", get(|| async { style() }))
        .fallback(page)
        .with_state(certificate)
        .layer(axum::middleware::map_response(headed))
}

async fn headed(mut answer: Response) -> Response {
    let headers = answer.headers_mut();
    let fixed = axum::http::HeaderValue::from_static;
    headers.insert(CONTENT_SECURITY_POLICY, fixed(POLICY));
    headers.insert(X_CONTENT_TYPE_OPTIONS, fixed("nosniff"));
    headers.insert(CACHE_CONTROL, fixed("no-store"));
    answer
}

async fn authority_file(State(certificate): State<Certificate>) -> Response {
    let Some(bytes) = &certificate.authority else {
        return axum::http::StatusCode::NOT_FOUND.into_response();
    };
    let name = "attachment; filename=\"buttonup-shop.crt\"";
    let headers = [
        (CONTENT_TYPE, "application/x-x509-ca-cert"),
        (CONTENT_DISPOSITION, name),
    ];
    (headers, bytes.to_vec()).into_response()
}

fn script() -> impl IntoResponse {
    (
        [(CONTENT_TYPE, "text/javascript; charset=utf-8")],
        include_str!("../assets/join.js"),
    )
}

fn style() -> impl IntoResponse {
    (
        [(CONTENT_TYPE, "text/css; charset=utf-8")],
        include_str!("../assets/app.css"),
    )
}

async fn page(State(certificate): State<Certificate>) -> Markup {
    let names = certificate.network.names();
    let host = names.hosts.first().cloned().unwrap_or_default();
    let installs = certificate.authority.is_some();
    html! {
        (DOCTYPE)
        html lang=(spoken().tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (say::join_the_shop()) " · buttonup" }
                link rel="stylesheet" href="/app.css";
                script type="module" src="/join.js" {}
            }
            body {
                main class="alone" {
                    h1 { (say::join_the_shop()) }
                    @if installs {
                        p class="gap" { (say::why_a_certificate()) }
                        h2 { (say::install_the_certificate()) }
                        div class="presses" { a class="press" href="/authority.crt" { (say::load_the_certificate()) } }
                        (steps())
                        p class="soft gap" { (say::counts_inside_alone()) }
                        h2 { (say::then_join()) }
                    }
                    div class="presses" { a class="press confirm" href=(format!("https://{host}/join")) data-join=(format!("https://{host}/join/")) { (say::join_the_shop()) } }
                    p class="soft gap" { (say::nothing_shown_here()) }
                }
            }
        }
    }
}

type Said = fn() -> &'static str;

/// A device, and what to do on it.
const STEPS: &[(Said, &[Said])] = &[
    (
        say::on_android,
        &[
            say::android_load,
            say::android_settings,
            say::android_install,
        ],
    ),
    (
        say::on_iphone,
        &[say::iphone_load, say::iphone_settings, say::iphone_trust],
    ),
    (say::on_windows, &[say::windows_open, say::windows_store]),
    (say::on_macos, &[say::macos_open, say::macos_trust]),
    (say::on_linux, &[say::linux_chromium, say::linux_firefox]),
];

fn steps() -> Markup {
    html! {
        @for (device, steps) in STEPS {
            details {
                summary class="row" { span class="what strong" { (device()) } }
                ol { @for step in *steps { li class="gap" { (step()) } } }
            }
        }
    }
}
