//! A paper as the bytes of a PDF: tagged for screen readers (PDF/UA-1) and for keeping
//! (PDF/A-3a), as far as the library checks both. The same paper gives the same bytes: no
//! clock, no name of a machine or a person goes in beside what is printed.

use super::face::{self, Weight};
use super::page::{
    Attached, BoxMark, Child, Grey, LineMark, Mark, Page, Paper, Photo, PhotoMark, Tag, TextMark,
};
use super::{draw, xmp};
use krilla::color::luma;
use krilla::configure::{Accessibility, Archival, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::embed::{AssociationKind, EmbeddedFile, MimeType};
use krilla::geom::{PathBuilder, Point, Rect, Size, Transform};
use krilla::image::Image;
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, Node, SpanTag, TableHeaderScope, Tag as PdfTag,
    TagGroup, TagKind, TagTree,
};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use std::collections::BTreeMap;
use std::num::NonZeroU16;
use std::sync::{Arc, OnceLock};

/// Why a paper could not be written.
#[derive(Debug, thiserror::Error)]
#[error("the PDF could not be written: {0}")]
pub struct NotWritten(String);

/// The identifiers of what is read, by leaf.
type Read = BTreeMap<usize, Vec<Identifier>>;

/// Writes the PDF.
///
/// # Errors
/// [`NotWritten`], if the library finds that the file would break PDF/A-3a or PDF/UA-1.
pub fn pdf(paper: &Paper) -> Result<Vec<u8>, NotWritten> {
    // What cannot be read is found before anything is drawn.
    let marks = paper.pages.iter().flat_map(|page| &page.marks);
    for mark in marks {
        if let Mark::Photo(mark) = mark {
            image(&mark.photo)?;
        }
    }
    let configuration = ConfigurationBuilder::new()
        .with_archival_validator(Archival::A3_A)
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| NotWritten(format!("{error:?}")))?;
    let mut document = Document::new_with(SerializeSettings {
        configuration,
        enable_tagging: true,
        ..SerializeSettings::default()
    });
    document.set_metadata(metadata(paper));
    let mut read = Read::new();
    for page in &paper.pages {
        draw_page(&mut document, paper, page, &mut read)?;
    }
    document.set_tag_tree(tree(paper, &mut read));
    document.set_outline(outline(paper));
    attach(&mut document, paper)?;
    let written = document
        .finish()
        .map_err(|error| NotWritten(format!("{error}: {error:?}")))?;
    if paper.e_invoice.is_none() {
        return Ok(written);
    }
    xmp::with_e_invoice(&written, crate::e_invoice::FILE_NAME)
        .ok_or_else(|| NotWritten("there is no room in it for what tells of the e-invoice".into()))
}

fn metadata(paper: &Paper) -> Metadata {
    Metadata::new()
        .title(paper.title.clone())
        .language(paper.language.to_owned())
        .producer("buttonup".to_owned())
        .creation_date(day(paper))
        .document_id(paper.title.clone())
}

/// The day that the paper bears; no hour, so that no clock goes in.
fn day(paper: &Paper) -> DateTime {
    let (year, month, day) = paper.day;
    DateTime::new(year)
        .month(month)
        .day(day)
        .hour(0)
        .minute(0)
        .second(0)
}

fn attach(document: &mut Document, paper: &Paper) -> Result<(), NotWritten> {
    let file = |path: &str, mime: &str, description: &str, kind, data: &str| EmbeddedFile {
        path: path.to_owned(),
        mime_type: MimeType::new(mime),
        description: Some(description.to_owned()),
        association_kind: kind,
        data: data.as_bytes().to_vec().into(),
        modification_date: Some(day(paper)),
        compress: Some(true),
        location: None,
    };
    let values = paper.attached.iter().map(|attached| {
        let kind = AssociationKind::Data;
        let Attached {
            name,
            description,
            json,
        } = attached;
        file(name, "application/json", description, kind, json)
    });
    let invoice = paper.e_invoice.iter().map(|document| {
        let kind = AssociationKind::Alternative;
        let name = crate::e_invoice::FILE_NAME;
        let what = format!("{} as EN 16931", paper.title);
        file(name, "text/xml", &what, kind, document)
    });
    for file in values.chain(invoice) {
        document
            .embed_file(file)
            .ok_or_else(|| NotWritten("a file of that name is in it already".to_owned()))?;
    }
    Ok(())
}

