//! The stack chapter against its sources, the demonstration family, its properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::clutch::Annulus;
use trainwright::fit::Spread;
use trainwright::judge::{Input, Limits, Reading, Rule, combine, judge};
use trainwright::record::{Family, Record};
use trainwright::stack::{
    AxialGrowth, ChainLink, ChoiceRule, PackHeights, Piece, PistonStroke, Selection, apply_fill, chain, mean_of_steps,
    room_from_fitted, what_to_measure,
};

/// Numbers of a cell, written with spaces.
fn list(row: &Row, column: &str) -> Vec<f64> {
    row.text(column).split_whitespace().map(|cell| cell.parse().unwrap()).collect()
}

fn reading(row: &Row, value: &str, u: &str) -> Reading {
    Reading { value: row.number(value), u: row.number(u) }
}

fn size(row: &Row) -> Limits {
    Limits { lower: row.number("lower"), upper: row.number("upper") }
}

fn flag(yes: bool) -> f64 {
    f64::from(u8::from(yes))
}

#[test]
fn links() {
    let fields = |link: ChainLink| Ok([link.value_mm, link.half_width_mm, link.u_mm]);
    vectors("stack_toleranced", |row| {
        fields(ChainLink::toleranced(row.number("sensitivity"), size(row), Spread(row.number("spread") as i32))?)
    });
    vectors("stack_measured", |row| {
        fields(ChainLink::measured(row.number("sensitivity"), reading(row, "value", "u"), row.number("k"))?)
    });
}

#[test]
fn chains() {
    vectors("stack_chain", |row| {
        let columns = ["sensitivity", "value_mm", "half_width_mm", "u_mm"].map(|column| list(row, column));
        let links: Vec<_> = (0..columns[0].len())
            .map(|i| ChainLink {
                sensitivity: columns[0][i],
                value_mm: columns[1][i],
                half_width_mm: columns[2][i],
                u_mm: columns[3][i],
            })
            .collect();
        let c = chain(&links)?;
        Ok([
            c.reading_mm.value,
            c.reading_mm.u,
            c.worst_half_mm,
            c.worst_mm.lower,
            c.worst_mm.upper,
            c.rss_half_mm,
            c.rss_mm.lower,
            c.rss_mm.upper,
            c.rss_chance,
            c.budget.largest.into(),
        ])
    });
}

#[test]
fn growth() {
    vectors("stack_grown", |row| {
        let growth = AxialGrowth {
            case_length_mm: reading(row, "case_length_mm", "case_length_u_mm"),
            train_length_mm: reading(row, "train_length_mm", "train_length_u_mm"),
            case_expansion_per_k: reading(row, "case_expansion_per_k", "case_expansion_u_per_k"),
            train_expansion_per_k: reading(row, "train_expansion_per_k", "train_expansion_u_per_k"),
            reference_c: row.number("reference_c"),
        };
        let hot =
            growth.grown(reading(row, "temp_c", "temp_u_c"), reading(row, "train_hotter_k", "train_hotter_u_k"))?;
        Ok([hot.case_mm, hot.train_mm, hot.growth_mm.value, hot.growth_mm.u, hot.budget.largest.into()])
    });
    vectors("stack_growth_mm", |row| {
        let exact = |column: &str| Reading { value: row.number(column), u: 0.0 };
        let growth = AxialGrowth {
            case_length_mm: exact("case_length_mm"),
            train_length_mm: exact("train_length_mm"),
            case_expansion_per_k: exact("case_expansion_per_k"),
            train_expansion_per_k: exact("train_expansion_per_k"),
            reference_c: row.number("reference_c"),
        };
        Ok([growth.growth_mm(row.number("temp_c"), row.number("train_hotter_k"))?])
    });
}

