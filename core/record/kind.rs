//! The kinds of record, and the schema of each.

use std::string::String;
use std::sync::LazyLock;
use std::vec::Vec;

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::Value;
use toml::de::DeTable;

use super::{Family, Fleet, Fluids, Instruments, Jobs, TrainFile};

/// Kind of a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A gear train alone.
    Train,
    /// A family of units.
    Family,
    /// Fluids, fill and cooler.
    Fluids,
    /// Shop instruments.
    Instruments,
    /// Tires, engines, converters, trucks.
    Fleet,
    /// Jobs of a demonstration.
    Jobs,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 6] = [Self::Train, Self::Family, Self::Fluids, Self::Instruments, Self::Fleet, Self::Jobs];

    /// Name of the kind, which is also the name of its schema file.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Train => "train",
            Self::Family => "family",
            Self::Fluids => "fluids",
            Self::Instruments => "instruments",
            Self::Fleet => "fleet",
            Self::Jobs => "jobs",
        }
    }

    /// The tables by which the kind is known.
    pub(super) fn main_keys(self) -> &'static str {
        match self {
            Self::Train => "train",
            Self::Family => "train with meta",
            Self::Fluids => "fluid",
            Self::Instruments => "instrument",
            Self::Fleet => "truck, tire, engine",
            Self::Jobs => "job",
        }
    }

    /// JSON Schema (draft 2020-12), for editors.
    #[must_use]
    pub fn json_schema(self) -> String {
        let mut text =
            serde_json::to_string_pretty(&self.generate(&SchemaSettings::draft2020_12())).unwrap_or_default();
        text.push('\n');
        text
    }

    /// The schema with every definition in its place, for the walk.
    pub(super) fn schema(self) -> &'static Value {
        static SCHEMAS: LazyLock<Vec<Value>> = LazyLock::new(|| {
            let settings = SchemaSettings::draft2020_12().with(|settings| settings.inline_subschemas = true);
            Kind::ALL.iter().map(|kind| kind.generate(&settings)).collect()
        });
        SCHEMAS.get(self as usize).unwrap_or(&Value::Null)
    }

    fn generate(self, settings: &SchemaSettings) -> Value {
        fn root<T: JsonSchema>(settings: &SchemaSettings) -> Value {
            let mut schema = settings.clone().into_generator().into_root_schema_for::<T>().to_value();
            drop_null(&mut schema);
            schema
        }
        match self {
            Self::Train => root::<TrainFile>(settings),
            Self::Family => root::<Family>(settings),
            Self::Fluids => root::<Fluids>(settings),
            Self::Instruments => root::<Instruments>(settings),
            Self::Fleet => root::<Fleet>(settings),
            Self::Jobs => root::<Jobs>(settings),
        }
    }

    /// The kind whose keys the table has most of.
    pub(super) fn of(table: &DeTable<'_>) -> Option<Self> {
        let shared = |kind: &Self| {
            let properties = kind.schema().get("properties").and_then(Value::as_object);
            let known =
                |key: &str| key != "schema" && properties.is_some_and(|properties| properties.contains_key(key));
            table.keys().filter(|key| known(key.get_ref())).count()
        };
        Self::ALL.into_iter().rev().filter(|kind| shared(kind) > 0).max_by_key(shared)
    }
}

/// TOML has no null: an optional key is left out.
fn drop_null(schema: &mut Value) {
    match schema {
        Value::Array(items) => items.iter_mut().for_each(drop_null),
        Value::Object(object) => {
            object.retain(|key, value| key != "default" || !value.is_null());
            if let Some(Value::Array(types)) = object.get_mut("type") {
                types.retain(|name| name != "null");
                if let [only] = types.as_slice() {
                    let only = only.clone();
                    object.insert("type".into(), only);
                }
            }
            if let Some(Value::Array(branches)) = object.get_mut("anyOf") {
                branches.retain(|branch| branch.get("type").is_none_or(|name| name != "null"));
                if let [Value::Object(only)] = branches.as_slice() {
                    let only = only.clone();
                    object.remove("anyOf");
                    for (key, value) in only {
                        object.entry(key).or_insert(value);
                    }
                }
            }
            object.values_mut().for_each(drop_null);
        }
        _ => {}
    }
}
