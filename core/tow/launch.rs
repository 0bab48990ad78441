//! Launch on a grade: force of the driven wheels against grade, rolling and break-away, and the grip of the tires.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::{abs, atan, cos, sin, sqrt};
use crate::road::{Combination, Driveline, grade_held};
use crate::units::GRAVITY_M_S2;

pub(super) const LAUNCH: Card = Card {
    id: "tow.launch",
    purpose: "Force of the driven wheels at stall against what it takes to move a combination up a grade",
    equation: "F = T_t·|i|·η_g·i_A·i_V·η_A/r, F_need = m·g·(sin θ + (f_r + f_b)·cos θ); u² = (F·u_T/T_t)² + (F·u_U/U)² + (F_need·u_m/m)²; judged: F − F_need ≥ 0",
    symbols: &[
        symbol("F, F_need", "tractive_n, needed_n", "N"),
        symbol("T_t, u_T", "turbine_nm: engine torque × torque ratio at stall", "N·m"),
        symbol("i, η_g", "gear_ratio, gear_efficiency", "1"),
        symbol("i_A, i_V, r, U, u_U", "driveline (r = U/2π)", "1, 1, mm, mm, mm"),
        symbol("η_A", "axle_efficiency", "1"),
        symbol("m, u_m", "mass_kg", "kg"),
        symbol("f_r, f_b", "rolling_coefficient, break_away_coefficient", "1"),
        symbol("θ", "grade", "°"),
    ],
    range: "from rest, engine at stall, no wind; the tires must grip (tow.grip_on_grade), the clutches hold (clutch.review), and the converter heats up within seconds",
    source: &card::DEFINITION,
    locator: "equilibrium at the point of moving",
};

pub(super) const GRIP_ON_GRADE: Card = Card {
    id: "tow.grip_on_grade",
    purpose: "Force at which the tires of the driven rear axle slip on a grade",
    equation: "F = μ·g·(m_A·cos θ ± S·sin θ), S = (m_t·h_c + m_z·h_h)/L, + nose up, − tail up; tan θ_max = (μ·m_A − m·f)/(m ∓ μ·S)",
    symbols: &[
        symbol("F", "grip_n", "N"),
        symbol("μ", "tire_friction", "1"),
        symbol("m_A", "driven_axle_kg", "kg"),
        symbol("S", "shift_kg", "kg"),
        symbol("m_t, m_z, m", "truck_kg, trailer_kg, both", "kg"),
        symbol("h_c, h_h, L", "cg_height_mm, hitch_height_mm, wheelbase_mm", "mm"),
        symbol("f", "rolling_coefficient with break-away", "1"),
        symbol("θ, θ_max", "grade, largest_grade_pct", "°, %"),
    ],
    range: "both wheels of the axle on the same ground: through a differential the side with less grip decides; the trailer pulls along the road and its own load transfer is not counted",
    source: &card::DEFINITION,
    locator: "friction of a driven axle, moments about the front axle",
};

/// A combination at the point of moving up a grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Launch {
    /// Turbine torque at stall, N·m: engine torque × torque ratio.
    pub turbine_nm: Reading,
    /// Gear ratio, input over output; negative in reverse.
    pub gear_ratio: f64,
    /// Efficiency of the gear, above 0 to 1.
    pub gear_efficiency: f64,
    /// Axle, transfer case and tire.
    pub driveline: Driveline,
    /// Efficiency of axle and transfer case, above 0 to 1.
    pub axle_efficiency: f64,
    /// Truck and trailer, kg.
    pub mass_kg: Reading,
    /// Rolling resistance over weight.
    pub rolling_coefficient: f64,
    /// What breaking away takes on top, over weight: cold tires, soft ground; 0 where it is not counted.
    pub break_away_coefficient: f64,
}

/// Whether a combination moves up a grade, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaunchForce {
    /// Torque at the transmission output, N·m.
    pub output_nm: f64,
    /// Force of the driven wheels, N.
    pub tractive_n: f64,
    /// Share of the weight along the grade, N.
    pub grade_n: f64,
    /// Rolling and break-away, N.
    pub rolling_n: f64,
    /// Both: what it takes, N.
    pub needed_n: f64,
    /// What is left to accelerate with, N; negative where it does not move.
    pub left_n: f64,
    /// That it moves.
    pub judgment: Judgment,
    /// Where the uncertainty comes from: turbine torque, tire, mass, in this order.
    pub budget: Budget,
    /// Grade at which the best estimate just moves, %; 100 for that or steeper, 0 where it does not even move on the level.
    pub largest_grade_pct: f64,
    /// Largest grade that is a GO under the rule, %.
    pub proven_grade_pct: f64,
}

