//! Threads as they are written, what they are for, heads, metals and drills.

use phrases::phrases;

phrases! {
    /// A refusal.
    pub no_thread_is_written = "no thread is written; write one such as M8x1.25, 5/16-18 or #10-24",
        "kein Gewinde geschrieben; eines wie M8x1.25, 5/16-18 oder #10-24 schreiben";
    /// A refusal; what was written.
    pub too_long_for_a_thread(found) = "`{found}` is too long for a thread; write only the thread, such as M8x1.25",
        "„{found}“ ist zu lang für ein Gewinde; nur das Gewinde schreiben, etwa M8x1.25";
    /// A refusal; what was written.
    pub not_a_thread(found) = "`{found}` is not a thread; write one such as M8x1.25, 5/16-18, #10-24 or 1/8 NPT",
        "„{found}“ ist kein Gewinde; eines wie M8x1.25, 5/16-18, #10-24 oder 1/8 NPT schreiben";
    /// A refusal; what was written and what it may mean.
    pub may_be_metric(found, meant) = "`{found}` may be the metric {meant}; write {meant} if it is, or an inch size with its threads per inch",
        "„{found}“ kann metrisch {meant} sein; dann {meant} schreiben, sonst eine Zollgröße mit Gängen pro Zoll";
    /// A refusal: neither pitch nor length; the thread, the second number, the coarse thread.
    pub neither_pitch_nor_length(thread, second, coarse) =
        "{thread} has no pitch of {second} mm, and no such bolt is {second} mm long; write \
         {thread} with its pitch, such as {coarse}",
        "{thread} hat keine Steigung von {second} mm, und keine solche Schraube ist {second} mm lang; \
         {thread} mit Steigung schreiben, etwa {coarse}";
    /// A refusal; the size.
    pub no_coarse_pitch(size) = "{size} has no coarse pitch; write the pitch, such as {size}x1",
        "{size} hat keine Regelsteigung; die Steigung schreiben, etwa {size}x1";
    /// A refusal; the size and what can be meant.
    pub more_than_one_pitch(size, choices) = "{size} comes with more than one pitch; write {choices}",
        "{size} gibt es mit mehr als einer Steigung; {choices} schreiben";
    /// A choice of pitches where none is listed; the size.
    pub with_threads_per_inch(size) = "{size}-20, with its threads per inch", "{size}-20, mit Gängen pro Zoll";
    /// Between choices of pitches.
    pub or_between = " or ", " oder ";
    /// A refusal; the thread, what was written, and what is listed.
    pub series_mismatch(thread, written, listed) = "{thread} is not {written}; write {thread} alone, or {listed}",
        "{thread} ist nicht {written}; nur {thread} schreiben, oder {listed}";
    /// A refusal; the size, the family, and what is listed.
    pub no_such_pipe(size, family, listed) = "{size} {family} is not a listed pipe thread; the sizes are {listed}",
        "{size} {family} ist kein gelistetes Rohrgewinde; die Größen sind {listed}";
    /// A refusal; the thread, and why it is not clamped.
    pub is_a_pipe_thread(name, why) = "{name} is a pipe thread: {why}", "{name} ist ein Rohrgewinde: {why}";
    /// A refusal; the thread, what it is for, and why it is not clamped.
    pub is_a_thread_of(name, purpose, why) = "{name} is a {purpose} thread: {why}", "{name} ist ein Gewinde für: {purpose}. {why}";
    /// A refusal; the diameter.
    pub diameter_outside(diameter) = "a diameter of {diameter} mm is outside 1 to 150 mm; check the size",
        "ein Durchmesser von {diameter} mm liegt außerhalb 1 bis 150 mm; die Größe prüfen";
    /// A refusal; the pitch, the diameter, the least and the greatest pitch.
    pub pitch_makes_no_screw(pitch, diameter, least, most) =
        "a pitch of {pitch} mm makes no screw of {diameter} mm; between {least} and {most} mm would",
        "eine Steigung von {pitch} mm gibt keine Schraube mit {diameter} mm; möglich ist {least} bis {most} mm";

    /// Title of a working; the thread.
    pub sizes_of(thread) = "Sizes of {thread}", "Maße von {thread}";
    /// A line of a working.
    pub stress_area = "stress area", "Spannungsquerschnitt";
    /// A line of a working.
    pub pitch_diameter = "pitch diameter", "Flankendurchmesser";
    /// A line of a working.
    pub minor_diameter_of_the_hole = "minor diameter of the hole", "Kerndurchmesser im Loch";
    /// A line of a working.
    pub root_diameter_of_the_bolt = "root diameter of the bolt", "Kerndurchmesser der Schraube";
    /// A line of a working.
    pub lead_angle = "lead angle", "Steigungswinkel";
    /// Limit of a working.
    pub basic_sizes = "Basic sizes, without tolerance.", "Nennmaße, ohne Toleranz.";

    /// What a pipe thread is, and why no torque is worked out.
    pub parallel_pipe_thread = "Parallel pipe thread: a washer or ring on the face seals \
        it. Tighten to the maker's torque for that seal; no clamp is worked out here.",
        "Zylindrisches Rohrgewinde: ein Dichtring auf der Fläche dichtet es. Mit dem Drehmoment des Herstellers für diese Dichtung anziehen; eine Klemmkraft wird hier nicht gerechnet.";
    /// What a taper pipe thread is; the turns by hand and by wrench.
    pub taper_pipe_thread_with_turns(hand, wrench) = "Taper pipe thread: it seals and stops by wedging, so it is made up by turns, \
        about {hand} by hand and {wrench} more by wrench, never backed off to line up. \
        A torque or clamp says nothing here.",
        "Konisches Rohrgewinde: es dichtet und hält durch Keilwirkung, also wird nach Umdrehungen angezogen, \
        etwa {hand} von Hand und {wrench} weitere mit dem Schlüssel, nie zum Ausrichten zurückgedreht. \
        Drehmoment oder Klemmkraft sagen hier nichts.";
    /// What a taper pipe thread is.
    pub taper_pipe_thread = "Taper pipe thread: it seals and stops by wedging, so it is made up by \
        turns, not by torque. A torque or clamp says nothing here.",
        "Konisches Rohrgewinde: es dichtet und hält durch Keilwirkung, also wird nach \
        Umdrehungen angezogen, nicht nach Drehmoment. Drehmoment oder Klemmkraft sagen hier nichts.";

    /// What a thread is for.
    pub clamp_joint = "clamp joint", "Klemmverbindung";
    /// What a thread is for.
    pub spark_plug = "spark plug", "Zündkerze";
    /// What a thread is for.
    pub drain_plug = "drain plug", "Ablassschraube";
    /// What a thread is for.
    pub brake_line = "brake line", "Bremsleitung";
    /// What a thread is for.
    pub banjo_bolt = "banjo bolt", "Hohlschraube";
    /// What a thread is for.
    pub wheel_stud = "wheel stud", "Radbolzen";
    /// What a thread is for.
    pub sensor = "sensor", "Sensor";
    /// Why no clamp is worked out.
    pub spark_plug_seals = "A spark plug seals on a crushed washer or a cone: the maker's torque or angle \
        for that seat holds, dry unless the maker says otherwise.",
        "Eine Zündkerze dichtet auf einem Dichtring oder Kegel: Drehmoment oder Winkel des Herstellers für diesen Sitz gilt, trocken, wenn der Hersteller nichts anderes sagt.";
    /// Why no clamp is worked out.
    pub drain_plug_presses = "A drain plug presses a washer or ring against the pan: the maker's torque for \
        that washer holds. More clamp only strips the pan.",
        "Eine Ablassschraube drückt einen Dichtring gegen die Wanne: das Drehmoment des Herstellers für diesen Dichtring gilt. Mehr Klemmkraft reißt nur das Gewinde der Wanne aus.";
    /// Why no clamp is worked out.
    pub flare_nut_presses = "A flare nut presses a flare into its seat and turns on the pipe: the maker's \
        torque holds, and the proof is a pressure hold, not a clamp.",
        "Eine Überwurfschraube drückt den Bördel in seinen Sitz und dreht sich auf der Leitung: das Drehmoment \
        des Herstellers gilt, und der Nachweis ist gehaltener Druck, keine Klemmkraft.";
    /// Why no clamp is worked out.
    pub banjo_is_weaker = "A banjo bolt is drilled through and crushes two washers: it is weaker than a \
        solid bolt of its size. New washers and the maker's torque.",
        "Eine Hohlschraube ist durchbohrt und quetscht zwei Dichtringe: sie ist schwächer als eine volle Schraube ihrer Größe. Neue Dichtringe und das Drehmoment des Herstellers.";
    /// Why no clamp is worked out.
    pub wheel_nut_seats = "A wheel nut seats on a cone or ball: the friction under it is not that of a \
        flat head. The maker's torque holds, by hand, in a star, and again after distance.",
        "Eine Radmutter sitzt auf Kegel oder Kugel: die Reibung darunter ist nicht die eines flachen Kopfes. Das Drehmoment des Herstellers gilt, von Hand, über Kreuz, und nach kurzer Strecke nachziehen.";
    /// Why no clamp is worked out.
    pub sensor_seals = "A sensor seals on a washer or a cone and is no bolt: the maker's torque holds, and \
        the maker's word on paste, which may be on it already.",
        "Ein Sensor dichtet auf einem Dichtring oder Kegel und ist keine Schraube: das Drehmoment des Herstellers gilt, und was der Hersteller zur Paste sagt; sie kann schon drauf sein.";

    /// What a joint holds.
    pub a_brake = "a brake", "eine Bremse";
    /// What a joint holds.
    pub the_steering = "the steering", "die Lenkung";
    /// What a joint holds.
    pub the_suspension = "the suspension", "das Fahrwerk";
    /// What a joint holds.
    pub a_wheel = "a wheel", "ein Rad";
    /// What a joint holds.
    pub a_seat = "a seat", "einen Sitz";
    /// What a joint holds.
    pub a_seat_belt = "a seat belt", "einen Sicherheitsgurt";
    /// What a joint holds.
    pub an_airbag = "an airbag", "einen Airbag";
    /// What a joint holds.
    pub fuel = "fuel", "Kraftstoff";
    /// What a joint holds.
    pub a_tow_bar = "a tow bar or towing eye", "eine Anhängerkupplung oder Abschleppöse";
    /// What a joint holds.
    pub high_voltage = "high voltage", "Hochvolt";
    /// What a joint holds.
    pub a_drive_shaft = "a drive shaft", "eine Antriebswelle";
    /// What a joint holds.
    pub a_spark_plug = "a spark plug", "eine Zündkerze";
    /// What a joint holds.
    pub a_drain_plug = "a drain plug", "eine Ablassschraube";
    /// What a joint holds.
    pub a_banjo_fitting = "a banjo fitting", "einen Ringanschluss mit Hohlschraube";
    /// What a joint holds.
    pub a_pipe_thread = "a pipe thread", "ein Rohrgewinde";
    /// What a joint holds.
    pub a_sensor = "a sensor", "einen Sensor";
    /// What a joint holds.
    pub the_exhaust = "the exhaust", "die Abgasanlage";
    /// What a joint holds.
    pub none_of_these = "none of these: a cover, a housing, a bracket", "nichts davon: ein Deckel, ein Gehäuse, ein Halter";

    /// Kind of head.
    pub hex = "hex", "Sechskant";
    /// Kind of head.
    pub old_hex = "old hex", "Sechskant alt";
    /// Kind of head.
    pub small_hex = "small hex", "Sechskant klein";
    /// Kind of head.
    pub flange = "flange", "Flansch";
    /// Kind of head.
    pub heavy_flange = "heavy flange", "Flansch schwer";
    /// Kind of head.
    pub socket_cap = "socket cap", "Innensechskant";
    /// Kind of head.
    pub torx_cap = "torx cap", "Innentorx";
    /// Kind of head.
    pub twelve_point_socket = "12-point socket", "Innenvielzahn";
    /// Kind of head.
    pub inch_hex = "inch hex", "Sechskant Zoll";
    /// Kind of head.
    pub inch_flange = "inch flange", "Flansch Zoll";
    /// Name of a wrench: its size.
    pub twelve_point(size) = "12-point {size}", "Vielzahn {size}";

    /// A share of thread, by ISO.
    pub percent_of_iso = "percent of the ISO engagement (5/8 H)", "Prozent der ISO-Überdeckung (5/8 H)";
    /// A share of thread, as US charts have it.
    pub percent_as_in_us_charts = "percent as in US charts (3/4 H)", "Prozent wie in US-Tabellen (3/4 H)";

    /// A metal.
    pub aluminium = "aluminium", "Aluminium";
    /// A metal.
    pub die_cast_aluminium = "die-cast aluminium", "Aluminium-Druckguss";
    /// A metal; its alloy.
    pub die_cast(alloy) = "{alloy} die cast", "{alloy} Druckguss";
    /// A metal; its alloy.
    pub sand_cast(alloy) = "{alloy} sand cast", "{alloy} Sandguss";
    /// A metal; its alloy.
    pub permanent_mould(alloy) = "{alloy} permanent mould", "{alloy} Kokillenguss";
    /// A metal; its alloy.
    pub magnesium(alloy) = "magnesium {alloy}", "Magnesium {alloy}";
    /// A metal.
    pub grey_iron = "grey iron", "Grauguss";
    /// A metal; its class in numbers.
    pub grey_iron_class(class) = "grey iron class {class}", "Grauguss Klasse {class}";
    /// A metal; its grade.
    pub grey_iron_of(grade) = "grey iron {grade}", "Grauguss {grade}";
    /// A metal.
    pub ductile_iron = "ductile iron", "Sphäroguss";
    /// A metal; its grade.
    pub ductile_iron_of(grade) = "ductile iron {grade}", "Sphäroguss {grade}";
    /// A metal.
    pub steel = "steel", "Stahl";
    /// A material.
    pub plastic = "plastic", "Kunststoff";
    /// A note on a metal.
    pub taken_as_a356 = "alloy not stated: taken as sand-cast A356-T6, the weakest of the list",
        "Legierung nicht genannt: als Sandguss A356-T6 gerechnet, die schwächste der Liste";
    /// A note on a metal.
    pub taken_as_a413 = "alloy not stated: taken as A413, the weakest of the die-cast list",
        "Legierung nicht genannt: als A413 gerechnet, die schwächste der Druckgussliste";
    /// A note on a metal.
    pub shear_not_printed = "shear not printed in the source: taken as 0.6 of tensile",
        "Scherfestigkeit steht nicht in der Quelle: mit 0,6 der Zugfestigkeit gerechnet";
    /// A note on a metal.
    pub taken_as_class_25 = "class not stated: taken as class 25", "Klasse nicht genannt: als Klasse 25 gerechnet";
    /// A note on a metal.
    pub taken_as_gjs_400 = "grade not stated: taken as EN-GJS-400, the weakest of the list",
        "Sorte nicht genannt: als EN-GJS-400 gerechnet, die schwächste der Liste";
    /// A note on plastic.
    pub plastic_is_given_no_clamp = "a thread cut in plastic is given no clamp here",
        "für ein Gewinde in Kunststoff wird hier keine Klemmkraft genannt";
}
