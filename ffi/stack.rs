//! End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.
