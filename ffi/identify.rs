//! Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.
