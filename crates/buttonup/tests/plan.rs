//! `buttonup plan` and `buttonup map check`, as whole runs on the demo's maps.

use serde_json::Value;
use std::process::{Command, Output};

const PICKUP: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../demo/maps/korvane-drayman-engine-front.toml"
);

fn run(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_buttonup"))
        .args(args)
        .output()
        .expect("the program was built for this test")
}

fn plan(args: &[&str]) -> Value {
    let mut all = vec!["--json", "plan", PICKUP];
    all.extend(args);
    let output = run(&all);
    assert!(output.status.success(), "{output:?}");
    serde_json::from_slice(&output.stdout).expect("it prints JSON")
}

fn moves(plan: &Value, way: &str) -> Vec<String> {
    let rows = plan[way].as_array().expect("a list of rows");
    rows.iter()
        .map(|row| row["move"].as_str().expect("a move").to_owned())
        .collect()
}

#[test]
fn the_way_to_the_alternator_is_proven_and_another_is_taken_when_one_is_barred() {
    let first = plan(&["--for", "alternator"]);
    assert_eq!(first["proven"], true);
    assert_eq!(first["cost"], first["bound"]);
    let through_the_liner = moves(&first, "off").contains(&"liner.off".to_owned());
    let barred = if through_the_liner {
        "liner.off"
    } else {
        "shroud.off"
    };
    let second = plan(&["--for", "alternator", "--without", barred]);
    assert!(!moves(&second, "off").contains(&barred.to_owned()));
    assert!(second["cost"].as_f64() >= first["cost"].as_f64());
    assert_eq!(moves(&second, "off").len(), moves(&second, "back").len());
}

#[test]
fn what_cannot_be_read_or_reached_says_where_what_and_how_to_mend_it() {
    let unknown = run(&["plan", PICKUP, "--for", "nonsense"]);
    assert_eq!(unknown.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&unknown.stderr).contains("the map has no nonsense"));
    let missing = run(&["map", "check", "no-such-map.toml"]);
    assert_eq!(missing.status.code(), Some(2));
    let place = run(&["plan", PICKUP, "--for", "alternator", "--place", "below"]);
    assert_eq!(place.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&place.stderr).contains("below=no"));
    assert!(run(&["map", "check", PICKUP]).status.success());
}

/// A plan from where things stand, told in a file of this content.
fn from_state(content: &str, args: &[&str]) -> Output {
    let file = tempfile::NamedTempFile::new().expect("a place for the file");
    std::fs::write(file.path(), content).expect("it can be written");
    let path = file.path().to_str().expect("a plain path");
    let mut all = vec!["--json", "plan", PICKUP, "--state", path];
    all.extend(args);
    run(&all)
}

const MIDDLE: &str = r#"
at = "below"
[items."tray screws"]
stands = "out"
[items."tray clips"]
stands = "out"
[items.tray]
stands = "off"
[items."pump bolts"]
stands = { stub = [2] }
[items."heat shield"]
is = "cover"
stands = "off"
"#;

#[test]
fn a_plan_from_the_middle_does_nothing_again_and_brings_home_what_the_map_does_not_know() {
    let output = from_state(MIDDLE, &["--for", "drain plug"]);
    assert!(output.status.success(), "{output:?}");
    let plan: Value = serde_json::from_slice(&output.stdout).expect("it prints JSON");
    assert_eq!(moves(&plan, "off"), ["drain plug.out"]);
    let back: Vec<&str> = plan["back"]
        .as_array()
        .expect("a list of rows")
        .iter()
        .map(|row| row["item"].as_str().expect("an item"))
        .collect();
    for item in [
        "drain plug",
        "tray",
        "tray screws",
        "tray clips",
        "heat shield",
    ] {
        assert!(back.contains(&item), "{item} not in {back:?}");
    }
    assert_eq!(plan["stays"][0]["item"], "pump bolts");
    assert_eq!(plan["stays"][0]["at"], 2);
}

