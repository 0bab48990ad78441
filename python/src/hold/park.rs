//! Park gear and pawl.

use pyo3::prelude::*;
use trainwright::hold as core;

use super::contact::{LineContact, LinePressure};
use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Limits, Reading, Rule};
use crate::road::Driveline;

class! {
    /// Park gear: the tooth is a beam that stands on the root circle.
    ///
    /// >>> teal = ParkGear(teeth=24, face_mm=15, tooth_root_mm=9.6, contact_diameter_mm=132, root_diameter_mm=118,
    /// ...                 tip_diameter_mm=140)
    /// >>> round(teal.tooth_stress(torque_nm=959.48, stress_factor=1).von_mises_mpa, 1)
    /// 475.0
    "trainwright.hold" ParkGear = core::ParkGear, checked by possible {
        /// Teeth.
        teeth: u32,
        /// Face width that the pawl covers, mm.
        face_mm: f64,
        /// Thickness of a tooth at its root, mm.
        tooth_root_mm: f64,
        /// Diameter at which the pawl bears, mm.
        contact_diameter_mm: f64,
        /// Root diameter, mm.
        root_diameter_mm: f64,
        /// Tip diameter, mm.
        tip_diameter_mm: f64,
    }
}

fn possible(gear: core::ParkGear) -> trainwright::Result<core::ParkGear> {
    gear.checked()
}

class! {
    /// What the grade puts on the park lock.
    "trainwright.hold" ParkLoad = core::ParkLoad, explained by ["hold.park_load"] {
        /// Angle of the grade, degrees.
        grade_deg: f64,
        /// Share of the weight along the grade, N.
        grade_n: f64,
        /// Rolling radius of the tires, mm.
        wheel_radius_mm: f64,
        /// Torque at the park gear while the vehicle stands still, N·m.
        static_nm: f64,
        /// The same times the rocking factor, N·m.
        torque_nm: f64,
    }
}

columns! { ParkLoad[5]: grade_deg, grade_n, wheel_radius_mm, static_nm, torque_nm }

class! {
    /// Stress at the root of a park-gear tooth.
    "trainwright.hold" ParkStress = core::ParkStress, explained by ["hold.tooth_stress"] {
        /// Tangential force of the pawl on the tooth, N.
        tooth_n: f64,
        /// Lever of that force over the root, mm.
        arm_mm: f64,
        /// Bending stress with the stress factor, MPa.
        bending_mpa: f64,
        /// Mean shear stress, MPa.
        shear_mpa: f64,
        /// Equivalent stress, MPa.
        von_mises_mpa: f64,
    }
}

columns! { ParkStress[5]: tooth_n, arm_mm, bending_mpa, shear_mpa, von_mises_mpa }

class! {
    /// A vehicle on a grade that only the park lock holds.
    "trainwright.hold" Parked = core::Parked {
        /// Mass of truck, load and unbraked trailer, kg.
        mass_kg: Reading,
        /// Grade, %: rise over horizontal run, 0 to 100.
        grade_pct: f64,
        /// Greatest load while the vehicle rocks over the static load, 1 to 5. No default: whoever judges chooses it.
        rocking_factor: f64,
        /// Axle, transfer case and tire.
        driveline: Driveline,
    }
}

class! {
    /// What a park-gear tooth bears.
    "trainwright.hold" ToothStrength = core::ToothStrength {
        /// Yield stress, MPa.
        yield_mpa: f64,
        /// Stress at the fillet over that of the plain beam, 1 to 5; 1 where only the beam is compared with yield.
        stress_factor: f64,
        /// Relative standard uncertainty of the stress against the yield stress: tooth form, hardness, model.
        stress_u_rel: f64,
    }
}

class! {
    /// Whether a park gear holds, and what that rests on. A computed capability is not a rating.
    "trainwright.hold" ParkHold = core::ParkHold, explained by ["hold.park_hold"], judged in "MPa",
        inputs ["tooth", "mass", "tire"] {
        /// What the grade puts on it.
        load: ParkLoad,
        /// What that does at the root.
        stress: ParkStress,
        /// Yield stress over equivalent stress.
        margin: f64,
        /// The equivalent stress against the yield stress.
        judgment: Judgment,
        /// Uncertainty of the stress: tooth, mass, tire, in this order.
        budget: Budget,
        /// Grade at which the best estimate of the stress reaches yield, %; 100 for that or steeper.
        largest_grade_pct: f64,
        /// Largest grade that is a GO under the rule, %; 100 for that or steeper.
        proven_grade_pct: f64,
    }
}

class! {
    /// What happens before the pawl drops in.
    "trainwright.hold" FreeRoll = core::FreeRoll, explained by ["hold.free_roll"] {
        /// The vehicle rolls no farther before the pawl drops in, mm.
        roll_mm: f64,
        /// Energy of the vehicle by then, J.
        energy_j: f64,
        /// Its speed by then, km/h.
        speed_km_h: f64,
    }
}

