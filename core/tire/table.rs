//! Tables of the tire regulations, from memory of UN Regulation 30 annexes 4 and 5 and UN Regulation 54 annexes 4 and 5.

use super::{Tire, TireKind, TirePlies, TireService};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::real::{abs, floor, round_half_away};
use crate::units::KG_PER_LB;

pub(super) const LOAD_INDEX_KG: Card = Card {
    id: "tire.load_index_kg",
    purpose: "Load that a load index stands for",
    equation: "table; 45·10^(LI/80) rounded to a preferred number",
    symbols: &[symbol("LI", "load_index", "1")],
    range: "load index 0 to 279",
    source: &card::TIRES,
    locator: "R54, annex 4",
};

/// Speed symbol, in the order of the speeds (the letters are not in alphabetical order: H lies between U and V).
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SpeedSymbol {
    /// Not marked.
    Unmarked,
    /// 5 km/h.
    A1,
    /// 10 km/h.
    A2,
    /// 15 km/h.
    A3,
    /// 20 km/h.
    A4,
    /// 25 km/h.
    A5,
    /// 30 km/h.
    A6,
    /// 35 km/h.
    A7,
    /// 40 km/h.
    A8,
    /// 50 km/h.
    B,
    /// 60 km/h.
    C,
    /// 65 km/h.
    D,
    /// 70 km/h.
    E,
    /// 80 km/h.
    F,
    /// 90 km/h.
    G,
    /// 100 km/h.
    J,
    /// 110 km/h.
    K,
    /// 120 km/h.
    L,
    /// 130 km/h.
    M,
    /// 140 km/h.
    N,
    /// 150 km/h.
    P,
    /// 160 km/h.
    Q,
    /// 170 km/h.
    R,
    /// 180 km/h.
    S,
    /// 190 km/h.
    T,
    /// 200 km/h.
    U,
    /// 210 km/h.
    H,
    /// 240 km/h.
    V,
    /// 270 km/h.
    W,
    /// 300 km/h.
    Y,
    /// Above 240 km/h, no speed stated.
    Z,
}

const SPEEDS: [(SpeedSymbol, &str, f64); 29] = {
    use SpeedSymbol::*;
    [
        (A1, "A1", 5.0),
        (A2, "A2", 10.0),
        (A3, "A3", 15.0),
        (A4, "A4", 20.0),
        (A5, "A5", 25.0),
        (A6, "A6", 30.0),
        (A7, "A7", 35.0),
        (A8, "A8", 40.0),
        (B, "B", 50.0),
        (C, "C", 60.0),
        (D, "D", 65.0),
        (E, "E", 70.0),
        (F, "F", 80.0),
        (G, "G", 90.0),
        (J, "J", 100.0),
        (K, "K", 110.0),
        (L, "L", 120.0),
        (M, "M", 130.0),
        (N, "N", 140.0),
        (P, "P", 150.0),
        (Q, "Q", 160.0),
        (R, "R", 170.0),
        (S, "S", 180.0),
        (T, "T", 190.0),
        (U, "U", 200.0),
        (H, "H", 210.0),
        (V, "V", 240.0),
        (W, "W", 270.0),
        (Y, "Y", 300.0),
    ]
};

impl SpeedSymbol {
    /// The symbol with these letters.
    pub fn from_letters(letters: &str) -> Result<Self> {
        if letters.eq_ignore_ascii_case("Z") {
            return Ok(Self::Z);
        }
        SPEEDS.iter().find(|row| row.1.eq_ignore_ascii_case(letters)).map(|row| row.0).ok_or(Error::Text {
            name: "speed_symbol",
            at: 0,
            expected: "a speed symbol: A1 to A8, B to G, J to N, P to U, H, V, W, Y or Z",
        })
    }

