//! Mesh losses: efficiency in drive and coast, self-locking, circulating power.

mod equilibrium;

use self::equilibrium::{Directions, Problem};
use super::{Load, MAX_ROWS, MAX_SETS, State, StateKind, Train};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::real::abs;

pub(super) const POWER_FLOW: Card = Card {
    id: "train.power_flow",
    purpose: "Power that each member carries and that rolls through each set, per unit of input power",
    equation: "P_i = λ c_i ω_i, P_roll = Σ max(0, −λ c_i (ω_i − ω_C))",
    symbols: &[
        symbol("λ", "state.multipliers, torque multiplier of a row", "1"),
        symbol("c_i", "row.coefficients", "1"),
        symbol("ω_i, ω_C", "state.speeds of a gear wheel and of its carrier", "1"),
        symbol("P_i", "wheel_power", "1"),
        symbol("P_roll", "rolling_power", "1"),
    ],
    range: "a state that is a gear; without losses",
    source: &card::EPICYCLIC_TRAINS,
    locator: "rolling power and coupling power",
};

pub(super) const LOSSES: Card = Card {
    id: "train.losses",
    purpose: "Efficiency of a gear with mesh losses, by the direction of the power through each mesh",
    equation: "Σ φ_i c_i' T_i = 0 at the planet, φ_i = η_i where power flows to it and 1/η_i where it leaves; η = −P_driven/P_driving",
    symbols: &[
        symbol("T_i", "torque on a gear wheel of the set", "1"),
        symbol("c_i'", "speed of the wheel per planet speed, carrier standing", "1"),
        symbol("η_i", "product of the mesh efficiencies between wheel and planet", "1"),
        symbol("η", "efficiency", "1"),
    ],
    range: "friction in proportion to the power in a mesh; bearings, windage and open elements not counted",
    source: &card::EPICYCLIC_TRAINS,
    locator: "rolling-power method",
};

/// Efficiencies of one mesh each. `practice` holds usual values to be taken by name.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeshEfficiency {
    /// Two external gears: sun and planet, planet and planet.
    pub external: f64,
    /// Planet and ring.
    pub internal: f64,
}

impl MeshEfficiency {
    /// The efficiency from sun to ring of a simple set with its carrier standing, shared evenly by its two meshes.
    pub fn of_simple_set(sun_to_ring: f64) -> Result<Self> {
        let mesh = crate::real::sqrt(efficiency_within("sun_to_ring", sun_to_ring)?);
        Ok(Self { external: mesh, internal: mesh })
    }
}

fn efficiency_within(name: &'static str, value: f64) -> Result<f64> {
    if within(name, value, 0.0, 1.0)? > 0.0 { Ok(value) } else { Err(Error::NotPositive { name, value }) }
}

/// Power in a gear without losses, per unit of input power.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PowerFlow {
    /// Power that each [`Row`](super::Row) gives to its members (sun, ring or second sun, carrier); negative where it takes.
    pub wheel_power: [[f64; 3]; MAX_ROWS],
    /// Power through the meshes of each set, seen from its carrier.
    pub rolling_power: [f64; MAX_SETS],
    /// Greatest power of a wheel or carrier. Above 1, power circulates.
    pub largest: f64,
    /// Mask of the rows whose torque the state leaves indeterminate; they count as 0.
    pub indeterminate: u32,
}

/// A gear with its mesh losses.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Losses {
    /// Power that leaves at the driven side over the power that enters; 0 where the gear locks itself or jams.
    pub efficiency: f64,
    /// Torque of the output over torque of the input, with losses. Where the gear locks itself, its sign is wrong way round:
    /// the driven side would have to help.
    pub torque_ratio: f64,
    /// Power lost in each set per unit of driving power.
    pub set_loss: [f64; MAX_SETS],
    /// Power through the meshes of each set per unit of driving power, on the side where it enters.
    pub rolling_power: [f64; MAX_SETS],
    /// Rounds until the directions of power agreed with the losses they cause.
    pub rounds: u32,
    /// Whether they came to agree. If not, no direction of power balances: the gear jams, and the other figures are those of
    /// the last round.
    pub converged: bool,
    /// Whether the losses exceed the driving power: this side cannot drive the gear.
    pub self_locking: bool,
}

/// Rounds after which directions that still change are tried one combination after the other.
const ROUNDS: u32 = 12;

