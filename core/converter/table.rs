//! Curves of points, straight between them.

use crate::error::{Error, Result, finite};

/// Most points of an engine curve or a characteristic.
pub const TABLE_POINTS: usize = 32;

/// A curve of at most [`TABLE_POINTS`] points.
#[derive(Clone, Copy)]
pub(super) struct Curve<'a> {
    pub points: u32,
    pub x: &'a [f64; TABLE_POINTS],
    pub y: &'a [f64; TABLE_POINTS],
}

/// The straight line between two neighboring points.
#[derive(Clone, Copy)]
pub(super) struct Line {
    pub(super) x0: f64,
    pub(super) x1: f64,
    pub(super) y0: f64,
    pub(super) y1: f64,
}

impl Line {
    pub(super) fn slope(self) -> f64 {
        (self.y1 - self.y0) / (self.x1 - self.x0)
    }

    /// Exact at both ends.
    pub(super) fn at(self, x: f64) -> f64 {
        if x >= self.x1 { self.y1 } else { self.y0 + (x - self.x0) * self.slope() }
    }
}

impl Curve<'_> {
    pub(super) fn lines(self) -> impl Iterator<Item = Line> + Clone {
        let x = self.x.iter().zip(self.x.iter().skip(1));
        let y = self.y.iter().zip(self.y.iter().skip(1));
        x.zip(y).take(self.points.saturating_sub(1) as usize).map(|((&x0, &x1), (&y0, &y1))| Line { x0, x1, y0, y1 })
    }

    /// First and last x in use.
    pub(super) fn span(self) -> (f64, f64) {
        let first = self.lines().next().map_or(f64::NAN, |line| line.x0);
        (first, self.lines().last().map_or(f64::NAN, |line| line.x1))
    }

    /// The line over this x, the left one at a point where two meet.
    pub(super) fn line_at(self, name: &'static str, x: f64) -> Result<Line> {
        finite(name, x)?;
        let (low, high) = self.span();
        let line = self.lines().find(|line| x <= line.x1).filter(|_| x >= low);
        line.ok_or(Error::OutOfRange { name, value: x, low, high })
    }

    pub(super) fn at(self, name: &'static str, x: f64) -> Result<f64> {
        Ok(self.line_at(name, x)?.at(x))
    }

    /// 2 to [`TABLE_POINTS`] points, finite, x rising.
    pub(super) fn check(self, names: CurveNames) -> Result<()> {
        if !(2..=TABLE_POINTS as u32).contains(&self.points) {
            return Err(Error::Count { name: names.points, count: self.points, low: 2, high: TABLE_POINTS as u32 });
        }
        for line in self.lines() {
            for x in [line.x0, line.x1] {
                finite(names.x, x)?;
            }
            for y in [line.y0, line.y1] {
                finite(names.y, y)?;
            }
            if line.x0 >= line.x1 {
                return Err(Error::Inconsistent {
                    name: names.x,
                    why: "each must be above the one before; sort the points",
                });
            }
        }
        Ok(())
    }
}

/// What a curve's points, x and y are called in the public interface.
#[derive(Clone, Copy)]
pub(super) struct CurveNames {
    pub points: &'static str,
    pub x: &'static str,
    pub y: &'static str,
}

/// The points in a fixed table, or the number of them that does not fit.
pub(super) fn fixed(name: &'static str, values: &[f64], points: usize) -> Result<[f64; TABLE_POINTS]> {
    if values.len() != points {
        return Err(Error::Inconsistent { name, why: "give one value for each point; the lists differ in length" });
    }
    let mut table = [0.0; TABLE_POINTS];
    for (to, from) in table.iter_mut().zip(values) {
        *to = *from;
    }
    Ok(table)
}
