//! The zones of acceptance and rejection that a rule sets within and around the limits.

use super::decision::chance;
use super::{Limits, Reading};
use crate::real::{ln, sqrt};

const NOWHERE: Limits = Limits { lower: f64::INFINITY, upper: f64::NEG_INFINITY };

/// Guard on either side of a limit.
#[derive(Clone, Copy)]
pub(super) enum Guard {
    /// A fixed number of standard uncertainties.
    Width(f64),
    /// Chances to be met; z are the guards where one limit alone matters.
    Chance { go: f64, no_go: f64, z_go: f64, z_no_go: f64 },
}

impl Guard {
    pub(super) fn acceptance(self, limits: Limits, u: f64) -> Limits {
        let Limits { lower, upper } = limits;
        let one_sided = |z: f64| Limits { lower: lower + z * u, upper: upper - z * u };
        let zone = match self {
            Self::Width(k) => one_sided(k),
            Self::Chance { go, z_go, .. } if u > 0.0 && (upper - lower).is_finite() => {
                let middle = lower + 0.5 * (upper - lower);
                let inside = |value: f64| chance(Reading { value, u }, limits) - go;
                let edge = lower + z_go * u;
                if edge > middle || inside(middle) < 0.0 {
                    return NOWHERE;
                }
                let edge = root(inside, edge, middle);
                Limits { lower: edge, upper: upper - (edge - lower) }
            }
            Self::Chance { z_go, .. } => one_sided(z_go),
        };
        if zone.lower <= zone.upper { zone } else { NOWHERE }
    }

    pub(super) fn rejection(self, limits: Limits, u: f64) -> Limits {
        let Limits { lower, upper } = limits;
        let outward = |guard: f64| Limits { lower: lower - guard, upper: upper + guard };
        match self {
            Self::Width(k) => outward(k * u),
            Self::Chance { no_go, z_no_go, .. } if u > 0.0 && (upper - lower).is_finite() => {
                let inside = |below: f64| no_go - chance(Reading { value: lower - below, u }, limits);
                outward(if inside(0.0) >= 0.0 { 0.0 } else { root(inside, 0.0, z_no_go * u) })
            }
            Self::Chance { z_no_go, .. } => outward(z_no_go * u),
        }
    }

    pub(super) fn u_to_decide(self, limits: Limits, y: f64) -> f64 {
        let Limits { lower, upper } = limits;
        let inside = limits.holds(y);
        // Distances to the nearer and the farther limit.
        let (near, far) = {
            let (a, b) = (crate::real::abs(y - lower), crate::real::abs(upper - y));
            (a.min(b), a.max(b))
        };
        match self {
            Self::Width(k) if k <= 0.0 => f64::INFINITY,
            Self::Width(k) => near / k,
            Self::Chance { go, no_go, z_go, z_no_go } => {
                let z = if inside { z_go } else { z_no_go };
                if near <= 0.0 || far == f64::INFINITY {
                    return near / z;
                }
                let chance_at = |u: f64| chance(Reading { value: y, u }, limits);
                if inside {
                    // The farther limit can only take from the chance, and never more than the nearer one does.
                    return root(|u| go - chance_at(u), 0.0, near / z);
                }
                // Outside, the chance grows with u up to a peak and falls again once u dwarfs the limits.
                let peak = sqrt(0.5 * (far - near) * (far + near) / ln(far / near));
                if chance_at(peak) > no_go { root(|u| chance_at(u) - no_go, near / z, peak) } else { f64::INFINITY }
            }
        }
    }
}

/// Zero of a function that rises through it between `low` and `high`, halved to the last bit; the side where it is not
/// yet positive for the lower half.
fn root(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if !(low < middle && middle < high) {
            break;
        }
        if f(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}
