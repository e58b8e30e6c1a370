//! One Chromium with one page, driven through chromedriver.

use crate::driver::{self, ChromiumCommand};
use crate::process::Process;
use crate::targets::{self, Target};
use anyhow::{Context, Result, bail};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde::Deserialize;
use serde_json::{Value, json};
use std::cell::Cell;
use std::future::Future;
use std::path::Path;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use tokio::runtime::Runtime;

/// How long something that should appear on a page may take, unless told otherwise.
const PATIENCE: Duration = Duration::from_secs(90);
/// How often a page is looked at while waiting.
const LOOK_AGAIN: Duration = Duration::from_millis(20);
/// How long Chromium may take to close in an orderly way before it is killed.
const CLOSE_LIMIT: Duration = Duration::from_secs(5);

/// How large the page is, and whether the device is pressed with a finger.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Viewport {
    /// Width in CSS px.
    pub width_px: u32,
    /// Height in CSS px.
    pub height_px: u32,
    /// Whether it is a phone or tablet, pressed with a finger.
    pub mobile: bool,
}

/// A phone held upright.
pub const PHONE: Viewport = Viewport {
    width_px: 390,
    height_px: 844,
    mobile: true,
};

/// The screen on the desk.
pub const DESK: Viewport = Viewport {
    width_px: 1280,
    height_px: 800,
    mobile: false,
};

/// A running browser with one page. It closes when dropped.
///
/// Its methods block, so it cannot be used inside an asynchronous function.
pub struct Browser {
    runtime: Runtime,
    client: Option<Client>,
    taps: Cell<u32>,
    patience: Cell<Duration>,
    // Dropped in this order: the driver must have ended before its folder goes.
    _driver: Process,
    _profile: TempDir,
}

impl Browser {
    /// Starts a browser of its own, with an empty profile.
    ///
    /// # Errors
    /// If Chromium or chromedriver is missing or does not start.
    pub fn start() -> Result<Browser> {
        Self::started(&[])
    }

    /// The same with a microphone that hums, and that every page may hear.
    ///
    /// # Errors
    /// If Chromium or chromedriver is missing or does not start.
    pub fn with_microphone() -> Result<Browser> {
        Self::started(&[
            "--use-fake-device-for-media-stream",
            "--use-fake-ui-for-media-stream",
        ])
    }

    fn started(further: &[&str]) -> Result<Browser> {
        let profile = tempfile::tempdir().context("cannot make a folder for the browser")?;
        let (driver, address) = driver::start()?;
        let capabilities = driver::capabilities(profile.path(), further)?;
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .context("cannot start the runtime that talks to chromedriver")?;
        let client = runtime
            .block_on(
                ClientBuilder::new(HttpConnector::new())
                    .capabilities(capabilities)
                    .connect(&address),
            )
            .with_context(|| {
                format!(
                    "Chromium does not start; chromedriver printed:\n{}",
                    driver.printed()
                )
            })?;
        Ok(Browser {
            runtime,
            client: Some(client),
            taps: Cell::new(0),
            patience: Cell::new(PATIENCE),
            _driver: driver,
            _profile: profile,
        })
    }

    /// Opens a page and waits until it is loaded.
    ///
    /// # Errors
    /// If the page does not load, or the server answers with a status of 400 or above.
    pub fn goto(&self, url: &str) -> Result<()> {
        let status = self.goto_any(url)?;
        if status >= 400 {
            bail!("{url} answered with status {status}");
        }
        Ok(())
    }

    /// Opens a page, whatever it answers, and gives the status.
    ///
    /// # Errors
    /// If the page does not load.
    pub fn goto_any(&self, url: &str) -> Result<u64> {
        self.wait(self.client().goto(url))
            .with_context(|| format!("{url} does not load"))?;
        const STATUS: &str = "return performance.getEntriesByType('navigation')[0].responseStatus";
        self.execute(STATUS, vec![])?
            .as_u64()
            .with_context(|| format!("the browser gave no status for {url}"))
    }

