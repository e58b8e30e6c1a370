//! The program under measurement, built for release.

use super::load::Connection;
use anyhow::{Context, Result, bail, ensure};
use cargo_metadata::MetadataCommand;
use serde_json::Value;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

/// Figures under their names.
pub type Figures = Value;

/// Builds the program and the measurements of its inside.
pub fn build() -> Result<()> {
    for arguments in [
        &["build", "--release", "--package", "buttonup"][..],
        &[
            "bench",
            "--package",
            "buttonup",
            "--bench",
            "record",
            "--no-run",
        ],
    ] {
        let status = Command::new("cargo").args(arguments).status();
        ensure!(
            status.context("cannot run cargo")?.success(),
            "`cargo {}` failed",
            arguments.join(" ")
        );
    }
    Ok(())
}

/// Runs a measurement of the inside.
pub fn record(arguments: &[&str]) -> Result<Vec<Figures>> {
    let output = Command::new("cargo")
        .args([
            "bench",
            "--quiet",
            "--package",
            "buttonup",
            "--bench",
            "record",
            "--",
        ])
        .args(arguments)
        .stderr(Stdio::inherit())
        .output()
        .context("cannot run cargo")?;
    ensure!(output.status.success(), "measuring {arguments:?} failed");
    let text = String::from_utf8(output.stdout).context("figures that are no text")?;
    text.lines()
        .map(|line| serde_json::from_str(line).with_context(|| format!("no figures: {line}")))
        .collect()
}

/// The program while it serves; killed when dropped.
pub struct Program {
    child: Child,
    pub address: String,
    /// Kept open: the program may go on printing.
    _out: BufReader<ChildStdout>,
}

impl Program {
    pub fn start(arguments: &[&str]) -> Result<Self> {
        Self::start_at(&path()?, arguments)
    }

    /// Starts this build of it.
    pub fn start_at(program: &Path, arguments: &[&str]) -> Result<Self> {
        let mut child = Command::new(program)
            .args(arguments)
            .args(["--no-open", "--listen", "127.0.0.1:0"])
            .stdout(Stdio::piped())
            .spawn()
            .context("cannot run the program")?;
        let mut out = BufReader::new(child.stdout.take().expect("it is piped above"));
        let mut line = String::new();
        out.read_line(&mut line)?;
        let Some(address) = line.trim().strip_prefix("http://") else {
            let _ = child.kill();
            bail!("the program does not serve; it said {line:?}");
        };
        Ok(Self {
            child,
            address: address.to_owned(),
            _out: out,
        })
    }

    /// Waits for a page.
    pub fn wait_for(&self, page: &str) -> Result<()> {
        Connection::open(&self.address)?.get(page).map(drop)
    }

    /// The memory it holds now, in bytes, where the system tells.
    pub fn memory(&self) -> Option<u64> {
        self.held("VmRSS:")
    }

    /// The most it has held so far.
    pub fn peak_memory(&self) -> Option<u64> {
        self.held("VmHWM:")
    }

    fn held(&self, which: &str) -> Option<u64> {
        let path = format!("/proc/{}/status", self.child.id());
        let status = std::fs::read_to_string(path).ok()?;
        let held = status.lines().find_map(|line| line.strip_prefix(which))?;
        let kibibytes: u64 = held.trim().split(' ').next()?.parse().ok()?;
        Some(kibibytes * 1024)
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Where the build that is measured lies.
pub fn path() -> Result<PathBuf> {
    let metadata = MetadataCommand::new().no_deps().exec()?;
    Ok(metadata.target_directory.join("release/buttonup").into())
}
