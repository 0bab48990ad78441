//! `tw_interchange_*`: which parts interchange, the smallest matched set, and what to order.

use crate::pointer::{blank_slice, core, done, is_known, known, put, read, slice};
use crate::status::Status;
use trainwright::fit::Spread;
use trainwright::interchange::{
    self, AS_FOUND, Aim, Answer, Crossing, Job, Joint, JointKind, JointOutcome, JointState, Joints, Machining,
    MatchedSet, MeasuredSide, Meeting, NO_MACHINING, Order, PartSet, Passage, Price, Sides,
};
use trainwright::judge::{Limits, Rule};

/// How the parts of a family meet: arrays that the caller owns, which may lie in flash.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct PartFamily {
    /// Parts, at most TW_MAX_PARTS.
    pub parts: u16,
    /// Variants, 2 to TW_MAX_VARIANTS.
    pub variants: u8,
    /// The joints.
    pub joints: *const Joint,
    /// How many joints.
    pub joint_count: usize,
    /// Sizes of each joint in each variant: those of joint j in variant v stand at j * variants + v.
    pub sizes: *const Sides,
    /// The only machining permitted.
    pub machining: *const Machining,
    /// How many.
    pub machining_count: usize,
    /// Parts that belong to the unit itself and are never exchanged: its case.
    pub fixed: PartSet,
    /// Parts whose numbers differ and whose fit is the same.
    pub alias: PartSet,
}

/// A unit on the bench, and what is wanted in it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct OrderJob {
    /// Variant of the unit: what is exchanged becomes this, a wanted variant, or that of a fixed part as found.
    pub unit: u8,
    /// Variant of each part as found.
    pub found: *const u8,
    /// Variant that each part shall be, or TW_AS_FOUND where it does not matter.
    pub wanted: *const u8,
    /// Sizes measured on the parts as found.
    pub measured: *const MeasuredSide,
    /// How many.
    pub measured_count: usize,
    /// How a measured clearance is judged.
    pub rule: Rule,
    /// How the size of a part that was not measured is taken to lie in its tolerance.
    pub spread: Spread,
    /// Price of each part, NaN where it is not known; null where no price is.
    pub part_prices: *const f64,
    /// Price of each machining, likewise.
    pub machining_prices: *const f64,
    /// What the order shall be the least of.
    pub aim: Aim,
}

/// The joints behind the pointer, refused where a kind has no name; their numbers are checked by the core as it uses them.
unsafe fn family_at<'a>(family: *const PartFamily) -> Result<Joints<'a>, Status> {
    unsafe {
        let PartFamily { parts, variants, joints, joint_count, sizes, machining, machining_count, fixed, alias } =
            read(family)?;
        if joint_count > 0 && joints.is_null() {
            return Err(Status::Null);
        }
        for place in 0..joint_count {
            known(&raw const (*joints.add(place)).kind, JointKind::Match as u8 + 1)?;
        }
        let size_count = joint_count.saturating_mul(variants.into());
        Ok(Joints {
            parts,
            variants,
            joints: slice(joints, joint_count)?,
            sizes: slice(sizes, size_count)?,
            machining: slice(machining, machining_count)?,
            fixed,
            alias,
        })
    }
}

/// The crossings behind the pointer, refused where an outcome has no name.
unsafe fn crossings_at<'a>(crossings: *const Crossing, count: usize) -> Result<&'a [Crossing], Status> {
    unsafe {
        if count > 0 && crossings.is_null() {
            return Err(Status::Null);
        }
        let outcomes = JointOutcome::Unequal as u8 + 1;
        for place in 0..count {
            let crossing = crossings.add(place);
            if !is_known(&raw const (*crossing).first.outcome, outcomes)
                || !is_known(&raw const (*crossing).second.outcome, outcomes)
            {
                return Err(Status::OutOfRange);
            }
        }
        slice(crossings, count)
    }
}

