//! The floor in plan, and the day of each place beside it: who stands where, what was worked, what
//! it waits for, what was promised.
//!
//! The plan and the lines share their rows, so that a stall runs on into its own day.

mod plan;

use crate::phrases as say;
use crate::plot::line;
use crate::{
    Anchor, Area, Drawing, Group, Ink, Mark, Pen, Point, Slope, Style, Text, Weight, ellipsis,
    hatch, text_width_px,
};
use plan::{car, free, lift, walls};

/// The floor and its day.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Floor {
    /// Stalls and places in the yard, from above.
    pub places: Vec<FloorPlace>,
    /// Who works today.
    pub people: Vec<FloorPerson>,
    /// The hours that the day runs over, such as 8 to 18.
    pub hours: (f64, f64),
    /// What the clock shows, in hours.
    pub now: Option<f64>,
}

/// A place where a vehicle can stand.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FloorPlace {
    /// What it is called, short: `1`, `Y1`.
    pub name: String,
    /// Whether it is in the yard.
    pub yard: bool,
    /// Whether it has a lift.
    pub lift: bool,
    /// What stands there; nothing, if it is free.
    pub vehicle: Option<FloorVehicle>,
}

/// What a vehicle looks like from above.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum VehicleShape {
    #[default]
    Hatch,
    Estate,
    Van,
    Pickup,
}

/// A vehicle on the floor, with its day.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FloorVehicle {
    pub shape: VehicleShape,
    /// What it is called.
    pub name: String,
    /// Number and customer.
    pub second: String,
    /// The word that says how it stands, and the words behind it.
    pub word: String,
    pub because: String,
    pub ink: Option<Ink>,
    /// Whether it can roll: if not, it is dashed.
    pub rolls: bool,
    /// Who works on it, by first names.
    pub people: Vec<String>,
    /// When it was worked on, in hours.
    pub worked: Vec<(f64, f64)>,
    /// When it is to be worked on, in hours.
    pub planned: Vec<(f64, f64)>,
    /// What it waits for: from, to, and what for.
    pub waits: Option<(f64, f64, String)>,
    /// The hour promised, and how it reads.
    pub promised: Option<(f64, String)>,
    /// Whether the promise is past or will not be kept.
    pub slips: bool,
    /// How sure the promise is, in a few words.
    pub sure: String,
    /// Where pressing it leads.
    pub link: String,
}

/// A person, with what was worked today, and what is planned.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FloorPerson {
    pub name: String,
    /// Where they are.
    pub at: String,
    /// From, to, and on what.
    pub worked: Vec<(f64, f64, String)>,
    /// The same as it is planned.
    pub planned: Vec<(f64, f64, String)>,
}

/// Height of a row.
const STALL: f64 = 88.0;
const CLOSE_STALL: f64 = 64.0;
const YARD: f64 = 54.0;
const PERSON: f64 = 34.0;
/// More stalls than this stand closer.
const MANY: usize = 5;
/// Where the shop's walls stand, and where the lines begin.
const WALL: (f64, f64) = (120.0, 298.0);
const LINES: f64 = 326.0;
/// Room for the promised time at the right.
const PROMISED: f64 = 104.0;
const HEAD: f64 = 52.0;
const LETTERING: f64 = 16.0;
const SMALL: f64 = 15.0;
const LEAST_WIDTH: f64 = 720.0;

