//! Axle loads, ratings and the rating that governs against their sources, their properties and wrong inputs.

mod support;

use approx::assert_relative_eq;
use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::judge::{Limits, Reading, Rule, Verdict};
use trainwright::tow::{
    AxleWeights, CombinationLoads, Coupled, Distribution, Levers, RatingKind, RatingRow, TowRatings, Trailer,
    axle_loads, axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg, restoring_moment_nm, share_band_kg,
};

fn levers(row: &Row) -> Levers {
    Levers { wheelbase_mm: row.number("wheelbase_mm"), overhang_mm: row.number("overhang_mm") }
}

fn coupled(row: &Row) -> Coupled {
    Coupled {
        weighed: AxleWeights {
            front_kg: row.reading("front_kg", "front_u_kg"),
            rear_kg: row.reading("rear_kg", "rear_u_kg"),
        },
        trailer: Trailer {
            mass_kg: row.reading("mass_kg", "mass_u_kg"),
            hitch_kg: row.reading("hitch_kg", "hitch_u_kg"),
        },
        levers: levers(row),
        distribution: Distribution {
            moment_nm: row.number("moment_nm"),
            ball_to_axle_mm: row.number("ball_to_axle_mm"),
        },
    }
}

#[test]
fn loads() {
    vectors("tow_axle_loads", |row| {
        let Coupled { weighed, trailer, levers, distribution } = coupled(row);
        let CombinationLoads { hitch_kg, front_kg, rear_kg, truck_kg, trailer_axles_kg, combination_kg, .. } =
            axle_loads(weighed, trailer, levers, distribution)?;
        Ok([
            hitch_kg.value,
            hitch_kg.u,
            front_kg.value,
            front_kg.u,
            rear_kg.value,
            rear_kg.u,
            truck_kg.value,
            truck_kg.u,
            trailer_axles_kg.value,
            combination_kg.value,
            combination_kg.u,
        ])
    });
    vectors("tow_by_share", |row| {
        let trailer =
            Trailer::by_share(row.reading("mass_kg", "mass_u_kg"), row.reading("hitch_share", "hitch_share_u"))?;
        Ok([trailer.hitch_kg.value, trailer.hitch_kg.u])
    });
    vectors("tow_share_band_kg", |row| {
        let share = Limits { lower: row.number("low_share"), upper: row.number("high_share") };
        let band = share_band_kg(row.number("mass_kg"), share)?;
        Ok([band.lower, band.upper])
    });
    vectors("tow_restoring_moment_nm", |row| {
        let to_axle_mm = row.number("ball_to_axle_mm");
        Ok([restoring_moment_nm(row.number("hitch_kg"), levers(row), to_axle_mm, row.number("restored_share"))?])
    });
}

#[test]
fn ratings() {
    vectors("tow_gvwr_class", |row| Ok([f64::from(gvwr_class(row.number("gvwr_kg"))?)]));
    vectors("tow_gvwr_least_kg", |row| {
        Ok([gvwr_least_kg(row.number("unloaded_kg"), row.number("cargo_kg"), row.count("seats"))?])
    });
    vectors("tow_gawr_left_kg", |row| {
        Ok([gawr_left_kg(row.number("gvwr_kg"), row.number("gawr_front_kg"), row.number("gawr_rear_kg"))?])
    });
    vectors("tow_axle_tires_kg", |row| {
        Ok([axle_tires_kg(row.number("tire_kg"), row.count("tires"), row.count("passenger") == 1)?])
    });
}

fn kind(row: &Row) -> RatingKind {
    match row.text("kind") {
        "combination" => RatingKind::Combination,
        "vehicle" => RatingKind::Vehicle,
        "front_axle" => RatingKind::FrontAxle,
        "rear_axle" => RatingKind::RearAxle,
        "front_tires" => RatingKind::FrontTires,
        "rear_tires" => RatingKind::RearTires,
        "maker_trailer" => RatingKind::MakerTrailer,
        "hitch_trailer" => RatingKind::HitchTrailer,
        "hitch_load" => RatingKind::HitchLoad,
        "trailer_gross" => RatingKind::TrailerGross,
        other => panic!("{other}"),
    }
}

