//! Round fits of a record and the metals of their parts, as the fit chapter takes them.

use std::format;
use std::string::String;
use std::vec::Vec;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Family;
use super::document::Path;
use super::fault::Fault;
use super::quantity::{Estimate, PerVariant, Size};
use super::whole::must_rise;
use crate::error::{Error, Result};
use crate::fit::{Clearance, Elastic, FitClass, Metal, PressedBushing, Spread, clearance, toleranced};
use crate::judge::{Limits, Reading};

/// A shaft in a bore.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FitRecord {
    /// Name of the fit.
    #[schemars(extend("x-gives" = "fit"))]
    pub id: String,
    /// What the fit is for.
    pub kind: FitKind,
    /// The part inside.
    #[schemars(extend("x-gives" = "part"))]
    pub shaft: String,
    /// The part around it.
    #[schemars(extend("x-gives" = "part"))]
    pub bore: String,
    /// Diameter of the shaft, mm.
    pub shaft_mm: PerVariant<Size>,
    /// Diameter of the bore, mm.
    pub bore_mm: PerVariant<Size>,
    /// What the diameter of the shaft is called where it is measured; a size of the evidence may carry the same name.
    #[schemars(extend("x-gives" = "size"))]
    pub shaft_size: Option<String>,
    /// What the diameter of the bore is called where it is measured; a size of the evidence may carry the same name.
    #[schemars(extend("x-gives" = "size"))]
    pub bore_size: Option<String>,
    /// What the shaft is measured with, where its size is no evidence.
    #[schemars(extend("x-refers" = "instrument"))]
    pub shaft_instrument: Option<String>,
    /// What the bore is measured with, where its size is no evidence.
    #[schemars(extend("x-refers" = "instrument"))]
    pub bore_instrument: Option<String>,
    /// Greatest diametral clearance in service, mm.
    #[schemars(range(min = 0))]
    pub limit_mm: f64,
    /// Length over which shaft and bore meet, mm; for load and leakage, and the seat of a pressed bushing.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub length_mm: Option<f64>,
    /// Metal of the shaft; needed for the fit away from the reference temperature.
    #[schemars(extend("x-refers" = "material"))]
    pub shaft_material: Option<String>,
    /// Metal of the part with the bore; a pressed bushing has its own in press.
    #[schemars(extend("x-refers" = "material"))]
    pub bore_material: Option<String>,
    /// The bushing pressed in the housing of this fit.
    pub press: Option<Press>,
}

/// What a fit is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FitKind {
    /// Turns: clearance wanted.
    Running,
    /// Centers: a register.
    Locating,
    /// Holds by interference.
    Press,
}

/// A steel-backed bushing pressed in a housing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Press {
    /// Bore of the housing, mm.
    pub housing_bore_mm: Size,
    /// Outside diameter of the bushing before pressing, mm.
    pub bush_outside_mm: Size,
    /// Outside diameter of the housing, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub housing_outside_mm: f64,
    /// Wall of the bushing, mm.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub bush_wall_mm: f64,
    /// Metal of the housing; with that of the bushing it gives the fit away from the reference temperature.
    #[schemars(extend("x-refers" = "material"))]
    pub housing_material: Option<String>,
    /// Metal of the bushing's shell.
    #[schemars(extend("x-refers" = "material"))]
    pub bush_material: Option<String>,
    /// Friction of the seat; gives the torque that turns the bushing.
    pub friction: Option<Estimate>,
}

/// A metal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MaterialRecord {
    /// Linear expansion, 1/K.
    #[schemars(extend("x-most" = 1e-4))]
    pub expansion_per_k: Estimate,
    /// Modulus of elasticity, MPa; needed for press fits.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub young_mpa: Option<f64>,
    /// Poisson's ratio; needed for press fits.
    #[schemars(range(min = 0, max = 0.5))]
    pub poisson: Option<f64>,
}

impl MaterialRecord {
    /// Expansion and elastic constants, as the fit chapter takes them.
    pub fn metal(&self) -> Result<Metal> {
        let missing = |name| Error::Missing { name, why: "a press fit needs it; add it to [material]" };
        Ok(Metal {
            elastic: Elastic {
                young_mpa: self.young_mpa.ok_or(missing("young_mpa"))?,
                poisson: self.poisson.ok_or(missing("poisson"))?,
            },
            expansion_per_k: self.expansion_per_k.reading(),
        })
    }
}

const NO_VARIANT: &str = "the record gives none for this variant";

impl FitRecord {
    /// Diameter of the shaft of a variant, mm.
    pub fn shaft_limits(&self, variant: &str) -> Result<Limits> {
        let size = self.shaft_mm.get(variant).ok_or(Error::Missing { name: "shaft_mm", why: NO_VARIANT })?;
        Ok(size.limits())
    }

    /// Diameter of the bore of a variant, mm.
    pub fn bore_limits(&self, variant: &str) -> Result<Limits> {
        let size = self.bore_mm.get(variant).ok_or(Error::Missing { name: "bore_mm", why: NO_VARIANT })?;
        Ok(size.limits())
    }

    /// Clearance of the shaft of one variant in the bore of another, by their tolerances.
    pub fn clearance(&self, shaft_of: &str, bore_of: &str) -> Result<Clearance> {
        clearance(self.shaft_limits(shaft_of)?, self.bore_limits(bore_of)?, self.limit_mm)
    }
}

impl Family {
    /// The fit of this name.
    pub fn fit(&self, id: &str) -> Result<&FitRecord> {
        let missing = Error::Missing { name: "fit", why: "the record has no fit of this name" };
        self.fit.iter().find(|fit| fit.id == id).ok_or(missing)
    }

