//! Figures as a shop reads them, in both systems of units.

use crate::phrases::form as say;
use measure::si::{Force, Torque};
use measure::{Customary, show};
use phrases::figures;
use uom::si::force::newton;
use uom::si::torque::newton_meter;

/// How wide a drawing is on a phone.
pub const PHONE_PX: f64 = 358.0;

/// A text with its first letter large.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|first| first.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}

/// A length in both systems of units, no finer than a shop measures.
#[must_use]
pub fn both_mm(mm: f64, customary: Customary) -> String {
    let metric = format!("{} mm", trimmed(mm, 2));
    let us = format!("{} in", trimmed(mm / INCH_MM, 3));
    both(metric, us, customary)
}

/// A length in the reader's units and in the others, to a tenth of a millimetre.
pub(crate) fn apart_mm(mm: f64, customary: Customary) -> (String, String) {
    let metric = figures(&format!("{} mm", trimmed(mm, 1)));
    let us = figures(&format!("{} in", trimmed(mm / INCH_MM, 2)));
    match customary {
        Customary::Metric => (metric, us),
        Customary::Us => (us, metric),
    }
}

/// A torque in both systems of units.
#[must_use]
pub fn both_nm(nm: f64, customary: Customary) -> String {
    figures(&show(Torque::new::<newton_meter>(nm), customary))
}

/// A force in both systems of units.
#[must_use]
pub fn both_n(newtons: f64, customary: Customary) -> String {
    figures(&show(Force::new::<newton>(newtons), customary))
}

/// A range of forces in both systems of units: kilonewtons to a tenth, pounds to ten.
#[must_use]
pub fn both_kn(low_n: f64, high_n: f64, customary: Customary) -> String {
    let thousand = |newtons: f64| format!("{:.1}", newtons / 1000.0);
    let pounds = |newtons: f64| format!("{:.0}", (newtons / POUND_N / 10.0).round() * 10.0);
    let metric = say::kilonewtons(thousand(low_n), thousand(high_n));
    let us = say::pounds_of_force(pounds(low_n), pounds(high_n));
    both(metric, us, customary)
}

pub(crate) const INCH_MM: f64 = 25.4;
const POUND_N: f64 = 4.448_221_615_260_5;

fn both(metric: String, us: String, customary: Customary) -> String {
    figures(&match customary {
        Customary::Metric => format!("{metric} ({us})"),
        Customary::Us => format!("{us} ({metric})"),
    })
}

/// So many decimals, idle zeros left out.
pub(crate) fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}
