//! Viscosity: its line against temperature, and the viscosity index.

use super::density::Fluid;
use super::index_table::TABLE_1;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{exp, exp10, log10, round_half_even};
use crate::units::kelvin;

pub(super) const VISCOSITY_AT: Card = Card {
    id: "fluid.viscosity_at",
    purpose: "Kinematic viscosity at a temperature, on the line through two known points",
    equation: "lg lg(ν + 0.7) = A − B lg T",
    symbols: &[
        symbol("ν", "viscosity_mm2_s", "mm²/s"),
        symbol("A, B", "a, b", "1"),
        symbol("T", "temp_c + 273.15", "K"),
        symbol("0.7", "added_mm2_s; 0.8 in the older form", "mm²/s"),
    ],
    range: "2 to 2e7 mm²/s, −70 to 370 °C, refused outside; not below the pour point, not for shear-thinning cold fluid",
    source: &card::VISCOSITY_CHART,
    locator: "viscosity-temperature equation, simple form",
};

pub(super) const THIN_VISCOSITY_AT: Card = Card {
    id: "fluid.thin_viscosity_at",
    purpose: "Kinematic viscosity at a temperature, for fluids that become thinner than 2 mm²/s",
    equation: "lg lg Z = A − B lg T; Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)",
    symbols: &[
        symbol("ν", "viscosity_mm2_s", "mm²/s"),
        symbol("A, B", "a, b", "1"),
        symbol("T", "temp_c + 273.15", "K"),
    ],
    range: "0.21 to 2e7 mm²/s, −70 to 370 °C; refused outside",
    source: &card::VISCOSITY_CHART,
    locator: "viscosity-temperature equation, full form",
};

pub(super) const VISCOSITY_INDEX: Card = Card {
    id: "fluid.viscosity_index",
    purpose: "Viscosity index",
    equation: "U ≥ H: VI = 100 (L − U)/(L − H); U < H: VI = 100 + (10^N − 1)/0.00715, N = lg(H/U)/lg Y",
    symbols: &[
        symbol("U", "viscosity_40c_mm2_s", "mm²/s"),
        symbol("Y", "viscosity_100c_mm2_s", "mm²/s"),
        symbol("L", "zero_40c_mm2_s, at 40 °C of the oil of index 0 with the same Y", "mm²/s"),
        symbol("H", "hundred_40c_mm2_s, at 40 °C of the oil of index 100 with the same Y", "mm²/s"),
        symbol("VI", "index; reported is the nearest whole number, a half to the even one", "1"),
    ],
    range: "Y 2 mm²/s or more; undefined below; may be negative",
    source: &card::VISCOSITY_INDEX,
    locator: "procedures A and B, table 1; above 70 mm²/s its equations for L and H",
};

pub(super) const DYNAMIC_VISCOSITY: Card = Card {
    id: "fluid.dynamic_viscosity",
    purpose: "Dynamic from kinematic viscosity",
    equation: "η = ν ρ/1000",
    symbols: &[
        symbol("η", "dynamic viscosity", "mPa·s"),
        symbol("ν", "kinematic_mm2_s", "mm²/s"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
    ],
    range: "both at one temperature",
    source: &card::DEFINITION,
    locator: "kinematic viscosity",
};

/// Added to the viscosity before its double logarithm, mm²/s.
const ADDED_MM2_S: f64 = 0.7;
/// The same in the older form of the line.
const OLDER_ADDED_MM2_S: f64 = 0.8;
/// Viscosities of the simple form, mm²/s.
const SIMPLE_MM2_S: (f64, f64) = (2.0, 2e7);
/// Viscosities of the full form, mm²/s.
const FULL_MM2_S: (f64, f64) = (0.21, 2e7);
/// Temperatures of the chart, °C.
const CHART_C: (f64, f64) = (-70.0, 370.0);
/// Least viscosity at 100 °C that has an index, mm²/s.
const LEAST_INDEX_MM2_S: f64 = 2.0;
/// Viscosity at 100 °C where table 1 ends, mm²/s.
const TABLE_END_MM2_S: f64 = 70.0;

/// lg lg(ν + 0.7).
pub(super) fn log_log(viscosity_mm2_s: f64) -> f64 {
    log10(log10(viscosity_mm2_s + ADDED_MM2_S))
}

/// Inverse of [`log_log`].
pub(super) fn undo_log_log(w: f64) -> f64 {
    exp10(exp10(w)) - ADDED_MM2_S
}

/// Two temperatures with the kinematic viscosity at each.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityPoints {
    /// First temperature.
    pub first_c: f64,
    /// Viscosity there.
    pub first_mm2_s: f64,
    /// Second temperature.
    pub second_c: f64,
    /// Viscosity there.
    pub second_mm2_s: f64,
}

