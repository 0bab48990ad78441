//! The parts of a train: planetary sets with their speed equations, and elements.

use super::fraction::gcd;
use super::member_of;
use crate::error::{Error, Result};

/// Stands where a set has no such member.
pub const NO_MEMBER: u8 = u8::MAX;

/// Greatest tooth count accepted.
const MAX_TEETH: u16 = 9999;

/// How the gears of a planetary set mesh.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetKind {
    /// Sun and ring mesh the same planets.
    Simple,
    /// The sun meshes the inner planets, the ring the outer ones, and the planets mesh in pairs.
    DoublePinion,
    /// Two suns on one carrier and ring: `sun` (the large sun) and the ring mesh the long planets, `sun_2` (the small sun)
    /// meshes the short planets, which mesh the long ones. The roles follow the mesh, not the size.
    TwoSun,
    /// Stepped planets: `sun` meshes the first step, and either `ring` or `sun_2` the second.
    Stepped,
}

/// Tooth counts of a set; 0 where there is no such gear, or where a planet count is not known.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SetTeeth {
    /// Sun; the large sun of a two-sun set.
    pub sun: u16,
    /// Second sun of a stepped set; the small sun of a two-sun set.
    pub sun_2: u16,
    /// Planet; the inner planet of a double-pinion set, the long one of a two-sun set, the first step of a stepped set.
    pub planet: u16,
    /// The outer planet of a double-pinion set, the short one of a two-sun set, the second step of a stepped set.
    pub planet_2: u16,
    /// Ring.
    pub ring: u16,
}

impl SetTeeth {
    /// No gears yet; for `..SetTeeth::NONE`.
    pub const NONE: Self = Self { sun: 0, sun_2: 0, planet: 0, planet_2: 0, ring: 0 };
}

/// The members that the gears of a set belong to; [`NO_MEMBER`] where there is no such gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SetJoins {
    /// Member of the sun; of the large sun of a two-sun set.
    pub sun: u8,
    /// Member of the second or small sun.
    pub sun_2: u8,
    /// Member of the ring.
    pub ring: u8,
    /// Member of the planet carrier.
    pub carrier: u8,
}

impl SetJoins {
    /// No members yet; for `..SetJoins::NONE`.
    pub const NONE: Self = Self { sun: NO_MEMBER, sun_2: NO_MEMBER, ring: NO_MEMBER, carrier: NO_MEMBER };
}

/// A planetary set: kind, teeth, and the members it joins.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanetarySet {
    /// How the gears mesh.
    pub kind: SetKind,
    /// Planets, or pairs of planets, around the sun; 0 where not known. Speeds and torques do not need it.
    pub planets: u8,
    /// Tooth counts.
    pub teeth: SetTeeth,
    /// Members.
    pub joins: SetJoins,
}

/// One speed equation: Σ coefficient · speed of member = 0.
///
/// The same coefficients, times one multiplier, are the torques that the set puts on its members.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// The set it belongs to.
    pub set: u8,
    /// Sun, then ring or second sun, then carrier.
    pub members: [u8; 3],
    /// Whole numbers in lowest terms; their sum is 0.
    pub coefficients: [i32; 3],
}

impl Row {
    pub(super) const NONE: Self = Self { set: 0, members: [NO_MEMBER; 3], coefficients: [0; 3] };

    /// Members with their coefficients.
    pub fn terms(&self) -> impl Iterator<Item = (u8, i64)> + '_ {
        self.members.iter().copied().zip(self.coefficients.iter().map(|&c| i64::from(c)))
    }

    /// `a (ω_first − ω_carrier) + b (ω_second − ω_carrier) = 0` in lowest terms.
    fn about_carrier(members: [u8; 3], a: i32, b: i32) -> Self {
        let divisor = gcd(a.unsigned_abs().into(), b.unsigned_abs().into());
        let divisor = i32::try_from(divisor).unwrap_or(1);
        let lowest = |z: i32| z.checked_div(divisor).unwrap_or(z);
        let (a, b) = (lowest(a), lowest(b));
        Self { set: 0, members, coefficients: [a, b, -(a + b)] }
    }
}

