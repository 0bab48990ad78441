//! Two variants of a part side by side.

use pyo3::prelude::*;
use trainwright::hold as core;

use super::mesh::Helical;
use super::shaft::Shaft;
use super::thrust::NeedleThrust;
use crate::class::{class, words};
use crate::clutch::Pack;
use crate::error::answer;
use crate::quantity::Number;

words! {
    "better" Better = core::Better { Neither = "neither", More = "more", Less = "less" }
}

words! {
    "effect" Effect = core::Effect { Same = "same", Buys = "buys", Costs = "costs", Differs = "differs" }
}

class! {
    /// The change of one figure.
    "trainwright.hold" Change = core::Change, explained by ["hold.change"] {
        /// Before.
        before: f64,
        /// After.
        after: f64,
        /// After over before; infinite where nothing was before.
        ratio: f64,
        /// Which way is better: `"more"`, `"less"` or `"neither"`.
        better: Better,
        /// What the change does: `"same"`, `"buys"`, `"costs"` or `"differs"`.
        effect: Effect,
    }
}

/// What the change of a figure is worth; figures within `same_within` of each other are the same.
/// Source: follows from the definitions.
///
/// >>> change(27, 36, better="less").effect # free roll before the pawl drops
/// 'costs'
#[pyfunction]
#[pyo3(signature = (before, after, *, better, same_within = Number::from(0.0)))]
pub fn change(before: Number, after: Number, better: Better, same_within: Number) -> PyResult<Change> {
    let (before, after) = (before.value("before")?, after.value("after")?);
    answer(core::change(before, after, better.0, same_within.value("same_within")?))
}

class! {
    /// One needle thrust bearing against another.
    "trainwright.hold" NeedleChange = core::NeedleChange, explained by ["hold.compare_needles"] {
        /// Static capacity, N.
        static_n: Change,
        /// Dynamic capacity, N.
        dynamic_n: Change,
        /// Life at the same load, of the one before.
        life: Change,
        /// The same with one f_c for both: what needles, length and diameter alone do.
        life_by_size: Change,
        /// Outside diameter that the needles sweep, mm: both faces must reach it.
        outside_mm: Change,
        /// Length of a needle, mm: both faces must be as wide.
        face_mm: Change,
    }
}

/// A needle thrust bearing against another, at the same load.
/// Source: ISO 281:2007, basic rating life, one bearing over the other.
///
/// >>> narrow = NeedleThrust(needles=32, needle_diameter_mm=2.5, needle_length_mm=6, pitch_diameter_mm=56)
/// >>> wide = NeedleThrust(needles=36, needle_diameter_mm=2.5, needle_length_mm=9, pitch_diameter_mm=60)
/// >>> bought = compare_needles(narrow, wide)
/// >>> bought.static_n.ratio, round(bought.life_by_size.ratio, 4), round(bought.life.ratio, 4)
/// (1.6875, 3.8407, 3.6494)
#[pyfunction]
pub fn compare_needles(before: NeedleThrust, after: NeedleThrust) -> PyResult<NeedleChange> {
    answer(core::compare_needles(before.into(), after.into()))
}

class! {
    /// One shaft against another.
    "trainwright.hold" ShaftChange = core::ShaftChange, explained by ["hold.compare_shafts"] {
        /// Stress of each at its own torque, MPa.
        stress_own_mpa: Change,
        /// Stress of each at the torque of the one before, MPa.
        stress_same_mpa: Change,
        /// Torque that each is asked to carry, N·m.
        torque_nm: Change,
        /// Polar moment, mm⁴: stiffness of the same length.
        polar_moment_mm4: Change,
        /// Metal of the section, mm²: mass of the same length.
        section_mm2: Change,
    }
}

