//! What is said of the ways back for a damaged hole.

use phrases::phrases;

phrases! {
    /// What is wrong with a field, and how to mend it: a way back for a hole.
    pub what_does_the_joint_hold = "what does the joint hold?", "was hält die Verbindung?";
    /// What is wrong with a field, and how to mend it: a way back for a hole.
    pub say_it_first_where_people_are = "say it first: where people are hurt only the maker's part will do",
        "das zuerst angeben: wo Menschen zu Schaden kommen, geht nur das Teil des Herstellers";
    /// Part of an answer: the ladder for a stub.
    pub drill_off_centre(drill, most) = "{drill}: off-centre at most {most}",
        "{drill}: höchstens {most} aus der Mitte";
    /// Row of an answer: a way back.
    pub bolt = "Bolt", "Schraube";
    /// Row of an answer: a way back.
    pub drill = "Drill", "Bohrer";
    /// Row of an answer: a way back.
    pub tap = "Tap", "Gewindebohrer";
    /// Row of an answer: a way back.
    pub insert = "Insert", "Einsatz";
    /// Row of an answer: a way back.
    pub other_parts_hole = "Other part's hole", "Loch im anderen Teil";
    /// Row of an answer: a way back.
    pub clamp_low_against_the_original_low = "Clamp, low against the original low",
        "Klemmkraft, kleinste gegen die ursprünglich kleinste";
    /// Row of an answer: a way back.
    pub clamp = "Clamp", "Klemmkraft";
    /// Row of an answer: a way back.
    pub thread_strips_at = "Thread strips at", "Gewinde reißt aus bei";
    /// Row of an answer: a way back.
    pub wall_left = "Wall left", "Restwand";
    /// Row of an answer: a way back.
    pub drill_off_centre_at_most = "Drill off-centre at most", "Bohrer höchstens aus der Mitte";
    /// Row of an answer: a way back.
    pub next_time = "Next time", "Nächstes Mal";
    /// Part of an answer: a way back.
    pub bolt_and_larger_hole(bolt, mm) = "bolt {bolt}, the other part's hole must grow to {mm} mm",
        "Schraube {bolt}, das Loch im anderen Teil muss auf {mm} mm";
    /// Part of an answer: a way back.
    pub bolt_of(bolt) = "bolt {bolt}", "Schraube {bolt}";
    /// Part of an answer: a way back.
    pub about_for_the_same_clamp(torque) = "about {torque} N·m for the same clamp",
        "etwa {torque} N·m für dieselbe Klemmkraft";
    /// The size that holds from now on: a way back.
    pub bolt_through(thread) = "bolt {thread} through, nut behind",
        "Schraube {thread} durch, Mutter dahinter";
    /// The size that holds from now on: a way back.
    pub in_a_bushing(thread) = "{thread} in a bushing", "{thread} in einer Buchse";
    /// The size that holds from now on: a way back.
    pub oversize_plug = "oversize plug", "Übermaß-Ablassschraube";
    /// The size that holds from now on: a way back.
    pub in_a_bung(thread) = "{thread} in a bung welded in", "{thread} in einer eingeschweißten Muffe";
    /// A part that a way needs: a way back.
    pub reducer_to(thread) = "reducer to {thread}", "Reduzierstück auf {thread}";
    /// The size that holds from now on: a way back.
    pub insert_and_bolt(thread, bolt) = "{thread} insert, bolt {bolt}", "Einsatz {thread}, Schraube {bolt}";
    /// The size that holds from now on: a way back.
    pub bushing_and_bolt(thread, bolt) = "{thread} bushing, bolt {bolt}",
        "Buchse {thread}, Schraube {bolt}";
    /// Part of an answer: a way back.
    pub times_the_greatest_clamp(margin) = "{margin} × the greatest clamp",
        "{margin} × der größten Klemmkraft";
    /// A part that a way needs: a way back.
    pub wire_insert(thread, length) = "wire insert {thread} × {length} mm",
        "Drahtgewindeeinsatz {thread} × {length} mm";
    /// A part that a way needs: a way back.
    pub solid_bushing(thread, length) = "solid bushing {thread} × {length} mm",
        "Gewindebuchse {thread} × {length} mm";
    /// A part that a way needs: a way back.
    pub bushing_for(thread) = "bushing for {thread}", "Buchse für {thread}";
    /// A part that a way needs: a way back.
    pub oversize_plug_and_its_washer = "oversize plug and its washer",
        "Übermaß-Ablassschraube und ihr Dichtring";
    /// A part that a way needs: a way back.
    pub the_makers_part = "the maker's part", "Teil des Herstellers";
    /// A part that a way needs: a way back.
    pub bung(thread) = "bung {thread}", "Muffe {thread}";
    /// A part that a way needs: a way back.
    pub nut_and_washer(thread) = "nut and washer {thread}", "Mutter und Scheibe {thread}";
    /// A part that a way needs: a way back.
    pub new_bolt(bolt, class) = "bolt {bolt} {class}", "Schraube {bolt} {class}";
    /// How a drill turns: a way back.
    pub in_reverse = "in reverse", "linksherum";
    /// How a drill turns: a way back.
    pub running_forward = "running forward", "rechtsherum";
    /// A step of the work: a way back.
    pub drills_that_walk_it_out(drills, sizes, turning) = "{drills} {sizes}, slow, {turning}: it may walk out",
        "{drills} {sizes}, langsam, {turning}: er läuft vielleicht heraus";
    /// A step of the work: a way back.
    pub rag_in_the_opening_centre_the = "rag in the opening; centre the stub through a guide bush, then a punch",
        "Lappen in die Öffnung; den Rest durch eine Führungsbuchse zentrieren, dann körnen";
    /// Caution: a way back.
    pub eye_protection_stop_the_drill_at = "eye protection; stop the drill at the depth of the hole",
        "Schutzbrille; den Bohrer auf die Tiefe des Lochs begrenzen";
}
