//! What each gear is asked for on a grade: speed, torque, share of rating, and whether the engine can hold it.

use super::gearing::{Gearing, MAX_OFFERED_GEARS, NO_GEAR};
use crate::card::{self, Card, symbol};
use crate::converter::EngineCurve;
use crate::error::{Error, Result, positive, within};
use crate::real::abs;
use crate::road::{Combination, Driveline, RoadLoad, road_load};

pub(super) const PULL: Card = Card {
    id: "tow.pull",
    purpose: "Speed and torque of every gear on a grade, lock-up clutch closed, and the gear that holds it",
    equation: "T_out = F·r/(i_A·η_A), T_in = T_out/(i·η), n = v·i_A·i/(2·π·r), reserve = 1 − T_in/T_full(n)",
    symbols: &[
        symbol("T_out", "output_nm", "N·m"),
        symbol("F", "load.total_n: road.road_load", "N"),
        symbol("r", "haul.driveline.circumference_mm over 2·π", "mm"),
        symbol("i_A", "haul.driveline.axle_ratio times haul.driveline.transfer_ratio", "1"),
        symbol("η_A", "haul.axle_efficiency", "1"),
        symbol("T_in", "input_nm", "N·m"),
        symbol("i, η", "ratio, efficiency", "1, 1"),
        symbol("n", "engine_rpm", "1/min"),
        symbol("v", "speed_km_h", "km/h"),
        symbol("reserve", "reserve", "1"),
        symbol("T_full", "full_nm: full-throttle torque of the engine", "N·m"),
    ],
    range: "steady speed, converter locked, net torque at the flywheel; the grip of the tires is not looked at. Not a rating",
    source: &card::DEFINITION,
    locator: "road load carried back to the engine",
};

pub(super) const PULL_SLOWED: Card = Card {
    id: "tow.pull_slowed",
    purpose: "The same, slower by a step at a time until a gear holds",
    equation: "v = v₀ − k·step, k = 0, 1, 2… until a gear holds",
    symbols: &[
        symbol("v", "speed_km_h", "km/h"),
        symbol("v₀", "speed that was asked for", "km/h"),
        symbol("step", "rule.speed_step_km_h", "km/h"),
        symbol("k", "number of steps", "1"),
    ],
    range: "as tow.pull",
    source: &card::DEFINITION,
    locator: "how a driver loses speed on a grade",
};

/// A combination, and the drive line that pulls it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Haul {
    /// Truck and trailer as the road feels them.
    pub combination: Combination,
    /// Axle, transfer case and tires.
    pub driveline: Driveline,
    /// Efficiency of axle and transfer case, above 0 to 1.
    pub axle_efficiency: f64,
    /// Density of the air.
    pub air_density_kg_m3: f64,
}

/// How a gear is chosen: the highest that keeps a reserve, with the lock-up clutch closed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearRule {
    /// Share of full torque that stays in hand, 0 to below 1.
    pub torque_reserve: f64,
    /// Lowest engine speed with the lock-up clutch closed.
    pub lowest_locked_rpm: f64,
    /// Step by which the speed is lowered where no gear holds.
    pub speed_step_km_h: f64,
}

impl GearRule {
    pub(super) fn checked(self) -> Result<Self> {
        within("torque_reserve", self.torque_reserve, 0.0, 0.99)?;
        positive("lowest_locked_rpm", self.lowest_locked_rpm)?;
        positive("speed_step_km_h", self.speed_step_km_h)?;
        Ok(self)
    }
}

/// A combination with the engine, the unit and the drive line that pull it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rig {
    /// Combination and drive line.
    pub haul: Haul,
    /// What the unit offers.
    pub gearing: Gearing,
    /// Full-throttle torque of the engine.
    pub engine: EngineCurve,
    /// Choice of gear.
    pub rule: GearRule,
}

/// How a gear stands on a grade.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GearStanding {
    /// It holds the speed and keeps the reserve.
    Holds,
    /// It holds the speed, but keeps less than the reserve.
    LittleReserve,
    /// The engine has too little torque at this speed.
    TooWeak,
    /// The engine would turn slower than the lock-up clutch stays closed: the converter slips, and heats.
    BelowLockUp,
    /// The engine would turn faster than it may, or than its table goes.
    OverSpeed,
    /// A reverse gear: the figures are those of driving backward.
    Reverse,
}

