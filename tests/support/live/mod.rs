//! A simulated truck, its sensors and their faults, for the tests and benches of `live`.
#![allow(dead_code)]

pub mod drive;
pub mod false_alarms;
pub mod faults;
pub mod random;
pub mod sensors;
pub mod watch;
