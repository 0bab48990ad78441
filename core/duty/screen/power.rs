//! Logarithm, exponential and power that a compiler can compute for many rows at once, the same bits on every machine.
//!
//! Only additions, multiplications, one division and moves of bits: no table, no branch, no fused multiply-add. The series
//! are summed in pairs, so that a processor need not wait for one term before the next.

use crate::error::{Result, positive, within};

/// 1.5 × 2^52: added to a number below 2^51, it rounds it to a whole number, which then stands in the low bits. A 2^k-th of
/// it rounds to steps of 2^-k.
pub(super) const MAGIC: f64 = 6_755_399_441_055_744.0;

const ONE: u64 = 0x3ff0_0000_0000_0000;
/// The bits of √½, to which a mantissa is reduced.
const ROOT_HALF: u64 = 0x3fe6_a09e_667f_3bcd;
const MANTISSA: u64 = 0x000f_ffff_ffff_ffff;
/// 2^52, and its bits: a whole number below 2^52 put into its low bits is that number more.
const TWO_52: f64 = 4_503_599_627_370_496.0;
const TWO_52_BITS: u64 = 0x4330_0000_0000_0000;

/// x × 2^k rounded to a whole number, to even; |x × 2^k| below 2^51. `scale` is 2^k.
#[inline(always)]
pub(super) fn ticks(x: f64, scale: f64) -> i64 {
    let magic = MAGIC / scale;
    (x + magic).to_bits().wrapping_sub(magic.to_bits()).cast_signed()
}

/// As [`ticks`], with what rounding left of x, exactly.
#[inline(always)]
pub(super) fn ticks_and_rest(x: f64, scale: f64) -> (i64, f64) {
    let magic = MAGIC / scale;
    let rounded = x + magic;
    (rounded.to_bits().wrapping_sub(magic.to_bits()).cast_signed(), x - (rounded - magic))
}

/// Sum of the [`ticks`] of many numbers: what they have in common is taken off once.
#[derive(Clone, Copy)]
pub(super) struct Ticks {
    magic: f64,
    bits: u64,
}

impl Ticks {
    /// No number yet; `scale` is 2^k.
    #[inline(always)]
    pub(super) fn of(scale: f64) -> Self {
        Self { magic: MAGIC / scale, bits: 0 }
    }

    #[inline(always)]
    pub(super) fn add(&mut self, x: f64) {
        self.bits = self.bits.wrapping_add((x + self.magic).to_bits());
    }

    /// The sum, where `count` numbers were added.
    #[inline(always)]
    pub(super) fn sum(self, count: usize) -> i64 {
        self.bits.wrapping_sub(self.magic.to_bits().wrapping_mul(count as u64)).cast_signed()
    }
}

/// a + b x + c x² + d x³, in pairs: half of it does not wait for the other half.
#[inline(always)]
fn cubic([a, b, c, d]: [f64; 4], x: f64, square: f64) -> f64 {
    (a + b * x) + (c + d * x) * square
}

/// Logarithm to base 2 of a normal number above 0, within 1e-15 of its greater of size and 1.
///
/// x = 2^k z with z from √½ to √2; log2 z = 2 artanh s/ln 2, s = (z − 1)/(z + 1), as s P(s²); P of degree 6 is within 2e-16
/// of the value (minimax, by the exchange algorithm).
#[inline(always)]
pub(super) fn log2(x: f64) -> f64 {
    let shifted = x.to_bits().wrapping_add(ONE - ROOT_HALF);
    let k = f64::from_bits((shifted >> 52) | TWO_52_BITS) - (TWO_52 + 1023.0);
    let z = f64::from_bits((shifted & MANTISSA).wrapping_add(ROOT_HALF));
    let s = (z - 1.0) / (z + 1.0);
    let q = s * s;
    let square = q * q;
    let low = [2.885_390_081_777_927, 0.961_796_693_924_318_4, 0.577_078_017_252_708_4, 0.412_198_401_123_148_7];
    let high = (0.320_616_448_764_118_54 + 0.261_442_417_952_918_17 * q) + 0.242_936_828_564_063_95 * square;
    k + s * (cubic(low, q, square) + high * (square * square))
}

/// 2 to the power of x, −1000 to 1000, within 3e-14 of it.
///
/// x = k + r with k whole, |r| up to ½; 2^r as 1 + r P(r); P of degree 8 is within 5.4e-14 of the value (minimax).
#[inline(always)]
pub(super) fn exp2(x: f64) -> f64 {
    let shifted = x + MAGIC;
    let r = x - (shifted - MAGIC);
    let square = r * r;
    let fourth = square * square;
    let low = [1.0, 0.693_147_180_559_928_7, 0.240_226_506_958_170_56, 0.055_504_108_666_907_43];
    let middle =
        [0.009_618_129_158_096_572, 0.001_333_355_774_748_578_2, 1.540_345_689_927_676e-4, 1.525_296_396_561_852_2e-5];
    let high = 1.325_498_529_464_04e-6 + 1.014_756_518_130_867_3e-7 * r;
    let sum = cubic(low, r, square) + (cubic(middle, r, square) + high * fourth) * fourth;
    f64::from_bits(sum.to_bits().wrapping_add(shifted.to_bits() << 52))
}

/// A number of 0 or more to a power above 0: 0 below 2^-60.
#[inline(always)]
pub(super) fn power(base: f64, exponent: f64) -> f64 {
    power_of_exponent(base, exponent_of_two(base, exponent))
}

/// The exponent of two that is a power.
#[inline(always)]
pub(super) fn exponent_of_two(base: f64, exponent: f64) -> f64 {
    exponent * log2(base)
}

/// [`power`], of the base and its [`exponent_of_two`].
#[inline(always)]
pub(super) fn power_of_exponent(base: f64, exponent_of_two: f64) -> f64 {
    const LEAST: f64 = 1.0 / (1_u64 << 60) as f64;
    let value = exp2(exponent_of_two);
    if base < LEAST { 0.0 } else { value }
}

/// Base to an exponent as the pass over rows forms it, which is not the `pow` of `libm`.
///
/// * `base` — 0 to 65 536; below 2^-60 it counts as 0
/// * `exponent` — above 0 to 16
/// * returns the power, at most 2e-13 of it away
/// * errors: for a number outside its range
///
/// ```
/// use trainwright::duty::screen::screen_power;
/// assert!((screen_power(0.5, 6.5)? - 0.011_048_543_456).abs() < 1e-11);
/// assert!(screen_power(0.5, 17.0).is_err());
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn screen_power(base: f64, exponent: f64) -> Result<f64> {
    within("base", base, 0.0, 65_536.0)?;
    within("exponent", positive("exponent", exponent)?, 0.0, 16.0)?;
    Ok(power(base, exponent))
}
