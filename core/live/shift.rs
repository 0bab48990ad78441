//! One shift: when it began, left, was half way and arrived; how far the input ran ahead and the output dipped; its energy.

use core::f32::consts::PI;

use super::event::{About, LiveEventKind, LiveEvents, NO_LIVE_ELEMENT};
use super::pair::Pair;
use super::plan::LivePlan;
use super::state::{LiveShift, ShiftPhase};
use super::trend::{Mean3, Trend};
use crate::card::{self, Card, symbol};
use crate::real::single::{ceil, greater, sqrt};

pub(super) const PHASES: Card = Card {
    id: "live.last_shift",
    purpose: "Phases of a shift from two speeds",
    equation: "inertia phase: from the last sample with |n_in − i·n_out| ≤ 3 u toward the new gear, to the first of three with \
        |n_in − i'·n_out| ≤ 3 u; half way: n_in = n_out·(i + i')/2, between samples; flare: max(n_in − max(i, i')·n_out)",
    symbols: &[
        symbol("n_in, n_out", "input and output speed of a sample; flare and dip over a mean of three", "1/min"),
        symbol("i, i'", "ratios of from and to", "1"),
        symbol("u", "standard uncertainty of the slip in one sample, and what bias and skew may add", "1/min"),
    ],
    range: "the first sign of the torque phase is a tenth of the flare, or a quarter of the dip, that raises an event; a torque phase that \
        shows neither cannot be told from the fill. Without a command the shift begins at its first sign",
    source: &card::DEFINITION,
    locator: "synchronous speeds of the two gears",
};

pub(super) const DIP: Card = Card {
    id: "live.dip_rpm",
    purpose: "Dip of the output during a shift: two elements held at once",
    equation: "d = n_0 + (n_1 − n_0)·t/t_1 − n_out(t), at the t of the greatest n_0 + a·t − n_out(t)",
    symbols: &[
        symbol("d", "dip_rpm", "1/min"),
        symbol(
            "n_0, a",
            "level and slope of the output when the shift began, samples fading with 0.25 s",
            "1/min, (1/min)/s",
        ),
        symbol("n_1, t_1", "output speed and time at the end of the shift", "1/min, s"),
    ],
    range: "the acceleration changes somewhere between start and end: what line and trend differ by is taken as the width of a \
        rectangular distribution. A driver who brakes makes no dip",
    source: &card::LEAST_SQUARES,
    locator: "smoothing and slope by least squares, with fading weights",
};

pub(super) const ENERGY: Card = Card {
    id: "live.energy_j",
    purpose: "Heat and turn of the element that slips in a shift",
    equation: "E = Σ T_in·s·Δt·π/30, φ = Σ |f·s|·Δt·π/30",
    symbols: &[
        symbol("E", "energy_j", "J"),
        symbol("φ", "slip_rad", "rad"),
        symbol("T_in", "engine_torque_nm", "N·m"),
        symbol(
            "s",
            "slip at the input in the gear whose element slips: the new one in a power upshift or a coast downshift, else the old one",
            "1/min",
        ),
        symbol(
            "f",
            "slip_per_input_slip of that element: the one that closes in the new gear, or that opened from the old",
            "1",
        ),
        symbol("Δt", "time since the sample before, s", "s"),
    ],
    range: "inertia phase, from where the speeds show it: what slips in the hundredths of a second before is missing. Power balance: whichever element slips, T_in·s turns to heat. The engine's torque is that of the input only \
        while the converter is locked or nearly so; the energy of the speed change of engine and turbine comes on top of its mean torque",
    source: &card::DEFINITION,
    locator: "power balance of a gear train with one slipping element",
};

/// So many samples in a row leave a gear, or reach one.
pub(super) const RUN: u8 = 3;
/// From 1/min to rad/s.
const RAD_S_PER_RPM: f32 = PI / 30.0;

