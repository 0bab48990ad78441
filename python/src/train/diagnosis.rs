//! Failure signatures and their inverse.

use pyo3::prelude::*;
use trainwright::record::NamedGear;
use trainwright::train as core;

use super::{Load, StateKind, Train, exact};
use crate::class::words;
use crate::error::{raise, refuse};
use crate::judge::Reading;

words! {
    "failure" Failure = core::Failure { Dead = "dead", Stuck = "stuck" }
}

words! {
    "seen" Response = core::Response {
        AsCommanded = "as commanded",
        OtherRatio = "other ratio",
        NoDrive = "no drive",
        Drives = "drives",
        TiedUp = "tied up",
    }
}

/// What a commanded gear does with a failed element.
#[pyclass(frozen, module = "trainwright.train")]
pub struct Symptom(core::Symptom);

crate::class::explained!(Symptom, ["train.symptom"], , []);

#[pymethods]
impl Symptom {
    /// Under drive: `"as commanded"`, `"other ratio"`, `"no drive"`, `"drives"` (a neutral that creeps) or `"tied up"`.
    #[getter]
    fn drive(&self) -> Response {
        Response(self.0.drive)
    }

    /// When the vehicle drives the input; `"drives"` is engine braking where the gear should coast.
    #[getter]
    fn coast(&self) -> Response {
        Response(self.0.coast)
    }

    /// State under drive.
    #[getter]
    fn kind(&self) -> StateKind {
        StateKind(self.0.kind)
    }

    /// Ratio shown under drive; `None` where the state is not a gear.
    #[getter]
    fn ratio(&self) -> Option<f64> {
        self.0.ratio.value()
    }

    /// The ratio as a `fractions.Fraction`.
    #[getter]
    fn ratio_exact<'py>(&self, py: Python<'py>) -> PyResult<Option<Bound<'py, PyAny>>> {
        exact(py, self.0.ratio)
    }

    fn __repr__(&self) -> String {
        let ratio = self.0.ratio.value().map_or(String::new(), |ratio| format!(", ratio {ratio:.4}"));
        format!("<drive: {}{ratio}; coast: {}>", self.drive().word(), self.coast().word())
    }
}

/// What a fault does to the gears of the record, by their names.
#[pyclass(frozen, module = "trainwright.train")]
pub struct Signature {
    element: String,
    signature: core::Signature,
    gears: Vec<String>,
}

impl Signature {
    fn ids(&self, mask: u32) -> Vec<&str> {
        let bits = (0..u32::BITS).map(|bit| 1 << bit);
        self.gears.iter().zip(bits).filter(|(_, bit)| mask & bit != 0).map(|(id, _)| id.as_str()).collect()
    }
}

#[pymethods]
impl Signature {
    /// The failed element.
    #[getter]
    fn element(&self) -> &str {
        &self.element
    }

    /// `"dead"` or `"stuck"`.
    #[getter]
    fn failure(&self) -> Failure {
        Failure(self.signature.fault.failure)
    }

    /// Gears that are lost, in drive or in braking.
    #[getter]
    fn lost(&self) -> Vec<&str> {
        self.ids(self.signature.lost())
    }

    /// Gears without drive.
    #[getter]
    fn no_drive(&self) -> Vec<&str> {
        self.ids(self.signature.no_drive)
    }

    /// Gears that drive but no longer brake.
    #[getter]
    fn no_braking(&self) -> Vec<&str> {
        self.ids(self.signature.no_braking)
    }

    /// Gears that show another ratio.
    #[getter]
    fn other_ratio(&self) -> Vec<&str> {
        self.ids(self.signature.other_ratio)
    }

    /// Neutral that creeps.
    #[getter]
    fn creeps(&self) -> Vec<&str> {
        self.ids(self.signature.creeps)
    }

    /// Gears that brake where they should coast.
    #[getter]
    fn brakes(&self) -> Vec<&str> {
        self.ids(self.signature.brakes)
    }

    /// Gears that tie up.
    #[getter]
    fn tied_up(&self) -> Vec<&str> {
        self.ids(self.signature.tied_up)
    }

    fn __repr__(&self) -> String {
        format!("<{} {}: lost {}>", self.element, self.failure().word(), self.lost().join(" "))
    }
}

/// One element that may explain what was seen.
#[pyclass(frozen, module = "trainwright.train")]
pub struct Suspect {
    element: String,
    suspect: core::Suspect,
}

crate::class::explained!(Suspect, ["train.diagnose"], , []);

#[pymethods]
impl Suspect {
    /// The element.
    #[getter]
    fn element(&self) -> &str {
        &self.element
    }

    /// `"dead"` or `"stuck"`.
    #[getter]
    fn failure(&self) -> Failure {
        Failure(self.suspect.fault.failure)
    }

    /// 1 for the first; suspects that explain the observations equally well share a rank.
    #[getter]
    fn rank(&self) -> u8 {
        self.suspect.rank
    }

    /// Faults seen that this one shows.
    #[getter]
    fn matched(&self) -> u8 {
        self.suspect.matched
    }

