//! The papers, on the screen and to print.

use phrases::phrases;

phrases! {
    /// Heading over papers that somebody has.
    pub papers_given_out = "Papers given out", "Ausgegebene Papiere";
    /// Heading over papers that can be printed.
    pub papers_to_print = "Papers to print", "Papiere zum Drucken";
    /// A paper: what it will cost.
    pub estimate = "Estimate", "Kosten\u{ad}voranschlag";
    /// Beside it.
    pub to_sign = "to sign", "zum Unterschreiben";
    /// A paper: more than was agreed.
    pub added_work = "Added work", "Mehrarbeit";
    /// Beside it.
    pub what_it_comes_to = "what it comes to now", "was es jetzt kostet";
    /// A paper: what is charged.
    pub invoice = "Invoice", "Rechnung";
    /// What the paper for more work is called in full.
    pub request_for_added_work = "Request for added work", "Anfrage zur Mehrarbeit";
    /// A paper: what was paid.
    pub receipt = "Receipt", "Quittung";
    /// A paper: what is to do, for who works on it.
    pub work_sheet = "Work sheet", "Arbeitsblatt";
    /// Labels of trays, to print.
    pub labels = "Labels", "Etiketten";
    /// What the labels are called in full.
    pub tray_labels = "Tray labels", "Etiketten für Schalen";
    /// A paper, and the way to its page: how it was taken apart and put together.
    pub how_it_was_done = "How it was done", "Wie es gemacht wurde";
    /// Where trouble is: with the labels.
    pub the_labels = "the labels", "die Etiketten";
    /// No sheet is called so; the name comes in quotation marks.
    pub no_sheet_called(name) = "there is no sheet of labels called {name}",
        "kein Etikettenbogen heißt {name}";
    /// How to mend it.
    pub choose_one_of(names) = "choose one of these: {names}", "einen von diesen wählen: {names}";
    /// A sheet has no such label; what was typed comes in quotation marks.
    pub no_label_of_sheet(name) = "{name} is no label of the sheet",
        "{name} ist kein Etikett des Bogens";
    /// How to mend it.
    pub name_first_left(most) = "name the first that is left, from 1 to {most}",
        "das erste nennen, das übrig ist, von 1 bis {most}";
    /// Over an invoice that is none yet.
    pub not_written_yet = "Not written yet: this is how it would read now.",
        "Noch nicht geschrieben: so würde sie jetzt lauten.";
    /// Press: print the page.
    pub print = "Print", "Drucken";
    /// Over what the rules want on a paper.
    pub missing_on_paper = "Missing on this paper", "Auf diesem Papier fehlt";
    /// Which rule wants it, before the note that it is no advice.
    pub rule_as_of(rule, day) = "{rule}, as of {day}. ", "{rule}, Stand {day}. ";
    /// Over what an e-invoice lacks.
    pub prints_without_e_invoice = "It prints without an e-invoice. For one there is missing:",
        "Gedruckt wird ohne E-Rechnung. Für eine fehlt:";
    /// The way to the same paper in another language.
    pub same_in_english = "The same in English", "Dasselbe auf Englisch";
    /// The way to the same paper in another language.
    pub same_in_german = "The same in German", "Dasselbe auf Deutsch";
    /// Label: who has the paper.
    pub given_to = "Given to, and how", "An wen gegeben, und wie";
    /// Its hint.
    pub kept_as_now = "it is kept as it is now, to be found again",
        "wird so gespeichert, wie es jetzt ist";
    /// Press: the paper as a file.
    pub paper = "Paper", "Papier";
    /// Press: the paper is kept as it was given.
    pub save_as_given_out = "Save as given out", "Als ausgegeben speichern";
    /// The way to the e-invoice as a file.
    pub e_invoice_alone = "The e-invoice by itself", "Die E-Rechnung für sich";
    /// Beside it.
    pub xml_in_pdf = "XML; it is in the PDF, too", "XML; sie ist auch im PDF";
    /// Choice: no sheet of labels.
    pub plain_paper = "plain paper, to cut", "normales Papier, zum Schneiden";
    /// Legend over the sheets of labels.
    pub printed_on = "Printed on", "Gedruckt auf";
    /// Label: the first label that is left on the sheet.
    pub from_label = "From label", "Ab Etikett";
    /// Its hint.
    pub first_left = "the first that is left on a begun sheet, row by row",
        "das erste, das auf einem angefangenen Bogen übrig ist, Reihe für Reihe";
    /// No paper is called so; the name comes in quotation marks.
    pub no_paper_called(name) = "there is no paper called {name}", "kein Papier heißt {name}";
}
