//! Price, approval, what was paid, how sure a price is, the books.

use phrases::phrases;

phrases! {
    /// Heading over what was agreed to.
    pub agreed = "Agreed", "Vereinbart";
    /// Heading over the payments; title of their page.
    pub money = "Money", "Geld";
    /// Where nothing was paid.
    pub nothing_paid_yet = "Nothing paid yet.", "Noch nichts bezahlt.";
    /// Under the sum with tax: what it is made of.
    pub net_and_tax(net, tax) = "{net} before tax, tax {tax}", "{net} ohne Steuer, Steuer {tax}";
    /// What was taken off in all.
    pub discount_before_tax = "Discount, before tax", "Nachlass, ohne Steuer";
    /// To how much they agreed.
    pub agreed_up_to_with_tax(amount) = "Agreed up to {amount} with tax",
        "Vereinbart bis {amount} mit Steuer";
    /// To how much they agreed.
    pub agreed_up_to_before_tax(amount) = "Agreed up to {amount} before tax",
        "Vereinbart bis {amount} ohne Steuer";
    /// How much the price is above what was agreed.
    pub amount_over(amount) = "{amount} over", "{amount} darüber";
    /// How much may still be charged of what was agreed.
    pub amount_left(amount) = "{amount} left", "noch {amount}";
    /// They paid more than it comes to.
    pub paid_too_much = "Paid too much", "Zu viel bezahlt";
    /// How much of it they get back.
    pub to_give_back(amount) = "{amount} to give back", "{amount} zurückzugeben";
    /// What is left to pay where it is paid in cash.
    pub in_cash = "In cash", "Bar";
    /// What cash is rounded by, to the smallest coin.
    pub by_coin = "Difference by coin", "Rundung beim Bargeld";
    /// What is to be paid later.
    pub account_to_come = "On account, still to come in", "Auf Rechnung, kommt noch";
    /// Heading over the complaints of an order.
    pub complaints = "Complaints", "Beanstandungen";
    /// What was found.
    pub cause_is(cause) = "Cause: {cause}", "Ursache: {cause}";
    /// What was done.
    pub correction_is(correction) = "Correction: {correction}", "Abhilfe: {correction}";
    /// What unfolds the form for one more complaint.
    pub another_complaint = "Another complaint", "Weitere Beanstandung";
    /// Label of that form.
    pub what_customer_says = "What the customer says", "Was der Kunde sagt";
    /// Its hint.
    pub in_their_words = "in their words", "in seinen Worten";
    /// Press of that form.
    pub open_it = "Open it", "Anlegen";
    /// Behind a yes: up to which amount.
    pub up_to(amount) = ", up to {amount}", ", bis {amount}";
    /// Behind a yes: up to which amount.
    pub up_to_with_tax(amount) = ", up to {amount} with tax", ", bis {amount} mit Steuer";
    /// Who answered, where nobody said who.
    pub somebody = "somebody", "jemand";
    /// Behind who answered: the number that was rung.
    pub called_number(number) = ", called {number}", ", angerufen: {number}";
    /// For which complaints an answer is.
    pub for_lines(lines) = "For: {lines}", "Für: {lines}";
    /// What somebody said.
    pub quoted(said) = "“{said}”", "„{said}“";
    /// Behind a payment: it is one before the work.
    pub is_deposit = ", deposit", ", Anzahlung";
    /// Where the invoice is written.
    pub invoice_is_written = "The invoice is written.", "Die Rechnung ist geschrieben.";
    /// Before an invoice: work of others that is charged nowhere.
    pub sublet_not_priced(what) = "{what}: not on the price yet", "{what}: noch nicht im Preis";
    /// Before an invoice: work of others that is charged nowhere, and what it costs the shop.
    pub sublet_cost_not_priced(what, cost) = "{what} costs us {cost}: not on the price yet",
        "{what} kostet uns {cost}: noch nicht im Preis";
    /// Press: the invoice is written.
    pub write_the_invoice = "Write the invoice", "Rechnung schreiben";
    /// An invoice by its number.
    pub invoice_numbered(number) = "Invoice {number}", "Rechnung {number}";
    /// An invoice by its number and day.
    pub invoice_of_day(number, day) = "Invoice {number} of {day}", "Rechnung {number} vom {day}";
    /// The same, and what it comes to.
    pub invoice_of_day_sum(number, day, sum) = "Invoice {number} of {day}: {sum}",
        "Rechnung {number} vom {day}: {sum}";
    /// The way to a credit note of it.
    pub take_some_back = "Take some of it back", "Etwas davon zurücknehmen";
    /// Heading over the form for a payment.
    pub money_in = "Money in", "Zahlung";
    /// Legend: who paid.
    pub from = "From", "Von wem";
    /// Label: how much was paid.
    pub amount = "Amount", "Betrag";
    /// Its hint.
    pub minus_gives_back = "a minus in front gives money back", "mit Minus davor geht Geld zurück";
    /// What it means to pay on account.
    pub on_account_means = "On account: they pay later, as agreed; it counts as paid.",
        "Auf Rechnung: gezahlt wird später, wie vereinbart; es gilt als bezahlt.";
    /// To tick: the payment is one before the work.
    pub it_is_a_deposit = "It is a deposit", "Das ist eine Anzahlung";
    /// Press of that form.
    pub record_payment = "Record payment", "Zahlung eintragen";
    /// Heading over the form for what was to be paid later.
    pub came_in_from_account = "It came in from the account", "Auf Rechnung, jetzt eingegangen";
    /// Its press.
    pub it_came_in = "It came in", "Eingegangen";
    /// Hint: whom the keys went to.
    pub empty_for_customer = "leave empty for the customer", "leer lassen, wenn an den Kunden";
    /// Label: the hook of the keys.
    pub where_they_hang = "Where they hang", "Wo sie hängen";
    /// Press: the shop has the keys.
    pub keys_taken_in = "Keys taken in", "Schlüssel angenommen";

    /// Title and heading of a credit note; its way.
    pub credit_note = "Credit note", "Rechnungs\u{ad}korrektur";
    /// What a credit note does.
    pub credit_note_does =
        "What is written here goes back to whoever paid. The invoice stays as it was written.",
        "Was hier steht, geht an den zurück, der gezahlt hat. Die Rechnung bleibt, wie sie geschrieben wurde.";
    /// Where there is no invoice.
    pub no_invoice_to_credit = "No invoice is written yet: change the price instead.",
        "Noch ist keine Rechnung geschrieben: stattdessen den Preis ändern.";
    /// Label: how much of an entry goes back.
    pub entry_goes_back(what) = "{what}, goes back", "{what}, geht zurück";
    /// Its hint.
    pub left_of(left, amount) = "{left} of {amount} is left", "{left} von {amount} übrig";
    /// To tick, of a core charge that goes back.
    pub tax_is_kept = "Its tax is kept, as some places want it for a core",
        "Die Steuer darauf bleibt, wie es mancherorts beim Altteilpfand gilt";
    /// Hint of the reason.
    pub stands_on_credit_note = "it stands on the credit note", "steht auf der Rechnungs\u{ad}korrektur";
    /// Press: the credit note is written.
    pub write_the_credit_note = "Write the credit note", "Rechnungs\u{ad}korrektur schreiben";
    /// Heading over those that were written.
    pub credit_notes = "Credit notes", "Rechnungs\u{ad}korrekturen";
    /// One by its number.
    pub credit_note_numbered(number) = "Credit note {number}", "Rechnungs\u{ad}korrektur {number}";
    /// Behind its day: of which invoice it is.
    pub of_invoice(number) = ", of invoice {number}", ", zu Rechnung {number}";

    /// Heading over the invoice and the payment in one.
    pub invoice_and_money = "Invoice and money", "Rechnung und Geld";
    /// Label: how much is paid at the door.
    pub paid_now = "Paid now", "Jetzt bezahlt";
    /// Its hint.
    pub before_it_leaves = "before it leaves", "bevor es geht";
    /// Press: the invoice is written and paid.
    pub invoice_paid = "Invoice, paid", "Rechnung, bezahlt";
    /// Press: the invoice is written, nothing is paid.
    pub invoice_only = "Invoice only", "Nur Rechnung";
    /// Label: the cause.
    pub what_was_found = "What was found", "Was gefunden wurde";
    /// Its hint.
    pub goes_on_invoice = "goes on the invoice", "kommt auf die Rechnung";
    /// Hint of what was done, where a text is proposed.
    pub goes_on_invoice_from = "goes on the invoice; from what was put on new and what differs now",
        "kommt auf die Rechnung; aus dem, was neu dran und was jetzt anders ist";
    /// What is proposed for it: the things that were put on new.
    pub new_things(things) = "New: {things}", "Neu: {things}";

    /// Hint of the hours: how the shop charges them.
    pub hours_hint(how) = "such as 3.67, {how}", "etwa 3,67, {how}";
    /// Behind that hint: what the clock says.
    pub clock_ran(hint, hours) = "{hint}; the clock ran {hours}", "{hint}; die Uhr lief {hours}";
    /// Heading over the fields for work.
    pub add_labour = "Add labour", "Arbeit dazu";
    /// Label: which work.
    pub what_for = "What for", "Wofür";
    /// Label: how many hours.
    pub hours = "Hours", "Stunden";
    /// Label: what an hour costs.
    pub an_hour = "An hour", "Je Stunde";
    /// What the work is called on the price if nobody named it.
    pub labour = "Labour", "Arbeit";
    /// Heading over the fields for a part or another thing.
    pub add_part_or_other = "Add a part or other", "Teil oder anderes dazu";
    /// Legend: what it is.
    pub what_sort = "What sort", "Art";
    /// A sort of what is charged.
    pub sort_part = "part", "Teil";
    /// A sort of what is charged.
    pub sort_test = "test", "Prüfung";
    /// A sort of what is charged: work that others did.
    pub sort_machine_work = "machine work", "Fremdarbeit";
    /// A sort of what is charged: what is used up at work.
    pub sort_supplies = "supplies", "Kleinmaterial";
    /// A sort of what is charged: for the old part until it goes back.
    pub sort_core = "core", "Altteilpfand";
    /// A sort of what is charged.
    pub sort_disposal = "disposal", "Entsorgung";
    /// A sort of what is charged.
    pub sort_other = "other", "anderes";
    /// Label: what one costs.
    pub unit_price = "Unit price, before tax", "Einzelpreis, ohne Steuer";
    /// Press: the price is as it stands here.
    pub set_the_price = "Set the price", "Preis festlegen";
    /// Choice of a rate: the one in the field above.
    pub rate_as_above = "as above", "wie oben";
    /// Legend: which of the shop's rates.
    pub which_rate = "Which rate", "Welcher Satz";
    /// Over what was charged by an invoice.
    pub on_invoice_stays(number, day, sum) = "On invoice {number} of {day}, and stays so: {sum}",
        "Auf Rechnung {number} vom {day}, und bleibt so: {sum}";
    /// Under an entry: what was taken off it.
    pub less(amount) = "Less {amount}", "Abzüglich {amount}";
    /// What unfolds the count and the price of an entry.
    pub change_count_or_price = "Change its count or price", "Menge oder Preis ändern";
    /// Legend over the complaints.
    pub added_belongs_to = "What is added belongs to", "Das Neue gehört zu";
    /// Legend: who pays for what is added.
    pub who_pays_for_it = "Who pays for it", "Wer dafür zahlt";
    /// Choice: whoever pays for the complaint.
    pub as_its_line = "as its line", "wie die Beanstandung";

    /// Heading over jobs that have one price.
    pub fixed_price_jobs = "Jobs at a fixed price", "Arbeiten zum Festpreis";
    /// Under such a job: the parts it needs.
    pub with_parts(parts) = "With {parts}", "Mit {parts}";
    /// What is used up at work, on the price.
    pub shop_supplies = "Shop supplies", "Kleinmaterial";
    /// What the fee is called on the price.
    pub disposal_of(what) = "Disposal, {what}", "Entsorgung, {what}";
    /// Heading over the fees for getting rid of things.
    pub disposal = "Disposal", "Entsorgung";
    /// Label: how many of these there are.
    pub how_many_of(what) = "{what}, how many", "{what}, wie viele";
    /// Its hint: what each costs.
    pub each_costs(amount) = "{amount} each", "je {amount}";
    /// Press: it is charged.
    pub put_on_price = "Put it on the price", "In den Preis nehmen";
    /// What unfolds the way from a cost to a price.
    pub price_from_cost = "A price from what it costs us", "Preis aus dem, was es uns kostet";
    /// Its label.
    pub it_costs_us = "It costs us", "Es kostet uns";
    /// To tick: others did it.
    pub it_is_machine_work = "It is machine work", "Es ist Fremdarbeit";
    /// Its press.
    pub work_out_price = "Work out the price", "Preis ausrechnen";
    /// What came of it.
    pub sold_for(price) = "Sold for {price}. It stands as the unit price above.",
        "Verkauft für {price}. Steht oben als Einzelpreis.";
    /// What unfolds the form for a discount.
    pub a_discount = "A discount", "Nachlass";
    /// Its label.
    pub how_much = "How much", "Wie viel";
    /// Its hint.
    pub percent_or_amount = "10 % or 15.00", "10 % oder 15,00";
    /// Legend: from what it is taken.
    pub off_what = "Off", "Worauf";
    /// Choice: from everything.
    pub off_all = "all that the customer pays", "auf alles, was der Kunde zahlt";
    /// Press: see what it comes to.
    pub work_it_out = "Work it out", "Ausrechnen";
    /// How much is taken off.
    pub amount_off(amount) = "{amount} off.", "{amount} Nachlass.";
    /// Under an entry: what it costs before the discount.
    pub now_amount(amount) = "now {amount}", "jetzt {amount}";
    /// Hint of the reason.
    pub stands_on_papers = "it stands on the papers", "steht auf den Papieren";
    /// Press: take the discount off.
    pub take_it_off = "Take it off", "Abziehen";
    /// What unfolds the exemption that stands.
    pub exempt_by(number) = "Exempt from taxes by {number}", "Von Steuern befreit durch {number}";
    /// What unfolds the form for an exemption.
    pub customer_is_exempt = "The customer is exempt from taxes",
        "Der Kunde ist von Steuern befreit";
    /// Its label.
    pub exemption_number = "The number they are exempt by", "Nummer der Befreiung";
    /// Its hint.
    pub stands_on_invoice = "it stands on the invoice", "steht auf der Rechnung";
    /// Its press.
    pub exempt = "Exempt", "Befreit";
    /// Beside that press.
    pub holds_from_now = "holds for prices set from now on", "gilt für Preise ab jetzt";
    /// Press: the exemption has ended.
    pub not_exempt = "Not exempt any more", "Nicht mehr befreit";

    /// Of a part or of work that others did: it is charged.
    pub on_the_price = "On the price", "Im Preis";
    /// What a part is called on the price: its name and the maker's number.
    pub part_and_number(part, number) = "{part}, no. {number}", "{part}, Nr. {number}";
    /// Hint of a price that follows from the cost.
    pub before_tax_from_cost = "before tax; from what it costs us",
        "ohne Steuer; aus dem, was es uns kostet";
    /// What the charge for the old part is called on the price.
    pub core_charge_for(part) = "Core charge, {part}", "Altteilpfand, {part}";
    /// What it is called as it goes back.
    pub core_back_for(part) = "Core back, {part}", "Altteilpfand zurück, {part}";
    /// The old part went back, its charge did not.
    pub core_still_charged = "Its core went back, and is still charged.",
        "Das Altteil ging zurück, das Pfand wird noch berechnet.";
    /// Press that mends it.
    pub take_core_off = "Take the core charge off", "Altteilpfand herausnehmen";
    /// Hint: what the work of others costs the shop.
    pub it_costs_us_amount(amount) = "it costs us {amount}", "es kostet uns {amount}";
    /// Of work that others did: it is charged nowhere.
    pub not_on_price_yet = "Not on the price yet", "Noch nicht im Preis";
    /// Label: what the customer pays for it.
    pub charged_for_it = "Charged for it, before tax", "Dafür berechnet, ohne Steuer";
    /// Before the names of the parts that the plan renews.
    pub by_plan_new = "By the plan these go on new: ", "Nach dem Plan kommen neu dran: ";
    /// Press: all of these are needed.
    pub they_are_needed = "They are needed", "Sie werden gebraucht";

    /// Whoever opens the page of asking for what the shop pays itself.
    pub nobody_is_asked = "nobody is asked about what the shop pays itself",
        "was die Werkstatt selbst zahlt, wird mit niemandem abgesprochen";
    /// Title of the page of asking; how a call stands: somebody has to be asked.
    pub ask_title = "Ask", "Fragen";
    /// Whom to ring.
    pub ring_number(number) = "Ring {number}", "Anrufen: {number}";
    /// The way to asking another payer; in the form of who is asked.
    pub ask_instead(whom) = "Ask {whom} instead", "Stattdessen {whom} fragen";
    /// Beside that way.
    pub has_to_be_asked = "has to be asked", "muss gefragt werden";
    /// Two answers that did not know of each other.
    pub two_answers(who) =
        "Two of us wrote down an answer of {who} at the same time. The lower one counts until somebody asks again.",
        "Zwei von uns haben gleichzeitig eine Antwort von {who} aufgeschrieben. Die niedrigere gilt, bis wieder jemand fragt.";
    /// Heading over what changed.
    pub since_they_agreed = "Since they last agreed", "Seit der letzten Zustimmung";
    /// What is charged now and was not.
    pub added_is(what) = "Added: {what}", "Neu: {what}";
    /// What was charged and is not now.
    pub no_longer(what) = "No longer: {what}", "Nicht mehr: {what}";
    /// Press: the price comes down to what was agreed.
    pub charge_no_more(amount, taxed) = "Charge {amount} {taxed} and no more",
        "{amount} {taxed} berechnen, nicht mehr";
    /// Beside that press.
    pub write_down_to_agreed = "write it down to what was agreed",
        "auf das Vereinbarte herabsetzen";
    /// What unfolds the rules of the shop's place.
    pub rules_of(place) = "Rules of {place}", "Regeln: {place}";
    /// As they were on a day.
    pub as_of(day) = "as of {day}", "Stand {day}";
    /// How much may be charged by these rules.
    pub may_charge_up_to(amount) = "Up to {amount} may be charged on this without asking again.",
        "Bis {amount} darf hier berechnet werden, ohne noch einmal zu fragen.";
    /// The rules allow nothing beyond.
    pub anything_above_asked = "Anything above what was agreed has to be asked for.",
        "Für alles über dem Vereinbarten muss gefragt werden.";
    /// How long papers are kept by these rules.
    pub papers_are_kept(years) = "Papers are kept for at least {years} years.",
        "Papiere werden mindestens {years} Jahre aufbewahrt.";
    /// Hint of a field: the rules want it.
    pub has_to_be_noted = "has to be noted here", "muss hier notiert werden";
    /// Legend: what they agree to.
    pub to_what = "To", "Wozu";
    /// Label: the most they will pay.
    pub up_to_in_all = "Up to, in all", "Höchstens, insgesamt";
    /// Its hint.
    pub most_they_pay = "the most they will pay, with what was agreed before",
        "was höchstens gezahlt wird, mit dem bisher Vereinbarten";
    /// The way to how sure that is.
    pub how_sure_is_that = "How sure is that?", "Wie sicher ist das?";
    /// To tick: tax is in the amount.
    pub includes_tax = "Amount includes tax", "Betrag mit Steuer";
    /// What unfolds what taking apart costs.
    pub strip_down = "Strip-down needed", "Zerlegen nötig";
    /// Its label.
    pub of_it_put_back = "Of it, putting it back if they then say no",
        "Davon der Zusammenbau, wenn dann abgelehnt wird";
    /// Its hint.
    pub pay_even_if_not = "they pay this much even if nothing is repaired",
        "so viel wird gezahlt, auch wenn nichts repariert wird";
    /// Label: the person who answered.
    pub who_answered = "Who answered", "Wer geantwortet hat";
    /// Label: the number that was rung.
    pub number_called = "Number called", "Angerufene Nummer";
    /// Label: what the money is for.
    pub parts_and_labour_for = "Parts and labour it is for", "Teile und Arbeit, um die es geht";
    /// Label: their words.
    pub what_was_said = "What was said", "Was gesagt wurde";
    /// What unfolds a sheet to sign on.
    pub here_and_sign = "They are here and sign", "Der Kunde ist da und unterschreibt";
    /// Legend over that sheet.
    pub signature = "Signature", "Unterschrift";
    /// What needs no field.
    pub noted_by_themselves = "The day and the hour are noted by themselves, and that you asked.",
        "Tag und Stunde werden von selbst notiert, und wer gefragt hat.";
    /// Before what the money is for, in what is kept of the answer.
    pub parts_and_labour = "Parts and labour: ", "Teile und Arbeit: ";
    /// Before what putting it back costs, in what is kept of the answer.
    pub putting_back = "Putting it back, if declined: ", "Zusammenbau, falls abgelehnt: ";
    /// Press: they say yes.
    pub approved = "Approved", "Zugestimmt";
    /// Legend over the complaints.
    pub for_which_complaints = "For which complaints", "Für welche Beanstandungen";
    /// Under that legend.
    pub none_ticked_means_all = "None ticked means all of them.", "Ohne Kreuz gilt es für alle.";

    /// Title of the page on how sure a price is.
    pub how_sure_title = "How sure", "Wie sicher";
    /// What the price would likely be if the snag did not come.
    pub without_snag(likely) = "Without the snag: {likely}", "Ohne das Problem: {likely}";
    /// Behind it: which amount is enough how often.
    pub amount_covers(amount, often) = "; {amount} covers it {often}", "; {amount} reicht {often}";
    /// Heading over amounts that are enough.
    pub what_covers_it = "What covers it", "Was reicht";
    /// How often the agreed amount is enough.
    pub agreed_covers(often) = "Agreed: covers it {often}", "Vereinbart: reicht {often}";
    /// Under an amount: how many hours it is, and that pressing it asks for it.
    pub hours_ask(hours) = "{hours} hours · ask for it", "{hours} Stunden · danach fragen";
    /// What the curve shows: the price, with tax or before it.
    pub price_taxed(taxed) = "price {taxed}", "Preis {taxed}";
    /// At a mark of the curve: how often it is enough.
    pub covers_it(often) = "covers it {often}", "reicht {often}";
    /// Heading over what makes the price unsure.
    pub what_drives_it = "What drives it", "Woran es liegt";
    /// What the per cents mean.
    pub how_much_narrower = "How much narrower it would be without. ",
        "So viel enger wäre es ohne das. ";
    /// Where nothing was learned yet.
    pub no_stage_timed = "No stage was timed here yet: this is the book with a wide doubt.",
        "Hier wurde noch kein Schritt gestoppt: das sind die Richtzeiten, noch ohne eigene Erfahrung.";
    /// From how much it was learned.
    pub learned_from(stages) = "Learned from {stages} timed stages.",
        "Gelernt aus {stages} gestoppten Schritten.";
    /// Heading over what may come.
    pub what_if = "What if", "Was wäre, wenn";
    /// A snag is counted in.
    pub one_snag_sure = "One snag comes for sure", "Ein Problem kommt sicher";
    /// Several snags are counted in.
    pub snags_sure(n) = "{n} snags come for sure", "{n} Probleme kommen sicher";
    /// Under it: when to press.
    pub take_one_out = "take one out, if its repair is on the price already",
        "eines herausnehmen, wenn seine Reparatur schon im Preis ist";
    /// Count a snag in.
    pub a_snag_comes = "A snag comes", "Ein Problem kommt";
    /// Count one more in.
    pub one_snag_more = "One snag more", "Ein Problem mehr";
    /// Under it: how long a snag takes.
    pub minutes_range(low, high, likely) = "{low} to {high} minutes, likely {likely}",
        "{low} bis {high} Minuten, wahrscheinlich {likely}";
    /// What unfolds the working.
    pub how_it_was_found = "How it was found", "Wie gerechnet wurde";
    /// Where it was kept what was said.
    pub estimate_was_kept =
        "An estimate was given and kept. The first one is scored when the vehicle has left.",
        "Ein Kostenvoranschlag wurde genannt und festgehalten. Der erste wird bewertet, wenn das Fahrzeug weg ist.";
    /// The way to the score of all, and its heading.
    pub how_good = "How good are our estimates?", "Wie gut sind unsere Kosten\u{ad}voranschläge?";
    /// Press: keep what was said.
    pub keep_as_told = "Keep as told", "So speichern";
    /// Beside that press.
    pub scored_when_left = "it is scored when the vehicle has left",
        "wird bewertet, wenn das Fahrzeug weg ist";
    /// Title of the score.
    pub estimates = "Estimates", "Kosten\u{ad}voranschläge";
    /// What the score counts.
    pub what_is_scored =
        "The first estimate kept on each order, against what it came to. None is worked out again.",
        "Der erste festgehaltene Kostenvoranschlag jedes Auftrags gegen das, was es wurde. Keiner wird neu gerechnet.";
    /// Heading of the score, part by part.
    pub by_sort = "By sort of work", "Nach Art der Arbeit";
    /// Heading of the score, part by part.
    pub by_who = "By who worked on it", "Nach Mechaniker";
    /// How many were scored.
    pub estimates_count(n) = ["{n} estimate", "{n} estimates"],
        ["{n} Kostenvoranschlag", "{n} Kostenvoranschläge"];
    /// At a row of a drawing: how often it was said to be enough.
    pub said_of_ten(n) = "said {n} of 10", "gesagt {n} von 10";
    /// At the same row: how often it was.
    pub came_to_less(n) = "{n} of 10 came to that or less",
        "{n} von 10 wurden so viel oder weniger";
    /// Title of that drawing.
    pub said_and_came = "What was said, and how often it came so",
        "Was gesagt wurde und wie oft es so kam";
    /// Under its scale.
    pub of_ten = "of 10", "von 10";
    /// The score cannot be told yet.
    pub too_few(n, needed) =
        ["{n} estimate so far: too few to judge, {needed} are needed.", "{n} estimates so far: too few to judge, {needed} are needed."],
        ["Bisher {n} Kostenvoranschlag: zu wenig für ein Urteil, es braucht {needed}.", "Bisher {n} Kostenvoranschläge: zu wenig für ein Urteil, es braucht {needed}."];
    /// The score: as it was said.
    pub eight_in_ten = "Eight in ten were eight in ten.", "Passt: acht von zehn lagen im genannten Bereich.";
    /// The score: what was said was too sure.
    pub too_narrow = "Too narrow: more fell outside than was said.",
        "Zu eng: es lagen mehr außerhalb als gesagt.";
    /// The score: what was said was too unsure.
    pub too_wide = "Too wide: fewer fell outside than was said.",
        "Zu weit: es lagen weniger außerhalb als gesagt.";
    /// How many of a hundred were to lie within.
    pub said_within(n) = "{n} of 100 were said to lie within", "{n} von 100 sollten darin liegen";
    /// How many did not.
    pub below_above(below, above) = "{below} came out below, {above} above",
        "{below} lagen darunter, {above} darüber";
    /// How many did.
    pub inside_of(inside, all) = "{inside} of {all}", "{inside} von {all}";

    /// Title of the month's money.
    pub books = "Books", "Bücher";
    /// No list is called so; the name comes in quotation marks.
    pub no_list_called(name) = "there is no list called {name}", "keine Liste heißt {name}";
    /// Heading over the invoices of a month; the list of them.
    pub invoices = "Invoices", "Rechnungen";
    /// Where there are none.
    pub none_written = "None was written.", "Keine geschrieben.";
    /// What has no number of its own: by its order.
    pub order_numbered(number) = "order {number}", "Auftrag {number}";
    /// Behind a credit note's day: its invoice.
    pub of_that_invoice(number) = ", of {number}", ", zu {number}";
    /// The sum without tax.
    pub sum_before_tax = "Before tax", "Ohne Steuer";
    /// The tax.
    pub tax = "Tax", "Steuer";
    /// The sum with tax.
    pub total = "Total", "Summe";
    /// Heading over each tax; the list of them.
    pub taxes = "Taxes", "Steuern";
    /// From which sum a tax is.
    pub on_base(base) = "on {base}", "auf {base}";
    /// From which sum a tax would be, and is not.
    pub on_base_exempt(base) = "on {base}, exempt", "auf {base}, befreit";
    /// Heading over what was paid in a month.
    pub came_in = "Came in", "Eingegangen";
    /// Where nothing was.
    pub nothing_was_paid = "Nothing was paid.", "Nichts wurde bezahlt.";
    /// What unfolds the payments of this day.
    pub today = "Today", "Heute";
    /// What unfolds all payments.
    pub each_payment = "Each payment", "Jede Zahlung";
    /// Heading over invoices that are open.
    pub not_paid_yet = "Not paid yet", "Noch nicht bezahlt";
    /// Where there are none.
    pub every_invoice_paid = "Every invoice is paid.", "Jede Rechnung ist bezahlt.";
    /// Where nothing is ticked as the form is sent.
    pub tick_what_was_paid = "Tick what was paid", "Ankreuzen, was bezahlt wurde";
    /// Legend over the open invoices.
    pub what_was_paid = "What was paid", "Was bezahlt wurde";
    /// Behind the day of an invoice: it is paid later.
    pub is_on_account = ", on account", ", auf Rechnung";
    /// Legend: in which way.
    pub paid_by = "Paid by", "Bezahlt mit";
    /// Press: those are paid.
    pub paid_as_ticked = "Paid as ticked", "Angekreuztes ist bezahlt";
    /// Beside that press.
    pub in_full = "in full", "ganz";
    /// Heading over the lists as files.
    pub for_bookkeeper = "For whoever keeps the books", "Für die Buchhaltung";
    /// A list as a file.
    pub payments = "Payments", "Zahlungen";
    /// A month and its year.
    pub month_and_year(month, year) = "{month} {year}", "{month} {year}";
    /// A month.
    pub january = "January", "Januar";
    /// A month.
    pub february = "February", "Februar";
    /// A month.
    pub march = "March", "März";
    /// A month.
    pub april = "April", "April";
    /// A month.
    pub may = "May", "Mai";
    /// A month.
    pub june = "June", "Juni";
    /// A month.
    pub july = "July", "Juli";
    /// A month.
    pub august = "August", "August";
    /// A month.
    pub september = "September", "September";
    /// A month.
    pub october = "October", "Oktober";
    /// A month.
    pub november = "November", "November";
    /// A month.
    pub december = "December", "Dezember";

    /// Title of a sale without a vehicle, and the way to it.
    pub sale = "Sale", "Verkauf";
    /// Its heading.
    pub sale_over_counter = "Sale over the counter", "Verkauf über die Theke";
    /// What whoever buys without a name is called in the record.
    pub counter_sale = "Counter sale", "Thekenverkauf";
    /// What stands in a vehicle's place in the record.
    pub over_the_counter_record = "Over the counter", "Über die Theke";
    /// What stands for cause and for what was done.
    pub sold_over_counter = "sold over the counter", "über die Theke verkauft";
    /// Label: who buys it.
    pub buyer = "Buyer", "Käufer";
    /// Its hint.
    pub buyer_hint = "leave empty where nobody needs a name on the bill",
        "leer lassen, wenn kein Name auf die Rechnung muss";
    /// Press: go on to the invoice.
    pub to_the_bill = "To the bill", "Zur Rechnung";
    /// Hint of what is sold.
    pub sale_hint = "such as wiper blades, pair", "etwa Wischerblätter, Paar";
    /// Label: what one costs.
    pub price_of_one = "Price of one, before tax", "Preis für eins, ohne Steuer";
    /// What unfolds the fields of a further thing.
    pub one_thing_more = "One thing more", "Noch etwas";
}