    /// Faults seen in gears that this one leaves alone.
    #[getter]
    fn missed(&self) -> u8 {
        self.suspect.missed
    }

    /// Gears in which this one would show something else than was seen.
    #[getter]
    fn contradicted(&self) -> u8 {
        self.suspect.contradicted
    }

    /// Gears seen to be right that this one leaves right.
    #[getter]
    fn agreed(&self) -> u8 {
        self.suspect.agreed
    }

    fn __repr__(&self) -> String {
        let core::Suspect { rank, matched, missed, contradicted, agreed, .. } = self.suspect;
        let (element, failure) = (&self.element, self.failure().word());
        format!(
            "<{rank}. {element} {failure}: {matched} matched, {missed} missed, {contradicted} contradicted, {agreed} agreed>"
        )
    }
}

/// The gear to try next, and what each suspect would show there.
#[pyclass(frozen, module = "trainwright.train")]
pub struct NextGear {
    gear: String,
    next: core::NextGear,
    shown: Vec<core::Symptom>,
}

crate::class::explained!(NextGear, ["train.next_gear"], , []);

#[pymethods]
impl NextGear {
    /// Name of the gear.
    #[getter]
    fn gear(&self) -> &str {
        &self.gear
    }

    /// Whether to look under `"drive"` or in `"coast"`.
    #[getter]
    fn load(&self) -> Load {
        Load(self.next.load)
    }

    /// What its outcome tells, bit: 1 halves the suspects.
    #[getter]
    fn information_bit(&self) -> f64 {
        self.next.information_bit
    }

    /// Different outcomes among the suspects, 2 or more.
    #[getter]
    fn outcomes(&self) -> u32 {
        self.next.outcomes
    }

    /// Suspects with which the gear would tie up: try it standing, on the lift, or not at all.
    #[getter]
    fn tie_ups(&self) -> u32 {
        self.next.tie_ups
    }

    /// What each suspect shows there, in the order in which they were given.
    #[getter]
    fn shown(&self) -> Vec<Symptom> {
        self.shown.iter().map(|&symptom| Symptom(symptom)).collect()
    }

    fn __repr__(&self) -> String {
        let core::NextGear { information_bit, outcomes, .. } = self.next;
        format!("<gear {} in {}: {outcomes} outcomes, {information_bit:.2} bit>", self.gear, self.load().word())
    }
}

/// A gear that was tried: its name, or its name and the load.
#[derive(FromPyObject)]
enum Tried {
    Loaded(String, Load),
    Driven(String),
}

/// What was seen in one gear: its name, then `"no drive"`, `"as commanded"`...; optionally the load and the measured ratio.
#[derive(FromPyObject)]
enum Observed {
    Full(String, Response, Load, Reading),
    Loaded(String, Response, Load),
    Short(String, Response),
}

impl Train {
    fn fault(&self, element: &str, failure: Failure) -> PyResult<core::ElementFault> {
        let place = self.named.elements.iter().position(|known| known == element).ok_or_else(|| {
            let known = self.named.elements.join(", ");
            refuse("MISSING", "element", format!("element: the train has no element {element:?}; it has {known}"))
        })?;
        Ok(core::ElementFault { element: place as u8, failure: failure.0 })
    }

    fn gear_named(&self, id: &str) -> PyResult<core::Commanded> {
        self.named.gear(id).map(commanded).ok_or_else(|| {
            let known: Vec<_> = self.named.gears.iter().map(|gear| gear.id.as_str()).collect();
            refuse("MISSING", "gear", format!("gear: the train has no gear {id:?}; it has {}", known.join(", ")))
        })
    }

    /// The gears of the record as they are commanded.
    pub(super) fn commanded(&self) -> Vec<core::Commanded> {
        self.named.gears.iter().map(commanded).collect()
    }

    /// Names of the gears of a mask.
    pub(super) fn gear_ids(&self, mask: u32) -> Vec<String> {
        let bits = (0..u32::BITS).map(|bit| 1 << bit);
        self.named.gears.iter().zip(bits).filter(|(_, bit)| mask & bit != 0).map(|(gear, _)| gear.id.clone()).collect()
    }
}

fn commanded(gear: &NamedGear) -> core::Commanded {
    core::Commanded { closed: gear.closed, one_way: gear.one_way }
}

#[pymethods]
impl Train {
    /// What a gear of the record, or a list of closed elements such as neutral's, does with a dead or stuck element.
    /// Source: follows from the definitions (definitions of the two faults).
    fn symptom(&self, gear: Commanded, element: &str, failure: Failure) -> PyResult<Symptom> {
        let commanded = match gear {
            Commanded::Gear(id) => self.gear_named(&id)?,
            Commanded::Closed(names) => core::Commanded { closed: self.mask(&names)?, one_way: 0 },
        };
        self.named.train.symptom(commanded, self.fault(element, failure)?).map(Symptom).map_err(raise)
    }

