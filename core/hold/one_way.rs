//! One-way clutches: rollers and sprags that wedge, struts that drop into notches, and what the train asks of them.

use core::f64::consts::PI;

use super::contact::{ContactBody, LineContact, LinePressure};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::{cos, sqrt, tan};
use crate::train::{Blocks, Fraction, Load, State, StateKind, Train};

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

pub(super) const RATCHET_INDEX: Card = Card {
    id: "hold.ratchet_index",
    purpose: "Backlash of a ratchet, and how many struts drop in together",
    equation: "backlash = 360°/lcm(n_s, n_n), together = gcd(n_s, n_n)",
    symbols: &[
        symbol("n_s, n_n", "struts, notches", "1"),
        symbol("backlash", "backlash_deg", "°"),
        symbol("together", "together", "1"),
    ],
    range: "struts and notches each equally spaced",
    source: &card::DEFINITION,
    locator: "coincidence of two equal divisions of a circle",
};

pub(super) const STRUT_LOAD: Card = Card {
    id: "hold.strut_load",
    purpose: "Force along a strut and its stress under a torque",
    equation: "σ = F_s/(w·t), F_s = F_t/cos γ, F_r = F_t·tan γ, F_t = T/(n·r)",
    symbols: &[
        symbol("F_t, F_s, F_r", "tangential_n, strut_n, separating_n", "N"),
        symbol("T", "torque_nm", "N·m"),
        symbol("n, r, γ", "carrying, pitch_radius_mm, strut_deg", "1, mm, °"),
        symbol("σ, w, t", "stress_mpa, strut_width_mm, strut_thickness_mm", "MPa, mm, mm"),
    ],
    range: "the struts that carry carry alike; no buckling, no bearing in notch and pocket",
    source: &card::DEFINITION,
    locator: "equilibrium of a strut",
};

