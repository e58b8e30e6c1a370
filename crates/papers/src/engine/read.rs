//! A paper as it is read: what its pages say, in the sequence in which they are read aloud, for a
//! screen that shows the same.
//!
//! It is taken from the very marks that are printed, so that the screen can't say anything else.

use super::face::Weight;
use super::page::{Child, Grey, Leaf, Mark, Paper, Photo, Tag, TagNode};
use drawing::Drawing;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Words of one kind of letters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Words {
    pub text: String,
    pub bold: bool,
    /// Small and grey.
    pub soft: bool,
}

/// What stands on one line, however a sheet breaks it.
pub type Line = Vec<Words>;

/// A part of what is read.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// Of this depth, each of its pieces by itself.
    Heading(u16, Vec<Line>),
    Paragraph(Vec<Line>),
    /// Choices, each with a box to tick.
    Choices(Vec<Line>),
    /// Words, each with a blank behind it to fill in.
    Blanks(Vec<Line>),
    /// Lines to sign on, each with what stands under it.
    Signed(Vec<Line>),
    Table(Vec<Vec<CellTold>>),
    /// With what it says.
    Drawing(String, Arc<Drawing>),
    Photo(String, Photo),
    Part(Vec<Told>),
}

/// A cell of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct CellTold {
    pub is_column_head: bool,
    pub is_row_head: bool,
    /// Whether its figures stand one above the other.
    pub is_number: bool,
    /// Whether a box to tick stands in it.
    pub is_tick: bool,
    pub lines: Vec<Line>,
}

/// What a paper says.
#[must_use]
pub fn read(paper: &Paper) -> Vec<Told> {
    let mut marks: BTreeMap<Leaf, Vec<&Mark>> = BTreeMap::new();
    for mark in paper.pages.iter().flat_map(|page| &page.marks) {
        let leaf = match mark {
            Mark::Text(text) => text.leaf,
            Mark::Drawing(drawing) => drawing.leaf,
            Mark::Photo(photo) => photo.leaf,
            Mark::Line(_) | Mark::Box(_) => None,
        };
        if let Some(leaf) = leaf {
            marks.entry(leaf).or_default().push(mark);
        }
    }
    let reader = Reader { paper, marks };
    let top = paper.tags.top.iter();
    top.filter_map(|node| reader.told(*node)).collect()
}

struct Reader<'a> {
    paper: &'a Paper,
    marks: BTreeMap<Leaf, Vec<&'a Mark>>,
}

impl<'a> Reader<'a> {
    fn node(&self, at: usize) -> &'a TagNode {
        &self.paper.tags.nodes[at]
    }

    fn below(&self, node: &'a TagNode) -> impl Iterator<Item = usize> {
        node.children.iter().filter_map(|child| match child {
            Child::Node(node) => Some(*node),
            Child::Leaf(_) => None,
        })
    }

    fn told(&self, at: usize) -> Option<Told> {
        let node = self.node(at);
        let lines = || self.lines(node);
        Some(match &node.tag {
            Tag::Heading(level, _) => Told::Heading(*level, lines()),
            Tag::Paragraph => {
                let lines = lines();
                if lines.is_empty() {
                    return None;
                }
                Told::Paragraph(lines)
            }
            Tag::Choices => Told::Choices(lines()),
            Tag::Blanks => Told::Blanks(lines()),
            Tag::Signed => Told::Signed(lines()),
            Tag::Table => Told::Table(self.below(node).map(|row| self.row(row)).collect()),
            Tag::Figure(alt) => return self.figure(node, alt),
            Tag::Part => Told::Part(self.below(node).filter_map(|one| self.told(one)).collect()),
            // Rows and cells stand in tables alone.
            Tag::Row | Tag::ColumnHead | Tag::RowHead | Tag::Cell | Tag::Number | Tag::Tick => {
                return None;
            }
        })
    }

    fn row(&self, at: usize) -> Vec<CellTold> {
        let cells = self.below(self.node(at));
        cells
            .map(|cell| {
                let node = self.node(cell);
                CellTold {
                    is_column_head: node.tag == Tag::ColumnHead,
                    is_row_head: node.tag == Tag::RowHead,
                    is_number: node.tag == Tag::Number,
                    is_tick: node.tag == Tag::Tick,
                    lines: self.lines(node),
                }
            })
            .collect()
    }

    fn figure(&self, node: &TagNode, alt: &str) -> Option<Told> {
        let marks = self.of(node).into_iter().flatten();
        marks
            .filter_map(|mark| match mark {
                Mark::Drawing(mark) => Some(Told::Drawing(alt.to_owned(), mark.drawing.clone())),
                Mark::Photo(mark) => Some(Told::Photo(alt.to_owned(), mark.photo.clone())),
                _ => None,
            })
            .next()
    }

    /// The marks of each leaf of a node.
    fn of(&self, node: &TagNode) -> Vec<&[&'a Mark]> {
        let leaves = node.children.iter().filter_map(|child| match child {
            Child::Leaf(leaf) => self.marks.get(leaf),
            Child::Node(_) => None,
        });
        leaves.map(Vec::as_slice).collect()
    }

    /// Its lines, put together again where only the width of the sheet parted them.
    fn lines(&self, node: &TagNode) -> Vec<Line> {
        let mut out: Vec<Line> = Vec::new();
        let mut goes_on = false;
        for marks in self.of(node) {
            let mut line = if goes_on { out.pop() } else { None }.unwrap_or_default();
            goes_on = false;
            for mark in marks {
                let Mark::Text(text) = mark else { continue };
                goes_on = text.goes_on;
                let bold = text.weight == Weight::Bold;
                let soft = text.grey == Grey::Soft;
                match line.last_mut() {
                    Some(last) if last.bold == bold && last.soft == soft => {
                        last.text.push_str(&text.text);
                    }
                    _ => line.push(Words {
                        text: text.text.clone(),
                        bold,
                        soft,
                    }),
                }
            }
            if !line.is_empty() {
                out.push(line);
            }
        }
        out
    }
}
