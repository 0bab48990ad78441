//! From the average time to a false alarm to the threshold of the sequential test.
