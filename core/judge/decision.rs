//! Decision rules: what is proven, what is refuted, and what would settle the rest.

use super::distribution::{normal_quantile, phi};
use super::propagation::{Budget, Term, known};
use super::{Limits, Reading};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::real::{ln, sqrt};
use core::fmt;

pub(super) const CHANCE_INSIDE: Card = Card {
    id: "judge.chance_inside",
    purpose: "Probability that the true value lies within the limits",
    equation: "p = Φ((T_U − y)/u) − Φ((T_L − y)/u)",
    symbols: &[
        symbol("p", "chance", "1"),
        symbol("y", "reading.value", "of the reading"),
        symbol("u", "reading.u", "of the reading"),
        symbol("T_L, T_U", "limits.lower, limits.upper", "of the reading"),
        symbol("Φ", "standard normal distribution", "1"),
    ],
    range: "normal distribution of the measurand, no prior knowledge beyond the reading",
    source: &card::CONFORMITY,
    locator: "clause 7, equation 12",
};

pub(super) const JUDGE: Card = Card {
    id: "judge.judge",
    purpose: "GO, NO-GO or NOT PROVEN of a reading against its limits under a stated rule",
    equation: "GO: T_L + g ≤ y ≤ T_U − g; NO-GO: y < T_L − g or y > T_U + g; g = z_p u (conformance probability p), k u (expanded uncertainty) or 0",
    symbols: &[
        symbol("y, u", "reading", "of the reading"),
        symbol("T_L, T_U", "limits", "of the reading"),
        symbol("g", "limits to acceptance, limits to rejection", "of the reading"),
        symbol("z_p", "normal quantile of p", "1"),
        symbol("k", "rule.k", "1"),
    ],
    range: "where the limits lie less than about 6 u apart, z_p u gives way to the two-sided chance itself",
    source: &card::DECISION_RULE,
    locator: "clause 5; JCGM 106:2012, clause 8",
};

pub(super) const SETTLE: Card = Card {
    id: "judge.settle",
    purpose: "The one input whose better measurement would decide the reading, and how good it must be",
    equation: "c u_i' = √(u_d² − u² + (c u_i)²)",
    symbols: &[
        symbol("u", "reading.u", "of the reading"),
        symbol("u_d", "judgment.u_to_decide", "of the reading"),
        symbol("c u_i", "largest contribution", "of the reading"),
        symbol("u_i'", "u_needed", "of the input"),
    ],
    range: "independent inputs; the value stays what it is",
    source: &card::DEFINITION,
    locator: "root sum of squares, solved for one input",
};

/// Outcome of a decision.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Conformity is proven under the rule.
    Go = 1,
    /// Nonconformity is proven under the rule.
    NoGo = -1,
    /// Neither is proven: a normal answer, to be met by a better measurement or a better part.
    NotProven = 0,
}

impl Verdict {
    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Go => "GO",
            Self::NoGo => "NO-GO",
            Self::NotProven => "NOT PROVEN",
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

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
    fn guard(self) -> Result<Guard> {
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

/// Probability that the true value behind the reading lies within the limits.
///
/// p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
///
/// * `reading` — y and u, one unit; `limits` — T_L and T_U, the same unit, either infinite where open
/// * returns p, 0 to 1; with u = 0 it is 0 or 1
/// * errors: [`Error::NotFinite`] and [`Error::OutOfRange`] for a bad reading, [`Error::Reversed`] for limits upside down
///
/// Source: JCGM 106:2012, clause 7, equation 12 (from memory). Example: its worked example of a breakdown voltage,
/// −5.47 V with u = 0.05 V against an upper limit of −5.40 V, gives 0.92.
///
/// ```
/// use trainwright::judge::{Limits, Reading, chance_inside};
/// let chance = chance_inside(Reading::new(-5.47, 0.05)?, Limits::at_most(-5.40)?)?;
/// assert!((chance - 0.92).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn chance_inside(reading: Reading, limits: Limits) -> Result<f64> {
    Ok(chance(Reading::new(reading.value, reading.u)?, Limits::new(limits.lower, limits.upper)?))
}

fn chance(Reading { value: y, u }: Reading, limits: Limits) -> f64 {
    if u <= 0.0 {
        return if limits.holds(y) { 1.0 } else { 0.0 };
    }
    let (below, above) = ((limits.lower - y) / u, (limits.upper - y) / u);
    // Below the lower limit both terms are near 1: take the other tails, which keep their digits.
    if below > 0.0 { phi(-below) - phi(-above) } else { phi(above) - phi(below) }
}

/// A decision and what it rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judgment {
    /// What was judged.
    pub reading: Reading,
    /// Against what.
    pub limits: Limits,
    /// Under which rule.
    pub rule: Rule,
    /// Chance that the true value lies within the limits.
    pub chance: f64,
    /// Values that are GO at this uncertainty. Lower +∞ and upper −∞ if there is none: the limits are too close.
    pub acceptance: Limits,
    /// Values below its lower or above its upper end are NO-GO at this uncertainty.
    pub rejection: Limits,
    /// Distance of the value above the lower limit; negative when below it.
    pub above_lower: f64,
    /// Distance of the value below the upper limit; negative when above it.
    pub below_upper: f64,
    /// Greatest standard uncertainty at which this same value is decided; 0 on a limit, infinite if any will do.
    pub u_to_decide: f64,
    /// Nearest value that is GO at this uncertainty; infinite if there is none.
    pub value_to_go: f64,
    /// GO, NO-GO or NOT PROVEN.
    pub verdict: Verdict,
}

