//! What is asked and answered of belts.

use phrases::phrases;

phrases! {
    /// The name of the first pulley of a belt, before anybody writes another.
    pub crank = "crank", "Kurbelwelle";
    /// Name of a room: the room of belts.
    pub belt = "Belt", "Riemen";
    /// What is in a room: the room of belts.
    pub routing_length_slip_wear = "routing, length, slip, wear",
        "Verlauf, Länge, Schlupf, Verschleiß";
    /// Title of a note: the room of belts.
    pub before_the_old_one_comes_off = "Before the old one comes off",
        "Bevor der alte abkommt";
    /// Note: the room of belts.
    pub tap_how_it_lies_with_the = "Tap how it lies, with the side that lies on each pulley. What runs the wrong side, the wrong way round or one rib off is found here before anybody starts the engine.",
        "Antippen, wie er liegt, und welche Seite auf jeder Scheibe liegt. Was auf der falschen Seite, falsch herum oder eine Rippe versetzt läuft, fällt hier auf, bevor jemand den Motor startet.";
    /// Name of a calculator: pulleys in line.
    pub pulleys_in_line = "Pulleys in line", "Riemenscheiben in Flucht";
    /// What a calculator is for: pulleys in line.
    pub two_readings_of_a_straight_edge = "two readings of a straight edge",
        "zwei Messungen mit dem Lineal";
    /// Step of how it is done: pulleys in line.
    pub lay_a_straight_edge_across_the = "Lay a straight edge across the face of the pulley that the others are lined up with.",
        "Ein Lineal quer über die Stirn der Scheibe legen, nach der die anderen ausgerichtet werden.";
    /// Step of how it is done: pulleys in line.
    pub measure_from_the_edge_to_the = "Measure from the edge to the near rim of the other pulley, then to its far rim.",
        "Vom Lineal zum nahen Rand der anderen Scheibe messen, dann zum fernen.";
    /// Step of how it is done: pulleys in line.
    pub turn_the_edge_by_a_quarter = "Turn the edge by a quarter and read again: one direction does not show the other.",
        "Das Lineal um ein Viertel drehen und noch einmal messen: eine Richtung zeigt die andere nicht.";
    /// Label of a field: pulleys in line.
    pub to_the_near_rim = "To the near rim", "Bis zum nahen Rand";
    /// Label of a field: pulleys in line.
    pub to_the_far_rim = "To the far rim", "Bis zum fernen Rand";
    /// Label of a field: pulleys in line.
    pub the_two_readings_lie_apart_by = "The two readings lie apart by",
        "Abstand der beiden Messstellen";
    /// Label of a field: pulleys in line.
    pub the_free_run_between_the_pulleys = "The free run between the pulleys",
        "Freies Trum zwischen den Scheiben";
    /// Hint at a field: pulleys in line.
    pub for_how_far_it_stands_off = "for how far it stands off; may stay empty",
        "dafür, wie weit sie versetzt steht; kann leer bleiben";
    /// Label of a field: pulleys in line.
    pub the_makers_limit = "The maker's limit", "Grenzwert des Herstellers";
    /// Hint at a field: pulleys in line.
    pub none_is_assumed = "none is assumed", "ohne Angabe wird nichts angenommen";
    /// Part of an answer: pulleys in line.
    pub within_the_makers_limit = "within the maker's limit", "innerhalb des Grenzwerts";
    /// Part of an answer: pulleys in line.
    pub beyond_the_makers_limit = "beyond the maker's limit", "über dem Grenzwert";
    /// Part of an answer: pulleys in line.
    pub no_limit_was_told_so_nothing = "no limit was told, so nothing is said of whether it may stay",
        "kein Grenzwert angegeben, also keine Aussage, ob es so bleiben darf";
    /// Row of an answer: pulleys in line.
    pub askew_by_standing_off = "askew by standing off", "schräg durch Versatz";
    /// Name of a calculator: the code of a belt.
    pub a_belts_code = "A belt's code", "Code auf dem Riemen";
    /// What a calculator is for: the code of a belt.
    pub length_ribs_pitch_as_printed_on = "length, ribs, pitch, as printed on it",
        "Länge, Rippen, Teilung, wie aufgedruckt";
    /// Label of a field: the code of a belt.
    pub printed_on_the_belt = "Printed on the belt", "Auf dem Riemen steht";
    /// Hint at a field: the code of a belt.
    pub such_as_6pk1285_k060505_10x1000_124za19 = "such as 6PK1285, K060505, 10x1000, 124ZA19",
        "etwa 6PK1285, K060505, 10x1000, 124ZA19";
    /// What is wrong with a field, and how to mend it: the code of a belt.
    pub write_it_as_it_is_printed = "write it as it is printed",
        "so eintragen, wie es aufgedruckt ist";
    /// Part of an answer: the code of a belt.
    pub millimetres = "millimetres", "Millimetern";
    /// Part of an answer: the code of a belt.
    pub tenths_of_an_inch = "tenths of an inch", "Zehntelzoll";
    /// Part of an answer: the code of a belt.
    pub on_both_sides = "on both sides", "auf beiden Seiten";
    /// Row of an answer: the code of a belt.
    pub its_length_is_written_in = "its length is written in", "die Länge steht in";
    /// Row of an answer: the code of a belt.
    pub ribs = "ribs", "Rippen";
    /// Row of an answer: the code of a belt.
    pub teeth = "teeth", "Zähne";
    /// Row of an answer: the code of a belt.
    pub from_rib_to_rib_or_tooth = "from rib to rib, or tooth to tooth",
        "von Rippe zu Rippe, oder Zahn zu Zahn";
    /// Row of an answer: the code of a belt.
    pub width = "width", "Breite";
    /// Row of an answer: the code of a belt.
    pub ribs_or_teeth = "ribs or teeth", "Rippen oder Zähne";
    /// Part of an answer: the code of a belt.
    pub length_of_ribbed(profile) = "effective length of a ribbed belt, profile {profile}",
        "Bezugslänge eines Keilrippenriemens, Profil {profile}";
    /// Part of an answer: the code of a belt.
    pub length_of_vee(profile) = "outside length of a V-belt, profile {profile}",
        "Außenlänge eines Keilriemens, Profil {profile}";
    /// Part of an answer: the code of a belt.
    pub length_of_toothed(profile) = "pitch length of a toothed belt, profile {profile}",
        "Wirklänge eines Zahnriemens, Profil {profile}";
    /// One of the choices of a field: wear of a belt.
    pub not_looked = "not looked", "nicht nachgesehen";
    /// One of the choices of a field: wear of a belt.
    pub no = "no", "nein";
    /// One of the choices of a field: wear of a belt.
    pub yes = "yes", "ja";
    /// Name of a calculator: wear of a belt.
    pub wear = "Wear", "Verschleiß";
    /// What a calculator is for: wear of a belt.
    pub by_a_gauge_the_length_and = "by a gauge, the length, and what is seen",
        "mit Lehre, nach der Länge und nach dem, was man sieht";
    /// Label of a field: wear of a belt.
    pub the_gauges_pin_lies_level_with = "The gauge's pin lies level with the ribs, or below them",
        "Der Stift der Lehre liegt bündig mit den Rippen oder tiefer";
    /// Label of a field: wear of a belt.
    pub or_the_gauge_sinks_between_two = "Or the gauge sinks between two ribs by",
        "Oder die Lehre sinkt zwischen zwei Rippen um";
    /// Label of a field: wear of a belt.
    pub worn_by_its_maker_at = "Its maker calls the belt worn at",
        "Laut ihrem Hersteller verschlissen ab";
    /// Label of a field: wear of a belt.
    pub length_printed = "Length printed", "Aufgedruckte Länge";
    /// Label of a field: wear of a belt.
    pub length_read = "Length read", "Gemessene Länge";
    /// Hint at a field: wear of a belt.
    pub on_the_same_line_as_the = "on the same line as the printed one",
        "auf derselben Linie wie die aufgedruckte";
    /// Label of a field: wear of a belt.
    pub worn_at_a_stretch_of = "Its maker calls the belt worn at a stretch of",
        "Laut seinem Hersteller verschlissen ab einer Dehnung von";
    /// Label of a field: wear of a belt.
    pub cracks_across_the_ribs_chunks_out = "Cracks across the ribs, chunks out, fraying, glaze or oil",
        "Risse quer über die Rippen, Ausbrüche, Fransen, Verglasung oder Öl";
    /// Part of an answer: wear of a belt.
    pub nothing_that_was_read_speaks_against = "nothing that was read speaks against it",
        "nichts Gemessenes spricht dagegen";
    /// Part of an answer: wear of a belt.
    pub it_is_due_for_a_new = "it is due for a new one", "ein neuer ist fällig";
    /// Part of an answer: wear of a belt.
    pub nothing_was_read_that_tells = "nothing was read that tells",
        "nichts gemessen, das etwas aussagt";
    /// Row of an answer: wear of a belt.
    pub stretched_by = "stretched by", "gedehnt um";
    /// What is wrong with a field, and how to mend it: wear of a belt.
    pub needed_with_the_one_above = "it is needed with the one above",
        "wird mit dem Feld darüber gebraucht";
    /// What is wrong with a field, and how to mend it: wear of a belt.
    pub needed_with_the_one_below = "it is needed with the one below",
        "wird mit dem Feld darunter gebraucht";
    /// Part of an answer: wear of a belt.
    pub good = "good", "gut";
    /// Part of an answer: wear of a belt.
    pub worn = "worn", "verschlis\u{ad}sen";
    /// Part of an answer: wear of a belt.
    pub cant_tell = "can't tell", "nicht zu sagen";
    /// One of the choices of a field: how a belt lies.
    pub back = "back", "Rücken";
    /// One of the choices of a field: how a belt lies.
    pub clockwise = "clock\u{ad}wise", "im Uhrzeiger\u{ad}sinn";
    /// One of the choices of a field: how a belt lies.
    pub the_other_way = "the other way", "andersherum";
    /// Label of a field: how a belt lies.
    pub name = "Name", "Name";
    /// Hint at a field: how a belt lies.
    pub crank_alternator_coolant_pump_tensioner = "crank, alternator, coolant pump, tensioner …",
        "Kurbelwelle, Generator, Wasserpumpe, Spanner …";
    /// Label of a field: how a belt lies.
    pub on_it_lie_the_belts = "On it lie the belt's", "Auf ihr liegt vom Riemen";
    /// Label of a field: how a belt lies.
    pub right_of_the_crank = "Right of the crank", "Rechts der Kurbelwelle";
    /// Hint at a field: how a belt lies.
    pub roughly_left_of_it_minus = "roughly; left of it: minus",
        "ungefähr; links davon: minus";
    /// Label of a field: how a belt lies.
    pub above_the_crank = "Above the crank", "Über der Kurbelwelle";
    /// Hint at a field: how a belt lies.
    pub roughly_below_it_minus = "roughly; below it: minus", "ungefähr; darunter: minus";
    /// Name of a calculator: how a belt lies.
    pub how_a_belt_lies = "How a belt lies", "Wie ein Riemen liegt";
    /// What a calculator is for: how a belt lies.
    pub tapped_before_it_comes_off = "tapped before it comes off",
        "angetippt, bevor er abkommt";
    /// Title over fields: how a belt lies.
    pub tap_where_the_belt_goes_next = "Tap where the belt goes next, from the crank round",
        "Antippen, wohin der Riemen als Nächstes läuft, von der Kurbelwelle herum";
    /// Title over fields: how a belt lies.
    pub pulley_as_the_belt_meets_it = "Pulley, as the belt meets it",
        "Scheibe, in der Reihenfolge des Riemens";
    /// Label of a field: how a belt lies.
    pub seen_from_the_front_the_crank = "Seen from the front, the crank turns",
        "Von vorn gesehen dreht die Kurbelwelle";
    /// Label of a field: how a belt lies.
    pub written_on_the_belt = "Written on the belt", "Auf dem Riemen steht";
    /// Hint at a field: how a belt lies.
    pub its_code_such_as_6pk1285 = "its code, such as 6PK1285", "sein Code, etwa 6PK1285";
    /// What is wrong with a field, and how to mend it: how a belt lies.
    pub tap_where_the_belt_goes_after = "tap where the belt goes after the crank",
        "antippen, wohin der Riemen nach der Kurbelwelle läuft";
    /// Part of an answer: how a belt lies.
    pub no_belt_runs_round_these_places = "no belt runs round these places",
        "um diese Stellen läuft kein Riemen";
    /// Part of an answer: how a belt lies.
    pub places_are_as_tapped_sizes_are = "Places are as tapped, sizes are not measured: for length and tensioner measure them.",
        "Die Stellen sind angetippt, die Größen nicht gemessen: für Länge und Spanner nachmessen.";
    /// Words in a drawing: how a belt lies.
    pub how_the_belt_lies_from_the = "How the belt lies, from the front",
        "Wie der Riemen liegt, von vorn";
    /// What is wrong with a field, and how to mend it: how a belt lies.
    pub is_there_twice(name) = "`{name}` is there twice; call one by another name",
        "„{name}“ gibt es zweimal; eine davon anders nennen";
    /// The name of a pulley that nobody named: how a belt lies.
    pub pulley_of_row(row) = "pulley {row}", "Scheibe {row}";
    /// A pulley on which the belt's back lies: how a belt lies.
    pub on_the_back(pulley) = "{pulley} (back)", "{pulley} (Rücken)";
    /// Part of an answer: how a belt lies.
    pub pulleys(n) = ["{n} pulley", "{n} pulleys"], ["{n} Scheibe", "{n} Scheiben"];
    /// Part of an answer: how a belt lies.
    pub could_not_run(why) = "As tapped it could not run: {why}. Look again at the places, the sequence and which side lies where.",
        "So wie angetippt könnte er nicht laufen: {why}. Stellen, Reihenfolge und Seiten noch einmal ansehen.";
    /// Part of an answer: a pulley.
    pub on_the_belts_ribs = "on the belt's ribs", "auf den Rippen des Riemens";
    /// Part of an answer: a pulley.
    pub on_the_belts_back = "on the belt's back", "auf dem Rücken des Riemens";
    /// One of the choices of a field: how a belt runs.
    pub ribbed_pk = "ribbed, PK", "Keilrippen, PK";
    /// One of the choices of a field: how a belt runs.
    pub flat_or_v_line_as_measured = "flat or V: line as measured",
        "flach oder Keil: Linie wie gemessen";
    /// One of the choices of a field: how a belt runs.
    pub toothed = "toothed", "Zahnriemen";
    /// One of the choices of a field: how a belt runs.
    pub not_told = "not told", "nicht angegeben";
    /// One of the choices of a field: how a belt runs.
    pub spring_arm = "spring arm", "Federarm";
    /// One of the choices of a field: how a belt runs.
    pub hydraulic = "hydraulic", "hydraulisch";
    /// One of the choices of a field: how a belt runs.
    pub slot = "slot", "Langloch";
    /// One of the choices of a field: how a belt runs.
    pub jack_screw = "jack screw", "Spannschraube";
    /// One of the choices of a field: how a belt runs.
    pub none_a_stretch_belt = "none: a stretch belt", "keiner: Elastikriemen";
    /// Hint at a field: how a belt runs.
    pub crank_alternator_pump = "crank, alternator, pump …",
        "Kurbelwelle, Generator, Pumpe …";
    /// Label of a field: how a belt runs.
    pub to_the_right_of_the_crank = "To the right of the crank", "Rechts von der Kurbelwelle";
    /// Hint at a field: how a belt runs.
    pub left_of_it_minus = "left of it: minus", "links davon: minus";
    /// Hint at a field: how a belt runs.
    pub below_it_minus = "below it: minus", "darunter: minus";
    /// Label of a field: how a belt runs.
    pub diameter = "Diameter", "Durchmesser";
    /// Hint at a field: how a belt runs.
    pub where_the_belt_runs = "where the belt runs", "wo der Riemen läuft";
    /// Label of a field: how a belt runs.
    pub it_takes_kw = "It takes, kW", "Sie nimmt auf, kW";
    /// Hint at a field: how a belt runs.
    pub about_0_for_an_idler_empty_if = "0 for an idler; empty if it is not known",
        "0 bei einer Umlenkrolle; leer, wenn nicht bekannt";
    /// Name of a calculator: how a belt runs.
    pub how_a_belt_runs = "How a belt runs", "Wie ein Riemen läuft";
    /// What a calculator is for: how a belt runs.
    pub length_wraps_tensioner_slip_what_is = "length, wraps, tensioner, slip, what is wrong",
        "Länge, Umschlingung, Spanner, Schlupf, was nicht stimmt";
    /// Title over fields: how a belt runs.
    pub the_belt = "The belt", "Der Riemen";
    /// Hint at a field: how a belt runs.
    pub its_code_or_its_length_such = "its code or its length, such as 6PK1285 or 1285 mm; empty for what fits",
        "sein Code oder seine Länge, etwa 6PK1285 oder 1285 mm; leer für das, was passt";
    /// Label of a field: how a belt runs.
    pub belt_is = "It is", "Es ist";
    /// Title over fields: how a belt runs.
    pub what_tensions_it = "What tensions it", "Was ihn spannt";
    /// Label of a field: how a belt runs.
    pub the_pulley_that_moves = "The pulley that moves", "Die Scheibe, die sich bewegt";
    /// Hint at a field: how a belt runs.
    pub its_name_above = "its name above", "ihr Name von oben";
    /// Title over fields: how a belt runs.
    pub how_that_pulley_moves = "How that pulley moves", "Wie sich diese Scheibe bewegt";
    /// Label of a field: how a belt runs.
    pub the_arms_pivot_right_of_the = "The arm's pivot, right of the crank",
        "Drehpunkt des Arms, rechts der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub the_arms_pivot_above_the_crank = "The arm's pivot, above the crank",
        "Drehpunkt des Arms, über der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub arm_at_its_one_stop = "Arm at its one stop", "Arm am einen Anschlag";
    /// Hint at a field: how a belt runs.
    pub from_the_right_counter_clockwise = "from the right, counter-clockwise",
        "von rechts, gegen den Uhrzeigersinn";
    /// Label of a field: how a belt runs.
    pub arm_at_its_other_stop = "Arm at its other stop", "Arm am anderen Anschlag";
    /// Label of a field: how a belt runs.
    pub or_it_slides_from_right_of = "Or it slides from, right of the crank",
        "Oder sie gleitet von, rechts der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub from_above_the_crank = "From, above the crank", "Von, über der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub to_right_of_the_crank = "To, right of the crank", "Bis, rechts der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub to_above_the_crank = "To, above the crank", "Bis, über der Kurbelwelle";
    /// Label of a field: how a belt runs.
    pub the_springs_torque_on_the_arm = "The spring's torque on the arm",
        "Drehmoment der Feder am Arm";
    /// Label of a field: how a belt runs.
    pub or_the_force_at_the_pulley = "Or the force at the pulley",
        "Oder Kraft an der Scheibe";
    /// Title over fields: how a belt runs.
    pub whether_it_slips = "Whether it slips", "Ob er rutscht";
    /// Label of a field: how a belt runs.
    pub friction_of_the_ribs = "Friction of the ribs", "Reibung der Rippen";
    /// Label of a field: how a belt runs.
    pub friction_of_the_back = "Friction of the back", "Reibung des Rückens";
    /// Label of a field: how a belt runs.
    pub tension_at_rest = "Tension at rest", "Spannung im Stand";
    /// Hint at a field: how a belt runs.
    pub where_it_was_measured = "where it was measured", "wenn gemessen";
    /// Label of a field: how a belt runs.
    pub speed_of_the_crank = "Speed of the crank", "Drehzahl der Kurbelwelle";
    /// Hint at a field: how a belt runs.
    pub at_which_the_powers_hold = "at which the powers hold",
        "bei der die Leistungen gelten";
    /// Label of a field: how a belt runs.
    pub pitch_of_the_teeth_mm = "Pitch of the teeth, mm", "Zahnteilung, mm";
    /// Hint at a field: how a belt runs.
    pub toothed_belts_alone = "toothed belts alone", "nur Zahnriemen";
    /// Label of a field: how a belt runs.
    pub or_a_layout_as_text = "Or a layout as text", "Oder eine Anordnung als Text";
    /// Hint at a field: how a belt runs.
    pub toml_as_buttonup_belt_reads_it = "TOML as `buttonup belt` reads it; it goes before the fields above",
        "TOML, wie „buttonup belt“ es liest; gilt vor den Feldern oben";
    /// Label of a field: how a belt runs.
    pub tensioner = "Tensioner", "Spanner";
    /// What is wrong with a field, and how to mend it: how a belt runs.
    pub a_toothed_belt_is_reckoned_by = "a toothed belt is reckoned by its pitch",
        "ein Zahnriemen wird nach seiner Teilung gerechnet";
    /// What is wrong with a field, and how to mend it: how a belt runs.
    pub say_what_it_is_each_pulley = "say what it is, each pulley another name",
        "sagen, was es ist, jede Scheibe mit eigenem Namen";
    /// What is wrong with a field, and how to mend it: how a belt runs.
    pub write_the_name_of_the_pulley = "write the name of the pulley that moves",
        "den Namen der Scheibe eintragen, die sich bewegt";
    /// Part of an answer: how a belt runs.
    pub do_not_start_the_engine = "do not start the engine", "Motor nicht starten";
    /// Part of an answer: how a belt runs.
    pub this_has_to_be_put_right = "this has to be put right first",
        "das muss erst in Ordnung gebracht werden";
    /// Row of an answer: how a belt runs.
    pub the_tensioner_takes_belts_of = "the tensioner takes belts of",
        "der Spanner nimmt Riemen von";
    /// Row of an answer: how a belt runs.
    pub its_length_as_listed = "its length as listed", "Länge nach Liste";
    /// Row of an answer: how a belt runs.
    pub it_is_stretched_by = "it is stretched by", "gedehnt um";
    /// Words in a drawing: how a belt runs.
    pub the_belt_from_the_front_of = "The belt from the front of the engine",
        "Der Riemen, von der Stirnseite des Motors gesehen";
    /// What is wrong with a field, and how to mend it: how a belt runs.
    pub is_no_plain_number(text) = "`{text}` is no number; write it without a unit",
        "„{text}“ ist keine Zahl; ohne Einheit eintragen";
    /// Part of an answer: how a belt runs.
    pub length_of_this_belt(length) = "{length}, the length of this belt",
        "{length}, die Länge dieses Riemens";
    /// Part of an answer: how a belt runs.
    pub from_to(least, most) = "{least} to {most}", "{least} bis {most}";
    /// Part of an answer: how a belt runs.
    pub wrap_and_run(wrap, run) = "wrap {wrap}°, run after it {run}",
        "Umschlingung {wrap}°, Trum danach {run}";
    /// Part of an answer: how a belt runs.
    pub holds_its_load(margin) = "holds {margin} times its load",
        "hält das {margin}-Fache seiner Last";
    /// Row of an answer: how a belt runs.
    pub from_mark_to_mark(from, to) = "from the mark of {from} to that of {to}",
        "von der Markierung an {from} bis zu der an {to}";
    /// Part of an answer: how a belt runs.
    pub so_many_teeth(teeth) = "{teeth} teeth", "{teeth} Zähne";
    /// Part of an answer: how a belt runs.
    pub arm_stands_at(angle) = "the arm stands at {angle}°", "der Arm steht bei {angle}°";
    /// Part of an answer: how a belt runs.
    pub tensioner_stands_along(mm) = "the tensioner stands {mm} mm along",
        "der Spanner steht {mm} mm weit";
    /// Part of an answer: how a belt runs.
    pub belt_at(tension) = "the belt at {tension} N", "der Riemen bei {tension} N";
}
