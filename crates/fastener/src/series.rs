//! The listed threads, and the drill that is usual before tapping each.

use crate::thread::Series;

/// A metric thread of ISO 261, with its drill after ISO 2306.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Metric {
    pub diameter_mm: f64,
    pub pitch_mm: f64,
    pub tap_drill_mm: f64,
    pub series: Series,
}

/// A thread of ASME B1.1, with the drill of the usual US chart.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unified {
    pub size: &'static str,
    pub diameter_in: f64,
    pub threads_per_inch: f64,
    pub tap_drill: &'static str,
    pub series: Series,
}

/// Sizes that differ by less are the same size.
const SAME: f64 = 1e-6;

pub(crate) fn metric(diameter_mm: f64, pitch_mm: f64) -> Option<Metric> {
    metrics().find(|listed| {
        (listed.diameter_mm - diameter_mm).abs() < SAME && (listed.pitch_mm - pitch_mm).abs() < SAME
    })
}

pub(crate) fn coarse(diameter_mm: f64) -> Option<Metric> {
    metrics().find(|listed| {
        listed.series == Series::Coarse && (listed.diameter_mm - diameter_mm).abs() < SAME
    })
}

/// The next larger size in common use, in the coarse series.
pub(crate) fn next_metric(diameter_mm: f64) -> Option<Metric> {
    // M3.5, M7, M27 and the odd ones above are listed, but no shop has their bolts on the shelf.
    let common = |d: f64| ![3.5, 7.0, 27.0, 33.0, 39.0, 45.0, 52.0, 60.0].contains(&d);
    metrics().find(|listed| {
        listed.series == Series::Coarse
            && listed.diameter_mm > diameter_mm + SAME
            && common(listed.diameter_mm)
    })
}

pub(crate) fn metrics() -> impl Iterator<Item = Metric> {
    let row = |series: Series| {
        move |&(diameter_mm, pitch_mm, tap_drill_mm): &(f64, f64, f64)| Metric {
            diameter_mm,
            pitch_mm,
            tap_drill_mm,
            series,
        }
    };
    let coarse = METRIC_COARSE.iter().map(row(Series::Coarse));
    coarse.chain(METRIC_FINE.iter().map(row(Series::Fine)))
}

pub(crate) fn unified(diameter_in: f64, threads_per_inch: f64) -> Option<Unified> {
    unifieds().find(|listed| {
        (listed.diameter_in - diameter_in).abs() < SAME
            && (listed.threads_per_inch - threads_per_inch).abs() < SAME
    })
}

/// The threads of one diameter, coarse first.
pub(crate) fn unified_of_size(diameter_in: f64) -> Vec<Unified> {
    unifieds()
        .filter(|listed| (listed.diameter_in - diameter_in).abs() < SAME)
        .collect()
}

/// The next larger fractional or number size, coarse.
pub(crate) fn next_unified(diameter_in: f64) -> Option<Unified> {
    unifieds()
        .find(|listed| listed.series == Series::Coarse && listed.diameter_in > diameter_in + SAME)
}

pub(crate) fn unifieds() -> impl Iterator<Item = Unified> {
    let row = |series: Series| {
        move |&(size, diameter_in, threads_per_inch, tap_drill): &UnifiedRow| Unified {
            size,
            diameter_in,
            threads_per_inch,
            tap_drill,
            series,
        }
    };
    let coarse = UNC.iter().map(row(Series::Coarse));
    coarse.chain(UNF.iter().map(row(Series::Fine)))
}

type UnifiedRow = (&'static str, f64, f64, &'static str);

/// Diameter, pitch, drill; millimetres.
const METRIC_COARSE: [(f64, f64, f64); 33] = [
    (1.0, 0.25, 0.75),
    (1.2, 0.25, 0.95),
    (1.4, 0.3, 1.1),
    (1.6, 0.35, 1.25),
    (2.0, 0.4, 1.6),
    (2.5, 0.45, 2.05),
    (3.0, 0.5, 2.5),
    (3.5, 0.6, 2.9),
    (4.0, 0.7, 3.3),
    (5.0, 0.8, 4.2),
    (6.0, 1.0, 5.0),
    (7.0, 1.0, 6.0),
    (8.0, 1.25, 6.8),
    (10.0, 1.5, 8.5),
    (12.0, 1.75, 10.2),
    (14.0, 2.0, 12.0),
    (16.0, 2.0, 14.0),
    (18.0, 2.5, 15.5),
    (20.0, 2.5, 17.5),
    (22.0, 2.5, 19.5),
    (24.0, 3.0, 21.0),
    (27.0, 3.0, 24.0),
    (30.0, 3.5, 26.5),
    (33.0, 3.5, 29.5),
    (36.0, 4.0, 32.0),
    (39.0, 4.0, 35.0),
    (42.0, 4.5, 37.5),
    (45.0, 4.5, 40.5),
    (48.0, 5.0, 43.0),
    (52.0, 5.0, 47.0),
    (56.0, 5.5, 50.5),
    (60.0, 5.5, 54.5),
    (64.0, 6.0, 58.0),
];

