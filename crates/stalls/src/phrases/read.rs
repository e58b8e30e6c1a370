//! What is wrong in a day's text, and how it is mended. Words in backquotes are keys, as they are
//! written there in every language.

use phrases::phrases;

phrases! {
    /// What the whole text is called, where something in it is wrong.
    pub the_file = "the file", "die Datei";
    /// How a missing time is written.
    pub local_time_such_as = "the local time, such as \"2026-11-30T08:10\"", "die Ortszeit, etwa \"2026-11-30T08:10\"";
    /// How missing opening hours are written.
    pub when_open_such_as = "when the shop is open, such as [\"mon-fri 08:00-12:00\", \"mon-fri 12:30-17:00\"]", "wann die Werkstatt offen hat, etwa [\"mon-fri 08:00-12:00\", \"mon-fri 12:30-17:00\"]";
    /// How missing minutes are written.
    pub one_number_or_three = "one number, or least, likely and most", "eine Zahl, oder mindestens, wahrscheinlich und höchstens";
    /// How a wait without a time is mended.
    pub how_long_or_when = "how long it takes; or comes = ..., when it comes", "wie lange es dauert; oder comes = ..., wann es kommt";
    /// A wait with a length and a time.
    pub minutes_and_comes(name) = "{name} has `minutes` and `comes`", "{name} hat `minutes` und `comes`";
    /// How a wait with a length and a time is mended.
    pub write_one_of_both = "write one of them: how long it takes, or when it comes", "nur eines davon schreiben: wie lange es dauert, oder wann es kommt";
    /// A key is missing.
    pub has_no(name, key) = "{name} has no `{key}`", "{name} hat kein `{key}`";
    /// How a missing key is mended.
    pub add_key(key, what) = "add {key} = ...: {what}", "{key} = ... ergänzen: {what}";
    /// What is wrong with a key's value.
    pub key_of(key, name, what) = "`{key}` of {name}: {what}", "`{key}` bei {name}: {what}";
    /// How a time that a change of the clocks leaves out is mended.
    pub a_time_of_that_day = "write a time that the clock on the wall shows that day", "eine Zeit schreiben, die die Uhr an dem Tag zeigt";
    /// How a number out of its range is mended.
    pub whole_from_to(least, most) = "write a whole number from {least} to {most}", "eine ganze Zahl von {least} bis {most} schreiben";
    /// After "... is": a number out of its range.
    pub no_such_number = "no such number", "keine solche Zahl";
    /// How a list is written.
    pub write_a_list(key) = "write {key} = [\"...\", \"...\"]", "{key} = [\"...\", \"...\"] schreiben";
    /// How a list of stalls or people is written.
    pub each_name_in_quotes(sort) = "write the name of each {sort} in quotes", "jeden Namen in Anführungszeichen schreiben ({sort})";
    /// A stall or a person that is named and unknown.
    pub names_none(key, name, sort, unknown) = "`{key}` of {name} names the {sort} {unknown}, and there is none", "`{key}` bei {name} nennt {sort} {unknown}; das gibt es nicht";
    /// After "... is": a stall or a person that is named and unknown.
    pub and_there_is_none(sort, unknown) = "the {sort} {unknown}, and there is none", "{sort} {unknown}, und das gibt es nicht";
    /// How an unknown name is mended.
    pub write_one_of(known) = "write one of {known}", "eines davon schreiben: {known}";
    /// How minutes are written.
    pub write_minutes(key) = "write {key} = 55, or least, likely and most: {key} = [40, 55, 90]", "{key} = 55 schreiben, oder mindestens, wahrscheinlich und höchstens: {key} = [40, 55, 90]";
    /// After "... is": minutes that are none.
    pub neither_whole_nor_three = "neither a whole number nor three", "weder eine ganze Zahl noch drei";
    /// After "... is": a time that is none.
    pub no_local_time = "no local time", "keine Ortszeit";
    /// How a time is written.
    pub write_it_such_as = "write it such as \"2026-11-30T08:10\"", "etwa so schreiben: \"2026-11-30T08:10\"";
    /// How a time, or three, are written.
    pub write_times(key) = "write {key} = \"2026-11-30T08:10\", or the earliest, the likely and the latest in a list", "{key} = \"2026-11-30T08:10\" schreiben, oder die früheste, die wahrscheinliche und die späteste in einer Liste";
    /// After "... is": times that are none.
    pub neither_time_nor_three = "neither one local time nor three", "weder eine Ortszeit noch drei";
    /// How hours of a week are written.
    pub write_hours(key) = "write {key} = [\"mon-fri 08:00-12:00\", \"sat 09:00-13:00\"]", "{key} = [\"mon-fri 08:00-12:00\", \"sat 09:00-13:00\"] schreiben";
    /// Hours of a week that are none.
    pub no_hours(text, key, name) = "`{text}` in `{key}` of {name} are no hours", "`{text}` in `{key}` bei {name} ist keine Zeit von bis";
    /// How times from and to are written.
    pub write_spans(key) = "write {key} = [[\"2026-11-30T13:00\", \"2026-11-30T15:00\"]]", "{key} = [[\"2026-11-30T13:00\", \"2026-11-30T15:00\"]] schreiben";
    /// After "... is": times from and to that are none.
    pub no_spans = "no list of times from and to", "keine Liste von Zeiten von und bis";
    /// How days are written.
    pub write_days(key) = "write {key} = [\"2026-12-24\"]", "{key} = [\"2026-12-24\"] schreiben";
    /// A day that is none.
    pub no_date(text, key, name) = "`{text}` in `{key}` of {name} is no date", "`{text}` in `{key}` bei {name} ist kein Datum";
    /// After "... is": a list that is none.
    pub no_texts = "no list of texts", "keine Liste von Texten";
}