#[test]
fn it_is_buttoned_up_so_that_it_rolls_or_wholly() {
    let wheel = "[items.\"wheel nuts\"]\nstands = \"out\"\n[items.wheel]\nstands = \"off\"\n\
                 [items.\"liner clips\"]\nstands = \"out\"\n[items.liner]\nstands = \"off\"\n\
                 [items.\"engine cover\"]\nstands = \"off\"\n";
    let back = |args: &[&str]| -> Vec<String> {
        let output = from_state(wheel, args);
        assert!(output.status.success(), "{output:?}");
        let plan: Value = serde_json::from_slice(&output.stdout).expect("it prints JSON");
        assert_eq!(plan["proven"], true);
        moves(&plan, "back")
    };
    assert_eq!(back(&["--roll"]), ["wheel.off", "wheel nuts.out"]);
    let home = back(&["--home"]);
    assert_eq!(home.len(), 5, "{home:?}");
    let at = |id: &str| home.iter().position(|row| row == id);
    assert!(at("liner.off") < at("wheel.off"), "{home:?}");
}

#[test]
fn a_state_that_cannot_be_read_is_told_line_by_line() {
    let wrong = from_state(
        "[items.trayy]\nstands = \"off\"\n[items.tray]\nstands = \"out\"\n[items.wheel]\n[items.pump]\nstands = { off = 1 }\n",
        &["--home"],
    );
    assert_eq!(wrong.status.code(), Some(2));
    let said = String::from_utf8_lossy(&wrong.stderr).into_owned()
        + &String::from_utf8_lossy(&wrong.stdout);
    for line in [
        ":1:8: error: the map has no `trayy`; did you mean `tray`?",
        ":4:10: error: `tray` cannot stand `out`",
        ":5:8: error: `wheel` does not say where it stands",
        "`off` names no positions",
    ] {
        assert!(said.contains(line), "{line} not in {said}");
    }
}

#[test]
fn a_map_that_is_no_text_is_told() {
    let file = tempfile::NamedTempFile::new().expect("a place for the file");
    std::fs::write(file.path(), [0xff, 0xfe, b'v', 0]).expect("it can be written");
    let path = file.path().to_str().expect("a plain path");
    let wrong = run(&["map", "check", path]);
    assert_eq!(wrong.status.code(), Some(2));
    assert!(
        String::from_utf8_lossy(&wrong.stderr).contains("it is no UTF-8 text"),
        "{wrong:?}"
    );
}

const WHEEL_END: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../demo/maps/halvorsen-fjell-front-wheel-end.toml"
);

/// A bearing job does not begin in the cabin, and goes there once.
#[test]
fn owed_work_is_not_walked_to_before_it_is_owed() {
    let output = run(&["--json", "plan", WHEEL_END, "--for", "bearing"]);
    assert!(output.status.success(), "{output:?}");
    let plan: Value = serde_json::from_slice(&output.stdout).expect("it prints JSON");
    let off = moves(&plan, "off");
    assert_ne!(off[0], "pump the brake pedal.due", "{off:?}");
    let at = |id: &str| off.iter().position(|row| row == id);
    assert!(
        at("caliper.off") < at("pump the brake pedal.due"),
        "{off:?}"
    );
    let rows = ["off", "back"].map(|way| plan[way].as_array().expect("rows").clone());
    let cabin = rows
        .concat()
        .iter()
        .filter(|row| row["place"] == "cabin")
        .count();
    assert_eq!(cabin, 1);
    // The hub nut gets its last pass with the wheel on.
    let back = moves(&plan, "back");
    let at = |id: &str| back.iter().position(|row| row == id);
    assert!(at("wheel.off") < at("hub nut.crack") && at("wheel bolts.out") < at("hub nut.crack"));
}

