//! Taking in; customers and vehicles that are known.

use phrases::phrases;

phrases! {
    /// Beside a vehicle of this customer: pick it.
    pub it_is_this_one = "it is this one", "dieses ist es";
    /// The way out of a customer that was picked.
    pub somebody_else = "Somebody else", "Jemand anderes";
    /// Heading over a vehicle that is not known.
    pub another_of_theirs = "Another vehicle of theirs", "Ein weiteres Fahrzeug des Kunden";
    /// Press: the order is opened.
    pub check_it_in = "Check it in", "Annehmen";
    /// Beside the address.
    pub for_papers_can_wait = "for the papers, can wait", "für die Papiere, kann warten";
    /// Heading over what may be meant.
    pub known_here = "Known here", "Hier bekannt";
    /// The vehicle has an order that is open.
    pub here_already(number) = "It is here already: order {number}",
        "Es ist schon hier: Auftrag {number}";
    /// What unfolds the fields of a new owner.
    pub belongs_to_another = "It belongs to somebody else now", "Gehört jetzt jemand anderem";
    /// The way out of a vehicle that was picked.
    pub another_vehicle = "Another vehicle", "Anderes Fahrzeug";
    /// When to choose goodwill.
    pub comeback_is_goodwill = "A comeback that is our doing is goodwill.",
        "Kommt es unseretwegen zurück, ist es Kulanz.";
    /// When a vehicle was here last.
    pub last_here(day) = " · last here {day}", " · zuletzt hier {day}";
    /// Beside a vehicle that is here: its order.
    pub here_order(number) = "here: {number}", "hier: {number}";
    /// How many vehicles a customer has.
    pub vehicles_count(n) = ["{n} vehicle", "{n} vehicles"], ["{n} Fahrzeug", "{n} Fahrzeuge"];
    /// Hint of the identification number.
    pub seventeen_characters = "17 characters, or leave empty", "17 Zeichen, oder leer lassen";
    /// Hint of the complaint.
    pub in_customers_words = "in the customer's words", "in den Worten des Kunden";
    /// What the odometer read on the visit before.
    pub last_time(reading) = "Last time: {reading}", "Letztes Mal: {reading}";
    /// Choice: the keys are here.
    pub keys_taken = "taken", "ange\u{ad}nommen";
    /// Choice: the keys are not here.
    pub keys_not_here = "not here", "nicht hier";
    /// The identification number is one.
    pub valid = "Valid", "Gültig";
    /// Behind it: what it says of the year.
    pub model_year(year) = ", model year {year}", ", Modelljahr {year}";
    /// Behind it, where that year cannot be right.
    pub doubtful = ", which is doubtful: read it again",
        ", das ist zweifelhaft: noch einmal ablesen";
    /// The identification number is none.
    pub not_valid = "Not valid as typed", "So nicht gültig";
    /// Before numbers that may be meant.
    pub one_of_these = "Is it one of these?", "Ist es eine von diesen?";
    /// What happens to a number that is none.
    pub kept_as_typed = "It is kept as typed if you go on.",
        "Wer so weitermacht, speichert sie wie getippt.";
    /// Legend over jobs with one price, on taking in.
    pub agreed_here_and_now = "Agreed here and now", "Gleich hier vereinbart";
    /// Choice: none of these jobs.
    pub no_price_yet_choice = "No price yet", "Noch kein Preis";

    /// Heading of a customer with no name.
    pub a_customer = "A customer", "Ein Kunde";
    /// Heading over the telephone and the address.
    pub how_to_reach = "How to reach them", "Kontakt";
    /// Where no vehicle is known.
    pub none_known = "None is known.", "Keines bekannt.";
    /// The way to taking in another vehicle of a customer.
    pub check_in_one_of_theirs = "Check in a vehicle of theirs", "Ein Fahrzeug des Kunden annehmen";
    /// Heading over a customer's orders.
    pub orders = "Orders", "Aufträge";
    /// Where there are none.
    pub none_yet = "None yet.", "Noch keine.";
    /// The way to all of a customer's orders.
    pub all_of_them = "All of them", "Alle";
    /// What unfolds somebody who may be the same.
    pub same_customer_question = "Is this the same customer?", "Ist das derselbe Kunde?";
    /// What comes of it.
    pub customers_shown_together =
        "The orders and vehicles of both are shown together from then on. It can be taken apart again.",
        "Aufträge und Fahrzeuge beider stehen dann zusammen. Es lässt sich wieder trennen.";
    /// Press: they are one.
    pub same_customer = "The same customer", "Derselbe Kunde";
    /// By what a customer is looked for.
    pub name_telephone = "Name, telephone", "Name, Telefon";
    /// Label of that search.
    pub look_for_it = "Look for it", "Danach suchen";
    /// Press of that search.
    pub look = "Look", "Suchen";
    /// The customer is to be erased.
    pub to_be_erased = "To be erased: see the record", "Wird gelöscht: siehe Aufzeichnung";
    /// What unfolds the erasure.
    pub erase_this_customer = "Erase this customer", "Diesen Kunden löschen";
    /// What it does.
    pub erase_does =
        "Name, telephone, addresses, plates, identification numbers and signatures are deleted for good, here and in every copy that is put back. Sums and dates stay. It waits a day, in which it can be called off, and as long as the shop has to keep its records.",
        "Name, Telefon, Adressen, Kennzeichen, Fahrzeug-Identi\u{ad}fizierungs\u{ad}nummern und Unterschriften werden endgültig gelöscht, hier und in jeder Kopie, die zurückgespielt wird. Beträge und Daten bleiben. Bis dahin vergeht ein Tag, an dem sich das noch absagen lässt, und so lange, wie die Werkstatt ihre Unterlagen aufbewahren muss.";
    /// To tick: more than that.
    pub every_word_too = "Every word, photo and recording on their orders as well",
        "Auch jedes Wort, jedes Foto und jede Aufnahme in den Aufträgen";
    /// Hint of the reason.
    pub erase_hint = "such as: asked by letter", "etwa: per Brief verlangt";
    /// Press: it is to be erased.
    pub erase = "Erase", "Löschen";
    /// Beside that press.
    pub tomorrow_earliest = "tomorrow at the earliest", "frühestens morgen";

    /// Heading over what is not as on others of its kind.
    pub modified_on_this = "Modified on this vehicle", "An diesem Fahrzeug geändert";
    /// Where there is nothing.
    pub nothing_known = "Nothing known", "Nichts bekannt";
    /// Heading over work that is due on a vehicle.
    pub due_work = "Due", "Fällig";
    /// Where there is nothing.
    pub nothing = "Nothing", "Nichts";
    /// The way to its open order.
    pub is_here_order(number) = "It is here: order {number}", "Es ist hier: Auftrag {number}";
    /// The way to taking it in again.
    pub is_back_check_in = "It is back: check it in", "Es ist wieder da: annehmen";
    /// Heading over its owner.
    pub whose_it_is = "Whose it is", "Wem es gehört";
    /// What unfolds the fields of a vehicle.
    pub edit_plate_vin_name = "Edit plate, VIN, name", "Kennzeichen, FIN, Namen ändern";
    /// The way to what is known of its kind.
    pub what_work_taught = "What our work on such vehicles has taught",
        "Was unsere Arbeit an solchen Fahrzeugen gezeigt hat";
    /// Heading over measures.
    pub measured_last = "Measured last", "Zuletzt gemessen";
    /// Press: work that was due is done.
    pub it_was_done = "It was done", "Ist gemacht";
    /// Press: a difference is none any more.
    pub as_others_again = "It is as others again", "Ist wieder wie bei anderen";
    /// What unfolds the form for a reminder.
    pub ring_one_day = "Ring them about something one day", "Später einmal wegen etwas anrufen";
    /// Its label.
    pub about_what = "About what", "Weswegen";
    /// Its hint.
    pub reminder_hint = "such as: inspection is due", "etwa: HU ist fällig";
    /// Its label.
    pub on_which_day = "On which day", "An welchem Tag";
    /// Its press.
    pub note_it = "Note it", "Notieren";
    /// What unfolds the form for a call before the shop's warranty on its work ends.
    pub ring_before_warranty_ends = "Ring them before our warranty ends", "Vor dem Ende unserer Garantie anrufen";
    /// Below it: why some days before.
    pub so_they_can_bring_it = "Some days before it ends, so that they can still bring the vehicle in.", "Ein paar Tage vorher, damit sie das Fahrzeug noch bringen können.";
    /// Its label.
    pub ring_on_which_day = "Ring them on", "Anrufen am";
    /// Its press.
    pub ring_them_then = "Ring them then", "Dann anrufen";
    /// What they are rung about, as it is kept.
    pub our_warranty_ends_soon = "a call before our warranty on the last work ends", "Anruf, bevor unsere Garantie auf die letzte Arbeit endet";
    /// What unfolds a vehicle that may be the same.
    pub same_vehicle_question = "Is this the same vehicle?", "Ist das dasselbe Fahrzeug?";
    /// What comes of it.
    pub vehicles_shown_together =
        "The visits of both are shown together from then on. It can be taken apart again.",
        "Die Besuche beider stehen dann zusammen. Es lässt sich wieder trennen.";
    /// Press: they are one.
    pub same_vehicle = "The same vehicle", "Dasselbe Fahrzeug";
    /// By what a vehicle is looked for.
    pub plate_vin_model = "Plate, VIN, maker and model", "Kennzeichen, FIN, Hersteller und Modell";
    /// The way to what happened on a visit.
    pub story_of(number) = "Story of {number}", "Verlauf von {number}";

    /// Label of an address.
    pub street = "Street and house", "Straße und Hausnummer";
    /// Label of an address.
    pub postcode = "Postcode", "Postleitzahl";
    /// Label of an address.
    pub town = "Town", "Ort";
    /// Label of an address.
    pub country = "Country", "Land";
    /// Its hint.
    pub country_hint = "two letters, such as DE or US", "zwei Buchstaben, etwa DE oder US";
    /// Label.
    pub e_mail = "E-mail", "E-Mail";
    /// Hint of an address in lines.
    pub address_as_told = "as it was told; what is told below stands in its place",
        "wie sie genannt wurde; was unten steht, tritt an ihre Stelle";
    /// Fold: the vehicle is not here.
    pub it_comes_another_time = "It comes another time", "Es kommt ein andermal";
    /// Beside that fold.
    pub booked_by_phone = "booked", "angemeldet";
    /// Label: when.
    pub when_it_comes = "It comes", "Es kommt";
    /// Fold on a vehicle's page.
    pub weight_and_height = "Weight and height", "Gewicht und Höhe";
    /// Label.
    pub weight = "Weight", "Gewicht";
    /// Its hint, with the unit.
    pub with_its_load(unit) = "with its load, in {unit}", "mit Ladung, in {unit}";
    /// Label.
    pub height = "Height", "Höhe";
    /// Its hint, with the unit.
    pub with_what_is_on_its_roof(unit) = "with what is on its roof, in {unit}", "mit allem auf dem Dach, in {unit}";
}
