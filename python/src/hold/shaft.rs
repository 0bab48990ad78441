//! Shafts in torsion.

use pyo3::prelude::*;
use trainwright::hold as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Reading, Rule};

class! {
    /// A round shaft.
    ///
    /// >>> tube = Shaft(outside_mm=114, inside_mm=102)
    /// >>> round(tube.torsion(torque_nm=5000).stress_mpa, 2)
    /// 47.86
    "trainwright.hold" Shaft = core::Shaft {
        /// Outside diameter, mm: the smallest that carries the torque.
        outside_mm: f64,
        /// Inside diameter, mm; 0 for a solid shaft.
        inside_mm: f64,
    }
}

class! {
    /// Stress in a shaft under torque.
    "trainwright.hold" Torsion = core::Torsion, explained by ["hold.torsion"] {
        /// Polar moment of area, mm⁴.
        polar_moment_mm4: f64,
        /// Polar section modulus, mm³.
        section_modulus_mm3: f64,
        /// Shear stress at the surface, MPa.
        stress_mpa: f64,
        /// Shear stress at the bore, MPa; 0 in the middle of a solid shaft.
        bore_stress_mpa: f64,
    }
}

columns! { Torsion[4]: polar_moment_mm4, section_modulus_mm3, stress_mpa, bore_stress_mpa }

class! {
    /// A hollow shaft against a solid one of the same outside diameter.
    "trainwright.hold" HollowOverSolid = core::HollowOverSolid, explained by ["hold.hollow_over_solid"] {
        /// Torque that it carries at the same stress, and stiffness.
        strength: f64,
        /// Mass of the same length.
        mass: f64,
    }
}

class! {
    /// What a shaft must carry, and what it is made of.
    "trainwright.hold" ShaftLoad = core::ShaftLoad {
        /// Torque, N·m, above 0.
        torque_nm: Reading,
        /// Yield stress in shear, MPa, above 0.
        shear_yield_mpa: Reading,
        /// Peak stress over nominal stress, 1 to 10, chosen: 1 counts no spline, shoulder or hole.
        stress_factor: f64,
        /// Relative standard uncertainty of the stress from sizes and form, 0 to 1.
        stress_u_rel: f64,
    }
}

class! {
    /// Whether a shaft stays below yield, and what that rests on.
    "trainwright.hold" ShaftHold = core::ShaftHold, explained by ["hold.shaft_hold"], judged in "MPa",
        inputs ["torque", "sizes and form", "yield"] {
        /// Nominal stress.
        torsion: Torsion,
        /// Peak stress over yield.
        yield_share: f64,
        /// Torque at which the peak reaches yield, N·m.
        torque_at_yield_nm: f64,
        /// Stress factor at which this torque reaches yield: what splines and shoulders may add.
        factor_at_yield: f64,
        /// The stress to spare, yield less peak, against 0.
        judgment: Judgment,
        /// Where the uncertainty comes from: torque, sizes and form, yield, in this order.
        budget: Budget,
    }
}

#[pymethods]
impl Shaft {
    /// Nominal stress under a torque: a `Torsion`, or a dictionary of arrays. Splines, shoulders and holes multiply it.
    /// Source: Shigley, chapter 3, torsion.
    #[pyo3(signature = (*, torque_nm))]
    fn torsion<'py>(&self, py: Python<'py>, torque_nm: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<Torsion, _, 1, 4>(py, [("torque_nm", torque_nm)], |[torque]| self.0.torsion(torque))
    }

    /// Angle, degrees, by which a torque twists a length of shaft. The shear modulus of steel is about 80 000 MPa.
    /// Source: Shigley, chapter 3, torsion.
    #[pyo3(signature = (*, torque_nm, length_mm, shear_modulus_mpa, out = None))]
    fn twist_deg<'py>(
        &self,
        py: Python<'py>,
        torque_nm: Input<'py>,
        length_mm: Input<'py>,
        shear_modulus_mpa: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("torque_nm", torque_nm), ("length_mm", length_mm), ("shear_modulus_mpa", shear_modulus_mpa)];
        map(py, columns, out, |[torque, length, modulus]| self.0.twist_deg(torque, length, modulus))
    }

    /// What the hollow shaft carries and weighs against a solid one of the same outside diameter.
    /// Source: `torsion`, hollow over solid.
    fn hollow_over_solid(&self) -> PyResult<HollowOverSolid> {
        answer(self.0.hollow_over_solid())
    }

    /// Whether the shaft stays below its yield in shear under one steady load. Fatigue at a notch can break it far below.
    /// Source: JCGM 100:2008, equation 10, with the sensitivities of `torsion`.
    #[pyo3(signature = (load, *, rule))]
    fn shaft_hold(&self, load: ShaftLoad, rule: Rule) -> PyResult<ShaftHold> {
        answer(self.0.shaft_hold(load.into(), rule.into()))
    }
}
