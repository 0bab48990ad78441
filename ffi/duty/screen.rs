//! The pass over rows: one row, or the rows of one truck.

use crate::pointer::{array, array_mut, borrow, core, done, put, read};
use crate::status::Status;
use trainwright::duty::screen::{
    self, Ask, ScreenAnswer, ScreenPlan, ScreenRow, ScreenTally, ScreenTotals, ScreenUnit,
};

/// Base (0 to 65 536) to an exponent (above 0 to 16) as the pass over rows forms it, within 2e-13 of the value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_screen_power(base: f64, exponent: f64, out_power: *mut f64) -> Status {
    unsafe { put(out_power, || core(screen::screen_power(base, exponent))) }
}

/// Checks a truck and reduces it to the constants of a row.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_screen_plan(unit: *const ScreenUnit, out_plan: *mut ScreenPlan) -> Status {
    unsafe { put(out_plan, || core(borrow(unit)?.plan())) }
}

/// One row of a truck. Bit n of given says that the data has the n-th column of the row; previous, the row of the truck before
/// it, may be null.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_screen_row(
    plan: *const ScreenPlan,
    given: u32,
    row: *const ScreenRow,
    previous: *const ScreenRow,
    out_answer: *mut ScreenAnswer,
) -> Status {
    unsafe {
        put(out_answer, || {
            let previous = if previous.is_null() { None } else { Some(read(previous)?) };
            Ok(borrow(plan)?.row(given, &read(row)?, previous.as_ref()))
        })
    }
}

/// Rows of one truck in their order: the answer of each. The first has no row before it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_screen_rows(
    plan: *const ScreenPlan,
    given: u32,
    rows: *const ScreenRow,
    count: usize,
    out_answers: *mut ScreenAnswer,
) -> Status {
    done((|| {
        let (plan, rows, answers) = unsafe { (borrow(plan)?, array(rows, count)?, array_mut(out_answers, count)?) };
        let mut previous = None;
        for (row, answer) in rows.iter().zip(answers) {
            *answer = plan.row(given, row, previous);
            previous = Some(row);
        }
        Ok(())
    })())
}

/// What the rows of one truck, in their order, add up to.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_screen_totals(
    plan: *const ScreenPlan,
    given: u32,
    rows: *const ScreenRow,
    count: usize,
    out_totals: *mut ScreenTotals,
) -> Status {
    unsafe {
        put(out_totals, || {
            let (plan, rows) = (borrow(plan)?, array(rows, count)?);
            let mut tally = ScreenTally::EMPTY;
            let mut previous = None;
            for (row, number) in rows.iter().zip(0..) {
                tally.add_row((given, Ask::ALL), row, number, &plan.row(given, row, previous));
                previous = Some(row);
            }
            Ok(tally.totals(plan))
        })
    }
}
