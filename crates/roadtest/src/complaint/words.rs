//! The words that a complaint is understood by, in every language the program speaks.
//!
//! A way of saying something begins at a word's start and may end within a word: `brems` is found in
//! `bremst` and in `Bremspedal`. A blank at its end asks for the whole word. Two dots stand for any
//! words between, in the same sentence. Umlauts are written without their dots, as [`folded`] leaves
//! them.

use crate::judge::CheckName;

/// Ways of saying one thing.
pub(super) type Ways = &'static [&'static str];

/// Where words point to checks.
pub(super) const SYMPTOMS: [(Ways, &[CheckName]); 7] = [
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
            // German.
            "uberhitz",
            "zu heiss",
            "zu warm",
            "wird .. heiss",
            "lauft .. heiss",
            "heiss gelaufen",
            "heissgelaufen",
            "kocht",
            "uberkoch",
            "ubergekocht",
            "temperatur steigt",
            "temperatur .. hoch",
            "temperaturanzeige .. hoch",
            "temperaturanzeige steigt",
            "temperaturnadel",
            "roten bereich",
            "im roten",
            "ins rote",
            "dampf ",
            "dampft",
            "dampfwolke",
            "wasserdampf",
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
            // German.
            "keine heizung",
            "heizung geht nicht",
            "heizung .. kalt",
            "heizung .. nicht warm",
            "heizt nicht",
            "heizt kaum",
            "keine warme luft",
            "blast .. kalt",
            "nur kalte luft",
            "bleibt kalt",
            "nie warm",
            "wird nicht warm",
            "wird kaum warm",
            "nicht richtig warm",
            "langsam warm",
            "dauert lange .. warm",
            "braucht lange .. warm",
            "warmlauf",
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
            // German.
            "gluckert",
            "gluckern",
            "gluckst",
            "glucksen",
            "blubber",
            "blasen im",
            "wirft blasen",
            "luft im kuhl",
            "luft im system",
            "luft im wasser",
            "verliert kuhl",
            "verliert wasser",
            "verbraucht kuhl",
            "verbraucht wasser",
            "kuhlmittelverlust",
            "kuhlwasserverlust",
            "wasserverlust",
            "kuhlmittel fehlt",
            "kuhlwasser fehlt",
            "kuhlmittel .. nachfull",
            "kuhlwasser .. nachfull",
            "kuhlmittel .. nachgefull",
            "kuhlwasser .. nachgefull",
            "temperatur springt",
            "temperatur schwankt",
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
            // German.
            "batterieleuchte",
            "batterielampe",
            "batteriesymbol",
            "batteriekontroll",
            "batterie .. leuchtet",
            "batterie .. leer",
            "ladekontroll",
            "ladeleuchte",
            "ladelampe",
            "ladestrom",
            "ladespannung",
            "ladt .. nicht",
            "lichtmaschine",
            "lima ",
            "generator",
            "licht .. dunkl",
            "licht .. schwach",
            "licht flackert",
            "scheinwerfer .. dunkl",
            "scheinwerfer .. schwach",
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
            // German.
            "lufter lauft",
            "lufter springt",
            "lufter geht",
            "lufter dreht",
            "lufter .. nicht",
            "lufter .. nie",
            "ventilator lauft",
            "ventilator .. nicht",
            "ventilator .. nie",
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
            // German.
            "motorleuchte",
            "motorlampe",
            "motorwarn",
            "motorkontroll",
            "mkl ",
            "warnleuchte",
            "warnlampe",
            "kontrollleuchte",
            "kontrolleuchte",
            "kontrolllampe",
            "kontrollampe",
            "abgasleuchte",
            "gelbe lampe",
            "gelbe leuchte",
            "fehlercode",
            "fehlerspeicher",
            "fehlermeldung",
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
            "lean ",
            "rich ",
            // German.
            "leerlauf schwankt",
            "leerlauf .. unruhig",
            "leerlauf sagt",
            "drehzahl schwankt",
            "drehzahl sagt",
            "motor sagt",
            "lauft .. unruhig",
            "unrund",
            "ruckel",
            "stotter",
            "verschluckt",
            "nimmt .. gas",
            "gasloch",
            "zogert",
            "riecht .. benzin",
            "riecht .. diesel",
            "riecht .. sprit",
            "riecht .. kraftstoff",
            "benzingeruch",
            "kraftstoffgeruch",
            "spritverbrauch",
            "kraftstoffverbrauch",
            "benzinverbrauch",
            "hoher verbrauch",
            "hohen verbrauch",
            "verbraucht .. sprit",
            "verbraucht .. benzin",
            "verbraucht .. diesel",
            "verbraucht .. kraftstoff",
            "sauft",
            "zu mager",
            "zu fett",
        ],
        &[CheckName::Trims],
    ),
];

