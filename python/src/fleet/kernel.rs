//! The pass over rows with the best instructions that the machine has. The answers do not depend on them.

use trainwright::duty::screen::{SCREEN_COLUMNS, ScreenBlock, ScreenPlan, ScreenTally};

/// Passes over rows of one truck: block, plan, question, columns, number of the first row, sums.
pub type Kernel = fn(&mut ScreenBlock, &ScreenPlan, u32, &[&[f64]; SCREEN_COLUMNS], u64, &mut ScreenTally);

fn any(
    block: &mut ScreenBlock,
    plan: &ScreenPlan,
    asked: u32,
    columns: &[&[f64]; SCREEN_COLUMNS],
    first_row: u64,
    tally: &mut ScreenTally,
) {
    block.screen(plan, asked, (columns, first_row, |_| ()), tally);
}

#[cfg(target_arch = "x86_64")]
mod x86_64 {
    use core::arch::x86_64::{_MM_HINT_T0, _mm_prefetch};

    use super::{Kernel, SCREEN_COLUMNS, ScreenBlock, ScreenPlan, ScreenTally};

    /// `$name` runs the pass compiled with these features.
    macro_rules! compiled_with {
        ($name:ident, $inner:ident, $features:literal) => {
            fn $name(
                block: &mut ScreenBlock,
                plan: &ScreenPlan,
                asked: u32,
                columns: &[&[f64]; SCREEN_COLUMNS],
                first_row: u64,
                tally: &mut ScreenTally,
            ) {
                #[target_feature(enable = $features)]
                fn $inner(
                    block: &mut ScreenBlock,
                    plan: &ScreenPlan,
                    asked: u32,
                    columns: &[&[f64]; SCREEN_COLUMNS],
                    first_row: u64,
                    tally: &mut ScreenTally,
                ) {
                    block.screen(plan, asked, (columns, first_row, fetch(columns)), tally);
                }
                // SAFETY: `best` gives this function out only where the processor has these instructions.
                unsafe { $inner(block, plan, asked, columns, first_row, tally) }
            }
        };
    }

    /// Asks memory for the rows of a group: sixteen numbers of each column.
    fn fetch(columns: &[&[f64]; SCREEN_COLUMNS]) -> impl Fn(usize) {
        let [time, ..] = columns;
        let columns = columns.map(|values| if values.is_empty() { time.as_ptr() } else { values.as_ptr() });
        move |row| {
            for values in columns {
                let at = values.wrapping_add(row);
                // SAFETY: whatever the address, nothing is read; every x86-64 has the instruction.
                unsafe {
                    _mm_prefetch::<_MM_HINT_T0>(at.cast());
                    _mm_prefetch::<_MM_HINT_T0>(at.wrapping_add(8).cast());
                }
            }
        }
    }

    compiled_with!(avx2, inner_avx2, "avx2");
    compiled_with!(avx512, inner_avx512, "avx512f,avx512dq,avx512vl,avx512bw,avx512cd");

    /// The pass with the newest instructions here.
    pub fn best() -> Option<Kernel> {
        let has_512 = is_x86_feature_detected!("avx512f")
            && is_x86_feature_detected!("avx512dq")
            && is_x86_feature_detected!("avx512vl")
            && is_x86_feature_detected!("avx512bw")
            && is_x86_feature_detected!("avx512cd");
        if has_512 {
            Some(avx512)
        } else if is_x86_feature_detected!("avx2") {
            Some(avx2)
        } else {
            None
        }
    }
}

/// The pass for this machine.
pub fn kernel() -> Kernel {
    #[cfg(target_arch = "x86_64")]
    if let Some(best) = x86_64::best() {
        return best;
    }
    any
}