/// Draws the floor in plan with the day's lines beside it.
#[must_use]
pub fn floor(floor: &Floor, width_px: f64) -> Drawing {
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let sheet = Sheet::new(floor, width);
    let mut marks = sheet.hours();
    let stalls: Vec<&FloorPlace> = floor.places.iter().filter(|place| !place.yard).collect();
    let yard: Vec<&FloorPlace> = floor.places.iter().filter(|place| place.yard).collect();
    let row = if stalls.len() > MANY {
        CLOSE_STALL
    } else {
        STALL
    };
    let mut y = HEAD + 8.0;
    let top = y;
    if !stalls.is_empty() {
        marks.extend(walls(
            top,
            row * f64::from(u32::try_from(stalls.len()).unwrap_or(0)),
            row,
        ));
    }
    let mut rows = Vec::new();
    for stall in &stalls {
        rows.push(sheet.place(stall, y, row));
        y += row;
        rows.push(rule(LINES - 10.0, y, width));
    }
    y += 8.0;
    for place in &yard {
        rows.push(sheet.place(place, y, YARD));
        y += YARD;
        rows.push(rule(LINES - 10.0, y, width));
    }
    if !floor.people.is_empty() {
        y += 8.0;
        rows.push(line(0.0, y, width, y, Pen::outline(Ink::Ink)));
        for person in &floor.people {
            rows.push(sheet.person(person, y));
            y += PERSON;
            rows.push(rule(0.0, y, width));
        }
    }
    // What is now stands behind the words, before the lines' ground.
    if let Some(now) = sheet.now {
        marks.push(line(now, HEAD - 4.0, now, y, Pen::outline(Ink::Accent)));
    }
    marks.extend(rows);
    Drawing {
        width,
        height: y + 4.0,
        title: say::floor_and_day().to_owned(),
        description: description(floor),
        marks,
    }
}

/// What the drawing says, for whoever hears it.
fn description(floor: &Floor) -> String {
    let each = floor.places.iter().map(|place| match &place.vehicle {
        None => say::place_free(&place.name),
        Some(vehicle) => {
            let promised = vehicle.promised.as_ref();
            let sure = match vehicle.sure.as_str() {
                "" => String::new(),
                sure => format!(", {sure}"),
            };
            let promised =
                promised.map_or(String::new(), |(_, words)| say::promised_for(words, &sure));
            let rolls = if vehicle.rolls {
                ""
            } else {
                say::cannot_roll()
            };
            format!(
                "{}: {}, {}{rolls}{promised}",
                place.name, vehicle.name, vehicle.word
            )
        }
    });
    each.collect::<Vec<_>>().join(". ")
}

/// The sheet that is drawn on: where an hour lies.
struct Sheet {
    hours: (f64, f64),
    left: f64,
    right: f64,
    width: f64,
    now: Option<f64>,
}

impl Sheet {
    fn new(floor: &Floor, width: f64) -> Self {
        let (from, to) = floor.hours;
        let sound = from.is_finite() && to.is_finite() && to > from;
        let hours = if sound { (from, to) } else { (8.0, 18.0) };
        let mut sheet = Self {
            hours,
            left: LINES,
            right: width - PROMISED,
            width,
            now: None,
        };
        let now = floor
            .now
            .filter(|now| (hours.0..=hours.1).contains(now))
            .map(|now| sheet.x(now));
        sheet.now = now;
        sheet
    }

    /// Where an hour lies; what lies outside the day is drawn at its edge.
    fn x(&self, hour: f64) -> f64 {
        let (from, to) = self.hours;
        let hour = if hour.is_finite() { hour } else { from };
        let part = ((hour - from) / (to - from)).clamp(0.0, 1.0);
        self.left + part * (self.right - self.left)
    }

    fn whole_hours(&self) -> impl Iterator<Item = f64> {
        let (from, to) = self.hours;
        let first = libm::ceil(from);
        (0_u32..=24)
            .map(move |nth| first + f64::from(nth))
            .take_while(move |hour| *hour <= to)
    }

    /// The scale of hours over the lines.
    fn hours(&self) -> Vec<Mark> {
        let mut marks = vec![line(0.0, HEAD, self.width, HEAD, Pen::outline(Ink::Ink))];
        let across = (self.right - self.left) / (self.hours.1 - self.hours.0).max(1.0);
        // Figures want 30 px; with many hours only some are lettered.
        let every = libm::ceil(30.0 / across).max(1.0);
        for hour in self.whole_hours() {
            let x = self.x(hour);
            marks.push(line(x, HEAD - 6.0, x, HEAD, Pen::fine(Ink::Ink)));
            let near = self.now.is_some_and(|now| (now - x).abs() < 34.0);
            let lettered = (hour % every).abs() < 1e-9 && !near;
            if lettered {
                let shown = if hour >= 24.0 { hour - 24.0 } else { hour };
                marks.push(text(
                    x,
                    HEAD - 10.0,
                    &format!("{shown:.0}"),
                    SMALL,
                    Anchor::Middle,
                    Weight::Regular,
                    Ink::Soft,
                ));
            }
        }
        if let Some(now) = self.now {
            let (from, to) = self.hours;
            let hour = from + (now - self.left) / (self.right - self.left) * (to - from);
            marks.push(text(
                now,
                HEAD - 10.0,
                &clock(hour),
                17.0,
                Anchor::Middle,
                Weight::Bold,
                Ink::Accent,
            ));
        }
        marks.push(text(
            self.width,
            HEAD - 10.0,
            say::promised(),
            SMALL,
            Anchor::End,
            Weight::Regular,
            Ink::Soft,
        ));
        marks
    }

