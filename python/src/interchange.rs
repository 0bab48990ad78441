//! `trainwright.interchange`: which parts interchange, matched sets, orders.

mod answer;
mod joint;
mod joints;
mod matched_set;
mod order;

pub use answer::{Answer, Reason};
pub use joint::{Joint, Machining, Meeting, cover_share};
pub use joints::Joints;
pub use matched_set::{MatchedSet, Price};
pub use order::{JointState, Order, Other};
