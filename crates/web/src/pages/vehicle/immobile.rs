//! Parts, before the vehicle can no longer roll: a wrong part found then holds the stall.

use crate::phrases::vehicle as say;
use maud::{Markup, html};
use shop::ItemLine;
use shop::record::v1::codes::PartStepForm;
use shop::repair::{Kind, System};
use shop::view::{OrderView, PartView};

/// Whether the vehicle can't be driven off once these are out.
pub fn holds_it_here(lines: &[ItemLine]) -> bool {
    lines.iter().any(|line| match line.kind {
        Kind::PutIn | Kind::Work => false,
        Kind::Fluid => line.system.stops_without_fluid(),
        _ => matches!(
            line.system,
            System::Wheels
                | System::Brakes
                | System::Steering
                | System::Suspension
                | System::DriveBelt
        ),
    })
}

/// Advice, never a refusal: which parts are not here or were not laid beside the old ones.
pub fn parts_first(order: &OrderView, lines: &[ItemLine]) -> Markup {
    let (missing, strange) = counts(&order.parts);
    html! {
        @if order.row.can_roll && holds_it_here(lines) && missing + strange > 0 {
            a class="row" href=(format!("/o/{}/parts", order.number)) {
                span class="what" {
                    span class="wait line" { (words(missing, strange)) }
                    span class="soft line" { (say::after_this_it_cant_roll()) }
                }
                span class="strong" { (say::look()) }
            }
        }
    }
}

/// Parts that are not here, and parts here that nobody compared with the old one.
fn counts(parts: &[PartView]) -> (usize, usize) {
    let open = parts.iter().filter(|part| part.adrift != "0");
    let (here, missing): (Vec<&PartView>, Vec<&PartView>) =
        open.partition(|part| part.steps.contains_key(&PartStepForm::Received));
    let strange = here
        .iter()
        .filter(|part| part.has_old && !part.steps.contains_key(&PartStepForm::Compared));
    (missing.len(), strange.count())
}

fn words(missing: usize, strange: usize) -> String {
    let missing = (missing > 0).then(|| say::parts_not_here(missing));
    let strange = (strange > 0).then(|| say::not_compared(strange));
    [missing, strange]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_holds_a_vehicle_where_it_stands() {
        let holds = |text: &str| holds_it_here(&[shop::item_line(text)]);
        for there in [
            "5 wheel nuts",
            "drive belt",
            "5.5 L coolant",
            "brake caliper",
        ] {
            assert!(holds(there), "{there}");
        }
        for not in ["engine cover", "rag", "6 tray screws M6x16", "airflow plug"] {
            assert!(!holds(not), "{not}");
        }
        assert_eq!(
            words(2, 1),
            "2 parts not here, 1 not compared with the old one"
        );
        assert_eq!(words(1, 0), "1 part not here");
    }
}
