//! # trainwright
//!
//! Calculations for the whole job of an automatic-transmission rebuild shop. Each chapter has one name, the same in Rust,
//! C (`tw_<chapter>_<function>`) and Python (`trainwright.<chapter>.<function>`).
//!
//! | chapter | holds | may use |
//! |---|---|---|
//! | [`error`] | the one error enum | - |
//! | [`units`] | unit table, conversion factors | error |
//! | [`card`] | formula cards, bibliography, worked explanations | units |
//! | [`hazard`] | what can hurt someone, with a caution to print | - |
//! | [`judge`] | readings, limits, decisions, propagation | above |
//! | [`train`] | gear trains: exact ratios, speeds, torque shares, states, losses, diagnosis | judge |
//! | [`tire`] | size designations, diameters, rolling circumference, load index, speed symbol | units, judge |
//! | [`road`] | axle and shaft speeds, shift points, speedometer, road load, grade, air | tire |
//! | [`converter`] | torque converters: characteristic, engine match, stall, lock-up slip | train, road |
//! | [`fluid`] | density, viscosity, volume, mixing, level and fill | judge |
//! | [`clutch`] | apply force, capacity, pressure for a torque, bands, shift energy | train, fluid |
//! | [`fit`] | fits cold and hot, pressed bushings, ISO 286 limits, bushing load and leakage | judge |
//! | [`hydraulic`] | pump, orifices, valves, line pressure needed and available, cooler flow | fluid, clutch, fit |
//! | [`stack`] | end play, clutch clearance, choice of shim and ring, what to measure first | fit |
//! | [`interchange`] | which parts interchange, in which direction; smallest matched sets | fit |
//! | [`identify`] | weighing evidence, posterior by part, mixed units, next best look | judge |
//! | [`hold`] | one-way clutches, park lock, thrust bearings, shafts, splines: capacity against demand; variants compared | train, clutch |
//! | [`tow`] | combination loads and ratings, load per gear and grade, launch, heat on a grade | road, converter, clutch, hold |
//! | [`duty`] | cycle counting, damage per element and mesh, fluid life, rank with an interval, screening of rows | tow |
//! | [`live`] | gear in effect, slip, shifts and alarms from speeds as they come, sample by sample, in `f32` | judge |
//! | [`practice`] | values known only as common practice, taken by name | - |
//! | [`flash`] | the image of a record that firmware loads without alloc | all |
//! | [`record`] (feature `record`) | TOML records, their schema, and the way into a flash image | all |
#![no_std]
#![forbid(unsafe_code)]

#[cfg(feature = "record")]
extern crate std;

mod real;

pub mod card;
pub mod clutch;
pub mod converter;
pub mod duty;
pub mod error;
pub mod fit;
pub mod flash;
pub mod fluid;
pub mod hazard;
pub mod hold;
pub mod hydraulic;
pub mod identify;
pub mod interchange;
pub mod judge;
pub mod live;
pub mod practice;
#[cfg(feature = "record")]
pub mod record;
pub mod road;
pub mod stack;
pub mod tire;
pub mod tow;
pub mod train;
pub mod units;

pub use error::{Error, Result};

/// The Rust example of the front page, run as a test.
#[cfg(all(doctest, feature = "record"))]
#[doc = include_str!("../README.md")]
pub struct Readme;
