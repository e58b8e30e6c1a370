//! A whole screw that does not turn: the ways to get it out, least risk first. Its thread is
//! not given up; that starts where it snaps or takes the thread with it.

use crate::holds::Holds;
use crate::parent::Family;

/// A whole screw, bolt or nut that does not come out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seized {
    pub fails: Fails,
    /// What it is screwed into; nothing where nobody said.
    pub family: Option<Family>,
    /// What the joint holds; nothing where nobody said.
    pub holds: Option<Holds>,
    /// Whether heat and sparks can hurt nothing near it.
    pub heat_is_safe: bool,
    pub drive: Drive,
}

/// What fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fails {
    /// The wrench fits, the thread does not turn.
    Stuck,
    /// The wrench slips: the head's corners or its recess are gone.
    Rounded,
}

/// Where the wrench takes hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Drive {
    /// A hexagon or twelve points, from outside.
    Outside,
    /// A hexagon socket, a star or a cross, from inside.
    Inside,
}

/// One way, and where to stop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LooseningWay {
    pub name: &'static str,
    pub how: Vec<&'static str>,
    /// Why it is not for this one; nothing where it is open.
    pub closed: Option<&'static str>,
    pub stop_when: &'static str,
}

/// What to do about a seized screw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loosening {
    /// Read first.
    pub cautions: Vec<&'static str>,
    pub ways: Vec<LooseningWay>,
    /// Whether the screw may go back in when it is out.
    pub goes_back: &'static str,
}

const CAUTIONS: [&str; 4] = [
    "Eye protection. Pull towards you on a wrench, with room for the hand if it lets go.",
    "A vehicle on a lift moves when a seized bolt is pulled at: support it as the makers say.",
    "No flame, sparks or heat near fuel, brake fluid, oil, a battery, seals, plastic, wires or an \
     airbag; a fire extinguisher at hand.",
    "The vehicle maker's instructions, local rules and licensed practice come before this page.",
];

const MAGNESIUM: &str = "Magnesium: its chips burn, and water makes it worse. No flame, no welding; \
     dry sand or a class D extinguisher at hand.";

const HURTS: &str = "People are hurt if this joint lets go: put in a new one as the maker says, \
     never the one that was heated, hit or gripped.";

/// The ways to get a whole seized screw out, least risk first. Those that are not for this one
/// are listed too, with the reason.
///
/// # Limits
///
/// It says nothing of the torque that a seized screw bears: no standard does once it is rusted.
///
/// # Source
///
/// Shop practice (common-practice).
///
/// ```
/// use fastener::parent::Family;
/// use fastener::seized::{Drive, Fails, Seized, loosening};
/// let rounded = Seized {
///     fails: Fails::Rounded,
///     family: Some(Family::Aluminium),
///     holds: None,
///     heat_is_safe: true,
///     drive: Drive::Outside,
/// };
/// let found = loosening(&rounded);
/// assert_eq!(found.ways[0].name, "a six-point socket, driven on");
/// ```
pub fn loosening(seized: &Seized) -> Loosening {
    let ways = match (seized.fails, seized.drive) {
        (Fails::Stuck, _) => vec![
            soak_and_shock(),
            to_and_fro(),
            heat(seized),
            impact(seized),
            weld(seized),
            head_off(),
        ],
        (Fails::Rounded, Drive::Outside) => vec![
            tight_socket(),
            extractor_socket(),
            soak_and_shock(),
            weld(seized),
            chisel(),
            head_off(),
        ],
        (Fails::Rounded, Drive::Inside) => vec![
            larger_bit(),
            slot(),
            soak_and_shock(),
            weld(seized),
            chisel(),
            head_off(),
        ],
    };
    let mut cautions = CAUTIONS.to_vec();
    if seized.family == Some(Family::Magnesium) {
        cautions.push(MAGNESIUM);
    }
    if seized.holds.is_some_and(Holds::hurts) {
        cautions.push(HURTS);
    }
    let goes_back = match seized.fails {
        Fails::Rounded => "Its head is gone: a new one goes in, of the same size and class.",
        Fails::Stuck => {
            "One that was heated, welded on or hit has lost its strength: a new one goes in. \
             Another goes back only if its thread and head are sound and the maker lets it."
        }
    };
    Loosening {
        cautions,
        ways,
        goes_back,
    }
}

fn way(name: &'static str, how: &[&'static str], stop_when: &'static str) -> LooseningWay {
    LooseningWay {
        name,
        how: how.to_vec(),
        closed: None,
        stop_when,
    }
}

fn soak_and_shock() -> LooseningWay {
    way(
        "oil, time and a blow",
        &[
            "wire-brush the thread that shows, penetrating oil, and wait; keep oil off brake linings and rubber",
            "a sharp blow along the screw with a punch on its head, not on a thin cover",
            "oil again from the other end, where that shows",
        ],
        "it does not move after the second soak",
    )
}

fn to_and_fro() -> LooseningWay {
    way(
        "tighten a little, then to and fro",
        &[
            "a six-point socket or the exact bit, fully seated, the wrench square to it",
            "a few degrees tighter first, then back; small angles, oil between",
            "when it moves and then binds, go back in: rust in the thread jams it",
        ],
        "it feels soft or springs back: it is twisting off",
    )
}

fn heat(seized: &Seized) -> LooseningWay {
    let heat = way(
        "heat the part around it",
        &[
            "heat the part around it, not the screw: an induction coil or hot air before a flame",
            "let it cool, oil, then to and fro; once more if it helps",
            "thread locker lets go at about 250 \u{b0}C: warm it through, and turn it while warm",
        ],
        "paint, rubber or grease nearby begins to smoke",
    );
    closed_if(heat, no_heat(seized))
}

