//! A tire as its designation states it.

use super::table::{self, LoadRange, SpeedSymbol};
use crate::error::{Error, Result, within};

/// How the size is written.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TireKind {
    /// Section width in mm and aspect ratio: 265/65R18.
    Metric,
    /// Section width in mm, aspect ratio not written: 185R14.
    NoAspect,
    /// Overall diameter and section width in inches: 35x12.50R17LT.
    Flotation,
    /// Section width in inches only: 11R22.5, 7.50R16.
    Inch,
}

/// The service that the designation states by its letters.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TireService {
    /// No letters.
    Unstated,
    /// P: passenger car.
    Passenger,
    /// LT: light truck.
    LightTruck,
    /// ST: trailer.
    Trailer,
    /// T: temporary spare.
    Temporary,
    /// C after the rim: commercial vehicle.
    Commercial,
}

/// How the plies run.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TirePlies {
    /// R.
    Radial,
    /// D or a hyphen.
    Diagonal,
    /// B: diagonal plies under a belt.
    Belted,
}

/// A tire as its designation states it. A part that the designation leaves out is 0.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tire {
    /// How the size is written.
    pub kind: TireKind,
    /// Service letters.
    pub service: TireService,
    /// Ply construction.
    pub plies: TirePlies,
    /// Load range letter.
    pub load_range: LoadRange,
    /// Speed symbol inside the size: ZR, VR, HR or SR.
    pub speed_in_size: SpeedSymbol,
    /// Speed symbol beside the load index.
    pub speed_symbol: SpeedSymbol,
    /// Nominal section width, mm (metric and no-aspect sizes).
    pub width_mm: f64,
    /// Section height over section width, % (metric sizes).
    pub aspect_pct: f64,
    /// Nominal overall diameter, inches (flotation sizes).
    pub diameter_in: f64,
    /// Nominal section width, inches (flotation and inch sizes).
    pub width_in: f64,
    /// Rim diameter code: nominal inches, whole or half.
    pub rim_in: f64,
    /// Load index, single fitment.
    pub load_index: u16,
    /// Load index, dual fitment.
    pub load_index_dual: u16,
    /// The service description stands in parentheses: the speed symbol is exceeded.
    pub above_symbol: bool,
    /// XL, reinforced: higher load at higher pressure.
    pub extra_load: bool,
    /// RF inside the size: run-flat.
    pub run_flat: bool,
    /// M+S: mud and snow.
    pub mud_snow: bool,
    /// The designation did not say how the plies run; the lenient reader assumed radial.
    pub plies_assumed: bool,
}

impl Tire {
    /// Metric size: section width in mm, aspect ratio in %, rim code.
    pub fn metric(service: TireService, width_mm: f64, aspect_pct: f64, rim_in: f64) -> Result<Self> {
        Self { width_mm, aspect_pct, ..Self::bare(TireKind::Metric, service, rim_in) }.checked()
    }

    /// Metric size without an aspect ratio: section width in mm, rim code.
    pub fn no_aspect(service: TireService, width_mm: f64, rim_in: f64) -> Result<Self> {
        Self { width_mm, ..Self::bare(TireKind::NoAspect, service, rim_in) }.checked()
    }

    /// Flotation size: overall diameter, section width and rim code, all in inches.
    pub fn flotation(service: TireService, diameter_in: f64, width_in: f64, rim_in: f64) -> Result<Self> {
        Self { diameter_in, width_in, ..Self::bare(TireKind::Flotation, service, rim_in) }.checked()
    }

    /// Inch size: section width and rim code in inches.
    pub fn inch(service: TireService, width_in: f64, rim_in: f64) -> Result<Self> {
        Self { width_in, ..Self::bare(TireKind::Inch, service, rim_in) }.checked()
    }

    /// The same tire, if its numbers are those of a size that exists.
    pub fn checked(self) -> Result<Self> {
        table::rim_code(self.rim_in)?;
        match self.kind {
            TireKind::Metric => {
                within("width_mm", self.width_mm, 100.0, 600.0)?;
                within("aspect_pct", self.aspect_pct, 15.0, 100.0)?;
            }
            TireKind::NoAspect => {
                within("width_mm", self.width_mm, 100.0, 600.0)?;
            }
            TireKind::Flotation => {
                within("diameter_in", self.diameter_in, self.rim_in + 2.0, 60.0)?;
                within("width_in", self.width_in, 4.0, 25.0)?;
                if self.service == TireService::Commercial {
                    return Err(Error::Inconsistent {
                        name: "service",
                        why: "a flotation size is never marked commercial; a C behind it is the load range",
                    });
                }
            }
            TireKind::Inch => {
                within("width_in", self.width_in, 3.0, 25.0)?;
            }
        }
        Ok(self)
    }

    /// The same tire with an aspect ratio that the caller knows or assumes (see [`crate::practice::ASPECT_NOT_STATED_PCT`]),
    /// for a size that does not state one.
    pub fn with_aspect(self, aspect_pct: f64) -> Result<Self> {
        if self.kind != TireKind::NoAspect {
            return Err(Error::Inconsistent {
                name: "aspect_pct",
                why: "only a metric size without an aspect ratio, such as 185R14, takes one",
            });
        }
        Self { kind: TireKind::Metric, aspect_pct, ..self }.checked()
    }

    pub(super) const fn bare(kind: TireKind, service: TireService, rim_in: f64) -> Self {
        Self {
            kind,
            service,
            plies: TirePlies::Radial,
            load_range: LoadRange::Unmarked,
            speed_in_size: SpeedSymbol::Unmarked,
            speed_symbol: SpeedSymbol::Unmarked,
            width_mm: 0.0,
            aspect_pct: 0.0,
            diameter_in: 0.0,
            width_in: 0.0,
            rim_in,
            load_index: 0,
            load_index_dual: 0,
            above_symbol: false,
            extra_load: false,
            run_flat: false,
            mud_snow: false,
            plies_assumed: false,
        }
    }
}
