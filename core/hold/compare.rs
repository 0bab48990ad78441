//! Two variants of a part side by side: what a change buys, and what it costs elsewhere.

use super::mesh::{Helical, axial_thrust};
use super::rating_life::ROLLER_EXPONENT;
use super::shaft::Shaft;
use super::thrust::NeedleThrust;
use crate::card::{self, Card, symbol};
use crate::clutch::{Applied, Pack};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{abs, powf};

pub(super) const CHANGE: Card = Card {
    id: "hold.change",
    purpose: "What the change of a figure is worth",
    equation: "ratio = after/before",
    symbols: &[
        symbol("ratio", "ratio", "1"),
        symbol("before", "before", "of the figure"),
        symbol("after", "after", "of the figure"),
    ],
    range: "figures of one sign; alike while the ratio is within the stated share of 1",
    source: &card::DEFINITION,
    locator: "one value over another of the same kind",
};

pub(super) const COMPARE_NEEDLES: Card = Card {
    id: "hold.compare_needles",
    purpose: "A needle thrust bearing against another: capacity, life at the same load, and the face that it needs",
    equation: "L_after/L_before = (C_a,after/C_a,before)^(10/3); by size alone C_a ~ L^(7/9) Z^(3/4) D_w^(29/27)",
    symbols: &[
        symbol("L_after, L_before", "life, at the same load", "1"),
        symbol("C_a,after, C_a,before", "dynamic_n", "N"),
        symbol("L, Z, D_w", "as hold.needle_capacity", "mm, 1, mm"),
        symbol("C_a", "life_by_size leaves f_c out, as handbooks do for bearings of nearly one pitch diameter", "N"),
    ],
    range: "same load, speed, races, oil; as hold.needle_capacity",
    source: &card::BEARING_LIFE,
    locator: "basic rating life, one bearing over the other",
};

pub(super) const COMPARE_SHAFTS: Card = Card {
    id: "hold.compare_shafts",
    purpose: "A shaft against another: stress each at its own torque, and both at the same torque",
    equation: "τ_own = 16 T_own D/(π (D⁴ − d⁴)), τ_same = 16 T_before D/(π (D⁴ − d⁴))",
    symbols: &[
        symbol("τ_own, τ_same", "stress_own_mpa, stress_same_mpa", "MPa"),
        symbol("T_own, T_before", "torque_before_nm, torque_after_nm", "N·m"),
        symbol("D, d", "outside_mm, inside_mm", "mm"),
    ],
    range: "as hold.torsion",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, torsion, one shaft over the other",
};

pub(super) const COMPARE_PACKS: Card = Card {
    id: "hold.compare_packs",
    purpose: "A clutch pack against another: capacity, what the plates share, drag and fill",
    equation: "T = μ z F r_m at the same p and μ; g/z, V = A g",
    symbols: &[
        symbol("T", "capacity_nm", "N·m"),
        symbol("z", "faces", "1"),
        symbol("μ", "applied.friction", "1"),
        symbol("p", "applied.pressure_kpa", "kPa"),
        symbol("F, r_m, A", "as clutch.capacity", "N, mm, mm²"),
        symbol("g", "clearance_mm, of the whole pack", "mm"),
        symbol("V", "fill_ml", "mL"),
    ],
    range: "as clutch.capacity. Drag is not computed: more faces, and less clearance for each, drag more",
    source: &card::DEFINITION,
    locator: "clutch.capacity, one pack over the other",
};

pub(super) const COMPARE_SUNS: Card = Card {
    id: "hold.compare_suns",
    purpose: "The sun of a planetary set against another: load on a tooth and push along the axis at the same torque",
    equation: "U = T/(r b m_n N), F_a = T tan β/r",
    symbols: &[
        symbol("U", "unit_load_mpa, of a tooth", "MPa"),
        symbol("T", "torque_nm, on the sun", "N·m"),
        symbol("r", "pitch radius, as hold.axial_thrust", "mm"),
        symbol("b, m_n", "face_mm, module_mm", "mm"),
        symbol("N", "planets, sharing the load evenly", "1"),
        symbol("F_a", "axial_n", "N"),
        symbol("β", "helix_deg", "°"),
    ],
    range: "the shape of the tooth and the sharing between planets are left out; a ratio, not a stress",
    source: &card::DEFINITION,
    locator: "force of one planet over face width and module",
};

/// Which way a figure is better.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Better {
    /// Neither: a change of it is only a difference.
    Neither,
    /// More is better.
    More,
    /// Less is better.
    Less,
}

