//! PieceChoice of a shim, ring or plate from what can be had.

use core::cmp::Ordering;
use core::fmt;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, within};
use crate::judge::{Judgment, Limits, Reading, Rule, chance_inside, judge};
use crate::real::{abs, hypot, round_half_away};

pub(super) const OUTCOME: Card = Card {
    id: "stack.outcome",
    purpose: "What a shim, ring or plate of a given thickness leaves, cold and hot, against its window",
    equation: "e = E − s, u² = u_E² + u_s²; hot: e_h = e + Δe, u_h² = u² + u_Δ²; both hold with at least p = p_c + p_h − 1",
    symbols: &[
        symbol("e, u", "cold.reading", "mm"),
        symbol("e_h, u_h", "hot.reading", "mm"),
        symbol("E, u_E", "room_mm: what is left with no piece in place", "mm"),
        symbol("s, u_s", "thickness_mm", "mm"),
        symbol("Δe, u_Δ", "growth_mm", "mm"),
        symbol("p_c, p_h", "cold.chance, hot.chance", "1"),
        symbol("p", "chance", "1"),
    ],
    range: "room, piece and growth independent; the bound for both is Bonferroni's, so the true chance is no lower",
    source: &card::GUM,
    locator: "equation 10; JCGM 106:2012, equation 12 for the chances",
};

pub(super) const CHOOSE: Card = Card {
    id: "stack.choose",
    purpose: "Which shim, ring or plate to fit, by nearest target or by least risk",
    equation: "nearest target: least |E − s − e_t|; least risk: greatest p; thickness that hits the target: s_t = E − e_t",
    symbols: &[
        symbol("E", "room_mm", "mm"),
        symbol("s", "thickness of a piece", "mm"),
        symbol("s_t", "wanted_mm", "mm"),
        symbol("e_t", "target_mm", "mm"),
        symbol("p", "chance of lying inside, of each piece", "1"),
    ],
    range: "only pieces in stock that land inside; equal chances: nearest the middle of the window; then the thinner",
    source: &card::DEFINITION,
    locator: "the two rules of choice",
};

/// Lengths beyond a kilometer are a slip of the unit.
const FARTHEST_MM: f64 = 1e6;

/// How to choose among the pieces that land inside the window.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChoiceRule {
    /// The result nearest to the target. Of equals the one with the greater chance.
    NearestTarget = 0,
    /// The greatest chance of lying inside. Of equals the one nearest to the middle of the window.
    LeastRisk = 1,
}

impl ChoiceRule {
    /// What this rule chose.
    fn of<T>(self, nearest_target: T, least_risk: T) -> T {
        match self {
            Self::NearestTarget => nearest_target,
            Self::LeastRisk => least_risk,
        }
    }
}

impl fmt::Display for ChoiceRule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::NearestTarget => "nearest target",
            Self::LeastRisk => "least risk",
        })
    }
}

/// A shim, ring or plate on the list.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Thickness and its standard uncertainty, mm.
    pub thickness_mm: Reading,
    /// It can be had. What cannot is shown, but not chosen.
    pub in_stock: bool,
}

/// What a piece is chosen for, and how.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Selection {
    /// What is left with no piece in place, mm: the result of a chain without it.
    pub room_mm: Reading,
    /// End play or clearance wanted at assembly, mm; both limits.
    pub window_mm: Limits,
    /// End play or clearance aimed at, mm, within the window.
    pub target_mm: f64,
    /// Change from assembly to hot, mm; 0 with u = 0 where none is considered.
    pub growth_mm: Reading,
    /// End play or clearance wanted hot, mm; open on both sides where the hot value is only shown.
    pub hot_window_mm: Limits,
    /// Rule of the judgments.
    pub rule: Rule,
    /// Rule of the choice.
    pub by: ChoiceRule,
    /// The choice looks at cold and hot together. Otherwise the hot value is only shown beside it.
    pub hot_counts: bool,
}

/// What one piece leaves.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PieceOutcome {
    /// The piece.
    pub piece: Piece,
    /// End play or clearance at assembly against its window, mm.
    pub cold: Judgment,
    /// The same hot, mm.
    pub hot: Judgment,
    /// Distance of the cold value from the target, mm.
    pub off_target_mm: f64,
    /// Distance of the cold value from the middle of its window, mm.
    pub off_middle_mm: f64,
    /// Chance that the choice counts: of the cold window, or at least that of both windows.
    pub chance: f64,
    /// The best estimates lie inside what the choice counts: the cold window, or both.
    pub inside: bool,
}

