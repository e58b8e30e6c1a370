//! Verdicts, checks and what stands before a drive.

use phrases::phrases;

phrases! {
    /// Caution before a drive: a drive.
    pub a_second_person_reads = "The driver drives and nothing else. A second person reads and records, or the recording runs by itself.",
        "Wer fährt, fährt und sonst nichts. Ein Zweiter liest ab und schreibt auf, oder die Aufzeichnung läuft von selbst.";
    /// Caution before a drive: a drive.
    pub checked_before_the_drive = "Before the drive: brakes, steering, wheels, belts and levels checked, cables of the recorder clear of pedals and wheel.",
        "Vor der Fahrt: Bremsen, Lenkung, Räder, Riemen und Füllstände geprüft, Kabel des Aufzeichners frei von Pedalen und Lenkrad.";
    /// Caution before a drive: a drive.
    pub insured = "Plates, insurance, speed limits and traffic law hold on a road test too. Local rules come first.",
        "Kennzeichen, Versicherung, Tempolimits und Verkehrsregeln gelten auch auf der Probefahrt. Örtliche Regeln gehen vor.";
    /// Caution before a drive: a drive.
    pub stop_when_hot = "If the gauge climbs towards red, stop where it is safe and switch off. Open nothing until the engine is cool to the hand.",
        "Steigt die Anzeige zum roten Bereich, an sicherer Stelle anhalten und abstellen. Nichts öffnen, bis der Motor handwarm ist.";
    /// Caution before a drive: a drive.
    pub makers_limits_come_first = "The vehicle maker's temperatures, voltages and road test come before the common values used here.",
        "Temperaturen, Spannungen und Probefahrt des Fahrzeugherstellers gehen vor den üblichen Werten hier.";
    /// A verdict.
    pub held = "held", "bestanden";
    /// A verdict.
    pub failed = "failed", "nicht bestanden";
    /// A verdict.
    pub not_provoked = "not provoked", "nicht ausgelöst";
    /// A verdict.
    pub cant_tell = "can't tell", "nicht zu sagen";
    /// A check.
    pub check_warm_up = "warm-up", "Warmlauf";
    /// A check.
    pub check_thermostat = "thermostat", "Thermostat";
    /// A check.
    pub check_band = "band", "Temperaturband";
    /// A check.
    pub check_air = "air", "Luft";
    /// A check.
    pub check_overheating = "overheating", "Überhitzung";
    /// A check.
    pub check_fan = "fan", "Lüfter";
    /// A check.
    pub check_charging = "charging", "Ladespannung";
    /// A check.
    pub check_trims = "trims", "Gemischkorrektur";
    /// A check.
    pub check_codes = "codes", "Fehlercodes";
    /// A check.
    pub check_provoked = "provoked", "Ausgelöst";
    /// Why a check says what it says.
    pub failed_checks(checks) = "failed: {checks}", "nicht bestanden: {checks}";
    /// Why a check says what it says.
    pub driven_and_held(checks) = "what the complaint needs was driven, and {checks} held",
        "was die Beanstandung braucht, wurde gefahren, bestanden: {checks}";
    /// Why a check says what it says.
    pub driven_but_cant_tell(checks) = "it was driven, but the log can't tell of {checks}",
        "es wurde gefahren, aber die Aufzeichnung sagt nichts zu: {checks}";
    /// Why a check says what it says.
    pub log_cant_tell_of(checks) = "the log can't tell of {checks}",
        "die Aufzeichnung sagt nichts zu: {checks}";
    /// Why a check says what it says.
    pub the_temperature_held_its_band_with = "the temperature held its band, with no spike and nothing hot",
        "die Temperatur hielt ihr Band, keine Spitze und nichts zu heiß";
    /// Line of a working.
    pub road_test = "Road test", "Probefahrt";
    /// Line of a working.
    pub the_makers_limits_and_the_thermostats = "The maker's limits and the thermostat's rating go before the common values here.",
        "Grenzwerte des Herstellers und der Wert auf dem Thermostat gehen vor den üblichen Werten hier.";
    /// Line of a working.
    pub the_log_tells_what_the_sensor = "The log tells what the sensor tells; a sensor in steam or air reads wrong.",
        "Die Aufzeichnung sagt, was der Fühler sagt; ein Fühler in Dampf oder Luft misst falsch.";
    /// Why a check says what it says.
    pub vehicle_does_not_tell(what, pid) = "this vehicle does not tell {what} (PID {pid})",
        "dieses Fahrzeug meldet nicht: {what} (PID {pid})";
    /// What to read or drive next.
    pub read_it_yourself(what) = "read the {what} with a gauge or meter of your own and type it in",
        "{what} mit eigenem Messgerät messen und eintragen";
    /// Why a check says what it says.
    pub log_has_no(what) = "the log has no {what}", "die Aufzeichnung hat nicht: {what}";
    /// What to read or drive next.
    pub record_it_as_well(what, pid) = "record {what} (PID {pid}) as well",
        "auch aufzeichnen: {what} (PID {pid})";
    /// Words in a drawing: the drive.
    pub mark_opens(c, within) = "opens {c} ± {within} °C", "öffnet {c} ± {within} °C";
    /// Words in a drawing: the drive.
    pub mark_settles(c) = "settles at {c} °C", "pendelt sich ein bei {c} °C";
    /// Words in a drawing: the drive.
    pub mark_spike(c) = "spike {c} °C", "Spitze {c} °C";
    /// Words in a drawing: the drive.
    pub mark_fan(c) = "fan {c} °C", "Lüfter {c} °C";
    /// What a complaint needs.
    pub need_motorway(minutes) = "{minutes} min of motorway", "{minutes} min Autobahn";
    /// What a complaint needs.
    pub need_town(minutes) = "{minutes} min of stop and go", "{minutes} min Stop-and-go";
    /// What a complaint needs.
    pub need_standing(minutes) = "{minutes} min standing, engine running",
        "{minutes} min Stand, Motor läuft";
    /// What a complaint needs.
    pub need_driving(minutes) = "{minutes} min of driving", "{minutes} min Fahrt";
    /// What a complaint needs.
    pub need_above(speed) = "{speed} km/h or more", "{speed} km/h oder mehr";
    /// What a complaint needs.
    pub need_cold = "a cold start", "ein Kaltstart";
    /// What a complaint needs.
    pub need_hot = "a warm engine", "ein warmer Motor";
    /// What a complaint needs.
    pub need_load = "a hill or a load", "Steigung oder Last";
    /// What a complaint needs.
    pub with_the_air_conditioning_on = "the air conditioning on", "Klimaanlage an";
    /// What a complaint needs.
    pub with_the_heater_on = "the heater on", "Heizung an";
    /// What a complaint needs.
    pub with_rain = "rain", "Regen";
    /// What a complaint needs.
    pub with_a_rough_road = "a rough road", "schlechte Straße";
    /// What a complaint needs.
    pub with_braking = "braking", "Bremsen";
    /// What a complaint needs.
    pub with_steering = "steering", "Lenken";
    /// What a complaint needs.
    pub with_lamps_and_other_consumers_on = "lamps and other consumers on",
        "Licht und andere Verbraucher an";
}
