//! What warming up does to an end play: the aluminum case outgrows the steel train.

use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::{Budget, Reading, propagate};

pub(super) const GROWN: Card = Card {
    id: "stack.grown",
    purpose: "Change of an end play from the reference temperature to a hot one",
    equation: "Δe = α_case L_case (t − t_ref) − α_train L_train (t + Δt − t_ref)",
    symbols: &[
        symbol("Δe", "growth_mm", "mm"),
        symbol("α_case, α_train", "case_expansion_per_k, train_expansion_per_k", "1/K"),
        symbol("L_case, L_train", "case_length_mm, train_length_mm", "mm"),
        symbol("t", "temp_c of the case", "°C"),
        symbol("Δt", "train_hotter_k", "K"),
        symbol("t_ref", "reference_c", "°C"),
    ],
    range: "case and train each at one temperature, expansion proportional to it; parts free to grow",
    source: &card::DEFINITION,
    locator: "linear expansion ΔL = α L Δt of case and train",
};

/// The lengths that stand against each other along the axis, and how they grow.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxialGrowth {
    /// Length of the case between the two faces of the end play, mm.
    pub case_length_mm: Reading,
    /// Length of the parts between the same faces, mm.
    pub train_length_mm: Reading,
    /// Expansion of the case, 1/K.
    pub case_expansion_per_k: Reading,
    /// Expansion of the parts, 1/K.
    pub train_expansion_per_k: Reading,
    /// Temperature at which the cold end play holds, °C.
    pub reference_c: f64,
}

/// Change of the end play, and what made it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GrownPlay {
    /// AxialGrowth of the case, mm.
    pub case_mm: f64,
    /// AxialGrowth of the parts, mm.
    pub train_mm: f64,
    /// Case less parts: what the end play gains, mm; negative where it loses.
    pub growth_mm: Reading,
    /// Where its uncertainty comes from: length of case, of train, expansion of case, of train, temperature, difference.
    pub budget: Budget,
}

impl AxialGrowth {
    /// What the end play gains from the reference temperature to a hot one.
    ///
    /// Δe = α_case L_case (t − t_ref) − α_train L_train (t + Δt − t_ref)
    ///
    /// * `temp_c` — t of the case, −100 to 400 °C; `train_hotter_k` — Δt, how much hotter the parts are, −300 to 300 K: 0 once
    ///   the unit is soaked through, above 0 while it warms up or after a hard pull
    /// * returns [`GrownPlay`]
    /// * errors: [`crate::Error::NotFinite`], [`crate::Error::NotPositive`] for a length, [`crate::Error::OutOfRange`]
    ///
    /// Source: linear expansion. Example (computed): an aluminum case 310 mm long, 23·10⁻⁶ 1/K, on a steel train, 11.5·10⁻⁶ 1/K,
    /// gains 0.25 mm from 20 to 90 °C.
    ///
    /// ```
    /// use trainwright::judge::Reading;
    /// use trainwright::stack::AxialGrowth;
    /// let growth = AxialGrowth {
    ///     case_length_mm: Reading::exact(310.0)?, train_length_mm: Reading::exact(310.0)?,
    ///     case_expansion_per_k: Reading::rectangular(23e-6, 1e-6)?, train_expansion_per_k: Reading::rectangular(11.5e-6, 0.5e-6)?,
    ///     reference_c: 20.0,
    /// };
    /// let hot = growth.grown(Reading::exact(90.0)?, Reading::exact(0.0)?)?;
    /// assert!((hot.growth_mm.value - 0.249_55).abs() < 1e-9);
    /// assert!((hot.growth_mm.u - 0.0140).abs() < 5e-5); // the coefficients alone
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn grown(self, temp_c: Reading, train_hotter_k: Reading) -> Result<GrownPlay> {
        let Self { case_length_mm, train_length_mm, case_expansion_per_k, train_expansion_per_k, .. } = self;
        let (case_mm, train_mm) = self.parts_mm(temp_c.value, train_hotter_k.value)?;
        let inputs =
            [case_length_mm, train_length_mm, case_expansion_per_k, train_expansion_per_k, temp_c, train_hotter_k];
        let change = propagate(inputs, |[l_case, l_train, a_case, a_train, t, hotter]| {
            let warmed_k = t - self.reference_c;
            Ok(a_case * l_case * warmed_k - a_train * l_train * (warmed_k + hotter))
        })?;
        Ok(GrownPlay { case_mm, train_mm, growth_mm: change.reading, budget: change.budget })
    }

    /// Best estimate of [`AxialGrowth::grown`], mm, for columns of temperatures.
    pub fn growth_mm(self, temp_c: f64, train_hotter_k: f64) -> Result<f64> {
        let (case_mm, train_mm) = self.parts_mm(temp_c, train_hotter_k)?;
        Ok(case_mm - train_mm)
    }

    fn parts_mm(self, temp_c: f64, train_hotter_k: f64) -> Result<(f64, f64)> {
        let warmed_k = within("temp_c", temp_c, -100.0, 400.0)? - within("reference_c", self.reference_c, -40.0, 60.0)?;
        let hotter_k = within("train_hotter_k", train_hotter_k, -300.0, 300.0)?;
        let expansion = |name, value| within(name, value, 0.0, 1e-3);
        let case_length_mm = positive("case_length_mm", self.case_length_mm.value)?;
        let train_length_mm = positive("train_length_mm", self.train_length_mm.value)?;
        Ok((
            expansion("case_expansion_per_k", self.case_expansion_per_k.value)? * case_length_mm * warmed_k,
            expansion("train_expansion_per_k", self.train_expansion_per_k.value)?
                * train_length_mm
                * (warmed_k + hotter_k),
        ))
    }
}
