//! A whole screw that does not turn.

use phrases::phrases;

phrases! {
    /// Caution, read first, before a seized bolt is pulled at.
    pub eye_protection_and_pull_towards_you = "Eye protection. Pull towards you on a wrench, with room for the hand if it lets go.",
        "Schutzbrille. Am Schlüssel zu sich her ziehen, mit Platz für die Hand, falls er abrutscht.";
    /// Caution before a seized bolt is pulled at: the vehicle on a lift.
    pub vehicle_moves_on_the_lift = "A vehicle on a lift moves when a seized bolt is pulled at: support it as the makers say.",
        "Ein Fahrzeug auf der Bühne bewegt sich, wenn an einer festgegangenen Schraube gezogen wird: abstützen, wie die Hersteller es sagen.";
    /// Caution: flame and sparks.
    pub no_flame_near = "No flame, sparks or heat near fuel, brake fluid, oil, a battery, seals, plastic, wires or an \
        airbag; a fire extinguisher at hand.",
        "Keine Flamme, Funken oder Hitze nahe Kraftstoff, Bremsflüssigkeit, Öl, Batterie, Dichtungen, Kunststoff, Kabeln oder \
        Airbag; Feuerlöscher griffbereit.";
    /// Caution, the last one: what comes before this page.
    pub makers_instructions_come_first = "The vehicle maker's instructions, local rules and licensed practice come before this page.",
        "Die Anleitung des Fahrzeugherstellers, örtliche Vorschriften und zugelassene Praxis gehen dieser Seite vor.";
    /// Caution where the part is magnesium.
    pub magnesium_burns_no_welding = "Magnesium: its chips burn, and water makes it worse. No flame, no welding; \
        dry sand or a class D extinguisher at hand.",
        "Magnesium: die Späne brennen, und Wasser macht es schlimmer. Keine Flamme, kein Schweißen; \
        trockener Sand oder ein Löscher der Klasse D griffbereit.";
    /// Caution where people are hurt if the joint lets go.
    pub people_are_hurt_put_in_a_new_one = "People are hurt if this joint lets go: put in a new one as the maker says, \
        never the one that was heated, hit or gripped.",
        "Menschen kommen zu Schaden, wenn diese Verbindung loslässt: eine neue einsetzen, wie der Hersteller es sagt, \
        nie die, die erhitzt, geschlagen oder mit der Zange gepackt wurde.";
    /// Whether a rounded screw goes back in.
    pub its_head_is_gone = "Its head is gone: a new one goes in, of the same size and class.",
        "Der Kopf ist hin: eine neue kommt rein, gleiche Größe und Festigkeitsklasse.";
    /// Whether a screw that was stuck goes back in.
    pub heated_one_has_lost_its_strength = "One that was heated, welded on or hit has lost its strength: a new one goes in. \
        Another goes back only if its thread and head are sound and the maker lets it.",
        "Eine, die erhitzt, angeschweißt oder geschlagen wurde, hat ihre Festigkeit verloren: eine neue kommt rein. \
        Sonst kommt sie nur zurück, wenn Gewinde und Kopf in Ordnung sind und der Hersteller es zulässt.";

    /// A way to get a seized screw out, by name.
    pub oil_time_and_a_blow = "oil, time and a blow", "Öl, Zeit und ein Schlag";
    /// How, under "oil, time and a blow".
    pub brush_oil_and_wait = "wire-brush the thread that shows, penetrating oil, and wait; keep oil off brake linings and rubber",
        "sichtbares Gewinde mit der Drahtbürste reinigen, Rostlöser drauf und warten; kein Öl an Bremsbeläge und Gummi";
    /// How, under "oil, time and a blow".
    pub sharp_blow_along_the_screw = "a sharp blow along the screw with a punch on its head, not on a thin cover",
        "ein harter Schlag in Richtung der Schraube, mit dem Durchschlag auf den Kopf, nicht auf einem dünnen Deckel";
    /// How, under "oil, time and a blow".
    pub oil_from_the_other_end = "oil again from the other end, where that shows",
        "noch einmal Rostlöser vom anderen Ende, wo es zugänglich ist";
    /// Follows "Stop when".
    pub does_not_move_after_second_soak = "it does not move after the second soak",
        "sie sich nach dem zweiten Einwirken nicht bewegt";

    /// A way to get a seized screw out, by name.
    pub tighten_a_little_then_to_and_fro = "tighten a little, then to and fro", "etwas anziehen, dann hin und her";
    /// How, under "tighten a little".
    pub exact_tool_fully_seated = "a six-point socket or the exact bit, fully seated, the wrench square to it",
        "Sechskantnuss oder genau passender Bit, ganz aufgesetzt, der Schlüssel rechtwinklig dazu";
    /// How, under "tighten a little".
    pub few_degrees_tighter_first = "a few degrees tighter first, then back; small angles, oil between",
        "erst ein paar Grad fester, dann zurück; kleine Winkel, Öl dazwischen";
    /// How, under "tighten a little".
    pub moves_and_then_binds = "when it moves and then binds, go back in: rust in the thread jams it",
        "bewegt sie sich und klemmt dann, wieder hineindrehen: Rost im Gewinde klemmt";
    /// Follows "Stop when".
    pub feels_soft_or_springs_back = "it feels soft or springs back: it is twisting off",
        "sie sich weich anfühlt oder zurückfedert: sie dreht gerade ab";

    /// A way to get a seized screw out, by name.
    pub heat_the_part_around_it = "heat the part around it", "das Teil rundherum erhitzen";
    /// How, under heat.
    pub heat_the_part_not_the_screw = "heat the part around it, not the screw: an induction coil or hot air before a flame",
        "das Teil rundherum erhitzen, nicht die Schraube: Induktion oder Heißluft vor der Flamme";
    /// How, under heat.
    pub let_it_cool_oil_to_and_fro = "let it cool, oil, then to and fro; once more if it helps",
        "abkühlen lassen, Öl, dann hin und her; noch einmal, wenn es hilft";
    /// How, under heat.
    pub thread_locker_lets_go = "thread locker lets go at about 250 \u{b0}C: warm it through, and turn it while warm",
        "Schraubensicherungslack löst sich bei etwa 250 \u{b0}C: durchwärmen und warm drehen";
    /// Follows "Stop when".
    pub something_nearby_smokes = "paint, rubber or grease nearby begins to smoke",
        "Lack, Gummi oder Fett daneben zu rauchen beginnt";

    /// A way to get a seized screw out, by name.
    pub short_blows_of_an_impact_wrench = "short blows of an impact wrench", "kurze Schläge mit dem Schlagschrauber";
    /// How, under the impact wrench.
    pub impact_socket_least_setting = "an impact socket, the least setting first, short bursts, left and right in turn",
        "Schlagschraubernuss, erst die kleinste Stufe, kurze Stöße, abwechselnd links und rechts";
    /// How, under the impact wrench.
    pub hand_impact_driver = "a hand impact driver for a recess", "Handschlagschrauber für Innenantriebe";
    /// Follows "Stop when".
    pub head_turns_thread_does_not = "the head turns and the thread does not",
        "der Kopf sich dreht und das Gewinde nicht";
    /// Why no impact wrench.
    pub blows_tear_the_thread_out = "into a light metal or plastic the blows tear the thread out before the screw lets go",
        "in Leichtmetall oder Kunststoff reißen die Schläge das Gewinde aus, bevor die Schraube loslässt";

    /// A way to get a rounded screw out, by name.
    pub six_point_socket_driven_on = "a six-point socket, driven on", "Sechskantnuss, aufgeschlagen";
    /// How, under the socket driven on.
    pub clean_the_head = "clean the head, file the burrs off", "Kopf reinigen, Grat abfeilen";
    /// How, under the socket driven on.
    pub next_smaller_socket = "the next smaller six-point socket, metric or inch, driven on with a hammer",
        "die nächstkleinere Sechskantnuss, metrisch oder Zoll, mit dem Hammer aufschlagen";
    /// How, under the socket driven on.
    pub turn_slowly_socket_held_on = "turn slowly, the socket held on", "langsam drehen, die Nuss dabei aufdrücken";
    /// Follows "Stop when".
    pub slips_once = "it slips once: the next try only rounds it more",
        "sie einmal abrutscht: der nächste Versuch dreht den Kopf nur runder";

    /// A way to get a rounded screw out, by name.
    pub gripping_socket = "a gripping socket with a reverse spiral", "Ausdrehnuss mit Linksdrall";
    /// How, under the gripping socket.
    pub one_a_little_smaller_driven_on = "one a little smaller than what is left of the head, driven on",
        "eine etwas kleinere als das, was vom Kopf übrig ist, aufschlagen";
    /// How, under the gripping socket.
    pub by_hand_it_bites_deeper = "by hand, not with an impact wrench: it bites deeper as it turns",
        "von Hand, nicht mit dem Schlagschrauber: sie beißt sich beim Drehen tiefer ein";
    /// Follows "Stop when".
    pub head_shears_or_spiral_slips = "the head shears or the spiral no longer bites",
        "der Kopf abschert oder der Drall nicht mehr greift";

    /// A way to get a rounded screw out, by name.
    pub next_larger_bit = "the next larger bit, driven in", "der nächstgrößere Bit, eingeschlagen";
    /// How, under the larger bit.
    pub clean_the_recess = "clean the recess to its bottom", "die Aufnahme bis zum Grund reinigen";
    /// How, under the larger bit.
    pub star_bit_a_little_larger = "a star bit a little larger than the recess, driven in with a hammer",
        "einen etwas größeren Torx-Bit mit dem Hammer in die Aufnahme schlagen";
    /// How, under the larger bit.
    pub turn_slowly_bit_pressed_in = "turn slowly with the bit pressed in", "langsam drehen, den Bit dabei hineindrücken";
    /// Follows "Stop when".
    pub bit_turns_in_the_recess = "the bit turns in the recess", "der Bit in der Aufnahme durchdreht";

    /// A way to get a rounded screw out, by name.
    pub slot_or_two_flats = "a slot, or two flats", "ein Schlitz oder zwei Flächen";
    /// How, under the slot.
    pub cut_a_slot = "cut a slot across the head for the widest screwdriver, or file two flats for a wrench",
        "einen Schlitz quer über den Kopf für den breitesten Schraubendreher sägen, oder zwei Flächen für einen Schlüssel feilen";
    /// How, under the slot.
    pub cover_from_filings = "cover what the filings fall into", "abdecken, wohin die Feilspäne fallen";
    /// Follows "Stop when".
    pub side_of_the_slot_breaks = "a side of the slot breaks away", "eine Flanke des Schlitzes wegbricht";

    /// A way to get a seized screw out, by name.
    pub weld_a_nut_on_the_head = "weld a nut on the head", "eine Mutter auf den Kopf schweißen";
    /// How, under welding.
    pub disconnect_the_battery = "disconnect the battery and what the maker names; earth beside the screw",
        "Batterie abklemmen und was der Hersteller nennt; Masse direkt neben der Schraube";
    /// How, under welding.
    pub nut_welded_from_inside = "a nut on the head, welded from inside outwards; the heat does half the work",
        "eine Mutter auf den Kopf, von innen nach außen verschweißt; die Hitze macht die halbe Arbeit";
    /// How, under welding.
    pub cool_until_touched = "let it cool until it can be touched, oil, then to and fro",
        "abkühlen lassen, bis man sie anfassen kann, Öl, dann hin und her";
    /// Follows "Stop when".
    pub second_nut_tears_off = "the second nut tears off", "die zweite Mutter abreißt";

    /// A way to get a seized screw out, by name.
    pub locking_pliers_or_chisel = "locking pliers, or a chisel on the edge", "Gripzange, oder ein Meißel an der Kante";
    /// How, under the pliers.
    pub locking_pliers_as_tight_as_they_go = "locking pliers across the head, as tight as they go",
        "Gripzange über den Kopf, so fest sie geht";
    /// How, under the pliers.
    pub blunt_chisel_at_the_edge = "or a blunt chisel at the head's edge, struck in the sense that loosens",
        "oder ein stumpfer Meißel an der Kopfkante, in Löserichtung geschlagen";
    /// Follows "Stop when".
    pub head_tears_without_turning = "the head tears without turning", "der Kopf einreißt, ohne sich zu drehen";

    /// A way to get a seized screw out, by name; the last one.
    pub take_the_head_off = "take the head off", "den Kopf abnehmen";
    /// How, under taking the head off.
    pub drill_down_the_head = "drill down the middle of the head to the shank's diameter, then knock the head off; split a nut",
        "den Kopf in der Mitte auf Schaftdurchmesser aufbohren und abschlagen; eine Mutter sprengen";
    /// How, under taking the head off.
    pub part_comes_off_load_is_off = "the part comes off, the load is off the thread, and what stands proud can often be turned by hand or gripped",
        "das Teil geht ab, das Gewinde ist entlastet, und was vorsteht, lässt sich oft von Hand oder mit der Zange drehen";
    /// How, under taking the head off.
    pub from_there_it_is_snapped = "from there it is a snapped bolt: say so on this page",
        "ab da ist es eine abgerissene Schraube: hier auf der Seite sagen";
    /// Follows "Stop when".
    pub drill_leaves_the_head = "the drill leaves the head on one side", "der Bohrer seitlich aus dem Kopf läuft";

    /// Why no heat.
    pub magnesium_burns = "magnesium burns", "Magnesium brennt";
    /// Why no heat.
    pub plastic_melts = "plastic melts", "Kunststoff schmilzt";
    /// Why no heat.
    pub fuel_is_near = "fuel is near", "Kraftstoff ist in der Nähe";
    /// Why no heat.
    pub airbag_or_tensioner_is_near = "an airbag or a belt tensioner is near", "ein Airbag oder Gurtstraffer ist in der Nähe";
    /// Why no heat.
    pub high_voltage_is_near = "high voltage is near", "Hochvolt ist in der Nähe";
    /// Why no heat.
    pub heat_would_hurt_or_nobody_looked = "heat or sparks would hurt something near, or nobody looked",
        "Hitze oder Funken würden etwas in der Nähe beschädigen, oder niemand hat nachgesehen";
}