fn selection(row: &Row) -> Selection {
    Selection {
        room_mm: reading(row, "room_mm", "room_u_mm"),
        window_mm: size(row),
        target_mm: row.number("target_mm"),
        growth_mm: reading(row, "growth_mm", "growth_u_mm"),
        hot_window_mm: Limits { lower: row.number("hot_lower"), upper: row.number("hot_upper") },
        rule: Rule { go: row.number("go"), no_go: row.number("no_go"), ..chances() },
        by: if row.count("by") == 0 { ChoiceRule::NearestTarget } else { ChoiceRule::LeastRisk },
        hot_counts: row.count("hot_counts") != 0,
    }
}

fn chances() -> Rule {
    Rule::stated_chances(0.95, 0.05).unwrap()
}

fn pieces(row: &Row) -> Vec<Piece> {
    let sizes = list(row, "thickness_mm").into_iter().zip(list(row, "thickness_u_mm")).zip(list(row, "in_stock"));
    sizes.map(|((value, u), stock)| Piece { thickness_mm: Reading { value, u }, in_stock: stock != 0.0 }).collect()
}

#[test]
fn choices() {
    vectors("stack_outcome", |row| {
        let piece = Piece { thickness_mm: reading(row, "thickness_mm", "thickness_u_mm"), in_stock: true };
        let o = selection(row).outcome(piece)?;
        Ok([
            o.cold.reading.value,
            o.cold.reading.u,
            o.cold.chance,
            f64::from(o.cold.verdict as i32),
            o.hot.reading.value,
            o.hot.reading.u,
            o.hot.chance,
            f64::from(o.hot.verdict as i32),
            o.off_target_mm,
            o.off_middle_mm,
            o.chance,
            flag(o.inside),
        ])
    });
    vectors("stack_choose", |row| {
        let c = selection(row).choose(&pieces(row))?;
        Ok([
            flag(c.found),
            c.position.into(),
            c.nearest_target.into(),
            c.least_risk.into(),
            flag(c.missing_better),
            c.missing.into(),
            c.wanted_mm,
            c.inside_mm.lower,
            c.inside_mm.upper,
            c.go_mm.lower,
            c.go_mm.upper,
        ])
    });
    vectors("stack_pick", |row| {
        let p = selection(row).pick(&pieces(row))?;
        Ok([p.position.into(), p.thickness_mm.value, p.result_mm.value, p.result_mm.u, p.chance])
    });
}

#[test]
fn measuring() {
    vectors("stack_mean_of_steps", |row| {
        let mean = mean_of_steps(&list(row, "values"), row.number("quantum"), row.number("u_of_one"))?;
        Ok([mean.reading.value, mean.reading.u, mean.deviation, mean.freedom])
    });
    vectors("stack_what_to_measure", |row| {
        let inputs: Vec<_> = list(row, "sensitivity")
            .into_iter()
            .zip(list(row, "u"))
            .map(|(sensitivity, u)| Input { sensitivity, u, freedom: f64::INFINITY })
            .collect();
        let budget = combine(&inputs)?;
        let rule = Rule::stated_chances(row.number("go"), row.number("no_go"))?;
        let judgment = judge(Reading { value: row.number("value"), u: budget.u }, size(row), rule)?;
        let plan = what_to_measure(&judgment, &budget, &list(row, "u_measured"))?;
        let (first, second) = (plan.gains()[0], plan.gains()[1]);
        Ok([
            first.input.into(),
            second.input.into(),
            first.share,
            second.share_so_far,
            first.u_of_result,
            first.chance_go,
            first.chance_no_go,
            first.u_needed,
            flag(first.enough),
        ])
    });
}

