//! What is said of a snag, from its finding to its end.

use phrases::phrases;

phrases! {
    /// What it looks like: a bolt whose rest stands out of its hole.
    pub snapped_sticks_out = "snapped, sticks out", "abgerissen, steht vor";
    /// What it looks like: a bolt whose rest ends at the face.
    pub snapped_flush = "snapped flush", "bündig abgerissen";
    /// What it looks like: a bolt whose rest is in its hole.
    pub snapped_below = "snapped below", "tiefer abgerissen";
    /// What it looks like.
    pub stuck = "stuck", "fest\u{ad}gegangen";
    /// What it looks like.
    pub thread_stripped = "thread stripped", "Gewinde ausgerissen";
    /// What it looks like.
    pub head_rounded = "head rounded", "Kopf rundgedreht";
    /// What it looks like.
    pub torn = "torn", "gerissen";
    /// What it looks like.
    pub worn = "worn", "ver\u{ad}schlissen";
    /// What it looks like.
    pub broken = "broken", "gebrochen";
    /// What it looks like.
    pub bent = "bent", "verbogen";
    /// What it looks like.
    pub corroded = "corroded", "verrostet";
    /// What it looks like.
    pub leaking = "leaking", "undicht";
    /// How the bolts of a group stand.
    pub on_a_circle = "on a circle", "im Kreis";
    /// How the bolts of a group stand.
    pub in_two_rows = "in two rows", "in zwei Reihen";
    /// How the bolts of a group stand.
    pub around_an_edge = "around an edge", "rundum am Rand";
    /// Row: the picture is drawn otherwise; one of the three before.
    pub they_stand(how) = "They stand {how}", "Sie stehen {how}";
    /// Behind that row.
    pub show_so = "show so", "so zeigen";
    /// Heading of the form for a snag; the thing stands behind it.
    pub found = "Found", "Gefunden";
    /// Said where nothing was chosen.
    pub tap_what_it_looks_like = "Tap what it looks like", "Antippen, wie es aussieht";
    /// The large press.
    pub note_the_snag = "Note the snag", "Problem notieren";
    /// Said where no bolt was chosen.
    pub tap_which_one = "Tap which one it is", "Antippen, welches es ist";
    /// Over the bolts of a group.
    pub which_one = "Which one", "Welches";

    /// A price that covers the work so often.
    pub covers_it(amount, often) = "{amount} covers it {often}", "{amount} reicht {often}";
    /// Heading: what open snags do to hours and price.
    pub what_it_does_to_the_job = "What it does to the job", "Was es für den Auftrag bedeutet";
    /// Before the hours that are likely now.
    pub now_it_is = "Now ", "Jetzt ";
    /// Before the hours that were likely before.
    pub without_it = "Without it ", "Ohne das ";
    /// Row to the page of the odds.
    pub how_sure = "How sure, and what to ask for", "Wie sicher, und wonach zu fragen ist";
    /// Before who found it, and when.
    pub found_by = "Found by ", "Gefunden von ";
    /// Words that somebody typed.
    pub quoted(words) = "“{words}”", "„{words}“";
    /// Before how it was put right.
    pub was_put_right = "Put right: ", "Behoben: ";

    /// No way to repair a thread was found.
    pub no_way_is_known = "No way is known", "Kein Weg ist bekannt";
    /// Beside the heading: which of the ways that hold is shown.
    pub way_of(rank, all) = "way {rank} of {all}", "Weg {rank} von {all}";
    /// Heading over the working.
    pub behind_it = "Behind it", "Was dahintersteht";
    /// Row back to the questions.
    pub answer_something_else = "Answer something else", "Etwas anderes antworten";
    /// The large press.
    pub take_this_way = "Take this way", "Diesen Weg nehmen";
    /// Small words on that press, behind minutes: money for parts.
    pub plus_parts(money) = ", +{money} parts", ", +{money} Teile";
    /// Small words on that press, behind those: it is more than was agreed.
    pub ask_again = ": ask again", ": neu fragen";
    /// Small words on that press.
    pub time_and_price_unknown = "time and price are not known: set them", "Zeit und Preis sind nicht bekannt: festlegen";
    /// Before minutes.
    pub time = "Time", "Zeit";
    /// Behind an amount: the least and the most it may be.
    pub low_to_high(low, high) = " ({low} to {high})", " ({low} bis {high})";
    /// Before a price.
    pub price_then = "Price then, before tax", "Preis dann, ohne Steuer";
    /// Behind a price: so much more than was agreed.
    pub so_much_over(over) = "({over} over)", "({over} darüber)";
    /// Before the next.
    pub what_was_agreed = "What was agreed", "Vereinbart";
    /// What was agreed cannot be compared here.
    pub has_tax_in_it = "has tax in it: look at the price page", "enthält Steuer: auf der Preisseite nachsehen";
    /// Heading over the steps of a repair.
    pub what_is_done = "What is done", "Was gemacht wird";

    /// Heading over ways to loosen a bolt.
    pub getting_it_out = "Getting it out, least risk first", "Herausbekommen, das kleinste Risiko zuerst";
    /// Before what one sees or feels.
    pub stop_when = "Stop when ", "Aufhören, wenn ";
    /// Before a way that must not be used here.
    pub not_here = "Not here: ", "Hier nicht: ";
    /// Folded: where the bolt sits.
    pub where_it_sits = "Where it sits", "Wo sie sitzt";
    /// Choice.
    pub heat_and_sparks_here = "Heat and sparks here", "Hitze und Funken hier";
    /// The first of those.
    pub hurt_nothing_near = "hurt nothing near", "schaden nichts in der Nähe";
    /// The second of those.
    pub would_or_not_looked = "would, or not looked", "schaden, oder nicht nachgesehen";
    /// Choice.
    pub the_wrench_goes = "The wrench goes", "Der Schlüssel greift";
    /// The first of those.
    pub over_the_head = "over the head", "über den Kopf";
    /// The second of those.
    pub into_it = "into it", "in den Kopf";
    /// Choice: the metal.
    pub it_is_screwed_into = "It is screwed into", "Eingeschraubt in";
    /// Press under those.
    pub show_what_fits = "Show what fits", "Zeigen, was passt";
    /// Heading.
    pub what_came_of_it = "What came of it", "Was daraus wurde";
    /// Heading: the bolt came out.
    pub it_is_out = "It is out", "Sie ist heraus";
    /// Kept with the snag: what became of the bolt.
    pub it_snapped_note = "it snapped", "sie ist abgerissen";
    /// Kept with the snag: what became of the bolt.
    pub thread_came_with_it = "its thread came with it", "das Gewinde kam mit";
    /// Heading.
    pub it_got_worse = "It got worse", "Es wurde schlimmer";
    /// Choice.
    pub what_is_left_of_it = "What is left of it", "Was davon noch da ist";
    /// The first of those.
    pub sticks_out = "sticks out", "steht vor";
    /// The second of those.
    pub flush = "flush", "bündig";
    /// The third of those: deeper than the face.
    pub below_the_face = "below", "tiefer";
    /// Press.
    pub it_snapped = "It snapped", "Sie ist abgerissen";
    /// Press.
    pub the_thread_came_out = "The thread came out", "Das Gewinde kam mit heraus";

    /// Over the bare text of a way that this program cannot read; who took it, and when.
    pub kept_by_newer_program(taken) = "A way was taken by {taken}, kept by a newer program. As it was kept:",
        "Ein Weg wurde genommen von {taken}, notiert von einem neueren Programm. So ist er notiert:";
    /// Before who took a way, and when.
    pub taken_by = "Taken by ", "Genommen von ";
    /// Heading.
    pub ways_not_taken = "The ways that were not taken", "Die Wege, die nicht genommen wurden";
    /// Behind a way.
    pub holds = "holds", "hält";
    /// Small words on a press.
    pub bolt_goes_in_with_others = "the bolt goes in with the others", "die Schraube kommt mit den anderen hinein";
    /// Before the size of a thread that was repaired.
    pub from_now_on = "From now on: ", "Ab jetzt: ";
    /// Behind a step that is done.
    pub done = "done", "gemacht";
    /// Under the steps: which bolt goes in, with which torque; the words in quotation marks are the name of a page.
    pub then_with_the_others(bolt, torque) = "Then with the others, on “Put back”: {bolt} at {torque}",
        "Dann mit den anderen, unter „Einbauen“: {bolt} mit {torque}";
    /// The large press, when all steps are done.
    pub it_is_sound = "It is sound", "Es ist in Ordnung";
    /// Small words on that press.
    pub bolt_ready_to_go_in = "the bolt is out, ready to go in", "die Schraube ist heraus, bereit zum Einbauen";
    /// The large press: all steps are done in one tap.
    pub all_done_as_listed = "All done as listed", "Alles gemacht wie aufgeführt";
    /// Small words on that press.
    pub steps(n) = ["{n} step", "{n} steps"], ["{n} Schritt", "{n} Schritte"];
    /// Row to the price.
    pub price_now(net) = "Price now {net} before tax", "Preis jetzt {net} ohne Steuer";
    /// Under that row.
    pub over_what_was_agreed(over) = "{over} over what was agreed: ask for a yes", "{over} über dem Vereinbarten: um Zustimmung fragen";
    /// Folded.
    pub hole_as_described = "The hole as it was described", "Das Loch, wie es beschrieben wurde";
    /// Folded.
    pub not_this_way_after_all = "Not this way after all", "Doch nicht dieser Weg";
    /// Under that.
    pub takes_back_the_way = "Takes back the way, its steps and its parts.", "Nimmt den Weg, seine Schritte und seine Teile zurück.";
    /// Box to tick under that.
    pub off_the_price_too = "Off the price too", "Auch vom Preis nehmen";
    /// Press under that.
    pub take_the_way_back = "Take the way back", "Weg zurücknehmen";

    /// Folded, where nothing is known of a bolt.
    pub the_bolt_say_what = "The bolt: say what it is", "Die Schraube: angeben, was es für eine ist";
    /// Under that.
    pub no_torque_is_made_up = "no torque is known: none is made up", "kein Drehmoment bekannt: es wird keines erfunden";
    /// Under that: who gives the torque.
    pub torque_from(source) = "torque from {source}", "Drehmoment: {source}";
    /// Whoever gives the torque, where nobody is named.
    pub this_order = "this order", "dieser Auftrag";
    /// The large press.
    pub show_repair_options = "Show repair options", "Reparaturwege zeigen";
    /// Folded.
    pub came_out_or_another_way = "It came out, or it was put right another way", "Sie kam heraus, oder es wurde anders behoben";

    /// A thing that is inside during a repair; the bolt stands behind it.
    pub chips_of_the_drill = "chips of the drill", "Bohrspäne";
    /// A thing that is inside during a repair; the bolt stands behind it.
    pub tang_of_the_insert = "tang of the insert", "Mitnehmerzapfen des Einsatzes";
    /// A thing that is inside during a repair; the bolt stands behind it.
    pub rag_in_the_opening = "rag in the opening", "Lappen in der Öffnung";
    /// On the price: the labour of a repair.
    pub thread_repair(what, minutes) = "Thread repair, {what}: {minutes}", "Gewindereparatur, {what}: {minutes}";

    /// How a thread was put right.
    pub out_all_as_before = "out, all as before", "heraus, alles wie vorher";
    /// How a thread was put right.
    pub thread_chased = "thread chased", "Gewinde nachgeschnitten";
    /// How a thread was put right.
    pub wire_insert = "wire insert", "Draht\u{ad}gewinde\u{ad}einsatz";
    /// How a thread was put right.
    pub solid_bushing = "solid bushing", "Gewindebuchse";
    /// How a thread was put right.
    pub larger_thread = "larger thread", "größeres Gewinde";
    /// How a thread was put right.
    pub longer_bolt = "longer bolt", "längere Schraube";
    /// How a thread was put right.
    pub new_part = "new part", "Neuteil";
    /// How a thread was put right: left as it is, and the customer agreed.
    pub left_by_consent = "left, by consent", "so gelassen, mit Zustimmung";
    /// How a part was put right.
    pub a_new_one_goes_in = "a new one goes in", "ein neues kommt hinein";
    /// How a screw was put right.
    pub sound_goes_back = "sound, the same one goes back", "in Ordnung, kommt wieder rein";
    /// How a part was put right: not at all, and the customer knows.
    pub left_they_know = "left as it is, they know", "so gelassen, der Kunde weiß es";
    /// How a part was put right.
    pub made_good_stays = "made good, the same one stays", "instand gesetzt, dasselbe bleibt";
    /// Caution over the ways to put a thread right.
    pub thread_caution = "Eyes covered before drilling; know what lies behind; heat only away from fuel and seals. The maker's instructions come first.",
        "Vor dem Bohren die Augen schützen; wissen, was dahinterliegt; Hitze nur fern von Kraftstoff und Dichtungen. Die Anleitung des Herstellers geht vor.";
    /// Caution over the ways to put a part right.
    pub part_caution = "Whether it may stay is for the maker's limits. Brakes, steering, wheels, fuel, restraints: what is past its limit is renewed, or the customer signs that it stays.",
        "Ob es bleiben darf, sagen die Grenzen des Herstellers. Bremsen, Lenkung, Räder, Kraftstoff, Airbags und Gurte: was über der Grenze ist, wird erneuert, oder der Kunde unterschreibt, dass es bleibt.";
    /// Behind that, for brakes and suspension.
    pub both_sides_caution = "Pads, discs, shoes, springs and dampers are renewed on both sides of the axle.",
        "Beläge, Scheiben, Backen, Federn und Dämpfer werden auf beiden Seiten der Achse erneuert.";
    /// Choice: one of those ways.
    pub put_right_by = "Put right by", "Behoben durch";
    /// Field.
    pub size_that_holds_now = "Size that holds now", "Größe, die jetzt gilt";
    /// Hint of that field.
    pub such_as_insert = "such as M8x1.25 insert", "z. B. Einsatz M8x1.25";
    /// Field.
    pub torque_that_holds_now = "Torque that holds now", "Drehmoment, das jetzt gilt";
    /// Hint of that field.
    pub such_as_22_nm = "such as 22 Nm", "z. B. 22 Nm";
    /// The large press.
    pub snag_resolved = "Snag resolved", "Problem behoben";
    /// Small words on that press.
    pub it_is_then_out = "it is then out, ready for what goes in", "es ist dann heraus, bereit für das, was hineinkommt";
}
