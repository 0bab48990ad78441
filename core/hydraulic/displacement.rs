//! Displacement of a pump from its sizes.

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};

pub(super) const EXTERNAL_GEAR: Card = Card {
    id: "hydraulic.external_gear_cm3_rev",
    purpose: "Displacement of an external gear pump from tip and root diameter",
    equation: "V = π (D_o² − D_i²) b/4",
    symbols: &[
        symbol("V", "result", "cm³ per turn"),
        symbol("D_o, D_i", "tip_diameter_mm, root_diameter_mm", "mm"),
        symbol("b", "face_mm", "mm"),
    ],
    range: "two equal gears whose tooth spaces are as large as their teeth; oil trapped between the teeth is not deducted",
    source: &card::FLUID_POWER,
    locator: "gear pumps, volumetric displacement",
};

pub(super) const BY_CENTERS: Card = Card {
    id: "hydraulic.external_gear_by_centers_cm3_rev",
    purpose: "Displacement of an external gear pump from tip diameter and center distance",
    equation: "V = π b (d_a² − a²)/2",
    symbols: &[
        symbol("V", "result", "cm³ per turn"),
        symbol("d_a, a", "tip_diameter_mm, center_distance_mm", "mm"),
        symbol("b", "face_mm", "mm"),
    ],
    range: "two equal gears in mesh: the center distance lies below the tip diameter; some 3 % more than such pumps are named for",
    source: &card::DEFINITION,
    locator: "moment of the pressure on the teeth of both gears at the pitch point",
};

pub(super) const CHAMBERS: Card = Card {
    id: "hydraulic.chamber_displacement",
    purpose: "Displacement of an internal gear pump from the areas of its largest and smallest chamber",
    equation: "V_i = z_i (A_max − A_min) b, V_o = z_o (A_max − A_min) b",
    symbols: &[
        symbol("V_i, V_o", "inner_cm3_rev, outer_cm3_rev", "cm³ per turn"),
        symbol("z_i, z_o", "inner_teeth, outer_teeth", "1"),
        symbol("A_max, A_min", "chamber_max_mm2, chamber_min_mm2", "mm²"),
        symbol("b", "face_mm", "mm"),
    ],
    range: "one chamber for each tooth of the outer gear, each filled and emptied once in a turn of the outer gear; with a crescent the chamber is a space of the inner and one of the outer gear together",
    source: &card::DEFINITION,
    locator: "chambers swept in a turn; the gears turn in the ratio of their teeth",
};

pub(super) const VANE: Card = Card {
    id: "hydraulic.vane_cm3_rev",
    purpose: "Displacement of a vane pump at an eccentricity",
    equation: "V = π (D_c + D_r) e b/2",
    symbols: &[
        symbol("V", "result", "cm³ per turn"),
        symbol("D_c, D_r", "cam_diameter_mm, rotor_diameter_mm", "mm"),
        symbol("e", "eccentricity_mm", "mm"),
        symbol("b", "face_mm", "mm"),
    ],
    range: "e no more than (D_c − D_r)/2; thickness of the vanes neglected",
    source: &card::FLUID_POWER,
    locator: "vane pumps, volumetric displacement",
};

pub(super) const FIELD_RULE: Card = Card {
    id: "hydraulic.field_rule_cm3_rev",
    purpose: "Displacement of a gear pump that cannot be taken apart, by the rule of the trade",
    equation: "V = 6 b (2 D − L) (L − D)/2",
    symbols: &[
        symbol("V", "result", "cm³ per turn"),
        symbol("D", "bore_diameter_mm", "mm"),
        symbol("L", "across_bores_mm, over both bores, along the line of centers", "mm"),
        symbol("b", "face_mm", "mm"),
    ],
    range: "two equal gears; L between D and 2 D. The trade counts 47 instead of 6 for gallons per minute at 1800 1/min from inches: 6·1800/231",
    source: &card::PRACTICE,
    locator: "rule for replacing a pump of unknown make",
};