#[test]
fn packs() {
    vectors("stack_room_from_fitted", |row| {
        let clearance_mm = reading(row, "clearance_mm", "clearance_u_mm");
        let room = room_from_fitted(clearance_mm, reading(row, "fitted_mm", "fitted_u_mm"))?;
        Ok([room.value, room.u])
    });
    vectors("stack_room_from_heights", |row| {
        let heights = PackHeights {
            drum_depth_mm: reading(row, "drum_depth_mm", "drum_depth_u_mm"),
            friction_plates: row.count("friction_plates"),
            friction_mm: reading(row, "friction_mm", "friction_u_mm"),
            steel_plates: row.count("steel_plates"),
            steel_mm: reading(row, "steel_mm", "steel_u_mm"),
            pressure_plate_mm: reading(row, "pressure_plate_mm", "pressure_plate_u_mm"),
            wave_plate_mm: reading(row, "wave_plate_mm", "wave_plate_u_mm"),
        };
        let room = heights.room_from_heights()?;
        Ok([room.plates_mm, room.room_mm.value, room.room_mm.u, room.budget.largest.into()])
    });
    vectors("stack_piston_travel", |row| {
        let stroke = PistonStroke {
            clearance_mm: reading(row, "clearance_mm", "clearance_u_mm"),
            wave_mm: reading(row, "wave_mm", "wave_u_mm"),
            bend_mm: reading(row, "bend_mm", "bend_u_mm"),
            land_mm: reading(row, "land_mm", "land_u_mm"),
        };
        let t = stroke.piston_travel(Rule { go: row.number("go"), no_go: row.number("no_go"), ..chances() })?;
        Ok([
            t.travel_mm.value,
            t.travel_mm.u,
            t.judgment.reading.value,
            t.judgment.reading.u,
            t.judgment.chance,
            f64::from(t.judgment.verdict as i32),
            t.budget.largest.into(),
        ])
    });
    vectors("stack_apply_fill", |row| {
        let piston =
            Annulus { inner_radius_mm: row.number("inner_radius_mm"), outer_radius_mm: row.number("outer_radius_mm") };
        let travel_mm = reading(row, "travel_mm", "travel_u_mm");
        let fill = apply_fill(piston, travel_mm, reading(row, "flow_l_min", "flow_u_l_min"))?;
        Ok([fill.area_mm2, fill.volume_ml.value, fill.volume_ml.u, fill.time_s.value, fill.time_s.u])
    });
}

// ---- properties

fn link() -> impl Strategy<Value = ChainLink> {
    (-3.0..3.0, 0.0..100.0, 0.0..0.5, 0.0..0.3).prop_map(|(sensitivity, value_mm, half_width_mm, u_mm)| ChainLink {
        sensitivity,
        value_mm,
        half_width_mm,
        u_mm,
    })
}

fn list_of_pieces() -> impl Strategy<Value = Vec<Piece>> {
    let piece = (0.0..4.0, 0.0..0.05, any::<bool>())
        .prop_map(|(value, u, in_stock)| Piece { thickness_mm: Reading { value, u }, in_stock });
    prop::collection::vec(piece, 1..12)
}

/// Selections with windows that some pieces meet; sizes in hundredths, so that ties and values on a limit occur.
fn selection_of_all_kinds() -> impl Strategy<Value = Selection> {
    (200..500_i32, 0.0..0.1, 10..40_i32, 5..80_i32, 0.0..1.0_f64, -30..30_i32, 0.0..0.05, any::<(bool, bool)>())
        .prop_map(|(room, u, lower, width, along, growth, growth_u, (least_risk, hot_counts))| {
            let mm = |hundredths: i32| f64::from(hundredths) / 100.0;
            let (lower, upper) = (mm(lower), mm(lower + width));
            Selection {
                room_mm: Reading { value: mm(room), u },
                window_mm: Limits { lower, upper },
                target_mm: (lower + along * (upper - lower)).min(upper),
                growth_mm: Reading { value: mm(growth), u: growth_u },
                hot_window_mm: Limits { lower: lower - 0.1, upper: upper + 0.2 },
                rule: chances(),
                by: if least_risk { ChoiceRule::LeastRisk } else { ChoiceRule::NearestTarget },
                hot_counts,
            }
        })
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + a.abs())
}

