//! Outer diameter: of the regulations, and of the numbers of the name.

use super::size::{Tire, TireKind};
use super::table;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::{ceil, floor};
use crate::units::in_to_mm;

pub(super) const REGULATION_DIAMETER: Card = Card {
    id: "tire.regulation_diameter",
    purpose: "Design outer diameter of a size",
    equation: "D = d + 2·H, H = 0.01·S₁·Ra",
    symbols: &[
        symbol("D", "diameter_mm", "mm"),
        symbol("d", "rim_mm: 25.4 times the rim code, in whole mm", "mm"),
        symbol("H", "section_height_mm, rounded half up to whole mm", "mm"),
        symbol("S₁", "tire.width_mm", "mm"),
        symbol("Ra", "tire.aspect_pct", "%"),
    ],
    range: "rim codes 8 to 30 and the half codes in use; sizes without an aspect ratio only from the table",
    source: &card::TIRES,
    locator: "R30 and R54, outer diameter of a tire, and annex 5",
};

pub(super) const GEOMETRIC_DIAMETER_MM: Card = Card {
    id: "tire.geometric_diameter_mm",
    purpose: "Outer diameter that the numbers of the name give",
    equation: "D = 25.4·rim + 2·0.01·S₁·Ra (metric), D = 25.4·diameter (flotation)",
    symbols: &[
        symbol("D", "result", "mm"),
        symbol("rim, diameter", "tire.rim_in, tire.diameter_in", "inch"),
        symbol("S₁, Ra", "tire.width_mm, tire.aspect_pct", "mm, %"),
    ],
    range: "metric sizes with an aspect ratio, and flotation sizes",
    source: &card::DEFINITION,
    locator: "size designation",
};

/// Where a regulation diameter comes from.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DiameterBasis {
    /// The rule for metric sizes.
    Rule,
    /// The table of the regulation: the name of the size does not give it.
    Table,
    /// The pattern of the tabulated flotation sizes; this size itself need not be listed.
    Pattern,
}

/// Design outer diameter and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RegulationDiameter {
    /// Nominal rim diameter d, whole mm.
    pub rim_mm: f64,
    /// Section height H, mm.
    pub section_height_mm: f64,
    /// Outer diameter D, mm.
    pub diameter_mm: f64,
    /// Where it comes from.
    pub basis: DiameterBasis,
}

impl Tire {
    /// Design outer diameter of the tire regulations, in whole millimeters.
    ///
    /// D = d + 2·H, H = 0.01·S₁·Ra
    ///
    /// * metric sizes: d is the rim code in whole mm (16 is 406), H is rounded half up to whole mm ([`DiameterBasis::Rule`])
    /// * sizes without an aspect ratio (185R14, 11R22.5): from the table ([`DiameterBasis::Table`])
    /// * flotation sizes: half an inch less than the name, up to the next whole mm ([`DiameterBasis::Pattern`])
    /// * errors: [`Error::Missing`] for a size that is in no table; measure the diameter, or give the revolutions per km
    ///
    /// Source: UN R30 and R54, paragraphs on the outer diameter and annex 5 (from memory). Example: 205/55R16 is 632 mm.
    ///
    /// ```
    /// let tire = trainwright::tire::parse("205/55R16")?;
    /// assert_eq!(tire.regulation_diameter()?.diameter_mm, 632.0);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn regulation_diameter(self) -> Result<RegulationDiameter> {
        let tire = self.checked()?;
        let rim_mm = table::rim_mm(tire.rim_in);
        let (diameter_mm, basis) = match tire.kind {
            TireKind::Metric => {
                (rim_mm + 2.0 * floor((tire.width_mm * tire.aspect_pct + 50.0) / 100.0), DiameterBasis::Rule)
            }
            TireKind::Flotation => (ceil(in_to_mm(tire.diameter_in - 0.5)), DiameterBasis::Pattern),
            TireKind::NoAspect | TireKind::Inch => {
                let listed = table::listed_mm(&tire).ok_or(Error::Missing {
                    name: "outer diameter",
                    why: "the size carries no aspect ratio and is not in the table; measure the diameter or the \
                          revolutions per km",
                })?;
                (listed, DiameterBasis::Table)
            }
        };
        Ok(RegulationDiameter { rim_mm, section_height_mm: (diameter_mm - rim_mm) / 2.0, diameter_mm, basis })
    }

    /// Outer diameter that the numbers of the name give, mm, unrounded.
    ///
    /// D = 25.4·rim + 2·0.01·S₁·Ra for a metric size, D = 25.4·diameter for a flotation size
    ///
    /// * errors: [`Error::Missing`] for a size whose name carries neither an aspect ratio nor a diameter
    ///
    /// Source: definition of the designation. It differs by up to 1.5 mm from [`Tire::regulation_diameter`] for metric
    /// sizes, and a flotation tire is built about half an inch smaller than its name.
    ///
    /// ```
    /// let tire = trainwright::tire::parse("265/65R18")?;
    /// assert!((tire.geometric_diameter_mm()? - 801.7).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn geometric_diameter_mm(self) -> Result<f64> {
        let tire = self.checked()?;
        match tire.kind {
            TireKind::Metric => Ok(in_to_mm(tire.rim_in) + 2.0 * 0.01 * tire.width_mm * tire.aspect_pct),
            TireKind::Flotation => Ok(in_to_mm(tire.diameter_in)),
            TireKind::NoAspect | TireKind::Inch => Err(Error::Missing {
                name: "aspect_pct",
                why: "the size does not state it; use the regulation diameter or a measured one",
            }),
        }
    }
}
