//! What the helical gears of a planetary set push along the axis.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{abs, cos, tan};
use crate::train::{NO_MEMBER, State, Train};

pub(super) const AXIAL_THRUST: Card = Card {
    id: "hold.axial_thrust",
    purpose: "Force along the axis that a helical sun or ring brings into its thrust bearing",
    equation: "r = m_n z/(2 cos β), F_t = T/r, F_a = F_t tan β",
    symbols: &[
        symbol("r", "pitch_radius_mm", "mm"),
        symbol("m_n", "module_mm, normal", "mm"),
        symbol("z", "teeth", "1"),
        symbol("β", "helix_deg, at the pitch circle", "°"),
        symbol("T", "torque_nm, of the wheel, all its planets together", "N·m"),
        symbol("F_t, F_a", "tangential_n, axial_n", "N"),
    ],
    range: "steady torque, no losses. The planets take no net force: sun and ring push them opposite ways",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 13, force analysis of helical gearing",
};

pub(super) const WHEEL_THRUST: Card = Card {
    id: "hold.wheel_thrust",
    purpose: "Force along the axis of a wheel of a planetary set in a gear, and its speed against the carrier",
    equation: "T = λ c T_in, F_a = T tan β/r, n = |ω_wheel − ω_C| n_in",
    symbols: &[
        symbol("λ c", "state.multipliers times row.coefficients", "1"),
        symbol("T_in", "input_torque_nm", "N·m"),
        symbol("F_a", "thrust.axial_n", "N"),
        symbol("T", "torque_nm", "N·m"),
        symbol("β, r", "as hold.axial_thrust", "°, mm"),
        symbol("n", "carrier_slip_rpm", "1/min"),
        symbol("ω_wheel, ω_C", "state.speeds", "1"),
        symbol("n_in", "input_speed_rpm", "1/min"),
    ],
    range: "a gear whose torques statics decides; which way the force points follows from the hand of the helix and from drive \
        or coast. Not counted: pistons, converter, other sets that lean on the same bearing, friction in splines",
    source: &card::EPICYCLIC_TRAINS,
    locator: "torques of a set, times hold.axial_thrust",
};

/// Teeth of a helical planetary set.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helical {
    /// Normal module, mm.
    pub module_mm: f64,
    /// Helix angle at the pitch circle, degrees, 0 to 45.
    pub helix_deg: f64,
}

/// A wheel of a planetary set.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wheel {
    /// The sun; the large sun of a two-sun set.
    Sun,
    /// The second sun of a stepped set; the small sun of a two-sun set.
    Sun2,
    /// The ring.
    Ring,
}

/// A wheel of a helical set of a train.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetWheel {
    /// Number of the set.
    pub set: u8,
    /// Which wheel of it.
    pub wheel: Wheel,
    /// The teeth that this wheel meshes.
    pub helical: Helical,
}

/// Force of a helical wheel along its axis.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxialThrust {
    /// Pitch radius, mm.
    pub pitch_radius_mm: f64,
    /// Force at the pitch circle, all planets together, N.
    pub tangential_n: f64,
    /// Force along the axis, N, without sign.
    pub axial_n: f64,
}

/// Force of a wheel of a set in a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelThrust {
    /// Torque of the set on the wheel, N·m, forward positive.
    pub torque_nm: f64,
    /// Its force.
    pub thrust: AxialThrust,
    /// Speed of the wheel against the carrier, 1/min, without sign: what a bearing between the two sees.
    pub carrier_slip_rpm: f64,
}

