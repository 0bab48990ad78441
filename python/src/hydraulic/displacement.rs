//! Displacement of a pump from its sizes.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::answer;

/// Displacement, cm³ per turn, of an external gear pump from tip and root diameter.
/// Source: Esposito, Fluid Power with Applications, from memory.
///
/// >>> round(external_gear_cm3_rev(tip_diameter_mm=76.2, root_diameter_mm=50.8, face_mm=25.4), 2)
/// 64.35
#[pyfunction]
#[pyo3(signature = (*, tip_diameter_mm, root_diameter_mm, face_mm, out = None))]
pub fn external_gear_cm3_rev<'py>(
    py: Python<'py>,
    tip_diameter_mm: Input<'py>,
    root_diameter_mm: Input<'py>,
    face_mm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("tip_diameter_mm", tip_diameter_mm), ("root_diameter_mm", root_diameter_mm), ("face_mm", face_mm)];
    map(py, columns, out, |[tip, root, face]| core::external_gear_cm3_rev(tip, root, face))
}

/// Displacement, cm³ per turn, of an external gear pump from tip diameter and center distance.
/// Source: follows from the definitions (moment of the pressure on the teeth).
///
/// >>> round(external_gear_by_centers_cm3_rev(tip_diameter_mm=50.39, center_distance_mm=42.06, face_mm=16.14), 2)
/// 19.52
#[pyfunction]
#[pyo3(signature = (*, tip_diameter_mm, center_distance_mm, face_mm, out = None))]
pub fn external_gear_by_centers_cm3_rev<'py>(
    py: Python<'py>,
    tip_diameter_mm: Input<'py>,
    center_distance_mm: Input<'py>,
    face_mm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("tip_diameter_mm", tip_diameter_mm), ("center_distance_mm", center_distance_mm), ("face_mm", face_mm)];
    map(py, columns, out, |[tip, centers, face]| core::external_gear_by_centers_cm3_rev(tip, centers, face))
}

class! {
    /// An internal gear pump: a gerotor, or pinion and ring with a crescent.
    ///
    /// >>> gerotor = InternalGearPump(inner_teeth=9, outer_teeth=10, chamber_max_mm2=118, chamber_min_mm2=14, face_mm=12)
    /// >>> round(gerotor.chamber_displacement().inner_cm3_rev, 3)
    /// 11.232
    "trainwright.hydraulic" InternalGearPump = core::InternalGearPump {
        /// Teeth of the inner gear.
        inner_teeth: u32,
        /// Teeth of the outer gear; one more in a gerotor.
        outer_teeth: u32,
        /// Area of the largest chamber, mm².
        chamber_max_mm2: f64,
        /// Area of the smallest chamber, at full mesh, mm².
        chamber_min_mm2: f64,
        /// Width of the gears, mm.
        face_mm: f64,
    }
}

class! {
    /// Displacement of an internal gear pump.
    "trainwright.hydraulic" ChamberDisplacement = core::ChamberDisplacement,
        explained by ["hydraulic.chamber_displacement"] {
        /// Per turn of the inner gear, cm³: it is the driven one as a rule.
        inner_cm3_rev: f64,
        /// Per turn of the outer gear, cm³.
        outer_cm3_rev: f64,
    }
}

#[pymethods]
impl InternalGearPump {
    /// Displacement from the areas of the largest and smallest chamber.
    /// Source: follows from the definitions (chambers swept in a turn).
    fn chamber_displacement(&self) -> PyResult<ChamberDisplacement> {
        answer(self.0.chamber_displacement())
    }
}

/// Displacement, cm³ per turn, of a vane pump at an eccentricity.
/// Source: Esposito, Fluid Power with Applications, from memory.
///
/// >>> round(vane_cm3_rev(cam_diameter_mm=76.2, rotor_diameter_mm=50.8, eccentricity_mm=8.0772, face_mm=50.8), 1)
/// 81.9
#[pyfunction]
#[pyo3(signature = (*, cam_diameter_mm, rotor_diameter_mm, eccentricity_mm, face_mm, out = None))]
pub fn vane_cm3_rev<'py>(
    py: Python<'py>,
    cam_diameter_mm: Input<'py>,
    rotor_diameter_mm: Input<'py>,
    eccentricity_mm: Input<'py>,
    face_mm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("cam_diameter_mm", cam_diameter_mm),
        ("rotor_diameter_mm", rotor_diameter_mm),
        ("eccentricity_mm", eccentricity_mm),
        ("face_mm", face_mm),
    ];
    map(py, columns, out, |[cam, rotor, eccentricity, face]| core::vane_cm3_rev(cam, rotor, eccentricity, face))
}

/// Displacement, cm³ per turn, of a gear pump by the rule of the trade. Source: common practice, no source.
///
/// >>> round(field_rule_cm3_rev(bore_diameter_mm=50.8, across_bores_mm=88.9, face_mm=25.4), 2)
/// 36.87
#[pyfunction]
#[pyo3(signature = (*, bore_diameter_mm, across_bores_mm, face_mm, out = None))]
pub fn field_rule_cm3_rev<'py>(
    py: Python<'py>,
    bore_diameter_mm: Input<'py>,
    across_bores_mm: Input<'py>,
    face_mm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("bore_diameter_mm", bore_diameter_mm), ("across_bores_mm", across_bores_mm), ("face_mm", face_mm)];
    map(py, columns, out, |[bore, across, face]| core::field_rule_cm3_rev(bore, across, face))
}

/// Share of its displacement that a pump delivers. Source: Esposito, Fluid Power with Applications, from memory.
///
/// >>> volumetric_efficiency(delivered_l_min=8.91, displacement_cm3_rev=19.8, speed_rpm=600)
/// 0.75
#[pyfunction]
#[pyo3(signature = (*, delivered_l_min, displacement_cm3_rev, speed_rpm, out = None))]
pub fn volumetric_efficiency<'py>(
    py: Python<'py>,
    delivered_l_min: Input<'py>,
    displacement_cm3_rev: Input<'py>,
    speed_rpm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("delivered_l_min", delivered_l_min),
        ("displacement_cm3_rev", displacement_cm3_rev),
        ("speed_rpm", speed_rpm),
    ];
    map(py, columns, out, |[delivered, volume, speed]| core::volumetric_efficiency(delivered, volume, speed))
}