#[test]
fn the_command_line_shows_tools_torques_and_reasons() {
    let output = run(&["plan", WHEEL_END, "--for", "pads"]);
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    for said in [
        "17 mm socket",
        "50 Nm then 110 Nm",
        "it comes before slide pins tight",
        "owed since caliper.off",
    ] {
        assert!(text.contains(said), "{said} not in {text}");
    }
    assert!(!text.contains("it belongs at home"), "{text}");
}

/// A plan at the wheel end from where things stand.
fn wheel_end_from(content: &str, args: &[&str]) -> Output {
    let file = tempfile::NamedTempFile::new().expect("a place for the file");
    std::fs::write(file.path(), content).expect("it can be written");
    let path = file.path().to_str().expect("a plain path");
    run(&[&["plan", WHEEL_END, "--state", path], args].concat())
}

#[test]
fn what_forbids_it_to_roll_is_named() {
    let middle = "[items.\"wheel bolts\"]\nstands = \"out\"\n[items.wheel]\nstands = \"off\"\n\
                  [items.\"slide pins\"]\nstands = { out = [1], stub = [2] }\n\
                  [items.caliper]\nstands = \"off\"\n[items.\"caliper hook\"]\nstands = \"inside\"\n";
    let output = wheel_end_from(middle, &["--roll"]);
    let text = String::from_utf8_lossy(&output.stdout).into_owned()
        + &String::from_utf8_lossy(&output.stderr);
    for said in [
        "wants slide pins tight first",
        "what forbids it to roll:",
        "wheel off",
        "caliper off",
        "pump the brake pedal owed",
        "slide pins",
    ] {
        assert!(text.contains(said), "{said} not in {text}");
    }
    let home = wheel_end_from("", &["--roll"]);
    let text = String::from_utf8_lossy(&home.stdout).into_owned();
    assert!(text.contains("nothing forbids it to roll"), "{text}");
}

#[test]
fn a_state_that_contradicts_itself_is_questioned() {
    let both = "[items.\"wheel bolts\"]\nstands = { out = [1, 2], stub = [2] }\n";
    let output = wheel_end_from(both, &["--home"]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        said.contains("`wheel bolts` 2 stands both `out` and `stub`"),
        "{said}"
    );
    let odd = "at = \"wheel wel\"\n[items.wheel]\nstands = \"off\"\n";
    let output = wheel_end_from(odd, &["--home"]);
    assert!(output.status.success(), "{output:?}");
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(said.contains("? wheel stands off, and yet not"), "{said}");
    assert!(said.contains("is wheel well meant?"), "{said}");
}

#[test]
fn names_that_the_map_does_not_have_are_refused() {
    for (flag, value) in [("--variant", "turbo"), ("--place", "attic=no")] {
        let output = run(&["plan", WHEEL_END, "--for", "pads", flag, value]);
        assert_eq!(output.status.code(), Some(2), "{flag}");
        assert!(
            String::from_utf8_lossy(&output.stderr).contains(flag),
            "{output:?}"
        );
    }
}

#[test]
fn what_nobody_can_get_at_is_found_by_the_check() {
    let map = "vehicle = \"Small Van\"\n[items.belt]\nis = \"belt\"\nplace = \"above\"\n\
               [items.pump]\nis = \"part\"\nneeds = [\"belt off\"]\nplace = \"above\"\n\
               [items.bracket]\nis = \"part\"\nneeds = [\"pump off\", \"belt on\"]\nplace = \"above\"\n";
    let file = tempfile::NamedTempFile::new().expect("a place for the file");
    std::fs::write(file.path(), map).expect("it can be written");
    let output = run(&["map", "check", file.path().to_str().expect("a plain path")]);
    assert_eq!(output.status.code(), Some(1), "{output:?}");
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(said.contains("nobody can get at bracket"), "{said}");
    for demo in [PICKUP, WHEEL_END] {
        let output = run(&["map", "check", demo]);
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(output.status.success(), "{said}");
        assert!(!said.contains("warning"), "{said}");
    }
}
