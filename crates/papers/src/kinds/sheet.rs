//! What every paper for a payer has: the shop, who it is for, its kind and number, the facts
//! beside it; on later pages one line of them; the foot.

use super::Given;
use super::words::{day_of, long_day};
use crate::engine::column::{Body, SMALL, TEXT, base, line_height, one_line, rule, set};
use crate::engine::face::Weight;
use crate::engine::flow::{Room, paged};
use crate::engine::lines::{Run, bold, broken, plain};
use crate::engine::page::{
    Attached, Grey, MARGINS_MM, MM, Mark, Page, Paper, SheetSize, Tag, Tags,
};
use shop::record::v1::codes::PayerForm;
use shop::view::OrderView;

/// Where the address stands, so that a window of an envelope shows it.
const ADDRESS_TOP_MM: f64 = 44.0;
/// The column of facts, from the left edge of the sheet.
const FACTS_MM: f64 = 116.0;

/// What stands at the head and foot of a paper.
pub struct Heading<'a> {
    /// `Invoice`.
    pub kind: &'a str,
    /// The number it bears.
    pub number: String,
    /// The day it bears, as `2026-11-30`.
    pub day: &'a str,
    /// More facts beside those of the vehicle.
    pub facts: Vec<(&'static str, String)>,
    pub foot: &'a str,
}

/// A paper with this head, these parts, this foot.
pub fn composed(
    given: &Given<'_>,
    heading: &Heading<'_>,
    attached: Option<Attached>,
    parts: impl FnOnce(&mut Body),
) -> Paper {
    let (order, size) = (given.order, given.size);
    let mut tags = Tags::default();
    let (mut first, below) = first_head(given, heading, &mut tags);
    let mut body = Body::new(size, tags);
    parts(&mut body);
    let (_, height) = size.points();
    let bottom = height - MARGINS_MM[3] * MM;
    let foot = line_height(SMALL) + 6.0;
    let room = Room {
        first_top: below + 10.0,
        next_top: MARGINS_MM[2] * MM + line_height(TEXT) + 10.0,
        bottom: bottom - foot,
    };
    let mut pages = paged(body.slabs, room);
    let total = pages.len();
    for (nth, page) in pages.iter_mut().enumerate() {
        let mut marks = if nth == 0 {
            std::mem::take(&mut first)
        } else {
            next_head(order, heading, size)
        };
        marks.append(page);
        let nth_of = (given.wording.page_of)(nth + 1, total);
        marks.extend(footer(heading.foot, size, bottom - foot, &nth_of));
        *page = marks;
    }
    Paper {
        title: format!("{} {}", heading.kind, heading.number),
        language: given.wording.code,
        size,
        day: day_of(heading.day),
        pages: pages.into_iter().map(|marks| Page { marks }).collect(),
        foot: heading.foot.to_owned(),
        tags: body.tags,
        attached,
        e_invoice: None,
    }
}

/// The head of the first page, and where it ends.
fn first_head(given: &Given<'_>, heading: &Heading<'_>, tags: &mut Tags) -> (Vec<Mark>, f64) {
    let order = given.order;
    let (width, _) = given.size.points();
    let (left, right, top) = (
        MARGINS_MM[0] * MM,
        width - MARGINS_MM[1] * MM,
        MARGINS_MM[2] * MM,
    );
    let mut marks = Vec::new();
    let shop = order.papers.shop.as_str();
    let facts_left = FACTS_MM * MM;
    let top = top + logo(&mut marks, given, tags, (left, top));
    let named = tags.node(None, Tag::Paragraph);
    let mut y = lines_of(
        &mut marks,
        tags,
        named,
        bold(shop),
        (left, top),
        17.0,
        facts_left - left - 10.0,
    );
    for line in order.papers.letterhead.lines(given.wording.tax_number) {
        y = lines_of(
            &mut marks,
            tags,
            named,
            plain(line),
            (left, y),
            SMALL,
            right - left,
        );
    }
    marks.push(rule((left, right), y + 5.0, 1.5, Grey::Black));
    let under = y + 5.0;
    let address_top = (ADDRESS_TOP_MM * MM).max(under + 14.0);
    let address = address_block(
        &mut marks,
        tags,
        given,
        (left, address_top),
        facts_left - left - 12.0,
    );
    let facts = facts_block(
        &mut marks,
        tags,
        given,
        heading,
        (facts_left, right),
        under + 10.0,
    );
    (marks, address.max(facts))
}

