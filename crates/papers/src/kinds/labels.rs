//! Labels for trays: a large name, a code that opens the tray on a joined phone, and its bolts
//! drawn at their true length. No name and no plate stands on them.

use super::Given;
use super::label_sheets::Format;
use crate::engine::column::{SMALL, TEXT, base, count, line_height, one_line, rule, set};
use crate::engine::lines::{Line, bold, broken, plain};
use crate::engine::page::{
    DrawingMark, Grey, LineMark, MM, Mark, Page, Paper, SheetSize, Tag, Tags,
};
use crate::phrases as say;
use drawing::{Area, Drawing, Ink, Pen, Point, Style};
use fast_qr::QRBuilder;
use phrases::spoken;
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

/// How a label is parted: its name and the code above, what lies in the tray below; on a low
/// one the code stands beside both.
#[derive(Debug, Clone, Copy)]
struct Layout {
    area: Area,
    /// Between these stand words and bolts, from here to there.
    left: f64,
    rows_right: f64,
    top: f64,
    rows_top: f64,
    bottom: f64,
    /// The side of the code to scan, and where it begins.
    code: f64,
    code_left: f64,
    /// The sizes of letters: the tray's name, what stands beside it, what lies in it.
    name_pt: f64,
    beside_pt: f64,
    row_pt: f64,
}

impl Layout {
    fn of(area: Area) -> Self {
        /// Lower labels have the code beside what lies in the tray.
        const LOW: f64 = 150.0;
        const CODE: f64 = 58.0;
        if area.height >= LOW {
            let (pad, right) = (10.0, area.right() - 10.0);
            return Self {
                area,
                left: area.x + pad,
                rows_right: right,
                top: area.y + pad,
                rows_top: area.y + pad + CODE + 7.0,
                bottom: area.bottom() - 6.0,
                code: CODE,
                code_left: right - CODE,
                name_pt: 52.0,
                beside_pt: 10.5,
                row_pt: TEXT,
            };
        }
        // What a printer leaves free at the edge of a sheet is 4 mm at most.
        let (beside, above) = (14.0, (area.height * 0.11).clamp(5.0, 12.0));
        let within = area.height - 2.0 * above;
        let code = within.min(CODE);
        let code_left = area.right() - beside - code;
        let name_pt = within * 0.45;
        let top = area.y + above;
        Self {
            area,
            left: area.x + beside,
            rows_right: code_left - 6.0,
            top,
            rows_top: top + name_pt + 4.0,
            bottom: area.bottom() - above,
            code,
            code_left,
            name_pt,
            beside_pt: SMALL,
            row_pt: SMALL,
        }
    }

    fn row_width(&self) -> f64 {
        self.rows_right - self.left
    }
}

