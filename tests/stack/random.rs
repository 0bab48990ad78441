//! Random chains, pieces and windows.

use super::*;

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
