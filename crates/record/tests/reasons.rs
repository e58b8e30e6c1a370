//! The names of reasons at gates: each keeps the spelling it landed with, and every name and
//! every text comes back as it was.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use proptest::sample::select;
use record::form::Form;
use record::v1::basics::ReasonKeyForm;
use record::{AnyEvent, Stream, decode, encode_checked};
use repair::price::Payer;
use repair::{
    Away, Decision, Ending, Event, ItemId, Kind, Leaves, LineId, PartId, ProofIs, ReasonKey,
    SnagId, State, SubletId, Token, Work, WorkId, WorkIs,
};

fn text(key: &ReasonKey) -> String {
    ReasonKeyForm::of(key).0
}

fn name(text: &str) -> ReasonKey {
    ReasonKeyForm(text.to_owned()).read().unwrap()
}

fn open(away: &[(u16, &[State])]) -> ReasonKey {
    let away = away.iter().map(|(position, states)| Away {
        position: *position,
        states: states.to_vec(),
    });
    ReasonKey::Open {
        item: ItemId::new("screws"),
        away: away.collect(),
    }
}

fn sorted(sort: &str, item: Option<&str>) -> ReasonKey {
    ReasonKey::Owed(Work {
        sort: Some(Token::new(sort).unwrap()),
        ..Work::usual(WorkIs::Other, item.map(ItemId::new))
    })
}

fn landed(rows: Vec<(ReasonKey, &str)>) {
    for (key, spelled) in rows {
        assert_eq!(text(&key), spelled);
        assert_eq!(name(spelled), key);
    }
}

/// These lines never change.
#[test]
fn every_reason_keeps_its_spelling() {
    let item = || ItemId::new("item-1");
    landed(vec![
        (
            ReasonKey::Unlocated {
                item: item(),
                away: vec![Away {
                    position: 1,
                    states: vec![State::Off],
                }],
            },
            "unlocated:item-1:1=Off",
        ),
        (ReasonKey::NotCaught(item()), "not-caught:item-1"),
        (ReasonKey::MuchMissing(item()), "much-missing:item-1"),
        (ReasonKey::AmountUnread(item()), "amount-unread:item-1"),
        (ReasonKey::LitresShort(item()), "litres-short:item-1"),
        (ReasonKey::FateUntold(item()), "fate-untold:item-1"),
        (ReasonKey::NotKnown(item()), "not-known:item-1"),
        (
            ReasonKey::TorqueToldApart(item()),
            "told-apart:item-1:torque",
        ),
        (ReasonKey::SnagOpen(SnagId::new("s")), "snag:s"),
        (ReasonKey::NotChecked(item()), "not-checked:item-1"),
        (ReasonKey::PartAdrift(PartId::new("p")), "part:p"),
        (ReasonKey::OldPartAdrift(PartId::new("p")), "old-part:p"),
        (ReasonKey::SubletOut(SubletId::new("s")), "sublet:s"),
        (
            ReasonKey::ComplaintNotLookedAt(LineId::new("1")),
            "complaint:1",
        ),
        (ReasonKey::LineUnfinished(LineId::new("1")), "line:1"),
        (ReasonKey::NotPriced, "not-priced"),
        (ReasonKey::NoConsent(Payer::Customer), "no-consent:Customer"),
        (ReasonKey::NoConsent(Payer::Warranty), "no-consent:Warranty"),
        (ReasonKey::NoConsent(Payer::Goodwill), "no-consent:Goodwill"),
        (
            ReasonKey::OverCeiling(Payer::Customer),
            "over-ceiling:Customer",
        ),
        (ReasonKey::NotCharged, "not-charged"),
        (ReasonKey::Unpaid, "unpaid"),
        (ReasonKey::KeysHere, "keys-here"),
        (
            ReasonKey::Foreign("debt:level-cold".into()),
            "debt:level-cold",
        ),
    ]);
}

#[test]
fn every_state_keeps_its_spelling() {
    let spelled = [
        (State::On, "On"),
        (State::Off, "Off"),
        (State::Tight, "Tight"),
        (State::Cracked, "Cracked"),
        (State::Out, "Out"),
        (State::Loose { passes: 0 }, "Loose0"),
        (State::Loose { passes: 2 }, "Loose2"),
        (State::Stub { holds: true }, "Stuck"),
        (State::Stub { holds: false }, "Snapped"),
        (State::Plugged, "Plugged"),
        (State::Unplugged, "Unplugged"),
        (State::AtLevel, "AtLevel"),
        (State::Low, "Low"),
        (State::Done, "Done"),
        (State::Due, "Due"),
        (State::Outside, "Outside"),
        (State::Inside, "Inside"),
    ];
    for (state, word) in spelled {
        let key = open(&[(7, &[state])]);
        landed(vec![(key, &format!("open:screws:7={word}"))]);
    }
    landed(vec![
        (
            open(&[(1, &[State::Out]), (2, &[State::Tight, State::Out])]),
            "open:screws:1=Out,2=Tight+Out",
        ),
        // An old piece and a new one are both said to be off.
        (
            open(&[(1, &[State::Off, State::Off])]),
            "open:screws:1=Off+Off",
        ),
    ]);
}

