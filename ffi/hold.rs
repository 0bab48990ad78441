//! `tw_hold_*`: what holds; capacity against demand. A computed capacity is not a rating.

pub mod contact;
pub mod one_way;
pub mod park;
pub mod tooth;
