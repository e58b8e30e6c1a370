//! `checks/published/vin.toml` against the whole inspection.

use checks::{Row, published};

#[test]
fn inspection() {
    for row in published("vin").rows("inspection") {
        let found = vin::inspect(row.text("vin"));
        assert!(found.well_formed && found.check_digit_applies, "{row}");
        assert_eq!(found.valid, row.flag("valid"), "{row}");
        let expected = row.text("expected_check_digit").chars().next();
        assert_eq!(found.expected_check_digit, expected, "{row}");
    }
}

/// Each year code under each character of position 7 names the year that the
/// tables give.
#[test]
fn model_year() {
    let file = published("vin");
    assert_eq!(file.rows("cycle").len(), 2);
    for cycle in file.rows("cycle") {
        let span = cycle.whole("first_year")..=cycle.whole("last_year");
        let years = file.rows("year_code").iter();
        let years: Vec<&Row> = years
            .filter(|row| span.contains(&row.whole("year")))
            .collect();
        assert_eq!(years.len(), 30);
        for seventh in cycle.text("position_7").chars() {
            for row in &years {
                let number = format!("1M8GDM{seventh}AX{}P042788", row.text("code"));
                let found = vin::inspect(&number).model_year;
                assert_eq!(found.map(i64::from), Some(row.whole("year")), "{number}");
            }
        }
    }
}
