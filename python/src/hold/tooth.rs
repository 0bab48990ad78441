//! Bending of a spur tooth.
