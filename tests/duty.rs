//! Duty: meshes, bus values, cycle counting, damage, life, rank and wheels against sources, properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::trains::train;
use support::{Row, vectors};
use trainwright::duty::{
    AgingKind, AgingRule, BusNetwork, BusRules, BusSignal, CauseFit, DamageLine, DamageRange, DutyStage, FluidBin,
    RankInterval, RatioCause, RatioRule, RatiosSeen, ResidueRule, bus_signal, damage_interval, fluid_life, mesh_duty,
    other_driveline, other_teeth, rainflow, rank_intervals, ratio_of, resampled_total, residence, weigh_causes,
};
use trainwright::hold::{LoadStage, ROLLER_EXPONENT, mean_load, rating_life};
use trainwright::judge::Reading;
use trainwright::road::Driveline;
use trainwright::train::Fraction;
use trainwright::{Error, Result};

fn open_as_infinite(fraction: Fraction) -> f64 {
    fraction.value().unwrap_or(f64::INFINITY)
}

#[test]
fn meshes() {
    vectors("duty_mesh_duty", |row| {
        let train = train(row.text("train"))?;
        let duty = mesh_duty(&train, &train.solve(row.count("closed"))?, row.count("set") as u8)?;
        let wheels = [duty.sun, duty.sun_2, duty.ring].map(|wheel| [wheel.contacts, wheel.torque]);
        let [[s, t_s], [s_2, t_s_2], [r, t_r]] = wheels;
        Ok([s, t_s, s_2, t_s_2, r, t_r, duty.planet_contacts, duty.planet_2_contacts].map(open_as_infinite))
    });
    let unit = train("4 0 1 2 / simple:3 20 - 7 - 34 @ 0 - 3 1 / brake 3 2").unwrap();
    let no_such_set = mesh_duty(&unit, &unit.solve(1).unwrap(), 1).unwrap_err();
    assert_eq!(no_such_set.to_string(), "set = 1: outside 0 to 0; check the value and its unit"); // Python names sets
}

fn signal(row: &Row) -> Result<BusSignal> {
    match row.count("number") {
        0 => Ok(BusSignal {
            rules: [BusRules::Marked, BusRules::Plain][row.count("rules") as usize],
            bits: row.count("bits") as u8,
            resolution: row.number("resolution"),
            offset: row.number("offset"),
            lower: row.number("lower"),
            upper: row.number("upper"),
        }),
        number => bus_signal([BusNetwork::J1939, BusNetwork::Obd][row.count("network") as usize], number),
    }
}

#[test]
fn bus_values() {
    vectors("duty_decode", |row| {
        let decoded = signal(row)?.decode(row.count("raw"))?;
        Ok([f64::from(decoded.meaning as u8), decoded.value])
    });
    vectors("duty_classify", |row| {
        let found = signal(row)?.classify(row.number("value"))?;
        Ok([f64::from(found.meaning as u8), found.value])
    });
    vectors("duty_step_error", |row| Ok([signal(row)?.step_error(row.number("value"))?]));
    let output_speed = bus_signal(BusNetwork::J1939, 191).unwrap();
    let of_a_ratio = 2.0 * output_speed.step_error(1500.0).unwrap();
    assert!((of_a_ratio - 8.4e-5).abs() < 2e-6); // computed: half a step on each of two signals
}

proptest! {
    #[test]
    fn what_is_decoded_is_classified_the_same(raw in 0_u32..=0xFFFF, resolution in 1e-3_f64..20.0, offset in -300.0_f64..300.0) {
        for rules in [BusRules::Marked, BusRules::Plain] {
            let signal = BusSignal { rules, bits: 16, resolution, offset, lower: -1e3, upper: 1e5 };
            let decoded = signal.decode(raw).unwrap();
            prop_assert_eq!(signal.classify(decoded.value).unwrap(), decoded);
        }
    }
}

