//! What a map's text says in words, what differs between two of its versions, and what is wrong
//! with it. What stands between backticks is as it is written in the text, in every language.

use phrases::phrases;

phrases! {
    /// What an item is.
    pub kind_part = "part", "Teil";
    /// What an item is.
    pub kind_cover = "cover", "Abdeckung";
    /// What an item is.
    pub kind_hose = "hose", "Schlauch";
    /// What an item is.
    pub kind_seal = "seal", "Dichtung";
    /// What an item is.
    pub kind_belt = "belt", "Riemen";
    /// What an item is: bolts, nuts, screws.
    pub kind_fasteners = "fasteners", "Schrauben";
    /// What an item is.
    pub kind_clips = "clips", "Clips";
    /// What an item is.
    pub kind_connector = "connector", "Stecker";
    /// What an item is.
    pub kind_fluid = "fluid", "Flüssigkeit";
    /// What an item is.
    pub kind_work = "work", "Arbeit";
    /// What an item is: a tool or a rag that must come out again.
    pub kind_put_in = "put-in", "vorübergehend drin";
    /// Where an item sits.
    pub above = "above", "oben";
    /// Where an item sits.
    pub below = "below", "unten";
    /// Where an item sits.
    pub wheel_well = "wheel well", "Radhaus";
    /// Where an item sits.
    pub cabin = "cabin", "Innenraum";
    /// Where an item sits.
    pub rear = "rear", "hinten";
    /// Where an item sits.
    pub outside = "outside", "außen";
    /// What an item belongs to.
    pub brakes = "brakes", "Bremsen";
    /// What an item belongs to.
    pub steering = "steering", "Lenkung";
    /// What an item belongs to.
    pub wheels = "wheels", "Räder";
    /// What an item belongs to.
    pub suspension = "suspension", "Fahrwerk";
    /// What an item belongs to.
    pub fuel = "fuel", "Kraftstoff";
    /// What an item belongs to: belts and airbags.
    pub restraints = "restraints", "Rückhaltesysteme";
    /// What an item belongs to.
    pub drive_belt = "drive belt", "Riementrieb";
    /// What an item belongs to.
    pub high_voltage = "high voltage", "Hochvolt";
    /// What an item belongs to.
    pub cooling = "cooling", "Kühlung";
    /// What an item belongs to.
    pub oil = "oil", "Öl";
    /// What an item belongs to.
    pub engine = "engine", "Motor";
    /// What an item belongs to.
    pub transmission = "transmission", "Getriebe";
    /// What an item belongs to.
    pub intake = "intake", "Ansaugung";
    /// What an item belongs to.
    pub exhaust = "exhaust", "Abgasanlage";
    /// What an item belongs to.
    pub battery = "battery", "Batterie";
    /// What an item belongs to.
    pub electrical = "electrical", "Elektrik";
    /// What an item belongs to.
    pub climate = "climate", "Klima";
    /// What an item belongs to.
    pub body = "body", "Karosserie";

    /// How a thing stands, behind its name: a part.
    pub state_off = "off", "ab";
    /// How a thing stands, behind its name: bolts.
    pub state_out = "out", "ausgebaut";
    /// How a thing stands, behind its name.
    pub state_on = "on", "dran";
    /// How a thing stands, behind its name: bolts.
    pub state_cracked = "cracked", "gelöst";
    /// How a thing stands, behind its name: bolts.
    pub state_tight = "tight", "fest";
    /// How a thing stands, behind its name: bolts.
    pub state_loose = "loose", "dran, nicht fest";
    /// How a thing stands, behind its name: a bolt that snapped.
    pub state_stub = "stub", "abgerissen";
    /// How a thing stands, behind its name: a bolt that does not turn.
    pub state_stuck = "stuck", "festgegangen";
    /// How a thing stands, behind its name: a connector.
    pub state_plugged = "plugged", "gesteckt";
    /// How a thing stands, behind its name: a connector.
    pub state_unplugged = "unplugged", "abgezogen";
    /// How a thing stands, behind its name: a fluid.
    pub state_at_level = "at level", "Füllstand stimmt";
    /// How a thing stands, behind its name: a fluid.
    pub state_low = "low", "abgelassen";
    /// How a thing stands, behind its name: work.
    pub state_done = "done", "erledigt";
    /// How a thing stands, behind its name: work.
    pub state_due = "due", "fällig";
    /// How a thing stands, behind its name: what was put in for the job.
    pub state_outside = "outside", "wieder draußen";
    /// How a thing stands, behind its name: what was put in for the job.
    pub state_inside = "inside", "drin";
    /// A move in the list of a map: an item comes off.
    pub move_off(item) = "{item}.off", "{item} ab";
    /// A move in the list of a map: bolts are taken out.
    pub move_out(item) = "{item}.out", "{item} ausbauen";
    /// A move in the list of a map: bolts are loosened first.
    pub move_crack(item) = "{item}.crack", "{item} lösen";
    /// A move in the list of a map.
    pub move_unplug(item) = "{item}.unplug", "{item} abziehen";
    /// A move in the list of a map.
    pub move_drain(item) = "{item}.drain", "{item} ablassen";
    /// A move in the list of a map: work that becomes due.
    pub move_due(item) = "{item}.due", "{item} fällig";
    /// A move in the list of a map: a lock pin and the like.
    pub move_in(item) = "{item}.in", "{item} hinein";
    /// Between needs that all have to hold.
    pub and = " and ", " und ";
    /// Between needs of which one is enough.
    pub or = " or ", " oder ";

    /// Where something does not belong to an item: in a list of changes and of faults.
    pub the_map = "the map", "die Vorlage";
    /// What a fault is about, where it is the text of where things stand.
    pub the_state = "the state", "der Stand der Teile";

    /// What became of an item: it is new, and what it is.
    pub added(is) = "new, {is}", "neu, {is}";
    /// What became of an item.
    pub taken_out = "taken out", "herausgenommen";
    /// What became of an item: it says something more, such as "needs" "tray off".
    pub now_says(field, now) = "now {field} {now}", "neu: {field} {now}";
    /// What became of an item: it no longer says something.
    pub no_longer_says(field, was) = "no longer {field} {was}", "nicht mehr: {field} {was}";
    /// What became of an item: it says something else.
    pub was_and_is(field, was, now) = "{field} was {was}, is {now}", "{field} bisher {was}, jetzt {now}";
    /// What of a map changed.
    pub vehicle = "vehicle", "Fahrzeug";
    /// What of a map changed: where work starts.
    pub start = "start", "Anfang";
    /// What of a map changed.
    pub minutes_to_change_place = "minutes to change place", "Minuten für einen Ortswechsel";
    /// What of a map changed.
    pub minutes_to_change_tool = "minutes to change tool", "Minuten für einen Werkzeugwechsel";
    /// What of a map changed: between two places.
    pub minutes_from_to(from, to) = "minutes from {from} to {to}", "Minuten von {from} nach {to}";
    /// What of a map changed: one of its sources.
    pub source(name) = "source {name}", "Quelle {name}";
    /// What of a map changed.
    pub has_the_variant = "has the variant", "hat die Ausführung";
    /// What of a map changed: the items that came off in a job follow.
    pub as_seen_in(job) = "as seen in {job}:", "gesehen bei {job}:";
    /// What of a map changed: an answer to what comes first follows.
    pub settled = "settled:", "geklärt:";
    /// An answer to what comes first.
    pub before(first, second) = "{first} before {second}", "{first} vor {second}";
    /// An answer to what comes first.
    pub either_way(one, other) = "{one} and {other} either way", "{one} und {other} in beliebiger Reihenfolge";
    /// What of an item changed: what it is.
    pub is = "is", "Art:";
    /// What of an item changed.
    pub count = "count", "Anzahl";
    /// What of an item changed.
    pub system = "system", "System";
    /// What of an item changed: where it sits.
    pub zone = "zone", "Ort";
    /// What of an item changed.
    pub size = "size", "Größe";
    /// What of an item changed.
    pub torque_sequence = "torque sequence", "Anzugsreihenfolge";
    /// What of an item changed: how far or how long after the job the work is due.
    pub due_after = "due after", "fällig nach";
    /// What of an item changed: which sort of work.
    pub sort = "sort", "Sorte";
    /// What of an item changed.
    pub note = "note", "Notiz";
    /// What of an item changed: how much it holds.
    pub holds = "holds", "Inhalt";
    /// What of an item changed: how much its cock gives.
    pub drains = "drains", "aus dem Ablass kommen";
    /// What of an item changed: of one bolt.
    pub length_at(at) = "length at {at}", "Länge an {at}";
    /// What of an item changed.
    pub torque = "torque", "Drehmoment";
    /// What an item is: never used again.
    pub renewed_each_time = "renewed each time", "jedes Mal neu";
    /// What of an item changed: how many of its pieces may be missing.
    pub may_lack = "may lack", "fehlen dürfen";
    /// At which positions none may be missing; after a comma.
    pub never_at(positions) = ", never at {positions}", ", nie an {positions}";
    /// What of an item changed: the variant on which it is.
    pub only_with = "only with", "nur mit";
    /// What of an item changed: another item follows.
    pub only_guessed_to_need = "only guessed to need", "braucht vermutlich erst";
    /// The same for going back.
    pub only_guessed_to_need_back = "going back, only guessed to need", "braucht beim Einbau vermutlich erst";
    /// What of an item changed: a need follows.
    pub needs = "needs", "braucht";
    /// What of an item changed: what it needs is taken from jobs.
    pub what_jobs_have_shown = "what jobs have shown", "was Aufträge gezeigt haben";
    /// What of an item changed: a need follows.
    pub going_back_needs = "going back needs", "zum Einbau braucht es";
    /// What of an item changed: the work that it leaves follows.
    pub owes = "owes", "danach ist zu tun:";
    /// What of an item changed: what is renewed with it follows.
    pub renews = "renews", "erneuert";
    /// What of an item changed: a tool follows.
    pub takes = "takes", "Werkzeug";
    /// What of an item changed: where one stands for it.
    pub place = "place", "Arbeitsort";
    /// Where one stands to put it back or to fill it, where that is another place.
    pub place_back = "place on the way back", "Arbeitsort beim Einbau";
    /// What of an item changed; "by itself" follows.
    pub runs = "runs", "läuft";
    /// How work runs at which nobody stands by.
    pub by_itself = "by itself", "von allein";
    /// What of an item changed.
    pub minutes_out = "minutes out", "Minuten für den Ausbau";
    /// What of an item changed.
    pub minutes_back = "minutes back", "Minuten für den Einbau";
    /// What of an item changed: for each piece.
    pub minutes_out_for_each = "minutes out for each", "Minuten für den Ausbau, je Stück";
    /// What of an item changed: for each piece.
    pub minutes_back_for_each = "minutes back for each", "Minuten für den Einbau, je Stück";
    /// What of an item changed.
    pub minutes_lost = "minutes lost", "verlorene Minuten";
    /// What of an item changed.
    pub minutes_of_risk = "minutes of risk", "Minuten für das Risiko";
    /// Before what changed of one of the two moves of bolts.
    pub first_loosening = "crack: ", "Lösen: ";
    /// Before what changed of one of the two moves of bolts.
    pub taking_out = "out: ", "Ausbau: ";

    /// Two people changed the same thing: what it is, what it was, and what each made of it.
    pub conflict(what, was, mine, theirs) = "{what}: was {was}; one has {mine}, the other {theirs}; choose one", "{what}: bisher {was}; einmal {mine}, einmal {theirs}; eins wählen";
    /// What it was.
    pub not_there = "not there", "nicht da";
    /// What it was.
    pub there = "there", "da";
    /// What one of them made of it.
    pub changed = "changed", "geändert";

    /// Where things stand is odd: an item, its state, and what should be so as well.
    pub stands_and_yet_not(item, state, need) = "{item} stands {state}, and yet not {need}: is that so?", "{item}: {state}, und doch nicht {need}: stimmt das?";
    /// Where somebody stands is odd: the place, and one of nearly that name.
    pub is_near_meant(at, near) = "nothing is worked on at {at}: is {near} meant?", "Arbeitsort {at}: dort wird nichts gearbeitet; ist {near} gemeint?";
    /// Where somebody stands is odd.
    pub where_does_one_stand(at) = "nothing is worked on at {at}: where does one stand?", "Arbeitsort {at}: dort wird nichts gearbeitet; von wo aus dann?";

    /// How heavy a fault is.
    pub error = "error", "Fehler";
    /// How heavy a fault is.
    pub warning = "warning", "Warnung";
    /// A mend: a word of nearly that spelling.
    pub did_you_mean(near) = "did you mean `{near}`?", "ist `{near}` gemeint?";
    /// A mend: the words that may stand there.
    pub write_one_of(words) = "write one of {words}", "eins davon schreiben: {words}";
    /// A mend.
    pub write_one_from_to(least, most) = "write one from {least} to {most}", "{least} bis {most} schreiben";
    /// A mend.
    pub take_it_out = "take it out", "herausnehmen";
    /// A mend.
    pub take_one_out = "take one of them out", "eins davon herausnehmen";

    /// A fault of the text.
    pub no_table(key) = "`{key}` is not a table", "`{key}` ist keine Tabelle";
    /// A mend: the keys that may stand there.
    pub keys_here(keys) = "the keys here are {keys}", "hier gibt es {keys}";
    /// A fault of the text: a key, and where it stands.
    pub no_key_of(key, of) = "`{key}` is no key of {of}", "{of}: `{key}` gibt es hier nicht";
    /// A fault of the text.
    pub no_text(key) = "`{key}` is not a text", "`{key}` ist kein Text";
    /// A mend.
    pub write_in_quotes = "write it in quotes", "in Anführungszeichen schreiben";
    /// A fault of the text: a word, and the key where it stands.
    pub not_known_as(word, key) = "`{word}` is not known as `{key}`", "`{word}` ist als `{key}` nicht bekannt";
    /// A fault of the text.
    pub neither_true_nor_false(key) = "`{key}` is neither true nor false", "`{key}` ist weder true noch false";
    /// A mend.
    pub write_true = "write true, or take the line away", "true schreiben oder die Zeile herausnehmen";
    /// A fault of the text.
    pub no_count(key) = "`{key}` is not a count", "`{key}` ist keine Anzahl";
    /// A mend.
    pub write_whole_number = "write a whole number", "eine ganze Zahl schreiben";
    /// A fault of the text: a key, and what stands there.
    pub no_time(key, written) = "`{key}` is {written}, which is no time in whole tenths of a minute", "`{key}` ist {written}, das sind keine ganzen Zehntel einer Minute";
    /// A mend.
    pub write_minutes_from = "write minutes from 0 to 10000, such as 2 or 2.5", "Minuten von 0 bis 10000 schreiben, z. B. 2 oder 2.5";
    /// A fault of the text.
    pub no_list_of_texts(key) = "`{key}` is not a list of texts", "`{key}` ist keine Liste von Texten";
    /// A mend.
    pub write_as_list = "write it as [\"...\", \"...\"]", "als [\"...\", \"...\"] schreiben";
    /// A fault of the text.
    pub no_positions(key) = "`{key}` names no positions", "`{key}` nennt keine Positionen";
    /// A mend.
    pub write_positions_as_list = "write them as a list, such as `[1, 2]`", "als Liste schreiben, z. B. `[1, 2]`";
    /// A fault of the text.
    pub no_position(written) = "{written} is no position", "{written} ist keine Position";
    /// A mend.
    pub write_number_and_unit = "write a number and its unit", "Zahl und Einheit schreiben";
    /// A fault of the text: what stands there, what it should be, and why it is none.
    pub no_quantity(text, dimension, why) = "`{text}` is no {dimension}: {why}", "`{text}` ist nicht zu lesen ({dimension}): {why}";
    /// A mend.
    pub write_named_table(key) = "write `[{key}.NAME]`, with its lines below", "`[{key}.NAME]` schreiben, die Zeilen darunter";
    /// A mend.
    pub write_which_way = "write which way, such as `minutes = { out = 2, back = 2.5 }`", "schreiben, für welche Richtung, z. B. `minutes = { out = 2, back = 2.5 }`";
    /// A mend: how such a table is written.
    pub write_such_as(written) = "write it such as `{written}`", "z. B. so schreiben: `{written}`";
    /// A mend: the name of an item's table.
    pub write_item_table(name) = "write `[items.{name}]`, with its lines below", "`[items.{name}]` schreiben, die Zeilen darunter";
    /// A mend.
    pub write_as_table(key) = "write it as `{key} = {{ ... }}`, or `[{key}]` with its lines below", "als `{key} = {{ ... }}` schreiben, oder `[{key}]` mit den Zeilen darunter";

    /// A fault of the text.
    pub no_such_variant(variant) = "no variant is called `{variant}`", "keine Ausführung heißt `{variant}`";
    /// A mend.
    pub add_to_variants = "add it to `variants`", "bei `variants` eintragen";
    /// A fault of the text.
    pub no_work_and_no_sort(name) = "`{name}` is no work, and has no sort of work", "`{name}` ist keine Arbeit und hat keine Sorte";
    /// A mend.
    pub take_sort_out = "take `sort` out", "`sort` herausnehmen";
    /// A fault of the text.
    pub no_sort_of_work(sort) = "`{sort}` is no sort of work", "`{sort}` ist keine Sorte von Arbeit";
    /// A mend.
    pub write_code_of_sort = "write a code such as `bleed-brakes`, or leave `sort` out", "ein Kürzel wie `bleed-brakes` schreiben oder `sort` weglassen";
    /// A mend.
    pub add_source_table(name) = "add `[sources.{name}]` with its title and date", "`[sources.{name}]` mit Titel und Datum ergänzen";
    /// A fault of the text.
    pub no_such_source(name) = "no source is called `{name}`", "keine Quelle heißt `{name}`";
    /// A fault of the text.
    pub torque_without_source(name) = "the torque of `{name}` has no source", "das Drehmoment von `{name}` hat keine Quelle";
    /// A mend.
    pub add_torque_from = "add `torque-from = \"...\"` with a name under [sources]", "`torque-from = \"...\"` ergänzen, mit einem Namen aus [sources]";
    /// A fault of the text: the item, and the positions.
    pub no_length_at(name, positions) = "`{name}` has no length at {positions}, where the others have one", "`{name}` hat bei {positions} keine Länge, die anderen schon";
    /// A mend.
    pub add_lengths = "add them, or `length` for those that are alike", "ergänzen, oder `length` für die gleichen";
    /// A fault of the text.
    pub more_may_miss_than_are(up_to, name, count) = "{up_to} of `{name}` may be missing, and there are {count}", "von `{name}` dürfen {up_to} fehlen, es gibt aber nur {count}";

    /// A fault of the text.
    pub no_vehicle = "the map names no vehicle", "die Vorlage nennt kein Fahrzeug";
    /// A mend.
    pub add_vehicle = "add a line `vehicle = \"...\"`", "eine Zeile `vehicle = \"...\"` ergänzen";
    /// A fault of the text.
    pub name_with_blanks(name) = "the name `{name}` is empty, or begins or ends with a blank", "der Name `{name}` ist leer, oder beginnt oder endet mit einem Leerzeichen";
    /// A mend.
    pub name_without_blanks = "name it as people call it, without blanks around it", "so nennen, wie es alle nennen, ohne Leerzeichen davor und danach";
    /// A fault of the text.
    pub source_without_title(name) = "the source `{name}` has no title", "die Quelle `{name}` hat keinen Titel";
    /// A fault of the text.
    pub source_without_date(name) = "the source `{name}` has no date", "die Quelle `{name}` hat kein Datum";
    /// A mend.
    pub add_title = "add a line such as `title = \"Workshop manual\"`", "eine Zeile ergänzen, z. B. `title = \"Werkstatthandbuch\"`";
    /// A mend.
    pub add_date = "add a line such as `date = \"2021-09-15\"`", "eine Zeile ergänzen, z. B. `date = \"2021-09-15\"`";
    /// A fault of the text.
    pub no_date(date) = "`{date}` is no date", "`{date}` ist kein Datum";
    /// A mend.
    pub write_year_first = "write it year first, such as 2021-09-15, 2021-09 or 2021", "das Jahr zuerst schreiben, z. B. 2021-09-15, 2021-09 oder 2021";
    /// A mend.
    pub add_kind = "add a line `is = \"part\"`, or another kind", "eine Zeile `is = \"part\"` ergänzen, oder eine andere Art";
    /// A fault of the text.
    pub does_not_say_what_it_is(name) = "`{name}` does not say what it is", "bei `{name}` steht nicht, was es ist";
    /// A fault of the text.
    pub no_kind_of_item(word) = "`{word}` is no kind of item", "`{word}` ist keine Art von Teil";
    /// A mend.
    pub only_fasteners_are_counted = "only fasteners and clips are counted, from 1", "gezählt werden nur Schrauben und Clips, ab 1";
    /// A fault of the text.
    pub cannot_have_pieces(name, count) = "`{name}` cannot have {count} pieces", "`{name}` kann nicht {count} Stück haben";

    /// A fault of the text.
    pub counts_only_as_seen(key, name) = "`{key}` of `{name}` counts only where it needs what was seen", "`{key}` von `{name}` gilt nur, wo es braucht, was gesehen wurde";
    /// A mend.
    pub write_as_seen = "write `needs = \"as seen\"` beside `seen-needs`, or take it out", "`needs = \"as seen\"` neben `seen-needs` schreiben oder es herausnehmen";
    /// A fault of the text.
    pub not_said_to_need(name, other) = "`{name}` is not said to need `{other}`", "dass `{name}` `{other}` braucht, steht hier nicht";
    /// A mend.
    pub name_a_seen_need = "name an item that stands in `seen-needs`", "ein Teil nennen, das in `seen-needs` steht";
    /// A fault of the text.
    pub cannot_be_cracked(name) = "`{name}` cannot be cracked: it is no fastener", "`{name}` kann nicht erst gelöst werden: es sind keine Schrauben";
    /// A mend.
    pub take_crack_away = "take `crack` away, and write what stood in `out` without it", "`crack` herausnehmen und den Inhalt von `out` ohne `out` schreiben";
    /// A fault of the text.
    pub which_of_two_moves(key, name) = "`{key}` of `{name}` says not which of its two moves is meant", "`{key}` von `{name}` sagt nicht, welcher der zwei Handgriffe gemeint ist";
    /// A mend.
    pub write_within_crack_or_out = "write it within `crack` or `out`", "in `crack` oder `out` schreiben";
    /// A fault of the text.
    pub out_without_crack(name) = "`{name}` comes out without being cracked", "`{name}` wird ausgebaut, ohne gelöst zu werden";
    /// A mend.
    pub write_crack_as_well = "write `crack` as well, or the keys of `out` without it", "auch `crack` schreiben, oder die Zeilen von `out` ohne `out`";
    /// A fault of the text: the name, and what it is written as.
    pub written_not_as_work(name, kind) = "`{name}` is written as {kind}, not as work", "`{name}` steht als `{kind}` da, nicht als Arbeit";
    /// A fault of the text.
    pub no_such_work(name) = "no work is called `{name}`", "keine Arbeit heißt `{name}`";
    /// A mend.
    pub add_as_work = "add it as an item that is = \"work\"", "als Teil mit is = \"work\" ergänzen";
    /// A mend.
    pub add_as_spent = "add it as an item with `spent = true`", "als Teil mit `spent = true` ergänzen";
    /// A fault of the text.
    pub no_such_item(name) = "no item is called `{name}`", "kein Teil heißt `{name}`";
    /// A fault of the text.
    pub needs_itself(name) = "`{name}` needs a state of itself", "`{name}` braucht einen Zustand von sich selbst";
    /// A mend.
    pub start_is_known = "take it out; where a move starts is known already", "herausnehmen; womit ein Handgriff anfängt, ist schon bekannt";

    /// A fault of the text.
    pub any_names_no_way = "`any` names no way", "`any` nennt keinen Weg";
    /// A mend.
    pub write_two_ways = "write two ways or more, such as { any = [\"tray off\", \"liner off\"] }", "zwei Wege oder mehr schreiben, z. B. { any = [\"tray off\", \"liner off\"] }";
    /// A fault of the text.
    pub no_need = "this is no need", "das ist keine Voraussetzung";
    /// A mend.
    pub write_a_need = "write \"item state\", a list of those, or { any = [...] }", "\"Teil Zustand\" schreiben, eine Liste davon oder { any = [...] }";
    /// A mend.
    pub add_or_correct = "add the item, or correct the name", "das Teil ergänzen oder den Namen berichtigen";
    /// A mend.
    pub positions_to(count) = "it has positions 1 to {count}", "es hat die Positionen 1 bis {count}";
    /// A fault of the text.
    pub has_no_position(name, at) = "`{name}` has no position {at}", "`{name}` hat keine Position {at}";
    /// A fault of the text.
    pub is_never(name, state) = "`{name}` is never `{state}`", "`{name}` ist nie `{state}`";
    /// A fault of the text.
    pub empty_need = "a need is empty", "eine Voraussetzung ist leer";
    /// A mend.
    pub write_such_as_belt_off = "take it out, or write such as \"belt off\"", "herausnehmen oder z. B. \"belt off\" schreiben";
    /// A mend.
    pub end_in_one_of(words) = "end it in one of {words}", "am Ende muss eins davon stehen: {words}";
    /// A fault of the text.
    pub names_no_state(text) = "`{text}` names no state", "`{text}` nennt keinen Zustand";

    /// A fault of a text that says where things stand: no such item, and one of nearly that name.
    pub near_or_add_kind(near) = "did you mean `{near}`? Otherwise add `is = \"part\"`, or another kind", "ist `{near}` gemeint? Sonst `is = \"part\"` ergänzen, oder eine andere Art";
    /// A mend.
    pub add_kind_here = "add `is = \"part\"`, or another kind", "`is = \"part\"` ergänzen, oder eine andere Art";
    /// A fault of a text that says where things stand.
    pub map_has_no(name) = "the map has no `{name}`", "in der Vorlage fehlt `{name}`";
    /// A fault of a text that says where things stand.
    pub not_said_where(name) = "`{name}` does not say where it stands", "bei `{name}` steht nicht, in welchem Zustand es ist";
    /// A mend.
    pub add_stands = "add a line such as `stands = \"off\"`", "eine Zeile wie `stands = \"off\"` ergänzen";
    /// A fault of a text that says where things stand.
    pub stands_both(name, at, one, other) = "`{name}` {at} stands both `{one}` and `{other}`", "`{name}` {at} ist zugleich `{one}` und `{other}`";
    /// A fault of a text that says where things stand.
    pub cannot_stand(name, word) = "`{name}` cannot stand `{word}`", "`{name}` kann nicht `{word}` sein";

    /// A mend.
    pub add_or_take_name_out = "add the item, or take the name out", "das Teil ergänzen oder den Namen herausnehmen";
    /// A mend.
    pub write_pairs = "write pairs of items, such as [[\"tray screws\", \"tray\"]]", "Paare von Teilen schreiben, z. B. [[\"tray screws\", \"tray\"]]";
    /// A fault of the text.
    pub no_list_of_pairs(key) = "`{key}` is not a list of pairs", "`{key}` ist keine Liste von Paaren";
    /// A fault of the text.
    pub no_pair(written) = "{written} is no pair of two items of this map", "{written} ist kein Paar aus zwei Teilen dieser Vorlage";

    /// A fault of the text.
    pub nothing_worked_on_at(place) = "nothing is worked on at `{place}`", "am Arbeitsort `{place}` wird nichts gearbeitet";
    /// A mend.
    pub write_a_named_place = "write a place that an item names", "einen Ort schreiben, den ein Teil nennt";
    /// A fault of the text: a move, and its place.
    pub only_one_worked_on_at(step, place) = "only `{step}` is worked on at `{place}`", "am Arbeitsort `{place}` gibt es nur `{step}`";
    /// A fault of the text: a move, and its tool.
    pub only_one_takes(step, tool) = "only `{step}` takes a `{tool}`", "nur `{step}` braucht `{tool}`";
    /// A fault of the text.
    pub longer_than_a_day(step, minutes) = "`{step}` takes {minutes} minutes, longer than a working day", "`{step}` dauert {minutes} Minuten, länger als ein Arbeitstag";
    /// A mend.
    pub write_minutes_or_by_itself = "write minutes, or `by-itself = true` if nobody stands by", "Minuten schreiben, oder `by-itself = true`, wenn niemand dabei steht";
    /// A fault of the text.
    pub no_item_only_with(variant) = "no item is only on vehicles with `{variant}`", "es gibt kein Teil nur an Fahrzeugen mit `{variant}`";
    /// A mend.
    pub add_only_with(variant) = "add `only-with = \"{variant}\"` to what they have, or take it out", "`only-with = \"{variant}\"` bei dem ergänzen, was sie haben, oder herausnehmen";

    /// A fault of the text, before it: for which vehicles.
    pub on_no_variant = "on a vehicle with no variant, ", "an einem Fahrzeug ohne Ausführung: ";
    /// A fault of the text, before it: for which vehicles.
    pub on_variant(names) = "on a vehicle with {names}, ", "an einem Fahrzeug mit {names}: ";
    /// A fault of the text.
    pub renewed_may_go_back(seal, item) = "`{seal}` is renewed with `{item}`, and may go back", "`{seal}` wird mit `{item}` erneuert und darf doch wieder dran";
    /// A mend.
    pub write_spent = "write `spent = true` for it", "dafür `spent = true` schreiben";
    /// A fault of the text.
    pub renewed_has_minutes(seal, item) = "`{seal}` is renewed with `{item}`, and has minutes of its own", "`{seal}` wird mit `{item}` erneuert und hat eigene Minuten";
    /// A mend.
    pub add_to_those_of(item) = "add them to those of `{item}`", "zu denen von `{item}` dazuzählen";
    /// What nothing leads to.
    pub what_it_starts_from = "what it starts from", "dem, womit es anfängt";
    /// A fault of the text: for which vehicles, a move, and what it needs.
    pub can_never_be_made(on, step, need) = "{on}`{step}` can never be made: nothing leads to {need}", "{on}`{step}` geht nie: nichts führt zu {need}";
    /// A mend.
    pub mend_or_another_way = "mend what it needs, or state another way as `any`", "berichtigen, was es braucht, oder einen anderen Weg als `any` angeben";
    /// In a circle of moves: how many are not shown.
    pub more_of_which_the_last(n) = "{n} more, of which the last", "{n} weitere, und das letzte davon";
    /// Between the moves of a circle.
    pub needs_between = " needs ", " braucht ";
    /// A fault of the text: for which vehicles, and the circle of moves.
    pub wait_for_each_other(on, moves) = "{on}these moves wait for each other: {moves}", "{on}diese Handgriffe warten aufeinander: {moves}";
    /// A mend.
    pub take_one_need_away = "take one need away, or state another way as `any`", "eine Voraussetzung herausnehmen oder einen anderen Weg als `any` angeben";
    /// A fault of the text: a way, and the move that it is to support.
    pub way_supports_nothing(way, step) = "the way by `{way}` can never support `{step}`: it comes only after that", "der Weg über `{way}` hilft `{step}` nie: er kommt erst danach";
    /// A mend.
    pub take_out_of_any = "take it out of `any`, or mend what it needs", "aus `any` herausnehmen oder berichtigen, was es braucht";
    /// A fault of the text: a move, and two things that can't both be so.
    pub needs_both_at_once(step, one, other) = "`{step}` needs `{one}` and `{other}` at once", "`{step}` braucht zugleich `{one}` und `{other}`";
    /// A mend.
    pub take_one_or_two_ways = "take one out, or state two ways as `any`", "eins herausnehmen oder zwei Wege als `any` angeben";
    /// A fault of the text: a fluid, and a plug, a clamp or a rag in its system.
    pub filled_with_it_inside(fluid, inside) = "`{fluid}` may be filled while `{inside}` is still inside", "`{fluid}` kann eingefüllt werden, während `{inside}` noch drin ist";
    /// A mend: what must hold first, and of which fluid.
    pub write_removed_first(need, fluid) = "write `{need}` under `needs-back` of `{fluid}`", "`{need}` unter `needs-back` von `{fluid}` schreiben";
    /// A fault of the text: bolts, and what they hold.
    pub would_hang_free(item, load) = "`{item}` is tightened finally while `{load}` may be off: it would hang free", "`{item}` wird endgültig angezogen, während `{load}` noch ab sein kann: dann hängt es frei";
    /// A mend.
    pub write_two_moves = "write its two moves, `crack` and `out`, and `needs-back` of `crack` so that `wheel on` holds by then", "die zwei Handgriffe `crack` und `out` schreiben, und `needs-back` von `crack` so, dass bis dahin `wheel on` gilt";
    /// A mend: what must hold.
    pub write_needs_back(need) = "write `needs-back` so that `{need}` holds by then", "`needs-back` so schreiben, dass bis dahin `{need}` gilt";

    /// A fault of the text: it stands twice.
    pub stands_a_second_time(key) = "`{key}` stands here a second time", "`{key}` steht hier zum zweiten Mal";
    /// A mend.
    pub give_another_name = "give one of the two another name, or make one of them", "eins der beiden umbenennen oder eins daraus machen";
    /// A fault of the text.
    pub no_letter = "a sign that is no letter stands in this text", "in diesem Text steht ein Zeichen, das kein Buchstabe ist";
    /// A fault of the text.
    pub text_does_not_end = "a text does not end on its line", "ein Text endet nicht in seiner Zeile";
    /// A mend.
    pub close_with_quote = "close it with `\"`", "mit `\"` abschließen";
    /// A fault of the text.
    pub words_stand_in_quotes = "words stand in quotes", "Wörter stehen in Anführungszeichen";
    /// A mend.
    pub write_in_such_quotes = "write them as `\"...\"`", "als `\"...\"` schreiben";
    /// A fault of the text.
    pub bracket_does_not_end = "the name in brackets does not end here", "der Name in Klammern endet hier nicht";
    /// A mend.
    pub close_bracket_of_name = "close it with `]`; a name of several words stands in quotes, such as `[items.\"tray screws\"]`", "mit `]` abschließen; ein Name aus mehreren Wörtern steht in Anführungszeichen, z. B. `[items.\"tray screws\"]`";
    /// A fault of the text.
    pub list_has_no_end = "a list that began further up has no end before this", "eine Liste, die weiter oben beginnt, ist bis hier nicht zu Ende";
    /// A mend.
    pub close_list = "close it with `]`, or write `,` between its parts", "mit `]` abschließen, oder `,` zwischen die Teile schreiben";
    /// A fault of the text.
    pub brace_has_no_end = "a `{` that began further up has no end before this", "eine `{`, die weiter oben beginnt, ist bis hier nicht zu";
    /// A mend.
    pub close_brace = "close it with `}`, or write `,` between its parts", "mit `}` abschließen, oder `,` zwischen die Teile schreiben";
    /// A fault of the text.
    pub lists_too_deep = "lists within lists, deeper than anything can mean", "Listen in Listen, tiefer als sinnvoll";
    /// A mend.
    pub take_inner_brackets_away = "take the inner brackets away", "die inneren Klammern weglassen";
    /// A fault of the text.
    pub no_key_with_value = "this line is no key with a value", "in dieser Zeile fehlt ein Name mit seinem Wert";
    /// A mend.
    pub write_key_value = "write it as `key = value`, or begin it with `#` if it is a remark", "als `name = wert` schreiben, oder mit `#` beginnen, wenn es eine Bemerkung ist";
    /// A mend.
    pub correct_the_toml = "correct the TOML here", "das TOML hier berichtigen";
}
