//! One joint of two parts: what comes of it when they are of different variants.

use core::fmt;

use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, ordered, positive, within};
use crate::fit::{ROUNDING_MM, clearance};
use crate::judge::Limits;

pub(super) const MEET: Card = Card {
    id: "interchange.meet",
    purpose: "What comes of a joint whose two parts are of different variants",
    equation: "fit: c_min = D_min − d_max, c_max = D_max − d_min; blocked: c_max < w_min; may bind: c_min < w_min; holds: c_max ≤ w_max; loose: c_min > w_max; else may be loose. Cover: s ≥ s_least. Match: equal",
    symbols: &[
        symbol("c_min, c_max", "clearance_mm", "mm"),
        symbol("d_min, d_max", "first of the one variant", "mm"),
        symbol("D_min, D_max", "second of the other variant", "mm"),
        symbol("w_min, w_max", "wanted_mm", "mm"),
        symbol("s", "share", "1"),
        symbol("s_least", "limit of a cover", "1"),
    ],
    range: "sizes at 20 °C, whole tolerances. Wanted is 0 to the service limit; of a locating fit also what either variant is built with, of a press fit only that",
    source: &card::DEFINITION,
    locator: "clearance as fit.clearance; the outcomes are named here",
};

pub(super) const COVER_SHARE: Card = Card {
    id: "interchange.cover_share",
    purpose: "Share of a land that lies on its bearing surface, along the axis or across the diameter",
    equation: "s = max(0, min(s_2, l_2) − max(s_1, l_1))/(l_2 − l_1)",
    symbols: &[symbol("s", "share", "1"), symbol("s_1, s_2", "surface_mm", "mm"), symbol("l_1, l_2", "land_mm", "mm")],
    range: "both measured from the same face or about the same axis; a share of length, not of pressure. One way by nature: a long surface carries a short land, not the reverse",
    source: &card::DEFINITION,
    locator: "overlap of two intervals over the length of the second",
};

/// How two parts meet.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointKind {
    /// A shaft that turns in a bore: clearance wanted.
    Running,
    /// A register that centers: clearance, or what the variants are built with.
    Locating,
    /// Held by interference.
    Press,
    /// A land that must lie on a bearing surface.
    Cover,
    /// Equal or nothing: teeth, splines, races.
    Match,
}

/// Two parts that meet.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// How they meet.
    pub kind: JointKind,
    /// Shaft of a fit, land of a cover, either part of a match.
    pub first: u16,
    /// Bore of a fit, surface of a cover, the other part of a match.
    pub second: u16,
    /// Greatest diametral clearance of a fit, mm; least share of a cover; not used by a match.
    pub limit: f64,
}

/// Sizes of a joint in one variant, mm. Of a match, the number that stands for its value, in both ends of both.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sides {
    /// Diameter of the shaft; where the land begins and ends.
    pub first: Limits,
    /// Diameter of the bore; where the surface begins and ends.
    pub second: Limits,
}

/// What comes of a joint, or of a part put in alone: the outcome of its worst joint.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointOutcome {
    /// The joint is as good as the maker's own.
    Holds = 0,
    /// The parts do not go together: found at once, and harmless.
    Blocked = 1,
    /// Within their tolerances they may not go together, or have no clearance.
    MayBind = 2,
    /// They go together; within their tolerances they may have more clearance than the limit.
    MayBeLoose = 3,
    /// They go together and are loose: nobody notices at assembly. The expensive case.
    Loose = 4,
    /// They go together, and too little of the land is carried.
    Uncovered = 5,
    /// The values differ where only equal ones are right.
    Unequal = 6,
}

impl JointOutcome {
    /// Rank by what it says of a part with several joints: a blocked one stops the assembly and hides the rest; of those that
    /// assemble, the loose one is the worst.
    const fn weight(self) -> u8 {
        match self {
            Self::Holds => 0,
            Self::MayBind => 1,
            Self::MayBeLoose => 2,
            Self::Uncovered => 3,
            Self::Unequal => 4,
            Self::Loose => 5,
            Self::Blocked => 6,
        }
    }

