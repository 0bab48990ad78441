//! Elementary functions on `f64`, always through `libm`.
//!
//! The standard library calls whatever the platform offers, and the last bit of `exp`, `log10` or `sin` then differs
//! from machine to machine. Rust, C, Python and the firmware must agree bit for bit, so every chapter calls these.

macro_rules! through_libm {
    ($($name:ident = $libm:ident),* $(,)?) => {
        $(pub(crate) fn $name(x: f64) -> f64 { libm::$libm(x) })*
    };
}

through_libm! {
    sqrt = sqrt, exp = exp, exp_m1 = expm1, exp10 = exp10, ln = log, ln_1p = log1p, log10 = log10,
    sin = sin, cos = cos, tan = tan, atan = atan, acos = acos, erfc = erfc, abs = fabs, floor = floor, ceil = ceil,
    round_half_away = round, round_half_even = rint,
}

pub(crate) fn powf(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

pub(crate) fn hypot(a: f64, b: f64) -> f64 {
    libm::hypot(a, b)
}

/// The same for `f32`: for the live monitor, when it is configured or asked, never per sample.
pub(crate) mod single {
    macro_rules! through_libm {
        ($($name:ident = $libm:ident),* $(,)?) => {
            $(pub(crate) fn $name(x: f32) -> f32 { libm::$libm(x) })*
        };
    }

    /// The greater of two; the second where the first is NaN. `f32::max` is a call on a microcontroller.
    #[inline]
    pub(crate) fn greater(a: f32, b: f32) -> f32 {
        if a > b { a } else { b }
    }

    /// The lesser of two; the second where the first is NaN.
    #[inline]
    pub(crate) fn lesser(a: f32, b: f32) -> f32 {
        if a < b { a } else { b }
    }

    /// The value, or the bound that it is beyond; `low` for NaN. `f32::clamp` can panic.
    #[inline]
    pub(crate) fn bounded(value: f32, low: f32, high: f32) -> f32 {
        lesser(greater(value, low), high)
    }

    /// The whole part, or the bound that it is beyond; 0 for NaN. As `as i16` does, which takes six comparisons more.
    #[inline]
    pub(crate) fn whole_i16(value: f32) -> i16 {
        (value as i32).clamp(i16::MIN.into(), i16::MAX.into()) as i16
    }

    /// The whole part, or the bound that it is beyond; 0 for NaN.
    #[inline]
    pub(crate) fn whole_u16(value: f32) -> u16 {
        (value as u32).min(u16::MAX.into()) as u16
    }

    through_libm! { sqrt = sqrtf, exp = expf, exp_m1 = expm1f, ln = logf, ln_1p = log1pf, ceil = ceilf }
}
