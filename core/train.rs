//! Gear trains: exact ratios, member speeds, torque shares, losses, states and their diagnosis.
