//! Sets of gates, always closed under the laws.

use states::Gate;
use std::fmt;

/// The gates that are shut, closed under the laws: a shut gate shuts those after it.
///
/// *Live* shuts *start*, *start* shuts *road*; *lower* shuts *roll*, *roll* shuts *road*;
/// *road* shuts *hand*. Nothing else: a car without an engine is pushed, an engine is run on
/// the lift.
///
/// ```
/// use states::Gate;
/// use trade::Gates;
///
/// let shut = Gates::NONE.with(Gate::Start);
/// assert_eq!(shut.codes(), ["start", "road", "hand"]);
/// assert!(!shut.has(Gate::Roll));
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Gates(u8);

/// The gates in the order they are written.
const ORDER: [(Gate, &str); 6] = [
    (Gate::GoLive, "live"),
    (Gate::Start, "start"),
    (Gate::Lower, "lower"),
    (Gate::Roll, "roll"),
    (Gate::Road, "road"),
    (Gate::HandOver, "hand"),
];

const fn bit(gate: Gate) -> u8 {
    match gate {
        Gate::GoLive => 1,
        Gate::Start => 2,
        Gate::Lower => 4,
        Gate::Roll => 8,
        Gate::Road => 16,
        Gate::HandOver => 32,
    }
}

impl Gates {
    /// No gate is shut.
    pub const NONE: Gates = Gates(0);
    /// All six are shut.
    pub const ALL: Gates = Gates(0b11_1111);

    /// These and one more, with the gates that follow from it.
    #[must_use]
    pub const fn with(self, gate: Gate) -> Gates {
        let follows = match gate {
            Gate::GoLive => bit(Gate::Start) | bit(Gate::Road) | bit(Gate::HandOver),
            Gate::Start => bit(Gate::Road) | bit(Gate::HandOver),
            Gate::Lower => bit(Gate::Roll) | bit(Gate::Road) | bit(Gate::HandOver),
            Gate::Roll => bit(Gate::Road) | bit(Gate::HandOver),
            Gate::Road => bit(Gate::HandOver),
            Gate::HandOver => 0,
        };
        Gates(self.0 | bit(gate) | follows)
    }

    /// What either shuts.
    #[must_use]
    pub const fn and(self, other: Gates) -> Gates {
        Gates(self.0 | other.0)
    }

    /// Whether this gate is shut.
    #[must_use]
    pub const fn has(self, gate: Gate) -> bool {
        self.0 & bit(gate) != 0
    }

    /// Whether all that the other shuts is shut here.
    #[must_use]
    pub const fn covers(self, other: Gates) -> bool {
        self.0 & other.0 == other.0
    }

    /// Whether nothing is shut.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// The shut gates, in the order a vehicle meets them.
    pub fn iter(self) -> impl Iterator<Item = Gate> {
        ORDER
            .into_iter()
            .map(|(gate, _)| gate)
            .filter(move |gate| self.has(*gate))
    }

    /// The codes of the shut gates, as stored and sent.
    #[must_use]
    pub fn codes(self) -> Vec<&'static str> {
        ORDER
            .into_iter()
            .filter(|(gate, _)| self.has(*gate))
            .map(|(_, code)| code)
            .collect()
    }

    /// The gate that a code means.
    #[must_use]
    pub fn gate(code: &str) -> Option<Gate> {
        ORDER
            .into_iter()
            .find(|(_, known)| *known == code)
            .map(|(gate, _)| gate)
    }

    /// The code of a gate.
    #[must_use]
    pub fn code(gate: Gate) -> &'static str {
        ORDER
            .into_iter()
            .find(|(known, _)| *known == gate)
            .map_or("hand", |(_, code)| code)
    }
}

impl fmt::Debug for Gates {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(self.codes()).finish()
    }
}
