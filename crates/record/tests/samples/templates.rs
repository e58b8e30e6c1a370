//! The templates themselves, one a kind.

use serde_json::{Value, json};

const KINDS: &str = "part cover hose seal belt fasteners clips connector fluid work put-in";
const SYSTEMS: &str = "brakes steering wheels suspension fuel restraints drive-belt high-voltage cooling oil engine transmission intake exhaust battery electrical climate body unknown";
const ZONES: &str = "above below wheel-well cabin rear outside unknown";
const PUT_INS: &str = "clamp plug rag lamp tool pin cord chips tang other";
const WORKS: &str = "bleed level-warm level-cold look-for-leaks torque-again torque-after-distance pump-pedal relearn alignment clock-and-windows clean-face other";
pub const GATES: &str = "go-live start lower roll road hand-over";
const PAYERS: &str = "customer warranty goodwill";
const CHARGES: &str = "labour part sublet supplies core test fee disposal";
const ROUNDS: &str = "half-up half-down half-even down up";
const FIELDS: &str = "label vin plate name phone mail address street postcode town country";
const DIFFERENCES: &str = "insert larger longer substitute gone other";

fn code(codes: &str) -> Value {
    Value::from(format!("$code:{codes}"))
}

fn maybe(inner: impl Into<Value>) -> Value {
    json!({ "?": inner.into() })
}

/// A field that came with a later version.
fn added(inner: impl Into<Value>) -> Value {
    json!({ "+": inner.into() })
}

fn file() -> Value {
    json!({ "words": "$words", "media": "$token" })
}

fn move_id() -> Value {
    json!({ "command": "$id", "nth": "$u16" })
}

fn piece() -> Value {
    json!({ "position": "$u16", "length": maybe("$written") })
}

fn a_move() -> Value {
    json!({
        "item": "$id", "at": ["$u16"], "after": [move_id()],
        "left": { "state": "$state", "piece": code("original new substitute") },
        "container": maybe("$token"),
    })
}

fn work() -> Value {
    json!({
        "work": code(WORKS), "item": maybe("$id"), "own": maybe("$id"),
        "named": added("$id"), "sort": added("$token"),
    })
}

fn pattern() -> Value {
    json!({ "passes": ["$written"], "sequence": ["$u16"], "source": maybe("$words") })
}

fn item() -> Value {
    json!({
        "id": "$id", "kind": code(KINDS), "system": code(SYSTEMS), "zone": code(ZONES),
        "label": "$words", "size": maybe("$token"), "pieces": [piece()],
        "pattern": maybe(pattern()),
        "spent": "$bool", "may_miss": maybe(json!({ "up_to": "$u16", "never_at": ["$u16"] })),
        "put_in": maybe(code(PUT_INS)), "holds": maybe("$written"),
        "trade": added(trade()),
    })
}

fn trade() -> Value {
    let owed = json!({ "sort": "$token", "before": [code(GATES)], "shared": code("order wheel item"), "after": maybe("$written") });
    json!({
        "table": "$u32", "additions": "$u32", "sort": maybe("$token"), "sure": code("sure likely unknown"),
        "system": code(SYSTEMS), "side": maybe("$token"), "safety": "$bool", "shuts": [code(GATES)],
        "owes": [owed], "cautions": ["$token"],
    })
}

fn tax() -> Value {
    json!({
        "name": "$short", "percent": "$decimal", "on": { "labour": "$bool", "parts": "$bool", "other": "$bool" },
        "kinds": added(json!([code(CHARGES)])), "payers": added(json!([code(PAYERS)])),
        "compound": added("$bool"), "included": added("$bool"),
    })
}

fn rounding() -> Value {
    json!({ "round": code(ROUNDS), "by": code("total line") })
}

fn coin() -> Value {
    json!({ "smallest": "$decimal", "round": code(ROUNDS) })
}

fn terms() -> Value {
    json!({
        "rounding": rounding(), "exempt": maybe(json!({ "number": "$words", "taxes": ["$short"] })),
        "coin": maybe(coin()),
    })
}

fn credit_line() -> Value {
    json!({ "line": "$u32", "amount": "$decimal", "keeps_tax": "$bool" })
}

fn bands() -> Value {
    json!({
        "bands": [json!({ "up_to": maybe("$decimal"), "uplift": json!({ "markup": "$decimal" }) })],
        "least": maybe("$decimal"),
    })
}

