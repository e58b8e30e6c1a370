//! What papers for whoever pays say, one file a language: a text that is missing does not compile.
//!
//! Work sheets, labels and how-to sheets are for the stall and speak as the screen does.

mod de;
mod en;

use shop::record::v1::codes::{ConsentStepForm, OutcomeForm, PaidByForm, PayerForm, WayForm};
use shop::repair::Language;

/// The texts of one language.
pub struct Wording {
    /// Its code, as a PDF names its language.
    pub code: &'static str,
    pub weekdays: [&'static str; 7],
    pub months: [&'static str; 12],
    /// As in `Mon 30 Nov`.
    pub short_weekdays: [&'static str; 7],
    pub short_months: [&'static str; 12],
    /// Behind the number of a day.
    pub ordinal: &'static str,
    /// Weekday, day, month, year.
    pub long_day: fn(&str, i8, &str, i16) -> String,
    /// Between thousands, and before the part of a whole.
    pub thousands: char,
    pub decimal: char,

    // What papers are called.
    pub estimate: &'static str,
    pub added_work: &'static str,
    pub invoice: &'static str,
    pub draft_invoice: &'static str,
    pub credit_note: &'static str,
    pub dismantled: &'static str,
    pub receipt: &'static str,

    // The head of a paper.
    pub date: &'static str,
    pub order: &'static str,
    pub vehicle: &'static str,
    pub plate: &'static str,
    pub vin: &'static str,
    pub odometer: &'static str,
    pub phone: &'static str,
    pub tax_number: &'static str,
    pub of_invoice: &'static str,
    pub odometer_in: fn(&str) -> String,
    pub odometer_out: fn(&str) -> String,
    pub odometer_both: fn(&str, &str) -> String,
    pub for_payer: fn(&str) -> String,
    pub vehicle_of: fn(&str) -> String,
    pub page_of: fn(usize, usize) -> String,

    // Complaint, cause, correction; the same before the work.
    pub complaint: &'static str,
    pub cause: &'static str,
    pub correction: &'static str,
    pub told_us: &'static str,
    pub we_found: &'static str,
    pub we_propose: &'static str,
    pub quoted: fn(&str) -> String,
    pub paid_by_others: &'static str,
    pub paid_by: fn(&str) -> String,

    // The price.
    pub labour: &'static str,
    pub parts: &'static str,
    pub other: &'static str,
    pub work: &'static str,
    pub hours: &'static str,
    pub an_hour: &'static str,
    pub amount: &'static str,
    pub number: &'static str,
    pub part: &'static str,
    pub count: &'static str,
    pub each: &'static str,
    pub what: &'static str,
    pub for_all: &'static str,
    /// Per cent taken off if it was told so, amount, reason.
    pub less: fn(&str, &str, &str) -> String,
    pub not_asked: fn(&str, &str) -> String,
    pub share_of: fn(&str, &str, &str) -> String,
    pub price: &'static str,
    pub no_price: &'static str,
    pub discount: &'static str,
    pub before_tax: &'static str,
    /// As one says it of a sum: `up to 900 with tax`.
    pub sum_with_tax: &'static str,
    pub sum_before_tax: &'static str,
    pub tax: &'static str,
    pub exempt_by: fn(&str) -> String,
    pub total: &'static str,

    // Paying.
    pub paid: &'static str,
    pub all_invoices: &'static str,
    pub deposit: &'static str,
    pub paid_so_far: &'static str,
    pub give_back: &'static str,
    pub still_to_pay: &'static str,
    pub pay_to: &'static str,
    pub terms: &'static str,

    // Receipt.
    pub received: &'static str,
    pub nothing_received: &'static str,
    pub thanks: &'static str,

    // Estimate and added work.
    pub nothing_beyond: &'static str,
    pub approval: &'static str,
    pub expected: fn(&str, &str) -> String,
    /// What covers it, how many times in ten.
    pub covered: fn(&str, &str, u32) -> String,
    pub if_declined: &'static str,
    pub yes_up_to: &'static str,
    pub before_more_ring: fn(&str) -> String,
    pub no_put_back: &'static str,
    pub no_collect: &'static str,
    pub parts_back: &'static str,
    pub parts_keep: &'static str,
    pub found_on_the_way: &'static str,
    pub proposed: fn(&str) -> String,
    pub added: &'static str,
    pub nothing_added: &'static str,
    pub no_longer: &'static str,
    pub new_total: &'static str,
    pub yes_added: &'static str,
    pub yes_total: fn(&str, &str) -> String,
    pub no_added: &'static str,
    pub sign_date: &'static str,
    pub name_and_signature: &'static str,
    pub for_shop: fn(&str) -> String,
    /// Net, currency, gross.
    pub total_now: fn(&str, &str, &str) -> String,
    /// The sum before, ceiling, with or before tax, by how much it is over.
    pub is_over: fn(&str, &str, &str, &str) -> String,
    pub stays_within: fn(&str, &str, &str) -> String,
    pub may_we: fn(&str) -> String,

    // What was agreed.
    pub agreed: &'static str,
    pub nothing_agreed: &'static str,
    pub said: fn(&str) -> String,
    pub the_payer: &'static str,
    pub approved: &'static str,
    pub declined: &'static str,
    pub up_to_in_total: fn(&str, &str) -> String,
    pub called_on: fn(&str) -> String,
    pub signed_on_screen: &'static str,
    /// When, who, yes or no, what, how much, how, who asked.
    pub consented: fn([&str; 7]) -> String,

    // How it was tested, and how it leaves.
    pub tested: &'static str,
    /// Over what was measured: pads, treads.
    pub measured: &'static str,
    /// Behind a figure, in brackets.
    pub least_allowed: fn(&str) -> String,
    /// Behind that, where it is less.
    pub below: &'static str,
    pub come_back: &'static str,
    pub old_parts: &'static str,
    pub old_one: fn(&str, &str) -> String,
    pub not_accounted: &'static str,
    pub waived: &'static str,
    pub work_declined: &'static str,
    pub not_put_back: &'static str,
    pub modified: &'static str,
    pub still_to_do: &'static str,
    pub still_to_do_after: &'static str,
    pub delivery: &'static str,
    /// How, when, how it ended, who handed it over.
    pub delivered: fn(&str, &str, &str, &str) -> String,
    pub boxes_went: fn(&str) -> String,
    pub not_to_be_driven_yet: &'static str,
    pub signed_for: fn(&str) -> String,
    pub collected_by: fn(&str) -> String,
    pub verification: &'static str,
    pub verification_how: &'static str,
    pub not_written_yet: &'static str,

    // Credit note.
    pub stays_as_written: &'static str,
    pub why: &'static str,
    pub goes_back: &'static str,
    pub tax_kept: &'static str,

    // Collected dismantled.
    pub not_to_be_driven: &'static str,
    pub must_not_be_driven: &'static str,
    pub leaves_on_trailer: &'static str,
    pub nothing_apart: &'static str,
    pub handed_over: &'static str,
    pub boxes_with_parts: fn(&str) -> String,
    pub boxes_count: &'static str,
    pub counted_by: &'static str,
    pub keys_over: &'static str,
    pub old_parts_over: &'static str,
    pub who_collects: &'static str,
    pub there: &'static str,
    pub how_it_is: &'static str,
    pub stored_in: &'static str,
    pub pieces: fn(usize) -> String,

    // Words that stand for codes.
    pub payer: fn(PayerForm) -> &'static str,
    pub outcome: fn(OutcomeForm) -> &'static str,
    pub step: fn(ConsentStepForm) -> &'static str,
    pub way: fn(WayForm) -> &'static str,
    pub paid_how: fn(PaidByForm) -> &'static str,
}

impl Wording {
    /// The texts of a language.
    #[must_use]
    pub fn of(language: Language) -> &'static Wording {
        match language {
            Language::English => &en::TEXTS,
            Language::German => &de::TEXTS,
        }
    }

    /// With tax, or before.
    #[must_use]
    pub fn taxed(&self, with_tax: bool) -> &'static str {
        if with_tax {
            self.sum_with_tax
        } else {
            self.sum_before_tax
        }
    }

    /// Figures within a text as this language writes them: `7.7 %` as `7,7 %`.
    #[must_use]
    pub fn figures(&self, text: &str) -> String {
        let letters: Vec<char> = text.chars().collect();
        let is_figure = |nth: Option<usize>| {
            let letter = nth.and_then(|nth| letters.get(nth));
            letter.is_some_and(char::is_ascii_digit)
        };
        let each = letters.iter().enumerate().map(|(nth, letter)| {
            let within = is_figure(nth.checked_sub(1)) && is_figure(Some(nth + 1));
            if *letter == '.' && within {
                self.decimal
            } else {
                *letter
            }
        });
        each.collect()
    }

    /// A moment as the program writes it, `Mon 30 Nov 2026, 12:00`, in this language.
    #[must_use]
    pub fn moment(&self, written: &str) -> String {
        const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
        const MONTHS: [&str; 12] = [
            "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
        ];
        let said = |word: &str| -> String {
            let named = |all: &[&str]| all.iter().position(|one| *one == word);
            match (named(&DAYS), named(&MONTHS)) {
                (Some(nth), _) => self.short_weekdays[nth].to_owned(),
                (_, Some(nth)) => self.short_months[nth].to_owned(),
                _ if (1..=2).contains(&word.len()) && word.bytes().all(|b| b.is_ascii_digit()) => {
                    format!("{word}{}", self.ordinal)
                }
                _ => word.to_owned(),
            }
        };
        written.split(' ').map(said).collect::<Vec<_>>().join(" ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_and_moments_are_written_as_the_language_writes_them() {
        let (english, german) = (
            Wording::of(Language::English),
            Wording::of(Language::German),
        );
        for text in ["VAT 7.7 %", "end. Then 3.5583", "M8x1.25", "1.", ".5"] {
            assert_eq!(english.figures(text), text);
        }
        assert_eq!(german.figures("VAT 7.7 %"), "VAT 7,7 %");
        assert_eq!(german.figures("end. Then 3.5583."), "end. Then 3,5583.");
        assert_eq!(
            german.moment("Wed 25 Mar 2026, 08:00"),
            "Mi. 25. März 2026, 08:00"
        );
        assert_eq!(
            english.moment("Wed 25 Mar 2026, 08:00"),
            "Wed 25 Mar 2026, 08:00"
        );
        assert_eq!(german.moment("soon"), "soon");
    }

    /// Held against the Unicode Common Locale Data Repository, see `checks/data/cldr/names.toml`.
    #[test]
    fn names_and_figures_are_those_of_the_common_locale_data() {
        let path = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../../checks/data/cldr/names.toml"
        );
        let text = std::fs::read_to_string(path).expect("the data lies beside the crates");
        let data: toml::Table = toml::from_str(&text).expect("it is TOML");
        for (code, language) in [("en", Language::English), ("de", Language::German)] {
            let wording = Wording::of(language);
            let all = |name: &str| -> Vec<&str> {
                let list = data[code][name].as_array().expect("a list");
                list.iter().filter_map(toml::Value::as_str).collect()
            };
            assert_eq!(all("weekdays"), wording.weekdays);
            assert_eq!(all("months"), wording.months);
            assert_eq!(all("short_weekdays"), wording.short_weekdays);
            assert_eq!(all("short_months"), wording.short_months);
            assert_eq!(
                data[code]["decimal"].as_str(),
                Some(&*wording.decimal.to_string())
            );
            assert_eq!(
                data[code]["group"].as_str(),
                Some(&*wording.thousands.to_string())
            );
        }
        let german = Wording::of(Language::German);
        let full = (german.long_day)("Montag", 30, "November", 2026);
        assert_eq!(data["de"]["full"].as_str(), Some(&*full));
    }
}
