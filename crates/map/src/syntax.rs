//! What is no TOML at all, in words that say what to do about it.

use crate::trouble::Troubles;
use toml_edit::TomlError;

/// Reports why a text is no TOML.
pub(crate) fn tell(error: &TomlError, text: &str, troubles: &mut Troubles) {
    let at = error.span();
    let held = at.clone().and_then(|at| text.get(at)).unwrap_or_default();
    let said = error.message().lines().collect::<Vec<_>>().join(", ");
    let (what, mend) = words(&said, held.trim().trim_matches('"'));
    troubles.error(&at, what, mend);
}

/// The same in plain words, where the cause is one that people meet; else as it was said.
fn words(said: &str, held: &str) -> (String, String) {
    let own = |what: &str, mend: &str| (what.to_owned(), mend.to_owned());
    let begins = |start: &str| said.starts_with(start);
    if begins("duplicate key") {
        let mend = "give one of the two another name, or make one of them".to_owned();
        return (format!("`{held}` stands here a second time"), mend);
    }
    if begins("invalid basic string") && said.contains("visible characters") {
        return own(
            "a sign that is no letter stands in this text",
            "take it out",
        );
    }
    if begins("invalid basic string") || begins("invalid literal string") {
        return own("a text does not end on its line", "close it with `\"`");
    }
    if begins("string values must be quoted") || begins("invalid string, expected") {
        return own("words stand in quotes", "write them as `\"...\"`");
    }
    if begins("unclosed table") {
        return own(
            "the name in brackets does not end here",
            "close it with `]`; a name of several words stands in quotes, such as `[items.\"tray screws\"]`",
        );
    }
    if begins("missing comma between array elements") || begins("unclosed array") {
        return own(
            "a list that began further up has no end before this",
            "close it with `]`, or write `,` between its parts",
        );
    }
    if begins("missing comma between key-value pairs") || begins("unclosed inline table") {
        return own(
            "a `{` that began further up has no end before this",
            "close it with `}`, or write `,` between its parts",
        );
    }
    if begins("cannot recurse further") {
        return own(
            "lists within lists, deeper than anything can mean",
            "take the inner brackets away",
        );
    }
    if begins("key with no value") {
        return own(
            "this line is no key with a value",
            "write it as `key = value`, or begin it with `#` if it is a remark",
        );
    }
    (said.to_owned(), "correct the TOML here".to_owned())
}
