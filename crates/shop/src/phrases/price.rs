//! What is wrong with a rule of prices or with a figure, and how it is mended.

use phrases::phrases;

phrases! {
    /// What is wrong with an amount.
    pub amount_below_nought(amount) = "{amount} is below nought", "{amount} ist unter null";
    /// How it is mended.
    pub write_nought_or_more = "write an amount of nought or more", "einen Betrag ab null schreiben";
    /// What is wrong with an amount.
    pub amount_too_large(amount) = "{amount} is too large", "{amount} ist zu groß";
    /// How a figure beyond all measure is mended.
    pub a_digit_too_many = "look for a digit too many", "prüfen, ob eine Ziffer zu viel ist";
    /// What is wrong with a per cent.
    pub percent_below_nought(percent) = "{percent} % is below nought", "{percent} % sind unter null";
    /// How it is mended.
    pub write_percent_from_nought = "write a per cent of nought or more", "Prozent ab null schreiben";
    /// What is wrong with a per cent.
    pub percent_too_much(percent) = "{percent} % is too much", "{percent} % sind zu viel";
    /// How it is mended.
    pub write_at_most_percent(most) = "write at most {most} %, as 7.5 for 7.5 %", "höchstens {most} % schreiben, etwa 7,5 für 7,5 %";
    /// What is wrong with the smallest coin.
    pub no_coin(smallest) = "{smallest} is no coin", "{smallest} ist keine Münze";
    /// How it is mended.
    pub write_coin_or_empty = "write what the smallest coin is worth, such as 0.05, or leave it empty", "schreiben, was die kleinste Münze wert ist, etwa 0,05, oder leer lassen";
    /// What is wrong with the smallest coin.
    pub below_the_unit(smallest) = "{smallest} is less than the currency's smallest unit", "{smallest} ist weniger als die kleinste Einheit der Währung";
    /// How it is mended.
    pub write_it_with_digits(digits) = "write it with at most {digits} digits after the point", "mit höchstens {digits} Stellen nach dem Komma schreiben";
    /// What is wrong with the smallest coin.
    pub more_than_a_coin(smallest) = "{smallest} is more than a coin is worth", "{smallest} ist mehr, als eine Münze wert ist";
    /// How it is mended.
    pub write_coin = "write what the smallest coin is worth, such as 0.05", "schreiben, was die kleinste Münze wert ist, etwa 0,05";
    /// What is wrong with a rate beside the shop's own.
    pub rate_for_nothing = "it says neither for which work nor for whom", "es steht nicht dabei, für welche Arbeit oder für wen";
    /// How it is mended.
    pub name_work_or_grade = "name the work or the grade, or change the shop's own rate", "die Arbeit oder die Stufe nennen, oder den Satz der Werkstatt ändern";
    /// What is wrong with a rate beside the shop's own.
    pub same_rate = "another rate is for the same work and grade", "ein anderer Satz gilt für dieselbe Arbeit und Stufe";
    /// How it is mended.
    pub leave_one_out = "leave one of them out", "einen davon weglassen";
    /// Which hours are not known.
    pub book_not_known = "the book time is not known", "die Richtzeit ist nicht bekannt";
    /// How it is mended.
    pub give_book_time = "give the book time, or charge by the other", "die Richtzeit angeben, oder nach Uhr abrechnen";
    /// Which hours are not known.
    pub clock_not_known = "the clock time is not known", "die Zeit nach Uhr ist nicht bekannt";
    /// How it is mended.
    pub give_clock_time = "give the clock time, or charge by the other", "die Zeit nach Uhr angeben, oder nach Richtzeit abrechnen";
    /// What is wrong with minutes.
    pub minutes_too_long(minutes) = "{minutes} minutes are more than any job takes", "{minutes} Minuten sind mehr, als je eine Arbeit dauert";
    /// What is wrong with a rate.
    pub hour_below_nought(hour) = "{hour} an hour is below nought", "{hour} je Stunde ist unter null";
    /// How it is mended.
    pub write_what_an_hour_costs = "write what an hour costs; a discount stands on the line it is for", "schreiben, was eine Stunde kostet; ein Nachlass steht in der Zeile, für die er gilt";
    /// What is wrong with a rate.
    pub hour_too_much(hour) = "{hour} an hour is too much", "{hour} je Stunde ist zu viel";
    /// What is wrong with the shop supplies.
    pub of_what_percent = "it is not said of what they are a per cent", "wovon die Prozente gelten, ist nicht angegeben";
    /// How it is mended.
    pub tick_labour_or_parts = "tick labour, parts, or both", "Arbeit, Teile oder beides ankreuzen";
    /// What is wrong with the shop supplies.
    pub of_themselves = "they can't be a per cent of themselves", "Kleinmaterial kann nicht Prozente von sich selbst sein";
    /// How it is mended.
    pub take_supplies_out = "take shop supplies out", "Kleinmaterial herausnehmen";
    /// What is wrong with a fee for disposal.
    pub of_what = "it is not said of what", "wovon, ist nicht angegeben";
    /// How it is mended.
    pub write_what_is_got_rid_of = "write what is got rid of, such as waste oil", "schreiben, was entsorgt wird, etwa Altöl";
    /// What is wrong with a core that came back; what the line is.
    pub not_a_core_charge(charge) = "that line is {charge}, not a core charge", "diese Zeile ist {charge}, kein Altteilpfand";
    /// How it is mended.
    pub choose_the_core_charge = "choose the line of the core charge", "die Zeile mit dem Altteilpfand wählen";
    /// What is wrong with cores that came back.
    pub none_came_back = "none came back", "keines kam zurück";
    /// How it is mended.
    pub count_the_cores = "count the cores that came back", "die Altteile zählen, die zurückkamen";
    /// What is wrong with cores that came back.
    pub more_came_back(pieces, charged) = "{pieces} came back, and {charged} were charged", "{pieces} kamen zurück, und {charged} wurden berechnet";
    /// How it is mended.
    pub count_again = "count again, or choose the other line", "noch einmal zählen, oder die andere Zeile wählen";
    /// A sum beyond all measure.
    pub sum_not_reckoned = "the sum can't be reckoned", "die Summe lässt sich nicht berechnen";
    /// How it is mended.
    pub look_at_quantities = "the sum is too large to be reckoned; look at quantities, prices and taxes again", "die Summe ist zu groß zum Rechnen; Mengen, Preise und Steuern noch einmal ansehen";
    /// What is wrong with a deposit.
    pub more_than_in_all(asked, total) = "{asked} is more than the {total} in all", "{asked} ist mehr als die {total} im Ganzen";
    /// How it is mended.
    pub ask_for_less = "ask for less", "weniger verlangen";
    /// What is wrong with a discount.
    pub more_than_there(taken, there) = "{taken} is more than the {there} there is", "{taken} ist mehr als die {there}, die da sind";
    /// How it is mended.
    pub take_off_less = "take off less", "weniger nachlassen";
    /// What is wrong with a margin.
    pub nothing_for_the_cost(margin) = "{margin} % of the price leaves nothing for the cost", "{margin} % vom Preis lassen für den Einkauf nichts übrig";
    /// How it is mended.
    pub write_less_or_markup = "write less than 100, or say markup if it is a per cent of the cost", "weniger als 100 schreiben, oder Aufschlag wählen, wenn es Prozent vom Einkauf sind";
    /// What is wrong with a band of costs.
    pub no_end = "it has no end, and others stand after it", "sie hat kein Ende, und danach stehen andere";
    /// How it is mended.
    pub put_it_last = "put it last, or say up to which cost it goes", "ans Ende setzen, oder angeben, bis zu welchem Einkauf sie geht";
    /// What is wrong with a band of costs.
    pub ends_before(up_to, below) = "it ends at {up_to}, and the one before at {below}", "sie endet bei {up_to}, und die davor bei {below}";
    /// How it is mended.
    pub put_bands_in_order = "put the bands in order, the lowest cost first", "die Stufen ordnen, der niedrigste Einkauf zuerst";
    /// What is wrong with a cost.
    pub no_band(cost) = "no band goes as far as {cost}", "keine Stufe reicht bis {cost}";
    /// How it is mended.
    pub write_price_or_add_band = "write the price itself, or add a band with no end", "den Preis selbst schreiben, oder eine Stufe ohne Ende anlegen";
    /// What is wrong with a price.
    pub price_too_large = "the price is too large", "der Preis ist zu groß";
    /// What is wrong with a job at a fixed price.
    pub price_is_nought = "it is nought", "er ist null";
    /// How it is mended.
    pub write_what_it_costs = "write what the job costs, parts and labour", "schreiben, was die Arbeit kostet, mit Teilen";
    /// What is wrong with a part of a job at a fixed price.
    pub none_goes_in = "none goes in", "es kommt keines hinein";
    /// How it is mended.
    pub write_how_many = "write how many go in", "schreiben, wie viele hineinkommen";
    /// What is wrong with a job at a fixed price.
    pub parts_come_to_more(parts, price) = "its parts come to {parts}, more than the {price} of the job", "die Teile ergeben {parts}, mehr als die {price} der Arbeit";
    /// The same: the sum of its parts is beyond all measure.
    pub too_much = "too much", "zu viel";
    /// How it is mended.
    pub raise_the_price = "raise the price, or lower what the parts count for", "den Preis erhöhen, oder senken, womit die Teile zählen";
    /// What is wrong with a credit note.
    pub nothing_back = "nothing is taken back on it", "darauf wird nichts zurückgenommen";
    /// How it is mended.
    pub write_how_much_back = "write on each line how much goes back", "zu jeder Zeile schreiben, wie viel zurückgeht";
    /// What is wrong with a credit note.
    pub no_such_line(n) = "the invoice has {n} lines", "die Rechnung hat {n} Zeilen";
    /// How it is mended.
    pub choose_one = "choose one of them", "eine davon wählen";
    /// What is wrong with a credit note.
    pub line_twice = "it stands there twice", "sie steht zweimal da";
    /// How it is mended.
    pub put_both_together = "put both together", "beide zusammenfassen";
    /// What is wrong with an amount.
    pub not_in_coins(amount) = "{amount} is not in whole coins", "{amount} geht nicht in ganzen Münzen auf";
    /// How it is mended.
    pub write_at_most_digits(digits) = "write at most {digits} digits after the point", "höchstens {digits} Stellen nach dem Komma schreiben";
    /// What is wrong with a credit note.
    pub more_than_left(amount, left) = "{amount} goes back, and {left} is left of it", "{amount} sollen zurückgehen, und {left} sind davon übrig";
    /// How it is mended.
    pub take_back_what_is_left = "take back at most what is left", "höchstens zurücknehmen, was übrig ist";
    /// What is wrong with taxes.
    pub so_many_taxes(taxes) = "{taxes} of them", "{taxes} sind es";
    /// How it is mended.
    pub keep_to(most) = "keep to {most}", "bei {most} bleiben";
    /// What is wrong with a tax.
    pub no_name = "it has no name", "der Name fehlt";
    /// How it is mended.
    pub write_what_papers_call_it = "write what papers call it", "schreiben, wie sie auf Papieren heißt";
    /// What is wrong with a tax.
    pub tax_twice(name) = "{name} stands there twice", "{name} steht zweimal da";
    /// How it is mended.
    pub own_names = "give each tax a name of its own, with its rate if need be", "jeder Steuer einen eigenen Namen geben, notfalls mit dem Satz";
    /// What is wrong with an exemption.
    pub no_such_tax(name) = "there is no tax {name}", "eine Steuer {name} gibt es nicht";
    /// How it is mended.
    pub name_a_tax = "name one of the taxes, or none for all of them", "eine der Steuern nennen, oder keine für alle";

    /// Where something is wrong: the rate of an hour.
    pub rate = "rate", "Stundensatz";
    /// Where something is wrong: a rate beside the shop's own, by its number.
    pub rate_number(n) = "rate {n}", "Satz {n}";
    /// Where something is wrong: a band of costs.
    pub band(n) = "band {n}", "Stufe {n}";
    /// Where something is wrong.
    pub markup = "markup", "Aufschlag";
    /// Where something is wrong.
    pub margin = "margin", "Marge";
    /// Where something is wrong: what a part is at least dearer.
    pub least_on_top = "least on top", "Mindestaufschlag";
    /// Where something is wrong: what a part costs the shop.
    pub cost = "cost", "Einkauf";
    /// Where something is wrong.
    pub price = "price", "Preis";
    /// Where something is wrong: the hours that are charged.
    pub hours = "hours", "Stunden";
    /// Where something is wrong.
    pub shop_supplies = "shop supplies", "Kleinmaterial";
    /// Where something is wrong.
    pub disposal = "disposal", "Entsorgung";
    /// Where something is wrong: what is got rid of.
    pub disposal_of(what) = "disposal of {what}", "Entsorgung von {what}";
    /// Where something is wrong: a core that came back.
    pub core = "core", "Altteil";
    /// Where something is wrong: a job at a fixed price.
    pub price_of_the_job = "price of the job", "Preis der Arbeit";
    /// Where something is wrong: a part of a job at a fixed price.
    pub part(n) = "part {n}", "Teil {n}";
    /// Where something is wrong.
    pub discount = "discount", "Nachlass";
    /// Where something is wrong.
    pub discount_on_the_order = "discount on the order", "Nachlass auf den Auftrag";
    /// Where something is wrong.
    pub deposit = "deposit", "Anzahlung";
    /// Where something is wrong.
    pub taxes = "taxes", "Steuern";
    /// Where something is wrong.
    pub tax(n) = "tax {n}", "Steuer {n}";
    /// Where something is wrong.
    pub exempt_from = "exempt from", "befreit von";
    /// Where something is wrong.
    pub smallest_coin = "smallest coin", "kleinste Münze";
    /// Where something is wrong.
    pub credit_note = "credit note", "Rechnungskorrektur";
    /// Where something is wrong: a line of the invoice that is credited.
    pub line(n) = "line {n}", "Zeile {n}";
    /// Where something is wrong: the rules for parts.
    pub parts = "parts", "Teile";
    /// Where something is wrong: the rules for work that others do.
    pub work_sent_out = "work sent out", "Fremdarbeit";
    /// What a line is charged for.
    pub labour = "labour", "Arbeit";
    /// What a line is charged for.
    pub a_part = "part", "Ersatzteil";
    /// What a line is charged for.
    pub core_charge = "core charge", "Altteilpfand";
    /// What a line is charged for.
    pub test = "test", "Prüfung";
    /// What a line is charged for.
    pub fee = "fee", "Gebühr";

    /// What is wrong with a line of the price.
    pub more_than_500 = "more than 500 entries", "mehr als 500 Zeilen";
    /// How it is mended.
    pub put_some_together = "put some together", "einige zusammenfassen";
    /// What is wrong with a line of the price.
    pub quantity_above_nought = "the quantity must be more than 0", "die Menge muss über 0 sein";
    /// What is wrong with a line of the price.
    pub rate_below_nought = "a rate below nought", "ein Satz unter null";
    /// How it is mended.
    pub as_another_charge = "take the amount off as another charge", "den Betrag in einer anderen Zeile abziehen";
    /// What is wrong with a line of the price.
    pub line_too_large = "the amount is too large", "der Betrag ist zu groß";
    /// How it is mended.
    pub look_at_quantity = "look at quantity and price again", "Menge und Preis noch einmal ansehen";
    /// What is wrong with a line of the price.
    pub discount_below_nought = "a discount below nought", "ein Nachlass unter null";
    /// How it is mended.
    pub more_on_the_price = "write more on the price instead", "stattdessen den Preis erhöhen";
    /// What is wrong with a line of the price.
    pub more_off_than_there = "more is taken off than it comes to", "es wird mehr nachgelassen, als sie ausmacht";
    /// What is wrong with a line of the price.
    pub on_an_invoice = "it is on an invoice, and that stays as it is", "sie steht auf einer Rechnung, und die bleibt, wie sie ist";
    /// How it is mended.
    pub leave_it_out = "leave it out", "weglassen";

    /// Where something is wrong, in the books of a month.
    pub the_sum = "the sum", "die Summe";
    /// How a sum beyond all measure is mended, in the books of a month.
    pub look_at_the_price_again = "look at the order's price again", "den Preis des Auftrags noch einmal ansehen";
}
