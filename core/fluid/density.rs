//! Density and thermal expansion.

use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::real::{exp, ln, sqrt};

pub(super) const VOLUME_CORRECTION: Card = Card {
    id: "fluid.volume_correction",
    purpose: "Density and volume of a lubricating oil at a temperature, from its density at 15 °C",
    equation: "α = K₁/ρ₁₅, K₁ = 0.6278; VCF = exp[−α Δt (1 + 0.8 α Δt)]; ρ = ρ₁₅ VCF",
    symbols: &[
        symbol("ρ₁₅", "density_15c_kg_m3", "kg/m³"),
        symbol("Δt", "rise_k, temp_c − 15 °C", "K"),
        symbol("α", "alpha_per_k", "1/K"),
        symbol("VCF", "factor, volume at 15 °C over volume now", "1"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
    ],
    range: "density 800.9 to 1163.5 kg/m³, −50 to 150 °C; refused outside",
    source: &card::OIL_VOLUME,
    locator: "lubricating-oil group, base 15 °C",
};

pub(super) const DENSITY_15C_FROM_OBSERVED: Card = Card {
    id: "fluid.density_15c_from_observed",
    purpose: "Density at 15 °C of a lubricating oil from its density at another temperature",
    equation: "ρ₁₅ = ρ/VCF(ρ₁₅), iterated",
    symbols: &[
        symbol("ρ₁₅", "density at 15 °C", "kg/m³"),
        symbol("ρ", "density_kg_m3, at temp_c", "kg/m³"),
        symbol("VCF", "fluid.volume_correction", "1"),
    ],
    range: "as fluid.volume_correction",
    source: &card::OIL_VOLUME,
    locator: "observed to base density",
};

pub(super) const EXPANSION_FROM_15C: Card = Card {
    id: "fluid.expansion_from_15c",
    purpose: "Mean coefficient from 15 °C that says the same as one stated from another reference temperature",
    equation: "a = a₀/[1 + a₀ (15 °C − t₀)]",
    symbols: &[
        symbol("a", "coefficient from 15 °C", "1/K"),
        symbol("a₀", "expansion_per_k", "1/K"),
        symbol("t₀", "reference_c", "°C"),
    ],
    range: "as fluid.volume_factor",
    source: &card::DEFINITION,
    locator: "V₀ [1 + a₀ (t − t₀)] = V₁₅ [1 + a (t − 15 °C)]",
};

pub(super) const VOLUME_FACTOR: Card = Card {
    id: "fluid.volume_factor",
    purpose: "Volume at a temperature over volume at 15 °C",
    equation: "V/V₁₅ = 1 + a (t − 15 °C) where a is stated; else 1/VCF of the lubricating-oil group",
    symbols: &[
        symbol("a", "expansion_per_k, mean coefficient from 15 °C", "1/K"),
        symbol("t", "temp_c", "°C"),
        symbol("VCF", "fluid.volume_correction", "1"),
    ],
    range: "a 4.14e-4 to 1.674e-3 per K, −50 to 150 °C; refused outside",
    source: &card::DEFINITION,
    locator: "mean coefficient of cubic expansion",
};

pub(super) const GROWTH_ML: Card = Card {
    id: "fluid.growth_ml",
    purpose: "Change of the volume of a fluid, or what its vessel spills",
    equation: "ΔV = V (β − 3 α) Δt",
    symbols: &[
        symbol("V", "volume_ml", "mL"),
        symbol("β", "expansion_per_k", "1/K"),
        symbol("α", "vessel_linear_per_k, linear expansion of the vessel, 0 to leave it out", "1/K"),
        symbol("Δt", "rise_k", "K"),
    ],
    range: "first order: |β Δt| well below 1",
    source: &card::DEFINITION,
    locator: "cubic expansion of fluid and vessel",
};

/// Temperature to which the densities and the stated coefficients refer.
const BASE_C: f64 = 15.0;
/// The other base of the standard, 60 °F.
const BASE_60F_C: f64 = 140.0 / 9.0;
/// K₁ of the lubricating-oil group for base 15 °C, per kelvin.
const K1_15C: f64 = 0.6278;
/// K₁ of the lubricating-oil group for base 60 °F, per kelvin: 0.34878 per °F.
const K1_60F: f64 = 0.34878 * 1.8;
/// Densities at base that the lubricating-oil group covers, kg/m³.
const DENSITY_KG_M3: (f64, f64) = (800.9, 1163.5);
/// Temperatures that the standard covers, °C.
const TEMP_C: (f64, f64) = (-50.0, 150.0);
/// Coefficients that the standard accepts, 230e-6 to 930e-6 per °F, here per kelvin.
const ALPHA_PER_K: (f64, f64) = (4.14e-4, 1.674e-3);

/// What a record states of a fluid.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fluid {
    /// Density at 15 °C.
    pub density_15c_kg_m3: f64,
    /// Stated mean coefficient of volume from 15 °C; 0 where none is stated: the lubricating-oil group then gives it.
    pub expansion_per_k: f64,
    /// Kinematic viscosity at 40 °C.
    pub viscosity_40c_mm2_s: f64,
    /// Kinematic viscosity at 100 °C.
    pub viscosity_100c_mm2_s: f64,
}

