//! Finding things on a page by role and name, and using them.

use crate::browser::Browser;
use anyhow::{Context, Result, bail};
use fantoccini::elements::ElementRef;
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// Something on the page that was found by its role and name.
pub struct Element<'a> {
    browser: &'a Browser,
    element: fantoccini::elements::Element,
    words: String,
}

impl Browser {
    /// The one thing on the page with this role and this name, as a screen reader would
    /// say them (`button`, "Out as shown"); waits until it is there.
    ///
    /// # Errors
    /// If there is none in time ([`Browser::set_patience`]), or more than one; the message lists what there is.
    pub fn by_role(&self, role: &str, name: &str) -> Result<Element<'_>> {
        self.only_one(role, &format!("named \"{name}\""), |said| said == name)
    }

    /// The one thing on the page with this role whose name contains these words.
    ///
    /// # Errors
    /// If there is none in time ([`Browser::set_patience`]), or more than one; the message lists what there is.
    pub fn by_role_containing(&self, role: &str, words: &str) -> Result<Element<'_>> {
        self.only_one(role, &format!("with \"{words}\" in its name"), |said| {
            said.contains(words)
        })
    }

    /// Everything that the page now has in this role, by name, in document order.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub fn names_by_role(&self, role: &str) -> Result<Vec<String>> {
        let things = self.accessible_things()?;
        Ok(things
            .into_iter()
            .filter(|thing| thing.role == role)
            .map(|thing| thing.name)
            .collect())
    }

    fn only_one(
        &self,
        role: &str,
        wanted: &str,
        is_wanted: impl Fn(&str) -> bool,
    ) -> Result<Element<'_>> {
        let found = self.wait_until(|| {
            let mut things = self.accessible_things()?;
            things.retain(|thing| thing.role == role && is_wanted(&thing.name));
            Ok(match things.as_slice() {
                [] => None,
                // It may have been replaced since the tree was read: then look again.
                [only] => self.element(only).ok().map(Ok),
                several => Some(Err(several.len())),
            })
        })?;
        let problem = match found {
            Some(Ok(element)) => return Ok(element),
            Some(Err(count)) => format!("{count} things are"),
            None => "nothing is".to_owned(),
        };
        bail!(
            "{problem} a {role} {wanted} on {}; it has {}",
            self.address()?,
            listed(&self.accessible_things()?, role)
        )
    }

    /// What the browser tells a screen reader about the page.
    fn accessible_things(&self) -> Result<Vec<Thing>> {
        #[derive(Deserialize)]
        struct Tree {
            nodes: Vec<Node>,
        }
        #[derive(Deserialize)]
        #[serde(rename_all = "camelCase")]
        struct Node {
            ignored: bool,
            role: Option<Said>,
            name: Option<Said>,
            #[serde(rename = "backendDOMNodeId")]
            place: Option<u64>,
        }
        #[derive(Deserialize)]
        struct Said {
            value: Value,
        }
        let words = |said: Option<Said>| match said {
            Some(Said {
                value: Value::String(words),
                // Where a word may be broken, nobody reads or hears anything.
            }) => one_line(&words).replace('\u{ad}', ""),
            _ => String::new(),
        };
        let tree = self.cdp("Accessibility.getFullAXTree", json!({}))?;
        let tree: Tree =
            serde_json::from_value(tree).context("the accessibility tree has an unknown form")?;
        Ok(tree
            .nodes
            .into_iter()
            .filter(|node| !node.ignored)
            .filter_map(|node| {
                Some(Thing {
                    place: node.place?,
                    role: words(node.role),
                    name: words(node.name),
                })
            })
            .collect())
    }

    /// Hands an accessible thing from the DevTools protocol, which knows roles and names,
    /// to WebDriver, which presses and types.
    fn element(&self, thing: &Thing) -> Result<Element<'_>> {
        let resolved = self.cdp("DOM.resolveNode", json!({ "backendNodeId": thing.place }))?;
        self.cdp(
            "Runtime.callFunctionOn",
            json!({
                "objectId": resolved["object"]["objectId"],
                "functionDeclaration": "function () { window.foundByRole = this }",
            }),
        )?;
        let found = self.execute(
            "const found = window.foundByRole; delete window.foundByRole; return found",
            vec![],
        )?;
        let words = format!("{} \"{}\"", thing.role, thing.name);
        let id = found
            .as_object()
            .and_then(|reference| reference.values().next()?.as_str())
            .with_context(|| format!("the {words} is not an element of the page"))?;
        let element = fantoccini::elements::Element::from_element_id(
            self.client().clone(),
            ElementRef::from(id.to_owned()),
        );
        Ok(Element {
            browser: self,
            element,
            words,
        })
    }
}

