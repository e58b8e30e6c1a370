//! What is said of the fluids besides coolant: refusals, cautions, steps, and how a figure was worked out.

use phrases::phrases;

phrases! {
    /// What a fluid is called, within a sentence.
    pub engine_oil = "engine oil", "Motoröl";
    /// What a fluid is called, within a sentence.
    pub brake_fluid = "brake fluid", "Bremsflüssigkeit";
    /// What a fluid is called, within a sentence.
    pub clutch_fluid = "clutch fluid", "Kupplungsflüssigkeit";
    /// What a fluid is called, within a sentence.
    pub power_steering_fluid = "power steering fluid", "Servoöl";
    /// What a fluid is called, within a sentence.
    pub automatic_gearbox_oil = "automatic gearbox oil", "Automatikgetriebeöl";
    /// What a fluid is called, within a sentence.
    pub manual_gearbox_oil = "manual gearbox oil", "Schaltgetriebeöl";
    /// What a fluid is called, within a sentence.
    pub axle_oil = "axle oil", "Achsgetriebeöl";
    /// What a fluid is called, within a sentence.
    pub refrigerant = "refrigerant", "Kältemittel";
    /// What a fluid is called, within a sentence.
    pub fuel = "fuel", "Kraftstoff";
    /// What a fluid is called, within a sentence.
    pub urea_solution = "urea solution", "Harnstofflösung";
    /// What a fluid is called, within a sentence.
    pub washer_fluid = "washer fluid", "Wischwasser";
    /// What a fluid is called, within a sentence.
    pub battery = "battery", "Batterie";

    /// What is done instead of mixing, behind a colon.
    pub instead_top_up_with_grade = "top up with the grade and specification that the maker asks for, or drain and fill",
        "mit der Sorte und Spezifikation nachfüllen, die der Hersteller verlangt, oder ablassen und neu füllen";
    /// What is done instead of mixing, behind a colon.
    pub instead_use_the_class = "use the class that the maker asks for; if another is in, the maker says whether to flush",
        "die Klasse nehmen, die der Hersteller verlangt; ist eine andere drin, sagt der Hersteller, ob gespült wird";
    /// What is done instead of mixing, behind a colon.
    pub instead_recover_and_weigh = "recover the whole charge and weigh in what the label states",
        "die ganze Füllung absaugen und einwiegen, was auf dem Schild steht";
    /// What is done instead of mixing, behind a colon.
    pub instead_drain_what_is_wrong = "drain what is wrong and fill what belongs in",
        "das Falsche ablassen und das Richtige einfüllen";
    /// What is done instead of mixing, behind a colon.
    pub instead_charge_or_renew = "a battery is charged or renewed, never topped up with acid",
        "eine Batterie wird geladen oder erneuert, nie mit Säure nachgefüllt";
    /// What is done instead of mixing, behind a colon.
    pub instead_what_maker_asks = "use what the maker asks for; if another is in, drain and fill",
        "nehmen, was der Hersteller verlangt; ist etwas anderes drin, ablassen und neu füllen";

    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_stick = "the level on the stick after a run and a wait, with nothing dripping",
        "dem Füllstand am Messstab nach Laufenlassen und Warten, und nichts tropft";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_hard_pedal = "a hard pedal, twice at full height, tried by a second person",
        "einem harten Pedal, zweimal in voller Höhe, von einem Zweiten probiert";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_clutch_pedal = "a pedal that parts fully, twice, and the level at its mark",
        "einem Pedal, das zweimal ganz trennt, und dem Füllstand an der Markierung";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_no_foam = "no foam and the level at its mark after lock to lock",
        "keinem Schaum und dem Füllstand an der Markierung nach Drehen von Anschlag zu Anschlag";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_level_at_temperature = "the level at the maker's temperature, with as much in as came out",
        "dem Füllstand bei der Temperatur des Herstellers, und so viel drin, wie herauskam";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_oil_at_plug = "oil at the plug within the maker's temperature window, with as much in as came out, seen again warm",
        "Öl an der Einfüllbohrung im Temperaturfenster des Herstellers, so viel drin, wie herauskam, und warm noch einmal angesehen";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_labels_weight = "the label's weight in, oil replaced, no leak found, by licensed hands",
        "dem Gewicht vom Schild, ersetztem Öl und keinem Leck, von Sachkundigen gemacht";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_no_drip_no_smell = "primed, no drip and no smell, before the engine is started and once it runs",
        "vorgefördertem Kraftstoff, keinem Tropfen und keinem Geruch, vor dem Start und bei laufendem Motor";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_reading_within = "a reading within the standard and no drip",
        "einem Messwert in der Norm und keinem Tropfen";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_spray = "spray at every nozzle", "Wasser aus jeder Düse";
    /// What a fluid closes on, behind "It closes on ".
    pub closes_on_both_terminals = "both terminals tight in their sequence, memory restored, registered where the maker asks",
        "beiden Polen fest, in der richtigen Reihenfolge, wiederhergestelltem Speicher, angelernt, wo der Hersteller es verlangt";

    /// What waits until a fluid is closed, one after the other.
    pub before_go_live = "go live", "Batterie an";
    /// What waits until a fluid is closed, one after the other.
    pub before_start = "start", "starten";
    /// What waits until a fluid is closed, one after the other.
    pub before_road = "road", "auf die Straße";
    /// What waits until a fluid is closed, one after the other.
    pub before_hand_over = "hand over", "übergeben";

    /// The short name of a step, in front of a line of the working.
    pub step_named = "named", "benannt";
    /// The short name of a step, in front of a line of the working.
    pub step_drained = "drained", "abgelassen";
    /// The short name of a step, in front of a line of the working.
    pub step_filled = "filled", "eingefüllt";
    /// The short name of a step, in front of a line of the working.
    pub step_started = "started", "gestartet";
    /// The short name of a step, in front of a line of the working.
    pub step_stopped = "stopped", "abgestellt";
    /// The short name of a step, in front of a line of the working.
    pub step_waited = "waited", "gewartet";
    /// The short name of a step, in front of a line of the working.
    pub step_level_seen = "level-seen", "Füllstand angesehen";
    /// The short name of a step, in front of a line of the working.
    pub step_leaks_looked_for = "leaks-looked-for", "nach Lecks gesehen";
    /// The short name of a step, in front of a line of the working.
    pub step_circuits_named = "circuits-named", "Bremskreise benannt";
    /// The short name of a step, in front of a line of the working.
    pub step_bled = "bled", "entlüftet";
    /// The short name of a step, in front of a line of the working.
    pub step_pedal_hard = "pedal-hard", "Pedal hart";
    /// The short name of a step, in front of a line of the working.
    pub step_pedal_twice = "pedal-twice", "Pedal zweimal";
    /// The short name of a step, in front of a line of the working.
    pub step_lock_to_lock = "lock-to-lock", "Anschlag zu Anschlag";
    /// The short name of a step, in front of a line of the working.
    pub step_foam_gone = "foam-gone", "Schaum weg";
    /// The short name of a step, in front of a line of the working.
    pub step_warmed = "warmed", "warm gelaufen";
    /// The short name of a step, in front of a line of the working.
    pub step_filled_to_plug = "filled-to-plug", "bis zur Einfüllbohrung gefüllt";
    /// The short name of a step, in front of a line of the working.
    pub step_amounts_compared = "amounts-compared", "Mengen verglichen";
    /// The short name of a step, in front of a line of the working.
    pub step_warm_checked = "warm-checked", "warm angesehen";
    /// The short name of a step, in front of a line of the working.
    pub step_recovered = "recovered", "abgesaugt";
    /// The short name of a step, in front of a line of the working.
    pub step_oil_accounted = "oil-accounted", "Öl gemessen";
    /// The short name of a step, in front of a line of the working.
    pub step_evacuated = "evacuated", "evakuiert";
    /// The short name of a step, in front of a line of the working.
    pub step_weighed_in = "weighed-in", "eingewogen";
    /// The short name of a step, in front of a line of the working.
    pub step_leak_searched = "leak-searched", "nach Lecks gesucht";
    /// The short name of a step, in front of a line of the working.
    pub step_primed = "primed", "vorgefördert";
    /// The short name of a step, in front of a line of the working.
    pub step_no_drip = "no-drip", "kein Tropfen";
    /// The short name of a step, in front of a line of the working.
    pub step_no_smell = "no-smell", "kein Geruch";
    /// The short name of a step, in front of a line of the working.
    pub step_quality_read = "quality-read", "Qualität gemessen";
    /// The short name of a step, in front of a line of the working.
    pub step_tried = "tried", "probiert";
    /// The short name of a step, in front of a line of the working.
    pub step_negative_off = "negative-off", "Minus ab";
    /// The short name of a step, in front of a line of the working.
    pub step_positive_off = "positive-off", "Plus ab";
    /// The short name of a step, in front of a line of the working.
    pub step_positive_on = "positive-on", "Plus dran";
    /// The short name of a step, in front of a line of the working.
    pub step_negative_on = "negative-on", "Minus dran";
    /// The short name of a step, in front of a line of the working.
    pub step_memory_restored = "memory-restored", "Speicher wiederhergestellt";
    /// The short name of a step, in front of a line of the working.
    pub step_registered = "registered", "angelernt";

    /// What hurts, shown before a step at a fluid.
    pub hot_oil = "Hot oil burns. Let it cool to the hand; gloves and sleeves on.",
        "Heißes Öl verbrennt die Haut. Handwarm abkühlen lassen; Handschuhe und lange Ärmel an.";
    /// What hurts, shown before a step at a fluid.
    pub moving_parts = "Belts and fans move. Hands, hair and rags clear before it runs.",
        "Riemen und Lüfter drehen sich. Hände, Haare und Lappen weg, bevor der Motor läuft.";
    /// What hurts, shown before a step at a fluid.
    pub brake_fluid_eats = "Brake fluid eats paint and stings eyes. Cover the wings, rinse spills with water, use fluid from a sealed container only.",
        "Bremsflüssigkeit frisst Lack und reizt die Augen. Kotflügel abdecken, Spritzer mit Wasser abspülen, nur aus einem versiegelten Gebinde nehmen.";
    /// What hurts, shown before a step at a fluid.
    pub not_on_the_road = "Not a metre under its own power until the pedal is hard and a second person has tried it.",
        "Keinen Meter aus eigener Kraft, bis das Pedal hart ist und ein Zweiter es probiert hat.";
    /// What hurts, shown before a step at a fluid.
    pub supported = "Under a raised vehicle only on stands or a lift that carries it.",
        "Unter ein angehobenes Fahrzeug nur, wenn es auf Böcken oder einer Bühne steht.";
    /// What hurts, shown before a step at a fluid.
    pub frost = "Refrigerant freezes skin and eyes and takes the air from a pit. Licensed hands alone, with goggles and gloves; never vent it: local law.",
        "Kältemittel erfriert Haut und Augen und verdrängt die Luft in der Grube. Nur Sachkundige, mit Brille und Handschuhen; nie ins Freie ablassen: gesetzlich verboten.";
    /// What hurts, shown before a step at a fluid.
    pub fire = "Fuel and its vapour burn. No flame, no spark, battery off, extinguisher at hand; let pressure off as the maker says.",
        "Kraftstoff und sein Dampf brennen. Keine Flamme, kein Funke, Batterie ab, Löscher bereit; Druck ablassen, wie der Hersteller es sagt.";
    /// What hurts, shown before a step at a fluid.
    pub acid = "Battery acid burns and its gas explodes. Goggles on, no spark near it.",
        "Batteriesäure verätzt, und ihr Gas explodiert. Brille auf, keine Funken in der Nähe.";
    /// What hurts, shown before a step at a fluid.
    pub short = "A tool between a live terminal and the body welds itself on. Negative off first, on last, unless the maker says otherwise.",
        "Werkzeug zwischen Pluspol und Karosserie schweißt sich fest. Minus zuerst ab, zuletzt dran, wenn der Hersteller nichts anderes sagt.";
    /// What hurts, shown before a step at a fluid.
    pub alcohol = "Washer concentrate is poisonous and burns. No flame; wipe up every spill.",
        "Scheibenreiniger-Konzentrat ist giftig und brennt. Keine Flamme; jeden Tropfen aufwischen.";
    /// What hurts, shown before a step at a fluid.
    pub urea_spill = "Urea solution creeps into connectors and eats them. Rinse every spill with warm water; never into the fuel tank.",
        "Harnstofflösung kriecht in Stecker und zerfrisst sie. Jeden Spritzer mit warmem Wasser abspülen; nie in den Kraftstofftank.";
    /// What hurts, shown before a step at a fluid.
    pub disposal = "Caught, kept apart and handed in: local rules say how.",
        "Auffangen, getrennt halten und abgeben, wie es am Ort vorgeschrieben ist.";
    /// What hurts, shown before a step at a fluid.
    pub makers_specification = "The vehicle maker's fluid, amount, sequence and temperatures come first.",
        "Flüssigkeit, Menge, Reihenfolge und Temperaturen des Fahrzeugherstellers gehen vor.";

    /// A refusal, whole.
    pub out_of_range(what, value, unit, low, high, mend) = "{what} is {value} {unit}, outside {low} to {high} {unit}: {mend}",
        "{what} ist {value} {unit}, außerhalb von {low} bis {high} {unit}: {mend}";
    /// A refusal, whole.
    pub not_chemistry(kind, instead) = "{kind}: no amounts are reckoned for mixing two of them, that is no sum: {instead}",
        "{kind}: zwei davon zu mischen lässt sich nicht in Mengen rechnen: {instead}";
    /// A refusal, whole.
    pub incomplete(what, mend) = "{what}: {mend}", "{what}: {mend}";
    /// A refusal, whole.
    pub more_than_it_holds(what, holds, left) = "{what} holds {holds} L and {left} L are left: no more can be left than it holds, check both",
        "{what} fasst {holds} L, und {left} L sind noch drin: mehr kann nicht drin sein, als hineinpasst, beides prüfen";
    /// A refusal, whole.
    pub too_weak(want, bottle) = "{want} % cannot be reached with {bottle} % in the bottle: bring something stronger, or drain first",
        "{want} % sind mit {bottle} % in der Flasche nicht zu erreichen: etwas Stärkeres holen, oder erst ablassen";
    /// A refusal, whole.
    pub label_not_falling(weak, strong) = "the label's points do not fall from {weak} % to {strong} %: each stronger mixture has to freeze lower, check the figures",
        "die Punkte vom Etikett fallen nicht von {weak} % auf {strong} %: jede stärkere Mischung muss tiefer gefrieren, Zahlen prüfen";

    /// A refusal, before "is … outside … to …": which figure.
    pub what_was_low_before = "what was low before", "das, was vorher fehlte,";
    /// A refusal, before "is … outside … to …": which figure.
    pub an_amount = "an amount", "eine Menge";
    /// A refusal, before "is … outside … to …": which figure.
    pub how_far_amount_off = "how far an amount may be off", "die Ungenauigkeit einer Menge";
    /// A refusal, before "is … outside … to …": which figure.
    pub temperature_of_amount = "the temperature of an amount", "die Temperatur einer Menge";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_reading = "the reading", "der Messwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_testers_error = "the tester's error", "die Abweichung des Testers";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_makers_limit = "the maker's limit", "der Grenzwert des Herstellers";
    /// A refusal, before "is … outside … to …": which figure.
    pub windows_low_end = "the window's low end", "das untere Ende des Fensters";
    /// A refusal, before "is … outside … to …": which figure.
    pub windows_high_end = "the window's high end", "das obere Ende des Fensters";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_temperature = "the temperature", "die Temperatur";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_labels_weight = "the label's weight", "das Gewicht vom Schild";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_weight_recovered = "the weight recovered", "das abgesaugte Gewicht";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_weight_put_in = "the weight put in", "das eingefüllte Gewicht";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_scales_error = "the scale's error", "die Abweichung der Waage";
    /// A refusal, before "is … outside … to …": which figure.
    pub oil_taken_out = "the oil taken out", "das herausgenommene Öl";
    /// A refusal, before "is … outside … to …": which figure.
    pub oil_for_new_parts = "the oil for new parts", "das Öl für neue Teile";
    /// A refusal, before "is … outside … to …": which figure.
    pub oil_put_in = "the oil put in", "das eingefüllte Öl";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_tank = "the tank", "der Tank";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_is_left = "what is left", "das, was noch drin ist,";
    /// A refusal, before "is … outside … to …": which figure.
    pub strength_in_tank = "the strength in the tank", "die Stärke im Tank";
    /// A refusal, before "is … outside … to …": which figure.
    pub strength_in_container = "the strength in the container", "die Stärke im Gebinde";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_bottle = "the bottle", "der Behälter";
    /// A refusal, before "is … outside … to …": which figure.
    pub concentrate_in_what_is_left = "the concentrate in what is left",
        "das Konzentrat in dem, was noch drin ist,";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_share_wanted = "the share wanted", "der gewünschte Anteil";
    /// A refusal, before "is … outside … to …": which figure.
    pub share_on_label = "a share on the label", "ein Anteil auf dem Etikett";
    /// A refusal, before "is … outside … to …": which figure.
    pub frost_limit_on_label = "a frost limit on the label", "eine Frostgrenze auf dem Etikett";

    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_litres = "write litres", "in Litern schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_figure_and_unit = "check the figure and its unit", "Zahl und Einheit prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_pan_and_jug = "a pan is good to 0.3 L, a jug to 0.1 L",
        "eine Wanne ist auf 0,3 L genau, eine Kanne auf 0,1 L";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_degrees = "write degrees Celsius", "in Grad Celsius schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_read_again = "read the tester again", "am Tester noch einmal ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_in_its_manual = "it stands in its manual", "sie steht in der Anleitung des Geräts";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_it_in_degrees = "write it in degrees Celsius", "in Grad Celsius schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_lower_first = "write the lower temperature first", "die niedrigere Temperatur zuerst schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_grams = "write grams", "in Gramm schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_millilitres = "write millilitres", "in Millilitern schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_urea_by_mass = "write urea by mass, such as 32.5", "Harnstoff nach Masse schreiben, z. B. 32,5";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_concentrate_by_volume = "write concentrate by volume", "Konzentrat nach Volumen schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_measure_drained = "measure what was drained", "messen, was abgelassen wurde";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_copy_more_points = "copy more points off the label, or write the share",
        "mehr Punkte vom Etikett abschreiben, oder den Anteil schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_write_share_or_frost = "write a share, or a frost limit with the label's points",
        "einen Anteil schreiben, oder eine Frostgrenze mit den Punkten vom Etikett";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_leave_or_drain = "leave it, or drain some first", "so lassen, oder erst etwas ablassen";

    /// A refusal: what is missing, before a colon and how to mend it.
    pub nothing_says_what_came_out = "nothing says what came out", "nichts sagt, was herauskam";
    /// A refusal: what is missing, before a colon and how to mend it.
    pub points_do_not_reach = "the label's points do not reach the frost limit wanted",
        "die Punkte vom Etikett reichen nicht bis zur gewünschten Frostgrenze";
    /// A refusal: what is missing, before a colon and how to mend it.
    pub nothing_says_what_is_wanted = "nothing says what is wanted", "nichts sagt, was gewünscht ist";
    /// A refusal: what is missing, before a colon and how to mend it.
    pub stronger_than_wanted = "what is in is stronger than wanted even filled up with water",
        "was drin ist, ist auch mit Wasser aufgefüllt stärker als gewünscht";

    /// Where a line of a working comes from, in words.
    pub practice_of_the_trade = "practice of the trade", "Werkstattpraxis";
    /// Where a line of a working comes from, in words.
    pub swell_of_oils = "swell of oils", "Ausdehnung von Ölen";
    /// Where a line of a working comes from, in words.
    pub swell_a_degree = "0.0007 of the volume a degree", "0,0007 des Volumens je Grad";

    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub in_against_out_title = "In against out", "Rein gegen raus";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub out_at_20 = "out, at 20 °C", "raus, bei 20 °C";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub in_at_20 = "in, at 20 °C", "rein, bei 20 °C";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub missing = "missing", "fehlt";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub missing_formula = "out + low before - in", "raus + vorher zu wenig - rein";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub low_before = "low before", "vorher zu wenig";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub good_to = "good to", "genau auf";
    /// How litres in against out were worked out: a title, a line, a name in a formula, or what limits it.
    pub level_closes_it = "The level at the maker's temperature closes it, not the litres.",
        "Der Füllstand bei der Temperatur des Herstellers schließt es ab, nicht die Liter.";

    /// A class of brake fluid that is no DOT number.
    pub class_6 = "class 6", "Klasse 6";
    /// A class of brake fluid that is no DOT number.
    pub class_7 = "class 7", "Klasse 7";

    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub brake_fluid_title = "Brake fluid", "Bremsflüssigkeit";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub boils_at = "boils at", "siedet bei";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub tester_good_to = "tester good to", "Tester genau auf";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub class = "class", "Klasse";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub read_it_off_the_cap = "read it off the cap or the maker's data",
        "vom Deckel oder aus den Daten des Herstellers ablesen";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub least_dry(class) = "least, {class} dry", "mindestens, {class} trocken";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub least_wet(class) = "least, {class} wet", "mindestens, {class} nass";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub makers_least_in_use = "the maker's least in use", "Mindestwert des Herstellers im Betrieb";
    /// How a reading of brake fluid was worked out: a title, a line, a note, or what limits it.
    pub tester_reads_the_bottle = "The tester reads the bottle; at the caliper the fluid is worse.",
        "Der Tester misst im Behälter; am Bremssattel ist die Flüssigkeit schlechter.";

    /// What a reading of brake fluid says.
    pub cannot_tell_without_class = "can't tell without the class: read it off the cap or the maker's data",
        "ohne die Klasse nicht zu sagen: vom Deckel oder aus den Daten des Herstellers ablesen";
    /// What a reading of brake fluid says.
    pub renew_it(boils, least) = "renew it: {boils} °C, at least {least} °C are asked for",
        "erneuern: {boils} °C, verlangt sind mindestens {least} °C";
    /// What a reading of brake fluid says.
    pub too_near(least) = "too near to {least} °C for this tester: renew it, or have it read better",
        "zu nah an {least} °C für diesen Tester: erneuern, oder genauer messen lassen";
    /// What a reading of brake fluid says.
    pub as_good_as_new = "as good as new", "so gut wie neu";
    /// What a reading of brake fluid says.
    pub taken_up_water = "it has taken up water and keeps its limit; age and the maker's interval count too",
        "hat Wasser gezogen und hält den Grenzwert; Alter und Intervall des Herstellers zählen auch";

    /// How a level by temperature was worked out: a title, a line, or what limits it.
    pub level_by_temperature_title = "Level by temperature", "Füllstand nach Temperatur";
    /// How a level by temperature was worked out: a title, a line, or what limits it.
    pub the_makers_window = "the maker's window", "Fenster des Herstellers";
    /// How a level by temperature was worked out: a title, a line, or what limits it.
    pub from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// How a level by temperature was worked out: a title, a line, or what limits it.
    pub seen_at = "seen at", "abgelesen bei";
    /// How a level by temperature was worked out: a title, a line, or what limits it.
    pub vehicle_level = "Vehicle level, engine as the maker says.",
        "Fahrzeug waagerecht, Motor so, wie der Hersteller es sagt.";

    /// What a level at a temperature says.
    pub level_right = "right, within the maker's window", "stimmt, im Fenster des Herstellers";
    /// What a level at a temperature says.
    pub level_low = "low: fill up within the window", "zu wenig: im Temperaturfenster auffüllen";
    /// What a level at a temperature says.
    pub level_high = "high: let it run out within the window", "zu viel: im Temperaturfenster auslaufen lassen";
    /// What a level at a temperature says.
    pub level_too_cold = "too cold to count: warm it into the window, it would read low",
        "zu kalt, zählt nicht: ins Fenster erwärmen, sonst steht es zu niedrig";
    /// What a level at a temperature says.
    pub level_too_hot = "too hot to count: let it cool into the window, it would read high",
        "zu heiß, zählt nicht: ins Fenster abkühlen lassen, sonst steht es zu hoch";
    /// What a level at a temperature says.
    pub level_cannot_tell = "can't tell: read the temperature, and the maker's window for it",
        "nicht zu sagen: Temperatur ablesen, und das Fenster des Herstellers dazu";

    /// What the account of a refrigerant says.
    pub labels_weight_is_in = "the label's weight is in", "das Gewicht vom Schild ist drin";
    /// What the account of a refrigerant says.
    pub less_in_than_label = "less in than the label states", "weniger drin, als auf dem Schild steht";
    /// What the account of a refrigerant says.
    pub more_in_than_label = "more in than the label states: recover it and weigh again",
        "mehr drin, als auf dem Schild steht: absaugen und neu einwiegen";
    /// What the account of a refrigerant says.
    pub open_read_the_label = "open: read the label and weigh it in", "offen: Schild lesen und einwiegen";
    /// What the account of a refrigerant says.
    pub were_missing(grams) = "{grams} g were missing when it came in: search for the leak before filling",
        "{grams} g fehlten, als es hereinkam: vor dem Füllen das Leck suchen";
    /// What the account of a refrigerant says.
    pub oil_still_to_go_in(millilitres) = "{millilitres} mL of oil still to go in",
        "{millilitres} mL Öl müssen noch hinein";

    /// How the account of a refrigerant was worked out: a title, a line, or what limits it.
    pub refrigerant_title = "Refrigerant", "Kältemittel";
    /// How the account of a refrigerant was worked out: a title, a line, or what limits it.
    pub label = "label", "Schild";
    /// How the account of a refrigerant was worked out: a title, a line, or what limits it.
    pub recovered = "recovered", "abgesaugt";
    /// How the account of a refrigerant was worked out: a title, a line, or what limits it.
    pub weighed_in = "weighed in", "eingewogen";
    /// How the account of a refrigerant was worked out: a title, a line, or what limits it.
    pub account_only = "An account only: licensed hands and local law decide how it is handled; never vented.",
        "Nur eine Rechnung: Wie damit umzugehen ist, entscheiden Sachkundige und Gesetz; nie ins Freie ablassen.";

    /// Whether one sort may go on another: how it was decided.
    pub rule = "rule", "Regel";
    /// Whether one sort may go on another: how it was decided.
    pub two_sorts_title(kind) = "Two sorts: {kind}", "Zwei Sorten: {kind}";
    /// Whether one sort may go on another: how it was decided.
    pub in_it = "in it", "drin";
    /// Whether one sort may go on another: how it was decided.
    pub to_go_in = "to go in", "soll hinein";
    /// Whether one sort may go on another: how it was decided.
    pub asked_for_by_maker = "asked for by the maker", "vom Hersteller verlangt";

    /// What is said of one sort going on another.
    pub nothing_is_guessed = "read what the maker asks for and what is in the bottle: nothing is guessed",
        "nachlesen, was der Hersteller verlangt und was in der Flasche ist: geraten wird nichts";
    /// What is said of one sort going on another.
    pub maker_asks_for(asked, instead) = "the maker asks for {asked}: {instead}",
        "der Hersteller verlangt {asked}: {instead}";
    /// What is said of one sort going on another.
    pub nobody_knows_what_is_in = "nobody knows what is in: drain and fill, or ask who filled it",
        "niemand weiß, was drin ist: ablassen und neu füllen, oder fragen, wer es eingefüllt hat";
    /// What is said of one sort going on another.
    pub the_same_sort = "the same sort", "dieselbe Sorte";
    /// What is said of one sort going on another.
    pub may_go_in_and_is_said(new, inside) = "{new} on top of {inside}: it may go in, and is said on the papers with both names",
        "{new} auf {inside}: darf hinein und steht mit beiden Namen auf den Papieren";
    /// What is said of one sort going on another.
    pub frost_limit_not_known(new, inside) = "{new} on top of {inside}: its frost limit is not known then",
        "{new} auf {inside}: die Frostgrenze ist dann nicht bekannt";
    /// What is said of one sort going on another.
    pub is_in(inside, instead) = "{inside} is in: {instead}", "{inside} ist drin: {instead}";
    /// What is said of one sort going on another.
    pub read_the_class = "read the class off cap and container, such as DOT 4: it is never guessed",
        "Klasse von Deckel und Gebinde ablesen, z. B. DOT 4: geraten wird sie nie";
    /// What is said of one sort going on another.
    pub silicone_never = "silicone (DOT 5) never goes where glycol belongs, nor the other way",
        "Silikon (DOT 5) darf nie dahin, wo Glykol hingehört, und umgekehrt";
    /// What is said of one sort going on another.
    pub maker_says_whether(asked, new) = "the maker asks for {asked}: whether {new} may take its place, the maker says",
        "der Hersteller verlangt {asked}: ob {new} dafür hinein darf, sagt der Hersteller";
    /// What is said of one sort going on another.
    pub nobody_knows_which_class = "nobody knows which class is in: flush with the maker's, or ask who filled it",
        "niemand weiß, welche Klasse drin ist: mit der des Herstellers spülen, oder fragen, wer es eingefüllt hat";
    /// What is said of one sort going on another.
    pub the_same_class = "the same class", "dieselbe Klasse";
    /// What is said of one sort going on another.
    pub silicone_and_glycol = "silicone and glycol in one system: it is taken apart, flushed and sealed anew as the maker says",
        "Silikon und Glykol in einem System: zerlegen, spülen und neu abdichten, wie der Hersteller es sagt";
    /// What is said of one sort going on another.
    pub counts_as_lower(inside) = "{inside} is in: mixed, it counts as the lower of the two until it is flushed",
        "{inside} ist drin: gemischt zählt es als die niedrigere von beiden, bis gespült ist";

    /// The steps of a fluid, as a working: a title, how far a step is, or what limits it.
    pub steps_title(kind) = "Steps: {kind}", "Schritte: {kind}";
    /// The steps of a fluid, as a working: a title, how far a step is, or what limits it.
    pub done = "done", "erledigt";
    /// The steps of a fluid, as a working: a title, how far a step is, or what limits it.
    pub owed_again = "owed again: it was done too early", "noch einmal zu tun: es war zu früh";
    /// The steps of a fluid, as a working: a title, how far a step is, or what limits it.
    pub owed = "owed", "noch zu tun";
    /// The steps of a fluid, as a working: a title, how far a step is, or what limits it.
    pub maker_stands_above = "The maker's instructions stand above these steps.",
        "Die Anleitung des Herstellers geht diesen Schritten vor.";

    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub urea_title = "Urea solution", "Harnstofflösung";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_when_full = "strength when full", "Stärke, wenn voll";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub left = "left", "noch drin";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub so_much_of(litres, percent) = "{litres} of {percent}", "{litres} mit {percent}";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub added = "added", "dazu";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub allowed = "allowed", "erlaubt";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub urea_from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub drain_first_at_least = "drain first, at least", "erst ablassen, mindestens";
    /// How urea solution was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_is_not_cleanliness = "Strength is not cleanliness: with anything foreign in it, empty the tank.",
        "Stärke heißt nicht sauber: Ist etwas Fremdes drin, den Tank leeren.";

    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub washer_title = "Washer fluid", "Wischwasser";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub concentrate = "concentrate", "Konzentrat";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub concentrate_formula = "want·V - now·left", "soll·V - jetzt·drin";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub want = "want", "soll";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub at_present = "now", "jetzt";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub washer_left = "left", "drin";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub water = "water", "Wasser";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub water_formula = "V - left - c", "V - drin - c";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub freezes_by_label = "freezes, by the label", "gefriert, laut Etikett";
    /// How washer fluid was worked out: a title, a line, a name in a formula, or what limits it.
    pub wind_chills = "Wind chills the glass: allow some degrees.",
        "Fahrtwind kühlt die Scheibe: ein paar Grad zugeben.";

    /// A step at the engine oil, one row each, in sequence.
    pub oil_name_grade = "Name the grade and specification that the maker asks for; say so if another sort is in.",
        "Sorte und Spezifikation nennen, die der Hersteller verlangt; sagen, wenn eine andere drin ist.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_drain = "Drain, new washer, plug to its torque; new filter with its ring oiled.",
        "Ablassen, neuer Dichtring, Schraube mit Drehmoment; neuer Filter mit geöltem Ring.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_fill_a_little_less = "Fill a little less than the maker's amount and write down how much.",
        "Etwas weniger als die Menge des Herstellers einfüllen und notieren, wie viel.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_start = "Start; the oil light must go out at once, else stop. Let it idle a minute.",
        "Starten; die Öldruckleuchte muss sofort ausgehen, sonst abstellen. Eine Minute im Leerlauf lassen.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_stop = "Stop, and look at filter and plug.", "Abstellen, Filter und Schraube ansehen.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_wait = "Wait as long as the maker says, vehicle level.",
        "Warten, so lange der Hersteller es sagt, Fahrzeug waagerecht.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_see_level = "See the level between the marks and top up in small amounts.",
        "Füllstand zwischen den Markierungen ansehen und in kleinen Mengen nachfüllen.";
    /// A step at the engine oil, one row each, in sequence.
    pub oil_look_for_drips = "Look for drips from below with the engine warm.",
        "Bei warmem Motor von unten nach Tropfen sehen.";

    /// A step at the brake, one row each, in sequence.
    pub brake_name_circuits = "Name the circuits and wheels that were opened.",
        "Bremskreise und Räder nennen, die geöffnet wurden.";
    /// A step at the brake, one row each, in sequence.
    pub brake_read_class = "Read the class off the cap or the maker's data; never guess it, never mix silicone with glycol.",
        "Klasse vom Deckel oder aus den Daten des Herstellers ablesen; nie raten, nie Silikon mit Glykol mischen.";
    /// A step at the brake, one row each, in sequence.
    pub brake_fill = "Fill from a sealed container; keep the bottle above its low mark all the time.",
        "Aus versiegeltem Gebinde füllen; den Behälter immer über der unteren Markierung halten.";
    /// A step at the brake, one row each, in sequence.
    pub brake_bleed = "Bleed in the maker's sequence until no bubble comes; with a control unit, by its own routine.",
        "In der Reihenfolge des Herstellers entlüften, bis keine Blase mehr kommt; mit Steuergerät über dessen Entlüftungsprogramm.";
    /// A step at the brake, one row each, in sequence.
    pub brake_pump = "Pump until the pedal is hard, engine off; it must not sink under a steady foot.",
        "Pumpen, bis das Pedal hart ist, Motor aus; unter ruhigem Fuß darf es nicht sinken.";
    /// A step at the brake, one row each, in sequence.
    pub brake_pedal_twice = "Engine running: the pedal at full height twice, a minute apart. If it comes up higher the second time, bleed again.",
        "Motor läuft: Pedal zweimal in voller Höhe, eine Minute dazwischen. Kommt es beim zweiten Mal höher, noch einmal entlüften.";
    /// A step at the brake, one row each, in sequence.
    pub brake_level = "Level at its mark, cap on, every bleed screw tight and capped.",
        "Füllstand an der Markierung, Deckel drauf, jede Entlüftungsschraube fest und mit Kappe.";
    /// A step at the brake, one row each, in sequence.
    pub brake_look_at_joints = "Look at every joint opened with a foot on the pedal.",
        "Jede geöffnete Verbindung ansehen, mit einem Fuß auf dem Pedal.";

    /// A step at the clutch, one row each, in sequence.
    pub clutch_read_class = "Read the class off the cap or the maker's data; where it shares the brake's bottle, the brake's account is open too.",
        "Klasse vom Deckel oder aus den Daten des Herstellers ablesen; teilt sie den Behälter mit der Bremse, ist auch die Bremse offen.";
    /// A step at the clutch, one row each, in sequence.
    pub clutch_fill = "Fill from a sealed container.", "Aus versiegeltem Gebinde füllen.";
    /// A step at the clutch, one row each, in sequence.
    pub clutch_bleed = "Bleed as the maker says until no bubble comes.",
        "Entlüften, wie der Hersteller es sagt, bis keine Blase mehr kommt.";
    /// A step at the clutch, one row each, in sequence.
    pub clutch_pedal_twice = "The pedal at full height twice, and reverse goes in without a scrape.",
        "Pedal zweimal in voller Höhe, und der Rückwärtsgang geht ohne Kratzen rein.";
    /// A step at the clutch, one row each, in sequence.
    pub level_at_mark_cap_on = "Level at its mark, cap on.", "Füllstand an der Markierung, Deckel drauf.";
    /// A step at the clutch, one row each, in sequence.
    pub clutch_look_at_joints = "Look at the joints with the pedal down.",
        "Verbindungen bei getretenem Pedal ansehen.";

    /// A step at the power steering, one row each, in sequence.
    pub steering_read_fluid = "Read the fluid off the cap; colour tells nothing.",
        "Flüssigkeit vom Deckel ablesen; die Farbe sagt nichts.";
    /// A step at the power steering, one row each, in sequence.
    pub steering_fill = "Fill to the cold mark, front wheels off the ground.",
        "Bis zur Kaltmarkierung füllen, Vorderräder in der Luft.";
    /// A step at the power steering, one row each, in sequence.
    pub steering_lock_to_lock = "Lock to lock by hand with the engine off, topping up, then slowly with it running; never hold it at the stop.",
        "Von Hand von Anschlag zu Anschlag bei stehendem Motor, dabei nachfüllen, dann langsam bei laufendem; nie am Anschlag halten.";
    /// A step at the power steering, one row each, in sequence.
    pub steering_wait_for_foam = "Stop and wait until the foam is gone; do it again while any comes.",
        "Abstellen und warten, bis der Schaum weg ist; wiederholen, solange noch welcher kommt.";
    /// A step at the power steering, one row each, in sequence.
    pub steering_level = "Level at its mark for the temperature, cap on.",
        "Füllstand an der Markierung für die Temperatur, Deckel drauf.";
    /// A step at the power steering, one row each, in sequence.
    pub steering_look = "Look at hoses, rack and pump.", "Schläuche, Lenkgetriebe und Pumpe ansehen.";

    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_name_oil = "Name the oil that the maker asks for; there is no other that is near enough.",
        "Das Öl nennen, das der Hersteller verlangt; ein anderes tut es nicht.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_drain = "Drain and measure what came out, with its temperature.",
        "Ablassen und messen, was herauskam, mit der Temperatur.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_fill = "Fill as much as came out.", "So viel einfüllen, wie herauskam.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_start = "Start and go through all positions of the lever, brake on.",
        "Starten und alle Wählstellungen durchschalten, Bremse getreten.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_warm = "Bring it to the maker's temperature window, read in the pan.",
        "Ins Temperaturfenster des Herstellers bringen, in der Wanne gemessen.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_see_level = "See the level within the window, engine as the maker says.",
        "Füllstand im Fenster ansehen, Motor so, wie der Hersteller es sagt.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub hold_litres_in_against_out = "Hold litres in against litres out.",
        "Liter rein gegen Liter raus halten.";
    /// A step at the automatic gearbox, one row each, in sequence.
    pub automatic_look = "Look for drips warm.", "Warm nach Tropfen sehen.";

    /// A step at a gearbox or axle filled to its plug, one row each, in sequence.
    pub plug_name_grade = "Name the grade and specification that the maker asks for.",
        "Sorte und Spezifikation nennen, die der Hersteller verlangt.";
    /// A step at a gearbox or axle filled to its plug, one row each, in sequence.
    pub plug_drain = "Open the filler first, then drain and measure; look at the magnet.",
        "Erst die Einfüllschraube öffnen, dann ablassen und messen; den Magneten ansehen.";
    /// A step at a gearbox or axle filled to its plug, one row each, in sequence.
    pub plug_fill = "Vehicle level: fill to the lower edge of the plug within the maker's temperature window, plug to its torque.",
        "Fahrzeug waagerecht: bis zur Unterkante der Bohrung füllen, im Temperaturfenster des Herstellers, Schraube mit Drehmoment.";
    /// A step at a gearbox or axle filled to its plug, one row each, in sequence.
    pub plug_warm = "See it again warm: level and drips.", "Warm noch einmal ansehen: Füllstand und Tropfen.";

    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_read_label = "Read sort and amount off the label; licensed hands alone from here on.",
        "Sorte und Menge vom Schild ablesen; ab hier nur Sachkundige.";
    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_recover = "Recover the charge and weigh it; never vent it.",
        "Füllung absaugen und wiegen; nie ins Freie ablassen.";
    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_oil = "Measure the oil that came out; as much new of the maker's goes in, and what new parts ask for.",
        "Öl messen, das herauskam; ebenso viel neues des Herstellers kommt hinein, und was neue Teile brauchen.";
    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_draw_down = "Draw it down and hold: the gauge must not rise.",
        "Evakuieren und halten: Das Manometer darf nicht steigen.";
    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_weigh_in = "Weigh in the label's amount.", "Menge vom Schild einwiegen.";
    /// A step at the refrigerant, one row each, in sequence.
    pub refrigerant_search = "Search every joint for leaks.", "An jeder Verbindung nach Lecks suchen.";

    /// A step at the fuel, one row each, in sequence.
    pub fuel_joints_closed = "Joints closed to their torque, new seals; catch what ran out.",
        "Verbindungen mit Drehmoment angezogen, neue Dichtungen; auffangen, was auslief.";
    /// A step at the fuel, one row each, in sequence.
    pub fuel_prime = "Prime with the pump or the hand lever, engine not started.",
        "Mit der Pumpe oder dem Handhebel vorfördern, Motor nicht gestartet.";
    /// A step at the fuel, one row each, in sequence.
    pub fuel_no_drip = "Look and wipe: no drip under pressure.",
        "Ansehen und abwischen: kein Tropfen unter Druck.";
    /// A step at the fuel, one row each, in sequence.
    pub fuel_no_smell = "No smell at the joints or under the vehicle.",
        "Kein Geruch an den Verbindungen oder unter dem Fahrzeug.";
    /// A step at the fuel, one row each, in sequence.
    pub fuel_start = "Start and let it run.", "Starten und laufen lassen.";
    /// A step at the fuel, one row each, in sequence.
    pub fuel_look_again = "Look again with the engine running, and once more after it.",
        "Bei laufendem Motor noch einmal ansehen, und danach noch einmal.";

    /// A step at the urea solution, one row each, in sequence.
    pub urea_clean_container = "Solution to the standard from a clean, closed container; nothing else ever goes in.",
        "Lösung nach Norm aus sauberem, geschlossenem Gebinde; nie etwas anderes einfüllen.";
    /// A step at the urea solution, one row each, in sequence.
    pub urea_fill = "Fill by its own neck.", "Über den eigenen Stutzen füllen.";
    /// A step at the urea solution, one row each, in sequence.
    pub urea_read = "Read it with a refractometer for urea where it was opened or is in doubt.",
        "Mit einem Refraktometer für Harnstoff messen, wenn es offen war oder Zweifel bestehen.";
    /// A step at the urea solution, one row each, in sequence.
    pub urea_look = "Look for white crust and drips; the message goes out as the maker says.",
        "Nach weißer Kruste und Tropfen sehen; die Meldung geht so weg, wie der Hersteller es sagt.";

    /// A step at the washer fluid, one row each, in sequence.
    pub washer_fill = "Fill, mixed for the coldest night to come.",
        "Einfüllen, gemischt für die kälteste Nacht, die kommt.";
    /// A step at the washer fluid, one row each, in sequence.
    pub washer_try = "Try it: spray at every nozzle, front, rear and lamps.",
        "Probieren: Wasser aus jeder Düse, vorn, hinten und an den Scheinwerfern.";

    /// A step at the battery, one row each, in sequence.
    pub battery_negative_off = "Radio code and seat positions noted, loads off; negative off first, unless the maker says otherwise.",
        "Radiocode und Sitzstellungen notiert, Verbraucher aus; Minus zuerst ab, wenn der Hersteller nichts anderes sagt.";
    /// A step at the battery, one row each, in sequence.
    pub battery_positive_off = "Positive off; clamp and vent hose off.",
        "Plus ab; Halter und Entgasungsschlauch ab.";
    /// A step at the battery, one row each, in sequence.
    pub battery_positive_on = "Battery clamped, vent hose on; positive on first, to its torque.",
        "Batterie befestigt, Entgasungsschlauch dran; Plus zuerst dran, mit Drehmoment.";
    /// A step at the battery, one row each, in sequence.
    pub battery_negative_on = "Negative on last, to its torque.", "Minus zuletzt dran, mit Drehmoment.";
    /// A step at the battery, one row each, in sequence.
    pub battery_memory = "Clock, windows, code, seats; lights of the dash gone out.",
        "Uhr, Fenster, Code, Sitze; Leuchten im Kombiinstrument aus.";
    /// A step at the battery, one row each, in sequence.
    pub battery_register = "A new battery registered where the vehicle asks for it; say so if it does not.",
        "Neue Batterie anlernen, wo das Fahrzeug es verlangt; sagen, wenn nicht.";
}
