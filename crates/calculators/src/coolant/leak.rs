//! The leak test: readings of a gauge over minutes, and what they say.

use super::ALTITUDE;
use super::readings::{Readings, readings};
use crate::phrases::coolant as say;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, capital};
use coolant::{Caution, Contents, Leak, LeakLimit, LeakQuestion, LeakVerdict, leak_test_steps};
use drawing::{Drawing, PressureRun, pressure};
use measure::Customary;
use serde_json::json;

/// A thermometer in the bottle, or "it stayed the same" of a cold engine.
const TEMPERATURE_WITHIN_K: f64 = 0.5;

pub(super) const LEAK: Calculator = Calculator {
    code: "leak",
    name: say::leak_test,
    what: say::pressure_against_time_cooling_taken_out,
    cautions: &[
        || Caution::Hot.text(),
        || Caution::MakersSpecification.text(),
    ],
    how: leak_test_steps,
    form: &[
        Part::lines(
            "readings",
            say::readings,
            say::minutes_pressure_temperature_one_reading_a,
        ),
        Part::choice(
            "unit",
            say::pressure_is_in,
            &[
                ("bar", say::in_bar),
                ("psi", say::in_psi),
                ("kPa", say::in_kilopascals),
            ],
        ),
        Part::tick(
            "cold",
            say::the_engine_is_as_cold_as,
            say::tick_it_where_nobody_read_the,
        ),
        Part::text("limit", say::may_lose, say::such_as_0_05_bar_or),
        Part::number(
            "limit-time",
            say::within_the_time,
            Holds::TIME,
            say::such_as_15_min,
        ),
        Part::number(
            "cap",
            say::cap,
            Holds::PRESSURE,
            say::stamped_on_it_never_test_above,
        ),
        Part::number(
            "headspace",
            say::air_above_the_coolant,
            Holds::VOLUME,
            say::tester_and_hose_too_such_as,
        ),
        Part::number(
            "capacity",
            say::coolant_in_the_system,
            Holds::VOLUME,
            say::may_stay_empty,
        ),
        ALTITUDE,
        Part::lines(
            "blank",
            say::tester_closed_on_itself,
            say::readings_the_same_way_may_stay,
        ),
    ],
    at_first: &[],
    run: leak,
};

/// The test by a form's fields: readings pasted or typed a line each.
#[must_use]
pub fn leak(asked: &mut Asked) -> Option<Answer> {
    asked.needed("readings", say::one_reading_a_line_minutes_pressure());
    let heading = match asked.text("unit") {
        "psi" => "minutes,gauge_psi,temperature_f",
        "kPa" => "minutes,gauge_kpa,temperature_c",
        _ => "minutes,gauge_bar,temperature_c",
    };
    let text = asked.text("readings").to_owned();
    if text.is_empty() {
        return None;
    }
    let table = match readings(&text, say::the_readings(), Some(heading)) {
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
    let blank = match readings(&blank_text, say::the_tester(), Some(heading)) {
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
    asked.needed("limit", say::such_as_0_05_bar_by());
    asked.needed("limit-time", say::such_as_15_min());
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
                format!("{}: {error}", table.place(say::the_readings(), &error)),
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
            LeakVerdict::Tight => say::tight().to_owned(),
            LeakVerdict::Leaks => say::it_leaks().to_owned(),
            LeakVerdict::CannotTellYet {
                wait_minutes: Some(minutes),
                ..
            } => say::wait_minutes(minutes),
            LeakVerdict::CannotTellYet { .. } => say::cant_tell_yet().to_owned(),
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
        say::lost_in_10_min_at_steady(),
        say::drop_from_to(
            asked.show_kpa(drop.mid()),
            format!("{:.2}", drop.low() / 100.0),
            format!("{:.2}", drop.high() / 100.0),
        ),
    );
    if let Some(rate) = leak.ml_per_h {
        answer.row(
            say::coolant_lost(),
            say::rate_from_to(
                format!("{:.0}", rate.mid()),
                format!("{:.0}", rate.low()),
                format!("{:.0}", rate.high()),
            ),
        );
    }
    if let Some(share) = leak.cooling_share {
        answer.row(
            say::of_the_drop_is_cooling(),
            format!("{:.0}\u{202f}%", share * 100.0),
        );
    }
    if leak.verdict.why().is_none() {
        answer.row(
            say::sure_to(),
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
