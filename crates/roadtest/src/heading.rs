//! What a heading means.

mod words;

use crate::Quantity;
use crate::unit::Unit;
use words::{Words, split_unit, words};

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
        "fan",
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
        "cool",
        "cooling",
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
    let load = words.any(&["load", "motorlast", "last", "carga"])
        || words.any(&["charge"]) && words.any(&["moteur"]);
    if load && !of_pressure {
        let other = words.any(&["absolute", "alternator", "generator"]);
        return (!other).then_some(Quantity::Load);
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
            ("Cooling fan (%)", of(Quantity::Fan)),
            ("Eng Cool Temp", of(Quantity::Coolant)),
            ("Charge pressure (kPa)", None),
            ("Speed (OBD)(km/h)", of(Quantity::Speed)),
            ("Fuel trim bank 1 short term(%)", of(Quantity::ShortTrim1)),
            ("Voltage (OBD Adapter)(V)", of(Quantity::Voltage)),
            ("Ambient air temp(°C)", of(Quantity::Ambient)),
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
