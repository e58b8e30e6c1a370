//! How likely an order comes to what.

use phrases::phrases;

phrases! {
    /// How many hours it will likely take.
    pub likely_hours(low, high) = "likely {low} to {high} hours (8 of 10)", "wohl {low} bis {high} Stunden (8 von 10)";
    /// What an order will likely come to with tax, in one sentence for the customer.
    pub comes_to_with_tax(low, high, most) = "It will likely come to {low} to {high} with tax; {most} covers it 9 times in 10.", "Es werden wohl {low} bis {high} mit Steuer; mit {most} reicht es in 9 von 10 Fällen.";
    /// What an order will likely come to before tax, in one sentence for the customer.
    pub comes_to_before_tax(low, high, most) = "It will likely come to {low} to {high} before tax; {most} covers it 9 times in 10.", "Es werden wohl {low} bis {high} ohne Steuer; mit {most} reicht es in 9 von 10 Fällen.";
    /// How many minutes it will likely take.
    pub likely_minutes(low, high) = "likely {low} to {high} min (8 of 10)", "wohl {low} bis {high} min (8 von 10)";
    /// Where the odds can't be told: the price.
    pub the_price = "the price", "der Preis";
    /// Why the odds can't be told.
    pub no_hours = "no hours of work stand on it yet", "es stehen noch keine Arbeitsstunden darin";
    /// How it is mended.
    pub price_the_work = "price the work first; then its odds can be told", "erst die Arbeit in den Preis setzen; dann lässt sich sagen, wie sicher er ist";
    /// What drives the price: how quickly some work goes.
    pub how_quickly(what) = "how quickly it goes: {what}", "wie schnell es geht: {what}";
    /// What drives the price: a fastener that snaps.
    pub one_of_fasteners(fasteners) = "one of {fasteners} fasteners snaps or strips", "eine von {fasteners} Schrauben reißt ab oder aus";
    /// Work that has no name, in what drives the price.
    pub work = "work", "Arbeit";
    /// Work on a snag, in what drives the price.
    pub the_snag = "putting right the snag that came", "das Problem beheben, das dazukam";
    /// All that is no work, in what drives the price.
    pub the_rest = "parts and the rest of the price", "Ersatzteile und der Rest des Preises";
    /// How often.
    pub hardly_ever = "hardly ever", "fast nie";
    /// How often.
    pub nearly_always = "nearly always", "fast immer";
    /// How often.
    pub times_in_ten(n) = "{n} times in 10", "in {n} von 10 Fällen";
    /// How often.
    pub times_in_hundred(n) = "{n} times in 100", "in {n} von 100 Fällen";
    /// How it is mended that the odds can't be told, where nothing else is known.
    pub check_it = "check it", "prüfen";
}
