//! `tw_converter_*`: torque converters: characteristic, match with an engine, stall, lock-up slip.
