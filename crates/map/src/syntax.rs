//! What is no TOML at all, in words that say what to do about it.

use crate::phrases as say;
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
        let mend = say::give_another_name().to_owned();
        return (say::stands_a_second_time(held), mend);
    }
    if begins("invalid basic string") && said.contains("visible characters") {
        return own(say::no_letter(), say::take_it_out());
    }
    if begins("invalid basic string") || begins("invalid literal string") {
        return own(say::text_does_not_end(), say::close_with_quote());
    }
    if begins("string values must be quoted") || begins("invalid string, expected") {
        return own(say::words_stand_in_quotes(), say::write_in_such_quotes());
    }
    if begins("unclosed table") {
        return own(say::bracket_does_not_end(), say::close_bracket_of_name());
    }
    if begins("missing comma between array elements") || begins("unclosed array") {
        return own(say::list_has_no_end(), say::close_list());
    }
    if begins("missing comma between key-value pairs") || begins("unclosed inline table") {
        return own(say::brace_has_no_end(), say::close_brace());
    }
    if begins("cannot recurse further") {
        return own(say::lists_too_deep(), say::take_inner_brackets_away());
    }
    if begins("key with no value") {
        return own(say::no_key_with_value(), say::write_key_value());
    }
    (said.to_owned(), say::correct_the_toml().to_owned())
}