/// The shift that is running, or the last one. Times are seconds after it began; NaN while they are not known.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ShiftTrack {
    began_us: u64,
    sign_s: f32,
    left_s: f32,
    half_s: f32,
    end_s: f32,
    /// Greatest dip below the trend at the start, and what the line from start to end lies lower there.
    trend_dip_rpm: f32,
    line_below_rpm: f32,
    flare_rpm: f32,
    /// The output when it began.
    base: Trend,
    /// Turn of the slip at the input, rad.
    turn_rad: f32,
    energy_j: f32,
    pub(super) plate_c: f32,
    temp_c: f32,
    dip_at_s: f32,
    flare_at_s: f32,
    /// Way to the half, in the sample before, 1/min.
    to_half: f32,
    /// Dip of the output.
    under: Mean3,
    /// By rank; the same before the first shift.
    from: u8,
    to: u8,
    left_run: u8,
    arrived_run: u8,
    commanded: bool,
    /// The element that slips belongs to the new gear.
    slips_in_new: bool,
    done: bool,
}

/// How a shift begins: from which gear to which by rank, when it was commanded, or first showed, µs, low bits.
pub(super) struct Beginning {
    pub(super) from: u8,
    pub(super) to: u8,
    pub(super) began_us: u32,
    pub(super) commanded: bool,
}

impl ShiftTrack {
    pub(super) const NONE: Self = Self {
        began_us: 0,
        sign_s: 0.0,
        left_s: 0.0,
        half_s: 0.0,
        end_s: 0.0,
        trend_dip_rpm: 0.0,
        line_below_rpm: 0.0,
        flare_rpm: 0.0,
        base: Trend::NONE,
        turn_rad: 0.0,
        energy_j: 0.0,
        plate_c: 0.0,
        temp_c: 0.0,
        dip_at_s: 0.0,
        flare_at_s: 0.0,
        to_half: 0.0,
        under: Mean3::NONE,
        from: 0,
        to: 0,
        left_run: 0,
        arrived_run: 0,
        commanded: false,
        slips_in_new: false,
        done: false,
    };

    /// A shift begins; `output` is the trend of the output now. Without a command it has left its gear already, with
    /// `flare_rpm` so far.
    pub(super) fn begin(&mut self, pair: &Pair, beginning: Beginning, output: Trend, flare_rpm: f32) {
        let Beginning { from, to, began_us, commanded } = beginning;
        let level = output.level - output.slope_per_s * pair.since_s(began_us);
        *self = Self {
            began_us: pair.at(began_us),
            sign_s: f32::NAN,
            half_s: f32::NAN,
            end_s: f32::NAN,
            base: Trend { level, ..output },
            plate_c: f32::NAN,
            temp_c: f32::NAN,
            to_half: f32::NAN,
            under: Mean3::NEW,
            from,
            to,
            commanded,
            slips_in_new: true,
            ..Self::NONE
        };
        if !commanded {
            (self.left_run, self.flare_rpm) = (RUN, flare_rpm);
        }
    }

    /// It goes to another gear than it seemed.
    pub(super) fn turn_to(&mut self, to: u8) {
        if to != self.to {
            (self.to, self.to_half, self.half_s, self.arrived_run) = (to, f32::NAN, f32::NAN, 0);
        }
    }

    pub(super) fn from(&self) -> u8 {
        self.from
    }

    pub(super) fn to(&self) -> u8 {
        self.to
    }

    /// When it began, low bits.
    pub(super) fn began_us(&self) -> u32 {
        self.began_us as u32
    }

    /// Time since it began, s.
    pub(super) fn now_s(&self, pair: &Pair) -> f32 {
        pair.since_s(self.began_us())
    }

    /// Time since the input left the old ratio, s; 0 while it has not.
    pub(super) fn left_for_s(&self, pair: &Pair) -> f32 {
        if self.left_run >= RUN { self.now_s(pair) - self.left_s } else { 0.0 }
    }

    /// Where it is.
    pub(super) fn phase(&self) -> ShiftPhase {
        if self.left_run >= RUN {
            ShiftPhase::Inertia
        } else if self.sign_s.is_nan() {
            ShiftPhase::Fill
        } else {
            ShiftPhase::Torque
        }
    }

