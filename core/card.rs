//! Formula cards and the bibliography.
//!
//! A result is a plain struct whose fields are the intermediate values. The card of its formula holds the rest of the
//! explanation: equation, symbols, source and range. Struct and card together are the worked explanation that a trainer
//! reads out and a warranty file keeps: [`explain`] writes it. Each chapter lists its own cards in `CARDS`; each work is
//! cited once, here.

mod digits;
mod explain;
mod form;
mod pieces;
mod words;

pub(crate) use digits::{number, whole};
pub use explain::{Explanation, NamedValue, Value, explain};
pub(crate) use form::{Form, JsonNumber, Quoted, write_all};
pub use words::unit_sign;

use core::fmt;

/// How a work is known to the project.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// The text itself (or a stored copy) was read while the formula was written.
    Read,
    /// Recalled from the named work; checked against an independent calculation.
    Memory,
    /// Follows from the definitions on the card by algebra.
    Derived,
    /// Trade practice without a source.
    Practice,
}

impl Known {
    /// In words.
    const fn words(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Memory => "from memory of the work",
            Self::Derived => "by algebra",
            Self::Practice => "common practice, no source",
        }
    }
}

impl fmt::Display for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// One work of the bibliography.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Short key, unique in [`BIBLIOGRAPHY`].
    pub id: &'static str,
    /// Author or body, title, edition.
    pub work: &'static str,
    /// How the project knows it.
    pub known: Known,
}

/// One symbol of an equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// As written in the equation.
    pub symbol: &'static str,
    /// The field or parameter that carries it, or a meaning where the code has no name for it.
    pub meaning: &'static str,
    /// Unit, `1` for a pure number.
    pub unit: &'static str,
}

/// One formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Card {
    /// Chapter and function, `"clutch.capacity"`.
    pub id: &'static str,
    /// What it computes, in one line.
    pub purpose: &'static str,
    /// The equation, in the source's symbols.
    pub equation: &'static str,
    /// Meaning and unit of each symbol.
    pub symbols: &'static [Symbol],
    /// Range of validity, and what lies outside it.
    pub range: &'static str,
    /// The work it comes from.
    pub source: &'static Source,
    /// Equation, table or clause in that work.
    pub locator: &'static str,
}

impl fmt::Display for Card {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}: {}\n\n  {}\n", self.id, self.purpose, self.equation)?;
        for Symbol { symbol, meaning, unit } in self.symbols {
            writeln!(f, "  {symbol}  {meaning} [{unit}]")?;
        }
        let Source { work, known, .. } = self.source;
        write!(f, "\nRange: {}\nSource: {work}, {} ({known})", self.range, self.locator)
    }
}

/// Shorthand for the symbol tables of the cards.
pub(crate) const fn symbol(symbol: &'static str, meaning: &'static str, unit: &'static str) -> Symbol {
    Symbol { symbol, meaning, unit }
}

macro_rules! bibliography {
    ($($name:ident, $id:literal, $known:ident, $work:literal;)*) => {
        $(
            #[doc = $work]
            pub const $name: Source = Source { id: $id, work: $work, known: Known::$known };
        )*
        /// Every work cited by a card.
        pub const BIBLIOGRAPHY: &[Source] = &[$($name),*];
    };
}

