//! What is wrong in a text that a person wrote, and how it is mended.

use phrases::phrases;

phrases! {
    /// What is wrong: the text as a whole; what its reader says of it follows.
    pub no_toml(said) = "this is no TOML: {said}", "das ist kein TOML: {said}";
    /// How it is mended.
    pub write_key_and_value = "write key = value, texts in quotes", "Schlüssel = Wert schreiben, Texte in Anführungszeichen";
    /// What is wrong: a key that this part does not have.
    pub no_key_of(key, name) = "`{key}` is no key of {name}", "„{key}“ gibt es hier nicht: {name}";
    /// How it is mended: the key that it looks like.
    pub did_you_mean(meant) = "did you mean `{meant}`?", "ist „{meant}“ gemeint?";
    /// How it is mended.
    pub not_used(known) = "it is not used; the keys here are {known}", "es bleibt unbenutzt; hier gibt es {known}";
    /// What is wrong: a key is missing.
    pub has_no(name, key) = "{name} has no `{key}`", "{name}: „{key}“ fehlt";
    /// How it is mended.
    pub add(key) = "add {key} = ...", "{key} = ... dazuschreiben";
    /// What is wrong: a key's value; what it is follows.
    pub unsound(key, name, is) = "`{key}` of {name} is {is}", "„{key}“ ist {is}: {name}";
    /// What a value is.
    pub no_number = "no number", "keine Zahl";
    /// How it is mended.
    pub such_as_number(key) = "write it such as {key} = 12.5", "etwa {key} = 12.5 schreiben";
    /// What a value is.
    pub no_list_of_numbers = "no list of numbers", "keine Liste von Zahlen";
    /// How it is mended.
    pub such_as_numbers(key) = "write it such as {key} = [0.1, 0.5, 0.9]", "etwa {key} = [0.1, 0.5, 0.9] schreiben";
    /// What a value is.
    pub no_count = "no count", "keine Anzahl";
    /// How it is mended.
    pub whole_number_from(least) = "write a whole number from {least}", "eine ganze Zahl ab {least} schreiben";
    /// What a value is.
    pub neither_true_nor_false = "neither true nor false", "weder true noch false";
    /// How it is mended.
    pub write_true_or_false = "write true or false", "true oder false schreiben";
    /// What a value is.
    pub not_known(word) = "{word}, which is not known", "{word}, und das ist nicht bekannt";
    /// How it is mended; the words in quotes follow.
    pub write_one_of(words) = "write one of {words}", "eines davon schreiben: {words}";
    /// What a value is.
    pub no_text = "no text", "kein Text";
    /// How it is mended.
    pub write_in_quotes = "write it in quotes", "in Anführungszeichen schreiben";
    /// What is wrong.
    pub no_list(key) = "`{key}` is no list", "„{key}“ ist keine Liste";
    /// How it is mended.
    pub in_two_brackets(key) = "write [[{key}]], in two brackets, for each", "für jedes [[{key}]] in doppelten Klammern schreiben";
    /// What is wrong.
    pub no_table(key) = "`{key}` is no table", "„{key}“ ist keine Tabelle";
    /// How it is mended.
    pub lines_below(key) = "write [{key}], with its lines below", "[{key}] schreiben, seine Zeilen darunter";
    /// What a table is called where something in it is wrong.
    pub the_table(key) = "the {key}", "{key}";
}