impl Train {
    /// Power that each member carries and that rolls through each set, without losses.
    ///
    /// P_i = λ c_i ω_i; P_roll = Σ max(0, −λ c_i (ω_i − ω_C))
    ///
    /// * `state` — a gear of this train
    /// * returns the powers per unit of input power
    /// * errors: [`Error::NoAnswer`] if the state is not a gear
    ///
    /// Source: rolling power and coupling power of an epicyclic train (from memory of H. W. Müller, *Epicyclic Drive
    /// Trains*, 1982). Example in the tests: reverse of a four-set eight-speed rolls 1.19 times the input power in one set.
    pub fn power_flow(&self, state: &State) -> Result<PowerFlow> {
        only_gear(state)?;
        let speed = |member: u8| state.speed(member).value().unwrap_or(0.0);
        let mesh = MeshEfficiency { external: 1.0, internal: 1.0 };
        let (driving, driven) = (self.input(), self.output());
        let bodies = self.bodies(state.closed);
        let lossless = Problem { train: self, state, bodies, mesh, driving, driven, torque: 1.0 }.lossless()?;
        let mut flow = PowerFlow {
            wheel_power: [[0.0; 3]; MAX_ROWS],
            rolling_power: lossless.rolling_power,
            largest: 0.0,
            indeterminate: 0,
        };
        let bits = (0..u32::BITS).map(|bit| 1 << bit);
        for ((row, bit), (multiplier, powers)) in
            self.rows().iter().zip(bits).zip(state.multipliers.iter().zip(&mut flow.wheel_power))
        {
            let Some(multiplier) = multiplier.value() else {
                flow.indeterminate |= bit;
                continue;
            };
            for ((member, coefficient), power) in row.terms().zip(powers) {
                *power = multiplier * coefficient as f64 * speed(member);
                flow.largest = flow.largest.max(abs(*power));
            }
        }
        Ok(flow)
    }

    /// Efficiency of a gear with mesh losses.
    ///
    /// At the planet, Σ φ_i c_i' T_i = 0: a wheel whose power flows to the planet counts with φ = η_i, one that takes power
    /// from it with 1/η_i, where η_i is the product of the meshes between wheel and planet. A simple set has one mesh at the
    /// sun and one at the ring; a double-pinion set one and two; a two-sun set one at the large sun, two at the small sun and
    /// one at the ring; a stepped set one at either wheel. Directions and torques are solved in turn until they agree.
    ///
    /// * `state` — a gear of this train; `mesh` — above 0, up to 1; `load` — [`Load::Drive`] or [`Load::Coast`]
    /// * returns efficiency, torque ratio, loss and rolling power of each set; self-locking and non-convergence are reported
    /// * errors: [`Error::NoAnswer`] if the state is not a gear or leaves the torque in a rolling set indeterminate,
    ///   [`Error::OutOfRange`] and [`Error::NotPositive`] for the efficiencies, [`Error::Inconsistent`] for [`Load::None`]
    ///
    /// Source: rolling-power method (from memory of H. W. Müller, *Epicyclic Drive Trains*, 1982). Example: sun 23 drives,
    /// ring 85 held, 0.98 from sun to ring: torque ratio 1 + (85/23) · 0.98 = 4.6217.
    ///
    /// ```
    /// use trainwright::train::*;
    /// let (case, input, output, ring) = (0, 1, 2, 3);
    /// let mut train = Train::new(4, input, output, case)?;
    /// train.add_set(PlanetarySet {
    ///     kind: SetKind::Simple,
    ///     planets: 3,
    ///     teeth: SetTeeth { sun: 23, planet: 31, ring: 85, ..SetTeeth::NONE },
    ///     joins: SetJoins { sun: input, ring, carrier: output, ..SetJoins::NONE },
    /// })?;
    /// train.add_element(Element::brake(ring, case))?;
    /// let first = train.solve(0b1)?;
    /// let losses = train.losses(&first, MeshEfficiency::of_simple_set(0.98)?, Load::Drive)?;
    /// assert!((losses.torque_ratio - 4.6217).abs() < 5e-5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn losses(&self, state: &State, mesh: MeshEfficiency, load: Load) -> Result<Losses> {
        only_gear(state)?;
        efficiency_within("mesh.external", mesh.external)?;
        efficiency_within("mesh.internal", mesh.internal)?;
        let (driving, driven) = match load {
            Load::Drive => (self.input(), self.output()),
            Load::Coast => (self.output(), self.input()),
            Load::None => {
                return Err(Error::Inconsistent {
                    name: "load",
                    why: "an unloaded gear has no efficiency; say drive or coast",
                });
            }
        };
        let speed = |member: u8| state.speed(member).value().unwrap_or(0.0);
        let bodies = self.bodies(state.closed);
        let problem = Problem { train: self, state, bodies, mesh, driving, driven, torque: 1.0 / speed(driving) };

        let mut directions = Directions::NONE;
        let mut rounds = 0;
        let mut solution = problem.lossless()?;
        while solution.directions != directions && rounds < ROUNDS {
            directions = solution.directions;
            solution = problem.solve(&directions)?;
            rounds += 1;
        }
        let mut converged = solution.directions == directions;
        if !converged && let Some(found) = problem.try_all(&solution.directions)? {
            (solution, converged) = (found, true);
        }
        let leaving = -solution.driven_torque * speed(driven);
        let (into, out) = match load {
            Load::Coast => (solution.driven_torque, problem.torque),
            _ => (problem.torque, solution.driven_torque),
        };
        Ok(Losses {
            efficiency: if converged { leaving.max(0.0) } else { 0.0 },
            torque_ratio: -out / into,
            set_loss: solution.set_loss,
            rolling_power: solution.rolling_power,
            rounds,
            converged,
            self_locking: leaving <= 0.0,
        })
    }
}

fn only_gear(state: &State) -> Result<()> {
    if state.kind == StateKind::Gear {
        Ok(())
    } else {
        Err(Error::NoAnswer { name: "state", why: "only a gear passes power; solve an engagement that gives one" })
    }
}
