//! Components that opened sources name are known to the vocabulary.
//!
//! Grade published: the text was opened, as a copy or in part. Only the names are taken.

use trade::{Sure, Vocabulary, says};

/// 49 CFR 570.55 to 570.62, NHTSA (subpart B; read in part on copies).
const CFR_570: [&str; 24] = [
    "brake hose",
    "brake tube",
    "master cylinder",
    "brake disc",
    "brake rotor",
    "brake drum",
    "brake lining",
    "brake pad",
    "brake shoe",
    "vacuum hose",
    "brake pedal",
    "wheel nut",
    "wheel bolt",
    "tire",
    "wheel",
    "coil spring",
    "shock absorber",
    "shock absorber mounting",
    "shackle",
    "U-bolt",
    "rubber bushing",
    "radius rod",
    "wheel bearing",
    "steering wheel",
];

/// MOT inspection manual, DVSA, sections 1.1 and 5 (read in part), and MOT changes from May 2018:
/// axles to chassis and attachments, DVSA, 2019 (read).
const MOT: [&str; 25] = [
    "axle beam",
    "stub axle",
    "swivel pin",
    "king pin",
    "wheel bearing",
    "wheel hub cap",
    "spare wheel",
    "spring",
    "shock absorber",
    "suspension arm",
    "suspension joint",
    "service brake pedal",
    "parking brake lever",
    "fuel tank shield",
    "exhaust shield",
    "bumper",
    "spare wheel carrier",
    "towbar",
    "seat",
    "tyre pressure monitoring sensor",
    "driveshaft gaiter",
    "ball joint dust cover",
    "prop shaft",
    "split pin tie rod",
    "trailer electrical socket",
];

#[test]
fn components_of_opened_sources_are_known() {
    let unknown: Vec<&str> = CFR_570
        .into_iter()
        .chain(MOT)
        .filter(|line| {
            says(line, Vocabulary::shipped())
                .iter()
                .any(|said| said.sure == Sure::Unknown)
        })
        .collect();
    assert!(unknown.is_empty(), "{unknown:?}");
}
