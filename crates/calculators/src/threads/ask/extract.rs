//! A stub, and the ladder of ways to get it out.

use super::repair::{depth, tilt_deg};
use super::{Trouble, at, class, holds, length_mm, metal, screw_thread};
use crate::phrases::ask as say;
use fastener::designation::read;
use fastener::extract::{Extraction, Stands, Stub, extraction};
use fastener::repair::DrillRoom;

/// A stub as somebody describes it.
#[derive(Clone, Copy, Debug, Default)]
pub struct ExtractQuestion<'a> {
    pub thread: &'a str,
    /// What the joint holds.
    pub joint: Option<&'a str>,
    pub class: Option<&'a str>,
    /// `proud`, `flush` or `below`.
    pub stands: &'a str,
    /// By how much it stands proud or below.
    pub by: Option<&'a str>,
    pub engaged: &'a str,
    pub blind: Option<&'a str>,
    pub through: Option<&'a str>,
    pub metal: &'a str,
    pub room_to_weld: bool,
    pub no_drill_room: bool,
    pub tilt: Option<&'a str>,
}

/// The ladder of ways to get a stub out.
///
/// # Errors
///
/// [`Trouble`] with the field.
///
/// ```
/// use calculators::threads::ask::{ExtractQuestion, extract};
/// let question = ExtractQuestion {
///     thread: "M8",
///     class: Some("8.8"),
///     stands: "below",
///     by: Some("2 mm"),
///     engaged: "18 mm",
///     blind: Some("26 mm"),
///     metal: "aluminium",
///     ..Default::default()
/// };
/// assert_eq!(extract(&question)?.largest_drill.unwrap().name, "6 mm");
/// # Ok::<(), calculators::threads::ask::Trouble>(())
/// ```
pub fn extract(question: &ExtractQuestion) -> Result<Extraction, Trouble> {
    let by_mm = question.by.map(|text| length_mm("by", text)).transpose()?;
    let by = || {
        by_mm.ok_or_else(|| {
            Trouble::new(
                "by",
                say::how_far_the_stub_stands_proud(),
                say::add_it_such_as_2_mm(),
            )
        })
    };
    let stands = match question.stands.trim() {
        "proud" => Stands::Proud { by_mm: by()? },
        "below" => Stands::Below { by_mm: by()? },
        "flush" => Stands::Flush,
        other => {
            return Err(Trouble::new(
                "stub",
                say::says_no_end_of_stub(other),
                say::write_proud_flush_or_below(),
            ));
        }
    };
    let stub = Stub {
        holds: holds(question.joint, question.thread)?,
        thread: screw_thread("thread", question.thread)?,
        class: class(question.class)?.or(read(question.thread).ok().and_then(|found| found.class)),
        stands,
        engaged_mm: length_mm("engaged", question.engaged)?,
        depth: depth(question.blind, question.through)?,
        parent: metal("in", question.metal)?,
        room_to_weld: question.room_to_weld,
        drill_room: if question.no_drill_room {
            DrillRoom::None
        } else {
            DrillRoom::Straight
        },
        tilt_deg: tilt_deg(question.tilt)?,
    };
    extraction(&stub).map_err(at("extract", say::check_the_sizes_against_one_another()))
}
