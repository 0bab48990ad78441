//! `tw_tire_*`: size designations, diameters, rolling circumference, load index, speed symbol.

use crate::pointer::{core, is_known, named, put, read, text};
use crate::status::Status;
use ::core::ffi::c_char;
use trainwright::judge::Reading;
use trainwright::tire::{
    self, LoadRange, RegulationDiameter, Rolling, SpeedSymbol, Tire, TireKind, TirePlies, TireService, TireText,
    WheelRadii,
};

/// A size designation, zero-terminated.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct Designation {
    /// UTF-8, in fact ASCII.
    pub text: [c_char; 48],
}

/// The tire behind a pointer; [`Status::Inconsistent`] where C put a number into it that names nothing.
unsafe fn read_tire(tire: *const Tire) -> Result<Tire, Status> {
    if tire.is_null() {
        return Err(Status::Null);
    }
    let is_named = unsafe {
        is_known(&raw const (*tire).kind, TireKind::Inch as u8 + 1)
            && is_known(&raw const (*tire).service, TireService::Commercial as u8 + 1)
            && is_known(&raw const (*tire).plies, TirePlies::Belted as u8 + 1)
            && is_known(&raw const (*tire).load_range, LoadRange::N as u8 + 1)
            && is_known(&raw const (*tire).speed_in_size, SpeedSymbol::Z as u8 + 1)
            && is_known(&raw const (*tire).speed_symbol, SpeedSymbol::Z as u8 + 1)
            && is_known(&raw const (*tire).above_symbol, 2)
            && is_known(&raw const (*tire).extra_load, 2)
            && is_known(&raw const (*tire).run_flat, 2)
            && is_known(&raw const (*tire).mud_snow, 2)
            && is_known(&raw const (*tire).plies_assumed, 2)
    };
    if is_named { unsafe { read(tire) } } else { Err(Status::Inconsistent) }
}

fn designation(text: &TireText) -> Designation {
    let mut out = Designation { text: [0; 48] };
    for (place, byte) in out.text.iter_mut().zip(text.bytes()) {
        *place = byte as c_char;
    }
    out
}

/// Reads a size designation of `length` bytes, such as 265/65R18 112T, LT235/85R16C, 35x12.50R17LT, 11R22.5 or 185R14.
/// What the text leaves out is 0 in the tire.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_parse(designation: *const c_char, length: usize, out_tire: *mut Tire) -> Status {
    unsafe { put(out_tire, || core(tire::parse(text(designation, length)?))) }
}

/// Reads what tw_tire_parse reads and also the shorthand 245/55/18, for which it assumes radial plies and says so in
/// plies_assumed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_parse_lenient(
    designation: *const c_char,
    length: usize,
    out_tire: *mut Tire,
) -> Status {
    unsafe { put(out_tire, || core(tire::parse_lenient(text(designation, length)?))) }
}

/// The designation in its canonical spelling.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_text(tire: *const Tire, out_designation: *mut Designation) -> Status {
    unsafe { put(out_designation, || Ok(designation(&core(read_tire(tire)?.checked())?.text()))) }
}

/// Metric size: service, one of TW_TIRE_SERVICE_*, section width in mm, aspect ratio in %, rim code.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_metric(
    service: u8,
    width_mm: f64,
    aspect_pct: f64,
    rim_in: f64,
    out_tire: *mut Tire,
) -> Status {
    unsafe {
        put(out_tire, || {
            core(Tire::metric(named(service, TireService::Commercial as u8 + 1)?, width_mm, aspect_pct, rim_in))
        })
    }
}

/// Metric size without an aspect ratio: service, one of TW_TIRE_SERVICE_*, section width in mm, rim code.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_no_aspect(service: u8, width_mm: f64, rim_in: f64, out_tire: *mut Tire) -> Status {
    unsafe {
        put(out_tire, || core(Tire::no_aspect(named(service, TireService::Commercial as u8 + 1)?, width_mm, rim_in)))
    }
}

/// Flotation size: service, one of TW_TIRE_SERVICE_*, overall diameter, section width and rim code in inches.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_flotation(
    service: u8,
    diameter_in: f64,
    width_in: f64,
    rim_in: f64,
    out_tire: *mut Tire,
) -> Status {
    unsafe {
        put(out_tire, || {
            core(Tire::flotation(named(service, TireService::Commercial as u8 + 1)?, diameter_in, width_in, rim_in))
        })
    }
}

