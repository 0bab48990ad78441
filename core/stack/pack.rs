//! Clearance of a clutch pack, travel of its piston, and what filling it takes.

use crate::card::{self, Card, symbol};
use crate::clutch::Annulus;
use crate::error::{Error, Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::hypot;

pub(super) const ROOM_FROM_FITTED: Card = Card {
    id: "stack.room_from_fitted",
    purpose: "Room for the ring or plate of a pack, from the clearance read with another one in place",
    equation: "E = g + t, u² = u_g² + u_t²",
    symbols: &[
        symbol("E, u", "room_mm", "mm"),
        symbol("g, u_g", "clearance_mm", "mm"),
        symbol("t, u_t", "fitted_mm", "mm"),
    ],
    range: "both rings against the same wall of the groove; reading and ring independent",
    source: &card::DEFINITION,
    locator: "E = g + t; JCGM 100:2008, equation 10 for u",
};

pub(super) const ROOM_FROM_HEIGHTS: Card = Card {
    id: "stack.room_from_heights",
    purpose: "Room for the ring or plate of a pack, from the depth of the drum and the heights of what stands in it",
    equation: "E = H − (N_f h_f + N_s h_s + h_p + h_w)",
    symbols: &[
        symbol("E", "room_mm", "mm"),
        symbol("H", "drum_depth_mm, piston at rest to the outer wall of the ring groove", "mm"),
        symbol("N_f, N_s", "friction_plates, steel_plates", "1"),
        symbol("h_f, h_s", "friction_mm, steel_mm", "mm"),
        symbol("h_p, h_w", "pressure_plate_mm, wave_plate_mm", "mm"),
    ],
    range: "frictions soaked and pressed together; one measured plate stands for all of its kind, so its error counts N times",
    source: &card::DEFINITION,
    locator: "heights along the axis; JCGM 100:2008, equation 10 for u",
};

pub(super) const PISTON_TRAVEL: Card = Card {
    id: "stack.piston_travel",
    purpose: "Whether the piston closes the pack before its seal leaves its land",
    equation: "x = g + w + b; judged: L − x ≥ 0",
    symbols: &[
        symbol("x", "travel_mm", "mm"),
        symbol("g", "clearance_mm", "mm"),
        symbol("w", "wave_mm, what the wave plate gives way", "mm"),
        symbol("b", "bend_mm, what plates and drum give way", "mm"),
        symbol("L", "land_mm, travel at which the seal leaves its land", "mm"),
    ],
    range: "new linings; wear adds to the clearance and so to the travel",
    source: &card::DEFINITION,
    locator: "travel along the axis; JCGM 100:2008, equation 10 for u",
};

pub(super) const APPLY_FILL: Card = Card {
    id: "stack.apply_fill",
    purpose: "Oil that a piston takes to close its pack, and how long a flow needs for it",
    equation: "V = A x, t = V/Q, A = π (R_o² − R_i²)",
    symbols: &[
        symbol("V", "volume_ml", "mL"),
        symbol("A", "area_mm2", "mm²"),
        symbol("x", "travel_mm", "mm"),
        symbol("t", "time_s", "s"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("R_o, R_i", "piston.outer_radius_mm, piston.inner_radius_mm", "mm"),
    ],
    range: "the passage is full and tight, the flow steady; an empty passage, air and leakage make it longer",
    source: &card::DEFINITION,
    locator: "volume swept by the piston",
};

/// Room for the ring or plate of a pack, from the clearance read with another one in place.
///
/// E = g + t, u² = u_g² + u_t²
///
/// * `clearance_mm` — g, read with the ring fitted; `fitted_mm` — t, that ring
/// * returns E, mm, for [`super::Selection`]. To keep the fitted ring, judge the reading itself: its thickness cancels
/// * errors: [`Error::OutOfRange`], [`Error::NotFinite`]
///
/// Source: E = g + t. Example (computed independently for the demonstration): 2.27 mm with the ring 2.90 in place; ring 3.40
/// leaves 1.77.
///
/// ```
/// use trainwright::judge::Reading;
/// let room = trainwright::stack::room_from_fitted(Reading::new(2.27, 0.011)?, Reading::new(2.90, 0.015)?)?;
/// assert!((room.value - 3.40 - 1.77).abs() < 1e-12 && (room.u - 0.0186).abs() < 5e-5);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn room_from_fitted(clearance_mm: Reading, fitted_mm: Reading) -> Result<Reading> {
    let [clearance_mm, fitted_mm] = [height("clearance_mm", clearance_mm)?, height("fitted_mm", fitted_mm)?];
    Reading::new(clearance_mm.value + fitted_mm.value, hypot(clearance_mm.u, fitted_mm.u))
}

fn height(name: &'static str, length_mm: Reading) -> Result<Reading> {
    within(name, length_mm.value, 0.0, 1e6)?;
    within(name, length_mm.u, 0.0, 1e6)?;
    Ok(length_mm)
}

/// Depth of a drum and the heights of what stands in it, without the ring or plate to be chosen.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackHeights {
    /// From the piston at rest to the outer wall of the ring groove, mm.
    pub drum_depth_mm: Reading,
    /// Number of friction plates.
    pub friction_plates: u32,
    /// Thickness of one friction plate, mm, soaked and pressed together.
    pub friction_mm: Reading,
    /// Number of steel plates.
    pub steel_plates: u32,
    /// Thickness of one steel plate, mm.
    pub steel_mm: Reading,
    /// Thickness of the pressure plate, mm; 0 for none, or where it is the piece to be chosen.
    pub pressure_plate_mm: Reading,
    /// Free height of the wave plate, mm; 0 for none.
    pub wave_plate_mm: Reading,
}

