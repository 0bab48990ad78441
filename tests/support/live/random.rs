//! Repeatable numbers: the same on every machine and in every profile.

/// SplitMix64 (Steele, Lea and Flood 2014, from memory).
#[derive(Debug, Clone)]
pub struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x5851_F42D_4C95_7F2D)
    }

    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        bits ^ (bits >> 31)
    }

    /// From 0 up to 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, least: f64, greatest: f64) -> f64 {
        least + (greatest - least) * self.share()
    }

    pub fn chance(&mut self, chance: f64) -> bool {
        self.share() < chance
    }

    /// Mean 0, standard deviation 1: twelve uniform numbers, less their mean.
    pub fn normal(&mut self) -> f64 {
        let mut sum = 0;
        for _ in 0..3 {
            let bits = self.bits();
            sum += (bits & 0xFFFF) + (bits >> 16 & 0xFFFF) + (bits >> 32 & 0xFFFF) + (bits >> 48);
        }
        (sum as f64 + 6.0) / 65536.0 - 6.0
    }
}
