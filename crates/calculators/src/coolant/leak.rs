//! The leak test: readings of a gauge over minutes, and what they say.

use super::ALTITUDE;
use super::readings::{Readings, readings};
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, capital};
use coolant::{Caution, Contents, LEAK_TEST_STEPS, Leak, LeakLimit, LeakQuestion, LeakVerdict};
use drawing::{Drawing, PressureRun, pressure};
use measure::Customary;
use serde_json::json;

/// A thermometer in the bottle, or "it stayed the same" of a cold engine.
const TEMPERATURE_WITHIN_K: f64 = 0.5;

pub(super) const LEAK: Calculator = Calculator {
    code: "leak",
    name: "Leak test",
    what: "pressure against time, cooling taken out",
    cautions: &[Caution::Hot.text(), Caution::MakersSpecification.text()],
    how: &LEAK_TEST_STEPS,
    form: &[
        Part::lines(
            "readings",
            "Readings",
            "minutes, pressure, temperature: one reading a line, or a pasted table",
        ),
        Part::choice(
            "unit",
            "Pressure is in",
            &[("bar", "bar, °C"), ("psi", "psi, °F"), ("kPa", "kPa, °C")],
        ),
        Part::tick(
            "cold",
            "The engine is as cold as the shop",
            "tick it where nobody read the temperature and it stood for hours",
        ),
        Part::text("limit", "May lose", "such as 0.05 bar, or 20 mL"),
        Part::number("limit-time", "In", Holds::TIME, "such as 15 min"),
        Part::number(
            "cap",
            "Cap",
            Holds::PRESSURE,
            "stamped on it; never test above it",
        ),
        Part::number(
            "headspace",
            "Air above the coolant",
            Holds::VOLUME,
            "tester and hose too, such as 1 L; may stay empty",
        ),
        Part::number(
            "capacity",
            "Coolant in the system",
            Holds::VOLUME,
            "may stay empty",
        ),
        ALTITUDE,
        Part::lines(
            "blank",
            "Tester closed on itself",
            "readings the same way, may stay empty",
        ),
    ],
    at_first: &[],
    run: leak,
};

/// The test by a form's fields: readings pasted or typed a line each.
#[must_use]
pub fn leak(asked: &mut Asked) -> Option<Answer> {
    asked.needed(
        "readings",
        "one reading a line: minutes, pressure, temperature",
    );
    let heading = match asked.text("unit") {
        "psi" => "minutes,gauge_psi,temperature_f",
        "kPa" => "minutes,gauge_kpa,temperature_c",
        _ => "minutes,gauge_bar,temperature_c",
    };
    let text = asked.text("readings").to_owned();
    if text.is_empty() {
        return None;
    }
    let table = match readings(&text, "readings", Some(heading)) {
        Ok(table) => table,
        Err(trouble) => {
            asked.wrong(
                "readings",
                format!("{}: {}; {}", trouble.place, trouble.what, trouble.mend),
            );
            return None;
        }
    };
    let blank_text = asked.text("blank").to_owned();
    let blank = match readings(&blank_text, "tester", Some(heading)) {
        _ if blank_text.is_empty() => None,
        Ok(table) => Some(table),
        Err(trouble) => {
            asked.wrong(
                "blank",
                format!("{}: {}; {}", trouble.place, trouble.what, trouble.mend),
            );
            None
        }
    };
    let answer = leak_of(asked, &table, blank.as_ref())?;
    asked.troubles.is_empty().then_some(answer)
}

/// The test by readings that were taken, with what else the fields tell.
pub fn leak_of(asked: &mut Asked, table: &Readings, blank: Option<&Readings>) -> Option<Answer> {
    asked.needed(
        "limit",
        "such as 0.05 bar, by the vehicle maker or your own habit",
    );
    asked.needed("limit-time", "such as 15 min");
    let limit = limit(asked);
    let headspace = asked.amount("headspace", 0.1);
    let question = LeakQuestion {
        readings: &table.readings,
        gauge_step_kpa: asked.kilopascals("step").unwrap_or(table.step_kpa),
        altitude_m: asked.altitude_m(),
        headspace,
        contents: contents(asked),
        temperature_within_k: TEMPERATURE_WITHIN_K,
        cold: asked.text("cold") == "yes",
        limit: limit?,
        cap_gauge_kpa: asked.kilopascals("cap"),
        system_gauge_kpa: None,
        blank: blank.map(|table| table.readings.as_slice()),
    };
    let leak = match coolant::leak(&question) {
        Ok(leak) => leak,
        Err(error) => {
            asked.wrong(
                "readings",
                format!("{}: {error}", table.place("readings", &error)),
            );
            return None;
        }
    };
    Some(answer(asked, table, &leak))
}

