//! The steps of each fluid, in sequence.

use super::{Before, Step, Work, Work as W};
use crate::caution::Caution;

const fn step(
    work: Work,
    before: Before,
    after: &'static [Work],
    caution: Option<Caution>,
    text: &'static str,
) -> Step {
    Step {
        work,
        text,
        caution,
        before,
        after,
    }
}

pub(super) const ENGINE_OIL: &[Step] = &[
    step(
        W::Named,
        Before::Start,
        &[],
        Some(Caution::MakersSpecification),
        "Name the grade and specification that the maker asks for; say so if another sort is in.",
    ),
    step(
        W::Drained,
        Before::Start,
        &[],
        Some(Caution::HotOil),
        "Drain, new washer, plug to its torque; new filter with its ring oiled.",
    ),
    step(
        W::Filled,
        Before::Start,
        &[W::Drained],
        Some(Caution::Disposal),
        "Fill a little less than the maker's amount and write down how much.",
    ),
    step(
        W::Started,
        Before::Road,
        &[W::Filled],
        Some(Caution::MovingParts),
        "Start; the oil light must go out at once, else stop. Let it idle a minute.",
    ),
    step(
        W::Stopped,
        Before::Road,
        &[W::Started],
        None,
        "Stop, and look at filter and plug.",
    ),
    step(
        W::Waited,
        Before::Road,
        &[W::Stopped],
        None,
        "Wait as long as the maker says, vehicle level.",
    ),
    step(
        W::LevelSeen,
        Before::Road,
        &[W::Waited, W::Filled],
        None,
        "See the level between the marks and top up in small amounts.",
    ),
    step(
        W::LeaksLookedFor,
        Before::HandOver,
        &[W::Started],
        Some(Caution::Supported),
        "Look for drips from below with the engine warm.",
    ),
];

pub(super) const BRAKE: &[Step] = &[
    step(
        W::CircuitsNamed,
        Before::Road,
        &[],
        Some(Caution::BrakeFluid),
        "Name the circuits and wheels that were opened.",
    ),
    step(
        W::Named,
        Before::Road,
        &[],
        Some(Caution::MakersSpecification),
        "Read the class off the cap or the maker's data; never guess it, never mix silicone with glycol.",
    ),
    step(
        W::Filled,
        Before::Road,
        &[W::Named],
        None,
        "Fill from a sealed container; keep the bottle above its low mark all the time.",
    ),
    step(
        W::Bled,
        Before::Road,
        &[W::CircuitsNamed, W::Filled],
        None,
        "Bleed in the maker's sequence until no bubble comes; with a control unit, by its own routine.",
    ),
    step(
        W::PedalHard,
        Before::Start,
        &[W::Bled],
        None,
        "Pump until the pedal is hard, engine off; it must not sink under a steady foot.",
    ),
    step(
        W::PedalTwice,
        Before::Road,
        &[W::PedalHard],
        Some(Caution::NotOnTheRoad),
        "Engine running: the pedal at full height twice, a minute apart. If it comes up higher the second time, bleed again.",
    ),
    step(
        W::LevelSeen,
        Before::Road,
        &[W::Bled],
        None,
        "Level at its mark, cap on, every bleed screw tight and capped.",
    ),
    step(
        W::LeaksLookedFor,
        Before::Road,
        &[W::PedalHard],
        Some(Caution::Supported),
        "Look at every joint opened with a foot on the pedal.",
    ),
];

pub(super) const CLUTCH: &[Step] = &[
    step(
        W::Named,
        Before::Start,
        &[],
        Some(Caution::BrakeFluid),
        "Read the class off the cap or the maker's data; where it shares the brake's bottle, the brake's account is open too.",
    ),
    step(
        W::Filled,
        Before::Start,
        &[W::Named],
        None,
        "Fill from a sealed container.",
    ),
    step(
        W::Bled,
        Before::Start,
        &[W::Filled],
        None,
        "Bleed as the maker says until no bubble comes.",
    ),
    step(
        W::PedalTwice,
        Before::Road,
        &[W::Bled],
        None,
        "The pedal at full height twice, and reverse goes in without a scrape.",
    ),
    step(
        W::LevelSeen,
        Before::Road,
        &[W::Bled],
        None,
        "Level at its mark, cap on.",
    ),
    step(
        W::LeaksLookedFor,
        Before::HandOver,
        &[W::Bled],
        Some(Caution::Supported),
        "Look at the joints with the pedal down.",
    ),
];