fn money_rules() -> Value {
    json!({
        "rates": [json!({ "work": maybe("$short"), "grade": maybe("$short"), "hour": "$decimal" })],
        "hours_by": code("book clock lesser"), "parts": bands(),
        "sublet": json!({ "bands": [json!({ "up_to": maybe("$decimal"), "uplift": json!({ "margin": "$decimal" }) })],
            "least": maybe("$decimal") }),
        "supplies": maybe(json!({ "percent": "$decimal", "of": [code(CHARGES)], "most": maybe("$decimal") })),
        "disposal": [json!({ "of": "$short", "each": "$decimal" })],
        "rounding": rounding(), "coin": maybe(coin()),
    })
}

fn fixed_job() -> Value {
    json!({
        "name": "$words", "price": "$decimal",
        "parts": [json!({ "name": "$words", "quantity": "$decimal", "each": "$decimal" })], "in_one": "$bool",
    })
}

fn total() -> Value {
    json!({ "net": "$decimal", "tax": "$decimal", "gross": "$decimal" })
}

fn totals() -> Value {
    json!({ "{}": [format!("$code:{PAYERS}"), total()] })
}

fn sums() -> Value {
    json!({ "{}": [format!("$code:{PAYERS}"), "$decimal"] })
}

fn entry() -> Value {
    json!({
        "line": maybe("$id"), "charge": code(CHARGES), "label": maybe("$words"),
        "quantity": "$decimal", "each": "$decimal", "payer": code(PAYERS),
        "less": added(json!([json!({ "amount": "$decimal", "percent": maybe("$decimal"), "why": "$words", "of_order": "$bool" })])),
    })
}

fn aimed() -> Value {
    let step = json!({ "item": "$id", "to": "$state" });
    json!({
        "aim": code("reach home roll"), "targets": ["$id"], "without": [step.clone()], "also": [step],
        "places_taken": ["$token"], "variants": ["$token"], "after": ["$id"],
    })
}

fn stated_need() -> Value {
    json!({ "item": "$id", "at": ["$u16"], "to": "$state", "need": "$need" })
}

fn stated_work() -> Value {
    json!({
        "item": "$id", "to": "$state", "work": code(WORKS), "words": maybe("$words"), "until": "$until",
        "named": added("$id"), "sort": added("$token"),
    })
}

fn texts() -> Value {
    json!({ "{}": [format!("$code:{FIELDS}"), "$words"] })
}

/// Facts about what the vehicle's parts do.
fn facts_of_items() -> Vec<(&'static str, Value)> {
    vec![
        ("declared", json!({ "item": item() })),
        ("same-as", json!({ "item": "$id", "also": "$id" })),
        (
            "count-corrected",
            json!({ "item": "$id", "pieces": [piece()], "after": ["$id"] }),
        ),
        (
            "renamed",
            json!({ "item": "$id", "label": "$words", "after": ["$id"] }),
        ),
        (
            "located",
            json!({ "item": "$id", "system": code(SYSTEMS), "zone": code(ZONES), "after": ["$id"] }),
        ),
        ("found", json!({ "moves": [a_move()] })),
        (
            "observed",
            json!({
                "id": "$id", "zone": code(ZONES),
                "what": code("warning-lamp damage missing earlier-repair locking-key leak other"),
                "words": maybe("$words"), "photos": [file()], "voice": added(file()),
            }),
        ),
        ("walked", json!({ "zone": code(ZONES) })),
        (
            "moved",
            json!({ "stage": maybe("$id"), "moves": [a_move()] }),
        ),
        ("seen", json!({ "moves": [a_move()] })),
        (
            "drained",
            json!({
                "item": "$id", "amount": "$written", "fate": code("kept recycled disposed spilled"),
                "temperature": maybe("$written"),
            }),
        ),
        (
            "poured",
            json!({ "item": "$id", "amount": "$written", "what": maybe("$words"), "temperature": maybe("$written") }),
        ),
        (
            "level-seen",
            json!({
                "item": "$id", "level": code("warm cold"), "good": "$bool", "reading": maybe("$written"),
                "temperature": maybe("$written"), "after": [move_id()],
            }),
        ),
        (
            "work-done",
            json!({ "work": work(), "after": [move_id()], "words": maybe("$words") }),
        ),
        (
            "work-due",
            json!({ "id": "$id", "item": maybe("$id"), "words": "$words", "until": "$until" }),
        ),
        (
            "timed",
            json!({
                "stage": "$id", "clock": code("opened paused resumed left"),
                "book_minutes": maybe("$decimal"), "words": maybe("$words"),
                "voice": added(file()),
            }),
        ),
        (
            "snag-found",
            json!({
                "snag": "$id", "item": maybe("$id"), "at": ["$u16"],
                "what": code("snapped stuck stripped rounded torn worn broken bent corroded leaking missing other"),
                "sits": maybe(code("proud flush below")), "words": maybe("$words"), "photos": [file()],
                "moves": [a_move()], "about": added(trade()), "voice": added(file()),
            }),
        ),
        (
            "snag-resolved",
            json!({
                "snag": "$id",
                "how": code("as-before thread-chased wire-insert bushing oversize longer-bolt new-part left-by-consent other"),
                "words": maybe("$words"), "calculation": maybe("$id"), "moves": [a_move()],
            }),
        ),
        (
            "calculated",
            json!({
                "id": "$id", "item": maybe("$id"), "snag": maybe("$id"), "calculator": "$token",
                "version": "$u32", "inputs": "$string", "outputs": "$string", "working": "$string",
            }),
        ),
        (
            "read-off",
            json!({
                "id": "$id", "item": maybe("$id"), "what": "$token", "value": "$written",
                "temperature": maybe("$written"), "after": [move_id()],
            }),
        ),
        (
            "difference-noted",
            json!({
                "id": "$id", "item": maybe("$id"), "at": ["$u16"], "what": code(DIFFERENCES),
                "size": maybe("$token"), "torque": maybe("$written"), "words": maybe("$words"),
            }),
        ),
        (
            "checked",
            json!({ "check": code("second-person walked-back"), "items": ["$id"], "after": [move_id()], "learns": added("$bool"), "alone": added("$bool") }),
        ),
        (
            "proved",
            json!({
                "id": "$id", "line": maybe("$id"),
                "proof": code("road-test leak-test brake-test fuel-leak-look restraint-lamp coolant-mix other"),
                "outcome": code("held failed not-provoked"), "words": maybe("$words"),
                "readings": [{ "what": "$token", "value": "$written" }], "calculation": maybe("$id"),
                "after": [move_id()], "replaces": ["$id"],
            }),
        ),
    ]
}

