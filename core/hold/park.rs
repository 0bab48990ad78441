//! Park gear and pawl on a grade.
//!
//! A park lock is never the only means of holding a vehicle: parking brake first, then Park, wheels chocked, nobody downhill.

use core::f64::consts::PI;

use super::contact::{LineContact, LinePressure};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::{atan, cos, hypot, sin, sqrt, tan};
use crate::road::Driveline;
use crate::units::GRAVITY_M_S2;

pub(super) const PARK_LOAD: Card = Card {
    id: "hold.park_load",
    purpose: "Torque at the park gear of a vehicle that only the park lock holds on a grade",
    equation: "T = κ·F·r/(i_A·i_V), F = m·g·sin θ, θ = arctan(G/100), r = U/(2·π)",
    symbols: &[
        symbol("F", "grade_n", "N"),
        symbol("m, G", "mass_kg, grade_pct", "kg, %"),
        symbol("θ", "grade_deg", "°"),
        symbol("κ", "rocking_factor", "1"),
        symbol("r, U", "wheel_radius_mm, driveline.circumference_mm", "mm"),
        symbol("i_A, i_V", "driveline.axle_ratio, driveline.transfer_ratio", "1"),
        symbol("T", "torque_nm", "N·m"),
    ],
    range: "no help from rolling resistance, brakes or losses; r is the rolling radius, about 3 % more than the loaded radius of a tire that stands, so T is rather too much",
    source: &card::DEFINITION,
    locator: "equilibrium on a grade",
};

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