pub fn paper(given: &Given<'_>) -> Paper {
    let order = given.order;
    let mut tags = Tags::default();
    let format = given.labels.format;
    let size = format.map_or(given.size, |format| format.sheet);
    let on_a_sheet = format.map_or(ACROSS * DOWN, Format::on_a_sheet);
    let place = |at: usize| format.map_or_else(|| area(size, at), |format| format.place(at));
    let trays = labels(order, Layout::of(place(0)));
    // Those before the first are gone already.
    let gone = match format {
        Some(_) => (given.labels.from.max(1) - 1) % on_a_sheet,
        None => 0,
    };
    let total = (gone + trays.len()).div_ceil(on_a_sheet);
    let mut pages: Vec<Page> = (0..total).map(|_| Page::default()).collect();
    let title = format!("{} {}", say::tray_labels(), order.number);
    for (nth, page) in pages.iter_mut().enumerate() {
        if format.is_none() {
            page.marks = check_line(size, &mut tags, order.number, nth == 0);
        }
    }
    for (nth, tray) in trays.iter().enumerate() {
        let at = gone + nth;
        let layout = Layout::of(place(at % on_a_sheet));
        let marks = &mut pages[at / on_a_sheet].marks;
        if format.is_none() {
            marks.extend(cuts(layout.area));
        }
        // A sheet of labels has no room for a title: the first label is what is read first.
        let level = if format.is_some() && nth == 0 { 1 } else { 2 };
        marks.extend(label(given, tray, &layout, level, &mut tags));
    }
    Paper {
        title,
        language: spoken().tag(),
        size,
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
fn labels(order: &OrderView, layout: Layout) -> Vec<Tray> {
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
        let sheets = parted(items.into_iter().flat_map(rows).collect(), &layout);
        let of = sheets.len();
        out.extend(sheets.into_iter().enumerate().map(|(nth, rows)| Tray {
            name: name.to_owned(),
            nth: (nth + 1, of),
            rows,
        }));
    }
    out
}

/// The rows in portions that a label holds. A bolt that no label has room for is told in words
/// alone.
fn parted(rows: Vec<Row>, layout: &Layout) -> Vec<Vec<Row>> {
    let mut out: Vec<Vec<Row>> = vec![Vec::new()];
    let mut y = layout.rows_top;
    for mut row in rows {
        if layout.rows_top + height(&row, layout) > layout.bottom {
            row.bolt = None;
        }
        let height = height(&row, layout);
        if let Some(last) = out
            .last_mut()
            .filter(|last| y + height <= layout.bottom || last.is_empty())
        {
            last.push(row);
        } else {
            out.push(vec![row]);
            y = layout.rows_top;
        }
        y += height;
    }
    out
}

/// A row's words in lines, as many as one label has room for.
fn lines(row: &Row, layout: &Layout) -> Vec<Line> {
    let wrapped = |words: &str| broken(&[plain(words)], layout.row_pt, layout.row_width());
    let fits = |lines: &[Line]| {
        let tall = line_height(layout.row_pt) * count(lines.len());
        lines.len() <= 1 || layout.rows_top + tall <= layout.bottom
    };
    let mut words = row.words.clone();
    let mut lines = wrapped(&words);
    while !fits(&lines) {
        let Some((kept, _)) = words
            .trim_end_matches('\u{2026}')
            .trim_end()
            .rsplit_once(' ')
        else {
            lines.truncate(1);
            break;
        };
        words = format!("{kept}\u{2026}");
        lines = wrapped(&words);
    }
    lines
}

fn height(row: &Row, layout: &Layout) -> f64 {
    let bolt = row.bolt.map_or(0.0, |(_, thick)| thick * MM * HEAD + 4.0);
    line_height(layout.row_pt) * count(lines(row, layout).len()) + bolt
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
    let words = say::check_line(number);
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

fn label(
    given: &Given<'_>,
    tray: &Tray,
    layout: &Layout,
    level: u16,
    tags: &mut Tags,
) -> Vec<Mark> {
    let order = given.order;
    let mut marks = Vec::new();
    let left = layout.left;
    let node = tags.node(None, Tag::Heading(level, say::tray(&tray.name)));
    let most = layout.code_left - 6.0;
    let widest = (most - left) * 0.6;
    let natural = one_line(&[bold(tray.name.as_str())], layout.name_pt).width_pt;
    let size = layout.name_pt * (widest / natural.max(1.0)).min(1.0);
    let name = one_line(&[bold(tray.name.as_str())], size);
    let leaf = tags.leaf(node);
    let at = layout.top + layout.name_pt * 0.885;
    marks.extend(set(&name, left, at, size, Grey::Black, Some(leaf)));
    let beside = left + name.width_pt + 10.0;
    let text = tags.node(None, Tag::Paragraph);
    let mut words = vec![
        bold(order.number.to_string()),
        plain(order.row.vehicle.as_str()),
    ];
    if tray.nth.1 > 1 {
        words.insert(1, plain(say::label_of(tray.nth.0, tray.nth.1)));
    }
    let mut y = layout.top;
    for run in words {
        for line in broken(&[run], layout.beside_pt, most - beside)
            .iter()
            .take(3)
        {
            let next = y + line_height(layout.beside_pt);
            if next > layout.rows_top {
                break;
            }
            let leaf = tags.leaf(text);
            let at = y + base(layout.beside_pt, 0);
            marks.extend(set(
                line,
                beside,
                at,
                layout.beside_pt,
                Grey::Black,
                Some(leaf),
            ));
            y = next;
        }
    }
    marks.extend(code(given, layout.code_left, layout.top, layout.code, tags));
    let rule_at = layout.rows_top - 3.0;
    marks.push(rule((left, layout.rows_right), rule_at, 1.5, Grey::Black));
    contents(&mut marks, tray, layout, tags);
    marks
}

/// What lies in it: bolts drawn, everything else by name.
fn contents(marks: &mut Vec<Mark>, tray: &Tray, layout: &Layout, tags: &mut Tags) {
    let (left, size) = (layout.left, layout.row_pt);
    let mut y = layout.rows_top;
    for row in &tray.rows {
        let node = tags.node(None, Tag::Paragraph);
        let lines = lines(row, layout);
        for (nth, line) in lines.iter().enumerate() {
            let leaf = tags.leaf(node);
            let at = y + base(size, nth);
            marks.extend(set(line, left, at, size, Grey::Black, Some(leaf)));
        }
        if let Some((length, thick)) = row.bolt {
            let at = y + line_height(size) * count(lines.len()) + 1.0;
            let longest = (layout.row_width() / MM - thick * 0.65).min(LONGEST_MM);
            marks.push(bolt((left, at), length, thick, longest));
        }
        y += height(row, layout);
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
        format!(", {}", item.passes.join(say::then()))
    };
    lengths
        .into_iter()
        .map(|(mm, at)| {
            let at_words = if lengths_differ(item) {
                say::at_positions(shop::say::positions(&at))
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
fn bolt((x, y): (f64, f64), length_mm: f64, thick_mm: f64, longest_mm: f64) -> Mark {
    let broken = length_mm > longest_mm;
    let shown = length_mm.min(longest_mm);
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
            title: say::a_bolt().to_owned(),
            description: say::at_true_length().to_owned(),
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
    let node = tags.node(None, Tag::Figure(say::code_to_scan(&link)));
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
        title: say::a_code().to_owned(),
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
