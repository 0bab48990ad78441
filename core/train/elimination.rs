//! Exact elimination of the speed equations, with the multipliers that combine them carried along.
//!
//! A combination of set rows that leaves only input and output is the speed equation of the gear; by virtual work its
//! multipliers are the torques. A combination that leaves nothing is a torque that the state leaves open. So one elimination
//! of [rows | identity] answers both.

use super::fraction::{Fraction, gcd, wide_gcd};
use super::{MAX_MEMBERS, MAX_ROWS};
use crate::error::{Error, Result};

/// Column of the input.
pub(super) const INPUT: usize = 0;
/// Column of the output.
pub(super) const OUTPUT: usize = 1;
/// First column of the other bodies; the multipliers follow the last body.
pub(super) const OTHERS: usize = 2;

/// One equation: coefficients of the bodies' speeds, then the multipliers that made it out of the rows of the sets.
pub(super) type Equation = [i64; MAX_MEMBERS + MAX_ROWS];
/// Most equations: the rows of the sets, and one each for an input and an output that are no bodies of their own.
const EQUATIONS: usize = MAX_ROWS + 2;

const OVERFLOW: Error = Error::Overflow { name: "elimination" };
/// Entries below this many bits can be combined without overflow.
const SMALL_BITS: u32 = 31;
/// Pivot of an equation without speeds.
const NO_PIVOT: u8 = u8::MAX;

/// Equations in fully reduced echelon form: each holds the pivot of one body, its last, and no other pivot.
pub(super) struct Echelon {
    bodies: usize,
    width: usize,
    count: usize,
    equations: [Equation; EQUATIONS],
    pivots: [u8; EQUATIONS],
}

impl Echelon {
    /// No equations yet.
    pub(super) fn new(bodies: usize, rows: usize) -> Self {
        let equations = [[0; MAX_MEMBERS + MAX_ROWS]; EQUATIONS];
        Self { bodies, width: bodies + rows, count: 0, equations, pivots: [NO_PIVOT; EQUATIONS] }
    }

    /// Adds the equation that `write` enters.
    pub(super) fn insert(&mut self, write: impl FnOnce(&mut Equation)) -> Result<()> {
        let (known, free) = self.equations.split_at_mut_checked(self.count).unwrap_or_default();
        let (pivots, free_pivots) = self.pivots.split_at_mut_checked(self.count).unwrap_or_default();
        let (Some(new), Some(new_pivot)) = (free.first_mut(), free_pivots.first_mut()) else { return Err(OVERFLOW) };
        write(new);
        for (known, &pivot) in known.iter().zip(&*pivots) {
            clear(new, known, pivot.into(), self.width)?;
        }
        let pivot = new.iter().take(self.bodies).rposition(|&entry| entry != 0).map_or(NO_PIVOT, |pivot| pivot as u8);
        for known in known {
            clear(known, new, pivot.into(), self.width)?;
        }
        *new_pivot = pivot;
        self.count += 1;
        Ok(())
    }

    /// Number of equations that say something about a speed.
    pub(super) fn rank(&self) -> usize {
        self.pivots.iter().filter(|&&pivot| pivot != NO_PIVOT).count()
    }

    /// The equation that has its pivot at this body.
    pub(super) fn of(&self, body: usize) -> Option<&Equation> {
        self.pivots.iter().zip(&self.equations).find(|&(&pivot, _)| usize::from(pivot) == body).map(|(_, row)| row)
    }

    /// The combinations of rows that cancel.
    pub(super) fn idle(&self) -> impl Iterator<Item = &Equation> {
        self.pivots
            .iter()
            .zip(&self.equations)
            .take(self.count)
            .filter(|&(&pivot, _)| pivot == NO_PIVOT)
            .map(|(_, row)| row)
    }

    /// Speed of a body per unit input speed; open if it is not determined.
    pub(super) fn speed(&self, body: usize) -> Result<Fraction> {
        let Some(equation) = self.of(body) else {
            return Ok(if body == INPUT { Fraction::ONE } else { Fraction::OPEN });
        };
        let (input, others) = equation.split_first().unwrap_or((&0, &[]));
        let own = equation.get(body).copied().unwrap_or(0);
        if others.iter().zip(OUTPUT..self.bodies).any(|(&entry, other)| entry != 0 && other != body) {
            return Ok(Fraction::OPEN);
        }
        if body == INPUT { Ok(Fraction::ZERO) } else { Fraction::reduced(-i128::from(*input), own.into()) }
    }

