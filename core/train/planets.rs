//! Planet speeds, from the speeds of the members and the planets' tooth counts.

use super::{Fraction, SetKind, SetTeeth, State, Train};
use crate::error::{Error, Result};

/// Speeds of the planets of one set per unit input speed; open where the tooth count or a member speed is not known.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanetSpeeds {
    /// First planet on its pin: relative to the carrier.
    pub planet_on_pin: Fraction,
    /// First planet in space.
    pub planet: Fraction,
    /// Second planet on its pin; the two steps of a stepped planet are one body.
    pub planet_2_on_pin: Fraction,
    /// Second planet in space.
    pub planet_2: Fraction,
}

impl Train {
    /// Speeds of the planets of a set in a solved state.
    ///
    /// ω_P − ω_C = −(z_S / z_P)(ω_S − ω_C); a planet inside a ring: ω_P − ω_C = (z_R / z_P)(ω_R − ω_C)
    ///
    /// * `state` — a state of this train; `set` — number of the set
    /// * returns the speeds per unit input speed
    /// * errors: [`Error::OutOfRange`] for a set that the train does not have, [`Error::Overflow`]
    ///
    /// Source: rolling without slip at the pitch circles, relative to the carrier (derived). Example: sun 20, planet 7,
    /// ring 34 held, sun driving: the carrier turns 10/27, the planet on its pin −(20/7)(17/27) = −340/189.
    pub fn planet_speeds(&self, state: &State, set: u8) -> Result<PlanetSpeeds> {
        let sets = self.sets();
        let of = sets.get(usize::from(set)).ok_or(Error::OutOfRange {
            name: "set",
            value: set.into(),
            low: 0.0,
            high: sets.len() as f64 - 1.0,
        })?;
        let SetTeeth { sun, sun_2, planet, planet_2, ring } = of.teeth;
        let joins = of.joins;
        let carrier = state.speed(joins.carrier);
        let rolling = |wheel: u8, teeth: u16, planet: u16, sign: i64| {
            let ratio = Fraction::new(sign * i64::from(teeth), planet.into())?;
            let on_pin = state.speed(wheel).minus(carrier)?.times(ratio)?;
            Ok::<_, Error>((on_pin, on_pin.plus(carrier)?))
        };
        let (planet_on_pin, first) = rolling(joins.sun, sun, planet, -1)?;
        let (planet_2_on_pin, second) = match of.kind {
            SetKind::Simple => (Fraction::OPEN, Fraction::OPEN),
            SetKind::DoublePinion => rolling(joins.ring, ring, planet_2, 1)?,
            SetKind::TwoSun => rolling(joins.sun_2, sun_2, planet_2, -1)?,
            SetKind::Stepped => (planet_on_pin, first),
        };
        Ok(PlanetSpeeds { planet_on_pin, planet: first, planet_2_on_pin, planet_2: second })
    }
}
