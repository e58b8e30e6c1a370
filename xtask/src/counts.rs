//! How many tests passed and failed, read from what `cargo test` prints.

use std::fmt;
use std::ops::AddAssign;

/// Tests passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Tests that passed.
    pub passed: u64,
    /// Tests that failed.
    pub failed: u64,
}

impl Counts {
    /// The counts in a line such as `test result: ok. 3 passed; 0 failed; ...`, if it is one.
    pub fn in_line(line: &str) -> Option<Counts> {
        let (_, rest) = line.split_once("test result: ")?;
        let (_, rest) = rest.split_once(". ")?;
        let mut parts = rest.split("; ");
        Some(Counts {
            passed: parts.next()?.strip_suffix(" passed")?.parse().ok()?,
            failed: parts.next()?.strip_suffix(" failed")?.parse().ok()?,
        })
    }
}

impl AddAssign for Counts {
    fn add_assign(&mut self, other: Counts) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

impl fmt::Display for Counts {
    fn fmt(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(form, "{} passed, {} failed", self.passed, self.failed)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_closing_line_of_a_test_program_is_counted() {
        let ok = "test result: ok. 16 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s";
        let bad = "test result: FAILED. 2 passed; 3 failed; 0 ignored; 0 measured; 0 filtered out; finished in 1.20s";
        let mut total = Counts::default();
        for line in [ok, bad] {
            total += Counts::in_line(line).unwrap();
        }
        assert_eq!(
            total,
            Counts {
                passed: 18,
                failed: 3
            }
        );
        assert_eq!(total.to_string(), "18 passed, 3 failed");
    }

    #[test]
    fn other_lines_are_not_counted() {
        for line in [
            "running 16 tests",
            "test counts::tests::a ... ok",
            "test result: ",
            "",
        ] {
            assert_eq!(Counts::in_line(line), None, "{line}");
        }
    }
}
