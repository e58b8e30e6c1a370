//! Whole runs of the program: what is printed where, and with what it ends.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{Run, Server, run};
use serde_json::{Value, json};
use std::path::Path;

/// A number whose check digit is X; its source stands in `checks/published/vin.toml`.
const GOOD: &str = "1M8GDM9AXKP042788";

fn text(folder: &Path) -> &str {
    folder.to_str().unwrap()
}

/// Wrong usage, or input that cannot be read: nothing on standard output, words on the
/// other.
fn assert_wrong(run: &Run, parts: &[&str]) {
    assert_eq!(run.code, 2, "{run:?}");
    assert_eq!(run.out, "", "{run:?}");
    for part in parts {
        assert!(run.err.contains(part), "{part:?} is not said: {run:?}");
    }
}

#[test]
fn a_good_number_is_valid_and_ends_with_nought() {
    let run = run(&["vin", GOOD]);
    assert_eq!(run.code, 0, "{run:?}");
    assert!(run.out.starts_with(&format!("{GOOD}: valid\n")), "{run:?}");
    assert_eq!(run.err, "");
}

#[test]
fn a_number_with_a_look_alike_misread_is_not_valid_and_says_what_would_be() {
    let run = run(&["vin", "1MBGDM9AXKP042788"]);
    assert_eq!(run.code, 1, "{run:?}");
    assert!(
        run.out.starts_with("1MBGDM9AXKP042788: not valid\n"),
        "{run:?}"
    );
    assert!(
        run.out.contains("would be valid with 8 at position 3"),
        "{run:?}"
    );
    assert_eq!(run.err, "", "that is an answer, not a fault");
}

#[test]
fn as_json_a_number_has_every_field_that_is_promised() {
    let fields =
        |run: &Run| -> Vec<String> { run.json().as_object().unwrap().keys().cloned().collect() };
    for (place, number) in [(0, GOOD), (1, "1M8GDM9AXKP042789"), (1, "IOQ"), (1, "")] {
        let found = run(&["vin", number, "--json"]);
        assert_eq!(found.code, place, "{found:?}");
        assert_eq!(found.out.lines().count(), 1);
        for field in [
            "well_formed",
            "check_digit_applies",
            "valid",
            "check_digit",
            "expected_check_digit",
            "model_year",
            "model_years",
            "suspects",
        ] {
            assert!(
                fields(&found).contains(&field.to_owned()),
                "{field}: {found:?}"
            );
        }
    }
    let good = run(&["--json", "vin", GOOD]).json();
    assert_eq!(good["well_formed"], true);
    assert_eq!(good["check_digit_applies"], true);
    assert_eq!(good["valid"], true);
    assert_eq!(
        (&good["check_digit"], &good["expected_check_digit"]),
        (&json!("X"), &json!("X"))
    );
    assert_eq!(good["model_year"], 1989);
    let bad = run(&["vin", "1M8GDM9A1KP042788", "--json"]).json();
    assert_eq!(
        (&bad["check_digit"], &bad["expected_check_digit"]),
        (&json!("1"), &json!("X"))
    );
    let suspects = bad["suspects"].as_array().unwrap();
    assert!(
        suspects
            .iter()
            .any(|s| s["position"] == 9 && s["character"] == "X"),
        "{suspects:?}"
    );
    assert_eq!(
        run(&["vin", "1M8GDM9AX-KP042788"]).code,
        0,
        "hyphens and blanks are left out"
    );
}

#[test]
fn wrong_usage_ends_with_two() {
    assert_wrong(&run(&[]), &["Usage"]);
    assert_wrong(&run(&["fly"]), &["fly"]);
    assert_wrong(&run(&["vin"]), &["NUMBER"]);
    assert_wrong(&run(&["vin", GOOD, "--loud"]), &["--loud"]);
    assert_wrong(&run(&["serve", "--listen"]), &["--listen"]);
    for address in ["here", "127.0.0.1", "127.0.0.1:99999", ":80"] {
        assert_wrong(
            &run(&["serve", "--no-open", "--listen", address]),
            &["--listen", address],
        );
    }
}

