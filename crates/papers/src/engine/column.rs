//! The two columns of a paper: headings at the left, content at the right.

use super::face::Weight;
use super::flow::Slab;
use super::lines::{Line, Run, bold, broken, plain};
use super::page::{
    BoxMark, DrawingMark, Grey, LineMark, MARGINS_MM, MM, Mark, Photo, SheetSize, Tag, Tags,
    TextMark,
};
use drawing::{Area, Drawing};
use std::rc::Rc;
use std::sync::Arc;

/// Type sizes in points.
pub const TEXT: f64 = 9.4;
pub const SMALL: f64 = 8.0;
pub const SUM: f64 = 13.0;

/// The room from one base line to the next, in parts of the type size.
const LEADING: f64 = 1.36;
/// Where the base line stands in its line, in parts of the type size.
const BASE: f64 = 1.02;
/// Above and below what stands in a row of a table.
const PADDING: f64 = 3.0;
/// Above and below the content of a part.
const PART_PADDING: f64 = 5.0;
/// The column of headings, in millimetres.
const HEADINGS_MM: f64 = 29.0;

/// Which end of a column its cells stand at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    Left,
    Right,
}

/// A column of a table.
#[derive(Debug, Clone, Copy)]
pub struct Kept {
    pub head: &'static str,
    /// In millimetres; none takes what the others leave.
    pub width_mm: Option<f64>,
    pub side: Side,
}

/// What stands in a cell: its text, and a smaller line under it.
#[derive(Debug, Clone, Default)]
pub struct Cell {
    pub runs: Vec<Run>,
    pub below: Option<String>,
    /// Whether a box to tick stands in it.
    pub tick: bool,
}

impl Cell {
    pub fn text(text: impl Into<String>) -> Self {
        Self {
            runs: vec![plain(text)],
            ..Self::default()
        }
    }

    pub fn bold(text: impl Into<String>) -> Self {
        Self {
            runs: vec![bold(text)],
            ..Self::default()
        }
    }

    /// A box to tick.
    pub fn to_tick() -> Self {
        Self {
            tick: true,
            ..Self::default()
        }
    }
}

/// All parts of a paper, as slabs.
pub struct Body {
    pub tags: Tags,
    pub slabs: Vec<Slab>,
    left: f64,
    right: f64,
}

/// The content of one part.
pub struct Column<'a> {
    tags: &'a mut Tags,
    node: usize,
    slabs: Vec<Slab>,
    left: f64,
    right: f64,
}

impl Body {
    pub fn new(size: SheetSize, tags: Tags) -> Self {
        let (width, _) = size.points();
        Self {
            tags,
            slabs: Vec::new(),
            left: MARGINS_MM[0] * MM,
            right: width - MARGINS_MM[1] * MM,
        }
    }

