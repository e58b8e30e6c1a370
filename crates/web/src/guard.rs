//! Who may talk to this program: only pages it served itself, on this machine.

use axum::body::Body;
use axum::extract::Request;
use axum::http::header::{
    CONTENT_SECURITY_POLICY, HOST, HeaderName, HeaderValue, ORIGIN, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Lets a request through if it is addressed to this machine and comes from our own
/// pages or from no page at all.
pub async fn guard(port: u16, request: Request<Body>, next: Next) -> Response {
    if let Err(what) = check(port, request.headers()) {
        return (
            StatusCode::FORBIDDEN,
            axum::Json(serde_json::json!({
                "kind": "refused",
                "where": "the request",
                "what": what,
                "mend": format!("open http://127.0.0.1:{port} in a browser on this machine"),
            })),
        )
            .into_response();
    }
    let mut answer = next.run(request).await;
    let headers = answer.headers_mut();
    headers.insert(CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY));
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(REFERRER_POLICY, HeaderValue::from_static("same-origin"));
    answer
}

fn check(port: u16, headers: &HeaderMap) -> Result<(), String> {
    let own = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
    let text = |name: &HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or(""));
    match text(&HOST) {
        Some(host) if own.iter().any(|own| own == host) => {}
        host => {
            return Err(format!(
                "it is addressed to {:?}, which is not here",
                host.unwrap_or("")
            ));
        }
    }
    if let Some(origin) = text(&ORIGIN)
        && !own.iter().any(|own| origin == format!("http://{own}"))
    {
        return Err(format!("it comes from a page of {origin}"));
    }
    match text(&HeaderName::from_static("sec-fetch-site")) {
        None | Some("same-origin" | "none") => Ok(()),
        Some(other) => Err(format!("it comes from a page of another place ({other})")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asks(headers: &[(&'static str, &'static str)]) -> bool {
        let headers = headers
            .iter()
            .map(|(name, value)| {
                (
                    HeaderName::from_static(name),
                    HeaderValue::from_static(value),
                )
            })
            .collect();
        check(8080, &headers).is_ok()
    }

    #[test]
    fn only_our_own_pages_on_this_machine() {
        let host = ("host", "127.0.0.1:8080");
        assert!(asks(&[host]));
        assert!(asks(&[("host", "localhost:8080")]));
        assert!(asks(&[
            host,
            ("origin", "http://127.0.0.1:8080"),
            ("sec-fetch-site", "same-origin")
        ]));
        assert!(asks(&[host, ("sec-fetch-site", "none")]));
        assert!(!asks(&[]), "no host");
        assert!(
            !asks(&[("host", "evil.example:8080")]),
            "a name that was made to point here"
        );
        assert!(!asks(&[("host", "127.0.0.1:9090")]));
        assert!(!asks(&[host, ("origin", "http://evil.example")]));
        assert!(!asks(&[host, ("origin", "null")]));
        assert!(!asks(&[host, ("sec-fetch-site", "cross-site")]));
        assert!(!asks(&[host, ("sec-fetch-site", "same-site")]));
    }
}
