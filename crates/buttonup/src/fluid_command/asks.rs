//! The questions that may be put about a fluid.

use crate::answer::Wrong;
use clap::Args;
use fluids::{
    Amount, Amounts, BrakeReading, BrakeVerdictKind, ChargeVerdict, DotClass, EqualVerdict,
    FluidError, Kind, LevelSeen, LevelVerdict, Levels, May, Refrigerant, Sorts, Urea, Washer,
    brake_reading, equal_amounts, level_at, refrigerant, sorts, urea, washer,
};
use measure::{Dimension, Unit, Working};
use serde_json::{Value, json};

/// What may be asked beside the steps.
#[derive(Debug, Args)]
pub struct Asks {
    /// Brake and clutch: the class off the cap, such as "DOT 4"; never guessed.
    #[arg(long)]
    class: Option<String>,
    /// Brake and clutch: where a tester says that it boils, such as 170C.
    #[arg(long)]
    boils: Option<String>,
    /// How far the tester may be off.
    #[arg(long, default_value = "5K")]
    tester: String,
    /// The maker's least boiling point in use.
    #[arg(long)]
    makers_least: Option<String>,
    /// What came out: 4.5L~0.3L@60C, with how far it may be off and its temperature.
    #[arg(long = "out", value_name = "AMOUNT")]
    out: Vec<String>,
    /// What went in, written the same.
    #[arg(long = "in", value_name = "AMOUNT")]
    poured: Vec<String>,
    /// How far it was low before.
    #[arg(long)]
    low_before: Option<String>,
    /// Where the level was seen.
    #[arg(long, value_parser = ["at-mark", "low", "high"])]
    level: Option<String>,
    /// Its temperature then.
    #[arg(long)]
    at: Option<String>,
    /// The maker's window for it, such as 35C..45C.
    #[arg(long)]
    window: Option<String>,
    /// The sort that is in.
    #[arg(long)]
    inside: Option<String>,
    /// The sort that is to go in.
    #[arg(long)]
    new: Option<String>,
    /// The sort that the maker asks for.
    #[arg(long)]
    asked_for: Option<String>,
    /// Urea and washer: what the tank or bottle holds.
    #[arg(long)]
    holds: Option<String>,
    /// What is left in it.
    #[arg(long, default_value = "0L")]
    left: String,
    /// The strength of what is left.
    #[arg(long, default_value = "0%")]
    now: String,
    /// Urea: the strength in the container.
    #[arg(long, default_value = "32.5%")]
    bottle: String,
    /// Washer: the share of concentrate wanted.
    #[arg(long)]
    want: Option<String>,
    /// Washer: the frost limit wanted, by the label's points.
    #[arg(long)]
    want_frost: Option<String>,
    /// Washer: points of the label, such as "50% -20C, 100% -45C".
    #[arg(long)]
    label: Option<String>,
    /// Refrigerant: grams by the label.
    #[arg(long, value_name = "GRAMS")]
    label_weight: Option<f64>,
    /// Refrigerant: grams recovered.
    #[arg(long, value_name = "GRAMS")]
    weight_out: Option<f64>,
    /// Refrigerant: grams weighed in.
    #[arg(long, value_name = "GRAMS")]
    weight_in: Option<f64>,
    /// Grams that the scale may be off.
    #[arg(long, default_value_t = 10.0, value_name = "GRAMS")]
    scale: f64,
}

