//! Needs as they are written: `"belt on"`, `"housing bolts 3, 6 out"`, and
//! `{ any = ["shroud off", ["wheel off", "liner off"]] }`.

use crate::phrases as say;
use crate::trouble::{Span, Troubles, nearest};
use crate::words::{STATES, states, words_of};
use states::{ItemId, Kind, Need, Position};
use std::collections::BTreeMap;
use toml_edit::{Item, Value};

/// Kind and count of each item, which say how a need is to be read.
pub(crate) type Known = BTreeMap<String, (Kind, Position)>;

/// Reads what stands under a key for needs: a text, a list, or an `any`.
pub(crate) fn read(item: &Item, known: &Known, troubles: &mut Troubles) -> Need {
    match item.as_value() {
        Some(value) => read_value(value, known, troubles),
        None => match item.as_table_like().and_then(|table| table.get("any")) {
            Some(any) if item.as_table_like().is_some_and(|table| table.len() == 1) => {
                any_of(any.as_value(), &item.span(), known, troubles)
            }
            _ => not_a_need(&item.span(), troubles),
        },
    }
}

fn read_value(value: &Value, known: &Known, troubles: &mut Troubles) -> Need {
    match value {
        Value::String(text) => point(text.value(), &value.span(), known, troubles),
        Value::Array(list) => Need::All(
            list.iter()
                .map(|value| read_value(value, known, troubles))
                .collect(),
        ),
        Value::InlineTable(table) if table.len() == 1 && table.contains_key("any") => {
            any_of(table.get("any"), &value.span(), known, troubles)
        }
        other => not_a_need(&other.span(), troubles),
    }
}

fn any_of(value: Option<&Value>, span: &Span, known: &Known, troubles: &mut Troubles) -> Need {
    match value {
        Some(Value::Array(list)) if !list.is_empty() => Need::Any(
            list.iter()
                .map(|value| read_value(value, known, troubles))
                .collect(),
        ),
        Some(Value::Array(_)) => {
            troubles.error(span, say::any_names_no_way(), say::write_two_ways());
            Need::All(Vec::new())
        }
        _ => not_a_need(span, troubles),
    }
}

fn not_a_need(span: &Span, troubles: &mut Troubles) -> Need {
    troubles.error(span, say::no_need(), say::write_a_need());
    Need::All(Vec::new())
}

fn point(text: &str, span: &Span, known: &Known, troubles: &mut Troubles) -> Need {
    let state = STATES.into_iter().find(|state| {
        text.strip_suffix(state)
            .is_some_and(|before| before.ends_with(' '))
    });
    let Some(state) = state else {
        return without_state(text, span, known, troubles);
    };
    let named = text[..text.len() - state.len()].trim();
    let Some((name, at)) = name_and_positions(named, known) else {
        let names = known.keys().map(String::as_str);
        let mend = troubles.meant(named, names, say::add_or_correct());
        troubles.error(span, say::no_such_item(named), mend);
        return Need::All(Vec::new());
    };
    let (kind, count) = known[name];
    if let Some(beyond) = at.iter().find(|at| !(1..=count).contains(*at)) {
        let mend = say::positions_to(count);
        troubles.error(span, say::has_no_position(name, beyond), mend);
    }
    let Some(states) = states(kind, state) else {
        let mend = say::write_one_of(words_of(kind).join(", "));
        troubles.error(span, say::is_never(name, state), mend);
        return Need::All(Vec::new());
    };
    Need::Is {
        item: ItemId::new(name),
        at,
        states,
    }
}

/// A need that does not end in a state: what it may have been meant to say.
fn without_state(text: &str, span: &Span, known: &Known, troubles: &mut Troubles) -> Need {
    if text.trim().is_empty() {
        troubles.error(span, say::empty_need(), say::write_such_as_belt_off());
        return Need::All(Vec::new());
    }
    let (before, last) = text.rsplit_once(' ').unwrap_or((text, ""));
    let named = |name: &str| name_and_positions(name.trim(), known).map(|(name, _)| known[name].0);
    let all = || say::end_in_one_of(STATES.join(", "));
    let mend = match (named(text), named(before)) {
        (Some(kind), _) => say::write_one_of(whole(text, kind)),
        (None, Some(kind)) => match nearest(last, words_of(kind)) {
            Some(near) => say::did_you_mean(format!("{before} {near}")),
            None => say::write_one_of(whole(before, kind)),
        },
        (None, None) => all(),
    };
    troubles.error(span, say::names_no_state(text), mend);
    Need::All(Vec::new())
}

/// A name with each state it may stand in.
fn whole(name: &str, kind: Kind) -> String {
    let with = |state| format!("`{} {state}`", name.trim());
    words_of(kind)
        .into_iter()
        .map(with)
        .collect::<Vec<_>>()
        .join(", ")
}

/// The item, and the positions written after its name.
fn name_and_positions<'k>(named: &str, known: &'k Known) -> Option<(&'k str, Vec<Position>)> {
    let mut at = Vec::new();
    let mut name = named;
    loop {
        if let Some((known, _)) = known.get_key_value(name) {
            at.reverse();
            return Some((known, at));
        }
        let (before, last) = name.rsplit_once([' ', ','])?;
        if !last.is_empty() {
            at.push(last.parse().ok()?);
        }
        name = before.trim_end_matches([' ', ',']);
    }
}
