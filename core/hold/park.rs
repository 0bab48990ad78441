//! Park gear and pawl on a grade.
//!
//! A park lock is never the only means of holding a vehicle: parking brake first, then Park, wheels chocked, nobody downhill.

use core::f64::consts::PI;

use super::park_load::{ParkLoad, Parked};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::{hypot, sin, sqrt};

pub(super) const TOOTH_STRESS: Card = Card {
    id: "hold.tooth_stress",
    purpose: "Stress at the root of a park-gear tooth under a torque at the output shaft",
    equation: "σ_v = √(σ² + 3·τ²), σ = K_t·6·F_t·h/(b·s²), τ = F_t/(b·s), F_t = 2·T/D_c, h = (D_c − D_f)/2",
    symbols: &[
        symbol("F_t", "tooth_n", "N"),
        symbol("T", "torque_nm", "N·m"),
        symbol("D_c, D_f", "contact_diameter_mm, root_diameter_mm", "mm"),
        symbol("h", "arm_mm", "mm"),
        symbol("b, s", "face_mm, tooth_root_mm", "mm"),
        symbol("K_t", "stress_factor", "1"),
        symbol("σ, τ, σ_v", "bending_mpa, shear_mpa, von_mises_mpa", "MPa"),
    ],
    range: "one tooth, a beam of constant root section, mean shear (its 1.5-fold peak lies where bending is zero); a stubby tooth is stiffer than a beam",
    source: &card::MACHINE_DESIGN,
    locator: "beam in bending, distortion-energy theory",
};

pub(super) const LARGEST_GRADE: Card = Card {
    id: "hold.largest_grade_pct",
    purpose: "Grade on which the root of a park-gear tooth reaches a stress",
    equation: "sin θ = σ_a/(σ_v at sin θ = 1), G = 100·tan θ, no more than 100",
    symbols: &[
        symbol("θ, G", "grade, result", "°, %"),
        symbol("σ_a", "allow_mpa", "MPa"),
        symbol("σ_v", "as hold.tooth_stress", "MPa"),
    ],
    range: "100 % stands for that and any steeper grade: no vehicle stands there; tire grip is not looked at",
    source: &card::DEFINITION,
    locator: "hold.park_load and hold.tooth_stress solved for the grade",
};

pub(super) const PARK_HOLD: Card = Card {
    id: "hold.park_hold",
    purpose: "Whether the root stress of a park-gear tooth stays below yield, with its uncertainty",
    equation: "u² = (σ_v·u_σ)² + (σ_v·u_m/m)² + (σ_v·u_U/U)²; judged: σ_v ≤ σ_y",
    symbols: &[
        symbol("σ_v", "stress.von_mises_mpa", "MPa"),
        symbol("u_σ", "stress_u_rel", "1"),
        symbol("m, u_m", "mass_kg", "kg"),
        symbol("U, u_U", "driveline.circumference_mm", "mm"),
        symbol("σ_y", "yield_mpa", "MPa"),
    ],
    range: "the stress is proportional to each of the three, so first order is exact for each alone",
    source: &card::GUM,
    locator: "equation 10, the stress proportional to each",
};

pub(super) const COMPARE: Card = Card {
    id: "hold.compare_park_gears",
    purpose: "What another park gear gains in strength and costs in free roll",
    equation: "bending = (b₂·s₂²·r_c2/h₂)/(b₁·s₁²·r_c1/h₁), shear = (b₂·s₂·r_c2)/(b₁·s₁·r_c1), torque = (σ_v1/σ_v2), roll = z₁/z₂",
    symbols: &[
        symbol("bending, shear", "bending_ratio, shear_ratio", "1"),
        symbol("torque, σ_v1, σ_v2", "torque_ratio, both at one torque", "1, MPa, MPa"),
        symbol("roll", "free_roll_ratio", "1"),
        symbol("b₁, s₁, h₁, r_c1, z₁", "first gear, as hold.tooth_stress", "mm, mm, mm, mm, 1"),
        symbol("b₂, s₂, h₂, r_c2, z₂", "second gear", "mm, mm, mm, mm, 1"),
    ],
    range: "the same material and hardness; the pawl belongs to its gear",
    source: &card::DEFINITION,
    locator: "hold.tooth_stress of two gears",
};

