//! What lies on the printed sheet, counted from one photo against what came off on an order.
//!
//! The photo closes nothing: whoever looked confirms it, and what was seen is kept with the order.

use crate::phrases::tray as words;
use crate::say::figures;
use crate::trouble::Trouble;
use crate::view::{ItemView, OrderView};
use fastener::designation::{Kind as Written, read as designation};
use record::v1::basics::StateForm;
use record::v1::codes::KindForm;
use serde_json::{Value, json};
pub use sight::Paper;
use sight::count::{Counted, Group, Listed, check};
pub use sight::look::Verdict;
use sight::look::{Judged, Piece, Seen, judge, look, sold_mm};
use sight::{Photo, PhotoError, printed_scale};
use std::sync::{Mutex, PoisonError};

/// What the photo came to.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayCount {
    /// Whether all that should lie there does, and nothing else.
    pub verdict: Verdict,
    /// In one line: `7 of 7 housing bolts`.
    pub headline: String,
    /// Why, and what to do.
    pub because: Vec<String>,
    /// Group by group.
    pub groups: Vec<TrayGroup>,
    /// What was seen, with its outline on the photo.
    pub pieces: Vec<TrayPiece>,
    /// The photo's size in its own pixels.
    pub size_px: (f64, f64),
    /// What was measured where an order knows no size: a size and the item it may be of.
    pub offers: Vec<SizeOffer>,
    /// What the record keeps of it.
    pub fact: Value,
}

/// A group of fasteners against the photo.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayGroup {
    /// The item.
    pub item: String,
    /// What it is called.
    pub name: String,
    /// How many should lie there, and how many do.
    pub expected: usize,
    /// How many bolts lie there that were taken for some of it.
    pub found: usize,
    /// How many lie there as they should be.
    pub right: usize,
    /// What is missing, too many, or of another length.
    pub differs: Vec<String>,
}

/// A piece on the photo.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayPiece {
    /// What it is: `M8×30`, `washer`.
    pub label: String,
    /// Whether it is sure what it is.
    pub sure: bool,
    /// Its outlines on the photo, in the photo's pixels.
    pub outline_px: Vec<Vec<(f64, f64)>>,
}

/// A size that was measured, for fasteners whose size nobody told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SizeOffer {
    /// The item.
    pub item: String,
    /// What it is called.
    pub name: String,
    /// The size, as one writes it: `M8x30`.
    pub size: String,
    /// How many of it were seen.
    pub count: usize,
    /// The tellings of the item's size that whoever takes it has seen.
    pub told_by: Vec<String>,
}

/// The sheet to print, as a PDF.
#[must_use]
pub fn sheet(paper: Paper) -> Vec<u8> {
    sight::sheet::pdf(paper)
}

/// The name and version that results are kept under.
pub const CALCULATOR: (&str, u32) = ("tray-count", 1);

/// What should lie on the sheet: fasteners that are out of the vehicle, whose size and lengths are
/// known; and the names of those that are out and can't be counted, with what is not known of them.
#[must_use]
pub fn expected(order: &OrderView) -> (Vec<(String, Group)>, Vec<String>) {
    let mut groups = Vec::new();
    let mut unknown = Vec::new();
    for item in order.items.iter().filter(|item| is_loose(item)) {
        match group_of(item) {
            Ok(group) => groups.push((item.item.clone(), group)),
            Err(why) => unknown.push(words::and_why(&item.label, why)),
        }
    }
    (groups, unknown)
}

fn is_loose(item: &ItemView) -> bool {
    item.kind == KindForm::Fasteners && out(item).next().is_some()
}

/// The positions whose pieces are out.
fn out(item: &ItemView) -> impl Iterator<Item = u16> {
    item.pieces
        .iter()
        .filter(|pieces| pieces.state == Some(StateForm::Out))
        .flat_map(|pieces| pieces.at.iter().copied())
}

/// Whether its name says that it is something else than bolts or screws.
fn is_no_bolt(item: &ItemView) -> bool {
    const OTHERS: [&str; 8] = [
        "nut", "nuts", "mutter", "muttern", "clamp", "clamps", "clip", "clips",
    ];
    let label = item.label.to_lowercase();
    label
        .split(|letter: char| !letter.is_alphanumeric())
        .any(|word| OTHERS.contains(&word) || word.ends_with("mutter") || word.ends_with("muttern"))
}

