//! `trainwright.clutch`: forces, capacity, holding, bands, shifts and their heat.

use std::collections::BTreeMap;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::clutch as core;

use crate::array::{Input, Out, map};
use crate::class::{Field, class};
use crate::error::{answer, raise, refuse};
use crate::judge::{Budget, Judgment, Limits, Reading, Rule, Verdict};
use crate::train::State;

class! {
    /// A flat ring: a lining, a piston or a wetted wall.
    ///
    /// >>> Annulus(inner_radius_mm=56, outer_radius_mm=78).mean_radius_worn_mm()
    /// 67.0
    "trainwright.clutch" Annulus = core::Annulus {
        /// Inner radius, mm; 0 for a full disc.
        inner_radius_mm: f64,
        /// Outer radius, mm.
        outer_radius_mm: f64,
    }
}

#[pymethods]
impl Annulus {
    /// Area of one side, mm².
    fn area_mm2(&self) -> PyResult<f64> {
        self.0.area_mm2().map_err(raise)
    }

    /// Friction radius of a new lining, mm: uniform pressure. Source: Shigley, chapter 16.
    fn mean_radius_new_mm(&self) -> PyResult<f64> {
        self.0.mean_radius_new_mm().map_err(raise)
    }

    /// Friction radius of a worn-in lining, mm: uniform wear. Source: Shigley, chapter 16.
    fn mean_radius_worn_mm(&self) -> PyResult<f64> {
        self.0.mean_radius_worn_mm().map_err(raise)
    }

    /// Inner radius, mm, that gives this outer radius most torque at a fixed peak pressure. Source: Shigley, chapter 16.
    ///
    /// >>> round(2 * Annulus(inner_radius_mm=0, outer_radius_mm=3.25 * 25.4).best_inner_radius_mm() / 25.4, 3)
    /// 3.753
    fn best_inner_radius_mm(&self) -> PyResult<f64> {
        self.0.best_inner_radius_mm().map_err(raise)
    }

    /// Clamp force, N, at which this lining, worn in, reaches a peak pressure. Source: Shigley, chapter 16.
    #[pyo3(signature = (*, peak_mpa))]
    fn clamp_at_peak_n(&self, peak_mpa: f64) -> PyResult<f64> {
        self.0.clamp_at_peak_n(peak_mpa).map_err(raise)
    }

    /// Peak pressure, MPa, of this lining, worn in, under a clamp force.
    #[pyo3(signature = (*, clamp_n))]
    fn peak_at_clamp_mpa(&self, clamp_n: f64) -> PyResult<f64> {
        self.0.peak_at_clamp_mpa(clamp_n).map_err(raise)
    }
}

class! {
    /// A set of equal return springs.
    ///
    /// >>> ReturnSprings(count=20, rate_n_mm=4, free_length_mm=38).spring_force_n(fitted_length_mm=24)
    /// 1120.0
    "trainwright.clutch" ReturnSprings = core::ReturnSprings {
        /// Number of springs.
        count: u32,
        /// Rate of one spring, N/mm.
        rate_n_mm: f64,
        /// Length of a free spring, mm.
        free_length_mm: f64,
    }
}

#[pymethods]
impl ReturnSprings {
    /// Force, N, at a fitted length with the pack applied.
    /// Source: follows from the definitions (Hooke's law).
    #[pyo3(signature = (*, fitted_length_mm))]
    fn spring_force_n(&self, fitted_length_mm: f64) -> PyResult<f64> {
        self.0.spring_force_n(fitted_length_mm).map_err(raise)
    }
}

class! {
    /// Oil that turns with the drum, behind the piston or in the balance dam.
    ///
    /// >>> head = Head(wetted=Annulus(inner_radius_mm=45, outer_radius_mm=70), free_surface_radius_mm=30)
    /// >>> round(head.head_force_n(oil_density_kg_m3=840, drum_speed_rpm=6000), 3)
    /// 3837.608
    "trainwright.clutch" Head = core::Head {
        /// The wall that the oil presses on.
        wetted: Annulus,
        /// Radius of the free surface, mm: the feed or the vent.
        free_surface_radius_mm: f64,
    }
}

