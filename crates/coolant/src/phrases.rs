//! What is said of coolant: refusals, cautions, steps, and how a figure was worked out.

use phrases::phrases;

phrases! {
    /// The name of a way to bleed: a row to unfold, and within "bled: …".
    pub open_cap = "open cap", "offener Deckel";
    /// The name of a way to bleed: a row to unfold, and within "bled: …".
    pub bleed_screw = "bleed screw", "Entlüftungsschraube";
    /// The name of a way to bleed: a row to unfold, and within "bled: …".
    pub heater_valve = "heater valve", "Heizungsventil";
    /// The name of a way to bleed: a row to unfold, and within "bled: …".
    pub electric_pumps_own_mode = "electric pump's own mode", "Programm der elektrischen Pumpe";
    /// The name of a way to bleed: a row to unfold, and within "bled: …".
    pub vacuum = "vacuum", "Unterdruck";

    /// What is done with the cap open, one row each, in sequence.
    pub raise_the_filler = "Raise the filler if the bottle is not the highest point.",
        "Einfüllöffnung anheben, wenn der Behälter nicht der höchste Punkt ist.";
    /// What is done with the cap open, one row each, in sequence.
    pub fill_slowly_cold = "Fill slowly to the mark with the engine cold and the cap off.",
        "Langsam bis zur Markierung füllen, Motor kalt, Deckel ab.";
    /// What is done with the cap open, one row each, in sequence.
    pub run_at_idle = "Run at idle with the heater hot until the thermostat opens; top up as bubbles come.",
        "Im Leerlauf mit heißer Heizung laufen lassen, bis der Thermostat öffnet; nachfüllen, wenn Blasen kommen.";
    /// What is done with the cap open, one row each, in sequence.
    pub cap_before_it_boils_over = "Fit the cap before it boils over, let it cool, set the level cold.",
        "Deckel drauf, bevor es überkocht, abkühlen lassen, Füllstand kalt einstellen.";

    /// What is done with bleed screws, one row each, in sequence.
    pub open_each_bleed_screw = "Open each bleed screw, the lowest first.",
        "Jede Entlüftungsschraube öffnen, die unterste zuerst.";
    /// What is done with bleed screws, one row each, in sequence.
    pub fill_until_no_bubbles = "Fill slowly until coolant runs there without bubbles, then close it to its torque.",
        "Langsam füllen, bis dort Kühlmittel ohne Blasen kommt, dann mit Drehmoment schließen.";
    /// What is done with bleed screws, one row each, in sequence.
    pub run_until_thermostat_opens = "Run with the heater hot until the thermostat opens, let it cool, set the level cold.",
        "Mit heißer Heizung laufen lassen, bis der Thermostat öffnet, abkühlen lassen, Füllstand kalt einstellen.";

    /// What is done by the heater valve, one row each, in sequence.
    pub heater_to_hot = "Set the heater to hot so that its valve is open; ignition on where a motor moves it.",
        "Heizung auf heiß, damit das Ventil offen ist; Zündung an, wenn ein Motor es bewegt.";
    /// What is done by the heater valve, one row each, in sequence.
    pub squeeze_heater_hoses = "Fill slowly, squeeze the heater hoses, top up.",
        "Langsam füllen, Heizungsschläuche kneten, nachfüllen.";
    /// What is done by the heater valve, one row each, in sequence.
    pub run_until_heater_blows_hot = "Run until the heater blows hot at idle, let it cool, set the level cold.",
        "Laufen lassen, bis die Heizung im Leerlauf heiß bläst, abkühlen lassen, Füllstand kalt einstellen.";

    /// What is done with an electric pump, one row each, in sequence.
    pub connect_a_charger = "Connect a charger; the pump draws on the battery for minutes.",
        "Ladegerät anschließen; die Pumpe zieht minutenlang Strom aus der Batterie.";
    /// What is done with an electric pump, one row each, in sequence.
    pub start_pumps_bleed_mode = "Fill to the mark, then start the pump's bleed mode as the maker describes.",
        "Bis zur Markierung füllen, dann das Entlüftungsprogramm der Pumpe starten, wie der Hersteller es beschreibt.";
    /// What is done with an electric pump, one row each, in sequence.
    pub let_pump_run_its_time = "Let it run its full time with the engine off, top up, run warm, set the level cold.",
        "Bei stehendem Motor ganz durchlaufen lassen, nachfüllen, warm laufen lassen, Füllstand kalt einstellen.";

    /// What is done with vacuum, one row each, in sequence.
    pub draw_system_down = "Draw the empty system down, close the valve, watch the gauge hold.",
        "Das leere System evakuieren, Ventil schließen, ansehen, ob das Manometer stehen bleibt.";
    /// What is done with vacuum, one row each, in sequence.
    pub let_coolant_be_sucked_in = "Let coolant be sucked in from a full container, hose end always covered.",
        "Kühlmittel aus einem vollen Behälter ansaugen lassen, Schlauchende immer bedeckt.";
    /// What is done with vacuum, one row each, in sequence.
    pub top_up_and_run = "Top up, run with the heater hot until the thermostat opens, set the level cold.",
        "Nachfüllen, mit heißer Heizung laufen lassen, bis der Thermostat öffnet, Füllstand kalt einstellen.";

    /// What hurts, shown before a step at the coolant.
    pub hot = "Hot coolant is under pressure and scalds. Open nothing until the engine is cool to the hand.",
        "Heißes Kühlmittel steht unter Druck und verbrüht. Nichts öffnen, bis der Motor handkalt ist.";
    /// What hurts, shown before a step at the coolant.
    pub poisonous = "Coolant is poisonous and tastes sweet. Keep it from children and animals; wipe up every spill.",
        "Kühlmittel ist giftig und schmeckt süß. Von Kindern und Tieren fernhalten; jeden Tropfen aufwischen.";
    /// What hurts, shown before a step at the coolant.
    pub fan_starts = "The fan may start by itself, even with the engine off. Keep hands, hair and rags clear.",
        "Der Lüfter kann von selbst anlaufen, auch bei stehendem Motor. Hände, Haare und Lappen weg.";
    /// What hurts, shown before a step at the coolant.
    pub exhaust_indoors = "Run the engine only with its exhaust led outside.",
        "Den Motor nur laufen lassen, wenn die Abgase nach draußen geführt sind.";
    /// What hurts, shown before a step at the coolant.
    pub disposal = "Do not pour coolant into a drain or onto soil. Local rules say how it is recycled or handed in.",
        "Kühlmittel nicht in den Abfluss oder auf den Boden schütten. Recyceln oder abgeben, wie es am Ort vorgeschrieben ist.";
    /// What hurts, shown before a step at the coolant.
    pub makers_specification = "The vehicle maker's coolant specification and filling instructions come first.",
        "Kühlmittelvorgabe und Füllanleitung des Fahrzeugherstellers gehen vor.";

    /// How a leak test is done, one row each, in sequence.
    pub let_engine_cool = "Let the engine cool; a warm system loses pressure by cooling.",
        "Motor abkühlen lassen; ein warmes System verliert Druck beim Abkühlen.";
    /// How a leak test is done, one row each, in sequence.
    pub tester_on_itself_first = "Close the tester on itself, pump it up and watch: a tester that leaks proves nothing.",
        "Abdrückgerät für sich allein verschließen, aufpumpen und ansehen: Ein undichtes Gerät weist nichts nach.";
    /// How a leak test is done, one row each, in sequence.
    pub cap_apart = "Test the cap apart, on its adapter: it has to open near its rating and hold below it.",
        "Deckel für sich prüfen, auf seinem Adapter: Er muss nahe seinem Druck öffnen und darunter halten.";
    /// How a leak test is done, one row each, in sequence.
    pub pump_system_up = "Pump the system up, never above the cap's or the system's rating.",
        "System aufpumpen, nie über den Druck, für den Deckel und System gebaut sind.";
    /// How a leak test is done, one row each, in sequence.
    pub wait_for_hoses = "Wait for hoses to settle, pump up again, then start timing.",
        "Warten, bis sich die Schläuche gesetzt haben, nachpumpen, dann die Zeit nehmen.";
    /// How a leak test is done, one row each, in sequence.
    pub note_each_minute = "Note time, pressure and coolant temperature each minute; look at every joint.",
        "Jede Minute Zeit, Druck und Kühlmitteltemperatur notieren; jede Verbindung ansehen.";
    /// How a leak test is done, one row each, in sequence.
    pub lost_with_nothing_wet = "Pressure lost with nothing wet: check the oil, the carpet at the heater, and test for combustion gas in the bottle.",
        "Druck weg und nichts nass: Öl prüfen, Teppich an der Heizung prüfen und im Ausgleichsbehälter auf Verbrennungsgas prüfen.";

    /// What hurts, where the cap would be opened at this temperature; how far it is above boiling.
    pub would_burst_out(kelvins) = "Do not open: at outside pressure the coolant is {kelvins} above boiling and would burst out. Let it cool.",
        "Nicht öffnen: Ohne Druck wäre das Kühlmittel {kelvins} über dem Siedepunkt und würde herausschießen. Abkühlen lassen.";
    /// What hurts, where the cap would be opened at this temperature; how far it is above boiling.
    pub close_to_boiling = "Do not open: the coolant is close to boiling and the head is hotter than the reading. Let it cool.",
        "Nicht öffnen: Das Kühlmittel siedet fast, und der Kopf ist heißer als der Messwert. Abkühlen lassen.";
    /// What hurts, where the cap would be opened at this temperature; how far it is above boiling.
    pub open_only_cool = "Hot coolant is under pressure: open only when the engine is cool to the hand, with a cloth, to the first stop. Follow the vehicle maker's instructions.",
        "Heißes Kühlmittel steht unter Druck: nur öffnen, wenn der Motor handkalt ist, mit einem Lappen, bis zur ersten Raste. Anleitung des Fahrzeugherstellers beachten.";

    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub absolute_under_cap = "absolute pressure under the cap", "absoluter Druck unter dem Deckel";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub air_and_cap = "pa + cap", "pa + Deckel";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub cap = "cap", "Deckel";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub water_among_molecules = "water among the molecules", "Wasser unter den Molekülen";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub boils_under_cap = "boils under the cap", "siedet unter dem Deckel";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub boils_with_no_pressure = "boils with no pressure", "siedet ohne Druck";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub boiling_point_title = "Boiling point", "Siedepunkt";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub raoult_limit = "Raoult's law: within 1 to 2 K of tables at half and half, 5 K above 60 %.",
        "Raoultsches Gesetz: auf 1 bis 2 K bei halb und halb, über 60 % auf 5 K an den Tabellen.";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub while_cap_keeps_rating = "Holds only while the cap keeps its rating; test the cap apart.",
        "Gilt nur, solange der Deckel seinen Druck hält; den Deckel für sich prüfen.";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub boiling_less_reading = "boiling point - reading", "Siedepunkt - Messwert";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub boiling_point = "boiling point", "Siedepunkt";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub reading_of_coolant = "reading", "Messwert";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub margin_title = "Margin to boiling", "Abstand zum Sieden";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub margin_under_cap = "margin under the cap", "Abstand unter dem Deckel";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub margin_with_no_pressure = "margin with no pressure", "Abstand ohne Druck";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub sensor_reads_cooler = "The sensor reads cooler than the head.",
        "Der Fühler zeigt weniger an, als der Kopf heiß ist.";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub above_boiling = "above boiling at outside pressure", "über dem Siedepunkt ohne Druck";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub coolant_less_to = "coolant - to", "Kühlmittel - to";
    /// How boiling was worked out: a title, a line, a name in a formula, or what limits it.
    pub coolant = "coolant", "Kühlmittel";

    /// A refusal, before "is … outside … to …": which figure.
    pub the_caps_rating = "the cap's rating", "der Druck des Deckels";
    /// A refusal, before "is … outside … to …": which figure.
    pub part_of_glycol_by_mass = "the part of glycol by mass", "der Masseanteil Glykol";
    /// A refusal, before "is … outside … to …": which figure.
    pub part_of_glycol_by_volume = "the part of glycol by volume", "der Volumenanteil Glykol";
    /// A refusal, before "is … outside … to …": which figure.
    pub part_of_concentrate_by_volume = "the part of concentrate by volume", "der Volumenanteil Konzentrat";
    /// A refusal, before "is … outside … to …": which figure.
    pub glycol_in_concentrate = "the glycol in the concentrate", "das Glykol im Konzentrat";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_coolants_temperature = "the coolant's temperature", "die Kühlmitteltemperatur";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_was_poured = "what was poured", "das Eingefüllte";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_was_drained = "what was drained", "das Abgelassene";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_was_lost = "what was lost", "das Verlorene";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_new_parts_hold = "what new parts hold", "das, was neue Teile fassen,";
    /// A refusal, before "is … outside … to …": which figure.
    pub how_far_it_was_low = "how far it was low", "das, was vorher fehlte,";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_capacity = "the capacity", "die Füllmenge";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_stayed_in = "what stayed in", "das, was drin blieb,";
    /// A refusal, before "is … outside … to …": which figure.
    pub below_cold_mark = "how far below the cold mark", "das, was bis zur Kaltmarkierung fehlt,";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_rating = "the rating", "der zulässige Druck";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_gauges_division = "the gauge's division", "die Teilung des Manometers";
    /// A refusal, before "is … outside … to …": which figure.
    pub tolerance_of_temperature_change = "the tolerance of the temperature change",
        "die Unsicherheit der Temperaturänderung";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_headspace = "the headspace", "der Luftraum";
    /// A refusal, before "is … outside … to …": which figure.
    pub coolant_in_the_system = "the coolant in the system", "das Kühlmittel im System";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_limit = "the limit", "der Grenzwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_limits_drop = "the limit's drop", "der erlaubte Druckverlust";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_limits_time = "the limit's time", "die Zeit zum Grenzwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_gauge = "the gauge", "das Manometer";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_time = "the time", "die Zeit";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_temperature = "the temperature", "die Temperatur";
    /// A refusal, before "is … outside … to …": which figure.
    pub airs_part_of_a_pressure = "the air's part of a pressure", "der Anteil der Luft an einem Druck";
    /// A refusal, before "is … outside … to …": which figure.
    pub least_strength = "the least strength", "die geringste Stärke";
    /// A refusal, before "is … outside … to …": which figure.
    pub greatest_strength = "the greatest strength", "die größte Stärke";
    /// A refusal, before "is … outside … to …": which figure.
    pub what_is_left_in = "what is left in", "das, was noch drin ist,";
    /// A refusal, before "is … outside … to …": which figure.
    pub jugs_smallest_amount = "the jug's smallest amount", "die kleinste Menge der Kanne";
    /// A refusal, before "is … outside … to …": which figure.
    pub bottles_content = "the bottle's content", "der Inhalt der Flasche";
    /// A refusal, before "is … outside … to …": which figure.
    pub freezing_point_read = "the freezing point read", "der abgelesene Gefrierpunkt";
    /// A refusal, before "is … outside … to …": which figure.
    pub temperature_of_sample = "the temperature of the sample", "die Temperatur der Probe";
    /// A refusal, before "is … outside … to …": which figure.
    pub density_read = "the density read", "die abgelesene Dichte";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_volume = "the volume", "das Volumen";
    /// A refusal, before "is … outside … to …": which figure.
    pub bottles_area = "the bottle's area", "die Fläche des Ausgleichsbehälters";
    /// A refusal, before "is … outside … to …": which figure.
    pub points_concentrate = "a point's concentrate by volume", "der Volumenanteil Konzentrat eines Punktes";
    /// A refusal, before "is … outside … to …": which figure.
    pub points_freezing_point = "a point's freezing point", "der Gefrierpunkt eines Punktes";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_empty_volume = "the empty volume", "das leere Volumen";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_vacuum_gauge = "the vacuum gauge", "das Unterdruckmanometer";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_absolute_pressure = "the absolute pressure", "der absolute Druck";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_altitude = "the altitude", "die Höhe";

    /// A refusal: the unit behind a figure.
    pub of_the_whole = "of the whole", "vom Ganzen";
    /// A refusal: the unit behind a figure.
    pub of_its_mass = "of its mass", "seiner Masse";
    /// A refusal: the unit behind a figure.
    pub litres_either_way = "L either way", "L nach oben und unten";

    /// A refusal, behind the last colon: how to mend it.
    pub mend_stamped_gauge_pressure = "it is stamped on the cap as gauge pressure, usually 0.9 to 1.4 bar",
        "er ist als Überdruck auf den Deckel geprägt, meist 0,9 bis 1,4 bar";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_no_simple_law = "stronger mixtures boil by no simple law: ask the maker of the coolant",
        "stärkere Mischungen sieden nach keinem einfachen Gesetz; den Hersteller des Kühlmittels fragen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_reading_and_unit = "check the reading and its unit", "Messwert und Einheit prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_figure_and_unit = "check the figure and its unit", "Zahl und Einheit prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_how_far_off = "say how far it may be off, such as 0.4 L for a pan",
        "sagen, wie genau es ist, z. B. 0,4 L bei einer Wanne";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_stamped_or_manual = "it is stamped on the cap, or stands in the vehicle's manual",
        "er ist auf den Deckel geprägt oder steht in den Unterlagen des Fahrzeugs";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_how_far_off_thermometer = "say how far it may be off, such as 0.5 K for a good thermometer",
        "sagen, wie genau es ist, z. B. 0,5 K bei einem guten Thermometer";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_above_nothing = "it has to be above nothing", "es muss über null liegen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_below_nothing = "below nothing in a system under pressure: see whether a minus sign or a decimal comma is misread",
        "unter null in einem System unter Druck; nachsehen, ob ein Minus oder ein Komma falsch gelesen ist";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_figure_sign_unit = "check the figure, its sign and its unit, and whether a decimal comma parts it",
        "Zahl, Vorzeichen und Einheit prüfen, und ob ein Komma sie trennt";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_too_far_from_before = "too far from the one before for coolant: check the figure and its unit",
        "für Kühlmittel zu weit vom Messwert davor; Zahl und Einheit prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_rest_is_steam = "the rest is steam: test cold, and with air pumped in",
        "der Rest ist Dampf; kalt prüfen und mit hineingepumpter Luft";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_leave_some_pressure = "it has to leave some pressure", "etwas Druck muss übrig bleiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_forty_percent = "40 % is 0.4", "40 % sind 0,4";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_sixty_percent = "60 % is 0.6", "60 % sind 0,6";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_fifty_percent = "50 % is 0.5", "50 % sind 0,5";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_at_most_capacity = "it is at most the capacity", "es ist höchstens die Füllmenge";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_usual_jug = "0.1 L is usual", "üblich ist 0,1 L";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_read_its_label = "read its label", "auf dem Etikett nachlesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_in_vehicles_manual = "it stands in the vehicle's manual",
        "sie steht in den Unterlagen des Fahrzeugs";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_on_safety_sheet = "it stands on the safety data sheet, usually 0.90 to 0.97; a ready mix is no concentrate",
        "es steht im Sicherheitsdatenblatt, meist 0,90 bis 0,97; eine Fertigmischung ist kein Konzentrat";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_maybe_too_strong = "past the lowest the mixture may be too strong: thin it with a measured part of water and read again",
        "jenseits des tiefsten Punktes kann die Mischung zu stark sein; mit einem gemessenen Teil Wasser verdünnen und noch einmal ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_not_measured_beyond = "it was not measured beyond that: thin it with a measured part of water and read again",
        "weiter wurde nicht gemessen; mit einem gemessenen Teil Wasser verdünnen und noch einmal ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_nearer_to_room = "let it come nearer to the room's and read again",
        "der Raumtemperatur näher kommen lassen und noch einmal ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_no_mixture = "check the glycol, the scale and the temperature; outside it is no mixture of 0 to 60 %",
        "Glykol, Skala und Temperatur prüfen; außerhalb ist es keine Mischung von 0 bis 60 %";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_liquid = "take one at which the coolant is liquid, 100 °C at most",
        "eine nehmen, bei der das Kühlmittel flüssig ist, höchstens 100 °C";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_not_measured_here = "stronger mixtures were not measured here: thin it, or ask the coolant's maker for the curve",
        "stärkere Mischungen sind hier nicht gemessen; verdünnen, oder den Hersteller des Kühlmittels nach der Kurve fragen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_length_times_width = "measure length times width at the marks",
        "Länge mal Breite an den Markierungen messen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_check_the_figure = "check the figure", "Zahl prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_let_it_cool = "let it cool: warm coolant boils under vacuum",
        "abkühlen lassen; warmes Kühlmittel siedet unter Unterdruck";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_no_pump_draws_deeper = "at this altitude and temperature no pump draws deeper; check the gauge, and write vacuum below zero",
        "bei dieser Höhe und Temperatur saugt keine Pumpe tiefer; Manometer prüfen, und Unterdruck mit Minus schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_gauge_needs_airs = "gauge pressure needs the air's added to it",
        "zum Überdruck kommt der Luftdruck dazu";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_water_boils_between = "water boils only between its freezing and its critical point",
        "Wasser siedet nur zwischen Gefrierpunkt und kritischem Punkt";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_height_above_sea = "give the place's height above sea level",
        "die Höhe des Ortes über dem Meer angeben";

    /// A refusal, whole.
    pub out_of_range(what, value, unit, low, high, mend) = "{what} is {value} {unit}, outside {low} to {high} {unit}: {mend}",
        "{what} ist {value} {unit}, außerhalb von {low} bis {high} {unit}: {mend}";
    /// A refusal, whole.
    pub no_freezing_point(glycol, percent, beyond) = "{glycol} glycol at {percent} % by mass: {beyond}",
        "{glycol}glykol mit {percent} % Masseanteil: {beyond}";
    /// A refusal, whole.
    pub two_glycols(first, second) = "{first} and {second} glycol stand in one question: ask for one of them; a mixture of both cannot be measured or worked out here",
        "{first}glykol und {second}glykol stehen in einer Frage: nur nach einem fragen; eine Mischung aus beiden lässt sich hier weder messen noch rechnen";
    /// A refusal, whole.
    pub wrong_scale(scale, coolant, right) = "the {scale} scale was read on {coolant} glycol: read the refractometer on its {right} scale",
        "abgelesen an der Skala für {scale}glykol, drin ist {coolant}glykol: am Refraktometer die Skala für {right}glykol ablesen";
    /// A refusal, whole.
    pub empty_shelf = "the shelf is empty: name at least one of concentrate, premix, water",
        "nichts steht bereit: mindestens eines nennen, Konzentrat, Fertigmischung oder Wasser";
    /// A refusal, whole.
    pub nothing_drained(left, capacity, now) = "nothing can be drained ({left} L are left of {capacity} L), so the strength stays at {now} %: drain some first",
        "nichts lässt sich ablassen ({left} L sind noch drin von {capacity} L), also bleibt die Stärke bei {now} %: erst etwas ablassen";
    /// A refusal, whole.
    pub shelf_too_weak(strongest, want) = "the strongest on the shelf has {strongest} % glycol by volume, {want} % is wanted: bring something stronger",
        "das Stärkste, was bereitsteht, hat {strongest} % Glykol nach Volumen, gewünscht sind {want} %: etwas Stärkeres holen";
    /// A refusal, whole.
    pub shelf_too_strong(weakest, want) = "the weakest on the shelf has {weakest} % glycol by volume, {want} % is wanted: bring water or a weaker premix",
        "das Schwächste, was bereitsteht, hat {weakest} % Glykol nach Volumen, gewünscht sind {want} %: Wasser oder eine schwächere Fertigmischung holen";
    /// A refusal, whole.
    pub too_many_rounds(rounds, reached, want) = "after {rounds} rounds of draining and filling the strength would be {reached} %, not {want} % by volume: drain more each time (block plug, flush) or bring something nearer to the wanted strength",
        "nach {rounds} Runden Ablassen und Füllen wären es {reached} %, nicht {want} % nach Volumen: jedes Mal mehr ablassen (Ablassschraube am Block, spülen) oder etwas holen, das der gewünschten Stärke näher ist";
    /// A refusal, whole.
    pub no_basis = "nothing says how much the system holds: give what was drained, or the capacity and what stayed in",
        "nichts sagt, wie viel das System fasst: angeben, was abgelassen wurde, oder die Füllmenge und was drin blieb";
    /// A refusal, whole.
    pub too_few_readings(needed, found) = "a line needs at least {needed} readings, {found} are there: take more",
        "eine Linie braucht mindestens {needed} Messwerte, da sind {found}: mehr ablesen";
    /// A refusal, whole.
    pub time_not_rising(position, minutes) = "reading {position} is at {minutes} min, not after the one before: put the readings in order of time",
        "Messwert {position} ist bei {minutes} min, nicht nach dem davor: Messwerte nach der Zeit ordnen";
    /// A refusal, whole.
    pub reading_impossible(position, what, value, unit, mend) = "reading {position}: {what} is {value} {unit}: {mend}",
        "Messwert {position}: {what} ist {value} {unit}: {mend}";
    /// A refusal, whole.
    pub limit_needs_headspace = "a limit in mL/h needs the headspace: give it, or give the limit as a pressure drop in a time",
        "ein Grenzwert in mL/h braucht den Luftraum: ihn angeben, oder den Grenzwert als Druckverlust in einer Zeit";
    /// A refusal, whole.
    pub no_rating = "neither the cap's nor the system's rating is known: read it before pumping anything up",
        "weder der Druck des Deckels noch der des Systems ist bekannt: ablesen, bevor etwas aufgepumpt wird";
    /// A refusal, whole.
    pub table_too_short(found) = "a table of freezing points needs at least two, {found} are there: copy more of the label",
        "eine Tabelle von Gefrierpunkten braucht mindestens zwei, da sind {found}: mehr vom Etikett abschreiben";
    /// A refusal, whole.
    pub table_not_falling(weak, strong) = "the table does not fall from {weak} % to {strong} %: each stronger mixture has to freeze lower, check the figures",
        "die Tabelle fällt nicht von {weak} % auf {strong} %: jede stärkere Mischung muss tiefer gefrieren, Zahlen prüfen";
    /// A refusal, whole.
    pub table_unreadable(point) = "`{point}` is no point of a table: write 50% -37C",
        "„{point}“ ist kein Punkt einer Tabelle: schreiben wie 50% -37C";
    /// A refusal, whole.
    pub unsteady = "the readings make no rate that is a number: check their figures and units",
        "aus den Messwerten ergibt sich kein brauchbarer Wert: Zahlen und Einheiten prüfen";

    /// A refusal, behind "… glycol at … % by mass": why there is no freezing point.
    pub ethylene_turns_back = "past 68 % the freezing point turns back up and laboratories differ; thin it",
        "über 68 % steigt der Gefrierpunkt wieder, und die Labore sind sich nicht einig; verdünnen";
    /// A refusal, behind "… glycol at … % by mass": why there is no freezing point.
    pub propylene_not_published = "nothing is published here past 60 % by volume; it does not turn back, it thickens to a glass: thin it, or ask the coolant's maker",
        "über 60 % nach Volumen ist hier nichts veröffentlicht; es steigt nicht wieder, es wird zäh wie Glas; verdünnen, oder den Hersteller des Kühlmittels fragen";

    /// The glycol before the word "glycol", or alone in a line of a working.
    pub glycol_ethylene = "ethylene", "Ethylen";
    /// The glycol before the word "glycol", or alone in a line of a working.
    pub glycol_propylene = "propylene", "Propylen";

    /// Beside the rows of a filling: what litres out and in say of each other.
    pub bases_disagree(litres) = "what was drained and what the capacity says differ by {litres:.1} L: check the capacity and what stayed in",
        "was abgelassen wurde und was die Füllmenge sagt, liegen {litres:.1} L auseinander: Füllmenge prüfen und was drin blieb";
    /// Beside the rows of a filling: what litres out and in say of each other.
    pub full = "full", "voll";
    /// Beside the rows of a filling: what litres out and in say of each other.
    pub short_by(litres) = "short by about {litres:.1} L, more than the measuring error: bleed again",
        "etwa {litres:.1} L fehlen, mehr als der Messfehler: noch einmal entlüften";
    /// Beside the rows of a filling: what litres out and in say of each other.
    pub cannot_tell_from_litres = "can't tell from litres: level after cooling decides",
        "an den Litern nicht zu erkennen: der Füllstand nach dem Abkühlen entscheidet";
    /// Beside the rows of a filling: what litres out and in say of each other.
    pub more_than_can_fit = "more went in than can fit: check capacity, or coolant elsewhere",
        "mehr eingefüllt, als hineinpasst: Füllmenge prüfen, oder ob Kühlmittel woanders hingelaufen ist";

    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub litres_within(litres, within) = "{litres}, within {within}", "{litres}, auf {within} genau";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub formula_drained = "caught + lost + new parts + low at the start",
        "aufgefangen + verloren + neue Teile + anfangs zu wenig";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub formula_capacity = "capacity + new parts - left in", "Füllmenge + neue Teile - noch drin";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub formula_both = "both ways, by their tolerances", "auf beide Arten, nach ihrer Genauigkeit";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub room_at_20 = "room at 20 °C", "Platz bei 20 °C";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub poured_at_20 = "poured, at 20 °C", "eingefüllt, bei 20 °C";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub missing = "missing", "fehlt";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub formula_missing = "R - P, tolerances as squares, widened by 1.15",
        "R - P, Genauigkeiten als Quadrate, um 1,15 geweitet";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub filling_title = "Filling", "Einfüllen";
    /// How the filling was worked out: a title, a line, a formula, or what limits it.
    pub litres_warn = "Litres warn; the level after one full heating and cooling decides.",
        "Liter warnen; der Füllstand nach einmal ganz warm und wieder kalt entscheidet.";

    /// What the printed specifications say of pouring one thing onto another.
    pub maker_not_stated = "the maker's coolant specification is not stated: find it first, colour tells nothing",
        "die Kühlmittelvorgabe des Herstellers fehlt: erst heraussuchen, die Farbe sagt nichts";
    /// What the printed specifications say of pouring one thing onto another.
    pub in_system_not_stated = "the inhibitor of what stays in is not known: flush, or ask before mixing",
        "welche Zusätze das hat, was drin bleibt, ist nicht bekannt: spülen, oder vor dem Mischen fragen";
    /// What the printed specifications say of pouring one thing onto another.
    pub shelf_not_stated(what) = "{what}: its specification is not stated, read the label",
        "{what}: die Spezifikation fehlt, auf dem Etikett nachlesen";
    /// What the printed specifications say of pouring one thing onto another.
    pub in_system_not_makers(in_system, maker) = "{in_system} stays in, the maker asks for {maker}: flush before filling",
        "{in_system} bleibt drin, der Hersteller verlangt {maker}: vor dem Füllen spülen";
    /// What the printed specifications say of pouring one thing onto another.
    pub shelf_not_makers(what, printed, maker) = "{what} is {printed}, the maker asks for {maker}: do not pour it",
        "{what} ist {printed}, der Hersteller verlangt {maker}: nicht einfüllen";
    /// What the printed specifications say of pouring one thing onto another.
    pub would_mix(what, printed, in_system) = "{what} is {printed}, {in_system} stays in: flush, or do not mix them",
        "{what} ist {printed}, {in_system} bleibt drin: spülen oder nicht mischen";

    /// What a leak test says against its limit.
    pub tight = "tight", "dicht";
    /// What a leak test says against its limit.
    pub tight_unless_warmed = "tight, unless it warmed meanwhile",
        "dicht, wenn es inzwischen nicht wärmer wurde";
    /// What a leak test says against its limit.
    pub leaks = "leaks", "undicht";
    /// What a leak test says against its limit.
    pub cannot_tell_wait(minutes) = "can't tell yet, wait {minutes} minutes",
        "noch nicht zu sagen, {minutes} Minuten warten";
    /// What a leak test says against its limit.
    pub cannot_tell_because(why) = "can't tell yet: {why}", "noch nicht zu sagen: {why}";

    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_no_pressure = "no pressure was put on; pump it up to the cap's rating, and see whether the gauge and its unit are right",
        "es war kein Druck drauf; bis zum Druck des Deckels aufpumpen und nachsehen, ob Manometer und Einheit stimmen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_too_little_pressure = "too little pressure was put on to prove anything; pump it up to the cap's rating",
        "zu wenig Druck, um etwas nachzuweisen; bis zum Druck des Deckels aufpumpen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_too_short = "too few readings over too short a time; go on reading",
        "zu wenige Messwerte in zu kurzer Zeit; weiter ablesen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_too_near_limit = "too near to the limit for these instruments; test overnight, or measure the headspace and temperature better",
        "zu nah am Grenzwert für diese Geräte; über Nacht prüfen, oder Luftraum und Temperatur genauer messen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_temperature_not_read = "it fell, but cooling alone may do that; read the coolant's temperature each time, or test once the engine is as cold as the shop, and say so",
        "der Druck fiel, aber das kann allein vom Abkühlen kommen; jedes Mal die Kühlmitteltemperatur ablesen, oder prüfen, wenn der Motor so kalt wie die Werkstatt ist, und das angeben";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_contraction_unknown = "it fell, but coolant that shrinks may do that; tell the headspace and the amount of coolant, or test once the engine is as cold as the shop",
        "der Druck fiel, aber das kann vom Schrumpfen des Kühlmittels kommen; Luftraum und Kühlmittelmenge angeben, oder prüfen, wenn der Motor so kalt wie die Werkstatt ist";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_jumps = "the gauge jumped too often; find out why (gauge touched, cap let go, thermostat), and test again",
        "das Manometer sprang zu oft; herausfinden, warum (Manometer berührt, Deckel hat abgeblasen, Thermostat), und noch einmal prüfen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_uneven = "it did not fall evenly, as a leak does; leave the gauge alone, test the cap apart, and read again for 15 minutes",
        "der Druck fiel nicht gleichmäßig wie bei einem Leck; das Manometer in Ruhe lassen, den Deckel für sich prüfen und noch einmal 15 Minuten ablesen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_pressure_rose = "the pressure rose; see whether it warms or the engine ran, test for combustion gas, and read again",
        "der Druck stieg; nachsehen, ob es wärmer wird oder der Motor lief, auf Verbrennungsgas prüfen und noch einmal ablesen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_still_settling = "still settling; pump up again and time afresh",
        "setzt sich noch; nachpumpen und die Zeit neu nehmen";
    /// Why a leak test says nothing yet, behind "can't tell yet: ".
    pub why_tester_leaks = "the tester loses pressure by itself; mend it and test again",
        "das Abdrückgerät selbst verliert Druck; instand setzen und noch einmal prüfen";

    /// A leak test: what was taken for granted.
    pub headspace_unknown = "the headspace is not known: pass or fail by pressure, no mL/h",
        "der Luftraum ist nicht bekannt: entschieden wird nach Druck, ohne mL/h";
    /// A leak test: what was taken for granted.
    pub temperature_steady = "the temperature was not read: it is taken as steady, as cold as the shop",
        "die Temperatur wurde nicht abgelesen: sie gilt als gleichbleibend, so kalt wie die Werkstatt";
    /// A leak test: what was taken for granted.
    pub temperature_not_read = "not every reading has a temperature: cooling lowers the pressure as a leak does, and warming hides a leak",
        "nicht jeder Messwert hat eine Temperatur: Abkühlen senkt den Druck wie ein Leck, und Erwärmen verdeckt ein Leck";
    /// A leak test: what was taken for granted.
    pub contraction_any = "headspace or coolant is not known: all that it may be is allowed for, from none to the most that fits",
        "Luftraum oder Kühlmittel ist nicht bekannt: gerechnet ist mit allem, was sein kann, von nichts bis zum Meisten, das hineinpasst";
    /// A leak test: what was taken for granted.
    pub tester_not_blank_tested = "the tester was not tested closed on itself",
        "das Abdrückgerät wurde nicht für sich allein geprüft";
    /// A leak test: what was taken for granted.
    pub rating_unknown = "no cap or system rating was given",
        "der Druck von Deckel oder System ist nicht angegeben";

    /// A leak test: what else is to be seen in the readings.
    pub above_rating(highest, rating) = "the gauge stood at {highest}, above the rating of {rating}: never test above it, and look for harm",
        "das Manometer stand auf {highest}, über den erlaubten {rating}: nie darüber prüfen, und nach Schäden sehen";
    /// A leak test: what else is to be seen in the readings.
    pub warm_coolant(temperature) = "the coolant was at {temperature}: its steam pressure falls as it cools; test cold",
        "das Kühlmittel hatte {temperature}: sein Dampfdruck fällt beim Abkühlen; kalt prüfen";
    /// A leak test: what else is to be seen in the readings.
    pub still_settling = "the pressure fell ever more slowly: let it settle and pump up again",
        "der Druck fiel immer langsamer: setzen lassen und nachpumpen";
    /// A leak test: what else is to be seen in the readings.
    pub tester_leaks = "the tester closed on itself loses pressure: mend it first",
        "das Abdrückgerät für sich allein verliert Druck: erst instand setzen";
    /// A leak test: what else is to be seen in the readings.
    pub pressure_rose = "the pressure rose: warming, or combustion gas if the engine ran",
        "der Druck stieg: Erwärmung, oder Verbrennungsgas, wenn der Motor lief";
    /// A leak test: what else is to be seen in the readings.
    pub jumped(pressure, minutes) = "a jump of {pressure} at {minutes} min is left out of the rate: gauge touched, cap let go, thermostat opened? Look, and test again if nobody knows",
        "ein Sprung von {pressure} bei {minutes} min ist nicht mitgerechnet: Manometer berührt, Deckel abgeblasen, Thermostat geöffnet? Nachsehen, und noch einmal prüfen, wenn es niemand weiß";
    /// A leak test: what else is to be seen in the readings.
    pub combustion_gas_test = "nothing wet outside? Test for combustion gas, look at the oil and the heater's carpet",
        "außen nichts nass? Auf Verbrennungsgas prüfen, Öl und Teppich an der Heizung ansehen";

    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub headspace_at_each_reading = "headspace at each reading", "Luftraum bei jedem Messwert";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub p0_without_steam = "p0, air without steam", "p0, Luft ohne Dampf";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub so_many_readings(n) = ["{n} reading", "{n} readings"], ["{n} Messwert", "{n} Messwerte"];
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub growth_by_leaking = "growth by leaking", "Zuwachs durch das Leck";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub slope_against_time = "slope of (V/V0 - 1 - contraction/V0) against time",
        "Steigung von (V/V0 - 1 - Schrumpfung/V0) über der Zeit";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub scatter_of_a_reading = "scatter of a reading", "Streuung eines Messwerts";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub standard_error = "standard error", "Standardfehler";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub students_t = "Student's t", "t nach Student";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub lost_in_ten_minutes = "lost in ten minutes at steady temperature",
        "Verlust in zehn Minuten bei gleicher Temperatur";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub leak_test_title = "Leak test", "Dichtprüfung";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub coolant_lost = "coolant lost", "Kühlmittelverlust";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub part_that_is_cooling = "part of the drop that is cooling", "Anteil des Abkühlens am Druckverlust";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub drop_in_minutes(drop, minutes) = "{drop} in {minutes} min", "{drop} in {minutes} min";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub limit_of_test = "limit", "Grenzwert";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub with_confidence(verdict, chance) = "{verdict}, with a confidence of {chance}.",
        "{verdict}, mit einer Sicherheit von {chance}.";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub hoses_hide_a_part = "Hoses that give hide a part of the leak.",
        "Nachgiebige Schläuche verdecken einen Teil des Lecks.";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub cap_is_tested_apart = "The cap is tested apart; a leak that opens only hot is not seen.",
        "Der Deckel wird für sich geprüft; ein Leck, das erst heiß aufgeht, zeigt sich nicht.";
    /// How a leak test was worked out: a title, a line, a name in a formula, a value, or what limits it.
    pub value_from_to(middle, low, high, unit) = "{middle} ({low} to {high})\u{202f}{unit}",
        "{middle} ({low} bis {high})\u{202f}{unit}";

    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub rating_cap = "cap", "Deckel";
    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub rating_system = "system", "System";
    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub highest_test_pressure = "highest test pressure", "höchster Prüfdruck";
    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub lower_of_ratings = "lower of the ratings", "der niedrigere von beiden";
    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub test_pressure_title = "Test pressure", "Prüfdruck";
    /// How the test pressure was found: a title, a line, a formula, or what limits it.
    pub old_radiator_stands_less = "An old radiator or heater core may stand less than its rating.",
        "Ein alter Kühler oder Wärmetauscher hält vielleicht weniger aus.";

    /// How strong a mixture is against its limits.
    pub too_weak = "too weak", "zu schwach";
    /// How strong a mixture is against its limits.
    pub within_limits = "within its limits", "in seinen Grenzen";
    /// How strong a mixture is against its limits.
    pub too_strong = "too strong", "zu stark";

    /// Beside what to pour, where water is poured.
    pub water_quality = "Use distilled or deionised water: hard water and chloride eat the inhibitors and scale the core.",
        "Destilliertes oder entsalztes Wasser nehmen: Hartes Wasser und Chlorid zehren die Zusätze auf und verkalken den Kühler.";

    /// What stands on the shelf.
    pub concentrate = "concentrate", "Konzentrat";
    /// What stands on the shelf.
    pub premix = "premix", "Fertigmischung";
    /// What stands on the shelf.
    pub water = "water", "Wasser";

    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub drain_and_replace_line = "drain, and replace", "ablassen und ersetzen";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub drain_formula = "V·(want - now)/(fill - now)", "V·(soll - jetzt)/(neu - jetzt)";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub at_present = "now", "jetzt";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub want = "want", "soll";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub fill = "fill", "neu";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub drain_and_replace_title = "Drain and replace", "Ablassen und ersetzen";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub glycol_that_is_in = "glycol that is in, by volume", "Glykol, das drin ist, nach Volumen";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub capacity = "capacity", "Füllmenge";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub left_in = "left in", "noch drin";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub mixing_title = "Mixing", "Mischen";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub round(nth) = "round {nth}", "Runde {nth}";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub formula_round = "(c·left + Σ s·amount) / capacity", "(c·drin + Σ s·Menge) / Füllmenge";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub reached_by_volume(part) = "Reached: {part} by volume.", "Erreicht: {part} nach Volumen.";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub shrink_together = "Glycol and water shrink together by up to 1.2 %: the level ends a little low.",
        "Glykol und Wasser schrumpfen zusammen um bis zu 1,2 %: Am Ende steht es etwas zu niedrig.";
    /// How mixing was worked out: a title, a line, a name in a formula, or what limits it.
    pub run_before_measuring = "Run it with the heater hot before measuring again.",
        "Vor dem nächsten Messen mit heißer Heizung laufen lassen.";

    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub freezing_point = "freezing point", "Gefrierpunkt";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub freezing_point_title = "Freezing point", "Gefrierpunkt";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub glycol = "glycol", "Glykol";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub straight_line_published = "straight line between the nearest published points",
        "gerade Linie zwischen den nächsten veröffentlichten Punkten";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub laboratories_differ = "Laboratories differ most beyond 60 % by mass: count on no more than at 60 %.",
        "Über 60 % Masseanteil sind sich die Labore am wenigsten einig: nicht mit mehr rechnen als bei 60 %.";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub other_models_and_tables = "other models and tables", "andere Rechnungen und Tabellen";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub density_title = "Density", "Dichte";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub specific_heat_title = "Specific heat", "Spezifische Wärme";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub viscosity_title = "Viscosity", "Viskosität";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_from_freezing = "strength from the freezing point", "Stärke aus dem Gefrierpunkt";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub freezing_is_reading = "tf(x) = reading", "tf(x) = Messwert";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub reading = "reading", "Messwert";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_from_density = "strength from the density", "Stärke aus der Dichte";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub density_is_reading = "ρ(x, t) = reading", "ρ(x, t) = Messwert";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub bought_coolant = "bought coolant, by its inhibitors", "gekauftes Kühlmittel, je nach Zusätzen";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub density_is_reading_band = "ρ(x, t) = reading/1.015 to reading/0.995",
        "ρ(x, t) = Messwert/1,015 bis Messwert/0,995";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub ask_for_the_curve = "ask the coolant's maker for the curve; a refractometer is blurred less",
        "den Hersteller des Kühlmittels nach der Kurve fragen; ein Refraktometer ist genauer";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub same_by_volume = "the same by volume at 20 °C", "dasselbe nach Volumen bei 20 °C";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_title = "Strength", "Stärke";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub good_for_two_percent = "Good for about ±2 % of glycol.", "Auf etwa ±2 % Glykol genau.";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub density = "density", "Dichte";
    /// How a property of the mixture was worked out: a line.
    pub specific_heat = "specific heat", "spezifische Wärme";
    /// How a property of the mixture was worked out: a line.
    pub viscosity = "viscosity", "Viskosität";
    /// How a property of the mixture was worked out: a line.
    pub strength_by_mass = "strength by mass", "Stärke nach Masse";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub glycol_and_water_only = "Glycol and water only: bought coolant with inhibitors lies from 0.5 % below to 1.5 % above in density; the maker's curve is nearer.",
        "Nur Glykol und Wasser: Gekauftes Kühlmittel mit Zusätzen liegt in der Dichte von 0,5 % darunter bis 1,5 % darüber; die Kurve des Herstellers ist genauer.";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub points_reach(low, high) = "The entered points reach from {low} to {high}; outside them it is computed.",
        "Die eingegebenen Punkte reichen von {low} bis {high}; außerhalb wird gerechnet.";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub freezing_as_published = "freezing point, as published", "Gefrierpunkt, wie veröffentlicht";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub straight_line = "straight line between the nearest points",
        "gerade Linie zwischen den nächsten Punkten";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub concentrate_by_volume = "concentrate by volume", "Konzentrat nach Volumen";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub true_curve_is_bent = "Between points that lie far apart the true curve is bent.",
        "Zwischen weit entfernten Punkten ist die wahre Kurve gebogen.";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub strength_as_published = "strength from the freezing point, as published",
        "Stärke aus dem Gefrierpunkt, wie veröffentlicht";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub part_concentrate(part) = "{part} concentrate by volume", "{part} Konzentrat nach Volumen";
    /// How a property of the mixture was worked out: a title, a line, a name in a formula, or what limits it.
    pub points_as_entered = "points as entered", "Punkte wie eingegeben";

    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub gain_cold_to_hot = "gain from cold to hot", "Zuwachs von kalt auf heiß";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub cold = "cold", "kalt";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub hot_end = "hot", "heiß";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub swell_title = "Swell", "Ausdehnung";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub metal_grows_too = "Metal and hoses grow too and take back up to a fifth.",
        "Metall und Schläuche dehnen sich mit und nehmen bis zu einem Fünftel davon auf.";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub rise_in_the_bottle = "rise in the bottle", "Anstieg im Ausgleichsbehälter";
    /// How swelling was worked out: a title, a line, a name in a formula, or what limits it.
    pub rise_formula = "ΔV / area", "ΔV / Fläche";

    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub pressure_left = "pressure left in the system", "Druck, der im System bleibt";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub air_and_gauge = "pa + gauge", "pa + Manometer";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub air_that_stays = "air that stays, at outside pressure", "Luft, die bleibt, bei Außendruck";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub goes_in = "goes in", "geht hinein";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub vacuum_fill_title = "Vacuum fill", "Füllen mit Unterdruck";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub vacuum_proves_not = "Holding vacuum does not prove pressure-tight: test under pressure too.",
        "Wenn der Unterdruck hält, ist es unter Druck noch nicht dicht: auch mit Druck prüfen.";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub came_back = "came back while held", "beim Halten zurückgekommen";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub time = "time", "Zeit";
    /// How a vacuum fill was worked out: a title, a line, a name in a formula, or what limits it.
    pub allowed = "allowed", "erlaubt";

    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub water_boils = "water boils", "Wasser siedet";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub equation_31 = "equation 31", "Gleichung 31";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub boiling_of_water_title = "Boiling point of water", "Siedepunkt von Wasser";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub pressure_of_steam = "pressure of steam", "Dampfdruck";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub equation_30 = "equation 30", "Gleichung 30";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub pressure_of_steam_title = "Pressure of steam", "Dampfdruck";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub pressure_of_air = "pressure of the air", "Luftdruck";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub air_title = "Air", "Luft";
    /// How water and air were worked out: a title, a line, a formula, or what limits it.
    pub weather_moves_it = "The weather moves it by 3 %.", "Das Wetter ändert ihn um 3 %.";

    /// Where a line of a working comes from, in words.
    pub raoults_law = "Raoult's law", "Raoultsches Gesetz";
    /// Where a line of a working comes from, in words.
    pub taken_as_not_boiling = "glycol taken as not boiling", "Glykol gilt als nicht siedend";
    /// Where a line of a working comes from, in words.
    pub ideal_gas_law = "ideal gas law", "Gesetz des idealen Gases";
    /// Where a line of a working comes from, in words.
    pub stays_the_same = "p V / T stays the same", "p V / T bleibt gleich";
    /// Where a line of a working comes from, in words.
    pub balance_of_glycol = "balance of glycol", "Bilanz des Glykols";
    /// Where a line of a working comes from, in words.
    pub in_out_and_added = "what is in, out and added", "was drin ist, herauskommt und dazukommt";
    /// Where a line of a working comes from, in words.
    pub tables_compared = "tables compared", "Tabellen verglichen";
}
