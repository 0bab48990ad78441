//! Oil through narrow clearances: a plane slot, a shaft that slides in its bore, and what wear of a clearance costs.

use core::f64::consts::PI;

use super::pump::{density, pressure, viscosity};
use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::fit::{Gap, GapLeak, LeakRatio, WornGap};
use crate::judge::{Judgment, Limits, Reading, Rule, judge};
use crate::real::abs;

pub(super) const SLOT_FLOW: Card = Card {
    id: "hydraulic.slot_flow",
    purpose: "Flow of oil through a narrow slot, one wall of which may move: side and tip of a pump gear",
    equation: "Q = Q_p + Q_w, Q_p = w c³ Δp/(12 η L), Q_w = w c U/2; Re = 2 ρ |v| c/η",
    symbols: &[
        symbol("Q", "flow_l_min", "L/min"),
        symbol("Q_p, Q_w", "pressure_l_min, wall_l_min", "L/min"),
        symbol("w, c, L", "width_mm, clearance_mm, length_mm", "mm"),
        symbol("Δp", "pressure_drop_kpa", "kPa"),
        symbol("η, ρ", "viscosity_mpa_s, density_kg_m3", "mPa·s, kg/m³"),
        symbol("U", "wall_speed_m_s, with the flow above 0, against it below", "m/s"),
        symbol("v, Re", "speed_m_s, reynolds", "m/s, 1"),
    ],
    range: "laminar (Re to 2000), slot long against its height; walls parallel",
    source: &card::FLUID_MECHANICS,
    locator: "laminar flow between parallel plates; one plate moving",
};

pub(super) const SLIDING_GAP: Card = Card {
    id: "hydraulic.sliding_gap",
    purpose: "Flow along the gap between a bore and a shaft or valve that slides in it",
    equation: "Q = Q_p ± Q_w, Q_w = π d h U/2",
    symbols: &[
        symbol("Q", "flow_l_min", "L/min"),
        symbol("Q_p", "leak.flow_l_min, as fit.gap_leak", "L/min"),
        symbol("Q_w", "wall_l_min", "L/min"),
        symbol("d, h", "diameter_mm, leak.radial_clearance_mm", "mm"),
        symbol("U", "wall_speed_m_s", "m/s"),
    ],
    range: "as fit.gap_leak; a shaft off center carries as much oil along as a centered one",
    source: &card::FLUID_MECHANICS,
    locator: "laminar flow between parallel plates, one moving, wrapped round",
};

pub(super) const PUMP_CLEARANCE: Card = Card {
    id: "hydraulic.pump_clearance",
    purpose: "Whether a clearance of a pump is within its limit, and how many times more it leaks than when new",
    equation: "judged: c ≤ c_lim; r = (c/c_new)³",
    symbols: &[
        symbol("c", "judgment.reading", "mm"),
        symbol("c_lim", "limit_mm", "mm"),
        symbol("c_new", "new_mm", "mm"),
        symbol("r", "leak.ratio, with its interval", "1"),
    ],
    range: "limit and new clearance of this very pump, from its maker: there is no general one",
    source: &card::DEFINITION,
    locator: "hydraulic.slot_flow: the leak grows with the cube of the clearance; fit.leak_ratio",
};

/// Above this number a slot is no longer laminar.
const LAMINAR: f64 = 2000.0;

/// A narrow slot between two plane walls.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slot {
    /// Across the flow, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub clearance_mm: f64,
    /// Along the flow, mm.
    pub length_mm: f64,
}

/// Flow through a slot.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlotFlow {
    /// What the pressure drives, L/min.
    pub pressure_l_min: f64,
    /// What the moving wall takes along, L/min; negative against the pressure.
    pub wall_l_min: f64,
    /// Both, L/min.
    pub flow_l_min: f64,
    /// Mean speed, m/s.
    pub speed_m_s: f64,
    /// Reynolds number.
    pub reynolds: f64,
}

impl Slot {
    /// Flow of oil through the slot.
    ///
    /// Q = w c³ Δp/(12 η L) + w c U/2
    ///
    /// * `pressure_drop_kpa` — Δp, 0 to 1e5; `viscosity_mpa_s` — η; `density_kg_m3` — ρ; `wall_speed_m_s` — U of one wall, with
    ///   the flow above 0, against it below
    /// * returns [`SlotFlow`]
    /// * errors: [`crate::Error::OutOfRange`] for `reynolds` above 2000, and for a clearance above a tenth of width or length;
    ///   [`crate::Error::NotPositive`]
    ///
    /// Source: laminar flow between plates (Bansal, from memory). Example (by hand): 20 mm wide, 0.05 mm high, 5 mm long, 5 mPa·s
    /// and 1000 kPa let 0.5 L/min through, and a wall of 4 m/s against it holds back 0.12.
    ///
    /// ```
    /// use trainwright::hydraulic::Slot;
    /// let side = Slot { width_mm: 20.0, clearance_mm: 0.05, length_mm: 5.0 };
    /// let still = side.slot_flow(1000.0, 5.0, 800.0, 0.0)?;
    /// assert!((still.flow_l_min - 0.5).abs() < 1e-9);
    /// let twice = Slot { clearance_mm: 0.1, ..side }.slot_flow(1000.0, 5.0, 800.0, 0.0)?;
    /// assert!((twice.flow_l_min - 8.0 * still.flow_l_min).abs() < 1e-9);
    /// assert!((side.slot_flow(1000.0, 5.0, 800.0, -4.0)?.wall_l_min + 0.12).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn slot_flow(
        self,
        pressure_drop_kpa: f64,
        viscosity_mpa_s: f64,
        density_kg_m3: f64,
        wall_speed_m_s: f64,
    ) -> Result<SlotFlow> {
        let width = within("width_mm", positive("width_mm", self.width_mm)?, 0.0, 1e4)?;
        let length = within("length_mm", positive("length_mm", self.length_mm)?, 0.0, 1e4)?;
        let clearance = positive("clearance_mm", self.clearance_mm)?;
        within("clearance_mm", clearance, 0.0, 0.1 * width.min(length))?;
        let drop_mpa = pressure("pressure_drop_kpa", pressure_drop_kpa)? * 1e-3;
        let eta = viscosity("viscosity_mpa_s", viscosity_mpa_s)?;
        let rho = density(density_kg_m3)?;
        // MPa over mPa·s is 1e9/s, so mm³/s; 6e-5 L/min in it.
        let by_pressure = width * clearance * clearance * clearance * drop_mpa / (12.0 * eta * length) * 1e9;
        let by_wall = width * clearance * wall_speed(wall_speed_m_s)? * 1e3 / 2.0;
        let speed_m_s = (by_pressure + by_wall) / (width * clearance) * 1e-3;
        let reynolds = 2.0 * rho * abs(speed_m_s) * clearance / eta;
        within("reynolds", reynolds, 0.0, LAMINAR)?;
        let (pressure_l_min, wall_l_min) = (by_pressure * 6e-5, by_wall * 6e-5);
        Ok(SlotFlow { pressure_l_min, wall_l_min, flow_l_min: pressure_l_min + wall_l_min, speed_m_s, reynolds })
    }
}