fn group_of(item: &ItemView) -> Result<Group, &'static str> {
    if is_no_bolt(item) {
        return Err(words::only_bolts());
    }
    let size = item.size.as_deref().ok_or_else(words::size_not_known)?;
    let written = designation(size).map_err(|_| words::size_not_read())?;
    let Written::Screw { thread, .. } = &written.kind else {
        return Err(words::pipe_thread());
    };
    let thread = thread.name().to_owned();
    let lengths: Option<Vec<f64>> = out(item)
        .map(|at| {
            let own = item.lengths.iter().find(|length| length.at == at);
            own.and_then(|own| millimetres(&own.length))
                .or(written.length_mm)
        })
        .collect();
    let group = Group {
        name: item.label.clone(),
        thread,
        lengths: lengths.ok_or_else(words::lengths_not_known)?,
        area_mm: None,
    };
    check(std::slice::from_ref(&group)).map_err(|_| words::sheet_can_not_measure())?;
    Ok(group)
}

/// A length as people write it.
fn millimetres(text: &str) -> Option<f64> {
    let bare = text.trim().trim_end_matches("mm").trim();
    bare.replace(',', ".").parse().ok()
}

/// Counts what lies on the sheet against those of these items that came off; against all that came
/// off, where none is named.
///
/// `check_line_mm` is what the sheet's 100 mm line measures, if somebody measured it.
///
/// # Errors
/// [`Trouble`]: it is no photo that can be read, or its check line is no 100 mm line.
pub fn tray_count(
    order: &OrderView,
    items: &[String],
    bytes: &[u8],
    check_line_mm: Option<f64>,
) -> Result<TrayCount, Trouble> {
    let mut photo = Photo::read(bytes).map_err(|error| unreadable(&error))?;
    if let Some(line) = check_line_mm {
        photo.printed = printed_scale(line).ok_or_else(|| {
            Trouble::unreadable(
                words::the_check_line(),
                words::no_check_line(figures(&line.to_string())),
                words::measure_again(),
            )
        })?;
    }
    let (mut listed, mut unknown) = expected(order);
    if !items.is_empty() {
        listed.retain(|(item, _)| items.contains(item));
        unknown.clear();
    }
    let groups: Vec<Group> = listed.iter().map(|(_, group)| group.clone()).collect();
    let seen = {
        // A look takes a second of one core and some memory: several wait for each other.
        static ONE: Mutex<()> = Mutex::new(());
        let _turn = ONE.lock().unwrap_or_else(PoisonError::into_inner);
        look(&photo)
    };
    let judged = judge(&seen, &groups);
    let mut because: Vec<String> = Vec::new();
    for trouble in &seen.troubles {
        let said = trouble.what.say();
        if !because.contains(&said) {
            because.push(said);
        }
    }
    because.extend(unknown.iter().map(words::not_counted));
    let counted: Vec<TrayGroup> = listed
        .iter()
        .zip(&judged.groups)
        .map(|((item, _), counted)| group_view(item, counted))
        .collect();
    // What can't be counted lies there as well, or does not: nobody says complete then.
    let verdict = match judged.verdict {
        Verdict::Complete if !unknown.is_empty() => Verdict::CantTell,
        verdict => verdict,
    };
    Ok(TrayCount {
        verdict,
        headline: headline(verdict, &counted, seen.pieces.len()),
        because,
        pieces: pieces(&seen, &judged),
        size_px: (pixels(photo.width), pixels(photo.height)),
        offers: offers(order, &seen, &judged),
        fact: fact(&groups, &seen, &judged, verdict),
        groups: counted,
    })
}

fn unreadable(error: &PhotoError) -> Trouble {
    let message = error.to_string();
    let (what, mend) = message
        .split_once(": ")
        .unwrap_or((&message, words::send_another()));
    Trouble::unreadable(words::the_photo(), what, mend)
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a photo has some thousand pixels a side"
)]
fn pixels(count: usize) -> f64 {
    count as f64
}

fn headline(verdict: Verdict, groups: &[TrayGroup], seen: usize) -> String {
    let expected: usize = groups.iter().map(|group| group.expected).sum();
    let right: usize = groups.iter().map(|group| group.right).sum();
    match verdict {
        Verdict::CantTell => words::can_not_tell().to_owned(),
        _ if groups.is_empty() => words::pieces_on_the_sheet(seen),
        Verdict::Complete => words::all_there(expected),
        Verdict::NotComplete => words::as_they_should_be(right, expected),
    }
}

fn group_view(item: &str, counted: &Counted) -> TrayGroup {
    let named = |one: &Listed| figures(&format!("{} × {}", one.thread, one.length_mm));
    let mut differs: Vec<(Differs, usize)> = Vec::new();
    let mut count = |how: Differs| match differs.iter_mut().find(|(one, _)| *one == how) {
        Some((_, count)) => *count += 1,
        None => differs.push((how, 1)),
    };
    for one in &counted.missing {
        count(Differs::Missing(named(one)));
    }
    for one in &counted.extra {
        count(Differs::TooMany(named(one)));
    }
    for (listed, found) in &counted.wrong {
        count(Differs::InPlaceOf(named(found), named(listed)));
    }
    let differs = differs.into_iter();
    TrayGroup {
        item: item.to_owned(),
        name: counted.name.clone(),
        expected: counted.expected,
        found: counted.found,
        right: counted
            .expected
            .saturating_sub(counted.missing.len() + counted.wrong.len()),
        differs: differs.map(|(how, count)| how.said(count)).collect(),
    }
}