    /// What a dead or stuck element does to every gear of the record.
    fn signature(&self, element: &str, failure: Failure) -> PyResult<Signature> {
        let signature = self.named.train.signature(&self.commanded(), self.fault(element, failure)?).map_err(raise)?;
        let gears = self.named.gears.iter().map(|gear| gear.id.clone()).collect();
        Ok(Signature { element: element.into(), signature, gears })
    }

    /// Ranks every element, dead and stuck, by how well it explains what was seen.
    ///
    /// Each observation is a tuple: the gear, what it did, and optionally the load (`"drive"`) and the measured ratio as a
    /// `Reading`. Report gears that are right, too: `("1", "as commanded")` speaks against suspects.
    /// Source: follows from the definitions (comparison of the seen with the computed).
    fn diagnose(&self, observations: Vec<Observed>) -> PyResult<Vec<Suspect>> {
        let none = trainwright::judge::Reading { value: 0.0, u: 0.0 };
        let observations = observations
            .into_iter()
            .map(|observed| {
                let (id, seen, load, ratio) = match observed {
                    Observed::Full(id, seen, load, ratio) => (id, seen, load.0, ratio.0),
                    Observed::Loaded(id, seen, load) => (id, seen, load.0, none),
                    Observed::Short(id, seen) => (id, seen, core::Load::Drive, none),
                };
                Ok(core::Observation { commanded: self.gear_named(&id)?, load, seen: seen.0, ratio })
            })
            .collect::<PyResult<Vec<_>>>()?;
        let diagnosis = self.named.train.diagnose(&observations).map_err(raise)?;
        let named = |suspect: &core::Suspect| {
            let element = self.named.elements.get(usize::from(suspect.fault.element)).cloned().unwrap_or_default();
            Suspect { element, suspect: *suspect }
        };
        Ok(diagnosis.ranked().iter().map(named).collect())
    }

    /// What a ratio that was measured in a gear, under drive and without slip, says about it: an observation for
    /// `diagnose`.
    ///
    /// A ratio within three standard uncertainties of the gear's own is `"as commanded"`, any other `"other ratio"`.
    /// Source: follows from the definitions (comparison of the seen with the computed).
    fn seen_ratio(&self, gear: String, ratio: Reading) -> PyResult<(String, Response, Load, Reading)> {
        let seen = self.named.train.seen_ratio(self.gear_named(&gear)?, ratio.0).map_err(raise)?;
        Ok((gear, Response(seen.seen), Load(seen.load), Reading(seen.ratio)))
    }

    /// The gear of the record whose outcome tells most about suspects that explain the observations equally well.
    ///
    /// `suspects` are 2 or more faults, each `(element, "dead" or "stuck")`; `tried` are gears that were seen under drive, or
    /// `(gear, "coast")`. Gears that no suspect ties up come first, drive before coast. Raises `NO_ANSWER` where no gear tells.
    /// Source: T. M. Cover and J. A. Thomas, Elements of Information Theory (from memory; entropy of a partition).
    #[pyo3(signature = (suspects, tried = Vec::new()))]
    fn next_gear(&self, suspects: Vec<(String, Failure)>, tried: Vec<Tried>) -> PyResult<NextGear> {
        let faults =
            suspects.iter().map(|(element, failure)| self.fault(element, *failure)).collect::<PyResult<Vec<_>>>()?;
        let mut done = core::TriedGears::default();
        for tried in tried {
            let (id, load) = match tried {
                Tried::Loaded(id, load) => (id, load.0),
                Tried::Driven(id) => (id, core::Load::Drive),
            };
            self.gear_named(&id)?;
            let place = self.named.gears.iter().position(|gear| gear.id == id).unwrap_or_default();
            let bit = 1_u32.checked_shl(place as u32).unwrap_or_default();
            match load {
                core::Load::Coast => done.coast |= bit,
                _ => done.drive |= bit,
            }
        }
        let commanded = self.commanded();
        let next = self.named.train.next_gear(&commanded, done, &faults).map_err(raise)?;
        let place = next.gear as usize;
        let shown = commanded.get(place).map_or_else(
            || Ok(Vec::new()),
            |&gear| faults.iter().map(|&fault| self.named.train.symptom(gear, fault).map_err(raise)).collect(),
        )?;
        let gear = self.named.gears.get(place).map(|gear| gear.id.clone()).unwrap_or_default();
        Ok(NextGear { gear, next, shown })
    }

    /// The gears of the record in which two faults, each `(element, "dead" or "stuck")`, show different things.
    fn gears_that_tell_faults(&self, one: (String, Failure), other: (String, Failure)) -> PyResult<Vec<String>> {
        let (one, other) = (self.fault(&one.0, one.1)?, self.fault(&other.0, other.1)?);
        let mask = self.named.train.gears_that_tell_faults(&self.commanded(), one, other).map_err(raise)?;
        Ok(self.gear_ids(mask))
    }
}

/// A gear of the record by its name, or a list of closed elements.
#[derive(FromPyObject)]
enum Commanded {
    Gear(String),
    Closed(Vec<String>),
}