class! {
    /// What another park gear gains and costs; each the second over the first.
    "trainwright.hold" ParkComparison = core::ParkComparison, explained by ["hold.compare_park_gears"] {
        /// Torque at the same bending stress.
        bending_ratio: f64,
        /// Torque at the same mean shear stress.
        shear_ratio: f64,
        /// Torque at the same equivalent stress.
        torque_ratio: f64,
        /// Free roll.
        free_roll_ratio: f64,
    }
}

/// Torque at the park gear of a vehicle that only the park lock holds on a grade: a `ParkLoad`, or a dictionary of arrays.
/// The radius is the rolling radius. Source: follows from the definitions (equilibrium on a grade).
///
/// >>> from trainwright.judge import Reading
/// >>> from trainwright.road import Driveline
/// >>> line = Driveline(axle_ratio=3.92, circumference_mm=Reading.exact(2561.18))
/// >>> park_load(line, mass_kg=11160, grade_pct=[10, 20, 30], rocking_factor=1)["torque_nm"].round(0)
/// array([1132., 2232., 3270.])
#[pyfunction]
#[pyo3(signature = (driveline, *, mass_kg, grade_pct, rocking_factor))]
pub fn park_load<'py>(
    py: Python<'py>,
    driveline: Driveline,
    mass_kg: Input<'py>,
    grade_pct: Input<'py>,
    rocking_factor: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("mass_kg", mass_kg), ("grade_pct", grade_pct), ("rocking_factor", rocking_factor)];
    map_class::<ParkLoad, _, 3, 5>(py, columns, |[mass, grade, rocking]| {
        core::park_load(driveline.0, mass, grade, rocking)
    })
}

#[pymethods]
impl ParkGear {
    /// Stress at the root of a tooth under a torque at the output shaft: a `ParkStress`, or a dictionary of arrays.
    /// Source: Shigley, beam in bending and distortion energy.
    #[pyo3(signature = (*, torque_nm, stress_factor))]
    fn tooth_stress<'py>(
        &self,
        py: Python<'py>,
        torque_nm: Input<'py>,
        stress_factor: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("torque_nm", torque_nm), ("stress_factor", stress_factor)];
        map_class::<ParkStress, _, 2, 5>(py, columns, |[torque, factor]| self.0.tooth_stress(torque, factor))
    }

    /// Load and root stress in one, for one mass and grade or for arrays of them: a `ParkStress`, or a dictionary of arrays.
    /// Source: as `park_load` and `tooth_stress`.
    #[pyo3(signature = (driveline, *, mass_kg, grade_pct, rocking_factor, stress_factor))]
    fn stress_on_grade<'py>(
        &self,
        py: Python<'py>,
        driveline: Driveline,
        mass_kg: Input<'py>,
        grade_pct: Input<'py>,
        rocking_factor: Input<'py>,
        stress_factor: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [
            ("mass_kg", mass_kg),
            ("grade_pct", grade_pct),
            ("rocking_factor", rocking_factor),
            ("stress_factor", stress_factor),
        ];
        map_class::<ParkStress, _, 4, 5>(py, columns, |[mass, grade, rocking, factor]| {
            let mass_kg = trainwright::judge::Reading::exact(mass)?;
            let parked = core::Parked { mass_kg, grade_pct: grade, rocking_factor: rocking, driveline: driveline.0 };
            self.0.stress_on_grade(parked, factor)
        })
    }

    /// Grade, %, on which the root reaches a stress; 100 for that or steeper. The grade in `parked` is not used.
    /// Source: follows from the definitions (`tooth_stress` solved for the grade).
    #[pyo3(signature = (parked, *, allow_mpa, stress_factor))]
    fn largest_grade_pct(&self, parked: Parked, allow_mpa: f64, stress_factor: f64) -> PyResult<f64> {
        answer(self.0.largest_grade_pct(parked.into(), allow_mpa, stress_factor))
    }

    /// Whether the root stress stays below yield, and the largest grade at which it does.
    /// Parking brake first, then Park; chock; never stand downhill. Source: JCGM 100:2008, equation 10.
    fn park_hold(&self, parked: Parked, strength: ToothStrength, rule: Rule) -> PyResult<ParkHold> {
        answer(self.0.park_hold(parked.into(), strength.into(), rule.into()))
    }

    /// How far the vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
    /// Source: follows from the definitions (one tooth pitch at the road).
    fn free_roll(&self, parked: Parked) -> PyResult<FreeRoll> {
        answer(self.0.free_roll(parked.into()))
    }

    /// Angle, degrees, that the gear turns while the pawl can drop in; both widths along the contact diameter.
    /// Source: follows from the definitions (arc over radius).
    #[pyo3(signature = (*, space_mm, pawl_tip_mm))]
    fn window_deg(&self, space_mm: f64, pawl_tip_mm: f64) -> PyResult<f64> {
        answer(self.0.window_deg(space_mm, pawl_tip_mm))
    }
}

