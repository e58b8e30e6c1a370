//! Whether what the complaint needs was driven.

use crate::Quantity;
use crate::complaint::{Complaint, Need};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{MOTORWAY_KMH, MOVING_KMH, STANDING_KMH, WARM_C};
use crate::number::real;
use crate::phrases::check as say;

const NAME: CheckName = CheckName::Provoked;
/// A pause in what is asked for that does not break it, s.
const PAUSE_S: f64 = 90.0;

/// What was driven of one need.
enum Driven {
    Yes(String, f64),
    No(String, f64),
    NotInLog(String, String),
}

pub(crate) fn provoked(case: &Case, complaint: Option<&Complaint>, came_back: bool) -> Found {
    let Some(complaint) = complaint else {
        return Check::cant_tell(
            NAME,
            say::no_complaint_was_given(),
            say::say_when_it_happens(),
        )
        .into();
    };
    let driven: Vec<Driven> = complaint
        .needs
        .iter()
        .map(|need| driven(case, need))
        .collect();
    if driven.is_empty() && !came_back {
        return Check::cant_tell(
            NAME,
            say::the_complaint_does_not_say_when(),
            say::say_it_with_minutes_speed_standing(),
        )
        .into();
    }
    let mut told = Vec::new();
    let mut readings = Vec::new();
    let (mut missing, mut unknown) = (Vec::new(), Vec::new());
    let mut next = String::new();
    for (driven, need) in driven.into_iter().zip(&complaint.needs) {
        match driven {
            Driven::Yes(words, value) => {
                told.push(words);
                readings.push((need, value));
            }
            Driven::No(words, value) => {
                missing.push(words);
                readings.push((need, value));
            }
            Driven::NotInLog(words, how) => {
                unknown.push(words);
                next = how;
            }
        }
    }
    let mut check = if came_back {
        Check::new(NAME, Outcome::Held, say::it_came_back_in_this_drive())
    } else if !missing.is_empty() {
        let mut check = Check::new(NAME, Outcome::NotProvoked, missing.join("; "));
        check.next = Some(say::drive_again(complaint.asked()));
        check
    } else if !unknown.is_empty() {
        Check::cant_tell(NAME, unknown.join("; "), next)
    } else {
        Check::new(NAME, Outcome::Held, told.join("; "))
    };
    for (need, value) in readings {
        check = check.reading(need.name(), value, need.unit());
    }
    check.into()
}

fn driven(case: &Case, need: &Need) -> Driven {
    let drive = &case.drive;
    let no_speed = || {
        Driven::NotInLog(
            say::without_road_speed(need.said()),
            say::record_road_speed_pid_0d_as().to_owned(),
        )
    };
    let speed = |step: usize| drive.speed.get(step).copied().flatten();
    let enough = |got: f64, wanted: f64, what: &str| {
        let words = say::so_much_of(
            what,
            format!("{got:.0}"),
            format!("{wanted:.0}"),
            need.unit(),
        );
        // Half a minute is not held against a driver.
        if got >= wanted * 0.975 {
            Driven::Yes(words, got)
        } else {
            Driven::No(words, got)
        }
    };
    match need {
        Need::Motorway(minutes) if drive.has_speed() => {
            let got = longest(case, |step| speed(step).is_some_and(|v| v >= MOTORWAY_KMH));
            enough(got, *minutes, say::on_the_motorway_in_one_go())
        }
        Need::Town(minutes) if drive.has_speed() => {
            let got = drive.minutes(|step| {
                drive.is_running(step)
                    && speed(step).is_some_and(|v| v < 60.0)
                    && nearby_move(case, step)
            });
            enough(got, *minutes, say::in_town_stop_and_go())
        }
        Need::Standing(minutes) if drive.has_speed() => {
            let got = longest(case, |step| {
                drive.is_running(step) && speed(step).is_some_and(|v| v < STANDING_KMH)
            });
            enough(got, *minutes, say::standing_with_the_engine_running())
        }
        Need::Above(kmh) if drive.has_speed() => {
            let most = drive.speed.iter().flatten().copied().fold(0.0, f64::max);
            let got = drive.minutes(|step| speed(step).is_some_and(|v| v >= kmh - 2.0));
            if got >= 0.5 {
                Driven::Yes(
                    say::minutes_at_speed(format!("{got:.1}"), format!("{kmh:.0}")),
                    most,
                )
            } else {
                Driven::No(
                    say::at_most_at_speed(format!("{most:.0}"), format!("{kmh:.0}")),
                    most,
                )
            }
        }
        Need::Distance(km) if drive.has_speed() => {
            let got = drive.speed.iter().flatten().sum::<f64>() * drive.step_s / 3600.0;
            enough(got, *km, say::driven())
        }
        Need::Motorway(_)
        | Need::Town(_)
        | Need::Standing(_)
        | Need::Above(_)
        | Need::Distance(_) => no_speed(),
        Need::Driving(minutes) => {
            let got = longest(case, |step| {
                drive.is_running(step) && (!drive.has_speed() || speed(step).is_some())
            });
            enough(got, *minutes, say::engine_running())
        }
        Need::Cold => cold(case),
        Need::Hot => hot(case),
        Need::Load => loaded(case),
        Need::Revs(rpm) => revs(case, *rpm),
        Need::NotRecorded(_) => Driven::NotInLog(
            say::log_does_not_tell_of(need.said()),
            say::note_beside_the_log(need.said()),
        ),
    }
}

