//! Random units and looks.

use super::*;

fn chances(count: usize) -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.01..0.99_f64, count)
}

fn a_prior(count: usize) -> impl Strategy<Value = Vec<f64>> {
    chances(count).prop_map(|weights| {
        let sum: f64 = weights.iter().sum();
        weights.iter().map(|weight| weight / sum).collect()
    })
}

/// A unit of 2 to 6 variants and 4 parts with up to 8 marks on them, and the marks: part, chances, seen.
type Look = (usize, Vec<f64>, bool);
fn some_unit() -> impl Strategy<Value = (Vec<f64>, Vec<f64>, Vec<Look>)> {
    (2..=6_usize).prop_flat_map(|variants| {
        let looks = prop::collection::vec((0..4_usize, chances(variants), any::<bool>()), 0..8);
        (a_prior(variants), prop::collection::vec(0.0..0.5_f64, 4), looks)
    })
}

fn looked(prior: &[f64], exchanged: &[f64], looks: &[Look]) -> Unit {
    let mut unit = Unit::new(prior, exchanged);
    for (part, chance, seen) in looks {
        add_seen(chance, *seen, unit.row(*part)).unwrap();
    }
    unit
}

fn entropy_bits(chances: &[f64]) -> f64 {
    chances.iter().filter(|p| **p > 0.0).map(|p| -p * p.log2()).sum()
}