/// The shop's picture, and how high it stands.
fn logo(marks: &mut Vec<Mark>, given: &Given<'_>, tags: &mut Tags, at: (f64, f64)) -> f64 {
    const HIGH_MM: f64 = 13.0;
    const WIDE_MM: f64 = 60.0;
    let Some(photo) = &given.logo else {
        return 0.0;
    };
    let node = tags.node(None, Tag::Figure(given.order.papers.shop.clone()));
    let leaf = tags.leaf(node);
    let mark = photo.placed(at, WIDE_MM * MM, HIGH_MM * MM, Some(leaf));
    let height = mark.area.height;
    marks.push(Mark::Photo(mark));
    height + 4.0
}

fn address_block(
    marks: &mut Vec<Mark>,
    tags: &mut Tags,
    given: &Given<'_>,
    (left, top): (f64, f64),
    most: f64,
) -> f64 {
    let (order, wording) = (given.order, given.wording);
    let whom = match given.payer {
        PayerForm::Customer => {
            let address = order
                .papers
                .address
                .lines()
                .map(|line| line.trim().to_owned());
            [order.row.customer.clone()]
                .into_iter()
                .chain(address)
                .collect()
        }
        other => vec![
            (wording.for_payer)((wording.payer)(other)),
            (wording.vehicle_of)(&order.row.customer),
        ],
    };
    let whom: Vec<String> = whom;
    let node = tags.node(None, Tag::Paragraph);
    let mut y = top;
    for line in whom.iter().filter(|line| !line.trim().is_empty()) {
        y = lines_of(
            marks,
            tags,
            node,
            plain(line.as_str()),
            (left, y),
            10.5,
            most,
        );
    }
    y
}

fn facts_block(
    marks: &mut Vec<Mark>,
    tags: &mut Tags,
    given: &Given<'_>,
    heading: &Heading<'_>,
    (left, right): (f64, f64),
    top: f64,
) -> f64 {
    let words = format!("{} {}", heading.kind, heading.number);
    let node = tags.node(None, Tag::Heading(1, words));
    let size = fitting(heading, right - left);
    let kind = one_line(&[bold(heading.kind)], size);
    let number = one_line(&[bold(heading.number.as_str())], size);
    let at = top + base(size, 0);
    let leaf = tags.leaf(node);
    marks.extend(set(&kind, left, at, size, Grey::Black, Some(leaf)));
    let leaf = tags.leaf(node);
    marks.extend(set(
        &number,
        right - number.width_pt,
        at,
        size,
        Grey::Black,
        Some(leaf),
    ));
    let mut y = top + line_height(size) + 2.0;
    marks.push(rule((left, right), y, 0.75, Grey::Black));
    y += 4.0;
    let table = tags.node(None, Tag::Table);
    for (name, value) in facts(given, heading) {
        let row = tags.node(Some(table), Tag::Row);
        let head = tags.node(Some(row), Tag::RowHead);
        let cell = tags.node(Some(row), Tag::Cell);
        let after = lines_of(marks, tags, head, plain(name), (left, y), TEXT, 64.0);
        let beside = lines_of(
            marks,
            tags,
            cell,
            plain(value),
            (left + 70.0, y),
            TEXT,
            right - left - 70.0,
        );
        y = after.max(beside);
    }
    y
}