/// What a change does.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Nothing.
    Same,
    /// It buys something.
    Buys,
    /// It costs something.
    Costs,
    /// It differs, for better or worse.
    Differs,
}

/// The change of one figure.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// Before.
    pub before: f64,
    /// After.
    pub after: f64,
    /// After over before; infinite where nothing was before.
    pub ratio: f64,
    /// Which way is better.
    pub better: Better,
    /// What the change does.
    pub effect: Effect,
}

/// Share of 1 within which two computed figures count as the same: rounding.
const ROUNDING: f64 = 1e-9;

impl Change {
    /// As [`change`], the same within rounding.
    pub(crate) fn of(before: f64, after: f64, better: Better) -> Result<Self> {
        change(before, after, better, ROUNDING)
    }
}

/// What the change of a figure is worth.
///
/// ratio = after/before
///
/// * `before`, `after` — of one sign; `better` — which way; `same_within` — share of 1 within which they are the same, 0 to 1
/// * returns [`Change`]
/// * errors: [`Error::NotFinite`], [`Error::OutOfRange`]; [`Error::NoAnswer`] for figures of opposite signs
///
/// Source: definition.
///
/// ```
/// use trainwright::hold::{Better, Effect, change};
/// let roll_mm = change(27.0, 36.0, Better::Less, 0.0)?; // free roll before the pawl drops
/// assert_eq!(roll_mm.effect, Effect::Costs);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn change(before: f64, after: f64, better: Better, same_within: f64) -> Result<Change> {
    if finite("after", after)? - finite("before", before)? == 0.0 {
        return Ok(Change { before, after, ratio: 1.0, better, effect: Effect::Same });
    }
    if before * after < 0.0 {
        return Err(Error::NoAnswer { name: "ratio", why: "figures of opposite signs have no ratio" });
    }
    let ratio = abs(after / before);
    // Of negative figures (a reverse ratio) the larger is the one further from 0.
    let effect = match better {
        _ if abs(ratio - 1.0) <= within("same_within", same_within, 0.0, 1.0)? => Effect::Same,
        Better::Neither => Effect::Differs,
        Better::More if ratio > 1.0 => Effect::Buys,
        Better::Less if ratio < 1.0 => Effect::Buys,
        Better::More | Better::Less => Effect::Costs,
    };
    Ok(Change { before, after, ratio, better, effect })
}

/// One needle thrust bearing against another.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleChange {
    /// Static capacity, N.
    pub static_n: Change,
    /// Dynamic capacity, N.
    pub dynamic_n: Change,
    /// Life at the same load, of the one before.
    pub life: Change,
    /// The same with one f_c for both: what needles, length and diameter alone do.
    pub life_by_size: Change,
    /// Outside diameter that the needles sweep, mm: both faces must reach it.
    pub outside_mm: Change,
    /// Length of a needle, mm: both faces must be as wide.
    pub face_mm: Change,
}

/// A needle thrust bearing against another, at the same load.
///
/// L_after/L_before = (C_a,after/C_a,before)^(10/3); by size alone C_a ~ L^(7/9) Z^(3/4) D_w^(29/27)
///
/// * `before`, `after` — as [`NeedleThrust::needle_capacity`]
/// * returns [`NeedleChange`]; the wider bearing buys nothing on a face that it does not lie on
/// * errors: as [`NeedleThrust::needle_capacity`]
///
/// Source: ISO 281:2007, basic rating life. Example (computed independently with numpy): 36 needles of 9 mm on 60 mm against
/// 32 of 6 mm on 56 mm, all 2.5 mm thick: 1.6875 times the static capacity, 3.84 times the life by size, 3.65 times with f_c.
///
/// ```
/// use trainwright::hold::{NeedleThrust, compare_needles};
/// let race = |needles, needle_length_mm, pitch_diameter_mm| {
///     NeedleThrust { needles, needle_diameter_mm: 2.5, needle_length_mm, pitch_diameter_mm }
/// };
/// let wide = compare_needles(race(32, 6.0, 56.0), race(36, 9.0, 60.0))?;
/// assert_eq!(wide.static_n.ratio, 1.6875);
/// assert!((wide.life_by_size.ratio - 3.8407).abs() < 5e-5);
/// assert!((wide.life.ratio - 3.6494).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn compare_needles(before: NeedleThrust, after: NeedleThrust) -> Result<NeedleChange> {
    let (first, second) = (before.needle_capacity()?, after.needle_capacity()?);
    let life = |dynamic_ratio: f64| Change::of(1.0, powf(dynamic_ratio, ROLLER_EXPONENT), Better::More);
    let dynamic_n = Change::of(first.dynamic_n, second.dynamic_n, Better::More)?;
    Ok(NeedleChange {
        static_n: Change::of(first.static_n, second.static_n, Better::More)?,
        dynamic_n,
        life: life(dynamic_n.ratio)?,
        life_by_size: life(dynamic_n.ratio * first.dynamic_factor / second.dynamic_factor)?,
        outside_mm: Change::of(first.outside_mm, second.outside_mm, Better::Less)?,
        face_mm: Change::of(before.needle_length_mm, after.needle_length_mm, Better::Less)?,
    })
}

