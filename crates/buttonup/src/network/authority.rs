//! The shop's own certificate authority: made at the first start, kept beside the record, and
//! the certificate that the program shows under it.

use super::names::Own;
use crate::answer::Wrong;
use crate::keep::own;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ToSpan};
use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DnType, ExtendedKeyUsagePurpose,
    GeneralSubtree, IsCa, Issuer, KeyPair, KeyUsagePurpose, NameConstraints, SanType,
};
use serde_json::{Value, json};
use std::fs;
use std::net::IpAddr;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use tokio_rustls::rustls::pki_types::CertificateDer;
use tokio_rustls::rustls::pki_types::pem::PemObject;

/// An authority, with the folder it is kept in.
pub struct Authority {
    issuer: Issuer<'static, KeyPair>,
    certificate: CertificateDer<'static>,
    /// This machine's own name when it was made: the one name without a dot that it signs for.
    host: String,
    pem: String,
    /// When the last certificate was made under it.
    made_at: Mutex<Option<Timestamp>>,
}

/// What the program shows: its certificate with the authority's, and its key.
pub struct Leaf {
    pub chain: String,
    pub key: String,
}

/// Days that a certificate of the program lasts: browsers bear no more than 398.
const LEAF_DAYS: i64 = 397;
/// It is made anew when two thirds of them are over.
const RENEW_AFTER_DAYS: i64 = LEAF_DAYS * 2 / 3;
/// Years that the authority lasts: until then no device has to be visited again.
const AUTHORITY_YEARS: i64 = 10;

impl Authority {
    /// The authority in a folder, made there if there is none.
    pub fn of(folder: &Path, own: &Own, now: Timestamp) -> Result<Self, Wrong> {
        let [pem, key, told] =
            ["authority.pem", "authority.key", "authority.json"].map(|name| folder.join(name));
        if !pem.exists() {
            make(folder, own, now)?;
        }
        let read = |path: &PathBuf| {
            fs::read_to_string(path).map_err(|error| unread(path, &error.to_string()))
        };
        let (certificate, key_text, told_text) = (read(&pem)?, read(&key)?, read(&told)?);
        let name: Value =
            serde_json::from_str(&told_text).map_err(|error| unread(&told, &error.to_string()))?;
        let name = name["name"]
            .as_str()
            .ok_or_else(|| unread(&told, "it names no authority"))?;
        let pair =
            KeyPair::from_pem(&key_text).map_err(|error| unread(&key, &error.to_string()))?;
        let der = CertificateDer::from_pem_slice(certificate.as_bytes())
            .map_err(|error| unread(&pem, &error.to_string()))?;
        Ok(Self {
            issuer: Issuer::new(params(name, now), pair),
            certificate: der,
            host: host_in(name).to_owned(),
            pem: certificate,
            made_at: Mutex::new(None),
        })
    }

    /// The certificate that devices install.
    pub fn certificate(&self) -> &[u8] {
        &self.certificate
    }

    /// Whether the certificate that is shown has grown old.
    pub fn is_due(&self, now: Timestamp) -> bool {
        let made_at = *self.made_at.lock().unwrap_or_else(PoisonError::into_inner);
        made_at.is_none_or(|made| now.duration_since(made).as_hours() >= RENEW_AFTER_DAYS * 24)
    }

    /// The names that it may sign for. One of the world outside would make every device refuse
    /// the whole certificate: for that a certificate is brought.
    fn signable(&self, own: &Own) -> Vec<String> {
        let inside = |name: &&String| {
            let ends = |end: &&str| {
                name.strip_suffix(*end)
                    .is_some_and(|rest| rest.ends_with('.'))
            };
            **name == self.host || INSIDE_NAMES.iter().any(ends)
        };
        own.names.iter().filter(inside).cloned().collect()
    }

