//! What a heading means.

use crate::Quantity;
use crate::unit::Unit;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Meaning {
    /// Time of the row, of day or since the start.
    Time,
    Of(Quantity),
    /// Trouble codes.
    Codes,
    /// The lamp: on or off.
    Lamp,
    /// How many codes are stored.
    CodeCount,
    /// What a row is about, where each row holds one reading.
    Name,
    /// The reading of such a row.
    Value,
    /// Its unit.
    UnitOfValue,
}

/// A heading, read.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Heading {
    pub(crate) meaning: Option<Meaning>,
    pub(crate) unit: Option<Unit>,
}

/// Reads a heading: words in any case, joined in any manner, with or without a unit.
pub(crate) fn heading(text: &str) -> Heading {
    let (name, unit) = split_unit(text);
    let words = words(&name);
    Heading {
        meaning: meaning(&words, &name, unit),
        unit,
    }
}

/// Takes the unit off: in brackets, after a comma or slash, or as the last word.
fn split_unit(text: &str) -> (String, Option<Unit>) {
    for (open, close) in [('(', ')'), ('[', ']'), ('{', '}'), ('<', '>')] {
        let Some(end) = text.rfind(close) else {
            continue;
        };
        let Some(start) = text.get(..end).and_then(|front| front.rfind(open)) else {
            continue;
        };
        let inside = text.get(start + open.len_utf8()..end).unwrap_or("");
        let unit = Unit::named(inside);
        if unit.is_some() || inside.trim().is_empty() {
            let name = format!(
                "{} {}",
                text.get(..start).unwrap_or(""),
                text.get(end + close.len_utf8()..).unwrap_or("")
            );
            return (name, unit);
        }
    }
    let trimmed = text.trim();
    for parting in [", ", " / ", " in ", "/", " - ", "_", " "] {
        if let Some((name, last)) = trimmed.rsplit_once(parting) {
            // One letter after a blank may be a name ("bank c"): only with its sign or name.
            let certain = last.trim().chars().count() > 1 || last == "V" || last == "%";
            if let Some(unit) = Unit::named(last)
                && certain
                && !name.trim().is_empty()
            {
                return (name.to_owned(), Some(unit));
            }
        }
    }
    // "Speed km/h": the slash belongs to the unit.
    if let Some((name, last)) = trimmed.rsplit_once(' ')
        && let Some(unit) = Unit::named(last)
        && last.contains(['/', '°'])
    {
        return (name.to_owned(), Some(unit));
    }
    (trimmed.to_owned(), None)
}

/// Lower case words without accents; joined words are parted at capitals and figures.
fn words(name: &str) -> Vec<String> {
    let mut spaced = String::new();
    let mut before = ' ';
    for c in name.chars() {
        let parted = (before.is_lowercase() && c.is_uppercase())
            || (before.is_alphabetic() && c.is_ascii_digit())
            || (before.is_ascii_digit() && c.is_alphabetic());
        if parted {
            spaced.push(' ');
        }
        before = c;
        match c {
            'ä' | 'á' | 'à' | 'â' | 'ã' | 'Ä' | 'Á' | 'À' | 'Â' | 'Ã' => spaced.push('a'),
            'é' | 'è' | 'ê' | 'É' | 'È' | 'Ê' => spaced.push('e'),
            'í' | 'î' | 'Í' => spaced.push('i'),
            'ö' | 'ó' | 'ô' | 'õ' | 'Ö' | 'Ó' | 'Ô' | 'Õ' => spaced.push('o'),
            'ü' | 'ú' | 'û' | 'Ü' | 'Ú' | 'Û' => spaced.push('u'),
            'ç' | 'Ç' => spaced.push('c'),
            c if c.is_alphanumeric() => spaced.extend(c.to_lowercase()),
            _ => spaced.push(' '),
        }
    }
    spaced.split_whitespace().map(str::to_owned).collect()
}

/// The words of a heading, with the questions one asks of them.
struct Words<'a>(&'a [String]);