    /// What two joints of one part come to together.
    #[must_use]
    pub(super) const fn with(self, other: Self) -> Self {
        if other.weight() > self.weight() { other } else { self }
    }
}

impl fmt::Display for JointOutcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Holds => "holds",
            Self::Blocked => "blocked",
            Self::MayBind => "may bind",
            Self::MayBeLoose => "may be loose",
            Self::Loose => "loose",
            Self::Uncovered => "uncovered",
            Self::Unequal => "unequal",
        })
    }
}

/// What comes of a joint, with its reason.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// What comes of it.
    pub outcome: JointOutcome,
    /// Least and greatest clearance of a fit, mm, negative is interference; 0 and 0 of a cover or match.
    pub clearance_mm: Limits,
    /// Clearance that is right, mm; 0 and 0 of a cover or match.
    pub wanted_mm: Limits,
    /// Share of the land that is carried; of a match 1 where equal, else 0; 0 of a fit.
    pub share: f64,
}

const NONE: Limits = Limits { lower: 0.0, upper: 0.0 };

impl Joint {
    /// What comes of the joint when its first part is of one variant and its second of another.
    ///
    /// Fit: c_min = D_min − d_max, c_max = D_max − d_min. Blocked: c_max < w_min; may bind: c_min < w_min; holds: c_max ≤ w_max;
    /// loose: c_min > w_max; else may be loose. The first that is true counts. Cover: s ≥ s_least. Match: equal.
    ///
    /// * `first_from`, `second_from` — the sizes of this joint in the variant of its first, and of its second part
    /// * returns [`Meeting`]. The clearance wanted is 0 to the limit; a locating fit may also be what either variant is built
    ///   with, a press fit must be that
    /// * errors: [`Error::Reversed`](crate::Error::Reversed) for a size upside down, [`Error::NotPositive`](crate::Error::NotPositive), [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NotFinite`](crate::Error::NotFinite)
    ///
    /// Source: clearance as [`crate::fit::clearance`]; the rest follows from the definitions. Example (invented): a shaft of
    /// 43.975 to 44.000 mm in a bore of 44.390 to 44.425 mm goes together with 0.390 to 0.450 mm, limit 0.14: loose.
    ///
    /// ```
    /// use trainwright::interchange::{Joint, JointKind, JointOutcome, Sides};
    /// use trainwright::judge::Limits;
    /// let joint = Joint { kind: JointKind::Running, first: 0, second: 1, limit: 0.14 };
    /// let early = Sides { first: Limits::between(43.975, 44.000)?, second: Limits::between(44.040, 44.075)? };
    /// let late = Sides { first: Limits::between(44.325, 44.350)?, second: Limits::between(44.390, 44.425)? };
    /// assert_eq!(joint.meet(early, late)?.outcome, JointOutcome::Loose); // goes together, and nobody notices
    /// assert_eq!(joint.meet(late, early)?.outcome, JointOutcome::Blocked); // found at once
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn meet(self, first_from: Sides, second_from: Sides) -> Result<Meeting> {
        self.sizes_meet(first_from.first, second_from.second, self.wanted_mm(first_from, second_from)?)
    }

    /// The clearance that is right between parts of these two variants; nothing for a cover or match.
    pub(super) fn wanted_mm(self, one: Sides, other: Sides) -> Result<Limits> {
        let limit_mm = self.limit;
        let built = |sides: Sides| Ok(clearance(sides.first, sides.second, limit_mm)?.clearance_mm);
        match self.kind {
            JointKind::Running => Ok(Limits { lower: 0.0, upper: limit_mm }),
            JointKind::Locating => Ok(hull(Limits { lower: 0.0, upper: limit_mm }, hull(built(one)?, built(other)?))),
            JointKind::Press => Ok(hull(built(one)?, built(other)?)),
            JointKind::Cover | JointKind::Match => Ok(NONE),
        }
    }

