//! Torques in equilibrium in a gear with mesh losses, for given directions of the power.

use super::MeshEfficiency;
use crate::error::{Error, Result};
use crate::real::abs;
use crate::train::state::Bodies;
use crate::train::{Fraction, MAX_MEMBERS, MAX_ROWS, MAX_SETS, PlanetarySet, Row, SetKind, State, Train};

/// Direction of power at the gear wheels, seen from the carrier: 1 into the set, −1 out of it, 0 none.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct Directions {
    near: [i8; MAX_ROWS],
    far: [i8; MAX_SETS],
}

impl Directions {
    pub(super) const NONE: Self = Self { near: [0; MAX_ROWS], far: [0; MAX_SETS] };
}

/// Most directions that are tried in every combination.
const TRIED_BITS: u32 = 10;
/// Less of the driving power than this does not count as power.
const NO_POWER: f64 = 1e-12;

pub(super) struct Problem<'a> {
    pub(super) train: &'a Train,
    pub(super) state: &'a State,
    pub(super) bodies: Bodies,
    pub(super) mesh: MeshEfficiency,
    pub(super) driving: u8,
    pub(super) driven: u8,
    /// Torque from outside on the driving member that gives unit power.
    pub(super) torque: f64,
}

pub(super) struct Solution {
    pub(super) driven_torque: f64,
    pub(super) set_loss: [f64; MAX_SETS],
    pub(super) rolling_power: [f64; MAX_SETS],
    /// The directions that these torques have.
    pub(super) directions: Directions,
}

/// Unknowns: the torque on the first wheel of each row, and the driven torque.
const UNKNOWNS: usize = MAX_ROWS + 1;
/// One equation of equilibrium and its right-hand side.
type Equation = [f64; UNKNOWNS + 1];

impl Problem<'_> {
    /// Coefficients of the torques of a row per unit torque on its first wheel, with the losses of these directions.
    fn torques(&self, index: usize, row: &Row, directions: &Directions) -> [f64; 3] {
        let [near, far, _] = row.coefficients.map(f64::from);
        let (first, second_row) = self.set_of(index, row);
        let (eta_near, eta_far) = branches(first, second_row, self.mesh);
        let power = |eta: f64, direction: Option<&i8>| match direction {
            Some(1) => eta,
            Some(-1) => 1.0 / eta,
            _ => 1.0,
        };
        let far = far / near * power(eta_near, directions.near.get(index))
            / power(eta_far, directions.far.get(usize::from(row.set)));
        [1.0, far, -(1.0 + far)]
    }

    /// The set of a row, and whether it is the second row of that set.
    fn set_of(&self, index: usize, row: &Row) -> (&PlanetarySet, bool) {
        let set = self.train.sets().get(usize::from(row.set)).unwrap_or(&PlanetarySet::NONE);
        let before = index.checked_sub(1).and_then(|before| self.train.rows().get(before));
        (set, before.is_some_and(|before| before.set == row.set))
    }

    /// Without losses, from the torques of the state.
    pub(super) fn lossless(&self) -> Result<Solution> {
        let coasting = self.driving != self.train.input();
        let (sign, driven) = if coasting { (-1.0, Fraction::ONE) } else { (1.0, self.state.output_torque) };
        let first = self.train.rows().iter().map(|row| row.coefficients.first().copied().map_or(0.0, f64::from));
        let rows =
            first.zip(&self.state.multipliers).map(|(near, multiplier)| near * multiplier.value().unwrap_or(0.0));
        let mut near_torques = [0.0; UNKNOWNS];
        for (torque, value) in near_torques.iter_mut().zip(rows.chain(driven.value())) {
            *torque = sign * value;
        }
        self.evaluate(&near_torques, &Directions::NONE)
    }

    pub(super) fn solve(&self, directions: &Directions) -> Result<Solution> {
        let rows = self.train.rows();
        let driven_column = rows.len();
        let body = |member: u8| self.bodies.of(member);
        let mut equations = heapless::Vec::<Equation, MAX_MEMBERS>::new();
        equations.resize(self.bodies.width, [0.0; UNKNOWNS + 1]).map_err(|_| Error::Overflow { name: "losses" })?;
        let mut add = |member: u8, column: usize, value: f64| {
            if let Some(entry) = equations.get_mut(body(member)).and_then(|equation| equation.get_mut(column)) {
                *entry += value;
            }
        };
        for (column, row) in rows.iter().enumerate() {
            for (&member, torque) in row.members.iter().zip(self.torques(column, row, directions)) {
                add(member, column, torque);
            }
        }
        add(self.driven, driven_column, 1.0);
        add(self.driving, UNKNOWNS, -self.torque);
        let near_torques = eliminate(&mut equations, driven_column + 1)?;
        self.evaluate(&near_torques, directions)
    }

    fn evaluate(&self, near_torques: &[f64; UNKNOWNS], directions: &Directions) -> Result<Solution> {
        let rows = self.train.rows();
        let mut solution = Solution {
            driven_torque: near_torques.get(rows.len()).copied().unwrap_or(0.0),
            set_loss: [0.0; MAX_SETS],
            rolling_power: [0.0; MAX_SETS],
            directions: Directions::NONE,
        };
        let mut far_power = [0.0; MAX_SETS];
        for (index, (row, &near_torque)) in rows.iter().zip(near_torques).enumerate() {
            let [near, far, carrier] = row.members.map(|member| self.state.speed(member));
            let rolls = !(near.is_known() && near == carrier);
            let indeterminate = self.state.multipliers.get(index).is_some_and(|multiplier| !multiplier.is_known());
            if rolls && indeterminate {
                return Err(Error::NoAnswer {
                    name: "losses",
                    why: "closed elements repeat one another, so the torque in a rolling set is indeterminate; open one",
                });
            }
            let relative = |speed: Fraction| match (speed.value(), carrier.value()) {
                (Some(speed), Some(carrier)) => speed - carrier,
                _ => 0.0, // a set that floats carries no torque
            };
            let [_, far_torque, _] = self.torques(index, row, directions);
            // The set gives these torques; what enters it has the other sign.
            let power = -near_torque * relative(near);
            let set = usize::from(row.set);
            if let (Some(direction), Some(sum), Some(loss), Some(rolling)) = (
                solution.directions.near.get_mut(index),
                far_power.get_mut(set),
                solution.set_loss.get_mut(set),
                solution.rolling_power.get_mut(set),
            ) {
                *direction = sign(power);
                let far = -near_torque * far_torque * relative(far);
                *sum += far;
                *loss += power + far;
                *rolling += power.max(0.0);
            }
        }
        let ends = far_power.iter().zip(&mut solution.directions.far).zip(&mut solution.rolling_power);
        for ((&power, direction), rolling) in ends {
            *direction = sign(power);
            *rolling += power.max(0.0);
        }
        Ok(solution)
    }

    /// The first combination of directions that agrees with the torques it causes.
    pub(super) fn try_all(&self, about: &Directions) -> Result<Option<Solution>> {
        let all = about.near.iter().chain(&about.far);
        let bits = all.filter(|&&direction| direction != 0).count() as u32;
        for combination in 0..1_u32.checked_shl(bits.min(TRIED_BITS)).unwrap_or(0) {
            let mut trial = *about;
            let used = trial.near.iter_mut().chain(&mut trial.far).filter(|direction| **direction != 0);
            for (bit, direction) in (0..TRIED_BITS).zip(used) {
                *direction = if combination & (1 << bit) == 0 { 1 } else { -1 };
            }
            let solution = self.solve(&trial)?;
            if solution.directions == trial {
                return Ok(Some(solution));
            }
        }
        Ok(None)
    }
}

