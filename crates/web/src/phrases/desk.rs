//! What is said at the desk.
//!
//! Here stands what several of its pages say; the rest by what it is about.

mod day;
mod intake;
mod money;
mod order;
mod papers;

pub use self::day::*;
pub use self::intake::*;
pub use self::money::*;
pub use self::order::*;
pub use self::papers::*;

use phrases::phrases;

phrases! {
    /// Title and heading of an order's page of money and papers; the way back to it.
    pub desk = "Desk", "Büro";
    /// Where the first page of all is named: all that stands in the shop.
    pub floor = "Floor", "Halle";
    /// Press that keeps what was typed.
    pub save = "Save", "Speichern";
    /// Press that shows more of a list; heading of the ways to everything else of an order.
    pub more = "More", "Mehr";
    /// How many more of a list there are.
    pub count_more(n) = "{n} more", "{n} weitere";
    /// A yes to what was asked.
    pub yes = "Yes", "Ja";
    /// A no to what was asked; the press for it.
    pub no = "No", "Nein";
    /// Label of a field: for which reason.
    pub why = "Why", "Grund";
    /// Label of a field: which thing, in words.
    pub what = "What", "Was";
    /// Legend or label: in which way.
    pub how = "How", "Wie";
    /// Label of a field: a count.
    pub how_many = "How many", "Wie viele";
    /// Label of a field: who gets it.
    pub to_whom = "To whom", "An wen";
    /// Heading, label and title: the price of an order.
    pub price = "Price", "Preis";
    /// Where no price stands yet.
    pub no_price_yet = "No price yet.", "Noch kein Preis.";
    /// Beside an amount, a hint of a field: tax is not in it.
    pub before_tax = "before tax", "ohne Steuer";
    /// Beside an amount: tax is in it.
    pub with_tax = "with tax", "mit Steuer";
    /// Unfolds how a figure was worked out.
    pub how_found = "How was this found?", "Wie wurde das gerechnet?";
    /// Heading, title and way to the parts of an order; what a price's entry is called if nobody named it.
    pub parts = "Parts", "Teile";
    /// How many parts.
    pub parts_count(n) = ["{n} part", "{n} parts"], ["{n} Teil", "{n} Teile"];
    /// Of a part: nobody has ordered it yet.
    pub needed = "needed", "wird gebraucht";
    /// Of a part or of what was sent out: it should have come.
    pub late = "late", "überfällig";
    /// The way to asking the customer, and its heading.
    pub get_approval = "Get approval", "Zustimmung einholen";
    /// Where no consent was given.
    pub nobody_agreed = "Nobody has agreed to anything yet.", "Noch hat niemand zugestimmt.";
    /// What is open of the price.
    pub left_to_pay = "Left to pay", "Noch zu zahlen";
    /// The way to the page of the invoice, the money and the keys; its heading.
    pub invoice_money_keys = "Invoice, money, keys", "Rechnung, Geld, Schlüssel";
    /// The way to the page on which a vehicle leaves; its title and heading.
    pub hand_over = "Hand over", "Übergabe";
    /// The way to what is to be done next by the plan.
    pub next_stage = "Next stage", "Nächster Schritt";
    /// The way to how sure a price is; its heading.
    pub how_sure_is_it = "How sure is it?", "Wie sicher ist das?";
    /// Label and heading: what the customer says is wrong.
    pub complaint = "Complaint", "Bean\u{ad}standung";
    /// Label: what was found.
    pub cause = "Cause", "Ursache";
    /// Label: what was done about it.
    pub correction = "Correction", "Abhilfe";
    /// Label: whose vehicle it is.
    pub customer = "Customer", "Kunde";
    /// Heading and title of the list of customers.
    pub customers = "Customers", "Kunden";
    /// Label and title: one vehicle.
    pub vehicle = "Vehicle", "Fahrzeug";
    /// Heading and title of a list of vehicles.
    pub vehicles = "Vehicles", "Fahrzeuge";
    /// Label of the number on the plate.
    pub plate = "Plate", "Kennzeichen";
    /// Label of the number of the vehicle itself.
    pub identification_number = "Vehicle identification number", "Fahrzeug-Identi\u{ad}fizierungs\u{ad}nummer (FIN)";
    /// Hint of the field that names a vehicle.
    pub maker_model_year = "maker, model, year", "Hersteller, Modell, Jahr";
    /// Label of a telephone number.
    pub telephone = "Telephone", "Telefon";
    /// Label of an address, and what unfolds its fields.
    pub address = "Address", "Adresse";
    /// Label of the odometer.
    pub odometer = "Odometer", "Kilometerstand";
    /// Label of the odometer as it comes.
    pub odometer_on_the_way_in = "Odometer on the way in", "Kilometerstand bei Annahme";
    /// Label of the odometer as it leaves.
    pub odometer_on_the_way_out = "Odometer on the way out", "Kilometerstand bei Übergabe";
    /// Heading and legend: the keys of the vehicle.
    pub keys = "Keys", "Schlüssel";
    /// Press: the customer has the keys again.
    pub keys_given_back = "Keys given back", "Schlüssel zurückgegeben";
    /// Legend: who is charged.
    pub who_pays = "Who pays", "Wer zahlt";
    /// Choice of who pays, and whom money comes from: the customer.
    pub payer_customer = "customer", "Kunde";
    /// Choice of who pays, and whom money comes from: a warranty.
    pub payer_warranty = "warranty", "Garantie";
    /// Choice of who pays: the shop itself, of its own will.
    pub payer_goodwill = "goodwill", "Kulanz";
    /// Who pays, as the subject of a sentence.
    pub the_customer = "the customer", "der Kunde";
    /// Who pays, as the subject of a sentence.
    pub the_warranty = "the warranty", "die Garantie";
    /// Who pays, as the subject of a sentence: the shop.
    pub us_as_goodwill = "us, as goodwill", "wir, auf Kulanz";
    /// Who pays, after "for" or as who is asked.
    pub whom_customer = "the customer", "den Kunden";
    /// Who pays, after "for" or as who is asked.
    pub whom_warranty = "the warranty", "die Garantie";
    /// Who pays, after "for" or as who is asked: the shop.
    pub whom_us = "us, as goodwill", "uns, auf Kulanz";
    /// Beside a complaint or an entry of the price.
    pub customer_pays = "the customer pays", "der Kunde zahlt";
    /// Beside a complaint or an entry of the price.
    pub warranty_pays = "the warranty pays", "die Garantie zahlt";
    /// Beside a complaint or an entry of the price: the shop pays.
    pub we_pay = "we pay, as goodwill", "wir zahlen, auf Kulanz";
    /// Behind the name of a paper: for whom it is, in the form that follows "for".
    pub for_whom(whom) = " for {whom}", " für {whom}";
    /// Way of asking: on the telephone.
    pub by_phone = "phone", "am Telefon";
    /// Way of asking: face to face.
    pub in_person = "in person", "persönlich";
    /// Way of asking: a short message.
    pub by_message = "message", "per Nachricht";
    /// Way of asking: a letter or an e-mail.
    pub by_mail = "mail", "per Post oder Mail";
    /// Way of asking, as it is told: they signed. Beside the way to declined work: it needs a signature.
    pub signed = "signed", "unterschrieben";
    /// Way of asking, to choose: a paper that they signed.
    pub signed_paper = "signed paper", "unterschriebenes Papier";
    /// What was agreed to, as it is told: to find the fault.
    pub diagnose = "diagnose", "Fehlersuche";
    /// What is asked for, to choose: to find the fault.
    pub find_the_fault = "find the fault", "Fehlersuche";
    /// What is asked for or agreed to: to take it apart.
    pub take_apart = "take apart", "Zerlegen";
    /// What is asked for or agreed to: to repair it.
    pub repair = "repair", "Reparatur";
    /// What was agreed to, as it is told: more than before.
    pub add = "add", "Mehrarbeit";
    /// What is asked for, to choose: more than before.
    pub do_more = "do more", "Mehrarbeit";
    /// How money comes in.
    pub card = "card", "Karte";
    /// How money comes in.
    pub cash = "cash", "bar";
    /// How money comes in: through a bank.
    pub transfer = "transfer", "Überweisung";
    /// How money comes in.
    pub cheque = "cheque", "Scheck";
    /// How money comes in: later, as agreed.
    pub on_account = "on account", "auf Rechnung";
    /// Label of the time that is promised.
    pub promised_for = "Promised for", "Zugesagt für";
    /// Press that promises the time that was typed.
    pub promise_it = "Promise it", "Zusagen";
    /// For when it was promised.
    pub promised_at(hour) = "promised {hour}", "zugesagt {hour}";
    /// Heading and way to when an order is ready.
    pub when_ready = "When will it be ready?", "Wann ist es fertig?";
    /// Press or what unfolds: another time than the one promised.
    pub another_time = "Another time", "Andere Zeit";
    /// Why there is no plan of the day.
    pub nothing_planned(missing) = "Nothing is planned: {missing}", "Nichts ist geplant: {missing}";
    /// Beside what is missing for a plan: where to tell it.
    pub tell_it = "tell it", "angeben";
    /// The way to what happened on an order; its title.
    pub story = "Story", "Verlauf";
    /// The way to correcting what was typed on taking in; its title and heading.
    pub edit_details = "Edit details", "Angaben ändern";
    /// The way from an order to its vehicle.
    pub the_vehicle = "The vehicle", "Fahrzeug";
    /// The way from an order that is done to a map made of it.
    pub keep_as_map = "Keep what was done as a map", "Gemachte Arbeit als Vorlage speichern";
    /// The way to the plan of an order.
    pub the_plan = "The plan", "Plan";
    /// The way to what was seen on walking round the vehicle.
    pub walk_round = "Walk-round", "Rundgang";
    /// The way to the snags of an order.
    pub snags = "Snags", "Probleme";
    /// The way to what was measured on a vehicle.
    pub measures = "Measures", "Messwerte";
    /// The way to the trays of an order.
    pub trays = "Trays", "Schalen";
    /// How much is open.
    pub open_count(n) = "{n} open", "{n} offen";
    /// How many things are not back in their place.
    pub items_open(n) = ["{n} item open", "{n} items open"], ["{n} Teil offen", "{n} Teile offen"];
    /// How an order left.
    pub handed_over_how(how) = "Handed over: {how}", "Übergeben: {how}";
    /// Press: the vehicle came back on this order.
    pub take_it_back_in = "Take it back in", "Wieder annehmen";
    /// Heading and label: the work that was done.
    pub what_was_done = "What was done", "Was gemacht wurde";
    /// What is written down twice is two all the same.
    pub two_after_all = "They are two after all", "Es sind doch zwei";
    /// What unfolds the search for another one of the same.
    pub written_down_twice = "Written down twice?", "Doppelt angelegt?";
    /// The other name under which the same customer or vehicle stands.
    pub also_written_as(name) = "Also written down as {name}", "Auch angelegt als {name}";
    /// How the vehicle stands, in a word: opened by mistake.
    pub word_voided = "voided", "storniert";
    /// How the vehicle stands, in a word: it left, and something came in after.
    pub word_left_look = "left, look", "weg, nachsehen";
    /// How the vehicle stands, in a word: it left.
    pub word_left = "left", "weg";
    /// How the vehicle stands, in a word: somebody has to be asked.
    pub word_consent = "consent", "Zustimmung";
    /// How the vehicle stands, in a word: something is sent out.
    pub word_machine_work = "machine work", "Fremdarbeit";
    /// How the vehicle stands, in a word: a part has not come.
    pub word_part = "part", "Ersatzteil";
    /// How the vehicle stands, in a word: something went wrong and is not mended.
    pub word_snag = "snag", "Problem";
    /// How the vehicle stands, in a word: things are off.
    pub word_at_work = "at work", "in Arbeit";
    /// How the vehicle stands, in a word: a check or a proof is missing.
    pub word_test = "test", "zu prüfen";
    /// How the vehicle stands, in a word: a paper, money or the keys are missing.
    pub word_papers = "papers", "Papiere";
    /// How the vehicle stands, in a word: it can go; somebody is to be told so.
    pub word_ready = "ready", "fertig";
    /// What stands in an address is no order's number; it comes in quotation marks.
    pub not_an_order_number(number) = "{number} is no order's number",
        "{number} ist keine Auftragsnummer";
}
