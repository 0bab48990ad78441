//! Thrust bearings, shafts, splines and their comparison against sources, properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::clutch::{Annulus, Applied, Head, Pack};
use trainwright::hold::{
    BALL_EXPONENT, Better, Effect, Helical, HelicalSun, LoadStage, NeedleThrust, ROLLER_EXPONENT, SetPack, SetWheel,
    Shaft, ShaftLoad, Spline, ThrustWasher, Torsion, Wheel, axial_thrust, change, compare_needles, compare_packs,
    compare_shafts, compare_suns, mean_load, rating_life, wheel_thrust,
};
use trainwright::judge::{Judgment, Limits, Reading, Rule};

fn decided(judgment: Judgment) -> [f64; 2] {
    [judgment.chance, f64::from(judgment.verdict as i32)]
}

fn needles(row: &Row) -> NeedleThrust {
    NeedleThrust {
        needles: row.count("needles"),
        needle_diameter_mm: row.number("needle_diameter_mm"),
        needle_length_mm: row.number("needle_length_mm"),
        pitch_diameter_mm: row.number("pitch_diameter_mm"),
    }
}

#[test]
fn thrust_bearings() {
    vectors("hold_needle_capacity", |row| {
        let c = needles(row).needle_capacity()?;
        Ok([c.inside_mm, c.outside_mm, c.gap_mm, c.size_ratio, c.dynamic_factor, c.static_n, c.dynamic_n])
    });
    vectors("hold_rating_life", |row| {
        let [capacity, load, exponent, speed] =
            ["capacity_n", "load_n", "exponent", "speed_rpm"].map(|column| row.number(column));
        let life = rating_life(capacity, load, exponent, speed)?;
        Ok([life.load_share, life.life_mrev, life.life_h])
    });
    vectors("hold_mean_load", |row| {
        let stages: Vec<_> = row.text("stages").split_whitespace().map(stage).collect();
        let mean = mean_load(&stages, row.number("exponent"))?;
        Ok([mean.load_n, mean.speed_rpm, mean.greatest_n, f64::from(mean.governing), mean.governing_share])
    });
    vectors("hold_needle_hold", |row| {
        let load = row.reading("load_n", "load_u_n");
        let hold = needles(row).needle_hold(load, row.number("least_static_factor"), row.rule()?)?;
        let [chance, verdict] = decided(hold.judgment);
        Ok([hold.static_factor, hold.judgment.limits.upper, chance, verdict])
    });
    vectors("hold_needle_lasts", |row| {
        let load = row.reading("load_n", "load_u_n");
        let (speed, hours) = (row.number("speed_rpm"), row.number("least_life_h"));
        let lasts = needles(row).needle_lasts(load, speed, hours, row.rule()?)?;
        let [chance, verdict] = decided(lasts.judgment);
        Ok([lasts.life.life_mrev, lasts.life.life_h, lasts.load_for_life_n, chance, verdict])
    });
}

fn stage(text: &str) -> LoadStage {
    let mut cells = text.split(':').map(|cell| cell.parse().unwrap());
    let mut next = || cells.next().unwrap();
    LoadStage { load_n: next(), speed_rpm: next(), share: next() }
}

#[test]
fn washers() {
    vectors("hold_washer_load", |row| {
        let washer = ThrustWasher {
            outside_mm: row.number("outside_mm"),
            inside_mm: row.number("inside_mm"),
            face_share: row.number("face_share"),
        };
        let load = washer.washer_load(row.number("load_n"), row.number("speed_rpm"))?;
        Ok([load.area_mm2, load.unit_load_mpa, load.mean_diameter_mm, load.sliding_m_s, load.pv_mpa_m_s])
    });
}

fn helical(row: &Row) -> Helical {
    Helical { module_mm: row.number("module_mm"), helix_deg: row.number("helix_deg") }
}

#[test]
fn meshes() {
    vectors("hold_axial_thrust", |row| {
        let thrust = axial_thrust(row.number("torque_nm"), row.count("teeth") as u16, helical(row))?;
        Ok([thrust.pitch_radius_mm, thrust.tangential_n, thrust.axial_n])
    });
    vectors("hold_wheel_thrust", |row| {
        let train = train(row.text("train"))?;
        let wheel = [Wheel::Sun, Wheel::Sun2, Wheel::Ring][row.count("wheel") as usize];
        let at = SetWheel { set: row.count("set") as u8, wheel, helical: helical(row) };
        let state = train.solve(row.count("closed"))?;
        let (torque, speed) = (row.number("input_torque_nm"), row.number("input_speed_rpm"));
        let pushed = wheel_thrust(&train, &state, at, torque, speed)?;
        let thrust = pushed.thrust;
        Ok([pushed.torque_nm, thrust.pitch_radius_mm, thrust.tangential_n, thrust.axial_n, pushed.carrier_slip_rpm])
    });
}