#[pymethods]
impl Head {
    /// No oil, no force: both heads of a pack whose dam cancels the apply side, and both of a brake.
    #[staticmethod]
    fn none() -> Self {
        Self(core::Head::NONE)
    }

    /// Axial force of the oil, N: an upper bound, since real oil lags the drum.
    /// Source: follows from the definitions (p = ρ ω² (r² − r_0²)/2 integrated over the wetted annulus).
    #[pyo3(signature = (*, oil_density_kg_m3, drum_speed_rpm, out = None))]
    fn head_force_n<'py>(
        &self,
        py: Python<'py>,
        oil_density_kg_m3: Input<'py>,
        drum_speed_rpm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("oil_density_kg_m3", oil_density_kg_m3), ("drum_speed_rpm", drum_speed_rpm)];
        map(py, columns, out, |[density, speed]| self.0.head_force_n(density, speed))
    }

    /// Pressure of the oil at a radius, kPa; 0 inside the free surface.
    #[pyo3(signature = (*, radius_mm, oil_density_kg_m3, drum_speed_rpm, out = None))]
    fn head_pressure_kpa<'py>(
        &self,
        py: Python<'py>,
        radius_mm: Input<'py>,
        oil_density_kg_m3: Input<'py>,
        drum_speed_rpm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns =
            [("radius_mm", radius_mm), ("oil_density_kg_m3", oil_density_kg_m3), ("drum_speed_rpm", drum_speed_rpm)];
        map(py, columns, out, |[radius, density, speed]| self.0.head_pressure_kpa(radius, density, speed))
    }
}

/// How far, mm, the oil surface in an upright turning drum dips from wall to axis.
/// Source: Bansal, forced vortex.
///
/// >>> round(surface_drop_mm(radius_mm=75, speed_rpm=356.7))
/// 400
#[pyfunction]
#[pyo3(signature = (*, radius_mm, speed_rpm, out = None))]
pub fn surface_drop_mm<'py>(
    py: Python<'py>,
    radius_mm: Input<'py>,
    speed_rpm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("radius_mm", radius_mm), ("speed_rpm", speed_rpm)], out, |[radius, speed]| {
        core::surface_drop_mm(radius, speed)
    })
}

/// Faces of a pack of friction plates between steels: two for each.
#[pyfunction]
pub fn plate_faces(friction_plates: u32) -> PyResult<u32> {
    core::plate_faces(friction_plates).map_err(raise)
}

/// Pairs of faces between alternating driving and driven discs: their sum less one.
#[pyfunction]
#[pyo3(signature = (*, driving_discs, driven_discs))]
pub fn disc_faces(driving_discs: u32, driven_discs: u32) -> PyResult<u32> {
    core::disc_faces(driving_discs, driven_discs).map_err(raise)
}

class! {
    /// A lining whose friction changes along the radius, as it does with sliding speed.
    ///
    /// >>> lining = Annulus(inner_radius_mm=20, outer_radius_mm=40)
    /// >>> face = LiningByRadius(lining=lining, faces=1, pressure_mpa=0.5, friction_at_axis=0, friction_per_mm=0.01)
    /// >>> round(face.torque_by_radius_nm(), 2)
    /// 18.85
    "trainwright.clutch" LiningByRadius = core::LiningByRadius {
        /// The lining.
        lining: Annulus,
        /// Friction faces.
        faces: u32,
        /// Uniform pressure, MPa.
        pressure_mpa: f64,
        /// The friction line at radius 0.
        friction_at_axis: f64,
        /// Change of friction per mm of radius.
        friction_per_mm: f64,
    }
}

#[pymethods]
impl LiningByRadius {
    /// Torque, N·m.
    /// Source: follows from the definitions (∫ μ(r) p 2 π r² dr).
    fn torque_by_radius_nm(&self) -> PyResult<f64> {
        self.0.torque_by_radius_nm().map_err(raise)
    }
}

