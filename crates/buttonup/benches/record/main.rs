//! Figures of the record that need its inside: durable appends, folds, and a log of any
//! size to serve. `cargo xtask bench` runs this and writes `docs/bench.md`.
//!
//! `appends` and `folds FOLDER` print lines of JSON; `log FOLDER TO EVENTS` makes a log of
//! so many events out of the invented shop in `FOLDER`; `large TO FACTS...` makes a shop with
//! an order of so many facts each.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a measurement: it speaks to whoever runs it, and fails by panicking"
)]

mod appends;
mod folds;
mod large;
mod many;

use std::time::{Duration, Instant};

fn main() {
    let words: Vec<String> = std::env::args()
        .skip(1)
        // Cargo's own word for every benchmark.
        .filter(|word| word != "--bench")
        .collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words[..] {
        ["appends"] => appends::measure(),
        ["folds", shop] => folds::measure(shop.as_ref()),
        ["log", shop, to, events] => {
            many::write(shop.as_ref(), to.as_ref(), events.parse().unwrap());
        }
        ["large", to, ref facts @ ..] => {
            let facts: Vec<usize> = facts.iter().map(|facts| facts.parse().unwrap()).collect();
            large::write(to.as_ref(), &facts);
        }
        [] => println!("run `cargo xtask bench`"),
        _ => panic!("not understood: {words:?}"),
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, Duration) {
    let start = Instant::now();
    let answer = work();
    (answer, start.elapsed())
}

fn median(mut figures: Vec<f64>) -> f64 {
    figures.sort_by(f64::total_cmp);
    figures[figures.len() / 2]
}
