//! Words that mislead, amounts, and that nothing typed is lost.

use proptest::prelude::*;
use trade::{Branch, Count, Gates, Said, Side, Sure, Vocabulary, kind_code, says};

fn one(line: &str) -> Said {
    let mut said = says(line, Vocabulary::shipped());
    assert_eq!(said.len(), 1, "{line}: {said:?}");
    said.remove(0)
}

/// Source: checks/data/trade/facts.md, rule 25 and the words of the brief; grade common-practice.
#[test]
fn the_last_word_decides() {
    for (line, kind, system) in [
        ("heat shield of the gearbox", "cover", Branch::Exhaust),
        ("sump plug", "fasteners", Branch::Oil),
        ("fuse box cover", "cover", Branch::Electrical),
        ("core plug", "seal", Branch::Cooling),
        ("spark plug", "part", Branch::Engine),
        ("glow plug", "part", Branch::Engine),
        ("service plug", "connector", Branch::HighVoltage),
        ("seat belt", "part", Branch::Restraints),
        ("door belt moulding", "part", Branch::Body),
        ("clutch disc", "part", Branch::Transmission),
        ("roof rack", "part", Branch::Body),
        ("steering rack", "part", Branch::Steering),
        ("valve spring", "part", Branch::Engine),
        ("flywheel", "part", Branch::Transmission),
        ("Rad vorne links", "part", Branch::Wheels),
        ("rad hose", "hose", Branch::Cooling),
        ("boot lid", "cover", Branch::Body),
        ("CV boot", "seal", Branch::Transmission),
        ("headlamp bulb", "part", Branch::Lamps),
        ("Bremsschlauchhalter Schraube", "fasteners", Branch::Brakes),
    ] {
        let said = one(line);
        assert_eq!(
            (kind_code(said.kind), said.system),
            (kind, system),
            "{line}: {said:?}"
        );
    }
}

#[test]
fn counts_are_read_as_said() {
    for (line, count) in [
        ("two bolts", Some(Count::Of(2))),
        ("wheel nuts 5x", Some(Count::Of(5))),
        ("4x wheel nuts", Some(Count::Of(4))),
        ("trim clips (2)", Some(Count::Of(2))),
        ("pair of brake discs", Some(Count::Of(2))),
        ("vier Radmuttern", Some(Count::Of(4))),
        ("both front calipers", Some(Count::Of(2))),
        ("injector plugs 1-4", Some(Count::Of(4))),
        ("seat bolts 4 off", Some(Count::Of(4))),
        ("set of spark plug leads", Some(Count::Set)),
        ("set of 4 spark plugs", Some(Count::Of(4))),
        ("40 trim clips", Some(Count::Of(40))),
        ("2 pairs of brake pads", Some(Count::Of(4))),
        ("ignition coil cyl 3", None),
        ("towing socket 13 pin", None),
        ("4-wheel alignment", None),
        ("front pads", None),
    ] {
        assert_eq!(one(line).count, count, "{line}");
    }
}

#[test]
fn what_cannot_be_counted_stays_as_a_line_to_be_mended() {
    for line in [
        "-3",
        "-3 brake hoses",
        "0 wheel nuts",
        "2.5 caliper bolts",
        "5000 bolts",
        "3 bolts 4",
    ] {
        let said = one(line);
        assert_eq!(said.sure, Sure::Unknown, "{line}");
        assert_eq!(said.count, None, "{line}");
        assert_eq!(said.gates_shut_off, Gates::ALL, "{line}");
        assert!(said.mend.is_some_and(|why| !why.is_empty()), "{line}");
    }
}

#[test]
fn sizes_torque_and_litres_are_told_apart() {
    let said = one("2 caliper bolts M12x1.25 105Nm rear left");
    assert_eq!(said.sizes, ["M12x1.25"]);
    assert_eq!(said.torque_newton_metres, Some(105.0));
    assert_eq!(said.side, Some(Side::RearLeft));
    let said = one("1,5 l brake fluid");
    assert_eq!(
        (said.sizes.as_slice(), said.litres),
        (["1,5 l".to_string()].as_slice(), Some(1.5))
    );
    let said = one("wheel bolts 85 lb-ft");
    assert!((said.torque_newton_metres.unwrap_or_default() - 115.2).abs() < 0.1);
    let said = one("crank bolt M14x1.5 180 Nm + 90°");
    assert_eq!(said.torque_typed.as_deref(), Some("180 Nm + 90°"));
}

#[test]
fn what_is_not_known_shuts_every_gate_off_and_back() {
    for line in [
        "flux capacitor",
        "8 bolts M8",
        "bracket",
        "hose",
        "thing behind the glovebox",
    ] {
        let said = one(line);
        assert_eq!(said.sure, Sure::Unknown, "{line}: {said:?}");
        assert_eq!(
            (said.gates_shut_off, said.gates_shut_back),
            (Gates::ALL, Gates::ALL),
            "{line}"
        );
        assert!(said.safety, "{line}");
    }
}

