//! What the desk told and decided, in plain words.

use super::desk::numbered;
use super::story::{aimed, hour};
use crate::phrases::story as words;
use crate::say::Tongue;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use jiff::civil::Date;
use repair::{
    ConsentStep, Decision, Fact, KeyStep, Language, LineText, PaidBy, PartStep, Place, Rules,
    RungAbout, StallNeeded, System, Way,
};
use rust_decimal::Decimal;

/// A figure as it is written in what is spoken.
fn sum(figure: &Decimal) -> String {
    ::phrases::number(&figure.to_string())
}

/// A day as it is written in what is spoken.
fn date(day: Date) -> String {
    match say::spoken() {
        Language::English => day.to_string(),
        Language::German => say::dates::day(day),
    }
}

pub(super) fn desk_fact(names: &Names<'_>, rules: &Rules, fact: &Fact) -> String {
    let text = |words| names.text(words);
    let behind =
        |words: &Option<_>| words.map_or_else(String::new, |words| format!(": {}", text(words)));
    match fact {
        Fact::LineOpened {
            complaint, payer, ..
        } => match payer {
            repair::price::Payer::Customer => words::complaint(text(*complaint)),
            other => words::complaint_paid_by(say::payer_name(*other), text(*complaint)),
        },
        Fact::LineWorded {
            words, text: which, ..
        } => {
            let words = text(*words);
            match which {
                LineText::Complaint => words::line_complaint(words),
                LineText::Cause => words::line_cause(words),
                LineText::Correction => words::line_correction(words),
            }
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
            match signature {
                Some(_) => words::declined_signed(what, text(*words)),
                None => words::declined_not_signed(what, text(*words)),
            }
        }
        Fact::Paid {
            amount,
            by,
            deposit,
            payer,
        } => {
            let by = match by {
                PaidBy::Cash => words::by_cash(),
                PaidBy::Card => words::by_card(),
                PaidBy::Transfer => words::by_transfer(),
                PaidBy::Cheque => words::by_cheque(),
                PaidBy::OnAccount => words::by_account(),
            };
            let (payer, amount) = (say::payer_name(*payer), sum(amount));
            match deposit {
                true => words::deposit(payer, amount, by),
                false => words::paid(payer, amount, by),
            }
        }
        Fact::PartNeeded {
            label, quantity, ..
        } => words::part_needed(sum(&quantity.normalize()), text(*label)),
        Fact::PartStepped {
            part,
            step,
            due,
            words,
            ..
        } => {
            let due = due.map_or_else(String::new, |due| words::comma_due(date(due)));
            let (part, words) = (names.part(part), behind(words));
            match step {
                PartStep::Ordered => words::part_ordered(part, due, words),
                PartStep::Received => words::part_received(part, due, words),
                PartStep::Compared => words::part_compared(part, due, words),
                PartStep::Fitted => words::part_fitted(part, due, words),
                PartStep::Returned => words::part_returned(part, due, words),
                PartStep::Stocked => words::part_stocked(part, due, words),
                PartStep::Cancelled => words::part_cancelled(part, due, words),
            }
        }
        Fact::OldPart { part, fate, .. } => match part {
            Some(part) => words::old_part(names.part(part), say::old_part(*fate)),
            None => words::old_part_unnamed(say::old_part(*fate)),
        },
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
            let due = due.map_or_else(String::new, |due| words::comma_due_back(date(due)));
            words::sent_out(text(*to), text(*what), with, due)
        }
        Fact::SubletBack { words, .. } => words::sublet_back(behind(words)),
        Fact::Keys { step, words } => match step {
            KeyStep::Taken => words::keys_taken(behind(words)),
            KeyStep::GivenBack => words::keys_given_back(behind(words)),
        },
        Fact::Odometer { reading, .. } => words::odometer(reading.as_str()),
        Fact::Stood { place } => match place {
            Place::Stall(_) => words::moved_into_stall(),
            Place::Yard => words::moved_into_yard(),
            Place::Away => words::taken_away(),
        }
        .to_owned(),
        Fact::Pushed { to, words } => match to {
            Place::Stall(_) => words::pushed_into_stall(text(*words)),
            Place::Yard => words::pushed_into_yard(text(*words)),
            Place::Away => words::pushed_away(text(*words)),
        },
        Fact::Promised { at } => words::promised_for(hour(rules, *at)),
        Fact::Aimed { aim, targets, .. } => aimed(names, *aim, targets),
        Fact::Assigned { person } => words::works_on_it(names.person(person)),
        Fact::WorkLeft {
            minutes,
            least,
            most,
            skill,
            stall,
            helpers,
            road,
            ..
        } => {
            let helpers = helpers
                .filter(|helpers| *helpers > 0)
                .map_or_else(String::new, words::and_helpers);
            let road = road.map_or_else(String::new, |road| {
                words::and_a_road_test(sum(&road.normalize()))
            });
            let left = work_left(*minutes, least.zip(*most), *skill, *stall);
            format!("{left}{helpers}{road}")
        }
        Fact::Expected { at, .. } => words::is_to_come(hour(rules, *at)),
        Fact::Rung {
            about,
            reached,
            words,
        } => rung(*about, *reached, behind(words)),
        Fact::AnswerDue { at, .. } => words::will_answer_by(hour(rules, *at)),
        Fact::Attached { file, words, .. } if file.media.as_str() == super::PAPER => {
            words::paper_given_out(behind(words))
        }
        Fact::Attached { .. } => words::photo_added().to_owned(),
        Fact::HowToTitled { words, .. } => words::how_to_titled(text(*words)),
        Fact::HowToNoted { words, .. } => words.map_or_else(
            || words::how_to_note_taken_off().to_owned(),
            |words| words::how_to_noted(text(words)),
        ),
        Fact::HowToSequenced { .. } => words::how_to_sequenced().to_owned(),
        Fact::Undo { .. } => words::took_something_back().to_owned(),
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
        words::least_to_most(sum(&least.normalize()), sum(&most.normalize()))
    });
    let skill = skill.map_or_else(String::new, |skill| {
        format!(", {}", say::system_name(skill))
    });
    let stall = match stall {
        StallNeeded::Lift => words::on_a_lift(),
        StallNeeded::Flat => words::on_a_flat_stall(),
        StallNeeded::Any => "",
        StallNeeded::No => words::in_no_stall(),
    };
    words::work_left(sum(&minutes.normalize()), range, skill, stall)
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
    let amount = amount.map_or_else(String::new, |amount| match tax_included {
        true => words::up_to_with_tax(sum(&amount)),
        false => words::up_to_before_tax(sum(&amount)),
    });
    let said = said.map_or_else(String::new, |said| words::in_their_words(names.text(said)));
    let way = match way {
        Way::InPerson => words::in_person(),
        Way::Phone => words::by_phone(),
        Way::Message => words::by_message(),
        Way::Mail => words::by_mail(),
        Way::Signed => words::signed(),
    };
    match (step, agreed) {
        (ConsentStep::Diagnose, true) => words::yes_to_diagnosis(who, amount, way, said),
        (ConsentStep::Diagnose, false) => words::no_to_diagnosis(who, amount, way, said),
        (ConsentStep::TakeApart, true) => words::yes_to_taking_apart(who, amount, way, said),
        (ConsentStep::TakeApart, false) => words::no_to_taking_apart(who, amount, way, said),
        (ConsentStep::Repair, true) => words::yes_to_repair(who, amount, way, said),
        (ConsentStep::Repair, false) => words::no_to_repair(who, amount, way, said),
        (ConsentStep::Add, true) => words::yes_to_more(who, amount, way, said),
        (ConsentStep::Add, false) => words::no_to_more(who, amount, way, said),
    }
}

