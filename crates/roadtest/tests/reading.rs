//! Logs of many loggers are read: headings, units, delimiters, clocks, broken lines, frames.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use roadtest::{CodeList, Kind, Log, LogError, Mapping, Quantity, read};

fn csv(text: &str) -> Log {
    read(text.as_bytes(), None, &Mapping::default()).unwrap()
}

fn last(log: &Log, quantity: Quantity) -> f64 {
    log.of(quantity).last().unwrap().value
}

fn near(got: f64, expected: f64) -> bool {
    (got - expected).abs() < 0.01
}

#[test]
fn the_copied_drives_need_no_mapping() {
    for (name, bytes, first, end) in [
        (
            "drive12",
            include_bytes!("../../../checks/data/drives/drive12.csv").as_slice(),
            28.0,
            88.0,
        ),
        (
            "idle27",
            include_bytes!("../../../checks/data/drives/idle27.csv"),
            62.0,
            95.0,
        ),
        (
            "live10",
            include_bytes!("../../../checks/data/drives/live10.csv"),
            24.0,
            87.0,
        ),
    ] {
        let log = read(bytes, None, &Mapping::default()).unwrap();
        let coolant = log.of(Quantity::Coolant);
        assert!(near(coolant[0].value, first), "{name}");
        assert!(near(coolant.last().unwrap().value, end), "{name}");
        for quantity in [
            Quantity::Rpm,
            Quantity::Speed,
            Quantity::Load,
            Quantity::LongTrim1,
            Quantity::ShortTrim1,
            Quantity::Intake,
            Quantity::Voltage,
            Quantity::RunTime,
        ] {
            assert_eq!(log.of(quantity).len(), coolant.len(), "{name} {quantity:?}");
        }
        assert!(log.notes.is_empty(), "{name}: {:?}", log.notes);
        assert!(log.columns.iter().all(|column| column.taken_for.is_some()));
    }
}

#[test]
fn units_of_other_places() {
    let log = csv(
        "Time (sec),Engine Coolant Temperature (°F),Vehicle Speed (mph),MAP (psi),Battery (mV)\n\
         0,68,0,14.5,12400\n1,190.4,60,14.7,14100\n",
    );
    assert!(near(last(&log, Quantity::Coolant), 88.0));
    assert!(near(last(&log, Quantity::Speed), 96.56));
    assert!(near(last(&log, Quantity::Manifold), 101.35));
    assert!(near(last(&log, Quantity::Voltage), 14.1));
}

#[test]
fn decimal_comma_semicolon_byte_order_mark_and_a_row_of_units() {
    let log = csv(
        "\u{feff}sep=;\nZeit;Kühlmitteltemperatur;Geschwindigkeit;Drehzahl;Bordspannung\n\
         s;°C;km/h;1/min;V\n0,5;20,5;0;1.100,5;14,1\n1,5;21;10;1200;14,2\n",
    );
    assert!(near(log.of(Quantity::Coolant)[0].value, 20.5));
    assert!(near(log.of(Quantity::Rpm)[0].value, 1100.5));
    assert!(near(log.of(Quantity::Coolant)[1].t_s, 1.0));
    assert!(near(last(&log, Quantity::Voltage), 14.2));
}

#[test]
fn a_preface_before_the_heading_and_quotes() {
    let log = csv(
        "Logger version 3\nVehicle: pickup, 4x4\n\n\"Time\",\"Coolant Temp (C)\",\"Remark\"\n\
         \"10:00:00.0\",\"80\",\"a, b\"\n\"10:00:01.5\",\"81\",\"\"\n",
    );
    assert!(near(log.of(Quantity::Coolant)[1].t_s, 1.5));
    assert!(near(last(&log, Quantity::Coolant), 81.0));
}

#[test]
fn two_clocks_a_satellites_speed_and_a_trailing_comma() {
    let log = csv(
        "GPS Time, Device Time, GPS Speed (Meters/second), Speed (OBD)(km/h), Engine Coolant Temperature(°C),\n\
         none,31-May-2024 12:00:01.000,9.0,36,80\nnone,31-May-2024 12:00:02.500,9.0,37,-\n\
         none,31-May-2024 12:00:04.000,9.1,38,81\n",
    );
    assert!(near(last(&log, Quantity::Speed), 38.0));
    assert!(near(log.span_s().1, 3.0));
    assert!(near(last(&log, Quantity::Coolant), 81.0));
    assert!(log.notes.is_empty(), "{:?}", log.notes);
}

