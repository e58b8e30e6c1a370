//! The pickup with the weeping oil-cooler housing: everything in the way is off, and the
//! housing bolts are next.

use super::scene::{About, Scene};
use super::{INSIDE, LOW, OFF, OUT, UNPLUGGED};
use jiff::{SignedDuration, Timestamp};
use map::Map;
use plan::MoveId;
use record::v1::basics::StateForm;
use serde_json::json;
use shop::planning::{Asked, adopt, in_order};
use shop::repair::{ItemId, MapId};
use shop::{Caller, Device, Service, Trouble};

/// What is next, described before it is touched.
const NEXT: [&str; 4] = [
    "housing bolts",
    "housing",
    "housing gasket",
    "housing o-rings",
];

/// One stage already done: what moved, and the container it lies in.
type Stage = (&'static [(&'static str, StateForm)], Option<&'static str>);

const STAGES: &[Stage] = &[
    (
        &[
            ("battery negative", UNPLUGGED),
            ("engine cover", OFF),
            ("duct clamps", OUT),
            ("intake duct", OFF),
        ],
        Some("shelf"),
    ),
    (
        &[
            ("airflow plug", UNPLUGGED),
            ("airbox screws", OUT),
            ("airbox", OFF),
        ],
        Some("tray A"),
    ),
    (
        &[("tray screws", OUT), ("tray clips", OUT), ("tray", OFF)],
        Some("tray B"),
    ),
    (
        &[
            ("wheel nuts", OUT),
            ("wheel", OFF),
            ("liner clips", OUT),
            ("liner", OFF),
        ],
        Some("tray C"),
    ),
    (&[("coolant", LOW)], None),
    (
        &[
            ("drain plug", OUT),
            ("drain plug washer", OFF),
            ("oil", LOW),
        ],
        Some("tray D"),
    ),
    (
        &[
            ("tensioner pin", INSIDE),
            ("pulley bolts", OUT),
            ("belt", OFF),
            ("pulley", OFF),
        ],
        Some("tray D"),
    ),
    (
        &[("pump cord", INSIDE), ("pump bolts", OUT), ("pump", OFF)],
        Some("tray D"),
    ),
    (
        &[
            ("B+ nut", OUT),
            ("alternator plug", UNPLUGGED),
            ("alternator bolts", OUT),
            ("alternator", OFF),
        ],
        Some("tray E"),
    ),
    (
        &[
            ("bracket long bolts", OUT),
            ("bracket short bolt", OUT),
            ("bracket", OFF),
        ],
        Some("tray E"),
    ),
    (
        &[
            ("oil switch plug", UNPLUGGED),
            ("temperature plug", UNPLUGGED),
            ("lower hose", OFF),
            ("pinch clamp at the lower hose", INSIDE),
            ("lower hose plug", INSIDE),
            ("heater hose", OFF),
            ("pinch clamp at the heater hose", INSIDE),
            ("heater hose plug", INSIDE),
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
    scene.measures("2080 kg", "1850 mm")?;
    scene
        .later(10)
        .stands(json!({ "stall": "stall-1" }), "pavel")?;
    scene.tell(json!({ "promised": { "at": super::open_in(now, 6) } }))?;
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
    scene.tell(json!({ "part-needed": { "part": "gasket-set", "line": "line-1", "item": "housing-gasket", "label": Device::words("housing gasket set"),
        "number": "KD-4471", "quantity": "1", "cost": "38", "price": "61.20", "core": null, "has_old": true } }))?;
    scene.tell(json!({ "part-stepped": { "part": "gasket-set", "quantity": "1", "step": "received", "due": null, "words": null } }))?;
    scene.taken_by("pavel");
    let map = plan_it(service, &mut scene)?;
    for (moves, container) in STAGES {
        let names: Vec<&str> = moves.iter().map(|(name, _)| *name).collect();
        scene.describe(&map, &names)?;
        let moves: Vec<(String, StateForm)> = moves
            .iter()
            .map(|(name, state)| (in_order(&ItemId::new(*name)).to_string(), *state))
            .collect();
        let moves: Vec<_> = moves
            .iter()
            .map(|(id, state)| (id.as_str(), *state))
            .collect();
        scene.later(6).stage(&moves, *container)?;
    }
    scene.describe(&map, &NEXT)?;
    for (fluid, amount) in [("coolant", "5.5 L"), ("oil", "6.4 L")] {
        scene.tell(json!({ "drained": { "item": fluid, "amount": amount, "fate": "kept", "temperature": null } }))?;
    }
    Ok(())
}

/// The order works by the map of its engine front and aims at the seals of the housing. The
/// shroud stays on: its clips are brittle.
fn plan_it(service: &Service, scene: &mut Scene<'_>) -> Result<Map, Trouble> {
    let kept = service.look(&Caller::program(), |snap| {
        snap.map(&MapId::new(super::maps::MAPS[0].0), None)
    })?;
    let map = kept.sound()?.clone();
    scene.ask(adopt(&kept.id, &map, &Device::words))?;
    let asked = Asked {
        targets: ["housing gasket", "housing o-rings"]
            .map(ItemId::new)
            .into(),
        without: [MoveId::new("shroud.off")].into(),
        ..Asked::default()
    };
    scene.tell(asked.fact(&map, None))?;
    Ok(map)
}
