//! Load of a bushing and oil through its clearance.

use pyo3::prelude::*;
use trainwright::fit as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::{answer, raise};
use crate::judge::Reading;

class! {
    /// Load and speed of a plain bushing.
    "trainwright.fit" BushingLoad = core::BushingLoad, explained by ["fit.bushing_load"] {
        /// Load over the projected area, MPa.
        unit_load_mpa: f64,
        /// Speed at which the surfaces slide, m/s.
        sliding_m_s: f64,
        /// Product of the two, MPa·m/s.
        pv_mpa_m_s: f64,
    }
}

columns! { BushingLoad[3]: unit_load_mpa, sliding_m_s, pv_mpa_m_s }

/// Unit load, sliding speed and their product for a plain bushing: force in N, sizes in mm, speed in 1/min of the shaft
/// against the bushing. Catalogue limits of pv are for dry or oil-soaked bushings. Arrays give a dictionary of arrays.
/// Source: Shigley, chapter 12, boundary-lubricated bearings.
///
/// >>> round(bushing_load(force_n=378.1, diameter_mm=19.05, length_mm=19.05, speed_rpm=200).unit_load_mpa, 3)
/// 1.042
#[pyfunction]
#[pyo3(signature = (*, force_n, diameter_mm, length_mm, speed_rpm))]
pub fn bushing_load<'py>(
    py: Python<'py>,
    force_n: Input<'py>,
    diameter_mm: Input<'py>,
    length_mm: Input<'py>,
    speed_rpm: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("force_n", force_n), ("diameter_mm", diameter_mm), ("length_mm", length_mm), ("speed_rpm", speed_rpm)];
    map_class::<BushingLoad, _, 4, 3>(py, columns, |[w, d, l, n]| core::bushing_load(w, d, l, n))
}

/// How much more an off-center shaft lets through than a centered one; eccentricity 0 to 1.
/// Source: follows from the definitions (mean of (1 + ε cos φ)³ over a turn).
///
/// >>> eccentricity_factor(eccentricity=1)
/// 2.5
#[pyfunction]
#[pyo3(signature = (*, eccentricity, out = None))]
pub fn eccentricity_factor<'py>(
    py: Python<'py>,
    eccentricity: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("eccentricity", eccentricity)], out, |[eps]| core::eccentricity_factor(eps))
}

class! {
    /// The gap between a shaft and a bore.
    ///
    /// >>> gap = Gap(diameter_mm=40, clearance_mm=0.1, length_mm=20, eccentricity=0)
    /// >>> round(gap.gap_leak(pressure_drop_kpa=300, viscosity_mpa_s=10, density_kg_m3=800).flow_l_min, 4)
    /// 0.1178
    "trainwright.fit" Gap = core::Gap {
        /// Diameter, mm.
        diameter_mm: f64,
        /// Clearance, diametral, mm.
        clearance_mm: f64,
        /// Length along which the oil flows, mm.
        length_mm: f64,
        /// Displacement of the axes over the radial clearance, 0 to 1.
        eccentricity: f64,
    }
}

class! {
    /// Flow along a gap.
    "trainwright.fit" GapLeak = core::GapLeak, explained by ["fit.gap_leak"] {
        /// Radial clearance, mm.
        radial_clearance_mm: f64,
        /// How much more than centered.
        eccentricity_factor: f64,
        /// Flow, L/min.
        flow_l_min: f64,
        /// Mean speed of the oil along the gap, m/s.
        speed_m_s: f64,
        /// Reynolds number of the gap.
        reynolds: f64,
    }
}

columns! { GapLeak[5]: radial_clearance_mm, eccentricity_factor, flow_l_min, speed_m_s, reynolds }

#[pymethods]
impl Gap {
    /// Flow of oil along the gap, laminar: pressure drop in kPa, dynamic viscosity in mPa·s and density in kg/m³ at the
    /// temperature of the gap. Arrays give a dictionary of arrays. Source: Bansal, laminar flow between parallel plates.
    #[pyo3(signature = (*, pressure_drop_kpa, viscosity_mpa_s, density_kg_m3))]
    fn gap_leak<'py>(
        &self,
        py: Python<'py>,
        pressure_drop_kpa: Input<'py>,
        viscosity_mpa_s: Input<'py>,
        density_kg_m3: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [
            ("pressure_drop_kpa", pressure_drop_kpa),
            ("viscosity_mpa_s", viscosity_mpa_s),
            ("density_kg_m3", density_kg_m3),
        ];
        map_class::<GapLeak, _, 3, 5>(py, columns, |[p, eta, rho]| self.0.gap_leak(p, eta, rho))
    }
}

class! {
    /// A fit when new and when worn: same length, pressure and oil.
    ///
    /// >>> worn = WornGap(new_mm=Reading(value=0.07, u=0.002), worn_mm=Reading(value=0.14, u=0.0045),
    /// ...                new_eccentricity=1, worn_eccentricity=1)
    /// >>> leak = worn.leak_ratio(coverage=0.95)
    /// >>> print(round(leak.ratio, 2), round(leak.lower, 2), round(leak.upper, 2))
    /// 8.0 6.2 10.29
    "trainwright.fit" WornGap = core::WornGap {
        /// Clearance when new, diametral, mm.
        new_mm: Reading,
        /// Clearance now, mm.
        worn_mm: Reading,
        /// Eccentricity when new, 0 to 1.
        new_eccentricity: f64,
        /// Eccentricity now, 0 to 1.
        worn_eccentricity: f64,
    }
}

class! {
    /// How much more a worn fit leaks.
    "trainwright.fit" LeakRatio = core::LeakRatio, explained by ["fit.leak_ratio"] {
        /// Leak now over leak when new, at the best estimates.
        ratio: f64,
        /// Its standard uncertainty to first order; where it is above a tenth of the ratio, the interval says more.
        first_order_u: f64,
        /// Stated probability of the interval.
        coverage: f64,
        /// Lower end of the interval.
        lower: f64,
        /// Upper end of the interval.
        upper: f64,
    }
}

#[pymethods]
impl WornGap {
    /// How many times more the worn fit leaks, with its coverage interval.
    /// Source: the cube law of the laminar gap; Fieller's interval for a ratio, cubed.
    #[pyo3(signature = (*, coverage))]
    fn leak_ratio(&self, coverage: f64) -> PyResult<LeakRatio> {
        answer(self.0.leak_ratio(coverage))
    }

    /// Chance that the worn fit leaks more than so many times as much as when new.
    /// Source: the leak rises with the ratio of the clearances.
    #[pyo3(signature = (*, times))]
    fn chance_leaks_more(&self, times: f64) -> PyResult<f64> {
        self.0.chance_leaks_more(times).map_err(raise)
    }
}