fn shaft(row: &Row, side: &str) -> Shaft {
    Shaft { outside_mm: row.number(&format!("{side}outside_mm")), inside_mm: row.number(&format!("{side}inside_mm")) }
}

#[test]
fn shafts() {
    vectors("hold_torsion", |row| {
        let Torsion { polar_moment_mm4, section_modulus_mm3, stress_mpa, bore_stress_mpa } =
            shaft(row, "").torsion(row.number("torque_nm"))?;
        Ok([polar_moment_mm4, section_modulus_mm3, stress_mpa, bore_stress_mpa])
    });
    vectors("hold_twist_deg", |row| {
        let (length, modulus) = (row.number("length_mm"), row.number("shear_modulus_mpa"));
        Ok([shaft(row, "").twist_deg(row.number("torque_nm"), length, modulus)?])
    });
    vectors("hold_hollow_over_solid", |row| {
        let kept = shaft(row, "").hollow_over_solid()?;
        Ok([kept.strength, kept.mass])
    });
    vectors("hold_shaft_hold", |row| {
        let load = ShaftLoad {
            torque_nm: row.reading("torque_nm", "torque_u_nm"),
            shear_yield_mpa: row.reading("shear_yield_mpa", "shear_yield_u_mpa"),
            stress_factor: row.number("stress_factor"),
            stress_u_rel: row.number("stress_u_rel"),
        };
        let hold = shaft(row, "").shaft_hold(load, row.rule()?)?;
        let [chance, verdict] = decided(hold.judgment);
        Ok([hold.torsion.stress_mpa, hold.yield_share, hold.torque_at_yield_nm, hold.factor_at_yield, chance, verdict])
    });
    vectors("hold_spline_load", |row| {
        let spline = Spline {
            teeth: row.count("teeth"),
            major_mm: row.number("major_mm"),
            minor_mm: row.number("minor_mm"),
            pitch_diameter_mm: row.number("pitch_diameter_mm"),
            length_mm: row.number("length_mm"),
        };
        let load = spline.spline_load(row.number("torque_nm"), row.number("carrying_share"))?;
        Ok([load.height_mm, load.mean_radius_mm, load.thickness_mm, load.tooth_n, load.bearing_mpa, load.shear_mpa])
    });
}

fn race(row: &Row, side: &str) -> NeedleThrust {
    let [count, needle_diameter_mm, needle_length_mm, pitch_diameter_mm] = row.numbers(side)[..] else {
        panic!("{side}: four numbers")
    };
    NeedleThrust { needles: count as u32, needle_diameter_mm, needle_length_mm, pitch_diameter_mm }
}

fn sun(row: &Row, side: &str) -> HelicalSun {
    let [teeth, planets, module_mm, helix_deg, face_mm] = row.numbers(side)[..] else { panic!("{side}: five numbers") };
    HelicalSun { teeth: teeth as u16, planets: planets as u8, helical: Helical { module_mm, helix_deg }, face_mm }
}

fn set_pack(row: &Row, side: &str) -> SetPack {
    let ring = |part: &str| Annulus {
        inner_radius_mm: row.number(&format!("{part}_inner_radius_mm")),
        outer_radius_mm: row.number(&format!("{part}_outer_radius_mm")),
    };
    let spring = row.number("spring_n");
    SetPack {
        pack: Pack {
            lining: ring("lining"),
            piston: ring("piston"),
            faces: row.count(&format!("{side}_faces")),
            worn: false,
            return_spring_n: Limits { lower: spring, upper: spring },
            seal_drag_n: 0.0,
            head: Head::NONE,
            dam: Head::NONE,
        },
        clearance_mm: row.number(&format!("{side}_clearance_mm")),
    }
}

