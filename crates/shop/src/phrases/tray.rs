//! Fasteners counted on a photo of the tray.

use phrases::phrases;

phrases! {
    /// What is not counted, and why.
    pub and_why(what, why) = "{what}: {why}", "{what}: {why}";
    /// Why something is not counted.
    pub only_bolts = "only bolts and screws are counted against a list", "gegen eine Liste werden nur Schrauben gezählt";
    /// Why something is not counted.
    pub size_not_known = "its size is not known", "Größe nicht bekannt";
    /// Why something is not counted.
    pub size_not_read = "its size can't be read", "Größe nicht lesbar";
    /// Why something is not counted.
    pub pipe_thread = "it is a pipe thread", "es ist ein Rohrgewinde";
    /// Why something is not counted.
    pub lengths_not_known = "its lengths are not known", "Längen nicht bekannt";
    /// Why something is not counted.
    pub sheet_can_not_measure = "the sheet can't measure it", "mit dem Bogen nicht messbar";
    /// The line on the sheet that is measured after printing.
    pub the_check_line = "the check line", "die Prüflinie";
    /// Refused: what the check line measures.
    pub no_check_line(line) = "{line} mm is no 100 mm line", "{line} mm sind keine 100-mm-Linie";
    /// How it is mended.
    pub measure_again = "measure it again: between 80 and 120 mm can be taken into account", "noch einmal messen: zwischen 80 und 120 mm lässt sich ausgleichen";
    /// Something that is not counted.
    pub not_counted(what) = "not counted: {what}", "nicht gezählt: {what}";
    /// Where something is wrong: the photo.
    pub the_photo = "the photo", "das Foto";
    /// How a photo is mended, where nothing else is known.
    pub send_another = "send another", "ein anderes senden";
    /// What the count comes to: the photo does not tell.
    pub can_not_tell = "Can't tell from this picture", "Auf diesem Bild nicht zu erkennen";
    /// What the count comes to, where no list was held against it.
    pub pieces_on_the_sheet(n) = ["{n} pieces on the sheet", "{n} pieces on the sheet"], ["{n} Teil auf dem Bogen", "{n} Teile auf dem Bogen"];
    /// What the count comes to: nothing is missing.
    pub all_there(n) = "All {n} there", "Alle {n} da";
    /// What the count comes to: some are not as they should be.
    pub as_they_should_be(right, all) = "{right} of {all} as they should be", "{right} von {all} wie erwartet";
    /// Pieces that are missing: how many, and which.
    pub missing(count, piece) = "{count} of {piece} missing", "{count} × {piece} fehlt";
    /// Pieces that should not be there: how many, and which.
    pub too_many(count, piece) = "{count} of {piece} too many", "{count} × {piece} zu viel";
    /// Pieces that lie in place of others: how many, which, and what should be there.
    pub in_place_of(count, found, listed) = "{count} of {found} in place of {listed}", "{count} × {found} statt {listed}";
}
