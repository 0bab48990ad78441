//! Damage of a duty by Miner's rule, with the interval that slope and reference leave.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, ordered, positive, within};
use crate::real::{abs, ln, powf};

pub(super) const DAMAGE: Card = Card {
    id: "duty.damage",
    purpose: "Damage that a duty collects on a line of slope m, stage by stage",
    equation: "D = Σ n_i/N_i, N_i = N_ref·(T_ref/T_i)^m",
    symbols: &[
        symbol("D", "total", "1"),
        symbol("n_i, T_i", "contacts, torque_nm, of a stage", "1, N·m"),
        symbol("N_ref", "reference_contacts", "1"),
        symbol("T_ref", "reference_nm", "N·m"),
        symbol("m", "slope", "1"),
    ],
    range: "linear, no endurance limit, the order of loads does not matter. It ranks; it does not promise a life: 1 is where the \
        reference line is met, and two equal parts differ by more than that",
    source: &card::LINEAR_DAMAGE,
    locator: "linear summation of cycle ratios",
};

pub(super) const DAMAGE_INTERVAL: Card = Card {
    id: "duty.damage_interval",
    purpose: "Least and greatest damage of a duty where slope and reference are only known within limits",
    equation: "D = Σ (n_i/N_ref)·(T_i/T_ref)^m over m_1 ≤ m ≤ m_2, T_1 ≤ T_ref ≤ T_2",
    symbols: &[
        symbol("D", "lower, upper", "1"),
        symbol("n_i, T_i", "contacts, torque_nm, of a stage", "1, N·m"),
        symbol("N_ref", "reference_contacts", "1"),
        symbol("m_1, m_2", "slope_low, slope_high", "1"),
        symbol("T_1, T_2", "reference_low_nm, reference_high_nm", "N·m"),
        symbol("m, T_ref", "slope_at_lower, slope_at_upper; the reference is highest at the lower end", "1, N·m"),
    ],
    range: "D falls with T_ref and is a sum of exponentials in m, so its greatest value lies at an end of the slopes and its least \
        where its derivative vanishes, or at an end",
    source: &card::DEFINITION,
    locator: "convex in the slope",
};

pub(super) const FROM_RATING: Card = Card {
    id: "duty.from_rating",
    purpose: "Line of damage of a gear set from the rating of its unit",
    equation: "T_ref = f·s·T_rated",
    symbols: &[
        symbol("T_ref", "reference_nm", "N·m"),
        symbol("f", "over_rated, torque that the reference contacts allow over the torque at rating", "1"),
        symbol("s", "worst_share, greatest sun torque per input torque of the forward gears", "1"),
        symbol("T_rated", "rated_nm, at the input", "N·m"),
    ],
    range: "a rule of the record, and as good as it: it compares trucks with one another",
    source: &card::DEFINITION,
    locator: "reference of the record",
};

/// Life of a part against its torque: a straight line between the logarithms.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamageLine {
    /// Slope m: life falls with the m-th power of torque; 1 to 20.
    pub slope: f64,
    /// Torque at which the reference number of contacts is reached, N·m.
    pub reference_nm: f64,
    /// Reference number of contacts (or load cycles, or turns).
    pub reference_contacts: f64,
}

/// One stage of a duty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DutyStage {
    /// Contacts, load cycles or turns in it.
    pub contacts: f64,
    /// Torque in it, N·m; the sign does not matter.
    pub torque_nm: f64,
}

/// Damage of a duty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Damage {
    /// Sum over the stages; 1 where the reference line is met.
    pub total: f64,
    /// Damage of the stage that does most.
    pub greatest: f64,
    /// That stage.
    pub governing: u32,
    /// Its part of the sum, 0 to 1.
    pub governing_share: f64,
    /// Contacts of all stages.
    pub contacts: f64,
}

/// What is known of a line of damage.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamageRange {
    /// Least slope.
    pub slope_low: f64,
    /// Greatest slope.
    pub slope_high: f64,
    /// Least reference torque, N·m.
    pub reference_low_nm: f64,
    /// Greatest reference torque, N·m.
    pub reference_high_nm: f64,
    /// Reference number of contacts.
    pub reference_contacts: f64,
}

/// Least and greatest damage.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamageInterval {
    /// Least damage.
    pub lower: f64,
    /// Greatest damage.
    pub upper: f64,
    /// Slope at the least damage.
    pub slope_at_lower: f64,
    /// Slope at the greatest damage.
    pub slope_at_upper: f64,
}

impl DamageLine {
    /// The line, if it can be one.
    ///
    /// * `slope` — 1 to 20; `reference_nm`, `reference_contacts` — above 0
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    pub fn checked(self) -> Result<Self> {
        within("slope", self.slope, 1.0, 20.0)?;
        positive("reference_nm", self.reference_nm)?;
        positive("reference_contacts", self.reference_contacts)?;
        Ok(self)
    }

