//! Labels for trays: a large name, a code that opens the tray on a joined phone, and its bolts
//! drawn at their true length. No name and no plate stands on them.

use super::Given;
use crate::engine::column::{SMALL, TEXT, base, count, line_height, one_line, rule, set};
use crate::engine::lines::{Line, bold, broken, plain};
use crate::engine::page::{
    DrawingMark, Grey, LineMark, MM, Mark, Page, Paper, SheetSize, Tag, Tags,
};
use drawing::{Area, Drawing, Ink, Pen, Point, Style};
use fast_qr::QRBuilder;
use shop::record::v1::codes::KindForm;
use shop::view::{ItemView, OrderView};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Labels across and down a sheet.
const ACROSS: usize = 2;
const DOWN: usize = 4;
/// From the edge of the sheet to the labels.
const EDGE_MM: f64 = 10.0;
/// The longest bolt that is drawn whole.
const LONGEST_MM: f64 = 79.0;

/// From the edge of a label to what stands on it.
const PADDING: f64 = 10.0;
/// The code to scan.
const CODE: f64 = 58.0;
/// The head of a bolt in parts of its thickness. It is drawn lower than it is, for more bolts
/// to find room: what tells them apart is the length and the thickness of the shank.
const HEAD: f64 = 1.25;

/// What lies in one tray, or as much of it as one label holds.
struct Tray {
    name: String,
    /// Which label of how many this is.
    nth: (usize, usize),
    rows: Vec<Row>,
}

/// A row of a label: words, and a bolt of this length and thickness in millimetres.
struct Row {
    words: String,
    bolt: Option<(f64, f64)>,
}

pub fn paper(given: &Given<'_>) -> Paper {
    let order = given.order;
    let mut tags = Tags::default();
    let trays = labels(order, area(given.size, 0));
    let total = trays.len().div_ceil(ACROSS * DOWN);
    let mut pages = Vec::new();
    for (nth, sheet) in trays.chunks(ACROSS * DOWN).enumerate() {
        let mut marks = check_line(given.size, &mut tags, order.number, nth == 0);
        for (at, tray) in sheet.iter().enumerate() {
            marks.extend(label(given, tray, area(given.size, at), &mut tags));
        }
        pages.push(Page { marks });
    }
    debug_assert_eq!(pages.len(), total);
    Paper {
        title: format!("Tray labels {}", order.number),
        language: "en",
        size: given.size,
        day: super::words::day_of(&order.papers.today),
        pages,
        foot: String::new(),
        tags,
        attached: None,
        e_invoice: None,
    }
}

/// The trays that something lies in, on as many labels as it takes; before anything is off,
/// empty ones from A on.
fn labels(order: &OrderView, area: Area) -> Vec<Tray> {
    let mut found: BTreeMap<&str, Vec<&ItemView>> = BTreeMap::new();
    // A fluid lies in no tray, and what was put in is in the vehicle.
    let lies = |item: &&ItemView| {
        !item.home
            && !matches!(
                item.kind,
                KindForm::Fluid | KindForm::PutIn | KindForm::Work
            )
    };
    for item in order.items.iter().filter(lies) {
        if let Some(container) = item.container.as_deref() {
            found.entry(container).or_default().push(item);
        }
    }
    if found.is_empty() {
        let letters = ["A", "B", "C", "D", "E", "F", "G", "H"];
        let empty = |letter: &str| Tray {
            name: letter.to_owned(),
            nth: (1, 1),
            rows: Vec::new(),
        };
        return letters.into_iter().map(empty).collect();
    }
    let mut out = Vec::new();
    for (name, items) in found {
        let name = name.strip_prefix("tray ").unwrap_or(name);
        let sheets = parted(items.into_iter().flat_map(rows).collect(), area);
        let of = sheets.len();
        out.extend(sheets.into_iter().enumerate().map(|(nth, rows)| Tray {
            name: name.to_owned(),
            nth: (nth + 1, of),
            rows,
        }));
    }
    out
}

