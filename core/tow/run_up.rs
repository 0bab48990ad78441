//! Acceleration through the gears, converter open or locked.

use super::inertia::equivalent_mass;
use crate::card::{self, Card, symbol};
use crate::converter::{Characteristic, EngineCurve, EngineToday, operating_point};
use crate::error::{Error, Result, positive, within};
use crate::road::{Combination, Driveline, road_load};

pub(super) const RUN_UP: Card = Card {
    id: "tow.run_up",
    purpose: "Time and distance from one speed to another through the gears at full throttle",
    equation: "t = ∫ m_e/(F − F_road) dv + n·t_s, x = ∫ v·m_e/(F − F_road) dv + n·t_s·v; F of the gear that accelerates most, no more than the grip",
    symbols: &[
        symbol("t, x", "time_s, distance_m", "s, m"),
        symbol("v", "speed, from the first of the two to the second (in m/s)", "km/h"),
        symbol("m_e", "tow.equivalent_mass in the gear", "kg"),
        symbol("F, F_road", "force of the driven wheels, road.road_load", "N"),
        symbol("n, t_s", "shifts, shift_s", "1, s"),
    ],
    range: "400 equal steps of speed, midpoint rule; converter matched at every speed as if steady, the engine's inertia counted where it is locked; the quickest choice of gears: a shift program may be slower, and in a shift the speed stands still",
    source: &card::DEFINITION,
    locator: "Newton's second law",
};

/// Steps of the integration.
const STEPS: u32 = 400;

/// Most gears.
pub const RUN_UP_GEARS: usize = 16;

/// A gear as the run-up needs it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunUpGear {
    /// Ratio, input over output, above 0.
    pub ratio: f64,
    /// Efficiency, above 0 to 1.
    pub efficiency: f64,
    /// Inertia of the train in this gear at its output, kg·m²: [`super::output_inertia_kg_m2`], the turbine counted.
    pub output_inertia_kg_m2: f64,
    /// The lock-up clutch may close in this gear.
    pub lockable: bool,
}

/// A combination that accelerates at full throttle.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunUp {
    /// Mass, rolling and drag.
    pub combination: Combination,
    /// Axle, transfer case and tire.
    pub driveline: Driveline,
    /// Efficiency of axle and transfer case, above 0 to 1.
    pub axle_efficiency: f64,
    /// Density of the air, kg/m³.
    pub air_density_kg_m3: f64,
    /// Grade, %; 0 on the level, −100 to 100.
    pub grade_pct: f64,
    /// All wheels together, kg·m².
    pub wheel_inertia_kg_m2: f64,
    /// Engine with impeller, kg·m².
    pub engine_inertia_kg_m2: f64,
    /// What the engine gives today of its curve: altitude, accessories.
    pub today: EngineToday,
    /// Lowest engine speed with the lock-up clutch closed, 1/min.
    pub lowest_locked_rpm: f64,
    /// Force at which the driven tires slip, N; infinite where it is not looked at.
    pub grip_n: f64,
    /// Time of a shift, in which the speed stands still, s.
    pub shift_s: f64,
}

/// A run-up.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunUpTime {
    /// The speed asked for is reached.
    pub reaches: bool,
    /// Speed at the end, km/h: the one asked for, or where nothing is left to accelerate with.
    pub reached_km_h: f64,
    /// Time to that speed, s.
    pub time_s: f64,
    /// Distance to that speed, m.
    pub distance_m: f64,
    /// Shifts on the way.
    pub shifts: u32,
    /// Position of the last gear.
    pub last_gear: u32,
    /// Force of the driven wheels at the start, N, tire grip counted.
    pub start_n: f64,
    /// Acceleration at the start, m/s².
    pub start_m_s2: f64,
}

/// What a gear gives at a speed.
#[derive(Clone, Copy)]
struct Best {
    gear: u32,
    force_n: f64,
    acceleration_m_s2: f64,
}

/// Torque of the turbine with the converter open, N·m, at a turbine speed; None where engine and converter do not settle within
/// their tables.
fn open_turbine_nm(
    engine: &EngineCurve,
    today: EngineToday,
    converter: &Characteristic,
    turbine_rpm: f64,
) -> Result<Option<f64>> {
    match operating_point(engine, today, converter, turbine_rpm) {
        Ok(point) => Ok(Some(point.turbine_nm)),
        Err(Error::NoAnswer { .. } | Error::OutOfRange { name: "turbine_rpm", .. }) => Ok(None),
        Err(other) => Err(other),
    }
}

/// First and last point in use.
fn ends(values: &[f64], points: u32) -> [f64; 2] {
    let last = values.iter().take(points as usize).next_back();
    [values.first().copied().unwrap_or(0.0), last.copied().unwrap_or(0.0)]
}