/// Facts that the desk sees to, and what goes for every fact.
fn facts_of_the_desk() -> Vec<(&'static str, Value)> {
    vec![
        (
            "line-opened",
            json!({ "line": "$id", "complaint": "$words", "payer": code(PAYERS), "about": added(json!([code(SYSTEMS)])) }),
        ),
        (
            "line-worded",
            json!({
                "line": "$id", "text": code("complaint cause correction"), "words": "$words", "after": ["$id"],
            }),
        ),
        (
            "consented",
            json!({
                "step": code("diagnose take-apart repair add"), "payer": code(PAYERS), "lines": ["$id"],
                "agreed": "$bool", "amount": maybe("$decimal"), "tax_included": "$bool",
                "way": code("in-person phone message mail signed"), "person": maybe("$words"),
                "said": maybe("$words"), "number_called": maybe("$words"), "signature": maybe(file()),
                "after": ["$id"],
            }),
        ),
        (
            "declined",
            json!({
                "items": ["$id"], "at": ["$u16"], "words": "$words", "signature": maybe(file()),
                "entries": added(json!(["$words"])), "snags": added(json!(["$id"])),
            }),
        ),
        (
            "paid",
            json!({
                "payer": code(PAYERS), "amount": "$decimal",
                "by": code("cash card transfer cheque on-account"), "deposit": "$bool",
            }),
        ),
        (
            "part-needed",
            json!({
                "part": "$id", "line": maybe("$id"), "item": maybe("$id"), "label": "$words",
                "number": maybe("$token"), "quantity": "$decimal", "cost": maybe("$decimal"),
                "price": maybe("$decimal"), "core": maybe("$decimal"), "has_old": "$bool",
            }),
        ),
        (
            "part-stepped",
            json!({
                "part": "$id", "quantity": "$decimal",
                "step": code("ordered received compared fitted returned stocked cancelled"),
                "due": maybe("$date"), "words": maybe("$words"),
            }),
        ),
        (
            "old-part",
            json!({ "part": maybe("$id"), "item": maybe("$id"), "fate": code("kept given core scrap") }),
        ),
        (
            "sublet-out",
            json!({
                "sublet": "$id", "line": maybe("$id"), "items": ["$id"], "what": "$words", "to": "$words",
                "due": maybe("$date"), "cost": maybe("$decimal"),
            }),
        ),
        (
            "sublet-back",
            json!({ "sublet": "$id", "words": maybe("$words") }),
        ),
        (
            "keys",
            json!({ "step": code("taken given-back"), "words": maybe("$words") }),
        ),
        (
            "odometer",
            json!({ "reading": "$written", "at": code("in out") }),
        ),
        ("stood", json!({ "place": "$place" })),
        ("pushed", json!({ "to": "$place", "words": "$words" })),
        ("promised", json!({ "at": "$time" })),
        ("aimed", aimed()),
        ("assigned", json!({ "person": "$id" })),
        (
            "work-left",
            json!({
                "minutes": "$decimal", "least": maybe("$decimal"), "most": maybe("$decimal"),
                "skill": maybe(code(SYSTEMS)), "stall": code("lift flat any none"), "after": ["$id"],
                "helpers": { "+": "$u16" }, "road": { "+": "$decimal" },
            }),
        ),
        ("expected", json!({ "at": "$time", "after": ["$id"] })),
        ("answer-due", json!({ "at": "$time", "after": ["$id"] })),
        (
            "rung",
            json!({ "about": code("approval promise ready due follow-up"), "reached": "$bool", "words": maybe("$words") }),
        ),
        (
            "attached",
            json!({ "file": file(), "item": maybe("$id"), "snag": maybe("$id"), "words": maybe("$words") }),
        ),
        ("undo", json!({ "command": "$id", "part": maybe("$u16") })),
        (
            "belt-left-off",
            json!({ "item": "$id", "words": maybe("$words"), "after": [move_id()] }),
        ),
        (
            "size-told",
            json!({ "item": "$id", "size": "$token", "after": ["$id"] }),
        ),
        (
            "torque-told",
            json!({ "item": "$id", "pattern": pattern(), "after": ["$id"] }),
        ),
        (
            "trade-told",
            json!({ "item": "$id", "trade": trade(), "after": ["$id"] }),
        ),
        (
            "how-to-titled",
            json!({ "words": "$words", "after": ["$id"] }),
        ),
        (
            "how-to-noted",
            json!({ "note": "$id", "stage": maybe("$id"), "words": maybe("$words"), "after": ["$id"] }),
        ),
        (
            "how-to-sequenced",
            json!({ "notes": ["$id"], "after": ["$id"] }),
        ),
    ]
}