class! {
    /// A clutch or brake pack. Nothing in it depends on pressure, speed or temperature.
    ///
    /// >>> c1 = Pack(lining=Annulus(inner_radius_mm=56, outer_radius_mm=78), faces=plate_faces(4),
    /// ...           piston=Annulus(inner_radius_mm=46, outer_radius_mm=73), return_spring_n=Limits(lower=1050, upper=1280))
    /// >>> round(c1.capacity(pressure_kpa=1470, friction=0.112, drum_speed_rpm=0, oil_density_kg_m3=790).torque_nm, 1)
    /// 821.2
    "trainwright.clutch" Pack = core::Pack, checked by possible {
        /// Where lining meets steel; measured on the lining, not on the plate.
        lining: Annulus,
        /// Piston face under apply pressure.
        piston: Annulus,
        /// Friction faces: plate_faces or disc_faces.
        faces: u32,
        /// Worn-in lining (uniform wear); False for new plates (uniform pressure).
        worn: bool = false,
        /// Return-spring force with the pack applied, N: weakest and strongest spring in limits.
        return_spring_n: Limits,
        /// Drag of the piston seals against apply, N.
        seal_drag_n: f64 = 0.0,
        /// Oil behind the piston: adds to the apply force when the drum turns.
        head: Head = Head::none(),
        /// Oil in the balance dam: takes from it.
        dam: Head = Head::none(),
    }
}

fn possible(pack: core::Pack) -> trainwright::Result<core::Pack> {
    pack.capacity_line(0.0).map(|_| pack)
}

class! {
    /// Capacity with everything that made it. Not a rating.
    "trainwright.clutch" Capacity = core::Capacity {
        /// Piston area, mm².
        piston_area_mm2: f64,
        /// Pressure on the piston, N.
        apply_force_n: f64,
        /// Oil head behind the piston, N.
        head_force_n: f64,
        /// Oil head of the balance dam, N.
        dam_force_n: f64,
        /// Strongest return spring, N.
        return_spring_n: f64,
        /// Seal drag, N.
        seal_drag_n: f64,
        /// Force left on the plates, N; negative while the spring holds the piston back.
        net_force_n: f64,
        /// Friction radius, mm.
        mean_radius_mm: f64,
        /// Friction faces.
        faces: u32,
        /// Friction coefficient.
        friction: f64,
        /// Mean pressure on the lining, MPa.
        lining_mean_mpa: f64,
        /// Highest pressure on the lining, MPa.
        lining_peak_mpa: f64,
        /// Capacity, N·m.
        torque_nm: f64,
    }
}

class! {
    /// Pressure needed for a torque.
    "trainwright.clutch" PressureNeeded = core::PressureNeeded {
        /// With the strongest return spring, kPa.
        strong_spring_kpa: f64,
        /// With the weakest return spring, kPa.
        weak_spring_kpa: f64,
    }
}

class! {
    /// A pack in one oil, reduced to the constants of its capacity.
    "trainwright.clutch" CapacityLine = core::CapacityLine {
        /// Piston area, mm².
        piston_area_mm2: f64,
        /// Head less dam over the square of drum speed, N/(1/min)².
        head_n_per_rpm2: f64,
        /// Strongest return spring and seal drag, N.
        held_back_n: f64,
        /// Faces × friction radius, mm.
        arm_mm: f64,
    }
}

class! {
    /// Whether a pack holds, and what that rests on.
    "trainwright.clutch" Hold = core::Hold {
        /// Capacity at the best estimates.
        capacity: Capacity,
        /// Torque to hold, N·m.
        need_nm: Reading,
        /// Capacity over demand.
        margin: f64,
        /// The torque to spare, capacity less demand, against 0: its chance is the chance that the pack holds.
        judgment: Judgment,
        /// Uncertainty of the torque to spare: pressure, friction, geometry, demand, in this order.
        budget: Budget,
        /// Pressure at which it just holds.
        pressure_needed: PressureNeeded,
        /// Friction at which it just holds; infinite while the spring holds the piston back.
        friction_needed: f64,
    }
}

#[pymethods]
impl Pack {
    /// Friction radius, mm, of the lining in the state that `worn` tells.
    fn mean_radius_mm(&self) -> PyResult<f64> {
        self.0.mean_radius_mm().map_err(raise)
    }

