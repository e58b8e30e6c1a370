//! How a sum was found, in words: what stands in a working of prices.

use phrases::phrases;

phrases! {
    /// Title of a working: what a payer's entries and taxes come to.
    pub what_it_comes_to = "What it comes to", "Was es ergibt";
    /// Line of a working: the discount down to what was agreed.
    pub written_down = "written down, before tax", "nachgelassen, ohne Steuer";
    /// Line of a working, and the left side of its formula.
    pub total = "total", "Summe";
    /// Formula of the total.
    pub before_tax_and_tax = "before tax + tax", "ohne Steuer + Steuer";
    /// What went into a total.
    pub before_tax = "before tax", "ohne Steuer";
    /// What went into a total, and the left side of a tax's formula.
    pub tax = "tax", "Steuer";
    /// Left side of an entry's formula.
    pub amount = "amount", "Betrag";
    /// Formula of an entry.
    pub quantity_times_price = "quantity × price of one, rounded half away from zero",
        "Menge × Einzelpreis, kaufmännisch gerundet";
    /// Formula of an entry with a discount.
    pub quantity_times_price_less = "quantity × price of one, rounded half away from zero, less what is taken off",
        "Menge × Einzelpreis, kaufmännisch gerundet, abzüglich Nachlass";
    /// What went into an entry.
    pub quantity = "quantity", "Menge";
    /// What went into an entry, and a line of the working of a price from its cost.
    pub price_of_one = "price of one", "Einzelpreis";
    /// What went into an entry: its share of what is taken off the whole order.
    pub share_of_the_discount = "its share of the discount on the order", "sein Anteil am Nachlass auf den Auftrag";
    /// What went into an entry.
    pub discount = "discount", "Nachlass";
    /// Formula of a tax on top of the price.
    pub tax_on_top = "sum it falls on × per cent ÷ 100", "Grundlage × Prozent ÷ 100";
    /// Formula of a tax on top of the price and of other taxes.
    pub tax_on_taxes = "sum it falls on, with the taxes before it × per cent ÷ 100",
        "Grundlage mit den Steuern davor × Prozent ÷ 100";
    /// Formula of a tax that the price holds already.
    pub tax_taken_out = "taken out of the price: price × per cent ÷ (100 + per cent in the price)",
        "aus dem Preis herausgerechnet: Preis × Prozent ÷ (100 + Prozent im Preis)";
    /// Formula of a tax that the price holds already, on other taxes.
    pub tax_taken_out_of_taxes = "taken out of the price, on the taxes before it",
        "aus dem Preis herausgerechnet, auf die Steuern davor";
    /// Behind a tax's formula, how it was rounded.
    pub rounded_once(what, how) = "{what}, {how}, once", "{what}, {how}, einmal";
    /// Behind a tax's formula, how it was rounded.
    pub rounded_each_line(what, how) = "{what}, {how}, on each line", "{what}, {how}, in jeder Zeile";
    /// What went into a tax.
    pub falls_on = "sum it falls on", "Grundlage";
    /// What went into a tax.
    pub per_cent = "per cent", "Prozent";
    /// Beside a tax that is not asked.
    pub not_asked = "not asked: the payer is exempt", "entfällt: Zahler ist befreit";

    /// Which way a sum is rounded.
    pub half_up = "rounded, half up", "kaufmännisch gerundet";
    /// Which way a sum is rounded.
    pub half_down = "rounded, half down", "gerundet, Hälften ab";
    /// Which way a sum is rounded.
    pub half_even = "rounded, half to even", "gerundet, Hälften zur geraden Ziffer";
    /// Which way a sum is rounded.
    pub down = "rounded down", "abgerundet";
    /// Which way a sum is rounded.
    pub up = "rounded up", "aufgerundet";

    /// What an entry is: work.
    pub labour = "labour", "Arbeit";
    /// What an entry is.
    pub part = "part", "Ersatzteil";
    /// What an entry is: done elsewhere.
    pub work_sent_out = "work sent out", "Fremdarbeit";
    /// What an entry is.
    pub shop_supplies = "shop supplies", "Kleinmaterial";
    /// What an entry is: money back for the old part.
    pub core_charge = "core charge", "Altteilpfand";
    /// What an entry is: a test at a fixed price.
    pub test = "test", "Prüfung";
    /// What an entry is.
    pub fee = "fee", "Gebühr";
    /// What an entry is: getting rid of oil, tyres, a battery.
    pub disposal = "disposal", "Entsorgung";

    /// Title of a working: shop supplies.
    pub shop_supplies_title = "Shop supplies", "Kleinmaterial";
    /// Left side of a formula.
    pub supplies = "supplies", "Kleinmaterial";
    /// Formula of shop supplies.
    pub per_cent_of_what_they_go_with = "per cent of what they go with, at most the cap",
        "Prozent von dem, wozu es gehört, höchstens der Höchstbetrag";
    /// What went into shop supplies: the most they may be.
    pub cap = "cap", "Höchstbetrag";
    /// Beside shop supplies.
    pub cap_counts(full) = "the cap counts; without it {full}", "der Höchstbetrag gilt; ohne ihn {full}";

    /// Title of a working: a job at a fixed price.
    pub fixed_price_job = "Fixed-price job", "Arbeit zum Festpreis";
    /// Line of a working: what a job's price leaves for work.
    pub labour_within_it = "labour within it", "Arbeit darin";
    /// Formula of it.
    pub price_less_its_parts = "price of the job − its parts", "Festpreis − Teile";
    /// What went into it.
    pub price_of_the_job = "price of the job", "Festpreis";
    /// What went into it.
    pub its_parts = "its parts", "Teile";

    /// Title of a working: hours and what one costs.
    pub labour_title = "Labour", "Arbeit";
    /// Minutes that nobody gave.
    pub not_known = "not known", "nicht bekannt";
    /// A number of minutes.
    pub minutes(n) = "{n} min", "{n} min";
    /// Beside the price of an hour: which rate it is.
    pub own_rate = "the shop's own rate", "Stundensatz der Werkstatt";
    /// Beside the price of an hour: which work and grade it is for.
    pub rate_for(what) = "the rate for {what}", "Satz für {what}";
    /// Line of a working.
    pub time_charged = "time charged", "berechnete Zeit";
    /// Left side of a formula.
    pub minutes_name = "minutes", "Minuten";
    /// What went into the time charged: the time of the book.
    pub book = "book", "Richtzeit";
    /// What went into the time charged: the time that the clock showed.
    pub clock = "clock", "Uhr";
    /// Line of a working.
    pub price_of_an_hour = "price of an hour", "Preis je Stunde";
    /// How the time charged was found.
    pub book_time = "book time", "Richtzeit";
    /// How the time charged was found.
    pub clock_time = "clock time", "Zeit nach Uhr";
    /// How the time charged was found.
    pub lesser_time = "the lesser of book time and clock time", "die kürzere von Richtzeit und Zeit nach Uhr";

    /// Title of a working.
    pub price_from_cost = "Price from cost", "Preis aus dem Einkauf";
    /// Left side of a formula.
    pub price = "price", "Preis";
    /// What goes on top of a cost.
    pub markup_of(percent) = "{percent} % markup", "{percent} % Aufschlag";
    /// What goes on top of a cost.
    pub margin_of(percent) = "{percent} % margin", "{percent} % Marge";
    /// Formula of a price.
    pub cost_and_markup = "cost × (100 + markup) ÷ 100, rounded half up",
        "Einkauf × (100 + Aufschlag) ÷ 100, kaufmännisch gerundet";
    /// Formula of a price.
    pub cost_and_margin = "cost × 100 ÷ (100 − margin), rounded half up",
        "Einkauf × 100 ÷ (100 − Marge), kaufmännisch gerundet";
    /// What went into a price.
    pub cost = "cost", "Einkauf";
    /// What went into a price: markup or margin.
    pub on_top = "on top", "darauf";
    /// What went into a price.
    pub least_on_top = "least on top", "mindestens darauf";
    /// Beside a price.
    pub least_counts = "the least on top counts", "der Mindestaufschlag gilt";

    /// Title of a working: a sum paid in cash.
    pub in_cash = "In cash", "Bar";
    /// Line of a working.
    pub paid_in_cash = "paid in cash", "bar bezahlt";
    /// Left side of a formula.
    pub paid = "paid", "bezahlt";
    /// Formula of what is paid in cash; how it is rounded follows.
    pub sum_in_coins(how) = "sum, in whole coins, {how}", "Summe in ganzen Münzen, {how}";
    /// What went into what is paid in cash.
    pub sum = "sum", "Summe";
    /// What went into what is paid in cash.
    pub smallest_coin = "smallest coin", "kleinste Münze";
    /// Beside what is paid in cash.
    pub difference(amount) = "difference {amount}", "Unterschied {amount}";

    /// Title of a working: a credit note.
    pub what_goes_back = "What goes back", "Was zurückgeht";
    /// Beside a line that goes back without its tax.
    pub its_tax_is_kept = "its tax is kept", "die Steuer bleibt";
    /// Line of a working.
    pub line_of_the_invoice(nth) = "line {nth} of the invoice", "Zeile {nth} der Rechnung";
    /// Left side of a formula.
    pub tax_back = "tax back", "Steuer zurück";
    /// Formula of the tax that goes back.
    pub share_of_the_tax = "tax of the invoice × what went back in all ÷ what it fell on, less what went back before",
        "Steuer der Rechnung × alles Zurückgegangene ÷ Grundlage, abzüglich früher Zurückgegangenem";
    /// What went into the tax that goes back.
    pub on = "on", "auf";
    /// Line of a working: the sum of a credit note.
    pub goes_back = "goes back", "geht zurück";

    /// A sum beyond all measure, and how it is mended.
    pub too_large = "the sum is too large to be reckoned; look at quantities, prices and taxes again",
        "die Summe ist zu groß zum Rechnen; Mengen, Preise und Steuern noch einmal ansehen";
}
