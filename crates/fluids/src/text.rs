//! Quantities as they stand in a working.

use phrases::figures;

pub(crate) fn litres(litres: f64) -> String {
    figures(&format!("{litres:.2}\u{202f}L"))
}

pub(crate) fn celsius(t_c: f64) -> String {
    figures(&format!("{t_c:.1}\u{202f}°C"))
}

pub(crate) fn percent(percent: f64) -> String {
    figures(&format!("{percent:.1}\u{202f}%"))
}

pub(crate) fn grams(grams: f64) -> String {
    format!("{grams:.0}\u{202f}g")
}