/// The size at which kind and number stand beside each other.
fn fitting(heading: &Heading<'_>, room: f64) -> f64 {
    const MOST: f64 = 22.0;
    let words = format!("{}  {}", heading.kind, heading.number);
    let width = one_line(&[bold(words)], MOST).width_pt;
    MOST * (room / width.max(1.0)).min(1.0)
}

fn facts(given: &Given<'_>, heading: &Heading<'_>) -> Vec<(&'static str, String)> {
    let (order, wording) = (given.order, given.wording);
    let papers = &order.papers;
    let mut all = vec![(wording.date, long_day(wording, heading.day))];
    if heading.number != order.number.to_string() {
        all.push((wording.order, order.number.to_string()));
    }
    all.push((wording.vehicle, order.row.vehicle.clone()));
    all.push((wording.plate, order.row.plate.clone()));
    all.push((wording.vin, papers.vin.clone()));
    let odometer = match (&papers.odometer_in, &papers.odometer_out) {
        (Some(on), Some(off)) => (wording.odometer_both)(on, off),
        (Some(on), None) => (wording.odometer_in)(on),
        (None, Some(off)) => (wording.odometer_out)(off),
        (None, None) => String::new(),
    };
    all.push((wording.odometer, odometer));
    all.push((wording.phone, papers.phone.clone()));
    all.extend(heading.facts.iter().cloned());
    all.retain(|(_, value)| !value.trim().is_empty());
    all
}

/// Writes a text in lines, each read as part of a node; where the next line would begin.
pub fn lines_of(
    marks: &mut Vec<Mark>,
    tags: &mut Tags,
    node: usize,
    run: Run,
    (x, y): (f64, f64),
    size: f64,
    most: f64,
) -> f64 {
    let lines = broken(&[run], size, most);
    for (nth, line) in lines.iter().enumerate() {
        let leaf = tags.leaf(node);
        marks.extend(set(
            line,
            x,
            y + base(size, nth),
            size,
            Grey::Black,
            Some(leaf),
        ));
    }
    y + line_height(size) * crate::engine::column::count(lines.len())
}

/// Later pages bear the head on one line.
fn next_head(order: &OrderView, heading: &Heading<'_>, size: SheetSize) -> Vec<Mark> {
    let (width, _) = size.points();
    let (left, right, top) = (
        MARGINS_MM[0] * MM,
        width - MARGINS_MM[1] * MM,
        MARGINS_MM[2] * MM,
    );
    let words = [order.papers.shop.as_str(), &order.row.plate];
    let beside: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    let runs = [
        bold(format!("{} {}", heading.kind, heading.number)),
        plain(format!("   {}", beside.join(" · "))),
    ];
    let lines = broken(&runs, TEXT, right - left);
    let mut marks: Vec<Mark> = lines
        .first()
        .map(|line| set(line, left, top + base(TEXT, 0), TEXT, Grey::Black, None))
        .unwrap_or_default();
    marks.push(rule(
        (left, right),
        top + line_height(TEXT) + 3.0,
        1.5,
        Grey::Black,
    ));
    marks
}

/// The foot of a page: what goes for the whole paper, and which page it is.
pub fn footer(words: &str, size: SheetSize, y: f64, page: &str) -> Vec<Mark> {
    let (width, _) = size.points();
    let (left, right) = (MARGINS_MM[0] * MM, width - MARGINS_MM[1] * MM);
    let page = one_line(&[plain(page)], SMALL);
    let mut marks = vec![rule((left, right), y + 2.0, 0.75, Grey::Black)];
    let at = y + 4.0 + base(SMALL, 0);
    let lines = broken(
        &[Run {
            text: words.to_owned(),
            weight: Weight::Regular,
        }],
        SMALL,
        right - left - page.width_pt - 20.0,
    );
    if let Some(line) = lines.first() {
        marks.extend(set(line, left, at, SMALL, Grey::Soft, None));
    }
    marks.extend(set(
        &page,
        right - page.width_pt,
        at,
        SMALL,
        Grey::Soft,
        None,
    ));
    marks
}
