//! What is said of the shop itself.

use phrases::phrases;

phrases! {
    /// Title and heading where one machine alone is served: the list of people to pick from.
    pub who_are_you = "Who are you?", "Wer ist da?";
    /// Below that list.
    pub no_pin_asked = "This machine only: no PIN is asked for yet.", "Nur an diesem Rechner: noch wird keine PIN verlangt.";
    /// Title and press of the page on which a shop is begun.
    pub set_up = "Set up", "Einrichten";
    /// Heading where there is nobody to sign in.
    pub nobody_yet = "Nobody belongs to the shop yet", "Noch gehört niemand zur Werkstatt";
    /// The press that leads to the page on which a shop is begun.
    pub set_the_shop_up = "Set the shop up", "Werkstatt einrichten";
    /// Title and heading where people sign in with a PIN: the list to pick from.
    pub who_is_it = "Who is it?", "Wer ist es?";
    /// In that list, the person who is signed in.
    pub signed_in = "signed in", "angemeldet";
    /// A press.
    pub sign_out = "Sign out", "Abmelden";
    /// Refused.
    pub no_such_person = "there is no such person in this shop", "diese Person gibt es in der Werkstatt nicht";
    /// Heading where the shop was begun already.
    pub shop_is_set_up = "The shop is set up", "Die Werkstatt ist eingerichtet";
    /// A press.
    pub to_the_floor = "To the floor", "Zur Halle";
    /// Heading of the page on which a shop is begun.
    pub your_shop = "Your shop", "Die Werkstatt";
    /// That page: where everything is.
    pub all_in_one_folder = "Everything stays in one folder on this machine.", "Alles bleibt in einem Ordner auf diesem Rechner.";
    /// Label of a field.
    pub name_of_the_shop = "Name of the shop", "Name der Werkstatt";
    /// Label of a field: the owner's.
    pub your_name = "Your name", "Eigener Name";
    /// Label of a field.
    pub name_of_a_second = "Name of a second person", "Name einer zweiten Person";
    /// Beside that field.
    pub empty_if_alone = "leave empty if you work alone", "leer lassen, wer allein arbeitet";
    /// Label of a field, where a shop is begun.
    pub hours_labour = "An hour's labour, before tax", "Eine Stunde Arbeit, ohne Steuer";
    /// Beside that field.
    pub such_as_120 = "such as 120", "z. B. 120";
    /// Label of a field.
    pub currency = "Currency", "Währung";
    /// Beside that field.
    pub three_letters = "three letters", "drei Buchstaben";
    /// Label of a field.
    pub name_of_the_tax = "Name of the tax", "Name der Steuer";
    /// What stands in that field at first.
    pub usual_tax = "VAT", "MwSt.";
    /// Label of a field, where a shop is begun.
    pub per_cent_of_tax = "Per cent of tax", "Steuersatz in Prozent";
    /// What stands in that field at first.
    pub usual_tax_rate = "20", "19";
    /// Above a choice.
    pub tax_falls_on = "Tax falls on", "Steuer fällt an auf";
    /// A choice: what is taxed.
    pub labour_and_parts = "labour and parts", "Arbeit und Teile";
    /// A choice: what is taxed.
    pub parts_only = "parts only", "nur Teile";
    /// Above a choice: of what measures are written in.
    pub units = "Units", "Einheiten";
    /// A choice of units.
    pub metric = "metric", "metrisch";
    /// A choice of units.
    pub us_units = "US", "US";
    /// Label of a field.
    pub time_zone = "Time zone", "Zeitzone";
    /// Beside that field: two as a computer knows them.
    pub such_zones = "such as Europe/Lisbon or America/Chicago", "z. B. Europe/Berlin oder Europe/Zurich";
    /// What stands in that field at first, as a computer knows it.
    pub usual_zone = "Europe/Lisbon", "Europe/Berlin";
    /// Label of a field.
    pub name_of_first_stall = "Name of the first stall", "Name des ersten Platzes";
    /// What stands in that field at first.
    pub first_stall = "Stall 1", "Platz 1";
    /// A fold, a title, a heading and the way to a page: what is printed at the head of papers.
    pub on_your_papers = "On your papers", "Auf den Papieren";
    /// Beside that fold: it need not be told now.
    pub can_wait = "can wait", "hat Zeit";
    /// Title and heading of the shop's own page, and the way to it.
    pub the_shop = "The shop", "Werkstatt";
    /// Heading.
    pub people = "People", "Leute";
    /// Label of the field for a new person's name.
    pub somebody_new = "Somebody new", "Jemand Neues";
    /// Above the choice of what a person does in the shop.
    pub what_they_do = "What they do", "Aufgabe";
    /// What a person does in the shop, in a list.
    pub technician = "technician", "Mechaniker";
    /// What a person does in the shop, in a list.
    pub desk = "desk", "Büro";
    /// What a person does in the shop, in a list.
    pub owner = "owner", "Inhaber";
    /// What a person does in the shop, in a list.
    pub apprentice = "apprentice", "Azubi";
    /// What a person does in the shop, in a list.
    pub foreman = "foreman", "Meister";
    /// The same as a choice in a narrow place: `\u{ad}` is where it may be parted.
    pub technician_narrow = "techni\u{ad}cian", "Mecha\u{ad}niker";
    /// The same as a choice in a narrow place: `\u{ad}` is where it may be parted.
    pub apprentice_narrow = "appren\u{ad}tice", "Azubi";
    /// A press: somebody is ill or away today.
    pub not_here_today = "Not here today", "Heute nicht da";
    /// Small words on that press.
    pub the_day_is_laid_anew = "the day is planned anew", "der Tag wird neu geplant";
    /// A press: adds a person.
    pub add = "Add", "Hinzufügen";
    /// Heading.
    pub stalls = "Stalls", "Plätze";
    /// Label of the field for a new stall's name.
    pub another_stall = "Another stall", "Weiterer Platz";
    /// Above the choice of what a stall is.
    pub what_sort = "What sort", "Art";
    /// What a stall is: one with a lift.
    pub lift = "lift", "Bühne";
    /// What a stall is: one without a lift.
    pub flat = "flat", "ohne Bühne";
    /// What a stall is: a place in the yard, where nobody works.
    pub outside = "outside", "draußen";
    /// Behind what a stall is: the heaviest vehicle that its lift carries.
    pub up_to_weight(weight) = ", up to {weight}", ", bis {weight}";
    /// Behind that: the highest vehicle.
    pub up_to_height(height) = ", {height} high", ", {height} hoch";
    /// Behind that: which stalls a vehicle crosses on its way in.
    pub behind_stalls(names) = ", behind {names}", ", hinter {names}";
    /// Label: the heaviest vehicle that a lift carries.
    pub lift_carries = "The lift carries", "Die Bühne trägt";
    /// Its hint, with the unit.
    pub off_its_plate(unit) = "off its plate, in {unit}; empty: not known, not checked", "vom Typenschild, in {unit}; leer: unbekannt, wird nicht geprüft";
    /// Label: the highest vehicle that clears the roof on a lift.
    pub highest_vehicle = "Highest vehicle on it", "Höchstes Fahrzeug darauf";
    /// Its hint, with the unit.
    pub clears_the_roof(unit) = "clears the roof when the lift is up, in {unit}", "passt unters Dach, wenn die Bühne oben ist, in {unit}";
    /// Legend over the other stalls.
    pub crossed_on_the_way = "To get in and out, these have to be empty", "Zum Rein- und Rausfahren müssen frei sein";
    /// A press.
    pub save_what_it_takes = "Save what it takes", "Speichern, was passt";
    /// Under a figure that is none.
    pub not_read_not_checked(value) = "{value} can't be read: it is not checked", "{value} ist nicht lesbar: wird nicht geprüft";
    /// A press.
    pub add_the_stall = "Add the stall", "Platz hinzufügen";
    /// The way to a page, its heading.
    pub what_prices_go_by = "What prices go by", "Preis\u{ad}regeln";
    /// Beside that way: what stands there.
    pub what_prices_go_by_hint = "taxes, rates, fixed-price jobs", "Steuern, Stundensätze, Festpreise";
    /// The way to a page.
    pub books = "Books", "Bücher";
    /// Beside that way: what stands there.
    pub books_hint = "invoices, payments, taxes, what is not paid", "Rechnungen, Zahlungen, Steuern, was offen ist";
    /// Beside the way to what is printed on papers.
    pub on_your_papers_hint = "address, tax number, bank, picture", "Adresse, Steuernummer, Bank, Bild";
    /// The way to a page.
    pub who_can_do_what = "Who can do what", "Wer was kann";
    /// Beside that way: what stands there.
    pub table_of_skills = "the table of skills", "Tabelle der Fähigkeiten";
    /// The way to a page.
    pub devices_and_people = "Devices and people", "Geräte und Leute";
    /// Beside that way: what stands there.
    pub phones_pins = "phones, PINs", "Handys, PINs";
    /// The way to a page, its title and heading.
    pub the_record = "The record", "Aufzeichnung";
    /// Beside that way: what can be done there.
    pub check_copy_erase = "check, copy, erase", "prüfen, sichern, löschen";
    /// The way to a page.
    pub maps = "Maps", "Vorlagen";
    /// The way to the list of people.
    pub somebody_else = "Somebody else", "Jemand anders";
    /// Beside that way: what it is for.
    pub change_the_person = "change the person", "Person wechseln";
    /// Label of a field for the name of a person or a stall.
    pub name = "Name", "Name";
    /// Said when what a person does was left without any tick.
    pub tick_what_they_do = "Tick what they do", "Aufgabe ankreuzen";
    /// A press that keeps what stands in the fields above it.
    pub save = "Save", "Speichern";
    /// The press for a person who has left the shop.
    pub no_longer_with_us = "No longer with us", "Nicht mehr bei uns";
    /// Small on that press.
    pub stays_in_the_record = "what they did stays in the record", "was sie getan haben, bleibt in der Aufzeichnung";
    /// A press.
    pub remove_the_stall = "Remove the stall", "Platz entfernen";
    /// A fold.
    pub name_rate_tax_units = "Name, rate, tax, units", "Name, Stundensatz, Steuer, Einheiten";
    /// Label of a field, where the shop is changed.
    pub labour_an_hour = "Labour, an hour, before tax", "Arbeit, je Stunde, ohne Steuer";
    /// Label of a field.
    pub tax_rate = "Tax rate, %", "Steuersatz, %";
    /// Heading above whose rules hold for a customer's approval.
    pub rules_for_consent = "Rules for consent", "Regeln für die Zustimmung";
    /// Below that heading, where no place's rules were chosen.
    pub no_rules = "No place's rules: whatever passes what was agreed is asked for, however little. This fits everywhere.", "Keine Regeln eines Landes: Für alles über dem Vereinbarten wird gefragt, so wenig es ist. Das passt überall.";
    /// Below that heading: whose rules, and of which day.
    pub rules_as_of(place, day) = "{place}, as of {day}", "{place}, Stand {day}";
    /// Below that heading, where the place has another currency than the shop.
    pub other_currency(theirs, yours) = "Its sums are in {theirs} and yours in {yours}: until they are the same, whatever passes what was agreed is asked for.", "Dort gelten Summen in {theirs}, hier in {yours}: Bis es dieselbe Währung ist, wird für alles über dem Vereinbarten gefragt.";
    /// The fold with the places.
    pub choose_a_place = "Choose a place", "Land wählen";
    /// Small on the press of a place: of which day its rules are.
    pub as_of(day) = "as of {day}", "Stand {day}";
    /// The press for no place's rules.
    pub no_places_rules = "No place's rules", "Keine Regeln eines Landes";
    /// Small on that press.
    pub any_excess_is_asked = "any excess is asked for", "für jedes Mehr wird gefragt";

    /// How hours of a week are written. The days stay as they are: they are read so.
    pub hours_hint = "such as mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00", "z. B. Mo-Fr 8-12, 12:30-17; Sa 9-13";
    /// Beside a person's hours.
    pub own_hours_hint = "leave empty for the shop's hours, or such as mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00", "leer für die Zeiten der Werkstatt, oder z. B. Mo-Fr 8-12, 12:30-17; Sa 9-13";
    /// A fold.
    pub opening_hours = "Opening hours", "Öffnungs\u{ad}zeiten";
    /// Beside that fold, where there are none.
    pub hours_not_told = "not told: nothing is planned", "nicht angegeben: es wird nichts geplant";
    /// Label of the field for the shop's hours.
    pub open_on = "Open on", "Geöffnet";
    /// A press.
    pub save_the_hours = "Save the hours", "Zeiten speichern";
    /// Label of the field for a person's hours.
    pub works_on = "Works on", "Arbeitet";
    /// A fold: what a person knows of vehicles.
    pub knows = "Knows", "Kennt sich aus mit";
    /// Above the ticks in that fold.
    pub what_they_know = "What they know", "Womit sie sich auskennen";
    /// A press.
    pub save_what_they_know = "Save what they know", "Kenntnisse speichern";
    /// Beside that fold, where nothing was told.
    pub not_told = "not told", "nicht angegeben";
    /// Days on which the shop is closed.
    pub closed_days = "Closed days", "Geschlossen";
    /// A press.
    pub add_closed_days = "Add the closed days", "Schließtage eintragen";
    /// Days on which a person is not there.
    pub days_off = "Days off", "Freie Tage";
    /// A press.
    pub add_days_off = "Add the days off", "Freie Tage eintragen";
    /// A row: closed days or days off, and which.
    pub which_days(what, days) = "{what}: {days}", "{what}: {days}";
    /// A press on such a row.
    pub not_after_all = "Not after all", "Doch nicht";
    /// Label of the first day; in the hole stands whether the shop is closed or somebody is off.
    pub from_day(what) = "{what}, from", "{what}, von";
    /// Label of the last day.
    pub to_that_day_too = "To, that day too", "Bis, einschließlich";
    /// From one day to another.
    pub day_to_day(first, last) = "{first} to {last}", "{first} bis {last}";
    /// A part of a vehicle that somebody knows.
    pub brakes = "brakes", "Bremsen";
    /// A part of a vehicle that somebody knows.
    pub steering = "steering", "Lenkung";
    /// A part of a vehicle that somebody knows.
    pub wheels = "wheels", "Räder";
    /// A part of a vehicle that somebody knows.
    pub suspension = "suspension", "Fahrwerk";
    /// A part of a vehicle that somebody knows.
    pub fuel = "fuel", "Kraftstoff";
    /// A part of a vehicle that somebody knows: belts and airbags.
    pub restraints = "restraints", "Rückhaltesysteme";
    /// A part of a vehicle that somebody knows.
    pub drive_belt = "drive belt", "Riementrieb";
    /// A part of a vehicle that somebody knows.
    pub high_voltage = "high voltage", "Hochvolt";
    /// A part of a vehicle that somebody knows.
    pub cooling = "cooling", "Kühlung";
    /// A part of a vehicle that somebody knows.
    pub oil = "oil", "Öl";
    /// A part of a vehicle that somebody knows.
    pub engine = "engine", "Motor";
    /// A part of a vehicle that somebody knows.
    pub transmission = "transmission", "Getriebe";
    /// A part of a vehicle that somebody knows.
    pub intake = "intake", "Ansaugung";
    /// A part of a vehicle that somebody knows.
    pub exhaust = "exhaust", "Abgas\u{ad}anlage";
    /// A part of a vehicle that somebody knows.
    pub battery = "battery", "Batterie";
    /// A part of a vehicle that somebody knows.
    pub electrical = "electrical", "Elektrik";
    /// A part of a vehicle that somebody knows.
    pub climate = "climate", "Klima";
    /// A part of a vehicle that somebody knows.
    pub body = "body", "Karosserie";
    /// A part of a vehicle that was not told apart.
    pub unknown = "unknown", "unbekannt";

    /// Below the heading of what is printed on papers.
    pub printed_at_the_head = "Printed at the head of estimates, invoices and credit notes. What you leave empty is not printed.", "Steht oben auf Kostenvoranschlägen, Rechnungen und Rechnungs\u{ad}korrekturen. Was leer bleibt, wird nicht gedruckt.";
    /// Label of a field.
    pub e_mail = "E-mail", "E-Mail";
    /// Label of the field for what is printed below an invoice.
    pub at_the_end_of_an_invoice = "At the end of an invoice", "Am Ende einer Rechnung";
    /// Beside that field.
    pub terms_hint = "such as when to pay, and your warranty", "z. B. bis wann zu zahlen ist, und die Garantie";
    /// Above the choice of a language.
    pub papers_are_in = "Papers are in", "Sprache der Papiere";
    /// A language.
    pub english = "English", "Englisch";
    /// A language.
    pub german = "German", "Deutsch";
    /// Label of a field with several lines.
    pub address_of_the_shop = "Address of the shop", "Adresse der Werkstatt";
    /// Beside that field.
    pub address_hint = "as it was told; what is told below stands in its place", "wie sie genannt wurde; was unten steht, ersetzt sie";
    /// Label of a field.
    pub telephone = "Telephone", "Telefon";
    /// Label of a field.
    pub tax_number = "Tax number", "Steuernummer";
    /// Beside that field.
    pub tax_number_hint = "as it has to stand on an invoice", "wie sie auf einer Rechnung stehen muss";
    /// Label of a field.
    pub bank = "Bank", "Bank";
    /// Beside that field.
    pub bank_hint = "where money is transferred to", "wohin überwiesen wird";
    /// Label of a field of an address.
    pub street_and_house = "Street and house", "Straße und Hausnummer";
    /// Label of a field of an address.
    pub postcode = "Postcode", "Postleitzahl";
    /// Label of a field of an address.
    pub town = "Town", "Ort";
    /// Label of a field of an address.
    pub country = "Country", "Land";
    /// Beside that field.
    pub country_hint = "two letters, such as DE or US", "zwei Buchstaben, z. B. DE oder AT";
    /// Heading above the picture on papers.
    pub your_picture = "Your picture", "Eigenes Bild";
    /// The name of that picture.
    pub picture_on_your_papers = "The picture on your papers", "Das Bild auf den Papieren";
    /// The press that takes the picture away.
    pub take_it_off = "Take it off", "Entfernen";
    /// Label of the field for a picture.
    pub picture = "Picture", "Bild";
    /// Beside that field.
    pub picture_hint = "PNG or JPEG; it is printed 13 mm high at most", "PNG oder JPEG; gedruckt höchstens 13 mm hoch";
    /// A press.
    pub save_the_picture = "Save the picture", "Bild speichern";
    /// A choice: a person's work is charged as the shop's own.
    pub the_usual_rate = "the usual rate", "üblicher Satz";
    /// Above that choice; the others are the shop's own names for grades.
    pub charged_as = "Their work is charged as", "Arbeit wird berechnet als";
    /// A press.
    pub save_the_rate = "Save the rate", "Satz speichern";

    /// What is charged, on the page of prices: work by the hour.
    pub charge_labour = "labour", "Arbeit";
    /// What is charged, on the page of prices.
    pub charge_parts = "parts", "Teile";
    /// What is charged, on the page of prices: work that another firm does.
    pub charge_sublet = "machine work", "Fremdarbeit";
    /// What is charged, on the page of prices: small things used up.
    pub charge_supplies = "supplies", "Kleinmaterial";
    /// What is charged, on the page of prices: for old parts that go back to the maker.
    pub charge_cores = "cores", "Altteilpfand";
    /// What is charged, on the page of prices.
    pub charge_tests = "tests", "Prüfungen";
    /// What is charged, on the page of prices.
    pub charge_other = "other", "Sonstiges";
    /// What is charged, on the page of prices.
    pub charge_disposal = "disposal", "Entsorgung";
    /// Who pays, on the page of prices.
    pub the_customer = "the customer", "dem Kunden";
    /// Who pays, on the page of prices.
    pub a_warranty = "a warranty", "einer Garantie";
    /// Who pays, on the page of prices.
    pub us_as_goodwill = "us, as goodwill", "uns, auf Kulanz";
    /// How a sum is rounded: a half goes up.
    pub half_up = "half up", "kaufmännisch";
    /// How a sum is rounded: a half goes down.
    pub half_down = "half down", "Hälften ab";
    /// How a sum is rounded: a half goes to the even figure.
    pub half_to_even = "half to even", "Hälften zur geraden Ziffer";
    /// How a sum is rounded: always down.
    pub round_down = "down", "immer ab";
    /// How a sum is rounded: always up.
    pub round_up = "up", "immer auf";
    /// Title of the page of prices; its heading before the shop is set up.
    pub prices = "Prices", "Preise";
    /// The page of prices before the shop is set up.
    pub set_up_first = "Set the shop up first.", "Zuerst die Werkstatt einrichten.";
    /// Below the heading of the page of prices.
    pub holds_from_now_on = "What is changed here holds for prices set from now on. Invoices stay as they are.", "Was hier geändert wird, gilt für Preise von jetzt an. Rechnungen bleiben, wie sie sind.";
    /// Heading.
    pub taxes = "Taxes", "Steuern";
    /// Below the taxes.
    pub taxes_hint = "A tax without a name is left out. They are taken in this sequence; those that are in the price go first.", "Eine Steuer ohne Namen entfällt. Sie werden in dieser Reihenfolge genommen; die im Preis enthaltenen zuerst.";
    /// A press.
    pub save_the_taxes = "Save the taxes", "Steuern speichern";
    /// The fold for one more tax.
    pub another_tax = "Another tax", "Weitere Steuer";
    /// Beside the field for a tax's name.
    pub name_of_the_tax_hint = "as papers call it; empty takes it out", "wie sie auf Papieren heißt; leer entfernt sie";
    /// Above the ticks of what is taxed.
    pub it_falls_on = "It falls on", "Sie fällt an auf";
    /// Said when nobody is ticked who pays a tax.
    pub tick_who_is_asked = "Tick who is asked", "Ankreuzen, von wem";
    /// Above the ticks of who pays a tax.
    pub it_is_asked_of = "It is asked of", "Verlangt wird sie von";
    /// A tick.
    pub on_the_taxes_before = "It is taken on the taxes before it as well", "Sie fällt auch auf die Steuern davor an";
    /// A tick.
    pub in_the_price_already = "It is in the price already", "Sie ist schon im Preis";
    /// Heading.
    pub labour = "Labour", "Arbeit";
    /// Below that heading.
    pub own_rate_is(rate) = "The shop's own rate is {rate} an hour. Other rates for kinds of work, for grades of people, or both:", "Der Satz der Werkstatt ist {rate} je Stunde. Andere Sätze für Arten von Arbeit, für Leute oder beides:";
    /// Above the choice by which hours labour is charged.
    pub hours_charged = "Hours charged", "Berechnete Stunden";
    /// A choice: the hours of the maker's book.
    pub by_book = "book", "Richtzeit";
    /// A choice: the hours that the clock showed.
    pub by_clock = "clock", "Uhr";
    /// A choice: the smaller of the two.
    pub the_lesser = "the lesser", "die kürzere";
    /// Heading.
    pub parts_on_top = "Parts: what goes on top of what they cost", "Teile: was auf den Einkauf kommt";
    /// Heading.
    pub sublet_on_top = "Machine work: what goes on top of its cost", "Fremdarbeit: was auf ihre Kosten kommt";
    /// Heading: small things used up.
    pub shop_supplies = "Shop supplies", "Kleinmaterial";
    /// Label of a number.
    pub per_cent = "Per cent", "Prozent";
    /// Beside that number.
    pub none_are_charged = "empty: none are charged", "leer: wird nicht berechnet";
    /// Above the ticks of what a per cent is taken of.
    pub of = "Of", "Von";
    /// Label of a sum.
    pub most_on_an_order = "At most on an order", "Höchstens je Auftrag";
    /// Heading: what is charged for getting rid of old oil and the like.
    pub disposal = "Disposal", "Entsorgung";
    /// Label of a field.
    pub of_what = "Of what", "Wovon";
    /// Label of a sum.
    pub for_one = "For one", "Für eins";
    /// Heading.
    pub rounding = "Rounding", "Rundung";
    /// Above a choice.
    pub a_tax_is_rounded = "A tax is rounded", "Eine Steuer wird gerundet";
    /// A choice: on the sum alone.
    pub once = "once", "einmal";
    /// A choice.
    pub on_each_line = "on each line", "je Zeile";
    /// Above the choice of how a tax is rounded.
    pub to_the_coin = "To the coin", "Auf den Cent";
    /// Label of a sum.
    pub smallest_coin = "Smallest coin that is paid with", "Kleinste Münze, mit der gezahlt wird";
    /// Beside that sum.
    pub smallest_coin_hint = "such as 0.05; empty where every coin is in use", "z. B. 0,05; leer, wo jede Münze gilt";
    /// Above the choice of how cash is rounded.
    pub cash_between_coins = "Cash between two coins goes", "Bargeld zwischen zwei Münzen wird gerundet";
    /// Label of a field: which sort of work.
    pub work = "Work", "Arbeit";
    /// Beside that field.
    pub such_as_diagnosis = "such as diagnosis", "z. B. Diagnose";
    /// Label of a field: which sort of person.
    pub grade = "Grade", "Stufe";
    /// Beside that field.
    pub such_as_apprentice = "such as apprentice", "z. B. Azubi";
    /// Label of a sum: the rate.
    pub an_hour = "An hour", "Je Stunde";
    /// Label of a sum: up to which cost a row holds.
    pub cost_up_to = "Cost up to", "Einkauf bis";
    /// Beside that sum.
    pub all_above = "empty: all above", "leer: alles darüber";
    /// Above the choice between markup and margin.
    pub it_is_a = "It is a", "Das ist";
    /// A choice: a per cent of the cost.
    pub markup = "markup", "Aufschlag";
    /// A choice: a per cent of the price.
    pub margin = "margin", "Marge";
    /// What the two are.
    pub markup_and_margin = "A markup is a per cent of the cost, a margin a per cent of the price: 50 % markup on 100 is 150, 50 % margin is 200.", "Ein Aufschlag ist ein Prozentsatz vom Einkauf, eine Marge einer vom Preis: 50 % Aufschlag auf 100 sind 150, 50 % Marge sind 200.";
    /// Label of a sum.
    pub least_on_top = "At least on top of each", "Mindestens auf jedes";
    /// Where one row ends and the next sells for less.
    pub sells_for_less(cost, price, above) = "What costs {cost} sells for {price}, and what costs a little more for {above}.", "Was {cost} kostet, geht für {price} weg, und was etwas mehr kostet, für {above}.";
    /// Heading.
    pub jobs_at_a_fixed_price = "Jobs at a fixed price", "Arbeiten zum Festpreis";
    /// The fold for one more.
    pub another_job = "Another job", "Weitere Arbeit";
    /// The press that drops a job.
    pub keep_it_no_more = "Keep it no more", "Nicht mehr führen";
    /// Label of a field.
    pub what_the_job_is_called = "What the job is called", "Wie die Arbeit heißt";
    /// Beside that field.
    pub such_as_oil_service = "such as Oil service", "z. B. Ölwechsel";
    /// Label of a sum.
    pub all_of_it = "All of it, parts and labour", "Alles zusammen, Teile und Arbeit";
    /// Label of a field: a part that belongs to a job.
    pub part = "Part", "Teil";
    /// Label of a number.
    pub how_many = "How many", "Wie viele";
    /// Label of a sum: for one part.
    pub each = "Each", "Je Stück";
    /// Beside that sum.
    pub within_the_price = "within the price", "im Preis enthalten";
    /// Below the parts of a job.
    pub rest_is_labour = "What the parts leave of the price is labour.", "Was die Teile vom Preis übrig lassen, ist Arbeit.";
    /// A tick.
    pub charge_as_one_line = "Charge it as one line, parts not told apart", "Als eine Zeile berechnen, Teile nicht einzeln";
    /// A press.
    pub save_the_job = "Save the job", "Arbeit speichern";

    /// Title of the page on which a table of customers is read in.
    pub read_in_customers = "Read in customers", "Kunden einlesen";
    /// Heading of that page, and the way to it.
    pub read_in_customers_and_vehicles = "Read in customers and vehicles", "Kunden und Fahrzeuge einlesen";
    /// That page: what a table looks like.
    pub table_as_csv = "A table as CSV. Its first line names the columns: name, telephone, e-mail, address, plate, vehicle, VIN. Nothing is written down before you have seen what would change.", "Eine Tabelle als CSV. Ihre erste Zeile nennt die Spalten: Name, Telefon, E-Mail, Adresse, Kennzeichen, Fahrzeug, FIN. Nichts wird aufgeschrieben, bevor zu sehen war, was sich ändern würde.";
    /// Label of the field for a file.
    pub file = "File", "Datei";
    /// Label of the field in place of a file.
    pub or_its_text = "Or its text", "Oder ihr Text";
    /// The large press: nothing is written yet.
    pub show_what_would_change = "Show what would change", "Zeigen, was sich ändern würde";
    /// A refusal: where, and what.
    pub where_and_what(place, what) = "{place}: {what}", "{place}: {what}";
    /// A row with a number.
    pub new_customers = "New customers", "Neue Kunden";
    /// A row with a number.
    pub new_vehicles = "New vehicles", "Neue Fahrzeuge";
    /// A row with a number.
    pub rows_known_already = "Rows that are known already", "Zeilen, die schon bekannt sind";
    /// A row with a number.
    pub rows_not_read_in = "Rows that cannot be read in", "Zeilen, die nicht einzulesen sind";
    /// Heading above what each column was taken for.
    pub columns = "Columns", "Spalten";
    /// Beside a column that is passed over.
    pub not_read_in = "not read in", "wird nicht eingelesen";
    /// Heading.
    pub cannot_be_read_in = "Cannot be read in", "Nicht einzulesen";
    /// Below that heading: which line, and why.
    pub line_and_why(line, why) = "Line {line}: {why}", "Zeile {line}: {why}";
    /// How many more there are than are shown.
    pub more(n) = "{n} more", "noch {n}";
    /// The large press: now it is written.
    pub read_them_in = "Read them in", "Einlesen";
    /// Small on that press.
    pub new_records(n) = ["{n} new record", "{n} new records"], ["{n} neuer Eintrag", "{n} neue Einträge"];
    /// Where a table holds nothing new.
    pub nothing_is_new = "Nothing in it is new.", "Darin ist nichts neu.";
    /// A press.
    pub another_table = "Another table", "Andere Tabelle";
    /// Heading.
    pub what_is_new = "What is new", "Was neu ist";
    /// Beside a row.
    pub both_new = "both new", "beides neu";
    /// Beside a row.
    pub customer_new = "customer new", "Kunde neu";
    /// Beside a row.
    pub vehicle_new = "vehicle new", "Fahrzeug neu";
    /// Below the rows.
    pub first_rows_shown(n) = "The first {n} rows are shown.", "Gezeigt werden die ersten {n} Zeilen.";

    /// The page of the record, a row with a number.
    pub events_chained = "Events, chained", "Ereignisse, verkettet";
    /// The page of the record, a row with a size.
    pub on_this_disk = "On this disk", "Auf dieser Festplatte";
    /// The large press of that page.
    pub back_up_now = "Back up now", "Jetzt sichern";
    /// Small on that press: to which folder.
    pub to_folder(folder) = "to {folder}", "nach {folder}";
    /// Below that press; an option of the command line follows, then a full stop.
    pub made_each_day(most) = "One is made each day by itself; the last {most} are kept. Name another disk with ", "Jeden Tag entsteht von selbst eine Sicherung; die letzten {most} bleiben. Eine andere Festplatte nennen mit ";
    /// The option of the command line; its first word stays as it is.
    pub backups_option = "--backups FOLDER", "--backups ORDNER";
    /// Below that press, where no copy is made by itself.
    pub none_by_itself = "None is made by itself here.", "Von selbst entsteht hier keine.";
    /// Heading.
    pub is_it_what_was_written = "Is it what was written?", "Ist es, was geschrieben wurde?";
    /// A press.
    pub verify_now = "Verify now", "Jetzt prüfen";
    /// Before the head of the chain.
    pub head_of_the_chain = "Head of the chain, printed on every invoice and backup:", "Kopf der Kette, auf jeder Rechnung und Sicherung gedruckt:";
    /// Before a command that is typed.
    pub hold_against_printed = "To hold the record against one that is printed, run", "Um die Aufzeichnung mit einem gedruckten Kopf zu vergleichen:";
    /// Heading.
    pub take_it_elsewhere = "Take it elsewhere", "Mitnehmen";
    /// A row that is pressed.
    pub export_the_record = "Export the whole record", "Ganze Aufzeichnung ausgeben";
    /// Beside that row.
    pub export_hint = "lines of JSON, with all texts and photos", "Zeilen in JSON, mit allen Texten und Fotos";
    /// Heading.
    pub keys_of_the_network = "The keys of the network", "Schlüssel des Netzes";
    /// Below that heading; a command follows, then the next text.
    pub sealed_go_along = "Sealed with a word: they go along with each copy. After a restore, ", "Mit einem Kennwort versiegelt: Sie gehen mit jeder Sicherung mit. Nach einer Wiederherstellung öffnet ";
    /// Behind that command.
    pub opens_them = " opens them, and every phone goes on.", " sie, und jedes Handy läuft weiter.";
    /// Below that heading, where they are not sealed.
    pub no_copy_holds_them = "No copy holds them. If this machine is lost, every phone has to be let in anew.", "Keine Sicherung enthält sie. Geht dieser Rechner verloren, muss jedes Handy neu angemeldet werden.";
    /// The fold with the fields for the word.
    pub seal_with_another_word = "Seal them with another word", "Mit einem anderen Kennwort versiegeln";
    /// The fold with the fields for the word.
    pub seal_with_a_word = "Seal them with a word", "Mit einem Kennwort versiegeln";
    /// Label of a field.
    pub the_word = "The word", "Das Kennwort";
    /// Beside that field.
    pub the_word_hint = "at least ten letters; keep it where the copies are not", "mindestens zehn Buchstaben; nicht dort aufheben, wo die Sicherungen sind";
    /// Label of a field.
    pub once_more = "Once more", "Noch einmal";
    /// A press.
    pub seal_them = "Seal them", "Versiegeln";
    /// Where a refusal came from.
    pub in_the_word = "the word", "das Kennwort";
    /// Refused: a word that was typed twice.
    pub the_two_differ = "the two differ", "die beiden sind verschieden";
    /// How to mend it.
    pub type_it_again = "type it again", "noch einmal eingeben";
    /// After checking: all is well.
    pub sound(events) = "Sound: all {events} events are what was written.", "In Ordnung: Alle {events} Ereignisse sind, was geschrieben wurde.";
    /// After checking: one cannot be read.
    pub event_unread(position, stream, what) = "Event {position} ({stream}) cannot be read by this program: {what}. Use the newer program, if one wrote it; else report this.", "Ereignis {position} ({stream}) kann dieses Programm nicht lesen: {what}. Das neuere Programm nehmen, wenn es davon stammt; sonst melden.";
    /// After checking: something is not what was written.
    pub not_sound(damage) = "Not sound: {damage}", "Nicht in Ordnung: {damage}";
    /// Where no copy was ever made.
    pub no_backup_is_known = "No backup is known.", "Keine Sicherung bekannt.";
    /// A row.
    pub last_backup = "Last backup", "Letzte Sicherung";
    /// Beside that row: how old, and how much was written since.
    pub since_last_backup(age, events) = "{age}, {events} events ago", "{age}, seither {events} Ereignisse";
    /// Below that row.
    pub older_than_a_week = "The last backup is older than a week.", "Die letzte Sicherung ist älter als eine Woche.";
    /// Heading.
    pub erasures_that_wait = "Erasures that wait", "Löschungen, die warten";
    /// The press that stops one.
    pub call_it_off = "Call it off", "Absagen";
    /// Where the machine's clock and the record disagree; a command follows.
    pub clock_in_doubt(now, last) = "Is the machine's clock right? It says {now}, but the last event was written down at {last}. Nothing is erased until they agree to a day. With the next event they do; if the clock is right and nothing comes in, stop buttonup and run ", "Geht die Uhr des Rechners richtig? Sie sagt {now}, aber das letzte Ereignis wurde {last} aufgeschrieben. Gelöscht wird erst, wenn beide auf einen Tag genau stimmen. Mit dem nächsten Ereignis tun sie das; geht die Uhr richtig und kommt nichts, buttonup beenden und aufrufen: ";
    /// How many may be erased now; a command follows.
    pub may_be_erased_now(n) = ["{n} may be erased now. It is done within the hour while buttonup runs; to do it at once, stop it and run ", "{n} may be erased now. It is done within the hour while buttonup runs; to do it at once, stop it and run "], ["{n} kann jetzt gelöscht werden. Das geschieht binnen einer Stunde, solange buttonup läuft; sofort geht es so: beenden und aufrufen: ", "{n} können jetzt gelöscht werden. Das geschieht binnen einer Stunde, solange buttonup läuft; sofort geht es so: beenden und aufrufen: "];
    /// Where none may be erased yet.
    pub erased_on_that_day = "On that day they are erased while buttonup runs: nothing to press.", "An dem Tag werden sie gelöscht, solange buttonup läuft: nichts zu drücken.";
    /// Until when an erasure waits.
    pub until_vehicle_has_left = "waits until the vehicle has left", "wartet, bis das Fahrzeug fort ist";
    /// Until when an erasure waits.
    pub kept_until(day) = "records are kept until {day}", "Unterlagen bleiben bis {day}";
    /// Until when an erasure waits.
    pub from_then_on(day) = "from {day} on", "ab {day}";
    /// How old a copy is.
    pub less_than_a_day = "less than a day ago", "vor weniger als einem Tag";
    /// How old a copy is.
    pub days_ago(n) = ["{n} day ago", "{n} days ago"], ["vor {n} Tag", "vor {n} Tagen"];
    /// A size.
    pub bytes(n) = "{n} bytes", "{n} Byte";

    /// Heading.
    pub words_of_this_shop = "Words of this shop", "Wörter dieser Werkstatt";
    /// Below that heading, where there are none.
    pub no_words_yet = "None yet. A word that is not known when something comes off can be told there.", "Noch keine. Ein Wort, das beim Ausbauen nicht bekannt ist, lässt sich dort erklären.";
    /// Below a word: what it stands for.
    pub means(what) = "means {what}", "heißt {what}";
    /// A press.
    pub forget_it = "Forget it", "Vergessen";
    /// Heading.
    pub working_alone = "Working alone", "Allein arbeiten";
    /// Below that heading; in quotes the owner's own words.
    pub alone_allowed(words) = "Who works alone checks by a second walk-round: “{words}”", "Wer allein arbeitet, prüft mit einem zweiten Rundgang: „{words}“";
    /// The press that ends it.
    pub not_any_more = "Not any more", "Nicht mehr";
    /// Small on that press.
    pub another_person_checks = "another person checks", "eine andere Person prüft";
    /// Below that heading, where it is not allowed.
    pub alone_hint = "Brakes, steering, wheels and the like are checked by another person. Where there is none, the owner can let one person walk back over the list after a pause, the other way round.", "Bremsen, Lenkung, Räder und dergleichen prüft eine andere Person. Wo es keine gibt, kann der Inhaber erlauben, dass eine Person nach einer Pause die Liste andersherum noch einmal durchgeht.";
    /// Label of a field.
    pub owners_word = "The owner's word", "In den Worten des Inhabers";
    /// Beside that field.
    pub owners_word_hint = "such as: I work alone on Saturdays", "z. B.: Samstags arbeite ich allein";
    /// A press.
    pub allow_it = "Allow it", "Erlauben";
}
