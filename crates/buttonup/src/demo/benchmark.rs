//! The pickup with the weeping oil-cooler housing: everything in the way is off, and the
//! housing bolts are next.

use super::scene::{About, Scene, Thing, thing};
use super::{INSIDE, LOW, OFF, OUT, UNPLUGGED};
use jiff::{SignedDuration, Timestamp};
use serde_json::json;
use shop::{Device, Service, Trouble};

const THINGS: &[Thing<'static>] = &[
    thing(
        "battery",
        "battery negative",
        ("part", "battery", "above"),
        None,
        1,
    ),
    thing("cover", "engine cover", ("cover", "body", "above"), None, 1),
    thing(
        "duct-clamps",
        "duct clamps",
        ("fasteners", "intake", "above"),
        None,
        2,
    ),
    thing("duct", "intake duct", ("hose", "intake", "above"), None, 1),
    thing(
        "airflow",
        "airflow plug",
        ("connector", "intake", "above"),
        None,
        1,
    ),
    thing(
        "airbox-screws",
        "airbox screws",
        ("fasteners", "intake", "above"),
        Some("M6x25 8.8"),
        2,
    ),
    thing("airbox", "airbox", ("part", "intake", "above"), None, 1),
    thing(
        "tray-screws",
        "tray screws",
        ("fasteners", "body", "below"),
        Some("M6x16 8.8"),
        6,
    ),
    thing(
        "tray-clips",
        "tray clips",
        ("clips", "body", "below"),
        None,
        8,
    ),
    thing("tray", "undertray", ("cover", "body", "below"), None, 1),
    thing(
        "wheel-nuts",
        "wheel nuts, left front",
        ("fasteners", "wheels", "wheel-well"),
        Some("M12x1.5 cl. 10"),
        5,
    ),
    thing(
        "wheel",
        "wheel, left front",
        ("part", "wheels", "wheel-well"),
        None,
        1,
    ),
    thing(
        "liner-clips",
        "liner clips",
        ("clips", "body", "wheel-well"),
        None,
        7,
    ),
    thing(
        "liner",
        "wheel-well liner",
        ("cover", "body", "wheel-well"),
        None,
        1,
    ),
    thing("coolant", "coolant", ("fluid", "cooling", "below"), None, 1),
    thing("oil", "engine oil", ("fluid", "oil", "below"), None, 1),
    thing(
        "drain-plug",
        "oil drain plug",
        ("fasteners", "oil", "below"),
        Some("M14x1.5"),
        1,
    ),
    thing(
        "drain-washer",
        "drain plug washer",
        ("seal", "oil", "below"),
        None,
        1,
    ),
    thing(
        "pin",
        "tensioner pin",
        ("put-in", "drive-belt", "above"),
        None,
        1,
    ),
    thing(
        "belt",
        "drive belt, 6 ribs",
        ("belt", "drive-belt", "wheel-well"),
        None,
        1,
    ),
    thing(
        "pulley-bolts",
        "steering-pump pulley bolts",
        ("fasteners", "drive-belt", "wheel-well"),
        Some("M8x16 8.8"),
        3,
    ),
    thing(
        "pulley",
        "steering-pump pulley",
        ("part", "drive-belt", "wheel-well"),
        None,
        1,
    ),
    thing(
        "pump-bolts",
        "pump bolts",
        ("fasteners", "steering", "wheel-well"),
        Some("M8 8.8"),
        3,
    ),
    thing(
        "pump",
        "steering pump, on its cord",
        ("part", "steering", "wheel-well"),
        None,
        1,
    ),
    thing(
        "cord",
        "cord on the pump",
        ("put-in", "steering", "wheel-well"),
        None,
        1,
    ),
    thing(
        "b-nut",
        "alternator B+ nut",
        ("fasteners", "electrical", "wheel-well"),
        Some("M8"),
        1,
    ),
    thing(
        "alternator-plug",
        "alternator plug",
        ("connector", "electrical", "wheel-well"),
        None,
        1,
    ),
    thing(
        "alternator-bolts",
        "alternator bolts",
        ("fasteners", "drive-belt", "wheel-well"),
        Some("M10x100 8.8"),
        2,
    ),
    thing(
        "alternator",
        "alternator",
        ("part", "drive-belt", "wheel-well"),
        None,
        1,
    ),
    thing(
        "bracket-bolts",
        "bracket bolts",
        ("fasteners", "engine", "wheel-well"),
        Some("M10x45 8.8"),
        4,
    ),
    thing(
        "bracket",
        "bracket",
        ("part", "engine", "wheel-well"),
        None,
        1,
    ),
    thing(
        "oil-switch",
        "oil switch plug",
        ("connector", "oil", "below"),
        None,
        1,
    ),
    thing(
        "temperature",
        "temperature plug",
        ("connector", "cooling", "below"),
        None,
        1,
    ),
    thing(
        "lower-hose",
        "lower hose",
        ("hose", "cooling", "below"),
        None,
        1,
    ),
    thing(
        "heater-hose",
        "heater hose",
        ("hose", "cooling", "below"),
        None,
        1,
    ),
    thing(
        "clamp-1",
        "pinch clamp, lower hose",
        ("put-in", "cooling", "below"),
        None,
        1,
    ),
    thing(
        "plug-1",
        "plug, heater hose",
        ("put-in", "cooling", "below"),
        None,
        1,
    ),
    thing(
        "housing-bolts",
        "housing bolts",
        ("fasteners", "oil", "below"),
        Some("M8 8.8"),
        7,
    ),
    thing(
        "housing",
        "oil-cooler housing",
        ("part", "oil", "below"),
        None,
        1,
    ),
    thing(
        "gasket",
        "housing gasket",
        ("seal", "oil", "below"),
        None,
        1,
    ),
    thing(
        "o-rings",
        "housing O-rings",
        ("seal", "oil", "below"),
        None,
        2,
    ),
];

