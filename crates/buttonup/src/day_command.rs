//! `buttonup day`: who works where and when, promises, and whom to ring, from a file or from a
//! shop's record.
//!
//! Reads what is asked, asks the crate `stalls`, and writes down its answer. Local times become
//! minutes here, and minutes local times: the crate knows no zone.

mod record;

use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::civil::{Date, Weekday};
use jiff::tz::{AmbiguousOffset, TimeZone};
use jiff::{Timestamp, ZonedDateTime};
use serde_json::{Value, json};
use shop::view::{plan_notes, plan_told};
use stalls::{Ask, Call, Compared, Fault, Floor, Local, Minute, Plan, Promise, RollOut, Spread};
use std::fs;
use std::path::PathBuf;
use std::time::{Duration, Instant};

/// The floor on a day.
#[derive(Debug, Args)]
pub struct Day {
    /// Stalls, people and orders as TOML (docs/day.md describes it).
    #[arg(required_unless_present_any = ["data", "database"], conflicts_with_all = ["data", "database"])]
    file: Option<String>,
    /// The shop's folder: its own days are planned, by its record.
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
    /// A PostgreSQL database that holds the record instead, as `postgres://user@host/name`.
    #[arg(long, value_name = "URL")]
    database: Option<String>,
    /// The name of the shop's log; several shops in one database need one each.
    #[arg(long, value_name = "NAME", default_value = "shop")]
    log: String,
    /// Only what is done and promised on this day, one of the days ahead: 2026-11-30.
    #[arg(long, value_name = "DATE", conflicts_with = "file")]
    on: Option<Date>,
    /// Could this order of the file be taken in? Told by what it does to the others.
    #[arg(long, value_name = "ORDER", conflicts_with_all = ["roll_out", "data", "database"])]
    take_in: Option<String>,
    /// Is it worth buttoning this order's vehicle up to roll it out while it waits?
    #[arg(long, value_name = "ORDER", conflicts_with_all = ["data", "database"])]
    roll_out: Option<String>,
    /// Minutes to button it up: one number, or least, likely and most.
    #[arg(
        long,
        value_name = "MINUTES",
        value_delimiter = ',',
        default_value = "25,35,50"
    )]
    button_up: Vec<i64>,
    /// Minutes to be as far again.
    #[arg(
        long,
        value_name = "MINUTES",
        value_delimiter = ',',
        default_value = "25,35,50"
    )]
    open_again: Vec<i64>,
    /// The plan is looked for no longer than this.
    #[arg(long, default_value_t = 2.0, conflicts_with_all = ["data", "database"])]
    seconds: f64,
    /// How many plans are looked at. Where the seconds suffice, the same file gives the same plan.
    #[arg(long, default_value_t = 3000, conflicts_with_all = ["data", "database"])]
    plans: u64,
    /// How often the days ahead are lived through.
    #[arg(long, default_value_t = 499, conflicts_with_all = ["data", "database"])]
    draws: u64,
    /// The same seed gives the same answer.
    #[arg(long, default_value_t = 1, conflicts_with_all = ["data", "database"])]
    seed: u64,
}

/// Lays the day.
pub fn run(asked: &Day) -> Result<Answer, Wrong> {
    match &asked.file {
        Some(file) => of_file(asked, file),
        None => record::run(asked),
    }
}

fn of_file(asked: &Day, file: &str) -> Result<Answer, Wrong> {
    let text = fs::read_to_string(file).map_err(|error| {
        Wrong::input(file, error.to_string(), "name a text file that can be read")
    })?;
    let place = Place::of(file, &text)?;
    let read = stalls::read(file, &text, &|local| place.minute(local));
    let mut read = read.map_err(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        Wrong::input(file, lines.join("\n"), "see docs/day.md")
    })?;
    let ask = Ask {
        seed: asked.seed,
        draws: asked.draws.clamp(1, 100_000),
        ..Ask::default()
    };
    let refused = |faults: Vec<Fault>| {
        let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
        Wrong::input(file, lines.join("\n"), "see docs/day.md")
    };
    let further = match &asked.take_in {
        Some(name) => {
            let at = order_of(&read.floor, name, file)?;
            Some(read.floor.orders.remove(at))
        }
        None => None,
    };
    let began = Instant::now();
    let limit = Duration::try_from_secs_f64(asked.seconds).unwrap_or(Duration::from_secs(2));
    let plan = stalls::plan(&read.floor, None, asked.seed, &mut |seen| {
        seen < asked.plans && began.elapsed() < limit
    });
    let plan = plan.map_err(refused)?;
    let began = Instant::now();
    let mut go_on = |seen: u64| seen < asked.plans && began.elapsed() < limit;
    let compared = match (further, &asked.roll_out) {
        (Some(order), _) => {
            Some(stalls::take_in(&plan, order, &ask, asked.seed, &mut go_on).map_err(refused)?)
        }
        (None, Some(name)) => {
            let rolled = rolled(asked, &plan, name, file)?;
            Some(stalls::roll_out(&plan, rolled, &ask, asked.seed, &mut go_on).map_err(refused)?)
        }
        (None, None) => None,
    };
    let promises = stalls::promises(&plan, &ask).map_err(refused)?;
    let say = |minute: Minute| place.say(minute, read.now);
    let calls = stalls::calls(&plan, &promises, &ask, &say);
    let day = Told {
        say: &say,
        iso: &|minute| place.iso(minute),
        warnings: read.warnings.iter().map(ToString::to_string).collect(),
        plan: &plan,
        promises: &promises,
        calls: &calls,
        compared: compared.as_ref(),
    };
    Ok(Answer {
        text: day.words(),
        json: day.json(),
        good: true,
    })
}

