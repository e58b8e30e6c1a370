//! The pages of price, waivers and invoices, as two desks have them open at once.

use crate::http::Door;
use crate::stages::{Screen, opened, order, press, pressed, screen, sent, work_by};
use serde_json::{Value, json};
use shop::Device;

fn entry(label: &str, quantity: &str, each: &str) -> Value {
    json!({ "line": null, "charge": "labour", "label": Device::words(label), "quantity": quantity,
        "each": each, "payer": "customer" })
}

fn priced(entries: &[Value]) -> Door {
    let door = opened();
    door.send(
        "order:a",
        "request",
        json!({ "price": { "entries": entries } }),
    );
    door
}

/// A shop with one order that has a price.
pub fn priced_shop() -> Door {
    priced(&[entry("Reseal the housing", "3.6666666667", "120")])
}

/// What one of these fields of a page is called, by its place among them.
fn named(screen: &Screen, begins: &str, nth: usize) -> String {
    let set = screen.button("Set the price").unwrap();
    let templates: Value = serde_json::from_str(&set.1).unwrap();
    let text = templates.to_string();
    let mut names: Vec<String> = text
        .split('"')
        .filter(|word| word.starts_with(begins))
        .map(str::to_owned)
        .collect();
    names.dedup();
    names.swap_remove(nth)
}

fn yes(amount: &str, after: &Value) -> Value {
    json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": amount,
        "tax_included": false, "way": "phone", "person": null, "said": null, "number_called": null,
        "signature": null, "after": after } })
}

/// 3.6667 hours at 120 are 440.00, and stay so when a plan's price is set on top of them.
#[test]
fn a_price_set_from_a_plan_keeps_every_digit() {
    let door = priced(&[entry("Reseal", "3.6667", "120.125")]);
    work_by(&door, "for=bracket");
    let plan = screen(&door, "/o/1001/plan/price");
    press(&door, &plan, "Set the price", &[]);
    let entries = order(&door)["price"]["entries"].clone();
    assert_eq!(entries[0]["quantity_exact"], "3.6667");
    assert_eq!(entries[0]["each_exact"], "120.125");
    // The plan's own minutes come to what they come to, too.
    let hours = entries[1]["quantity_exact"].as_str().unwrap();
    let minutes = hours.parse::<f64>().unwrap() * 60.0;
    let tenths = minutes * 10.0;
    assert!((tenths - tenths.round()).abs() < 1e-6, "{hours} hours");
}

/// The odds stand beside the price; what covers it 9 times in 10 goes on the asking page; what
/// was told is kept by one tap, and the page of estimates says that one is too few to judge.
#[test]
fn how_sure_a_price_is_and_what_was_told() {
    let door = priced(&[entry("Reseal", "4", "120")]);
    let page = screen(&door, "/o/1001/odds");
    assert!(page.text.contains("hours (8 of 10)"), "{}", page.text);
    assert!(page.text.contains("9 times in 10") && page.text.contains("What drives it"));
    let body = door.get("/o/1001/odds").body;
    assert!(body.contains("<svg "), "the curve is drawn");
    let sum = body.split("ask?sum=").last().unwrap();
    let sum = sum.split('"').next().unwrap();
    let ask = door.get(&format!("/o/1001/ask?sum={sum}")).body;
    assert!(ask.contains(&format!("value=\"{sum}\"")), "{sum}");
    // A word in place of a sum is not put there.
    assert!(!door.get("/o/1001/ask?sum=lots").body.contains("lots"));
    let with_snag = screen(&door, "/o/1001/odds?snags=1");
    assert!(
        with_snag.text.contains("Without the snag: likely"),
        "{}",
        with_snag.text
    );
    press(&door, &page, "Keep as told", &[]);
    assert!(
        screen(&door, "/o/1001/odds")
            .text
            .contains("An estimate was given and kept")
    );
    let estimates = screen(&door, "/estimates");
    assert!(
        estimates.text.contains("too few to judge"),
        "{}",
        estimates.text
    );
}

