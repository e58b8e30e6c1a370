//! Every text that a person reads stands in the phrases modules, where each language stands beside
//! the other: none stands in a page itself, and none in a script.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// What is no text, though it looks like one: in which file, and how it begins. Browsers and
/// programs read it.
const NOT_TEXT: &[(&str, &str)] = &[
    ("assets.rs", "// THE PHRASES"),
    ("assets.rs", "\"THE VERSION"),
    ("assets.rs", "[\"THE FILES"),
    ("assets.rs", "any maskable"),
    ("guard.rs", "default-src"),
    // How things are named within what people typed, in either language.
    ("map_drawing.rs", " at the"),
    ("map_drawing.rs", " of the"),
    ("map_drawing.rs", " in the"),
    ("map_drawing.rs", " an der"),
    ("how_to.rs", "default-src"),
    ("tap.rs", "press confirm"),
    ("pages/file.rs", "private, no-cache"),
    // A map's text is written the same in every language.
    ("pages/maps/edit/form.rs", "vehicle = {}"),
    ("pages/desk/ask.rs", "way phone"),
    ("pages/desk/books.rs", "private, no-store"),
    ("pages/desk/calls.rs", "no upper"),
    ("pages/desk/calls.rs", "wait upper"),
    ("pages/desk/calls.rs", "yes upper"),
    ("pages/desk/calls.rs", "strong upper"),
    ("pages/desk/day.rs", "machine work"),
    ("pages/desk/day.rs", "left, look"),
    ("pages/desk/day.rs", "mark home"),
    ("pages/desk/day.rs", "mark dashed"),
    ("pages/desk/find.rs", "left, look"),
    ("pages/desk/find.rs", "machine work"),
    ("pages/desk/find.rs", "at work"),
    ("pages/desk/paper_file.rs", "private, no-store"),
    ("pages/vehicle/choices.rs", "wheel well"),
    ("pages/vehicle/coolant/test.rs", "gauge cold"),
    ("pages/vehicle/coolant/test.rs", "as cold as the shop"),
    ("pages/vehicle/coolant/test.rs", "coolant test limit"),
    ("pages/vehicle/coolant/test.rs", "coolant test minutes"),
    ("pages/vehicle/coolant/test.rs", "gauge at {minutes:.1} min"),
    ("pages/vehicle/coolant.rs", "freezes at"),
    ("pages/vehicle/measures.rs", "front left"),
    ("pages/vehicle/measures.rs", "front right"),
    ("pages/vehicle/measures.rs", "rear left"),
    ("pages/vehicle/measures.rs", "rear right"),
    ("pages/vehicle/snag/chosen.rs", "mark home"),
    ("pages/vehicle/snag/getting_out.rs", "die-cast aluminium"),
    ("pages/vehicle/snag/getting_out.rs", "grey iron"),
    ("pages/vehicle/snag/getting_out.rs", "ductile iron"),
    ("pages/vehicle/stage.rs", "{}: the way back"),
];

/// Attributes whose values nobody reads.
const UNREAD: &[&str] = &[
    "accept",
    "action",
    "aria-current",
    "aria-describedby",
    "aria-hidden",
    "aria-invalid",
    "aria-labelledby",
    "autocapitalize",
    "autocomplete",
    "charset",
    "class",
    "content",
    "d",
    "enctype",
    "form",
    "href",
    "id",
    "inputmode",
    "lang",
    "loading",
    "maxlength",
    "media",
    "method",
    "name",
    "pattern",
    "rel",
    "role",
    "rows",
    "spellcheck",
    "src",
    "tabindex",
    "type",
    "value",
    "viewBox",
];

/// Attributes of ours whose values are said by a script.
const SAID: &[&str] = &["data-one-of", "data-says", "data-whose"];

#[derive(Debug, Clone, PartialEq)]
enum Token {
    Word(String),
    Sign(char),
    Text { line: usize, text: String },
}