fn order_of(floor: &Floor, name: &str, file: &str) -> Result<usize, Wrong> {
    let at = floor.orders.iter().position(|order| order.name == name);
    at.ok_or_else(|| {
        let names: Vec<&str> = floor
            .orders
            .iter()
            .map(|order| order.name.as_str())
            .collect();
        Wrong::input(
            file,
            format!("it has no order {name}"),
            format!("name one of {}", names.join(", ")),
        )
    })
}

/// The first wait that a vehicle spends in its stall since it can't roll.
fn rolled(asked: &Day, plan: &Plan, name: &str, file: &str) -> Result<RollOut, Wrong> {
    let order = order_of(&plan.floor, name, file)?;
    let phase = stalls::waits_apart(&plan.floor.orders[order]);
    let phase = phase.ok_or_else(|| {
        Wrong::input(
            file,
            format!("{name} never waits while it can't roll"),
            "ask for one that does",
        )
    })?;
    Ok(RollOut {
        order,
        phase,
        button_up: spread(&asked.button_up, "--button-up")?,
        open_again: spread(&asked.open_again, "--open-again")?,
    })
}

fn spread(minutes: &[i64], option: &str) -> Result<Spread, Wrong> {
    match minutes {
        [one] => Ok(Spread::sure(*one)),
        [least, likely, most] => Ok(Spread::new(*least, *likely, *most)),
        _ => Err(Wrong::input(
            option,
            format!("{} numbers are given", minutes.len()),
            "give one, or least, likely and most: 25,35,50",
        )),
    }
}

/// The zone of the shop, and the minute that minutes are counted from.
struct Place {
    zone: TimeZone,
    origin: Minute,
}

impl Place {
    /// The zone that the file names, else that of this machine. Minutes count from the midnight
    /// before the moment that is planned from, so that half hours are those of its clock.
    fn of(file: &str, text: &str) -> Result<Self, Wrong> {
        let zone = match stalls::zone(text) {
            None => TimeZone::system(),
            Some(name) => TimeZone::get(&name).map_err(|_| {
                Wrong::input(
                    file,
                    format!("there is no time zone {name}"),
                    "write it such as zone = \"Europe/Vienna\"",
                )
            })?,
        };
        let mut place = Self { zone, origin: 0 };
        if let Some(now) = stalls::now(text) {
            let midnight = Local {
                hour: 0,
                minute: 0,
                ..now
            };
            // Where that midnight was skipped, the first hour after it.
            let later = (0..3).map(|hour| Local { hour, ..midnight });
            place.origin = later
                .filter_map(|at| place.minute(at).ok())
                .next()
                .unwrap_or(0);
        }
        Ok(place)
    }

    /// Minutes of a local time. What the clock shows twice is the first of both.
    fn minute(&self, local: Local) -> Result<Minute, String> {
        let date = jiff::civil::DateTime::new(
            local.year,
            local.month,
            local.day,
            local.hour,
            local.minute,
            0,
            0,
        );
        let date = date.map_err(|_| format!("{local} is no date"))?;
        let found = self.zone.to_ambiguous_zoned_datetime(date);
        if matches!(found.offset(), AmbiguousOffset::Gap { .. }) {
            return Err(format!(
                "{local} does not exist: the clocks go forward and skip it"
            ));
        }
        let zoned = found
            .earlier()
            .map_err(|_| format!("{local} is too far away"))?;
        Ok(zoned.timestamp().as_second().div_euclid(60) - self.origin)
    }