    /// Linear expansion of the shaft and of the part with the bore, 1/K, where the record names their metals.
    #[must_use]
    pub fn expansions_of(&self, fit: &FitRecord) -> [Option<Reading>; 2] {
        [&fit.shaft_material, &fit.bore_material]
            .map(|name| Some(self.material.get(name.as_ref()?)?.expansion_per_k.reading()))
    }

    fn metal(&self, name: &'static str, material: Option<&String>) -> Result<Metal> {
        let missing = Error::Missing { name, why: "name it in the press of this fit, and its constants in [material]" };
        material.and_then(|material| self.material.get(material)).ok_or(missing)?.metal()
    }

    /// The bushing that is pressed in the housing of a fit, its sizes taken from their tolerances.
    ///
    /// `bore_mm` is the bore in place, as measured or from its tolerance; `spread` is how housing bore and outside are taken to
    /// lie in theirs. [`Error::Missing`] for a fit without a press, and for a metal that the record does not name.
    pub fn pressed_bushing(&self, fit: &FitRecord, bore_mm: Reading, spread: Spread) -> Result<PressedBushing> {
        let missing = Error::Missing { name: "press", why: "no bushing is pressed in the housing of this fit" };
        let press = fit.press.as_ref().ok_or(missing)?;
        Ok(PressedBushing {
            housing_bore_mm: toleranced(press.housing_bore_mm.limits(), spread)?,
            outside_mm: toleranced(press.bush_outside_mm.limits(), spread)?,
            wall_mm: press.bush_wall_mm,
            bore_mm,
            housing_outside_mm: press.housing_outside_mm,
            housing: self.metal("housing_material", press.housing_material.as_ref())?,
            shell: self.metal("bush_material", press.bush_material.as_ref())?,
        })
    }

    /// Fits that contradict themselves.
    pub(super) fn fit_faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let mut faults = Vec::new();
        for (index, fit) in self.fit.iter().enumerate() {
            let path = root.key("fit").index(index);
            for variant in &self.meta.variants {
                faults.extend(own_fit(fit, variant, &path));
            }
            if let Some(press) = &fit.press {
                faults.extend(self.press_faults(fit, press, &path.key("press")));
            }
        }
        faults
    }

    fn press_faults(&self, fit: &FitRecord, press: &Press, path: &Path) -> Vec<Fault> {
        let mut faults = Vec::new();
        let ([bore, largest_bore], [least, most]) = (press.housing_bore_mm.0, press.bush_outside_mm.0);
        if most <= bore {
            let message = format!("even the largest, {most}, has no interference in the smallest housing, {bore}");
            faults.push(Fault::error(path.key("bush_outside_mm"), message, "exchange the two or correct one"));
        } else if least <= largest_bore {
            let message = format!("the smallest, {least}, is loose in the largest housing, {largest_bore}");
            faults.push(Fault::note(path.key("bush_outside_mm"), message, "measure both before it is pressed in"));
        }
        let across = [("bush_outside_mm", most), ("housing_outside_mm", press.housing_outside_mm)];
        faults.extend(must_rise(path, &across));
        // Pressing closes the bore; it cannot leave it wider than the wall does, nor narrower by more than the interference.
        let in_place = press.housing_bore_mm.middle() - 2.0 * press.bush_wall_mm;
        let slack = (most - bore).max(0.0) + (largest_bore - bore) / 2.0;
        for (variant, size) in fit.bore_mm.iter() {
            let [lower, upper] = size.0;
            if in_place > upper + slack || in_place < lower - slack {
                let wall = (press.housing_bore_mm.middle() - size.middle()) / 2.0;
                let message = format!(
                    "leaves a bore near {in_place:.3} in place, but bore_mm of {variant} is {lower} to {upper}"
                );
                faults.push(Fault::error(
                    path.key("bush_wall_mm"),
                    message,
                    format!("a wall of {wall:.3} would agree"),
                ));
                break;
            }
        }
        for (key, material) in [("housing_material", &press.housing_material), ("bush_material", &press.bush_material)]
        {
            let known = material.as_ref().and_then(|name| self.material.get(name));
            faults
                .extend(known.and_then(|known| known.metal().err()).map(|error| Fault::refused(path.key(key), error)));
        }
        faults
    }
}

/// What a variant's own shaft in its own bore says against the record.
fn own_fit(fit: &FitRecord, variant: &str, path: &Path) -> Option<Fault> {
    // Sizes that cannot be are named by the schema; a variant without a size, too.
    let own = fit.clearance(variant, variant).ok()?;
    let Limits { lower, upper } = own.clearance_mm;
    let range = format!("{lower:.3} to {upper:.3}");
    let sizes = path.key("shaft_mm").key(variant);
    let mend = "correct the shaft or the bore of this variant";
    match (fit.kind, own.fit_class) {
        (FitKind::Press, FitClass::Blocked | FitClass::MayBind) => None,
        (FitKind::Press, _) => Some(Fault::error(sizes, format!("a press fit with clearance, {range}"), mend)),
        (_, FitClass::Blocked) => {
            Some(Fault::error(sizes, format!("does not enter the bore of its own variant: clearance {range}"), mend))
        }
        (FitKind::Running, FitClass::MayBind) => {
            Some(Fault::error(sizes, format!("may bind in the bore of its own variant: clearance {range}"), mend))
        }
        (_, FitClass::Loose) => {
            let message = format!("loose in the bore of its own variant: clearance {range}, limit_mm {}", fit.limit_mm);
            Some(Fault::error(sizes, message, "correct the shaft, the bore or limit_mm"))
        }
        (_, FitClass::MayBeLoose) => {
            let message = format!("{} allows less than new parts have, {range}", fit.limit_mm);
            Some(Fault::note(path.key("limit_mm"), message, "a limit in service lies above the clearance of new parts"))
        }
        _ => None,
    }
}