impl Words<'_> {
    /// Whether one of these words stands there, give or take a slip of the pen.
    fn any(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| alike(word, wanted)))
    }

    /// Whether a word starts so.
    fn starts(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| word.starts_with(wanted)))
    }

    /// Whether a word ends so, as joined words do.
    fn ends(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| word.ends_with(wanted)))
    }

    /// Whether these are all the words there are.
    fn only(&self, wanted: &[&str]) -> bool {
        !self.0.is_empty() && self.0.iter().all(|word| wanted.contains(&word.as_str()))
    }
}

/// The same word: equal, or one slip apart in a word of five letters or more.
fn alike(word: &str, wanted: &str) -> bool {
    word == wanted || (wanted.len() >= 5 && word.len() >= 5 && slips(word, wanted) <= 1)
}

/// Letters changed, left out, put in; two swapped count as one. More than one is not counted on.
fn slips(one: &str, other: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (one.chars().collect(), other.chars().collect());
    let front = a.iter().zip(&b).take_while(|(x, y)| x == y).count();
    let tail = |from_a: usize, from_b: usize| a.get(from_a..) == b.get(from_b..);
    let one_slip = tail(front + 1, front + 1)
        || tail(front + 1, front)
        || tail(front, front + 1)
        || (a.get(front) == b.get(front + 1)
            && a.get(front + 1) == b.get(front)
            && tail(front + 2, front + 2));
    match (a == b, one_slip) {
        (true, _) => 0,
        (false, true) => 1,
        (false, false) => 2,
    }
}

fn meaning(words: &[String], name: &str, unit: Option<Unit>) -> Option<Meaning> {
    if let Some(quantity) = by_pid(name) {
        return Some(Meaning::Of(quantity));
    }
    let words = Words(words);
    about_codes(&words)
        .or_else(|| temperature(&words, unit).map(Meaning::Of))
        .or_else(|| trim(&words).map(Meaning::Of))
        .or_else(|| motion(&words, unit).map(Meaning::Of))
        .or_else(|| engine(&words, unit).map(Meaning::Of))
        .or_else(|| time(&words, unit))
        .or_else(|| one_a_row(&words))
}

/// `0105`, `01 05`, `$05`, `PID 0C`: the standard's own number.
fn by_pid(name: &str) -> Option<Quantity> {
    let name = name.trim().to_uppercase();
    let bare: String = name
        .trim_start_matches("PID")
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, '_' | '-' | '$'))
        .collect();
    let bare = bare.trim_start_matches("0X");
    let marked = name.starts_with("PID") || name.starts_with('$') || name.starts_with("0X");
    let hex = match bare.len() {
        4 => bare.strip_prefix("01")?,
        2 if marked => bare,
        _ => return None,
    };
    crate::j1979::quantity_of(u8::from_str_radix(hex, 16).ok()?)
}

fn about_codes(words: &Words) -> Option<Meaning> {
    let aside = words.any(&[
        "cleared",
        "clear",
        "since",
        "distance",
        "time",
        "run",
        "minutes",
        "warm",
        "travelled",
    ]);
    let lamp = words.any(&["mil", "lamp", "malfunction"]) || words.only(&["check", "engine"]);
    let codes = words.any(&["dtc", "dtcs", "codes", "fault", "trouble", "fehlercode"])
        || words.only(&["code"]);
    if aside {
        // Only distances and times, not needed here, and never the time of the row.
        return None;
    }
    if codes && words.any(&["count", "number", "num", "anzahl"]) {
        return Some(Meaning::CodeCount);
    }
    if codes {
        return Some(Meaning::Codes);
    }
    lamp.then_some(Meaning::Lamp)
}