/// Park gear: the tooth is a beam that stands on the root circle.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkGear {
    /// Teeth.
    pub teeth: u32,
    /// Face width that the pawl covers, mm.
    pub face_mm: f64,
    /// Thickness of a tooth at its root, mm.
    pub tooth_root_mm: f64,
    /// Diameter at which the pawl bears, mm.
    pub contact_diameter_mm: f64,
    /// Root diameter, mm.
    pub root_diameter_mm: f64,
    /// Tip diameter, mm.
    pub tip_diameter_mm: f64,
}

/// Stress at the root of a park-gear tooth.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkStress {
    /// Tangential force of the pawl on the tooth, N.
    pub tooth_n: f64,
    /// Lever of that force over the root, mm.
    pub arm_mm: f64,
    /// Bending stress with the stress factor, MPa.
    pub bending_mpa: f64,
    /// Mean shear stress, MPa.
    pub shear_mpa: f64,
    /// Equivalent stress, MPa.
    pub von_mises_mpa: f64,
}

/// What a park-gear tooth bears.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToothStrength {
    /// Yield stress, MPa.
    pub yield_mpa: f64,
    /// Stress at the fillet over that of the plain beam, 1 to 5; 1 where only the beam is compared with yield.
    pub stress_factor: f64,
    /// Relative standard uncertainty of the stress against the yield stress: tooth form, hardness, model.
    pub stress_u_rel: f64,
}

/// Whether a park gear holds, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkHold {
    /// What the grade puts on it.
    pub load: ParkLoad,
    /// What that does at the root.
    pub stress: ParkStress,
    /// Yield stress over equivalent stress.
    pub margin: f64,
    /// The equivalent stress against the yield stress.
    pub judgment: Judgment,
    /// Where the uncertainty of the stress comes from: tooth, mass, tire, in this order.
    pub budget: Budget,
    /// Grade at which the best estimate of the stress reaches yield, %; 100 for that or steeper.
    pub largest_grade_pct: f64,
    /// Largest grade that is a GO under the rule, %; 100 for that or steeper.
    pub proven_grade_pct: f64,
}

/// What another park gear gains and costs; each the second over the first.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkComparison {
    /// Torque at the same bending stress.
    pub bending_ratio: f64,
    /// Torque at the same mean shear stress.
    pub shear_ratio: f64,
    /// Torque at the same equivalent stress.
    pub torque_ratio: f64,
    /// Free roll.
    pub free_roll_ratio: f64,
}

impl ParkGear {
    /// The same park gear, if its sizes can be: root below contact below tip, teeth that fit around the root.
    pub fn checked(self) -> Result<Self> {
        if !(1..=200).contains(&self.teeth) {
            return Err(Error::Count { name: "teeth", count: self.teeth, low: 1, high: 200 });
        }
        positive("face_mm", self.face_mm)?;
        let root_mm = positive("tooth_root_mm", self.tooth_root_mm)?;
        let (root, contact, tip) = (self.root_diameter_mm, self.contact_diameter_mm, self.tip_diameter_mm);
        positive("root_diameter_mm", root)?;
        finite("contact_diameter_mm", contact)?;
        finite("tip_diameter_mm", tip)?;
        if contact <= root {
            return Err(Error::Inconsistent {
                name: "contact_diameter_mm",
                why: "the pawl cannot bear below the root of the teeth; exchange root and contact diameter or correct one",
            });
        }
        if contact > tip {
            return Err(Error::Inconsistent {
                name: "contact_diameter_mm",
                why: "the pawl cannot bear outside the tip of the teeth; exchange contact and tip diameter or correct one",
            });
        }
        if root_mm * f64::from(self.teeth) >= PI * root {
            return Err(Error::Inconsistent {
                name: "tooth_root_mm",
                why: "that many teeth of this thickness do not fit around the root diameter; correct teeth, thickness or diameter",
            });
        }
        Ok(self)
    }

    pub(super) fn contact_radius_mm(self) -> f64 {
        self.contact_diameter_mm / 2.0
    }

    fn arm_mm(self) -> f64 {
        (self.contact_diameter_mm - self.root_diameter_mm) / 2.0
    }

