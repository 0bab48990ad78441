//! Whether a planetary set can be put together: axes, meshing places, room between neighbors.

use super::fraction::gcd;
use super::{PlanetarySet, SetJoins, SetKind, SetTeeth};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::{acos, cos, sin, sqrt};
use core::f64::consts::PI;
use core::fmt;

pub(super) const ASSEMBLY: Card = Card {
    id: "train.assembly",
    purpose: "Whether a planetary set can be put together with its planets in place",
    equation: "coaxial z_R = z_S + 2 z_P; (z_S + z_R)/N whole for equal spacing; (z_S + z_R) θ/180 whole otherwise; z_P + 2 < (z_S + z_P) sin(180°/N)",
    symbols: &[
        symbol("z_S, z_P, z_R", "teeth", "1"),
        symbol("N", "planets", "1"),
        symbol("θ", "half the angle between neighbors", "°"),
    ],
    range: "standard gears of one module without profile shift; double-pinion, two-sun and stepped sets by derivation",
    source: &card::GEAR_HANDBOOK,
    locator: "13.3.1, equations 13-5 to 13-10",
};

/// Most planets, or pairs of planets, of a set.
pub const MAX_PLANETS: usize = 12;

/// What a condition of assembly comes to.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finding {
    /// It is met.
    Holds,
    /// It is not met.
    Fails,
    /// A count that it needs is not given.
    NotKnown,
}

/// The conditions of assembly of one set, with their numbers. Displayed, it names each condition and the mend.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assembly {
    /// Nearest places of the planets to equal spacing, from the first planet.
    pub planet_angles_deg: [f64; MAX_PLANETS],
    /// Least gap between the tips of neighboring planets, in modules; infinite for one planet, 0 where not known.
    pub neighbor_gap_modules: f64,
    /// Places around the carrier in which a planet meshes; 0 if it meshes anywhere.
    pub places: u32,
    /// Bit N is set if N planets mesh equally spaced, N from 1 to 12.
    pub equal_planets: u32,
    /// Teeth by which sun and ring miss a common axis; 0 where it is met or not known. For a double-pinion set, or the short
    /// planets of a two-sun set, teeth by which the planets of a pair fail to reach each other.
    pub coaxial_excess: i32,
    /// Places left over when they are shared equally among the planets.
    pub places_left: u32,
    /// Planets, or pairs of planets; 0 where not known.
    pub planets: u8,
    /// Sun, planets and ring share an axis.
    pub coaxial: Finding,
    /// The planets mesh equally spaced.
    pub equal_spacing: Finding,
    /// Neighboring planets are clear of each other.
    pub neighbors: Finding,
}

impl Assembly {
    /// All conditions together. Unequal spacing counts as [`Finding::Fails`]: it may still be built, at the given angles.
    #[must_use]
    pub fn finding(&self) -> Finding {
        let all = [self.coaxial, self.equal_spacing, self.neighbors];
        if all.contains(&Finding::Fails) {
            Finding::Fails
        } else if all.contains(&Finding::NotKnown) {
            Finding::NotKnown
        } else {
            Finding::Holds
        }
    }
}

impl fmt::Display for Assembly {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.coaxial {
            Finding::Holds => f.write_str("coaxial: met")?,
            Finding::NotKnown => f.write_str("coaxial: not known, give the planet teeth")?,
            Finding::Fails => write!(
                f,
                "coaxial: missed by {} teeth; change a tooth count by that, or shift the profiles",
                self.coaxial_excess
            )?,
        }
        let (places, planets) = (self.places, self.planets);
        match self.equal_spacing {
            Finding::Holds => write!(f, "; equal spacing: met, {places} places for {planets} planets")?,
            Finding::NotKnown => write!(f, "; equal spacing: not known, give the number of planets ({places} places)")?,
            Finding::Fails => {
                write!(f, "; equal spacing: {places} places / {planets} planets leaves {}; use", self.places_left)?;
                for n in (2..=MAX_PLANETS).filter(|n| self.equal_planets & (1 << n) != 0) {
                    write!(f, " {n},")?;
                }
                f.write_str(if self.equal_planets >> 2 == 0 { " the angles" } else { " or the angles" })?;
                for angle in self.planet_angles_deg.iter().take(planets.into()) {
                    write!(f, " {angle:.2}°")?;
                }
            }
        }
        match self.neighbors {
            Finding::Holds => write!(f, "; neighbors: clear by {:.2} modules", self.neighbor_gap_modules),
            Finding::NotKnown => f.write_str("; neighbors: not known, give planets and planet teeth"),
            Finding::Fails => {
                write!(f, "; neighbors: overlap by {:.2} modules; use fewer planets", -self.neighbor_gap_modules)
            }
        }
    }
}

