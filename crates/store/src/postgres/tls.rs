//! How a database is reached: in plain, encrypted, or encrypted and known to be the one that was
//! meant. An address says which with `sslmode`, as for any program that speaks to PostgreSQL.

use std::fmt;
use std::sync::Arc;

use postgres::config::SslMode;
use postgres::{Client, Config, NoTls};
use rustls::client::WebPkiServerVerifier;
use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::crypto::{CryptoProvider, ring};
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::{
    CertificateError, ClientConfig, DigitallySignedStruct, Error, RootCertStore, SignatureScheme,
};
use tokio_postgres_rustls::MakeRustlsConnect;

use crate::error::OpenError;

/// An address that was read: what to connect to, and how.
#[derive(Clone)]
pub(super) struct Address {
    pub(super) config: Config,
    tls: Option<Arc<ClientConfig>>,
}

impl Address {
    /// Reads the modes of an address, and the file of the authority that signed the server's
    /// certificate.
    ///
    /// `disable` speaks in plain; `prefer`, where nothing is said, encrypts if the server can;
    /// `require` encrypts in any case; `verify-ca` also asks that the authority signed the
    /// certificate, and `verify-full` that it was made out to this host.
    pub(super) fn read(url: &str) -> Result<Self, OpenError> {
        let (bare, asked) = Asked::take(url);
        let mut config: Config = bare.parse().map_err(|error: postgres::Error| {
            // Without the address itself: it may hold a password.
            not_read(&super::connect::full_message(&error))
        })?;
        let verified = matches!(asked.mode.as_deref(), Some("verify-ca" | "verify-full"));
        config.ssl_mode(match asked.mode.as_deref() {
            None | Some("prefer") => SslMode::Prefer,
            Some("disable") => SslMode::Disable,
            Some("require" | "verify-ca" | "verify-full") => SslMode::Require,
            Some(other) => {
                return Err(not_read(&format!(
                    "sslmode={other} is none of disable, prefer, require, verify-ca, verify-full"
                )));
            }
        });
        let by_name = asked.mode.as_deref() == Some("verify-full");
        let tls = match (asked.mode.as_deref(), &asked.root) {
            (Some("disable"), _) => None,
            (_, Some(file)) if verified => Some(encrypted(Check::of(file, by_name)?)?),
            (Some(mode), None) if verified => {
                return Err(not_read(&format!(
                    "sslmode={mode} needs the authority that signed the server's certificate: name its file with sslrootcert=FILE"
                )));
            }
            _ => Some(encrypted(Check::nothing())?),
        };
        Ok(Self { config, tls })
    }

    /// Connects.
    pub(super) fn connect(&self) -> Result<Client, postgres::Error> {
        match &self.tls {
            None => self.config.connect(NoTls),
            Some(tls) => self
                .config
                .connect(MakeRustlsConnect::new(ClientConfig::clone(tls))),
        }
    }
}

fn not_read(why: &str) -> OpenError {
    OpenError::NotAStore {
        place: "the given database address".to_owned(),
        why: why.to_owned(),
    }
}

/// What an address says of encryption.
#[derive(Debug, Default, PartialEq, Eq)]
struct Asked {
    mode: Option<String>,
    root: Option<String>,
}

impl Asked {
    /// Takes it out of an address; the rest is for whoever connects.
    fn take(url: &str) -> (String, Self) {
        let mut asked = Self::default();
        let Some((before, query)) = url.split_once('?') else {
            return (url.to_owned(), asked);
        };
        let mut rest = Vec::new();
        for pair in query.split('&') {
            match pair.split_once('=') {
                Some(("sslmode", mode)) => asked.mode = Some(mode.to_owned()),
                Some(("sslrootcert", file)) => asked.root = Some(plain(file)),
                _ => rest.push(pair),
            }
        }
        let bare = match rest.is_empty() {
            true => before.to_owned(),
            false => format!("{before}?{}", rest.join("&")),
        };
        (bare, asked)
    }
}

/// A part of an address without its percent signs.
fn plain(text: &str) -> String {
    let mut parts = text.split('%');
    let mut out: Vec<u8> = parts.next().unwrap_or_default().bytes().collect();
    for part in parts {
        let code = part
            .get(..2)
            .and_then(|code| u8::from_str_radix(code, 16).ok());
        match code {
            Some(code) => {
                out.push(code);
                out.extend(part[2..].bytes());
            }
            None => {
                out.push(b'%');
                out.extend(part.bytes());
            }
        }
    }
    String::from_utf8_lossy(&out).into_owned()
}