#[test]
fn every_proof_keeps_its_spelling() {
    for (proof, word) in [
        (ProofIs::RoadTest, "RoadTest"),
        (ProofIs::LeakTest, "LeakTest"),
        (ProofIs::BrakeTest, "BrakeTest"),
        (ProofIs::FuelLeakLook, "FuelLeakLook"),
        (ProofIs::RestraintLamp, "RestraintLamp"),
        (ProofIs::CoolantMix, "CoolantMix"),
        (ProofIs::Other, "Other"),
    ] {
        landed(vec![
            (
                ReasonKey::ProofMissing(proof),
                &format!("proof-missing:{word}"),
            ),
            (
                ReasonKey::ProofFailed(proof),
                &format!("proof-failed:{word}"),
            ),
        ]);
    }
}

#[test]
fn every_work_keeps_its_spelling() {
    let on = |item: &str| Some(ItemId::new(item));
    for (work, word) in [
        (WorkIs::Bleed, "Bleed"),
        (WorkIs::LevelWarm, "LevelWarm"),
        (WorkIs::LevelCold, "LevelCold"),
        (WorkIs::LookForLeaks, "LookForLeaks"),
        (WorkIs::TorqueAgain, "TorqueAgain"),
        (WorkIs::TorqueAfterDistance, "TorqueAfterDistance"),
        (WorkIs::PumpPedal, "PumpPedal"),
        (WorkIs::Relearn, "Relearn"),
        (WorkIs::Alignment, "Alignment"),
        (WorkIs::ClockAndWindows, "ClockAndWindows"),
        (WorkIs::CleanFace, "CleanFace"),
        (WorkIs::Other, "Other"),
    ] {
        landed(vec![
            (
                ReasonKey::Owed(Work::usual(work, on("oil"))),
                &format!("owed:{word}:oil"),
            ),
            (
                ReasonKey::Owed(Work::usual(work, None)),
                &format!("owed:{word}:"),
            ),
        ]);
    }
    let own = Work::declared(WorkId::new("wash"), None);
    let named = Work::named(ItemId::new("set-clock"), WorkIs::Other);
    landed(vec![
        (ReasonKey::Owed(own), "owed:own:wash"),
        (ReasonKey::Owed(named), "owed:named:set-clock"),
        (sorted("pedal-hard", None), "owed:pedal-hard:"),
        (sorted("torque", Some("screws")), "owed:torque:screws"),
        (sorted("torque", Some("a:b")), "owed:torque:a:b"),
        (
            sorted("wheel-torque:front-left", None),
            "owed:wheel-torque:front-left:",
        ),
    ]);
}

/// What no program gives by itself, and what the landed spelling would run together.
#[test]
fn no_two_works_are_spelled_alike() {
    for (one, other) in [
        (sorted("a:b", Some("c")), sorted("a", Some("b:c"))),
        (sorted("a", Some("b:")), sorted("a:b", None)),
        (
            sorted("own", Some("wash")),
            ReasonKey::Owed(Work::declared(WorkId::new("wash"), None)),
        ),
        (
            sorted("Bleed", Some("oil")),
            ReasonKey::Owed(Work::usual(WorkIs::Bleed, Some(ItemId::new("oil")))),
        ),
        (sorted("sort", Some("1:a:b")), sorted("a", Some("b"))),
    ] {
        assert_ne!(text(&one), text(&other));
        assert_eq!(name(&text(&one)), one);
        assert_eq!(name(&text(&other)), other);
    }
}

/// A group of two thousand clips that are all out, and a vehicle that is collected apart.
#[test]
fn a_name_with_as_many_pieces_as_an_item_may_have_can_be_kept() {
    let known = |pieces: u16| {
        let away: Vec<(u16, &[State])> = (1..=pieces)
            .map(|position| (position, &[State::On, State::Out][..]))
            .collect();
        AnyEvent::Order(Event::Decision(Decision::HandedOver {
            leaves: Leaves::CollectedApart,
            ending: Ending::DeclinedApart,
            known: vec![open(&away)],
            boxes: Some(2),
            signature: None,
            signed_by: None,
            decided_at: "2026-11-25T08:00:00Z".parse().unwrap(),
        }))
    };
    let order = Stream::read("order:a").unwrap();
    for (pieces, version) in [(200, 1), (2_000, 2)] {
        let stored = encode_checked(&order, &known(pieces)).unwrap();
        assert_eq!(stored.version, version, "{pieces}");
        assert_eq!(decode(&order, &stored).unwrap(), known(pieces));
    }
}

