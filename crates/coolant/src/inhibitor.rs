//! Inhibitor families are never mixed silently.

use crate::phrases as say;
use std::fmt;

/// What the maker asks for, or what a bottle says it meets: a specification or a
/// technology, as printed. Colour is none.
#[derive(Clone, Debug)]
pub struct Inhibitor {
    printed: String,
}

/// What has to be said about inhibitors before pouring.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum InhibitorNote {
    /// The vehicle maker's specification is not known.
    MakerNotStated,
    /// What stays in the system is not known.
    InSystemNotStated,
    /// A bottle on the shelf does not say.
    ShelfNotStated { what: String },
    /// What stays in is not what the maker asks for.
    InSystemNotMakers { in_system: String, maker: String },
    /// A bottle is not what the maker asks for.
    ShelfNotMakers {
        what: String,
        printed: String,
        maker: String,
    },
    /// A bottle would be mixed with another family that stays in.
    WouldMix {
        what: String,
        printed: String,
        in_system: String,
    },
}

impl Inhibitor {
    /// A specification as printed.
    pub fn new(printed: impl Into<String>) -> Inhibitor {
        Inhibitor {
            printed: printed.into(),
        }
    }

    /// As printed.
    pub fn printed(&self) -> &str {
        &self.printed
    }

    fn letters(&self) -> String {
        self.printed
            .chars()
            .filter(|character| character.is_alphanumeric())
            .flat_map(char::to_lowercase)
            .collect()
    }
}

/// Large and small letters, blanks and dashes make no difference.
impl PartialEq for Inhibitor {
    fn eq(&self, other: &Inhibitor) -> bool {
        self.letters() == other.letters()
    }
}

impl Eq for Inhibitor {}

impl fmt::Display for InhibitorNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            InhibitorNote::MakerNotStated => f.write_str(say::maker_not_stated()),
            InhibitorNote::InSystemNotStated => f.write_str(say::in_system_not_stated()),
            InhibitorNote::ShelfNotStated { what } => f.write_str(&say::shelf_not_stated(what)),
            InhibitorNote::InSystemNotMakers { in_system, maker } => {
                f.write_str(&say::in_system_not_makers(in_system, maker))
            }
            InhibitorNote::ShelfNotMakers {
                what,
                printed,
                maker,
            } => f.write_str(&say::shelf_not_makers(what, printed, maker)),
            InhibitorNote::WouldMix {
                what,
                printed,
                in_system,
            } => f.write_str(&say::would_mix(what, printed, in_system)),
        }
    }
}

/// What has to be said before bottles go into a system.
///
/// `shelf` names each bottle that holds inhibitor; water has none. What is not stated is
/// said to be unknown, never taken as fitting.
pub(crate) fn inhibitor_notes(
    maker: Option<&Inhibitor>,
    in_system: Option<&Inhibitor>,
    shelf: &[(String, Option<&Inhibitor>)],
) -> Vec<InhibitorNote> {
    let mut notes = Vec::new();
    match (maker, in_system) {
        (None, _) => notes.push(InhibitorNote::MakerNotStated),
        (Some(maker), Some(in_system)) if maker != in_system => {
            notes.push(InhibitorNote::InSystemNotMakers {
                in_system: in_system.printed.clone(),
                maker: maker.printed.clone(),
            });
        }
        _ => {}
    }
    if in_system.is_none() {
        notes.push(InhibitorNote::InSystemNotStated);
    }
    for (what, printed) in shelf {
        match (printed, maker, in_system) {
            (None, _, _) => notes.push(InhibitorNote::ShelfNotStated { what: what.clone() }),
            (Some(printed), Some(maker), _) if *printed != maker => {
                notes.push(InhibitorNote::ShelfNotMakers {
                    what: what.clone(),
                    printed: printed.printed.clone(),
                    maker: maker.printed.clone(),
                });
            }
            (Some(printed), _, Some(in_system)) if *printed != in_system => {
                notes.push(InhibitorNote::WouldMix {
                    what: what.clone(),
                    printed: printed.printed.clone(),
                    in_system: in_system.printed.clone(),
                });
            }
            _ => {}
        }
    }
    notes
}
