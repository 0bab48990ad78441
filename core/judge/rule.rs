//! Decision rules.

use super::distribution::normal_quantile;
use super::guard::Guard;
use crate::error::{Error, Result, within};
use core::fmt;

/// Kind of a decision rule. A number of its own type, so that a junk number from C is refused rather than undefined.
#[repr(transparent)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RuleKind(pub i32);

impl RuleKind {
    /// Inside the limits is GO, outside is NO-GO; the uncertainty is not counted.
    pub const SIMPLE_ACCEPTANCE: Self = Self(0);
    /// GO and NO-GO each need the same stated probability.
    pub const CONFORMANCE: Self = Self(1);
    /// GO and NO-GO need a guard of k times the standard uncertainty.
    pub const EXPANDED_GUARD: Self = Self(2);
    /// GO from one stated chance, NO-GO up to another.
    pub const STATED_CHANCES: Self = Self(3);
}

/// A decision rule. Fields that its kind does not use are 0.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// Least chance of lying inside that is a GO, above 0.5.
    pub go: f64,
    /// Greatest chance of lying inside that is a NO-GO, below 0.5.
    pub no_go: f64,
    /// Guard in standard uncertainties.
    pub k: f64,
    /// Kind.
    pub kind: RuleKind,
}

impl Rule {
    /// Inside is GO, outside is NO-GO. Source: JCGM 106:2012, 8.2; the risk is shared, so say so beside the verdict.
    #[must_use]
    pub const fn simple_acceptance() -> Self {
        Self { go: 0.0, no_go: 0.0, k: 0.0, kind: RuleKind::SIMPLE_ACCEPTANCE }
    }

    /// GO is proven from a chance p of lying inside, NO-GO up to 1 − p: a guard of z_p · u on either side of a limit.
    /// p is above 0.5 and below 1. Source: ISO 14253-1:2017, where p = 0.95 unless otherwise agreed (from memory).
    pub fn conformance(probability: f64) -> Result<Self> {
        let go = between("probability", probability, 0.5, 1.0)?;
        Ok(Self { go, no_go: 1.0 - go, k: 0.0, kind: RuleKind::CONFORMANCE })
    }

    /// A guard of the expanded uncertainty U = k · u on either side of a limit, k = 2 as a rule.
    /// Source: ISO 14253-1, editions before 2017 (from memory).
    pub fn expanded_guard(k: f64) -> Result<Self> {
        Ok(Self { go: 0.0, no_go: 0.0, k: within("k", k, 0.0, 100.0)?, kind: RuleKind::EXPANDED_GUARD })
    }

    /// GO from the chance `go` (above 0.5, below 1), NO-GO up to the chance `no_go` (above 0, below 0.5) of lying inside.
    pub fn stated_chances(go: f64, no_go: f64) -> Result<Self> {
        Ok(Self {
            go: between("go", go, 0.5, 1.0)?,
            no_go: between("no_go", no_go, 0.0, 0.5)?,
            k: 0.0,
            kind: RuleKind::STATED_CHANCES,
        })
    }

    /// The guards that the rule asks for.
    pub(super) fn guard(self) -> Result<Guard> {
        match self.kind {
            RuleKind::SIMPLE_ACCEPTANCE => Ok(Guard::Width(0.0)),
            RuleKind::EXPANDED_GUARD => Ok(Guard::Width(Self::expanded_guard(self.k)?.k)),
            RuleKind::CONFORMANCE | RuleKind::STATED_CHANCES => {
                let Self { go, no_go, .. } = Self::stated_chances(self.go, self.no_go)?;
                Ok(Guard::Chance { go, no_go, z_go: normal_quantile(go)?, z_no_go: -normal_quantile(no_go)? })
            }
            RuleKind(kind) => Err(Error::OutOfRange { name: "rule.kind", value: f64::from(kind), low: 0.0, high: 3.0 }),
        }
    }
}

impl fmt::Display for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { go, no_go, k, kind } = *self;
        match kind {
            RuleKind::SIMPLE_ACCEPTANCE => f.write_str("simple acceptance (uncertainty not counted)"),
            RuleKind::CONFORMANCE => write!(f, "conformance probability {go} (ISO 14253-1:2017)"),
            RuleKind::EXPANDED_GUARD => write!(f, "guard of {k} u (ISO 14253-1 before 2017)"),
            _ => write!(f, "GO from a chance of {go}, NO-GO up to {no_go}"),
        }
    }
}

fn between(name: &'static str, value: f64, low: f64, high: f64) -> Result<f64> {
    if low < within(name, value, low, high)? && value < high {
        Ok(value)
    } else {
        Err(Error::OutOfRange { name, value, low, high })
    }
}
