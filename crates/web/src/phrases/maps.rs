//! What is said of maps.

use phrases::phrases;

phrases! {
    /// Title and heading of the list of maps, and the way back to it.
    pub maps = "Maps", "Vorlagen";
    /// Below that heading.
    pub what_maps_are = "What is fitted to what, one kind of vehicle each. A plan is made from a map.", "Was woran sitzt, je eine für eine Art Fahrzeug. Aus einer Vorlage wird ein Plan.";
    /// The list of maps, when it is empty.
    pub none_yet = "None yet.", "Noch keine.";
    /// A press above the list.
    pub write_a_new_map = "Write a new map", "Neue Vorlage schreiben";
    /// A press above the list; also the title of the page that it leads to.
    pub read_in_a_map = "Read in a map", "Vorlage einlesen";
    /// A press above the list; also a row on a map's page.
    pub what_our_work_has_taught = "What our work has taught", "Was unsere Arbeit gezeigt hat";
    /// How many things stand in a map.
    pub items(n) = ["{n} item", "{n} items"], ["{n} Teil", "{n} Teile"];
    /// How much is wrong with a map.
    pub errors(n) = ["{n} error", "{n} errors"], ["{n} Fehler", "{n} Fehler"];
    /// Below a map's name in the list: the newest, and by which one plans are made.
    pub newest_and_planned_by(newest, sound) = "version {newest}, planned by version {sound}", "Version {newest}, geplant wird nach Version {sound}";
    /// Below a map's name in the list.
    pub version(n) = "version {n}", "Version {n}";
    /// Below a map's name in the list: nothing in it can be used yet.
    pub newest_and_no_plan(newest) = "version {newest}, no plan can be made by it yet", "Version {newest}, noch kein Plan danach möglich";
    /// Below a map's name in the list: its name in the record, and of its versions.
    pub id_and_versions(id, versions) = "{id}, {versions}", "{id}, {versions}";
    /// Title of a map's page.
    pub map = "Map", "Vorlage";
    /// A press on a map's page.
    pub change_it = "Change it", "Ändern";
    /// A press on a map's page.
    pub as_a_file = "As a file", "Als Datei";
    /// A press on a map's page.
    pub send_it = "Send it", "Weitergeben";
    /// Below a map's name: its name in the record, and which version is shown.
    pub id_and_version(id, version) = "{id}, version {version}", "{id}, Version {version}";
    /// Behind that: who kept it.
    pub kept_by(who) = ", kept by {who}", ", gespeichert von {who}";
    /// A row on a map's page.
    pub what_each_version_changed = "What each version changed", "Was jede Version geändert hat";
    /// An empty map.
    pub nothing_stands_in_it = "Nothing stands in it yet.", "Noch steht nichts darin.";
    /// Above the drawing; the thing that is wanted follows, then the next text.
    pub way_in_to = "The way in to ", "Der Weg zu: ";
    /// Behind the thing that is wanted.
    pub press_another = ". Press another to see its own.", ". Ein anderes Teil drücken zeigt dessen Weg.";
    /// Above the drawing of all of it.
    pub everything_from_outside = "Everything, from the outside in. Press one to see the way in to it.", "Alles, von außen nach innen. Ein Teil drücken zeigt den Weg dorthin.";
    /// A row above the drawing.
    pub show_everything = "Show everything", "Alles zeigen";
    /// Above what is wrong with a version.
    pub no_plan_by_this_version(errors) = "No plan can be made by this version: {errors}.", "Nach dieser Version ist kein Plan möglich: {errors}.";
    /// Heading above what nothing lies before.
    pub free_at_once = "Free at once", "Sofort frei";
    /// Heading above what lies so many deep.
    pub layer(n) = "Layer {n}", "Lage {n}";
    /// Below a thing: what it needs first.
    pub after(needs) = "after {needs}", "nach {needs}";
    /// Between things that come one after the other, and between passes of a torque.
    pub then = ", then ", ", dann ";
    /// Before how long a move takes: which move.
    pub of_move(name) = "{name}: ", "{name}: ";
    /// Before a torque.
    pub torque = "Torque: ", "Drehmoment: ";
    /// A thing that is renewed each time.
    pub not_used_again = "Not used again: a new one goes on", "Nicht wiederverwenden: ein neues kommt dran";

    /// Title of the page of versions, and a heading.
    pub versions = "Versions", "Versionen";
    /// The way back to a map.
    pub the_map = "The map", "Die Vorlage";
    /// Heading: which versions are held against each other.
    pub version_against(new, before) = "Version {new} against {before}", "Version {new} gegen {before}";
    /// How much differs.
    pub changes(n) = ["{n} change", "{n} changes"], ["{n} Änderung", "{n} Änderungen"];
    /// Where two versions differ in nothing that counts.
    pub they_say_the_same = "They say the same; only how it is written differs.", "Sie sagen dasselbe; nur die Schreibweise ist anders.";
    /// How many more there are than are shown.
    pub more(n) = "{n} more", "noch {n}";
    /// Heading of the first version, and the name of each in the list.
    pub version_heading(n) = "Version {n}", "Version {n}";
    /// Below the heading of the first version.
    pub first_one_with(n) = ["The first one: {n} thing in it.", "The first one: {n} things in it."], ["Die erste: {n} Teil darin.", "Die erste: {n} Teile darin."];
    /// A version: when it was kept, and by whom.
    pub when_and_who(when, who) = "{when}, {who}", "{when}, {who}";
    /// A version that came from another shop: from which, and under which sign.
    pub from_signed_with(shop, key) = "from {shop}, signed with {key}", "von {shop}, signiert mit {key}";
    /// A version that came from another shop whose record is in the same database.
    pub from_beside(shop) = "from {shop}, in the same database", "von {shop}, in derselben Datenbank";
    /// Beside a version that cannot be used.
    pub has_errors = "has errors", "hat Fehler";
    /// Heading above the drawing of what was changed.
    pub drawn = "Drawn", "Gezeichnet";
    /// Below that heading.
    pub marked_is_changed = "Marked is what was changed or is new.", "Markiert ist, was geändert oder neu ist.";
    /// Behind that.
    pub taken_out(n) = " What was taken out ({n}) is no longer in it.", " Was herausgenommen wurde ({n}), ist nicht mehr darin.";

    /// Title of the page on which a map is sent.
    pub send_a_map = "Send a map", "Vorlage weitergeben";
    /// Heading of that page.
    pub send_to_another_shop = "Send it to another shop", "An eine andere Werkstatt geben";
    /// Below that heading.
    pub one_file_signed = "One file, signed by your shop. Whoever reads it in sees what it would change before it does.", "Eine Datei, von dieser Werkstatt signiert. Wer sie einliest, sieht vorher, was sie ändern würde.";
    /// A row.
    pub vehicle = "Vehicle", "Fahrzeug";
    /// A row.
    pub version_row = "Version", "Version";
    /// Beside such a row: which version, and when it was kept.
    pub version_kept(n, day) = "{n}, kept {day}", "{n}, gespeichert {day}";
    /// A row: which shop a map is from.
    pub from_shop = "From", "Von";
    /// A row with a number.
    pub jobs_done_here = "Jobs of this kind done here", "Solche Arbeiten hier gemacht";
    /// A row: groups of figures and letters follow.
    pub signed_with = "Signed with", "Signiert mit";
    /// Where nothing in the text names anybody.
    pub nobody_is_named = "No customer, plate or order goes along, and none of your people is named in the text.", "Kein Kunde, kein Kennzeichen, kein Auftrag geht mit, und niemand von hier steht im Text.";
    /// Where the text names somebody.
    pub text_names(who) = "The text names {who}. Take that out first if it means somebody here.", "Im Text steht {who}. Vorher herausnehmen, wenn jemand von hier gemeint ist.";
    /// The large press.
    pub save_the_file = "Save the file", "Datei speichern";
    /// Below that press.
    pub tell_the_groups = "Tell the other shop the four groups of figures and letters it is signed with, over the telephone for example: then they know that it is yours.", "Der anderen Werkstatt die vier Gruppen aus Ziffern und Buchstaben sagen, etwa am Telefon: dann weiß sie, von wem die Datei ist.";
    /// Heading of the page on which a map is read in.
    pub read_in_from_another_shop = "Read in a map from another shop", "Vorlage einer anderen Werkstatt einlesen";
    /// Below that heading.
    pub nothing_kept_before = "Nothing is kept before you have seen what it would change.", "Nichts wird gespeichert, bevor zu sehen war, was sie ändern würde.";
    /// Label of the field for a file.
    pub file_as_it_came = "The file as it came", "Die Datei, wie sie kam";
    /// Label of the field in place of a file.
    pub or_its_text = "Or its text", "Oder ihr Text";
    /// The large press: nothing is kept yet.
    pub show_what_it_would_change = "Show what it would change", "Zeigen, was sie ändern würde";
    /// A refusal: where, and what.
    pub where_and_what(place, what) = "{place}: {what}", "{place}: {what}";
    /// A row: the other shop's version.
    pub their_version = "Their version", "Deren Version";
    /// A row with a number.
    pub jobs_done_there = "Jobs of this kind done there", "Solche Arbeiten dort gemacht";
    /// A row with a number.
    pub things_in_it = "Things in it", "Teile darin";
    /// Below the groups of figures and letters, the first time.
    pub not_seen_before = "Not seen here before. Ask them what it is signed with; the same means that it is theirs.", "Hier noch nie gesehen. Dort fragen, womit sie signiert ist; stimmt es überein, ist sie von dort.";
    /// Below the groups of figures and letters, where they were seen before.
    pub as_was(before) = "As {before} was.", "Wie {before}.";
    /// A map that came and is here already.
    pub what_you_have = "It is what you have already.", "Es ist, was schon da ist.";
    /// The large press that keeps a map.
    pub keep_it = "Keep it", "Speichern";
    /// Small on that press.
    pub as_version(n) = "as version {n}", "als Version {n}";
    /// A press.
    pub another_file = "Another file", "Andere Datei";
    /// Below these presses.
    pub as_that_shop_told = "Sizes and torques are as that shop told them. The vehicle maker's figures come first.", "Größen und Drehmomente sind, wie jene Werkstatt sie nannte. Die Werte des Herstellers gehen vor.";
    /// Heading where there is no map of that vehicle.
    pub no_map_of_it_yet = "You have no map of it yet", "Davon gibt es noch keine Vorlage";
    /// Below that heading.
    pub whole_map_is_new = "The whole map is new.", "Die ganze Vorlage ist neu.";
    /// Heading.
    pub what_it_would_change = "What it would change", "Was sie ändern würde";
    /// Below the changes.
    pub own_version_stays = "Your own version stays; a plan goes by the newest one.", "Die eigene Version bleibt; geplant wird nach der neuesten.";

    /// Title of the page on which a map is begun.
    pub new_map = "New map", "Neue Vorlage";
    /// Heading of that page.
    pub a_new_map = "A new map", "Eine neue Vorlage";
    /// Below that heading.
    pub what_a_map_says = "A map says what is fitted to what on one kind of vehicle, and what has to come off first.", "Eine Vorlage sagt, was an einer Art Fahrzeug woran sitzt und was zuerst ab muss.";
    /// Label of a field.
    pub which_vehicle = "Which vehicle, and which part of it", "Welches Fahrzeug, und was daran";
    /// Beside that field.
    pub which_vehicle_hint = "such as Korvane Drayman 2.3, front door", "z. B. Korvane Drayman 2.3, vordere Tür";
    /// The large press.
    pub begin = "Begin", "Anfangen";
    /// What was taken over into a map: how many orders of a kind of vehicle.
    pub orders_stand_in_it(n) = "What {n} finished orders have taught stands in it.", "Was {n} fertige Aufträge gezeigt haben, steht darin.";
    /// What was taken over into a map from one order.
    pub added_from_order(order, things) = "Added from order {order}: {things} things in the sequence they came off.", "Aus Auftrag {order} übernommen: {things} Teile, in der Reihenfolge des Ausbaus.";
    /// A text that is no good map cannot be changed by a press.
    pub mend_the_text_first = "Mend the text first: it cannot be read as it is.", "Zuerst den Text berichtigen: So ist er nicht lesbar.";
    /// After two people's changes were brought together.
    pub both_are_in_it = "Both are in it now. Keep it when it is as it should be.", "Jetzt steht beides darin. Speichern, wenn es stimmt.";
    /// The same, where both changed the same; what, follows.
    pub both_but_for(conflicts) = "Both are in it, but for what both changed; yours stands there. {conflicts}", "Beides steht darin, außer wo beide dasselbe geändert haben; dort gilt das Eigene. {conflicts}";
    /// Who kept a version, where nobody is known.
    pub somebody = "Somebody", "Jemand";
    /// Title of the page on which a map is changed.
    pub change_a_map = "Change a map", "Vorlage ändern";
    /// Below the heading of that page.
    pub as_version_has_it(n) = "As version {n} has it.", "Wie in Version {n}.";
    /// Below the heading of that page.
    pub new_nothing_kept = "New. Nothing is kept yet.", "Neu. Noch nichts gespeichert.";
    /// Below the heading of that page.
    pub changed_from_version(n) = "Changed from version {n}. Nothing of it is kept yet.", "Geändert gegenüber Version {n}. Davon ist noch nichts gespeichert.";

    /// What the last press did.
    pub changed = "Changed.", "Geändert.";
    /// What the last press did.
    pub yours_comes_after = "Yours comes after it. Keep it when it is as it should be.", "Die eigene kommt danach. Speichern, wenn es stimmt.";
    /// What the last press lacked.
    pub pick_what_it_needs = "Pick what it needs.", "Wählen, was es braucht.";
    /// What the last press did.
    pub needs_that_no_longer = "It needs that no longer.", "Das braucht es nicht mehr.";
    /// What the last press did.
    pub taken_out_item(item) = "Taken out: {item}", "Herausgenommen: {item}";
    /// What the last press did: a bolt is loosened first.
    pub cracked_first_then_out = "Cracked first, then out.", "Erst lösen, dann heraus.";
    /// What the last press did.
    pub out_in_one_go = "Out in one go.", "In einem Zug heraus.";
    /// What the last press did.
    pub made_for_other_side(n) = "{n} made for the other side: look whether its sizes are the same.", "{n} für die andere Seite angelegt: nachsehen, ob die Größen gleich sind.";
    /// What the last press did.
    pub nothing_changed = "Nothing changed.", "Nichts geändert.";
    /// What the last press settled of two things.
    pub either_way_of(first, second) = "{first} and {second}: either way", "{first} und {second}: beides geht";
    /// What the last press settled of two things.
    pub comes_off_before(first, second) = "{first} comes off before {second}", "{first} kommt vor {second} ab";
    /// What the last press lacked.
    pub name_first = "Give it a name first.", "Zuerst einen Namen geben.";
    /// Why nothing was added.
    pub there_already(name) = "There is {name} already: press it in the list to change it.", "{name} gibt es schon: in der Liste drücken, um es zu ändern.";
    /// What the last press did.
    pub added(name) = "Added: {name}", "Hinzugefügt: {name}";

    /// A press that takes over what stands in the fields of a thing.
    pub set_it = "Set it", "Übernehmen";
    /// A press.
    pub add_another = "Add another", "Weiteres hinzufügen";
    /// A press that takes a thing out of a map.
    pub take_it_out = "Take it out", "Heraus\u{ad}nehmen";
    /// Above what a thing needs.
    pub needs_first = "Needs first", "Braucht zuerst";
    /// What a thing came after, where nothing was seen.
    pub nothing_seen = "nothing that was seen", "nichts, das gesehen wurde";
    /// Behind what a thing came after in finished work.
    pub stating_takes_its_place(after) = "{after}. Stating a need takes the place of what was seen.", "{after}. Was hier gesagt wird, tritt an die Stelle des Gesehenen.";
    /// A press at a group of bolts.
    pub crack_them_first = "Crack them first, take them out later", "Erst lösen, später herausdrehen";
    /// Heading above the first of two moves.
    pub cracked_first = "Cracked first", "Erst lösen";
    /// Above what that move needs.
    pub to_crack_needs = "To crack them it needs first", "Zum Lösen braucht es zuerst";
    /// Heading above the second of two moves.
    pub then_out = "Then out", "Dann heraus";
    /// Above what that move needs.
    pub to_take_out_needs = "To take them out it needs first", "Zum Herausdrehen braucht es zuerst";
    /// A press: the two moves become one.
    pub one_go_after_all = "Out in one go after all", "Doch in einem Zug heraus";
    /// A press beside a need, for who hears the page.
    pub not_any_more(need) = "Not any more: {need}", "Nicht mehr: {need}";
    /// A press beside a need: it is dropped.
    pub not = "Not", "Nicht";
    /// Label of a choice.
    pub to_crack_also_needs = "To crack them it also needs", "Zum Lösen braucht es auch";
    /// Label of a choice.
    pub to_take_out_also_needs = "To take them out it also needs", "Zum Herausdrehen braucht es auch";
    /// Label of a choice.
    pub also_needs = "It also needs", "Es braucht auch";
    /// Label of a choice.
    pub to_go_back_also_needs = "To go back it also needs", "Zum Einbau braucht es auch";
    /// Label of a second choice beside it.
    pub or_if_enough = "or, if that is enough", "oder, wenn das reicht";
    /// A press.
    pub needs_it_first = "Needs it first", "Braucht es zuerst";
    /// Label of a field: where somebody works.
    pub where_do_you_stand = "Where do you stand?", "Wo steht man?";
    /// Label of a field.
    pub tools = "Tools", "Werkzeug";
    /// Beside a field that takes several.
    pub commas_between = "with commas between", "mit Komma dazwischen";
    /// Label of a number.
    pub minutes_off = "Minutes off", "Minuten für Ausbau";
    /// Beside that number: not for each.
    pub for_all_of_them = "for all of them", "für alle zusammen";
    /// Label of a number.
    pub minutes_back = "Minutes back", "Minuten für Einbau";
    /// Label of a number.
    pub each_off = "and for each one, off", "und für jedes, Ausbau";
    /// Label of a number.
    pub each_back = "and for each one, back", "und für jedes, Einbau";
    /// Label of a field: what has to be done afterwards.
    pub work_it_leaves = "Work it leaves to be done", "Was danach zu tun ist";
    /// Beside that field.
    pub work_it_leaves_hint = "with commas between, such as set the clock", "mit Komma dazwischen, z. B. Uhr stellen";
    /// Heading.
    pub what_it_is = "What it is", "Was es ist";
    /// Label of a field.
    pub name = "Name", "Name";
    /// Label of a choice.
    pub what_is_it = "What is it?", "Was ist es?";
    /// Label of a number.
    pub how_many = "How many?", "Wie viele?";
    /// Label of a field: a bolt's.
    pub size = "Size", "Größe";
    /// Beside that field.
    pub size_hint = "such as M6x16 8.8", "z. B. M6x16 8.8";
    /// Label of a field: a fluid's.
    pub how_much_it_holds = "How much it holds", "Füllmenge";
    /// Beside that field.
    pub holds_hint = "such as 9.2 L", "z. B. 9,2 L";
    /// Label of a field: a fluid's.
    pub how_much_its_cock_gives = "How much its cock gives", "Was der Ablasshahn hergibt";
    /// Beside that field.
    pub drains_hint = "such as 5.5 L", "z. B. 5,5 L";
    /// Label of a field: of work that is due later.
    pub due_after = "Due after", "Fällig nach";
    /// Beside that field.
    pub due_after_hint = "such as 80 km; nothing if at once", "z. B. 80 km; nichts, wenn sofort";
    /// Label of a field.
    pub note = "Note", "Notiz";
    /// A tick.
    pub only_with(variant) = "Only on vehicles with {variant}", "Nur bei Fahrzeugen mit {variant}";
    /// Label of a choice.
    pub what_sort_of_work = "What sort of work", "Was für eine Arbeit";
    /// Beside that choice.
    pub waits_before_hand_over = "not said: it waits before hand-over", "nicht angegeben: gilt vor der Übergabe";
    /// A choice that says nothing.
    pub not_said = "not said", "nicht angegeben";
    /// Label of a field: a bolt's.
    pub length = "Length", "Länge";
    /// Beside that field.
    pub length_hint = "such as 16 mm", "z. B. 16 mm";
    /// Label of a field.
    pub torque_passes = "Torque, pass by pass", "Drehmoment, Durchgang für Durchgang";
    /// Beside that field; the text is read so in every language.
    pub torque_hint = "such as 30 Nm, 60 Nm, 90 deg", "z. B. 30 Nm, 60 Nm, 90 deg";
    /// Label of a field.
    pub in_which_sequence = "In which sequence", "In welcher Reihenfolge";
    /// Beside that field.
    pub sequence_hint = "such as in a star", "z. B. über Kreuz";
    /// Label of a field.
    pub who_says_the_torque = "Who says the torque", "Woher das Drehmoment stammt";
    /// Beside that field.
    pub source_hint = "such as the maker's manual", "z. B. Handbuch des Herstellers";
    /// Label of a field.
    pub of_which_date = "Of which date", "Von wann";
    /// Beside that field; the date is read so in every language.
    pub date_hint = "such as 2021-09-15", "z. B. 2021-09-15";
    /// A fold.
    pub where_length_differs = "Where the length is another", "Wo die Länge anders ist";
    /// Label of a field: the length of one of several.
    pub length_of(nth) = "Length of {nth}", "Länge von {nth}";
    /// A fold.
    pub more_about_it = "More about it", "Mehr dazu";
    /// Label of a choice: brakes, steering and so on.
    pub system = "System", "System";
    /// Label of a choice.
    pub where_it_sits = "Where it sits", "Wo es sitzt";
    /// Label of a number.
    pub may_be_missing = "So many may be missing", "So viele dürfen fehlen";
    /// Label of a field beside it.
    pub never_at = "but never at", "aber nie an";
    /// Beside that field.
    pub positions_hint = "positions, such as 1, 2", "Positionen, z. B. 1, 2";
    /// Label of a field.
    pub what_is_renewed = "What is renewed with it", "Was mit erneuert wird";
    /// Beside that field.
    pub renewed_hint = "with commas between, such as washer", "mit Komma dazwischen, z. B. Scheibe";
    /// Label of a number.
    pub minutes_lost = "Minutes for what is lost or renewed", "Minuten für Verlorenes oder Erneuertes";
    /// Label of a number.
    pub minutes_at_risk = "Minutes for what may go wrong", "Minuten für das, was schiefgehen kann";
    /// Label of a choice: the place of the way back, where it is another than that of the way out.
    pub where_do_you_stand_for_the_way_back = "Where you stand to put it back or fill it, if elsewhere", "Wo man beim Einbauen oder Füllen steht, wenn woanders";
    /// A tick: nobody need stand by.
    pub runs_by_itself = "It runs by itself once started", "Läuft von selbst, einmal angestoßen";
    /// Above what the way back needs.
    pub to_go_back_needs = "To go back it needs, where that is another", "Zum Einbau braucht es, wo das anders ist";
    /// A choice that says nothing is needed.
    pub nothing = "nothing", "nichts";
    /// Above the rarer choices of a list.
    pub or_stands_otherwise = "or stands otherwise", "oder steht anders";
    /// A thing and how it stands, as a choice.
    pub stands(item, state) = "{item} {state}", "{item} {state}";


    /// Above what is wrong with a map.
    pub to_mend_before_a_plan(n) = ["{n} thing to mend before a plan can be made by it", "{n} things to mend before a plan can be made by it"], ["{n} Fehler beheben, dann ist ein Plan danach möglich", "{n} Fehler beheben, dann ist ein Plan danach möglich"];
    /// Where nothing is wrong with a map.
    pub a_good_map(n) = ["A good map, {n} item", "A good map, {n} items"], ["Eine gute Vorlage, {n} Teil", "Eine gute Vorlage, {n} Teile"];
    /// Below a list of what is wrong.
    pub and_more_further_down(n) = "and {n} more further down", "und {n} weiter unten";
    /// Before what can hardly be meant.
    pub can_this_be_meant = "Can this be meant? ", "Ist das so gemeint? ";
    /// How to mend what is wrong, and where it stands in the text.
    pub mend_at(mend, line, column) = "{mend}. Line {line}, column {column}", "{mend}. Zeile {line}, Spalte {column}";
    /// What is wrong with a field, and how to mend it.
    pub wrong_and_mend(what, mend) = "{what}; {mend}", "{what}; {mend}";
    /// Somebody else kept a version of a map that is new here.
    pub kept_while_new(who, version) = "{who} kept version {version} of this map while you worked on a new one.", "{who} hat Version {version} dieser Vorlage gespeichert, während hier eine neue entstand.";
    /// Somebody else kept a version meanwhile.
    pub kept_while_on_version(who, version, base) = "{who} kept version {version} of this map while you worked on version {base}.", "{who} hat Version {version} dieser Vorlage gespeichert, während hier an Version {base} gearbeitet wurde.";
    /// A fold.
    pub show_beside_yours(version) = "Show version {version} beside yours", "Version {version} daneben zeigen";
    /// A press.
    pub bring_both_together = "Bring both together", "Beide zusammenführen";
    /// A press.
    pub mine_in_its_place = "Mine in its place", "Stattdessen die eigene";
    /// A press.
    pub go_on_from_that_one = "Go on from that one", "Mit der anderen weitermachen";
    /// Heading above a drawing.
    pub way_in_to_it = "The way in to it", "Der Weg dorthin";
    /// Heading above the things of a map.
    pub in_this_map = "In this map", "In dieser Vorlage";
    /// Below that heading, where there are none.
    pub begin_with_first_off = "Nothing yet. Begin with what you take off first.", "Noch nichts. Anfangen mit dem, was zuerst abkommt.";
    /// A press: what is there on the left is made for the right, or the other way round.
    pub make_the_other_side = "Make the other side", "Andere Seite anlegen";
    /// Small on that press.
    pub things_such_as(n, thing) = ["{n} thing, such as {thing}", "{n} things, such as {thing}"], ["{n} Teil, z. B. {thing}", "{n} Teile, z. B. {thing}"];
    /// What came before a thing in finished work.
    pub seen_once(thing) = "{thing}, seen once", "{thing}, einmal gesehen";
    /// What came before a thing in finished work, how often, and with how many people.
    pub seen_times_by(thing, times, people) = "{thing}, seen {times} times by {people}", "{thing}, {times}-mal gesehen von {people}";
    /// What comes before a thing, as somebody answered.
    pub as_answered(thing) = "{thing}, as answered", "{thing}, so beantwortet";
    /// Between several things that a thing comes after.
    pub and_after = "; after ", "; nach ";
    /// Below a thing: what it needs first, of which something was only seen.
    pub after_partly_a_guess(needs) = "after {needs}, partly a guess", "nach {needs}, zum Teil vermutet";
    /// Heading.
    pub add_what_comes_next = "Add what comes off next", "Nächstes Teil hinzufügen";
    /// Label of a field.
    pub what_is_it_called = "What is it called?", "Wie heißt es?";
    /// Beside that field.
    pub called_hint = "such as tray screws", "z. B. Wannenschrauben";
    /// Beside a number.
    pub counted_only = "screws, nuts and clips only", "nur Schrauben, Muttern, Clips";
    /// Label of a choice.
    pub what_has_to_be_off_first = "What has to be off first?", "Was muss zuerst ab sein?";
    /// Label of a second choice beside it.
    pub or_if_that_is_enough = "Or, if that is enough", "Oder, wenn das reicht";
    /// Label of a field.
    pub which_tool = "Which tool?", "Welches Werkzeug?";
    /// Beside that field.
    pub tool_hint = "such as 10 mm socket", "z. B. 10er Nuss";
    /// A press.
    pub add_it = "Add it", "Hinzufügen";
    /// How often the first of two things came off first, and how often second.
    pub seen_first_and_after(thing, first, after) = "{thing} seen {first} times first, {after} times after", "{thing}: {first}-mal zuerst gesehen, {after}-mal danach";
    /// Heading.
    pub which_comes_off_first = "Which comes off first?", "Was kommt zuerst ab?";
    /// Between the names of two things.
    pub and_between = " and ", " und ";
    /// A press: this one of two comes off first.
    pub this_first(thing) = "{thing} first", "{thing} zuerst";
    /// A press: it does not matter which comes off first.
    pub either_way = "Either way", "Beides geht";
    /// A fold: what holds for a map as a whole.
    pub the_map_itself = "The map itself", "Die Vorlage selbst";
    /// Label of a field.
    pub where_do_you_begin = "Where do you begin?", "Wo fängt man an?";
    /// Label of a number.
    pub minutes_to_change_place = "Minutes to change place", "Minuten für einen Ortswechsel";
    /// Label of a number.
    pub minutes_to_change_tool = "Minutes to change tool", "Minuten für einen Werkzeugwechsel";
    /// Label of a field.
    pub what_only_some_have = "What only some of them have", "Was nur manche haben";
    /// Beside that field.
    pub only_some_hint = "with commas between, such as air conditioning", "mit Komma dazwischen, z. B. Klimaanlage";
    /// A press.
    pub set_the_map = "Set the map", "Vorlage übernehmen";
    /// A fold.
    pub map_as_text = "The map as text", "Die Vorlage als Text";
    /// Label of a field.
    pub text = "Text", "Text";
    /// Beside that field.
    pub checked_while_you_write = "Checked while you write. How it is written stands in docs/maps.md.", "Wird beim Schreiben geprüft. Wie man ihn schreibt, steht in docs/maps.md.";
    /// Label of the field for a file.
    pub or_read_from_a_file = "Or read it from a file", "Oder aus einer Datei lesen";
    /// A row.
    pub save_kept_version = "Save the kept version as a file", "Gespeicherte Version als Datei sichern";
}
