//! Who says nothing, or says it slowly, holds up nobody else; and a hundred large commands at
//! once take no more memory than a few.

use crate::http::Door;
use crate::shop_in_words::set_up;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::Arc;
use std::time::{Duration, Instant};
use store::Memory;

const SOON: Duration = Duration::from_millis(400);
/// Far longer than anything here may take, on however slow a machine.
const NEVER: Duration = Duration::from_secs(60);

fn impatient(limits: web::Limits) -> Door {
    let patience = web::Patience {
        piece: SOON,
        whole: 4 * SOON,
        room: SOON,
    };
    Door::with(Arc::new(Memory::new()), limits, patience)
}

fn quick() -> web::Limits {
    web::Limits {
        head: SOON,
        taking: SOON,
        ..web::Limits::default()
    }
}

/// What comes until the other side hangs up.
fn to_the_end(mut stream: TcpStream) -> String {
    let began = Instant::now();
    stream.set_read_timeout(Some(NEVER)).unwrap();
    let mut all = Vec::new();
    // A connection that is cut off counts as hung up.
    let _ = stream.read_to_end(&mut all);
    assert!(began.elapsed() < NEVER, "it is still held");
    String::from_utf8_lossy(&all).into_owned()
}

fn head(door: &Door, length: usize) -> Vec<u8> {
    format!(
        "POST /api/commands HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nContent-Type: application/json\r\nContent-Length: {length}\r\n\r\n",
        door.port
    )
    .into_bytes()
}

#[test]
fn a_head_that_does_not_end_and_a_connection_that_says_nothing_are_let_go() {
    let door = impatient(quick());
    let mut half = door.connect();
    half.write_all(b"GET /api/orders HTTP/1.1\r\nHost: ")
        .unwrap();
    assert_eq!(to_the_end(half), "");
    assert_eq!(to_the_end(door.connect()), "");
    // After an answer as well.
    let mut idle = door.connect();
    let ask = format!(
        "GET /api/openapi.json HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n",
        door.port
    );
    idle.write_all(ask.as_bytes()).unwrap();
    assert!(to_the_end(idle).starts_with("HTTP/1.1 200"));
}

#[test]
fn whoever_watches_for_news_is_not_let_go() {
    let door = impatient(quick());
    set_up(&door);
    let mut news = door.news();
    let first = news.next().unwrap();
    // Longer than any head may take.
    assert_eq!(to_the_end(door.connect()), "");
    assert_eq!(to_the_end(door.connect()), "");
    door.send(
        "shop",
        "shop_fact",
        serde_json::json!({ "departed": { "person": "ben" } }),
    );
    assert!(news.any(|position| position > first));
}

#[test]
fn a_body_that_does_not_come_is_told_so_and_can_be_sent_again() {
    let door = impatient(web::Limits::default());
    set_up(&door);
    let mut stalls = door.connect();
    stalls.write_all(&head(&door, 1_000)).unwrap();
    stalls.write_all(b"{").unwrap();
    let told = to_the_end(stalls);
    assert!(told.starts_with("HTTP/1.1 503"), "{told}");
    assert!(told.contains("did not arrive in time"), "{told}");
    assert!(told.contains("\"away\""), "a device keeps it: {told}");
    // One that trickles is not waited for without end either.
    let mut trickles = door.connect();
    trickles.write_all(&head(&door, 1_000_000)).unwrap();
    let began = Instant::now();
    while trickles.write_all(b" ").is_ok() {
        assert!(began.elapsed() < NEVER, "it is still read");
        // The rate is what is tested: a letter now and then.
        std::thread::sleep(SOON / 8);
    }
}

#[test]
fn large_bodies_wait_for_room() {
    let patience = web::Patience {
        piece: NEVER,
        whole: NEVER,
        room: SOON,
    };
    let store = Arc::new(Memory::new());
    let door = Door::with(store, web::Limits::default(), patience);
    set_up(&door);
    let six = 6 * 1024 * 1024;
    // Four of the largest are being read; then there is no room for the smallest.
    let held: Vec<TcpStream> = (0..4)
        .map(|_| {
            let mut held = door.connect();
            held.write_all(&head(&door, six)).unwrap();
            held
        })
        .collect();
    let began = Instant::now();
    let told = loop {
        let answer = door.post(b"{}");
        if answer.status == 503 {
            break answer;
        }
        assert!(began.elapsed() < NEVER, "there is room for a fifth");
    };
    assert!(told.body.contains("too much is being sent"), "{told:?}");
    // What brings nothing with it needs no room.
    assert_eq!(door.get("/api/orders").status, 200);
    drop(held);
    let began = Instant::now();
    while door.post(b"{}").status == 503 {
        assert!(began.elapsed() < NEVER, "the room never comes back");
    }
    let mut too_large = door.connect();
    too_large.write_all(&head(&door, six + 1)).unwrap();
    assert!(to_the_end(too_large).starts_with("HTTP/1.1 413"));
}

#[test]
fn there_are_so_many_connections_at_once() {
    let limits = web::Limits {
        connections: 2,
        head: 2 * SOON,
        ..web::Limits::default()
    };
    let door = impatient(limits);
    let (first, second) = (door.connect(), door.connect());
    // A third is answered once one of them is let go.
    assert_eq!(door.get("/api/openapi.json").status, 200);
    drop((first, second));
}

/// More than the program answers at once say nothing at all: whoever works is answered all the same,
/// a little later, since each is let go in turn.
#[test]
fn a_crowd_that_says_nothing_keeps_nobody_from_work() {
    let limits = web::Limits {
        connections: 8,
        head: SOON,
        ..web::Limits::default()
    };
    let door = impatient(limits);
    let crowd: Vec<TcpStream> = (0..64).map(|_| door.connect()).collect();
    let began = Instant::now();
    assert_eq!(door.get("/api/openapi.json").status, 200);
    assert!(began.elapsed() < NEVER, "it waited for all of them to go");
    drop(crowd);
    assert_eq!(door.get("/api/openapi.json").status, 200);
}