#[test]
fn one_reading_a_row() {
    let log = csv(
        "SECONDS;PID;VALUE;UNITS\n0;Engine coolant temperature;176;°F\n0.1;Vehicle speed;30;mph\n\
         1;Engine coolant temperature;177.8;°F\n1.1;Vehicle speed;31;mph\n",
    );
    assert!(near(last(&log, Quantity::Coolant), 81.0));
    assert!(near(last(&log, Quantity::Speed), 49.89));
}

#[test]
fn broken_lines_are_told_by_their_number() {
    let log = csv(
        "time,coolant,speed\n0,20,0\n1,21\n\n2,22,5\n3,x,6\n4,23,7,8,9\n5,900,8\n6,24,9,\n7,25",
    );
    let lines: Vec<usize> = log.notes.iter().filter_map(|note| note.line).collect();
    for line in [3, 6, 7, 8, 10] {
        assert!(lines.contains(&line), "{line}: {:?}", log.notes);
    }
    assert_eq!(log.of(Quantity::Coolant).len(), 3);
    assert_eq!(log.of(Quantity::Speed).len(), 5);
}

#[test]
fn the_clock_repeats_stands_falls_back_and_leaves_gaps() {
    let mut text = "time,coolant\n".to_owned();
    for second in 0..60 {
        text.push_str(&format!("{second},50\n{second},50\n"));
    }
    let at_once = csv(&text);
    assert!(at_once.notes.is_empty(), "{:?}", at_once.notes);
    for _ in 0..50 {
        text.push_str("59,60\n");
    }
    text.push_str("200,70\n3,70\n201,71\n");
    for second in 0..10 {
        text.push_str(&format!("{second},72\n"));
    }
    let log = csv(&text);
    let told: Vec<String> = log.notes.iter().map(|note| note.what.clone()).collect();
    let told = told.join("; ");
    for words in [
        "stands still",
        "nothing was recorded for 141 s",
        "does not fit",
        "begins again",
    ] {
        assert!(told.contains(words), "{words}: {told}");
    }
    let times: Vec<f64> = log
        .of(Quantity::Coolant)
        .iter()
        .map(|sample| sample.t_s)
        .collect();
    assert!(times.windows(2).all(|pair| pair[0] <= pair[1]));
}

#[test]
fn milliseconds_are_seen_by_their_steps_and_fahrenheit_by_its_height() {
    let mut text = "t,coolant,rpm\n".to_owned();
    for nth in 0..60 {
        text.push_str(&format!(
            "{},{},800\n",
            1_700_000_000_000_i64 + nth * 500,
            120 + nth
        ));
    }
    let log = csv(&text);
    assert!(near(log.span_s().1, 29.5));
    assert!(near(last(&log, Quantity::Coolant), (179.0 - 32.0) / 1.8));
    assert_eq!(log.notes.len(), 2, "{:?}", log.notes);
}

#[test]
fn a_mapping_says_what_headings_do_not() {
    let text = "a,b,c\n0,176,12\n1,177.8,12.1\n";
    let plain = read(text.as_bytes(), None, &Mapping::default());
    assert!(
        matches!(plain, Err(LogError::NoHeading { .. })),
        "{plain:?}"
    );
    let mapping = Mapping::read("time = a\ncoolant = b [°F]\nvoltage = 3\n").unwrap();
    let log = read(text.as_bytes(), None, &mapping).unwrap();
    assert!(near(last(&log, Quantity::Coolant), 81.0));
    assert!(near(last(&log, Quantity::Voltage), 12.1));
    // What was read can be remembered, and read with again.
    let again = read(text.as_bytes(), None, &Mapping::of_columns(&log.columns)).unwrap();
    assert_eq!(again.series, log.series);
    let step = Mapping::read("step = 5 s").unwrap();
    let log = read(b"coolant,speed\n20,0\n21,3\n", None, &step).unwrap();
    assert!(near(log.span_s().1, 5.0));
}