pub fn facts() -> Vec<(&'static str, Value)> {
    let mut all = facts_of_items();
    all.extend(facts_of_the_desk());
    all
}

pub fn decisions() -> Vec<(&'static str, Value)> {
    vec![
        (
            "opened",
            json!({
                "number": "$u64", "vehicle": "$id", "customer": "$id", "currency": "$short", "minor_digits": "$u32",
            }),
        ),
        (
            "adopted",
            json!({ "map": "$id", "version": "$u32", "needs": [stated_need()], "work": [stated_work()] }),
        ),
        (
            "priced",
            json!({
                "entries": [entry()], "taxes": [tax()], "totals": totals(), "written_down": added(sums()),
                "invoiced": added(json!(["$id"])), "after": added(json!(["$id"])), "terms": added(terms()),
            }),
        ),
        (
            "written-down",
            json!({
                "payer": code(PAYERS), "amount": "$decimal", "left": added(total()), "after": added(json!(["$id"])),
            }),
        ),
        (
            "charged",
            json!({
                "totals": totals(), "written_down": sums(),
                "numbers": added(json!({ "{}": [format!("$code:{PAYERS}"), "$u64"] })),
            }),
        ),
        (
            "credited",
            json!({
                "invoice": "$id", "payer": code(PAYERS), "lines": [credit_line()],
                "shares": [json!({ "name": "$short", "percent": "$decimal", "base": "$decimal", "tax": "$decimal", "exempt": "$bool" })],
                "totals": total(), "number": "$u64", "words": "$words",
            }),
        ),
        (
            "waived",
            json!({ "gate": code(GATES), "reason": "$key", "figure": "$string", "prints": "$bool", "words": "$words" }),
        ),
        ("waiver-withdrawn", json!({ "waiver": "$id" })),
        (
            "handed-over",
            json!({
                "leaves": code("drives-away collected-apart"),
                "ending": code("repaired not-reproduced declined-put-back declined-apart"), "known": ["$key"],
                "boxes": maybe("$u16"), "signature": maybe(file()), "signed_by": maybe("$words"),
                "decided_at": "$time",
            }),
        ),
        ("taken-back", json!({ "words": "$words" })),
        ("voided", json!({ "words": "$words" })),
    ]
}