/// Mesh efficiencies between the planet and the first and the second wheel of a row.
fn branches(set: &PlanetarySet, second_row: bool, mesh: MeshEfficiency) -> (f64, f64) {
    let MeshEfficiency { external, internal } = mesh;
    match set.kind {
        SetKind::Simple => (external, internal),
        SetKind::DoublePinion => (external, external * internal),
        SetKind::TwoSun if second_row => (external * external, internal),
        SetKind::TwoSun => (external, internal),
        SetKind::Stepped if set.teeth.ring > 0 => (external, internal),
        SetKind::Stepped => (external, external),
    }
}

fn sign(power: f64) -> i8 {
    if power > NO_POWER {
        1
    } else if power < -NO_POWER {
        -1
    } else {
        0
    }
}

/// Solves the equations by elimination; an unknown that they leave open is 0.
fn eliminate(equations: &mut [Equation], unknowns: usize) -> Result<[f64; UNKNOWNS]> {
    let at = |equation: &Equation, column: usize| equation.get(column).copied().unwrap_or(0.0);
    let mut pivot_of = [usize::MAX; UNKNOWNS];
    let mut rank = 0;
    for (column, pivot) in pivot_of.iter_mut().enumerate().take(unknowns) {
        let (_, rest) = equations.split_at_mut_checked(rank).unwrap_or_default();
        let largest = rest.iter().enumerate().max_by(|a, b| abs(at(a.1, column)).total_cmp(&abs(at(b.1, column))));
        let Some(place) = largest.filter(|(_, row)| abs(at(row, column)) > 1e-10).map(|(place, _)| place) else {
            continue;
        };
        if let Ok([first, pivot_row]) = rest.get_disjoint_mut([0, place]) {
            core::mem::swap(first, pivot_row);
        }
        *pivot = rank;
        let own = *rest.first().unwrap_or(&[0.0; UNKNOWNS + 1]);
        for (_, row) in equations.iter_mut().enumerate().filter(|(other, _)| *other != rank) {
            let factor = at(row, column) / at(&own, column);
            if factor != 0.0 {
                for (entry, source) in row.iter_mut().zip(own) {
                    *entry -= factor * source;
                }
            }
        }
        rank += 1;
    }
    if equations.iter().skip(rank).any(|row| abs(at(row, UNKNOWNS)) > 1e-7) {
        return Err(Error::NoAnswer {
            name: "losses",
            why: "no equilibrium: nothing in this state takes the driving torque",
        });
    }
    let mut values = [0.0; UNKNOWNS];
    for (column, (value, &pivot)) in values.iter_mut().zip(&pivot_of).enumerate() {
        if let Some(row) = equations.get(pivot) {
            *value = at(row, UNKNOWNS) / at(row, column);
        }
    }
    Ok(values)
}
