//! The committed schemas, and the units in the names of every key.

use super::*;

#[test]
fn committed_schemas_are_current() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/trainwright/schema");
    for kind in Kind::ALL {
        let path = folder.join(kind.name()).with_extension("json");
        if std::env::var_os("WRITE_SCHEMA").is_some() {
            fs::write(&path, kind.json_schema()).unwrap();
        }
        let committed = fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == kind.json_schema(), "{} is out of date: make schema", path.display());
    }
}

/// Keys of numbers without a unit (shares, ratios, chances, friction), or with one that is written out.
const WITHOUT_UNIT: &str = "axle axle_efficiency axle_programmed best build_index chance efficiency exchanged face_share gear_bending \
    geometry_u_rel hitch_share least_cover needle pawl_friction poisson price prior reference_contacts reference_over_rated rocking_factor \
    roll_trailer roll_truck rolling_over_free shaft slopes speed_ratio stress_factor torque_ratio torque_reserve u u_hitch_share u_rel_capacity u_rel_displacement u_rel_leak u_rel_push u_rel_stress u_rel_volume u_rolling_over_free \
    hours minutes seconds gravity_m_s2";

#[test]
fn every_number_of_a_record_names_its_unit() {
    let units = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("core/units.rs")).unwrap();
    let table = units.lines().filter(|line| line.starts_with("//! | `_"));
    let suffixes: Vec<_> = table.flat_map(|row| row.split('`').skip(1).step_by(2)).map(str::to_owned).collect();
    let named = |key: &str| {
        suffixes.iter().any(|suffix| key.ends_with(suffix.as_str()))
            || WITHOUT_UNIT.split_whitespace().any(|word| word == key)
    };
    let mut unnamed = Vec::new();
    for kind in Kind::ALL {
        let schema: serde_json::Value = serde_json::from_str(&kind.json_schema()).unwrap();
        let tables = schema["$defs"].as_object().unwrap().values().chain([&schema]);
        let alternatives = tables.flat_map(|table| {
            table["anyOf"].as_array().or(table["oneOf"].as_array()).into_iter().flatten().chain([table])
        });
        for (key, value) in alternatives.filter_map(|table| table["properties"].as_object()).flatten() {
            if is_number(value, &schema) && !named(key) {
                unnamed.push(format!("{} {key}", kind.name()));
            }
        }
    }
    assert!(unnamed.is_empty(), "{unnamed:?}");
}

/// Whether a key holds a number, or a list or table of numbers.
fn is_number(schema: &serde_json::Value, root: &serde_json::Value) -> bool {
    if let Some(reference) = schema["$ref"].as_str() {
        return is_number(root.pointer(reference.trim_start_matches('#')).unwrap(), root);
    }
    if schema["type"] == "number" {
        return true;
    }
    ["items", "additionalProperties"]
        .iter()
        .any(|inner| schema[inner].is_object() && schema["properties"].is_null() && is_number(&schema[inner], root))
}
