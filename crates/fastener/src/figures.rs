//! Numbers as they are shown in a working.

/// A number with at most `decimals` decimals, without trailing zeros, and its unit.
pub(crate) fn shown(value: f64, decimals: usize, unit: &str) -> String {
    let number = trimmed(value, decimals);
    if unit.is_empty() {
        number
    } else {
        format!("{number} {unit}")
    }
}

/// A number with at most `decimals` decimals, without trailing zeros.
pub(crate) fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if !text.contains('.') {
        return text;
    }
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// Rounded up to a step, so that a value that must not fall short does not.
pub(crate) fn rounded_up(value: f64, step: f64) -> f64 {
    // A value that already stands on a step must not climb because of its last bit.
    on_step(libm::ceil(value / step - 1e-9), step)
}

/// Rounded down to a step.
pub(crate) fn rounded_down(value: f64, step: f64) -> f64 {
    on_step(libm::floor(value / step + 1e-9), step)
}

/// Steps of a tenth are no binary fractions: the last bits of the product are put right.
fn on_step(steps: f64, step: f64) -> f64 {
    libm::round(steps * step * 1e6) / 1e6
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_after_the_last_digit_go() {
        assert_eq!(shown(6.60, 2, "mm"), "6.6 mm");
        assert_eq!(shown(100.0, 1, ""), "100");
        assert_eq!(trimmed(-0.001, 2), "0");
    }

    #[test]
    fn a_value_on_a_step_stays_there() {
        assert_eq!(rounded_up(27.3, 0.1), 27.3);
        assert_eq!(rounded_up(27.34, 0.1), 27.4);
        assert_eq!(rounded_down(6.0, 0.5), 6.0);
    }
}
