//! Torque wrenches with adapters, and levers.

use super::{Trouble, angle_deg, at, converted, length_mm, torque_nm};
use crate::phrases::ask as say;
use fastener::wrench::{Reads, Setting, doubled_lever_mm, hand_force_n, reads, setting};

/// A torque wrench with an adapter.
#[derive(Clone, Copy, Debug, Default)]
pub struct AdapterQuestion<'a> {
    pub want: &'a str,
    pub wrench: &'a str,
    pub adapter: &'a str,
    pub angle: Option<&'a str>,
}

/// A lever for a torque, perhaps with a second wrench hooked in.
#[derive(Clone, Copy, Debug, Default)]
pub struct LeverQuestion<'a> {
    pub want: &'a str,
    pub wrench: &'a str,
    pub second: Option<&'a str>,
    pub overlap: Option<&'a str>,
}

/// The force that a hand needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeverAnswer {
    pub lever_mm: f64,
    pub hand_force_n: f64,
}

/// What to set on a torque wrench with an adapter.
///
/// # Errors
///
/// [`Trouble`] with the field.
///
/// ```
/// use calculators::threads::ask::{AdapterQuestion, adapter};
/// let question = AdapterQuestion { want: "70 in-lb", wrench: "12 in", adapter: "2 in", angle: None };
/// assert_eq!(format!("{:.3}", adapter(&question)?.set_to_nm), "6.779");
/// # Ok::<(), calculators::threads::ask::Trouble>(())
/// ```
pub fn adapter(question: &AdapterQuestion) -> Result<Setting, Trouble> {
    let want_nm = torque_nm("want", question.want)?;
    let found = setting(
        want_nm,
        length_mm("wrench", question.wrench)?,
        length_mm("adapter", question.adapter)?,
        question
            .angle
            .map_or(Ok(0.0), |angle| angle_deg("angle", angle))?,
    )
    .map_err(at("adapter", say::give_lengths_and_an_angle_that()))?;
    Ok(Setting {
        working: converted(
            found.working,
            say::torque_wanted_as_written(),
            question.want,
            &format!("{want_nm:.3} N·m"),
        ),
        ..found
    })
}

/// The force that a hand needs for a torque.
///
/// # Errors
///
/// [`Trouble`] with the field.
pub fn lever(question: &LeverQuestion) -> Result<LeverAnswer, Trouble> {
    let first = length_mm("wrench", question.wrench)?;
    let overlap = question
        .overlap
        .map_or(Ok(0.0), |text| length_mm("overlap", text))?;
    let lever_mm = match question.second {
        Some(second) => doubled_lever_mm(first, length_mm("second", second)?, overlap)
            .map_err(at("second", say::give_lengths_that_wrenches_have()))?,
        None => first,
    };
    let hand_force_n = hand_force_n(torque_nm("want", question.want)?, lever_mm)
        .map_err(at("wrench", say::give_a_length_that_a_wrench()))?;
    Ok(LeverAnswer {
        lever_mm,
        hand_force_n,
    })
}

/// Whether a torque wrench of a range can be believed at a torque.
///
/// # Errors
///
/// [`Trouble`] with the field `range`.
pub fn wrench_reads(range: &str, at_nm: f64) -> Result<Reads, Trouble> {
    let range_nm = torque_nm("range", range)?;
    if range_nm > 0.0 {
        Ok(reads(at_nm, range_nm))
    } else {
        Err(Trouble::new(
            "range",
            say::is_no_range(range_nm),
            say::write_the_greatest_torque_of_the(),
        ))
    }
}