    /// Capacity with everything that made it, with the strongest return spring. Not a rating.
    ///
    /// `friction` is static to hold, dynamic while slipping. `drum_speed_rpm` is that of the drum that holds the apply oil:
    /// 0 for a brake, and for a drum that stands at stall. Source: Shigley, chapter 16.
    #[pyo3(signature = (*, pressure_kpa, friction, drum_speed_rpm, oil_density_kg_m3))]
    fn capacity(
        &self,
        pressure_kpa: f64,
        friction: f64,
        drum_speed_rpm: f64,
        oil_density_kg_m3: f64,
    ) -> PyResult<Capacity> {
        answer(self.0.capacity(core::Applied { pressure_kpa, friction, drum_speed_rpm, oil_density_kg_m3 }))
    }

    /// Capacity, N·m, over columns: equal to `capacity` bit for bit.
    #[pyo3(signature = (*, pressure_kpa, friction, drum_speed_rpm, oil_density_kg_m3, out = None))]
    fn capacity_nm<'py>(
        &self,
        py: Python<'py>,
        pressure_kpa: Input<'py>,
        friction: Input<'py>,
        drum_speed_rpm: Input<'py>,
        oil_density_kg_m3: f64,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let line = self.0.capacity_line(oil_density_kg_m3).map_err(raise)?;
        let columns = [("pressure_kpa", pressure_kpa), ("drum_speed_rpm", drum_speed_rpm), ("friction", friction)];
        map(py, columns, out, |[pressure, speed, friction]| line.capacity_nm(pressure, speed, friction))
    }

    /// The constants of this pack in this oil.
    #[pyo3(signature = (*, oil_density_kg_m3))]
    fn capacity_line(&self, oil_density_kg_m3: f64) -> PyResult<CapacityLine> {
        answer(self.0.capacity_line(oil_density_kg_m3))
    }

    /// Pressure at which the pack just holds a torque.
    /// Source: follows from the definitions (clutch.capacity solved for the pressure).
    #[pyo3(signature = (torque_nm, *, friction, drum_speed_rpm, oil_density_kg_m3))]
    fn pressure_needed(
        &self,
        torque_nm: f64,
        friction: f64,
        drum_speed_rpm: f64,
        oil_density_kg_m3: f64,
    ) -> PyResult<PressureNeeded> {
        let applied = core::Applied { pressure_kpa: 0.0, friction, drum_speed_rpm, oil_density_kg_m3 };
        answer(self.0.pressure_needed(torque_nm, applied))
    }

    /// Friction coefficient at which the pack just holds a torque.
    #[pyo3(signature = (torque_nm, *, pressure_kpa, drum_speed_rpm, oil_density_kg_m3))]
    fn friction_needed(
        &self,
        torque_nm: f64,
        pressure_kpa: f64,
        drum_speed_rpm: f64,
        oil_density_kg_m3: f64,
    ) -> PyResult<f64> {
        let applied = core::Applied { pressure_kpa, friction: 1.0, drum_speed_rpm, oil_density_kg_m3 };
        self.0.friction_needed(torque_nm, applied).map_err(raise)
    }

    /// Drum speed, 1/min, at which the oil head of the open pack overcomes its weakest return spring.
    #[pyo3(signature = (*, oil_density_kg_m3))]
    fn drag_speed_rpm(&self, oil_density_kg_m3: f64) -> PyResult<f64> {
        self.0.drag_speed_rpm(oil_density_kg_m3).map_err(raise)
    }

    /// Whether the pack holds a torque: chance, verdict, and the pressure or friction that turns it.
    ///
    /// `need_nm`, `pressure_kpa` and `friction` are readings; `geometry_u_rel` is the relative standard uncertainty of capacity
    /// from dimensions; `drum_speed_rpm` and `oil_density_kg_m3` give the oil head, 0 where none is counted.
    /// `judge.settle(hold.judgment, hold.budget)` names the measurement that would settle it.
    /// Source: JCGM 100:2008, equation 10, with the sensitivities of clutch.capacity.
    #[pyo3(signature = (need_nm, *, pressure_kpa, friction, geometry_u_rel, drum_speed_rpm, oil_density_kg_m3, rule))]
    #[allow(clippy::too_many_arguments)]
    fn hold(
        &self,
        need_nm: Reading,
        pressure_kpa: Reading,
        friction: Reading,
        geometry_u_rel: f64,
        drum_speed_rpm: f64,
        oil_density_kg_m3: f64,
        rule: Rule,
    ) -> PyResult<Hold> {
        let working = core::Working {
            pressure_kpa: pressure_kpa.into(),
            friction: friction.into(),
            geometry_u_rel,
            drum_speed_rpm,
            oil_density_kg_m3,
        };
        answer(self.0.hold(need_nm.into(), working, rule.into()))
    }
}

