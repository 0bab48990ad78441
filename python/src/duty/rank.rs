//! Places of trucks.

use pyo3::prelude::*;
use trainwright::duty as core;

use super::series;
use crate::class::class;
use crate::error::{raise, refuse};

class! {
    /// Places that a truck can take; 1 is the greatest value.
    "trainwright.duty" RankInterval = core::RankInterval {
        /// Best place.
        first: u32,
        /// Worst place.
        last: u32,
    }
}

/// Best and worst place of each truck, given the intervals of their values; NaN where nothing is known of a truck.
/// Source: follows from the definitions (order of intervals).
///
/// >>> rank_intervals([5, 1, 2], [6, 9, 3])
/// [RankInterval(first=1, last=2), RankInterval(first=1, last=3), RankInterval(first=2, last=3)]
#[pyfunction]
pub fn rank_intervals(lower: Bound<'_, PyAny>, upper: Bound<'_, PyAny>) -> PyResult<Vec<RankInterval>> {
    let (lower, upper) = (series("lower", &lower)?, series("upper", &upper)?);
    let mut ranks = vec![core::RankInterval { first: 0, last: 0 }; lower.as_slice()?.len()];
    core::rank_intervals(lower.as_slice()?, upper.as_slice()?, &mut ranks).map_err(raise)?;
    Ok(ranks.into_iter().map(RankInterval).collect())
}

/// A total that another year of the same use could have given, drawn from the periods that were measured; NaN for a missing one.
/// The same `seed` and `draw` give the same total everywhere. Source: B. Efron and R. J. Tibshirani, 1993.
#[pyfunction]
#[pyo3(signature = (periods, *, seed, draw))]
pub fn resampled_total(periods: Bound<'_, PyAny>, seed: u64, draw: u64) -> PyResult<f64> {
    core::resampled_total(series("periods", &periods)?.as_slice()?, seed, draw).map_err(raise)
}

/// Places that each truck keeps in a given share of `draws` resampled years; `periods` is a list of one row of values per truck.
/// Source: B. Efron and R. J. Tibshirani, 1993 (percentiles of the resampled place).
///
/// >>> bootstrap_ranks([[9, 8, 9, 9], [1, 2, 1, 1]], seed=1, draws=200, coverage=0.9)
/// [RankInterval(first=1, last=1), RankInterval(first=2, last=2)]
#[pyfunction]
#[pyo3(signature = (periods, *, seed, draws, coverage))]
pub fn bootstrap_ranks(
    periods: Vec<Bound<'_, PyAny>>,
    seed: u64,
    draws: u32,
    coverage: f64,
) -> PyResult<Vec<RankInterval>> {
    if !(20..=1_000_000).contains(&draws) {
        return Err(refuse("COUNT", "draws", format!("draws: {draws} given, 20 to 1000000 accepted")));
    }
    if !(0.5..1.0).contains(&coverage) {
        let message = format!("coverage = {coverage}: outside 0.5 to 1; check the value and its unit");
        return Err(refuse("OUT_OF_RANGE", "coverage", message));
    }
    let trucks = periods.iter().map(|row| series("periods", row)).collect::<PyResult<Vec<_>>>()?;
    let trucks = trucks.iter().map(|row| Ok(row.as_slice()?)).collect::<PyResult<Vec<&[f64]>>>()?;
    let mut places = vec![Vec::with_capacity(draws as usize); trucks.len()];
    for draw in 0..draws {
        let mut totals = Vec::with_capacity(trucks.len());
        for (number, row) in (0_u64..).zip(&trucks) {
            totals.push(core::resampled_total(row, seed.wrapping_add(number), draw.into()).map_err(raise)?);
        }
        for (place, total) in places.iter_mut().zip(&totals) {
            place.push(1 + totals.iter().filter(|other| *other > total).count() as u32);
        }
    }
    let tail = (1.0 - coverage) / 2.0 * f64::from(draws);
    Ok(places
        .into_iter()
        .map(|mut places| {
            places.sort_unstable();
            let (below, above) = (tail.floor() as usize, (f64::from(draws) - 1.0 - tail.floor()) as usize);
            let at = |place: usize| places.get(place).copied().unwrap_or(0);
            RankInterval(core::RankInterval { first: at(below), last: at(above) })
        })
        .collect())
}
