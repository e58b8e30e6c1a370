//! What is asked and answered of fluids and the battery.

use phrases::phrases;

phrases! {
    /// Title over fields: the room of fluids.
    pub done_so_far = "Done so far", "Bisher gemacht";
    /// Name of a calculator: the room of fluids.
    pub engine_oil = "Engine oil", "Motoröl";
    /// What a calculator is for: the room of fluids.
    pub drain_fill_run_wait_level_two = "drain, fill, run, wait, level; two sorts",
        "ablassen, füllen, laufen lassen, warten, Stand; zwei Sorten";
    /// Name of a calculator: the room of fluids.
    pub brake_fluid = "Brake fluid", "Bremsflüssigkeit";
    /// What a calculator is for: the room of fluids.
    pub bleed_pedal_boiling_point_by_class = "bleed, pedal, boiling point by class",
        "entlüften, Pedal, Siedepunkt nach Klasse";
    /// Name of a calculator: the room of fluids.
    pub clutch_fluid = "Clutch fluid", "Kupplungs\u{ad}flüssigkeit";
    /// Name of a calculator: the room of fluids.
    pub power_steering = "Power steering", "Servolenkung";
    /// What a calculator is for: the room of fluids.
    pub lock_to_lock_foam_gone_level = "lock to lock, foam gone, level",
        "von Anschlag zu Anschlag, Schaum weg, Stand";
    /// Name of a calculator: the room of fluids.
    pub automatic_gearbox = "Automatic gearbox", "Automatikgetriebe";
    /// What a calculator is for: the room of fluids.
    pub level_in_its_temperature_window_in = "level in its temperature window, in against out",
        "Stand im Temperaturfenster, rein gegen raus";
    /// Name of a calculator: the room of fluids.
    pub manual_gearbox = "Manual gearbox", "Schaltgetriebe";
    /// What a calculator is for: the room of fluids.
    pub filled_to_the_plug_in_against = "filled to the plug, in against out",
        "bis zur Einfüllbohrung gefüllt, rein gegen raus";
    /// Name of a calculator: the room of fluids.
    pub axle = "Axle", "Achs\u{ad}getriebe";
    /// Name of a calculator: the room of fluids.
    pub refrigerant = "Refrigerant", "Kältemittel";
    /// What a calculator is for: the room of fluids.
    pub weighed_out_and_in_by_licensed = "weighed out and in, by licensed hands",
        "raus und rein gewogen, nur mit Sachkunde";
    /// Name of a calculator: the room of fluids.
    pub fuel = "Fuel", "Kraftstoff";
    /// What a calculator is for: the room of fluids.
    pub primed_no_drip_no_smell = "primed, no drip, no smell",
        "vorgefördert, kein Tropfen, kein Geruch";
    /// Name of a calculator: the room of fluids.
    pub urea_solution = "Urea solution", "Harnstofflösung";
    /// What a calculator is for: the room of fluids.
    pub strength_when_filled_up_what_to = "strength when filled up, what to drain",
        "Stärke nach dem Auffüllen, was abzulassen ist";
    /// Name of a calculator: the room of fluids.
    pub washer_fluid = "Washer fluid", "Wischwasser";
    /// What a calculator is for: the room of fluids.
    pub concentrate_and_water_frost_limit = "concentrate and water, frost limit",
        "Konzentrat und Wasser, Frostgrenze";
    /// Name of a calculator: the room of fluids.
    pub battery = "Battery", "Batterie";
    /// What a calculator is for: the room of fluids.
    pub terminals_in_sequence_memory_registration = "terminals in sequence, memory, registration",
        "Pole in Reihenfolge, Speicher, Anlernen";
    /// Name of a room: a fluid with its steps.
    pub fluids = "Fluids", "Flüssigkeiten";
    /// What is in a room: a fluid with its steps.
    pub oil_brake_gearbox_battery = "oil, brake, gearbox, battery",
        "Öl, Bremse, Getriebe, Batterie";
    /// Title of a note: a fluid with its steps.
    pub a_fluid_closes_on_its_level = "A fluid closes on its level",
        "Erledigt ist es mit dem Stand";
    /// Note: a fluid with its steps.
    pub litres_are_counted_and_compared_but = "Litres are counted and compared, but what closes a fluid is the level seen, or what its own steps end with. The vehicle maker's steps come first.",
        "Liter werden gezählt und verglichen, aber erledigt ist eine Flüssigkeit erst mit dem gesehenen Stand oder mit dem, womit ihre Schritte enden. Die Schritte des Fahrzeugherstellers gehen vor.";
    /// Label of a field: a fluid with its steps.
    pub a_second_person_has_checked_it = "A second person has checked it",
        "Ein Zweiter hat es geprüft";
    /// Part of an answer: a fluid with its steps.
    pub a_second_persons_check = "A second person's check", "Prüfung durch einen Zweiten";
    /// Part of an answer: a fluid with its steps.
    pub owed_again_it_was_done_too = "owed again: it was done too early",
        "noch einmal zu tun: war zu früh";
    /// Part of an answer: a fluid with its steps.
    pub closed = "closed", "erledigt";
    /// Part of an answer: a fluid with its steps.
    pub steps_owed(n) = ["{n} step owed", "{n} steps owed"],
        ["noch {n} Schritt zu tun", "noch {n} Schritte zu tun"];
    /// Part of an answer: a fluid with its steps.
    pub done = "done", "gemacht";
    /// Part of an answer: a fluid with its steps.
    pub owed = "owed", "noch zu tun";
    /// Part of an answer: a fluid with its steps.
    pub it_closed_on(what) = "It closed on {what}.", "Erledigt mit: {what}.";
    /// Part of an answer: a fluid with its steps.
    pub it_closes_on(what) = "It closes on {what}.", "Erledigt erst mit: {what}.";
    /// Part of an answer: a fluid with its steps.
    pub until_then_wait_with(what) = "Until then wait with: {what}.",
        "Bis dahin warten mit: {what}.";
    /// One of the choices of a field: what a fluid can be asked.
    pub not_read = "not read", "nicht abgelesen";
    /// One of the choices of a field: what a fluid can be asked.
    pub dot_3 = "DOT 3", "DOT 3";
    /// One of the choices of a field: what a fluid can be asked.
    pub dot_4 = "DOT 4", "DOT 4";
    /// One of the choices of a field: what a fluid can be asked.
    pub dot_5_silicone = "DOT 5, silicone", "DOT 5, Silikon";
    /// One of the choices of a field: what a fluid can be asked.
    pub dot_5_1 = "DOT 5.1", "DOT 5.1";
    /// One of the choices of a field: what a fluid can be asked.
    pub iso_class_6 = "ISO class 6", "ISO Klasse 6";
    /// One of the choices of a field: what a fluid can be asked.
    pub iso_class_7 = "ISO class 7", "ISO Klasse 7";
    /// One of the choices of a field: what a fluid can be asked.
    pub not_looked = "not looked", "nicht nachgesehen";
    /// One of the choices of a field: what a fluid can be asked.
    pub at_its_mark = "at its mark", "an der Markierung";
    /// One of the choices of a field: what a fluid can be asked.
    pub stands_low = "low", "zu niedrig";
    /// One of the choices of a field: what a fluid can be asked.
    pub stands_high = "high", "zu hoch";
    /// Title over fields: what a fluid can be asked.
    pub a_testers_reading = "A tester's reading", "Messwert eines Testers";
    /// Label of a field: what a fluid can be asked.
    pub class_on_the_cap_never_guessed = "Class on the cap; never guessed",
        "Klasse auf dem Deckel; nie geraten";
    /// Label of a field: what a fluid can be asked.
    pub the_tester_says_that_it_boils = "The tester says that it boils at",
        "Laut Tester siedet sie bei";
    /// Label of a field: what a fluid can be asked.
    pub the_tester_may_be_off_by = "The tester may be off by", "Der Tester kann abweichen um";
    /// Hint at a field: what a fluid can be asked.
    pub about_5_k_if_empty = "5 K if empty", "leer: 5 K";
    /// Label of a field: what a fluid can be asked.
    pub the_makers_least_in_use = "The maker's least in use",
        "Mindestwert des Herstellers im Betrieb";
    /// Hint at a field: what a fluid can be asked.
    pub may_stay_empty = "may stay empty", "kann leer bleiben";
    /// Title over fields: what a fluid can be asked.
    pub in_against_out = "In against out", "Rein gegen raus";
    /// Label of a field: what a fluid can be asked.
    pub came_out = "Came out", "Herausgekommen";
    /// Hint at a field: what a fluid can be asked.
    pub each_pan_such_as_4_l = "each pan, such as 4 L, 0.5 L", "jede Wanne, etwa 4 L, 0,5 L";
    /// Label of a field: what a fluid can be asked.
    pub went_in = "Went in", "Eingefüllt";
    /// Hint at a field: what a fluid can be asked.
    pub each_jug_such_as_3_l = "each jug, such as 3 L, 1.5 L", "jede Kanne, etwa 3 L, 1,5 L";
    /// Label of a field: what a fluid can be asked.
    pub low_when_it_came = "Low when it came", "Fehlte bei der Annahme";
    /// Title over fields: what a fluid can be asked.
    pub the_level = "The level", "Der Stand";
    /// Label of a field: what a fluid can be asked.
    pub it_stands = "It stands", "Er steht";
    /// Label of a field: what a fluid can be asked.
    pub it_was_at = "It was at", "Temperatur dabei";
    /// Label of a field: what a fluid can be asked.
    pub the_makers_window_from = "The maker's window, from",
        "Temperaturfenster des Herstellers, von";
    /// Label of a field: what a fluid can be asked.
    pub to = "To", "Bis";
    /// Title over fields: what a fluid can be asked.
    pub two_sorts = "Two sorts", "Zwei Sorten";
    /// Label of a field: what a fluid can be asked.
    pub the_sort_that_is_in = "The sort that is in", "Sorte, die drin ist";
    /// Hint at a field: what a fluid can be asked.
    pub as_printed_empty_if_nobody_knows = "as printed; empty if nobody knows",
        "wie aufgedruckt; leer, wenn es niemand weiß";
    /// Label of a field: what a fluid can be asked.
    pub the_sort_that_is_to_go = "The sort that is to go in", "Sorte, die hineinsoll";
    /// Hint at a field: what a fluid can be asked.
    pub as_printed = "as printed", "wie aufgedruckt";
    /// Label of a field: what a fluid can be asked.
    pub the_sort_that_the_maker_asks = "The sort that the maker asks for",
        "Sorte, die der Hersteller verlangt";
    /// Title over fields: what a fluid can be asked.
    pub filled_up = "Filled up", "Aufgefüllt";
    /// Label of a field: what a fluid can be asked.
    pub the_tank_holds = "The tank holds", "Der Tank fasst";
    /// Label of a field: what a fluid can be asked.
    pub left_in_it = "Left in it", "Rest darin";
    /// Hint at a field: what a fluid can be asked.
    pub about_0_if_empty = "0 if empty", "leer: 0";
    /// Label of a field: what a fluid can be asked.
    pub urea_in_what_is_left = "Urea in what is left", "Harnstoff im Rest";
    /// Hint at a field: what a fluid can be asked.
    pub as_read = "as read", "wie gemessen";
    /// Label of a field: what a fluid can be asked.
    pub urea_in_the_container = "Urea in the container", "Harnstoff im Gebinde";
    /// Hint at a field: what a fluid can be asked.
    pub about_32_5_if_empty = "32.5 % if empty", "leer: 32,5 %";
    /// Title over fields: what a fluid can be asked.
    pub what_to_pour = "What to pour", "Was einzufüllen ist";
    /// Label of a field: what a fluid can be asked.
    pub the_bottle_holds = "The bottle holds", "Der Behälter fasst";
    /// Label of a field: what a fluid can be asked.
    pub concentrate_in_what_is_left = "Concentrate in what is left", "Konzentrat im Rest";
    /// Hint at a field: what a fluid can be asked.
    pub no_percent_if_empty = "0 % if empty", "leer: 0 %";
    /// Label of a field: what a fluid can be asked.
    pub concentrate_wanted = "Concentrate wanted", "Gewünschtes Konzentrat";
    /// Hint at a field: what a fluid can be asked.
    pub or_the_frost_limit_below = "or the frost limit below",
        "oder die Frostgrenze darunter";
    /// Label of a field: what a fluid can be asked.
    pub frost_limit_wanted = "Frost limit wanted", "Gewünschte Frostgrenze";
    /// Hint at a field: what a fluid can be asked.
    pub by_the_labels_points = "by the label's points", "nach den Punkten auf dem Etikett";
    /// Label of a field: what a fluid can be asked.
    pub points_of_the_label = "Points of the label", "Punkte auf dem Etikett";
    /// Hint at a field: what a fluid can be asked.
    pub such_as_50_20c_100_45c = "such as 50% -20C, 100% -45C", "etwa 50% -20C, 100% -45C";
    /// Title over fields: what a fluid can be asked.
    pub by_weight = "By weight", "Nach Gewicht";
    /// Label of a field: what a fluid can be asked.
    pub the_label_says = "The label says", "Auf dem Schild steht";
    /// Label of a field: what a fluid can be asked.
    pub recovered = "Recovered", "Abgesaugt";
    /// Label of a field: what a fluid can be asked.
    pub weighed_in = "Weighed in", "Eingewogen";
    /// Label of a field: what a fluid can be asked.
    pub the_scale_may_be_off_by = "The scale may be off by", "Die Waage kann abweichen um";
    /// Hint at a field: what a fluid can be asked.
    pub about_10_g_if_empty = "10 g if empty", "leer: 10 g";
    /// Label of a field: what a fluid can be asked.
    pub oil_that_came_out_ml = "Oil that came out, mL", "Herausgekommenes Öl, mL";
    /// Label of a field: what a fluid can be asked.
    pub oil_for_new_parts_ml = "Oil for new parts, mL", "Öl für neue Teile, mL";
    /// Hint at a field: what a fluid can be asked.
    pub by_the_maker_may_stay_empty = "by the maker; may stay empty",
        "nach Hersteller; kann leer bleiben";
    /// Label of a field: what a fluid can be asked.
    pub oil_put_in_ml = "Oil put in, mL", "Eingefülltes Öl, mL";
    /// Part of an answer: what a fluid can be asked.
    pub as_new = "as new", "wie neu";
    /// Part of an answer: what a fluid can be asked.
    pub has_taken_up_water = "has taken up water", "hat Wasser gezogen";
    /// Part of an answer: what a fluid can be asked.
    pub renew_it = "renew it", "erneuern";
    /// Part of an answer: what a fluid can be asked.
    pub too_near_to_tell = "too near to tell", "zu knapp, nicht zu sagen";
    /// Part of an answer: what a fluid can be asked.
    pub cant_tell = "can't tell", "nicht zu sagen";
    /// Row of an answer: what a fluid can be asked.
    pub the_testers_reading = "The tester's reading", "Messwert des Testers";
    /// Part of an answer: what a fluid can be asked.
    pub as_much_in_as_out = "as much in as out", "so viel rein wie raus";
    /// Part of an answer: what a fluid can be asked.
    pub too_much = "too much", "zu viel";
    /// What is wrong with a field, and how to mend it: what a fluid can be asked.
    pub a_window_has_two_ends = "a window has two ends", "ein Fenster hat zwei Enden";
    /// Part of an answer: what a fluid can be asked.
    pub right = "right", "richtig";
    /// Part of an answer: what a fluid can be asked.
    pub too_cold_to_tell = "too cold to tell", "zu kalt, nicht zu sagen";
    /// Part of an answer: what a fluid can be asked.
    pub too_hot_to_tell = "too hot to tell", "zu heiß, nicht zu sagen";
    /// Part of an answer: what a fluid can be asked.
    pub may_go_in = "may go in", "darf hinein";
    /// Part of an answer: what a fluid can be asked.
    pub may_go_in_say_so = "may go in: say so", "darf hinein: dazusagen";
    /// Part of an answer: what a fluid can be asked.
    pub may_not_go_in = "may not go in", "darf nicht hinein";
    /// Part of an answer: what a fluid can be asked.
    pub ask_first = "ask first", "erst fragen";
    /// What is wrong with a field, and how to mend it: what a fluid can be asked.
    pub read_what_is_left_or_drain = "read what is left, or drain it",
        "den Rest messen oder ablassen";
    /// Part of an answer: what a fluid can be asked.
    pub within_the_standard = "within the standard", "innerhalb der Norm";
    /// Part of an answer: what a fluid can be asked.
    pub outside_the_standard = "outside the standard", "außerhalb der Norm";
    /// Part of an answer: what a fluid can be asked.
    pub as_the_label_says = "as the label says", "wie auf dem Schild";
    /// Row of an answer: what a fluid can be asked.
    pub the_charge = "The charge", "Die Füllung";
    /// Part of an answer: what a fluid can be asked.
    pub short = "short", "zu wenig";
    /// Part of an answer: what a fluid can be asked.
    pub open = "open", "offen";
    /// What is wrong with a field, and how to mend it: what a fluid can be asked.
    pub is_no_class(printed, names) = "`{printed}` is no class; write one of {names}",
        "„{printed}“ ist keine Klasse; eine davon eintragen: {names}";
    /// Part of an answer: what a fluid can be asked.
    pub missing_good_to(missing, within) = "Missing {missing}, good to {within}",
        "Es fehlen {missing}, genau auf {within}";
    /// Part of an answer: what a fluid can be asked.
    pub filled_up_it_has(percent) = "Filled up it has {percent}\u{202f}%",
        "Aufgefüllt sind es {percent}\u{202f}%";
    /// Part of an answer: what a fluid can be asked.
    pub drain_first(percent, litres) = "Filled up it has {percent}\u{202f}%: drain {litres} first",
        "Aufgefüllt wären es {percent}\u{202f}%: erst {litres} ablassen";
    /// Part of an answer: what a fluid can be asked.
    pub against_frost_to(temperature) = "against frost to {temperature}", "frostsicher bis {temperature}";
    /// Part of an answer: what a fluid can be asked.
    pub of_concentrate_and_water(water, percent) = "Of concentrate, and {water} of water: {percent}",
        "Konzentrat und {water} Wasser: {percent}";
    /// What is wrong with a field, and how to mend it: what a fluid can be asked.
    pub is_no_point(point) = "`{point}` is no point of a label; write it such as 50% -20C",
        "„{point}“ ist kein Punkt eines Etiketts; so eintragen: 50% -20C";
}