impl Element<'_> {
    /// Presses it, and counts the press. Like a person, scrolls it clear of whatever
    /// sticks to the screen's edges first.
    ///
    /// # Errors
    /// If it cannot be pressed: it is covered, hidden or gone.
    pub fn click(&self) -> Result<()> {
        let itself = serde_json::to_value(&self.element).context("an element has no name")?;
        self.browser.execute(
            "arguments[0].scrollIntoView({ block: 'center' })",
            vec![itself],
        )?;
        self.browser
            .wait(self.element.click())
            .with_context(|| format!("cannot press the {}", self.words))?;
        self.browser.count_tap();
        Ok(())
    }

    /// Writes into a field, in place of what stood there.
    ///
    /// # Errors
    /// If it is not a field, or takes no text now.
    pub fn write(&self, text: &str) -> Result<()> {
        let failed = || format!("cannot write into the {}", self.words);
        self.browser
            .wait(self.element.clear())
            .with_context(failed)?;
        self.browser
            .wait(self.element.send_keys(text))
            .with_context(failed)?;
        self.browser.count_tap();
        Ok(())
    }

    /// Chooses from a list by the words of the choice.
    ///
    /// # Errors
    /// If it is not a list to choose from, or has no such choice.
    pub fn choose(&self, choice: &str) -> Result<()> {
        self.browser
            .wait(self.element.select_by_label(choice))
            .with_context(|| format!("cannot choose \"{choice}\" in the {}", self.words))
    }

    /// The text in it that can be seen.
    ///
    /// # Errors
    /// If it is gone from the page.
    pub fn text(&self) -> Result<String> {
        self.browser.wait(self.element.text())
    }

    /// What stands in a field now.
    ///
    /// # Errors
    /// If it is gone from the page.
    pub fn value(&self) -> Result<String> {
        Ok(self
            .browser
            .wait(self.element.prop("value"))?
            .unwrap_or_default())
    }

    /// One attribute as it stands in the page's HTML, if it has it.
    ///
    /// # Errors
    /// If it is gone from the page.
    pub fn attribute(&self, name: &str) -> Result<Option<String>> {
        self.browser.wait(self.element.attr(name))
    }
}

/// Something that a screen reader would say.
#[derive(Clone, Debug, PartialEq)]
struct Thing {
    /// Where it stands in the page, in the browser's own counting.
    place: u64,
    role: String,
    name: String,
}

fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The names in the wanted role, then everything in the roles that a person can use.
fn listed(things: &[Thing], role: &str) -> String {
    const USED: [&str; 12] = [
        "button",
        "link",
        "textbox",
        "searchbox",
        "spinbutton",
        "combobox",
        "checkbox",
        "radio",
        "switch",
        "tab",
        "heading",
        "listitem",
    ];
    let same: Vec<String> = things
        .iter()
        .filter(|thing| thing.role == role)
        .map(|thing| format!("\n  {} \"{}\"", thing.role, thing.name))
        .collect();
    if !same.is_empty() {
        return format!("in that role:{}", same.concat());
    }
    let other: BTreeSet<String> = things
        .iter()
        .filter(|thing| USED.contains(&thing.role.as_str()))
        .map(|thing| format!("\n  {} \"{}\"", thing.role, thing.name))
        .collect();
    let other: String = other.into_iter().collect();
    if other.is_empty() {
        return format!("no {role}, and nothing else to use");
    }
    format!("no {role} at all, but:{other}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thing(role: &str, name: &str) -> Thing {
        Thing {
            place: 1,
            role: role.to_owned(),
            name: name.to_owned(),
        }
    }

    #[test]
    fn a_name_is_compared_as_one_line() {
        assert_eq!(one_line("  Out\n as   shown "), "Out as shown");
    }

    #[test]
    fn the_list_gives_the_same_role_first() {
        let things = [thing("button", "Undo"), thing("link", "Floor")];
        assert_eq!(
            listed(&things, "button"),
            "in that role:\n  button \"Undo\""
        );
        assert_eq!(
            listed(&things, "checkbox"),
            "no checkbox at all, but:\n  button \"Undo\"\n  link \"Floor\""
        );
        assert_eq!(listed(&[], "button"), "no button, and nothing else to use");
    }
}
