//! The other orders.

use super::scene::{About, Scene, thing};
use super::{INSIDE, LEVEL, LOW, OFF, ON, OUT, TIGHT, UNPLUGGED};
use jiff::{SignedDuration, Timestamp};
use serde_json::json;
use shop::{Device, Service, Trouble};

fn days_ago(now: Timestamp, days: i64) -> Timestamp {
    now - SignedDuration::from_hours(24 * days)
}

/// An oil change whose drain thread was repaired: handed over with a lasting difference.
pub fn handed_over(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::open(
        service,
        "nuria",
        days_ago(now, 12),
        &About {
            customer: ("Joris Maan", "0600 555 012"),
            vehicle: "Selwick Rue 1.4",
            plate: "SR 1408",
            odometer: "91340 km",
            complaint: "Oil service is due, and it drips where it stands.",
        },
    )?;
    scene.stands(json!({ "stall": "stall-2" }), "nuria")?;
    scene.price(&[
        (
            "labour",
            "Oil service, thread of the sump repaired",
            "1.5",
            "120",
        ),
        ("part", "Oil, filter, insert", "1", "74.50"),
    ])?;
    scene.consent("260", "Joris Maan", "Yes, repair the thread too")?;
    scene.declare(&[
        thing(
            "plug",
            "oil drain plug",
            ("fasteners", "oil", "below"),
            Some("M14x1.5"),
            1,
        ),
        thing("oil", "engine oil", ("fluid", "oil", "below"), None, 1),
    ])?;
    scene.stage(&[("plug", OUT), ("oil", LOW)], Some("tray A"))?;
    scene.tell(json!({ "drained": { "item": "oil", "amount": "4.1 L", "fate": "recycled", "temperature": null } }))?;
    scene.tell(json!({ "snag-found": { "snag": "thread", "item": "plug", "at": [1], "what": "stripped", "sits": null,
        "words": Device::words("two turns of thread came out with the plug"), "photos": [], "moves": [] } }))?;
    scene.later(40).tell(
        json!({ "snag-resolved": { "snag": "thread", "how": "wire-insert",
        "words": Device::words("wire insert, washer new"), "calculation": null, "moves": [] } }),
    )?;
    scene.tell(
        json!({ "difference-noted": { "id": "sump", "item": "plug", "at": [1], "what": "insert",
        "size": "M14x1.5 insert", "torque": "35 Nm", "words": Device::words("wire insert") } }),
    )?;
    scene.stage(&[("plug", TIGHT), ("oil", LEVEL)], None)?;
    scene.tell(json!({ "poured": { "item": "oil", "amount": "4.1 L", "what": Device::words("5W-30"), "temperature": null } }))?;
    scene.do_what_is_owed()?;
    scene.found(
        "Drain thread worn out",
        Some("Thread insert in the sump, oil and filter renewed"),
    )?;
    let after = scene.seen(&["oil", "plug"])?;
    scene.taken_by("pavel");
    scene.tell(
        json!({ "checked": { "check": "second-person", "items": ["oil", "plug"], "after": after } }),
    )?;
    scene.proved("road-test", "8 km, dry afterwards")?;
    scene.taken_by("greta");
    scene.ask(json!({ "charge": {} }))?;
    scene.tell(json!({ "paid": { "payer": "customer", "amount": "305.40", "by": "card", "deposit": false } }))?;
    scene.tell(json!({ "keys": { "step": "given-back", "words": null } }))?;
    scene.ask(json!({ "hand-over": { "leaves": "drives-away", "ending": "repaired", "boxes": null, "signature": null, "signed_by": null } }))
}

