//! How the name of a reason at a gate is spelled. Waivers and hand-overs hold these texts,
//! so a spelling that has landed stays.

use repair::price::Payer;
use repair::{
    Away, ItemId, LineId, PartId, Position, ProofIs, ReasonKey, SnagId, State, SubletId, Token,
    Work, WorkId, WorkIs,
};

/// Words of plain codes, both ways.
macro_rules! words {
    ($($core:ident: $spell:ident, $read:ident { $($name:ident = $word:literal),* $(,)? })*) => {$(
        fn $spell(core: $core) -> &'static str {
            match core {
                $($core::$name => $word,)*
            }
        }
        fn $read(word: &str) -> Option<$core> {
            match word {
                $($word => Some($core::$name),)*
                _ => None,
            }
        }
    )*};
}

words! {
    ProofIs: proof_word, proof_of {
        RoadTest = "RoadTest",
        LeakTest = "LeakTest",
        BrakeTest = "BrakeTest",
        FuelLeakLook = "FuelLeakLook",
        RestraintLamp = "RestraintLamp",
        CoolantMix = "CoolantMix",
        Other = "Other",
    }
    Payer: payer_word, payer_of {
        Customer = "Customer",
        Warranty = "Warranty",
        Goodwill = "Goodwill",
    }
    WorkIs: work_word, work_of {
        Bleed = "Bleed",
        LevelWarm = "LevelWarm",
        LevelCold = "LevelCold",
        LookForLeaks = "LookForLeaks",
        TorqueAgain = "TorqueAgain",
        TorqueAfterDistance = "TorqueAfterDistance",
        PumpPedal = "PumpPedal",
        Relearn = "Relearn",
        Alignment = "Alignment",
        ClockAndWindows = "ClockAndWindows",
        CleanFace = "CleanFace",
        Other = "Other",
    }
}

/// Words of states; those with content are spelled by hand.
macro_rules! state_words {
    ($($name:ident = $word:literal),* $(,)?) => {
        fn state_word(state: State) -> String {
            match state {
                $(State::$name => $word.to_owned(),)*
                State::Loose { passes } => format!("Loose{passes}"),
                State::Stub { holds: true } => "Stuck".to_owned(),
                State::Stub { holds: false } => "Snapped".to_owned(),
            }
        }
        fn state_of(word: &str) -> Option<State> {
            match word {
                $($word => Some(State::$name),)*
                "Stuck" => Some(State::Stub { holds: true }),
                "Snapped" => Some(State::Stub { holds: false }),
                loose => {
                    let passes = loose.strip_prefix("Loose")?.parse().ok()?;
                    Some(State::Loose { passes })
                }
            }
        }
    };
}

state_words! {
    On = "On",
    Off = "Off",
    Tight = "Tight",
    Cracked = "Cracked",
    Out = "Out",
    Plugged = "Plugged",
    Unplugged = "Unplugged",
    AtLevel = "AtLevel",
    Low = "Low",
    Done = "Done",
    Due = "Due",
    Outside = "Outside",
    Inside = "Inside",
}

/// The text of a name. [`name`] reads it back.
pub(super) fn text(key: &ReasonKey) -> String {
    match key {
        ReasonKey::Open { item, away } => format!("open:{item}:{}", places(away)),
        ReasonKey::Unlocated { item, away } => format!("unlocated:{item}:{}", places(away)),
        ReasonKey::NotCaught(item) => format!("not-caught:{item}"),
        ReasonKey::MuchMissing(item) => format!("much-missing:{item}"),
        ReasonKey::AmountUnread(item) => format!("amount-unread:{item}"),
        ReasonKey::LitresShort(item) => format!("litres-short:{item}"),
        ReasonKey::FateUntold(item) => format!("fate-untold:{item}"),
        ReasonKey::NotKnown(item) => format!("not-known:{item}"),
        ReasonKey::TorqueToldApart(item) => format!("told-apart:{item}:torque"),
        ReasonKey::Owed(work) => format!("owed:{}", work_text(&work.identity())),
        ReasonKey::SnagOpen(snag) => format!("snag:{snag}"),
        ReasonKey::NotChecked(item) => format!("not-checked:{item}"),
        ReasonKey::ProofMissing(proof) => format!("proof-missing:{}", proof_word(*proof)),
        ReasonKey::ProofFailed(proof) => format!("proof-failed:{}", proof_word(*proof)),
        ReasonKey::PartAdrift(part) => format!("part:{part}"),
        ReasonKey::OldPartAdrift(part) => format!("old-part:{part}"),
        ReasonKey::SubletOut(sublet) => format!("sublet:{sublet}"),
        ReasonKey::ComplaintNotLookedAt(line) => format!("complaint:{line}"),
        ReasonKey::LineUnfinished(line) => format!("line:{line}"),
        ReasonKey::NotPriced => "not-priced".to_owned(),
        ReasonKey::NoConsent(payer) => format!("no-consent:{}", payer_word(*payer)),
        ReasonKey::OverCeiling(payer) => format!("over-ceiling:{}", payer_word(*payer)),
        ReasonKey::NotCharged => "not-charged".to_owned(),
        ReasonKey::Unpaid => "unpaid".to_owned(),
        ReasonKey::KeysHere => "keys-here".to_owned(),
        ReasonKey::Foreign(text) => text.clone(),
    }
}

/// The name that a text spells. What is not spelled as this program would is kept as it is,
/// so that every text is written again as it was read.
pub(super) fn name(spelled: &str) -> ReasonKey {
    known(spelled)
        .filter(|key| text(key) == spelled)
        .unwrap_or_else(|| ReasonKey::Foreign(spelled.to_owned()))
}

