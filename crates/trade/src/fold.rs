//! Text as it is compared: small letters, no accents, umlauts written out.

/// A word as it is compared.
pub(crate) fn fold(word: &str) -> String {
    let mut out = String::with_capacity(word.len() + 2);
    for c in word.chars() {
        match c {
            'A'..='Z' => out.push(c.to_ascii_lowercase()),
            'a'..='z' | '0'..='9' => out.push(c),
            'ä' | 'Ä' => out.push_str("ae"),
            'ö' | 'Ö' => out.push_str("oe"),
            'ü' | 'Ü' => out.push_str("ue"),
            'ß' | 'ẞ' => out.push_str("ss"),
            'é' | 'è' | 'ê' | 'É' | 'È' => out.push('e'),
            'á' | 'à' | 'â' => out.push('a'),
            'ó' | 'ò' | 'ô' => out.push('o'),
            'ú' | 'ù' | 'û' => out.push('u'),
            'í' | 'ì' | 'î' => out.push('i'),
            'ç' => out.push('c'),
            '×' => out.push('x'),
            '\'' | '’' | '`' | '\u{ad}' => {}
            other => out.extend(other.to_lowercase()),
        }
    }
    for ending in ["'s", "’s"] {
        if word.ends_with(ending) && out.ends_with('s') {
            out.pop();
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::fold;

    #[test]
    fn letters_are_folded() {
        assert_eq!(fold("Bremsbeläge"), "bremsbelaege");
        assert_eq!(fold("driver’s"), "driver");
        assert_eq!(fold("Fußraum"), "fussraum");
    }
}