impl PlanetarySet {
    /// Checks whether the set can be put together.
    ///
    /// A planet meshes at M places around the carrier: M = z_S + z_R (simple), z_R − z_S (double pinion), the greatest common
    /// divisor of z_R + z_S1 and z_R − z_S2 (two suns), (z_S z_P2 + z_R z_P1)/gcd(z_P1, z_P2) (stepped; with a second sun
    /// z_S z_P2 − z_S2 z_P1). N planets mesh equally spaced if M/N is whole, else at the nearest places.
    /// Axes: z_R = z_S + 2 z_P. Neighbors: z_P + 2 < (z_S + z_P) sin(θ), 2θ the angle between them.
    ///
    /// * `self` — teeth and planets; joins are not looked at; planet teeth and number may be 0 where not known
    /// * returns the conditions with their numbers; a planet count of 0 leaves conditions [`Finding::NotKnown`]
    /// * errors: those of the tooth counts; [`Error::Count`] for more than [`MAX_PLANETS`]
    ///
    /// Source: Elements of Metric Gear Technology, 13.3.1, equations 13-5 to 13-10 (read), for the simple set; the others by
    /// counting the teeth that pass sun and ring while the carrier turns from one place to the next (derived).
    /// Example: 15, 16 and 47 teeth share an axis, but 62/3 is not whole: three planets do not go in.
    ///
    /// ```
    /// use trainwright::train::{Finding, PlanetarySet, SetJoins, SetKind, SetTeeth};
    /// let teeth = SetTeeth { sun: 15, planet: 16, ring: 47, ..SetTeeth::NONE };
    /// let set = PlanetarySet { kind: SetKind::Simple, planets: 3, teeth, joins: SetJoins::NONE };
    /// let assembly = set.assembly()?;
    /// assert_eq!((assembly.coaxial, assembly.equal_spacing), (Finding::Holds, Finding::Fails));
    /// assert_eq!((assembly.places, assembly.places_left), (62, 2));
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn assembly(&self) -> Result<Assembly> {
        self.with_any_members().rows(4)?;
        let planets = usize::from(self.planets);
        if planets > MAX_PLANETS {
            let count = planets as u32;
            return Err(Error::Count { name: "planets", count, low: 0, high: MAX_PLANETS as u32 });
        }
        let places = self.places();
        let left = |n: u32| places.checked_rem(n).unwrap_or(0);
        let mut planet_angles_deg = [0.0; MAX_PLANETS];
        let mut narrowest = 360.0_f64;
        let mut before = 0.0;
        for (k, angle) in (0_u32..).zip(&mut planet_angles_deg).take(planets) {
            let share = f64::from(k) / f64::from(self.planets);
            *angle = if places == 0 {
                360.0 * share
            } else {
                360.0 * crate::real::round_half_away(share * f64::from(places)) / f64::from(places)
            };
            if k > 0 {
                narrowest = narrowest.min(*angle - before);
            }
            before = *angle;
        }
        narrowest = narrowest.min(360.0 - before);
        let coaxial_excess = self.coaxial_excess();
        let gap = self.neighbor_gap(narrowest * PI / 180.0);
        Ok(Assembly {
            planet_angles_deg,
            neighbor_gap_modules: gap.unwrap_or(0.0),
            places,
            equal_planets: (1..=MAX_PLANETS as u32).filter(|&n| left(n) == 0).fold(0, |mask, n| mask | 1 << n),
            coaxial_excess: coaxial_excess.unwrap_or(0),
            places_left: left(self.planets.into()),
            planets: self.planets,
            coaxial: finding(coaxial_excess, |excess| excess == 0),
            equal_spacing: finding((planets > 0).then_some(left(self.planets.into())), |left| left == 0),
            neighbors: finding(gap, |gap| gap > 0.0),
        })
    }

    /// The set with a member for each of its gears, so that its teeth can be checked without a train.
    fn with_any_members(&self) -> Self {
        let SetTeeth { sun_2, ring, .. } = self.teeth;
        let mut joins = SetJoins { sun: 0, carrier: 1, ..SetJoins::NONE };
        let has_sun_2 = self.kind == SetKind::TwoSun || sun_2 > 0;
        let has_ring = self.kind != SetKind::Stepped || ring > 0 || !has_sun_2;
        if has_sun_2 {
            joins.sun_2 = 2;
        }
        if has_ring {
            joins.ring = 3;
        }
        Self { joins, ..*self }
    }

