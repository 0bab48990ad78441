//! Packs and pistons: faces, forces, capacity, holding.

use pyo3::prelude::*;
use trainwright::clutch as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::{answer, raise};
use crate::judge::{Budget, Judgment, Limits, Reading, Rule};

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
    "trainwright.clutch" Capacity = core::Capacity, explained by ["clutch.capacity"] {
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
    "trainwright.clutch" PressureNeeded = core::PressureNeeded, explained by ["clutch.pressure_needed"] {
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
    "trainwright.clutch" Hold = core::Hold, explained by ["clutch.hold"], judged in "N·m",
        inputs ["pressure", "friction", "geometry", "demand"] {
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
