//! Completes a record so that every kind of event stands in it, and writes it out:
//! `cargo run -p shop --example every_kind -- FOLDER > crates/shop/tests/fixtures/…/log.jsonl`,
//! on the folder that `buttonup demo` made; or, on a file that it wrote before, adds behind
//! it the kinds that were not there then. What it wrote once stays as it is; a month in
//! which a form was added gets a folder of its own.

#![allow(clippy::unwrap_used, reason = "a tool of the tests")]
#![expect(clippy::print_stdout, reason = "this is what it does")]

#[path = "../../record/tests/samples/mod.rs"]
mod samples;

use record::v1::decisions::DecisionForm;
use serde_json::{Value, json};
use shop::repair::Token;
use shop::{Accepted, Breadth, Caller, Device, Service, Whom};
use std::collections::BTreeSet;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};
use store::{Memory, Sqlite, Store};

const LOG: &str = "shop";

struct Teller {
    service: Service,
    /// By how many hours the clock is ahead.
    later: Arc<AtomicI64>,
    device: Device,
}

impl Teller {
    fn send(&mut self, stream: &str, part: &str, content: Value) -> Accepted {
        let now = self.service.now();
        let command = self.device.command(stream, now, part, content);
        self.service.command(&Caller::program(), command).unwrap()
    }

    fn ask(&mut self, order: &str, request: Value) -> Accepted {
        self.send(&format!("order:{order}"), "request", request)
    }

    fn open(&mut self, order: &str, customer: &str) -> u64 {
        self.ask(
            order,
            json!({ "open": { "vehicle": order, "customer": customer } }),
        );
        let world = self.service.world().unwrap();
        world.next_number().unwrap() - 1
    }
}

/// An hour at 120 before tax, agreed to up to `ceiling` with it.
fn price(teller: &mut Teller, order: &str, ceiling: &str) {
    teller.ask(order, json!({ "price": { "entries": [{ "line": null, "charge": "labour",
        "label": Device::words("an hour"), "quantity": "1", "each": "120", "payer": "customer" }] } }));
    teller.send(&format!("order:{order}"), "fact", json!({ "consented": { "step": "repair", "payer": "customer", "lines": [],
        "agreed": true, "amount": ceiling, "tax_included": true, "way": "in-person", "person": null, "said": null,
        "number_called": null, "signature": null, "after": [] } }));
}

fn pay(teller: &mut Teller, order: &str, amount: &str) {
    teller.ask(order, json!({ "charge": {} }));
    teller.send(&format!("order:{order}"), "fact", json!({ "paid": { "payer": "customer", "amount": amount, "by": "cash", "deposit": false } }));
}

fn main() {
    let from = std::env::args()
        .nth(1)
        .expect("name the folder of a record, or an export of one");
    let before = std::path::Path::new(&from).is_file();
    let store: Arc<dyn Store> = if before {
        let store = Memory::new();
        let lines = std::fs::read_to_string(&from).unwrap();
        let lines = || lines.lines().map(|line| Ok(line.to_owned()));
        let end = shop::end_of_lines(lines()).unwrap();
        shop::import(lines(), end, &store, LOG, shop::Taken::Readable).unwrap();
        Arc::new(store)
    } else {
        Arc::new(Sqlite::open(from.as_ref()).unwrap())
    };
    let later = Arc::new(AtomicI64::new(0));
    let clock = Arc::clone(&later);
    let now = move || {
        let hours = jiff::SignedDuration::from_hours(clock.load(Ordering::Relaxed));
        jiff::Timestamp::now() + hours
    };
    let service = Service::open(Arc::clone(&store), LOG, Arc::new(now)).unwrap();
    let mut teller = Teller {
        service,
        later,
        device: Device::new("fixture", "nuria"),
    };
    if !before {
        decide_everything(&mut teller);
    }
    tell_everything(&mut teller, store.as_ref());
    shop::export(store.as_ref(), LOG, |line| {
        println!("{line}");
        Ok(())
    })
    .unwrap();
}

