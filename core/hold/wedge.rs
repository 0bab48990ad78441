//! One-way clutches that wedge: rollers and sprags.

use core::f64::consts::PI;

use super::contact::{ContactBody, LineContact, LinePressure};
use super::one_way::{OneWayHold, counted, one_way_hold};
use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::{Input, Judgment, Limits, Reading, Rule, judge};
use crate::real::tan;

pub(super) const WEDGED: Card = Card {
    id: "hold.wedged",
    purpose: "Forces and contact pressure of rollers or sprags under a torque",
    equation: "p₀ = √(N·E*/(π·R·L)), N = F_t/tan φ, F_t = T/(z·r); φ = β/2 of a roller; it locks where μ > tan φ",
    symbols: &[
        symbol("F_t, N", "tangential_n, normal_n", "N"),
        symbol("T", "torque_nm", "N·m"),
        symbol("z, r", "count, race.radius_mm", "1, mm"),
        symbol("φ", "half_angle_deg", "°"),
        symbol("β", "the whole angle between ramp and race", "°"),
        symbol("μ", "of the race; tan φ is friction_needed", "1"),
        symbol(
            "p₀, E*, R, L",
            "pressure.peak_mpa, pressure.contact_modulus_mpa, pressure.effective_radius_mm, length_mm",
            "MPa, MPa, mm, mm",
        ),
    ],
    range: "all rollers or sprags carry alike; elastic; the races do not give (a race that grows lets the angle grow, up to rolling over)",
    source: &card::DEFINITION,
    locator: "equilibrium of a body between two faces, with hold.pressed",
};

pub(super) const WEDGE_CAPACITY: Card = Card {
    id: "hold.wedge_capacity_nm",
    purpose: "Torque at which rollers or sprags reach an allowed contact pressure",
    equation: "T = z·r·tan φ·π·L·R·p₀²/E*",
    symbols: &[
        symbol("T", "capacity", "N·m"),
        symbol("p₀", "allow_mpa", "MPa"),
        symbol("z, r, φ, L, R, E*", "as hold.wedged", "1, mm, °, mm, mm, MPa"),
    ],
    range: "as hold.wedged; the allowed pressure is the maker's for hardened races and a number of engagements",
    source: &card::DEFINITION,
    locator: "hold.wedged solved for the torque",
};

pub(super) const LOCKS: Card = Card {
    id: "hold.locks",
    purpose: "Whether a wedge holds by itself: rollers, sprags, and the cone or roller behind a pawl",
    equation: "judged: μ ≥ tan φ",
    symbols: &[symbol("μ", "friction", "1"), symbol("φ", "half_angle_deg", "°")],
    range: "both faces with the same friction; oil, wear and vibration lower it",
    source: &card::DEFINITION,
    locator: "friction angle",
};

pub(super) const WEDGE_HOLD: Card = Card {
    id: "hold.wedge_hold",
    purpose: "Whether rollers or sprags hold a torque, with the uncertainty of allowed stress, geometry and demand",
    equation: "u² = (2·T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0",
    symbols: &[
        symbol("T", "capacity_nm", "N·m"),
        symbol("T_need, u_need", "need_nm", "N·m"),
        symbol("a, u_a", "allow_mpa", "MPa"),
        symbol("u_g", "geometry_u_rel", "1"),
    ],
    range: "first order, independent inputs; the torque grows with the square of the pressure, which first order misses for a large u_a",
    source: &card::GUM,
    locator: "equation 10, with the sensitivities of hold.wedge_capacity_nm",
};

/// Rollers or sprags between two races.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wedge {
    /// Rollers or sprags.
    pub count: u32,
    /// The cylindrical race where they bear hardest, its radius negative for an outer race. Sprags: the inner race.
    pub race: ContactBody,
    /// Roller or sprag where it bears on that race.
    pub body: ContactBody,
    /// Length of the contact line, mm.
    pub length_mm: f64,
    /// Roller: half of the angle between ramp and race. Sprag: strut angle at that race. Degrees.
    pub half_angle_deg: f64,
}

/// Forces and pressure of one roller or sprag.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WedgeLoad {
    /// Share of the torque at the race, N.
    pub tangential_n: f64,
    /// Force across the contact, N.
    pub normal_n: f64,
    /// Friction without which it does not lock.
    pub friction_needed: f64,
    /// The contact under that force.
    pub pressure: LinePressure,
}

