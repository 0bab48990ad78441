//! Choice of a shim, ring or plate from what can be had.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::Selectable;
use trainwright::stack as core;

use super::AxialGrowth;
use crate::array::{Rows, map_all};
use crate::class::{class, words};
use crate::error::{answer, refuse};
use crate::judge::{Judgment, Limits, Reading, Rule};

words! {
    "by" ChoiceRule = core::ChoiceRule { NearestTarget = "nearest target", LeastRisk = "least risk" }
}

class! {
    /// A shim, ring or plate on the list.
    "trainwright.stack" Piece = core::Piece {
        /// Thickness and its standard uncertainty, mm.
        thickness_mm: Reading,
        /// It can be had. What cannot is shown, but not chosen.
        in_stock: bool = true,
    }
}

class! {
    /// What a piece is chosen for, and how.
    ///
    /// >>> end_play = Selection(room_mm=Reading(value=2.153, u=0.0297), window_mm=Limits(lower=0.20, upper=0.60), target_mm=0.36,
    /// ...     rule=judge.Rule.stated_chances(go=0.95, no_go=0.05), by="least risk")
    /// >>> shims = [Piece(thickness_mm=Reading(value=size, u=0.012)) for size in (1.55, 1.70, 1.85, 2.00)]
    /// >>> choice = end_play.choose(shims)
    /// >>> choice.least_risk, choice.nearest_target
    /// (1, 2)
    /// >>> end_play.outcome(shims[1]).cold.reading.value
    /// 0.453
    "trainwright.stack" Selection = core::Selection {
        /// What is left with no piece in place, mm: the result of a chain without it.
        room_mm: Reading,
        /// End play or clearance wanted at assembly, mm; both limits.
        window_mm: Limits,
        /// End play or clearance aimed at, mm, within the window.
        target_mm: f64,
        /// Change from assembly to hot, mm.
        growth_mm: Reading = unchanged(),
        /// End play or clearance wanted hot, mm; open on both sides where the hot value is only shown.
        hot_window_mm: Limits = anything(),
        /// Rule of the judgments.
        rule: Rule,
        /// Rule of the choice: "nearest target" or "least risk".
        by: ChoiceRule,
        /// The choice looks at cold and hot together.
        hot_counts: bool = false,
    }
}

fn unchanged() -> Reading {
    Reading(trainwright::judge::Reading { value: 0.0, u: 0.0 })
}

fn anything() -> Limits {
    Limits(trainwright::judge::Limits { lower: f64::NEG_INFINITY, upper: f64::INFINITY })
}

class! {
    /// What one piece leaves.
    "trainwright.stack" PieceOutcome = core::PieceOutcome, explained by ["stack.outcome"], judged in "mm" {
        /// The piece.
        piece: Piece,
        /// End play or clearance at assembly against its window, mm.
        cold: Judgment,
        /// The same hot, mm.
        hot: Judgment,
        /// Distance of the cold value from the target, mm.
        off_target_mm: f64,
        /// Distance of the cold value from the middle of its window, mm.
        off_middle_mm: f64,
        /// Chance that the choice counts: of the cold window, or at least that of both windows.
        chance: f64,
        /// The best estimates lie inside what the choice counts.
        inside: bool,
    }
}

class! {
    /// Which piece to fit. Positions count from 0, and mean nothing unless a piece was found.
    "trainwright.stack" PieceChoice = core::PieceChoice, explained by ["stack.choose"] {
        /// A piece in stock lands inside.
        found: bool,
        /// The piece to fit by the rule asked for.
        position: u32,
        /// The piece by nearest target.
        nearest_target: u32,
        /// The piece by least risk.
        least_risk: u32,
        /// A piece that is not in stock would be chosen before it.
        missing_better: bool,
        /// Position of that piece; counts only with `missing_better`.
        missing: u32,
        /// Thickness that would hit the target, mm.
        wanted_mm: f64,
        /// Thicknesses that land inside, mm; lower +∞ and upper −∞ if none can.
        inside_mm: Limits,
        /// Thicknesses that would be a GO at this uncertainty, mm.
        go_mm: Limits,
    }
}

/// What a record lists to choose from, and what for.
///
/// >>> PieceList(window_mm=Limits(lower=1.40, upper=2.00), target_mm=1.70, pieces=[Piece(thickness_mm=Reading(value=3.40, u=0.015))])
/// <1 piece, 3.4 mm, for 1.4 to 2 mm, 1.7 aimed at>
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.stack")]
#[derive(Clone, PartialEq)]
pub struct PieceList(Selectable);

impl From<Selectable> for PieceList {
    fn from(list: Selectable) -> Self {
        Self(list)
    }
}

#[pymethods]
impl PieceList {
    #[new]
    #[pyo3(signature = (*, window_mm, target_mm, pieces))]
    fn new(window_mm: Limits, target_mm: f64, pieces: Vec<Piece>) -> Self {
        Self(Selectable { window_mm: window_mm.0, target_mm, pieces: plain(pieces) })
    }