impl PlanetarySet {
    pub(super) const NONE: Self =
        Self { kind: SetKind::Simple, planets: 0, teeth: SetTeeth::NONE, joins: SetJoins::NONE };

    /// The speed equations, after checking teeth and joins against a train of `members` members.
    ///
    /// * simple: z_S ω_S + z_R ω_R − (z_S + z_R) ω_C = 0
    /// * double pinion: z_S ω_S − z_R ω_R + (z_R − z_S) ω_C = 0
    /// * two suns: the first for the large sun, the second for the small one
    /// * stepped: z_S z_P2 (ω_S − ω_C) + z_P1 z_R (ω_R − ω_C) = 0, with a second sun − z_P1 z_S2 (ω_S2 − ω_C)
    ///
    /// Source: basic speed equation of an epicyclic set (from memory of H. W. Müller, *Epicyclic Drive
    /// Trains*, 1982).
    pub(super) fn rows(&self, members: u8) -> Result<SetRows> {
        let SetTeeth { sun, sun_2, planet, planet_2, ring } = self.teeth;
        let joins = self.joins;
        let has_ring = self.kind != SetKind::Stepped || sun_2 == 0;
        let has_sun_2 = self.kind == SetKind::TwoSun || !has_ring;
        gear("sun", sun, joins.sun, members)?;
        if has_sun_2 {
            gear("sun_2", sun_2, joins.sun_2, members)?;
        } else {
            absent("sun_2", sun_2, joins.sun_2)?;
        }
        if has_ring {
            gear("ring", ring, joins.ring, members)?;
        } else {
            absent("ring", ring, joins.ring)?;
        }
        member_of("carrier", joins.carrier, members)?;
        let wheels = [joins.sun, joins.sun_2, joins.ring, joins.carrier];
        if wheels.iter().enumerate().any(|(i, a)| *a != NO_MEMBER && wheels.iter().skip(i + 1).any(|b| a == b)) {
            return Err(Error::Inconsistent {
                name: "joins",
                why: "two gears of the set belong to the same member, which locks it; give each its own member",
            });
        }
        for (name, teeth) in [("planet", planet), ("planet_2", planet_2)] {
            if self.kind == SetKind::Stepped || teeth != 0 {
                teeth_of(name, teeth)?;
            }
        }
        if self.kind == SetKind::Simple && planet_2 != 0 {
            absent("planet_2", planet_2, NO_MEMBER)?;
        }
        if self.kind != SetKind::Stepped && ring <= sun.max(sun_2) {
            return Err(Error::Inconsistent {
                name: "ring",
                why: "the ring goes around the sun and needs more teeth; exchange the two counts or correct one",
            });
        }
        let [sun, sun_2, planet, planet_2, ring] = [sun, sun_2, planet, planet_2, ring].map(i32::from);
        let to_ring = [joins.sun, joins.ring, joins.carrier];
        Ok(match self.kind {
            SetKind::Simple => SetRows::one(Row::about_carrier(to_ring, sun, ring)),
            SetKind::DoublePinion => SetRows::one(Row::about_carrier(to_ring, sun, -ring)),
            SetKind::TwoSun => SetRows {
                first: Row::about_carrier(to_ring, sun, ring),
                second: Some(Row::about_carrier([joins.sun_2, joins.ring, joins.carrier], sun_2, -ring)),
            },
            SetKind::Stepped if has_ring => SetRows::one(Row::about_carrier(to_ring, sun * planet_2, planet * ring)),
            SetKind::Stepped => SetRows::one(Row::about_carrier(
                [joins.sun, joins.sun_2, joins.carrier],
                sun * planet_2,
                -planet * sun_2,
            )),
        })
    }
}

/// The one or two rows of a set.
pub(super) struct SetRows {
    first: Row,
    second: Option<Row>,
}

impl SetRows {
    fn one(first: Row) -> Self {
        Self { first, second: None }
    }

    pub(super) fn len(&self) -> usize {
        1 + usize::from(self.second.is_some())
    }
}