pub(super) const EFFICIENCY: Card = Card {
    id: "hydraulic.volumetric_efficiency",
    purpose: "Share of its displacement that a pump delivers",
    equation: "η_v = 1000 Q/(V n)",
    symbols: &[
        symbol("η_v", "result", "1"),
        symbol("Q", "delivered_l_min", "L/min"),
        symbol("V", "displacement_cm3_rev", "cm³ per turn"),
        symbol("n", "speed_rpm", "1/min"),
    ],
    range: "more than 1 is a wrong displacement, speed or flow",
    source: &card::FLUID_POWER,
    locator: "pump performance, volumetric efficiency",
};

/// Sizes of pumps, mm.
const SIZE_MM: f64 = 1000.0;

fn size(name: &'static str, value_mm: f64) -> Result<f64> {
    within(name, positive(name, value_mm)?, 0.0, SIZE_MM)
}

/// Displacement of an external gear pump from tip and root diameter.
///
/// V = π (D_o² − D_i²) b/4
///
/// * `tip_diameter_mm` — D_o of a gear; `root_diameter_mm` — D_i, below D_o; `face_mm` — b; to 1000
/// * returns V, cm³ per turn
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Inconsistent`] for a root that is not below the tip
///
/// Source: Esposito, Fluid Power with Applications (from memory). Example: 3 in over 2 in, 1 in wide: 3.93 in³.
///
/// ```
/// use trainwright::hydraulic::external_gear_cm3_rev;
/// let in3 = external_gear_cm3_rev(76.2, 50.8, 25.4)? / 16.387_064;
/// assert!((in3 - 3.93).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn external_gear_cm3_rev(tip_diameter_mm: f64, root_diameter_mm: f64, face_mm: f64) -> Result<f64> {
    let tip = size("tip_diameter_mm", tip_diameter_mm)?;
    let root = size("root_diameter_mm", root_diameter_mm)?;
    let face = size("face_mm", face_mm)?;
    if root >= tip {
        return Err(Error::Inconsistent {
            name: "root_diameter_mm",
            why: "the root lies below the tip of the teeth; exchange the two or correct one",
        });
    }
    Ok(PI / 4.0 * (tip - root) * (tip + root) * face * 1e-3)
}

/// Displacement of an external gear pump from tip diameter and center distance: what can be measured in the body.
///
/// V = π b (d_a² − a²)/2
///
/// * `tip_diameter_mm` — d_a; `center_distance_mm` — a, below d_a and above half of it; `face_mm` — b; to 1000
/// * returns V, cm³ per turn
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Inconsistent`] for gears that do not mesh
///
/// Source: derived; the same formula is used for measured pumps. Example: d_a 50.39, a 42.06, b 16.14 mm: 19.52 cm³, for a
/// pump that is named 19.
///
/// ```
/// use trainwright::hydraulic::external_gear_by_centers_cm3_rev;
/// assert!((external_gear_by_centers_cm3_rev(50.39, 42.06, 16.14)? - 19.52).abs() < 0.01);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn external_gear_by_centers_cm3_rev(tip_diameter_mm: f64, center_distance_mm: f64, face_mm: f64) -> Result<f64> {
    let tip = size("tip_diameter_mm", tip_diameter_mm)?;
    let centers = size("center_distance_mm", center_distance_mm)?;
    let face = size("face_mm", face_mm)?;
    if centers >= tip || 2.0 * centers <= tip {
        return Err(Error::Inconsistent {
            name: "center_distance_mm",
            why: "gears in mesh stand less than a tip diameter and more than half of one apart; exchange the two or correct one",
        });
    }
    Ok(PI / 2.0 * face * (tip - centers) * (tip + centers) * 1e-3)
}