proptest! {
    #[test]
    fn the_order_of_a_chain_does_not_matter(
        (links, shuffled) in prop::collection::vec(link(), 1..16).prop_flat_map(|l| (Just(l.clone()), Just(l).prop_shuffle()))
    ) {
        let (a, b) = (chain(&links)?, chain(&shuffled)?);
        prop_assert!(close(a.reading_mm.value, b.reading_mm.value) && close(a.reading_mm.u, b.reading_mm.u));
        prop_assert!(close(a.worst_half_mm, b.worst_half_mm) && close(a.rss_half_mm, b.rss_half_mm));
    }

    #[test]
    fn the_worst_case_is_never_less_than_the_root_sum_of_squares(links in prop::collection::vec(link(), 1..16)) {
        let c = chain(&links)?;
        prop_assert!(c.worst_half_mm * (1.0 + 1e-12) >= c.rss_half_mm);
        let greatest = links.iter().map(|l| (l.sensitivity * l.half_width_mm).abs()).fold(0.0, f64::max);
        prop_assert!(c.rss_half_mm * (1.0 + 1e-12) >= greatest);
        // Every part anywhere in its tolerance stays within the worst case.
        for pattern in 0..1_u32 << links.len().min(8) {
            let at = links.iter().enumerate().map(|(i, l)| {
                let sign = if pattern >> (i % 8) & 1 == 1 { 1.0 } else { -1.0 };
                l.sensitivity * (l.value_mm + sign * l.half_width_mm)
            });
            let result: f64 = at.sum();
            prop_assert!((result - c.reading_mm.value).abs() <= c.worst_half_mm + 1e-9);
        }
    }

    #[test]
    fn turning_every_sign_turns_the_result(links in prop::collection::vec(link(), 1..16)) {
        let turned: Vec<_> = links.iter().map(|l| ChainLink { sensitivity: -l.sensitivity, ..*l }).collect();
        let (a, b) = (chain(&links)?, chain(&turned)?);
        prop_assert_eq!(a.reading_mm.value, -b.reading_mm.value);
        prop_assert_eq!((a.reading_mm.u, a.worst_half_mm, a.rss_half_mm), (b.reading_mm.u, b.worst_half_mm, b.rss_half_mm));
    }

    #[test]
    fn choices_are_the_best_of_a_full_search(selection in selection_of_all_kinds(), pieces in list_of_pieces()) {
        let choice = selection.choose(&pieces)?;
        let outcomes = pieces.iter().map(|&piece| selection.outcome(piece)).collect::<Result<Vec<_>, Error>>()?;
        let can: Vec<_> = outcomes.iter().filter(|o| o.piece.in_stock && o.inside).collect();
        prop_assert_eq!(choice.found, !can.is_empty());
        if choice.found {
            let (nearest, safest) = (outcomes[choice.nearest_target as usize], outcomes[choice.least_risk as usize]);
            prop_assert!(can.iter().all(|o| o.off_target_mm >= nearest.off_target_mm));
            prop_assert!(can.iter().all(|o| o.chance <= safest.chance + 1e-12));
            let picked = selection.pick(&pieces)?;
            prop_assert_eq!(picked.position, choice.position);
            prop_assert_eq!(picked.result_mm, outcomes[choice.position as usize].cold.reading);
            let by = if selection.by == ChoiceRule::LeastRisk { choice.least_risk } else { choice.nearest_target };
            prop_assert_eq!(choice.position, by);
        } else {
            prop_assert_eq!(selection.pick(&pieces).map_err(|e| e.kind()).err(), Some("NO_ANSWER"));
        }
    }

    #[test]
    fn more_pieces_never_lower_the_chance(selection in selection_of_all_kinds(), pieces in list_of_pieces(), more in list_of_pieces()) {
        let selection = Selection { by: ChoiceRule::LeastRisk, ..selection };
        let all: Vec<_> = pieces.iter().chain(&more).copied().collect();
        if let Ok(few) = selection.pick(&pieces) {
            prop_assert!(selection.pick(&all)?.chance >= few.chance - 1e-12);
        }
    }

    #[test]
    fn the_order_of_the_list_does_not_matter(
        selection in selection_of_all_kinds(),
        (pieces, shuffled) in list_of_pieces().prop_flat_map(|l| (Just(l.clone()), Just(l).prop_shuffle())),
    ) {
        match (selection.pick(&pieces), selection.pick(&shuffled)) {
            (Ok(a), Ok(b)) => prop_assert_eq!((a.thickness_mm.value, a.chance), (b.thickness_mm.value, b.chance)),
            (a, b) => prop_assert_eq!(a.is_err(), b.is_err()),
        }
    }

    #[test]
    fn a_thickness_that_would_do_does(selection in selection_of_all_kinds(), along in 0.0..1.0, u in 0.0..0.03) {
        let piece = |value| Piece { thickness_mm: Reading { value, u }, in_stock: true };
        let choice = selection.choose(&[piece(0.5)])?;
        let within = |range: Limits| range.lower + along * (range.upper - range.lower);
        if choice.inside_mm.lower <= choice.inside_mm.upper {
            prop_assert!(selection.outcome(piece(within(choice.inside_mm)))?.inside);
        }
        if choice.go_mm.lower + 1e-6 <= choice.go_mm.upper {
            let safe = Limits { lower: choice.go_mm.lower + 2e-7, upper: choice.go_mm.upper - 2e-7 };
            let outcome = selection.outcome(piece(within(safe)))?;
            prop_assert_eq!(outcome.cold.verdict, trainwright::judge::Verdict::Go);
            prop_assert!(!selection.hot_counts || outcome.hot.verdict == trainwright::judge::Verdict::Go);
        }
        let outcome = selection.outcome(piece(choice.wanted_mm))?;
        prop_assert!(outcome.off_target_mm < 1e-9);
    }

    #[test]
    fn measuring_never_widens_the_result_and_the_shares_sum_to_one(
        links in prop::collection::vec(link(), 1..16), u_measured in 0.0..0.3, upper in -200.0..200.0
    ) {
        prop_assume!(links.iter().any(|l| l.sensitivity.abs() * l.u_mm > 1e-6));
        let c = chain(&links)?;
        let judgment = judge(c.reading_mm, Limits::at_most(upper)?, chances())?;
        let plan = what_to_measure(&judgment, &c.budget, &vec![u_measured; links.len()])?;
        prop_assert_eq!(plan.count as usize, links.len());
        let mut seen: Vec<_> = plan.gains().iter().map(|gain| gain.input as usize).collect();
        seen.sort_unstable();
        prop_assert_eq!(seen, (0..links.len()).collect::<Vec<_>>());
        prop_assert!(plan.gains().windows(2).all(|pair| pair[0].share >= pair[1].share));
        prop_assert!((plan.gains().last().map_or(0.0, |gain| gain.share_so_far) - 1.0).abs() < 1e-9);
        for gain in plan.gains() {
            prop_assert!(gain.u_of_result <= c.reading_mm.u * (1.0 + 1e-12));
            prop_assert!(gain.chance_go >= 0.0 && gain.chance_no_go >= 0.0 && gain.chance_go + gain.chance_no_go <= 1.0 + 1e-12);
        }
    }

    #[test]
    fn an_end_play_returns_when_the_unit_cools(temp_c in -40.0..150.0, hotter in -50.0..80.0) {
        let exact = |value| Reading { value, u: 0.0 };
        let growth = AxialGrowth {
            case_length_mm: exact(310.0), train_length_mm: exact(309.7),
            case_expansion_per_k: exact(23e-6), train_expansion_per_k: exact(11.5e-6), reference_c: 20.0,
        };
        prop_assert_eq!(growth.growth_mm(20.0, 0.0)?, 0.0);
        prop_assert_eq!(growth.grown(exact(temp_c), exact(hotter))?.growth_mm.value, growth.growth_mm(temp_c, hotter)?);
        let turned = AxialGrowth { case_length_mm: growth.train_length_mm, train_length_mm: growth.case_length_mm,
            case_expansion_per_k: growth.train_expansion_per_k, train_expansion_per_k: growth.case_expansion_per_k, ..growth };
        prop_assert!((turned.growth_mm(temp_c, 0.0)? + growth.growth_mm(temp_c, 0.0)?).abs() < 1e-12);
    }
}

