//! A whole screw that does not turn: the ways to get it out, least risk first. Its thread is
//! not given up; that starts where it snaps or takes the thread with it.

use crate::holds::Holds;
use crate::parent::Family;
use crate::phrases::seized as say;

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

const CAUTIONS: [fn() -> &'static str; 4] = [
    say::eye_protection_and_pull_towards_you,
    say::vehicle_moves_on_the_lift,
    say::no_flame_near,
    say::makers_instructions_come_first,
];

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
    let mut cautions: Vec<&'static str> = CAUTIONS.iter().map(|caution| caution()).collect();
    if seized.family == Some(Family::Magnesium) {
        cautions.push(say::magnesium_burns_no_welding());
    }
    if seized.holds.is_some_and(Holds::hurts) {
        cautions.push(say::people_are_hurt_put_in_a_new_one());
    }
    let goes_back = match seized.fails {
        Fails::Rounded => say::its_head_is_gone(),
        Fails::Stuck => say::heated_one_has_lost_its_strength(),
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
        say::oil_time_and_a_blow(),
        &[
            say::brush_oil_and_wait(),
            say::sharp_blow_along_the_screw(),
            say::oil_from_the_other_end(),
        ],
        say::does_not_move_after_second_soak(),
    )
}

fn to_and_fro() -> LooseningWay {
    way(
        say::tighten_a_little_then_to_and_fro(),
        &[
            say::exact_tool_fully_seated(),
            say::few_degrees_tighter_first(),
            say::moves_and_then_binds(),
        ],
        say::feels_soft_or_springs_back(),
    )
}

fn heat(seized: &Seized) -> LooseningWay {
    let heat = way(
        say::heat_the_part_around_it(),
        &[
            say::heat_the_part_not_the_screw(),
            say::let_it_cool_oil_to_and_fro(),
            say::thread_locker_lets_go(),
        ],
        say::something_nearby_smokes(),
    );
    closed_if(heat, no_heat(seized))
}

fn impact(seized: &Seized) -> LooseningWay {
    let impact = way(
        say::short_blows_of_an_impact_wrench(),
        &[
            say::impact_socket_least_setting(),
            say::hand_impact_driver(),
        ],
        say::head_turns_thread_does_not(),
    );
    let light =
        seized.family.is_some_and(Family::is_light) || seized.family == Some(Family::Plastic);
    closed_if(impact, light.then_some(say::blows_tear_the_thread_out()))
}

fn tight_socket() -> LooseningWay {
    way(
        say::six_point_socket_driven_on(),
        &[
            say::clean_the_head(),
            say::next_smaller_socket(),
            say::turn_slowly_socket_held_on(),
        ],
        say::slips_once(),
    )
}

fn extractor_socket() -> LooseningWay {
    way(
        say::gripping_socket(),
        &[
            say::one_a_little_smaller_driven_on(),
            say::by_hand_it_bites_deeper(),
        ],
        say::head_shears_or_spiral_slips(),
    )
}

fn larger_bit() -> LooseningWay {
    way(
        say::next_larger_bit(),
        &[
            say::clean_the_recess(),
            say::star_bit_a_little_larger(),
            say::turn_slowly_bit_pressed_in(),
        ],
        say::bit_turns_in_the_recess(),
    )
}

fn slot() -> LooseningWay {
    way(
        say::slot_or_two_flats(),
        &[say::cut_a_slot(), say::cover_from_filings()],
        say::side_of_the_slot_breaks(),
    )
}

fn weld(seized: &Seized) -> LooseningWay {
    let weld = way(
        say::weld_a_nut_on_the_head(),
        &[
            say::disconnect_the_battery(),
            say::nut_welded_from_inside(),
            say::cool_until_touched(),
        ],
        say::second_nut_tears_off(),
    );
    closed_if(weld, no_heat(seized))
}

fn chisel() -> LooseningWay {
    way(
        say::locking_pliers_or_chisel(),
        &[
            say::locking_pliers_as_tight_as_they_go(),
            say::blunt_chisel_at_the_edge(),
        ],
        say::head_tears_without_turning(),
    )
}

fn head_off() -> LooseningWay {
    way(
        say::take_the_head_off(),
        &[
            say::drill_down_the_head(),
            say::part_comes_off_load_is_off(),
            say::from_there_it_is_snapped(),
        ],
        say::drill_leaves_the_head(),
    )
}

fn no_heat(seized: &Seized) -> Option<&'static str> {
    if seized.family == Some(Family::Magnesium) {
        return Some(say::magnesium_burns());
    }
    if seized.family == Some(Family::Plastic) {
        return Some(say::plastic_melts());
    }
    match seized.holds {
        Some(Holds::Fuel) => return Some(say::fuel_is_near()),
        Some(Holds::Airbag | Holds::Belt) => return Some(say::airbag_or_tensioner_is_near()),
        Some(Holds::HighVoltage) => return Some(say::high_voltage_is_near()),
        _ => {}
    }
    (!seized.heat_is_safe).then_some(say::heat_would_hurt_or_nobody_looked())
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
