//! What an image holds for the live monitor, so that firmware configures one without solving the train: the gears that two
//! speeds can tell apart, the elements that could slip in each, and what heats the elements.

use super::packed::Packed;
use super::{Contents, Counts, Image, count_of, refuse};
use crate::error::{Error, Result};
use crate::live::{LiveElement, LiveGear, LiveSuspect, MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS};

/// Number of gears, where the lists go together.
pub(super) fn count_of_gears(contents: &Contents<'_>, elements: usize) -> Result<u8> {
    let gears = count_of("gears of the live monitor", contents.live_gears.len(), 0, MAX_LIVE_GEARS)?;
    let wanted = if gears == 0 { 0 } else { elements };
    count_of("elements of the live monitor", contents.live_elements.len(), wanted, wanted.min(MAX_LIVE_ELEMENTS))?;
    Ok(gears)
}

impl Counts {
    fn live_elements(&self) -> u8 {
        if self.live_gears == 0 { 0 } else { self.elements }
    }
}

impl Image<'_> {
    fn live_elements_at(&self) -> Result<usize> {
        Ok(self.live_at()? + usize::from(self.counts()?.live_gears) * LiveGear::BYTES)
    }

    /// Where the live monitor ends, and the family begins.
    pub(super) fn family_at(&self) -> Result<usize> {
        Ok(self.live_elements_at()? + usize::from(self.counts()?.live_elements()) * LiveElement::BYTES)
    }

    pub(super) fn check_live(&self) -> Result<()> {
        let counts = self.counts()?;
        if usize::from(counts.live_gears) > MAX_LIVE_GEARS || usize::from(counts.live_elements()) > MAX_LIVE_ELEMENTS {
            return refuse("it has more gears or elements than a live monitor takes");
        }
        for index in 0..counts.live_gears {
            let gear = self.live_gear(index)?;
            let suspects = gear.suspects.get(..usize::from(gear.suspect_count));
            let known = |suspects: &[LiveSuspect]| suspects.iter().all(|suspect| suspect.element < counts.elements);
            if !suspects.is_some_and(known) {
                return refuse("a gear of the live monitor suspects an element that the train does not have");
            }
        }
        Ok(())
    }

    fn live_gear(&self, gear: u8) -> Result<LiveGear> {
        self.item("gear", self.live_at()?, gear, self.counts()?.live_gears)
    }

    /// The gears as a live monitor takes them, and their number: ratio, and the elements that could slip.
    pub fn live_gears(&self) -> Result<([LiveGear; MAX_LIVE_GEARS], u8)> {
        let count = self.counts()?.live_gears;
        if count == 0 {
            return Err(Error::Missing { name: "live", why: "the image was written without gears for a live monitor" });
        }
        let mut gears = [LiveGear::NONE; MAX_LIVE_GEARS];
        for (place, gear) in (0..count).zip(&mut gears) {
            *gear = self.live_gear(place)?;
        }
        Ok((gears, count))
    }

    /// What heats the elements of the train, as a live monitor takes them, and their number; zeros where the record does not
    /// say.
    pub fn live_elements(&self) -> Result<([LiveElement; MAX_LIVE_ELEMENTS], u8)> {
        let (offset, count) = (self.live_elements_at()?, self.counts()?.live_elements());
        let mut elements = [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS];
        for (place, element) in (0..count).zip(&mut elements) {
            *element = self.item("element", offset, place, count)?;
        }
        Ok((elements, count))
    }
}