#[test]
fn histories() {
    vectors("duty_rainflow", |row| {
        let values = row.numbers("values");
        let residue = [ResidueRule::HalfCycles, ResidueRule::Repeated][row.count("residue") as usize];
        let (size, mut sums, mut entries) = (row.count("size"), [0.0; 3], 0);
        let count = rainflow(&values, residue, &mut vec![0.0; row.count("stack") as usize], |cycle| {
            entries += 1;
            if entries > size {
                return Err(Error::Count { name: "cycles", count: entries, low: 0, high: size });
            }
            let parts = [cycle.range, cycle.range * cycle.range * cycle.range, cycle.mean];
            for (sum, part) in sums.iter_mut().zip(parts) {
                *sum += part * cycle.cycles;
            }
            Ok(())
        })?;
        let [sum, cubes, means] = sums;
        let [reversals, pieces, missing] = [count.reversals, count.pieces, count.missing].map(f64::from);
        Ok([count.cycles, reversals, pieces, missing, count.largest_range, sum, cubes, means])
    });
    vectors("duty_residence", |row| {
        let (time_s, values, edges) = (row.numbers("time_s"), row.numbers("values"), row.numbers("edges"));
        let mut seconds = vec![0.0; edges.len() - 1];
        let r = residence(&time_s, &values, &edges, row.number("gap_limit_s"), &mut seconds)?;
        let [duplicates, reversed] = [r.duplicates, r.reversed].map(f64::from);
        let rest = [r.inside_s, r.below_s, r.above_s, r.missing_s, r.gap_s, duplicates, reversed];
        Ok(std::array::from_fn::<_, 10, _>(|i| if i < 3 { seconds[i] } else { rest[i - 3] }))
    });
}

fn stages(row: &Row) -> Vec<DutyStage> {
    let pairs = row.numbers("contacts").into_iter().zip(row.numbers("torque_nm"));
    pairs.map(|(contacts, torque_nm)| DutyStage { contacts, torque_nm }).collect()
}

#[test]
fn damages() {
    vectors("duty_from_rating", |row| {
        let [slope, contacts, over, share, rated] =
            ["slope", "reference_contacts", "over_rated", "worst_share", "rated_nm"].map(|column| row.number(column));
        let line = DamageLine::from_rating(slope, contacts, over, share, rated)?;
        Ok([line.slope, line.reference_nm, line.reference_contacts])
    });
    vectors("duty_damage", |row| {
        let [slope, reference_nm, reference_contacts] =
            ["slope", "reference_nm", "reference_contacts"].map(|column| row.number(column));
        let d = DamageLine { slope, reference_nm, reference_contacts }.damage(&stages(row))?;
        Ok([d.total, d.greatest, f64::from(d.governing), d.governing_share, d.contacts])
    });
    vectors("duty_damage_interval", |row| {
        let known = DamageRange {
            slope_low: row.number("slope_low"),
            slope_high: row.number("slope_high"),
            reference_low_nm: row.number("reference_low_nm"),
            reference_high_nm: row.number("reference_high_nm"),
            reference_contacts: row.number("reference_contacts"),
        };
        let i = damage_interval(&stages(row), known)?;
        Ok([i.lower, i.upper, i.slope_at_lower, i.slope_at_upper])
    });
}

#[test]
fn damage_of_a_bearing_is_turns_over_its_rating_life() {
    let stages = [(6000.0, 1500.0, 0.1), (3000.0, 2500.0, 0.3), (1000.0, 3000.0, 0.6)];
    let (capacity_n, hours) = (30_000.0, 1000.0);
    let line = DamageLine { slope: ROLLER_EXPONENT, reference_nm: capacity_n, reference_contacts: 1e6 };
    let turns = stages.map(|(load, rpm, share)| DutyStage { contacts: share * hours * 60.0 * rpm, torque_nm: load });
    let damage = line.damage(&turns).unwrap();
    let mean =
        mean_load(&stages.map(|(load_n, speed_rpm, share)| LoadStage { load_n, speed_rpm, share }), ROLLER_EXPONENT);
    let mean = mean.unwrap();
    let life = rating_life(capacity_n, mean.load_n, ROLLER_EXPONENT, mean.speed_rpm).unwrap();
    assert!((damage.total / (hours / life.life_h) - 1.0).abs() < 1e-12, "{damage:?} {life:?}"); // ISO 281 both ways
    assert_eq!(damage.governing, mean.governing);
}

fn aging(row: &Row) -> AgingRule {
    AgingRule {
        kind: [AgingKind::Halving, AgingKind::Arrhenius][row.count("kind") as usize],
        reference_c: row.number("reference_c"),
        halving_k: row.number("halving_k"),
        activation_k: row.number("activation_k"),
        least_factor: row.number("least_factor"),
    }
}

