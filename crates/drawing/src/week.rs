//! The days of a week: how much work is planned on each, and what room is left.

use crate::phrases as say;
use crate::{
    Anchor, Area, Drawing, Ink, Mark, Pen, Point, Slope, Style, Text, Weight, hatch, text_width_px,
};

/// The days of a week.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Week {
    pub days: Vec<WeekBar>,
}

/// One day, in hours of people's work.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WeekBar {
    pub name: String,
    /// Hours in which people work.
    pub open: f64,
    /// Hours of these that are planned.
    pub planned: f64,
    /// Hours of work that can be taken in; less than what is left of people where stalls are full.
    pub room: f64,
    /// How many vehicles are booked.
    pub booked: usize,
}

const ROW: f64 = 38.0;
const TALL: f64 = 22.0;
const LETTERING: f64 = 15.0;
const LEAST_WIDTH: f64 = 300.0;
/// Room for a day's name, and for what is said behind its bar.
const NAME: f64 = 104.0;
const SAID: f64 = 92.0;

/// Draws a week: planned work filled, room outlined, people without a stall hatched.
#[must_use]
pub fn week(week: &Week, width_px: f64) -> Drawing {
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let days: Vec<WeekBar> = week.days.iter().map(sound).collect();
    let most = days.iter().map(|day| day.open).fold(1.0, f64::max);
    let bar = width - NAME - SAID - 16.0;
    let long = |hours: f64| hours / most * bar;
    let mut marks = Vec::new();
    let mut told = Vec::new();
    let mut top = 8.0;
    for day in &days {
        let base = top + TALL - 5.0;
        marks.push(text(0.0, base, &day.name, Anchor::Start, Ink::Ink));
        let area = |from: f64, hours: f64| Area {
            x: NAME + long(from),
            y: top,
            width: long(hours),
            height: TALL,
        };
        if day.open > 0.0 {
            let blocked = (day.open - day.planned - day.room).max(0.0);
            if day.planned > 0.0 {
                marks.push(rect(area(0.0, day.planned), Style::fill(Ink::Ink)));
            }
            if blocked > 0.0 {
                let blocked = area(day.planned + day.room, blocked);
                marks.extend(hatch(blocked, 6.0, Slope::Rising, Pen::fine(Ink::Ink)));
            }
            let outline = Style::line(Pen::outline(Ink::Ink));
            marks.push(rect(area(0.0, day.open), outline));
            let booked = say::booked(day.booked);
            let room = area(day.planned, day.room);
            let fits = text_width_px(&booked, LETTERING, Weight::Regular) + 12.0 < room.width;
            if day.booked > 0 && fits {
                marks.push(text(room.x + 6.0, base, &booked, Anchor::Start, Ink::Ink));
            }
        }
        let said = match day.open > 0.0 {
            true => say::hours_free(hours(day.room)),
            false => say::closed().to_owned(),
        };
        marks.push(text(width, base, &said, Anchor::End, Ink::Ink));
        told.push(match day.open > 0.0 {
            true => say::day_in_words(
                &day.name,
                hours(day.open),
                hours(day.planned),
                hours(day.room),
                say::booked(day.booked),
            ),
            false => say::day_closed(&day.name),
        });
        top += ROW;
    }
    Drawing {
        width,
        height: top,
        title: say::week_and_room().to_owned(),
        description: told.join(" "),
        marks,
    }
}

/// A day whose parts are no more than its whole.
fn sound(day: &WeekBar) -> WeekBar {
    let positive = |hours: f64| {
        if hours.is_finite() {
            hours.max(0.0)
        } else {
            0.0
        }
    };
    let open = positive(day.open);
    let planned = positive(day.planned).min(open);
    WeekBar {
        name: day.name.clone(),
        open,
        planned,
        room: positive(day.room).min(open - planned),
        booked: day.booked,
    }
}

/// Hours with one decimal, where there is one.
fn hours(hours: f64) -> String {
    let text = format!("{hours:.1}");
    phrases::number(text.strip_suffix(".0").unwrap_or(&text))
}

fn rect(area: Area, style: Style) -> Mark {
    Mark::Rect {
        area,
        corner_radius: 0.0,
        style,
    }
}

fn text(x: f64, y: f64, words: &str, anchor: Anchor, ink: Ink) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: words.to_owned(),
        size: LETTERING,
        weight: Weight::Regular,
        anchor,
        ink,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn day(name: &str, open: f64, planned: f64, room: f64, booked: usize) -> WeekBar {
        WeekBar {
            name: name.to_owned(),
            open,
            planned,
            room,
            booked,
        }
    }

    #[test]
    fn each_day_says_its_room_and_what_is_booked() {
        let drawn = week(
            &Week {
                days: vec![
                    day("Mon 30 Nov", 16.0, 11.5, 4.5, 2),
                    day("Sun 6 Dec", 0.0, 0.0, 0.0, 0),
                ],
            },
            880.0,
        );
        let texts = drawn.texts();
        let words: Vec<&str> = texts.iter().map(|text| text.text.as_str()).collect();
        assert_eq!(
            words,
            [
                "Mon 30 Nov",
                "2 booked",
                "4.5 h free",
                "Sun 6 Dec",
                "closed"
            ]
        );
        assert_eq!(
            drawn.description,
            "Mon 30 Nov: 16 h of work, 11.5 h planned, 4.5 h free, 2 booked. Sun 6 Dec: closed."
        );
    }

    proptest! {
        #[test]
        fn any_week_stays_within_its_edges(
            days in prop::collection::vec((0.0..80.0_f64, -5.0..90.0_f64, -5.0..90.0_f64, 0_usize..30), 0..8),
            wide in prop::sample::select(vec![358.0, 880.0]),
        ) {
            let days = days.into_iter().map(|(open, planned, room, booked)| day("Wed 30 Sep", open, planned, room, booked));
            let drawn = week(&Week { days: days.collect() }, wide);
            for text in drawn.texts() {
                let area = text.area();
                prop_assert!(area.x >= -1.0 && area.right() <= drawn.width + 1.0, "{:?}", text);
            }
            for mark in &drawn.marks {
                if let Mark::Rect { area, .. } = mark {
                    prop_assert!(area.x >= 0.0 && area.right() <= drawn.width - SAID, "{:?}", area);
                }
            }
        }
    }
}
