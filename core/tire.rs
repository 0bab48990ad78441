//! Tires: size designations, outer diameter, rolling circumference, load index, speed symbol.

mod table;
mod text;

pub use table::{LoadRange, SpeedSymbol, load_index_kg, load_index_lb};
pub use text::{TireText, parse, parse_lenient};

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::hazard::Hazard;
use crate::judge::Reading;
use crate::real::{ceil, floor, hypot};
use crate::units::{KM_PER_MILE, in_to_mm};
use core::f64::consts::PI;

/// What can hurt someone in the work of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::WrongTire];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    Card {
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
    },
    Card {
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
    },
    Card {
        id: "tire.rolling_by_factor",
        purpose: "Rolling circumference from the outer diameter by a factor",
        equation: "C = f·D, f = 3.05 radial, 2.99 diagonal",
        symbols: &[
            symbol("C", "circumference_mm", "mm"),
            symbol("D", "diameter_mm, regulation diameter", "mm"),
            symbol("f", "factor", "1"),
        ],
        range: "inflated and loaded as the tire standard says; wear takes up to 2 % off",
        source: &card::TIRE_MANUAL,
        locator: "general notes, dynamic rolling circumference",
    },
    Card {
        id: "tire.rolling_by_share",
        purpose: "Rolling circumference from the free circumference",
        equation: "C = s·π·D",
        symbols: &[
            symbol("C", "circumference_mm", "mm"),
            symbol("D", "diameter_mm, free outer diameter", "mm"),
            symbol("s", "share, rolling over free circumference", "1"),
        ],
        range: "as far as the share was found; 3.05/π is 0.971",
        source: &card::DEFINITION,
        locator: "rolling circumference",
    },
    Card {
        id: "tire.rolling_by_count",
        purpose: "Rolling circumference from counted revolutions",
        equation: "C = s/n, (u_C/C)² = (u_s/s)² + (u_n/n)²",
        symbols: &[
            symbol("C", "circumference_mm", "mm"),
            symbol("s", "distance_m", "m"),
            symbol("n", "revolutions", "1"),
        ],
        range: "without wheel slip: no hard pull, dry road",
        source: &card::DEFINITION,
        locator: "rolling circumference",
    },
    Card {
        id: "tire.radii",
        purpose: "Free, static loaded and effective rolling radius side by side",
        equation: "r_free = D/2, r_static = q·D, r_rolling = C/(2·π)",
        symbols: &[
            symbol("D", "diameter_mm", "mm"),
            symbol("q", "static_over_diameter", "1"),
            symbol("C", "rolling.circumference_mm", "mm"),
        ],
        range: "only the effective rolling radius belongs into speeds; only the static loaded one into heights",
        source: &card::DEFINITION,
        locator: "radii of a loaded wheel",
    },
    Card {
        id: "tire.load_index_kg",
        purpose: "Load that a load index stands for",
        equation: "table; 45·10^(LI/80) rounded to a preferred number",
        symbols: &[symbol("LI", "load_index", "1")],
        range: "load index 0 to 279",
        source: &card::TIRES,
        locator: "R54, annex 4",
    },
];

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

    const fn bare(kind: TireKind, service: TireService, rim_in: f64) -> Self {
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

/// ETRTO factor of the rolling circumference of a radial tire over its regulation diameter (from memory of the ETRTO
/// Standards Manual, general notes).
pub const RADIAL_FACTOR: f64 = 3.05;
/// ETRTO factor of the rolling circumference of a diagonal tire over its regulation diameter (from memory, as above).
pub const DIAGONAL_FACTOR: f64 = 2.99;

/// How far a tire rolls: the same fact in every form the trade uses, with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    /// Rolling circumference: distance per turn under load.
    pub circumference_mm: Reading,
    /// Effective rolling radius: circumference over 2π. Neither the free nor the static loaded radius.
    pub radius_mm: Reading,
    /// Revolutions per kilometer.
    pub rev_per_km: Reading,
    /// Revolutions per mile.
    pub rev_per_mile: Reading,
}

impl Rolling {
    fn of(circumference_mm: f64, relative_u: f64) -> Result<Self> {
        positive("circumference_mm", circumference_mm)?;
        let with_u = |value: f64| Reading::new(value, value * relative_u);
        let rev_per_km = 1e6 / circumference_mm;
        Ok(Self {
            circumference_mm: with_u(circumference_mm)?,
            radius_mm: with_u(circumference_mm / (2.0 * PI))?,
            rev_per_km: with_u(rev_per_km)?,
            rev_per_mile: with_u(rev_per_km * KM_PER_MILE)?,
        })
    }
}

/// Relative standard uncertainty of a positive reading.
fn relative(name: &'static str, reading: Reading) -> Result<(f64, f64)> {
    let Reading { value, u } = Reading::new(positive(name, reading.value)?, reading.u)?;
    Ok((value, u / value))
}

