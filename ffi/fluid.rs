//! `tw_fluid_*`: density, viscosity, mixing, level and fill.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::fluid::{
    self, Adjustment, Fill, Fluid, FrictionPortion, Growth, LevelAt, LevelCheck, Portion, PourVolumes, Sump,
    ViscosityIndex, ViscosityLine, ViscosityPair, ViscosityPoints, ViscosityPortion, VolumeCorrection,
};
use trainwright::judge::Rule;

/// Volume correction factor and density of a lubricating oil from its density at 15 degC (API MPMS 11.1).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_volume_correction(
    density_15c_kg_m3: f64,
    temp_c: f64,
    out_correction: *mut VolumeCorrection,
) -> Status {
    unsafe { put(out_correction, || core(fluid::volume_correction(density_15c_kg_m3, temp_c))) }
}

/// The same from the density at 60 degF; the temperature is still in degC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_volume_correction_60f(
    density_60f_kg_m3: f64,
    temp_c: f64,
    out_correction: *mut VolumeCorrection,
) -> Status {
    unsafe { put(out_correction, || core(fluid::volume_correction_60f(density_60f_kg_m3, temp_c))) }
}

/// Volume correction factor for a coefficient at base, whatever group of oils it comes from.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_correction_factor(alpha_per_k: f64, rise_k: f64, out_factor: *mut f64) -> Status {
    unsafe { put(out_factor, || core(fluid::correction_factor(alpha_per_k, rise_k))) }
}

/// Density at 15 degC of a lubricating oil whose density was measured at another temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_density_15c_from_observed(
    density_kg_m3: f64,
    temp_c: f64,
    out_density_15c_kg_m3: *mut f64,
) -> Status {
    unsafe { put(out_density_15c_kg_m3, || core(fluid::density_15c_from_observed(density_kg_m3, temp_c))) }
}

/// Mean coefficient from 15 degC that says the same as one stated from another reference temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_expansion_from_15c(
    expansion_per_k: f64,
    reference_c: f64,
    out_expansion_per_k: *mut f64,
) -> Status {
    unsafe { put(out_expansion_per_k, || core(fluid::expansion_from_15c(expansion_per_k, reference_c))) }
}

/// Change of volume of a fluid, less the growth of its vessel.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_growth_ml(growth: *const Growth, out_ml: *mut f64) -> Status {
    unsafe { put(out_ml, || core(fluid::growth_ml(read(growth)?))) }
}

/// Whether every property of the fluid lies in the range of its source.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_check_properties(fluid: *const Fluid) -> Status {
    unsafe { put(&mut (), || core(read(fluid)?.check_properties())) }
}

/// Volume at a temperature over the volume at 15 degC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_volume_factor(fluid: *const Fluid, temp_c: f64, out_factor: *mut f64) -> Status {
    unsafe { put(out_factor, || core(read(fluid)?.volume_factor(temp_c))) }
}

/// Temperature at which the volume is this many times the volume at 15 degC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_temp_for_volume_factor(
    fluid: *const Fluid,
    factor: f64,
    out_temp_c: *mut f64,
) -> Status {
    unsafe { put(out_temp_c, || core(read(fluid)?.temp_for_volume_factor(factor))) }
}

/// Density at a temperature, kg/m3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_density(fluid: *const Fluid, temp_c: f64, out_density_kg_m3: *mut f64) -> Status {
    unsafe { put(out_density_kg_m3, || core(read(fluid)?.density(temp_c))) }
}

/// Line through the viscosities of the fluid at 40 and 100 degC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_viscosity_line(fluid: *const Fluid, out_line: *mut ViscosityLine) -> Status {
    unsafe { put(out_line, || core(read(fluid)?.viscosity_line())) }
}

/// Viscosity line through two points, 2 mm2/s and more (ASTM D341).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_through(points: *const ViscosityPoints, out_line: *mut ViscosityLine) -> Status {
    unsafe { put(out_line, || core(ViscosityLine::through(read(points)?))) }
}

/// Viscosity line of the older form, with 0.8 in place of 0.7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_through_older(
    points: *const ViscosityPoints,
    out_line: *mut ViscosityLine,
) -> Status {
    unsafe { put(out_line, || core(ViscosityLine::through_older(read(points)?))) }
}