#[test]
fn help_and_version_are_answers() {
    let help = run(&["--help"]);
    assert_eq!(help.code, 0);
    for command in ["demo", "serve", "vin", "verify", "export"] {
        assert!(
            help.out.contains(&format!("  {command} ")),
            "{command}: {}",
            help.out
        );
    }
    let version = run(&["--version"]);
    assert_eq!(
        (version.code, version.out),
        (0, format!("buttonup {}\n", env!("CARGO_PKG_VERSION")))
    );
}

#[test]
fn nobody_but_this_machine_is_served_and_nothing_is_made_for_them() {
    let folder = tempfile::tempdir().unwrap();
    for command in ["serve", "demo"] {
        for address in ["0.0.0.0:0", "192.0.2.1:0", "[::1]:0", "127.0.0.2:0"] {
            let data = folder.path().join(command);
            let refused = run(&[
                command,
                "--no-open",
                "--data",
                text(&data),
                "--listen",
                address,
            ]);
            assert_wrong(
                &refused,
                &["--listen", "is not this machine", "use 127.0.0.1"],
            );
            assert!(!data.exists(), "{command} {address}");
        }
    }
    let as_json = run(&[
        "--json",
        "serve",
        "--no-open",
        "--data",
        text(folder.path()),
        "--listen",
        "0.0.0.0:0",
    ]);
    assert_eq!((as_json.code, as_json.out.as_str()), (2, ""));
    let told: Value = serde_json::from_str(&as_json.err).unwrap();
    for field in ["where", "what", "mend"] {
        assert!(
            told[field].as_str().is_some_and(|text| !text.is_empty()),
            "{told}"
        );
    }
}

#[test]
fn an_empty_folder_is_set_up_in_the_browser() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("new shop");
    let server = Server::serve(&data);
    assert_eq!(server.get("/").0, 303);
    let (status, page) = server.get("/setup");
    assert_eq!(status, 200);
    assert!(page.contains("Your shop"));
    server.kill();
    // Nothing was said yet: there is nothing that could be sound.
    let empty = run(&["verify", "--data", text(&data), "--json"]);
    assert_wrong(&empty, &["there is no log of that name"]);
}

#[test]
fn wrong_usage_is_json_where_json_was_asked_for() {
    for wrong in [
        &["vin", "--json"][..],
        &["--json", "nonsense"],
        &["verify", "--nonsense", "--json"],
        &["keep-for", "many", "--json", "--who", "ana"],
    ] {
        let run = run(wrong);
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{run:?}");
        let told: Value = serde_json::from_str(&run.err).unwrap_or_else(|e| panic!("{e}: {run:?}"));
        assert!(
            told["what"].as_str().is_some_and(|what| what.len() > 5),
            "{run:?}"
        );
        assert!(
            told["mend"].is_string() && told["where"].is_string(),
            "{run:?}"
        );
    }
    let asked = run(&["--json", "--help"]);
    assert!(asked.code == 0 && asked.out.contains("Usage"), "{asked:?}");
}

#[test]
fn what_a_map_knows_nothing_of_is_refused() {
    let map = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../demo/maps/korvane-drayman-engine-front.toml"
    );
    let plan = |more: &[&str]| run(&[&["plan", map, "--home"], more].concat());
    assert_eq!(plan(&[]).code, 0);
    assert_wrong(&plan(&["--place", "nowhere=no"]), &["--place", "nowhere"]);
    assert_wrong(&plan(&["--variant", "nothing"]), &["--variant", "nothing"]);
    let nowhere = run(&["map", "from-order", "1001", "--data", "/nowhere/at/all"]);
    assert_wrong(&nowhere, &["there is no record"]);
}

