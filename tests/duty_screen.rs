//! Screening: the rules of a row, the same bits for one row and for many, sums that no order changes.

#[path = "support/screen.rs"]
mod screen;
mod support;

use proptest::prelude::*;
use screen::{LIMITS, Random, drive, unit};
use support::{Row, vectors};
use trainwright::clutch::CapacityLine;
use trainwright::duty::screen::*;

const ALL_COLUMNS: u32 = (1 << SCREEN_COLUMNS) - 1;

fn bits(answer: &ScreenAnswer) -> Vec<u64> {
    let ScreenAnswer { flags, gear, weakest, .. } = *answer;
    let a = *answer;
    let values = [
        a.duration_s,
        a.gap_s,
        a.input_torque_nm,
        a.output_torque_nm,
        a.input_share,
        a.output_share,
        a.greatest_share,
        a.least_margin,
        a.turns_at_rated,
        a.input_kw,
        a.converter_loss_kw,
        a.gear_loss_kw,
        a.aged_s,
        a.gps_over_speed,
        a.gps_over_output,
    ];
    let bits = values.map(|value| if value.is_nan() { u64::MAX } else { value.to_bits() });
    [u64::from(flags), gear as u64, weakest as u64].into_iter().chain(bits).collect()
}

/// Scalar answers and their tally; the first row has no predecessor.
fn scalar(plan: &ScreenPlan, given: u32, asked: u32, rows: &[ScreenRow]) -> (Vec<ScreenAnswer>, ScreenTally) {
    let mut tally = ScreenTally::EMPTY;
    let mut answers = Vec::new();
    for (i, row) in rows.iter().enumerate() {
        let previous = i.checked_sub(1).map(|before| &rows[before]);
        let answer = plan.row(given, row, previous);
        tally.add_row((given, asked), row, i as u64, &answer);
        answers.push(answer.only(asked));
    }
    (answers, tally)
}

/// The same by blocks of these lengths, repeated.
fn blocks(
    plan: &ScreenPlan,
    given: u32,
    asked: u32,
    rows: &[ScreenRow],
    lengths: &[usize],
) -> (Vec<ScreenAnswer>, ScreenTally) {
    let mut tally = ScreenTally::EMPTY;
    let Some(first) = rows.first() else { return (Vec::new(), tally) };
    let answer = plan.row(given, first, None);
    tally.add_row((given, asked), first, 0, &answer);
    let mut answers = vec![answer.only(asked)];
    let columns: [Vec<f64>; SCREEN_COLUMNS] =
        std::array::from_fn(|column| rows.iter().map(|row| row.values()[column]).collect());
    let mut block = ScreenBlock::new();
    let mut done = 1;
    let mut lengths = lengths.iter().cycle();
    while done < rows.len() {
        let count = (*lengths.next().unwrap()).max(1).min(rows.len() - done);
        let columns = std::array::from_fn(|column| match given >> column & 1 {
            0 => &[][..],
            _ => &columns[column][done - 1..done + count],
        });
        block.screen(plan, asked, (&columns, done as u64, |_| ()), &mut tally);
        answers.extend((0..count.min(ScreenBlock::ROWS)).map(|row| block.answer(plan, asked, row)));
        done += count;
    }
    (answers, tally)
}

fn assert_same(plan: &ScreenPlan, given: u32, asked: u32, rows: &[ScreenRow], lengths: &[usize]) {
    let (one, sum) = scalar(plan, given, asked, rows);
    let (many, sums) = blocks(plan, given, asked, rows, lengths);
    for (i, (one, many)) in one.iter().zip(&many).enumerate() {
        assert_eq!(bits(one), bits(many), "row {i}: {:?}\n{one:?}\n{many:?}", rows[i]);
    }
    assert_eq!(sum.parts().0, sums.parts().0);
    assert_eq!(format!("{:?}", sum.parts().1), format!("{:?}", sums.parts().1));
    // All at once and without the answers of the rows, the same sums.
    let (_, again) = blocks(plan, given, asked & !Ask::ROWS, rows, &[rows.len()]);
    assert_eq!(format!("{again:?}"), format!("{sums:?}"));
}

#[test]
fn one_row_and_many_give_the_same_bits() {
    let plan = unit().plan().unwrap();
    for seed in 0..40 {
        let rows = drive(2000, seed, if seed % 2 == 0 { 0.0 } else { 0.3 });
        assert_same(&plan, ALL_COLUMNS, Ask::ALL | Ask::ROWS | Ask::WEAKEST, &rows, &[ScreenBlock::ROWS]);
    }
}