#[test]
fn limits() {
    vectors("tow_rating_check", |row| {
        let check = coupled(row).rating_check(kind(row), row.number("rating_kg"), row.rule()?)?;
        Ok([
            check.load_kg.value,
            check.load_kg.u,
            check.left_kg,
            check.used_share,
            check.trailer_limit_kg,
            check.proven_trailer_kg,
            check.judgment.chance,
            f64::from(check.judgment.verdict as i32),
            f64::from(check.weigh_next as u8),
        ])
    });
    vectors("tow_review_ratings", |row| {
        let number = |name| row.number(name);
        let ratings = TowRatings {
            gcwr_kg: number("gcwr_kg"),
            gvwr_kg: number("gvwr_kg"),
            gawr_front_kg: number("gawr_front_kg"),
            gawr_rear_kg: number("gawr_rear_kg"),
            tires_front_kg: number("tires_front_kg"),
            tires_rear_kg: number("tires_rear_kg"),
            maker_trailer_kg: number("maker_trailer_kg"),
            hitch_trailer_kg: number("hitch_trailer_kg"),
            hitch_load_kg: number("hitch_load_kg"),
            trailer_gross_kg: number("trailer_gross_kg"),
        };
        let review = coupled(row).review_ratings(ratings, row.rule()?)?;
        Ok([
            review.given.into(),
            review.governing.into(),
            review.fullest.into(),
            review.trailer_limit_kg,
            review.proven_trailer_kg,
            review.payload_left_kg,
            f64::from(review.verdict as i32),
        ])
    });
}

fn ninety_five() -> Rule {
    Rule::stated_chances(0.95, 0.05).unwrap()
}

prop_compose! {
    /// A truck whose axles stay on the road whatever the hitch load here.
    fn any_coupled()(
        front in 1500.0..3000.0_f64, rear in 1200.0..3000.0_f64, mass in 1000.0..9000.0_f64, share in 0.02..0.25_f64,
        wheelbase in 3000.0..4500.0_f64, overhang in -400.0..1500.0_f64, moment in 0.0..1500.0_f64,
        to_axle in 4000.0..9000.0_f64, u in 0.0..0.02_f64,
    ) -> Coupled {
        let mass = mass.min(0.8 * front * wheelbase / (share * f64::max(overhang, 1.0)));
        Coupled {
            weighed: AxleWeights {
                front_kg: Reading::relative(front, u).unwrap(), rear_kg: Reading::relative(rear, u).unwrap(),
            },
            trailer: Trailer {
                mass_kg: Reading::relative(mass, u).unwrap(), hitch_kg: Reading::relative(share * mass, 2.0 * u).unwrap(),
            },
            levers: Levers { wheelbase_mm: wheelbase, overhang_mm: overhang },
            distribution: Distribution { moment_nm: moment, ball_to_axle_mm: to_axle },
        }
    }
}