/// Name, JSON, words and working of an answer.
type Answered = (&'static str, Value, Vec<String>, Working);

impl Asks {
    /// Each question that was put, answered.
    pub fn answers(&self, kind: Kind) -> Result<Vec<Answered>, Wrong> {
        let each = [
            self.reading(kind)?,
            self.amounts()?,
            self.levels()?,
            self.two_sorts(kind)?,
            self.mix(kind)?,
            self.charge(kind)?,
        ];
        Ok(each.into_iter().flatten().collect())
    }

    fn reading(&self, kind: Kind) -> Result<Option<Answered>, Wrong> {
        let Some(boils) = &self.boils else {
            return Ok(None);
        };
        if !matches!(kind, Kind::Brake | Kind::Clutch) {
            return Err(Wrong::input(
                "--boils",
                format!("{kind} is not read for its boiling point"),
                "ask it of brake or clutch",
            ));
        }
        let class = self.class.as_deref().map(|printed| {
            DotClass::named(printed).ok_or_else(|| {
                let names: Vec<&str> = DotClass::ALL.iter().map(|class| class.name()).collect();
                Wrong::input(
                    "--class",
                    format!("`{printed}` is no class"),
                    format!("write one of {}", names.join(", ")),
                )
            })
        });
        let found = brake_reading(&BrakeReading {
            class: class.transpose()?,
            boils_c: celsius(boils, "--boils")?,
            within_k: number(
                &self.tester,
                Dimension::TemperatureDifference,
                Unit::KelvinDifference,
                "--tester",
            )?,
            makers_least_c: self
                .makers_least
                .as_deref()
                .map(|text| celsius(text, "--makers-least"))
                .transpose()?,
        })
        .map_err(refused("--boils"))?;
        let verdict = match found.kind {
            BrakeVerdictKind::Dry => "dry",
            BrakeVerdictKind::TakenUpWater => "taken-up-water",
            BrakeVerdictKind::Renew => "renew",
            BrakeVerdictKind::TooNear => "too-near",
            BrakeVerdictKind::CannotTell => "cant-tell",
        };
        let value = json!({
            "verdict": verdict,
            "words": found.words,
            "dry_c": found.limits.map(|limits| limits.dry_c),
            "wet_c": found.limits.map(|limits| limits.wet_c),
        });
        Ok(Some(("reading", value, vec![found.words], found.working)))
    }

    fn amounts(&self) -> Result<Option<Answered>, Wrong> {
        if self.out.is_empty() && self.poured.is_empty() {
            return Ok(None);
        }
        let all = |texts: &[String], place| {
            texts
                .iter()
                .map(|text| amount(text, place))
                .collect::<Result<Vec<Amount>, Wrong>>()
        };
        let found = equal_amounts(&Amounts {
            out: all(&self.out, "--out")?,
            poured: all(&self.poured, "--in")?,
            low_before_l: self
                .low_before
                .as_deref()
                .map(|text| litres(text, "--low-before"))
                .transpose()?,
        })
        .map_err(refused("--out"))?;
        let verdict = match found.verdict {
            EqualVerdict::Equal => "equal",
            EqualVerdict::Short => "short",
            EqualVerdict::TooMuch => "too-much",
            EqualVerdict::CannotTell => "cant-tell",
        };
        let words = format!(
            "in against out: {verdict}, {:.2} L missing, good to {:.2} L",
            found.missing_l, found.within_l
        );
        let value =
            json!({ "verdict": verdict, "missing_l": found.missing_l, "within_l": found.within_l });
        Ok(Some(("amounts", value, vec![words], found.working)))
    }

    fn levels(&self) -> Result<Option<Answered>, Wrong> {
        let Some(seen) = self.level.as_deref() else {
            return Ok(None);
        };
        let window_c = self.window.as_deref().map(window).transpose()?;
        let found = level_at(&Levels {
            seen: match seen {
                "low" => LevelSeen::Low,
                "high" => LevelSeen::High,
                _ => LevelSeen::AtMark,
            },
            temperature_c: self
                .at
                .as_deref()
                .map(|text| celsius(text, "--at"))
                .transpose()?,
            window_c,
        })
        .map_err(refused("--window"))?;
        let verdict = match found.verdict {
            LevelVerdict::Closes => "closes",
            LevelVerdict::Low => "low",
            LevelVerdict::High => "high",
            LevelVerdict::TooCold => "too-cold",
            LevelVerdict::TooHot => "too-hot",
            LevelVerdict::CannotTell => "cant-tell",
        };
        let value = json!({ "verdict": verdict, "words": found.words });
        Ok(Some((
            "level",
            value,
            vec![format!("level: {}", found.words)],
            found.working,
        )))
    }

    fn two_sorts(&self, kind: Kind) -> Result<Option<Answered>, Wrong> {
        if self.inside.is_none() && self.new.is_none() && self.asked_for.is_none() {
            return Ok(None);
        }
        let found = sorts(&Sorts {
            kind,
            inside: self.inside.clone(),
            new: self.new.clone(),
            asked_for: self.asked_for.clone(),
        })
        .map_err(refused("--new"))?;
        let may = match found.may {
            May::Yes => "yes",
            May::Said => "said",
            May::No => "no",
            May::Ask => "ask",
        };
        let value = json!({ "may": may, "words": found.words });
        Ok(Some(("sorts", value, vec![found.words], found.working)))
    }

    fn mix(&self, kind: Kind) -> Result<Option<Answered>, Wrong> {
        let Some(holds) = &self.holds else {
            return Ok(None);
        };
        let holds_l = litres(holds, "--holds")?;
        let left_l = litres(&self.left, "--left")?;
        let left_percent = percent(&self.now, "--now")?;
        match kind {
            Kind::Urea => {
                let question = Urea {
                    tank_l: holds_l,
                    left_l,
                    left_percent,
                    add_percent: percent(&self.bottle, "--bottle")?,
                };
                let found = urea(&question).map_err(refused("--holds"))?;
                let words = match found.drain_l {
                    None => format!(
                        "filled up it has {:.1} %, within the standard",
                        found.full_percent
                    ),
                    Some(drain) => format!(
                        "filled up it has {:.1} %: drain {drain:.1} L first",
                        found.full_percent
                    ),
                };
                let value = json!({ "percent": found.full_percent, "within_standard": found.within_standard, "drain_l": found.drain_l });
                Ok(Some(("mix", value, vec![words], found.working)))
            }
            Kind::Washer => {
                let found = washer(&Washer {
                    holds_l,
                    left_l,
                    left_percent,
                    want_percent: self
                        .want
                        .as_deref()
                        .map(|text| percent(text, "--want"))
                        .transpose()?,
                    want_c: self
                        .want_frost
                        .as_deref()
                        .map(|text| celsius(text, "--want-frost"))
                        .transpose()?,
                    label: self
                        .label
                        .as_deref()
                        .map(label)
                        .transpose()?
                        .unwrap_or_default(),
                })
                .map_err(refused("--holds"))?;
                let words = format!(
                    "pour {:.2} L of concentrate and {:.2} L of water",
                    found.concentrate_l, found.water_l
                );
                let value = json!({
                    "concentrate_l": found.concentrate_l, "water_l": found.water_l,
                    "percent": found.percent, "freezes_c": found.freezes_c,
                });
                Ok(Some(("mix", value, vec![words], found.working)))
            }
            _ => Err(refused("--holds")(FluidError::NotChemistry { kind })),
        }
    }

    fn charge(&self, kind: Kind) -> Result<Option<Answered>, Wrong> {
        let weights = [self.label_weight, self.weight_out, self.weight_in];
        if kind != Kind::Refrigerant || weights.iter().all(Option::is_none) {
            return Ok(None);
        }
        let found = refrigerant(&Refrigerant {
            label_g: self.label_weight,
            out_g: self.weight_out,
            in_g: self.weight_in,
            within_g: self.scale,
            oil_out_ml: None,
            oil_for_parts_ml: None,
            oil_in_ml: None,
        })
        .map_err(refused("--label-weight"))?;
        let verdict = match found.verdict {
            ChargeVerdict::AsLabelled => "as-labelled",
            ChargeVerdict::Short => "short",
            ChargeVerdict::TooMuch => "too-much",
            ChargeVerdict::Open => "open",
        };
        let value = json!({ "verdict": verdict, "lost_g": found.lost_g, "words": found.words });
        Ok(Some(("charge", value, found.words, found.working)))
    }
}

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refused(place: &'static str) -> impl Fn(FluidError) -> Wrong {
    move |error| {
        let message = error.to_string();
        let (what, mend) = message.rsplit_once(": ").unwrap_or((&message, "check it"));
        Wrong {
            code: 1,
            ..Wrong::input(place, what, mend)
        }
    }
}

fn number(text: &str, dimension: Dimension, unit: Unit, place: &str) -> Result<f64, Wrong> {
    let unreadable = |message: String| {
        let (what, mend) = message.split_once("; ").unwrap_or((&message, "check it"));
        Wrong::input(place, what, mend)
    };
    let measured =
        measure::read(text.trim(), dimension).map_err(|error| unreadable(error.to_string()))?;
    let converted = measured
        .convert(unit)
        .map_err(|error| unreadable(error.to_string()))?;
    // Every decimal number prints as one that reads as the nearest double.
    Ok(converted.number().to_string().parse().unwrap_or(f64::NAN))
}

fn celsius(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Temperature, Unit::Celsius, place)
}

