//! A stub and the way out of its hole.

use phrases::phrases;

phrases! {
    /// A refusal: a size of a stub; what it is, the size, the least and the most.
    pub stub_size_must_lie_between(what, value, least, most) =
        "{what} is {value}; it must lie between {least} and {most}",
        "{what} ist {value}, möglich ist {least} bis {most}";
    /// What is out of range, in the refusal of a stub's size.
    pub engaged_length_in_mm = "engaged length in mm", "Einschraubtiefe in mm";
    /// What is out of range, in the refusal of a stub's size.
    pub depth_of_the_hole_in_mm = "depth of the hole in mm", "Lochtiefe in mm";
    /// What is out of range, in the refusal of a stub's size.
    pub tilt_in_degrees = "tilt in degrees", "Schräge in Grad";
    /// What is out of range, in the refusal of a stub's size.
    pub distance_from_the_face_in_mm = "distance from the face in mm", "Abstand von der Fläche in mm";

    /// A way to get a stub out, by name.
    pub grip_the_stub = "grip the stub", "den Rest packen";
    /// A way to get a stub out, by name.
    pub weld_a_nut_on = "weld a nut on", "eine Mutter aufschweißen";
    /// A way to get a stub out, by name.
    pub left_hand_drills = "left-hand drills", "Linksbohrer";
    /// A way to get a stub out that has a left-hand thread, by name.
    pub right_hand_drills = "right-hand drills", "Rechtsbohrer";
    /// A way to get a stub out, by name.
    pub drill_to_the_thread = "drill to the thread and pick it out", "bis ans Gewinde bohren und auskratzen";
    /// A way to get a stub out, by name.
    pub tapered_extractor = "tapered extractor", "konischer Linksausdreher";
    /// A way to get a stub out, by name.
    pub drill_for_a_thread_repair = "drill for a thread repair", "für eine Gewindereparatur aufbohren";
    /// A way to get a stub out, by name.
    pub send_it_out = "send it out", "außer Haus geben";

    /// Caution, read first, before a stub is drilled.
    pub eyes_and_gloves_off = "Eye protection, and gloves off near a turning drill.",
        "Schutzbrille, und keine Handschuhe am laufenden Bohrer.";
    /// Caution before a stub is drilled.
    pub know_what_lies_behind = "Know what lies behind and below the hole before drilling: coolant, oil, wires, a bore.",
        "Vor dem Bohren wissen, was hinter und unter dem Loch liegt: Kühlmittel, Öl, Kabel, eine Bohrung.";
    /// Caution before a stub is heated or welded.
    pub no_flame_near_and_disconnect = "No flame, sparks or heat near fuel, its lines and vapours, a battery, seals, plastic or an \
        airbag; disconnect electronics before welding.",
        "Keine Flamme, Funken oder Hitze nahe Kraftstoff, seinen Leitungen und Dämpfen, Batterie, Dichtungen, Kunststoff oder \
        Airbag; vor dem Schweißen die Elektronik abklemmen.";
    /// Caution before a stub is drilled.
    pub hardened_tools_shatter = "Hardened taps, extractors and drills shatter: shield the eyes, never strike them.",
        "Gehärtete Gewindebohrer, Ausdreher und Bohrer zersplittern: Augen schützen, nie daraufschlagen.";
    /// Caution where the hole has a bottom.
    pub blind_hole_must_be_dry = "The hole is blind: it must be dry, or oil trapped under the stub bursts it.",
        "Sackloch: es muss trocken sein, sonst sprengt es eingeschlossenes Öl unter dem Rest.";
    /// Caution where the stub has a left-hand thread.
    pub left_hand_stub = "A left-hand stub comes out clockwise: ordinary right-hand drills, running \
        forward, and an extractor made for left-hand threads. A left-hand drill in reverse drives it \
        further in.",
        "Ein Rest mit Linksgewinde kommt im Uhrzeigersinn heraus: normale Rechtsbohrer, vorwärts \
        laufend, und ein Ausdreher für Linksgewinde. Ein Linksbohrer rückwärts treibt ihn \
        weiter hinein.";
    /// Caution where the part is magnesium.
    pub magnesium_slow_and_sharp = "Magnesium: its chips burn, and water makes it worse. No flame, no welding, \
        sharp drills, slow; dry sand or a class D extinguisher at hand.",
        "Magnesium: die Späne brennen, und Wasser macht es schlimmer. Keine Flamme, kein Schweißen, \
        scharfe Bohrer, langsam; trockener Sand oder ein Löscher der Klasse D griffbereit.";
    /// Caution where people are hurt if the joint lets go.
    pub people_are_hurt_no_insert = "People are hurt if this joint lets go: once the stub is out, the maker's part \
        or a repair that the maker approves, no insert, bushing or larger thread of one's own choice.",
        "Menschen kommen zu Schaden, wenn diese Verbindung loslässt: ist der Rest heraus, nur das Teil vom Hersteller oder eine vom Hersteller freigegebene Reparatur, kein Einsatz, keine Buchse und kein größeres Gewinde nach eigener Wahl.";

    /// How, at a stud of an exhaust, before turning.
    pub heat_the_boss_not_the_stud = "heat the boss around the stud, not the stud, and let it cool once or twice before turning",
        "das Auge um den Stehbolzen erhitzen, nicht den Stehbolzen, und vor dem Drehen ein- oder zweimal abkühlen lassen";
    /// How, at a stud of an exhaust, after it is out.
    pub new_stud_with_nickel_compound = "a new stud and nut of the maker's grade, with the nickel compound that the maker names",
        "neuer Stehbolzen und neue Mutter in der Güte des Herstellers, mit der Nickelpaste, die der Hersteller nennt";
    /// How, under gripping: heat on magnesium.
    pub no_flame_on_magnesium = "no flame on magnesium: hot air at most, and only warm to the hand",
        "keine Flamme an Magnesium: höchstens Heißluft, und nur handwarm";
    /// How, under gripping: heat.
    pub warm_the_part_where_safe = "warm the part around it, not the stub, where heat is safe",
        "das Teil rundherum erwärmen, nicht den Rest, wo Hitze ungefährlich ist";
    /// How, under gripping.
    pub soak_and_take_oil_out_again = "soak with penetrating oil and wait; in a blind hole take the oil out again",
        "Rostlöser drauf und warten; aus einem Sackloch das Öl wieder herausholen";
    /// How, under gripping.
    pub stud_puller_to_and_fro = "stud puller or locking pliers, to and fro by small angles, oil between",
        "Stehbolzenausdreher oder Gripzange, in kleinen Winkeln hin und her, Öl dazwischen";
    /// Follows "Stop when", under gripping.
    pub twists_at_the_root = "it twists without turning at the root, or the jaws slip a second time",
        "er sich verdreht, ohne dass sich der Grund mitdreht, oder die Backen zum zweiten Mal rutschen";
    /// Why a stub cannot be gripped: how far it stands out, and how far it should.
    pub stands_proud_too_little(by, least) = "{by} stand proud, a tool needs about {least}",
        "{by} stehen vor, ein Werkzeug braucht etwa {least}";
    /// Why a stub cannot be gripped.
    pub nothing_stands_proud = "nothing stands proud to grip", "es steht nichts vor zum Packen";
    /// How, under welding.
    pub nut_one_size_up_welded = "a nut one size up over the stub, welded from inside outwards; steel does not stick to aluminium or iron beside it",
        "eine Mutter, eine Nummer größer, über den Rest, von innen nach außen verschweißt; Stahl haftet nicht an Aluminium oder Guss daneben";
    /// How, under welding.
    pub let_it_cool_heat_does_the_work = "let it cool until it can be touched: the heat does the work",
        "abkühlen lassen, bis man es anfassen kann: die Hitze macht die Arbeit";
    /// How, under welding.
    pub to_and_fro_by_small_angles = "to and fro by small angles, oil between", "in kleinen Winkeln hin und her, Öl dazwischen";
    /// What is left inside after a way.
    pub weld_spatter = "weld spatter", "Schweißspritzer";
    /// Follows "Stop when", under welding.
    pub two_nuts_torn_off = "two nuts have torn off", "zwei Muttern abgerissen sind";
    /// Why nothing is welded.
    pub no_room_to_weld = "no room to weld, or heat would hurt something near",
        "kein Platz zum Schweißen, oder Hitze würde etwas in der Nähe beschädigen";
    /// Why nothing is welded.
    pub no_welding_on_magnesium = "magnesium burns: no welding on it", "Magnesium brennt: daran wird nicht geschweißt";
    /// Why nothing is welded: how deep it sits.
    pub weld_bridges_to_the_part(by) = "{by} below the face the weld bridges to the part",
        "{by} unter der Fläche verbindet sich die Schweißung mit dem Teil";
    /// How, under drills, for a stub with a left-hand thread.
    pub right_hand_drills_forward = "ordinary right-hand drills, slow, running forward: it often walks out as the drill bites",
        "normale Rechtsbohrer, langsam, vorwärts laufend: oft läuft er heraus, wenn der Bohrer greift";
    /// How, under drills.
    pub left_hand_drills_in_reverse = "left-hand drills, slow, in reverse: it often walks out as the drill bites",
        "Linksbohrer, langsam, rückwärts laufend: oft läuft er heraus, wenn der Bohrer greift";
    /// How, under drills: finding the middle.
    pub centre_the_stub = "centre: file or grind the stub flat, a guide bush in the other part's hole or a turned one in the bore, then a punch",
        "zentrieren: den Rest plan feilen oder schleifen, Führungsbuchse im Loch des anderen Teils oder eine gedrehte in der Bohrung, dann körnen";
    /// What is left inside after a way.
    pub chips = "chips", "Späne";
    /// Follows "Stop when", under drills.
    pub drill_runs_off_the_axis = "the drill runs off the axis by more than is allowed at its step",
        "der Bohrer weiter aus der Mitte läuft, als auf seiner Stufe erlaubt ist";
    /// How, under drilling to the thread.
    pub up_to_the_largest_drill = "up to the largest drill that spares the thread",
        "bis zum größten Bohrer, der das Gewinde schont";
    /// How, under drilling to the thread.
    pub fold_the_shell_inwards = "fold the thin shell inwards with a pick and wind it out of the thread",
        "die dünne Hülse mit einer Reißnadel nach innen biegen und aus dem Gewinde drehen";
    /// How, under drilling to the thread.
    pub run_a_chaser_through = "run a chaser through, then try a new bolt by hand",
        "mit dem Nachschneider durchgehen, dann eine neue Schraube von Hand probieren";
    /// What is left inside after a way.
    pub thread_wire = "thread wire", "Gewindereste";
    /// Follows "Stop when", under drilling to the thread.
    pub parent_metal_shows = "parent metal shows on one side: the thread is lost, repair it",
        "auf einer Seite das Grundmaterial erscheint: das Gewinde ist verloren, reparieren";
    /// How, under the extractor.
    pub only_for_a_stub_that_turns_freely = "only for a stub that turns freely: a tapered extractor spreads the stub into its thread",
        "nur für einen Rest, der sich leicht dreht: ein konischer Ausdreher spreizt den Rest ins Gewinde";
    /// How, under the extractor, for a stub with a left-hand thread.
    pub extractor_for_left_hand_threads = "one made for left-hand threads: an ordinary one turns it further in",
        "einer für Linksgewinde: ein normaler dreht ihn weiter hinein";
    /// How, under the extractor.
    pub straight_fluted_one = "a straight, fluted one spreads it less", "ein gerader mit Rillen spreizt weniger";
    /// Follows "Stop when", under the extractor.
    pub it_creaks = "it creaks: a broken one is too hard for any drill and must be sent out",
        "es knackt: ein abgebrochener ist zu hart für jeden Bohrer und muss außer Haus";
    /// How, under drilling for a repair.
    pub give_the_thread_up = "give the thread up and drill for an insert or a bushing: see the thread repair",
        "das Gewinde aufgeben und für einen Einsatz oder eine Buchse aufbohren: siehe Gewindereparatur";
    /// Follows "Stop when", under drilling for a repair.
    pub wall_does_not_allow_it = "the wall or the depth does not allow it", "die Wand oder die Tiefe es nicht zulässt";
    /// Why no drilling for a repair.
    pub takes_the_makers_part = "what it holds takes the maker's part, or a repair that the maker approves",
        "was sie hält, verlangt das Teil vom Hersteller oder eine vom Hersteller freigegebene Reparatur";
    /// How, under sending it out.
    pub spark_erosion = "spark erosion takes out a stub, a tap or an extractor without touching the thread",
        "Funkenerosion holt einen Rest, einen Gewindebohrer oder einen Ausdreher heraus, ohne das Gewinde zu berühren";
    /// How, under sending it out.
    pub on_the_machine_shops_price = "on the machine shop's price and day, told to the customer first",
        "zu Preis und Termin des Instandsetzers, vorher dem Kunden gesagt";
    /// Follows "Stop when", under sending it out.
    pub price_passes_a_new_part = "the price of that passes the price of a new part", "das mehr kostet als ein Neuteil";
    /// Why nothing is drilled.
    pub no_drill_in_line = "a drill cannot be held in line with the hole", "ein Bohrer lässt sich nicht in Flucht mit dem Loch halten";
    /// Why nothing is drilled.
    pub no_drill_spares_the_thread = "with that tilt over that depth no drill spares the thread: use a guide bush",
        "bei dieser Schräge auf diese Tiefe schont kein Bohrer das Gewinde: Führungsbuchse nehmen";

    /// Title of the working; the thread.
    pub stub_of(thread) = "Stub of {thread}", "Rest von {thread}";
    /// A line of the working: minor diameter of the hole.
    pub minor_diameter = "minor diameter", "Kerndurchmesser";
    /// A line of the working: what the tilt takes.
    pub eaten_by_tilt = "eaten by tilt", "durch Schräge verloren";
    /// A line of the working: how far off the middle a drill may run; the drill.
    pub off_centre_allowed_at(drill) = "off-centre allowed at {drill}", "erlaubter Versatz bei {drill}";
    /// A line of the working.
    pub least_breaking_torque = "least breaking torque", "kleinstes Bruchdrehmoment";
    /// Limit of a breaking torque, wherever one is shown.
    pub only_new = "A new bolt in pure twist: no guide for a rusted, necked or cracked one.",
        "Neue Schraube, nur verdreht: kein Richtwert für eine verrostete, eingeschnürte oder angerissene.";
}