/// What a complaint may name that no log tells.
pub(super) const NOT_RECORDED: [(Ways, &str); 7] = [
    (
        &["air conditioning", "a/c", "aircon", "air con", "klima"],
        "the air conditioning on",
    ),
    (
        &[
            "heater on",
            "heating on",
            "blower",
            "heizung an",
            "heizung lauft",
            "heizung eingeschaltet",
            "mit heizung",
            "geblase",
        ],
        "the heater on",
    ),
    (
        &[
            "rain",
            "wet road",
            "damp ",
            "regen ",
            "regnet",
            "regenwetter",
            "bei nasse",
            "nasse strasse",
            "nasser strasse",
            "nassen strasse",
            "feucht",
        ],
        "rain",
    ),
    (
        &[
            "bump ",
            "bumps",
            "bumpy",
            "pothole",
            "rough road",
            "schlagloch",
            "bodenwelle",
            "schlechte strasse",
            "schlechter strasse",
            "schlechten strasse",
            "pflaster",
            "kopfstein",
            "unebenheit",
            "unebene",
            "holprig",
            "huckel",
            "holperstrecke",
        ],
        "a rough road",
    ),
    (
        &[
            "brak",
            "brems",
            "gebrems",
            "abbrems",
            "anbrems",
            "abgebrems",
            "angebrems",
            "vollbrems",
        ],
        "braking",
    ),
    (
        &[
            "turning left",
            "turning right",
            "in corners",
            "cornering",
            "steering",
            "lenk",
            "einlenk",
            "einschlag",
            "eingeschlagen",
            "kurve",
            "linkskurve",
            "rechtskurve",
            "abbieg",
            "rangier",
            "einpark",
        ],
        "steering",
    ),
    (
        &[
            "headlights",
            "lights on",
            "rear window",
            "licht an ",
            "licht eingeschaltet",
            "mit licht",
            "bei licht",
            "abblendlicht",
            "scheinwerfer an ",
            "heckscheibe",
            "sitzheizung",
            "verbraucher",
        ],
        "lamps and other consumers on",
    ),
];

pub(super) const MOTORWAY: Ways = &[
    "motorway",
    "highway",
    "freeway",
    "autobahn",
    "interstate",
    "expressway",
    "schnellstrasse",
    "kraftfahrstrasse",
    "stadtautobahn",
];

pub(super) const TOWN: Ways = &[
    "town",
    "downtown",
    "city",
    "stop and go",
    "traffic",
    "stadt ",
    "stadtverkehr",
    "stadtfahrt",
    "innenstadt",
    "innerorts",
    "ortsverkehr",
    "verkehr ",
    "berufsverkehr",
    "feierabendverkehr",
    "stau ",
    "staus ",
    "stopp and go",
    "stop & go",
    "stop und go",
    "stopp und go",
    "kolonne",
];

pub(super) const STANDING: Ways = &[
    "idle",
    "idling",
    "standing",
    "stationary",
    "at lights",
    "at the lights",
    "parked",
    "waiting",
    "leerlauf",
    "im stand ",
    "im stehen",
    "standgas",
    "ampel",
    "roten ampel",
    "beim warten",
    "wenn er steht",
    "wenn das auto steht",
    "wenn der wagen steht",
];

