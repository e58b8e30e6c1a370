//! The account of a refrigerant's charge: weighed out, weighed in, held against the label.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Line, Source, Working};

/// What was weighed. Grams, 0 to 20 000; millilitres of oil, 0 to 5000.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Refrigerant {
    pub label_g: Option<f64>,
    pub out_g: Option<f64>,
    pub in_g: Option<f64>,
    /// How far the scale may be off.
    pub within_g: f64,
    pub oil_out_ml: Option<f64>,
    /// What the maker asks for with new parts.
    pub oil_for_parts_ml: Option<f64>,
    pub oil_in_ml: Option<f64>,
}

/// What the weights say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChargeVerdict {
    /// The label's weight is in.
    AsLabelled,
    Short,
    TooMuch,
    /// Nothing weighed in yet, or no label read.
    Open,
}

/// The account.
#[derive(Clone, Debug, PartialEq)]
pub struct Charge {
    pub verdict: ChargeVerdict,
    /// What was lost before it came in: the label less what was recovered.
    pub lost_g: Option<f64>,
    /// Oil still to go in.
    pub oil_owed_ml: Option<f64>,
    pub words: Vec<String>,
    pub working: Working,
}

/// The account of a charge: what was lost, whether the label's weight is in, oil owed.
///
/// Formula: lost = label - out; short where in < label - scale, too much where
/// in > label + scale; oil owed = oil out + for parts - oil in.
///
/// Inputs: see [`Refrigerant`].
///
/// Returns the account in words.
///
/// # Errors
///
/// [`FluidError::OutOfRange`].
///
/// # Limits
///
/// An account only: how refrigerant is handled is for licensed hands and local law. It is
/// never vented.
///
/// # Source
///
/// The label; balance of weights.
///
/// ```
/// use fluids::{ChargeVerdict, Refrigerant, refrigerant};
/// let found = refrigerant(&Refrigerant {
///     label_g: Some(550.0), out_g: Some(410.0), in_g: Some(550.0), within_g: 10.0,
///     oil_out_ml: Some(20.0), oil_for_parts_ml: None, oil_in_ml: Some(20.0),
/// })?;
/// assert!(found.verdict == ChargeVerdict::AsLabelled && found.lost_g == Some(140.0));
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn refrigerant(account: &Refrigerant) -> Result<Charge, FluidError> {
    for (what, value) in [
        (say::the_labels_weight(), account.label_g),
        (say::the_weight_recovered(), account.out_g),
        (say::the_weight_put_in(), account.in_g),
        (say::the_scales_error(), Some(account.within_g)),
    ] {
        if let Some(value) = value {
            within(what, value, "g", 0.0..=20_000.0, say::mend_write_grams())?;
        }
    }
    for (what, value) in [
        (say::oil_taken_out(), account.oil_out_ml),
        (say::oil_for_new_parts(), account.oil_for_parts_ml),
        (say::oil_put_in(), account.oil_in_ml),
    ] {
        if let Some(value) = value {
            within(
                what,
                value,
                "mL",
                0.0..=5000.0,
                say::mend_write_millilitres(),
            )?;
        }
    }
    let lost_g = account
        .label_g
        .zip(account.out_g)
        .map(|(label, out)| label - out);
    let verdict = match (account.label_g, account.in_g) {
        (Some(label), Some(poured)) if poured < label - account.within_g => ChargeVerdict::Short,
        (Some(label), Some(poured)) if poured > label + account.within_g => ChargeVerdict::TooMuch,
        (Some(_), Some(_)) => ChargeVerdict::AsLabelled,
        _ => ChargeVerdict::Open,
    };
    let oil_owed_ml = account.oil_out_ml.map(|out| {
        out + account.oil_for_parts_ml.unwrap_or(0.0) - account.oil_in_ml.unwrap_or(0.0)
    });
    let mut words = vec![match verdict {
        ChargeVerdict::AsLabelled => say::labels_weight_is_in().to_owned(),
        ChargeVerdict::Short => say::less_in_than_label().to_owned(),
        ChargeVerdict::TooMuch => say::more_in_than_label().to_owned(),
        ChargeVerdict::Open => say::open_read_the_label().to_owned(),
    }];
    if let Some(lost) = lost_g.filter(|lost| *lost > account.within_g) {
        words.push(say::were_missing(format_args!("{lost:.0}")));
    }
    if let Some(owed) = oil_owed_ml.filter(|owed| owed.abs() > 0.5) {
        words.push(say::oil_still_to_go_in(format_args!("{owed:.0}")));
    }
    let weight = |what: &str, value: Option<f64>| {
        let line = Line::new(what, Source::given());
        match value {
            Some(value) => line.value(text::grams(value)),
            None => line,
        }
    };
    let working = Working::new(say::refrigerant_title())
        .line(weight(say::label(), account.label_g))
        .line(weight(say::recovered(), account.out_g))
        .line(weight(say::weighed_in(), account.in_g))
        .limit(say::account_only());
    Ok(Charge {
        verdict,
        lost_g,
        oil_owed_ml,
        words,
        working,
    })
}
