//! flash_image FOLDER TRUCK FLUID OUT.c: the flash image of the unit in a truck, as a C array.
//!
//! FOLDER holds family.toml, fluids.toml, fleet.toml and instruments.toml, such as `python/trainwright/demo`.

use std::error::Error;
use std::fmt::Write;
use std::fs;
use std::path::Path;

use trainwright::record::{Family, Fleet, Fluids, Installed, Instruments, Record};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [folder, truck, fluid, out] = arguments.as_slice() else {
        return Err("usage: flash_image FOLDER TRUCK FLUID OUT.c".into());
    };
    let family: Family = record(folder, "family.toml")?;
    let fluids: Fluids = record(folder, "fluids.toml")?;
    let fleet: Fleet = record(folder, "fleet.toml")?;
    let instruments: Instruments = record(folder, "instruments.toml")?;
    let truck = fleet.truck.iter().find(|known| known.id == *truck).ok_or("fleet.toml has no truck of this name")?;
    let fluid = fluids.fluid.get(fluid).ok_or("fluids.toml has no fluid of this name")?;

    let image = family.flash_image(
        &truck.variant,
        Installed {
            driveline: Some(fleet.programmed(truck)?),
            fluid: Some(fluid.fluid()),
            fill: fluids.fill.as_ref().map(|fill| fill.fill()).transpose()?,
            instruments: Some(&instruments),
        },
    )?;
    let mut text =
        "#include <stddef.h>\nextern const unsigned char unit_image[];\nextern const size_t unit_image_bytes;\n\
                    const unsigned char unit_image[] = {"
            .to_owned();
    for (place, byte) in image.iter().enumerate() {
        write!(text, "{}{byte},", if place % 24 == 0 { "\n    " } else { "" })?;
    }
    write!(text, "\n}};\nconst size_t unit_image_bytes = sizeof unit_image;\n")?;
    fs::write(out, text)?;
    println!("{out}: {} bytes of {}, {}", image.len(), truck.id, truck.variant);
    Ok(())
}

fn record<T: Record>(folder: &str, name: &str) -> Result<T, Box<dyn Error>> {
    let path = Path::new(folder).join(name);
    Ok(T::from_toml(&path.to_string_lossy(), &fs::read_to_string(&path)?)?)
}
