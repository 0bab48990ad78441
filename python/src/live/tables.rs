//! What many monitors found, as columns.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::live as core;

use super::found::{EventKind, Speed, half_s, seconds};
use super::monitor::Watched;
use super::unit::Planned;
use crate::table::filled::Table;
use crate::table::keys::Key;

/// Monitors by the name of their unit.
pub type Seen<'s> = [(&'s Key, &'s Watched)];

/// Rows of all units: name, unit, and what `found` gives of each.
fn rows<'s, T>(seen: &Seen<'s>, found: impl Fn(&'s Watched) -> Vec<T>) -> Vec<(&'s Key, &'s Planned, T)> {
    let of_one = |&(key, watched): &(&'s Key, &'s Watched)| {
        found(watched).into_iter().map(move |row| (key, &*watched.unit, row)).collect::<Vec<_>>()
    };
    seen.iter().flat_map(of_one).collect()
}

fn table_of<'py, T>(py: Python<'py>, rows: &[(&Key, &Planned, T)]) -> PyResult<Table<'py>> {
    let table = Table::new(py);
    table.keys("unit", rows.iter().map(|(key, ..)| *key))?;
    Ok(table)
}

/// Every event.
pub fn events<'py>(py: Python<'py>, seen: &Seen<'_>) -> PyResult<Bound<'py, PyDict>> {
    let rows = rows(seen, |watched| watched.events.iter().collect());
    let table = table_of(py, &rows)?;
    table.words("kind", rows.iter().map(|(_, _, event)| EventKind(event.kind).word()))?;
    table.words("gear", rows.iter().map(|(_, unit, event)| unit.gear(event.gear)))?;
    table.words("other_gear", rows.iter().map(|(_, unit, event)| unit.gear(event.other_gear)))?;
    table.words("speed", rows.iter().map(|(_, _, event)| Speed(event.speed).word()))?;
    table.words("suspects", rows.iter().map(|(_, unit, event)| unit.elements(event.suspects).join(" ")))?;
    table.numbers("at_s", rows.iter().map(|(_, _, event)| seconds(event.at_us)))?;
    table.numbers("found_s", rows.iter().map(|(_, _, event)| seconds(event.found_us)))?;
    table.values("value", rows.iter().map(|(_, _, event)| event.value))?;
    table.values("u", rows.iter().map(|(_, _, event)| event.u))?;
    Ok(table.0)
}

/// Every shift.
pub fn shifts<'py>(py: Python<'py>, seen: &Seen<'_>) -> PyResult<Bound<'py, PyDict>> {
    let rows = rows(seen, |watched| watched.shifts.iter().collect());
    let table = table_of(py, &rows)?;
    table.words("from_gear", rows.iter().map(|(_, unit, shift)| unit.gear(shift.from)))?;
    table.words("to_gear", rows.iter().map(|(_, unit, shift)| unit.gear(shift.to)))?;
    table.words("element", rows.iter().map(|(_, unit, shift)| unit.element(shift.element).unwrap_or_default()))?;
    table.values("cold", rows.iter().map(|(_, _, shift)| shift.cold))?;
    table.numbers("commanded_s", rows.iter().map(|(_, _, shift)| seconds(shift.commanded_us)))?;
    table.numbers("half_s", rows.iter().map(|(_, _, shift)| half_s(shift.half_us)))?;
    type Pick = fn(&core::LiveShift) -> f32;
    let numbers: [(&str, Pick); 14] = [
        ("fill_s", |shift| shift.fill_s),
        ("torque_s", |shift| shift.torque_s),
        ("inertia_s", |shift| shift.inertia_s),
        ("duration_s", |shift| shift.duration_s),
        ("flare_rpm", |shift| shift.flare_rpm),
        ("flare_u_rpm", |shift| shift.flare_u_rpm),
        ("dip_rpm", |shift| shift.dip_rpm),
        ("dip_u_rpm", |shift| shift.dip_u_rpm),
        ("slip_rad", |shift| shift.slip_rad),
        ("energy_j", |shift| shift.energy_j),
        ("plate_c", |shift| shift.plate_c),
        ("rise_k", |shift| shift.rise_k),
        ("shifts_to_overheat", |shift| shift.shifts_to_overheat),
        ("temp_c", |shift| shift.temp_c),
    ];
    for (name, pick) in numbers {
        table.values(name, rows.iter().map(|(_, _, shift)| pick(shift)))?;
    }
    Ok(table.0)
}