/// Names of things, also such as look like a spelling.
fn id() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z0-9.:_-]{1,8}",
        "(own|named|sort|torque|Bleed|open|[0-9]):[a-z:]{0,3}",
        Just("1=Out".to_owned()),
    ]
}

fn item() -> impl Strategy<Value = ItemId> {
    id().prop_map(ItemId::new)
}

fn state() -> impl Strategy<Value = State> {
    let all: Vec<State> = Kind::ALL
        .into_iter()
        .flat_map(|kind| kind.states().to_vec())
        .collect();
    prop_oneof![
        select(all),
        any::<u8>().prop_map(|passes| State::Loose { passes }),
        any::<bool>().prop_map(|holds| State::Stub { holds }),
    ]
}

fn away() -> impl Strategy<Value = Vec<Away>> {
    let states = prop::collection::vec(state(), 0..3);
    let piece = (any::<u16>(), states).prop_map(|(position, states)| Away { position, states });
    prop::collection::vec(piece, 0..4)
}

fn proof() -> impl Strategy<Value = ProofIs> {
    use ProofIs::*;
    select(vec![RoadTest, LeakTest, CoolantMix, Other])
}

fn payer() -> impl Strategy<Value = Payer> {
    select(vec![Payer::Customer, Payer::Warranty, Payer::Goodwill])
}

fn work() -> impl Strategy<Value = Work> {
    use WorkIs::*;
    let sort = prop_oneof![
        id(),
        "[a-z][a-z0-9 :·]{0,6}",
        select(vec!["own", "named", "sort", "Bleed", "Other"]).prop_map(str::to_owned),
    ];
    let sort = sort.prop_filter_map("a code", |sort| Token::new(&sort).ok());
    let usual = select(vec![Bleed, LevelCold, CleanFace, Other]);
    prop_oneof![
        id().prop_map(|own| Work::declared(WorkId::new(own), None)),
        item().prop_map(|named| Work::named(named, Other)),
        (usual, prop::option::of(item())).prop_map(|(work, item)| Work::usual(work, item)),
        (sort, prop::option::of(item())).prop_map(|(sort, item)| Work {
            sort: Some(sort),
            ..Work::usual(Other, item)
        }),
    ]
}

fn key() -> impl Strategy<Value = ReasonKey> {
    let of_items = prop_oneof![
        item().prop_map(ReasonKey::NotCaught),
        item().prop_map(ReasonKey::MuchMissing),
        item().prop_map(ReasonKey::AmountUnread),
        item().prop_map(ReasonKey::LitresShort),
        item().prop_map(ReasonKey::FateUntold),
        item().prop_map(ReasonKey::NotKnown),
        item().prop_map(ReasonKey::TorqueToldApart),
        item().prop_map(ReasonKey::NotChecked),
    ];
    let of_papers = prop_oneof![
        payer().prop_map(ReasonKey::NoConsent),
        payer().prop_map(ReasonKey::OverCeiling),
        select(vec![
            ReasonKey::NotPriced,
            ReasonKey::NotCharged,
            ReasonKey::Unpaid,
            ReasonKey::KeysHere,
        ]),
    ];
    let of_things = prop_oneof![
        id().prop_map(|id| ReasonKey::SnagOpen(SnagId::new(id))),
        id().prop_map(|id| ReasonKey::PartAdrift(PartId::new(id))),
        id().prop_map(|id| ReasonKey::OldPartAdrift(PartId::new(id))),
        id().prop_map(|id| ReasonKey::SubletOut(SubletId::new(id))),
        id().prop_map(|id| ReasonKey::ComplaintNotLookedAt(LineId::new(id))),
        id().prop_map(|id| ReasonKey::LineUnfinished(LineId::new(id))),
    ];
    prop_oneof![
        2 => (item(), away()).prop_map(|(item, away)| ReasonKey::Open { item, away }),
        1 => (item(), away()).prop_map(|(item, away)| ReasonKey::Unlocated { item, away }),
        4 => work().prop_map(ReasonKey::Owed),
        1 => proof().prop_map(ReasonKey::ProofMissing),
        1 => proof().prop_map(ReasonKey::ProofFailed),
        2 => of_items,
        1 => of_papers,
        2 => of_things,
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_name_comes_back_as_it_was(key in key()) {
        prop_assert_eq!(name(&text(&key)), key);
    }

    /// Whatever stands in a log is written again as it was read, known or not.
    #[test]
    fn a_text_comes_back_as_it_was(
        spelled in prop_oneof![
            key().prop_map(|key| text(&key)),
            (key(), ".{0,3}").prop_map(|(key, more)| text(&key) + &more),
            "(open|unlocated|owed|told-apart|proof-missing|line|unpaid)(:[a-zA-Z0-9=+,:]{0,12})?",
            ".{0,40}",
        ],
    ) {
        let key = name(&spelled);
        prop_assert_eq!(text(&key), spelled);
        prop_assert_eq!(name(&text(&key)), key);
    }
}
