//! Launch on a grade, grip of the driven tires, rotating inertia, run-up through the gears.

use crate::pointer::{borrow, core, put, read, slice};
use crate::status::Status;
use trainwright::converter::{Characteristic, EngineCurve};
use trainwright::judge::Rule;
use trainwright::road::Driveline;
use trainwright::tow::{self, EquivalentMass, Launch, LaunchForce, LaunchGrip, RunUp, RunUpGear, RunUpTime, Stance};
use trainwright::train::State;

/// Force of the driven wheels at stall against what it takes to move a combination up a grade. Not what may be pulled.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_launch(
    launch: *const Launch,
    grade_pct: f64,
    rule: *const Rule,
    out_force: *mut LaunchForce,
) -> Status {
    unsafe { put(out_force, || core(read(launch)?.launch(grade_pct, read(rule)?))) }
}

/// Force at which the tires of the driven rear axle slip on a grade, and the grade on which they do.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_grip_on_grade(
    stance: *const Stance,
    grade_pct: f64,
    tire_friction: f64,
    rolling_coefficient: f64,
    out_grip: *mut LaunchGrip,
) -> Status {
    unsafe { put(out_grip, || core(tow::grip_on_grade(read(stance)?, grade_pct, tire_friction, rolling_coefficient))) }
}

/// Moment of inertia, kg·m², of a whole gear train in a gear, referred to its output; one inertia for each member in order.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_output_inertia_kg_m2(
    state: *const State,
    inertia_kg_m2: *const f64,
    members: usize,
    out_inertia_kg_m2: *mut f64,
) -> Status {
    unsafe {
        put(out_inertia_kg_m2, || core(tow::output_inertia_kg_m2(borrow(state)?, slice(inertia_kg_m2, members)?)))
    }
}

/// Mass that the force of the driven wheels accelerates, rotating parts counted.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_equivalent_mass(
    mass_kg: f64,
    driveline: *const Driveline,
    wheel_inertia_kg_m2: f64,
    output_inertia_kg_m2: f64,
    out_mass: *mut EquivalentMass,
) -> Status {
    unsafe {
        put(out_mass, || {
            core(tow::equivalent_mass(mass_kg, read(driveline)?, wheel_inertia_kg_m2, output_inertia_kg_m2))
        })
    }
}

/// Time and distance from one speed to another through the gears at full throttle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_run_up(
    run: *const RunUp,
    engine: *const EngineCurve,
    converter: *const Characteristic,
    gears: *const RunUpGear,
    gear_count: usize,
    from_km_h: f64,
    to_km_h: f64,
    out_time: *mut RunUpTime,
) -> Status {
    unsafe {
        put(out_time, || {
            let gears = slice(gears, gear_count)?;
            core(borrow(run)?.run_up(borrow(engine)?, borrow(converter)?, gears, [from_km_h, to_km_h]))
        })
    }
}
