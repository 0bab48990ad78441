//! Slots, sliding gaps, clearances of a pump.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::fit::{Gap, GapLeak, LeakRatio};
use crate::judge::{Judgment, Reading, Rule};
use crate::quantity::Number;

class! {
    /// A narrow slot between two plane walls.
    ///
    /// >>> side = Slot(width_mm=20, clearance_mm=0.05, length_mm=5)
    /// >>> round(side.slot_flow(pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800).flow_l_min, 3)
    /// 0.5
    "trainwright.hydraulic" Slot = core::Slot {
        /// Across the flow, mm.
        width_mm: f64,
        /// Height, mm.
        clearance_mm: f64,
        /// Along the flow, mm.
        length_mm: f64,
    }
}

class! {
    /// Flow through a slot.
    "trainwright.hydraulic" SlotFlow = core::SlotFlow, explained by ["hydraulic.slot_flow"] {
        /// What the pressure drives, L/min.
        pressure_l_min: f64,
        /// What the moving wall takes along, L/min; negative against the pressure.
        wall_l_min: f64,
        /// Both, L/min.
        flow_l_min: f64,
        /// Mean speed, m/s.
        speed_m_s: f64,
        /// Reynolds number.
        reynolds: f64,
    }
}

columns! { SlotFlow[5]: pressure_l_min, wall_l_min, flow_l_min, speed_m_s, reynolds }

#[pymethods]
impl Slot {
    /// Flow of oil through the slot: a `SlotFlow`, or a dictionary of arrays. The wall moves with the flow above 0, against it
    /// below. Source: Bansal, laminar flow between plates.
    #[pyo3(signature = (*, pressure_drop_kpa, viscosity_mpa_s, density_kg_m3, wall_speed_m_s = 0.0.into()))]
    fn slot_flow<'py>(
        &self,
        py: Python<'py>,
        pressure_drop_kpa: Input<'py>,
        viscosity_mpa_s: Input<'py>,
        density_kg_m3: Input<'py>,
        wall_speed_m_s: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [
            ("pressure_drop_kpa", pressure_drop_kpa),
            ("viscosity_mpa_s", viscosity_mpa_s),
            ("density_kg_m3", density_kg_m3),
            ("wall_speed_m_s", wall_speed_m_s),
        ];
        map_class::<SlotFlow, _, 4, 5>(py, columns, |[drop, viscosity, density, wall]| {
            self.0.slot_flow(drop, viscosity, density, wall)
        })
    }
}

class! {
    /// Flow along a gap whose shaft slides.
    "trainwright.hydraulic" SlidingGap = core::SlidingGap, explained by ["hydraulic.sliding_gap"] {
        /// What the pressure drives.
        leak: GapLeak,
        /// What the shaft takes along, L/min; negative against the pressure.
        wall_l_min: f64,
        /// Both, L/min.
        flow_l_min: f64,
    }
}

/// Flow along the gap between a bore and a shaft or valve that slides in it. Source: Bansal, laminar flow between plates.
///
/// >>> from trainwright.fit import Gap
/// >>> gap = Gap(diameter_mm=12, clearance_mm=0.04, length_mm=10, eccentricity=0)
/// >>> round(sliding_gap(gap, pressure_drop_kpa=1000, viscosity_mpa_s=5, density_kg_m3=800, wall_speed_m_s=0.5).flow_l_min, 4)
/// 0.0415
#[pyfunction]
#[pyo3(signature = (gap, *, pressure_drop_kpa, viscosity_mpa_s, density_kg_m3, wall_speed_m_s))]
pub fn sliding_gap(
    gap: Gap,
    pressure_drop_kpa: Number,
    viscosity_mpa_s: Number,
    density_kg_m3: Number,
    wall_speed_m_s: Number,
) -> PyResult<SlidingGap> {
    let (drop, wall) = (pressure_drop_kpa.value("pressure_drop_kpa")?, wall_speed_m_s.value("wall_speed_m_s")?);
    let (viscosity, density) = (viscosity_mpa_s.value("viscosity_mpa_s")?, density_kg_m3.value("density_kg_m3")?);
    answer(core::sliding_gap(gap.into(), drop, viscosity, density, wall))
}

class! {
    /// A clearance of a pump against its limit.
    "trainwright.hydraulic" PumpClearance = core::PumpClearance, explained by ["hydraulic.pump_clearance"],
        judged in "mm" {
        /// The clearance against its limit.
        judgment: Judgment,
        /// How many times more it leaks than when new, with the interval of 95 %.
        leak: LeakRatio,
    }
}

/// Whether a clearance of a pump is within its limit, and how many times more it leaks than when new. Limit and new clearance
/// are those of this very pump. Source: `Slot.slot_flow` (cube of the clearance); ISO 14253-1 for the verdict.
///
/// >>> from trainwright.judge import Reading, Rule
/// >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
/// >>> side = pump_clearance(Reading(value=0.08, u=0.004), new_mm=Reading(value=0.04, u=0.002), limit_mm=0.10, rule=rule)
/// >>> side.judgment.verdict, round(side.leak.ratio, 1)
/// ('GO', 8.0)
#[pyfunction]
#[pyo3(signature = (clearance_mm, *, new_mm, limit_mm, rule))]
pub fn pump_clearance(clearance_mm: Reading, new_mm: Reading, limit_mm: Number, rule: Rule) -> PyResult<PumpClearance> {
    let limit_mm = limit_mm.value("limit_mm")?;
    answer(core::pump_clearance(clearance_mm.into(), new_mm.into(), limit_mm, rule.into()))
}
