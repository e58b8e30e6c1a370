//! A road test: coolant against time, the band it may keep to, and what is to be seen on it.

use crate::phrases as say;
use crate::plot::{Frame, LETTERING, Scale, label, line};
use crate::{Anchor, Area, Drawing, Ink, Mark, Pen, Point, Slope, Style, Text, Weight, hatch};

const LEAST_WIDTH: f64 = 280.0;
const FRAME_HEIGHT: f64 = 320.0;
/// What the frame itself needs above and below the drawn area.
const FRAME_MARGINS: f64 = 1.8 * LETTERING + 16.0 + 2.4 * LETTERING;
const STRIP_HEIGHT: f64 = 44.0;
/// From one row of words to the next.
const ROW: f64 = 22.0;
/// More than this a phone can't show; the rest is only said.
const MOST_MARKS: usize = 5;
const RING: f64 = 10.0;
const SPOT: f64 = 4.0;

/// A drive.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct RoadTest {
    /// Minutes and temperature; a hole in the record parts it.
    pub coolant: Vec<Vec<(f64, f64)>>,
    /// Minutes and road speed; drawn below if there is any.
    pub speed: Vec<Vec<(f64, f64)>>,
    /// The band that the temperature may keep to.
    pub band: Option<(f64, f64)>,
    pub marks: Vec<RoadTestMark>,
    /// The unit of temperature.
    pub unit: String,
    /// The unit of speed.
    pub speed_unit: String,
    /// What the drive has shown.
    pub verdict: String,
}

/// One thing pointed at: the opening, the fan, or what is wrong.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct RoadTestMark {
    pub minutes: f64,
    pub temperature: f64,
    pub words: String,
    /// A ring is drawn round what is wrong.
    pub wrong: bool,
}

/// Draws the temperature as a 3 px line over its hatched band, with a leader from each thing
/// to its words, and a ring round what is wrong.
#[must_use]
pub fn road_test(drive: &RoadTest, width_px: f64) -> Drawing {
    let drive = &finite(drive);
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let Some((low, high, last)) = ends(drive) else {
        return nothing(width);
    };
    let marks = chosen(drive);
    // Words stand in rows above the curve: the scale leaves them room.
    let rows = f64::from(u32::try_from(marks.len()).unwrap_or(0)) * ROW;
    let area = FRAME_HEIGHT - FRAME_MARGINS;
    let top = high + (high - low) * rows / (area - rows).max(ROW);
    let (frame, mut drawn) = Frame::drawn(
        width,
        FRAME_HEIGHT,
        Scale {
            low: 0.0,
            high: last.max(0.1),
            name: say::minutes(),
        },
        Scale {
            low,
            high: top,
            name: &say::coolant_axis(&drive.unit),
        },
    );
    if let Some((from, to)) = drive.band {
        let band = between(&frame, last, from.max(low), to.min(top));
        drawn.extend(hatch(band, 9.0, Slope::Rising, Pen::fine(Ink::Soft)));
    }
    for piece in &drive.coolant {
        drawn.push(frame.curve(piece, Pen::heavy(Ink::Accent)));
    }
    drawn.extend(pointed_at(&frame, width, &marks));
    let height = if drive.speed.is_empty() {
        FRAME_HEIGHT
    } else {
        drawn.extend(strip(drive, &frame, last));
        FRAME_HEIGHT + STRIP_HEIGHT + 2.0 * LETTERING
    };
    Drawing {
        width,
        height,
        title: say::road_test().to_owned(),
        description: said(drive),
        marks: drawn,
    }
}

fn nothing(width: f64) -> Drawing {
    let words = say::no_drive_yet();
    Drawing {
        width,
        height: 2.0 * LETTERING,
        title: words.to_owned(),
        description: say::no_temperature_yet().to_owned(),
        marks: vec![label(
            0.0,
            1.3 * LETTERING,
            words,
            Anchor::Start,
            Weight::Regular,
        )],
    }
}

