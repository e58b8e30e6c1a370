use super::*;
use jiff::ToSpan;
use store::Memory;

const START: &str = "2026-12-01T08:00:00Z";

fn at(store: &Memory, minutes: i64) -> Access<'_> {
    let start: Timestamp = START.parse().unwrap();
    Access::new(store, "shop", start + minutes.minutes())
}

fn joined(store: &Memory) -> Joined {
    let access = at(store, 0);
    let code = access.invite(Some("greta")).unwrap();
    access.join(&code, "Pavel's phone", Place::Stall).unwrap()
}

#[test]
fn a_code_lets_one_device_in_and_lives_ten_minutes() {
    let store = Memory::new();
    let code = at(&store, 0).invite(None).unwrap();
    let spaced = format!("{} {}", code[..4].to_lowercase(), &code[4..]);
    at(&store, 9).check_code(&spaced).unwrap();
    assert!(at(&store, 11).join(&code, "late", Place::Stall).is_err());
    let one = at(&store, 9)
        .join(&spaced, "tablet at lift 2", Place::Stall)
        .unwrap();
    assert!(at(&store, 9).join(&code, "replayed", Place::Stall).is_err());
    let (device, card) = at(&store, 9).device_with(&one.key).unwrap().unwrap();
    assert_eq!(
        (device, card.name.as_str()),
        (one.device, "tablet at lift 2")
    );
    assert!(at(&store, 9).device_with("another key").unwrap().is_none());
    // Nothing that lets in stands in the store.
    for drawer in ["device", "invitation"] {
        for entry in store.accesses("shop", drawer, None).unwrap() {
            let text = entry.key + &entry.value;
            assert!(!text.contains(&one.key) && !text.contains(&code));
        }
    }
}

#[test]
fn codes_are_not_tried_without_end() {
    let store = Memory::new();
    let code = at(&store, 0).invite(None).unwrap();
    for nth in 0..20 {
        assert!(at(&store, 0).check_code(&format!("WRONG{nth}")).is_err());
    }
    let held = at(&store, 0).check_code(&code).unwrap_err();
    assert!(held.what.contains("too many"), "{held}");
    at(&store, 1).check_code(&code).unwrap();
}

#[test]
fn one_code_lets_in_one_of_many_who_use_it_at_once() {
    let store = Memory::new();
    let code = at(&store, 0).invite(None).unwrap();
    let joined: usize = std::thread::scope(|scope| {
        let tries: Vec<_> = (0..8)
            .map(|_| scope.spawn(|| at(&store, 0).join(&code, "phone", Place::Stall).is_ok()))
            .collect();
        tries
            .into_iter()
            .map(|one| usize::from(one.join().unwrap()))
            .sum()
    });
    assert_eq!(joined, 1);
}

#[test]
fn a_pin_is_guessed_five_times_then_it_waits_longer_each_time() {
    let store = Memory::new();
    at(&store, 0).set_first_pin("pavel", "4827").unwrap();
    assert!(
        at(&store, 0).set_first_pin("pavel", "5938").is_err(),
        "it is not overwritten"
    );
    for _ in 0..5 {
        let wrong = at(&store, 0).check_pin("pavel", "0001").unwrap_err();
        assert_eq!(wrong.what, "that is not the PIN");
    }
    // Now even the right one waits.
    let waits = at(&store, 0).check_pin("pavel", "4827").unwrap_err();
    assert!(waits.what.contains("wait 30 seconds"), "{waits}");
    assert!(at(&store, 1).check_pin("pavel", "0002").is_err());
    assert!(
        at(&store, 1)
            .check_pin("pavel", "4827")
            .unwrap_err()
            .what
            .contains("60 seconds")
    );
    assert!(at(&store, 1).waits_until("pavel").unwrap().is_some());
    at(&store, 1).lift("pavel").unwrap();
    at(&store, 1).check_pin("pavel", "4827").unwrap();
    // The right one begins the count anew.
    for _ in 0..4 {
        at(&store, 2).check_pin("pavel", "0003").unwrap_err();
    }
    at(&store, 2).check_pin("pavel", "4827").unwrap();
    at(&store, 2).check_pin("pavel", "0003").unwrap_err();
    at(&store, 2).check_pin("pavel", "4827").unwrap();
}

#[test]
fn guesses_from_many_devices_at_once_are_no_more_tries() {
    let store = Memory::new();
    at(&store, 0).set_first_pin("pavel", "4827").unwrap();
    let looked_at: usize = std::thread::scope(|scope| {
        let tries: Vec<_> = (0..12)
            .map(|nth| {
                let store = &store;
                scope.spawn(move || {
                    let tried = at(store, 0).check_pin("pavel", &format!("{:04}", 7000 + nth));
                    tried.unwrap_err().what == "that is not the PIN"
                })
            })
            .collect();
        tries
            .into_iter()
            .map(|one| usize::from(one.join().unwrap()))
            .sum()
    });
    assert_eq!(looked_at, 5);
}

#[test]
fn a_pin_stands_nowhere() {
    let store = Memory::new();
    at(&store, 0).set_first_pin("pavel", "482795").unwrap();
    at(&store, 0)
        .change_pin("pavel", "482795", "730164")
        .unwrap();
    assert!(
        at(&store, 0)
            .change_pin("pavel", "482795", "615083")
            .is_err()
    );
    for entry in store.accesses("shop", "pin", None).unwrap() {
        assert!(!entry.value.contains("482795") && !entry.value.contains("730164"));
        assert!(entry.value.contains("argon2id"));
    }
    at(&store, 0).take_pin_away("pavel").unwrap();
    assert!(!at(&store, 0).has_pin("pavel").unwrap());
    at(&store, 0).set_first_pin("pavel", "918273").unwrap();
}