/// A van that cannot roll: its cylinder head is away at machine work.
pub fn at_machine_work(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::open(
        service,
        "greta",
        days_ago(now, 3),
        &About {
            customer: ("Ferry Groente", "0600 555 013"),
            vehicle: "Tamsel 400 van",
            plate: "TM 4007",
            odometer: "231900 km",
            complaint: "Loses water, white smoke in the morning.",
        },
    )?;
    scene.measures("2350 kg", "2520 mm")?;
    scene.stands(json!({ "stall": "stall-2" }), "nuria")?;
    scene.found("Head gasket blown between 2 and 3, head out of true", None)?;
    scene.price(&[
        ("labour", "Head off and on", "9", "120"),
        ("sublet", "Face the head, pressure test", "1", "280"),
        ("part", "Gasket set, bolts, coolant, oil", "1", "412"),
    ])?;
    scene.consent("1900", "Ferry Groente", "Do it, I need it on Friday")?;
    scene.declare(&[
        thing("coolant", "coolant", ("fluid", "cooling", "below"), None, 1),
        thing(
            "top-hose",
            "top hose",
            ("hose", "cooling", "above"),
            None,
            1,
        ),
        thing(
            "manifold-nuts",
            "manifold nuts",
            ("fasteners", "exhaust", "above"),
            Some("M8"),
            8,
        ),
        thing(
            "head-bolts",
            "head bolts",
            ("fasteners", "engine", "above"),
            Some("M11"),
            10,
        ),
        thing(
            "head",
            "cylinder head",
            ("part", "engine", "above"),
            None,
            1,
        ),
        thing(
            "gasket",
            "head gasket",
            ("seal", "engine", "above"),
            None,
            1,
        ),
        thing("lamp", "lamp", ("put-in", "engine", "above"), None, 1),
        thing(
            "shaft-bolts",
            "drive shaft bolts",
            ("fasteners", "suspension", "wheel-well"),
            Some("M10"),
            6,
        ),
        thing(
            "arm",
            "lower arm, left",
            ("part", "suspension", "wheel-well"),
            None,
            1,
        ),
    ])?;
    scene.later(30).stage(
        &[("coolant", LOW), ("top-hose", OFF), ("manifold-nuts", OUT)],
        Some("tray A"),
    )?;
    scene.tell(json!({ "drained": { "item": "coolant", "amount": "7 L", "fate": "recycled", "temperature": null } }))?;
    scene.later(60).stage(
        &[
            ("head-bolts", OUT),
            ("head", OFF),
            ("gasket", OFF),
            ("lamp", INSIDE),
        ],
        Some("tray B"),
    )?;
    scene.stage(&[("shaft-bolts", OUT), ("arm", OFF)], Some("tray C"))?;
    let due = now
        .to_zoned_datetime(jiff::tz::TimeZone::UTC)
        .date()
        .tomorrow()
        .map(|day| day.to_string())
        .ok();
    scene.tell(json!({ "sublet-out": { "sublet": "head", "line": "line-1", "items": ["head"],
        "what": Device::words("face the head, pressure test"), "to": Device::words("Marrow Machine Shop"), "due": due, "cost": "210" } }))
}