    /// A certificate for these names, with a key of its own that is kept nowhere.
    pub fn leaf(&self, own: &Own, now: Timestamp) -> Result<Leaf, Wrong> {
        let fault = |error: rcgen::Error| {
            Wrong::input(
                "--shop-network",
                format!("no certificate can be made ({error})"),
                "name this machine with --name",
            )
        };
        let mut params = CertificateParams::new(self.signable(own)).map_err(fault)?;
        let addresses = own.addresses.iter().copied();
        params.subject_alt_names.extend(
            addresses
                .filter(|address| is_inside(*address))
                .map(SanType::IpAddress),
        );
        let name = own.names.first().map_or("buttonup", String::as_str);
        params.distinguished_name = rcgen::DistinguishedName::new();
        params.distinguished_name.push(DnType::CommonName, name);
        params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        params.use_authority_key_identifier_extension = true;
        lasts(&mut params, now, LEAF_DAYS);
        let key = KeyPair::generate().map_err(fault)?;
        let leaf = params.signed_by(&key, &self.issuer).map_err(fault)?;
        *self.made_at.lock().unwrap_or_else(PoisonError::into_inner) = Some(now);
        Ok(Leaf {
            chain: leaf.pem() + &self.pem,
            key: key.serialize_pem(),
        })
    }
}

/// Makes an authority. Its key is written first: a certificate without one is no use.
fn make(folder: &Path, own: &Own, now: Timestamp) -> Result<(), Wrong> {
    let name = format!(
        "buttonup at {}",
        own.names.last().map_or("the shop", String::as_str)
    );
    let fault = |what: String| unread(folder, &what);
    let key = KeyPair::generate().map_err(|error| fault(error.to_string()))?;
    let certificate = params(&name, now)
        .self_signed(&key)
        .map_err(|error| fault(error.to_string()))?;
    let write = || -> std::io::Result<()> {
        fs::create_dir_all(folder)?;
        #[cfg(unix)]
        fs::set_permissions(folder, std::os::unix::fs::PermissionsExt::from_mode(0o700))?;
        // What a start that broke off has left is of no authority.
        for left in ["authority.key", "authority.json"] {
            match fs::remove_file(folder.join(left)) {
                Err(error) if error.kind() != std::io::ErrorKind::NotFound => return Err(error),
                _ => {}
            }
        }
        own::write_new(&folder.join("authority.key"), &key.serialize_pem())?;
        own::write_new(
            &folder.join("authority.json"),
            &format!("{}\n", json!({ "name": name })),
        )?;
        own::write_new(&folder.join("authority.pem"), &certificate.pem())?;
        own::sync_folder_of(&folder.join("authority.pem"))
    };
    write().map_err(|error| fault(error.to_string()))
}

/// An authority that signs for inside addresses and names alone: whoever stole its key could
/// pass for no page of the world outside.
fn params(name: &str, now: Timestamp) -> CertificateParams {
    let mut params = CertificateParams::default();
    params.distinguished_name = rcgen::DistinguishedName::new();
    params.distinguished_name.push(DnType::CommonName, name);
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    lasts(&mut params, now, AUTHORITY_YEARS * 365);
    let names = INSIDE_NAMES
        .iter()
        .map(|name| GeneralSubtree::DnsName((*name).to_owned()));
    // A machine's own name has no dot: it is inside by what it is.
    let host = host_in(name).to_owned();
    let addresses = INSIDE.iter().map(|(address, bits)| {
        let address: IpAddr = address.parse().expect("the table holds addresses");
        GeneralSubtree::IpAddress(CidrSubnet::from_addr_prefix(address, *bits))
    });
    params.name_constraints = Some(NameConstraints {
        permitted_subtrees: names
            .chain([GeneralSubtree::DnsName(host)])
            .chain(addresses)
            .collect(),
        excluded_subtrees: Vec::new(),
    });
    params
}

/// The machine that an authority was made on, by its name.
fn host_in(name: &str) -> &str {
    name.strip_prefix("buttonup at ").unwrap_or(name)
}

/// Names that no one can own in the world outside (RFC 6762; RFC 8375; ICANN's `internal`).
const INSIDE_NAMES: [&str; 4] = ["local", "home.arpa", "internal", "lan"];

/// Addresses that are routed nowhere outside (RFC 1918, RFC 4193, RFC 6598, RFC 3927).
const INSIDE: [(&str, u8); 7] = [
    ("10.0.0.0", 8),
    ("172.16.0.0", 12),
    ("192.168.0.0", 16),
    ("100.64.0.0", 10),
    ("169.254.0.0", 16),
    ("127.0.0.0", 8),
    ("fc00::", 7),
];

