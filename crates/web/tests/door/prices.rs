//! What prices go by, as the owner sets it; jobs, costs and discounts at the desk; credit notes.

use crate::http::Door;
use crate::stages::{opened, order, press, pressed, screen, sent};
use serde_json::{Value, json};
use shop::Device;

fn rules(door: &Door) -> crate::stages::Screen {
    screen(door, "/shop/prices")
}

/// Two taxes, bands, a rate, supplies, a fee, a coin, a job: as somebody types them.
fn priced_shop() -> Door {
    let door = opened();
    let page = rules(&door);
    press(
        &door,
        &page,
        "Save the taxes",
        &[
            ("tax-name-1", "parts levy"),
            ("tax-percent-1", "5"),
            ("tax-compound-1", "yes"),
            ("tax-on-labour-1", ""),
        ],
    );
    let page = rules(&door);
    let told = [
        ("rate-work-0", "diagnosis"),
        ("rate-hour-0", "150"),
        ("parts-up-to-0", "10"),
        ("parts-percent-0", "100"),
        ("parts-is-0", "markup"),
        ("parts-percent-1", "40"),
        ("parts-is-1", "margin"),
        ("parts-least", "2"),
        ("supplies-percent", "5"),
        ("supplies-most", "30"),
        ("fee-of-0", "waste oil"),
        ("fee-each-0", "0.80"),
        ("coin", "0.05"),
    ];
    let button = page
        .buttons_named("Save")
        .into_iter()
        .find(|(_, commands, _)| commands.contains("money-told"));
    assert!(button.is_some(), "{}", page.text);
    crate::stages::press_with(&door, button.unwrap(), &told);
    let page = rules(&door);
    press(
        &door,
        &page,
        "Save the job",
        &[
            ("job", "Oil service"),
            ("price", "89.90"),
            ("part-name-0", "Oil"),
            ("part-quantity-0", "4.5"),
            ("part-each-0", "8"),
        ],
    );
    door
}

/// What the page calls the entry of this label.
fn key_of(door: &Door, label: &str) -> String {
    let view = order(door);
    let entries = view["price"]["open"].as_array().unwrap();
    let entry = entries
        .iter()
        .find(|entry| entry["label"] == label)
        .unwrap();
    format!("{}-1", &entry["label_words"].as_str().unwrap()[..12])
}

#[test]
fn what_the_owner_sets_stands_on_the_page_and_nothing_else_is_lost() {
    let door = priced_shop();
    let page = rules(&door);
    for said in [
        "VAT 20 %",
        "parts levy 5 %",
        "Oil service",
        "89.90",
        "What costs 10 sells for 20.00, and what costs a little more for 16.68.",
    ] {
        assert!(page.text.contains(said), "{said}: {}", page.text);
    }
    // The page of the shop changes name and rate, and no tax that it does not show.
    let shop = screen(&door, "/shop");
    let settings = shop
        .buttons_named("Save")
        .into_iter()
        .find(|(_, commands, _)| commands.contains("\"set\""))
        .unwrap();
    crate::stages::press_with(&door, settings, &[("percent", "19")]);
    let page = rules(&door);
    assert!(
        page.text.contains("VAT 19 %") && page.text.contains("parts levy 5 %"),
        "{}",
        page.text
    );
    // A margin of all of the price is refused, in words, and what stood stands.
    let button = page
        .buttons_named("Save")
        .into_iter()
        .find(|(_, commands, _)| commands.contains("money-told"))
        .unwrap();
    let command = crate::stages::made_of(button, &[("parts-percent-1", "100")]).remove(0);
    let answer = door.post(sent(&door, &command).to_string().as_bytes());
    assert_eq!(answer.status, 400, "{answer:?}");
    let said = answer.json();
    assert_eq!(said["where"], "parts, band 2, margin");
    assert!(rules(&door).text.contains("Oil service"));
}

