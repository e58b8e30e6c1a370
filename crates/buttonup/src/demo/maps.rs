//! The maps of the invented shop, drawn before any of its orders.

use jiff::{SignedDuration, Timestamp};
use serde_json::json;
use shop::{Caller, Device, Service, Trouble};

/// Each map by its name in the record.
pub const MAPS: [(&str, &str); 3] = [
    (
        "korvane-drayman-engine-front",
        include_str!("../../../../demo/maps/korvane-drayman-engine-front.toml"),
    ),
    (
        "halvorsen-fjell-front-wheel-end",
        include_str!("../../../../demo/maps/halvorsen-fjell-front-wheel-end.toml"),
    ),
    (
        "pellworth-mite-battery",
        include_str!("../../../../demo/maps/pellworth-mite-battery.toml"),
    ),
];

/// Keeps the first version of each.
pub fn bring(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut device = Device::new("desk", "pavel");
    let at = now - SignedDuration::from_hours(24 * 20);
    for (name, text) in MAPS {
        let text = Device::document(text, "application/toml");
        let drafted = json!({ "drafted": { "version": 1, "text": text } });
        service
            .command(
                &Caller::program(),
                device.command(&format!("map:{name}"), at, "map_fact", drafted),
            )
            .map(drop)?;
    }
    Ok(())
}