fn temperature(words: &Words, unit: Option<Unit>) -> Option<Quantity> {
    let of_heat = matches!(unit, Some(Unit::Celsius | Unit::Fahrenheit | Unit::Kelvin));
    let says_so = of_heat
        || words.starts(&["temp"])
        || words.any(&["temperature", "ect", "clt", "iat", "aat", "eot"])
        || words.ends(&["temperatur"]);
    let elsewhere = words.any(&[
        "catalyst",
        "cat",
        "egr",
        "exhaust",
        "egt",
        "transmission",
        "trans",
        "gearbox",
        "battery",
        "fuel",
        "radiator",
        "outlet",
        "turbo",
        "charge",
        "dpf",
        "brake",
        "tire",
        "tyre",
        "inverter",
        "motor2",
        "cabin",
        "abgas",
        "cylinder",
        "desired",
        "target",
        "sensor2",
    ]);
    if elsewhere || words.any(&["level", "pressure", "pump", "flow"]) {
        return None;
    }
    if words.any(&["oil", "eot", "huile", "aceite", "oleo"]) || words.starts(&["ol"]) && says_so {
        return says_so.then_some(Quantity::Oil);
    }
    if words.any(&[
        "coolant",
        "ect",
        "clt",
        "water",
        "refrigerante",
        "refroidissement",
        "arrefecimento",
        "agua",
    ]) || words.starts(&["kuhlmittel", "kuhlwasser", "liquide"])
    {
        return Some(Quantity::Coolant);
    }
    if words.any(&["iat"])
        || says_so
            && (words.any(&["intake", "inlet", "admission", "admision", "admissao"])
                || words.starts(&["ansaug"]))
    {
        return Some(Quantity::Intake);
    }
    if words.any(&["aat"])
        || says_so
            && words.any(&[
                "ambient", "outside", "outdoor", "aussen", "außen", "exterior",
            ])
    {
        return Some(Quantity::Ambient);
    }
    (says_so && words.any(&["engine", "motor", "moteur"])).then_some(Quantity::Coolant)
}

fn trim(words: &Words) -> Option<Quantity> {
    if words.any(&["sensor", "lambda", "secondary", "oxygen"])
        || words.0.iter().any(|word| word == "o")
    {
        return None;
    }
    let trims = words.any(&["trim", "trims", "korrektur", "correction"]);
    let short = words.any(&["stft", "sft", "shrtft", "shortft"])
        || trims && words.any(&["short", "st", "kurzzeit", "court", "corto", "curto"]);
    let long = words.any(&["ltft", "lft", "longft"])
        || trims && words.any(&["long", "lt", "langzeit", "largo", "longo"]);
    let second = words.0.iter().any(|word| word == "2" || word == "two");
    match (short, long, second) {
        (true, _, false) => Some(Quantity::ShortTrim1),
        (true, _, true) => Some(Quantity::ShortTrim2),
        (false, true, false) => Some(Quantity::LongTrim1),
        (false, true, true) => Some(Quantity::LongTrim2),
        (false, false, _) => None,
    }
}

fn motion(words: &Words, unit: Option<Unit>) -> Option<Quantity> {
    let of_speed = matches!(
        unit,
        Some(Unit::KmPerHour | Unit::MilesPerHour | Unit::MetresPerSecond)
    );
    if words.any(&["fan", "lufter", "ventilador", "ventilateur"]) {
        return Some(Quantity::Fan);
    }
    if words.any(&["rpm", "revs", "regime", "revolutions", "tach"])
        || words.ends(&["drehzahl"])
        || unit == Some(Unit::PerMinute)
        || words.any(&["engine", "motor"]) && words.any(&["speed"]) && !of_speed
    {
        let other = words.any(&[
            "turbo", "turbine", "input", "output", "wheel", "idle", "target", "desired",
        ]);
        return (!other).then_some(Quantity::Rpm);
    }
    let other = words.any(&[
        "wheel", "turbine", "idle", "cruise", "wind", "average", "limit", "input", "output", "max",
    ]);
    let speed = of_speed
        || words.any(&[
            "speed",
            "vss",
            "kmh",
            "kph",
            "mph",
            "vitesse",
            "velocidad",
            "velocidade",
            "velocity",
        ])
        || words.ends(&["geschwindigkeit"]);
    (speed && !other).then_some(Quantity::Speed)
}