/// What limits a pull most.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PullLimit {
    /// Full torque of the engine.
    Engine,
    /// Rated torque at the input.
    Input,
    /// Rated torque at the output.
    Output,
}

/// One gear on a grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearPull {
    /// Input over output speed.
    pub ratio: f64,
    /// Engine and input speed, lock-up clutch closed.
    pub engine_rpm: f64,
    /// Torque at the input; negative on the overrun.
    pub input_nm: f64,
    /// Full-throttle torque of the engine at this speed; 0 where its table does not say.
    pub full_nm: f64,
    /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
    pub reserve: f64,
    /// Torque at the input over its rating.
    pub use_of_input: f64,
    /// How the gear stands.
    pub standing: GearStanding,
}

impl GearPull {
    const NONE: Self = Self {
        ratio: 0.0,
        engine_rpm: 0.0,
        input_nm: 0.0,
        full_nm: 0.0,
        reserve: 0.0,
        use_of_input: 0.0,
        standing: GearStanding::OverSpeed,
    };
}

/// Every gear on a grade at one speed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// Grade, rise over horizontal run.
    pub grade_pct: f64,
    /// Road speed.
    pub speed_km_h: f64,
    /// What the road takes.
    pub load: RoadLoad,
    /// Output-shaft speed.
    pub output_rpm: f64,
    /// Torque at the output shaft; negative downhill, where the road pushes.
    pub output_nm: f64,
    /// Torque at the output over its rating.
    pub use_of_output: f64,
    /// The gears in the order of the unit; only the first `count` are used.
    pub gears: [GearPull; MAX_OFFERED_GEARS],
    /// Number of gears.
    pub count: u32,
    /// Place of the highest gear that holds with the reserve; [`NO_GEAR`] where none does.
    pub chosen: u32,
    /// Place of the highest gear that holds with the reserve and stays within the ratings: lower than `chosen` where that
    /// one is beyond them, which advises a downshift; [`NO_GEAR`] where no gear does, which advises less speed or less load.
    pub advised: u32,
    /// What the chosen gear is nearest to, or farthest beyond.
    pub limit: PullLimit,
    /// How near: 1 at the limit.
    pub use_of_limit: f64,
}

impl Pull {
    /// The gears in use.
    #[must_use]
    pub fn gears(&self) -> &[GearPull] {
        self.gears.get(..self.count as usize).unwrap_or(&[])
    }

    /// The chosen gear, where one holds.
    #[must_use]
    pub fn chosen_gear(&self) -> Option<GearPull> {
        self.gears().get(self.chosen as usize).copied()
    }
}

