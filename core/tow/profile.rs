//! From distance and elevation of a drive to pieces of road: slope out of noise, with its uncertainty.

use super::climb::RoadPiece;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{abs, floor, sqrt};
use crate::road::mean_grade_pct;

pub(super) const SMOOTH: Card = Card {
    id: "tow.smooth",
    purpose: "Elevation and grade along a drive from noisy elevations, with the uncertainty of the grade",
    equation: "h = h̄ + b·(s − s̄), b = Σ(sᵢ − s̄)·(hᵢ − h̄)/Σ(sᵢ − s̄)², u_b = u_h·√(f/Σ(sᵢ − s̄)²), f = max(1, 2·L/Δs)",
    symbols: &[
        symbol("h", "elevation_m", "m"),
        symbol("s", "distance_m", "m"),
        symbol("sᵢ, hᵢ", "points no farther from s than half of window_m", "m"),
        symbol("s̄, h̄", "their means", "m"),
        symbol("b", "rise for each meter along the road, from which grade_pct follows", "1"),
        symbol("u_b", "its standard uncertainty, from which u_grade_pct follows", "1"),
        symbol("u_h", "noise.u_m", "m"),
        symbol("f", "how many points repeat one error", "1"),
        symbol("L", "noise.correlation_m", "m"),
        symbol("Δs", "mean distance of the points", "m"),
    ],
    range: "the straight line of least squares in a window; a crest shorter than the window is flattened. u_b is an upper estimate where errors stay alike: a third too much in a window of 6·L, near right from 12·L",
    source: &card::LEAST_SQUARES,
    locator: "local polynomial of the first degree; variance of the slope",
};

pub(super) const TOTAL_CLIMB: Card = Card {
    id: "tow.total_climb",
    purpose: "What a drive climbs and falls in all, without counting noise",
    equation: "climb = Σ rises between turning points that lie more than the dead band apart",
    symbols: &[
        symbol("climb", "up_m and down_m", "m"),
        symbol("dead band", "dead_band_m: at least some u of the elevations", "m"),
    ],
    range: "real rises below the dead band are lost, noise above it is counted",
    source: &card::PRACTICE,
    locator: "hysteresis on elevation",
};

pub(super) const PIECES: Card = Card {
    id: "tow.pieces",
    purpose: "Pieces of road of one length from smoothed elevations",
    equation: "G = 100·Δh/√(Δs² − Δh²)",
    symbols: &[
        symbol("G", "grade_pct", "%"),
        symbol("Δh", "difference of the elevations at both ends, straight between points", "m"),
        symbol("Δs", "length_m", "m"),
    ],
    range: "the sum of the pieces rises as the road does; inside a piece the grade is its mean",
    source: &card::DEFINITION,
    locator: "grade",
};

/// Noise of elevations.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElevationNoise {
    /// Standard uncertainty of one elevation against its neighbors far away; what all of them share does not matter.
    pub u_m: f64,
    /// Distance over which the error stays alike, 0 where every point errs for itself.
    pub correlation_m: f64,
}

/// Elevation and grade at a point of a drive.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlopePoint {
    /// Distance along the road.
    pub distance_m: f64,
    /// Elevation, smoothed.
    pub elevation_m: f64,
    /// Grade.
    pub grade_pct: f64,
    /// Its standard uncertainty.
    pub u_grade_pct: f64,
    /// Points in the window.
    pub points: u32,
}

impl SlopePoint {
    /// Nothing known.
    pub const NONE: Self = Self { distance_m: 0.0, elevation_m: 0.0, grade_pct: 0.0, u_grade_pct: 0.0, points: 0 };
}

fn rising(distance_m: &[f64]) -> Result<()> {
    for (&before, &after) in distance_m.iter().zip(distance_m.iter().skip(1)) {
        if finite("distance_m", before)? > finite("distance_m", after)? {
            return Err(Error::Inconsistent {
                name: "distance_m",
                why: "a distance is less than the one before; distances along the road do not fall",
            });
        }
    }
    Ok(())
}

fn paired(distance_m: &[f64], elevation_m: &[f64]) -> Result<()> {
    if distance_m.len() != elevation_m.len() || distance_m.len() < 3 {
        let count = elevation_m.len().try_into().unwrap_or(u32::MAX);
        let high = distance_m.len().try_into().unwrap_or(u32::MAX);
        return Err(Error::Count { name: "elevation_m", count, low: 3, high });
    }
    for &elevation in elevation_m {
        within("elevation_m", elevation, -1000.0, 10_000.0)?;
    }
    rising(distance_m)
}