    /// Takes a sample; returns whether the new gear is reached.
    pub(super) fn take(&mut self, plan: &LivePlan, pair: &Pair, torque_nm: f32, over: &mut Mean3) -> bool {
        let now_s = self.now_s(pair);
        let (old, new) = (plan.ratio(self.from), plan.ratio(self.to));
        let (in_old, in_new) = (pair.slip(old), pair.slip(new));
        let up = new < old;

        let toward = (if up { -in_old } else { in_old }) - pair.bias(plan, old);
        let has_left = toward > 0.0 && toward * toward > 9.0 * pair.variance(old);
        if self.left_run < RUN {
            if has_left {
                self.left_run += 1;
                self.slips_in_new = up != (torque_nm < 0.0);
            } else {
                (self.left_run, self.left_s, self.turn_rad, self.energy_j) = (0, now_s, 0.0, 0.0);
            }
        }

        let high = if up { old } else { new };
        let over = over.take(pair.slip(high));
        let under = self.under.take(self.base.level + self.base.slope_per_s * now_s - pair.output);
        if over > self.flare_rpm {
            (self.flare_rpm, self.flare_at_s) = (over, now_s - pair.span_s);
        }
        if under > self.trend_dip_rpm {
            (self.trend_dip_rpm, self.dip_at_s) = (under, now_s - pair.span_s);
        }
        if self.sign_s.is_nan() && self.left_run == 0 {
            // A mean of three has a third of the variance.
            let over = over - pair.bias(plan, high);
            let over_shows = over > 0.1 * plan.limits.flare_rpm && over * over > 3.0 * pair.variance(high);
            let under_shows =
                under > 0.25 * plan.limits.dip_share * self.base.level && under * under > 3.0 * pair.of_output;
            if over_shows || under_shows {
                self.sign_s = now_s;
            }
        }

        let past = pair.slip(0.5 * (old + new));
        let to_half = if up { past } else { -past };
        if self.half_s.is_nan() && to_half <= 0.0 {
            let after = if self.to_half > 0.0 { to_half / (to_half - self.to_half) } else { 0.0 };
            self.half_s = now_s - pair.span_s * after;
        }
        self.to_half = to_half;

        if self.left_run > 0 && self.arrived_run == 0 {
            let slip = if self.slips_in_new { in_new } else { in_old };
            let turn_rad = slip * pair.span_s * RAD_S_PER_RPM;
            self.turn_rad += turn_rad.abs();
            self.energy_j += torque_nm * turn_rad;
        }
        if self.left_run < RUN || !pair.fits(plan, self.to) {
            self.arrived_run = 0;
        } else {
            if self.arrived_run == 0 {
                self.end_s = now_s;
            }
            self.arrived_run += 1;
        }
        self.arrived_run >= RUN
    }

    /// What a driver who brakes twice as hard half way, or lets go, takes from the line from start to end, 1/min.
    fn braking_rpm(&self) -> f32 {
        0.25 * greater(-self.base.slope_per_s, 0.0) * self.end_s
    }

    /// Ends it in the gear that it reached. Where it never fitted that gear, it ends now.
    pub(super) fn finish(&mut self, pair: &Pair, temp_c: f32) {
        if self.arrived_run < RUN {
            self.end_s = self.now_s(pair);
        }
        self.line_below_rpm = self.line_below_trend_rpm(pair);
        self.temp_c = temp_c;
        self.done = true;
    }

    /// What the dip below the line from start to end is less than that below the trend at the start.
    fn line_below_trend_rpm(&self, pair: &Pair) -> f32 {
        let line = (pair.output - self.base.level) / greater(self.now_s(pair), 1e-6);
        (self.base.slope_per_s - line) * self.dip_at_s
    }

    /// Dip of the output below the line from start to end; while it runs, below the trend at the start.
    fn dip_rpm(&self) -> f32 {
        greater(self.trend_dip_rpm - self.line_below_rpm, 0.0)
    }

    /// When it reached the new gear, µs, low bits.
    pub(super) fn end_us(&self) -> u32 {
        self.began_us().wrapping_add(whole_us(self.end_s))
    }

    /// The element that slipped: the one that closes, or the one that opened, if it is one alone.
    pub(super) fn element(&self, plan: &LivePlan) -> u8 {
        let (from, to) = (plan.holders(self.from), plan.holders(self.to));
        let mask = if self.slips_in_new { to & !from } else { from & !to };
        if mask.count_ones() == 1 { mask.trailing_zeros() as u8 } else { NO_LIVE_ELEMENT }
    }

    /// Heat of the shift, J; NaN where the torque was not known.
    pub(super) fn energy_j(&self) -> f32 {
        if self.energy_j < 0.0 { 0.0 } else { self.energy_j }
    }