/// However the columns lie in memory: a long run begins with a short block, so that vectors of the next lie whole.
#[test]
fn a_long_run_gives_the_same_bits_wherever_it_lies() {
    let plan = unit().plan().unwrap();
    let rows = drive(20 * ScreenBlock::ROWS + 13, 7, 0.1);
    let columns: [Vec<f64>; SCREEN_COLUMNS] =
        std::array::from_fn(|column| rows.iter().map(|row| row.values()[column]).collect());
    for start in 0..8 {
        let mut one = ScreenTally::EMPTY;
        for (i, row) in rows.iter().enumerate().skip(start + 1) {
            let answer = plan.row(ALL_COLUMNS, row, Some(&rows[i - 1]));
            one.add_row((ALL_COLUMNS, Ask::ALL), row, i as u64, &answer);
        }
        let columns = std::array::from_fn(|column| &columns[column][start..]);
        let mut many = ScreenTally::EMPTY;
        ScreenBlock::new().screen(&plan, Ask::ALL, (&columns, start as u64 + 1, |_| ()), &mut many);
        assert_eq!(format!("{one:?}"), format!("{many:?}"), "from row {start}");
    }
}

/// A block remembers nothing of the truck before.
#[test]
fn one_block_serves_one_truck_after_the_other() {
    let plan = unit().plan().unwrap();
    let mut block = ScreenBlock::new();
    for seed in 0..20 {
        let rows = drive(if seed % 2 == 0 { 700 } else { 40 }, seed, 0.1);
        let columns: [Vec<f64>; SCREEN_COLUMNS] =
            std::array::from_fn(|column| rows.iter().map(|row| row.values()[column]).collect());
        let columns = std::array::from_fn(|column| columns[column].as_slice());
        let (mut used, mut fresh) = (ScreenTally::EMPTY, ScreenTally::EMPTY);
        block.screen(&plan, Ask::ALL, (&columns, 1, |_| ()), &mut used);
        ScreenBlock::new().screen(&plan, Ask::ALL, (&columns, 1, |_| ()), &mut fresh);
        assert_eq!(format!("{used:?}"), format!("{fresh:?}"));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, ..ProptestConfig::default() })]

    #[test]
    fn any_columns_any_blocks_any_question(
        seed in 0_u64..1000,
        given in 0_u32..1 << SCREEN_COLUMNS,
        asked in 0_u32..512,
        lengths in proptest::collection::vec(1_usize..=ScreenBlock::ROWS, 1..5),
    ) {
        let plan = unit().plan().unwrap();
        assert_same(&plan, given | 1, asked | Ask::SUMS | Ask::ROWS, &drive(400, seed, 0.3), &lengths);
    }

    #[test]
    fn logarithm_and_power_are_those_of_libm(exponent in 0.01_f64..16.0, log2_base in -60.0_f64..16.0) {
        let base = libm_exp2(log2_base);
        let (got, known) = (screen_power(base, exponent).unwrap(), libm_pow(base, exponent));
        prop_assert!((got - known).abs() <= 2e-13 * known, "{base}^{exponent} = {got}, not {known}");
    }
}

fn libm_exp2(x: f64) -> f64 {
    x.exp2()
}

fn libm_pow(x: f64, y: f64) -> f64 {
    x.powf(y)
}

#[test]
fn sums_do_not_depend_on_the_order() {
    let plan = unit().plan().unwrap();
    let rows = drive(3000, 7, 0.2);
    let (_, whole) = scalar(&plan, ALL_COLUMNS, Ask::ALL, &rows);
    let mut parts: Vec<ScreenTally> = Vec::new();
    for (i, row) in rows.iter().enumerate() {
        let previous = i.checked_sub(1).map(|before| &rows[before]);
        let mut tally = ScreenTally::EMPTY;
        tally.add_row((ALL_COLUMNS, Ask::ALL), row, i as u64, &plan.row(ALL_COLUMNS, row, previous));
        parts.push(tally);
    }
    let mut random = Random(99);
    for _ in 0..3 {
        let mut sum = ScreenTally::EMPTY;
        let mut order: Vec<usize> = (0..parts.len()).collect();
        order.sort_by_cached_key(|_| random.next());
        order.into_iter().for_each(|at| sum.merge(&parts[at]));
        assert_eq!(format!("{sum:?}"), format!("{whole:?}"));
    }
}