fn draw_page(
    document: &mut Document,
    paper: &Paper,
    page: &Page,
    read: &mut Read,
) -> Result<(), NotWritten> {
    let (width, height) = paper.size.points();
    let settings = PageSettings::from_wh(short(width), short(height))
        .ok_or_else(|| NotWritten("the sheet has no size".to_owned()))?;
    let mut drawn = document.start_page_with(settings);
    let mut surface = drawn.surface();
    for mark in &page.marks {
        draw_mark(&mut surface, mark, read);
    }
    surface.finish();
    drawn.finish();
    Ok(())
}

fn draw_mark(surface: &mut Surface<'_>, mark: &Mark, read: &mut Read) {
    let layout = ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout));
    let again = ContentTag::Artifact(Artifact::with_kind(ArtifactType::PaginationOther));
    match mark {
        Mark::Text(text) if text.text.trim().is_empty() => {}
        Mark::Text(text) => {
            let tag = text
                .leaf
                .map_or(again, |_| ContentTag::Span(SpanTag::empty()));
            let identifier = surface.start_tagged(tag);
            letters(surface, text);
            surface.end_tagged();
            if let Some(leaf) = text.leaf {
                read.entry(leaf).or_default().push(identifier);
            }
        }
        Mark::Line(line) => {
            surface.start_tagged(layout);
            draw_line(surface, line);
            surface.end_tagged();
        }
        Mark::Box(ground) => {
            surface.start_tagged(layout);
            draw_box(surface, ground);
            surface.end_tagged();
        }
        Mark::Drawing(mark) => {
            let tag = mark.leaf.map_or(again, |_| ContentTag::Other);
            let identifier = surface.start_tagged(tag);
            draw::drawing(surface, mark);
            surface.end_tagged();
            if let Some(leaf) = mark.leaf {
                read.entry(leaf).or_default().push(identifier);
            }
        }
        Mark::Photo(mark) => {
            let tag = mark.leaf.map_or(again, |_| ContentTag::Other);
            let identifier = surface.start_tagged(tag);
            draw_photo(surface, mark);
            surface.end_tagged();
            if let Some(leaf) = mark.leaf {
                read.entry(leaf).or_default().push(identifier);
            }
        }
    }
}

/// The picture as the library reads it.
fn image(photo: &Photo) -> Result<Image, NotWritten> {
    let bytes: Arc<dyn AsRef<[u8]> + Send + Sync> = photo.bytes.clone();
    // PDF/A forbids that a reader smooths it.
    let read = if photo.is_png {
        Image::from_png(bytes.into(), false)
    } else {
        Image::from_jpeg(bytes.into(), false)
    };
    read.map_err(|error| NotWritten(format!("a photo: {error}")))
}

fn draw_photo(surface: &mut Surface<'_>, mark: &PhotoMark) {
    let area = mark.area;
    let size = Size::from_wh(short(area.width), short(area.height));
    if let (Ok(image), Some(size)) = (image(&mark.photo), size) {
        surface.push_transform(&Transform::from_translate(short(area.x), short(area.y)));
        surface.draw_image(image, size);
        surface.pop();
    }
}

/// Sets one line of letters.
pub fn letters(surface: &mut Surface<'_>, text: &TextMark) {
    surface.set_fill(Some(fill(text.grey)));
    surface.set_stroke(None);
    let glyphs: Vec<KrillaGlyph> = face::shape(&text.text, text.weight)
        .into_iter()
        .map(|glyph| KrillaGlyph {
            glyph_id: GlyphId::new(glyph.id),
            text_range: glyph.range,
            x_advance: short(glyph.advance),
            x_offset: short(glyph.dx),
            y_offset: short(glyph.dy),
            y_advance: 0.0,
            location: None,
        })
        .collect();
    surface.draw_glyphs(
        Point::from_xy(short(text.x), short(text.y)),
        &glyphs,
        font(text.weight),
        &text.text,
        short(text.size),
        false,
    );
}

fn draw_line(surface: &mut Surface<'_>, line: &LineMark) {
    let mut path = PathBuilder::new();
    path.move_to(short(line.from.0), short(line.from.1));
    path.line_to(short(line.to.0), short(line.to.1));
    surface.set_fill(None);
    surface.set_stroke(Some(stroke(
        line.grey,
        line.width,
        line.dash.map(|(dash, gap)| vec![dash, gap]),
    )));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
}

