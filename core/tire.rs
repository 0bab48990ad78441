//! Tire size designations, diameters, rolling circumference, load index and speed symbol.