/// The status of work that answers into arrays.
fn worked(work: impl FnOnce() -> Result<(), Status>) -> Status {
    done(work())
}

/// A list that may be missing as a whole.
unsafe fn list<'a>(list: *const f64, count: usize) -> Result<&'a [f64], Status> {
    if list.is_null() { Ok(&[]) } else { unsafe { slice(list, count) } }
}

/// Share of a land that lies on its bearing surface.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_cover_share(
    land_mm: *const Limits,
    surface_mm: *const Limits,
    out_share: *mut f64,
) -> Status {
    unsafe { put(out_share, || core(interchange::cover_share(read(land_mm)?, read(surface_mm)?))) }
}

/// What comes of a joint whose first part is of one variant and whose second is of another, with the reason.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_meet(
    joint: *const Joint,
    first_from: *const Sides,
    second_from: *const Sides,
    out_meeting: *mut Meeting,
) -> Status {
    unsafe {
        put(out_meeting, || {
            if !joint.is_null() {
                known(&raw const (*joint).kind, JointKind::Match as u8 + 1)?;
            }
            core(read(joint)?.meet(read(first_from)?, read(second_from)?))
        })
    }
}

/// Checks once that numbers, sizes and machining of a family fit together. What uses a family afterward refuses what it cannot
/// use, but does not look for more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_check(family: *const PartFamily) -> Status {
    unsafe { worked(|| core(family_at(family)?.checked()).map(|_| ())) }
}

/// What comes of one joint of a family with its parts of these variants. Parts of one variant hold.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_meeting(
    family: *const PartFamily,
    joint: u16,
    first_of: u8,
    second_of: u8,
    out_meeting: *mut Meeting,
) -> Status {
    unsafe { put(out_meeting, || core(family_at(family)?.meeting(joint, first_of, second_of))) }
}

/// What comes of a joint once a machining was done, with its first part of one variant and its second of another.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_machined(
    family: *const PartFamily,
    machining: u16,
    first_of: u8,
    second_of: u8,
    out_meeting: *mut Meeting,
) -> Status {
    unsafe { put(out_meeting, || core(family_at(family)?.machined(machining, first_of, second_of))) }
}

/// Every joint between a part of variant from and a unit of variant into, one tw_crossing for each joint: once, before any number
/// of tw_interchange_close_set and tw_interchange_answer for these two variants. On failure the crossings are of no use.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_crossings(
    family: *const PartFamily,
    from: u8,
    into: u8,
    crossing_count: usize,
    out_crossings: *mut Crossing,
) -> Status {
    unsafe {
        worked(|| {
            let family = family_at(family)?;
            core(family.crossings(from, into, blank_slice(out_crossings, crossing_count, Crossing::BLANK)?))
        })
    }
}

/// The smallest set of parts of the one variant that goes together with the rest of a unit of the other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_close_set(
    family: *const PartFamily,
    crossings: *const Crossing,
    crossing_count: usize,
    part: u16,
    out_set: *mut MatchedSet,
) -> Status {
    unsafe {
        put(out_set, || {
            let crossings = crossings_at(crossings, crossing_count)?;
            core(family_at(family)?.close_set(crossings, part))
        })
    }
}

/// A joint between a matched set and the rest of the unit: what comes of it and the machining that mends it. A joint that is not
/// between the two holds.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_edge(
    set: *const MatchedSet,
    family: *const PartFamily,
    crossings: *const Crossing,
    crossing_count: usize,
    joint: u16,
    out_passage: *mut Passage,
) -> Status {
    unsafe {
        put(out_passage, || {
            let (set, family) = (read(set)?, family_at(family)?);
            let crossings = crossings_at(crossings, crossing_count)?;
            if usize::from(joint) >= family.joints.len() {
                return Err(Status::OutOfRange);
            }
            let found = set.edge(family.joints, crossings).find(|(place, _)| *place == joint);
            let holds = Passage { outcome: JointOutcome::Holds, machining: NO_MACHINING };
            Ok(found.map_or(holds, |(_, passage)| passage))
        })
    }
}

