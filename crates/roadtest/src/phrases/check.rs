//! What each check says: why, and what to read or drive next.

use phrases::phrases;

phrases! {
    /// Why a check says what it says: fuel trims.
    pub bank_idling(bank) = "bank {bank} idling", "Bank {bank} im Leerlauf";
    /// Why a check says what it says: fuel trims.
    pub bank_light_load(bank) = "bank {bank} light load", "Bank {bank} bei kleiner Last";
    /// Why a check says what it says: fuel trims.
    pub bank_heavy_load(bank) = "bank {bank} heavy load", "Bank {bank} bei großer Last";
    /// Why a check says what it says: fuel trims.
    pub trim_at_most(percent, where_) = "at most {percent} % ({where_})", "höchstens {percent} % ({where_})";
    /// Why a check says what it says: fuel trims.
    pub the_engine_was_not_warm_and = "the engine was not warm and running for long enough with trims read",
        "der Motor lief nicht lange genug warm, während Korrekturwerte gelesen wurden";
    /// What to read or drive next: fuel trims.
    pub drive_it_warm_idling_steady_and = "drive it warm: idling, steady, and pulling",
        "warm fahren: im Leerlauf, gleichmäßig und unter Last";
    /// What to read or drive next: fuel trims.
    pub compare_idling_with_2500_rpm_and = "compare idling with 2500 rpm, and look for what feeds or starves it",
        "Leerlauf mit 2500 1/min vergleichen und suchen, was zu viel oder zu wenig gibt";
    /// What to read or drive next: fuel trims.
    pub record_short_and_long_trim_together = "record short and long trim together (PIDs 06 and 07)",
        "kurze und lange Korrektur zusammen aufzeichnen (PID 06 und 07)";
    /// Line of a working: fuel trims.
    pub short_and_long_trim_together_warm = "short and long trim together, warm, by load",
        "kurze und lange Korrektur zusammen, warm, nach Last";
    /// Why a check says what it says: fuel trims.
    pub lean_at_idle_alone_air_that = "lean at idle alone: air that is not counted, such as a leaking hose or gasket",
        "nur im Leerlauf mager: Falschluft, etwa undichter Schlauch oder Dichtung";
    /// Why a check says what it says: fuel trims.
    pub lean_under_load_fuel_delivery_or = "lean under load: fuel delivery, or the air meter reads low",
        "unter Last mager: Kraftstoffförderung, oder der Luftmassenmesser misst zu wenig";
    /// Why a check says what it says: fuel trims.
    pub lean_air_not_counted_fuel_delivery = "lean: air not counted, fuel delivery, or the air meter",
        "mager: Falschluft, Kraftstoffförderung oder Luftmassenmesser";
    /// Why a check says what it says: fuel trims.
    pub rich_fuel_pressure_a_leaking_injector = "rich: fuel pressure, a leaking injector, fuel vapour, or a sensor",
        "fett: Kraftstoffdruck, undichtes Einspritzventil, Kraftstoffdampf oder ein Fühler";
    /// Why a check says what it says: fuel trims.
    pub more_than_usual(told) = "{told}: more than usual, not yet a fault",
        "{told}: mehr als üblich, noch kein Fehler";
    /// Why a check says what it says: fuel trims.
    pub only_one_trim(told) = "{told}, but only one of the two trims was read",
        "{told}, aber nur eine der zwei Korrekturen wurde gelesen";
    /// Line of a working: fuel trims.
    pub furthest_off(percent) = "{percent} % where it is furthest off",
        "{percent} %, wo es am weitesten abweicht";
    /// Line of a working: fuel trims.
    pub trim_limits(usual, failing) = "mean of each part of the drive; usual within {usual} %, failed beyond {failing} %",
        "Mittel je Abschnitt der Fahrt; üblich bis {usual} %, nicht bestanden über {failing} %";
    /// Why a check says what it says: the warm-up.
    pub the_engine_was_not_seen_running = "the engine was not seen running",
        "der Motor lief nicht in der Aufzeichnung";
    /// What to read or drive next: the warm-up.
    pub start_the_recording_then_the_engine = "start the recording, then the engine, and drive",
        "erst die Aufzeichnung starten, dann den Motor, und fahren";
    /// What to read or drive next: the warm-up.
    pub record_from_a_cold_start = "record from a cold start", "ab Kaltstart aufzeichnen";
    /// What to read or drive next: the warm-up.
    pub warm_it_up_again_on_the = "warm it up again on the road, heater off",
        "auf der Straße noch einmal warmfahren, Heizung aus";
    /// Line of a working: the warm-up.
    pub rise_while_warming_up = "rise while warming up", "Anstieg beim Warmlauf";
    /// Why a check says what it says: the warm-up.
    pub was_already_at(c) = "the engine was already at {c} °C when the recording began",
        "der Motor hatte schon {c} °C, als die Aufzeichnung begann";
    /// Why a check says what it says: the warm-up.
    pub rose_in(first, last, minutes, slope) = "{first} to {last} °C in {minutes} min, {slope} K/min",
        "{first} bis {last} °C in {minutes} min, {slope} K/min";
    /// Why a check says what it says: the warm-up.
    pub slow_warm_up(told) = "{told}: slow, which idling, cold air or a leaking thermostat may cause",
        "{told}: langsam, was an Leerlauf, kalter Luft oder undichtem Thermostat liegen kann";
    /// Line of a working: the warm-up.
    pub c_at(c, at) = "{c} °C at {at}", "{c} °C bei {at}";
    /// Line of a working: the warm-up.
    pub warm_is(c, minutes) = "warm is {c} °C; a driven engine is within {minutes} min",
        "warm heißt {c} °C; ein gefahrener Motor ist es in {minutes} min";
    /// Why a check says what it says: the warm-up.
    pub only_reached(minutes, on_road, speed, c) = "after {minutes} min running, {on_road} of them above {speed} km/h, it had only reached {c} °C",
        "nach {minutes} min Lauf, davon {on_road} über {speed} km/h, waren es erst {c} °C";
    /// Why a check says what it says: the warm-up.
    pub too_short_to_get_warm(c, minutes) = "{c} °C after {minutes} min: too short a drive to get warm",
        "{c} °C nach {minutes} min: zu kurz gefahren, um warm zu werden";
    /// What to read or drive next: the warm-up.
    pub drive_until_warm(c) = "drive on until it reads {c} °C, or 15 min on the road",
        "weiterfahren, bis {c} °C angezeigt werden, oder 15 min auf der Straße";
    /// Why a check says what it says: the charging voltage.
    pub less_than_a_minute_was_recorded = "less than a minute was recorded with the engine running",
        "weniger als eine Minute mit laufendem Motor aufgezeichnet";
    /// What to read or drive next: the charging voltage.
    pub record_two_minutes_idling_and_two = "record two minutes idling and two at 2000 rpm, lamps and blower on",
        "zwei Minuten Leerlauf und zwei bei 2000 1/min aufzeichnen, Licht und Gebläse an";
    /// Line of a working: the charging voltage.
    pub charging_voltage = "charging voltage", "Ladespannung";
    /// What to read or drive next: the charging voltage.
    pub record_rpm_pid_0c_as_well = "record rpm (PID 0C) as well",
        "auch die Drehzahl aufzeichnen (PID 0C)";
    /// What to read or drive next: the charging voltage.
    pub load_it_with_lamps_and_blower = "load it with lamps and blower, and see whether it stays above 13 V",
        "mit Licht und Gebläse belasten und sehen, ob es über 13 V bleibt";
    /// Why a check says what it says: the charging voltage.
    pub volts_standing(volts) = "{volts} V standing", "{volts} V im Stand";
    /// Why a check says what it says: the charging voltage.
    pub volts_at_speed(volts) = "{volts} V at speed", "{volts} V in Fahrt";
    /// Why a check says what it says: the charging voltage.
    pub volts_engine_loaded(volts) = "{volts} V engine loaded", "{volts} V unter Last";
    /// Line of a working: the charging voltage.
    pub charging_limits(seconds, low, high, least) = "the middle of all readings from {seconds} s after the start; charging is {low} to {high} V, below {least} V the battery feeds the vehicle. What was switched on is not in the log",
        "die Mitte aller Messwerte ab {seconds} s nach dem Start; Laden heißt {low} bis {high} V, unter {least} V speist die Batterie das Fahrzeug. Was eingeschaltet war, steht nicht in der Aufzeichnung";
    /// Why a check says what it says: the charging voltage.
    pub volts_lasting(volts, minutes, from) = "{volts} V for {minutes} min from {from}",
        "{volts} V für {minutes} min ab {from}";
    /// Why a check says what it says: the charging voltage.
    pub too_much_voltage(told) = "{told}: too much, the regulator does not hold it",
        "{told}: zu viel, der Regler hält es nicht";
    /// Why a check says what it says: the charging voltage.
    pub unknown_when_it_ran(told) = "{told}, but the log does not say when the engine ran",
        "{told}, aber die Aufzeichnung sagt nicht, wann der Motor lief";
    /// Why a check says what it says: the charging voltage.
    pub charged_again(told) = "{told}, then it charged again: a bad contact, or charging that the vehicle manages",
        "{told}, dann wurde wieder geladen: schlechter Kontakt, oder das Fahrzeug regelt das Laden";
    /// Why a check says what it says: the charging voltage.
    pub not_charging(told) = "{told}: not charging, the battery feeds the vehicle",
        "{told}: lädt nicht, die Batterie speist das Fahrzeug";
    /// Why a check says what it says: the charging voltage.
    pub beside_the_usual(told) = "{told}: beside the usual, though charging may be managed by the vehicle",
        "{told}: nicht wie üblich, aber vielleicht regelt das Fahrzeug das Laden";
    /// Why a check says what it says: the band.
    pub band_over(low, high, minutes, middle) = "{low} to {high} °C over {minutes} min, mostly {middle} °C",
        "{low} bis {high} °C über {minutes} min, meist {middle} °C";
    /// Why a check says what it says: the band.
    pub does_not_stay_below(told, c) = "{told}: it does not stay below {c} °C",
        "{told}: bleibt nicht unter {c} °C";
    /// Why a check says what it says: the band.
    pub low_but_some_hold_that(told) = "{told}: low, but some thermostats hold that",
        "{told}: niedrig, aber manche Thermostate halten das";
    /// What to read or drive next: the band.
    pub read_the_temperature_stamped_on_the = "read the temperature stamped on the thermostat, and judge again with it",
        "die auf dem Thermostat eingeprägte Temperatur lesen und damit neu beurteilen";
    /// What to read or drive next: the band.
    pub drive_on_for_three_minutes_once = "drive on for three minutes once it is warm",
        "noch drei Minuten fahren, wenn er warm ist";
    /// Line of a working: the band.
    pub band_held_when_warm = "band held when warm", "gehaltenes Band, warm";
    /// Line of a working: the band.
    pub all_but_the_lowest_and_highest = "all but the lowest and highest 2 %",
        "alle bis auf die untersten und obersten 2 %";
    /// Why a check says what it says: the band.
    pub the_temperature_did_not_settle_in = "the temperature did not settle in this log",
        "die Temperatur hat sich in dieser Aufzeichnung nicht eingependelt";
    /// What to read or drive next: the band.
    pub drive_on_until_it_holds_for = "drive on until it holds for two minutes, then three more",
        "weiterfahren, bis sie zwei Minuten gleich bleibt, dann noch drei";
    /// Line of a working: the band.
    pub readings = "readings", "Messwerte";
    /// Line of a working: the band.
    pub steps_of(count, seconds) = "{count} steps of {seconds} s", "{count} Schritte zu {seconds} s";
    /// Why a check says what it says: the band.
    pub it_sags_to(told, c) = "{told}: it sags to {c} °C, as with a thermostat that does not close",
        "{told}: fällt ab auf {c} °C, wie bei einem Thermostat, der nicht schließt";
    /// Why a check says what it says: the band.
    pub too_short(told) = "{told}: too short", "{told}: zu kurz";
    /// Line of a working: the band.
    pub c_from_to(low, high) = "{low} to {high} °C", "{low} bis {high} °C";
    /// Why a check says what it says: the band.
    pub below_any_thermostat(told, c) = "{told}: below {c} °C, where no sound thermostat holds it",
        "{told}: unter {c} °C, wo kein intakter Thermostat ihn hält";
    /// Why a check says what it says: the band.
    pub thermostat_cant_be_judged(told) = "{told}: low, and the thermostat can't be judged by it",
        "{told}: niedrig, und über den Thermostat sagt das nichts";
    /// Why a check says what it says: the band.
    pub held_no_band(c) = "it held no band: it rose to {c} °C",
        "kein Band gehalten: es stieg auf {c} °C";
    /// Title of a trouble code: trouble codes.
    pub coolant_sensor_circuit = "coolant sensor circuit", "Stromkreis Kühlmittelfühler";
    /// Title of a trouble code: trouble codes.
    pub coolant_sensor_range = "coolant sensor range", "Bereich Kühlmittelfühler";
    /// Title of a trouble code: trouble codes.
    pub coolant_sensor_low = "coolant sensor low", "Kühlmittelfühler zu niedrig";
    /// Title of a trouble code: trouble codes.
    pub coolant_sensor_high = "coolant sensor high", "Kühlmittelfühler zu hoch";
    /// Title of a trouble code: trouble codes.
    pub coolant_sensor_intermittent = "coolant sensor intermittent",
        "Kühlmittelfühler sporadisch";
    /// Title of a trouble code: trouble codes.
    pub too_cold_for_closed_loop = "too cold for closed loop", "zu kalt für den Regelkreis";
    /// Title of a trouble code: trouble codes.
    pub too_cold_for_stable_operation = "too cold for stable operation",
        "zu kalt für stabilen Betrieb";
    /// Title of a trouble code: trouble codes.
    pub coolant_below_thermostats_temperature = "coolant below thermostat's temperature",
        "Kühlmittel unter Thermostattemperatur";
    /// Title of a trouble code: trouble codes.
    pub engine_too_hot = "engine too hot", "Motor zu heiß";
    /// Title of a trouble code: trouble codes.
    pub fan_1_control_circuit = "fan 1 control circuit", "Steuerkreis Lüfter 1";
    /// Title of a trouble code: trouble codes.
    pub fan_2_control_circuit = "fan 2 control circuit", "Steuerkreis Lüfter 2";
    /// Title of a trouble code: trouble codes.
    pub cooling_system_performance = "cooling system performance", "Leistung der Kühlung";
    /// Why a check says what it says: trouble codes.
    pub no_codes_were_read = "no codes were read", "keine Fehlercodes gelesen";
    /// What to read or drive next: trouble codes.
    pub read_codes_and_monitors_before_and = "read codes and monitors before and after the drive (services 01, 03, 07)",
        "Fehlercodes und Prüfbereitschaft vor und nach der Fahrt lesen (Dienste 01, 03, 07)";
    /// What to read or drive next: trouble codes.
    pub drive_once_more_as_the_complaint = "drive once more as the complaint says and read pending codes again",
        "noch einmal fahren, wie die Beanstandung sagt, und vorläufige Codes wieder lesen";
    /// What to read or drive next: trouble codes.
    pub drive_on_until_these_monitors_are = "drive on until these monitors are complete, then read again",
        "weiterfahren, bis diese Prüfungen abgeschlossen sind, dann wieder lesen";
    /// Why a check says what it says: trouble codes.
    pub no_codes_the_lamp_is_off = "no codes, the lamp is off, nothing is left unchecked",
        "keine Codes, die Lampe ist aus, nichts ungeprüft";
    /// Why a check says what it says: trouble codes.
    pub stored(codes) = "stored: {codes}", "gespeichert: {codes}";
    /// Why a check says what it says: trouble codes.
    pub stored_and_new(codes, new) = "stored: {codes}; new in this drive: {new}",
        "gespeichert: {codes}; neu in dieser Fahrt: {new}";
    /// Why a check says what it says: trouble codes.
    pub lamp_on_and_codes(count) = "the lamp is on and {count} codes are stored",
        "die Lampe ist an, gespeicherte Codes: {count}";
    /// Why a check says what it says: trouble codes.
    pub lamp_off_and_codes(count) = "the lamp is off and {count} codes are stored",
        "die Lampe ist aus, gespeicherte Codes: {count}";
    /// Why a check says what it says: trouble codes.
    pub pending_new(codes) = "pending, new in this drive: {codes}",
        "vorläufig, neu in dieser Fahrt: {codes}";
    /// Why a check says what it says: trouble codes.
    pub pending(codes) = "pending: {codes}", "vorläufig: {codes}";
    /// Why a check says what it says: trouble codes.
    pub not_yet_checked(monitors) = "no codes, but not yet checked by the vehicle: {monitors}",
        "keine Codes, aber vom Fahrzeug noch nicht geprüft: {monitors}";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_misfire = "misfire", "Zündaussetzer";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_fuel_system = "fuel system", "Kraftstoffsystem";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_components = "components", "Bauteile";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_catalyst = "catalyst", "Katalysator";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_heated_catalyst = "heated catalyst", "beheizter Katalysator";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_evaporative_system = "evaporative system", "Tankentlüftung";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_secondary_air = "secondary air", "Sekundärluft";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_refrigerant = "refrigerant", "Kältemittel";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_oxygen_sensor = "oxygen sensor", "Lambdasonde";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_oxygen_sensor_heater = "oxygen sensor heater", "Heizung der Lambdasonde";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_egr_or_vvt = "EGR or VVT", "AGR oder Nockenwellenverstellung";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_nmhc_catalyst = "NMHC catalyst", "NMHC-Katalysator";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_nox_aftertreatment = "NOx aftertreatment", "NOx-Nachbehandlung";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_monitor_2 = "monitor 2", "Prüfung 2";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_boost_pressure = "boost pressure", "Ladedruck";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_monitor_4 = "monitor 4", "Prüfung 4";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_exhaust_gas_sensor = "exhaust gas sensor", "Abgassensor";
    /// A monitor of the vehicle: trouble codes.
    pub monitor_particulate_filter = "particulate filter", "Partikelfilter";
    /// Why a check says what it says: the thermostat.
    pub too_little_was_recorded_with_the = "too little was recorded with the engine running",
        "zu wenig mit laufendem Motor aufgezeichnet";
    /// What to read or drive next: the thermostat.
    pub drive_until_the_temperature_stops_rising = "drive until the temperature stops rising",
        "fahren, bis die Temperatur nicht mehr steigt";
    /// What to read or drive next: the thermostat.
    pub drive_on_until_it_holds_for_x = "drive on until it holds for two minutes",
        "weiterfahren, bis sie zwei Minuten gleich bleibt";
    /// What to read or drive next: the thermostat.
    pub record_from_a_cold_start_to = "record from a cold start to see it open",
        "ab Kaltstart aufzeichnen, um ihn öffnen zu sehen";
    /// What to read or drive next: the thermostat.
    pub drive_it_heater_off_for_ten = "drive it, heater off, for ten minutes",
        "zehn Minuten fahren, Heizung aus";
    /// What to read or drive next: the thermostat.
    pub record_a_cold_start_at_a = "record a cold start at a steady pace, a reading every second",
        "einen Kaltstart bei gleichmäßiger Fahrt aufzeichnen, jede Sekunde ein Messwert";
    /// Line of a working: the thermostat.
    pub opening_of_the_thermostat = "opening of the thermostat", "Öffnen des Thermostats";
    /// Line of a working: the thermostat.
    pub level_after_warming_up = "level after warming up", "Temperatur nach dem Warmlauf";
    /// Line of a working: the thermostat.
    pub two_lines_that_meet_by_least = "two lines that meet, by least squares over the last rise and the first two minutes of the level; less 6 s of the rise, by which wax and sensor lag. The bounds (95 %) take in where the bend may lie, the lag, and 1.6 K for the stroke of the valve",
        "zwei Geraden, die sich treffen, nach kleinsten Quadraten über den letzten Anstieg und die ersten zwei Minuten danach; abzüglich 6 s Anstieg, um die Wachs und Fühler nachgehen. Die Grenzen (95 %) umfassen, wo der Knick liegen kann, das Nachgehen und 1,6 K für den Hub des Ventils";
    /// Why a check says what it says: the thermostat.
    pub ends_before_settled(c) = "the log ends at {c} °C before the temperature settled",
        "die Aufzeichnung endet bei {c} °C, bevor sich die Temperatur einpendelte";
    /// Why a check says what it says: the thermostat.
    pub rose_without_settling(c) = "it rose to {c} °C without settling: stuck shut, coolant low, or no flow",
        "stieg auf {c} °C, ohne sich einzupendeln: geschlossen festgegangen, zu wenig Kühlmittel oder kein Durchfluss";
    /// Why a check says what it says: the thermostat.
    pub began_with_it_open(c) = "the drive began at {c} °C, with the thermostat open or nearly so",
        "die Fahrt begann bei {c} °C, der Thermostat offen oder fast offen";
    /// Why a check says what it says: the thermostat.
    pub settled_from(c, from) = "it settled at {c} °C from {from}",
        "pendelte sich ab {from} bei {c} °C ein";
    /// Why a check says what it says: the thermostat.
    pub but_it_only_stood(settled) = "{settled}, but it only stood: with the heater on a sound engine may do that",
        "{settled}, stand aber nur: mit Heizung an kann das auch bei einem intakten Motor so sein";
    /// Why a check says what it says: the thermostat.
    pub stuck_open(settled, c) = "{settled}, below {c} °C: stuck open, or there is none",
        "{settled}, unter {c} °C: offen festgegangen, oder keiner drin";
    /// Why a check says what it says: the thermostat.
    pub settled_only_at(c) = "it settled only at {c} °C: stuck shut, coolant low, or no flow",
        "pendelte sich erst bei {c} °C ein: geschlossen festgegangen, zu wenig Kühlmittel oder kein Durchfluss";
    /// Why a check says what it says: the thermostat.
    pub bend_not_clear(c) = "it settled at {c} °C, but the bend before that is not clear",
        "pendelte sich bei {c} °C ein, aber der Knick davor ist nicht deutlich";
    /// Why a check says what it says: the thermostat.
    pub opens_at(c, within, at) = "opens at {c} ± {within} °C, {at}", "öffnet bei {c} ± {within} °C, {at}";
    /// Why a check says what it says: the thermostat.
    pub late_for_its_stamp(told, c) = "{told}: late for one stamped {c} °C",
        "{told}: spät für einen mit {c} °C";
    /// Why a check says what it says: the thermostat.
    pub early_for_its_stamp(told, c) = "{told}: early for one stamped {c} °C",
        "{told}: früh für einen mit {c} °C";
    /// Line of a working: the thermostat.
    pub mean_of_two_minutes(c) = "mean of two minutes in which it rose by less than 0.9 K/min; below {c} °C no sound thermostat holds it",
        "Mittel aus zwei Minuten, in denen es um weniger als 0,9 K/min stieg; unter {c} °C hält kein intakter Thermostat";
    /// Why a check says what it says: what the complaint needs.
    pub no_complaint_was_given = "no complaint was given", "keine Beanstandung angegeben";
    /// Why a check says what it says: what the complaint needs.
    pub the_complaint_does_not_say_when = "the complaint does not say when it happens",
        "die Beanstandung sagt nicht, wann es auftritt";
    /// What to read or drive next: what the complaint needs.
    pub say_it_with_minutes_speed_standing = "say it with minutes, speed, standing, cold, hot or load",
        "mit Minuten, Geschwindigkeit, Stand, kalt, heiß oder Last angeben";
    /// Why a check says what it says: what the complaint needs.
    pub it_came_back_in_this_drive = "it came back in this drive",
        "es kam in dieser Fahrt wieder";
    /// What to read or drive next: what the complaint needs.
    pub record_road_speed_pid_0d_as = "record road speed (PID 0D) as well",
        "auch die Geschwindigkeit aufzeichnen (PID 0D)";
    /// Why a check says what it says: what the complaint needs.
    pub without_engine_load_the_log_cant = "without engine load the log can't tell of pulling",
        "ohne Motorlast sagt die Aufzeichnung nichts von Fahrt unter Last";
    /// What to read or drive next: what the complaint needs.
    pub record_load_pid_04_as_well = "record load (PID 04) as well",
        "auch die Last aufzeichnen (PID 04)";
    /// Why a check says what it says: what the complaint needs.
    pub without_rpm_the_log_cant_tell = "without rpm the log can't tell of revs",
        "ohne Drehzahl sagt die Aufzeichnung nichts von Drehzahlen";
    /// Why a check says what it says: what the complaint needs.
    pub on_the_motorway_in_one_go = "on the motorway in one go",
        "auf der Autobahn in einem Stück";
    /// Why a check says what it says: what the complaint needs.
    pub in_town_stop_and_go = "in town, stop and go", "in der Stadt, Stop-and-go";
    /// Why a check says what it says: what the complaint needs.
    pub standing_with_the_engine_running = "standing with the engine running",
        "im Stand mit laufendem Motor";
    /// Why a check says what it says: what the complaint needs.
    pub engine_running = "engine running", "Motor läuft";
    /// What to read or drive next: what the complaint needs.
    pub say_when_it_happens = "say when it happens, such as \"after 20 min of motorway\"",
        "angeben, wann es auftritt, etwa „nach 20 min Autobahn“";
    /// What to read or drive next: what the complaint needs.
    pub drive_again(needs) = "drive again: {needs}", "noch einmal fahren: {needs}";
    /// Why a check says what it says: what the complaint needs.
    pub without_road_speed(need) = "without road speed the log can't tell of {need}",
        "ohne Geschwindigkeit sagt die Aufzeichnung nichts von: {need}";
    /// Why a check says what it says: what the complaint needs.
    pub so_much_of(what, got, wanted, unit) = "{what}: {got} of {wanted} {unit}", "{what}: {got} von {wanted} {unit}";
    /// Why a check says what it says: what the complaint needs.
    pub minutes_at_speed(minutes, speed) = "{minutes} min at {speed} km/h or more",
        "{minutes} min bei {speed} km/h oder mehr";
    /// Why a check says what it says: what the complaint needs.
    pub at_most_at_speed(most, needed) = "at most {most} km/h, {needed} km/h are needed",
        "höchstens {most} km/h, {needed} km/h sind nötig";
    /// Why a check says what it says: what the complaint needs.
    pub driven = "driven", "gefahren";
    /// Why a check says what it says: what the complaint needs.
    pub log_does_not_tell_of(what) = "a log does not tell of {what}",
        "davon sagt eine Aufzeichnung nichts: {what}";
    /// What to read or drive next: what the complaint needs.
    pub note_beside_the_log(what) = "note beside the log that it was driven with {what}",
        "neben der Aufzeichnung notieren, dass so gefahren wurde: {what}";
    /// Why a check says what it says: what the complaint needs.
    pub started_at(c) = "started at {c} °C", "gestartet bei {c} °C";
    /// Why a check says what it says: what the complaint needs.
    pub started_not_cold(c) = "started at {c} °C, not cold", "gestartet bei {c} °C, nicht kalt";
    /// Why a check says what it says: what the complaint needs.
    pub warm_for(minutes) = "warm for {minutes} min", "{minutes} min warm";
    /// Why a check says what it says: what the complaint needs.
    pub warm_only_for(minutes) = "warm for {minutes} min only", "nur {minutes} min warm";
    /// Why a check says what it says: what the complaint needs.
    pub minutes_loaded(minutes) = "{minutes} min at 75 % load or more",
        "{minutes} min bei 75 % Last oder mehr";
    /// Why a check says what it says: what the complaint needs.
    pub minutes_loaded_one_needed(minutes) = "{minutes} min at 75 % load or more, one is needed",
        "{minutes} min bei 75 % Last oder mehr, eine ist nötig";
    /// Why a check says what it says: what the complaint needs.
    pub revs_up_to(rpm) = "up to {rpm} 1/min", "bis {rpm} 1/min";
    /// Why a check says what it says: what the complaint needs.
    pub revs_at_most(most, wanted) = "at most {most} of {wanted} 1/min",
        "höchstens {most} von {wanted} 1/min";
    /// Why a check says what it says: what the complaint needs.
    pub without_coolant_temperature_the_log_cant = "without coolant temperature the log can't tell cold from hot",
        "ohne Kühlmitteltemperatur sagt die Aufzeichnung nicht, ob kalt oder heiß";
    /// What to read or drive next: what the complaint needs.
    pub record_coolant_pid_05_as_well = "record coolant (PID 05) as well",
        "auch das Kühlmittel aufzeichnen (PID 05)";
    /// What to read or drive next: overheating.
    pub drive_it_again_with_a_reading = "drive it again with a reading every second",
        "noch einmal fahren, jede Sekunde ein Messwert";
    /// What to read or drive next: overheating.
    pub drive_it_warm_for_five_minutes = "drive it warm for five minutes, then let it stand idling",
        "fünf Minuten warm fahren, dann im Leerlauf stehen lassen";
    /// Line of a working: overheating.
    pub hottest_reading_against_the_line = "hottest reading against the line",
        "heißester Messwert gegen die Grenze";
    /// Why a check says what it says: overheating.
    pub standing_not_at_speed_look_at = "standing, not at speed: look at the fan and the air through the radiator",
        "im Stand, nicht in Fahrt: Lüfter und Luft durch den Kühler ansehen";
    /// Why a check says what it says: overheating.
    pub at_speed_not_standing_look_at = "at speed, not standing: look at the radiator, the flow and the head gasket",
        "in Fahrt, nicht im Stand: Kühler, Durchfluss und Zylinderkopfdichtung ansehen";
    /// Why a check says what it says: overheating.
    pub standing_and_at_speed_look_at = "standing and at speed: look at level, air, thermostat and pump",
        "im Stand und in Fahrt: Füllstand, Luft, Thermostat und Pumpe ansehen";
    /// Why a check says what it says: overheating.
    pub look_at_level_air_thermostat_pump = "look at level, air, thermostat, pump and fan",
        "Füllstand, Luft, Thermostat, Pumpe und Lüfter ansehen";
    /// What to read or drive next: overheating.
    pub find_the_makers_highest_temperature_and = "find the maker's highest temperature and judge again with it",
        "die höchste zulässige Temperatur beim Hersteller nachsehen und damit neu beurteilen";
    /// What to read or drive next: overheating.
    pub let_it_cool_check_the_level = "let it cool, check the level, bleed it and drive again",
        "abkühlen lassen, Füllstand prüfen, entlüften und noch einmal fahren";
    /// What to read or drive next: overheating.
    pub go_on_recording_watch_the_gauge = "go on recording, watch the gauge, and stop if it climbs",
        "weiter aufzeichnen, Anzeige beobachten und anhalten, wenn sie steigt";
    /// What to read or drive next: overheating.
    pub test_the_cap_and_look_for = "test the cap and look for steam, then judge with the boiling point",
        "Deckel prüfen und nach Dampf sehen, dann mit dem Siedepunkt beurteilen";
    /// Line of a working: overheating.
    pub the_line = "line", "Grenze";
    /// Why a check says what it says: overheating.
    pub stands_alone(c) = "one reading of {c} °C stands alone",
        "ein Messwert von {c} °C steht allein";
    /// Why a check says what it says: overheating.
    pub not_warm_for_long(c) = "at most {c} °C, but it was not seen settled and warm for long",
        "höchstens {c} °C, aber nicht lange eingependelt und warm";
    /// Why a check says what it says: overheating.
    pub is_too_hot(c, at, limit, where_to_look) = "{c} °C at {at}, {limit} °C or more is too hot; {where_to_look}",
        "{c} °C bei {at}, {limit} °C oder mehr ist zu heiß; {where_to_look}";
    /// Why a check says what it says: overheating.
    pub most_standing_and_at_speed(standing, speed) = "at most {standing} °C standing and {speed} °C at speed",
        "höchstens {standing} °C im Stand und {speed} °C in Fahrt";
    /// Why a check says what it says: overheating.
    pub most_standing_only(c) = "at most {c} °C standing; not seen at speed",
        "höchstens {c} °C im Stand; in Fahrt nicht gesehen";
    /// Why a check says what it says: overheating.
    pub most_at_speed_only(c) = "at most {c} °C at speed; not seen standing",
        "höchstens {c} °C in Fahrt; im Stand nicht gesehen";
    /// Why a check says what it says: overheating.
    pub at_most(c) = "at most {c} °C", "höchstens {c} °C";
    /// Why a check says what it says: overheating.
    pub hot_though_meant(c, at) = "{c} °C at {at}: hot, though some engines are meant to run so",
        "{c} °C bei {at}: heiß, aber manche Motoren sollen so laufen";
    /// Why a check says what it says: overheating.
    pub fell_too_fast(at) = "at {at} the reading fell faster than coolant cools: the sensor may stand in steam",
        "bei {at} fiel der Messwert schneller, als Kühlmittel abkühlt: der Fühler steht vielleicht im Dampf";
    /// Why a check says what it says: overheating.
    pub still_rising(c) = "it was still rising at {c} °C when the log ended",
        "stieg bei {c} °C noch, als die Aufzeichnung endete";
    /// Why a check says what it says: overheating.
    pub sat_where_it_boils(c) = "it sat near {c} °C, where water boils without pressure: it may hold, or boil",
        "stand nahe {c} °C, wo Wasser ohne Druck siedet: es hält vielleicht, oder es siedet";
    /// Why a check says what it says: the fan.
    pub without_road_speed_a_fan_cant = "without road speed a fan can't be told from the wind",
        "ohne Geschwindigkeit ist der Lüfter nicht vom Fahrtwind zu unterscheiden";
    /// What to read or drive next: the fan.
    pub let_it_stand_idling_warm_until = "let it stand idling, warm, until the fan has run twice",
        "warm im Leerlauf stehen lassen, bis der Lüfter zweimal lief";
    /// Why a check says what it says: the fan.
    pub it_never_stood_with_the_engine = "it never stood with the engine running",
        "es stand nie mit laufendem Motor";
    /// Why a check says what it says: the fan.
    pub no_fan_in_time(c) = "standing it went to {c} °C and no fan brought it down in time",
        "stieg im Stand auf {c} °C, und kein Lüfter senkte es rechtzeitig";
    /// Why a check says what it says: the fan.
    pub came_down(times, on, off) = "{times} times it came down while standing, from {on} to {off} °C",
        "{times}-mal sank es im Stand, von {on} auf {off} °C";
    /// Why a check says what it says: the fan.
    pub fan_stayed_off(c) = "the log says the fan stayed off at {c} °C",
        "laut Aufzeichnung blieb der Lüfter bei {c} °C aus";
    /// Why a check says what it says: the fan.
    pub no_fan_seen(c) = "standing it reached {c} °C, and no fan was seen to bring it down",
        "im Stand {c} °C erreicht, und kein Lüfter war zu sehen, der es senkt";
    /// What to read or drive next: air.
    pub record_the_coolant_every_second = "record the coolant every second",
        "das Kühlmittel jede Sekunde aufzeichnen";
    /// Line of a working: air.
    pub spikes_of_the_coolant = "spikes of the coolant", "Spitzen des Kühlmittels";
    /// What to read or drive next: air.
    pub drive_it_warm_for_five_minutes_x = "drive it warm for five minutes, with some standing and some revs",
        "fünf Minuten warm fahren, auch stehen und Drehzahl geben";
    /// What to read or drive next: air.
    pub record_the_coolant_every_second_or = "record the coolant every second or two",
        "das Kühlmittel alle ein bis zwei Sekunden aufzeichnen";
    /// Why a check says what it says: air.
    pub shot_up(times, height, first) = "{times} times it shot up by as much as {height} K and fell back, first at {first}: air or steam passes the sensor",
        "{times}-mal schoss es um bis zu {height} K hoch und fiel zurück, zuerst bei {first}: Luft oder Dampf zieht am Fühler vorbei";
    /// Why a check says what it says: air.
    pub overshot(peak, at, level) = "it overshot to {peak} °C at {at} and fell to {level} °C on the road: the thermostat opens late, or air holds it shut",
        "schoss bei {at} auf {peak} °C über und fiel auf der Straße auf {level} °C: der Thermostat öffnet spät, oder Luft hält ihn zu";
    /// Why a check says what it says: air.
    pub slip_or_spike(c, at) = "one reading of {c} °C at {at} stands alone: a slip or a spike",
        "ein Messwert von {c} °C bei {at} steht allein: Ausrutscher oder Spitze";
    /// Line of a working: air.
    pub spikes_of(count, height) = "{count} of {height} K or more", "{count} von {height} K oder mehr";
    /// Line of a working: air.
    pub spike_limits(up, back) = "up within {up} s and back within {back} s, engine running; several litres of coolant and the metal around them cannot do that",
        "hoch in {up} s und zurück in {back} s bei laufendem Motor; mehrere Liter Kühlmittel und das Metall ringsum können das nicht";
    /// Why a check says what it says: air.
    pub no_spike_but_short(minutes) = "no spike, but it was warm for {minutes} min only, or did not settle",
        "keine Spitze, aber nur {minutes} min warm, oder nicht eingependelt";
    /// Why a check says what it says: air.
    pub no_spike_but_seldom(seconds) = "no spike, but with a reading every {seconds} s one may slip through",
        "keine Spitze, aber bei einem Messwert alle {seconds} s kann eine durchrutschen";
    /// Why a check says what it says: air.
    pub no_spike_in(height, minutes) = "no spike of {height} K or more in {minutes} min warm",
        "keine Spitze von {height} K oder mehr in {minutes} min warm";
}
