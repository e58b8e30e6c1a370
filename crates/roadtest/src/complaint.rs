//! What a complaint needs to show itself, read from the customer's words.

mod amounts;

use crate::judge::CheckName;
use crate::phrases::judge as say;
use amounts::{Amount, amounts};
use std::collections::BTreeSet;

/// What has to be driven.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Need {
    /// Minutes at motorway speed in one go.
    Motorway(f64),
    /// Minutes of stop and go.
    Town(f64),
    /// Minutes standing, engine running.
    Standing(f64),
    /// Minutes with the engine running.
    Driving(f64),
    /// A road speed, km/h.
    Above(f64),
    /// Kilometres.
    Distance(f64),
    /// A cold start.
    Cold,
    /// Warmed through.
    Hot,
    /// Uphill or towing: engine load stands for it.
    Load,
    /// Revs, 1/min.
    Revs(f64),
    /// What no log tells.
    NotRecorded(&'static str),
}

impl Need {
    pub(crate) fn name(&self) -> &'static str {
        match self {
            Need::Motorway(_) => "motorway",
            Need::Town(_) => "town",
            Need::Standing(_) => "standing",
            Need::Driving(_) => "driving",
            Need::Above(_) => "speed",
            Need::Distance(_) => "distance",
            Need::Cold => "first",
            Need::Hot => "warm",
            Need::Load => "loaded",
            Need::Revs(_) => "revs",
            Need::NotRecorded(what) => what,
        }
    }

    pub(crate) fn unit(&self) -> &'static str {
        match self {
            Need::Above(_) => "km/h",
            Need::Distance(_) => "km",
            Need::Cold => "°C",
            Need::Revs(_) => "1/min",
            Need::NotRecorded(_) => "",
            _ => "min",
        }
    }

    pub(crate) fn said(&self) -> String {
        match self {
            Need::Motorway(min) => say::need_motorway(format!("{min:.0}")),
            Need::Town(min) => say::need_town(format!("{min:.0}")),
            Need::Standing(min) => say::need_standing(format!("{min:.0}")),
            Need::Driving(min) => say::need_driving(format!("{min:.0}")),
            Need::Above(kmh) => say::need_above(format!("{kmh:.0}")),
            Need::Distance(km) => format!("{km:.0} km"),
            Need::Cold => say::need_cold().to_owned(),
            Need::Hot => say::need_hot().to_owned(),
            Need::Load => say::need_load().to_owned(),
            Need::Revs(rpm) => format!("{rpm:.0} 1/min"),
            Need::NotRecorded(what) => not_recorded(what).to_owned(),
        }
    }
}

/// What no log tells, as a person reads it.
fn not_recorded(what: &str) -> &str {
    match what {
        "the air conditioning on" => say::with_the_air_conditioning_on(),
        "the heater on" => say::with_the_heater_on(),
        "rain" => say::with_rain(),
        "a rough road" => say::with_a_rough_road(),
        "braking" => say::with_braking(),
        "steering" => say::with_steering(),
        "lamps and other consumers on" => say::with_lamps_and_other_consumers_on(),
        other => other,
    }
}

/// A complaint, understood as far as it goes.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Complaint {
    pub(crate) needs: Vec<Need>,
    checks: BTreeSet<CheckName>,
}

/// Where words point to checks.
const SYMPTOMS: [(&[&str], &[CheckName]); 7] = [
    (
        &[
            "overheat",
            "too hot",
            "runs hot",
            "gets hot",
            "boil",
            "temperature climbs",
            "in the red",
            "gauge high",
            "steam",
        ],
        &[CheckName::Overheating, CheckName::Band, CheckName::Air],
    ),
    (
        &[
            "no heat",
            "heater cold",
            "heater blows cold",
            "stays cold",
            "never warms",
            "slow to warm",
            "warm-up",
            "warms up",
        ],
        &[CheckName::WarmUp, CheckName::Thermostat, CheckName::Band],
    ),
    (
        &[
            "gurgl",
            "bubbl",
            "air in",
            "loses coolant",
            "coolant loss",
            "spike",
        ],
        &[CheckName::Air, CheckName::Overheating],
    ),
    (
        &[
            "battery light",
            "battery lamp",
            "charging",
            "alternator",
            "dims",
            "dim light",
        ],
        &[CheckName::Charging],
    ),
    (
        &[
            "fan never",
            "fan does not",
            "fan doesn't",
            "fan runs",
            "fan not",
        ],
        &[CheckName::Fan, CheckName::Overheating],
    ),
    (
        &[
            "check engine",
            "engine light",
            "engine lamp",
            "warning light",
            "mil ",
            "p0",
        ],
        &[CheckName::Codes],
    ),
    (
        &[
            "hunts",
            "rough",
            "surge",
            "stumble",
            "hesitat",
            "smell of fuel",
            "fuel consumption",
            "lean",
            "rich",
        ],
        &[CheckName::Trims],
    ),
];

