//! What is said of the coolant, step by step.

use phrases::phrases;

phrases! {
    /// Step, and heading of its page.
    pub measure_what_is_in = "Measure what is in", "Messen, was drin ist";
    /// Step, and heading of its page: the coolant is let out.
    pub drain = "Drain", "Ablassen";
    /// Step, and heading of its page: coolant is filled in.
    pub pour = "Pour", "Einfüllen";
    /// Step, and heading of its page: the air is let out.
    pub bleed = "Bleed", "Entlüften";
    /// Step, and heading of its page.
    pub level = "Level", "Füllstand";
    /// Step, and heading of its page: the system is put under pressure.
    pub leak_test = "Leak test", "Dichtprüfung";
    /// Step, and heading of its page: what the vehicle holds, its cap, its limits.
    pub this_vehicles_figures = "This vehicle's figures", "Werte dieses Fahrzeugs";
    /// Name of the list of steps, for those who hear the page.
    pub steps_of_coolant = "Steps", "Schritte";
    /// Before the litres that came out.
    pub out_so_far = "Out so far: ", "Bisher heraus: ";
    /// The coolant's page, before anything was drained.
    pub measure_before_it_goes = "Nothing is out yet. Measure what is in before it goes.",
        "Noch ist nichts heraus. Erst messen, was drin ist.";
    /// How many readings of the leak test were taken.
    pub so_many_read(n) = ["{n} read", "{n} read"], ["{n} Messwert", "{n} Messwerte"];
    /// Refusal.
    pub no_such_coolant = "there is no such coolant on this order", "dieses Kühlmittel gibt es in diesem Auftrag nicht";
    /// Refusal.
    pub no_such_step = "there is no such step", "diesen Schritt gibt es nicht";
    /// Before a strength that was measured and kept.
    pub kept = "Kept: ", "Notiert: ";
    /// The mixture is too weak or too strong.
    pub mix_not_as_it_should_be = "Not as it should be: drain and pour to the mix wanted.",
        "Nicht so, wie es sein soll: ablassen und auf die gewünschte Mischung auffüllen.";
    /// Under the form for a measurement; the words in quotation marks are the name of the step.
    pub with_the_caps_rating = "With the cap's rating under “This vehicle's figures” the boiling point shows too.",
        "Mit dem Druck des Deckels unter „Werte dieses Fahrzeugs“ steht hier auch der Siedepunkt.";
    /// The large press: the reading is worked out and kept in one go.
    pub keep_the_reading = "Keep the reading", "Messwert speichern";
    /// Small words on that press.
    pub as_it_works_out = "as it works out", "so wie es herauskommt";
    /// Kept with a reading.
    pub within_its_limits(said) = "{said}, within its limits", "{said}, in den Grenzen";
    /// Kept with a reading.
    pub outside_its_limits(said) = "{said}, outside its limits", "{said}, außerhalb der Grenzen";
    /// Press: a reading that was worked out is kept.
    pub keep_this_reading = "Keep this reading", "Diesen Messwert speichern";
    /// Press, after filling.
    pub keep_mix_is_right = "Keep: the mix is right", "Speichern: die Mischung stimmt";
    /// Small words on that press.
    pub measured_after_filling = "measured after filling", "nach dem Einfüllen gemessen";
    /// Press, after filling.
    pub keep_mix_is_not_right = "Keep: the mix is not right", "Speichern: die Mischung stimmt nicht";
    /// Small words on that press.
    pub stands_at_the_hand_over = "it stands at the hand-over until put right",
        "steht bei der Übergabe, bis es behoben ist";

    /// Folded: the steps of the leak test.
    pub how_to_test = "How to test", "So wird geprüft";
    /// Field: the pressure.
    pub gauge = "Gauge", "Manometer";
    /// Field: the temperature of the coolant.
    pub coolant_if_readable = "Coolant, if you can read it", "Kühlmittel, falls abzulesen";
    /// Choice: what the tester is on.
    pub tester_on = "On", "Angeschlossen an";
    /// The first of those.
    pub the_system = "the system", "das System";
    /// The second of those: to see whether the tester itself is tight.
    pub tester_on_itself = "the tester closed on itself", "nichts, Abdrück\u{ad}gerät allein";
    /// The large press of the leak test.
    pub read_now = "Read now", "Jetzt ablesen";
    /// Small words on that press.
    pub about_one_a_minute = "about one a minute", "etwa einmal je Minute";
    /// Press: the clock starts.
    pub start = "Start", "Start";
    /// Small words on that press.
    pub first_reading = "first reading", "erster Messwert";
    /// Caution before the leak test, with the pressure that stands on the cap.
    pub never_above_the_cap(pressure) = "Never pump above the cap's {pressure}. An old radiator may stand less.",
        "Nie über die {pressure} auf dem Deckel pumpen. Ein alter Kühler hält vielleicht weniger aus.";
    /// The same, where nobody told what stands on the cap.
    pub read_the_caps_rating_first = "Read the cap's rating first, and never pump above it. An old radiator may stand less.",
        "Erst den Druck auf dem Deckel lesen, und nie darüber pumpen. Ein alter Kühler hält vielleicht weniger aus.";
    /// Press: no thermometer is needed.
    pub as_cold_as_the_shop = "It is as cold as the shop", "Es ist so kalt wie die Werkstatt";
    /// Small words on that press.
    pub stood_for_hours = "it stood for hours; else read the coolant's temperature",
        "stand stundenlang; sonst die Kühlmitteltemperatur ablesen";
    /// Before the pressure that a test may lose.
    pub may_lose_so_much = "May lose ", "Darf verlieren: ";
    /// Between that pressure and the minutes.
    pub may_lose_in = " in ", " in ";
    /// Heading over the limit of a test.
    pub what_may_it_lose = "What may it lose?", "Wie viel darf es verlieren?";
    /// Field: the pressure that a test may lose.
    pub may_lose = "May lose", "Darf verlieren";
    /// Hint of that field.
    pub such_as_005_bar = "such as 0.05 bar, by the maker or your habit",
        "z. B. 0,05 bar, laut Hersteller oder nach eigener Gewohnheit";
    /// Field: in how many minutes.
    pub lose_in = "In", "In";
    /// Hint of that field.
    pub such_as_15_min = "such as 15 min", "z. B. 15 min";
    /// Press under that.
    pub keep_the_limit = "Keep the limit", "Grenzwert speichern";
    /// The leak test does not say anything yet.
    pub nothing_is_proven_yet = "Nothing is proven yet.", "Noch ist nichts nachgewiesen.";
    /// Press: the test is kept.
    pub keep_it_holds = "Keep: it holds", "Speichern: dicht";
    /// Press: the test is kept.
    pub keep_it_leaks = "Keep: it leaks", "Speichern: undicht";
    /// Small words on those presses.
    pub the_proof_with_its_readings = "the proof, with its readings", "der Nachweis mit seinen Messwerten";

    /// Name of the presses that fill a field with a number, for those who hear the page.
    pub at_a_tap(label) = "{label}, at a tap", "{label}, mit Antippen";
    /// Before anything was drained.
    pub nothing_is_out_yet = "Nothing is out yet.", "Noch ist nichts heraus.";
    /// What becomes of drained coolant.
    pub kept_clean = "kept clean, goes back", "sauber aufgehoben, kommt wieder rein";
    /// What becomes of drained coolant.
    pub to_be_recycled = "to be recycled", "zum Recyceln";
    /// What becomes of drained coolant.
    pub to_be_disposed_of = "to be disposed of", "zum Entsorgen";
    /// What becomes of drained coolant.
    pub spilled = "spilled", "verschüttet";
    /// Field: a temperature.
    pub how_warm_if_known = "How warm, if you know", "Wie warm, falls bekannt";
    /// Small words on the press that notes what came out.
    pub one_tap_a_pan = "one tap a pan", "einmal tippen je Wanne";
    /// Kept with the litres: undiluted antifreeze.
    pub concentrate = "concentrate", "Konzentrat";
    /// The same as a choice; it may be parted where the screen is narrow.
    pub concentrate_parted = "concen\u{ad}trate", "Konzen\u{ad}trat";
    /// Choice, and kept with the litres: antifreeze that is mixed already.
    pub premix = "premix", "Fertigmischung";
    /// Choice, and kept with the litres.
    pub distilled_water = "distilled water", "destilliertes Wasser";
    /// Choice, and kept with the litres: what was drained clean goes back.
    pub what_was_kept = "what was kept", "das Aufgehobene";
    /// Before the name of a specification.
    pub maker_asks_for = "The maker asks for ", "Der Hersteller verlangt ";
    /// Before anything was filled in.
    pub nothing_is_in_yet = "Nothing is in yet.", "Noch ist nichts drin.";
    /// Choice: what was filled in.
    pub it_was = "It was", "Es war";
    /// Small words on the press that notes what was filled in.
    pub one_tap_a_jug = "one tap a jug", "einmal tippen je Kanne";
    /// Press.
    pub it_is_at_its_level = "It is at its level", "Füllstand stimmt";
    /// Small words on that press.
    pub then_bleed_it = "then bleed it and look again", "dann entlüften und noch einmal ansehen";
    /// Heading over the calculation.
    pub what_to_pour = "What to pour", "Was einzufüllen ist";
    /// What is missing for the calculation; some of the next four.
    pub to_work_it_out_tell(what) = "To work it out, tell {what}.", "Zum Rechnen fehlt: {what}.";
    /// Something that is missing for the calculation.
    pub how_much_it_holds = "how much the system holds", "wie viel das System fasst";
    /// Something that is missing for the calculation.
    pub what_came_out = "what came out", "was herauskam";
    /// Something that is missing for the calculation.
    pub strength_of_what_stayed = "the strength of what stayed in", "wie stark das ist, was drin blieb";
    /// Something that is missing for the calculation.
    pub strength_wanted = "the strength wanted", "wie stark es sein soll";
    /// Field: how many litres.
    pub the_system_holds = "The system holds", "Das System fasst";
    /// Hint of that field.
    pub such_as_92_l = "such as 9.2 L", "z. B. 9,2 L";
    /// Field: litres that stayed in the engine.
    pub still_in = "Still in", "Noch drin";
    /// Hint of that field.
    pub capacity_less_what_came_out = "capacity less what came out", "Füllmenge weniger das, was herauskam";
    /// Field: per cent.
    pub concentrate_in_what_stayed = "Concentrate in what stayed", "Konzentrat in dem, was drin blieb";
    /// Hint of that field.
    pub as_measured_zero_for_water = "as measured, 0 % for water", "wie gemessen, 0 % bei Wasser";
    /// Field: per cent.
    pub concentrate_wanted = "Concentrate wanted", "Gewünschtes Konzentrat";
    /// Hint of that field.
    pub by_the_maker = "by the maker", "laut Hersteller";
    /// Box to tick.
    pub concentrate_stands_ready = "Concentrate stands ready", "Konzentrat steht bereit";
    /// Box to tick.
    pub premix_stands_ready = "Premix stands ready", "Fertigmischung steht bereit";
    /// Hint of that box.
    pub half_unless_told = "50 % unless told", "50 %, wenn nichts anderes angegeben ist";
    /// Box to tick.
    pub water_stands_ready = "Distilled water stands ready", "Destilliertes Wasser steht bereit";
    /// Field: a specification.
    pub the_bottle_meets = "The bottle meets", "Die Flasche erfüllt";
    /// Hint of that field.
    pub as_printed = "as printed", "wie aufgedruckt";
    /// Field: a specification.
    pub what_stays_meets = "What stays in meets", "Was drin bleibt, erfüllt";
    /// Hint of that field.
    pub as_printed_or_empty = "as printed, or empty", "wie aufgedruckt, oder leer";
    /// Over the ways to let the air out.
    pub bleeding_is_due = "Bleeding is due.", "Entlüften ist fällig.";
    /// The same, when it is not owed.
    pub bleeding_is_not_due = "Nothing is due now; what is done is noted all the same.",
        "Jetzt ist nichts fällig; was gemacht wird, wird trotzdem notiert.";
    /// Kept with the work: by which way the air was let out.
    pub bled_by(way) = "bled: {way}", "entlüftet: {way}";
    /// Press under a way.
    pub bled_this_way = "Bled this way", "So entlüftet";
    /// Heading: the level of the warm engine.
    pub warm = "Warm", "Warm";
    /// Heading: the level of the cold engine.
    pub cold = "Cold", "Kalt";
    /// How the level is seen warm.
    pub how_to_see_it_warm = "Thermostat open, heater hot, fan has cycled: at or a little above its mark.",
        "Thermostat offen, Heizung heiß, Lüfter ist gelaufen: an der Markierung oder etwas darüber.";
    /// Field: where the level stands.
    pub level_read = "Level read", "Füllstand abgelesen";
    /// Hint of that field.
    pub such_as_10_mm_above = "as you see it, such as 10 mm above the mark", "wie zu sehen, z. B. 10 mm über der Markierung";
    /// Press: the level is right, seen warm.
    pub right_warm = "Right, warm", "Stimmt, warm";
    /// Press: the level is not right, seen warm.
    pub not_right_warm = "Not right, warm", "Stimmt nicht, warm";
    /// How the level is seen cold.
    pub how_to_see_it_cold = "After one full heating and cooling. This closes it, not the litres.",
        "Nachdem es einmal ganz warm und wieder kalt war. Damit ist es erledigt, nicht mit den Litern.";
    /// Field.
    pub if_low_by_how_much = "If it is low, by how much", "Falls zu wenig: wie viel fehlt";
    /// Hint of that field.
    pub such_as_03_l = "such as 0.3 L or 20 mm", "z. B. 0,3 L oder 20 mm";
    /// Press: the level is too low, seen cold.
    pub too_low_cold = "Too low, cold", "Zu wenig, kalt";
    /// Small words on that press.
    pub top_up_and_look_again = "top up and look again", "nachfüllen und noch einmal ansehen";
    /// Press: the level is right, seen cold.
    pub right_cold = "Right, cold", "Stimmt, kalt";
    /// The page of figures, where the order has no vehicle.
    pub no_vehicle_yet = "This order has no vehicle yet.", "Dieser Auftrag hat noch kein Fahrzeug.";
    /// Over the figures.
    pub figures_are_kept = "Kept with this vehicle: next time they stand here. Its maker's papers come first; what nobody told stays unknown.",
        "Beim Fahrzeug gespeichert: nächstes Mal stehen sie hier. Die Unterlagen des Herstellers gehen vor; was niemand angibt, bleibt unbekannt.";
    /// Behind a figure that comes from the map.
    pub by_the_map = " (map)", " (Vorlage)";
    /// Press under the figures.
    pub keep_the_figures = "Keep the figures", "Werte speichern";
    /// Small words on that press.
    pub empty_fields_stay = "empty fields stay as they are", "leere Felder bleiben, wie sie sind";
}