    /// Speed of one body less that of another, per unit input speed; open if it is not determined. A body past the last
    /// stands still.
    pub(super) fn relative(&self, first: usize, second: usize) -> Result<Fraction> {
        let (first, second) = (self.parts(first), self.parts(second));
        let difference = |body| match (first.part(body), second.part(body)) {
            (0, 0) => 0,
            (a, b) => wide(b, first.over) - wide(a, second.over),
        };
        if (OUTPUT..self.bodies).any(|body| difference(body) != 0) {
            return Ok(Fraction::OPEN);
        }
        Fraction::reduced(difference(INPUT), wide(first.over, second.over))
    }

    fn parts(&self, body: usize) -> Parts<'_> {
        let equation = self.of(body);
        let over = equation.and_then(|equation| equation.get(body)).copied().unwrap_or(1);
        Parts { body, equation, over }
    }
}

/// The speed of a body, −Σ part · speed of a free body / over.
struct Parts<'e> {
    body: usize,
    equation: Option<&'e Equation>,
    over: i64,
}

impl Parts<'_> {
    fn part(&self, of: usize) -> i64 {
        match self.equation {
            Some(_) if of == self.body => 0,
            Some(equation) => equation.get(of).copied().unwrap_or(0),
            None => -i64::from(of == self.body),
        }
    }
}

fn wide(a: i64, b: i64) -> i128 {
    i128::from(a) * i128::from(b)
}

/// Clears the entry of `target` in `column` with a multiple of `source`.
///
/// Entries stay exact: common factors are divided out only once a row has grown, which is rare for tooth counts.
fn clear(target: &mut Equation, source: &Equation, column: usize, width: usize) -> Result<()> {
    let (Some(&t), Some(&s)) = (target.get(column), source.get(column)) else { return Ok(()) };
    if t == 0 {
        return Ok(());
    }
    let (Some(target), Some(source)) = (target.get_mut(..width), source.get(..width)) else { return Ok(()) };
    if bits(target) > SMALL_BITS || bits(source) > SMALL_BITS {
        return clear_wide(target, t, source, s);
    }
    let mut all = 0;
    for (x, &y) in target.iter_mut().zip(source) {
        *x = *x * s - y * t;
        all |= x.unsigned_abs();
    }
    if all >> SMALL_BITS != 0 {
        lower(target);
    }
    Ok(())
}

/// Divides a row by its common factor.
fn lower(row: &mut [i64]) {
    let divisor = row.iter().filter(|x| **x != 0).fold(0, |divisor, x| gcd(divisor, x.unsigned_abs()));
    if divisor > 1 {
        let divisor = divisor as i64;
        row.iter_mut().for_each(|x| *x = x.checked_div(divisor).unwrap_or(*x));
    }
}

/// As [`clear`], for entries whose products do not fit 64 bits.
#[cold]
#[inline(never)]
fn clear_wide(target: &mut [i64], t: i64, source: &[i64], s: i64) -> Result<()> {
    let mut products = [0; MAX_MEMBERS + MAX_ROWS];
    let mut divisor = 0;
    for ((product, &x), &y) in products.iter_mut().zip(&*target).zip(source) {
        *product = wide(x, s).checked_sub(wide(y, t)).ok_or(OVERFLOW)?;
        divisor = wide_gcd(divisor, product.unsigned_abs());
    }
    let divisor = i128::try_from(divisor).map_err(|_| OVERFLOW)?;
    for (x, product) in target.iter_mut().zip(products) {
        *x = i64::try_from(product.checked_div(divisor).unwrap_or(product)).map_err(|_| OVERFLOW)?;
    }
    Ok(())
}

/// Bits that the magnitude of the largest entry needs.
fn bits(row: &[i64]) -> u32 {
    u64::BITS - row.iter().fold(0, |all, x| all | x.unsigned_abs()).leading_zeros()
}
