//! Every rating of a combination against its load, and the rating that governs. A computed limit is no rating.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::judge::Rule;
use trainwright::tow::{Coupled, RatingCheck, RatingKind, RatingReview, TowRatings};

/// A load of the combination against one rating, one of `TW_RATING_KIND_*`, and the trailer at which the two meet.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_rating_check(
    coupled: *const Coupled,
    kind: i32,
    rating_kg: f64,
    rule: *const Rule,
    out_check: *mut RatingCheck,
) -> Status {
    unsafe {
        put(out_check, || {
            let kind = core(RatingKind::from_number(kind))?;
            core(read(coupled)?.rating_check(kind, rating_kg, read(rule)?))
        })
    }
}

/// Every rating of the combination, and the one that governs; a rating is INFINITY where it is not known. Brakes, cooling,
/// frame, trailer sway and local law are not looked at: the vehicle maker's ratings and placards stand.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_review_ratings(
    coupled: *const Coupled,
    ratings: *const TowRatings,
    rule: *const Rule,
    out_review: *mut RatingReview,
) -> Status {
    unsafe { put(out_review, || core(read(coupled)?.review_ratings(read(ratings)?, read(rule)?))) }
}
