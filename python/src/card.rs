//! Formula cards.

use pyo3::prelude::*;
use trainwright::card as core;

use crate::error::refuse;

/// A formula: what it computes, its equation, symbols, range and source.
#[pyclass(frozen, module = "trainwright")]
pub struct Card(pub &'static core::Card);

#[pymethods]
impl Card {
    /// Chapter and function, `"clutch.capacity"`.
    #[getter]
    fn id(&self) -> &'static str {
        self.0.id
    }

    /// What it computes, in one line.
    #[getter]
    fn purpose(&self) -> &'static str {
        self.0.purpose
    }

    /// The equation, in the source's symbols.
    #[getter]
    fn equation(&self) -> &'static str {
        self.0.equation
    }

    /// Meaning and unit of each symbol.
    #[getter]
    fn symbols(&self) -> Vec<Symbol> {
        self.0.symbols.iter().map(Symbol).collect()
    }

    /// Range of validity, and what lies outside it.
    #[getter]
    fn range(&self) -> &'static str {
        self.0.range
    }

    /// The work it comes from.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source)
    }

    /// Equation, table or clause in that work.
    #[getter]
    fn locator(&self) -> &'static str {
        self.0.locator
    }

    fn __repr__(&self) -> String {
        format!("trainwright.card({:?})", self.0.id)
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __reduce__(&self, py: Python<'_>) -> PyResult<(Py<PyAny>, (&'static str,))> {
        Ok((py.import("trainwright")?.getattr("card")?.unbind(), (self.0.id,)))
    }

    fn __eq__(&self, other: &Self) -> bool {
        self.0 == other.0
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.0.id.into_pyobject(py)?.hash()
    }
}

/// One symbol of an equation.
#[pyclass(frozen, module = "trainwright")]
pub struct Symbol(&'static core::Symbol);

#[pymethods]
impl Symbol {
    /// As written in the equation.
    #[getter]
    fn symbol(&self) -> &'static str {
        self.0.symbol
    }

    /// The field or parameter that carries it.
    #[getter]
    fn meaning(&self) -> &'static str {
        self.0.meaning
    }

    /// Unit, `"1"` for a pure number.
    #[getter]
    fn unit(&self) -> &'static str {
        self.0.unit
    }

    fn __repr__(&self) -> String {
        format!("<{}: {} [{}]>", self.0.symbol, self.0.meaning, self.0.unit)
    }
}

/// A work that a formula comes from.
#[pyclass(frozen, module = "trainwright")]
pub struct Source(&'static core::Source);

#[pymethods]
impl Source {
    /// Short key.
    #[getter]
    fn id(&self) -> &'static str {
        self.0.id
    }

    /// Author or body, title, edition.
    #[getter]
    fn work(&self) -> &'static str {
        self.0.work
    }

    /// How the project knows it: `"read"`, `"memory"`, `"derived"` or `"practice"`.
    #[getter]
    fn known(&self) -> &'static str {
        match self.0.known {
            core::Known::Read => "read",
            core::Known::Memory => "memory",
            core::Known::Derived => "derived",
            core::Known::Practice => "practice",
        }
    }

    fn __repr__(&self) -> String {
        format!("<{} ({})>", self.0.work, self.known())
    }
}

/// The card of a formula: its equation, symbols, range and source.
///
/// >>> print(trainwright.card("judge.chance_inside").equation)
/// p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
#[pyfunction]
pub fn card(id: &str) -> PyResult<Card> {
    core::find(id)
        .map(Card)
        .ok_or_else(|| refuse("MISSING", "id", format!("id = {id:?}: no such card; trainwright.cards() lists them")))
}

/// All formula cards, chapter by chapter.
///
/// >>> "judge.chance_inside" in [card.id for card in trainwright.cards()]
/// True
#[pyfunction]
pub fn cards() -> Vec<Card> {
    core::CARDS.iter().copied().flatten().map(Card).collect()
}
