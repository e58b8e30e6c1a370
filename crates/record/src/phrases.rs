//! What is wrong with a value that was sent, as a page shows it.

use phrases::phrases;

phrases! {
    /// What is wrong with a name of a thing; the name stands in quotes.
    pub no_name(text, longest) = "{text} is no name; use 1 to {longest} letters, digits, or - _ . :",
        "{text} ist kein Name; 1 bis {longest} Buchstaben, Ziffern oder - _ . : nehmen";
    /// What is wrong with a number; what was written stands in quotes.
    pub no_decimal(text) = "{text} is no decimal number; write it like \"904.40\"",
        "{text} ist keine Zahl; so schreiben: 904,40";
    /// What is wrong with a day; what was written stands in quotes.
    pub no_day(text) = "{text} is no day; write it like \"2026-11-25\"",
        "{text} ist kein Tag; so schreiben: 2026-11-25";
    /// What is wrong with a time; what was written stands in quotes.
    pub no_time(text) = "{text} is no time; write it like \"2026-11-25T08:30:00Z\"",
        "{text} ist kein Zeitpunkt; so schreiben: 2026-11-25T08:30:00Z";
    /// What is wrong with a text without its salt.
    pub send_text_and_salt = "send {\"text\": ..., \"salt\": 64 hexadecimal digits made on the device}",
        "{\"text\": ..., \"salt\": 64 hexadezimale Ziffern vom Gerät} senden";
    /// What is wrong with the name of a reason.
    pub reason_too_long = "too long for a reason's name", "zu lang für den Namen eines Grundes";
    /// What is wrong with a text.
    pub bytes_at_most(length, most) = "{length} bytes; at most {most} fit", "{length} Bytes; höchstens {most} passen";
    /// What is wrong with a list.
    pub entries_at_most(length, most) = "{length} entries; at most {most} fit", "{length} Zeilen; höchstens {most} passen";
    /// What is wrong with a text; where it stands goes first.
    pub bad_salt(at) = "{at}: the salt must be 64 hexadecimal digits made at random on the device",
        "{at}: „salt“ muss aus 64 hexadezimalen Ziffern bestehen, zufällig auf dem Gerät gemacht";
    /// What is wrong with a text; where it stands goes first.
    pub empty_text(at) = "{at}: the text is empty; leave it out instead", "{at}: der Text ist leer; dann weglassen";
    /// What is wrong with a text or a file; where it stands goes first.
    pub text_too_long(at, length, most) = "{at}: {length} bytes; at most {most} fit", "{at}: {length} Bytes; höchstens {most} passen";
    /// What is wrong with a file; where it stands goes first.
    pub bad_file(at) = "{at}: the file must be base64 text with its media type beside it",
        "{at}: die Datei muss als Base64 kommen, ihre Art daneben";
    /// What would not come back from the record.
    pub would_not_read_back(kind, stream, why) = "a {kind} of {stream} would not read back as it was meant: {why}",
        "{kind} in {stream} käme nicht so zurück, wie es gemeint war: {why}";
}
