//! The frame of every page: at the vehicle a line with the way back, at the desk a bar that leads
//! to every part of the shop.

use crate::phrases::frame as say;
use maud::{DOCTYPE, Markup, html};
use phrases::spoken;

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

type Said = fn() -> &'static str;

/// Each part: its address, its name, and the letter of that name that opens it.
const PARTS: [(Part, &str, Said, Said); 6] = [
    (Part::Day, "/", say::day, say::day_key),
    (Part::Orders, "/find", say::orders, say::orders_key),
    (Part::Calls, "/calls", say::calls_and_waits, say::calls_key),
    (Part::Maps, "/maps", say::maps, say::maps_key),
    (Part::Bench, "/calc", say::work_it_out, say::work_it_out_key),
    (Part::Shop, "/shop", say::the_shop, say::the_shop_key),
];

/// A whole page.
pub fn page(frame: &Frame<'_>, content: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(spoken().tag()) {
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
                    @if frame.who.is_empty() { div class="row" { span class="what" { span class="line" data-status role="status" { (say::saved()) } } } }
                    @else { button class="row" type="button" data-undo {
                        span class="what" {
                            span class="line" data-status role="status" { (say::saved()) }
                            span class="soft line short" data-last aria-hidden="true" {}
                        }
                        span class="strong" { (say::undo_last()) }
                    } }
                    @if !frame.who.is_empty() {
                        button class="keys soft on-desk" type="button" data-keys-open { (say::keys_at_a_glance()) }
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
            nav aria-label=(say::the_shop()) {
                @for (part, to, name, key) in PARTS {
                    @let (before, letter, after) = around(name(), key());
                    a href=(to) data-key=(key()) aria-current=[(frame.part == Some(part)).then_some("page")] {
                        (before) u { (letter) } (after)
                    }
                }
            }
            form method="get" action="/find" class="find" {
                input type="text" name="q" aria-label=(say::find()) placeholder=(say::find_with_key()) autocomplete="off" data-find;
            }
            a class="strong" href="/who" { (first_name(frame)) }
        }
    }
}

/// A name before, at and after the letter that opens it.
fn around<'n>(name: &'n str, key: &str) -> (&'n str, &'n str, &'n str) {
    let at = name.find(|one: char| one.to_lowercase().eq(key.chars()));
    let (before, rest) = name.split_at(at.unwrap_or(name.len()));
    let (letter, after) = rest.split_at(rest.chars().next().map_or(0, char::len_utf8));
    (before, letter, after)
}

/// All keys, and the switch that turns letters off.
fn keys() -> Markup {
    let all = [
        (say::underlined_letters(), say::open_that_page()),
        (say::one_to_nine(), say::open_that_stall()),
        ("/", say::find_all_of_it()),
        (say::tab_enter(), say::from_one_to_the_next()),
        (say::escape(), say::back_to_the_day()),
        ("?", say::this_list()),
    ];
    html! {
        dialog data-keys aria-labelledby="keys" {
            h2 id="keys" { (say::keys()) }
            @for (key, does) in all {
                div class="row" { span class="strong" { (key) } span class="soft" { (does) } }
            }
            label class="row" { input type="checkbox" data-letters checked; span class="what" { (say::letters_open_pages()) } }
            form method="dialog" { div class="presses" { button class="press" type="submit" { (say::close()) } } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use phrases::{Language, speaking};
    use std::collections::BTreeSet;

    #[test]
    fn each_part_has_a_letter_of_its_own_in_its_name() {
        for language in Language::ALL {
            let keys: BTreeSet<&str> = speaking(language, || {
                PARTS.map(|(_, _, name, key)| {
                    let (_, letter, _) = around(name(), key());
                    assert_eq!(letter.to_lowercase(), key(), "{}", name());
                    key()
                })
            })
            .into();
            assert_eq!(keys.len(), PARTS.len(), "{keys:?}");
        }
        assert_eq!(around("The shop", "s"), ("The ", "s", "hop"));
    }
}
