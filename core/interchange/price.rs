//! What a set of parts costs with its machining.

use super::closure::{Crossing, MatchedSet};
use super::joints::{Joints, counted};
use crate::error::{Error, Result};

/// What a set costs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    /// Sum of the known prices.
    pub total: f64,
    /// Parts and machinings whose price is not known.
    pub unpriced: u16,
}

impl Price {
    /// Nothing yet.
    pub(super) const NONE: Self = Self { total: 0.0, unpriced: 0 };

    /// Adds the price at a place of a list, if it is known there.
    pub(super) fn add(&mut self, prices: &[f64], place: usize) {
        match prices.get(place).filter(|price| !price.is_nan()) {
            Some(price) => self.total += price,
            None => self.unpriced += 1,
        }
    }
}

impl Joints<'_> {
    /// What a matched set costs with its machining.
    ///
    /// * `set`, `crossings` — of the same two variants; `part_prices`, `machining_prices` — one for each, NaN where it is not
    ///   known; empty where none is
    /// * returns [`Price`]: what is not known is counted, not taken as 0
    /// * errors: [`Error::Count`] for lists of another length, [`Error::OutOfRange`] for a price below 0
    pub fn price(
        &self,
        set: &MatchedSet,
        crossings: &[Crossing],
        part_prices: &[f64],
        machining_prices: &[f64],
    ) -> Result<Price> {
        price_list("part_prices", part_prices, self.parts.into())?;
        price_list("machining_prices", machining_prices, self.machining.len())?;
        counted("crossings", crossings.len(), self.joints.len(), self.joints.len())?;
        let mut price = Price::NONE;
        set.parts.parts().for_each(|part| price.add(part_prices, part.into()));
        for (_, passage) in set.edge(self.joints, crossings).filter(|(_, passage)| passage.is_machined()) {
            price.add(machining_prices, passage.machining.into());
        }
        Ok(price)
    }
}

/// A price list, if it has a place for everything: NaN where a price is not known, empty where none is.
pub(super) fn price_list(name: &'static str, prices: &[f64], count: usize) -> Result<()> {
    if !prices.is_empty() {
        counted(name, prices.len(), count, count)?;
    }
    match prices.iter().find(|price| **price < 0.0 || **price == f64::INFINITY) {
        Some(&value) => Err(Error::OutOfRange { name, value, low: 0.0, high: f64::MAX }),
        None => Ok(()),
    }
}