#[test]
fn lives() {
    vectors("duty_aging_factor", |row| {
        let factor = aging(row).aging_factor(row.number("temp_c"))?;
        Ok([factor, 1e5 / factor])
    });
    vectors("duty_halving", |row| {
        let rule = AgingRule::halving(row.number("reference_c"), row.number("halving_k"), row.number("least_factor"))?;
        Ok([rule.reference_c, rule.halving_k, rule.least_factor])
    });
    vectors("duty_arrhenius", |row| {
        let rule = AgingRule::arrhenius(row.number("reference_c"), row.number("activation_k"))?;
        Ok([rule.reference_c, rule.activation_k])
    });
    vectors("duty_fluid_life", |row| {
        let rule = AgingRule {
            kind: AgingKind::Halving,
            reference_c: row.number("reference_c"),
            halving_k: row.number("halving_k"),
            activation_k: 0.0,
            least_factor: row.number("least_factor"),
        };
        let pairs = row.numbers("temp_c").into_iter().zip(row.numbers("duration_h"));
        let bins: Vec<_> = pairs.map(|(temp_c, duration_h)| FluidBin { temp_c, duration_h }).collect();
        let l = fluid_life(&bins, row.number("unknown_h"), row.number("life_h"), rule)?;
        Ok([l.used, l.used_lower, l.used_upper, l.known_h, l.left_h, l.worst_share, l.worst_from_c])
    });
}

#[test]
fn places() {
    vectors("duty_rank_intervals", |row| {
        let (lower, upper) = (row.numbers("lower"), row.numbers("upper"));
        let mut ranks = [RankInterval { first: 0, last: 0 }; 3];
        rank_intervals(&lower, &upper, &mut ranks)?;
        let [a, b, c] = ranks;
        Ok([a.first, a.last, b.first, b.last, c.first, c.last].map(f64::from))
    });
    vectors("duty_resampled_total", |row| {
        let [seed, draw] = ["seed", "draw"].map(|column| row.text(column).parse().unwrap());
        Ok([resampled_total(&row.numbers("periods"), seed, draw)?])
    });
}

fn causes(row: &Row) -> Vec<RatioCause> {
    let parts = row.text("causes").split_whitespace().map(|cause| {
        let mut cells = cause.split(':').map(|cell| cell.parse().unwrap());
        let mut next = || cells.next().unwrap();
        RatioCause { road: Reading { value: next(), u: next() }, gear: next(), weight: next() }
    });
    parts.collect()
}

#[test]
fn wheels() {
    vectors("duty_ratio_of", |row| {
        let rule = RatioRule {
            least: row.number("least"),
            quantum: row.number("quantum"),
            u_rel: row.number("u_rel"),
            block_rows: row.count("block_rows"),
        };
        let r = ratio_of(&row.numbers("true_values"), &row.numbers("shown_values"), rule)?;
        let [used, slow, missing, blocks] = [r.used, r.slow, r.missing, r.blocks].map(f64::from);
        let parts = [r.scatter_u, r.step_u, r.true_u, r.mean_shown, used, slow, missing, blocks];
        Ok(std::array::from_fn::<_, 10, _>(|i| match i {
            0 => r.ratio.value,
            1 => r.ratio.u,
            _ => parts[i - 2],
        }))
    });
    vectors("duty_other_driveline", |row| {
        let line = |which: &str, u: f64| Driveline {
            axle_ratio: row.number(&format!("axle_{which}")),
            transfer_ratio: 1.0,
            circumference_mm: Reading { value: row.number(&format!("circumference_{which}_mm")), u },
        };
        let fitted = line("fitted", row.number("circumference_fitted_u_mm"));
        let cause = other_driveline(line("programmed", 0.0), fitted, row.number("weight"))?;
        Ok([cause.road.value, cause.road.u, cause.gear, cause.weight])
    });
    vectors("duty_other_teeth", |row| {
        let cause = other_teeth(row.count("programmed"), row.count("fitted"), row.number("weight"))?;
        Ok([cause.road.value, cause.gear])
    });
    vectors("duty_weigh_causes", |row| {
        let gear_known = !row.text("gear").is_empty();
        let cell = |column| if gear_known { row.number(column) } else { 0.0 };
        let measured = RatiosSeen {
            road: Reading { value: row.number("road"), u: row.number("road_u") },
            gear: Reading { value: cell("gear"), u: cell("gear_u") },
            gear_known,
        };
        let causes = causes(row);
        let mut fits = vec![CauseFit::NONE; causes.len()];
        let found = weigh_causes(measured, &causes, row.number("enough"), row.number("most_z"), &mut fits)?;
        let fit = found.fit;
        let (kind, best) = (f64::from(found.kind as u8), f64::from(found.best));
        Ok([kind, best, fit.chance, fit.road_z, fit.gear_z, fits[0].chance, fits[1].chance])
    });
}

