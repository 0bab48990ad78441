//! The vectors that the three languages share.

use super::*;

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
