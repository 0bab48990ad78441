//! The vectors that the three languages share.

use super::*;

fn reading(row: &Row) -> Reading {
    Reading { value: row.number("value"), u: row.number("u") }
}

fn limits(row: &Row) -> Limits {
    Limits { lower: row.number("lower"), upper: row.number("upper") }
}

/// Four inputs, `c1,u1,nu1` to `c4,u4,nu4`; an empty `c` ends the list.
fn inputs(row: &Row) -> Vec<Input> {
    (1..=4)
        .take_while(|i| !row.text(&format!("c{i}")).is_empty())
        .map(|i| Input {
            sensitivity: row.number(&format!("c{i}")),
            u: row.number(&format!("u{i}")),
            freedom: row.number(&format!("nu{i}")),
        })
        .collect()
}

#[test]
fn chance_inside_vectors() {
    vectors("judge_chance_inside", |row| Ok([chance_inside(reading(row), limits(row))?]));
}

#[test]
fn judge_vectors() {
    vectors("judge_judge", |row| {
        let rule = Rule {
            go: row.number("go"),
            no_go: row.number("no_go"),
            k: row.number("k"),
            kind: RuleKind(row.number("kind") as i32),
        };
        let outcome = judge(reading(row), limits(row), rule)?;
        Ok([
            f64::from(outcome.verdict as i32),
            outcome.chance,
            outcome.acceptance.lower,
            outcome.acceptance.upper,
            outcome.rejection.lower,
            outcome.rejection.upper,
            outcome.u_to_decide,
            outcome.value_to_go,
        ])
    });
}

#[test]
fn one_argument_vectors() {
    vectors("judge_rectangular", |row| Ok([Reading::rectangular(row.number("value"), row.number("half_width"))?.u]));
    vectors("judge_normal_cdf", |row| Ok([normal_cdf(row.number("z"))?]));
    vectors("judge_normal_quantile", |row| Ok([normal_quantile(row.number("probability"))?]));
    vectors("judge_student_cdf", |row| Ok([student_cdf(row.number("t"), row.number("freedom"))?]));
    vectors("judge_student_quantile", |row| Ok([student_quantile(row.number("probability"), row.number("freedom"))?]));
    vectors("judge_coverage_factor", |row| Ok([coverage_factor(row.number("coverage"), row.number("freedom"))?]));
}

#[test]
fn combine_vectors() {
    vectors("judge_combine", |row| {
        let budget = combine(&inputs(row))?;
        Ok([budget.u, budget.freedom, f64::from(budget.largest)])
    });
    vectors("judge_combine_correlated", |row| {
        let correlation: Vec<f64> = row.text("correlation").split(' ').flat_map(str::parse).collect();
        let budget = combine_correlated(&inputs(row), &correlation)?;
        Ok([budget.u, budget.freedom, f64::from(budget.largest)])
    });
    vectors("judge_effective_freedom", |row| Ok([effective_freedom(&inputs(row))?]));
}

#[test]
fn settle_vectors() {
    vectors("judge_settle", |row| {
        let budget = combine(&inputs(row))?;
        let rule = Rule::stated_chances(row.number("go"), row.number("no_go"))?;
        let judgment = judge(Reading { value: row.number("value"), u: budget.u }, limits(row), rule)?;
        let next = settle(&judgment, &budget)?;
        Ok([f64::from(next.input), f64::from(u8::from(next.enough)), next.u_now, next.u_needed])
    });
    vectors("judge_settle_by", |row| {
        let budget = combine(&inputs(row))?;
        let rule = Rule::stated_chances(row.number("go"), row.number("no_go"))?;
        let judgment = judge(Reading { value: row.number("value"), u: budget.u }, limits(row), rule)?;
        let one = settle_by(&judgment, &budget, row.count("input"))?;
        Ok([f64::from(one.input), f64::from(u8::from(one.enough)), one.u_now, one.u_needed])
    });
}

#[test]
fn expand_vectors() {
    vectors("judge_expand", |row| {
        let expanded = expand(reading(row), row.number("freedom"), row.number("coverage"))?;
        Ok([expanded.k, expanded.expanded_u, expanded.lower, expanded.upper])
    });
}