/// Room for the ring or plate of a pack.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackRoom {
    /// Height of everything in the drum, mm.
    pub plates_mm: f64,
    /// What is left for the ring and the clearance, mm.
    pub room_mm: Reading,
    /// Where its uncertainty comes from: drum, frictions, steels, pressure plate, wave plate.
    pub budget: Budget,
}

impl PackHeights {
    /// Room for the ring or plate of a pack, from heights.
    ///
    /// E = H − (N_f h_f + N_s h_s + h_p + h_w)
    ///
    /// * returns [`PackRoom`]. One measured plate stands for all of its kind, so its error counts N times; where the plates were
    ///   measured as a stack, give 1 and the stack
    /// * errors: [`Error::Count`] for more than 40 plates of a kind, [`Error::OutOfRange`] for a height, [`Error::NoAnswer`]
    ///   where the plates do not go into the drum
    ///
    /// Source: heights along the axis. Example (computed): 29.40 mm deep, 5 frictions of 1.95 and 5 steels of 1.80 mm, pressure
    /// plate 5.48: 5.17 mm is left for ring and clearance.
    ///
    /// ```
    /// use trainwright::judge::Reading;
    /// let size = |value: f64| Reading::new(value, 0.007);
    /// let pack = trainwright::stack::PackHeights {
    ///     drum_depth_mm: size(29.40)?, friction_plates: 5, friction_mm: size(1.95)?, steel_plates: 5, steel_mm: size(1.80)?,
    ///     pressure_plate_mm: size(5.48)?, wave_plate_mm: Reading::exact(0.0)?,
    /// };
    /// let left = pack.room_from_heights()?;
    /// assert!((left.room_mm.value - 5.17).abs() < 1e-12);
    /// assert!((left.room_mm.u - 0.007 * 52.0_f64.sqrt()).abs() < 1e-12); // 5² + 5² + 1 + 1
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn room_from_heights(self) -> Result<PackRoom> {
        for (name, count) in [("friction_plates", self.friction_plates), ("steel_plates", self.steel_plates)] {
            if count > 40 {
                return Err(Error::Count { name, count, low: 0, high: 40 });
            }
        }
        let (frictions, steels) = (f64::from(self.friction_plates), f64::from(self.steel_plates));
        let drum = height("drum_depth_mm", self.drum_depth_mm)?;
        let friction = height("friction_mm", self.friction_mm)?;
        let steel = height("steel_mm", self.steel_mm)?;
        let pressure_plate = height("pressure_plate_mm", self.pressure_plate_mm)?;
        let wave = height("wave_plate_mm", self.wave_plate_mm)?;
        let plates_mm = frictions * friction.value + steels * steel.value + pressure_plate.value + wave.value;
        if plates_mm > drum.value {
            return Err(Error::NoAnswer {
                name: "room_mm",
                why: "the plates stand higher than the drum is deep: count the steels again, and check the depth",
            });
        }
        let budget = combine(&[
            Input::new(1.0, drum.u)?,
            Input::new(-frictions, friction.u)?,
            Input::new(-steels, steel.u)?,
            Input::new(-1.0, pressure_plate.u)?,
            Input::new(-1.0, wave.u)?,
        ])?;
        Ok(PackRoom { plates_mm, room_mm: Reading::new(drum.value - plates_mm, budget.u)?, budget })
    }
}

/// What a piston travels, and how far its seal may.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PistonStroke {
    /// Clearance of the pack, mm.
    pub clearance_mm: Reading,
    /// What the wave plate gives way until it is flat, mm; 0 for none.
    pub wave_mm: Reading,
    /// What plates, ring and drum give way under pressure, mm.
    pub bend_mm: Reading,
    /// PistonTravel at which the seal leaves its land, mm.
    pub land_mm: Reading,
}

