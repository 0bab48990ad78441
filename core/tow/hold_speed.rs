//! How fast a grade can be taken at most.

use super::pull::{GearRule, Rig};
use crate::card::{self, Card, symbol};
use crate::converter::EngineCurve;
use crate::error::{Error, Result, positive, within};
use crate::real::{abs, sqrt};
use crate::road::road_load;

pub(super) const LARGEST_SPEED: Card = Card {
    id: "tow.largest_speed",
    purpose: "Largest speed at which a locked gear holds a grade, with the reserve and, if asked, within the ratings",
    equation: "T_in(v) = min((1 − reserve)·T_full(n), T_rated), n = v·i_A·i/(2·π·r)",
    symbols: &[
        symbol("v", "speed_km_h", "km/h"),
        symbol("T_in", "input_nm, which grows with the square of the speed", "N·m"),
        symbol("reserve", "rule.torque_reserve", "1"),
        symbol("T_full", "full-throttle torque of the engine, straight between its points", "N·m"),
        symbol("T_rated", "gearing.rated_input_nm, and what gearing.rated_output_nm allows", "N·m"),
        symbol("n", "engine_rpm", "1/min"),
        symbol("i_A, i, r", "haul.driveline, ratio of the gear, rolling radius", "1, 1, m"),
    ],
    range: "as tow.pull; solved exactly between two points of the engine's table",
    source: &card::DEFINITION,
    locator: "road load carried back to the engine, solved for the speed",
};

/// What keeps a combination from going faster.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpeedLimit {
    /// Nothing does: it is the greatest speed that was asked for.
    Asked,
    /// Torque of the engine, less the reserve.
    EngineTorque,
    /// Greatest speed of the engine, or the end of its table, in the only gear that pulls.
    EngineSpeed,
    /// Rated torque at the input.
    RatedInput,
    /// Rated torque at the output.
    RatedOutput,
}

/// The largest speed on a grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LargestSpeed {
    /// Road speed.
    pub speed_km_h: f64,
    /// Place of the gear.
    pub gear: u32,
    /// Engine speed.
    pub engine_rpm: f64,
    /// Torque at the input.
    pub input_nm: f64,
    /// The same over its rating.
    pub use_of_input: f64,
    /// Torque at the output over its rating.
    pub use_of_output: f64,
    /// What keeps it from going faster.
    pub limit: SpeedLimit,
}

/// Torque at the input of one gear against the road speed: k·(a + b·v²).
#[derive(Clone, Copy)]
struct Demand {
    per_newton_nm: f64,
    still_n: f64,
    per_square_n: f64,
}

impl Demand {
    fn at(self, speed_km_h: f64) -> f64 {
        self.per_newton_nm * (self.still_n + self.per_square_n * speed_km_h * speed_km_h)
    }

    /// Speed at which it reaches a torque; below 0 where it is above it at rest, infinite where it never is.
    fn speed_at(self, torque_nm: f64) -> f64 {
        let square = (torque_nm / self.per_newton_nm - self.still_n) / self.per_square_n;
        if square.is_nan() || self.per_square_n <= 0.0 {
            return if self.at(0.0) <= torque_nm { f64::INFINITY } else { -1.0 };
        }
        if square < 0.0 { -1.0 } else { sqrt(square) }
    }
}