pub(super) const STRUT_CAPACITY: Card = Card {
    id: "hold.strut_capacity_nm",
    purpose: "Torque at which the struts that carry reach an allowed stress",
    equation: "T = n·w·t·σ·r·cos γ",
    symbols: &[
        symbol("T", "capacity", "N·m"),
        symbol("σ", "allow_mpa", "MPa"),
        symbol("n, w, t, r, γ", "as hold.strut_load", "1, mm, mm, mm, °"),
    ],
    range: "as hold.strut_load",
    source: &card::DEFINITION,
    locator: "hold.strut_load solved for the torque",
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

pub(super) const STRUT_HOLD: Card = Card {
    id: "hold.strut_hold",
    purpose: "Whether struts hold a torque, with the uncertainty of allowed stress, geometry and demand",
    equation: "u² = (T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0",
    symbols: &[
        symbol("T", "capacity_nm", "N·m"),
        symbol("T_need, u_need", "need_nm", "N·m"),
        symbol("a, u_a", "allow_mpa", "MPa"),
        symbol("u_g", "geometry_u_rel", "1"),
    ],
    range: "first order, independent inputs",
    source: &card::GUM,
    locator: "equation 10, with the sensitivities of hold.strut_capacity_nm",
};

pub(super) const TAKE_UP: Card = Card {
    id: "hold.take_up",
    purpose: "Speed and energy with which a one-way clutch closes its backlash under a torque",
    equation: "E = J·ω²/2 = T·φ, ω = √(2·a·φ), t = √(2·φ/a), a = T/J",
    symbols: &[
        symbol("T, J", "torque_nm, inertia_kg_m2", "N·m, kg·m²"),
        symbol("φ", "backlash_deg", "° (rad in the equation)"),
        symbol("ω, t, E", "speed_rpm, time_s, energy_j", "rad/s, s, J"),
    ],
    range: "from rest, constant torque, no drag; the largest backlash is the worst case",
    source: &card::DEFINITION,
    locator: "constant acceleration",
};

pub(super) const ONE_WAY_DUTY: Card = Card {
    id: "hold.one_way_duty",
    purpose: "What a gear asks of a one-way clutch: to hold, to overrun, to stand, or what it cannot carry",
    equation: "holds: share·free > 0; overruns: slip·free > 0; where slip = 0 the share that it would carry in place of the closed element beside it",
    symbols: &[
        symbol("share, slip", "share, slip, per unit of input", "1"),
        symbol("free", "+1 where it blocks reverse, −1 where it blocks forward", "1"),
    ],
    range: "the train without losses and inertia; steady",
    source: &card::DEFINITION,
    locator: "a one-way clutch as a one-sided constraint on the solved train",
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

/// Whether a one-way clutch holds, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneWayHold {
    /// Torque at the allowed stress, N·m. Not a rating.
    pub capacity_nm: f64,
    /// Torque to hold, N·m.
    pub need_nm: Reading,
    /// Capacity over demand.
    pub margin: f64,
    /// The torque to spare, capacity less demand, against 0.
    pub judgment: Judgment,
    /// Where the uncertainty of the torque to spare comes from: allowed stress, geometry, demand, in this order.
    pub budget: Budget,
}

impl Wedge {
    /// Forces and contact pressure under a torque.
    ///
    /// p₀ = √(N·E*/(π·R·L)) as [`LineContact::pressed`], N = F_t/tan φ, F_t = T/(z·r)
    ///
    /// * `torque_nm` — T, 0 or more
    /// * returns [`WedgeLoad`]; it locks only where the friction is above `friction_needed`
    /// * errors: as [`LineContact::pressed`]; [`Error::OutOfRange`] for an angle outside 0.1 to 30°
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
    /// * errors: as [`Wedge::wedge_capacity_nm`]; [`Error::NotPositive`], [`Error::OutOfRange`]
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

fn counted(name: &'static str, count: u32, low: u32) -> Result<u32> {
    if (low..=1000).contains(&count) { Ok(count) } else { Err(Error::Count { name, count, low, high: 1000 }) }
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

fn one_way_hold(
    capacity_nm: f64,
    allow: Input,
    need_nm: Reading,
    geometry_u_rel: f64,
    rule: Rule,
) -> Result<OneWayHold> {
    positive("need_nm", need_nm.value)?;
    let budget = combine(&[
        allow,
        Input::new(capacity_nm, within("geometry_u_rel", geometry_u_rel, 0.0, 1.0)?)?,
        Input::new(-1.0, need_nm.u)?,
    ])?;
    let spare_nm = Reading::new(capacity_nm - need_nm.value, budget.u)?;
    Ok(OneWayHold {
        capacity_nm,
        need_nm,
        margin: capacity_nm / need_nm.value,
        judgment: judge(spare_nm, Limits::at_least(0.0)?, rule)?,
        budget,
    })
}

/// Struts that drop into notches.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratchet {
    /// Struts, equally spaced.
    pub struts: u32,
    /// Notches, equally spaced.
    pub notches: u32,
    /// Struts that carry, 1 to those that drop in together: their tolerances rarely let all of them.
    pub carrying: u32,
    /// Width of a strut, mm.
    pub strut_width_mm: f64,
    /// Thickness of a strut, mm.
    pub strut_thickness_mm: f64,
    /// Radius at which the struts carry, mm.
    pub pitch_radius_mm: f64,
    /// Angle of a strut to the tangent, degrees; 0 where it lies along it.
    pub strut_deg: f64,
}

/// How a ratchet indexes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatchetIndex {
    /// Greatest angle that it turns back before a strut drops in, degrees.
    pub backlash_deg: f64,
    /// Positions on a turn: the least common multiple of struts and notches.
    pub positions: u32,
    /// Struts that drop in together: the greatest common divisor.
    pub together: u32,
}

/// Forces and stress of one strut.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrutLoad {
    /// Share of the torque at the pitch radius, N.
    pub tangential_n: f64,
    /// Force along the strut, N.
    pub strut_n: f64,
    /// Force that pushes the races apart, N.
    pub separating_n: f64,
    /// Compression of the strut, MPa.
    pub stress_mpa: f64,
}