/// One shaft against another.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftChange {
    /// Stress of each at its own torque, MPa.
    pub stress_own_mpa: Change,
    /// Stress of each at the torque of the one before, MPa.
    pub stress_same_mpa: Change,
    /// Torque that each is asked to carry, N·m.
    pub torque_nm: Change,
    /// Polar moment, mm⁴: stiffness of the same length.
    pub polar_moment_mm4: Change,
    /// Metal of the section, mm²: mass of the same length.
    pub section_mm2: Change,
}

/// A shaft against another, each at its own torque and both at the same.
///
/// τ_own = 16 T_own D/(π (D⁴ − d⁴)), τ_same = 16 T_before D/(π (D⁴ − d⁴))
///
/// * `before`, `after` — the shafts; `torque_before_nm`, `torque_after_nm` — what each must carry, above 0
/// * returns [`ShaftChange`]: a thicker shaft in a unit with a higher rating can still be the more loaded one
/// * errors: as [`Shaft::torsion`]
///
/// Source: Shigley, chapter 3, torsion. Example: a shaft turned from 300 to 250 mm keeps 58 % of its strength (published
/// exercise in strength of materials).
///
/// ```
/// use trainwright::hold::{Shaft, compare_shafts};
/// let solid = |outside_mm| Shaft { outside_mm, inside_mm: 0.0 };
/// let turned = compare_shafts(solid(300.0), solid(250.0), 1000.0, 1000.0)?;
/// assert!((1.0 / turned.stress_same_mpa.ratio - 0.58).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn compare_shafts(before: Shaft, after: Shaft, torque_before_nm: f64, torque_after_nm: f64) -> Result<ShaftChange> {
    let before_nm = positive("torque_before_nm", torque_before_nm)?;
    let after_nm = positive("torque_after_nm", torque_after_nm)?;
    let (first, second) = (before.torsion(before_nm)?, after.torsion(after_nm)?);
    let metal_mm2 = |shaft: Shaft| {
        core::f64::consts::PI / 4.0 * (shaft.outside_mm * shaft.outside_mm - shaft.inside_mm * shaft.inside_mm)
    };
    Ok(ShaftChange {
        stress_own_mpa: Change::of(first.stress_mpa, second.stress_mpa, Better::Less)?,
        stress_same_mpa: Change::of(first.stress_mpa, after.torsion(before_nm)?.stress_mpa, Better::Less)?,
        torque_nm: Change::of(before_nm, after_nm, Better::Neither)?,
        polar_moment_mm4: Change::of(first.polar_moment_mm4, second.polar_moment_mm4, Better::More)?,
        section_mm2: Change::of(metal_mm2(before), metal_mm2(after), Better::Less)?,
    })
}

/// A pack with the clearance that it is set to.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPack {
    /// The pack.
    pub pack: Pack,
    /// Clearance of the whole pack, mm.
    pub clearance_mm: f64,
}

/// One clutch pack against another.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackChange {
    /// Capacity at the same pressure and friction, N·m.
    pub capacity_nm: Change,
    /// Pressure at which each holds what the one before can, kPa.
    pub pressure_kpa: Change,
    /// Area over which the heat of a shift spreads, mm².
    pub friction_area_mm2: Change,
    /// Friction faces: each drags while the pack is open.
    pub faces: Change,
    /// Clearance for each face, mm: the less, the more it drags.
    pub clearance_per_face_mm: Change,
    /// Oil that closes the clearance, mL: the more, the later the shift.
    pub fill_ml: Change,
}

