//! Every key of the demo misspelled, reversed, in a shop unit, or left out.

use super::*;

/// Lines `key = value` of a demo file: number from 1, key, and the text with that line changed.
fn changed_lines(file: &str, change: impl Fn(&str, &str) -> Option<String>) -> Vec<(usize, String, String)> {
    let text = demo(file);
    let lines: Vec<_> = text.lines().collect();
    let changed = lines.iter().enumerate().filter_map(|(index, line)| {
        let (key, value) =
            line.split_once(" = ").filter(|(key, _)| key.chars().all(|c| c.is_alphanumeric() || "_ ".contains(c)))?;
        let new = change(key.trim_end(), value)?;
        let text = lines.iter().enumerate().map(|(at, line)| if at == index { new.as_str() } else { line });
        Some((index + 1, key.trim_end().to_owned(), text.collect::<Vec<_>>().join("\n")))
    });
    changed.collect()
}

#[test]
fn a_misspelled_key_is_found_at_its_line_with_the_right_one() {
    // Keys that are names of the user's own choice: elsewhere the name is then missing, or nobody refers to it. `unit` sits among such names.
    let own = ["B1", "B2", "C1", "C2", "C3", "F1", "R", "teal", "wren", "heron", "output_sensor_left", "unit"];
    let own_too = [
        "cooler_port_m18",
        "extension_bolts_8",
        "sump_depth",
        "output_rear_journal",
        "output_rear_bore",
        "output_pilot",
        "output_pilot_bore",
    ];
    let mut count = 0;
    for file in FILES {
        for (line, key, text) in changed_lines(file, |key, value| Some(format!("{key}q = {value}"))) {
            if own.contains(&key.as_str()) || own_too.contains(&key.as_str()) {
                continue;
            }
            let problems = check(&[(file, &text)]);
            let at_line = problems
                .errors()
                .any(|problem| problem.line == line && problem.file == file && problem.mend.contains(&key));
            assert!(at_line, "{file}:{line} {key}: {problems}");
            count += 1;
        }
    }
    assert!(count > 500, "{count}");
}

#[test]
fn a_reversed_pair_is_found_at_its_line() {
    let mut count = 0;
    for file in FILES {
        let reversed = |key: &str, value: &str| {
            let (pair, rest) = value.strip_prefix('[')?.split_once(']')?;
            let (low, high) = pair.split_once(", ")?;
            let (low, high): (f64, f64) = (low.parse().ok()?, high.parse().ok()?);
            // Width and thickness, diameter and length: two sizes, not a pair of limits. The job's temperatures are a list.
            (low < high && !["needle_mm", "set_at_c"].contains(&key)).then(|| format!("{key} = [{high}, {low}]{rest}"))
        };
        for (line, key, text) in changed_lines(file, reversed) {
            let problems = check(&[(file, &text)]);
            let [problem] = problems.0.as_slice() else { panic!("{file}:{line} {key}: {problems}") };
            assert_eq!((problem.line, problem.file.as_str()), (line, file));
            assert!(problem.message.starts_with("reversed: lower"), "{problem}");
            count += 1;
        }
    }
    assert!(count > 40, "{count}");
}

#[test]
fn a_shop_unit_is_recognized_and_converted() {
    let shop = [
        ("_mm", "_in", "millimeters"),
        ("_kpa", "_psi", "kilopascals"),
        ("_nm", "_lb_ft", "newton-meters"),
        ("_kg", "_lb", "kilograms"),
        ("_c", "_f", "degrees Celsius"),
        ("_l", "_qt", "liters"),
        ("_mpa", "_ksi", "megapascals"),
    ];
    let mut count = 0;
    for file in FILES {
        for (unit, other, name) in shop {
            let in_shop_unit = |key: &str, value: &str| Some(format!("{}{other} = {value}", key.strip_suffix(unit)?));
            for (line, key, text) in changed_lines(file, in_shop_unit) {
                let problems = check(&[(file, &text)]);
                let problem = problems.0.iter().find(|problem| problem.line == line);
                let problem = problem.unwrap_or_else(|| panic!("{file}:{line} {key}: {problems}"));
                assert!(problem.message.starts_with(&format!("this key takes {name}, not ")), "{problem}");
                assert!(problem.mend.starts_with(&format!("write {key}")), "{problem}");
                count += 1;
            }
        }
    }
    assert!(count > 150, "{count}");
}

#[test]
fn a_missing_key_is_found_unless_it_may_be_left_out() {
    let optional = [
        "title",
        "status",
        "reference_c",
        "only",
        "planets",
        "module_mm",
        "helix_deg",
        "face_mm",
        "fixed",
        "blocks",
        "build_index",
        "reverse_turbine_nm",
        "line_idle_kpa",
        "line_stall_d_kpa",
        "line_stall_r_kpa",
        "label",
        "expansion_per_k",
        "flash_c",
        "friction_approved",
        "story",
        "members",
        "tire_programmed",
        "axle_programmed",
        "parts_from",
        "machined",
        "wave_mm",
        "bend_mm",
        "seal_land_mm",
        "F1",
        "u_rel_capacity",
        "u_rel_displacement",
        "u_rel_leak",
        "idle_rpm",
        "demand_l_min",
        "friction",
        "strut_angle_deg",
        "space_mm",
        "pawl_tip_mm",
        "pawl_tip_radius_mm",
        "stress_factor",
        "cone_half_angle_deg",
        "shaft_size",
        "bore_size",
        "shaft_instrument",
        "length_mm",
        "shaft_material",
        "bore_material",
        "housing_material",
        "bush_material",
        "young_mpa",
        "poisson",
        "pushed_by",
        "aspiration",
        "steel",
    ];
    for file in ["family.toml", "fluids.toml", "instruments.toml", "fleet.toml"] {
        for (line, key, text) in changed_lines(file, |_, _| Some(String::new())) {
            let found = check(&[(file, &text)]).errors().next().is_some();
            let may_be_left_out = optional.contains(&key.as_str())
                || line_is_in(file, line, &["[train.efficiency]", "[price]", "[truck.tow]"]);
            let may_be_left_out = may_be_left_out
                || key == "u_rel_stress" && line_is_in(file, line, &["[shaft.input]", "[shaft.output]"]);
            assert!(found || may_be_left_out, "{file}:{line} {key}");
        }
    }
}

/// Whether the last header above a line is one of these.
fn line_is_in(file: &str, line: usize, headers: &[&str]) -> bool {
    let text = demo(file);
    let above: Vec<_> = text.lines().take(line).filter(|line| line.starts_with('[')).collect();
    above.last().is_some_and(|header| headers.contains(header))
}
