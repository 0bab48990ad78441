//! Exact fractions of 64-bit whole numbers.

use crate::error::{Error, Result};

/// An exact fraction in lowest terms with a denominator above zero.
///
/// A denominator of 0 marks a quantity that the state leaves open: a speed that is not determined, a torque share that is
/// statically indeterminate. Arithmetic on an open fraction gives an open fraction.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fraction {
    /// Numerator; it carries the sign.
    pub num: i64,
    /// Denominator, above zero; 0 where the quantity is not determined.
    pub den: i64,
}

impl Fraction {
    /// Nothing.
    pub const ZERO: Self = Self { num: 0, den: 1 };
    /// Unity.
    pub const ONE: Self = Self { num: 1, den: 1 };
    /// Not determined.
    pub const OPEN: Self = Self { num: 0, den: 0 };

    /// `num / den` in lowest terms; open if `den` is 0.
    pub fn new(num: i64, den: i64) -> Result<Self> {
        if den == 0 {
            return Ok(Self::OPEN);
        }
        let divisor = gcd(num.unsigned_abs(), den.unsigned_abs());
        let lowest = |part: u64| match divisor {
            1 => i64::try_from(part),
            _ => i64::try_from(part.checked_div(divisor).unwrap_or(part)),
        };
        match (lowest(num.unsigned_abs()), lowest(den.unsigned_abs())) {
            (Ok(n), Ok(d)) => Ok(Self { num: if (num < 0) == (den < 0) { n } else { -n }, den: d }),
            _ => Err(Error::Overflow { name: "fraction" }),
        }
    }

    /// Whether the quantity is determined.
    #[must_use]
    pub fn is_known(self) -> bool {
        self.den > 0
    }

    /// The floating-point value, if the quantity is determined.
    #[must_use]
    pub fn value(self) -> Option<f64> {
        self.is_known().then(|| self.num as f64 / self.den as f64)
    }

    /// −1, 0 or 1; 0 also where the quantity is not determined.
    #[must_use]
    pub fn signum(self) -> i64 {
        self.num.signum()
    }

    /// Sum.
    pub fn plus(self, other: Self) -> Result<Self> {
        let (a, b) = (i128::from(self.num) * i128::from(other.den), i128::from(other.num) * i128::from(self.den));
        Self::reduced(a + b, i128::from(self.den) * i128::from(other.den))
    }

    /// Difference.
    pub fn minus(self, other: Self) -> Result<Self> {
        self.plus(other.negated())
    }

    /// Product.
    pub fn times(self, other: Self) -> Result<Self> {
        Self::reduced(i128::from(self.num) * i128::from(other.num), i128::from(self.den) * i128::from(other.den))
    }

    /// Quotient; open if the divisor is zero.
    pub fn over(self, other: Self) -> Result<Self> {
        self.times(other.inverted())
    }

    /// The same with the other sign.
    #[must_use]
    pub fn negated(self) -> Self {
        Self { num: self.num.wrapping_neg(), den: self.den }
    }

    /// One over the fraction; open for zero.
    #[must_use]
    pub fn inverted(self) -> Self {
        match self.num {
            0 => Self::OPEN,
            1.. => Self { num: self.den, den: self.num },
            _ => Self { num: self.den.wrapping_neg(), den: self.num.wrapping_neg() },
        }
    }

    /// The fraction in lowest terms; open if the denominator is 0.
    pub(super) fn reduced(num: i128, den: i128) -> Result<Self> {
        if let (Ok(num), Ok(den)) = (i64::try_from(num), i64::try_from(den)) {
            return Self::new(num, den);
        }
        let divisor = i128::try_from(wide_gcd(num.unsigned_abs(), den.unsigned_abs())).unwrap_or(1);
        let lowest = |part: i128| part.checked_div(divisor).and_then(|part| i64::try_from(part).ok());
        match (lowest(num), lowest(den)) {
            (Some(num), Some(den)) => Self::new(num, den),
            _ => Err(Error::Overflow { name: "fraction" }),
        }
    }
}

/// Greatest common divisor by halving; `gcd(0, n) = n`.
pub(super) fn gcd(mut a: u64, mut b: u64) -> u64 {
    if a == 0 || b == 0 {
        return a | b;
    }
    if a == 1 || b == 1 {
        return 1;
    }
    let twos = (a | b).trailing_zeros();
    a >>= a.trailing_zeros();
    while b != 0 {
        b >>= b.trailing_zeros();
        (a, b) = (a.min(b), a.abs_diff(b));
    }
    a << twos
}

/// As [`gcd`], for intermediate values.
pub(super) fn wide_gcd(mut a: u128, mut b: u128) -> u128 {
    if a == 0 || b == 0 {
        return a | b;
    }
    let twos = (a | b).trailing_zeros();
    a >>= a.trailing_zeros();
    while b != 0 {
        b >>= b.trailing_zeros();
        (a, b) = (a.min(b), a.abs_diff(b));
    }
    a << twos
}
