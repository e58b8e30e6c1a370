//! The open rows and the rows written before tuning, whole.

#![allow(
    clippy::print_stdout,
    reason = "a row that is not read as meant is told"
)]

mod common;

use common::{Fit, fit, rows};
use trade::Vocabulary;

fn report(name: &str, text: &str) -> Vec<Fit> {
    let mut fits = Vec::new();
    for row in rows(text) {
        let fit = fit(&row, Vocabulary::shipped());
        let wrong = !fit.kind || !fit.system || !fit.safety || fit.lax() || fit.stricter();
        let small = !fit.count || !fit.side || !fit.size || !fit.caution;
        if wrong || small {
            println!(
                "{name}: {} => {}{}{}{}{}{}{}{} owed -{:?} +{:?} gates -{:?} +{:?}",
                row.line,
                fit.got,
                if fit.kind { "" } else { " KIND" },
                if fit.system { "" } else { " SYSTEM" },
                if fit.safety { "" } else { " SAFETY" },
                if fit.count { "" } else { " count" },
                if fit.side { "" } else { " side" },
                if fit.size { "" } else { " size" },
                if fit.caution { "" } else { " caution" },
                fit.owed_missing,
                fit.owed_more,
                fit.gates_missing,
                fit.gates_more
            );
        }
        fits.push(fit);
    }
    fits
}

/// Source: checks/data/trade/open.tsv and held-out.tsv, with their own sources and grades.
fn holds(name: &str, text: &str) {
    let fits = report(name, text);
    let all = fits.len();
    let share = |test: &dyn Fn(&Fit) -> bool| {
        fits.iter().filter(|fit| test(fit)).count() as f64 / all as f64
    };
    let figures = [
        ("kind", share(&|fit| fit.kind)),
        ("system", share(&|fit| fit.system)),
        ("safety", share(&|fit| fit.safety)),
        ("owed and gates exact or stricter", share(&|fit| !fit.lax())),
    ];
    for (what, share) in figures {
        println!("{name}: {what} {:.1} % of {all}", share * 100.0);
    }
    println!(
        "{name}: stricter {:.1} %",
        share(&|fit| fit.stricter()) * 100.0
    );
    assert_eq!(
        fits.iter().filter(|fit| fit.harmless).count(),
        0,
        "safety read as harmless"
    );
    for (what, share) in figures {
        assert!(share >= 0.99, "{name}: {what}");
    }
    assert!(share(&|fit| fit.stricter()) <= 0.03, "{name}: stricter");
    assert!(
        share(&|fit| fit.count && fit.side && fit.size) >= 0.97,
        "{name}: count, side or size"
    );
}

#[test]
fn the_open_rows_are_read_as_meant() {
    holds("open", include_str!("../../../checks/data/trade/open.tsv"));
}

#[test]
fn the_rows_written_before_tuning_are_read_as_meant() {
    holds(
        "held-out",
        include_str!("../../../checks/data/trade/held-out.tsv"),
    );
}

/// Source: checks/data/trade/typed.tsv; only what each thing is, how many, and where.
#[test]
fn lines_as_typed_are_read_as_meant() {
    let text = include_str!("../../../checks/data/trade/typed.tsv");
    let mut wrong = Vec::new();
    for row in rows(text) {
        let fit = fit(&row, Vocabulary::shipped());
        if !(fit.kind && fit.system && fit.safety && fit.count && fit.side) {
            wrong.push(format!("{} => {}", row.line, fit.got));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
