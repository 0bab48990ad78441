//! End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.

use crate::judge::judgment as judged;
use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use trainwright::clutch::Annulus;
use trainwright::fit::Spread;
use trainwright::judge::{Budget, Judgment, Limits, Reading, Repeated, Rule};
use trainwright::stack::{
    self, ApplyFill, AxialGrowth, Chain, ChainLink, ChoiceRule, GrownPlay, MeasurePlan, PackHeights, PackRoom,
    PickedPiece, Piece, PieceChoice, PieceOutcome, PistonStroke, PistonTravel, Selection,
};

/// A part as made, not measured; `spread` is one of TW_SPREAD_*.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_toleranced(
    sensitivity: f64,
    size_mm: *const Limits,
    spread: Spread,
    out_link: *mut ChainLink,
) -> Status {
    unsafe { put(out_link, || core(ChainLink::toleranced(sensitivity, read(size_mm)?, spread))) }
}

/// A measured part; `k` standard uncertainties count as its worst case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_measured(
    sensitivity: f64,
    size_mm: *const Reading,
    k: f64,
    out_link: *mut ChainLink,
) -> Status {
    unsafe { put(out_link, || core(ChainLink::measured(sensitivity, read(size_mm)?, k))) }
}

/// The size that a chain of parts leaves: nominal, worst case, root sum of squares, and with its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_chain(links: *const ChainLink, count: usize, out_chain: *mut Chain) -> Status {
    unsafe { put(out_chain, || core(stack::chain(slice(links, count)?))) }
}

/// What an end play gains from the reference temperature to a hot one, with its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_grown(
    growth: *const AxialGrowth,
    temp_c: *const Reading,
    train_hotter_k: *const Reading,
    out_grown: *mut GrownPlay,
) -> Status {
    unsafe { put(out_grown, || core(read(growth)?.grown(read(temp_c)?, read(train_hotter_k)?))) }
}

/// Best estimate of what an end play gains, mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_growth_mm(
    growth: *const AxialGrowth,
    temp_c: f64,
    train_hotter_k: f64,
    out_growth_mm: *mut f64,
) -> Status {
    unsafe { put(out_growth_mm, || core(read(growth)?.growth_mm(temp_c, train_hotter_k))) }
}

/// What one shim, ring or plate leaves, cold and hot, judged.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_outcome(
    selection: *const Selection,
    piece: *const Piece,
    out_outcome: *mut PieceOutcome,
) -> Status {
    unsafe { put(out_outcome, || core(chosen_for(selection)?.outcome(one(piece)?))) }
}

/// Which shim, ring or plate to fit, by nearest target and by least risk. Not finding one is an answer: `found` is false.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_choose(
    selection: *const Selection,
    pieces: *const Piece,
    count: usize,
    out_choice: *mut PieceChoice,
) -> Status {
    unsafe { put(out_choice, || core(chosen_for(selection)?.choose(list(pieces, count)?))) }
}

/// The piece that `tw_stack_choose` would fit, alone and without the judgments; TW_STATUS_NO_ANSWER where none lands inside.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_pick(
    selection: *const Selection,
    pieces: *const Piece,
    count: usize,
    out_picked: *mut PickedPiece,
) -> Status {
    unsafe { put(out_picked, || core(chosen_for(selection)?.pick(list(pieces, count)?))) }
}

/// A piece whose flag is known.
unsafe fn one(piece: *const Piece) -> core::result::Result<Piece, Status> {
    unsafe {
        if !piece.is_null() {
            known(&raw const (*piece).in_stock, 2)?;
        }
        read(piece)
    }
}

/// Pieces whose flags are known.
unsafe fn list<'a>(pieces: *const Piece, count: usize) -> core::result::Result<&'a [Piece], Status> {
    unsafe {
        let pieces = slice(pieces, count)?;
        for piece in pieces {
            known(&raw const piece.in_stock, 2)?;
        }
        Ok(pieces)
    }
}

/// A selection whose enumerator and flag are known.
unsafe fn chosen_for(selection: *const Selection) -> core::result::Result<Selection, Status> {
    unsafe {
        if !selection.is_null() {
            known(&raw const (*selection).by, ChoiceRule::LeastRisk as u8 + 1)?;
            known(&raw const (*selection).hot_counts, 2)?;
        }
        read(selection)
    }
}

/// Mean of readings taken in steps, as with feelers, and its standard uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_mean_of_steps(
    values: *const f64,
    count: usize,
    quantum: f64,
    u_of_one: f64,
    out_repeated: *mut Repeated,
) -> Status {
    unsafe { put(out_repeated, || core(stack::mean_of_steps(slice(values, count)?, quantum, u_of_one))) }
}

/// Which input of a judged result to measure, the one that weighs most first; `u_measured` has one entry for each input.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_what_to_measure(
    judgment: *const Judgment,
    budget: *const Budget,
    u_measured: *const f64,
    count: usize,
    out_plan: *mut MeasurePlan,
) -> Status {
    unsafe {
        put(out_plan, || core(stack::what_to_measure(&judged(judgment)?, &read(budget)?, slice(u_measured, count)?)))
    }
}

/// Room for the ring or plate of a pack, mm, from the clearance read with another one in place.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_room_from_fitted(
    clearance_mm: *const Reading,
    fitted_mm: *const Reading,
    out_room_mm: *mut Reading,
) -> Status {
    unsafe { put(out_room_mm, || core(stack::room_from_fitted(read(clearance_mm)?, read(fitted_mm)?))) }
}

/// Room for the ring or plate of a pack, from the depth of the drum and the heights of what stands in it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_room_from_heights(heights: *const PackHeights, out_room: *mut PackRoom) -> Status {
    unsafe { put(out_room, || core(read(heights)?.room_from_heights())) }
}

/// Whether a piston closes its pack before its seal leaves its land.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_piston_travel(
    stroke: *const PistonStroke,
    rule: *const Rule,
    out_travel: *mut PistonTravel,
) -> Status {
    unsafe { put(out_travel, || core(read(stroke)?.piston_travel(read(rule)?))) }
}

/// Oil that a piston takes to close its pack, and how long a flow needs for it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_stack_apply_fill(
    piston: *const Annulus,
    travel_mm: *const Reading,
    flow_l_min: *const Reading,
    out_fill: *mut ApplyFill,
) -> Status {
    unsafe { put(out_fill, || core(stack::apply_fill(read(piston)?, read(travel_mm)?, read(flow_l_min)?))) }
}