    /// A part: a rule, its heading at the left, its content beside it.
    pub fn part(&mut self, heading: &str, content: impl FnOnce(&mut Column<'_>)) {
        let node = self.tags.node(None, Tag::Part);
        let titled = self
            .tags
            .node(Some(node), Tag::Heading(2, heading.to_owned()));
        let beside = HEADINGS_MM * MM;
        let size = whole_words(heading, TEXT, beside - 6.0);
        let lines = broken(&[bold(heading)], size, beside - 6.0);
        let mut marks = vec![rule((self.left, self.right), 0.0, 0.75, Grey::Black)];
        for (nth, line) in lines.iter().enumerate() {
            let leaf = self.tags.leaf(titled);
            marks.extend(set(
                line,
                self.left,
                base(TEXT, nth) + PART_PADDING,
                size,
                Grey::Black,
                Some(leaf),
            ));
        }
        let mut column = Column {
            tags: &mut self.tags,
            node,
            slabs: Vec::new(),
            left: self.left + beside,
            right: self.right,
        };
        content(&mut column);
        let content = std::mem::take(&mut column.slabs);
        self.put(content, marks, lines.len());
    }

    /// Keeps the end of the last part with the beginning of the next one.
    pub fn glue(&mut self) {
        if let Some(last) = self.slabs.last_mut() {
            last.glued = true;
        }
    }

    /// A part that takes the whole width, its heading above it.
    pub fn whole(&mut self, heading: &str, content: impl FnOnce(&mut Column<'_>)) {
        let node = self.tags.node(None, Tag::Part);
        let titled = self
            .tags
            .node(Some(node), Tag::Heading(2, heading.to_owned()));
        let leaf = self.tags.leaf(titled);
        let mut marks = vec![rule((self.left, self.right), 0.0, 0.75, Grey::Black)];
        let line = one_line(&[bold(heading)], TEXT);
        let at = base(TEXT, 0) + PART_PADDING;
        marks.extend(set(&line, self.left, at, TEXT, Grey::Black, Some(leaf)));
        let head = Slab {
            height: PART_PADDING + line_height(TEXT) + 2.0,
            marks,
            glued: true,
            again: None,
        };
        let mut column = Column {
            tags: &mut self.tags,
            node,
            slabs: Vec::new(),
            left: self.left,
            right: self.right,
        };
        content(&mut column);
        let content = std::mem::take(&mut column.slabs);
        self.slabs.push(head.clone());
        for mut slab in content {
            slab.again = Some(Rc::new(with(&head, slab.again.as_deref())));
            self.slabs.push(slab);
        }
    }

    /// Puts the content of a part beside its heading; where it goes on on another page, the
    /// heading stands there again.
    fn put(&mut self, content: Vec<Slab>, heading: Vec<Mark>, lines: usize) {
        let again = Slab {
            height: PART_PADDING,
            marks: heading.clone(),
            ..Slab::default()
        };
        let tall = line_height(TEXT) * count(lines);
        let height: f64 = content.iter().map(|slab| slab.height).sum();
        let first = Slab {
            height: PART_PADDING,
            marks: heading,
            glued: true,
            again: None,
        };
        let last = Slab {
            height: PART_PADDING + (tall - height).max(0.0),
            ..Slab::default()
        };
        self.slabs.push(first);
        for mut slab in content {
            slab.again = Some(Rc::new(with(&again, slab.again.as_deref())));
            self.slabs.push(slab);
        }
        if let Some(before) = self.slabs.last_mut() {
            before.glued = true;
        }
        self.slabs.push(last);
    }
}

/// The size at which the longest word of a heading is not parted; never less than small print.
fn whole_words(heading: &str, size: f64, width: f64) -> f64 {
    let word_width = |word: &str| one_line(&[bold(word)], size).width_pt;
    let widest = heading
        .split_whitespace()
        .map(word_width)
        .fold(1.0, f64::max);
    (size * (width / (widest + 0.5)).min(1.0)).max(SMALL)
}

/// A slab with another one under it.
fn with(above: &Slab, below: Option<&Slab>) -> Slab {
    let mut out = above.clone();
    if let Some(below) = below {
        let at = out.height;
        let lowered = below.marks.iter().cloned().map(|mark| mark.lowered(at));
        out.marks.extend(lowered);
        out.height += below.height;
    }
    out
}

impl Column<'_> {
    /// A paragraph.
    pub fn text(&mut self, runs: &[Run]) {
        self.paragraph(runs, TEXT, Grey::Black);
    }

    /// A paragraph in small print.
    pub fn small(&mut self, text: &str) {
        self.paragraph(&[plain(text)], SMALL, Grey::Soft);
    }

    fn paragraph(&mut self, runs: &[Run], size: f64, grey: Grey) {
        let node = self.tags.node(Some(self.node), Tag::Paragraph);
        let lines = broken(runs, size, self.right - self.left);
        let total = lines.len();
        for (nth, line) in lines.iter().enumerate() {
            let leaf = self.tags.leaf(node);
            self.slabs.push(Slab {
                height: line_height(size),
                marks: set(line, self.left, base(size, 0), size, grey, Some(leaf)),
                // Neither the first nor the last line of a paragraph stands alone.
                glued: nth == 0 && total > 1 || nth + 2 == total,
                again: None,
            });
        }
    }

    /// Room above what follows.
    pub fn gap(&mut self, height: f64) {
        self.slabs.push(Slab {
            height,
            glued: true,
            ..Slab::default()
        });
    }

    /// Keeps what stands last with what follows.
    pub fn keep(&mut self) {
        if let Some(last) = self.slabs.last_mut() {
            last.glued = true;
        }
    }

    /// Lets a page end behind what stands last.
    pub fn keep_not(&mut self) {
        if let Some(last) = self.slabs.last_mut() {
            last.glued = false;
        }
    }

    /// A line of text with boxes to tick.
    pub fn boxes(&mut self, choices: &[&str]) {
        let node = self.tags.node(Some(self.node), Tag::Choices);
        let mut x = self.left;
        let mut slab = Slab {
            height: line_height(TEXT) + 4.0,
            ..Slab::default()
        };
        for choice in choices {
            let line = one_line(&[plain(*choice)], TEXT);
            if x > self.left && x + 15.0 + line.width_pt > self.right {
                self.slabs.push(std::mem::take(&mut slab));
                slab.height = line_height(TEXT) + 4.0;
                x = self.left;
            }
            slab.marks.push(tick(x, 2.0, 10.0));
            let leaf = self.tags.leaf(node);
            slab.marks.extend(set(
                &line,
                x + 15.0,
                base(TEXT, 0) + 1.0,
                TEXT,
                Grey::Black,
                Some(leaf),
            ));
            x += 15.0 + line.width_pt + 14.0;
        }
        self.slabs.push(slab);
    }

    /// Words with blanks to fill in by hand: each blank is a line of so many millimetres.
    pub fn blanks(&mut self, parts: &[(&str, f64)], ticked: bool) {
        let node = self.tags.node(Some(self.node), Tag::Blanks);
        let mut slab = Slab {
            height: line_height(TEXT) + 6.0,
            ..Slab::default()
        };
        let mut x = self.left;
        if ticked {
            slab.marks.push(tick(x, 4.0, 10.0));
            x += 15.0;
        }
        let at = base(TEXT, 0) + 3.0;
        for (text, blank_mm) in parts {
            let line = one_line(&[plain(*text)], TEXT);
            let leaf = self.tags.leaf(node);
            slab.marks
                .extend(set(&line, x, at, TEXT, Grey::Black, Some(leaf)));
            x += line.width_pt + 3.0;
            if *blank_mm > 0.0 {
                let to = (x + blank_mm * MM).min(self.right);
                slab.marks.push(rule((x, to), at + 2.0, 0.75, Grey::Black));
                x = to + 4.0;
            }
        }
        self.slabs.push(slab);
    }

    /// Lines to sign on, each with what is written under it; wide ones count double.
    pub fn sign(&mut self, under: &[(&str, f64)]) {
        let node = self.tags.node(Some(self.node), Tag::Signed);
        let shares: f64 = under.iter().map(|(_, share)| share).sum();
        let gaps = 14.0 * (count(under.len()) - 1.0);
        let mut slab = Slab {
            height: 30.0 + line_height(SMALL),
            ..Slab::default()
        };
        let mut x = self.left;
        for (words, share) in under {
            let width = (self.right - self.left - gaps) * share / shares;
            slab.marks
                .push(rule((x, x + width), 30.0, 0.75, Grey::Black));
            let lines = broken(&[plain(*words)], SMALL, width);
            if let Some(line) = lines.first() {
                let leaf = self.tags.leaf(node);
                slab.marks.extend(set(
                    line,
                    x,
                    30.0 + base(SMALL, 0) + 1.0,
                    SMALL,
                    Grey::Soft,
                    Some(leaf),
                ));
            }
            x += width + 14.0;
        }
        self.slabs.push(slab);
    }

    /// A table: its head, its rows, a thin line between two of them.
    pub fn table(&mut self, columns: &[Kept], rows: &[Vec<Cell>]) {
        let places = places(columns, self.left, self.right);
        let table = self.tags.node(Some(self.node), Tag::Table);
        let mut again = None;
        if columns.iter().any(|column| !column.head.is_empty()) {
            let head = self.head(table, columns, &places);
            again = Some(Rc::new(head.clone()));
            self.slabs.push(head);
        }
        for (nth, row) in rows.iter().enumerate() {
            let last = nth + 1 == rows.len();
            let slabs = self.row(table, columns, &places, row, !last);
            self.slabs.extend(slabs.into_iter().map(|slab| Slab {
                again: again.clone(),
                ..slab
            }));
        }
    }

    fn head(&mut self, table: usize, columns: &[Kept], places: &[(f64, f64)]) -> Slab {
        let row = self.tags.node(Some(table), Tag::Row);
        let height = line_height(SMALL) + PADDING;
        let mut marks = vec![rule((self.left, self.right), height, 0.5, Grey::Pale)];
        for (column, (left, right)) in columns.iter().zip(places) {
            let cell = self.tags.node(Some(row), Tag::ColumnHead);
            let leaf = self.tags.leaf(cell);
            let line = one_line(&[plain(column.head)], SMALL);
            let x = start(&line, column.side, *left, *right);
            marks.extend(set(&line, x, base(SMALL, 0), SMALL, Grey::Soft, Some(leaf)));
        }
        Slab {
            height,
            marks,
            glued: true,
            again: None,
        }
    }

    /// A row, line by line, so that one that is taller than a page can go on on the next.
    fn row(
        &mut self,
        table: usize,
        columns: &[Kept],
        places: &[(f64, f64)],
        cells: &[Cell],
        ruled: bool,
    ) -> Vec<Slab> {
        let row = self.tags.node(Some(table), Tag::Row);
        let mut lines: Vec<Vec<Mark>> = Vec::new();
        for (nth, (cell, (left, right))) in cells.iter().zip(places).enumerate() {
            let side = columns.get(nth).map_or(Side::Left, |column| column.side);
            let tag = match side {
                _ if cell.tick => Tag::Tick,
                Side::Right => Tag::Number,
                Side::Left => Tag::Cell,
            };
            let node = self.tags.node(Some(row), tag);
            let width = right - left;
            let text = broken(&cell.runs, TEXT, width);
            let below = cell
                .below
                .iter()
                .flat_map(|below| broken(&[plain(below)], SMALL, width));
            let text = text.into_iter().map(|line| (line, TEXT, Grey::Black));
            let all = text.chain(below.map(|line| (line, SMALL, Grey::Soft)));
            for (at, (line, size, grey)) in all.enumerate() {
                let leaf = self.tags.leaf(node);
                let x = start(&line, side, *left, *right);
                if lines.len() <= at {
                    lines.push(Vec::new());
                }
                lines[at].extend(set(&line, x, base(TEXT, 0), size, grey, Some(leaf)));
            }
        }
        if cells.iter().any(|cell| cell.tick) {
            // A box is as tall as two lines.
            lines.resize(lines.len().max(2), Vec::new());
        }
        for (cell, (left, _)) in cells.iter().zip(places).filter(|(cell, _)| cell.tick) {
            if let (true, Some(first)) = (cell.tick, lines.first_mut()) {
                first.push(tick(*left, 1.0, 17.0));
            }
        }
        let total = lines.len().max(1);
        lines.resize(total, Vec::new());
        lines
            .into_iter()
            .enumerate()
            .map(|(nth, marks)| {
                let (first, last) = (nth == 0, nth + 1 == total);
                let above = if first { PADDING } else { 0.0 };
                let below = if last { PADDING } else { 0.0 };
                let height = above + line_height(TEXT) + below;
                let mut marks: Vec<Mark> =
                    marks.into_iter().map(|mark| mark.lowered(above)).collect();
                if last && ruled {
                    marks.push(rule((self.left, self.right), height, 0.5, Grey::Pale));
                }
                Slab {
                    height,
                    marks,
                    glued: !last,
                    again: None,
                }
            })
            .collect()
    }

    /// Sums at the right, kept together; the last one stands large under a thick line.
    pub fn sums(&mut self, rows: &[(String, String)], total: Option<(&str, &str)>) {
        let table = self.tags.node(Some(self.node), Tag::Table);
        let left = self.left + (self.right - self.left) * 0.45;
        let plain_rows = rows
            .iter()
            .map(|(name, sum)| (name.as_str(), sum.as_str(), TEXT));
        let total = total.map(|(name, sum)| (name, sum, SUM));
        let all: Vec<_> = plain_rows.chain(total).collect();
        let last = all.len();
        for (nth, (name, sum, size)) in all.into_iter().enumerate() {
            let large = size > TEXT;
            let weight = if large { bold } else { plain };
            let row = self.tags.node(Some(table), Tag::Row);
            let head = self.tags.node(Some(row), Tag::RowHead);
            let cell = self.tags.node(Some(row), Tag::Number);
            let sum = one_line(&[weight(sum.to_owned())], size);
            let names = broken(
                &[weight(name.to_owned())],
                size,
                self.right - left - sum.width_pt - 12.0,
            );
            let above = if large { 5.0 } else { 2.0 };
            let mut marks = Vec::new();
            for (at, line) in names.iter().enumerate() {
                let leaf = self.tags.leaf(head);
                marks.extend(set(
                    line,
                    left,
                    above + base(size, at),
                    size,
                    Grey::Black,
                    Some(leaf),
                ));
            }
            let leaf = self.tags.leaf(cell);
            marks.extend(set(
                &sum,
                self.right - sum.width_pt,
                above + base(size, 0),
                size,
                Grey::Black,
                Some(leaf),
            ));
            if large {
                marks.push(rule((left, self.right), 1.0, 1.5, Grey::Black));
            }
            self.slabs.push(Slab {
                height: above + line_height(size) * count(names.len().max(1)) + 2.0,
                marks,
                glued: nth + 1 < last,
                again: None,
            });
        }
    }

    /// A photo, as wide as half the column and as high as a hand at most.
    pub fn photo(&mut self, photo: &Photo, alt: &str) {
        const HIGH_MM: f64 = 62.0;
        const WIDE_MM: f64 = 85.0;
        let node = self.tags.node(Some(self.node), Tag::Figure(alt.to_owned()));
        let leaf = self.tags.leaf(node);
        let wide = (self.right - self.left).min(WIDE_MM * MM);
        let mark = photo.placed((self.left, 2.0), wide, HIGH_MM * MM, Some(leaf));
        self.slabs.push(Slab {
            height: mark.area.height + 6.0,
            marks: vec![Mark::Photo(mark)],
            ..Slab::default()
        });
    }

    /// A drawing, as wide as the column at most, and never enlarged.
    pub fn drawing(&mut self, drawing: Drawing, scale: f64) {
        let alt = format!("{}. {}", drawing.title, drawing.description);
        let node = self.tags.node(Some(self.node), Tag::Figure(alt));
        let leaf = self.tags.leaf(node);
        let fits = (self.right - self.left) / drawing.width.max(1.0);
        let scale = scale.min(fits);
        self.slabs.push(Slab {
            height: drawing.height * scale + 4.0,
            marks: vec![Mark::Drawing(DrawingMark {
                x: self.left,
                y: 2.0,
                scale,
                drawing: Arc::new(drawing),
                leaf: Some(leaf),
            })],
            ..Slab::default()
        });
    }
}

/// Where each column begins and ends.
fn places(columns: &[Kept], left: f64, right: f64) -> Vec<(f64, f64)> {
    const BETWEEN: f64 = 7.0;
    let fixed: f64 = columns
        .iter()
        .filter_map(|column| column.width_mm)
        .sum::<f64>()
        * MM;
    let open = columns
        .iter()
        .filter(|column| column.width_mm.is_none())
        .count();
    let rest = (right - left - fixed).max(0.0) / count(open.max(1));
    let mut x = left;
    let last = columns.len().saturating_sub(1);
    columns
        .iter()
        .enumerate()
        .map(|(nth, column)| {
            let from = x;
            x += column.width_mm.map_or(rest, |width| width * MM);
            (from, if nth == last { x } else { x - BETWEEN })
        })
        .collect()
}

fn start(line: &Line, side: Side, left: f64, right: f64) -> f64 {
    match side {
        Side::Left => left,
        Side::Right => right - line.width_pt,
    }
}

/// The height of a line of this size.
pub fn line_height(size: f64) -> f64 {
    size * LEADING
}

/// The base line of a line, from the top of the first.
pub fn base(size: f64, nth: usize) -> f64 {
    size * BASE + line_height(size) * count(nth)
}

/// A number of things as a factor.
pub fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::from(u32::MAX), f64::from)
}