/// What a complaint may name that no log tells.
const NOT_RECORDED: [(&[&str], &str); 7] = [
    (
        &["air conditioning", "a/c", "aircon", "air con"],
        "the air conditioning on",
    ),
    (&["heater on", "heating on", "blower"], "the heater on"),
    (&["rain", "wet road", "damp"], "rain"),
    (&["bump", "pothole", "rough road"], "a rough road"),
    (&["brak"], "braking"),
    (
        &[
            "turning left",
            "turning right",
            "in corners",
            "cornering",
            "steering",
        ],
        "steering",
    ),
    (
        &["headlights", "lights on", "rear window"],
        "lamps and other consumers on",
    ),
];

const MOTORWAY: [&str; 6] = [
    "motorway",
    "highway",
    "freeway",
    "autobahn",
    "interstate",
    "expressway",
];
const TOWN: [&str; 5] = ["town", "city", "stop and go", "stop-and-go", "traffic"];
const STANDING: [&str; 8] = [
    "idle",
    "idling",
    "standing",
    "stationary",
    "at lights",
    "at the lights",
    "parked",
    "waiting",
];
const COLD: [&str; 6] = [
    "cold start",
    "when cold",
    "while cold",
    "first start",
    "in the morning",
    "from cold",
];
const HOT: [&str; 6] = [
    "when hot",
    "when warm",
    "once warm",
    "once hot",
    "warmed up",
    "fully warm",
];
const LOAD: [&str; 9] = [
    "uphill",
    "hill",
    "towing",
    "trailer",
    "under load",
    "mountain",
    "climb ",
    "climbing a",
    "full throttle",
];

impl Complaint {
    /// Reads it; what is not understood is left out.
    pub(crate) fn read(words: &str) -> Complaint {
        let text = words.to_lowercase();
        let has = |list: &[&str]| list.iter().any(|word| text.contains(word));
        let amounts = amounts(&text);
        let minutes = amounts.iter().find_map(|(value, kind)| match kind {
            Amount::Minutes => Some(*value),
            _ => None,
        });
        let mut needs = Vec::new();
        if has(&MOTORWAY) {
            needs.push(Need::Motorway(minutes.unwrap_or(10.0)));
        }
        if has(&TOWN) {
            let own = if has(&MOTORWAY) { None } else { minutes };
            needs.push(Need::Town(own.unwrap_or(5.0)));
        }
        if has(&STANDING) {
            let own = if has(&MOTORWAY) || has(&TOWN) {
                None
            } else {
                minutes
            };
            needs.push(Need::Standing(own.unwrap_or(5.0)));
        }
        if let (Some(minutes), true) = (minutes, needs.is_empty()) {
            needs.push(Need::Driving(minutes));
        }
        for (value, kind) in &amounts {
            match kind {
                Amount::Kmh => needs.push(Need::Above(*value)),
                Amount::Kilometres => needs.push(Need::Distance(*value)),
                Amount::Rpm => needs.push(Need::Revs(*value)),
                Amount::Minutes => {}
            }
        }
        for (list, need) in [
            (COLD.as_slice(), Need::Cold),
            (HOT.as_slice(), Need::Hot),
            (LOAD.as_slice(), Need::Load),
        ] {
            if has(list) {
                needs.push(need);
            }
        }
        for (list, what) in NOT_RECORDED {
            if has(list) {
                needs.push(Need::NotRecorded(what));
            }
        }
        let checks = SYMPTOMS
            .iter()
            .filter(|(list, _)| has(list))
            .flat_map(|(_, checks)| checks.iter().copied())
            .collect();
        Complaint { needs, checks }
    }

    /// Whether the complaint points at this check.
    pub(crate) fn touches(&self, check: CheckName) -> bool {
        self.checks.contains(&check)
    }

    /// Whether it points at any.
    pub(crate) fn names_checks(&self) -> bool {
        !self.checks.is_empty()
    }

    /// What has to be driven, in words.
    pub(crate) fn asked(&self) -> String {
        let said: Vec<String> = self.needs.iter().map(Need::said).collect();
        said.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn needs(words: &str) -> Vec<Need> {
        Complaint::read(words).needs
    }

    #[test]
    fn complaints_in_plain_words() {
        assert_eq!(
            needs("comes on after 20 min of motorway"),
            [Need::Motorway(20.0)]
        );
        assert_eq!(needs("overheats at idle"), [Need::Standing(5.0)]);
        assert_eq!(
            needs("after half an hour of driving"),
            [Need::Driving(30.0)]
        );
        assert_eq!(needs("shakes above 60 mph"), [Need::Above(96.560_64)]);
        assert_eq!(
            needs("loses power uphill when hot"),
            [Need::Hot, Need::Load]
        );
        assert_eq!(needs("after 10-15 minutes in traffic"), [Need::Town(15.0)]);
        assert_eq!(needs("light on, cold start"), [Need::Cold]);
        assert_eq!(needs("after 15km"), [Need::Distance(15.0)]);
        assert_eq!(needs("noise"), []);
        assert_eq!(
            needs("gets hot with the a/c on"),
            [Need::NotRecorded("the air conditioning on")]
        );
    }

    #[test]
    fn complaints_point_at_checks() {
        let complaint = Complaint::read("overheats in traffic");
        assert!(
            complaint.touches(CheckName::Overheating) && !complaint.touches(CheckName::Charging)
        );
        assert!(!Complaint::read("comes on after 20 min of motorway").names_checks());
    }
}