bibliography! {
    DEFINITION, "definition", Derived, "Follows from the definitions of the quantities";
    GUM, "jcgm-100", Memory, "JCGM 100:2008, Guide to the expression of uncertainty in measurement";
    CONFORMITY, "jcgm-106", Memory, "JCGM 106:2012, The role of measurement uncertainty in conformity assessment";
    DECISION_RULE, "iso-14253-1", Memory, "ISO 14253-1:2017, Decision rules for verifying conformity with specifications";
    NORMAL_DEVIATES, "wichura-as-241", Memory, "M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37 (1988)";
    HANDBOOK_FUNCTIONS, "abramowitz-stegun", Memory, "M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964)";
    MACHINE_DESIGN, "shigley", Memory, "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th to 11th editions";
    FLUID_MECHANICS, "bansal", Memory, "R. K. Bansal, A Textbook of Fluid Mechanics and Hydraulic Machines, forced vortex";
    FLUID_POWER, "esposito", Memory, "A. Esposito, Fluid Power with Applications";
    FLUID_POWER_ENGINEERING, "fluid-power-engineering", Read, "Fluid Power Engineering, textbook, chapter 2";
    HYDRAULIC_CONTROL, "merritt", Memory, "H. E. Merritt, Hydraulic Control Systems, 1967";
    HEAT_CONDUCTION, "carslaw-jaeger", Memory, "H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 2nd edition, 1959";
    OIL_VOLUME, "api-mpms-11.1", Memory, "API MPMS chapter 11.1-2004 / ASTM D1250-04, Temperature and pressure volume correction factors";
    VISCOSITY_CHART, "astm-d341", Memory, "ASTM D341, Viscosity-temperature equations and charts for liquid petroleum or hydrocarbon products";
    VISCOSITY_INDEX, "astm-d2270", Read, "ASTM D2270 / ISO 2909, Calculating viscosity index from kinematic viscosity at 40 and 100 °C";
    OIL_BLEND, "astm-d7152", Memory, "ASTM D7152, Calculating viscosity of a blend of petroleum products";
    TIRES, "un-r30-r54", Memory, "UN Regulations 30 and 54, Pneumatic tires for passenger cars; for commercial vehicles";
    TIRE_MANUAL, "etrto", Memory, "ETRTO Standards Manual";
    SPEEDOMETERS, "un-r39", Memory, "UN Regulation 39, Speedometer equipment";
    COMMERCIAL_PARTS, "49-cfr-393", Read, "49 CFR part 393, Parts and accessories necessary for safe operation";
    PARK_MOVEMENT, "49-cfr-571-114", Memory, "49 CFR 571.114, Theft protection and rollaway prevention";
    CERTIFICATION, "49-cfr-567", Read, "49 CFR part 567, Certification, in letters of interpretation";
    WEIGHT_CLASSES, "49-cfr-565", Read, "49 CFR 565.15, Vehicle weight classes, in a secondary summary";
    TIRE_SELECTION, "49-cfr-571-120", Read, "49 CFR 571.120, Tire selection and rims for vehicles above 4536 kg, in a letter of interpretation";
    TOW_RATING, "sae-j2807", Read, "SAE J2807, Performance requirements for determining tow-vehicle ratings, in secondary summaries";
    ROAD_LOADS, "sae-j1263", Memory, "SAE J1263, Road load measurement and dynamometer simulation using coastdown techniques";
    COAST_DOWNS, "40-cfr-1066", Read, "40 CFR part 1066, Vehicle-testing procedures";
    HIGHWAYS, "mannering-washburn", Memory, "F. L. Mannering and S. S. Washburn, Principles of Highway Engineering and Traffic Analysis";
    ATMOSPHERE, "iso-2533", Memory, "ISO 2533:1975, Standard atmosphere";
    EPICYCLIC_TRAINS, "mueller", Memory, "H. W. Müller, Epicyclic Drive Trains: Analysis, Synthesis, and Applications (1982)";
    GEAR_HANDBOOK, "metric-gear-technology", Read, "Elements of Metric Gear Technology, gear handbook";
    LIMITS_AND_FITS, "iso-286", Memory, "ISO 286-1 and ISO 286-2:2010, Code system for tolerances on linear sizes";
    BEARING_LIFE, "iso-281", Memory, "ISO 281:2007, Rolling bearings, Dynamic load ratings and rating life";
    BEARING_STATIC, "iso-76", Memory, "ISO 76:2006, Rolling bearings, Static load ratings";
    CYCLE_COUNTING, "astm-e1049", Memory, "ASTM E1049-85, Practices for cycle counting in fatigue analysis";
    LINEAR_DAMAGE, "miner", Memory, "M. A. Miner, Cumulative damage in fatigue, Journal of Applied Mechanics 12 (1945)";
    BOOTSTRAP, "efron-tibshirani", Memory, "B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap, 1993";
    BUS_SCALING, "sae-j1939-71", Memory, "SAE J1939-71, Vehicle application layer";
    BAYES, "gelman", Memory, "A. Gelman and others, Bayesian Data Analysis, 3rd edition, 2013";
    INFORMATION, "cover-thomas", Memory, "T. M. Cover and J. A. Thomas, Elements of Information Theory, 2nd edition, 2006";
    CONVERTER_TEST, "sae-j643", Memory, "SAE J643, Hydrodynamic drive test code";
    HEAT_TRANSFER, "incropera", Memory, "F. P. Incropera and others, Fundamentals of Heat and Mass Transfer, 6th edition, 2007";
    LEAST_SQUARES, "savitzky-golay", Memory, "A. Savitzky and M. J. E. Golay, Smoothing and differentiation of data by simplified least squares procedures, Analytical Chemistry 36 (1964)";
    NET_POWER, "sae-j1349", Memory, "SAE J1349, Engine power test code, spark ignition and compression ignition, net power rating";
    QUANTIZATION, "widrow-kollar", Memory, "B. Widrow and I. Kollár, Quantization Noise, 2008";
    CUMULATIVE_SUMS, "page", Memory, "E. S. Page, Continuous inspection schemes, Biometrika 41 (1954)";
    SEQUENTIAL_TESTS, "siegmund", Memory, "D. Siegmund, Sequential Analysis: Tests and Confidence Intervals, 1985";
    PRACTICE, "practice", Practice, "Common practice of the trade, no source";
}

/// Every card, chapter by chapter.
#[rustfmt::skip] // one line each, in the order of the chapters
pub const CARDS: &[&[Card]] = &[
    crate::judge::CARDS,
    crate::train::CARDS,
    crate::tire::CARDS,
    crate::road::CARDS,
    crate::converter::CARDS,
    crate::fluid::CARDS,
    crate::clutch::CARDS,
    crate::fit::CARDS,
    crate::hydraulic::CARDS,
    crate::stack::CARDS,
    crate::interchange::CARDS,
    crate::identify::CARDS,
    crate::hold::CARDS,
    crate::tow::CARDS,
    crate::duty::CARDS,
    crate::live::CARDS,
];

/// Every card.
pub fn all() -> impl Iterator<Item = &'static Card> {
    CARDS.iter().copied().flatten()
}

/// The card with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Card> {
    all().find(|card| card.id == id)
}
