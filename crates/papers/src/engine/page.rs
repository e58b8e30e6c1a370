//! A paper as a value: pages of placed marks, and the tree that says what they are.
//!
//! Lengths are points; y grows downwards from the upper left corner of the page.

use super::face::{ASCENT, DESCENT, Weight, width_pt};
use drawing::{Area, Drawing};
use std::sync::Arc;

/// The sheet that a paper is printed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetSize {
    A4,
    Letter,
}

/// Points in a millimetre.
pub const MM: f64 = 72.0 / 25.4;

/// The margins in millimetres: left, right, top, bottom.
pub const MARGINS_MM: [f64; 4] = [18.0, 15.0, 12.0, 10.0];

impl SheetSize {
    /// Width and height in points.
    #[must_use]
    pub fn points(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0 * MM, 297.0 * MM),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// Something that is read, by its place in [`Tags`]; the same on all its lines.
pub type Leaf = usize;

/// One mark on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    Text(TextMark),
    Line(LineMark),
    Box(BoxMark),
    Drawing(DrawingMark),
    Photo(PhotoMark),
}

/// One line of letters of one weight.
#[derive(Debug, Clone, PartialEq)]
pub struct TextMark {
    /// Where it begins, on the base line.
    pub x: f64,
    pub y: f64,
    pub text: String,
    pub size: f64,
    pub weight: Weight,
    pub grey: Grey,
    /// What it belongs to when read aloud; none, if it only repeats what stands elsewhere.
    pub leaf: Option<Leaf>,
    /// Whether only the width of its column ended the line: the next one goes on with it.
    pub goes_on: bool,
}

/// Black, or a grey that prints as well.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grey {
    Black,
    Soft,
    Pale,
    White,
}

#[derive(Debug, Clone, PartialEq)]
pub struct LineMark {
    pub from: (f64, f64),
    pub to: (f64, f64),
    pub width: f64,
    pub grey: Grey,
    /// Dash and gap, if it is not solid.
    pub dash: Option<(f64, f64)>,
}

/// A box to tick, or a ground.
#[derive(Debug, Clone, PartialEq)]
pub struct BoxMark {
    pub area: Area,
    /// The line around it; 0 for none.
    pub width: f64,
    pub fill: Option<Grey>,
}

/// A drawing with its upper left corner here, at this many points for each of its pixels.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawingMark {
    pub x: f64,
    pub y: f64,
    pub scale: f64,
    pub drawing: Arc<Drawing>,
    pub leaf: Option<Leaf>,
}

/// A picture as it was taken, in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoMark {
    pub area: Area,
    pub photo: Photo,
    pub leaf: Option<Leaf>,
}

/// A picture as its file holds it: JPEG or PNG.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    pub bytes: Arc<Vec<u8>>,
    pub is_png: bool,
    /// The name that its file is asked for by, at `/file/…`.
    pub file: String,
    /// In points of the picture.
    pub width: u32,
    pub height: u32,
}

impl Photo {
    /// In a place, as large as it may be and never larger than a point of it for a point of paper.
    #[must_use]
    pub fn placed(
        &self,
        (x, y): (f64, f64),
        most_width: f64,
        most_height: f64,
        leaf: Option<Leaf>,
    ) -> PhotoMark {
        let (width, height) = (f64::from(self.width), f64::from(self.height));
        let scale = (most_width / width).min(most_height / height).min(1.0);
        PhotoMark {
            area: Area {
                x,
                y,
                width: width * scale,
                height: height * scale,
            },
            photo: self.clone(),
            leaf,
        }
    }
}

impl TextMark {
    /// The room that the letters take.
    #[must_use]
    pub fn area(&self) -> Area {
        Area {
            x: self.x,
            y: self.y - ASCENT * self.size,
            width: width_pt(self.text.trim_end(), self.size, self.weight),
            height: (ASCENT + DESCENT) * self.size,
        }
    }
}

impl Mark {
    /// The room that it takes.
    #[must_use]
    pub fn area(&self) -> Area {
        match self {
            Self::Text(text) => text.area(),
            Self::Line(line) => Area {
                x: line.from.0.min(line.to.0),
                y: line.from.1.min(line.to.1),
                width: (line.from.0 - line.to.0).abs(),
                height: (line.from.1 - line.to.1).abs(),
            },
            Self::Box(ground) => ground.area,
            Self::Drawing(mark) => Area {
                x: mark.x,
                y: mark.y,
                width: mark.drawing.width * mark.scale,
                height: mark.drawing.height * mark.scale,
            },
            Self::Photo(mark) => mark.area,
        }
    }

