//! Ways to get the air out, as work to be done.

use crate::caution::Caution;
use crate::phrases as say;

/// A way of bleeding. The maker's instructions say which one a vehicle wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BleedWay {
    OpenCap,
    BleedScrew,
    HeaterValve,
    ElectricPump,
    Vacuum,
}

impl BleedWay {
    /// Every way.
    pub const ALL: [BleedWay; 5] = [
        BleedWay::OpenCap,
        BleedWay::BleedScrew,
        BleedWay::HeaterValve,
        BleedWay::ElectricPump,
        BleedWay::Vacuum,
    ];

    /// What to call it.
    pub fn name(self) -> &'static str {
        match self {
            BleedWay::OpenCap => say::open_cap(),
            BleedWay::BleedScrew => say::bleed_screw(),
            BleedWay::HeaterValve => say::heater_valve(),
            BleedWay::ElectricPump => say::electric_pumps_own_mode(),
            BleedWay::Vacuum => say::vacuum(),
        }
    }

    /// The work, in order.
    pub fn work(self) -> Vec<&'static str> {
        match self {
            BleedWay::OpenCap => vec![
                say::raise_the_filler(),
                say::fill_slowly_cold(),
                say::run_at_idle(),
                say::cap_before_it_boils_over(),
            ],
            BleedWay::BleedScrew => vec![
                say::open_each_bleed_screw(),
                say::fill_until_no_bubbles(),
                say::run_until_thermostat_opens(),
            ],
            BleedWay::HeaterValve => vec![
                say::heater_to_hot(),
                say::squeeze_heater_hoses(),
                say::run_until_heater_blows_hot(),
            ],
            BleedWay::ElectricPump => vec![
                say::connect_a_charger(),
                say::start_pumps_bleed_mode(),
                say::let_pump_run_its_time(),
            ],
            BleedWay::Vacuum => vec![
                say::draw_system_down(),
                say::let_coolant_be_sucked_in(),
                say::top_up_and_run(),
            ],
        }
    }

    /// What to be warned of first.
    pub fn cautions(self) -> &'static [Caution] {
        match self {
            BleedWay::ElectricPump => &[
                Caution::MakersSpecification,
                Caution::FanStarts,
                Caution::Poisonous,
            ],
            _ => &[
                Caution::MakersSpecification,
                Caution::Hot,
                Caution::FanStarts,
                Caution::ExhaustIndoors,
                Caution::Poisonous,
            ],
        }
    }
}