pub(super) const COLD: Ways = &[
    "cold start",
    "when cold",
    "while cold",
    "first start",
    "in the morning",
    "from cold",
    "kaltstart",
    "kalten start",
    "kalt gestartet",
    "kalter motor",
    "kaltem motor",
    "kalten motor",
    "bei kaltem",
    "wenn er kalt",
    "wenn .. kalt ist",
    "solange .. kalt",
    "im kalten zustand",
    "morgens",
    "am morgen",
    "in der fruh",
    "ersten start",
    "erster start",
    "ersten anlassen",
];

pub(super) const HOT: Ways = &[
    "when hot",
    "when warm",
    "once warm",
    "once hot",
    "warmed up",
    "fully warm",
    "wenn er warm",
    "wenn er heiss",
    "wenn .. warm ist",
    "wenn .. heiss ist",
    "sobald .. warm",
    "sobald .. heiss",
    "warmer motor",
    "warmem motor",
    "warmen motor",
    "heisser motor",
    "heissem motor",
    "heissen motor",
    "betriebswarm",
    "betriebstemperatur",
    "warmgefahren",
    "warm gefahren",
    "warmgelaufen",
    "warm gelaufen",
    "im warmen zustand",
    "im heissen zustand",
];

pub(super) const LOAD: Ways = &[
    "uphill",
    "hill",
    "towing",
    "trailer",
    "under load",
    "mountain",
    "climb ",
    "climbing a",
    "full throttle",
    "bergauf",
    "berg hoch",
    "den berg",
    "am berg",
    "steigung",
    "passstrasse",
    "gebirge",
    "anhanger",
    "hanger ",
    "wohnwagen",
    "unter last",
    "bei last",
    "volllast",
    "vollast",
    "vollgas",
    "beladen",
];

/// Small letters, umlauts without their dots however they were typed (`ü`, `ue`, `u`), and ß as ss.
pub(super) fn folded(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for letter in words.to_lowercase().chars() {
        match letter {
            'ä' => out.push('a'),
            'ö' => out.push('o'),
            'ü' => out.push('u'),
            'ß' => out.push_str("ss"),
            // The dots of an umlaut typed apart from its letter.
            '\u{308}' => {}
            'e' if out.ends_with(['a', 'o', 'u']) => {}
            '’' => out.push('\''),
            other => out.push(other),
        }
    }
    out
}

/// The sentences of a folded complaint, its words parted by one blank, a blank at both ends.
pub(super) fn sentences(folded: &str) -> Vec<String> {
    let letters: Vec<char> = folded.chars().collect();
    let is_digit = |nth: Option<usize>| {
        let letter = nth.and_then(|nth| letters.get(nth));
        letter.is_some_and(char::is_ascii_digit)
    };
    let mut all = vec![String::new()];
    for (nth, letter) in letters.iter().enumerate() {
        let ends = match letter {
            ';' | '!' | '?' | '\n' => true,
            '.' => !(is_digit(nth.checked_sub(1)) && is_digit(Some(nth + 1))),
            _ => false,
        };
        match all.last_mut() {
            _ if ends => all.push(String::new()),
            Some(last) if ",:-–\"()„“”\t".contains(*letter) => last.push(' '),
            Some(last) => last.push(*letter),
            None => {}
        }
    }
    let each = all.iter().map(|one| {
        let words: Vec<&str> = one.split_whitespace().collect();
        format!(" {} ", words.join(" "))
    });
    each.collect()
}

/// Whether something is said in one of these ways.
pub(super) fn says(sentences: &[String], ways: Ways) -> bool {
    let within = |sentence: &str, way: &str| {
        let mut left = sentence;
        for part in way.split(" .. ") {
            // As the text was: folded, its hyphens gone.
            let part = format!(" {}", folded(part).replace('-', " "));
            let Some(at) = left.find(&part) else {
                return false;
            };
            // What follows begins with a word of its own; the blank before it is needed.
            left = left.get(at + 1..).unwrap_or_default();
        }
        true
    };
    ways.iter()
        .any(|way| sentences.iter().any(|sentence| within(sentence, way)))
}
