//! Rotating inertia as the road feels it.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::abs;
use crate::road::Driveline;
use crate::train::{MAX_MEMBERS, State, StateKind};
use core::f64::consts::PI;

pub(super) const OUTPUT_INERTIA: Card = Card {
    id: "tow.output_inertia_kg_m2",
    purpose: "Moment of inertia of a whole gear train in a gear, referred to its output",
    equation: "J = Σ J_i·(ω_i/ω_out)²",
    symbols: &[
        symbol("J", "result", "kg·m²"),
        symbol("J_i", "inertia_kg_m2 of each member", "kg·m²"),
        symbol("ω_i, ω_out", "speed of the member and of the output, from the state", "1"),
    ],
    range: "a gear; what turns with a member counts as its inertia: the turbine with the input, with the lock-up clutch closed engine and impeller too; planets turn faster than their carrier, so give their carrier what they add",
    source: &card::DEFINITION,
    locator: "kinetic energy of the members",
};

pub(super) const EQUIVALENT_MASS: Card = Card {
    id: "tow.equivalent_mass",
    purpose: "Mass that the force of the driven wheels accelerates, rotating parts counted",
    equation: "m_e = m + J_w/r² + J_o·(i_A·i_V/r)², r = U/(2·π), λ = m_e/m",
    symbols: &[
        symbol("m_e, m", "total_kg, mass_kg", "kg"),
        symbol("J_w", "wheel_inertia_kg_m2 of all wheels together", "kg·m²"),
        symbol("J_o", "output_inertia_kg_m2", "kg·m²"),
        symbol("r, U, i_A, i_V", "driveline", "mm, mm, 1, 1"),
        symbol("λ", "factor", "1"),
    ],
    range: "wheels roll without slip, the trailer's too",
    source: &card::DEFINITION,
    locator: "kinetic energy of what turns",
};

/// Mass that a force accelerates, and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EquivalentMass {
    /// What the wheels add, kg.
    pub wheels_kg: f64,
    /// What transmission, and engine where it is locked to it, add, kg.
    pub train_kg: f64,
    /// All, kg.
    pub total_kg: f64,
    /// All over the mass that stands on the scale.
    pub factor: f64,
}

/// Moment of inertia of a whole gear train in a gear, referred to its output, kg·m².
///
/// J = Σ J_i·(ω_i/ω_out)²
///
/// * `state` — a gear, from [`crate::train::Train::solve`]; `inertia_kg_m2` — J_i of the members in their order, 0 or more
/// * errors: [`Error::NoAnswer`] for a state that is no gear; [`Error::Count`] for more members than a train has;
///   [`Error::OutOfRange`]; [`Error::Missing`] where a member with inertia has no speed in this gear
///
/// Source: kinetic energy (derived). Example: a set of 30, 78 with the carrier as output and the ring held, ratio 3.6: 0.1 kg·m² on
/// the sun count 1.296, and 0.2 on the carrier once.
///
/// ```
/// use trainwright::train::{Element, PlanetarySet, SetJoins, SetKind, SetTeeth, Train};
/// let (sun, carrier, ring, case) = (0, 1, 2, 3);
/// let mut train = Train::new(4, sun, carrier, case)?;
/// let teeth = SetTeeth { sun: 30, ring: 78, ..SetTeeth::NONE };
/// let joins = SetJoins { sun, ring, carrier, ..SetJoins::NONE };
/// train.add_set(PlanetarySet { kind: SetKind::Simple, planets: 3, teeth, joins })?;
/// train.add_element(Element::brake(ring, case))?;
/// let gear = train.solve(1)?;
/// let inertia = trainwright::tow::output_inertia_kg_m2(&gear, &[0.1, 0.2, 0.3])?;
/// assert!((inertia - 1.496).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn output_inertia_kg_m2(state: &State, inertia_kg_m2: &[f64]) -> Result<f64> {
    let ratio = match (state.kind, state.ratio.value()) {
        (StateKind::Gear, Some(ratio)) => ratio,
        _ => return Err(Error::NoAnswer { name: "state", why: "only a gear ties every member to the output" }),
    };
    if inertia_kg_m2.len() > MAX_MEMBERS {
        let count = u32::try_from(inertia_kg_m2.len()).unwrap_or(u32::MAX);
        return Err(Error::Count { name: "inertia_kg_m2", count, low: 0, high: MAX_MEMBERS as u32 });
    }
    let mut sum = 0.0;
    for (member, &inertia) in (0_u8..).zip(inertia_kg_m2) {
        let inertia = within("inertia_kg_m2", inertia, 0.0, 1e6)?;
        match state.speed(member).value() {
            Some(speed) => sum += inertia * (speed * ratio) * (speed * ratio),
            None if inertia > 0.0 => {
                return Err(Error::Missing {
                    name: "inertia_kg_m2",
                    why: "a member that has inertia turns freely in this gear, so its speed is not known; give it 0 there",
                });
            }
            None => {}
        }
    }
    Ok(sum)
}

/// Mass that the force of the driven wheels accelerates, rotating parts counted.
///
/// m_e = m + J_w/r² + J_o·(i_A·i_V/r)², r = U/(2·π), λ = m_e/m
///
/// * `mass_kg` — m, above 0; `driveline` — U, i_A, i_V; `wheel_inertia_kg_m2` — J_w of all wheels, the trailer's too, 0 or more
/// * `output_inertia_kg_m2` — J_o, 0 or more: [`output_inertia_kg_m2`]
/// * returns [`EquivalentMass`]
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: kinetic energy (derived). Example: 10 kg·m² of wheels at a radius of 400 mm count 62.5 kg.
///
/// ```
/// use trainwright::{judge::Reading, road::Driveline, tow::equivalent_mass};
/// let line = Driveline::new(4.0, 1.0, Reading::exact(2.0 * core::f64::consts::PI * 400.0)?)?;
/// let mass = equivalent_mass(8000.0, line, 10.0, 1.0)?;
/// assert!((mass.wheels_kg - 62.5).abs() < 1e-9 && (mass.train_kg - 100.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn equivalent_mass(
    mass_kg: f64,
    driveline: Driveline,
    wheel_inertia_kg_m2: f64,
    output_inertia_kg_m2: f64,
) -> Result<EquivalentMass> {
    let mass_kg = positive("mass_kg", mass_kg)?;
    let radius_m = positive("circumference_mm", driveline.circumference_mm.value)? / (2000.0 * PI);
    let reduction =
        positive("axle_ratio", driveline.axle_ratio)? * positive("transfer_ratio", driveline.transfer_ratio)?;
    let wheels_kg = within("wheel_inertia_kg_m2", wheel_inertia_kg_m2, 0.0, 1e6)? / (radius_m * radius_m);
    let turns = reduction / radius_m;
    let train_kg = within("output_inertia_kg_m2", output_inertia_kg_m2, 0.0, 1e6)? * turns * turns;
    let total_kg = mass_kg + wheels_kg + train_kg;
    Ok(EquivalentMass { wheels_kg, train_kg, total_kg, factor: abs(total_kg / mass_kg) })
}
