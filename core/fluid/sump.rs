//! The sump: volume and level over a free area that changes with height, and what a tilted or simplified sump shows.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{sqrt, tan};

pub(super) const VOLUME_TO: Card = Card {
    id: "fluid.volume_to",
    purpose: "Volume in the sump between the overflow edge and a height",
    equation: "V(h) = ∫₀ʰ A dh, A linear between the rows of the table",
    symbols: &[
        symbol("V", "volume from the edge, negative below it", "mL"),
        symbol("h", "height_mm above the edge", "mm"),
        symbol("A", "free_area_cm2", "cm²"),
    ],
    range: "heights of the table; refused outside",
    source: &card::DEFINITION,
    locator: "volume of a prismatoid, exact for a linear area",
};

pub(super) const CONSTANT_AREA_LEVEL_MM: Card = Card {
    id: "fluid.constant_area_level_mm",
    purpose: "Level that a volume would reach in a sump with vertical sides",
    equation: "h = V/A",
    symbols: &[
        symbol("h", "level above the edge", "mm"),
        symbol("V", "above_edge_ml", "mL"),
        symbol("A", "area_cm2", "cm²"),
    ],
    range: "a shortcut: wrong by the change of the area over the height",
    source: &card::DEFINITION,
    locator: "vertical sides",
};

pub(super) const TILT_SHIFT_MM: Card = Card {
    id: "fluid.tilt_shift_mm",
    purpose: "Apparent shift of the level away from the center of the sump when the vehicle is not level",
    equation: "Δh = L tan φ",
    symbols: &[
        symbol("Δh", "shift, seen minus true", "mm"),
        symbol("L", "offset_mm, toward the lower end", "mm"),
        symbol("φ", "tilt_deg", "°"),
    ],
    range: "up to 30°, free surface small against the sump's change of area",
    source: &card::DEFINITION,
    locator: "plane level surface",
};

/// Most rows of a sump's table.
pub const SUMP_ROWS: usize = 16;

/// Free area of the sump against height above the overflow edge, linear between rows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sump {
    /// Rows in use, 2 to 16.
    pub rows: u32,
    /// Heights, ascending, from below the edge (0) to above it.
    pub height_mm: [f64; SUMP_ROWS],
    /// Free area at each height, above 0.
    pub free_area_cm2: [f64; SUMP_ROWS],
}

/// Part of the sump between two rows.
#[derive(Clone, Copy)]
pub(super) struct Slab {
    bottom_mm: f64,
    top_mm: f64,
    bottom_cm2: f64,
    top_cm2: f64,
}

impl Slab {
    fn slope(self) -> f64 {
        (self.top_cm2 - self.bottom_cm2) / (self.top_mm - self.bottom_mm)
    }

    fn area_cm2(self, height_mm: f64) -> f64 {
        self.bottom_cm2 + self.slope() * (height_mm - self.bottom_mm)
    }

    /// Volume from the bottom up to a height: a depth times the mean of the areas at its ends; cm² × mm = 0.1 mL.
    fn volume_ml(self, height_mm: f64) -> f64 {
        0.1 * (height_mm - self.bottom_mm) * 0.5 * (self.bottom_cm2 + self.area_cm2(height_mm))
    }

    /// Height at which this volume stands above the bottom: A₀ x + s x²/2 = V solved without cancellation.
    fn height_mm(self, volume_ml: f64) -> f64 {
        let twice = 20.0 * volume_ml;
        let root = sqrt((self.bottom_cm2 * self.bottom_cm2 + self.slope() * twice).max(0.0));
        self.bottom_mm + twice / (self.bottom_cm2 + root)
    }
}

impl Sump {
    /// A sump from its table.
    ///
    /// * `height_mm` — 2 to 16 heights above the overflow edge, ascending, the first below 0, the last above;
    ///   `free_area_cm2` — as many areas, above 0
    /// * errors: [`Error::Count`], [`Error::Inconsistent`], [`Error::NotPositive`], [`Error::NotFinite`]
    pub fn from_table(height_mm: &[f64], free_area_cm2: &[f64]) -> Result<Self> {
        let count = u32::try_from(height_mm.len()).unwrap_or(u32::MAX);
        if height_mm.len() != free_area_cm2.len() {
            return Err(Error::Inconsistent { name: "free_area_cm2", why: "give one area for each height" });
        }
        let mut sump = Self { rows: count, height_mm: [0.0; SUMP_ROWS], free_area_cm2: [0.0; SUMP_ROWS] };
        for (to, from) in sump.height_mm.iter_mut().zip(height_mm) {
            *to = *from;
        }
        for (to, from) in sump.free_area_cm2.iter_mut().zip(free_area_cm2) {
            *to = *from;
        }
        sump.check_table()?;
        Ok(sump)
    }

    /// Whether the table can be used: 2 to 16 rows, heights ascending through 0, areas above 0.
    pub fn check_table(&self) -> Result<()> {
        if !(2..=SUMP_ROWS as u32).contains(&self.rows) {
            return Err(Error::Count { name: "sump rows", count: self.rows, low: 2, high: SUMP_ROWS as u32 });
        }
        for slab in self.slabs() {
            finite("height_mm", slab.bottom_mm)?;
            finite("height_mm", slab.top_mm)?;
            positive("free_area_cm2", slab.bottom_cm2)?;
            positive("free_area_cm2", slab.top_cm2)?;
            if slab.bottom_mm >= slab.top_mm {
                return Err(Error::Inconsistent { name: "height_mm", why: "heights must ascend" });
            }
        }
        let (bottom_mm, top_mm) = self.span_mm();
        if bottom_mm < 0.0 && top_mm > 0.0 {
            return Ok(());
        }
        Err(Error::Inconsistent {
            name: "height_mm",
            why: "heights count from the overflow edge: the first must be below 0 and the last above",
        })
    }