impl Rig {
    /// Largest speed at which a locked gear holds a grade with the reserve.
    ///
    /// T_in(v) = min((1 − reserve)·T_full(n), T_rated), n = v·i_A·i/(2π·r)
    ///
    /// * `grade_pct` — as [`Rig::pull`]; `at_most_km_h` — no faster than this, above 0; `within_ratings` — the ratings of the unit hold, too
    /// * returns [`LargestSpeed`]; at a limit of torque that torque is met to rounding
    /// * errors: as [`Rig::pull`]; [`Error::NoAnswer`] where no locked gear holds the grade
    ///
    /// What the engine holds is not what may be pulled, and not what brakes hold downhill.
    ///
    /// Source: as [`Rig::pull`], solved for the speed.
    pub fn largest_speed(&self, grade_pct: f64, at_most_km_h: f64, within_ratings: bool) -> Result<LargestSpeed> {
        let Self { haul, ref gearing, ref engine, rule } = *self;
        gearing.checked()?;
        engine.check_engine_curve()?;
        let GearRule { torque_reserve, lowest_locked_rpm, .. } = rule.checked()?;
        let at_most_km_h = positive("at_most_km_h", within("at_most_km_h", at_most_km_h, 0.0, 1000.0)?)?;
        let load = |speed| Ok(road_load(haul.combination, haul.air_density_kg_m3, speed, grade_pct)?.total_n);
        let still_n: f64 = load(0.0)?;
        let per_square_n = (load(at_most_km_h)? - still_n) / (at_most_km_h * at_most_km_h);
        let output_per_newton = haul.driveline.output_torque_nm(1.0, haul.axle_efficiency)?;
        let output_per_km_h = haul.driveline.output_rpm(1.0)?;
        let output = Demand { per_newton_nm: output_per_newton, still_n, per_square_n };
        let rated = |demand: Demand, torque_nm| if within_ratings { demand.speed_at(torque_nm) } else { f64::INFINITY };
        let of_output = rated(output, gearing.rated_output_nm);

        let mut best: Option<LargestSpeed> = None;
        let mut best_ratio = f64::INFINITY;
        for (place, gear) in (0..).zip(gearing.gears()).filter(|(_, gear)| gear.ratio > 0.0) {
            let demand = Demand { per_newton_nm: output_per_newton / (gear.ratio * gear.efficiency), ..output };
            let of_input = rated(demand, gearing.rated_input_nm);
            let mut limit = SpeedLimit::Asked;
            let mut top = at_most_km_h;
            for (speed, what) in [(of_input, SpeedLimit::RatedInput), (of_output, SpeedLimit::RatedOutput)] {
                if speed < top {
                    (top, limit) = (speed, what);
                }
            }
            let rpm_per_km_h = output_per_km_h * gear.ratio;
            let climbing =
                Climbing { demand, share: 1.0 - torque_reserve, lowest_rpm: lowest_locked_rpm, rpm_per_km_h };
            let Some((speed_km_h, found)) = climbing.fastest(engine, top) else {
                continue;
            };
            let better = best.is_none_or(|best| {
                speed_km_h > best.speed_km_h || (speed_km_h >= best.speed_km_h && gear.ratio < best_ratio)
            });
            if better {
                best_ratio = gear.ratio;
                let drive_nm = demand.at(speed_km_h);
                let input_nm = if drive_nm < 0.0 { drive_nm * gear.efficiency * gear.efficiency } else { drive_nm };
                best = Some(LargestSpeed {
                    speed_km_h,
                    gear: place,
                    engine_rpm: rpm_per_km_h * speed_km_h,
                    input_nm,
                    use_of_input: abs(input_nm) / gearing.rated_input_nm,
                    use_of_output: abs(output.at(speed_km_h)) / gearing.rated_output_nm,
                    limit: found.unwrap_or(limit),
                });
            }
        }
        best.ok_or(Error::NoAnswer {
        name: "speed_km_h",
        why: "no gear holds this grade at any speed with the lock-up clutch closed; see unlocked_pull, or take off load",
    })
    }
}

/// A gear under load.
#[derive(Clone, Copy)]
struct Climbing {
    demand: Demand,
    share: f64,
    lowest_rpm: f64,
    rpm_per_km_h: f64,
}

impl Climbing {
    /// The fastest that the gear goes, no faster than `top`, and what stopped it short of that.
    fn fastest(self, engine: &EngineCurve, top: f64) -> Option<(f64, Option<SpeedLimit>)> {
        let Self { demand, share, lowest_rpm, rpm_per_km_h } = self;
        let count = engine.points.saturating_sub(1) as usize;
        let points = engine.speed_rpm.iter().zip(&engine.torque_nm).take(engine.points as usize);
        let lines = points.clone().zip(points.skip(1)).take(count);
        let mut found = None;
        let mut end_km_h = 0.0;
        for ((&from_rpm, &from_nm), (&to_rpm, &to_nm)) in lines {
            let low = from_rpm.max(lowest_rpm) / rpm_per_km_h;
            let high = to_rpm / rpm_per_km_h;
            end_km_h = high;
            let high = high.min(top);
            if low > high {
                continue;
            }
            // (1 − reserve)·T_full − T_in = a + b·v − c·v²
            let slope = share * (to_nm - from_nm) / (to_rpm - from_rpm);
            let a = share * from_nm - slope * from_rpm - demand.per_newton_nm * demand.still_n;
            let b = slope * rpm_per_km_h;
            let c = demand.per_newton_nm * demand.per_square_n;
            let surplus = |v: f64| a + (b - c * v) * v;
            if surplus(high) >= 0.0 {
                found = Some((high, None));
                continue;
            }
            let root = if c > 0.0 { (b + sqrt(b * b + 4.0 * a * c)) / (2.0 * c) } else { -a / b };
            if root >= low && root < high {
                found = Some((root, Some(SpeedLimit::EngineTorque)));
            }
        }
        let (speed, limit) = found?;
        let at_end = limit.is_none() && speed < top && speed >= end_km_h;
        let dropped = limit.is_none() && speed < top && speed < end_km_h;
        let limit = if at_end {
            Some(SpeedLimit::EngineSpeed)
        } else if dropped {
            Some(SpeedLimit::EngineTorque)
        } else {
            limit
        };
        Some((speed, limit))
    }
}