/// Inch size: service, one of TW_TIRE_SERVICE_*, section width and rim code in inches.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_inch(service: u8, width_in: f64, rim_in: f64, out_tire: *mut Tire) -> Status {
    unsafe { put(out_tire, || core(Tire::inch(named(service, TireService::Commercial as u8 + 1)?, width_in, rim_in))) }
}

/// The same tire with an aspect ratio, %, that the caller knows or assumes, for a size that does not state one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_with_aspect(tire: *const Tire, aspect_pct: f64, out_tire: *mut Tire) -> Status {
    unsafe { put(out_tire, || core(read_tire(tire)?.with_aspect(aspect_pct))) }
}

/// Design outer diameter of the tire regulations, and what it is made of.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_regulation_diameter(
    tire: *const Tire,
    out_diameter: *mut RegulationDiameter,
) -> Status {
    unsafe { put(out_diameter, || core(read_tire(tire)?.regulation_diameter())) }
}

/// Outer diameter, mm, that the numbers of the name give, unrounded.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_geometric_diameter_mm(tire: *const Tire, out_diameter_mm: *mut f64) -> Status {
    unsafe { put(out_diameter_mm, || core(read_tire(tire)?.geometric_diameter_mm())) }
}

/// Rolling circumference from the regulation diameter, mm, by a factor: TW_RADIAL_FACTOR or TW_DIAGONAL_FACTOR.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_rolling_by_factor(
    diameter_mm: f64,
    factor: *const Reading,
    out_rolling: *mut Rolling,
) -> Status {
    unsafe { put(out_rolling, || core(tire::rolling_by_factor(diameter_mm, read(factor)?))) }
}

/// Rolling circumference from the free outer diameter, mm, by the share that it is of the free circumference.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_rolling_by_share(
    diameter_mm: f64,
    share: *const Reading,
    out_rolling: *mut Rolling,
) -> Status {
    unsafe { put(out_rolling, || core(tire::rolling_by_share(diameter_mm, read(share)?))) }
}

/// Rolling circumference from revolutions counted over a distance, m.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_rolling_by_count(
    distance_m: *const Reading,
    revolutions: *const Reading,
    out_rolling: *mut Rolling,
) -> Status {
    unsafe { put(out_rolling, || core(tire::rolling_by_count(read(distance_m)?, read(revolutions)?))) }
}

/// Free, static loaded and effective rolling radius of one wheel; diameter in mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_radii(
    diameter_mm: f64,
    static_over_diameter: f64,
    rolling: *const Rolling,
    out_radii: *mut WheelRadii,
) -> Status {
    unsafe { put(out_radii, || core(tire::radii(diameter_mm, static_over_diameter, read(rolling)?))) }
}

/// Load, kg, that a load index of 0 to 279 stands for.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_load_index_kg(load_index: u16, out_load_kg: *mut f64) -> Status {
    unsafe { put(out_load_kg, || core(tire::load_index_kg(load_index))) }
}

/// Load in whole pounds that a load index of 0 to 279 stands for.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_load_index_lb(load_index: u16, out_load_lb: *mut f64) -> Status {
    unsafe { put(out_load_lb, || core(tire::load_index_lb(load_index))) }
}

/// The speed symbol with these letters, `length` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_from_letters(
    letters: *const c_char,
    length: usize,
    out_symbol: *mut SpeedSymbol,
) -> Status {
    unsafe { put(out_symbol, || core(SpeedSymbol::from_letters(text(letters, length)?))) }
}

/// Speed, km/h, that a speed symbol, one of TW_SPEED_SYMBOL_*, stands for.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_symbol_km_h(symbol: u8, out_km_h: *mut f64) -> Status {
    unsafe { put(out_km_h, || core(named::<SpeedSymbol>(symbol, SpeedSymbol::Z as u8 + 1)?.symbol_km_h())) }
}

/// Ply rating that a load range, one of TW_LOAD_RANGE_*, stands for. It states no load.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tire_ply_rating(load_range: u8, out_ply_rating: *mut u16) -> Status {
    unsafe { put(out_ply_rating, || core(named::<LoadRange>(load_range, LoadRange::N as u8 + 1)?.ply_rating())) }
}