fn engine(words: &Words, unit: Option<Unit>) -> Option<Quantity> {
    let of_pressure = matches!(
        unit,
        Some(
            Unit::Kilopascals
                | Unit::PoundsPerSquareInch
                | Unit::Bar
                | Unit::Millibar
                | Unit::InchesOfMercury
        )
    );
    if words.any(&["load", "motorlast", "last", "charge", "carga"]) {
        if words.any(&["absolute", "alternator", "generator"]) {
            return None;
        }
        return Some(Quantity::Load);
    }
    let electric = words.any(&[
        "voltage", "volts", "volt", "spannung", "voltaje", "tension", "vbat", "vbatt", "batt",
    ]) || words.ends(&["spannung"])
        || words.any(&["battery"]) && matches!(unit, Some(Unit::Volts | Unit::Millivolts));
    if electric {
        let other = words.any(&[
            "oxygen", "sensor", "lambda", "throttle", "tps", "map", "maf", "pedal", "fuel", "ego",
        ]) || words.0.iter().any(|word| word == "o");
        return (!other).then_some(Quantity::Voltage);
    }
    if words.starts(&["baro"]) {
        return Some(Quantity::Barometer);
    }
    if words.any(&["maf"]) || words.any(&["air"]) && words.any(&["flow", "mass"]) {
        return Some(Quantity::AirFlow);
    }
    if words.only(&["map"])
        || words.any(&["manifold", "intake", "map"])
            && (of_pressure || words.any(&["pressure", "press", "druck"]))
    {
        return Some(Quantity::Manifold);
    }
    if words.any(&["throttle", "tps", "drosselklappe"]) {
        let other = words.any(&["relative", "commanded", "actuator", "desired", "voltage"])
            || words.0.iter().any(|word| word == "b" || word == "c");
        return (!other).then_some(Quantity::Throttle);
    }
    let loops = words.any(&["loop"])
        || words.any(&["fuel"]) && words.any(&["system"]) && words.any(&["status"]);
    loops.then_some(Quantity::ClosedLoop)
}

fn time(words: &Words, unit: Option<Unit>) -> Option<Meaning> {
    let aside = words.any(&[
        "mil",
        "cleared",
        "codes",
        "since",
        "dtc",
        "cycle",
        "fuel",
        "injection",
        "delay",
        "response",
    ]);
    let since_start =
        words.any(&["start"]) && words.any(&["since"]) && !words.any(&["cleared", "codes"]);
    // One logger is known to write TINE.
    let time = words.any(&[
        "time", "tine", "zeit", "laufzeit", "tiempo", "temps", "tempo",
    ]);
    if words.any(&["runtime"])
        || time && words.any(&["run", "running", "operating", "laufzeit", "motorlaufzeit"])
        || since_start && time
    {
        return (!words.any(&["mil", "cleared"])).then_some(Meaning::Of(Quantity::RunTime));
    }
    if aside {
        return None;
    }
    let stamped = words.any(&[
        "timestamp",
        "datetime",
        "zeitstempel",
        "elapsed",
        "seconds",
        "secs",
        "millis",
        "uhrzeit",
    ]);
    let short = words.only(&["t"])
        || words.only(&["s"])
        || words.only(&["ms"])
        || words.only(&["sec"])
        || words.only(&["min"]);
    let of_time = matches!(
        unit,
        Some(Unit::Seconds | Unit::Milliseconds | Unit::Minutes)
    ) && words.0.len() <= 1;
    (time || stamped || short || of_time).then_some(Meaning::Time)
}