/// Kinematic viscosity against temperature: lg lg(ν + added) = A − B lg T.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityLine {
    /// Height A.
    pub a: f64,
    /// Slope B, above 0.
    pub b: f64,
    /// Constant added to the viscosity: 0.7, or 0.8 in the older form. A line is read with the constant it was drawn with.
    pub added_mm2_s: f64,
}

impl ViscosityLine {
    /// The line through two points.
    ///
    /// B = [lg lg(ν₁ + 0.7) − lg lg(ν₂ + 0.7)]/(lg T₂ − lg T₁); A = lg lg(ν₁ + 0.7) + B lg T₁
    ///
    /// * `points` — t₁, t₂, °C, −70 to 370; ν₁, ν₂, mm²/s, 2 to 2e7
    /// * returns A, B and the constant 0.7
    /// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]; [`Error::Inconsistent`] unless the hotter point is the thinner
    ///
    /// Source: ASTM D341, simple form for 2 mm²/s and more (from memory). Example: 32 mm²/s at 40 °C and 5.4 at 100 °C give
    /// A = 9.530815, B = 3.746578, and 8.533215 mm²/s at 80 °C.
    ///
    /// ```
    /// use trainwright::fluid::{ViscosityLine, ViscosityPoints};
    /// let line = ViscosityLine::through(ViscosityPoints {
    ///     first_c: 40.0, first_mm2_s: 32.0, second_c: 100.0, second_mm2_s: 5.4,
    /// })?;
    /// assert!((line.a - 9.530815).abs() < 1e-6 && (line.b - 3.746578).abs() < 1e-6);
    /// assert!((line.viscosity_at(80.0)? - 8.533215).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn through(points: ViscosityPoints) -> Result<Self> {
        Self::draw(points, SIMPLE_MM2_S, ADDED_MM2_S, log_log)
    }

    /// The line of the older form, with 0.8 in place of 0.7: to read data that were drawn with it.
    ///
    /// lg lg(ν + 0.8) = A − B lg T
    ///
    /// The two forms part by 0.3 % between their points and by several percent far outside. Arguments and errors as
    /// [`ViscosityLine::through`]. Source: the double-logarithmic form before ASTM D341 took 0.7 (from memory).
    pub fn through_older(points: ViscosityPoints) -> Result<Self> {
        Self::draw(points, SIMPLE_MM2_S, OLDER_ADDED_MM2_S, |nu| log10(log10(nu + OLDER_ADDED_MM2_S)))
    }

    /// The line of the full form, for fluids that become thinner than 2 mm²/s; read it with
    /// [`ViscosityLine::thin_viscosity_at`].
    ///
    /// lg lg Z = A − B lg T; Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)
    ///
    /// * `points` — as [`ViscosityLine::through`], with ν from 0.21 mm²/s
    ///
    /// Source: ASTM D341, full form (from memory; seen in public code).
    pub fn through_thin(points: ViscosityPoints) -> Result<Self> {
        Self::draw(points, FULL_MM2_S, ADDED_MM2_S, |nu| log10(log10(full_z(nu))))
    }

    fn draw(points: ViscosityPoints, range: (f64, f64), added_mm2_s: f64, height: fn(f64) -> f64) -> Result<Self> {
        let ViscosityPoints { first_c, first_mm2_s, second_c, second_mm2_s } = points;
        within("first_c", first_c, CHART_C.0, CHART_C.1)?;
        within("second_c", second_c, CHART_C.0, CHART_C.1)?;
        within("first_mm2_s", first_mm2_s, range.0, range.1)?;
        within("second_mm2_s", second_mm2_s, range.0, range.1)?;
        if !((second_c > first_c && second_mm2_s < first_mm2_s) || (second_c < first_c && second_mm2_s > first_mm2_s)) {
            return Err(Error::Inconsistent {
                name: "viscosity points",
                why: "a fluid is thinner when hotter; check the order of the two points and their temperatures",
            });
        }
        let (first_lg_t, second_lg_t) = (log10(kelvin(first_c)), log10(kelvin(second_c)));
        let b = (height(first_mm2_s) - height(second_mm2_s)) / (second_lg_t - first_lg_t);
        Ok(Self { a: height(first_mm2_s) + b * first_lg_t, b, added_mm2_s })
    }

    /// Kinematic viscosity at a temperature.
    ///
    /// ν = 10^10^(A − B lg T) − 0.7 (0.8 for a line of the older form)
    ///
    /// * `temp_c` — °C, −70 to 370
    /// * returns ν, mm²/s
    /// * errors: [`Error::OutOfRange`] also where ν leaves 2 to 2e7 mm²/s; for thinner fluid draw the line with
    ///   [`ViscosityLine::through_thin`]
    ///
    /// Source and example: [`ViscosityLine::through`].
    pub fn viscosity_at(&self, temp_c: f64) -> Result<f64> {
        let viscosity_mm2_s = exp10(self.lg_z(temp_c)?) - self.added_mm2_s;
        within("viscosity_mm2_s", viscosity_mm2_s, SIMPLE_MM2_S.0, SIMPLE_MM2_S.1)
    }

    /// Kinematic viscosity at a temperature, on a line of the full form.
    ///
    /// Z = 10^10^(A − B lg T); ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²) = Z, solved for ν
    ///
    /// * `temp_c` — °C, −70 to 370
    /// * returns ν, mm²/s
    /// * errors: [`Error::OutOfRange`] also where ν leaves 0.21 to 2e7 mm²/s; [`Error::Inconsistent`] for a line of the
    ///   older form
    ///
    /// Source: as [`ViscosityLine::through_thin`]. The standard's own inverse is a fitted cubic that misses its equation by
    /// up to 0.001 mm²/s; here the equation itself is solved, so the line passes through its points.
    pub fn thin_viscosity_at(&self, temp_c: f64) -> Result<f64> {
        if self.added_mm2_s != ADDED_MM2_S {
            return Err(Error::Inconsistent {
                name: "added_mm2_s",
                why: "only a line with the constant 0.7 has the full form; draw it with through_thin",
            });
        }
        let z = exp10(self.lg_z(temp_c)?);
        within("viscosity_mm2_s", viscosity_of_full_z(z), FULL_MM2_S.0, FULL_MM2_S.1)
    }

    /// Temperature at which the fluid has this viscosity: lg T = [A − lg lg(ν + 0.7)]/B.
    ///
    /// * `viscosity_mm2_s` — ν, mm²/s, 2 to 2e7
    /// * returns t, °C, −70 to 370
    /// * errors: [`Error::OutOfRange`], [`Error::NotFinite`], [`Error::NotPositive`] for a slope that is not
    pub fn temp_for_viscosity(&self, viscosity_mm2_s: f64) -> Result<f64> {
        within("viscosity_mm2_s", viscosity_mm2_s, SIMPLE_MM2_S.0, SIMPLE_MM2_S.1)?;
        self.check_line()?;
        let lg_t = (self.a - log10(log10(viscosity_mm2_s + self.added_mm2_s))) / self.b;
        within("temp_c", exp10(lg_t) - kelvin(0.0), CHART_C.0, CHART_C.1)
    }

    fn lg_z(&self, temp_c: f64) -> Result<f64> {
        within("temp_c", temp_c, CHART_C.0, CHART_C.1)?;
        self.check_line()?;
        Ok(exp10(self.a - self.b * log10(kelvin(temp_c))))
    }

    fn check_line(&self) -> Result<()> {
        finite("a", self.a)?;
        positive("b", self.b)?;
        within("added_mm2_s", self.added_mm2_s, ADDED_MM2_S, OLDER_ADDED_MM2_S)?;
        Ok(())
    }
}

/// Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²).
fn full_z(nu: f64) -> f64 {
    nu + ADDED_MM2_S + exp(-1.47 - 1.84 * nu - 0.51 * nu * nu)
}

/// [`full_z`] solved for ν by Newton's rule; its slope lies between 0.6 and 1, so every step helps.
fn viscosity_of_full_z(z: f64) -> f64 {
    let mut nu = (z - ADDED_MM2_S).max(0.0);
    for _ in 0..20 {
        let bend = exp(-1.47 - 1.84 * nu - 0.51 * nu * nu);
        nu -= (nu + ADDED_MM2_S + bend - z) / (1.0 - (1.84 + 1.02 * nu) * bend);
    }
    nu
}

impl Fluid {
    /// The line through the fluid's viscosities at 40 °C and 100 °C. See [`ViscosityLine::through`].
    pub fn viscosity_line(&self) -> Result<ViscosityLine> {
        ViscosityLine::through(ViscosityPoints {
            first_c: 40.0,
            first_mm2_s: self.viscosity_40c_mm2_s,
            second_c: 100.0,
            second_mm2_s: self.viscosity_100c_mm2_s,
        })
    }
}

/// Dynamic from kinematic viscosity, both at one temperature.
///
/// η = ν ρ/1000
///
/// * `kinematic_mm2_s` — ν, mm²/s, above 0; `density_kg_m3` — ρ, kg/m³, above 0
/// * returns η, mPa·s
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: definition of kinematic viscosity. Example: 10 mm²/s at 850 kg/m³ is 8.5 mPa·s.
///
/// ```
/// assert_eq!(trainwright::fluid::dynamic_viscosity(10.0, 850.0)?, 8.5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn dynamic_viscosity(kinematic_mm2_s: f64, density_kg_m3: f64) -> Result<f64> {
    Ok(positive("kinematic_mm2_s", kinematic_mm2_s)? * positive("density_kg_m3", density_kg_m3)? / 1000.0)
}