/// A shaft against another, each at its own torque and both at the same. Source: Shigley, chapter 3, torsion.
///
/// >>> early, late = Shaft(outside_mm=41, inside_mm=0), Shaft(outside_mm=44, inside_mm=0)
/// >>> both = compare_shafts(early, late, torque_before_nm=2800, torque_after_nm=4150)
/// >>> both.stress_same_mpa.effect, both.stress_own_mpa.effect
/// ('buys', 'costs')
#[pyfunction]
#[pyo3(signature = (before, after, *, torque_before_nm, torque_after_nm))]
pub fn compare_shafts(
    before: Shaft,
    after: Shaft,
    torque_before_nm: Number,
    torque_after_nm: Number,
) -> PyResult<ShaftChange> {
    let before_nm = torque_before_nm.value("torque_before_nm")?;
    let after_nm = torque_after_nm.value("torque_after_nm")?;
    answer(core::compare_shafts(before.into(), after.into(), before_nm, after_nm))
}

class! {
    /// A pack with the clearance that it is set to.
    "trainwright.hold" SetPack = core::SetPack {
        /// The pack.
        pack: Pack,
        /// Clearance of the whole pack, mm.
        clearance_mm: f64,
    }
}

class! {
    /// One clutch pack against another.
    "trainwright.hold" PackChange = core::PackChange, explained by ["hold.compare_packs"] {
        /// Capacity at the same pressure and friction, N·m.
        capacity_nm: Change,
        /// Pressure at which each holds what the one before can, kPa.
        pressure_kpa: Change,
        /// Area over which the heat of a shift spreads, mm².
        friction_area_mm2: Change,
        /// Friction faces: each drags while the pack is open.
        faces: Change,
        /// Clearance for each face, mm: the less, the more it drags.
        clearance_per_face_mm: Change,
        /// Oil that closes the clearance, mL: the more, the later the shift.
        fill_ml: Change,
    }
}

/// A clutch pack against another, at the same pressure and friction. Source: `clutch.Pack.capacity`, one over the other.
#[pyfunction]
#[pyo3(signature = (before, after, *, pressure_kpa, friction, drum_speed_rpm = Number::from(0.0), oil_density_kg_m3 = Number::from(0.0)))]
pub fn compare_packs(
    before: SetPack,
    after: SetPack,
    pressure_kpa: Number,
    friction: Number,
    drum_speed_rpm: Number,
    oil_density_kg_m3: Number,
) -> PyResult<PackChange> {
    let applied = trainwright::clutch::Applied {
        pressure_kpa: pressure_kpa.value("pressure_kpa")?,
        friction: friction.value("friction")?,
        drum_speed_rpm: drum_speed_rpm.value("drum_speed_rpm")?,
        oil_density_kg_m3: oil_density_kg_m3.value("oil_density_kg_m3")?,
    };
    answer(core::compare_packs(before.into(), after.into(), applied))
}

class! {
    /// The sun of a planetary set with what it meshes.
    "trainwright.hold" HelicalSun = core::HelicalSun {
        /// Teeth of the sun.
        teeth: u16,
        /// Planets around it, 1 to 20.
        planets: u8,
        /// Module and helix.
        helical: Helical,
        /// Face width, mm.
        face_mm: f64,
    }
}

class! {
    /// One sun against another.
    "trainwright.hold" SunChange = core::SunChange, explained by ["hold.compare_suns"] {
        /// Force of a planet over face width and module, MPa.
        unit_load_mpa: Change,
        /// Force along the axis, N.
        axial_n: Change,
        /// Normal module, mm: the size of a tooth.
        module_mm: Change,
        /// Planets: pins, needles and washers to fit and to check.
        planets: Change,
    }
}

/// The sun of a planetary set against another, at the same torque. Ratios for comparison, no stress: the tooth form and the
/// sharing between planets are left out. Source: follows from the definitions.
#[pyfunction]
#[pyo3(signature = (before, after, *, torque_nm))]
pub fn compare_suns(before: HelicalSun, after: HelicalSun, torque_nm: Number) -> PyResult<SunChange> {
    answer(core::compare_suns(before.into(), after.into(), torque_nm.value("torque_nm")?))
}