fn wall_speed(wall_speed_m_s: f64) -> Result<f64> {
    within("wall_speed_m_s", finite("wall_speed_m_s", wall_speed_m_s)?, -200.0, 200.0)
}

/// Flow along a gap whose shaft slides.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlidingGap {
    /// What the pressure drives.
    pub leak: GapLeak,
    /// What the shaft takes along, L/min; negative against the pressure.
    pub wall_l_min: f64,
    /// Both, L/min.
    pub flow_l_min: f64,
}

/// Flow along the gap between a bore and a shaft or valve that slides in it.
///
/// Q = Q_p + π d h U/2, Q_p as [`Gap::gap_leak`]
///
/// * `gap`, `pressure_drop_kpa`, `viscosity_mpa_s`, `density_kg_m3` — as [`Gap::gap_leak`]
/// * `wall_speed_m_s` — U of the shaft, with the flow above 0, against it below
/// * returns [`SlidingGap`]
/// * errors: as [`Gap::gap_leak`]
///
/// Source: laminar flow between plates, one moving (Bansal, from memory).
///
/// ```
/// use trainwright::{fit::Gap, hydraulic::sliding_gap};
/// let gap = Gap { diameter_mm: 12.0, clearance_mm: 0.04, length_mm: 10.0, eccentricity: 0.0 };
/// let flow = sliding_gap(gap, 1000.0, 5.0, 800.0, 0.5)?;
/// assert!((flow.wall_l_min - 0.011_309_7).abs() < 1e-7);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn sliding_gap(
    gap: Gap,
    pressure_drop_kpa: f64,
    viscosity_mpa_s: f64,
    density_kg_m3: f64,
    wall_speed_m_s: f64,
) -> Result<SlidingGap> {
    let leak = gap.gap_leak(pressure_drop_kpa, viscosity_mpa_s, density_kg_m3)?;
    let wall_l_min = PI * gap.diameter_mm * leak.radial_clearance_mm * wall_speed(wall_speed_m_s)? * 1e3 / 2.0 * 6e-5;
    Ok(SlidingGap { leak, wall_l_min, flow_l_min: leak.flow_l_min + wall_l_min })
}

/// A clearance of a pump against its limit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpClearance {
    /// The clearance against its limit.
    pub judgment: Judgment,
    /// How many times more it leaks than when new, with the interval of 95 %.
    pub leak: LeakRatio,
}

/// Whether a clearance of a pump is within its limit, and how many times more it leaks than when new.
///
/// judged: c ≤ c_lim; r = (c/c_new)³
///
/// * `clearance_mm` — c as measured; `new_mm` — c_new, what it was when new; `limit_mm` — c_lim, above 0
/// * returns [`PumpClearance`]
/// * errors: [`crate::Error::NotPositive`]; as [`WornGap::leak_ratio`]
///
/// Limit and new clearance are those of this very pump. Source: [`Slot::slot_flow`]; ISO 14253-1 for the verdict.
///
/// ```
/// use trainwright::{hydraulic::pump_clearance, judge::{Reading, Rule, Verdict}};
/// let rule = Rule::stated_chances(0.95, 0.05)?;
/// let side = pump_clearance(Reading::new(0.08, 0.004)?, Reading::new(0.04, 0.002)?, 0.10, rule)?;
/// assert_eq!(side.judgment.verdict, Verdict::Go);
/// assert!((side.leak.ratio - 8.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn pump_clearance(clearance_mm: Reading, new_mm: Reading, limit_mm: f64, rule: Rule) -> Result<PumpClearance> {
    let limits = Limits::at_most(positive("limit_mm", limit_mm)?)?;
    positive("clearance_mm", clearance_mm.value)?;
    let worn = WornGap { new_mm, worn_mm: clearance_mm, new_eccentricity: 0.0, worn_eccentricity: 0.0 };
    Ok(PumpClearance { judgment: judge(clearance_mm, limits, rule)?, leak: worn.leak_ratio(0.95)? })
}
