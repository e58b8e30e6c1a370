//! Writes samples of every kind of event as this version stores them, one a line. What
//! it wrote once stands in `tests/fixtures`, in a folder for each month in which a form
//! was added: `cargo run -p record --example events > crates/record/tests/fixtures/…`.

#![allow(clippy::unwrap_used, reason = "a tool of the tests")]
#![expect(clippy::print_stdout, reason = "this is what it does")]

#[path = "../tests/samples/mod.rs"]
mod samples;

use record::{Stream, encode};
use serde_json::json;

fn main() {
    for (name, kind, content) in samples::fixed::events() {
        let stream = Stream::read(name).unwrap();
        let stored = encode(&samples::decoded(&stream, kind, &content).0);
        let body = String::from_utf8(stored.body).unwrap();
        println!(
            "{}",
            json!({ "stream": name, "kind": stored.kind, "version": stored.version, "body": body })
        );
    }
}
