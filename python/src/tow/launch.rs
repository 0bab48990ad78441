//! Launch on a grade, grip of the driven tires, rotating inertia, run-up through the gears.

use std::collections::BTreeMap;

use pyo3::prelude::*;
use trainwright::tow as core;

use crate::class::class;
use crate::converter::{Characteristic, EngineCurve, EngineToday};
use crate::error::{answer, refuse};
use crate::judge::{Budget, Judgment, Reading, Rule};
use crate::road::{Combination, Driveline};
use crate::train::State;

class! {
    /// A combination at the point of moving up a grade.
    "trainwright.tow" Launch = core::Launch {
        /// Turbine torque at stall, N·m: engine torque × torque ratio.
        turbine_nm: Reading,
        /// Gear ratio, input over output; negative in reverse.
        gear_ratio: f64,
        /// Efficiency of the gear, above 0 to 1.
        gear_efficiency: f64,
        /// Axle, transfer case and tire.
        driveline: Driveline,
        /// Efficiency of axle and transfer case, above 0 to 1.
        axle_efficiency: f64,
        /// Truck and trailer, kg.
        mass_kg: Reading,
        /// Rolling resistance over weight.
        rolling_coefficient: f64,
        /// What breaking away takes on top, over weight: cold tires, soft ground; 0 where it is not counted.
        break_away_coefficient: f64 = 0.0,
    }
}

class! {
    /// Whether a combination moves up a grade, and what that rests on. Not what may be pulled.
    "trainwright.tow" LaunchForce = core::LaunchForce, explained by ["tow.launch"], judged in "N",
        inputs ["turbine torque", "tire", "mass"] {
        /// Torque at the transmission output, N·m.
        output_nm: f64,
        /// Force of the driven wheels, N.
        tractive_n: f64,
        /// Share of the weight along the grade, N.
        grade_n: f64,
        /// Rolling and break-away, N.
        rolling_n: f64,
        /// Both: what it takes, N.
        needed_n: f64,
        /// What is left to accelerate with, N; negative where it does not move.
        left_n: f64,
        /// That it moves.
        judgment: Judgment,
        /// Where the uncertainty comes from: turbine torque, tire, mass, in this order.
        budget: Budget,
        /// Grade at which the best estimate just moves, %; 100 for that or steeper, 0 where it does not move on the level.
        largest_grade_pct: f64,
        /// Largest grade that is a GO under the rule, %.
        proven_grade_pct: f64,
    }
}

class! {
    /// How a rear-driven truck and its trailer stand on a grade.
    "trainwright.tow" Stance = core::Stance {
        /// Load of the driven rear axle on the level, kg, the hitch load counted.
        driven_axle_kg: f64,
        /// Truck, kg.
        truck_kg: f64,
        /// Trailer, kg; 0 without one.
        trailer_kg: f64,
        /// Wheelbase, mm.
        wheelbase_mm: f64,
        /// Height of the truck's center of gravity, mm; 0 leaves its shift out.
        cg_height_mm: f64 = 0.0,
        /// Height of the ball or pin, mm; 0 leaves the pull of the trailer out.
        hitch_height_mm: f64 = 0.0,
        /// The driven axle is the upper one: the truck climbs backward.
        tail_up: bool = false,
    }
}

class! {
    /// What the tires of the driven axle carry on a grade.
    "trainwright.tow" LaunchGrip = core::LaunchGrip, explained by ["tow.grip_on_grade"] {
        /// Load that the grade shifts to the rear axle per unit of sin θ, kg; negative tail up.
        shift_kg: f64,
        /// Force of the ground on the axle, N.
        normal_n: f64,
        /// Force at which its tires slip, N.
        grip_n: f64,
        /// What it takes to move, N.
        needed_n: f64,
        /// Grade at which the tires slip, %; 100 for that or steeper, 0 where they slip on the level.
        largest_grade_pct: f64,
    }
}

class! {
    /// Mass that a force accelerates, and what it is made of.
    "trainwright.tow" EquivalentMass = core::EquivalentMass, explained by ["tow.equivalent_mass"] {
        /// What the wheels add, kg.
        wheels_kg: f64,
        /// What transmission, and engine where it is locked to it, add, kg.
        train_kg: f64,
        /// All, kg.
        total_kg: f64,
        /// All over the mass that stands on the scale.
        factor: f64,
    }
}

class! {
    /// A gear as the run-up needs it.
    "trainwright.tow" RunUpGear = core::RunUpGear {
        /// Ratio, input over output, above 0.
        ratio: f64,
        /// Efficiency, above 0 to 1.
        efficiency: f64,
        /// Inertia of the train in this gear at its output, kg·m², the turbine counted.
        output_inertia_kg_m2: f64,
        /// The lock-up clutch may close in this gear.
        lockable: bool,
    }
}