/// PistonTravel of a piston against its seal land.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PistonTravel {
    /// What the piston travels, mm.
    pub travel_mm: Reading,
    /// The land to spare, land less travel, against 0, mm.
    pub judgment: Judgment,
    /// Where its uncertainty comes from: clearance, wave plate, bend, land.
    pub budget: Budget,
}

impl PistonStroke {
    /// Whether the piston closes the pack before its seal leaves its land.
    ///
    /// x = g + w + b; judged: L − x ≥ 0
    ///
    /// * `rule` — decision rule
    /// * returns [`PistonTravel`]
    /// * errors: [`Error::OutOfRange`] and [`Error::NotFinite`] for a length
    ///
    /// Source: travel along the axis. Example (computed): a clearance of 1.77 mm with 0.35 of wave and 0.10 of bend on a land
    /// of 3.2 leaves 0.98 mm.
    ///
    /// ```
    /// use trainwright::judge::{Reading, Rule, Verdict};
    /// let stroke = trainwright::stack::PistonStroke {
    ///     clearance_mm: Reading::new(1.77, 0.024)?, wave_mm: Reading::new(0.35, 0.03)?, bend_mm: Reading::new(0.10, 0.03)?,
    ///     land_mm: Reading::new(3.2, 0.05)?,
    /// };
    /// let travel = stroke.piston_travel(Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((travel.travel_mm.value - 2.22).abs() < 1e-12 && (travel.judgment.reading.value - 0.98).abs() < 1e-12);
    /// assert_eq!(travel.judgment.verdict, Verdict::Go);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn piston_travel(self, rule: Rule) -> Result<PistonTravel> {
        let clearance = height("clearance_mm", self.clearance_mm)?;
        let (wave, bend) = (height("wave_mm", self.wave_mm)?, height("bend_mm", self.bend_mm)?);
        let land = height("land_mm", self.land_mm)?;
        let travel_mm =
            Reading::new(clearance.value + wave.value + bend.value, hypot(hypot(clearance.u, wave.u), bend.u))?;
        let budget = combine(&[
            Input::new(-1.0, clearance.u)?,
            Input::new(-1.0, wave.u)?,
            Input::new(-1.0, bend.u)?,
            Input::new(1.0, land.u)?,
        ])?;
        let spare_mm = Reading::new(land.value - travel_mm.value, budget.u)?;
        Ok(PistonTravel { travel_mm, judgment: judge(spare_mm, Limits::at_least(0.0)?, rule)?, budget })
    }
}

/// Oil and time to close a pack.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ApplyFill {
    /// Area of the piston, mm².
    pub area_mm2: f64,
    /// Oil that the stroke takes, mL.
    pub volume_ml: Reading,
    /// Time that the flow needs for it, s.
    pub time_s: Reading,
}

/// Oil that a piston takes to close its pack, and how long a flow needs for it.
///
/// V = A x, t = V/Q, A = π (R_o² − R_i²)
///
/// * `piston` — R_i and R_o; `travel_mm` — x, 0 or more; `flow_l_min` — Q into this circuit, above 0: what the orifice lets through,
///   not what the pump delivers
/// * returns [`ApplyFill`]; first order, area taken as exact
/// * errors: for a piston that is none; [`Error::OutOfRange`], [`Error::NotPositive`]
///
/// Source: volume swept by the piston. Example (computed): a piston of radii 76 and 104 mm that travels 2.22 mm takes 35.2 mL,
/// which is 0.21 s at 10 L/min.
///
/// ```
/// use trainwright::{clutch::Annulus, judge::Reading, stack::apply_fill};
/// let fill = apply_fill(Annulus::new(76.0, 104.0)?, Reading::new(2.22, 0.049)?, Reading::new(10.0, 1.0)?)?;
/// assert!((fill.volume_ml.value - 35.2).abs() < 0.05 && (fill.time_s.value - 0.211).abs() < 0.0005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn apply_fill(piston: Annulus, travel_mm: Reading, flow_l_min: Reading) -> Result<ApplyFill> {
    let area_mm2 = piston.area_mm2()?;
    let travel = height("travel_mm", travel_mm)?;
    let flow = positive("flow_l_min", within("flow_l_min", flow_l_min.value, 0.0, 1e6)?)?;
    let flow_u = within("flow_l_min", flow_l_min.u, 0.0, 1e6)?;
    let volume_ml = Reading::new(area_mm2 * travel.value * 1e-3, area_mm2 * travel.u * 1e-3)?;
    let s_per_ml = 0.06 / flow;
    let time_s = volume_ml.value * s_per_ml;
    let u = hypot(volume_ml.u * s_per_ml, time_s * flow_u / flow);
    Ok(ApplyFill { area_mm2, volume_ml, time_s: Reading::new(time_s, u)? })
}
