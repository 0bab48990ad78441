//! The gear in effect, and what its constants say of the rows.

use core::hint::select_unpredictable;

use super::{BLOCK, GROUP, Lanes, Pass, ScreenBlock, Values};
use crate::duty::screen::columns::{
    COMMANDED, FLAG_MISMATCH, FLAG_NO_GEAR, FLAG_STANDING, FLAG_UNKNOWN, GEAR_NONE, GEAR_STANDING, GEAR_UNKNOWN, INPUT,
    NOT_USED, OUTPUT,
};
use crate::duty::screen::plan::{PlannedGear, PlannedHolding, ScreenPlan};
use crate::duty::screen::row::{bit, gear_loss_kw, holds_nm, in_band, may_be, output_torque_nm};
use crate::duty::screen::tally::{GEAR_SECONDS, ScreenTally};
use crate::duty::screen::unit::MAX_SCREEN_GEARS;

/// Bands that are looked at in one loop.
const AT_ONCE: usize = 4;

/// Least and greatest ratio of a gear, and its place.
type Band = (f64, f64, i32);

/// The bands of the gears of one direction; the last are such as no speeds are in.
#[derive(Clone, Copy)]
struct Bands {
    bands: [Band; MAX_SCREEN_GEARS],
    count: usize,
}

impl Bands {
    fn of(plan: &ScreenPlan, direction: f64) -> Self {
        let mut bands = Self { bands: [(f64::INFINITY, 0.0, 0); MAX_SCREEN_GEARS], count: 0 };
        for (gear, place) in plan.gears.iter().zip(0..).take(plan.gear_count()) {
            if gear.direction * direction > 0.0
                && let Some(band) = bands.bands.get_mut(bands.count)
            {
                *band = (gear.band_low, gear.band_high, place);
                bands.count += 1;
            }
        }
        bands
    }
}

/// Reverse, then forward: a forward gear goes before a reverse one.
pub(super) struct Directions([(f64, Bands); 2]);

impl Directions {
    pub(super) fn of(plan: &ScreenPlan) -> Self {
        Self([-1.0, 1.0].map(|direction| (direction, Bands::of(plan, direction))))
    }
}

/// Places of a sum: the two halves of a group share them.
const PLACES: usize = GROUP / 2;

/// Sums of the rows in a gear, by their place in the group.
#[repr(align(64))]
#[derive(Clone, Copy, Debug)]
pub(super) struct Sums {
    seconds: [i64; PLACES],
    steps: [i64; PLACES],
    rests: [i64; PLACES],
}

impl Sums {
    pub(super) const ZERO: Self = Self { seconds: [0; PLACES], steps: [0; PLACES], rests: [0; PLACES] };
}

/// What the constants of a gear say of the rows of a group, as if they were all in it.
struct Said {
    output_nm: [f64; GROUP],
    gear_loss_kw: [f64; GROUP],
    held_nm: [f64; GROUP],
}

impl Said {
    /// Output torque, loss, and what the first closed packs hold.
    #[inline(always)]
    fn of<const MARGINS: bool>(
        gear: &PlannedGear,
        lanes: &Lanes,
        group: usize,
        (input, pressure): (&Values, &Values),
    ) -> Self {
        let (gear, [one, two, three, ..]) = (*gear, gear.holding);
        let held_back_nm = if gear.holding_count > 0 { one.held_back_nm } else { f64::NAN };
        let one = PlannedHolding { held_back_nm, ..one };
        let mut said =
            Self { output_nm: [f64::NAN; GROUP], gear_loss_kw: [f64::NAN; GROUP], held_nm: [f64::NAN; GROUP] };
        for row in 0..GROUP {
            let i = group * GROUP + row;
            said.output_nm[row] = output_torque_nm(&gear, lanes.input_nm[i]);
            said.gear_loss_kw[row] = gear_loss_kw(&gear, lanes.input_nm[i], lanes.input_kw[i]);
            if MARGINS {
                let weaker = |before, pack| weaker(before, pack, pressure[i + 1], input[i + 1]);
                said.held_nm[row] = weaker(weaker(holds_nm(&one, pressure[i + 1], input[i + 1]), two), three);
            }
        }
        said
    }

    /// What the other closed packs hold.
    #[inline(always)]
    fn hold(&mut self, gear: &PlannedGear, group: usize, (input, pressure): (&Values, &Values)) {
        let [.., four, five, six] = gear.holding;
        for row in 0..GROUP {
            let i = group * GROUP + row;
            let weaker = |before, pack| weaker(before, pack, pressure[i + 1], input[i + 1]);
            self.held_nm[row] = weaker(weaker(weaker(self.held_nm[row], four), five), six);
        }
    }
}

