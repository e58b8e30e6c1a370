//! What is asked and answered of a drive.

use phrases::phrases;

phrases! {
    /// One of the choices of a field: a drive.
    pub found_from_the_file = "found from the file", "aus der Datei erkannt";
    /// One of the choices of a field: a drive.
    pub a_table = "a table", "eine Tabelle";
    /// One of the choices of a field: a drive.
    pub sae_j1979_frames = "SAE J1979 frames", "SAE-J1979-Botschaften";
    /// Name of a room: a drive.
    pub road_test = "Road test", "Probefahrt";
    /// What is in a room: a drive.
    pub what_a_drive_proves = "what a drive proves", "was eine Fahrt beweist";
    /// Title of a note: a drive.
    pub what_a_drive_can_say = "What a drive can say", "Was eine Fahrt sagen kann";
    /// Note: a drive.
    pub each_check_says_held_failed_not = "Each check says held, failed, not provoked, or can't tell with what to read next. What was not recorded is never taken as good.",
        "Jede Prüfung sagt: bestanden, nicht bestanden, nicht ausgelöst, oder nicht zu sagen mit dem, was als Nächstes zu messen ist. Was nicht aufgezeichnet wurde, gilt nie als gut.";
    /// Label of a field: a drive.
    pub the_complaint_in_the_customers_words = "The complaint, in the customer's words",
        "Die Beanstandung in den Worten des Kunden";
    /// Hint at a field: a drive.
    pub such_as_comes_on_after_20 = "such as: comes on after 20 min of motorway",
        "etwa: kommt nach 20 min Autobahn";
    /// Label of a field: a drive.
    pub stamped_on_the_thermostat = "Stamped on the thermostat",
        "Eingeprägt auf dem Thermostat";
    /// Hint at a field: a drive.
    pub may_stay_empty = "may stay empty", "kann leer bleiben";
    /// Label of a field: a drive.
    pub the_makers_highest_coolant_temperature = "The maker's highest coolant temperature",
        "Höchste Kühlmitteltemperatur laut Hersteller";
    /// Label of a field: a drive.
    pub where_this_coolant_boils_under_its = "Where this coolant boils under its cap",
        "Siedepunkt dieses Kühlmittels unter dem Deckel";
    /// Hint at a field: a drive.
    pub as_how_far_it_protects_has = "as “How far it protects” has it; may stay empty",
        "wie bei „Wie weit es schützt“; kann leer bleiben";
    /// Name of a calculator: a drive.
    pub a_recorded_drive = "A recorded drive", "Eine aufgezeichnete Fahrt";
    /// What a calculator is for: a drive.
    pub a_loggers_table_or_sae_j1979 = "a logger's table, or SAE J1979 frames",
        "Tabelle eines Loggers, oder SAE-J1979-Botschaften";
    /// Label of a field: a drive.
    pub the_recording = "The recording", "Die Aufzeichnung";
    /// Hint at a field: a drive.
    pub a_table_with_its_headings_or = "a table with its headings, or frames a line each: seconds, id, bytes in hex",
        "eine Tabelle mit Überschriften, oder je Zeile eine Botschaft: Sekunden, Kennung, Bytes in Hex";
    /// Label of a field: a drive.
    pub it_is = "It is", "Das ist";
    /// Title over fields: a drive.
    pub a_column_that_the_headings_do = "A column that the headings do not explain",
        "Eine Spalte, die ihre Überschrift nicht erklärt";
    /// Label of a field: a drive.
    pub columns = "Columns", "Spalten";
    /// Hint at a field: a drive.
    pub one_a_line_such_as_coolant = "one a line, such as: coolant = Temp 3 [°F]",
        "eine je Zeile, etwa: coolant = Temp 3 [°F]";
    /// Label of a field: a drive.
    pub minutes_since_the_start = "Minutes since the start", "Minuten seit dem Start";
    /// Label of a field: a drive.
    pub coolant = "Coolant", "Kühlmittel";
    /// Label of a field: a drive.
    pub speed = "Speed", "Geschwindigkeit";
    /// Label of a field: a drive.
    pub voltage = "Voltage", "Spannung";
    /// Name of a calculator: a drive.
    pub readings_by_hand = "Readings by hand", "Messwerte von Hand";
    /// What a calculator is for: a drive.
    pub typed_at_the_kerb_by_a = "typed at the kerb, by a second person",
        "am Straßenrand eingetippt, von einem Zweiten";
    /// Title over fields: a drive.
    pub reading = "Reading", "Messwert";
    /// What is wrong with a field, and how to mend it: a drive.
    pub paste_the_recording_or_take_it = "paste the recording, or take it from a file",
        "die Aufzeichnung einfügen, oder aus einer Datei nehmen";
    /// What is wrong with a field, and how to mend it: a drive.
    pub it_is_not_after_the_one = "it is not after the one above; write them as they were read",
        "er liegt nicht nach dem darüber; in der Reihenfolge der Messung eintragen";
    /// What is wrong with a field, and how to mend it: a drive.
    pub nothing_was_read_then_write_one = "nothing was read then; write one of the three",
        "da wurde nichts gemessen; einen der drei Werte eintragen";
    /// Part of an answer: a drive.
    pub not_used(columns) = "Not used: {columns}.", "Nicht verwendet: {columns}.";
    /// Part of an answer: a drive.
    pub line(number) = "line {number}", "Zeile {number}";
    /// Part of an answer: a drive.
    pub because_and_next(because, next) = "{because}. Next: {next}", "{because}. Als Nächstes: {next}";
}
