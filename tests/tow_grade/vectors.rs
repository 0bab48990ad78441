//! The vectors that the three languages share.

use super::*;

/// Numbers of a cell: groups by spaces, parts of a group by colons.
fn groups(row: &Row, column: &str) -> Vec<Vec<f64>> {
    let numbers = |group: &str| group.split(':').map(|part| part.parse().unwrap()).collect();
    row.text(column).split(' ').map(numbers).collect()
}

fn list(row: &Row, column: &str) -> Vec<f64> {
    groups(row, column).into_iter().map(|group| group[0]).collect()
}

fn gears(row: &Row) -> Vec<OfferedGear> {
    let gear = |parts: &Vec<f64>| OfferedGear { ratio: parts[0], efficiency: parts[1], closed: 0, one_way: 0 };
    groups(row, "gears").iter().map(gear).collect()
}

fn gearing(row: &Row) -> Result<Gearing, Error> {
    let [input, reverse, output] =
        ["rated_input_nm", "rated_reverse_nm", "rated_output_nm"].map(|column| row.number(column));
    Gearing::new(&gears(row), input, reverse, output)
}

fn rig(row: &Row) -> Result<Rig, Error> {
    let engine = groups(row, "engine");
    let column = |place: usize| engine.iter().map(|point| point[place]).collect::<Vec<_>>();
    Ok(Rig {
        haul: Haul {
            combination: Combination {
                mass_kg: row.number("mass_kg"),
                rolling_coefficient: row.number("rolling_coefficient"),
                drag_area_m2: row.number("drag_area_m2"),
            },
            driveline: Driveline {
                axle_ratio: row.number("axle_ratio"),
                transfer_ratio: 1.0,
                circumference_mm: Reading { value: row.number("circumference_mm"), u: 0.0 },
            },
            axle_efficiency: row.number("axle_efficiency"),
            air_density_kg_m3: row.number("air_density_kg_m3"),
        },
        gearing: gearing(row)?,
        engine: EngineCurve::from_table(&column(0), &column(1), row.number("max_rpm"))?,
        rule: GearRule {
            torque_reserve: row.number("torque_reserve"),
            lowest_locked_rpm: row.number("lowest_locked_rpm"),
            speed_step_km_h: row.number("speed_step_km_h"),
        },
    })
}

fn place(gear: u32) -> f64 {
    if gear == NO_GEAR { -1.0 } else { gear.into() }
}

#[test]
fn grades() {
    vectors("tow_new", |row| {
        let gearing = gearing(row)?;
        let (first, last) = (gearing.gears()[0], gearing.gear(gearing.count - 1));
        Ok([gearing.count.into(), first.ratio, last.efficiency])
    });
    vectors("tow_pull", |row| {
        let pull = rig(row)?.pull(row.number("grade_pct"), row.number("speed_km_h"))?;
        let look = pull.gears()[row.count("look") as usize];
        Ok([
            pull.load.total_n,
            pull.output_rpm,
            pull.output_nm,
            pull.use_of_output,
            place(pull.chosen),
            place(pull.advised),
            f64::from(pull.limit as u8),
            pull.use_of_limit,
            look.engine_rpm,
            look.input_nm,
            look.full_nm,
            look.reserve,
            look.use_of_input,
            f64::from(look.standing as u8),
        ])
    });
    vectors("tow_pull_slowed", |row| {
        let pull = rig(row)?.pull_slowed(row.number("grade_pct"), row.number("speed_km_h"))?;
        Ok([pull.speed_km_h, place(pull.chosen), pull.chosen_gear().unwrap().input_nm])
    });
    vectors("tow_largest_speed", |row| {
        let within = row.count("within_ratings") == 1;
        let found = rig(row)?.largest_speed(row.number("grade_pct"), row.number("at_most_km_h"), within)?;
        Ok([found.speed_km_h, place(found.gear), found.use_of_input, f64::from(found.limit as u8)])
    });
    let fleet = demo::<Fleet>("fleet");
    let converter: Characteristic = fleet.characteristic("tight").unwrap();
    vectors("tow_unlocked_pull", |row| {
        let (gear, grade, speed) = (row.count("gear"), row.number("grade_pct"), row.number("speed_km_h"));
        let pull = rig(row)?.unlocked_pull(&converter, gear, grade, speed)?;
        let shafts = [pull.turbine_rpm, pull.turbine_nm, pull.speed_ratio, pull.torque_ratio];
        let engine = [pull.engine_rpm, pull.engine_nm, pull.reserve, f64::from(u8::from(pull.holds))];
        let [a, b, c, d] = shafts;
        let [e, f, g, h] = engine;
        Ok([a, b, c, d, e, f, g, h, pull.use_of_input, pull.converter_kw])
    });
}

