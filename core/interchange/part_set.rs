//! A set of parts, a bit for each.

use super::joints::MAX_PARTS;

/// A set of parts.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PartSet {
    /// Bit n of word w stands for part 64 w + n.
    pub words: [u64; 4],
}

const _: () = assert!(MAX_PARTS == 4 * 64, "a bit for each part");

impl PartSet {
    /// No part.
    pub const EMPTY: Self = Self { words: [0; 4] };

    /// These parts; a number of [`MAX_PARTS`] or more is no part and is left out.
    #[must_use]
    pub fn of(parts: &[u16]) -> Self {
        let mut set = Self::EMPTY;
        parts.iter().for_each(|&part| set.insert(part));
        set
    }

    /// Whether the part is in the set.
    #[must_use]
    pub fn has(&self, part: u16) -> bool {
        self.words.get(usize::from(part / 64)).is_some_and(|word| word >> (part % 64) & 1 == 1)
    }

    /// Adds a part.
    pub fn insert(&mut self, part: u16) {
        if let Some(word) = self.words.get_mut(usize::from(part / 64)) {
            *word |= 1 << (part % 64);
        }
    }

    pub(super) fn remove(&mut self, part: u16) {
        if let Some(word) = self.words.get_mut(usize::from(part / 64)) {
            *word &= !(1 << (part % 64));
        }
    }

    /// The parts, rising.
    pub fn parts(&self) -> impl Iterator<Item = u16> + '_ {
        (0..MAX_PARTS as u16).filter(|&part| self.has(part))
    }

    /// How many parts.
    #[must_use]
    pub fn size(&self) -> u16 {
        self.words.iter().map(|word| word.count_ones() as u16).sum()
    }
}