/// What the second park gear gains in strength over the first, and costs in free roll.
/// Source: follows from the definitions (root stress of both at one torque).
#[pyfunction]
#[pyo3(signature = (first, second, *, stress_factor))]
pub fn compare_park_gears(first: ParkGear, second: ParkGear, stress_factor: f64) -> PyResult<ParkComparison> {
    answer(core::compare_park_gears(first.into(), second.into(), stress_factor))
}

class! {
    /// The pawl.
    ///
    /// >>> from trainwright.judge import Limits
    /// >>> pawl = Pawl(flank_deg=13, friction=Limits(lower=0.08, upper=0.15), inertia_kg_m2=1.9e-4, spring_nm=1.4, drop_deg=9)
    /// >>> pawl.ejection(tooth_n=10000).releases
    /// True
    "trainwright.hold" Pawl = core::Pawl {
        /// Angle of the loaded flank to the radius of the gear, degrees: it pushes the pawl out.
        flank_deg: f64,
        /// Least and greatest friction between pawl and tooth.
        friction: Limits,
        /// Moment of inertia about its pivot, kg·m².
        inertia_kg_m2: f64,
        /// Torque that throws it in, N·m.
        spring_nm: f64,
        /// Angle through which it drops, degrees.
        drop_deg: f64,
    }
}

class! {
    /// Whether a loaded tooth pushes the pawl out.
    "trainwright.hold" Ejection = core::Ejection, explained by ["hold.ejection"] {
        /// Force that pushes the pawl out at the greatest friction, N; negative where it then sticks.
        least_n: f64,
        /// The same at the least friction, N: what the cone or roller behind the pawl must hold.
        most_n: f64,
        /// `least_n` over the tooth force.
        least_share: f64,
        /// `most_n` over the tooth force.
        most_share: f64,
        /// Greatest friction at which the pawl still leaves by itself.
        friction_to_stick: f64,
        /// The pawl leaves under load over the whole range of friction.
        releases: bool,
    }
}

class! {
    /// At which speed the pawl still drops in.
    "trainwright.hold" Latch = core::Latch, explained by ["hold.latch"] {
        /// Time of the drop, s.
        drop_time_s: f64,
        /// Output-shaft speed above which it skips over the teeth, 1/min.
        output_rpm: f64,
        /// Road speed of it, km/h.
        road_km_h: f64,
    }
}

#[pymethods]
impl Pawl {
    /// Force with which a loaded tooth pushes the pawl out: it must, or Park cannot be left on a grade.
    /// Source: follows from the definitions (force on an inclined flank with friction).
    #[pyo3(signature = (*, tooth_n))]
    fn ejection(&self, tooth_n: f64) -> PyResult<Ejection> {
        answer(self.0.ejection(tooth_n))
    }

    /// Contact pressure of the pawl on the flank of a loaded tooth.
    /// Source: follows from the definitions (force on an inclined flank); Shigley for the contact.
    #[pyo3(signature = (contact, *, tooth_n))]
    fn tip_pressure(&self, contact: LineContact, tooth_n: f64) -> PyResult<LinePressure> {
        answer(self.0.tip_pressure(contact.into(), tooth_n))
    }

    /// Speed above which the pawl skips over the teeth instead of dropping in.
    /// Source: follows from the definitions (constant acceleration).
    #[pyo3(signature = (driveline, *, window_deg))]
    fn latch(&self, driveline: Driveline, window_deg: f64) -> PyResult<Latch> {
        answer(self.0.latch(driveline.into(), window_deg))
    }
}

/// Torque, N·m, at the park gear at which the tires of the locked axle slide: more than that the ground does not put on it.
/// Below the torque of `park_load` the vehicle slides down, however strong the park lock is.
/// Source: follows from the definitions (friction of a locked axle).
#[pyfunction]
#[pyo3(signature = (driveline, *, axle_load_kg, grade_pct, tire_friction, out = None))]
pub fn grip_nm<'py>(
    py: Python<'py>,
    driveline: Driveline,
    axle_load_kg: Input<'py>,
    grade_pct: Input<'py>,
    tire_friction: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("axle_load_kg", axle_load_kg), ("grade_pct", grade_pct), ("tire_friction", tire_friction)];
    map(py, columns, out, |[load, grade, friction]| core::grip_nm(driveline.0, load, grade, friction))
}

/// How far, mm, a light vehicle without a trailer may move in Park on no more than 10 %. For comparison only.
/// Source: 49 CFR 571.114.
///
/// >>> roll_limits_49_cfr_571_114(grade_pct=10)
/// Limits(lower=0.0, upper=150.0)
#[pyfunction]
#[pyo3(signature = (*, grade_pct))]
pub fn roll_limits_49_cfr_571_114(grade_pct: f64) -> PyResult<Limits> {
    answer(core::roll_limits_49_cfr_571_114(grade_pct))
}
