//! Dates, sums and codes as a paper says them.

use crate::wording::Wording;
use jiff::civil::Date;
use shop::Amount;
use shop::view::ConsentView;

/// `2026-11-30` as `Monday 30 November 2026`; what is no day stays as it is.
pub fn long_day(wording: &Wording, day: &str) -> String {
    let Ok(date) = day.parse::<Date>() else {
        return day.to_owned();
    };
    let at = |nth: i8| usize::try_from(nth).unwrap_or_default();
    let weekday = wording.weekdays[at(date.weekday().to_monday_zero_offset())];
    let month = wording.months[at(date.month() - 1)];
    (wording.long_day)(weekday, date.day(), month, date.year())
}

/// Year, month and day of a date, for the file.
pub fn day_of(day: &str) -> (u16, u8, u8) {
    day.parse::<Date>().map_or((1970, 1, 1), |date| {
        (
            u16::try_from(date.year()).unwrap_or(1970),
            u8::try_from(date.month()).unwrap_or(1),
            u8::try_from(date.day()).unwrap_or(1),
        )
    })
}

/// A sum with its thousands parted: `1085.28` as `1,085.28`, in German `1.085,28`. Figures alone
/// are grouped: what is no number stays as it is.
pub fn sum(wording: &Wording, amount: &Amount) -> String {
    phrases::marked(amount.exact(), wording.decimal, Some(wording.thousands))
}

/// Whether a sum is nothing.
pub fn nought(amount: &Amount) -> bool {
    !amount
        .exact()
        .bytes()
        .any(|digit| (b'1'..=b'9').contains(&digit))
}

/// A hash in groups of eight.
pub fn in_eights(hash: &str) -> String {
    let letters: Vec<char> = hash.chars().collect();
    let groups = letters
        .chunks(8)
        .map(|group| group.iter().collect::<String>());
    groups.collect::<Vec<_>>().join(" ")
}

/// One approval in a sentence: when, what, how much, how, who asked.
pub fn consented(wording: &Wording, consent: &ConsentView) -> String {
    let who = consent.person.as_deref().unwrap_or(wording.the_payer);
    let yes = if consent.agreed {
        wording.approved
    } else {
        wording.declined
    };
    let amount = consent.amount.as_ref().map_or_else(String::new, |amount| {
        (wording.up_to_in_total)(&sum(wording, amount), wording.taxed(consent.tax_included))
    });
    let called = consent.number_called.as_deref();
    let called = called.map_or_else(String::new, wording.called_on);
    let signed = consent
        .signature
        .as_ref()
        .map_or("", |_| wording.signed_on_screen);
    let how = format!("{}{called}{signed}", (wording.way)(consent.way));
    let at = wording.moment(&consent.at);
    let what = (wording.step)(consent.step);
    (wording.consented)([&at, who, yes, what, &amount, &how, &consent.by])
}

#[cfg(test)]
mod tests {
    use super::*;
    use shop::repair::Language;

    #[test]
    fn sums_have_commas() {
        let english = Wording::of(Language::English);
        let written = [
            "0.00",
            "999.99",
            "1085.28",
            "-1085.28",
            "1234567",
            "too large",
        ]
        .map(|amount| sum(english, &Amount::new(amount)));
        assert_eq!(
            written,
            [
                "0.00",
                "999.99",
                "1,085.28",
                "-1,085.28",
                "1,234,567",
                "too large"
            ]
        );
    }

    #[test]
    fn days_are_said_whole() {
        let english = Wording::of(Language::English);
        assert_eq!(long_day(english, "2026-11-30"), "Monday 30 November 2026");
        assert_eq!(long_day(english, "soon"), "soon");
        let german = Wording::of(Language::German);
        assert_eq!(long_day(german, "2026-11-30"), "Montag, 30. November 2026");
        assert_eq!(sum(german, &Amount::new("-1085.28")), "-1.085,28");
        assert_eq!(day_of("2026-11-30"), (2026, 11, 30));
    }

    #[test]
    fn a_hash_stands_in_eights() {
        assert_eq!(in_eights("0123456789abcdef01"), "01234567 89abcdef 01");
    }
}