impl Fluid {
    /// Whether every property lies in the range of its source, and the viscosities fall with temperature.
    pub fn check_properties(&self) -> Result<()> {
        self.volume_factor(BASE_C)?;
        self.viscosity_line()?;
        Ok(())
    }

    /// Volume at a temperature over the volume at 15 °C.
    ///
    /// V/V₁₅ = 1 + a (t − 15 °C) where a is stated; else 1/VCF of the lubricating-oil group
    ///
    /// * `temp_c` — t, °C, −50 to 150
    /// * returns V/V₁₅
    /// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
    ///
    /// Source: definition of the mean coefficient, or API MPMS chapter 11.1 (from memory). Example: a coefficient of
    /// 7.8e-4 per K makes 2.496 % more volume of 15 °C fluid at 47 °C.
    ///
    /// ```
    /// use trainwright::fluid::Fluid;
    /// let alder = Fluid {
    ///     density_15c_kg_m3: 843.0, expansion_per_k: 7.8e-4, viscosity_40c_mm2_s: 27.4, viscosity_100c_mm2_s: 5.6,
    /// };
    /// assert!((alder.volume_factor(47.0)? - 1.02496).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn volume_factor(&self, temp_c: f64) -> Result<f64> {
        if self.states_expansion()? {
            within("temp_c", temp_c, TEMP_C.0, TEMP_C.1)?;
            Ok(1.0 + self.expansion_per_k * (temp_c - BASE_C))
        } else {
            Ok(1.0 / volume_correction(self.density_15c_kg_m3, temp_c)?.factor)
        }
    }

    /// Temperature at which the volume is this many times the volume at 15 °C: [`Fluid::volume_factor`] solved for t.
    ///
    /// With the lubricating-oil group, x = α Δt = 2 ln F / [1 + √(1 + 3.2 ln F)], F = V/V₁₅.
    pub fn temp_for_volume_factor(&self, factor: f64) -> Result<f64> {
        positive("factor", factor)?;
        let rise_k = if self.states_expansion()? {
            (factor - 1.0) / self.expansion_per_k
        } else {
            let alpha = volume_correction(self.density_15c_kg_m3, BASE_C)?.alpha_per_k;
            let root = sqrt((1.0 + 3.2 * ln(factor)).max(0.0));
            2.0 * ln(factor) / (1.0 + root) / alpha
        };
        within("temp_c", BASE_C + rise_k, TEMP_C.0, TEMP_C.1)
    }

    /// Density at a temperature, ρ = ρ₁₅ V₁₅/V, kg/m³. See [`Fluid::volume_factor`].
    pub fn density(&self, temp_c: f64) -> Result<f64> {
        Ok(self.density_15c_kg_m3 / self.volume_factor(temp_c)?)
    }

    /// Slope of the volume factor, 1/K.
    pub(super) fn volume_factor_per_k(&self, temp_c: f64) -> Result<f64> {
        if self.states_expansion()? {
            return Ok(self.expansion_per_k);
        }
        let VolumeCorrection { alpha_per_k, rise_k, factor, .. } = volume_correction(self.density_15c_kg_m3, temp_c)?;
        Ok(alpha_per_k * (1.0 + 1.6 * alpha_per_k * rise_k) / factor)
    }

    /// Whether the coefficient is stated, after a check of it and of the density.
    pub(super) fn states_expansion(&self) -> Result<bool> {
        within("density_15c_kg_m3", self.density_15c_kg_m3, DENSITY_KG_M3.0, DENSITY_KG_M3.1)?;
        if self.expansion_per_k == 0.0 {
            return Ok(false);
        }
        within("expansion_per_k", self.expansion_per_k, ALPHA_PER_K.0, ALPHA_PER_K.1)?;
        Ok(true)
    }
}

