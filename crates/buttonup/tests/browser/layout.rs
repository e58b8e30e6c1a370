//! Every page of the demonstration at every width, in each language: nothing wider than the screen, no word broken
//! in the middle, nothing under the foot, and one filled press at most in view.

use super::{PAGES, Shop, phone, speaks_german, started};
use anyhow::{Result, ensure};
use chromium::{Browser, PHONE, Viewport};
use serde_json::Value;
use std::collections::{BTreeMap, VecDeque};

/// Widths from the narrowest phone to a wide desk; half of each is what 200 % of it leaves.
const WIDTHS: [u32; 8] = [320, 360, 390, 640, 768, 1000, 1280, 1920];

/// German is held to the ends of each layout: its words are longer, and what fits there fits
/// between.
const GERMAN_WIDTHS: [u32; 4] = [320, 390, 1000, 1280];

/// What is wrong with the page as it is shown now.
const LOOK: &str = r#"
if (!document.querySelector("main")) return [[], []];
const faults = [];
const wide = document.documentElement.scrollWidth;
if (wide > innerWidth + 1) {
  const out = [...document.querySelectorAll("body *")].find((one) => one.getBoundingClientRect().right > innerWidth + 1);
  faults.push(`${wide} px wide: ${out?.tagName}.${out?.className?.baseVal ?? out?.className} ${out?.textContent.trim().slice(0, 40)}`);
}
const seen = (one) => one.checkVisibility?.({ visibilityProperty: true }) !== false && one.getClientRects().length > 0;
const walk = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
for (let text = walk.nextNode(); text; text = walk.nextNode()) {
  const around = text.parentElement;
  if (!seen(around) || around.closest("svg, pre, code, textarea, .skip")) continue;
  for (const found of text.data.matchAll(/[^\s\u00ad\u2011/\-\u2013·.,:@]{2,}/g)) {
    if (found[0].length > 22) continue;
    const range = document.createRange();
    // A hyphen that was put in belongs to the line before.
    range.setStart(text, found.index + (text.data[found.index - 1] === "\u00ad" ? 1 : 0));
    range.setEnd(text, found.index + found[0].length);
    const lines = new Set([...range.getClientRects()].filter((box) => box.width > 0).map((box) => Math.round(box.top)));
    if (lines.size > 1) faults.push(`broken: ${found[0]} in ${around.textContent.trim().slice(0, 40)}`);
  }
}
const inView = (one) => { const box = one.getBoundingClientRect(); return box.top < innerHeight && box.bottom > 0; };
const filled = [...document.querySelectorAll("main .confirm, main .press.confirm")].filter((one) => seen(one) && inView(one));
if (new Set(filled).size > 1) faults.push(`filled presses: ${filled.map((one) => one.textContent.trim()).join(" | ")}`);
scrollTo(0, document.documentElement.scrollHeight);
const foot = document.querySelector("footer.status")?.getBoundingClientRect().top ?? innerHeight;
const last = [...document.querySelectorAll("main *")].filter((one) => seen(one) && !one.closest("details:not([open]) > :not(summary)")).at(-1);
const low = last?.getBoundingClientRect().bottom ?? 0;
if (low > foot + 1) faults.push(`under the foot by ${Math.round(low - foot)} px: ${last.textContent.trim().slice(0, 40)}`);
scrollTo(0, 0);
return [faults, [...document.querySelectorAll("a[href^='/']")].map((one) => one.getAttribute("href"))];
"#;

/// Pages that differ in more than the number or the name in their address.
fn shape(address: &str) -> String {
    let path = address.split(['?', '#']).next().unwrap_or(address);
    let part = |part: &str| {
        let is_name =
            part.len() >= 20 && part.contains('-') || part.chars().any(|c| c.is_ascii_digit());
        if is_name {
            "*".to_owned()
        } else {
            part.to_owned()
        }
    };
    path.split('/').map(part).collect::<Vec<_>>().join("/")
}

fn looked(browser: &Browser) -> Result<(Vec<String>, Vec<String>)> {
    let told = browser.execute(LOOK, vec![])?;
    let texts = |value: &Value| -> Vec<String> {
        let list = value.as_array().into_iter().flatten();
        list.filter_map(|one| Some(one.as_str()?.to_owned()))
            .collect()
    };
    Ok((texts(&told[0]), texts(&told[1])))
}

#[test]
fn every_page_fits_every_width() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/nuria")?;
    every_page_fits(&shop, &browser, &WIDTHS)
}

#[test]
fn every_german_page_fits_every_width() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/nuria")?;
    speaks_german(&browser)?;
    every_page_fits(&shop, &browser, &GERMAN_WIDTHS)
}

fn every_page_fits(shop: &Shop, browser: &Browser, widths: &[u32]) -> Result<()> {
    let mut todo: VecDeque<String> = ["/", "/o/1002", "/o/1002/stage", "/o/1002/desk"]
        .map(str::to_owned)
        .into();
    let mut done: BTreeMap<String, String> = BTreeMap::new();
    let mut faults = Vec::new();
    while let Some(path) = todo.pop_front() {
        let is_page = !path.starts_with("/file")
            && !path.starts_with("/assets")
            && !path.contains(".pdf")
            && !path.starts_with("/who")
            && !path.contains("/file")
            && !path.starts_with("/api");
        if !is_page || done.contains_key(&shape(&path)) {
            continue;
        }
        done.insert(shape(&path), path.clone());
        browser.goto_any(&shop.server.url(&path))?;
        for &width in widths {
            browser.set_viewport(Viewport {
                width_px: width,
                height_px: if width < 1_000 { 844 } else { 800 },
                mobile: width < 1_000,
            })?;
            let (wrong, links) = looked(browser)?;
            faults.extend(
                wrong
                    .into_iter()
                    .map(|wrong| format!("{path} at {width}: {wrong}")),
            );
            todo.extend(links);
        }
    }
    // Answers, and orders that stand otherwise: a link never leads to most of them.
    browser.set_viewport(PHONE)?;
    for path in PAGES.iter().chain(&["/o/1004"]) {
        browser.goto_any(&shop.server.url(path))?;
        let wrong = looked(browser)?.0.into_iter();
        faults.extend(wrong.map(|wrong| format!("{path}: {wrong}")));
    }
    ensure!(done.len() > 40, "only {} pages: {done:?}", done.len());
    ensure!(
        faults.is_empty(),
        "{} faults on {} pages:\n{}",
        faults.len(),
        done.len(),
        faults.join("\n")
    );
    Ok(())
}
