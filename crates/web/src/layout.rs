//! The frame of every page: at the vehicle a line with the way back, at the desk a bar that leads
//! to every part of the shop.

use maud::{DOCTYPE, Markup, html};

/// The parts of the shop that the bar at the desk leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    Day,
    Orders,
    Calls,
    Maps,
    Bench,
    Shop,
}

/// What a page is framed with.
pub struct Frame<'a> {
    /// The page's title.
    pub title: &'a str,
    /// The shop's name.
    pub shop: &'a str,
    /// The person, by name in the record.
    pub who: &'a str,
    /// What the person is called.
    pub who_name: &'a str,
    /// The position of the log that the page shows.
    pub position: u64,
    /// What stands at the top left, and where it leads.
    pub here: (String, String),
    /// Which part of the shop it is.
    pub part: Option<Part>,
}

/// Each part: the letter that opens it, its name before, at and after that letter, its address.
const PARTS: [(Part, &str, [&str; 3], &str); 6] = [
    (Part::Day, "d", ["", "D", "ay"], "/"),
    (Part::Orders, "o", ["", "O", "rders"], "/find"),
    (Part::Calls, "c", ["", "C", "alls and waits"], "/calls"),
    (Part::Maps, "m", ["", "M", "aps"], "/maps"),
    (Part::Bench, "w", ["", "W", "ork it out"], "/calc"),
    (Part::Shop, "s", ["The ", "s", "hop"], "/shop"),
];

/// A whole page.
pub fn page(frame: &Frame<'_>, content: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="theme-color" content="#faf8f3" media="(prefers-color-scheme: light)";
                meta name="theme-color" content="#14171a" media="(prefers-color-scheme: dark)";
                title { (frame.title) " · buttonup" }
                link rel="icon" href="/assets/icon.svg" type="image/svg+xml";
                link rel="manifest" href="/manifest.webmanifest";
                link rel="stylesheet" href="/assets/app.css";
                script type="module" src="/assets/app.js" {}
            }
            body data-who=(frame.who) data-position=(frame.position) {
                header {
                    @if !frame.who.is_empty() { (bar(frame)) }
                    a class={ "here row" @if frame.here.1 == "/" { " day" } } href=(frame.here.1) {
                        span class="strong" { (frame.here.0) }
                        span class="soft" { (first_name(frame)) }
                    }
                }
                div class="trouble refused" role="alert" data-refused hidden {}
                main {
                    div class="trouble" role="alert" data-trouble hidden {}
                    (content)
                }
                footer class="status" {
                    // Whoever is nobody here yet has done nothing to take back.
                    @if frame.who.is_empty() { div class="row" { span class="what" { span class="line" data-status role="status" { "Saved" } } } }
                    @else { button class="row" type="button" data-undo {
                        span class="what" {
                            span class="line" data-status role="status" { "Saved" }
                            span class="soft line short" data-last aria-hidden="true" {}
                        }
                        span class="strong" { "Undo last" }
                    } }
                    @if !frame.who.is_empty() {
                        button class="keys soft on-desk" type="button" data-keys-open { "An underlined letter opens it · / finds · ? all keys" }
                    }
                }
                @if !frame.who.is_empty() { (keys()) }
            }
        }
    }
}

fn first_name<'a>(frame: &Frame<'a>) -> &'a str {
    frame.who_name.split_whitespace().next().unwrap_or("")
}

/// The bar at the desk.
fn bar(frame: &Frame<'_>) -> Markup {
    html! {
        div class="bar on-desk" {
            a class="strong" href="/" { (frame.shop) }
            nav aria-label="The shop" {
                @for (part, key, [before, letter, after], to) in PARTS {
                    a href=(to) data-key=(key) aria-current=[(frame.part == Some(part)).then_some("page")] {
                        (before) u { (letter) } (after)
                    }
                }
            }
            form method="get" action="/find" class="find" {
                input type="text" name="q" aria-label="Find name, plate, number" placeholder="Find name, plate, number  /" autocomplete="off" data-find;
            }
            a class="strong" href="/who" { (first_name(frame)) }
        }
    }
}

/// All keys, and the switch that turns letters off.
fn keys() -> Markup {
    let all = [
        ("letters that are underlined", "open that page"),
        ("1 to 9", "open what stands in that stall"),
        ("/", "find a name, a plate, a number, a telephone"),
        ("Tab, Enter", "go from one thing to the next, and open it"),
        ("Esc", "back to the day"),
        ("?", "this list"),
    ];
    html! {
        dialog data-keys aria-labelledby="keys" {
            h2 id="keys" { "Keys" }
            @for (key, does) in all {
                div class="row" { span class="strong" { (key) } span class="soft" { (does) } }
            }
            label class="row" { input type="checkbox" data-letters checked; span class="what" { "Letters and digits open pages" } }
            form method="dialog" { div class="presses" { button class="press" type="submit" { "Close" } } }
        }
    }
}
