//! What is wrong with a question about a thread, and what is said beside its answer.

use phrases::phrases;

phrases! {
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_thread = "write a thread such as M8x1.25, 5/16-18 or #10-24",
        "ein Gewinde eintragen, etwa M8x1.25, 5/16-18 oder #10-24";
    /// What is wrong with a field, and how to mend it: a thread.
    pub says_no_joint(text) = "`{text}` does not say what the joint holds",
        "„{text}“ sagt nicht, was die Verbindung hält";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_one_of(names) = "write one of {names}", "eines davon eintragen: {names}";
    /// What is wrong with a field, and how to mend it: a thread.
    pub is_no_metal(text) = "`{text}` is not a metal known here",
        "„{text}“ ist hier als Metall nicht bekannt";
    /// What is wrong with a field, and how to mend it: a thread.
    pub says_no_condition(text) = "`{text}` does not say dry, oiled or with paste",
        "„{text}“ sagt nicht, ob trocken (dry), geölt (oiled) oder mit Paste (with paste)";
    /// What is wrong with a field, and how to mend it: a thread.
    pub is_no_head(text) = "`{text}` is not a head known here",
        "„{text}“ ist hier als Kopf nicht bekannt";
    /// What is wrong with a field, and how to mend it: a thread.
    pub is_no_number(text) = "`{text}` is not a number", "„{text}“ ist keine Zahl";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_class_such_as_8 = "write a class such as 8.8 or grade 5",
        "eine Klasse eintragen, etwa 8.8 oder grade 5";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_the_state_such_as_zinc = "write the state, such as `zinc dry`, `oiled` or `stainless with paste`",
        "den Zustand eintragen, etwa „zinc dry“, „oiled“ oder „stainless with paste“";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_length_such_as_12 = "write a length such as 12 mm or 1/2 in",
        "eine Länge eintragen, etwa 12 mm oder 1/2 in";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_torque_such_as_22 = "write a torque such as 22 Nm or 16 lb-ft",
        "ein Drehmoment eintragen, etwa 22 Nm oder 16 lb-ft";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_force_such_as_25275 = "write a force such as 25275 N or 5600 lbf",
        "eine Kraft eintragen, etwa 25275 N oder 5600 lbf";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_an_angle_such_as_90 = "write an angle such as 90 deg",
        "einen Winkel eintragen, etwa 90 deg";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_number_with_its_unit = "write a number with its unit",
        "eine Zahl mit Einheit eintragen";
    /// Line of a working: a thread.
    pub written = "written", "eingetragen";
    /// What is wrong with a field, and how to mend it: a thread.
    pub write_a_number_without_a_unit = "write a number without a unit, such as 0.15",
        "eine Zahl ohne Einheit eintragen, etwa 0,15";
    /// What is wrong with a field, and how to mend it: a stub.
    pub how_far_the_stub_stands_proud = "how far the stub stands proud or below is missing",
        "wie weit der Rest vor- oder tiefer steht, fehlt";
    /// What is wrong with a field, and how to mend it: a stub.
    pub add_it_such_as_2_mm = "add it, such as 2 mm", "angeben, etwa 2 mm";
    /// What is wrong with a field, and how to mend it: a stub.
    pub write_proud_flush_or_below = "write proud, flush or below",
        "proud (vorstehend), flush (bündig) oder below (tiefer) eintragen";
    /// What is wrong with a field, and how to mend it: a stub.
    pub check_the_sizes_against_one_another = "check the sizes against one another",
        "die Maße gegeneinander prüfen";
    /// What is wrong with a field, and how to mend it: a stub.
    pub says_no_end_of_stub(text) = "`{text}` does not say where the stub ends",
        "„{text}“ sagt nicht, wo der Rest endet";
    /// What is wrong with a field, and how to mend it: a wrench.
    pub give_lengths_and_an_angle_that = "give lengths and an angle that a wrench can have",
        "Längen und einen Winkel angeben, die ein Schlüssel haben kann";
    /// Line of a working: a wrench.
    pub torque_wanted_as_written = "torque wanted, as written",
        "gewünschtes Drehmoment, wie eingetragen";
    /// What is wrong with a field, and how to mend it: a wrench.
    pub give_lengths_that_wrenches_have = "give lengths that wrenches have",
        "Längen angeben, die Schlüssel haben";
    /// What is wrong with a field, and how to mend it: a wrench.
    pub give_a_length_that_a_wrench = "give a length that a wrench has",
        "eine Länge angeben, die ein Schlüssel hat";
    /// What is wrong with a field, and how to mend it: a wrench.
    pub write_the_greatest_torque_of_the = "write the greatest torque of the wrench, such as 200 Nm",
        "das größte Drehmoment des Schlüssels eintragen, etwa 200 Nm";
    /// What is wrong with a field, and how to mend it: a wrench.
    pub is_no_range(torque) = "{torque} N·m is no range", "{torque} N·m ist kein Bereich";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub ask_the_makers_figure_again_inch = "ask the maker's figure again: inch pounds, foot pounds or N·m?",
        "die Angabe des Herstellers noch einmal prüfen: inch pounds, foot pounds oder N·m?";
    /// Part of an answer: a damaged hole.
    pub the_state_of_the_threads_was = "The state of the threads was not said: taken as oiled. Say `dry` if they are.",
        "Der Zustand der Gewinde ist nicht angegeben: als geölt gerechnet. „dry“ eintragen, wenn sie trocken sind.";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub write_a_metric_thread = "write a thread such as M8x1.25",
        "ein Gewinde eintragen, etwa M8x1.25";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub the_hole_must_be_either_blind = "the hole must be either blind or through",
        "das Loch muss entweder Sackloch oder durchgehend sein";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub give_the_depth_of_a_blind = "give the depth of a blind hole, or the length of a through one",
        "die Tiefe eines Sacklochs angeben, oder die Länge eines durchgehenden";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub write_scarred_its_metal_all_there = "write scarred (its metal all there) or stripped (torn out)",
        "scarred (verletzt, Metall noch ganz da) oder stripped (ausgerissen) eintragen";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub write_metal_plastic_or_limiter_plastic = "write metal, plastic or limiter (plastic with a metal sleeve)",
        "metal (Metall), plastic (Kunststoff) oder limiter (Kunststoff mit Metallhülse) eintragen";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub what_does_it_hold(thread, often) = "what does the joint hold? {thread} is often that of a {often}",
        "was hält die Verbindung? {thread} gehört oft zu: {often}";
    /// Between things that a thread is often that of: a damaged hole.
    pub another = ", a ", ", ";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub is_no_damage(text) = "`{text}` is not a kind of damage known here",
        "„{text}“ ist hier als Schaden nicht bekannt";
    /// What is wrong with a field, and how to mend it: a damaged hole.
    pub is_no_material(text) = "`{text}` is not a material known here",
        "„{text}“ ist hier als Werkstoff nicht bekannt";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub write_a_thread_or_pipe = "write a thread such as M8x1.25, 5/16-18, #10-24 or 1/8 NPT",
        "ein Gewinde eintragen, etwa M8x1.25, 5/16-18, #10-24 oder 1/8 NPT";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub write_a_class_that_covers_this = "write a class that covers this size",
        "eine Klasse eintragen, die es in dieser Größe gibt";
    /// Part of an answer: what a thread is.
    pub what_a_bolt_of_this_class = "What a bolt of this class could carry is not a specification: the maker's torque overrides it.",
        "Was eine Schraube dieser Klasse tragen könnte, ist keine Vorgabe: das Drehmoment des Herstellers geht vor.";
    /// Line of a working: what a thread is.
    pub least_breaking_torque = "least breaking torque", "kleinstes Bruchdrehmoment";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub the_engaged_length_is_missing = "the engaged length is missing",
        "die Einschraubtiefe fehlt";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub add_the_length_of_full_thread = "add the length of full thread in engagement, such as 12 mm",
        "die Einschraubtiefe mit vollem Gewinde angeben, etwa 12 mm";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub the_metal_of_the_hole_is = "the metal of the hole is missing",
        "das Metall des Lochs fehlt";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub add_the_metal_such_as_a380 = "add the metal, such as A380 or steel",
        "das Metall angeben, etwa A380 oder steel";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub write_the_length_of_full_thread = "write the length of full thread in engagement, such as 12 mm",
        "die Einschraubtiefe mit vollem Gewinde eintragen, etwa 12 mm";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub which_fails_first_depends_on_the = "which fails first depends on the bolt's class",
        "was zuerst versagt, hängt von der Klasse der Schraube ab";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub add_the_class_such_as_8 = "add the class, such as 8.8",
        "die Klasse angeben, etwa 8.8";
    /// Part of an answer: what a thread is.
    pub this_pitch_is_in_neither_the = "This pitch is in neither the coarse nor the fine list: look twice before ordering taps and bolts.",
        "Diese Steigung steht weder in der Regel- noch in der Feinliste: zweimal hinsehen, bevor Gewindebohrer und Schrauben bestellt werden.";
    /// Line of a working: what a thread is.
    pub tap_drill = "tap drill", "Kernlochbohrer";
    /// Part of an answer: what a thread is.
    pub no_strength_known(metal) = "No strength of {metal} is known here, so nothing is said of when its thread strips.",
        "Die Festigkeit von {metal} ist hier nicht bekannt, also keine Aussage, wann das Gewinde ausreißt.";
    /// Line of a working: what a thread is.
    pub leaves_percents(iso, us) = "leaves {iso} % of the ISO engagement (5/8 H), {us} % as US charts count (3/4 H)",
        "lässt {iso} % der ISO-Überdeckung (5/8 H), {us} % nach US-Zählung (3/4 H)";
    /// What is wrong with a field, and how to mend it: what a thread is.
    pub is_no_engagement(text) = "`{text}` is no length in engagement",
        "„{text}“ ist keine Einschraubtiefe";
    /// Part of an answer: what a thread is.
    pub often_that_of(what) = "This thread is often that of a {what}: say so if it is.",
        "Dieses Gewinde gehört oft zu: {what}. Angeben, wenn es so ist.";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub write_friction = "write a coefficient such as 0.15, or a condition such as `zinc dry`",
        "eine Reibungszahl eintragen, etwa 0,15, oder einen Zustand, etwa „zinc dry“";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub write_a_clamp_such_as_25275 = "write a clamp such as 25275 N",
        "eine Klemmkraft eintragen, etwa 25275 N";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub write_a_clamp = "write a clamp", "eine Klemmkraft eintragen";
    /// Line of a working: torque and clamp.
    pub clamp_as_written = "clamp as written", "Klemmkraft, wie eingetragen";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub write_a_torque = "write a torque such as 22 Nm",
        "ein Drehmoment eintragen, etwa 22 Nm";
    /// Line of a working: torque and clamp.
    pub torque_as_written = "torque as written", "Drehmoment, wie eingetragen";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub give_the_diameter_of_the_face = "give the diameter of the face under the head",
        "den Durchmesser der Auflage unter dem Kopf angeben";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub give_its_diameter_such_as_9 = "give its diameter, such as 9 mm",
        "seinen Durchmesser angeben, etwa 9 mm";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub give_a_hole_smaller_than_the = "give a hole smaller than the head's face",
        "ein Loch angeben, das kleiner ist als die Auflage";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub a_coefficient_and_a_condition_are = "a coefficient and a condition are both given",
        "Reibungszahl und Zustand sind beide angegeben";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub give_one_of_them = "give one of them", "eines von beiden angeben";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub no_friction_is_given_and_none = "no friction is given, and none is assumed",
        "keine Reibung angegeben, und es wird keine angenommen";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub the_short_form_needs_its_k = "the short form needs its K, and none is assumed",
        "die kurze Formel braucht ihr K, und es wird keines angenommen";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub give_k_such_as_0_2 = "give K, such as 0.2", "K angeben, etwa 0,2";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub write_motosh_iso16047_or_short = "write motosh, iso16047 or short",
        "motosh, iso16047 oder short eintragen";
    /// Part of an answer: torque and clamp.
    pub not_a_specification_the_makers_torque = "Not a specification: the maker's torque overrides it.",
        "Keine Vorgabe: das Drehmoment des Herstellers geht vor.";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub is_no_clamp(force) = "{force} N is no clamp", "{force} N ist keine Klemmkraft";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub is_no_torque(torque) = "{torque} N·m is no torque", "{torque} N·m ist kein Drehmoment";
    /// Part of an answer: torque and clamp.
    pub no_bolt_bears_that(thread, class) = "the bolt breaks: no bolt of {thread} bears that, not even one of class {class}; look at the figure and its unit again",
        "die Schraube reißt: keine Schraube {thread} hält das, nicht einmal eine der Klasse {class}; Wert und Einheit noch einmal ansehen";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub no_such_head(head, thread) = "no {head} head of {thread} is listed",
        "für {thread} ist kein Kopf {head} verzeichnet";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub no_clearance_hole(thread) = "no clearance hole for {thread} is listed",
        "für {thread} ist kein Durchgangsloch verzeichnet";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub nut_factor_outside(number) = "{number} is outside 0.05 to 1",
        "{number} liegt nicht zwischen 0,05 und 1";
    /// What is wrong with a field, and how to mend it: torque and clamp.
    pub is_no_form(text) = "`{text}` is not a form known here",
        "„{text}“ ist hier als Formel nicht bekannt";
}
