//! From bytes to lines and cells.

/// The text of a file, whatever its encoding: UTF-8 or UTF-16 by its mark, else UTF-8, else
/// one byte a letter (as older programs write °).
pub(crate) fn decoded(bytes: &[u8]) -> String {
    let pairs = |rest: &[u8], join: fn([u8; 2]) -> u16| {
        let units: Vec<u16> = rest
            .chunks_exact(2)
            .filter_map(|pair| <[u8; 2]>::try_from(pair).ok())
            .map(join)
            .collect();
        String::from_utf16_lossy(&units)
    };
    match bytes {
        [0xFF, 0xFE, rest @ ..] => pairs(rest, u16::from_le_bytes),
        [0xFE, 0xFF, rest @ ..] => pairs(rest, u16::from_be_bytes),
        [0xEF, 0xBB, 0xBF, rest @ ..] => one_byte_or_utf8(rest),
        _ => one_byte_or_utf8(bytes),
    }
}

fn one_byte_or_utf8(bytes: &[u8]) -> String {
    std::str::from_utf8(bytes).map_or_else(
        |_| bytes.iter().map(|byte| char::from(*byte)).collect(),
        str::to_owned,
    )
}

/// The cells of a line; a cell in quotes may hold the delimiter.
pub(crate) fn cells(line: &str, delimiter: char) -> Vec<String> {
    let mut cells = Vec::new();
    let mut cell = String::new();
    let mut quoted = false;
    let mut letters = line.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            letter if letter == delimiter && !quoted => cells.push(std::mem::take(&mut cell)),
            letter => cell.push(letter),
        }
    }
    cells.push(cell);
    for cell in &mut cells {
        let trimmed = cell.trim();
        if trimmed.len() != cell.len() {
            *cell = trimmed.to_owned();
        }
    }
    cells
}

/// The start of a line, for an error.
pub(crate) fn start_of(line: &str) -> String {
    let mut start: String = line.trim().chars().take(60).collect();
    if line.trim().chars().count() > 60 {
        start.push('…');
    }
    start.replace(':', " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_with_quotes() {
        assert_eq!(cells("a;\"b;c\" ;\"d\"\"e\"", ';'), ["a", "b;c", "d\"e"]);
        assert_eq!(cells("", ','), [""]);
        assert_eq!(cells("1,2,", ','), ["1", "2", ""]);
    }

    #[test]
    fn every_encoding() {
        assert_eq!(decoded(b"\xEF\xBB\xBFa"), "a");
        assert_eq!(decoded(b"\xFF\xFEa\0"), "a");
        assert_eq!(decoded(b"\xFE\xFF\0a"), "a");
        assert_eq!(decoded(b"\xB0C"), "°C");
        assert_eq!(decoded("°C".as_bytes()), "°C");
    }
}
