//! From pressure to capacity and back.

use core::f64::consts::PI;

use super::pack::{Annulus, Pack, oil_density};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::sqrt;
use crate::units::rad_s;

pub(super) const CAPACITY: Card = Card {
    id: "clutch.capacity",
    purpose: "Torque that a pack can hold or transmit",
    equation: "T = μ z F r_m, F = p A + F_head − F_dam − F_spring − F_seal, A = π (R_o² − R_i²)",
    symbols: &[
        symbol("T", "torque_nm", "N·m"),
        symbol("μ", "friction: static to hold, dynamic while slipping", "1"),
        symbol("z", "faces", "1"),
        symbol("F", "net_force_n", "N"),
        symbol("r_m", "mean_radius_mm", "mm"),
        symbol("p", "pressure_kpa", "kPa"),
        symbol("A", "piston_area_mm2", "mm²"),
        symbol("F_head, F_dam", "head_force_n, dam_force_n", "N"),
        symbol("F_spring, F_seal", "return_spring_n, seal_drag_n", "N"),
    ],
    range: "flat plates, friction the same on all faces; the strongest return spring in limits. Not a rating",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, frictional-contact axial clutches",
};

pub(super) const PRESSURE_NEEDED: Card = Card {
    id: "clutch.pressure_needed",
    purpose: "Apply pressure at which a pack just holds a torque",
    equation: "p = (T/(μ z r_m) + F_spring + F_seal − F_head + F_dam)/A, 0 at least",
    symbols: CAPACITY.symbols,
    range: "as clutch.capacity; once with the strongest and once with the weakest return spring",
    source: &card::DEFINITION,
    locator: "clutch.capacity solved for the pressure",
};

pub(super) const CLAMP_AT_PEAK: Card = Card {
    id: "clutch.clamp_at_peak_n",
    purpose: "Clamp force at which a worn-in lining reaches a peak pressure",
    equation: "F = 2 π p_max r_i (r_o − r_i)",
    symbols: &[
        symbol("F", "clamp force", "N"),
        symbol("p_max", "peak_mpa, at the inner edge", "MPa"),
        symbol("r_i, r_o", "inner_radius_mm, outer_radius_mm", "mm"),
    ],
    range: "uniform wear: p = p_max r_i/r",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, uniform wear",
};

pub(super) const LINING_BY_RADIUS: Card = Card {
    id: "clutch.torque_by_radius_nm",
    purpose: "Torque of a lining whose friction changes with the radius, that is, with sliding speed",
    equation: "T = 2 π z p [μ_0 (r_o³ − r_i³)/3 + m (r_o⁴ − r_i⁴)/4], μ(r) = μ_0 + m r",
    symbols: &[
        symbol("T", "torque", "N·m"),
        symbol("p", "pressure_mpa", "MPa"),
        symbol("μ_0, m", "friction_at_axis, friction_per_mm", "1, 1/mm"),
        symbol("z", "faces", "1"),
    ],
    range: "uniform pressure; μ(r) not negative on the lining",
    source: &card::DEFINITION,
    locator: "∫ μ(r) p 2 π r² dr",
};

/// What acts on a pack.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Applied {
    /// Gauge pressure at the piston, kPa, 0 or more.
    pub pressure_kpa: f64,
    /// Friction coefficient, above 0 to 1: static to hold, dynamic while slipping.
    pub friction: f64,
    /// Speed of the drum that holds the apply oil, 1/min, any sign. 0 for a brake, and for a drum that stands at stall.
    pub drum_speed_rpm: f64,
    /// Density of the hot oil, kg/m³; matters only to a pack with a head.
    pub oil_density_kg_m3: f64,
}

/// Capacity with everything that made it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capacity {
    /// Piston area, mm².
    pub piston_area_mm2: f64,
    /// Pressure on the piston, N.
    pub apply_force_n: f64,
    /// Oil head behind the piston, N.
    pub head_force_n: f64,
    /// Oil head of the balance dam, N.
    pub dam_force_n: f64,
    /// Strongest return spring, N.
    pub return_spring_n: f64,
    /// Seal drag, N.
    pub seal_drag_n: f64,
    /// Force left on the plates, N; negative while the spring holds the piston back.
    pub net_force_n: f64,
    /// Friction radius, mm.
    pub mean_radius_mm: f64,
    /// Friction faces.
    pub faces: u32,
    /// Friction coefficient.
    pub friction: f64,
    /// Mean pressure on the lining, MPa.
    pub lining_mean_mpa: f64,
    /// Highest pressure on the lining, MPa: the mean when new, at the inner edge when worn in.
    pub lining_peak_mpa: f64,
    /// Capacity, N·m; 0 while the spring holds the piston back.
    pub torque_nm: f64,
}