impl Ratchet {
    /// Backlash, and how many struts drop in together.
    ///
    /// backlash = 360°/lcm(n_s, n_n), together = gcd(n_s, n_n)
    ///
    /// * returns [`RatchetIndex`]
    /// * errors: [`Error::Count`]
    ///
    /// Source: coincidence of two equal divisions (derived). Example: 9 struts over 42 notches: 126 positions of 2.857°, three
    /// struts together.
    ///
    /// ```
    /// use trainwright::hold::Ratchet;
    /// let wren = Ratchet {
    ///     struts: 9, notches: 42, carrying: 2, strut_width_mm: 12.5, strut_thickness_mm: 4.2, pitch_radius_mm: 57.0, strut_deg: 0.0,
    /// };
    /// let index = wren.ratchet_index()?;
    /// assert_eq!((index.together, index.positions), (3, 126));
    /// assert!((wren.strut_capacity_nm(900.0)? - 5386.5).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn ratchet_index(self) -> Result<RatchetIndex> {
        let (struts, notches) = (counted("struts", self.struts, 1)?, counted("notches", self.notches, 1)?);
        let together = gcd(struts, notches);
        // gcd is 1 at least, and counted() keeps the product within a million.
        let positions = struts * (notches.checked_div(together).unwrap_or(notches));
        Ok(RatchetIndex { backlash_deg: 360.0 / f64::from(positions), positions, together })
    }

    /// Force along a strut and its stress under a torque.
    ///
    /// σ = F_s/(w·t), F_s = F_t/cos γ, F_r = F_t·tan γ, F_t = T/(n·r)
    ///
    /// * `torque_nm` — T, 0 or more
    /// * returns [`StrutLoad`]
    /// * errors: [`Error::Inconsistent`] where more struts carry than drop in together; [`Error::NotPositive`],
    ///   [`Error::OutOfRange`]
    ///
    /// Source: equilibrium (derived). Example (computed): 400 N·m on one strut at 60 mm and 20°: 6666.67, 7094.52, 2426.47 N.
    ///
    /// ```
    /// use trainwright::hold::Ratchet;
    /// let one = Ratchet {
    ///     struts: 1, notches: 36, carrying: 1, strut_width_mm: 12.0, strut_thickness_mm: 4.0, pitch_radius_mm: 60.0, strut_deg: 20.0,
    /// };
    /// let load = one.strut_load(400.0)?;
    /// assert!((load.strut_n - 7094.52).abs() < 0.005 && (load.separating_n - 2426.47).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn strut_load(self, torque_nm: f64) -> Result<StrutLoad> {
        let Struts { arm_m, section_mm2, angle } = self.checked()?;
        let tangential_n = within("torque_nm", torque_nm, 0.0, 1e9)? / arm_m;
        let strut_n = tangential_n / cos(angle);
        Ok(StrutLoad {
            tangential_n,
            strut_n,
            separating_n: tangential_n * tan(angle),
            stress_mpa: strut_n / section_mm2,
        })
    }

    /// Torque at which the struts that carry reach an allowed stress, N·m. Not a rating.
    ///
    /// T = n·w·t·σ·r·cos γ
    ///
    /// * `allow_mpa` — σ, above 0
    /// * errors: as [`Ratchet::strut_load`]
    ///
    /// Source: [`Ratchet::strut_load`] solved for T.
    pub fn strut_capacity_nm(self, allow_mpa: f64) -> Result<f64> {
        let Struts { arm_m, section_mm2, angle } = self.checked()?;
        Ok(positive("allow_mpa", within("allow_mpa", allow_mpa, 0.0, 1e6)?)? * section_mm2 * arm_m * cos(angle))
    }

    /// Whether it holds a torque, with uncertainty.
    ///
    /// u² = (T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0
    ///
    /// * `need_nm`, `allow_mpa`, `geometry_u_rel`, `rule` — as [`Wedge::wedge_hold`], the allowed stress of a strut
    ///
    /// Source: JCGM 100:2008, equation 10.
    pub fn strut_hold(
        self,
        need_nm: Reading,
        allow_mpa: Reading,
        geometry_u_rel: f64,
        rule: Rule,
    ) -> Result<OneWayHold> {
        let capacity_nm = self.strut_capacity_nm(allow_mpa.value)?;
        let allow = Input::new(capacity_nm / allow_mpa.value, allow_mpa.u)?;
        one_way_hold(capacity_nm, allow, need_nm, geometry_u_rel, rule)
    }

    fn checked(self) -> Result<Struts> {
        let together = self.ratchet_index()?.together;
        let carrying = counted("carrying", self.carrying, 1)?;
        if carrying > together {
            return Err(Error::Inconsistent {
                name: "carrying",
                why: "more struts carry than drop in together, which is the greatest common divisor of struts and notches; give at most that many",
            });
        }
        Ok(Struts {
            arm_m: f64::from(carrying) * positive("pitch_radius_mm", self.pitch_radius_mm)? * 1e-3,
            section_mm2: positive("strut_width_mm", self.strut_width_mm)?
                * positive("strut_thickness_mm", self.strut_thickness_mm)?,
            angle: within("strut_deg", self.strut_deg, 0.0, 60.0)? * PI / 180.0,
        })
    }
}