/// An internal gear pump: a gerotor, or pinion and ring with a crescent.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InternalGearPump {
    /// Teeth of the inner gear, 2 to 200.
    pub inner_teeth: u32,
    /// Teeth of the outer gear; one more in a gerotor.
    pub outer_teeth: u32,
    /// Area of the largest chamber, mm².
    pub chamber_max_mm2: f64,
    /// Area of the smallest chamber, at full mesh, mm².
    pub chamber_min_mm2: f64,
    /// Width of the gears, mm.
    pub face_mm: f64,
}

/// Displacement of an internal gear pump.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChamberDisplacement {
    /// Per turn of the inner gear, cm³: it is the driven one as a rule.
    pub inner_cm3_rev: f64,
    /// Per turn of the outer gear, cm³.
    pub outer_cm3_rev: f64,
}

impl InternalGearPump {
    /// Displacement from the areas of the largest and smallest chamber.
    ///
    /// V_i = z_i (A_max − A_min) b, V_o = z_o (A_max − A_min) b
    ///
    /// * returns [`ChamberDisplacement`]
    /// * errors: [`Error::Count`] for the teeth; [`Error::Inconsistent`] unless the outer gear has more teeth and the largest
    ///   chamber is larger; [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: derived: every chamber is filled and emptied once in a turn of the outer gear. Example (computed): 9 teeth in
    /// 10, 118 and 14 mm², 12 mm wide: 11.232 cm³ for a turn of the inner gear, 12.48 for one of the outer.
    ///
    /// ```
    /// use trainwright::hydraulic::InternalGearPump;
    /// let gerotor = InternalGearPump {
    ///     inner_teeth: 9, outer_teeth: 10, chamber_max_mm2: 118.0, chamber_min_mm2: 14.0, face_mm: 12.0,
    /// };
    /// let volume = gerotor.chamber_displacement()?;
    /// assert!((volume.inner_cm3_rev - 11.232).abs() < 1e-9 && (volume.outer_cm3_rev - 12.48).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn chamber_displacement(self) -> Result<ChamberDisplacement> {
        for (name, count) in [("inner_teeth", self.inner_teeth), ("outer_teeth", self.outer_teeth)] {
            if !(2..=200).contains(&count) {
                return Err(Error::Count { name, count, low: 2, high: 200 });
            }
        }
        if self.outer_teeth <= self.inner_teeth {
            return Err(Error::Inconsistent {
                name: "outer_teeth",
                why: "the outer gear has more teeth than the inner one; exchange the two or count again",
            });
        }
        let largest = within("chamber_max_mm2", positive("chamber_max_mm2", self.chamber_max_mm2)?, 0.0, 1e5)?;
        let smallest = within("chamber_min_mm2", self.chamber_min_mm2, 0.0, 1e5)?;
        if smallest >= largest {
            return Err(Error::Inconsistent {
                name: "chamber_min_mm2",
                why: "the smallest chamber is smaller than the largest; exchange the two or correct one",
            });
        }
        let chamber_cm3 = (largest - smallest) * size("face_mm", self.face_mm)? * 1e-3;
        Ok(ChamberDisplacement {
            inner_cm3_rev: f64::from(self.inner_teeth) * chamber_cm3,
            outer_cm3_rev: f64::from(self.outer_teeth) * chamber_cm3,
        })
    }
}

