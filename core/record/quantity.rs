//! Shapes that recur in every file: a pair of limits, a value per variant, a best value with its uncertainty.

use core::ops::Deref;
use std::string::String;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::judge::{Limits, Reading};

/// `[min, max]`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
#[schemars(extend("x-order" = "not_falling"))]
pub struct Pair(pub [f64; 2]);

/// `[min, max]` of something that cannot be negative: a size, a force, a pressure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
#[schemars(extend("x-order" = "not_falling", "x-least" = 0))]
pub struct Size(pub [f64; 2]);

impl Pair {
    /// Both as limits.
    #[must_use]
    pub fn limits(self) -> Limits {
        let [lower, upper] = self.0;
        Limits { lower, upper }
    }
}

impl Size {
    /// Both as limits.
    #[must_use]
    pub fn limits(self) -> Limits {
        Pair(self.0).limits()
    }

    /// Middle of the pair.
    #[must_use]
    pub fn middle(self) -> f64 {
        let [lower, upper] = self.0;
        lower + (upper - lower) / 2.0
    }
}

/// One value for every variant of the family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
#[schemars(extend("x-refers" = "variant", "x-complete" = true))]
pub struct PerVariant<T>(pub IndexMap<String, T>);

impl<T> Deref for PerVariant<T> {
    type Target = IndexMap<String, T>;

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

/// A best value with its standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Estimate {
    /// Best value.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub best: f64,
    /// Standard uncertainty (k = 1).
    #[schemars(range(min = 0))]
    pub u: f64,
}

impl Estimate {
    /// As a reading.
    #[must_use]
    pub fn reading(self) -> Reading {
        Reading { value: self.best, u: self.u }
    }
}