const METRIC_FINE: [(f64, f64, f64); 48] = [
    (3.0, 0.35, 2.65),
    (4.0, 0.5, 3.5),
    (5.0, 0.5, 4.5),
    (6.0, 0.75, 5.2),
    (8.0, 0.75, 7.2),
    (8.0, 1.0, 7.0),
    (9.0, 1.0, 8.0),
    (10.0, 0.75, 9.2),
    (10.0, 1.0, 9.0),
    (10.0, 1.25, 8.8),
    (12.0, 1.0, 11.0),
    (12.0, 1.25, 10.8),
    (12.0, 1.5, 10.5),
    (14.0, 1.0, 13.0),
    (14.0, 1.25, 12.8),
    (14.0, 1.5, 12.5),
    (16.0, 1.0, 15.0),
    (16.0, 1.5, 14.5),
    (18.0, 1.5, 16.5),
    (18.0, 2.0, 16.0),
    (20.0, 1.5, 18.5),
    (20.0, 2.0, 18.0),
    (22.0, 1.5, 20.5),
    (22.0, 2.0, 20.0),
    (24.0, 1.5, 22.5),
    (24.0, 2.0, 22.0),
    (27.0, 1.5, 25.5),
    (27.0, 2.0, 25.0),
    (30.0, 1.5, 28.5),
    (30.0, 2.0, 28.0),
    (33.0, 1.5, 31.5),
    (33.0, 2.0, 31.0),
    (36.0, 1.5, 34.5),
    (36.0, 2.0, 34.0),
    (36.0, 3.0, 33.0),
    (39.0, 1.5, 37.5),
    (39.0, 3.0, 36.0),
    (42.0, 1.5, 40.5),
    (42.0, 3.0, 39.0),
    (45.0, 1.5, 43.5),
    (45.0, 3.0, 42.0),
    (48.0, 1.5, 46.5),
    (48.0, 3.0, 45.0),
    (52.0, 3.0, 49.0),
    (52.0, 4.0, 48.0),
    (56.0, 4.0, 52.0),
    (60.0, 4.0, 56.0),
    (64.0, 4.0, 60.0),
];

/// Size, diameter in inches, threads per inch, drill.
const UNC: [UnifiedRow; 23] = [
    ("#1", 0.073, 64.0, "#53"),
    ("#2", 0.086, 56.0, "#50"),
    ("#3", 0.099, 48.0, "#47"),
    ("#4", 0.112, 40.0, "#43"),
    ("#5", 0.125, 40.0, "#38"),
    ("#6", 0.138, 32.0, "#36"),
    ("#8", 0.164, 32.0, "#29"),
    ("#10", 0.19, 24.0, "#25"),
    ("#12", 0.216, 24.0, "#16"),
    ("1/4", 0.25, 20.0, "#7"),
    ("5/16", 0.3125, 18.0, "F"),
    ("3/8", 0.375, 16.0, "5/16"),
    ("7/16", 0.4375, 14.0, "U"),
    ("1/2", 0.5, 13.0, "27/64"),
    ("9/16", 0.5625, 12.0, "31/64"),
    ("5/8", 0.625, 11.0, "17/32"),
    ("3/4", 0.75, 10.0, "21/32"),
    ("7/8", 0.875, 9.0, "49/64"),
    ("1", 1.0, 8.0, "7/8"),
    ("1-1/8", 1.125, 7.0, "63/64"),
    ("1-1/4", 1.25, 7.0, "1-7/64"),
    ("1-3/8", 1.375, 6.0, "1-7/32"),
    ("1-1/2", 1.5, 6.0, "1-11/32"),
];

const UNF: [UnifiedRow; 24] = [
    ("#0", 0.06, 80.0, "3/64"),
    ("#1", 0.073, 72.0, "#53"),
    ("#2", 0.086, 64.0, "#50"),
    ("#3", 0.099, 56.0, "#45"),
    ("#4", 0.112, 48.0, "#42"),
    ("#5", 0.125, 44.0, "#37"),
    ("#6", 0.138, 40.0, "#33"),
    ("#8", 0.164, 36.0, "#29"),
    ("#10", 0.19, 32.0, "#21"),
    ("#12", 0.216, 28.0, "#14"),
    ("1/4", 0.25, 28.0, "#3"),
    ("5/16", 0.3125, 24.0, "I"),
    ("3/8", 0.375, 24.0, "Q"),
    ("7/16", 0.4375, 20.0, "25/64"),
    ("1/2", 0.5, 20.0, "29/64"),
    ("9/16", 0.5625, 18.0, "33/64"),
    ("5/8", 0.625, 18.0, "37/64"),
    ("3/4", 0.75, 16.0, "11/16"),
    ("7/8", 0.875, 14.0, "13/16"),
    ("1", 1.0, 12.0, "59/64"),
    ("1-1/8", 1.125, 12.0, "1-3/64"),
    ("1-1/4", 1.25, 12.0, "1-11/64"),
    ("1-3/8", 1.375, 12.0, "1-19/64"),
    ("1-1/2", 1.5, 12.0, "1-27/64"),
];