fn node(row: &Row) -> HeatNode {
    HeatNode {
        heat_capacity_j_k: row.number("heat_capacity_j_k"),
        case_w_k: row.number("case_w_k"),
        air_c: row.number("air_c"),
        cooler_w_k: row.number("cooler_w_k"),
        cooler_air_c: row.number("cooler_air_c"),
    }
}

#[test]
fn heat() {
    vectors("tow_unit_loss", |row| {
        let loss = unit_loss(Running {
            input_nm: row.number("input_nm"),
            input_rpm: row.number("input_rpm"),
            efficiency: row.number("efficiency"),
            drag_nm: row.number("drag_nm"),
            pump_kpa: row.number("pump_kpa"),
            pump_l_min: row.number("pump_l_min"),
            pump_efficiency: row.number("pump_efficiency"),
            converter_kw: row.number("converter_kw"),
        })?;
        Ok([loss.mesh_kw, loss.drag_kw, loss.pump_kw, loss.converter_kw, loss.total_kw])
    });
    vectors("tow_converter_loss_kw", |row| {
        let [torque, speed] = ["engine_nm", "engine_rpm"].map(|column| row.number(column));
        Ok([converter_loss_kw(torque, speed, row.number("speed_ratio"), row.number("torque_ratio"))?])
    });
    let flow = |row: &Row| ["flow_l_min", "density_kg_m3", "specific_heat_j_kg_k"].map(|column| row.number(column));
    vectors("tow_through_flow_rise", |row| {
        let [flow, density, heat] = flow(row);
        let rise = through_flow_rise(row.number("power_kw"), row.number("efficiency"), flow, density, heat)?;
        Ok([rise.loss_kw, rise.rise_k])
    });
    vectors("tow_flow_heat_w_k", |row| {
        let [flow, density, heat] = flow(row);
        Ok([flow_heat_w_k(flow, density, heat)?])
    });
    vectors("tow_warmed", |row| {
        let warmed = node(row).warmed(row.number("start_c"), row.number("loss_kw"), row.number("time_s"))?;
        Ok([warmed.temp_c, warmed.steady_c, warmed.time_constant_s])
    });
    vectors("tow_time_to", |row| {
        let time = node(row).time_to(row.number("start_c"), row.number("loss_kw"), row.number("limit_c"))?;
        Ok([time.time_s, time.steady_c, f64::from(u8::from(time.reached))])
    });
    vectors("tow_cooler_needed_w_k", |row| {
        Ok([node(row).cooler_needed_w_k(row.number("loss_kw"), row.number("limit_c"))?])
    });
}

fn arrangement(row: &Row) -> Arrangement {
    match row.text("arrangement") {
        "counterflow" => Arrangement::Counterflow,
        "crossflow" => Arrangement::Crossflow,
        "parallel" => Arrangement::Parallel,
        other => panic!("{other}"),
    }
}