fn draw_box(surface: &mut Surface<'_>, ground: &BoxMark) {
    let area = ground.area;
    let Some(rect) = Rect::from_xywh(
        short(area.x),
        short(area.y),
        short(area.width),
        short(area.height),
    ) else {
        return;
    };
    let mut path = PathBuilder::new();
    path.push_rect(rect);
    surface.set_fill(ground.fill.map(fill));
    surface.set_stroke((ground.width > 0.0).then(|| stroke(Grey::Black, ground.width, None)));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
}

/// The colour of a grey, from 0 for black.
fn luma_of(grey: Grey) -> u8 {
    match grey {
        Grey::Black => 0,
        Grey::Soft => 64,
        Grey::Pale => 150,
        Grey::White => 255,
    }
}

/// A filling in this grey.
pub fn fill(grey: Grey) -> Fill {
    Fill {
        paint: luma::Color::new(luma_of(grey)).into(),
        opacity: NormalizedF32::ONE,
        ..Fill::default()
    }
}

/// A line in this grey.
pub fn stroke(grey: Grey, width: f64, dash: Option<Vec<f64>>) -> Stroke {
    Stroke {
        paint: luma::Color::new(luma_of(grey)).into(),
        width: short(width),
        dash: dash.map(|array| StrokeDash {
            array: array.into_iter().map(short).collect(),
            offset: 0.0,
        }),
        ..Stroke::default()
    }
}

fn font(weight: Weight) -> Font {
    static REGULAR: OnceLock<Font> = OnceLock::new();
    static BOLD: OnceLock<Font> = OnceLock::new();
    let held = match weight {
        Weight::Regular => &REGULAR,
        Weight::Bold => &BOLD,
    };
    held.get_or_init(|| {
        Font::new(face::bytes(weight).to_vec().into(), 0).expect("the built-in font can be read")
    })
    .clone()
}

/// A length as the library takes it: a hundredth of a point is finer than any printer.
#[expect(
    clippy::cast_possible_truncation,
    reason = "lengths on a sheet are small"
)]
pub fn short(length: f64) -> f32 {
    length as f32
}

fn tree(paper: &Paper, read: &mut Read) -> TagTree {
    let mut tree = TagTree::new().with_lang(Some(paper.language.to_owned()));
    for node in &paper.tags.top {
        tree.push(group(paper, *node, read));
    }
    tree
}

fn group(paper: &Paper, at: usize, read: &mut Read) -> TagGroup {
    let node = &paper.tags.nodes[at];
    let mut made = TagGroup::new(kind(&node.tag));
    for child in &node.children {
        match child {
            Child::Node(node) => made.push(group(paper, *node, read)),
            Child::Leaf(leaf) => {
                for identifier in read.remove(leaf).unwrap_or_default() {
                    made.push(Node::Leaf(identifier));
                }
            }
        }
    }
    made
}

fn kind(tag: &Tag) -> TagKind {
    match tag {
        Tag::Heading(level, words) => {
            let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
            PdfTag::Hn(level, Some(words.clone())).into()
        }
        Tag::Paragraph | Tag::Choices | Tag::Blanks | Tag::Signed => PdfTag::P.into(),
        Tag::Table => PdfTag::Table.into(),
        Tag::Row => PdfTag::TR.into(),
        Tag::ColumnHead => PdfTag::TH(TableHeaderScope::Column).into(),
        Tag::RowHead => PdfTag::TH(TableHeaderScope::Row).into(),
        Tag::Cell | Tag::Number | Tag::Tick => PdfTag::TD.into(),
        Tag::Figure(alt) => PdfTag::Figure(Some(alt.clone())).into(),
        Tag::Part => PdfTag::Section.into(),
    }
}

/// The headings, to jump to.
fn outline(paper: &Paper) -> Outline {
    let mut outline = Outline::new();
    for (words, page, y) in headings(paper) {
        let to = XyzDestination::new(page, Point::from_xy(0.0, short(y)));
        outline.push_child(OutlineNode::new(words, to));
    }
    outline
}

fn headings(paper: &Paper) -> Vec<(String, usize, f64)> {
    let placed: BTreeMap<usize, (usize, f64)> = paper
        .texts()
        .filter_map(|(page, text)| Some((text.leaf?, (page, text.area().y))))
        .collect();
    paper
        .tags
        .nodes
        .iter()
        .filter_map(|node| match &node.tag {
            Tag::Heading(_, words) => {
                let first = node.children.iter().find_map(|child| match child {
                    Child::Leaf(leaf) => placed.get(leaf),
                    Child::Node(_) => None,
                })?;
                Some((words.clone(), first.0, first.1))
            }
            _ => None,
        })
        .collect()
}
