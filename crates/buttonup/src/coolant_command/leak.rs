//! A leak test from a table of readings.

use super::read::{self, Strength};
use super::{answered, refused};
use crate::answer::{Answer, Wrong};
use clap::Args;
use coolant::{Contents, LeakLimit, LeakQuestion, LeakVerdict};
use serde_json::json;
use shop::calculators::coolant::Readings;
use std::path::{Path, PathBuf};

/// A pressure test.
#[derive(Debug, Args)]
pub struct Leak {
    /// The readings.
    file: PathBuf,
    /// What is still tight: 20mL/h, or 2kPa/10min.
    #[arg(long)]
    limit: String,
    /// Air above the coolant, tester and hose included: 1L~0.1L.
    #[arg(long)]
    headspace: Option<String>,
    /// Coolant in the system; its strength has to be told too.
    #[arg(long)]
    coolant: Option<String>,
    #[command(flatten)]
    strength: Strength,
    /// The gauge's smallest division; the last digit written in the file if not told.
    #[arg(long)]
    gauge_step: Option<String>,
    /// How far the change of temperature may be off.
    #[arg(long, default_value = "0.5K")]
    temperature_within: String,
    /// The engine is as cold as the shop: without a temperature column it stays the same.
    #[arg(long)]
    cold: bool,
    /// Height above sea level.
    #[arg(long, default_value = "0m", allow_hyphen_values = true)]
    altitude: String,
    /// The cap's rating.
    #[arg(long)]
    cap: Option<String>,
    /// The system's rating, where it is lower.
    #[arg(long)]
    system: Option<String>,
    /// Readings of the tester closed on itself.
    #[arg(long)]
    blank: Option<PathBuf>,
}

pub fn leak(args: &Leak) -> Result<Answer, Wrong> {
    let table = table(&args.file)?;
    let blank = args.blank.as_deref().map(self::table).transpose()?;
    let pressure = |text: &Option<String>, place: &str| {
        text.as_deref()
            .map(|text| read::kilopascals(text, place))
            .transpose()
    };
    let headspace = args.headspace.as_deref();
    let found = coolant::leak(&LeakQuestion {
        readings: &table.readings,
        gauge_step_kpa: pressure(&args.gauge_step, "--gauge-step")?.unwrap_or(table.step_kpa),
        altitude_m: read::metres(&args.altitude, "--altitude")?,
        // A headspace is hardly known better than to a tenth of a litre.
        headspace: headspace
            .map(|text| read::amount(text, 0.1, "--headspace"))
            .transpose()?,
        contents: contents(args)?,
        temperature_within_k: read::kelvins(&args.temperature_within, "--temperature-within")?,
        cold: args.cold,
        limit: limit(&args.limit)?,
        cap_gauge_kpa: pressure(&args.cap, "--cap")?,
        system_gauge_kpa: pressure(&args.system, "--system")?,
        blank: blank.as_ref().map(|table| table.readings.as_slice()),
    })
    .map_err(|error| {
        let place = table.place(&args.file.display().to_string(), &error);
        refused(&place)(error)
    })?;

    let mut lines = vec![match found.verdict {
        LeakVerdict::CannotTellYet { .. } => found.verdict.to_string(),
        // Nothing that is measured is certain.
        _ => format!(
            "{} (confidence {:.1} %)",
            found.said(),
            found.confidence.min(0.999) * 100.0
        ),
    }];
    match found.ml_per_h {
        Some(rate) => lines.push(format!(
            "{:.0} mL/h, from {:.0} to {:.0}",
            rate.mid(),
            rate.low(),
            rate.high()
        )),
        None => lines.push("no mL/h: the headspace is not known".to_owned()),
    }
    if let Some(share) = found.cooling_share {
        lines.push(format!("{:.0} % of the drop is cooling", share * 100.0));
    }
    let assumptions: Vec<String> = found.assumptions.iter().map(ToString::to_string).collect();
    let notes: Vec<String> = found.notes.iter().map(ToString::to_string).collect();
    lines.extend(assumptions.iter().chain(&notes).cloned());
    let wait_minutes = match found.verdict {
        LeakVerdict::CannotTellYet { wait_minutes, .. } => wait_minutes,
        LeakVerdict::Tight | LeakVerdict::Leaks => None,
    };
    let own = json!({
        "leak_ml_per_h": found.ml_per_h.map(measure::Range::mid),
        "low": found.ml_per_h.map(measure::Range::low),
        "high": found.ml_per_h.map(measure::Range::high),
        "verdict": found.verdict.code(),
        "why": found.verdict.why().map(coolant::Why::code),
        "said": found.said(),
        "confidence": found.verdict.why().is_none().then_some(found.confidence),
        "cooling_share": found.cooling_share,
        "drop_kpa_in_10_min": found.drop_kpa_in_10_min.mid(),
        "wait_minutes": wait_minutes,
        "assumptions": assumptions,
        "notes": notes,
    });
    Ok(answered(lines, &[own], &found.working))
}

fn contents(args: &Leak) -> Result<Option<Contents>, Wrong> {
    let Some(text) = &args.coolant else {
        return Ok(None);
    };
    Ok(Some(Contents {
        mixture: args.strength.mixture()?,
        litres: read::litres(text, "--coolant")?,
    }))
}

/// `20mL/h` or `2kPa/10min`.
fn limit(text: &str) -> Result<LeakLimit, Wrong> {
    let place = "--limit";
    let (amount, time) = text.split_once('/').ok_or_else(|| {
        Wrong::input(
            place,
            format!("`{text}` is no limit"),
            "write 20mL/h, or 2kPa/10min",
        )
    })?;
    let starts_with_digit = time.trim_start().starts_with(|c: char| c.is_ascii_digit());
    let minutes = if starts_with_digit {
        read::minutes(time, place)?
    } else {
        read::minutes(&format!("1 {time}"), place)?
    };
    match read::litres(amount, place) {
        Ok(litres) => Ok(LeakLimit::MlPerHour(litres * 1000.0 * 60.0 / minutes)),
        Err(_) => Ok(LeakLimit::Drop {
            kpa: read::kilopascals(amount, place)?,
            minutes,
        }),
    }
}

fn table(path: &Path) -> Result<Readings, Wrong> {
    let text = std::fs::read_to_string(path).map_err(|error| {
        Wrong::input(
            path.display().to_string(),
            format!("it cannot be read ({error})"),
            "check the name and the permission",
        )
    })?;
    Ok(shop::calculators::coolant::readings(
        &text,
        &path.display().to_string(),
        None,
    )?)
}

#[cfg(test)]
mod tests {
    use super::limit;
    use coolant::LeakLimit;

    #[test]
    fn limits_are_read_in_both_ways() {
        assert_eq!(limit("20 mL/h").unwrap(), LeakLimit::MlPerHour(20.0));
        let drop = LeakLimit::Drop {
            kpa: 2.0,
            minutes: 10.0,
        };
        assert_eq!(limit("2kPa/10min").unwrap(), drop);
        assert_eq!(limit("0.02bar/10min").unwrap(), drop);
        assert_eq!(limit("20").unwrap_err().place, "--limit");
        assert!(limit("2 kg/h").is_err());
    }
}
