//! One engagement solved: kind of state, speeds and torques.

use super::elimination::{Echelon, Equation, INPUT, OTHERS, OUTPUT};
use super::{Element, Fraction, MAX_ELEMENTS, MAX_MEMBERS, MAX_ROWS, Train};
use crate::error::{Error, Result};

/// What a set of closed elements does to input and output.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StateKind {
    /// The input determines the output, and the output turns.
    Gear,
    /// Input and output turn independently.
    Neutral,
    /// The input cannot turn, the output is free: too few clutches for a gear, the wrong brake for neutral.
    InputHeld,
    /// The output cannot turn, the input is free.
    OutputHeld,
    /// Neither can turn: one element too many.
    TiedUp,
}

/// The answer of [`Train::solve`]: everything per unit of input speed and per unit of input torque, without losses.
///
/// Where the input is held its speed is 0. A [`Fraction`] with denominator 0 is not determined by the state.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct State {
    /// What the state does to input and output.
    pub kind: StateKind,
    /// Degrees of freedom that are left. A gear may have more than one: the test is that the input determines the output.
    pub mobility: u8,
    /// Closures that repeat what others already force. The torque shares in such a loop are indeterminate.
    pub redundant: u8,
    /// Elements taken as closed, holding one-way clutches included; bit 0 is the first element.
    pub closed: u32,
    /// Input speed / output speed of a gear, else open.
    pub ratio: Fraction,
    /// Torque from outside on the output per unit input torque, forward positive: −ratio in a gear.
    pub output_torque: Fraction,
    /// Torque of the case on the train per unit input torque.
    pub case_torque: Fraction,
    /// Speed of each member per unit input speed.
    pub speeds: [Fraction; MAX_MEMBERS],
    /// Speed of the first member of each element relative to the second, per unit input speed.
    pub slips: [Fraction; MAX_ELEMENTS],
    /// Torque that each element puts on its first member, forward positive, per unit input torque; 0 for an open element.
    pub shares: [Fraction; MAX_ELEMENTS],
    /// Multiplier of each [`Row`](super::Row): times a coefficient, the torque of the set on that member per unit input torque.
    pub multipliers: [Fraction; MAX_ROWS],
}

impl State {
    /// Nothing closed, nothing determined.
    pub const OPEN: Self = Self {
        kind: StateKind::Neutral,
        mobility: 0,
        redundant: 0,
        closed: 0,
        ratio: Fraction::OPEN,
        output_torque: Fraction::OPEN,
        case_torque: Fraction::OPEN,
        speeds: [Fraction::OPEN; MAX_MEMBERS],
        slips: [Fraction::OPEN; MAX_ELEMENTS],
        shares: [Fraction::OPEN; MAX_ELEMENTS],
        multipliers: [Fraction::OPEN; MAX_ROWS],
    };

    /// The state that `fill` writes, without a copy of it.
    pub(super) fn filled(fill: impl FnOnce(&mut Self) -> Result<()>) -> Result<Self> {
        let mut filled = Ok(Self::OPEN);
        if let Ok(state) = &mut filled {
            fill(state)?;
        }
        filled
    }

    /// Speed of a member per unit input speed; open if there is no such member.
    #[must_use]
    pub fn speed(&self, member: u8) -> Fraction {
        self.speeds.get(usize::from(member)).copied().unwrap_or(Fraction::OPEN)
    }

    /// Slip speed of an element per unit input speed; open if there is no such element.
    #[must_use]
    pub fn slip(&self, element: u8) -> Fraction {
        self.slips.get(usize::from(element)).copied().unwrap_or(Fraction::OPEN)
    }

    /// Torque share of an element; open if there is no such element.
    #[must_use]
    pub fn share(&self, element: u8) -> Fraction {
        self.shares.get(usize::from(element)).copied().unwrap_or(Fraction::OPEN)
    }