/// Displacement of a vane pump at an eccentricity; a variable pump changes it.
///
/// V = π (D_c + D_r) e b/2
///
/// * `cam_diameter_mm` — D_c; `rotor_diameter_mm` — D_r, below D_c; `eccentricity_mm` — e, 0 to (D_c − D_r)/2; `face_mm` — b
/// * returns V, cm³ per turn
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Inconsistent`] for a rotor that does not fit
///
/// Source: Esposito, Fluid Power with Applications (from memory). Example: its pump of 5 in³ with a rotor of 2 in, a cam ring
/// of 3 in and vanes of 2 in needs an eccentricity of 0.318 in.
///
/// ```
/// use trainwright::hydraulic::vane_cm3_rev;
/// let in3 = vane_cm3_rev(76.2, 50.8, 0.318 * 25.4, 50.8)? / 16.387_064;
/// assert!((in3 - 5.0).abs() < 0.01);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn vane_cm3_rev(cam_diameter_mm: f64, rotor_diameter_mm: f64, eccentricity_mm: f64, face_mm: f64) -> Result<f64> {
    let cam = size("cam_diameter_mm", cam_diameter_mm)?;
    let rotor = size("rotor_diameter_mm", rotor_diameter_mm)?;
    if rotor >= cam {
        return Err(Error::Inconsistent {
            name: "rotor_diameter_mm",
            why: "the rotor turns inside the cam ring; exchange the two or correct one",
        });
    }
    let eccentricity = within("eccentricity_mm", eccentricity_mm, 0.0, (cam - rotor) / 2.0)?;
    Ok(PI / 2.0 * (cam + rotor) * eccentricity * size("face_mm", face_mm)? * 1e-3)
}

/// Displacement of a gear pump by the rule of the trade, from what can be measured with its cover off.
///
/// V = 6 b (2 D − L) (L − D)/2
///
/// * `bore_diameter_mm` — D of one bore; `across_bores_mm` — L over both bores, between D and 2 D; `face_mm` — b
/// * returns V, cm³ per turn
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Inconsistent`] for bores that do not overlap
///
/// Source: common practice, no source. It says less than [`external_gear_by_centers_cm3_rev`] of the same sizes.
///
/// ```
/// use trainwright::hydraulic::field_rule_cm3_rev;
/// let in3 = field_rule_cm3_rev(50.8, 88.9, 25.4)? / 16.387_064; // 2 in bores, 3.5 in over both, 1 in wide
/// assert!((in3 - 2.25).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn field_rule_cm3_rev(bore_diameter_mm: f64, across_bores_mm: f64, face_mm: f64) -> Result<f64> {
    let bore = size("bore_diameter_mm", bore_diameter_mm)?;
    let across = size("across_bores_mm", across_bores_mm)?;
    if across <= bore || across >= 2.0 * bore {
        return Err(Error::Inconsistent {
            name: "across_bores_mm",
            why: "over both bores it is more than one and less than two diameters; measure along the line of centers",
        });
    }
    Ok(3.0 * size("face_mm", face_mm)? * (2.0 * bore - across) * (across - bore) * 1e-3)
}

/// Share of its displacement that a pump delivers.
///
/// η_v = 1000 Q/(V n)
///
/// * `delivered_l_min` — Q, 0 or more; `displacement_cm3_rev` — V; `speed_rpm` — n, above 0
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]; [`Error::Inconsistent`] where the pump would deliver more than it
///   displaces
///
/// Source: Esposito, Fluid Power with Applications (from memory). Example: 3.93 in³ at 1800 1/min displace 30.6 gallons per
/// minute; 28 delivered are 91.5 %.
pub fn volumetric_efficiency(delivered_l_min: f64, displacement_cm3_rev: f64, speed_rpm: f64) -> Result<f64> {
    let delivered = within("delivered_l_min", delivered_l_min, 0.0, 1e5)?;
    let swept_l_min = displaced(displacement_cm3_rev)? * positive("speed_rpm", speed_rpm)? * 1e-3;
    if delivered > swept_l_min {
        return Err(Error::Inconsistent {
            name: "delivered_l_min",
            why: "a pump delivers no more than it displaces; check displacement, speed and flow, or air in the measured flow",
        });
    }
    Ok(delivered / swept_l_min)
}

/// A displacement that a pump of a transmission may have.
pub(super) fn displaced(displacement_cm3_rev: f64) -> Result<f64> {
    let name = "displacement_cm3_rev";
    within(name, positive(name, displacement_cm3_rev)?, 0.0, 1e4)
}
