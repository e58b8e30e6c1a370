//! Cautions, measures, skills, tables that are read in, maps that come from other shops, and how a
//! job was done.

use phrases::phrases;

phrases! {
    /// Beside a rule of a place: its text was read.
    pub published = "published", "veröffentlicht";
    /// Beside a rule of a place: its text was not at hand.
    pub from_memory = "memory", "aus dem Gedächtnis";
    /// A caution before a step.
    pub caution_coolant = "Coolant may be hot and under pressure. Open nothing until it is cool to the hand; see the maker's instructions.", "Kühlmittel kann heiß sein und unter Druck stehen. Nichts öffnen, bis es handwarm ist; Anleitung des Herstellers beachten.";
    /// A caution before a step.
    pub caution_airbags = "Airbags can fire. Battery off and wait as the maker says before unplugging; licensed practice only where the law asks.", "Airbags können auslösen. Vor dem Abziehen von Steckern Batterie ab und warten, wie der Hersteller sagt; nur mit Sachkunde, wo das Gesetz sie verlangt.";
    /// A caution before a step.
    pub caution_high_voltage = "High voltage kills. Only who is qualified for it releases it, by the maker's procedure.", "Hochvolt tötet. Freischalten darf nur, wer dafür ausgebildet ist, so wie der Hersteller es vorschreibt.";
    /// A caution before a step.
    pub caution_fuel = "Fuel under pressure and vapour: no flame, no spark, let the pressure off as the maker says.", "Kraftstoff unter Druck und Dämpfe: keine Flamme, kein Funke, Druck ablassen, wie der Hersteller sagt.";
    /// A caution before a step.
    pub caution_lift = "Lift and support as the lift's and the vehicle's makers say. Nothing here says that it is safe to go under it.", "Anheben und abstützen, wie die Hersteller von Bühne und Fahrzeug es sagen. Nichts hier sagt, dass man sicher darunter gehen kann.";
    /// A caution before a step.
    pub caution_belts = "Moving belts and fans: engine off, key out, and a fan may still start by itself.", "Laufende Riemen und Lüfter: Motor aus, Schlüssel ab, und ein Lüfter kann trotzdem anlaufen.";

    /// A heading of what is measured.
    pub brake_pads_front = "Brake pads, front", "Bremsbeläge vorne";
    /// A heading of what is measured.
    pub brake_pads_rear = "Brake pads or shoes, rear", "Bremsbeläge oder Backen hinten";
    /// A heading of what is measured.
    pub brake_discs_front = "Brake discs, front", "Bremsscheiben vorne";
    /// A heading of what is measured.
    pub brake_discs_rear = "Brake discs or drums, rear", "Bremsscheiben oder Trommeln hinten";
    /// A heading of what is measured.
    pub tyre_tread = "Tyre tread", "Reifenprofil";
    /// A heading of what is measured.
    pub battery_at_rest = "Battery at rest", "Ruhespannung der Batterie";
    /// What has to be known of the least that is allowed.
    pub hint_lining = "of the lining without its plate, by the vehicle's maker", "der Belag ohne Trägerplatte, nach dem Fahrzeughersteller";
    /// What has to be known of the least that is allowed.
    pub hint_disc = "stamped on the disc, or by the vehicle's maker", "auf der Scheibe eingeschlagen oder nach dem Fahrzeughersteller";
    /// What has to be known of the least that is allowed.
    pub hint_drum = "stamped on the disc, or by the vehicle's maker; a drum is told at its own place", "auf der Scheibe eingeschlagen oder nach dem Fahrzeughersteller; eine Trommel an ihrer eigenen Stelle";
    /// What has to be known of the least that is allowed.
    pub hint_tread = "by the law of your place; winter tyres often more", "nach dem Gesetz am Ort; Winterreifen oft mehr";
    /// What has to be known of the least that is allowed.
    pub hint_battery = "after hours without charge or load", "nach Stunden ohne Laden und ohne Last";

    /// What stands beside rules of a place.
    pub not_advice = "Not legal advice: rules change, so look the current text up before you rely on it.", "Keine Rechtsberatung: Regeln ändern sich; vor dem Anwenden den geltenden Text nachsehen.";

    /// A job beside its map: what came off before what the map needs first.
    pub came_off_before(item, need) = "{item} came off; the map says first: {need}", "{item} kam ab; laut Vorlage vorher: {need}";
    /// A job beside its map: what came off that the map does not have.
    pub not_on_the_map(items) = "not on the map: {items}", "nicht in der Vorlage: {items}";

    /// What somebody can do.
    pub can_not_yet = "not yet", "noch nicht";
    /// What somebody can do.
    pub can_watched = "with somebody looking on", "wenn jemand zusieht";
    /// What somebody can do.
    pub can_alone = "alone", "allein";
    /// What somebody can do.
    pub can_teach = "can show others", "kann es anderen zeigen";

    /// A column of a table that is read in.
    pub column_name = "name", "Name";
    /// A column of a table that is read in.
    pub column_telephone = "telephone", "Telefon";
    /// A column of a table that is read in.
    pub column_mail = "e-mail", "E-Mail";
    /// A column of a table that is read in.
    pub column_address = "address", "Adresse";
    /// A column of a table that is read in.
    pub column_plate = "plate", "Kennzeichen";
    /// A column of a table that is read in.
    pub column_vehicle = "vehicle", "Fahrzeug";
    /// A column of a table that is read in.
    pub column_vin = "vin", "FIN";
    /// Where a table can't be read.
    pub line(line) = "line {line}", "Zeile {line}";
    /// Why a table can't be read: no column names the customer.
    pub no_column(columns) = "no column is called name or customer, only {columns}", "keine Spalte heißt Name oder Kunde, nur {columns}";
    /// How a table is mended.
    pub name_the_columns = "name the columns in the first line: name, telephone, e-mail, address, plate, vehicle, vin", "die Spalten in der ersten Zeile benennen: Kunde, Telefon, E-Mail, Adresse, Kennzeichen, Fahrzeug, FIN";
    /// Why a table can't be read.
    pub more_than_rows(most) = "more than {most} rows", "mehr als {most} Zeilen";
    /// How a table is mended.
    pub split_the_table = "split the table into smaller ones", "die Tabelle in kleinere teilen";
    /// How a table is mended.
    pub save_as_csv = "save the table as CSV with one row a line, in UTF-8", "die Tabelle als CSV speichern, eine Zeile je Eintrag, in UTF-8";
    /// In place of a table's columns, where it has none.
    pub nothing = "nothing", "nichts";
    /// Why a row is not read in: one of its texts is too long.
    pub longer_than(column, letters) = "its {column} is longer than {letters} letters", "{column} ist länger als {letters} Zeichen";
    /// Why a row is not read in.
    pub names_no_customer = "it names no customer", "kein Kunde genannt";
    /// Why a row is not read in: it has a plate or number, and no vehicle.
    pub has_no_vehicle(plate) = "{plate} has no vehicle: write its maker and model", "{plate} ohne Fahrzeug: Marke und Modell schreiben";

    /// Where a map that was sent can't be read.
    pub maps_file = "the map's file", "die Datei der Vorlage";
    /// Where something is wrong: the shop's own key for maps.
    pub key_for_maps = "the key for maps", "der Schlüssel für Vorlagen";
    /// Why there is no key.
    pub no_random_numbers = "the system gives no random numbers", "das System liefert keine Zufallszahlen";
    /// How it is mended.
    pub try_it_again = "try it again", "noch einmal versuchen";
    /// Why there is no key.
    pub no_such_key = "it is no key of the sort that was written", "es ist kein Schlüssel der Art, die geschrieben wurde";
    /// How it is mended.
    pub put_key_back = "put it back from a copy, or move it away: then a new one is made", "aus einer Kopie zurückholen oder wegräumen: dann entsteht ein neuer";
    /// How a map's file is mended.
    pub ask_for_it_again = "ask the shop that sent it for the file again", "die Werkstatt, die sie geschickt hat, noch einmal um die Datei bitten";
    /// Why a map's file is not read.
    pub bytes_at_most(bytes, most) = "{bytes} bytes; at most {most} are read", "{bytes} Bytes; höchstens {most} werden gelesen";
    /// Why a map's file is not read.
    pub no_sent_map(why) = "it is no map that a shop has sent ({why})", "es ist keine Vorlage, die eine Werkstatt geschickt hat ({why})";
    /// How a map's file is mended.
    pub choose_as_it_came = "choose the file as it came; a map's plain text is read in on the page of a new map", "die Datei wählen, wie sie kam; den bloßen Text einer Vorlage nimmt die Seite für eine neue Vorlage";
    /// Why a map's file is not read: it names itself otherwise.
    pub says_something_else = "it says it is something else", "sie nennt sich selbst anders";
    /// Why a map's file is not read.
    pub of_another_form(form, own) = "it is of form {form}; this program reads form {own}", "sie hat Format {form}; dieses Programm liest Format {own}";
    /// How a map's file is mended.
    pub use_newer_program = "use a newer program", "ein neueres Programm nehmen";
    /// Why a map's file is not read.
    pub signature_does_not_fit = "its signature does not fit: something in it was changed after it was signed", "die Signatur passt nicht: nach dem Signieren wurde etwas geändert";
    /// Where something is wrong: a version of a map.
    pub map_version(map, version) = "the map {map}, version {version}", "die Vorlage {map}, Version {version}";
    /// Why no plan is made by a map.
    pub map_has_errors = "it has errors, so no plan can be made by it", "sie hat Fehler, danach lässt sich kein Plan machen";
    /// How a map is mended.
    pub mend_the_lines = "mend the lines named and keep the map again", "die genannten Zeilen in Ordnung bringen und die Vorlage neu speichern";
    /// There is no such map.
    pub no_map(map) = "there is no map {map}", "es gibt keine Vorlage {map}";
    /// There is no such version of a map.
    pub no_map_version(map, version) = "the map {map} has no version {version}", "die Vorlage {map} hat keine Version {version}";
    /// A map's text was erased.
    pub map_was_erased(map) = "the text of the map {map} was erased", "der Text der Vorlage {map} wurde gelöscht";
    /// Where something is refused: a map.
    pub a_map(map) = "the map {map}", "die Vorlage {map}";
    /// Refused: somebody else kept a version of the map.
    pub not_the_next(last, version) = "its last version is {last}, so {version} is not the next", "ihre letzte Version ist {last}, also ist {version} nicht die nächste";
    /// How it is mended.
    pub keep_yours_after = "look at the last version, and keep yours as the one after it", "die letzte Version ansehen und die eigene als nächste speichern";
    /// Before the number of a line, where a text of a map has a fault.
    pub line_of_text = "line", "Zeile";
    /// Where something is refused: a map's text.
    pub text_of_the_map = "the text of the map", "der Text der Vorlage";
    /// Refused: a map's text is too long.
    pub bytes_fit(bytes, most) = "{bytes} bytes; at most {most} fit", "{bytes} Bytes; höchstens {most} passen";
    /// How it is mended.
    pub make_two_maps = "make two maps of it", "zwei Vorlagen daraus machen";
    /// Refused: a map's text is none.
    pub no_utf8 = "it is no UTF-8 text", "es ist kein Text in UTF-8";
    /// How it is mended.
    pub send_as_text = "send the map as text", "die Vorlage als Text senden";

    /// Where something is refused: a picture.
    pub the_picture = "the picture", "das Bild";
    /// Refused: a picture is too large.
    pub points_fit(width, height, most) = "it is {width} by {height} points; at most {most} million fit", "es hat {width} mal {height} Pixel; höchstens {most} Millionen passen";
    /// How it is mended.
    pub make_it_smaller = "make it smaller and send it again", "kleiner machen und noch einmal senden";
    /// Where something is refused: what was said into a phone.
    pub the_recording = "the recording", "die Aufnahme";
    /// Refused: what came as a recording is something else.
    pub no_recording = "it is no recording that is known here", "das ist keine Aufnahme, die hier bekannt ist";
    /// Refused: a recording says that it is of one sort, and is of another.
    pub other_sort(said, is) = "it says {said} and is {is}", "es heißt {said} und ist {is}";
    /// How it is mended.
    pub record_it_again = "say it again; WebM, Ogg, MP4 and WAV with sound alone are taken", "noch einmal sprechen; angenommen werden WebM, Ogg, MP4 und WAV, nur mit Ton";
    /// How it is mended.
    pub say_it_shorter = "say it in half a minute", "in einer halben Minute sagen";
    /// Where something is refused: a word of the shop's own.
    pub own_word = "the shop's own word", "die eigene Bezeichnung der Werkstatt";
    /// How it is mended.
    pub say_what_trade_calls_it = "say what the trade calls it, such as brake pads; a word of the safety class keeps its meaning", "die Fachbezeichnung nennen, etwa Bremsbeläge; Wörter der Sicherheitsklasse behalten ihre Bedeutung";

    /// A snag that is not settled, on the sheet of how a job was done.
    pub still_open = "still open", "noch offen";
    /// A snag on the sheet of how a job was done: what, in words, and how it ended.
    pub snag_and_end(what, words, end) = "{what}{words}: {end}", "{what}{words}: {end}";
    /// Why there is no sheet of how a job was done.
    pub nothing_was_moved(number) = "nothing was moved in order {number}", "in Auftrag {number} wurde nichts bewegt";
    /// How it is mended that there is no sheet.
    pub made_of_what_came_off = "a sheet is made of what came off and went back", "das Blatt entsteht aus dem, was abging und wieder dran kam";
    /// At which positions, on the sheet of how a job was done.
    pub at_positions(at) = "at {at}", "an {at}";
    /// A torque that nobody stands for.
    pub no_source_told = "no source told", "keine Quelle genannt";
}