/// The words, signs and texts of a source, without its comments.
fn tokens(source: &str) -> Vec<Token> {
    let letters: Vec<char> = source.chars().collect();
    let at = |nth: usize| letters.get(nth).copied().unwrap_or('\0');
    let (mut tokens, mut nth, mut line) = (Vec::new(), 0, 1);
    while nth < letters.len() {
        let letter = at(nth);
        if letter == '/' && at(nth + 1) == '/' {
            while nth < letters.len() && at(nth) != '\n' {
                nth += 1;
            }
        } else if letter == '/' && at(nth + 1) == '*' {
            while nth < letters.len() && (at(nth), at(nth + 1)) != ('*', '/') {
                line += usize::from(at(nth) == '\n');
                nth += 1;
            }
            nth += 2;
        } else if letter == 'r'
            && (at(nth + 1) == '"' || (at(nth + 1) == '#' && "#\"".contains(at(nth + 2))))
        {
            let hashes = (nth + 1..).take_while(|one| at(*one) == '#').count();
            let begun = nth + hashes + 2;
            let is_end =
                |one: usize| at(one) == '"' && (1..=hashes).all(|more| at(one + more) == '#');
            let end = (begun..letters.len())
                .find(|one| is_end(*one))
                .unwrap_or(letters.len());
            let text: String = letters[begun..end].iter().collect();
            let lines = text.matches('\n').count();
            tokens.push(Token::Text { line, text });
            line += lines;
            nth = end + 1 + hashes;
        } else if letter == '"' {
            let (text, end) = quoted(&letters, nth + 1);
            let lines = letters[nth..end].iter().filter(|one| **one == '\n').count();
            tokens.push(Token::Text { line, text });
            line += lines;
            nth = end;
        } else if letter == '\'' {
            // A letter in quotes; a lifetime has no second quote.
            if at(nth + 1) == '\\' {
                nth += 3;
                while nth < letters.len() && at(nth) != '\'' {
                    nth += 1;
                }
                nth += 1;
            } else {
                nth += if at(nth + 2) == '\'' { 3 } else { 1 };
            }
        } else if letter.is_alphanumeric() || letter == '_' {
            let word: String = letters[nth..]
                .iter()
                .take_while(|one| one.is_alphanumeric() || **one == '_')
                .collect();
            nth += word.chars().count();
            tokens.push(Token::Word(word));
        } else {
            line += usize::from(letter == '\n');
            if !letter.is_whitespace() {
                tokens.push(Token::Sign(letter));
            }
            nth += 1;
        }
    }
    tokens
}

/// A text from behind its first quote, and where it ends.
fn quoted(letters: &[char], mut nth: usize) -> (String, usize) {
    let mut text = String::new();
    while let Some(letter) = letters.get(nth) {
        match letter {
            '"' => return (text, nth + 1),
            '\\' => {
                nth += 1;
                match letters.get(nth) {
                    Some('n') => text.push('\n'),
                    // Any sign in its number: what counts is that it is no letter.
                    Some('u') => {
                        text.push('\u{2026}');
                        while letters.get(nth).is_some_and(|one| *one != '}') {
                            nth += 1;
                        }
                    }
                    Some(other) => text.push(*other),
                    None => {}
                }
                nth += 1;
            }
            other => {
                text.push(*other);
                nth += 1;
            }
        }
    }
    (text, nth)
}

/// Where what opens here is closed again.
fn closed(tokens: &[Token], opens: usize) -> usize {
    let mut deep = 0_usize;
    for (nth, token) in tokens.iter().enumerate().skip(opens) {
        match token {
            Token::Sign('(' | '[' | '{') => deep += 1,
            Token::Sign(')' | ']' | '}') => {
                deep = deep.saturating_sub(1);
                if deep == 0 {
                    return nth;
                }
            }
            _ => {}
        }
    }
    tokens.len()
}

fn word(token: Option<&Token>) -> &str {
    match token {
        Some(Token::Word(word)) => word,
        _ => "",
    }
}

fn is(token: Option<&Token>, sign: char) -> bool {
    token == Some(&Token::Sign(sign))
}

/// The name of an attribute that ends just before here, such as `data-one-of`; nothing if what
/// stands there is a variable.
fn attribute(tokens: &[Token], end: usize) -> Option<String> {
    let mut name = word(tokens.get(end.checked_sub(1)?)).to_owned();
    let mut begin = end - 1;
    while begin >= 2 && is(tokens.get(begin - 1), '-') && !word(tokens.get(begin - 2)).is_empty() {
        name = format!("{}-{name}", word(tokens.get(begin - 2)));
        begin -= 2;
    }
    let before = begin.checked_sub(1).and_then(|before| tokens.get(before));
    let variable = ["let", "mut", "const", "static"].contains(&word(before)) || is(before, ':');
    (!variable && !name.is_empty()).then_some(name)
}