    /// One place, in plan and with its line.
    fn place(&self, place: &FloorPlace, y: f64, height: f64) -> Mark {
        let mut marks = Vec::new();
        let middle = Point::new((WALL.0 + WALL.1) / 2.0 - 4.0, y + height / 2.0);
        if place.yard {
            marks.push(text(
                4.0,
                y + height / 2.0 + 6.0,
                &place.name,
                LETTERING,
                Anchor::Start,
                Weight::Bold,
                Ink::Ink,
            ));
        } else {
            marks.push(text(
                WALL.0 + 10.0,
                y + 20.0,
                &place.name,
                LETTERING,
                Anchor::Start,
                Weight::Bold,
                Ink::Ink,
            ));
            if place.lift {
                marks.extend(lift(middle, height));
            }
        }
        let Some(vehicle) = &place.vehicle else {
            marks.extend(free(place, middle, height));
            marks.push(text(
                self.left,
                y + 23.0,
                say::free(),
                LETTERING,
                Anchor::Start,
                Weight::Bold,
                Ink::Ink,
            ));
            let sort = if place.lift { say::lift() } else { say::flat() };
            marks.push(text(
                self.left,
                y + 45.0,
                sort,
                LETTERING,
                Anchor::Start,
                Weight::Regular,
                Ink::Soft,
            ));
            return Mark::Group(Group {
                id: None,
                label: Some(say::place_free(&place.name)),
                link: None,
                marks,
            });
        };
        let scale = if height < STALL { 0.7 } else { 1.0 };
        let at = if place.yard {
            Point::new(104.0, middle.y)
        } else {
            middle
        };
        marks.extend(car(vehicle, at, scale));
        if !place.yard {
            for (nth, person) in vehicle.people.iter().take(2).enumerate() {
                let x = WALL.0 + 12.0;
                let y =
                    y + height - 12.0 - 17.0 * f64::from(u32::try_from(nth).unwrap_or_default());
                marks.push(Mark::Circle {
                    centre: Point::new(x, y - 5.0),
                    radius: 5.0,
                    style: Style::fill(Ink::Ink),
                });
                marks.extend(on_paper(x + 9.0, y, person, SMALL, Ink::Ink));
            }
        }
        marks.extend(self.day(vehicle, y, height));
        Mark::Group(Group {
            id: None,
            label: Some(format!(
                "{}: {}, {}",
                place.name, vehicle.name, vehicle.word
            )),
            link: (!vehicle.link.is_empty()).then(|| vehicle.link.clone()),
            marks,
        })
    }

