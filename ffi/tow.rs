//! `tw_tow_*`: what a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.

pub mod climb;
pub mod criteria;
pub mod heat;
pub mod launch;
pub mod limits;
pub mod loads;
pub mod pull;
pub mod ratings;
