//! On whose word the lines of a working stand.

use crate::phrases as say;
use measure::{Grade, Source};

pub(crate) fn tangents() -> Source {
    Source::new(say::geometry_of_tangents(), "", Grade::Derived)
}

pub(crate) fn iso_9981() -> Source {
    Source::new(
        "ISO 9981:2020",
        "5.4: nominal line differential 2 mm for speed ratios",
        Grade::Published,
    )
}

pub(crate) fn effective_length() -> Source {
    Source::new(
        "ISO 9981",
        "effective length: twice the distance of two measuring pulleys and their effective circumference",
        Grade::Memory,
    )
}

pub(crate) fn back() -> Source {
    Source::new(
        "trade article on reading PK numbers",
        "the outside is about 14 mm longer than the effective length",
        Grade::Published,
    )
}

pub(crate) fn euler() -> Source {
    Source::new(
        "Euler-Eytelwein",
        say::friction_by_sine(),
        Grade::CommonPractice,
    )
}

pub(crate) fn virtual_work() -> Source {
    Source::new(
        say::virtual_work(),
        say::torque_times_turn(),
        Grade::Derived,
    )
}

pub(crate) fn trade() -> Source {
    Source::new(say::practice_of_the_trade(), "", Grade::CommonPractice)
}