    /// The line of a vehicle's day.
    fn day(&self, vehicle: &FloorVehicle, y: f64, height: f64) -> Vec<Mark> {
        let mut marks = Vec::new();
        let room = self.right - self.left - 8.0;
        let tall = height >= 80.0;
        let bar = (y + 30.0, 20.0);
        let name = ellipsis(&vehicle.name, LETTERING, Weight::Bold, room);
        let after = text_width_px(&name, LETTERING, Weight::Bold) + 10.0;
        marks.extend(on_paper_bold(self.left, y + 20.0, &name));
        let second = ellipsis(
            &vehicle.second,
            LETTERING,
            Weight::Regular,
            (room - after).max(0.0),
        );
        marks.extend(on_paper(
            self.left + after,
            y + 20.0,
            &second,
            LETTERING,
            Ink::Soft,
        ));
        if tall {
            for hour in self.whole_hours() {
                let x = self.x(hour);
                marks.push(line(
                    x,
                    bar.0 - 2.0,
                    x,
                    bar.0 + bar.1 + 2.0,
                    Pen::fine(Ink::Rule),
                ));
            }
            marks.extend(self.bars(vehicle, bar));
        }
        let base = if tall { y + 76.0 } else { y + 42.0 };
        let ink = vehicle.ink.unwrap_or(Ink::Ink);
        let word = ellipsis(&vehicle.word, LETTERING, Weight::Bold, room);
        marks.push(paper(self.left, base, &word, Weight::Bold));
        marks.push(text(
            self.left,
            base,
            &word,
            LETTERING,
            Anchor::Start,
            Weight::Bold,
            ink,
        ));
        let after = text_width_px(&word, LETTERING, Weight::Bold) + 9.0;
        let because = ellipsis(
            &vehicle.because,
            LETTERING,
            Weight::Regular,
            (room - after).max(0.0),
        );
        marks.extend(on_paper(
            self.left + after,
            base,
            &because,
            LETTERING,
            Ink::Soft,
        ));
        if let Some((_, words)) = &vehicle.promised {
            let ink = if vehicle.slips { Ink::Stop } else { Ink::Ink };
            marks.push(text(
                self.width,
                y + 24.0,
                words,
                22.0,
                Anchor::End,
                Weight::Bold,
                ink,
            ));
            let sure = match vehicle.sure.as_str() {
                "" if vehicle.slips => say::not_kept(),
                sure => sure,
            };
            let ink = if vehicle.slips { Ink::Stop } else { Ink::Soft };
            marks.push(text(
                self.width,
                y + 45.0,
                &ellipsis(sure, LETTERING, Weight::Regular, PROMISED - 4.0),
                LETTERING,
                Anchor::End,
                Weight::Regular,
                ink,
            ));
        }
        marks
    }

    fn bars(&self, vehicle: &FloorVehicle, (top, height): (f64, f64)) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (from, to) in &vehicle.worked {
            marks.push(Mark::Rect {
                area: self.span(*from, *to, top, height),
                corner_radius: 0.0,
                style: Style::fill(Ink::Ink),
            });
        }
        if let Some((from, to, what)) = &vehicle.waits {
            let area = self.span(*from, *to, top, height);
            marks.extend(hatch(area, 6.0, Slope::Rising, Pen::fine(Ink::Ink)));
            marks.push(Mark::Rect {
                area,
                corner_radius: 0.0,
                style: Style::line(Pen::outline(Ink::Ink)),
            });
            let words = ellipsis(what, SMALL, Weight::Regular, area.width - 90.0);
            if !words.is_empty() {
                marks.extend(on_paper(
                    area.x + 45.0,
                    top + height - 5.0,
                    &words,
                    SMALL,
                    Ink::Ink,
                ));
            }
        }
        for (from, to) in &vehicle.planned {
            marks.push(self.planned(*from, *to, top, height));
        }
        if let Some((at, _)) = &vehicle.promised
            && (self.hours.0..=self.hours.1).contains(at)
        {
            let x = self.x(*at);
            let ink = if vehicle.slips { Ink::Stop } else { Ink::Ink };
            marks.push(line(x, top - 9.0, x, top + height + 3.0, Pen::outline(ink)));
            marks.push(Mark::Polyline {
                points: vec![
                    Point::new(x, top - 10.0),
                    Point::new(x + 10.0, top - 6.0),
                    Point::new(x, top - 2.0),
                ],
                closed: true,
                style: Style::fill(ink),
            });
        }
        marks
    }

    /// What is planned is hollow.
    fn planned(&self, from: f64, to: f64, top: f64, height: f64) -> Mark {
        let area = self.span(from, to, top, height);
        // Within the line of the bar.
        let inside = Area {
            x: area.x + 1.0,
            y: area.y + 1.0,
            width: (area.width - 2.0).max(1.0),
            height: area.height - 2.0,
        };
        Mark::Rect {
            area: inside,
            corner_radius: 0.0,
            style: Style {
                fill: Some(Ink::Paper),
                ..Style::line(Pen::outline(Ink::Ink))
            },
        }
    }

    fn span(&self, from: f64, to: f64, top: f64, height: f64) -> Area {
        let (x, end) = (self.x(from), self.x(to));
        Area {
            x,
            y: top,
            // Whatever was worked is seen.
            width: (end - x).max(2.0),
            height,
        }
    }

    fn person(&self, person: &FloorPerson, y: f64) -> Mark {
        let base = y + 23.0;
        let name = ellipsis(&person.name, LETTERING, Weight::Bold, 130.0);
        let mut marks = vec![text(
            0.0,
            base,
            &name,
            LETTERING,
            Anchor::Start,
            Weight::Bold,
            Ink::Ink,
        )];
        let after = text_width_px(&name, LETTERING, Weight::Bold) + 14.0;
        let at = ellipsis(&person.at, LETTERING, Weight::Regular, LINES - 20.0 - after);
        marks.push(text(
            after,
            base,
            &at,
            LETTERING,
            Anchor::Start,
            Weight::Regular,
            Ink::Soft,
        ));
        for (from, to, what) in &person.worked {
            let area = self.span(*from, *to, y + 7.0, 20.0);
            marks.push(Mark::Rect {
                area,
                corner_radius: 0.0,
                style: Style::fill(Ink::Ink),
            });
            let words = ellipsis(what, SMALL, Weight::Regular, area.width - 12.0);
            if !words.is_empty() {
                marks.push(text(
                    area.x + 6.0,
                    y + 22.0,
                    &words,
                    SMALL,
                    Anchor::Start,
                    Weight::Regular,
                    Ink::Paper,
                ));
            }
        }
        for (from, to, what) in &person.planned {
            let area = self.span(*from, *to, y + 7.0, 20.0);
            marks.push(self.planned(*from, *to, y + 7.0, 20.0));
            let words = ellipsis(what, SMALL, Weight::Regular, area.width - 12.0);
            if !words.is_empty() {
                marks.push(text(
                    area.x + 6.0,
                    y + 22.0,
                    &words,
                    SMALL,
                    Anchor::Start,
                    Weight::Regular,
                    Ink::Ink,
                ));
            }
        }
        Mark::Group(Group {
            id: None,
            label: Some(format!("{}, {}", person.name, person.at)),
            link: None,
            marks,
        })
    }
}