pub fn requests() -> Vec<(&'static str, Value)> {
    vec![
        ("open", json!({ "vehicle": "$id", "customer": "$id" })),
        (
            "adopt",
            json!({ "map": "$id", "version": "$u32", "needs": [stated_need()], "work": [stated_work()] }),
        ),
        (
            "price",
            json!({ "entries": [entry()], "after": added(json!(["$id"])) }),
        ),
        ("add-to-price", json!({ "entries": [entry()] })),
        (
            "write-down",
            json!({ "payer": code(PAYERS), "after": added(json!(["$id"])) }),
        ),
        ("charge", json!({ "after": added(json!(["$id"])) })),
        (
            "credit",
            json!({ "invoice": "$id", "payer": code(PAYERS), "lines": [credit_line()], "words": "$words" }),
        ),
        (
            "waive",
            json!({ "gate": code(GATES), "reason": "$key", "words": "$words", "figure": added("$string") }),
        ),
        ("withdraw-waiver", json!({ "waiver": "$id" })),
        (
            "hand-over",
            json!({
                "leaves": code("drives-away collected-apart"),
                "ending": code("repaired not-reproduced declined-put-back declined-apart"),
                "boxes": maybe("$u16"), "signature": maybe(file()), "signed_by": maybe("$words"),
            }),
        ),
        ("take-back", json!({ "words": "$words" })),
        ("void", json!({ "words": "$words" })),
    ]
}

pub fn vehicle_facts() -> Vec<(&'static str, Value)> {
    vec![
        (
            "declared",
            json!({
                "texts": texts(), "vin_read": code("valid kept-anyway none-readable"), "rust": maybe("$u8"),
                "customer": "$id",
            }),
        ),
        (
            "mended",
            json!({
                "field": code(FIELDS), "words": "$words",
                "vin_read": maybe(code("valid kept-anyway none-readable")), "after": ["$id"],
            }),
        ),
        (
            "differs",
            json!({
                "id": "$id", "order": "$id", "item": maybe("$words"), "at": ["$u16"], "what": code(DIFFERENCES),
                "size": maybe("$token"), "torque": maybe("$written"), "words": maybe("$words"),
            }),
        ),
        ("difference-ended", json!({ "id": "$id" })),
        (
            "left-owing",
            json!({
                "order": "$id", "work": work(), "item": maybe("$words"), "words": maybe("$words"), "until": "$until",
            }),
        ),
        (
            "figure-told",
            json!({ "what": "$token", "value": "$written", "after": ["$id"] }),
        ),
        ("owing-done", json!({ "order": "$id", "work": work() })),
        (
            "same-as",
            json!({ "vehicle": maybe("$id"), "after": ["$id"] }),
        ),
        ("owner-told", json!({ "customer": "$id", "after": ["$id"] })),
    ]
}

pub fn customer_facts() -> Vec<(&'static str, Value)> {
    vec![
        ("declared", json!({ "texts": texts() })),
        (
            "mended",
            json!({ "field": code(FIELDS), "words": "$words", "after": ["$id"] }),
        ),
        (
            "exempted",
            json!({ "number": maybe("$words"), "taxes": ["$short"], "after": ["$id"] }),
        ),
        (
            "same-as",
            json!({ "customer": maybe("$id"), "after": ["$id"] }),
        ),
    ]
}

pub fn map_facts() -> Vec<(&'static str, Value)> {
    vec![
        ("drafted", json!({ "version": "$u32", "text": file() })),
        (
            "answered",
            json!({ "first": "$words", "first_to": "$state", "second": "$words", "second_to": "$state",
                "answer": code("yes no cannot-say"), "after": ["$id"] }),
        ),
        (
            "names-joined",
            json!({ "name": "$words", "other": "$words", "same": "$bool", "after": ["$id"] }),
        ),
        (
            "value-chosen",
            json!({ "item": "$words", "about": "$token", "at": maybe("$u16"), "value": "$words", "after": ["$id"] }),
        ),
        (
            "received",
            json!({ "version": "$u32", "from": "$words", "key": "$token" }),
        ),
        (
            "same-kind-as",
            json!({ "kind": maybe("$id"), "after": ["$id"] }),
        ),
    ]
}

