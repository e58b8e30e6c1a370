//! The page in plain HTTP that says how a device comes to trust the shop's own certificate. It
//! is all that is answered in the open, and it shows nothing of the shop.

use crate::network::Network;
use axum::Router;
use axum::extract::State;
use axum::http::header::{
    CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_SECURITY_POLICY, CONTENT_TYPE,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{DOCTYPE, Markup, html};
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
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "Join the shop · buttonup" }
                link rel="stylesheet" href="/app.css";
                script type="module" src="/join.js" {}
            }
            body {
                main class="alone" {
                    h1 { "Join the shop" }
                    @if installs {
                        p class="gap" { "What this device and the shop's computer send each other is encrypted, with a certificate of the shop's own. Install it once on this device. Without it everything works after a warning of the browser, but no page opens where the Wi-Fi does not reach." }
                        h2 { "1. Install the certificate" }
                        div class="presses" { a class="press" href="/authority.crt" { "Load the certificate" } }
                        (steps())
                        p class="soft gap" { "It counts for addresses inside the shop's network alone." }
                        h2 { "2. Join" }
                    }
                    div class="presses" { a class="press confirm" href=(format!("https://{host}/join")) data-join=(format!("https://{host}/join/")) { "Join the shop" } }
                    p class="soft gap" { "Nothing of the shop is shown on this page, and nothing is typed on it." }
                }
            }
        }
    }
}

/// A device, and what to do on it.
const STEPS: &[(&str, &[&str])] = &[
    (
        "Android",
        &[
            "Press \u{201c}Load the certificate\u{201d} and keep the file.",
            "Open Settings, Security, More security settings, Encryption and credentials, Install a certificate, CA certificate. On some phones it is found by searching Settings for \u{201c}certificate\u{201d}.",
            "Read the warning, press \u{201c}Install anyway\u{201d}, and pick buttonup-shop.crt.",
        ],
    ),
    (
        "iPhone and iPad",
        &[
            "Open this page in Safari, press \u{201c}Load the certificate\u{201d} and allow the profile.",
            "Open Settings, General, VPN and device management, and install the profile.",
            "Then Settings, General, About, Certificate trust settings: switch it on for this shop.",
        ],
    ),
    (
        "Windows",
        &[
            "Open the file that was loaded and press Install certificate.",
            "Choose Local machine, then \u{201c}Place all certificates in the following store\u{201d}: Trusted root certification authorities.",
        ],
    ),
    (
        "macOS",
        &[
            "Open the file that was loaded: Keychain Access adds it.",
            "Open it there, and under Trust choose Always trust.",
        ],
    ),
    (
        "Linux",
        &[
            "In Chromium: Settings, Privacy and security, Security, Manage certificates, Authorities, Import; trust it for websites.",
            "In Firefox: Settings, Privacy and security, View certificates, Authorities, Import.",
        ],
    ),
];

fn steps() -> Markup {
    html! {
        @for (device, steps) in STEPS {
            details {
                summary class="row" { span class="what strong" { (device) } }
                ol { @for step in *steps { li class="gap" { (step) } } }
            }
        }
    }
}
