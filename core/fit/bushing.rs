//! A bushing pressed in a housing of another metal: what the temperature does to its seat and to its bore.

use super::clearance::{judged_clearance, size_reading};
use super::press::{Elastic, PressJoint, Pressed};
use super::warm::{REFERENCE_C, WarmClearance, WarmPart, Warmth, expansion, grown, temperature, warm_shaft};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive};
use crate::judge::{Budget, Limits, Propagated, Reading, Rule, propagate};

pub(super) const BUSHING_AT: Card = Card {
    id: "fit.bushing_at",
    purpose: "Interference and pressure of a bushing in a housing of another metal, at temperature",
    equation: "δ(t) = d_o (1 + α_b (t − 20)) − D_h (1 + α_h (t − 20)); p and closure as fit.pressed with d = D_h − 2 w",
    symbols: &[
        symbol("δ(t)", "interference_mm; 0 or less: let go", "mm"),
        symbol("d_o", "outside_mm, before pressing", "mm"),
        symbol("w", "wall_mm", "mm"),
        symbol("D_h", "housing_bore_mm", "mm"),
        symbol("α_b", "shell.expansion_per_k", "1/K"),
        symbol("α_h", "housing.expansion_per_k", "1/K"),
        symbol("t", "temp_c, housing and bushing alike", "°C"),
        symbol("p", "pressure_mpa", "MPa"),
        symbol("closure", "bore_closure_mm", "mm"),
    ],
    range: "as fit.pressed: elastic, evenly warm, round housing of the stated outside. A lining softer than its shell counts as shell",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, press and shrink fits, with the thermal change of the interference",
};

pub(super) const LET_GO: Card = Card {
    id: "fit.let_go_c",
    purpose: "Temperature at which a bushing has no interference left",
    equation: "t = 20 + (d_o − D_h)/(D_h α_h − d_o α_b)",
    symbols: &[
        symbol("t", "temperature", "°C"),
        symbol("d_o, D_h", "outside_mm, housing_bore_mm", "mm"),
        symbol("α_h, α_b", "housing.expansion_per_k, shell.expansion_per_k", "1/K"),
    ],
    range: "housing and bushing alike warm; creep of the housing lowers it with every hot hour",
    source: &card::DEFINITION,
    locator: "δ(t) of fit.bushing_at set to 0",
};

pub(super) const BUSHING_HELD: Card = Card {
    id: "fit.bushing_held",
    purpose: "Torque and axial force that turn or push a pressed bushing, at temperature, with their uncertainty",
    equation: "F = μ p(t) π D_h L, T = F D_h/2",
    symbols: &[
        symbol("F, T", "force_n, torque_nm", "N, N·m"),
        symbol("p(t)", "pressed.pressure_mpa", "MPa"),
        symbol("D_h", "housing_bore_mm", "mm"),
        symbol("L, μ", "length_mm, friction", "mm, 1"),
    ],
    range: "as fit.retention and fit.bushing_at",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 7, press fits: holding torque",
};

pub(super) const RUNNING: Card = Card {
    id: "fit.running_clearance",
    purpose: "Running clearance of a shaft in a pressed bushing, at temperature: the bore grows with the bushing's own metal, and opens by what the seat lets go",
    equation: "c(t) = (D + k₂₀) (1 + α_b (t − 20)) − k(t) − d (1 + α_d (t + Δ − 20))",
    symbols: &[
        symbol("c(t)", "clearance.at_temperature.clearance_mm", "mm"),
        symbol("D", "bushing.bore_mm, in place, at 20 °C", "mm"),
        symbol("k₂₀", "pressed_20c.bore_closure_mm", "mm"),
        symbol("k(t)", "pressed.bore_closure_mm", "mm"),
        symbol("d", "shaft.size_mm, at 20 °C", "mm"),
        symbol("α_d", "shaft.expansion_per_k", "1/K"),
        symbol("α_b", "bushing.shell.expansion_per_k", "1/K"),
        symbol("t", "warmth.temp_c, of housing and bushing", "°C"),
        symbol("Δ", "warmth.shaft_warmer_k", "K"),
    ],
    range: "as fit.bushing_at. Above the let-go temperature the bushing floats: its bore follows its own metal, and it may turn or walk",
    source: &card::DEFINITION,
    locator: "free size of the bushing, less the closure of fit.pressed",
};

/// A metal: elastic constants and expansion.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// Elastic constants.
    pub elastic: Elastic,
    /// Linear expansion, 1/K.
    pub expansion_per_k: Reading,
}

