//! The program on the shop's network, as a phone meets it: encrypted under a certificate that
//! the shop's own authority signed, and in the open with nothing but how to join.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use hyper::{Request, StatusCode};
use hyper_util::rt::{TokioExecutor, TokioIo};
use program::PROGRAM;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, ServerName};
use tokio_rustls::rustls::{
    ClientConfig, ClientConnection, RootCertStore, StreamOwned, crypto, version,
};

/// A program on the network of this machine.
struct OnNetwork {
    child: Child,
    https: u16,
    http: u16,
    here: String,
}

impl Drop for OnNetwork {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl OnNetwork {
    fn start(folder: &Path, further: &[&str]) -> Self {
        let mut child = Command::new(PROGRAM)
            .args([
                "serve",
                "--no-open",
                "--listen",
                "127.0.0.1:0",
                "--shop-network",
            ])
            .args([
                "--https-port",
                "0",
                "--http-port",
                "0",
                "--name",
                "desk.local",
            ])
            .args(["--data", folder.to_str().unwrap()])
            .args(further)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let out = BufReader::new(child.stdout.take().unwrap());
        // From here on it is ended whatever happens.
        let mut shop = Self {
            child,
            https: 0,
            http: 0,
            here: String::new(),
        };
        let lines: Vec<String> = out
            .lines()
            .map(Result::unwrap)
            .take_while(|line| !line.starts_with("Stop with"))
            .collect();
        let port = |before: &str| -> Option<u16> {
            let line = lines.iter().find(|line| line.contains(before))?;
            line.rsplit([':', ' ']).next()?.parse().ok()
        };
        shop.https = port("https://desk.local:")
            .or_else(|| port("on port"))
            .unwrap();
        shop.http = port("First page").unwrap_or(0);
        shop.here = lines[0].strip_prefix("http://").unwrap().to_owned();
        shop
    }

    /// What comes back encrypted from whoever is asked as `name`.
    fn ask(&self, trusted: &RootCertStore, name: &str, request: &str) -> std::io::Result<String> {
        let config = speaking(trusted, &[&version::TLS13, &version::TLS12]);
        let name = ServerName::try_from(name.to_owned()).unwrap();
        let client = ClientConnection::new(Arc::new(config), name).unwrap();
        let socket = TcpStream::connect(("127.0.0.1", self.https))?;
        let mut stream = StreamOwned::new(client, socket);
        stream.write_all(request.as_bytes())?;
        let mut answer = Vec::new();
        // Some end without a good-bye: what was said stands.
        match stream.read_to_end(&mut answer) {
            Err(error) if answer.is_empty() => return Err(error),
            _ => {}
        }
        Ok(String::from_utf8_lossy(&answer).into_owned())
    }
}

fn speaking(
    trusted: &RootCertStore,
    versions: &[&'static tokio_rustls::rustls::SupportedProtocolVersion],
) -> ClientConfig {
    ClientConfig::builder_with_provider(Arc::new(crypto::ring::default_provider()))
        .with_protocol_versions(versions)
        .unwrap()
        .with_root_certificates(trusted.clone())
        .with_no_client_auth()
}

fn trusting(folder: &Path) -> RootCertStore {
    let pem = std::fs::read(folder.join("network/authority.pem")).unwrap();
    let mut trusted = RootCertStore::empty();
    trusted
        .add(CertificateDer::from_pem_slice(&pem).unwrap())
        .unwrap();
    trusted
}

fn get(host: &str, path: &str) -> String {
    format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n")
}

fn plainly(port: u16, request: &str) -> String {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).unwrap();
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = String::new();
    let _ = stream.read_to_string(&mut answer);
    answer
}

#[test]
fn a_phone_that_trusts_the_authority_is_answered_over_https() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &[]);
    let trusted = trusting(folder.path());
    let host = format!("desk.local:{}", shop.https);
    let page = shop
        .ask(&trusted, "desk.local", &get(&host, "/join"))
        .unwrap();
    assert!(
        page.starts_with("HTTP/1.1 200") && page.contains("Join the shop"),
        "{page}"
    );
    // Nothing of the shop is shown to who has not joined.
    let asked = shop.ask(&trusted, "desk.local", &get(&host, "/")).unwrap();
    assert!(
        asked.starts_with("HTTP/1.1 401") && asked.contains("has not joined"),
        "{asked}"
    );
    // Whoever was led here under another name is turned away.
    let led = shop
        .ask(&trusted, "desk.local", &get("evil.example", "/join"))
        .unwrap();
    assert!(led.starts_with("HTTP/1.1 403"), "{led}");
    // A phone that does not trust it, or asks for somebody else, speaks to nobody.
    assert!(
        shop.ask(&RootCertStore::empty(), "desk.local", &get(&host, "/join"))
            .is_err()
    );
    assert!(
        shop.ask(&trusted, "shop.example", &get(&host, "/join"))
            .is_err()
    );
    // The same authority after the next start.
    drop(shop);
    let again = OnNetwork::start(folder.path(), &[]);
    let host = format!("desk.local:{}", again.https);
    assert!(
        again
            .ask(&trusted, "desk.local", &get(&host, "/join"))
            .is_ok()
    );
}

#[test]
fn a_name_of_the_world_outside_spoils_no_certificate() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &["--name", "shop.example"]);
    let trusted = trusting(folder.path());
    let host = format!("desk.local:{}", shop.https);
    let page = shop.ask(&trusted, "desk.local", &get(&host, "/join"));
    assert!(page.unwrap().starts_with("HTTP/1.1 200"));
    assert!(
        shop.ask(&trusted, "shop.example", &get(&host, "/join"))
            .is_err()
    );
}

