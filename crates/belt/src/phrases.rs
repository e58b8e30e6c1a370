//! What is said of belts: refusals, cautions, faults, and how a figure was worked out.

use phrases::phrases;

phrases! {
    /// What hurts, shown before anything is done at a belt.
    pub stopped = "Engine off, key out, battery off where a fan can start by itself. A moving belt takes fingers.",
        "Motor aus, Schlüssel ab, Batterie ab, wenn ein Lüfter von selbst anlaufen kann. Ein laufender Riemen nimmt Finger mit.";
    /// What hurts, shown before anything is done at a belt.
    pub spring_arm = "A tensioner's spring is strong. Turn it slowly with a long tool, never let it snap back, keep fingers out of its way.",
        "Die Feder eines Spanners ist stark. Langsam mit langem Werkzeug drehen, nie zurückschnellen lassen, Finger aus dem Weg.";
    /// What hurts, shown before anything is done at a belt.
    pub interference = "Turn neither crank nor cams with the toothed belt off: in many engines valves and pistons meet. Turn twice by hand before starting, and stop where it catches.",
        "Weder Kurbelwelle noch Nockenwellen drehen, wenn der Zahnriemen ab ist: In vielen Motoren schlagen Ventile und Kolben aneinander. Vor dem Start zweimal von Hand durchdrehen und aufhören, wo es hakt.";
    /// What hurts, shown before anything is done at a belt.
    pub stretch_belt = "A stretch belt may be fitted once. Use its tool; a lever nicks the cords.",
        "Ein Elastikriemen wird nur einmal aufgelegt. Sein Werkzeug nehmen; ein Hebel verletzt die Zugstränge.";
    /// What hurts, shown before anything is done at a belt.
    pub makers_specification = "The vehicle maker's routing, tension and torque come first.",
        "Riemenverlauf, Spannung und Drehmoment des Fahrzeugherstellers gehen vor.";

    /// A refusal, whole.
    pub out_of_range(what, value, unit, low, high, mend) = "{what} is {value} {unit}, outside {low} to {high} {unit}: {mend}",
        "{what} ist {value} {unit}, außerhalb von {low} bis {high} {unit}: {mend}";
    /// A refusal, whole.
    pub pulley_count(found, most) = "{found} pulleys make no drive: list at least two, and at most {most}",
        "zu wenige oder zu viele Scheiben ({found}): mindestens zwei aufführen, höchstens {most}";
    /// A refusal, whole.
    pub same_name(name) = "two pulleys are called {name}: give each a name of its own",
        "zwei Scheiben heißen {name}: jeder einen eigenen Namen geben";
    /// A refusal, whole.
    pub drivers(found) = "{found} pulleys drive: mark the crank alone with drives = true",
        "antreibende Scheiben: {found}; nur die Kurbelwelle mit drives = true kennzeichnen";
    /// A refusal, whole.
    pub no_sense(crank) = "it is not said which way {crank} turns: add turns = \"cw\" or \"ccw\", seen from the front",
        "es fehlt, wie herum {crank} dreht: turns = \"cw\" oder \"ccw\" dazuschreiben, von vorn gesehen";
    /// A refusal, whole.
    pub unknown_pulley(name) = "no pulley is called {name}: the tensioner has to name one that is listed",
        "keine Scheibe heißt {name}: der Spanner muss eine nennen, die aufgeführt ist";
    /// A refusal, whole.
    pub driver_moves(name) = "{name} drives and cannot be the tensioner's pulley: name the one that moves",
        "{name} treibt an und kann nicht die Spannrolle sein: die Scheibe nennen, die sich bewegt";
    /// A refusal, whole.
    pub stops(least, most) = "the tensioner's stops are {least} and {most}: write the lesser first, and no full turn between them",
        "die Anschläge des Spanners sind {least} und {most}: den kleineren zuerst schreiben, und keine volle Drehung dazwischen";
    /// A refusal, whole.
    pub no_arm = "the tensioner's pulley stands on its pivot: check the pivot's place",
        "die Spannrolle sitzt auf ihrem Drehpunkt: Ort des Drehpunkts prüfen";
    /// A refusal, whole.
    pub no_travel = "the tensioner's line has no length: write two ends that differ",
        "die Linie des Spanners hat keine Länge: zwei verschiedene Enden schreiben";
    /// A refusal, whole.
    pub no_length_code(code) = "`{code}` is no length code that is read here: write it as printed, such as 6PK1285, K060505 or 505K6",
        "„{code}“ ist kein Längencode, der hier gelesen wird: so schreiben, wie er aufgedruckt ist, z. B. 6PK1285, K060505 oder 505K6";
    /// A refusal, whole.
    pub incomplete(what, mend) = "{what}: {mend}", "{what}: {mend}";

    /// A refusal, before "is … outside … to …": which figure.
    pub place_of(name) = "the place of {name}", "der Ort von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub diameter_of(name) = "the diameter of {name}", "der Durchmesser von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub flange_of(name) = "the flange of {name}", "der Bord von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub power_of(name) = "the power of {name}", "die Leistung von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub least_wrap_of(name) = "the least wrap of {name}", "die kleinste Umschlingung von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub edge_on(name) = "the belt's edge on {name}", "die Riemenkante auf {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub mark_of(name) = "the mark of {name}", "die Markierung von {name}";
    /// A refusal, before "is … outside … to …": which figure.
    pub lines_distance_from_back = "the line's distance from the back", "der Abstand der Linie vom Rücken";
    /// A refusal, before "is … outside … to …": which figure.
    pub pitch_of_teeth = "the pitch of the teeth", "die Teilung der Zähne";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_friction = "the friction", "die Reibung";
    /// A refusal, before "is … outside … to …": which figure.
    pub friction_of_back = "the friction of the back", "die Reibung des Rückens";
    /// A refusal, before "is … outside … to …": which figure.
    pub groove_angle = "the groove angle", "der Rillenwinkel";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_tension = "the tension", "die Spannung";
    /// A refusal, before "is … outside … to …": which figure.
    pub cranks_speed = "the crank's speed", "die Drehzahl der Kurbelwelle";
    /// A refusal, before "is … outside … to …": which figure.
    pub tensioners_torque = "the tensioner's torque", "das Drehmoment des Spanners";
    /// A refusal, before "is … outside … to …": which figure.
    pub tensioners_force = "the tensioner's force", "die Kraft des Spanners";
    /// A refusal, before "is … outside … to …": which figure.
    pub pivots_place = "the pivot's place", "der Ort des Drehpunkts";
    /// A refusal, before "is … outside … to …": which figure.
    pub end_of_slot = "an end of the slot", "ein Ende des Langlochs";
    /// A refusal, before "is … outside … to …": which figure.
    pub belts_length = "the belt's length", "die Riemenlänge";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_near_reading = "the near reading", "der nahe Messwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_far_reading = "the far reading", "der ferne Messwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub distance_of_readings = "the distance of the readings", "der Abstand der Messwerte";
    /// A refusal, before "is … outside … to …": which figure.
    pub runs_length = "the run's length", "die Länge des Trums";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_limit = "the limit", "der Grenzwert";
    /// A refusal, before "is … outside … to …": which figure.
    pub the_wrap = "the wrap", "die Umschlingung";
    /// A refusal, before "is … outside … to …": which figure.
    pub grooves_depth = "the groove's depth", "die Rillentiefe";
    /// A refusal, before "is … outside … to …": which figure.
    pub gauges_limit = "the gauge's limit", "der Grenzwert der Lehre";
    /// A refusal, before "is … outside … to …": which figure.
    pub length_printed = "the length printed", "die aufgedruckte Länge";
    /// A refusal, before "is … outside … to …": which figure.
    pub length_read = "the length read", "die gemessene Länge";
    /// A refusal, before "is … outside … to …": which figure.
    pub stretch_allowed = "the stretch allowed", "die erlaubte Dehnung";

    /// A refusal, behind the last colon: how to mend it.
    pub mend_from_one_point = "measure from one point in millimetres",
        "von einem Punkt aus in Millimetern messen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_in_millimetres = "write it in millimetres", "in Millimetern schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_flange_above_face = "write how far it stands above the face",
        "schreiben, wie weit er über die Lauffläche steht";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_in_kilowatts = "write what it takes in kilowatts", "in Kilowatt schreiben, was es braucht";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_in_degrees = "write it in degrees", "in Grad schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_from_common_plane = "measure from the plane common to all",
        "von der gemeinsamen Ebene aus messen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_degrees_from_right = "write it in degrees from the right", "in Grad von rechts aus schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_pitch_as_marked = "write it as marked, such as 8 for 8M",
        "so schreiben, wie sie draufsteht, z. B. 8 bei 8M";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_such_as_03 = "write it such as 0.3", "so schreiben: 0,3";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_pk_has_40 = "PK has 40°", "PK hat 40°";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_newtons_one_run = "write it in newtons, one run", "in Newton schreiben, ein Trum";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_revolutions = "write revolutions a minute", "Umdrehungen je Minute schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_without_sign = "write it without a sign", "ohne Vorzeichen schreiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_same_point = "measure from the same point as the pulleys",
        "vom selben Punkt aus messen wie die Scheiben";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_as_printed = "write it as printed, in millimetres",
        "so schreiben, wie sie aufgedruckt ist, in Millimetern";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_read_code_again = "read the code again", "den Code noch einmal lesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_straight_edge = "measure from the straight edge to the rim", "vom Lineal bis zum Rand messen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_opposite_rims = "read at opposite rims", "an gegenüberliegenden Rändern ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_free_run = "measure the free run", "das freie Trum messen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_check_it = "check it", "prüfen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_gauge_in_millimetres = "read the gauge in millimetres", "die Lehre in Millimetern ablesen";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_on_the_gauge = "it stands on the gauge", "sie steht auf der Lehre";
    /// A refusal, behind the last colon: how to mend it.
    pub mend_per_cent = "write it in per cent", "in Prozent schreiben";

    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub in_line_title = "Pulleys in line", "Scheiben in Flucht";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub tilt = "tilt", "Neigung";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub tilt_formula = "atan((far - near)/apart)", "atan((fern - nah)/Abstand)";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub near = "near", "nah";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub far = "far", "fern";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub apart = "apart", "Abstand";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub askew = "askew by standing off", "schief durch Versatz";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub askew_formula = "atan(((near + far)/2)/span)", "atan(((nah + fern)/2)/Trum)";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub span = "span", "Trum";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub makers_limit = "the maker's limit", "Grenzwert des Herstellers";
    /// How pulleys in line were worked out: a title, a line, a name in a formula, or what limits it.
    pub one_straight_edge = "One straight edge sees one direction: turn it by a quarter and read again.",
        "Ein Lineal sieht nur eine Richtung: um ein Viertel drehen und noch einmal ablesen.";

    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub length_code_title = "Length code", "Längencode";
    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub length_as_printed = "length as printed", "Länge, wie aufgedruckt";
    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub code = "code", "Code";
    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub tenths_of_an_inch = "tenths of an inch · 2.54 mm", "Zehntelzoll · 2,54 mm";
    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub teeth = "teeth", "Zähne";
    /// How a length code was read: a title, a line, a name in a formula, or what limits it.
    pub another_maker_may_differ = "A belt of another maker with the same length may differ in ribs, cords and tolerance.",
        "Ein Riemen eines anderen Herstellers kann bei gleicher Länge andere Rippen, Zugstränge und Toleranz haben.";

    /// Beside the answer of a belt's drive.
    pub could_lie_on(pulley, side) = "The belt could lie on {pulley} with its {side} too: look which side belongs there.",
        "Der Riemen könnte auf {pulley} auch mit {side} liegen: ansehen, welche Seite dahin gehört.";
    /// Beside the answer of a belt's drive.
    pub toothed_jumps = "A toothed belt does not slip, it jumps: no slip is reckoned.",
        "Ein Zahnriemen rutscht nicht, er springt über: Schlupf wird nicht gerechnet.";
    /// Beside the answer of a belt's drive.
    pub stretched_on_by(percent) = "Stretched on by {percent} %: the maker's belt alone may be.",
        "Beim Auflegen um {percent} % gedehnt: Das verträgt nur der Riemen des Herstellers.";
    /// Beside the answer of a belt's drive.
    pub would_leave_a_pulley = "Over part of the tensioner's travel the belt would leave a pulley or cross something.",
        "Auf einem Teil des Spannerwegs würde der Riemen von einer Scheibe laufen oder etwas kreuzen.";
    /// Beside the answer of a belt's drive.
    pub little_travel_left = "Less than a twentieth of the tensioner's travel is left on one side.",
        "Auf einer Seite ist weniger als ein Zwanzigstel des Spannerwegs übrig.";
    /// Beside the answer of a belt's drive.
    pub cut_stretch_belt_off = "A stretch belt: cut it off, fit a new one with its tool by turning the crank by hand; never pry, never fit it twice.",
        "Ein Elastikriemen: abschneiden, einen neuen mit seinem Werkzeug auflegen und dabei die Kurbelwelle von Hand drehen; nie hebeln, nie zweimal auflegen.";
    /// Beside the answer of a belt's drive.
    pub take_it_off_first(pulley) = "Take it off {pulley} first, and put it on there last, with the tensioner held.",
        "Zuerst von {pulley} abnehmen und dort zuletzt auflegen, bei gehaltenem Spanner.";
    /// Beside the answer of a belt's drive.
    pub none_within_reach = "No pulley is said to be within reach: look from below and from the wheel well.",
        "Keine Scheibe ist als erreichbar genannt: von unten und vom Radhaus aus sehen.";
    /// Beside the answer of a belt's drive.
    pub tensioner_gives_too_little(room, needed) = "The tensioner gives {room} mm; lifting it off there may take up to {needed} mm.",
        "Der Spanner gibt {room} mm; das Abheben dort kann bis zu {needed} mm brauchen.";
    /// Beside the answer of a belt's drive.
    pub tensioner_gives_enough(room, needed) = "The tensioner gives {room} mm, enough for up to {needed} mm.",
        "Der Spanner gibt {room} mm, das reicht für bis zu {needed} mm.";
    /// Beside the answer of a belt's drive.
    pub friction = "friction", "Reibung";
    /// Beside the answer of a belt's drive.
    pub rpm_of_crank = "rpm of the crank", "Drehzahl der Kurbelwelle";
    /// Beside the answer of a belt's drive.
    pub tension_or_torque = "tension_n, or the tensioner's torque_nm or force_n",
        "tension_n, oder torque_nm oder force_n des Spanners";
    /// Beside the answer of a belt's drive.
    pub power_of_unknown(pulleys) = "power_kw of {pulleys} (0 for an idler)",
        "power_kw von {pulleys} (0 bei einer Umlenkrolle)";
    /// Beside the answer of a belt's drive.
    pub no_slip_margin_without(wants) = "no slip margin without {wants}",
        "ohne Angabe keine Reserve gegen Schlupf: {wants}";

    /// Which side of the belt, within a sentence: it has its … to a pulley, lies with its … on it.
    pub side_ribs = "ribs", "den Rippen";
    /// Which side of the belt, within a sentence: it has its … to a pulley, lies with its … on it.
    pub side_back = "back", "dem Rücken";

    /// Which way a pulley turns, within a sentence.
    pub clockwise = "clockwise", "im Uhrzeigersinn";
    /// Which way a pulley turns, within a sentence.
    pub counter_clockwise = "counter-clockwise", "gegen den Uhrzeigersinn";

    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrong_sense(pulley, turns, must) = "wrong sense: {pulley} would turn {turns}, it has to turn {must}; lay the belt on it with its other side",
        "falsche Drehrichtung: {pulley} würde {turns} drehen, muss aber {must} drehen; den Riemen dort mit der anderen Seite auflegen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrong_way_round(crank, turns) = "wrong sense: with {crank} turning {turns} the belt meets the pulleys the other way round; list them in that sequence, or look again which way it turns",
        "falsche Drehrichtung: dreht {crank} {turns}, läuft der Riemen andersherum über die Scheiben; in dieser Reihenfolge aufführen, oder noch einmal ansehen, wie herum sie dreht";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub not_reached(pulley, wrap) = "the belt does not lie on {pulley}: it would have to go {wrap}° round it; check its side and its place",
        "der Riemen liegt nicht auf {pulley}: er müsste dort {wrap}° umschlingen; Seite und Ort prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrap_too_small_stated(pulley, wrap, least) = "wrap too small: {pulley} has {wrap}°, the maker asks for {least}°; check the routing",
        "Umschlingung zu klein: {pulley} hat {wrap}°, der Hersteller verlangt {least}°; Verlauf prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrap_too_small(pulley, wrap, least) = "wrap too small: {pulley} has {wrap}°, it wants at least {least}°; check the routing",
        "Umschlingung zu klein: {pulley} hat {wrap}°, nötig sind mindestens {least}°; Verlauf prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub crosses_itself(from, to, other_from, other_to) = "the belt crosses itself: the run from {from} to {to} and the run from {other_from} to {other_to}; check sides and sequence",
        "der Riemen kreuzt sich: das Trum von {from} nach {to} und das Trum von {other_from} nach {other_to}; Seiten und Reihenfolge prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub crosses_pulley(from, to, pulley) = "the belt crosses a pulley: the run from {from} to {to} goes through {pulley}; check sides and sequence",
        "der Riemen kreuzt eine Scheibe: das Trum von {from} nach {to} geht durch {pulley}; Seiten und Reihenfolge prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub no_plain_loop(turns) = "the belt makes no plain loop: it turns {turns} times round, not once; check sides and sequence",
        "der Riemen macht keine einfache Runde: er geht {turns}-mal herum, nicht einmal; Seiten und Reihenfolge prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub pulleys_overlap(one, other) = "{one} and {other} overlap: measure their places and diameters again",
        "{one} und {other} überschneiden sich: Orte und Durchmesser noch einmal messen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub no_way_between(from, to) = "no belt can run from {from} to {to}: they stand too close for these sides; check sides, places and diameters",
        "kein Riemen kann von {from} nach {to} laufen: für diese Seiten stehen sie zu nah; Seiten, Orte und Durchmesser prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub too_long_at_stop(by) = "arm at its stop: the belt is {by} mm too long; take another belt, or check the routing",
        "Arm am Anschlag: der Riemen ist {by} mm zu lang; einen anderen Riemen nehmen, oder den Verlauf prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub too_short_at_stop(by) = "arm at its stop: the belt is {by} mm too short; take another belt, or check the routing",
        "Arm am Anschlag: der Riemen ist {by} mm zu kurz; einen anderen Riemen nehmen, oder den Verlauf prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub arm_past_stop(drawn, least, most) = "arm past its stop: it is drawn at {drawn}°, its stops are {least}° and {most}°; measure the pulley's place again",
        "Arm hinter dem Anschlag: gezeichnet ist er bei {drawn}°, die Anschläge sind {least}° und {most}°; den Ort der Scheibe noch einmal messen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub too_long(by) = "the belt is {by} mm too long and nothing takes that up; take another belt, or check the places",
        "der Riemen ist {by} mm zu lang, und nichts gleicht das aus; einen anderen Riemen nehmen, oder die Orte prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub too_short(by) = "the belt is {by} mm too short and nothing takes that up; take another belt, or check the places",
        "der Riemen ist {by} mm zu kurz, und nichts gleicht das aus; einen anderen Riemen nehmen, oder die Orte prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub ribs_off(n, pulley, by) =
        ["one rib off: on {pulley} the belt lies {by} mm out of line; lift it over",
            "{n} ribs off: on {pulley} the belt lies {by} mm out of line; lift it over"],
        ["eine Rippe daneben: auf {pulley} liegt der Riemen {by} mm aus der Flucht; hinüberheben",
            "{n} Rippen daneben: auf {pulley} liegt der Riemen {by} mm aus der Flucht; hinüberheben"];
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub out_of_line(pulley, by) = "out of line: on {pulley} the belt lies {by} mm off, which is no whole rib; check the pulley's seat",
        "nicht in Flucht: auf {pulley} liegt der Riemen {by} mm daneben, das ist keine ganze Rippe; den Sitz der Scheibe prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub too_few_grooves(pulley, grooves, ribs) = "{pulley} has {grooves} grooves for {ribs} ribs: take the belt that belongs there",
        "{pulley} hat {grooves} Rillen für {ribs} Rippen: den Riemen nehmen, der dahin gehört";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub slips(pulley, times) = "{pulley} slips: it is asked for {times} times what the belt can hold there; more wrap or more tension",
        "{pulley} rutscht: verlangt ist das {times}-Fache dessen, was der Riemen dort hält; mehr Umschlingung oder mehr Spannung";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub tensioner_in_tight_run(tensioner) = "{tensioner} stands in the tight run: a toothed belt is tensioned where it leaves the crank; check the sense",
        "{tensioner} steht im Zugtrum: ein Zahnriemen wird dort gespannt, wo er die Kurbelwelle verlässt; Drehrichtung prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub marks_do_not_fit(from, to, teeth) = "between the marks of {from} and {to} lie {teeth} teeth, no whole number: a mark is off",
        "zwischen den Markierungen von {from} und {to} liegen {teeth} Zähne, keine ganze Zahl: eine Markierung steht falsch";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub no_whole_teeth(teeth) = "this length is {teeth} teeth, no whole number: check length and pitch",
        "diese Länge sind {teeth} Zähne, keine ganze Zahl: Länge und Teilung prüfen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub ribs_to_wants_back(pulley) = "{pulley} has the belt's ribs to it, it wants the back",
        "an {pulley} liegen die Rippen, dahin gehört der Rücken";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub back_to_wants_ribs(pulley) = "{pulley} has the belt's back to it, it wants the ribs",
        "an {pulley} liegt der Rücken, dahin gehören die Rippen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrong_side(each) = "wrong side: {each}", "falsche Seite: {each}";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub ribs_on_smooth(pulley) = "wrong side: ribs run on {pulley}, which is smooth; turn the belt over there",
        "falsche Seite: auf {pulley} laufen Rippen, dort sitzt aber eine glatte Scheibe; den Riemen dort wenden";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub back_on_ribbed(pulley) = "wrong side: the back runs on {pulley}, which is ribbed; turn the belt over there",
        "falsche Seite: auf {pulley} läuft der Rücken, dort sitzt aber eine gerillte Scheibe; den Riemen dort wenden";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub belongs_between(pulley, after, before) = "{pulley} belongs between {after} and {before}",
        "{pulley} gehört zwischen {after} und {before}";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub wrong_pulley(each) = "loops round the wrong pulley: {each}", "läuft um die falsche Scheibe: {each}";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub or_another = ", or ", ", oder ";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub goes_round_no_pulley(name) = "loops round the wrong pulley: it goes round {name}, which is no pulley of this belt",
        "läuft um die falsche Scheibe: er geht um {name}, das ist keine Scheibe dieses Riemens";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub passes_by(name) = "loops round the wrong pulley: it passes {name} by",
        "läuft um die falsche Scheibe: er geht an {name} vorbei";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub has_ribs_belongs_back(pulley) = "wrong side: it has its ribs on {pulley}, it belongs there with its back",
        "falsche Seite: auf {pulley} liegt er mit den Rippen, dahin gehört der Rücken";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub has_back_belongs_ribs(pulley) = "wrong side: it has its back on {pulley}, it belongs there with its ribs",
        "falsche Seite: auf {pulley} liegt er mit dem Rücken, dahin gehören die Rippen";
    /// What is wrong with how a belt lies; the part before a colon says what, the rest how to mend it.
    pub goes_but_belongs(found, belongs) = "loops round the wrong pulley: it goes {found}, it belongs {belongs}",
        "läuft um die falsche Scheibe: er geht {found}, gehört aber {belongs}";

    /// What is wrong in a written layout, and how to mend it.
    pub the_layout = "the layout", "die Anordnung";
    /// What is wrong in a written layout, and how to mend it.
    pub no_pulley_listed = "no pulley is listed", "keine Scheibe ist aufgeführt";
    /// What is wrong in a written layout, and how to mend it.
    pub mend_write_pulleys = "write [[pulley]] for each, in the sequence in which the belt meets them",
        "für jede Scheibe [[pulley]] schreiben, in der Reihenfolge, in der der Riemen über sie läuft";
    /// What is wrong in a written layout, and how to mend it.
    pub lies_names_no_pulley = "a [[lies]] names no pulley", "ein [[lies]] nennt keine Scheibe";
    /// What is wrong in a written layout, and how to mend it.
    pub mend_add_pulley = "add pulley = \"...\"", "pulley = \"...\" dazuschreiben";
    /// What is wrong in a written layout, and how to mend it.
    pub has_no_name(what) = "{what} has no name", "{what} hat keinen Namen";
    /// What is wrong in a written layout, and how to mend it.
    pub mend_add_name = "add name = \"...\"", "name = \"...\" dazuschreiben";
    /// What is wrong in a written layout, and how to mend it.
    pub tensioner_names_no_pulley = "the tensioner names no pulley", "der Spanner nennt keine Scheibe";
    /// What is wrong in a written layout, and how to mend it.
    pub mend_add_moving_pulley = "add pulley = \"...\", the one that moves",
        "pulley = \"...\" dazuschreiben, die Scheibe, die sich bewegt";

    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub ratio_it_holds = "ratio of tensions that it holds", "Verhältnis der Spannungen, das er hält";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub grip_groove_formula = "exp(mu·theta / sin(groove/2))", "exp(mu·theta / sin(Rille/2))";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub groove = "groove", "Rille";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub grip_title = "Grip of a belt on a pulley", "Halt eines Riemens auf einer Scheibe";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub centrifugal_left_out = "Centrifugal force is left out; oil, water or glaze change the friction.",
        "Die Fliehkraft ist nicht mitgerechnet; Öl, Wasser oder Verglasung ändern die Reibung.";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub slip_title = "Slip", "Schlupf";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub speed_of_belt = "speed of the belt", "Geschwindigkeit des Riemens";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub tension_after(pulley) = "tension after {pulley}", "Spannung nach {pulley}";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub tension_before_formula = "T before + P/v", "T davor + P/v";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub how_many_times_its_load = "how many times its load a pulley could carry",
        "wie oft eine Scheibe ihre Last tragen könnte";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub carry_formula = "T slack·(exp(mu·theta/sin(groove/2)) - 1) / (P/v)",
        "T lose·(exp(mu·theta/sin(Rille/2)) - 1) / (P/v)";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub see_each_pulley = "see each pulley", "steht bei jeder Scheibe";
    /// How the grip of a belt was worked out: a title, a line, a formula, a value, or what limits it.
    pub steady_running = "Steady running: a cold start, a lock-up of a pump or a shaking crank asks for more.",
        "Gleichmäßiger Lauf: Kaltstart, eine festgehende Pumpe oder eine schwingende Kurbelwelle verlangt mehr.";

    /// Where a line of a working comes from, in words.
    pub geometry_of_tangents = "geometry of tangents", "Geometrie der Tangenten";
    /// Where a line of a working comes from, in words.
    pub virtual_work = "virtual work", "virtuelle Arbeit";
    /// Where a line of a working comes from, in words.
    pub torque_times_turn = "torque times turn equals tension times length",
        "Drehmoment mal Drehung ist Spannung mal Länge";
    /// Where a line of a working comes from, in words.
    pub practice_of_the_trade = "practice of the trade", "Werkstattpraxis";
    /// Where a line of a working comes from, in words.
    pub friction_by_sine = "friction divided by the sine of half the groove angle in ribs",
        "Reibung geteilt durch den Sinus des halben Rillenwinkels bei Rippen";

    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub wear_title = "Wear of a belt", "Verschleiß eines Riemens";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub depth_between_ribs = "depth between ribs", "Tiefe zwischen den Rippen";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub limit = "limit", "Grenzwert";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub stretch = "stretch", "Dehnung";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub stretch_formula = "(read - printed)/printed", "(gemessen - aufgedruckt)/aufgedruckt";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub printed = "printed", "aufgedruckt";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub read = "read", "gemessen";
    /// How the wear of a belt was worked out: a title, a line, a name in a formula, or what limits it.
    pub limits_of_makers = "Limits are those of the gauge's and the belt's maker.",
        "Grenzwerte sind die der Hersteller von Lehre und Riemen.";

    /// Why a belt is worn.
    pub worn_to_limit = "the ribs are worn down to the gauge's limit",
        "die Rippen sind bis zum Grenzwert der Lehre abgenutzt";
    /// Why a belt is worn.
    pub pin_lies_level = "the gauge's pin lies level with the ribs or below",
        "der Stift der Lehre liegt bündig mit den Rippen oder tiefer";
    /// Why a belt is worn.
    pub cracks = "cracks, chunks out, fraying, glaze or oil", "Risse, Ausbrüche, Fransen, Verglasung oder Öl";
    /// Why a belt is worn.
    pub stretched_to_limit = "it is stretched to its limit", "er ist bis zum Grenzwert gedehnt";

    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub path_title = "Belt path", "Riemenverlauf";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub wrap_on(pulley) = "wrap on {pulley}", "Umschlingung auf {pulley}";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub turn_from_run_to_run = "turn from run to run", "Drehung von Trum zu Trum";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub run_from_to(from, to) = "run from {from} to {to}", "Trum von {from} nach {to}";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub length = "length", "Länge";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub length_formula = "sum of runs + sum of r·w", "Summe der Trume + Summe der r·w";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub length_of_pitch_line = "length of the pitch line", "Länge der Wirklinie";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub all_in_one_plane = "All pulleys in one plane, no sag, no stretch under load. Half a millimetre in a pulley's place moves the length by up to a millimetre.",
        "Alle Scheiben in einer Ebene, kein Durchhang, keine Dehnung unter Last. Ein halber Millimeter am Ort einer Scheibe ändert die Länge um bis zu einen Millimeter.";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub line_of_the_belt = "the line of the belt", "Linie des Riemens";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub on_diameters_given = "runs on the diameters given", "läuft auf den angegebenen Durchmessern";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub effective_length = "effective length", "Bezugslänge";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub on_effective_diameters = "runs on the effective diameters", "läuft auf den Bezugsdurchmessern";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub line_differential = "line differential, for speeds", "Abstand der Wirklinie, für Drehzahlen";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub back_to_effective_line = "from the back to the effective line", "vom Rücken zur Bezugslinie";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub unless_measured = "14 mm / (2·pi), unless measured", "14 mm / (2·pi), wenn nicht gemessen";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub speeds_on_back = "Speeds of pulleys on the back are good to about one in a hundred.",
        "Drehzahlen von Scheiben am Rücken sind auf etwa 1 % genau.";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub pitch_circle = "pitch circle of a toothed pulley", "Teilkreis einer Zahnscheibe";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub teeth_formula = "teeth·p/pi", "Zähne·p/pi";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub lengths_tensioner_takes = "lengths that the tensioner can take", "Längen, die der Spanner aufnimmt";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub window = "window", "Fenster";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub window_formula = "L at its stops, or where L turns between them",
        "L an den Anschlägen, oder wo L dazwischen umkehrt";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub tensioner_with_belt = "tensioner with this belt", "Spanner mit diesem Riemen";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub place = "place", "Ort";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub where_l_equals = "where L equals the belt's length", "wo L gleich der Riemenlänge ist";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub tension_by_tensioner = "tension by the tensioner", "Spannung durch den Spanner";
    /// How a belt's path was worked out: a title, a line, a formula, a value, or what limits it.
    pub force_at_pulley = "force at the pulley", "Kraft an der Scheibe";
}