impl Sums {
    /// Adds the rows of a group that are in a gear.
    #[inline(always)]
    fn add(&mut self, lanes: &Lanes, (place, group): (i32, usize)) {
        for at in 0..PLACES {
            let [first, second] = [at, at + PLACES].map(|row| group * GROUP + row);
            let counted = |steps: &[i64; BLOCK]| {
                let of = |i: usize| select_unpredictable(lanes.place[i] == place, steps[i], 0);
                of(first).wrapping_add(of(second))
            };
            self.seconds[at] = self.seconds[at].wrapping_add(counted(&lanes.duration));
            self.steps[at] = self.steps[at].wrapping_add(counted(&lanes.turns_steps));
            self.rests[at] = self.rests[at].wrapping_add(counted(&lanes.turns_rests));
        }
    }
}

/// Puts what is said of the rows of a group in the lane, where the row is in the gear. The others are left as they are; in the
/// first gear of a group they are nothing.
#[inline(always)]
fn put<const FIRST: bool, T: Copy>(
    lane: &mut [T; BLOCK],
    (said, nothing): (&[T; GROUP], T),
    (places, place): (&[i32; GROUP], i32),
    group: usize,
) {
    for row in 0..GROUP {
        let i = group * GROUP + row;
        let before = if FIRST { nothing } else { lane[i] };
        lane[i] = select_unpredictable(places[row] == place, said[row], before);
    }
}

impl Lanes {
    /// Takes what a gear says of the rows that are in it, lane after lane. `FIRST` is for the first gear of a group.
    #[inline(always)]
    fn take<const FIRST: bool>(&mut self, said: &Said, (place, group): (i32, usize)) {
        let places: [_; GROUP] = core::array::from_fn(|row| self.place[group * GROUP + row]);
        let here = (&places, place);
        put::<FIRST, _>(&mut self.output_nm, (&said.output_nm, f64::NAN), here, group);
        put::<FIRST, _>(&mut self.gear_loss_kw, (&said.gear_loss_kw, f64::NAN), here, group);
        put::<FIRST, _>(&mut self.held_nm, (&said.held_nm, f64::NAN), here, group);
    }

    /// Flags the rows in a gear in which another is commanded.
    #[inline(always)]
    fn compare(&mut self, gear: &PlannedGear, commanded: &Values, (place, group): (i32, usize)) {
        let number = gear.number;
        for row in 0..GROUP {
            let i = group * GROUP + row;
            let differs = (commanded[i + 1] < number) | (commanded[i + 1] > number);
            let known = self.flags[i] & bit(COMMANDED) == 0;
            self.flags[i] |= if differs & known & (self.place[i] == place) { FLAG_MISMATCH } else { 0 };
        }
    }

    /// A group with no row in gear.
    #[inline(always)]
    fn take_nothing(&mut self, group: usize) {
        for row in 0..GROUP {
            let i = group * GROUP + row;
            self.output_nm[i] = f64::NAN;
            self.gear_loss_kw[i] = f64::NAN;
            self.held_nm[i] = f64::NAN;
        }
    }
}

/// What the weakest pack holds: of those before, and of one more.
#[inline(always)]
fn weaker(before_nm: f64, pack: PlannedHolding, pressure_kpa: f64, input_rpm: f64) -> f64 {
    let held_nm = holds_nm(&pack, pressure_kpa, input_rpm);
    if held_nm < before_nm { held_nm } else { before_nm }
}

impl Lanes {
    /// Standing, gear in effect, or none, by the ratios that come from the checks.
    #[inline(always)]
    pub(super) fn find_gears(&mut self, pass: &Pass<'_>, output: &Values, commanded: &Values) {
        self.place = [GEAR_NONE.into(); BLOCK];
        let whole = (!pass.lacks(COMMANDED)).then_some(self.ratio);
        for (direction, Bands { bands, count }) in &pass.directions.0 {
            if let Some(ratio) = whole {
                self.ratio = ratio;
                self.keep_commanded(*direction, commanded);
            }
            let (some, _) = bands.as_chunks();
            some.iter().take((count + 2) / AT_ONCE).for_each(|bands| self.match_bands(bands));
            if count % AT_ONCE == 1 {
                self.match_band(bands[(count - 1) % bands.len()]);
            }
        }
        self.settle(output, pass.plan.limits.standing_rpm);
    }

    /// No ratio where a gear of the other direction is commanded.
    #[inline(always)]
    fn keep_commanded(&mut self, direction: f64, commanded: &Values) {
        for i in 0..BLOCK {
            let number = if self.flags[i] & bit(COMMANDED) == 0 { commanded[i + 1] } else { 0.0 };
            self.ratio[i] = if may_be(direction, number) { self.ratio[i] } else { f64::NAN };
        }
    }

