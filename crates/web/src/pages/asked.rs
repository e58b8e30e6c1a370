//! What a calculator is asked in a form whose address can be kept: fields as written, and
//! what is wrong beside the one that it is wrong with.

use maud::{Markup, html};
use shop::fastener::ask::Trouble;
use shop::measure::Customary;
use shop::mending::Fields;

/// Fields as they were written, and what was wrong with them.
pub struct Asked {
    /// The fields.
    pub fields: Fields,
    /// What is wrong.
    pub trouble: Option<Trouble>,
}

impl Asked {
    /// The fields of an address, blank ones left out, a bare number with the unit that the
    /// page names beside it.
    pub fn read(query: Fields, lengths: &[&str], torques: &[&str], customary: Customary) -> Self {
        let (length, torque) = units(customary);
        let fields = query
            .into_iter()
            .map(|(name, text)| (name, text.trim().to_owned()))
            .filter(|(_, text)| !text.is_empty())
            .map(|(name, text)| {
                let unit = if lengths.contains(&name.as_str()) {
                    Some(length)
                } else if torques.contains(&name.as_str()) {
                    Some(torque)
                } else {
                    None
                };
                let bare = text.replace(',', ".").parse::<f64>().is_ok();
                match unit.filter(|_| bare) {
                    Some(unit) => (name, format!("{text} {unit}")),
                    None => (name, text),
                }
            })
            .collect();
        Self {
            fields,
            trouble: None,
        }
    }

    /// A field's text; empty where nothing was written.
    pub fn text(&self, name: &str) -> &str {
        self.fields.get(name).map_or("", String::as_str)
    }

    /// Whether a field was filled in or ticked.
    pub fn has(&self, name: &str) -> bool {
        self.fields.contains_key(name)
    }

    /// A field's text, nothing where none was written.
    pub fn some(&self, name: &str) -> Option<&str> {
        self.fields.get(name).map(String::as_str)
    }

    fn wrong(&self, name: &str) -> Option<&Trouble> {
        self.trouble
            .as_ref()
            .filter(|trouble| trouble.field == name)
    }

    /// What is wrong with the whole rather than with one field that the page has.
    pub fn trouble(&self, shown: &[&str]) -> Markup {
        html! {
            @if let Some(trouble) = self.trouble.as_ref().filter(|trouble| !shown.contains(&trouble.field)) {
                div class="trouble" role="alert" {
                    p class="strong" { (shop::say::capital(&trouble.what)) }
                    p { (shop::say::capital(&trouble.mend)) }
                }
            }
        }
    }

    /// A field with its label, a hint, and what is wrong with it.
    pub fn input(&self, name: &str, label: &str, hint: &str) -> Markup {
        let wrong = self.wrong(name);
        let id = format!("wrong-{name}");
        html! {
            label class="field" {
                span { (label) }
                @if !hint.is_empty() { span class="soft" { (hint) } }
                input type="text" name=(name) value=(self.text(name)) autocomplete="off"
                    aria-invalid[wrong.is_some()] aria-describedby=[wrong.map(|_| &id)];
            }
            @if let Some(trouble) = wrong {
                p class="no" id=(id) role="alert" { (shop::say::capital(&trouble.what)) ". " (shop::say::capital(&trouble.mend)) "." }
            }
        }
    }

    /// One of a few.
    pub fn chips(
        &self,
        name: &str,
        legend: &str,
        choices: &[(&str, &str)],
        otherwise: &str,
    ) -> Markup {
        let chosen = self.some(name).unwrap_or(otherwise);
        html! {
            (crate::tap::chips(name, legend, choices, chosen))
            @if let Some(trouble) = self.wrong(name) {
                p class="no" role="alert" { (shop::say::capital(&trouble.what)) ". " (shop::say::capital(&trouble.mend)) "." }
            }
        }
    }

    /// A yes or nothing.
    pub fn tick(&self, name: &str, label: &str) -> Markup {
        html! {
            label class="row" {
                input type="checkbox" name=(name) value="yes" checked[self.has(name)];
                span class="what" { (label) }
            }
        }
    }
}

/// The units of a bare length and a bare torque.
pub fn units(customary: Customary) -> (&'static str, &'static str) {
    match customary {
        Customary::Metric => ("mm", "N·m"),
        Customary::Us => ("in", "lb·ft"),
    }
}