#[test]
fn misspelled_words_are_read_and_marked_as_likely() {
    for (line, system) in [
        ("brake calliper", Branch::Brakes),
        ("brake resevoir", Branch::Brakes),
        ("alternater", Branch::Battery),
        ("thermostst", Branch::Cooling),
        ("exaust manifold", Branch::Exhaust),
        ("Bremsscheibn hinten", Branch::Brakes),
        ("stearing rack", Branch::Steering),
        ("suspention arm", Branch::Suspension),
    ] {
        let said = one(line);
        assert_eq!(said.system, system, "{line}: {said:?}");
    }
    assert_eq!(one("alternater").sure, Sure::Likely);
}

#[test]
fn a_caliper_on_the_way_to_its_disc_is_not_opened() {
    let owes = |line: &str| {
        says(line, Vocabulary::shipped())
            .iter()
            .any(|said| said.owed_codes().contains(&"bleed-brakes"))
    };
    assert!(owes("caliper front left"), "alone: the worse reading");
    assert!(!owes("caliper and disc front left"));
    assert!(owes("caliper, hose and disc front left"));
    assert!(!owes("caliper off, hose still on"));
}

#[test]
fn forty_lines_are_forty_things() {
    let text: String = (0..40).map(|_| "brake hose front left\n").collect();
    assert_eq!(says(&text, Vocabulary::shipped()).len(), 40);
    let text: String = (1..=40)
        .map(|at| format!("{at} widgets of sort {at}x\n"))
        .collect();
    assert_eq!(says(&text, Vocabulary::shipped()).len(), 40);
}

#[test]
fn there_are_enough_terms() {
    let vocabulary = Vocabulary::shipped();
    let english = vocabulary
        .names()
        .map(|(name, _)| name)
        .collect::<std::collections::BTreeSet<_>>();
    assert!(english.len() >= 900, "{}", english.len());
    assert!(vocabulary.terms() >= 900);
}

/// Every name of the table is read as its own sort, or as one that asks at least as much.
#[test]
fn every_name_finds_its_sort() {
    let vocabulary = Vocabulary::shipped();
    let mut wrong = Vec::new();
    let mut all = 0;
    for (name, sort) in vocabulary.names() {
        all += 1;
        let said = says(name, vocabulary);
        let right = said.iter().any(|said| said.sort.as_deref() == Some(sort));
        if !right {
            wrong.push(format!(
                "{name}: {sort}, read as {:?}",
                said.iter()
                    .map(|said| said.sort.clone())
                    .collect::<Vec<_>>()
            ));
        }
    }
    assert!(
        wrong.len() * 100 <= all * 3,
        "{} of {all}: {}",
        wrong.len(),
        wrong.join("\n")
    );
}

fn covers(line: &str, said: &[Said]) -> bool {
    let mut at = 0;
    let mut before = None;
    for one in said {
        if before == Some(one.place.clone()) {
            continue;
        }
        if one.place.start != at {
            return false;
        }
        at = one.place.end;
        before = Some(one.place.clone());
    }
    said.is_empty() || at == line.len()
}

proptest! {
    #[test]
    fn any_text_is_read_and_nothing_is_lost(line in "\\PC{0,80}") {
        let said = says(&line, Vocabulary::shipped());
        prop_assert!(covers(&line, &said), "{said:?}");
        prop_assert!(line.chars().all(|c| !c.is_alphanumeric()) || !said.is_empty());
    }

    #[test]
    fn words_of_the_trade_in_any_order_are_read(words in prop::collection::vec(prop::sample::select(vec![
        "brake", "hose", "front", "left", "pads", "x4", "and", ",", "+", "M12", "120 Nm", "2", "two", "caliper", "bolts", "(", ")", "/",
        "wheel", "off", "in", "on", "new", "washer", "Rad", "Bremsscheibe", "hinten", "links", "-3", "0", "1.5", "l", "oil", "plug", "of", "set", "pair", "cover", "both", "nsf", "rag", "airbag", "seat", "1-4", "-", ".", "\n",
    ]), 0..12)) {
        let line = words.join(" ");
        let said = says(&line, Vocabulary::shipped());
        prop_assert!(covers(&line, &said), "{line:?} {said:?}");
        for one in &said {
            prop_assert!(one.kind.is_none() || one.gates_shut_off.covers(Gates::NONE));
            if one.sure == Sure::Unknown { prop_assert_eq!(one.gates_shut_off, Gates::ALL); }
            prop_assert!(one.kind.is_some() || one.gates_shut_off.is_empty());
        }
    }

    /// Gates of a thing that is back are never more than those of the thing off, save for works
    /// whose first gate is earlier; a work never opens a gate.
    #[test]
    fn doing_a_work_never_shuts_a_gate(at in 0usize..400, done in prop::collection::vec(0usize..67, 0..6)) {
        let vocabulary = Vocabulary::shipped();
        let names: Vec<String> = vocabulary.names().map(|(name, _)| name.to_string()).collect();
        let thing = [trade::Thing { line: names[at % names.len()].clone(), stands: trade::Stands::Back }];
        let codes: Vec<String> = done.iter().map(|at| vocabulary.works()[*at % vocabulary.works().len()].code.to_string()).collect();
        let before = trade::may(&thing, &[], vocabulary);
        let after = trade::may(&thing, &codes, vocabulary);
        prop_assert!(before.shut.covers(after.shut));
    }
}