fn one_a_row(words: &Words) -> Option<Meaning> {
    if words.only(&["unit"]) || words.only(&["units"]) || words.only(&["einheit"]) {
        return Some(Meaning::UnitOfValue);
    }
    if words.only(&["value"])
        || words.only(&["reading"])
        || words.only(&["wert"])
        || words.only(&["valor"])
    {
        return Some(Meaning::Value);
    }
    let name = [
        "pid",
        "name",
        "parameter",
        "signal",
        "channel",
        "item",
        "description",
        "quantity",
        "what",
    ];
    (words.0.len() <= 2 && words.any(&name)).then_some(Meaning::Name)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is(text: &str) -> Option<Meaning> {
        heading(text).meaning
    }

    #[test]
    fn headings_in_many_manners() {
        let of = |quantity| Some(Meaning::Of(quantity));
        for (text, expected) in [
            ("ENGINE_RUN_TINE ()", of(Quantity::RunTime)),
            ("ENGINE_RPM ()", of(Quantity::Rpm)),
            ("VEHICLE_SPEED ()", of(Quantity::Speed)),
            ("ENGINE_LOAD ()", of(Quantity::Load)),
            ("COOLANT_TEMPERATURE ()", of(Quantity::Coolant)),
            ("LONG_TERM_FUEL_TRIM_BANK_1 ()", of(Quantity::LongTrim1)),
            ("SHORT_TERM_FUEL_TRIM_BANK_2 ()", of(Quantity::ShortTrim2)),
            ("INTAKE_AIR_TEMP ()", of(Quantity::Intake)),
            ("CONTROL_MODULE_VOLTAGE ()", of(Quantity::Voltage)),
            ("INTAKE_MANIFOLD_PRESSURE ()", of(Quantity::Manifold)),
            ("ABSOLUTE_BAROMETRIC_PRESSURE ()", of(Quantity::Barometer)),
            ("TIME_RUN_WITH_MIL_ON ()", None),
            ("TIME_SINCE_TROUBLE_CODES_CLEARED ()", None),
            ("WARM_UPS_SINCE_CODES_CLEARED ()", None),
            ("DISTANCE_TRAVELED_WITH_MIL_ON ()", None),
            ("CATALYST_TEMPERATURE_BANK1_SENSOR1 ()", None),
            ("ABSOLUTE_THROTTLE_B ()", None),
            ("TIMING_ADVANCE ()", None),
            ("Engine Coolant Temp (°F)", of(Quantity::Coolant)),
            ("EngineCoolantTemp", of(Quantity::Coolant)),
            ("ECT [degC]", of(Quantity::Coolant)),
            ("Coolent temprature", of(Quantity::Coolant)),
            ("Kühlmitteltemperatur", of(Quantity::Coolant)),
            (
                "Température du liquide de refroidissement",
                of(Quantity::Coolant),
            ),
            ("Oil temp", of(Quantity::Oil)),
            ("Speed (mph)", of(Quantity::Speed)),
            ("Engine speed", of(Quantity::Rpm)),
            ("Motordrehzahl", of(Quantity::Rpm)),
            ("Drehzahl", of(Quantity::Rpm)),
            ("Battery (V)", of(Quantity::Voltage)),
            ("O2 Sensor 1 voltage", None),
            ("STFT1 (%)", of(Quantity::ShortTrim1)),
            ("LTFT B2", of(Quantity::LongTrim2)),
            ("MAP (kPa)", of(Quantity::Manifold)),
            ("0105", of(Quantity::Coolant)),
            ("PID 0C", of(Quantity::Rpm)),
            ("Time (s)", Some(Meaning::Time)),
            ("timestamp", Some(Meaning::Time)),
            ("t", Some(Meaning::Time)),
            ("Elapsed ms", Some(Meaning::Time)),
            ("Fan", of(Quantity::Fan)),
            ("DTC count", Some(Meaning::CodeCount)),
            ("Trouble codes", Some(Meaning::Codes)),
            ("Coolant level", None),
            ("remark", None),
        ] {
            assert_eq!(is(text), expected, "{text}");
        }
    }

    #[test]
    fn units_are_taken_off() {
        assert_eq!(heading("Speed (mph)").unit, Some(Unit::MilesPerHour));
        assert_eq!(heading("speed km/h").unit, Some(Unit::KmPerHour));
        assert_eq!(heading("coolant_f").unit, None);
        assert_eq!(heading("coolant °F").unit, Some(Unit::Fahrenheit));
        assert_eq!(heading("voltage V").unit, Some(Unit::Volts));
        assert_eq!(heading("ENGINE_RPM ()").unit, None);
        assert_eq!(heading("time_ms").unit, Some(Unit::Milliseconds));
    }
}
