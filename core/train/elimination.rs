//! Exact elimination of small systems of whole-number equations.

use super::fraction::{Fraction, gcd, wide_gcd};
use super::{MAX_MEMBERS, MAX_ROWS};
use crate::error::{Error, Result};
use heapless::Vec;

/// Most columns: one for each turning body.
pub(super) const COLUMNS: usize = MAX_MEMBERS;
/// Most rows: the set rows, and one for the output torque.
const ROWS: usize = MAX_ROWS + 1;
/// Entries below this many bits can be combined without overflow.
const SMALL_BITS: u32 = 31;
const NO_ROW: u8 = u8::MAX;

/// One equation, Σ entry · unknown = 0. Column 0 is the given quantity.
pub(super) type Equation = [i64; COLUMNS];

/// Equations in fully reduced echelon form. Each holds the pivot of one column, its highest, and no other pivot.
///
/// An unknown is determined if its equation holds nothing but its pivot and column 0.
pub(super) struct Echelon {
    width: usize,
    rows: Vec<Equation, ROWS>,
    row_of: [u8; COLUMNS],
}

impl Echelon {
    /// No equations yet, `width` columns in use.
    pub(super) fn new(width: usize) -> Self {
        Self { width, rows: Vec::new(), row_of: [NO_ROW; COLUMNS] }
    }

    pub(super) fn rank(&self) -> usize {
        self.rows.len()
    }

    /// The equation that has its pivot in this column.
    pub(super) fn row(&self, column: usize) -> Option<&Equation> {
        self.rows.get(usize::from(*self.row_of.get(column)?))
    }

    /// Adds an equation; one that follows from the others changes nothing.
    pub(super) fn insert(&mut self, mut new: Equation) -> Result<()> {
        self.reduce(&mut new)?;
        let Some(pivot) = new.iter().take(self.width).rposition(|&entry| entry != 0) else {
            return Ok(());
        };
        for row in &mut self.rows {
            if row.get(pivot).is_some_and(|&entry| entry != 0) {
                clear(row, &new, pivot, self.width)?;
            }
        }
        if let Some(row_of) = self.row_of.get_mut(pivot) {
            *row_of = self.rows.len() as u8;
        }
        self.rows.push(new).map_err(|_| Error::Overflow { name: "elimination" })
    }

    /// Replaces every unknown that has a pivot.
    fn reduce(&self, equation: &mut Equation) -> Result<()> {
        for (column, &row) in self.row_of.iter().enumerate().take(self.width) {
            if row != NO_ROW && equation.get(column).is_some_and(|&entry| entry != 0) {
                let Some(row) = self.rows.get(usize::from(row)) else { continue };
                clear(equation, row, column, self.width)?;
            }
        }
        Ok(())
    }

    /// The unknown of this column per unit of column 0; open if it is not determined.
    pub(super) fn value(&self, column: usize) -> Result<Fraction> {
        self.row(column).map_or(Ok(Fraction::OPEN), |row| quotient(row, column))
    }

    /// The unknown that a further equation defines by its `column`, which no equation in here uses.
    pub(super) fn value_by(&self, mut equation: Equation, column: usize) -> Result<Fraction> {
        self.reduce(&mut equation)?;
        quotient(&equation, column)
    }
}

/// −(entry of column 0) / (entry of `column`), or open where a further entry is not zero.
fn quotient(row: &Equation, column: usize) -> Result<Fraction> {
    let (Some(&given), Some(&own)) = (row.first(), row.get(column)) else { return Ok(Fraction::OPEN) };
    if row.iter().enumerate().skip(1).any(|(i, &entry)| entry != 0 && i != column) {
        return Ok(Fraction::OPEN);
    }
    match given.checked_neg() {
        Some(num) => Fraction::new(num, own),
        None => Err(Error::Overflow { name: "fraction" }),
    }
}

/// Clears the entry of `target` in `column` with a multiple of `source`.
///
/// Entries stay exact: common factors are divided out only once a row has grown, which is rare for tooth counts.
fn clear(target: &mut Equation, source: &Equation, column: usize, width: usize) -> Result<()> {
    let (Some(&t), Some(&s)) = (target.get(column), source.get(column)) else { return Ok(()) };
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
    let overflow = Error::Overflow { name: "elimination" };
    let mut wide = [0_i128; COLUMNS];
    let mut divisor = 0;
    for ((w, &x), &y) in wide.iter_mut().zip(&*target).zip(source) {
        let (kept, removed) = (i128::from(x) * i128::from(s), i128::from(y) * i128::from(t));
        *w = kept.checked_sub(removed).ok_or(overflow)?;
        divisor = wide_gcd(divisor, w.unsigned_abs());
    }
    let divisor = i128::try_from(divisor).map_err(|_| overflow)?;
    for (x, w) in target.iter_mut().zip(wide) {
        *x = i64::try_from(w.checked_div(divisor).unwrap_or(w)).map_err(|_| overflow)?;
    }
    Ok(())
}

/// Bits that the magnitude of the largest entry needs.
fn bits(row: &[i64]) -> u32 {
    u64::BITS - row.iter().fold(0, |all, x| all | x.unsigned_abs()).leading_zeros()
}
