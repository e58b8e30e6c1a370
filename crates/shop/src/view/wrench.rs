//! The wrench a size most likely wants.

use repair::{Item, Kind, System};

/// The wrench for a plain hexagon of this thread: `13 mm`. Nothing where heads follow no such
/// list: wheel nuts, plugs, clamps.
///
/// ```
/// use repair::System;
/// assert_eq!(shop::view::usual_wrench("housing bolts", "M8 8.8", System::Oil).as_deref(), Some("13 mm"));
/// assert_eq!(shop::view::usual_wrench("oil drain plug", "M14x1.5", System::Oil), None);
/// ```
#[must_use]
pub fn usual_wrench(label: &str, size: &str, system: System) -> Option<String> {
    let label = label.to_lowercase();
    if system == System::Wheels
        || ["plug", "clamp", "stud"]
            .iter()
            .any(|odd| label.contains(odd))
    {
        return None;
    }
    let designation = size.split(" cl.").next().unwrap_or(size);
    let thread = fastener::designation::read_clamping(designation).ok()?;
    let head = fastener::head::Head::plain(&thread);
    fastener::head::wrench(head, &thread).map(|wrench| wrench.name)
}

pub(super) fn of(item: &Item, label: &str) -> Option<String> {
    let size = item
        .size
        .as_ref()
        .filter(|_| item.kind == Kind::Fasteners)?;
    usual_wrench(label, size.as_str(), item.system)
}