/// Position of the least margin: the element that governs a gear, or the gear that governs a unit.
///
/// >>> governing([1.252, 1.105, 1.382])
/// 1
#[pyfunction]
pub fn governing(margins: Vec<f64>) -> PyResult<u32> {
    core::governing(&margins).map_err(raise)
}

class! {
    /// A band around a drum.
    ///
    /// >>> band = Band(drum_radius_mm=75, width_mm=40, wrap_deg=330)
    /// >>> round(band.energized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    /// 224.1
    /// >>> round(band.deenergized(servo_force_n=3000, friction=0.12).torque_nm, 1)
    /// 112.3
    "trainwright.clutch" Band = core::Band {
        /// Radius of the drum, mm.
        drum_radius_mm: f64,
        /// Width of the lining, mm.
        width_mm: f64,
        /// Angle of contact, degrees; of a double wrap the sum of both turns.
        wrap_deg: f64,
    }
}

class! {
    /// What a band does under a servo force.
    "trainwright.clutch" BandTorque = core::BandTorque {
        /// Tight over slack tension.
        tension_ratio: f64,
        /// Tension at the tight end, N.
        tight_n: f64,
        /// Tension at the slack end, N.
        slack_n: f64,
        /// Highest pressure on the lining, MPa.
        lining_peak_mpa: f64,
        /// Torque, N·m. Not a rating.
        torque_nm: f64,
        /// Change of torque per unit of friction, N·m.
        nm_per_friction: f64,
    }
}

#[pymethods]
impl Band {
    /// The servo at the slack end: the drum pulls the band toward its anchor and multiplies the force.
    /// Source: Shigley, chapter 16, band-type clutches and brakes.
    #[pyo3(signature = (*, servo_force_n, friction))]
    fn energized(&self, servo_force_n: f64, friction: f64) -> PyResult<BandTorque> {
        answer(self.0.energized(servo_force_n, friction))
    }

    /// The servo at the tight end: the drum pulls the band toward the servo.
    #[pyo3(signature = (*, servo_force_n, friction))]
    fn deenergized(&self, servo_force_n: f64, friction: f64) -> PyResult<BandTorque> {
        answer(self.0.deenergized(servo_force_n, friction))
    }
}

class! {
    /// The servo of a band.
    "trainwright.clutch" Servo = core::Servo {
        /// Face under apply pressure; inner radius 0 for a plain piston.
        piston: Annulus,
        /// Return-spring force with the band applied, N.
        return_spring_n: f64,
        /// Band force over piston force: the lever, 1 without one.
        lever_ratio: f64 = 1.0,
    }
}

#[pymethods]
impl Servo {
    /// Force at the end of the band, N.
    #[pyo3(signature = (*, pressure_kpa))]
    fn servo_force_n(&self, pressure_kpa: f64) -> PyResult<f64> {
        self.0.servo_force_n(pressure_kpa).map_err(raise)
    }
}

class! {
    /// Two inertias that a slipping clutch pulls together; all values referred to the clutch.
    ///
    /// >>> Slip(input_inertia_kg_m2=4, output_inertia_kg_m2=2, input_speed_rpm=60, output_speed_rpm=0,
    /// ...      clutch_torque_nm=100).slip_end().final_speed_rpm
    /// 40.0
    "trainwright.clutch" Slip = core::Slip {
        /// Inertia on the input side, kg·m².
        input_inertia_kg_m2: f64,
        /// Inertia on the output side, kg·m².
        output_inertia_kg_m2: f64,
        /// Speed of the input side, 1/min.
        input_speed_rpm: f64,
        /// Speed of the output side, 1/min.
        output_speed_rpm: f64,
        /// Torque of the slipping clutch, N·m: from dynamic friction.
        clutch_torque_nm: f64,
        /// Torque that drives the input side forward, N·m.
        drive_torque_nm: f64 = 0.0,
        /// Torque that holds the output side back, N·m.
        load_torque_nm: f64 = 0.0,
    }
}

