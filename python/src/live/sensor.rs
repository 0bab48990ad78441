//! Speed sensors.

use pyo3::prelude::*;
use trainwright::live as core;

use crate::array::{Input, Out, map};
use crate::class::{class, words};
use crate::error::answer;

words! {
    "source" SpeedSource = core::SpeedSource { Bus = "bus", Counted = "counted", Edges = "edges" }
}

class! {
    /// One speed sensor: how its speed comes and how well it is known. `bus`, `counted` and `edges` make one.
    ///
    /// >>> SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=8000.0).source
    /// 'bus'
    "trainwright.live" SpeedSensor = core::SpeedSensor, checked by core::SpeedSensor::checked {
        /// "bus", "counted" or "edges".
        source: SpeedSource,
        /// Pulses per revolution; 0 for a bus.
        teeth: u32 = 0_u32,
        /// Step of the values on a bus, 1/min; 0 else.
        step_rpm: f32 = 0.0,
        /// Standard deviation of one value besides its step, 1/min.
        noise_rpm: f32,
        /// Tick of the timer that stamps the edges, s; 0 else.
        tick_s: f32 = 0.0,
        /// The same value for longer than this, while the other speed moves, is stale, s.
        age_limit_s: f32,
        /// Greatest speed that can be, 1/min.
        greatest_rpm: f32,
    }
}

#[pymethods]
impl SpeedSensor {
    /// A value on a bus: its step and its noise, 1/min.
    #[staticmethod]
    #[pyo3(signature = (*, step_rpm, noise_rpm, age_limit_s, greatest_rpm))]
    fn bus(step_rpm: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> PyResult<Self> {
        answer(core::SpeedSensor::bus(step_rpm, noise_rpm, age_limit_s, greatest_rpm))
    }

    /// Pulses counted between two samples.
    #[staticmethod]
    #[pyo3(signature = (*, teeth, noise_rpm, age_limit_s, greatest_rpm))]
    fn counted(teeth: u32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> PyResult<Self> {
        answer(core::SpeedSensor::counted(teeth, noise_rpm, age_limit_s, greatest_rpm))
    }

    /// Pulses whose edges a timer with this tick stamps.
    #[staticmethod]
    #[pyo3(signature = (*, teeth, tick_s, noise_rpm, age_limit_s, greatest_rpm))]
    fn edges(teeth: u32, tick_s: f32, noise_rpm: f32, age_limit_s: f32, greatest_rpm: f32) -> PyResult<Self> {
        answer(core::SpeedSensor::edges(teeth, tick_s, noise_rpm, age_limit_s, greatest_rpm))
    }

    /// The uncertainty of the sensor by its causes.
    fn spread(&self) -> PyResult<SpeedSpread> {
        answer(self.0.spread())
    }

    /// Standard uncertainty of the mean speed over a window, 1/min, from the way the sensor works. `rpm` is the speed,
    /// `values` how many there are in the window.
    /// Source: Widrow and Kollár, Quantization Noise (from memory); ends of a window as in `train.counted_ratio` (derived).
    ///
    /// >>> sensor = SpeedSensor.counted(teeth=30, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
    /// >>> round(sensor.u_rpm(rpm=1138.4, window_s=0.05, values=1), 2)
    /// 16.33
    #[pyo3(signature = (*, rpm, window_s, values, out = None))]
    fn u_rpm<'py>(
        &self,
        py: Python<'py>,
        rpm: Input<'py>,
        window_s: Input<'py>,
        values: u32,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("rpm", rpm), ("window_s", window_s)], out, |[rpm, window_s]| {
            self.0.u_rpm(rpm as f32, window_s as f32, values).map(f64::from)
        })
    }
}

class! {
    /// The uncertainty of a sensor by its causes.
    "trainwright.live" SpeedSpread = core::SpeedSpread {
        /// What no number of values takes away, 1/min.
        lasting_rpm: f32,
        /// Of one value, 1/min; falls with the root of their number.
        value_rpm: f32,
        /// Of the turns counted in a window: both ends cut a pulse.
        turns: f32,
        /// Of the time between the first and the last edge of a window, s.
        time_s: f32,
    }
}

#[pymethods]
impl SpeedSpread {
    /// Square of the standard uncertainty of a mean over a window, (1/min)², from `values` of them.
    #[pyo3(signature = (*, rpm, window_s, values))]
    fn variance(&self, rpm: f32, window_s: f32, values: f32) -> f32 {
        self.0.variance(rpm, window_s, values)
    }
}