pub(super) const POWER_STEERING: &[Step] = &[
    step(
        W::Named,
        Before::Start,
        &[],
        Some(Caution::MakersSpecification),
        "Read the fluid off the cap; colour tells nothing.",
    ),
    step(
        W::Filled,
        Before::Start,
        &[W::Named],
        None,
        "Fill to the cold mark, front wheels off the ground.",
    ),
    step(
        W::LockToLock,
        Before::Road,
        &[W::Filled],
        Some(Caution::MovingParts),
        "Lock to lock by hand with the engine off, topping up, then slowly with it running; never hold it at the stop.",
    ),
    step(
        W::FoamGone,
        Before::Road,
        &[W::LockToLock],
        None,
        "Stop and wait until the foam is gone; do it again while any comes.",
    ),
    step(
        W::LevelSeen,
        Before::Road,
        &[W::FoamGone],
        None,
        "Level at its mark for the temperature, cap on.",
    ),
    step(
        W::LeaksLookedFor,
        Before::HandOver,
        &[W::LockToLock],
        Some(Caution::Supported),
        "Look at hoses, rack and pump.",
    ),
];

pub(super) const AUTOMATIC: &[Step] = &[
    step(
        W::Named,
        Before::Start,
        &[],
        Some(Caution::MakersSpecification),
        "Name the oil that the maker asks for; there is no other that is near enough.",
    ),
    step(
        W::Drained,
        Before::Start,
        &[],
        Some(Caution::HotOil),
        "Drain and measure what came out, with its temperature.",
    ),
    step(
        W::Filled,
        Before::Start,
        &[W::Drained, W::Named],
        Some(Caution::Disposal),
        "Fill as much as came out.",
    ),
    step(
        W::Started,
        Before::Road,
        &[W::Filled],
        Some(Caution::MovingParts),
        "Start and go through all positions of the lever, brake on.",
    ),
    step(
        W::Warmed,
        Before::Road,
        &[W::Started],
        None,
        "Bring it to the maker's temperature window, read in the pan.",
    ),
    step(
        W::LevelSeen,
        Before::Road,
        &[W::Warmed],
        Some(Caution::Supported),
        "See the level within the window, engine as the maker says.",
    ),
    step(
        W::AmountsCompared,
        Before::Road,
        &[W::Filled],
        None,
        "Hold litres in against litres out.",
    ),
    step(
        W::LeaksLookedFor,
        Before::HandOver,
        &[W::Started],
        None,
        "Look for drips warm.",
    ),
];

pub(super) const TO_THE_PLUG: &[Step] = &[
    step(
        W::Named,
        Before::Road,
        &[],
        Some(Caution::MakersSpecification),
        "Name the grade and specification that the maker asks for.",
    ),
    step(
        W::Drained,
        Before::Road,
        &[],
        Some(Caution::HotOil),
        "Open the filler first, then drain and measure; look at the magnet.",
    ),
    step(
        W::FilledToPlug,
        Before::Road,
        &[W::Drained, W::Named],
        Some(Caution::Supported),
        "Vehicle level: fill to the lower edge of the plug within the maker's temperature window, plug to its torque.",
    ),
    step(
        W::AmountsCompared,
        Before::Road,
        &[W::FilledToPlug],
        None,
        "Hold litres in against litres out.",
    ),
    step(
        W::WarmChecked,
        Before::HandOver,
        &[W::FilledToPlug],
        None,
        "See it again warm: level and drips.",
    ),
];

