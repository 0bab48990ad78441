//! `tw_hold_*`: what holds; capacity against demand. A computed capacity is not a rating.

pub mod compare;
pub mod contact;
pub mod mesh;
pub mod one_way;
pub mod park;
pub mod shaft;
pub mod spline;
pub mod thrust;
pub mod tooth;
pub mod washer;