#[cfg(unix)]
#[test]
fn the_program_ends_when_told_to_though_a_page_listens() {
    use std::time::{Duration, Instant};
    for signal in ["-INT", "-TERM"] {
        let folder = tempfile::tempdir().unwrap();
        let mut server = Server::serve(folder.path());
        let _listening = server.listen();
        // One that has sent half a request, and never sends the rest.
        let _half = server.half_a_request();
        let began = Instant::now();
        let code = server.end_by(signal);
        assert!(
            began.elapsed() < Duration::from_secs(2),
            "{signal}: {:?}",
            began.elapsed()
        );
        assert_eq!(code, Some(0), "{signal}");
    }
    // Twice is at once.
    let folder = tempfile::tempdir().unwrap();
    let mut server = Server::serve(folder.path());
    let _half = server.half_a_request();
    server.signal("-INT");
    let began = Instant::now();
    while server.is_running() && began.elapsed() < Duration::from_secs(1) {
        server.signal("-INT");
        std::thread::sleep(Duration::from_millis(20));
    }
    assert!(
        began.elapsed() < Duration::from_secs(1),
        "{:?}",
        began.elapsed()
    );
}

#[test]
fn a_second_program_on_the_same_folder_is_told_so() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::serve(folder.path());
    let second = run(&[
        "serve",
        "--no-open",
        "--data",
        text(folder.path()),
        "--listen",
        "127.0.0.1:0",
    ]);
    assert_wrong(
        &second,
        &[
            text(folder.path()),
            "in use by another running program",
            "Stop the other program, or choose another folder",
        ],
    );
    assert_eq!(server.get("/setup").0, 200, "the first goes on");
}

#[test]
fn a_port_that_is_taken_is_told_so() {
    let folder = tempfile::tempdir().unwrap();
    let taken = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let refused = run(&[
        "serve",
        "--no-open",
        "--data",
        text(folder.path()),
        "--listen",
        &address,
    ]);
    assert_wrong(&refused, &[&address, "is another program on that port?"]);
}

#[test]
fn the_demo_wants_a_fresh_folder_and_shows_its_orders() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("a letter"), "dear all").unwrap();
    let refused = run(&[
        "demo",
        "--no-open",
        "--data",
        text(folder.path()),
        "--listen",
        "127.0.0.1:0",
    ]);
    assert_wrong(
        &refused,
        &[
            text(folder.path()),
            "the folder is not empty",
            "name another with --data",
        ],
    );
    let left: Vec<_> = std::fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 1, "nothing was added");

    let shop = program::invented_shop(folder.path());
    let server = Server::serve(&shop);
    let (status, orders) = server.get("/api/orders");
    assert_eq!(status, 200);
    let orders: Vec<Value> = serde_json::from_str(&orders).unwrap();
    let words: Vec<&str> = orders
        .iter()
        .map(|order| order["word"].as_str().unwrap())
        .collect();
    assert_eq!(orders.len(), 7);
    for word in ["left", "machine work", "part", "at work", "comes"] {
        assert!(words.contains(&word), "{words:?}");
    }
    assert!(orders.iter().any(|order| order["can_roll"] == false));
}

/// 150 people who send a large command and stop just before its end: those that are read are
/// few, and none is waited for without end.
#[cfg(target_os = "linux")]
#[test]
fn a_hundred_and_fifty_held_bodies_take_little_memory_while_and_after() {
    use std::io::Read;
    use std::time::{Duration, Instant};
    const MOST_MIB: u64 = 200;
    let folder = tempfile::tempdir().unwrap();
    let server = Server::serve(folder.path());
    let began = Instant::now();
    let told: Vec<String> = std::thread::scope(|scope| {
        let held = |_| {
            scope.spawn(|| {
                let mut stream = server.held_body();
                let limit = Some(Duration::from_secs(120));
                stream.set_read_timeout(limit).unwrap();
                let mut told = String::new();
                // Whoever was not read to the end may be cut off with the answer on its way.
                let _ = stream.read_to_string(&mut told);
                told
            })
        };
        let all: Vec<_> = (0..150).map(held).collect();
        // Pages are shown meanwhile.
        assert_eq!(server.get("/setup").0, 200);
        all.into_iter().map(|one| one.join().unwrap()).collect()
    });
    assert!(began.elapsed() < Duration::from_secs(120), "some are held");
    assert!(told.iter().any(|told| told.contains("send it again")));
    assert!(
        told.iter()
            .all(|told| told.is_empty() || told.starts_with("HTTP/1.1 503"))
    );
    let (after, at_most) = server.memory();
    assert!(
        at_most < MOST_MIB,
        "{at_most} MiB at most, {after} MiB after"
    );
}

