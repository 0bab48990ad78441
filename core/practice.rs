//! Values known only as common practice of the trade, no source. Nothing takes them by default: name them.
//!
//! Where a pair is given, `_LOW` to `_HIGH` is the usual interval and not a limit: a unit's own data goes before it.

/// Aspect ratio of a tire whose size does not state one (185R14). It meets the diameters of UN R30 within 7 mm, and within
/// 5 mm from 135 mm of width up; the often quoted 82 is up to 5 mm of section height too much.
pub const ASPECT_NOT_STATED_PCT: f64 = 80.0;
/// Static loaded radius of a tire over its outer diameter: what a rule under the hub measures, standing still.
pub const STATIC_LOADED_RADIUS_OVER_DIAMETER: f64 = 0.47;

/// Dynamic friction of wet paper lining on steel in a matching fluid; static friction is similar or lower.
pub const PAPER_FRICTION_LOW: f64 = 0.10;
/// See [`PAPER_FRICTION_LOW`].
pub const PAPER_FRICTION_HIGH: f64 = 0.14;
/// Mean pressure on paper lining at full line pressure.
pub const LINING_PRESSURE_LOW_MPA: f64 = 1.0;
/// See [`LINING_PRESSURE_LOW_MPA`].
pub const LINING_PRESSURE_HIGH_MPA: f64 = 3.0;
/// Least capacity over demand that a shop accepts, at the least pressure and the least friction.
pub const HOLDING_MARGIN: f64 = 1.2;
/// Pack clearance for each friction plate, where the unit's own window is not known.
pub const CLEARANCE_PER_PLATE_LOW_MM: f64 = 0.20;
/// See [`CLEARANCE_PER_PLATE_LOW_MM`].
pub const CLEARANCE_PER_PLATE_HIGH_MM: f64 = 0.25;
/// Energy per friction area that paper lining takes in one shift: above it, ask the maker of the lining.
pub const SHIFT_ENERGY_HIGH_J_MM2: f64 = 0.5;
/// Heat flux at the start of a shift that paper lining takes: above it, ask the maker of the lining.
pub const SHIFT_FLUX_HIGH_W_MM2: f64 = 1.0;
/// Slip time of a shift of a planetary automatic.
pub const SHIFT_TIME_LOW_S: f64 = 0.2;
/// See [`SHIFT_TIME_LOW_S`].
pub const SHIFT_TIME_HIGH_S: f64 = 0.6;
/// Specific heat of the carbon steel of plates, between room temperature and about 200 °C.
pub const STEEL_SPECIFIC_HEAT_J_KG_K: f64 = 480.0;
/// Thermal conductivity of the carbon steel of plates, between room temperature and about 200 °C.
pub const STEEL_CONDUCTIVITY_W_M_K: f64 = 50.0;
/// Density of the carbon steel of plates.
pub const STEEL_DENSITY_KG_M3: f64 = 7850.0;
/// Efficiency of one mesh of two external planetary gears, ground or shaved, warm and well oiled; 0.985 to 0.995 is usual.
pub const EXTERNAL_MESH_EFFICIENCY: f64 = 0.99;
/// Efficiency of one mesh of planet and ring; it slides less than an external one.
pub const INTERNAL_MESH_EFFICIENCY: f64 = 0.993;
/// Linear expansion of steel.
pub const STEEL_EXPANSION_LOW_PER_K: f64 = 11e-6;
/// See [`STEEL_EXPANSION_LOW_PER_K`].
pub const STEEL_EXPANSION_HIGH_PER_K: f64 = 12e-6;
/// Linear expansion of the aluminum of cases, pump bodies and pistons.
pub const ALUMINUM_EXPANSION_LOW_PER_K: f64 = 21e-6;
/// See [`ALUMINUM_EXPANSION_LOW_PER_K`].
pub const ALUMINUM_EXPANSION_HIGH_PER_K: f64 = 24e-6;
/// Linear expansion of bronze.
pub const BRONZE_EXPANSION_LOW_PER_K: f64 = 17e-6;
/// See [`BRONZE_EXPANSION_LOW_PER_K`].
pub const BRONZE_EXPANSION_HIGH_PER_K: f64 = 19e-6;
/// Linear expansion of cast iron.
pub const CAST_IRON_EXPANSION_LOW_PER_K: f64 = 10e-6;
/// See [`CAST_IRON_EXPANSION_LOW_PER_K`].
pub const CAST_IRON_EXPANSION_HIGH_PER_K: f64 = 11e-6;
/// Modulus of elasticity of steel.
pub const STEEL_YOUNG_MPA: f64 = 206_000.0;
/// Poisson's ratio of steel.
pub const STEEL_POISSON: f64 = 0.29;
/// Modulus of elasticity of the aluminum of cases.
pub const ALUMINUM_YOUNG_MPA: f64 = 71_000.0;
/// Poisson's ratio of aluminum.
pub const ALUMINUM_POISSON: f64 = 0.33;
/// Friction of a steel-backed bushing in an aluminum bore, pressed with a film of oil.
pub const PRESS_FRICTION_LOW: f64 = 0.08;
/// See [`PRESS_FRICTION_LOW`].
pub const PRESS_FRICTION_HIGH: f64 = 0.15;
/// Running clearance of a new plain bushing, diametral: about a thousandth of the diameter.
pub const RUNNING_CLEARANCE_LOW_MM: f64 = 0.03;
/// See [`RUNNING_CLEARANCE_LOW_MM`].
pub const RUNNING_CLEARANCE_HIGH_MM: f64 = 0.10;
/// Standard uncertainty of one reading of a bore gauge, or of a telescoping gauge with a micrometer.
pub const BORE_GAUGE_U_MM: f64 = 0.004;
/// Modulus of elasticity of the hardened steel of races, rollers, sprags and pawls.
pub const RACE_YOUNG_MPA: f64 = 206_000.0;
/// Poisson's ratio of that steel.
pub const RACE_POISSON: f64 = 0.3;
/// Load of a park lock while the vehicle rocks over its static load, where no one has measured it.
pub const ROCKING_FACTOR_LOW: f64 = 1.5;
/// See [`ROCKING_FACTOR_LOW`].
pub const ROCKING_FACTOR_HIGH: f64 = 2.0;
/// Least static capacity over load of a roller or needle bearing in normal running; 1 where dents do not matter, 3 under shock.
pub const NEEDLE_STATIC_FACTOR: f64 = 1.5;
/// Load over static capacity below which needles slide instead of rolling; more at high speed.
pub const NEEDLE_LEAST_LOAD_SHARE: f64 = 0.0005;
/// Share of the teeth of a spline that carry: pitch errors keep the others from touching.
pub const SPLINE_CARRYING_SHARE: f64 = 0.5;
/// Shear modulus of steel.
pub const STEEL_SHEAR_MODULUS_MPA: f64 = 80_000.0;