/// Front brakes, at work: one side together, the nuts left in the middle of a pass.
pub fn brakes(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::open(
        service,
        "greta",
        now - SignedDuration::from_hours(3),
        &About {
            customer: ("Lotte Perl", "0600 555 014"),
            vehicle: "Orrin Pico",
            plate: "OP 0310",
            odometer: "64020 km",
            complaint: "Squeals when braking, pedal feels long.",
        },
    )?;
    scene.stands(json!({ "stall": "stall-3" }), "pavel")?;
    scene.tell(json!({ "promised": { "at": super::open_in(now, 2) } }))?;
    scene.found("Front pads at the wear mark", None)?;
    scene.price(&[
        ("labour", "Front brake pads", "1.2", "120"),
        ("part", "Pads, front", "1", "58.90"),
    ])?;
    scene.consent("230", "Lotte Perl", "Yes please")?;
    scene.taken_by("pavel");
    scene.declare(&[
        thing(
            "nuts",
            "wheel nuts, right front",
            ("fasteners", "wheels", "wheel-well"),
            Some("M12x1.5"),
            4,
        )
        .tightened(&["60 Nm", "110 Nm"], &[1, 3, 2, 4]),
        thing(
            "wheel",
            "wheel, right front",
            ("part", "wheels", "wheel-well"),
            None,
            1,
        ),
        thing(
            "caliper-bolts",
            "caliper bolts, right",
            ("fasteners", "brakes", "wheel-well"),
            Some("M8"),
            2,
        ),
        thing(
            "pads",
            "brake pads, right",
            ("part", "brakes", "wheel-well"),
            None,
            2,
        ),
    ])?;
    scene.later(15).stage(
        &[
            ("nuts", OUT),
            ("wheel", OFF),
            ("caliper-bolts", OUT),
            ("pads", OFF),
        ],
        Some("tray A"),
    )?;
    scene.later(20).stage_new(&[("pads", ON)])?;
    scene.stage(
        &[
            ("caliper-bolts", TIGHT),
            ("wheel", ON),
            ("nuts", super::StateForm::Loose { passes: 0 }),
        ],
        None,
    )?;
    // Called away after two of the four.
    scene
        .later(2)
        .some("nuts", &[1, 3], super::StateForm::Loose { passes: 1 })
}

/// An estate that waits in the yard for its alternator.
pub fn waiting_for_part(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::open(
        service,
        "greta",
        days_ago(now, 1),
        &About {
            customer: ("Tilde Aumann", "0600 555 015"),
            vehicle: "Lanner estate",
            plate: "LN 7719",
            odometer: "177400 km",
            complaint: "Battery lamp glimmers, starts badly.",
        },
    )?;
    scene.stands(json!("yard"), "pavel")?;
    scene.found("Alternator gives 12.4 V with the engine running", None)?;
    scene.price(&[
        ("labour", "Alternator off and on", "1.6", "120"),
        ("part", "Alternator, rebuilt", "1", "214"),
        ("core", "Core charge", "1", "60"),
    ])?;
    scene.consent("480", "Tilde Aumann", "Rebuilt is fine")?;
    scene.declare(&[thing(
        "plug",
        "alternator plug",
        ("connector", "electrical", "above"),
        None,
        1,
    )])?;
    scene.stage(&[("plug", UNPLUGGED)], None)?;
    let due = now
        .to_zoned_datetime(jiff::tz::TimeZone::UTC)
        .date()
        .tomorrow()
        .map(|day| day.to_string())
        .ok();
    scene.tell(json!({ "part-needed": { "part": "alternator", "line": "line-1", "item": null, "label": Device::words("alternator, rebuilt"),
        "number": "LN-A120", "quantity": "1", "cost": "150", "price": "214", "core": "60", "has_old": true } }))?;
    scene.tell(json!({ "part-stepped": { "part": "alternator", "quantity": "1", "step": "ordered", "due": due, "words": Device::words("Northgate Parts") } }))
}

/// The first one again: it carries its lasting difference, and it drips again.
pub fn come_back(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::again(
        service,
        "greta",
        now - SignedDuration::from_mins(40),
        1001,
        &About {
            customer: ("", ""),
            vehicle: "",
            plate: "",
            odometer: "91910 km",
            complaint: "A drop of oil on the floor again since the service.",
        },
    )?;
    scene.stands(json!("yard"), "nuria")
}

/// A hatch that is booked for tomorrow: its work is known, and it is not here.
pub fn booked(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::book(
        service,
        "greta",
        now - SignedDuration::from_mins(20),
        &About {
            customer: ("Bo Hallam", "0600 555 016"),
            vehicle: "Marlow 3 hatch",
            plate: "MH 3305",
            odometer: "",
            complaint: "Timing belt and water pump are due.",
        },
        &super::open_in(now, 22),
    )?;
    scene.tell(
        json!({ "work-left": { "minutes": "200", "least": "170", "most": "280", "skill": "engine",
        "stall": "lift", "after": [], "road": "15" } }),
    )
}
