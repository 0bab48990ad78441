//! The sums of a fleet as columns.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::duty::screen::{
    Ask, BAD_VALUE_NAMES, SCREEN_COLUMN_NAMES, SCREEN_FLAG_NAMES, ScreenExtreme, ScreenRatio, ScreenTotals,
};

use super::screen::Screen;
use super::unit::Unit;
use crate::error::refuse;
use crate::table::filled::Table;
use crate::table::keys::Key;

/// A truck, its unit, its totals, and the times of its first and last row.
type Finished<'s> = (&'s Key, &'s Unit, ScreenTotals, Option<(f64, f64)>);

/// Totals of every truck, in their order.
fn finished(screen: &Screen) -> PyResult<Vec<Finished<'_>>> {
    if screen.sums & Ask::SUMS == 0 {
        let message = "aggregates: none was asked for; make the Screen with aggregates=None, or name some";
        return Err(refuse("MISSING", "aggregates", message.into()));
    }
    let trucks = screen.trucks.iter().filter_map(|(key, truck)| {
        let unit = screen.question.units.all.get(truck.unit)?;
        let tally = truck.finished(&unit.plan, screen.question.asked, screen.by_time);
        let runs = truck.ordered(screen.by_time);
        let times = runs.first().zip(runs.last()).map(|(first, last)| (first.first.time_s, last.last.time_s));
        Some((key, unit, tally.totals(&unit.plan), times))
    });
    Ok(trucks.collect())
}

/// A name of every unit once, in their order.
fn every<'u>(units: &'u [Unit], names: impl Fn(&'u Unit) -> &'u [String]) -> Vec<&'u str> {
    let mut all: Vec<&str> = Vec::new();
    for name in units.iter().flat_map(names) {
        if !all.contains(&name.as_str()) {
            all.push(name);
        }
    }
    all
}

fn gear_name(unit: &Unit, gear: i8) -> &str {
    match usize::try_from(gear) {
        Ok(place) => unit.gears.get(place).map_or("", String::as_str),
        Err(_) => match gear {
            -1 => "none",
            -2 => "standing",
            _ => "unknown",
        },
    }
}

impl Table<'_> {
    fn ratio<'t>(&self, name: &str, ratios: impl Iterator<Item = &'t ScreenRatio> + Clone) -> PyResult<()> {
        self.counts(&format!("{name}.rows"), ratios.clone().map(|ratio| ratio.rows))?;
        self.numbers(&format!("{name}.mean"), ratios.clone().map(|ratio| ratio.mean))?;
        self.numbers(&format!("{name}.deviation"), ratios.map(|ratio| ratio.deviation))
    }

    /// An extreme: its value under `name`, row, time and gear under `stem`.
    fn extreme<'t>(
        &self,
        (name, stem): (&str, &str),
        extremes: impl Iterator<Item = (&'t Unit, &'t ScreenExtreme)> + Clone,
    ) -> PyResult<()> {
        self.numbers(name, extremes.clone().map(|(_, extreme)| extreme.value))?;
        let row = |extreme: &ScreenExtreme| if extreme.value.is_nan() { u64::MAX } else { extreme.row };
        self.counts(&format!("{stem}_row"), extremes.clone().map(|(_, extreme)| row(extreme)))?;
        self.numbers(&format!("{stem}_time_s"), extremes.clone().map(|(_, extreme)| extreme.time_s))?;
        let gear = |(unit, extreme): (&'t Unit, &ScreenExtreme)| {
            if extreme.value.is_nan() { "" } else { gear_name(unit, extreme.gear) }
        };
        self.words(&format!("{stem}_gear"), extremes.map(gear))
    }
}