    /// The address of the page.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn address(&self) -> Result<String> {
        Ok(self.wait(self.client().current_url())?.to_string())
    }

    /// Makes the page as large as that of a device.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn set_viewport(&self, viewport: Viewport) -> Result<()> {
        let Viewport {
            width_px,
            height_px,
            mobile,
        } = viewport;
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width_px, "height": height_px, "deviceScaleFactor": 1, "mobile": mobile }),
        )?;
        self.cdp(
            "Emulation.setTouchEmulationEnabled",
            json!({ "enabled": mobile }),
        )?;
        Ok(())
    }

    /// Asks the page for its dark or its light colours.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn set_dark(&self, dark: bool) -> Result<()> {
        let value = if dark { "dark" } else { "light" };
        let features = json!([{ "name": "prefers-color-scheme", "value": value }]);
        self.cdp(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )?;
        Ok(())
    }

    /// All the text that can be seen on the page.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn text(&self) -> Result<String> {
        let text = self.execute(
            "return document.body ? document.body.innerText : ''",
            vec![],
        )?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    }

    /// Waits until the page shows this text.
    ///
    /// # Errors
    /// If it has not appeared in time ([`Browser::set_patience`]); the message holds what the page shows instead.
    pub fn wait_for_text(&self, text: &str) -> Result<()> {
        let appeared = self.wait_until(|| Ok(self.text()?.contains(text).then_some(())))?;
        if appeared.is_none() {
            bail!(
                "\"{text}\" did not appear on {} within {:?}; it shows:\n{}",
                self.address()?,
                self.patience.get(),
                self.text()?
            );
        }
        Ok(())
    }

    /// Looks at the page again and again until `look` finds something or time
    /// is up ([`Browser::set_patience`]).
    ///
    /// # Errors
    /// Those of `look`, at once.
    pub fn wait_until<T>(&self, look: impl Fn() -> Result<Option<T>>) -> Result<Option<T>> {
        let deadline = Instant::now() + self.patience.get();
        loop {
            let found = look()?;
            if found.is_some() || Instant::now() >= deadline {
                return Ok(found);
            }
            std::thread::sleep(LOOK_AGAIN);
        }
    }

    /// How long something may take to appear: 10 s unless set here. A test that expects
    /// something to stay away sets less.
    pub fn set_patience(&self, patience: Duration) {
        self.patience.set(patience);
    }

    /// Writes to whatever has the focus, as a keyboard does; keys without a letter are
    /// those of `fantoccini::key::Key`.
    ///
    /// # Errors
    /// If nothing on the page has the focus.
    pub fn press_keys(&self, keys: &str) -> Result<()> {
        let focused = self.wait(self.client().active_element())?;
        self.wait(focused.send_keys(keys))
            .context("nothing takes the keys")
    }

    /// How often something has been pressed with [`crate::Element::click`] so far; a field
    /// written into counts as one.
    pub fn taps(&self) -> u32 {
        self.taps.get()
    }

    /// Everything on the page that can be pressed or written in.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn targets(&self) -> Result<Vec<Target>> {
        let found = self.execute(targets::COLLECT, vec![])?;
        serde_json::from_value(found).context("the page described its targets in an unknown form")
    }

    /// Every target that is too small for a gloved finger, and every two that are too
    /// close, in words. The rule is for a phone: set [`PHONE`] before.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn target_faults(&self) -> Result<Vec<String>> {
        let width_px = self
            .execute("return document.documentElement.clientWidth", vec![])?
            .as_f64()
            .context("the page has no width")?;
        Ok(targets::faults(&self.targets()?, width_px))
    }

    /// The errors in the browser's log since it was last asked: scripts that failed,
    /// files that did not load, breaches of the page's content security policy.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn console_errors(&self) -> Result<Vec<String>> {
        #[derive(Deserialize)]
        struct Entry {
            level: String,
            message: String,
        }
        let log = self.command("se/log", json!({ "type": "browser" }))?;
        let entries: Vec<Entry> =
            serde_json::from_value(log).context("the log has an unknown form")?;
        Ok(entries
            .into_iter()
            .filter(|entry| entry.level == "SEVERE")
            .map(|entry| entry.message)
            .collect())
    }

    /// Writes a picture (PNG) of what the page shows.
    ///
    /// # Errors
    /// If the browser does not answer or the file cannot be written.
    pub fn screenshot(&self, path: &Path) -> Result<()> {
        let picture = self.wait(self.client().screenshot())?;
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder)
                .with_context(|| format!("cannot make {}", folder.display()))?;
        }
        std::fs::write(path, picture).with_context(|| format!("cannot write {}", path.display()))
    }

    /// Runs a script in the page and gives what it returns. The page's content security
    /// policy does not bind it.
    ///
    /// # Errors
    /// If the script throws.
    pub fn execute(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.wait(self.client().execute(script, arguments))
            .context("a script failed in the page")
    }

    /// Runs a script in the page whose last argument is a function to give its answer to.
    ///
    /// # Errors
    /// If the script throws, or does not answer within 30 s.
    pub fn execute_until_called_back(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.wait(self.client().execute_async(script, arguments))
            .context("a script failed in the page")
    }

    /// Sends a command of the Chrome DevTools protocol.
    ///
    /// # Errors
    /// If the browser refuses it.
    pub fn cdp(&self, command: &str, parameters: Value) -> Result<Value> {
        self.command(
            "goog/cdp/execute",
            json!({ "cmd": command, "params": parameters }),
        )
        .with_context(|| format!("the browser refused {command}"))
    }

    pub(crate) fn client(&self) -> &Client {
        self.client
            .as_ref()
            .expect("it is taken only when the browser is dropped")
    }

    pub(crate) fn wait<T>(
        &self,
        answer: impl Future<Output = Result<T, fantoccini::error::CmdError>>,
    ) -> Result<T> {
        Ok(self.runtime.block_on(answer)?)
    }

    pub(crate) fn count_tap(&self) {
        self.taps.set(self.taps.get() + 1);
    }

    fn command(&self, path: &'static str, body: Value) -> Result<Value> {
        let command = ChromiumCommand { path, body };
        self.wait(self.client().issue_cmd(command))
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if let Some(client) = self.client.take() {
            // Closing the session closes Chromium; killing chromedriver alone would leave it.
            let _ = self
                .runtime
                .block_on(async { tokio::time::timeout(CLOSE_LIMIT, client.close()).await });
        }
    }
}
