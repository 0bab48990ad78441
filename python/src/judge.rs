//! `trainwright.judge`: readings, limits and decisions.

mod decision;
mod distribution;
mod propagation;
mod reading;
mod rule;
mod turning;

pub use decision::{Judgment, Settlement, Verdict, chance_inside, judge, settle, settle_by};
pub use distribution::{coverage_factor, normal_cdf, normal_quantile, student_cdf, student_quantile};
pub use propagation::{Budget, Expanded, Input, combine, combine_correlated, effective_freedom, expand, propagate};
pub use reading::{Limits, Reading, Repeated, mean_of};
pub use rule::Rule;
pub use turning::{Turning, turning_value};