#[test]
fn in_the_open_only_how_to_join_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &[]);
    for path in ["/", "/o/1001", "/api/orders", "/who", "/record"] {
        let page = plainly(shop.http, &get("desk.local", path));
        assert!(page.contains("Install the certificate"), "{path}: {page}");
        assert!(!page.contains("data-who"), "{path}");
        assert!(!page.to_lowercase().contains("set-cookie"), "{path}");
    }
    let mut file = TcpStream::connect(("127.0.0.1", shop.http)).unwrap();
    file.write_all(get("desk.local", "/authority.crt").as_bytes())
        .unwrap();
    let mut answer = Vec::new();
    let _ = file.read_to_end(&mut answer);
    let end = answer
        .windows(4)
        .position(|four| four == b"\r\n\r\n")
        .unwrap();
    let pem = std::fs::read(folder.path().join("network/authority.pem")).unwrap();
    assert_eq!(
        &answer[end + 4..],
        CertificateDer::from_pem_slice(&pem).unwrap().as_ref()
    );
    // The https port takes no plain http, and the other no https.
    let open = plainly(shop.https, &get("desk.local", "/join"));
    assert!(!open.contains("HTTP/1.1 200"), "{open}");
}

#[test]
fn the_machine_itself_is_served_as_always() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &[]);
    let port: u16 = shop.here.rsplit(':').next().unwrap().parse().unwrap();
    let page = plainly(port, &get(&shop.here, "/setup"));
    assert!(
        page.starts_with("HTTP/1.1 200") && page.contains("Your shop"),
        "{page}"
    );
}

#[test]
fn two_streams_of_one_connection_are_answered() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &[]);
    let trusted = trusting(folder.path());
    let runtime = tokio::runtime::Runtime::new().unwrap();
    runtime.block_on(async {
        let mut config = speaking(&trusted, &[&version::TLS13]);
        config.alpn_protocols = vec![b"h2".to_vec()];
        let socket = tokio::net::TcpStream::connect(("127.0.0.1", shop.https))
            .await
            .unwrap();
        let name = ServerName::try_from("desk.local").unwrap();
        let secret = tokio_rustls::TlsConnector::from(Arc::new(config));
        let secret = secret.connect(name, socket).await.unwrap();
        assert_eq!(secret.get_ref().1.alpn_protocol(), Some(&b"h2"[..]));
        let spoken =
            hyper::client::conn::http2::handshake(TokioExecutor::new(), TokioIo::new(secret));
        let (mut asks, connection) = spoken.await.unwrap();
        tokio::spawn(connection);
        let mut status = async |host: &str| {
            let request = Request::get(format!("https://{host}/join"))
                .body(String::new())
                .unwrap();
            asks.send_request(request).await.unwrap().status()
        };
        assert_eq!(
            status(&format!("desk.local:{}", shop.https)).await,
            StatusCode::OK
        );
        // Whom it is addressed to stands elsewhere in HTTP/2, and is looked at there.
        assert_eq!(status("evil.example").await, StatusCode::FORBIDDEN);
    });
}

#[test]
fn who_says_nothing_is_let_go() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &[]);
    let begun = Instant::now();
    let mut silent = TcpStream::connect(("127.0.0.1", shop.https)).unwrap();
    silent
        .set_read_timeout(Some(Duration::from_secs(60)))
        .unwrap();
    let mut rest = Vec::new();
    let _ = silent.read_to_end(&mut rest);
    assert!(
        begun.elapsed() < Duration::from_secs(60),
        "it was held for ever"
    );
    // An old version of TLS is refused.
    let mut old = TcpStream::connect(("127.0.0.1", shop.https)).unwrap();
    old.set_read_timeout(Some(Duration::from_secs(60))).unwrap();
    // A greeting of TLS 1.0 (RFC 2246, 7.4.1.2), with one cipher that nobody takes any more.
    let mut greeting = vec![0x16, 3, 1, 0, 45, 1, 0, 0, 41, 3, 1];
    greeting.extend([7; 32]);
    greeting.extend([0, 0, 2, 0, 0x0a, 1, 0]);
    old.write_all(&greeting).unwrap();
    let mut alert = Vec::new();
    let _ = old.read_to_end(&mut alert);
    assert_eq!(
        alert.first(),
        Some(&0x15),
        "an alert, not a greeting: {alert:?}"
    );
}

#[test]
fn a_program_in_front_is_the_only_one_that_is_answered() {
    let folder = tempfile::tempdir().unwrap();
    let shop = OnNetwork::start(folder.path(), &["--trust-proxy", "127.0.0.1"]);
    let page = plainly(shop.https, &get("desk.local", "/join"));
    assert!(page.starts_with("HTTP/1.1 200"), "{page}");
    // Being on this machine makes a program in front nobody of the shop.
    let asked = plainly(shop.https, &get("desk.local", "/"));
    assert!(asked.starts_with("HTTP/1.1 401"), "{asked}");
    drop(shop);
    let other = OnNetwork::start(folder.path(), &["--trust-proxy", "192.0.2.7"]);
    assert_eq!(plainly(other.https, &get("desk.local", "/join")), "");
}

#[test]
fn what_is_asked_for_wrongly_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().to_str().unwrap();
    let one = program::run(&["serve", "--data", data, "--https-port", "9000"]);
    assert!(
        one.code == 2 && one.err.contains("--shop-network"),
        "{one:?}"
    );
    let none = [
        "serve",
        "--no-open",
        "--listen",
        "127.0.0.1:0",
        "--data",
        data,
        "--shop-network",
        "--http-port",
        "0",
        "--https-port",
        "0",
        "--certificate",
        "/no/such.pem",
        "--key",
        "/no/such.key",
    ];
    let none = program::run(&none);
    assert!(
        none.code != 0 && none.err.contains("/no/such.pem"),
        "{none:?}"
    );
}