class! {
    /// A slip while something holds the input side at constant speed.
    "trainwright.clutch" HeldInput = core::HeldInput {
        /// Inertia on the output side, kg·m².
        output_inertia_kg_m2: f64,
        /// Speed of the input side, 1/min.
        input_speed_rpm: f64,
        /// Speed of the output side, 1/min.
        output_speed_rpm: f64,
        /// Torque of the slipping clutch, N·m.
        clutch_torque_nm: f64,
        /// Torque that holds the output side back, N·m.
        load_torque_nm: f64 = 0.0,
    }
}

class! {
    /// How a slip ends.
    "trainwright.clutch" SlipEnd = core::SlipEnd {
        /// The slip reaches zero. If not, the time is infinite, and final speed and works are 0 and mean nothing.
        locks: bool,
        /// The same clutch torque also keeps it locked.
        stays_locked: bool,
        /// Rate at which the slip shrinks, (1/min)/s; 0 or less: it never locks.
        slip_shrinks_rpm_s: f64,
        /// Time to lock-up, s.
        time_s: f64,
        /// Common speed at lock-up, 1/min.
        final_speed_rpm: f64,
        /// Heat at the faces, J.
        energy_j: f64,
        /// Heat flow at the start, kW.
        start_heat_kw: f64,
        /// Work that the input side took in from outside, J.
        drive_work_j: f64,
        /// Work that the output side gave to its load, J.
        load_work_j: f64,
        /// Torque through the clutch once locked, N·m.
        locked_torque_nm: f64,
    }
}

#[pymethods]
impl Slip {
    /// Time, common speed and energy; "never locks" is an answer.
    /// Source: Shigley, chapter 16, energy considerations; with outside torques from Newton's second law.
    fn slip_end(&self) -> PyResult<SlipEnd> {
        answer(self.0.slip_end())
    }
}

#[pymethods]
impl HeldInput {
    /// Time and energy; without load the energy is I ω²/2, whatever the clutch torque.
    /// Source: follows from the definitions (clutch.slip_end with an endless input inertia).
    fn held_input_end(&self) -> PyResult<SlipEnd> {
        answer(self.0.held_input_end())
    }
}

/// Inertia of a shaft, kg·m², as a shaft feels it against which it turns `speed_ratio` times as fast.
#[pyfunction]
#[pyo3(signature = (*, inertia_kg_m2, speed_ratio, out = None))]
pub fn referred_inertia_kg_m2<'py>(
    py: Python<'py>,
    inertia_kg_m2: Input<'py>,
    speed_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("inertia_kg_m2", inertia_kg_m2), ("speed_ratio", speed_ratio)], out, |[inertia, ratio]| {
        core::referred_inertia_kg_m2(inertia, ratio)
    })
}

class! {
    /// Material and thickness of a steel plate heated on both faces.
    "trainwright.clutch" Steel = core::Steel {
        /// Thermal conductivity, W/(m·K).
        conductivity_w_m_k: f64,
        /// Density, kg/m³.
        density_kg_m3: f64,
        /// Specific heat, J/(kg·K).
        specific_heat_j_kg_k: f64,
        /// Thickness, mm.
        thickness_mm: f64,
    }
}

class! {
    /// Temperature rise of a surface.
    "trainwright.clutch" SurfaceRise = core::SurfaceRise {
        /// Rise, K.
        rise_k: f64,
        /// When it is reached, s.
        at_s: f64,
        /// Until when the plate counts as thick, s.
        thick_until_s: f64,
        /// The rise is reached within that time. If not, the true rise is higher: the bulk rise governs.
        thick: bool,
    }
}