    /// Slip of a closed element of a gear while it lets go and all others hold, per unit of slip at the input.
    ///
    /// ω_first − ω_second = −(n_in − i n_out)/share
    ///
    /// * `element` — its number
    /// * returns the factor −1/share; open where the element carries nothing or its share is open, as the two speeds then do
    ///   not show its slip
    ///
    /// Source: power balance of the gear without losses, T_in n_in + T_out n_out + T_element (ω_first − ω_second) = 0 with
    /// T_out = −i T_in, derived. Example: fourth gear of the demonstration, C1 carries 18/37 of the turbine torque; 74.05 1/min
    /// too fast at the input are −152.2 1/min at C1.
    #[must_use]
    pub fn slip_per_input_slip(&self, element: u8) -> Fraction {
        match self.kind {
            StateKind::Gear => self.share(element).inverted().negated(),
            _ => Fraction::OPEN,
        }
    }

    /// Whether anything reacts a torque at the input. Otherwise the input spins up, and no torque share is defined.
    #[must_use]
    pub fn carries_torque(&self) -> bool {
        matches!(self.kind, StateKind::Gear | StateKind::InputHeld | StateKind::TiedUp)
    }

    /// Whether the state drives the output faster than `output_per_input` times the input: a forbidden state, which a
    /// controller must neither enter nor cross.
    #[must_use]
    pub fn overspeeds(&self, output_per_input: f64) -> bool {
        let overspeeds = |speed| output_per_input.is_nan() || crate::real::abs(speed) > output_per_input;
        self.ratio.inverted().value().is_some_and(overspeeds)
    }
}

/// The column of the fixed body: past every other.
const STILL: u8 = u8::MAX;

/// The column of each member once the closed elements have joined members into bodies.
pub(super) struct Bodies {
    column: [u8; MAX_MEMBERS],
    pub(super) width: usize,
    joined: usize,
}

impl Train {
    /// Solves the engagement in which exactly these elements are closed, one-way clutches like any other.
    ///
    /// Speeds: Σ coefficient · ω = 0 for every row, ω_first = ω_second for every closed element, ω_input = 1.
    /// Torques: Σ coefficient · multiplier + Σ shares + T_input + T_output + T_case = 0 for every member, T_input = 1.
    ///
    /// * `closed` — bit mask of the closed elements
    /// * returns the [`State`]; nothing in it is rounded
    /// * errors: [`Error::Inconsistent`] for a bit without an element, [`Error::Overflow`] beyond 64 bits
    ///
    /// Source: basic equation of an epicyclic set and equilibrium of its three torques (from memory of H. W. Müller,
    /// *Epicyclic Drive Trains*, 1982). Example: a set with sun 20 and ring 34, sun driving and ring held, gives 2.70
    /// (technical service bulletin "transmission math", October 1989).
    ///
    /// ```
    /// use trainwright::train::{Element, Fraction, PlanetarySet, SetJoins, SetKind, SetTeeth, Train};
    /// let (case, input, output, ring) = (0, 1, 2, 3);
    /// let mut train = Train::new(4, input, output, case)?;
    /// train.add_set(PlanetarySet {
    ///     kind: SetKind::Simple,
    ///     planets: 3,
    ///     teeth: SetTeeth { sun: 20, planet: 7, ring: 34, ..SetTeeth::NONE },
    ///     joins: SetJoins { sun: input, ring, carrier: output, ..SetJoins::NONE },
    /// })?;
    /// train.add_element(Element::brake(ring, case))?;
    /// let first = train.solve(0b1)?;
    /// assert_eq!(first.ratio, Fraction { num: 27, den: 10 });
    /// assert_eq!(first.share(0), Fraction { num: 17, den: 10 });
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn solve(&self, closed: u32) -> Result<State> {
        State::filled(|state| self.fill(closed, state))
    }

    /// As [`Train::solve`], into a state that the caller has: for a small stack. After an error it means nothing.
    pub fn solve_into(&self, closed: u32, state: &mut State) -> Result<()> {
        *state = State::OPEN;
        self.fill(closed, state)
    }