/// Decides whether a reading conforms to its limits.
///
/// GO: T_L + g ≤ y ≤ T_U − g. NO-GO: y < T_L − g or y > T_U + g. Between: NOT PROVEN.
/// g = z_p u for a stated chance p, k u for an expanded guard, 0 for simple acceptance. With two limits less than about
/// 6 u apart, a stated chance is met exactly by the two-sided probability, so the guard grows; a value inside the limits
/// is never NO-GO.
///
/// * `reading`, `limits` — one unit; `rule` — see [`Rule`]
/// * returns the verdict with its chance, zones, distances and what would settle it
/// * errors: [`Error::NotFinite`], [`Error::OutOfRange`], [`Error::Reversed`]
///
/// Source: ISO 14253-1:2017 and JCGM 106:2012, clause 8 (from memory). Example (computed): clearance limits of 25 to 75 µm
/// measured with u = 3 µm are proven at 95 % from 29.93 to 70.07 µm.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, Verdict, judge};
/// let clearance_um = Reading::new(72.0, 3.0)?;
/// let outcome = judge(clearance_um, Limits::between(25.0, 75.0)?, Rule::conformance(0.95)?)?;
/// assert_eq!(outcome.verdict, Verdict::NotProven);
/// assert!((outcome.acceptance.upper - 70.0654).abs() < 1e-4);
/// assert!((outcome.u_to_decide - 3.0 / 1.64485).abs() < 1e-4); // measure three micrometers inside to 1.8
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn judge(reading: Reading, limits: Limits, rule: Rule) -> Result<Judgment> {
    let reading = Reading::new(reading.value, reading.u)?;
    let limits = Limits::new(limits.lower, limits.upper)?;
    let guard = rule.guard()?;
    let y = reading.value;
    let acceptance = guard.acceptance(limits, reading.u);
    let rejection = guard.rejection(limits, reading.u);
    let verdict = if acceptance.holds(y) {
        Verdict::Go
    } else if rejection.holds(y) {
        Verdict::NotProven
    } else {
        Verdict::NoGo
    };
    let value_to_go =
        if acceptance.lower > acceptance.upper { f64::INFINITY } else { y.max(acceptance.lower).min(acceptance.upper) };
    Ok(Judgment {
        reading,
        limits,
        rule,
        chance: chance(reading, limits),
        acceptance,
        rejection,
        above_lower: y - limits.lower,
        below_upper: limits.upper - y,
        u_to_decide: guard.u_to_decide(limits, y),
        value_to_go,
        verdict,
    })
}

const NOWHERE: Limits = Limits { lower: f64::INFINITY, upper: f64::NEG_INFINITY };

/// Guard on either side of a limit.
#[derive(Clone, Copy)]
enum Guard {
    /// A fixed number of standard uncertainties.
    Width(f64),
    /// Chances to be met; z are the guards where one limit alone matters.
    Chance { go: f64, no_go: f64, z_go: f64, z_no_go: f64 },
}

