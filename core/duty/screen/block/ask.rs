//! What may be asked of a pass, and what its rows answer.

/// What to compute besides time, gears and their seconds: masks to be put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ask;

impl Ask {
    /// Input and output torque, shares of the ratings.
    /// cbindgen:ignore
    pub const TORQUE: u32 = 1;
    /// Margins; needs torque.
    /// cbindgen:ignore
    pub const MARGIN: u32 = 2;
    /// Damage; needs torque.
    /// cbindgen:ignore
    pub const DAMAGE: u32 = 4;
    /// Losses and energies; needs torque.
    /// cbindgen:ignore
    pub const HEAT: u32 = 8;
    /// Hot fluid and its aging.
    /// cbindgen:ignore
    pub const LIFE: u32 = 16;
    /// Speed by satellite, distances.
    /// cbindgen:ignore
    pub const GPS: u32 = 32;
    /// The sums.
    /// cbindgen:ignore
    pub const SUMS: u32 = 64;
    /// What each row says, to be read afterward; of what else is asked.
    /// cbindgen:ignore
    pub const ROWS: u32 = 128;
    /// Which pack has the least margin, in each row.
    /// cbindgen:ignore
    pub const WEAKEST: u32 = 256;
    /// Everything that is summed.
    /// cbindgen:ignore
    pub const ALL: u32 = Self::TORQUE | Self::MARGIN | Self::DAMAGE | Self::HEAT | Self::LIFE | Self::GPS | Self::SUMS;

    /// The question with what it needs: the weakest pack needs margins; margins, damage and heat need the torque.
    pub(crate) const fn complete(asked: u32) -> u32 {
        let asked = if asked & Self::WEAKEST != 0 { asked | Self::MARGIN } else { asked };
        if asked & (Self::MARGIN | Self::DAMAGE | Self::HEAT) != 0 { asked | Self::TORQUE } else { asked }
    }
}

/// An answer of the rows of a block that [`super::ScreenBlock::lane`] hands out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreenLane {
    /// `duration_s`.
    Duration,
    /// `input_torque_nm`.
    InputTorque,
    /// `output_torque_nm`.
    OutputTorque,
    /// `input_share`.
    InputShare,
    /// `least_margin`.
    LeastMargin,
    /// `turns_at_rated`.
    Turns,
    /// `converter_loss_kw`.
    ConverterLoss,
    /// `gear_loss_kw`.
    GearLoss,
    /// `aged_s`.
    Aged,
    /// `gps_over_speed`.
    GpsOverSpeed,
    /// `gps_over_output`.
    GpsOverOutput,
}