#[test]
fn a_job_a_cost_a_fee_and_a_discount_come_to_the_same_on_page_paper_and_json() {
    let door = priced_shop();
    press(&door, &screen(&door, "/o/1001/price"), "Oil service", &[]);
    // 90 at 40 % margin.
    let page = screen(&door, "/o/1001/price?cost=90");
    assert!(page.text.contains("Sold for 150.00"), "{}", page.text);
    press(&door, &page, "Set the price", &[("what", "Fan belt")]);
    press(
        &door,
        &screen(&door, "/o/1001/price"),
        "Set the price",
        &[("labour", "find it"), ("hours", "1"), ("rate-is", "rate-0")],
    );
    let page = screen(&door, "/o/1001/price");
    let fee = page.buttons_named("Put it on the price").remove(0);
    crate::stages::press_with(&door, fee, &[("fee-0", "5")]);
    // 5 % of 53.90 and 150.00.
    press(&door, &screen(&door, "/o/1001/price"), "Shop supplies", &[]);
    let net = |view: &Value| view["totals"][0]["net"].as_str().unwrap().to_owned();
    // 89.90, 150.00, 150.00, 4.00, 10.20.
    assert_eq!(net(&order(&door)), "404.10");
    let page = screen(&door, "/o/1001/price?off=10%25&of=order");
    press(&door, &page, "Take it off", &[("why", "a good customer")]);
    let view = order(&door);
    assert_eq!(net(&view), "363.69");
    let less: Vec<&str> = view["price"]["open"]
        .as_array()
        .unwrap()
        .iter()
        .map(|entry| entry["less"][0]["why"].as_str().unwrap())
        .collect();
    assert_eq!(less, ["a good customer"; 6]);
    // One of them less once more; more than there is is refused in words.
    let key = key_of(&door, "Fan belt");
    let page = screen(&door, &format!("/o/1001/price?off=500&of={key}"));
    assert!(
        page.text.contains("more than the 135.00 there is"),
        "{}",
        page.text
    );
    let page = screen(&door, &format!("/o/1001/price?off=15&of={key}"));
    // The discount on the order is then of what is left of the line.
    assert!(page.text.contains("121.50"), "{}", page.text);
    press(&door, &page, "Take it off", &[("why", "a scratch")]);
    let view = order(&door);
    assert_eq!(net(&view), "350.19");
    let total = &view["totals"][0];
    let shares = total["shares"].as_array().unwrap();
    assert_eq!(shares.len(), 2);
    for page in ["/o/1001/estimate", "/o/1001/invoice"] {
        let paper = screen(&door, page).text;
        for share in shares {
            let row = format!(
                "{} {} % of {}",
                share["name"].as_str().unwrap(),
                share["percent"].as_str().unwrap(),
                share["base"].as_str().unwrap()
            );
            assert!(paper.contains(&row), "{page}: {row}: {paper}");
            assert!(
                paper.contains(share["tax"].as_str().unwrap()),
                "{page}: {paper}"
            );
        }
        assert!(
            paper.contains(total["gross"].as_str().unwrap()),
            "{page}: {paper}"
        );
        assert!(paper.contains("a scratch"), "{page}: {paper}");
    }
}

#[test]
fn a_part_is_offered_at_what_follows_from_its_cost_and_an_exempt_customer_pays_no_tax() {
    let door = priced_shop();
    let needed = json!({ "part-needed": { "part": "p1", "line": null, "item": null, "label": Device::words("Starter"),
        "number": null, "quantity": "1", "cost": "90", "price": null, "core": null, "has_old": false } });
    door.send("order:a", "fact", needed);
    let page = screen(&door, "/o/1001/parts");
    press(&door, &page, "Put it on the price", &[]);
    assert_eq!(order(&door)["totals"][0]["net"], "150.00");
    let page = screen(&door, "/o/1001/price");
    press(&door, &page, "Exempt", &[("exempt", "EX 4711")]);
    let page = screen(&door, "/o/1001/price");
    assert!(
        page.text.contains("Exempt from taxes by EX 4711"),
        "{}",
        page.text
    );
    press(&door, &page, "Set the price", &[]);
    let view = order(&door);
    assert_eq!(
        (&view["totals"][0]["tax"], &view["totals"][0]["gross"]),
        (&json!("0.00"), &json!("150.00"))
    );
    let paper = screen(&door, "/o/1001/invoice").text;
    assert!(
        paper.contains("VAT 20 %, not asked: exempt") && paper.contains("Exempt by EX 4711"),
        "{paper}"
    );
    press(
        &door,
        &screen(&door, "/o/1001/price"),
        "Not exempt any more",
        &[],
    );
    press(&door, &screen(&door, "/o/1001/price"), "Set the price", &[]);
    assert_ne!(order(&door)["totals"][0]["tax"], "0.00");
}

