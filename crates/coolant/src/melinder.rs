//! Melinder's polynomials for glycol in water.
//!
//! y = Σ C(i,j) (x - xm)^i (t - tm)^j, with x the glycol in per cent by mass and t the
//! temperature in °C. The freezing point takes the terms without t; the viscosity is
//! the exponential of the sum, in mPa·s.

use crate::mixture::Glycol;

/// The greatest part of glycol by mass that the polynomials were fitted to.
pub(crate) const MASS_FRACTION_MAX: f64 = 0.6;
/// The greatest temperature that they were fitted to.
pub(crate) const TEMPERATURE_MAX_C: f64 = 100.0;

/// What the polynomials give.
#[derive(Clone, Copy)]
pub(crate) enum Property {
    Density,
    SpecificHeat,
    LogViscosity,
}

/// Coefficients of each property, in the order of [`POWERS`].
struct Fit {
    base_percent: f64,
    base_c: f64,
    freezing: [f64; 6],
    density: [f64; 18],
    specific_heat: [f64; 18],
    log_viscosity: [f64; 18],
}

/// Powers of (x - xm) and of (t - tm), term by term.
const POWERS: [(u8, u8); 18] = [
    (0, 0),
    (0, 1),
    (0, 2),
    (0, 3),
    (1, 0),
    (1, 1),
    (1, 2),
    (1, 3),
    (2, 0),
    (2, 1),
    (2, 2),
    (2, 3),
    (3, 0),
    (3, 1),
    (3, 2),
    (4, 0),
    (4, 1),
    (5, 0),
];

/// Freezing point in °C.
pub(crate) fn freezing_c(glycol: Glycol, mass_fraction: f64) -> f64 {
    let fit = fit(glycol);
    let x = mass_fraction * 100.0 - fit.base_percent;
    let point = fit.freezing.iter().rev().fold(0.0, |sum, c| sum * x + c);
    // The polynomial ends 0.0003 K above the freezing point of water.
    point.min(0.0)
}

/// Density in kg/m³, specific heat in J/(kg·K), or the logarithm of the viscosity in mPa·s.
pub(crate) fn evaluate(property: Property, glycol: Glycol, mass_fraction: f64, t_c: f64) -> f64 {
    let fit = fit(glycol);
    let x = mass_fraction * 100.0 - fit.base_percent;
    let t = t_c - fit.base_c;
    let coefficients = match property {
        Property::Density => &fit.density,
        Property::SpecificHeat => &fit.specific_heat,
        Property::LogViscosity => &fit.log_viscosity,
    };
    coefficients
        .iter()
        .zip(POWERS)
        .map(|(c, (i, j))| c * power(x, i) * power(t, j))
        .sum()
}

/// By multiplication alone, so that every machine gets the same bits.
fn power(base: f64, exponent: u8) -> f64 {
    (0..exponent).fold(1.0, |product, _| product * base)
}

fn fit(glycol: Glycol) -> &'static Fit {
    match glycol {
        Glycol::Ethylene => &ETHYLENE,
        Glycol::Propylene => &PROPYLENE,
    }
}

const ETHYLENE: Fit = Fit {
    base_percent: 30.8462,
    base_c: 31.728,
    freezing: [-15.25, -0.808, -0.01334, -7.293e-5, 1.006e-6, 1.14e-9],
    density: [
        1034.0, -0.4781, -0.002692, 4.725e-6, 1.311, -0.006876, 4.805e-5, 1.69e-8, 7.49e-5,
        7.855e-5, -3.995e-7, 4.982e-9, -1.062e-4, 1.229e-6, -1.153e-8, -9.623e-7, -7.211e-8,
        4.891e-8,
    ],
    specific_heat: [
        3737.0, 2.93, -0.004675, -1.389e-5, -17.99, 0.1046, -4.147e-4, 1.847e-7, -0.09933,
        3.516e-4, 5.109e-6, -7.138e-8, 0.00261, -1.189e-6, -1.643e-7, 1.537e-5, -4.272e-7,
        -1.618e-6,
    ],
    log_viscosity: [
        0.4705, -0.0255, 1.782e-4, -7.669e-7, 0.02471, -1.171e-4, 1.052e-6, -1.634e-8, 3.328e-6,
        1.086e-6, 1.051e-8, -6.475e-10, 1.659e-6, 3.157e-9, 4.063e-10, 3.089e-8, 1.831e-10,
        -1.865e-9,
    ],
};

const PROPYLENE: Fit = Fit {
    base_percent: 30.7031,
    base_c: 32.7083,
    freezing: [-13.25, -0.6631, -0.01094, -2.283e-4, -3.409e-6, 1.465e-8],
    density: [
        1018.0, -0.5406, -0.002666, 1.347e-5, 0.7604, -0.00945, 5.541e-5, -1.343e-7, -0.002498,
        2.7e-5, -4.018e-7, 3.376e-9, -1.55e-4, 2.829e-6, -7.175e-9, -1.131e-6, -2.221e-8, 2.342e-8,
    ],
    specific_heat: [
        3882.0, 2.699, -0.001659, -1.032e-5, -13.04, 0.0507, -4.752e-5, 1.522e-6, -0.1598,
        9.534e-5, 1.167e-5, -4.87e-8, 3.539e-4, 3.102e-5, -2.95e-7, 5e-5, -7.135e-7, -4.959e-7,
    ],
    log_viscosity: [
        0.6837, -0.03045, 2.525e-4, -1.399e-6, 0.03328, -3.984e-4, 4.332e-6, -1.86e-8, 5.453e-5,
        -8.6e-8, -1.593e-8, -4.465e-11, -3.9e-6, 1.054e-7, -1.589e-9, -1.587e-8, 4.475e-10,
        3.564e-9,
    ],
};
