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
    assert!(String::from_utf8_lossy(&unknown.stderr).contains("no item nonsense"));
    let missing = run(&["map", "check", "no-such-map.toml"]);
    assert_eq!(missing.status.code(), Some(2));
    let place = run(&["plan", PICKUP, "--for", "alternator", "--place", "below"]);
    assert_eq!(place.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&place.stderr).contains("below=no"));
    assert!(run(&["map", "check", PICKUP]).status.success());
}
