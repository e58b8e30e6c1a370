//! What a button of the editor does to the draft: each is a few changes of the text.

use super::Draft;
use crate::phrases::maps as say;
use shop::map::{Edit, apply, listed, quoted};
use std::collections::BTreeMap;

type Fields = BTreeMap<String, String>;
/// How what was typed is written as TOML; nothing if nothing was.
type Writing = fn(&str) -> Option<String>;

/// The draft that the page sent, with what its button asks for done to it.
pub fn done(id: String, fields: Fields) -> Draft {
    let text = |name: &str| fields.get(name).map(String::as_str).unwrap_or_default();
    let act: Vec<String> = serde_json::from_str(text("act")).unwrap_or_default();
    let act: Vec<&str> = act.iter().map(String::as_str).collect();
    let mut draft = Draft {
        id: if id.is_empty() {
            text("map").to_owned()
        } else {
            id
        },
        base: text("base").parse().unwrap_or_default(),
        // A page sends lines ended as for mail.
        text: text("text").replace("\r\n", "\n"),
        item: Some(text("item").to_owned()).filter(|item| !item.is_empty()),
        said: String::new(),
        touched: true,
        onto: None,
        last: fields
            .iter()
            .filter(|(name, _)| name.starts_with("new-"))
            .map(|(name, value)| (name.clone(), value.clone()))
            .collect(),
    };
    // Whatever the button: what was typed into the fields is not lost by it.
    let typed = match (&draft.item, act.as_slice()) {
        (_, ["remove"]) => Vec::new(),
        (Some(item), _) => set(&item.clone(), &fields, &mut draft),
        (None, _) => head(&fields),
    };
    let changed = !typed.is_empty();
    if changed {
        carry_out(&mut draft, &typed, say::changed().to_owned());
    }
    let item = draft.item.clone().unwrap_or_default();
    let (edits, said) = match act.as_slice() {
        ["open", name] => {
            draft.item = Some((*name).to_owned());
            return draft;
        }
        ["close"] => {
            draft.item = None;
            return draft;
        }
        ["onto", version] => {
            draft.base = version.parse().unwrap_or(draft.base);
            draft.said = say::yours_comes_after().to_owned();
            return draft;
        }
        ["both", version] => {
            draft.onto = version.parse().ok();
            return draft;
        }
        ["add"] => added(&fields),
        ["enter"] if draft.item.is_none() && !value(&fields, "new-name").is_empty() => {
            added(&fields)
        }
        ["need"] => (Vec::new(), say::pick_what_it_needs().to_owned()),
        ["unneed", at, nth] => {
            let (at, nth) = ((*at).to_owned(), nth.parse().unwrap_or(usize::MAX));
            let said = say::needs_that_no_longer().to_owned();
            (vec![Edit::Unneed { item, at, nth }], said)
        }
        ["remove"] => {
            draft.item = None;
            let said = say::taken_out_item(&item);
            (vec![Edit::Remove { item }], said)
        }
        ["crack"] => (
            vec![Edit::Crack { item }],
            say::cracked_first_then_out().to_owned(),
        ),
        ["whole"] => (vec![Edit::Whole { item }], say::out_in_one_go().to_owned()),
        ["mirror"] => {
            let made = shop::map::one_sided(&draft.text).len();
            let said = say::made_for_other_side(made);
            (vec![Edit::Mirror], said)
        }
        ["settle", first, second, how] => settled(first, second, *how == "either"),
        _ => (Vec::new(), say::nothing_changed().to_owned()),
    };
    if edits.is_empty() && changed {
        return draft;
    }
    // What was typed for a new item stays until there is one.
    if edits.iter().any(|edit| matches!(edit, Edit::Item { .. })) {
        for name in [
            "new-name",
            "new-count",
            "new-minutes.out",
            "new-minutes.back",
            "new-first",
            "new-or",
        ] {
            draft.last.remove(name);
        }
    }
    carry_out(&mut draft, &edits, said);
    draft
}