fn limit(asked: &mut Asked) -> Option<LeakLimit> {
    let minutes = asked.minutes("limit-time");
    let text = asked.text("limit").to_lowercase();
    if text.contains("ml") {
        let litres = asked.litres("limit")?;
        return Some(LeakLimit::MlPerHour(litres * 1000.0 * 60.0 / minutes?));
    }
    let kpa = asked.kilopascals("limit")?;
    Some(LeakLimit::Drop {
        kpa,
        minutes: minutes?,
    })
}

/// The coolant in the system, where its litres are told.
fn contents(asked: &mut Asked) -> Option<Contents> {
    let litres = asked.litres("capacity")?;
    asked.or_else("strength", "50 %");
    Some(Contents {
        mixture: asked.strength("strength")?,
        litres,
    })
}

fn answer(asked: &Asked, table: &Readings, leak: &Leak) -> Answer {
    let mut answer = Answer {
        fact: match leak.verdict {
            LeakVerdict::Tight => "tight".to_owned(),
            LeakVerdict::Leaks => "it leaks".to_owned(),
            LeakVerdict::CannotTellYet {
                wait_minutes: Some(minutes),
                ..
            } => {
                format!("wait {minutes} min")
            }
            LeakVerdict::CannotTellYet { .. } => "can't tell yet".to_owned(),
        },
        said: capital(&leak.said()),
        tone: match leak.verdict {
            LeakVerdict::Tight => "yes",
            LeakVerdict::Leaks => "no",
            LeakVerdict::CannotTellYet { .. } => "wait",
        },
        ..Answer::default()
    };
    let drop = leak.drop_kpa_in_10_min;
    answer.row(
        "lost in 10 min at steady temperature",
        format!(
            "{} ({:.2} to {:.2}\u{202f}bar)",
            asked.show_kpa(drop.mid()),
            drop.low() / 100.0,
            drop.high() / 100.0
        ),
    );
    if let Some(rate) = leak.ml_per_h {
        answer.row(
            "coolant lost",
            format!(
                "{:.0}\u{202f}mL/h, {:.0} to {:.0}",
                rate.mid(),
                rate.low(),
                rate.high()
            ),
        );
    }
    if let Some(share) = leak.cooling_share {
        answer.row(
            "of the drop is cooling",
            format!("{:.0}\u{202f}%", share * 100.0),
        );
    }
    if leak.verdict.why().is_none() {
        answer.row(
            "sure to",
            format!("{:.0}\u{202f}%", (leak.confidence * 100.0).min(99.0)),
        );
    }
    let assumed = leak.assumptions.iter().map(ToString::to_string);
    answer.notes.extend(assumed.map(|note| capital(&note)));
    let noted = leak.notes.iter().map(ToString::to_string);
    answer.alarms.extend(noted.map(|note| capital(&note)));
    answer.drawings.push(drawn(asked, table, leak));
    answer.outputs = json!({
        "verdict": leak.verdict.code(), "why": leak.verdict.why().map(coolant::Why::code), "drop_kpa_in_10_min": drop.mid(),
        "low": drop.low(), "high": drop.high(),
        "ml_per_h": leak.ml_per_h.map(measure::Range::mid),
        "cooling_share": leak.cooling_share, "confidence": leak.confidence,
    });
    answer.with_working(&leak.working)
}

fn drawn(asked: &Asked, table: &Readings, leak: &Leak) -> Drawing {
    const KPA_PER_PSI: f64 = 6.894_757;
    let (unit, kpa) = match asked.customary() {
        Customary::Us => ("psi", KPA_PER_PSI),
        Customary::Metric => ("bar", 100.0),
    };
    let readings = table.readings.iter();
    let line = leak.line.iter();
    pressure(
        &PressureRun {
            readings: readings
                .map(|one| (one.minutes, one.gauge_kpa / kpa))
                .collect(),
            line: line
                .map(|one| {
                    (
                        one.minutes,
                        one.gauge_kpa / kpa,
                        one.low_kpa / kpa,
                        one.high_kpa / kpa,
                    )
                })
                .collect(),
            unit: unit.to_owned(),
            verdict: capital(&leak.said()),
        },
        PHONE_PX,
    )
}
