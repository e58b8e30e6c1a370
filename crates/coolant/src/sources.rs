//! On whose word the lines of a working stand.

use crate::phrases as say;
use measure::{Grade, Source};

pub(crate) fn melinder() -> Source {
    Source::new(
        "Melinder, Properties of Secondary Working Fluids for Indirect Systems (IIR, 2010)",
        "coefficients as tabulated in CoolProp 8.0.0",
        Grade::OtherImplementation,
    )
}

pub(crate) fn if97() -> Source {
    Source::new(
        "IAPWS R7-97(2012), Industrial Formulation 1997",
        "region 4, equations 30 and 31",
        Grade::Published,
    )
}

pub(crate) fn atmosphere() -> Source {
    Source::new(
        "U.S. Standard Atmosphere, 1976",
        "layer from 0 to 11 km, equation 33a",
        Grade::Published,
    )
}

pub(crate) fn raoult() -> Source {
    Source::new(
        say::raoults_law(),
        say::taken_as_not_boiling(),
        Grade::CommonPractice,
    )
}

pub(crate) fn handbook() -> Source {
    Source::new(
        "CRC Handbook of Chemistry and Physics",
        "densities at 20 °C",
        Grade::Memory,
    )
}

pub(crate) fn ideal_gas() -> Source {
    Source::new(
        say::ideal_gas_law(),
        say::stays_the_same(),
        Grade::CommonPractice,
    )
}

pub(crate) fn least_squares() -> Source {
    Source::new(
        "NIST/SEMATECH e-Handbook of Statistical Methods",
        "section 4.1.4.1, linear least squares",
        Grade::Memory,
    )
}

pub(crate) fn mass_balance() -> Source {
    Source::new(
        say::balance_of_glycol(),
        say::in_out_and_added(),
        Grade::Derived,
    )
}

pub(crate) fn tables_compared() -> Source {
    Source::new(
        say::tables_compared(),
        "ASTM D1177 chart, ASHRAE, Lange's Handbook, makers' manuals and three bought coolants",
        Grade::Published,
    )
}

pub(crate) fn bought_density() -> Source {
    Source::new(
        say::tables_compared(),
        "ASTM D3306 concentrates, ASHRAE density table, makers' data",
        Grade::Memory,
    )
}

pub(crate) fn strong_points() -> Source {
    Source::new(
        "operator manual coolant table; service bulletin T 86-30",
        "60 % by volume; 69 % antifreeze",
        Grade::Published,
    )
}
