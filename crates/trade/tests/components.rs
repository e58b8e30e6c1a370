//! Components that published lists name are read, and as what they are.

#![allow(
    clippy::print_stdout,
    reason = "a term that is not read as meant is told"
)]

mod common;

use common::{Component, components, known};
use std::collections::BTreeSet;
use trade::{Sure, Vocabulary};

const TABLE: &str = include_str!("../../../checks/data/trade/components.tsv");

/// Terms that are left unread, and why. They shut every gate until someone says what they are.
const NOT_READ: [(&str, &str); 1] = [(
    "converters",
    "alone it may be of torque, of exhaust or of high voltage: nobody should guess",
)];

fn table() -> Vec<Component> {
    let table = components(TABLE);
    assert!(table.len() >= 250, "{} terms", table.len());
    table
}

#[test]
fn the_table_is_whole() {
    let table = table();
    let terms: BTreeSet<String> = table
        .iter()
        .map(|component| component.term.to_lowercase())
        .collect();
    assert_eq!(terms.len(), table.len(), "a term stands there twice");
    let sources: BTreeSet<&str> = table
        .iter()
        .map(|component| component.source.as_str())
        .collect();
    assert!(sources.len() >= 4, "{sources:?}");
    for component in &table {
        assert!(
            !component.kinds.is_empty() && !component.systems.is_empty(),
            "{component:?}"
        );
    }
}

/// Source: checks/data/trade/components.tsv, each term with its own.
#[test]
fn every_component_is_read_or_told_why_not() {
    let unread: Vec<String> = table()
        .iter()
        .filter(|component| known(component, Vocabulary::shipped()).sure == Sure::Unknown)
        .map(|component| component.term.clone())
        .collect();
    let told: Vec<&str> = NOT_READ.iter().map(|(term, _)| *term).collect();
    let more: Vec<_> = unread
        .iter()
        .filter(|term| !told.contains(&term.as_str()))
        .collect();
    assert!(more.is_empty(), "not read: {more:?}");
    let read: Vec<_> = told
        .iter()
        .filter(|term| !unread.iter().any(|unread| unread == *term))
        .collect();
    assert!(read.is_empty(), "read, and told as not read: {read:?}");
}

#[test]
fn components_are_read_as_what_they_are() {
    let table = table();
    let (mut kind, mut system, mut safety) = (0, 0, 0);
    let mut harmless = Vec::new();
    for component in &table {
        let known = known(component, Vocabulary::shipped());
        if !(known.kind && known.system && known.safety) {
            println!("{}: {}", component.term, known.got);
        }
        kind += usize::from(known.kind);
        system += usize::from(known.system);
        safety += usize::from(known.safety);
        if known.harmless {
            harmless.push(component.term.clone());
        }
    }
    assert!(harmless.is_empty(), "safety read as harmless: {harmless:?}");
    for (what, right) in [("kind", kind), ("system", system), ("safety", safety)] {
        println!("{what}: {right} of {}", table.len());
        assert!(right * 100 >= table.len() * 99, "{what}: {right}");
    }
}