#[pymethods]
impl Steel {
    /// Surface rise under a constant heat flux into one face. Source: Carslaw and Jaeger, section 2.9.
    #[pyo3(signature = (*, flux_w_mm2, time_s))]
    fn surface_rise_constant(&self, flux_w_mm2: f64, time_s: f64) -> PyResult<SurfaceRise> {
        answer(self.0.surface_rise_constant(flux_w_mm2, time_s))
    }

    /// Highest surface rise under a flux that falls linearly to zero, as under constant clutch torque.
    /// Source: follows from the definitions (superposition of clutch.surface_rise_constant: ΔT ∝ √t' − (2/3)
    /// t'^{3/2}/t, largest at t' = t/2).
    #[pyo3(signature = (*, start_flux_w_mm2, slip_time_s))]
    fn surface_rise_falling(&self, start_flux_w_mm2: f64, slip_time_s: f64) -> PyResult<SurfaceRise> {
        answer(self.0.surface_rise_falling(start_flux_w_mm2, slip_time_s))
    }
}

/// Mean temperature rise of the steel plates, K.
/// Source: Shigley, chapter 16, temperature rise.
///
/// >>> round(bulk_rise_k(energy_j=20000, steel_mass_kg=2.4, specific_heat_j_kg_k=500), 3)
/// 16.667
#[pyfunction]
#[pyo3(signature = (*, energy_j, steel_mass_kg, specific_heat_j_kg_k, out = None))]
pub fn bulk_rise_k<'py>(
    py: Python<'py>,
    energy_j: Input<'py>,
    steel_mass_kg: Input<'py>,
    specific_heat_j_kg_k: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("energy_j", energy_j), ("steel_mass_kg", steel_mass_kg), ("specific_heat_j_kg_k", specific_heat_j_kg_k)];
    map(py, columns, out, |[energy, mass, heat]| core::bulk_rise_k(energy, mass, heat))
}

class! {
    /// The steel plates of a pack.
    "trainwright.clutch" SteelPlates = core::SteelPlates {
        /// Material and thickness of one plate.
        steel: Steel,
        /// Mass of all steel plates, kg.
        steel_mass_kg: f64,
        /// Where lining meets steel.
        lining: Annulus,
        /// Friction faces.
        faces: u32,
    }
}

class! {
    /// What one shift does to the steel plates. All heat is taken to enter the steel.
    "trainwright.clutch" PlateHeat = core::PlateHeat {
        /// Energy per friction area, J/mm².
        energy_j_mm2: f64,
        /// Heat flux at the start, W/mm².
        start_flux_w_mm2: f64,
        /// Mean rise of the steel, K.
        bulk_rise_k: f64,
        /// Highest rise of its surface while the plate counts as thick.
        surface: SurfaceRise,
    }
}

#[pymethods]
impl SteelPlates {
    /// What one shift does to them; the slip locks, under constant torque.
    fn plate_heat(&self, slip: SlipEnd) -> PyResult<PlateHeat> {
        answer(self.0.plate_heat(slip.into()))
    }
}

/// A pack and the member that its drum, and so its apply oil, turns with; the fixed member for a brake.
#[pyclass(frozen, eq, from_py_object, module = "trainwright.clutch")]
#[derive(Clone, PartialEq)]
pub struct ElementPack {
    pack: Pack,
    turns_with: String,
}

#[pymethods]
impl ElementPack {
    #[new]
    #[pyo3(signature = (*, pack, turns_with))]
    pub fn new(pack: Pack, turns_with: String) -> Self {
        Self { pack, turns_with }
    }

    /// The pack.
    #[getter]
    fn pack(&self) -> Pack {
        self.pack
    }

    /// The member that its drum turns with.
    #[getter]
    fn turns_with(&self) -> &str {
        &self.turns_with
    }

    fn __repr__(&self) -> String {
        format!("ElementPack(pack={}, turns_with={:?})", self.pack.source(), self.turns_with)
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        let fields = PyDict::new(py);
        fields.set_item("pack", self.pack)?;
        fields.set_item("turns_with", &self.turns_with)?;
        Ok(((), fields))
    }
}