impl Wedge {
    /// Forces and contact pressure under a torque.
    ///
    /// p₀ = √(N·E*/(π·R·L)) as [`LineContact::pressed`], N = F_t/tan φ, F_t = T/(z·r)
    ///
    /// * `torque_nm` — T, 0 or more
    /// * returns [`WedgeLoad`]; it locks only where the friction is above `friction_needed`
    /// * errors: as [`LineContact::pressed`]; [`crate::Error::OutOfRange`] for an angle outside 0.1 to 30°
    ///
    /// Source: equilibrium of a body between two faces; Hertz by Shigley (from memory). Example (computed independently for
    /// the demonstration): 14 sprags at 5.5° on a race of 49 mm radius under 492.637 N·m: 2720.85 MPa.
    ///
    /// ```
    /// use trainwright::hold::{ContactBody, Wedge};
    /// let steel = |radius_mm| ContactBody { radius_mm, young_mpa: 206_000.0, poisson: 0.3 };
    /// let sprags = Wedge { count: 14, race: steel(49.0), body: steel(5.0), length_mm: 8.0, half_angle_deg: 5.5 };
    /// assert!((sprags.wedged(492.636_895_02)?.pressure.peak_mpa - 2720.851_17).abs() < 1e-5);
    /// assert!((sprags.wedge_capacity_nm(4200.0)? - 1173.859_02).abs() < 1e-5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn wedged(self, torque_nm: f64) -> Result<WedgeLoad> {
        let tangent = self.tangent()?;
        let tangential_n = within("torque_nm", torque_nm, 0.0, 1e9)? / self.arm_m()?;
        let normal_n = tangential_n / tangent;
        let pressure = self.contact().pressed(normal_n)?;
        Ok(WedgeLoad { tangential_n, normal_n, friction_needed: tangent, pressure })
    }

    /// Torque at which the contact reaches an allowed pressure, N·m. Not a rating.
    ///
    /// T = z·r·tan φ·π·L·R·p₀²/E*
    ///
    /// * `allow_mpa` — p₀, above 0: the maker's for hardened races
    /// * errors: as [`Wedge::wedged`]
    ///
    /// Source: [`Wedge::wedged`] solved for T.
    pub fn wedge_capacity_nm(self, allow_mpa: f64) -> Result<f64> {
        Ok(self.contact().force_at_peak_n(allow_mpa)? * self.tangent()? * self.arm_m()?)
    }

    /// Whether it holds a torque, with uncertainty.
    ///
    /// u² = (2·T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0
    ///
    /// * `need_nm` — T_need, above 0; `allow_mpa` — a, the allowed pressure; `geometry_u_rel` — u_g, relative standard
    ///   uncertainty of the capacity from angle, radii, length and uneven load, 0 to 1; `rule` — decision rule
    /// * returns [`OneWayHold`]
    /// * errors: as [`Wedge::wedge_capacity_nm`]; [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`]
    ///
    /// Source: JCGM 100:2008, equation 10.
    pub fn wedge_hold(
        self,
        need_nm: Reading,
        allow_mpa: Reading,
        geometry_u_rel: f64,
        rule: Rule,
    ) -> Result<OneWayHold> {
        let capacity_nm = self.wedge_capacity_nm(allow_mpa.value)?;
        let allow = Input::new(2.0 * capacity_nm / allow_mpa.value, allow_mpa.u)?;
        one_way_hold(capacity_nm, allow, need_nm, geometry_u_rel, rule)
    }

    fn contact(self) -> LineContact {
        LineContact { first: self.race, second: self.body, length_mm: self.length_mm }
    }

    fn tangent(self) -> Result<f64> {
        tangent_of(self.half_angle_deg)
    }

    /// z·r, m.
    fn arm_m(self) -> Result<f64> {
        let radius_mm = crate::real::abs(self.race.radius_mm);
        Ok(f64::from(counted("count", self.count, 1)?) * positive("radius_mm", radius_mm)? * 1e-3)
    }
}

fn tangent_of(half_angle_deg: f64) -> Result<f64> {
    Ok(tan(within("half_angle_deg", half_angle_deg, 0.1, 30.0)? * PI / 180.0))
}

/// Whether a wedge holds by itself: a roller or sprag, and the cone or roller that keeps a pawl in.
///
/// judged: μ ≥ tan φ
///
/// * `half_angle_deg` — φ, half of the angle between the two faces, 0.1 to 30°; `friction` — μ, above 0 to 1; `rule`
/// * returns the friction judged against tan φ
///
/// Source: friction angle (derived). Example: a sprag at 5.5° needs 0.0963.
///
/// ```
/// use trainwright::{hold::locks, judge::{Reading, Rule, Verdict}};
/// let rule = Rule::stated_chances(0.95, 0.05)?;
/// let judgment = locks(5.5, Reading::new(0.12, 0.01)?, rule)?;
/// assert!((judgment.limits.lower - 0.096_289).abs() < 1e-6);
/// assert_eq!(judgment.verdict, Verdict::Go);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn locks(half_angle_deg: f64, friction: Reading, rule: Rule) -> Result<Judgment> {
    positive("friction", within("friction", friction.value, 0.0, 1.0)?)?;
    judge(friction, Limits::at_least(tangent_of(half_angle_deg)?)?, rule)
}