impl Launch {
    /// Force of the driven wheels at stall against what it takes to move the combination up a grade.
    ///
    /// F = T_t·|i|·η_g·i_A·i_V·η_A/r, F_need = m·g·(sin θ + (f_r + f_b)·cos θ); judged: F − F_need ≥ 0
    ///
    /// * `grade_pct` — 0 to 100; `rule` — decision rule
    /// * returns [`LaunchForce`]
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// What the force allows is not what may be pulled: grip, clutches, heat, brakes and the maker's ratings come first.
    ///
    /// Source: equilibrium (derived). Example (computed independently): 1000 N·m at the turbine, ratio 4.7, axle 4.10, efficiency
    /// 0.95 × 0.965, radius 406 mm against 10 000 kg on 12 %: 43 512 N over 12 755 N.
    ///
    /// ```
    /// use trainwright::judge::{Reading, Rule};
    /// use trainwright::{road::Driveline, tow::Launch};
    /// let around_mm = 2.0 * core::f64::consts::PI * 406.0;
    /// let launch = Launch {
    ///     turbine_nm: Reading::exact(1000.0)?, gear_ratio: 4.7, gear_efficiency: 0.95, axle_efficiency: 0.965,
    ///     driveline: Driveline::new(4.10, 1.0, Reading::exact(around_mm)?)?, mass_kg: Reading::exact(10_000.0)?,
    ///     rolling_coefficient: 0.011, break_away_coefficient: 0.0,
    /// };
    /// let force = launch.launch(12.0, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((force.tractive_n - 43_511.8).abs() < 0.1 && (force.needed_n - 12_755.2).abs() < 0.1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn launch(self, grade_pct: f64, rule: Rule) -> Result<LaunchForce> {
        let Self { turbine_nm, driveline, mass_kg, .. } = self;
        let turbine_nm = Reading::new(positive("turbine_nm", turbine_nm.value)?, turbine_nm.u)?;
        let mass_kg = Reading::new(positive("mass_kg", mass_kg.value)?, mass_kg.u)?;
        let ratio = positive("gear_ratio", abs(self.gear_ratio))?;
        let efficiency = positive("gear_efficiency", within("gear_efficiency", self.gear_efficiency, 0.0, 1.0)?)?;
        let rolling = within("rolling_coefficient", self.rolling_coefficient, 0.0, 1.0)?
            + within("break_away_coefficient", self.break_away_coefficient, 0.0, 1.0)?;
        let slope = atan(within("grade_pct", grade_pct, 0.0, 100.0)? / 100.0);
        let output_nm = turbine_nm.value * ratio * efficiency;
        let tractive_n = driveline.tractive_force_n(output_nm, self.axle_efficiency)?;
        let weight_n = mass_kg.value * GRAVITY_M_S2;
        let [grade_n, rolling_n] = [weight_n * sin(slope), weight_n * rolling * cos(slope)];
        let needed_n = grade_n + rolling_n;
        let around_mm = Reading::new(driveline.circumference_mm.value, driveline.circumference_mm.u)?;
        let budget = combine(&[
            Input::new(tractive_n / turbine_nm.value, turbine_nm.u)?,
            Input::new(-tractive_n / around_mm.value, around_mm.u)?,
            Input::new(-needed_n / mass_kg.value, mass_kg.u)?,
        ])?;
        let judgment = judge(Reading::new(tractive_n - needed_n, budget.u)?, Limits::at_least(0.0)?, rule)?;
        let combination = Combination { mass_kg: mass_kg.value, rolling_coefficient: rolling, drag_area_m2: 0.0 };
        let guard = super::limits::guard(rule)?;
        let force = guard * crate::real::hypot(turbine_nm.u / turbine_nm.value, around_mm.u / around_mm.value);
        let mass = guard * mass_kg.u / mass_kg.value;
        // (F − x)² = (z·u_F)² + (z·u_m·x)², the root below F.
        let sure = (1.0 - force * force).max(0.0);
        let proven_n = tractive_n * sure / (1.0 + sqrt(force * force + mass * mass * sure));
        Ok(LaunchForce {
            output_nm,
            tractive_n,
            grade_n,
            rolling_n,
            needed_n,
            left_n: tractive_n - needed_n,
            judgment,
            budget,
            largest_grade_pct: grade_moved_pct(combination, tractive_n)?,
            proven_grade_pct: grade_moved_pct(combination, proven_n)?,
        })
    }
}