/// Lowest and highest temperature to be shown, and the last minute.
fn ends(drive: &RoadTest) -> Option<(f64, f64, f64)> {
    let points = || drive.coolant.iter().flatten();
    let low = points().map(|(_, c)| *c).reduce(f64::min)?;
    let high = points().map(|(_, c)| *c).reduce(f64::max)?;
    let last = points().map(|(t, _)| *t).reduce(f64::max)?;
    let of_band = drive.band.map_or(high, |(_, to)| to.min(high + 12.0));
    Some((low - 3.0, high.max(of_band) + 3.0, last))
}

/// Without what is no number.
fn finite(drive: &RoadTest) -> RoadTest {
    let mut drive = drive.clone();
    for pieces in [&mut drive.coolant, &mut drive.speed] {
        for piece in pieces.iter_mut() {
            piece.retain(|(t, value)| t.is_finite() && value.is_finite());
        }
        pieces.retain(|piece| !piece.is_empty());
    }
    drive
        .marks
        .retain(|mark| mark.minutes.is_finite() && mark.temperature.is_finite());
    drive.band = drive
        .band
        .filter(|(from, to)| from.is_finite() && to.is_finite() && from < to);
    drive
}

/// What is wrong first, then in time.
fn chosen(drive: &RoadTest) -> Vec<&RoadTestMark> {
    let mut marks: Vec<&RoadTestMark> = drive.marks.iter().collect();
    marks.sort_by(|one, other| {
        (other.wrong.cmp(&one.wrong)).then(one.minutes.total_cmp(&other.minutes))
    });
    marks.truncate(MOST_MARKS);
    marks
}

fn between(frame: &Frame, last: f64, from: f64, to: f64) -> Area {
    let (low, high) = (frame.at(0.0, from), frame.at(last, to));
    Area {
        x: low.x,
        y: high.y,
        width: high.x - low.x,
        height: (low.y - high.y).max(0.0),
    }
}

/// A spot or a ring at each thing, a leader up to its words.
fn pointed_at(frame: &Frame, width: f64, marks: &[&RoadTestMark]) -> Vec<Mark> {
    let mut drawn = Vec::new();
    for (text, at, radius) in best_placed(frame, width, marks) {
        let area = text.area();
        drawn.push(line(
            at.x,
            area.bottom(),
            at.x,
            at.y - radius,
            Pen::fine(Ink::Ink),
        ));
        // Grid and hatching do not run through words.
        drawn.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::fill(Ink::Paper),
        });
        drawn.push(Mark::Text(text));
    }
    for mark in marks {
        drawn.push(Mark::Circle {
            centre: frame.at(mark.minutes, mark.temperature),
            radius: radius(mark),
            style: if mark.wrong {
                Style::line(Pen::heavy(Ink::Stop))
            } else {
                Style::fill(Ink::Ink)
            },
        });
    }
    drawn
}

fn radius(mark: &RoadTestMark) -> f64 {
    if mark.wrong { RING } else { SPOT }
}

/// Words with their row and side, the thing they point at, and its radius.
type Placed = Vec<(Text, Point, f64)>;

/// Of all sequences in which the words can be placed, the first that places most.
fn best_placed(frame: &Frame, width: f64, marks: &[&RoadTestMark]) -> Placed {
    let mut best = Placed::new();
    for sequence in sequences(marks.len()) {
        let mut placed = Placed::new();
        for mark in sequence.into_iter().filter_map(|nth| marks.get(nth)) {
            let at = frame.at(mark.minutes, mark.temperature);
            if let Some(text) = place(frame, width, mark, at, marks.len(), &placed) {
                placed.push((text, at, radius(mark)));
            }
        }
        if placed.len() > best.len() {
            best = placed;
        }
        if best.len() == marks.len() {
            break;
        }
    }
    best
}

/// Every sequence of so many things, the given one first.
fn sequences(count: usize) -> Vec<Vec<usize>> {
    (0..count).fold(vec![Vec::new()], |shorter, _| {
        let longer = |front: &Vec<usize>| {
            (0..count)
                .filter(|nth| !front.contains(nth))
                .map(|nth| front.iter().copied().chain([nth]).collect())
                .collect::<Vec<Vec<usize>>>()
        };
        shorter.iter().flat_map(longer).collect()
    })
}