    fn zoned(&self, minute: Minute) -> ZonedDateTime {
        let second = (minute + self.origin).saturating_mul(60);
        let stamp = Timestamp::from_second(second).unwrap_or(Timestamp::MAX);
        stamp.to_zoned_datetime(self.zone.clone())
    }

    /// For a program: local, with its offset.
    fn iso(&self, minute: Minute) -> String {
        self.zoned(minute).strftime("%Y-%m-%dT%H:%M%:z").to_string()
    }

    /// For a person: the hour today, the day as well on other days, the date after a week.
    fn say(&self, minute: Minute, now: Local) -> String {
        let zoned = self.zoned(minute);
        let time = zoned.strftime("%H:%M");
        let date = zoned.date();
        let Ok(today) = Date::new(now.year, now.month, now.day) else {
            return time.to_string();
        };
        let days = today.until(date).map_or(0, |span| span.get_days());
        let day = match zoned.weekday() {
            Weekday::Monday => "Mon",
            Weekday::Tuesday => "Tue",
            Weekday::Wednesday => "Wed",
            Weekday::Thursday => "Thu",
            Weekday::Friday => "Fri",
            Weekday::Saturday => "Sat",
            Weekday::Sunday => "Sun",
        };
        match days {
            0 => time.to_string(),
            1..=6 => format!("{day} {time}"),
            _ => format!("{day} {} {time}", zoned.strftime("%-d %b")),
        }
    }
}

/// Everything that is told.
struct Told<'a> {
    /// A minute for a person.
    say: &'a dyn Fn(Minute) -> String,
    /// The same for a program.
    iso: &'a dyn Fn(Minute) -> String,
    warnings: Vec<String>,
    plan: &'a Plan,
    promises: &'a [Promise],
    calls: &'a [Call],
    compared: Option<&'a Compared>,
}

