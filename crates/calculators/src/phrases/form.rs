//! What every form and answer says: what is wrong with a field, and figures.

use phrases::phrases;

phrases! {
    /// What is wrong with a field, and how to mend it: any form.
    pub lies_outside(text, least, most, symbol) = "`{text}` lies outside {least} to {most} {symbol}; look again",
        "„{text}“ liegt nicht zwischen {least} und {most} {symbol}; noch einmal nachsehen";
    /// What is wrong with a field, and how to mend it: any form.
    pub look_again = "look again", "noch einmal nachsehen";
    /// What is wrong with a field, and how to mend it: any form.
    pub write_it_with_its_unit_if = "write it, with its unit if it is another",
        "eintragen, mit Einheit, wenn es eine andere ist";
    /// What is wrong with a field, and how to mend it: any form.
    pub it_is_no_count_write_a = "it is no count; write a whole number, such as 7",
        "das ist keine Anzahl; eine ganze Zahl eintragen, etwa 7";
    /// The source of points that were entered: any form.
    pub the_label_or_the_coolants_maker = "the label or the coolant's maker",
        "Etikett oder Hersteller des Kühlmittels";
    /// A figure that is not known: any form.
    pub unknown = "unknown", "unbekannt";
    /// What is wrong with a field, and how to mend it: any form.
    pub nothing_is_written(mend) = "nothing is written; {mend}", "nichts eingetragen; {mend}";
    /// What is wrong with a field, and how to mend it: any form.
    pub is_no_number(text) = "`{text}` is no number; write 1.070",
        "„{text}“ ist keine Zahl; so eintragen: 1,070";
    /// What is wrong with a field, and how to mend it: any form.
    pub is_too_large(text) = "`{text}` is too large; check it", "„{text}“ ist zu groß; nachsehen";
    /// What is wrong with a field, and how to mend it: any form.
    pub asks_no_such_thing(calculator) = "{calculator} asks no such thing",
        "„{calculator}“ fragt nicht danach";
    /// What is wrong with a field, and how to mend it: any form.
    pub write_one_of(names) = "write one of {names}", "eines davon schreiben: {names}";
    /// Part of an answer: an answer at a command line.
    pub holds = "holds", "hält";
    /// Part of an answer: an answer at a command line.
    pub does_not_hold = "does not hold", "hält nicht";
    /// Part of an answer: an answer at a command line.
    pub or_this_way(name, holds, reason) = "or {name}, {holds}: {reason}", "oder {name}, {holds}: {reason}";
    /// Part of an answer: figures of any answer.
    pub kilonewtons(low, high) = "{low} to {high} kN", "{low} bis {high} kN";
    /// Part of an answer: figures of any answer.
    pub pounds_of_force(low, high) = "{low} to {high} lbf", "{low} bis {high} lbf";
}
