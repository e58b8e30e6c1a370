//! The fine codes of a vehicle's systems, and the stored codes they fold to.

use states::System;

/// The system a thing belongs to, finer than what is stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Branch {
    /// Brakes, their hydraulics and their fluid.
    Brakes,
    /// Steering, its pump and its fluid.
    Steering,
    /// Springs, arms, joints, knuckles, subframes.
    Suspension,
    /// Wheels and what holds them.
    Wheels,
    /// Fuel, from tank to injector.
    Fuel,
    /// Airbags, belts, seats and their wiring.
    Restraints,
    /// The drive belt and what it drives.
    DriveBelt,
    /// What drives the camshafts.
    Timing,
    /// High voltage.
    HighVoltage,
    /// Coolant and what holds it.
    Cooling,
    /// Engine oil and what holds it.
    Oil,
    /// The engine itself.
    Engine,
    /// Gearbox, clutch, shafts.
    Transmission,
    /// Air on its way in.
    Intake,
    /// Exhaust.
    Exhaust,
    /// The battery, its terminals, starter, alternator.
    Battery,
    /// Lamps.
    Lamps,
    /// Sensors, control units, wiring.
    Electrical,
    /// Cameras, radar, parking sensors.
    Adas,
    /// Heating and air conditioning.
    Climate,
    /// Body, trim, covers, glass.
    Body,
    /// Tow bar, ball and socket.
    Towing,
    /// Not told.
    Unknown,
    /// No part of a vehicle.
    None,
}

use Branch as B;

const CODES: [(Branch, &str); 24] = [
    (B::Brakes, "brakes"),
    (B::Steering, "steering"),
    (B::Suspension, "suspension"),
    (B::Wheels, "wheels"),
    (B::Fuel, "fuel"),
    (B::Restraints, "restraints"),
    (B::DriveBelt, "drive-belt"),
    (B::Timing, "timing"),
    (B::HighVoltage, "high-voltage"),
    (B::Cooling, "cooling"),
    (B::Oil, "oil"),
    (B::Engine, "engine"),
    (B::Transmission, "transmission"),
    (B::Intake, "intake"),
    (B::Exhaust, "exhaust"),
    (B::Battery, "battery"),
    (B::Lamps, "lamps"),
    (B::Electrical, "electrical"),
    (B::Adas, "adas"),
    (B::Climate, "climate"),
    (B::Body, "body"),
    (B::Towing, "towing"),
    (B::Unknown, "unknown"),
    (B::None, "none"),
];

impl Branch {
    /// Every branch, in the order of the declaration.
    pub fn all() -> impl Iterator<Item = Branch> {
        CODES.into_iter().map(|(branch, _)| branch)
    }

    /// The code, as stored and sent.
    #[must_use]
    pub fn code(self) -> &'static str {
        CODES
            .into_iter()
            .find(|(branch, _)| *branch == self)
            .map_or("unknown", |(_, code)| code)
    }

    /// The branch that a code means.
    #[must_use]
    pub fn read(code: &str) -> Option<Branch> {
        CODES
            .into_iter()
            .find(|(_, known)| *known == code)
            .map(|(branch, _)| branch)
    }

    /// The stored system it folds to; nothing for what is no part of a vehicle.
    ///
    /// ```
    /// use trade::Branch;
    /// assert_eq!(Branch::Timing.fold(), Some(states::System::Engine));
    /// assert_eq!(Branch::None.fold(), None);
    /// ```
    #[must_use]
    pub fn fold(self) -> Option<System> {
        Some(match self {
            B::Brakes => System::Brakes,
            B::Steering => System::Steering,
            B::Suspension => System::Suspension,
            B::Wheels => System::Wheels,
            B::Fuel => System::Fuel,
            B::Restraints => System::Restraints,
            B::DriveBelt => System::DriveBelt,
            B::Timing | B::Engine => System::Engine,
            B::HighVoltage => System::HighVoltage,
            B::Cooling => System::Cooling,
            B::Oil => System::Oil,
            B::Transmission => System::Transmission,
            B::Intake => System::Intake,
            B::Exhaust => System::Exhaust,
            B::Battery => System::Battery,
            B::Lamps | B::Electrical | B::Adas => System::Electrical,
            B::Climate => System::Climate,
            B::Body | B::Towing => System::Body,
            B::Unknown => System::Unknown,
            B::None => return None,
        })
    }
}
