//! What is asked and answered of threads.

use phrases::phrases;

phrases! {
    /// Caution: the room of threads.
    pub makers_torque_comes_first = "The vehicle maker's torque, sequence and instructions come before anything that is worked out here; what a joint could carry is not a specification.",
        "Drehmoment, Reihenfolge und Anleitung des Fahrzeugherstellers gehen vor allem, was hier gerechnet wird; was eine Verbindung tragen könnte, ist keine Vorgabe.";
    /// Name of a room: the room of threads.
    pub threads = "Threads", "Gewinde";
    /// What is in a room: the room of threads.
    pub torque_drills_repair = "torque, drills, repair", "Drehmoment, Bohrer, Reparatur";
    /// One of the choices of a field: a damaged hole.
    pub cover_housing_bracket = "cover, housing, bracket", "Deckel, Gehäuse, Halter";
    /// One of the choices of a field: a damaged hole.
    pub brake = "brake", "Bremse";
    /// One of the choices of a field: a damaged hole.
    pub steering = "steering", "Lenkung";
    /// One of the choices of a field: a damaged hole.
    pub suspension = "suspen\u{ad}sion", "Fahrwerk";
    /// One of the choices of a field: a damaged hole.
    pub wheel_hub = "wheel, hub", "Rad, Nabe";
    /// One of the choices of a field: a damaged hole.
    pub drive_shaft = "drive shaft", "Antriebs\u{ad}welle";
    /// One of the choices of a field: a damaged hole.
    pub seat = "seat", "Sitz";
    /// One of the choices of a field: a damaged hole.
    pub seat_belt = "seat belt", "Sicherheitsgurt";
    /// One of the choices of a field: a damaged hole.
    pub airbag = "airbag", "Airbag";
    /// One of the choices of a field: a damaged hole.
    pub fuel = "fuel", "Kraftstoff";
    /// One of the choices of a field: a damaged hole.
    pub towing = "towing", "Anhänger\u{ad}kupplung";
    /// One of the choices of a field: a damaged hole.
    pub high_voltage = "high voltage", "Hochvolt";
    /// One of the choices of a field: a damaged hole.
    pub spark_plug = "spark plug", "Zündkerze";
    /// One of the choices of a field: a damaged hole.
    pub drain_plug = "drain plug", "Ablass\u{ad}schraube";
    /// One of the choices of a field: a damaged hole.
    pub banjo = "banjo", "Hohl\u{ad}schraube";
    /// One of the choices of a field: a damaged hole.
    pub sensor = "sensor", "Sensor";
    /// One of the choices of a field: a damaged hole.
    pub exhaust = "exhaust", "Abgasanlage";
    /// One of the choices of a field: a damaged hole.
    pub pipe_thread = "pipe thread", "Rohrgewinde";
    /// One of the choices of a field: a damaged hole.
    pub aluminium_cast = "alumin\u{ad}ium, cast", "Alu\u{ad}minium, Guss";
    /// One of the choices of a field: a damaged hole.
    pub aluminium_die_cast = "alumin\u{ad}ium, die-cast", "Alu\u{ad}minium, Druckguss";
    /// One of the choices of a field: a damaged hole.
    pub grey_iron = "grey iron", "Grauguss";
    /// One of the choices of a field: a damaged hole.
    pub ductile_iron = "ductile iron", "Sphäroguss";
    /// One of the choices of a field: a damaged hole.
    pub steel = "steel", "Stahl";
    /// One of the choices of a field: a damaged hole.
    pub magnesium = "magne\u{ad}sium", "Magne\u{ad}sium";
    /// One of the choices of a field: a damaged hole.
    pub blind = "blind", "Sackloch";
    /// One of the choices of a field: a damaged hole.
    pub through = "through", "durchgehend";
    /// One of the choices of a field: a damaged hole.
    pub lost_or_torn = "lost or torn", "weg oder ausgerissen";
    /// One of the choices of a field: a damaged hole.
    pub bruised_all_there = "bruised, all there", "verletzt, noch ganz da";
    /// One of the choices of a field: a damaged hole.
    pub metal = "metal", "Metall";
    /// One of the choices of a field: a damaged hole.
    pub plastic = "plastic", "Kunststoff";
    /// One of the choices of a field: a damaged hole.
    pub plastic_metal_sleeve = "plastic, metal sleeve", "Kunststoff, Metallhülse";
    /// Label of a field: a damaged hole.
    pub what_does_the_joint_hold = "What does the joint hold?", "Was hält die Verbindung?";
    /// Label of a field: a damaged hole.
    pub thread = "Thread", "Gewinde";
    /// Hint at a field: a damaged hole.
    pub such_as_m8x1_25_or_5 = "such as M8x1.25 or 5/16-18", "etwa M8x1.25 oder 5/16-18";
    /// Label of a field: a damaged hole.
    pub class_on_the_head = "Class on the head", "Klasse auf dem Kopf";
    /// Hint at a field: a damaged hole.
    pub such_as_8_8_leave_it = "such as 8.8; leave it empty if it is not known",
        "etwa 8.8; leer lassen, wenn nicht bekannt";
    /// Label of a field: a damaged hole.
    pub length_of_the_bolt = "Length of the bolt", "Länge der Schraube";
    /// Label of a field: a damaged hole.
    pub the_makers_torque = "The maker's torque", "Drehmoment des Herstellers";
    /// Hint at a field: a damaged hole.
    pub empty_if_it_is_not_known = "empty if it is not known", "leer, wenn nicht bekannt";
    /// Label of a field: a damaged hole.
    pub how_far_it_sits_below_the = "How far it sits below the face or above it",
        "Wie weit er unter oder über der Fläche steht";
    /// Label of a field: a damaged hole.
    pub thread_that_was_engaged = "Thread that was engaged", "Einschraub\u{ad}tiefe";
    /// Hint at a field: a damaged hole.
    pub how_far_the_bolt_went_in = "how far the bolt went in",
        "wie weit die Schraube hineinging";
    /// Label of a field: a damaged hole.
    pub the_hole_is = "The hole is", "Das Loch ist";
    /// Label of a field: a damaged hole.
    pub how_deep_it_is = "How deep it is", "Wie tief es ist";
    /// Hint at a field: a damaged hole.
    pub a_blind_hole_to_its_bottom = "a blind hole to its bottom, a through one to the other side",
        "ein Sackloch bis zum Grund, ein durchgehendes bis zur anderen Seite";
    /// Label of a field: a damaged hole.
    pub metal_around_it_across = "Metal around it, across", "Material ringsum, Durchmesser";
    /// Hint at a field: a damaged hole.
    pub twice_the_least_way_from_its = "twice the least way from its middle to an edge; empty if it was not measured",
        "doppelter kürzester Weg von der Mitte zum Rand; leer, wenn nicht gemessen";
    /// Label of a field: a damaged hole.
    pub the_metal = "The metal", "Das Metall";
    /// Label of a field: a damaged hole.
    pub room_to_weld_on_it = "Room to weld on it", "Platz zum Anschweißen";
    /// Hint at a field: a damaged hole.
    pub and_nothing_near_that_heat_hurts = "and nothing near that heat hurts",
        "und nichts in der Nähe, dem Hitze schadet";
    /// Label of a field: a damaged hole.
    pub no_room_to_drill = "No room to drill", "Kein Platz zum Bohren";
    /// Hint at a field: a damaged hole.
    pub a_drill_cannot_be_held_in = "a drill cannot be held in line with it",
        "ein Bohrer lässt sich nicht in der Flucht halten";
    /// Title over fields: a damaged hole.
    pub more_if_it_is_known = "More, if it is known", "Mehr, wenn bekannt";
    /// Label of a field: a damaged hole.
    pub its_thread_is = "Its thread is", "Das Gewinde ist";
    /// Label of a field: a damaged hole.
    pub torn_how_deep_from_the_face = "Torn how deep from the face",
        "Ausgerissen wie tief von der Fläche";
    /// Hint at a field: a damaged hole.
    pub all_that_was_engaged_if_nobody = "all that was engaged, if nobody looked",
        "die ganze Einschraubtiefe, wenn niemand nachgesehen hat";
    /// Label of a field: a damaged hole.
    pub the_part_it_holds_is = "The part it holds is", "Das gehaltene Teil ist";
    /// Label of a field: a damaged hole.
    pub hole_in_that_part = "Hole in that part", "Loch in diesem Teil";
    /// Label of a field: a damaged hole.
    pub flat_under_the_head_across = "Flat under the head, across",
        "Auflage unter dem Kopf, Durchmesser";
    /// Label of a field: a damaged hole.
    pub state_of_the_threads = "State of the threads", "Zustand der Gewinde";
    /// Hint at a field: a damaged hole.
    pub oiled_dry_zinc_dry_oiled_is = "oiled, dry, zinc dry …; oiled is assumed and said",
        "oiled (geölt), dry (trocken), zinc dry (verzinkt, trocken) …; ohne Angabe wird mit geölt gerechnet";
    /// Label of a field: a damaged hole.
    pub how_far_out_of_square_the = "How far out of square the drill is held",
        "Wie schief der Bohrer gehalten wird";
    /// Hint at a field: a damaged hole.
    pub about_0_5_what_a_guide_bush = "0.5, what a guide bush allows, is assumed",
        "ohne Angabe 0,5, was eine Führungsbuchse zulässt";
    /// One of the choices of a field: a tightening sequence.
    pub in_a_circle = "in a circle", "im Kreis";
    /// One of the choices of a field: a tightening sequence.
    pub in_two_rows = "in two rows", "in zwei Reihen";
    /// One of the choices of a field: a tightening sequence.
    pub round_a_rectangle = "round a rectangle", "um ein Rechteck";
    /// Name of a calculator: a tightening sequence.
    pub tightening_sequence = "Tightening sequence", "Anzugs\u{ad}reihen\u{ad}folge";
    /// What a calculator is for: a tightening sequence.
    pub circle_two_rows_rectangle_drawn = "circle, two rows, rectangle, drawn",
        "Kreis, zwei Reihen, Rechteck, gezeichnet";
    /// Label of a field: a tightening sequence.
    pub they_stand = "They stand", "Sie stehen";
    /// Label of a field: a tightening sequence.
    pub how_many_bolts = "How many bolts", "Wie viele Schrauben";
    /// Hint at a field: a tightening sequence.
    pub for_a_circle_or_two_rows = "for a circle or two rows", "bei Kreis oder zwei Reihen";
    /// Label of a field: a tightening sequence.
    pub along_the_rectangle = "Along the rectangle", "Längs am Rechteck";
    /// Hint at a field: a tightening sequence.
    pub bolts_along_its_longer_side = "bolts along its longer side",
        "Schrauben an der längeren Seite";
    /// Label of a field: a tightening sequence.
    pub across_it = "Across it", "Quer";
    /// Hint at a field: a tightening sequence.
    pub bolts_along_its_shorter_side = "bolts along its shorter side",
        "Schrauben an der kürzeren Seite";
    /// What is wrong with a field, and how to mend it: a tightening sequence.
    pub two_rows_alike_have_an_even = "two rows alike have an even number; write one",
        "zwei gleiche Reihen haben eine gerade Zahl; eine solche eintragen";
    /// Words in a drawing: a tightening sequence.
    pub the_sequence_of_tightening = "The sequence of tightening", "Die Anzugs\u{ad}reihen\u{ad}folge";
    /// Part of an answer: a tightening sequence.
    pub the_number_in_each_is_its = "the number in each is its turn; to loosen, turn it round",
        "die Zahl in jeder sagt, wann sie dran ist; zum Lösen umgekehrt";
    /// Part of an answer: a tightening sequence.
    pub shop_practice_a_makers_own_sequence = "Shop practice: a maker's own sequence overrides it.",
        "Werkstattpraxis: die Reihenfolge des Herstellers geht vor.";
    /// Line of a working: a tightening sequence.
    pub the_sequence = "The sequence", "Die Reihenfolge";
    /// Line of a working: a tightening sequence.
    pub positions_in_turn = "positions in turn", "Positionen der Reihe nach";
    /// Line of a working: a tightening sequence.
    pub on_a_circle_across_and_across = "On a circle across and across; in rows and rectangles from the middle outwards.",
        "Im Kreis über Kreuz; in Reihen und Rechtecken von der Mitte nach außen.";
    /// Part of an answer: a tightening sequence.
    pub bolts(n) = ["{n} bolt", "{n} bolts"], ["{n} Schraube", "{n} Schrauben"];
    /// One of the choices of a field: a pulley that its belt holds.
    pub ribs = "ribs", "Rippen";
    /// One of the choices of a field: a pulley that its belt holds.
    pub flat_back = "flat back", "flachem Rücken";
    /// Name of a calculator: a pulley that its belt holds.
    pub pulley_bolts = "Pulley bolts", "Riemenscheibenschrauben";
    /// What a calculator is for: a pulley that its belt holds.
    pub whether_the_belt_holds_while_they = "whether the belt holds while they are cracked",
        "ob der Riemen hält, während sie gelöst werden";
    /// Caution: a pulley that its belt holds.
    pub battery_off_key_out_nothing_may = "Battery off, key out: nothing may turn the engine while a hand is at its pulleys.",
        "Batterie ab, Schlüssel raus: nichts darf den Motor drehen, solange eine Hand an den Scheiben ist.";
    /// Label of a field: a pulley that its belt holds.
    pub torque_of_the_bolt = "Torque of the bolt", "Drehmoment der Schraube";
    /// Hint at a field: a pulley that its belt holds.
    pub to_crack_it_may_take_more = "to crack it may take more",
        "zum Lösen kann es mehr sein";
    /// Label of a field: a pulley that its belt holds.
    pub circle_of_the_bolts_across = "Circle of the bolts, across", "Lochkreis, Durchmesser";
    /// Label of a field: a pulley that its belt holds.
    pub length_of_the_wrench = "Length of the wrench", "Länge des Schlüssels";
    /// Label of a field: a pulley that its belt holds.
    pub pulley_across = "Pulley, across", "Scheibe, Durchmesser";
    /// Label of a field: a pulley that its belt holds.
    pub tension_of_the_belt_at_rest = "Tension of the belt at rest, each run",
        "Spannung des Riemens im Stand, je Trum";
    /// Hint at a field: a pulley that its belt holds.
    pub a_spring_tensioners_own_in_the = "a spring tensioner's own, in the way it gives",
        "die eines Federspanners, in der Richtung, in der er nachgibt";
    /// Label of a field: a pulley that its belt holds.
    pub wrap_on_the_pulley = "Wrap on the pulley", "Umschlingung an der Scheibe";
    /// Hint at a field: a pulley that its belt holds.
    pub how_far_the_belt_goes_round = "how far the belt goes round it",
        "wie weit der Riemen herumgeht";
    /// Label of a field: a pulley that its belt holds.
    pub the_belt_runs_on_it_with = "The belt runs on it with its",
        "Der Riemen läuft darauf mit";
    /// Line of a working: a pulley that its belt holds.
    pub a_pulley_bolt_cracked_against_its = "A pulley bolt cracked against its belt",
        "Eine Scheibenschraube gegen ihren Riemen gelöst";
    /// Line of a working: a pulley that its belt holds.
    pub turns_the_pulley_wrench_across_the = "turns the pulley, wrench across the axis",
        "dreht die Scheibe, Schlüssel über die Achse hinweg";
    /// Line of a working: a pulley that its belt holds.
    pub the_belt_holds = "the belt holds", "der Riemen hält";
    /// Line of a working: a pulley that its belt holds.
    pub as_it_acts = "μ, as it acts", "μ, wie es wirkt";
    /// Line of a working: a pulley that its belt holds.
    pub a_dry_belt_the_rest_of = "A dry belt, the rest of the drive held; a spring tensioner gives way in one direction.",
        "Ein trockener Riemen, der übrige Trieb gehalten; ein Federspanner gibt in eine Richtung nach.";
    /// Part of an answer: a pulley that its belt holds.
    pub it_holds = "It holds", "Er hält";
    /// Part of an answer: a pulley that its belt holds.
    pub it_slips = "It slips", "Er rutscht";
    /// Row of an answer: a pulley that its belt holds.
    pub turning_wrench_across_the_axis = "Turning, wrench across the axis",
        "Drehend, Schlüssel über die Achse hinweg";
    /// Row of an answer: a pulley that its belt holds.
    pub turning_wrench_straight_outwards = "Turning, wrench straight outwards",
        "Drehend, Schlüssel gerade nach außen";
    /// Part of an answer: a pulley that its belt holds.
    pub belt_against_bolt(belt, bolt) = "The belt holds {belt}, the bolt turns the pulley with {bolt}",
        "Der Riemen hält {belt}, die Schraube dreht die Scheibe mit {bolt}";
    /// One of the choices of a field: thread repair.
    pub no_stub_in_it = "no stub in it", "kein Rest darin";
    /// One of the choices of a field: thread repair.
    pub stands_proud = "stands proud", "steht vor";
    /// One of the choices of a field: thread repair.
    pub is_flush = "is flush", "ist bündig";
    /// One of the choices of a field: thread repair.
    pub sits_below = "sits below", "sitzt tiefer";
    /// Label of a field: thread repair.
    pub the_way_to_look_at = "The way to look at", "Welcher Weg gezeigt wird";
    /// Hint at a field: thread repair.
    pub the_best_one_if_empty = "the best one if empty", "leer: der beste";
    /// Label of a field: thread repair.
    pub in_the_hole = "In the hole", "Im Loch";
    /// Name of a calculator: thread repair.
    pub thread_repair = "Thread repair", "Gewindereparatur";
    /// What a calculator is for: thread repair.
    pub the_repair_options_ranked = "the repair options, ranked",
        "die Reparaturwege, der beste zuerst";
    /// Part of an answer: thread repair.
    pub holds = "holds", "hält";
    /// Part of an answer: thread repair.
    pub does_not_hold = "does not hold", "hält nicht";
    /// Part of an answer: thread repair.
    pub no_torque_is_known = "No torque is known", "Kein Drehmoment bekannt";
    /// Part of an answer: thread repair.
    pub the_makers_holds_none_is_made = "the maker's holds: none is made up here",
        "es gilt das des Herstellers: hier wird keines erfunden";
    /// Row of an answer: thread repair.
    pub torque_in_the_other_units = "Torque in the other units",
        "Drehmoment in den anderen Einheiten";
    /// Row of an answer: thread repair.
    pub torque = "Torque", "Drehmoment";
    /// Row of an answer: thread repair.
    pub time = "Time", "Zeit";
    /// Part of an answer: thread repair.
    pub as_before(torque) = "{torque}, as before", "{torque}, wie vorher";
    /// Part of an answer: thread repair.
    pub why_it_stands_at(rank, why) = "Why it stands at {rank}: {why}", "Warum auf Platz {rank}: {why}";
    /// Part of an answer: thread repair.
    pub way_with_bolt(way, bolt, holds) = "{way}, bolt {bolt} · {holds}", "{way}, Schraube {bolt} · {holds}";
    /// Part of an answer: thread repair.
    pub minutes(mid, low, high) = "{mid} min ({low} to {high})", "{mid} min ({low} bis {high})";
    /// Name of a calculator: a stub.
    pub a_stub = "A stub", "Ein Schraubenrest";
    /// What a calculator is for: a stub.
    pub the_ways_to_get_it_out = "the ways to get it out, least risk first",
        "Wege, ihn herauszubekommen, das kleinste Risiko zuerst";
    /// Label of a field: a stub.
    pub the_stub = "The stub", "Der Rest";
    /// Part of an answer: a stub.
    pub no_way_is_open_here = "no way is open here", "hier geht kein Weg";
    /// Part of an answer: a stub.
    pub the_way_with_the_least_risk = "the way with the least risk that is open here; then down the list",
        "der Weg mit dem kleinsten Risiko, der hier geht; danach die Liste hinunter";
    /// Part of an answer: a stub.
    pub not_here = "not here", "hier nicht";
    /// Part of an answer: a stub.
    pub at_most_on_the_stub(most) = "At most {most} on the stub, as a guide",
        "Höchstens {most} am Rest, als Richtwert";
    /// Part of an answer: a stub.
    pub stop_when(what) = "Stop when {what}", "Aufhören, wenn {what}";
    /// One of the choices of a field: what a thread is and bears.
    pub not_asked = "not asked", "nicht gefragt";
    /// Hint at a field: what a thread is and bears.
    pub m8_m8x1_25_5_16_18 = "M8, M8x1.25, 5/16-18, #10-24, 1/8 NPT, spark plug M14x1.25",
        "M8, M8x1.25, 5/16-18, #10-24, 1/8 NPT, spark plug M14x1.25";
    /// Label of a field: what a thread is and bears.
    pub class = "Class", "Klasse";
    /// Hint at a field: what a thread is and bears.
    pub about_8_8_grade_5_a2_70 = "8.8, grade 5, A2-70; empty if it is not known",
        "8.8, grade 5, A2-70; leer, wenn nicht bekannt";
    /// Label of a field: what a thread is and bears.
    pub tapped_in = "Tapped in", "Geschnitten in";
    /// Label of a field: what a thread is and bears.
    pub engaged_length = "Engaged length", "Einschraub\u{ad}tiefe";
    /// Hint at a field: what a thread is and bears.
    pub with_the_metal_and_the_class = "with the metal and the class: what fails first",
        "mit Metall und Klasse: was zuerst versagt";
    /// Label of a field: what a thread is and bears.
    pub wanted_depth_of_thread_per_cent = "Wanted depth of thread, per cent, US count",
        "Gewünschte Gewindetiefe, Prozent, US-Zählung";
    /// Hint at a field: what a thread is and bears.
    pub about_75_is_assumed = "75 is assumed", "ohne Angabe 75";
    /// Name of a calculator: what a thread is and bears.
    pub a_thread = "A thread", "Ein Gewinde";
    /// What a calculator is for: what a thread is and bears.
    pub drill_wrench_holes_strength_near_misses = "drill, wrench, holes, strength, near misses",
        "Bohrer, Schlüssel, Löcher, Festigkeit, Verwechslungen";
    /// Part of an answer: what a thread is and bears.
    pub none_is_stated = "none is stated", "keiner angegeben";
    /// Part of an answer: what a thread is and bears.
    pub outside_iso_898_7_none_is = "outside ISO 898-7: none is stated",
        "außerhalb ISO 898-7: keines angegeben";
    /// Part of an answer: what a thread is and bears.
    pub none_does = "none does", "keine";
    /// Part of an answer: what a thread is and bears.
    pub does_not_start = "does not start", "greift nicht an";
    /// Part of an answer: what a thread is and bears.
    pub falls_in = "falls in", "fällt hinein";
    /// Row of an answer: what a thread is and bears.
    pub clearance_hole_close = "Clearance hole, close", "Durchgangsloch, fein";
    /// Row of an answer: what a thread is and bears.
    pub outside_diameter = "Outside diameter", "Außendurchmesser";
    /// Row of an answer: what a thread is and bears.
    pub pitch = "Pitch", "Steigung";
    /// Row of an answer: what a thread is and bears.
    pub tap_drill = "Tap drill", "Kernlochbohrer";
    /// Row of an answer: what a thread is and bears.
    pub drills_for_the_wanted_depth_of = "Drills for the wanted depth of thread, US count",
        "Bohrer für die gewünschte Gewindetiefe, US-Zählung";
    /// Row of an answer: what a thread is and bears.
    pub clearance_hole_normal = "Clearance hole, normal", "Durchgangsloch, mittel";
    /// Row of an answer: what a thread is and bears.
    pub clearance_hole_loose = "Clearance hole, loose", "Durchgangsloch, grob";
    /// Row of an answer: what a thread is and bears.
    pub pitch_diameter = "Pitch diameter", "Flankendurchmesser";
    /// Row of an answer: what a thread is and bears.
    pub minor_diameter_of_the_hole = "Minor diameter of the hole",
        "Kerndurchmesser des Lochs";
    /// Row of an answer: what a thread is and bears.
    pub root_of_the_bolt = "Root of the bolt", "Kern der Schraube";
    /// Row of an answer: what a thread is and bears.
    pub stress_area = "Stress area", "Spannungsquerschnitt";
    /// Row of an answer: what a thread is and bears.
    pub proof_load = "Proof load", "Prüfkraft";
    /// Row of an answer: what a thread is and bears.
    pub yields_at = "Yields at", "Streckgrenze bei";
    /// Row of an answer: what a thread is and bears.
    pub breaks_at = "Breaks at", "Reißt bei";
    /// Row of an answer: what a thread is and bears.
    pub breaks_in_twist_at_least = "Breaks in twist, at least",
        "Reißt beim Verdrehen, frühestens";
    /// Row of an answer: what a thread is and bears.
    pub fails_first = "Fails first", "Versagt zuerst";
    /// Row of an answer: what a thread is and bears.
    pub thread_in_the_hole_strips_at = "Thread in the hole strips at",
        "Gewinde im Loch reißt aus bei";
    /// Row of an answer: what a thread is and bears.
    pub bolts_thread_strips_at = "Bolt's thread strips at",
        "Gewinde der Schraube reißt ab bei";
    /// Row of an answer: what a thread is and bears.
    pub engaged_length_that_lets_the_bolt = "Engaged length that lets the bolt break first",
        "Einschraubtiefe, bei der die Schraube zuerst reißt";
    /// Row of an answer: what a thread is and bears.
    pub bolt_yields(state) = "Bolt yields, {state} (no specification)",
        "Schraube streckt sich, {state} (keine Vorgabe)";
    /// Part of an answer: what a thread is and bears.
    pub from_to(low, high) = "{low} to {high}", "{low} bis {high}";
    /// Part of an answer: what a thread is and bears.
    pub oiled = "oiled", "geölt";
    /// Part of an answer: what a thread is and bears.
    pub dry = "dry", "trocken";
    /// Part of an answer: what a thread is and bears.
    pub tap_drill_of(drill) = "tap drill {drill}", "Kernlochbohrer {drill}";
    /// Part of an answer: what a thread is and bears.
    pub wrench_of(wrench) = "wrench {wrench}", "Schlüssel {wrench}";
    /// Part of an answer: what a thread is and bears.
    pub pitch_per_inch(mm, count) = "{mm} mm ({count} threads per inch)",
        "{mm} mm ({count} Gänge je Zoll)";
    /// Part of an answer: what a thread is and bears.
    pub almost_fits(wrenches) = "almost fits: {wrenches}", "passt fast: {wrenches}";
    /// Row of an answer: what a thread is and bears.
    pub wrench_for_head(head) = "Wrench, {head}", "Schlüssel, {head}";
    /// Part of an answer: what a thread is and bears.
    pub drill_with_percents(drill, iso, us) = "{drill}: {iso} % by ISO, {us} % as in US charts",
        "{drill}: {iso} % nach ISO, {us} % wie in US-Tabellen";
    /// Part of an answer: what a thread is and bears.
    pub binds_after(low, high) = "binds after {low} to {high} turns",
        "klemmt nach {low} bis {high} Umdrehungen";
    /// Part of an answer: what a thread is and bears.
    pub never_binds(percent) = "never binds, holds by {percent} % of its depth and strips",
        "klemmt nie, hält mit {percent} % seiner Tiefe und reißt aus";
    /// Row of an answer: what a thread is and bears.
    pub near_miss(bolt, hole) = "Near miss: bolt {bolt} in {hole}",
        "Verwechslung: Schraube {bolt} in {hole}";
    /// One of the choices of a field: torque and clamp.
    pub motosh = "Motosh", "Motosh";
    /// One of the choices of a field: torque and clamp.
    pub iso_16047 = "ISO 16047", "ISO 16047";
    /// One of the choices of a field: torque and clamp.
    pub short_with_k = "short, with K", "kurz, mit K";
    /// Name of a calculator: torque and clamp.
    pub torque_and_clamp = "Torque and clamp", "Drehmoment und Klemmkraft";
    /// What a calculator is for: torque and clamp.
    pub one_from_the_other_low_to = "one from the other, low to high",
        "eines aus dem anderen, von niedrig bis hoch";
    /// Hint at a field: torque and clamp.
    pub such_as_m10x1_5 = "such as M10x1.5", "etwa M10x1.5";
    /// Hint at a field: torque and clamp.
    pub to_know_the_clamp = "to know the clamp", "um die Klemmkraft zu wissen";
    /// Label of a field: torque and clamp.
    pub or_clamp = "Or clamp", "Oder Klemmkraft";
    /// Hint at a field: torque and clamp.
    pub to_know_the_torque = "to know the torque", "um das Drehmoment zu wissen";
    /// Hint at a field: torque and clamp.
    pub oiled_dry_zinc_dry_stainless_with = "oiled, dry, zinc dry, stainless with paste …",
        "oiled (geölt), dry (trocken), zinc dry (verzinkt, trocken), stainless with paste (rostfrei mit Paste) …";
    /// Label of a field: torque and clamp.
    pub or_friction = "Or friction", "Oder Reibung";
    /// Hint at a field: torque and clamp.
    pub such_as_0_15_none_is = "such as 0.15; none is assumed",
        "etwa 0,15; ohne Angabe wird nichts angenommen";
    /// Hint at a field: torque and clamp.
    pub such_as_8_8 = "such as 8.8", "etwa 8.8";
    /// Title over fields: torque and clamp.
    pub head_hole_form = "Head, hole, form", "Kopf, Loch, Formel";
    /// Label of a field: torque and clamp.
    pub head = "Head", "Kopf";
    /// Hint at a field: torque and clamp.
    pub hex_is_assumed_flange_socket = "hex is assumed; flange, socket …",
        "ohne Angabe hex (Sechskant); flange (Flansch), socket (Innensechskant) …";
    /// Label of a field: torque and clamp.
    pub face_under_the_head = "Face under the head, across",
        "Auflage unter dem Kopf, Durchmesser";
    /// Hint at a field: torque and clamp.
    pub where_no_listed_head_is_meant = "where no listed head is meant",
        "wenn kein Kopf aus der Liste gemeint ist";
    /// Label of a field: torque and clamp.
    pub hole = "Hole", "Loch";
    /// Hint at a field: torque and clamp.
    pub close_medium_loose_or_its_diameter = "close, medium, loose, or its diameter",
        "close (fein), medium (mittel), loose (grob), oder sein Durchmesser";
    /// Label of a field: torque and clamp.
    pub form = "Form", "Formel";
    /// Label of a field: torque and clamp.
    pub k_of_the_short_form = "K of the short form", "K der kurzen Formel";
    /// Hint at a field: torque and clamp.
    pub none_is_assumed = "none is assumed", "ohne Angabe wird nichts angenommen";
    /// Row of an answer: torque and clamp.
    pub clamp_low_to_high = "Clamp, low to high", "Klemmkraft, niedrig bis hoch";
    /// Part of an answer: torque and clamp.
    pub the_bolt_breaks = "the bolt breaks", "die Schraube reißt";
    /// Row of an answer: torque and clamp.
    pub over_the_range_of_friction = "Over the range of friction",
        "Über den Bereich der Reibung";
    /// Row of an answer: torque and clamp.
    pub of_it_stretches_the_bolt = "Of it stretches the bolt", "Davon streckt die Schraube";
    /// Row of an answer: torque and clamp.
    pub of_it_goes_into_the_thread = "Of it goes into the thread", "Davon geht ins Gewinde";
    /// Row of an answer: torque and clamp.
    pub of_it_goes_under_the_head = "Of it goes under the head", "Davon geht unter den Kopf";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub nothing_is_asked_write_a_torque = "nothing is asked; write a torque, or a clamp below it",
        "nichts gefragt; ein Drehmoment eintragen, oder darunter eine Klemmkraft";
    /// Row of an answer: torque and clamp.
    pub of_the_proof_load = "Of the proof load", "Von der Prüfkraft";
    /// Row of an answer: torque and clamp.
    pub begins_to_yield_at = "Begins to yield at", "Beginnt sich zu strecken bei";
    /// Part of an answer: torque and clamp.
    pub clamp_of(thread, torque) = "clamp of {thread} at {torque}", "Klemmkraft von {thread} bei {torque}";
    /// Part of an answer: torque and clamp.
    pub for_a_clamp_of(clamp, thread) = "for a clamp of {clamp} on {thread}",
        "für eine Klemmkraft von {clamp} an {thread}";
    /// Name of a calculator: torque wrench and lever.
    pub torque_wrench_and_lever = "Torque wrench and lever", "Drehmoment\u{ad}schlüssel und Hebel";
    /// What a calculator is for: torque wrench and lever.
    pub adapter_hand_force_two_wrenches = "adapter, hand force, two wrenches",
        "Adapter, Handkraft, zwei Schlüssel";
    /// Label of a field: torque wrench and lever.
    pub torque_wanted = "Torque wanted", "Gewünschtes Drehmoment";
    /// Label of a field: torque wrench and lever.
    pub length_of_the_wrench_drive_to = "Length of the wrench, drive to grip",
        "Länge des Schlüssels, Vierkant bis Griff";
    /// Label of a field: torque wrench and lever.
    pub adapter_drive_to_bolt = "Adapter, drive to bolt", "Adapter, Vierkant bis Schraube";
    /// Hint at a field: torque wrench and lever.
    pub empty_for_the_force_of_a = "empty for the force of a hand", "leer für die Handkraft";
    /// Label of a field: torque wrench and lever.
    pub angle_of_the_adapter_to_the = "Angle of the adapter to the wrench",
        "Winkel des Adapters zum Schlüssel";
    /// Hint at a field: torque wrench and lever.
    pub about_0_points_away_90_needs_no = "0 points away, 90 needs no correction",
        "0 zeigt nach vorn, 90 braucht keine Korrektur";
    /// Label of a field: torque wrench and lever.
    pub wrenchs_maximum_torque = "Wrench's maximum torque",
        "Größtes Drehmoment des Schlüssels";
    /// Hint at a field: torque wrench and lever.
    pub whether_it_can_be_believed = "whether it can be believed", "ob er dort genau genug ist";
    /// Label of a field: torque wrench and lever.
    pub a_second_wrench_hooked_in_its = "A second wrench hooked in, its length",
        "Ein zweiter Schlüssel eingehängt, seine Länge";
    /// Label of a field: torque wrench and lever.
    pub the_two_overlap_by = "The two overlap by", "Die beiden überlappen um";
    /// Part of an answer: torque wrench and lever.
    pub set_the_wrench_to_this = "set the wrench to this", "den Schlüssel darauf einstellen";
    /// Line of a working: torque wrench and lever.
    pub force_of_a_hand_at_a = "Force of a hand at a lever", "Kraft einer Hand am Hebel";
    /// Part of an answer: torque wrench and lever.
    pub a_wrench_hooked_into_another_slips = "A wrench hooked into another slips: pull so that it falls away from you, and never hammer on it.",
        "Ein eingehängter Schlüssel rutscht ab: so ziehen, dass er von einem weg fällt, und nie darauf hämmern.";
    /// Part of an answer: torque wrench and lever.
    pub the_wrench_can_be_believed_there = "The wrench can be believed there.",
        "Der Schlüssel misst dort genau genug.";
    /// Line of a working: torque wrench and lever.
    pub force = "force", "Kraft";
    /// Part of an answer: torque wrench and lever.
    pub by_hand_at_a_lever_of(length) = "by hand at a lever of {length}",
        "von Hand an einem Hebel von {length}";
    /// Part of an answer: torque wrench and lever.
    pub wrench_reads_from(torque) = "Below a fifth of its range a wrench says nothing: this one reads from {torque}.",
        "Unter einem Fünftel seines Bereichs misst ein Schlüssel nicht genau: dieser taugt ab {torque}.";
    /// Part of an answer: torque wrench and lever.
    pub beyond_the_wrench(torque) = "Beyond the wrench: it ends at {torque}.",
        "Zu viel für diesen Schlüssel: er geht bis {torque}.";
}
