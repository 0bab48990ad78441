//! The pawl of a park lock: whether it is pushed out under load, what its tip bears, up to which speed it drops in.

use core::f64::consts::PI;

use super::contact::{LineContact, LinePressure};
use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::Limits;
use crate::real::{atan, cos, sqrt, tan};
use crate::road::Driveline;

pub(super) const EJECTION: Card = Card {
    id: "hold.ejection",
    purpose: "Force with which a loaded tooth pushes the pawl out: it must, or Park cannot be left on a grade",
    equation: "F_e = F_t·tan(α − arctan μ)",
    symbols: &[
        symbol("F_e", "least_n at the greatest friction, most_n at the least", "N"),
        symbol("F_t", "tooth_n", "N"),
        symbol("α", "flank_deg", "°"),
        symbol("μ", "friction", "1"),
    ],
    range: "above 0 the pawl leaves by itself once the cone or roller behind it is drawn; that cone or roller must hold F_e by friction (hold.locks)",
    source: &card::DEFINITION,
    locator: "force on an inclined flank with friction",
};

pub(super) const TIP_PRESSURE: Card = Card {
    id: "hold.tip_pressure",
    purpose: "Contact pressure of the pawl on the flank of a loaded tooth",
    equation: "N = F_t/cos α, then hold.pressed",
    symbols: &[
        symbol("N", "force across the contact", "N"),
        symbol("F_t", "tooth_n", "N"),
        symbol("α", "flank_deg", "°"),
    ],
    range: "friction neglected; as hold.pressed",
    source: &card::DEFINITION,
    locator: "force on an inclined flank, with hold.pressed",
};

pub(super) const LATCH: Card = Card {
    id: "hold.latch",
    purpose: "Speed above which the pawl skips over the teeth instead of dropping in",
    equation: "v = ω·r/(i_A·i_V), ω = window/t, t = √(2·J·φ/M)",
    symbols: &[
        symbol("t", "drop_time_s", "s"),
        symbol("J, φ, M", "inertia_kg_m2, drop_deg, spring_nm", "kg·m², °, N·m"),
        symbol("ω, v", "output_rpm, road_km_h", "1/min, km/h"),
        symbol("window", "window_deg", "°"),
        symbol("r, i_A, i_V", "circumference over 2 π, driveline.axle_ratio, driveline.transfer_ratio", "mm, 1, 1"),
    ],
    range: "constant spring torque, no drag, the whole drop needed: below this speed it engages with a blow, near it it may do either",
    source: &card::DEFINITION,
    locator: "constant acceleration",
};

/// The pawl.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pawl {
    /// Angle of the loaded flank to the radius of the gear, degrees: it pushes the pawl out.
    pub flank_deg: f64,
    /// Least and greatest friction between pawl and tooth.
    pub friction: Limits,
    /// Moment of inertia about its pivot, kg·m².
    pub inertia_kg_m2: f64,
    /// Torque that throws it in, N·m.
    pub spring_nm: f64,
    /// Angle through which it drops, degrees.
    pub drop_deg: f64,
}

/// Whether a loaded tooth pushes the pawl out.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ejection {
    /// Force that pushes the pawl out at the greatest friction, N; negative where it then sticks.
    pub least_n: f64,
    /// The same at the least friction, N: what the cone or roller behind the pawl must hold.
    pub most_n: f64,
    /// The same two over the tooth force.
    pub least_share: f64,
    /// See `least_share`.
    pub most_share: f64,
    /// Greatest friction at which the pawl still leaves by itself.
    pub friction_to_stick: f64,
    /// The pawl leaves under load over the whole range of friction.
    pub releases: bool,
}

/// At which speed the pawl still drops in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Latch {
    /// Time of the drop, s.
    pub drop_time_s: f64,
    /// Output-shaft speed above which it skips over the teeth, 1/min.
    pub output_rpm: f64,
    /// Road speed of it, km/h.
    pub road_km_h: f64,
}

