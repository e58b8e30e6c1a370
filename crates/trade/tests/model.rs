//! What opening owes and which gates stay shut, held against a plain model.
//!
//! The model knows nothing of the crate's tables: it reads the fixed list of works and the laws
//! from checks/data/trade/facts.md, and each thing's works and gates from checks/data/trade/open.tsv
//! (grades and sources stand there). It then asks of any few of those things, each off or back,
//! with any works done, what the rules say of them together.

mod common;

use common::{Row, fit, rows};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use trade::{Gates, Stands, Thing, Vocabulary, may};

type Set = BTreeSet<String>;

/// "Laws that hold (a shut gate shuts the next)" of facts.md.
fn closed(gates: &Set) -> Set {
    let laws = [
        ("live", "start"),
        ("start", "road"),
        ("lower", "roll"),
        ("roll", "road"),
        ("road", "hand"),
    ];
    let mut all = gates.clone();
    for _ in 0..laws.len() {
        for (shut, next) in laws {
            if all.contains(shut) {
                all.insert(next.to_string());
            }
        }
    }
    all
}

/// The fixed list: each work and the first gate it shuts; none where it prints only.
fn first_gates() -> BTreeMap<String, Option<String>> {
    let text = include_str!("../../../checks/data/trade/facts.md");
    let from = text.find("## Owed").expect("the list is in the file");
    let to = text.find("## Cautions").expect("the list ends");
    let mut out = BTreeMap::new();
    for part in text[from..to].split('`').collect::<Vec<_>>().windows(2) {
        if let Some(gate) = part[1].strip_prefix(" [") {
            let gate = gate.split(']').next().unwrap_or_default();
            out.insert(part[0].to_string(), (gate != "-").then(|| gate.to_string()));
        }
    }
    out
}

/// What the model says of things that are off or back, after works were done.
fn model(
    things: &[(Row, bool)],
    done: &Set,
    first: &BTreeMap<String, Option<String>>,
) -> (Set, Set) {
    let mut shut = Set::new();
    let mut owed = Set::new();
    for (row, off) in things {
        if *off {
            shut.extend(row.off.iter().cloned());
            owed.extend(row.owed.iter().cloned());
            continue;
        }
        let left: Set = row.owed.difference(done).cloned().collect();
        if left == row.owed {
            shut.extend(row.back.iter().cloned());
        } else {
            let gates: Set = left
                .iter()
                .filter_map(|work| first.get(work).cloned().flatten())
                .collect();
            shut.extend(closed(&gates));
        }
        owed.extend(left);
    }
    (shut, owed)
}

#[test]
fn the_list_of_works_is_the_fixed_list() {
    let first = first_gates();
    let vocabulary = Vocabulary::shipped();
    assert_eq!(first.len(), vocabulary.works().len());
    for work in vocabulary.works() {
        let gate = work.shuts.map(|gate| Gates::code(gate).to_string());
        assert_eq!(first.get(&*work.code), Some(&gate), "{}", work.code);
    }
}

#[test]
fn the_laws_are_the_laws_of_the_file() {
    for gate in Gates::ALL.iter() {
        let one: Set = [Gates::code(gate).to_string()].into();
        let got: Set = Gates::NONE
            .with(gate)
            .codes()
            .into_iter()
            .map(str::to_string)
            .collect();
        assert_eq!(got, closed(&one), "{gate:?}");
    }
}

/// Rows of one plain thing that are read exactly, so that the model and the crate speak of the
/// same: put-ins and works stand in other columns, a line that says "torqued" says what was done.
fn plain_rows() -> Vec<Row> {
    rows(include_str!("../../../checks/data/trade/open.tsv"))
        .into_iter()
        .filter(|row| {
            row.kinds.len() == 1 && !["none", "work", "put-in"].contains(&row.kinds[0].as_str())
        })
        .filter(|row| {
            !row.line.contains("new ")
                && !row.line.contains("caliper")
                && row.line != "wheel hub OSR, 4 bolts M12"
        })
        .filter(|row| {
            let fit = fit(row, Vocabulary::shipped());
            !fit.lax() && !fit.stricter() && fit.kind
        })
        .collect()
}

/// Nuts that are named meet what a wheel asks; a filter brings its seal; a thing alone may be read
/// by its neighbours. The model knows none of these, so it is asked where they do not meet.
fn apart(things: &[(Row, bool)]) -> bool {
    let has = |word: &str| {
        things
            .iter()
            .any(|(row, _)| row.line.to_lowercase().contains(word))
    };
    !(has("nut") || has("bolt") || has("mutter") || has("oil filter") || has("screw"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_vehicle_may_do_what_the_model_says(
        picks in prop::collection::vec((0usize..1000, any::<bool>()), 1..5),
        done in prop::collection::vec(0usize..67, 0..8),
    ) {
        thread_local! {
            static ROWS: Vec<Row> = plain_rows();
            static FIRST: BTreeMap<String, Option<String>> = first_gates();
        }
        let rows = ROWS.with(Clone::clone);
        let first = FIRST.with(Clone::clone);
        prop_assert!(rows.len() > 200);
        let things: Vec<(Row, bool)> = picks.iter().map(|(at, off)| (rows[at % rows.len()].clone(), *off)).collect();
        prop_assume!(apart(&things));
        let done: Set = done.iter().map(|at| Vocabulary::shipped().works()[at % first.len()].code.to_string()).collect();
        let (shut, owed) = model(&things, &done, &first);
        let asked: Vec<Thing> = things
            .iter()
            .map(|(row, off)| Thing { line: row.line.clone(), stands: if *off { Stands::Off } else { Stands::Back } })
            .collect();
        let answer = may(&asked, &done.iter().cloned().collect::<Vec<_>>(), Vocabulary::shipped());
        let got_shut: Set = answer.shut.codes().into_iter().map(str::to_string).collect();
        let got_owed: Set = answer.owed.iter().map(ToString::to_string).collect();
        let lines: Vec<_> = things.iter().map(|(row, off)| (row.line.clone(), *off)).collect();
        // What is stricter for a thing (a lamp switch shuts road) stays so while part is done.
        prop_assert!(shut.is_subset(&got_shut), "{lines:?} {done:?}: {got_shut:?} wanted {shut:?}");
        let lamp_or_clutch = lines.iter().any(|(line, _)| line.contains("switch") || line.contains("clutch") || line.contains("flywheel"));
        prop_assert!(lamp_or_clutch || got_shut == shut, "{lines:?} {done:?}: {got_shut:?} wanted {shut:?}");
        prop_assert_eq!(&got_owed, &owed, "{:?} {:?}", lines, done);
    }
}
