//! What a row says, by name.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::duty::screen as core;

use super::unit::Unit;
use crate::error::refuse;

/// An answer of each row that may be asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Output {
    /// A mask of flags.
    Flags,
    /// Place of the gear.
    Gear,
    /// Place of the weakest element.
    Weakest,
    /// A number that the pass keeps.
    Lane(core::ScreenLane),
    /// Share of the rated output torque.
    DrivenShare,
    /// The greater of this and of the share of the rated input torque.
    ShareGreatest,
    /// Margin of an element.
    Margin(String),
    /// Torque on an element.
    Demand(String),
    /// Damage of a set.
    Damage(String),
}

/// Names of the answers of a row without those of elements and sets.
pub const OUTPUTS: [&str; 16] = [
    "flags",
    "gear",
    "duration_s",
    "input_torque_nm",
    "output_torque_nm",
    "input_share",
    "output_share",
    "greatest_share",
    "least_margin",
    "weakest",
    "turns_at_rated",
    "converter_loss_kw",
    "gear_loss_kw",
    "aged_s",
    "gps_over_speed",
    "gps_over_output",
];

impl Output {
    /// The answer of this name, where some unit has its element or set.
    pub fn named(name: &str, units: &[Unit]) -> PyResult<Self> {
        use core::ScreenLane as Lane;
        let (stem, of) = name.split_once('.').unwrap_or((name, ""));
        let has_element = || units.iter().any(|unit| unit.elements.iter().any(|element| element == of));
        let has_set = || units.iter().any(|unit| unit.sets.iter().any(|set| set == of));
        Ok(match stem {
            "margin" if has_element() => Self::Margin(of.into()),
            "demand_nm" if has_element() => Self::Demand(of.into()),
            "damage" if has_set() => Self::Damage(of.into()),
            _ => match name {
                "flags" => Self::Flags,
                "gear" => Self::Gear,
                "weakest" => Self::Weakest,
                "duration_s" => Self::Lane(Lane::Duration),
                "input_torque_nm" => Self::Lane(Lane::InputTorque),
                "output_torque_nm" => Self::Lane(Lane::OutputTorque),
                "input_share" => Self::Lane(Lane::InputShare),
                "output_share" => Self::DrivenShare,
                "greatest_share" => Self::ShareGreatest,
                "least_margin" => Self::Lane(Lane::LeastMargin),
                "turns_at_rated" => Self::Lane(Lane::Turns),
                "converter_loss_kw" => Self::Lane(Lane::ConverterLoss),
                "gear_loss_kw" => Self::Lane(Lane::GearLoss),
                "aged_s" => Self::Lane(Lane::Aged),
                "gps_over_speed" => Self::Lane(Lane::GpsOverSpeed),
                "gps_over_output" => Self::Lane(Lane::GpsOverOutput),
                _ => {
                    return Err(refuse(
                        "TEXT",
                        "outputs",
                        format!(
                            "outputs: there is no {name:?}; there are {}, margin.<element>, demand_nm.<element>, damage.<set>",
                            OUTPUTS.join(", ")
                        ),
                    ));
                }
            },
        })
    }

    /// What must be asked of the pass for it, of `Ask`.
    pub fn needs(&self) -> u32 {
        use core::Ask;
        use core::ScreenLane as Lane;
        Ask::ROWS
            | match self {
                Self::Gear | Self::Lane(Lane::Duration) => 0,
                Self::Flags => Ask::TORQUE | Ask::MARGIN | Ask::LIFE,
                Self::Weakest => Ask::MARGIN | Ask::WEAKEST,
                Self::Margin(_) | Self::Lane(Lane::LeastMargin) => Ask::MARGIN,
                Self::Lane(Lane::InputTorque | Lane::OutputTorque | Lane::InputShare) => Ask::TORQUE,
                Self::DrivenShare | Self::ShareGreatest | Self::Demand(_) => Ask::TORQUE,
                Self::Lane(Lane::Turns) | Self::Damage(_) => Ask::DAMAGE,
                Self::Lane(Lane::ConverterLoss | Lane::GearLoss) => Ask::HEAT,
                Self::Lane(Lane::Aged) => Ask::LIFE,
                Self::Lane(Lane::GpsOverSpeed | Lane::GpsOverOutput) => Ask::GPS,
            }
    }

