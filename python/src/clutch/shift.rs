//! How a slip ends, and the work of a shift.

use pyo3::prelude::*;
use trainwright::clutch as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::answer;

class! {
    /// Two inertias that a slipping clutch pulls together; all values referred to the clutch.
    ///
    /// >>> Slip(input_inertia_kg_m2=4, output_inertia_kg_m2=2, input_speed_rpm=60, output_speed_rpm=0,
    /// ...      clutch_torque_nm=100).slip_end().final_speed_rpm
    /// 40.0
    "trainwright.clutch" Slip = core::Slip {
        /// Inertia on the input side, kg·m².
        input_inertia_kg_m2: f64,
        /// Inertia on the output side, kg·m².
        output_inertia_kg_m2: f64,
        /// Speed of the input side, 1/min.
        input_speed_rpm: f64,
        /// Speed of the output side, 1/min.
        output_speed_rpm: f64,
        /// Torque of the slipping clutch, N·m: from dynamic friction.
        clutch_torque_nm: f64,
        /// Torque that drives the input side forward, N·m.
        drive_torque_nm: f64 = 0.0,
        /// Torque that holds the output side back, N·m.
        load_torque_nm: f64 = 0.0,
    }
}

class! {
    /// A slip while something holds the input side at constant speed.
    "trainwright.clutch" HeldInput = core::HeldInput {
        /// Inertia on the output side, kg·m².
        output_inertia_kg_m2: f64,
        /// Speed of the input side, 1/min.
        input_speed_rpm: f64,
        /// Speed of the output side, 1/min.
        output_speed_rpm: f64,
        /// Torque of the slipping clutch, N·m.
        clutch_torque_nm: f64,
        /// Torque that holds the output side back, N·m.
        load_torque_nm: f64 = 0.0,
    }
}

class! {
    /// How a slip ends.
    "trainwright.clutch" SlipEnd = core::SlipEnd, explained by ["clutch.slip_end", "clutch.held_input_end"] {
        /// The slip reaches zero. If not, the time is infinite, and final speed and works are 0 and mean nothing.
        locks: bool,
        /// The same clutch torque also keeps it locked.
        stays_locked: bool,
        /// Rate at which the slip shrinks, (1/min)/s; 0 or less: it never locks.
        slip_shrinks_rpm_s: f64,
        /// Time to lock-up, s.
        time_s: f64,
        /// Common speed at lock-up, 1/min.
        final_speed_rpm: f64,
        /// Heat at the faces, J.
        energy_j: f64,
        /// Heat flow at the start, kW.
        start_heat_kw: f64,
        /// Work that the input side took in from outside, J.
        drive_work_j: f64,
        /// Work that the output side gave to its load, J.
        load_work_j: f64,
        /// Torque through the clutch once locked, N·m.
        locked_torque_nm: f64,
    }
}

#[pymethods]
impl Slip {
    /// Time, common speed and energy; "never locks" is an answer.
    /// Source: Shigley, chapter 16, energy considerations; with outside torques from Newton's second law.
    fn slip_end(&self) -> PyResult<SlipEnd> {
        answer(self.0.slip_end())
    }
}

#[pymethods]
impl HeldInput {
    /// Time and energy; without load the energy is I ω²/2, whatever the clutch torque.
    /// Source: follows from the definitions (clutch.slip_end with an endless input inertia).
    fn held_input_end(&self) -> PyResult<SlipEnd> {
        answer(self.0.held_input_end())
    }
}

/// Inertia of a shaft, kg·m², as a shaft feels it against which it turns `speed_ratio` times as fast.
#[pyfunction]
#[pyo3(signature = (*, inertia_kg_m2, speed_ratio, out = None))]
pub fn referred_inertia_kg_m2<'py>(
    py: Python<'py>,
    inertia_kg_m2: Input<'py>,
    speed_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("inertia_kg_m2", inertia_kg_m2), ("speed_ratio", speed_ratio)], out, |[inertia, ratio]| {
        core::referred_inertia_kg_m2(inertia, ratio)
    })
}
