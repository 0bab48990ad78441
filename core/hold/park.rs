//! Park gear and pawl on a grade.