pub(super) fn decision(snap: &Snapshot<'_>, decision: &Decision) -> String {
    let text = |words| snap.texts().text(words);
    match decision {
        Decision::Opened { number, .. } => words::order_opened(number),
        Decision::Adopted { version, .. } => words::by_the_map(version),
        Decision::Priced { totals, .. } => {
            let nets = totals.values().map(|totals| totals.net);
            words::price_set(sum(&nets.fold(Decimal::ZERO, Decimal::saturating_add)))
        }
        Decision::WrittenDown { amount, payer, .. } => {
            words::discount(sum(amount), say::payer_name(*payer))
        }
        Decision::Charged { numbers, .. } => {
            let numbers: Vec<String> = numbers.values().map(|nr| numbered(*nr)).collect();
            let which = if numbers.is_empty() {
                String::new()
            } else {
                format!(": {}", numbers.join(", "))
            };
            words::invoice_written(which)
        }
        Decision::Credited {
            number,
            payer,
            totals,
            words,
            ..
        } => words::credit_note(
            super::credits::numbered(*number),
            say::payer_name(*payer),
            sum(&totals.gross),
            text(*words),
        ),
        Decision::Waived { words, gate, .. } => {
            words::waived_at(say::within(say::gate(*gate)), text(*words))
        }
        Decision::WaiverWithdrawn { .. } => words::waiver_taken_back().to_owned(),
        Decision::HandedOver {
            leaves,
            boxes,
            signed_by,
            signature,
            ..
        } => {
            let boxes = boxes.map_or_else(String::new, words::boxes_with_it);
            let by = signed_by.map_or_else(String::new, |by| match signature {
                Some(_) => words::signed_by(text(by)),
                None => words::collected_by(text(by)),
            });
            words::handed_over((Tongue::spoken().left)(*leaves), boxes, by)
        }
        Decision::TakenBack { words } => words::back_in(text(*words)),
        Decision::Voided { words } => words::voided(text(*words)),
    }
}

/// `Rung: it is ready to collect`, or that nobody answered.
fn rung(about: RungAbout, reached: bool, words: String) -> String {
    let words = match reached {
        true => words,
        false => words::no_answer(words),
    };
    match about {
        RungAbout::Approval => words::rung_approval(words),
        RungAbout::Promise => words::rung_promise(words),
        RungAbout::Ready => words::rung_ready(words),
        RungAbout::Due => words::rung_due(words),
        RungAbout::FollowUp => words::rung_follow_up(words),
    }
}
