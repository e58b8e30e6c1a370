//! The program chromedriver: starting it, and what it is asked for.

use crate::process::Process;
use crate::programs;
use anyhow::{Context, Result, bail};
use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use http::Method;
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;
use url::{ParseError, Url};

const MEND: &str = "install it, or run `cargo xtask test --only setup`";

/// Starts chromedriver, and gives the address at which it takes commands.
pub(crate) fn start() -> Result<(Process, String)> {
    let Some(chromedriver) = programs::chromedriver() else {
        bail!("chromedriver is missing: {MEND}");
    };
    // Port 0 lets the system choose a free one.
    let (process, port) = Process::start(Command::new(chromedriver).arg("--port=0"), port_in)?;
    Ok((process, format!("http://127.0.0.1:{port}")))
}

/// What a new session asks of chromedriver: Chromium without a window, with this profile, and
/// with further arguments.
pub(crate) fn capabilities(profile: &Path, further: &[&str]) -> Result<Capabilities> {
    let Some(chromium) = programs::chromium() else {
        bail!("Chromium is missing: {MEND}");
    };
    let profile = format!("--user-data-dir={}", profile.display());
    let mut wanted = json!({
        "browserName": "chrome",
        "goog:loggingPrefs": { "browser": "ALL" },
        "goog:chromeOptions": {
            "binary": chromium.display().to_string(),
            "args": [
                "--headless=new",
                // Root in a container has no sandbox; only our own pages are opened.
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                // What is heard is started by a script, where a person presses play.
                "--autoplay-policy=no-user-gesture-required",
                "--window-size=1280,800",
                profile,
            ],
        },
    });
    if let Some(all) = wanted["goog:chromeOptions"]["args"].as_array_mut() {
        all.extend(further.iter().copied().map(Value::from));
    }
    serde_json::from_value(wanted).context("the browser's settings are not an object")
}

/// A command that chromedriver knows beyond the WebDriver standard.
#[derive(Debug)]
pub(crate) struct ChromiumCommand {
    /// The end of its address, after the session.
    pub(crate) path: &'static str,
    pub(crate) body: Value,
}

impl WebDriverCompatibleCommand for ChromiumCommand {
    fn endpoint(&self, base_url: &Url, session_id: Option<&str>) -> Result<Url, ParseError> {
        let session = session_id.unwrap_or_default();
        base_url.join(&format!("session/{session}/{}", self.path))
    }

    fn method_and_body(&self, _request_url: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}

fn port_in(line: &str) -> Option<u16> {
    let (_, rest) = line.split_once("started successfully on port ")?;
    rest.trim_end_matches('.').parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_port_is_read_from_what_chromedriver_prints() {
        assert_eq!(
            port_in("ChromeDriver was started successfully on port 38331."),
            Some(38331)
        );
        assert_eq!(port_in("Only local connections are allowed."), None);
    }
}
