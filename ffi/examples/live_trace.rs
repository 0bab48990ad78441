//! live_trace TRACE.csv OUT.c: a drive as a C array of the whole numbers that came over the bus, one row for each sample.
//!
//! TRACE.csv has the columns of `python/trainwright/demo/trace/trace.csv`.

use std::error::Error;
use std::fmt::Write;
use std::fs;

/// Columns in the order of the array, each with the step of its raw number.
const COLUMNS: [(&str, f64); 7] = [
    ("n_input_rpm", 0.5),
    ("n_output_rpm", 0.5),
    ("n_engine_rpm", 1.0),
    ("line_kpa", 8.0),
    ("sump_c", 1.0),
    ("commanded_gear", 1.0),
    ("lockup", 1.0),
];

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [trace, out] = arguments.as_slice() else {
        return Err("usage: live_trace TRACE.csv OUT.c".into());
    };
    let csv = fs::read_to_string(trace)?;
    let mut lines = csv.lines();
    let header: Vec<&str> = lines.next().ok_or("the trace is empty")?.split(',').collect();
    let place = |name: &str| header.iter().position(|known| *known == name).ok_or(format!("the trace has no {name}"));
    let time_at = place("time_s")?;
    let places: Vec<usize> = COLUMNS.iter().map(|(name, _)| place(name)).collect::<Result<_, _>>()?;
    let mut text = "#include <stddef.h>\n#include <stdint.h>\nextern const uint32_t unit_trace_us[];\n\
                    extern const uint16_t unit_trace[][7];\nextern const size_t unit_trace_rows;\n"
        .to_owned();
    let mut times = "const uint32_t unit_trace_us[] = {\n".to_owned();
    let mut rows = "const uint16_t unit_trace[][7] = {\n".to_owned();
    let mut count = 0;
    for line in lines {
        let cells: Vec<f64> = line.split(',').map(str::parse).collect::<Result<_, _>>()?;
        let cell = |place: usize| cells.get(place).copied().ok_or(format!("too few cells: {line}"));
        writeln!(times, "    {},", (cell(time_at)? * 1e6).round())?;
        write!(rows, "    {{")?;
        for (&place, (name, step)) in places.iter().zip(COLUMNS) {
            let raw = (cell(place)? / step).round();
            if (raw * step - cell(place)?).abs() > 1e-9 || !(0.0..65_536.0).contains(&raw) {
                return Err(format!("{name} = {} is not a step of {step}", cell(place)?).into());
            }
            write!(rows, "{raw},")?;
        }
        writeln!(rows, "}},")?;
        count += 1;
    }
    write!(text, "{times}}};\n{rows}}};\nconst size_t unit_trace_rows = {count};\n")?;
    fs::write(out, text)?;
    println!("{out}: {count} samples");
    Ok(())
}