/// Elevation and grade along a drive from noisy elevations.
///
/// h = h̄ + b·(s − s̄), b = Σ(sᵢ − s̄)·(hᵢ − h̄)/Σ(sᵢ − s̄)², u_b = u_h·√(f/Σ(sᵢ − s̄)²), f = max(1, 2·L/Δs)
///
/// * `distance_m` — 3 or more, not falling, along the road; `elevation_m` — as many, −1000 to 10 000; `window_m` — width of the
///   window, above 0; `noise` — u_h and L, 0 or more; `points` — as many, filled in
/// * returns nothing else: grade G = 100·b/√(1 − b²), u_G by the same derivative
/// * errors: [`Error::Count`], [`Error::Inconsistent`]; [`Error::NoAnswer`] where a window holds fewer than 3 points or they
///   stand still: widen it, or cut the drive there
///
/// Slope by differences of single readings is useless: 3 m of noise on points 20 m apart is 20 % of grade. The wider the
/// window the less noise and the less detail: a straight line shows a crest of half the window too flat. Satellite elevations
/// drift slowly, so their errors are alike over L, which a count of points hides.
///
/// Source: A. Savitzky and M. J. E. Golay, Analytical Chemistry 36 (1964), the first degree, for uneven steps; variance of the
/// slope from any text on least squares (both from memory).
pub fn smooth(
    distance_m: &[f64],
    elevation_m: &[f64],
    window_m: f64,
    noise: ElevationNoise,
    points: &mut [SlopePoint],
) -> Result<()> {
    paired(distance_m, elevation_m)?;
    let half_m = 0.5 * positive("window_m", window_m)?;
    let u_m = within("u_m", noise.u_m, 0.0, 1000.0)?;
    let correlation_m = within("correlation_m", noise.correlation_m, 0.0, 1e6)?;
    if points.len() != distance_m.len() {
        let count = points.len().try_into().unwrap_or(u32::MAX);
        let high = distance_m.len().try_into().unwrap_or(u32::MAX);
        return Err(Error::Count { name: "points", count, low: high, high });
    }
    let mut first = 0;
    for (&at_m, point) in distance_m.iter().zip(points) {
        while distance_m.get(first).is_some_and(|&distance| distance < at_m - half_m) {
            first += 1;
        }
        let window = || {
            let pairs = distance_m.iter().zip(elevation_m).skip(first);
            pairs.take_while(|&(&distance, _)| distance <= at_m + half_m).map(|(&s, &h)| (s - at_m, h))
        };
        let (count, sum_s, sum_h) =
            window().fold((0_u32, 0.0, 0.0), |(count, s_sum, h_sum), (s, h)| (count + 1, s_sum + s, h_sum + h));
        let n = f64::from(count);
        let (mean_s, mean_h) = (sum_s / n, sum_h / n);
        let (square, product) = window().fold((0.0, 0.0), |(square, product), (s, h)| {
            (square + (s - mean_s) * (s - mean_s), product + (s - mean_s) * (h - mean_h))
        });
        if count < 3 || square <= 0.0 {
            return Err(Error::NoAnswer {
                name: "window_m",
                why: "a window holds fewer than 3 points, or points that stand still; widen it, or cut the drive at the gap",
            });
        }
        let (low, high) =
            window().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (s, _)| (s.min(low), s.max(high)));
        let step_m = (high - low) / (n - 1.0);
        let slope = product / square;
        if abs(slope) >= 1.0 {
            return Err(Error::NoAnswer {
                name: "grade_pct",
                why: "the elevation rises faster than the distance; distances are along the road, both in meters",
            });
        }
        let repeats = (2.0 * correlation_m / step_m).max(1.0);
        let run = sqrt(1.0 - slope * slope);
        *point = SlopePoint {
            distance_m: at_m,
            elevation_m: mean_h - slope * mean_s,
            grade_pct: 100.0 * slope / run,
            u_grade_pct: 100.0 * u_m * sqrt(repeats / square) / (run * run * run),
            points: count,
        };
    }
    Ok(())
}

/// What a drive climbs and falls in all.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TotalClimb {
    /// Sum of the rises.
    pub up_m: f64,
    /// Sum of the falls.
    pub down_m: f64,
    /// Last elevation less the first.
    pub net_m: f64,
    /// Turning points that lie more than the dead band apart.
    pub turns: u32,
}