fn settled(first: &str, second: &str, either_way: bool) -> (Vec<Edit>, String) {
    let said = match either_way {
        true => say::either_way_of(first, second),
        false => say::comes_off_before(first, second),
    };
    let (first, second) = (first.to_owned(), second.to_owned());
    let edit = Edit::Settle {
        first,
        second,
        either_way,
    };
    (vec![edit], said)
}

fn carry_out(draft: &mut Draft, edits: &[Edit], said: String) {
    let mut text = draft.text.clone();
    for edit in edits {
        match apply(&text, edit) {
            Ok(changed) => text = changed,
            Err(_) => {
                draft.said = say::mend_the_text_first().to_owned();
                return;
            }
        }
    }
    draft.text = text;
    draft.said = said;
}

fn value<'f>(fields: &'f Fields, name: &str) -> &'f str {
    fields
        .get(name)
        .map(|value| value.trim())
        .unwrap_or_default()
}

fn field(item: &str, name: &str, to: Option<String>) -> Edit {
    Edit::Field {
        item: item.to_owned(),
        field: name.to_owned(),
        value: to,
    }
}

/// Text in quotes; nothing if there is none.
fn words(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| quoted(text))
}

/// A number as it is; what is none stays as text, for the check to say so.
fn number(text: &str) -> Option<String> {
    let plain = text.replace(',', ".");
    match plain.parse::<f64>() {
        Ok(number) if number.is_finite() => Some(number.to_string()),
        _ => words(text),
    }
}

/// What stands between commas.
fn list(text: &str) -> Option<String> {
    let parts: Vec<&str> = text
        .split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .collect();
    (!parts.is_empty()).then(|| listed(&parts))
}

/// Whole numbers, as they are found in what was typed.
fn positions(text: &str) -> Option<String> {
    let parts = text
        .split([',', ' '])
        .map(str::trim)
        .filter(|part| !part.is_empty());
    let parts: Vec<String> = parts
        .map(|part| match part.parse::<u16>() {
            Ok(at) => at.to_string(),
            Err(_) => quoted(part),
        })
        .collect();
    (!parts.is_empty()).then(|| format!("[{}]", parts.join(", ")))
}

fn yes(text: &str) -> Option<String> {
    (text == "true").then(|| "true".to_owned())
}

/// How what is typed into a field is written, by the last part of its key.
fn writing(key: &str) -> Writing {
    match key.rsplit('.').next().unwrap_or(key) {
        "count" | "out" | "back" | "each-out" | "each-back" | "lost" | "risk" | "up-to" => number,
        "torque" | "tools" | "owes" | "renews" | "only-with" => list,
        "never-at" => positions,
        "spent" | "by-itself" => yes,
        _ => words,
    }
}

fn added(fields: &Fields) -> (Vec<Edit>, String) {
    let name = value(fields, "new-name").to_owned();
    if name.is_empty() {
        return (Vec::new(), say::name_first().to_owned());
    }
    let item = name.as_str();
    let text = fields.get("text").map(String::as_str).unwrap_or_default();
    if shop::map::names(text).contains(&name) {
        let said = say::there_already(&name);
        return (Vec::new(), said);
    }
    let is = value(fields, "new-is").to_owned();
    let counted = matches!(is.as_str(), "fasteners" | "clips");
    let mut edits = vec![Edit::Item {
        item: name.clone(),
        is,
    }];
    for key in ["count", "place", "tools", "minutes.out", "minutes.back"] {
        let to = value(fields, &format!("new-{key}"));
        if !to.is_empty() && (counted || key != "count" || to != "1") {
            edits.push(field(item, key, writing(key)(to)));
        }
    }
    edits.extend(need(
        item,
        "needs",
        value(fields, "new-first"),
        value(fields, "new-or"),
    ));
    (edits, say::added(&name))
}

fn need(item: &str, at: &str, first: &str, or: &str) -> Option<Edit> {
    let any: Vec<String> = [first, or]
        .into_iter()
        .filter(|need| !need.is_empty())
        .map(str::to_owned)
        .collect();
    (!any.is_empty()).then(|| Edit::Need {
        item: item.to_owned(),
        at: at.to_owned(),
        any,
    })
}

