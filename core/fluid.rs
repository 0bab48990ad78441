//! Transmission fluid: density, viscosity, volume, mixing, level and fill.
