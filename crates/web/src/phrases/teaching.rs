//! What is said of what our work has taught.

use phrases::phrases;

phrases! {
    /// Title and heading of the list of kinds of vehicles, and the way back to it.
    pub what_our_work_has_taught = "What our work has taught", "Was unsere Arbeit gezeigt hat";
    /// Below that heading.
    pub one_row_for_each_kind = "One row for each kind of vehicle: what its finished orders say of the way in, and what is still a guess.", "Eine Zeile für jede Art Fahrzeug: was die fertigen Aufträge über den Weg sagen und was noch vermutet ist.";
    /// A row above that list.
    pub of_the_whole_shop = "Times, snags, comebacks of the whole shop", "Zeiten, Probleme, Reklamationen der ganzen Werkstatt";
    /// Where nothing was finished yet.
    pub first_order_begins_it = "Nothing yet. The first order that is handed over begins it.", "Noch nichts. Es beginnt mit dem ersten übergebenen Auftrag.";
    /// Below a kind of vehicle.
    pub has_a_map = "has a map", "hat eine Vorlage";
    /// Below a kind of vehicle.
    pub no_map_yet = "no map yet", "noch keine Vorlage";
    /// How many orders there are of a kind of vehicle.
    pub orders(n) = ["{n} order", "{n} orders"], ["{n} Auftrag", "{n} Aufträge"];
    /// The way back to the maps.
    pub maps = "Maps", "Vorlagen";

    /// Title of the page of figures.
    pub history = "History", "Rückblick";
    /// Heading of that page, where it is of every vehicle.
    pub the_whole_shop = "The whole shop", "Die ganze Werkstatt";
    /// Below that heading: of how many orders its figures are.
    pub from_orders(n) = ["From {n} finished order. Open a figure to see the orders behind it.", "From {n} finished orders. Open a figure to see the orders behind it."], ["Aus {n} fertigen Auftrag. Eine Zahl öffnen zeigt die Aufträge dahinter.", "Aus {n} fertigen Aufträgen. Eine Zahl öffnen zeigt die Aufträge dahinter."];
    /// The same, where older ones were left out.
    pub from_the_newest(n) = ["From {n} finished order, the newest. Open a figure to see the orders behind it.", "From {n} finished orders, the newest. Open a figure to see the orders behind it."], ["Aus {n} fertigen Auftrag, dem neuesten. Eine Zahl öffnen zeigt die Aufträge dahinter.", "Aus {n} fertigen Aufträgen, den neuesten. Eine Zahl öffnen zeigt die Aufträge dahinter."];
    /// A part of that page without figures.
    pub nothing_told_yet = "Nothing yet.", "Noch nichts.";
    /// Before the number of an order.
    pub order = "Order ", "Auftrag ";

    /// Title and heading of the page that says how a finished job was done.
    pub how_it_was_done = "How it was done", "Wie es gemacht wurde";
    /// Below that heading.
    pub vehicle_order_by(vehicle, order, people) = "{vehicle}, order {order}, by {people}", "{vehicle}, Auftrag {order}, von {people}";
    /// Before what the customer said was wrong.
    pub complaint = "Complaint", "Bean\u{ad}standung";
    /// Before what it came from.
    pub cause = "Cause", "Ursache";
    /// Before what was done about it.
    pub correction = "Correction", "Abhilfe";
    /// Heading above what was taken off, in sequence.
    pub comes_off = "Comes off", "Ausbau";
    /// Title and heading of the jobs that were done on such vehicles, and the way there from a stage.
    pub done_before = "How it was done before", "So wurde es bisher gemacht";
    /// There, where there are none.
    pub nothing_done_before(vehicle) = "No finished job on a {vehicle} yet: nothing was taken off one that has been handed over.", "Noch kein fertiger Auftrag an einem {vehicle}: An keinem übergebenen wurde etwas ausgebaut.";
    /// Of a finished job: what of it is wanted on this order, too.
    pub got_at(names) = "got at {names}, too", "kam auch an: {names}";
    /// Of a finished job.
    pub things_came_off(n) = ["{n} thing came off", "{n} things came off"], ["{n} Teil kam ab", "{n} Teile kamen ab"];
    /// Heading above what was put back, in sequence.
    pub goes_back = "Goes back", "Einbau";
    /// Heading above who says the torques.
    pub torque_by = "Torque by", "Drehmomente laut";
    /// Heading above what was done when all was back.
    pub work_done_after = "Work done after it", "Danach erledigt";
    /// A row: the way to the kind of vehicle.
    pub all_of_this_kind = "What all of this kind have taught", "Was alle dieser Art gezeigt haben";
    /// The press for the printed page.
    pub paper = "Paper", "Papier";
    /// Small on that press.
    pub pdf = "PDF", "PDF";
    /// Behind a part that was put on new.
    pub new_one = ", new", ", neu";
    /// Between passes of a torque.
    pub then = ", then ", ", dann ";
    /// Below bolts: how long each is.
    pub lengths(which) = "Lengths {which}", "Längen {which}";
    /// How long a step took.
    pub minutes(n) = "{n} min", "{n} min";
    /// Heading above the map that the job was worked by, and what went otherwise than it says.
    pub beside_the_map = "Beside the map", "Neben der Vorlage";
    /// Below that heading, where nothing did.
    pub all_came_off_by_it = "Everything came off as the map says.", "Alles kam ab, wie es die Vorlage sagt.";
    /// Heading above what did not go as planned.
    pub what_went_wrong = "What went wrong", "Was schiefging";
    /// Below that: how it ended.
    pub ended(how) = "Ended: {how}", "Ausgang: {how}";
    /// Below that: it has not ended.
    pub still_open = "Still open", "Noch offen";
    /// Heading above pictures.
    pub photos = "Photos", "Fotos";

    /// A press: to write on the sheet of how a job was done.
    pub write_on_it = "Write on it", "Hineinschreiben";
    /// Small on that press.
    pub title_and_notes = "title and notes", "Titel und Notizen";
    /// A press: back to reading the sheet.
    pub done_writing = "Done", "Fertig";
    /// Small on that press.
    pub read_it = "read it", "lesen";
    /// Above the folds in which one writes.
    pub what_the_next_should_know = "Write what whoever does it next should know. The steps stay as they were done.", "Schreib auf, was der Nächste wissen sollte. Die Schritte bleiben, wie sie gemacht wurden.";
    /// A fold: what the sheet is called.
    pub give_it_a_title = "Give it a title", "Titel geben";
    /// A fold: the same, where it has one.
    pub change_the_title = "Change the title", "Titel ändern";
    /// Label of a field.
    pub title_of_the_job = "What this job is called", "Wie diese Arbeit heißt";
    /// Beside that field.
    pub title_hint = "such as Water pump with the bumper left on", "z. B. Wasserpumpe, Stoßfänger bleibt dran";
    /// A fold: a note about the whole job.
    pub note_on_the_job = "Add a note about the whole job", "Notiz zur ganzen Arbeit";
    /// A fold: a note beside a step of the way in.
    pub note_on_step_off(n) = "Add a note to step {n} off", "Notiz zu Schritt {n} im Ausbau";
    /// A fold: a note beside a step of the way back.
    pub note_on_step_back(n) = "Add a note to step {n} back", "Notiz zu Schritt {n} im Einbau";
    /// A press.
    pub save_title = "Save title", "Titel speichern";
    /// A press.
    pub save_note = "Save note", "Notiz speichern";
    /// Label of a field.
    pub note = "Note", "Notiz";
    /// Below a step: a note, before who wrote it.
    pub note_beside(words) = "Note: {words}", "Notiz: {words}";
    /// Heading above notes about the whole job.
    pub notes = "Notes", "Notizen";
    /// Below a note: who wrote it.
    pub written_by(who) = "written by {who}", "geschrieben von {who}";
    /// A press: a note moves up by one.
    pub move_up = "Move up", "Nach oben";
    /// A press: a note is taken off the sheet.
    pub remove_note = "Remove note", "Notiz entfernen";
    /// Title of the page of one kind of vehicle.
    pub taught_of(vehicle) = "What our work has taught · {vehicle}", "Was unsere Arbeit gezeigt hat · {vehicle}";
    /// Where no order of that kind was finished.
    pub no_finished_order = "No finished order yet. The first that is handed over begins it.", "Noch kein fertiger Auftrag. Mit dem ersten übergebenen beginnt es.";
    /// Behind a large figure: one.
    pub finished_order = "finished order", "fertiger Auftrag";
    /// Behind a large figure: any but one.
    pub finished_orders = "finished orders", "fertige Aufträge";
    /// Below that: how many people saw it on their own.
    pub witnesses(n) = ["{n} independent witness", "{n} independent witnesses"], ["{n} unabhängiger Zeuge", "{n} unabhängige Zeugen"];
    /// How sure all of it is; what follows is how often, such as "4 times in 5".
    pub goes_through = "This way in goes through as it stands ", "So, wie er dasteht, klappt der Weg ";
    /// Behind that: on how many guesses it rests.
    pub steps_rest_on_a_guess(n) = ["; {n} step rests on a guess", "; {n} steps rest on a guess"], ["; {n} Handgriff ist vermutet", "; {n} Handgriffe sind vermutet"];
    /// Heading above why nobody is asked now.
    pub a_question_later = "A question, later", "Eine Frage, später";
    /// Below that heading: why, then this.
    pub nobody_is_asked(why) = "{why}. Nobody is asked while somebody is under such a vehicle.", "{why}. Niemand wird gefragt, solange jemand unter so einem Fahrzeug ist.";
    /// Heading above a question.
    pub a_question = "A question", "Eine Frage";
    /// Beside that heading.
    pub more_after_it(n) = "{n} more after it", "danach noch {n}";
    /// An answer.
    pub yes = "Yes", "Ja";
    /// An answer.
    pub no = "No", "Nein";
    /// An answer.
    pub cant_say = "Can't say", "Weiß nicht";
    /// Heading above the steps to one thing.
    pub way_in_to(item) = "The way in to the {item}", "Der Weg zu: {item}";
    /// Heading above the steps.
    pub the_way_in = "The way in", "Der Weg";
    /// Beside that heading.
    pub steps(n) = ["{n} step", "{n} steps"], ["{n} Handgriff", "{n} Handgriffe"];
    /// Below a step.
    pub in_one_go = "in one go with the one before", "in einem Zug mit dem davor";
    /// Below a step.
    pub its_place_is_a_guess = "its place is a guess", "seine Stelle ist vermutet";
    /// Below a step.
    pub nothing_before_it = "nothing has to come before it", "davor muss nichts kommen";
    /// Below a step, and in its fold: what comes before it.
    pub after(what) = "after {what}", "nach {what}";
    /// In the fold of a step, before one that is not sure.
    pub a_guess = "A guess: ", "Vermutet: ";
    /// In the fold of a step, behind what comes before it: how that is known.
    pub known_how(how) = ", {how}", ", {how}";
    /// In the fold of a step, before its minutes.
    pub here_it_takes = "Here it takes: ", "Hier dauert es: ";
    /// In the fold of a step: minutes for taking off.
    pub min_off(n) = "{n} min off, ", "{n} min Ausbau, ";
    /// In the fold of a step: minutes for putting back.
    pub min_back(n) = "{n} min back", "{n} min Einbau";
    /// In the fold of a step: of what something was told.
    pub about(what) = "{what}: ", "{what}: ";
    /// Between what was told differently.
    pub or_else = "; ", "; ";
    /// Behind what was told: by whom.
    pub told_by(who) = " ({who})", " ({who})";
    /// Behind what was told differently: which was chosen.
    pub of_these_chosen(what) = "; chosen: {what}", "; gewählt: {what}";
    /// Heading above the maps of a kind.
    pub the_map = "The map", "Die Vorlage";
    /// Below that heading.
    pub none_of_this_kind = "None of this kind yet.", "Von dieser Art noch keine.";
    /// Beside a map.
    pub version(n) = "version {n}", "Version {n}";
    /// A press.
    pub make_the_map = "Make the map", "Vorlage machen";
    /// A press.
    pub renew_the_map = "Renew the map", "Vorlage erneuern";
    /// Small on that press.
    pub look_at_it_first = "from this work; look at it first", "aus dieser Arbeit; zuerst ansehen";
    /// Heading above names that may mean the same.
    pub one_thing_or_two = "One thing or two?", "Ein Teil oder zwei?";
    /// Between two names.
    pub and_between = " and ", " und ";
    /// A press: two names mean one thing.
    pub the_same = "The same", "Dasselbe";
    /// Small on that press: under which name.
    pub as_name(name) = "as {name}", "als {name}";
    /// A press.
    pub two_things = "Two things", "Zwei Teile";
    /// Heading above what several people told in different ways.
    pub told_differently = "Told differently", "Verschieden angegeben";
    /// Below one of them.
    pub chosen(what) = "Chosen: {what}", "Gewählt: {what}";
    /// A press beside one of several.
    pub this_one = "This one", "Dieses";
    /// The fold with the things that may be wanted.
    pub way_in_to_one_thing = "The way in to one thing", "Der Weg zu einem Teil";
    /// In that fold: no thing in particular.
    pub all_of_it = "All of it", "Alles";
    /// Heading above what contradicts itself.
    pub does_not_fit_together = "Does not fit together", "Passt nicht zusammen";
    /// Heading above things that come off in either sequence.
    pub either_way = "Either way", "Beides geht";
    /// Heading.
    pub went_back_otherwise = "Went back otherwise than it came off", "Anders eingebaut als ausgebaut";
    /// Below that list.
    pub a_map_keeps_to_it = "A plan puts things back the way they came off, turned round. A map made of this work keeps to what was seen here instead.", "Ein Plan baut ein, wie ausgebaut wurde, nur umgekehrt. Eine Vorlage aus dieser Arbeit hält sich stattdessen an das hier Gesehene.";
    /// Heading above things that only some vehicles have.
    pub not_on_all_of_them = "Not on all of them", "Nicht an allen";
    /// A press beside the name of another kind.
    pub same_kind = "The same kind", "Dieselbe Art";
    /// Heading above kinds with names like this one.
    pub called_otherwise = "Called otherwise?", "Anders genannt?";
    /// Below that heading.
    pub near_names = "Names that are near this one. Of one kind, their work is learned from together.", "Namen, die diesem ähneln. Als eine Art zählt ihre Arbeit zusammen.";
    /// Heading above the other names of a kind.
    pub also_called = "Also called", "Heißt auch";
    /// A press beside such a name.
    pub another_kind_after_all = "Another kind after all", "Doch eine andere Art";
    /// The fold with all other kinds.
    pub same_as_another_kind = "It is the same as another kind", "Es ist dasselbe wie eine andere Art";
    /// Heading above questions that were answered.
    pub answered = "Answered", "Beantwortet";
    /// A row.
    pub of_this_kind = "Times, snags, comebacks of this kind", "Zeiten, Probleme, Reklamationen dieser Art";
    /// A fold.
    pub orders_behind_it = "The orders behind it", "Die Aufträge dahinter";

    /// Title of the page on which a map is made from finished work.
    pub map_from_our_work = "The map from our work", "Die Vorlage aus unserer Arbeit";
    /// Below its heading: how much stands in a new map. Holes: how many things, then from how many orders, both with their words.
    pub new_map_of(things, orders) = "A new map of {things}, from {orders}.", "Eine neue Vorlage mit {things}, aus {orders}.";
    /// How many things.
    pub things(n) = ["{n} thing", "{n} things"], ["{n} Teil", "{n} Teilen"];
    /// From how many orders.
    pub so_many_finished_orders(n) = ["{n} finished order", "{n} finished orders"], ["{n} fertigen Auftrag", "{n} fertigen Aufträgen"];
    /// Below its heading, where nothing would change.
    pub says_all_already(version) = "Version {version} says all of it already. There is nothing to keep.", "Version {version} sagt schon alles. Es gibt nichts zu speichern.";
    /// Below its heading: how much would change.
    pub changes_to_version(n, version) = ["{n} change to version {version}.", "{n} changes to version {version}."], ["{n} Änderung an Version {version}.", "{n} Änderungen an Version {version}."];
    /// A row: what was left out.
    pub told_differently_left_out(n) = ["{n} thing was told differently; nobody has chosen, so it is left out", "{n} things were told differently; nobody has chosen, so it is left out"], ["{n} Teil wurde verschieden angegeben; niemand hat gewählt, darum fehlt es", "{n} Teile wurden verschieden angegeben; niemand hat gewählt, darum fehlen sie"];
    /// Beside that row.
    pub choose = "choose", "wählen";
    /// Heading above what a new map says.
    pub what_stands_in_it = "What is in it", "Was darin steht";
    /// Heading above what a map would say anew.
    pub what_changes = "What changes", "Was sich ändert";
    /// Heading.
    pub as_a_drawing = "As a drawing", "Als Zeichnung";
    /// A fold.
    pub as_text = "As text", "Als Text";
    /// The field with a map's text, for who hears the page.
    pub map_as_text = "The map as text", "Die Vorlage als Text";
    /// The large press.
    pub keep_it = "Keep it", "Speichern";
    /// Small on that press.
    pub as_version(n) = "as version {n}", "als Version {n}";
    /// A press.
    pub change_it_first = "Change it first", "Erst ändern";

    /// Title of the page of what people can do.
    pub skills = "Skills", "Fähigkeiten";
    /// Heading of that page.
    pub who_can_do_what = "Who can do what", "Wer was kann";
    /// The way back from it.
    pub the_shop = "The shop", "Werkstatt";
    /// Below that heading.
    pub the_shop_names_the_work = "List the work and say who can do it. Beside it stands what each apprentice has done on orders.", "Arbeiten auflisten und sagen, wer sie kann. Daneben steht, was jeder Azubi an Aufträgen gemacht hat.";
    /// Heading.
    pub the_table = "The table", "Die Tabelle";
    /// Below that heading, where it is empty.
    pub nothing_said_yet = "Nothing said yet.", "Noch nichts angegeben.";
    /// Heading above who learns.
    pub who_learns = "Who learns", "Wer lernt";
    /// Below that heading.
    pub nobody_is_an_apprentice = "Nobody in the shop is an apprentice.", "In der Werkstatt gibt es keinen Azubi.";
    /// Beside a person's name, where nothing was told.
    pub nobody_said = "nobody said", "nicht angegeben";
    /// Behind a person's name: how well they can do it.
    pub can_so(how) = ": {how}", ": {how}";
    /// Below that: who said so.
    pub said_by(who) = "said by {who}", "gesagt von {who}";
    /// A fold.
    pub name_another_work = "Add a piece of work", "Arbeit hinzufügen";
    /// Label of a field.
    pub which_work = "Which work", "Welche Arbeit";
    /// Beside that field.
    pub which_work_hint = "in the shop's own words, such as timing belt, or air conditioning", "in eigenen Worten, z. B. Zahnriemen oder Klimaanlage";
    /// Above the choice of a person.
    pub who = "Who", "Wer";
    /// Above the choice of how well.
    pub can_do_it = "Can do it", "Kann es";
    /// A press.
    pub save = "Save", "Speichern";
    /// Heading above what somebody who learns has done.
    pub has_done(name) = "{name} has done", "{name} hat gemacht";
    /// Beside that heading.
    pub sorts_of_work(n) = ["{n} sort of work", "{n} sorts of work"], ["{n} Art von Arbeit", "{n} Arten von Arbeit"];
    /// Below that heading, where there is nothing.
    pub nothing_on_finished_order = "Nothing on a finished order yet.", "Noch nichts an einem fertigen Auftrag.";
    /// Below a sort of work.
    pub nobody_else_checked = "nobody else checked it", "niemand sonst hat es geprüft";
    /// Below a sort of work: who looked at it, and how often each.
    pub checked_by(who) = "checked by {who}", "geprüft von {who}";
    /// Behind that: how often nobody did.
    pub unseen(n) = "; {n} by nobody else", "; {n} von niemand sonst";
    /// How often a sort of work was done.
    pub times(n) = ["{n} time", "{n} times"], ["{n}-mal", "{n}-mal"];
}
