//! What is said of an identification number.

use phrases::phrases;

phrases! {
    /// What is wrong with an identification number: too short.
    pub too_short(found, needs, missing) =
        "the number has {found} characters, it needs {needs}: {missing} missing",
        "die Nummer hat {found} Zeichen, nötig sind {needs}: es fehlen {missing}";
    /// What is wrong with an identification number: too long.
    pub too_long(found, needs, many) =
        "the number has {found} characters, it needs {needs}: {many} too many",
        "die Nummer hat {found} Zeichen, nötig sind {needs}: {many} zu viel";
    /// What is wrong with an identification number: a letter that looks like another character.
    pub look_alike(position, found, meant) =
        "position {position} is {found}, which no number contains: most likely {meant}",
        "Stelle {position} ist {found}, das kommt in keiner Nummer vor: wahrscheinlich {meant}";
    /// What is wrong with an identification number: a character that none has, in quotation marks.
    pub not_allowed(position, found) =
        "position {position} is {found}: only digits and the letters A to Z without I, O and Q can stand there; read it again from the vehicle",
        "Stelle {position} ist {found}: dort stehen nur Ziffern und die Buchstaben A bis Z ohne I, O und Q; noch einmal am Fahrzeug ablesen";
    /// What is wrong with an identification number: a letter where digits stand, which looks like one.
    pub not_digit_likely(position, found, from, meant) =
        "position {position} is {found}; North American numbers have only digits from position {from} on: most likely {meant}",
        "Stelle {position} ist {found}; nordamerikanische Nummern haben ab Stelle {from} nur Ziffern: wahrscheinlich {meant}";
    /// What is wrong with an identification number: a letter where digits stand.
    pub not_digit(position, found, from) =
        "position {position} is {found}; North American numbers have only digits from position {from} on: read it again from the vehicle",
        "Stelle {position} ist {found}; nordamerikanische Nummern haben ab Stelle {from} nur Ziffern: noch einmal am Fahrzeug ablesen";
    /// What is wrong with an identification number: its check digit.
    pub check_digit(position, found, expected) =
        "position {position}, the check digit, is {found}; the other characters ask for {expected}: one of them, or the check digit, is misread",
        "Stelle {position}, die Prüfziffer, ist {found}; nach den anderen Zeichen müsste es {expected} sein: eines davon oder die Prüfziffer ist falsch gelesen";

    /// A note: what was left out in reading.
    pub separators_left_out(n) = ["{n} space or hyphen left out", "{n} spaces or hyphens left out"],
        ["{n} Leerzeichen oder Bindestrich weggelassen", "{n} Leerzeichen oder Bindestriche weggelassen"];
    /// A note: the check digit is not needed, and holds.
    pub check_digit_not_required_holds = "no check digit is required outside North America; one stands there, and it holds",
        "außerhalb Nordamerikas ist keine Prüfziffer verlangt; hier steht eine, und sie stimmt";
    /// A note: the check digit is not needed, and does not hold.
    pub check_digit_not_required = "no check digit is required outside North America, so a misread character may not show",
        "außerhalb Nordamerikas ist keine Prüfziffer verlangt; ein falsch gelesenes Zeichen fällt also vielleicht nicht auf";
    /// A note: what the model year rests on.
    pub year_for_light_vehicles = "model year by position 7, for cars and trucks up to 4536 kg (10 000 lb) gross \
        weight rating; for heavier ones, buses, trailers and motorcycles see the plate",
        "Modelljahr nach Stelle 7, für Pkw und Lkw bis 4536 kg (10 000 lb) \
        Gesamtgewicht; bei schwereren, Bussen, Anhängern und Motorrädern auf dem Typenschild nachsehen";
    /// A note: there is no model year to be read.
    pub year_not_required = "outside North America position 10 need not be the model year: take it from the papers",
        "außerhalb Nordamerikas muss Stelle 10 nicht das Modelljahr sein: aus den Papieren nehmen";
    /// A note: the model year lies ahead; the year, and the one thirty years before.
    pub year_doubted(year, before) = "by positions 7 and 10 it would be of {year}, which is doubtful: one of them is \
        misread, or it is a heavy vehicle, trailer or motorcycle of {before}; see the plate",
        "nach Stelle 7 und 10 wäre es von {year}, das ist zweifelhaft: eine davon ist \
        falsch gelesen, oder es ist ein schweres Fahrzeug, Anhänger oder Motorrad von {before}; auf dem Typenschild nachsehen";
    /// A note: no year code.
    pub no_year_code = "position 10 is not a model year code, which North American numbers have: read it again",
        "Stelle 10 ist kein Code für ein Modelljahr, den nordamerikanische Nummern haben: noch einmal ablesen";
}
