//! The account of a refrigerant's charge: weighed out, weighed in, held against the label.

use crate::error::{FluidError, within};
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
        ("the label's weight", account.label_g),
        ("the weight recovered", account.out_g),
        ("the weight put in", account.in_g),
        ("the scale's error", Some(account.within_g)),
    ] {
        if let Some(value) = value {
            within(what, value, "g", 0.0..=20_000.0, "write grams")?;
        }
    }
    for (what, value) in [
        ("the oil taken out", account.oil_out_ml),
        ("the oil for new parts", account.oil_for_parts_ml),
        ("the oil put in", account.oil_in_ml),
    ] {
        if let Some(value) = value {
            within(what, value, "mL", 0.0..=5000.0, "write millilitres")?;
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
        ChargeVerdict::AsLabelled => "the label's weight is in".to_owned(),
        ChargeVerdict::Short => "less in than the label states".to_owned(),
        ChargeVerdict::TooMuch => {
            "more in than the label states: recover it and weigh again".to_owned()
        }
        ChargeVerdict::Open => "open: read the label and weigh it in".to_owned(),
    }];
    if let Some(lost) = lost_g.filter(|lost| *lost > account.within_g) {
        words.push(format!(
            "{lost:.0} g were missing when it came in: search for the leak before filling"
        ));
    }
    if let Some(owed) = oil_owed_ml.filter(|owed| owed.abs() > 0.5) {
        words.push(format!("{owed:.0} mL of oil still to go in"));
    }
    let weight = |what: &str, value: Option<f64>| {
        let line = Line::new(what, Source::given());
        match value {
            Some(value) => line.value(text::grams(value)),
            None => line,
        }
    };
    let working = Working::new("Refrigerant")
        .line(weight("label", account.label_g))
        .line(weight("recovered", account.out_g))
        .line(weight("weighed in", account.in_g))
        .limit(
            "An account only: licensed hands and local law decide how it is handled; never vented.",
        );
    Ok(Charge {
        verdict,
        lost_g,
        oil_owed_ml,
        words,
        working,
    })
}
