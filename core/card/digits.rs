//! Numbers as text, without the formatting of the standard library: that one can panic in its corners, and firmware must not.

use crate::real::{abs, floor};
use core::fmt::{self, Write};

/// Digits that are shown of a number that is not whole.
const SHOWN: usize = 6;
/// Digits of the greatest 64-bit number.
const MOST: usize = 20;

/// Writes a number for reading: whole numbers in full, others with six digits, a true minus sign.
pub(crate) fn number(out: &mut dyn Write, value: f64) -> fmt::Result {
    if value.is_nan() {
        return out.write_str("not a number");
    }
    if value < 0.0 {
        out.write_char('−')?;
    }
    let size = abs(value);
    if size == f64::INFINITY {
        return out.write_str("infinite");
    }
    if size < 1e15 && (size >= 1e5 || size - floor(size) <= 0.0) {
        return whole(out, floor(size + 0.5) as u64);
    }
    let (first_six, exponent) = leading(size);
    let digits = digits(first_six);
    let digits = digits.iter().skip(MOST - SHOWN).copied();
    let zeros = digits.clone().rev().take_while(|&digit| digit == b'0').count();
    let count = SHOWN - zeros.min(SHOWN - 1);
    if (-5..0).contains(&exponent) {
        out.write_str("0.")?;
        (1..-exponent).try_for_each(|_| out.write_char('0'))?;
        return write(out, digits.take(count));
    }
    let plain = (0..SHOWN as i32).contains(&exponent);
    let before = if plain { exponent.unsigned_abs() as usize + 1 } else { 1 };
    write(out, digits.clone().take(before))?;
    if count > before {
        out.write_char('.')?;
        write(out, digits.take(count).skip(before))?;
    }
    if plain {
        return Ok(());
    }
    out.write_str(" × 10^")?;
    if exponent < 0 {
        out.write_char('−')?;
    }
    whole(out, exponent.unsigned_abs().into())
}

/// Writes a whole number.
pub(crate) fn whole(out: &mut dyn Write, value: u64) -> fmt::Result {
    let digits = digits(value);
    let zeros = digits.iter().take(MOST - 1).take_while(|&&digit| digit == b'0').count();
    write(out, digits.iter().skip(zeros).copied())
}

/// The first six digits of a positive number, rounded, and the power of ten of the first.
fn leading(size: f64) -> (u64, i32) {
    let (mut first, mut exponent) = (size, 0);
    while first >= 10.0 {
        first /= 10.0;
        exponent += 1;
    }
    while first < 1.0 && first > 0.0 {
        first *= 10.0;
        exponent -= 1;
    }
    let digits = floor(first * 1e5 + 0.5) as u64;
    if digits < 1_000_000 { (digits, exponent) } else { (100_000, exponent + 1) }
}

fn digits(mut value: u64) -> [u8; MOST] {
    let mut digits = [b'0'; MOST];
    for digit in digits.iter_mut().rev() {
        *digit += (value % 10) as u8;
        value /= 10;
    }
    digits
}

fn write(out: &mut dyn Write, mut digits: impl Iterator<Item = u8>) -> fmt::Result {
    digits.try_for_each(|digit| out.write_char(char::from(digit)))
}