impl Guard {
    fn acceptance(self, limits: Limits, u: f64) -> Limits {
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

    fn rejection(self, limits: Limits, u: f64) -> Limits {
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

    fn u_to_decide(self, limits: Limits, y: f64) -> f64 {
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

/// The one further measurement that would settle a judgment.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settlement {
    /// Position of the input to measure better: the largest contribution.
    pub input: u32,
    /// Whether measuring this input alone can decide the case. It is true when the case is decided already.
    pub enough: bool,
    /// Standard uncertainty of that input now, in its own unit.
    pub u_now: f64,
    /// Standard uncertainty that would do, in its own unit; 0 when even a perfect measurement would not.
    pub u_needed: f64,
}

/// Names the one input whose better measurement would decide the reading, and how good it must be.
///
/// u_i' = √(u_d² − u² + (c u_i)²)/c. If any single input can settle the case, the largest contribution can, and it needs
/// the least improvement; so that one is named.
///
/// * `judgment` — of the propagated reading; `budget` — of the same propagation
/// * errors: [`Error::NoAnswer`] if no input contributes; [`Error::Inconsistent`] if the judgment is of another reading
///
/// Source: the root sum of squares, solved for one input.
///
/// ```
/// use trainwright::judge::{Limits, Reading, Rule, judge, propagate, settle};
/// let friction = Reading::new(0.112, 0.009)?;
/// let geometry = Reading::new(1.0, 0.02)?;
/// let margin = propagate([friction, geometry], |[mu, g]| Ok(mu * g / 0.107))?;
/// let held = judge(margin.reading, Limits::at_least(1.0)?, Rule::stated_chances(0.95, 0.05)?)?;
/// let next = settle(&held, &margin.budget)?;
/// assert_eq!((next.input, next.enough), (0, true)); // measure the friction, to 0.002
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn settle(judgment: &Judgment, budget: &Budget) -> Result<Settlement> {
    same_reading(judgment, budget)?;
    let largest =
        known(budget).max_by(|a, b| crate::real::abs(a.contribution).total_cmp(&crate::real::abs(b.contribution)));
    match largest.filter(|term| term.contribution != 0.0) {
        Some(term) => Ok(settled_by(judgment, &term)),
        None => {
            Err(Error::NoAnswer { name: "budget", why: "no input carries an uncertainty, so none can be improved" })
        }
    }
}

/// As [`settle`], for one input of the caller's choice: whether measuring it better could decide the case, and how good it
/// must be. An input that carries no uncertainty cannot be improved.
///
/// * `input` — its position in the budget
/// * errors: [`Error::OutOfRange`] for a position that the budget does not have; [`Error::Inconsistent`] as [`settle`]
///
/// Source: as [`settle`].
pub fn settle_by(judgment: &Judgment, budget: &Budget, input: u32) -> Result<Settlement> {
    same_reading(judgment, budget)?;
    let high = f64::from(budget.count) - 1.0;
    let unknown = Error::OutOfRange { name: "input", value: f64::from(input), low: 0.0, high };
    known(budget).find(|term| term.position == input).map(|term| settled_by(judgment, &term)).ok_or(unknown)
}

fn same_reading(judgment: &Judgment, budget: &Budget) -> Result<()> {
    if crate::real::abs(budget.u - judgment.reading.u) > 1e-9 * judgment.reading.u {
        return Err(Error::Inconsistent {
            name: "budget",
            why: "its uncertainty is not that of the judged reading; pass the budget of the same propagation",
        });
    }
    Ok(())
}

fn settled_by(judgment: &Judgment, term: &Term) -> Settlement {
    let u = judgment.reading.u;
    let decided = judgment.verdict != Verdict::NotProven;
    let contribution = crate::real::abs(term.contribution);
    if contribution <= 0.0 {
        return Settlement { input: term.position, enough: decided, u_now: 0.0, u_needed: 0.0 };
    }
    let sensitivity = crate::real::abs(term.sensitivity);
    let spare = judgment.u_to_decide * judgment.u_to_decide - u * u + contribution * contribution;
    let enough = spare >= 0.0 && (judgment.u_to_decide > 0.0 || decided);
    let u_needed = if enough { sqrt(spare) / sensitivity } else { 0.0 };
    Settlement { input: term.position, enough, u_now: contribution / sensitivity, u_needed }
}
