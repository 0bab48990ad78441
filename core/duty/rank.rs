//! Which truck comes first, and how sure that place is.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};

pub(super) const RANK_INTERVALS: Card = Card {
    id: "duty.rank_intervals",
    purpose: "Best and worst place that each truck can take, given what is not known of it",
    equation: "first place = 1 + number of others with lower_j > upper_i; last place = n − number of others with upper_j < lower_i",
    symbols: &[
        symbol("lower_i, upper_i", "lower, upper, of the truck", "1"),
        symbol("lower_j, upper_j", "of another truck", "1"),
        symbol("first place, last place", "first, last", "1"),
        symbol("n", "trucks", "1"),
    ],
    range: "place 1 is the greatest value. Intervals that overlap leave their order open. A truck without any value can take every place",
    source: &card::DEFINITION,
    locator: "order of intervals",
};

pub(super) const RESAMPLED_TOTAL: Card = Card {
    id: "duty.resampled_total",
    purpose: "A total that another year of the same use could have given, drawn from the periods that were measured",
    equation: "D* = Σ d_(j), n draws j with replacement from the k known periods",
    symbols: &[
        symbol("D*", "result", "of the periods"),
        symbol("d_(j)", "periods, known ones", "of the periods"),
        symbol("n", "periods, missing ones counted", "1"),
        symbol("k", "known periods", "1"),
    ],
    range: "periods that are long enough to be independent (days, weeks), and alike. A missing period is drawn from the known ones: it is \
        unknown, not zero, and few known periods widen the spread",
    source: &card::BOOTSTRAP,
    locator: "nonparametric bootstrap of a total",
};

/// Places that a truck can take.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RankInterval {
    /// Best place, 1 for the greatest value.
    pub first: u32,
    /// Worst place.
    pub last: u32,
}

/// Best and worst place that each truck can take, given what is not known of it.
///
/// first place = 1 + number of others with lower_j > upper_i; last place = n − number of others with upper_j < lower_i
///
/// * `lower`, `upper` — interval of each truck's value, of one length; NaN in either: nothing is known of it
/// * `ranks` — receives the places, of the same length
/// * errors: [`Error::Count`] for lengths that differ, [`Error::Reversed`] for an interval the wrong way round
///
/// Source: order of intervals (derived). Example: 5 to 6, 1 to 9 and 2 to 3.
///
/// ```
/// use trainwright::duty::{RankInterval, rank_intervals};
/// let mut ranks = [RankInterval { first: 0, last: 0 }; 3];
/// rank_intervals(&[5.0, 1.0, 2.0], &[6.0, 9.0, 3.0], &mut ranks)?;
/// assert_eq!(ranks.map(|rank| (rank.first, rank.last)), [(1, 2), (1, 3), (2, 3)]);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rank_intervals(lower: &[f64], upper: &[f64], ranks: &mut [RankInterval]) -> Result<()> {
    let trucks = u32::try_from(lower.len()).unwrap_or(u32::MAX);
    for (name, given) in [("upper", upper.len()), ("ranks", ranks.len())] {
        if given != lower.len() {
            let count = u32::try_from(given).unwrap_or(u32::MAX);
            return Err(Error::Count { name, count, low: trucks, high: trucks });
        }
    }
    if let Some((&lower, &upper)) = lower.iter().zip(upper).find(|(lower, upper)| lower > upper) {
        return Err(Error::Reversed { name: "lower, upper", lower, upper });
    }
    for ((rank, &low), &high) in ranks.iter_mut().zip(lower).zip(upper) {
        *rank = RankInterval { first: 1, last: trucks };
        for (&other_low, &other_high) in lower.iter().zip(upper) {
            let known = !(low.is_nan() || high.is_nan() || other_low.is_nan() || other_high.is_nan());
            rank.first += u32::from(known && other_low > high);
            rank.last -= u32::from(known && other_high < low);
        }
    }
    Ok(())
}

/// A total that another year of the same use could have given, drawn from the periods that were measured.
///
/// D* = Σ d_(j), n draws j with replacement from the k known periods
///
/// * `periods` — value of each period, 0 or more; NaN for a missing one; two known ones or more
/// * `seed`, `draw` — which random numbers: the same pair gives the same total on every machine
/// * returns the total
/// * errors: [`Error::Count`] for fewer than two known periods, [`Error::OutOfRange`] for a value
///
/// Source: B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap, 1993; random numbers by SplitMix64 (both from memory).
/// Example: equal periods give the same total whatever is drawn.
///
/// ```
/// let total = trainwright::duty::resampled_total(&[2.0, 2.0, f64::NAN, 2.0], 1, 7)?;
/// assert_eq!(total, 8.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn resampled_total(periods: &[f64], seed: u64, draw: u64) -> Result<f64> {
    let known = || periods.iter().copied().filter(|period| !period.is_nan());
    for period in known() {
        within("periods", period, 0.0, f64::MAX)?;
    }
    let count = u32::try_from(known().count()).unwrap_or(u32::MAX);
    if count < 2 {
        return Err(Error::Count { name: "periods", count, low: 2, high: u32::MAX });
    }
    let mut state = split_mix(seed ^ split_mix(draw));
    let mut total = 0.0;
    for _ in periods {
        state = state.wrapping_add(GOLDEN);
        // The high half of a product spreads 32 random bits over the places without a division.
        let place = (u64::from(count) * (split_mix(state) >> 32)) >> 32;
        let mut left = place;
        let drawn = periods.iter().copied().find(|period| {
            let here = !period.is_nan() && left == 0;
            left = left.saturating_sub(u64::from(!period.is_nan()));
            here
        });
        total += drawn.unwrap_or(0.0);
    }
    Ok(total)
}

const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;

/// Finalizer of SplitMix64.
fn split_mix(state: u64) -> u64 {
    let mixed = (state ^ (state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    mixed ^ (mixed >> 31)
}
