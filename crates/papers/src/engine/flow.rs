//! From slabs to pages.
//!
//! A slab is a strip of the paper that is never parted: a line of a paragraph, a line of a
//! table's row. What is glued to the next slab stays on its page, unless both together are
//! taller than a page.

use super::page::Mark;
use std::ops::Range;
use std::rc::Rc;

/// A strip of the paper that is never parted; its marks count down from its upper edge.
#[derive(Debug, Clone, Default)]
pub struct Slab {
    pub height: f64,
    pub marks: Vec<Mark>,
    /// Whether the next slab stands on the same page.
    pub glued: bool,
    /// What is printed again above it, where it begins a page in the middle of a part.
    pub again: Option<Rc<Slab>>,
}

/// Where content may stand on a page, from the top of the page.
#[derive(Debug, Clone, Copy)]
pub struct Room {
    pub first_top: f64,
    pub next_top: f64,
    pub bottom: f64,
}

/// Lays the slabs onto pages: the marks of each page, in their places.
pub fn paged(slabs: Vec<Slab>, room: Room) -> Vec<Vec<Mark>> {
    let groups = groups(&slabs);
    let mut pages = Pages {
        room,
        done: vec![Vec::new()],
        y: room.first_top,
        fresh: true,
    };
    let mut slabs = slabs.into_iter();
    for group in groups {
        let group: Vec<Slab> = slabs.by_ref().take(group.len()).collect();
        let height: f64 = group.iter().map(|slab| slab.height).sum();
        if !pages.holds(height) && height <= room.bottom - room.next_top {
            pages.turn(group.first());
        }
        for slab in group {
            if !pages.holds(slab.height) && !pages.fresh {
                pages.turn(Some(&slab));
            }
            pages.put(slab);
        }
    }
    pages.done
}

/// The slabs that belong together, as ranges.
fn groups(slabs: &[Slab]) -> Vec<Range<usize>> {
    let mut out = Vec::new();
    let mut start = 0;
    for (nth, slab) in slabs.iter().enumerate() {
        if !slab.glued || nth + 1 == slabs.len() {
            out.push(start..nth + 1);
            start = nth + 1;
        }
    }
    out
}

struct Pages {
    room: Room,
    done: Vec<Vec<Mark>>,
    y: f64,
    /// Whether nothing stands on the page yet but what is printed again.
    fresh: bool,
}

impl Pages {
    fn holds(&self, height: f64) -> bool {
        // A thousandth of a point is no reason for another page.
        self.y + height <= self.room.bottom + 1e-3
    }

    /// Goes on to the next page, with the heads of what goes on there.
    fn turn(&mut self, first: Option<&Slab>) {
        if self.fresh && self.done.len() > 1 {
            return;
        }
        self.done.push(Vec::new());
        self.y = self.room.next_top;
        if let Some(again) = first.and_then(|slab| slab.again.clone()) {
            let repeated = Slab {
                marks: again.marks.iter().cloned().map(Mark::repeated).collect(),
                height: again.height,
                ..Slab::default()
            };
            self.put(repeated);
        }
        self.fresh = true;
    }

    fn put(&mut self, slab: Slab) {
        let at = self.y;
        if let Some(page) = self.done.last_mut() {
            page.extend(slab.marks.into_iter().map(|mark| mark.lowered(at)));
        }
        self.y += slab.height;
        self.fresh = false;
    }
}

#[cfg(test)]
mod tests {
    use super::super::face::Weight;
    use super::super::page::{Grey, TextMark};
    use super::*;

    const ROOM: Room = Room {
        first_top: 50.0,
        next_top: 20.0,
        bottom: 100.0,
    };

    fn named(name: &str, height: f64) -> Slab {
        Slab {
            height,
            marks: vec![Mark::Text(TextMark {
                x: 0.0,
                y: 0.0,
                text: name.to_owned(),
                size: 9.0,
                weight: Weight::Regular,
                grey: Grey::Black,
                leaf: Some(0),
                goes_on: false,
            })],
            ..Slab::default()
        }
    }

    fn names(pages: &[Vec<Mark>]) -> Vec<String> {
        let name = |mark: &Mark| match mark {
            Mark::Text(text) => format!("{}@{}", text.text, text.y),
            _ => String::new(),
        };
        let page = |page: &Vec<Mark>| page.iter().map(name).collect::<Vec<_>>().join(" ");
        pages.iter().map(page).collect()
    }

    #[test]
    fn what_does_not_fit_goes_on_to_the_next_page() {
        let pages = paged(
            vec![named("a", 30.0), named("b", 20.0), named("c", 5.0)],
            ROOM,
        );
        assert_eq!(names(&pages), ["a@50 b@80", "c@20"]);
    }

    #[test]
    fn what_is_glued_stays_together() {
        let mut b = named("b", 15.0);
        b.glued = true;
        let pages = paged(vec![named("a", 30.0), b, named("sum", 10.0)], ROOM);
        assert_eq!(names(&pages), ["a@50", "b@20 sum@35"]);
    }

    #[test]
    fn heads_are_printed_again_and_not_read_again() {
        let mut b = named("b", 30.0);
        b.again = Some(Rc::new(named("head", 8.0)));
        let pages = paged(vec![named("a", 30.0), b], ROOM);
        assert_eq!(names(&pages), ["a@50", "head@20 b@28"]);
        assert!(matches!(&pages[1][0], Mark::Text(text) if text.leaf.is_none()));
        assert!(matches!(&pages[1][1], Mark::Text(text) if text.leaf.is_some()));
    }

    #[test]
    fn what_is_taller_than_a_page_is_parted_and_all_there() {
        let glued = |nth: usize| Slab {
            glued: true,
            ..named(&nth.to_string(), 30.0)
        };
        let pages = paged((0..7).map(glued).collect(), ROOM);
        assert_eq!(
            names(&pages),
            ["0@50", "1@20 2@50", "3@20 4@50", "5@20 6@50"]
        );
    }
}