/// The measured ratio of every gear that was seen.
pub fn ratios<'py>(py: Python<'py>, seen: &Seen<'_>) -> PyResult<Bound<'py, PyDict>> {
    let rows = rows(seen, |watched| {
        let gears = (0_u8..).zip(&watched.unit.unit.gears);
        let measured = gears.map(|(place, gear)| (gear, watched.monitor.ratio(&watched.unit.plan, place)));
        measured.filter(|(_, found)| found.windows > 0 || found.slipping > 0).collect()
    });
    let table = table_of(py, &rows)?;
    table.words("gear", rows.iter().map(|(_, _, (gear, _))| &gear.name))?;
    table.values("nominal", rows.iter().map(|(_, _, (gear, _))| gear.ratio.abs()))?;
    table.values("ratio", rows.iter().map(|(_, _, (_, found))| found.ratio))?;
    table.values("u", rows.iter().map(|(_, _, (_, found))| found.u))?;
    table.counts("windows", rows.iter().map(|(_, _, (_, found))| found.windows.into()))?;
    table.counts("slipping", rows.iter().map(|(_, _, (_, found))| found.slipping.into()))?;
    table.values("slip_share", rows.iter().map(|(_, _, (_, found))| found.slip_share))?;
    Ok(table.0)
}

/// The suspects of every unit, most likely first.
pub fn suspects<'py>(py: Python<'py>, seen: &Seen<'_>) -> PyResult<Bound<'py, PyDict>> {
    let rows = rows(seen, |watched| {
        let found = watched.monitor.suspects(&watched.unit.plan);
        let next = if found.next_gear < 0 { String::new() } else { watched.unit.gear(found.next_gear).into() };
        found.ranked().iter().map(|suspect| (*suspect, next.clone())).collect()
    });
    let table = table_of(py, &rows)?;
    table.words("element", rows.iter().map(|(_, unit, (found, _))| unit.element(found.element).unwrap_or_default()))?;
    table.values("ln_odds", rows.iter().map(|(_, _, (found, _))| found.ln_odds))?;
    table.words("next_gear", rows.iter().map(|(_, _, (_, next))| next))?;
    Ok(table.0)
}

/// What was counted of every unit.
pub fn counts<'py>(py: Python<'py>, seen: &Seen<'_>) -> PyResult<Bound<'py, PyDict>> {
    let rows = rows(seen, |watched| vec![(watched.monitor.counts(), watched.no_time)]);
    let table = table_of(py, &rows)?;
    type Pick = fn(&core::LiveCounts) -> u32;
    let numbers: [(&str, Pick); 15] = [
        ("samples", |counts| counts.samples),
        ("used", |counts| counts.used),
        ("standing", |counts| counts.standing),
        ("stale", |counts| counts.stale),
        ("missing", |counts| counts.missing),
        ("not_available", |counts| counts.not_available),
        ("sensor_error", |counts| counts.sensor_error),
        ("reserved", |counts| counts.reserved),
        ("impossible", |counts| counts.impossible),
        ("reversed", |counts| counts.reversed),
        ("duplicate", |counts| counts.duplicate),
        ("gaps", |counts| counts.gaps),
        ("shifts_cold", |counts| counts.shifts_cold),
        ("shifts_warm", |counts| counts.shifts_warm),
        ("alarms", |counts| counts.alarms),
    ];
    for (name, pick) in numbers {
        table.counts(name, rows.iter().map(|(_, _, (counts, _))| pick(counts).into()))?;
    }
    table.counts("no_time", rows.iter().map(|(_, _, (_, no_time))| *no_time))?;
    Ok(table.0)
}
