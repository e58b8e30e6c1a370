//! The words of a heading, and the unit in it.

use crate::unit::Unit;

/// Takes the unit off: in brackets, after a comma or slash, or as the last word.
pub(super) fn split_unit(text: &str) -> (String, Option<Unit>) {
    for (open, close) in [('(', ')'), ('[', ']'), ('{', '}'), ('<', '>')] {
        let Some(end) = text.rfind(close) else {
            continue;
        };
        let Some(start) = text.get(..end).and_then(|front| front.rfind(open)) else {
            continue;
        };
        let inside = text.get(start + open.len_utf8()..end).unwrap_or("");
        let unit = Unit::named(inside);
        if unit.is_some() || inside.trim().is_empty() {
            let name = format!(
                "{} {}",
                text.get(..start).unwrap_or(""),
                text.get(end + close.len_utf8()..).unwrap_or("")
            );
            return (name, unit);
        }
    }
    let trimmed = text.trim();
    for parting in [", ", " / ", " in ", "/", " - ", "_", " "] {
        if let Some((name, last)) = trimmed.rsplit_once(parting) {
            // One letter after a blank may be a name ("bank c"): only with its sign or name.
            let certain = last.trim().chars().count() > 1 || last == "V" || last == "%";
            if let Some(unit) = Unit::named(last)
                && certain
                && !name.trim().is_empty()
            {
                return (name.to_owned(), Some(unit));
            }
        }
    }
    // "Speed km/h": the slash belongs to the unit.
    if let Some((name, last)) = trimmed.rsplit_once(' ')
        && let Some(unit) = Unit::named(last)
        && last.contains(['/', '°'])
    {
        return (name.to_owned(), Some(unit));
    }
    (trimmed.to_owned(), None)
}

/// Lower case words without accents; joined words are parted at capitals and figures.
pub(super) fn words(name: &str) -> Vec<String> {
    let mut spaced = String::new();
    let mut before = ' ';
    for c in name.chars() {
        let parted = (before.is_lowercase() && c.is_uppercase())
            || (before.is_alphabetic() && c.is_ascii_digit())
            || (before.is_ascii_digit() && c.is_alphabetic());
        if parted {
            spaced.push(' ');
        }
        before = c;
        match c {
            'ä' | 'á' | 'à' | 'â' | 'ã' | 'Ä' | 'Á' | 'À' | 'Â' | 'Ã' => spaced.push('a'),
            'é' | 'è' | 'ê' | 'É' | 'È' | 'Ê' => spaced.push('e'),
            'í' | 'î' | 'Í' => spaced.push('i'),
            'ö' | 'ó' | 'ô' | 'õ' | 'Ö' | 'Ó' | 'Ô' | 'Õ' => spaced.push('o'),
            'ü' | 'ú' | 'û' | 'Ü' | 'Ú' | 'Û' => spaced.push('u'),
            'ç' | 'Ç' => spaced.push('c'),
            c if c.is_alphanumeric() => spaced.extend(c.to_lowercase()),
            _ => spaced.push(' '),
        }
    }
    spaced.split_whitespace().map(str::to_owned).collect()
}

/// The words of a heading, with the questions one asks of them.
pub(super) struct Words<'a>(pub(super) &'a [String]);

impl Words<'_> {
    /// Whether one of these words stands there, give or take a slip of the pen.
    pub(super) fn any(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| alike(word, wanted)))
    }

    /// Whether a word starts so.
    pub(super) fn starts(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| word.starts_with(wanted)))
    }

    /// Whether a word ends so, as joined words do.
    pub(super) fn ends(&self, wanted: &[&str]) -> bool {
        self.0
            .iter()
            .any(|word| wanted.iter().any(|wanted| word.ends_with(wanted)))
    }

    /// Whether these are all the words there are.
    pub(super) fn only(&self, wanted: &[&str]) -> bool {
        !self.0.is_empty() && self.0.iter().all(|word| wanted.contains(&word.as_str()))
    }
}

/// The same word: equal, or one slip apart in a word of five letters or more.
fn alike(word: &str, wanted: &str) -> bool {
    word == wanted || (wanted.len() >= 5 && word.len() >= 5 && slips(word, wanted) <= 1)
}

/// Letters changed, left out, put in; two swapped count as one. More than one is not counted on.
fn slips(one: &str, other: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (one.chars().collect(), other.chars().collect());
    let front = a.iter().zip(&b).take_while(|(x, y)| x == y).count();
    let tail = |from_a: usize, from_b: usize| a.get(from_a..) == b.get(from_b..);
    let one_slip = tail(front + 1, front + 1)
        || tail(front + 1, front)
        || tail(front, front + 1)
        || (a.get(front) == b.get(front + 1)
            && a.get(front + 1) == b.get(front)
            && tail(front + 2, front + 2));
    match (a == b, one_slip) {
        (true, _) => 0,
        (false, true) => 1,
        (false, false) => 2,
    }
}
