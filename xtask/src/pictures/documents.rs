//! The pictures that README and docs show, put where those show them.

use anyhow::{Context, Result, ensure};
use chromium::{Browser, DESK, PHONE, Server, Viewport};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Beside each other in one picture: what a technician has on the phone.
const ON_THE_PHONE: [&str; 4] = ["/", "/o/1002/stage", "/o/1002/back", "/o/1002/may"];
const DAY: &str = "/";
const PLAN: &str = "/o/1006/plan?map=korvane-drayman-engine-front&aim=reach&for=housing+gasket";
const TORQUE: &str = "/o/1004/back";

/// The papers, by the name of their picture.
const PAPERS: [(&str, &str); 3] = [
    ("paper-invoice", "/o/1001/papers/invoice.pdf"),
    ("paper-work-sheet", "/o/1002/papers/work-sheet.pdf"),
    ("paper-labels", "/o/1002/papers/labels.pdf"),
];
/// How wide a sheet of paper is in its picture.
const SHEET_PX: &str = "621";

/// How much smaller phones stand beside each other than they are.
const PHONES_HIGH_PX: u32 = 687;
const PHONES_WIDE_PX: u32 = 1296;

/// Takes them all.
///
/// # Errors
/// If a page does not load, or the program that makes pictures of papers is missing.
pub fn take(server: &Server, browser: &Browser) -> Result<()> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/pictures");
    let scratch = tempfile::tempdir().context("cannot make a folder for pictures")?;
    browser.set_dark(false)?;
    browser.set_viewport(DESK)?;
    for (name, page) in [("desk", DAY), ("plan", PLAN)] {
        browser.goto(&server.url(page))?;
        browser.screenshot(&folder.join(format!("{name}.png")))?;
    }
    browser.set_viewport(PHONE)?;
    let mut phones: Vec<PathBuf> = Vec::new();
    for (nth, page) in ON_THE_PHONE.iter().enumerate() {
        browser.goto(&server.url(page))?;
        let path = scratch.path().join(format!("phone-{nth}.png"));
        browser.screenshot(&path)?;
        phones.push(path);
    }
    browser.goto(&server.url(TORQUE))?;
    browser.screenshot(&folder.join("torque.png"))?;
    for (name, page) in PAPERS {
        paper(server, browser, page, &folder.join(name), scratch.path())?;
    }
    side_by_side(browser, &phones, scratch.path(), &folder.join("phone.png"))
}

/// The first sheet of a paper.
fn paper(server: &Server, browser: &Browser, page: &str, to: &Path, scratch: &Path) -> Result<()> {
    browser.goto(&server.url("/"))?;
    let bytes = browser.execute_until_called_back(
        "const [page, done] = arguments;
         fetch(page).then((answer) => answer.ok ? answer.arrayBuffer() : null)
           .then((file) => done(file && [...new Uint8Array(file)]), () => done(null));",
        vec![page.into()],
    )?;
    let bytes: Option<Vec<u8>> = serde_json::from_value(bytes)?;
    let file = scratch.join("paper.pdf");
    std::fs::write(
        &file,
        bytes.with_context(|| format!("{page} was not made"))?,
    )?;
    let made = Command::new("pdftoppm")
        .args([
            "-png",
            "-singlefile",
            "-scale-to-x",
            SHEET_PX,
            "-scale-to-y",
            "-1",
        ])
        .arg(&file)
        .arg(to)
        .status()
        .context("cannot run pdftoppm; on Debian it comes with poppler-utils")?;
    ensure!(made.success(), "pdftoppm made no picture of {page}");
    Ok(())
}

/// Several pictures in one, a little apart.
fn side_by_side(browser: &Browser, pictures: &[PathBuf], scratch: &Path, to: &Path) -> Result<()> {
    let mut page = String::from(
        "<!doctype html><style>body { margin: 0; display: flex; justify-content: space-between; background: #c9c3b6 }
         img { height: 100vh }</style>",
    );
    for picture in pictures {
        write!(page, "<img src='file://{}'>", picture.display())?;
    }
    let file = scratch.join("phones.html");
    std::fs::write(&file, page)?;
    browser.set_viewport(Viewport {
        width_px: PHONES_WIDE_PX,
        height_px: PHONES_HIGH_PX,
        mobile: false,
    })?;
    browser.goto(&format!("file://{}", file.display()))?;
    browser.screenshot(to)
}
