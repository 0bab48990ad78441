//! `trainwright.tire`: size designations, diameters, rolling circumference, load index, speed symbol.

use pyo3::prelude::*;
use trainwright::tire as core;

use crate::array::{Input, Out, map};
use crate::class::{class, words};
use crate::error::{answer, raise};
use crate::judge::Reading;
use crate::quantity::Number;

words! {
    "kind" TireKind = core::TireKind {
        Metric = "metric", NoAspect = "no aspect", Flotation = "flotation", Inch = "inch",
    }
}

words! {
    "service" TireService = core::TireService {
        Unstated = "", Passenger = "P", LightTruck = "LT", Trailer = "ST", Temporary = "T", Commercial = "C",
    }
}

words! {
    "plies" TirePlies = core::TirePlies { Radial = "radial", Diagonal = "diagonal", Belted = "belted" }
}

words! {
    "load_range" LoadRange = core::LoadRange {
        Unmarked = "", B = "B", C = "C", D = "D", E = "E", F = "F", G = "G", H = "H", J = "J", L = "L", M = "M", N = "N",
    }
}

words! {
    "speed_symbol" SpeedSymbol = core::SpeedSymbol {
        Unmarked = "", A1 = "A1", A2 = "A2", A3 = "A3", A4 = "A4", A5 = "A5", A6 = "A6", A7 = "A7", A8 = "A8",
        B = "B", C = "C", D = "D", E = "E", F = "F", G = "G", J = "J", K = "K", L = "L", M = "M", N = "N", P = "P",
        Q = "Q", R = "R", S = "S", T = "T", U = "U", H = "H", V = "V", W = "W", Y = "Y", Z = "Z",
    }
}

words! {
    "basis" DiameterBasis = core::DiameterBasis { Rule = "rule", Table = "table", Pattern = "pattern" }
}

class! {
    /// A tire as its designation states it. What the designation leaves out is 0, or an empty text.
    ///
    /// >>> Tire.metric("LT", width_mm=235, aspect_pct=80, rim_in=17).text()
    /// 'LT235/80R17'
    "trainwright.tire" Tire = core::Tire, checked by core::Tire::checked {
        /// How the size is written: "metric", "no aspect", "flotation" or "inch".
        kind: TireKind,
        /// Service letters: "P", "LT", "ST", "T", "C" or none.
        service: TireService = core::TireService::Unstated,
        /// "radial", "diagonal" or "belted".
        plies: TirePlies = core::TirePlies::Radial,
        /// Load range letter: it names a ply rating and states no load.
        load_range: LoadRange = core::LoadRange::Unmarked,
        /// Speed symbol inside the size: "Z", "V", "H" or "S".
        speed_in_size: SpeedSymbol = core::SpeedSymbol::Unmarked,
        /// Speed symbol beside the load index.
        speed_symbol: SpeedSymbol = core::SpeedSymbol::Unmarked,
        /// Nominal section width (metric and no-aspect sizes).
        width_mm: f64 = 0.0,
        /// Section height over section width (metric sizes).
        aspect_pct: f64 = 0.0,
        /// Nominal overall diameter (flotation sizes).
        diameter_in: f64 = 0.0,
        /// Nominal section width (flotation and inch sizes).
        width_in: f64 = 0.0,
        /// Rim diameter code.
        rim_in: f64,
        /// Load index, single fitment.
        load_index: u16 = 0_u16,
        /// Load index, dual fitment.
        load_index_dual: u16 = 0_u16,
        /// The service description stands in parentheses: the speed symbol is exceeded.
        above_symbol: bool = false,
        /// XL, reinforced.
        extra_load: bool = false,
        /// Run-flat.
        run_flat: bool = false,
        /// M+S: mud and snow.
        mud_snow: bool = false,
        /// The lenient reader assumed radial plies.
        plies_assumed: bool = false,
    }
}

#[pymethods]
impl Tire {
    /// Metric size.
    #[staticmethod]
    #[pyo3(signature = (service, *, width_mm, aspect_pct, rim_in))]
    fn metric(service: TireService, width_mm: Number, aspect_pct: Number, rim_in: Number) -> PyResult<Self> {
        let (width_mm, aspect_pct) = (width_mm.value("width_mm")?, aspect_pct.value("aspect_pct")?);
        answer(core::Tire::metric(service.0, width_mm, aspect_pct, rim_in.value("rim_in")?))
    }

    /// Metric size without an aspect ratio.
    #[staticmethod]
    #[pyo3(signature = (service, *, width_mm, rim_in))]
    fn no_aspect(service: TireService, width_mm: Number, rim_in: Number) -> PyResult<Self> {
        answer(core::Tire::no_aspect(service.0, width_mm.value("width_mm")?, rim_in.value("rim_in")?))
    }

