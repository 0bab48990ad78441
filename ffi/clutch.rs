//! `tw_clutch_*`: forces, capacity, holding, bands, shifts and their heat. A computed capacity is not a rating.

use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use crate::train::solved;
use trainwright::clutch::{
    self, Annulus, Applied, Band, BandTorque, Capacity, CapacityLine, Duty, ElementPack, GearReview, Head, HeldInput,
    Hold, LiningByRadius, Pack, PlateHeat, PressureNeeded, ReturnSprings, Servo, Slip, SlipEnd, Steel, SteelPlates,
    SurfaceRise, Working,
};
use trainwright::judge::{Reading, Rule};
use trainwright::train::State;

/// Area of one side of a ring, mm^2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_area_mm2(ring: *const Annulus, out_area_mm2: *mut f64) -> Status {
    unsafe { put(out_area_mm2, || core(read(ring)?.area_mm2())) }
}

/// Friction radius of a new lining, mm: uniform pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_mean_radius_new_mm(lining: *const Annulus, out_radius_mm: *mut f64) -> Status {
    unsafe { put(out_radius_mm, || core(read(lining)?.mean_radius_new_mm())) }
}

/// Friction radius of a worn-in lining, mm: uniform wear.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_mean_radius_worn_mm(lining: *const Annulus, out_radius_mm: *mut f64) -> Status {
    unsafe { put(out_radius_mm, || core(read(lining)?.mean_radius_worn_mm())) }
}

/// Inner radius, mm, that gives this outer radius most torque at a fixed peak lining pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_best_inner_radius_mm(lining: *const Annulus, out_radius_mm: *mut f64) -> Status {
    unsafe { put(out_radius_mm, || core(read(lining)?.best_inner_radius_mm())) }
}

/// Clamp force, N, at which a worn-in lining reaches a peak pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_clamp_at_peak_n(
    lining: *const Annulus,
    peak_mpa: f64,
    out_clamp_n: *mut f64,
) -> Status {
    unsafe { put(out_clamp_n, || core(read(lining)?.clamp_at_peak_n(peak_mpa))) }
}

/// Peak pressure, MPa, of a worn-in lining under a clamp force.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_peak_at_clamp_mpa(
    lining: *const Annulus,
    clamp_n: f64,
    out_peak_mpa: *mut f64,
) -> Status {
    unsafe { put(out_peak_mpa, || core(read(lining)?.peak_at_clamp_mpa(clamp_n))) }
}

/// Force of a set of return springs, N, at a fitted length.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_spring_force_n(
    springs: *const ReturnSprings,
    fitted_length_mm: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(springs)?.spring_force_n(fitted_length_mm))) }
}

/// Axial force, N, of the oil that turns with a drum.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_head_force_n(
    head: *const Head,
    oil_density_kg_m3: f64,
    drum_speed_rpm: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(head)?.head_force_n(oil_density_kg_m3, drum_speed_rpm))) }
}

/// Pressure, kPa, at a radius of the oil that turns with a drum.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_head_pressure_kpa(
    head: *const Head,
    radius_mm: f64,
    oil_density_kg_m3: f64,
    drum_speed_rpm: f64,
    out_pressure_kpa: *mut f64,
) -> Status {
    unsafe {
        put(out_pressure_kpa, || core(read(head)?.head_pressure_kpa(radius_mm, oil_density_kg_m3, drum_speed_rpm)))
    }
}

/// How far, mm, the oil surface in an upright turning drum dips from wall to axis.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_surface_drop_mm(radius_mm: f64, speed_rpm: f64, out_drop_mm: *mut f64) -> Status {
    unsafe { put(out_drop_mm, || core(clutch::surface_drop_mm(radius_mm, speed_rpm))) }
}

/// Faces of a pack of friction plates between steels: two for each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_plate_faces(friction_plates: u32, out_faces: *mut u32) -> Status {
    unsafe { put(out_faces, || core(clutch::plate_faces(friction_plates))) }
}

/// Pairs of faces between alternating driving and driven discs: their sum less one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_disc_faces(driving_discs: u32, driven_discs: u32, out_faces: *mut u32) -> Status {
    unsafe { put(out_faces, || core(clutch::disc_faces(driving_discs, driven_discs))) }
}

/// Torque, N m, of a lining whose friction changes with the radius.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_torque_by_radius_nm(
    lining: *const LiningByRadius,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(read(lining)?.torque_by_radius_nm())) }
}

/// Friction radius of a pack, mm, by the state of its lining.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_mean_radius_mm(pack: *const Pack, out_radius_mm: *mut f64) -> Status {
    unsafe { put(out_radius_mm, || core(read(pack)?.mean_radius_mm())) }
}

/// Capacity with everything that made it, with the strongest return spring. Not a rating.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_capacity(
    pack: *const Pack,
    applied: *const Applied,
    out_capacity: *mut Capacity,
) -> Status {
    unsafe { put(out_capacity, || core(read(pack)?.capacity(read(applied)?))) }
}

/// A pack in one oil, checked and reduced to the constants of its capacity: once, before many tw_clutch_capacity_nm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_capacity_line(
    pack: *const Pack,
    oil_density_kg_m3: f64,
    out_line: *mut CapacityLine,
) -> Status {
    unsafe { put(out_line, || core(read(pack)?.capacity_line(oil_density_kg_m3))) }
}

/// Capacity, N m, equal to that of tw_clutch_capacity bit for bit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_capacity_nm(
    line: *const CapacityLine,
    pressure_kpa: f64,
    drum_speed_rpm: f64,
    friction: f64,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(read(line)?.capacity_nm(pressure_kpa, drum_speed_rpm, friction))) }
}

