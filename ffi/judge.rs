//! `tw_judge_*`: readings, limits and decisions.

use crate::pointer::{borrow, core, put, put_text, read, slice, terminated};
use crate::status::Status;
use ::core::ffi::c_char;
use heapless::Vec;
use trainwright::judge::{
    self, Budget, Expanded, Input, Judgment, Limits, MAX_INPUTS, Reading, Repeated, Rule, Settlement, Verdict,
};

/// A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_relative(value: f64, u_rel: f64, out_reading: *mut Reading) -> Status {
    unsafe { put(out_reading, || core(Reading::relative(value, u_rel))) }
}

/// Anywhere within +/- the half width with the same chance: u = a/sqrt(3).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_rectangular(value: f64, half_width: f64, out_reading: *mut Reading) -> Status {
    unsafe { put(out_reading, || core(Reading::rectangular(value, half_width))) }
}

/// Within +/- the half width, more often near the middle: u = a/sqrt(6).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_triangular(value: f64, half_width: f64, out_reading: *mut Reading) -> Status {
    unsafe { put(out_reading, || core(Reading::triangular(value, half_width))) }
}

/// Swinging as a sine between +/- the half width: u = a/sqrt(2).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_arcsine(value: f64, half_width: f64, out_reading: *mut Reading) -> Status {
    unsafe { put(out_reading, || core(Reading::arcsine(value, half_width))) }
}

/// Read from a display or counter that moves in steps of the quantum: u = q/sqrt(12).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_quantized(value: f64, quantum: f64, out_reading: *mut Reading) -> Status {
    unsafe { put(out_reading, || core(Reading::quantized(value, quantum))) }
}

/// Read on an instrument whose class is its greatest error in percent of full scale.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_of_class(
    value: f64,
    full_scale: f64,
    class_pct: f64,
    out_reading: *mut Reading,
) -> Status {
    unsafe { put(out_reading, || core(Reading::of_class(value, full_scale, class_pct))) }
}

/// Mean of repeated readings, its standard uncertainty and degrees of freedom.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_mean_of(values: *const f64, count: usize, out_repeated: *mut Repeated) -> Status {
    unsafe { put(out_repeated, || core(judge::mean_of(slice(values, count)?))) }
}

/// Inside is GO, outside is NO-GO; the uncertainty is not counted.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_simple_acceptance(out_rule: *mut Rule) -> Status {
    unsafe { put(out_rule, || Ok(Rule::simple_acceptance())) }
}

/// GO is proven from this chance of lying inside, NO-GO up to 1 minus it (ISO 14253-1:2017, usually 0.95).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_conformance(probability: f64, out_rule: *mut Rule) -> Status {
    unsafe { put(out_rule, || core(Rule::conformance(probability))) }
}

/// A guard of k standard uncertainties on either side of a limit (ISO 14253-1 before 2017, usually 2).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_expanded_guard(k: f64, out_rule: *mut Rule) -> Status {
    unsafe { put(out_rule, || core(Rule::expanded_guard(k))) }
}

/// GO from the chance `go`, above 0.5; NO-GO up to the chance `no_go`, below 0.5.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_stated_chances(go: f64, no_go: f64, out_rule: *mut Rule) -> Status {
    unsafe { put(out_rule, || core(Rule::stated_chances(go, no_go))) }
}

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_chance_inside(
    reading: *const Reading,
    limits: *const Limits,
    out_chance: *mut f64,
) -> Status {
    unsafe { put(out_chance, || core(judge::chance_inside(read(reading)?, read(limits)?))) }
}

/// Decides whether the reading conforms to its limits: GO, NO-GO or NOT PROVEN, and what would settle it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_judge(
    reading: *const Reading,
    limits: *const Limits,
    rule: *const Rule,
    out_judgment: *mut Judgment,
) -> Status {
    unsafe { put(out_judgment, || core(judge::judge(read(reading)?, read(limits)?, read(rule)?))) }
}

/// Combined standard uncertainty of independent inputs, and what each contributes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_combine(inputs: *const Input, count: usize, out_budget: *mut Budget) -> Status {
    unsafe { put(out_budget, || core(judge::combine(slice(inputs, count)?))) }
}

/// Combined standard uncertainty of correlated inputs; `correlation` holds count x count coefficients, row by row.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_combine_correlated(
    inputs: *const Input,
    count: usize,
    correlation: *const f64,
    out_budget: *mut Budget,
) -> Status {
    let square = count.saturating_mul(count);
    unsafe { put(out_budget, || core(judge::combine_correlated(slice(inputs, count)?, slice(correlation, square)?))) }
}

