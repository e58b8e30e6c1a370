//! `checks/published/vin.toml` against the whole inspection.

#[derive(serde::Deserialize)]
struct Published {
    inspection: Vec<InspectionRow>,
    cycle: Vec<CycleRow>,
    year_code: Vec<YearRow>,
}

#[derive(serde::Deserialize)]
struct InspectionRow {
    vin: String,
    valid: bool,
    expected_check_digit: char,
}

#[derive(serde::Deserialize)]
struct CycleRow {
    position_7: String,
    first_year: u16,
    last_year: u16,
}

#[derive(serde::Deserialize)]
struct YearRow {
    year: u16,
    code: char,
}

fn published() -> Published {
    toml::from_str(include_str!("../../../checks/published/vin.toml"))
        .expect("the file holds the tables named above")
}

#[test]
fn inspection() {
    for row in published().inspection {
        let found = vin::inspect(&row.vin);
        assert!(
            found.well_formed && found.check_digit_applies,
            "{}",
            row.vin
        );
        assert_eq!(found.valid, row.valid, "{}", row.vin);
        assert_eq!(
            found.expected_check_digit,
            Some(row.expected_check_digit),
            "{}",
            row.vin
        );
    }
}

/// Each year code under each character of position 7 names the year that the
/// tables give.
#[test]
fn model_year() {
    let Published {
        cycle, year_code, ..
    } = published();
    assert_eq!(cycle.len(), 2);
    for CycleRow {
        position_7,
        first_year,
        last_year,
    } in cycle
    {
        let years: Vec<&YearRow> = year_code
            .iter()
            .filter(|row| (first_year..=last_year).contains(&row.year))
            .collect();
        assert_eq!(years.len(), 30);
        for seventh in position_7.chars() {
            for row in &years {
                let number = format!("1M8GDM{seventh}AX{}P042788", row.code);
                assert_eq!(vin::inspect(&number).model_year, Some(row.year), "{number}");
            }
        }
    }
}
