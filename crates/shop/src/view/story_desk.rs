//! What the desk told and decided, in plain words.

use super::desk::numbered;
use super::story::{aimed, hour};
use crate::say::Tongue;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use record::v1::codes::{LineTextForm, PaidByForm, PartStepForm, SystemForm, WayForm};
use repair::{ConsentStep, Decision, Fact, KeyStep, Place, Rules, RungAbout, StallNeeded, System};
use rust_decimal::Decimal;

/// A code as a person reads it: `in-person` is `in person`.
fn plain(code: &str) -> String {
    code.replace('-', " ")
}

pub(super) fn desk_fact(names: &Names<'_>, rules: &Rules, fact: &Fact) -> String {
    let text = |words| names.text(words);
    let behind =
        |words: &Option<_>| words.map_or_else(String::new, |words| format!(": {}", text(words)));
    match fact {
        Fact::LineOpened {
            complaint, payer, ..
        } => match payer {
            repair::price::Payer::Customer => format!("Complaint: {}", text(*complaint)),
            other => format!(
                "Complaint, paid by {}: {}",
                say::payer_name(*other),
                text(*complaint)
            ),
        },
        Fact::LineWorded {
            words, text: which, ..
        } => {
            format!(
                "{}: {}",
                say::capital(LineTextForm::word(*which)),
                text(*words)
            )
        }
        Fact::Consented { .. } => consented(names, fact),
        Fact::Declined {
            items,
            at,
            words,
            signature,
            entries,
            snags,
        } => {
            let what = names.declined(items, at, entries, snags);
            let signed = if signature.is_some() {
                ", signed"
            } else {
                ", not signed"
            };
            format!("Declined{signed}: {what}: {}", text(*words))
        }
        Fact::Paid {
            amount,
            by,
            deposit,
            payer,
        } => {
            let what = if *deposit { "Deposit" } else { "Paid" };
            let by = plain(PaidByForm::word(*by));
            format!("{what} by {}: {amount} ({by})", say::payer_name(*payer))
        }
        Fact::PartNeeded {
            label, quantity, ..
        } => {
            format!("Part needed: {} × {}", quantity.normalize(), text(*label))
        }
        Fact::PartStepped {
            part,
            step,
            due,
            words,
            ..
        } => {
            let due = due.map_or_else(String::new, |due| format!(", due {due}"));
            format!(
                "{}: {}{due}{}",
                say::capital(PartStepForm::word(*step)),
                names.part(part),
                behind(words)
            )
        }
        Fact::OldPart { part, fate, .. } => format!(
            "Old {}: {}",
            part.as_ref()
                .map_or_else(|| "part".to_owned(), |part| names.part(part)),
            say::old_part(*fate)
        ),
        Fact::SubletOut {
            what,
            to,
            items,
            due,
            ..
        } => {
            let items: Vec<_> = items.iter().map(|item| names.label(item)).collect();
            let with = if items.is_empty() {
                String::new()
            } else {
                format!(" ({})", items.join(", "))
            };
            let due = due.map_or_else(String::new, |due| format!(", due back {due}"));
            format!("Sent out to {}: {}{with}{due}", text(*to), text(*what))
        }
        Fact::SubletBack { words, .. } => format!("Back from where it was sent{}", behind(words)),
        Fact::Keys { step, words } => match step {
            KeyStep::Taken => format!("Keys taken in{}", behind(words)),
            KeyStep::GivenBack => format!("Keys given back{}", behind(words)),
        },
        Fact::Odometer { reading, .. } => format!("Odometer {}", reading.as_str()),
        Fact::Stood { place } => stood("Moved", place),
        Fact::Pushed { to, words } => {
            format!("{} by hand: {}", stood("Pushed", to), text(*words))
        }
        Fact::Promised { at } => format!("Promised for {}", hour(rules, *at)),
        Fact::Aimed { aim, targets, .. } => aimed(names, *aim, targets),
        Fact::Assigned { person } => format!("{} works on it", names.person(person)),
        Fact::WorkLeft {
            minutes,
            least,
            most,
            skill,
            stall,
            ..
        } => work_left(*minutes, least.zip(*most), *skill, *stall),
        Fact::Rung {
            about,
            reached,
            words,
        } => rung(*about, *reached, behind(words)),
        Fact::AnswerDue { at, .. } => format!("Will answer by {}", hour(rules, *at)),
        Fact::Attached { file, words, .. } if file.media.as_str() == super::PAPER => {
            format!("Paper given out{}", behind(words))
        }
        Fact::Attached { .. } => "Photo added".to_owned(),
        Fact::Undo { .. } => "Took something back".to_owned(),
        _ => String::new(),
    }
}