/// Every decision there is, on three orders.
fn decide_everything(teller: &mut Teller) {
    let number = teller.open("decided", "somebody");
    let need = json!({ "item": "nuts", "at": [], "to": "tight", "need": { "any": [
        { "is": { "item": "belt", "at": [1], "states": ["on"] } }, { "all": [] }] } });
    let work = json!({ "item": "nuts", "to": "tight", "work": "torque-after-distance", "words": null,
        "until": { "later": { "date": null, "distance": "80 km" } } });
    teller.ask(
        "decided",
        json!({ "adopt": { "map": "drayman", "version": 3, "needs": [need], "work": [work] } }),
    );
    price(teller, "decided", "100");
    // A thing owed, for a waiver to let pass.
    teller.send("order:decided", "fact", json!({ "work-due": { "id": "wash", "item": null, "words": Device::words("wash it"), "until": { "before": "hand-over" } } }));
    let look = |teller: &Teller| {
        teller
            .service
            .look(&Caller::program(), |snap| shop::view::order(snap, number))
            .unwrap()
    };
    let seen = look(teller).asks[0].after.clone();
    teller.ask(
        "decided",
        json!({ "write-down": { "payer": "customer", "after": seen } }),
    );
    let view = look(teller);
    let gate = view.gates.last().unwrap();
    let fit = gate
        .fit_to_go
        .iter()
        .map(|reason| (reason.waivable, (&reason.key, &reason.figure)));
    let papers = gate
        .papers
        .iter()
        .map(|reason| (reason.waivable, (&reason.key, &reason.figure)));
    let (reason, figure) = fit.chain(papers).find(|(waivable, _)| *waivable).unwrap().1;
    let waived = teller.ask("decided", json!({ "waive": { "gate": "hand-over", "reason": reason, "figure": figure, "words": Device::words("tried by hand, nothing moves") } }));
    teller.ask(
        "decided",
        json!({ "withdraw-waiver": { "waiver": waived.command_id } }),
    );
    let apart = json!({ "hand-over": { "leaves": "collected-apart", "ending": "declined-apart", "boxes": 1,
        "signature": null, "signed_by": Device::words("Somebody") } });
    pay(teller, "decided", "100.00");
    teller.ask("decided", apart.clone());
    teller.ask(
        "decided",
        json!({ "take-back": { "words": Device::words("a box was left") } }),
    );

    teller.open("mistaken", "somebody");
    teller.ask(
        "mistaken",
        json!({ "void": { "words": Device::words("twice") } }),
    );

    teller.send(
        "customer:gone",
        "customer_fact",
        json!({ "declared": { "texts": { "name": Device::words("To Be Forgotten") } } }),
    );
    let number = teller.open("left", "gone");
    price(teller, "left", "200");
    pay(teller, "left", "144.00");
    teller.ask("left", apart);
    let why = Token::new("asked").unwrap();
    shop::ask_to_erase(
        &teller.service,
        &Whom::OfOrder(number),
        Breadth::Person,
        "nuria",
        &why,
    )
    .unwrap();
    teller.later.store(24, Ordering::Relaxed);
    assert_eq!(shop::erase_due(&teller.service).unwrap().len(), 1);
}

/// Kinds that name nothing, so that their bare sample says as much as another.
const FILLED: [&str; 13] = [
    "rung",
    "pushed",
    "word-added",
    "word-removed",
    "alone-allowed",
    "walked",
    "promised",
    "drafted",
    "altitude-told",
    "weighed",
    "records-kept",
    "received",
    "same-kind-as",
];

