//! `tw_hydraulic_*`: pump, orifices, valves, line pressure needed and available, cooler flow.