/// The rows in portions that a label holds.
fn parted(rows: Vec<Row>, area: Area) -> Vec<Vec<Row>> {
    let (top, bottom) = room(area);
    let mut out: Vec<Vec<Row>> = vec![Vec::new()];
    let mut y = top;
    for row in rows {
        let height = height(&row, area);
        if let Some(last) = out
            .last_mut()
            .filter(|last| y + height <= bottom || last.is_empty())
        {
            last.push(row);
        } else {
            out.push(vec![row]);
            y = top;
        }
        y += height;
    }
    out
}

/// Where rows begin and end on a label.
fn room(area: Area) -> (f64, f64) {
    (area.y + PADDING + CODE + 7.0, area.bottom() - 6.0)
}

fn lines(row: &Row, area: Area) -> Vec<Line> {
    broken(
        &[plain(row.words.as_str())],
        TEXT,
        area.width - 2.0 * PADDING,
    )
}

fn height(row: &Row, area: Area) -> f64 {
    let bolt = row.bolt.map_or(0.0, |(_, thick)| thick * MM * HEAD + 4.0);
    line_height(TEXT) * count(lines(row, area).len()) + bolt
}

fn area(size: SheetSize, at: usize) -> Area {
    let (width, height) = size.points();
    let edge = EDGE_MM * MM;
    let top = edge + 6.0 * MM;
    let (each_w, each_h) = (
        (width - 2.0 * edge) / count(ACROSS),
        (height - top - edge) / count(DOWN),
    );
    Area {
        x: edge + each_w * count(at % ACROSS),
        y: top + each_h * count(at / ACROSS),
        width: each_w,
        height: each_h,
    }
}

/// A line of 50 mm, to see whether the printer kept the size.
fn check_line(size: SheetSize, tags: &mut Tags, number: u64, read: bool) -> Vec<Mark> {
    let (width, _) = size.points();
    let edge = EDGE_MM * MM;
    let mut marks = Vec::new();
    let words = format!("Tray labels, order {number}. Print at 100 %: this line is 50 mm");
    let line = one_line(&[plain(words.as_str())], SMALL);
    let leaf = read.then(|| {
        let node = tags.node(None, Tag::Heading(1, words.clone()));
        tags.leaf(node)
    });
    let y = edge + base(SMALL, 0);
    marks.extend(set(&line, edge, y, SMALL, Grey::Soft, leaf));
    let from = edge + line.width_pt + 6.0;
    let to = (from + 50.0 * MM).min(width - edge);
    marks.push(rule((from, to), y - 3.0, 0.75, Grey::Black));
    for x in [from, to] {
        marks.push(Mark::Line(LineMark {
            from: (x, y - 6.0),
            to: (x, y),
            width: 0.75,
            grey: Grey::Black,
            dash: None,
        }));
    }
    marks
}

fn label(given: &Given<'_>, tray: &Tray, area: Area, tags: &mut Tags) -> Vec<Mark> {
    let order = given.order;
    let mut marks = cuts(area);
    let (left, right) = (area.x + PADDING, area.right() - PADDING);
    let node = tags.node(None, Tag::Heading(2, format!("Tray {}", tray.name)));
    let widest = right - left - CODE - 90.0;
    let natural = one_line(&[bold(tray.name.as_str())], 52.0).width_pt;
    let size = 52.0 * (widest / natural.max(1.0)).min(1.0);
    let name = one_line(&[bold(tray.name.as_str())], size);
    let leaf = tags.leaf(node);
    marks.extend(set(
        &name,
        left,
        area.y + PADDING + 46.0,
        size,
        Grey::Black,
        Some(leaf),
    ));
    let beside = left + name.width_pt + 12.0;
    let text = tags.node(None, Tag::Paragraph);
    let mut words = vec![
        bold(order.number.to_string()),
        plain(order.row.vehicle.as_str()),
    ];
    if tray.nth.1 > 1 {
        words.push(plain(format!("label {} of {}", tray.nth.0, tray.nth.1)));
    }
    let mut y = area.y + PADDING;
    for run in words {
        for line in broken(&[run], 10.5, right - CODE - 8.0 - beside)
            .iter()
            .take(3)
        {
            let leaf = tags.leaf(text);
            marks.extend(set(
                line,
                beside,
                y + base(10.5, 0),
                10.5,
                Grey::Black,
                Some(leaf),
            ));
            y += line_height(10.5);
        }
    }
    marks.extend(code(given, right - CODE, area.y + PADDING, CODE, tags));
    let (top, _) = room(area);
    marks.push(rule((left, right), top - 3.0, 1.5, Grey::Black));
    contents(&mut marks, tray, area, tags);
    marks
}

