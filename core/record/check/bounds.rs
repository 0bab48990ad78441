//! Bounds of numbers.

use std::format;
use std::string::String;

use serde_json::Value;

/// Bounds of a number, inherited from the list or table around it.
#[derive(Clone, Copy, Default)]
pub(super) struct Bounds {
    least: Option<f64>,
    above: Option<f64>,
    most: Option<f64>,
}

impl Bounds {
    pub(super) fn narrowed(self, schema: &Value) -> Self {
        let number =
            |words: [&str; 2], outer: Option<f64>| words.iter().find_map(|word| schema.get(word)?.as_f64()).or(outer);
        let unsigned = match schema.get("format").and_then(Value::as_str) {
            Some("uint8") => Some(f64::from(u8::MAX)),
            Some("uint16") => Some(f64::from(u16::MAX)),
            Some("uint32") => Some(f64::from(u32::MAX)),
            _ => None,
        };
        Self {
            least: number(["minimum", "x-least"], self.least),
            above: number(["exclusiveMinimum", "x-above"], self.above),
            most: number(["maximum", "x-most"], self.most.or(unsigned)),
        }
    }

    pub(super) fn holds(self, value: f64) -> bool {
        self.least.is_none_or(|least| value >= least)
            && self.above.is_none_or(|above| value > above)
            && self.most.is_none_or(|most| value <= most)
    }

    pub(super) fn text(self) -> String {
        match (self.least, self.above, self.most) {
            (Some(least), _, Some(most)) => format!(" from {least} to {most}"),
            (Some(least), _, None) => format!(" of at least {least}"),
            (None, Some(above), Some(most)) => format!(" above {above}, at most {most}"),
            (None, Some(above), None) => format!(" above {above}"),
            (None, None, Some(most)) => format!(" of at most {most}"),
            (None, None, None) => String::new(),
        }
    }
}
