//! One-way clutches: rollers and sprags that wedge, struts that drop into notches, and what the train asks of them.

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::sqrt;
use crate::train::{Blocks, Fraction, Load, State, StateKind, Train};

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

pub(super) fn counted(name: &'static str, count: u32, low: u32) -> Result<u32> {
    if (low..=1000).contains(&count) { Ok(count) } else { Err(Error::Count { name, count, low, high: 1000 }) }
}

pub(super) fn one_way_hold(
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
/// * `backlash_deg` — φ, above 0 to 360°: [`super::RatchetIndex::backlash_deg`]; `torque_nm` — T on the member that turns back,
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
