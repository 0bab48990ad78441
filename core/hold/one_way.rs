//! One-way clutches: rollers, sprags and ratchets.