/// What a drive climbs and falls in all, without counting noise.
///
/// climb = Σ rises between turning points that lie more than the dead band apart
///
/// * `elevation_m` — 1 or more, −1000 to 10 000; `dead_band_m` — 0 or more: what noise may do
/// * returns [`TotalClimb`]: up less down is the net rise, to what lies inside the dead band at both ends
/// * errors: [`Error::Count`], [`Error::OutOfRange`]
///
/// Source: hysteresis on elevation (common practice).
///
/// ```
/// let climb = trainwright::tow::total_climb(&[0.0, 10.0, 9.0, 12.0, 2.0], 3.0)?;
/// assert_eq!((climb.up_m, climb.down_m, climb.turns), (12.0, 10.0, 1));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn total_climb(elevation_m: &[f64], dead_band_m: f64) -> Result<TotalClimb> {
    let band = within("dead_band_m", dead_band_m, 0.0, 10_000.0)?;
    let Some((&first, rest)) = elevation_m.split_first() else {
        return Err(Error::Count { name: "elevation_m", count: 0, low: 1, high: u32::MAX });
    };
    let mut climb = TotalClimb { up_m: 0.0, down_m: 0.0, net_m: 0.0, turns: 0 };
    // The last turning point, and the farthest elevation since then in the direction under way.
    let (mut turn, mut far) = (within("elevation_m", first, -1000.0, 10_000.0)?, first);
    let mut direction = 0.0;
    for &elevation in rest {
        let elevation = within("elevation_m", elevation, -1000.0, 10_000.0)?;
        climb.net_m = elevation - first;
        if direction == 0.0 {
            if abs(elevation - turn) > band {
                direction = if elevation > turn { 1.0 } else { -1.0 };
                far = elevation;
            }
        } else if (elevation - far) * direction >= 0.0 {
            far = elevation;
        } else if (far - elevation) * direction > band {
            climb.add(far - turn);
            climb.turns += 1;
            (turn, far, direction) = (far, elevation, -direction);
        }
    }
    if direction != 0.0 {
        climb.add(far - turn);
    }
    Ok(climb)
}

impl TotalClimb {
    fn add(&mut self, rise_m: f64) {
        self.up_m += rise_m.max(0.0);
        self.down_m += (-rise_m).max(0.0);
    }
}

/// How many pieces of a length a road makes; the last may be shorter.
fn piece_count(length_m: f64, piece_m: f64) -> f64 {
    let whole = floor(length_m / piece_m);
    // What is left over at the end and is shorter than a hundredth of a piece joins the last one.
    if length_m - whole * piece_m > 0.01 * piece_m { whole + 1.0 } else { whole.max(1.0) }
}

/// Pieces of road of one length from smoothed elevations.
///
/// G = 100·Δh/√(Δs² − Δh²)
///
/// * `distance_m`, `elevation_m` — as [`smooth`] takes and gives them; `piece_m` — length of a piece, above 0; `speed_km_h` —
///   speed asked for on every piece, above 0; `pieces` — filled in
/// * returns how many pieces there are, the last may be shorter; with room for none of them only the number
/// * errors: [`Error::Count`] where `pieces` has room for fewer than there are, but for some; as [`smooth`]
///
/// Source: definition of the grade.
pub fn pieces(
    distance_m: &[f64],
    elevation_m: &[f64],
    piece_m: f64,
    speed_km_h: f64,
    pieces: &mut [RoadPiece],
) -> Result<u32> {
    paired(distance_m, elevation_m)?;
    positive("piece_m", piece_m)?;
    positive("speed_km_h", speed_km_h)?;
    let (start_m, end_m) = match (distance_m.first(), distance_m.last()) {
        (Some(&start), Some(&end)) if end > start => (start, end),
        _ => return Err(Error::NoAnswer { name: "distance_m", why: "the drive stands still; give one that moves" }),
    };
    let count = within("piece_m", piece_count(end_m - start_m, piece_m), 1.0, 1e8)? as u32;
    if pieces.is_empty() {
        return Ok(count);
    }
    let Some(room) = pieces.get_mut(..count as usize) else {
        let given = pieces.len().try_into().unwrap_or(u32::MAX);
        return Err(Error::Count { name: "pieces", count: given, low: count, high: u32::MAX });
    };
    let mut points = distance_m.iter().copied().zip(elevation_m.iter().copied());
    let mut ahead = points.next().unwrap_or((start_m, 0.0));
    let mut behind = ahead;
    let mut from = ahead;
    for (number, piece) in (1..=count).zip(room) {
        let to_m = if number == count { end_m } else { start_m + f64::from(number) * piece_m };
        while ahead.0 < to_m {
            behind = ahead;
            let Some(next) = points.next() else { break };
            ahead = next;
        }
        let share = if ahead.0 > behind.0 { (to_m - behind.0) / (ahead.0 - behind.0) } else { 1.0 };
        let to = (to_m, behind.1 + share * (ahead.1 - behind.1));
        let length_m = to.0 - from.0;
        let grade_pct = mean_grade_pct(to.1 - from.1, length_m)?;
        *piece = RoadPiece { length_m, grade_pct, speed_km_h };
        from = to;
    }
    Ok(count)
}
