//! Numbers as loggers write them.

/// A number with a decimal point or comma; nothing where it is none.
pub(crate) fn number(cell: &str, decimal_comma: bool) -> Option<f64> {
    let cell = cell
        .trim()
        .trim_start_matches('\'')
        .replace('\u{2212}', "-");
    let cleaned: String = if decimal_comma && cell.contains(',') {
        cell.chars()
            .filter(|c| !matches!(c, '.' | ' ' | '\u{a0}' | '\u{202f}'))
            .map(|c| if c == ',' { '.' } else { c })
            .collect()
    } else {
        let no_spaces: String = cell
            .chars()
            .filter(|c| !matches!(c, ' ' | '\u{a0}' | '\u{202f}'))
            .collect();
        // 1,234.5: commas that part thousands.
        if no_spaces.contains(',') && no_spaces.contains('.') {
            no_spaces.replace(',', "")
        } else {
            no_spaces
        }
    };
    let plain = cleaned
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | '+' | 'e' | 'E'));
    if !plain || !cleaned.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    cleaned.parse().ok().filter(|n: &f64| n.is_finite())
}

/// Whether a cell says that nothing was read.
pub(crate) fn is_blank(cell: &str) -> bool {
    matches!(
        cell.trim().to_lowercase().as_str(),
        "" | "-"
            | "--"
            | "---"
            | "n/a"
            | "na"
            | "nan"
            | "null"
            | "none"
            | "nodata"
            | "no data"
            | "?"
            | "#n/a"
            | "inf"
            | "-inf"
    )
}

/// A whole number for an index; what is negative or no number is 0.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from float to integer saturates"
)]
pub(crate) fn index(x: f64) -> usize {
    x as usize
}

/// A count as a number.
#[expect(
    clippy::cast_precision_loss,
    reason = "counts of lines and seconds lie far below 2^53"
)]
pub(crate) fn real(n: usize) -> f64 {
    n as f64
}

/// The middle one; nothing of nothing.
pub(crate) fn median(values: impl IntoIterator<Item = f64>) -> Option<f64> {
    quantile(values, 0.5)
}

/// The value that this part of them does not exceed.
pub(crate) fn quantile(values: impl IntoIterator<Item = f64>, part: f64) -> Option<f64> {
    let mut values: Vec<f64> = values.into_iter().filter(|v| v.is_finite()).collect();
    values.sort_by(f64::total_cmp);
    let last = values.len().checked_sub(1)?;
    values.get(index(libm::round(part * real(last)))).copied()
}

/// The mean; nothing of nothing.
pub(crate) fn mean(values: impl IntoIterator<Item = f64>) -> Option<f64> {
    let (sum, count) = values
        .into_iter()
        .fold((0.0, 0_usize), |(sum, count), value| {
            (sum + value, count + 1)
        });
    (count > 0).then(|| sum / real(count))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_in_either_manner() {
        assert_eq!(number("88", false), Some(88.0));
        assert_eq!(number(" -3.90625 ", false), Some(-3.906_25));
        assert_eq!(number("13,9", true), Some(13.9));
        assert_eq!(number("1.234,5", true), Some(1234.5));
        assert_eq!(number("1,234.5", false), Some(1234.5));
        assert_eq!(number("\u{2212}4", false), Some(-4.0));
        assert_eq!(number("8x", false), None);
        assert_eq!(number("1e999", false), None);
        assert_eq!(number("-", false), None);
    }

    #[test]
    fn quantiles_of_few() {
        assert_eq!(median([3.0, 1.0, 2.0]), Some(2.0));
        assert_eq!(median([]), None);
        assert_eq!(quantile([1.0, 2.0, 3.0, 4.0, 5.0], 1.0), Some(5.0));
    }
}