#[test]
fn rules_print_their_words() {
    assert_eq!(ChoiceRule::NearestTarget.to_string(), "nearest target");
    assert_eq!(ChoiceRule::LeastRisk.to_string(), "least risk");
}

// ---- from a record

fn family(text: &str) -> Family {
    Family::from_toml("family.toml", text).unwrap()
}

const DEMO: &str = include_str!("../python/trainwright/demo/family.toml");

#[test]
fn the_record_gives_shims_rings_and_growth() {
    let demo = family(DEMO);
    let shims = demo.shims().unwrap();
    assert_eq!((shims.pieces.len(), shims.target_mm, shims.window_mm), (9, 0.36, Limits { lower: 0.20, upper: 0.60 }));
    assert!(shims.pieces.iter().all(|piece| piece.in_stock && piece.thickness_mm.u == 0.012));
    let rings = demo.rings("B1").unwrap();
    assert_eq!((rings.pieces.len(), rings.target_mm), (6, 1.70)); // the middle of 1.40 to 2.00
    assert_eq!(demo.rings("C1").unwrap().pieces[0].thickness_mm, Reading { value: 1.80, u: 0.015 });
    assert_eq!(demo.elements_with_rings(), ["B1", "C1"]);
    let hot = demo.hot_play().unwrap();
    let soaked = Reading { value: 0.0, u: 0.0 };
    let growth = hot.growth.grown(Reading { value: hot.temp_c, u: 0.0 }, soaked).unwrap();
    assert!((growth.growth_mm.value - 0.249_55).abs() < 1e-9);
    assert_eq!(hot.window_mm.upper, f64::INFINITY); // the record states no window for the warm unit
    let stroke = demo.stroke("B1", Reading { value: 1.77, u: 0.024 }, None).unwrap();
    assert_eq!((stroke.land_mm.value, stroke.wave_mm.value, stroke.bend_mm.value), (3.6, 0.35, 0.10));
    assert_eq!(demo.stroke("B1", soaked, Some(soaked)).unwrap().bend_mm, soaked);
}

