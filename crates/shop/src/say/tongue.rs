//! What is said of a vehicle, in one language: a phrase that is missing does not compile.
//!
//! Screens speak what is spoken; papers for the customer speak the language they are made in.

use super::{english, german, spoken};
use jiff::civil::Date;
use repair::price::Payer;
use repair::{
    DifferenceIs, Ending, Kind, Language, Leaves, OldPartFate, ProofIs, SnagIs, State, Work, WorkIs,
};

type One = fn(&str) -> String;
type Two = fn(&str, &str) -> String;
type Three = fn(&str, &str, &str) -> String;

/// The phrases of one language.
pub struct Tongue {
    // Words for codes.
    pub state: fn(Kind, State) -> &'static str,
    pub proof: fn(ProofIs) -> &'static str,
    pub snag: fn(SnagIs) -> &'static str,
    pub work: fn(&Work) -> String,
    pub work_name: fn(WorkIs) -> &'static str,
    pub old_part: fn(OldPartFate) -> &'static str,
    pub difference: fn(DifferenceIs) -> &'static str,
    pub left: fn(Leaves) -> &'static str,
    pub ending: fn(Ending) -> &'static str,
    pub payer: fn(Payer) -> &'static str,
    pub measured: fn(&'static str) -> &'static str,

    // What is not told.
    pub undescribed: One,
    pub the_vehicle: &'static str,
    /// What somebody wrote, in quotation marks.
    pub quoted: One,
    pub a_line: &'static str,
    pub a_part: One,
    pub work_sent_out: &'static str,

    // Items that are open.
    pub unsaid: One,
    /// What, and who says what.
    pub disputed: Two,
    /// Who, and the state.
    pub says: Two,
    pub low: Two,
    pub still_inside: One,
    pub not_seen: &'static str,
    pub old_one_on: &'static str,
    /// The state, and how many passes are done.
    pub pass_done: fn(&str, u32) -> String,
    pub litres: Two,
    pub litres_untold: &'static str,

    // Reasons.
    pub unlocated: One,
    pub not_caught: One,
    pub much_missing: Three,
    pub amount_unread: Two,
    pub litres_short: Three,
    pub fate_untold: One,
    pub not_known: One,
    pub not_looked_at: One,
    pub torque_told_apart: One,
    pub not_checked: Two,
    pub proof_missing: One,
    pub mix_outside: &'static str,
    pub proof_failed: One,
    pub part_adrift: Two,
    pub old_part_adrift: One,
    pub sublet_out: One,
    pub line_unfinished: One,
    pub not_priced: &'static str,
    pub no_consent: One,
    pub over_ceiling: Two,
    pub not_charged: &'static str,
    pub unpaid: One,
    pub keys_here: &'static str,
    /// Who waived it, and why.
    pub waived: Two,

    // Snags.
    pub snag_open: &'static str,
    /// Where, and what.
    pub not_resolved: Two,

    // Debts, and what stays.
    /// By which day, and after how far.
    pub later: fn(Option<Date>, Option<&str>) -> String,
    /// What it is about, and how it is now.
    pub now: Two,
    pub due: One,
}

impl Tongue {
    /// The phrases of a screen, in the language that is spoken.
    #[must_use]
    pub fn spoken() -> &'static Self {
        match spoken() {
            Language::English => &english::TONGUE,
            Language::German => &german::ON_SCREEN,
        }
    }

    /// The phrases of a paper in a language.
    #[must_use]
    pub fn of(language: Language) -> &'static Self {
        match language {
            Language::English => &english::TONGUE,
            Language::German => &german::TONGUE,
        }
    }
}