/// The first row and side where the words lie free and no leader crosses them.
fn place(
    frame: &Frame,
    width: f64,
    mark: &RoadTestMark,
    at: Point,
    rows: usize,
    placed: &Placed,
) -> Option<Text> {
    let weight = if mark.wrong {
        Weight::Bold
    } else {
        Weight::Regular
    };
    let top = frame.area().y;
    let crosses = |x: f64, from: f64, to: f64, area: &Area| {
        x > area.x - 4.0 && x < area.right() + 4.0 && from < area.bottom() && to > area.y
    };
    for row in (0..rows).rev() {
        let y = top + f64::from(u32::try_from(row).unwrap_or(0)) * ROW + 0.85 * ROW;
        for anchor in [Anchor::Start, Anchor::End, Anchor::Middle] {
            let text = Text {
                at: Point::new(at.x, y),
                text: mark.words.clone(),
                size: LETTERING,
                weight,
                anchor,
                ink: Ink::Ink,
            };
            let area = text.area();
            let inside = area.x >= frame.area().x + 2.0
                && area.right() <= width.min(frame.area().right()) - 2.0;
            let free = placed.iter().all(|(words, their, radius)| {
                let other = &words.area();
                !other.overlaps(&area)
                    && !crosses(at.x, area.bottom(), at.y, other)
                    && !crosses(their.x, other.bottom(), their.y - radius, &area)
            });
            if inside && free && area.bottom() < at.y {
                return Some(text);
            }
        }
    }
    None
}

/// Road speed below, on the same minutes.
fn strip(drive: &RoadTest, frame: &Frame, last: f64) -> Vec<Mark> {
    let top = FRAME_HEIGHT + 1.4 * LETTERING;
    let area = Area {
        x: frame.area().x,
        y: top,
        width: frame.area().width,
        height: STRIP_HEIGHT,
    };
    let most = drive
        .speed
        .iter()
        .flatten()
        .map(|(_, speed)| *speed)
        .fold(1.0, f64::max);
    let at = |(t, speed): &(f64, f64)| {
        let part = |value: f64, of: f64| (value / of).clamp(0.0, 1.0);
        Point::new(
            area.x + part(*t, last.max(0.1)) * area.width,
            area.bottom() - part(*speed, most) * (area.height - 4.0),
        )
    };
    let mut drawn = vec![label(
        0.0,
        FRAME_HEIGHT + LETTERING,
        &say::speed_at_most(most, &drive.speed_unit),
        Anchor::Start,
        Weight::Bold,
    )];
    drawn.extend(drive.speed.iter().map(|piece| Mark::Polyline {
        points: piece.iter().map(at).collect(),
        closed: false,
        style: Style::line(Pen::fine(Ink::Ink)),
    }));
    drawn.push(line(
        area.x,
        area.bottom(),
        area.right(),
        area.bottom(),
        Pen::outline(Ink::Ink),
    ));
    drawn
}

fn said(drive: &RoadTest) -> String {
    let points = || drive.coolant.iter().flatten();
    let mut words = Vec::new();
    if let (Some(first), Some(last)) = (points().next(), points().last()) {
        let most = points().map(|(_, c)| *c).fold(first.1, f64::max);
        words.push(say::coolant_from_to(
            first.1,
            last.1,
            &drive.unit,
            last.0,
            most,
        ));
    }
    if let Some((from, to)) = drive.band {
        words.push(say::may_keep_to(from, to, &drive.unit));
    }
    words.extend(drive.marks.iter().map(|mark| {
        if mark.wrong {
            say::wrong_mark_at(&mark.words, mark.minutes)
        } else {
            say::mark_at(&mark.words, mark.minutes)
        }
    }));
    if !drive.verdict.is_empty() {
        words.push(format!("{}.", drive.verdict));
    }
    words.join(" ")
}
