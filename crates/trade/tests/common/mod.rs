//! Rows of the table of lines, and how a reading is held against them.

#![allow(dead_code, reason = "each test asks for a part")]

use std::collections::BTreeSet;
use trade::{Branch, Count, Gates, Said, Sure, Vocabulary, kind_code, says};

/// One row: a line and what it should be read as.
#[derive(Debug, Clone)]
pub struct Row {
    pub line: String,
    pub kinds: Vec<String>,
    pub count: String,
    pub sizes: Vec<String>,
    pub side: String,
    pub systems: Vec<String>,
    pub safety: Vec<bool>,
    pub owed: BTreeSet<String>,
    pub off: BTreeSet<String>,
    pub back: BTreeSet<String>,
    pub caution: BTreeSet<String>,
    /// Columns that the table has; of others nothing is asked.
    pub asks: BTreeSet<String>,
}

fn list(cell: &str, by: char) -> Vec<String> {
    cell.split(by)
        .map(str::trim)
        .filter(|word| !word.is_empty())
        .map(str::to_string)
        .collect()
}

fn set(cell: &str) -> BTreeSet<String> {
    list(cell, ';').into_iter().collect()
}

/// The rows of a table with a head line; columns are found by their names.
pub fn rows(text: &str) -> Vec<Row> {
    let mut lines = text.lines();
    let head: Vec<&str> = lines.next().unwrap_or_default().split('\t').collect();
    lines
        .filter(|line| !line.trim().is_empty())
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            let cell = |name: &str| {
                head.iter()
                    .position(|known| *known == name)
                    .and_then(|at| cells.get(at).copied())
                    .unwrap_or_default()
            };
            Row {
                line: cell("line").to_string(),
                kinds: list(cell("kind"), '+'),
                count: cell("count").to_string(),
                sizes: list(cell("size"), ';'),
                side: cell("side").to_string(),
                systems: list(cell("system"), '+'),
                safety: list(cell("safety"), '+')
                    .iter()
                    .map(|word| word == "yes")
                    .collect(),
                owed: set(cell("owed")),
                off: set(cell("shut_off")),
                back: set(cell("shut_back")),
                caution: set(cell("caution")),
                asks: head.iter().map(ToString::to_string).collect(),
            }
        })
        .collect()
}

/// How far a reading fits a row.
#[derive(Debug, Default, Clone)]
pub struct Fit {
    pub kind: bool,
    pub system: bool,
    pub safety: bool,
    /// Safety read as harmless.
    pub harmless: bool,
    pub owed_missing: Vec<String>,
    pub owed_more: Vec<String>,
    pub gates_missing: Vec<String>,
    pub gates_more: Vec<String>,
    pub count: bool,
    pub side: bool,
    pub size: bool,
    pub caution: bool,
    pub got: String,
}

impl Fit {
    pub fn lax(&self) -> bool {
        !self.owed_missing.is_empty() || !self.gates_missing.is_empty()
    }

    pub fn stricter(&self) -> bool {
        let more = !self.owed_more.is_empty() || !self.gates_more.is_empty();
        more && !self.lax()
    }
}

fn folded(code: &str) -> Option<states::System> {
    Branch::read(code).and_then(Branch::fold)
}

fn union(said: &[Said], of: impl Fn(&Said) -> Vec<String>) -> BTreeSet<String> {
    said.iter().flat_map(of).collect()
}

fn gates(of: Gates) -> Vec<String> {
    of.codes().into_iter().map(str::to_string).collect()
}

fn same<T: PartialEq + Clone>(wanted: &[T], got: &[T], equal: impl Fn(&T, &T) -> bool) -> bool {
    if wanted.len() == 1 {
        return !got.is_empty() && got.iter().all(|one| equal(&wanted[0], one));
    }
    wanted.len() == got.len() && wanted.iter().zip(got).all(|(a, b)| equal(a, b))
}

fn count_words(said: &[Said]) -> String {
    let words: Vec<String> = said
        .iter()
        .map(|said| match said.count {
            None => "-".to_string(),
            Some(Count::Set) => "set".to_string(),
            Some(Count::Of(count)) => count.to_string(),
        })
        .collect();
    words.join(" + ")
}

