//! Where on the vehicle a thing sits, as people say it.

/// A side: any of front, rear, left and right, or one of the words that stand alone.
///
/// Driver and passenger are kept as said: which side they sit on depends on the market.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Side {
    FrontLeft,
    FrontRight,
    RearLeft,
    RearRight,
    Front,
    Rear,
    Left,
    Right,
    Both,
    All,
    Upper,
    Lower,
    Driver,
    Passenger,
}

use Side as S;

const CODES: [(Side, &str); 14] = [
    (S::FrontLeft, "front-left"),
    (S::FrontRight, "front-right"),
    (S::RearLeft, "rear-left"),
    (S::RearRight, "rear-right"),
    (S::Front, "front"),
    (S::Rear, "rear"),
    (S::Left, "left"),
    (S::Right, "right"),
    (S::Both, "both"),
    (S::All, "all"),
    (S::Upper, "upper"),
    (S::Lower, "lower"),
    (S::Driver, "driver"),
    (S::Passenger, "passenger"),
];

impl Side {
    /// The code, as stored and sent.
    #[must_use]
    pub fn code(self) -> &'static str {
        CODES
            .into_iter()
            .find(|(side, _)| *side == self)
            .map_or("", |(_, code)| code)
    }

    /// The side that a code means.
    #[must_use]
    pub fn read(code: &str) -> Option<Side> {
        CODES
            .into_iter()
            .find(|(_, known)| *known == code)
            .map(|(side, _)| side)
    }

    /// Front or rear, where it says so.
    fn end(self) -> Option<bool> {
        match self {
            S::FrontLeft | S::FrontRight | S::Front => Some(true),
            S::RearLeft | S::RearRight | S::Rear => Some(false),
            _ => None,
        }
    }

    /// Left or right, where it says so.
    fn flank(self) -> Option<bool> {
        match self {
            S::FrontLeft | S::RearLeft | S::Left => Some(true),
            S::FrontRight | S::RearRight | S::Right => Some(false),
            _ => None,
        }
    }

    /// Which of two says more: a corner before an end, an end before a height.
    fn weight(self) -> u8 {
        match self {
            S::FrontLeft | S::FrontRight | S::RearLeft | S::RearRight => 6,
            S::All => 5,
            S::Driver | S::Passenger => 5,
            S::Front | S::Rear | S::Left | S::Right => 4,
            S::Both => 3,
            S::Upper | S::Lower => 2,
        }
    }

    /// Two words about one thing, put together.
    #[must_use]
    pub fn join(self, other: Side) -> Side {
        if self == other {
            return self;
        }
        let (end, flank) = match (self.end(), self.flank(), other.end(), other.flank()) {
            (Some(a), _, Some(b), _) if a != b => return S::All,
            (_, Some(a), _, Some(b)) if a != b => {
                return self
                    .end()
                    .or(other.end())
                    .map_or(S::Both, |front| if front { S::Front } else { S::Rear });
            }
            (a, c, b, d) => (a.or(b), c.or(d)),
        };
        let plain = |side: Side| side.end().is_some() || side.flank().is_some();
        if plain(self) && plain(other) {
            return match (end, flank) {
                (Some(true), Some(true)) => S::FrontLeft,
                (Some(true), Some(false)) => S::FrontRight,
                (Some(false), Some(true)) => S::RearLeft,
                (Some(false), Some(false)) => S::RearRight,
                _ => self,
            };
        }
        if other.weight() > self.weight() {
            other
        } else {
            self
        }
    }

    /// Whether something said of this side may hold for the other: "wheel nuts" for every
    /// wheel, "front" for front left, but "front left" never for rear right.
    #[must_use]
    pub fn may_mean(this: Option<Side>, other: Option<Side>) -> bool {
        let (Some(a), Some(b)) = (this, other) else {
            return this.is_none() || other.is_none();
        };
        let fits = |x: Option<bool>, y: Option<bool>| x.is_none() || y.is_none() || x == y;
        fits(a.end(), b.end()) && fits(a.flank(), b.flank())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_one_corner_join() {
        assert_eq!(S::Front.join(S::Left), S::FrontLeft);
        assert_eq!(S::Right.join(S::Rear), S::RearRight);
        assert_eq!(S::Lower.join(S::FrontRight), S::FrontRight);
        assert_eq!(S::Front.join(S::Rear), S::All);
        assert_eq!(S::Left.join(S::Right), S::Both);
        assert_eq!(S::Front.join(S::Both), S::Front);
    }
}