impl Rig {
    /// Speed and torque of every gear on a grade at one road speed, lock-up clutch closed, and the gear that holds it.
    ///
    /// T_out = F·r/(i_A·η_A), T_in = T_out/(i·η), n = v·i_A·i/(2π·r), reserve = 1 − T_in/T_full(n)
    ///
    /// * the rig — combination, drive line, η_A and air; i, η and ratings; T_full; reserve and lowest locked speed
    /// * `grade_pct` — rise over run, %; `speed_km_h` — v, 0 to 1000
    /// * returns [`Pull`]: the highest gear that holds with the reserve is chosen, the first of two with the same ratio. Downhill
    ///   the road pushes: torques are negative, T_in = T_out·η/i
    /// * errors: those of [`road_load`], [`Gearing::new`] and the rule
    ///
    /// A locked converter passes the torque of the engine and no more; launch and unlocked driving multiply it. Share of
    /// rating is said of the record's rating. A computed capability is no rating: the vehicle maker's ratings stand.
    ///
    /// Source: road load by SAE J1263, then definitions. Example (computed independently for the demonstration): truck T13 on 3 %
    /// at 88 km/h takes sixth gear at 1.1915 of its unit's rated input torque; fifth would stay within it.
    pub fn pull(&self, grade_pct: f64, speed_km_h: f64) -> Result<Pull> {
        let Self { haul, ref gearing, ref engine, rule } = *self;
        gearing.checked()?;
        engine.check_engine_curve()?;
        let rule = rule.checked()?;
        let load = road_load(haul.combination, haul.air_density_kg_m3, speed_km_h, grade_pct)?;
        let output_nm = haul.driveline.output_torque_nm(load.total_n, haul.axle_efficiency)?;
        let output_rpm = haul.driveline.output_rpm(speed_km_h)?;
        let mut pull = Pull {
            grade_pct,
            speed_km_h,
            load,
            output_rpm,
            output_nm,
            use_of_output: abs(output_nm) / gearing.rated_output_nm,
            gears: [GearPull::NONE; MAX_OFFERED_GEARS],
            count: gearing.count,
            chosen: NO_GEAR,
            advised: NO_GEAR,
            limit: PullLimit::Engine,
            use_of_limit: 0.0,
        };
        let (mut highest, mut highest_within) = (f64::INFINITY, f64::INFINITY);
        for ((place, gear), row) in (0..).zip(gearing.gears()).zip(&mut pull.gears) {
            let ratio = abs(gear.ratio);
            let per_ratio = if output_nm < 0.0 { gear.efficiency } else { 1.0 / gear.efficiency };
            let input_nm = output_nm / ratio * per_ratio;
            let engine_rpm = output_rpm * ratio;
            let full_nm = engine.torque_at_nm(engine_rpm).ok().filter(|_| engine_rpm <= engine.max_rpm);
            let reserve = full_nm.filter(|&full| full > 0.0).map_or(0.0, |full| 1.0 - input_nm / full);
            let standing = if gear.ratio < 0.0 {
                GearStanding::Reverse
            } else if engine_rpm < rule.lowest_locked_rpm {
                GearStanding::BelowLockUp
            } else {
                match full_nm {
                    None => GearStanding::OverSpeed,
                    Some(full) if input_nm <= (1.0 - rule.torque_reserve) * full => GearStanding::Holds,
                    Some(full) if input_nm <= full => GearStanding::LittleReserve,
                    Some(_) => GearStanding::TooWeak,
                }
            };
            let use_of_input = abs(input_nm) / gearing.rated_nm(gear.ratio);
            *row = GearPull {
                ratio: gear.ratio,
                engine_rpm,
                input_nm,
                full_nm: full_nm.unwrap_or(0.0),
                reserve,
                use_of_input,
                standing,
            };
            if standing == GearStanding::Holds {
                if ratio < highest {
                    (highest, pull.chosen) = (ratio, place);
                    (pull.limit, pull.use_of_limit) = nearest(*row, pull.use_of_output);
                }
                if ratio < highest_within && use_of_input <= 1.0 && pull.use_of_output <= 1.0 {
                    (highest_within, pull.advised) = (ratio, place);
                }
            }
        }
        Ok(pull)
    }

    /// As [`Rig::pull`], slower by a step at a time until a gear holds with the reserve: how a driver loses speed on a grade.
    ///
    /// v = v₀ − k·step, k = 0, 1, 2… until a gear holds
    ///
    /// * `speed_km_h` — v₀, the speed asked for; the rule's step is at least a thousandth of it
    /// * errors: as [`Rig::pull`]; [`Error::NoAnswer`] where no gear holds at any speed with the lock-up clutch closed
    ///
    /// Source: definition.
    pub fn pull_slowed(&self, grade_pct: f64, speed_km_h: f64) -> Result<Pull> {
        let step_km_h = self.rule.checked()?.speed_step_km_h;
        within("speed_step_km_h", step_km_h, speed_km_h / 1000.0, f64::MAX)?;
        let mut steps = 0.0;
        loop {
            let slower = speed_km_h - steps * step_km_h;
            if steps > 0.0 && slower <= 0.0 {
                return Err(Error::NoAnswer {
                    name: "gear",
                    why: "no gear holds this grade at any speed with the lock-up clutch closed; see unlocked_pull, or take off load",
                });
            }
            let pull = self.pull(grade_pct, slower)?;
            if pull.chosen != NO_GEAR {
                return Ok(pull);
            }
            steps += 1.0;
        }
    }
}

/// The limit that a gear is nearest to.
fn nearest(gear: GearPull, use_of_output: f64) -> (PullLimit, f64) {
    let of_engine = 1.0 - gear.reserve;
    if gear.use_of_input >= use_of_output && gear.use_of_input >= of_engine {
        (PullLimit::Input, gear.use_of_input)
    } else if use_of_output >= of_engine {
        (PullLimit::Output, use_of_output)
    } else {
        (PullLimit::Engine, of_engine)
    }
}
