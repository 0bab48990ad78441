//! Mesh losses and circulating power.

use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::NamedTrain;
use trainwright::train as core;

use super::{Load, State};
use crate::error::raise;

/// A gear with its mesh losses.
#[pyclass(frozen, module = "trainwright.train")]
pub struct Losses {
    named: Arc<NamedTrain>,
    losses: core::Losses,
}

crate::class::explained!(Losses, ["train.losses"], , []);

#[pymethods]
impl Losses {
    /// Power that leaves at the driven side over the power that enters; 0 where the gear locks itself or jams.
    #[getter]
    fn efficiency(&self) -> f64 {
        self.losses.efficiency
    }

    /// Torque of the output over torque of the input, with losses.
    #[getter]
    fn torque_ratio(&self) -> f64 {
        self.losses.torque_ratio
    }

    /// Power lost in each set per unit of driving power.
    #[getter]
    fn set_loss<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        by_set(py, &self.named, &self.losses.set_loss)
    }

    /// Power through the meshes of each set per unit of driving power.
    #[getter]
    fn rolling_power<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        by_set(py, &self.named, &self.losses.rolling_power)
    }

    /// Rounds until the directions of power agreed with the losses they cause.
    #[getter]
    fn rounds(&self) -> u32 {
        self.losses.rounds
    }

    /// Whether they came to agree. If not, no direction of power balances: the gear jams.
    #[getter]
    fn converged(&self) -> bool {
        self.losses.converged
    }

    /// Whether the losses exceed the driving power: this side cannot drive the gear.
    #[getter]
    fn self_locking(&self) -> bool {
        self.losses.self_locking
    }

    fn __repr__(&self) -> String {
        let core::Losses { efficiency, torque_ratio, converged, self_locking, .. } = self.losses;
        let note = if !converged {
            ", jammed"
        } else if self_locking {
            ", self-locking"
        } else {
            ""
        };
        format!("<efficiency {efficiency:.4}, torque ratio {torque_ratio:.4}{note}>")
    }
}

/// Power in a gear without losses, per unit of input power.
#[pyclass(frozen, module = "trainwright.train")]
pub struct PowerFlow {
    named: Arc<NamedTrain>,
    flow: core::PowerFlow,
}

crate::class::explained!(PowerFlow, ["train.power_flow"], , []);

#[pymethods]
impl PowerFlow {
    /// Power through the meshes of each set, seen from its carrier.
    #[getter]
    fn rolling_power<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        by_set(py, &self.named, &self.flow.rolling_power)
    }

    /// Power that each set gives to its members; negative where it takes.
    #[getter]
    fn member_power<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let sets = PyDict::new(py);
        for (row, powers) in self.named.train.rows().iter().zip(self.flow.wheel_power) {
            let Some(set) = self.named.sets.get(usize::from(row.set)) else { continue };
            let members = match sets.get_item(&set.id)? {
                Some(members) => members.cast_into::<PyDict>()?,
                None => PyDict::new(py),
            };
            for (member, power) in row.members.into_iter().zip(powers) {
                let Some(name) = self.named.members.get(usize::from(member)) else { continue };
                let before = members.get_item(name)?.map_or(Ok(0.0), |power| power.extract::<f64>())?;
                members.set_item(name, before + power)?;
            }
            sets.set_item(&set.id, members)?;
        }
        Ok(sets)
    }

    /// Greatest power of a gear wheel or carrier. Above 1, power circulates.
    #[getter]
    fn largest(&self) -> f64 {
        self.flow.largest
    }

    fn __repr__(&self) -> String {
        format!("<largest power {:.3} of the input's>", self.flow.largest)
    }
}

fn by_set<'py>(py: Python<'py>, named: &NamedTrain, values: &[f64]) -> PyResult<Bound<'py, PyDict>> {
    let dict = PyDict::new(py);
    named.sets.iter().zip(values).try_for_each(|(set, value)| dict.set_item(&set.id, value))?;
    Ok(dict)
}

#[pymethods]
impl State {
    /// Efficiency of the gear with these efficiencies of an external and an internal mesh, in drive or coast.
    ///
    /// Source: rolling-power method (from memory of H. W. Müller, Epicyclic Drive Trains, 1982).
    #[pyo3(signature = (*, external, internal, load = Load(core::Load::Drive)))]
    fn losses(&self, external: f64, internal: f64, load: Load) -> PyResult<Losses> {
        let mesh = core::MeshEfficiency { external, internal };
        let losses = self.named.train.losses(&self.state, mesh, load.0).map_err(raise)?;
        Ok(Losses { named: self.named.clone(), losses })
    }

    /// Power that each member carries and that rolls through each set, without losses.
    /// Source: H. W. Müller (1982), rolling power and coupling power.
    fn power_flow(&self) -> PyResult<PowerFlow> {
        let flow = self.named.train.power_flow(&self.state).map_err(raise)?;
        Ok(PowerFlow { named: self.named.clone(), flow })
    }
}
