//! ISO 286: limits of a size from its tolerance class, by the tables of the standard.

use super::clearance::{Clearance, clearance};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::Limits;

pub(super) const ISO_LIMITS: Card = Card {
    id: "fit.iso_limits",
    purpose: "Limits of a nominal size with a tolerance class such as H7 or f7",
    equation: "a to h: es = −table, ei = es − IT; js: ± IT/2; k to u: ei = table, es = ei + IT; holes: EI = −es (A to H); ES = −ei + Δ, Δ = IT_n − IT_(n−1) (K, M, N to grade 8, P to U to grade 7), else ES = −ei",
    symbols: &[
        symbol("es, ei", "upper_deviation_mm, lower_deviation_mm of a shaft", "mm"),
        symbol("ES, EI", "the same of a hole", "mm"),
        symbol("IT", "tolerance_mm, of grade n", "mm"),
        symbol("Δ", "0 up to 3 mm", "mm"),
    ],
    range: "nominal sizes to 500 mm, letters c, d, e, f, g, h, js, k, m, n, p, r, s, t, u and their capitals, grades 5 to 11",
    source: &card::LIMITS_AND_FITS,
    locator: "part 1, tables 1 to 5, and the tables of part 2",
};

/// Upper ends of the nominal size ranges of the tolerance grades, mm.
const MAIN_STEPS_MM: [f64; 13] = [3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0, 315.0, 400.0, 500.0];

/// Upper ends of the finer ranges of some fundamental deviations, mm.
#[rustfmt::skip]
const FINE_STEPS_MM: [f64; 25] = [
    3.0, 6.0, 10.0, 14.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0, 200.0, 225.0, 250.0,
    280.0, 315.0, 355.0, 400.0, 450.0, 500.0,
];

