//! A line cut into chunks of letters and digits, and what stands between them.

use std::ops::Range;

/// What a piece of a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mark {
    /// Letters and digits.
    Word,
    /// Parts two things: comma, semicolon, plus, ampersand, line end.
    Parts,
    /// A slash between words: two things, or two names of one.
    Slash,
    Open,
    Close,
    /// A minus before a digit: a negative number.
    Minus,
}

/// One piece, with its place in the line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Chunk {
    pub place: Range<usize>,
    pub mark: Mark,
    /// Tied to the chunk before it by a hyphen.
    pub tied: bool,
}

struct Scan<'a> {
    line: &'a str,
    chars: Vec<(usize, char)>,
    out: Vec<Chunk>,
}

/// Cuts a line.
pub(crate) fn cut(line: &str) -> Vec<Chunk> {
    let mut scan = Scan {
        line,
        chars: line.char_indices().collect(),
        out: Vec::with_capacity(8),
    };
    let mut at = 0;
    let mut tied = false;
    while let Some((start, c)) = scan.char(at) {
        if wordy(c) || (c == '#' && scan.is(at + 1, |c| c.is_ascii_digit())) {
            let end = scan.word_end(at);
            scan.push(start..scan.byte(end), Mark::Word, tied);
            tied = false;
            at = end;
            continue;
        }
        tied = false;
        match c {
            ',' | ';' | '&' | '\n' | '|' | '+' | '•' => {
                scan.push(start..start + c.len_utf8(), Mark::Parts, false);
            }
            '(' | '[' | '{' => scan.push(start..start + 1, Mark::Open, false),
            ')' | ']' | '}' => scan.push(start..start + 1, Mark::Close, false),
            '.' if scan.ends_sentence(at) => scan.push(start..start + 1, Mark::Parts, false),
            '-' | '–' | '−' => {
                let before = at.checked_sub(1).and_then(|at| scan.char(at));
                let glued = before.is_some_and(|(_, c)| wordy(c));
                if !glued && scan.is(at + 1, |c| c.is_ascii_digit()) {
                    scan.push(start..start + c.len_utf8(), Mark::Minus, false);
                } else if glued && scan.is(at + 1, wordy) {
                    tied = true;
                } else if !glued && scan.is(at + 1, char::is_whitespace) {
                    scan.push(start..start + c.len_utf8(), Mark::Parts, false);
                }
            }
            '/' if !scan.short_slash(at) => scan.push(start..start + 1, Mark::Slash, false),
            _ => {}
        }
        at += 1;
    }
    scan.out
}

fn wordy(c: char) -> bool {
    c.is_alphanumeric() || c == '°'
}

impl Scan<'_> {
    fn char(&self, at: usize) -> Option<(usize, char)> {
        self.chars.get(at).copied()
    }

    fn is(&self, at: usize, test: impl Fn(char) -> bool) -> bool {
        self.char(at).is_some_and(|(_, c)| test(c))
    }

    fn byte(&self, at: usize) -> usize {
        self.char(at).map_or(self.line.len(), |(byte, _)| byte)
    }

    fn push(&mut self, place: Range<usize>, mark: Mark, tied: bool) {
        self.out.push(Chunk { place, mark, tied });
    }

    /// Where the chunk that begins at `at` ends.
    fn word_end(&self, at: usize) -> usize {
        let digit = |at: usize| self.is(at, |c| c.is_ascii_digit());
        let letter = |at: usize| self.is(at, char::is_alphabetic);
        let mut end = at + 1;
        while let Some((_, c)) = self.char(end) {
            let goes_on = match c {
                '.' | ',' | '/' => digit(end - 1) && digit(end + 1) && !self.lists_numbers(end),
                '-' => {
                    (digit(end - 1) && digit(end + 1))
                        || (self.is(end - 1, |c| c.eq_ignore_ascii_case(&'w'))
                            && end >= at + 2
                            && digit(end - 2)
                            && digit(end + 1))
                }
                '\'' | '’' | '`' => letter(end - 1) && letter(end + 1),
                '\u{ad}' => true,
                '·' => letter(end - 1) && letter(end + 1),
                '"' | '″' => digit(end - 1) && !letter(end + 1),
                '+' => {
                    end == at + 1
                        && self.is(at, |c| matches!(c, 'b' | 'B' | 'd' | 'D'))
                        && !self.is(end + 1, wordy)
                }
                c => wordy(c),
            };
            if !goes_on {
                break;
            }
            end += 1;
        }
        end
    }

    /// "1,2,3" names three positions: the commas part nothing and are no decimal signs.
    fn lists_numbers(&self, at: usize) -> bool {
        self.is(at, |c| c == ',')
            && self.is(at + 2, |c| c == ',')
            && self.is(at + 3, |c| c.is_ascii_digit())
    }

    /// A point after a word of more than three letters, with something after it.
    fn ends_sentence(&self, at: usize) -> bool {
        self.out.last().is_some_and(|chunk| {
            chunk.place.end == self.byte(at) && self.line[chunk.place.clone()].chars().count() > 3
        }) && self.is(at + 1, char::is_whitespace)
    }

    /// The slash of "n/s/f", "a/c", "w/": part of an abbreviation.
    fn short_slash(&self, at: usize) -> bool {
        let Some(before) = self.out.last() else {
            return true;
        };
        if before.place.end != self.byte(at) {
            return false;
        }
        let before = &self.line[before.place.clone()];
        let after = (at + 1..)
            .map_while(|at| self.char(at).map(|(_, c)| c))
            .take_while(|c| wordy(*c))
            .count();
        before.chars().count() <= 2 && (after <= 2 || before.len() == 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(line: &str) -> Vec<&str> {
        cut(line)
            .into_iter()
            .map(|chunk| &line[chunk.place])
            .collect()
    }

    #[test]
    fn abbreviations_and_numbers_stay_whole() {
        assert_eq!(
            words("calliper o/s/f off"),
            ["calliper", "o", "s", "f", "off"]
        );
        assert_eq!(words("1,5 l"), ["1,5", "l"]);
        assert_eq!(
            words("P21/5W M12x1.25 7/16"),
            ["P21/5W", "M12x1.25", "7/16"]
        );
        assert_eq!(words("5W-30 B+ nut"), ["5W-30", "B+", "nut"]);
        assert_eq!(words("pads, discs"), ["pads", ",", "discs"]);
        assert_eq!(words("ECU / PCM"), ["ECU", "/", "PCM"]);
    }

    #[test]
    fn a_minus_before_a_digit_is_kept() {
        assert_eq!(cut("-3")[0].mark, Mark::Minus);
        assert!(cut("4-wheel alignment")[1].tied);
    }
}