#[test]
fn some_of_an_invoice_is_taken_back_at_the_desk() {
    let door = priced_shop();
    let entry = |charge: &str, label: &str, each: &str| json!({ "line": null, "charge": charge, "label": Device::words(label), "quantity": "1", "each": each, "payer": "customer" });
    let entries = [
        entry("part", "Starter", "240"),
        entry("core", "Core charge, starter", "60"),
    ];
    door.send(
        "order:a",
        "request",
        json!({ "price": { "entries": entries } }),
    );
    door.send("order:a", "fact", json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
        "amount": "1000", "tax_included": true, "way": "phone", "person": null, "said": null, "number_called": null, "signature": null, "after": [] } }));
    assert!(
        screen(&door, "/o/1001/credit")
            .text
            .contains("No invoice is written yet")
    );
    press(
        &door,
        &screen(&door, "/o/1001/pay"),
        "Write the invoice",
        &[],
    );
    let gross = order(&door)["totals"][0]["gross"]
        .as_str()
        .unwrap()
        .to_owned();
    let pay = screen(&door, "/o/1001/pay");
    press(
        &door,
        &pay,
        "Record payment",
        &[("amount", &gross), ("by", "on-account")],
    );
    assert!(
        screen(&door, "/o/1001/pay")
            .text
            .contains("On account, still to come in")
    );
    press(
        &door,
        &screen(&door, "/o/1001/pay"),
        "It came in",
        &[("amount", &gross), ("by", "transfer")],
    );
    assert!(
        !screen(&door, "/o/1001/pay")
            .text
            .contains("On account, still to come in")
    );
    let credit = screen(
        &door,
        &screen(&door, "/o/1001/pay").link("Take some of it back"),
    );
    assert!(
        credit.text.contains("60.00 of 60.00 is left"),
        "{}",
        credit.text
    );
    let too_much = pressed(
        &credit,
        "Write the credit note",
        &[("back-1", "61"), ("why", "too much")],
    )
    .remove(0);
    let answer = door.post(sent(&door, &too_much).to_string().as_bytes());
    assert_eq!(
        answer.json()["what"],
        "Line 2: 61 goes back, and 60.00 is left of it"
    );
    press(
        &door,
        &credit,
        "Write the credit note",
        &[("back-1", "60"), ("why", "the core came back")],
    );
    let view = order(&door);
    let note = &view["price"]["credits"][0];
    assert_eq!(note["number"], "CR-1");
    let back = note["gross"].as_str().unwrap();
    assert_eq!(view["totals"][0]["balance"], format!("-{back}"));
    let pay = screen(&door, "/o/1001/pay");
    assert!(
        pay.text.contains(&format!("{back} to give back")),
        "{}",
        pay.text
    );
    let note = screen(&door, &pay.link("Credit note CR-1"));
    for said in [
        "CR-1",
        "Of invoice",
        "INV-1",
        "the core came back",
        "Core charge, starter",
        back,
    ] {
        assert!(note.text.contains(said), "{said}: {}", note.text);
    }
    let paper = door.get(&note.link("Paper"));
    assert_eq!(paper.status, 200);
    assert!(paper.body.starts_with("%PDF"), "{}", &paper.body[..40]);
    press(
        &door,
        &pay,
        "Record payment",
        &[("amount", &format!("-{back}")), ("by", "transfer")],
    );
    assert_eq!(order(&door)["totals"][0]["balance"], "0.00");
}