fn litres(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Volume, Unit::Litre, place)
}

fn percent(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Fraction, Unit::Percent, place)
}

/// `4.5L~0.3L@60C`; a jug is good to 0.1 L where nothing is said.
fn amount(text: &str, place: &str) -> Result<Amount, Wrong> {
    const JUG_L: f64 = 0.1;
    let (volume, temperature) = match text.split_once('@') {
        Some((volume, temperature)) => (volume, Some(celsius(temperature, place)?)),
        None => (text, None),
    };
    let (volume, off) = match volume.split_once('~') {
        Some((volume, off)) => (volume, litres(off, place)?),
        None => (volume, JUG_L),
    };
    Ok(Amount {
        litres: litres(volume, place)?,
        within_l: off,
        temperature_c: temperature,
    })
}

/// `35C..45C`.
fn window(text: &str) -> Result<(f64, f64), Wrong> {
    let (low, high) = text.split_once("..").ok_or_else(|| {
        Wrong::input(
            "--window",
            format!("`{text}` has no two ends"),
            "write it such as 35C..45C",
        )
    })?;
    Ok((celsius(low, "--window")?, celsius(high, "--window")?))
}

/// `50% -20C, 100% -45C`.
fn label(text: &str) -> Result<Vec<(f64, f64)>, Wrong> {
    let point = |point: &str| {
        let (share, frost) = point.trim().split_once(' ').ok_or_else(|| {
            Wrong::input(
                "--label",
                format!("`{point}` is no point of a label"),
                "write 50% -20C",
            )
        })?;
        Ok((percent(share, "--label")?, celsius(frost, "--label")?))
    };
    text.split(',').map(point).collect()
}
