//! What is wrong with the hours of a week or a short code, and the days of the week.

use phrases::phrases;

phrases! {
    /// How the hours of a week are written.
    pub how_a_week_is_written = "write it like \"mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00\"",
        "so schreiben: „Mo-Fr 8-12, 12:30-17; Sa 9-13“";
    /// What is wrong with the hours of a week.
    pub week_too_long(bytes, most) = "{bytes} bytes; at most {most} fit", "{bytes} Bytes; höchstens {most} passen";
    /// What is wrong with the hours of a week; how they are written follows.
    pub before_any_day(word, how) = "{word} stands before any day; {how}", "{word} steht vor jedem Tag; {how}";
    /// What is wrong with the hours of a week; how they are written follows.
    pub days_without_hours(how) = "days without their hours; {how}", "zu den Tagen fehlen die Uhrzeiten; {how}";
    /// What is wrong with the hours of a week; how they are written follows.
    pub no_day(word, how) = "\"{word}\" is no day; {how}", "„{word}“ ist kein Tag; {how}";
    /// What is wrong with the hours of a week.
    pub goes_backwards(word) = "{word} goes backwards; name the days from Monday on",
        "{word} läuft rückwärts; die Tage von Montag an nennen";
    /// What is wrong with the hours of a week; how they are written follows.
    pub no_hours(word, how) = "\"{word}\" are no hours; {how}", "„{word}“ sind keine Uhrzeiten; {how}";
    /// What is wrong with the hours of a week.
    pub ends_before_it_begins(word) = "{word} ends before it begins; hours past midnight belong to the next day",
        "{word} endet vor dem Anfang; was nach Mitternacht liegt, gehört zum nächsten Tag";
    /// A day of the week, short, in opening hours.
    pub mon = "mon", "Mo";
    /// A day of the week, short, in opening hours.
    pub tue = "tue", "Di";
    /// A day of the week, short, in opening hours.
    pub wed = "wed", "Mi";
    /// A day of the week, short, in opening hours.
    pub thu = "thu", "Do";
    /// A day of the week, short, in opening hours.
    pub fri = "fri", "Fr";
    /// A day of the week, short, in opening hours.
    pub sat = "sat", "Sa";
    /// A day of the week, short, in opening hours.
    pub sun = "sun", "So";

    /// What is wrong with a short code or a measured value.
    pub is_empty = "it is empty; leave it out instead", "es ist leer; dann weglassen";
    /// What is wrong with a short code or a measured value.
    pub too_many_characters(length, most) = "it has {length} characters; at most {most} fit",
        "es hat {length} Zeichen; höchstens {most} passen";
    /// What is wrong with a short code or a measured value; the character stands in quotes.
    pub cannot_stand_in_a_code(found, position) = "the character {found} at {position} cannot stand in a code; use letters, digits, spaces and . , / # \" ' x - + % ° · ( ) :",
        "das Zeichen {found} an Stelle {position} geht hier nicht; möglich sind Buchstaben, Ziffern, Leerzeichen und . , / # \" ' x - + % ° · ( ) :";
}
