//! `--shop-network`: the same shop for phones and tablets, encrypted under the shop's own
//! certificate or one that was brought.
//!
//! ```text
//!  127.0.0.1:7461   this machine, as always
//!  0.0.0.0:7462     https: devices that were let in, people with PINs
//!  0.0.0.0:7463     http: one page, how a device comes to trust the certificate
//! ```

mod authority;
mod names;

use crate::answer::Wrong;
use authority::{Authority, Leaf};
use clap::Args;
use jiff::Timestamp;
use names::Own;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::{Arc, PoisonError, RwLock};
use std::time::Duration;
use tokio::net::TcpListener;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};
use tokio_rustls::rustls::server::{ClientHello, ResolvesServerCert};
use tokio_rustls::rustls::sign::CertifiedKey;
use tokio_rustls::rustls::{ServerConfig, crypto};

/// Whether and how the shop's network is served.
#[derive(Debug, Args)]
pub struct OnNetwork {
    /// Also serve the shop's network: devices that were let in, people with PINs.
    #[arg(long)]
    shop_network: bool,
    /// The port for https on the network.
    #[arg(
        long,
        value_name = "PORT",
        default_value_t = 7462,
        requires = "shop_network"
    )]
    https_port: u16,
    /// The port of the page in plain http that says how to join, and nothing else.
    #[arg(
        long,
        value_name = "PORT",
        default_value_t = 7463,
        requires = "shop_network"
    )]
    http_port: u16,
    /// A further name that this machine has on the network, such as desk.local. The shop's own
    /// certificate holds names inside alone (local, lan, internal, home.arpa); another needs
    /// --certificate or --trust-proxy.
    #[arg(long, value_name = "NAME", requires = "shop_network")]
    name: Vec<String>,
    /// A certificate of your own, with those between it and its authority, as PEM.
    #[arg(long, value_name = "FILE", requires_all = ["shop_network", "key"])]
    certificate: Option<PathBuf>,
    /// Its key, as PEM.
    #[arg(long, value_name = "FILE", requires = "certificate")]
    key: Option<PathBuf>,
    /// A program in front at this address speaks https with the network; then this one speaks
    /// plain http on the https port, with that address alone. Its name is given with --name.
    #[arg(long, value_name = "ADDRESS", requires_all = ["shop_network", "name"], conflicts_with = "certificate")]
    trust_proxy: Option<IpAddr>,
}

/// A network that is about to be served.
pub struct Ready {
    /// What pages know of it.
    pub network: web::Network,
    secret: TcpListener,
    open: Option<TcpListener>,
    door: web::Door,
    authority: Option<Vec<u8>>,
    renews: Option<Renews>,
}

/// The shop's own certificate is made anew when it grows old or the machine has other addresses.
struct Renews {
    authority: Authority,
    shown: Arc<Shown>,
    asked: Vec<String>,
    port: u16,
    http_port: u16,
}

/// The certificate that is shown now.
#[derive(Debug)]
struct Shown(RwLock<Arc<CertifiedKey>>);

impl ResolvesServerCert for Shown {
    fn resolve(&self, _: ClientHello<'_>) -> Option<Arc<CertifiedKey>> {
        let shown = self.0.read().unwrap_or_else(PoisonError::into_inner);
        Some(Arc::clone(&shown))
    }
}

impl OnNetwork {
    /// Makes ready what is served on the network; nothing if it is not wanted.
    pub async fn ready(&self, folder: &Path, now: Timestamp) -> Result<Option<Ready>, Wrong> {
        if !self.shop_network {
            return Ok(None);
        }
        let secret = bound(self.https_port, "--https-port").await?;
        let port = port_of(&secret);
        if let Some(front) = self.trust_proxy {
            let hosts = self.name.clone();
            let network = web::Network::new(web::Names { hosts, help: None });
            return Ok(Some(Ready {
                network,
                secret,
                open: None,
                door: web::Door::Behind(front.to_canonical()),
                authority: None,
                renews: None,
            }));
        }
        let open = bound(self.http_port, "--http-port").await?;
        let http_port = port_of(&open);
        let own = Own::now(&self.name);
        let network = web::Network::new(own.written(port, http_port));
        let (key, authority, renews) = match (&self.certificate, &self.key) {
            (Some(certificate), Some(key)) => (brought(certificate, key)?, None, None),
            _ => {
                let authority = Authority::of(&folder.join("network"), &own, now)?;
                let leaf = authority.leaf(&own, now)?;
                let der = authority.certificate().to_vec();
                (certified(&leaf)?, Some(der), Some(authority))
            }
        };
        let shown = Arc::new(Shown(RwLock::new(Arc::new(key))));
        let config = speaking(Arc::clone(&shown) as Arc<dyn ResolvesServerCert>)?;
        let renews = renews.map(|authority| Renews {
            authority,
            shown,
            asked: self.name.clone(),
            port,
            http_port,
        });
        Ok(Some(Ready {
            network,
            secret,
            open: Some(open),
            door: web::Door::Encrypted(Arc::new(config)),
            authority,
            renews,
        }))
    }
}