/// What lies in it: bolts drawn, everything else by name.
fn contents(marks: &mut Vec<Mark>, tray: &Tray, area: Area, tags: &mut Tags) {
    let left = area.x + PADDING;
    let (mut y, _) = room(area);
    for row in &tray.rows {
        let node = tags.node(None, Tag::Paragraph);
        let lines = lines(row, area);
        for (nth, line) in lines.iter().enumerate() {
            let leaf = tags.leaf(node);
            let at = y + base(TEXT, nth);
            marks.extend(set(line, left, at, TEXT, Grey::Black, Some(leaf)));
        }
        if let Some((length, thick)) = row.bolt {
            let at = y + line_height(TEXT) * count(lines.len()) + 1.0;
            marks.push(bolt(left, at, length, thick));
        }
        y += height(row, area);
    }
}

/// The rows of an item: a bolt for each length of its pieces, else its count and name.
fn rows(item: &ItemView) -> Vec<Row> {
    let bolts = bolts(item);
    if !bolts.is_empty() {
        return bolts;
    }
    let size = item.size.as_deref();
    let size = size.map_or_else(String::new, |size| format!(" {size}"));
    vec![Row {
        words: format!("{} × {}{size}", item.positions.len().max(1), item.label),
        bolt: None,
    }]
}

/// The bolts of a group by their length: words, and length and thickness in millimetres.
fn bolts(item: &ItemView) -> Vec<Row> {
    let Some(thick) = item.size.as_deref().and_then(thickness_mm) else {
        return Vec::new();
    };
    let mut lengths: BTreeMap<u32, Vec<u16>> = BTreeMap::new();
    for length in &item.lengths {
        let mm: String = length
            .length
            .chars()
            .take_while(char::is_ascii_digit)
            .collect();
        if let Ok(mm) = mm.parse::<u32>() {
            lengths.entry(mm).or_default().push(length.at);
        }
    }
    let torque = if item.passes.is_empty() {
        String::new()
    } else {
        format!(", {}", item.passes.join(", then "))
    };
    lengths
        .into_iter()
        .map(|(mm, at)| {
            let at_words = if lengths_differ(item) {
                format!(" at {}", shop::say::positions(&at))
            } else {
                String::new()
            };
            let words = format!(
                "{} × M{} × {mm}, {}{at_words}{torque}",
                at.len(),
                trimmed(thick),
                item.label
            );
            Row {
                words,
                bolt: Some((f64::from(mm), thick)),
            }
        })
        .collect()
}

fn lengths_differ(item: &ItemView) -> bool {
    item.lengths
        .windows(2)
        .any(|pair| pair[0].length != pair[1].length)
}

fn trimmed(number: f64) -> String {
    format!("{number}")
}

/// The thickness of a metric thread: 8 of `M8x75 8.8`.
fn thickness_mm(size: &str) -> Option<f64> {
    let rest = size.trim().strip_prefix('M')?;
    let digits: String = rest
        .chars()
        .take_while(|letter| letter.is_ascii_digit() || *letter == '.')
        .collect();
    digits
        .parse()
        .ok()
        .filter(|thick| (1.0..=40.0).contains(thick))
}

