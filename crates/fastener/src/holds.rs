//! What a joint holds, which is asked before any way to mend it is ranked.

use crate::phrases::reading as say;
use crate::purpose::Purpose;

/// What a joint holds, or what its hole is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Holds {
    /// Brakes: calipers and their carriers, lines, master cylinder.
    Brake,
    Steering,
    Suspension,
    /// Wheel studs, wheel bolts, hubs.
    Wheel,
    Seat,
    /// Seat belts.
    Belt,
    Airbag,
    Fuel,
    Towing,
    HighVoltage,
    /// Drive shafts and their axle nuts.
    Driveshaft,
    SparkPlug,
    DrainPlug,
    Banjo,
    PipeThread,
    SensorBung,
    Exhaust,
    /// A cover, a housing, a bracket: none of the above.
    Other,
}

impl Holds {
    /// All of them.
    pub const ALL: [Holds; 18] = [
        Holds::Brake,
        Holds::Steering,
        Holds::Suspension,
        Holds::Wheel,
        Holds::Seat,
        Holds::Belt,
        Holds::Airbag,
        Holds::Fuel,
        Holds::Towing,
        Holds::HighVoltage,
        Holds::Driveshaft,
        Holds::SparkPlug,
        Holds::DrainPlug,
        Holds::Banjo,
        Holds::PipeThread,
        Holds::SensorBung,
        Holds::Exhaust,
        Holds::Other,
    ];

    /// As it is written on the command line and kept with a choice.
    pub fn code(self) -> &'static str {
        self.words().0
    }

    /// In words.
    pub fn name(self) -> &'static str {
        self.words().1
    }

    fn words(self) -> (&'static str, &'static str) {
        match self {
            Holds::Brake => ("brake", say::a_brake()),
            Holds::Steering => ("steering", say::the_steering()),
            Holds::Suspension => ("suspension", say::the_suspension()),
            Holds::Wheel => ("wheel", say::a_wheel()),
            Holds::Seat => ("seat", say::a_seat()),
            Holds::Belt => ("belt", say::a_seat_belt()),
            Holds::Airbag => ("airbag", say::an_airbag()),
            Holds::Fuel => ("fuel", say::fuel()),
            Holds::Towing => ("towing", say::a_tow_bar()),
            Holds::HighVoltage => ("high-voltage", say::high_voltage()),
            Holds::Driveshaft => ("driveshaft", say::a_drive_shaft()),
            Holds::SparkPlug => ("spark-plug", say::a_spark_plug()),
            Holds::DrainPlug => ("drain-plug", say::a_drain_plug()),
            Holds::Banjo => ("banjo", say::a_banjo_fitting()),
            Holds::PipeThread => ("pipe", say::a_pipe_thread()),
            Holds::SensorBung => ("sensor", say::a_sensor()),
            Holds::Exhaust => ("exhaust", say::the_exhaust()),
            Holds::Other => ("other", say::none_of_these()),
        }
    }

    /// Reads what somebody says that a joint holds.
    ///
    /// ```
    /// use fastener::holds::Holds;
    /// assert_eq!(Holds::read("caliper carrier"), Some(Holds::Brake));
    /// assert_eq!(Holds::read("housing"), Some(Holds::Other));
    /// assert_eq!(Holds::read("something"), None);
    /// ```
    pub fn read(text: &str) -> Option<Holds> {
        let plain = text.trim().to_lowercase().replace(['-', '_'], " ");
        let plain = plain.strip_suffix('s').unwrap_or(&plain);
        WORDS
            .iter()
            .find(|(words, _)| words.contains(&plain))
            .map(|&(_, holds)| holds)
    }

    /// Whether people are hurt if it lets go: the maker's part alone, or a way that the maker
    /// approves.
    pub fn hurts(self) -> bool {
        self <= Holds::Driveshaft
    }

    /// Whether a torque there stands for a clamp.
    pub fn is_clamp(self) -> bool {
        !matches!(
            self,
            Holds::SparkPlug
                | Holds::DrainPlug
                | Holds::Banjo
                | Holds::PipeThread
                | Holds::SensorBung
        )
    }

    /// What a thread that was named for its purpose holds.
    pub fn of_purpose(purpose: Purpose) -> Option<Holds> {
        match purpose {
            Purpose::Clamp => None,
            Purpose::SparkPlug => Some(Holds::SparkPlug),
            Purpose::DrainPlug => Some(Holds::DrainPlug),
            Purpose::BrakeLine => Some(Holds::Brake),
            Purpose::Banjo => Some(Holds::Banjo),
            Purpose::WheelStud => Some(Holds::Wheel),
            Purpose::SensorBung => Some(Holds::SensorBung),
        }
    }
}

/// Without the s of several.
const WORDS: [(&[&str], Holds); 18] = [
    (
        &[
            "brake",
            "caliper",
            "caliper carrier",
            "brake caliper",
            "brake line",
            "flare nut",
        ],
        Holds::Brake,
    ),
    (&["steering", "tie rod", "steering rack"], Holds::Steering),
    (
        &[
            "suspension",
            "strut",
            "control arm",
            "ball joint",
            "subframe",
            "axle",
        ],
        Holds::Suspension,
    ),
    (
        &[
            "wheel",
            "wheel stud",
            "wheel bolt",
            "wheel nut",
            "lug nut",
            "hub",
            "wheel bearing",
        ],
        Holds::Wheel,
    ),
    (&["seat"], Holds::Seat),
    (&["belt", "seat belt", "seatbelt", "restraint"], Holds::Belt),
    (&["airbag", "air bag"], Holds::Airbag),
    (
        &["fuel", "fuel line", "fuel rail", "tank", "injector"],
        Holds::Fuel,
    ),
    (
        &["towing", "tow", "tow bar", "towbar", "hitch", "towing eye"],
        Holds::Towing,
    ),
    (&["high voltage", "hv"], Holds::HighVoltage),
    (
        &["driveshaft", "drive shaft", "axle nut", "axle shaft"],
        Holds::Driveshaft,
    ),
    (&["spark plug", "sparkplug", "glow plug"], Holds::SparkPlug),
    (&["drain plug", "sump plug", "oil drain"], Holds::DrainPlug),
    (&["banjo", "banjo bolt"], Holds::Banjo),
    (&["pipe", "pipe thread"], Holds::PipeThread),
    (
        &[
            "sensor",
            "sensor bung",
            "bung",
            "oxygen sensor",
            "lambda sensor",
        ],
        Holds::SensorBung,
    ),
    (
        &["exhaust", "exhaust stud", "manifold stud", "turbo"],
        Holds::Exhaust,
    ),
    (
        &[
            "other",
            "none",
            "cover",
            "housing",
            "bracket",
            "engine",
            "pump",
            "drive belt",
            "gearbox",
            "trim",
            "body",
        ],
        Holds::Other,
    ),
];

/// The words that can be written, for a message.
pub fn names() -> String {
    Holds::ALL.map(Holds::code).join(", ")
}
