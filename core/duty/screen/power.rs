//! Logarithm, exponential and power that a compiler can compute for many rows at once, the same bits on every machine.
//!
//! Only additions, multiplications, one division and moves of bits: no table, no branch, no fused multiply-add.

/// 1.5 × 2^52: added to a number below 2^51, it rounds it to a whole number, which then stands in the low bits.
pub(super) const MAGIC: f64 = 6_755_399_441_055_744.0;
const MAGIC_BITS: u64 = MAGIC.to_bits();

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
    (x * scale + MAGIC).to_bits().wrapping_sub(MAGIC_BITS).cast_signed()
}

/// As [`ticks`], with what rounding left over, exactly.
#[inline(always)]
pub(super) fn ticks_and_rest(x: f64, scale: f64) -> (i64, f64) {
    let scaled = x * scale;
    let rounded = scaled + MAGIC;
    (rounded.to_bits().wrapping_sub(MAGIC_BITS).cast_signed(), scaled - (rounded - MAGIC))
}

/// Logarithm to base 2 of a normal number above 0, within 1e-15 of its greater of size and 1.
///
/// x = 2^k z with z from √½ to √2; ln z = 2 artanh s, s = (z − 1)/(z + 1), as a series of 11 terms.
#[inline(always)]
pub(super) fn log2(x: f64) -> f64 {
    let shifted = x.to_bits().wrapping_add(ONE - ROOT_HALF);
    let k = f64::from_bits((shifted >> 52) | TWO_52_BITS) - (TWO_52 + 1023.0);
    let z = f64::from_bits((shifted & MANTISSA).wrapping_add(ROOT_HALF));
    let s = (z - 1.0) / (z + 1.0);
    let q = s * s;
    let mut sum = 1.0 / 21.0;
    sum = sum * q + 1.0 / 19.0;
    sum = sum * q + 1.0 / 17.0;
    sum = sum * q + 1.0 / 15.0;
    sum = sum * q + 1.0 / 13.0;
    sum = sum * q + 1.0 / 11.0;
    sum = sum * q + 1.0 / 9.0;
    sum = sum * q + 1.0 / 7.0;
    sum = sum * q + 1.0 / 5.0;
    sum = sum * q + 1.0 / 3.0;
    let ln = 2.0 * s + 2.0 * s * q * sum;
    k + ln * core::f64::consts::LOG2_E
}

/// 2 to the power of x, −1000 to 1000, within 1e-15 of it. Beyond, the end of that range is taken; NaN stays NaN.
///
/// x = k + r with k whole, |r| up to ½; 2^r = e^(r ln 2) as a series of 14 terms.
#[inline(always)]
pub(super) fn exp2(x: f64) -> f64 {
    let x = if x > 1000.0 { 1000.0 } else { x };
    let x = if x < -1000.0 { -1000.0 } else { x };
    let shifted = x + MAGIC;
    let r = (x - (shifted - MAGIC)) * core::f64::consts::LN_2;
    let mut sum = 1.0 / 6_227_020_800.0;
    sum = sum * r + 1.0 / 479_001_600.0;
    sum = sum * r + 1.0 / 39_916_800.0;
    sum = sum * r + 1.0 / 3_628_800.0;
    sum = sum * r + 1.0 / 362_880.0;
    sum = sum * r + 1.0 / 40_320.0;
    sum = sum * r + 1.0 / 5_040.0;
    sum = sum * r + 1.0 / 720.0;
    sum = sum * r + 1.0 / 120.0;
    sum = sum * r + 1.0 / 24.0;
    sum = sum * r + 1.0 / 6.0;
    sum = sum * r + 0.5;
    sum = sum * r + 1.0;
    sum = sum * r + 1.0;
    sum * f64::from_bits(ONE.wrapping_add(shifted.to_bits() << 52))
}

/// A number of 0 or more to a power above 0: 0 below 2^-100.
#[inline(always)]
pub(super) fn power(base: f64, exponent: f64) -> f64 {
    const LEAST: f64 = 7.888_609_052_210_118e-31;
    let value = exp2(exponent * log2(base));
    if base < LEAST { 0.0 } else { value }
}

/// Base to an exponent as the pass over rows forms it, which is not the `pow` of `libm`: at most 2e-13 away from it, for a
/// base up to 2^16 and an exponent up to 16; a base below 2^-100 counts as 0.
#[must_use]
pub fn screen_power(base: f64, exponent: f64) -> f64 {
    power(base, exponent)
}