    /// Flotation size: overall diameter, section width and rim in inches.
    #[staticmethod]
    #[pyo3(signature = (service, *, diameter_in, width_in, rim_in))]
    fn flotation(service: TireService, diameter_in: Number, width_in: Number, rim_in: Number) -> PyResult<Self> {
        let (diameter_in, width_in) = (diameter_in.value("diameter_in")?, width_in.value("width_in")?);
        answer(core::Tire::flotation(service.0, diameter_in, width_in, rim_in.value("rim_in")?))
    }

    /// Inch size: section width and rim in inches.
    #[staticmethod]
    #[pyo3(signature = (service, *, width_in, rim_in))]
    fn inch(service: TireService, width_in: Number, rim_in: Number) -> PyResult<Self> {
        answer(core::Tire::inch(service.0, width_in.value("width_in")?, rim_in.value("rim_in")?))
    }

    /// The designation in its canonical spelling.
    ///
    /// >>> parse("lt 235 / 85 r 16 c").text()
    /// 'LT235/85R16C'
    fn text(&self) -> String {
        self.0.text().as_str().into()
    }

    fn __str__(&self) -> String {
        self.text()
    }

    /// The same tire with an aspect ratio that you know or assume, for a size that does not state one.
    ///
    /// >>> parse("185R14").with_aspect(aspect_pct=80).regulation_diameter().diameter_mm
    /// 652.0
    #[pyo3(signature = (*, aspect_pct))]
    fn with_aspect(&self, aspect_pct: Number) -> PyResult<Self> {
        answer(self.0.with_aspect(aspect_pct.value("aspect_pct")?))
    }

    /// Design outer diameter of the tire regulations, in whole millimeters. Source: UN R30 and R54.
    ///
    /// >>> parse("205/55R16").regulation_diameter().diameter_mm
    /// 632.0
    fn regulation_diameter(&self) -> PyResult<RegulationDiameter> {
        answer(self.0.regulation_diameter())
    }

    /// Outer diameter that the numbers of the name give, mm, unrounded.
    /// Source: follows from the definitions (size designation).
    ///
    /// >>> round(parse("265/65R18").geometric_diameter_mm(), 1)
    /// 801.7
    fn geometric_diameter_mm(&self) -> PyResult<f64> {
        self.0.geometric_diameter_mm().map_err(raise)
    }
}

class! {
    /// Design outer diameter and what it is made of.
    "trainwright.tire" RegulationDiameter = core::RegulationDiameter, explained by ["tire.regulation_diameter"] {
        /// Nominal rim diameter, whole mm.
        rim_mm: f64,
        /// Section height.
        section_height_mm: f64,
        /// Outer diameter.
        diameter_mm: f64,
        /// "rule" of the metric sizes, "table" of the regulation, or "pattern" of the flotation sizes.
        basis: DiameterBasis,
    }
}

class! {
    /// How far a tire rolls, with the standard uncertainty of each form.
    "trainwright.tire" Rolling = core::Rolling, explained by ["tire.rolling_by_factor", "tire.rolling_by_share", "tire.rolling_by_count"] {
        /// Distance per turn under load, mm.
        circumference_mm: Reading,
        /// Effective rolling radius, mm: neither the free nor the static loaded one.
        radius_mm: Reading,
        /// Revolutions per kilometer.
        rev_per_km: Reading,
        /// Revolutions per mile.
        rev_per_mile: Reading,
    }
}

class! {
    /// The three radii of one wheel, which must not be mixed.
    "trainwright.tire" WheelRadii = core::WheelRadii, explained by ["tire.radii"] {
        /// Half the outer diameter, no load.
        free_mm: f64,
        /// Hub to ground, standing under load.
        static_loaded_mm: f64,
        /// The one that speeds follow from.
        effective_mm: f64,
    }
}

/// Reads a size designation. An error names the place and what was expected there.
///
/// >>> tire = parse("LT275/70R18 125/122S")
/// >>> tire.service, tire.width_mm, tire.load_index_dual, tire.speed_symbol
/// ('LT', 275.0, 122, 'S')
/// >>> parse("245/55/18")
/// Traceback (most recent call last):
///     ...
/// trainwright.error.Error: tire designation: at character 7: expected R, D, B or - before the rim diameter
#[pyfunction]
pub fn parse(designation: &str) -> PyResult<Tire> {
    answer(core::parse(designation))
}

/// Reads what `parse` reads and also the shorthand 245/55/18, for which it assumes radial plies and says so.
///
/// >>> parse_lenient("245/55/18").plies_assumed
/// True
#[pyfunction]
pub fn parse_lenient(designation: &str) -> PyResult<Tire> {
    answer(core::parse_lenient(designation))
}

