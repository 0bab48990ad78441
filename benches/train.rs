//! Benchmarks of the gear-train chapter.
fn main() {}