fn rule(from: f64, y: f64, to: f64) -> Mark {
    line(from, y, to, y, Pen::fine(Ink::Rule))
}

/// An hour as a clock shows it.
fn clock(hour: f64) -> String {
    let minutes = libm::round(hour.clamp(0.0, 48.0) * 60.0);
    let hours = libm::floor(minutes / 60.0);
    format!("{:02.0}:{:02.0}", hours % 24.0, minutes - 60.0 * hours)
}

fn text(x: f64, y: f64, words: &str, size: f64, anchor: Anchor, weight: Weight, ink: Ink) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: words.to_owned(),
        size,
        weight,
        anchor,
        ink,
    })
}

/// The ground under words that lie over lines.
fn paper(x: f64, y: f64, words: &str, weight: Weight) -> Mark {
    Mark::Rect {
        area: Area {
            x: x - 2.0,
            y: y - LETTERING,
            width: text_width_px(words, LETTERING, weight) + 4.0,
            height: LETTERING + 5.0,
        },
        corner_radius: 0.0,
        style: Style::fill(Ink::Paper),
    }
}

fn on_paper(x: f64, y: f64, words: &str, size: f64, ink: Ink) -> Vec<Mark> {
    if words.is_empty() {
        return Vec::new();
    }
    vec![
        paper(x, y, words, Weight::Regular),
        text(x, y, words, size, Anchor::Start, Weight::Regular, ink),
    ]
}

