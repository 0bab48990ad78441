//! The vectors that the three languages share.

use super::*;

#[test]
fn likelihoods() {
    vectors("identify_ln_density", |row| {
        let size_mm = Limits { lower: row.number("lower"), upper: row.number("upper") };
        Ok([ln_density(Reading { value: row.number("x"), u: row.number("u") }, size_mm)?])
    });
    vectors("identify_add_seen", |row| {
        let mut ln_part = [0.0; 3];
        add_seen(&numbers(row.text("chance")), row.count("seen") != 0, &mut ln_part)?;
        Ok(ln_part)
    });
    vectors("identify_add_measured", |row| {
        let mut ln_part = [0.0; 3];
        let reading = Reading { value: row.number("x"), u: row.number("u") };
        let nearest = add_measured(&limits(&numbers(row.text("size_mm"))), reading, &mut ln_part)?;
        let [a, b, c] = ln_part;
        Ok([a, b, c, nearest.variant.into(), nearest.outside_mm, nearest.outside_u])
    });
}

#[test]
fn priors() {
    vectors("identify_prior_of_counts", |row| {
        let counts: Vec<u32> = row.text("counts").split_whitespace().map(|count| count.parse().unwrap()).collect();
        let mut prior = [0.0; 3];
        prior_of_counts(&counts, &mut prior)?;
        Ok(prior)
    });
}

#[test]
fn weighing() {
    vectors("identify_weigh", |row| {
        let mut unit = Unit::of(row)?;
        unit.unexplained = row.count("unexplained");
        let (variants, weighed) = unit.weigh()?;
        assert_eq!(weighed.unexplained, unit.unexplained);
        let [a, b, c] = variants[..] else { panic!("three variants") };
        Ok([
            a.chance,
            b.chance,
            c.chance,
            a.chance_unmixed,
            b.chance_unmixed,
            c.chance_unmixed,
            weighed.chance_mixed,
            weighed.best.into(),
            weighed.single.into(),
            weighed.entropy_bits,
            weighed.ln_evidence,
            weighed.ln_single,
            weighed.ln_by_part,
            weighed.ln_gap,
        ])
    });
}

#[test]
fn parts() {
    vectors("identify_part", |row| {
        let (origins, part) = Unit::of(row)?.part(row.count("part") as usize)?;
        let [a, b, c] = origins[..] else { panic!("three variants") };
        Ok([
            part.origin.into(),
            part.chance,
            part.exchanged,
            part.exchanged_if_best,
            part.foreign,
            part.ln_conflict,
            a.chance,
            b.chance,
            c.chance,
            a.kept,
            b.kept,
            c.kept,
            a.if_exchanged,
            b.if_exchanged,
            c.if_exchanged,
        ])
    });
}

#[test]
fn conclusions() {
    vectors("identify_conclude", |row| {
        let (_, weighed) = Unit::new(&[1.0], &[]).weigh()?;
        let weighed = Weighed { chance: row.number("chance"), unexplained: row.count("unexplained"), ..weighed };
        let (_, part) = Unit::new(&[1.0], &[0.1]).part(0)?;
        let parts: Vec<_> =
            numbers(row.text("foreign")).into_iter().map(|foreign| PartFinding { foreign, ..part }).collect();
        let rule = Rule { go: row.number("go"), no_go: row.number("no_go"), ..Rule::conformance(0.95)? };
        let conclusion = conclude(&weighed, &parts, rule)?;
        Ok([
            f64::from(conclusion.outcome as i32),
            conclusion.foreign_parts.into(),
            conclusion.open_parts.into(),
            conclusion.variant_settled.into(),
        ])
    });
}

#[test]
fn worths() {
    vectors("identify_mark_worth", |row| {
        let chance = numbers(row.text("chance"));
        let look = |standing: Standing| standing.mark_worth(&chance, row.number("minutes"));
        let worth = Unit::of(row)?.worth(row.count("part") as usize, row.number("go"), look)?;
        Ok([worth.bits, worth.bits_per_minute, worth.settles])
    });
    vectors("identify_size_worth", |row| {
        let size_mm = limits(&numbers(row.text("size_mm")));
        let look = |standing: Standing| standing.size_worth(&size_mm, row.number("u_mm"), row.number("minutes"));
        let worth = Unit::of(row)?.worth(row.count("part") as usize, row.number("go"), look)?;
        Ok([worth.bits, worth.bits_per_minute, worth.settles])
    });
}