#[test]
fn coolers() {
    vectors("tow_effectiveness", |row| {
        Ok([arrangement(row).effectiveness(row.number("transfer_units"), row.number("capacity_ratio"))?])
    });
    vectors("tow_transfer_units", |row| {
        Ok([arrangement(row).transfer_units(row.number("effectiveness"), row.number("capacity_ratio"))?])
    });
    vectors("tow_cooler_heat", |row| {
        let [ua_w_k, oil_w_k, air_w_k] = ["ua_w_k", "oil_w_k", "air_w_k"].map(|column| row.number(column));
        let cooler = Cooler { ua_w_k, oil_w_k, air_w_k, arrangement: arrangement(row) };
        let heat = cooler.cooler_heat(row.number("oil_c"), row.number("air_c"))?;
        Ok([heat.effectiveness, heat.conductance_w_k, heat.power_kw, heat.oil_out_c, heat.air_out_c])
    });
    vectors("tow_cooler_size", |row| {
        let [oil_in_c, oil_out_c, air_in_c] = ["oil_in_c", "oil_out_c", "air_in_c"].map(|column| row.number(column));
        let task = CoolerTask { oil_in_c, oil_out_c, air_in_c };
        let size = cooler_size(arrangement(row), row.number("oil_w_k"), row.number("air_w_k"), task)?;
        Ok([size.power_kw, size.air_out_c, size.effectiveness, size.ua_w_k, size.log_mean_k])
    });
}

fn heat_model(row: &Row) -> HeatModel {
    HeatModel {
        drag_nm: row.number("drag_nm"),
        pump_kpa: row.number("pump_kpa"),
        pump_l_min: row.number("pump_l_min"),
        pump_efficiency: row.number("pump_efficiency"),
        node: node(row),
        limit_c: row.number("limit_c"),
    }
}

#[test]
fn roads() {
    vectors("tow_climb", |row| {
        let piece = |parts: &Vec<f64>| RoadPiece { length_m: parts[0], grade_pct: parts[1], speed_km_h: parts[2] };
        let road: Vec<_> = groups(row, "pieces").iter().map(piece).collect();
        let mut driven = vec![DrivenPiece::NONE; road.len()];
        let climb = rig(row)?.climb(heat_model(row), row.number("start_c"), &road, &mut driven)?;
        let last = driven.last().unwrap();
        Ok([
            climb.distance_m,
            climb.up_m,
            climb.down_m,
            climb.time_s,
            climb.peak_c,
            climb.peak_piece.into(),
            climb.end_c,
            climb.limit_after_s,
            climb.limit_after_m,
            climb.over_limit_s,
            climb.heat_j,
            climb.wheel_work_j,
            climb.lift_work_j,
            climb.use_of_rating,
            last.speed_km_h,
            place(last.gear),
            last.loss_kw,
            last.end_c,
        ])
    });
    vectors("tow_cool_speed", |row| {
        let cool = rig(row)?.cool_speed(heat_model(row), row.number("grade_pct"), row.number("speed_km_h"))?;
        Ok([cool.pull.speed_km_h, place(cool.pull.chosen), cool.loss_kw, cool.steady_c, cool.steps.into()])
    });
    vectors("tow_smooth", |row| {
        let (distance_m, elevation_m) = (list(row, "distance_m"), list(row, "elevation_m"));
        let noise = ElevationNoise { u_m: row.number("u_m"), correlation_m: row.number("correlation_m") };
        let mut points = vec![SlopePoint::NONE; distance_m.len()];
        smooth(&distance_m, &elevation_m, row.number("window_m"), noise, &mut points)?;
        let point = points[row.count("look") as usize];
        Ok([point.elevation_m, point.grade_pct, point.u_grade_pct, point.points.into()])
    });
    vectors("tow_total_climb", |row| {
        let climb = total_climb(&list(row, "elevation_m"), row.number("dead_band_m"))?;
        Ok([climb.up_m, climb.down_m, climb.net_m, climb.turns.into()])
    });
    vectors("tow_pieces", |row| {
        let (distance_m, elevation_m) = (list(row, "distance_m"), list(row, "elevation_m"));
        let (piece_m, speed_km_h) = (row.number("piece_m"), row.number("speed_km_h"));
        let count = pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut [])?;
        let blank = RoadPiece { length_m: 0.0, grade_pct: 0.0, speed_km_h: 0.0 };
        let mut found = vec![blank; count as usize];
        assert_eq!(pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut found)?, count);
        let piece = found[row.count("look") as usize];
        Ok([count.into(), piece.length_m, piece.grade_pct])
    });
}
