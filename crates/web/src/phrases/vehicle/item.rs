//! What is said of one thing of a vehicle.

use phrases::phrases;

phrases! {
    /// Refusal.
    pub no_such_item = "there is no such item on this order", "dieses Teil gibt es in diesem Auftrag nicht";
    /// Title and heading: a thing was moved before anybody said what it is.
    pub what_is_it = "What is it?", "Was ist es?";
    /// Beside a thing on which safety depends.
    pub safety = "safety", "Sicherheit";
    /// The large press of a thing's page.
    pub something_wrong_with_it = "Something is wrong with it", "Damit stimmt etwas nicht";
    /// Small words on that press.
    pub snapped_stripped_torn_worn = "snapped, stripped, torn, worn", "abgerissen, ausgerissen, gerissen, verschlissen";
    /// Small words on that press, of coolant.
    pub leaking_wrong_colour_rust = "leaking, wrong colour, rust", "undicht, falsche Farbe, Rost";
    /// Folded: the state of coolant is told.
    pub say_where_it_stands = "Say where it stands", "Angeben, wie es steht";
    /// Folded: a photo of the thing.
    pub photo_of_it = "Photo of it", "Foto davon";
    /// Field.
    pub photo = "Photo", "Foto";
    /// Field of a photo.
    pub what_it_shows = "What it shows", "Was zu sehen ist";
    /// Press.
    pub keep_the_photo = "Keep the photo", "Foto speichern";
    /// Field: the name of a thing.
    pub call_it = "Call it", "Bezeichnung";
    /// Hint of that field.
    pub such_as_tray_screws = "such as tray screws", "z. B. Schrauben der Verkleidung";
    /// Field.
    pub how_many_pieces = "How many pieces", "Wie viele Stück";
    /// Field: the size of a bolt.
    pub size = "Size", "Größe";
    /// Hint of that field.
    pub such_as_m6 = "such as M6x16", "z. B. M6x16";
    /// Choice: the sort of a thing.
    pub what_it_is = "What it is", "Was es ist";
    /// Choice: the system of a thing.
    pub belongs_to = "Belongs to", "Gehört zu";
    /// Choice: from where a thing is worked on, such as above or below.
    pub worked_on = "Worked on", "Gearbeitet wird";
    /// Press under those.
    pub it_is_that = "It is that", "Das ist es";
    /// Press: the pieces that somebody did not reach are done too; what was being done.
    pub the_rest_too(doing) = "The rest too: {doing}", "Den Rest auch: {doing}";
    /// Heading, where people say different things of one.
    pub look_and_say_which = "Look, and say which", "Nachsehen und angeben, was stimmt";
    /// Heading over the presses for the state of a thing.
    pub it_is_now = "It is now", "Es ist jetzt";
    /// Choice under that.
    pub the_piece_is = "The piece is", "Das Stück ist";
    /// The first of those.
    pub piece_the_same = "the same", "dasselbe";
    /// The second of those.
    pub piece_new = "new", "neu";
    /// The third of those.
    pub piece_another_kind = "another kind", "ein anderes";
    /// Field: the tray that it lies in.
    pub lies_in = "Lies in", "Liegt in";
    /// Folded: the engine is to run without a belt.
    pub start_with_it_off = "Start the engine with it off", "Motor ohne ihn starten";
    /// Caution under that.
    pub nothing_it_drives_turns = "Nothing it drives then turns: no charging, perhaps no coolant pump. Only as long as the maker allows.",
        "Was er antreibt, steht dann: keine Ladung, vielleicht keine Kühlmittelpumpe. Nur so lange, wie der Hersteller es erlaubt.";
    /// Field under that.
    pub what_for = "What for", "Wozu";
    /// Hint of that field.
    pub such_as_to_hear = "such as: to hear whether the noise stays", "z. B.: um zu hören, ob das Geräusch bleibt";
    /// Press under that.
    pub start_without_is_planned = "A start without it is planned", "Ein Start ohne ihn ist geplant";
    /// Field: litres.
    pub amount = "Amount", "Menge";
    /// Field.
    pub what_was_poured = "What was poured", "Was eingefüllt wurde";
    /// Hint of the field for a level.
    pub such_as_4_mm_above = "as you see it, such as 4 mm above min", "wie zu sehen, z. B. 4 mm über Min";
    /// Small words on the press that the level is right, seen cold.
    pub after_heating_and_cooling = "after heating and cooling", "nach Erwärmen und Abkühlen";
    /// Press: the level is low, seen warm.
    pub low_warm = "Low, warm", "Zu wenig, warm";
    /// Press: the level is low, seen cold.
    pub low_cold = "Low, cold", "Zu wenig, kalt";
    /// Heading of the page on which a snag is noted.
    pub something_is_wrong = "Something is wrong", "Etwas stimmt nicht";
    /// Behind an open snag.
    pub put_it_right = "Put it right", "Beheben";

    /// Folded: the system and the zone of a thing.
    pub belongs_to_worked_on = "Belongs to, worked on", "Gehört zu, gearbeitet wird";
    /// Folded: the name of a thing and how many there are.
    pub called_counted = "Called, counted", "Bezeichnung, Anzahl";
    /// Press under that.
    pub call_it_that = "Call it that", "So nennen";
    /// Field under that.
    pub how_many_there_are = "How many there are", "Wie viele es sind";
    /// Press under that.
    pub counted_again = "Counted again", "Neu gezählt";
    /// Over presses, where two people told different torques.
    pub two_torques = "Two torques were told. Which one holds?", "Zwei Drehmomente sind genannt. Welches gilt?";
    /// Over presses, where two people told different sizes.
    pub two_sizes = "Two sizes were told. Which one is it?", "Zwei Größen sind genannt. Welche ist es?";
    /// Over presses, where two people told different systems.
    pub two_systems = "Told to belong to two systems; both count until one is chosen",
        "Zwei Systemen zugeordnet; beide zählen, bis eines gewählt ist";
    /// Where several people counted differently; the counts stand with the next between them.
    pub counted_apart(counts) = "Counted apart: {counts}. All of them count until somebody counts again.",
        "Verschieden gezählt: {counts}. Alles davon gilt, bis jemand neu zählt.";
    /// Between counts.
    pub and_between = " and ", " und ";
    /// Folded.
    pub size_and_torque = "Size and torque", "Größe und Drehmoment";
    /// Under that.
    pub no_torque_told = "no torque told", "kein Drehmoment genannt";
    /// Between a torque and whoever says so.
    pub by_source = ", by ", ", laut ";
    /// Hint of the field for a size.
    pub such_as_m8_88 = "such as M8x30 8.8", "z. B. M8x30 8.8";
    /// Press under that.
    pub it_is_that_size = "It is that size", "Das ist die Größe";
    /// Field.
    pub torque = "Torque", "Drehmoment";
    /// Hint of that field, with an example in the shop's unit.
    pub the_makers_such_as(example) = "the maker's, such as {example}", "das des Herstellers, z. B. {example}";
    /// Field: a second torque or an angle after the first.
    pub second_pass = "Second pass", "Zweiter Durchgang";
    /// Hint of that field.
    pub if_there_is_one = "if there is one, such as 90 deg", "falls es einen gibt, z. B. 90°";
    /// Field.
    pub third_pass = "Third pass", "Dritter Durchgang";
    /// Field: who gives the torque.
    pub who_says_so = "Who says so", "Wer es sagt";
    /// Press under that.
    pub that_is_its_torque = "That is its torque", "Das ist das Drehmoment";
    /// What a field takes, said by the browser where it does not fit.
    pub number_with_its_unit = "A number with its unit, such as 30 Nm or 90 deg", "Eine Zahl mit Einheit, z. B. 30 Nm oder 90°";

    /// Under the size of a bolt.
    pub no_torque_no_specification = "No torque is known: what it could carry is not a specification",
        "Kein Drehmoment bekannt: was sie aushalten könnte, ist keine Vorgabe";
    /// Before the torque of a group.
    pub torque_is = "Torque ", "Drehmoment ";
    /// Folded, on the shop's page.
    pub what_counts_for_ways = "What counts when ways to mend a thread are ranked",
        "Was zählt, wenn Wege zur Gewindereparatur geordnet werden";
    /// Under that.
    pub how_ways_are_ranked = "A way that does not hold never stands above one that does. Among those that hold these count, each against the sum of all.",
        "Ein Weg, der nicht hält, steht nie über einem, der hält. Unter denen, die halten, zählt dies, jedes im Verhältnis zur Summe von allen.";
    /// Field: a weight.
    pub far_from_stripping = "Far from stripping", "Weit vom Ausreißen";
    /// Field: a weight.
    pub soon_done = "Soon done", "Schnell gemacht";
    /// Field: a weight.
    pub cheap = "Cheap", "Günstig";
    /// Field: a weight.
    pub much_stays_as_it_was = "Much stays as it was", "Vieles bleibt, wie es war";
    /// Hint of that field.
    pub left_for_the_next_repair = "and is left for the next repair", "und bleibt für die nächste Reparatur";
    /// Press under the weights.
    pub count_them_so = "Count them so", "So zählen";
}
