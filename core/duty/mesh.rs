//! What the teeth of a planetary set see in a gear: how often they meet, and with what torque.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::train::{Fraction, NO_MEMBER, State, Train};

pub(super) const MESH_DUTY: Card = Card {
    id: "duty.mesh_duty",
    purpose: "How often each tooth of a planetary set meets a planet in a gear, and the torque of its wheel",
    equation: "n_w/n_in = N·|ω_w − ω_C|, T_w/T_in = λ·c_w, n_P/n_in = |ω_P − ω_C|",
    symbols: &[
        symbol("n_w/n_in", "contacts of sun, sun_2, ring, per turn of the input", "1"),
        symbol("T_w/T_in", "torque of sun, sun_2, ring, per input torque", "1"),
        symbol("n_P/n_in", "planet_contacts, planet_2_contacts, on each flank, per turn of the input", "1"),
        symbol("N", "planets", "1"),
        symbol("ω", "speeds of the solved gear, per unit input speed", "1"),
        symbol("λ·c_w", "multiplier of the set times the coefficient of the wheel", "1"),
    ],
    range: "a gear; planets that share the load evenly. A set that turns as a block meets no tooth, whatever torque it passes on",
    source: &card::EPICYCLIC_TRAINS,
    locator: "speeds and torques of a set seen from its carrier",
};

/// What one wheel of a set sees.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WheelDuty {
    /// Times that each of its teeth meets a planet per turn of the input; open where the set has no such wheel.
    pub contacts: Fraction,
    /// Torque of the set on it per unit input torque, forward positive; open where statics cannot tell.
    pub torque: Fraction,
}

impl WheelDuty {
    const NONE: Self = Self { contacts: Fraction::OPEN, torque: Fraction::OPEN };
}

/// What the teeth of a planetary set see in a gear, exact, per turn of the input and per unit of its torque.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MeshDuty {
    /// Planets, or pairs of planets, around the sun.
    pub planets: u8,
    /// The sun; the large sun of a two-sun set.
    pub sun: WheelDuty,
    /// The second sun of a stepped set; the small sun of a two-sun set.
    pub sun_2: WheelDuty,
    /// The ring.
    pub ring: WheelDuty,
    /// Times that a tooth of a planet meets each of its partners per turn of the input; open where its teeth are not known.
    pub planet_contacts: Fraction,
    /// The same for the second planet.
    pub planet_2_contacts: Fraction,
}

/// How often each tooth of a planetary set meets a planet in a gear, and the torque of its wheel.
///
/// n_w/n_in = N·|ω_w − ω_C|, T_w/T_in = λ·c_w, n_P/n_in = |ω_P − ω_C|
///
/// * `train`, `state` — a gear of that train; `set` — number of the set, whose planets are counted
/// * returns [`MeshDuty`]. A double-pinion set counts its pairs: the sun meets the inner, the ring the outer planets. The
///   suns of a two-sun set each meet their own planets, the ring the long ones, so that its torque is that of both rows. The
///   mesh between two planets is not counted
/// * errors: [`Error::OutOfRange`] for a set that the train does not have; [`Error::Missing`] where its planets were not
///   counted; [`Error::NoAnswer`] for a state that is no gear, or that leaves a speed of the set open; [`Error::Overflow`]
///
/// Source: speeds and torques of a set, from [`Train::solve`] (H. W. Müller, from memory). Example: sun 20 driving, ring 34
/// held, three planets: the carrier turns 10/27, so each tooth of the sun meets 3·17/27 = 17/9 planets per turn, with the
/// whole input torque.
///
/// ```
/// use trainwright::train::{Element, ElementKind, Fraction, PlanetarySet, SetJoins, SetKind, SetTeeth, Train};
/// let mut train = Train::new(4, 0, 1, 2)?;
/// let teeth = SetTeeth { sun: 20, ring: 34, ..SetTeeth::NONE };
/// let joins = SetJoins { sun: 0, ring: 3, carrier: 1, ..SetJoins::NONE };
/// train.add_set(PlanetarySet { kind: SetKind::Simple, planets: 3, teeth, joins })?;
/// train.add_element(Element::brake(3, 2))?;
/// let duty = trainwright::duty::mesh_duty(&train, &train.solve(1)?, 0)?;
/// assert_eq!(duty.sun.contacts, Fraction::new(17, 9)?);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn mesh_duty(train: &Train, state: &State, set: u8) -> Result<MeshDuty> {
    let sets = train.sets();
    let Some(planetary) = sets.get(usize::from(set)) else {
        return Err(Error::OutOfRange { name: "set", value: set.into(), low: 0.0, high: sets.len() as f64 - 1.0 });
    };
    if planetary.planets == 0 {
        return Err(Error::Missing {
            name: "planets",
            why: "cycles are counted per planet; count the planets of the set",
        });
    }
    if !state.ratio.is_known() {
        return Err(Error::NoAnswer { name: "state", why: "only a gear carries torque from input to output" });
    }
    let joins = planetary.joins;
    let planets = Fraction::new(planetary.planets.into(), 1)?;
    let carrier = state.speed(joins.carrier);
    let wheel = |member: u8| {
        if member == NO_MEMBER {
            return Ok(WheelDuty::NONE);
        }
        let relative = state.speed(member).minus(carrier)?;
        if !relative.is_known() {
            return Err(Error::NoAnswer { name: "state", why: "the speed of the wheel or its carrier is open" });
        }
        let mut torque = Fraction::ZERO;
        for (row, multiplier) in train.rows().iter().zip(state.multipliers).filter(|(row, _)| row.set == set) {
            let on_wheel: i64 = row.terms().filter(|&(of, _)| of == member).map(|(_, coefficient)| coefficient).sum();
            if on_wheel != 0 {
                torque = torque.plus(multiplier.times(Fraction::new(on_wheel, 1)?)?)?;
            }
        }
        Ok(WheelDuty { contacts: size(relative).times(planets)?, torque })
    };
    let on_pin = train.planet_speeds(state, set)?;
    Ok(MeshDuty {
        planets: planetary.planets,
        sun: wheel(joins.sun)?,
        sun_2: wheel(joins.sun_2)?,
        ring: wheel(joins.ring)?,
        planet_contacts: size(on_pin.planet_on_pin),
        planet_2_contacts: size(on_pin.planet_2_on_pin),
    })
}

fn size(fraction: Fraction) -> Fraction {
    if fraction.signum() < 0 { fraction.negated() } else { fraction }
}
