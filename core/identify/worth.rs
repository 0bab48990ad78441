//! What a further look would tell about the variant, per minute of labor.

use super::likelihood::density;
use super::origin::Origin;
use super::verdict::stated;
use super::weigh::VariantFinding;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Limits, Rule};
use crate::real::{exp, ln_1p};

pub(super) const MARK_WORTH: Card = Card {
    id: "identify.mark_worth",
    purpose: "Expected information about the variant from looking for a mark, per minute of labor, and the chance that it settles",
    equation: "I = Σ_o Σ_v P(v) P(o|v) log₂[P(o|v)/P(o)], P(o|v) = kept(v) P_v(o) + (1 − kept(v)) Σ_w m(w) P_w(o); I/t",
    symbols: &[
        symbol("I", "bits", "bit"),
        symbol("I/t", "bits_per_minute", "bit/min"),
        symbol("P(v)", "variants.chance, after the looks so far", "1"),
        symbol("P_v(o)", "chance, of the mark seen or missing", "1"),
        symbol("kept(v)", "origin.kept, of the part that carries it", "1"),
        symbol("m(w)", "origin.if_exchanged", "1"),
        symbol("t", "minutes", "min"),
    ],
    range: "a look not made yet; the same look again tells nothing",
    source: &card::INFORMATION,
    locator: "2.4, mutual information of the variant and the outcome",
};

pub(super) const SIZE_WORTH: Card = Card {
    id: "identify.size_worth",
    purpose: "Expected information about the variant from measuring a size, per minute of labor, and the chance that it settles",
    equation: "I = ∫ Σ_v P(v) f_v(x) log₂[f_v(x)/f(x)] dx, f_v(x) = kept(v) g_v(x) + (1 − kept(v)) Σ_w m(w) g_w(x), f = Σ_v P(v) f_v; I/t",
    symbols: &[
        symbol("I", "bits", "bit"),
        symbol("I/t", "bits_per_minute", "bit/min"),
        symbol("P(v)", "variants.chance, after the looks so far", "1"),
        symbol("g_v(x)", "identify.ln_density, of a reading with the instrument's u", "1/mm"),
        symbol("kept(v)", "origin.kept, of the part that carries it", "1"),
        symbol("m(w)", "origin.if_exchanged", "1"),
        symbol("t", "minutes", "min"),
    ],
    range: "a size not measured yet; ten-point Gauss quadrature between the limits of all variants and ± 2, 4, 8 u about them",
    source: &card::INFORMATION,
    locator: "8.5, mutual information of the variant and the reading",
};

/// What a further look is worth.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worth {
    /// Information about the variant to be expected, bits: 0 to what is not known yet.
    pub bits: f64,
    /// The same for each minute of labor.
    pub bits_per_minute: f64,
    /// Chance that afterwards one variant reaches the rule's chance.
    pub settles: f64,
}

impl Worth {
    fn new(sum: Sum, minutes: f64) -> Self {
        let bits = sum.nats / core::f64::consts::LN_2;
        let bits = if bits > f64::EPSILON { bits } else { 0.0 }; // what is left of a useless look is rounding
        Self { bits, bits_per_minute: bits / minutes, settles: sum.settles.min(1.0) }
    }
}

/// Information in nats, and chance that the look settles.
#[derive(Default)]
struct Sum {
    nats: f64,
    settles: f64,
}

impl Sum {
    fn append(&mut self, other: &Self) {
        self.nats += other.nats;
        self.settles += other.settles;
    }

    /// Adds an outcome. `likelihoods` gives its likelihood in an untouched unit of each variant, twice; `weight` is the width
    /// of the outcome, 1 for one that can be counted. Returns whether the outcome settles.
    fn add<L: Iterator<Item = f64>>(
        &mut self,
        standing: &Standing<'_>,
        weight: f64,
        likelihoods: impl Fn() -> L,
    ) -> bool {
        let Standing { variants, origins, rule } = *standing;
        let exchanged: f64 = origins.iter().zip(likelihoods()).map(|(origin, g)| origin.if_exchanged * g).sum();
        let in_unit = |origin: &Origin, g: f64| origin.kept * g + (1.0 - origin.kept) * exchanged;
        let all = || variants.iter().zip(origins).zip(likelihoods());
        let mean: f64 = all().map(|((variant, origin), g)| variant.chance * in_unit(origin, g)).sum();
        if mean <= 0.0 {
            return false;
        }
        let (mut nats, mut most) = (0.0, 0.0_f64);
        for ((variant, origin), g) in all() {
            let likelihood = in_unit(origin, g);
            nats += variant.chance * divergence((likelihood - mean) / mean);
            most = most.max(variant.chance * likelihood / mean);
        }
        self.nats += weight * mean * nats;
        let settles = most >= rule.go;
        self.settles += if settles { weight * mean } else { 0.0 };
        settles
    }
}

/// r ln r − r + 1 with r = 1 + d: what an outcome tells, never negative, and without loss of digits where it tells little.
fn divergence(d: f64) -> f64 {
    if d <= -1.0 { 1.0 } else { ((1.0 + d) * ln_1p(d) - d).max(0.0) }
}

