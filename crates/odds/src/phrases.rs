//! What a quote says, each language beside the other: what is refused, what widens the spread, notes
//! and the working. Words in backquotes are keys of a text, the same in every language.
//!
//! A refusal has to keep its first ": " between what is wrong and how it is mended.

use phrases::phrases;

phrases! {
    /// Refused: a number out of its range.
    pub out_of_range(what, value, unit, low, high, mend) = "{what} is {value} {unit}, outside {low} to {high} {unit}: {mend}", "{what} ist {value} {unit}, außerhalb von {low} bis {high} {unit}: {mend}";
    /// Refused: least, likely and most are mixed up.
    pub out_of_sequence(what, low, likely, high) = "{what} runs from {low} over {likely} to {high}: write least, likely and most in that sequence", "{what} geht von {low} über {likely} bis {high}: mindestens, wahrscheinlich und höchstens in dieser Reihenfolge schreiben";
    /// Refused: nothing is to be done.
    pub no_lines = "no line says what is to be done: write at least one", "keine Zeile sagt, was zu tun ist: mindestens eine schreiben";
    /// Refused: a line or a sort of work has no name.
    pub no_name(what) = "{what} has no name: name it", "{what} ohne Namen: benennen";
    /// Refused: too much work at once.
    pub too_many_stages(stages, most) = "there are {stages} stages, more than {most}: put those of one sort on one line and sum their minutes", "es sind {stages} Schritte, mehr als {most}: gleichartige in eine Zeile setzen und ihre Minuten zusammenzählen";
    /// Refused: it would take too long to work out.
    pub too_much_work(draws, stages, most) = "{draws} draws of {stages} stages are too many to wait for: ask for at most {most} draws", "{draws} Ziehungen mit {stages} Schritten dauern zu lange: höchstens {most} Ziehungen verlangen";
    /// Refused: what would be done first concerns a line that is not there.
    pub no_such_line(action, line) = "{action} names the line {line}, and there is none of that name: name one that is listed", "{action} nennt die Zeile {line}, und die gibt es nicht: eine nennen, die dasteht";
    /// Refused: more problems than pieces.
    pub more_snags_than_pieces(snags, pieces, what) = "{snags} snags among {pieces} pieces of {what}: a piece counts once, write at most as many snags as pieces", "{snags} Probleme bei {pieces} Stück ({what}): jedes Stück zählt einmal, höchstens so viele Probleme wie Stück schreiben";
    /// Refused: a way of weighing is missing.
    pub empty_grid(what) = "the grid's {what} has no ratio, or one that is not above 0: give at least one", "das Raster hat für {what} kein Verhältnis, oder keines über 0: mindestens eines angeben";
    /// Refused: past times make no sense.
    pub unsound = "the history holds times too far apart to reckon with: look for a slip in its minutes", "die früheren Zeiten liegen zu weit auseinander zum Rechnen: die Minuten auf Vertippen prüfen";

    /// A unit, after a number.
    pub minutes = "minutes", "Minuten";
    /// A unit, after a number.
    pub years = "years", "Jahre";
    /// A unit, after a price.
    pub per_hour = "per hour", "je Stunde";
    /// A unit, after a number that multiplies.
    pub times = "times", "mal";
    /// A unit, after a number.
    pub pieces = "pieces", "Stück";
    /// A unit, after a number: of the book's minutes.
    pub times_book = "times book", "mal Richtzeit";
    /// A unit, after a number: how much past work counts.
    pub jobs = "jobs", "Aufträge";
    /// A unit, after a number from 0 to 1: of the book's minutes.
    pub of_book = "of book", "der Richtzeit";

    /// What has no name, where something is refused.
    pub a_line = "a line", "eine Zeile";
    /// What has no name, where something is refused.
    pub a_kind_of_stage = "a kind of stage", "eine Art von Schritt";
    /// A number of a past stage, where it is refused.
    pub of_a_past_stage(which, kind) = "{which} of a past stage ({kind})", "{which} eines früheren Schritts ({kind})";
    /// A number of a line, where it is refused.
    pub of_line(which, line) = "{which} of {line}", "{which} bei {line}";
    /// A number, where it is refused.
    pub the_book_time = "the book time", "die Richtzeit";
    /// How a number is mended.
    pub write_book_minutes = "write the book's minutes", "die Minuten der Richtzeit schreiben";
    /// How a number is mended.
    pub write_book_minutes_once = "write the book's minutes for one time", "die Minuten der Richtzeit für ein Mal schreiben";
    /// A number, where it is refused.
    pub the_time = "the time", "die Zeit";
    /// How a number is mended.
    pub write_clock_minutes = "write the clock's minutes without pauses", "die Minuten nach der Uhr ohne Pausen schreiben";
    /// A number, where it is refused.
    pub the_age = "the vehicle's age", "das Alter des Fahrzeugs";
    /// How a number is mended.
    pub write_the_age = "write its age in years, or leave it out", "das Alter in Jahren schreiben oder weglassen";
    /// A number, where it is refused.
    pub rust = "rust", "Rost";
    /// How a number is mended.
    pub write_the_rust = "write 0 for none to 3 for heavy", "0 für keinen bis 3 für starken schreiben";
    /// A number, where it is refused.
    pub the_rate = "the rate", "der Stundensatz";
    /// How a number is mended.
    pub write_for_one_hour = "write it for one hour", "für eine Stunde schreiben";
    /// A number, where it is refused.
    pub the_tax = "the tax", "die Steuer";
    /// How a number is mended.
    pub write_in_per_cent = "write it in per cent", "in Prozent schreiben";
    /// How a number is mended.
    pub write_an_amount = "write an amount of money", "einen Geldbetrag schreiben";
    /// How a number is mended.
    pub write_its_minutes = "write the minutes it takes", "schreiben, wie viele Minuten es dauert";
    /// How a number is mended.
    pub write_its_cost = "write what it costs", "schreiben, was es kostet";
    /// How a number is mended.
    pub write_the_multiple = "write by what it multiplies, 1 for no change", "das Vielfache schreiben, 1 für unverändert";
    /// A number, where it is refused: how likely a problem is after something was done first.
    pub the_odds_after(what) = "the odds after {what}", "das Risiko nach {what}";
    /// A number, where it is refused: how long work takes after something was done first.
    pub the_time_after(what) = "the time after {what}", "die Zeit nach {what}";
    /// A number, where it is refused.
    pub how_often = "how often", "die Anzahl";
    /// How a number is mended.
    pub write_a_whole_number = "write a whole number", "eine ganze Zahl schreiben";
    /// A number, where it is refused.
    pub the_pieces = "the pieces", "die Stückzahl";
    /// How a number is mended.
    pub write_how_many = "write how many there are", "schreiben, wie viele es sind";
    /// How numbers are mended.
    pub write_for_one_snag = "write least, likely and most for one snag", "mindestens, wahrscheinlich und höchstens für ein Problem schreiben";
    /// Numbers, where they are refused.
    pub snag_minutes = "a snag's minutes", "die Zeit für ein Problem";
    /// Numbers, where they are refused.
    pub snag_price = "a snag's price", "der Preis eines Problems";
    /// How a number of the entered belief is mended.
    pub enter_a_belief = "enter a belief in that range", "einen Wert in diesem Bereich eintragen";
    /// A number of the entered belief, where it is refused.
    pub the_usual_time = "the usual time", "die übliche Zeit";
    /// A number of the entered belief, where it is refused.
    pub the_weight_of_the_prior = "the weight of the prior", "das Gewicht der Annahme";
    /// A number of the entered belief, where it is refused.
    pub the_typical_factor = "the typical factor", "der übliche Faktor";
    /// A number of the entered belief, where it is refused: no work is quicker.
    pub the_floor = "the floor", "die Untergrenze";
    /// A number of the entered belief, where it is refused.
    pub the_chance_of_a_snag = "the chance of a snag", "die Wahrscheinlichkeit eines Problems";
    /// A number of the entered belief, where it is refused.
    pub the_weight_of_that_chance = "the weight of that chance", "das Gewicht dieser Wahrscheinlichkeit";
    /// A number of the entered belief, where it is refused.
    pub the_vehicles_part = "the vehicle's part in snags", "der Anteil des Fahrzeugs an Problemen";
    /// How a number of the entered belief is mended.
    pub not_below_the_floor = "it cannot lie at or below the floor", "sie kann nicht auf oder unter der Untergrenze liegen";
    /// A number, where it is refused.
    pub the_number_of_draws = "the number of draws", "die Zahl der Ziehungen";
    /// How a number is mended.
    pub ask_for_usual_draws = "ask for 100,000", "100.000 verlangen";
    /// A number, where it is refused.
    pub the_ceiling = "the ceiling", "der Höchstbetrag";
    /// How a number is mended.
    pub write_agreed_amount = "write the amount that was agreed to", "den Betrag schreiben, dem zugestimmt wurde";
    /// A number, where it is refused.
    pub the_wanted_chance = "the wanted chance", "die gewünschte Wahrscheinlichkeit";
    /// How a number is mended.
    pub write_nine_in_ten = "write 0.9 for nine in ten", "0.9 für neun von zehn schreiben";
    /// A number, where it is refused.
    pub what_happened = "what happened", "was herauskam";
    /// How a number is mended.
    pub write_what_it_came_to = "write what it came to", "schreiben, was es geworden ist";
    /// A number, where it is refused.
    pub a_chance = "a chance", "eine Wahrscheinlichkeit";
    /// How a number is mended.
    pub write_rising_chances = "write chances that rise", "steigende Wahrscheinlichkeiten schreiben";
    /// A number, where it is refused.
    pub a_value = "a value", "ein Wert";
    /// How a number is mended.
    pub write_rising_values = "write values that rise", "steigende Werte schreiben";
    /// What had problems, where nobody gave a size.
    pub a_joint = "a joint", "eine Verbindung";

    /// What widens the spread: the vehicle.
    pub how_it_comes_apart = "how this vehicle comes apart", "wie sich dieses Fahrzeug zerlegen lässt";
    /// What widens the spread: the shop.
    pub how_well_times_are_known = "how well times are known here", "wie gut die Zeiten hier bekannt sind";
    /// What widens the spread: prices that are not certain.
    pub what_parts_cost = "what parts cost", "was Teile kosten";

    /// A note beside a quote.
    pub nothing_learned = "No past job was learned from: this is the entered book with a wide spread.", "Aus keinem früheren Auftrag gelernt: Das ist die eingetragene Richtzeit mit weiter Spanne.";
    /// A note beside a quote.
    pub never_timed_here(kinds) = "Nothing of this sort was timed here before: {kinds}.", "Von dieser Art wurde hier noch nichts gestoppt: {kinds}.";
    /// A note beside a quote.
    pub rust_not_told = "Rust was not told: taken as 1, light.", "Rost wurde nicht angegeben: gerechnet mit 1, leicht.";
    /// A note beside a quote.
    pub much_left_unfinished = "More than one past stage in four was left unfinished: the spread is a little narrow.", "Mehr als jeder vierte frühere Schritt blieb unfertig: Die Spanne ist etwas schmal.";

    /// Heading of the working.
    pub spread_of_hours_and_price = "Spread of hours and price", "Spanne von Stunden und Preis";
    /// A line of the working.
    pub belief_before = "belief before the first job", "Annahme vor dem ersten Auftrag";
    /// An input in the working.
    pub usual = "usual", "üblich";
    /// An input in the working, in multiples of the book's minutes.
    pub so_many_times_book(n) = "{n} times book", "{n} mal Richtzeit";
    /// An input in the working: how many jobs the belief counts as.
    pub counts_as = "counts as", "zählt wie";
    /// An input in the working.
    pub so_many_jobs(n) = "{n} jobs", "{n} Aufträge";
    /// An input in the working.
    pub misses_by_a_factor = "a stage misses it by a factor of", "ein Schritt weicht ab um den Faktor";
    /// An input in the working: no work is quicker.
    pub floor = "floor", "Untergrenze";
    /// An input in the working, from 0 to 1.
    pub so_much_of_book(n) = "{n} of book", "{n} der Richtzeit";
    /// A value in the working: somebody typed it.
    pub entered = "entered", "eingetragen";
    /// A line of the working.
    pub minutes_of_a_stage = "minutes of a stage", "Minuten eines Schritts";
    /// A formula in the working: what it is for.
    pub ln_minutes = "ln(minutes / book)", "ln(Minuten / Richtzeit)";
    /// A formula in the working.
    pub sum_of_effects = "shop + kind + person + condition + vehicle + error", "Werkstatt + Art + Person + Zustand + Fahrzeug + Fehler";
    /// An input in the working.
    pub past_stages = "past stages", "frühere Schritte";
    /// An input in the working.
    pub ways_of_weighing = "ways of weighing", "Gewichtungen";
    /// A value in the working.
    pub at_most_times_book(n) = "at most {n} times book", "höchstens {n} mal Richtzeit";
    /// A line of the working.
    pub stages_left_early = "stages left before they were done", "unfertig verlassene Schritte";
    /// A formula in the working.
    pub mean_beyond = "mean of what lies beyond, in rounds", "Mittel dessen, was darüber liegt, in Runden";
    /// An input in the working.
    pub stages = "stages", "Schritte";
    /// An input in the working.
    pub rounds = "rounds", "Runden";
    /// A value in the working.
    pub last_change(change, missing) = "last change {change}; {missing} % of what they would tell is missing", "letzte Änderung {change}; {missing} % dessen, was sie zeigen würden, fehlen";
    /// A line of the working.
    pub chance_a_piece(line) = "chance of a snag a piece: {line}", "Wahrscheinlichkeit eines Problems je Stück: {line}";
    /// A formula in the working.
    pub mean_and_counts = "(m s + snags) / (s + pieces), back to rust and shop", "(m s + Probleme) / (s + Stück), zurück bis Rost und Werkstatt";
    /// An input in the working.
    pub seen_of_this_sort = "seen of this sort", "von dieser Art gesehen";
    /// An input in the working: problems among pieces.
    pub so_many_in(snags, pieces) = "{snags} in {pieces}", "{snags} von {pieces}";
    /// A line of the working, and what its formula is for.
    pub hours = "hours", "Stunden";
    /// A formula in the working.
    pub sum_drawn = "sum of stages and snags, drawn and sorted", "Summe aus Schritten und Problemen, gezogen und sortiert";
    /// An input in the working: the book's hours.
    pub book = "book", "Richtzeit";
    /// An input in the working: how many times chance was drawn.
    pub draws = "draws", "Ziehungen";
    /// An input in the working: what chance began with.
    pub seed = "seed", "Startwert";
    /// A value in the working.
    pub eight_of_ten(low, high) = "{low} to {high} h, 8 of 10", "{low} bis {high} h, 8 von 10";
    /// A limit of the working.
    pub limit_sequence = "Stages one after the other; a mean is that of the capped spread.", "Schritte nacheinander; ein Mittel ist das der begrenzten Spanne.";
    /// A limit of the working.
    pub limit_past = "A range is as good as its past: the score of given quotes says how good that is.", "Eine Spanne ist so gut wie ihre Vergangenheit: Wie gut, zeigt die Auswertung der früheren Schätzungen.";

    /// What the whole text is called, where something in it is wrong.
    pub the_file = "the file", "die Datei";
    /// A typed line that is none.
    pub no_line(text) = "`{text}` is no line: write it as \"what, minutes\" or \"what, minutes, times\", with a point in numbers", "`{text}` ist keine Zeile: als „was, Minuten“ oder „was, Minuten, Anzahl“ schreiben, Zahlen mit Punkt";
    /// A typed line with a number of times that makes no sense.
    pub no_times(times, text) = "{times} times in `{text}`: write a whole number from 1 to 2000", "{times}-mal in `{text}`: eine ganze Zahl von 1 bis 2000 schreiben";
    /// How rust is written in a text.
    pub write_rust_class = "write 0 for none, 1, 2, or 3 for heavy", "0 für keinen, 1, 2 oder 3 für starken schreiben";
    /// After "... is": rust that is none.
    pub no_class_of_rust = "no class of rust", "keine Stufe von Rost";
    /// How a range is written in a text.
    pub write_range(key) = "write {key} = 55, or least, likely and most: {key} = [40, 55, 90]", "{key} = 55 schreiben, oder mindestens, wahrscheinlich und höchstens: {key} = [40, 55, 90]";
    /// After "... is": a range that is none.
    pub neither_number_nor_three = "neither a number nor three", "weder eine Zahl noch drei";
    /// How something is mended that says no more.
    pub check_it = "check it", "nachsehen";
    /// Lists of a text that do not fit.
    pub chances_and_values(chances, values) = "{chances} chances and {values} values", "{chances} Wahrscheinlichkeiten und {values} Werte";
    /// How lists of a text that do not fit are mended.
    pub one_value_each = "write one value for each chance", "zu jeder Wahrscheinlichkeit einen Wert schreiben";
}