/// How what lies there differs from what should.
#[derive(PartialEq)]
enum Differs {
    Missing(String),
    TooMany(String),
    InPlaceOf(String, String),
}

impl Differs {
    fn said(&self, count: usize) -> String {
        match self {
            Self::Missing(one) => words::missing(count, one),
            Self::TooMany(one) => words::too_many(count, one),
            Self::InPlaceOf(found, listed) => words::in_place_of(count, found, listed),
        }
    }
}

/// What a piece was taken for.
fn label(piece: &Piece) -> String {
    match (piece.thread, piece.length_mm) {
        (Some(thread), Some(length)) => format!("{thread}×{}", sold_mm(length)),
        (Some(thread), None) => format!("{thread} {}", piece.kind.name().replace('_', " ")),
        _ => piece.kind.name().replace('_', " "),
    }
}

fn pieces(seen: &Seen, judged: &Judged) -> Vec<TrayPiece> {
    let each = seen.pieces.iter().enumerate();
    each.map(|(nth, piece)| {
        let decided = judged.decided.get(nth);
        let outline = |line: &Vec<[f64; 2]>| {
            line.iter()
                .filter_map(|at| seen.on_photo(*at))
                .map(|[x, y]| (x, y))
                .collect::<Vec<_>>()
        };
        TrayPiece {
            label: match decided {
                Some(one) => format!("{}×{}", sight::bolt::SIZES[one.size].name, one.length_mm),
                None => label(piece),
            },
            sure: decided.map_or(piece.sure, |one| one.sure),
            outline_px: piece.outline_mm.iter().map(outline).collect(),
        }
    })
    .collect()
}

/// Sizes that were measured, for loose fasteners whose size nobody told: where there is one such
/// group, and as many alike lie there as came off.
fn offers(order: &OrderView, seen: &Seen, judged: &Judged) -> Vec<SizeOffer> {
    let mut alike: Vec<(String, usize)> = Vec::new();
    for (bolt, decided) in seen.pieces.iter().zip(&judged.decided) {
        if !decided.sure {
            continue;
        }
        let thread = bolt.thread.unwrap_or("");
        let size = format!("{thread}x{}", decided.length_mm);
        match alike.iter_mut().find(|(one, _)| *one == size) {
            Some((_, count)) => *count += 1,
            None => alike.push((size, 1)),
        }
    }
    let nameless: Vec<&ItemView> = order
        .items
        .iter()
        .filter(|item| is_loose(item) && item.size.is_none() && !is_no_bolt(item))
        .collect();
    let mut found = Vec::new();
    for item in nameless {
        let count = out(item).count();
        let mut fits = alike.iter().filter(|(_, seen)| *seen == count);
        if let (Some((size, _)), None) = (fits.next(), fits.next()) {
            found.push(SizeOffer {
                item: item.item.clone(),
                name: item.label.clone(),
                size: size.clone(),
                count,
                told_by: item.told_by.clone(),
            });
        }
    }
    found
}

/// What is kept: what was expected, what was seen, how sure, and the version.
fn fact(groups: &[Group], seen: &Seen, judged: &Judged, verdict: Verdict) -> Value {
    let expected: Vec<Value> = groups
        .iter()
        .map(
            |group| json!({ "name": group.name, "thread": group.thread, "lengths": group.lengths }),
        )
        .collect();
    let found: Vec<Value> = judged
        .groups
        .iter()
        .map(
            |group| json!({ "name": group.name, "expected": group.expected, "found": group.found }),
        )
        .collect();
    let pieces: Vec<Value> = seen
        .pieces
        .iter()
        .enumerate()
        .map(|(nth, piece)| {
            let sure = judged.decided.get(nth).map_or(piece.sure, |one| one.sure);
            json!({ "kind": piece.kind.name(), "thread": piece.thread,
                "length_mm": piece.length_mm.map(|length| (length * 10.0).round() / 10.0), "sure": sure })
        })
        .collect();
    let (calculator, version) = CALCULATOR;
    json!({
        "calculator": calculator, "version": version,
        "inputs": json!({ "groups": expected }).to_string(),
        "outputs": json!({ "verdict": verdict.name(), "groups": found, "pieces": pieces }).to_string(),
        "working": judged.because.join("; "),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_is_read_as_it_is_written() {
        assert_eq!(millimetres("30"), Some(30.0));
        assert_eq!(millimetres("30 mm"), Some(30.0));
        assert_eq!(millimetres("16,5mm"), Some(16.5));
        assert_eq!(millimetres("long"), None);
    }
}