/// What a matched set costs with its machining; a list of prices may be empty. What is not known is counted, not taken as 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_price(
    set: *const MatchedSet,
    family: *const PartFamily,
    crossings: *const Crossing,
    crossing_count: usize,
    part_prices: *const f64,
    part_price_count: usize,
    machining_prices: *const f64,
    machining_price_count: usize,
    out_price: *mut Price,
) -> Status {
    unsafe {
        put(out_price, || {
            let (set, family) = (read(set)?, family_at(family)?);
            let crossings = crossings_at(crossings, crossing_count)?;
            let part_prices = slice(part_prices, part_price_count)?;
            let machining_prices = slice(machining_prices, machining_price_count)?;
            core(family.price(&set, crossings, part_prices, machining_prices))
        })
    }
}

/// How a part of variant from goes into a unit of variant into.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_answer(
    family: *const PartFamily,
    crossings: *const Crossing,
    crossing_count: usize,
    part: u16,
    from: u8,
    into: u8,
    out_answer: *mut Answer,
) -> Status {
    unsafe {
        put(out_answer, || {
            let crossings = crossings_at(crossings, crossing_count)?;
            core(family_at(family)?.answer(crossings, part, from, into))
        })
    }
}

/// The answers for every part and every ordered pair of variants: parts * variants * (variants - 1) of them, by variant of the
/// part, then variant of the unit, then part. scratch has room for one crossing per joint. On failure the answers are of no use.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_matrix(
    family: *const PartFamily,
    scratch: *mut Crossing,
    scratch_count: usize,
    answer_count: usize,
    out_answers: *mut Answer,
) -> Status {
    unsafe {
        worked(|| {
            let family = family_at(family)?;
            if answer_count > 0 && out_answers.is_null() {
                return Err(Status::Null);
            }
            let scratch = blank_slice(scratch, scratch_count, Crossing::BLANK)?;
            core(family.matrix(scratch, blank_slice(out_answers, answer_count, Answer::BLANK)?))
        })
    }
}

/// The fewest parts, or the cheapest, that make every joint of a unit on the bench hold. For each part the variant to order, or
/// TW_AS_FOUND; for each joint its state as it would be. On failure both lists are of no use.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_order(
    family: *const PartFamily,
    job: *const OrderJob,
    out_parts: *mut u8,
    part_count: usize,
    out_states: *mut JointState,
    state_count: usize,
    out_order: *mut Order,
) -> Status {
    unsafe {
        put(out_order, || {
            let family = family_at(family)?;
            let job = read(job)?;
            if state_count > 0 && out_states.is_null() {
                return Err(Status::Null);
            }
            let parts = blank_slice(out_parts, part_count, AS_FOUND)?;
            let states = blank_slice(out_states, state_count, JointState::BLANK)?;
            let OrderJob { unit, rule, spread, aim, .. } = job;
            let job = Job {
                unit,
                found: slice(job.found, family.parts.into())?,
                wanted: slice(job.wanted, family.parts.into())?,
                measured: slice(job.measured, job.measured_count)?,
                rule,
                spread,
                part_prices: list(job.part_prices, family.parts.into())?,
                machining_prices: list(job.machining_prices, family.machining.len())?,
                aim,
            };
            core(family.order(&job, parts, states))
        })
    }
}

/// What comes of a part of some variant among parts of these variants, by tolerance and after what machining is permitted: the
/// outcome of its worst joint that no machining mends, and the first machining that it needs.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_interchange_put_in(
    family: *const PartFamily,
    variants: *const u8,
    part_count: usize,
    part: u16,
    variant: u8,
    out_passage: *mut Passage,
) -> Status {
    unsafe {
        put(out_passage, || {
            let variants = slice(variants, part_count)?;
            core(family_at(family)?.put_in(variants, part, variant))
        })
    }
}
