//! What stands before a step that could hurt somebody, on the screen and on paper.

use repair::{Kind, System, Zone};

/// The usual cautions, before the step they concern.
#[must_use]
pub fn cautions(things: &[(Kind, System, Zone)]) -> Vec<&'static str> {
    let any = |test: &dyn Fn(Kind, System, Zone) -> bool| {
        things
            .iter()
            .any(|(kind, system, zone)| test(*kind, *system, *zone))
    };
    let table: [(bool, &str); 6] = [
        (
            any(&|kind, system, _| {
                system == System::Cooling && matches!(kind, Kind::Hose | Kind::Fluid)
            }),
            "Coolant may be hot and under pressure. Open nothing until it is cool to the hand; see the maker's instructions.",
        ),
        (
            any(&|_, system, _| system == System::Restraints),
            "Airbags can fire. Battery off and wait as the maker says before unplugging; licensed practice only where the law asks.",
        ),
        (
            any(&|_, system, _| system == System::HighVoltage),
            "High voltage kills. Only who is qualified for it releases it, by the maker's procedure.",
        ),
        (
            any(&|_, system, _| system == System::Fuel),
            "Fuel under pressure and vapour: no flame, no spark, let the pressure off as the maker says.",
        ),
        (
            any(&|_, _, zone| matches!(zone, Zone::Below | Zone::WheelWell)),
            "Lift and support as the lift's and the vehicle's makers say. Nothing here says that it is safe to go under it.",
        ),
        (
            any(&|kind, system, _| kind == Kind::Belt || system == System::DriveBelt),
            "Moving belts and fans: engine off, key out, and a fan may still start by itself.",
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