/// Every field of the open item. Only what differs from what was shown is written.
fn set(item: &str, fields: &Fields, draft: &mut Draft) -> Vec<Edit> {
    let changed = |name: &str| value(fields, name) != value(fields, &format!("was-{name}"));
    let own = [
        "name",
        "is",
        "source",
        "date",
        "vehicle",
        "start",
        "place-change",
        "tool-change",
        "variants",
    ];
    let shown = fields.keys().filter_map(|name| name.strip_prefix("was-"));
    let (only, shown): (Vec<&str>, Vec<&str>) = shown
        .filter(|key| !own.contains(key))
        .partition(|key| key.starts_with("only:"));
    let mut edits = Vec::new();
    if changed("is") {
        edits.push(Edit::Item {
            item: item.to_owned(),
            is: value(fields, "is").to_owned(),
        });
    }
    for key in shown.into_iter().filter(|key| changed(key)) {
        let to = value(fields, key);
        if key.ends_with("owes") {
            edits.extend(new_work(to, &draft.text));
        }
        edits.push(field(
            item,
            key,
            writing(key)(to).filter(|_| !to.is_empty()),
        ));
    }
    if only.iter().any(|name| changed(name)) {
        let chosen: Vec<&str> = only
            .into_iter()
            .filter(|name| value(fields, name) == "true")
            .filter_map(|name| name.strip_prefix("only:"))
            .collect();
        let to = (!chosen.is_empty()).then(|| listed(&chosen));
        edits.push(field(item, "only-with", to));
    }
    let torque = value(fields, "torque");
    if !torque.is_empty() && (changed("torque") || changed("source") || changed("date")) {
        let (title, date) = (value(fields, "source"), value(fields, "date"));
        edits.extend(source(item, title, date, &draft.text));
    } else if changed("torque") {
        edits.push(field(item, "torque-from", None));
    }
    for key in fields.keys().filter_map(|name| name.strip_prefix("first:")) {
        let (first, or) = (format!("first:{key}"), format!("or:{key}"));
        edits.extend(need(item, key, value(fields, &first), value(fields, &or)));
    }
    let to = value(fields, "name");
    if changed("name") && !to.is_empty() {
        edits.push(Edit::Rename {
            item: item.to_owned(),
            to: to.to_owned(),
        });
        if !shop::map::names(&draft.text).iter().any(|name| name == to) {
            draft.item = Some(to.to_owned());
        }
    }
    edits
}

/// Work that the map does not know yet becomes an item too.
fn new_work(to: &str, text: &str) -> Vec<Edit> {
    let known = shop::map::names(text);
    let work = to.split(',').map(str::trim);
    let new = work.filter(|name| !name.is_empty() && !known.iter().any(|known| known == name));
    new.map(|name| Edit::Item {
        item: name.to_owned(),
        is: "work".to_owned(),
    })
    .collect()
}

/// Names the source of a torque: the one that says the same already, else a new one.
fn source(item: &str, title: &str, date: &str, text: &str) -> Vec<Edit> {
    if title.is_empty() {
        return Vec::new();
    }
    let known = shop::map::sources(text);
    let same = known
        .iter()
        .find(|(_, source)| source.title == title && source.date == date);
    let name = same.map_or_else(
        || {
            (1..)
                .map(|nth| format!("source-{nth}"))
                .find(|name| !known.contains_key(name))
                .unwrap_or_default()
        },
        |(name, _)| name.clone(),
    );
    vec![
        Edit::Source {
            name: name.clone(),
            title: title.to_owned(),
            date: date.to_owned(),
        },
        field(item, "torque-from", words(&name)),
    ]
}

/// What stands at the head of the map.
fn head(fields: &Fields) -> Vec<Edit> {
    let keys: [(&str, Writing); 5] = [
        ("vehicle", words),
        ("start", words),
        ("place-change", number),
        ("tool-change", number),
        ("variants", list),
    ];
    keys.into_iter()
        .filter(|(key, _)| value(fields, key) != value(fields, &format!("was-{key}")))
        .map(|(key, as_toml)| Edit::Head {
            key: key.to_owned(),
            value: Some(value(fields, key))
                .filter(|to| !to.is_empty())
                .and_then(as_toml),
        })
        .collect()
}
