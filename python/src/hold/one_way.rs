//! One-way clutches.
