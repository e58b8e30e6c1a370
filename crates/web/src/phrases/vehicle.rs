//! What is said at the vehicle.
//!
//! What several of its pages say, and the pages that have no file of their own, stand here.

mod coolant;
mod item;
mod plan;
mod snag;
mod stage;

pub use coolant::*;
pub use item::*;
pub use plan::*;
pub use snag::*;
pub use stage::*;

use phrases::phrases;

phrases! {
    /// Heading of the list of all that is not back in its place, and the press that leads there.
    pub still_open = "Still open", "Noch offen";
    /// Under a number on the open list: so many things are still off the vehicle.
    pub still_off = "still off", "noch ab";
    /// Under a number on the open list: so many things are still inside the vehicle.
    pub inside = "inside", "drin";
    /// Under a number on the open list: so much work is still to be done.
    pub owed_count = "owed", "noch zu tun";
    /// Heading over the things that were put into the vehicle and are to come out again.
    pub inside_the_vehicle = "Inside the vehicle", "Im Fahrzeug";
    /// The open list, when nothing is on it.
    pub everything_is_home = "Everything is home.", "Alles ist an seinem Platz.";
    /// Heading over the work that is still to be done, and the press that leads to it.
    pub owed = "Owed", "Noch zu tun";
    /// The press that leads to the page on which things go back on.
    pub put_back = "Put back", "Einbauen";
    /// Heading of the page that shows what lies on the bench.
    pub trays = "Trays", "Schalen";
    /// Heading of the page on which loose bolts are counted from a photo, and the row that leads there.
    pub count_by_photo = "Count by photo", "Mit Foto zählen";
    /// Under the row that offers to count by photo: what it is good for.
    pub count_by_photo_why = "what is missing, or of the wrong length, before it goes back",
        "was fehlt oder die falsche Länge hat, bevor es wieder hineingeht";
    /// On the drawing of the trays: where things lie that nobody put into a container.
    pub bench = "bench", "Werkbank";

    /// A choice among others, in several places: none of those named.
    pub other = "other", "anderes";
    /// A choice or a remark: something is not there.
    pub missing = "missing", "fehlt";
    /// Where nobody said something, such as the zone of a thing or a least measure.
    pub not_told = "not told", "nicht angegeben";
    /// Field for a remark.
    pub in_a_few_words = "In a few words", "In wenigen Worten";
    /// Press of a small form.
    pub save = "Save", "Speichern";
    /// Press that notes what was filled in.
    pub note_it = "Note it", "Notieren";
    /// Field: what a thing is, in words, or of which sort a note is.
    pub what = "What", "Was";
    /// Label of choices that say what something is or looks like.
    pub it_is = "It is", "Es ist";
    /// Between two torques that are given one after the other.
    pub then_between = ", then ", ", dann ";
    /// Behind a thing: what goes on is a new one.
    pub comma_a_new_one = ", a new one", ", ein neues";
    /// Where a step is worked on, if it is all the same.
    pub anywhere = "anywhere", "überall";
    /// How many pieces, on a large press.
    pub pieces(n) = ["{n} piece", "{n} pieces"], ["{n} Stück", "{n} Stück"];
    /// How many stages of a plan.
    pub stages(n) = ["{n} stage", "{n} stages"], ["{n} Schritt", "{n} Schritte"];
    /// So many of so many.
    pub n_of(n, all) = "{n} of {all}", "{n} von {all}";
    /// Which positions of a group.
    pub positions(at) = "positions {at}", "Positionen {at}";
    /// The large press when all of a stage came off as the page shows it.
    pub out_as_shown = "Out as shown", "Raus wie gezeigt";
    /// The large press when all of a stage went back on as the page shows it.
    pub on_as_shown = "On as shown", "Dran wie gezeigt";
    /// What became of bolts that went back on but have their torque still to come.
    pub on_not_tight_yet = "on, not tight yet", "dran, noch nicht fest";
    /// Heading over what is on and not tight.
    pub tighten = "Tighten", "Festziehen";
    /// Press: this group has its torque.
    pub tight = "Tight", "Fest";
    /// Before a group, a pass and a name: somebody stopped in the middle here.
    pub stopped_here = "Stopped here: ", "Hier unterbrochen: ";
    /// Field: the tray or the box that a thing is laid in.
    pub stored_in = "Stored in", "Abgelegt in";
    /// Hint of the field for the tray.
    pub such_as_tray_a = "such as tray A", "z. B. Schale A";
    /// What the field for the tray holds at first.
    pub tray_a = "tray A", "Schale A";
    /// Field and press: a fluid was filled in.
    pub poured_in = "Poured in", "Eingefüllt";
    /// Field and press: a fluid was drained.
    pub came_out = "Came out", "Herausgekommen";
    /// Hint of a field for litres.
    pub with_its_unit = "with its unit, such as 5.5 L", "mit Einheit, z. B. 5,5 L";
    /// Hint of a field for whoever gives a torque.
    pub such_as_the_manual = "such as the workshop manual, and its date",
        "z. B. das Werkstatthandbuch mit Datum";
    /// Press that leads to what is wrong with a thing; title of such pages.
    pub snag = "Snag", "Problem";
    /// Title and press: the next stage of the plan.
    pub next_stage = "Next stage", "Nächster Schritt";
    /// Press and heading: calculate from what was filled in.
    pub work_it_out = "Work it out", "Rechnen";
    /// Over a form whose figures cannot be used yet.
    pub not_worked_out_yet = "Not worked out yet: see below what is wrong.",
        "Noch nicht gerechnet: unten steht, was nicht stimmt.";
    /// Heading and press: the vehicle goes back to its customer.
    pub hand_over = "Hand over", "Übergabe";
    /// Behind a gate that is open.
    pub yes = "yes", "ja";
    /// Behind a gate that is shut, and behind a way that does not hold.
    pub no = "no", "nein";
    /// Heading and row: the parts of an order, with their price.
    pub parts = "Parts", "Teile";

    /// Sort of thing.
    pub bolts_screws_nuts = "bolts, screws, nuts", "Schrauben, Muttern";
    /// Sort of thing.
    pub clips = "clips", "Clips";
    /// Sort of thing: any part of the vehicle.
    pub a_part = "part", "Teil";
    /// Sort of thing.
    pub cover = "cover", "Abdeckung";
    /// Sort of thing.
    pub hose_pipe = "hose, pipe", "Schlauch, Rohr";
    /// Sort of thing: an electrical plug.
    pub plug = "plug", "Stecker";
    /// Sort of thing.
    pub seal = "seal", "Dichtung";
    /// Sort of thing.
    pub belt = "belt", "Riemen";
    /// Sort of thing.
    pub fluid = "fluid", "Flüssigkeit";
    /// Sort of thing: what is put into the vehicle for the work and has to come out again, such as a
    /// rag or a plug in a hose.
    pub put_in = "put in", "vorübergehend drin";
    /// System that a thing belongs to.
    pub brakes = "brakes", "Bremsen";
    /// System that a thing belongs to.
    pub steering = "steering", "Lenkung";
    /// System that a thing belongs to.
    pub wheels = "wheels", "Räder";
    /// System that a thing belongs to.
    pub suspension = "suspension", "Fahrwerk";
    /// System that a thing belongs to.
    pub fuel = "fuel", "Kraftstoff";
    /// System that a thing belongs to: airbags and seat belts.
    pub airbags_belts = "airbags, belts", "Airbags, Gurte";
    /// System that a thing belongs to: the belt of the alternator and what it drives.
    pub drive_belt = "drive belt", "Riementrieb";
    /// System that a thing belongs to.
    pub high_voltage = "high voltage", "Hochvolt";
    /// System that a thing belongs to.
    pub cooling = "cooling", "Kühlung";
    /// System that a thing belongs to.
    pub engine_oil = "engine oil", "Motoröl";
    /// System that a thing belongs to.
    pub engine = "engine", "Motor";
    /// System that a thing belongs to.
    pub gearbox = "gearbox", "Getriebe";
    /// System that a thing belongs to.
    pub intake = "intake", "Ansaugung";
    /// System that a thing belongs to.
    pub exhaust = "exhaust", "Abgas\u{ad}anlage";
    /// System that a thing belongs to.
    pub battery = "battery", "Batterie";
    /// System that a thing belongs to.
    pub electrical = "electrical", "Elektrik";
    /// System that a thing belongs to: air conditioning.
    pub climate = "climate", "Klima";
    /// System that a thing belongs to.
    pub body_covers = "body, covers", "Karosserie, Abdeckungen";
    /// From where a thing is worked on.
    pub above = "above", "oben";
    /// From where a thing is worked on.
    pub below = "below", "unten";
    /// From where a thing is worked on.
    pub wheel_well = "wheel well", "Radhaus";
    /// From where a thing is worked on.
    pub cabin = "cabin", "Innenraum";
    /// From where a thing is worked on.
    pub rear = "rear", "hinten";
    /// From where a thing is worked on.
    pub outside = "outside", "außen";
    /// Behind a bolt's length: at which positions it is, where the others are of another length.
    pub length_at(length, at) = "{length} at {at}", "{length} an {at}";
    /// Behind the size of a wrench: the wrench fits if the head is a hexagon.
    pub if_hex(wrench) = "{wrench} if hex", "{wrench} bei Sechskant";

    /// Heading of the page of the six gates: what may the vehicle do? The press that leads there.
    pub cleared_to = "Cleared to …?", "Freigabe für …?";
    /// Press under the gates: to what goes back on next.
    pub fix_the_next_one = "Fix the next one", "Das Nächste erledigen";
    /// Behind a gate that is shut: by how many things.
    pub not_yet_things(n) = ["not yet · {n} thing", "not yet · {n} things"],
        ["noch nicht · {n} Punkt", "noch nicht · {n} Punkte"];
    /// Behind the gate that comes next.
    pub not_yet = "not yet", "noch nicht";
    /// Under the first reasons: so many more.
    pub and_more(n) = "and {n} more", "und {n} weitere";
    /// Refusal: the address names no gate.
    pub no_such_gate = "there is no such gate", "diese Freigabe gibt es nicht";
    /// Heading over what stands against a gate at the vehicle itself.
    pub fit_to_go = "Fit to go", "Technisch in Ordnung";
    /// Under that heading, when there is no reason.
    pub nothing_against_it = "Nothing stands against it.", "Nichts spricht dagegen.";
    /// Heading over what stands against the hand-over in papers and money.
    pub papers = "Papers", "Papiere";
    /// Under that heading, when there is no reason.
    pub papers_all_done = "All done.", "Alles erledigt.";
    /// Press to the page of all six gates.
    pub all_six = "All six", "Alle sechs";
    /// Under a reason that only warns.
    pub does_not_hold_the_vehicle = "does not hold the vehicle", "hält das Fahrzeug nicht auf";
    /// Behind a reason: a tap leads to where it is closed.
    pub fix = "fix", "erledigen";
    /// Heading: the vehicle is pushed, where it may not roll by itself.
    pub push_by_hand = "Push it by hand", "Von Hand schieben";
    /// Caution before a vehicle is pushed.
    pub pushing_caution = "A flat floor, chocks in hand, somebody at a parking brake that works, nobody before or behind it, the steering unlocked. Its brakes may not hold: never on a slope, never with the engine. The maker's and the shop's rules come first.",
        "Ebener Boden, Keile zur Hand, jemand an einer Feststellbremse, die wirkt, niemand davor oder dahinter, die Lenkung entriegelt. Die Bremsen halten vielleicht nicht: nie am Hang, nie mit dem Motor. Die Vorschriften von Hersteller und Werkstatt gehen vor.";
    /// Field before a vehicle is pushed.
    pub why_and_who_stands_where = "Why, and who stands where", "Warum, und wer wo steht";
    /// Hint of that field: in which part one writes it.
    pub as_owner_or_foreman = "as the owner or the foreman", "als Inhaber oder Meister";
    /// The way to where it is told in which stall or outside a vehicle that was rolled stands.
    pub where_it_stands_now = "Where it stands now", "Wo es jetzt steht";
    /// Small words on a press with the name of a stall, or the yard.
    pub pushed_there = "pushed there", "dorthin geschoben";
    /// Press: pushed to the yard.
    pub yard = "Yard", "Hof";
    /// For whoever may not let the vehicle be pushed.
    pub owner_writes_so = "The owner or the foreman says so in writing, on this page.",
        "Das gibt der Inhaber oder der Meister schriftlich frei, auf dieser Seite.";
    /// The vehicle may not even be pushed: so many reasons.
    pub not_even_that(n) = ["Not even that: {n} in the way", "Not even that: {n} in the way"],
        ["Nicht einmal das: {n} Grund dagegen", "Nicht einmal das: {n} Gründe dagegen"];
    /// Folded form: one of the reasons is taken on oneself.
    pub waive_one = "Waive one, with a reason", "Einen Punkt trotzdem freigeben, mit Begründung";
    /// Field of that form.
    pub why_it_may_pass = "Why it may pass", "Warum es so gehen darf";
    /// Hint of that field.
    pub your_name_beside_it = "your name stands beside it", "der eigene Name steht daneben";
    /// Press of that form.
    pub waive_it = "Waive it", "Trotzdem freigeben";

    /// Over the list of what comes off, where the vehicle is held by it: look at the parts first.
    pub after_this_it_cant_roll = "After this it can't roll. Look at the parts first?",
        "Danach kann es nicht mehr rollen. Erst nach den Teilen sehen?";
    /// Behind that row.
    pub look = "look", "nachsehen";
    /// How many ordered parts are not here.
    pub parts_not_here(n) = ["{n} part not here", "{n} parts not here"],
        ["{n} Teil nicht da", "{n} Teile nicht da"];
    /// How many new parts nobody laid beside the old one.
    pub not_compared(n) = "{n} not compared with the old one", "{n} nicht mit dem alten verglichen";

    /// Title: whoever works alone checks the list in reverse.
    pub second_walk_round = "Second walk-round", "Zweiter Rundgang";
    /// Heading of that page.
    pub walk_back = "Walk back", "Rückwärts durchgehen";
    /// That page, when nothing is on it.
    pub nothing_left_to_check = "Nothing is left to check.", "Nichts mehr zu prüfen.";
    /// Before the link to the shop's page: why this walk does not count yet.
    pub another_person_checks = "Another person checks, unless the owner writes at ",
        "Es prüft eine andere Person, außer der Inhaber schreibt unter ";
    /// The link: the page of the shop's settings.
    pub the_shop = "The shop", "Werkstatt";
    /// Behind that link.
    pub that_alone_may_walk_back = " that one who works alone may walk back. Until then this walk does not count.",
        ", dass man allein auch selbst nachprüfen darf. Bis dahin zählt dieser Rundgang nicht.";
    /// How the walk back is done.
    pub how_to_walk_back = "After another job or a pause, from the other side, the list the other way round. Put a hand on each, look, and tick it.",
        "Nach einer anderen Arbeit oder einer Pause, von der anderen Seite, die Liste rückwärts. Jedes anfassen, ansehen und abhaken.";
    /// Said where nothing was ticked.
    pub tick_what_was_looked_at = "Tick what you have looked at", "Abhaken, was angesehen ist";
    /// Name of the list, for those who hear the page.
    pub looked_at = "Looked at", "Angesehen";
    /// Press at the end of the walk back.
    pub walked_back = "Walked back", "Rückwärts durchgegangen";
    /// Small words on that press.
    pub those_that_are_ticked = "those that are ticked", "was abgehakt ist";

    /// Title of the page on which things go back on.
    pub back_together = "Back together", "Zusammenbau";
    /// Heading of that page.
    pub back_as_shown = "Back as shown", "Wieder dran wie gezeigt";
    /// Heading: after a group that somebody left in the middle, the rest goes on.
    pub then_back_on = "Then back on", "Dann wieder dran";
    /// That page, when nothing goes on any more.
    pub nothing_left_to_put_on = "Nothing left to put on. Tighten, fill, and close the list.",
        "Nichts mehr anzubauen. Festziehen, einfüllen und die Liste abschließen.";
    /// Over the rows that go on.
    pub last_off_goes_on_first = "Last off goes on first. Untick what is not on yet.",
        "Zuletzt ab, zuerst dran. Abwählen, was noch nicht dran ist.";
    /// Behind that: so many rows come after these.
    pub then_more(n) = " Then {n} more.", " Danach noch {n}.";
    /// Before the tray that a thing lies in.
    pub from_the_tray = " · from ", " · aus ";
    /// What becomes of screws that need no torque.
    pub on_and_snug = "on and snug, checked", "dran und handfest, geprüft";
    /// What becomes of a thing that was put into the vehicle.
    pub out_of_the_vehicle = "out of the vehicle", "aus dem Fahrzeug";
    /// Heading over the fluids that are low.
    pub fill = "Fill", "Einfüllen";
    /// Press: a fluid is at its level.
    pub filled_to_its_level = "Filled to its level", "Füllstand erreicht";
    /// Press: some was filled in.
    pub poured = "Poured", "Eingefüllt";
    /// Small words on that press.
    pub not_at_level = "not at level", "Füllstand noch nicht erreicht";
    /// Small words on the press to the open list.
    pub off_and_inside(off, inside) = "{off} still off · {inside} inside", "{off} noch ab · {inside} drin";

    /// Title: things come off.
    pub this_stage = "This stage", "Dieser Schritt";
    /// Heading of that page.
    pub what_comes_off = "What comes off", "Was abkommt";
    /// Its field: one thing a line, as it is spoken.
    pub one_thing_a_line = "One thing a line, as you would say it", "Ein Teil je Zeile, wie man es sagt";
    /// Hint of that field; the program reads such words in both languages.
    pub such_as_things_off = "such as 6 tray screws M6x16, or 5.5 L coolant, or rag",
        "z. B. 6 Schrauben M6x16 oder 5,5 L Kühlmittel oder Lappen";
    /// Press: what was typed is read.
    pub read_it = "Read it", "Lesen";
    /// Heading over things that the order knows and that are home.
    pub known_and_in_place = "Known, and in place", "Bekannt und an seinem Platz";
    /// Field: who gives the torque that was typed.
    pub who_gives_the_torque = "Who gives the torque", "Woher das Drehmoment stammt";
    /// Press: back to what was typed.
    pub type_again = "Type again", "Neu eingeben";
    /// Heading over things of the same name that are off already.
    pub off_already = "Off already: the same ones?", "Schon ab: dieselben?";
    /// Under them.
    pub if_the_same = "If they are the same, nothing is left to note about them.",
        "Wenn es dieselben sind, ist dazu nichts mehr zu notieren.";
    /// Press under them.
    pub they_are_others = "They are others", "Es sind andere";
    /// Small words on that press.
    pub note_them_too = "note them too", "auch notieren";
    /// Press under them.
    pub the_same_ones = "The same", "Dieselben";
    /// Small words on that press.
    pub to_the_order = "to the order", "zum Auftrag";
    /// A word of the shop's own, ticked: what it means from now on.
    pub means_from_now_on(label, word) = "“{label}” means {word} in this shop from now on",
        "„{label}“ heißt in dieser Werkstatt ab jetzt {word}";
    /// The second word is unknown too.
    pub not_known_either(word) = "“{word}” is not known either", "„{word}“ ist auch nicht bekannt";
    /// Field: another word for a thing whose word is unknown.
    pub what_do_others_call_it = "What do others call it?", "Wie heißt es sonst?";
    /// Hint of that field.
    pub such_as_brake_pads = "such as brake pads; then its word is known in this shop",
        "z. B. Bremsbeläge; dann kennt die Werkstatt das Wort";
    /// Press beside that field.
    pub read_it_so = "Read it so", "So lesen";
    /// Under a thing that the order knows.
    pub known_on_this_order = "known on this order", "in diesem Auftrag bekannt";
    /// Behind that, where some were missing from the beginning.
    pub there_of(there, all) = " · {there} of {all} there, the rest as found",
        " · {there} von {all} da, der Rest wie vorgefunden";
    /// Before the sort of a thing: read, and likely so.
    pub likely = "likely: ", "wahrscheinlich: ";
    /// Before the sort of a thing: its word is not known.
    pub not_known = "not known: ", "nicht bekannt: ";
    /// Choice: the same goes back, or a new one.
    pub goes_back_question = "Goes back?", "Kommt wieder dran?";
    /// The first of those.
    pub the_same_one = "the same one", "dasselbe";
    /// The second of those.
    pub a_new_one = "a new one", "ein neues";

    /// What may be noted on the walk-round.
    pub scratch_dent = "scratch, dent", "Kratzer, Delle";
    /// What may be noted on the walk-round: a warning lamp.
    pub lamp_lit = "lamp lit", "Leuchte an";
    /// What may be noted on the walk-round.
    pub repaired_before = "repaired before", "früher repariert";
    /// What may be noted on the walk-round: where the key of the locking wheel nuts is.
    pub locking_nut_key = "locking-nut key", "Adapter für die Felgenschlösser";
    /// What may be noted on the walk-round.
    pub leak_wet = "leak, wet", "undicht, feucht";
    /// Title: what was found before anybody touched anything.
    pub walk_round = "Walk-round", "Rundgang";
    /// Heading of that page.
    pub walk_round_it_first = "Walk round it first", "Erst einmal herumgehen";
    /// Under that heading: what it is good for.
    pub not_ours_later = "What is already missing, broken or lit is not ours later.",
        "Was schon fehlt, kaputt ist oder leuchtet, wird uns später nicht angerechnet.";
    /// Under an area that was looked at.
    pub nothing_found_here = "nothing found", "nichts gefunden";
    /// Under an area.
    pub not_looked_at_yet = "not looked at yet", "noch nicht angesehen";
    /// Under an area: how much was noted there.
    pub noted_here(n) = "{n} noted", "{n} notiert";
    /// Press beside an area, with its name under it.
    pub nothing_found = "Nothing found", "Nichts gefunden";
    /// A note of a sort that this program does not know.
    pub noted = "noted", "notiert";
    /// Sort of what is missing.
    pub screws_bolts = "screws, bolts", "Schrauben";
    /// Sort of what is missing.
    pub wheel_nuts_bolts = "wheel nuts, bolts", "Radmuttern, Radschrauben";
    /// Folded form: clips or screws were missing when the vehicle came.
    pub clips_or_screws_missing = "Clips or screws missing", "Clips oder Schrauben fehlen";
    /// Field of that form: what they are called.
    pub called = "Called", "Bezeichnung";
    /// Hint of that field.
    pub such_as_tray_clips = "such as tray clips", "z. B. Clips der Verkleidung";
    /// Field of that form.
    pub how_many_should_be = "How many there should be", "Wie viele es sein sollten";
    /// Field of that form.
    pub which_are_missing = "Which are missing", "Welche fehlen";
    /// Hint of that field.
    pub their_numbers = "their numbers, such as 3, 5", "ihre Nummern, z. B. 3, 5";
    /// Press of that form.
    pub note_as_found = "Note it as found", "Als vorgefunden notieren";
    /// Small words at the end of the walk-round: how much was noted.
    pub things_noted(n) = ["{n} thing noted", "{n} things noted"], ["{n} Punkt notiert", "{n} Punkte notiert"];
    /// The same, where other areas were not spoken of.
    pub things_noted_rest(n, left) = ["{n} thing noted, nothing in the other {left}", "{n} things noted, nothing in the other {left}"],
        ["{n} Punkt notiert, nichts in den anderen {left}", "{n} Punkte notiert, nichts in den anderen {left}"];
    /// Small words at the end of the walk-round.
    pub nothing_found_anywhere = "nothing found anywhere", "nirgends etwas gefunden";
    /// The large press of the walk-round.
    pub finish_walk_round = "Finish walk-round", "Rundgang abschließen";
    /// Small words on a press, and kept as a note: the key of the locking nuts is back.
    pub back_with_the_vehicle = "back with the vehicle", "wieder beim Fahrzeug";
    /// Before where the key of the locking nuts is.
    pub locking_nut_key_is = "Locking-nut key: ", "Adapter für die Felgenschlösser: ";
    /// Behind that, where only a photo was noted.
    pub noted_by(who) = "noted by {who}", "notiert von {who}";
    /// Before a wheel comes off.
    pub locking_nuts_question = "Locking nuts? Nobody noted where the key is",
        "Felgenschlösser? Niemand hat notiert, wo der Adapter ist";
    /// Behind that row.
    pub note_it_now = "note it", "notieren";
    /// When the vehicle leaves: before where the key was noted to be.
    pub locking_nut_key_as_noted = "Locking-nut key, as noted: ", "Adapter für die Felgenschlösser, wie notiert: ";
    /// Press under that.
    pub the_key_is_back = "The key is back", "Der Adapter ist zurück";

    /// What is put into a hose that was opened; it stands before the hose.
    pub plug_in_the_hose = "plug", "Stopfen";
    /// What is put onto a hose that was opened; it stands before the hose.
    pub pinch_clamp = "pinch clamp", "Abklemmzange";
    /// Press under a screw that was typed and is still in.
    pub it_wont_come_out = "It won't come out", "Geht nicht raus";
    /// Small words on that press.
    pub rounded_stuck_snapped = "rounded, stuck, snapped: note the snag", "rundgedreht, festgegangen, abgerissen: Problem notieren";
    /// Under a thing that goes in with a step.
    pub goes_in_counted = "goes in, counted · untick if not used",
        "kommt hinein, wird gezählt · abwählen, wenn nicht gebraucht";

    /// Title, heading and press: what is owed, checked and proved.
    pub owed_checks_proof = "Owed, checks, proof", "Noch zu tun, Prüfungen, Nachweise";
    /// Heading: what holds the vehicle beside what is owed, checked and proved.
    pub also_in_the_way = "Also in the way", "Außerdem noch offen";
    /// Small words on the press to the hand-over.
    pub it_is_fit_to_go = "it is fit to go", "technisch in Ordnung";
    /// Under "Owed", when nothing is.
    pub nothing_is_owed = "Nothing is owed.", "Nichts mehr zu tun.";
    /// Folded form.
    pub something_else_is_owed = "Something else is owed", "Es ist noch etwas zu tun";
    /// Choice: before which gate work has to be done.
    pub before = "Before", "Vor";
    /// A gate: the engine starts.
    pub before_start = "start", "Starten";
    /// A gate: the vehicle is lowered from the lift.
    pub before_lower = "lower", "Absenken";
    /// A gate: the vehicle rolls.
    pub before_roll = "roll", "Rollen";
    /// A gate: the vehicle drives on the road.
    pub before_road = "road", "Probefahrt";
    /// A gate: the vehicle is handed over.
    pub before_hand_over = "hand over", "Übergabe";
    /// Press of that form.
    pub it_is_owed = "It is owed", "Ist zu tun";
    /// Said where nothing was ticked.
    pub tick_what_is_done = "Tick what is done", "Abhaken, was erledigt ist";
    /// Name of the list, for those who hear the page.
    pub what_is_done_list = "What is done", "Was erledigt ist";
    /// The large press under the list of what is owed.
    pub done_as_ticked = "Done as ticked", "Erledigt wie abgehakt";
    /// Small words on that press.
    pub nothing_ticked_by_itself = "tick each one you did", "jedes abhaken, das gemacht ist";
    /// Behind what is done after the vehicle has left, or once it is cold again.
    pub comes_later = "comes later", "kommt später";
    /// The large press where one thing alone is owed, under it.
    pub done_one = "That is done", "Das ist erledigt";
    /// Asked once where a proof passed and nothing was measured or told.
    pub no_reading_told = "Passed, and no reading is told: how far, how long, what did it read?",
        "Bestanden, aber ohne Messwert: wie weit, wie lange, was wurde abgelesen?";
    /// Heading: a second person looks at what was moved.
    pub second_check = "Second check", "Zweite Prüfung";
    /// Under that heading.
    pub second_pair_of_eyes = "Brakes, steering, wheels and their like want a second pair of eyes.",
        "Bremsen, Lenkung, Räder und dergleichen brauchen ein zweites Paar Augen.";
    /// Press: whoever looks at the page checked them.
    pub i_checked_them = "I checked them", "Von mir geprüft";
    /// Small words on that press.
    pub all_of_these = "all of them", "alle";
    /// Press for somebody else.
    pub somebody_checked_them(name) = "{name} checked them", "{name} hat geprüft";
    /// Small words on that press.
    pub somebody_presses_this(name) = "{name} presses this", "{name} drückt hier";
    /// Press: another person than those named.
    pub somebody_else = "Somebody else", "Jemand anders";
    /// Small words on that press.
    pub change_the_person = "change the person", "Person wechseln";
    /// Press to the walk back of one who works alone.
    pub working_alone = "Working alone: re-check in reverse", "Allein: rückwärts nachprüfen";
    /// Small words on that press.
    pub list_other_way_round = "the list the other way round", "die Liste rückwärts";
    /// Heading over road test, leak test and their like.
    pub proof = "Proof", "Nachweis";
    /// Under that heading, when nothing is missing.
    pub needed_is_proved = "What is needed is proved.", "Was nötig ist, ist nachgewiesen.";
    /// Hint of the field for a remark on a proof.
    pub readings_how_far = "readings, how far, how long", "Messwerte, wie weit, wie lange";
    /// Press: a proof came out well.
    pub passed(what) = "{what} passed", "{what} bestanden";
    /// Folded form.
    pub another_proof = "Another proof, or one again", "Ein anderer Nachweis, oder einer noch einmal";
    /// Choice of that form.
    pub what_was_tried = "What was tried", "Was geprüft wurde";
    /// Press of that form.
    pub it_passed = "It passed", "Bestanden";
    /// Press: a recorded drive is looked at.
    pub judge_a_recording = "Judge a recording", "Aufzeichnung beurteilen";
    /// Small words on that press.
    pub from_a_loggers_file = "from a logger's file", "aus der Datei eines Loggers";
    /// Press: readings of a drive are typed.
    pub readings_by_hand = "Readings by hand", "Messwerte von Hand";
    /// Small words on that press.
    pub typed_at_the_kerb = "typed at the kerb", "am Straßenrand eingegeben";
    /// Press: a proof came out badly.
    pub it_failed = "It failed", "Nicht bestanden";
    /// Press: the complaint did not come back on the drive.
    pub couldnt_reproduce = "Couldn't reproduce", "Nicht nachstellbar";
    /// Small words on that press.
    pub complaint_did_not_come_back = "the complaint did not come back on",
        "die Beanstandung trat nicht wieder auf";
    /// A proof: the cooling system holds its pressure.
    pub leak_test_proof = "leak test", "Dichtprüfung";
    /// A proof.
    pub road_test = "road test", "Probefahrt";
    /// A proof.
    pub brake_test = "brake test", "Bremsprüfung";
    /// A proof: somebody looked for fuel under pressure.
    pub fuel_leak_look = "fuel leak look", "Sicht\u{ad}prüfung auf Kraft\u{ad}stoff\u{ad}austritt";
    /// A proof: the lamp of airbags and belts goes out as it should.
    pub restraint_lamp = "restraint lamp", "Kontrolle der Airbag\u{ad}leuchte";
    /// A proof: the mixture of coolant and water.
    pub coolant_mix = "coolant mix", "Prüfung der Kühl\u{ad}mittel\u{ad}mischung";

    /// Heading: pads, discs, tyres and battery, measured.
    pub measures = "Measures", "Messwerte";
    /// Under that heading.
    pub fill_in_what_was_measured = "Fill in what you measured; the rest stays as it is. A figure without a unit is in the unit beside it.",
        "Eintragen, was gemessen wurde; der Rest bleibt, wie er ist. Eine Zahl ohne Einheit gilt in der Einheit daneben.";
    /// Field: the least that is allowed.
    pub least_allowed = "Least allowed", "Mindest\u{ad}maß";
    /// Behind a measure.
    pub below_the_least = ", below the least", ", unter dem Mindestmaß";
    /// Beside a field: what was measured on the visit before, and when.
    pub was_before(value, day) = "was {value}, {day}", "zuletzt {value}, {day}";
    /// At which corner something is measured.
    pub front_left = "front left", "vorne links";
    /// At which corner something is measured.
    pub front_right = "front right", "vorne rechts";
    /// At which corner something is measured.
    pub rear_left = "rear left", "hinten links";
    /// At which corner something is measured.
    pub rear_right = "rear right", "hinten rechts";

    /// Press: a pass of a group is done.
    pub pass_of_done(nth, total) = "Pass {nth} of {total} done", "Durchgang {nth} von {total} gemacht";
    /// All of a group, where it is counted.
    pub all_n(n) = "all {n}", "alle {n}";
    /// The bolts of a group that a pass has still to reach.
    pub the_last(n, which) = "the last {n}: {which}", "die letzten {n}: {which}";
    /// Over a group without a torque.
    pub no_torque_known_here = "No torque is known here: the maker's, or snug and checked.",
        "Hier ist kein Drehmoment bekannt: das des Herstellers, oder handfest und geprüft.";
    /// Row under that.
    pub say_its_torque = "Say its torque", "Drehmoment angeben";
    /// Before the numbers of bolts, in the sequence of tightening.
    pub in_this_sequence = "In this sequence: ", "In dieser Reihenfolge: ";
    /// Folded: part of a pass is told by a count.
    pub called_away(there) = "Called away? How many of {there} are done",
        "Weggerufen? Wie viele von {there} fertig sind";
    /// Folded below a stage: photos of what moves in it.
    pub photos_of_these(n) = "Photos of these: {n}", "Fotos davon: {n}";
    /// Folded below a stage: somebody has to leave it.
    pub called_away_from_it = "Called away?", "Weggerufen?";
    /// Field there: what whoever goes on should know.
    pub what_the_next_should_know = "What the next one should know", "Was wissen muss, wer weitermacht";
    /// Beside that field.
    pub such_as_waits_for_the_drill = "such as: waits for the drill", "etwa: wartet auf den Bohrer";
    /// Press there.
    pub stop_here = "Stop here", "Hier aufhören";
    /// Small words on a press with a number.
    pub of_so_many(n) = "of {n}", "von {n}";

    /// Heading out of reach of the network: a thing came off that the plan does not have.
    pub what_came_off = "What came off?", "Was ist abgekommen?";
    /// Under that heading.
    pub out_of_reach_came_off = "The shop's program is out of reach. Say it in your own words; what it owes and which gates it shuts is worked out once it is sent.",
        "Das Programm der Werkstatt ist nicht erreichbar. In eigenen Worten notieren; was dadurch zu tun ist und was es sperrt, zeigt sich, wenn es gesendet ist.";
    /// Hint of the field for what came off.
    pub such_as_clips_or_heat_shield = "such as 4 clips M6, or heat shield",
        "z. B. 4 Clips M6 oder Hitzeschild";
    /// Title and press to the page on which things come off.
    pub off = "Off", "Ausbauen";
    /// Press out of reach of the network: the thing is off now.
    pub it_is_off = "Off", "Ist ab";
    /// Heading out of reach of the network.
    pub what_went_wrong = "What went wrong?", "Was ist schiefgegangen?";
    /// Under that heading.
    pub out_of_reach_went_wrong = "The shop's program is out of reach. Say what you see; what helps is looked up once it is sent.",
        "Das Programm der Werkstatt ist nicht erreichbar. Notieren, was zu sehen ist; was hilft, wird nachgesehen, wenn es gesendet ist.";
    /// Field under that.
    pub what_you_see = "What you see", "Was zu sehen ist";
    /// Hint of that field.
    pub such_as_bolt_snapped = "such as bolt 6 of the housing snapped below the face",
        "z. B. Schraube 6 am Gehäuse unter der Fläche abgerissen";
    /// Press under that.
    pub put_it_down = "Put it down", "Aufschreiben";
    /// Refusal: no order of that number.
    pub no_order(number) = "there is no order {number}", "es gibt keinen Auftrag {number}";

    /// Heading: the printed sheet that bolts are laid on for the photo.
    pub the_sheet = "The sheet", "Der Bogen";
    /// How the sheet is used.
    pub how_the_sheet_is_used = "Print it at 100 %. Lay the pieces on it, apart from each other, and take the whole sheet from above.",
        "Mit 100 % drucken. Die Teile mit Abstand darauf legen und den ganzen Bogen von oben aufnehmen.";
    /// Press: the sheet to print.
    pub sheet_a4 = "Sheet, A4", "Bogen, A4";
    /// Press: the sheet to print, in the American size.
    pub sheet_letter = "Sheet, Letter", "Bogen, Letter";
    /// Refusal: no sheet of that name.
    pub sheets_there_are = "the sheet comes as a4.pdf and letter.pdf", "den Bogen gibt es als a4.pdf und letter.pdf";
    /// Refusal: which field it is about.
    pub the_check_line = "the check line", "die Prüflinie";
    /// Refusal: what was typed, in quotation marks.
    pub is_no_length(typed) = "{typed} is no length", "{typed} ist keine Länge";
    /// Refusal: what to write instead.
    pub write_what_it_measures = "write what the 100 mm line measures, such as 99.5",
        "angeben, wie lang die 100-mm-Linie ist, z. B. 99,5";
    /// Over the photo, when the order has nothing to count.
    pub no_fasteners_are_out = "No fasteners are out on this order. What lies on the sheet is measured all the same.",
        "Bei diesem Auftrag sind keine Schrauben ab. Was auf dem Bogen liegt, wird trotzdem gemessen.";
    /// Over the groups that are out.
    pub what_should_lie_there = "What should lie there", "Was dort liegen soll";
    /// Folded: groups without a size.
    pub groups_not_counted(n) = ["{n} group can't be counted", "{n} groups can't be counted"],
        ["{n} Gruppe lässt sich nicht zählen", "{n} Gruppen lassen sich nicht zählen"];
    /// Field.
    pub photo_of_the_sheet = "Photo of the sheet", "Foto des Bogens";
    /// Folded: the line that says how large the sheet was printed.
    pub line_on_the_second_page = "The 100 mm line on its second page", "Die 100-mm-Linie auf der zweiten Seite";
    /// Field under that.
    pub it_measures_mm = "It measures, mm", "Sie misst, mm";
    /// Hint of that field.
    pub empty_if_whole_sheet = "leave empty if the whole sheet is in the picture",
        "leer lassen, wenn der ganze Bogen im Bild ist";
    /// Press: the photo is counted.
    pub count = "Count", "Zählen";
    /// What the picture shows, for those who hear the page.
    pub photo_that_was_counted = "The photo that was counted", "Das Foto, das gezählt wurde";
    /// Heading over the form for one more photo.
    pub another_photo = "Another photo", "Noch ein Foto";
    /// Press: the bolts of a group are of the size that was measured.
    pub are_of_size(what, size) = "{what} are {size}", "{what}: {size}";
    /// Small words on that press.
    pub of_them_measured(n) = "{n} of them, as measured", "{n} davon, wie gemessen";
    /// Kept with the photo: what was counted.
    pub counted_by_photo(said) = "Counted by photo: {said}", "Mit Foto gezählt: {said}";
    /// Press: the count is right.
    pub i_looked_it_is_so = "I looked: it is so", "Nachgesehen: es stimmt";
    /// Small words on that press.
    pub kept_with_its_photo = "kept with its photo", "mit dem Foto gespeichert";
    /// Press: the count is kept, though not complete.
    pub keep_what_was_seen = "Keep what was seen", "Speichern, was zu sehen war";
    /// Small words on that press.
    pub with_its_photo = "with its photo", "mit dem Foto";
}