    /// The letters as marked; empty when unmarked.
    #[must_use]
    pub fn letters(self) -> &'static str {
        match self {
            Self::Z => "Z",
            _ => SPEEDS.iter().find(|row| row.0 == self).map_or("", |row| row.1),
        }
    }

    /// Speed that the symbol stands for, km/h.
    ///
    /// * errors: [`Error::Missing`] for an unmarked tire, [`Error::NoAnswer`] for Z
    ///
    /// Source: UN R30 and R54, definition of the speed category (from memory).
    ///
    /// ```
    /// use trainwright::tire::SpeedSymbol;
    /// assert_eq!(SpeedSymbol::from_letters("H")?.symbol_km_h()?, 210.0);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn symbol_km_h(self) -> Result<f64> {
        match self {
            Self::Z => Err(Error::NoAnswer {
                name: "speed_symbol",
                why: "Z says only above 240 km/h; the symbol beside the load index states the speed",
            }),
            _ => SPEEDS.iter().find(|row| row.0 == self).map(|row| row.2).ok_or(Error::Missing {
                name: "speed_symbol",
                why: "the designation carries none; read it beside the load index on the sidewall",
            }),
        }
    }
}

/// Load range letter. It names a ply rating, a class of casing, and states no load: the same letter on another size carries
/// another load, which is on the sidewall.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoadRange {
    /// Not marked.
    Unmarked,
    /// Ply rating 4.
    B,
    /// Ply rating 6.
    C,
    /// Ply rating 8.
    D,
    /// Ply rating 10.
    E,
    /// Ply rating 12.
    F,
    /// Ply rating 14.
    G,
    /// Ply rating 16.
    H,
    /// Ply rating 18.
    J,
    /// Ply rating 20.
    L,
    /// Ply rating 22.
    M,
    /// Ply rating 24.
    N,
}

const PLY_RATINGS: [(LoadRange, &str, u16); 11] = {
    use LoadRange::*;
    [
        (B, "B", 4),
        (C, "C", 6),
        (D, "D", 8),
        (E, "E", 10),
        (F, "F", 12),
        (G, "G", 14),
        (H, "H", 16),
        (J, "J", 18),
        (L, "L", 20),
        (M, "M", 22),
        (N, "N", 24),
    ]
};

impl LoadRange {
    /// The letter as marked; empty when unmarked.
    #[must_use]
    pub fn letter(self) -> &'static str {
        PLY_RATINGS.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// Ply rating that the letter stands for.
    ///
    /// * errors: [`Error::Missing`] for an unmarked tire
    ///
    /// Source: from memory of the TRA Year Book, load range and ply rating.
    pub fn ply_rating(self) -> Result<u16> {
        PLY_RATINGS.iter().find(|row| row.0 == self).map(|row| row.2).ok_or(Error::Missing {
            name: "load_range",
            why: "the designation carries none; passenger sizes have a load index instead",
        })
    }

    pub(super) fn from_letter(letter: char) -> Option<Self> {
        PLY_RATINGS.iter().find(|row| row.1.starts_with(letter)).map(|row| row.0)
    }

    pub(super) fn from_ply_rating(ply_rating: u16) -> Option<Self> {
        PLY_RATINGS.iter().find(|row| row.2 == ply_rating).map(|row| row.0)
    }
}

