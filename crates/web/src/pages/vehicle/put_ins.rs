//! What goes into the vehicle with the step that uses it: a hose off puts a plug and a clamp
//! in. Each is an item of its own, with a name made on the device, and a tap if not used.

use crate::phrases::vehicle as say;
use crate::tap::{new, order_fact, when, words};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::ItemLine;
use shop::record::v1::codes::{PutInForm, SystemForm, ZoneForm};
use shop::repair::{Kind, PutIn, System, Zone};

/// One thing that goes in with a row.
pub struct With {
    /// The row it goes with.
    pub row: usize,
    name: String,
    what: PutIn,
    label: String,
    system: System,
    zone: Zone,
}

/// What goes in with these rows: into and onto each hose that held fluid, unless such a thing
/// was named already.
pub fn put_ins(lines: &[ItemLine]) -> Vec<With> {
    let named = |what: PutIn| lines.iter().any(|line| line.put_in == Some(what));
    let mut out = Vec::new();
    for (row, line) in lines.iter().enumerate() {
        if line.kind != Kind::Hose || !line.system.stops_without_fluid() {
            continue;
        }
        for (what, word) in [
            (PutIn::Plug, say::plug_in_the_hose()),
            (PutIn::Clamp, say::pinch_clamp()),
        ] {
            for nth in 1..=line.count.min(8) {
                if named(what) {
                    continue;
                }
                let which = if line.count > 1 {
                    format!(" {nth}")
                } else {
                    String::new()
                };
                out.push(With {
                    row,
                    name: format!("in-{}", out.len()),
                    what,
                    label: format!("{word}, {}{which}", line.label),
                    system: line.system,
                    zone: line.zone,
                });
            }
        }
    }
    out
}

impl With {
    /// Its row, ticked.
    pub fn shown(&self) -> Markup {
        html! {
            label class="row" {
                input type="checkbox" name=(self.name) value="yes" checked;
                span class="mark inside" {}
                span class="what" {
                    span class="strong line" { (shop::say::capital(&self.label)) }
                    span class="soft line" { (say::goes_in_counted()) }
                }
                span class="beside number" { "1" }
            }
        }
    }

    /// Said what it is.
    pub fn declared(&self, order: &str) -> Value {
        let item = json!({
            "id": new(&self.name), "kind": "put-in", "system": SystemForm::word(self.system),
            "zone": ZoneForm::word(self.zone), "label": words(&self.label), "size": null,
            "pieces": [{ "position": 1, "length": null }], "pattern": null, "spent": false,
            "may_miss": null, "put_in": PutInForm::word(self.what), "holds": null,
        });
        when(
            &self.name,
            order_fact(order, json!({ "declared": { "item": item } })),
        )
    }

    /// Put in.
    pub fn moved(&self) -> Value {
        when(
            &self.name,
            json!({ "item": new(&self.name), "at": [1], "after": [],
                "left": { "state": "inside", "piece": "original" }, "container": null }),
        )
    }
}

/// A typed line of several put-ins is so many lines: each is looked for by itself.
pub fn one_each(line: ItemLine) -> Vec<ItemLine> {
    if line.kind != Kind::PutIn || line.count < 2 {
        return vec![line];
    }
    (1..=line.count.min(8))
        .map(|nth| ItemLine {
            count: 1,
            label: format!("{} {nth}", line.label),
            ..line.clone()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(texts: &[&str]) -> Vec<String> {
        let lines: Vec<ItemLine> = texts.iter().map(|text| shop::item_line(text)).collect();
        put_ins(&lines).into_iter().map(|with| with.label).collect()
    }

    #[test]
    fn a_hose_that_held_fluid_gets_a_plug_and_a_clamp() {
        assert_eq!(
            labels(&["lower hose", "intake duct"]),
            ["plug, lower hose", "pinch clamp, lower hose"]
        );
        assert_eq!(labels(&["lower hose", "pinch clamp"]), ["plug, lower hose"]);
        assert_eq!(labels(&["6 tray screws", "rag"]), Vec::<String>::new());
    }

    #[test]
    fn two_clamps_are_two_things() {
        let two = one_each(shop::item_line("2 pinch clamps"));
        let said: Vec<_> = two
            .iter()
            .map(|line| (line.count, line.label.as_str()))
            .collect();
        assert_eq!(said, [(1, "pinch clamps 1"), (1, "pinch clamps 2")]);
    }
}
