//! Torque, clamp, strength and what gives way.

use phrases::phrases;

phrases! {
    /// A refusal: no face is listed; the head and the thread.
    pub no_head_listed(head, thread) = "no {head} head of {thread} is listed; give the diameter of the face under the head",
        "kein Kopf „{head}“ für {thread} ist gelistet; Durchmesser der Auflage unter dem Kopf angeben";
    /// A refusal: no hole is listed; the thread.
    pub no_clearance_hole_listed(thread) = "no clearance hole for {thread} is listed; give the hole under the head",
        "kein Durchgangsloch für {thread} ist gelistet; das Loch unter dem Kopf angeben";
    /// A refusal: the face and the hole.
    pub bears_on_nothing(face, hole) = "a face of {face} mm on a hole of {hole} mm bears on nothing; \
        the face must be larger",
        "eine Auflage von {face} mm auf einem Loch von {hole} mm liegt nirgends auf; \
        die Auflage muss größer sein";
    /// A refusal: what, its value, the least and the most.
    pub outside_of(what, value, least, most) = "a {what} of {value} is outside {least} to {most}; check it",
        "{what} {value} liegt außerhalb {least} bis {most}; prüfen";
    /// What is out of range, in a refusal.
    pub coefficient_of_friction = "coefficient of friction", "Reibungszahl";
    /// What is out of range in a refusal, and a line of a working.
    pub torque = "torque", "Drehmoment";
    /// What is out of range, in a refusal.
    pub length_of_wrench = "length of wrench", "Schlüssellänge";
    /// What is out of range, in a refusal.
    pub length_of_second_wrench = "length of second wrench", "Länge des zweiten Schlüssels";
    /// What is out of range, in a refusal.
    pub length_of_adapter = "length of adapter", "Länge des Adapters";
    /// What is out of range, in a refusal.
    pub angle = "angle", "Winkel";
    /// What is out of range, in a refusal.
    pub lever_with_its_adapter = "lever with its adapter", "Hebel mit Adapter";
    /// What is out of range, in a refusal.
    pub lever = "lever", "Hebel";
    /// What is out of range, in a refusal.
    pub overlap = "overlap", "Überdeckung";
    /// What is out of range, in a refusal.
    pub torque_of_the_bolt = "torque of the bolt", "Drehmoment der Schraube";
    /// What is out of range, in a refusal.
    pub bolt_circle_radius = "bolt circle radius", "Lochkreisradius";
    /// What is out of range, in a refusal.
    pub pulley_radius = "pulley radius", "Scheibenradius";
    /// What is out of range, in a refusal.
    pub belt_tension = "belt tension", "Riemenspannung";
    /// What is out of range, in a refusal.
    pub wrap = "wrap", "Umschlingung";
    /// What is out of range, in a refusal.
    pub friction_in_the_grooves = "friction in the grooves", "Reibung in den Rillen";

    /// Title of a working; the thread.
    pub torque_of(thread) = "Torque of {thread}", "Drehmoment für {thread}";
    /// A line of a working.
    pub clamp = "clamp", "Klemmkraft";
    /// A line of a working.
    pub pitch_term = "pitch term", "Steigungsanteil";
    /// A line of a working.
    pub thread_friction = "thread friction", "Gewindereibung";
    /// A line of a working.
    pub friction_under_the_head = "friction under the head", "Reibung unter dem Kopf";
    /// Limit of a working.
    pub not_a_specification = "Not a specification: the maker's torque overrides it.",
        "Keine Vorgabe: das Drehmoment des Herstellers geht vor.";
    /// A remark wherever torque meets oil.
    pub dry_is_not_oiled = "A torque given for dry threads overloads oiled ones, and one \
        given for oiled threads leaves dry ones loose: use the state that the maker names.",
        "Ein Drehmoment für trockene Gewinde überlastet geölte, und eines \
        für geölte lässt trockene locker: den Zustand nehmen, den der Hersteller nennt.";

    /// What becomes of a bolt.
    pub slick_threads_begin_to_yield = "with the slickest threads the bolt begins to yield",
        "bei der kleinsten Reibung beginnt die Schraube sich zu strecken";
    /// What becomes of a bolt.
    pub the_bolt_yields = "the bolt yields: beyond that the clamp no longer follows the torque, and it is spent",
        "die Schraube streckt sich: darüber folgt die Klemmkraft dem Drehmoment nicht mehr, und sie ist überdehnt";
    /// What becomes of a bolt.
    pub slick_threads_break = "with the slickest threads the bolt breaks", "bei der kleinsten Reibung reißt die Schraube";
    /// What becomes of a bolt; also what fails first.
    pub the_bolt_breaks = "the bolt breaks", "die Schraube reißt";
    /// What fails first.
    pub the_bolts_thread_strips = "the bolt's thread strips", "das Gewinde der Schraube reißt aus";
    /// What fails first.
    pub the_thread_in_the_hole_strips = "the thread in the hole strips", "das Gewinde im Loch reißt aus";

    /// A line of a working.
    pub bolt_breaks = "bolt breaks", "Schraube reißt";
    /// Limit of a working.
    pub even_load_is_assumed = "Even load over the turns is assumed; threads of medium quality, not worn.",
        "Gleichmäßige Last über die Gänge ist angenommen; Gewinde mittlerer Güte, nicht verschlissen.";
    /// A line of a working.
    pub engagement_given_credit = "engagement given credit", "angerechnete Einschraubtiefe";
    /// What went into a line of a working.
    pub engaged = "engaged", "eingeschraubt";
    /// A note at that line.
    pub beyond_two_diameters = "beyond two diameters a light metal gains nothing",
        "über zwei Durchmesser hinaus gewinnt ein Leichtmetall nichts";
    /// A line of a working.
    pub thread_in_the_hole_strips = "thread in the hole strips", "Gewinde im Loch reißt aus";
    /// Title of a working; the thread and the metal.
    pub stripping_of(thread, metal) = "Stripping of {thread} in {metal}", "Ausreißen von {thread} in {metal}";
    /// A line of a working.
    pub shear_area_of_the_bolt = "shear area of the bolt's thread", "Scherfläche des Schraubengewindes";
    /// A line of a working.
    pub shear_area_of_the_hole = "shear area of the thread in the hole", "Scherfläche des Gewindes im Loch";
    /// A line of a working.
    pub bolts_thread_strips = "bolt's thread strips", "Gewinde der Schraube reißt aus";
    /// Unit of a shear area: for each millimetre of thread.
    pub mm2_per_mm = "mm² per mm", "mm² je mm";

    /// Title of a working; the thread and the class.
    pub loads_of(thread, class) = "Loads of {thread} {class}", "Lasten von {thread} {class}";
    /// A line of a working.
    pub proof_load = "proof load", "Prüfkraft";
    /// A line of a working.
    pub yield_load = "yield load", "Kraft an der Streckgrenze";
    /// A line of a working.
    pub breaking_load = "breaking load", "Bruchkraft";
    /// Formula of a load.
    pub stress_by_area = "stress·As", "Spannung·As";
    /// What went into a line of a working.
    pub stress = "stress", "Spannung";
    /// Limit of a working.
    pub new_bolt_pulled_straight = "New bolt, whole thread, pulled straight.", "Neue Schraube, volles Gewinde, gerade gezogen.";
    /// A refusal: no such class; what was written and what can be.
    pub no_strength_class(found, known) = "`{found}` is not a strength class; write one of {known}",
        "„{found}“ ist keine Festigkeitsklasse; eine von diesen schreiben: {known}";
    /// A refusal; what was written.
    pub nut_class_or_grade(found) = "`{found}` may be a nut class or an SAE grade; write `grade {found}` for SAE, or a class \
        such as 8.8",
        "„{found}“ kann eine Mutternklasse oder eine SAE-Klasse sein; „grade {found}“ für SAE schreiben, oder eine Klasse wie 8.8";
    /// A refusal; what was written.
    pub names_the_steel(found) = "{found} names the steel, not its strength; write {found}-50, {found}-70 or {found}-80, as \
        it stands on the head",
        "{found} nennt den Stahl, nicht seine Festigkeit; {found}-50, {found}-70 oder {found}-80 schreiben, wie \
        es auf dem Kopf steht";
    /// A refusal: the class, the thread, and what the class covers.
    pub class_does_not_cover(class, thread, covers) = "{class} does not cover {thread}: it covers {covers}",
        "{class} gilt nicht für {thread}, nur für {covers}";
    /// What a class covers.
    pub metric_threads_only = "metric threads; inch bolts have SAE grades", "metrische Gewinde; Zollschrauben haben SAE-Klassen";
    /// What a class covers.
    pub up_to_m16 = "up to M16", "bis M16";
    /// What a class covers.
    pub up_to_m24 = "up to M24", "bis M24";
    /// What a class covers.
    pub up_to_m39 = "up to M39", "bis M39";
    /// What a class covers.
    pub inch_threads_of = "inch threads of 1/4 to 1-1/2 in", "Zollgewinde von 1/4 bis 1-1/2 in";

    /// Title of a working.
    pub wrench_with_an_adapter = "Torque wrench with an adapter", "Drehmomentschlüssel mit Adapter";
    /// A line of a working.
    pub setting = "setting", "Einstellung";
    /// A remark in a working.
    pub across_needs_no_correction = "Across the wrench, at 90°, an adapter needs no correction.",
        "Quer zum Schlüssel, bei 90°, braucht ein Adapter keine Korrektur.";
    /// Limit of a working.
    pub hand_at_the_grip = "The hand must pull at the middle of the grip.", "Die Hand muss in der Mitte des Griffs ziehen.";
    /// How to hold the wrench at a pulley.
    pub wrench_across = "Put the wrench on so that its handle reaches across the pulley's \
        axis; straight outwards it turns the pulley most. Crack the bolts before the belt comes off, \
        tighten them after it is back.",
        "Den Schlüssel so ansetzen, dass der Griff über die Achse der Scheibe \
        reicht; gerade nach außen dreht er die Scheibe am meisten. Schrauben lösen, bevor der Riemen abkommt, \
        und anziehen, wenn er wieder drauf ist.";

    /// A refusal; how many bolts, and the most.
    pub no_pattern(bolts, most) = "{bolts} bolts make no pattern; between 2 and {most} do",
        "{bolts} Schrauben ergeben kein Schraubenbild; 2 bis {most} schon";
    /// A refusal; which pass.
    pub pass_is_not_above(nth) = "pass {nth} is not above the one before it and at most 1; list shares such as 0.5, 1",
        "Durchgang {nth} liegt nicht über dem davor und höchstens bei 1; Anteile wie 0.5, 1 angeben";

    /// State of threads: the finish and how they are lubricated.
    pub finish_and_state(finish, state) = "{finish}, {state}", "{finish}, {state}";
    /// Finish of a thread.
    pub plain_steel = "plain steel", "Stahl blank";
    /// Finish of a thread.
    pub zinc = "zinc", "verzinkt";
    /// Finish of a thread.
    pub stainless = "stainless", "rostfrei";
    /// How a thread is lubricated.
    pub dry = "dry", "trocken";
    /// How a thread is lubricated.
    pub oiled = "oiled", "geölt";
    /// How a thread is lubricated.
    pub with_paste = "with paste", "mit Paste";
}