/// The two viscosities that an index is computed from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityPair {
    /// Kinematic viscosity at 40 °C, U.
    pub viscosity_40c_mm2_s: f64,
    /// Kinematic viscosity at 100 °C, Y.
    pub viscosity_100c_mm2_s: f64,
}

/// Viscosity index, with what it was computed from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityIndex {
    /// L: viscosity at 40 °C of the oil of index 0 that is as thick at 100 °C.
    pub zero_40c_mm2_s: f64,
    /// H: viscosity at 40 °C of the oil of index 100 that is as thick at 100 °C.
    pub hundred_40c_mm2_s: f64,
    /// Index before rounding.
    pub index: f64,
    /// Index as the standard reports it: whole, a half rounded to the even number.
    pub reported: f64,
}

/// Viscosity index from the kinematic viscosities at 40 °C and 100 °C.
///
/// U ≥ H: VI = 100 (L − U)/(L − H); U < H: VI = 100 + (10^N − 1)/0.00715, N = lg(H/U)/lg Y
///
/// * `pair` — U, mm²/s, above 0; Y, mm²/s, 2 or more
/// * returns L, H, the index, and the index as reported; it may be negative
/// * errors: [`Error::OutOfRange`] for Y below 2 (undefined), [`Error::NotPositive`], [`Error::NotFinite`];
///   [`Error::Inconsistent`] where U does not exceed Y
///
/// Source: ASTM D2270, procedures A and B, table 1 with linear interpolation; above 70 mm²/s L = 0.8353 Y² + 14.67 Y − 216,
/// H = 0.1684 Y² + 11.85 Y − 97 (clauses read). Example, clause 5.1.4: 73.30 and 8.86 mm²/s give L 119.94, H 69.48,
/// VI 92.43, reported 92.
///
/// ```
/// use trainwright::fluid::{ViscosityPair, viscosity_index};
/// let vi = viscosity_index(ViscosityPair { viscosity_40c_mm2_s: 73.30, viscosity_100c_mm2_s: 8.86 })?;
/// assert!((vi.index - 92.43).abs() < 0.01);
/// assert_eq!(vi.reported, 92.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn viscosity_index(pair: ViscosityPair) -> Result<ViscosityIndex> {
    let ViscosityPair { viscosity_40c_mm2_s: u, viscosity_100c_mm2_s: y } = pair;
    positive("viscosity_40c_mm2_s", u)?;
    within("viscosity_100c_mm2_s", y, LEAST_INDEX_MM2_S, 1e6)?;
    if u <= y {
        return Err(Error::Inconsistent {
            name: "viscosity_40c_mm2_s",
            why: "must exceed the viscosity at 100 °C; a fluid is thinner when hotter",
        });
    }
    let (l, h) = oils_of_index_0_and_100(y);
    let index = index_of(u, y);
    Ok(ViscosityIndex { zero_40c_mm2_s: l, hundred_40c_mm2_s: h, index, reported: round_half_even(index) })
}

