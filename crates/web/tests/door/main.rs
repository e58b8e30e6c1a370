//! The program's doors, from outside: a real port, plain HTTP, good manners and bad.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod again;
mod allowed;
mod belt_and_fluids;
#[path = "../../../shop/tests/bench/between.rs"]
#[allow(dead_code, reason = "the shop's tests use the rest")]
mod between;
mod brake_job;
mod calc;
mod commands;
mod described;
mod doubts;
mod files;
mod http;
mod known;
mod language;
mod manners;
mod many_devices;
mod money;
mod network;
mod own_words;
mod pages;
mod papers;
mod patience;
mod prices;
mod record_fails;
mod sent_maps;
mod shop_in_words;
mod snags;
mod stages;
mod tray_count;