/// The totals of every truck as columns.
pub fn totals<'py>(py: Python<'py>, screen: &Screen) -> PyResult<Bound<'py, PyDict>> {
    let trucks = finished(screen)?;
    let table = Table::new(py);
    let totals = || trucks.iter().map(|(_, _, totals, _)| totals);
    let asks = |bit: u32| screen.sums & bit != 0;
    table.keys("truck", trucks.iter().map(|(key, ..)| *key))?;
    table.counts("rows", totals().map(|totals| totals.rows))?;
    table.numbers("first_time_s", trucks.iter().map(|(.., times)| times.map_or(f64::NAN, |(first, _)| first)))?;
    table.numbers("last_time_s", trucks.iter().map(|(.., times)| times.map_or(f64::NAN, |(_, last)| last)))?;
    table.numbers("known_s", totals().map(|totals| totals.known_s))?;
    table.numbers("gap_s", totals().map(|totals| totals.gap_s))?;
    let units = &screen.question.units.all;
    for gear in every(units, |unit| &unit.gears) {
        let of_gear = |values: &[f64], unit: &Unit| {
            let place = unit.gears.iter().position(|name| name == gear);
            place.and_then(|place| values.get(place).copied()).unwrap_or(0.0)
        };
        let seconds = trucks.iter().map(|(_, unit, totals, _)| of_gear(&totals.gear_s, unit));
        table.numbers(&format!("gear_s.{gear}"), seconds)?;
        if asks(Ask::DAMAGE) {
            let turns = trucks.iter().map(|(_, unit, totals, _)| of_gear(&totals.turns_at_rated, unit));
            table.numbers(&format!("turns_at_rated.{gear}"), turns)?;
        }
    }
    for (place, flag) in SCREEN_FLAG_NAMES.iter().enumerate() {
        table.counts(&format!("rows.{flag}"), totals().map(|totals| at(&totals.flag_rows, place)))?;
        table.numbers(&format!("seconds.{flag}"), totals().map(|totals| at(&totals.flag_s, place)))?;
    }
    if asks(Ask::DAMAGE) {
        for set in every(units, |unit| &unit.sets) {
            let of_set = |unit: &Unit, totals: &ScreenTotals| {
                let place = unit.sets.iter().position(|name| name == set);
                place.map_or(0.0, |place| at(&totals.damage, place))
            };
            let damages = trucks.iter().map(|(_, unit, totals, _)| of_set(unit, totals));
            table.numbers(&format!("damage.{set}"), damages)?;
        }
    }
    if asks(Ask::HEAT) {
        table.numbers("input_energy_kj", totals().map(|totals| totals.input_energy_kj))?;
        table.numbers("converter_loss_kj", totals().map(|totals| totals.converter_loss_kj))?;
        table.numbers("gear_loss_kj", totals().map(|totals| totals.gear_loss_kj))?;
    }
    let of = |pick: fn(&ScreenTotals) -> &ScreenExtreme| {
        trucks.iter().map(move |(_, unit, totals, _)| (*unit, pick(totals)))
    };
    if asks(Ask::LIFE) {
        table.numbers("aged_s", totals().map(|totals| totals.aged_s))?;
        table.numbers("life_used", totals().map(|totals| totals.life_used))?;
        table.extreme(("hottest_c", "hottest"), of(|totals| &totals.hottest))?;
    }
    if asks(Ask::GPS) {
        table.numbers("speed_km", totals().map(|totals| totals.speed_km))?;
        table.numbers("gps_km", totals().map(|totals| totals.gps_km))?;
        table.ratio("gps_over_speed", totals().map(|totals| &totals.gps_over_speed))?;
        table.ratio("gps_over_output", totals().map(|totals| &totals.gps_over_output))?;
    }
    if asks(Ask::TORQUE | Ask::MARGIN | Ask::DAMAGE | Ask::HEAT) {
        table.extreme(("greatest_share", "greatest_share"), of(|totals| &totals.greatest_share))?;
    }
    if asks(Ask::MARGIN) {
        table.extreme(("least_margin", "least_margin"), of(|totals| &totals.least_margin))?;
        let elements = trucks.iter().map(|(_, unit, totals, _)| {
            let place = usize::try_from(totals.least_margin.element).ok();
            place.and_then(|place| unit.elements.get(place)).map_or("", String::as_str)
        });
        table.words("least_margin_element", elements)?;
    }
    Ok(table.0)
}

fn at<T: Copy + Default>(values: &[T], place: usize) -> T {
    values.get(place).copied().unwrap_or_default()
}

/// What could not be used: truck, column, kind, rows; only what occurs.
pub fn bad_values<'py>(py: Python<'py>, screen: &Screen) -> PyResult<Bound<'py, PyDict>> {
    let trucks = finished(screen)?;
    let (mut keys, mut columns, mut kinds, mut rows) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (key, _, totals, _) in &trucks {
        for (column, counts) in SCREEN_COLUMN_NAMES.iter().zip(&totals.bad) {
            for (kind, &count) in BAD_VALUE_NAMES.iter().zip(counts).filter(|&(_, &count)| count > 0) {
                keys.push(*key);
                columns.push(*column);
                kinds.push(*kind);
                rows.push(count);
            }
        }
    }
    let table = Table::new(py);
    table.keys("truck", keys.into_iter())?;
    table.words("column", columns.into_iter())?;
    table.words("kind", kinds.into_iter())?;
    table.counts("rows", rows.into_iter())?;
    Ok(table.0)
}