fn known(spelled: &str) -> Option<ReasonKey> {
    let (code, rest) = match spelled.split_once(':') {
        Some((code, rest)) => (code, rest),
        None => (spelled, ""),
    };
    let item = || ItemId::new(rest);
    Some(match code {
        "open" | "unlocated" => {
            let (item, at) = rest.rsplit_once(':')?;
            let (item, away) = (ItemId::new(item), places_of(at)?);
            match code {
                "open" => ReasonKey::Open { item, away },
                _ => ReasonKey::Unlocated { item, away },
            }
        }
        "not-caught" => ReasonKey::NotCaught(item()),
        "much-missing" => ReasonKey::MuchMissing(item()),
        "amount-unread" => ReasonKey::AmountUnread(item()),
        "litres-short" => ReasonKey::LitresShort(item()),
        "fate-untold" => ReasonKey::FateUntold(item()),
        "not-known" => ReasonKey::NotKnown(item()),
        "told-apart" => ReasonKey::TorqueToldApart(ItemId::new(rest.strip_suffix(":torque")?)),
        "owed" => ReasonKey::Owed(work(rest)?),
        "snag" => ReasonKey::SnagOpen(SnagId::new(rest)),
        "not-checked" => ReasonKey::NotChecked(item()),
        "proof-missing" => ReasonKey::ProofMissing(proof_of(rest)?),
        "proof-failed" => ReasonKey::ProofFailed(proof_of(rest)?),
        "part" => ReasonKey::PartAdrift(PartId::new(rest)),
        "old-part" => ReasonKey::OldPartAdrift(PartId::new(rest)),
        "sublet" => ReasonKey::SubletOut(SubletId::new(rest)),
        "complaint" => ReasonKey::ComplaintNotLookedAt(LineId::new(rest)),
        "line" => ReasonKey::LineUnfinished(LineId::new(rest)),
        "not-priced" => ReasonKey::NotPriced,
        "no-consent" => ReasonKey::NoConsent(payer_of(rest)?),
        "over-ceiling" => ReasonKey::OverCeiling(payer_of(rest)?),
        "not-charged" => ReasonKey::NotCharged,
        "unpaid" => ReasonKey::Unpaid,
        "keys-here" => ReasonKey::KeysHere,
        _ => return None,
    })
}

/// `5=Out,6=Out+Tight`: the places of the pieces, each with where it stands.
fn places(away: &[Away]) -> String {
    let piece = |away: &Away| {
        let states: Vec<String> = away.states.iter().copied().map(state_word).collect();
        format!("{}={}", away.position, states.join("+"))
    };
    away.iter().map(piece).collect::<Vec<_>>().join(",")
}

fn places_of(text: &str) -> Option<Vec<Away>> {
    let piece = |text: &str| {
        let (position, states) = text.split_once('=')?;
        Some(Away {
            position: position.parse::<Position>().ok()?,
            states: parts(states, '+').map(state_of).collect::<Option<_>>()?,
        })
    };
    parts(text, ',').map(piece).collect()
}

/// The parts between marks; none of nothing.
fn parts(text: &str, mark: char) -> impl Iterator<Item = &str> {
    text.split(mark).filter(move |_| !text.is_empty())
}

/// A work: a person's own, the map's, one of a sort of the trade, or a usual one.
fn work_text(work: &Work) -> String {
    let item = work.item.as_ref().map_or("", ItemId::as_str);
    match (&work.own, &work.named, &work.sort) {
        (Some(own), ..) => format!("own:{own}"),
        (None, Some(named), _) => format!("named:{named}"),
        (None, None, None) => format!("{}:{item}", work_word(work.work)),
        (None, None, Some(sort)) => {
            let landed = format!("{}:{item}", sort.as_str());
            match self::work(&landed) {
                Some(read) if read == *work => landed,
                _ => measured_text(sort.as_str(), item),
            }
        }
    }
}

fn work(text: &str) -> Option<Work> {
    if let Some(work) = text.strip_prefix(MEASURED).and_then(measured) {
        return Some(work);
    }
    let (code, rest) = text.split_once(':')?;
    match code {
        "own" => return Some(Work::declared(WorkId::new(rest), None)),
        "named" => return Some(Work::named(ItemId::new(rest), WorkIs::Other)),
        _ => {}
    }
    if let Some(code) = work_of(code) {
        return Some(Work::usual(code, on(rest)));
    }
    // A sort that is owed once a wheel names the wheel, and then no item.
    match text.strip_suffix(':') {
        Some(sort) => of_sort(sort, None),
        None => of_sort(code, on(rest)),
    }
}

fn on(item: &str) -> Option<ItemId> {
    (!item.is_empty()).then(|| ItemId::new(item))
}

fn of_sort(sort: &str, item: Option<ItemId>) -> Option<Work> {
    Some(Work {
        sort: Some(Token::new(sort).ok()?),
        ..Work::usual(WorkIs::Other, item)
    })
}

/// What stands before a sort whose length is told, because where it ends cannot be seen.
const MEASURED: &str = "sort:";

fn measured_text(sort: &str, item: &str) -> String {
    format!("{MEASURED}{}:{sort}:{item}", sort.len())
}

fn measured(text: &str) -> Option<Work> {
    let (length, rest) = text.split_once(':')?;
    let (sort, item) = rest.split_at_checked(length.parse().ok()?)?;
    of_sort(sort, on(item.strip_prefix(':')?))
}