pub(super) const FREE_ROLL: Card = Card {
    id: "hold.free_roll",
    purpose: "How far a vehicle rolls before the pawl drops in, and the energy that the drive line then stops",
    equation: "x = U/(z·i_A·i_V), E = m·g·sin θ·x, v = √(2·E/m)",
    symbols: &[
        symbol("x, E, v", "roll_mm, energy_j, speed_km_h", "mm, J, km/h"),
        symbol("U, i_A, i_V", "driveline.circumference_mm, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
        symbol("z", "teeth", "1"),
        symbol("m, θ", "mass_kg, grade_deg", "kg, °"),
    ],
    range: "worst case: a whole tooth from rest, pawl on a tooth, no rolling resistance; lash of the drive line and wind-up of tires come on top",
    source: &card::DEFINITION,
    locator: "one tooth pitch at the road",
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

pub(super) const WINDOW: Card = Card {
    id: "hold.window_deg",
    purpose: "Angle that the park gear turns while the pawl can drop in",
    equation: "window = 2·(space − tip)/D_c",
    symbols: &[
        symbol("window", "result", "° (rad in the equation)"),
        symbol("space, tip", "space_mm, pawl_tip_mm", "mm"),
        symbol("D_c", "contact_diameter_mm", "mm"),
    ],
    range: "both widths measured along the contact diameter",
    source: &card::DEFINITION,
    locator: "arc over radius",
};

pub(super) const EJECTION: Card = Card {
    id: "hold.ejection",
    purpose: "Force with which a loaded tooth pushes the pawl out: it must, or Park cannot be left on a grade",
    equation: "F_e = F_t·tan(α − arctan μ)",
    symbols: &[
        symbol("F_e", "least_n at the greatest friction, most_n at the least", "N"),
        symbol("F_t", "tooth_n", "N"),
        symbol("α", "flank_deg", "°"),
        symbol("μ", "friction", "1"),
    ],
    range: "above 0 the pawl leaves by itself once the cone or roller behind it is drawn; that cone or roller must hold F_e by friction (hold.locks)",
    source: &card::DEFINITION,
    locator: "force on an inclined flank with friction",
};

pub(super) const TIP_PRESSURE: Card = Card {
    id: "hold.tip_pressure",
    purpose: "Contact pressure of the pawl on the flank of a loaded tooth",
    equation: "N = F_t/cos α, then hold.pressed",
    symbols: &[
        symbol("N", "force across the contact", "N"),
        symbol("F_t", "tooth_n", "N"),
        symbol("α", "flank_deg", "°"),
    ],
    range: "friction neglected; as hold.pressed",
    source: &card::DEFINITION,
    locator: "force on an inclined flank, with hold.pressed",
};

pub(super) const LATCH: Card = Card {
    id: "hold.latch",
    purpose: "Speed above which the pawl skips over the teeth instead of dropping in",
    equation: "v = ω·r/(i_A·i_V), ω = window/t, t = √(2·J·φ/M)",
    symbols: &[
        symbol("t", "drop_time_s", "s"),
        symbol("J, φ, M", "inertia_kg_m2, drop_deg, spring_nm", "kg·m², °, N·m"),
        symbol("ω, v", "output_rpm, road_km_h", "1/min, km/h"),
        symbol("window", "window_deg", "°"),
        symbol("r, i_A, i_V", "circumference over 2 π, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
    ],
    range: "constant spring torque, no drag, the whole drop needed: below this speed it engages with a blow, near it it may do either",
    source: &card::DEFINITION,
    locator: "constant acceleration",
};

pub(super) const GRIP: Card = Card {
    id: "hold.grip_nm",
    purpose: "Torque at the park gear at which the tires of the locked axle slide",
    equation: "T = μ_t·m_A·g·cos θ·r/(i_A·i_V)",
    symbols: &[
        symbol("T", "result", "N·m"),
        symbol("μ_t", "tire_friction", "1"),
        symbol("m_A", "axle_load_kg", "kg"),
        symbol("θ", "grade", "°"),
        symbol("r, i_A, i_V", "circumference over 2 π, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
    ],
    range: "both wheels on the same ground: through a differential the side with less grip decides; the grade also shifts load off the upper axle",
    source: &card::DEFINITION,
    locator: "friction of a locked axle",
};

pub(super) const ROLL_LIMIT: Card = Card {
    id: "hold.roll_limits_49_cfr_571_114",
    purpose: "How far a light vehicle may move in Park on a 10 % grade in the United States",
    equation: "movement ≤ 150 mm on 10 %",
    symbols: &[symbol("movement", "the limits", "mm")],
    range: "vehicles of 4536 kg (10 000 lb) or less that the standard covers, at its own test; not with a trailer, and no limit for the park gear",
    source: &card::PARK_MOVEMENT,
    locator: "571.114, rollaway test",
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

/// What the grade puts on the park lock.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkLoad {
    /// Angle of the grade, degrees.
    pub grade_deg: f64,
    /// Share of the weight along the grade, N.
    pub grade_n: f64,
    /// Rolling radius of the tires, mm.
    pub wheel_radius_mm: f64,
    /// Torque at the park gear while the vehicle stands still, N·m.
    pub static_nm: f64,
    /// The same times the rocking factor, N·m.
    pub torque_nm: f64,
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

/// A vehicle on a grade that only the park lock holds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parked {
    /// Mass of truck, load and unbraked trailer, kg.
    pub mass_kg: Reading,
    /// Grade, %: rise over horizontal run, 0 to 100.
    pub grade_pct: f64,
    /// Greatest load while the vehicle rocks over the static load, 1 to 5. No default: whoever judges chooses it.
    pub rocking_factor: f64,
    /// Axle, transfer case and tire.
    pub driveline: Driveline,
}

impl Parked {
    fn load(self) -> Result<ParkLoad> {
        park_load(self.driveline, self.mass_kg.value, self.grade_pct, self.rocking_factor)
    }
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

/// What happens before the pawl drops in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeRoll {
    /// Road that one tooth of the park gear is, mm: the vehicle rolls no farther before the pawl drops in.
    pub roll_mm: f64,
    /// Energy of the vehicle by then, J.
    pub energy_j: f64,
    /// Its speed by then, km/h.
    pub speed_km_h: f64,
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

/// Torque at the park gear of a vehicle that only the park lock holds.
///
/// T = κ·F·r/(i_A·i_V), F = m·g·sin θ, θ = arctan(G/100), r = U/(2·π)
///
/// * `driveline` — i_A, i_V and U; `mass_kg` — m of truck, load and unbraked trailer, above 0
/// * `grade_pct` — G, 0 to 100; `rocking_factor` — κ, 1 (standing still) to 5
/// * returns [`ParkLoad`]
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// r is the rolling radius. A tire that stands has a loaded radius about 3 % smaller, so the torque is rather too much.
///
/// Source: equilibrium on a grade (derived). Example (computed independently for the demonstration): 11 160 kg on 20 %, axle
/// 3.92, rolling circumference 2561.18 mm.
///
/// ```
/// use trainwright::{hold::park_load, judge::Reading, road::Driveline};
/// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
/// let load = park_load(line, 11_160.0, 20.0, 1.0)?;
/// assert!((load.grade_n - 21_463.4).abs() < 0.05 && (load.torque_nm - 2231.9).abs() < 0.1);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn park_load(driveline: Driveline, mass_kg: f64, grade_pct: f64, rocking_factor: f64) -> Result<ParkLoad> {
    let slope = slope_of(grade_pct)?;
    let grade_n = positive("mass_kg", mass_kg)? * GRAVITY_M_S2 * sin(slope);
    let static_nm = driveline.output_torque_nm(grade_n, 1.0)?;
    Ok(ParkLoad {
        grade_deg: slope * 180.0 / PI,
        grade_n,
        wheel_radius_mm: driveline.circumference_mm.value / (2.0 * PI),
        static_nm,
        torque_nm: within("rocking_factor", rocking_factor, 1.0, 5.0)? * static_nm,
    })
}

fn slope_of(grade_pct: f64) -> Result<f64> {
    Ok(atan(within("grade_pct", grade_pct, 0.0, 100.0)? / 100.0))
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

    fn contact_radius_mm(self) -> f64 {
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

    /// Load and root stress of a vehicle on a grade in one: [`park_load`], then [`ParkGear::tooth_stress`].
    pub fn stress_on_grade(self, parked: Parked, stress_factor: f64) -> Result<ParkStress> {
        self.tooth_stress(parked.load()?.torque_nm, stress_factor)
    }

    /// Grade on which the root reaches a stress, %; 100 for that or steeper.
    ///
    /// sin θ = σ_a/(σ_v at sin θ = 1), G = 100·tan θ
    ///
    /// * `parked` — its grade and the uncertainties are not used; `allow_mpa` — σ_a, above 0; `stress_factor` — K_t
    /// * errors: as [`park_load`] and [`ParkGear::tooth_stress`]
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
    /// * errors: as [`park_load`] and [`ParkGear::tooth_stress`]; [`Error::NoAnswer`] on level ground
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

    /// How far the vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
    ///
    /// x = U/(z·i_A·i_V), E = m·g·sin θ·x, v = √(2·E/m)
    ///
    /// * `parked` — its rocking factor is not used
    /// * returns [`FreeRoll`]
    /// * errors: as [`park_load`]
    ///
    /// Source: one tooth at the road (derived). Example: 24 teeth, axle 3.92, 2561.18 mm: 27.2 mm; 18 teeth a third more.
    ///
    /// ```
    /// # use trainwright::{hold::{ParkGear, Parked}, judge::Reading, road::Driveline};
    /// let gear = |teeth| ParkGear {
    ///     teeth, face_mm: 15.0, tooth_root_mm: 9.6, contact_diameter_mm: 132.0, root_diameter_mm: 118.0, tip_diameter_mm: 140.0,
    /// };
    /// let parked = Parked {
    ///     mass_kg: Reading::exact(11_160.0)?, grade_pct: 20.0, rocking_factor: 1.0,
    ///     driveline: Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?,
    /// };
    /// assert!((gear(24).free_roll(parked)?.roll_mm - 27.223_45).abs() < 1e-5);
    /// assert!((gear(18).free_roll(parked)?.energy_j - 779.1).abs() < 0.1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn free_roll(self, parked: Parked) -> Result<FreeRoll> {
        let gear = self.checked()?;
        let mass_kg = parked.mass_kg.value;
        let grade_n = parked.load()?.grade_n;
        let Driveline { axle_ratio, transfer_ratio, circumference_mm } = parked.driveline;
        let roll_mm = circumference_mm.value / (f64::from(gear.teeth) * axle_ratio * transfer_ratio);
        let energy_j = grade_n * roll_mm * 1e-3;
        Ok(FreeRoll { roll_mm, energy_j, speed_km_h: 3.6 * sqrt(2.0 * energy_j / mass_kg) })
    }

    /// Angle that the gear turns while the pawl can drop in, degrees.
    ///
    /// window = 2·(space − tip)/D_c
    ///
    /// * `space_mm` — width between two teeth, above that of the pawl; `pawl_tip_mm` — width of the pawl, above 0; both
    ///   along the contact diameter
    /// * errors: as [`ParkGear::checked`]; [`Error::Inconsistent`] for a pawl that does not fit between the teeth
    ///
    /// Source: arc over radius (derived).
    pub fn window_deg(self, space_mm: f64, pawl_tip_mm: f64) -> Result<f64> {
        let gear = self.checked()?;
        if positive("space_mm", space_mm)? <= positive("pawl_tip_mm", pawl_tip_mm)? {
            return Err(Error::Inconsistent {
                name: "pawl_tip_mm",
                why: "the pawl is as wide as the space between two teeth or wider and never drops in; measure both along the contact diameter",
            });
        }
        let pitch_mm = PI * gear.contact_diameter_mm / f64::from(gear.teeth);
        within("space_mm", space_mm, 0.0, pitch_mm)?;
        Ok((space_mm - pawl_tip_mm) / gear.contact_radius_mm() * 180.0 / PI)
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

/// The pawl.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pawl {
    /// Angle of the loaded flank to the radius of the gear, degrees: it pushes the pawl out.
    pub flank_deg: f64,
    /// Least and greatest friction between pawl and tooth.
    pub friction: Limits,
    /// Moment of inertia about its pivot, kg·m².
    pub inertia_kg_m2: f64,
    /// Torque that throws it in, N·m.
    pub spring_nm: f64,
    /// Angle through which it drops, degrees.
    pub drop_deg: f64,
}

/// Whether a loaded tooth pushes the pawl out.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ejection {
    /// Force that pushes the pawl out at the greatest friction, N; negative where it then sticks.
    pub least_n: f64,
    /// The same at the least friction, N: what the cone or roller behind the pawl must hold.
    pub most_n: f64,
    /// The same two over the tooth force.
    pub least_share: f64,
    /// See `least_share`.
    pub most_share: f64,
    /// Greatest friction at which the pawl still leaves by itself.
    pub friction_to_stick: f64,
    /// The pawl leaves under load over the whole range of friction.
    pub releases: bool,
}

/// At which speed the pawl still drops in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Latch {
    /// Time of the drop, s.
    pub drop_time_s: f64,
    /// Output-shaft speed above which it skips over the teeth, 1/min.
    pub output_rpm: f64,
    /// Road speed of it, km/h.
    pub road_km_h: f64,
}

impl Pawl {
    /// Force with which a loaded tooth pushes the pawl out.
    ///
    /// F_e = F_t·tan(α − arctan μ)
    ///
    /// * `tooth_n` — F_t, 0 or more, of [`ParkStress::tooth_n`]
    /// * returns [`Ejection`]
    /// * errors: [`Error::OutOfRange`] for a flank outside 0 to 45° or a friction outside 0 to 1, [`Error::Reversed`]
    ///
    /// Source: force on an inclined flank with friction (derived). Example: 13° with a friction of 0.08 to 0.15: 0.148 to
    /// 0.078 of the tooth force.
    ///
    /// ```
    /// use trainwright::{hold::Pawl, judge::Limits};
    /// let pawl = Pawl {
    ///     flank_deg: 13.0, friction: Limits::between(0.08, 0.15)?, inertia_kg_m2: 1.9e-4, spring_nm: 1.4, drop_deg: 9.0,
    /// };
    /// let pushed = pawl.ejection(10_000.0)?;
    /// assert!(pushed.releases && (pushed.least_share - 0.0782).abs() < 1e-4 && (pushed.most_share - 0.1481).abs() < 1e-4);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn ejection(self, tooth_n: f64) -> Result<Ejection> {
        let tooth_n = within("tooth_n", tooth_n, 0.0, 1e9)?;
        let flank = self.flank()?;
        let Limits { lower, upper } = Limits::between(
            within("friction.lower", self.friction.lower, 0.0, 1.0)?,
            within("friction.upper", self.friction.upper, 0.0, 1.0)?,
        )?;
        let share = |friction: f64| tan(flank - atan(friction));
        let (least_share, most_share) = (share(upper), share(lower));
        Ok(Ejection {
            least_n: tooth_n * least_share,
            most_n: tooth_n * most_share,
            least_share,
            most_share,
            friction_to_stick: tan(flank),
            releases: least_share > 0.0,
        })
    }

    /// Contact pressure of the pawl on the flank of a loaded tooth.
    ///
    /// N = F_t/cos α, then [`LineContact::pressed`]
    ///
    /// * `contact` — pawl and flank; `tooth_n` — F_t, 0 or more, of [`ParkStress::tooth_n`]
    /// * returns [`LinePressure`]
    /// * errors: as [`Pawl::ejection`] and [`LineContact::pressed`]
    ///
    /// Source: force on an inclined flank (derived), contact by Shigley (from memory).
    pub fn tip_pressure(self, contact: LineContact, tooth_n: f64) -> Result<LinePressure> {
        contact.pressed(within("tooth_n", tooth_n, 0.0, 1e9)? / cos(self.flank()?))
    }

    fn flank(self) -> Result<f64> {
        Ok(within("flank_deg", self.flank_deg, 0.0, 45.0)? * PI / 180.0)
    }

    /// Speed above which the pawl skips over the teeth instead of dropping in.
    ///
    /// v = ω·r/(i_A·i_V), ω = window/t, t = √(2·J·φ/M)
    ///
    /// * `driveline` — r, i_A, i_V; `window_deg` — angle in which it can drop, above 0, [`ParkGear::window_deg`]
    /// * returns [`Latch`]
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Park belongs to a vehicle that stands: above a crawl the pawl hammers, and may break.
    ///
    /// Source: constant acceleration (derived). Example: 1.9e-4 kg·m² thrown 9° by 1.4 N·m takes 6.53 ms.
    ///
    /// ```
    /// use trainwright::{hold::Pawl, judge::{Limits, Reading}, road::Driveline};
    /// let pawl = Pawl {
    ///     flank_deg: 13.0, friction: Limits::between(0.08, 0.15)?, inertia_kg_m2: 1.9e-4, spring_nm: 1.4, drop_deg: 9.0,
    /// };
    /// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
    /// assert!((pawl.latch(line, 1.3)?.drop_time_s - 0.006_530).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn latch(self, driveline: Driveline, window_deg: f64) -> Result<Latch> {
        let drop = positive("drop_deg", within("drop_deg", self.drop_deg, 0.0, 90.0)?)? * PI / 180.0;
        let window = positive("window_deg", within("window_deg", window_deg, 0.0, 180.0)?)? * PI / 180.0;
        let inertia = positive("inertia_kg_m2", self.inertia_kg_m2)?;
        let drop_time_s = sqrt(2.0 * inertia * drop / positive("spring_nm", self.spring_nm)?);
        let output_rpm = window / drop_time_s * 30.0 / PI;
        Ok(Latch { drop_time_s, output_rpm, road_km_h: driveline.road_km_h(output_rpm)? })
    }
}

/// Torque at the park gear at which the tires of the locked axle slide, N·m: more than that the ground does not put on it.
///
/// T = μ_t·m_A·g·cos θ·r/(i_A·i_V)
///
/// * `driveline`; `axle_load_kg` — m_A on the locked axle, above 0; `grade_pct` — 0 to 100; `tire_friction` — μ_t, above 0 to 1.5
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Below the torque of [`park_load`] the vehicle slides down with the park lock engaged, however strong it is.
///
/// Source: friction of a locked axle (derived). Example: 3000 kg on the axle of the vehicle above on 20 %, friction 0.7: 2099.9 N·m.
///
/// ```
/// use trainwright::{hold::grip_nm, judge::Reading, road::Driveline};
/// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
/// assert!((grip_nm(line, 3000.0, 20.0, 0.7)? - 2099.9).abs() < 0.05);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn grip_nm(driveline: Driveline, axle_load_kg: f64, grade_pct: f64, tire_friction: f64) -> Result<f64> {
    let normal_n = positive("axle_load_kg", axle_load_kg)? * GRAVITY_M_S2 * cos(slope_of(grade_pct)?);
    let friction = positive("tire_friction", within("tire_friction", tire_friction, 0.0, 1.5)?)?;
    driveline.output_torque_nm(friction * normal_n, 1.0)
}

/// How far a light vehicle may move in Park on a grade in the United States. For comparison only.
///
/// movement ≤ 150 mm on 10 %
///
/// * `grade_pct` — above 0 to 10: the standard speaks of no steeper one
/// * returns 0 to 150 mm
/// * errors: [`Error::OutOfRange`]
///
/// It covers vehicles of 4536 kg (10 000 lb) or less, at the standard's own test and without a trailer. It says nothing about
/// the strength of the park gear.
///
/// Source: 49 CFR 571.114 (from memory).
///
/// ```
/// assert_eq!(trainwright::hold::roll_limits_49_cfr_571_114(10.0)?.upper, 150.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn roll_limits_49_cfr_571_114(grade_pct: f64) -> Result<Limits> {
    within("grade_pct", grade_pct, 0.0, 10.0)?;
    Limits::between(0.0, 150.0)
}
