//! What is wrong with a number, a quantity or an amount, what quantities are called, and what
//! stands around the lines of a working.

use phrases::phrases;

phrases! {
    /// What is wrong with a number: there is none.
    pub no_number(column, found) = "column {column}: no number at `{found}`; begin with a number such as 12, 12.5 or 5/16",
        "Stelle {column}: keine Zahl bei „{found}“; mit einer Zahl wie 12, 12,5 oder 5/16 beginnen";
    /// What is wrong with a number.
    pub not_finite(column, found) = "column {column}: `{found}` is not a finite number; write the number itself",
        "Stelle {column}: „{found}“ ist keine endliche Zahl; die Zahl selbst schreiben";
    /// What is wrong with a number.
    pub malformed(column, found) = "column {column}: `{found}` is not one number; write it like 12.5, 12,5, 5/16 or 1 1/2",
        "Stelle {column}: „{found}“ ist keine Zahl; wie 12,5, 12.5, 5/16 oder 1 1/2 schreiben";
    /// What is wrong with a number: its one mark may be either.
    pub ambiguous(column, found, as_decimal, as_thousands) = "column {column}: `{found}` can be read as {as_decimal} or as {as_thousands}; write one of these",
        "Stelle {column}: „{found}“ kann {as_decimal} oder {as_thousands} heißen; eines davon schreiben";
    /// What is wrong with a fraction.
    pub divides_by_nothing(column, found) = "column {column}: `{found}` divides by nothing; the lower number of a fraction is 1 or more",
        "Stelle {column}: „{found}“ teilt durch null; unter dem Bruchstrich steht 1 oder mehr";
    /// What is wrong with a number.
    pub number_too_large(column, found, limit) = "column {column}: `{found}` is too large or too finely written; at most {limit}, with at most 28 digits in all",
        "Stelle {column}: „{found}“ ist zu groß oder zu fein geschrieben; höchstens {limit}, mit höchstens 28 Ziffern";

    /// What is wrong with a quantity: there is none.
    pub nothing_written(accepted) = "nothing is written; write a number and a unit ({accepted})",
        "nichts eingetragen; eine Zahl und eine Einheit schreiben ({accepted})";
    /// What is wrong with a quantity.
    pub no_unit(column, number, accepted) = "column {column}: no unit after `{number}`; add one of {accepted}",
        "Stelle {column}: keine Einheit nach „{number}“; eine dazuschreiben: {accepted}";
    /// What is wrong with a quantity.
    pub unknown_unit(column, found, accepted) = "column {column}: `{found}` is not a unit known here; use one of {accepted}",
        "Stelle {column}: „{found}“ ist hier keine bekannte Einheit; eine von diesen nehmen: {accepted}";
    /// What is wrong with a quantity: a unit of something else, such as of length for a torque.
    pub wrong_kind(column, found, measures, wanted, accepted) = "column {column}: `{found}` measures {measures}, not {wanted}; use one of {accepted}",
        "Stelle {column}: „{found}“ ist eine Einheit für {measures}, nicht für {wanted}; eine von diesen nehmen: {accepted}";
    /// What is wrong with a quantity.
    pub after_unit(column, found, unit) = "column {column}: `{found}` stands after the unit {unit}; take it away",
        "Stelle {column}: „{found}“ steht hinter der Einheit {unit}; weglassen";
    /// What is wrong with a unit: it measures something else.
    pub unit_measures(unit, measures, wanted, accepted) = "{unit} measures {measures}, not {wanted}; use one of {accepted}",
        "{unit} ist eine Einheit für {measures}, nicht für {wanted}; eine von diesen nehmen: {accepted}";
    /// What is wrong with a quantity.
    pub out_of_range(number, unit, limit) = "{number} {unit} is out of range: a finite number of at most {limit} in size",
        "{number} {unit} liegt außerhalb: eine endliche Zahl bis {limit}";
    /// What is wrong with a temperature.
    pub below_absolute_zero(number, unit) = "{number} {unit} is below absolute zero",
        "{number} {unit} liegt unter dem absoluten Nullpunkt";
    /// What is wrong with low, middle and high.
    pub out_of_order = "a range needs low <= middle <= high, all of them numbers",
        "ein Bereich braucht niedrig <= mittel <= hoch, alles Zahlen";

    /// What is wrong with a currency.
    pub bad_code(found) = "`{found}` is not a currency code; write three letters such as USD",
        "„{found}“ ist kein Kürzel einer Währung; drei Buchstaben wie EUR schreiben";
    /// What is wrong with an amount of money.
    pub no_amount = "no amount is written; write one such as 904.40",
        "kein Betrag eingetragen; einen wie 904,40 schreiben";
    /// What is wrong with an amount of money.
    pub after_amount(column, found, currency) = "column {column}: `{found}` stands after the amount; take it away or write {currency}",
        "Stelle {column}: „{found}“ steht hinter dem Betrag; weglassen oder {currency} schreiben";
    /// What is wrong with an amount of money.
    pub too_many_decimals(column, found, digits, currency) = "column {column}: `{found}` has more than the {digits} decimals of {currency}; round it first",
        "Stelle {column}: „{found}“ hat mehr als die {digits} Nachkommastellen von {currency}; erst runden";
    /// What is wrong with two amounts of money.
    pub other_currency(left, right) = "{left} and {right} cannot be added or compared; bring them to one currency first",
        "{left} und {right} lassen sich nicht zusammenzählen oder vergleichen; erst in eine Währung bringen";
    /// What is wrong with an amount of money.
    pub amount_too_large = "the amount is too large to hold exactly; check the figures for a slip",
        "der Betrag ist zu groß; prüfen, ob eine Ziffer zu viel ist";

    /// What a quantity is.
    pub torque = "torque", "Drehmoment";
    /// What a quantity is.
    pub volume = "volume", "Volumen";
    /// What a quantity is.
    pub pressure = "pressure", "Druck";
    /// What a quantity is.
    pub temperature = "temperature", "Temperatur";
    /// What a quantity is.
    pub temperature_difference = "temperature difference", "Temperatur\u{ad}unterschied";
    /// What a quantity is.
    pub length = "length", "Länge";
    /// What a quantity is.
    pub area = "area", "Fläche";
    /// What a quantity is.
    pub fraction = "fraction", "Anteil";
    /// What a quantity is.
    pub force = "force", "Kraft";
    /// What a quantity is.
    pub mass = "mass", "Gewicht";
    /// What a quantity is.
    pub time = "time", "Zeit";
    /// What a quantity is.
    pub angle = "angle", "Winkel";
    /// What a quantity is.
    pub rotational_speed = "rotational speed", "Drehzahl";
    /// What a quantity is.
    pub speed = "speed", "Geschwindigkeit";
    /// What a quantity is.
    pub voltage = "voltage", "Spannung";

    /// In place of a value that nobody knows.
    pub unknown = "unknown", "unbekannt";
    /// In a working as plain text: what went into a line.
    pub with(name, value) = "with {name} = {value}", "mit {name} = {value}";
    /// In a working as plain text: on whose word a line stands.
    pub source_is(source) = "source: {source}", "Quelle: {source}";
    /// In a working as plain text.
    pub note_is(note) = "note: {note}", "Anmerkung: {note}";
    /// In a working as plain text.
    pub remark_is(remark) = "remark: {remark}", "Bemerkung: {remark}";
    /// In a working as plain text: where the number stops being good.
    pub limit_is(limit) = "limit: {limit}", "Grenze: {limit}";
    /// Beside a line of a working: on whose word it stands.
    pub source = "Source", "Quelle";
    /// Beside a line of a working.
    pub note = "Note", "Anmerkung";
    /// Heading under a working.
    pub remarks = "Remarks", "Bemerkungen";
    /// Heading under a working: where the number stops being good.
    pub limits = "Limits", "Grenzen";
    /// A source: the person who asks said so.
    pub given = "given", "angegeben";
    /// A source: it follows from the lines before it.
    pub from_the_lines_above = "from the lines above", "aus den Zeilen darüber";
    /// Behind a source: it was read there.
    pub published = "published", "veröffentlicht";
    /// Behind a source: another program or library prints it so.
    pub other_implementation = "other-implementation", "anderes Programm";
    /// Behind a source: the trade does it so, and nobody wrote it down.
    pub common_practice = "common-practice", "üblich";
    /// Behind a source: not looked up.
    pub memory = "memory", "aus dem Gedächtnis";
}
