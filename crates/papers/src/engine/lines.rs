//! A text broken into lines, without hyphens.

use super::face::{Weight, clean, shape, width_pt};
use unicode_linebreak::{BreakOpportunity, linebreaks};

/// Letters of one weight.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    pub text: String,
    pub weight: Weight,
}

/// A piece of a sentence.
pub fn plain(text: impl Into<String>) -> Run {
    Run {
        text: text.into(),
        weight: Weight::Regular,
    }
}

/// A piece of a sentence in bold.
pub fn bold(text: impl Into<String>) -> Run {
    Run {
        text: text.into(),
        weight: Weight::Bold,
    }
}

/// One line: what stands on it, and how wide it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    pub runs: Vec<Run>,
    pub width_pt: f64,
    /// Whether only the width ended it.
    pub goes_on: bool,
}

/// Breaks runs into lines no wider than this. A word that is wider than a line is parted
/// where the line ends.
pub fn broken(runs: &[Run], size_pt: f64, width: f64) -> Vec<Line> {
    let runs: Vec<Run> = runs
        .iter()
        .map(|run| Run {
            text: clean(&run.text),
            ..*run
        })
        .collect();
    let whole: String = runs.iter().map(|run| run.text.as_str()).collect();
    let mut lines = Lines {
        size: size_pt,
        width,
        done: Vec::new(),
        open: Vec::new(),
        used: 0.0,
    };
    let mut start = 0;
    for (end, how) in linebreaks(&whole) {
        lines.take(pieces(&runs, start, end));
        if how == BreakOpportunity::Mandatory {
            lines.end(false);
        }
        start = end;
    }
    if !lines.open.is_empty() {
        lines.end(false);
    }
    lines.done
}

/// The part of the runs that stands between two places of the whole text.
fn pieces(runs: &[Run], start: usize, end: usize) -> Vec<Run> {
    let mut at = 0;
    let mut out = Vec::new();
    for run in runs {
        let (from, to) = (at, at + run.text.len());
        at = to;
        let (cut_from, cut_to) = (start.max(from), end.min(to));
        if cut_from < cut_to {
            out.push(Run {
                text: run.text[cut_from - from..cut_to - from].replace('\n', ""),
                weight: run.weight,
            });
        }
    }
    out
}

struct Lines {
    size: f64,
    width: f64,
    done: Vec<Line>,
    open: Vec<Run>,
    /// How wide the open line is, word by word.
    used: f64,
}

impl Lines {
    /// Adds a word, with the space behind it, to the line or to the next one.
    fn take(&mut self, word: Vec<Run>) {
        let wide: f64 = word
            .iter()
            .map(|run| width_pt(&run.text, self.size, run.weight))
            .sum();
        let bare = self.width_of(&word);
        if self.open.is_empty() || self.fits(&word, bare) {
            join(&mut self.open, word);
            self.used += wide;
        } else {
            self.end(true);
            self.open = word;
            self.used = wide;
        }
        // Only a word alone can be too wide for its line.
        while self.used > self.width && self.width_of(&self.open) > self.width {
            let (fits, rest) = self.parted();
            if rest.is_empty() {
                break;
            }
            self.open = fits;
            self.end(true);
            self.open = rest;
            self.used = self.width_of(&self.open);
        }
    }

    /// Whether a word fits on the line. What stands before and behind a space hardly moves, so
    /// the sum of the widths decides, but where it is close.
    fn fits(&self, word: &[Run], bare: f64) -> bool {
        let sum = self.used + bare;
        let close = self.size;
        if (sum - self.width).abs() > close {
            return sum < self.width;
        }
        let mut with = self.open.clone();
        join(&mut with, word.to_vec());
        self.width_of(&with) <= self.width
    }

    /// How wide a line is, without the space at its end.
    fn width_of(&self, runs: &[Run]) -> f64 {
        let last = runs.len().saturating_sub(1);
        runs.iter()
            .enumerate()
            .map(|(nth, run)| {
                let text = run.text.as_str();
                let text = if nth == last { text.trim_end() } else { text };
                width_pt(text, self.size, run.weight)
            })
            .sum()
    }

    /// A line that is too wide, parted behind the last letter that fits; at least one does.
    fn parted(&self) -> (Vec<Run>, Vec<Run>) {
        let (mut fits, mut rest): (Vec<Run>, Vec<Run>) = (Vec::new(), Vec::new());
        let mut used = 0.0;
        for run in &self.open {
            let mut cut = 0;
            if rest.is_empty() {
                for glyph in shape(&run.text, run.weight) {
                    // Letters stand closer or wider by what follows: each beginning is measured.
                    let end = glyph.range.end;
                    let wide = used + width_pt(&run.text[..end], self.size, run.weight);
                    let first = fits.is_empty() && cut == 0;
                    if wide > self.width && !first {
                        break;
                    }
                    cut = end.max(cut);
                }
                used += width_pt(&run.text[..cut], self.size, run.weight);
            }
            let (here, later) = run.text.split_at(cut);
            for (text, side) in [(here, &mut fits), (later, &mut rest)] {
                if !text.is_empty() {
                    side.push(Run {
                        text: text.to_owned(),
                        weight: run.weight,
                    });
                }
            }
        }
        (fits, rest)
    }

    fn end(&mut self, goes_on: bool) {
        let runs = std::mem::take(&mut self.open);
        self.used = 0.0;
        let width_pt = self.width_of(&runs);
        self.done.push(Line {
            runs,
            width_pt,
            goes_on,
        });
    }
}

/// Puts runs behind others, one run where the weight stays.
fn join(to: &mut Vec<Run>, more: Vec<Run>) {
    for run in more {
        match to.last_mut() {
            Some(last) if last.weight == run.weight => last.text.push_str(&run.text),
            _ => to.push(run),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn texts(lines: &[Line]) -> Vec<String> {
        let text = |line: &Line| line.runs.iter().map(|run| run.text.as_str()).collect();
        lines.iter().map(text).collect()
    }

    #[test]
    fn a_line_breaks_between_words_and_keeps_its_space() {
        let lines = broken(&[plain("one two three")], 10.0, 45.0);
        assert_eq!(texts(&lines), ["one two ", "three"]);
    }

    #[test]
    fn a_line_end_in_the_text_ends_the_line() {
        assert_eq!(
            texts(&broken(&[plain("a\nb\n\nc")], 10.0, 99.0)),
            ["a", "b", "", "c"]
        );
    }

    #[test]
    fn bold_goes_on_over_a_break() {
        let lines = broken(&[plain("see "), bold("these two words")], 10.0, 60.0);
        assert!(lines.len() > 1);
        assert_eq!(lines[0].runs[0], plain("see "));
        assert!(lines[1].runs.iter().all(|run| run.weight == Weight::Bold));
    }

    #[test]
    fn a_word_of_sixty_letters_is_parted_where_the_line_ends() {
        let word = "w".repeat(60);
        let lines = broken(&[plain(&word)], 10.0, 100.0);
        assert!(lines.len() > 4);
        assert!(lines.iter().all(|line| line.width_pt <= 100.0));
        assert_eq!(texts(&lines).concat(), word);
    }

    proptest! {
        #[test]
        fn no_line_is_too_wide_and_nothing_is_lost(
            words in proptest::collection::vec("[a-zA-Z0-9é,.-]{1,30}", 0..30),
            width in 20.0..300.0,
        ) {
            let text = words.join(" ");
            let lines = broken(&[plain(&text)], 9.4, width);
            for line in &lines {
                prop_assert!(line.width_pt <= width, "{line:?}");
            }
            prop_assert_eq!(texts(&lines).concat(), text);
        }
    }
}