/// Load by load index, kg.
#[rustfmt::skip]
const LOADS_KG: [f64; 280] = [
    45.0, 46.2, 47.5, 48.7, 50.0, 51.5, 53.0, 54.5, 56.0, 58.0,
    60.0, 61.5, 63.0, 65.0, 67.0, 69.0, 71.0, 73.0, 75.0, 77.5,
    80.0, 82.5, 85.0, 87.5, 90.0, 92.5, 95.0, 97.5, 100.0, 103.0,
    106.0, 109.0, 112.0, 115.0, 118.0, 121.0, 125.0, 128.0, 132.0, 136.0,
    140.0, 145.0, 150.0, 155.0, 160.0, 165.0, 170.0, 175.0, 180.0, 185.0,
    190.0, 195.0, 200.0, 206.0, 212.0, 218.0, 224.0, 230.0, 236.0, 243.0,
    250.0, 257.0, 265.0, 272.0, 280.0, 290.0, 300.0, 307.0, 315.0, 325.0,
    335.0, 345.0, 355.0, 365.0, 375.0, 387.0, 400.0, 412.0, 425.0, 437.0,
    450.0, 462.0, 475.0, 487.0, 500.0, 515.0, 530.0, 545.0, 560.0, 580.0,
    600.0, 615.0, 630.0, 650.0, 670.0, 690.0, 710.0, 730.0, 750.0, 775.0,
    800.0, 825.0, 850.0, 875.0, 900.0, 925.0, 950.0, 975.0, 1000.0, 1030.0,
    1060.0, 1090.0, 1120.0, 1150.0, 1180.0, 1215.0, 1250.0, 1285.0, 1320.0, 1360.0,
    1400.0, 1450.0, 1500.0, 1550.0, 1600.0, 1650.0, 1700.0, 1750.0, 1800.0, 1850.0,
    1900.0, 1950.0, 2000.0, 2060.0, 2120.0, 2180.0, 2240.0, 2300.0, 2360.0, 2430.0,
    2500.0, 2575.0, 2650.0, 2725.0, 2800.0, 2900.0, 3000.0, 3075.0, 3150.0, 3250.0,
    3350.0, 3450.0, 3550.0, 3650.0, 3750.0, 3875.0, 4000.0, 4125.0, 4250.0, 4375.0,
    4500.0, 4625.0, 4750.0, 4875.0, 5000.0, 5150.0, 5300.0, 5450.0, 5600.0, 5800.0,
    6000.0, 6150.0, 6300.0, 6500.0, 6700.0, 6900.0, 7100.0, 7300.0, 7500.0, 7750.0,
    8000.0, 8250.0, 8500.0, 8750.0, 9000.0, 9250.0, 9500.0, 9750.0, 10000.0, 10300.0,
    10600.0, 10900.0, 11200.0, 11500.0, 11800.0, 12150.0, 12500.0, 12850.0, 13200.0, 13600.0,
    14000.0, 14500.0, 15000.0, 15500.0, 16000.0, 16500.0, 17000.0, 17500.0, 18000.0, 18500.0,
    19000.0, 19500.0, 20000.0, 20600.0, 21200.0, 21800.0, 22400.0, 23000.0, 23600.0, 24300.0,
    25000.0, 25750.0, 26500.0, 27250.0, 28000.0, 29000.0, 30000.0, 30750.0, 31500.0, 32500.0,
    33500.0, 34500.0, 35500.0, 36500.0, 37500.0, 38750.0, 40000.0, 41250.0, 42500.0, 43750.0,
    45000.0, 46250.0, 47500.0, 48750.0, 50000.0, 51500.0, 53000.0, 54500.0, 56000.0, 58000.0,
    60000.0, 61500.0, 63000.0, 65000.0, 67000.0, 69000.0, 71000.0, 73000.0, 75000.0, 77500.0,
    80000.0, 82500.0, 85000.0, 87500.0, 90000.0, 92500.0, 95000.0, 97500.0, 100000.0, 103000.0,
    106000.0, 109000.0, 112000.0, 115000.0, 118000.0, 121500.0, 125000.0, 128500.0, 132000.0, 136000.0,
];

/// Load that a load index stands for, kg, at the speed of the speed symbol and the pressure of the tire standard.
///
/// * `load_index` — 0 to 279
/// * returns the load per tire, kg
///
/// Source: UN R54 annex 4 and ISO 4000-1 (from memory; every entry within 2 % of 45·10^(LI/80), whose preferred number it is).
///
/// ```
/// assert_eq!(trainwright::tire::load_index_kg(121)?, 1450.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn load_index_kg(load_index: u16) -> Result<f64> {
    LOADS_KG.get(usize::from(load_index)).copied().ok_or(Error::OutOfRange {
        name: "load_index",
        value: f64::from(load_index),
        low: 0.0,
        high: 279.0,
    })
}

/// Load that a load index stands for in whole pounds, as North American sidewalls state it.
pub fn load_index_lb(load_index: u16) -> Result<f64> {
    Ok(round_half_away(load_index_kg(load_index)? / KG_PER_LB))
}

/// Rim diameter codes in use that are not whole inches.
const HALF_CODES: [f64; 7] = [14.5, 16.5, 17.5, 19.5, 20.5, 22.5, 24.5];

/// The rim diameter code, if rims are made to it.
pub(super) fn rim_code(rim_in: f64) -> Result<f64> {
    let whole = (8.0..=30.0).contains(&rim_in) && floor(rim_in) >= rim_in;
    if whole || HALF_CODES.contains(&rim_in) {
        Ok(rim_in)
    } else {
        Err(Error::OutOfRange { name: "rim_in", value: rim_in, low: 8.0, high: 30.0 })
    }
}

/// Nominal rim diameter in whole mm: UN R30 and R54, definition of the nominal rim diameter (25.4 mm per code, rounded).
pub(super) fn rim_mm(rim_in: f64) -> f64 {
    floor((rim_in * 254.0 + 5.0) / 10.0)
}