/// Standard tolerances IT4 to IT11, µm. IT4 serves only the Δ of grade 5.
const GRADES_UM: [[u16; 13]; 8] = [
    [3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20],
    [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
    [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
    [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
    [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
    [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
    [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
    [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
];

/// Fundamental deviation of a letter, µm: how far the near limit of a shaft is from the nominal size.
enum Deviation {
    /// One value for each main range.
    Main([u16; 13]),
    /// One value for each finer range.
    Fine([u16; 25]),
}

use Deviation::{Fine, Main};

/// The letters of a shaft below the nominal size, −es.
#[rustfmt::skip]
const BELOW_UM: [(&str, Deviation); 6] = [
    ("c", Fine([60, 70, 80, 95, 95, 110, 110, 120, 130, 140, 150, 170, 180, 200, 210, 230, 240, 260, 280, 300, 330, 360, 400, 440, 480])),
    ("d", Main([20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230])),
    ("e", Main([14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135])),
    ("f", Main([6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68])),
    ("g", Main([2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20])),
    ("h", Main([0; 13])),
];

/// The letters of a shaft above the nominal size, ei; 0 where the standard gives no t.
#[rustfmt::skip]
const ABOVE_UM: [(&str, Deviation); 8] = [
    ("k", Main([0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5])),
    ("m", Main([2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23])),
    ("n", Main([4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40])),
    ("p", Main([6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68])),
    ("r", Fine([10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132])),
    ("s", Fine([14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252])),
    ("t", Fine([0, 0, 0, 0, 0, 0, 41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196, 218, 240, 268, 294, 330, 360])),
    ("u", Fine([18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540])),
];

/// Limits of a size by its tolerance class.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IsoLimits {
    /// Nominal size, mm.
    pub nominal_mm: f64,
    /// Lower deviation, EI or ei, mm.
    pub lower_deviation_mm: f64,
    /// Upper deviation, ES or es, mm.
    pub upper_deviation_mm: f64,
    /// Width of the tolerance, IT, mm.
    pub tolerance_mm: f64,
    /// Least and greatest size, mm.
    pub size_mm: Limits,
    /// Grade, 5 to 11.
    pub grade: u32,
    /// Whether it is a hole: a capital letter.
    pub hole: bool,
}

/// A hole and a shaft of one nominal size.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IsoFit {
    /// The hole.
    pub hole: IsoLimits,
    /// The shaft.
    pub shaft: IsoLimits,
    /// Their clearance, without a service limit.
    pub clearance: Clearance,
}

/// Limits of a nominal size with a tolerance class.
///
/// The tables of the standard, not the formulas behind them: those are rounded by rule and do not reproduce the tables.
///
/// * `nominal_mm` — above 0 to 500; `zone` — letter and grade, `H7` for a hole, `f7` for a shaft; letters c, d, e, f, g, h, js, k,
///   m, n, p, r, s, t, u and their capitals, grades 5 to 11
/// * returns [`IsoLimits`]. js is ± IT/2 to the half micrometer; older tables round it down from grade 7 on
/// * errors: [`Error::Text`] for a class that cannot be read; [`Error::OutOfRange`]; [`Error::NoAnswer`] for a class that the
///   standard leaves open at this size
///
/// Source: ISO 286-1 and -2:2010, from memory; 1 547 limits of E to R and f to r were compared with a published table, and the
/// rest with the formulas of part 1. Example: 25 f7 is −20 and −41 µm.
///
/// ```
/// use trainwright::fit::iso_limits;
/// let journal = iso_limits(25.0, "f7")?;
/// assert_eq!((journal.upper_deviation_mm, journal.lower_deviation_mm), (-0.020, -0.041));
/// assert_eq!(iso_limits(25.0, "x7").unwrap_err().to_string(),
///     "tolerance class: at character 1: expected one of c d e f g h js k m n p r s t u, capital for a hole, then a grade");
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn iso_limits(nominal_mm: f64, zone: &str) -> Result<IsoLimits> {
    read_limits(nominal_mm, zone, 0)
}

/// Reads a size with its tolerance class: `25H7`, `44 f7`, `118.4 H8`. See [`iso_limits`].
///
/// ```
/// assert_eq!(trainwright::fit::iso_size("25H7")?.size_mm.upper, 25.021);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn iso_size(text: &str) -> Result<IsoLimits> {
    let (nominal_mm, zone) = nominal_and_zone(text)?;
    read_limits(nominal_mm, zone, place(text, zone))
}

/// Reads a fit: `25H7/f7`, hole first, and gives both sizes with their clearance. See [`iso_limits`].
///
/// * errors: [`Error::Text`] without a slash, or with the shaft first; as [`iso_limits`]
///
/// ```
/// let fit = trainwright::fit::iso_fit("25 H7/f7")?;
/// assert!((fit.clearance.clearance_mm.lower - 0.020).abs() < 1e-9);
/// assert!((fit.clearance.clearance_mm.upper - 0.062).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn iso_fit(text: &str) -> Result<IsoFit> {
    let Some((hole, shaft)) = text.split_once('/') else {
        return Err(unread(text.len(), "a slash between hole and shaft, as in 25H7/f7"));
    };
    let hole = iso_size(hole)?;
    let at = place(text, shaft);
    if !hole.hole {
        return Err(unread(0, "the hole first, its letter a capital, as in 25H7/f7"));
    }
    let shaft = read_limits(hole.nominal_mm, shaft, at)?;
    if shaft.hole {
        return Err(unread(at, "the shaft after the slash, its letter small, as in 25H7/f7"));
    }
    Ok(IsoFit { hole, shaft, clearance: clearance(shaft.size_mm, hole.size_mm, f64::INFINITY)? })
}

/// Where a part of a text begins in it.
fn place(text: &str, part: &str) -> usize {
    text.len().saturating_sub(part.len())
}

fn unread(at: usize, expected: &'static str) -> Error {
    Error::Text { name: "tolerance class", at: u32::try_from(at).unwrap_or(u32::MAX), expected }
}

fn nominal_and_zone(text: &str) -> Result<(f64, &str)> {
    let number = text.trim_start();
    let end = number.find(|letter: char| !letter.is_ascii_digit() && letter != '.').unwrap_or(number.len());
    let (digits, zone) = number.split_at_checked(end).unwrap_or((number, ""));
    match decimal(digits) {
        Some(nominal_mm) => Ok((nominal_mm, zone)),
        None => Err(unread(place(text, number), "a nominal size in mm, with a decimal point, before the letter")),
    }
}

/// The decimal number of up to 15 digits, rounded once: both parts of the fraction are exact. (The standard library's reader
/// can panic.)
fn decimal(text: &str) -> Option<f64> {
    let (mut whole, mut scale, mut digits, mut point) = (0_u64, 1_u64, 0_u32, false);
    for byte in text.bytes() {
        if byte == b'.' && !point {
            point = true;
            continue;
        }
        whole = whole.checked_mul(10)?.checked_add(u64::from(byte.checked_sub(b'0').filter(|digit| *digit <= 9)?))?;
        if point {
            scale = scale.checked_mul(10)?;
        }
        digits += 1;
    }
    (1..=15).contains(&digits).then(|| whole as f64 / scale as f64)
}

const LETTERS: &str = "one of c d e f g h js k m n p r s t u, capital for a hole, then a grade";

/// Letters in small, whether they are those of a hole, and the grade.
fn letters_and_grade(zone: &str, at: usize) -> Result<(&'static str, bool, u32)> {
    let text = zone.trim_start();
    let at = at + place(zone, text);
    let end = text.find(|letter: char| !letter.is_ascii_alphabetic()).unwrap_or(text.len());
    let (letters, grade) = text.split_at_checked(end).unwrap_or((text, ""));
    let known = BELOW_UM.iter().chain(&ABOVE_UM).map(|(letter, _)| *letter).chain(["js"]);
    let mut known = known.filter(|letter| letter.eq_ignore_ascii_case(letters));
    let upper = letters.bytes().all(|byte| byte.is_ascii_uppercase());
    let lower = letters.bytes().all(|byte| byte.is_ascii_lowercase());
    let (Some(letter), true) = (known.next(), upper || lower) else {
        return Err(unread(at, LETTERS));
    };
    match grade.trim_end().parse() {
        Ok(grade) => Ok((letter, upper, grade)),
        Err(_) => Err(unread(at + end, "a grade, 5 to 11, after the letter")),
    }
}

fn read_limits(nominal_mm: f64, zone: &str, at: usize) -> Result<IsoLimits> {
    let (letter, hole, grade) = letters_and_grade(zone, at)?;
    within("nominal_mm", positive("nominal_mm", nominal_mm)?, 0.0, 500.0)?;
    within("grade", f64::from(grade), 5.0, 11.0)?;
    let fine = FINE_STEPS_MM.iter().take_while(|end| nominal_mm > **end).count();
    let main = MAIN_STEPS_MM.iter().take_while(|end| nominal_mm > **end).count();
    let width = |grade: u32| {
        let row = usize::try_from(grade.saturating_sub(4)).ok().and_then(|row| GRADES_UM.get(row));
        row.and_then(|row| row.get(main)).map_or(0.0, |um| f64::from(*um))
    };
    let of = |table: &[(&str, Deviation)]| {
        let (_, deviation) = table.iter().find(|(name, _)| *name == letter)?;
        let um = match deviation {
            Main(values) => values.get(main),
            Fine(values) => values.get(fine),
        };
        um.map(|um| f64::from(*um))
    };
    let it = width(grade);
    let lower_um = if let Some(below) = of(&BELOW_UM) {
        if hole { below } else { -below - it }
    } else if let Some(above) = of(&ABOVE_UM) {
        let class = Class { letter, above, grade, nominal_mm, it, it_finer: width(grade - 1) };
        if hole { class.upper_of_hole()? - it } else { class.lower_of_shaft()? }
    } else {
        -it / 2.0
    };
    let (lower_deviation_mm, upper_deviation_mm) = (lower_um / 1000.0, (lower_um + it) / 1000.0);
    Ok(IsoLimits {
        nominal_mm,
        lower_deviation_mm,
        upper_deviation_mm,
        tolerance_mm: it / 1000.0,
        size_mm: Limits { lower: nominal_mm + lower_deviation_mm, upper: nominal_mm + upper_deviation_mm },
        grade,
        hole,
    })
}

/// A class from k on, with the deviation of its letter, µm.
struct Class {
    letter: &'static str,
    above: f64,
    grade: u32,
    nominal_mm: f64,
    it: f64,
    it_finer: f64,
}

impl Class {
    fn lower_of_shaft(&self) -> Result<f64> {
        match self.letter {
            "k" if self.grade > 7 => Ok(0.0),
            "t" if self.above <= 0.0 => Err(no_t()),
            _ => Ok(self.above),
        }
    }

    fn upper_of_hole(&self) -> Result<f64> {
        let small = self.nominal_mm <= 3.0;
        let delta = if small { 0.0 } else { self.it - self.it_finer };
        match (self.letter, self.grade) {
            ("t", _) if self.above <= 0.0 => Err(no_t()),
            ("k", 9..) if !small => Err(Error::NoAnswer {
                name: "tolerance class",
                why: "the standard gives no K above grade 8 over 3 mm; take N, H or JS",
            }),
            // The one entry of the table that does not follow its own rule.
            ("m", 6) if self.nominal_mm > 250.0 && self.nominal_mm <= 315.0 => Ok(-9.0),
            ("n", 9..) if !small => Ok(0.0),
            ("k" | "m" | "n", ..9) | ("p" | "r" | "s" | "t" | "u", ..8) => Ok(delta - self.above),
            _ => Ok(-self.above),
        }
    }
}

fn no_t() -> Error {
    Error::NoAnswer { name: "tolerance class", why: "the standard gives no t up to 24 mm; take u" }
}