/// A bushing pressed in a housing. Sizes at 20 °C.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressedBushing {
    /// Bore of the housing, mm.
    pub housing_bore_mm: Reading,
    /// Outside of the bushing before it is pressed in, mm.
    pub outside_mm: Reading,
    /// Wall of the bushing, mm.
    pub wall_mm: f64,
    /// Bore of the bushing in place, mm.
    pub bore_mm: Reading,
    /// Outside of the housing around it, mm; infinite for a thick body.
    pub housing_outside_mm: f64,
    /// Metal of the housing.
    pub housing: Metal,
    /// Metal of the bushing's shell.
    pub shell: Metal,
}

/// What a bushing holds by friction.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldBushing {
    /// The seat at this temperature.
    pub pressed: Pressed,
    /// Axial force at which it moves, N.
    pub force_n: Reading,
    /// Torque at which it turns, N·m.
    pub torque_nm: Reading,
    /// Where the uncertainty of the torque comes from: housing bore, outside of the bushing, expansion of the housing, of the
    /// shell, friction.
    pub budget: Budget,
}

/// Running clearance in a pressed bushing.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunningClearance {
    /// The seat at 20 °C.
    pub pressed_20c: Pressed,
    /// The seat at temperature.
    pub pressed: Pressed,
    /// Clearance at 20 °C and at temperature, judged. The budget lists shaft, bore, housing bore, outside of the bushing,
    /// expansion of the shaft, of the housing, of the shell, temperature, and how much warmer the shaft is.
    pub clearance: WarmClearance,
    /// What the clearance would be if the bore grew as the housing does, mm: too much.
    pub as_housing_mm: f64,
    /// What it would be if the bore grew as the free shell does, mm: too little while the seat still presses.
    pub as_shell_mm: f64,
}

impl PressedBushing {
    fn checked(self) -> Result<Self> {
        size_reading("housing_bore_mm", self.housing_bore_mm)?;
        size_reading("outside_mm", self.outside_mm)?;
        size_reading("bore_mm", self.bore_mm)?;
        positive("wall_mm", self.wall_mm)?;
        expansion(self.housing.expansion_per_k)?;
        expansion(self.shell.expansion_per_k)?;
        self.joint(self.housing_bore_mm.value).checked()?;
        Ok(self)
    }

    /// The joint at this bore of the housing.
    fn joint(self, housing_bore_mm: f64) -> PressJoint {
        PressJoint {
            inside_mm: housing_bore_mm - 2.0 * self.wall_mm,
            interface_mm: housing_bore_mm,
            outside_mm: self.housing_outside_mm,
            inner: self.shell.elastic,
            outer: self.housing.elastic,
        }
    }

    /// The seat at a temperature, with these sizes and expansions in place of the best estimates.
    fn pressed(self, [housing_bore_mm, outside_mm, alpha_h, alpha_b]: [f64; 4], temp_c: f64) -> Result<Pressed> {
        let interference_mm = grown(outside_mm, alpha_b, temp_c) - grown(housing_bore_mm, alpha_h, temp_c);
        self.joint(housing_bore_mm).pressed(interference_mm)
    }

    /// The inputs of the seat: housing bore, outside of the bushing, expansion of the housing, of the shell.
    fn inputs(self) -> [Reading; 4] {
        [self.housing_bore_mm, self.outside_mm, self.housing.expansion_per_k, self.shell.expansion_per_k]
    }

    /// The seat of the bushing at a temperature, at the best estimates.
    ///
    /// δ(t) = d_o (1 + α_b (t − 20)) − D_h (1 + α_h (t − 20)); p and closure as [`PressJoint::pressed`] with d = D_h − 2 w
    ///
    /// * `temp_c` — of housing and bushing, −60 to 300 °C
    /// * returns [`Pressed`]; an interference of 0 or less means that the bushing has let go
    /// * errors: by name for sizes and metals that cannot be
    ///
    /// Source: Shigley, chapter 3 (from memory). Example: the case bushing of the invented Corrib family.
    ///
    /// ```
    /// use trainwright::fit::{Elastic, Metal, PressedBushing};
    /// use trainwright::judge::Reading;
    /// let metal = |young_mpa, poisson, alpha| Metal {
    ///     elastic: Elastic { young_mpa, poisson }, expansion_per_k: Reading { value: alpha, u: 0.0 },
    /// };
    /// let bushing = PressedBushing {
    ///     housing_bore_mm: Reading::exact(43.0125)?, outside_mm: Reading::exact(43.0775)?, wall_mm: 1.5,
    ///     bore_mm: Reading::exact(40.035)?, housing_outside_mm: 74.0,
    ///     housing: metal(71_000.0, 0.33, 23e-6), shell: metal(206_000.0, 0.29, 11.5e-6),
    /// };
    /// let (cold, hot) = (bushing.bushing_at(20.0)?, bushing.bushing_at(120.0)?);
    /// assert!((cold.interference_mm - 0.065).abs() < 1e-9 && (cold.bore_closure_mm - 0.0441).abs() < 5e-5);
    /// assert!((hot.interference_mm - 0.0156).abs() < 5e-5); // three quarters of the grip are gone
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn bushing_at(self, temp_c: f64) -> Result<Pressed> {
        let bushing = self.checked()?;
        let temp_c = temperature("temp_c", Reading { value: temp_c, u: 0.0 })?.value;
        bushing.pressed(bushing.inputs().map(|input| input.value), temp_c)
    }

