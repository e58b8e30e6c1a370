//! Needs in the form the search reads: how far along its way out each item must be.

use crate::bits::Bits;

/// A set of moves, by their index in the model.
pub(crate) type Set = Bits<4>;

/// A need over the moves made so far.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Rule {
    /// One item must be at one of some points of its way.
    Point(Point),
    /// Every one of these.
    All(Vec<Rule>),
    /// At least one of these.
    Any(Vec<Rule>),
}

/// Which points of an item's way satisfy.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Point {
    /// The item's moves that are still open, in their sequence.
    pub way: Vec<usize>,
    /// Bit `n`: whether it satisfies after `n` of them.
    pub holds: u8,
}

/// What a point asks for when what once held is taken to hold for ever.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Asks {
    /// It holds from the start.
    Nothing,
    /// It holds once this move has been made.
    Move(usize),
    /// It never holds.
    Impossible,
}

/// A rule as [`Rule::held`] reads it, in the form that is asked most often.
#[derive(Debug, Clone, Default)]
pub(crate) struct Held {
    /// Moves that must have been made.
    moves: Set,
    /// Of each of these, one must hold.
    one_of: Vec<Vec<Held>>,
}

impl Held {
    pub(crate) fn new(rule: &Rule) -> Self {
        let mut held = Self::default();
        held.require(rule);
        held
    }

    fn require(&mut self, rule: &Rule) {
        match rule {
            Rule::Point(point) => match point.asks() {
                Asks::Nothing => {}
                Asks::Move(asked) => self.moves.add(asked),
                Asks::Impossible => self.one_of.push(Vec::new()),
            },
            Rule::All(rules) => rules.iter().for_each(|rule| self.require(rule)),
            Rule::Any(rules) => self.one_of.push(rules.iter().map(Held::new).collect()),
        }
    }

    /// Whether there are alternatives in it.
    pub(crate) fn has_choice(&self) -> bool {
        !self.one_of.is_empty()
    }

    /// Whether it held at some time on a way that made these moves.
    pub(crate) fn by(&self, done: &Set) -> bool {
        let one = |ways: &Vec<Held>| ways.iter().any(|way| way.by(done));
        self.moves.within(done) && self.one_of.iter().all(one)
    }
}

impl Point {
    pub(crate) fn asks(&self) -> Asks {
        match self.holds.trailing_zeros() as usize {
            0 => Asks::Nothing,
            n => self
                .way
                .get(n - 1)
                .map_or(Asks::Impossible, |next| Asks::Move(*next)),
        }
    }

    fn holds_now(&self, done: &Set) -> bool {
        let made = self.way.iter().filter(|step| done.has(**step)).count();
        self.holds >> made & 1 == 1
    }

    fn may_hold(&self, done: &Set) -> bool {
        let made = self.way.iter().filter(|step| done.has(**step)).count();
        self.holds >> made != 0
    }
}

impl Rule {
    pub(crate) const ALWAYS: Rule = Rule::All(Vec::new());
    pub(crate) const NEVER: Rule = Rule::Any(Vec::new());

    /// The rule that this move has been made.
    pub(crate) fn after(made: usize) -> Rule {
        Rule::Point(Point {
            way: vec![made],
            holds: 0b10,
        })
    }

    /// Whether it holds when exactly these moves have been made.
    pub(crate) fn holds(&self, done: &Set) -> bool {
        match self {
            Rule::Point(point) => point.holds_now(done),
            Rule::All(rules) => rules.iter().all(|rule| rule.holds(done)),
            Rule::Any(rules) => rules.iter().any(|rule| rule.holds(done)),
        }
    }

    /// Whether it holds when exactly these moves have been made, or may after more of them.
    pub(crate) fn may_hold(&self, done: &Set) -> bool {
        match self {
            Rule::Point(point) => point.may_hold(done),
            Rule::All(rules) => rules.iter().all(|rule| rule.may_hold(done)),
            Rule::Any(rules) => rules.iter().any(|rule| rule.may_hold(done)),
        }
    }

    /// Whether it held at some time on a way that made these moves.
    pub(crate) fn held(&self, done: &Set) -> bool {
        match self {
            Rule::Point(point) => match point.asks() {
                Asks::Nothing => true,
                Asks::Move(asked) => done.has(asked),
                Asks::Impossible => false,
            },
            Rule::All(rules) => rules.iter().all(|rule| rule.held(done)),
            Rule::Any(rules) => rules.iter().any(|rule| rule.held(done)),
        }
    }

    /// Adds every move that it, or one of its alternatives, asks for.
    pub(crate) fn asked(&self, into: &mut Set) {
        match self {
            Rule::Point(point) => {
                if let Asks::Move(asked) = point.asks() {
                    into.add(asked);
                }
            }
            Rule::All(rules) | Rule::Any(rules) => {
                rules.iter().for_each(|rule| rule.asked(into));
            }
        }
    }

    /// Whether what once held here holds for ever.
    pub(crate) fn is_lasting(&self) -> bool {
        let mut spoilers = Set::default();
        self.spoilers(&mut spoilers);
        spoilers.is_empty()
    }

    /// Adds every move after which something that held here no longer does.
    pub(crate) fn spoilers(&self, into: &mut Set) {
        match self {
            Rule::Point(point) => {
                for (n, step) in point.way.iter().enumerate() {
                    if point.holds >> n & 0b11 == 0b01 {
                        into.add(*step);
                    }
                }
            }
            Rule::All(rules) | Rule::Any(rules) => {
                rules.iter().for_each(|rule| rule.spoilers(into));
            }
        }
    }
}