#[test]
fn a_row_reads_as_the_rules_say() {
    let plan = unit().plan().unwrap();
    let before = ScreenRow {
        time_s: 99.0,
        engine_rpm: 1500.0,
        input_rpm: 1490.0,
        output_rpm: 1078.0,
        engine_torque_nm: 300.0,
        pressure_kpa: 900.0,
        temp_c: 90.0,
        speed_km_h: 43.1,
        gps_km_h: 43.0,
        gear: 5.0,
    };
    let row = ScreenRow { time_s: 100.0, engine_torque_nm: 301.0, ..before };
    let answer = plan.row(ALL_COLUMNS, &row, Some(&before));
    assert_eq!((answer.gear, answer.flags, answer.duration_s), (4, 0, 1.0));
    assert_eq!(answer.input_torque_nm, 301.0);
    assert!((answer.output_torque_nm - 301.0 * 1.383 * 0.97).abs() < 1e-9);
    assert!((answer.turns_at_rated - 1490.0 / 60.0 * (301.0_f64 / 560.0).powf(6.5)).abs() < 1e-12);
    let flags = |row: &ScreenRow, before: Option<&ScreenRow>| plan.row(ALL_COLUMNS, row, before).flags;
    assert_eq!(flags(&row, None), FLAG_FIRST);
    assert_eq!(flags(&ScreenRow { time_s: 99.0, ..row }, Some(&before)), FLAG_DUPLICATE);
    assert_eq!(flags(&ScreenRow { time_s: 98.0, ..row }, Some(&before)), FLAG_REVERSED);
    assert_eq!(flags(&ScreenRow { time_s: 109.5, ..row }, Some(&before)), FLAG_GAP);
    assert_eq!(flags(&ScreenRow { engine_torque_nm: 300.0, ..row }, Some(&before)), FLAG_STALE);
    assert_eq!(flags(&ScreenRow { engine_torque_nm: 12.0, ..row }, Some(&before)), FLAG_LITTLE_TORQUE);
    assert_eq!(flags(&ScreenRow { gear: 6.0, ..row }, Some(&before)), FLAG_MISMATCH);
    assert_eq!(flags(&ScreenRow { temp_c: 121.0, ..row }, Some(&before)), FLAG_HOT);
    assert_eq!(flags(&ScreenRow { output_rpm: 2.0, gear: 0.0, ..row }, Some(&before)), FLAG_STANDING);
    assert_eq!(flags(&ScreenRow { output_rpm: 970.0, ..row }, Some(&before)), FLAG_NO_GEAR);
    assert_eq!(flags(&ScreenRow { output_rpm: f64::NAN, ..row }, Some(&before)), 1 << 3 | FLAG_UNKNOWN);
    let slipping = ScreenRow { engine_rpm: 1490.0 / 0.7, ..row };
    let answer = plan.row(ALL_COLUMNS, &slipping, Some(&before));
    assert_eq!(answer.flags, FLAG_UNLOCKED);
    assert!((answer.input_torque_nm - 301.0 * 1.17).abs() < 1e-9);
}

#[test]
fn what_is_impossible_is_refused() {
    let kind = |change: fn(&mut ScreenUnit)| {
        let mut unit = unit();
        change(&mut unit);
        unit.plan().unwrap_err().kind()
    };
    assert_eq!(kind(|unit| unit.gear_count = 0), "COUNT");
    assert_eq!(kind(|unit| unit.limits.ratio_tolerance = 0.3), "OUT_OF_RANGE");
    assert_eq!(kind(|unit| unit.limits.gap_s = 1000.0), "OUT_OF_RANGE");
    assert_eq!(kind(|unit| unit.rated_input_nm = f64::NAN), "NOT_FINITE");
    assert_eq!(kind(|unit| unit.gears[0].number = -1), "INCONSISTENT");
    assert_eq!(kind(|unit| unit.gears[1].ratio = unit.gears[0].ratio), "INCONSISTENT");
    assert_eq!(kind(|unit| unit.gears[0].efficiency = 1.1), "OUT_OF_RANGE");
    assert_eq!(kind(|unit| unit.gears[0].holding[0].share = 0.0), "NOT_POSITIVE");
    assert_eq!(kind(|unit| unit.damage.slope = 0.5), "OUT_OF_RANGE");
    assert_eq!(kind(|unit| unit.converter.speed_ratio[2] = 0.1), "INCONSISTENT");
    assert_eq!(ScreenConverter::of_points(&[0.0], &[2.0]).unwrap_err().kind(), "COUNT");
    assert_eq!(LIMITS, unit().limits);
}