pub fn shop_facts() -> Vec<(&'static str, Value)> {
    vec![
        (
            "set",
            json!({ "settings": {
            "name": "$words", "rate": "$decimal", "currency": "$short", "minor_digits": "$u32",
            "taxes": [tax()], "units": code("metric us"), "zone": "$short",
        }, "after": added(json!(["$id"])) }),
        ),
        (
            "joined",
            json!({ "person": "$id", "name": "$words", "roles": [code("technician desk owner apprentice")] }),
        ),
        ("departed", json!({ "person": "$id" })),
        (
            "stall-added",
            json!({ "stall": "$id", "name": "$words", "sort": code("lift flat outside") }),
        ),
        ("number-given", json!({ "number": "$u64", "order": "$id" })),
        (
            "invoice-number-given",
            json!({ "number": "$u64", "order": "$id", "payer": code(PAYERS) }),
        ),
        (
            "credit-number-given",
            json!({ "number": "$u64", "order": "$id", "payer": code(PAYERS) }),
        ),
        (
            "money-told",
            json!({ "rules": money_rules(), "after": ["$id"] }),
        ),
        (
            "job-kept",
            json!({ "id": "$id", "job": fixed_job(), "after": ["$id"] }),
        ),
        ("job-dropped", json!({ "id": "$id" })),
        (
            "altitude-told",
            json!({ "altitude": "$written", "after": ["$id"] }),
        ),
        ("erased", json!({ "texts": ["$words"], "why": "$token" })),
        (
            "weighed",
            json!({ "weights": { "margin": "$decimal", "time": "$decimal", "cost": "$decimal", "reversibility": "$decimal" },
                "after": added(json!(["$id"])) }),
        ),
        (
            "place-chosen",
            json!({ "place": "$token", "version": "$u32", "after": ["$id"] }),
        ),
        (
            "records-kept",
            json!({ "years": "$u32", "after": added(json!(["$id"])) }),
        ),
        (
            "erasure-asked",
            json!({ "customer": "$id", "every_word": "$bool", "why": "$token" }),
        ),
        ("erasure-ended", json!({ "asked": "$id" })),
        ("word-added", json!({ "name": "$words", "sort": "$token" })),
        ("word-removed", json!({ "name": "$words" })),
        (
            "alone-allowed",
            json!({ "words": maybe("$words"), "after": ["$id"] }),
        ),
        ("erasure-called-off", json!({ "asked": "$id" })),
        (
            "person-told",
            json!({ "person": "$id", "name": "$words", "roles": [code("technician desk owner apprentice foreman")], "after": ["$id"] }),
        ),
        (
            "stall-told",
            json!({ "stall": "$id", "name": "$words", "sort": code("lift flat outside"), "after": ["$id"] }),
        ),
        (
            "stall-fitted",
            json!({ "stall": "$id", "carries": maybe("$written"), "clears": maybe("$written"),
                "crosses": ["$id"], "after": ["$id"] }),
        ),
        ("stall-removed", json!({ "stall": "$id" })),
        (
            "hours-told",
            json!({ "person": maybe("$id"), "week": maybe("$week"), "after": ["$id"] }),
        ),
        (
            "systems-told",
            json!({ "person": "$id", "systems": [code(SYSTEMS)], "after": ["$id"] }),
        ),
        (
            "days-off",
            json!({ "id": "$id", "person": maybe("$id"), "first": "$date", "last": "$date" }),
        ),
        ("days-off-ended", json!({ "id": "$id" })),
        (
            "skill-told",
            json!({ "person": "$id", "skill": "$words", "can": code("not-yet watched alone teaches"), "after": ["$id"] }),
        ),
        (
            "letterhead-told",
            json!({ "letterhead": { "address": maybe("$words"), "phone": maybe("$words"), "mail": maybe("$words"),
                "tax_number": maybe("$words"), "bank": maybe("$words"), "terms": maybe("$words"),
                "language": code("en de") }, "after": ["$id"] }),
        ),
        (
            "seat-told",
            json!({ "seat": { "street": maybe("$words"), "postcode": maybe("$words"), "town": maybe("$words"),
                "country": maybe("$short") }, "after": ["$id"] }),
        ),
        (
            "logo-told",
            json!({ "logo": maybe(file()), "after": ["$id"] }),
        ),
        (
            "shop-speaks",
            json!({ "language": code("en de"), "after": ["$id"] }),
        ),
        (
            "person-speaks",
            json!({ "person": "$id", "language": maybe(code("en de")), "after": ["$id"] }),
        ),
        (
            "grade-told",
            json!({ "person": "$id", "grade": maybe("$short"), "after": ["$id"] }),
        ),
    ]
}