/// The texts of a source that a person may read, each with its line.
fn read_by_people(source: &str) -> Vec<(usize, String)> {
    let tokens = tokens(source);
    let (mut found, mut nth) = (Vec::new(), 0);
    while nth < tokens.len() {
        let next = tokens.get(nth + 1);
        match &tokens[nth] {
            // An attribute of Rust; one of a test takes what it stands before along.
            Token::Sign('#')
                if is(next, '[') || (is(next, '!') && is(tokens.get(nth + 2), '[')) =>
            {
                let opens = if is(next, '[') { nth + 1 } else { nth + 2 };
                let ends = closed(&tokens, opens);
                let own = &tokens[opens..ends.min(tokens.len())];
                let of_tests = own.iter().any(|token| word(Some(token)) == "cfg")
                    && own.iter().any(|token| word(Some(token)) == "test");
                nth = ends + 1;
                if of_tests {
                    let body = (nth..tokens.len())
                        .find(|one| matches!(tokens[*one], Token::Sign('{' | ';')));
                    let Some(body) = body else { break };
                    nth = if is(tokens.get(body), '{') {
                        closed(&tokens, body) + 1
                    } else {
                        body + 1
                    };
                }
            }
            // What a program says when it breaks, and what it is made of.
            Token::Word(name) if is_for_programs(name) && (is(next, '(') || is(next, '!')) => {
                let opens = if is(next, '!') { nth + 2 } else { nth + 1 };
                nth = closed(&tokens, opens) + 1;
            }
            // A command that is typed.
            Token::Word(name) if name == "code" && is(next, '{') => {
                nth = closed(&tokens, nth + 1) + 1;
            }
            Token::Sign('=') => {
                let name = attribute(&tokens, nth);
                let unread = name.is_some_and(|name| {
                    UNREAD.contains(&name.as_str())
                        || (name.starts_with("data-") && !SAID.contains(&name.as_str()))
                });
                nth = match next {
                    Some(Token::Text { .. }) if unread => nth + 2,
                    Some(Token::Sign('(' | '[' | '{')) if unread => closed(&tokens, nth + 1) + 1,
                    _ => nth + 1,
                };
            }
            Token::Text { line, text } => {
                if is_read(text) {
                    found.push((*line, text.clone()));
                }
                nth += 1;
            }
            _ => nth += 1,
        }
    }
    found
}

fn is_for_programs(name: &str) -> bool {
    const NAMES: [&str; 10] = [
        "assert",
        "assert_eq",
        "assert_ne",
        "debug_assert",
        "expect",
        "include_str",
        "other",
        "panic",
        "unreachable",
        "concat",
    ];
    NAMES.contains(&name)
}

/// Two words or more, or one that begins with a capital letter.
fn is_read(text: &str) -> bool {
    let is_word = |one: &str| {
        let bare =
            one.trim_matches(|sign: char| !sign.is_alphanumeric() && !"{}=/<>%".contains(sign));
        !bare.is_empty()
            && bare
                .chars()
                .all(|sign| sign.is_alphabetic() || "'’-".contains(sign))
    };
    let words = text.split_whitespace().filter(|one| is_word(one)).count();
    let mut letters = text.chars();
    let (first, second) = (letters.next(), letters.next());
    let named = first.is_some_and(char::is_uppercase) && second.is_some_and(char::is_lowercase);
    words >= 2 || named
}

fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn files_in(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files_in(&path, ending));
        } else if path.extension().is_some_and(|own| own == ending) {
            found.push(path);
        }
    }
    found.sort();
    found
}

#[test]
fn what_people_read_stands_in_the_phrases() {
    let root = here("src");
    let mut wrong = Vec::new();
    for path in files_in(&root, "rs") {
        let name = path
            .strip_prefix(&root)
            .unwrap()
            .to_str()
            .unwrap()
            .replace('\\', "/");
        if name.starts_with("phrases/") {
            continue;
        }
        let mut found = read_by_people(&std::fs::read_to_string(&path).unwrap());
        found.retain(|(_, text)| {
            let known = |(file, begins): &(&str, &str)| name == *file && text.starts_with(begins);
            !NOT_TEXT.iter().any(known)
        });
        wrong.extend(
            found
                .iter()
                .map(|(line, text)| format!("src/{name}:{line}: {text:?}")),
        );
    }
    assert!(
        wrong.is_empty(),
        "texts outside src/phrases:\n{}",
        wrong.join("\n")
    );
}

