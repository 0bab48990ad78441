//! Values known only as common practice of the trade, no source. Nothing takes them by default: name them.

/// Aspect ratio of a tire whose size does not state one (185R14). It meets the table of UN R30 within 5 mm of diameter; the
/// often quoted 82 is up to 5 mm of section height too much.
pub const ASPECT_NOT_STATED_PCT: f64 = 80.0;
/// Static loaded radius of a tire over its outer diameter: what a rule under the hub measures, standing still.
pub const STATIC_LOADED_RADIUS_OVER_DIAMETER: f64 = 0.47;