pub(super) const REFRIGERANT: &[Step] = &[
    step(
        W::Named,
        Before::HandOver,
        &[],
        Some(Caution::Frost),
        "Read sort and amount off the label; licensed hands alone from here on.",
    ),
    step(
        W::Recovered,
        Before::HandOver,
        &[W::Named],
        None,
        "Recover the charge and weigh it; never vent it.",
    ),
    step(
        W::OilAccounted,
        Before::HandOver,
        &[W::Recovered],
        Some(Caution::MakersSpecification),
        "Measure the oil that came out; as much new of the maker's goes in, and what new parts ask for.",
    ),
    step(
        W::Evacuated,
        Before::HandOver,
        &[W::Recovered],
        None,
        "Draw it down and hold: the gauge must not rise.",
    ),
    step(
        W::WeighedIn,
        Before::HandOver,
        &[W::Evacuated, W::OilAccounted],
        None,
        "Weigh in the label's amount.",
    ),
    step(
        W::LeakSearched,
        Before::HandOver,
        &[W::WeighedIn],
        None,
        "Search every joint for leaks.",
    ),
];

pub(super) const FUEL: &[Step] = &[
    step(
        W::Filled,
        Before::Start,
        &[],
        Some(Caution::Fire),
        "Joints closed to their torque, new seals; catch what ran out.",
    ),
    step(
        W::Primed,
        Before::Start,
        &[W::Filled],
        None,
        "Prime with the pump or the hand lever, engine not started.",
    ),
    step(
        W::NoDrip,
        Before::Start,
        &[W::Primed],
        None,
        "Look and wipe: no drip under pressure.",
    ),
    step(
        W::NoSmell,
        Before::Start,
        &[W::Primed],
        None,
        "No smell at the joints or under the vehicle.",
    ),
    step(
        W::Started,
        Before::Road,
        &[W::NoDrip, W::NoSmell],
        Some(Caution::MovingParts),
        "Start and let it run.",
    ),
    step(
        W::LeaksLookedFor,
        Before::Road,
        &[W::Started],
        None,
        "Look again with the engine running, and once more after it.",
    ),
];

pub(super) const UREA: &[Step] = &[
    step(
        W::Named,
        Before::HandOver,
        &[],
        Some(Caution::UreaSpill),
        "Solution to the standard from a clean, closed container; nothing else ever goes in.",
    ),
    step(
        W::Filled,
        Before::HandOver,
        &[W::Named],
        None,
        "Fill by its own neck.",
    ),
    step(
        W::QualityRead,
        Before::HandOver,
        &[W::Filled],
        None,
        "Read it with a refractometer for urea where it was opened or is in doubt.",
    ),
    step(
        W::LeaksLookedFor,
        Before::HandOver,
        &[W::Filled],
        None,
        "Look for white crust and drips; the message goes out as the maker says.",
    ),
];

pub(super) const WASHER: &[Step] = &[
    step(
        W::Filled,
        Before::HandOver,
        &[],
        Some(Caution::Alcohol),
        "Fill, mixed for the coldest night to come.",
    ),
    step(
        W::Tried,
        Before::HandOver,
        &[W::Filled],
        None,
        "Try it: spray at every nozzle, front, rear and lamps.",
    ),
];

pub(super) const BATTERY: &[Step] = &[
    step(
        W::NegativeOff,
        Before::Start,
        &[],
        Some(Caution::Short),
        "Radio code and seat positions noted, loads off; negative off first, unless the maker says otherwise.",
    ),
    step(
        W::PositiveOff,
        Before::Start,
        &[W::NegativeOff],
        Some(Caution::Acid),
        "Positive off; clamp and vent hose off.",
    ),
    step(
        W::PositiveOn,
        Before::GoLive,
        &[],
        Some(Caution::MakersSpecification),
        "Battery clamped, vent hose on; positive on first, to its torque.",
    ),
    step(
        W::NegativeOn,
        Before::Start,
        &[W::PositiveOn],
        Some(Caution::Short),
        "Negative on last, to its torque.",
    ),
    step(
        W::MemoryRestored,
        Before::HandOver,
        &[W::NegativeOn],
        None,
        "Clock, windows, code, seats; lights of the dash gone out.",
    ),
    step(
        W::Registered,
        Before::HandOver,
        &[W::NegativeOn],
        None,
        "A new battery registered where the vehicle asks for it; say so if it does not.",
    ),
];