fn encrypted(check: Check) -> Result<Arc<ClientConfig>, OpenError> {
    let provider = Arc::clone(&check.provider);
    let config = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|error| not_read(&error.to_string()))?
        .dangerous()
        .with_custom_certificate_verifier(Arc::new(check))
        .with_no_client_auth();
    Ok(Arc::new(config))
}

/// What is asked of a server's certificate.
struct Check {
    provider: Arc<CryptoProvider>,
    /// Who has to have signed it; nobody in particular, where it only encrypts.
    signed: Option<Arc<WebPkiServerVerifier>>,
    /// Whether it has to be made out to the host that was meant.
    by_name: bool,
}

impl fmt::Debug for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Check")
            .field("signed", &self.signed.is_some())
            .field("by_name", &self.by_name)
            .finish_non_exhaustive()
    }
}

impl Check {
    fn nothing() -> Self {
        Self {
            provider: Arc::new(ring::default_provider()),
            signed: None,
            by_name: false,
        }
    }

    fn of(file: &str, by_name: bool) -> Result<Self, OpenError> {
        let wrong = |why: String| not_read(&format!("sslrootcert={file}: {why}"));
        let mut roots = RootCertStore::empty();
        let read = CertificateDer::pem_file_iter(file).map_err(|error| wrong(error.to_string()))?;
        for certificate in read {
            let certificate = certificate.map_err(|error| wrong(error.to_string()))?;
            // A bundle may hold some that nobody can use any more.
            let _ = roots.add(certificate);
        }
        let provider = Arc::new(ring::default_provider());
        let signed =
            WebPkiServerVerifier::builder_with_provider(Arc::new(roots), Arc::clone(&provider));
        let signed = signed
            .build()
            .map_err(|error| wrong(format!("no authority is in it: {error}")))?;
        Ok(Self {
            provider,
            signed: Some(signed),
            by_name,
        })
    }
}

impl ServerCertVerifier for Check {
    fn verify_server_cert(
        &self,
        certificate: &CertificateDer<'_>,
        between: &[CertificateDer<'_>],
        name: &ServerName<'_>,
        ocsp: &[u8],
        now: UnixTime,
    ) -> Result<ServerCertVerified, Error> {
        let Some(signed) = &self.signed else {
            return Ok(ServerCertVerified::assertion());
        };
        match signed.verify_server_cert(certificate, between, name, ocsp, now) {
            Err(Error::InvalidCertificate(
                CertificateError::NotValidForName | CertificateError::NotValidForNameContext { .. },
            )) if !self.by_name => Ok(ServerCertVerified::assertion()),
            answer => answer,
        }
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signature: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        let known = &self.provider.signature_verification_algorithms;
        rustls::crypto::verify_tls12_signature(message, certificate, signature, known)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signature: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        let known = &self.provider.signature_verification_algorithms;
        rustls::crypto::verify_tls13_signature(message, certificate, signature, known)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        self.provider
            .signature_verification_algorithms
            .supported_schemes()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_an_address_says_of_encryption_is_taken_out_of_it() {
        let asked = |mode: Option<&str>, root: Option<&str>| Asked {
            mode: mode.map(str::to_owned),
            root: root.map(str::to_owned),
        };
        for (url, bare, wanted) in [
            ("postgres://a@b/c", "postgres://a@b/c", asked(None, None)),
            (
                "postgres://a@b/c?sslmode=require",
                "postgres://a@b/c",
                asked(Some("require"), None),
            ),
            (
                "postgres://a@b/c?connect_timeout=3&sslrootcert=/etc/my%20ca.pem&sslmode=verify-full",
                "postgres://a@b/c?connect_timeout=3",
                asked(Some("verify-full"), Some("/etc/my ca.pem")),
            ),
        ] {
            assert_eq!(Asked::take(url), (bare.to_owned(), wanted), "{url}");
        }
    }

    #[test]
    fn what_cannot_be_checked_is_said() {
        for (url, why) in [
            ("postgres://a@b/c?sslmode=always", "is none of"),
            ("postgres://a@b/c?sslmode=verify-full", "sslrootcert=FILE"),
            (
                "postgres://a@b/c?sslmode=verify-ca&sslrootcert=/nowhere.pem",
                "/nowhere.pem",
            ),
        ] {
            let error = Address::read(url).err().map(|error| error.to_string());
            assert!(
                error.as_ref().is_some_and(|error| error.contains(why)),
                "{error:?}"
            );
        }
    }
}
