//! How a quote was found, line by line, and what should be said beside it.

use crate::fit::Learned;
use crate::order::Order;
use crate::prepare::CAP;
use crate::quote::{Ask, Quote};
use crate::snags::SnagHistory;
use measure::{Grade, Line, Source, Working};
use std::collections::BTreeSet;

fn regression() -> Source {
    Source::new(
        "conjugate normal-inverse-gamma regression",
        "held against another implementation in checks/published/odds.toml",
        Grade::OtherImplementation,
    )
}

fn beta_binomial() -> Source {
    Source::new("beta-binomial model", "prior and counts", Grade::Derived)
}

pub(crate) fn notes(learned: &Learned, order: &Order) -> Vec<String> {
    let mut notes = Vec::new();
    let history = &learned.history;
    if history.stages == 0 {
        notes.push(
            "No past job was learned from: this is the entered book with a wide spread.".to_owned(),
        );
    }
    let unseen: BTreeSet<&str> = order
        .lines
        .iter()
        .map(|line| line.kind.as_str())
        .filter(|kind| history.stages > 0 && !history.knows_kind(kind))
        .collect();
    if !unseen.is_empty() {
        let kinds: Vec<&str> = unseen.into_iter().collect();
        notes.push(format!(
            "Nothing of this sort was timed here before: {}.",
            kinds.join(", ")
        ));
    }
    if order.condition.rust.is_none() {
        notes.push("Rust was not told: taken as 1, light.".to_owned());
    }
    let left = learned.left_stages();
    if left.stages > 0 && left.stages * 4 > history.stages {
        notes.push(
            "More than one past stage in four was left unfinished: the spread is a little narrow."
                .to_owned(),
        );
    }
    notes
}

pub(crate) fn working(
    learned: &Learned,
    snags: &SnagHistory,
    order: &Order,
    ask: &Ask,
    quote: &Quote,
) -> Working {
    let prior = &learned.history.prior;
    let mut working = Working::new("Spread of hours and price")
        .line(
            Line::new("belief before the first job", Source::given())
                .input("usual", format!("{} times book", prior.usual))
                .input("counts as", format!("{} jobs", prior.jobs))
                .input(
                    "a stage misses it by a factor of",
                    format!("{}", prior.factor),
                )
                .input("floor", format!("{} of book", prior.floor))
                .value("entered"),
        )
        .line(
            Line::new("minutes of a stage", regression())
                .formula(
                    "ln(minutes / book)",
                    "shop + kind + person + condition + vehicle + error",
                )
                .input("past stages", learned.stages().to_string())
                .input("ways of weighing", learned.points.len().to_string())
                .value(format!("at most {CAP} times book")),
        );
    let left = learned.left_stages();
    if left.stages > 0 {
        working = working.line(
            Line::new("stages left before they were done", Source::derived())
                .formula("y", "mean of what lies beyond, in rounds")
                .input("stages", left.stages.to_string())
                .input("rounds", left.rounds.to_string())
                .value(format!(
                    "last change {:.1e}; {:.0} % of what they would tell is missing",
                    left.change,
                    100.0 * left.missing_share
                )),
        );
    }
    for line in &order.lines {
        let Some(pieces) = &line.pieces else { continue };
        let Ok(chance) = snags.chance(&pieces.joint, prior) else {
            continue;
        };
        working = working.line(
            Line::new(
                format!("chance of a snag a piece: {}", line.what),
                beta_binomial(),
            )
            .formula("p", "(m s + snags) / (s + pieces), back to rust and shop")
            .input(
                "seen of this sort",
                format!("{} in {}", chance.snags, chance.pieces),
            )
            .value(format!("{:.2} %", 100.0 * chance.mean)),
        );
    }
    let (low, high) = quote.hours.eight_in_ten();
    working
        .line(
            Line::new("hours", Source::derived())
                .formula("hours", "sum of stages and snags, drawn and sorted")
                .input("book", format!("{:.2} h", quote.book_hours))
                .input("draws", ask.draws.to_string())
                .input("seed", ask.seed.to_string())
                .value(format!("{low:.2} to {high:.2} h, 8 of 10")),
        )
        .limit("Stages one after the other; a mean is that of the capped spread.")
        .limit("A range is as good as its past: the score of given quotes says how good that is.")
}