#[test]
fn comparisons() {
    vectors("hold_change", |row| {
        let better = [Better::Neither, Better::More, Better::Less][row.count("better") as usize];
        let changed = change(row.number("before"), row.number("after"), better, row.number("same_within"))?;
        Ok([changed.ratio, f64::from(changed.effect as u8)])
    });
    vectors("hold_compare_needles", |row| {
        let c = compare_needles(race(row, "before"), race(row, "after"))?;
        Ok([c.static_n, c.dynamic_n, c.life, c.life_by_size, c.outside_mm, c.face_mm].map(|change| change.ratio))
    });
    vectors("hold_compare_shafts", |row| {
        let (before, after) = (row.number("torque_before_nm"), row.number("torque_after_nm"));
        let c = compare_shafts(shaft(row, "before_"), shaft(row, "after_"), before, after)?;
        let changes = [c.stress_own_mpa, c.stress_same_mpa, c.torque_nm, c.polar_moment_mm4, c.section_mm2];
        Ok(changes.map(|change| change.ratio))
    });
    vectors("hold_compare_packs", |row| {
        let applied = Applied {
            pressure_kpa: row.number("pressure_kpa"),
            friction: row.number("friction"),
            drum_speed_rpm: 0.0,
            oil_density_kg_m3: 0.0,
        };
        let c = compare_packs(set_pack(row, "before"), set_pack(row, "after"), applied)?;
        let changes = [c.capacity_nm, c.pressure_kpa, c.friction_area_mm2, c.faces, c.clearance_per_face_mm, c.fill_ml];
        Ok(changes.map(|change| change.ratio))
    });
    vectors("hold_compare_suns", |row| {
        let c = compare_suns(sun(row, "before"), sun(row, "after"), row.number("torque_nm"))?;
        Ok([c.unit_load_mpa, c.axial_n, c.module_mm, c.planets].map(|change| change.ratio))
    });
}

const NARROW: NeedleThrust =
    NeedleThrust { needles: 32, needle_diameter_mm: 2.5, needle_length_mm: 6.0, pitch_diameter_mm: 56.0 };

#[test]
fn needles_that_do_not_fit_say_what_to_correct() {
    let error = NeedleThrust { needles: 63, ..NARROW }.needle_capacity().unwrap_err();
    assert!(error.to_string().contains("do not fit side by side"), "{error}");
    let error = rating_life(20_000.0, 10_001.0, ROLLER_EXPONENT, 1000.0).unwrap_err();
    assert_eq!(error, Error::OutOfRange { name: "load_n", value: 10_001.0, low: 0.0, high: 10_000.0 });
}

/// The wide race lives longer by more than its width, and on the face of the narrow sun it would not lie.
#[test]
fn the_wider_race_costs_a_wider_face() {
    let wide = NeedleThrust { needles: 36, needle_length_mm: 9.0, pitch_diameter_mm: 60.0, ..NARROW };
    let bought = compare_needles(NARROW, wide).unwrap();
    assert_eq!((bought.static_n.effect, bought.life.effect), (Effect::Buys, Effect::Buys));
    assert_eq!((bought.outside_mm.effect, bought.face_mm.effect), (Effect::Costs, Effect::Costs));
    assert!(bought.life.ratio < bought.life_by_size.ratio, "f_c falls as the pitch diameter grows");
}