class! {
    /// One pack in one gear.
    "trainwright.clutch" ElementMargin = core::ElementMargin {
        /// Place of the element in the train.
        element: u8,
        /// The train determines the share. If not, everything below is 0 and NOT PROVEN.
        share_known: bool,
        /// Torque per unit of turbine torque, without sign.
        share: f64,
        /// Speed of its drum, 1/min.
        drum_speed_rpm: f64,
        /// Torque to hold, N·m.
        need_nm: f64,
        /// Capacity, N·m. Not a rating.
        capacity_nm: f64,
        /// Capacity over demand; infinite where the element carries nothing.
        margin: f64,
        /// Pressure at which it just holds.
        pressure_needed: PressureNeeded,
        /// Friction at which it just holds.
        friction_needed: f64,
        /// Chance that it holds.
        chance: f64,
        /// Verdict under the rule.
        verdict: Verdict,
    }
}

/// Every pack of one gear.
#[pyclass(frozen, module = "trainwright.clutch")]
pub struct GearReview {
    review: core::GearReview,
    names: Vec<String>,
}

#[pymethods]
impl GearReview {
    /// Margin of each closed element that has a pack, by its name.
    #[getter]
    fn elements<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let elements = PyDict::new(py);
        for row in self.review.elements() {
            elements.set_item(self.name(*row), ElementMargin(*row))?;
        }
        Ok(elements)
    }

    /// Name of the element with the least margin.
    #[getter]
    fn governing(&self) -> &str {
        self.name(self.review.weakest())
    }

    /// The least margin.
    #[getter]
    fn weakest(&self) -> ElementMargin {
        ElementMargin(self.review.weakest())
    }

    fn __repr__(&self) -> String {
        let row = |row: &core::ElementMargin| {
            format!("{} {:.3} {}", self.name(*row), row.margin, Verdict(row.verdict).word())
        };
        let rows: Vec<_> = self.review.elements().iter().map(row).collect();
        format!("<margins: {}; {} governs>", rows.join(", "), self.governing())
    }
}

impl GearReview {
    fn name(&self, row: core::ElementMargin) -> &str {
        self.names.get(usize::from(row.element)).map_or("", String::as_str)
    }
}

/// Capacity of each pack of a gear against the torque that the train puts on it.
///
/// `state` is a gear of a `Train`; `packs` maps elements to `ElementPack`. `turbine_torque_nm` is not the engine's while the
/// converter multiplies it. `turbine_speed_rpm` is 0 at stall, where no drum of the input turns and no oil head counts.
/// Source: follows from the definitions (equilibrium of the gear train).
#[pyfunction]
#[pyo3(signature = (
    state, packs, *, pressure_kpa, friction, geometry_u_rel, oil_density_kg_m3, turbine_torque_nm, turbine_speed_rpm, rule
))]
#[allow(clippy::too_many_arguments)]
pub fn review(
    state: PyRef<'_, State>,
    packs: BTreeMap<String, PyRef<'_, ElementPack>>,
    pressure_kpa: Reading,
    friction: Reading,
    geometry_u_rel: f64,
    oil_density_kg_m3: f64,
    turbine_torque_nm: Reading,
    turbine_speed_rpm: f64,
    rule: Rule,
) -> PyResult<GearReview> {
    let train = state.train();
    let place = |names: &[String], name: &str| {
        let known =
            || refuse("MISSING", "packs", format!("packs: the train has no {name:?}; it has {}", names.join(", ")));
        names.iter().position(|known| known == name).map(|place| place as u8).ok_or_else(known)
    };
    let packs = packs.iter().map(|(element, entry)| {
        Ok(core::ElementPack {
            pack: entry.pack.into(),
            element: place(&train.elements, element)?,
            turns_with: place(&train.members, &entry.turns_with)?,
        })
    });
    let duty = core::Duty {
        pressure_kpa: pressure_kpa.into(),
        friction: friction.into(),
        geometry_u_rel,
        oil_density_kg_m3,
        turbine_torque_nm: turbine_torque_nm.into(),
        turbine_speed_rpm,
        rule: rule.into(),
    };
    let review = core::review(state.solved(), &packs.collect::<PyResult<Vec<_>>>()?, duty).map_err(raise)?;
    Ok(GearReview { review, names: train.elements.clone() })
}