/// A sample of every fact of whose kind there is none yet.
fn tell_everything(teller: &mut Teller, store: &dyn Store) {
    let mut there: BTreeSet<(String, String)> = store
        .log(LOG, 0, 100_000)
        .unwrap()
        .into_iter()
        .map(|row| (family(&row.stream), row.kind))
        .collect();
    for (stream, kind, content) in samples::fixed::events() {
        let decided = stream.starts_with("order") && DecisionForm::KINDS.contains(&kind);
        // The bare sample comes first; the filled one after it says more.
        let filled = content.to_string().contains("name-") || FILLED.contains(&kind);
        if decided || !filled || !there.insert((family(stream), kind.to_owned())) {
            continue;
        }
        if kind == "invoice-number-given" {
            // No device gives it: it comes with an invoice.
            teller.open("invoiced", "somebody");
            price(teller, "invoiced", "144");
            pay(teller, "invoiced", "144.00");
            continue;
        }
        if kind == "credit-number-given" {
            // Nor this: it comes with a credit note.
            take_back(teller);
            continue;
        }
        let mut content = json!({ kind: content });
        samples::sent(&mut content);
        if kind == "drafted" {
            // A map begins at version 1, whatever the sample says.
            let text = Device::document("vehicle = \"Small Van\"\n", "application/toml");
            content = json!({ "drafted": { "version": 1, "text": text } });
        }
        if kind == "place-chosen" {
            // Only a place whose rules this program has can be chosen.
            content =
                json!({ "place-chosen": { "place": "us-ca", "version": 1, "after": ["earlier"] } });
        }
        if kind == "money-told" {
            // Only rules that make sense are taken.
            content = json!({ "money-told": { "rules": {
                "rates": [{ "work": "diagnosis", "grade": null, "hour": "150" }], "hours_by": "book",
                "parts": { "bands": [{ "up_to": "50", "uplift": { "markup": "80" } }, { "up_to": null, "uplift": { "margin": "30" } }], "least": "2" },
                "sublet": { "bands": [{ "up_to": null, "uplift": { "markup": "15" } }], "least": null },
                "supplies": { "percent": "5", "of": ["labour"], "most": "30" },
                "disposal": [{ "of": "waste oil", "each": "0.80" }],
                "rounding": { "round": "half-up", "by": "total" },
                "coin": { "smallest": "0.05", "round": "half-up" } }, "after": ["earlier"] } });
        }
        if kind == "job-kept" {
            content = json!({ "job-kept": { "id": "oil", "after": ["earlier"], "job": {
                "name": Device::words("Oil service"), "price": "89.90", "in_one": false,
                "parts": [{ "name": Device::words("Oil"), "quantity": "4.5", "each": "8" }] } } });
        }
        if kind == "word-added" {
            // Only a sort of the trade's table can be meant.
            content = json!({ "word-added": { "name": Device::words("stoppers"), "sort": "brake-pads" } });
        }
        let part = match family(stream).as_str() {
            "order" => "fact",
            "vehicle" => "vehicle_fact",
            "customer" => "customer_fact",
            "map" => "map_fact",
            _ => "shop_fact",
        };
        teller.send(stream, part, content);
    }
}

/// An invoice of which some is taken back, its entries less a discount.
fn take_back(teller: &mut Teller) {
    let number = teller.open("credited", "somebody");
    let entry = json!({ "line": null, "charge": "part", "label": Device::words("Fan belt"), "quantity": "1",
        "each": "100", "payer": "customer",
        "less": [{ "amount": "10", "percent": "10", "why": Device::words("a good customer"), "of_order": false }] });
    teller.ask("credited", json!({ "price": { "entries": [entry] } }));
    teller.send("order:credited", "fact", json!({ "consented": { "step": "repair", "payer": "customer", "lines": [],
        "agreed": true, "amount": "200", "tax_included": true, "way": "phone", "person": null, "said": null,
        "number_called": null, "signature": null, "after": [] } }));
    pay(teller, "credited", "108.00");
    let look = |snap: &shop::Snapshot<'_>| shop::view::order(snap, number);
    let view = teller.service.look(&Caller::program(), look).unwrap();
    let invoice = view.price.as_ref().unwrap().invoices[0].command.clone();
    teller.ask("credited", json!({ "credit": { "invoice": invoice, "payer": "customer",
        "lines": [{ "line": 0, "amount": "45", "keeps_tax": false }], "words": Device::words("the belt was too long") } }));
}

fn family(stream: &str) -> String {
    stream.split(':').next().unwrap_or_default().to_owned()
}