fn on_paper_bold(x: f64, y: f64, words: &str) -> Vec<Mark> {
    vec![
        paper(x, y, words, Weight::Bold),
        text(
            x,
            y,
            words,
            LETTERING,
            Anchor::Start,
            Weight::Bold,
            Ink::Ink,
        ),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Dash, svg};
    use proptest::prelude::*;

    fn van() -> FloorVehicle {
        FloorVehicle {
            shape: VehicleShape::Van,
            name: "Tamsel 400 van".to_owned(),
            second: "1003 · Ferry Groente".to_owned(),
            word: "Machine work".to_owned(),
            because: "Marrow Machine Shop faces the head".to_owned(),
            ink: Some(Ink::Wait),
            people: vec!["Nuria".to_owned()],
            worked: vec![(8.25, 10.4)],
            planned: vec![(13.0, 15.5)],
            sure: "8 in 10".to_owned(),
            waits: Some((10.4, 18.0, "head away till tomorrow 12:00".to_owned())),
            promised: Some((16.5, "16:30".to_owned())),
            link: "/o/1003".to_owned(),
            ..FloorVehicle::default()
        }
    }

    fn day() -> Floor {
        Floor {
            places: vec![
                FloorPlace {
                    name: "1".to_owned(),
                    lift: true,
                    vehicle: Some(van()),
                    ..FloorPlace::default()
                },
                FloorPlace {
                    name: "2".to_owned(),
                    ..FloorPlace::default()
                },
            ],
            people: vec![FloorPerson {
                name: "Nuria Vale".to_owned(),
                at: "stall 1".to_owned(),
                worked: vec![(8.25, 10.4, "Tamsel".to_owned())],
                planned: vec![(13.0, 15.5, "Tamsel".to_owned())],
            }],
            hours: (8.0, 18.0),
            now: Some(10.667),
        }
    }

    #[test]
    fn it_says_what_stands_where_and_leads_there() {
        let drawn = floor(&day(), 880.0);
        let words: Vec<&str> = drawn
            .texts()
            .iter()
            .map(|text| text.text.as_str())
            .collect();
        for expected in ["10:40", "16:30", "Machine work", "Free", "Nuria Vale"] {
            assert!(words.contains(&expected), "{expected} in {words:?}");
        }
        let svg = svg(&drawn);
        assert!(svg.contains("/o/1003"));
        assert_eq!(
            drawn.description,
            "1: Tamsel 400 van, Machine work, can't roll, promised 16:30, 8 in 10. 2: free"
        );
    }

    #[test]
    fn what_is_planned_is_hollow_and_what_was_worked_is_full() {
        let bars = |vehicle: &FloorVehicle| -> (usize, usize) {
            let sheet = Sheet::new(&day(), 880.0);
            let marks = sheet.bars(vehicle, (0.0, 20.0));
            let rects = |full: bool| {
                let is = |mark: &&Mark| {
                    matches!(mark, Mark::Rect { style, .. }
                    if match full {
                        true => style.fill == Some(Ink::Ink),
                        false => style.fill == Some(Ink::Paper) && style.line.is_some(),
                    })
                };
                marks.iter().filter(is).count()
            };
            (rects(true), rects(false))
        };
        assert_eq!(bars(&van()), (1, 1));
        let nothing = FloorVehicle {
            planned: Vec::new(),
            ..van()
        };
        assert_eq!(bars(&nothing), (1, 0));
    }

    #[test]
    fn what_stands_still_is_dashed_and_what_rolls_is_not() {
        let dashed = |rolls: bool| {
            let vehicle = FloorVehicle { rolls, ..van() };
            let marks = car(&vehicle, Point::new(0.0, 0.0), 1.0);
            marks.iter().any(|mark| {
                matches!(mark, Mark::Rect { style, .. }
                if style.line.is_some_and(|pen| pen.dash == Dash::Dashed))
            })
        };
        assert!(dashed(false));
        assert!(!dashed(true));
    }

    proptest! {
        /// Any day is drawn, and no word leaves the sheet.
        #[test]
        fn any_day_fits(
            name in "\\PC{0,60}",
            word in "\\PC{0,40}",
            hours in (0.0..24.0_f64, 0.0..30.0_f64),
            now in proptest::option::of(-5.0..40.0_f64),
            worked in (-3.0..30.0_f64, -3.0..30.0_f64),
            planned in (-3.0..30.0_f64, -3.0..30.0_f64),
            stalls in 0..9_usize,
        ) {
            let vehicle = FloorVehicle { name, word, worked: vec![worked], planned: vec![planned], ..van() };
            let place = |nth: usize| FloorPlace {
                name: (nth + 1).to_string(),
                yard: nth == 8,
                lift: nth.is_multiple_of(2),
                vehicle: (nth % 3 != 2).then(|| vehicle.clone()),
            };
            let day = Floor { places: (0..stalls).map(place).collect(), hours, now, ..day() };
            let drawn = floor(&day, 880.0);
            for text in drawn.texts() {
                let area = text.area();
                prop_assert!(area.x >= -0.5 && area.right() <= drawn.width + 0.5, "{:?}", text);
                prop_assert!(area.bottom() <= drawn.height + 1.0, "{:?}", text);
            }
        }
    }
}