    /// Stress at the root of a tooth under a torque at the output shaft.
    ///
    /// σ_v = √(σ² + 3·τ²), σ = K_t·6·F_t·h/(b·s²), τ = F_t/(b·s), F_t = 2·T/D_c, h = (D_c − D_f)/2
    ///
    /// * `torque_nm` — T, 0 or more; `stress_factor` — K_t, 1 to 5
    /// * returns [`ParkStress`]
    /// * errors: as [`ParkGear::checked`]; [`Error::OutOfRange`]
    ///
    /// Source: beam in bending and distortion-energy theory, Shigley (from memory). Example (computed independently for the
    /// demonstration): 24 teeth of 15 × 9.6 mm at a contact diameter of 132 mm under 959.48 N·m: 475.03 MPa.
    ///
    /// ```
    /// use trainwright::hold::ParkGear;
    /// let teal = ParkGear {
    ///     teeth: 24, face_mm: 15.0, tooth_root_mm: 9.6, contact_diameter_mm: 132.0, root_diameter_mm: 118.0, tip_diameter_mm: 140.0,
    /// };
    /// assert!((teal.tooth_stress(959.479_536, 1.0)?.von_mises_mpa - 475.033).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn tooth_stress(self, torque_nm: f64, stress_factor: f64) -> Result<ParkStress> {
        let gear = self.checked()?;
        let tooth_n = within("torque_nm", torque_nm, 0.0, 1e9)? * 1e3 / gear.contact_radius_mm();
        let arm_mm = gear.arm_mm();
        let section_mm2 = gear.face_mm * gear.tooth_root_mm;
        let bending_mpa = within("stress_factor", stress_factor, 1.0, 5.0)? * 6.0 * tooth_n * arm_mm
            / (section_mm2 * gear.tooth_root_mm);
        let shear_mpa = tooth_n / section_mm2;
        Ok(ParkStress {
            tooth_n,
            arm_mm,
            bending_mpa,
            shear_mpa,
            von_mises_mpa: hypot(bending_mpa, sqrt(3.0) * shear_mpa),
        })
    }

    /// Load and root stress of a vehicle on a grade in one: [`park_load`](super::park_load()), then [`ParkGear::tooth_stress`].
    pub fn stress_on_grade(self, parked: Parked, stress_factor: f64) -> Result<ParkStress> {
        self.tooth_stress(parked.load()?.torque_nm, stress_factor)
    }

    /// Grade on which the root reaches a stress, %; 100 for that or steeper.
    ///
    /// sin θ = σ_a/(σ_v at sin θ = 1), G = 100·tan θ
    ///
    /// * `parked` — its grade and the uncertainties are not used; `allow_mpa` — σ_a, above 0; `stress_factor` — K_t
    /// * errors: as [`park_load`](super::park_load()) and [`ParkGear::tooth_stress`]
    ///
    /// Source: both solved for the grade (derived).
    pub fn largest_grade_pct(self, parked: Parked, allow_mpa: f64, stress_factor: f64) -> Result<f64> {
        let at_45_deg = Parked { grade_pct: 100.0, ..parked };
        let sine = positive("allow_mpa", finite("allow_mpa", allow_mpa)?)?
            / self.stress_on_grade(at_45_deg, stress_factor)?.von_mises_mpa
            * sin(PI / 4.0);
        let cosine_squared = 1.0 - sine * sine;
        Ok(if cosine_squared > 0.0 { (100.0 * sine / sqrt(cosine_squared)).min(100.0) } else { 100.0 })
    }

    /// Whether the root stress stays below yield, with its uncertainty, and the largest grade at which it does.
    ///
    /// u² = (σ_v·u_σ)² + (σ_v·u_m/m)² + (σ_v·u_U/U)²; judged: σ_v ≤ σ_y
    ///
    /// * `parked` — mass, grade, rocking factor and drive line; `strength` — yield stress, stress factor, u_σ (0 to 1)
    /// * returns [`ParkHold`]
    /// * errors: as [`park_load`](super::park_load()) and [`ParkGear::tooth_stress`]; [`Error::NoAnswer`] on level ground
    ///
    /// The computed capability is not a rating. Parking brake first, then Park; chock; never stand downhill.
    ///
    /// Source: JCGM 100:2008, equation 10. Example (computed independently for the demonstration): 11 160 kg on 20 % with a
    /// park gear of 24 teeth: 1105.0 MPa against 980, NO-GO; the best estimate reaches yield at 17.66 %.
    ///
    /// ```
    /// use trainwright::hold::{ParkGear, Parked, ToothStrength};
    /// use trainwright::judge::{Reading, Rule, Verdict};
    /// use trainwright::road::Driveline;
    /// let teal = ParkGear {
    ///     teeth: 24, face_mm: 15.0, tooth_root_mm: 9.6, contact_diameter_mm: 132.0, root_diameter_mm: 118.0, tip_diameter_mm: 140.0,
    /// };
    /// let parked = Parked {
    ///     mass_kg: Reading::exact(11_160.0)?, grade_pct: 20.0, rocking_factor: 1.0,
    ///     driveline: Driveline::new(3.92, 1.0, Reading::new(2561.182_154, 15.9)?)?,
    /// };
    /// let strength = ToothStrength { yield_mpa: 980.0, stress_factor: 1.0, stress_u_rel: 0.06 };
    /// let hold = teal.park_hold(parked, strength, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((hold.stress.von_mises_mpa - 1104.997).abs() < 0.001);
    /// assert_eq!(hold.judgment.verdict, Verdict::NoGo);
    /// assert!((hold.largest_grade_pct - 17.66).abs() < 0.005 && hold.proven_grade_pct < hold.largest_grade_pct);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn park_hold(self, parked: Parked, strength: ToothStrength, rule: Rule) -> Result<ParkHold> {
        let ToothStrength { yield_mpa, stress_factor, stress_u_rel } = strength;
        let load = parked.load()?;
        let stress = self.tooth_stress(load.torque_nm, stress_factor)?;
        let von_mises_mpa = stress.von_mises_mpa;
        if von_mises_mpa <= 0.0 {
            return Err(Error::NoAnswer {
                name: "grade_pct",
                why: "on level ground nothing loads the park gear; give a grade above 0",
            });
        }
        let (mass_kg, around_mm) = (parked.mass_kg, parked.driveline.circumference_mm);
        let budget = combine(&[
            Input::new(von_mises_mpa, within("stress_u_rel", stress_u_rel, 0.0, 1.0)?)?,
            Input::new(von_mises_mpa / mass_kg.value, mass_kg.u)?,
            Input::new(von_mises_mpa / around_mm.value, around_mm.u)?,
        ])?;
        let limits = Limits::at_most(positive("yield_mpa", yield_mpa)?)?;
        let judgment = judge(Reading::new(von_mises_mpa, budget.u)?, limits, rule)?;
        // The uncertainty grows with the stress: the stress that is a GO with its own uncertainty, not with this one.
        let guard_rel = (yield_mpa - judgment.acceptance.upper) / von_mises_mpa;
        Ok(ParkHold {
            load,
            stress,
            margin: yield_mpa / von_mises_mpa,
            judgment,
            budget,
            largest_grade_pct: self.largest_grade_pct(parked, yield_mpa, stress_factor)?,
            proven_grade_pct: self.largest_grade_pct(parked, yield_mpa / (1.0 + guard_rel), stress_factor)?,
        })
    }
}