    /// Line of damage of a gear set from the rating of its unit.
    ///
    /// T_ref = f·s·T_rated
    ///
    /// * `slope`, `reference_contacts` — as [`checked`](Self::checked); `over_rated` — f, above 0 to 20
    /// * `worst_share` — s, greatest torque on the sun per input torque of the forward gears, above 0; `rated_nm` — above 0
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
    ///
    /// Source: the record's rule (definition). Example: second set of the demonstration's first variant, 2.0 · 0.6356 · 640 N·m.
    ///
    /// ```
    /// let line = trainwright::duty::DamageLine::from_rating(6.5, 1e6, 2.0, 0.635_581_711, 640.0)?;
    /// assert!((line.reference_nm - 813.54).abs() < 0.01);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn from_rating(
        slope: f64,
        reference_contacts: f64,
        over_rated: f64,
        worst_share: f64,
        rated_nm: f64,
    ) -> Result<Self> {
        let factor = within("over_rated", positive("over_rated", over_rated)?, 0.0, 20.0)?;
        let at_rating = positive("worst_share", worst_share)? * positive("rated_nm", rated_nm)?;
        Self { slope, reference_nm: factor * at_rating, reference_contacts }.checked()
    }

    /// Damage that a duty collects, stage by stage.
    ///
    /// D = Σ n_i/N_i, N_i = N_ref·(T_ref/T_i)^m
    ///
    /// * `stages` — n_i 0 or more, T_i of any sign, one stage or more
    /// * returns [`Damage`]; a duty without contacts or torque does none
    /// * errors: [`Error::Count`] without stages; [`Error::NotFinite`], [`Error::OutOfRange`] for a stage; as
    ///   [`checked`](Self::checked)
    ///
    /// Source: M. A. Miner, Cumulative damage in fatigue, 1945 (from memory). Example: with slope 3 and the reference at a
    /// million turns a tenth of that at double torque and half of it at the reference make 0.8 + 0.5.
    ///
    /// ```
    /// use trainwright::duty::{DamageLine, DutyStage};
    /// let line = DamageLine { slope: 3.0, reference_nm: 100.0, reference_contacts: 1e6 };
    /// let stages = [(1e5, 200.0), (5e5, 100.0)].map(|(contacts, torque_nm)| DutyStage { contacts, torque_nm });
    /// assert!((line.damage(&stages)?.total - 1.3).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn damage(self, stages: &[DutyStage]) -> Result<Damage> {
        let line = self.checked()?;
        counted(stages)?;
        let mut damage = Damage { total: 0.0, greatest: 0.0, governing: 0, governing_share: 0.0, contacts: 0.0 };
        for (number, stage) in (0..).zip(stages) {
            let of_stage = stage.share_of(line)?;
            damage.total += of_stage;
            damage.contacts += stage.contacts;
            if of_stage > damage.greatest {
                (damage.greatest, damage.governing) = (of_stage, number);
            }
        }
        if damage.total > 0.0 {
            damage.governing_share = damage.greatest / damage.total;
        }
        Ok(damage)
    }
}

impl DutyStage {
    fn share_of(self, line: DamageLine) -> Result<f64> {
        let contacts = within("contacts", self.contacts, 0.0, 1e15)?;
        let ratio = abs(within("torque_nm", self.torque_nm, -1e7, 1e7)?) / line.reference_nm;
        if contacts == 0.0 || ratio == 0.0 {
            return Ok(0.0);
        }
        Ok(contacts / line.reference_contacts * powf(ratio, line.slope))
    }
}

fn counted(stages: &[DutyStage]) -> Result<()> {
    if stages.is_empty() {
        return Err(Error::Count { name: "stages", count: 0, low: 1, high: u32::MAX });
    }
    Ok(())
}

/// Least and greatest damage of a duty where slope and reference are only known within limits.
///
/// D = Σ (n_i/N_ref)·(T_i/T_ref)^m over m_1 ≤ m ≤ m_2, T_1 ≤ T_ref ≤ T_2
///
/// * `stages` — as [`DamageLine::damage`]; `known` — limits of slope (1 to 20) and reference torque (above 0)
/// * returns [`DamageInterval`]
/// * errors: [`Error::Reversed`] for limits the wrong way round; as [`DamageLine::damage`]
///
/// Source: convex in the slope (derived). Example: a duty below the reference does least damage on the steepest line.
///
/// ```
/// use trainwright::duty::{DamageRange, DutyStage, damage_interval};
/// let stages = [DutyStage { contacts: 1e6, torque_nm: 50.0 }];
/// let known = DamageRange {
///     slope_low: 5.0, slope_high: 8.0, reference_low_nm: 100.0, reference_high_nm: 100.0, reference_contacts: 1e6,
/// };
/// let interval = damage_interval(&stages, known)?;
/// assert_eq!((interval.lower, interval.upper), (0.003_906_25, 0.031_25)); // 2⁻⁸, 2⁻⁵
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn damage_interval(stages: &[DutyStage], known: DamageRange) -> Result<DamageInterval> {
    let (low, high) = ordered("slope_low, slope_high", known.slope_low, known.slope_high)?;
    let (weak, strong) =
        ordered("reference_low_nm, reference_high_nm", known.reference_low_nm, known.reference_high_nm)?;
    let on = |slope: f64, reference_nm: f64| {
        DamageLine { slope, reference_nm, reference_contacts: known.reference_contacts }.damage(stages)
    };
    let [flat, steep] = [on(low, weak)?.total, on(high, weak)?.total];
    let (upper, slope_at_upper) = if flat >= steep { (flat, low) } else { (steep, high) };
    let slope_at_lower = flattest(stages, low, high, strong);
    Ok(DamageInterval { lower: on(slope_at_lower, strong)?.total, upper, slope_at_lower, slope_at_upper })
}

/// The slope between two at which the damage is least: its derivative rises with the slope.
fn flattest(stages: &[DutyStage], mut low: f64, mut high: f64, reference_nm: f64) -> f64 {
    let rises_at = |slope: f64| {
        let terms = stages.iter().map(|stage| (stage.contacts, abs(stage.torque_nm) / reference_nm));
        let loaded = terms.filter(|&(contacts, ratio)| contacts > 0.0 && ratio > 0.0);
        loaded.map(|(contacts, ratio)| contacts * powf(ratio, slope) * ln(ratio)).sum::<f64>() > 0.0
    };
    if rises_at(low) {
        return low;
    }
    if !rises_at(high) {
        return high;
    }
    for _ in 0..60 {
        let middle = low + (high - low) / 2.0;
        if rises_at(middle) { high = middle } else { low = middle }
    }
    low
}