/// A line that is not broken, however wide it is.
pub fn one_line(runs: &[Run], size: f64) -> Line {
    let mut lines = broken(runs, size, f64::INFINITY);
    if lines.is_empty() {
        return Line {
            runs: Vec::new(),
            width_pt: 0.0,
            goes_on: false,
        };
    }
    lines.swap_remove(0)
}

/// The marks of a line that begins here.
pub fn set(line: &Line, x: f64, y: f64, size: f64, grey: Grey, leaf: Option<usize>) -> Vec<Mark> {
    let mut x = x;
    let mut out = Vec::new();
    for run in &line.runs {
        out.push(Mark::Text(TextMark {
            x,
            y,
            text: run.text.clone(),
            size,
            weight: run.weight,
            grey,
            leaf,
            goes_on: line.goes_on,
        }));
        x += super::face::width_pt(&run.text, size, run.weight);
    }
    out
}

/// A rule across.
pub fn rule((from, to): (f64, f64), y: f64, width: f64, grey: Grey) -> Mark {
    Mark::Line(LineMark {
        from: (from, y),
        to: (to, y),
        width,
        grey,
        dash: None,
    })
}

/// A box to tick.
pub fn tick(x: f64, y: f64, side: f64) -> Mark {
    Mark::Box(BoxMark {
        area: Area {
            x,
            y,
            width: side,
            height: side,
        },
        width: 1.0,
        fill: None,
    })
}

/// The weight of a whole line, for callers that set their own.
pub fn run(text: impl Into<String>, weight: Weight) -> Run {
    Run {
        text: text.into(),
        weight,
    }
}