/// Viscosity line of the full form, 0.21 mm2/s and more; read it with tw_fluid_thin_viscosity_at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_through_thin(points: *const ViscosityPoints, out_line: *mut ViscosityLine) -> Status {
    unsafe { put(out_line, || core(ViscosityLine::through_thin(read(points)?))) }
}

/// Kinematic viscosity at a temperature, 2 mm2/s and more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_viscosity_at(
    line: *const ViscosityLine,
    temp_c: f64,
    out_viscosity_mm2_s: *mut f64,
) -> Status {
    unsafe { put(out_viscosity_mm2_s, || core(read(line)?.viscosity_at(temp_c))) }
}

/// Kinematic viscosity at a temperature, 0.21 mm2/s and more, on a line of the full form.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_thin_viscosity_at(
    line: *const ViscosityLine,
    temp_c: f64,
    out_viscosity_mm2_s: *mut f64,
) -> Status {
    unsafe { put(out_viscosity_mm2_s, || core(read(line)?.thin_viscosity_at(temp_c))) }
}

/// Temperature at which the fluid has this viscosity.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_temp_for_viscosity(
    line: *const ViscosityLine,
    viscosity_mm2_s: f64,
    out_temp_c: *mut f64,
) -> Status {
    unsafe { put(out_temp_c, || core(read(line)?.temp_for_viscosity(viscosity_mm2_s))) }
}

/// Dynamic viscosity, mPa s, from kinematic viscosity and density at one temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_dynamic_viscosity(
    kinematic_mm2_s: f64,
    density_kg_m3: f64,
    out_dynamic_mpa_s: *mut f64,
) -> Status {
    unsafe { put(out_dynamic_mpa_s, || core(fluid::dynamic_viscosity(kinematic_mm2_s, density_kg_m3))) }
}

/// Viscosity index (ASTM D2270), computed and as reported.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_viscosity_index(
    pair: *const ViscosityPair,
    out_index: *mut ViscosityIndex,
) -> Status {
    unsafe { put(out_index, || core(fluid::viscosity_index(read(pair)?))) }
}

/// Viscosity at 100 degC of the oil with this viscosity at 40 degC and this index.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_viscosity_100c_for_index(
    viscosity_40c_mm2_s: f64,
    index: f64,
    out_viscosity_100c_mm2_s: *mut f64,
) -> Status {
    unsafe { put(out_viscosity_100c_mm2_s, || core(fluid::viscosity_100c_for_index(viscosity_40c_mm2_s, index))) }
}

/// The mixture of some portions, as a fluid.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_blend(portions: *const Portion, count: usize, out_mixture: *mut Fluid) -> Status {
    unsafe { put(out_mixture, || core(fluid::blend(slice(portions, count)?))) }
}

/// Kinematic viscosity of a mixture, all at one temperature (ASTM D7152).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_blend_viscosity(
    portions: *const ViscosityPortion,
    count: usize,
    out_viscosity_mm2_s: *mut f64,
) -> Status {
    unsafe { put(out_viscosity_mm2_s, || core(fluid::blend_viscosity(slice(portions, count)?))) }
}

/// Friction of a single portion; refused (TW_STATUS_NO_ANSWER) for more: friction does not mix.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_blend_friction(
    portions: *const FrictionPortion,
    count: usize,
    out_friction: *mut f64,
) -> Status {
    unsafe { put(out_friction, || core(fluid::blend_friction(slice(portions, count)?))) }
}

/// Share of the first fluid left after equal partial changes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_old_share(changed_fraction: f64, changes: u32, out_share: *mut f64) -> Status {
    unsafe { put(out_share, || core(fluid::old_share(changed_fraction, changes))) }
}

/// A sump from as many heights (mm above the overflow edge, ascending) as free areas (cm2).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_from_table(
    height_mm: *const f64,
    free_area_cm2: *const f64,
    rows: usize,
    out_sump: *mut Sump,
) -> Status {
    unsafe { put(out_sump, || core(Sump::from_table(slice(height_mm, rows)?, slice(free_area_cm2, rows)?))) }
}