fn is_inside(address: IpAddr) -> bool {
    INSIDE.iter().any(|(net, bits)| {
        let net: IpAddr = net.parse().expect("the table holds addresses");
        match (net, address) {
            (IpAddr::V4(net), IpAddr::V4(address)) => {
                (net.to_bits() ^ address.to_bits()) >> (32 - u32::from(*bits)) == 0
            }
            (IpAddr::V6(net), IpAddr::V6(address)) => {
                (net.to_bits() ^ address.to_bits()) >> (128 - u32::from(*bits)) == 0
            }
            _ => false,
        }
    })
}

/// Its days, counted from today. It begins in the past: a phone whose clock is a little behind
/// takes it too.
fn lasts(params: &mut CertificateParams, now: Timestamp, days: i64) {
    let today = now.to_zoned_datetime(TimeZone::UTC).date();
    let day = |later: i64| {
        let date = today.saturating_add(later.days());
        let (month, day) = (date.month().unsigned_abs(), date.day().unsigned_abs());
        rcgen::date_time_ymd(i32::from(date.year()), month, day)
    };
    params.not_before = day(-2);
    params.not_after = day(days - 2);
}

fn unread(path: &Path, what: &str) -> Wrong {
    Wrong::input(
        path.display().to_string(),
        what,
        "restore that folder from a backup; or put it aside, and a new authority is made that each device has to install again",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own() -> Own {
        Own {
            names: vec!["desk.local".to_owned(), "desk".to_owned()],
            addresses: ["192.168.1.5", "8.8.8.8"]
                .iter()
                .map(|one| one.parse().unwrap())
                .collect(),
        }
    }

    fn day(text: &str) -> Timestamp {
        format!("{text}T08:00:00Z").parse().unwrap()
    }

    #[test]
    fn it_is_made_once_and_its_key_is_its_owners_alone() {
        let folder = tempfile::tempdir().unwrap();
        let folder = folder.path().join("network");
        let first = Authority::of(&folder, &own(), day("2026-12-01")).unwrap();
        let again = Authority::of(&folder, &own(), day("2027-06-01")).unwrap();
        assert_eq!(first.certificate(), again.certificate());
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = |name: &str| {
                fs::metadata(folder.join(name))
                    .unwrap()
                    .permissions()
                    .mode()
                    & 0o777
            };
            assert_eq!((mode("authority.key"), mode("")), (0o600, 0o700));
        }
    }

    #[test]
    fn it_is_renewed_before_browsers_refuse_it() {
        let folder = tempfile::tempdir().unwrap();
        let authority = Authority::of(folder.path(), &own(), day("2026-12-01")).unwrap();
        assert!(authority.is_due(day("2026-12-01")));
        authority.leaf(&own(), day("2026-12-01")).unwrap();
        assert!(!authority.is_due(day("2027-08-01")));
        assert!(authority.is_due(day("2027-08-25")));
    }

    #[test]
    fn an_address_of_the_world_outside_is_not_in_it() {
        assert!(is_inside("192.168.1.5".parse().unwrap()) && is_inside("fd00::5".parse().unwrap()));
        assert!(
            !is_inside("8.8.8.8".parse().unwrap()) && !is_inside("172.32.0.1".parse().unwrap())
        );
        assert!(!is_inside("2001:db8::1".parse().unwrap()));
    }

    #[test]
    fn what_is_broken_is_told_with_its_file() {
        let folder = tempfile::tempdir().unwrap();
        Authority::of(folder.path(), &own(), day("2026-12-01")).unwrap();
        fs::write(folder.path().join("authority.key"), "no key").unwrap();
        let wrong = Authority::of(folder.path(), &own(), day("2026-12-01"))
            .map(|_| ())
            .unwrap_err();
        assert!(wrong.place.ends_with("authority.key"), "{wrong}");
        // A start that broke off before the certificate was there begins anew.
        fs::remove_file(folder.path().join("authority.pem")).unwrap();
        Authority::of(folder.path(), &own(), day("2026-12-01")).unwrap();
    }
}