impl IntoIterator for SetRows {
    type Item = Row;
    type IntoIter = core::iter::Chain<core::iter::Once<Row>, core::option::IntoIter<Row>>;

    fn into_iter(self) -> Self::IntoIter {
        core::iter::once(self.first).chain(self.second)
    }
}

fn teeth_of(name: &'static str, teeth: u16) -> Result<()> {
    if teeth == 0 {
        return Err(Error::NotPositive { name, value: 0.0 });
    }
    if teeth > MAX_TEETH {
        return Err(Error::OutOfRange { name, value: teeth.into(), low: 1.0, high: MAX_TEETH.into() });
    }
    Ok(())
}

fn gear(name: &'static str, teeth: u16, member: u8, members: u8) -> Result<()> {
    teeth_of(name, teeth)?;
    member_of(name, member, members)?;
    Ok(())
}

fn absent(name: &'static str, teeth: u16, member: u8) -> Result<()> {
    if teeth == 0 && member == NO_MEMBER {
        Ok(())
    } else {
        Err(Error::Inconsistent { name, why: "this kind of set has no such gear; remove it or change the kind" })
    }
}

/// What an element is.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ElementKind {
    /// Friction clutch between two members.
    Clutch,
    /// Friction brake or band that holds a member to the fixed one.
    Brake,
    /// One-way clutch: it closes by itself against one sense of rotation.
    OneWay,
    /// Toothed clutch: closed or open, it cannot slip.
    Dog,
}

/// The sense in which the first member of a one-way clutch cannot turn relative to the second.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blocks {
    /// Not a one-way clutch.
    Neither,
    /// The first member may turn forward, not backward: it can be pushed forward only.
    Reverse,
    /// The first member may turn backward, not forward.
    Forward,
}

/// Whatever can join two members: clutch, brake, one-way or dog clutch.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Element {
    /// What it is.
    pub kind: ElementKind,
    /// The sense that a one-way clutch blocks.
    pub blocks: Blocks,
    /// The member whose slip speed and torque share are reported.
    pub first: u8,
    /// The other member; the fixed one for a brake.
    pub second: u8,
}

impl Element {
    pub(super) const NONE: Self =
        Self { kind: ElementKind::Clutch, blocks: Blocks::Neither, first: NO_MEMBER, second: NO_MEMBER };

    /// A friction clutch.
    #[must_use]
    pub const fn clutch(first: u8, second: u8) -> Self {
        Self { kind: ElementKind::Clutch, blocks: Blocks::Neither, first, second }
    }

    /// A brake of `first` against the fixed member `second`.
    #[must_use]
    pub const fn brake(first: u8, second: u8) -> Self {
        Self { kind: ElementKind::Brake, blocks: Blocks::Neither, first, second }
    }

    /// A one-way clutch that blocks `first` in one sense relative to `second`.
    #[must_use]
    pub const fn one_way(first: u8, second: u8, blocks: Blocks) -> Self {
        Self { kind: ElementKind::OneWay, blocks, first, second }
    }

    /// A dog clutch.
    #[must_use]
    pub const fn dog(first: u8, second: u8) -> Self {
        Self { kind: ElementKind::Dog, blocks: Blocks::Neither, first, second }
    }

    pub(super) fn check(&self, members: u8, fixed: u8) -> Result<()> {
        member_of("first", self.first, members)?;
        member_of("second", self.second, members)?;
        let wrong = |name, why| Err(Error::Inconsistent { name, why });
        if self.first == self.second {
            return wrong("joins", "the element joins a member to itself; give two different members");
        }
        if self.kind == ElementKind::Brake && self.first != fixed && self.second != fixed {
            return wrong("brake", "a brake holds a member to the fixed one; use a clutch between two turning members");
        }
        match (self.kind == ElementKind::OneWay, self.blocks == Blocks::Neither) {
            (true, true) => wrong("blocks", "a one-way clutch blocks reverse or forward; say which"),
            (false, false) => wrong("blocks", "only a one-way clutch blocks a sense; remove it or change the kind"),
            _ => Ok(()),
        }
    }
}
