//! A real browser for the project's own tests and pictures.
//!
//! [`Browser`] starts Chromium through chromedriver and finds things on a page the way a
//! person with a screen reader does: by role and name. [`Server`] runs the program under
//! test and reads its address from what it prints. Both are ended when dropped.
//!
//! Everything here blocks until it is done, so a test that uses it is a plain `#[test]`
//! (not an asynchronous one), reading from top to bottom like the job it stands for:
//!
//! ```no_run
//! use chromium::{Browser, PHONE, Server};
//! use std::process::Command;
//!
//! # fn main() -> anyhow::Result<()> {
//! let server = Server::start(Command::new("target/debug/buttonup").arg("demo"))?;
//! let browser = Browser::start()?;
//! browser.set_viewport(PHONE)?;
//! browser.goto(&server.url("/"))?;
//! browser.by_role("button", "Out as shown")?.click()?;
//! browser.wait_for_text("Undertray: off")?;
//! assert_eq!(browser.taps(), 1);
//! assert!(browser.axe()?.is_empty());
//! assert!(browser.target_faults()?.is_empty());
//! # Ok(())
//! # }
//! ```
//!
//! This crate is a tool: no product crate may depend on it, except to test itself.

mod axe;
mod browser;
mod driver;
mod page;
mod process;
mod programs;
mod targets;

pub use axe::prepare as prepare_axe;
pub use browser::{Browser, DESK, PHONE, Viewport};
pub use page::Element;
pub use process::Server;
pub use programs::{chromedriver, chromium, on_path};
pub use targets::{Shape, Target, faults};
