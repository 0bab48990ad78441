//! From the elevations of a drive to pieces of road, and the temperature along them.

use crate::pointer::{blank_slice, borrow, core, put, read, slice};
use crate::status::Status;
use trainwright::tow::{
    self, Climb, CoolPull, DrivenPiece, ElevationNoise, HeatModel, Rig, RoadPiece, SlopePoint, TotalClimb,
};

/// Temperature of the sump along a road of grades. `out_driven` takes one entry for each piece.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_climb(
    rig: *const Rig,
    heat: *const HeatModel,
    start_c: f64,
    pieces: *const RoadPiece,
    piece_count: usize,
    out_driven: *mut DrivenPiece,
    out_climb: *mut Climb,
) -> Status {
    unsafe {
        put(out_climb, || {
            let (rig, heat, pieces) = (borrow(rig)?, read(heat)?, slice(pieces, piece_count)?);
            core(rig.climb(heat, start_c, pieces, blank_slice(out_driven, piece_count, DrivenPiece::NONE)?))
        })
    }
}

/// Largest speed on a long grade at which a gear holds and the sump stays at its limit or below.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_cool_speed(
    rig: *const Rig,
    heat: *const HeatModel,
    grade_pct: f64,
    speed_km_h: f64,
    out_cool: *mut CoolPull,
) -> Status {
    unsafe { put(out_cool, || core(borrow(rig)?.cool_speed(read(heat)?, grade_pct, speed_km_h))) }
}

/// Elevation and grade along a drive from noisy elevations. `out_points` takes one entry for each point.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_smooth(
    distance_m: *const f64,
    elevation_m: *const f64,
    point_count: usize,
    window_m: f64,
    noise: *const ElevationNoise,
    out_points: *mut SlopePoint,
) -> Status {
    unsafe {
        put(&mut (), || {
            let (distance_m, elevation_m) = (slice(distance_m, point_count)?, slice(elevation_m, point_count)?);
            let noise = read(noise)?;
            let points = blank_slice(out_points, point_count, SlopePoint::NONE)?;
            core(tow::smooth(distance_m, elevation_m, window_m, noise, points))
        })
    }
}

/// What a drive climbs and falls in all, without counting noise.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_total_climb(
    elevation_m: *const f64,
    point_count: usize,
    dead_band_m: f64,
    out_climb: *mut TotalClimb,
) -> Status {
    unsafe { put(out_climb, || core(tow::total_climb(slice(elevation_m, point_count)?, dead_band_m))) }
}

/// Pieces of road of one length from smoothed elevations. With room 0 only their number is given.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_pieces(
    distance_m: *const f64,
    elevation_m: *const f64,
    point_count: usize,
    piece_m: f64,
    speed_km_h: f64,
    out_pieces: *mut RoadPiece,
    room: usize,
    out_piece_count: *mut u32,
) -> Status {
    unsafe {
        put(out_piece_count, || {
            let (distance_m, elevation_m) = (slice(distance_m, point_count)?, slice(elevation_m, point_count)?);
            let blank = RoadPiece { length_m: 0.0, grade_pct: 0.0, speed_km_h: 0.0 };
            core(tow::pieces(distance_m, elevation_m, piece_m, speed_km_h, blank_slice(out_pieces, room, blank)?))
        })
    }
}