    /// Temperature at which the bushing has no interference left.
    ///
    /// t = 20 + (d_o − D_h)/(D_h α_h − d_o α_b)
    ///
    /// * returns t, °C, with its uncertainty; below 20 °C for a bushing that grows more than its housing (bronze in steel): it
    ///   then lets go in the cold
    /// * errors: [`Error::NoAnswer`] for a bushing without interference at 20 °C, and where both expand alike
    ///
    /// Source: δ(t) of [`PressedBushing::bushing_at`] set to 0.
    pub fn let_go_c(self) -> Result<Reading> {
        let bushing = self.checked()?;
        if bushing.outside_mm.value <= bushing.housing_bore_mm.value {
            return Err(Error::NoAnswer {
                name: "let_go_c",
                why: "the bushing has no interference at 20 °C; check outside_mm and housing_bore_mm",
            });
        }
        let let_go = propagate(bushing.inputs(), |[housing_bore, outside, alpha_h, alpha_b]| {
            let per_k = housing_bore * alpha_h - outside * alpha_b;
            let temp_c = REFERENCE_C + (outside - housing_bore) / per_k;
            if (-crate::units::KELVIN_AT_0_C..1e4).contains(&temp_c) {
                Ok(temp_c)
            } else {
                Err(Error::NoAnswer {
                    name: "let_go_c",
                    why: "housing and bushing expand nearly alike: no temperature within reach parts them",
                })
            }
        })?;
        Ok(let_go.reading)
    }

    /// Torque and axial force at which the bushing moves, at a temperature.
    ///
    /// F = μ p(t) π D_h L, T = F D_h/2
    ///
    /// * `temp_c` — −60 to 300 °C; `length_mm` — L, of the seat; `friction` — μ of the fit as pressed, above 0 to 1
    /// * returns [`HeldBushing`]; 0 above the let-go temperature, where only a lug or a stake still holds it
    /// * errors: as [`PressedBushing::bushing_at`]
    ///
    /// Source: Shigley, chapter 7 (from memory), with JCGM 100:2008, 5.1.3, note 2, for the uncertainty.
    pub fn bushing_held(self, temp_c: f64, length_mm: f64, friction: Reading) -> Result<HeldBushing> {
        let pressed = self.bushing_at(temp_c)?;
        let [housing_bore, outside, alpha_h, alpha_b] = self.inputs();
        let retention = |inputs: [f64; 5]| {
            let [housing_bore, outside, alpha_h, alpha_b, friction] = inputs;
            let pressure = self.pressed([housing_bore, outside, alpha_h, alpha_b], temp_c)?.pressure_mpa;
            self.joint(housing_bore).retention(pressure, length_mm, friction)
        };
        let inputs = [housing_bore, outside, alpha_h, alpha_b, friction];
        let Propagated { reading: torque_nm, budget } = propagate(inputs, |inputs| Ok(retention(inputs)?.torque_nm))?;
        let force_n = propagate(inputs, |inputs| Ok(retention(inputs)?.force_n))?.reading;
        Ok(HeldBushing { pressed, force_n, torque_nm, budget })
    }