/// What another park gear gains in strength and costs in free roll.
///
/// bending = (b₂·s₂²·r_c2/h₂)/(b₁·s₁²·r_c1/h₁), shear = (b₂·s₂·r_c2)/(b₁·s₁·r_c1), torque = σ_v1/σ_v2, roll = z₁/z₂
///
/// * `first`, `second` — the gears; `stress_factor` — K_t of both, 1 to 5
/// * returns [`ParkComparison`], the second over the first
/// * errors: as [`ParkGear::checked`]
///
/// Source: root stress of both at one torque (derived). Example (computed independently for the demonstration): 18 teeth of
/// 18 × 12.6 mm against 24 of 15 × 9.6 mm bend 2.067 times as late, and roll a third farther.
///
/// ```
/// use trainwright::hold::{ParkGear, compare_park_gears};
/// let old = ParkGear {
///     teeth: 24, face_mm: 15.0, tooth_root_mm: 9.6, contact_diameter_mm: 132.0, root_diameter_mm: 118.0, tip_diameter_mm: 140.0,
/// };
/// let new = ParkGear { teeth: 18, face_mm: 18.0, tooth_root_mm: 12.6, ..old };
/// let gained = compare_park_gears(old, new, 1.0)?;
/// assert!((gained.bending_ratio - 2.067_187_5).abs() < 1e-12 && (gained.free_roll_ratio - 4.0 / 3.0).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn compare_park_gears(first: ParkGear, second: ParkGear, stress_factor: f64) -> Result<ParkComparison> {
    let [one, two] = [first.tooth_stress(1.0, stress_factor)?, second.tooth_stress(1.0, stress_factor)?];
    Ok(ParkComparison {
        bending_ratio: one.bending_mpa / two.bending_mpa,
        shear_ratio: one.shear_mpa / two.shear_mpa,
        torque_ratio: one.von_mises_mpa / two.von_mises_mpa,
        free_roll_ratio: f64::from(first.teeth) / f64::from(second.teeth),
    })
}