    fn places(&self) -> u32 {
        let [sun, sun_2, planet, planet_2, ring] = self.counts();
        let places = match self.kind {
            SetKind::Simple => sun + ring,
            SetKind::DoublePinion => ring - sun,
            SetKind::TwoSun => gcd((ring + sun).unsigned_abs(), (ring - sun_2).unsigned_abs()) as i64,
            SetKind::Stepped => {
                let through = if ring > 0 { sun * planet_2 + ring * planet } else { sun * planet_2 - sun_2 * planet };
                let step = gcd(planet.unsigned_abs(), planet_2.unsigned_abs()) as i64;
                through.checked_div(step).unwrap_or(0)
            }
        };
        u32::try_from(places.unsigned_abs()).unwrap_or(u32::MAX)
    }

    fn counts(&self) -> [i64; 5] {
        let SetTeeth { sun, sun_2, planet, planet_2, ring } = self.teeth;
        [sun, sun_2, planet, planet_2, ring].map(i64::from)
    }

    /// Teeth by which the axes are missed, if the planet teeth are known.
    fn coaxial_excess(&self) -> Option<i32> {
        let [sun, sun_2, planet, planet_2, ring] = self.counts();
        let reach = |inner: i64, outer: i64, mesh: i64| ((inner - outer).abs() - mesh).max(0);
        let excess = match self.kind {
            _ if planet == 0 => return None,
            SetKind::Simple => ring - sun - 2 * planet,
            SetKind::DoublePinion if planet_2 == 0 => return None,
            SetKind::DoublePinion => reach(sun + planet, ring - planet_2, planet + planet_2),
            SetKind::TwoSun => {
                let axis = ring - sun - 2 * planet;
                let short = if planet_2 > 0 { reach(sun_2 + planet_2, sun + planet, planet + planet_2) } else { 0 };
                if axis == 0 { short } else { axis }
            }
            SetKind::Stepped if ring > 0 => ring - planet_2 - sun - planet,
            SetKind::Stepped => sun_2 + planet_2 - sun - planet,
        };
        i32::try_from(excess).ok()
    }

    /// Least gap between the tips of neighboring planets, in modules, for the narrowest angle between neighbors.
    fn neighbor_gap(&self, between: f64) -> Option<f64> {
        let [sun, sun_2, planet, planet_2, ring] = self.counts().map(|z| z as f64);
        if self.planets == 0 || planet <= 0.0 {
            return None;
        }
        if self.planets == 1 {
            return Some(f64::INFINITY);
        }
        let alike = |radius: f64, teeth: f64| 2.0 * radius * sin(0.5 * between) - (teeth + 2.0);
        let first = alike(0.5 * (sun + planet), planet);
        // Planets in pairs: the second circle of planets, and each planet against the other kind of the next pair.
        let pairs = |radius: f64, radius_2: f64| {
            let mesh = 0.5 * (planet + planet_2);
            let cosine = (radius * radius + radius_2 * radius_2 - mesh * mesh) / (2.0 * radius * radius_2);
            let pair_angle = if crate::real::abs(cosine) <= 1.0 { acos(cosine) } else { return None };
            let next = between - pair_angle;
            let distance = sqrt(radius * radius + radius_2 * radius_2 - 2.0 * radius * radius_2 * cos(next));
            Some(first.min(alike(radius_2, planet_2)).min(distance - (0.5 * (planet + planet_2) + 2.0)))
        };
        match self.kind {
            SetKind::Simple => Some(first),
            SetKind::Stepped => Some(alike(0.5 * (sun + planet), planet.max(planet_2))),
            SetKind::DoublePinion | SetKind::TwoSun if planet_2 <= 0.0 => None,
            SetKind::DoublePinion => pairs(0.5 * (sun + planet), 0.5 * (ring - planet_2)),
            SetKind::TwoSun => pairs(0.5 * (sun + planet), 0.5 * (sun_2 + planet_2)),
        }
    }
}

fn finding<T>(known: Option<T>, holds: impl Fn(T) -> bool) -> Finding {
    match known.map(holds) {
        None => Finding::NotKnown,
        Some(true) => Finding::Holds,
        Some(false) => Finding::Fails,
    }
}
