//! Balance of a pressure regulator.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};

class! {
    /// A face of a valve on which pressure acts.
    "trainwright.hydraulic" Land = core::Land {
        /// Outer diameter, mm; 0 for no land.
        outer_diameter_mm: f64,
        /// Diameter of the step or stem that takes area away, mm.
        inner_diameter_mm: f64 = 0.0,
    }
}

class! {
    /// A metering edge.
    ///
    /// >>> edge = Metering(discharge=0.61, width_mm=37.7, opening_mm=0.5)
    /// >>> round(edge.flow_force_n(pressure_drop_kpa=1000), 2)
    /// 8.24
    "trainwright.hydraulic" Metering = core::Metering {
        /// Discharge coefficient of the edge, 0 to 1.
        discharge: f64,
        /// Length of the edge, mm: the circumference of the land where the port goes all round.
        width_mm: f64,
        /// Opening, mm; 0 for no flow force.
        opening_mm: f64,
        /// Angle of the jet to the axis, degrees; `SHARP_EDGE_JET_DEG` unless given.
        jet_deg: f64 = core::SHARP_EDGE_JET_DEG,
    }
}

#[pymethods]
impl Metering {
    /// Force, N, with which the flow through the edge closes its valve. Source: Merritt, Hydraulic Control Systems, from memory.
    #[pyo3(signature = (*, pressure_drop_kpa, out = None))]
    fn flow_force_n<'py>(
        &self,
        py: Python<'py>,
        pressure_drop_kpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("pressure_drop_kpa", pressure_drop_kpa)], out, |[drop]| self.0.flow_force_n(drop))
    }
}

class! {
    /// A pressure regulator valve. `boost` and `metering` are left out by a land and an edge of nothing.
    ///
    /// >>> spring_only = Regulator(preload_n=60, rate_n_mm=8, stroke_mm=1.5, balance=Land(outer_diameter_mm=12),
    /// ...                         boost=Land(outer_diameter_mm=0), metering=Metering(discharge=0, width_mm=0, opening_mm=0))
    /// >>> round(spring_only.regulated(boost_pressure_kpa=0).pressure_kpa, 1)
    /// 636.6
    "trainwright.hydraulic" Regulator = core::Regulator {
        /// Spring force with the valve at its stop, N.
        preload_n: f64,
        /// Spring rate, N/mm.
        rate_n_mm: f64,
        /// Stroke from the stop to where it regulates, mm.
        stroke_mm: f64,
        /// Face on which line pressure acts against the spring.
        balance: Land,
        /// Face on which the boost pressure helps the spring.
        boost: Land,
        /// Edge over which it dumps.
        metering: Metering,
    }
}

class! {
    /// Balance of a regulator.
    "trainwright.hydraulic" Regulated = core::Regulated, explained by ["hydraulic.regulated"] {
        /// Spring at the stroke, N.
        spring_n: f64,
        /// Boost on its land, N.
        boost_n: f64,
        /// Force of the flow, N; it helps the spring.
        flow_n: f64,
        /// Area of the balance face, mm².
        balance_area_mm2: f64,
        /// Area of the boost face, mm².
        boost_area_mm2: f64,
        /// Pressure that it holds, kPa.
        pressure_kpa: f64,
    }
}

columns! { Regulated[6]: spring_n, boost_n, flow_n, balance_area_mm2, boost_area_mm2, pressure_kpa }

#[pymethods]
impl Regulator {
    /// Pressure that the regulator holds: a `Regulated`, or a dictionary of arrays.
    /// Source: follows from the definitions (equilibrium of the valve).
    #[pyo3(signature = (*, boost_pressure_kpa))]
    fn regulated<'py>(&self, py: Python<'py>, boost_pressure_kpa: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<Regulated, _, 1, 6>(py, [("boost_pressure_kpa", boost_pressure_kpa)], |[boost]| {
            self.0.regulated(boost)
        })
    }

    /// Spring force, N, that gives the regulator its pressure, at the stroke where it regulates.
    /// Source: follows from the definitions (`regulated` solved for the spring).
    #[pyo3(signature = (*, pressure_kpa, boost_pressure_kpa, out = None))]
    fn spring_for_n<'py>(
        &self,
        py: Python<'py>,
        pressure_kpa: Input<'py>,
        boost_pressure_kpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("pressure_kpa", pressure_kpa), ("boost_pressure_kpa", boost_pressure_kpa)];
        map(py, columns, out, |[pressure, boost]| self.0.spring_for_n(pressure, boost))
    }
}