fn impact(seized: &Seized) -> LooseningWay {
    let impact = way(
        "short blows of an impact wrench",
        &[
            "an impact socket, the least setting first, short bursts, left and right in turn",
            "a hand impact driver for a recess",
        ],
        "the head turns and the thread does not",
    );
    let light =
        seized.family.is_some_and(Family::is_light) || seized.family == Some(Family::Plastic);
    closed_if(
        impact,
        light.then_some(
            "into a light metal or plastic the blows tear the thread out before the screw lets go",
        ),
    )
}

fn tight_socket() -> LooseningWay {
    way(
        "a six-point socket, driven on",
        &[
            "clean the head, file the burrs off",
            "the next smaller six-point socket, metric or inch, driven on with a hammer",
            "turn slowly, the socket held on",
        ],
        "it slips once: the next try only rounds it more",
    )
}

fn extractor_socket() -> LooseningWay {
    way(
        "a gripping socket with a reverse spiral",
        &[
            "one a little smaller than what is left of the head, driven on",
            "by hand, not with an impact wrench: it bites deeper as it turns",
        ],
        "the head shears or the spiral no longer bites",
    )
}

fn larger_bit() -> LooseningWay {
    way(
        "the next larger bit, driven in",
        &[
            "clean the recess to its bottom",
            "a star bit a little larger than the recess, driven in with a hammer",
            "turn slowly with the bit pressed in",
        ],
        "the bit turns in the recess",
    )
}

fn slot() -> LooseningWay {
    way(
        "a slot, or two flats",
        &[
            "cut a slot across the head for the widest screwdriver, or file two flats for a wrench",
            "cover what the filings fall into",
        ],
        "a side of the slot breaks away",
    )
}

fn weld(seized: &Seized) -> LooseningWay {
    let weld = way(
        "weld a nut on the head",
        &[
            "disconnect the battery and what the maker names; earth beside the screw",
            "a nut on the head, welded from inside outwards; the heat does half the work",
            "let it cool until it can be touched, oil, then to and fro",
        ],
        "the second nut tears off",
    );
    closed_if(weld, no_heat(seized))
}

fn chisel() -> LooseningWay {
    way(
        "locking pliers, or a chisel on the edge",
        &[
            "locking pliers across the head, as tight as they go",
            "or a blunt chisel at the head's edge, struck in the sense that loosens",
        ],
        "the head tears without turning",
    )
}

fn head_off() -> LooseningWay {
    way(
        "take the head off",
        &[
            "drill down the middle of the head to the shank's diameter, then knock the head off; split a nut",
            "the part comes off, the load is off the thread, and what stands proud can often be turned by hand or gripped",
            "from there it is a snapped bolt: say so on this page",
        ],
        "the drill leaves the head on one side",
    )
}

fn no_heat(seized: &Seized) -> Option<&'static str> {
    if seized.family == Some(Family::Magnesium) {
        return Some("magnesium burns");
    }
    if seized.family == Some(Family::Plastic) {
        return Some("plastic melts");
    }
    match seized.holds {
        Some(Holds::Fuel) => return Some("fuel is near"),
        Some(Holds::Airbag | Holds::Belt) => return Some("an airbag or a belt tensioner is near"),
        Some(Holds::HighVoltage) => return Some("high voltage is near"),
        _ => {}
    }
    (!seized.heat_is_safe).then_some("heat or sparks would hurt something near, or nobody looked")
}

fn closed_if(way: LooseningWay, closed: Option<&'static str>) -> LooseningWay {
    LooseningWay { closed, ..way }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn every() -> Vec<Seized> {
        let mut out = Vec::new();
        for fails in [Fails::Stuck, Fails::Rounded] {
            for drive in [Drive::Outside, Drive::Inside] {
                for heat_is_safe in [false, true] {
                    for family in [
                        None,
                        Some(Family::Aluminium),
                        Some(Family::Magnesium),
                        Some(Family::Steel),
                    ] {
                        for holds in std::iter::once(None).chain(Holds::ALL.map(Some)) {
                            out.push(Seized {
                                fails,
                                family,
                                holds,
                                heat_is_safe,
                                drive,
                            });
                        }
                    }
                }
            }
        }
        out
    }

    #[test]
    fn heat_is_never_offered_where_it_hurts() {
        for seized in every() {
            let found = loosening(&seized);
            let hot = |way: &&LooseningWay| way.name.contains("heat") || way.name.contains("weld");
            let burns = !seized.heat_is_safe
                || seized.family == Some(Family::Magnesium)
                || matches!(
                    seized.holds,
                    Some(Holds::Fuel | Holds::Airbag | Holds::Belt | Holds::HighVoltage)
                );
            for way in found.ways.iter().filter(hot) {
                assert_eq!(way.closed.is_some(), burns, "{seized:?}: {}", way.name);
            }
        }
    }

    #[test]
    fn a_way_is_always_left_and_no_thread_is_drilled() {
        for seized in every() {
            let found = loosening(&seized);
            assert!(found.ways.iter().any(|way| way.closed.is_none()));
            assert!(!found.ways.iter().any(|way| way.name.contains("insert")));
            let said = found
                .cautions
                .iter()
                .any(|text| text.starts_with("People are hurt"));
            assert_eq!(said, seized.holds.is_some_and(Holds::hurts), "{seized:?}");
        }
    }

    #[test]
    fn a_rounded_head_is_gripped_before_anything_else() {
        let first = |drive| {
            let found = loosening(&Seized {
                fails: Fails::Rounded,
                family: None,
                holds: None,
                heat_is_safe: false,
                drive,
            });
            found.ways[0].name
        };
        assert_eq!(first(Drive::Outside), "a six-point socket, driven on");
        assert_eq!(first(Drive::Inside), "the next larger bit, driven in");
    }
}