/// Pressure needed for a torque.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureNeeded {
    /// With the strongest return spring, kPa.
    pub strong_spring_kpa: f64,
    /// With the weakest return spring, kPa.
    pub weak_spring_kpa: f64,
}

/// A pack in one oil, checked and reduced to the constants of its capacity. For columns of pressure, speed and friction.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CapacityLine {
    /// Piston area, mm².
    pub piston_area_mm2: f64,
    /// Head less dam over the square of drum speed, N/(1/min)².
    pub head_n_per_rpm2: f64,
    /// Strongest return spring and seal drag, N.
    pub held_back_n: f64,
    /// Faces × friction radius, mm.
    pub arm_mm: f64,
}

impl CapacityLine {
    /// Capacity of one row, N·m; equal to [`Pack::capacity`] bit for bit.
    ///
    /// * `pressure_kpa` — 0 or more; `drum_speed_rpm` — any sign; `friction` — above 0 to 1
    /// * errors: [`Error::NotFinite`], [`Error::OutOfRange`], [`Error::NotPositive`]
    #[inline]
    pub fn capacity_nm(self, pressure_kpa: f64, drum_speed_rpm: f64, friction: f64) -> Result<f64> {
        pressure_in_range(pressure_kpa)?;
        speed_in_range(drum_speed_rpm)?;
        friction_in_range(friction)?;
        Ok(self.torque_nm(self.net_force_n(pressure_kpa, drum_speed_rpm), friction))
    }

    #[inline]
    fn net_force_n(self, pressure_kpa: f64, drum_speed_rpm: f64) -> f64 {
        pressure_kpa * 1e-3 * self.piston_area_mm2 + self.head_n_per_rpm2 * drum_speed_rpm * drum_speed_rpm
            - self.held_back_n
    }

    #[inline]
    fn torque_nm(self, net_force_n: f64, friction: f64) -> f64 {
        friction * self.arm_mm * 1e-3 * net_force_n.max(0.0)
    }
}

#[inline]
pub(super) fn pressure_in_range(pressure_kpa: f64) -> Result<f64> {
    within("pressure_kpa", pressure_kpa, 0.0, 1e6)
}

#[inline]
pub(super) fn speed_in_range(drum_speed_rpm: f64) -> Result<f64> {
    within("drum_speed_rpm", drum_speed_rpm, -1e6, 1e6)
}

#[inline]
pub(super) fn friction_in_range(friction: f64) -> Result<f64> {
    within("friction", positive("friction", friction)?, 0.0, 1.0)
}

fn torque_needed(torque_nm: f64) -> Result<f64> {
    within("torque_nm", torque_nm, 0.0, 1e9)
}

impl Pack {
    /// The constants of this pack in this oil.
    pub fn capacity_line(self, oil_density_kg_m3: f64) -> Result<CapacityLine> {
        let pack = self.checked()?;
        let density = oil_density(oil_density_kg_m3)?;
        let rpm2 = rad_s(1.0) * rad_s(1.0);
        Ok(CapacityLine {
            piston_area_mm2: pack.piston.area_mm2()?,
            head_n_per_rpm2: (pack.head.force_per_omega2(density) - pack.dam.force_per_omega2(density)) * rpm2,
            held_back_n: pack.return_spring_n.upper + pack.seal_drag_n,
            arm_mm: f64::from(pack.faces) * pack.mean_radius_mm()?,
        })
    }