/// Force along the axis that a helical sun or ring brings into its thrust bearing.
///
/// r = m_n z/(2 cos β), F_t = T/r, F_a = F_t tan β
///
/// * `torque_nm` — T of the wheel, any sign; `teeth` — z, 1 to 9999; `teeth_of` — m_n above 0 and β from 0 to 45
/// * returns [`AxialThrust`]; a bearing of a spur gear (β = 0) gets nothing
/// * errors: [`Error::Count`], [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: Shigley, chapter 13 (from memory). Example: its helical pinion of 18 teeth, normal pitch 12 per inch, helix 30°, at
/// 1 hp and 1800 1/min: 40.4 lbf at the pitch circle, 23.3 lbf along the axis.
///
/// ```
/// use trainwright::hold::{Helical, axial_thrust};
/// use trainwright::units::{MM_PER_IN, N_PER_LBF};
/// let pinion = Helical { module_mm: MM_PER_IN / 12.0, helix_deg: 30.0 };
/// let pushed = axial_thrust(3.956, 18, pinion)?;
/// assert!((pushed.tangential_n / N_PER_LBF - 40.4).abs() < 0.05);
/// assert!((pushed.axial_n / N_PER_LBF - 23.3).abs() < 0.05);
/// # Ok::<(), trainwright::Error>(())
/// ```
#[inline]
pub fn axial_thrust(torque_nm: f64, teeth: u16, helical: Helical) -> Result<AxialThrust> {
    if !(1..=9999).contains(&teeth) {
        return Err(Error::Count { name: "teeth", count: teeth.into(), low: 1, high: 9999 });
    }
    let module_mm = within("module_mm", positive("module_mm", helical.module_mm)?, 0.0, 100.0)?;
    let helix = within("helix_deg", helical.helix_deg, 0.0, 45.0)?.to_radians();
    let torque_nmm = abs(within("torque_nm", torque_nm, -1e7, 1e7)?) * 1e3;
    let pitch_radius_mm = module_mm * f64::from(teeth) / (2.0 * cos(helix));
    let tangential_n = torque_nmm / pitch_radius_mm;
    Ok(AxialThrust { pitch_radius_mm, tangential_n, axial_n: tangential_n * tan(helix) })
}

/// Force along the axis of a wheel of a planetary set in a gear, and its speed against the carrier.
///
/// T = λ c T_in, F_a = T tan β/r, n = |ω_wheel − ω_C| n_in
///
/// * `train`, `state` — a gear of that train; `at` — set, wheel and its teeth; `input_torque_nm`, `input_speed_rpm` — any sign
/// * returns [`WheelThrust`]. Pistons, converter and other sets that lean on the same bearing are not counted
/// * errors: [`Error::OutOfRange`] for a set that the train does not have; [`Error::Missing`] for a wheel that the set does
///   not have; [`Error::NoAnswer`] for a state that is no gear, or whose torque or speed there is indeterminate; as
///   [`axial_thrust`]
///
/// Source: torques of a set, from [`Train::solve`], times [`axial_thrust`].
pub fn wheel_thrust(
    train: &Train,
    state: &State,
    at: SetWheel,
    input_torque_nm: f64,
    input_speed_rpm: f64,
) -> Result<WheelThrust> {
    let SetWheel { set, wheel, helical } = at;
    let sets = train.sets();
    let Some(planetary) = sets.get(usize::from(set)) else {
        return Err(Error::OutOfRange { name: "set", value: set.into(), low: 0.0, high: sets.len() as f64 - 1.0 });
    };
    let (teeth, member) = match wheel {
        Wheel::Sun => (planetary.teeth.sun, planetary.joins.sun),
        Wheel::Sun2 => (planetary.teeth.sun_2, planetary.joins.sun_2),
        Wheel::Ring => (planetary.teeth.ring, planetary.joins.ring),
    };
    if member == NO_MEMBER {
        return Err(Error::Missing { name: "wheel", why: "this kind of set has no such wheel; name one that it has" });
    }
    if !state.ratio.is_known() {
        return Err(Error::NoAnswer { name: "state", why: "only a gear carries torque from input to output" });
    }
    let input_nm = finite("input_torque_nm", input_torque_nm)?;
    let mut share = 0.0;
    for (row, multiplier) in train.rows().iter().zip(state.multipliers).filter(|(row, _)| row.set == set) {
        let on_wheel: i64 = row.terms().filter(|&(of, _)| of == member).map(|(_, coefficient)| coefficient).sum();
        if on_wheel != 0 {
            share += on_wheel as f64 * multiplier.value().ok_or(INDETERMINATE)?;
        }
    }
    let slip = match (state.speed(member).value(), state.speed(planetary.joins.carrier).value()) {
        (Some(wheel), Some(carrier)) => abs(wheel - carrier),
        _ => return Err(Error::NoAnswer { name: "state", why: "the speed of the wheel or its carrier is open" }),
    };
    let torque_nm = share * input_nm;
    Ok(WheelThrust {
        torque_nm,
        thrust: axial_thrust(torque_nm, teeth, helical)?,
        carrier_slip_rpm: slip * abs(finite("input_speed_rpm", input_speed_rpm)?),
    })
}

const INDETERMINATE: Error = Error::NoAnswer {
    name: "state",
    why: "the closed elements repeat one another, so statics cannot tell the torque of this set",
};
