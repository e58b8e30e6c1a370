//! How long learning and quoting take: `cargo bench -p odds`. Beside it, in NumPy:
//! `python checks/data/odds/as_numpy.py`.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "it prints what it measured"
)]

use odds::{
    Ask, Condition, Done, Grid, History, Line, Order, Prior, Quote, Rule, SnagHistory, quote,
};
use std::time::{Duration, Instant};

/// The stages of one order of a shop with a dozen sorts of work and ten people.
fn job(at: u32) -> Vec<Done> {
    (0..20)
        .map(|stage| {
            let wave = f64::from((at * 31 + stage * 17) % 23) / 23.0;
            Done {
                kind: format!("kind {}", (at + stage * 5) % 12),
                person: Some(format!("person {}", at % 10)),
                condition: Condition {
                    age_years: Some(f64::from(at % 20)),
                    rust: Some(u8::try_from(at % 4).unwrap()),
                    opened_before: Some(at.is_multiple_of(5)),
                },
                book_minutes: 10.0,
                minutes: 10.0 * (0.6 + wave),
                left: false,
            }
        })
        .collect()
}

fn order() -> Order {
    Order {
        lines: (0..80)
            .map(|at| Line {
                what: format!("stage {at}"),
                kind: format!("kind {}", at % 12),
                person: Some("person 1".to_owned()),
                book_minutes: 5.0,
                times: 1,
                pieces: None,
            })
            .collect(),
        rule: Rule {
            rate: 120.0,
            ..Rule::default()
        },
        ..Order::default()
    }
}

fn timed<T>(what: &str, times: u32, mut run: impl FnMut() -> T) -> T {
    let mut best = Duration::MAX;
    let mut last = run();
    for _ in 0..times {
        let start = Instant::now();
        last = run();
        best = best.min(start.elapsed());
    }
    println!("{what}: {:.2} ms", best.as_secs_f64() * 1e3);
    last
}

fn main() {
    let learn = || {
        let mut history = History::new(Prior::default(), Grid::default()).unwrap();
        for at in 0..10_000 {
            history.learn(&format!("vehicle {at}"), &job(at)).unwrap();
        }
        history
    };
    let history = timed("10,000 orders of 20 stages learned", 1, learn);
    let mut more = history.clone();
    timed("one order more", 20, || {
        more.learn("one more", &job(7)).unwrap();
    });
    let learned = timed("what it says, worked out anew", 5, || {
        history.fit().unwrap()
    });
    for (threads, causes) in [(1, false), (2, false), (2, true)] {
        let ask = Ask {
            threads,
            causes,
            ..Ask::default()
        };
        let what = format!("80 stages, 100,000 draws, {threads} threads, causes {causes}");
        let found: Quote = timed(&what, 5, || {
            quote(&learned, &SnagHistory::default(), &order(), &ask).unwrap()
        });
        println!(
            "  p10 {:.4} p50 {:.4} p90 {:.4} h",
            found.hours.at(0.1),
            found.hours.at(0.5),
            found.hours.at(0.9)
        );
    }
    // The same that as_numpy.py draws: the belief before the first job, one sort of work.
    let fresh = History::new(
        Prior::default(),
        Grid {
            kind: vec![0.1],
            person: vec![0.1],
            condition: vec![0.1],
            vehicle: vec![0.3],
        },
    );
    let fresh = fresh.unwrap().fit().unwrap();
    let mut same = order();
    for line in &mut same.lines {
        line.kind = "kind 1".to_owned();
    }
    let ask = Ask {
        threads: 2,
        causes: false,
        ..Ask::default()
    };
    let found = timed("80 stages as in NumPy, 2 threads", 5, || {
        quote(&fresh, &SnagHistory::default(), &same, &ask).unwrap()
    });
    for (chance, value, error) in &found.hours.quantiles {
        println!("  {chance}: {value:.4} ± {error:.4} h");
    }
}
