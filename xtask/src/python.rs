//! Other implementations that figures are held against: each in a Python environment of its own
//! in the target folder, put there from its package registry when it is first asked for.

use anyhow::{Context, Result, ensure};
use cargo_metadata::MetadataCommand;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The interpreter of the environment of this name that has a package, which is installed unless
/// an earlier run left it there.
pub fn with(name: &str, package: &str, import: &str) -> Result<PathBuf> {
    let target = MetadataCommand::new().no_deps().exec()?.target_directory;
    let folder = target.join(name);
    let python = PathBuf::from(folder.join("bin/python"));
    let there = |python: &Path| {
        let mut ask = Command::new(python);
        ask.args(["-c", &format!("import {import}")]);
        quiet(&mut ask).is_ok()
    };
    if !there(&python) {
        eprintln!("{package} is put into {folder}");
        quiet(Command::new("python3").args(["-m", "venv", folder.as_str()]))
            .context("python3 makes no environment")?;
        let install = ["-m", "pip", "install", "--quiet", package];
        quiet(Command::new(&python).args(install))
            .with_context(|| format!("{package} cannot be installed"))?;
    }
    Ok(python)
}

fn quiet(command: &mut Command) -> Result<()> {
    let output = command.stdin(Stdio::null()).output()?;
    ensure!(output.status.success(), "it answered {}", output.status);
    Ok(())
}
