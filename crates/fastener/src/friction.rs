//! Friction in threads and under heads, as the range it comes in.

use crate::phrases::torque as say;
use crate::sources;
use measure::{Range, Source};

/// What a bolt's surface is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Finish {
    /// Bare, blackened or phosphated steel.
    Plain,
    /// Zinc or zinc alloy, plated or flake.
    Zinc,
    Stainless,
}

/// What is between the surfaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lubrication {
    Dry,
    /// Oil, grease, wax, or liquid thread sealant while wet.
    Oiled,
    /// Molybdenum disulphide, graphite or copper paste.
    Paste,
}

/// The state that a torque is meant for. Two torques for different states never stand in for
/// one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Condition {
    pub finish: Finish,
    pub lubrication: Lubrication,
}

/// Said where torque is worked out for another state than it was given for.
#[must_use]
pub fn dry_is_not_oiled() -> &'static str {
    say::dry_is_not_oiled()
}

impl Condition {
    /// Coefficient of friction, in the thread and under the head alike.
    ///
    /// Returns the guide values of VDI 2230: least, middle and greatest.
    ///
    /// # Limits
    ///
    /// A used, rusty or galled thread can lie beyond any of them. The middle is the middle
    /// of the class, and for the open class E a guess.
    ///
    /// # Source
    ///
    /// VDI 2230-1, friction classes: paste A, oiled B (stainless D), dry C (stainless E).
    ///
    /// ```
    /// use fastener::friction::{Condition, Finish, Lubrication};
    /// let dry = Condition { finish: Finish::Plain, lubrication: Lubrication::Dry };
    /// let oiled = Condition { lubrication: Lubrication::Oiled, ..dry };
    /// assert!(oiled.friction().mid() < dry.friction().mid());
    /// ```
    pub fn friction(self) -> Range<f64> {
        let (low, mid, high) = match (self.finish, self.lubrication) {
            (Finish::Plain | Finish::Zinc, Lubrication::Paste) => (0.04, 0.07, 0.10),
            (Finish::Plain | Finish::Zinc, Lubrication::Oiled)
            | (Finish::Stainless, Lubrication::Paste) => (0.08, 0.12, 0.16),
            (Finish::Plain | Finish::Zinc, Lubrication::Dry) => (0.14, 0.19, 0.24),
            (Finish::Stainless, Lubrication::Oiled) => (0.20, 0.27, 0.35),
            (Finish::Stainless, Lubrication::Dry) => (0.30, 0.40, 0.50),
        };
        Range::new(low, mid, high).expect("the rows above rise")
    }

    /// In words.
    pub fn name(self) -> String {
        let finish = match self.finish {
            Finish::Plain => say::plain_steel(),
            Finish::Zinc => say::zinc(),
            Finish::Stainless => say::stainless(),
        };
        let state = match self.lubrication {
            Lubrication::Dry => say::dry(),
            Lubrication::Oiled => say::oiled(),
            Lubrication::Paste => say::with_paste(),
        };
        say::finish_and_state(finish, state)
    }

    /// Reads a condition such as `zinc, dry`, `oiled`, `stainless with paste`.
    ///
    /// Plain steel is meant where no finish is named; nothing where no state is: dry and
    /// oiled are never guessed.
    ///
    /// ```
    /// use fastener::friction::Condition;
    /// assert_eq!(Condition::read("zinc dry").unwrap().name(), "zinc, dry");
    /// assert!(Condition::read("zinc").is_none());
    /// ```
    pub fn read(text: &str) -> Option<Condition> {
        let text = text.to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| text.contains(word));
        let finish = if has(&["stainless", "a2", "a4"]) {
            Finish::Stainless
        } else if has(&["zinc", "zn", "galvan", "plated"]) {
            Finish::Zinc
        } else {
            Finish::Plain
        };
        let lubrication = if has(&["paste", "mos2", "moly", "copper", "anti-seize"]) {
            Lubrication::Paste
        } else if has(&["oil", "grease", "wax", "lub", "sealant", "threadlock"]) {
            Lubrication::Oiled
        } else if has(&["dry"]) {
            Lubrication::Dry
        } else {
            return None;
        };
        Some(Condition {
            finish,
            lubrication,
        })
    }

    /// Where the range comes from.
    pub fn source(self) -> Source {
        sources::vdi_2230_friction()
    }
}