/// Share of a conventional trailer that rests on the ball; boat trailers lower, 0.05 to 0.12.
pub const TONGUE_SHARE_LOW: f64 = 0.10;
/// See [`TONGUE_SHARE_LOW`].
pub const TONGUE_SHARE_HIGH: f64 = 0.15;
/// Share of a fifth-wheel trailer that rests on the king pin; many ask for 0.20 or more.
pub const PIN_SHARE_LOW: f64 = 0.15;
/// See [`PIN_SHARE_LOW`].
pub const PIN_SHARE_HIGH: f64 = 0.25;
/// Difference from the computed stall speed that shops let pass, where the record has none.
pub const STALL_ALLOW_RPM: f64 = 150.0;
/// Stall speed above the computed one at which shops stop the test at once: something slips.
pub const STALL_STOP_RPM: f64 = 200.0;
/// Share of the computed stall speed that is missing where the stator's one-way clutch comes first in suspicion.
pub const STALL_STATOR_SHARE: f64 = 0.33;
/// Longest stall, where the record and the vehicle maker say nothing else.
pub const STALL_LONGEST_S: f64 = 5.0;
/// Idle in Neutral between two stalls, at least; two minutes and more where the fluid got hot.
pub const STALL_COOL_S: f64 = 20.0;
/// Fluid temperature at which a stall test begins: warm, 70 to 80 °C.
pub const STALL_FLUID_START_C: f64 = 70.0;
/// Fluid temperature in the converter above which a shop ends a stall test, about 300 °F.
pub const STALL_FLUID_MOST_C: f64 = 150.0;
/// Density of transmission fluid, where the fluid is not known; 800 to 860 between 15 and 80 °C.
pub const FLUID_DENSITY_KG_M3: f64 = 860.0;
/// Specific heat of transmission fluid; 1900 to 2200 between 20 and 100 °C.
pub const FLUID_SPECIFIC_HEAT_J_KG_K: f64 = 2000.0;
/// Slip of a lock-up clutch commanded fully that is still normal.
pub const LOCKUP_SLIP_NORMAL_RPM: f64 = 50.0;
/// Slip of a lock-up clutch commanded fully from which it is suspect; 75 to 100.
pub const LOCKUP_SLIP_SUSPECT_RPM: f64 = 75.0;
/// Temperature of a sump in normal driving.
pub const SUMP_NORMAL_LOW_C: f64 = 80.0;
/// See [`SUMP_NORMAL_LOW_C`].
pub const SUMP_NORMAL_HIGH_C: f64 = 95.0;
/// Temperature of a sump at which a driver should slow down or stop to cool.
pub const SUMP_ALARM_LOW_C: f64 = 120.0;
/// See [`SUMP_ALARM_LOW_C`].
pub const SUMP_ALARM_HIGH_C: f64 = 130.0;
/// Heat that warms a truck's automatic by 1 K: some 12 L of fluid and 80 to 100 kg of aluminum and steel.
pub const UNIT_HEAT_CAPACITY_J_K: f64 = 75_000.0;
/// What its case gives to the air stream for each kelvin.
pub const CASE_COOLING_LOW_W_K: f64 = 15.0;
/// See [`CASE_COOLING_LOW_W_K`].
pub const CASE_COOLING_HIGH_W_K: f64 = 30.0;
/// What the cooler of a tow package takes for each kelvin between sump and air, with road speed through it.
pub const TOW_COOLER_LOW_W_K: f64 = 120.0;
/// See [`TOW_COOLER_LOW_W_K`].
pub const TOW_COOLER_HIGH_W_K: f64 = 220.0;
/// Standard uncertainty of a satellite receiver's elevation against the road within some kilometers.
pub const SATELLITE_ELEVATION_U_M: f64 = 3.0;
/// Distance on the road over which that error stays alike.
pub const SATELLITE_ELEVATION_CORRELATION_M: f64 = 100.0;
/// Window in which a grade is taken from satellite elevations.
pub const GRADE_WINDOW_M: f64 = 400.0;
/// Temperature above which the life of transmission fluid halves step by step: 175 °F.
pub const FLUID_AGING_REFERENCE_C: f64 = 79.444_444_444_444_44;
/// Step of temperature that halves it: 20 °F.
pub const FLUID_AGING_HALVING_K: f64 = 11.111_111_111_111_11;
/// Life at [`FLUID_AGING_REFERENCE_C`]: 100 000 miles. Hours follow from the mean speed.
pub const FLUID_AGING_LIFE_KM: f64 = 160_934.4;
/// Slope of the life of gear teeth in bending against torque, as wide as it is commonly taken.
pub const GEAR_SLOPE_LOW: f64 = 5.0;
/// See [`GEAR_SLOPE_LOW`].
pub const GEAR_SLOPE_HIGH: f64 = 8.0;
/// Friction of a rolling tire on dry pavement, for the grip of a driven axle; wet, see [`TIRE_FRICTION_WET`].
pub const TIRE_FRICTION_DRY: f64 = 0.7;
/// See [`TIRE_FRICTION_DRY`].
pub const TIRE_FRICTION_WET: f64 = 0.4;
/// Share of a gear's ratio within which a ratio of measured speeds belongs to it.
pub const GEAR_RATIO_TOLERANCE: f64 = 0.03;
/// Time between two telematics rows above which what happened between them is unknown.
pub const TELEMATICS_GAP_S: f64 = 10.0;
/// Output speed below which a truck counts as standing.
pub const STANDING_OUTPUT_RPM: f64 = 30.0;
/// Input torque below which a reported engine torque is too uncertain to form a ratio with.
pub const LEAST_TELLING_TORQUE_NM: f64 = 20.0;
/// Road speed from which a satellite receiver's speed is compared with that of the vehicle.
pub const SATELLITE_FLOOR_KM_H: f64 = 30.0;
/// Overrun of the input during a shift that is called a flare.
pub const FLARE_LOW_RPM: f64 = 50.0;
/// See [`FLARE_LOW_RPM`].
pub const FLARE_HIGH_RPM: f64 = 100.0;
/// Dip of the output speed during a shift that is felt as a tie-up, over that speed.
pub const TIE_UP_DIP_SHARE: f64 = 0.02;
/// Time after a shift in which the ratio still settles.
pub const SHIFT_SETTLE_S: f64 = 0.3;
/// Time after a command by which a gear is reached; longer is a gear that does not come.
pub const SHIFT_FOLLOW_S: f64 = 2.0;
/// Fluid temperature below which shifts are slow and harsh because they are cold.
pub const SHIFT_COLD_C: f64 = 40.0;
/// Driving time in which the fluid of a cold unit warms by more than the step of its sensor.
pub const WARM_UP_S: f64 = 600.0;
/// Time in gear to one false slip alarm that a shop puts up with: about one in a month of driving.
pub const FALSE_ALARM_RUN_H: f64 = 100.0;