class! {
    /// Both speeds of a ratio, read at the same times.
    "trainwright.live" SpeedPair = core::SpeedPair {
        /// Input speed.
        input: SpeedSpread,
        /// Output speed.
        output: SpeedSpread,
        /// Time from value to value, s.
        sample_s: f32,
    }
}

#[pymethods]
impl SpeedPair {
    /// Square of the relative standard uncertainty of a ratio over a window.
    #[pyo3(signature = (*, input_rpm, output_rpm, window_s))]
    fn ratio_variance(&self, input_rpm: f32, output_rpm: f32, window_s: f32) -> f32 {
        self.0.ratio_variance(input_rpm, output_rpm, window_s)
    }

    /// Shortest window, s, whose ratio has the wanted relative standard uncertainty.
    /// Source: `u_rpm` of both speeds, solved for the window (derived).
    ///
    /// >>> input = SpeedSensor.counted(teeth=40, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
    /// >>> output = SpeedSensor.counted(teeth=30, noise_rpm=0.0, age_limit_s=0.1, greatest_rpm=8000.0)
    /// >>> pair = SpeedPair(input=input.spread(), output=output.spread(), sample_s=0.01)
    /// >>> pair.ratio_window_s(input_rpm=2000.0, ratio=[65 / 37, 4.2521], u_rel=0.01).round(3)
    /// array([0.078, 0.176])
    #[pyo3(signature = (*, input_rpm, ratio, u_rel, out = None))]
    fn ratio_window_s<'py>(
        &self,
        py: Python<'py>,
        input_rpm: Input<'py>,
        ratio: Input<'py>,
        u_rel: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("input_rpm", input_rpm), ("ratio", ratio), ("u_rel", u_rel)];
        map(py, columns, out, |row| {
            let [input_rpm, ratio, u_rel] = row.map(|value| value as f32);
            self.0.ratio_window_s(input_rpm, ratio, u_rel).map(f64::from)
        })
    }
}

/// Greatest error, 1/min, that rounding to a step leaves in the mean of any number of values with this noise.
/// Source: Widrow and Kollár, Quantization Noise (from memory); the bound on the series is derived.
///
/// >>> step_bias_rpm(step_rpm=8.0, noise_rpm=0.0)
/// 4.0
#[pyfunction]
#[pyo3(signature = (*, step_rpm, noise_rpm, out = None))]
pub fn step_bias_rpm<'py>(
    py: Python<'py>,
    step_rpm: Input<'py>,
    noise_rpm: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("step_rpm", step_rpm), ("noise_rpm", noise_rpm)], out, |[step_rpm, noise_rpm]| {
        core::step_bias_rpm(step_rpm as f32, noise_rpm as f32).map(f64::from)
    })
}

/// Average number of values until a one-sided cumulative sum alarms; with a shift of 0 until it alarms falsely. All in standard
/// deviations of one value.
/// Source: Siegmund, Sequential Analysis (from memory), its overshoot fitted to the exact integral equation (derived).
///
/// >>> round(run_length(threshold=4.0, reference=0.5, shift=0.0), 1)
/// 335.5
#[pyfunction]
#[pyo3(signature = (*, threshold, reference, shift, out = None))]
pub fn run_length<'py>(
    py: Python<'py>,
    threshold: Input<'py>,
    reference: Input<'py>,
    shift: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("threshold", threshold), ("reference", reference), ("shift", shift)], out, |row| {
        let [threshold, reference, shift] = row.map(|value| value as f32);
        core::run_length(threshold, reference, shift).map(f64::from)
    })
}

/// Threshold of a one-sided cumulative sum with this average number of values to a false alarm.
/// Source: `run_length`, solved by halving.
///
/// >>> round(threshold_for(run_length=740.8, reference=0.5), 2)
/// 4.77
#[pyfunction]
#[pyo3(signature = (*, run_length, reference, out = None))]
pub fn threshold_for<'py>(
    py: Python<'py>,
    run_length: Input<'py>,
    reference: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("run_length", run_length), ("reference", reference)], out, |[run_length, reference]| {
        core::threshold_for(run_length as f32, reference as f32).map(f64::from)
    })
}