#[test]
fn what_cannot_be_read_says_how_to_mend_it() {
    let error = |text: &str| read(text.as_bytes(), None, &Mapping::default()).unwrap_err();
    assert_eq!(error(" \n\n"), LogError::Empty);
    assert!(matches!(
        error("hello\nworld\n"),
        LogError::NoHeading { .. }
    ));
    assert!(matches!(
        error("coolant,speed\n20,1\n"),
        LogError::NoTime { .. }
    ));
    assert!(matches!(
        error("time,colour\n20,1\n"),
        LogError::NothingKnown { .. }
    ));
    assert!(matches!(
        error("time,coolant\n1,2,3\n"),
        LogError::NoRows { .. }
    ));
    let frames = |text: &str| read(text.as_bytes(), Some(Kind::J1979), &Mapping::default());
    assert!(matches!(
        frames("time,coolant\n1,20\n"),
        Err(LogError::NoFrames { .. })
    ));
    assert!(matches!(
        frames("0 7DF 02 01 05\n"),
        Err(LogError::NoAnswers)
    ));
    for bad in [
        "coolant",
        "heat = 3",
        "coolant = 3 [furlong]",
        "coolant =",
        "step = 0",
    ] {
        assert!(
            matches!(Mapping::read(bad), Err(LogError::Mapping { .. })),
            "{bad}"
        );
    }
    let no_column = Mapping::read("coolant = Temp").unwrap();
    let wrong = read(b"time,b\n0,1\n", None, &no_column).unwrap_err();
    let (what, mend) = wrong.told();
    assert!(
        what.contains("`Temp`") && mend.contains("heading"),
        "{what} / {mend}"
    );
}

#[test]
fn frames_of_several_units() {
    let text = "\
seconds,id,bytes
0.00 7DF 02 01 00 00 00 00 00 00
0.01 7E8 06 41 00 BE 1F A8 13 00
0.02 7E9 06 41 00 98 18 80 01 00
0.10 7DF 02 01 05
0.11 7E8 03 41 05 7B AA AA AA AA
0.20 7E9 03 41 0D 32
0.21 7E8 04 41 0C 1A F8
0.30 7E8 03 7F 01 12
0.31 7E8 03 7F 01 78
0.40 7E8 06 41 01 83 07 65 04
0.50 7E8 10 08 43 03 01 28 01 35
0.51 7E0 30 00 00
0.52 7E8 21 41 23 AA AA AA AA AA
0.60 7E8 02 47 00
0.70 7E9 04 4A 01 C1 00
0.80 this is no frame
";
    let log = read(text.as_bytes(), None, &Mapping::default()).unwrap();
    assert!(near(last(&log, Quantity::Coolant), 83.0));
    assert!(near(last(&log, Quantity::Rpm), 1726.0));
    assert!(near(last(&log, Quantity::Speed), 50.0));
    let (pids, asked_to) = log.supported.clone().unwrap();
    assert!(pids.contains(&0x05) && pids.contains(&0x0C) && !pids.contains(&0x02));
    assert_eq!(asked_to, 0x20);
    let status = &log.statuses[0];
    assert!(status.lamp && status.count == 3);
    assert_eq!(
        status.incomplete.as_deref(),
        Some(["evaporative system"].as_slice())
    );
    assert_eq!(log.codes.len(), 3);
    let stored: Vec<&str> = log.codes[0].codes.iter().map(String::as_str).collect();
    assert_eq!(stored, ["C0123", "P0128", "P0135"]);
    assert_eq!(
        (log.codes[1].list, log.codes[1].codes.len()),
        (CodeList::Pending, 0)
    );
    assert_eq!(log.codes[2].unit, "7E9");
    let told: Vec<&str> = log.notes.iter().map(|note| note.what.as_str()).collect();
    let told = told.join("; ");
    for words in [
        "speed is told by unit 7E9",
        "refused service 01",
        "2 units",
        "left out",
    ] {
        assert!(told.contains(words), "{words}: {told}");
    }
    assert!(!told.contains("78"), "{told}");
}

#[test]
fn frames_of_29_bits_and_of_older_lines() {
    let log = csv("1.0 18DAF110 03 41 05 7B\n2.0 18DAF110 03 41 05 7C\n");
    assert!(near(last(&log, Quantity::Coolant), 84.0));
    let log = csv("1.0 486B10 41 05 7B C3\n2.0 486B10 43 01 28 00 00 00 00\n");
    assert!(near(last(&log, Quantity::Coolant), 83.0));
    assert!(log.codes[0].codes.contains("P0128"));
}
