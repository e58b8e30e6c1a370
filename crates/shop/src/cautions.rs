//! What stands before a step that could hurt somebody, on the screen and on paper.

use crate::phrases::shop as words;
use repair::{Kind, System, Zone};

/// The usual cautions, before the step they concern.
#[must_use]
pub fn cautions(things: &[(Kind, System, Zone)]) -> Vec<&'static str> {
    let any = |test: &dyn Fn(Kind, System, Zone) -> bool| {
        things
            .iter()
            .any(|(kind, system, zone)| test(*kind, *system, *zone))
    };
    let table: [(bool, &'static str); 6] = [
        (
            any(&|kind, system, _| {
                system == System::Cooling && matches!(kind, Kind::Hose | Kind::Fluid)
            }),
            words::caution_coolant(),
        ),
        (
            any(&|_, system, _| system == System::Restraints),
            words::caution_airbags(),
        ),
        (
            any(&|_, system, _| system == System::HighVoltage),
            words::caution_high_voltage(),
        ),
        (
            any(&|_, system, _| system == System::Fuel),
            words::caution_fuel(),
        ),
        (
            any(&|_, _, zone| matches!(zone, Zone::Below | Zone::WheelWell)),
            words::caution_lift(),
        ),
        (
            any(&|kind, system, _| kind == Kind::Belt || system == System::DriveBelt),
            words::caution_belts(),
        ),
    ];
    table
        .into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, text)| text)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_hurt_is_warned_of_and_nothing_else() {
        assert!(cautions(&[(Kind::Part, System::Unknown, Zone::Above)]).is_empty());
        let hose = (Kind::Hose, System::Cooling, Zone::Below);
        let told = cautions(&[hose, hose]);
        assert_eq!(told.len(), 2, "{told:?}");
        assert!(told[0].contains("hot") && told[1].starts_with("Lift"));
    }
}
