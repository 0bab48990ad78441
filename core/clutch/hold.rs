//! Capacity against demand, with its uncertainty, judged.

use super::capacity::{Applied, Capacity, PressureNeeded};
use super::pack::Pack;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};

pub(super) const HOLD: Card = Card {
    id: "clutch.hold",
    purpose: "Whether a pack holds a torque, with the uncertainty of pressure, friction, geometry and demand",
    equation: "u² = (μ z r_m A u_p)² + (T u_μ/μ)² + (T u_g)² + u_need²; judged: T − T_need ≥ 0",
    symbols: &[
        symbol("T", "capacity.torque_nm", "N·m"),
        symbol("T_need, u_need", "need_nm", "N·m"),
        symbol("u_p", "pressure_kpa.u", "kPa"),
        symbol("u_μ", "friction.u", "1"),
        symbol("u_g", "geometry_u_rel", "1"),
        symbol("z, r_m, A, μ", "as clutch.capacity", "as there"),
    ],
    range: "first order, independent inputs; the strongest return spring in limits is taken as a bound, not as a reading",
    source: &card::GUM,
    locator: "equation 10, with the sensitivities of clutch.capacity",
};

/// What the shop knows about the working point, with its uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Working {
    /// Gauge pressure at the piston, kPa.
    pub pressure_kpa: Reading,
    /// Friction coefficient: static to hold, dynamic while slipping.
    pub friction: Reading,
    /// Relative standard uncertainty of capacity from the dimensions of pack and piston.
    pub geometry_u_rel: f64,
    /// Speed of the drum that holds the apply oil, 1/min: 0 for a brake, and at stall for a drum that stands.
    pub drum_speed_rpm: f64,
    /// Density of the hot oil, kg/m³.
    pub oil_density_kg_m3: f64,
}

impl Working {
    /// The best estimates alone.
    pub(super) fn applied(self) -> Applied {
        Applied {
            pressure_kpa: self.pressure_kpa.value,
            friction: self.friction.value,
            drum_speed_rpm: self.drum_speed_rpm,
            oil_density_kg_m3: self.oil_density_kg_m3,
        }
    }
}

/// Whether a pack holds, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Capacity at the best estimates.
    pub capacity: Capacity,
    /// Torque to hold, N·m.
    pub need_nm: Reading,
    /// Capacity over demand.
    pub margin: f64,
    /// The torque to spare, capacity less demand, against 0: its chance is the chance that the pack holds.
    pub judgment: Judgment,
    /// Where the uncertainty of the torque to spare comes from: pressure, friction, geometry, demand, in this order.
    pub budget: Budget,
    /// Pressure at which it just holds.
    pub pressure_needed: PressureNeeded,
    /// Friction at which it just holds; infinite while the spring holds the piston back.
    pub friction_needed: f64,
}

impl Pack {
    /// Whether the pack holds a torque: chance, verdict, and the pressure or friction that turns it.
    ///
    /// u² = (μ z r_m A u_p)² + (T u_μ/μ)² + (T u_g)² + u_need²; judged: T − T_need ≥ 0
    ///
    /// * `need_nm` — T_need, above 0; `working` — pressure, friction, geometry, drum speed, oil; `rule` — decision rule
    /// * returns [`Hold`]; [`crate::judge::settle`] of its judgment and budget names the measurement that would settle it
    /// * errors: as [`Pack::capacity`]; [`Error::OutOfRange`] for an uncertainty
    ///
    /// Source: JCGM 100:2008, equation 10. Example: C1 of the invented Corrib family against 783.57 N·m at 1470 kPa on a
    /// gauge of class 1.6: margin 1.048, chance 0.71, not proven, holds from a friction of 0.107.
    ///
    /// ```
    /// use trainwright::clutch::{Annulus, Head, Pack, Working};
    /// use trainwright::judge::{Limits, Reading, Rule, Verdict};
    /// let c1 = Pack {
    ///     lining: Annulus::new(56.0, 78.0)?, piston: Annulus::new(46.0, 73.0)?, faces: 8, worn: false,
    ///     return_spring_n: Limits::between(1050.0, 1280.0)?, seal_drag_n: 0.0, head: Head::NONE, dam: Head::NONE,
    /// };
    /// let working = Working {
    ///     pressure_kpa: Reading::of_class(1470.0, 2500.0, 1.6)?, friction: Reading::new(0.112, 0.009)?,
    ///     geometry_u_rel: 0.02, drum_speed_rpm: 0.0, oil_density_kg_m3: 790.0,
    /// };
    /// let hold = c1.hold(Reading::exact(783.574_468)?, working, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((hold.margin - 1.048_059).abs() < 1e-6);
    /// assert!((hold.judgment.chance - 0.706_154).abs() < 1e-6);
    /// assert_eq!(hold.judgment.verdict, Verdict::NotProven);
    /// assert!((hold.friction_needed - 0.106_864).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn hold(self, need_nm: Reading, working: Working, rule: Rule) -> Result<Hold> {
        let applied = working.applied();
        let capacity = self.capacity(applied)?;
        positive("need_nm", need_nm.value)?;
        let torque_nm = capacity.torque_nm;
        let nm_per_kpa =
            if torque_nm > 0.0 { torque_nm / capacity.net_force_n * capacity.piston_area_mm2 * 1e-3 } else { 0.0 };
        let budget = combine(&[
            Input::new(nm_per_kpa, working.pressure_kpa.u)?,
            Input::new(torque_nm / applied.friction, working.friction.u)?,
            Input::new(torque_nm, within("geometry_u_rel", working.geometry_u_rel, 0.0, 1.0)?)?,
            Input::new(-1.0, need_nm.u)?,
        ])?;
        let spare_nm = Reading::new(torque_nm - need_nm.value, budget.u)?;
        Ok(Hold {
            capacity,
            need_nm,
            margin: torque_nm / need_nm.value,
            judgment: judge(spare_nm, Limits::at_least(0.0)?, rule)?,
            budget,
            pressure_needed: self.pressure_needed(need_nm.value, applied)?,
            friction_needed: if torque_nm > 0.0 {
                self.friction_needed(need_nm.value, applied)?
            } else {
                f64::INFINITY
            },
        })
    }
}

/// Position of the least margin: the element that governs a gear, or the gear that governs a unit.
///
/// * `margins` — capacity over demand, 1 or more of them; infinite where an element carries nothing
/// * returns the first of equals
/// * errors: [`Error::Count`] for an empty list, [`Error::NotFinite`] for a margin that is no number
pub fn governing(margins: &[f64]) -> Result<u32> {
    if let Some(&value) = margins.iter().find(|margin| margin.is_nan()) {
        return Err(Error::NotFinite { name: "margins", value });
    }
    let least = (0..).zip(margins).min_by(|(_, a), (_, b)| a.total_cmp(b));
    least.map(|(position, _)| position).ok_or(Error::Count { name: "margins", count: 0, low: 1, high: u32::MAX })
}