/// Whether the table of the sump can be used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_check_table(sump: *const Sump) -> Status {
    unsafe { put(&mut (), || core(read(sump)?.check_table())) }
}

/// Free area at a height, cm2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_free_area_at(sump: *const Sump, height_mm: f64, out_area_cm2: *mut f64) -> Status {
    unsafe { put(out_area_cm2, || core(read(sump)?.free_area_at(height_mm))) }
}

/// Volume between the overflow edge and a height, mL, negative below the edge.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_volume_to(sump: *const Sump, height_mm: f64, out_volume_ml: *mut f64) -> Status {
    unsafe { put(out_volume_ml, || core(read(sump)?.volume_to(height_mm))) }
}

/// Level at which this volume stands between it and the overflow edge, mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_level_for(sump: *const Sump, volume_ml: f64, out_level_mm: *mut f64) -> Status {
    unsafe { put(out_level_mm, || core(read(sump)?.level_for(volume_ml))) }
}

/// Whether the fill can be used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_check_fill(fill: *const Fill) -> Status {
    unsafe { put(&mut (), || core(read(fill)?.check_fill())) }
}

/// Level at a temperature; `excess_ml` at the reference temperature is 0 for a right fill.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_level_at(
    fill: *const Fill,
    fluid: *const Fluid,
    excess_ml: f64,
    temp_c: f64,
    out_level: *mut LevelAt,
) -> Status {
    unsafe { put(out_level, || core(read(fill)?.level_at(&read(fluid)?, excess_ml, temp_c))) }
}

/// Volume to add or drain now, with its uncertainty, and the fill judged against the check window. Hot fluid burns.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_adjust_fill(
    fill: *const Fill,
    fluid: *const Fluid,
    check: *const LevelCheck,
    rule: *const Rule,
    out_adjustment: *mut Adjustment,
) -> Status {
    unsafe { put(out_adjustment, || core(read(fill)?.adjust_fill(&read(fluid)?, read(check)?, read(rule)?))) }
}

/// Level with the engine stopped, when the drain-back has come into the sump.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_engine_off_level_mm(
    fill: *const Fill,
    running_level_mm: f64,
    out_level_mm: *mut f64,
) -> Status {
    unsafe { put(out_level_mm, || core(read(fill)?.engine_off_level_mm(running_level_mm))) }
}

/// Temperature above which a rotating part dips.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_gear_dips_at_c(
    fill: *const Fill,
    fluid: *const Fluid,
    excess_ml: f64,
    out_temp_c: *mut f64,
) -> Status {
    unsafe { put(out_temp_c, || core(read(fill)?.gear_dips_at_c(&read(fluid)?, excess_ml))) }
}

/// Volume that may be lost, from this level, until the pickup draws air.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_loss_to_pickup_ml(fill: *const Fill, level_mm: f64, out_loss_ml: *mut f64) -> Status {
    unsafe { put(out_loss_ml, || core(read(fill)?.loss_to_pickup_ml(level_mm))) }
}

/// Volumes to pour for a dry, a service and a cooler fill, at the temperature of the fluid in the can.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_pour_volumes(
    fill: *const Fill,
    fluid: *const Fluid,
    can_c: f64,
    out_volumes: *mut PourVolumes,
) -> Status {
    unsafe { put(out_volumes, || core(read(fill)?.pour_volumes(&read(fluid)?, can_c))) }
}

/// Level that a volume would reach in a sump with vertical sides.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_constant_area_level_mm(
    above_edge_ml: f64,
    area_cm2: f64,
    out_level_mm: *mut f64,
) -> Status {
    unsafe { put(out_level_mm, || core(fluid::constant_area_level_mm(above_edge_ml, area_cm2))) }
}

/// How much too high the level looks, away from the center of the sump, when the vehicle is not level.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_fluid_tilt_shift_mm(offset_mm: f64, tilt_deg: f64, out_shift_mm: *mut f64) -> Status {
    unsafe { put(out_shift_mm, || core(fluid::tilt_shift_mm(offset_mm, tilt_deg))) }
}
