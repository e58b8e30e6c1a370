//! How a quote was found, line by line, and what should be said beside it.

use crate::fit::Learned;
use crate::order::Order;
use crate::phrases as say;
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
        notes.push(say::nothing_learned().to_owned());
    }
    let unseen: BTreeSet<&str> = order
        .lines
        .iter()
        .map(|line| line.kind.as_str())
        .filter(|kind| history.stages > 0 && !history.knows_kind(kind))
        .collect();
    if !unseen.is_empty() {
        let kinds: Vec<&str> = unseen.into_iter().collect();
        notes.push(say::never_timed_here(kinds.join(", ")));
    }
    if order.condition.rust.is_none() {
        notes.push(say::rust_not_told().to_owned());
    }
    let left = learned.left_stages();
    if left.stages > 0 && left.stages * 4 > history.stages {
        notes.push(say::much_left_unfinished().to_owned());
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
    let mut working = Working::new(say::spread_of_hours_and_price())
        .line(
            Line::new(say::belief_before(), Source::given())
                .input(
                    say::usual(),
                    say::so_many_times_book(phrases::figures(&prior.usual.to_string())),
                )
                .input(say::counts_as(), say::so_many_jobs(prior.jobs))
                .input(
                    say::misses_by_a_factor(),
                    phrases::figures(&prior.factor.to_string()),
                )
                .input(
                    say::floor(),
                    say::so_much_of_book(phrases::figures(&prior.floor.to_string())),
                )
                .value(say::entered()),
        )
        .line(
            Line::new(say::minutes_of_a_stage(), regression())
                .formula(say::ln_minutes(), say::sum_of_effects())
                .input(say::past_stages(), learned.stages().to_string())
                .input(say::ways_of_weighing(), learned.points.len().to_string())
                .value(say::at_most_times_book(CAP)),
        );
    let left = learned.left_stages();
    if left.stages > 0 {
        working = working.line(
            Line::new(say::stages_left_early(), Source::derived())
                .formula("y", say::mean_beyond())
                .input(say::stages(), left.stages.to_string())
                .input(say::rounds(), left.rounds.to_string())
                .value(say::last_change(
                    format!("{:.1e}", left.change),
                    format!("{:.0}", 100.0 * left.missing_share),
                )),
        );
    }
    for line in &order.lines {
        let Some(pieces) = &line.pieces else { continue };
        let Ok(chance) = snags.chance(&pieces.joint, prior) else {
            continue;
        };
        working = working.line(
            Line::new(say::chance_a_piece(&line.what), beta_binomial())
                .formula("p", say::mean_and_counts())
                .input(
                    say::seen_of_this_sort(),
                    say::so_many_in(chance.snags, chance.pieces),
                )
                .value(phrases::figures(&format!("{:.2} %", 100.0 * chance.mean))),
        );
    }
    let (low, high) = quote.hours.eight_in_ten();
    working
        .line(
            Line::new(say::hours(), Source::derived())
                .formula(say::hours(), say::sum_drawn())
                .input(
                    say::book(),
                    phrases::figures(&format!("{:.2} h", quote.book_hours)),
                )
                .input(say::draws(), ask.draws.to_string())
                .input(say::seed(), ask.seed.to_string())
                .value(say::eight_of_ten(figure(low, 2), figure(high, 2))),
        )
        .limit(say::limit_sequence())
        .limit(say::limit_past())
}

fn figure(number: f64, digits: usize) -> String {
    phrases::figures(&format!("{number:.digits$}"))
}
