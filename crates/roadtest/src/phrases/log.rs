//! What is said of a recording: why it cannot be read, what to know of it, what it holds.

use phrases::phrases;

phrases! {
    /// What a log can hold.
    pub quantity_coolant = "coolant", "Kühlmittel";
    /// What a log can hold.
    pub quantity_intake = "intake", "Ansaugluft";
    /// What a log can hold.
    pub quantity_ambient = "ambient", "Außentemperatur";
    /// What a log can hold.
    pub quantity_oil = "oil", "Öl";
    /// What a log can hold.
    pub quantity_speed = "speed", "Geschwindigkeit";
    /// What a log can hold.
    pub quantity_rpm = "rpm", "Drehzahl";
    /// What a log can hold.
    pub quantity_load = "load", "Last";
    /// What a log can hold.
    pub quantity_voltage = "voltage", "Spannung";
    /// What a log can hold.
    pub quantity_short_trim_1 = "short trim 1", "kurze Korrektur 1";
    /// What a log can hold.
    pub quantity_long_trim_1 = "long trim 1", "lange Korrektur 1";
    /// What a log can hold.
    pub quantity_short_trim_2 = "short trim 2", "kurze Korrektur 2";
    /// What a log can hold.
    pub quantity_long_trim_2 = "long trim 2", "lange Korrektur 2";
    /// What a log can hold.
    pub quantity_run_time = "run time", "Laufzeit";
    /// What a log can hold.
    pub quantity_manifold = "manifold", "Saugrohrdruck";
    /// What a log can hold.
    pub quantity_barometer = "barometer", "Luftdruck";
    /// What a log can hold.
    pub quantity_air_flow = "air flow", "Luftmasse";
    /// What a log can hold.
    pub quantity_throttle = "throttle", "Drosselklappenstellung";
    /// What a log can hold.
    pub quantity_fan = "fan", "Lüfter";
    /// What a log can hold.
    pub quantity_closed_loop = "closed loop", "geschlossener Regelkreis";
    /// What a log can hold.
    pub quantity_timing = "timing", "Zündzeitpunkt";
    /// What a log can hold.
    pub quantity_distance_with_lamp = "distance with lamp", "Strecke mit Lampe";
    /// What a log can hold.
    pub quantity_fuel_level = "fuel level", "Tankfüllung";
    /// What a log can hold.
    pub quantity_warm_ups = "warm-ups", "Warmläufe";
    /// What a log can hold.
    pub quantity_distance_since_cleared = "distance since cleared",
        "Strecke seit dem Löschen";
    /// What a log can hold.
    pub quantity_absolute_load = "absolute load", "absolute Last";
    /// What a log can hold.
    pub quantity_ratio = "ratio", "Luftverhältnis";
    /// What a log can hold.
    pub quantity_relative_throttle = "relative throttle", "relative Drosselklappenstellung";
    /// What a log can hold.
    pub quantity_minutes_with_lamp = "minutes with lamp", "Minuten mit Lampe";
    /// What a log can hold.
    pub quantity_minutes_since_cleared = "minutes since cleared", "Minuten seit dem Löschen";
    /// What a log can hold.
    pub quantity_fuel_rate = "fuel rate", "Verbrauch";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub log_is_empty = "the file is empty: record the drive again, or give the file that holds it",
        "die Datei ist leer: die Fahrt noch einmal aufzeichnen, oder die richtige Datei angeben";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_heading(first) = "no heading says what is recorded (first line: {first}): the first line has to name each column, such as time, coolant, speed; or map the columns by their number",
        "keine Überschrift sagt, was aufgezeichnet ist (erste Zeile: {first}): die erste Zeile muss jede Spalte benennen, etwa time, coolant, speed; oder die Spalten nach Nummer zuordnen";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_time(columns) = "no column tells the time (columns: {columns}): map one to `time`, or say how many seconds lie between rows with `step`",
        "keine Spalte sagt die Zeit (Spalten: {columns}): eine zu „time“ zuordnen, oder mit „step“ die Sekunden zwischen den Zeilen angeben";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub nothing_known(columns) = "no column is known but the time (columns: {columns}): map those that matter, such as `coolant`",
        "keine Spalte ist bekannt außer der Zeit (Spalten: {columns}): die wichtigen zuordnen, etwa „coolant“";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_column(column, columns) = "the mapping names the column `{column}`, which is not there (columns: {columns}): write it as in the heading, or by its number",
        "die Zuordnung nennt die Spalte „{column}“, die es nicht gibt (Spalten: {columns}): so schreiben wie in der Überschrift, oder mit ihrer Nummer";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub mapping_not_understood(line, text, mend) = "line {line} of the mapping, `{text}`, is not understood: {mend}",
        "Zeile {line} der Zuordnung, „{text}“, ist nicht verständlich: {mend}";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_rows(first) = "no row can be read ({first}): check the delimiter and the decimal sign; where commas part the columns, decimals take a point",
        "keine Zeile ist lesbar ({first}): Trennzeichen und Dezimalzeichen prüfen; wo Kommas die Spalten trennen, haben Zahlen einen Punkt";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_frames(first) = "no line holds seconds, an id and bytes in hex ({first}): write each frame as in `12.40 7E8 03 41 05 7B`",
        "keine Zeile hat Sekunden, Kennung und Bytes in Hex ({first}): jede Botschaft schreiben wie „12.40 7E8 03 41 05 7B“";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub no_answers = "no answer of service 01, 03, 07 or 0A is in these frames: record the answers of the units (7E8 to 7EF), not the requests alone",
        "in diesen Botschaften ist keine Antwort der Dienste 01, 03, 07 oder 0A: die Antworten der Steuergeräte aufzeichnen (7E8 bis 7EF), nicht nur die Anfragen";
    /// Why a log cannot be read, and after the last colon how to mend it.
    pub check_the_file = "check the file", "die Datei prüfen";
    /// Why a log cannot be read, and after the last colon how to mend it: a mapping of columns.
    pub write_name_heading = "write NAME = HEADING", "NAME = ÜBERSCHRIFT schreiben";
    /// Why a log cannot be read, and after the last colon how to mend it: a mapping of columns.
    pub write_the_heading_or_the_number = "write the heading or the number of the column",
        "Überschrift oder Nummer der Spalte schreiben";
    /// Why a log cannot be read, and after the last colon how to mend it: a mapping of columns.
    pub write_the_seconds_from_row_to = "write the seconds from row to row",
        "die Sekunden von Zeile zu Zeile schreiben";
    /// Why a log cannot be read, and after the last colon how to mend it: a mapping of columns.
    pub unit_not_known(unit) = "the unit {unit} is not known, write °C, °F, km/h, mph, V, %, s",
        "die Einheit {unit} ist nicht bekannt, °C, °F, km/h, mph, V, %, s schreiben";
    /// Why a log cannot be read, and after the last colon how to mend it: a mapping of columns.
    pub write_a_quantity(names) = "write one of time, step, {names}",
        "eines davon schreiben, time, step, {names}";
    /// Something to know of a log: a table.
    pub other_count_of_cells(found, width) = "{found} cells where the heading has {width}: the line is left out",
        "{found} Zellen, wo die Überschrift {width} hat: die Zeile entfällt";
    /// Something to know of a log: a table.
    pub more_lines_left_out(more) = "{more} more lines with another count of cells are left out",
        "{more} weitere Zeilen mit anderer Zahl von Zellen entfallen";
    /// Something to know of a log: a table.
    pub the_time_has_no_unit_by = "the time has no unit; by its steps it is taken as milliseconds",
        "die Zeit hat keine Einheit; nach ihren Schritten gilt sie als Millisekunden";
    /// Something to know of a log: a table.
    pub the_time_does_not_fit_those = "the time does not fit those around it: the line is left out",
        "die Zeit passt nicht zu denen ringsum: die Zeile entfällt";
    /// Something to know of a log: a table.
    pub the_time_begins_again_here_the = "the time begins again here; the rest is taken to follow at once, though nobody knows how long the pause was",
        "die Zeit beginnt hier von vorn; der Rest gilt als direkt danach, obwohl niemand weiß, wie lang die Pause war";
    /// Something to know of a log: a table.
    pub is_no_time(cell) = "`{cell}` is no time: the line is left out",
        "„{cell}“ ist keine Zeit: die Zeile entfällt";
    /// Something to know of a log: a table.
    pub clock_stands_still(lines) = "the clock stands still for {lines} lines from here",
        "die Uhr steht ab hier {lines} Zeilen lang";
    /// Something to know of a log: a table.
    pub nothing_recorded_for(seconds) = "nothing was recorded for {seconds} s before this line",
        "vor dieser Zeile wurde {seconds} s lang nichts aufgezeichnet";
    /// Something to know of a log: a table.
    pub more_slips_of_the_clock(more) = "{more} more slips of the clock",
        "{more} weitere Sprünge der Uhr";
    /// Something to know of a log: a table.
    pub taken_as_fahrenheit(heading) = "`{heading}` has no unit; by its height it is taken as °F",
        "„{heading}“ hat keine Einheit; nach der Höhe gilt es als °F";
    /// Something to know of a log: a table.
    pub cannot_be_true(cell, what) = "`{cell}` cannot be true of {what}: left out",
        "„{cell}“ kann nicht stimmen ({what}): entfällt";
    /// Something to know of a log: a table.
    pub more_readings_left_out(more, what) = "{more} more readings of {what} left out",
        "{more} weitere Messwerte entfallen ({what})";
    /// Something to know of a log: SAE J1979 frames.
    pub not_seconds_id_and_bytes_in = "not seconds, id and bytes in hex: the line is left out",
        "nicht Sekunden, Kennung und Bytes in Hex: die Zeile entfällt";
    /// Something to know of a log: SAE J1979 frames.
    pub the_time_begins_again_here_the_d = "the time begins again here; the rest is taken to follow at once",
        "die Zeit beginnt hier von vorn; der Rest gilt als direkt danach";
    /// Something to know of a log: SAE J1979 frames.
    pub codes_were_cleared_here = "codes were cleared here",
        "hier wurden Fehlercodes gelöscht";
    /// Something to know of a log: SAE J1979 frames.
    pub general_reject = "general reject", "allgemein abgelehnt";
    /// Something to know of a log: SAE J1979 frames.
    pub service_not_supported = "service not supported", "Dienst nicht unterstützt";
    /// Something to know of a log: SAE J1979 frames.
    pub sub_function_not_supported_or_invalid = "sub-function not supported or invalid format",
        "Unterfunktion nicht unterstützt oder falsches Format";
    /// Something to know of a log: SAE J1979 frames.
    pub busy_repeat_the_request = "busy, repeat the request",
        "beschäftigt, Anfrage wiederholen";
    /// Something to know of a log: SAE J1979 frames.
    pub conditions_not_correct = "conditions not correct", "Bedingungen nicht erfüllt";
    /// Something to know of a log: SAE J1979 frames.
    pub more_broken_lines(more) = "{more} more broken lines are left out",
        "{more} weitere unlesbare Zeilen entfallen";
    /// Something to know of a log: SAE J1979 frames.
    pub told_by_unit(what, unit) = "{what} is told by unit {unit}",
        "{what} meldet das Steuergerät {unit}";
    /// Something to know of a log: SAE J1979 frames.
    pub units_answered(count, units, engine) = "{count} units answered ({units}); {engine} is taken as the engine's",
        "{count} Steuergeräte antworteten ({units}); {engine} gilt als das des Motors";
    /// Something to know of a log: SAE J1979 frames.
    pub unit_refused(unit, service, why, times) = "unit {unit} refused service {service}: {why} ({times} times)",
        "Steuergerät {unit} lehnte Dienst {service} ab: {why} ({times}-mal)";
    /// Something to know of a log: SAE J1979 frames.
    pub refused_for_reason(code) = "reason {code}", "Grund {code}";
    /// Something to know of a log: SAE J1979 frames.
    pub a_frame_ends_before_its_length = "a frame ends before its length says",
        "eine Botschaft endet, bevor ihre Länge es sagt";
    /// Something to know of a log: SAE J1979 frames.
    pub a_message_begins_before_the_one = "a message begins before the one before it ended",
        "eine Nachricht beginnt, bevor die vorige endete";
    /// Something to know of a log: SAE J1979 frames.
    pub a_continued_frame_without_its_beginning = "a continued frame without its beginning",
        "eine Fortsetzung ohne Anfang";
    /// Something to know of a log: SAE J1979 frames.
    pub a_frame_of_this_message_is = "a frame of this message is missing: it is left out",
        "ein Teil dieser Nachricht fehlt: sie entfällt";
    /// Something to know of a log: SAE J1979 frames.
    pub message_cut_off(unit) = "a message of {unit} is cut off by the end of the log",
        "eine Nachricht von {unit} bricht am Ende der Aufzeichnung ab";
}
