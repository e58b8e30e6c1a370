//! English, for screens and papers.

use super::capital;
use super::tongue::Tongue;
use repair::price::Payer;
use repair::{
    DifferenceIs, Ending, Kind, Leaves, OldPartFate, ProofIs, SnagIs, State, Token, Work, WorkIs,
};

pub(super) static TONGUE: Tongue = Tongue {
    state,
    proof: proof_name,
    snag: snag_name,
    work,
    old_part,
    difference,
    left,
    ending,
    work_name,
    payer: payer_name,
    measured: |name| name,
    undescribed: |item| format!("something not described yet ({item})"),
    the_vehicle: "the vehicle",
    quoted: |written| format!("\u{201c}{written}\u{201d}"),
    a_line: "a line",
    a_part: |part| format!("part {part}"),
    work_sent_out: "work sent out",
    unsaid: |label| format!("{label}: moved, and nobody has said what it is"),
    disputed: |label, claims| format!("{label}: {claims}; look, and say which"),
    says: |who, state| format!("{who} says {state}"),
    low: |label, litres| format!("{label} low: {litres}"),
    still_inside: |label| format!("{label}: still inside"),
    not_seen: "not seen",
    old_one_on: "the old one is on; fit a new one",
    pass_done: |word, passes| format!("{word}, pass {passes} done"),
    litres: |out, poured| format!("{out} L out, {poured} in"),
    litres_untold: "nothing says how much came out",
    unlocated: |open| format!("{open}: say which system it belongs to"),
    not_caught: |item| format!("{item} is out, and nothing says where it went: note the litres"),
    much_missing: |item, out, poured| {
        format!("{item}: {out} L out, only {poured} in, and no cold level seen")
    },
    amount_unread: |item, amounts| {
        format!("{item}: {amounts} cannot be read as litres, and no cold level is recorded")
    },
    litres_short: |item, out, poured| {
        format!("{item}: {out} L out, {poured} in: the level after cooling decides")
    },
    fate_untold: |item| {
        format!("{item}: what came out, and where did it go: kept, recycled, disposed?")
    },
    not_known: |item| format!("{item}: what is it? It may be of brakes, steering or the like"),
    not_looked_at: |complaint| {
        format!("{complaint}: look at it before it is driven, and say what you found")
    },
    torque_told_apart: |item| format!("{item}: two torques were told. Which one holds?"),
    not_checked: |item, by| format!("{item}: needs a second check (done by {by})"),
    proof_missing: |proof| format!("{} missing", capital(proof)),
    mix_outside: "Coolant mix is outside its limits",
    proof_failed: |proof| format!("{} failed", capital(proof)),
    part_adrift: |count, part| format!("{count} × {part}: fitted, returned or stocked?"),
    old_part_adrift: |part| format!("Old {part}: kept, core or scrap?"),
    sublet_out: |what| format!("{what} is still away"),
    line_unfinished: |complaint| format!("{complaint}: cause and correction not told"),
    not_priced: "No price yet",
    no_consent: |payer| format!("{payer} has not agreed to a sum"),
    over_ceiling: |by, payer| format!("{by} over what {payer} agreed to: ask, or write down"),
    not_charged: "Invoice not written",
    unpaid: |balance| format!("{balance} still owed"),
    keys_here: "We still have the keys",
    waived: |by, why| format!("waived by {by}: {why}"),
    snag_open: "Snag not resolved",
    not_resolved: |at, what| format!("{at}: {what}, not resolved"),
    later: |date, distance| {
        let by = date.map(|date| format!(" by {date}")).unwrap_or_default();
        let after = distance.map(|distance| format!(" after {distance}"));
        format!("{}{by}", after.unwrap_or_default())
    },
    now: |item, how| format!("{item}: now {how}"),
    due: |what| format!("Due: {what}"),
};

/// Work in words, as the trade has them.
fn work(work: &Work) -> String {
    let sort = work.sort.as_ref().map(Token::as_str);
    let by_trade = sort.and_then(crate::trade_read::work_in_words);
    by_trade.map_or_else(|| work_name(work.work).to_owned(), |words| capital(&words))
}

