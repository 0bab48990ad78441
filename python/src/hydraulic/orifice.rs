//! Orifices.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::answer;
use crate::quantity::Number;

class! {
    /// A round orifice.
    ///
    /// >>> hole = Orifice(diameter_mm=1.0, discharge=SHARP_EDGE_DISCHARGE)
    /// >>> flow = hole.orifice_flow(pressure_drop_kpa=400, density_kg_m3=800, viscosity_mpa_s=8)
    /// >>> round(flow.flow_l_min, 3), flow.turbulent
    /// (0.911, True)
    "trainwright.hydraulic" Orifice = core::Orifice {
        /// Diameter, mm.
        diameter_mm: f64,
        /// Discharge coefficient, above 0 to 1; `SHARP_EDGE_DISCHARGE` for a sharp edge and turbulent flow.
        discharge: f64,
    }
}

class! {
    /// Flow through an orifice.
    "trainwright.hydraulic" OrificeFlow = core::OrificeFlow, explained by ["hydraulic.orifice_flow"] {
        /// Area of the hole, mm².
        area_mm2: f64,
        /// Speed of the jet without losses, m/s.
        jet_m_s: f64,
        /// Flow, L/min.
        flow_l_min: f64,
        /// Reynolds number of diameter and jet speed.
        reynolds: f64,
        /// The flow is turbulent. If not, the discharge is smaller than a sharp edge's and the flow less than this.
        turbulent: bool,
    }
}

#[pymethods]
impl Orifice {
    /// Flow through the orifice. Source: Fluid Power Engineering, orifice equation.
    #[pyo3(signature = (*, pressure_drop_kpa, density_kg_m3, viscosity_mpa_s))]
    fn orifice_flow(
        &self,
        pressure_drop_kpa: Number,
        density_kg_m3: Number,
        viscosity_mpa_s: Number,
    ) -> PyResult<OrificeFlow> {
        let drop = pressure_drop_kpa.value("pressure_drop_kpa")?;
        let (density, viscosity) = (density_kg_m3.value("density_kg_m3")?, viscosity_mpa_s.value("viscosity_mpa_s")?);
        answer(self.0.orifice_flow(drop, density, viscosity))
    }

    /// Pressure, kPa, that the orifice takes at a flow.
    /// Source: follows from the definitions (`orifice_flow` solved for the pressure).
    #[pyo3(signature = (*, flow_l_min, density_kg_m3, out = None))]
    fn orifice_drop_kpa<'py>(
        &self,
        py: Python<'py>,
        flow_l_min: Input<'py>,
        density_kg_m3: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("flow_l_min", flow_l_min), ("density_kg_m3", density_kg_m3)], out, |[flow, density]| {
            self.0.orifice_drop_kpa(flow, density)
        })
    }
}

/// Hole, mm, that lets a flow through at a pressure: to size a restriction, or to picture a leak.
/// Source: follows from the definitions (`Orifice.orifice_flow` solved for the diameter).
///
/// >>> round(orifice_diameter_mm(flow_l_min=0.911, pressure_drop_kpa=400, density_kg_m3=800, discharge=0.611), 2)
/// 1.0
#[pyfunction]
#[pyo3(signature = (*, flow_l_min, pressure_drop_kpa, density_kg_m3, discharge, out = None))]
pub fn orifice_diameter_mm<'py>(
    py: Python<'py>,
    flow_l_min: Input<'py>,
    pressure_drop_kpa: Input<'py>,
    density_kg_m3: Input<'py>,
    discharge: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("flow_l_min", flow_l_min),
        ("pressure_drop_kpa", pressure_drop_kpa),
        ("density_kg_m3", density_kg_m3),
        ("discharge", discharge),
    ];
    map(py, columns, out, |[flow, drop, density, discharge]| core::orifice_diameter_mm(flow, drop, density, discharge))
}

fn plain(orifices: Vec<Orifice>) -> Vec<core::Orifice> {
    orifices.into_iter().map(Into::into).collect()
}

/// Effective area, mm², of orifices side by side. Source: follows from the definitions (flows add).
///
/// >>> round(in_parallel_mm2([Orifice(diameter_mm=1.0, discharge=0.6)] * 2), 3)
/// 0.942
#[pyfunction]
pub fn in_parallel_mm2(orifices: Vec<Orifice>) -> PyResult<f64> {
    answer(core::in_parallel_mm2(&plain(orifices)))
}

/// Effective area, mm², of orifices one after another. Source: follows from the definitions (pressure drops add).
///
/// >>> round(in_series_mm2([Orifice(diameter_mm=1.0, discharge=0.6)] * 2), 3)
/// 0.333
#[pyfunction]
pub fn in_series_mm2(orifices: Vec<Orifice>) -> PyResult<f64> {
    answer(core::in_series_mm2(&plain(orifices)))
}

/// Flow, L/min, through an effective area. Source: follows from the definitions (`Orifice.orifice_flow`).
///
/// >>> round(passage_flow_l_min(effective_area_mm2=0.333, pressure_drop_kpa=400, density_kg_m3=800), 3)
/// 0.632
#[pyfunction]
#[pyo3(signature = (*, effective_area_mm2, pressure_drop_kpa, density_kg_m3, out = None))]
pub fn passage_flow_l_min<'py>(
    py: Python<'py>,
    effective_area_mm2: Input<'py>,
    pressure_drop_kpa: Input<'py>,
    density_kg_m3: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("effective_area_mm2", effective_area_mm2),
        ("pressure_drop_kpa", pressure_drop_kpa),
        ("density_kg_m3", density_kg_m3),
    ];
    map(py, columns, out, |[area, drop, density]| core::passage_flow_l_min(area, drop, density))
}