proptest! {
    #[test]
    fn forces_and_moments_balance(coupled in any_coupled()) {
        let Coupled { weighed, trailer, levers, distribution } = coupled;
        prop_assume!(axle_loads(weighed, trailer, levers, distribution).is_ok());
        let loads = axle_loads(weighed, trailer, levers, distribution).unwrap();
        let on_the_road = loads.front_kg.value + loads.rear_kg.value + loads.trailer_axles_kg.value;
        assert_relative_eq!(on_the_road, loads.combination_kg.value, max_relative = 1e-12);
        assert_relative_eq!(loads.front_kg.value + loads.rear_kg.value, loads.truck_kg.value, max_relative = 1e-12);
        // About the ball, truck side: what the axles gained, and the moment of the bars.
        let (d, l) = (levers.overhang_mm, levers.wheelbase_mm);
        let moment_kg_mm = distribution.moment_nm * 1000.0 / 9.80665;
        let about_ball = loads.front_change_kg * (l + d) + loads.rear_change_kg * d;
        prop_assert!((about_ball - moment_kg_mm).abs() < 1e-6 * (l * loads.truck_kg.value));
    }

    #[test]
    fn the_bars_give_back_what_they_are_asked_for(coupled in any_coupled(), share in 0.0..1.0_f64) {
        let Coupled { weighed, trailer, levers, distribution } = coupled;
        prop_assume!(levers.overhang_mm > 50.0);
        let to_axle = distribution.ball_to_axle_mm;
        let moment_nm = restoring_moment_nm(trailer.hitch_kg.value, levers, to_axle, share).unwrap();
        let without = axle_loads(weighed, trailer, levers, Distribution::NONE).unwrap();
        let with_bars = axle_loads(weighed, trailer, levers, Distribution { moment_nm, ball_to_axle_mm: to_axle });
        prop_assume!(with_bars.is_ok());
        let lifted = with_bars.unwrap().front_change_kg / without.front_change_kg;
        prop_assert!((lifted - (1.0 - share)).abs() < 1e-9);
    }

    #[test]
    fn the_limit_meets_the_rating_and_the_proven_trailer_is_a_go(
        coupled in any_coupled(), kind in proptest::sample::select(&RatingKind::ALL[..]), over in 0.7..1.8_f64,
    ) {
        let Coupled { weighed, trailer, levers, distribution } = coupled;
        prop_assume!(axle_loads(weighed, trailer, levers, distribution).is_ok());
        let rating_kg = over * coupled.rating_check(kind, 1000.0, ninety_five()).unwrap().load_kg.value;
        prop_assume!(rating_kg > 1.0);
        let check = coupled.rating_check(kind, rating_kg, ninety_five()).unwrap();
        let scaled = |mass_kg: f64| {
            let share = mass_kg / trailer.mass_kg.value;
            let part = |reading: Reading| Reading { value: reading.value * share, u: reading.u * share };
            let trailer = Trailer { mass_kg: part(trailer.mass_kg), hitch_kg: part(trailer.hitch_kg) };
            Coupled { trailer, ..coupled }.rating_check(kind, rating_kg, ninety_five())
        };
        prop_assert!(check.proven_trailer_kg <= check.trailer_limit_kg);
        if check.trailer_limit_kg.is_finite() && check.trailer_limit_kg > 1.0
            && let Ok(at_limit) = scaled(check.trailer_limit_kg)
        {
            assert_relative_eq!(at_limit.load_kg.value, rating_kg, max_relative = 1e-9);
        }
        if check.proven_trailer_kg.is_finite() && check.proven_trailer_kg > 1.0
            && let Ok(just_below) = scaled(check.proven_trailer_kg * (1.0 - 1e-9))
        {
            prop_assert_eq!(just_below.judgment.verdict, Verdict::Go);
        }
        prop_assert_eq!(check.judgment.verdict == Verdict::Go, check.proven_trailer_kg >= trailer.mass_kg.value);
    }

    #[test]
    fn one_more_rating_never_allows_a_heavier_trailer(coupled in any_coupled(), gcwr in 8000.0..16_000.0_f64, rear in 3000.0..6000.0_f64) {
        let Coupled { weighed, trailer, levers, distribution } = coupled;
        prop_assume!(axle_loads(weighed, trailer, levers, distribution).is_ok());
        let fewer = TowRatings { gcwr_kg: gcwr, ..TowRatings::UNKNOWN };
        let more = TowRatings { gawr_rear_kg: rear, ..fewer };
        let [one, two] = [fewer, more].map(|ratings| coupled.review_ratings(ratings, ninety_five()).unwrap());
        prop_assert!(two.trailer_limit_kg <= one.trailer_limit_kg && two.proven_trailer_kg <= one.proven_trailer_kg);
        prop_assert_eq!((one.given, two.given), (1, 2));
        prop_assert!(one.verdict != Verdict::Go && two.verdict != Verdict::Go, "eight ratings are missing");
        let rows: &[RatingRow] = &two.rows;
        prop_assert!(rows.iter().all(|row| row.given == (row.rating_kg < f64::INFINITY)));
    }
}

#[test]
fn a_kind_has_its_number() {
    for (number, kind) in (1..).zip(RatingKind::ALL) {
        assert_eq!(RatingKind::from_number(number), Ok(kind));
    }
    assert!(RatingKind::from_number(0).is_err() && RatingKind::from_number(11).is_err());
}
