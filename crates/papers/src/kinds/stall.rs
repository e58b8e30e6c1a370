//! The frame of papers for the stall: a short head, its parts, and what the sheet is at the foot.

use super::Given;
use super::sheet::{footer, lines_of};
use crate::engine::column::Body;
use crate::engine::flow::{Room, paged};
use crate::engine::lines::{bold, plain};
use crate::engine::page::{MARGINS_MM, MM, Page, Paper, Tag, Tags};
use crate::phrases as say;
use phrases::spoken;

/// What stands at the head and the foot.
pub struct Head<'a> {
    /// What the paper is called.
    pub title: &'a str,
    /// What stands after its title in the first line: where, and by whom.
    pub beside: Vec<String>,
    /// The numbers below the vehicle.
    pub numbers: String,
    /// What the sheet is, at its foot.
    pub foot: &'a str,
}

/// A paper for the stall.
pub fn paper(given: &Given<'_>, head: &Head<'_>, content: impl FnOnce(&mut Body)) -> Paper {
    let order = given.order;
    let size = given.size;
    let (width, height) = size.points();
    let (left, right, top) = (
        MARGINS_MM[0] * MM,
        width - MARGINS_MM[1] * MM,
        MARGINS_MM[2] * MM,
    );
    let mut tags = Tags::default();
    let mut marks = Vec::new();
    let title = format!("{} {}", head.title, order.number);
    let node = tags.node(None, Tag::Heading(1, title.clone()));
    let first: Vec<&str> = [head.title]
        .into_iter()
        .chain(head.beside.iter().map(String::as_str))
        .collect();
    let mut y = top;
    for (run, size) in [
        (plain(first.join(" · ")), 9.4),
        (bold(order.row.vehicle.as_str()), 22.0),
        (bold(head.numbers.as_str()), 15.0),
    ] {
        y = lines_of(
            &mut marks,
            &mut tags,
            node,
            run,
            (left, y),
            size,
            right - left,
        );
    }
    let mut body = Body::new(size, tags);
    content(&mut body);
    let bottom = height - MARGINS_MM[3] * MM - 17.0;
    let room = Room {
        first_top: y + 10.0,
        next_top: top + 22.0,
        bottom,
    };
    let mut pages = paged(body.slabs, room);
    let total = pages.len();
    for (nth, page) in pages.iter_mut().enumerate() {
        let mut all = std::mem::take(&mut marks);
        if nth > 0 {
            let again = format!("{title}, {}", order.row.vehicle);
            let mut unread = Tags::default();
            let node = unread.node(None, Tag::Paragraph);
            let at = (left, top);
            lines_of(
                &mut all,
                &mut unread,
                node,
                bold(again),
                at,
                9.4,
                right - left,
            );
            all = all
                .into_iter()
                .map(crate::engine::page::Mark::repeated)
                .collect();
        }
        all.append(page);
        all.extend(footer(
            head.foot,
            size,
            bottom,
            &say::page_of(nth + 1, total),
        ));
        *page = all;
    }
    Paper {
        title,
        language: spoken().tag(),
        size,
        day: super::words::day_of(&order.papers.today),
        pages: pages.into_iter().map(|marks| Page { marks }).collect(),
        foot: head.foot.to_owned(),
        tags: body.tags,
        attached: None,
        e_invoice: None,
    }
}
