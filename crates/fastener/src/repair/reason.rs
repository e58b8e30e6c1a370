//! Why a way does not hold.

use crate::phrases::repair as say;
use std::fmt;

/// Why a way back does not hold. Figures are millimetres, newtons and shares.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// The metal of the thread is gone: there is nothing to clean up.
    ThreadIsGone { from_face_mm: f64 },
    /// Drill and tap cannot be held in line with the hole.
    NoRoomForTools,
    /// Too little wall around the new hole.
    ThinWall { left_mm: f64, least_mm: f64 },
    /// The hole is too shallow for a thread that holds.
    Shallow { usable_mm: f64, needed_mm: f64 },
    /// Too little sound thread below the torn one.
    NoSoundThread { sound_mm: f64, needed_mm: f64 },
    /// The longer bolt would bottom.
    Bottoms { room_mm: f64 },
    /// The other part may not be opened for a larger bolt.
    OtherPartMayNotGrow { limiter: bool },
    /// The larger head does not stand on the other part's seat.
    HeadTooLarge { face_mm: f64, seat_mm: f64 },
    /// The new thread would strip too near its clamp.
    Strips { margin: f64, least: f64 },
    /// The new bolt does not bear the clamp's high end.
    BoltOverloaded { high_n: f64, bears_n: f64 },
    /// No such size is listed.
    NoSuchSize,
}

impl Reason {
    /// Whether it already says that too little thread is left to carry.
    pub(super) fn is_of_length(&self) -> bool {
        matches!(
            self,
            Reason::ThreadIsGone { .. } | Reason::Shallow { .. } | Reason::NoSoundThread { .. }
        )
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Reason::ThreadIsGone { from_face_mm } => {
                out.write_str(&say::thread_is_gone(from_face_mm))
            }
            Reason::NoRoomForTools => out.write_str(say::no_straight_run()),
            Reason::ThinWall { left_mm, least_mm } => {
                out.write_str(&say::thin_wall(left_mm, least_mm))
            }
            Reason::Shallow {
                usable_mm,
                needed_mm,
            } => out.write_str(&say::shallow(usable_mm, needed_mm)),
            Reason::NoSoundThread {
                sound_mm,
                needed_mm,
            } => out.write_str(&say::no_sound_thread(sound_mm, needed_mm)),
            Reason::Bottoms { room_mm } => out.write_str(&say::bottoms(room_mm)),
            Reason::OtherPartMayNotGrow { limiter: true } => {
                out.write_str(say::limiter_takes_the_clamp())
            }
            Reason::OtherPartMayNotGrow { limiter: false } => {
                out.write_str(say::plastic_would_crack())
            }
            Reason::HeadTooLarge { face_mm, seat_mm } => {
                out.write_str(&say::head_too_large(face_mm, seat_mm))
            }
            Reason::Strips { margin, least } => out.write_str(&say::strips(margin, least)),
            Reason::BoltOverloaded { high_n, bears_n } => {
                out.write_str(&say::bolt_overloaded(high_n, bears_n))
            }
            Reason::NoSuchSize => out.write_str(say::no_such_size_listed()),
        }
    }
}
