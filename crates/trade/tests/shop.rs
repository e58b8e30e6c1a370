//! A shop's own words and rules: more, never less, of the safety class.

use states::Gate;
use trade::{Vocabulary, says, waivers};

#[test]
fn a_shop_adds_words_sorts_works_and_rules() {
    let shop = Vocabulary::shipped()
        .with(
            r#"
            [[work]]
            code = "photo"
            system = "body"
            shuts = "hand"
            shared = "item"
            english = "photo taken"
            german = "Foto gemacht"
            done_when = "a photo is with the order"

            [[sort]]
            id = "crane-arm"
            kind = "part"
            system = "body"
            zone = "rear"
            shut = ["roll"]
            owed = ["torque", "photo"]
            source = "our own rule of March"
            names = ["loading crane arm"]

            [[also]]
            sort = "brake-hose"
            names = ["wobbly"]

            [[stricter]]
            sort = "brake-pads"
            owed = ["photo"]
            "#,
        )
        .expect("it is sound");
    let crane = &says("loading crane arm", &shop)[0];
    assert!(crane.gates_shut_off.has(Gate::Roll));
    assert_eq!(crane.owed_codes(), ["torque", "photo"]);
    assert_eq!(crane.grade.code(), "shop");
    assert!(says("wobbly front left", &shop)[0].safety);
    assert!(says("front pads", &shop)[0].owed_codes().contains(&"photo"));
    assert!(shop.additions() == 1 && shop.version() == Vocabulary::shipped().version());
}

#[test]
fn a_shop_may_not_weaken_the_safety_class() {
    for name in [
        "brake hose",
        "Bremsscheibe",
        "brake",
        "hose",
        "front pads",
        "caliper",
        "seat belt",
    ] {
        let text = format!(
            "[[sort]]\nid = \"x\"\nkind = \"cover\"\nsystem = \"body\"\nshut = [\"hand\"]\nnames = [\"{name}\"]\n"
        );
        let told = Vocabulary::shipped()
            .with(&text)
            .expect_err(name)
            .to_string();
        assert!(told.contains(name) && told.contains("strict"), "{told}");
        let text = format!("[[also]]\nsort = \"undertray\"\nnames = [\"{name}\"]\n");
        assert!(Vocabulary::shipped().with(&text).is_err(), "{name}");
    }
    // There is no way to write less: the table knows no such word.
    for text in [
        "[[laxer]]\nsort = \"brake-hose\"",
        "[[stricter]]\nsort = \"brake-hose\"\nremove = [\"leak-look\"]",
    ] {
        assert!(Vocabulary::shipped().with(text).is_err());
    }
}

#[test]
fn a_table_that_is_wrong_says_where_and_how_to_mend_it() {
    for (text, says) in [
        ("[[also]]\nsort = \"nothing\"\nnames = [\"x\"]", "nothing"),
        (
            "[[stricter]]\nsort = \"brake-hose\"\nshut = [\"fly\"]",
            "fly",
        ),
        (
            "[[sort]]\nid = \"brake-hose\"\nkind = \"hose\"\nnames = [\"x\"]",
            "brake-hose",
        ),
        (
            "[[sort]]\nid = \"y\"\nkind = \"soup\"\nnames = [\"x\"]",
            "soup",
        ),
        ("[[sort]", "TOML"),
    ] {
        let told = Vocabulary::shipped()
            .with(text)
            .expect_err(text)
            .to_string();
        assert!(told.contains(says), "{text}: {told}");
    }
}

/// Source: checks/data/trade/facts.md, "What may be waived, by whom"; grade common-practice.
#[test]
fn waivers_are_those_of_the_list() {
    let list = waivers();
    assert_eq!((list.never.len(), list.may.len()), (8, 7));
    let who = |work: &str, system: trade::Branch, gate: Gate| -> Vec<String> {
        list.who(work, system, gate)
            .iter()
            .map(|one| one.who.clone())
            .collect()
    };
    use trade::Branch as B;
    assert_eq!(who("pedal-hard", B::Brakes, Gate::Roll), ["foreman"]);
    assert!(who("pedal-hard", B::Brakes, Gate::Road).is_empty());
    assert!(who("wheel-nuts-on", B::Wheels, Gate::Lower).is_empty());
    assert!(who("hv-release", B::HighVoltage, Gate::GoLive).is_empty());
    assert_eq!(who("alignment", B::Steering, Gate::HandOver), ["foreman"]);
    assert_eq!(
        who("codes-read", B::Electrical, Gate::HandOver),
        ["technician"]
    );
    assert_eq!(trade::cautions().len(), 17);
}

#[test]
fn every_caution_and_gate_of_the_table_has_its_words() {
    let vocabulary = Vocabulary::shipped();
    let names: Vec<String> = vocabulary
        .names()
        .map(|(name, _)| name.to_string())
        .collect();
    for name in names {
        for said in says(&name, vocabulary) {
            for caution in &said.caution {
                assert!(
                    trade::cautions().contains_key(&**caution),
                    "{name}: {caution}"
                );
            }
        }
    }
    assert_eq!(vocabulary.works().len(), 67);
}
