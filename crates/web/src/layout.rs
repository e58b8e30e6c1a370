//! The frame of every page.

use maud::{DOCTYPE, Markup, html};

/// What a page is framed with.
pub struct Frame<'a> {
    /// The page's title.
    pub title: &'a str,
    /// The person, by name in the record.
    pub who: &'a str,
    /// What the person is called.
    pub who_name: &'a str,
    /// The position of the log that the page shows.
    pub position: u64,
    /// What stands at the top left, and where it leads.
    pub here: (String, String),
}

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
                link rel="stylesheet" href="/assets/app.css";
                script type="module" src="/assets/app.js" {}
            }
            body data-who=(frame.who) data-position=(frame.position) {
                header {
                    a class="here row" href=(frame.here.1) {
                        span class="strong" { (frame.here.0) }
                        span class="soft" { (frame.who_name.split_whitespace().next().unwrap_or("")) }
                    }
                }
                div class="trouble refused" role="alert" data-refused hidden {}
                main {
                    div class="trouble" role="alert" data-trouble hidden {}
                    (content)
                }
                footer class="status" {
                    button class="row" type="button" data-undo {
                        span class="what" {
                            span class="line" data-status role="status" { "Saved here" }
                            span class="soft line short" data-last aria-hidden="true" {}
                        }
                        span class="strong" { "Undo last" }
                    }
                }
            }
        }
    }
}