/// One stage already done: what moved, and the container it lies in.
type Stage = (
    &'static [(&'static str, super::StateForm)],
    Option<&'static str>,
);

const STAGES: &[Stage] = &[
    (
        &[
            ("battery", OFF),
            ("cover", OFF),
            ("duct-clamps", OUT),
            ("duct", OFF),
        ],
        Some("shelf"),
    ),
    (
        &[
            ("airflow", UNPLUGGED),
            ("airbox-screws", OUT),
            ("airbox", OFF),
        ],
        Some("tray A"),
    ),
    (
        &[("tray-screws", OUT), ("tray-clips", OUT), ("tray", OFF)],
        Some("tray B"),
    ),
    (
        &[
            ("wheel-nuts", OUT),
            ("wheel", OFF),
            ("liner-clips", OUT),
            ("liner", OFF),
        ],
        Some("tray C"),
    ),
    (&[("coolant", LOW)], None),
    (
        &[("drain-plug", OUT), ("drain-washer", OFF), ("oil", LOW)],
        Some("tray D"),
    ),
    (
        &[
            ("pin", INSIDE),
            ("pulley-bolts", OUT),
            ("belt", OFF),
            ("pulley", OFF),
        ],
        Some("tray D"),
    ),
    (
        &[("cord", INSIDE), ("pump-bolts", OUT), ("pump", OFF)],
        Some("tray D"),
    ),
    (
        &[
            ("b-nut", OUT),
            ("alternator-plug", UNPLUGGED),
            ("alternator-bolts", OUT),
            ("alternator", OFF),
        ],
        Some("tray E"),
    ),
    (&[("bracket-bolts", OUT), ("bracket", OFF)], Some("tray E")),
    (
        &[
            ("oil-switch", UNPLUGGED),
            ("temperature", UNPLUGGED),
            ("lower-hose", OFF),
            ("clamp-1", INSIDE),
            ("heater-hose", OFF),
            ("plug-1", INSIDE),
        ],
        None,
    ),
];

/// The benchmark repair, before its snag.
pub fn order(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut scene = Scene::open(
        service,
        "greta",
        now - SignedDuration::from_hours(5),
        &About {
            customer: ("Ada Brandt", "0600 555 011"),
            vehicle: "Korvane Drayman 2.3",
            plate: "KD 2302",
            odometer: "148200 km",
            complaint: "Smells hot after the motorway, spot on my drive, topped it up twice.",
        },
    )?;
    scene.tell(
        json!({ "observed": { "id": Device::name(), "zone": "outside", "what": "damage",
        "words": Device::words("scratch on the tailgate, left"), "photos": [] } }),
    )?;
    scene
        .later(10)
        .stands(json!({ "stall": "stall-1" }), "pavel")?;
    scene
        .tell(json!({ "promised": { "at": (now + SignedDuration::from_hours(6)).to_string() } }))?;
    scene.found(
        "Coolant weeps at the oil-cooler housing: 0.15 bar lost in 10 minutes",
        None,
    )?;
    scene.price(&[
        (
            "labour",
            "Reseal the oil-cooler housing, 220 minutes",
            "3.6666666667",
            "120",
        ),
        ("test", "Pressure test and diagnosis", "1", "72.00"),
        (
            "part",
            "Gasket set, belt, coolant, oil, filter",
            "1",
            "268.40",
        ),
    ])?;
    scene.consent("850", "Ada Brandt", "Go ahead, ring me if it gets more")?;
    scene.tell(json!({ "part-needed": { "part": "gasket-set", "line": "line-1", "item": "gasket", "label": Device::words("housing gasket set"),
        "number": "KD-4471", "quantity": "1", "cost": "38", "price": "61.20", "core": null, "has_old": true } }))?;
    scene.tell(json!({ "part-stepped": { "part": "gasket-set", "quantity": "1", "step": "received", "due": null, "words": null } }))?;
    scene.taken_by("pavel");
    scene.declare(THINGS)?;
    for (moves, container) in STAGES {
        scene.later(6).stage(moves, *container)?;
    }
    for (fluid, amount) in [("coolant", "5.5 L"), ("oil", "6.4 L")] {
        scene.tell(json!({ "drained": { "item": fluid, "amount": amount, "fate": "kept", "temperature": null } }))?;
    }
    Ok(())
}