impl Told<'_> {
    fn say(&self, minute: Minute) -> String {
        (self.say)(minute)
    }

    fn order(&self, at: usize) -> &str {
        &self.plan.floor.orders[at].name
    }

    /// Lines of work: whose phases these are, or in which stall.
    fn work(&self, own: &dyn Fn(&stalls::Placed) -> bool) -> Vec<&stalls::Placed> {
        self.plan.placed.iter().filter(|one| own(one)).collect()
    }

    fn notes(&self) -> Vec<String> {
        let mut notes = self.warnings.clone();
        notes.extend(plan_notes(self.plan));
        notes
    }

    fn words(&self) -> String {
        let mut lines = Vec::new();
        for (at, stall) in self.plan.floor.stalls.iter().enumerate() {
            lines.push(stall.name.clone());
            if let Some(held) = &stall.held {
                lines.push(format!("  held by {held}"));
            }
            self.lines(&self.work(&|one| one.stall == Some(at)), &mut lines);
        }
        for (at, person) in self.plan.floor.people.iter().enumerate() {
            lines.push(person.name.clone());
            self.lines(&self.work(&|one| one.people.contains(&at)), &mut lines);
        }
        lines.push("promises".to_owned());
        for promise in self.promises {
            lines.push(self.promise_line(promise));
        }
        if !self.calls.is_empty() {
            lines.push("ring now".to_owned());
        }
        for call in self.calls {
            lines.push(format!("  {}", call.sentence));
        }
        if let Some(compared) = self.compared {
            lines.extend(self.compared_lines(compared));
        }
        lines.extend(self.notes());
        let gap = 100.0 * self.plan.gap();
        lines.push(if self.plan.cost.points == self.plan.bound {
            "no plan is better".to_owned()
        } else {
            format!(
                "the best of {} plans; a better one could save at most {gap:.0} %",
                self.plan.looked_at
            )
        });
        lines.join("\n")
    }

    fn lines(&self, work: &[&stalls::Placed], lines: &mut Vec<String>) {
        if work.is_empty() {
            lines.push("  free".to_owned());
        }
        for one in work {
            let phase = &self.plan.floor.orders[one.order].phases[one.phase];
            lines.push(format!(
                "  {} to {}  {}: {}",
                self.say(one.from),
                self.say(one.to),
                self.order(one.order),
                phase.what
            ));
        }
    }

    fn promise_line(&self, promise: &Promise) -> String {
        let name = self.order(promise.order);
        let by = format!(
            "likely {}, 8 of 10 by {}; say {}",
            self.say(promise.likely),
            self.say(promise.by),
            self.say(promise.say)
        );
        match (promise.promised, promise.chance) {
            (Some(promised), Some(chance)) => format!(
                "  {name}: promised {}, kept {:.0} times in 10; {by}",
                self.say(promised),
                chance * 10.0
            ),
            _ => format!("  {name}: {by}"),
        }
    }

    fn compared_lines(&self, compared: &Compared) -> Vec<String> {
        let mut lines = vec![format!(
            "with it {:.1} promises break on average, without it {:.1}",
            compared.broken.1, compared.broken.0
        )];
        for effect in compared.felt(0.05) {
            lines.push(format!(
                "  {}: kept {:.0} times in 10 instead of {:.0}, {} minutes {}",
                effect.order,
                effect.chance.1 * 10.0,
                effect.chance.0 * 10.0,
                effect.later_minutes.abs(),
                if effect.later_minutes < 0 {
                    "earlier"
                } else {
                    "later"
                }
            ));
        }
        let say = |minute: Minute| self.say(minute);
        let changes = compared.plan.changes_from(self.plan, &say);
        lines.extend(
            changes
                .into_iter()
                .map(|change| format!("  {}", change.sentence)),
        );
        lines
    }

    fn json(&self) -> Value {
        let mut told = plan_told(self.plan, self.promises, self.calls, self.iso);
        told.notes = self.notes();
        let mut value = json!(told);
        value["compared"] = json!(self.compared.map(|compared| self.compared_json(compared)));
        value
    }

    fn compared_json(&self, compared: &Compared) -> Value {
        let say = |minute: Minute| self.say(minute);
        let changes = compared.plan.changes_from(self.plan, &say);
        json!({
            "broken_without": compared.broken.0,
            "broken_with": compared.broken.1,
            "effects": compared.effects.iter().map(|effect| json!({
                "order": effect.order,
                "chance_without": effect.chance.0,
                "chance_with": effect.chance.1,
                "later_minutes": effect.later_minutes,
            })).collect::<Vec<_>>(),
            "changes": changes.into_iter().map(|change| change.sentence).collect::<Vec<_>>(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{Day, run};
    use crate::answer::{Answer, Wrong};
    use clap::Parser;
    use std::fs;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Day,
    }

    fn asked(text: &str, options: &[&str]) -> Result<Answer, Wrong> {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("day.toml");
        fs::write(&file, text).unwrap();
        let words = [
            "day",
            file.to_str().unwrap(),
            "--plans",
            "200",
            "--draws",
            "99",
        ];
        let words = words.into_iter().chain(options.iter().copied());
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    /// The day that docs/day.md shows.
    fn documented() -> String {
        let text = include_str!("../../../docs/day.md");
        let (_, rest) = text.split_once("```toml\n").unwrap();
        rest.split_once("```").unwrap().0.to_owned()
    }

    #[test]
    fn the_documented_day_is_answered_in_the_agreed_form() {
        let answer = asked(&documented(), &[]).unwrap();
        let json = &answer.json;
        assert_eq!(json["now"], "2026-11-30T08:10+01:00");
        for (sort, names) in [
            ("stalls", vec!["stall 1", "stall 2", "stall 3"]),
            ("people", vec!["Ana", "Ben"]),
        ] {
            let told: Vec<&str> = (json[sort].as_array().unwrap().iter())
                .map(|one| one["name"].as_str().unwrap())
                .collect();
            assert_eq!(told, names);
        }
        let first = &json["people"][0]["work"][0];
        for field in ["order", "from", "to", "what"] {
            assert!(first[field].is_string(), "{field} of {first}");
        }
        let promises = json["promises"].as_array().unwrap();
        let promised: Vec<_> = promises.iter().map(|one| &one["promised"]).collect();
        assert_eq!(promised[0], "2026-12-03T16:00+01:00");
        assert!(promised[2].is_null());
        assert!(promises.iter().all(|one| one["by_8_of_10"].is_string()));
        assert!(promises[0]["chance"].is_f64());
        assert!(json["calls"].is_array());
        // The same for a person, with the words of the counter.
        assert!(
            answer.text.contains("the hatch: promised 15:30, kept "),
            "{}",
            answer.text
        );
        assert!(answer.text.contains("8 of 10 by Thu "), "{}", answer.text);
        assert!(answer.text.contains("held by the boat"));
        let again = asked(&documented(), &[]).unwrap();
        assert_eq!(again.json, answer.json);
    }

    #[test]
    fn what_if_is_told_by_what_it_does_to_the_others() {
        let answer = asked(&documented(), &["--take-in", "the estate"]).unwrap();
        let effects = answer.json["compared"]["effects"].as_array().unwrap();
        let orders: Vec<&str> = effects
            .iter()
            .map(|one| one["order"].as_str().unwrap())
            .collect();
        assert_eq!(orders, ["the van", "the hatch"]);
        assert!(answer.text.contains("with it "));
        let rolled = asked(
            &documented(),
            &["--roll-out", "the van", "--button-up", "20,35,50"],
        )
        .unwrap();
        assert!(rolled.json["compared"]["broken_with"].is_f64());
        let none = asked(&documented(), &["--roll-out", "the hatch"]).unwrap_err();
        assert!(
            none.what.contains("never waits while it can't roll"),
            "{none}"
        );
        let lost = asked(&documented(), &["--take-in", "the tram"]).unwrap_err();
        assert!(
            lost.mend.contains("the van, the hatch, the estate"),
            "{lost}"
        );
        let wrong = asked(
            &documented(),
            &["--roll-out", "the van", "--button-up", "20,35"],
        )
        .unwrap_err();
        assert_eq!(wrong.place, "--button-up");
    }

    fn night(now: &str, date: &str, minutes: i64) -> String {
        format!(
            "now = \"{now}\"\nzone = \"Europe/Vienna\"\ndays = 3\nhours = [\"sun 00:00-06:00\"]\n\
             [[stall]]\nname = \"1\"\n[[person]]\nname = \"Ana\"\n[[order]]\nname = \"van\"\n\
             promise = \"{date}T05:30\"\n[[order.phase]]\nwhat = \"work\"\nminutes = {minutes}\n"
        )
    }

    /// Both clock changes of 2026: the clocks of Vienna skip 02:00 to 03:00 on 29 March and show
    /// 02:00 to 03:00 twice on 25 October.
    #[test]
    fn the_night_of_a_clock_change_has_the_hours_it_has() {
        let work = |answer: &Answer, field: &str| {
            answer.json["people"][0]["work"][0][field]
                .as_str()
                .unwrap()
                .to_owned()
        };
        let spring = asked(&night("2026-03-28T12:00", "2026-03-29", 180), &[]).unwrap();
        assert_eq!(work(&spring, "from"), "2026-03-29T00:00+01:00");
        assert_eq!(work(&spring, "to"), "2026-03-29T04:00+02:00");
        let autumn = asked(&night("2026-10-24T12:00", "2026-10-25", 300), &[]).unwrap();
        assert_eq!(work(&autumn, "from"), "2026-10-25T00:00+02:00");
        assert_eq!(work(&autumn, "to"), "2026-10-25T04:00+01:00");
        let skipped = night("2026-03-28T12:00", "2026-03-29", 60).replace("T05:30", "T02:30");
        let wrong = asked(&skipped, &[]).unwrap_err();
        assert!(
            wrong
                .what
                .contains("2026-03-29T02:30 does not exist: the clocks go forward and skip it"),
            "{wrong}"
        );
        assert!(wrong.what.contains("day.toml:11"), "{wrong}");
        // Shown twice: the first of both.
        let twice = night("2026-10-24T12:00", "2026-10-25", 60).replace("T05:30", "T02:30");
        let answer = asked(&twice, &[]).unwrap();
        assert_eq!(
            answer.json["promises"][0]["promised"],
            "2026-10-25T02:30+02:00"
        );
    }

    #[test]
    fn what_is_wrong_says_where_what_and_how_to_mend_it() {
        let zone = documented().replace("Europe/Vienna", "Europe/Nowhere");
        let wrong = asked(&zone, &[]).unwrap_err();
        assert!(
            wrong.what.contains("no time zone Europe/Nowhere"),
            "{wrong}"
        );
        let skill = documented().replace("skill = \"engine\"", "skill = \"gearbox\"");
        let wrong = asked(&skill, &[]).unwrap_err();
        assert!(
            wrong.what.contains("nobody has the skill gearbox"),
            "{wrong}"
        );
        let slip = documented().replace("minutes = 20", "minute = 20");
        let wrong = asked(&slip, &[]).unwrap_err();
        assert!(wrong.what.contains("did you mean `minutes`?"), "{wrong}");
        let asked = Day {
            file: Some("/nowhere/day.toml".to_owned()),
            ..Line::try_parse_from(["day", "x"]).unwrap().asked
        };
        assert_eq!(run(&asked).unwrap_err().code, 2);
    }
}
