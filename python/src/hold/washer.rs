//! Thrust washers.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, map_class};
use crate::class::{class, columns};

class! {
    /// A thrust washer.
    ///
    /// >>> washer = ThrustWasher(outside_mm=62, inside_mm=42, face_share=1)
    /// >>> round(washer.washer_load(load_n=3500, speed_rpm=1500).pv_mpa_m_s, 6)
    /// 8.75
    "trainwright.hold" ThrustWasher = core::ThrustWasher {
        /// Outside diameter of the face that bears, mm.
        outside_mm: f64,
        /// Inside diameter of the face that bears, mm.
        inside_mm: f64,
        /// Share of that face that grooves and holes leave, above 0 to 1.
        face_share: f64,
    }
}

class! {
    /// Load on the face of a thrust washer.
    "trainwright.hold" WasherLoad = core::WasherLoad, explained by ["hold.washer_load"] {
        /// Face that bears, mm².
        area_mm2: f64,
        /// Mean pressure on it, MPa.
        unit_load_mpa: f64,
        /// Diameter at which the sliding speed is taken, mm.
        mean_diameter_mm: f64,
        /// Sliding speed there, m/s.
        sliding_m_s: f64,
        /// Pressure times sliding speed, MPa·m/s.
        pv_mpa_m_s: f64,
    }
}

columns! { WasherLoad[5]: area_mm2, unit_load_mpa, mean_diameter_mm, sliding_m_s, pv_mpa_m_s }

#[pymethods]
impl ThrustWasher {
    /// Unit load, sliding speed at the mean diameter, and their product: a `WasherLoad`, or a dictionary of arrays. Published
    /// limits of the product are for dry running and do not hold for a washer fed with oil.
    /// Source: follows from the definitions.
    #[pyo3(signature = (*, load_n, speed_rpm))]
    fn washer_load<'py>(
        &self,
        py: Python<'py>,
        load_n: Input<'py>,
        speed_rpm: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("load_n", load_n), ("speed_rpm", speed_rpm)];
        map_class::<WasherLoad, _, 2, 5>(py, columns, |[load, speed]| self.0.washer_load(load, speed))
    }
}
