//! Belts: path, length, wrap, tensioner, slip, slack, length codes, routing errors.
//!
//! A layout is a list of pulleys in the sequence in which the belt meets them, with the side
//! of the belt that lies on each ([`Layout`]). From that follow tangent points, free runs,
//! wraps and the length ([`drive`]), where the tensioner stands with a given belt, which
//! lengths fit, which way everything turns, and what is wrong, in words. A published
//! specification of the vehicle maker stands above anything found here.
//!
//! ```
//! use belt::{Question, drive, read};
//!
//! let text = r#"
//! [[pulley]]
//! name = "crank"
//! x_mm = 0
//! y_mm = 0
//! diameter_mm = 150
//! drives = true
//! turns = "cw"
//! [[pulley]]
//! name = "alternator"
//! x_mm = 0
//! y_mm = 300
//! diameter_mm = 60
//! "#;
//! let layout = read("layout.toml", text).unwrap().layout;
//! let found = drive(&Question { layout, length_mm: None })?;
//! assert!((found.pulleys[1].rpm_ratio - 2.5).abs() < 1e-12);
//! # Ok::<(), belt::BeltError>(())
//! ```
//!
//! # What this crate must never know
//!
//! - Orders, vehicles, maps, gates, or who did what: it answers questions with numbers.
//! - A friction, a power, a tension or a limit that nobody gave.
//! - Files, clocks, environment, or chance.
//! - How its values are drawn, stored or sent.

mod align;
mod caution;
mod check;
mod code;
mod drive;
mod error;
mod fault;
mod found;
mod layout;
mod off;
mod path;
mod phrases;
mod read;
mod routing;
mod slip;
mod sources;
mod text;
mod toothed;
mod travel;
mod wear;
mod worked;

pub use align::{AlignQuestion, Alignment, alignment};
pub use caution::Caution;
pub use code::{BeltCode, Shape, Unit as CodeUnit, code};
pub use drive::{
    BRUSHES_DEG, Drive, LEAST_RIBBED_WRAP_DEG, OnPulley, Question, Stand, Touches, drive,
};
pub use error::BeltError;
pub use fault::{Fault, Place};
pub use fields::Trouble;
pub use layout::{
    Face, Facts, Layout, Lies, PK_BACK_MM, PK_GROOVE_DEG, PK_LINE_DIFFERENTIAL_MM, PK_PITCH_MM,
    Profile, Pulley, Sense, Side, Tensioner, TensionerKind, Travel,
};
pub use off::LetOff;
pub use read::{Read, read};
pub use slip::{Grip, GripQuestion, grip};
pub use toothed::Between;
pub use wear::{Wear, WearQuestion, WearVerdict, wear};