/// Grade that a force moves, 0 to 100 %.
fn grade_moved_pct(combination: Combination, force_n: f64) -> Result<f64> {
    match grade_held(combination, 0.0, 0.0, force_n) {
        Ok(held) => Ok(held.grade_pct.clamp(0.0, 100.0)),
        Err(Error::NoAnswer { .. }) => Ok(100.0),
        Err(other) => Err(other),
    }
}

/// How a rear-driven truck and its trailer stand on a grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stance {
    /// Load of the driven rear axle on the level, kg, the hitch load counted.
    pub driven_axle_kg: f64,
    /// Truck, kg.
    pub truck_kg: f64,
    /// Trailer, kg; 0 without one.
    pub trailer_kg: f64,
    /// Wheelbase, mm.
    pub wheelbase_mm: f64,
    /// Height of the truck's center of gravity, mm; 0 leaves its shift out.
    pub cg_height_mm: f64,
    /// Height of the ball or pin, mm; 0 leaves the pull of the trailer out.
    pub hitch_height_mm: f64,
    /// The driven axle is the upper one: the truck climbs backward.
    pub tail_up: bool,
}

/// What the tires of the driven axle carry on a grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaunchGrip {
    /// Load that the grade shifts to the rear axle per unit of sin θ, kg; negative tail up.
    pub shift_kg: f64,
    /// Force of the ground on the axle, N.
    pub normal_n: f64,
    /// Force at which its tires slip, N.
    pub grip_n: f64,
    /// What it takes to move, N.
    pub needed_n: f64,
    /// Grade at which the tires slip, %; 100 for that or steeper, 0 where they slip on the level.
    pub largest_grade_pct: f64,
}

/// Force at which the tires of the driven rear axle slip on a grade, and the grade on which they do.
///
/// F = μ·g·(m_A·cos θ ± S·sin θ), S = (m_t·h_c + m_z·h_h)/L, + nose up, − tail up; tan θ_max = (μ·m_A − m·f)/(m ∓ μ·S)
///
/// * `stance`; `grade_pct` — 0 to 100; `tire_friction` — μ, above 0 to 1.5
/// * `rolling_coefficient` — f with break-away, 0 to 1
/// * returns [`LaunchGrip`]
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: friction of an axle and moments about the front axle (derived).
///
/// ```
/// use trainwright::tow::{Stance, grip_on_grade};
/// let forward = Stance {
///     driven_axle_kg: 2500.0, truck_kg: 4200.0, trailer_kg: 6000.0, wheelbase_mm: 3800.0, cg_height_mm: 750.0,
///     hitch_height_mm: 550.0, tail_up: false,
/// };
/// let [up, back] = [forward, Stance { tail_up: true, ..forward }].map(|stance| grip_on_grade(stance, 12.0, 0.7, 0.011));
/// assert!(back?.grip_n < up?.grip_n); // climbing backward the driven axle is relieved
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn grip_on_grade(
    stance: Stance,
    grade_pct: f64,
    tire_friction: f64,
    rolling_coefficient: f64,
) -> Result<LaunchGrip> {
    let axle_kg = positive("driven_axle_kg", stance.driven_axle_kg)?;
    let truck_kg = positive("truck_kg", stance.truck_kg)?;
    let trailer_kg = within("trailer_kg", stance.trailer_kg, 0.0, 1e6)?;
    let wheelbase_mm = positive("wheelbase_mm", stance.wheelbase_mm)?;
    let high = within("cg_height_mm", stance.cg_height_mm, 0.0, 5000.0)?;
    let pull = within("hitch_height_mm", stance.hitch_height_mm, 0.0, 5000.0)?;
    let slope = atan(within("grade_pct", grade_pct, 0.0, 100.0)? / 100.0);
    let friction = positive("tire_friction", within("tire_friction", tire_friction, 0.0, 1.5)?)?;
    let rolling = within("rolling_coefficient", rolling_coefficient, 0.0, 1.0)?;
    let shift = (truck_kg * high + trailer_kg * pull) / wheelbase_mm;
    let shift_kg = if stance.tail_up { -shift } else { shift };
    let normal_n = (GRAVITY_M_S2 * (axle_kg * cos(slope) + shift_kg * sin(slope))).max(0.0);
    let mass_kg = truck_kg + trailer_kg;
    let [over, under] = [friction * axle_kg - mass_kg * rolling, mass_kg - friction * shift_kg];
    let largest = if under > 0.0 { 100.0 * over / under } else { 100.0 };
    Ok(LaunchGrip {
        shift_kg,
        normal_n,
        grip_n: friction * normal_n,
        needed_n: mass_kg * GRAVITY_M_S2 * (sin(slope) + rolling * cos(slope)),
        largest_grade_pct: if over <= 0.0 { 0.0 } else { largest.min(100.0) },
    })
}
