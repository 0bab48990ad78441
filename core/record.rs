//! Records: a family of units as TOML, validated with errors that name the line and the mend.
