//! Mixing: what follows from the parts, and what does not.

use super::density::Fluid;
use super::viscosity::{log_log, undo_log_log};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::powf;

pub(super) const BLEND: Card = Card {
    id: "fluid.blend",
    purpose: "Density, expansion and viscosities of a mixture of fluids",
    equation: "ρ = Σ vᵢ ρᵢ; a = Σ vᵢ aᵢ; ν at 40 °C and at 100 °C by fluid.blend_viscosity; vᵢ = Vᵢ/ΣV",
    symbols: &[
        symbol("vᵢ", "share of portion i by volume", "1"),
        symbol("ρ", "density_15c_kg_m3", "kg/m³"),
        symbol("a", "expansion_per_k", "1/K"),
        symbol("ν", "viscosity_40c_mm2_s, viscosity_100c_mm2_s", "mm²/s"),
    ],
    range: "fluids that dissolve in one another without shrinking; volumes at one temperature",
    source: &card::DEFINITION,
    locator: "volumes and masses add",
};

pub(super) const BLEND_VISCOSITY: Card = Card {
    id: "fluid.blend_viscosity",
    purpose: "Kinematic viscosity of a mixture at the temperature of the parts' viscosities",
    equation: "lg lg(ν + 0.7) = Σ vᵢ lg lg(νᵢ + 0.7)",
    symbols: &[symbol("ν", "viscosity_mm2_s", "mm²/s"), symbol("vᵢ", "share of portion i by volume", "1")],
    range: "2 to 2e7 mm²/s; an estimate: viscosity-index improvers do not mix exactly so",
    source: &card::OIL_BLEND,
    locator: "blending at constant temperature",
};

pub(super) const BLEND_FRICTION: Card = Card {
    id: "fluid.blend_friction",
    purpose: "Friction of a mixture: refused, because it does not follow from the parts",
    equation: "one portion: μ = μ₁; more: no answer",
    symbols: &[symbol("μ", "friction of the plates in this fluid", "1")],
    range: "a single portion",
    source: &card::PRACTICE,
    locator: "additives compete for the surface of the plate",
};

pub(super) const OLD_SHARE: Card = Card {
    id: "fluid.old_share",
    purpose: "Share of the first fluid left after equal partial changes",
    equation: "s = (1 − f)^n",
    symbols: &[symbol("s", "share by volume", "1"), symbol("f", "changed_fraction", "1"), symbol("n", "changes", "1")],
    range: "old and new fluid fully mixed between changes",
    source: &card::DEFINITION,
    locator: "repeated dilution",
};

/// A volume of one fluid in a mixture.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Portion {
    /// The fluid.
    pub fluid: Fluid,
    /// Its volume; all portions at one temperature.
    pub volume_ml: f64,
}

/// A volume of a fluid of known viscosity.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityPortion {
    /// Kinematic viscosity; all portions at one temperature.
    pub viscosity_mm2_s: f64,
    /// Its volume.
    pub volume_ml: f64,
}

/// A volume of a fluid of known friction.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrictionPortion {
    /// Coefficient of friction of the plates in this fluid alone.
    pub friction: f64,
    /// Its volume.
    pub volume_ml: f64,
}

/// The mixture of some portions, as a fluid.
///
/// ρ = Σ vᵢ ρᵢ; a = Σ vᵢ aᵢ; viscosities by [`blend_viscosity`]; vᵢ = Vᵢ/ΣV
///
/// * `portions` — one or more; volumes, mL, above 0, at one temperature
/// * returns the mixture; its friction does not follow: see [`blend_friction`]
/// * errors: as the fluids' own; [`Error::Count`] for no portion; [`Error::Inconsistent`] where only some portions state
///   their expansion
///
/// Source: definition of density; ASTM D7152 for the viscosities. Example: equal volumes of 843 and 856 kg/m³ make
/// 849.5 kg/m³.
///
/// ```
/// use trainwright::fluid::{Fluid, Portion, blend};
/// let thin = Fluid {
///     density_15c_kg_m3: 843.0, expansion_per_k: 7.8e-4, viscosity_40c_mm2_s: 27.4, viscosity_100c_mm2_s: 5.6,
/// };
/// let thick = Fluid {
///     density_15c_kg_m3: 856.0, expansion_per_k: 7.3e-4, viscosity_40c_mm2_s: 35.8, viscosity_100c_mm2_s: 7.5,
/// };
/// let half = blend(&[Portion { fluid: thin, volume_ml: 500.0 }, Portion { fluid: thick, volume_ml: 500.0 }])?;
/// assert!((half.density_15c_kg_m3 - 849.5).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn blend(portions: &[Portion]) -> Result<Fluid> {
    let stated = portions.iter().filter(|portion| portion.fluid.expansion_per_k != 0.0).count();
    if stated != 0 && stated != portions.len() {
        return Err(Error::Inconsistent {
            name: "expansion_per_k",
            why: "stated for some portions only; state it for all, or for none and take the lubricating-oil group",
        });
    }
    for portion in portions {
        portion.fluid.check_properties()?;
    }
    let mean = |of: fn(&Fluid) -> f64| mean_by_volume(portions, |portion| (of(&portion.fluid), portion.volume_ml));
    let viscosity = |of: fn(&Fluid) -> f64| {
        mean_by_volume(portions, |portion| (log_log(of(&portion.fluid)), portion.volume_ml)).map(undo_log_log)
    };
    Ok(Fluid {
        density_15c_kg_m3: mean(|fluid| fluid.density_15c_kg_m3)?,
        expansion_per_k: mean(|fluid| fluid.expansion_per_k)?,
        viscosity_40c_mm2_s: viscosity(|fluid| fluid.viscosity_40c_mm2_s)?,
        viscosity_100c_mm2_s: viscosity(|fluid| fluid.viscosity_100c_mm2_s)?,
    })
}

