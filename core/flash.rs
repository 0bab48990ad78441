//! The flash image: a record that firmware loads without alloc.
