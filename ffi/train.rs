//! `tw_train_*`: gear trains.

mod assembly;
mod candidates;
mod diagnosis;
mod losses;

use crate::pointer::{borrow, core, is_known, known, named, put, put_filled, read};
use crate::status::Status;
use trainwright::train::{
    Blocks, Element, ElementKind, Fraction, Load, MAX_ELEMENTS, MAX_ROWS, MAX_SETS, PlanetSpeeds, PlanetarySet, Row,
    SetJoins, SetKind, SetTeeth, State, StateCounts, StateKind, Train,
};

/// A train as C sees it: the same fields, with a byte in place of every enumerator.
#[repr(C)]
struct Written {
    counts: [u8; 7],
    sets: [WrittenSet; MAX_SETS],
    rows: [Row; MAX_ROWS],
    elements: [WrittenElement; MAX_ELEMENTS],
}

#[repr(C)]
struct WrittenSet {
    kind: u8,
    planets: u8,
    teeth: SetTeeth,
    joins: SetJoins,
}

#[repr(C)]
struct WrittenElement {
    kind: u8,
    blocks: u8,
    joins: [u8; 2],
}

const _: () = assert!(size_of::<Written>() == size_of::<Train>() && align_of::<Written>() == align_of::<Train>());

/// The train behind the pointer, refused where one of its kinds has no name: then nobody made it with `tw_train_new`.
pub(crate) unsafe fn made<'a>(train: *const Train) -> Result<&'a Train, Status> {
    unsafe {
        let written = borrow(train.cast::<Written>())?;
        let sets = written.sets.iter().all(|set| is_known(&raw const set.kind, SetKind::Stepped as u8 + 1));
        let elements = written.elements.iter().all(|element| {
            is_known(&raw const element.kind, ElementKind::Dog as u8 + 1)
                && is_known(&raw const element.blocks, Blocks::Forward as u8 + 1)
        });
        if sets && elements { borrow(train) } else { Err(Status::Inconsistent) }
    }
}

/// The solved state behind the pointer, refused where its kind has no name.
pub(crate) unsafe fn solved<'a>(state: *const State) -> Result<&'a State, Status> {
    unsafe {
        if !state.is_null() {
            known(&raw const (*state).kind, StateKind::TiedUp as u8 + 1)?;
        }
        borrow(state)
    }
}

/// A train of `members` members without sets; `input`, `output` and `fixed` (the case) are numbers of three of them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_new(members: u8, input: u8, output: u8, fixed: u8, out_train: *mut Train) -> Status {
    unsafe { put(out_train, || core(Train::new(members, input, output, fixed))) }
}

/// Adds a planetary set after checking teeth and joins; on failure the train stays as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_add_set(set: *const PlanetarySet, train: *mut Train) -> Status {
    unsafe {
        put(train, || {
            if !set.is_null() {
                known(&raw const (*set).kind, SetKind::Stepped as u8 + 1)?;
            }
            let mut train = *made(train)?;
            core(train.add_set(read(set)?))?;
            Ok(train)
        })
    }
}

/// Adds a clutch, brake, one-way or dog clutch after checking what it joins; on failure the train stays as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_add_element(element: *const Element, train: *mut Train) -> Status {
    unsafe {
        put(train, || {
            if !element.is_null() {
                known(&raw const (*element).kind, ElementKind::Dog as u8 + 1)?;
                known(&raw const (*element).blocks, Blocks::Forward as u8 + 1)?;
            }
            let mut train = *made(train)?;
            core(train.add_element(read(element)?))?;
            Ok(train)
        })
    }
}

/// Solves the engagement in which exactly the elements of the mask are closed, one-way clutches like any other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_solve(train: *const Train, closed: u32, out_state: *mut State) -> Status {
    unsafe { put_filled(out_state, State::OPEN, |state| core(made(train)?.solve_into(closed, state))) }
}

/// As `tw_train_solve`, with the one-way clutches held or overrunning as the load, one of TW_LOAD_*, makes them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_resolve(train: *const Train, closed: u32, load: u8, out_state: *mut State) -> Status {
    unsafe {
        put_filled(out_state, State::OPEN, |state| {
            core(made(train)?.resolve_into(closed, named(load, Load::Coast as u8 + 1)?, state))
        })
    }
}

/// Speeds of the planets of a set in a solved state of this train.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_planet_speeds(
    train: *const Train,
    state: *const State,
    set: u8,
    out_speeds: *mut PlanetSpeeds,
) -> Status {
    unsafe { put(out_speeds, || core(made(train)?.planet_speeds(solved(state)?, set))) }
}

/// Slip of a closed element of a gear while it lets go and all others hold, per unit of slip at the input, which is the input
/// speed above ratio times output speed; `den` 0 where the two speeds do not show its slip.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_slip_per_input_slip(
    state: *const State,
    element: u8,
    out_factor: *mut Fraction,
) -> Status {
    unsafe { put(out_factor, || Ok(solved(state)?.slip_per_input_slip(element))) }
}

/// Whether anything reacts a torque at the input. Otherwise the input spins up, and no torque share is defined.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_carries_torque(state: *const State, out_carries: *mut bool) -> Status {
    unsafe { put(out_carries, || Ok(solved(state)?.carries_torque())) }
}

/// Whether the state drives the output faster than `output_per_input` times the input: a forbidden state.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_overspeeds(
    state: *const State,
    output_per_input: f64,
    out_overspeeds: *mut bool,
) -> Status {
    unsafe { put(out_overspeeds, || Ok(solved(state)?.overspeeds(output_per_input))) }
}

/// Mask of the one-way clutches.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_one_way_mask(train: *const Train, out_mask: *mut u32) -> Status {
    unsafe { put(out_mask, || Ok(made(train)?.one_way_mask())) }
}

/// Mask of the elements that someone closes: all but the one-way clutches.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_applied_mask(train: *const Train, out_mask: *mut u32) -> Status {
    unsafe { put(out_mask, || Ok(made(train)?.applied_mask())) }
}

/// The combination of closed elements after this one; the first after 0. TW_STATUS_NO_ANSWER after the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_next_engagement(train: *const Train, closed: u32, out_closed: *mut u32) -> Status {
    unsafe { put(out_closed, || made(train)?.next_engagement(closed).ok_or(Status::NoAnswer)) }
}

/// Counts the kinds of state over every combination of closed elements, under a load of TW_LOAD_*.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_state_counts(train: *const Train, load: u8, out_counts: *mut StateCounts) -> Status {
    unsafe { put(out_counts, || core(made(train)?.state_counts(named(load, Load::Coast as u8 + 1)?))) }
}
