//! What a unit offers: its gears with ratio and efficiency, and the torques that its record rates it for.

use crate::error::{Error, Result, positive, within};
use crate::real::abs;

/// Most gears of a unit, engine-braking and reverse gears included.
pub const MAX_OFFERED_GEARS: usize = 16;

/// No gear: what [`Pull::chosen`](super::Pull::chosen) holds where none will do.
pub const NO_GEAR: u32 = u32::MAX;

/// A gear that a unit offers.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OfferedGear {
    /// Input over output speed; negative in reverse.
    pub ratio: f64,
    /// Efficiency from input to output on the road, above 0 to 1.
    pub efficiency: f64,
    /// Mask of the elements that carry under drive, one-way clutches included.
    pub closed: u32,
    /// Mask of the one-way clutches among them: where it is not 0, the gear does not brake.
    pub one_way: u32,
}

impl OfferedGear {
    /// No gear.
    pub const NONE: Self = Self { ratio: 0.0, efficiency: 0.0, closed: 0, one_way: 0 };

    fn checked(self) -> Result<Self> {
        if self.ratio == 0.0 {
            return Err(Error::Missing {
                name: "ratio",
                why: "0 is no gear; give input over output speed, negative in reverse",
            });
        }
        positive("ratio", abs(self.ratio)).map_err(|_| Error::NotFinite { name: "ratio", value: self.ratio })?;
        positive("efficiency", within("efficiency", self.efficiency, 0.0, 1.0)?)?;
        Ok(self)
    }
}

/// What a unit offers. The ratings are those of its record; nothing here computes one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gearing {
    /// Gears in the order of the record; only the first `count` are used.
    pub gears: [OfferedGear; MAX_OFFERED_GEARS],
    /// Number of gears.
    pub count: u32,
    /// Rated torque at the input (turbine) in the forward gears.
    pub rated_input_nm: f64,
    /// Rated torque at the input in reverse.
    pub rated_reverse_nm: f64,
    /// Rated torque at the output.
    pub rated_output_nm: f64,
}

impl Gearing {
    /// The gears of a unit and the ratings of its record.
    ///
    /// * `gears` — 1 to [`MAX_OFFERED_GEARS`], ratio not 0, efficiency above 0 to 1; `rated_input_nm`, `rated_reverse_nm`,
    ///   `rated_output_nm` — above 0; where the record rates reverse no lower, the rating of the forward gears
    /// * errors: [`Error::Count`], [`Error::Missing`] for a ratio of 0, [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// ```
    /// use trainwright::tow::{Gearing, OfferedGear};
    /// let gear = |ratio, efficiency| OfferedGear { ratio, efficiency, closed: 0, one_way: 0 };
    /// let unit = Gearing::new(&[gear(2.5, 0.95), gear(1.0, 0.98), gear(-2.0, 0.93)], 640.0, 420.0, 2800.0)?;
    /// assert_eq!(unit.gears().len(), 3);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn new(
        gears: &[OfferedGear],
        rated_input_nm: f64,
        rated_reverse_nm: f64,
        rated_output_nm: f64,
    ) -> Result<Self> {
        if gears.is_empty() || gears.len() > MAX_OFFERED_GEARS {
            let count = gears.len().try_into().unwrap_or(u32::MAX);
            return Err(Error::Count { name: "gears", count, low: 1, high: MAX_OFFERED_GEARS as u32 });
        }
        let mut offered = [OfferedGear::NONE; MAX_OFFERED_GEARS];
        for (place, gear) in offered.iter_mut().zip(gears) {
            *place = gear.checked()?;
        }
        Ok(Self {
            gears: offered,
            count: gears.len() as u32,
            rated_input_nm: positive("rated_input_nm", rated_input_nm)?,
            rated_reverse_nm: positive("rated_reverse_nm", rated_reverse_nm)?,
            rated_output_nm: positive("rated_output_nm", rated_output_nm)?,
        })
    }

    /// The gears in use.
    #[must_use]
    pub fn gears(&self) -> &[OfferedGear] {
        self.gears.get(..self.count as usize).unwrap_or(&[])
    }

    /// The gear at this place, [`OfferedGear::NONE`] where there is none.
    #[must_use]
    pub fn gear(&self, place: u32) -> OfferedGear {
        self.gears().get(place as usize).copied().unwrap_or(OfferedGear::NONE)
    }

    /// Rated torque at the input of a gear of this ratio.
    pub(super) fn rated_nm(&self, ratio: f64) -> f64 {
        if ratio < 0.0 { self.rated_reverse_nm } else { self.rated_input_nm }
    }

    /// As [`Gearing::new`], for one that came through C.
    pub(super) fn checked(&self) -> Result<()> {
        if self.count == 0 || self.count as usize > MAX_OFFERED_GEARS {
            return Err(Error::Count { name: "gears", count: self.count, low: 1, high: MAX_OFFERED_GEARS as u32 });
        }
        for gear in self.gears() {
            gear.checked()?;
        }
        positive("rated_input_nm", self.rated_input_nm)?;
        positive("rated_reverse_nm", self.rated_reverse_nm)?;
        positive("rated_output_nm", self.rated_output_nm)?;
        Ok(())
    }
}