/// Answer of the volume correction, with what it was computed from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeCorrection {
    /// Coefficient of volume at base.
    pub alpha_per_k: f64,
    /// Temperature above base.
    pub rise_k: f64,
    /// Volume correction factor: volume at base over volume now, density now over density at base.
    pub factor: f64,
    /// Density now.
    pub density_kg_m3: f64,
}

/// Density and volume of a lubricating oil at a temperature, from its density at 15 °C.
///
/// α = 0.6278/ρ₁₅; VCF = exp[−α Δt (1 + 0.8 α Δt)]; ρ = ρ₁₅ VCF
///
/// * `density_15c_kg_m3` — ρ₁₅, kg/m³, 800.9 to 1163.5; `temp_c` — °C, −50 to 150
/// * returns α, Δt, VCF = V₁₅/V, and ρ
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
///
/// Source: API MPMS chapter 11.1-2004 / ASTM D1250-04, lubricating-oil group, simple form without the shift of the
/// temperature scale, which changes the fifth decimal (constants from memory). Example: 850 kg/m³ at −20 °C has
/// VCF 1.025639.
///
/// ```
/// let cold = trainwright::fluid::volume_correction(850.0, -20.0)?;
/// assert!((cold.factor - 1.025639).abs() < 1e-6);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn volume_correction(density_15c_kg_m3: f64, temp_c: f64) -> Result<VolumeCorrection> {
    within("density_15c_kg_m3", density_15c_kg_m3, DENSITY_KG_M3.0, DENSITY_KG_M3.1)?;
    within("temp_c", temp_c, TEMP_C.0, TEMP_C.1)?;
    correct(density_15c_kg_m3, K1_15C / density_15c_kg_m3, temp_c - BASE_C)
}

/// The same from the density at 60 °F.
///
/// α = 0.34878/ρ₆₀ per °F; VCF = exp[−α Δt (1 + 0.8 α Δt)]; ρ = ρ₆₀ VCF
///
/// * `density_60f_kg_m3` — ρ₆₀, kg/m³, 800.9 to 1163.5; `temp_c` — °C, −50 to 150
/// * returns α (per K), Δt (K above 60 °F), VCF = V₆₀/V, and ρ
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
///
/// Source: as [`volume_correction`]. Example: 870 kg/m³ at 200 °F has VCF 0.943041.
///
/// ```
/// let hot = trainwright::fluid::volume_correction_60f(870.0, trainwright::units::f_to_c(200.0))?;
/// assert!((hot.factor - 0.943041).abs() < 1e-6);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn volume_correction_60f(density_60f_kg_m3: f64, temp_c: f64) -> Result<VolumeCorrection> {
    within("density_60f_kg_m3", density_60f_kg_m3, DENSITY_KG_M3.0, DENSITY_KG_M3.1)?;
    within("temp_c", temp_c, TEMP_C.0, TEMP_C.1)?;
    correct(density_60f_kg_m3, K1_60F / density_60f_kg_m3, temp_c - BASE_60F_C)
}

fn correct(base_density_kg_m3: f64, alpha_per_k: f64, rise_k: f64) -> Result<VolumeCorrection> {
    let factor = correction_factor(alpha_per_k, rise_k)?;
    Ok(VolumeCorrection { alpha_per_k, rise_k, factor, density_kg_m3: base_density_kg_m3 * factor })
}

/// Volume correction factor for a coefficient, whatever group of oils it comes from.
///
/// VCF = exp[−α Δt (1 + 0.8 α Δt)]
///
/// * `alpha_per_k` — α at base, 1/K, 4.14e-4 to 1.674e-3; `rise_k` — Δt above base, K, −100 to 200
/// * returns VCF = V at base over V now
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
///
/// Source: API MPMS chapter 11.1-2004 / ASTM D1250-04 (from memory). Example: a fuel oil of 992 kg/m³ at 15 °C,
/// α = 186.9696/ρ² + 0.4862/ρ, has VCF 0.9857 at 36 °C (table 54B).
///
/// ```
/// let alpha = 186.9696 / (992.0 * 992.0) + 0.4862 / 992.0;
/// assert!((trainwright::fluid::correction_factor(alpha, 21.0)? - 0.9857).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn correction_factor(alpha_per_k: f64, rise_k: f64) -> Result<f64> {
    within("alpha_per_k", alpha_per_k, ALPHA_PER_K.0, ALPHA_PER_K.1)?;
    within("rise_k", rise_k, -100.0, 200.0)?;
    Ok(factor_of(alpha_per_k * rise_k))
}