proptest! {
    #[test]
    fn cycles_are_half_the_ranges_between_turning_points(values in proptest::collection::vec(-500.0_f64..500.0, 2..200)) {
        let mut stack = vec![0.0; 3 * values.len() + 12];
        let (mut cycles, mut longest) = (0.0, 0.0_f64);
        let count = rainflow(&values, ResidueRule::HalfCycles, &mut stack, |cycle| {
            cycles += cycle.cycles;
            longest = longest.max(cycle.range);
            Ok(())
        }).unwrap();
        prop_assert_eq!(2.0 * cycles, f64::from(count.reversals.saturating_sub(1)));
        let [low, high] = [f64::min, f64::max].map(|pick| values.iter().copied().reduce(pick).unwrap());
        prop_assert_eq!(longest, high - low);
    }

    #[test]
    fn a_repeated_history_may_begin_anywhere(values in proptest::collection::vec(-50_i32..50, 3..60), turn in 0_usize..60) {
        let ranges = |values: &[i32]| {
            let values: Vec<f64> = values.iter().copied().map(f64::from).collect();
            let mut found = Vec::new();
            let mut stack = vec![0.0; 3 * values.len() + 12];
            rainflow(&values, ResidueRule::Repeated, &mut stack, |cycle| {
                found.push((cycle.range as i64, (cycle.mean * 2.0) as i64, (cycle.cycles * 2.0) as i64));
                Ok(())
            }).unwrap();
            found.sort_unstable();
            found
        };
        let mut turned = values.clone();
        turned.rotate_left(turn % values.len());
        prop_assert_eq!(ranges(&values), ranges(&turned));
    }

    #[test]
    fn no_second_is_lost(steps in proptest::collection::vec((0_u8..9, 0_u8..12), 2..80)) {
        let mut time = 0.0;
        let (mut time_s, mut values) = (Vec::new(), Vec::new());
        for (step, value) in steps {
            time += f64::from(step);
            time_s.push(time);
            values.push(if value == 11 { f64::NAN } else { f64::from(value) });
        }
        let mut seconds = [0.0; 2];
        let rest = residence(&time_s, &values, &[3.0, 5.0, 8.0], 6.0, &mut seconds).unwrap();
        let sum: f64 = [seconds[0], seconds[1], rest.below_s, rest.above_s, rest.missing_s, rest.gap_s].iter().sum();
        prop_assert_eq!(sum, time_s[time_s.len() - 1] - time_s[0]);
    }

    #[test]
    fn an_interval_of_damage_holds_every_line_within(
        loads in proptest::collection::vec((1.0_f64..1e6, 20.0_f64..300.0), 1..6), at in 0.0_f64..1.0, reference in 0.0_f64..1.0,
    ) {
        let stages: Vec<_> = loads.into_iter().map(|(contacts, torque_nm)| DutyStage { contacts, torque_nm }).collect();
        let known = DamageRange {
            slope_low: 5.0, slope_high: 8.0, reference_low_nm: 90.0, reference_high_nm: 120.0, reference_contacts: 1e6,
        };
        let interval = damage_interval(&stages, known).unwrap();
        let line = DamageLine { slope: 5.0 + 3.0 * at, reference_nm: 90.0 + 30.0 * reference, reference_contacts: 1e6 };
        let total = line.damage(&stages).unwrap().total;
        prop_assert!(interval.lower <= total * (1.0 + 1e-9) && total <= interval.upper * (1.0 + 1e-9), "{interval:?} {total}");
    }

    #[test]
    fn chances_of_causes_add_up(road in 0.7_f64..1.4, ks in proptest::collection::vec(0.7_f64..1.4, 1..7)) {
        let causes: Vec<_> = ks.iter()
            .map(|&value| RatioCause { road: Reading { value, u: 0.01 }, gear: 1.0, weight: 1.0 }).collect();
        let road = Reading { value: road, u: 0.005 };
        let mut fits = vec![CauseFit::NONE; causes.len()];
        let seen = RatiosSeen { road, gear: road, gear_known: false };
        let found = weigh_causes(seen, &causes, 0.9, 3.0, &mut fits).unwrap();
        prop_assert!((fits.iter().map(|fit| fit.chance).sum::<f64>() - 1.0).abs() < 1e-12);
        let nearest = ks.iter().map(|k| (k - road.value).abs()).fold(f64::INFINITY, f64::min);
        prop_assert_eq!((ks[found.best as usize] - road.value).abs(), nearest);
    }
}