/// A bolt at its true length and thickness, head at the left; a long one broken.
fn bolt(x: f64, y: f64, length_mm: f64, thick_mm: f64) -> Mark {
    let broken = length_mm > LONGEST_MM;
    let shown = length_mm.min(LONGEST_MM);
    let (head_w, head_h) = (thick_mm * 0.65, thick_mm * HEAD);
    let middle = head_h / 2.0;
    // The drawing counts in hundredths of a millimetre for its lines to come out thin.
    let scaled = |mm: f64| mm * 10.0;
    let line = Pen::outline(Ink::Ink);
    let thin = Pen::fine(Ink::Ink);
    let rect = |x: f64, y: f64, width: f64, height: f64| drawing::Mark::Rect {
        area: Area {
            x: scaled(x),
            y: scaled(y),
            width: scaled(width),
            height: scaled(height),
        },
        corner_radius: 0.0,
        style: Style::line(line),
    };
    let mut marks = vec![
        rect(0.0, 0.0, head_w, head_h),
        rect(head_w, middle - thick_mm / 2.0, shown, thick_mm),
    ];
    let threaded = shown.min(2.0 * thick_mm + 6.0);
    let mut at = head_w + shown - threaded;
    while at < head_w + shown {
        marks.push(drawing::Mark::Line {
            from: Point::new(scaled(at), scaled(middle - thick_mm / 2.0)),
            to: Point::new(scaled(at), scaled(middle + thick_mm / 2.0)),
            pen: thin,
        });
        at += 1.0;
    }
    if broken {
        let x = scaled(head_w + shown * 0.3);
        for shift in [0.0, 12.0] {
            marks.push(drawing::Mark::Polyline {
                points: vec![
                    Point::new(x + shift + 6.0, scaled(middle - thick_mm * 0.6)),
                    Point::new(x + shift - 6.0, scaled(middle)),
                    Point::new(x + shift + 6.0, scaled(middle)),
                    Point::new(x + shift - 6.0, scaled(middle + thick_mm * 0.6)),
                ],
                closed: false,
                style: Style::line(line),
            });
        }
    }
    Mark::Drawing(DrawingMark {
        x,
        y,
        scale: MM / 10.0,
        drawing: Arc::new(Drawing {
            width: scaled(head_w + shown),
            height: scaled(head_h),
            title: "a bolt".to_owned(),
            description: "Drawn at its true length.".to_owned(),
            marks,
        }),
        leaf: None,
    })
}

/// A code that opens the tray; none, if nobody said where the program can be reached.
fn code(given: &Given<'_>, x: f64, y: f64, side: f64, tags: &mut Tags) -> Option<Mark> {
    let base = given.address.as_deref()?;
    let link = format!(
        "{}/o/{}/tray",
        base.trim_end_matches('/'),
        given.order.number
    );
    let drawing = qr(&link)?;
    let node = tags.node(None, Tag::Figure(format!("A code to scan: {link}")));
    let leaf = tags.leaf(node);
    Some(Mark::Drawing(DrawingMark {
        x,
        y,
        scale: side / drawing.width,
        drawing: Arc::new(drawing),
        leaf: Some(leaf),
    }))
}

/// A code to scan as a drawing: a filled square for each dark module.
pub fn qr(words: &str) -> Option<Drawing> {
    let code = QRBuilder::new(words).build().ok()?;
    let side = code.size;
    let mut marks = Vec::new();
    for row in 0..side {
        // Neighbours in a row are one mark, so that no printer shows a seam between them.
        let mut start = None;
        for column in 0..=side {
            let dark = column < side && code[row][column].value();
            match (dark, start) {
                (true, None) => start = Some(column),
                (false, Some(from)) => {
                    marks.push(drawing::Mark::Rect {
                        area: Area {
                            x: count(from),
                            y: count(row),
                            width: count(column - from),
                            height: 1.0,
                        },
                        corner_radius: 0.0,
                        style: Style::fill(Ink::Ink),
                    });
                    start = None;
                }
                _ => {}
            }
        }
    }
    Some(Drawing {
        width: count(side),
        height: count(side),
        title: "A code to scan".to_owned(),
        description: words.to_owned(),
        marks,
    })
}

/// Where to cut.
fn cuts(area: Area) -> Vec<Mark> {
    let corners = [
        (area.x, area.y),
        (area.right(), area.y),
        (area.right(), area.bottom()),
        (area.x, area.bottom()),
    ];
    (0..4)
        .map(|nth| {
            Mark::Line(LineMark {
                from: corners[nth],
                to: corners[(nth + 1) % 4],
                width: 0.5,
                grey: Grey::Pale,
                dash: Some((4.0, 3.0)),
            })
        })
        .collect()
}