/// The unit as it is known, and the part that the look is on.
#[derive(Clone, Copy, Debug)]
pub struct Standing<'a> {
    /// The variants, as [`super::Evidence::weigh`] filled them in.
    pub variants: &'a [VariantFinding],
    /// The part, as [`super::Evidence::part`] filled it in.
    pub origins: &'a [Origin],
    /// Rule with stated chances: from which chance on the variant is settled.
    pub rule: Rule,
}

impl Standing<'_> {
    /// Checks every list, of which `name` is one more, and the rule.
    fn checked(&self, name: &'static str, count: usize) -> Result<()> {
        let wanted = self.variants.len() as u32;
        for (name, count) in [("origins", self.origins.len() as u32), (name, count as u32)] {
            if count != wanted {
                return Err(Error::Count { name, count, low: wanted, high: wanted });
            }
        }
        for (variant, origin) in self.variants.iter().zip(self.origins) {
            within("variants.chance", variant.chance, 0.0, 1.0)?;
            within("origins.kept", origin.kept, 0.0, 1.0)?;
            within("origins.if_exchanged", origin.if_exchanged, 0.0, 1.0)?;
        }
        stated(self.rule).map(|_| ())
    }

    /// What looking for a mark would tell about the variant.
    ///
    /// I = Σ_o Σ_v P(v) P(o|v) log₂[P(o|v)/P(o)], P(o|v) = kept(v) P_v(o) + (1 − kept(v)) Σ_w m(w) P_w(o)
    ///
    /// * `chance` — for each variant, chance that an untouched unit shows the mark; `minutes` — t, above 0
    /// * returns [`Worth`]
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::Count`]
    ///
    /// Source: mutual information, Cover and Thomas, Elements of Information Theory, 2.4 (from memory). Example: its binary
    /// symmetric channel (7.1.4) tells 1 − H(p) of an even question; with p = 0.11 half a bit.
    ///
    /// ```
    /// use trainwright::identify::{Evidence, Origin, Standing, VariantFinding};
    /// use trainwright::judge::Rule;
    /// let evidence = Evidence { prior: &[0.5, 0.5], exchanged: &[0.0], ln_likelihood: &[0.0, 0.0], unexplained: 0 };
    /// let (mut variants, mut origins) = ([VariantFinding::NONE; 2], [Origin::NONE; 2]);
    /// evidence.weigh(&mut variants)?;
    /// evidence.part(&variants, 0, &mut origins)?;
    /// let standing = Standing { variants: &variants, origins: &origins, rule: Rule::conformance(0.95)? };
    /// let worth = standing.mark_worth(&[0.11, 0.89], 2.0)?;
    /// assert!((worth.bits - 0.500_08).abs() < 1e-5 && (worth.bits_per_minute - 0.250_04).abs() < 1e-5);
    /// assert_eq!(worth.settles, 0.0); // 0.89 is short of 0.95
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn mark_worth(&self, chance: &[f64], minutes: f64) -> Result<Worth> {
        self.checked("chance", chance.len())?;
        let minutes = positive("minutes", minutes)?;
        for &chance in chance {
            within("chance", chance, 0.0, 1.0)?;
        }
        let mut sum = Sum::default();
        sum.add(self, 1.0, || chance.iter().copied());
        sum.add(self, 1.0, || chance.iter().map(|chance| 1.0 - chance));
        Ok(Worth::new(sum, minutes))
    }

    /// What measuring a size would tell about the variant.
    ///
    /// I = ∫ Σ_v P(v) f_v(x) log₂[f_v(x)/f(x)] dx, f_v(x) = kept(v) g_v(x) + (1 − kept(v)) Σ_w m(w) g_w(x), f = Σ_v P(v) f_v
    ///
    /// * `size_mm` — limits of the finished part for each variant; `u_mm` — standard uncertainty of the instrument, above 0
    /// * `minutes` — t, above 0
    /// * returns [`Worth`]
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::Reversed`], [`Error::Count`]
    ///
    /// Source: mutual information, Cover and Thomas, Elements of Information Theory, 8.5 (from memory). Example: sizes that a
    /// micrometer keeps apart tell everything; of an even question one bit.
    ///
    /// ```
    /// use trainwright::identify::{Evidence, Origin, Standing, VariantFinding};
    /// use trainwright::judge::{Limits, Rule};
    /// let evidence = Evidence { prior: &[0.5, 0.5], exchanged: &[0.0], ln_likelihood: &[0.0, 0.0], unexplained: 0 };
    /// let (mut variants, mut origins) = ([VariantFinding::NONE; 2], [Origin::NONE; 2]);
    /// evidence.weigh(&mut variants)?;
    /// evidence.part(&variants, 0, &mut origins)?;
    /// let size_mm = [Limits::between(43.975, 44.000)?, Limits::between(44.325, 44.350)?];
    /// let standing = Standing { variants: &variants, origins: &origins, rule: Rule::conformance(0.95)? };
    /// let worth = standing.size_worth(&size_mm, 0.0016, 30.0)?;
    /// assert!((worth.bits - 1.0).abs() < 1e-9 && (worth.settles - 1.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn size_worth(&self, size_mm: &[Limits], u_mm: f64, minutes: f64) -> Result<Worth> {
        self.checked("size_mm", size_mm.len())?;
        let minutes = positive("minutes", minutes)?;
        let u_mm = positive("u_mm", u_mm)?;
        for limits in size_mm {
            Limits::between(limits.lower, limits.upper)?;
        }
        let gauge = Gauge { size_mm, u_mm };
        let mut sum = Sum::default();
        let mut from_mm = gauge.next_knot(f64::NEG_INFINITY);
        while from_mm < f64::INFINITY {
            let to_mm = gauge.next_knot(from_mm);
            if to_mm == f64::INFINITY {
                break;
            }
            let (piece, change_mm) = self.integral(gauge, [from_mm, to_mm]);
            from_mm = match change_mm {
                // Readings begin or cease to settle within the piece: end it there.
                Some(bracket_mm) if bracket_mm[1] - bracket_mm[0] > 1e-6 * u_mm => {
                    let change_mm = self.change(gauge, bracket_mm);
                    sum.append(&self.integral(gauge, [from_mm, change_mm]).0);
                    change_mm
                }
                _ => {
                    sum.append(&piece);
                    to_mm
                }
            };
        }
        Ok(Worth::new(sum, minutes))
    }

    /// Adds a reading; returns whether it settles.
    fn at(&self, gauge: Gauge<'_>, x: f64, weight: f64, sum: &mut Sum) -> bool {
        let Gauge { size_mm, u_mm } = gauge;
        sum.add(self, weight, || {
            size_mm.iter().map(move |limits| {
                let away = (limits.lower - x).max(x - limits.upper);
                if away > REACH * u_mm { 0.0 } else { exp(density(x, u_mm, limits.lower, limits.upper)) }
            })
        })
    }

    /// Integral over a piece, and the first two nodes between which readings begin or cease to settle.
    fn integral(&self, gauge: Gauge<'_>, [from_mm, to_mm]: [f64; 2]) -> (Sum, Option<[f64; 2]>) {
        let (middle, half) = (0.5 * (from_mm + to_mm), 0.5 * (to_mm - from_mm));
        let nodes = GAUSS.iter().rev().map(|(abscissa, weight)| (-abscissa, weight));
        let (mut sum, mut change_mm, mut before) = (Sum::default(), None, None);
        for (abscissa, weight) in nodes.chain(GAUSS.iter().map(|(abscissa, weight)| (*abscissa, weight))) {
            let x = middle + half * abscissa;
            let settles = self.at(gauge, x, half * weight, &mut sum);
            change_mm = change_mm.or(before.filter(|(_, other)| *other != settles).map(|(x_before, _)| [x_before, x]));
            before = Some((x, settles));
        }
        (sum, change_mm)
    }

    /// Where between these two readings, of which only one settles, the change is: by bisection.
    fn change(&self, gauge: Gauge<'_>, [mut low_mm, mut high_mm]: [f64; 2]) -> f64 {
        let settles = |x: f64| self.at(gauge, x, 0.0, &mut Sum::default());
        let at_low = settles(low_mm);
        for _ in 0..40 {
            let middle_mm = 0.5 * (low_mm + high_mm);
            if settles(middle_mm) == at_low {
                low_mm = middle_mm;
            } else {
                high_mm = middle_mm;
            }
        }
        high_mm
    }
}