/// A lasting difference, in words.
pub(super) fn difference(what: DifferenceIs) -> &'static str {
    match what {
        DifferenceIs::Insert => "thread insert",
        DifferenceIs::Larger => "larger thread",
        DifferenceIs::Longer => "longer bolt",
        DifferenceIs::Substitute => "another part",
        DifferenceIs::Gone => "gone by consent",
        DifferenceIs::Other => "different",
    }
}

fn left(leaves: Leaves) -> &'static str {
    match leaves {
        Leaves::DrivesAway => "drove away",
        Leaves::CollectedApart => "collected dismantled",
    }
}

fn ending(ending: Ending) -> &'static str {
    match ending {
        Ending::Repaired => "repaired",
        Ending::NotReproduced => "the complaint could not be brought back",
        Ending::DeclinedPutBack => "declined, and put back together",
        Ending::DeclinedApart => "declined, and collected dismantled",
    }
}

/// A state in words.
pub(super) fn state(kind: Kind, state: State) -> &'static str {
    match state {
        State::On => "on",
        State::Off => "off",
        State::Tight => "tight",
        State::Cracked => "cracked loose",
        State::Out => "out",
        State::Loose { .. } => "on, not tight",
        State::Stub { holds: true } => "stuck",
        State::Stub { holds: false } => "snapped",
        State::Plugged => "plugged",
        State::Unplugged => "unplugged",
        State::AtLevel => "at level",
        State::Low => "low",
        State::Done => "done",
        State::Due => "due",
        State::Outside => "out of the vehicle",
        State::Inside if kind == Kind::PutIn => "inside",
        State::Inside => "in it",
    }
}

/// A payer in words.
pub(super) fn payer_name(payer: Payer) -> &'static str {
    match payer {
        Payer::Customer => "the customer",
        Payer::Warranty => "the warranty",
        Payer::Goodwill => "goodwill",
    }
}

/// An older sort of work in words.
pub(super) fn work_name(work: WorkIs) -> &'static str {
    match work {
        WorkIs::Bleed => "Bleed",
        WorkIs::LevelWarm => "See the level warm",
        WorkIs::LevelCold => "See the level cold",
        WorkIs::LookForLeaks => "Look for leaks",
        WorkIs::TorqueAgain => "Re-torque",
        WorkIs::TorqueAfterDistance => "Re-torque after 50 to 100 km",
        WorkIs::PumpPedal => "Pump the brake pedal",
        WorkIs::Relearn => "Relearn",
        WorkIs::Alignment => "Check the alignment",
        WorkIs::ClockAndWindows => "Set the clock and windows",
        WorkIs::CleanFace => "Clean the face",
        WorkIs::Other => "Other work",
    }
}

/// A proof in words.
pub(super) fn proof_name(proof: ProofIs) -> &'static str {
    match proof {
        ProofIs::RoadTest => "road test",
        ProofIs::LeakTest => "leak test of the cooling system",
        ProofIs::BrakeTest => "brake test",
        ProofIs::FuelLeakLook => "look for fuel leaks under pressure",
        ProofIs::RestraintLamp => "check of the restraint lamp",
        ProofIs::CoolantMix => "coolant mix within its limits",
        ProofIs::Other => "test",
    }
}

/// A snag in words.
pub(super) fn snag_name(snag: SnagIs) -> &'static str {
    match snag {
        SnagIs::Snapped => "snapped",
        SnagIs::Stuck => "stuck",
        SnagIs::Stripped => "thread stripped",
        SnagIs::Rounded => "head rounded",
        SnagIs::Torn => "torn",
        SnagIs::Worn => "worn",
        SnagIs::Broken => "broken",
        SnagIs::Bent => "bent",
        SnagIs::Corroded => "corroded",
        SnagIs::Leaking => "leaking",
        SnagIs::Missing => "missing",
        SnagIs::Other => "not as it should be",
    }
}

/// What became of an old part, in words.
pub(super) fn old_part(fate: OldPartFate) -> &'static str {
    match fate {
        OldPartFate::Kept => "kept for the customer",
        OldPartFate::Given => "given to the customer",
        OldPartFate::Core => "sent back as a core",
        OldPartFate::Scrap => "scrapped",
    }
}