/// A size without an aspect ratio in its name: width, rim code in tenths, outer diameter in mm.
type Listed = (u16, u16, f64);

/// UN R30 annex 5 and UN R54 annex 5, sizes by section width in mm.
#[rustfmt::skip]
const NO_ASPECT: [Listed; 38] = [
    (125, 100, 459.0), (145, 100, 492.0),
    (125, 120, 510.0), (135, 120, 522.0), (145, 120, 542.0), (155, 120, 550.0),
    (125, 130, 536.0), (135, 130, 548.0), (145, 130, 566.0), (155, 130, 578.0), (165, 130, 596.0), (175, 130, 608.0),
    (185, 130, 624.0),
    (125, 140, 562.0), (135, 140, 574.0), (145, 140, 590.0), (155, 140, 604.0), (165, 140, 622.0), (175, 140, 634.0),
    (185, 140, 650.0), (195, 140, 666.0), (205, 140, 686.0), (215, 140, 700.0), (225, 140, 714.0),
    (125, 150, 588.0), (135, 150, 600.0), (145, 150, 616.0), (155, 150, 630.0), (165, 150, 646.0), (175, 150, 660.0),
    (185, 150, 674.0), (195, 150, 690.0), (205, 150, 710.0), (215, 150, 724.0), (225, 150, 738.0), (235, 150, 752.0),
    (175, 160, 686.0), (205, 160, 736.0),
];

/// UN R54 annex 5, radial sizes by section width in hundredths of an inch.
#[rustfmt::skip]
const INCH: [Listed; 31] = [
    (700, 160, 778.0), (750, 160, 802.0), (825, 150, 836.0), (825, 160, 860.0), (825, 200, 962.0), (900, 200, 1018.0),
    (1000, 150, 918.0), (1000, 200, 1052.0), (1000, 220, 1102.0), (1100, 200, 1082.0), (1100, 220, 1132.0),
    (1100, 240, 1182.0), (1200, 200, 1122.0), (1200, 240, 1226.0), (1400, 200, 1238.0),
    (700, 175, 752.0), (800, 175, 784.0), (850, 175, 802.0), (900, 175, 820.0), (950, 175, 842.0), (1000, 175, 858.0), (800, 195, 856.0),
    (800, 225, 936.0), (900, 225, 970.0), (1000, 225, 1020.0), (1100, 225, 1050.0), (1200, 225, 1084.0),
    (1300, 225, 1124.0), (1500, 225, 1074.0), (1100, 245, 1100.0), (1200, 245, 1134.0),
];

/// UN R54 annex 5 part II, light-truck sizes, radial and diagonal alike.
#[rustfmt::skip]
const INCH_LIGHT_TRUCK: [Listed; 21] = [
    (1000, 150, 773.0), (1100, 150, 777.0),
    (700, 130, 647.0), (700, 140, 670.0), (670, 150, 722.0), (700, 150, 752.0), (710, 150, 738.0), (750, 150, 782.0),
    (600, 160, 732.0), (650, 160, 755.0), (700, 160, 778.0), (750, 160, 808.0), (825, 160, 859.0), (900, 160, 890.0),
    (800, 165, 720.0), (875, 165, 748.0), (950, 165, 776.0), (1000, 165, 762.0), (1200, 165, 818.0),
    (700, 175, 752.0), (800, 175, 784.0),
];

/// Outer diameter of a size whose name carries no aspect ratio, mm.
pub(super) fn listed_mm(tire: &Tire) -> Option<f64> {
    let (rows, width): (&[Listed], f64) = match (tire.kind, tire.service, tire.plies) {
        (TireKind::NoAspect, _, TirePlies::Radial) => (&NO_ASPECT, tire.width_mm),
        (TireKind::Inch, TireService::LightTruck, _) => (&INCH_LIGHT_TRUCK, tire.width_in * 100.0),
        (TireKind::Inch, _, TirePlies::Radial) => (&INCH, tire.width_in * 100.0),
        _ => return None,
    };
    let same = |code: u16, given: f64| abs(f64::from(code) - given) < 1e-6;
    rows.iter().find(|row| same(row.0, width) && same(row.1, tire.rim_in * 10.0)).map(|row| row.2)
}