/// A clutch pack against another, at the same pressure and friction.
///
/// T = μ z F r_m at the same p and μ; g/z, V = A g
///
/// * `before`, `after` — packs with their clearance, above 0; `applied` — pressure, friction, drum speed, oil for both
/// * returns [`PackChange`]
/// * errors: as [`Pack::capacity`]; [`Error::NoAnswer`] while a return spring holds its piston back
///
/// Source: [`Pack::capacity`], one pack over the other.
pub fn compare_packs(before: SetPack, after: SetPack, applied: Applied) -> Result<PackChange> {
    let (first, second) = (before.pack.capacity(applied)?, after.pack.capacity(applied)?);
    if first.torque_nm <= 0.0 || second.torque_nm <= 0.0 {
        let why =
            "a return spring holds its piston back at this pressure, so nothing can be compared; raise the pressure";
        return Err(Error::NoAnswer { name: "pressure_kpa", why });
    }
    let needed = |pack: Pack| Ok(pack.pressure_needed(first.torque_nm, applied)?.strong_spring_kpa);
    let area = |pack: Pack| Ok(f64::from(pack.faces) * pack.lining.area_mm2()?);
    let clearance = |side: SetPack| within("clearance_mm", positive("clearance_mm", side.clearance_mm)?, 0.0, 100.0);
    let (first_mm, second_mm) = (clearance(before)?, clearance(after)?);
    let (faces, more_faces) = (f64::from(first.faces), f64::from(second.faces));
    let fill_ml = |area_mm2: f64, clearance_mm: f64| area_mm2 * clearance_mm * 1e-3;
    Ok(PackChange {
        capacity_nm: Change::of(first.torque_nm, second.torque_nm, Better::More)?,
        pressure_kpa: Change::of(needed(before.pack)?, needed(after.pack)?, Better::Less)?,
        friction_area_mm2: Change::of(area(before.pack)?, area(after.pack)?, Better::More)?,
        faces: Change::of(faces, more_faces, Better::Less)?,
        clearance_per_face_mm: Change::of(first_mm / faces, second_mm / more_faces, Better::More)?,
        fill_ml: Change::of(
            fill_ml(first.piston_area_mm2, first_mm),
            fill_ml(second.piston_area_mm2, second_mm),
            Better::Less,
        )?,
    })
}

/// The sun of a planetary set with what it meshes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HelicalSun {
    /// Teeth of the sun.
    pub teeth: u16,
    /// Planets around it, 1 to 20.
    pub planets: u8,
    /// Module and helix.
    pub helical: Helical,
    /// Face width, mm.
    pub face_mm: f64,
}

/// One sun against another.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunChange {
    /// Force of a planet over face width and module, MPa.
    pub unit_load_mpa: Change,
    /// Force along the axis, N.
    pub axial_n: Change,
    /// Normal module, mm: the size of a tooth.
    pub module_mm: Change,
    /// Planets: pins, needles and washers to fit and to check.
    pub planets: Change,
}

/// The sun of a planetary set against another, at the same torque.
///
/// U = T/(r b m_n N), F_a = T tan β/r
///
/// * `before`, `after` — the suns; `torque_nm` — T on each, above 0
/// * returns [`SunChange`]: ratios for comparison, no stress; the tooth form and the sharing between planets are left out
/// * errors: [`Error::Count`], [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: definitions.
pub fn compare_suns(before: HelicalSun, after: HelicalSun, torque_nm: f64) -> Result<SunChange> {
    let torque_nm = positive("torque_nm", torque_nm)?;
    let side = |sun: HelicalSun| {
        if !(1..=20).contains(&sun.planets) {
            return Err(Error::Count { name: "planets", count: sun.planets.into(), low: 1, high: 20 });
        }
        let thrust = axial_thrust(torque_nm, sun.teeth, sun.helical)?;
        let face_mm = within("face_mm", positive("face_mm", sun.face_mm)?, 0.0, 1e4)?;
        Ok((thrust.tangential_n / (face_mm * sun.helical.module_mm * f64::from(sun.planets)), thrust.axial_n))
    };
    let ((first_mpa, first_n), (second_mpa, second_n)) = (side(before)?, side(after)?);
    Ok(SunChange {
        unit_load_mpa: Change::of(first_mpa, second_mpa, Better::Less)?,
        axial_n: Change::of(first_n, second_n, Better::Less)?,
        module_mm: Change::of(before.helical.module_mm, after.helical.module_mm, Better::Neither)?,
        planets: Change::of(before.planets.into(), after.planets.into(), Better::Neither)?,
    })
}