/// Effective degrees of freedom of the combined uncertainty of independent inputs (Welch-Satterthwaite).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_effective_freedom(
    inputs: *const Input,
    count: usize,
    out_freedom: *mut f64,
) -> Status {
    unsafe { put(out_freedom, || core(judge::effective_freedom(slice(inputs, count)?))) }
}

/// Expanded uncertainty and coverage interval for a stated probability.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_expand(
    reading: *const Reading,
    freedom: f64,
    coverage: f64,
    out_expanded: *mut Expanded,
) -> Status {
    unsafe { put(out_expanded, || core(judge::expand(read(reading)?, freedom, coverage))) }
}

/// The one input whose better measurement would decide the judged reading, and how good it must be. Pass the judgment as
/// `tw_judge_judge` wrote it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_settle(
    judgment: *const Judgment,
    budget: *const Budget,
    out_settlement: *mut Settlement,
) -> Status {
    unsafe { put(out_settlement, || core(judge::settle(&self::judgment(judgment)?, &read(budget)?))) }
}

/// As `tw_judge_settle`, for the input at this position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_settle_by(
    judgment: *const Judgment,
    budget: *const Budget,
    input: u32,
    out_settlement: *mut Settlement,
) -> Status {
    unsafe { put(out_settlement, || core(judge::settle_by(&self::judgment(judgment)?, &read(budget)?, input))) }
}

/// A judgment in words: what was judged, the chance and the verdict, what would make it GO, and for each input of the budget
/// (its `count` is 0 where there is none) its sensitivity, its share of the variance and whether it alone would decide.
/// `inputs` names them in their order, `unit` is the sign of the reading's unit; all zero-terminated, the unit empty for a
/// pure number. Pass the judgment as `tw_judge_judge` wrote it.
///
/// Writes UTF-8 with a terminating zero into `size` bytes, and its length without the zero; `TW_STATUS_COUNT` where it does
/// not fit. With a `size` of 0 only the length is written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_explain(
    judgment: *const Judgment,
    budget: *const Budget,
    inputs: *const *const c_char,
    count: usize,
    unit: *const c_char,
    out_text: *mut c_char,
    size: usize,
    out_length: *mut usize,
) -> Status {
    unsafe {
        let names = names(inputs, count);
        let judged = names.as_ref().map_err(|status| *status).and_then(|names| {
            self::judgment(judgment)?;
            let (judgment, budget) = (borrow(judgment)?, borrow(budget)?);
            Ok(judge::explain(judgment, Some(budget).filter(|budget| budget.count > 0), names, terminated(unit)?))
        });
        put_text(out_text, size, out_length, judged, |judged, out| judged.write_text(out))
    }
}

unsafe fn names<'a>(texts: *const *const c_char, count: usize) -> Result<Vec<&'a str, MAX_INPUTS>, Status> {
    let mut names = Vec::new();
    for &text in unsafe { slice(texts, count)? } {
        names.push(unsafe { terminated(text)? }).map_err(|_| Status::Count)?;
    }
    Ok(names)
}

/// A judgment whose verdict is known.
pub(crate) unsafe fn judgment(pointer: *const Judgment) -> core::result::Result<Judgment, Status> {
    unsafe {
        if !pointer.is_null() {
            let verdict = (&raw const (*pointer).verdict).cast::<i32>().read();
            if !(Verdict::NoGo as i32..=Verdict::Go as i32).contains(&verdict) {
                return Err(Status::OutOfRange);
            }
        }
        read(pointer)
    }
}

/// Standard normal distribution function; z may be infinite.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_normal_cdf(z: f64, out_probability: *mut f64) -> Status {
    unsafe { put(out_probability, || core(judge::normal_cdf(z))) }
}

/// Value that a standard normal variable stays below with the stated probability.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_normal_quantile(probability: f64, out_z: *mut f64) -> Status {
    unsafe { put(out_z, || core(judge::normal_quantile(probability))) }
}

/// Student's t distribution function; `freedom` is 1 or more, infinite for the normal distribution.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_student_cdf(t: f64, freedom: f64, out_probability: *mut f64) -> Status {
    unsafe { put(out_probability, || core(judge::student_cdf(t, freedom))) }
}

/// Value that a Student's t variable stays below with the stated probability.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_student_quantile(probability: f64, freedom: f64, out_t: *mut f64) -> Status {
    unsafe { put(out_t, || core(judge::student_quantile(probability, freedom))) }
}

/// Factor from standard uncertainty to the half width that covers the stated probability.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_judge_coverage_factor(coverage: f64, freedom: f64, out_k: *mut f64) -> Status {
    unsafe { put(out_k, || core(judge::coverage_factor(coverage, freedom))) }
}