    /// Gears cannot be told.
    #[inline(always)]
    pub(super) fn no_gears(&mut self) {
        self.place = [GEAR_UNKNOWN.into(); BLOCK];
        for flags in &mut self.flags {
            *flags |= if *flags & NOT_USED == 0 { FLAG_UNKNOWN } else { 0 };
        }
    }

    #[inline(always)]
    fn match_bands(&mut self, &[one, two, three, four]: &[Band; AT_ONCE]) {
        for i in 0..BLOCK {
            let matched = |before: i32, (low, high, of_band): Band| {
                select_unpredictable(in_band(low, high, self.ratio[i]), of_band, before)
            };
            self.place[i] = matched(matched(matched(matched(self.place[i], one), two), three), four);
        }
    }

    /// As `match_bands`, for one that is left over.
    #[inline(always)]
    fn match_band(&mut self, (low, high, of_band): Band) {
        for i in 0..BLOCK {
            let before = self.place[i];
            self.place[i] = select_unpredictable(in_band(low, high, self.ratio[i]), of_band, before);
        }
    }

    /// The place of a row that stands, whose gear cannot be told, or that is not used, and the flags that say so.
    #[inline(always)]
    fn settle(&mut self, output: &Values, standing_rpm: f64) {
        for i in 0..BLOCK {
            let flags = self.flags[i];
            let none = self.place[i] < 0;
            let (place, flag) = (self.place[i], if none { FLAG_NO_GEAR } else { 0 });
            let lost = flags & bit(INPUT) != 0;
            let (place, flag) = if lost { (GEAR_UNKNOWN.into(), FLAG_UNKNOWN) } else { (place, flag) };
            let stands = output[i + 1] < standing_rpm;
            let (place, flag) = if stands { (GEAR_STANDING.into(), FLAG_STANDING) } else { (place, flag) };
            let unknown = flags & bit(OUTPUT) != 0;
            let (place, flag) = if unknown { (GEAR_UNKNOWN.into(), FLAG_UNKNOWN) } else { (place, flag) };
            let used = flags & NOT_USED == 0;
            let (place, flag) = if used { (place, flag) } else { (GEAR_UNKNOWN.into(), 0) };
            self.place[i] = place;
            self.flags[i] = flags | flag;
        }
    }
}

impl ScreenBlock {
    /// What the constants of the gears say: group after group, for every gear that some row of the group is in.
    #[inline(always)]
    pub(super) fn in_gears(
        &mut self,
        pass: &Pass<'_>,
        (input, pressure, commanded): (&Values, &Values, &Values),
        ahead: impl Fn(usize),
    ) {
        const GEARS: u32 = (1 << MAX_SCREEN_GEARS) - 1;
        for group in 0..BLOCK / GROUP {
            ahead(group * GROUP);
            let mut present = 0;
            for row in 0..GROUP {
                present |= 1_u32 << (self.lanes.place[group * GROUP + row] & 31);
            }
            present &= GEARS;
            if present == 0 {
                self.lanes.take_nothing(group);
                continue;
            }
            self.in_gear::<true>(pass, (present.trailing_zeros(), group), (input, pressure, commanded));
            present &= present - 1;
            while present != 0 {
                self.in_gear::<false>(pass, (present.trailing_zeros(), group), (input, pressure, commanded));
                present &= present - 1;
            }
        }
    }

    #[inline(always)]
    fn in_gear<const FIRST: bool>(
        &mut self,
        pass: &Pass<'_>,
        (place, group): (u32, usize),
        (input, pressure, commanded): (&Values, &Values, &Values),
    ) {
        let at = place as usize;
        let Some((gear, sums)) = pass.plan.gears.get(at).zip(self.of_gear.get_mut(at)) else { return };
        let here = (place.cast_signed(), group);
        sums.add(&self.lanes, here);
        let said = if pass.margins {
            let mut said = Said::of::<true>(gear, &self.lanes, group, (input, pressure));
            if gear.holding_count > 3 {
                said.hold(gear, group, (input, pressure));
            }
            said
        } else {
            Said::of::<false>(gear, &self.lanes, group, (input, pressure))
        };
        if !pass.lacks(COMMANDED) {
            self.lanes.compare(gear, commanded, here);
        }
        self.lanes.take::<FIRST>(&said, here);
    }

    /// Hands the sums of the gears to the tally.
    #[inline(always)]
    pub(super) fn hand_over(&mut self, tally: &mut ScreenTally) {
        for (gear, sums) in self.of_gear.iter_mut().enumerate() {
            for at in 0..PLACES {
                tally.add(GEAR_SECONDS + gear, sums.seconds[at]);
                tally.add_turns(gear, sums.steps[at], sums.rests[at]);
            }
            *sums = Sums::ZERO;
        }
    }
}