/// Which piece to fit. Positions count from 0 in the list of pieces, and mean nothing unless a piece was found.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PieceChoice {
    /// A piece in stock lands inside.
    pub found: bool,
    /// The piece to fit by the rule asked for.
    pub position: u32,
    /// The piece by nearest target.
    pub nearest_target: u32,
    /// The piece by least risk.
    pub least_risk: u32,
    /// A piece that is not in stock would be chosen before it.
    pub missing_better: bool,
    /// Position of that piece; counts only with `missing_better`.
    pub missing: u32,
    /// Thickness that would hit the target, mm.
    pub wanted_mm: f64,
    /// Thicknesses that land inside what the choice counts, mm. Lower +∞ and upper −∞ if none can.
    pub inside_mm: Limits,
    /// Thicknesses that would be a GO at this uncertainty, mm; with the greatest uncertainty of a piece on the list.
    pub go_mm: Limits,
}

/// The piece that a rule chooses, and what it leaves.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PickedPiece {
    /// Its position in the list, from 0.
    pub position: u32,
    /// Its thickness, mm.
    pub thickness_mm: Reading,
    /// End play or clearance that it leaves at assembly, mm.
    pub result_mm: Reading,
    /// Chance that the choice counts.
    pub chance: f64,
}

/// A length rounded to a picometer, so that the last bit of a binary fraction cannot carry it across a limit or break a tie.
fn settled_mm(length_mm: f64) -> f64 {
    round_half_away(length_mm * 1e9) / 1e9
}

/// A piece weighed, without the judgments.
#[derive(Clone, Copy)]
struct Weighed {
    position: u32,
    piece: Piece,
    cold_mm: Reading,
    hot_mm: Reading,
    off_target_mm: f64,
    off_middle_mm: f64,
    chance: f64,
    inside: bool,
}

impl Weighed {
    fn compare(&self, other: &Self, by: ChoiceRule) -> Ordering {
        let target = self.off_target_mm.total_cmp(&other.off_target_mm);
        let rounded = |chance: f64| round_half_away(chance * 1e12);
        let risk = rounded(other.chance).total_cmp(&rounded(self.chance));
        let first = match by {
            ChoiceRule::NearestTarget => target.then(risk),
            ChoiceRule::LeastRisk => risk,
        };
        let middle = self.off_middle_mm.total_cmp(&other.off_middle_mm);
        let thinner = self.piece.thickness_mm.value.total_cmp(&other.piece.thickness_mm.value);
        first.then(middle).then(thinner).then(other.piece.in_stock.cmp(&self.piece.in_stock))
    }
}

/// The best of a list.
struct Survey {
    nearest_target: Option<Weighed>,
    least_risk: Option<Weighed>,
    of_all: Option<Weighed>,
    piece_u_mm: f64,
}

/// The better of a found piece and another.
fn better(found: Option<Weighed>, other: Weighed, by: ChoiceRule) -> Weighed {
    found.filter(|found| found.compare(&other, by).is_le()).unwrap_or(other)
}

impl Selection {
    /// What one piece leaves, cold and hot, judged.
    ///
    /// e = E − s, u² = u_E² + u_s²; hot: e + Δe, u² + u_Δ²; both hold with at least p = p_c + p_h − 1
    ///
    /// * `piece` — its thickness s, 0 or more
    /// * returns [`PieceOutcome`]
    /// * errors: [`Error::OutOfRange`] for a thickness, a target outside the window or an uncertainty; [`Error::Reversed`] and
    ///   [`Error::NotFinite`] for a window; [`Error::Missing`] where hot counts and has no window
    ///
    /// Source: JCGM 100:2008, equation 10; JCGM 106:2012, equation 12.
    pub fn outcome(self, piece: Piece) -> Result<PieceOutcome> {
        let selection = self.checked()?;
        let weighed = selection.weigh(0, piece)?;
        Ok(PieceOutcome {
            piece,
            cold: judge(weighed.cold_mm, selection.window_mm, self.rule)?,
            hot: judge(weighed.hot_mm, selection.hot_window_mm, self.rule)?,
            off_target_mm: weighed.off_target_mm,
            off_middle_mm: weighed.off_middle_mm,
            chance: weighed.chance,
            inside: weighed.inside,
        })
    }