/// A ratchet that was checked.
struct Struts {
    /// n·r, m.
    arm_m: f64,
    section_mm2: f64,
    /// γ, rad.
    angle: f64,
}

fn gcd(mut a: u32, mut b: u32) -> u32 {
    while let Some(rest) = a.checked_rem(b) {
        (a, b) = (b, rest);
    }
    a
}

/// How a one-way clutch closes its backlash.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TakeUp {
    /// Time to close it, s.
    pub time_s: f64,
    /// Speed at the end, 1/min.
    pub speed_rpm: f64,
    /// Energy that the parts take up, J.
    pub energy_j: f64,
}

/// Speed and energy with which a backlash closes under a torque.
///
/// E = J·ω²/2 = T·φ, ω = √(2·a·φ), t = √(2·φ/a), a = T/J
///
/// * `backlash_deg` — φ, above 0 to 360°: [`RatchetIndex::backlash_deg`]; `torque_nm` — T on the member that turns back,
///   above 0; `inertia_kg_m2` — J of what turns with it, above 0
/// * returns [`TakeUp`]; the energy does not depend on the inertia, the speed does
///
/// Source: constant acceleration (derived). Example: 100 N·m on 0.02 kg·m² over 2.857°: 4.987 J at 213.2 rpm.
///
/// ```
/// use trainwright::hold::take_up;
/// let closed = take_up(360.0 / 126.0, 100.0, 0.02)?;
/// assert!((closed.energy_j - 4.987).abs() < 0.001 && (closed.speed_rpm - 213.2).abs() < 0.1);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn take_up(backlash_deg: f64, torque_nm: f64, inertia_kg_m2: f64) -> Result<TakeUp> {
    let angle = positive("backlash_deg", within("backlash_deg", backlash_deg, 0.0, 360.0)?)? * PI / 180.0;
    let acceleration = positive("torque_nm", torque_nm)? / positive("inertia_kg_m2", inertia_kg_m2)?;
    Ok(TakeUp {
        time_s: sqrt(2.0 * angle / acceleration),
        speed_rpm: sqrt(2.0 * acceleration * angle) * 30.0 / PI,
        energy_j: torque_nm * angle,
    })
}

/// What a gear asks of a one-way clutch.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OneWayRole {
    /// It holds, and carries its share.
    Holds,
    /// It turns in its free sense.
    Overruns,
    /// It stands beside a closed element and could carry in its place.
    CouldHold,
    /// It stands beside a closed element that must hold: the reaction has the other sense.
    CannotHold,
    /// The state gives it neither slip nor torque.
    Idle,
}

/// A one-way clutch in a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneWayDuty {
    /// What is asked of it.
    pub role: OneWayRole,
    /// The closed element beside it, where it stands; [`OneWayDuty::NOTHING_BESIDE`] elsewhere.
    pub beside: u8,
    /// What the gear turns into with the clutch fitted the wrong way round.
    pub backwards: StateKind,
    /// Torque on its first member per unit of input torque: what it carries, or would in place of the element beside it.
    pub share: Fraction,
    /// Speed of its first member relative to the second per unit of input speed.
    pub slip: Fraction,
}

