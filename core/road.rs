//! From shaft to road and back: axle, shift points, speedometer, road load, grade, air.
