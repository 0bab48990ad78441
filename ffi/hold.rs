//! What holds: one-way clutches, park gear and pawl, thrust bearings, bushings, shafts, splines; capacity against demand.
