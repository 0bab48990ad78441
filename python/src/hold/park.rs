//! Park gear and pawl.
