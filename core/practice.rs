//! Values known only as common practice of the trade, no source. Nothing takes them by default: name them.