#[test]
fn what_the_record_lacks_is_named() {
    let demo = family(DEMO);
    let missing = |result: Result<(), Error>| result.map_err(|error| (error.kind(), error.parameter()));
    assert_eq!(missing(demo.rings("C2").map(|_| ())), Err(("MISSING", "element")));
    let soaked = Reading { value: 0.0, u: 0.0 };
    assert_eq!(missing(demo.stroke("C1", soaked, None).map(|_| ())), Err(("MISSING", "seal_land_mm")));
    let table = DEMO.find("[selective]").unwrap();
    let rest = DEMO.find("[fatigue]").unwrap();
    let without = family(&format!("{}{}", &DEMO[..table], &DEMO[rest..]));
    assert_eq!(missing(without.shims().map(|_| ())), Err(("MISSING", "selective")));
    assert!(without.elements_with_rings().is_empty() && without.hot_play().is_none());
}

#[test]
fn a_record_with_nothing_but_the_first_keys_is_accepted_as_it_was() {
    let hot = DEMO.find("[selective.ring.C1]").unwrap();
    let rest = DEMO.find("[fatigue]").unwrap();
    let text = format!("{}{}", &DEMO[..hot], &DEMO[rest..])
        .replace("wave_mm = [0.30, 0.40]\nbend_mm = [0.06, 0.14]\nseal_land_mm = [3.50, 3.70]\n", "");
    let first = family(&text);
    assert_eq!(first.rings("B1"), family(DEMO).rings("B1"));
    let long = text.replace(
        "ring_b1_mm = [2.40, 2.65, 2.90, 3.15, 3.40, 3.65]\nring_u_mm = 0.015\n",
        "[selective.ring.B1]\nthickness_mm = [2.40, 2.65, 2.90, 3.15, 3.40, 3.65]\nu_mm = 0.015\n",
    );
    assert_eq!(family(&long).rings("B1"), first.rings("B1"));
}