/// Where pieces of the integral begin and end about every limit, in u. Beyond ± 8 u a reading has a chance below 10⁻¹⁵.
const KNOTS: [f64; 7] = [-REACH, -4.0, -2.0, 0.0, 2.0, 4.0, REACH];
const REACH: f64 = 8.0;

/// Limits in each variant, and the instrument that reads them.
#[derive(Clone, Copy)]
struct Gauge<'a> {
    size_mm: &'a [Limits],
    u_mm: f64,
}

impl Gauge<'_> {
    /// The first knot above this place; infinite after the last.
    fn next_knot(&self, after_mm: f64) -> f64 {
        let limits = self.size_mm.iter().flat_map(|limits| [limits.lower, limits.upper]);
        let knots = limits.flat_map(|limit| KNOTS.iter().map(move |knot| limit + knot * self.u_mm));
        knots.filter(|knot| *knot > after_mm).fold(f64::INFINITY, f64::min)
    }
}

/// Abscissas and weights of ten-point Gauss-Legendre quadrature over −1 to 1, positive half (Abramowitz and Stegun, table 25.4).
const GAUSS: [(f64, f64); 5] = [
    (0.148_874_338_981_631_22, 0.295_524_224_714_752_87),
    (0.433_395_394_129_247_2, 0.269_266_719_309_996_35),
    (0.679_409_568_299_024_4, 0.219_086_362_515_982_04),
    (0.865_063_366_688_984_5, 0.149_451_349_150_580_6),
    (0.973_906_528_517_171_7, 0.066_671_344_308_688_14),
];
