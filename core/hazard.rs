//! Hazards: what can hurt someone in the work that a result belongs to, with a caution to print beside it.
//!
//! No result of this library is a rating, and none says that something is safe. The vehicle maker's ratings and procedures,
//! local codes and licensed practice come first.

use crate::error::{Error, Result};

/// A way in which the work can hurt someone.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hazard {
    /// The vehicle moves by itself.
    RollAway = 1,
    /// Fluid burns skin, or catches fire.
    HotFluid = 2,
    /// Parts and fluid fly under shop air.
    CompressedAir = 3,
    /// A stall test overheats the converter and loads the whole drive line.
    StallHeat = 4,
    /// A part turns faster than it can bear.
    Overspeed = 5,
    /// Plates and drums just tested burn skin.
    HotParts = 6,
    /// Raised pressure loads parts that nobody checked for it.
    RaisedPressure = 7,
    /// A trailer or a grade asks more than the vehicle is rated for.
    Towing = 8,
    /// A tire carries less, or slower, than the one it replaces.
    WrongTire = 9,
    /// A park lock is asked to hold what only brakes and chocks hold for certain.
    ParkLock = 10,
    /// Shafts, couplings and wheels turn on a dyno or a raised vehicle.
    TurningShafts = 11,
    /// Somebody drives on a road to measure.
    RoadTest = 12,
}

/// Every hazard.
pub static ALL: [Hazard; 12] = [
    Hazard::RollAway,
    Hazard::HotFluid,
    Hazard::CompressedAir,
    Hazard::StallHeat,
    Hazard::Overspeed,
    Hazard::HotParts,
    Hazard::RaisedPressure,
    Hazard::Towing,
    Hazard::WrongTire,
    Hazard::ParkLock,
    Hazard::TurningShafts,
    Hazard::RoadTest,
];

impl Hazard {
    /// The hazard with this number, as C passes it.
    pub fn from_number(number: i32) -> Result<Self> {
        let unknown = Error::OutOfRange { name: "hazard", value: f64::from(number), low: 1.0, high: ALL.len() as f64 };
        ALL.into_iter().find(|hazard| *hazard as i32 == number).ok_or(unknown)
    }

    /// One sentence to print beside a result.
    #[must_use]
    pub const fn caution(self) -> &'static str {
        match self {
            Self::RollAway => {
                "Set the parking brake and chock the wheels: the park gear alone may not hold the vehicle, least of all on a grade or with a trailer."
            }
            Self::HotFluid => {
                "Hot fluid burns skin and, blown from the vent onto the exhaust, can catch fire: wear gloves and goggles, support a raised vehicle on rated stands, and keep clear of what turns while the engine runs."
            }
            Self::CompressedAir => {
                "Shop air throws pistons, springs and fluid: regulate it down, cover the part, and wear goggles."
            }
            Self::StallHeat => {
                "A stall test heats the converter within seconds and loads the whole drive line: only where the vehicle maker allows it, a few seconds at a time, wheels chocked, brakes held, nobody in front or behind, then idle in Neutral to cool."
            }
            Self::Overspeed => {
                "Parts inside can turn several times faster than the input: guard the test stand, and stay below the maker's speed limits."
            }
            Self::HotParts => {
                "Plates, steels and drums stay hot long after a shift or slip test, and a case warmed for its bushing looks cold: let them cool, and wear gloves."
            }
            Self::RaisedPressure => {
                "More pressure for more capacity also loads retaining rings, drums, shafts and seals: a computed capacity is not a rating, and the maker's pressure limits stand."
            }
            Self::Towing => {
                "What force and power allow is not what may be pulled: the vehicle maker's towing, axle and brake ratings, the hitch's rating and local law come first, and brakes must hold downhill what the engine pulls uphill."
            }
            Self::ParkLock => {
                "The park lock is never the only means of holding a vehicle: set the parking brake first, then shift to Park, and chock the wheels, a trailer's too. Never stand downhill. The vehicle maker's instructions and ratings come first."
            }
            Self::TurningShafts => {
                "Shafts, couplings and wheels on a dyno break, throw and wind in: guards closed before it turns, the emergency stop in reach, loose clothes off, nobody in the plane of what turns, torque and speed within the limits that the makers of unit and dyno state."
            }
            Self::RoadTest => {
                "A road test takes two: a licensed driver who only drives, and somebody else at the log. On a road that the vehicle and the load are allowed on, within the speed limit, brakes and tires checked first; stop when something smokes, slips or overheats."
            }
            Self::WrongTire => {
                "A tire of another size, load index, load range or speed symbol than the vehicle maker lists can overheat, burst or rub: keep to the placard, match the tires of an axle, and leave no speedometer reading low."
            }
        }
    }

    /// Short name, for tables.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::RollAway => "roll-away",
            Self::HotFluid => "hot fluid",
            Self::CompressedAir => "compressed air",
            Self::StallHeat => "stall heat",
            Self::Overspeed => "overspeed",
            Self::HotParts => "hot parts",
            Self::RaisedPressure => "raised pressure",
            Self::Towing => "towing",
            Self::WrongTire => "wrong tire",
            Self::ParkLock => "park lock",
            Self::TurningShafts => "turning shafts",
            Self::RoadTest => "road test",
        }
    }
}
