//! What a complaint needs to show itself, read from the customer's words.

mod amounts;
mod words;

use crate::judge::CheckName;
use crate::phrases::judge as say;
use amounts::{Amount, amounts};
use std::collections::BTreeSet;
use words::{
    COLD, HOT, LOAD, MOTORWAY, NOT_RECORDED, STANDING, SYMPTOMS, TOWN, folded, says, sentences,
};

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

impl Complaint {
    /// Reads it; what is not understood is left out.
    pub(crate) fn read(words: &str) -> Complaint {
        let text = folded(words);
        let sentences = sentences(&text);
        let has = |ways| says(&sentences, ways);
        let amounts = amounts(&text);
        let minutes = amounts.iter().find_map(|(value, kind)| match kind {
            Amount::Minutes => Some(*value),
            _ => None,
        });
        let mut needs = Vec::new();
        if has(MOTORWAY) {
            needs.push(Need::Motorway(minutes.unwrap_or(10.0)));
        }
        if has(TOWN) {
            let own = if has(MOTORWAY) { None } else { minutes };
            needs.push(Need::Town(own.unwrap_or(5.0)));
        }
        if has(STANDING) {
            let own = if has(MOTORWAY) || has(TOWN) {
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
        for (list, need) in [(COLD, Need::Cold), (HOT, Need::Hot), (LOAD, Need::Load)] {
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
    fn complaints_in_plain_german() {
        for (words, wanted) in [
            ("kommt nach 20 Minuten Autobahn", vec![Need::Motorway(20.0)]),
            ("überhitzt im Stand", vec![Need::Standing(5.0)]),
            ("geht an der Ampel aus", vec![Need::Standing(5.0)]),
            ("nach einer halben Stunde Fahrt", vec![Need::Driving(30.0)]),
            ("nach einer Viertelstunde", vec![Need::Driving(15.0)]),
            ("nach anderthalb Stunden", vec![Need::Driving(90.0)]),
            ("nach 1,5 Std. Fahrt", vec![Need::Driving(90.0)]),
            ("zittert ab 120 km/h", vec![Need::Above(120.0)]),
            ("zittert bei Tempo 130", vec![Need::Above(130.0)]),
            (
                "ab 100 Sachen flattert das Lenkrad",
                vec![Need::Above(100.0), Need::NotRecorded("steering")],
            ),
            ("dröhnt bei 3.000 Umdrehungen", vec![Need::Revs(3000.0)]),
            (
                "keine Leistung bergauf, wenn er warm ist",
                vec![Need::Hot, Need::Load],
            ),
            ("nach 10 bis 15 Minuten im Stau", vec![Need::Town(15.0)]),
            ("Lampe an beim Kaltstart", vec![Need::Cold]),
            ("nur morgens", vec![Need::Cold]),
            ("nach fünfzehn Kilometern", vec![Need::Distance(15.0)]),
            ("Geräusch", vec![]),
            (
                "wird heiß mit Klimaanlage",
                vec![Need::NotRecorded("the air conditioning on")],
            ),
            (
                "zieht beim Bremsen nach links",
                vec![Need::NotRecorded("braking")],
            ),
            (
                "knackt in Rechtskurven",
                vec![Need::NotRecorded("steering")],
            ),
            (
                "poltert über Schlaglöcher",
                vec![Need::NotRecorded("a rough road")],
            ),
            (
                "springt bei Regen schlecht an",
                vec![Need::NotRecorded("rain")],
            ),
            ("mit dem Wohnwagen am Haken", vec![Need::Load]),
        ] {
            assert_eq!(needs(words), wanted, "{words}");
            // Typed without umlauts: in two letters, or without their dots.
            for plain in [
                [("ä", "ae"), ("ö", "oe"), ("ü", "ue"), ("ß", "ss")],
                [("ä", "a"), ("ö", "o"), ("ü", "u"), ("ß", "ss")],
            ] {
                let typed = plain
                    .iter()
                    .fold(words.to_owned(), |text, (from, to)| text.replace(from, to));
                assert_eq!(needs(&typed), wanted, "{typed}");
            }
        }
    }

    #[test]
    fn german_complaints_point_at_the_same_checks() {
        let same = [
            ("overheats in traffic", "überhitzt im Stadtverkehr"),
            (
                "the gauge goes in the red",
                "die Nadel geht in den roten Bereich",
            ),
            ("it boils over", "er kocht über"),
            ("no heat", "die Heizung wird nicht warm"),
            ("heater blows cold", "bläst nur kalt"),
            ("never warms up", "wird nie warm"),
            ("it gurgles", "es gluckert hinter dem Armaturenbrett"),
            ("loses coolant", "verliert Kühlmittel"),
            ("battery light is on", "die Batterieleuchte geht an"),
            ("alternator not charging", "Lichtmaschine lädt nicht"),
            ("the fan never comes on", "der Lüfter springt nicht an"),
            ("check engine lamp", "die Motorkontrollleuchte leuchtet"),
            ("code P0301", "Fehlercode P0301"),
            ("idle hunts", "der Leerlauf schwankt"),
            ("stumbles when pulling away", "ruckelt beim Anfahren"),
            ("smell of fuel", "riecht stark nach Benzin"),
            ("noise", "Geräusch"),
        ];
        let touched = |words: &str| Complaint::read(words).checks;
        for (english, german) in same {
            assert_eq!(touched(german), touched(english), "{german}");
            let typed = german
                .replace('ä', "ae")
                .replace('ö', "oe")
                .replace('ü', "ue");
            assert_eq!(touched(&typed), touched(english), "{typed}");
        }
    }

    #[test]
    fn words_that_only_look_alike_point_at_nothing() {
        for words in [
            "Der Kunde sagt, es ist nicht richtig.",
            "Staub im Innenraum",
            "zum Glück nur ein Kratzer",
            "Stoßdämpfer undicht, Dämpfer hinten",
            "damper squeaks over the bonnet",
            "the bumper is loose",
            "drained the tank",
            "Lüfter neu. Er fährt nicht.",
        ] {
            let complaint = Complaint::read(words);
            assert_eq!(complaint.needs, [], "{words}");
            assert!(!complaint.names_checks(), "{words}");
        }
        // What overheats on the road says nothing of the heating.
        assert_eq!(needs("overheating on the motorway"), [Need::Motorway(10.0)]);
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
