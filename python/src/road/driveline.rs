//! What lies between the transmission output and the road: speeds and forces.

use pyo3::prelude::*;
use trainwright::road as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::judge::Reading;

class! {
    /// What lies between the transmission output and the road.
    ///
    /// >>> from trainwright import Reading
    /// >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=15.1))
    /// >>> line.road_km_h(output_rpm=[0.0, 1500.0]).round(2)
    /// array([ 0.  , 61.98])
    "trainwright.road" Driveline = core::Driveline, checked by positive {
        /// Axle ratio.
        axle_ratio: f64,
        /// Transfer case ratio; 1 without one and in its high range.
        transfer_ratio: f64 = 1.0,
        /// Rolling circumference of the driven tires.
        circumference_mm: Reading,
    }
}

fn positive(line: core::Driveline) -> trainwright::Result<core::Driveline> {
    core::Driveline::new(line.axle_ratio, line.transfer_ratio, line.circumference_mm)
}

class! {
    /// A gear, and the slip between engine and input shaft.
    "trainwright.road" Engaged = core::Engaged {
        /// Input over output speed; negative in reverse.
        gear_ratio: f64,
        /// Engine speed less input speed; 0 with the lock-up clutch closed.
        slip_rpm: f64 = 0.0,
    }
}

class! {
    /// Speeds of one moment, from the road to the engine.
    "trainwright.road" ShaftSpeeds = core::ShaftSpeeds, explained by ["road.speeds_at_road"] {
        /// Road speed, without tire slip.
        road_km_h: f64,
        /// Wheel.
        wheel_rpm: f64,
        /// Transmission output shaft.
        output_rpm: f64,
        /// Transmission input (turbine) shaft.
        input_rpm: f64,
        /// Engine.
        engine_rpm: f64,
        /// Relative standard uncertainty across the tire.
        u_rel: f64,
    }
}

columns! { ShaftSpeeds[6]: road_km_h, wheel_rpm, output_rpm, input_rpm, engine_rpm, u_rel }

#[pymethods]
impl Driveline {
    /// Road speed of an output-shaft speed.
    #[pyo3(signature = (*, output_rpm, out = None))]
    fn road_km_h<'py>(
        &self,
        py: Python<'py>,
        output_rpm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("output_rpm", output_rpm)], out, |[output_rpm]| self.0.road_km_h(output_rpm))
    }

    /// Output-shaft speed of a road speed.
    #[pyo3(signature = (*, road_km_h, out = None))]
    fn output_rpm<'py>(
        &self,
        py: Python<'py>,
        road_km_h: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("road_km_h", road_km_h)], out, |[road_km_h]| self.0.output_rpm(road_km_h))
    }

    /// Every speed from the road to the engine, at a road speed. Arrays give a dictionary of arrays.
    /// Source: follows from the definitions (speeds of a driveline).
    #[pyo3(signature = (engaged, *, road_km_h))]
    fn speeds_at_road<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        road_km_h: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("road_km_h", road_km_h)], |[v]| self.0.speeds_at_road(engaged.0, v))
    }

    /// Every speed from the road to the engine, at an output-shaft speed. Arrays give a dictionary of arrays.
    #[pyo3(signature = (engaged, *, output_rpm))]
    fn speeds_at_output<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        output_rpm: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("output_rpm", output_rpm)], |[n]| self.0.speeds_at_output(engaged.0, n))
    }

    /// Every speed from the road to the engine, at an engine speed. Arrays give a dictionary of arrays.
    ///
    /// >>> from trainwright import Reading
    /// >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
    /// >>> round(line.speeds_at_engine(Engaged(gear_ratio=0.7517), engine_rpm=1600.0).road_km_h, 1)
    /// 88.0
    #[pyo3(signature = (engaged, *, engine_rpm))]
    fn speeds_at_engine<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        engine_rpm: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("engine_rpm", engine_rpm)], |[n]| self.0.speeds_at_engine(engaged.0, n))
    }

    /// Force of the driven wheels on the road from a torque at the transmission output. Tire grip is not looked at.
    /// Source: follows from the definitions (tractive force).
    #[pyo3(signature = (*, output_torque_nm, efficiency, out = None))]
    fn tractive_force_n<'py>(
        &self,
        py: Python<'py>,
        output_torque_nm: Input<'py>,
        efficiency: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("output_torque_nm", output_torque_nm), ("efficiency", efficiency)];
        map(py, columns, out, |[torque, efficiency]| self.0.tractive_force_n(torque, efficiency))
    }

    /// Torque at the transmission output that a tractive force takes.
    #[pyo3(signature = (*, force_n, efficiency, out = None))]
    fn output_torque_nm<'py>(
        &self,
        py: Python<'py>,
        force_n: Input<'py>,
        efficiency: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("force_n", force_n), ("efficiency", efficiency)];
        map(py, columns, out, |[force, efficiency]| self.0.output_torque_nm(force, efficiency))
    }
}
