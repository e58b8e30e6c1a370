//! The gates in small cases: what happened, the gate asked, and the reasons that shut
//! it. One row for every rule of the account and every false alarm it must not raise.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod account;
mod checks;
mod each_gate;
mod fluids;
mod goods;
mod leaving;
mod money;
mod owed;
mod papers;
mod proofs;
#[path = "../support/mod.rs"]
mod support;
mod things;
mod told;
mod trade;

use repair::*;
use std::collections::BTreeSet;
use support::*;

/// What the case is called, what happened, the gate, and the keys of the reasons on the
/// technician's list that shut it.
type Row = (&'static str, fn(&mut Job), Gate, &'static [&'static str]);

fn hold(rows: &[Row]) {
    let mut names = BTreeSet::new();
    for (name, steps, gate, expected) in rows {
        assert!(names.insert((name, gate)), "{name}: twice in the table");
        let mut job = Job::new();
        steps(&mut job);
        assert_eq!(job.shut(*gate), *expected, "{name}, {gate:?}");
        let may = job.answer(*gate).may();
        if *gate != Gate::HandOver {
            assert_eq!(may, expected.is_empty(), "{name}, {gate:?}");
        }
    }
}