/// The truck of the vectors.
fn vector_truck() -> ScreenPlan {
    let lines = [(9000.0, 0.0, 1200.0, 500.0), (8000.0, 2e-5, 1000.0, 400.0)];
    let holding = |element: u8, share: f64| {
        let (piston_area_mm2, head_n_per_rpm2, held_back_n, arm_mm) = lines[usize::from(element)];
        let line = CapacityLine { piston_area_mm2, head_n_per_rpm2, held_back_n, arm_mm };
        ScreenHolding { element, share, turns: element.into(), line, friction: 0.1 }
    };
    let mut unit = ScreenUnit::new(500.0, 1500.0, LIMITS);
    for (number, ratio, efficiency, contacts, share, packs) in [
        (1, 3.0, 0.96, 3.0, 0.8, vec![holding(0, 1.0)]),
        (2, 1.0, 0.99, 0.0, 0.0, vec![holding(0, 0.6), holding(1, 0.4)]),
        (-1, -2.5, 0.95, 5.0, 2.0, vec![holding(1, 2.5)]),
    ] {
        let mut gear = ScreenGear { number, ratio, efficiency, holding_count: packs.len() as u32, ..ScreenGear::NONE };
        gear.holding[..packs.len()].copy_from_slice(&packs);
        gear.contacts_per_turn[0] = contacts;
        gear.sun_share[0] = share;
        unit.add_gear(gear).unwrap();
    }
    unit.damage.slope = 6.0;
    unit.damage.reference_contacts = 1e6;
    unit.damage.reference_nm[0] = 1000.0;
    unit.fluid = ScreenFluid { life_h: 2000.0, reference_c: 80.0, halving_k: 10.0 };
    unit.converter = ScreenConverter::of_points(&[0.0, 0.5, 0.9], &[2.0, 1.5, 1.0]).unwrap();
    unit.output_rpm_per_km_h = 20.0;
    unit.plan().unwrap()
}

fn row_of(row: &Row) -> ScreenRow {
    ScreenRow::of_values(SCREEN_COLUMN_NAMES.map(|name| row.number(name)))
}

#[test]
fn published_rows() {
    let plan = vector_truck();
    vectors("duty_row", |row| {
        let now = row_of(row);
        let before = ScreenRow { time_s: row.number("before_s"), engine_torque_nm: row.number("before_nm"), ..now };
        let a = plan.row(row.count("given"), &now, Some(&before));
        let formed = |value: f64| if value.is_nan() { -1.0 } else { value };
        Ok([
            a.flags.into(),
            a.gear.into(),
            a.weakest.into(),
            a.duration_s,
            formed(a.input_torque_nm),
            formed(a.output_torque_nm),
            formed(a.least_margin),
            a.turns_at_rated,
            formed(a.converter_loss_kw),
            formed(a.gear_loss_kw),
            a.aged_s,
            formed(a.gps_over_speed),
            formed(a.gps_over_output),
        ])
    });
    vectors("duty_screen_power", |row| Ok([screen_power(row.number("base"), row.number("exponent"))?]));
}

/// The margin is that of the clutch chapter, its damage that of the rule written out.
#[test]
fn margin_and_damage_are_those_of_their_chapters() {
    let unit = unit();
    let plan = unit.plan().unwrap();
    let rows = drive(3000, 5, 0.0);
    for pair in rows.windows(2) {
        let (before, row) = (&pair[0], &pair[1]);
        let answer = plan.row(ALL_COLUMNS, row, Some(before));
        let Ok(place) = usize::try_from(answer.gear) else { continue };
        let (gear, size_nm) = (&unit.gears[place], answer.input_torque_nm.abs());
        let margins = gear.holding[..gear.holding_count as usize].iter().map(|pack| {
            let drum_rpm = pack.turns * row.input_rpm;
            pack.line.capacity_nm(row.pressure_kpa, drum_rpm, pack.friction).unwrap() / (pack.share * size_nm)
        });
        let least = margins.fold(f64::INFINITY, f64::min);
        if !answer.least_margin.is_nan() {
            assert!((answer.least_margin - least).abs() <= 1e-12 * least, "{answer:?}, not {least}");
        }
        for (set, damage) in plan.damages(&answer).into_iter().enumerate().take(4) {
            let contacts = answer.duration_s / 60.0 * row.input_rpm * gear.contacts_per_turn[set];
            let load = gear.sun_share[set] * size_nm / unit.damage.reference_nm[set];
            let known = contacts / unit.damage.reference_contacts * load.powf(unit.damage.slope);
            assert!((damage - known).abs() <= 1e-11 * known, "set {set}: {damage}, not {known}");
        }
    }
}