proptest! {
    #[test]
    fn the_order_of_looks_does_not_matter((prior, exchanged, looks) in some_unit()) {
        let forward = looked(&prior, &exchanged, &looks).chances();
        let backward = looked(&prior, &exchanged, &looks.iter().rev().cloned().collect::<Vec<_>>()).chances();
        for (a, b) in forward.iter().zip(&backward) {
            prop_assert!((a - b).abs() < 1e-13);
        }
        prop_assert!((forward.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn certain_evidence_wins((prior, exchanged, looks) in some_unit(), sure in 0..2_usize) {
        let mut exchanged = exchanged;
        exchanged.push(0.0); // a part that is never exchanged
        let mut unit = looked(&prior, &exchanged, &looks);
        let certain: Vec<f64> = (0..prior.len()).map(|variant| if variant == sure { 1.0 } else { 0.0 }).collect();
        add_seen(&certain, true, unit.row(4)).unwrap();
        let (variants, weighed) = unit.weigh().unwrap();
        prop_assert_eq!(weighed.best as usize, sure);
        prop_assert!((variants[sure].chance - 1.0).abs() < 1e-12);
        prop_assert!(unit.mark_worth(0, &looks.first().map_or(certain, |look| look.1.clone())).bits < 1e-12);
    }

    #[test]
    fn a_useless_look_changes_nothing_and_tells_nothing((prior, exchanged, looks) in some_unit(), c in 0.01..0.99_f64) {
        let mut unit = looked(&prior, &exchanged, &looks);
        let before = unit.chances();
        let useless = vec![c; prior.len()];
        let same_size = vec![Limits { lower: 61.0, upper: 63.0 }; prior.len()];
        for part in 0..4 {
            prop_assert!(unit.mark_worth(part, &useless).bits < 1e-15);
            prop_assert!(unit.size_worth(part, &same_size, 0.4).bits < 1e-15);
        }
        add_seen(&useless, true, unit.row(2)).unwrap();
        add_measured(&same_size, Reading { value: 61.7, u: 0.4 }, unit.row(1)).unwrap();
        for (a, b) in unit.chances().iter().zip(&before) {
            prop_assert!((a - b).abs() < 1e-12);
        }
    }

    /// Two marks on one part count as one mark with the product of their chances, not as two independent witnesses.
    #[test]
    fn looks_on_one_part_count_once(prior in a_prior(3), s in 0.01..0.5_f64, a in chances(3), b in chances(3)) {
        let mut unit = Unit::new(&prior, &[s]);
        add_seen(&a, true, unit.row(0)).unwrap();
        add_seen(&b, true, unit.row(0)).unwrap();
        let product: Vec<f64> = a.iter().zip(&b).map(|(a, b)| a * b).collect();
        let mean: f64 = prior.iter().zip(&product).map(|(p, ab)| p * ab).sum();
        let weights: Vec<f64> = prior.iter().zip(&product).map(|(p, ab)| p * ((1.0 - s) * ab + s * mean)).collect();
        for (chance, weight) in unit.chances().iter().zip(&weights) {
            prop_assert!((chance - weight / weights.iter().sum::<f64>()).abs() < 1e-13);
        }
        // However often one part is looked at, its exchange stays possible: the chance of another variant keeps a floor.
        for _ in 0..200 {
            add_seen(&[0.9, 0.1, 0.1], true, unit.row(0)).unwrap();
        }
        let floor = s * prior[1] * prior[0];
        prop_assert!(unit.chances()[1] >= 0.999 * floor);
    }

    #[test]
    fn information_is_never_negative_and_at_most_the_entropy(
        (prior, exchanged, looks) in some_unit(),
        part in 0..4_usize,
        at in prop::collection::vec((0.0..10.0_f64, 0.0..3.0_f64), 6),
        u in 0.01..5.0_f64,
    ) {
        let unit = looked(&prior, &exchanged, &looks);
        let (_, weighed) = unit.weigh().unwrap();
        prop_assert!((weighed.entropy_bits - entropy_bits(&unit.chances())).abs() < 1e-12);
        let size_mm: Vec<Limits> =
            at[..prior.len()].iter().map(|(lower, width)| Limits { lower: *lower, upper: lower + width }).collect();
        let chance: Vec<f64> = at[..prior.len()].iter().map(|(lower, _)| lower / 10.0).collect();
        for worth in [unit.mark_worth(part, &chance), unit.size_worth(part, &size_mm, u)] {
            prop_assert!(worth.bits >= 0.0 && worth.bits <= weighed.entropy_bits + 1e-9, "{worth:?} {weighed:?}");
            prop_assert!((0.0..=1.0).contains(&worth.settles));
        }
    }

    /// The information of a mark is the entropy less the mean entropy after it, each outcome weighed on its own.
    #[test]
    fn information_of_a_mark_is_the_drop_of_entropy((prior, exchanged, looks) in some_unit(), part in 0..4_usize, c in chances(6)) {
        let unit = looked(&prior, &exchanged, &looks);
        let chance = &c[..prior.len()];
        let (origins, _) = unit.part(part).unwrap();
        let (variants, weighed) = unit.weigh().unwrap();
        let mixed: f64 = origins.iter().zip(chance).map(|(origin, c)| origin.if_exchanged * c).sum();
        let seen: f64 = variants
            .iter()
            .zip(&origins)
            .zip(chance)
            .map(|((variant, origin), c)| variant.chance * (origin.kept * c + (1.0 - origin.kept) * mixed))
            .sum();
        let after = |is_seen: bool| {
            let mut next = unit.clone();
            add_seen(chance, is_seen, next.row(part)).unwrap();
            entropy_bits(&next.chances())
        };
        let drop = weighed.entropy_bits - seen * after(true) - (1.0 - seen) * after(false);
        prop_assert!((unit.mark_worth(part, chance).bits - drop).abs() < 1e-12);
    }

    /// Chances of the parts: origins sum to 1, foreign is at most exchanged, and a mixed unit has a foreign part.
    #[test]
    fn chances_of_parts_fit_together((prior, exchanged, looks) in some_unit()) {
        let unit = looked(&prior, &exchanged, &looks);
        let (_, weighed) = unit.weigh().unwrap();
        let looked_at: std::collections::BTreeSet<_> = looks.iter().map(|look| look.0).collect();
        let mut foreign = Vec::new();
        for &part in &looked_at {
            let (origins, finding) = unit.part(part).unwrap();
            prop_assert!((origins.iter().map(|origin| origin.chance).sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!((origins.iter().map(|origin| origin.if_exchanged).sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!(finding.foreign <= finding.exchanged + 1e-15);
            foreign.push(finding.foreign);
        }
        let most = foreign.iter().fold(0.0_f64, |most, part| most.max(*part));
        prop_assert!(weighed.chance_mixed >= most - 1e-12);
        prop_assert!(weighed.chance_mixed <= foreign.iter().sum::<f64>() + 1e-12);
    }

    #[test]
    fn junk_is_refused_or_answered_with_numbers(junk in prop::collection::vec(any::<f64>(), 12), part in 0..3_usize) {
        let evidence = Evidence { prior: &junk[..2], exchanged: &junk[2..4], ln_likelihood: &junk[4..8], unexplained: 0 };
        let mut variants = [VariantFinding::NONE; 2];
        if evidence.weigh(&mut variants).is_ok() {
            prop_assert!(variants.iter().all(|variant| variant.chance.is_finite()));
            let mut origins = [Origin::NONE; 2];
            let _ = evidence.part(&variants, part, &mut origins);
        }
        let reading = Reading { value: junk[8], u: junk[9] };
        if let Ok(number) = ln_density(reading, Limits { lower: junk[10], upper: junk[11] }) {
            prop_assert!(!number.is_nan());
        }
    }
}