/// Kinematic viscosity of a mixture, at the one temperature of its parts' viscosities.
///
/// lg lg(ν + 0.7) = Σ vᵢ lg lg(νᵢ + 0.7), vᵢ = Vᵢ/ΣV
///
/// * `portions` — one or more; νᵢ, mm²/s, 2 to 2e7; volumes, mL, above 0
/// * returns ν, mm²/s, between the least and the greatest of the parts
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`], [`Error::Count`] for no portion
///
/// Source: ASTM D7152, blending at constant temperature by volume (its scope read, its equation from memory). It estimates;
/// the standard excludes strongly non-Newtonian parts such as viscosity-index improvers. Example: equal volumes of 10 and
/// 100 mm²/s make 26.6 mm²/s (computed by hand).
///
/// ```
/// use trainwright::fluid::{ViscosityPortion, blend_viscosity};
/// let mixture = blend_viscosity(&[
///     ViscosityPortion { viscosity_mm2_s: 10.0, volume_ml: 1.0 },
///     ViscosityPortion { viscosity_mm2_s: 100.0, volume_ml: 1.0 },
/// ])?;
/// assert!((mixture - 26.6).abs() < 0.05);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn blend_viscosity(portions: &[ViscosityPortion]) -> Result<f64> {
    for portion in portions {
        within("viscosity_mm2_s", portion.viscosity_mm2_s, 2.0, 2e7)?;
    }
    mean_by_volume(portions, |portion| (log_log(portion.viscosity_mm2_s), portion.volume_ml)).map(undo_log_log)
}

/// Friction of a mixture: refused, because it does not follow from the parts.
///
/// Friction comes from additives that compete for the plate's surface; a mixture can lie below both of its parts, and its
/// slope with speed (which decides about shudder) is neither's.
///
/// * `portions` — one or more; friction above 0; volumes, mL, above 0
/// * returns the friction of a single portion
/// * errors: [`Error::NoAnswer`] for more than one, even with equal friction
///
/// Source: common practice, no source. What would do: one fluid from the list approved for the variant, after enough
/// changes ([`old_share`]); or friction measured on this very mixture.
pub fn blend_friction(portions: &[FrictionPortion]) -> Result<f64> {
    for portion in portions {
        positive("friction", portion.friction)?;
        positive("volume_ml", portion.volume_ml)?;
    }
    match portions {
        [] => Err(no_portion()),
        [only] => Ok(only.friction),
        _ => Err(Error::NoAnswer {
            name: "friction",
            why: "the friction of a mixture does not follow from its parts; fill with one fluid approved for the variant, \
                  or measure the friction of this mixture",
        }),
    }
}

/// Share of the first fluid left after equal partial changes.
///
/// s = (1 − f)^n
///
/// * `changed_fraction` — f, share of the whole volume changed each time, 0 to 1; `changes` — n
/// * returns s, 0 to 1
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: algebra of repeated dilution; old and new fully mixed between changes. Example: three changes of half the fluid
/// leave an eighth.
///
/// ```
/// assert_eq!(trainwright::fluid::old_share(0.5, 3)?, 0.125);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn old_share(changed_fraction: f64, changes: u32) -> Result<f64> {
    within("changed_fraction", changed_fraction, 0.0, 1.0)?;
    Ok(powf(1.0 - changed_fraction, f64::from(changes)))
}

fn mean_by_volume<P>(portions: &[P], value_and_volume: impl Fn(&P) -> (f64, f64)) -> Result<f64> {
    let (mut sum, mut total_ml) = (0.0, 0.0);
    for portion in portions {
        let (value, volume_ml) = value_and_volume(portion);
        sum += value * within("volume_ml", volume_ml, f64::MIN_POSITIVE, 1e9)?;
        total_ml += volume_ml;
    }
    if total_ml > 0.0 { Ok(sum / total_ml) } else { Err(no_portion()) }
}

fn no_portion() -> Error {
    Error::Count { name: "portions", count: 0, low: 1, high: u32::MAX }
}
