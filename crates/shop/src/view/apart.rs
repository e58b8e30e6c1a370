//! What people told of an item apart, each telling with the fact that settles it.

use super::Names;
use crate::phrases::order as words;
use crate::say;
use record::form::Form;
use record::v1::facts::FactForm;
use repair::{CommandId, Fact, Item, Pattern, ToldApart};
use serde::Serialize;
use utoipa::ToSchema;

/// One of the things told apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ApartView {
    /// What was told: `torque`, `size`, `place` or `count`.
    pub what: &'static str,
    /// How it was told, in words.
    pub says: String,
    /// The fact by which somebody says that this one holds; none where all hold.
    pub settles: Option<FactForm>,
}

/// Every telling of an item that stands beside another one.
pub(super) fn apart(
    names: &Names<'_>,
    item: &Item,
    told: &ToldApart,
    seen: &[CommandId],
) -> Vec<ApartView> {
    let view = |what, says, fact: Option<Fact>| ApartView {
        what,
        says,
        settles: fact.as_ref().map(FactForm::of),
    };
    let after = || seen.to_vec();
    let mut out: Vec<_> = told
        .patterns
        .iter()
        .map(|pattern| {
            let fact = Fact::TorqueTold {
                item: item.id.clone(),
                pattern: pattern.clone(),
                after: after(),
            };
            view("torque", torque(names, pattern), Some(fact))
        })
        .collect();
    out.extend(told.sizes.iter().map(|size| {
        let fact = Fact::SizeTold {
            item: item.id.clone(),
            size: size.clone(),
            after: after(),
        };
        view("size", size.as_str().to_owned(), Some(fact))
    }));
    let places = told.readings.iter().filter(|_| told.readings.len() > 1);
    out.extend(places.map(|reading| {
        let fact = Fact::Located {
            item: item.id.clone(),
            system: reading.system,
            zone: reading.zone,
            after: after(),
        };
        let system = say::system_name(reading.system);
        let says = format!("{system}, {}", say::zone_name(reading.zone));
        view("place", says, Some(fact))
    }));
    let counts = told.counts.iter();
    out.extend(counts.map(|count| view("count", count.to_string(), None)));
    out
}

fn torque(names: &Names<'_>, pattern: &Pattern) -> String {
    let passes: Vec<_> = pattern.passes.iter().map(repair::Written::as_str).collect();
    let by = names.text_of(pattern.source);
    let by = by.map_or(String::new(), words::comma_by);
    format!("{}{by}", passes.join(words::then()))
}
