//! Force along the axis from the helix of a planetary set.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns, words};
use crate::error::answer;
use crate::quantity::Number;
use crate::train::State;

class! {
    /// Teeth of a helical planetary set.
    "trainwright.hold" Helical = core::Helical {
        /// Normal module, mm.
        module_mm: f64,
        /// Helix angle at the pitch circle, degrees, 0 to 45.
        helix_deg: f64,
    }
}

words! {
    "wheel" Wheel = core::Wheel { Sun = "sun", Sun2 = "sun_2", Ring = "ring" }
}

class! {
    /// Force of a helical wheel along its axis.
    "trainwright.hold" AxialThrust = core::AxialThrust, explained by ["hold.axial_thrust"] {
        /// Pitch radius, mm.
        pitch_radius_mm: f64,
        /// Force at the pitch circle, all planets together, N.
        tangential_n: f64,
        /// Force along the axis, N, without sign.
        axial_n: f64,
    }
}

columns! { AxialThrust[3]: pitch_radius_mm, tangential_n, axial_n }

class! {
    /// Force of a wheel of a set in a gear.
    "trainwright.hold" WheelThrust = core::WheelThrust, explained by ["hold.wheel_thrust"] {
        /// Torque of the set on the wheel, N·m, forward positive.
        torque_nm: f64,
        /// Its force.
        thrust: AxialThrust,
        /// Speed of the wheel against the carrier, 1/min, without sign: what a bearing between the two sees.
        carrier_slip_rpm: f64,
    }
}

/// Force along the axis that a helical sun or ring brings into its thrust bearing: an `AxialThrust`, or a dictionary of arrays
/// for an array of torques. Source: Shigley, chapter 13.
///
/// >>> pushed = axial_thrust(torque_nm=493, teeth=59, helical=Helical(module_mm=1.48, helix_deg=19))
/// >>> round(pushed.axial_n)
/// 3676
#[pyfunction]
#[pyo3(signature = (*, torque_nm, teeth, helical))]
pub fn axial_thrust<'py>(
    py: Python<'py>,
    torque_nm: Input<'py>,
    teeth: u16,
    helical: Helical,
) -> PyResult<Bound<'py, PyAny>> {
    map_class::<AxialThrust, _, 1, 3>(py, [("torque_nm", torque_nm)], |[torque]| {
        core::axial_thrust(torque, teeth, helical.0)
    })
}

/// Force along the axis of a wheel (`"sun"`, `"sun_2"`, `"ring"`) of a set in a gear of a `Train`, and its speed against the
/// carrier. Not counted: pistons, converter, other sets that lean on the same bearing.
/// Source: torques of a set, times `axial_thrust`.
#[pyfunction]
#[pyo3(signature = (state, *, set, wheel, helical, input_torque_nm, input_speed_rpm))]
pub fn wheel_thrust(
    state: PyRef<'_, State>,
    set: &str,
    wheel: Wheel,
    helical: Helical,
    input_torque_nm: Number,
    input_speed_rpm: Number,
) -> PyResult<WheelThrust> {
    let at = core::SetWheel { set: state.set_place(set)?, wheel: wheel.0, helical: helical.0 };
    let (torque, speed) = (input_torque_nm.value("input_torque_nm")?, input_speed_rpm.value("input_speed_rpm")?);
    answer(core::wheel_thrust(&state.train().train, state.solved(), at, torque, speed))
}