    /// Running clearance of a shaft in the bushing at temperature, judged.
    ///
    /// c(t) = (D + k₂₀) (1 + α_b (t − 20)) − k(t) − d (1 + α_d (t + Δ − 20)), k the closure of the bore
    ///
    /// * `shaft` — size at 20 °C and expansion; `warmth` — temperature of housing
    ///   and bushing, and how much warmer the shaft is; `wanted_mm`, `rule` — as for [`super::measured`]
    /// * returns [`RunningClearance`]. While the seat presses, the opening does not depend on how tight it is; a tight bushing only
    ///   goes on opening to a higher temperature
    /// * errors: as [`PressedBushing::bushing_at`] and [`super::warm_clearance`]
    ///
    /// Source: the free size of the bushing less the closure of [`PressJoint::pressed`]. Example: the case bushing of the invented
    /// Corrib family on its shaft has 0.065 mm at 20 °C and 0.0885 mm at 90 °C; "as the case" would say 0.097, "as steel" 0.065.
    ///
    /// ```
    /// use trainwright::fit::{Elastic, Metal, PressedBushing, WarmPart, Warmth};
    /// use trainwright::judge::{Limits, Reading, Rule};
    /// let exact = |value| Reading { value, u: 0.0 };
    /// let metal = |young_mpa, poisson, alpha| Metal {
    ///     elastic: Elastic { young_mpa, poisson }, expansion_per_k: exact(alpha),
    /// };
    /// let bushing = PressedBushing {
    ///     housing_bore_mm: exact(43.0125), outside_mm: exact(43.0775), wall_mm: 1.5, bore_mm: exact(40.035), housing_outside_mm: 74.0,
    ///     housing: metal(71_000.0, 0.33, 23e-6), shell: metal(206_000.0, 0.29, 11.5e-6),
    /// };
    /// let shaft = WarmPart { size_mm: exact(39.970), expansion_per_k: exact(11.5e-6) };
    /// let warmth = Warmth { temp_c: exact(90.0), shaft_warmer_k: exact(0.0) };
    /// let wanted_mm = Limits::between(0.0, 0.14)?;
    /// let hot = bushing.running_clearance(shaft, warmth, wanted_mm, Rule::simple_acceptance())?;
    /// assert!((hot.clearance.at_temperature.clearance_mm.value - 0.0885).abs() < 5e-5);
    /// assert!((hot.as_housing_mm - 0.0973).abs() < 5e-5 && (hot.as_shell_mm - 0.0651).abs() < 5e-5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn running_clearance(
        self,
        shaft: WarmPart,
        warmth: Warmth,
        wanted_mm: Limits,
        rule: Rule,
    ) -> Result<RunningClearance> {
        let bushing = self.checked()?;
        let (shaft, warmth) = (shaft.checked("shaft.size_mm")?, warmth.checked()?);
        let bore_mm = bushing.bore_mm;
        let [housing_bore, outside, alpha_h, alpha_b] = bushing.inputs();
        let warm_bore_mm = |seat: [f64; 4], bore_mm: f64, temp_c: f64| {
            let [.., alpha_b] = seat;
            let free_mm = bore_mm + bushing.pressed(seat, REFERENCE_C)?.bore_closure_mm;
            Ok(grown(free_mm, alpha_b, temp_c) - bushing.pressed(seat, temp_c)?.bore_closure_mm)
        };
        let seat_and_bore = [housing_bore, outside, alpha_h, alpha_b, bore_mm, warmth.temp_c];
        let warm_bore = propagate(seat_and_bore, |[housing_bore, outside, alpha_h, alpha_b, bore, temp]| {
            warm_bore_mm([housing_bore, outside, alpha_h, alpha_b], bore, temp)
        })?;
        let inputs = [
            shaft.size_mm,
            bore_mm,
            housing_bore,
            outside,
            shaft.expansion_per_k,
            alpha_h,
            alpha_b,
            warmth.temp_c,
            warmth.shaft_warmer_k,
        ];
        let clearance =
            propagate(inputs, |[d, bore, housing_bore, outside, alpha_d, alpha_h, alpha_b, temp, warmer]| {
                let bore = warm_bore_mm([housing_bore, outside, alpha_h, alpha_b], bore, temp)?;
                Ok(bore - grown(d, alpha_d, temp + warmer))
            })?;
        let warm_shaft_mm = warm_shaft(shaft, warmth)?;
        let as_metal = |alpha: Reading| grown(bore_mm.value, alpha.value, warmth.temp_c.value) - warm_shaft_mm.value;
        let cold_mm = bore_mm.value - shaft.size_mm.value;
        Ok(RunningClearance {
            pressed_20c: bushing.bushing_at(REFERENCE_C)?,
            pressed: bushing.bushing_at(warmth.temp_c.value)?,
            clearance: WarmClearance {
                clearance_20c_mm: cold_mm,
                change_mm: clearance.reading.value - cold_mm,
                at_temperature: judged_clearance(warm_shaft_mm, warm_bore.reading, clearance, wanted_mm, rule)?,
            },
            as_housing_mm: as_metal(alpha_h),
            as_shell_mm: as_metal(alpha_b),
        })
    }
}