class! {
    /// A combination that accelerates at full throttle.
    "trainwright.tow" RunUp = core::RunUp {
        /// Mass, rolling and drag.
        combination: Combination,
        /// Axle, transfer case and tire.
        driveline: Driveline,
        /// Efficiency of axle and transfer case, above 0 to 1.
        axle_efficiency: f64,
        /// Density of the air, kg/m³.
        air_density_kg_m3: f64,
        /// Grade, %; −100 to 100.
        grade_pct: f64 = 0.0,
        /// All wheels together, kg·m².
        wheel_inertia_kg_m2: f64,
        /// Engine with impeller, kg·m².
        engine_inertia_kg_m2: f64,
        /// What the engine gives today of its curve: altitude, accessories; as measured unless given.
        today: EngineToday = trainwright::converter::EngineToday::AS_MEASURED,
        /// Lowest engine speed with the lock-up clutch closed, 1/min.
        lowest_locked_rpm: f64,
        /// Force at which the driven tires slip, N; infinite where it is not looked at.
        grip_n: f64 = f64::INFINITY,
        /// Time of a shift, in which the speed stands still, s.
        shift_s: f64,
    }
}

class! {
    /// A run-up.
    "trainwright.tow" RunUpTime = core::RunUpTime, explained by ["tow.run_up"] {
        /// The speed asked for is reached.
        reaches: bool,
        /// Speed at the end, km/h: the one asked for, or where nothing is left to accelerate with.
        reached_km_h: f64,
        /// Time to that speed, s.
        time_s: f64,
        /// Distance to that speed, m.
        distance_m: f64,
        /// Shifts on the way.
        shifts: u32,
        /// Position of the last gear.
        last_gear: u32,
        /// Force of the driven wheels at the start, N, tire grip counted.
        start_n: f64,
        /// Acceleration at the start, m/s².
        start_m_s2: f64,
    }
}

#[pymethods]
impl Launch {
    /// Force of the driven wheels at stall against what it takes to move the combination up a grade. What the force allows is
    /// not what may be pulled. Source: follows from the definitions (equilibrium at the point of moving).
    #[pyo3(signature = (*, grade_pct, rule))]
    fn launch(&self, grade_pct: f64, rule: Rule) -> PyResult<LaunchForce> {
        answer(self.0.launch(grade_pct, rule.into()))
    }
}

/// Force at which the tires of the driven rear axle slip on a grade, and the grade on which they do.
/// Source: follows from the definitions (friction of an axle, moments about the front axle).
///
/// >>> stance = Stance(driven_axle_kg=2500, truck_kg=4200, trailer_kg=6000, wheelbase_mm=3800)
/// >>> round(grip_on_grade(stance, grade_pct=12, tire_friction=0.7, rolling_coefficient=0.011).largest_grade_pct, 1)
/// 16.1
#[pyfunction]
#[pyo3(signature = (stance, *, grade_pct, tire_friction, rolling_coefficient))]
pub fn grip_on_grade(
    stance: Stance,
    grade_pct: f64,
    tire_friction: f64,
    rolling_coefficient: f64,
) -> PyResult<LaunchGrip> {
    answer(core::grip_on_grade(stance.into(), grade_pct, tire_friction, rolling_coefficient))
}

/// Moment of inertia, kg·m², of a whole gear train in a gear, referred to its output. `inertia_kg_m2` maps members to theirs;
/// a member that is not named has none. Source: follows from the definitions (kinetic energy of the members).
#[pyfunction]
pub fn output_inertia_kg_m2(state: PyRef<'_, State>, inertia_kg_m2: BTreeMap<String, f64>) -> PyResult<f64> {
    let members = &state.train().members;
    if let Some(unknown) = inertia_kg_m2.keys().find(|name| !members.contains(name)) {
        let known = members.join(", ");
        return Err(refuse(
            "MISSING",
            "inertia_kg_m2",
            format!("inertia_kg_m2: the train has no member {unknown:?}; it has {known}"),
        ));
    }
    let inertias: Vec<f64> = members.iter().map(|name| inertia_kg_m2.get(name).copied().unwrap_or(0.0)).collect();
    answer(core::output_inertia_kg_m2(state.solved(), &inertias))
}

/// Mass that the force of the driven wheels accelerates, rotating parts counted.
/// Source: follows from the definitions (kinetic energy of what turns).
#[pyfunction]
#[pyo3(signature = (driveline, *, mass_kg, wheel_inertia_kg_m2, output_inertia_kg_m2))]
pub fn equivalent_mass(
    driveline: Driveline,
    mass_kg: f64,
    wheel_inertia_kg_m2: f64,
    output_inertia_kg_m2: f64,
) -> PyResult<EquivalentMass> {
    answer(core::equivalent_mass(mass_kg, driveline.into(), wheel_inertia_kg_m2, output_inertia_kg_m2))
}

#[pymethods]
impl RunUp {
    /// Time and distance from one speed to another through the gears at full throttle: the quickest choice of gears, so a shift
    /// program may be slower. Where the speed is not reached it says how far it gets.
    /// Source: follows from the definitions (Newton's second law).
    #[pyo3(signature = (engine, converter, gears, *, from_km_h, to_km_h))]
    fn run_up(
        &self,
        py: Python<'_>,
        engine: PyRef<'_, EngineCurve>,
        converter: PyRef<'_, Characteristic>,
        gears: Vec<RunUpGear>,
        from_km_h: f64,
        to_km_h: f64,
    ) -> PyResult<RunUpTime> {
        let gears: Vec<core::RunUpGear> = gears.into_iter().map(Into::into).collect();
        let (engine, converter) = (engine.0, converter.0);
        answer(py.detach(|| self.0.run_up(&engine, &converter, &gears, [from_km_h, to_km_h])))
    }
}