    /// The same mark so much further down.
    #[must_use]
    pub fn lowered(mut self, by: f64) -> Self {
        match &mut self {
            Self::Text(text) => text.y += by,
            Self::Line(line) => {
                line.from.1 += by;
                line.to.1 += by;
            }
            Self::Box(ground) => ground.area.y += by,
            Self::Drawing(mark) => mark.y += by,
            Self::Photo(mark) => mark.area.y += by,
        }
        self
    }

    /// The same mark as one that repeats what is read elsewhere.
    #[must_use]
    pub fn repeated(mut self) -> Self {
        match &mut self {
            Self::Text(text) => text.leaf = None,
            Self::Drawing(mark) => mark.leaf = None,
            Self::Photo(mark) => mark.leaf = None,
            _ => {}
        }
        self
    }
}

/// What a part of the paper is, for whoever hears it.
#[derive(Debug, Clone, PartialEq)]
pub enum Tag {
    /// A heading of this depth, with its words.
    Heading(u16, String),
    Paragraph,
    /// Choices with boxes to tick.
    Choices,
    /// Words with blanks to fill in.
    Blanks,
    /// Lines to sign on.
    Signed,
    Table,
    Row,
    /// The head of a column.
    ColumnHead,
    /// The head of a row.
    RowHead,
    Cell,
    /// A cell whose figures stand one above the other.
    Number,
    /// A cell with a box to tick.
    Tick,
    /// A drawing, with what it says.
    Figure(String),
    Part,
}

/// A part and what is in it.
#[derive(Debug, Clone, PartialEq)]
pub struct TagNode {
    pub tag: Tag,
    pub children: Vec<Child>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Child {
    Node(usize),
    Leaf(Leaf),
}

/// The tree of what is read, in the sequence it is read in.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Tags {
    pub nodes: Vec<TagNode>,
    pub top: Vec<usize>,
    leaves: usize,
}

impl Tags {
    /// Adds a part at the end of another, or of the whole.
    pub fn node(&mut self, within: Option<usize>, tag: Tag) -> usize {
        let at = self.nodes.len();
        self.nodes.push(TagNode {
            tag,
            children: Vec::new(),
        });
        match within {
            Some(parent) => self.nodes[parent].children.push(Child::Node(at)),
            None => self.top.push(at),
        }
        at
    }

    /// Adds something that is read at the end of a part.
    pub fn leaf(&mut self, within: usize) -> Leaf {
        let leaf = self.leaves;
        self.leaves += 1;
        self.nodes[within].children.push(Child::Leaf(leaf));
        leaf
    }
}

/// One page.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Page {
    pub marks: Vec<Mark>,
}

/// A whole paper, laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct Paper {
    /// What it is, such as `Invoice INV-12`.
    pub title: String,
    /// The code of the language that it is in.
    pub language: &'static str,
    pub size: SheetSize,
    /// The day that it bears, as year, month, day.
    pub day: (u16, u8, u8),
    pub pages: Vec<Page>,
    /// What stands at the foot of each page.
    pub foot: String,
    pub tags: Tags,
    /// A file within the file: its name, what it is, its text as JSON.
    pub attached: Option<Attached>,
    /// The e-invoice within it, as its document.
    pub e_invoice: Option<String>,
}

/// The same values for a program to read.
#[derive(Debug, Clone, PartialEq)]
pub struct Attached {
    pub name: String,
    pub description: String,
    pub json: String,
}

impl Paper {
    /// Every line of letters, page by page.
    pub fn texts(&self) -> impl Iterator<Item = (usize, &TextMark)> {
        self.pages.iter().enumerate().flat_map(|(nth, page)| {
            page.marks.iter().filter_map(move |mark| match mark {
                Mark::Text(text) => Some((nth, text)),
                _ => None,
            })
        })
    }

    /// The same paper without its photos, where one of them cannot be written.
    #[must_use]
    pub fn without_photos(mut self) -> Self {
        for page in &mut self.pages {
            page.marks.retain(|mark| !matches!(mark, Mark::Photo(_)));
        }
        self
    }

    /// Whether any photo is on it.
    #[must_use]
    pub fn has_photos(&self) -> bool {
        let mut marks = self.pages.iter().flat_map(|page| &page.marks);
        marks.any(|mark| matches!(mark, Mark::Photo(_)))
    }
}