impl Pawl {
    /// Force with which a loaded tooth pushes the pawl out.
    ///
    /// F_e = F_t·tan(α − arctan μ)
    ///
    /// * `tooth_n` — F_t, 0 or more, of [`super::ParkStress::tooth_n`]
    /// * returns [`Ejection`]
    /// * errors: [`crate::Error::OutOfRange`] for a flank outside 0 to 45° or a friction outside 0 to 1, [`crate::Error::Reversed`]
    ///
    /// Source: force on an inclined flank with friction (derived). Example: 13° with a friction of 0.08 to 0.15: 0.148 to
    /// 0.078 of the tooth force.
    ///
    /// ```
    /// use trainwright::{hold::Pawl, judge::Limits};
    /// let pawl = Pawl {
    ///     flank_deg: 13.0, friction: Limits::between(0.08, 0.15)?, inertia_kg_m2: 1.9e-4, spring_nm: 1.4, drop_deg: 9.0,
    /// };
    /// let pushed = pawl.ejection(10_000.0)?;
    /// assert!(pushed.releases && (pushed.least_share - 0.0782).abs() < 1e-4 && (pushed.most_share - 0.1481).abs() < 1e-4);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn ejection(self, tooth_n: f64) -> Result<Ejection> {
        let tooth_n = within("tooth_n", tooth_n, 0.0, 1e9)?;
        let flank = self.flank()?;
        let Limits { lower, upper } = Limits::between(
            within("friction.lower", self.friction.lower, 0.0, 1.0)?,
            within("friction.upper", self.friction.upper, 0.0, 1.0)?,
        )?;
        let share = |friction: f64| tan(flank - atan(friction));
        let (least_share, most_share) = (share(upper), share(lower));
        Ok(Ejection {
            least_n: tooth_n * least_share,
            most_n: tooth_n * most_share,
            least_share,
            most_share,
            friction_to_stick: tan(flank),
            releases: least_share > 0.0,
        })
    }

    /// Contact pressure of the pawl on the flank of a loaded tooth.
    ///
    /// N = F_t/cos α, then [`LineContact::pressed`]
    ///
    /// * `contact` — pawl and flank; `tooth_n` — F_t, 0 or more, of [`super::ParkStress::tooth_n`]
    /// * returns [`LinePressure`]
    /// * errors: as [`Pawl::ejection`] and [`LineContact::pressed`]
    ///
    /// Source: force on an inclined flank (derived), contact by Shigley (from memory).
    pub fn tip_pressure(self, contact: LineContact, tooth_n: f64) -> Result<LinePressure> {
        contact.pressed(within("tooth_n", tooth_n, 0.0, 1e9)? / cos(self.flank()?))
    }

    fn flank(self) -> Result<f64> {
        Ok(within("flank_deg", self.flank_deg, 0.0, 45.0)? * PI / 180.0)
    }

    /// Speed above which the pawl skips over the teeth instead of dropping in.
    ///
    /// v = ω·r/(i_A·i_V), ω = window/t, t = √(2·J·φ/M)
    ///
    /// * `driveline` — r, i_A, i_V; `window_deg` — angle in which it can drop, above 0, [`super::ParkGear::window_deg`]
    /// * returns [`Latch`]
    /// * errors: [`crate::Error::NotPositive`], [`crate::Error::OutOfRange`]
    ///
    /// Park belongs to a vehicle that stands: above a crawl the pawl hammers, and may break.
    ///
    /// Source: constant acceleration (derived). Example: 1.9e-4 kg·m² thrown 9° by 1.4 N·m takes 6.53 ms.
    ///
    /// ```
    /// use trainwright::{hold::Pawl, judge::{Limits, Reading}, road::Driveline};
    /// let pawl = Pawl {
    ///     flank_deg: 13.0, friction: Limits::between(0.08, 0.15)?, inertia_kg_m2: 1.9e-4, spring_nm: 1.4, drop_deg: 9.0,
    /// };
    /// let line = Driveline::new(3.92, 1.0, Reading::exact(2561.182_154)?)?;
    /// assert!((pawl.latch(line, 1.3)?.drop_time_s - 0.006_530).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn latch(self, driveline: Driveline, window_deg: f64) -> Result<Latch> {
        let drop = positive("drop_deg", within("drop_deg", self.drop_deg, 0.0, 90.0)?)? * PI / 180.0;
        let window = positive("window_deg", within("window_deg", window_deg, 0.0, 180.0)?)? * PI / 180.0;
        let inertia = positive("inertia_kg_m2", self.inertia_kg_m2)?;
        let drop_time_s = sqrt(2.0 * inertia * drop / positive("spring_nm", self.spring_nm)?);
        let output_rpm = window / drop_time_s * 30.0 / PI;
        Ok(Latch { drop_time_s, output_rpm, road_km_h: driveline.road_km_h(output_rpm)? })
    }
}
