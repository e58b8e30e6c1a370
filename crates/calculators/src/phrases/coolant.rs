//! What is asked and answered of coolant.

use phrases::phrases;

phrases! {
    /// One of the choices of a field: the room of coolant.
    pub antifreeze_from_the_bottle = "anti\u{ad}freeze from the bottle",
        "Frostschutz aus der Flasche";
    /// One of the choices of a field: the room of coolant.
    pub pure_glycol_by_volume = "pure glycol, by volume", "reines Glykol, nach Volumen";
    /// One of the choices of a field: the room of coolant.
    pub pure_glycol_by_mass = "pure glycol, by mass", "reines Glykol, nach Masse";
    /// Name of a room: the room of coolant.
    pub coolant = "Coolant", "Kühlmittel";
    /// What is in a room: the room of coolant.
    pub mix_fill_leak_test = "mix, fill, leak test", "Mischung, Füllen, Dichtprüfung";
    /// Title of a note: the room of coolant.
    pub about_50_is_not_50 = "50 % is not 50 %", "50 % sind nicht 50 %";
    /// Note: the room of coolant.
    pub a_bottle_of_antifreeze_is_about = "A bottle of antifreeze is about 95 % glycol. Half bottle, half water is 47 % glycol by volume and 50 % by mass. Say which one you mean; every answer shows all three.",
        "Eine Flasche Frostschutz ist etwa 95 % Glykol. Halb Frostschutz, halb Wasser sind 47 % Glykol nach Volumen und 50 % nach Masse. Angeben, was gemeint ist; jede Antwort zeigt alle drei.";
    /// Label of a field: the room of coolant.
    pub height_above_the_sea = "Height above the sea", "Höhe über dem Meer";
    /// Hint at a field: the room of coolant.
    pub such_as_650_m_or_2100 = "such as 650 m or 2100 ft", "etwa 650 m oder 2100 ft";
    /// Label of a field: the room of coolant.
    pub glycol_in_the_concentrate = "Glycol in the concentrate", "Glykol im Konzentrat";
    /// Hint at a field: the room of coolant.
    pub by_mass_95_if_empty = "by mass; 95 % if empty", "nach Masse; leer: 95 %";
    /// Title over fields: the room of coolant.
    pub by_the_label_or_the_maker = "By the label or the maker",
        "Nach Etikett oder Hersteller";
    /// Label of a field: the room of coolant.
    pub points_of_the_label = "Points of the label", "Punkte auf dem Etikett";
    /// Hint at a field: the room of coolant.
    pub concentrate_and_freezing_point_40_24 = "concentrate and freezing point: 40 % −24 °C, 50 % −37 °C. They win over what is computed.",
        "Konzentrat und Gefrierpunkt: 40 % −24 °C, 50 % −37 °C. Sie gehen vor dem Gerechneten.";
    /// Label of a field: the room of coolant.
    pub least_concentrate_allowed = "Least concentrate allowed",
        "Mindestens erlaubtes Konzentrat";
    /// Hint at a field: the room of coolant.
    pub about_40_if_empty = "40 % if empty", "leer: 40 %";
    /// Label of a field: the room of coolant.
    pub most_concentrate_allowed = "Most concentrate allowed",
        "Höchstens erlaubtes Konzentrat";
    /// Hint at a field: the room of coolant.
    pub about_60_if_empty = "60 % if empty", "leer: 60 %";
    /// Part of an answer: the room of coolant.
    pub stronger_than_the_concentrate = "stronger than the concentrate",
        "stärker als das Konzentrat";
    /// Row of an answer: the room of coolant.
    pub antifreeze_concentrate_by_volume = "antifreeze concentrate, by volume",
        "Frostschutzkonzentrat, nach Volumen";
    /// Row of an answer: the room of coolant.
    pub glycol_by_volume(glycol) = "{glycol} glycol, by volume", "{glycol}glykol, nach Volumen";
    /// Row of an answer: the room of coolant.
    pub glycol_by_mass(glycol) = "{glycol} glycol, by mass", "{glycol}glykol, nach Masse";
    /// Part of an answer: the room of coolant.
    pub standing_of_limits(standing, least, most) = "{standing}, {least} to {most}\u{202f}% of concentrate",
        "{standing}, {least} bis {most}\u{202f}% Konzentrat";
    /// One of the choices of a field: the strength of coolant.
    pub ethylene_glycol = "ethylene glycol", "Ethylenglykol";
    /// One of the choices of a field: the strength of coolant.
    pub propylene_glycol = "propylene glycol", "Propylenglykol";
    /// One of the choices of a field: the strength of coolant.
    pub refractometer = "refracto\u{ad}meter", "Refrakto\u{ad}meter";
    /// One of the choices of a field: the strength of coolant.
    pub hydrometer = "hydro\u{ad}meter", "Spindel";
    /// One of the choices of a field: the strength of coolant.
    pub test_strip = "test strip", "Teststreifen";
    /// Label of a field: the strength of coolant.
    pub the_label_says = "The label says", "Auf dem Etikett steht";
    /// Name of a calculator: the strength of coolant.
    pub how_far_it_protects = "How far it protects", "Wie weit es schützt";
    /// What a calculator is for: the strength of coolant.
    pub freezing_boiling_under_the_cap_at = "freezing, boiling under the cap at your altitude",
        "Gefrierpunkt, Siedepunkt unter dem Deckel in dieser Höhe";
    /// Label of a field: the strength of coolant.
    pub strength = "Strength", "Stärke";
    /// Hint at a field: the strength of coolant.
    pub such_as_50 = "such as 50 %", "etwa 50 %";
    /// Label of a field: the strength of coolant.
    pub that_is = "That is", "Das ist";
    /// Label of a field: the strength of coolant.
    pub cap = "Cap", "Deckel";
    /// Hint at a field: the strength of coolant.
    pub stamped_on_it_such_as_1 = "stamped on it, such as 1.1 bar or 16 psi",
        "eingeprägt, etwa 1,1 bar oder 16 psi";
    /// Label of a field: the strength of coolant.
    pub hottest_reading = "Hottest reading", "Heißester Messwert";
    /// Hint at a field: the strength of coolant.
    pub such_as_108_c_or_226 = "such as 108 °C or 226 °F; may stay empty",
        "etwa 108 °C oder 226 °F; kann leer bleiben";
    /// Label of a field: the strength of coolant.
    pub read_with = "Read with", "Gemessen mit";
    /// Label of a field: the strength of coolant.
    pub it_shows = "It shows", "Es zeigt";
    /// Hint at a field: the strength of coolant.
    pub refractometer_36_c_or_33_f = "refractometer −36 °C or −33 °F, hydrometer 1.070, strip 50 %",
        "Refraktometer −36 °C oder −33 °F, Spindel 1,070, Streifen 50 %";
    /// Label of a field: the strength of coolant.
    pub samples_temperature = "Sample's temperature", "Temperatur der Probe";
    /// Hint at a field: the strength of coolant.
    pub for_a_hydrometer_a_cold_shop = "for a hydrometer; a cold shop if empty",
        "für die Spindel; leer: kalte Werkstatt";
    /// Name of a calculator: the strength of coolant.
    pub what_is_in = "What is in", "Was drin ist";
    /// What a calculator is for: the strength of coolant.
    pub by_refractometer_hydrometer_or_strip = "by refractometer, hydrometer or strip",
        "mit Refraktometer, Spindel oder Streifen";
    /// Hint at a field: the strength of coolant.
    pub for_the_boiling_point_may_stay = "for the boiling point; may stay empty",
        "für den Siedepunkt; kann leer bleiben";
    /// What is wrong with a field, and how to mend it: the strength of coolant.
    pub write_what_the_instrument_shows = "write what the instrument shows",
        "eintragen, was das Gerät zeigt";
    /// Line of a working: the strength of coolant.
    pub as_the_strip_shows_it = "As the strip shows it.", "Wie der Streifen es zeigt.";
    /// Row of an answer: the strength of coolant.
    pub this_mix = "this mix", "diese Mischung";
    /// Row of an answer: the strength of coolant.
    pub other_tables_put_it_between = "other tables put it between",
        "andere Tabellen sagen zwischen";
    /// Part of an answer: the strength of coolant.
    pub count_on_the_warmer_one_points = "Count on the warmer one. Points of the label, where they are told, win.",
        "Mit dem wärmeren rechnen. Punkte vom Etikett gehen vor, wenn angegeben.";
    /// Part of an answer: the strength of coolant.
    pub by_the_points_entered_from_the = "By the points entered from the label.",
        "Nach den eingetragenen Punkten vom Etikett.";
    /// Row of an answer: the strength of coolant.
    pub glycol_by_mass_by_how_dense = "glycol by mass, by how dense its inhibitors make it",
        "Glykol nach Masse, je nachdem, wie dicht die Zusätze es machen";
    /// Part of an answer: the strength of coolant.
    pub inhibitors_make_bought_coolant_denser_so = "Inhibitors make bought coolant denser, so it reads too strong: ask the coolant's maker for the curve, or use a refractometer.",
        "Zusätze machen gekauftes Kühlmittel dichter, es wirkt dann zu stark: die Kurve beim Hersteller erfragen oder ein Refraktometer nehmen.";
    /// Row of an answer: the strength of coolant.
    pub boils_under_its_cap = "boils under its cap", "siedet unter dem Deckel bei";
    /// Row of an answer: the strength of coolant.
    pub boils_with_no_pressure = "boils with no pressure", "siedet ohne Druck bei";
    /// Part of an answer: the strength of coolant.
    pub ample = "ample", "reichlich";
    /// Part of an answer: the strength of coolant.
    pub thin_the_head_is_hotter_than = "thin: the head is hotter than the sensor",
        "knapp: der Zylinderkopf ist heißer als der Fühler";
    /// Part of an answer: the strength of coolant.
    pub none_it_boils = "none: it boils", "keiner: es siedet";
    /// Row of an answer: the strength of coolant.
    pub from_the_hottest_reading_to_boiling = "from the hottest reading to boiling",
        "vom heißesten Messwert bis zum Sieden";
    /// Words in a drawing: the strength of coolant.
    pub concentrate_by_volume = "% concentrate by volume", "% Konzentrat nach Volumen";
    /// Part of an answer: the strength of coolant.
    pub it_freezes_at(temperature) = "It freezes at {temperature}", "Gefriert bei {temperature}";
    /// Part of an answer: the strength of coolant.
    pub one_and_other(one, other) = "{one} and {other}", "{one} und {other}";
    /// Part of an answer: the strength of coolant.
    pub percent_from_to(low, high) = "{low} to {high}\u{202f}%", "{low} bis {high}\u{202f}%";
    /// Words in a drawing: the strength of coolant.
    pub freezes_at(temperature) = "freezes {temperature}", "gefriert {temperature}";
    /// Words in a drawing: the strength of coolant.
    pub boils_at(temperature) = "boils {temperature}", "siedet {temperature}";
    /// Name of a calculator: what to pour.
    pub what_to_pour = "What to pour", "Was einzufüllen ist";
    /// What a calculator is for: what to pour.
    pub concentrate_premix_water_rounds = "concentrate, premix, water, rounds",
        "Konzentrat, Fertigmischung, Wasser, Füllungen";
    /// Label of a field: what to pour.
    pub the_system_holds = "The system holds", "Das System fasst";
    /// Hint at a field: what to pour.
    pub such_as_9_2_l_or = "such as 9.2 L or 10 qt", "etwa 9,2 L oder 10 qt";
    /// Label of a field: what to pour.
    pub still_in_after_draining = "Still in after draining", "Nach dem Ablassen noch drin";
    /// Hint at a field: what to pour.
    pub a_cock_gives_half_to_two = "a cock gives half to two thirds",
        "ein Ablasshahn gibt die Hälfte bis zwei Drittel";
    /// Label of a field: what to pour.
    pub strength_now = "Strength now", "Stärke jetzt";
    /// Hint at a field: what to pour.
    pub about_0_for_water = "0 % for water", "0 % bei Wasser";
    /// Label of a field: what to pour.
    pub strength_wanted = "Strength wanted", "Gewünschte Stärke";
    /// Label of a field: what to pour.
    pub both_are = "Both are", "Beides ist";
    /// Title over fields: what to pour.
    pub on_the_shelf = "On the shelf", "Im Regal";
    /// Label of a field: what to pour.
    pub concentrate = "Concentrate", "Konzentrat";
    /// Label of a field: what to pour.
    pub premix = "Premix", "Fertigmischung";
    /// Hint at a field: what to pour.
    pub its_strength_below = "its strength below", "ihre Stärke unten";
    /// Label of a field: what to pour.
    pub distilled_water = "Distilled water", "Destilliertes Wasser";
    /// Label of a field: what to pour.
    pub strength_of_the_premix = "Strength of the premix", "Stärke der Fertigmischung";
    /// Hint at a field: what to pour.
    pub about_50_if_empty = "50 % if empty", "leer: 50 %";
    /// Label of a field: what to pour.
    pub a_bottle_holds = "A bottle holds", "Eine Flasche enthält";
    /// Hint at a field: what to pour.
    pub may_stay_empty = "may stay empty", "kann leer bleiben";
    /// Title over fields: what to pour.
    pub specification = "Specification", "Spezifikation";
    /// Label of a field: what to pour.
    pub the_vehicle_maker_asks_for = "The vehicle maker asks for",
        "Der Fahrzeughersteller verlangt";
    /// Hint at a field: what to pour.
    pub as_printed_colour_tells_nothing = "as printed; colour tells nothing",
        "wie aufgedruckt; die Farbe sagt nichts";
    /// Label of a field: what to pour.
    pub what_is_in_meets = "What is in meets", "Was drin ist, erfüllt";
    /// Hint at a field: what to pour.
    pub as_printed_or_empty = "as printed, or empty", "wie aufgedruckt, oder leer";
    /// Label of a field: what to pour.
    pub the_bottle_meets = "The bottle meets", "Die Flasche erfüllt";
    /// Name of a calculator: what to pour.
    pub what_is_missing = "What is missing", "Was fehlt";
    /// What a calculator is for: what to pour.
    pub litres_out_and_in_air_trapped = "litres out and in, air trapped",
        "Liter raus und rein, eingeschlossene Luft";
    /// Label of a field: what to pour.
    pub caught = "Caught", "Aufgefangen";
    /// Hint at a field: what to pour.
    pub each_pan_such_as_4_l = "each pan, such as 4 L, 1.5 L", "jede Wanne, etwa 4 L, 1,5 L";
    /// Label of a field: what to pour.
    pub it_was_at = "It was at", "Temperatur dabei";
    /// Hint at a field: what to pour.
    pub such_as_40_c_a_cold = "such as 40 °C; a cold shop if empty",
        "etwa 40 °C; leer: kalte Werkstatt";
    /// Label of a field: what to pour.
    pub spilled_or_gone_with_parts = "Spilled, or gone with parts",
        "Verschüttet oder mit Teilen weg";
    /// Hint at a field: what to pour.
    pub a_guess_may_stay_empty = "a guess, may stay empty", "geschätzt, kann leer bleiben";
    /// Label of a field: what to pour.
    pub low_when_it_came = "Low when it came", "Fehlte bei der Annahme";
    /// Label of a field: what to pour.
    pub poured_in = "Poured in", "Eingefüllt";
    /// Hint at a field: what to pour.
    pub each_jug_such_as_3_l = "each jug, such as 3 L, 2 L", "jede Kanne, etwa 3 L, 2 L";
    /// Hint at a field: what to pour.
    pub a_cold_shop_if_empty = "a cold shop if empty", "leer: kalte Werkstatt";
    /// Hint at a field: what to pour.
    pub by_the_manual_may_stay_empty = "by the manual, may stay empty",
        "nach Handbuch, kann leer bleiben";
    /// Label of a field: what to pour.
    pub level_cold_stands_below_its_mark = "Level cold stands below its mark by",
        "Stand kalt unter der Markierung um";
    /// Label of a field: what to pour.
    pub hottest_it_gets = "Hottest it gets", "Wird höchstens so heiß";
    /// Hint at a field: what to pour.
    pub about_90_c_if_empty = "90 °C if empty", "leer: 90 °C";
    /// Label of a field: what to pour.
    pub the_bottles_area_at_the_marks = "The bottle's area at the marks",
        "Fläche des Behälters an den Markierungen";
    /// Hint at a field: what to pour.
    pub length_times_width_such_as_150 = "length times width, such as 150 cm²",
        "Länge mal Breite, etwa 150 cm²";
    /// What is wrong with a field, and how to mend it: what to pour.
    pub it_stands_in_the_vehicles_manual = "it stands in the vehicle's manual",
        "steht im Handbuch des Fahrzeugs";
    /// What is wrong with a field, and how to mend it: what to pour.
    pub what_stayed_in_nothing_drained_is = "what stayed in; nothing drained is all of it",
        "was drin blieb; nichts abgelassen heißt alles";
    /// What is wrong with a field, and how to mend it: what to pour.
    pub measure_it_first = "measure it first", "erst messen";
    /// Part of an answer: what to pour.
    pub nothing_to_pour = "nothing to pour", "nichts einzufüllen";
    /// Part of an answer: what to pour.
    pub it_is_at_its_strength = "It is at its strength.", "Die Stärke stimmt.";
    /// Part of an answer: what to pour.
    pub pour_this_then_run_it_warm = "Pour this, then run it warm with the heater hot.",
        "Das einfüllen, dann warm laufen lassen, Heizung heiß.";
    /// Part of an answer: what to pour.
    pub the_drain_leaves_too_much_behind = "The drain leaves too much behind for one: drain, fill, run it warm, and again.",
        "Beim Ablassen bleibt für eine Füllung zu viel drin: ablassen, füllen, warm laufen lassen, und noch einmal.";
    /// Part of an answer: what to pour.
    pub cant_tell_yet = "can't tell yet", "noch nicht zu sagen";
    /// Row of an answer: what to pour.
    pub missing_95_times_in_100 = "missing, 95 times in 100", "fehlt, in 95 von 100 Fällen";
    /// Row of an answer: what to pour.
    pub stayed_in_the_block = "stayed in the block", "im Block geblieben";
    /// Row of an answer: what to pour.
    pub missing_in_the_bottle = "missing in the bottle", "fehlt im Behälter";
    /// Row of an answer: what to pour.
    pub air_trapped_or_not_drained_from = "air trapped, or not drained from the block",
        "eingeschlossene Luft, oder im Block geblieben";
    /// Row of an answer: what to pour.
    pub out = "out", "raus";
    /// Row of an answer: what to pour.
    pub word_in = "in", "rein";
    /// Part of an answer: what to pour.
    pub fills(n) = ["one fill", "{n} fills"], ["eine Füllung", "{n} Füllungen"];
    /// Row of an answer: what to pour.
    pub fill_number(number) = "fill {number}", "Füllung {number}";
    /// Row of an answer: what to pour.
    pub run_warm_cool_drain = "run warm, cool, then drain",
        "warm laufen, abkühlen lassen, dann ablassen";
    /// Row of an answer: what to pour.
    pub from_bottles(count) = "from {count} bottles", "aus {count} Flaschen";
    /// Row of an answer: what to pour.
    pub pour(what) = "pour {what}", "einfüllen: {what}";
    /// Row of an answer: what to pour.
    pub or_whole_bottles_of(what) = "or whole bottles of {what}", "oder ganze Flaschen {what}";
    /// Part of an answer: what to pour.
    pub bottles_and_more(count, litres, of) = "{count}, and {litres} {of}", "{count}, und {litres} {of}";
    /// Part of an answer: what to pour.
    pub full = "full", "voll";
    /// Part of an answer: what to pour.
    pub short_by(litres) = "short {litres}", "{litres} zu wenig";
    /// Part of an answer: what to pour.
    pub too_much_by(litres) = "{litres} too much", "{litres} zu viel";
    /// Part of an answer: what to pour.
    pub from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// Part of an answer: what to pour.
    pub mm_in_the_bottle(mm) = "{mm}\u{202f}mm in the bottle", "{mm}\u{202f}mm im Behälter";
    /// Row of an answer: what to pour.
    pub rises_from_cold_to(temperature) = "rises from cold to {temperature}, and back",
        "steigt von kalt bis {temperature}, und zurück";
    /// Words in a drawing: what to pour.
    pub full_cold(litres) = "full cold: {litres}", "voll kalt: {litres}";
    /// Words in a drawing: what to pour.
    pub in_about(litres) = "in: about {litres}", "drin: etwa {litres}";
    /// Words in a drawing: what to pour.
    pub missing_from_to(low, high) = "missing: {low} to {high}", "fehlt: {low} bis {high}";
    /// Words in a drawing: what to pour.
    pub hot_higher(litres) = "hot: {litres} higher", "heiß: {litres} höher";
    /// One of the choices of a field: the leak test.
    pub in_bar = "bar, °C", "bar, °C";
    /// One of the choices of a field: the leak test.
    pub in_psi = "psi, °F", "psi, °F";
    /// One of the choices of a field: the leak test.
    pub in_kilopascals = "kPa, °C", "kPa, °C";
    /// Name of a calculator: the leak test.
    pub leak_test = "Leak test", "Dichtprüfung";
    /// What a calculator is for: the leak test.
    pub pressure_against_time_cooling_taken_out = "pressure against time, cooling taken out",
        "Druck über der Zeit, Abkühlung herausgerechnet";
    /// Label of a field: the leak test.
    pub readings = "Readings", "Messwerte";
    /// Hint at a field: the leak test.
    pub minutes_pressure_temperature_one_reading_a = "minutes, pressure, temperature: one reading a line, or a pasted table",
        "Minuten, Druck, Temperatur: ein Messwert je Zeile, oder eine eingefügte Tabelle";
    /// Label of a field: the leak test.
    pub pressure_is_in = "Pressure is in", "Druck steht in";
    /// Label of a field: the leak test.
    pub the_engine_is_as_cold_as = "The engine is as cold as the shop",
        "Der Motor ist so kalt wie die Werkstatt";
    /// Hint at a field: the leak test.
    pub tick_it_where_nobody_read_the = "tick it where nobody read the temperature and it stood for hours",
        "ankreuzen, wenn niemand die Temperatur gemessen hat und er stundenlang stand";
    /// Label of a field: the leak test.
    pub may_lose = "May lose", "Darf verlieren";
    /// Hint at a field: the leak test.
    pub such_as_0_05_bar_or = "such as 0.05 bar, or 20 mL", "etwa 0,05 bar, oder 20 mL";
    /// Label of a field: the leak test.
    pub within_the_time = "In", "In";
    /// Hint at a field: the leak test.
    pub such_as_15_min = "such as 15 min", "etwa 15 min";
    /// Hint at a field: the leak test.
    pub stamped_on_it_never_test_above = "stamped on it; never test above it",
        "eingeprägt; nie darüber prüfen";
    /// Label of a field: the leak test.
    pub air_above_the_coolant = "Air above the coolant", "Luft über dem Kühlmittel";
    /// Hint at a field: the leak test.
    pub tester_and_hose_too_such_as = "tester and hose too, such as 1 L; may stay empty",
        "mit Abdrückgerät und Schlauch, etwa 1 L; kann leer bleiben";
    /// Label of a field: the leak test.
    pub coolant_in_the_system = "Coolant in the system", "Kühlmittel im System";
    /// Label of a field: the leak test.
    pub tester_closed_on_itself = "Tester closed on itself", "Abdrück\u{ad}gerät allein, verschlossen";
    /// Hint at a field: the leak test.
    pub readings_the_same_way_may_stay = "readings the same way, may stay empty",
        "Messwerte in gleicher Form, kann leer bleiben";
    /// What is wrong with a field, and how to mend it: the leak test.
    pub one_reading_a_line_minutes_pressure = "one reading a line: minutes, pressure, temperature",
        "ein Messwert je Zeile: Minuten, Druck, Temperatur";
    /// What is wrong with a field, and how to mend it: the leak test.
    pub such_as_0_05_bar_by = "such as 0.05 bar, by the vehicle maker or your own habit",
        "etwa 0,05 bar, nach Fahrzeughersteller oder eigener Gewohnheit";
    /// Part of an answer: the leak test.
    pub it_leaks = "it leaks", "undicht";
    /// Row of an answer: the leak test.
    pub lost_in_10_min_at_steady = "lost in 10 min at steady temperature",
        "in 10 min verloren bei gleicher Temperatur";
    /// Row of an answer: the leak test.
    pub coolant_lost = "coolant lost", "Kühlmittel verloren";
    /// Row of an answer: the leak test.
    pub of_the_drop_is_cooling = "of the drop is cooling", "vom Abfall ist Abkühlung";
    /// Row of an answer: the leak test.
    pub sure_to = "sure to", "sicher zu";
    /// Part of an answer: the leak test.
    pub tight = "tight", "dicht";
    /// Part of an answer: the leak test.
    pub wait_minutes(minutes) = "wait {minutes} min", "{minutes} min warten";
    /// Part of an answer: the leak test.
    pub drop_from_to(likely, low, high) = "{likely} ({low} to {high}\u{202f}bar)",
        "{likely} ({low} bis {high}\u{202f}bar)";
    /// Part of an answer: the leak test.
    pub rate_from_to(likely, low, high) = "{likely}\u{202f}mL/h, {low} to {high}",
        "{likely}\u{202f}mL/h, {low} bis {high}";
    /// Where something is wrong, before the line: the leak test.
    pub the_readings = "readings", "Messwerte";
    /// Where something is wrong, before the line: the leak test.
    pub the_tester = "tester", "Abdrück\u{ad}gerät";
    /// Where something is wrong: a table of readings.
    pub name_and_line(name, line) = "{name}, line {line}", "{name}, Zeile {line}";
    /// Where something is wrong: a table of readings.
    pub name_and_heading(name) = "{name}, heading", "{name}, Überschrift";
    /// What is wrong with a field, and how to mend it: a table of readings.
    pub no_such_column(heading, wanted) = "the heading `{heading}` has no column {wanted}",
        "der Überschrift „{heading}“ fehlt die Spalte {wanted}";
    /// Between names that may each stand: a table of readings.
    pub or_between = " or ", " oder ";
    /// What is wrong with a field, and how to mend it: a table of readings.
    pub fields_under_headings(fields, headings) = "{fields} fields stand under {headings} headings",
        "{fields} Felder stehen unter {headings} Überschriften";
    /// What is wrong with a field, and how to mend it: a table of readings.
    pub write_minutes_gauge_kpa_temperature_c = "write minutes,gauge_kpa,temperature_c",
        "schreiben: minutes,gauge_kpa,temperature_c";
    /// What is wrong with a field, and how to mend it: a table of readings.
    pub a_decimal_comma_parts_a_number = "a decimal comma parts a number in a table that commas part: write points, or part the columns by semicolons",
        "ein Dezimalkomma teilt eine Zahl, wo Kommas die Spalten teilen: Punkte schreiben, oder die Spalten mit Strichpunkt trennen";
    /// What is wrong with a field, and how to mend it: a table of readings.
    pub write_a_number_in_this_column = "write a number in this column",
        "in diese Spalte eine Zahl schreiben";
}