impl OneWayDuty {
    /// No closed element stands beside it.
    pub const NOTHING_BESIDE: u8 = u8::MAX;
}

/// What an engagement asks of a one-way clutch under a load.
///
/// holds: share·free > 0; overruns: slip·free > 0; where slip = 0 the share that it would carry in place of the closed element
/// beside it, free = +1 where it blocks reverse
///
/// * `train` — the gear train; `element` — number of the one-way clutch; `closed` — mask of the elements that are closed,
///   without one-way clutches; `load` — drive or coast
/// * returns [`OneWayDuty`]
/// * errors: [`Error::Inconsistent`] where the element is no one-way clutch; as [`Train::solve`]
///
/// Source: a one-way clutch as a one-sided constraint (derived).
///
/// ```
/// use trainwright::hold::{OneWayRole, one_way_duty};
/// use trainwright::record::{Family, Record};
/// use trainwright::train::Load;
/// let family = Family::from_toml("family.toml", include_str!("../../python/trainwright/demo/family.toml")).unwrap();
/// let unit = family.train("teal").unwrap();
/// let f1 = unit.elements.iter().position(|name| name == "F1").unwrap() as u8;
/// let duty = |closed: &[&str]| one_way_duty(&unit.train, f1, unit.mask(closed.iter().copied()).unwrap(), Load::Drive);
/// assert_eq!(duty(&["B1", "C2"])?.role, OneWayRole::Holds);
/// assert_eq!(duty(&["B1", "C2", "C3"])?.role, OneWayRole::Overruns);
/// assert_eq!(duty(&["B1", "B2", "C3"])?.role, OneWayRole::CannotHold); // reverse: the brake must
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn one_way_duty(train: &Train, element: u8, closed: u32, load: Load) -> Result<OneWayDuty> {
    let free = match train.elements().get(usize::from(element)).map(|element| element.blocks) {
        Some(Blocks::Reverse) => 1,
        Some(Blocks::Forward) => -1,
        Some(Blocks::Neither) | None => {
            return Err(Error::Inconsistent {
                name: "element",
                why: "it is no one-way clutch of the train; name one that is",
            });
        }
    };
    let torque_sign = match load {
        Load::Coast => -1,
        Load::Drive | Load::None => 1,
    };
    let bit = 1_u32 << element;
    let state = train.resolve(closed, load)?;
    let (slip, share) = (state.slip(element), state.share(element));
    let duty = |role, backwards, share| OneWayDuty { role, beside: OneWayDuty::NOTHING_BESIDE, backwards, share, slip };
    if state.closed & bit != 0 {
        return Ok(duty(OneWayRole::Holds, train.solve(state.closed & !bit)?.kind, share));
    }
    if slip.signum() * free > 0 {
        return Ok(duty(OneWayRole::Overruns, train.solve(state.closed | bit)?.kind, Fraction::ZERO));
    }
    if slip != Fraction::ZERO {
        return Ok(duty(OneWayRole::Idle, state.kind, Fraction::ZERO));
    }
    for (beside, other) in (0_u8..).zip(train.elements()).filter(|(beside, _)| state.closed & (1 << beside) != 0) {
        let alone = train.solve(state.closed & !(1_u32 << beside) | bit)?;
        let share = alone.share(element);
        if other.blocks == Blocks::Neither && stands_in(&alone, &state) && share.signum() != 0 {
            let carries = share.signum() * torque_sign == free;
            let role = if carries { OneWayRole::CouldHold } else { OneWayRole::CannotHold };
            return Ok(OneWayDuty { beside, ..duty(role, state.kind, share) });
        }
    }
    Ok(duty(OneWayRole::Idle, state.kind, Fraction::ZERO))
}

/// Whether one state does to input and output what the other does.
fn stands_in(one: &State, other: &State) -> bool {
    one.kind == other.kind && one.ratio == other.ratio
}
