//! The sources that workings name.

use measure::{Grade, Source};

pub(crate) fn basic_profile() -> Source {
    Source::new("ISO 68-1 and ISO 724", "basic profile", Grade::Published)
}

pub(crate) fn unified_profile() -> Source {
    Source::new("ASME B1.1", "basic dimensions, UNR root", Grade::Published)
}

pub(crate) fn stress_area_metric() -> Source {
    Source::new("ISO 898-1", "nominal stress area", Grade::Published)
}

pub(crate) fn iso_898_1() -> Source {
    Source::new(
        "ISO 898-1",
        "tables of minimum ultimate and proof loads, coarse pitch",
        Grade::Published,
    )
}

pub(crate) fn iso_898_1_stresses() -> Source {
    Source::new(
        "ISO 898-1",
        "minimum stresses by property class",
        Grade::Memory,
    )
}

pub(crate) fn iso_3506() -> Source {
    Source::new(
        "ISO 3506-1",
        "austenitic grades, classes 50, 70, 80 and 100",
        Grade::Published,
    )
}

pub(crate) fn sae_j429() -> Source {
    Source::new("SAE J429", "table 1", Grade::Published)
}

pub(crate) fn iso_898_7() -> Source {
    Source::new(
        "ISO 898-7:1992",
        "table of minimum breaking torques; new bolt, pure twist",
        Grade::Memory,
    )
}

pub(crate) fn strip_areas() -> Source {
    Source::new(
        "FED-STD-H28/2",
        "stripping areas with tolerance limits",
        Grade::Published,
    )
}

/// The charts that were read cover M5 to M20.
pub(crate) fn tap_drills(diameter_mm: f64) -> Source {
    let grade = if (5.0..=20.0).contains(&diameter_mm) {
        Grade::Published
    } else {
        Grade::Memory
    };
    Source::new("ISO 2306", "drills before tapping", grade)
}

/// The charts that were read cover #10 to 1/2, and print another drill than I for 5/16-24.
pub(crate) fn us_tap_drills(diameter_in: f64, drill: &str) -> Source {
    let grade = if (0.19..=0.5).contains(&diameter_in) && drill != "I" {
        Grade::Published
    } else {
        Grade::Memory
    };
    Source::new("US tap drill chart", "usual sizes", grade)
}

pub(crate) fn motosh() -> Source {
    Source::new(
        "Motosh",
        "torque from pitch, thread friction and friction under the head",
        Grade::Published,
    )
}

pub(crate) fn iso_16047() -> Source {
    Source::new("ISO 16047", "torque and clamp force", Grade::Published)
}

pub(crate) fn short_form() -> Source {
    Source::new("short form", "T = K F d", Grade::Published)
}

pub(crate) fn vdi_2230_friction() -> Source {
    Source::new(
        "VDI 2230-1",
        "friction classes A to E, guide values",
        Grade::Published,
    )
}

pub(crate) fn adapter() -> Source {
    Source::new("US Army TM 9-254", "figures 4-5 and 4-6", Grade::Published)
}

pub(crate) fn practice(detail: &str) -> Source {
    Source::new("shop practice", detail, Grade::CommonPractice)
}