/// A shop that is open all week, with an order whose minutes are told.
#[test]
fn the_days_of_a_shop_are_planned_by_its_record_and_what_is_missing_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let shop = program::invented_shop(folder.path());
    let data = shop.to_str().unwrap();
    let asked = run(&["day", "--json", "--data", data]);
    assert_eq!(asked.code, 0, "{asked:?}");
    let left_out = &asked.json()["not_planned"][0];
    assert_eq!(left_out["number"], 1006);
    let why = left_out["why"].as_str().unwrap();
    assert!(why.starts_with("no minutes"), "{why}");

    let server = Server::serve(&shop);
    let command = |nth: u64, stream: &str, part: &str, content: Value| {
        let mut command = json!({
            "command_id": format!("00000000-0000-7000-b000-{nth:012}"),
            "device": "phone-8", "device_seq": nth, "happened_at": "2026-03-02T08:15:00Z",
            "who": "nuria", "stream": stream,
        });
        command[part] = content;
        let (status, answer) = server.command(&command);
        assert_eq!(status, 200, "{answer}");
    };
    command(
        1,
        "shop",
        "shop_fact",
        json!({ "hours-told": { "person": null, "week": "mon-sun 00:00-24:00", "after": [] } }),
    );
    let (_, order) = server.get("/api/orders/1006");
    let order: Value = serde_json::from_str(&order).unwrap();
    let stream = format!("order:{}", order["order"].as_str().unwrap());
    command(
        2,
        &stream,
        "fact",
        json!({ "work-left": { "minutes": "75", "least": "75", "most": "75", "skill": null,
            "stall": "flat", "after": [] } }),
    );
    // Also while another program serves it.
    let planned = run(&["day", "--json", "--data", data]);
    assert_eq!(planned.code, 0, "{planned:?}");
    let planned = planned.json();
    let orders = planned["orders"].as_array().unwrap();
    let told = orders.iter().find(|one| one["number"] == 1006).unwrap();
    assert_eq!(told["minutes_from"], "told");
    let of_stall = planned["stalls"].as_array().unwrap().iter();
    let work: Vec<&Value> = of_stall
        .flat_map(|stall| stall["work"].as_array().unwrap())
        .filter(|work| work["order"].as_str().unwrap().starts_with("1006 "))
        .collect();
    assert_eq!(work.len(), 1, "{planned}");
    let time = |at: &str| -> jiff::Timestamp { work[0][at].as_str().unwrap().parse().unwrap() };
    // As long as was told, and the half hour of the break where it falls into it.
    let took = time("to").duration_since(time("from")).as_mins();
    assert!([75, 75 + 30].contains(&took), "{took} minutes");
    // The JSON door gives the same, where both plan anew within one minute.
    let mut serving = Some(server);
    let both = || {
        serving = None;
        let server = serving.insert(Server::serve(&shop));
        // Asked for too long beside other programs, it is away; then once more.
        let door: Value = serde_json::from_str(&server.get("/api/day").1).unwrap_or_default();
        (door, run(&["day", "--json", "--data", data]).json())
    };
    let (door, line) = std::iter::repeat_with(both)
        .take(5)
        .find(|(door, line)| door["now"] == line["now"])
        .unwrap();
    assert_eq!(door, line);
    for field in ["stalls", "people", "promises", "calls", "orders"] {
        assert!(door[field].is_array(), "{field} of {door}");
    }
    let words = run(&["day", "--data", data]);
    assert!(
        words.out.contains("1006 Selwick Rue 1.4: work") && words.out.contains("promises"),
        "{words:?}"
    );
    drop(serving);
    let both = run(&["day", "some.toml", "--data", data]);
    assert_eq!(both.code, 2, "{both:?}");
    assert_eq!(run(&["day"]).code, 2);
}
