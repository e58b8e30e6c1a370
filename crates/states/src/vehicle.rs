//! The parts of a vehicle that gates tell apart, and the gates themselves.

/// The part of the vehicle an item belongs to; gates look at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum System {
    /// Brakes, their hydraulics and their fluid.
    Brakes,
    /// Steering, its pump and its fluid.
    Steering,
    /// Wheels and what holds them.
    Wheels,
    /// Suspension.
    Suspension,
    /// Fuel, from tank to injector.
    Fuel,
    /// Airbags, belts and their wiring.
    Restraints,
    /// The drive belt and what it drives.
    DriveBelt,
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
    /// The battery and its terminals.
    Battery,
    /// Lamps, sensors, wiring.
    Electrical,
    /// Heating and air conditioning.
    Climate,
    /// Body, trim, covers, shields.
    Body,
    /// Not told yet: stands at every gate.
    Unknown,
}

/// Where on the vehicle an item is worked on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Zone {
    /// Under the bonnet, from above.
    Above,
    /// From below.
    Below,
    /// Through a wheel well.
    WheelWell,
    /// In the cabin.
    Cabin,
    /// At the back, or the load bed.
    Rear,
    /// On the outside.
    Outside,
    /// Not told yet.
    Unknown,
}

impl System {
    /// Whether stricter rules hold: a second person's check, nothing missing ever.
    #[must_use]
    pub fn is_safety(self) -> bool {
        matches!(
            self,
            System::Brakes
                | System::Steering
                | System::Wheels
                | System::Fuel
                | System::Restraints
                | System::DriveBelt
                | System::HighVoltage
        )
    }

    /// Whether the vehicle stops when this system's fluid is lost.
    #[must_use]
    pub fn stops_without_fluid(self) -> bool {
        matches!(
            self,
            System::Brakes
                | System::Steering
                | System::Cooling
                | System::Oil
                | System::Fuel
                | System::Transmission
        )
    }

    /// Whether work on it shows on the road.
    #[must_use]
    pub fn runs(self) -> bool {
        !matches!(
            self,
            System::Body | System::Electrical | System::Battery | System::Climate | System::Unknown
        )
    }
}

/// What the vehicle may be asked to do next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Gate {
    /// Battery on.
    GoLive,
    /// Start the engine.
    Start,
    /// Lower it from the lift.
    Lower,
    /// Roll it in the yard.
    Roll,
    /// Drive it on the road to test.
    Road,
    /// Hand it over.
    HandOver,
}

impl Gate {
    /// All six, in the order a vehicle meets them.
    pub const ALL: [Gate; 6] = [
        Gate::GoLive,
        Gate::Start,
        Gate::Lower,
        Gate::Roll,
        Gate::Road,
        Gate::HandOver,
    ];

    /// Whether this gate asks everything the other asks.
    #[must_use]
    pub fn includes(self, other: Gate) -> bool {
        self == other
            || match self {
                Gate::HandOver => true,
                Gate::Road => true,
                Gate::Start => other == Gate::GoLive,
                Gate::Roll => other == Gate::Lower,
                Gate::GoLive | Gate::Lower => false,
            } && other != Gate::HandOver
    }
}
