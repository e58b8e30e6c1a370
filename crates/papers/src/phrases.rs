//! The texts of papers for the stall, and why a paper is refused or what it lacks, in the language
//! that is spoken: that of the screen, or the one that was asked for. What a customer reads stands
//! in `wording`.

use phrases::phrases;

phrases! {
    /// Title of the sheet with the plan's stages to tick.
    pub work_sheet = "Work sheet", "Arbeitsblatt";
    /// Foot of the work sheet.
    pub work_sheet_foot = "Tick the box when it is so. This sheet is a copy: what is told to the record counts.",
        "Ankreuzen, wenn es so ist. Das Blatt ist eine Kopie: Es zählt, was im Auftrag steht.";
    /// Heading: what the customer told.
    pub complaint = "Complaint", "Beanstandung";
    /// Heading: what was found, and so what is to be done.
    pub cause_to_do = "Cause, to do", "Ursache, zu tun";
    /// Heading: what is different on this vehicle.
    pub of_this_vehicle = "Of this vehicle", "Zu diesem Fahrzeug";
    /// Heading of cautions.
    pub caution = "Caution", "Vorsicht";
    /// Heading of the table of stages.
    pub stages = "Stages", "Schritte";
    /// Head of a column, read downward.
    pub down_as_it_comes_off = "Down this side as it comes off", "Ausbau, von oben nach unten";
    /// Head of a column of boxes.
    pub off = "off", "ab";
    /// Head of a column of boxes.
    pub back = "back", "dran";
    /// Head of a column, read upward.
    pub up_as_it_goes_back = "Up this side as it goes back", "Einbau, von unten nach oben";
    /// A thing that is renewed as it goes back.
    pub new_one(name) = "new {name}", "neu: {name}";
    /// Between the passes of a torque.
    pub then = ", then ", ", dann ";
    /// Heading: who says the torques.
    pub torque_by = "Torque by", "Drehmomente laut";
    /// Heading: how much came out and went in.
    pub litres = "Litres", "Liter";
    /// Before a blank: how much of a fluid came out.
    pub fluid_out(fluid) = "{fluid}: out", "{fluid}: heraus";
    /// Before a blank: how much went in.
    pub fluid_in = "in", "hinein";
    /// Under litres, where no fluid is drained.
    pub nothing_drained = "Nothing is drained.", "Nichts wird abgelassen.";
    /// Heading of boxes: what is renewed.
    pub new_parts = "New parts", "Neuteile";
    /// Heading of boxes: work that is done before the vehicle leaves.
    pub before_it_leaves = "To do before it leaves", "Vor der Abholung";
    /// Heading of boxes: what was put in and must come out.
    pub inside_now = "Inside now?", "Noch drin?";
    /// Before a blank: what may be inside.
    pub clamps_plugs_rags_lamp = "Clamps, plugs, rags, lamp:", "Klemmen, Stopfen, Lappen, Lampe:";
    /// Heading of blank lines.
    pub snags_and_more = "Snags, and what was not on the list", "Probleme, und was nicht auf der Liste stand";
    /// Title of the sheet that tells how a job was done.
    pub how_it_was_done = "How it was done", "Wie es gemacht wurde";
    /// Its number.
    pub order_number(number) = "order {number}", "Auftrag {number}";
    /// Its foot.
    pub how_to_foot = "So it was done on this vehicle. What the maker publishes comes before what stands here.",
        "So wurde es an diesem Fahrzeug gemacht. Was der Hersteller veröffentlicht, geht vor.";
    /// Heading: what the job is called.
    pub job = "Job", "Arbeit";
    /// Heading: what people wrote about the job.
    pub notes = "Notes", "Notizen";
    /// Below a stage: what people wrote beside it.
    pub note_beside(notes) = "Note: {notes}", "Notiz: {notes}";
    /// Heading: what was found.
    pub cause = "Cause", "Ursache";
    /// Heading: what was done.
    pub correction = "Correction", "Abhilfe";
    /// Heading of stages.
    pub comes_off = "Comes off", "Ausbau";
    /// Heading of stages.
    pub goes_back = "Goes back", "Einbau";
    /// Heading of a list.
    pub work_done_after = "Work done after it", "Danach erledigt";
    /// Heading of a list.
    pub what_went_wrong = "What went wrong", "Was schiefging";
    /// Heading: pictures that were taken.
    pub photos = "Photos", "Fotos";
    /// How many, and where they are looked at.
    pub photos_with_the_order(n) = ["{n} more with the order, on its page “How it was done”.", "{n} more with the order, on its page “How it was done”."],
        ["{n} weiteres beim Auftrag, auf der Seite „Wie es gemacht wurde“.", "{n} weitere beim Auftrag, auf der Seite „Wie es gemacht wurde“."];
    /// What a screen reader reads of a photo of which nothing was said.
    pub photo = "Photo", "Foto";
    /// Head of a column: the things.
    pub what = "What", "Was";
    /// Head of a column: where one stood, and what one held.
    pub where_with_what = "Where, with what", "Wo, womit";
    /// Head of a column: minutes.
    pub min = "min", "Min.";
    /// After what was done to a thing: it was renewed.
    pub renewed = ", new", ", neu";
    /// Lengths of bolts by position.
    pub lengths(each) = " (lengths {each})", " (Längen {each})";
    /// Title of the sheet of labels for trays.
    pub tray_labels = "Tray labels", "Etiketten für Schalen";
    /// Above the labels, beside the line that shows whether the printer kept the size.
    pub check_line(number) = "Tray labels, order {number}. Print at 100 %: this line is 50 mm",
        "Etiketten für Schalen, Auftrag {number}. Mit 100 % drucken: Diese Linie ist 50 mm lang";
    /// What a screen reader reads of a label.
    pub tray(name) = "Tray {name}", "Schale {name}";
    /// On a label, where a tray has several.
    pub label_of(nth, total) = "label {nth} of {total}", "Etikett {nth} von {total}";
    /// The positions of bolts of one length.
    pub at_positions(positions) = " at {positions}", " an {positions}";
    /// At the foot of a page.
    pub page_of(nth, total) = "Page {nth} of {total}", "Seite {nth} von {total}";
    /// What a screen reader reads of a drawing.
    pub a_bolt = "a bolt", "eine Schraube";
    /// The same, longer.
    pub at_true_length = "Drawn at its true length.", "In wahrer Länge gezeichnet.";
    /// What a screen reader reads of a code.
    pub code_to_scan(link) = "A code to scan: {link}", "Ein Code zum Scannen: {link}";
    /// The same, shorter.
    pub a_code = "A code to scan", "Ein Code zum Scannen";

    /// Where something is refused: a paper.
    pub the_paper = "the paper", "das Papier";
    /// Refused: who asks is shown no prices.
    pub shows_prices = "it shows prices, and you are shown none", "darauf stehen Preise, und die sind hier nicht zu sehen";
    /// How it is mended.
    pub ask_at_the_desk = "ask somebody at the desk", "im Büro fragen";
    /// Refused: there is no plan.
    pub no_plan = "there is no plan to print", "es gibt keinen Plan zum Drucken";
    /// How it is mended; the number of the order.
    pub pick_what_to_get_at(number) = "pick what to get at first, on the plan's page of order {number}",
        "zuerst auf der Planseite von Auftrag {number} auswählen, wo man ran muss";
    /// How it is mended that a paper could not be written as a file.
    pub print_from_the_browser = "print the page from the browser, and tell who looks after the program",
        "die Seite im Browser drucken, und Bescheid sagen, wer das Programm betreut";
    /// Refused: letters that no font has.
    pub letters_not_printed = "these letters cannot be printed: the fonts have none of them, or they run from right to left",
        "diese Zeichen lassen sich nicht drucken: sie fehlen in den Schriften oder laufen von rechts nach links";
    /// How it is mended.
    pub write_other_letters = "write these words in Latin, Greek or Cyrillic letters, or print the page from the browser",
        "diese Wörter in lateinischen, griechischen oder kyrillischen Buchstaben schreiben oder die Seite im Browser drucken";
    /// Such letters, and the text in which they stand.
    pub letters_in(letters, text) = "{letters}, in \u{201c}{text}\u{201d}", "{letters}, in \u{201e}{text}\u{201c}";
    /// Refused: no invoice is written.
    pub no_invoice = "no invoice is written for this payer", "für diesen Zahler ist keine Rechnung geschrieben";
    /// How it is mended; the number of the order.
    pub write_an_invoice(number) = "write one on the desk of order {number}", "eine im Büro von Auftrag {number} schreiben";
    /// Refused: no credit note is written.
    pub no_credit_note = "no credit note is written for this payer",
        "für diesen Zahler ist keine Rechnungskorrektur geschrieben";
    /// How it is mended; the number of the order.
    pub write_a_credit_note(number) = "write one at /o/{number}/credit first", "zuerst unter /o/{number}/credit eine schreiben";
    /// Refused: nobody is named who gives a paper out.
    pub nobody_gives_it = "nobody is named who gives it", "es ist niemand genannt, der es ausgibt";
    /// How it is mended.
    pub pick_who_you_are = "pick who you are at /who", "unter /who den eigenen Namen wählen";
    /// Refused: a paper was kept and is not there.
    pub not_found_again = "it was not found again after it was kept", "nach dem Speichern war es nicht wiederzufinden";
    /// How it is mended.
    pub check_the_record = "check the record with `buttonup verify`", "die Aufzeichnung mit `buttonup verify` prüfen";

    /// Where something is refused: an e-invoice.
    pub the_e_invoice = "the e-invoice", "die E-Rechnung";
    /// Refused: what is missing follows.
    pub something_missing = "something is missing for it", "dafür fehlt etwas";
    /// How it is mended.
    pub tell_and_ask_again = "tell it, and ask again; the paper itself prints without it",
        "angeben und noch einmal verlangen; das Papier selbst druckt ohne sie";
    /// Refused: a paper that has no e-invoice; its code.
    pub no_e_invoice_of(paper) = "there is no e-invoice of the paper {paper}", "für das Papier {paper} gibt es keine E-Rechnung";
    /// How it is mended.
    pub ask_for_those = "ask for the invoice or the credit note", "die Rechnung oder die Rechnungskorrektur verlangen";
    /// What an e-invoice lacks: an invoice.
    pub invoice_with_a_number = "an invoice that is written and has a number", "eine geschriebene Rechnung mit Nummer";
    /// What an e-invoice lacks: somebody else than the customer pays.
    pub payer_with_address = "a payer whose address is known: only the customer\u{2019}s is",
        "ein Zahler mit bekannter Adresse: bekannt ist nur die des Kunden";
    /// What an e-invoice lacks: terms.
    pub when_to_pay = "when to pay: at the end of an invoice, on your papers",
        "wann zu zahlen ist: am Ende einer Rechnung, auf den Papieren";
    /// What an e-invoice lacks: an entry without a tax; what the entry is called.
    pub a_tax_on(label) = "a tax on \u{201c}{label}\u{201d}: an e-invoice has to say why there is none",
        "eine Steuer auf \u{201e}{label}\u{201c}: eine E-Rechnung muss sagen, warum es keine gibt";
    /// What an e-invoice lacks: an entry with several taxes; what the entry is called.
    pub one_tax_on(label) = "one tax on \u{201c}{label}\u{201d}: an e-invoice has no room for more than one on a line",
        "nur eine Steuer auf \u{201e}{label}\u{201c}: mehr hat in einer Zeile einer E-Rechnung keinen Platz";
    /// What an e-invoice lacks: an entry that is taken back without its tax; what the entry is called.
    pub the_tax_on(label) = "the tax on \u{201c}{label}\u{201d}: an e-invoice can\u{2019}t take a line back and keep its tax",
        "die Steuer auf \u{201e}{label}\u{201c}: eine E-Rechnung kann keine Zeile zurücknehmen und ihre Steuer behalten";
    /// What an e-invoice lacks: sums that fit.
    pub sums_that_fit = "sums of the lines that come to the total: they differ by coins",
        "Summen der Zeilen, die den Gesamtbetrag ergeben: sie weichen um Cent ab";
    /// What an e-invoice lacks: a tax of nought; its name.
    pub a_rate_above_nought(name) = "a rate above nought for {name}: an e-invoice has to say why there is no tax",
        "ein Satz über null bei {name}: eine E-Rechnung muss sagen, warum es keine Steuer gibt";
    /// What an e-invoice lacks: a country; what was written.
    pub a_country(country) = "a country of two letters: there is none called {country}",
        "ein Land aus zwei Buchstaben: {country} gibt es nicht";
    /// What an e-invoice lacks: something it can hold; what, is one of those that follow.
    pub as_it_can_hold(what) = "{what}, as an e-invoice can hold them", "{what}, passend für eine E-Rechnung";
    /// What an e-invoice cannot hold.
    pub the_taxes = "the taxes", "die Steuern";
    /// What an e-invoice cannot hold.
    pub the_sums = "the sums", "die Summen";
    /// What an e-invoice cannot hold: one sum.
    pub the_sum(sum) = "the sum {sum}", "die Summe {sum}";
    /// What an e-invoice cannot hold: the day on which an invoice was written.
    pub its_day = "its day", "der Tag";
    /// What an e-invoice cannot hold: how many of an entry.
    pub how_many = "how many", "die Menge";
    /// What the rules of e-invoices refuse: the rule, what it says, and details.
    pub rule_refuses(rule, message, detail) = "rule {rule} of EN 16931: {message}{detail}",
        "Regel {rule} der EN 16931: {message}{detail}";
    /// Such a detail.
    pub expected_and_found(expected, found) = " ({expected} expected, {found} found)",
        " (erwartet {expected}, gefunden {found})";

    /// What a paper lacks.
    pub shops_name = "the shop\u{2019}s name", "Name der Werkstatt";
    /// What a paper lacks.
    pub shops_address = "the shop\u{2019}s address", "Adresse der Werkstatt";
    /// What a paper lacks.
    pub shops_telephone = "the shop\u{2019}s telephone", "Telefon der Werkstatt";
    /// What a paper lacks.
    pub shops_street = "the shop\u{2019}s street and house", "Straße und Hausnummer der Werkstatt";
    /// What a paper lacks.
    pub shops_postcode = "the shop\u{2019}s postcode", "Postleitzahl der Werkstatt";
    /// What a paper lacks.
    pub shops_town = "the shop\u{2019}s town", "Ort der Werkstatt";
    /// What a paper lacks.
    pub shops_country = "the shop\u{2019}s country", "Land der Werkstatt";
    /// What a paper lacks.
    pub shops_tax_number = "the shop\u{2019}s tax number", "Steuernummer der Werkstatt";
    /// What a paper lacks.
    pub customers_name = "the customer\u{2019}s name", "Name des Kunden";
    /// What a paper lacks.
    pub customers_address = "the customer\u{2019}s address", "Adresse des Kunden";
    /// What a paper lacks.
    pub customers_telephone = "the customer\u{2019}s telephone", "Telefon des Kunden";
    /// What a paper lacks.
    pub customers_street = "the customer\u{2019}s street and house", "Straße und Hausnummer des Kunden";
    /// What a paper lacks.
    pub customers_postcode = "the customer\u{2019}s postcode", "Postleitzahl des Kunden";
    /// What a paper lacks.
    pub customers_town = "the customer\u{2019}s town", "Ort des Kunden";
    /// What a paper lacks.
    pub customers_country = "the customer\u{2019}s country", "Land des Kunden";
    /// What a paper lacks.
    pub the_plate = "the plate", "Kennzeichen";
    /// What a paper lacks.
    pub the_odometer = "the odometer", "Kilometerstand";
    /// What a paper lacks: what the customer told.
    pub the_complaint = "the complaint", "Beanstandung";
    /// What a paper lacks.
    pub a_price = "a price", "Preis";
    /// What a paper lacks: the day for which the vehicle is promised.
    pub when_ready = "when it is ready", "wann es fertig ist";
}