    /// Capacity with everything that made it.
    ///
    /// T = μ z F r_m, F = p A + F_head − F_dam − F_spring − F_seal
    ///
    /// * `applied` — pressure, friction, drum speed, oil density
    /// * returns [`Capacity`], with the strongest return spring: what the pack holds at least. Not a rating
    /// * errors: for a pack whose parts are impossible, and for each field of `applied` outside its range
    ///
    /// Source: Shigley, chapter 16 (from memory). Example: its hydraulic multi-disk clutch, 4 to 6.5 in, six faces,
    /// μ = 0.24, worn in, at 120 psi peak: 1885 lbf clamp and 7125 lbf·in.
    ///
    /// ```
    /// use trainwright::clutch::{Annulus, Applied, Head, Pack};
    /// use trainwright::judge::Limits;
    /// use trainwright::units::{N_PER_LBF, MM_PER_IN, psi_to_kpa};
    /// let lining = Annulus::new(2.0 * MM_PER_IN, 3.25 * MM_PER_IN)?;
    /// let pack = Pack {
    ///     lining, piston: lining, faces: 6, worn: true, return_spring_n: Limits::between(0.0, 0.0)?,
    ///     seal_drag_n: 0.0, head: Head::NONE, dam: Head::NONE,
    /// };
    /// let clamp = lining.clamp_at_peak_n(psi_to_kpa(120.0) / 1000.0)?;
    /// assert!((clamp / N_PER_LBF - 1885.0).abs() < 0.5);
    /// let applied = Applied {
    ///     pressure_kpa: clamp / lining.area_mm2()? * 1000.0, friction: 0.24, drum_speed_rpm: 0.0, oil_density_kg_m3: 0.0,
    /// };
    /// let torque = pack.capacity(applied)?.torque_nm;
    /// assert!((torque * 1000.0 / N_PER_LBF / MM_PER_IN - 7125.0).abs() < 0.5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn capacity(self, applied: Applied) -> Result<Capacity> {
        let line = self.capacity_line(applied.oil_density_kg_m3)?;
        let Applied { pressure_kpa, friction, drum_speed_rpm, oil_density_kg_m3 } = applied;
        let torque_nm = line.capacity_nm(pressure_kpa, drum_speed_rpm, friction)?;
        let net_force_n = line.net_force_n(pressure_kpa, drum_speed_rpm);
        let clamp_n = net_force_n.max(0.0);
        let lining_mean_mpa = clamp_n / self.lining.area_mm2()?;
        Ok(Capacity {
            piston_area_mm2: line.piston_area_mm2,
            apply_force_n: pressure_kpa * 1e-3 * line.piston_area_mm2,
            head_force_n: self.head.head_force_n(oil_density_kg_m3, drum_speed_rpm)?,
            dam_force_n: self.dam.head_force_n(oil_density_kg_m3, drum_speed_rpm)?,
            return_spring_n: self.return_spring_n.upper,
            seal_drag_n: self.seal_drag_n,
            net_force_n,
            mean_radius_mm: self.mean_radius_mm()?,
            faces: self.faces,
            friction,
            lining_mean_mpa,
            lining_peak_mpa: if self.worn { self.lining.peak_at_clamp_mpa(clamp_n)? } else { lining_mean_mpa },
            torque_nm,
        })
    }

    /// Pressure at which the pack just holds a torque.
    ///
    /// p = (T/(μ z r_m) + F_spring + F_seal − F_head + F_dam)/A, 0 at least
    ///
    /// * `torque_nm` — T, 0 or more; `applied` — its pressure is not used
    /// * returns kPa with the strongest and with the weakest return spring
    /// * errors: as [`Pack::capacity`]
    ///
    /// Source: [`Pack::capacity`] solved for the pressure.
    pub fn pressure_needed(self, torque_nm: f64, applied: Applied) -> Result<PressureNeeded> {
        let line = self.capacity_line(applied.oil_density_kg_m3)?;
        let speed = speed_in_range(applied.drum_speed_rpm)?;
        let clamp_n = torque_needed(torque_nm)? / (friction_in_range(applied.friction)? * line.arm_mm * 1e-3);
        let against_n = clamp_n + self.seal_drag_n - line.head_n_per_rpm2 * speed * speed;
        let kpa = |spring_n: f64| ((against_n + spring_n) * 1e3 / line.piston_area_mm2).max(0.0);
        Ok(PressureNeeded {
            strong_spring_kpa: kpa(self.return_spring_n.upper),
            weak_spring_kpa: kpa(self.return_spring_n.lower),
        })
    }

    /// Friction coefficient at which the pack just holds a torque.
    ///
    /// μ = T/(z F r_m)
    ///
    /// * `torque_nm` — T, 0 or more; `applied` — its friction is not used
    /// * returns μ with the strongest return spring; it may exceed 1, which no lining offers
    /// * errors: as [`Pack::capacity`]; [`Error::NoAnswer`] while the spring holds the piston back
    ///
    /// Source: [`Pack::capacity`] solved for the friction.
    pub fn friction_needed(self, torque_nm: f64, applied: Applied) -> Result<f64> {
        let per_friction_nm = self.capacity(Applied { friction: 1.0, ..applied })?.torque_nm;
        let torque_nm = torque_needed(torque_nm)?;
        if per_friction_nm > 0.0 {
            Ok(torque_nm / per_friction_nm)
        } else {
            Err(Error::NoAnswer {
                name: "friction",
                why: "the return spring holds the piston back at this pressure; raise the pressure",
            })
        }
    }

    /// Drum speed at which the oil head alone overcomes the weakest return spring and an open pack drags.
    ///
    /// n = (30/π) √((F_spring + F_seal) ω²/(F_head − F_dam))
    ///
    /// * `oil_density_kg_m3` — hot oil, 0 to 2000
    /// * returns n, 1/min. Only the *open* pack of a drum that turns is in question: drag, then a tie-up
    /// * errors: for a pack whose parts are impossible; [`Error::NoAnswer`] where the dam carries the head at every speed
    ///
    /// Source: [`super::Head::head_force_n`] set equal to the spring.
    pub fn drag_speed_rpm(self, oil_density_kg_m3: f64) -> Result<f64> {
        let line = self.capacity_line(oil_density_kg_m3)?;
        if line.head_n_per_rpm2 > 0.0 {
            Ok(sqrt((self.return_spring_n.lower + self.seal_drag_n) / line.head_n_per_rpm2))
        } else {
            Err(Error::NoAnswer {
                name: "drag_speed_rpm",
                why: "no oil head, or the balance dam carries it: the pack stays open at every speed",
            })
        }
    }
}

