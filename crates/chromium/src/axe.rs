//! The accessibility checker axe-core: fetched once as an npm package, proven to be the
//! very bytes that were pinned, and run inside the page.

use crate::browser::Browser;
use crate::programs;
use anyhow::{Context, Result, bail, ensure};
use serde::Deserialize;
use serde_json::json;
use sha2::{Digest, Sha512};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const PACKAGE: &str = "axe-core";
const VERSION: &str = "4.14.1";
/// SHA-512 of the package's file, as the registry states it.
const SHA512: &str = "1477dafa598d8d065f273d6af302aa203c02e83131707b7fa648cd41bd3d6b73\
                      4f8c22a0dab86ee6a6f64b8afbe804b214d36db85a2826965edfb3a0b9d546b5";
/// The one file of the package that is run.
const SCRIPT: &str = "package/axe.min.js";

/// Makes sure that axe-core is at hand, and says where its script lies.
///
/// It is kept in `target/axe` and fetched again only if it is not there, or not what was
/// pinned.
///
/// # Errors
/// If npm or tar is missing or fails, or what npm brings is not what was pinned.
pub fn prepare() -> Result<PathBuf> {
    let folder = project()?.join("target/axe");
    let package = folder.join(format!("{PACKAGE}-{VERSION}.tgz"));
    // Named by version and never written in place: two tests may prepare at once.
    let script = folder.join(format!("{PACKAGE}-{VERSION}.js"));
    if is_pinned(&package) && script.is_file() {
        return Ok(script);
    }
    fs::create_dir_all(&folder).with_context(|| format!("cannot make {}", folder.display()))?;
    let work = tempfile::tempdir_in(&folder).context("cannot make a folder for axe-core")?;
    let fetched = work
        .path()
        .join(package.file_name().expect("it was joined above"));
    fetch(work.path())?;
    ensure!(
        is_pinned(&fetched),
        "{PACKAGE}@{VERSION} from npm is not what was pinned in {}; do not use it before you know why",
        file!()
    );
    let unpacked = work.path().join("axe.js");
    fs::write(&unpacked, unpack(&fetched)?).context("cannot keep axe-core's script")?;
    fs::rename(&unpacked, &script).context("cannot keep axe-core's script")?;
    fs::rename(&fetched, &package).context("cannot keep axe-core's package")?;
    Ok(script)
}

/// The folder of the whole workspace, found when it is needed: two copies of the project
/// may share what was built, and each keeps its own files.
fn project() -> Result<PathBuf> {
    let start = match env::var_os("CARGO_MANIFEST_DIR") {
        Some(crate_folder) => PathBuf::from(crate_folder),
        None => env::current_dir().context("there is no current folder")?,
    };
    start
        .ancestors()
        .find(|folder| folder.join("Cargo.lock").is_file())
        .map(Path::to_owned)
        .with_context(|| format!("{} is not inside the project", start.display()))
}

fn is_pinned(package: &Path) -> bool {
    fs::read(package).is_ok_and(|bytes| hex::encode(Sha512::digest(bytes)) == SHA512)
}

fn fetch(into: &Path) -> Result<()> {
    let Some(npm) = programs::on_path("npm") else {
        bail!("npm is missing: install it, or run `cargo xtask test --only setup`");
    };
    let output = Command::new(npm)
        .args([
            "pack",
            &format!("{PACKAGE}@{VERSION}"),
            "--silent",
            "--pack-destination",
        ])
        .arg(into)
        .current_dir(into)
        .output()
        .context("cannot run npm")?;
    ensure!(
        output.status.success(),
        "`npm pack {PACKAGE}@{VERSION}` failed: {}",
        String::from_utf8_lossy(&output.stderr).trim()
    );
    Ok(())
}

fn unpack(package: &Path) -> Result<Vec<u8>> {
    let output = Command::new("tar")
        .args(["--extract", "--gzip", "--to-stdout", "--file"])
        .arg(package)
        .arg(SCRIPT)
        .output()
        .context("cannot run tar")?;
    ensure!(
        output.status.success() && !output.stdout.is_empty(),
        "cannot take {SCRIPT} out of {}: {}",
        package.display(),
        String::from_utf8_lossy(&output.stderr).trim()
    );
    Ok(output.stdout)
}

/// Every rule on, and 7:1 for all text: large letters get no lower bound here, because
/// the pages are read at arm's length in glare.
const RUN: &str = r#"
const done = arguments[arguments.length - 1];
const strict = { normal: { expected: 7 }, large: { expected: 7 } };
axe.configure({ checks: [{
  id: "color-contrast-enhanced",
  options: {
    ignoreUnicode: true, ignoreLength: false, ignorePseudo: false, boldValue: 700,
    boldTextPt: 14, largeTextPt: 18, contrastRatio: strict,
    pseudoSizeThreshold: 0.25, shadowOutlineEmMax: 0.1, textStrokeEmMin: 0.03,
  },
}] });
axe.run(document, {
  resultTypes: ["violations"],
  rules: { "color-contrast-enhanced": { enabled: true } },
}).then(
  result => done({ violations: result.violations }),
  error => done({ error: String(error) }),
);
"#;

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum Outcome {
    Violations(Vec<Violation>),
    Error(String),
}

#[derive(Deserialize)]
struct Violation {
    id: String,
    help: String,
    nodes: Vec<Node>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Node {
    html: String,
    failure_summary: Option<String>,
}

impl Browser {
    /// What stands in the way of people who see, hear or move otherwise: one readable
    /// text for each rule that the page breaks, with the elements that break it.
    ///
    /// All text must have a contrast of 7:1, large text too.
    ///
    /// # Errors
    /// If axe-core cannot be fetched ([`crate::prepare_axe`]) or cannot run in the page.
    pub fn axe(&self) -> Result<Vec<String>> {
        if self.execute("return typeof window.axe", vec![])? != json!("object") {
            let script = fs::read_to_string(prepare()?).context("cannot read axe-core")?;
            // The page's own policy forbids this to scripts of the page, not to the driver.
            self.execute(&script, vec![])?;
        }
        let outcome = self.execute_until_called_back(RUN, vec![])?;
        match serde_json::from_value(outcome).context("axe-core answered in an unknown form")? {
            Outcome::Violations(violations) => Ok(violations.iter().map(in_words).collect()),
            Outcome::Error(error) => bail!("axe-core could not run: {error}"),
        }
    }
}

fn in_words(violation: &Violation) -> String {
    let mut words = format!("{}: {}", violation.id, violation.help);
    for node in &violation.nodes {
        words += &format!("\n  {}", node.html);
        for line in node
            .failure_summary
            .iter()
            .flat_map(|summary| summary.lines())
        {
            words += &format!("\n    {}", line.trim());
        }
    }
    words
}
