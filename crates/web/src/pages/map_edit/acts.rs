//! What a button of the editor does to the draft: each is a few changes of the text.

use super::Draft;
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
        last: fields
            .iter()
            .filter(|(name, _)| name.starts_with("new-"))
            .map(|(name, value)| (name.clone(), value.clone()))
            .collect(),
    };
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
            draft.said = "Yours comes after it. Keep it when it is as it should be.".to_owned();
            return draft;
        }
        ["add"] => added(&fields),
        ["set"] => set(&item, &fields, &mut draft),
        ["need"] => needed(&item, &fields),
        ["unneed", nth] => {
            let nth = nth.parse().unwrap_or(usize::MAX);
            (
                vec![Edit::Unneed { item, nth }],
                "It needs that no longer.".to_owned(),
            )
        }
        ["remove"] => {
            draft.item = None;
            let said = format!("Taken out: {item}");
            (vec![Edit::Remove { item }], said)
        }
        ["settle", first, second, how] => {
            let either_way = *how == "either";
            let said = if either_way {
                format!("{first} and {second}: either way")
            } else {
                format!("{first} comes off before {second}")
            };
            let (first, second) = ((*first).to_owned(), (*second).to_owned());
            (
                vec![Edit::Settle {
                    first,
                    second,
                    either_way,
                }],
                said,
            )
        }
        ["head"] => head(&fields),
        _ => (Vec::new(), String::new()),
    };
    carry_out(&mut draft, &edits, said);
    draft
}

fn carry_out(draft: &mut Draft, edits: &[Edit], said: String) {
    let mut text = draft.text.clone();
    for edit in edits {
        match apply(&text, edit) {
            Ok(changed) => text = changed,
            Err(_) => {
                draft.said = "Mend the text first: it cannot be read as it is.".to_owned();
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
    let text = text.replace(',', ".");
    match text.parse::<f64>() {
        Ok(_) => Some(text),
        Err(_) => words(&text),
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

fn added(fields: &Fields) -> (Vec<Edit>, String) {
    let name = value(fields, "new-name").to_owned();
    if name.is_empty() {
        return (Vec::new(), "Give it a name first.".to_owned());
    }
    let item = name.as_str();
    let is = value(fields, "new-is").to_owned();
    let count = value(fields, "new-count");
    let mut edits = vec![Edit::Item {
        item: name.clone(),
        is: is.clone(),
    }];
    if matches!(is.as_str(), "fasteners" | "clips") && !matches!(count, "" | "1") {
        edits.push(field(item, "count", number(count)));
    }
    let filled = [
        ("place", words(value(fields, "new-place"))),
        ("tools", list(value(fields, "new-tools"))),
        ("minutes.out", number(value(fields, "new-out"))),
        ("minutes.back", number(value(fields, "new-back"))),
    ];
    edits.extend(
        filled
            .into_iter()
            .filter(|(_, to)| to.is_some())
            .map(|(name, to)| field(item, name, to)),
    );
    edits.extend(need(
        item,
        value(fields, "new-first"),
        value(fields, "new-or"),
    ));
    (edits, format!("Added: {name}"))
}

fn need(item: &str, first: &str, or: &str) -> Option<Edit> {
    let any: Vec<String> = [first, or]
        .into_iter()
        .filter(|need| !need.is_empty())
        .map(str::to_owned)
        .collect();
    (!any.is_empty()).then(|| Edit::Need {
        item: item.to_owned(),
        any,
    })
}

fn needed(item: &str, fields: &Fields) -> (Vec<Edit>, String) {
    match need(item, value(fields, "first"), value(fields, "or")) {
        Some(edit) => (vec![edit], "It needs that first.".to_owned()),
        None => (Vec::new(), "Pick what it needs.".to_owned()),
    }
}

/// Every field of the open item. Only what differs from what was shown is written.
fn set(item: &str, fields: &Fields, draft: &mut Draft) -> (Vec<Edit>, String) {
    let mut edits = Vec::new();
    let changed = |name: &str| value(fields, name) != value(fields, &format!("was-{name}"));
    if changed("is") {
        edits.push(Edit::Item {
            item: item.to_owned(),
            is: value(fields, "is").to_owned(),
        });
    }
    let written: [(&str, &str, Writing); 15] = [
        ("count", "count", number),
        ("size", "size", words),
        ("length", "length", words),
        ("torque", "torque", list),
        ("pattern", "pattern", words),
        ("place", "place", words),
        ("tools", "tools", list),
        ("out", "minutes.out", number),
        ("back", "minutes.back", number),
        ("each-out", "minutes.each-out", number),
        ("each-back", "minutes.each-back", number),
        ("holds", "holds", words),
        ("system", "system", words),
        ("note", "note", words),
        ("due-after", "due-after", words),
    ];
    for (name, key, as_toml) in written {
        if changed(name) {
            let to = value(fields, name);
            edits.push(field(item, key, as_toml(to).filter(|_| !to.is_empty())));
        }
    }
    if changed("spent") {
        edits.push(field(
            item,
            "spent",
            (value(fields, "spent") == "yes").then(|| "true".to_owned()),
        ));
    }
    if changed("owes") {
        edits.extend(owes(item, value(fields, "owes"), &draft.text));
    }
    if !value(fields, "torque").is_empty()
        && (changed("torque") || changed("source") || changed("date"))
    {
        edits.extend(source(
            item,
            value(fields, "source"),
            value(fields, "date"),
            &draft.text,
        ));
    } else if changed("torque") {
        edits.push(field(item, "torque-from", None));
    }
    let to = value(fields, "name");
    if changed("name") && !to.is_empty() {
        edits.push(Edit::Rename {
            item: item.to_owned(),
            to: to.to_owned(),
        });
        draft.item = Some(to.to_owned());
    }
    let said = if edits.is_empty() {
        "Nothing changed."
    } else {
        "Changed."
    };
    (edits, said.to_owned())
}

/// The debts of an item; work that the map does not know yet becomes an item too.
fn owes(item: &str, to: &str, text: &str) -> Vec<Edit> {
    let known = |name: &str| shop::map::names(text).iter().any(|known| known == name);
    let work = to
        .split(',')
        .map(str::trim)
        .filter(|name| !name.is_empty() && !known(name));
    let mut edits: Vec<Edit> = work
        .map(|name| Edit::Item {
            item: name.to_owned(),
            is: "work".to_owned(),
        })
        .collect();
    edits.push(field(item, "owes", list(to)));
    edits
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

fn head(fields: &Fields) -> (Vec<Edit>, String) {
    let keys: [(&str, Writing); 4] = [
        ("vehicle", words),
        ("start", words),
        ("place-change", number),
        ("tool-change", number),
    ];
    let edits: Vec<Edit> = keys
        .into_iter()
        .filter(|(key, _)| value(fields, key) != value(fields, &format!("was-{key}")))
        .filter_map(|(key, as_toml)| {
            let value = as_toml(value(fields, key)).filter(|to| to != "\"\"")?;
            Some(Edit::Head {
                key: key.to_owned(),
                value,
            })
        })
        .collect();
    let said = if edits.is_empty() {
        "Nothing changed."
    } else {
        "Changed."
    };
    (edits, said.to_owned())
}