impl Ready {
    /// What whoever started it is told.
    pub fn told(&self) -> String {
        let names = self.network.names();
        let mut lines: Vec<String> = names
            .hosts
            .iter()
            .map(|host| format!("https://{host}"))
            .collect();
        if let (web::Door::Behind(front), Ok(address)) = (&self.door, self.secret.local_addr()) {
            lines.push(format!(
                "Plain http for {front} alone, on port {}",
                address.port()
            ));
        }
        if let Some(help) = &names.help {
            lines.push(format!("First page for a new phone: {help}"));
        }
        lines.push("To let a phone in: The shop, Devices and people, Let a device in.".to_owned());
        lines.join("\n")
    }

    /// Serves it until `stopping` is done.
    pub async fn serve<F>(self, router: web::Pages, limits: web::Limits, stopping: impl Fn() -> F)
    where
        F: Future<Output = ()> + Send + 'static,
    {
        if let Some(renews) = self.renews {
            tokio::spawn(renews.run(self.network.clone()));
        }
        if let Some(open) = self.open {
            let page = web::how_to(self.network, self.authority);
            tokio::spawn(web::serve_at(
                web::Door::Open,
                open,
                page,
                limits,
                stopping(),
            ));
        }
        web::serve_at(self.door, self.secret, router, limits, stopping()).await;
    }
}

impl Renews {
    async fn run(self, network: web::Network) {
        const LOOK_AGAIN: Duration = Duration::from_secs(60);
        let mut shown = Own::now(&self.asked);
        loop {
            tokio::time::sleep(LOOK_AGAIN).await;
            let (own, now) = (Own::now(&self.asked), Timestamp::now());
            if own == shown && !self.authority.is_due(now) {
                continue;
            }
            let made = self
                .authority
                .leaf(&own, now)
                .and_then(|leaf| certified(&leaf));
            match made {
                Ok(key) => {
                    let mut held = self.shown.0.write().unwrap_or_else(PoisonError::into_inner);
                    *held = Arc::new(key);
                    network.rename(own.written(self.port, self.http_port));
                    shown = own;
                }
                Err(wrong) => tracing::warn!("the certificate could not be renewed: {wrong}"),
            }
        }
    }
}

async fn bound(port: u16, flag: &str) -> Result<TcpListener, Wrong> {
    let address = SocketAddr::from((Ipv4Addr::UNSPECIFIED, port));
    TcpListener::bind(address).await.map_err(|error| {
        Wrong::input(
            format!("{flag} {port}"),
            error.to_string(),
            "is another program on that port? name another",
        )
    })
}

fn port_of(listener: &TcpListener) -> u16 {
    listener.local_addr().map_or(0, |address| address.port())
}

fn speaking(shown: Arc<dyn ResolvesServerCert>) -> Result<ServerConfig, Wrong> {
    let provider = Arc::new(crypto::ring::default_provider());
    let builder = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|error| Wrong::input("--shop-network", error.to_string(), "report this"))?;
    let mut config = builder.with_no_client_auth().with_cert_resolver(shown);
    config.alpn_protocols = vec![b"h2".to_vec(), b"http/1.1".to_vec()];
    Ok(config)
}

fn certified(leaf: &Leaf) -> Result<CertifiedKey, Wrong> {
    keyed("network/leaf.pem", &leaf.chain, &leaf.key)
}

/// A certificate that the shop brought.
fn brought(certificate: &Path, key: &Path) -> Result<CertifiedKey, Wrong> {
    let read = |path: &Path| {
        std::fs::read_to_string(path).map_err(|error| {
            Wrong::input(
                path.display().to_string(),
                error.to_string(),
                "name a file with PEM in it that this program may read",
            )
        })
    };
    keyed(
        &certificate.display().to_string(),
        &read(certificate)?,
        &read(key)?,
    )
}

fn keyed(place: &str, chain: &str, key: &str) -> Result<CertifiedKey, Wrong> {
    let wrong = |what: String| {
        Wrong::input(
            place,
            what,
            "give a certificate and the key that belongs to it, both as PEM",
        )
    };
    let chain: Result<Vec<_>, _> = CertificateDer::pem_slice_iter(chain.as_bytes()).collect();
    let chain = chain.map_err(|error| wrong(error.to_string()))?;
    if chain.is_empty() {
        return Err(wrong("there is no certificate in it".to_owned()));
    }
    let key =
        PrivateKeyDer::from_pem_slice(key.as_bytes()).map_err(|error| wrong(error.to_string()))?;
    CertifiedKey::from_der(chain, key, &crypto::ring::default_provider())
        .map_err(|error| wrong(error.to_string()))
}