    /// Fills an open state.
    #[inline(never)]
    fn fill(&self, closed: u32, state: &mut State) -> Result<()> {
        if closed.checked_shr(self.element_count.into()).unwrap_or(0) != 0 {
            return Err(Error::Inconsistent {
                name: "closed",
                why: "the mask closes an element that the train does not have; clear the bits above the last element",
            });
        }
        state.closed = closed;
        let bodies = self.bodies(closed);
        let mut echelon = Echelon::new(bodies.width, self.rows().len());
        self.enter(&bodies, &mut echelon)?;
        self.fill_speeds(state, &bodies, &echelon)?;
        if state.carries_torque() { self.fill_torques(state, &bodies, &echelon) } else { Ok(()) }
    }

    /// Elements with their bits.
    pub(super) fn numbered(&self) -> impl Iterator<Item = (u32, &Element)> {
        (0..u32::BITS).map(|i| 1 << i).zip(self.elements())
    }

    pub(super) fn bodies(&self, closed: u32) -> Bodies {
        let mut body: [u8; MAX_MEMBERS] = core::array::from_fn(|member| member as u8);
        let of = |body: &[u8], member: u8| body.get(usize::from(member)).copied().unwrap_or(STILL);
        let mut joined = 0;
        for (_, element) in self.numbered().filter(|(bit, _)| closed & bit != 0) {
            let (kept, gone) = (of(&body, element.first), of(&body, element.second));
            if kept != gone {
                joined += 1;
                body.iter_mut().take(self.members.into()).filter(|b| **b == gone).for_each(|b| *b = kept);
            }
        }
        let (fixed, input, output) = (of(&body, self.fixed), of(&body, self.input), of(&body, self.output));
        let mut column_of = [STILL; MAX_MEMBERS];
        let mut column = [STILL; MAX_MEMBERS];
        let mut width = OTHERS;
        for (&body, column) in body.iter().zip(&mut column).take(self.members.into()) {
            if body == fixed {
                continue;
            }
            let Some(seen) = column_of.get_mut(usize::from(body)) else { continue };
            if *seen == STILL {
                *seen = if body == input {
                    INPUT as u8
                } else if body == output {
                    OUTPUT as u8
                } else {
                    width += 1;
                    (width - 1) as u8
                };
            }
            *column = *seen;
        }
        Bodies { column, width, joined }
    }

    /// Enters the speed equations of the sets. An input or output that is no body of its own has one that says so.
    fn enter(&self, bodies: &Bodies, echelon: &mut Echelon) -> Result<()> {
        for (row, number) in self.rows().iter().zip(bodies.width..) {
            echelon.insert(|equation| {
                for (member, coefficient) in row.terms() {
                    add(equation, bodies.of(member), coefficient);
                }
                add(equation, number, 1);
            })?;
        }
        for (end, column) in [(self.input, INPUT), (self.output, OUTPUT)] {
            if bodies.of(end) != column {
                echelon.insert(|equation| {
                    add(equation, column, 1);
                    add(equation, bodies.of(end), -1);
                })?;
            }
        }
        Ok(())
    }

    fn fill_speeds(&self, state: &mut State, bodies: &Bodies, echelon: &Echelon) -> Result<()> {
        let ends = [(self.input, INPUT), (self.output, OUTPUT)];
        let own = ends.into_iter().filter(|&(end, column)| bodies.of(end) != column).count();
        let closures = state.closed.count_ones() as usize + self.rows().len() + own;
        state.mobility = (bodies.width - echelon.rank()) as u8;
        state.redundant = (closures - bodies.joined - echelon.rank()) as u8;

        let mut known = [Fraction::OPEN; MAX_MEMBERS];
        for (body, speed) in known.iter_mut().enumerate().take(bodies.width) {
            *speed = echelon.speed(body)?;
        }
        let [input, output, ..] = known;
        state.kind = match (input.signum() == 0, output.is_known(), output.signum()) {
            (true, true, _) => StateKind::TiedUp,
            (true, false, _) => StateKind::InputHeld,
            (false, true, 0) => StateKind::OutputHeld,
            (false, true, _) => StateKind::Gear,
            (false, false, _) => StateKind::Neutral,
        };
        if state.kind == StateKind::Gear {
            state.ratio = output.inverted();
        }
        for (member, speed) in (0..self.members).zip(&mut state.speeds) {
            *speed = known.get(bodies.of(member)).copied().unwrap_or(Fraction::ZERO);
        }
        for (slip, element) in state.slips.iter_mut().zip(self.elements()) {
            let (first, second) = (bodies.of(element.first), bodies.of(element.second));
            *slip = match (known.get(first), known.get(second)) {
                _ if first == second => Fraction::ZERO,
                (Some(&slip), None) => slip,
                (Some(first), Some(second)) if first.is_known() => first.minus(*second)?,
                _ => echelon.relative(first, second)?,
            };
        }
        Ok(())
    }

