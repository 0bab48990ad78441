//! From a family to its evidence, and from what was found on a unit to what it is.

mod contradictions;
mod findings;
mod looks;

use std::string::String;
use std::vec;
use std::vec::Vec;

use super::fault::Fault;
use super::problem::Problems;
use crate::identify::{Conclusion, Nearest, Origin, PartFinding, VariantFinding, Weighed, Worth};
use crate::judge::{Limits, Reading};

/// The evidence of a family: what can be looked at, on which part, and what each variant shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Bench {
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Chance of each variant before anything is looked at.
    pub prior: Vec<f64>,
    /// Names of the parts that carry evidence, in the order of the record.
    pub parts: Vec<String>,
    /// For each part, the chance that it came from another unit.
    pub exchanged: Vec<f64>,
    /// Marks, then sizes, in the order of the record.
    pub looks: Vec<Look>,
}

/// Something to look at.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// Name in the record.
    pub id: String,
    /// What to look for, or what to measure.
    pub look: String,
    /// Place of the part that carries it.
    pub part: usize,
    /// Labor to look, minutes.
    pub minutes: f64,
    /// A mark or a size.
    pub shows: Shows,
}

/// What a look shows in each variant.
#[derive(Clone, Debug, PartialEq)]
pub enum Shows {
    /// A mark that is there with this chance.
    Mark {
        /// Chance in each variant.
        chance: Vec<f64>,
    },
    /// A size.
    Size {
        /// Limits in each variant, mm.
        size_mm: Vec<Limits>,
        /// Name of the instrument.
        instrument: String,
        /// Standard uncertainty of the instrument, mm, where its record is at hand.
        u_mm: Option<f64>,
        /// Range of the instrument, mm, where its record is at hand.
        range_mm: Option<Limits>,
    },
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Found {
    /// A mark that is there, or is missing.
    Seen(bool),
    /// A size, with its standard uncertainty where it is not that of the instrument.
    Measured {
        /// Reading, mm.
        value_mm: f64,
        /// Standard uncertainty, mm.
        u_mm: Option<f64>,
    },
}

/// A look that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct Made {
    /// Place among the looks.
    pub look: usize,
    /// A mark that is there or is missing; of a size, the reading.
    pub found: FoundReading,
    /// Chance of each variant after this look and those before it.
    pub chance: Vec<f64>,
}

/// What a look gave, with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FoundReading {
    /// A mark that is there, or is missing.
    Seen(bool),
    /// A size.
    Measured {
        /// The reading, mm.
        reading_mm: Reading,
        /// The variant that it comes nearest to.
        nearest: Nearest,
        /// Whether it is NO-GO against the limits of every variant: worn, mismeasured, or not of this family.
        unexplained: bool,
        /// Whether it lies outside the range of the instrument, as the sizes of the record do.
        out_of_range: bool,
    },
}

/// A part that was looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct IdentifiedPart {
    /// Place of the part.
    pub part: usize,
    /// Where it came from.
    pub finding: PartFinding,
    /// Each variant as its origin.
    pub origins: Vec<Origin>,
}

/// A look that was not made yet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextLook {
    /// Place among the looks.
    pub look: usize,
    /// What it is worth; `None` for a size whose instrument is not known.
    pub worth: Option<Worth>,
}

/// What a unit is.
#[derive(Clone, Debug, PartialEq)]
pub struct Identified {
    /// Every variant.
    pub variants: Vec<VariantFinding>,
    /// The evidence as a whole.
    pub weighed: Weighed,
    /// Every part that was looked at.
    pub parts: Vec<IdentifiedPart>,
    /// The verdict.
    pub conclusion: Conclusion,
    /// The looks that were made, in the order given.
    pub made: Vec<Made>,
    /// The looks that were not made, the one that tells most per minute first.
    pub next: Vec<NextLook>,
}

fn refused<T>(fault: Fault) -> Result<T, Problems> {
    Err(Problems(vec![fault.unplaced()]))
}

/// Whether a range holds every size.
fn reaches(range: Limits, size_mm: &[Limits]) -> bool {
    size_mm.iter().all(|size| range.holds(size.lower) && range.holds(size.upper))
}
