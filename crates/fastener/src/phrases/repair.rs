//! The repair of a torn thread: its ways, steps, reasons and drawing.

use phrases::phrases;

phrases! {
    /// A way to mend a thread, by name.
    pub chase_the_thread = "chase the thread", "Gewinde nachschneiden";
    /// A way to mend a thread, by name.
    pub longer_bolt_into_sound_thread = "longer bolt into sound thread", "längere Schraube ins unbeschädigte Gewinde";
    /// A way to mend a thread, by name.
    pub wire_insert = "wire insert", "Drahtgewindeeinsatz";
    /// A way to mend a thread, by name.
    pub solid_bushing = "solid bushing", "Gewindebuchse";
    /// A way to mend a thread, by name.
    pub oversize_thread = "oversize thread", "größeres Gewinde";
    /// A way to mend a thread, by name.
    pub bolt_and_nut_through_the_hole = "bolt and nut through the hole", "Schraube mit Mutter durchs Loch";
    /// A way to mend a thread, by name.
    pub bushing_for_a_spark_plug = "bushing for a spark plug", "Buchse für die Zündkerze";
    /// A way to mend a thread, by name.
    pub bushing_for_a_sensor = "bushing for a sensor", "Buchse für den Sensor";
    /// A way to mend a thread of a drain plug, by name.
    pub oversize_plug = "oversize plug", "Übermaß-Ablassschraube";
    /// A way to mend a thread of a sensor, by name.
    pub new_bung_welded_in = "new bung, welded in", "neue Muffe, eingeschweißt";
    /// A way to mend a pipe thread, by name.
    pub next_larger_pipe_thread = "next larger pipe thread and a reducer", "nächstgrößeres Rohrgewinde mit Reduzierstück";
    /// A way to mend a joint, by name.
    pub the_makers_part = "the maker's part", "das Teil vom Hersteller";
    /// A way to mend a joint, by name.
    pub repair_the_maker_approves = "a repair that the maker approves", "eine vom Hersteller freigegebene Reparatur";
    /// A way to mend a thread, by name.
    pub new_housing = "new housing", "neues Gehäuse";
    /// A way to mend a thread of a spark plug, by name.
    pub new_cylinder_head = "new cylinder head", "neuer Zylinderkopf";
    /// A way to mend a thread of a drain plug, by name.
    pub new_pan = "new pan", "neue Ölwanne";
    /// A way to mend a thread, by name.
    pub new_part = "new part", "Neuteil";
    /// A way to mend a thread of a drain plug, by name.
    pub short_insert = "short insert", "kurzer Einsatz";

    /// What is left the next time, after a way.
    pub every_other_way_is_open = "every other way is still open", "jeder andere Weg ist noch offen";
    /// What is left the next time, after a way.
    pub insert_of_same_size_is_open = "an insert of the same size is still open", "ein Einsatz gleicher Größe ist noch möglich";
    /// What is left the next time, after a way.
    pub insert_can_be_changed = "the insert can be changed; a solid bushing may still fit",
        "der Einsatz lässt sich wechseln; eine Gewindebuchse passt vielleicht noch";
    /// What is left the next time, after a way.
    pub only_larger_bushing_or_new_part = "only a larger bushing or a new part is left",
        "nur noch eine größere Buchse oder ein Neuteil";
    /// What is left the next time, after a way.
    pub another_bolt_and_nut = "another bolt and nut; no thread is left in the part",
        "wieder Schraube und Mutter; im Teil ist kein Gewinde mehr";
    /// What is left the next time, after a way.
    pub bushing_where_the_wall_allows = "a bushing, where the wall allows it, or a new part",
        "eine Buchse, wo die Wand es zulässt, oder ein Neuteil";
    /// What is left the next time, after a way.
    pub another_bung = "another bung can be welded in", "es lässt sich noch einmal eine Muffe einschweißen";
    /// What is left the next time, after a way.
    pub only_a_new_part = "only a new part is left", "nur noch ein Neuteil";
    /// What is left the next time, after a way.
    pub what_the_maker_says = "what the maker says", "was der Hersteller sagt";
    /// What is left the next time, after a way.
    pub insert_of_the_larger_size = "an insert of the larger size, where the wall still allows it",
        "ein Einsatz der größeren Größe, wo die Wand es noch zulässt";
    /// What is left the next time, after a way.
    pub as_it_left_the_maker = "everything is as it left the maker", "alles ist wie ab Werk";

    /// A note: the wall has to be measured; how much must be left, around which hole.
    pub measure_the_wall(least, major) = "Measure the wall before drilling: {least:.1} mm must be left around {major:.1} mm.",
        "Vor dem Bohren die Wand messen: {least:.1} mm müssen um das Loch von {major:.1} mm stehen bleiben.";

    /// Title of a way and of its drawing: the thread, then the way.
    pub thread_and_way(thread, way) = "{thread}: {way}", "{thread}: {way}";
    /// Line of a working.
    pub torque_for_the_original_clamp = "torque for the original clamp", "Drehmoment für die ursprüngliche Klemmkraft";
    /// What went into a line of a working.
    pub friction = "friction", "Reibung";
    /// Line of a working.
    pub clamp_low_to_high = "clamp, low to high", "Klemmkraft, klein bis groß";
    /// A clamp in newtons: low, high, and what is expected.
    pub clamp_of(low, high, mid) = "{low:.0} to {high:.0} N, {mid:.0} N to expect", "{low:.0} bis {high:.0} N, zu erwarten {mid:.0} N";
    /// Line of a working.
    pub low_end_against_original = "low end against the original low end", "unteres Ende gegen das ursprüngliche untere Ende";
    /// Line of a working, and a size of the drawing.
    pub wall_left = "wall left", "Restwand";
    /// Formula of the wall left.
    pub wall_formula = "(boss − hole)/2", "(Auge − Loch)/2";
    /// What went into a line of a working.
    pub hole = "hole", "Loch";
    /// Note at the wall left.
    pub at_least_asked_for(least) = "at least {least:.1} mm are asked for", "verlangt sind mindestens {least:.1} mm";
    /// Limit of a working.
    pub sound_metal_no_crack = "Sound metal, no crack, even load over the turns.",
        "Einwandfreies Material, kein Riss, gleichmäßige Last über die Gänge.";
    /// Line of a working.
    pub thread_in_the_part_bears = "thread in the part bears", "Gewinde im Teil trägt";
    /// Line of a working.
    pub bolt_with_a_nut_bears = "bolt with a nut of its class bears", "Schraube mit Mutter ihrer Klasse trägt";
    /// Note at that line.
    pub nut_bears_as_much = "a nut of the bolt's class bears as much as the bolt (ISO 898-2)",
        "eine Mutter der gleichen Klasse trägt so viel wie die Schraube (ISO 898-2)";
    /// Line of a working.
    pub bolts_own_thread_bears = "bolt's own thread bears", "Gewinde der Schraube trägt";
    /// What went into a line of a working.
    pub shear_of_its_tensile = "τ, 0.6 of its tensile strength", "τ, 0,6 der Zugfestigkeit";
    /// Line of a working.
    pub strip_margin = "strip margin", "Sicherheit gegen Ausreißen";
    /// Formula of the strip margin.
    pub least_load_over_greatest_clamp = "least load that a thread bears / greatest clamp",
        "kleinste Last, die ein Gewinde trägt / größte Klemmkraft";
    /// What went into a line of a working.
    pub bears = "bears", "trägt";
    /// What went into a line of a working.
    pub clamp = "clamp", "Klemmkraft";
    /// A value of a working that is not known.
    pub not_known = "not known", "nicht bekannt";

    /// Why a way came where it did: weight and share of margin, time, cost and reversibility, and the sum.
    pub why_here(margin, margin_is, time, time_is, cost, cost_is, back, back_is, score) =
        "margin {margin} × {margin_is:.2}, time {time} × {time_is:.2}, cost {cost} × {cost_is:.2}, \
         reversibility {back} × {back_is:.2}: {score}",
        "Sicherheit {margin} × {margin_is:.2}, Zeit {time} × {time_is:.2}, Kosten {cost} × {cost_is:.2}, \
         Umkehrbarkeit {back} × {back_is:.2}: {score}";

    /// Why a way does not hold.
    pub thread_is_gone(from) = "the thread is torn out {from:.1} mm deep: there is nothing to clean up",
        "das Gewinde ist {from:.1} mm tief ausgerissen: da ist nichts mehr nachzuschneiden";
    /// Why a way does not hold.
    pub no_straight_run = "no straight run for drill and tap: take the part off, or take what is in the way",
        "kein gerader Zugang für Bohrer und Gewindebohrer: das Teil ausbauen oder was im Weg ist";
    /// Why a way does not hold.
    pub thin_wall(left, least) = "only {left:.1} mm of wall would be left, {least:.1} mm are needed",
        "nur {left:.1} mm Wand blieben stehen, {least:.1} mm sind nötig";
    /// Why a way does not hold.
    pub shallow(usable, needed) = "the hole takes {usable:.1} mm of full thread, {needed:.1} mm are needed",
        "das Loch nimmt {usable:.1} mm volles Gewinde auf, {needed:.1} mm sind nötig";
    /// Why a way does not hold.
    pub no_sound_thread(sound, needed) = "only {sound:.1} mm of sound thread can be reached, {needed:.1} mm are needed",
        "nur {sound:.1} mm unbeschädigtes Gewinde sind erreichbar, {needed:.1} mm sind nötig";
    /// Why a way does not hold.
    pub bottoms(room) = "there are only {room:.1} mm below the bolt: the next longer one would bottom",
        "unter der Schraube sind nur {room:.1} mm: die nächstlängere stünde auf";
    /// Why a way does not hold.
    pub limiter_takes_the_clamp = "the other part is plastic with a metal limiter that takes the clamp: its hole \
        may not be opened",
        "das andere Teil ist Kunststoff mit einer Metallhülse, die die Klemmkraft aufnimmt: ihr Loch darf nicht aufgebohrt werden";
    /// Why a way does not hold.
    pub plastic_would_crack = "the other part is plastic: a larger hole and head would crack or creep",
        "das andere Teil ist Kunststoff: größeres Loch und größerer Kopf ließen ihn reißen oder kriechen";
    /// Why a way does not hold.
    pub head_too_large(face, seat) = "the larger head presses on {face:.1} mm, the seat is {seat:.1} mm wide",
        "der größere Kopf drückt auf {face:.1} mm, die Auflage ist {seat:.1} mm breit";
    /// Why a way does not hold.
    pub strips(margin, least) = "its thread would strip at {margin:.2} times the greatest clamp, {least:.2} are needed",
        "sein Gewinde risse beim {margin:.2}-Fachen der größten Klemmkraft aus, das {least:.2}-Fache ist nötig";
    /// Why a way does not hold.
    pub bolt_overloaded(high, bears) = "the clamp may reach {high:.0} N, the bolt bears {bears:.0} N",
        "die Klemmkraft kann {high:.0} N erreichen, die Schraube trägt {bears:.0} N";
    /// Why a way does not hold.
    pub no_such_size_listed = "no such size is listed for this thread", "für dieses Gewinde ist keine solche Größe gelistet";

    /// Caution, the first of every repair.
    pub caution = "Eye protection; know what lies behind the hole and how deep it is; no \
        open fuel or battery gas near a drill. The vehicle maker's instructions, local rules and \
        licensed practice come before this page.",
        "Schutzbrille; wissen, was hinter dem Loch liegt und wie tief es ist; kein \
        offener Kraftstoff und kein Batteriegas nahe am Bohrer. Die Anleitung des Fahrzeugherstellers, örtliche Vorschriften und \
        zugelassene Praxis gehen dieser Seite vor.";
    /// A note where not even a new part holds.
    pub no_way_holds = "No way holds, not even a new part as its maker made it. Then something \
        that was said here is wrong: look again at the metal and its alloy, the torque and its unit, the \
        class, and the length that was engaged.",
        "Kein Weg hält, nicht einmal ein Neuteil, wie der Hersteller es gemacht hat. Dann stimmt etwas \
        nicht, was hier gesagt wurde: Metall und Legierung, Drehmoment und Einheit, \
        Festigkeitsklasse und Einschraubtiefe noch einmal ansehen.";
    /// Asked where nobody said what the joint holds.
    pub what_does_it_hold = "What does the joint hold? Nobody said, so this is for none of \
        brakes, steering, suspension, wheels, seats, belts, airbags, fuel and towing: for those only \
        the maker's part, or a repair that the maker approves.",
        "Was hält die Verbindung? Niemand hat es gesagt, also gilt das hier nicht für Bremse, Lenkung, Fahrwerk, Räder, Sitze, Gurte, Airbags, Kraftstoff und Anhängerkupplung: dafür nur das Teil vom Hersteller oder eine vom Hersteller freigegebene Reparatur.";
    /// In place of how the place of a way came about.
    pub not_ranked = "not weighed by time and money: people are hurt if it lets go",
        "nicht nach Zeit und Geld gewichtet: Menschen kommen zu Schaden, wenn sie loslässt";
    /// Caution where people are hurt if the joint lets go.
    pub people_are_hurt_nothing_home_made = "People are hurt if this joint lets go: nothing home-made is ranked. Fit the \
        maker's part, or do a repair that the vehicle maker names and approves for it, and prove it as \
        the maker says. No oversize thread, no bushing, no insert of one's own choice.",
        "Menschen kommen zu Schaden, wenn diese Verbindung loslässt: nichts Selbstgebautes wird vorgeschlagen. Das Teil vom Hersteller einbauen oder eine Reparatur machen, die der Fahrzeughersteller dafür nennt und freigibt, und sie nachweisen, wie der Hersteller es sagt. Kein größeres Gewinde, keine Buchse, kein Einsatz nach eigener Wahl.";
    /// Caution where the part is magnesium.
    pub magnesium_rots = "Magnesium: its chips and dust burn, and water makes it worse. Sharp tools, \
        slow, no flame, no welding, chips swept up at once, dry sand or a class D extinguisher at \
        hand. Steel in magnesium rots it: coated bolts and inserts, washers and sealant as the maker \
        says.",
        "Magnesium: Späne und Staub brennen, und Wasser macht es schlimmer. Scharfe Werkzeuge, langsam, keine Flamme, kein Schweißen, Späne sofort auffegen, trockener Sand oder ein Löscher der Klasse D griffbereit. Stahl lässt Magnesium korrodieren: beschichtete Schrauben und Einsätze, Scheiben und Dichtmittel, wie der Hersteller es sagt.";
    /// Caution at an exhaust.
    pub exhaust_studs = "Exhaust: studs rust in and creep. New studs and nuts of the maker's grade, and \
        the nickel compound on them that the maker names; common paste burns away. The torque is the \
        maker's for that paste.",
        "Abgasanlage: Stehbolzen rosten fest und kriechen. Neue Stehbolzen und Muttern in der Güte des Herstellers, darauf \
        die Nickelpaste, die der Hersteller nennt; gewöhnliche Paste verbrennt. Das Drehmoment ist das \
        des Herstellers für diese Paste.";
    /// Caution where a bolt stood on the bottom: how far it went, how deep the hole is.
    pub may_have_stood_on_the_bottom(engaged, depth) = "The bolt went {engaged} mm into a hole {depth} mm deep: it may have stood on the bottom, and then \
        its torque never clamped the joint. Look for a wrong length, a missing washer, dirt or \
        oil in the hole.",
        "Die Schraube ging {engaged} mm in ein {depth} mm tiefes Loch: sie stand vielleicht auf dem Grund auf, dann \
        hat ihr Drehmoment die Verbindung nie geklemmt. Nach falscher Länge, fehlender Scheibe, Schmutz oder \
        Öl im Loch sehen.";
    /// A note where the joint seals and does not clamp.
    pub seals_by_its_seat = "It seals and holds by its seat: the maker's torque for that seat stands, and \
        no clamp is worked out.",
        "Sie dichtet und hält über ihren Sitz: das Drehmoment des Herstellers für diesen Sitz gilt, \
        eine Klemmkraft wird nicht gerechnet.";
    /// A note on friction: the state of the threads, then that dry is not oiled.
    pub friction_of_threads(state, dry) = "Friction of threads that are {state}. {dry} Oil or sealant on threads that \
        were dry raises the clamp.",
        "Reibung von Gewinden: {state}. {dry} Öl oder Dichtmittel auf Gewinden, die \
        trocken waren, erhöht die Klemmkraft.";
    /// A note where no torque was given.
    pub no_torque_was_specified = "No torque was specified, so none is given: margins are against what the bolt \
        could carry, which is not a specification.",
        "Kein Drehmoment war angegeben, also wird keines genannt: die Sicherheit gilt gegen das, was die Schraube \
        tragen könnte, und das ist keine Vorgabe.";
    /// A note where slick threads take the bolt beyond its yield: the clamp, and where it yields.
    pub slick_threads_yield(high, bears) = "With the slickest threads of that state the specified torque takes the bolt to \
        {high:.0} N, beyond the {bears:.0} N at which it begins to yield: the maker's \
        torque stands, so do not add lubricant.",
        "Bei der kleinsten Reibung in diesem Zustand bringt das angegebene Drehmoment die Schraube auf {high:.0} N, über die {bears:.0} N, ab denen sie sich zu strecken beginnt: das Drehmoment des Herstellers gilt, also nichts zusätzlich schmieren.";

    /// Tap or chaser of a way; the thread.
    pub thread_chaser(thread) = "{thread} thread chaser", "Nachschneider {thread}";
    /// Tap of a way; the thread.
    pub insert_tap(thread) = "{thread} insert tap", "Gewindebohrer für Einsatz {thread}";
    /// Tap of a way.
    pub bushing_kits_own_tap = "the bushing kit's own reamer and tap", "Reibahle und Gewindebohrer aus dem Buchsensatz";
    /// Tap of a way.
    pub oversize_plugs_own_tap = "the oversize plug's own tap, by hand", "die Übermaß-Ablassschraube schneidet selbst, von Hand";
    /// Tap of a way.
    pub taper_tap_of_next_pipe_size = "taper tap of the next pipe size", "konischer Gewindebohrer der nächsten Rohrgröße";
    /// Bolt of a way: the thread.
    pub long_enough_for_a_nut(thread) = "{thread}, long enough for a nut behind", "{thread}, lang genug für eine Mutter dahinter";
    /// Bolt of a way: the thread, and how much longer.
    pub so_much_longer(thread, by) = "{thread}, {by} mm longer", "{thread}, {by} mm länger";
    /// A note: what is gone and what is left of the thread.
    pub mm_of_thread_are_gone(gone, left) = "{gone} mm of thread are gone; the {left} mm below carry alone.",
        "{gone} mm Gewinde sind weg; die {left} mm darunter tragen allein.";
    /// A note on the length of an insert.
    pub insert_maker_asks_for(diameters) = "For the bolt to fail first an insert maker asks for {diameters} diameters in this metal.",
        "Damit zuerst die Schraube nachgibt, verlangt ein Hersteller von Einsätzen {diameters} Durchmesser in diesem Metall.";
    /// A note on a locking insert.
    pub torque_includes_locking(torque) = "The torque includes {torque} N·m that the locking insert takes to turn.",
        "Im Drehmoment sind {torque} N·m enthalten, die der selbstsichernde Einsatz zum Drehen braucht.";
    /// A note on the oversize thread.
    pub not_the_usual_torque = "Not the usual torque of the larger size: this one gives the original clamp.",
        "Nicht das übliche Drehmoment der größeren Größe: dieses gibt die ursprüngliche Klemmkraft.";
    /// A note on the oversize thread.
    pub thicker_bolt_is_stiffer = "A thicker bolt is stiffer and loses more clamp when a gasket settles.",
        "Eine dickere Schraube ist steifer und verliert mehr Klemmkraft, wenn sich eine Dichtung setzt.";
    /// A note on bolt and nut.
    pub only_where_both_sides_reach = "Only where both sides can be reached, nothing turns or flows behind, and the far face \
        bears a washer.",
        "Nur wo man an beide Seiten kommt, sich dahinter nichts dreht oder fließt und die Rückseite \
        eine Scheibe trägt.";
    /// A note on bolt and nut.
    pub nut_washer_and_locking = "A nut of the bolt's class, a hardened washer, and something that keeps it from \
        coming loose.",
        "Eine Mutter in der Klasse der Schraube, eine gehärtete Scheibe und etwas, das sie gegen \
        Lösen sichert.";
    /// A note on a bushing for a spark plug.
    pub bushing_with_its_own_seat = "A bushing with a seat of its own, of the plug's reach: the plug's electrodes must \
        stand where they stood.",
        "Eine Buchse mit eigenem Sitz und der Gewindelänge der Kerze: die Elektroden müssen \
        stehen, wo sie standen.";
    /// A note on a bushing for a spark plug.
    pub chips_go_into_the_cylinder = "With the head on, chips go into the cylinder. Taking the head off is the surer way.",
        "Bei montiertem Kopf fallen Späne in den Zylinder. Den Kopf abzunehmen ist der sichere Weg.";
    /// A note on a bushing for a sensor.
    pub bushing_seals_by_its_collar = "The bushing seals by its own collar: the sensor's tip must reach as far in as before.",
        "Die Buchse dichtet über ihren Bund: die Spitze des Sensors muss so weit hineinreichen wie vorher.";
    /// A note on an oversize plug.
    pub cuts_its_own_thread_once = "It cuts its own thread once. It leaks or strips the next time: tell the customer.",
        "Sie schneidet ihr Gewinde einmal selbst. Beim nächsten Mal leckt sie oder reißt aus: dem Kunden sagen.";
    /// A note on a welded bung.
    pub battery_off_before_welding = "Battery and control units off before welding; the sensor out.",
        "Vor dem Schweißen Batterie und Steuergeräte abklemmen; Sensor heraus.";
    /// A note on the next pipe size.
    pub nothing_is_narrowed = "Tell what flows through it that nothing is narrowed; check the wall first.",
        "Prüfen, dass der Querschnitt nicht enger wird; vorher die Wand prüfen.";
    /// A note on a maker's repair.
    pub only_a_repair_the_maker_describes = "Only a repair that the vehicle maker describes for this very joint: say which, with \
        its page, on the order.",
        "Nur eine Reparatur, die der Fahrzeughersteller für genau diese Verbindung beschreibt: welche, mit \
        Seite, im Auftrag nennen.";

    /// Caution at a step.
    pub eyes_and_drill_stop = "eye protection; stop the drill at the depth of the hole",
        "Schutzbrille; Bohrer auf Lochtiefe begrenzen";
    /// Caution at a step.
    pub keep_the_tap_square = "keep the tap square to the face; back it off to break the chip",
        "Gewindebohrer rechtwinklig zur Fläche halten; zurückdrehen, damit der Span bricht";
    /// Caution at a step.
    pub blind_hole_dry = "a blind hole must be dry: oil or coolant in it bursts the casting under the bolt",
        "ein Sackloch muss trocken sein: Öl oder Kühlmittel darin sprengt das Gussteil unter der Schraube";
    /// A step; the thread.
    pub run_a_thread_chaser_in(thread) = "run a {thread} thread chaser in by hand, with oil: a chaser, not a cutting tap",
        "Nachschneider {thread} von Hand mit Öl eindrehen: ein Nachschneider, kein Gewindebohrer";
    /// A step.
    pub blow_the_hole_out = "blow the hole out under a rag and look at the thread with a lamp",
        "das Loch unter einem Lappen ausblasen und das Gewinde mit der Lampe ansehen";
    /// A step.
    pub chase_the_sound_thread = "chase the sound thread through the torn one, and blow the hole out",
        "das unbeschädigte Gewinde durch das ausgerissene hindurch nachschneiden und das Loch ausblasen";
    /// A step; the bolt.
    pub turn_in_by_hand_without_the_part(bolt) = "turn the {bolt} in by hand without the part: count the turns, see that it does not bottom",
        "{bolt} ohne das Teil von Hand eindrehen: Umdrehungen zählen, sehen, dass sie nicht aufsteht";
    /// Behind the size of a drill in a step.
    pub or_the_insert_makers_size = " (or the insert maker's size)", " (oder die Größe vom Hersteller des Einsatzes)";
    /// Behind the size of a drill in a step.
    pub or_the_bushing_makers_size = " (or the bushing maker's size)", " (oder die Größe vom Hersteller der Buchse)";
    /// A step; the tap.
    pub tap_with_the(tap) = "tap with the {tap}", "Gewinde schneiden mit: {tap}";
    /// A step; the length of the insert.
    pub wind_the_insert_in(length) = "wind the insert, {length} mm long, in to half a turn below the face",
        "den Einsatz, {length} mm lang, bis eine halbe Umdrehung unter die Fläche eindrehen";
    /// A step.
    pub break_the_tang_off = "break the tang off and take it out: it counts as a thing inside until it is seen",
        "den Zapfen abbrechen und herausnehmen: er gilt als Teil im Inneren, bis man ihn sieht";
    /// A step; the thread outside the bushing.
    pub tap_and_countersink(outside) = "tap {outside}, and countersink for the keys or the collar",
        "Gewinde {outside} schneiden und für die Keile oder den Bund ansenken";
    /// A step.
    pub turn_the_bushing_in_below_the_face = "turn the bushing in below the face and drive the keys or swage it as its maker says",
        "die Buchse bis unter die Fläche eindrehen und die Keile einschlagen oder aufweiten, wie ihr Hersteller es sagt";
    /// A step; the thread.
    pub tap_the(thread) = "tap {thread}", "Gewinde {thread} schneiden";
    /// A step; the size of the hole.
    pub open_the_other_parts_hole(hole) = "open the other part's hole to {hole} mm and break its edge",
        "das Loch im anderen Teil auf {hole} mm aufbohren und entgraten";
    /// A step.
    pub mark_the_bolt = "mark the bolt: it takes another wrench and another torque than its neighbours",
        "die Schraube kennzeichnen: sie braucht anderen Schlüssel und anderes Drehmoment als ihre Nachbarn";
    /// A step.
    pub fit_a_sound_part = "fit a new or sound used part; keep the old one until the new one is tight",
        "neues oder gutes gebrauchtes Teil einbauen; das alte aufheben, bis das neue fest ist";
    /// Caution at a step.
    pub magnesium_chips_burn = "magnesium chips burn: no flame, no sparks, no water; dry sand at hand",
        "Magnesiumspäne brennen: keine Flamme, keine Funken, kein Wasser; trockener Sand griffbereit";
    /// A step.
    pub sharp_tools_slow = "sharp tools, slow, and sweep the chips up as they fall",
        "scharfe Werkzeuge, langsam, und die Späne gleich auffegen";
    /// A step.
    pub see_the_far_side = "see that the far side can be reached, and that nothing turns, flows or burns behind it",
        "sehen, dass man an die Rückseite kommt und sich dahinter nichts dreht, nichts fließt und nichts brennt";
    /// A step; the size.
    pub drill_right_through(size) = "drill right through to {size} mm, and break both edges",
        "ganz durchbohren auf {size} mm und beide Kanten brechen";
    /// A step.
    pub bolt_through_nut_behind = "bolt through, washer and nut of its class behind, held while it is tightened",
        "Schraube durch, dahinter Scheibe und Mutter ihrer Klasse, beim Anziehen gegengehalten";
    /// Caution at a step.
    pub no_spark_no_vapour = "no spark, no fuel vapour: fuel pump and ignition off",
        "kein Funke, kein Kraftstoffdampf: Kraftstoffpumpe und Zündung aus";
    /// A step.
    pub piston_near_the_bottom = "piston near the bottom, the valves of that cylinder shut",
        "Kolben nahe am unteren Totpunkt, die Ventile dieses Zylinders zu";
    /// A step.
    pub ream_and_tap_with_grease = "ream and tap with the bushing kit's own tools, grease on the flutes, wiped off often",
        "mit den Werkzeugen aus dem Buchsensatz reiben und schneiden, Fett in den Nuten, oft abgewischt";
    /// A step.
    pub chips_out_of_the_cylinder = "chips out of the cylinder: vacuum through the hole, then look with a borescope; do not crank before that",
        "Späne aus dem Zylinder: durchs Loch absaugen, dann mit dem Endoskop nachsehen; vorher nicht durchdrehen";
    /// A step.
    pub turn_the_plug_bushing_in = "turn the bushing in to its collar and lock it as its maker says, then the plug by hand",
        "die Buchse bis zum Bund eindrehen und sichern, wie ihr Hersteller es sagt, dann die Kerze von Hand";
    /// A step.
    pub dry_the_hole = "dry the hole", "das Loch trocknen";
    /// A step; the torque.
    pub tighten_to(torque) = "tighten to {torque} N·m, in the pattern of the joint",
        "mit {torque} N·m anziehen, in der Reihenfolge der Verbindung";
    /// A step.
    pub tighten_as_the_maker_says = "tighten as the maker says: no torque was specified here, so none is given",
        "anziehen, wie der Hersteller es sagt: hier war kein Drehmoment angegeben, also wird keines genannt";
    /// A step.
    pub centre_on_the_old_hole = "centre on the old hole, with a guide bush through the other part's hole if it fits",
        "am alten Loch zentrieren, mit Führungsbuchse durchs Loch des anderen Teils, wenn sie passt";
    /// A step; the size of a smaller drill.
    pub drill_on_the_way(size) = "drill {size} mm on the way", "erst mit {size} mm vorbohren";
    /// A step; the drill and what stands behind it.
    pub drill_with(drill, more) = "drill {drill}{more}", "mit {drill} bohren{more}";
    /// A step.
    pub chips_out = "chips out: grease on the tap's flutes, a vacuum, then a lamp; a magnet finds none of light metal",
        "Späne heraus: Fett in den Nuten des Gewindebohrers, Sauger, dann Lampe; ein Magnet findet keine aus Leichtmetall";
    /// A step.
    pub close_what_lies_behind = "take the part off, or close what lies behind with a rag",
        "das Teil ausbauen oder zustopfen, was dahinter liegt, mit einem Lappen";
    /// A step.
    pub ream_tap_and_face = "ream, tap and face with the bushing kit's own tools",
        "mit den Werkzeugen aus dem Buchsensatz reiben, schneiden und planen";
    /// A step.
    pub turn_the_sensor_bushing_in = "turn the bushing in to its collar as its maker says, then the sensor by hand",
        "die Buchse bis zum Bund eindrehen, wie ihr Hersteller es sagt, dann den Sensor von Hand";
    /// A step.
    pub clean_the_boss = "clean the boss; grease on the plug's flutes", "das Auge reinigen; Fett in die Nuten der Ablassschraube";
    /// A step.
    pub cut_with_the_oversize_plug = "cut with the oversize plug, square, a turn forward and half a turn back",
        "mit der Übermaß-Ablassschraube schneiden, rechtwinklig, eine Umdrehung vor, eine halbe zurück";
    /// A step.
    pub flush_the_chips_out = "flush the chips out with a little fresh oil before filling",
        "vor dem Einfüllen die Späne mit etwas frischem Öl ausspülen";
    /// A step.
    pub cut_the_old_bung_out = "cut the old bung out and clean the metal", "die alte Muffe heraustrennen und das Metall reinigen";
    /// A step.
    pub weld_a_bung_in = "weld a bung of the same metal in, and let it cool",
        "eine Muffe aus gleichem Metall einschweißen und abkühlen lassen";
    /// A step.
    pub chase_fit_and_look_for_leaks = "chase its thread, fit the sensor, look for leaks warm",
        "Gewinde nachschneiden, Sensor einbauen, warm auf Lecks prüfen";
    /// A step.
    pub close_behind_with_grease = "close what lies behind with grease or a rag", "was dahinter liegt, mit Fett oder Lappen schließen";
    /// A step.
    pub drill_and_tap_next_pipe_size = "drill and tap the next pipe size, taper, no deeper than the reducer's turns",
        "die nächste Rohrgröße bohren und schneiden, konisch, nicht tiefer als die Gänge des Reduzierstücks";
    /// A step.
    pub seal_and_turn_the_reducer_in = "seal and turn the reducer in by turns, not by torque; look for leaks",
        "das Reduzierstück abdichten und nach Umdrehungen eindrehen, nicht nach Drehmoment; auf Lecks prüfen";
    /// A step.
    pub fit_the_makers_new_part = "fit the vehicle maker's new part, with new bolts where the maker says so",
        "Neuteil des Fahrzeugherstellers einbauen, mit neuen Schrauben, wo der Hersteller es sagt";
    /// A step.
    pub prove_it_as_the_maker_says = "prove it as the maker says before the vehicle goes on the road",
        "nachweisen, wie der Hersteller es sagt, bevor das Fahrzeug auf die Straße geht";
    /// A step.
    pub find_the_repair = "find the repair in the vehicle maker's instructions, and name it on the order",
        "die Reparatur in der Anleitung des Fahrzeugherstellers suchen und im Auftrag nennen";
    /// A step.
    pub do_it_to_the_letter = "do it with the parts, the tools and the torque that are named there, to the letter",
        "genau so machen, mit den Teilen, Werkzeugen und dem Drehmoment, die dort stehen";

    /// What is left inside after a way.
    pub tang_of_an_insert = "insert tang", "Zapfen des Einsatzes";
    /// What is left inside after a way.
    pub rag = "rag", "Lappen";

    /// Title of a drawing; the thread.
    pub as_found(thread) = "{thread} as found", "{thread} wie vorgefunden";
    /// A size of the drawing.
    pub torn_thread = "torn thread", "ausgerissen";
    /// A size of the drawing.
    pub insert = "insert", "Einsatz";
    /// A size of the drawing.
    pub bushing = "bushing", "Buchse";
    /// A size of the drawing.
    pub engaged = "engaged", "eingeschraubt";
    /// A size of the drawing.
    pub hole_depth = "hole depth", "Lochtiefe";
    /// A size of the drawing.
    pub passage = "passage", "Durchgang";
    /// A size of the drawing.
    pub below_bolt = "below bolt", "unter der Schraube";

    /// A refusal: a size of a hole; what, its size, the least and the most.
    pub size_must_lie_between(what, value, least, most) =
        "{what} is {value} mm; it must lie between {least} and {most} mm",
        "{what} ist {value} mm, möglich ist {least} bis {most} mm";
    /// A refusal; the torque.
    pub torque_is_no_specification(torque) = "a torque of {torque} N·m is no specification; give the maker's, or none",
        "ein Drehmoment von {torque} N·m ist keine Vorgabe; das vom Hersteller angeben oder keines";
    /// A refusal; the tilt.
    pub tilt_outside(tilt) = "a tilt of {tilt}° is outside 0 to 10°", "eine Schräge von {tilt}° liegt außerhalb 0 bis 10°";
    /// A refusal: a torque that no bolt bears; the torque, the thread, the class.
    pub no_bolt_bears(torque, thread, class) =
        "{torque} N·m breaks a bolt of {thread} even of class {class} and with rough threads: \
         look at the figure and its unit again",
        "{torque} N·m reißt eine Schraube {thread} ab, selbst in Klasse {class} und mit rauem Gewinde: \
         Zahl und Einheit noch einmal ansehen";
    /// A refusal.
    pub plastic_is_not_repaired = "a thread in plastic is not repaired here; use the maker's insert or a new part",
        "ein Gewinde in Kunststoff wird hier nicht repariert; den Einsatz des Herstellers oder ein Neuteil nehmen";
    /// What is out of range, in a refusal.
    pub depth_of_the_hole = "depth of the hole", "Lochtiefe";
    /// What is out of range, in a refusal.
    pub engaged_length = "engaged length", "Einschraubtiefe";
    /// What is out of range, in a refusal.
    pub depth_of_the_torn_thread = "depth of the torn thread", "Tiefe des ausgerissenen Gewindes";
    /// What is out of range, in a refusal.
    pub metal_around_the_hole = "metal around the hole", "Metall um das Loch";
    /// What is out of range, in a refusal.
    pub length_of_the_bolt = "length of the bolt", "Schraubenlänge";
    /// What is out of range, in a refusal.
    pub flat_under_the_head = "flat under the head", "Auflage unter dem Kopf";
    /// What is out of range, in a refusal.
    pub hole_in_the_other_part = "hole in the other part", "Loch im anderen Teil";
}