#[test]
fn two_pages_of_the_price_lose_no_line_of_each_other() {
    let door = priced(&[entry("Reseal", "1", "100"), entry("Look over", "1", "50")]);
    let ana = screen(&door, "/o/1001/price");
    let ben = screen(&door, "/o/1001/price");
    let lamp = [("what", "Lamp"), ("each", "5"), ("charge", "part")];
    press(&door, &ana, "Set the price", &lamp);
    let look_over = named(&ben, "each-", 1);
    press(&door, &ben, "Set the price", &[(&look_over, "60")]);
    let amounts = |door: &Door| -> Vec<String> {
        let entries = order(door)["price"]["entries"].clone();
        let entries = entries.as_array().unwrap().iter();
        entries
            .map(|entry| entry["amount"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(amounts(&door), ["100.00", "60.00", "5.00"]);
    // A page made later calls the fields of an entry the same, so that what was typed stays.
    let later = screen(&door, "/o/1001/price");
    assert_eq!(named(&later, "each-", 1), look_over);

    let stale = pressed(&ana, "Set the price", &[(&look_over, "70")]).remove(0);
    let answer = door.post(sent(&door, &stale).to_string().as_bytes());
    assert_eq!(answer.status, 409, "{answer:?}");
    let both = &answer.json()["both"][0];
    assert_eq!(
        (
            both["what"].as_str(),
            both["yours"].as_str(),
            both["now"].as_str()
        ),
        (
            Some("Look over"),
            Some("1 × 70 = 70.00"),
            Some("1 × 60 = 60.00")
        )
    );
    assert_eq!(amounts(&door), ["100.00", "60.00", "5.00"]);
    press(&door, &later, "Set the price", &[(&look_over, "70")]);
    assert_eq!(amounts(&door), ["100.00", "70.00", "5.00"]);
}

/// The tap that writes down, and the one that waives, are of what their page shows.
#[test]
fn a_page_writes_down_and_waives_what_it_shows() {
    let door = priced(&[entry("Reseal", "1", "100")]);
    door.send("order:a", "fact", yes("80", &json!([])));
    let before = screen(&door, "/o/1001/ask");
    assert!(
        before.text.contains("Charge 80.00 before tax and no more"),
        "{}",
        before.text
    );
    let gates = screen(&door, "/o/1001/may/hand-over");
    door.send(
        "order:a",
        "request",
        json!({ "add-to-price": { "entries": [entry("Lamp", "1", "7")] } }),
    );
    for (page, label, change) in [
        (&before, "and no more", vec![]),
        (
            &gates,
            "Waive it",
            vec![("reason", "unpaid"), ("words", "pays on Friday")],
        ),
    ] {
        let stale = pressed(page, label, &change).remove(0);
        let answer = door.post(sent(&door, &stale).to_string().as_bytes());
        assert_eq!(answer.status, 409, "{stale}: {answer:?}");
        assert!(answer.json()["both"][0]["now"].is_string(), "{answer:?}");
    }
    press(&door, &screen(&door, "/o/1001/ask"), "and no more", &[]);
    let gates = screen(&door, "/o/1001/may/hand-over");
    press(
        &door,
        &gates,
        "Waive it",
        &[("reason", "unpaid"), ("words", "pays on Friday")],
    );
    assert_eq!(order(&door)["totals"][0]["net"], "80.00");
}

#[test]
fn each_invoice_is_a_paper_of_its_own() {
    let door = priced(&[entry("Reseal", "1", "100")]);
    door.send("order:a", "fact", yes("100", &json!([])));
    let pay = screen(&door, "/o/1001/pay");
    press(&door, &pay, "Write the invoice", &[]);
    let first = screen(&door, "/o/1001/invoice");
    for wanted in ["INV-1", "Order", "1001", "Reseal", "100.00"] {
        assert!(first.text.contains(wanted), "no {wanted}: {}", first.text);
    }
    // More work: the page of the price shows what is charged, and does not offer to change it.
    let price = screen(&door, "/o/1001/price");
    assert!(price.text.contains("On invoice INV-1"), "{}", price.text);
    press(
        &door,
        &price,
        "Set the price",
        &[("what", "Lamp"), ("each", "5"), ("charge", "part")],
    );
    let draft = screen(&door, "/o/1001/invoice");
    assert!(
        draft.text.contains("Not written yet") && draft.text.contains("Lamp"),
        "{}",
        draft.text
    );
    assert!(!draft.text.contains("Reseal"), "{}", draft.text);
    let after = order(&door)["asks"][0]["after"].clone();
    door.send("order:a", "fact", yes("105", &after));
    press(
        &door,
        &screen(&door, "/o/1001/pay"),
        "Write the invoice",
        &[],
    );
    let second = screen(&door, "/o/1001/invoice");
    assert!(
        second.text.contains("INV-2") && !second.text.contains("Reseal"),
        "{}",
        second.text
    );
    let again = screen(&door, &second.link("INV-1"));
    assert!(
        again.text.contains("Reseal") && !again.text.contains("Lamp"),
        "{}",
        again.text
    );
    assert!(
        again.text.contains("Total of all invoices"),
        "{}",
        again.text
    );
}

/// What they decline is picked, named on papers and in the story, and never nothing.
#[test]
fn what_is_declined_is_picked_and_named() {
    let door = priced(&[entry("Reseal", "1", "100"), entry("New tray", "1", "40")]);
    door.send(
        "order:a",
        "fact",
        json!({ "snag-found": { "snag": "s", "item": null, "at": [], "what": "worn",
        "sits": null, "words": Device::words("Front pads"), "photos": [], "moves": [] } }),
    );
    let page = screen(&door, "/o/1001/decline");
    let tray = {
        let decline = page.button("They decline it").unwrap();
        let templates: Value = serde_json::from_str(&decline.1).unwrap();
        let entries = templates[0]["fact"]["declined"]["entries"].clone();
        entries[1]["$when"].as_str().unwrap().to_owned()
    };
    let said = [
        ("words", "Ada wants neither"),
        (tray.as_str(), "yes"),
        ("snag-s", "yes"),
        ("off-price", "yes"),
    ];
    let mut commands = pressed(&page, "They decline it", &said);
    let off = commands.pop().unwrap();
    let declined = commands.pop().unwrap();
    for command in [&declined, &off] {
        let answer = door.post(sent(&door, command).to_string().as_bytes());
        assert_eq!(answer.status, 200, "{command}: {answer:?}");
    }
    let now = order(&door);
    let what = now["declined"][0]["what"].as_str().unwrap();
    assert_eq!(what, "New tray, Front pads: worn, not resolved");
    assert_eq!(now["price"]["entries"].as_array().unwrap().len(), 1);
    let story = now["story"].to_string();
    assert!(
        story.contains("Declined, not signed: New tray, Front pads"),
        "{story}"
    );
    let paper = screen(&door, "/o/1001/invoice");
    assert!(
        paper.text.contains("New tray, Front pads"),
        "{}",
        paper.text
    );
    // Nothing named says nothing, and is not taken.
    let nothing = json!({ "declined": { "items": [], "at": [], "words": Device::words("no"), "signature": null } });
    let refused = door.post(
        door.command("order:a", "fact", nothing)
            .to_string()
            .as_bytes(),
    );
    assert_eq!(refused.status, 400, "{refused:?}");
    assert!(refused.body.contains("nothing is named"), "{refused:?}");
}

#[test]
fn a_core_that_went_back_is_charged_no_more_and_a_number_reaches_the_papers() {
    let door = opened();
    door.send("order:a", "fact", json!({ "part-needed": { "part": "p", "line": null, "item": null, "label": Device::words("Alternator"),
        "number": "LN-A120", "quantity": "2", "cost": "150", "price": "214.125", "core": "60", "has_old": true } }));
    press(
        &door,
        &screen(&door, "/o/1001/parts"),
        "Put it on the price",
        &[],
    );
    let net = |door: &Door| order(door)["totals"][0]["net"].as_str().unwrap().to_owned();
    assert_eq!(net(&door), "548.25", "2 × 214.125 and 2 × 60");
    door.send("order:a", "fact", json!({ "part-stepped": { "part": "p", "quantity": "2", "step": "fitted", "due": null, "words": null } }));
    press(&door, &screen(&door, "/o/1001/parts"), "Old one: core", &[]);
    assert_eq!(net(&door), "428.25");
    let parts = screen(&door, "/o/1001/parts");
    assert!(
        parts.button("Take the core charge off").is_none(),
        "{}",
        parts.text
    );
    let paper = screen(&door, "/o/1001/estimate");
    for wanted in ["Alternator, no. LN-A120", "Core back, Alternator"] {
        assert!(paper.text.contains(wanted), "no {wanted}: {}", paper.text);
    }
}

#[test]
fn work_that_was_sent_out_nags_until_it_is_on_the_price() {
    let door = priced(&[entry("Reseal", "1", "100")]);
    door.send("order:a", "fact", json!({ "sublet-out": { "sublet": "s", "line": null, "items": [], "what": Device::words("Skim the head"),
        "to": Device::words("Reed's"), "due": null, "cost": "80" } }));
    let pay = screen(&door, "/o/1001/pay");
    assert!(
        pay.text
            .contains("Skim the head costs us 80.00: not on the price yet"),
        "{}",
        pay.text
    );
    let parts = screen(&door, "/o/1001/parts");
    assert!(parts.text.contains("it costs us 80.00"), "{}", parts.text);
    press(&door, &parts, "Put it on the price", &[("each", "96")]);
    assert_eq!(order(&door)["totals"][0]["net"], "196.00");
    assert!(
        !screen(&door, "/o/1001/pay")
            .text
            .contains("not on the price yet")
    );
}