impl RunUp {
    /// The gear that accelerates most at a speed, if any can be used there.
    fn best(
        &self,
        engine: &EngineCurve,
        converter: &Characteristic,
        gears: &[RunUpGear],
        speed_km_h: f64,
    ) -> Result<Option<Best>> {
        let output_rpm = self.driveline.output_rpm(speed_km_h)?;
        let road_n = road_load(self.combination, self.air_density_kg_m3, speed_km_h, self.grade_pct)?.total_n;
        let [first, last] = ends(&engine.speed_rpm, engine.points);
        let mut best: Option<Best> = None;
        for (gear, entry) in (0_u32..).zip(gears) {
            let input_rpm = entry.ratio * output_rpm;
            let locks = entry.lockable && input_rpm >= self.lowest_locked_rpm.max(first) && input_rpm <= last;
            let locked = if locks {
                Some(self.today.torque_factor * engine.torque_at_nm(input_rpm)? - self.today.accessory_nm)
            } else {
                None
            };
            let open = open_turbine_nm(engine, self.today, converter, input_rpm)?;
            let engine_there = self.engine_inertia_kg_m2 * entry.ratio * entry.ratio;
            for (torque_nm, engine_kg_m2) in [(open, 0.0), (locked, engine_there)] {
                let Some(torque_nm) = torque_nm else { continue };
                let output_nm = torque_nm * entry.ratio * entry.efficiency;
                let force_n = self.driveline.tractive_force_n(output_nm, self.axle_efficiency)?.min(self.grip_n);
                let inertia = entry.output_inertia_kg_m2 + engine_kg_m2;
                let mass =
                    equivalent_mass(self.combination.mass_kg, self.driveline, self.wheel_inertia_kg_m2, inertia)?;
                let acceleration_m_s2 = (force_n - road_n) / mass.total_kg;
                if best.is_none_or(|pull| acceleration_m_s2 > pull.acceleration_m_s2) {
                    best = Some(Best { gear, force_n, acceleration_m_s2 });
                }
            }
        }
        Ok(best)
    }

    /// Time and distance from one speed to another through the gears at full throttle.
    ///
    /// t = ∫ m_e/(F − F_road) dv + n·t_s, x = ∫ v·m_e/(F − F_road) dv + n·t_s·v
    ///
    /// * `engine`, `converter` — curve and characteristic; `gears` — 1 to 16
    /// * the speeds — `from_km_h`, 0 or more, and `to_km_h`, not below it, to 300
    /// * returns [`RunUpTime`]: where the speed is not reached it says how far it gets
    /// * errors: [`Error::Count`], [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::NoAnswer`] where no gear can be
    ///   used at the start
    ///
    /// Source: Newton's second law (derived).
    pub fn run_up(
        &self,
        engine: &EngineCurve,
        converter: &Characteristic,
        gears: &[RunUpGear],
        [from_km_h, to_km_h]: [f64; 2],
    ) -> Result<RunUpTime> {
        engine.check_engine_curve()?;
        converter.check_characteristic()?;
        self.checked(gears)?;
        let from = within("from_km_h", from_km_h, 0.0, 300.0)?;
        let to = within("to_km_h", to_km_h, from, 300.0)?;
        let start = self.best(engine, converter, gears, from)?.ok_or(Error::NoAnswer {
            name: "from_km_h",
            why: "no gear can be used at this speed: the engine curve or the characteristic says nothing there",
        })?;
        let step_m_s = (to - from) / 3.6 / f64::from(STEPS);
        let mut run = RunUpTime {
            reaches: true,
            reached_km_h: from,
            time_s: 0.0,
            distance_m: 0.0,
            shifts: 0,
            last_gear: start.gear,
            start_n: start.force_n,
            start_m_s2: start.acceleration_m_s2,
        };
        for step in 0..STEPS {
            let middle_m_s = from / 3.6 + (f64::from(step) + 0.5) * step_m_s;
            let pull = self.best(engine, converter, gears, middle_m_s * 3.6)?;
            let Some(pull) = pull.filter(|pull| pull.acceleration_m_s2 > 0.0) else {
                run.reaches = false;
                return Ok(run);
            };
            let mut time_s = step_m_s / pull.acceleration_m_s2;
            if pull.gear != run.last_gear {
                time_s += self.shift_s;
                run.shifts += 1;
                run.last_gear = pull.gear;
            }
            run.time_s += time_s;
            run.distance_m += middle_m_s * time_s;
            run.reached_km_h = from + 3.6 * f64::from(step + 1) * step_m_s;
        }
        Ok(run)
    }

    fn checked(&self, gears: &[RunUpGear]) -> Result<()> {
        if !(1..=RUN_UP_GEARS).contains(&gears.len()) {
            let count = u32::try_from(gears.len()).unwrap_or(u32::MAX);
            return Err(Error::Count { name: "gears", count, low: 1, high: RUN_UP_GEARS as u32 });
        }
        for gear in gears {
            positive("ratio", within("ratio", gear.ratio, 0.0, 100.0)?)?;
            positive("efficiency", within("efficiency", gear.efficiency, 0.0, 1.0)?)?;
            within("output_inertia_kg_m2", gear.output_inertia_kg_m2, 0.0, 1e6)?;
        }
        within("engine_inertia_kg_m2", self.engine_inertia_kg_m2, 0.0, 1e6)?;
        positive("torque_factor", within("torque_factor", self.today.torque_factor, 0.0, 2.0)?)?;
        within("accessory_nm", self.today.accessory_nm, -1e6, 1e6)?;
        within("lowest_locked_rpm", self.lowest_locked_rpm, 0.0, 1e5)?;
        within("shift_s", self.shift_s, 0.0, 60.0)?;
        within("grade_pct", self.grade_pct, -100.0, 100.0)?;
        if self.grip_n.is_nan() || self.grip_n <= 0.0 {
            return Err(Error::NotPositive { name: "grip_n", value: self.grip_n });
        }
        Ok(())
    }
}