fn factor_of(x: f64) -> f64 {
    exp(-x * (1.0 + 0.8 * x))
}

/// Density at 15 °C of a lubricating oil whose density was measured at another temperature.
///
/// ρ₁₅ = ρ/VCF(ρ₁₅), iterated
///
/// * `density_kg_m3` — ρ as measured, kg/m³; `temp_c` — °C, −50 to 150
/// * returns ρ₁₅, kg/m³, 800.9 to 1163.5
/// * errors: [`crate::Error::OutOfRange`] also where ρ₁₅ leaves the range of the group
///
/// Source: as [`volume_correction`]. Example: 820 kg/m³ at 80 °C is 861.329 kg/m³ at 15 °C.
///
/// ```
/// assert!((trainwright::fluid::density_15c_from_observed(820.0, 80.0)? - 861.329).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn density_15c_from_observed(density_kg_m3: f64, temp_c: f64) -> Result<f64> {
    within("density_kg_m3", density_kg_m3, 0.5 * DENSITY_KG_M3.0, 2.0 * DENSITY_KG_M3.1)?;
    within("temp_c", temp_c, TEMP_C.0, TEMP_C.1)?;
    let rise_k = temp_c - BASE_C;
    let mut base = density_kg_m3;
    // The correction shrinks tenfold a step; it stops changing well before the last.
    for _ in 0..30 {
        base = density_kg_m3 / factor_of(K1_15C / base * rise_k);
    }
    within("density_15c_kg_m3", base, DENSITY_KG_M3.0, DENSITY_KG_M3.1)
}

/// Mean coefficient from 15 °C that says the same as one stated from another reference temperature.
///
/// V = V₀ [1 + a₀ (t − t₀)] = V₁₅ [1 + a (t − 15 °C)]; a = a₀/[1 + a₀ (15 °C − t₀)]
///
/// * `expansion_per_k` — a₀, 1/K, 4.14e-4 to 1.674e-3; `reference_c` — t₀, °C, −50 to 150
/// * returns a, 1/K
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
///
/// Source: algebra. Example: 7.8e-4 per K stated from 20 °C is 7.8305e-4 from 15 °C.
///
/// ```
/// assert!((trainwright::fluid::expansion_from_15c(7.8e-4, 20.0)? - 7.8305e-4).abs() < 1e-8);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn expansion_from_15c(expansion_per_k: f64, reference_c: f64) -> Result<f64> {
    within("expansion_per_k", expansion_per_k, ALPHA_PER_K.0, ALPHA_PER_K.1)?;
    within("reference_c", reference_c, TEMP_C.0, TEMP_C.1)?;
    Ok(expansion_per_k / (1.0 + expansion_per_k * (BASE_C - reference_c)))
}

/// A volume that warms, and the vessel around it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growth {
    /// Volume before.
    pub volume_ml: f64,
    /// Coefficient of volume of the fluid.
    pub expansion_per_k: f64,
    /// Coefficient of length of the vessel; 0 leaves the vessel out.
    pub vessel_linear_per_k: f64,
    /// Rise of temperature; negative when it cools.
    pub rise_k: f64,
}

/// Change of volume of a fluid, less the growth of its vessel.
///
/// ΔV = V (β − 3 α) Δt
///
/// * `growth` — V, mL, above 0; β, 1/K, above 0; α, 1/K, 0 or more; Δt, K
/// * returns ΔV, mL
/// * errors: [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
///
/// Source: definition of cubic expansion, first order. Example: 9 L at 7.2e-4 per K over 60 K grow by 388.8 mL.
///
/// ```
/// use trainwright::fluid::{Growth, growth_ml};
/// let grown = growth_ml(Growth { volume_ml: 9000.0, expansion_per_k: 7.2e-4, vessel_linear_per_k: 0.0, rise_k: 60.0 })?;
/// assert!((grown - 388.8).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn growth_ml(growth: Growth) -> Result<f64> {
    let Growth { volume_ml, expansion_per_k, vessel_linear_per_k, rise_k } = growth;
    positive("volume_ml", volume_ml)?;
    within("expansion_per_k", expansion_per_k, f64::MIN_POSITIVE, 0.01)?;
    within("vessel_linear_per_k", vessel_linear_per_k, 0.0, 0.001)?;
    finite("rise_k", rise_k)?;
    Ok(volume_ml * (expansion_per_k - 3.0 * vessel_linear_per_k) * rise_k)
}
