//! `tw_identify_*`: which variant is on the bench.

use crate::pointer::{array, array_mut, core, done, put, read, slice};
use crate::status::Status;
use trainwright::identify::{
    self, Conclusion, Nearest, Origin, PartFinding, Standing as Stood, VariantFinding, Weighed, Worth,
};
use trainwright::judge::{Limits, Reading, Rule};

/// What is known about a unit. It points into the caller's memory.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct Evidence {
    /// Chance of each variant before anything is looked at; they sum to 1.
    pub prior: *const f64,
    /// For each part, the chance that it came from another unit, before anything is looked at.
    pub exchanged: *const f64,
    /// For each part, a row of as many numbers as variants: 0 without a look, then as `tw_identify_add_seen` and
    /// `tw_identify_add_measured` fill it.
    pub ln_likelihood: *const f64,
    /// Number of variants.
    pub variants: usize,
    /// Number of parts.
    pub parts: usize,
    /// How many readings are NO-GO against the limits of every variant; `tw_identify_conclude` then settles nothing.
    pub unexplained: u32,
}

/// The unit as it is known, and the part that a further look is on. It points into the caller's memory.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct Standing {
    /// The variants, as `tw_identify_weigh` filled them in.
    pub variants: *const VariantFinding,
    /// The part, as `tw_identify_part` filled it in.
    pub origins: *const Origin,
    /// Number of variants.
    pub count: usize,
    /// Rule with stated chances: from which chance on the variant is settled.
    pub rule: Rule,
}

unsafe fn evidence<'a>(pointer: *const Evidence) -> Result<identify::Evidence<'a>, Status> {
    unsafe {
        let given = read(pointer)?;
        Ok(identify::Evidence {
            prior: slice(given.prior, given.variants)?,
            exchanged: slice(given.exchanged, given.parts)?,
            ln_likelihood: slice(given.ln_likelihood, given.variants.saturating_mul(given.parts))?,
            unexplained: given.unexplained,
        })
    }
}

unsafe fn standing<'a>(pointer: *const Standing) -> Result<Stood<'a>, Status> {
    unsafe {
        let given = read(pointer)?;
        let (variants, origins) = (slice(given.variants, given.count)?, slice(given.origins, given.count)?);
        Ok(Stood { variants, origins, rule: given.rule })
    }
}

/// Prior chance of each variant from how many of each came into the shop.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_prior_of_counts(
    counts: *const u32,
    variants: usize,
    out_prior: *mut f64,
) -> Status {
    unsafe {
        done(
            array_mut(out_prior, variants)
                .and_then(|prior| core(identify::prior_of_counts(array(counts, variants)?, prior))),
        )
    }
}

/// Logarithm of the probability density (1/mm) of a reading of a size that lies anywhere within its limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_ln_density(
    reading_mm: *const Reading,
    size_mm: *const Limits,
    out_ln_density: *mut f64,
) -> Status {
    unsafe { put(out_ln_density, || core(identify::ln_density(read(reading_mm)?, read(size_mm)?))) }
}

/// Adds a mark that is there or not to the row of its part. `chance` and the row have one number for each variant; on failure
/// the row stays as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_add_seen(
    chance: *const f64,
    variants: usize,
    seen: bool,
    ln_part: *mut f64,
) -> Status {
    unsafe {
        done(array_mut(ln_part, variants).and_then(|row| core(identify::add_seen(array(chance, variants)?, seen, row))))
    }
}

/// Adds a measured size to the row of its part, and says which variant the reading comes nearest to. `size_mm` and the row
/// have one entry for each variant; on failure the row stays as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_add_measured(
    size_mm: *const Limits,
    variants: usize,
    reading_mm: *const Reading,
    ln_part: *mut f64,
    out_nearest: *mut Nearest,
) -> Status {
    unsafe {
        put(out_nearest, || {
            let row = array_mut(ln_part, variants)?;
            core(identify::add_measured(array(size_mm, variants)?, read(reading_mm)?, row))
        })
    }
}

/// Chance of each variant. `out_variants` has room for as many as the evidence.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_weigh(
    evidence: *const Evidence,
    out_variants: *mut VariantFinding,
    out_weighed: *mut Weighed,
) -> Status {
    unsafe {
        put(out_weighed, || {
            let evidence = self::evidence(evidence)?;
            core(evidence.weigh(array_mut(out_variants, evidence.prior.len())?))
        })
    }
}

/// Where a part came from. `variants` as `tw_identify_weigh` filled them in; `out_origins` has room for as many.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_part(
    evidence: *const Evidence,
    variants: *const VariantFinding,
    part: usize,
    out_origins: *mut Origin,
    out_finding: *mut PartFinding,
) -> Status {
    unsafe {
        put(out_finding, || {
            let evidence = self::evidence(evidence)?;
            let count = evidence.prior.len();
            core(evidence.part(array(variants, count)?, part, array_mut(out_origins, count)?))
        })
    }
}

/// One variant, mixed, or not settled. `parts` holds the findings of the parts that were looked at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_conclude(
    weighed: *const Weighed,
    parts: *const PartFinding,
    count: usize,
    rule: *const Rule,
    out_conclusion: *mut Conclusion,
) -> Status {
    unsafe { put(out_conclusion, || core(identify::conclude(&read(weighed)?, slice(parts, count)?, read(rule)?))) }
}

/// What looking for a mark would tell about the variant. `chance` has one number for each variant.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_mark_worth(
    standing: *const Standing,
    chance: *const f64,
    minutes: f64,
    out_worth: *mut Worth,
) -> Status {
    unsafe {
        put(out_worth, || {
            let standing = self::standing(standing)?;
            core(standing.mark_worth(array(chance, standing.variants.len())?, minutes))
        })
    }
}

/// What measuring a size would tell about the variant. `size_mm` has one entry for each variant.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_identify_size_worth(
    standing: *const Standing,
    size_mm: *const Limits,
    u_mm: f64,
    minutes: f64,
    out_worth: *mut Worth,
) -> Status {
    unsafe {
        put(out_worth, || {
            let standing = self::standing(standing)?;
            core(standing.size_worth(array(size_mm, standing.variants.len())?, u_mm, minutes))
        })
    }
}
