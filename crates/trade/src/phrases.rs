//! What the trade's reading says to people: what could not be read, and how to mend it.

use phrases::phrases;

phrases! {
    /// What could not be read of a typed line, and how to mend it: a negative number.
    pub number_below_nothing = "a number below nothing; write how many there are",
        "eine Zahl unter null; schreiben, wie viele es sind";
    /// What could not be read of a typed line, and how to mend it: none of something.
    pub count_of_nothing = "a count of nothing; write how many there are",
        "die Anzahl ist null; schreiben, wie viele es sind";
    /// What could not be read of a typed line, and how to mend it: a number alone.
    pub number_with_no_unit = "a number with no unit; write the unit, or a whole number of pieces",
        "eine Zahl ohne Einheit; die Einheit schreiben, oder eine ganze Stückzahl";
    /// What could not be read of a typed line, and how to mend it: a number too large to be a count.
    pub more_than_999_pieces = "more than 999 pieces; if it is a part number, write it elsewhere",
        "mehr als 999 Stück; eine Teilenummer anderswo schreiben";
    /// What could not be read of a typed line, and how to mend it.
    pub two_counts_for_one_thing = "two counts for one thing; write them as two things",
        "zwei Stückzahlen für ein Teil; als zwei Teile schreiben";
    /// What could not be read of a typed line, and how to mend it: a thing that is not known.
    pub not_known = "not known; say what it is, or which system it belongs to",
        "nicht bekannt; angeben, was es ist oder zu welchem System es gehört";

    /// A refusal of a shop's own table of words; where, and what is wrong.
    pub not_toml(place, what) = "{place}: not TOML as this table is written: {what}; mend it there",
        "{place}: kein TOML, wie diese Tabelle geschrieben wird: {what}; dort berichtigen";
    /// A refusal of a shop's own table of words; where, the word, what it should be, and what can be.
    pub no_such_word(place, word, meant, known) = "{place}: `{word}` is no {meant}; use one of {known}",
        "{place}: „{word}“ gibt es nicht als {meant}; eines von diesen nehmen: {known}";
    /// A refusal of a shop's own table of words; where, and the most works.
    pub too_many_works(place, most) = "{place}: more than {most} works; take one away",
        "{place}: mehr als {most} Arbeiten; eine wegnehmen";
    /// A refusal of a shop's own table of words; where, and what stands there twice.
    pub stands_there_twice(place, id) = "{place}: `{id}` stands there twice; give one of them another id",
        "{place}: „{id}“ steht dort zweimal; eines davon anders nennen";
    /// A refusal of a shop's own word; where, the word, and what it means already.
    pub may_not_be_laxer(place, name, means) =
        "{place}: `{name}` already means {means}; a shop's word may not be laxer than it, so make it at least as strict or take another word",
        "{place}: „{name}“ bedeutet schon {means}; ein Wort der Werkstatt darf nicht lockerer sein, also mindestens so streng machen oder ein anderes Wort nehmen";
    /// A refusal of a shop's own word; where, and the word.
    pub holds_no_word(place, name) = "{place}: `{name}` holds no word; write at least one",
        "{place}: „{name}“ enthält kein Wort; mindestens eines schreiben";

    /// Where something is wrong: the table of a shop's own words.
    pub the_shops_own_table = "the shop's own table", "eigene Tabelle der Werkstatt";
    /// What a word of a table should be.
    pub work = "work", "Arbeit";
    /// What a word of a table should be.
    pub share = "share", "Zuordnung";
    /// What a word of a table should be.
    pub kind = "kind", "Art";
    /// What a word of a table should be.
    pub zone = "zone", "Bereich";
    /// What a word of a table should be.
    pub system = "system", "System";
    /// What a word of a table should be.
    pub gate = "gate", "Freigabe";
    /// What a word of a table should be.
    pub grade = "grade", "Grad";
    /// What a word of a table should be.
    pub sort = "sort", "Sorte";
    /// What a word of a table should be.
    pub source = "source", "Quelle";
    /// What can be, in a refusal of a table.
    pub those_of_the_works = "those of works.toml", "die aus works.toml";
    /// What can be, in a refusal of a table.
    pub those_of_the_sources = "those of sources.toml", "die aus sources.toml";
    /// What can be, in a refusal of a table.
    pub those_of_the_tables = "those of the tables", "die aus den Tabellen";
    /// What can be, in a refusal of a table.
    pub those_of_the_tables_of_sorts = "those of the tables of sorts", "die aus den Tabellen der Sorten";
}
