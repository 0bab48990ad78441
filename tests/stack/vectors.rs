//! The vectors that the three languages share.

use super::*;

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
        fields(ChainLink::measured(row.number("sensitivity"), row.reading("value", "u"), row.number("k"))?)
    });
}

#[test]
fn chains() {
    vectors("stack_chain", |row| {
        let columns = ["sensitivity", "value_mm", "half_width_mm", "u_mm"].map(|column| row.numbers(column));
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
            case_length_mm: row.reading("case_length_mm", "case_length_u_mm"),
            train_length_mm: row.reading("train_length_mm", "train_length_u_mm"),
            case_expansion_per_k: row.reading("case_expansion_per_k", "case_expansion_u_per_k"),
            train_expansion_per_k: row.reading("train_expansion_per_k", "train_expansion_u_per_k"),
            reference_c: row.number("reference_c"),
        };
        let hot = growth.grown(row.reading("temp_c", "temp_u_c"), row.reading("train_hotter_k", "train_hotter_u_k"))?;
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
        room_mm: row.reading("room_mm", "room_u_mm"),
        window_mm: size(row),
        target_mm: row.number("target_mm"),
        growth_mm: row.reading("growth_mm", "growth_u_mm"),
        hot_window_mm: Limits { lower: row.number("hot_lower"), upper: row.number("hot_upper") },
        rule: Rule { go: row.number("go"), no_go: row.number("no_go"), ..chances() },
        by: if row.count("by") == 0 { ChoiceRule::NearestTarget } else { ChoiceRule::LeastRisk },
        hot_counts: row.count("hot_counts") != 0,
    }
}

fn pieces(row: &Row) -> Vec<Piece> {
    let sizes = row.numbers("thickness_mm").into_iter().zip(row.numbers("thickness_u_mm")).zip(row.numbers("in_stock"));
    sizes.map(|((value, u), stock)| Piece { thickness_mm: Reading { value, u }, in_stock: stock != 0.0 }).collect()
}

#[test]
fn choices() {
    vectors("stack_outcome", |row| {
        let piece = Piece { thickness_mm: row.reading("thickness_mm", "thickness_u_mm"), in_stock: true };
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
        let mean = mean_of_steps(&row.numbers("values"), row.number("quantum"), row.number("u_of_one"))?;
        Ok([mean.reading.value, mean.reading.u, mean.deviation, mean.freedom])
    });
    vectors("stack_what_to_measure", |row| {
        let inputs: Vec<_> = row
            .numbers("sensitivity")
            .into_iter()
            .zip(row.numbers("u"))
            .map(|(sensitivity, u)| Input { sensitivity, u, freedom: f64::INFINITY })
            .collect();
        let budget = combine(&inputs)?;
        let rule = Rule::stated_chances(row.number("go"), row.number("no_go"))?;
        let judgment = judge(Reading { value: row.number("value"), u: budget.u }, size(row), rule)?;
        let plan = what_to_measure(&judgment, &budget, &row.numbers("u_measured"))?;
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
        let clearance_mm = row.reading("clearance_mm", "clearance_u_mm");
        let room = room_from_fitted(clearance_mm, row.reading("fitted_mm", "fitted_u_mm"))?;
        Ok([room.value, room.u])
    });
    vectors("stack_room_from_heights", |row| {
        let heights = PackHeights {
            drum_depth_mm: row.reading("drum_depth_mm", "drum_depth_u_mm"),
            friction_plates: row.count("friction_plates"),
            friction_mm: row.reading("friction_mm", "friction_u_mm"),
            steel_plates: row.count("steel_plates"),
            steel_mm: row.reading("steel_mm", "steel_u_mm"),
            pressure_plate_mm: row.reading("pressure_plate_mm", "pressure_plate_u_mm"),
            wave_plate_mm: row.reading("wave_plate_mm", "wave_plate_u_mm"),
        };
        let room = heights.room_from_heights()?;
        Ok([room.plates_mm, room.room_mm.value, room.room_mm.u, room.budget.largest.into()])
    });
    vectors("stack_piston_travel", |row| {
        let stroke = PistonStroke {
            clearance_mm: row.reading("clearance_mm", "clearance_u_mm"),
            wave_mm: row.reading("wave_mm", "wave_u_mm"),
            bend_mm: row.reading("bend_mm", "bend_u_mm"),
            land_mm: row.reading("land_mm", "land_u_mm"),
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
        let travel_mm = row.reading("travel_mm", "travel_u_mm");
        let fill = apply_fill(piston, travel_mm, row.reading("flow_l_min", "flow_u_l_min"))?;
        Ok([fill.area_mm2, fill.volume_ml.value, fill.volume_ml.u, fill.time_s.value, fill.time_s.u])
    });
}
