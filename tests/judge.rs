//! The judge chapter against its sources.