    /// The torques are the multipliers of the carrying equation, the one of the output in a gear, else of the input. Any
    /// multiple of a loose equation can be added to them, so a torque that a loose equation touches is open.
    fn fill_torques(&self, state: &mut State, bodies: &Bodies, echelon: &Echelon) -> Result<()> {
        let tied_up = state.kind == StateKind::TiedUp;
        let Some(carrying) = echelon.of(if state.kind == StateKind::Gear { OUTPUT } else { INPUT }) else {
            return Ok(());
        };
        let loose = || echelon.idle().chain(echelon.of(OUTPUT).filter(|_| tied_up));
        let at = |equation: &Equation, column: usize| i128::from(equation.get(column).copied().unwrap_or(0));
        let per_input = |column: usize| match loose().any(|equation| at(equation, column) != 0) {
            true => Ok(Fraction::OPEN),
            false => Fraction::reduced(at(carrying, column), at(carrying, INPUT)),
        };
        state.output_torque = per_input(OUTPUT)?;
        state.case_torque = Fraction::ONE.plus(state.output_torque)?.negated();
        for (multiplier, column) in state.multipliers.iter_mut().zip(bodies.width..).take(self.rows().len()) {
            *multiplier = per_input(column)?.negated();
        }
        for ((bit, element), share) in self.numbered().zip(&mut state.shares) {
            if state.closed & bit == 0 {
                *share = Fraction::ZERO;
                continue;
            }
            let others = state.closed & !bit;
            let first = self.side(element.first, others);
            let (side, sign) = match first & member_bit(self.fixed) {
                0 => (first, 1),
                _ => (self.side(element.second, others), -1),
            };
            let load = |equation: &Equation| self.load_on(side, equation, bodies.width);
            let in_a_loop = first & member_bit(element.second) != 0;
            if !in_a_loop && loose().all(|equation| load(equation) == 0) {
                *share = Fraction::reduced(sign * load(carrying), at(carrying, INPUT))?;
            }
        }
        Ok(())
    }

    /// Torque that must act on these members to balance input, output and sets, in parts of the equation's entry at the input.
    fn load_on(&self, side: u32, equation: &Equation, multipliers: usize) -> i128 {
        let within = |member: u8| side & member_bit(member) != 0;
        let ends = [self.input, self.output].into_iter().zip(equation).filter(|&(end, _)| within(end));
        let outside: i128 = ends.map(|(_, &entry)| i128::from(entry)).sum();
        let sets = self.rows().iter().zip(equation.iter().skip(multipliers)).map(|(row, &entry)| {
            let on_side: i64 = row.terms().filter(|&(member, _)| within(member)).map(|(_, c)| c).sum();
            i128::from(on_side) * i128::from(entry)
        });
        sets.sum::<i128>() - outside
    }

    /// The members that closed elements join to this one, as a bit mask.
    fn side(&self, member: u8, closed: u32) -> u32 {
        let mut side = member_bit(member);
        loop {
            let before = side;
            for (_, element) in self.numbered().filter(|(bit, _)| closed & bit != 0) {
                let ends = member_bit(element.first) | member_bit(element.second);
                if side & ends != 0 {
                    side |= ends;
                }
            }
            if side == before {
                return side;
            }
        }
    }
}

impl Bodies {
    pub(super) fn of(&self, member: u8) -> usize {
        self.column.get(usize::from(member)).copied().unwrap_or(STILL).into()
    }
}

fn add(equation: &mut Equation, column: usize, value: i64) {
    if let Some(entry) = equation.get_mut(column) {
        *entry += value;
    }
}

fn member_bit(member: u8) -> u32 {
    1_u32.checked_shl(member.into()).unwrap_or(0)
}