/// Pressure at which a pack just holds a torque; the pressure in applied is not used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_pressure_needed(
    pack: *const Pack,
    torque_nm: f64,
    applied: *const Applied,
    out_needed: *mut PressureNeeded,
) -> Status {
    unsafe { put(out_needed, || core(read(pack)?.pressure_needed(torque_nm, read(applied)?))) }
}

/// Friction coefficient at which a pack just holds a torque; the friction in applied is not used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_friction_needed(
    pack: *const Pack,
    torque_nm: f64,
    applied: *const Applied,
    out_friction: *mut f64,
) -> Status {
    unsafe { put(out_friction, || core(read(pack)?.friction_needed(torque_nm, read(applied)?))) }
}

/// Drum speed, 1/min, at which the oil head of an open pack overcomes its weakest return spring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_drag_speed_rpm(
    pack: *const Pack,
    oil_density_kg_m3: f64,
    out_speed_rpm: *mut f64,
) -> Status {
    unsafe { put(out_speed_rpm, || core(read(pack)?.drag_speed_rpm(oil_density_kg_m3))) }
}

/// Whether a pack holds a torque: chance, verdict, and the pressure or friction that turns it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_hold(
    pack: *const Pack,
    need_nm: *const Reading,
    working: *const Working,
    rule: *const Rule,
    out_hold: *mut Hold,
) -> Status {
    unsafe { put(out_hold, || core(read(pack)?.hold(read(need_nm)?, read(working)?, read(rule)?))) }
}

/// Position of the least of count margins.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_governing(margins: *const f64, count: usize, out_position: *mut u32) -> Status {
    unsafe { put(out_position, || core(clutch::governing(slice(margins, count)?))) }
}

/// Capacity of each pack of a gear against the torque that the train puts on it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_review(
    state: *const State,
    packs: *const ElementPack,
    pack_count: usize,
    duty: *const Duty,
    out_review: *mut GearReview,
) -> Status {
    unsafe { put(out_review, || core(clutch::review(solved(state)?, slice(packs, pack_count)?, read(duty)?))) }
}

/// Band with the servo at the slack end: self-energized.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_energized(
    band: *const Band,
    servo_force_n: f64,
    friction: f64,
    out_torque: *mut BandTorque,
) -> Status {
    unsafe { put(out_torque, || core(read(band)?.energized(servo_force_n, friction))) }
}

/// Band with the servo at the tight end: de-energized.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_deenergized(
    band: *const Band,
    servo_force_n: f64,
    friction: f64,
    out_torque: *mut BandTorque,
) -> Status {
    unsafe { put(out_torque, || core(read(band)?.deenergized(servo_force_n, friction))) }
}

/// Force of a servo on its band, N.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_servo_force_n(
    servo: *const Servo,
    pressure_kpa: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(servo)?.servo_force_n(pressure_kpa))) }
}

/// Slip between two inertias: time, common speed, energy; "never locks" is an answer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_slip_end(slip: *const Slip, out_end: *mut SlipEnd) -> Status {
    unsafe { put(out_end, || core(read(slip)?.slip_end())) }
}

/// Slip while the input is held at constant speed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_held_input_end(slip: *const HeldInput, out_end: *mut SlipEnd) -> Status {
    unsafe { put(out_end, || core(read(slip)?.held_input_end())) }
}

/// Inertia of a shaft, kg m^2, as a shaft feels it against which it turns speed_ratio times as fast.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_referred_inertia_kg_m2(
    inertia_kg_m2: f64,
    speed_ratio: f64,
    out_inertia_kg_m2: *mut f64,
) -> Status {
    unsafe { put(out_inertia_kg_m2, || core(clutch::referred_inertia_kg_m2(inertia_kg_m2, speed_ratio))) }
}

/// Mean temperature rise of the steel plates, K.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_bulk_rise_k(
    energy_j: f64,
    steel_mass_kg: f64,
    specific_heat_j_kg_k: f64,
    out_rise_k: *mut f64,
) -> Status {
    unsafe { put(out_rise_k, || core(clutch::bulk_rise_k(energy_j, steel_mass_kg, specific_heat_j_kg_k))) }
}

/// Surface temperature rise under a constant heat flux; mind whether the plate counts as thick.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_surface_rise_constant(
    steel: *const Steel,
    flux_w_mm2: f64,
    time_s: f64,
    out_rise: *mut SurfaceRise,
) -> Status {
    unsafe { put(out_rise, || core(read(steel)?.surface_rise_constant(flux_w_mm2, time_s))) }
}

/// Highest surface temperature rise under a heat flux that falls linearly to zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_surface_rise_falling(
    steel: *const Steel,
    start_flux_w_mm2: f64,
    slip_time_s: f64,
    out_rise: *mut SurfaceRise,
) -> Status {
    unsafe { put(out_rise, || core(read(steel)?.surface_rise_falling(start_flux_w_mm2, slip_time_s))) }
}

/// What one shift does to the steel plates.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_clutch_plate_heat(
    plates: *const SteelPlates,
    slip: *const SlipEnd,
    out_heat: *mut PlateHeat,
) -> Status {
    unsafe {
        put(out_heat, || {
            if !slip.is_null() {
                known(&raw const (*slip).locks, 2)?;
                known(&raw const (*slip).stays_locked, 2)?;
            }
            core(read(plates)?.plate_heat(read(slip)?))
        })
    }
}
