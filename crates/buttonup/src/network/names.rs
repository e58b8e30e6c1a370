//! What this machine is called on the shop's network.

use std::collections::BTreeSet;
use std::net::{IpAddr, Ipv6Addr};

/// Its names and addresses.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Own {
    /// Names as they are asked for, those that were given first.
    pub names: Vec<String>,
    /// Addresses inside networks, the shop's first.
    pub addresses: Vec<IpAddr>,
}

impl Own {
    /// As they are now.
    pub fn now(given: &[String]) -> Self {
        let found: Vec<IpAddr> = if_addrs::get_if_addrs()
            .unwrap_or_default()
            .into_iter()
            .map(|one| one.ip())
            .collect();
        Self::of(given, hostname().as_deref(), &found)
    }

    fn of(given: &[String], host: Option<&str>, found: &[IpAddr]) -> Self {
        let mut names: Vec<String> = given.iter().map(|name| name.to_lowercase()).collect();
        if let Some(host) = host.and_then(plain) {
            // Machines of one network find each other so, without anybody setting it up.
            names.push(format!("{host}.local"));
            names.push(host);
        }
        let addresses: BTreeSet<(bool, IpAddr)> = found
            .iter()
            .filter(|address| !address.is_loopback() && !is_link_local(**address))
            .map(|address| (address.is_ipv6(), *address))
            .collect();
        Self {
            names,
            addresses: addresses.into_iter().map(|(_, address)| address).collect(),
        }
    }

    /// As browsers write them, the likeliest to be reached first: an address needs no names.
    pub fn written(&self, port: u16, http_port: u16) -> web::Names {
        let address = |address: &IpAddr| match address {
            IpAddr::V4(v4) => v4.to_string(),
            IpAddr::V6(v6) => format!("[{v6}]"),
        };
        let addresses: Vec<String> = self.addresses.iter().map(address).collect();
        let first = addresses.first().or(self.names.first());
        let help = first.map(|host| match http_port {
            80 => format!("http://{host}"),
            _ => format!("http://{host}:{http_port}"),
        });
        let hosts = addresses.iter().chain(&self.names);
        let hosts = hosts.map(|host| match port {
            443 => host.clone(),
            _ => format!("{host}:{port}"),
        });
        web::Names {
            hosts: hosts.collect(),
            help,
        }
    }
}

/// A name that may stand in a certificate.
fn plain(host: &str) -> Option<String> {
    let first = host.trim().split('.').next()?.to_lowercase();
    let fits = first.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
    (fits && !first.is_empty() && first != "localhost").then_some(first)
}

fn hostname() -> Option<String> {
    let told = ["/proc/sys/kernel/hostname", "/etc/hostname"]
        .iter()
        .find_map(|path| std::fs::read_to_string(path).ok());
    told.or_else(|| std::env::var("COMPUTERNAME").ok())
        .or_else(|| std::env::var("HOSTNAME").ok())
}

/// It changes with the cable, and browsers want a zone beside it.
fn is_link_local(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(v4) => v4.is_link_local(),
        IpAddr::V6(v6) => v6.is_unicast_link_local() || v6 == Ipv6Addr::UNSPECIFIED,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_comes_first_and_this_machine_is_no_network() {
        let found = [
            "127.0.0.1",
            "::1",
            "fd00::5",
            "169.254.3.4",
            "192.168.1.5",
            "fe80::1",
        ];
        let found: Vec<IpAddr> = found.iter().map(|one| one.parse().unwrap()).collect();
        let own = Own::of(&["Desk.Example".to_owned()], Some("FrontDesk\n"), &found);
        let written = own.written(7462, 7463);
        assert_eq!(
            written.hosts,
            [
                "192.168.1.5:7462",
                "[fd00::5]:7462",
                "desk.example:7462",
                "frontdesk.local:7462",
                "frontdesk:7462",
            ]
        );
        assert_eq!(written.help.as_deref(), Some("http://192.168.1.5:7463"));
        assert_eq!(own.written(443, 80).hosts[0], "192.168.1.5");
        let none = Own::of(&[], Some("häuschen"), &[]);
        assert_eq!(none, Own::default());
    }
}