    /// Which piece to fit, by the rule asked for and by the other one.
    ///
    /// nearest target: least |E − s − e_t|; least risk: greatest p; thickness that hits the target: s_t = E − e_t
    ///
    /// * `pieces` — 1 or more. Only those in stock whose result lies inside the window are chosen
    /// * returns [`PieceChoice`]; where nothing is found, it says what thickness would do
    /// * errors: as [`Selection::outcome`]; [`Error::Count`] for an empty list
    ///
    /// Source: the two rules of choice. Example (computed independently for the demonstration): a gap of 2.153 mm, u 0.010,
    /// with a gasket of u 0.028 and shims of u 0.012; 0.20 to 0.60 mm wanted, 0.36 aimed at. 1.85 leaves 0.303 and is nearest
    /// to the target; 1.70 leaves 0.453 and has the least risk.
    ///
    /// ```
    /// use trainwright::judge::{Limits, Reading, Rule};
    /// use trainwright::stack::{ChoiceRule, ChainLink, Piece, Selection, chain};
    /// let gap = ChainLink::measured(1.0, Reading::new(2.153, 0.010)?, 2.0)?;
    /// let gasket = ChainLink::measured(-1.0, Reading::new(0.0, 0.028)?, 2.0)?; // its height was in place with the gap
    /// let selection = Selection {
    ///     room_mm: chain(&[gap, gasket])?.reading_mm, window_mm: Limits::between(0.20, 0.60)?, target_mm: 0.36,
    ///     growth_mm: Reading::exact(0.0)?, hot_window_mm: Limits::new(f64::NEG_INFINITY, f64::INFINITY)?,
    ///     rule: Rule::stated_chances(0.95, 0.05)?, by: ChoiceRule::LeastRisk, hot_counts: false,
    /// };
    /// let shim = |thickness| Ok::<_, trainwright::Error>(Piece { thickness_mm: Reading::new(thickness, 0.012)?, in_stock: true });
    /// let shims = [shim(1.55)?, shim(1.70)?, shim(1.85)?, shim(2.00)?];
    /// let choice = selection.choose(&shims)?;
    /// assert_eq!((choice.least_risk, choice.nearest_target, choice.position), (1, 2, 1));
    /// let thicker = selection.outcome(shims[2])?.cold;
    /// assert!((thicker.reading.value - 0.303).abs() < 1e-12 && (thicker.chance - 0.999_342).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn choose(self, pieces: &[Piece]) -> Result<PieceChoice> {
        let selection = self.checked()?;
        let Survey { nearest_target, least_risk, of_all, piece_u_mm } = selection.survey(pieces)?;
        let chosen = self.by.of(nearest_target, least_risk);
        let at = |weighed: Option<Weighed>| weighed.map_or(0, |weighed| weighed.position);
        let go = |reading_mm: Reading, limits: Limits| {
            let u = hypot(reading_mm.u, piece_u_mm);
            judge(Reading { value: reading_mm.value, u }, limits, self.rule).map(|judgment| judgment.acceptance)
        };
        let go_cold = go(self.room_mm, selection.window_mm)?;
        let go_hot = go(selection.hot_mm(self.room_mm), selection.hot_window_mm)?;
        Ok(PieceChoice {
            found: chosen.is_some(),
            position: at(chosen),
            nearest_target: at(nearest_target),
            least_risk: at(least_risk),
            missing_better: of_all.is_some_and(|weighed| !weighed.piece.in_stock),
            missing: at(of_all),
            wanted_mm: settled_mm(self.room_mm.value - self.target_mm),
            inside_mm: selection.thickness(selection.window_mm, selection.hot_window_mm),
            go_mm: selection.thickness(go_cold, go_hot),
        })
    }

    /// The piece that [`Selection::choose`] would fit, alone and without the judgments: for columns of rooms.
    ///
    /// * `pieces` — 1 or more
    /// * returns [`PickedPiece`]
    /// * errors: as [`Selection::choose`]; [`Error::NoAnswer`] where no piece in stock lands inside
    pub fn pick(self, pieces: &[Piece]) -> Result<PickedPiece> {
        let Survey { nearest_target, least_risk, .. } = self.checked()?.survey(pieces)?;
        let Some(picked) = self.by.of(nearest_target, least_risk) else {
            return Err(Error::NoAnswer {
                name: "pieces",
                why: "none in stock lands inside the window; ask what thickness would do",
            });
        };
        let Weighed { position, piece, cold_mm, chance, .. } = picked;
        Ok(PickedPiece { position, thickness_mm: piece.thickness_mm, result_mm: cold_mm, chance })
    }

    /// The best pieces by either rule; the selection is checked.
    fn survey(&self, pieces: &[Piece]) -> Result<Survey> {
        if pieces.is_empty() {
            return Err(Error::Count { name: "pieces", count: 0, low: 1, high: u32::MAX });
        }
        let mut survey = Survey { nearest_target: None, least_risk: None, of_all: None, piece_u_mm: 0.0 };
        for (position, &piece) in (0..).zip(pieces) {
            let weighed = self.weigh(position, piece)?;
            survey.piece_u_mm = survey.piece_u_mm.max(piece.thickness_mm.u);
            if !weighed.inside {
                continue;
            }
            survey.of_all = Some(better(survey.of_all, weighed, self.by));
            if piece.in_stock {
                survey.nearest_target = Some(better(survey.nearest_target, weighed, ChoiceRule::NearestTarget));
                survey.least_risk = Some(better(survey.least_risk, weighed, ChoiceRule::LeastRisk));
            }
        }
        Ok(survey)
    }

    /// The selection, checked; its windows settled as the values are that they are compared with.
    fn checked(self) -> Result<Self> {
        for (name, length_mm) in [("room_mm", self.room_mm), ("growth_mm", self.growth_mm)] {
            within(name, length_mm.value, -FARTHEST_MM, FARTHEST_MM)?;
            within(name, length_mm.u, 0.0, FARTHEST_MM)?;
        }
        let Limits { lower, upper } = Limits::between(self.window_mm.lower, self.window_mm.upper)?;
        within("target_mm", self.target_mm, lower, upper)?;
        let hot = Limits::new(self.hot_window_mm.lower, self.hot_window_mm.upper)?;
        if self.hot_counts && hot.lower == f64::NEG_INFINITY && hot.upper == f64::INFINITY {
            return Err(Error::Missing {
                name: "hot_window_mm",
                why: "the hot value is to count in the choice: state what is wanted hot",
            });
        }
        let settled = |limits: Limits| Limits { lower: settled_mm(limits.lower), upper: settled_mm(limits.upper) };
        Ok(Self { window_mm: settled(self.window_mm), hot_window_mm: settled(hot), ..self })
    }

    fn hot_mm(&self, cold_mm: Reading) -> Reading {
        let value = settled_mm(cold_mm.value + self.growth_mm.value);
        Reading { value, u: hypot(cold_mm.u, self.growth_mm.u) }
    }

    /// The piece at this position, weighed; the selection is checked.
    fn weigh(&self, position: u32, piece: Piece) -> Result<Weighed> {
        let thickness_mm = within("thickness_mm", piece.thickness_mm.value, 0.0, FARTHEST_MM)?;
        let u = hypot(self.room_mm.u, within("thickness_mm", piece.thickness_mm.u, 0.0, FARTHEST_MM)?);
        let value = settled_mm(self.room_mm.value - thickness_mm);
        let cold_mm = Reading { value, u };
        let hot_mm = self.hot_mm(cold_mm);
        let Limits { lower, upper } = self.window_mm;
        let mut chance = chance_inside(cold_mm, self.window_mm)?;
        let mut inside = self.window_mm.holds(value);
        if self.hot_counts {
            chance = (chance + chance_inside(hot_mm, self.hot_window_mm)? - 1.0).max(0.0);
            inside &= self.hot_window_mm.holds(hot_mm.value);
        }
        Ok(Weighed {
            position,
            piece,
            cold_mm,
            hot_mm,
            off_target_mm: settled_mm(abs(value - self.target_mm)),
            off_middle_mm: settled_mm(abs(value - (lower + 0.5 * (upper - lower)))),
            chance,
            inside,
        })
    }

    /// Thicknesses whose result lies within these limits: the cold ones, and the hot ones where they count.
    fn thickness(&self, cold: Limits, hot: Limits) -> Limits {
        let room = self.room_mm.value;
        let mut range = Limits { lower: settled_mm(room - cold.upper), upper: settled_mm(room - cold.lower) };
        if self.hot_counts {
            let room = room + self.growth_mm.value;
            let (lower, upper) = (settled_mm(room - hot.upper), settled_mm(room - hot.lower));
            range = Limits { lower: range.lower.max(lower), upper: range.upper.min(upper) };
        }
        let range = Limits { lower: range.lower.max(0.0), upper: range.upper };
        if range.lower <= range.upper { range } else { Limits { lower: f64::INFINITY, upper: f64::NEG_INFINITY } }
    }
}
