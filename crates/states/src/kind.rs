//! Kinds of item and the ladder of states each kind moves on.

/// What sort of thing can be out of its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A part that is on or off.
    Part,
    /// A cover, shield, tray or duct.
    Cover,
    /// A hose or pipe.
    Hose,
    /// A gasket, O-ring or sealing washer.
    Seal,
    /// A drive belt.
    Belt,
    /// A counted group of bolts, nuts, screws or clamps that are tightened.
    Fasteners,
    /// A counted group that only snaps on: it has no tight.
    Clips,
    /// An electrical connector.
    Connector,
    /// A fluid, which is at its level or low.
    Fluid,
    /// Work that a move made due: clean the face, bleed, relearn.
    Work,
    /// A thing put into the vehicle for the work: a clamp, a plug, a rag, a lamp.
    PutIn,
}

/// Where one piece of an item stands on its ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum State {
    /// Part, cover, hose, seal, belt or clip in its place.
    On,
    /// Part, cover, hose, seal or belt out of its place.
    Off,
    /// Fastener at its torque, or "snug, checked" where no torque is given.
    Tight,
    /// Fastener turned free but still holding.
    Cracked,
    /// Fastener or clip removed.
    Out,
    /// Fastener on but not tight, after so many passes of its torque pattern.
    Loose {
        /// Passes of the pattern already done on this piece.
        passes: u8,
    },
    /// Fastener that snapped or is stuck.
    Stub {
        /// A stuck piece still holds; a snapped one does not.
        holds: bool,
    },
    /// Connector in its socket.
    Plugged,
    /// Connector out of its socket.
    Unplugged,
    /// Fluid at its level.
    AtLevel,
    /// Fluid below its level.
    Low,
    /// Work carried out.
    Done,
    /// Work still owed.
    Due,
    /// Put-in that is out of the vehicle.
    Outside,
    /// Put-in that is inside the vehicle.
    Inside,
}

impl Kind {
    /// Every kind, in the order of the declaration.
    pub const ALL: [Kind; 11] = [
        Kind::Part,
        Kind::Cover,
        Kind::Hose,
        Kind::Seal,
        Kind::Belt,
        Kind::Fasteners,
        Kind::Clips,
        Kind::Connector,
        Kind::Fluid,
        Kind::Work,
        Kind::PutIn,
    ];

    /// The state in which an item of this kind belongs, if nothing else is known.
    #[must_use]
    pub fn home(self) -> State {
        match self {
            Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt | Kind::Clips => {
                State::On
            }
            Kind::Fasteners => State::Tight,
            Kind::Connector => State::Plugged,
            Kind::Fluid => State::AtLevel,
            Kind::Work => State::Done,
            Kind::PutIn => State::Outside,
        }
    }

    /// The state farthest from home that work usually brings it to.
    #[must_use]
    pub fn away(self) -> State {
        match self {
            Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt => State::Off,
            Kind::Fasteners | Kind::Clips => State::Out,
            Kind::Connector => State::Unplugged,
            Kind::Fluid => State::Low,
            Kind::Work => State::Due,
            Kind::PutIn => State::Inside,
        }
    }

    /// The states on this kind's ladder, from home outwards.
    #[must_use]
    pub fn states(self) -> &'static [State] {
        const FASTENERS: &[State] = &[
            State::Tight,
            State::Cracked,
            State::Out,
            State::Loose { passes: 0 },
            State::Stub { holds: true },
            State::Stub { holds: false },
        ];
        match self {
            Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt => {
                &[State::On, State::Off]
            }
            Kind::Fasteners => FASTENERS,
            Kind::Clips => &[State::On, State::Out],
            Kind::Connector => &[State::Plugged, State::Unplugged],
            Kind::Fluid => &[State::AtLevel, State::Low],
            Kind::Work => &[State::Done, State::Due],
            Kind::PutIn => &[State::Outside, State::Inside],
        }
    }

    /// The single steps of this kind's ladder, as (from, to).
    ///
    /// Passes of a torque pattern all stand on the rung "on, not tight"; a piece
    /// may snap or be found stuck from wherever it is, which is found, not done,
    /// and so is no step.
    #[must_use]
    pub fn steps(self) -> &'static [(State, State)] {
        const LOOSE: State = State::Loose { passes: 0 };
        match self {
            Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt => {
                &[(State::On, State::Off), (State::Off, State::On)]
            }
            Kind::Fasteners => &[
                (State::Tight, State::Cracked),
                (State::Cracked, State::Out),
                (State::Cracked, State::Tight),
                (State::Out, LOOSE),
                (LOOSE, State::Tight),
                (LOOSE, State::Out),
            ],
            Kind::Clips => &[(State::On, State::Out), (State::Out, State::On)],
            Kind::Connector => &[
                (State::Plugged, State::Unplugged),
                (State::Unplugged, State::Plugged),
            ],
            Kind::Fluid => &[(State::AtLevel, State::Low), (State::Low, State::AtLevel)],
            Kind::Work => &[(State::Done, State::Due), (State::Due, State::Done)],
            Kind::PutIn => &[
                (State::Outside, State::Inside),
                (State::Inside, State::Outside),
            ],
        }
    }

    /// Whether pieces of this kind are counted and placed by position.
    #[must_use]
    pub fn is_counted(self) -> bool {
        matches!(self, Kind::Fasteners | Kind::Clips)
    }
}

impl State {
    /// The rung this state stands on: passes of a torque pattern share one.
    #[must_use]
    pub fn rung(self) -> State {
        match self {
            State::Loose { .. } => State::Loose { passes: 0 },
            other => other,
        }
    }

    /// Whether the piece is in its place, tight or not: a stuck stub still is.
    #[must_use]
    pub fn in_place(self) -> bool {
        matches!(
            self,
            State::On
                | State::Tight
                | State::Cracked
                | State::Loose { .. }
                | State::Stub { holds: true }
                | State::Plugged
                | State::AtLevel
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_ladder_is_connected_and_names_only_its_own_states() {
        for kind in Kind::ALL {
            for (from, to) in kind.steps() {
                assert!(kind.states().contains(from), "{kind:?}: {from:?}");
                assert!(kind.states().contains(to), "{kind:?}: {to:?}");
                assert_ne!(from, to);
            }
            let mut reached = vec![kind.home()];
            while let Some((_, next)) = kind
                .steps()
                .iter()
                .find(|(from, to)| reached.contains(from) && !reached.contains(to))
            {
                reached.push(*next);
            }
            assert!(reached.contains(&kind.away()), "{kind:?} cannot leave home");
            assert!(
                kind.steps().iter().any(|(_, to)| *to == kind.home()),
                "{kind:?} cannot come home"
            );
        }
    }

    #[test]
    fn a_stub_is_reached_by_no_step() {
        let to_stub = Kind::Fasteners
            .steps()
            .iter()
            .filter(|(_, to)| matches!(to, State::Stub { .. }));
        assert_eq!(to_stub.count(), 0);
    }
}