    /// End play or clearance wanted, mm.
    #[getter]
    fn window_mm(&self) -> Limits {
        self.0.window_mm.into()
    }

    /// End play or clearance aimed at, mm.
    #[getter]
    fn target_mm(&self) -> f64 {
        self.0.target_mm
    }

    /// The list, by rising thickness.
    #[getter]
    fn pieces(&self) -> Vec<Piece> {
        self.0.pieces.iter().copied().map(Piece).collect()
    }

    /// The list with these thicknesses, mm, out of stock. A thickness that it does not have is refused.
    fn without(&self, missing_mm: Vec<f64>) -> PyResult<Self> {
        let mut list = self.clone();
        for missing in missing_mm {
            let near = |piece: &&mut core::Piece| (piece.thickness_mm.value - missing).abs() < 1e-6;
            let Some(piece) = list.0.pieces.iter_mut().find(near) else {
                let message = format!("missing_mm = {missing}: the list has {} mm", self.sizes());
                return Err(refuse("MISSING", "missing_mm", message));
            };
            piece.in_stock = false;
        }
        Ok(list)
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        let fields = PyDict::new(py);
        fields.set_item("window_mm", self.window_mm())?;
        fields.set_item("target_mm", self.target_mm())?;
        fields.set_item("pieces", self.pieces())?;
        Ok(((), fields))
    }

    fn __repr__(&self) -> String {
        let Selectable { window_mm, target_mm, pieces } = &self.0;
        let count = pieces.len();
        format!(
            "<{count} piece{}, {} mm, for {} to {} mm, {target_mm} aimed at>",
            if count == 1 { "" } else { "s" },
            self.sizes(),
            window_mm.lower,
            window_mm.upper
        )
    }
}

impl PieceList {
    fn sizes(&self) -> String {
        self.0.pieces.iter().map(|piece| piece.thickness_mm.value.to_string()).collect::<Vec<_>>().join(", ")
    }
}

class! {
    /// What warming up does to the end play, as a record states it, and what is wanted then.
    "trainwright.stack" HotPlay = trainwright::record::HotPlay {
        /// The lengths and expansions.
        growth: AxialGrowth,
        /// Temperature of the warm unit, °C.
        temp_c: f64,
        /// End play wanted hot, mm; open on both sides where the record states none.
        window_mm: Limits,
    }
}

#[pymethods]
impl Selection {
    /// What one piece leaves, cold and hot, judged.
    /// Source: JCGM 100:2008, equation 10; JCGM 106:2012, equation 12 for the chances.
    fn outcome(&self, piece: Piece) -> PyResult<PieceOutcome> {
        answer(self.0.outcome(piece.0))
    }

    /// Which piece to fit, by the rule asked for and by the other one. Where none in stock lands inside, `found` is False and
    /// the thicknesses that would do are given.
    /// Source: follows from the definitions (the two rules of choice).
    fn choose(&self, pieces: Vec<Piece>) -> PyResult<PieceChoice> {
        answer(self.0.choose(&plain(pieces)))
    }

    /// The piece that `choose` would fit for each of many rooms: a dictionary of position, thickness_mm, value_mm, u_mm (what it
    /// leaves) and chance. `room_mm` takes the place of the selection's own: columns value and u. A room for which nothing in
    /// stock lands inside is NaN.
    ///
    /// >>> rings = Selection(room_mm=Reading(value=0, u=0), window_mm=Limits(lower=1.40, upper=2.00), target_mm=1.70,
    /// ...     rule=judge.Rule.stated_chances(go=0.95, no_go=0.05), by="nearest target")
    /// >>> sizes = [Piece(thickness_mm=Reading(value=size, u=0.015)) for size in (2.90, 3.15, 3.40, 3.65)]
    /// >>> rings.pick(sizes, room_mm={"value": [4.70, 5.17], "u": 0.019})["thickness_mm"]
    /// array([2.9, 3.4])
    #[pyo3(signature = (pieces, *, room_mm))]
    fn pick<'py>(
        &self,
        py: Python<'py>,
        pieces: Vec<Piece>,
        room_mm: Rows<'py, Reading>,
    ) -> PyResult<Bound<'py, PyDict>> {
        let pieces = plain(pieces);
        let columns = map_all(py, room_mm.columns()?, None, |[value, u]| {
            let room_mm = trainwright::judge::Reading { value, u };
            let picked = core::Selection { room_mm, ..self.0 }.pick(&pieces)?;
            let core::PickedPiece { position, thickness_mm, result_mm, chance } = picked;
            Ok([f64::from(position), thickness_mm.value, result_mm.value, result_mm.u, chance])
        })?;
        let picked = PyDict::new(py);
        for (name, column) in ["position", "thickness_mm", "value_mm", "u_mm", "chance"].into_iter().zip(columns) {
            picked.set_item(name, column)?;
        }
        Ok(picked)
    }
}

fn plain(pieces: Vec<Piece>) -> Vec<core::Piece> {
    pieces.into_iter().map(|piece| piece.0).collect()
}