#[test]
fn what_is_read_is_told_from_what_is_not() {
    let source = "
        /// A comment of two words.
        #[doc = \"an attribute of two words\"]
        fn page() -> Markup {
            let name = \"A name in a variable\";
            panic!(\"the lock was broken {}\", 1);
            html! {
                a class=\"row strong\" href=(format!(\"/maps/{id} and more\")) title=\"Two words\" { \"Saved\" }
                div class={ \"what strong\" @if on { \" two words\" } } data-commands=\"some long thing\" {}
                fieldset data-one-of=\"Tick one of them\" { code { \"buttonup serve here\" } }
                'a' (json!({ \"key\": \"one-word\" })) span { \"lower case words\" }
            }
        }
        #[cfg(test)]
        mod tests { fn one() { let said = \"A text of a test\"; } }
    ";
    let found: Vec<String> = read_by_people(source)
        .into_iter()
        .map(|(_, text)| text)
        .collect();
    assert_eq!(
        found,
        [
            "A name in a variable",
            "Two words",
            "Saved",
            "Tick one of them",
            "lower case words"
        ]
    );
}

// ---- the scripts --------------------------------------------------------------------

/// A text of the scripts: its name, and what is said in each language.
struct Row {
    name: String,
    noted: bool,
    said: Vec<(String, String)>,
}

fn rows(source: &str) -> Vec<Row> {
    let begin = source.find("const PHRASES = {").unwrap();
    let end = begin + source[begin..].find("\n};").unwrap();
    let block = &source[begin..end];
    let mut rows = Vec::new();
    let mut before = "";
    for line in block.lines().skip(1) {
        // A row stands two spaces in; what is further in belongs to the row above it.
        if let Some((name, rest)) = line
            .strip_prefix("  ")
            .and_then(|line| line.split_once(": {"))
            && !name.starts_with([' ', '/'])
        {
            rows.push(Row {
                name: name.to_owned(),
                noted: before.trim_start().starts_with("//"),
                said: said(rest),
            });
        } else if let Some(row) = rows.last_mut()
            && line.starts_with("    ")
        {
            row.said.extend(said(line));
        }
        before = line;
    }
    rows
}

/// Each language in a line, with its text.
fn said(line: &str) -> Vec<(String, String)> {
    let all = tokens(line);
    let each = all.windows(3).filter_map(|three| match three {
        [
            Token::Word(language),
            Token::Sign(':'),
            Token::Text { text, .. },
        ] => Some((language.clone(), text.clone())),
        _ => None,
    });
    each.collect()
}

fn holes(text: &str) -> BTreeSet<&str> {
    text.split('{')
        .skip(1)
        .filter_map(|rest| rest.split_once('}').map(|(hole, _)| hole))
        .collect()
}

#[test]
fn what_scripts_say_is_said_in_every_language() {
    let languages: BTreeSet<&str> = phrases::Language::ALL.map(phrases::Language::tag).into();
    let source = std::fs::read_to_string(here("assets/phrases.js")).unwrap();
    let rows = rows(&source);
    assert!(rows.len() > 40, "{}", rows.len());
    for Row { name, noted, said } in &rows {
        assert!(noted, "{name} has no note on where it stands");
        let told: BTreeSet<&str> = said.iter().map(|(language, _)| language.as_str()).collect();
        assert_eq!(told, languages, "{name}");
        assert_eq!(said.len(), languages.len(), "{name} says something twice");
        let (_, first) = &said[0];
        for (language, text) in said {
            assert!(!text.trim().is_empty(), "{name} in {language}");
            assert_eq!(holes(text), holes(first), "{name} in {language}");
        }
    }
    let names: BTreeSet<&str> = rows.iter().map(|row| row.name.as_str()).collect();
    assert_eq!(names.len(), rows.len(), "a name stands twice");
    let scripts: Vec<String> = files_in(&here("assets"), "js")
        .into_iter()
        .filter(|path| !path.ends_with("phrases.js"))
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect();
    let scripts = scripts.join("\n");
    for name in &names {
        assert!(
            scripts.contains(&format!("\"{name}\"")),
            "{name} is said nowhere"
        );
    }
    for asks in ["say(\"", "words(\""] {
        for rest in scripts.split(asks).skip(1) {
            let name = rest.split('"').next().unwrap();
            assert!(names.contains(name), "there is no text {name}");
        }
    }
}

#[test]
fn scripts_say_nothing_by_themselves() {
    let mut wrong = Vec::new();
    for path in files_in(&here("assets"), "js") {
        if path.ends_with("phrases.js") {
            continue;
        }
        let source = std::fs::read_to_string(&path).unwrap();
        let file = path.file_name().unwrap().to_str().unwrap();
        for (nth, line) in source.lines().enumerate() {
            if line.trim_start().starts_with("//") {
                continue;
            }
            for text in in_quotes(line) {
                if is_said(&text) {
                    wrong.push(format!("assets/{file}:{}: {text:?}", nth + 1));
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "texts outside assets/phrases.js:\n{}",
        wrong.join("\n")
    );
}

/// What stands between quotes in a line of a script.
fn in_quotes(line: &str) -> Vec<String> {
    let letters: Vec<char> = line.chars().collect();
    let (mut found, mut nth) = (Vec::new(), 0);
    while nth < letters.len() {
        let quote = letters[nth];
        nth += 1;
        if quote != '"' && quote != '`' {
            continue;
        }
        let mut text = String::new();
        while nth < letters.len() && letters[nth] != quote {
            nth += usize::from(letters[nth] == '\\');
            text.extend(letters.get(nth));
            nth += 1;
        }
        nth += 1;
        found.push(text);
    }
    found
}

/// Whether a script says it to a person: what begins with a capital letter, but for the names that
/// browsers have for things.
fn is_said(text: &str) -> bool {
    const NAMES: [&str; 3] = ["QuotaExceededError", "Content-Type", "Escape"];
    let mut letters = text.chars();
    let first = letters.next().is_some_and(char::is_uppercase);
    first && letters.next().is_some_and(char::is_lowercase) && !NAMES.contains(&text)
}