    /// Free area at a height, cm², linear between rows.
    ///
    /// * `height_mm` — above the overflow edge, within the table
    /// * errors: [`Error::OutOfRange`], and those of [`Sump::check_table`]
    pub fn free_area_at(&self, height_mm: f64) -> Result<f64> {
        Ok(self.slab_at(height_mm)?.area_cm2(height_mm))
    }

    /// Volume between the overflow edge and a height.
    ///
    /// V(h) = ∫₀ʰ A dh, A linear between the rows of the table
    ///
    /// * `height_mm` — h above the edge, within the table
    /// * returns V, mL, negative below the edge
    /// * errors: [`Error::OutOfRange`], and those of [`Sump::check_table`]
    ///
    /// Source: integral of a linear area, exact. Example: 100 cm² at the edge and 200 cm² 10 mm higher hold 150 mL between.
    ///
    /// ```
    /// let sump = trainwright::fluid::Sump::from_table(&[-10.0, 0.0, 10.0], &[80.0, 100.0, 200.0])?;
    /// assert!((sump.volume_to(10.0)? - 150.0).abs() < 1e-12);
    /// assert!((sump.level_for(150.0)? - 10.0).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn volume_to(&self, height_mm: f64) -> Result<f64> {
        self.slab_at(height_mm)?;
        Ok(self.volume_below_ml(height_mm) - self.volume_below_ml(0.0))
    }

    /// Level at which this volume stands between it and the overflow edge: [`Sump::volume_to`] solved for h, exactly.
    ///
    /// * `volume_ml` — from the edge, negative below it
    /// * returns h, mm above the edge
    /// * errors: [`Error::OutOfRange`] where the fluid would leave the table
    pub fn level_for(&self, volume_ml: f64) -> Result<f64> {
        self.check_table()?;
        let (bottom_mm, top_mm) = self.span_mm();
        let below_edge_ml = self.volume_below_ml(0.0);
        within(
            "volume_ml",
            volume_ml,
            self.volume_below_ml(bottom_mm) - below_edge_ml,
            self.volume_below_ml(top_mm) - below_edge_ml,
        )?;
        let mut left_ml = volume_ml + below_edge_ml;
        for slab in self.slabs() {
            let slab_ml = slab.volume_ml(slab.top_mm);
            if left_ml <= slab_ml {
                return Ok(slab.height_mm(left_ml));
            }
            left_ml -= slab_ml;
        }
        Ok(top_mm)
    }

    fn slabs(&self) -> impl Iterator<Item = Slab> {
        let heights = self.height_mm.iter().zip(self.height_mm.iter().skip(1));
        let areas = self.free_area_cm2.iter().zip(self.free_area_cm2.iter().skip(1));
        heights
            .zip(areas)
            .take((self.rows.saturating_sub(1)) as usize)
            .map(|((&bottom_mm, &top_mm), (&bottom_cm2, &top_cm2))| Slab { bottom_mm, top_mm, bottom_cm2, top_cm2 })
    }

    pub(super) fn slab_at(&self, height_mm: f64) -> Result<Slab> {
        self.check_table()?;
        let (bottom_mm, top_mm) = self.span_mm();
        within("height_mm", height_mm, bottom_mm, top_mm)?;
        let slab = self.slabs().find(|slab| height_mm <= slab.top_mm);
        slab.ok_or(Error::OutOfRange { name: "height_mm", value: height_mm, low: bottom_mm, high: top_mm })
    }

    pub(super) fn span_mm(&self) -> (f64, f64) {
        let bottom_mm = self.slabs().next().map_or(0.0, |slab| slab.bottom_mm);
        (bottom_mm, self.slabs().last().map_or(0.0, |slab| slab.top_mm))
    }

    /// Volume from the lowest row up to a height of the table.
    fn volume_below_ml(&self, height_mm: f64) -> f64 {
        self.slabs()
            .take_while(|slab| slab.bottom_mm < height_mm)
            .map(|slab| slab.volume_ml(height_mm.min(slab.top_mm)))
            .sum()
    }
}

/// Level that a volume would reach in a sump with vertical sides: the usual shortcut, shown beside the answer.
///
/// h = V/A
///
/// * `above_edge_ml` — V, mL, negative below the edge; `area_cm2` — A, cm², above 0
/// * returns h, mm
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: definition. Example: 388.8 mL over 900 cm² stand 4.32 mm high.
///
/// ```
/// assert!((trainwright::fluid::constant_area_level_mm(388.8, 900.0)? - 4.32).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn constant_area_level_mm(above_edge_ml: f64, area_cm2: f64) -> Result<f64> {
    Ok(10.0 * finite("above_edge_ml", above_edge_ml)? / positive("area_cm2", area_cm2)?)
}

/// How much too high the level looks, away from the center of the sump, when the vehicle is not level.
///
/// Δh = L tan φ
///
/// * `offset_mm` — L, distance of the place where the level is seen from the center of the free surface, positive toward
///   the lower end; `tilt_deg` — φ, °, 0 to 30
/// * returns Δh, mm: level seen minus true level
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: geometry of a level surface. Example: 100 mm from the center on a 3 % grade (1.718°) it looks 3 mm too high.
///
/// ```
/// assert!((trainwright::fluid::tilt_shift_mm(100.0, 1.718)? - 3.0).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn tilt_shift_mm(offset_mm: f64, tilt_deg: f64) -> Result<f64> {
    finite("offset_mm", offset_mm)?;
    within("tilt_deg", tilt_deg, 0.0, 30.0)?;
    Ok(offset_mm * tan(tilt_deg.to_radians()))
}