    /// What comes of two sizes, whatever variant they are of.
    pub(super) fn sizes_meet(self, first: Limits, second: Limits, wanted_mm: Limits) -> Result<Meeting> {
        match self.kind {
            JointKind::Running | JointKind::Locating | JointKind::Press => {
                let clearance_mm = clearance(first, second, self.limit)?.clearance_mm;
                Ok(Meeting { outcome: outcome_of(clearance_mm, wanted_mm), clearance_mm, wanted_mm, share: 0.0 })
            }
            JointKind::Cover => {
                let least = within("limit", self.limit, 0.0, 1.0)?;
                let share = cover_share(first, second)?;
                let outcome = if share + ROUNDING_MM >= least { JointOutcome::Holds } else { JointOutcome::Uncovered };
                Ok(Meeting { outcome, clearance_mm: NONE, wanted_mm: NONE, share })
            }
            JointKind::Match => {
                let (one, other) = (finite("first", first.lower)?, finite("second", second.lower)?);
                let equal = one.total_cmp(&other).is_eq();
                let (outcome, share) = if equal { (JointOutcome::Holds, 1.0) } else { (JointOutcome::Unequal, 0.0) };
                Ok(Meeting { outcome, clearance_mm: NONE, wanted_mm: NONE, share })
            }
        }
    }

    /// Whether it is a fit, whose parts have diameters.
    pub(super) fn is_fit(self) -> bool {
        matches!(self.kind, JointKind::Running | JointKind::Locating | JointKind::Press)
    }

    /// The part that meets this one here.
    pub(super) fn other(self, part: u16) -> Option<u16> {
        match (part == self.first, part == self.second) {
            (true, _) => Some(self.second),
            (_, true) => Some(self.first),
            _ => None,
        }
    }
}

fn hull(one: Limits, other: Limits) -> Limits {
    Limits { lower: one.lower.min(other.lower), upper: one.upper.max(other.upper) }
}

/// The outcome of a clearance against the one wanted.
pub(super) fn outcome_of(clearance_mm: Limits, wanted_mm: Limits) -> JointOutcome {
    let (tight, loose) = (wanted_mm.lower - ROUNDING_MM, wanted_mm.upper + ROUNDING_MM);
    if clearance_mm.upper < tight {
        JointOutcome::Blocked
    } else if clearance_mm.lower < tight {
        JointOutcome::MayBind
    } else if clearance_mm.upper <= loose {
        JointOutcome::Holds
    } else if clearance_mm.lower > loose {
        JointOutcome::Loose
    } else {
        JointOutcome::MayBeLoose
    }
}

/// Share of a land that lies on its bearing surface.
///
/// s = max(0, min(s_2, l_2) − max(s_1, l_1))/(l_2 − l_1)
///
/// * `land_mm` — l_1 and l_2, where the land begins and ends; `surface_mm` — s_1 and s_2; both from the same face, or both as
///   diameters about the same axis
/// * returns s, 0 to 1
/// * errors: [`Error::NotPositive`](crate::Error::NotPositive) for a land without length, [`Error::Reversed`](crate::Error::Reversed), [`Error::NotFinite`](crate::Error::NotFinite)
///
/// Source: overlap of two intervals. Example (invented): a land from 1.5 to 22 mm on a bushing from 0 to 15 mm is carried on
/// 13.5 of 20.5 mm, 66 %.
///
/// ```
/// use trainwright::interchange::cover_share;
/// use trainwright::judge::Limits;
/// let share = cover_share(Limits::between(1.5, 22.0)?, Limits::between(0.0, 15.0)?)?;
/// assert!((share - 13.5 / 20.5).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn cover_share(land_mm: Limits, surface_mm: Limits) -> Result<f64> {
    let (land_from, land_to) = ordered("land_mm", land_mm.lower, land_mm.upper)?;
    let (surface_from, surface_to) = ordered("surface_mm", surface_mm.lower, surface_mm.upper)?;
    let length = positive("land_mm", land_to - land_from)?;
    Ok((surface_to.min(land_to) - surface_from.max(land_from)).max(0.0) / length)
}
