//! Who may talk to this program: only pages it served itself, at an address of its own.

use crate::network::Network;
use crate::phrases::frame as say;
use axum::body::Body;
use axum::extract::{self, Request};
use axum::http::header::{
    CONTENT_SECURITY_POLICY, HOST, HeaderName, HeaderValue, ORIGIN, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; media-src 'self' blob:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Which addresses are ours.
#[derive(Clone)]
pub struct Guard {
    /// The port on this machine.
    pub port: u16,
    /// The names on the shop's network, if it is served there.
    pub network: Option<Network>,
}

/// Lets a request through if it is addressed to us and comes from our own pages or from no
/// page at all.
pub async fn guard(
    extract::State(guard): extract::State<Guard>,
    request: Request<Body>,
    next: Next,
) -> Response {
    let host = host_of(&request);
    if let Err(what) = guard.check(host.as_deref(), request.headers()) {
        let ours = guard
            .network
            .as_ref()
            .and_then(|network| network.names().hosts.into_iter().next());
        let mend = match ours {
            Some(host) => say::open_there(host),
            None => say::open_on_this_machine(guard.port),
        };
        return (
            StatusCode::FORBIDDEN,
            axum::Json(serde_json::json!({
                "kind": "refused",
                "where": say::the_request(),
                "what": what,
                "mend": mend,
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

/// Whom a request is addressed to: the header, or where HTTP/2 has it.
fn host_of(request: &Request<Body>) -> Option<String> {
    let named = |host: &HeaderValue| host.to_str().unwrap_or("").to_owned();
    let header = request.headers().get(HOST).map(named);
    let authority = request.uri().authority().map(ToString::to_string);
    match (header, authority) {
        // Two that differ are a trick, not a browser.
        (Some(header), Some(authority)) if header != authority => Some(String::new()),
        (header, authority) => authority.or(header),
    }
}

impl Guard {
    fn check(&self, host: Option<&str>, headers: &HeaderMap) -> Result<(), String> {
        let here = [
            format!("127.0.0.1:{}", self.port),
            format!("localhost:{}", self.port),
        ];
        let is_here = |host: &str| here.iter().any(|own| own == host);
        let on_network = |host: &str| {
            let network = self.network.as_ref();
            network.is_some_and(|network| network.is_named(host))
        };
        let text = |name: &HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or(""));
        match host {
            Some(host) if is_here(host) || on_network(host) => {}
            host => {
                return Err(say::addressed_elsewhere(format!(
                    "{:?}",
                    host.unwrap_or("")
                )));
            }
        }
        if let Some(origin) = text(&ORIGIN) {
            let from = |scheme| origin.strip_prefix(scheme);
            let ours =
                from("http://").is_some_and(is_here) || from("https://").is_some_and(on_network);
            if !ours {
                return Err(say::from_a_page_of(origin));
            }
        }
        match text(&HeaderName::from_static("sec-fetch-site")) {
            None | Some("same-origin" | "none") => Ok(()),
            Some(other) => Err(say::from_another_place(other)),
        }
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
        let guard = Guard {
            port: 8080,
            network: None,
        };
        checked(&guard, &headers)
    }

    fn checked(guard: &Guard, headers: &HeaderMap) -> bool {
        let host = headers.get(HOST).map(|host| host.to_str().unwrap());
        guard.check(host, headers).is_ok()
    }

    #[test]
    fn on_the_network_by_its_names_and_only_in_secret() {
        let names = crate::network::Names {
            hosts: vec!["192.168.1.5:7462".to_owned()],
            help: None,
        };
        let guard = Guard {
            port: 8080,
            network: Some(Network::new(names)),
        };
        let asks = |host: &'static str, origin: Option<&'static str>| {
            let mut headers = HeaderMap::from_iter([(HOST, HeaderValue::from_static(host))]);
            if let Some(origin) = origin {
                headers.insert(ORIGIN, HeaderValue::from_static(origin));
            }
            checked(&guard, &headers)
        };
        assert!(asks("192.168.1.5:7462", None));
        assert!(asks("192.168.1.5:7462", Some("https://192.168.1.5:7462")));
        assert!(!asks("192.168.1.5:7462", Some("http://192.168.1.5:7462")));
        assert!(
            !asks("192.168.1.6:7462", None),
            "a name that was made to point here"
        );
        assert!(!asks("192.168.1.5:7462", Some("https://evil.example")));
        assert!(asks("127.0.0.1:8080", Some("http://127.0.0.1:8080")));
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