/// Rolling circumference from the outer diameter by a factor.
///
/// C = f·D
///
/// * `diameter_mm` — D, regulation diameter, mm; `factor` — f, e.g. [`RADIAL_FACTOR`] with the uncertainty that the caller
///   gives it (a spread of 0.9 % was found over 71 production cars of 1990)
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: ETRTO Standards Manual, general notes (from memory). Example: 205/55R16, D = 632 mm, rolls 1928 mm.
///
/// ```
/// use trainwright::judge::Reading;
/// use trainwright::tire::{self, RADIAL_FACTOR};
/// let rolling = tire::rolling_by_factor(632.0, Reading::exact(RADIAL_FACTOR)?)?;
/// assert!((rolling.circumference_mm.value - 1928.0).abs() < 1.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_factor(diameter_mm: f64, factor: Reading) -> Result<Rolling> {
    let (factor, relative_u) = relative("factor", factor)?;
    Rolling::of(positive("diameter_mm", diameter_mm)? * factor, relative_u)
}

/// Rolling circumference from the free circumference: a loaded tire rolls a few percent less far than πD.
///
/// C = s·π·D
///
/// * `diameter_mm` — D, free outer diameter, mm; `share` — s, rolling over free circumference, with its uncertainty
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: definition of the share.
///
/// ```
/// use trainwright::{judge::Reading, tire};
/// let rolling = tire::rolling_by_share(801.7, Reading::new(0.968, 0.006)?)?;
/// assert!((rolling.rev_per_km.value - 410.169).abs() < 1e-3);
/// assert!((rolling.rev_per_km.u - 2.542).abs() < 1e-3);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_share(diameter_mm: f64, share: Reading) -> Result<Rolling> {
    let (share, relative_u) = relative("share", share)?;
    Rolling::of(PI * positive("diameter_mm", diameter_mm)? * share, relative_u)
}

/// Rolling circumference from counted revolutions over a measured distance: the best of the three, where it can be had.
///
/// C = s/n
///
/// * `distance_m` — s, m; `revolutions` — n, both with their uncertainty
/// * returns circumference, effective radius, revolutions per km and mile, each with its standard uncertainty
///
/// Source: definition; relative uncertainties added in quadrature (JCGM 100:2008, 5.1.6).
///
/// ```
/// use trainwright::{judge::Reading, tire};
/// let rolling = tire::rolling_by_count(Reading::new(1000.0, 2.0)?, Reading::new(405.0, 0.5)?)?;
/// assert!((rolling.circumference_mm.value - 2469.136).abs() < 1e-3);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn rolling_by_count(distance_m: Reading, revolutions: Reading) -> Result<Rolling> {
    let (distance, u_distance) = relative("distance_m", distance_m)?;
    let (turns, u_turns) = relative("revolutions", revolutions)?;
    Rolling::of(1000.0 * distance / turns, hypot(u_distance, u_turns))
}

/// The three radii of one wheel, which must not be mixed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelRadii {
    /// Free radius: half the outer diameter, no load.
    pub free_mm: f64,
    /// Static loaded radius: hub to ground, standing under load.
    pub static_loaded_mm: f64,
    /// Effective rolling radius: the one that speeds follow from.
    pub effective_mm: f64,
}

/// Free, static loaded and effective rolling radius of one wheel.
///
/// r_free = D/2, r_static = q·D, r_rolling = C/(2π)
///
/// * `diameter_mm` — D, mm; `static_over_diameter` — q, measured under the hub, or
///   [`crate::practice::STATIC_LOADED_RADIUS_OVER_DIAMETER`]; `rolling` — C
/// * returns the three, mm
/// * errors: [`Error::Inconsistent`] for a static radius of half the diameter or more
///
/// Source: definitions.
///
/// ```
/// use trainwright::{judge::Reading, practice, tire};
/// let rolling = tire::rolling_by_share(801.7, Reading::exact(0.968)?)?;
/// let radii = tire::radii(801.7, practice::STATIC_LOADED_RADIUS_OVER_DIAMETER, rolling)?;
/// assert!(radii.static_loaded_mm < radii.effective_mm && radii.effective_mm < radii.free_mm);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn radii(diameter_mm: f64, static_over_diameter: f64, rolling: Rolling) -> Result<WheelRadii> {
    positive("diameter_mm", diameter_mm)?;
    if positive("static_over_diameter", static_over_diameter)? >= 0.5 {
        return Err(Error::Inconsistent {
            name: "static_over_diameter",
            why: "a loaded tire stands lower than half its free diameter; give a share below 0.5",
        });
    }
    Ok(WheelRadii {
        free_mm: diameter_mm / 2.0,
        static_loaded_mm: diameter_mm * static_over_diameter,
        effective_mm: positive("rolling.radius_mm", rolling.radius_mm.value)?,
    })
}