    /// The number for a row that was answered; flags and places are not numbers.
    pub fn number(&self, unit: &Unit, row: &core::ScreenRow, answer: &core::ScreenAnswer) -> f64 {
        use core::ScreenLane as Lane;
        let elements = || unit.plan.elements(row, answer);
        match self {
            Self::Flags => answer.flags.into(),
            Self::Gear => answer.gear.into(),
            Self::Weakest => answer.weakest.into(),
            Self::DrivenShare => answer.output_share,
            Self::ShareGreatest => answer.greatest_share,
            Self::Margin(name) => unit.element(name).and_then(|at| elements().0.get(at).copied()).unwrap_or(f64::NAN),
            Self::Demand(name) => unit.element(name).and_then(|at| elements().1.get(at).copied()).unwrap_or(f64::NAN),
            Self::Damage(name) => {
                let at = unit.sets.iter().position(|set| set == name);
                at.and_then(|at| unit.plan.damages(answer).get(at).copied()).unwrap_or(0.0)
            }
            Self::Lane(lane) => match lane {
                Lane::Duration => answer.duration_s,
                Lane::InputTorque => answer.input_torque_nm,
                Lane::OutputTorque => answer.output_torque_nm,
                Lane::InputShare => answer.input_share,
                Lane::LeastMargin => answer.least_margin,
                Lane::Turns => answer.turns_at_rated,
                Lane::ConverterLoss => answer.converter_loss_kw,
                Lane::GearLoss => answer.gear_loss_kw,
                Lane::Aged => answer.aged_s,
                Lane::GpsOverSpeed => answer.gps_over_speed,
                Lane::GpsOverOutput => answer.gps_over_output,
            },
        }
    }
}

/// A row of Python, and the mask of the columns that it has.
fn row_of(row: &Bound<'_, PyDict>) -> PyResult<(core::ScreenRow, u32)> {
    let mut values = [f64::NAN; core::SCREEN_COLUMNS];
    let mut given = 0;
    for (place, (name, value)) in core::SCREEN_COLUMN_NAMES.iter().zip(&mut values).enumerate() {
        if let Some(number) = row.get_item(name)? {
            *value = number.extract()?;
            given |= 1 << place;
        }
    }
    Ok((core::ScreenRow::of_values(values), given))
}

/// Everything that a row says, by name.
pub fn row_answer<'py>(
    py: Python<'py>,
    unit: &Unit,
    row: &Bound<'py, PyDict>,
    previous: Option<&Bound<'py, PyDict>>,
) -> PyResult<Bound<'py, PyDict>> {
    let (row, given) = row_of(row)?;
    let previous = previous.map(row_of).transpose()?.map(|(row, _)| row);
    let answer = unit.plan.row(given, &row, previous.as_ref());
    let all = PyDict::new(py);
    all.set_item("flags", answer.flags)?;
    all.set_item("gear", answer.gear)?;
    all.set_item("weakest", answer.weakest)?;
    let of_elements = unit.elements.iter().flat_map(|name| [format!("margin.{name}"), format!("demand_nm.{name}")]);
    let of_sets = unit.sets.iter().map(|name| format!("damage.{name}"));
    let names = OUTPUTS.iter().map(|name| (*name).to_owned()).chain(of_elements).chain(of_sets);
    for name in names.filter(|name| !["flags", "gear", "weakest"].contains(&name.as_str())) {
        let output = Output::named(&name, std::slice::from_ref(unit))?;
        all.set_item(name, output.number(unit, &row, &answer))?;
    }
    Ok(all)
}
