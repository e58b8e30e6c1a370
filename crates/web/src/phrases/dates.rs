//! Days and moments, written as the language that is spoken writes them.

use jiff::fmt::strtime::BrokenDownTime;
use phrases::{Language, spoken};

const WEEKDAYS: [&str; 7] = [
    "Montag",
    "Dienstag",
    "Mittwoch",
    "Donnerstag",
    "Freitag",
    "Samstag",
    "Sonntag",
];

const MONTHS: [&str; 12] = [
    "Januar",
    "Februar",
    "März",
    "April",
    "Mai",
    "Juni",
    "Juli",
    "August",
    "September",
    "Oktober",
    "November",
    "Dezember",
];

const SHORT_MONTHS: [&str; 12] = [
    "Jan", "Feb", "März", "Apr", "Mai", "Juni", "Juli", "Aug", "Sep", "Okt", "Nov", "Dez",
];

/// A day or a moment in this form, which is that of English (`%a %-d %b`). German puts its own names
/// of days and months into it, and a full stop behind the day of the month.
#[must_use]
pub fn dated(form: &str, at: impl Into<BrokenDownTime>) -> String {
    let at = at.into();
    let form = match spoken() {
        Language::English => form.to_owned(),
        Language::German => in_german(form, &at),
    };
    at.to_string(form).unwrap_or_default()
}

fn in_german(form: &str, at: &BrokenDownTime) -> String {
    let nth = |code: &str| {
        let number: Option<usize> = at.to_string(code).ok().and_then(|text| text.parse().ok());
        number.and_then(|number| number.checked_sub(1))
    };
    let of = |names: &[&'static str], code: &str| {
        let name = nth(code).and_then(|nth| names.get(nth).copied());
        name.unwrap_or_default()
    };
    let weekday = of(&WEEKDAYS, "%u");
    form.replace("%A", weekday)
        .replace("%a", weekday.get(..2).unwrap_or_default())
        .replace("%B", of(&MONTHS, "%m"))
        .replace("%b", of(&SHORT_MONTHS, "%m"))
        .replace("%-d", "%-d.")
        .replace("%d", "%d.")
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use phrases::speaking;

    #[test]
    fn a_day_is_written_in_each_language() {
        let day = date(2026, 3, 2);
        assert_eq!(dated("%a %-d %b %Y", day), "Mon 2 Mar 2026");
        let german = |form: &str| speaking(Language::German, || dated(form, day));
        assert_eq!(german("%a %-d %b %Y"), "Mo 2. März 2026");
        assert_eq!(german("%A %d %B"), "Montag 02. März");
        let at = day.at(8, 5, 0, 0);
        let moment = speaking(Language::German, || dated("%-d %B %Y, %H:%M", at));
        assert_eq!(moment, "2. März 2026, 08:05");
    }
}
