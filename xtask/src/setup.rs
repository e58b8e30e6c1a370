//! What the tests need on the machine: looked for, and installed where that is our place.

use anyhow::{Context, Result, ensure};
use std::path::Path;
use std::process::{Command, Stdio};

/// Something that a step needs on the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// Chromium, chromedriver and the accessibility checker.
    Browser,
    /// A PostgreSQL server's programs.
    Postgres,
}

/// What setting up led to.
#[derive(Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Everything needed is there.
    Ready,
    /// These are missing and cannot be installed from here.
    Missing(Vec<&'static str>),
}

/// A program that may be missing, and Debian's package that brings it.
struct Program {
    package: &'static str,
    is_there: fn() -> bool,
    need: Need,
}

const PROGRAMS: [Program; 4] = [
    Program {
        package: "chromium",
        is_there: || chromium::chromium().is_some(),
        need: Need::Browser,
    },
    Program {
        package: "chromium-driver",
        is_there: || chromium::chromedriver().is_some(),
        need: Need::Browser,
    },
    Program {
        // Brings the accessibility checker; not needed again while that is kept.
        package: "npm",
        is_there: || chromium::on_path("npm").is_some() || chromium::prepare_axe().is_ok(),
        need: Need::Browser,
    },
    Program {
        package: "postgresql",
        is_there: has_postgres,
        need: Need::Postgres,
    },
];

/// Makes sure that everything in `needs` is there, installing it on Debian and its kin.
///
/// # Errors
/// If an installation was tried and failed.
pub fn prepare(needs: &[Need]) -> Result<Outcome> {
    let missing = missing(needs);
    if !missing.is_empty() {
        let Some(prefix) = may_install() else {
            return Ok(Outcome::Missing(missing));
        };
        install(&prefix, &missing)?;
    }
    if needs.contains(&Need::Browser) {
        chromium::prepare_axe()?;
    }
    Ok(Outcome::Ready)
}

fn missing(needs: &[Need]) -> Vec<&'static str> {
    PROGRAMS
        .iter()
        .filter(|program| needs.contains(&program.need) && !(program.is_there)())
        .map(|program| program.package)
        .collect()
}

/// Debian keeps the server's programs off the path, in a folder for each version.
pub fn has_postgres() -> bool {
    chromium::on_path("initdb").is_some()
        || Path::new("/usr/lib/postgresql")
            .read_dir()
            .is_ok_and(|versions| {
                versions
                    .flatten()
                    .any(|version| version.path().join("bin/initdb").is_file())
            })
}

/// The words before `apt-get` with which this user may install, if at all.
fn may_install() -> Option<Vec<&'static str>> {
    chromium::on_path("apt-get")?;
    let succeeds = |program: &str, arguments: &[&str]| {
        Command::new(program)
            .args(arguments)
            .stdin(Stdio::null())
            .stderr(Stdio::null())
            .output()
            .ok()
            .filter(|output| output.status.success())
    };
    if succeeds("id", &["-u"])?.stdout.trim_ascii() == b"0" {
        return Some(vec!["env"]);
    }
    succeeds("sudo", &["-n", "true"]).map(|_| vec!["sudo", "-n", "env"])
}

fn install(prefix: &[&str], packages: &[&str]) -> Result<()> {
    println!("installing {}", packages.join(", "));
    for arguments in [vec!["update"], [&["install", "--yes"], packages].concat()] {
        let status = Command::new(prefix[0])
            .args(&prefix[1..])
            .args(["DEBIAN_FRONTEND=noninteractive", "apt-get", "--quiet=2"])
            .args(&arguments)
            .stdin(Stdio::null())
            .status()
            .context("cannot run apt-get")?;
        ensure!(
            status.success(),
            "`apt-get {}` failed: run it by hand to see why, then `cargo xtask test` again",
            arguments.join(" ")
        );
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_missing_when_nothing_is_needed() {
        assert_eq!(missing(&[]), Vec::<&str>::new());
        assert_eq!(prepare(&[]).unwrap(), Outcome::Ready);
    }
}