/// Holds the reading of a row's line against the row.
pub fn fit(row: &Row, vocabulary: &Vocabulary) -> Fit {
    let said = says(&row.line, vocabulary);
    let kinds: Vec<String> = said
        .iter()
        .map(|one| kind_code(one.kind).to_string())
        .collect();
    let systems: Vec<String> = said
        .iter()
        .map(|one| one.system.code().to_string())
        .collect();
    let safety: Vec<bool> = said.iter().map(|one| one.safety).collect();
    let owed = union(&said, |one| {
        one.owed_codes().iter().map(ToString::to_string).collect()
    });
    let off = union(&said, |one| gates(one.gates_shut_off));
    let back = union(&said, |one| gates(one.gates_shut_back));
    let caution = union(&said, |one| {
        one.caution.iter().map(ToString::to_string).collect()
    });
    let minus =
        |a: &BTreeSet<String>, b: &BTreeSet<String>| a.difference(b).cloned().collect::<Vec<_>>();
    let counts = count_words(&said);
    let dashed = counts.replace('-', "1");
    let count = row.count.is_empty()
        && said
            .iter()
            .all(|one| matches!(one.count, None | Some(Count::Of(1))))
        || counts == row.count
        || dashed == row.count
        || counts.split(" + ").all(|one| one == row.count);
    let sides: BTreeSet<&str> = said
        .iter()
        .filter_map(|one| one.side.map(trade::Side::code))
        .collect();
    let mut sizes: Vec<String> = said.iter().flat_map(|one| one.sizes.clone()).collect();
    sizes.extend(said.iter().filter_map(|one| one.torque_typed.clone()));
    sizes.dedup();
    let mut gates_missing = minus(&row.off, &off);
    gates_missing.extend(
        minus(&row.back, &back)
            .iter()
            .map(|gate| format!("back {gate}")),
    );
    let mut gates_more = minus(&off, &row.off);
    gates_more.extend(
        minus(&back, &row.back)
            .iter()
            .map(|gate| format!("back {gate}")),
    );
    let soft = |wanted: &String, got: &String| {
        wanted == got
            || (wanted == "seal" && (got == "cover" || got == "part") && row.line.contains("boot"))
    };
    let one_kind = row.kinds.len() == 1 && kinds.len() == 1 || row.kinds.len() > 1;
    Fit {
        kind: one_kind && same(&row.kinds, &kinds, soft),
        system: same(&row.systems, &systems, |a, b| {
            a == b || folded(a) == folded(b) && folded(a).is_some()
        }),
        safety: same(&row.safety, &safety, |a, b| a == b),
        harmless: row.safety.iter().any(|safe| *safe) && !safety.iter().any(|safe| *safe),
        owed_missing: minus(&row.owed, &owed),
        owed_more: minus(&owed, &row.owed),
        gates_missing,
        gates_more,
        count,
        side: sides
            == if row.side.is_empty() {
                BTreeSet::new()
            } else {
                [row.side.as_str()].into()
            },
        size: !row.asks.contains("size") || sizes == row.sizes,
        caution: !row.asks.contains("caution") || caution == row.caution,
        got: format!(
            "{} | {} | {} | {:?} | {:?} | sort {:?} {:?}",
            kinds.join("+"),
            counts,
            systems.join("+"),
            safety,
            sides,
            said.iter()
                .map(|one| one.sort.as_deref().unwrap_or("-"))
                .collect::<Vec<_>>(),
            said.iter().map(|one| one.sure.code()).collect::<Vec<_>>(),
        ),
    }
}

/// A component that a published list names, and what the trade says it is.
#[derive(Debug, Clone)]
pub struct Component {
    pub term: String,
    pub source: String,
    /// One of these: some lists leave open whether a cover or a part is meant.
    pub kinds: Vec<String>,
    pub systems: Vec<String>,
    pub safety: bool,
}

/// The rows of the table of components.
pub fn components(text: &str) -> Vec<Component> {
    text.lines()
        .skip(1)
        .filter(|line| !line.trim().is_empty())
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            let cell = |at: usize| cells.get(at).copied().unwrap_or_default();
            Component {
                term: cell(0).to_string(),
                source: cell(1).to_string(),
                kinds: list(cell(3), '/'),
                systems: list(cell(4), '/'),
                safety: cell(5) == "yes",
            }
        })
        .collect()
}

/// How a component was read.
#[derive(Debug, Clone)]
pub struct Known {
    /// The least sure of what was read from the term.
    pub sure: Sure,
    pub kind: bool,
    pub system: bool,
    pub safety: bool,
    /// Safety read as harmless.
    pub harmless: bool,
    pub got: String,
}

/// Holds the reading of a term against what it is.
pub fn known(component: &Component, vocabulary: &Vocabulary) -> Known {
    let said = says(&component.term, vocabulary);
    let all = |test: &dyn Fn(&Said) -> bool| !said.is_empty() && said.iter().all(test);
    // A clutch is three parts of one name.
    let one = said.iter().all(|one| one.place == said[0].place);
    Known {
        sure: said
            .iter()
            .map(|said| said.sure)
            .max()
            .unwrap_or(Sure::Unknown),
        kind: one
            && all(&|said| {
                component
                    .kinds
                    .iter()
                    .any(|kind| kind == kind_code(said.kind))
            }),
        system: all(&|said| {
            component.systems.iter().any(|system| {
                system == said.system.code()
                    || folded(system) == folded(said.system.code()) && folded(system).is_some()
            })
        }),
        safety: all(&|said| said.safety == component.safety),
        harmless: component.safety && !said.iter().any(|said| said.safety),
        got: said
            .iter()
            .map(|said| {
                format!(
                    "{} {} {} {} {}",
                    said.sort.as_deref().unwrap_or("-"),
                    kind_code(said.kind),
                    said.system.code(),
                    if said.safety { "safety" } else { "no safety" },
                    said.sure.code()
                )
            })
            .collect::<Vec<_>>()
            .join(" + "),
    }
}