proptest! {
    /// The life of the mean load over the whole duty uses up exactly what the stages use up one by one.
    #[test]
    fn mean_load_does_the_damage_of_its_stages(
        loads in proptest::collection::vec((1.0..5e3, 1.0..5e3, 0.01..1.0), 1..8), exponent in BALL_EXPONENT..ROLLER_EXPONENT,
    ) {
        let stages: Vec<_> = loads.iter().map(|&(load_n, speed_rpm, share)| LoadStage { load_n, speed_rpm, share }).collect();
        let mean = mean_load(&stages, exponent).unwrap();
        let capacity = 1e5;
        let used = |load: f64, speed: f64, time: f64| time / rating_life(capacity, load, exponent, speed).unwrap().life_h;
        let one_by_one: f64 = stages.iter().map(|s| used(s.load_n, s.speed_rpm, s.share)).sum();
        let time: f64 = stages.iter().map(|s| s.share).sum();
        let together = used(mean.load_n, mean.speed_rpm, time);
        prop_assert!((together / one_by_one - 1.0).abs() < 1e-9);
        let (least, most) = loads.iter().fold((f64::MAX, 0.0_f64), |(low, high), l| (low.min(l.0), high.max(l.0)));
        prop_assert!(mean.load_n >= least * (1.0 - 1e-12) && mean.load_n <= most * (1.0 + 1e-12));
        prop_assert_eq!(mean.greatest_n, most);
    }

    /// A life that is wanted is met exactly at the load that `needle_lasts` names.
    #[test]
    fn the_load_for_a_life_gives_that_life(hours in 1e2..1e5, speed in 50.0..5e3) {
        let rule = Rule::simple_acceptance();
        let lasts = NARROW.needle_lasts(Reading { value: 100.0, u: 0.0 }, speed, hours, rule).unwrap();
        prop_assume!(lasts.load_for_life_n < 0.5 * lasts.capacity.dynamic_n);
        let life = rating_life(lasts.capacity.dynamic_n, lasts.load_for_life_n, ROLLER_EXPONENT, speed).unwrap();
        prop_assert!((life.life_h / hours - 1.0).abs() < 1e-9);
    }

    /// Whatever is added to a bearing buys capacity and never costs any.
    #[test]
    fn more_needle_is_more_capacity(needles in 8_u32..40, length in 3.0..9.0, more in 1.0..1.3) {
        let small = NeedleThrust { needles, needle_length_mm: length, needle_diameter_mm: 2.0, pitch_diameter_mm: 70.0 };
        let first = small.needle_capacity().unwrap();
        for larger in [
            NeedleThrust { needles: needles + 1, ..small },
            NeedleThrust { needle_length_mm: length * more, ..small },
            NeedleThrust { needle_diameter_mm: 2.0 * more, ..small },
        ] {
            let second = larger.needle_capacity().unwrap();
            prop_assert!(second.static_n >= first.static_n && second.dynamic_n >= first.dynamic_n);
        }
    }

    /// Stress times section modulus is the torque; a bore costs less strength than mass; twist adds along the length.
    #[test]
    fn torsion_balances(outside in 5.0..200.0, bore in 0.0..0.95, torque in 1.0..1e4, length in 1.0..500.0) {
        let shaft = Shaft { outside_mm: outside, inside_mm: bore * outside };
        let t = shaft.torsion(torque).unwrap();
        prop_assert!((t.stress_mpa * t.section_modulus_mm3 / (torque * 1e3) - 1.0).abs() < 1e-12);
        let kept = shaft.hollow_over_solid().unwrap();
        prop_assert!(kept.strength >= kept.mass);
        let solid = Shaft { inside_mm: 0.0, ..shaft }.torsion(torque).unwrap();
        prop_assert!((solid.stress_mpa / t.stress_mpa - kept.strength).abs() < 1e-9);
        let twist = |length| shaft.twist_deg(torque, length, 8e4).unwrap();
        prop_assert!((twist(2.0 * length) / twist(length) - 2.0).abs() < 1e-12);
    }

    /// A change there and back again is none, and what it buys one way it costs the other.
    #[test]
    fn a_change_back_costs_what_it_bought(before in 0.01..1e6, after in 0.01..1e6) {
        let there = change(before, after, Better::More, 0.0).unwrap();
        let back = change(after, before, Better::More, 0.0).unwrap();
        prop_assert!((there.ratio * back.ratio - 1.0).abs() < 1e-12);
        let less = change(before, after, Better::Less, 0.0).unwrap();
        if before != after {
            prop_assert_ne!(there.effect, back.effect);
            prop_assert_ne!(there.effect, less.effect);
        }
    }

    /// Sun and ring of a simple set push each other along the axis with the same force: the planets take none.
    #[test]
    fn sun_and_ring_push_alike(sun in 20_u16..80, planet in 10_u16..40, torque in -1e3..1e3, helix in 0.0..45.0) {
        let ring = sun + 2 * planet;
        let text = format!("4 0 1 2 / simple {sun} - {planet} - {ring} @ 0 - 3 1 / brake 3 2");
        let train = train(&text).unwrap();
        let state = train.solve(1).unwrap();
        let helical = Helical { module_mm: 1.5, helix_deg: helix };
        let pushed = |wheel| wheel_thrust(&train, &state, SetWheel { set: 0, wheel, helical }, torque, 1000.0).unwrap();
        let (on_sun, on_ring) = (pushed(Wheel::Sun), pushed(Wheel::Ring));
        prop_assert!((on_sun.thrust.axial_n - on_ring.thrust.axial_n).abs() <= 1e-9 * on_sun.thrust.axial_n);
        // The sun takes the input torque and the ring the torque of the brake.
        prop_assert!((on_sun.torque_nm + torque).abs() < 1e-9);
    }
}