/// The longest time in which something held, short pauses taken out, in minutes.
fn longest(case: &Case, holds: impl Fn(usize) -> bool) -> f64 {
    let drive = &case.drive;
    let pause = drive.steps_of(PAUSE_S);
    let (mut best, mut held, mut paused) = (0_usize, 0_usize, 0_usize);
    for step in 0..drive.steps {
        if holds(step) {
            held += 1;
            paused = 0;
        } else {
            paused += 1;
            if paused > pause {
                held = 0;
            }
        }
        best = best.max(held);
    }
    real(best) * drive.step_s / 60.0
}

/// Whether it moved within two minutes of this step: standing all day is no town.
fn nearby_move(case: &Case, step: usize) -> bool {
    let drive = &case.drive;
    let around = drive.steps_of(120.0);
    (step.saturating_sub(around)..(step + around).min(drive.steps)).any(|step| {
        drive
            .speed
            .get(step)
            .copied()
            .flatten()
            .is_some_and(|v| v >= MOVING_KMH / 2.0)
    })
}

fn no_coolant() -> Driven {
    Driven::NotInLog(
        say::without_coolant_temperature_the_log_cant().to_owned(),
        say::record_coolant_pid_05_as_well().to_owned(),
    )
}

fn cold(case: &Case) -> Driven {
    let first = case
        .log
        .of(Quantity::Coolant)
        .first()
        .map(|sample| sample.value);
    match first {
        Some(c) if c <= 40.0 => Driven::Yes(say::started_at(format!("{c:.0}")), c),
        Some(c) => Driven::No(say::started_not_cold(format!("{c:.0}")), c),
        None => no_coolant(),
    }
}

fn hot(case: &Case) -> Driven {
    let drive = &case.drive;
    if drive.coolant.iter().all(Option::is_none) {
        return no_coolant();
    }
    let got = drive.minutes(|step| {
        drive.is_running(step) && drive.coolant_at(step).is_some_and(|c| c >= WARM_C + 5.0)
    });
    if got >= 3.0 {
        Driven::Yes(say::warm_for(format!("{got:.0}")), got)
    } else {
        Driven::No(say::warm_only_for(format!("{got:.1}")), got)
    }
}

fn loaded(case: &Case) -> Driven {
    let drive = &case.drive;
    if drive.load.iter().all(Option::is_none) {
        return Driven::NotInLog(
            say::without_engine_load_the_log_cant().to_owned(),
            say::record_load_pid_04_as_well().to_owned(),
        );
    }
    let got = drive.minutes(|step| {
        drive
            .load
            .get(step)
            .copied()
            .flatten()
            .is_some_and(|load| load >= 75.0)
    });
    if got >= 1.0 {
        Driven::Yes(say::minutes_loaded(format!("{got:.1}")), got)
    } else {
        Driven::No(say::minutes_loaded_one_needed(format!("{got:.1}")), got)
    }
}

fn revs(case: &Case, wanted: f64) -> Driven {
    let most = case
        .log
        .of(Quantity::Rpm)
        .iter()
        .map(|sample| sample.value)
        .reduce(f64::max);
    match most {
        Some(most) if most >= wanted * 0.98 => {
            Driven::Yes(say::revs_up_to(format!("{most:.0}")), most)
        }
        Some(most) => Driven::No(
            say::revs_at_most(format!("{most:.0}"), format!("{wanted:.0}")),
            most,
        ),
        None => Driven::NotInLog(
            say::without_rpm_the_log_cant_tell().to_owned(),
            say::record_rpm_pid_0c_as_well().to_owned(),
        ),
    }
}