    /// What is shown of it.
    pub(super) fn shown(&self, plan: &LivePlan) -> LiveShift {
        if self.from == self.to {
            return LiveShift::NONE;
        }
        let element = self.element(plan);
        let rank = if self.slips_in_new { self.to } else { self.from };
        let left = self.left_run >= RUN;
        let end_s = if self.done { self.end_s } else { f32::NAN };
        let left_s = if left { self.left_s } else { f32::NAN };
        let sign_s = if self.sign_s < self.left_s { self.sign_s } else { left_s };
        let (of_flare, of_dip) = self.variances(plan);
        let (rise_k, to_limit) = self.heat(plan, element);
        LiveShift {
            from: plan.place(self.from),
            to: plan.place(self.to),
            element,
            cold: self.is_cold(plan),
            commanded_us: self.began_us,
            half_us: if self.half_s.is_nan() { 0 } else { self.began_us.saturating_add(whole_us(self.half_s).into()) },
            fill_s: if self.commanded { sign_s } else { f32::NAN },
            torque_s: left_s - sign_s,
            inertia_s: end_s - left_s,
            duration_s: end_s,
            flare_rpm: self.flare_rpm,
            flare_u_rpm: sqrt(of_flare),
            dip_rpm: self.dip_rpm(),
            dip_u_rpm: sqrt(of_dip),
            slip_rad: plan.factor(rank, element).abs() * self.turn_rad,
            energy_j: if left { self.energy_j() } else { f32::NAN },
            plate_c: self.plate_c,
            rise_k,
            shifts_to_overheat: to_limit,
            temp_c: self.temp_c,
        }
    }

    /// The fluid was cold.
    pub(super) fn is_cold(&self, plan: &LivePlan) -> bool {
        self.temp_c < plan.limits.cold_c
    }

    /// Time in its inertia phase, s; NaN where it never showed that it left its gear.
    pub(super) fn inertia_s(&self) -> f32 {
        if self.left_run >= RUN { self.end_s - self.left_s } else { f32::NAN }
    }

    /// Variances of flare and dip, (1/min)².
    fn variances(&self, plan: &LivePlan) -> (f32, f32) {
        let high = greater(plan.ratio(self.from), plan.ratio(self.to));
        let output = self.base.level;
        let of_output = plan.output.variance(output);
        let of_slip = plan.input.variance(high * output) + high * high * of_output;
        // A third of the variance is left by the mean, and as much again for being the greatest of several.
        let of_dip = of_output * (2.0 / 3.0 + plan.level_share * plan.level_share)
            + self.line_below_rpm * self.line_below_rpm * (1.0 / 12.0);
        (of_slip * (2.0 / 3.0), of_dip)
    }

    /// Tells of a flare or a dip that is beyond its limit and beyond chance.
    pub(super) fn tell(&self, plan: &LivePlan, about: About, events: &mut LiveEvents) {
        let (of_flare, of_dip) = self.variances(plan);
        let beyond = |value, limit, variance| value >= limit && value * value > 9.0 * variance;
        if beyond(self.flare_rpm, plan.limits.flare_rpm, of_flare) {
            let at_us = self.began_us().wrapping_add(whole_us(self.flare_at_s));
            events.add(LiveEventKind::Flare, about, at_us, (self.flare_rpm, sqrt(of_flare)));
        }
        let dip_rpm = self.dip_rpm();
        if beyond(dip_rpm, plan.limits.dip_share * self.base.level + self.braking_rpm(), of_dip) {
            let at_us = self.began_us().wrapping_add(whole_us(self.dip_at_s));
            events.add(LiveEventKind::TieUp, about, at_us, (dip_rpm, sqrt(of_dip)));
        }
    }

    /// Rise of the plates, and how many more such shifts without a pause reach their limit.
    fn heat(&self, plan: &LivePlan, element: u8) -> (f32, f32) {
        let Some(plates) = Some(plan.element(element)).filter(|plates| plates.is_known()) else {
            return (f32::NAN, f32::NAN);
        };
        let rise_k = self.energy_j() / plates.heat_capacity_j_k;
        let left_k = plates.limit_c - self.plate_c;
        (rise_k, if left_k < 0.0 { 0.0 } else { ceil(left_k / rise_k) })
    }
}

/// Whole microseconds of a time; 0 before the beginning.
fn whole_us(seconds: f32) -> u32 {
    (seconds * 1e6) as u32
}
