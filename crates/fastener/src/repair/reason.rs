//! Why a way does not hold.

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
            Reason::ThreadIsGone { from_face_mm } => write!(
                out,
                "the thread is torn out {from_face_mm:.1} mm deep: there is nothing to clean up"
            ),
            Reason::NoRoomForTools => write!(
                out,
                "no straight run for drill and tap: take the part off, or take what is in the way"
            ),
            Reason::ThinWall { left_mm, least_mm } => write!(
                out,
                "only {left_mm:.1} mm of wall would be left, {least_mm:.1} mm are needed"
            ),
            Reason::Shallow {
                usable_mm,
                needed_mm,
            } => write!(
                out,
                "the hole takes {usable_mm:.1} mm of full thread, {needed_mm:.1} mm are needed"
            ),
            Reason::NoSoundThread {
                sound_mm,
                needed_mm,
            } => write!(
                out,
                "only {sound_mm:.1} mm of sound thread can be reached, {needed_mm:.1} mm are needed"
            ),
            Reason::Bottoms { room_mm } => write!(
                out,
                "there are only {room_mm:.1} mm below the bolt: the next longer one would bottom"
            ),
            Reason::OtherPartMayNotGrow { limiter: true } => write!(
                out,
                "the other part is plastic with a metal limiter that takes the clamp: its hole \
                 may not be opened"
            ),
            Reason::OtherPartMayNotGrow { limiter: false } => write!(
                out,
                "the other part is plastic: a larger hole and head would crack or creep"
            ),
            Reason::HeadTooLarge { face_mm, seat_mm } => write!(
                out,
                "the larger head presses on {face_mm:.1} mm, the seat is {seat_mm:.1} mm wide"
            ),
            Reason::Strips { margin, least } => write!(
                out,
                "its thread would strip at {margin:.2} times the greatest clamp, {least:.2} are needed"
            ),
            Reason::BoltOverloaded { high_n, bears_n } => write!(
                out,
                "the clamp may reach {high_n:.0} N, the bolt bears {bears_n:.0} N"
            ),
            Reason::NoSuchSize => write!(out, "no such size is listed for this thread"),
        }
    }
}