/// Kinematic viscosity at 100 °C of the oil with this viscosity at 40 °C and this index: [`viscosity_index`] solved for Y.
///
/// * `viscosity_40c_mm2_s` — U, mm²/s, above 2; `index` — VI, before rounding
/// * returns Y, mm²/s
/// * errors: [`Error::OutOfRange`] where no Y from 2 mm²/s to U has that index
///
/// Source: ASTM D2270. Example: 32 mm²/s at 40 °C and index 105 make 5.44829 mm²/s at 100 °C.
///
/// ```
/// assert!((trainwright::fluid::viscosity_100c_for_index(32.0, 105.0)? - 5.44829).abs() < 5e-6);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn viscosity_100c_for_index(viscosity_40c_mm2_s: f64, index: f64) -> Result<f64> {
    let u = within("viscosity_40c_mm2_s", viscosity_40c_mm2_s, LEAST_INDEX_MM2_S, 1e6)?;
    within("index", index, index_of(u, LEAST_INDEX_MM2_S), index_of(u, u))?;
    let (mut low, mut high) = (LEAST_INDEX_MM2_S, u);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if index_of(u, middle) < index { low = middle } else { high = middle }
    }
    Ok(high)
}

fn index_of(u: f64, y: f64) -> f64 {
    let (l, h) = oils_of_index_0_and_100(y);
    if u >= h {
        100.0 * (l - u) / (l - h)
    } else {
        let n = log10(h / u) / log10(y);
        100.0 + (exp10(n) - 1.0) / 0.00715
    }
}

/// L and H for the viscosity Y at 100 °C.
fn oils_of_index_0_and_100(y: f64) -> (f64, f64) {
    let above = TABLE_1.partition_point(|row| row.0 < y).max(1);
    match (TABLE_1.get(above - 1), TABLE_1.get(above)) {
        (Some(&(y0, l0, h0)), Some(&(y1, l1, h1))) if y <= TABLE_END_MM2_S => {
            let part = (y - y0) / (y1 - y0);
            (l0 + part * (l1 - l0), h0 + part * (h1 - h0))
        }
        _ => ((0.8353 * y + 14.67) * y - 216.0, (0.1684 * y + 11.85) * y - 97.0),
    }
}