#[test]
fn a_tap_belongs_to_who_was_signed_in_then() {
    let store = Memory::new();
    let phone = joined(&store).device;
    let other = joined(&store).device;
    at(&store, 0).set_first_pin("pavel", "4827").unwrap();
    at(&store, 0).set_first_pin("greta", "5938").unwrap();
    let pavel = at(&store, 1).sign_in(&phone, "pavel", "4827").unwrap();
    assert!(at(&store, 1).sign_in(&phone, "greta", "4827").is_err());
    let greta = at(&store, 2).sign_in(&phone, "greta", "5938").unwrap();
    let bound = |device: &str, sign_in: &str, who: &str| at(&store, 99).bound(device, sign_in, who);
    // Sent after the next person signed in: still of who tapped.
    assert_eq!(bound(&phone, &pavel, "pavel").unwrap().late, None);
    assert!(bound(&phone, &greta, "greta").is_ok());
    for (device, sign_in, who) in [
        (&phone, &pavel, "greta"),
        (&other, &pavel, "pavel"),
        (&phone, &"made up".to_owned(), "pavel"),
    ] {
        assert!(bound(device, sign_in, who).is_err(), "{who}");
    }
    at(&store, 100).put_out(&phone).unwrap();
    assert_eq!(
        bound(&phone, &pavel, "pavel").unwrap().late,
        Some("the device was put out")
    );
    assert!(at(&store, 100).sign_in(&phone, "pavel", "4827").is_err());
    assert_eq!(at(&store, 100).standing(&phone).unwrap(), None);
}

#[test]
fn a_decision_asks_the_pin_again_after_a_while() {
    let store = Memory::new();
    let phone = joined(&store).device;
    at(&store, 0).set_first_pin("pavel", "4827").unwrap();
    let signed = at(&store, 0).sign_in(&phone, "pavel", "4827").unwrap();
    at(&store, 9).check_fresh(&phone, &signed).unwrap();
    at(&store, 9).proved(&signed).unwrap();
    at(&store, 18).check_fresh(&phone, &signed).unwrap();
    let asked = at(&store, 20).check_fresh(&phone, &signed).unwrap_err();
    assert_eq!(asked.kind, TroubleKind::Pin);
    assert!(at(&store, 20).prove(&phone, "0001").is_err());
    at(&store, 20).prove(&phone, "4827").unwrap();
    at(&store, 20).check_fresh(&phone, &signed).unwrap();
    at(&store, 21).sign_out(&phone).unwrap();
    let gone = at(&store, 21).check_fresh(&phone, &signed).unwrap_err();
    assert_eq!(gone.kind, TroubleKind::SignIn);
}

#[test]
fn a_second_person_proves_who_they_are_and_changes_nothing_else() {
    let store = Memory::new();
    let phone = joined(&store).device;
    at(&store, 0).set_first_pin("pavel", "4827").unwrap();
    at(&store, 0).set_first_pin("greta", "5938").unwrap();
    let signed = at(&store, 0).sign_in(&phone, "pavel", "4827").unwrap();
    let beside = at(&store, 1).sign_beside(&phone, "greta", "5938").unwrap();
    assert!(at(&store, 1).bound(&phone, &beside, "greta").is_ok());
    assert!(at(&store, 1).bound(&phone, &signed, "greta").is_err());
    assert_eq!(at(&store, 1).standing(&phone).unwrap().unwrap().0, signed);
}

#[test]
fn limits_are_the_owners_and_within_a_day() {
    let store = Memory::new();
    assert_eq!(at(&store, 0).limits().unwrap(), Limits::default());
    let wanted = Limits {
        desk: 5,
        decision: 2,
    };
    at(&store, 0).set_limits(wanted).unwrap();
    assert_eq!(at(&store, 0).limits().unwrap(), wanted);
    for wrong in [0, 721] {
        let limits = Limits {
            desk: wrong,
            decision: 2,
        };
        assert!(at(&store, 0).set_limits(limits).is_err(), "{wrong}");
    }
}

#[test]
fn who_opened_what_is_kept_for_ninety_days_and_once_a_day() {
    let store = Memory::new();
    let day = 24 * 60;
    for minutes in [0, 5, day] {
        at(&store, minutes)
            .note_opened("greta", "/o/1001", "desk")
            .unwrap();
    }
    at(&store, 6)
        .note_opened("pavel", "/v/van", "Pavel's phone")
        .unwrap();
    let opened = at(&store, 2 * day).opened().unwrap();
    let pages: Vec<_> = opened
        .iter()
        .map(|one| (one.person.as_str(), one.page.as_str()))
        .collect();
    assert_eq!(
        pages,
        [
            ("greta", "/o/1001"),
            ("pavel", "/v/van"),
            ("greta", "/o/1001")
        ]
    );
    assert_eq!(at(&store, 91 * day).opened().unwrap().len(), 1);
    assert!(at(&store, 92 * day).opened().unwrap().is_empty());
    assert!(store.accesses("shop", "opened", None).unwrap().is_empty());
}