/// `90 minutes of work left (60 to 150), brakes, on a lift`.
fn work_left(
    minutes: Decimal,
    range: Option<(Decimal, Decimal)>,
    skill: Option<System>,
    stall: StallNeeded,
) -> String {
    let range = range.map_or_else(String::new, |(least, most)| {
        format!(" ({} to {})", least.normalize(), most.normalize())
    });
    let skill = skill.map_or_else(String::new, |skill| {
        format!(", {}", plain(SystemForm::word(skill)))
    });
    let stall = match stall {
        StallNeeded::Lift => ", on a lift",
        StallNeeded::Flat => ", on a flat stall",
        StallNeeded::Any => "",
        StallNeeded::No => ", in no stall",
    };
    format!(
        "{} minutes of work left{range}{skill}{stall}",
        minutes.normalize()
    )
}

/// `Ada Brandt said yes to the repair, up to 850 before tax (phone)`.
fn consented(names: &Names<'_>, fact: &Fact) -> String {
    let Fact::Consented {
        step,
        payer,
        agreed,
        amount,
        tax_included,
        way,
        person,
        said,
        ..
    } = fact
    else {
        return String::new();
    };
    let who = person.map_or_else(
        || say::capital(say::payer_name(*payer)),
        |words| names.text(words),
    );
    let what = match step {
        ConsentStep::Diagnose => "finding the fault",
        ConsentStep::TakeApart => "taking it apart",
        ConsentStep::Repair => "the repair",
        ConsentStep::Add => "doing more",
    };
    let tax = if *tax_included {
        "with tax"
    } else {
        "before tax"
    };
    let amount = amount.map_or_else(String::new, |amount| format!(", up to {amount} {tax}"));
    let said = said.map_or_else(String::new, |words| format!(": “{}”", names.text(words)));
    let way = plain(WayForm::word(*way));
    format!(
        "{who} said {} to {what}{amount} ({way}){said}",
        if *agreed { "yes" } else { "no" }
    )
}

pub(super) fn decision(snap: &Snapshot<'_>, decision: &Decision) -> String {
    let text = |words| snap.texts().text(words);
    match decision {
        Decision::Opened { number, .. } => format!("Order {number} opened"),
        Decision::Adopted { version, .. } => format!("Working by the map, version {version}"),
        Decision::Priced { totals, .. } => {
            let nets = totals.values().map(|totals| totals.net);
            let sum = nets.fold(Decimal::ZERO, Decimal::saturating_add);
            format!("Price set: {sum} before tax")
        }
        Decision::WrittenDown { amount, payer, .. } => {
            format!("Discount of {amount} for {}", say::payer_name(*payer))
        }
        Decision::Charged { numbers, .. } => {
            let numbers: Vec<String> = numbers.values().map(|nr| numbered(*nr)).collect();
            let which = if numbers.is_empty() {
                String::new()
            } else {
                format!(": {}", numbers.join(", "))
            };
            format!("Invoice written{which}")
        }
        Decision::Credited {
            number,
            payer,
            totals,
            words,
            ..
        } => format!(
            "Credit note {} for {}, {}: {}",
            super::credits::numbered(*number),
            say::payer_name(*payer),
            totals.gross,
            text(*words)
        ),
        Decision::Waived { words, gate, .. } => {
            format!(
                "Waived at {}: {}",
                say::gate(*gate).to_lowercase(),
                text(*words)
            )
        }
        Decision::WaiverWithdrawn { .. } => "Waiver taken back".to_owned(),
        Decision::HandedOver {
            leaves,
            boxes,
            signed_by,
            signature,
            ..
        } => {
            let boxes = boxes.map_or_else(String::new, |boxes| format!(", boxes with it: {boxes}"));
            let how = if signature.is_some() {
                "signed by"
            } else {
                "collected by"
            };
            let by = signed_by.map_or_else(String::new, |by| format!(", {how} {}", text(by)));
            format!(
                "Handed over: {}{boxes}{by}",
                (Tongue::of(repair::Language::English).left)(*leaves)
            )
        }
        Decision::TakenBack { words } => format!("Back in: {}", text(*words)),
        Decision::Voided { words } => format!("Voided: {}", text(*words)),
    }
}

fn stood(how: &str, place: &Place) -> String {
    match place {
        Place::Stall(_) => format!("{how} into a stall"),
        Place::Yard => format!("{how} into the yard"),
        Place::Away => match how {
            "Moved" => "Taken away from here".to_owned(),
            how => format!("{how} away from here"),
        },
    }
}

/// `Rung: it is ready to collect`, or that nobody answered.
fn rung(about: RungAbout, reached: bool, words: String) -> String {
    let about = match about {
        RungAbout::Approval => "about the approval",
        RungAbout::Promise => "about the promised time",
        RungAbout::Ready => "that it is ready",
        RungAbout::Due => "about work that is due",
        RungAbout::FollowUp => "whether it came back",
    };
    let answer = if reached { "" } else { ", no answer" };
    format!("Rung {about}{answer}{words}")
}
