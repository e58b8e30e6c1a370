//! What is said where something is worked out.

use phrases::phrases;

phrases! {
    /// Title and heading of the page of all calculators, the way back to it, and the press of each form.
    pub work_it_out = "Work it out", "Rechnen";
    /// The press of each form.
    pub work_out = "Work it out", "Ausrechnen";
    /// Refused.
    pub no_such_calculator = "there is no such calculator", "diesen Rechner gibt es nicht";
    /// Refused; in the hole the name of a subject, in small letters in English.
    pub cannot_be_asked_that(subject) = "{subject} cannot be asked that", "{subject}: das lässt sich dort nicht rechnen";
    /// A row: the way to the notes of a subject.
    pub what_to_know_of_it = "What to know of it", "Was man dazu wissen muss";
    /// Heading.
    pub height_of_the_shop = "Height of the shop", "Höhe der Werkstatt";
    /// Below that heading; the height follows, then the next text.
    pub shop_stands_at = "The shop stands at ", "Die Werkstatt liegt auf ";
    /// Behind the height.
    pub coolant_boils_lower = ". Coolant boils lower the higher you are.", ". Je höher der Ort, desto eher kocht das Kühlmittel.";
    /// Below that heading, where no height was told.
    pub height_not_told = "Not told yet. Coolant boils lower the higher you are.", "Noch nicht angegeben. Je höher der Ort, desto eher kocht das Kühlmittel.";
    /// Label of a field.
    pub height_above_the_sea = "Height above the sea", "Höhe über dem Meer";
    /// Beside that field.
    pub height_hint = "with its unit, such as 650 m or 2100 ft", "mit Einheit, z. B. 650 m";
    /// A press.
    pub keep_the_height = "Keep the height", "Höhe speichern";
    /// A fold above a form.
    pub how_to_test = "How to test", "So wird geprüft";
    /// Above a form of which something cannot be read.
    pub not_worked_out_yet = "Not worked out yet: see below what is wrong.", "Noch nicht gerechnet: unten steht, was nicht stimmt.";
    /// Where a refusal came from: what a program sent.
    pub the_body = "the body", "das Gesendete";
    /// How to mend it, for a program.
    pub send_an_object = "send an object of fields, such as {\"want\": \"50 %\"}; /api/calc lists them", "ein Objekt mit Feldern senden, etwa {\"want\": \"50 %\"}; /api/calc nennt sie";
    /// Refused, for a program: a field holds what no field takes.
    pub field_holds(field, what) = "`{field}` holds {what}", "`{field}` enthält {what}";
    /// Where a refusal came from: what was asked.
    pub the_fields = "the fields", "die Felder";
    /// Refused.
    pub no_answer_to_them = "there is no answer to them", "darauf gibt es keine Antwort";
    /// How to mend it.
    pub look_at_each_again = "look at each again", "jedes noch einmal ansehen";

    /// Behind the number of a row that is not filled in yet.
    pub if_there_is_one = ", if there is one", ", falls vorhanden";
    /// Below the rows of a form.
    pub room_for_another = "Work it out, and there is room for another.", "Ausrechnen, dann ist Platz für noch eins.";
    /// A press: the place that was tapped last goes.
    pub take_the_last_away = "Take the last away", "Letztes entfernen";
    /// Label of the field for a file.
    pub or_from_a_file = "Or take it from a file", "Oder aus einer Datei";
    /// Heading above the steps of an answer.
    pub what_is_done = "What is done", "Was zu tun ist";
    /// Heading above the other answers.
    pub other_ways = "Other ways", "Andere Wege";
    /// Beside a way: it can be used.
    pub holds = "holds", "hält";
    /// Beside a way in a list: it cannot be used.
    pub no = "no", "nein";
    /// The fold with how an answer was found.
    pub how_it_was_found = "How it was found", "Wie gerechnet wurde";

    /// Behind a torque that stays what it was.
    pub as_before = ", as before", ", wie vorher";
    /// In place of a torque.
    pub no_torque_is_known = "No torque is known", "Kein Drehmoment bekannt";
    /// Beside that.
    pub makers_holds = "The maker's holds: none is made up here.", "Es gilt das des Herstellers: Hier wird keines erfunden.";
    /// A way to mend a thread, and its bolt; whether it holds follows.
    pub way_with_bolt(way, bolt) = "{way}, bolt {bolt} · ", "{way}, Schraube {bolt} · ";
    /// Whether a way can be used.
    pub does_not_hold = "does not hold", "hält nicht";
    /// Below a drawing of a joint: after it was mended.
    pub afterwards = "Afterwards", "Danach";
    /// The fold with the joint as it was.
    pub as_it_was_found = "As it was found", "Wie vorgefunden";
    /// The fold with how an answer was found.
    pub how_was_this_found = "How was this found?", "Wie wurde das gerechnet?";
    /// In place of a value.
    pub unknown = "unknown", "unbekannt";
    /// What a line of a calculation is of; its equation follows.
    pub line_of(what) = "{what}: ", "{what}: ";
    /// Before where a figure is from.
    pub source = "Source", "Quelle";
    /// Behind a source: it was read there.
    pub published = "published", "veröffentlicht";
    /// Behind a source: another program prints it so.
    pub other_implementation = "other-implementation", "anderes Programm";
    /// Behind a source: the trade does it so, and nobody wrote it down.
    pub common_practice = "common-practice", "üblich";
    /// Behind a source: from memory, not looked up.
    pub from_memory = "memory", "aus dem Gedächtnis";
    /// Before a remark on a figure.
    pub note = "Note", "Anmerkung";
    /// Why a way stands at its place among others.
    pub why_it_stands_at(rank, why) = "Why it stands at {rank}: {why}", "Warum auf Platz {rank}: {why}";
    /// The fold with the ways to get the rest of a bolt out.
    pub getting_the_stub_out = "Getting the stub out, least risk first", "Den Rest herausholen, das kleinste Risiko zuerst";
    /// Behind a way that cannot be used here.
    pub not_here = "not here", "hier nicht";
    /// How much the rest of a bolt may be turned with.
    pub at_most_on_the_stub(torque) = "At most {torque} on the stub, as a guide", "Höchstens {torque} am Rest, als Richtwert";
    /// When to stop with a way.
    pub stop_when(what) = "Stop when {what}", "Aufhören, wenn {what}";
    /// How long something takes: mostly, at least, at most.
    pub minutes(mid, low, high) = "{mid} min ({low} to {high})", "{mid} min ({low} bis {high})";

    /// Refused; in the hole the name of a subject, in small letters in English.
    pub nothing_kept_with_an_order(subject) = "nothing of {subject} is kept with an order", "{subject}: davon wird beim Auftrag nichts gespeichert";
    /// Refused.
    pub no_such_item = "there is no such item on this order", "dieses Teil gibt es in diesem Auftrag nicht";
    /// The large press that keeps an answer as a proof.
    pub save_road_test_passed = "Save: the road test passed", "Speichern: Probefahrt bestanden";
    /// The large press that keeps an answer as a proof.
    pub save_road_test_failed = "Save: the road test failed", "Speichern: Probefahrt nicht bestanden";
    /// Small on that press.
    pub proof_with_readings = "the proof, with its readings", "der Nachweis, mit seinen Messwerten";
    /// The large press that keeps an answer.
    pub save_couldnt_reproduce = "Save: couldn't reproduce", "Speichern: nicht nachstell\u{ad}bar";
    /// Small on that press.
    pub did_not_come_back_on = "the complaint did not come back on", "die Beanstandung trat nicht wieder auf";
    /// The large press that keeps an answer.
    pub save_with_the_order = "Save with the order", "Beim Auftrag speichern";
    /// Small on that press: a drive that tells nothing.
    pub proves_nothing_yet = "it proves nothing yet", "noch kein Nachweis";
    /// The large press that keeps how a belt lies.
    pub it_lies_like_this = "It lies like this", "So liegt er";
    /// Small on that press.
    pub saved_with_the_order = "saved with the order", "beim Auftrag gespeichert";
    /// Small on the press that keeps an answer.
    pub with_its_readings = "with its readings", "mit den Messwerten";
    /// Among what a press closes: how full something is.
    pub its_level = "its level", "der Füllstand";
    /// Small on the press that keeps an answer: what it closes of what is still to do.
    pub closes(what) = "closes: {what}", "erledigt: {what}";
    /// A row that leads to a calculator, at an item.
    pub steps_and_limits(name) = "{name}: steps and limits", "{name}: Schritte und Grenzen";
    /// A row that leads to the page on which it is said how a belt lies.
    pub say_again_how_it_lies = "Say again how it lies", "Noch einmal angeben, wie er liegt";
    /// The same, while the belt is still on.
    pub say_before_it_comes_off = "Say how it lies before it comes off", "Angeben, wie er liegt, bevor er abkommt";
    /// The same, once the belt is off.
    pub say_how_it_lay = "Say how it lay", "Angeben, wie er lag";
    /// Below that row.
    pub tap_the_pulleys = "tap the pulleys in sequence; a photo of the label does too", "Scheiben der Reihe nach antippen; ein Foto vom Aufkleber tut es auch";
    /// Before the wheels that a belt runs over, in sequence.
    pub routed_as_found = "Routed as found: ", "Verlauf wie vorgefunden: ";
    /// Below a drawing of how a belt lies.
    pub seen_by(who) = "seen by {who}", "gesehen von {who}";
    /// Heading above how such a belt lies on another vehicle.
    pub on_another_of_this_kind = "On another of this kind", "An einem anderen Fahrzeug dieser Art";
    /// Below that drawing.
    pub on_order(number) = "on order {number}", "bei Auftrag {number}";
    /// A press.
    pub take_this_one_over = "Take this one over", "Diesen übernehmen";
    /// Small on that press.
    pub look_whether_the_same = "look whether it is the same", "nachsehen, ob es derselbe ist";
    /// A calculator's name; its answer follows.
    pub answer_of(name) = "{name}: ", "{name}: ";
    /// Below a kept answer.
    pub kept_by(who) = "kept by {who}", "gespeichert von {who}";
}