impl Annulus {
    /// Clamp force at which this lining, worn in, reaches a peak pressure.
    ///
    /// F = 2 π p_max r_i (r_o − r_i)
    ///
    /// * `peak_mpa` — p_max at the inner edge, 0 or more
    /// * returns F, N
    /// * errors: [`Error::NotPositive`] for a full disc, and as [`Annulus::new`]
    ///
    /// Source: Shigley, chapter 16, uniform wear (from memory), F = π p_a d (D − d)/2 with diameters.
    pub fn clamp_at_peak_n(self, peak_mpa: f64) -> Result<f64> {
        Ok(within("peak_mpa", peak_mpa, 0.0, 1e6)? * self.clamp_per_peak_mm2()?)
    }

    /// Peak pressure, MPa, of this lining, worn in, under a clamp force: [`Annulus::clamp_at_peak_n`] solved for p_max.
    pub fn peak_at_clamp_mpa(self, clamp_n: f64) -> Result<f64> {
        Ok(within("clamp_n", clamp_n, 0.0, f64::MAX)? / self.clamp_per_peak_mm2()?)
    }

    fn clamp_per_peak_mm2(self) -> Result<f64> {
        let Self { inner_radius_mm: ri, outer_radius_mm: ro } = self.checked("radius_mm")?;
        Ok(2.0 * PI * positive("inner_radius_mm", ri)? * (ro - ri))
    }
}

/// A lining whose friction changes along the radius, as it does with sliding speed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiningByRadius {
    /// The lining.
    pub lining: Annulus,
    /// Friction faces.
    pub faces: u32,
    /// Uniform pressure, MPa, 0 or more.
    pub pressure_mpa: f64,
    /// μ_0, the friction line at radius 0.
    pub friction_at_axis: f64,
    /// m, change of friction per mm of radius.
    pub friction_per_mm: f64,
}

impl LiningByRadius {
    /// Torque of a lining whose friction changes with the radius.
    ///
    /// T = 2 π z p [μ_0 (r_o³ − r_i³)/3 + m (r_o⁴ − r_i⁴)/4]
    ///
    /// * returns T, N·m
    /// * errors: [`Error::OutOfRange`] where μ(r) leaves 0 to 1 on the lining
    ///
    /// Source: ∫ μ(r) p 2 π r² dr. Example: a textbook exercise, one face of 20 to 40 mm with μ = 0.01 r under 0.5 MPa,
    /// 18 850 N·mm.
    ///
    /// ```
    /// use trainwright::clutch::{Annulus, LiningByRadius};
    /// let lining = Annulus::new(20.0, 40.0)?;
    /// let face = LiningByRadius { lining, faces: 1, pressure_mpa: 0.5, friction_at_axis: 0.0, friction_per_mm: 0.01 };
    /// assert!((face.torque_by_radius_nm()? - 18.850).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn torque_by_radius_nm(self) -> Result<f64> {
        let Annulus { inner_radius_mm: ri, outer_radius_mm: ro } = self.lining.checked("lining")?;
        if !(1..=200).contains(&self.faces) {
            return Err(Error::Count { name: "faces", count: self.faces, low: 1, high: 200 });
        }
        let pressure = within("pressure_mpa", self.pressure_mpa, 0.0, 1e6)?;
        let mu_0 = finite("friction_at_axis", self.friction_at_axis)?;
        let slope = finite("friction_per_mm", self.friction_per_mm)?;
        for radius in [ri, ro] {
            within("friction", mu_0 + slope * radius, 0.0, 1.0)?;
        }
        let moment = mu_0 * (ro * ro * ro - ri * ri * ri) / 3.0 + slope * (ro * ro * ro * ro - ri * ri * ri * ri) / 4.0;
        Ok(2.0 * PI * f64::from(self.faces) * pressure * moment * 1e-3)
    }
}
