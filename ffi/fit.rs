//! Round fits: clearance and interference, cold and hot, pressed bushings, ISO 286 limits, load and leakage.