/// Rolling circumference from the regulation diameter by a factor: `RADIAL_FACTOR` or `DIAGONAL_FACTOR`.
///
/// Source: ETRTO Standards Manual.
///
/// >>> from trainwright import Reading
/// >>> round(rolling_by_factor(diameter_mm=632, factor=Reading(value=RADIAL_FACTOR, u=0.0)).circumference_mm.value)
/// 1928
#[pyfunction]
#[pyo3(signature = (*, diameter_mm, factor))]
pub fn rolling_by_factor(diameter_mm: Number, factor: Reading) -> PyResult<Rolling> {
    answer(core::rolling_by_factor(diameter_mm.value("diameter_mm")?, factor.0))
}

/// Rolling circumference from the free circumference: a loaded tire rolls a few percent less far than πD.
/// Source: follows from the definitions (rolling circumference).
///
/// >>> from trainwright import Reading
/// >>> rolling = rolling_by_share(diameter_mm=801.7, share=Reading(value=0.968, u=0.006))
/// >>> round(rolling.rev_per_km.value, 2), round(rolling.rev_per_km.u, 2)
/// (410.17, 2.54)
#[pyfunction]
#[pyo3(signature = (*, diameter_mm, share))]
pub fn rolling_by_share(diameter_mm: Number, share: Reading) -> PyResult<Rolling> {
    answer(core::rolling_by_share(diameter_mm.value("diameter_mm")?, share.0))
}

/// Rolling circumference from revolutions counted over a distance in meters: the best of the three.
/// Source: follows from the definitions (rolling circumference).
///
/// >>> from trainwright import Reading
/// >>> counted = rolling_by_count(distance_m=Reading(value=1000.0, u=2.0), revolutions=Reading(value=405.0, u=0.5))
/// >>> round(counted.circumference_mm.value, 1)
/// 2469.1
#[pyfunction]
#[pyo3(signature = (*, distance_m, revolutions))]
pub fn rolling_by_count(distance_m: Reading, revolutions: Reading) -> PyResult<Rolling> {
    answer(core::rolling_by_count(distance_m.0, revolutions.0))
}

/// Free, static loaded and effective rolling radius of one wheel.
/// Source: follows from the definitions (radii of a loaded wheel).
#[pyfunction]
#[pyo3(signature = (*, diameter_mm, static_over_diameter, rolling))]
pub fn radii(diameter_mm: Number, static_over_diameter: f64, rolling: Rolling) -> PyResult<WheelRadii> {
    answer(core::radii(diameter_mm.value("diameter_mm")?, static_over_diameter, rolling.0))
}

fn by_index(load_index: f64, load: fn(u16) -> trainwright::Result<f64>) -> trainwright::Result<f64> {
    let outside = trainwright::Error::OutOfRange { name: "load_index", value: load_index, low: 0.0, high: 279.0 };
    if load_index.fract() == 0.0 && (0.0..=279.0).contains(&load_index) {
        load(load_index as u16)
    } else {
        Err(outside)
    }
}

/// Load, kg, that a load index of 0 to 279 stands for. Source: UN R54, annex 4.
///
/// >>> load_index_kg(121)
/// 1450.0
#[pyfunction]
#[pyo3(signature = (load_index, *, out = None))]
pub fn load_index_kg<'py>(
    py: Python<'py>,
    load_index: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("load_index", load_index)], out, |[index]| by_index(index, core::load_index_kg))
}

/// Load in whole pounds that a load index of 0 to 279 stands for.
///
/// >>> load_index_lb([118, 121])
/// array([2910., 3197.])
#[pyfunction]
#[pyo3(signature = (load_index, *, out = None))]
pub fn load_index_lb<'py>(
    py: Python<'py>,
    load_index: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("load_index", load_index)], out, |[index]| by_index(index, core::load_index_lb))
}

/// Speed, km/h, that a speed symbol stands for. The letters are not in the order of the alphabet.
///
/// >>> symbol_km_h("U"), symbol_km_h("H"), symbol_km_h("V")
/// (200.0, 210.0, 240.0)
#[pyfunction]
pub fn symbol_km_h(letters: &str) -> PyResult<f64> {
    core::SpeedSymbol::from_letters(letters).and_then(core::SpeedSymbol::symbol_km_h).map_err(raise)
}

/// Ply rating that a load range letter stands for. It states no load: the same letter on another size carries another.
///
/// >>> ply_rating("E")
/// 10
#[pyfunction]
pub fn ply_rating(load_range: LoadRange) -> PyResult<u16> {
    load_range.0.ply_rating().map_err(raise)
}
