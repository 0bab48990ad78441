/* trainwright: calculations for automatic-transmission rebuild shops. MIT or Apache-2.0.
 *
 * Every function returns a tw_status: 0 is an answer, negative is no answer, positive is an answer outside the trusted
 * range of its source. Structs are given by const pointer, results come back through the last pointers and are left
 * untouched on failure. The caller owns all memory: there is no heap, no global and no callback, so every function may be
 * called from any task. The suffix of a name is its unit: _mm, _nm, _kpa (gauge), _c, _k (difference), _rpm, _km_h, _ml. */

#ifndef TRAINWRIGHT_H
#define TRAINWRIGHT_H

/* Generated from ffi/ and the plain structs of core/ by `make header`. Do not edit. */

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/// Version of this header.
#define TW_VERSION_MAJOR 0

/// Version of this header.
#define TW_VERSION_MINOR 1

/// Version of this header.
#define TW_VERSION_PATCH 0

/// Most values of one explanation.
#define TW_MAX_NAMED_VALUES 64

/// Most operating points of one turbine speed.
#define TW_MAX_OPERATING_POINTS 8

/// Most points of an engine curve or a characteristic.
#define TW_TABLE_POINTS 32

/// Columns of a row. Bit n of a mask of columns is the n-th of [`SCREEN_COLUMN_NAMES`].
#define TW_SCREEN_COLUMNS 10

/// Kinds of [`BadValue`].
#define TW_BAD_VALUE_KINDS 6

/// Flags of a row. Bits 0 to 9 are the columns whose value is given and cannot be used.
#define TW_SCREEN_FLAGS 27

/// No row before it that has a time: the row has no duration.
#define TW_FLAG_FIRST (1 << 10)

/// The same time as the row before: not used.
#define TW_FLAG_DUPLICATE (1 << 11)

/// Earlier than the row before: not used.
#define TW_FLAG_REVERSED (1 << 12)

/// Later than the row before by more than a gap: used, its duration is unknown.
#define TW_FLAG_GAP (1 << 13)

/// Every bus value repeats the row before while the output turns: not used.
#define TW_FLAG_STALE (1 << 14)

/// The output stands.
#define TW_FLAG_STANDING (1 << 15)

/// Gear or standing cannot be told: a speed is missing.
#define TW_FLAG_UNKNOWN (1 << 16)

/// The ratio belongs to no gear: between two gears, or slipping.
#define TW_FLAG_NO_GEAR (1 << 17)

/// The gear in effect is not the commanded one.
#define TW_FLAG_MISMATCH (1 << 18)

/// The converter is not locked.
#define TW_FLAG_UNLOCKED (1 << 19)

/// The input torque cannot be formed.
#define TW_FLAG_NO_TORQUE (1 << 20)

/// Too little input torque to form a margin.
#define TW_FLAG_LITTLE_TORQUE (1 << 21)

/// More than the rated input torque.
#define TW_FLAG_OVER_INPUT (1 << 22)

/// More than the rated output torque.
#define TW_FLAG_OVER_OUTPUT (1 << 23)

/// The least margin is below the limit.
#define TW_FLAG_LOW_MARGIN (1 << 24)

/// The fluid is hotter than the limit.
#define TW_FLAG_HOT (1 << 25)

/// So far beyond the rated input torque that its damage is not counted.
#define TW_FLAG_BEYOND_SCALE (1 << 26)

/// Place of a row in no gear's band: between gears or slipping.
#define TW_GEAR_NONE -1

/// Place of a row whose output stands.
#define TW_GEAR_STANDING -2

/// Place of a row whose gear cannot be told, or that is not used.
#define TW_GEAR_UNKNOWN -3

/// Most gears of a `tw_screen_unit`.
#define TW_MAX_SCREEN_GEARS 16

/// Most closed packs of a gear.
#define TW_MAX_SCREEN_HOLDING 6

/// Most points of a converter's torque ratio.
#define TW_MAX_SCREEN_POINTS 32

/// Temperature at which sizes are stated, °C: ISO 1.
#define TW_REFERENCE_C 20.0

/// Version of the layout that this library writes and reads.
#define TW_IMAGE_VERSION 3

/// Most gears of an image.
#define TW_MAX_GEARS 32

/// Most shifts of an image.
#define TW_MAX_SHIFTS 64

/// Longest name, bytes.
#define TW_MAX_NAME_BYTES 64

/// Most variants of an image.
#define TW_MAX_IMAGE_VARIANTS 16

/// Most parts of an image.
#define TW_MAX_IMAGE_PARTS 64

/// Most marks of an image.
#define TW_MAX_IMAGE_MARKS 64

/// Most sizes of an image.
#define TW_MAX_IMAGE_SIZES 64

/// Most fits of an image.
#define TW_MAX_IMAGE_FITS 64

/// In place of a size that is no evidence.
#define TW_NO_SIZE UINT8_MAX

/// Most rows of a sump's table.
#define TW_SUMP_ROWS 16

/// Exponent of life for bearings with rollers and needles. Source: ISO 281.
#define TW_ROLLER_EXPONENT (10.0 / 3.0)

/// Exponent of life for ball bearings. Source: ISO 281.
#define TW_BALL_EXPONENT 3.0

/// Most rows of a table of least flows.
#define TW_COOLER_ROWS 16

/// Contraction of the jet behind a sharp edge: the discharge of a sharp orifice in turbulent flow, 0.611.
///
/// Source: free-streamline theory, C_c = π/(π + 2) (Fluid Power Engineering, equation 2.39, read).
#define TW_SHARP_EDGE_DISCHARGE 0.6110154703516573

/// Reynolds number of the orifice below which its flow is not turbulent, and the discharge smaller.
///
/// Source: Merritt, Hydraulic Control Systems (from memory): the discharge is steady from about 1000 on.
#define TW_TURBULENT_REYNOLDS 1000.0

/// Most suspects: the general kinds, and two for each element.
#define TW_MAX_PRESSURE_SUSPECTS (8 + (2 * TW_MAX_ELEMENTS))

/// Angle at which the jet leaves a sharp metering edge that is open far against its clearance.
///
/// Source: R. von Mises; Merritt, Hydraulic Control Systems (from memory).
#define TW_SHARP_EDGE_JET_DEG 69.0

/// Parts that a family may have.
#define TW_MAX_PARTS 256

/// Variants that a family may have: as many as a mask has bits.
#define TW_MAX_VARIANTS 32

/// Stands where no machining mends a joint.
#define TW_NO_MACHINING UINT16_MAX

/// Stands where a part stays as it was found.
#define TW_AS_FOUND UINT8_MAX

/// Stands where there is no such joint.
#define TW_NO_JOINT UINT16_MAX

/// Most inputs of one combination.
#define TW_MAX_INPUTS 16

/// Most gears of a unit.
#define TW_MAX_LIVE_GEARS 12

/// Most elements that could explain the slip of one gear.
#define TW_MAX_LIVE_SUSPECTS 4

/// Most elements of a unit.
#define TW_MAX_LIVE_ELEMENTS 8

/// Most events of one sample.
#define TW_MAX_LIVE_EVENTS 8

/// Stands for a gear that is none: between two gears, neutral, or slipping far.
#define TW_GEAR_IN_NONE -1

/// Stands for a gear while the output stands.
#define TW_GEAR_STANDS -2

/// Stands for a gear that is not known yet.
#define TW_GEAR_NOT_KNOWN -3

/// Stands for an element that is none, or not known.
#define TW_NO_LIVE_ELEMENT UINT8_MAX

/// Stands where the commanded gear is not known.
#define TW_GEAR_NOT_COMMANDED INT8_MIN

/// Aspect ratio of a tire whose size does not state one (185R14). It meets the diameters of UN R30 within 7 mm, and within
/// 5 mm from 135 mm of width up; the often quoted 82 is up to 5 mm of section height too much.
#define TW_PRACTICE_ASPECT_NOT_STATED_PCT 80.0

/// Static loaded radius of a tire over its outer diameter: what a rule under the hub measures, standing still.
#define TW_PRACTICE_STATIC_LOADED_RADIUS_OVER_DIAMETER 0.47

/// Dynamic friction of wet paper lining on steel in a matching fluid; static friction is similar or lower.
#define TW_PRACTICE_PAPER_FRICTION_LOW 0.10

/// See `TW_PRACTICE_PAPER_FRICTION_LOW`.
#define TW_PRACTICE_PAPER_FRICTION_HIGH 0.14

/// Mean pressure on paper lining at full line pressure.
#define TW_PRACTICE_LINING_PRESSURE_LOW_MPA 1.0

/// See `TW_PRACTICE_LINING_PRESSURE_LOW_MPA`.
#define TW_PRACTICE_LINING_PRESSURE_HIGH_MPA 3.0

/// Least capacity over demand that a shop accepts, at the least pressure and the least friction.
#define TW_PRACTICE_HOLDING_MARGIN 1.2

/// Pack clearance for each friction plate, where the unit's own window is not known.
#define TW_PRACTICE_CLEARANCE_PER_PLATE_LOW_MM 0.20

/// See `TW_PRACTICE_CLEARANCE_PER_PLATE_LOW_MM`.
#define TW_PRACTICE_CLEARANCE_PER_PLATE_HIGH_MM 0.25

/// Energy per friction area that paper lining takes in one shift: above it, ask the maker of the lining.
#define TW_PRACTICE_SHIFT_ENERGY_HIGH_J_MM2 0.5

/// Heat flux at the start of a shift that paper lining takes: above it, ask the maker of the lining.
#define TW_PRACTICE_SHIFT_FLUX_HIGH_W_MM2 1.0

/// Slip time of a shift of a planetary automatic.
#define TW_PRACTICE_SHIFT_TIME_LOW_S 0.2

/// See `TW_PRACTICE_SHIFT_TIME_LOW_S`.
#define TW_PRACTICE_SHIFT_TIME_HIGH_S 0.6

/// Specific heat of the carbon steel of plates, between room temperature and about 200 °C.
#define TW_PRACTICE_STEEL_SPECIFIC_HEAT_J_KG_K 480.0

/// Thermal conductivity of the carbon steel of plates, between room temperature and about 200 °C.
#define TW_PRACTICE_STEEL_CONDUCTIVITY_W_M_K 50.0

/// Density of the carbon steel of plates.
#define TW_PRACTICE_STEEL_DENSITY_KG_M3 7850.0

/// Efficiency of one mesh of two external planetary gears, ground or shaved, warm and well oiled; 0.985 to 0.995 is usual.
#define TW_PRACTICE_EXTERNAL_MESH_EFFICIENCY 0.99

/// Efficiency of one mesh of planet and ring; it slides less than an external one.
#define TW_PRACTICE_INTERNAL_MESH_EFFICIENCY 0.993

/// Linear expansion of steel.
#define TW_PRACTICE_STEEL_EXPANSION_LOW_PER_K 11e-6

/// See `TW_PRACTICE_STEEL_EXPANSION_LOW_PER_K`.
#define TW_PRACTICE_STEEL_EXPANSION_HIGH_PER_K 12e-6

/// Linear expansion of the aluminum of cases, pump bodies and pistons.
#define TW_PRACTICE_ALUMINUM_EXPANSION_LOW_PER_K 21e-6

/// See `TW_PRACTICE_ALUMINUM_EXPANSION_LOW_PER_K`.
#define TW_PRACTICE_ALUMINUM_EXPANSION_HIGH_PER_K 24e-6

/// Linear expansion of bronze.
#define TW_PRACTICE_BRONZE_EXPANSION_LOW_PER_K 17e-6

/// See `TW_PRACTICE_BRONZE_EXPANSION_LOW_PER_K`.
#define TW_PRACTICE_BRONZE_EXPANSION_HIGH_PER_K 19e-6

/// Linear expansion of cast iron.
#define TW_PRACTICE_CAST_IRON_EXPANSION_LOW_PER_K 10e-6

/// See `TW_PRACTICE_CAST_IRON_EXPANSION_LOW_PER_K`.
#define TW_PRACTICE_CAST_IRON_EXPANSION_HIGH_PER_K 11e-6

/// Modulus of elasticity of steel.
#define TW_PRACTICE_STEEL_YOUNG_MPA 206000.0

/// Poisson's ratio of steel.
#define TW_PRACTICE_STEEL_POISSON 0.29

/// Modulus of elasticity of the aluminum of cases.
#define TW_PRACTICE_ALUMINUM_YOUNG_MPA 71000.0

/// Poisson's ratio of aluminum.
#define TW_PRACTICE_ALUMINUM_POISSON 0.33

/// Friction of a steel-backed bushing in an aluminum bore, pressed with a film of oil.
#define TW_PRACTICE_PRESS_FRICTION_LOW 0.08

/// See `TW_PRACTICE_PRESS_FRICTION_LOW`.
#define TW_PRACTICE_PRESS_FRICTION_HIGH 0.15

/// Running clearance of a new plain bushing, diametral: about a thousandth of the diameter.
#define TW_PRACTICE_RUNNING_CLEARANCE_LOW_MM 0.03

/// See `TW_PRACTICE_RUNNING_CLEARANCE_LOW_MM`.
#define TW_PRACTICE_RUNNING_CLEARANCE_HIGH_MM 0.10

/// Standard uncertainty of one reading of a bore gauge, or of a telescoping gauge with a micrometer.
#define TW_PRACTICE_BORE_GAUGE_U_MM 0.004

/// Modulus of elasticity of the hardened steel of races, rollers, sprags and pawls.
#define TW_PRACTICE_RACE_YOUNG_MPA 206000.0

/// Poisson's ratio of that steel.
#define TW_PRACTICE_RACE_POISSON 0.3

/// Load of a park lock while the vehicle rocks over its static load, where no one has measured it.
#define TW_PRACTICE_ROCKING_FACTOR_LOW 1.5

/// See `TW_PRACTICE_ROCKING_FACTOR_LOW`.
#define TW_PRACTICE_ROCKING_FACTOR_HIGH 2.0

/// Least static capacity over load of a roller or needle bearing in normal running; 1 where dents do not matter, 3 under shock.
#define TW_PRACTICE_NEEDLE_STATIC_FACTOR 1.5

/// Load over static capacity below which needles slide instead of rolling; more at high speed.
#define TW_PRACTICE_NEEDLE_LEAST_LOAD_SHARE 0.0005

/// Share of the teeth of a spline that carry: pitch errors keep the others from touching.
#define TW_PRACTICE_SPLINE_CARRYING_SHARE 0.5

/// Shear modulus of steel.
#define TW_PRACTICE_STEEL_SHEAR_MODULUS_MPA 80000.0

/// Share of a conventional trailer that rests on the ball; boat trailers lower, 0.05 to 0.12.
#define TW_PRACTICE_TONGUE_SHARE_LOW 0.10

/// See `TW_PRACTICE_TONGUE_SHARE_LOW`.
#define TW_PRACTICE_TONGUE_SHARE_HIGH 0.15

/// Share of a fifth-wheel trailer that rests on the king pin; many ask for 0.20 or more.
#define TW_PRACTICE_PIN_SHARE_LOW 0.15

/// See `TW_PRACTICE_PIN_SHARE_LOW`.
#define TW_PRACTICE_PIN_SHARE_HIGH 0.25

/// Difference from the computed stall speed that shops let pass, where the record has none.
#define TW_PRACTICE_STALL_ALLOW_RPM 150.0

/// Stall speed above the computed one at which shops stop the test at once: something slips.
#define TW_PRACTICE_STALL_STOP_RPM 200.0

/// Share of the computed stall speed that is missing where the stator's one-way clutch comes first in suspicion.
#define TW_PRACTICE_STALL_STATOR_SHARE 0.33

/// Longest stall, where the record and the vehicle maker say nothing else.
#define TW_PRACTICE_STALL_LONGEST_S 5.0

/// Idle in Neutral between two stalls, at least; two minutes and more where the fluid got hot.
#define TW_PRACTICE_STALL_COOL_S 20.0

/// Fluid temperature at which a stall test begins: warm, 70 to 80 °C.
#define TW_PRACTICE_STALL_FLUID_START_C 70.0

/// Fluid temperature in the converter above which a shop ends a stall test, about 300 °F.
#define TW_PRACTICE_STALL_FLUID_MOST_C 150.0

/// Density of transmission fluid, where the fluid is not known; 800 to 860 between 15 and 80 °C.
#define TW_PRACTICE_FLUID_DENSITY_KG_M3 860.0

/// Specific heat of transmission fluid; 1900 to 2200 between 20 and 100 °C.
#define TW_PRACTICE_FLUID_SPECIFIC_HEAT_J_KG_K 2000.0

/// Slip of a lock-up clutch commanded fully that is still normal.
#define TW_PRACTICE_LOCKUP_SLIP_NORMAL_RPM 50.0

/// Slip of a lock-up clutch commanded fully from which it is suspect; 75 to 100.
#define TW_PRACTICE_LOCKUP_SLIP_SUSPECT_RPM 75.0

/// Temperature of a sump in normal driving.
#define TW_PRACTICE_SUMP_NORMAL_LOW_C 80.0

/// See `TW_PRACTICE_SUMP_NORMAL_LOW_C`.
#define TW_PRACTICE_SUMP_NORMAL_HIGH_C 95.0

/// Temperature of a sump at which a driver should slow down or stop to cool.
#define TW_PRACTICE_SUMP_ALARM_LOW_C 120.0

/// See `TW_PRACTICE_SUMP_ALARM_LOW_C`.
#define TW_PRACTICE_SUMP_ALARM_HIGH_C 130.0

/// Heat that warms a truck's automatic by 1 K: some 12 L of fluid and 80 to 100 kg of aluminum and steel.
#define TW_PRACTICE_UNIT_HEAT_CAPACITY_J_K 75000.0

/// What its case gives to the air stream for each kelvin.
#define TW_PRACTICE_CASE_COOLING_LOW_W_K 15.0

/// See `TW_PRACTICE_CASE_COOLING_LOW_W_K`.
#define TW_PRACTICE_CASE_COOLING_HIGH_W_K 30.0

/// What the cooler of a tow package takes for each kelvin between sump and air, with road speed through it.
#define TW_PRACTICE_TOW_COOLER_LOW_W_K 120.0

/// See `TW_PRACTICE_TOW_COOLER_LOW_W_K`.
#define TW_PRACTICE_TOW_COOLER_HIGH_W_K 220.0

/// Standard uncertainty of a satellite receiver's elevation against the road within some kilometers.
#define TW_PRACTICE_SATELLITE_ELEVATION_U_M 3.0

/// Distance on the road over which that error stays alike.
#define TW_PRACTICE_SATELLITE_ELEVATION_CORRELATION_M 100.0

/// Window in which a grade is taken from satellite elevations.
#define TW_PRACTICE_GRADE_WINDOW_M 400.0

/// Temperature above which the life of transmission fluid halves step by step: 175 °F.
#define TW_PRACTICE_FLUID_AGING_REFERENCE_C 79.44444444444444

/// Step of temperature that halves it: 20 °F.
#define TW_PRACTICE_FLUID_AGING_HALVING_K 11.11111111111111

/// Life at `TW_PRACTICE_FLUID_AGING_REFERENCE_C`: 100 000 miles. Hours follow from the mean speed.
#define TW_PRACTICE_FLUID_AGING_LIFE_KM 160934.4

/// Slope of the life of gear teeth in bending against torque, as wide as it is commonly taken.
#define TW_PRACTICE_GEAR_SLOPE_LOW 5.0

/// See `TW_PRACTICE_GEAR_SLOPE_LOW`.
#define TW_PRACTICE_GEAR_SLOPE_HIGH 8.0

/// Friction of a rolling tire on dry pavement, for the grip of a driven axle; wet, see `TW_PRACTICE_TIRE_FRICTION_WET`.
#define TW_PRACTICE_TIRE_FRICTION_DRY 0.7

/// See `TW_PRACTICE_TIRE_FRICTION_DRY`.
#define TW_PRACTICE_TIRE_FRICTION_WET 0.4

/// Share of a gear's ratio within which a ratio of measured speeds belongs to it.
#define TW_PRACTICE_GEAR_RATIO_TOLERANCE 0.03

/// Time between two telematics rows above which what happened between them is unknown.
#define TW_PRACTICE_TELEMATICS_GAP_S 10.0

/// Output speed below which a truck counts as standing.
#define TW_PRACTICE_STANDING_OUTPUT_RPM 30.0

/// Input torque below which a reported engine torque is too uncertain to form a ratio with.
#define TW_PRACTICE_LEAST_TELLING_TORQUE_NM 20.0

/// Road speed from which a satellite receiver's speed is compared with that of the vehicle.
#define TW_PRACTICE_SATELLITE_FLOOR_KM_H 30.0

/// Overrun of the input during a shift that is called a flare.
#define TW_PRACTICE_FLARE_LOW_RPM 50.0

/// See `TW_PRACTICE_FLARE_LOW_RPM`.
#define TW_PRACTICE_FLARE_HIGH_RPM 100.0

/// Dip of the output speed during a shift that is felt as a tie-up, over that speed.
#define TW_PRACTICE_TIE_UP_DIP_SHARE 0.02

/// Time after a shift in which the ratio still settles.
#define TW_PRACTICE_SHIFT_SETTLE_S 0.3

/// Time after a command by which a gear is reached; longer is a gear that does not come.
#define TW_PRACTICE_SHIFT_FOLLOW_S 2.0

/// Fluid temperature below which shifts are slow and harsh because they are cold.
#define TW_PRACTICE_SHIFT_COLD_C 40.0

/// Driving time in which the fluid of a cold unit warms by more than the step of its sensor.
#define TW_PRACTICE_WARM_UP_S 600.0

/// Time in gear to one false slip alarm that a shop puts up with: about one in a month of driving.
#define TW_PRACTICE_FALSE_ALARM_RUN_H 100.0

/// ETRTO factor of the rolling circumference of a radial tire over its regulation diameter (from memory of the ETRTO
/// Standards Manual, general notes).
#define TW_RADIAL_FACTOR 3.05

/// ETRTO factor of the rolling circumference of a diagonal tire over its regulation diameter (from memory, as above).
#define TW_DIAGONAL_FACTOR 2.99

/// Number of criteria.
#define TW_CRITERION_COUNT 12

/// Distance of one start on the 12 % grade, m: 16 ft.
#define TW_LAUNCH_DISTANCE_M 4.8768

/// Most gears.
#define TW_RUN_UP_GEARS 16

/// Most gears of a unit, engine-braking and reverse gears included.
#define TW_MAX_OFFERED_GEARS 16

/// No gear: what `tw_pull_chosen` holds where none will do.
#define TW_NO_GEAR UINT32_MAX

/// Number of ratings.
#define TW_RATING_COUNT 10

/// Most members of a train, the fixed one included.
#define TW_MAX_MEMBERS 24

/// Most planetary sets of a train.
#define TW_MAX_SETS 8

/// Most rows of a train: one for each set, two for a two-sun set.
#define TW_MAX_ROWS 10

/// Most elements of a train.
#define TW_MAX_ELEMENTS 16

/// Most planets, or pairs of planets, of a set.
#define TW_MAX_PLANETS 12

/// Most observations of one diagnosis.
#define TW_MAX_OBSERVATIONS 64

/// Most suspects: every element dead, every element stuck.
#define TW_MAX_SUSPECTS (2 * TW_MAX_ELEMENTS)

/// Stands where a set has no such member.
#define TW_NO_MEMBER UINT8_MAX

/// Millimeters in an inch. Exact: international yard and pound agreement, 1959.
#define TW_MM_PER_IN 25.4

/// Kilometers in a statute mile. Exact: 5280 ft × 0.3048 m.
#define TW_KM_PER_MILE 1.609344

/// Kilograms in an avoirdupois pound. Exact: international yard and pound agreement, 1959.
#define TW_KG_PER_LB 0.45359237

/// Standard acceleration of gravity, m/s². Exact: CGPM 1901; ISO 80000-3.
#define TW_GRAVITY_M_S2 9.80665

/// Newtons in a pound-force. Exact: pound × standard gravity.
#define TW_N_PER_LBF (TW_KG_PER_LB * TW_GRAVITY_M_S2)

/// Newton-meters in a pound-force foot. Exact: pound-force × 0.3048 m.
#define TW_NM_PER_LBF_FT (TW_N_PER_LBF * 0.3048)

/// Kilopascals in a pound-force per square inch. Exact: pound-force / (0.0254 m)².
#define TW_KPA_PER_PSI ((TW_N_PER_LBF / (0.0254 * 0.0254)) / 1000.0)

/// Liters in a US liquid quart. Exact: 57.75 cubic inches.
#define TW_L_PER_QUART 0.946352946

/// Liters in a US liquid gallon. Exact: 231 cubic inches.
#define TW_L_PER_GALLON 3.785411784

/// Cubic centimeters in a cubic inch. Exact: (2.54 cm)³.
#define TW_CM3_PER_IN3 16.387064

/// Kilowatts in a mechanical horsepower. Exact: 550 lbf·ft/s.
#define TW_KW_PER_HP ((TW_NM_PER_LBF_FT * 550.0) / 1000.0)

/// Celsius reading of absolute zero, negated. Exact: definition of the Celsius scale.
#define TW_KELVIN_AT_0_C 273.15

/// What became of a call. 0 is an answer; a negative number is no answer, and the results are untouched; a positive number
/// is an answer outside the trusted range of its source. Numbers are never reused; treat an unknown negative number as
/// failure. `tw_status_text` puts each into words.
enum tw_status
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Answered.
  TW_STATUS_OK = 0,
  /// A required pointer is null.
  TW_STATUS_NULL = -1,
  /// A number is NaN or infinite.
  TW_STATUS_NOT_FINITE = -2,
  /// A number must be above zero.
  TW_STATUS_NOT_POSITIVE = -3,
  /// A number lies outside the range of the source.
  TW_STATUS_OUT_OF_RANGE = -4,
  /// A lower limit lies above its upper limit.
  TW_STATUS_REVERSED = -5,
  /// Too few or too many items.
  TW_STATUS_COUNT = -6,
  /// Values contradict one another.
  TW_STATUS_INCONSISTENT = -7,
  /// Something needed was not given.
  TW_STATUS_MISSING = -8,
  /// An exact fraction does not fit 64 bits.
  TW_STATUS_OVERFLOW = -9,
  /// A text cannot be read.
  TW_STATUS_TEXT = -10,
  /// The question has no answer, by physics.
  TW_STATUS_NO_ANSWER = -11,
  /// A failure this version of the header does not name.
  TW_STATUS_OTHER = -99,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_status tw_status;
#else
typedef int32_t tw_status;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Outcome of a decision.
enum tw_verdict
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Conformity is proven under the rule.
  TW_VERDICT_GO = 1,
  /// Nonconformity is proven under the rule.
  TW_VERDICT_NO_GO = -1,
  /// Neither is proven: a normal answer, to be met by a better measurement or a better part.
  TW_VERDICT_NOT_PROVEN = 0,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_verdict tw_verdict;
#else
typedef int32_t tw_verdict;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a set of closed elements does to input and output.
enum tw_state_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The input determines the output, and the output turns.
  TW_STATE_KIND_GEAR,
  /// Input and output turn independently.
  TW_STATE_KIND_NEUTRAL,
  /// The input cannot turn, the output is free: too few clutches for a gear, the wrong brake for neutral.
  TW_STATE_KIND_INPUT_HELD,
  /// The output cannot turn, the input is free.
  TW_STATE_KIND_OUTPUT_HELD,
  /// Neither can turn: one element too many.
  TW_STATE_KIND_TIED_UP,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_state_kind tw_state_kind;
#else
typedef uint8_t tw_state_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// On which side of the computed speed a measured one lies.
enum tw_stall_side
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// So low that the stator comes first in suspicion: it freewheels where it should hold.
  TW_STALL_SIDE_FAR_LOW = -2,
  /// Low.
  TW_STALL_SIDE_LOW = -1,
  /// Inside what is allowed, and proven to be.
  TW_STALL_SIDE_INSIDE = 0,
  /// High.
  TW_STALL_SIDE_HIGH = 1,
  /// So high that the test stops at once: something slips.
  TW_STALL_SIDE_FAR_HIGH = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_stall_side tw_stall_side;
#else
typedef int32_t tw_stall_side;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Which values of a bus are marks.
enum tw_bus_rules
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Top byte FB and above marks an indicator, reserved, error or not available, as on a J1939 bus.
  TW_BUS_RULES_MARKED,
  /// Every raw value is a value, as in the parameters of on-board diagnostics.
  TW_BUS_RULES_PLAIN,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_bus_rules tw_bus_rules;
#else
typedef uint8_t tw_bus_rules;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a raw value is.
enum tw_bus_meaning
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// A physical value.
  TW_BUS_MEANING_VALUE,
  /// A number that cannot be true: outside the limits of the signal.
  TW_BUS_MEANING_OUT_OF_RANGE,
  /// An indicator that the signal itself defines (such as Park where gears are sent).
  TW_BUS_MEANING_INDICATOR,
  /// Reserved: nothing that may be computed with.
  TW_BUS_MEANING_RESERVED,
  /// The sender reports an error.
  TW_BUS_MEANING_ERROR,
  /// The sender does not have the value.
  TW_BUS_MEANING_NOT_AVAILABLE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_bus_meaning tw_bus_meaning;
#else
typedef uint8_t tw_bus_meaning;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How the rate of aging follows the temperature.
enum tw_aging_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Twice as fast for each step of temperature.
  TW_AGING_KIND_HALVING,
  /// Reaction rate, for laboratory data.
  TW_AGING_KIND_ARRHENIUS,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_aging_kind tw_aging_kind;
#else
typedef uint8_t tw_aging_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How the gears of a planetary set mesh.
enum tw_set_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Sun and ring mesh the same planets.
  TW_SET_KIND_SIMPLE,
  /// The sun meshes the inner planets, the ring the outer ones, and the planets mesh in pairs.
  TW_SET_KIND_DOUBLE_PINION,
  /// Two suns on one carrier and ring: `sun` (the large sun) and the ring mesh the long planets, `sun_2` (the small sun)
  /// meshes the short planets, which mesh the long ones. The roles follow the mesh, not the size.
  TW_SET_KIND_TWO_SUN,
  /// Stepped planets: `sun` meshes the first step, and either `ring` or `sun_2` the second.
  TW_SET_KIND_STEPPED,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_set_kind tw_set_kind;
#else
typedef uint8_t tw_set_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What an element is.
enum tw_element_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Friction clutch between two members.
  TW_ELEMENT_KIND_CLUTCH,
  /// Friction brake or band that holds a member to the fixed one.
  TW_ELEMENT_KIND_BRAKE,
  /// One-way clutch: it closes by itself against one sense of rotation.
  TW_ELEMENT_KIND_ONE_WAY,
  /// Toothed clutch: closed or open, it cannot slip.
  TW_ELEMENT_KIND_DOG,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_element_kind tw_element_kind;
#else
typedef uint8_t tw_element_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// The sense in which the first member of a one-way clutch cannot turn relative to the second.
enum tw_blocks
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Not a one-way clutch.
  TW_BLOCKS_NEITHER,
  /// The first member may turn forward, not backward: it can be pushed forward only.
  TW_BLOCKS_REVERSE,
  /// The first member may turn backward, not forward.
  TW_BLOCKS_FORWARD,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_blocks tw_blocks;
#else
typedef uint8_t tw_blocks;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What the weighing came to.
enum tw_cause_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// One cause explains it.
  TW_CAUSE_KIND_EXPLAINED,
  /// Several fit, and the measurement does not tell them apart.
  TW_CAUSE_KIND_CANNOT_TELL,
  /// None of those listed fits.
  TW_CAUSE_KIND_NONE_FITS,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_cause_kind tw_cause_kind;
#else
typedef uint8_t tw_cause_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a shaft and a bore meet by their tolerances.
enum tw_fit_class
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Even the smallest shaft does not enter the largest bore.
  TW_FIT_CLASS_BLOCKED = 0,
  /// The largest shaft does not enter the smallest bore.
  TW_FIT_CLASS_MAY_BIND = 1,
  /// Always clearance, and never more than the service limit.
  TW_FIT_CLASS_INSIDE = 2,
  /// Always clearance; the smallest shaft in the largest bore has more than the service limit.
  TW_FIT_CLASS_MAY_BE_LOOSE = 3,
  /// Assembles, and always has more clearance than the service limit.
  TW_FIT_CLASS_LOOSE = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_fit_class tw_fit_class;
#else
typedef int32_t tw_fit_class;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Which way a figure is better.
enum tw_better
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Neither: a change of it is only a difference.
  TW_BETTER_NEITHER,
  /// More is better.
  TW_BETTER_MORE,
  /// Less is better.
  TW_BETTER_LESS,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_better tw_better;
#else
typedef uint8_t tw_better;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a change does.
enum tw_effect
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Nothing.
  TW_EFFECT_SAME,
  /// It buys something.
  TW_EFFECT_BUYS,
  /// It costs something.
  TW_EFFECT_COSTS,
  /// It differs, for better or worse.
  TW_EFFECT_DIFFERS,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_effect tw_effect;
#else
typedef uint8_t tw_effect;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A wheel of a planetary set.
enum tw_wheel
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The sun; the large sun of a two-sun set.
  TW_WHEEL_SUN,
  /// The second sun of a stepped set; the small sun of a two-sun set.
  TW_WHEEL_SUN2,
  /// The ring.
  TW_WHEEL_RING,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_wheel tw_wheel;
#else
typedef uint8_t tw_wheel;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a gear asks of a one-way clutch.
enum tw_one_way_role
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// It holds, and carries its share.
  TW_ONE_WAY_ROLE_HOLDS,
  /// It turns in its free sense.
  TW_ONE_WAY_ROLE_OVERRUNS,
  /// It stands beside a closed element and could carry in its place.
  TW_ONE_WAY_ROLE_COULD_HOLD,
  /// It stands beside a closed element that must hold: the reaction has the other sense.
  TW_ONE_WAY_ROLE_CANNOT_HOLD,
  /// The state gives it neither slip nor torque.
  TW_ONE_WAY_ROLE_IDLE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_one_way_role tw_one_way_role;
#else
typedef uint8_t tw_one_way_role;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What may be wrong.
enum tw_suspect_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Nothing: every reading right.
  TW_SUSPECT_KIND_NOTHING = 0,
  /// Low in every reading: filter, suction, pump, or the regulator set or stuck low.
  TW_SUSPECT_KIND_SUPPLY = 1,
  /// Low in every hot reading: wear that thin oil finds, in pump or valve body.
  TW_SUSPECT_KIND_SUPPLY_HOT = 2,
  /// Low at every idle: worn pump or air in the suction; at speed it delivers enough.
  TW_SUSPECT_KIND_SUPPLY_IDLE = 3,
  /// Low at every hot idle: a worn pump.
  TW_SUSPECT_KIND_SUPPLY_IDLE_HOT = 4,
  /// Low at every stall, right at idle: the boost of the regulator, its control, or a filter that chokes at flow.
  TW_SUSPECT_KIND_BOOST = 5,
  /// High in every reading: the regulator stuck, or boosted all the time.
  TW_SUSPECT_KIND_STUCK_HIGH = 6,
  /// High at every idle, right at stall: the control held at its greatest pressure.
  TW_SUSPECT_KIND_HIGH_IDLE = 7,
  /// Low wherever the element is applied: a leak in its circuit.
  TW_SUSPECT_KIND_CIRCUIT = 8,
  /// Low wherever the element is applied and the oil is hot: seals or rings of its circuit worn.
  TW_SUSPECT_KIND_CIRCUIT_HOT = 9,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_suspect_kind tw_suspect_kind;
#else
typedef int32_t tw_suspect_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What the evidence comes to.
enum tw_outcome
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Neither is proven: look further.
  TW_OUTCOME_NOT_SETTLED = 0,
  /// One variant, and every part that was looked at belongs to it.
  TW_OUTCOME_ONE_VARIANT = 1,
  /// One variant, with at least one part of another.
  TW_OUTCOME_MIXED = 2,
  /// A reading fits no variant: measure again before anything is concluded.
  TW_OUTCOME_UNEXPLAINED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_outcome tw_outcome;
#else
typedef int32_t tw_outcome;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How two parts meet.
enum tw_joint_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// A shaft that turns in a bore: clearance wanted.
  TW_JOINT_KIND_RUNNING,
  /// A register that centers: clearance, or what the variants are built with.
  TW_JOINT_KIND_LOCATING,
  /// Held by interference.
  TW_JOINT_KIND_PRESS,
  /// A land that must lie on a bearing surface.
  TW_JOINT_KIND_COVER,
  /// Equal or nothing: teeth, splines, races.
  TW_JOINT_KIND_MATCH,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_joint_kind tw_joint_kind;
#else
typedef uint8_t tw_joint_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What comes of a joint, or of a part put in alone: the outcome of its worst joint.
enum tw_joint_outcome
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The joint is as good as the maker's own.
  TW_JOINT_OUTCOME_HOLDS = 0,
  /// The parts do not go together: found at once, and harmless.
  TW_JOINT_OUTCOME_BLOCKED = 1,
  /// Within their tolerances they may not go together, or have no clearance.
  TW_JOINT_OUTCOME_MAY_BIND = 2,
  /// They go together; within their tolerances they may have more clearance than the limit.
  TW_JOINT_OUTCOME_MAY_BE_LOOSE = 3,
  /// They go together and are loose: nobody notices at assembly. The expensive case.
  TW_JOINT_OUTCOME_LOOSE = 4,
  /// They go together, and too little of the land is carried.
  TW_JOINT_OUTCOME_UNCOVERED = 5,
  /// The values differ where only equal ones are right.
  TW_JOINT_OUTCOME_UNEQUAL = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_joint_outcome tw_joint_outcome;
#else
typedef uint8_t tw_joint_outcome;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a part goes into a unit of another variant.
enum tw_relation
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The record has no joint of this part: nothing is known, which is not the same as singly.
  TW_RELATION_NOT_KNOWN = 0,
  /// Alone, as it is.
  TW_RELATION_SINGLY = 1,
  /// Alone, after machining.
  TW_RELATION_MACHINED = 2,
  /// Only together with other parts of its variant, perhaps after machining.
  TW_RELATION_SET = 3,
  /// Not at all: nothing mends a joint with what belongs to the unit.
  TW_RELATION_NEVER = 4,
  /// It belongs to the unit itself and is never exchanged.
  TW_RELATION_FIXED = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_relation tw_relation;
#else
typedef int32_t tw_relation;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a speed reaches the monitor.
enum tw_speed_source
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// A value on a bus, rounded to a step.
  TW_SPEED_SOURCE_BUS,
  /// Pulses of a tooth wheel, counted from reading to reading.
  TW_SPEED_SOURCE_COUNTED,
  /// Edges of a tooth wheel, stamped by a timer.
  TW_SPEED_SOURCE_EDGES,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_speed_source tw_speed_source;
#else
typedef uint8_t tw_speed_source;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a reading is. Compute only with a value.
enum tw_reading_state
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// A value.
  TW_READING_STATE_VALUE,
  /// Nothing came.
  TW_READING_STATE_MISSING,
  /// The sender does not have the value.
  TW_READING_STATE_NOT_AVAILABLE,
  /// The sender reports an error.
  TW_READING_STATE_SENSOR_ERROR,
  /// Reserved, or an indicator: nothing that may be computed with.
  TW_READING_STATE_RESERVED,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_reading_state tw_reading_state;
#else
typedef uint8_t tw_reading_state;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a sensor is doing.
enum tw_health
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  TW_HEALTH_GOOD,
  TW_HEALTH_STALE,
  TW_HEALTH_LOST,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_health tw_health;
#else
typedef uint8_t tw_health;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Where a shift is.
enum tw_shift_phase
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// No gear is known: standing, neutral, just switched on, or speeds are missing.
  TW_SHIFT_PHASE_NO_GEAR,
  /// In a gear.
  TW_SHIFT_PHASE_IN_GEAR,
  /// A shift is commanded; nothing shows in the speeds yet.
  TW_SHIFT_PHASE_FILL,
  /// The input runs ahead or the output dips, the old ratio still holds or is exceeded.
  TW_SHIFT_PHASE_TORQUE,
  /// The input is on its way from the old ratio to the new.
  TW_SHIFT_PHASE_INERTIA,
  /// The new ratio is reached and settles; slip is not judged yet.
  TW_SHIFT_PHASE_SETTLE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_shift_phase tw_shift_phase;
#else
typedef uint8_t tw_shift_phase;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What happened.
enum tw_live_event_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The speeds fit `gear`, which came from `other_gear`. Value: the ratio.
  TW_LIVE_EVENT_KIND_GEAR_REACHED,
  /// A shift from `other_gear` to `gear` began: commanded, or else seen in the speeds.
  TW_LIVE_EVENT_KIND_SHIFT_BEGAN,
  /// It ended. Value: the inertia phase, s; the rest is in the last shift.
  TW_LIVE_EVENT_KIND_SHIFT_DONE,
  /// The input ran ahead during a shift. Value: by how much, 1/min at the input.
  TW_LIVE_EVENT_KIND_FLARE,
  /// The output dipped during a shift: two elements held at once. Value: by how much, 1/min at the output.
  TW_LIVE_EVENT_KIND_TIE_UP,
  /// The lock-up clutch has settled. Value: its slip, 1/min.
  TW_LIVE_EVENT_KIND_LOCKUP_ON,
  /// The lock-up clutch was released, or slips beyond its limit. Value: slip, 1/min.
  TW_LIVE_EVENT_KIND_LOCKUP_OFF,
  /// Alarm: something slips in `gear`. Value: slip at the input now, 1/min; `at_us` is the estimated onset.
  TW_LIVE_EVENT_KIND_SLIP,
  /// The slip is gone. Value: what is left, 1/min at the input.
  TW_LIVE_EVENT_KIND_SLIP_GONE,
  /// The slip has reached the next level: 5, 10, 20, ... 1/min at the input. Value: the level.
  TW_LIVE_EVENT_KIND_SLIP_REACHED,
  /// The speeds fit `gear`, while `other_gear` is commanded. Value: the ratio.
  TW_LIVE_EVENT_KIND_OTHER_GEAR,
  /// A sensor shows the same value for long while the other speed moves. Value: that speed, 1/min.
  TW_LIVE_EVENT_KIND_STALE,
  /// A sensor gives nothing that can be used. Value: the last speed, 1/min.
  TW_LIVE_EVENT_KIND_LOST,
  /// A sensor that was stale or lost is back. Value: its speed, 1/min.
  TW_LIVE_EVENT_KIND_BACK,
  /// The ratio is wrong by the same factor in every gear: a tooth count or a step. Value: that factor.
  TW_LIVE_EVENT_KIND_WRONG_TEETH,
  /// Input and output sensor are exchanged. Value: the measured ratio.
  TW_LIVE_EVENT_KIND_SWAPPED,
  /// Time went backward; everything but the counts starts again. Value: by how much, s.
  TW_LIVE_EVENT_KIND_TIME_FAULT,
  /// The fluid is hotter than its limit. Value: its temperature, °C.
  TW_LIVE_EVENT_KIND_HOT,
  /// The plates of an element are hotter than their limit after a shift. Value: their temperature, °C.
  TW_LIVE_EVENT_KIND_OVERHEATED,
  /// The temperature of the cold fluid does not rise although the unit is driven: its sensor has stuck. Value: it, °C.
  TW_LIVE_EVENT_KIND_TEMP_STUCK,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_live_event_kind tw_live_event_kind;
#else
typedef uint8_t tw_live_event_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Which speed an event is about.
enum tw_live_speed
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The input.
  TW_LIVE_SPEED_INPUT,
  /// The output.
  TW_LIVE_SPEED_OUTPUT,
  /// The engine.
  TW_LIVE_SPEED_ENGINE,
  /// None.
  TW_LIVE_SPEED_NONE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_live_speed tw_live_speed;
#else
typedef uint8_t tw_live_speed;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How to choose among the pieces that land inside the window.
enum tw_choice_rule
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The result nearest to the target. Of equals the one with the greater chance.
  TW_CHOICE_RULE_NEAREST_TARGET = 0,
  /// The greatest chance of lying inside. Of equals the one nearest to the middle of the window.
  TW_CHOICE_RULE_LEAST_RISK = 1,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_choice_rule tw_choice_rule;
#else
typedef uint8_t tw_choice_rule;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How the size is written.
enum tw_tire_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Section width in mm and aspect ratio: 265/65R18.
  TW_TIRE_KIND_METRIC,
  /// Section width in mm, aspect ratio not written: 185R14.
  TW_TIRE_KIND_NO_ASPECT,
  /// Overall diameter and section width in inches: 35x12.50R17LT.
  TW_TIRE_KIND_FLOTATION,
  /// Section width in inches only: 11R22.5, 7.50R16.
  TW_TIRE_KIND_INCH,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_tire_kind tw_tire_kind;
#else
typedef uint8_t tw_tire_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// The service that the designation states by its letters.
enum tw_tire_service
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// No letters.
  TW_TIRE_SERVICE_UNSTATED,
  /// P: passenger car.
  TW_TIRE_SERVICE_PASSENGER,
  /// LT: light truck.
  TW_TIRE_SERVICE_LIGHT_TRUCK,
  /// ST: trailer.
  TW_TIRE_SERVICE_TRAILER,
  /// T: temporary spare.
  TW_TIRE_SERVICE_TEMPORARY,
  /// C after the rim: commercial vehicle.
  TW_TIRE_SERVICE_COMMERCIAL,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_tire_service tw_tire_service;
#else
typedef uint8_t tw_tire_service;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How the plies run.
enum tw_tire_plies
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// R.
  TW_TIRE_PLIES_RADIAL,
  /// D or a hyphen.
  TW_TIRE_PLIES_DIAGONAL,
  /// B: diagonal plies under a belt.
  TW_TIRE_PLIES_BELTED,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_tire_plies tw_tire_plies;
#else
typedef uint8_t tw_tire_plies;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Load range letter. It names a ply rating, a class of casing, and states no load: the same letter on another size carries
/// another load, which is on the sidewall.
enum tw_load_range
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Not marked.
  TW_LOAD_RANGE_UNMARKED,
  /// Ply rating 4.
  TW_LOAD_RANGE_B,
  /// Ply rating 6.
  TW_LOAD_RANGE_C,
  /// Ply rating 8.
  TW_LOAD_RANGE_D,
  /// Ply rating 10.
  TW_LOAD_RANGE_E,
  /// Ply rating 12.
  TW_LOAD_RANGE_F,
  /// Ply rating 14.
  TW_LOAD_RANGE_G,
  /// Ply rating 16.
  TW_LOAD_RANGE_H,
  /// Ply rating 18.
  TW_LOAD_RANGE_J,
  /// Ply rating 20.
  TW_LOAD_RANGE_L,
  /// Ply rating 22.
  TW_LOAD_RANGE_M,
  /// Ply rating 24.
  TW_LOAD_RANGE_N,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_load_range tw_load_range;
#else
typedef uint8_t tw_load_range;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Speed symbol, in the order of the speeds (the letters are not in alphabetical order: H lies between U and V).
enum tw_speed_symbol
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Not marked.
  TW_SPEED_SYMBOL_UNMARKED,
  /// 5 km/h.
  TW_SPEED_SYMBOL_A1,
  /// 10 km/h.
  TW_SPEED_SYMBOL_A2,
  /// 15 km/h.
  TW_SPEED_SYMBOL_A3,
  /// 20 km/h.
  TW_SPEED_SYMBOL_A4,
  /// 25 km/h.
  TW_SPEED_SYMBOL_A5,
  /// 30 km/h.
  TW_SPEED_SYMBOL_A6,
  /// 35 km/h.
  TW_SPEED_SYMBOL_A7,
  /// 40 km/h.
  TW_SPEED_SYMBOL_A8,
  /// 50 km/h.
  TW_SPEED_SYMBOL_B,
  /// 60 km/h.
  TW_SPEED_SYMBOL_C,
  /// 65 km/h.
  TW_SPEED_SYMBOL_D,
  /// 70 km/h.
  TW_SPEED_SYMBOL_E,
  /// 80 km/h.
  TW_SPEED_SYMBOL_F,
  /// 90 km/h.
  TW_SPEED_SYMBOL_G,
  /// 100 km/h.
  TW_SPEED_SYMBOL_J,
  /// 110 km/h.
  TW_SPEED_SYMBOL_K,
  /// 120 km/h.
  TW_SPEED_SYMBOL_L,
  /// 130 km/h.
  TW_SPEED_SYMBOL_M,
  /// 140 km/h.
  TW_SPEED_SYMBOL_N,
  /// 150 km/h.
  TW_SPEED_SYMBOL_P,
  /// 160 km/h.
  TW_SPEED_SYMBOL_Q,
  /// 170 km/h.
  TW_SPEED_SYMBOL_R,
  /// 180 km/h.
  TW_SPEED_SYMBOL_S,
  /// 190 km/h.
  TW_SPEED_SYMBOL_T,
  /// 200 km/h.
  TW_SPEED_SYMBOL_U,
  /// 210 km/h.
  TW_SPEED_SYMBOL_H,
  /// 240 km/h.
  TW_SPEED_SYMBOL_V,
  /// 270 km/h.
  TW_SPEED_SYMBOL_W,
  /// 300 km/h.
  TW_SPEED_SYMBOL_Y,
  /// Above 240 km/h, no speed stated.
  TW_SPEED_SYMBOL_Z,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_speed_symbol tw_speed_symbol;
#else
typedef uint8_t tw_speed_symbol;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// Where a regulation diameter comes from.
enum tw_diameter_basis
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The rule for metric sizes.
  TW_DIAMETER_BASIS_RULE,
  /// The table of the regulation: the name of the size does not give it.
  TW_DIAMETER_BASIS_TABLE,
  /// The pattern of the tabulated flotation sizes; this size itself need not be listed.
  TW_DIAMETER_BASIS_PATTERN,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_diameter_basis tw_diameter_basis;
#else
typedef uint8_t tw_diameter_basis;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a gear stands on a grade.
enum tw_gear_standing
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// It holds the speed and keeps the reserve.
  TW_GEAR_STANDING_HOLDS,
  /// It holds the speed, but keeps less than the reserve.
  TW_GEAR_STANDING_LITTLE_RESERVE,
  /// The engine has too little torque at this speed.
  TW_GEAR_STANDING_TOO_WEAK,
  /// The engine would turn slower than the lock-up clutch stays closed: the converter slips, and heats.
  TW_GEAR_STANDING_BELOW_LOCK_UP,
  /// The engine would turn faster than it may, or than its table goes.
  TW_GEAR_STANDING_OVER_SPEED,
  /// A reverse gear: the figures are those of driving backward.
  TW_GEAR_STANDING_REVERSE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_gear_standing tw_gear_standing;
#else
typedef uint8_t tw_gear_standing;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What limits a pull most.
enum tw_pull_limit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Full torque of the engine.
  TW_PULL_LIMIT_ENGINE,
  /// Rated torque at the input.
  TW_PULL_LIMIT_INPUT,
  /// Rated torque at the output.
  TW_PULL_LIMIT_OUTPUT,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_pull_limit tw_pull_limit;
#else
typedef uint8_t tw_pull_limit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A criterion.
enum tw_criterion
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Time from 0 to 30 mph on the level, s.
  TW_CRITERION_ZERO_TO_THIRTY = 1,
  /// Time from 0 to 60 mph on the level, s.
  TW_CRITERION_ZERO_TO_SIXTY = 2,
  /// Time from 40 to 60 mph on the level, s.
  TW_CRITERION_FORTY_TO_SIXTY = 3,
  /// Least speed on the long grade (3500 ft up in 11 miles, from 100 °F), km/h.
  TW_CRITERION_LONG_GRADE = 4,
  /// Starts forward on 12 % within 5 minutes, 16 ft each.
  TW_CRITERION_STARTS_FORWARD = 5,
  /// Starts in reverse on 12 % within 5 minutes, 16 ft each.
  TW_CRITERION_STARTS_REVERSE = 6,
  /// Largest grade launched forward, %: the force behind the starts, computed or measured.
  TW_CRITERION_GRADE_FORWARD = 7,
  /// Largest grade launched in reverse, %.
  TW_CRITERION_GRADE_REVERSE = 8,
  /// Grade on which the parking brake holds the combination nose up, %.
  TW_CRITERION_BRAKE_UPHILL = 9,
  /// Grade on which the parking brake holds it nose down, %.
  TW_CRITERION_BRAKE_DOWNHILL = 10,
  /// Stop from 20 mph without the trailer's brakes, m.
  TW_CRITERION_STOP = 11,
  /// Permanent angular deformation at the hitch after the test, °.
  TW_CRITERION_HITCH_BEND = 12,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_criterion tw_criterion;
#else
typedef int32_t tw_criterion;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How a criterion came out.
enum tw_criterion_outcome
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Met, under the rule.
  TW_CRITERION_OUTCOME_MET,
  /// Not met.
  TW_CRITERION_OUTCOME_NOT_MET,
  /// Neither is proven.
  TW_CRITERION_OUTCOME_NOT_PROVEN,
  /// No value was given.
  TW_CRITERION_OUTCOME_NOT_GIVEN,
  /// No figure of this criterion is known for this kind of vehicle.
  TW_CRITERION_OUTCOME_NO_FIGURE,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_criterion_outcome tw_criterion_outcome;
#else
typedef uint8_t tw_criterion_outcome;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How the two flows of a cooler pass each other.
enum tw_arrangement
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Against each other.
  TW_ARRANGEMENT_COUNTERFLOW,
  /// Across, neither mixed: fins on both sides.
  TW_ARRANGEMENT_CROSSFLOW,
  /// Side by side, the same way.
  TW_ARRANGEMENT_PARALLEL,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_arrangement tw_arrangement;
#else
typedef uint8_t tw_arrangement;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A rating, and the load it belongs to.
enum tw_rating_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Gross combination weight rating: truck and trailer.
  TW_RATING_KIND_COMBINATION = 1,
  /// Gross vehicle weight rating: the truck with the trailer on its hitch.
  TW_RATING_KIND_VEHICLE = 2,
  /// Front gross axle weight rating.
  TW_RATING_KIND_FRONT_AXLE = 3,
  /// Rear gross axle weight rating.
  TW_RATING_KIND_REAR_AXLE = 4,
  /// Tires of the front axle.
  TW_RATING_KIND_FRONT_TIRES = 5,
  /// Tires of the rear axle.
  TW_RATING_KIND_REAR_TIRES = 6,
  /// Trailer that the vehicle maker allows.
  TW_RATING_KIND_MAKER_TRAILER = 7,
  /// Trailer that the hitch (receiver, ball, coupler: the least) is rated for.
  TW_RATING_KIND_HITCH_TRAILER = 8,
  /// Hitch load that the hitch is rated for.
  TW_RATING_KIND_HITCH_LOAD = 9,
  /// Gross rating of the trailer itself.
  TW_RATING_KIND_TRAILER_GROSS = 10,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_rating_kind tw_rating_kind;
#else
typedef int32_t tw_rating_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What to weigh better.
enum tw_weigh_next
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Nothing: decided, or no uncertainty was given.
  TW_WEIGH_NEXT_NOTHING,
  /// The front axle of the truck.
  TW_WEIGH_NEXT_FRONT_AXLE,
  /// Its rear axle.
  TW_WEIGH_NEXT_REAR_AXLE,
  /// The hitch load.
  TW_WEIGH_NEXT_HITCH_LOAD,
  /// The trailer.
  TW_WEIGH_NEXT_TRAILER,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_weigh_next tw_weigh_next;
#else
typedef uint8_t tw_weigh_next;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What keeps a combination from going faster.
enum tw_speed_limit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// Nothing does: it is the greatest speed that was asked for.
  TW_SPEED_LIMIT_ASKED,
  /// Torque of the engine, less the reserve.
  TW_SPEED_LIMIT_ENGINE_TORQUE,
  /// Greatest speed of the engine, or the end of its table, in the only gear that pulls.
  TW_SPEED_LIMIT_ENGINE_SPEED,
  /// Rated torque at the input.
  TW_SPEED_LIMIT_RATED_INPUT,
  /// Rated torque at the output.
  TW_SPEED_LIMIT_RATED_OUTPUT,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_speed_limit tw_speed_limit;
#else
typedef uint8_t tw_speed_limit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What a condition of assembly comes to.
enum tw_finding
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// It is met.
  TW_FINDING_HOLDS,
  /// It is not met.
  TW_FINDING_FAILS,
  /// A count that it needs is not given.
  TW_FINDING_NOT_KNOWN,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_finding tw_finding;
#else
typedef uint8_t tw_finding;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// How an element fails.
enum tw_failure
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// It carries nothing.
  TW_FAILURE_DEAD,
  /// It never lets go; a one-way clutch is seized.
  TW_FAILURE_STUCK,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_failure tw_failure;
#else
typedef uint8_t tw_failure;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// What the vehicle does in a commanded gear.
enum tw_response
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// What the gear should do.
  TW_RESPONSE_AS_COMMANDED,
  /// A ratio, but another one.
  TW_RESPONSE_OTHER_RATIO,
  /// Nothing: no drive, or no engine braking where the gear should brake.
  TW_RESPONSE_NO_DRIVE,
  /// Drive where there should be none: neutral creeps, or the engine brakes where the gear should coast.
  TW_RESPONSE_DRIVES,
  /// Input, output or both are held: the elements fight until one slips.
  TW_RESPONSE_TIED_UP,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_response tw_response;
#else
typedef uint8_t tw_response;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// The direction of the torque at the input.
enum tw_load
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// No torque: one-way clutches carry nothing.
  TW_LOAD_NONE,
  /// The input drives forward.
  TW_LOAD_DRIVE,
  /// The vehicle drives the input, which holds back.
  TW_LOAD_COAST,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_load tw_load;
#else
typedef uint8_t tw_load;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A way in which the work can hurt someone.
enum tw_hazard
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /// The vehicle moves by itself.
  TW_HAZARD_ROLL_AWAY = 1,
  /// Fluid burns skin, or catches fire.
  TW_HAZARD_HOT_FLUID = 2,
  /// Parts and fluid fly under shop air.
  TW_HAZARD_COMPRESSED_AIR = 3,
  /// A stall test overheats the converter and loads the whole drive line.
  TW_HAZARD_STALL_HEAT = 4,
  /// A part turns faster than it can bear.
  TW_HAZARD_OVERSPEED = 5,
  /// Plates and drums just tested burn skin.
  TW_HAZARD_HOT_PARTS = 6,
  /// Raised pressure loads parts that nobody checked for it.
  TW_HAZARD_RAISED_PRESSURE = 7,
  /// A trailer or a grade asks more than the vehicle is rated for.
  TW_HAZARD_TOWING = 8,
  /// A tire carries less, or slower, than the one it replaces.
  TW_HAZARD_WRONG_TIRE = 9,
  /// A park lock is asked to hold what only brakes and chocks hold for certain.
  TW_HAZARD_PARK_LOCK = 10,
  /// Shafts, couplings and wheels turn on a dyno or a raised vehicle.
  TW_HAZARD_TURNING_SHAFTS = 11,
  /// Somebody drives on a road to measure.
  TW_HAZARD_ROAD_TEST = 12,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_hazard tw_hazard;
#else
typedef int32_t tw_hazard;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A UTF-8 text without a terminating zero, static or inside a flash image: print it with `printf("%.*s", (int)text.length, text.start)`.
typedef struct tw_text {
  /// First byte, never null.
  const char *start;
  /// Number of bytes.
  size_t length;
} tw_text;

/// One formula: what it computes and where it comes from.
typedef struct tw_card_text {
  /// Chapter and function, `clutch.capacity`.
  struct tw_text id;
  /// What it computes, in one line.
  struct tw_text purpose;
  /// The equation, in the symbols of its source.
  struct tw_text equation;
  /// Range of validity, and what lies outside it.
  struct tw_text range;
  /// The work it comes from.
  struct tw_text source;
  /// Equation, table or clause in that work.
  struct tw_text locator;
  /// Number of symbols of the equation.
  size_t symbols;
} tw_card_text;

/// One symbol of an equation.
typedef struct tw_symbol_text {
  /// As written in the equation.
  struct tw_text symbol;
  /// The field or parameter that carries it, or its meaning.
  struct tw_text meaning;
  /// Unit, `1` for a pure number.
  struct tw_text unit;
} tw_symbol_text;

/// A value under the name of its field, for an explanation: `{"capacity.torque_nm", capacity.torque_nm}`.
typedef struct tw_named_value {
  /// Fields from the outermost to the innermost with points between them, zero-terminated.
  const char *name;
  /// What the field holds.
  double value;
} tw_named_value;

/// A flat ring: a lining, a piston or a wetted wall.
typedef struct tw_annulus {
  /// Inner radius, mm; 0 for a full disc.
  double inner_radius_mm;
  /// Outer radius, mm.
  double outer_radius_mm;
} tw_annulus;

/// A set of equal return springs.
typedef struct tw_return_springs {
  /// Number of springs, 1 to 100.
  uint32_t count;
  /// Rate of one spring, N/mm.
  double rate_n_mm;
  /// Length of a free spring, mm.
  double free_length_mm;
} tw_return_springs;

/// Oil that turns with the drum, behind the piston or in the balance dam.
typedef struct tw_head {
  /// The wall that the oil presses on.
  struct tw_annulus wetted;
  /// Radius of the free surface, mm: the feed or the vent, wherever oil can leave inward.
  double free_surface_radius_mm;
} tw_head;

/// A lining whose friction changes along the radius, as it does with sliding speed.
typedef struct tw_lining_by_radius {
  /// The lining.
  struct tw_annulus lining;
  /// Friction faces.
  uint32_t faces;
  /// Uniform pressure, MPa, 0 or more.
  double pressure_mpa;
  /// μ_0, the friction line at radius 0.
  double friction_at_axis;
  /// m, change of friction per mm of radius.
  double friction_per_mm;
} tw_lining_by_radius;

/// Tolerance limits; an open side is infinite.
typedef struct tw_limits {
  /// Least conforming value, or −∞.
  double lower;
  /// Greatest conforming value, or +∞.
  double upper;
} tw_limits;

/// A clutch or brake pack. Nothing in it depends on pressure, speed or temperature.
typedef struct tw_pack {
  /// Where lining meets steel; measured on the lining, not on the plate.
  struct tw_annulus lining;
  /// Piston face under apply pressure.
  struct tw_annulus piston;
  /// Friction faces: `plate_faces` or `disc_faces`.
  uint32_t faces;
  /// Worn-in lining (uniform wear); false for new plates (uniform pressure).
  bool worn;
  /// Return-spring force with the pack applied, N: weakest and strongest spring in limits. Equal if measured.
  struct tw_limits return_spring_n;
  /// Drag of the piston seals against apply, N.
  double seal_drag_n;
  /// Oil behind the piston: adds to the apply force when the drum turns.
  struct tw_head head;
  /// Oil in the balance dam: takes from it.
  struct tw_head dam;
} tw_pack;

/// What acts on a pack.
typedef struct tw_applied {
  /// Gauge pressure at the piston, kPa, 0 or more.
  double pressure_kpa;
  /// Friction coefficient, above 0 to 1: static to hold, dynamic while slipping.
  double friction;
  /// Speed of the drum that holds the apply oil, 1/min, any sign. 0 for a brake, and for a drum that stands at stall.
  double drum_speed_rpm;
  /// Density of the hot oil, kg/m³; matters only to a pack with a head.
  double oil_density_kg_m3;
} tw_applied;

/// Capacity with everything that made it.
typedef struct tw_capacity {
  /// Piston area, mm².
  double piston_area_mm2;
  /// Pressure on the piston, N.
  double apply_force_n;
  /// Oil head behind the piston, N.
  double head_force_n;
  /// Oil head of the balance dam, N.
  double dam_force_n;
  /// Strongest return spring, N.
  double return_spring_n;
  /// Seal drag, N.
  double seal_drag_n;
  /// Force left on the plates, N; negative while the spring holds the piston back.
  double net_force_n;
  /// Friction radius, mm.
  double mean_radius_mm;
  /// Friction faces.
  uint32_t faces;
  /// Friction coefficient.
  double friction;
  /// Mean pressure on the lining, MPa.
  double lining_mean_mpa;
  /// Highest pressure on the lining, MPa: the mean when new, at the inner edge when worn in.
  double lining_peak_mpa;
  /// Capacity, N·m; 0 while the spring holds the piston back.
  double torque_nm;
} tw_capacity;

/// A pack in one oil, checked and reduced to the constants of its capacity. For columns of pressure, speed and friction.
typedef struct tw_capacity_line {
  /// Piston area, mm².
  double piston_area_mm2;
  /// Head less dam over the square of drum speed, N/(1/min)².
  double head_n_per_rpm2;
  /// Strongest return spring and seal drag, N.
  double held_back_n;
  /// Faces × friction radius, mm.
  double arm_mm;
} tw_capacity_line;

/// Pressure needed for a torque.
typedef struct tw_pressure_needed {
  /// With the strongest return spring, kPa.
  double strong_spring_kpa;
  /// With the weakest return spring, kPa.
  double weak_spring_kpa;
} tw_pressure_needed;

/// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
typedef struct tw_reading {
  /// Best estimate.
  double value;
  /// Standard uncertainty, 0 or more.
  double u;
} tw_reading;

/// What the shop knows about the working point, with its uncertainty.
typedef struct tw_working {
  /// Gauge pressure at the piston, kPa.
  struct tw_reading pressure_kpa;
  /// Friction coefficient: static to hold, dynamic while slipping.
  struct tw_reading friction;
  /// Relative standard uncertainty of capacity from the dimensions of pack and piston.
  double geometry_u_rel;
  /// Speed of the drum that holds the apply oil, 1/min: 0 for a brake, and at stall for a drum that stands.
  double drum_speed_rpm;
  /// Density of the hot oil, kg/m³.
  double oil_density_kg_m3;
} tw_working;

/// Kind of a decision rule. A number of its own type, so that a junk number from C is refused rather than undefined.
typedef int32_t tw_rule_kind;
/// Inside the limits is GO, outside is NO-GO; the uncertainty is not counted.
#define TW_RULE_KIND_SIMPLE_ACCEPTANCE 0
/// GO and NO-GO each need the same stated probability.
#define TW_RULE_KIND_CONFORMANCE 1
/// GO and NO-GO need a guard of k times the standard uncertainty.
#define TW_RULE_KIND_EXPANDED_GUARD 2
/// GO from one stated chance, NO-GO up to another.
#define TW_RULE_KIND_STATED_CHANCES 3

/// A decision rule. Fields that its kind does not use are 0.
typedef struct tw_rule {
  /// Least chance of lying inside that is a GO, above 0.5.
  double go;
  /// Greatest chance of lying inside that is a NO-GO, below 0.5.
  double no_go;
  /// Guard in standard uncertainties.
  double k;
  /// Kind.
  tw_rule_kind kind;
} tw_rule;

/// A decision and what it rests on.
typedef struct tw_judgment {
  /// What was judged.
  struct tw_reading reading;
  /// Against what.
  struct tw_limits limits;
  /// Under which rule.
  struct tw_rule rule;
  /// Chance that the true value lies within the limits.
  double chance;
  /// Values that are GO at this uncertainty. Lower +∞ and upper −∞ if there is none: the limits are too close.
  struct tw_limits acceptance;
  /// Values below its lower or above its upper end are NO-GO at this uncertainty.
  struct tw_limits rejection;
  /// Distance of the value above the lower limit; negative when below it.
  double above_lower;
  /// Distance of the value below the upper limit; negative when above it.
  double below_upper;
  /// Greatest standard uncertainty at which this same value is decided; 0 on a limit, infinite if any will do.
  double u_to_decide;
  /// Nearest value that is GO at this uncertainty; infinite if there is none.
  double value_to_go;
  /// GO, NO-GO or NOT PROVEN.
  tw_verdict verdict;
} tw_judgment;

/// Uncertainty budget: the combined standard uncertainty and where it comes from. Only the first `count` entries of each
/// list are used.
typedef struct tw_budget {
  /// Combined standard uncertainty.
  double u;
  /// Effective degrees of freedom; infinite if every input's is.
  double freedom;
  /// Change of the result per unit of each input; 0 where the input carries no uncertainty and it was not needed.
  double sensitivity[TW_MAX_INPUTS];
  /// c_i u_i of each input, with its sign.
  double contribution[TW_MAX_INPUTS];
  /// Share of each input in the variance. The shares add up to 1; with correlation one may be negative.
  double share[TW_MAX_INPUTS];
  /// Number of inputs.
  uint32_t count;
  /// Position of the input that contributes most: the one to measure better.
  uint32_t largest;
} tw_budget;

/// Whether a pack holds, and what that rests on.
typedef struct tw_hold {
  /// Capacity at the best estimates.
  struct tw_capacity capacity;
  /// Torque to hold, N·m.
  struct tw_reading need_nm;
  /// Capacity over demand.
  double margin;
  /// The torque to spare, capacity less demand, against 0: its chance is the chance that the pack holds.
  struct tw_judgment judgment;
  /// Where the uncertainty of the torque to spare comes from: pressure, friction, geometry, demand, in this order.
  struct tw_budget budget;
  /// Pressure at which it just holds.
  struct tw_pressure_needed pressure_needed;
  /// Friction at which it just holds; infinite while the spring holds the piston back.
  double friction_needed;
} tw_hold;

/// An exact fraction in lowest terms with a denominator above zero.
///
/// A denominator of 0 marks a quantity that the state leaves open: a speed that is not determined, a torque share that is
/// statically indeterminate. Arithmetic on an open fraction gives an open fraction.
typedef struct tw_fraction {
  /// Numerator; it carries the sign.
  int64_t num;
  /// Denominator, above zero; 0 where the quantity is not determined.
  int64_t den;
} tw_fraction;

/// The answer of `tw_train_solve`: everything per unit of input speed and per unit of input torque, without losses.
///
/// Where the input is held its speed is 0. A `tw_fraction` with denominator 0 is not determined by the state.
typedef struct tw_state {
  /// What the state does to input and output.
  tw_state_kind kind;
  /// Degrees of freedom that are left. A gear may have more than one: the test is that the input determines the output.
  uint8_t mobility;
  /// Closures that repeat what others already force. The torque shares in such a loop are indeterminate.
  uint8_t redundant;
  /// Elements taken as closed, holding one-way clutches included; bit 0 is the first element.
  uint32_t closed;
  /// Input speed / output speed of a gear, else open.
  struct tw_fraction ratio;
  /// Torque from outside on the output per unit input torque, forward positive: −ratio in a gear.
  struct tw_fraction output_torque;
  /// Torque of the case on the train per unit input torque.
  struct tw_fraction case_torque;
  /// Speed of each member per unit input speed.
  struct tw_fraction speeds[TW_MAX_MEMBERS];
  /// Speed of the first member of each element relative to the second, per unit input speed.
  struct tw_fraction slips[TW_MAX_ELEMENTS];
  /// Torque that each element puts on its first member, forward positive, per unit input torque; 0 for an open element.
  struct tw_fraction shares[TW_MAX_ELEMENTS];
  /// Multiplier of each `tw_row`: times a coefficient, the torque of the set on that member per unit input torque.
  struct tw_fraction multipliers[TW_MAX_ROWS];
} tw_state;

/// A pack and its place in the train.
typedef struct tw_element_pack {
  /// The pack.
  struct tw_pack pack;
  /// Element of the train.
  uint8_t element;
  /// Member that its drum, and so its apply oil, turns with; the fixed member for a brake.
  uint8_t turns_with;
} tw_element_pack;

/// The working point of a gear.
typedef struct tw_duty {
  /// Gauge pressure at the pistons, kPa.
  struct tw_reading pressure_kpa;
  /// Friction coefficient: static to hold.
  struct tw_reading friction;
  /// Relative standard uncertainty of capacity from the dimensions of pack and piston.
  double geometry_u_rel;
  /// Density of the hot oil, kg/m³.
  double oil_density_kg_m3;
  /// Turbine torque, N·m, above 0.
  struct tw_reading turbine_torque_nm;
  /// Turbine speed, 1/min: 0 at stall, where no drum of the input turns and no oil head helps or harms.
  double turbine_speed_rpm;
  /// Decision rule.
  struct tw_rule rule;
} tw_duty;

/// One pack in one gear.
typedef struct tw_element_margin {
  /// Element of the train.
  uint8_t element;
  /// The train determines the share. If not, everything below is 0 and NOT PROVEN: statics cannot tell what it carries.
  bool share_known;
  /// Torque per unit of turbine torque, without sign.
  double share;
  /// Speed of its drum, 1/min.
  double drum_speed_rpm;
  /// Torque to hold, N·m.
  double need_nm;
  /// Capacity, N·m. Not a rating.
  double capacity_nm;
  /// Capacity over demand; infinite where the element carries nothing.
  double margin;
  /// Pressure at which it just holds.
  struct tw_pressure_needed pressure_needed;
  /// Friction at which it just holds.
  double friction_needed;
  /// Chance that it holds.
  double chance;
  /// Verdict under the rule.
  tw_verdict verdict;
} tw_element_margin;

/// Every pack of one gear.
typedef struct tw_gear_review {
  /// One entry for each closed element that has a pack; only the first `count` are used.
  struct tw_element_margin margins[TW_MAX_ELEMENTS];
  /// Number of entries.
  uint32_t count;
  /// Position of the entry with the least margin.
  uint32_t governing;
} tw_gear_review;

/// A band around a drum.
typedef struct tw_band {
  /// Radius of the drum, mm.
  double drum_radius_mm;
  /// Width of the lining, mm.
  double width_mm;
  /// Angle of contact, degrees, above 0 to 1080; of a double wrap the sum of both turns.
  double wrap_deg;
} tw_band;

/// What a band does under a servo force.
typedef struct tw_band_torque {
  /// Tight over slack tension.
  double tension_ratio;
  /// Tension at the tight end, N.
  double tight_n;
  /// Tension at the slack end, N.
  double slack_n;
  /// Highest pressure on the lining, MPa: at the tight end.
  double lining_peak_mpa;
  /// Torque, N·m. Not a rating.
  double torque_nm;
  /// Change of torque per unit of friction, N·m: a self-energized band multiplies every change of friction.
  double nm_per_friction;
} tw_band_torque;

/// The servo of a band.
typedef struct tw_servo {
  /// Face under apply pressure; inner radius 0 for a plain piston.
  struct tw_annulus piston;
  /// Return-spring force with the band applied, N.
  double return_spring_n;
  /// Band force over piston force: the lever, 1 without one.
  double lever_ratio;
} tw_servo;

/// Two inertias that a slipping clutch pulls together. All values at the clutch, inertias and torques of other shafts
/// referred to it.
typedef struct tw_slip {
  /// Inertia on the input side, kg·m².
  double input_inertia_kg_m2;
  /// Inertia on the output side, kg·m².
  double output_inertia_kg_m2;
  /// Speed of the input side, 1/min, with its sign.
  double input_speed_rpm;
  /// Speed of the output side, 1/min, with its sign.
  double output_speed_rpm;
  /// Torque of the slipping clutch, N·m, 0 or more: from dynamic friction.
  double clutch_torque_nm;
  /// Torque that drives the input side forward, N·m.
  double drive_torque_nm;
  /// Torque that holds the output side back, N·m.
  double load_torque_nm;
} tw_slip;

/// How a slip ends.
typedef struct tw_slip_end {
  /// The slip reaches zero. If not, the time is infinite, so is the energy of a clutch that pulls at all,
  /// and final speed and works are 0 and mean nothing.
  bool locks;
  /// The same clutch torque also keeps it locked; a static check may use static friction on `locked_torque_nm`.
  bool stays_locked;
  /// Rate at which the slip shrinks, (1/min)/s; 0 or less: it never locks.
  double slip_shrinks_rpm_s;
  /// Time to lock-up, s.
  double time_s;
  /// Common speed at lock-up, 1/min.
  double final_speed_rpm;
  /// Heat at the faces, J.
  double energy_j;
  /// Heat flow at the start, kW: the highest when the clutch locks.
  double start_heat_kw;
  /// Work that the input side took in from outside, J.
  double drive_work_j;
  /// Work that the output side gave to its load, J.
  double load_work_j;
  /// Torque through the clutch once locked, N·m, forward drive positive.
  double locked_torque_nm;
} tw_slip_end;

/// A slip while something holds the input side at constant speed.
typedef struct tw_held_input {
  /// Inertia on the output side, kg·m².
  double output_inertia_kg_m2;
  /// Speed of the input side, 1/min, with its sign.
  double input_speed_rpm;
  /// Speed of the output side, 1/min, with its sign.
  double output_speed_rpm;
  /// Torque of the slipping clutch, N·m, 0 or more.
  double clutch_torque_nm;
  /// Torque that holds the output side back, N·m.
  double load_torque_nm;
} tw_held_input;

/// Material and thickness of a steel plate heated on both faces.
typedef struct tw_steel {
  /// Thermal conductivity, W/(m·K).
  double conductivity_w_m_k;
  /// Density, kg/m³.
  double density_kg_m3;
  /// Specific heat, J/(kg·K).
  double specific_heat_j_kg_k;
  /// Thickness, mm.
  double thickness_mm;
} tw_steel;

/// Temperature rise of a surface.
typedef struct tw_surface_rise {
  /// Rise, K.
  double rise_k;
  /// When it is reached, s.
  double at_s;
  /// Until when the plate counts as thick, s.
  double thick_until_s;
  /// The rise is reached within that time. If not, the true rise is higher: the bulk rise governs.
  bool thick;
} tw_surface_rise;

/// The steel plates of a pack.
typedef struct tw_steel_plates {
  /// Material and thickness of one plate.
  struct tw_steel steel;
  /// Mass of all steel plates, kg.
  double steel_mass_kg;
  /// Where lining meets steel.
  struct tw_annulus lining;
  /// Friction faces.
  uint32_t faces;
} tw_steel_plates;

/// What one shift does to the steel plates. All heat is taken to enter the steel.
typedef struct tw_plate_heat {
  /// Energy per friction area, J/mm².
  double energy_j_mm2;
  /// Heat flux at the start, W/mm².
  double start_flux_w_mm2;
  /// Mean rise of the steel, K.
  double bulk_rise_k;
  /// Highest rise of its surface while the plate counts as thick.
  struct tw_surface_rise surface;
} tw_plate_heat;

/// Torque of an engine against its speed, straight between the points. `tw_engine_curve_from_table` makes a checked one.
typedef struct tw_engine_curve {
  /// Points in use, 2 to 32.
  uint32_t points;
  /// Speeds, 1/min, rising.
  double speed_rpm[TW_TABLE_POINTS];
  /// Torque at each speed, N·m, 0 or more: at the flywheel, full throttle, accessories of the curve's test taken off.
  double torque_nm[TW_TABLE_POINTS];
  /// Greatest speed, 1/min: where its governor or cut-off acts; not below the last point.
  double max_rpm;
} tw_engine_curve;

/// Characteristic of a torque converter, straight between the points. `tw_characteristic_from_table` makes a checked one.
typedef struct tw_characteristic {
  /// Points in use, 2 to 32.
  uint32_t points;
  /// Turbine speed over impeller speed, rising, 0 to 1.
  double speed_ratio[TW_TABLE_POINTS];
  /// Turbine torque over impeller torque at each, 0 to 10.
  double torque_ratio[TW_TABLE_POINTS];
  /// Capacity factor at each, above 0: impeller speed over the root of impeller torque, 1/min per √(N·m).
  double k_rpm_per_sqrt_nm[TW_TABLE_POINTS];
} tw_characteristic;

/// What the engine gives today of its curve.
typedef struct tw_engine_today {
  /// Torque over that of the curve, above 0 to 2: air, throttle, fuel. 1 where all are those of the curve.
  double torque_factor;
  /// Torque that accessories take besides those that the curve counts, N·m; negative where one that it counts is idle.
  double accessory_nm;
} tw_engine_today;

/// A speed at which engine and converter are in balance.
typedef struct tw_operating_point {
  /// Speed of engine and impeller, 1/min.
  double engine_rpm;
  /// Speed of the turbine, 1/min.
  double turbine_rpm;
  /// Turbine speed over impeller speed.
  double speed_ratio;
  /// Turbine torque over impeller torque.
  double torque_ratio;
  /// Capacity factor of the impeller side, 1/min per √(N·m).
  double k_rpm_per_sqrt_nm;
  /// Torque that the engine gives and the impeller takes, N·m.
  double impeller_nm;
  /// Torque at the turbine, N·m.
  double turbine_nm;
  /// Power into the impeller, kW.
  double impeller_kw;
  /// Power out of the turbine, kW.
  double turbine_kw;
  /// What the converter turns into heat, kW.
  double heat_kw;
  /// Power out over power in.
  double efficiency;
  /// The engine comes back to this speed by itself.
  bool stable;
} tw_operating_point;

/// Every operating point at a turbine speed, by rising engine speed.
typedef struct tw_operating_points {
  /// The points; only the first `count` are used.
  struct tw_operating_point points[TW_MAX_OPERATING_POINTS];
  /// Number of points; 0 where engine and converter do not meet.
  uint32_t count;
  /// The engine gives more than the impeller takes at the lowest speed that both tables cover.
  bool surplus_at_first;
  /// The engine gives more than the impeller takes at the highest speed that both tables cover.
  bool surplus_at_last;
} tw_operating_points;

/// Air that an engine breathes.
typedef struct tw_inlet_air {
  /// Absolute (station) pressure, kPa, 50 to 110; not the reading reduced to sea level.
  double pressure_kpa_abs;
  /// Pressure of the water vapor in it, kPa; 0 for dry air.
  double vapor_kpa_abs;
  /// Temperature, °C, −40 to 60.
  double temp_c;
} tw_inlet_air;
/// The reference air of SAE J1349: 99 kPa dry, 25 °C.
#define TW_INLET_AIR_REFERENCE_J1349 (tw_inlet_air){ .pressure_kpa_abs = 99.0, .vapor_kpa_abs = 0.0, .temp_c = 25.0 }

/// What a stall speed depends on besides the two tables.
typedef struct tw_stall_inputs {
  /// Torque over that of the curve: air, fuel, wear of the engine.
  struct tw_reading torque_factor;
  /// Torque that accessories take besides those that the curve counts, N·m.
  struct tw_reading accessory_nm;
  /// Capacity factor of this converter over that of the characteristic: spread of manufacture, fluid.
  struct tw_reading k_factor;
} tw_stall_inputs;

/// A computed stall.
typedef struct tw_stall_speed {
  /// The stall, from the best estimates.
  struct tw_operating_point point;
  /// Engine speed, 1/min.
  struct tw_reading speed_rpm;
  /// Torque at the turbine, N·m.
  struct tw_reading turbine_nm;
  /// Where the uncertainty of the speed comes from: engine torque, accessories, capacity factor, in this order.
  struct tw_budget budget;
} tw_stall_speed;

/// A stall speed that was measured, and how it is judged.
typedef struct tw_measured_stall {
  /// Engine speed reached, 1/min.
  struct tw_reading speed_rpm;
  /// Differences from the computed speed that prove no fault, 1/min: the lower one negative.
  struct tw_limits allow_rpm;
  /// Share of the computed speed that is missing from which the stator comes first in suspicion, above 0 to 1.
  double stator_share;
  /// Difference upward at which the test stops at once, 1/min, above 0.
  double stop_rpm;
  /// Decision rule.
  struct tw_rule rule;
} tw_measured_stall;

/// What a measured stall speed says.
typedef struct tw_stall_verdict {
  /// The computed stall.
  struct tw_stall_speed stall;
  /// Measured less computed speed, 1/min.
  struct tw_reading difference_rpm;
  /// The difference against what is allowed: GO is "no fault proven", not "no fault".
  struct tw_judgment judgment;
  /// Where the uncertainty of the difference comes from: reading, engine torque, accessories, capacity factor, in this order.
  struct tw_budget budget;
  /// The side on which it lies; `Inside` only where the verdict is GO.
  tw_stall_side side;
  /// The engine curve covers the measured speed. If not, the two shares below are 0.
  bool explained;
  /// Engine torque over the expected one that alone would explain the speed.
  double torque_share;
  /// Capacity factor over the expected one that alone would explain the speed.
  double k_share;
} tw_stall_verdict;

/// What a stall test must not pass.
typedef struct tw_stall_ratings {
  /// Rated torque at the turbine, N·m.
  double turbine_nm;
  /// Rated torque at the output, N·m.
  double output_nm;
  /// Longest stall, s.
  double longest_s;
} tw_stall_ratings;

/// The fluid in the converter.
typedef struct tw_fluid_charge {
  /// Its volume, L.
  double volume_l;
  /// Its density, kg/m³.
  double density_kg_m3;
  /// Its specific heat, J/(kg·K).
  double specific_heat_j_kg_k;
  /// Temperature at which the stall begins, °C, −60 to 300.
  double start_c;
  /// Temperature that it must not pass, °C, −60 to 300.
  double most_c;
} tw_fluid_charge;

/// A stall test before it is made.
typedef struct tw_stall_plan {
  /// The stall.
  struct tw_operating_point point;
  /// What it must not pass.
  struct tw_stall_ratings ratings;
  /// Ratio of the gear; negative in reverse.
  double gear_ratio;
  /// Torque at the output while it is held, N·m, without sign.
  double output_nm;
  /// Turbine torque over its rating.
  double turbine_share;
  /// Output torque over its rating.
  double output_share;
  /// The rated turbine torque would be passed.
  bool turbine_passed;
  /// The rated output torque would be passed.
  bool output_passed;
  /// The fluid is too hot to begin.
  bool too_hot;
  /// Nothing of the above: the record does not forbid the test. Whether it may be made is up to the vehicle maker.
  bool allowed;
  /// Rise of the fluid in the longest stall of the record, K: adiabatic bound.
  double rise_k;
  /// Seconds until the fluid is as hot as it may be.
  double heat_s;
  /// Seconds that both heat and record leave; 0 where the test is refused.
  double permitted_s;
  /// Greatest turbine torque that passes no rating, N·m.
  double limit_turbine_nm;
  /// Engine torque that gives it at stall, N·m: limit the engine to this, and the test passes no rating.
  double limit_engine_nm;
  /// Engine speed at that stall, 1/min.
  double limit_rpm;
  /// Heat of that stall, kW.
  double limit_heat_kw;
  /// Seconds that heat and record leave at that stall.
  double limit_s;
} tw_stall_plan;

/// Torque on every element of a gear.
typedef struct tw_element_torques {
  /// Torque of each element, N·m, without sign; 0 where it is open or not known.
  double torque_nm[TW_MAX_ELEMENTS];
  /// Mask of the closed elements whose torque the train determines.
  uint32_t known;
  /// Mask of the closed elements of which statics cannot tell what they carry.
  uint32_t unknown;
} tw_element_torques;

/// Slip that the control of a lock-up clutch aims at, and slip that is a fault.
typedef struct tw_slip_limits {
  /// Greatest slip that the control aims at, 1/min, 0 or more.
  double target_rpm;
  /// Slip that is a fault, 1/min, not below the target.
  double alarm_rpm;
  /// Decision rule.
  struct tw_rule rule;
} tw_slip_limits;

/// Slip of a lock-up clutch, judged.
typedef struct tw_lockup_slip {
  /// Engine speed less turbine speed, 1/min; negative while the wheels drive the engine.
  struct tw_reading slip_rpm;
  /// The slip against what the control aims at.
  struct tw_judgment on_target;
  /// The slip against what is a fault: NO-GO is a proven one.
  struct tw_judgment within_alarm;
  /// Where the uncertainty comes from: engine speed, turbine speed, in this order.
  struct tw_budget budget;
} tw_lockup_slip;

/// A signal of a bus.
typedef struct tw_bus_signal {
  /// Which values are marks.
  tw_bus_rules rules;
  /// Width: 8, 16 or 32.
  uint8_t bits;
  /// Physical value of one step.
  double resolution;
  /// Physical value of raw 0.
  double offset;
  /// Least physical value that can be true; −infinity where nobody says.
  double lower;
  /// Greatest physical value that can be true; infinity where nobody says.
  double upper;
} tw_bus_signal;

/// A decoded raw value.
typedef struct tw_bus_value {
  /// What it is. Compute only with `TW_BUS_MEANING_VALUE`.
  tw_bus_meaning meaning;
  /// The scaled number, whatever it means; only for showing where it is no value.
  double value;
} tw_bus_value;

/// One counted cycle.
typedef struct tw_cycle {
  /// From trough to peak.
  double range;
  /// Middle between them.
  double mean;
  /// 1, or 0.5 for half a cycle.
  double cycles;
} tw_cycle;

/// What was counted in a history.
typedef struct tw_cycle_count {
  /// Cycles, half ones as halves.
  double cycles;
  /// Entries written.
  uint32_t entries;
  /// Turning points; of a history that repeats, those of one round.
  uint32_t reversals;
  /// Pieces between gaps.
  uint32_t pieces;
  /// Missing values.
  uint32_t missing;
  /// Greatest range counted.
  double largest_range;
} tw_cycle_count;

/// Time of a history outside its bins, and time that nobody knows.
typedef struct tw_residence {
  /// In the bins together, s.
  double inside_s;
  /// Below the first edge, s.
  double below_s;
  /// At the last edge or above it, s.
  double above_s;
  /// With a missing value, s: neither rest nor use.
  double missing_s;
  /// In gaps of the time stamps, s: neither rest nor use.
  double gap_s;
  /// Samples with the time of the one before.
  uint32_t duplicates;
  /// Samples earlier than the one before.
  uint32_t reversed;
} tw_residence;

/// Life of a part against its torque: a straight line between the logarithms.
typedef struct tw_damage_line {
  /// Slope m: life falls with the m-th power of torque; 1 to 20.
  double slope;
  /// Torque at which the reference number of contacts is reached, N·m.
  double reference_nm;
  /// Reference number of contacts (or load cycles, or turns).
  double reference_contacts;
} tw_damage_line;

/// One stage of a duty.
typedef struct tw_duty_stage {
  /// Contacts, load cycles or turns in it.
  double contacts;
  /// Torque in it, N·m; the sign does not matter.
  double torque_nm;
} tw_duty_stage;

/// Damage of a duty.
typedef struct tw_damage {
  /// Sum over the stages; 1 where the reference line is met.
  double total;
  /// Damage of the stage that does most.
  double greatest;
  /// That stage.
  uint32_t governing;
  /// Its part of the sum, 0 to 1.
  double governing_share;
  /// Contacts of all stages.
  double contacts;
} tw_damage;

/// What is known of a line of damage.
typedef struct tw_damage_range {
  /// Least slope.
  double slope_low;
  /// Greatest slope.
  double slope_high;
  /// Least reference torque, N·m.
  double reference_low_nm;
  /// Greatest reference torque, N·m.
  double reference_high_nm;
  /// Reference number of contacts.
  double reference_contacts;
} tw_damage_range;

/// Least and greatest damage.
typedef struct tw_damage_interval {
  /// Least damage.
  double lower;
  /// Greatest damage.
  double upper;
  /// Slope at the least damage.
  double slope_at_lower;
  /// Slope at the greatest damage.
  double slope_at_upper;
} tw_damage_interval;

/// A rule of aging.
typedef struct tw_aging_rule {
  /// Which form.
  tw_aging_kind kind;
  /// Temperature at which the factor is 1, °C.
  double reference_c;
  /// Halving: step of temperature that doubles the rate, K; else 0.
  double halving_k;
  /// Arrhenius: activation energy over the gas constant, K; else 0.
  double activation_k;
  /// Least factor: 1 never counts cooler hours as less than those at the reference, 0 lets the rule run on.
  double least_factor;
} tw_aging_rule;

/// Hours at a temperature.
typedef struct tw_fluid_bin {
  /// Temperature of the bin, °C: its upper edge is on the careful side.
  double temp_c;
  /// Time in it, h.
  double duration_h;
} tw_fluid_bin;

/// Share of its life that fluid has used.
typedef struct tw_fluid_life {
  /// Share used in the known hours.
  double used;
  /// Share used if the unknown hours were as cool as the coolest bin.
  double used_lower;
  /// Share used if the unknown hours were as hot as the hottest bin.
  double used_upper;
  /// Known hours, h.
  double known_h;
  /// Hours left in the same use, h; 0 where the life is used up.
  double left_h;
  /// Part of the used share that the hottest 5 % of the known hours did.
  double worst_share;
  /// Temperature from which those hours count, °C.
  double worst_from_c;
} tw_fluid_life;

/// Tooth counts of a set; 0 where there is no such gear, or where a planet count is not known.
typedef struct tw_set_teeth {
  /// Sun; the large sun of a two-sun set.
  uint16_t sun;
  /// Second sun of a stepped set; the small sun of a two-sun set.
  uint16_t sun_2;
  /// Planet; the inner planet of a double-pinion set, the long one of a two-sun set, the first step of a stepped set.
  uint16_t planet;
  /// The outer planet of a double-pinion set, the short one of a two-sun set, the second step of a stepped set.
  uint16_t planet_2;
  /// Ring.
  uint16_t ring;
} tw_set_teeth;

/// The members that the gears of a set belong to; `TW_NO_MEMBER` where there is no such gear.
typedef struct tw_set_joins {
  /// Member of the sun; of the large sun of a two-sun set.
  uint8_t sun;
  /// Member of the second or small sun.
  uint8_t sun_2;
  /// Member of the ring.
  uint8_t ring;
  /// Member of the planet carrier.
  uint8_t carrier;
} tw_set_joins;

/// A planetary set: kind, teeth, and the members it joins.
typedef struct tw_planetary_set {
  /// How the gears mesh.
  tw_set_kind kind;
  /// Planets, or pairs of planets, around the sun; 0 where not known. Speeds and torques do not need it.
  uint8_t planets;
  /// Tooth counts.
  struct tw_set_teeth teeth;
  /// Members.
  struct tw_set_joins joins;
} tw_planetary_set;

/// One speed equation: Σ coefficient · speed of member = 0.
///
/// The same coefficients, times one multiplier, are the torques that the set puts on its members.
typedef struct tw_row {
  /// The set it belongs to.
  uint8_t set;
  /// Sun, then ring or second sun, then carrier.
  uint8_t members[3];
  /// Whole numbers in lowest terms; their sum is 0.
  int32_t coefficients[3];
} tw_row;

/// Whatever can join two members: clutch, brake, one-way or dog clutch.
typedef struct tw_element {
  /// What it is.
  tw_element_kind kind;
  /// The sense that a one-way clutch blocks.
  tw_blocks blocks;
  /// The member whose slip speed and torque share are reported.
  uint8_t first;
  /// The other member; the fixed one for a brake.
  uint8_t second;
} tw_element;

/// A gear train: what turns, what gears it together, what can be closed.
typedef struct tw_train {
  uint8_t members;
  uint8_t input;
  uint8_t output;
  uint8_t fixed;
  uint8_t set_count;
  uint8_t row_count;
  uint8_t element_count;
  struct tw_planetary_set sets[TW_MAX_SETS];
  struct tw_row rows[TW_MAX_ROWS];
  struct tw_element elements[TW_MAX_ELEMENTS];
} tw_train;

/// What one wheel of a set sees.
typedef struct tw_wheel_duty {
  /// Times that each of its teeth meets a planet per turn of the input; open where the set has no such wheel.
  struct tw_fraction contacts;
  /// Torque of the set on it per unit input torque, forward positive; open where statics cannot tell.
  struct tw_fraction torque;
} tw_wheel_duty;

/// What the teeth of a planetary set see in a gear, exact, per turn of the input and per unit of its torque.
typedef struct tw_mesh_duty {
  /// Planets, or pairs of planets, around the sun.
  uint8_t planets;
  /// The sun; the large sun of a two-sun set.
  struct tw_wheel_duty sun;
  /// The second sun of a stepped set; the small sun of a two-sun set.
  struct tw_wheel_duty sun_2;
  /// The ring.
  struct tw_wheel_duty ring;
  /// Times that a tooth of a planet meets each of its partners per turn of the input; open where its teeth are not known.
  struct tw_fraction planet_contacts;
  /// The same for the second planet.
  struct tw_fraction planet_2_contacts;
} tw_mesh_duty;

/// Places that a truck can take.
typedef struct tw_rank_interval {
  /// Best place, 1 for the greatest value.
  uint32_t first;
  /// Worst place.
  uint32_t last;
} tw_rank_interval;

/// A closed pack in a gear.
typedef struct tw_screen_holding {
  /// Element of the train.
  uint8_t element;
  /// Torque on it per unit of input torque, without sign, above 0.
  double share;
  /// Speed of the drum that holds its apply oil per unit of input speed; 0 for a brake.
  double turns;
  /// Constants of its capacity.
  struct tw_capacity_line line;
  /// Static friction coefficient, above 0 to 1.
  double friction;
} tw_screen_holding;

/// A gear.
typedef struct tw_screen_gear {
  /// Number that a commanded gear is compared with: forward from 1, reverse from -1 down.
  int8_t number;
  /// Input speed over output speed, negative in reverse.
  double ratio;
  /// Efficiency, 0.5 to 1, under drive and in coast.
  double efficiency;
  /// Closed packs whose torque the train determines.
  struct tw_screen_holding holding[TW_MAX_SCREEN_HOLDING];
  /// Number of them.
  uint32_t holding_count;
  /// Tooth contacts of the most loaded tooth of each set per turn of the input.
  double contacts_per_turn[TW_MAX_SETS];
  /// Torque on the sun of each set per unit of input torque, without sign.
  double sun_share[TW_MAX_SETS];
} tw_screen_gear;

/// Where a row changes its meaning. No defaults: `practice` holds usual values to be taken by name.
typedef struct tw_screen_limits {
  /// A ratio belongs to a gear that is no farther away than this share of it, above 0 to 0.2.
  double ratio_tolerance;
  /// Difference of engine and input speed up to which the converter counts as locked, 1/min.
  double locked_slip_rpm;
  /// Time between two rows above which what happened is unknown, s, above 0 to 600.
  double gap_s;
  /// Output speed below which the truck stands, 1/min, above 0.
  double standing_rpm;
  /// Input torque below which no margin is formed, N·m, above 0.
  double torque_floor_nm;
  /// Fluid temperature above which a row is hot, °C.
  double hot_c;
  /// Capacity over demand below which a row is counted as low.
  double least_margin;
  /// Road speed from which the satellite is compared, km/h, at least 5.
  double gps_floor_km_h;
} tw_screen_limits;

/// How damage is counted; slope 0 where it is not.
typedef struct tw_screen_damage {
  /// Slope of the line of torque against contacts, 1 to 16; 0 counts no damage.
  double slope;
  /// Contacts that the reference torque gives.
  double reference_contacts;
  /// Torque on the sun of each set that gives them, N·m; 0 for a set that is not counted.
  double reference_nm[TW_MAX_SETS];
} tw_screen_damage;

/// How fluid ages: its life is halved by every so many kelvins; `life_h` 0 where it is not counted.
typedef struct tw_screen_fluid {
  /// Life at the reference temperature, h, at least 1; 0 counts no aging.
  double life_h;
  /// Reference temperature, °C, 60 to 200.
  double reference_c;
  /// Warming that halves the life, K, 8 to 50.
  double halving_k;
} tw_screen_fluid;

/// Torque ratio of a converter against speed ratio, linear between its points; no points where it is not known.
typedef struct tw_screen_converter {
  /// Input over engine speed, rising from 0 or above.
  double speed_ratio[TW_MAX_SCREEN_POINTS];
  /// Input over engine torque.
  double torque_ratio[TW_MAX_SCREEN_POINTS];
  /// Number of points; 0 where the converter is not known.
  uint32_t count;
} tw_screen_converter;

/// One truck: gears, ratings, limits, rules. `tw_screen_unit_plan` checks it and reduces it for the rows.
typedef struct tw_screen_unit {
  /// Gears; the number of those in use follows.
  struct tw_screen_gear gears[TW_MAX_SCREEN_GEARS];
  /// Number of gears.
  uint32_t gear_count;
  /// Rated input (turbine) torque, N·m.
  double rated_input_nm;
  /// Rated output torque, N·m.
  double rated_output_nm;
  /// Limits.
  struct tw_screen_limits limits;
  /// Damage rule.
  struct tw_screen_damage damage;
  /// Aging rule of the fluid.
  struct tw_screen_fluid fluid;
  /// Converter.
  struct tw_screen_converter converter;
  /// Output speed per road speed with the axle and tire that are fitted, (1/min)/(km/h); 0 where it is not known.
  double output_rpm_per_km_h;
} tw_screen_unit;

/// A closed pack, per unit of input torque: it holds `per_kpa_nm` p + `per_rpm2_nm` n² − `held_back_nm` at the input.
typedef struct tw_planned_holding {
  /// Element of the train.
  uint8_t element;
  /// Torque on it per unit of input torque.
  double share;
  /// Input torque held per kPa, N·m.
  double per_kpa_nm;
  /// Input torque held per square of input speed, N·m.
  double per_rpm2_nm;
  /// Input torque that spring and seal take away, N·m.
  double held_back_nm;
} tw_planned_holding;

/// A gear, reduced.
typedef struct tw_planned_gear {
  /// Number of the gear.
  double number;
  /// 1 forward, -1 reverse.
  double direction;
  /// Least input over output speed of the gear's band.
  double band_low;
  /// Greatest.
  double band_high;
  /// Output torque per input torque under drive: ratio times efficiency.
  double drive_factor;
  /// Output torque per input torque in coast: ratio over efficiency.
  double coast_factor;
  /// Power lost under drive per input power.
  double drive_loss;
  /// Power lost in coast per input power.
  double coast_loss;
  /// Closed packs.
  struct tw_planned_holding holding[TW_MAX_SCREEN_HOLDING];
  /// Number of them.
  uint32_t holding_count;
  /// Damage of each set per turn of the input at the rated input torque.
  double damage_per_turn[TW_MAX_SETS];
} tw_planned_gear;

/// A checked unit, reduced to the constants of a row.
typedef struct tw_screen_plan {
  struct tw_planned_gear gears[TW_MAX_SCREEN_GEARS];
  uint32_t gear_count;
  double rated_input_nm;
  double rated_output_nm;
  double per_input_nm;
  double per_output_nm;
  struct tw_screen_limits limits;
  double slope;
  double greatest_use;
  struct tw_screen_fluid fluid;
  double per_halving_k;
  double point_speed[TW_MAX_SCREEN_POINTS];
  double point_torque[TW_MAX_SCREEN_POINTS];
  double point_slope[TW_MAX_SCREEN_POINTS];
  uint32_t point_count;
  double output_rpm_per_km_h;
} tw_screen_plan;

/// One sample of one truck. NaN is no value.
typedef struct tw_screen_row {
  /// Time, s, from any beginning; -4e9 to 4e9.
  double time_s;
  /// Engine speed, 1/min, 0 to 10 000.
  double engine_rpm;
  /// Speed of the transmission input, 1/min, 0 to 10 000.
  double input_rpm;
  /// Speed of the transmission output, 1/min, without sign, 0 to 10 000.
  double output_rpm;
  /// Engine torque at the flywheel, N·m, negative in overrun; -10 000 to 10 000.
  double engine_torque_nm;
  /// Gauge pressure at the closed packs, kPa, 0 to 10 000.
  double pressure_kpa;
  /// Fluid temperature, °C, -60 to 250.
  double temp_c;
  /// Road speed as the vehicle computes it, km/h, 0 to 400.
  double speed_km_h;
  /// Road speed by satellite, km/h, 0 to 400.
  double gps_km_h;
  /// Number of the commanded gear: forward from 1, reverse from -1 down, 0 neutral or park.
  double gear;
} tw_screen_row;

/// What one row says. NaN is "not formed".
typedef struct tw_screen_answer {
  /// Flags; their names are `SCREEN_FLAG_NAMES`.
  uint32_t flags;
  /// Place of the gear in effect among the gears of the unit; -1 none, -2 standing, -3 not to be told or not used.
  int8_t gear;
  /// Element with the least margin; -1 where none was formed.
  int8_t weakest;
  /// Time that the row stands for, s: since the row before it; 0 where that is unknown.
  double duration_s;
  /// Time of a gap, s: since the row before it, and nobody knows what happened.
  double gap_s;
  /// Torque at the input of the transmission, N·m.
  double input_torque_nm;
  /// Torque at its output, N·m, negative in reverse under drive.
  double output_torque_nm;
  /// Input torque over rated input torque, without sign.
  double input_share;
  /// Output torque over rated output torque, without sign.
  double output_share;
  /// The greater of the two.
  double greatest_share;
  /// Least of capacity over demand among the closed packs. Not a rating.
  double least_margin;
  /// Turns of the input at the rated torque that do the same damage.
  double turns_at_rated;
  /// Power that enters at the input, kW; negative in coast.
  double input_kw;
  /// Power lost in the converter, kW.
  double converter_loss_kw;
  /// Power lost in the gears, kW.
  double gear_loss_kw;
  /// Time at the reference temperature that ages the fluid the same, s.
  double aged_s;
  /// Speed by satellite over road speed.
  double gps_over_speed;
  /// Speed by satellite over that of the output shaft through axle and tire.
  double gps_over_output;
} tw_screen_answer;

/// Rows, mean and spread of a ratio of speeds.
typedef struct tw_screen_ratio {
  /// Rows that it was formed in.
  uint64_t rows;
  /// Mean; NaN without rows.
  double mean;
  /// Standard deviation of one row; NaN below two rows.
  double deviation;
} tw_screen_ratio;

/// The greatest or least value of a truck, and where it was.
typedef struct tw_screen_extreme {
  /// The value; NaN where there was none.
  double value;
  /// Time of its row, s.
  double time_s;
  /// Number of its row.
  uint64_t row;
  /// Place of the gear in effect; -1 none, -2 standing, -3 not to be told.
  int8_t gear;
  /// Element, where it is a margin; else -1.
  int8_t element;
} tw_screen_extreme;

/// The sums of one truck as numbers.
typedef struct tw_screen_totals {
  /// Rows.
  uint64_t rows;
  /// Rows by flag.
  uint64_t flag_rows[TW_SCREEN_FLAGS];
  /// Time of the rows with each flag, s.
  double flag_s[TW_SCREEN_FLAGS];
  /// Time in each gear of the unit, s.
  double gear_s[TW_MAX_SCREEN_GEARS];
  /// Turns of the input in each gear at the rated torque that do the same damage.
  double turns_at_rated[TW_MAX_SCREEN_GEARS];
  /// Damage of each set.
  double damage[TW_MAX_SETS];
  /// Time with a duration, s.
  double known_s;
  /// Time in gaps, s: unknown, neither rest nor use.
  double gap_s;
  /// Energy that entered at the input under drive, kJ.
  double input_energy_kj;
  /// Energy lost in the converter, kJ.
  double converter_loss_kj;
  /// Energy lost in the gears, kJ.
  double gear_loss_kj;
  /// Time at the reference temperature that ages the fluid the same, s.
  double aged_s;
  /// Share of its life that the fluid has used.
  double life_used;
  /// Distance by road speed, km.
  double speed_km;
  /// Distance by satellite, km.
  double gps_km;
  /// Satellite over road speed.
  struct tw_screen_ratio gps_over_speed;
  /// Satellite over output speed through axle and tire.
  struct tw_screen_ratio gps_over_output;
  /// Values that could not be used, by column and kind.
  uint64_t bad[TW_SCREEN_COLUMNS][TW_BAD_VALUE_KINDS];
  /// Greatest share of a rating.
  struct tw_screen_extreme greatest_share;
  /// Least margin.
  struct tw_screen_extreme least_margin;
  /// Hottest fluid, °C.
  struct tw_screen_extreme hottest;
} tw_screen_totals;

/// How a ratio of two speeds is measured.
typedef struct tw_ratio_rule {
  /// Least speed of both that counts, above 0.
  double least;
  /// Step of the shown speed, 0 or more.
  double quantum;
  /// Relative standard uncertainty of the true speed that is common to all rows.
  double u_rel;
  /// Rows of a block: as many as lean on one another, 1 or more.
  uint32_t block_rows;
} tw_ratio_rule;

/// A measured ratio of two speeds.
typedef struct tw_speeds_ratio {
  /// True over shown.
  struct tw_reading ratio;
  /// Part of its uncertainty from the scatter of the blocks.
  double scatter_u;
  /// Part from the step of the shown speed.
  double step_u;
  /// Part from the true speed.
  double true_u;
  /// Mean of the shown speed over the rows used.
  double mean_shown;
  /// Rows used.
  uint32_t used;
  /// Rows too slow.
  uint32_t slow;
  /// Rows with a missing, negative or infinite value.
  uint32_t missing;
  /// Whole blocks.
  uint32_t blocks;
} tw_speeds_ratio;

/// What lies between the transmission output and the road.
typedef struct tw_driveline {
  /// Axle ratio: output shaft (after the transfer case) over wheel.
  double axle_ratio;
  /// Transfer case ratio: transmission output over axle input; 1 without a transfer case and in its high range.
  double transfer_ratio;
  /// Rolling circumference of the driven tires, with its standard uncertainty.
  struct tw_reading circumference_mm;
} tw_driveline;

/// Something that explains a ratio of speeds.
typedef struct tw_ratio_cause {
  /// True over shown road speed that it makes.
  struct tw_reading road;
  /// Measured over true gear ratio that it makes, in every gear: 1 but for a sensor.
  double gear;
  /// Weight before the measurement, above 0; equal where nothing speaks for one.
  double weight;
} tw_ratio_cause;

/// Measured ratios of a truck.
typedef struct tw_ratios_seen {
  /// True over shown road speed.
  struct tw_reading road;
  /// Input over output speed, over the ratio of the gear in effect.
  struct tw_reading gear;
  /// Whether the gear ratios are known; else `gear` is not looked at.
  bool gear_known;
} tw_ratios_seen;

/// How a cause fits.
typedef struct tw_cause_fit {
  /// Chance among the causes listed.
  double chance;
  /// Deviation of the road ratio in standard uncertainties.
  double road_z;
  /// Deviation of the gear ratios in standard uncertainties; 0 where they are not known.
  double gear_z;
} tw_cause_fit;

/// The outcome of the weighing.
typedef struct tw_cause_found {
  /// What it came to.
  tw_cause_kind kind;
  /// The best cause.
  uint32_t best;
  /// How it fits.
  struct tw_cause_fit fit;
} tw_cause_found;

/// Clearance of two parts by their tolerances.
typedef struct tw_clearance {
  /// Diameter of the shaft, mm.
  struct tw_limits shaft_mm;
  /// Diameter of the bore, mm.
  struct tw_limits bore_mm;
  /// Least and greatest clearance, mm; negative is interference.
  struct tw_limits clearance_mm;
  /// Greatest clearance in service, mm; infinite where none is stated.
  double limit_mm;
  /// What that comes to.
  tw_fit_class fit_class;
} tw_clearance;

/// How the size of a part that was not measured is assumed to lie in its tolerance. A number of its own type, so that a junk
/// number from C is refused rather than undefined.
typedef int32_t tw_spread;
/// Anywhere in the tolerance with the same chance: u = a/√3.
#define TW_SPREAD_RECTANGULAR 0
/// Normal, centered, with three standard deviations to either limit: u = a/3.
#define TW_SPREAD_NORMAL_3_SIGMA 1

/// Clearance of two parts known with their uncertainty.
typedef struct tw_measured_clearance {
  /// Diameter of the shaft, mm.
  struct tw_reading shaft_mm;
  /// Diameter of the bore, mm.
  struct tw_reading bore_mm;
  /// Clearance, mm; negative is interference.
  struct tw_reading clearance_mm;
  /// Chance that the clearance is less than the least wanted.
  double chance_tight;
  /// Chance that the clearance is more than the greatest wanted.
  double chance_loose;
  /// The clearance against the clearance wanted.
  struct tw_judgment judgment;
  /// Where its uncertainty comes from: shaft, bore, in this order.
  struct tw_budget budget;
} tw_measured_clearance;

/// A part: its size at 20 °C and its expansion.
typedef struct tw_warm_part {
  /// Diameter at 20 °C, mm.
  struct tw_reading size_mm;
  /// Linear expansion, 1/K.
  struct tw_reading expansion_per_k;
} tw_warm_part;

/// Temperature of a fit.
typedef struct tw_warmth {
  /// Of the part with the bore, °C.
  struct tw_reading temp_c;
  /// How much warmer the shaft is, K; negative where it is colder, 0 where both are alike.
  struct tw_reading shaft_warmer_k;
} tw_warmth;

/// A clearance at temperature.
typedef struct tw_warm_clearance {
  /// Clearance at 20 °C, mm.
  double clearance_20c_mm;
  /// What the temperature adds, mm; negative where the fit closes.
  double change_mm;
  /// Sizes and clearance at temperature, judged. The budget lists shaft, bore, expansion of the shaft, expansion of the
  /// bore's part, temperature, and how much warmer the shaft is.
  struct tw_measured_clearance at_temperature;
} tw_warm_clearance;

/// What an instrument shows, at which temperatures.
typedef struct tw_warm_reading {
  /// What the instrument shows, mm.
  struct tw_reading shown_mm;
  /// Linear expansion of the part, 1/K.
  struct tw_reading part_expansion_per_k;
  /// Temperature of the part, °C.
  struct tw_reading part_temp_c;
  /// Linear expansion of the instrument, 1/K.
  struct tw_reading instrument_expansion_per_k;
  /// Temperature of the instrument, °C.
  struct tw_reading instrument_temp_c;
} tw_warm_reading;

/// A size corrected to 20 °C.
typedef struct tw_size20 {
  /// Size at 20 °C, mm.
  struct tw_reading size_mm;
  /// What was added to the reading, mm; negative for a warm part.
  double correction_mm;
  /// Where the uncertainty comes from: reading, expansion and temperature of the part, of the instrument.
  struct tw_budget budget;
} tw_size20;

/// Elastic constants of a metal.
typedef struct tw_elastic {
  /// Modulus of elasticity, MPa.
  double young_mpa;
  /// Poisson's ratio, 0 to 0.5.
  double poisson;
} tw_elastic;

/// Two round parts pressed together.
typedef struct tw_press_joint {
  /// Bore of the inner part, mm; 0 where it is solid.
  double inside_mm;
  /// Diameter where they meet, mm.
  double interface_mm;
  /// Outside of the outer part, mm; infinite where it is a thick body.
  double outside_mm;
  /// The inner part.
  struct tw_elastic inner;
  /// The outer part.
  struct tw_elastic outer;
} tw_press_joint;

/// A press fit under its interference.
typedef struct tw_pressed {
  /// Interference, diametral, mm; negative where the parts are free of each other by so much.
  double interference_mm;
  /// Pressure where the parts meet, MPa; 0 while they are free.
  double pressure_mpa;
  /// How much the bore of the inner part closes, mm.
  double bore_closure_mm;
  /// How much the outside grows, mm.
  double outside_growth_mm;
  /// Greatest hoop stress of the inner part, MPa: at its bore, negative (compression).
  double inner_hoop_mpa;
  /// Greatest hoop stress of the outer part, MPa: where the parts meet, positive (tension).
  double outer_hoop_mpa;
} tw_pressed;

/// What a press fit holds by friction.
typedef struct tw_retention {
  /// Axial force, N.
  double force_n;
  /// Torque, N·m.
  double torque_nm;
} tw_retention;

/// A metal: elastic constants and expansion.
typedef struct tw_metal {
  /// Elastic constants.
  struct tw_elastic elastic;
  /// Linear expansion, 1/K.
  struct tw_reading expansion_per_k;
} tw_metal;

/// A bushing pressed in a housing. Sizes at 20 °C.
typedef struct tw_pressed_bushing {
  /// Bore of the housing, mm.
  struct tw_reading housing_bore_mm;
  /// Outside of the bushing before it is pressed in, mm.
  struct tw_reading outside_mm;
  /// Wall of the bushing, mm.
  double wall_mm;
  /// Bore of the bushing in place, mm.
  struct tw_reading bore_mm;
  /// Outside of the housing around it, mm; infinite for a thick body.
  double housing_outside_mm;
  /// Metal of the housing.
  struct tw_metal housing;
  /// Metal of the bushing's shell.
  struct tw_metal shell;
} tw_pressed_bushing;

/// What a bushing holds by friction.
typedef struct tw_held_bushing {
  /// The seat at this temperature.
  struct tw_pressed pressed;
  /// Axial force at which it moves, N.
  struct tw_reading force_n;
  /// Torque at which it turns, N·m.
  struct tw_reading torque_nm;
  /// Where the uncertainty of the torque comes from: housing bore, outside of the bushing, expansion of the housing, of the
  /// shell, friction.
  struct tw_budget budget;
} tw_held_bushing;

/// Running clearance in a pressed bushing.
typedef struct tw_running_clearance {
  /// The seat at 20 °C.
  struct tw_pressed pressed_20c;
  /// The seat at temperature.
  struct tw_pressed pressed;
  /// Clearance at 20 °C and at temperature, judged. The budget lists shaft, bore, housing bore, outside of the bushing,
  /// expansion of the shaft, of the housing, of the shell, temperature, and how much warmer the shaft is.
  struct tw_warm_clearance clearance;
  /// What the clearance would be if the bore grew as the housing does, mm: too much.
  double as_housing_mm;
  /// What it would be if the bore grew as the free shell does, mm: too little while the seat still presses.
  double as_shell_mm;
} tw_running_clearance;

/// Limits of a size by its tolerance class.
typedef struct tw_iso_limits {
  /// Nominal size, mm.
  double nominal_mm;
  /// Lower deviation, EI or ei, mm.
  double lower_deviation_mm;
  /// Upper deviation, ES or es, mm.
  double upper_deviation_mm;
  /// Width of the tolerance, IT, mm.
  double tolerance_mm;
  /// Least and greatest size, mm.
  struct tw_limits size_mm;
  /// Grade, 5 to 11.
  uint32_t grade;
  /// Whether it is a hole: a capital letter.
  bool hole;
} tw_iso_limits;

/// A hole and a shaft of one nominal size.
typedef struct tw_iso_fit {
  /// The hole.
  struct tw_iso_limits hole;
  /// The shaft.
  struct tw_iso_limits shaft;
  /// Their clearance, without a service limit.
  struct tw_clearance clearance;
} tw_iso_fit;

/// Load and speed of a plain bushing.
typedef struct tw_bushing_load {
  /// Load over the projected area, MPa.
  double unit_load_mpa;
  /// Speed at which the surfaces slide, m/s.
  double sliding_m_s;
  /// Product of the two, MPa·m/s.
  double pv_mpa_m_s;
} tw_bushing_load;

/// The gap between a shaft and a bore.
typedef struct tw_gap {
  /// Diameter, mm.
  double diameter_mm;
  /// Clearance, diametral, mm.
  double clearance_mm;
  /// Length along which the oil flows, mm.
  double length_mm;
  /// Displacement of the axes over the radial clearance, 0 to 1.
  double eccentricity;
} tw_gap;

/// Flow along a gap.
typedef struct tw_gap_leak {
  /// Radial clearance, mm.
  double radial_clearance_mm;
  /// How much more than centered.
  double eccentricity_factor;
  /// Flow, L/min.
  double flow_l_min;
  /// Mean speed of the oil along the gap, m/s.
  double speed_m_s;
  /// Reynolds number of the gap.
  double reynolds;
} tw_gap_leak;

/// A fit when new and when worn: same length, pressure and oil.
typedef struct tw_worn_gap {
  /// Clearance when new, diametral, mm.
  struct tw_reading new_mm;
  /// Clearance now, mm.
  struct tw_reading worn_mm;
  /// Eccentricity when new, 0 to 1.
  double new_eccentricity;
  /// Eccentricity now, 0 to 1.
  double worn_eccentricity;
} tw_worn_gap;

/// How much more a worn fit leaks.
typedef struct tw_leak_ratio {
  /// Leak now over leak when new, at the best estimates.
  double ratio;
  /// Its standard uncertainty to first order. The cube is not straight: where it is above a tenth of the ratio, the interval
  /// says more.
  double first_order_u;
  /// Stated probability of the interval.
  double coverage;
  /// Lower end of the interval.
  double lower;
  /// Upper end of the interval.
  double upper;
} tw_leak_ratio;

/// A flash image that `tw_flash_open` accepted. It points into the caller's memory, which must stay as it is.
typedef struct tw_flash_image {
  /// First byte.
  const uint8_t *bytes;
  /// Number of bytes, without the checksum.
  size_t length;
} tw_flash_image;

/// A gear: what closes, and how much of the power it passes on.
typedef struct tw_gear {
  /// Mask of the elements that are applied.
  uint32_t closed;
  /// Mask of the one-way clutches that hold it under drive.
  uint32_t one_way;
  /// Efficiency on the road; 0 where the record states none.
  double efficiency;
} tw_gear;

/// A point of the shift schedule.
typedef struct tw_shift {
  /// Gear before.
  uint8_t from;
  /// Gear after.
  uint8_t to;
  /// Output-shaft speed at which it shifts, 1/min.
  double output_rpm;
} tw_shift;

/// An element that could be the one that slips in a gear.
typedef struct tw_live_suspect {
  /// Number of the element.
  uint8_t element;
  /// Slip of the element per slip at the input, signed: element slip = this · (n_in − i·n_out).
  float slip_per_input_slip;
} tw_live_suspect;

/// One gear: its ratio, and the elements that hold it.
typedef struct tw_live_gear {
  /// Number by which it is commanded: forward from 1, reverse from −1.
  int8_t number;
  /// Input speed / output speed, negative for reverse.
  float ratio;
  /// The closed elements; a gear that slips does so in one of them.
  struct tw_live_suspect suspects[TW_MAX_LIVE_SUSPECTS];
  /// Number of suspects.
  uint8_t suspect_count;
} tw_live_gear;

/// What an element's plates take up and give away.
typedef struct tw_live_element {
  /// Heat capacity of its steel plates, J/K; 0: not known, then no temperature is formed.
  float heat_capacity_j_k;
  /// Time in which the plates' excess over the fluid falls to 1/e, s; above 0 where the heat capacity is known.
  float cooling_s;
  /// Temperature of the plates above which they are overheated, °C.
  float limit_c;
} tw_live_element;

/// Friction of the linings against steel in the unit's fluid.
typedef struct tw_linings {
  /// Static friction: while it holds.
  struct tw_reading holding;
  /// Dynamic friction: while it slips.
  struct tw_reading slipping;
  /// Relative standard uncertainty of a capacity from the dimensions of pack and piston.
  double geometry_u_rel;
} tw_linings;

/// What the maker of the unit rates it for.
typedef struct tw_ratings {
  /// Torque at the turbine, N·m.
  double turbine_nm;
  /// Torque at the output, N·m.
  double output_nm;
  /// Torque at the turbine in reverse, N·m; 0 where none is stated.
  double reverse_turbine_nm;
  /// Greatest line pressure that the control gives, kPa.
  double line_max_kpa;
} tw_ratings;

/// What a record states of a fluid.
typedef struct tw_fluid {
  /// Density at 15 °C.
  double density_15c_kg_m3;
  /// Stated mean coefficient of volume from 15 °C; 0 where none is stated: the lubricating-oil group then gives it.
  double expansion_per_k;
  /// Kinematic viscosity at 40 °C.
  double viscosity_40c_mm2_s;
  /// Kinematic viscosity at 100 °C.
  double viscosity_100c_mm2_s;
} tw_fluid;

/// Free area of the sump against height above the overflow edge, linear between rows.
typedef struct tw_sump {
  /// Rows in use, 2 to 16.
  uint32_t rows;
  /// Heights, ascending, from below the edge (0) to above it.
  double height_mm[TW_SUMP_ROWS];
  /// Free area at each height, above 0.
  double free_area_cm2[TW_SUMP_ROWS];
} tw_sump;

/// What a record states of the fill of a unit.
///
/// `dry_l` is every liter in sump, converter, cooler and passages with the level at the overflow edge, engine idling, at
/// the reference temperature. All of it grows with temperature, and all of the growth goes into the sump's free area.
typedef struct tw_fill {
  /// Free area of the sump.
  struct tw_sump sump;
  /// Whole fill, filled to the edge at the reference temperature; cooler and lines included.
  double dry_l;
  /// Part that a drain takes.
  double service_l;
  /// Part that stands in cooler and lines.
  double cooler_and_lines_l;
  /// Part that runs back into the sump when the engine stops.
  double drainback_off_l;
  /// Least temperature of the level check.
  double check_low_c;
  /// Greatest temperature of the level check.
  double check_high_c;
  /// Temperature at which a right fill stands at the edge.
  double check_reference_c;
  /// Level below which the pickup draws air.
  double pickup_uncovers_mm;
  /// Level above which a rotating part dips.
  double gear_dips_mm;
} tw_fill;

/// How many of each an image holds; all 0 without a family.
typedef struct tw_family_counts {
  /// Variants.
  uint8_t variants;
  /// Parts.
  uint8_t parts;
  /// Marks to look for.
  uint8_t marks;
  /// Sizes to measure.
  uint8_t sizes;
  /// Fits.
  uint8_t fits;
} tw_family_counts;

/// A mark that a part carries.
typedef struct tw_part_mark {
  /// Labor to look, minutes.
  double minutes;
  /// The part that carries it.
  uint8_t part;
} tw_part_mark;

/// A size that a part has.
typedef struct tw_part_size {
  /// Labor to measure, minutes.
  double minutes;
  /// Standard uncertainty of the instrument, mm; 0 where it is not known: give that of the instrument at hand.
  double u_mm;
  /// The part that has it.
  uint8_t part;
} tw_part_size;

/// A shaft in a bore.
typedef struct tw_part_fit {
  /// Least and greatest diametral clearance wanted, mm: from 0 to the service limit, or below 0 of parts that hold by
  /// interference.
  struct tw_limits wanted_mm;
  /// The part inside.
  uint8_t shaft;
  /// The part around it.
  uint8_t bore;
  /// The size of the evidence that is the diameter of the shaft, or TW_NO_SIZE.
  uint8_t shaft_size;
  /// The size of the evidence that is the diameter of the bore, or TW_NO_SIZE.
  uint8_t bore_size;
} tw_part_fit;

/// Answer of the volume correction, with what it was computed from.
typedef struct tw_volume_correction {
  /// Coefficient of volume at base.
  double alpha_per_k;
  /// Temperature above base.
  double rise_k;
  /// Volume correction factor: volume at base over volume now, density now over density at base.
  double factor;
  /// Density now.
  double density_kg_m3;
} tw_volume_correction;

/// A volume that warms, and the vessel around it.
typedef struct tw_growth {
  /// Volume before.
  double volume_ml;
  /// Coefficient of volume of the fluid.
  double expansion_per_k;
  /// Coefficient of length of the vessel; 0 leaves the vessel out.
  double vessel_linear_per_k;
  /// Rise of temperature; negative when it cools.
  double rise_k;
} tw_growth;

/// Kinematic viscosity against temperature: lg lg(ν + added) = A − B lg T.
typedef struct tw_viscosity_line {
  /// Height A.
  double a;
  /// Slope B, above 0.
  double b;
  /// Constant added to the viscosity: 0.7, or 0.8 in the older form. A line is read with the constant it was drawn with.
  double added_mm2_s;
} tw_viscosity_line;

/// Two temperatures with the kinematic viscosity at each.
typedef struct tw_viscosity_points {
  /// First temperature.
  double first_c;
  /// Viscosity there.
  double first_mm2_s;
  /// Second temperature.
  double second_c;
  /// Viscosity there.
  double second_mm2_s;
} tw_viscosity_points;

/// The two viscosities that an index is computed from.
typedef struct tw_viscosity_pair {
  /// Kinematic viscosity at 40 °C, U.
  double viscosity_40c_mm2_s;
  /// Kinematic viscosity at 100 °C, Y.
  double viscosity_100c_mm2_s;
} tw_viscosity_pair;

/// Viscosity index, with what it was computed from.
typedef struct tw_viscosity_index {
  /// L: viscosity at 40 °C of the oil of index 0 that is as thick at 100 °C.
  double zero_40c_mm2_s;
  /// H: viscosity at 40 °C of the oil of index 100 that is as thick at 100 °C.
  double hundred_40c_mm2_s;
  /// Index before rounding.
  double index;
  /// Index as the standard reports it: whole, a half rounded to the even number.
  double reported;
} tw_viscosity_index;

/// A volume of one fluid in a mixture.
typedef struct tw_portion {
  /// The fluid.
  struct tw_fluid fluid;
  /// Its volume; all portions at one temperature.
  double volume_ml;
} tw_portion;

/// A volume of a fluid of known viscosity.
typedef struct tw_viscosity_portion {
  /// Kinematic viscosity; all portions at one temperature.
  double viscosity_mm2_s;
  /// Its volume.
  double volume_ml;
} tw_viscosity_portion;

/// A volume of a fluid of known friction.
typedef struct tw_friction_portion {
  /// Coefficient of friction of the plates in this fluid alone.
  double friction;
  /// Its volume.
  double volume_ml;
} tw_friction_portion;

/// Level at a temperature, with what it was computed from.
typedef struct tw_level_at {
  /// All the fluid at this temperature.
  double total_ml;
  /// Part of it above the overflow edge, negative below.
  double above_edge_ml;
  /// Level above the overflow edge.
  double level_mm;
  /// Level that a sump of constant area, that at the edge, would show: the usual shortcut, to see its error.
  double constant_area_level_mm;
  /// Left until the rotating part dips.
  double gear_margin_mm;
  /// Left until the pickup draws air.
  double pickup_margin_mm;
} tw_level_at;

/// What was read at a level check, engine idling, vehicle level.
typedef struct tw_level_check {
  /// Temperature of the fluid, °C.
  struct tw_reading temp_c;
  /// Level above the overflow edge, mm; 0 when it just runs over. Off level ground take `tilt_shift_mm` away first.
  struct tw_reading level_mm;
  /// True free area over that of the table: 1 with its standard uncertainty.
  struct tw_reading area_scale;
} tw_level_check;

/// What to add or drain, with what it was computed from.
typedef struct tw_adjustment {
  /// All the fluid there is now, at this temperature.
  double present_ml;
  /// All the fluid there should be now, at this temperature.
  double right_ml;
  /// Add this now, at this temperature, to be right; drain it where negative.
  struct tw_reading add_now_ml;
  /// Too much (negative: too little) as it will be at the reference temperature, judged against what a level set to the
  /// edge anywhere in the check window would leave.
  struct tw_judgment excess_ml;
  /// Where the uncertainty of the excess comes from: temperature, level, area, in this order.
  struct tw_budget budget;
  /// Probability that the temperature lies in the check window.
  double chance_in_window;
} tw_adjustment;

/// Volumes to pour, at the temperature of the fluid in the can.
typedef struct tw_pour_volumes {
  /// Into an empty unit.
  double dry_ml;
  /// After a drain.
  double service_ml;
  /// More of it where cooler and lines were emptied too.
  double cooler_ml;
  /// Share of old fluid that a service leaves.
  double old_share;
} tw_pour_volumes;

/// A hazard in words.
typedef struct tw_hazard_text {
  /// Short name.
  struct tw_text title;
  /// One sentence to print beside a result.
  struct tw_text caution;
} tw_hazard_text;

/// The change of one figure.
typedef struct tw_change {
  /// Before.
  double before;
  /// After.
  double after;
  /// After over before; infinite where nothing was before.
  double ratio;
  /// Which way is better.
  tw_better better;
  /// What the change does.
  tw_effect effect;
} tw_change;

/// A needle thrust bearing: one row of needles between two flat races.
typedef struct tw_needle_thrust {
  /// Needles, 2 to 400.
  uint32_t needles;
  /// Diameter of a needle, mm.
  double needle_diameter_mm;
  /// Length of a needle that bears on the race, mm: without its rounded ends.
  double needle_length_mm;
  /// Diameter through the middle of the needles, mm.
  double pitch_diameter_mm;
} tw_needle_thrust;

/// One needle thrust bearing against another.
typedef struct tw_needle_change {
  /// Static capacity, N.
  struct tw_change static_n;
  /// Dynamic capacity, N.
  struct tw_change dynamic_n;
  /// Life at the same load, of the one before.
  struct tw_change life;
  /// The same with one f_c for both: what needles, length and diameter alone do.
  struct tw_change life_by_size;
  /// Outside diameter that the needles sweep, mm: both faces must reach it.
  struct tw_change outside_mm;
  /// Length of a needle, mm: both faces must be as wide.
  struct tw_change face_mm;
} tw_needle_change;

/// A round shaft.
typedef struct tw_shaft {
  /// Outside diameter, mm: the smallest that carries the torque.
  double outside_mm;
  /// Inside diameter, mm; 0 for a solid shaft.
  double inside_mm;
} tw_shaft;

/// One shaft against another.
typedef struct tw_shaft_change {
  /// Stress of each at its own torque, MPa.
  struct tw_change stress_own_mpa;
  /// Stress of each at the torque of the one before, MPa.
  struct tw_change stress_same_mpa;
  /// Torque that each is asked to carry, N·m.
  struct tw_change torque_nm;
  /// Polar moment, mm⁴: stiffness of the same length.
  struct tw_change polar_moment_mm4;
  /// Metal of the section, mm²: mass of the same length.
  struct tw_change section_mm2;
} tw_shaft_change;

/// A pack with the clearance that it is set to.
typedef struct tw_set_pack {
  /// The pack.
  struct tw_pack pack;
  /// Clearance of the whole pack, mm.
  double clearance_mm;
} tw_set_pack;

/// One clutch pack against another.
typedef struct tw_pack_change {
  /// Capacity at the same pressure and friction, N·m.
  struct tw_change capacity_nm;
  /// Pressure at which each holds what the one before can, kPa.
  struct tw_change pressure_kpa;
  /// Area over which the heat of a shift spreads, mm².
  struct tw_change friction_area_mm2;
  /// Friction faces: each drags while the pack is open.
  struct tw_change faces;
  /// Clearance for each face, mm: the less, the more it drags.
  struct tw_change clearance_per_face_mm;
  /// Oil that closes the clearance, mL: the more, the later the shift.
  struct tw_change fill_ml;
} tw_pack_change;

/// Teeth of a helical planetary set.
typedef struct tw_helical {
  /// Normal module, mm.
  double module_mm;
  /// Helix angle at the pitch circle, degrees, 0 to 45.
  double helix_deg;
} tw_helical;

/// The sun of a planetary set with what it meshes.
typedef struct tw_helical_sun {
  /// Teeth of the sun.
  uint16_t teeth;
  /// Planets around it, 1 to 20.
  uint8_t planets;
  /// Module and helix.
  struct tw_helical helical;
  /// Face width, mm.
  double face_mm;
} tw_helical_sun;

/// One sun against another.
typedef struct tw_sun_change {
  /// Force of a planet over face width and module, MPa.
  struct tw_change unit_load_mpa;
  /// Force along the axis, N.
  struct tw_change axial_n;
  /// Normal module, mm: the size of a tooth.
  struct tw_change module_mm;
  /// Planets: pins, needles and washers to fit and to check.
  struct tw_change planets;
} tw_sun_change;

/// One of two bodies that touch along a line.
typedef struct tw_contact_body {
  /// Radius where they touch, mm: positive when round outward, negative when hollow (a bore), infinite when flat.
  double radius_mm;
  /// Modulus of elasticity, MPa.
  double young_mpa;
  /// Poisson's ratio, 0 to 0.5.
  double poisson;
} tw_contact_body;

/// Two bodies that touch along a line.
typedef struct tw_line_contact {
  /// One body.
  struct tw_contact_body first;
  /// The other.
  struct tw_contact_body second;
  /// Length of the line, mm.
  double length_mm;
} tw_line_contact;

/// What a force does where two bodies touch along a line.
typedef struct tw_line_pressure {
  /// Radius of a cylinder on a flat that touches alike, mm.
  double effective_radius_mm;
  /// Contact modulus of both materials together, MPa.
  double contact_modulus_mpa;
  /// Half of the width of the contact, mm.
  double half_width_mm;
  /// Pressure in the middle of the contact, MPa.
  double peak_mpa;
  /// Greatest shear stress, below the surface, MPa.
  double shear_mpa;
  /// How deep below the surface it lies, mm.
  double shear_depth_mm;
} tw_line_pressure;

/// Force of a helical wheel along its axis.
typedef struct tw_axial_thrust {
  /// Pitch radius, mm.
  double pitch_radius_mm;
  /// Force at the pitch circle, all planets together, N.
  double tangential_n;
  /// Force along the axis, N, without sign.
  double axial_n;
} tw_axial_thrust;

/// A wheel of a helical set of a train.
typedef struct tw_set_wheel {
  /// Number of the set.
  uint8_t set;
  /// Which wheel of it.
  tw_wheel wheel;
  /// The teeth that this wheel meshes.
  struct tw_helical helical;
} tw_set_wheel;

/// Force of a wheel of a set in a gear.
typedef struct tw_wheel_thrust {
  /// Torque of the set on the wheel, N·m, forward positive.
  double torque_nm;
  /// Its force.
  struct tw_axial_thrust thrust;
  /// Speed of the wheel against the carrier, 1/min, without sign: what a bearing between the two sees.
  double carrier_slip_rpm;
} tw_wheel_thrust;

/// Rollers or sprags between two races.
typedef struct tw_wedge {
  /// Rollers or sprags.
  uint32_t count;
  /// The cylindrical race where they bear hardest, its radius negative for an outer race. Sprags: the inner race.
  struct tw_contact_body race;
  /// Roller or sprag where it bears on that race.
  struct tw_contact_body body;
  /// Length of the contact line, mm.
  double length_mm;
  /// Roller: half of the angle between ramp and race. Sprag: strut angle at that race. Degrees.
  double half_angle_deg;
} tw_wedge;

/// Forces and pressure of one roller or sprag.
typedef struct tw_wedge_load {
  /// Share of the torque at the race, N.
  double tangential_n;
  /// Force across the contact, N.
  double normal_n;
  /// Friction without which it does not lock.
  double friction_needed;
  /// The contact under that force.
  struct tw_line_pressure pressure;
} tw_wedge_load;

/// Whether a one-way clutch holds, and what that rests on.
typedef struct tw_one_way_hold {
  /// Torque at the allowed stress, N·m. Not a rating.
  double capacity_nm;
  /// Torque to hold, N·m.
  struct tw_reading need_nm;
  /// Capacity over demand.
  double margin;
  /// The torque to spare, capacity less demand, against 0.
  struct tw_judgment judgment;
  /// Where the uncertainty of the torque to spare comes from: allowed stress, geometry, demand, in this order.
  struct tw_budget budget;
} tw_one_way_hold;

/// Struts that drop into notches.
typedef struct tw_ratchet {
  /// Struts, equally spaced.
  uint32_t struts;
  /// Notches, equally spaced.
  uint32_t notches;
  /// Struts that carry, 1 to those that drop in together: their tolerances rarely let all of them.
  uint32_t carrying;
  /// Width of a strut, mm.
  double strut_width_mm;
  /// Thickness of a strut, mm.
  double strut_thickness_mm;
  /// Radius at which the struts carry, mm.
  double pitch_radius_mm;
  /// Angle of a strut to the tangent, degrees; 0 where it lies along it.
  double strut_deg;
} tw_ratchet;

/// How a ratchet indexes.
typedef struct tw_ratchet_index {
  /// Greatest angle that it turns back before a strut drops in, degrees.
  double backlash_deg;
  /// Positions on a turn: the least common multiple of struts and notches.
  uint32_t positions;
  /// Struts that drop in together: the greatest common divisor.
  uint32_t together;
} tw_ratchet_index;

/// Forces and stress of one strut.
typedef struct tw_strut_load {
  /// Share of the torque at the pitch radius, N.
  double tangential_n;
  /// Force along the strut, N.
  double strut_n;
  /// Force that pushes the races apart, N.
  double separating_n;
  /// Compression of the strut, MPa.
  double stress_mpa;
} tw_strut_load;

/// How a one-way clutch closes its backlash.
typedef struct tw_take_up {
  /// Time to close it, s.
  double time_s;
  /// Speed at the end, 1/min.
  double speed_rpm;
  /// Energy that the parts take up, J.
  double energy_j;
} tw_take_up;

/// A one-way clutch in a gear.
typedef struct tw_one_way_duty {
  /// What is asked of it.
  tw_one_way_role role;
  /// The closed element beside it, where it stands; [`OneWayDuty::NOTHING_BESIDE`] elsewhere.
  uint8_t beside;
  /// What the gear turns into with the clutch fitted the wrong way round.
  tw_state_kind backwards;
  /// Torque on its first member per unit of input torque: what it carries, or would in place of the element beside it.
  struct tw_fraction share;
  /// Speed of its first member relative to the second per unit of input speed.
  struct tw_fraction slip;
} tw_one_way_duty;
/// No closed element stands beside it.
#define TW_ONE_WAY_DUTY_NOTHING_BESIDE UINT8_MAX

/// What the grade puts on the park lock.
typedef struct tw_park_load {
  /// Angle of the grade, degrees.
  double grade_deg;
  /// Share of the weight along the grade, N.
  double grade_n;
  /// Rolling radius of the tires, mm.
  double wheel_radius_mm;
  /// Torque at the park gear while the vehicle stands still, N·m.
  double static_nm;
  /// The same times the rocking factor, N·m.
  double torque_nm;
} tw_park_load;

/// Park gear: the tooth is a beam that stands on the root circle.
typedef struct tw_park_gear {
  /// Teeth.
  uint32_t teeth;
  /// Face width that the pawl covers, mm.
  double face_mm;
  /// Thickness of a tooth at its root, mm.
  double tooth_root_mm;
  /// Diameter at which the pawl bears, mm.
  double contact_diameter_mm;
  /// Root diameter, mm.
  double root_diameter_mm;
  /// Tip diameter, mm.
  double tip_diameter_mm;
} tw_park_gear;

/// Stress at the root of a park-gear tooth.
typedef struct tw_park_stress {
  /// Tangential force of the pawl on the tooth, N.
  double tooth_n;
  /// Lever of that force over the root, mm.
  double arm_mm;
  /// Bending stress with the stress factor, MPa.
  double bending_mpa;
  /// Mean shear stress, MPa.
  double shear_mpa;
  /// Equivalent stress, MPa.
  double von_mises_mpa;
} tw_park_stress;

/// A vehicle on a grade that only the park lock holds.
typedef struct tw_parked {
  /// Mass of truck, load and unbraked trailer, kg.
  struct tw_reading mass_kg;
  /// Grade, %: rise over horizontal run, 0 to 100.
  double grade_pct;
  /// Greatest load while the vehicle rocks over the static load, 1 to 5. No default: whoever judges chooses it.
  double rocking_factor;
  /// Axle, transfer case and tire.
  struct tw_driveline driveline;
} tw_parked;

/// What a park-gear tooth bears.
typedef struct tw_tooth_strength {
  /// Yield stress, MPa.
  double yield_mpa;
  /// Stress at the fillet over that of the plain beam, 1 to 5; 1 where only the beam is compared with yield.
  double stress_factor;
  /// Relative standard uncertainty of the stress against the yield stress: tooth form, hardness, model.
  double stress_u_rel;
} tw_tooth_strength;

/// Whether a park gear holds, and what that rests on.
typedef struct tw_park_hold {
  /// What the grade puts on it.
  struct tw_park_load load;
  /// What that does at the root.
  struct tw_park_stress stress;
  /// Yield stress over equivalent stress.
  double margin;
  /// The equivalent stress against the yield stress.
  struct tw_judgment judgment;
  /// Where the uncertainty of the stress comes from: tooth, mass, tire, in this order.
  struct tw_budget budget;
  /// Grade at which the best estimate of the stress reaches yield, %; 100 for that or steeper.
  double largest_grade_pct;
  /// Largest grade that is a GO under the rule, %; 100 for that or steeper.
  double proven_grade_pct;
} tw_park_hold;

/// What happens before the pawl drops in.
typedef struct tw_free_roll {
  /// Road that one tooth of the park gear is, mm: the vehicle rolls no farther before the pawl drops in.
  double roll_mm;
  /// Energy of the vehicle by then, J.
  double energy_j;
  /// Its speed by then, km/h.
  double speed_km_h;
} tw_free_roll;

/// What another park gear gains and costs; each the second over the first.
typedef struct tw_park_comparison {
  /// Torque at the same bending stress.
  double bending_ratio;
  /// Torque at the same mean shear stress.
  double shear_ratio;
  /// Torque at the same equivalent stress.
  double torque_ratio;
  /// Free roll.
  double free_roll_ratio;
} tw_park_comparison;

/// The pawl.
typedef struct tw_pawl {
  /// Angle of the loaded flank to the radius of the gear, degrees: it pushes the pawl out.
  double flank_deg;
  /// Least and greatest friction between pawl and tooth.
  struct tw_limits friction;
  /// Moment of inertia about its pivot, kg·m².
  double inertia_kg_m2;
  /// Torque that throws it in, N·m.
  double spring_nm;
  /// Angle through which it drops, degrees.
  double drop_deg;
} tw_pawl;

/// Whether a loaded tooth pushes the pawl out.
typedef struct tw_ejection {
  /// Force that pushes the pawl out at the greatest friction, N; negative where it then sticks.
  double least_n;
  /// The same at the least friction, N: what the cone or roller behind the pawl must hold.
  double most_n;
  /// The same two over the tooth force.
  double least_share;
  /// See `least_share`.
  double most_share;
  /// Greatest friction at which the pawl still leaves by itself.
  double friction_to_stick;
  /// The pawl leaves under load over the whole range of friction.
  bool releases;
} tw_ejection;

/// At which speed the pawl still drops in.
typedef struct tw_latch {
  /// Time of the drop, s.
  double drop_time_s;
  /// Output-shaft speed above which it skips over the teeth, 1/min.
  double output_rpm;
  /// Road speed of it, km/h.
  double road_km_h;
} tw_latch;

/// Stress in a shaft under torque.
typedef struct tw_torsion {
  /// Polar moment of area, mm⁴.
  double polar_moment_mm4;
  /// Polar section modulus, mm³: moment over radius.
  double section_modulus_mm3;
  /// Shear stress at the surface, MPa.
  double stress_mpa;
  /// Shear stress at the bore, MPa; 0 in the middle of a solid shaft.
  double bore_stress_mpa;
} tw_torsion;

/// A hollow shaft against a solid one of the same outside diameter.
typedef struct tw_hollow_over_solid {
  /// Torque that it carries at the same stress, and stiffness.
  double strength;
  /// Mass of the same length.
  double mass;
} tw_hollow_over_solid;

/// What a shaft must carry, and what it is made of.
typedef struct tw_shaft_load {
  /// Torque, N·m, above 0.
  struct tw_reading torque_nm;
  /// Yield stress in shear, MPa, above 0.
  struct tw_reading shear_yield_mpa;
  /// Peak stress over nominal stress, 1 to 10, chosen: 1 counts no spline, shoulder or hole.
  double stress_factor;
  /// Relative standard uncertainty of the stress from sizes and form, 0 to 1.
  double stress_u_rel;
} tw_shaft_load;

/// Whether a shaft stays below yield, and what that rests on.
typedef struct tw_shaft_hold {
  /// Nominal stress.
  struct tw_torsion torsion;
  /// Peak stress over yield.
  double yield_share;
  /// Torque at which the peak reaches yield, N·m.
  double torque_at_yield_nm;
  /// Stress factor at which this torque reaches yield: what splines and shoulders may add.
  double factor_at_yield;
  /// The stress to spare, yield less peak, against 0.
  struct tw_judgment judgment;
  /// Where the uncertainty comes from: torque, sizes and form, yield, in this order.
  struct tw_budget budget;
} tw_shaft_hold;

/// A splined joint.
typedef struct tw_spline {
  /// Teeth, 4 to 200.
  uint32_t teeth;
  /// Outer diameter of the contact, mm: the smaller of the shaft's outside and the hub's root.
  double major_mm;
  /// Inner diameter of the contact, mm: the larger of the hub's bore and the shaft's root.
  double minor_mm;
  /// Pitch diameter, mm.
  double pitch_diameter_mm;
  /// Length in contact, mm.
  double length_mm;
} tw_spline;

/// Load of a spline.
typedef struct tw_spline_load {
  /// Height of contact, mm.
  double height_mm;
  /// Radius at which the flanks carry, mm.
  double mean_radius_mm;
  /// Thickness of a tooth at the pitch circle, mm.
  double thickness_mm;
  /// Force on each tooth that carries, N.
  double tooth_n;
  /// Pressure on the flanks, MPa.
  double bearing_mpa;
  /// Mean shear stress through the teeth, MPa.
  double shear_mpa;
} tw_spline_load;

/// Capacity of a needle thrust bearing with what made it. Not a maker's rating.
typedef struct tw_needle_capacity {
  /// Inside diameter that the needles sweep, mm.
  double inside_mm;
  /// Outside diameter that the needles sweep, mm: the race face must reach it.
  double outside_mm;
  /// Space between two needles at their inner ends, mm; what is left for the cage.
  double gap_mm;
  /// Needle diameter over pitch diameter.
  double size_ratio;
  /// The standard's f_c, N/mm² by its powers of millimeters.
  double dynamic_factor;
  /// Static axial capacity C_0a, N.
  double static_n;
  /// Dynamic axial capacity C_a, N.
  double dynamic_n;
} tw_needle_capacity;

/// Whether a bearing stands a load at rest.
typedef struct tw_needle_hold {
  /// Capacity.
  struct tw_needle_capacity capacity;
  /// Static capacity over load.
  double static_factor;
  /// The load against the static capacity over the least factor.
  struct tw_judgment judgment;
} tw_needle_hold;

/// Life under a load.
typedef struct tw_rating_life {
  /// Load over dynamic capacity, 0.5 at most.
  double load_share;
  /// Life that nine of ten reach, million revolutions.
  double life_mrev;
  /// The same in hours; infinite at rest.
  double life_h;
} tw_rating_life;

/// Whether a bearing reaches a life.
typedef struct tw_needle_lasts {
  /// Capacity.
  struct tw_needle_capacity capacity;
  /// Life at the best estimate of the load.
  struct tw_rating_life life;
  /// Load at which the life wanted is just reached, N.
  double load_for_life_n;
  /// The load against it.
  struct tw_judgment judgment;
} tw_needle_lasts;

/// One stage of a duty.
typedef struct tw_load_stage {
  /// Load, N.
  double load_n;
  /// Speed of one race against the other, 1/min, without sign.
  double speed_rpm;
  /// Share of the time, in any unit.
  double share;
} tw_load_stage;

/// Constant load and speed that stand for a duty.
typedef struct tw_mean_load {
  /// Mean load, N.
  double load_n;
  /// Mean speed, 1/min.
  double speed_rpm;
  /// Greatest load of a stage that takes time, N: the static check takes this one.
  double greatest_n;
  /// Stage that does most of the damage.
  uint32_t governing;
  /// Its part of the damage, 0 to 1.
  double governing_share;
} tw_mean_load;

/// An involute spur tooth, 20° full depth.
typedef struct tw_spur_tooth {
  /// Teeth of the gear.
  uint32_t teeth;
  /// Module, mm: pitch diameter over teeth; 25.4 over the diametral pitch.
  double module_mm;
  /// Face width, mm.
  double face_mm;
} tw_spur_tooth;

/// What a tangential force does to an involute tooth.
typedef struct tw_tooth_bending {
  /// Lewis form factor.
  double form_factor;
  /// Thickness at the pitch line, mm: π/2 modules.
  double thickness_mm;
  /// Bending stress at the root, MPa.
  double bending_mpa;
  /// Mean shear stress over the pitch-line thickness, MPa.
  double shear_mpa;
} tw_tooth_bending;

/// A thrust washer.
typedef struct tw_thrust_washer {
  /// Outside diameter of the face that bears, mm.
  double outside_mm;
  /// Inside diameter of the face that bears, mm.
  double inside_mm;
  /// Share of that face that grooves and holes leave, above 0 to 1.
  double face_share;
} tw_thrust_washer;

/// Load on the face of a thrust washer.
typedef struct tw_washer_load {
  /// Face that bears, mm².
  double area_mm2;
  /// Mean pressure on it, MPa.
  double unit_load_mpa;
  /// Diameter at which the sliding speed is taken, mm.
  double mean_diameter_mm;
  /// Sliding speed there, m/s.
  double sliding_m_s;
  /// Pressure times sliding speed, MPa·m/s.
  double pv_mpa_m_s;
} tw_washer_load;

/// Flow from a measure and a stopwatch.
typedef struct tw_timed_flow {
  /// The flow, L/min.
  struct tw_reading flow_l_min;
  /// Its uncertainty: volume, time, in this order.
  struct tw_budget budget;
} tw_timed_flow;

/// Least return flow of a cooler by fluid temperature, linear between rows.
typedef struct tw_cooler_limits {
  /// Rows in use, 2 to 16.
  uint32_t rows;
  /// Temperatures, rising.
  double temperature_c[TW_COOLER_ROWS];
  /// Least flow at each, 0 or more.
  double least_flow_l_min[TW_COOLER_ROWS];
} tw_cooler_limits;

/// Least flow at a temperature.
typedef struct tw_least_flow {
  /// Least flow, L/min.
  double least_l_min;
  /// How it changes with the temperature, L/min per kelvin; at a row the steeper side.
  double least_l_min_per_k;
} tw_least_flow;

/// What was read at the return line.
typedef struct tw_cooler_reading {
  /// Volume caught, L, above 0.
  struct tw_reading volume_l;
  /// Time it took, s, above 0.
  struct tw_reading time_s;
  /// Temperature of the fluid, °C.
  struct tw_reading temp_c;
} tw_cooler_reading;

/// Whether the cooler passes enough, and what that rests on.
typedef struct tw_cooler_check {
  /// The flow, L/min.
  struct tw_reading flow_l_min;
  /// What is asked at this temperature.
  struct tw_least_flow least;
  /// Flow less what is asked, L/min, against 0.
  struct tw_judgment judgment;
  /// Its uncertainty: volume, time, temperature, in this order.
  struct tw_budget budget;
} tw_cooler_check;

/// A narrow slot between two plane walls.
typedef struct tw_slot {
  /// Across the flow, mm.
  double width_mm;
  /// Height, mm.
  double clearance_mm;
  /// Along the flow, mm.
  double length_mm;
} tw_slot;

/// Flow through a slot.
typedef struct tw_slot_flow {
  /// What the pressure drives, L/min.
  double pressure_l_min;
  /// What the moving wall takes along, L/min; negative against the pressure.
  double wall_l_min;
  /// Both, L/min.
  double flow_l_min;
  /// Mean speed, m/s.
  double speed_m_s;
  /// Reynolds number.
  double reynolds;
} tw_slot_flow;

/// Flow along a gap whose shaft slides.
typedef struct tw_sliding_gap {
  /// What the pressure drives.
  struct tw_gap_leak leak;
  /// What the shaft takes along, L/min; negative against the pressure.
  double wall_l_min;
  /// Both, L/min.
  double flow_l_min;
} tw_sliding_gap;

/// A round orifice.
typedef struct tw_orifice {
  /// Diameter, mm.
  double diameter_mm;
  /// Discharge coefficient, above 0 to 1; `TW_SHARP_EDGE_DISCHARGE` for a sharp edge and turbulent flow.
  double discharge;
} tw_orifice;

/// Flow through an orifice.
typedef struct tw_orifice_flow {
  /// Area of the hole, mm².
  double area_mm2;
  /// Speed of the jet without losses, m/s.
  double jet_m_s;
  /// Flow, L/min.
  double flow_l_min;
  /// Reynolds number of diameter and jet speed.
  double reynolds;
  /// The flow is turbulent. If not, the discharge is smaller than a sharp edge's and the flow less than this.
  bool turbulent;
} tw_orifice_flow;

/// A metering edge.
typedef struct tw_metering {
  /// Discharge coefficient of the edge, 0 to 1.
  double discharge;
  /// Length of the edge, mm: the circumference of the land where the port goes all round.
  double width_mm;
  /// Opening, mm; 0 for no flow force.
  double opening_mm;
  /// Angle of the jet to the axis, degrees; `TW_SHARP_EDGE_JET_DEG` for a sharp edge.
  double jet_deg;
} tw_metering;

/// A face of a valve on which pressure acts.
typedef struct tw_land {
  /// Outer diameter, mm; 0 for no land.
  double outer_diameter_mm;
  /// Diameter of the step or stem that takes area away, mm; 0 for a full face.
  double inner_diameter_mm;
} tw_land;

/// A pressure regulator valve.
typedef struct tw_regulator {
  /// Spring force with the valve at its stop, N.
  double preload_n;
  /// Spring rate, N/mm.
  double rate_n_mm;
  /// Stroke from the stop to where it regulates, mm.
  double stroke_mm;
  /// Face on which line pressure acts against the spring.
  struct tw_land balance;
  /// Face on which the boost pressure helps the spring.
  struct tw_land boost;
  /// Edge over which it dumps.
  struct tw_metering metering;
} tw_regulator;

/// Balance of a regulator.
typedef struct tw_regulated {
  /// Spring at the stroke, N.
  double spring_n;
  /// Boost on its land, N.
  double boost_n;
  /// Force of the flow, N; it helps the spring.
  double flow_n;
  /// Area of the balance face, mm².
  double balance_area_mm2;
  /// Area of the boost face, mm².
  double boost_area_mm2;
  /// Pressure that it holds, kPa.
  double pressure_kpa;
} tw_regulated;

/// Line pressure of a gear.
typedef struct tw_gear_pressure {
  /// Element that needs most pressure.
  uint8_t element;
  /// Pressure that it needs.
  struct tw_pressure_needed needed;
  /// What the gauge reads, kPa.
  struct tw_reading reading_kpa;
  /// Reading less need, kPa; negative where it is short.
  double spare_kpa;
  /// Reading over need; infinite where the springs alone are more than the torque asks.
  double reserve;
  /// The most that the control can give, less the need, kPa; infinite where it is not known.
  double control_spare_kpa;
  /// Elements of the gear whose share the train does not determine: nothing is said about them.
  uint32_t unknown;
  /// Chance that the gear holds at the reading: the least of its elements'.
  double chance;
  /// The worst verdict of its elements; no GO while the share of one is not known.
  tw_verdict verdict;
} tw_gear_pressure;

/// The state of the unit at a reading.
typedef struct tw_pressure_point {
  /// Elements applied, one bit each, as in a state of the train.
  uint32_t closed;
  /// At stall or full throttle; else at idle.
  bool at_stall;
  /// Fluid temperature, °C.
  double temp_c;
} tw_pressure_point;

/// A pressure reading and what it should be.
typedef struct tw_pressure_reading {
  /// The state of the unit.
  struct tw_pressure_point at;
  /// What the gauge reads, kPa, with its uncertainty.
  struct tw_reading reading_kpa;
  /// What it should read in that state, kPa.
  struct tw_limits limits_kpa;
} tw_pressure_reading;

/// How readings are weighed.
typedef struct tw_pattern_rule {
  /// How often a suspect shows what it predicts, above 1/3 to 1 exclusive. No default: whoever weighs chooses it.
  double kept;
  /// Temperature from which the oil counts as hot, °C.
  double hot_from_c;
} tw_pattern_rule;

/// A suspect and its weight.
typedef struct tw_pressure_suspect {
  /// What may be wrong.
  tw_suspect_kind kind;
  /// Element of the circuit; 0 for a kind without one.
  uint8_t element;
  /// Weight among all suspects; they sum to 1.
  double share;
  /// Readings that show what it predicts.
  uint32_t fits;
  /// Readings that show something else.
  uint32_t against;
  /// Suspects with the same number predict the same in every reading: these readings cannot tell them apart.
  uint32_t group;
} tw_pressure_suspect;

/// Suspects in the order of their weight.
typedef struct tw_pressure_suspects {
  /// The suspects; only the first `count` are used.
  struct tw_pressure_suspect ranked[TW_MAX_PRESSURE_SUSPECTS];
  /// Number of suspects.
  uint32_t count;
  /// Elements that are applied in no reading, one bit each of those asked about: nothing is said about their circuits.
  uint32_t untested;
} tw_pressure_suspects;

/// What a reading worth taking would tell.
typedef struct tw_next_reading {
  /// Its place among the candidates.
  uint32_t candidate;
  /// What it is expected to tell, bits; 0 where no candidate tells anything.
  double bits;
} tw_next_reading;

/// An internal gear pump: a gerotor, or pinion and ring with a crescent.
typedef struct tw_internal_gear_pump {
  /// Teeth of the inner gear, 2 to 200.
  uint32_t inner_teeth;
  /// Teeth of the outer gear; one more in a gerotor.
  uint32_t outer_teeth;
  /// Area of the largest chamber, mm².
  double chamber_max_mm2;
  /// Area of the smallest chamber, at full mesh, mm².
  double chamber_min_mm2;
  /// Width of the gears, mm.
  double face_mm;
} tw_internal_gear_pump;

/// Displacement of an internal gear pump.
typedef struct tw_chamber_displacement {
  /// Per turn of the inner gear, cm³: it is the driven one as a rule.
  double inner_cm3_rev;
  /// Per turn of the outer gear, cm³.
  double outer_cm3_rev;
} tw_chamber_displacement;

/// Oil at its temperature.
typedef struct tw_oil_at {
  /// Its temperature, °C.
  struct tw_reading temp_c;
  /// Density, kg/m³.
  double density_kg_m3;
  /// Kinematic viscosity, mm²/s.
  double viscosity_mm2_s;
  /// Dynamic viscosity, mPa·s, with what the temperature leaves uncertain.
  struct tw_reading viscosity_mpa_s;
} tw_oil_at;

/// A pump: its displacement, and a leak that was measured in oil of known viscosity.
typedef struct tw_pump {
  /// Displacement, cm³ per turn of its shaft.
  struct tw_reading displacement_cm3_rev;
  /// Leak, L/min per MPa, at the viscosity below.
  struct tw_reading leak_l_min_mpa;
  /// Dynamic viscosity of the oil in which that was measured, mPa·s.
  double leak_viscosity_mpa_s;
} tw_pump;

/// What a pump delivers, with everything that made it.
typedef struct tw_pump_flow {
  /// Displacement times speed, L/min.
  double theoretical_l_min;
  /// Leak back through the clearances, L/min.
  double leak_l_min;
  /// What is left for the transmission, L/min; negative where the pump cannot hold this pressure at all.
  double delivered_l_min;
  /// Delivered over displaced; 0 where nothing is left.
  double volumetric_efficiency;
  /// Torque at its shaft for the pressure, without friction, N·m.
  double torque_nm;
  /// Power for the pressure, without friction, kW.
  double power_kw;
} tw_pump_flow;

/// What is asked of a pump.
typedef struct tw_pump_duty {
  /// Speed of its shaft, 1/min, above 0: the engine's, where the converter drives it.
  struct tw_reading speed_rpm;
  /// Line pressure, kPa, 0 or more.
  struct tw_reading pressure_kpa;
  /// Dynamic viscosity of the oil, mPa·s, above 0; from `oil_at`.
  struct tw_reading viscosity_mpa_s;
  /// What the transmission takes at this pressure, L/min: lubrication, cooler, valves, seal rings.
  struct tw_reading demand_l_min;
} tw_pump_duty;

/// Whether a pump covers the demand, and what that rests on.
typedef struct tw_flow_margin {
  /// What it delivers.
  struct tw_pump_flow flow;
  /// Speed below which it can no longer hold the pressure, 1/min.
  double least_speed_rpm;
  /// The flow to spare against 0, L/min.
  struct tw_judgment judgment;
  /// Its uncertainty: displacement, speed, leak, viscosity, pressure, demand, in this order.
  struct tw_budget budget;
} tw_flow_margin;

/// A clearance of a pump against its limit.
typedef struct tw_pump_clearance {
  /// The clearance against its limit.
  struct tw_judgment judgment;
  /// How many times more it leaks than when new, with the interval of 95 %.
  struct tw_leak_ratio leak;
} tw_pump_clearance;

/// The variant whose size a reading comes nearest to.
typedef struct tw_nearest {
  /// Place of the variant; the first of equals.
  uint32_t variant;
  /// Distance of the reading beyond that variant's nearer limit, mm: 0 within the limits, negative below them.
  double outside_mm;
  /// The same distance in standard uncertainties of the reading.
  double outside_u;
} tw_nearest;

/// What is known about a unit. It points into the caller's memory.
typedef struct tw_evidence {
  /// Chance of each variant before anything is looked at; they sum to 1.
  const double *prior;
  /// For each part, the chance that it came from another unit, before anything is looked at.
  const double *exchanged;
  /// For each part, a row of as many numbers as variants: 0 without a look, then as `tw_identify_add_seen` and
  /// `tw_identify_add_measured` fill it.
  const double *ln_likelihood;
  /// Number of variants.
  size_t variants;
  /// Number of parts.
  size_t parts;
  /// How many readings are NO-GO against the limits of every variant; `tw_identify_conclude` then settles nothing.
  uint32_t unexplained;
} tw_evidence;

/// What the evidence says of a variant.
typedef struct tw_variant_finding {
  /// Chance that the unit is this variant.
  double chance;
  /// Chance that it is this variant, and that no part which was looked at came from another one.
  double chance_unmixed;
  /// Logarithm of the likelihood of all looks in this variant, if no part was exchanged.
  double ln_unmixed;
} tw_variant_finding;

/// The evidence as a whole.
typedef struct tw_weighed {
  /// Readings that no variant explains, as given.
  uint32_t unexplained;
  /// Place of the likeliest variant; the first of equals.
  uint32_t best;
  /// Place of the variant under which the looks are likeliest if nothing was exchanged.
  uint32_t single;
  /// Chance of the likeliest variant.
  double chance;
  /// Chance that at least one part that was looked at came from another variant than the unit.
  double chance_mixed;
  /// What is not known yet about the variant, bits.
  double entropy_bits;
  /// Logarithm of the likelihood of all looks over every variant and exchange: of two records, the greater fits the unit better.
  double ln_evidence;
  /// Logarithm of the likelihood of all looks in the best single variant, nothing exchanged.
  double ln_single;
  /// Logarithm of the likelihood of all looks where each part may come from the variant that fits it best.
  double ln_by_part;
  /// `ln_by_part` less `ln_single`, 0 or more: how strongly the parts contradict one another.
  double ln_gap;
} tw_weighed;

/// What the evidence says of a variant as the origin of one part.
typedef struct tw_origin {
  /// Chance that the part came from this variant.
  double chance;
  /// Chance that the part was not exchanged, if the unit is this variant.
  double kept;
  /// Chance that the part came from this variant, if it was exchanged.
  double if_exchanged;
} tw_origin;

/// What the evidence says of one part.
typedef struct tw_part_finding {
  /// Place of the variant that the part most likely came from; the first of equals.
  uint32_t origin;
  /// Chance of that origin.
  double chance;
  /// Chance that the part was exchanged at some time.
  double exchanged;
  /// The same, if the unit is the likeliest variant.
  double exchanged_if_best;
  /// Chance that the part came from another variant than the unit: what an order must heed.
  double foreign;
  /// Logarithm of how much better its looks fit the variant that suits them best than the likeliest variant of the unit.
  double ln_conflict;
} tw_part_finding;

/// The verdict and what it rests on.
typedef struct tw_conclusion {
  /// Rule that it was reached under.
  struct tw_rule rule;
  /// Parts that are foreign to the unit under the rule.
  uint32_t foreign_parts;
  /// Parts of which the rule proves neither that they are foreign nor that they are not.
  uint32_t open_parts;
  /// One variant, mixed, not settled or unexplained.
  tw_outcome outcome;
  /// Whether one variant reaches the rule's chance.
  bool variant_settled;
} tw_conclusion;

/// The unit as it is known, and the part that a further look is on. It points into the caller's memory.
typedef struct tw_standing {
  /// The variants, as `tw_identify_weigh` filled them in.
  const struct tw_variant_finding *variants;
  /// The part, as `tw_identify_part` filled it in.
  const struct tw_origin *origins;
  /// Number of variants.
  size_t count;
  /// Rule with stated chances: from which chance on the variant is settled.
  struct tw_rule rule;
} tw_standing;

/// What a further look is worth.
typedef struct tw_worth {
  /// Information about the variant to be expected, bits: 0 to what is not known yet.
  double bits;
  /// The same for each minute of labor.
  double bits_per_minute;
  /// Chance that afterwards one variant reaches the rule's chance.
  double settles;
} tw_worth;

/// Two parts that meet.
typedef struct tw_joint {
  /// How they meet.
  tw_joint_kind kind;
  /// Shaft of a fit, land of a cover, either part of a match.
  uint16_t first;
  /// Bore of a fit, surface of a cover, the other part of a match.
  uint16_t second;
  /// Greatest diametral clearance of a fit, mm; least share of a cover; not used by a match.
  double limit;
} tw_joint;

/// Sizes of a joint in one variant, mm. Of a match, the number that stands for its value, in both ends of both.
typedef struct tw_sides {
  /// Diameter of the shaft; where the land begins and ends.
  struct tw_limits first;
  /// Diameter of the bore; where the surface begins and ends.
  struct tw_limits second;
} tw_sides;

/// What comes of a joint, with its reason.
typedef struct tw_meeting {
  /// What comes of it.
  tw_joint_outcome outcome;
  /// Least and greatest clearance of a fit, mm, negative is interference; 0 and 0 of a cover or match.
  struct tw_limits clearance_mm;
  /// Clearance that is right, mm; 0 and 0 of a cover or match.
  struct tw_limits wanted_mm;
  /// Share of the land that is carried; of a match 1 where equal, else 0; 0 of a fit.
  double share;
} tw_meeting;

/// A permitted change of one part of a fit.
typedef struct tw_machining {
  /// The fit that it mends.
  uint16_t joint;
  /// The part that is machined: the first or the second of that fit.
  uint16_t part;
  /// Variants whose part may be machined, bit n for variant n.
  uint32_t from;
  /// Variants whose mating part it then fits.
  uint32_t to_fit;
  /// Finished diameter, mm.
  struct tw_limits finish_mm;
  /// Greatest run-out allowed afterwards, mm.
  double runout_limit_mm;
} tw_machining;

/// A set of parts.
typedef struct tw_part_set {
  /// Bit n of word w stands for part 64 w + n.
  uint64_t words[4];
} tw_part_set;

/// How the parts of a family meet: arrays that the caller owns, which may lie in flash.
typedef struct tw_part_family {
  /// Parts, at most TW_MAX_PARTS.
  uint16_t parts;
  /// Variants, 2 to TW_MAX_VARIANTS.
  uint8_t variants;
  /// The joints.
  const struct tw_joint *joints;
  /// How many joints.
  size_t joint_count;
  /// Sizes of each joint in each variant: those of joint j in variant v stand at j * variants + v.
  const struct tw_sides *sizes;
  /// The only machining permitted.
  const struct tw_machining *machining;
  /// How many.
  size_t machining_count;
  /// Parts that belong to the unit itself and are never exchanged: its case.
  struct tw_part_set fixed;
  /// Parts whose numbers differ and whose fit is the same.
  struct tw_part_set alias;
} tw_part_family;

/// A joint with one part from outside: what comes of it, and what mends it.
typedef struct tw_passage {
  /// What comes of it as the parts are.
  tw_joint_outcome outcome;
  /// The machining that mends it, or `TW_NO_MACHINING`.
  uint16_t machining;
} tw_passage;

/// A joint between two variants.
typedef struct tw_crossing {
  /// Its first part comes from outside, its second is the unit's.
  struct tw_passage first;
  /// Its second part comes from outside, its first is the unit's.
  struct tw_passage second;
} tw_crossing;

/// The smallest set of parts that goes together.
typedef struct tw_matched_set {
  /// The parts, the one asked for among them.
  struct tw_part_set parts;
  /// How many.
  uint16_t size;
  /// Joints with the rest of the unit that must be machined.
  uint16_t machined;
  /// Joints with fixed parts that nothing mends: above 0, the answer is never, and the set is how far it goes.
  uint16_t unmended;
} tw_matched_set;

/// What a set costs.
typedef struct tw_price {
  /// Sum of the known prices.
  double total;
  /// Parts and machinings whose price is not known.
  uint16_t unpriced;
} tw_price;

/// What became of the question whether a part goes into a unit of another variant.
typedef struct tw_answer {
  /// The part.
  uint16_t part;
  /// Its variant.
  uint8_t from;
  /// The unit's variant.
  uint8_t into;
  /// How it goes in.
  tw_relation relation;
  /// What comes of putting it in alone, as it is: the outcome of its worst joint.
  tw_joint_outcome alone;
  /// Joints of the part.
  uint16_t joints;
  /// How many of them do not hold when it is put in alone, as it is.
  uint16_t broken;
  /// Parts of the matched set; 0 where there is no such question.
  uint16_t size;
  /// Joints of the set that must be machined.
  uint16_t machined;
  /// Joints of the set that nothing mends.
  uint16_t unmended;
} tw_answer;

/// A diameter of a part as found, measured.
typedef struct tw_measured_side {
  /// The fit.
  uint16_t joint;
  /// Its shaft or its bore: the part.
  uint16_t part;
  /// What was measured, mm.
  struct tw_reading size_mm;
} tw_measured_side;

/// What an order shall be the least of. A number of its own type, so that a junk number from C is refused rather than undefined.
typedef int32_t tw_aim;
/// Fewest parts; of as many, the fewest machinings.
#define TW_AIM_FEWEST 0
/// Lowest price; of the same, the fewest parts.
#define TW_AIM_CHEAPEST 1

/// A unit on the bench, and what is wanted in it.
typedef struct tw_order_job {
  /// Variant of the unit: what is exchanged becomes this, a wanted variant, or that of a fixed part as found.
  uint8_t unit;
  /// Variant of each part as found.
  const uint8_t *found;
  /// Variant that each part shall be, or TW_AS_FOUND where it does not matter.
  const uint8_t *wanted;
  /// Sizes measured on the parts as found.
  const struct tw_measured_side *measured;
  /// How many.
  size_t measured_count;
  /// How a measured clearance is judged.
  struct tw_rule rule;
  /// How the size of a part that was not measured is taken to lie in its tolerance.
  tw_spread spread;
  /// Price of each part, NaN where it is not known; null where no price is.
  const double *part_prices;
  /// Price of each machining, likewise.
  const double *machining_prices;
  /// What the order shall be the least of.
  tw_aim aim;
} tw_order_job;

/// A joint of the unit as it would be put together.
typedef struct tw_joint_state {
  /// What comes of it as the parts are.
  tw_joint_outcome outcome;
  /// The machining that mends it, or `TW_NO_MACHINING`.
  uint16_t machining;
  /// Whether one of its sizes was measured; else it is known by its tolerances alone.
  bool measured;
  /// By tolerances, GO where it holds and NO-GO where it does not; by measured sizes, as judged.
  tw_verdict verdict;
  /// Chance that the clearance is right; by tolerances 1 or 0.
  double chance;
  /// Clearance of a measured fit, mm; 0 with u 0 of others.
  struct tw_reading clearance_mm;
} tw_joint_state;

/// An order, or why there is none.
typedef struct tw_order {
  /// Whether the unit can be put together so that no joint is known to be wrong. Where not, the rest of the answer says how far
  /// the search came before the joint in `stopped_at`.
  bool possible;
  /// Parts to order.
  uint16_t parts;
  /// Joints to machine.
  uint16_t machined;
  /// Joints that are neither proven right nor wrong: measure better.
  uint16_t not_proven;
  /// The first joint that nothing mends, or `TW_NO_JOINT`.
  uint16_t stopped_at;
  /// What they cost.
  struct tw_price price;
  /// Whether no other order can be cheaper. Not proven where a price that is not known could change that.
  bool cheapest;
  /// Partial orders that were looked at.
  uint32_t steps;
} tw_order;

/// Repeated readings in one: their mean and the degrees of freedom of its uncertainty.
typedef struct tw_repeated {
  /// Mean and its standard uncertainty.
  struct tw_reading reading;
  /// Standard deviation of a single reading.
  double deviation;
  /// Degrees of freedom, n − 1.
  double freedom;
} tw_repeated;

/// What one input brings to a result.
typedef struct tw_input {
  /// Change of the result per unit of the input.
  double sensitivity;
  /// Standard uncertainty of the input, 0 or more.
  double u;
  /// Degrees of freedom of `u`, 1 or more; infinite where `u` is taken as certain.
  double freedom;
} tw_input;

/// An expanded uncertainty and the interval it gives.
typedef struct tw_expanded {
  /// Value and standard uncertainty.
  struct tw_reading reading;
  /// Stated probability of the interval.
  double coverage;
  /// Degrees of freedom.
  double freedom;
  /// Coverage factor.
  double k;
  /// Half width of the interval, k · u.
  double expanded_u;
  /// Lower end of the interval.
  double lower;
  /// Upper end of the interval.
  double upper;
} tw_expanded;

/// The one further measurement that would settle a judgment.
typedef struct tw_settlement {
  /// Position of the input to measure better: the largest contribution.
  uint32_t input;
  /// Whether measuring this input alone can decide the case. It is true when the case is decided already.
  bool enough;
  /// Standard uncertainty of that input now, in its own unit.
  double u_now;
  /// Standard uncertainty that would do, in its own unit; 0 when even a perfect measurement would not.
  double u_needed;
} tw_settlement;

/// One speed sensor.
typedef struct tw_speed_sensor {
  /// How the speed reaches the monitor.
  tw_speed_source source;
  /// Teeth of the wheel; 0 for a bus.
  uint32_t teeth;
  /// Step of the values on a bus; else 0.
  float step_rpm;
  /// Standard deviation of one value besides its step.
  float noise_rpm;
  /// Tick of the timer that stamps the edges, s; else 0.
  float tick_s;
  /// The same value for longer than this, while the other speed moves, is stale: no evidence.
  float age_limit_s;
  /// A higher speed is impossible.
  float greatest_rpm;
} tw_speed_sensor;

/// One reading of a speed sensor.
typedef struct tw_speed_reading {
  /// Value on a bus.
  float rpm;
  /// Pulses since the reading before.
  uint32_t pulses;
  /// For edges the ticks from the edge before the first of those pulses to the last.
  uint32_t ticks;
  /// What it is.
  tw_reading_state state;
} tw_speed_reading;

/// The uncertainty of a sensor by its causes, so that a sample needs neither root nor exponential.
typedef struct tw_speed_spread {
  /// What no number of values takes away.
  float lasting_rpm;
  /// Of one value; falls with the root of their number.
  float value_rpm;
  /// Of the turns counted in a window: both ends cut a pulse. Falls with the window.
  float turns;
  /// Of the time between the first and the last edge of a window.
  float time_s;
} tw_speed_spread;

/// Both speeds of a ratio, read at the same times.
typedef struct tw_speed_pair {
  /// Input speed.
  struct tw_speed_spread input;
  /// Output speed.
  struct tw_speed_spread output;
  /// Time from value to value.
  float sample_s;
} tw_speed_pair;

/// How many shifts the plates stand at a pace.
typedef struct tw_shifts_to_limit {
  /// Rise of the plates in one shift, K.
  float rise_k;
  /// Temperature after a shift that any number of them ends at, °C.
  float settled_c;
  /// Further shifts, the last of which reaches the limit; `TW_SHIFTS_TO_LIMIT_NEVER` where the pace never reaches it.
  uint32_t shifts;
} tw_shifts_to_limit;
/// The pace leaves the plates time enough to cool.
#define TW_SHIFTS_TO_LIMIT_NEVER UINT32_MAX

/// What counts as standing, as slip, as flare. There are no defaults: usual values are in [`crate::practice`].
typedef struct tw_live_limits {
  /// Output speed below which the unit counts as standing and no ratio is formed, 1/min.
  float standing_rpm;
  /// Smallest slip at the input that is to be found, 1/min.
  float slip_rpm;
  /// Average time in gear to one false slip alarm, s: the setting of the sequential test.
  float run_length_s;
  /// Greatest difference in age of the two speeds, s: acceleration times this is no evidence.
  float skew_s;
  /// A window of the ratio closes at this relative standard uncertainty: its length follows gear, speed and sensors.
  float ratio_u_rel;
  /// Time after a shift before slip is judged, s.
  float settle_s;
  /// Time after a command by which the gear must be reached, s.
  float follow_s;
  /// Flare above which an event is raised, 1/min.
  float flare_rpm;
  /// Dip of the output during a shift above which an event is raised, over the output speed.
  float dip_share;
  /// Slip of the lock-up clutch below which it counts as locked, 1/min.
  float lockup_slip_rpm;
  /// Fluid temperature below which a shift counts as cold, °C.
  float cold_c;
  /// Fluid temperature above which an event is raised, °C.
  float hot_c;
  /// Driving time with the same temperature below `cold_c` after which its sensor counts as stuck, s.
  float warm_up_s;
} tw_live_limits;

/// A unit to watch: what `tw_live_unit_plan` checks and reduces.
typedef struct tw_live_unit {
  /// Gears in any order; events name them by their place here. Gears with the same ratio (1 and 1 with engine braking)
  /// are one gear here.
  struct tw_live_gear gears[TW_MAX_LIVE_GEARS];
  /// Number of gears.
  uint8_t gear_count;
  /// Elements by number, as the suspects name them.
  struct tw_live_element elements[TW_MAX_LIVE_ELEMENTS];
  /// Number of elements.
  uint8_t element_count;
  /// Sensor of the input speed.
  struct tw_speed_sensor input;
  /// Sensor of the output speed.
  struct tw_speed_sensor output;
  /// Sensor of the engine speed.
  struct tw_speed_sensor engine;
  /// What counts as what.
  struct tw_live_limits limits;
  /// Nominal time between two samples, s.
  float sample_s;
} tw_live_unit;

/// A speed sensor reduced to what a sample needs.
typedef struct tw_planned_sensor {
  /// From pulses per microsecond, or per tick, to 1/min.
  float scale;
  /// Variances of one value, (1/min)²: what stays in a mean of many, what falls with their number, and what falls with the
  /// square of their number; of edges the latter over the square of the speed.
  float lasting;
  float single;
  float ends;
  /// Greatest bias of a mean of many values, 1/min; of edges the time in which half a tooth passes, s, at 1/min.
  float bias;
  float greatest_rpm;
  uint32_t age_limit_us;
  /// Teeth of the wheel; 0 for a bus.
  uint16_t teeth;
  tw_speed_source source;
  /// The noise of a value hides its step: a value that repeats for long is stale, whatever the other speed does.
  bool dithered;
} tw_planned_sensor;

/// How much a new sample moves level and slope, and what noise is left of them.
typedef struct tw_fading {
  float level_gain;
  float slope_gain_per_s;
} tw_fading;

/// A checked unit, reduced. Constant: many monitors share one.
typedef struct tw_live_plan {
  /// Ratios without sign, falling; what follows is in the same order, which is called the rank.
  float ratios[TW_MAX_LIVE_GEARS];
  /// Slips of the elements that hold a gear per slip at the input, in the order of their numbers, in steps of `factor_step`.
  int16_t factors[TW_MAX_LIVE_GEARS][TW_MAX_LIVE_SUSPECTS];
  /// Those elements, bit 0 for the first of the unit.
  uint8_t holders[TW_MAX_LIVE_GEARS];
  int8_t numbers[TW_MAX_LIVE_GEARS];
  /// Place in the unit's list of each rank; `TW_GEAR_IN_NONE` for none.
  int8_t places[TW_MAX_LIVE_GEARS];
  struct tw_live_element elements[TW_MAX_LIVE_ELEMENTS];
  struct tw_planned_sensor input;
  struct tw_planned_sensor output;
  struct tw_planned_sensor engine;
  struct tw_live_limits limits;
  float factor_step;
  float sample_s;
  struct tw_fading fading;
  /// Standard deviation of a smoothed level over that of a sample.
  float level_share;
  uint8_t gear_count;
  uint8_t element_count;
  /// Fills the struct up: equal plans are equal byte for byte, and a host can write one for a microcontroller.
  uint8_t spare[2];
} tw_live_plan;

/// One speed as it comes.
typedef struct tw_speed_track {
  /// Last value that could be, 1/min.
  float rpm;
  /// The other speed when it last changed.
  float other_rpm;
  /// When it last changed, and when it was last seen; µs, low bits.
  uint32_t changed_us;
  uint32_t seen_us;
  tw_health health;
  bool fresh;
} tw_speed_track;

/// What was counted since the start. Counters stop at their greatest value.
typedef struct tw_live_counts {
  /// Samples.
  uint32_t samples;
  /// Samples whose speeds were used.
  uint32_t used;
  /// Samples with the output standing.
  uint32_t standing;
  /// Speeds unchanged for longer than their age limit.
  uint32_t stale;
  /// Speeds that did not come.
  uint32_t missing;
  /// Speeds that the sender does not have.
  uint32_t not_available;
  /// Speeds of a sensor that has failed.
  uint32_t sensor_error;
  /// Codes that stand for no value.
  uint32_t reserved;
  /// Values that cannot be: negative, infinite, no number, above the greatest.
  uint32_t impossible;
  /// Samples whose time lies before that of the sample before.
  uint32_t reversed;
  /// Samples with the time of the sample before.
  uint32_t duplicate;
  /// Pauses of more than ten sample periods.
  uint32_t gaps;
  /// Shifts with cold fluid.
  uint32_t shifts_cold;
  /// Shifts with warm fluid, or of unknown temperature.
  uint32_t shifts_warm;
  /// Slip alarms.
  uint32_t alarms;
} tw_live_counts;

/// Log-likelihoods of the gears by rank, and the band that holds the last ratio.
typedef struct tw_gear_track {
  int16_t ln[TW_MAX_LIVE_GEARS];
  int16_t ln_none;
  uint8_t leader;
  uint8_t near;
  /// Band of the gear `near`: its ends as ratios, and one over the distance of either end from the gear's ratio.
  float low;
  float high;
  float per_below;
  float per_above;
} tw_gear_track;

/// What the windows of a gear showed.
typedef struct tw_seen {
  /// Relative difference of the measured ratio from that of the gear, mean of the windows without slip.
  float error;
  /// Slip over input speed in the windows with slip, in parts of [`SHARE`]: mean of the first, fading over the last of them.
  uint16_t slip_share;
  uint16_t windows;
  uint16_t slipping;
  /// Evidence in parts of [`PARTS`]: forward and backward.
  int8_t evidence[2];
} tw_seen;

/// By rank.
typedef struct tw_gear_ratios {
  struct tw_seen seen[TW_MAX_LIVE_GEARS];
} tw_gear_ratios;

/// Level and slope now.
typedef struct tw_trend {
  float level;
  float slope_per_s;
} tw_trend;

/// Slip in the gear in effect.
typedef struct tw_slip_track {
  struct tw_trend trend;
  /// The cumulative sum, when it last was 0, and the sum that alarms.
  float sum;
  uint32_t onset_us;
  float threshold;
  /// One over the standard uncertainty of one slip.
  float per_u;
  /// Mean slip and middle of the window before; NaN before the first.
  float mean;
  uint32_t middle_us;
  /// Next level to report.
  float next_level_rpm;
  bool alarm;
} tw_slip_track;

/// A window that is open: sums over its samples.
typedef struct tw_window {
  float slip;
  float output;
  float count;
  uint32_t since_us;
} tw_window;

/// Mean of three samples in a row; before the third, NaN.
typedef struct tw_mean3 {
  float before[2];
} tw_mean3;

/// The shift that is running, or the last one. Times are seconds after it began; NaN while they are not known.
typedef struct tw_shift_track {
  uint64_t began_us;
  float sign_s;
  float left_s;
  float half_s;
  float end_s;
  /// Greatest dip below the trend at the start, and what the line from start to end lies lower there.
  float trend_dip_rpm;
  float line_below_rpm;
  float flare_rpm;
  /// The output when it began.
  struct tw_trend base;
  /// Turn of the slip at the input, rad.
  float turn_rad;
  float energy_j;
  float plate_c;
  float temp_c;
  float dip_at_s;
  float flare_at_s;
  /// Way to the half, in the sample before, 1/min.
  float to_half;
  /// Dip of the output.
  struct tw_mean3 under;
  /// By rank; the same before the first shift.
  uint8_t from;
  uint8_t to;
  uint8_t left_run;
  uint8_t arrived_run;
  bool commanded;
  /// The element that slips belongs to the new gear.
  bool slips_in_new;
  bool done;
} tw_shift_track;

/// Engine less input in windows.
typedef struct tw_lockup_track {
  float sum;
  float count;
  uint32_t since_us;
  /// Mean of the window before; NaN before the first.
  float mean;
  bool on;
} tw_lockup_track;

/// Errors of the ratio in the last two gears, and windows with an inverse ratio.
typedef struct tw_watch {
  /// Relative error of the ratio, in the gear now and in the one before.
  float error;
  float error_before;
  uint8_t rank;
  /// Windows with that error.
  uint8_t windows;
  uint8_t windows_before;
  uint8_t inverse;
  /// The tooth count is wrong: nothing that slips can be told.
  bool teeth;
  bool swapped;
} tw_watch;

/// The temperature and how long it has stood.
typedef struct tw_warm_up {
  /// Driving time with this temperature, µs.
  uint32_t driven_us;
  /// In parts of a kelvin.
  int16_t temp;
} tw_warm_up;

/// Excess of each element's plates over the fluid when the last shift ended, in parts of [`KELVIN`].
typedef struct tw_plates {
  uint16_t excess[TW_MAX_LIVE_ELEMENTS];
  /// That time, in 1024 µs.
  uint32_t at;
} tw_plates;

/// What is commanded, and since when.
typedef struct tw_command {
  uint32_t since_us;
  int8_t number;
  uint8_t rank;
  /// The gear did not come: it is not waited for again.
  bool refused;
} tw_command;

/// The state of one unit that is watched. A plain value: copy it, store it, forget it.
typedef struct tw_live_monitor {
  uint64_t time_us;
  /// When a pair of speeds was last used, µs, low bits.
  uint32_t used_us;
  /// Since when the gear that leads fits without a break, µs, low bits.
  uint32_t leads_us;
  struct tw_speed_track input;
  struct tw_speed_track output;
  struct tw_speed_track engine;
  struct tw_live_counts counts;
  struct tw_gear_track gears;
  struct tw_gear_ratios ratios;
  struct tw_trend output_trend;
  struct tw_slip_track slip;
  struct tw_window window;
  /// When the gear was reached, or began to lead; µs, low bits.
  uint32_t since_us;
  struct tw_shift_track shift;
  struct tw_lockup_track lockup;
  struct tw_watch watch;
  struct tw_warm_up warm_up;
  struct tw_plates plates;
  struct tw_command command;
  /// When the ratio last fitted the gear for three samples, µs, low bits, and how far the input ran ahead since then.
  uint32_t calm_us;
  struct tw_mean3 over;
  float peak;
  /// Gear in effect; while none is, the one that leads.
  uint8_t gear;
  uint8_t window_rank;
  /// Samples in a row that fit.
  uint8_t run;
  tw_shift_phase phase;
  bool started;
  bool used;
  bool standing;
  bool hot;
} tw_live_monitor;

/// One sample.
///
/// Speeds are magnitudes: reverse shows in the ratio, not in a sign. Push one sample for each new pair of speeds: the same
/// values pushed again are counted as stale and are no evidence.
typedef struct tw_live_sample {
  /// Time of the sample, µs, of any clock that runs forward.
  uint64_t time_us;
  /// Speed of the transmission's input (the turbine).
  struct tw_speed_reading input;
  /// Speed of its output.
  struct tw_speed_reading output;
  /// Speed of the engine.
  struct tw_speed_reading engine;
  /// Line pressure, kPa; NaN: not known.
  float pressure_kpa;
  /// Temperature of the fluid, °C; NaN: not known.
  float temp_c;
  /// Torque that the engine reports, N·m; NaN: not known. It counts as that of the input while the converter is locked.
  float engine_torque_nm;
  /// Number of the commanded gear: forward from 1, reverse from −1, 0 neutral or park, `TW_GEAR_NOT_COMMANDED`.
  int8_t commanded;
  /// Lock-up: 1 commanded on, 0 off, −1 not known.
  int8_t lockup;
} tw_live_sample;

/// One event.
typedef struct tw_live_event {
  /// What happened.
  tw_live_event_kind kind;
  /// Place of the gear in the unit's list; `TW_GEAR_IN_NONE`, `TW_GEAR_STANDS`, `TW_GEAR_NOT_KNOWN`.
  int8_t gear;
  /// Place of the other gear, as the kind says; likewise.
  int8_t other_gear;
  /// The sensor that the event is about.
  tw_live_speed speed;
  /// Elements that could explain it, bit 0 for the first; 0 where the kind knows none.
  uint16_t suspects;
  /// When it happened, µs on the clock of the samples.
  uint64_t at_us;
  /// When it was known, µs.
  uint64_t found_us;
  /// What the kind says.
  float value;
  /// Its standard uncertainty; NaN where it has none.
  float u;
} tw_live_event;

/// The events of one sample. Only the first `count` are used.
typedef struct tw_live_events {
  /// Events in the order in which they were found.
  struct tw_live_event events[TW_MAX_LIVE_EVENTS];
  /// Number of events.
  uint32_t count;
} tw_live_events;

/// The state after a sample. Values that are not known are NaN.
typedef struct tw_live_state {
  /// Place of the gear in effect; `TW_GEAR_IN_NONE`, `TW_GEAR_STANDS`,
  /// `TW_GEAR_NOT_KNOWN`.
  int8_t gear;
  /// Where a shift is.
  tw_shift_phase phase;
  /// Whether the slip alarm stands.
  bool alarm;
  /// Whether the speeds of this sample were used.
  bool used;
  /// Ratio input/output over the window so far, a magnitude.
  float ratio;
  /// Its standard uncertainty.
  float ratio_u;
  /// Slip at the input in the gear in effect, 1/min, n_in − i·n_out, smoothed.
  float slip_rpm;
  /// Its standard uncertainty.
  float slip_u_rpm;
  /// Engine less input, 1/min.
  float converter_slip_rpm;
} tw_live_state;

/// One element with the evidence against it.
typedef struct tw_ranked_suspect {
  /// Number of the element.
  uint8_t element;
  /// ln of the odds that it is this one against all others together.
  float ln_odds;
} tw_ranked_suspect;

/// The elements that may slip, most likely first. Only the first `count` are used.
typedef struct tw_live_suspects {
  /// Elements by evidence.
  struct tw_ranked_suspect suspects[TW_MAX_LIVE_ELEMENTS];
  /// ln of the odds that it is none of them, but the sensors: a tooth count, or two of them exchanged.
  float sensors_ln_odds;
  /// What an observation in `next_gear` would tell, bit; 0 if none would.
  float next_bit;
  /// Number of suspects; 0 while nothing slipped.
  uint8_t count;
  /// Place of the gear in which an observation separates the leading suspects best; −1 if none does.
  int8_t next_gear;
} tw_live_suspects;

/// What was seen in one gear: logarithms of likelihood ratios, above 0 for slip and below for none.
typedef struct tw_gear_evidence {
  /// Slip as an element does it: the input runs ahead.
  float forward;
  /// The input falls behind: no element does that under drive.
  float backward;
} tw_gear_evidence;

/// The last shift. While one is running, that one as far as it is known; `duration_s` is NaN then.
typedef struct tw_live_shift {
  /// Place of the gear that it left.
  int8_t from;
  /// Place of the gear that it reached, or is commanded to reach.
  int8_t to;
  /// The element that slipped: the one that closes, or in a power downshift the one that opens, if it is one alone;
  /// `TW_NO_LIVE_ELEMENT` else.
  uint8_t element;
  /// Whether the fluid was colder than `cold_c`.
  bool cold;
  /// When it was commanded, µs; without a command, when it first showed.
  uint64_t commanded_us;
  /// When the ratio was half way (mean of both ratios), µs; 0 while it is not known.
  uint64_t half_us;
  /// Command to the first sign in the speeds, s; NaN without a command.
  float fill_s;
  /// First sign (flare or dip) to the start of the inertia phase, s; 0 where no sign came before it.
  float torque_s;
  /// The input leaves the old ratio, until it reaches the new one, s.
  float inertia_s;
  /// Command to the end, s; without a command, first sign to the end.
  float duration_s;
  /// Greatest overrun of the input over the higher of the two synchronous speeds, 1/min; 0 or more.
  float flare_rpm;
  /// Its standard uncertainty.
  float flare_u_rpm;
  /// Greatest dip of the output below its trend, 1/min; 0 or more.
  float dip_rpm;
  /// Its standard uncertainty.
  float dip_u_rpm;
  /// Turn of `element` against its mate while it slipped, rad; NaN where the element is not known.
  float slip_rad;
  /// Heat of the slip, J; NaN where the torque was not known.
  float energy_j;
  /// Temperature of its plates after it, °C; NaN where heat capacity or fluid temperature is not known.
  float plate_c;
  /// What this shift added, K.
  float rise_k;
  /// How many more such shifts without a pause reach the limit; NaN where there is none.
  float shifts_to_overheat;
  /// Temperature of the fluid, °C.
  float temp_c;
} tw_live_shift;

/// The ratio of a gear as it was measured, from all windows of it.
typedef struct tw_live_ratio {
  /// Mean ratio, a magnitude; NaN before the first window.
  float ratio;
  /// Its standard uncertainty from the windows. What steps without noise leave in any mean comes on top
  /// (`step_bias_rpm`).
  float u;
  /// Windows without slip, which made this mean.
  uint32_t windows;
  /// Windows with slip.
  uint32_t slipping;
  /// Slip over input speed in those: the mean of the last thirty or so.
  float slip_share;
} tw_live_ratio;

/// A gear, and the slip between engine and input shaft.
typedef struct tw_engaged {
  /// Gear ratio, input over output; negative in reverse.
  double gear_ratio;
  /// Engine speed less input speed; 0 with the lock-up clutch closed, negative on the overrun.
  double slip_rpm;
} tw_engaged;

/// Speeds of one moment, from the road to the engine. Driving backward is a negative road speed with positive engine speed.
typedef struct tw_shaft_speeds {
  /// Road speed, without tire slip.
  double road_km_h;
  /// Wheel.
  double wheel_rpm;
  /// Transmission output shaft.
  double output_rpm;
  /// Transmission input (turbine) shaft.
  double input_rpm;
  /// Engine: input plus the slip of converter or lock-up clutch.
  double engine_rpm;
  /// Relative standard uncertainty, from the tire: of the shaft speeds when they follow from the road speed, of the road
  /// speed when it follows from a shaft speed.
  double u_rel;
} tw_shaft_speeds;

/// A shift point of the schedule before and after a change of tire or axle.
typedef struct tw_shift_point {
  /// Road speed of the shift before the change.
  double before_km_h;
  /// Output-shaft speed of the shift before the change.
  double before_rpm;
  /// Road speed of the shift after the change.
  double after_km_h;
  /// Output-shaft speed of the shift after the change.
  double after_rpm;
} tw_shift_point;

/// What the speedometer shows when the programmed driveline is not the fitted one.
typedef struct tw_speedometer {
  /// True over shown speed: above 1 the speedometer reads low.
  double true_over_shown;
  /// True road speed.
  double true_km_h;
  /// Shown speed, with the uncertainty that comes from the fitted tire.
  struct tw_reading shown_km_h;
} tw_speedometer;

/// What to program, or to fit, so that the speedometer and the schedule are right again.
typedef struct tw_numbers_to_program {
  /// Axle ratio to program where only that can be set.
  double axle_ratio;
  /// Rolling circumference to program where only that can be set, mm.
  double circumference_mm;
  /// The same as revolutions per kilometer.
  double rev_per_km;
  /// The same as revolutions per mile.
  double rev_per_mile;
  /// Sensor pulses per kilometer of the fitted driveline.
  double pulses_per_km;
  /// Sensor pulses per mile of the fitted driveline.
  double pulses_per_mile;
  /// Axle ratio to fit with the fitted tires, so that what is programmed is right unchanged.
  double axle_ratio_to_fit;
  /// Relative standard uncertainty of each, from the fitted tire.
  double u_rel;
} tw_numbers_to_program;

/// A truck with its trailer, as far as the road feels it.
typedef struct tw_combination {
  /// Mass, load included.
  double mass_kg;
  /// Rolling resistance over weight; the mean by mass where truck and trailer differ.
  double rolling_coefficient;
  /// Drag coefficient times frontal area.
  double drag_area_m2;
} tw_combination;

/// Steady road load and what it is made of.
typedef struct tw_road_load {
  /// Angle of the grade.
  double grade_deg;
  /// Rolling resistance.
  double rolling_n;
  /// Air drag.
  double aero_n;
  /// Share of the weight along the grade; negative downhill.
  double grade_n;
  /// Sum: the tractive force that holds the speed.
  double total_n;
  /// Power at the wheels.
  double power_kw;
} tw_road_load;

/// The grade that a tractive force holds, and what it is made of.
typedef struct tw_grade_held {
  /// Air drag.
  double aero_n;
  /// Force left over for rolling and grade.
  double left_n;
  /// The same over the weight.
  double left_over_weight;
  /// Angle of the grade; negative when the force does not hold the speed on the level.
  double grade_deg;
  /// The same as rise over horizontal run.
  double grade_pct;
} tw_grade_held;

/// Road load of a coast-down test: F = A + B·v + C·v².
typedef struct tw_coast_down {
  /// Constant part.
  double a_n;
  /// Part that grows with the speed, per km/h.
  double b_n_per_km_h;
  /// Part that grows with the square of the speed, per (km/h)².
  double c_n_per_km_h2;
} tw_coast_down;

/// Force of a coast-down equation at a speed, and what it is made of.
typedef struct tw_coast_down_load {
  /// A.
  double constant_n;
  /// B·v.
  double linear_n;
  /// C·v².
  double square_n;
  /// Sum.
  double total_n;
  /// Power at the wheels.
  double power_kw;
} tw_coast_down_load;

/// Air at an altitude.
typedef struct tw_air {
  /// Geopotential altitude.
  double geopotential_m;
  /// Temperature.
  double temp_c;
  /// Absolute pressure.
  double pressure_kpa_abs;
  /// Density.
  double density_kg_m3;
} tw_air;

/// One part of a chain.
typedef struct tw_chain_link {
  /// Change of the result per change of this size: +1 for what opens the gap, −1 for what fills it, n for n equal parts
  /// known by one measurement.
  double sensitivity;
  /// Middle of the tolerance, or the reading, mm.
  double value_mm;
  /// How far from there the size may lie, mm: half the tolerance, or k standard uncertainties of a reading.
  double half_width_mm;
  /// Standard uncertainty, mm.
  double u_mm;
} tw_chain_link;

/// What a chain of parts leaves.
typedef struct tw_chain {
  /// The result with its standard uncertainty, mm.
  struct tw_reading reading_mm;
  /// Every part at its worst, ± mm.
  double worst_half_mm;
  /// Least and greatest result with every part at its worst, mm.
  struct tw_limits worst_mm;
  /// Root sum of squares of the tolerances, ± mm.
  double rss_half_mm;
  /// Least and greatest result by root sum of squares, mm.
  struct tw_limits rss_mm;
  /// Chance that the result lies within `rss_mm`, taken as normal with the stated uncertainties: 0.9973 where every tolerance
  /// is three standard deviations, 0.917 where the parts lie anywhere in them. Many parts make it so; two equal ones that lie
  /// anywhere give 0.914, and one alone never leaves its tolerance.
  double rss_chance;
  /// Where the uncertainty comes from, in the order of the links.
  struct tw_budget budget;
} tw_chain;

/// The lengths that stand against each other along the axis, and how they grow.
typedef struct tw_axial_growth {
  /// Length of the case between the two faces of the end play, mm.
  struct tw_reading case_length_mm;
  /// Length of the parts between the same faces, mm.
  struct tw_reading train_length_mm;
  /// Expansion of the case, 1/K.
  struct tw_reading case_expansion_per_k;
  /// Expansion of the parts, 1/K.
  struct tw_reading train_expansion_per_k;
  /// Temperature at which the cold end play holds, °C.
  double reference_c;
} tw_axial_growth;

/// Change of the end play, and what made it.
typedef struct tw_grown_play {
  /// AxialGrowth of the case, mm.
  double case_mm;
  /// AxialGrowth of the parts, mm.
  double train_mm;
  /// Case less parts: what the end play gains, mm; negative where it loses.
  struct tw_reading growth_mm;
  /// Where its uncertainty comes from: length of case, of train, expansion of case, of train, temperature, difference.
  struct tw_budget budget;
} tw_grown_play;

/// What a piece is chosen for, and how.
typedef struct tw_selection {
  /// What is left with no piece in place, mm: the result of a chain without it.
  struct tw_reading room_mm;
  /// End play or clearance wanted at assembly, mm; both limits.
  struct tw_limits window_mm;
  /// End play or clearance aimed at, mm, within the window.
  double target_mm;
  /// Change from assembly to hot, mm; 0 with u = 0 where none is considered.
  struct tw_reading growth_mm;
  /// End play or clearance wanted hot, mm; open on both sides where the hot value is only shown.
  struct tw_limits hot_window_mm;
  /// Rule of the judgments.
  struct tw_rule rule;
  /// Rule of the choice.
  tw_choice_rule by;
  /// The choice looks at cold and hot together. Otherwise the hot value is only shown beside it.
  bool hot_counts;
} tw_selection;

/// A shim, ring or plate on the list.
typedef struct tw_piece {
  /// Thickness and its standard uncertainty, mm.
  struct tw_reading thickness_mm;
  /// It can be had. What cannot is shown, but not chosen.
  bool in_stock;
} tw_piece;

/// What one piece leaves.
typedef struct tw_piece_outcome {
  /// The piece.
  struct tw_piece piece;
  /// End play or clearance at assembly against its window, mm.
  struct tw_judgment cold;
  /// The same hot, mm.
  struct tw_judgment hot;
  /// Distance of the cold value from the target, mm.
  double off_target_mm;
  /// Distance of the cold value from the middle of its window, mm.
  double off_middle_mm;
  /// Chance that the choice counts: of the cold window, or at least that of both windows.
  double chance;
  /// The best estimates lie inside what the choice counts: the cold window, or both.
  bool inside;
} tw_piece_outcome;

/// Which piece to fit. Positions count from 0 in the list of pieces, and mean nothing unless a piece was found.
typedef struct tw_piece_choice {
  /// A piece in stock lands inside.
  bool found;
  /// The piece to fit by the rule asked for.
  uint32_t position;
  /// The piece by nearest target.
  uint32_t nearest_target;
  /// The piece by least risk.
  uint32_t least_risk;
  /// A piece that is not in stock would be chosen before it.
  bool missing_better;
  /// Position of that piece; counts only with `missing_better`.
  uint32_t missing;
  /// Thickness that would hit the target, mm.
  double wanted_mm;
  /// Thicknesses that land inside what the choice counts, mm. Lower +∞ and upper −∞ if none can.
  struct tw_limits inside_mm;
  /// Thicknesses that would be a GO at this uncertainty, mm; with the greatest uncertainty of a piece on the list.
  struct tw_limits go_mm;
} tw_piece_choice;

/// The piece that a rule chooses, and what it leaves.
typedef struct tw_picked_piece {
  /// Its position in the list, from 0.
  uint32_t position;
  /// Its thickness, mm.
  struct tw_reading thickness_mm;
  /// End play or clearance that it leaves at assembly, mm.
  struct tw_reading result_mm;
  /// Chance that the choice counts.
  double chance;
} tw_picked_piece;

/// What measuring one input would bring.
typedef struct tw_measure_gain {
  /// Position of the input in the budget.
  uint32_t input;
  /// Its share in the variance of the result.
  double share;
  /// Share of this input and of all before it in the order of the list.
  double share_so_far;
  /// Standard uncertainty of the input now, in its own unit.
  double u_now;
  /// Standard uncertainty that measuring it would leave; `u_now` where measuring would not be better.
  double u_measured;
  /// Standard uncertainty of the result then.
  double u_of_result;
  /// Chance that the judgment would then be a GO.
  double chance_go;
  /// Chance that the judgment would then be a NO-GO.
  double chance_no_go;
  /// Standard uncertainty of the input that would decide the case if the value stays; 0 where no measurement of it would.
  double u_needed;
  /// Measuring it well enough would decide the case if the value stays; true where it is decided already.
  bool enough;
} tw_measure_gain;

/// The inputs by what they weigh. Only the first `count` entries are used.
typedef struct tw_measure_plan {
  /// One entry for each input, by falling share in the variance; equal shares in the order of the budget.
  struct tw_measure_gain gains[TW_MAX_INPUTS];
  /// Number of inputs.
  uint32_t count;
} tw_measure_plan;

/// Depth of a drum and the heights of what stands in it, without the ring or plate to be chosen.
typedef struct tw_pack_heights {
  /// From the piston at rest to the outer wall of the ring groove, mm.
  struct tw_reading drum_depth_mm;
  /// Number of friction plates.
  uint32_t friction_plates;
  /// Thickness of one friction plate, mm, soaked and pressed together.
  struct tw_reading friction_mm;
  /// Number of steel plates.
  uint32_t steel_plates;
  /// Thickness of one steel plate, mm.
  struct tw_reading steel_mm;
  /// Thickness of the pressure plate, mm; 0 for none, or where it is the piece to be chosen.
  struct tw_reading pressure_plate_mm;
  /// Free height of the wave plate, mm; 0 for none.
  struct tw_reading wave_plate_mm;
} tw_pack_heights;

/// Room for the ring or plate of a pack.
typedef struct tw_pack_room {
  /// Height of everything in the drum, mm.
  double plates_mm;
  /// What is left for the ring and the clearance, mm.
  struct tw_reading room_mm;
  /// Where its uncertainty comes from: drum, frictions, steels, pressure plate, wave plate.
  struct tw_budget budget;
} tw_pack_room;

/// What a piston travels, and how far its seal may.
typedef struct tw_piston_stroke {
  /// Clearance of the pack, mm.
  struct tw_reading clearance_mm;
  /// What the wave plate gives way until it is flat, mm; 0 for none.
  struct tw_reading wave_mm;
  /// What plates, ring and drum give way under pressure, mm.
  struct tw_reading bend_mm;
  /// PistonTravel at which the seal leaves its land, mm.
  struct tw_reading land_mm;
} tw_piston_stroke;

/// PistonTravel of a piston against its seal land.
typedef struct tw_piston_travel {
  /// What the piston travels, mm.
  struct tw_reading travel_mm;
  /// The land to spare, land less travel, against 0, mm.
  struct tw_judgment judgment;
  /// Where its uncertainty comes from: clearance, wave plate, bend, land.
  struct tw_budget budget;
} tw_piston_travel;

/// Oil and time to close a pack.
typedef struct tw_apply_fill {
  /// Area of the piston, mm².
  double area_mm2;
  /// Oil that the stroke takes, mL.
  struct tw_reading volume_ml;
  /// Time that the flow needs for it, s.
  struct tw_reading time_s;
} tw_apply_fill;

/// A tire as its designation states it. A part that the designation leaves out is 0.
typedef struct tw_tire {
  /// How the size is written.
  tw_tire_kind kind;
  /// Service letters.
  tw_tire_service service;
  /// Ply construction.
  tw_tire_plies plies;
  /// Load range letter.
  tw_load_range load_range;
  /// Speed symbol inside the size: ZR, VR, HR or SR.
  tw_speed_symbol speed_in_size;
  /// Speed symbol beside the load index.
  tw_speed_symbol speed_symbol;
  /// Nominal section width, mm (metric and no-aspect sizes).
  double width_mm;
  /// Section height over section width, % (metric sizes).
  double aspect_pct;
  /// Nominal overall diameter, inches (flotation sizes).
  double diameter_in;
  /// Nominal section width, inches (flotation and inch sizes).
  double width_in;
  /// Rim diameter code: nominal inches, whole or half.
  double rim_in;
  /// Load index, single fitment.
  uint16_t load_index;
  /// Load index, dual fitment.
  uint16_t load_index_dual;
  /// The service description stands in parentheses: the speed symbol is exceeded.
  bool above_symbol;
  /// XL, reinforced: higher load at higher pressure.
  bool extra_load;
  /// RF inside the size: run-flat.
  bool run_flat;
  /// M+S: mud and snow.
  bool mud_snow;
  /// The designation did not say how the plies run; the lenient reader assumed radial.
  bool plies_assumed;
} tw_tire;

/// A size designation, zero-terminated.
typedef struct tw_designation {
  /// UTF-8, in fact ASCII.
  char text[48];
} tw_designation;

/// Design outer diameter and what it is made of.
typedef struct tw_regulation_diameter {
  /// Nominal rim diameter d, whole mm.
  double rim_mm;
  /// Section height H, mm.
  double section_height_mm;
  /// Outer diameter D, mm.
  double diameter_mm;
  /// Where it comes from.
  tw_diameter_basis basis;
} tw_regulation_diameter;

/// How far a tire rolls: the same fact in every form the trade uses, with its standard uncertainty.
typedef struct tw_rolling {
  /// Rolling circumference: distance per turn under load.
  struct tw_reading circumference_mm;
  /// Effective rolling radius: circumference over 2π. Neither the free nor the static loaded radius.
  struct tw_reading radius_mm;
  /// Revolutions per kilometer.
  struct tw_reading rev_per_km;
  /// Revolutions per mile.
  struct tw_reading rev_per_mile;
} tw_rolling;

/// The three radii of one wheel, which must not be mixed.
typedef struct tw_wheel_radii {
  /// Free radius: half the outer diameter, no load.
  double free_mm;
  /// Static loaded radius: hub to ground, standing under load.
  double static_loaded_mm;
  /// Effective rolling radius: the one that speeds follow from.
  double effective_mm;
} tw_wheel_radii;

/// A combination, and the drive line that pulls it.
typedef struct tw_haul {
  /// Truck and trailer as the road feels them.
  struct tw_combination combination;
  /// Axle, transfer case and tires.
  struct tw_driveline driveline;
  /// Efficiency of axle and transfer case, above 0 to 1.
  double axle_efficiency;
  /// Density of the air.
  double air_density_kg_m3;
} tw_haul;

/// A gear that a unit offers.
typedef struct tw_offered_gear {
  /// Input over output speed; negative in reverse.
  double ratio;
  /// Efficiency from input to output on the road, above 0 to 1.
  double efficiency;
  /// Mask of the elements that carry under drive, one-way clutches included.
  uint32_t closed;
  /// Mask of the one-way clutches among them: where it is not 0, the gear does not brake.
  uint32_t one_way;
} tw_offered_gear;

/// What a unit offers. The ratings are those of its record; nothing here computes one.
typedef struct tw_gearing {
  /// Gears in the order of the record; only the first `count` are used.
  struct tw_offered_gear gears[TW_MAX_OFFERED_GEARS];
  /// Number of gears.
  uint32_t count;
  /// Rated torque at the input (turbine) in the forward gears.
  double rated_input_nm;
  /// Rated torque at the input in reverse.
  double rated_reverse_nm;
  /// Rated torque at the output.
  double rated_output_nm;
} tw_gearing;

/// How a gear is chosen: the highest that keeps a reserve, with the lock-up clutch closed.
typedef struct tw_gear_rule {
  /// Share of full torque that stays in hand, 0 to below 1.
  double torque_reserve;
  /// Lowest engine speed with the lock-up clutch closed.
  double lowest_locked_rpm;
  /// Step by which the speed is lowered where no gear holds.
  double speed_step_km_h;
} tw_gear_rule;

/// A combination with the engine, the unit and the drive line that pull it.
typedef struct tw_rig {
  /// Combination and drive line.
  struct tw_haul haul;
  /// What the unit offers.
  struct tw_gearing gearing;
  /// Full-throttle torque of the engine.
  struct tw_engine_curve engine;
  /// Choice of gear.
  struct tw_gear_rule rule;
} tw_rig;

/// A sump as one temperature: fluid, case and what they touch.
typedef struct tw_heat_node {
  /// Heat that warms it by 1 K: fluid, case and parts.
  double heat_capacity_j_k;
  /// What the case gives to the air for each kelvin; 0 or more.
  double case_w_k;
  /// The air around the case.
  double air_c;
  /// What the cooler takes for each kelvin between sump and its air, [`super::CoolerHeat::conductance_w_k`]; 0 without one.
  double cooler_w_k;
  /// The air (or coolant) that enters the cooler.
  double cooler_air_c;
} tw_heat_node;

/// What a unit loses beside the efficiency of its gears, and the sump that takes it.
typedef struct tw_heat_model {
  /// Drag of open packs, bearings and oil, seen at the input; 0 where the efficiencies hold it.
  double drag_nm;
  /// Gauge pressure of the pump; 0 where the efficiencies hold it.
  double pump_kpa;
  /// Flow of the pump.
  double pump_l_min;
  /// Efficiency of the pump, above 0 to 1.
  double pump_efficiency;
  /// The sump.
  struct tw_heat_node node;
  /// Temperature that must not be passed.
  double limit_c;
} tw_heat_model;

/// A piece of road.
typedef struct tw_road_piece {
  /// Length along the road.
  double length_m;
  /// Grade, rise over horizontal run; negative downhill.
  double grade_pct;
  /// Speed asked for.
  double speed_km_h;
} tw_road_piece;

/// A piece of road as it was driven.
typedef struct tw_driven_piece {
  /// Grade.
  double grade_pct;
  /// Speed that the gear held.
  double speed_km_h;
  /// Place of the gear.
  uint32_t gear;
  /// Engine speed.
  double engine_rpm;
  /// Torque at the input; negative downhill.
  double input_nm;
  /// Torque at the output.
  double output_nm;
  /// The same over their ratings, the greater of both.
  double use_of_rating;
  /// Heat.
  double loss_kw;
  /// Time on the piece.
  double time_s;
  /// Sump at its end.
  double end_c;
  /// Temperature that it goes to on this piece.
  double steady_c;
} tw_driven_piece;

/// A road of grades as it was driven.
typedef struct tw_climb {
  /// Length.
  double distance_m;
  /// Sum of what the pieces rise.
  double up_m;
  /// Sum of what they fall.
  double down_m;
  /// Time.
  double time_s;
  /// Hottest sump.
  double peak_c;
  /// Piece at whose end (or, for the first, at whose start) it is hottest.
  uint32_t peak_piece;
  /// Sump at the end.
  double end_c;
  /// Time at which the limit is reached; infinite where it is not.
  double limit_after_s;
  /// Distance at which it is reached; infinite where it is not.
  double limit_after_m;
  /// Time above the limit.
  double over_limit_s;
  /// Heat made.
  double heat_j;
  /// Work at the wheels, uphill less downhill.
  double wheel_work_j;
  /// What of it lifted the combination; it comes back downhill.
  double lift_work_j;
  /// Greatest torque over its rating.
  double use_of_rating;
  /// Piece of it.
  uint32_t use_piece;
} tw_climb;

/// One gear on a grade.
typedef struct tw_gear_pull {
  /// Input over output speed.
  double ratio;
  /// Engine and input speed, lock-up clutch closed.
  double engine_rpm;
  /// Torque at the input; negative on the overrun.
  double input_nm;
  /// Full-throttle torque of the engine at this speed; 0 where its table does not say.
  double full_nm;
  /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
  double reserve;
  /// Torque at the input over its rating.
  double use_of_input;
  /// How the gear stands.
  tw_gear_standing standing;
} tw_gear_pull;

/// Every gear on a grade at one speed.
typedef struct tw_pull {
  /// Grade, rise over horizontal run.
  double grade_pct;
  /// Road speed.
  double speed_km_h;
  /// What the road takes.
  struct tw_road_load load;
  /// Output-shaft speed.
  double output_rpm;
  /// Torque at the output shaft; negative downhill, where the road pushes.
  double output_nm;
  /// Torque at the output over its rating.
  double use_of_output;
  /// The gears in the order of the unit; only the first `count` are used.
  struct tw_gear_pull gears[TW_MAX_OFFERED_GEARS];
  /// Number of gears.
  uint32_t count;
  /// Place of the highest gear that holds with the reserve; `TW_NO_GEAR` where none does.
  uint32_t chosen;
  /// Place of the highest gear that holds with the reserve and stays within the ratings: lower than `chosen` where that
  /// one is beyond them, which advises a downshift; `TW_NO_GEAR` where no gear does, which advises less speed or less load.
  uint32_t advised;
  /// What the chosen gear is nearest to, or farthest beyond.
  tw_pull_limit limit;
  /// How near: 1 at the limit.
  double use_of_limit;
} tw_pull;

/// A pull at which the sump comes to rest below its limit.
typedef struct tw_cool_pull {
  /// The pull.
  struct tw_pull pull;
  /// Heat in its gear.
  double loss_kw;
  /// Temperature that the sump goes to.
  double steady_c;
  /// Steps by which the speed was lowered.
  uint32_t steps;
} tw_cool_pull;

/// Noise of elevations.
typedef struct tw_elevation_noise {
  /// Standard uncertainty of one elevation against its neighbors far away; what all of them share does not matter.
  double u_m;
  /// Distance over which the error stays alike, 0 where every point errs for itself.
  double correlation_m;
} tw_elevation_noise;

/// Elevation and grade at a point of a drive.
typedef struct tw_slope_point {
  /// Distance along the road.
  double distance_m;
  /// Elevation, smoothed.
  double elevation_m;
  /// Grade.
  double grade_pct;
  /// Its standard uncertainty.
  double u_grade_pct;
  /// Points in the window.
  uint32_t points;
} tw_slope_point;

/// What a drive climbs and falls in all.
typedef struct tw_total_climb {
  /// Sum of the rises.
  double up_m;
  /// Sum of the falls.
  double down_m;
  /// Last elevation less the first.
  double net_m;
  /// Turning points that lie more than the dead band apart.
  uint32_t turns;
} tw_total_climb;

/// What is rated.
typedef struct tw_rated_for {
  /// The rear axle has dual wheels.
  bool dual_rear;
  /// Gross vehicle weight rating of the truck, kg.
  double gvwr_kg;
  /// Trailer weight rating, kg.
  double trailer_kg;
  /// Brakes are required on that trailer.
  bool trailer_brakes;
} tw_rated_for;

/// A criterion and how it came out.
typedef struct tw_criterion_check {
  /// Which.
  tw_criterion criterion;
  /// What was given; NaN where nothing was.
  struct tw_reading value;
  /// What is asked; no limits where no figure is known.
  struct tw_limits limits;
  /// Chance that the true value lies within the limits; 0 where it was not judged.
  double chance;
  /// CriterionOutcome.
  tw_criterion_outcome outcome;
} tw_criterion_check;

/// A unit at work.
typedef struct tw_running {
  /// Torque at the input, either sign.
  double input_nm;
  /// Speed of the input.
  double input_rpm;
  /// Efficiency of the gear, above 0 to 1.
  double efficiency;
  /// Drag of open packs, bearings and oil, seen at the input; 0 where the efficiency holds it.
  double drag_nm;
  /// Gauge pressure of the pump; 0 where the efficiency holds it.
  double pump_kpa;
  /// Flow of the pump.
  double pump_l_min;
  /// Efficiency of the pump, above 0 to 1.
  double pump_efficiency;
  /// Heat of the converter; 0 while it is locked.
  double converter_kw;
} tw_running;

/// What it turns into heat.
typedef struct tw_unit_loss {
  /// Meshes, and whatever else the efficiency of the gear holds.
  double mesh_kw;
  /// Drag.
  double drag_kw;
  /// Pump: all that drives it ends as heat.
  double pump_kw;
  /// Converter.
  double converter_kw;
  /// Sum.
  double total_kw;
} tw_unit_loss;

/// What a loss warms the oil that flows through.
typedef struct tw_through_flow {
  /// Loss.
  double loss_kw;
  /// Rise from inlet to outlet.
  double rise_k;
} tw_through_flow;

/// A sump after a time.
typedef struct tw_warmed {
  /// Temperature then.
  double temp_c;
  /// Temperature that it goes to; infinite without any cooling.
  double steady_c;
  /// Time in which it goes 63 % of the way; infinite without any cooling.
  double time_constant_s;
} tw_warmed;

/// When a sump reaches a limit.
typedef struct tw_time_to {
  /// Time until then: 0 where it is there, infinite where it never will be.
  double time_s;
  /// Temperature that it goes to; infinite without any cooling.
  double steady_c;
  /// See `tw_warmed`.
  double time_constant_s;
  /// Whether it ever reaches the limit.
  bool reached;
} tw_time_to;

/// A cooler at a flow of oil and air.
typedef struct tw_cooler {
  /// Heat that passes for each kelvin of mean difference: its size, at these flows.
  double ua_w_k;
  /// Heat that the oil carries for each kelvin, [`super::flow_heat_w_k`].
  double oil_w_k;
  /// Heat that the air (or coolant) carries for each kelvin.
  double air_w_k;
  /// How the two pass each other.
  tw_arrangement arrangement;
} tw_cooler;

/// What a cooler takes.
typedef struct tw_cooler_heat {
  /// Transfer units.
  double transfer_units;
  /// Lesser over greater heat capacity rate.
  double capacity_ratio;
  /// Share of the greatest possible heat.
  double effectiveness;
  /// Heat for each kelvin between the two that enter: what a [`super::HeatNode`] takes.
  double conductance_w_k;
  /// Heat; negative where the air warms the oil.
  double power_kw;
  /// Oil that leaves.
  double oil_out_c;
  /// Air that leaves.
  double air_out_c;
} tw_cooler_heat;

/// Temperatures that a cooler must bring about.
typedef struct tw_cooler_task {
  /// Oil that enters.
  double oil_in_c;
  /// Oil that leaves.
  double oil_out_c;
  /// Air (or coolant) that enters.
  double air_in_c;
} tw_cooler_task;

/// The size of a cooler.
typedef struct tw_cooler_size {
  /// Heat that it takes.
  double power_kw;
  /// Air that leaves.
  double air_out_c;
  /// Share of the greatest possible heat.
  double effectiveness;
  /// Transfer units.
  double transfer_units;
  /// Its size.
  double ua_w_k;
  /// Logarithmic mean difference of a counterflow cooler of these four temperatures.
  double log_mean_k;
} tw_cooler_size;

/// A combination at the point of moving up a grade.
typedef struct tw_launch {
  /// Turbine torque at stall, N·m: engine torque × torque ratio.
  struct tw_reading turbine_nm;
  /// Gear ratio, input over output; negative in reverse.
  double gear_ratio;
  /// Efficiency of the gear, above 0 to 1.
  double gear_efficiency;
  /// Axle, transfer case and tire.
  struct tw_driveline driveline;
  /// Efficiency of axle and transfer case, above 0 to 1.
  double axle_efficiency;
  /// Truck and trailer, kg.
  struct tw_reading mass_kg;
  /// Rolling resistance over weight.
  double rolling_coefficient;
  /// What breaking away takes on top, over weight: cold tires, soft ground; 0 where it is not counted.
  double break_away_coefficient;
} tw_launch;

/// Whether a combination moves up a grade, and what that rests on.
typedef struct tw_launch_force {
  /// Torque at the transmission output, N·m.
  double output_nm;
  /// Force of the driven wheels, N.
  double tractive_n;
  /// Share of the weight along the grade, N.
  double grade_n;
  /// Rolling and break-away, N.
  double rolling_n;
  /// Both: what it takes, N.
  double needed_n;
  /// What is left to accelerate with, N; negative where it does not move.
  double left_n;
  /// That it moves.
  struct tw_judgment judgment;
  /// Where the uncertainty comes from: turbine torque, tire, mass, in this order.
  struct tw_budget budget;
  /// Grade at which the best estimate just moves, %; 100 for that or steeper, 0 where it does not even move on the level.
  double largest_grade_pct;
  /// Largest grade that is a GO under the rule, %.
  double proven_grade_pct;
} tw_launch_force;

/// How a rear-driven truck and its trailer stand on a grade.
typedef struct tw_stance {
  /// Load of the driven rear axle on the level, kg, the hitch load counted.
  double driven_axle_kg;
  /// Truck, kg.
  double truck_kg;
  /// Trailer, kg; 0 without one.
  double trailer_kg;
  /// Wheelbase, mm.
  double wheelbase_mm;
  /// Height of the truck's center of gravity, mm; 0 leaves its shift out.
  double cg_height_mm;
  /// Height of the ball or pin, mm; 0 leaves the pull of the trailer out.
  double hitch_height_mm;
  /// The driven axle is the upper one: the truck climbs backward.
  bool tail_up;
} tw_stance;

/// What the tires of the driven axle carry on a grade.
typedef struct tw_launch_grip {
  /// Load that the grade shifts to the rear axle per unit of sin θ, kg; negative tail up.
  double shift_kg;
  /// Force of the ground on the axle, N.
  double normal_n;
  /// Force at which its tires slip, N.
  double grip_n;
  /// What it takes to move, N.
  double needed_n;
  /// Grade at which the tires slip, %; 100 for that or steeper, 0 where they slip on the level.
  double largest_grade_pct;
} tw_launch_grip;

/// Mass that a force accelerates, and what it is made of.
typedef struct tw_equivalent_mass {
  /// What the wheels add, kg.
  double wheels_kg;
  /// What transmission, and engine where it is locked to it, add, kg.
  double train_kg;
  /// All, kg.
  double total_kg;
  /// All over the mass that stands on the scale.
  double factor;
} tw_equivalent_mass;

/// A combination that accelerates at full throttle.
typedef struct tw_run_up {
  /// Mass, rolling and drag.
  struct tw_combination combination;
  /// Axle, transfer case and tire.
  struct tw_driveline driveline;
  /// Efficiency of axle and transfer case, above 0 to 1.
  double axle_efficiency;
  /// Density of the air, kg/m³.
  double air_density_kg_m3;
  /// Grade, %; 0 on the level, −100 to 100.
  double grade_pct;
  /// All wheels together, kg·m².
  double wheel_inertia_kg_m2;
  /// Engine with impeller, kg·m².
  double engine_inertia_kg_m2;
  /// What the engine gives today of its curve: altitude, accessories.
  struct tw_engine_today today;
  /// Lowest engine speed with the lock-up clutch closed, 1/min.
  double lowest_locked_rpm;
  /// Force at which the driven tires slip, N; infinite where it is not looked at.
  double grip_n;
  /// Time of a shift, in which the speed stands still, s.
  double shift_s;
} tw_run_up;

/// A gear as the run-up needs it.
typedef struct tw_run_up_gear {
  /// Ratio, input over output, above 0.
  double ratio;
  /// Efficiency, above 0 to 1.
  double efficiency;
  /// Inertia of the train in this gear at its output, kg·m²: [`super::output_inertia_kg_m2`], the turbine counted.
  double output_inertia_kg_m2;
  /// The lock-up clutch may close in this gear.
  bool lockable;
} tw_run_up_gear;

/// A run-up.
typedef struct tw_run_up_time {
  /// The speed asked for is reached.
  bool reaches;
  /// Speed at the end, km/h: the one asked for, or where nothing is left to accelerate with.
  double reached_km_h;
  /// Time to that speed, s.
  double time_s;
  /// Distance to that speed, m.
  double distance_m;
  /// Shifts on the way.
  uint32_t shifts;
  /// Position of the last gear.
  uint32_t last_gear;
  /// Force of the driven wheels at the start, N, tire grip counted.
  double start_n;
  /// Acceleration at the start, m/s².
  double start_m_s2;
} tw_run_up_time;

/// A truck on the scale: loaded, with everybody in it, without its trailer.
typedef struct tw_axle_weights {
  /// Front axle, kg.
  struct tw_reading front_kg;
  /// Rear axle, kg; the sum of both on a tandem.
  struct tw_reading rear_kg;
} tw_axle_weights;

/// A loaded trailer.
typedef struct tw_trailer {
  /// Mass, kg, weighed uncoupled: what its axles and its coupler or pin carry together.
  struct tw_reading mass_kg;
  /// What rests on the hitch without a weight-distributing hitch, kg.
  struct tw_reading hitch_kg;
} tw_trailer;

/// Where a truck carries its trailer.
typedef struct tw_levers {
  /// Front axle to rear axle, mm; to the middle of a tandem.
  double wheelbase_mm;
  /// Ball or king pin behind the rear axle, mm; negative ahead of it.
  double overhang_mm;
} tw_levers;

/// A weight-distributing hitch: bars that bend truck and trailer against each other. `TW_DISTRIBUTION_NONE` without one.
typedef struct tw_distribution {
  /// Moment of the bars on the truck, nose down, N·m; 0 or more.
  double moment_nm;
  /// Ball to the middle of the trailer's axles, mm.
  double ball_to_axle_mm;
} tw_distribution;

/// Truck and trailer as weighed, and how they are coupled.
typedef struct tw_coupled {
  /// The truck without its trailer.
  struct tw_axle_weights weighed;
  /// The trailer; its mass above 0.
  struct tw_trailer trailer;
  /// Wheelbase and overhang.
  struct tw_levers levers;
  /// Weight-distributing hitch.
  struct tw_distribution distribution;
} tw_coupled;

/// A load against its rating.
typedef struct tw_rating_check {
  /// Which.
  tw_rating_kind kind;
  /// The load, kg.
  struct tw_reading load_kg;
  /// Its rating, kg.
  double rating_kg;
  /// Rating less load, kg.
  double left_kg;
  /// Load over rating.
  double used_share;
  /// Trailer at which the best estimate of the load meets the rating, kg; infinite where no trailer does.
  double trailer_limit_kg;
  /// Heaviest trailer that is a GO under the rule at the same relative uncertainties, kg.
  double proven_trailer_kg;
  /// The load against the rating.
  struct tw_judgment judgment;
  /// Where its uncertainty comes from: front axle, rear axle, hitch load, trailer, in this order.
  struct tw_budget budget;
  /// What to weigh better where it is NOT PROVEN.
  tw_weigh_next weigh_next;
} tw_rating_check;

/// The ratings of a combination, from placards and labels; infinite where one is not known.
typedef struct tw_tow_ratings {
  /// Gross combination weight rating, kg.
  double gcwr_kg;
  /// Gross vehicle weight rating of the truck, kg.
  double gvwr_kg;
  /// Front gross axle weight rating, kg.
  double gawr_front_kg;
  /// Rear gross axle weight rating, kg.
  double gawr_rear_kg;
  /// Tires of the front axle together, kg: [`super::axle_tires_kg`].
  double tires_front_kg;
  /// Tires of the rear axle together, kg.
  double tires_rear_kg;
  /// Heaviest trailer that the vehicle maker allows, kg.
  double maker_trailer_kg;
  /// Heaviest trailer that the hitch is rated for, kg.
  double hitch_trailer_kg;
  /// Greatest hitch load that the hitch is rated for, kg.
  double hitch_load_kg;
  /// Gross rating of the trailer, kg.
  double trailer_gross_kg;
} tw_tow_ratings;

/// What each axle carries with the trailer coupled.
typedef struct tw_combination_loads {
  /// What rests on the hitch, kg.
  struct tw_reading hitch_kg;
  /// Change of the front axle by the trailer, kg; negative where it is lifted.
  double front_change_kg;
  /// Change of the rear axle, kg.
  double rear_change_kg;
  /// Front axle, kg.
  struct tw_reading front_kg;
  /// Rear axle, kg.
  struct tw_reading rear_kg;
  /// Both: what the truck weighs with the trailer on its hitch, kg.
  struct tw_reading truck_kg;
  /// Axles of the trailer together, kg.
  struct tw_reading trailer_axles_kg;
  /// Truck and trailer, kg.
  struct tw_reading combination_kg;
} tw_combination_loads;

/// One rating of a review.
typedef struct tw_rating_row {
  /// Which.
  tw_rating_kind kind;
  /// The rating was given. If not, the row holds the load only, and its verdict is NOT PROVEN.
  bool given;
  /// The load, kg.
  struct tw_reading load_kg;
  /// Its rating, kg; infinite where none was given.
  double rating_kg;
  /// Rating less load, kg.
  double left_kg;
  /// Load over rating; 0 where none was given.
  double used_share;
  /// Trailer at which the load meets the rating, kg; infinite where no trailer does.
  double trailer_limit_kg;
  /// Heaviest trailer that is a GO, kg.
  double proven_trailer_kg;
  /// Chance that the load does not exceed the rating; 0 where none was given.
  double chance;
  /// Verdict.
  tw_verdict verdict;
  /// What to weigh better.
  tw_weigh_next weigh_next;
} tw_rating_row;

/// Every rating of a combination.
typedef struct tw_rating_review {
  /// Axle loads.
  struct tw_combination_loads loads;
  /// One row for each rating, in the order of their numbers.
  struct tw_rating_row rows[TW_RATING_COUNT];
  /// TowRatings that were given.
  uint32_t given;
  /// Position of the row that allows the lightest trailer.
  uint32_t governing;
  /// Position of the row with the greatest share used.
  uint32_t fullest;
  /// Trailer at which the governing rating is met, kg.
  double trailer_limit_kg;
  /// Heaviest trailer that is a GO for every rating that was given, kg.
  double proven_trailer_kg;
  /// Payload left: GVWR less truck and hitch load, kg; infinite without a GVWR.
  double payload_left_kg;
  /// The worst verdict of the rows; never GO while a rating is missing.
  tw_verdict verdict;
} tw_rating_review;

/// The largest speed on a grade.
typedef struct tw_largest_speed {
  /// Road speed.
  double speed_km_h;
  /// Place of the gear.
  uint32_t gear;
  /// Engine speed.
  double engine_rpm;
  /// Torque at the input.
  double input_nm;
  /// The same over its rating.
  double use_of_input;
  /// Torque at the output over its rating.
  double use_of_output;
  /// What keeps it from going faster.
  tw_speed_limit limit;
} tw_largest_speed;

/// One gear on a grade with the lock-up clutch open.
typedef struct tw_unlocked_pull {
  /// Speed of turbine and input shaft.
  double turbine_rpm;
  /// Torque there.
  double turbine_nm;
  /// Turbine speed over engine speed.
  double speed_ratio;
  /// Turbine torque over engine torque.
  double torque_ratio;
  /// Engine speed.
  double engine_rpm;
  /// Engine torque that the converter takes there.
  double engine_nm;
  /// Full-throttle torque of the engine at that speed; 0 where its table does not say.
  double full_nm;
  /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
  double reserve;
  /// The engine can give that torque at that speed.
  bool holds;
  /// Torque at the turbine over the rating of the input: the converter multiplies, so this may pass 1 below full throttle.
  double use_of_input;
  /// Heat of the converter.
  double converter_kw;
} tw_unlocked_pull;

/// Speeds of the planets of one set per unit input speed; open where the tooth count or a member speed is not known.
typedef struct tw_planet_speeds {
  /// First planet on its pin: relative to the carrier.
  struct tw_fraction planet_on_pin;
  /// First planet in space.
  struct tw_fraction planet;
  /// Second planet on its pin; the two steps of a stepped planet are one body.
  struct tw_fraction planet_2_on_pin;
  /// Second planet in space.
  struct tw_fraction planet_2;
} tw_planet_speeds;

/// How many engagements fall into each kind of state.
typedef struct tw_state_counts {
  /// States with a ratio.
  uint32_t gear;
  /// Neutral states.
  uint32_t neutral;
  /// States that hold only the input.
  uint32_t input_held;
  /// States that hold only the output.
  uint32_t output_held;
  /// States that hold both.
  uint32_t tied_up;
} tw_state_counts;

/// The conditions of assembly of one set, with their numbers. Displayed, it names each condition and the mend.
typedef struct tw_assembly {
  /// Nearest places of the planets to equal spacing, from the first planet.
  double planet_angles_deg[TW_MAX_PLANETS];
  /// Least gap between the tips of neighboring planets, in modules; infinite for one planet, 0 where not known.
  double neighbor_gap_modules;
  /// Places around the carrier in which a planet meshes; 0 if it meshes anywhere.
  uint32_t places;
  /// Bit N is set if N planets mesh equally spaced, N from 1 to 12.
  uint32_t equal_planets;
  /// Teeth by which sun and ring miss a common axis; 0 where it is met or not known. For a double-pinion set, or the short
  /// planets of a two-sun set, teeth by which the planets of a pair fail to reach each other.
  int32_t coaxial_excess;
  /// Places left over when they are shared equally among the planets.
  uint32_t places_left;
  /// Planets, or pairs of planets; 0 where not known.
  uint8_t planets;
  /// Sun, planets and ring share an axis.
  tw_finding coaxial;
  /// The planets mesh equally spaced.
  tw_finding equal_spacing;
  /// Neighboring planets are clear of each other.
  tw_finding neighbors;
} tw_assembly;

/// Pulses of two counters over the same window.
typedef struct tw_pulse_count {
  /// Pulses of the input counter.
  uint32_t input_pulses;
  /// Pulses of the output counter.
  uint32_t output_pulses;
  /// Teeth of the input counter's wheel.
  uint16_t input_teeth;
  /// Teeth of the output counter's wheel.
  uint16_t output_teeth;
} tw_pulse_count;

/// Times of pulse edges of two counters.
typedef struct tw_timed_edges {
  /// Time from the first to the last edge of the input counter.
  double input_s;
  /// Time from the first to the last edge of the output counter.
  double output_s;
  /// Smallest step of the timer, µs.
  double tick_us;
  /// Intervals between the edges of the input counter: edges less one.
  uint32_t input_intervals;
  /// Intervals between the edges of the output counter: edges less one.
  uint32_t output_intervals;
  /// Teeth of the input counter's wheel.
  uint16_t input_teeth;
  /// Teeth of the output counter's wheel.
  uint16_t output_teeth;
} tw_timed_edges;

/// How a measured ratio lies to the ratio of a candidate.
typedef struct tw_ratio_fit {
  /// Measured ratio.
  struct tw_reading measured;
  /// Ratio of the candidate.
  struct tw_fraction candidate;
  /// Measured less candidate, in standard uncertainties.
  double z;
  /// Chance that a reading of this candidate lies as far off as this, either way.
  double chance;
  /// Whether the stated probability rules the candidate out.
  bool excluded;
} tw_ratio_fit;

/// A gear as it is commanded: elements that are applied, and one-way clutches that are meant to hold.
typedef struct tw_commanded {
  /// Mask of the elements that are applied.
  uint32_t closed;
  /// Mask of the one-way clutches that hold it under drive.
  uint32_t one_way;
} tw_commanded;

/// One failed element.
typedef struct tw_element_fault {
  /// Number of the element.
  uint8_t element;
  /// How it fails.
  tw_failure failure;
} tw_element_fault;

/// What a commanded gear does with a failed element.
typedef struct tw_symptom {
  /// Under drive.
  tw_response drive;
  /// When the vehicle drives the input.
  tw_response coast;
  /// State under drive.
  tw_state_kind kind;
  /// Ratio shown under drive; open where the state is not a gear.
  struct tw_fraction ratio;
} tw_symptom;

/// What a fault does to a list of gears: masks of places in the list, bit 0 the first gear.
typedef struct tw_signature {
  /// The fault.
  struct tw_element_fault fault;
  /// Gears without drive.
  uint32_t no_drive;
  /// Gears that drive but no longer brake.
  uint32_t no_braking;
  /// Gears that show another ratio.
  uint32_t other_ratio;
  /// Neutral that creeps.
  uint32_t creeps;
  /// Gears that brake where they should coast.
  uint32_t brakes;
  /// Gears, or neutral, that tie up.
  uint32_t tied_up;
} tw_signature;

/// What was seen in one commanded gear.
typedef struct tw_observation {
  /// The gear as commanded.
  struct tw_commanded commanded;
  /// `TW_LOAD_DRIVE` or `TW_LOAD_COAST`.
  tw_load load;
  /// What it did. Report gears that were tried and are right, too: they speak against suspects.
  tw_response seen;
  /// Ratio measured under drive; value 0 where none was.
  struct tw_reading ratio;
} tw_observation;

/// One suspect of a `tw_diagnosis`.
typedef struct tw_suspect {
  /// The fault.
  struct tw_element_fault fault;
  /// 1 for the first; suspects that explain the observations equally well share a rank.
  uint8_t rank;
  /// Faults seen that this one shows.
  uint8_t matched;
  /// Faults seen in gears that this one leaves alone.
  uint8_t missed;
  /// Gears in which this one would show something else than was seen.
  uint8_t contradicted;
  /// Gears seen to be right that this one leaves right.
  uint8_t agreed;
} tw_suspect;

/// Suspects, best explanation first. Only the first `count` are used.
typedef struct tw_diagnosis {
  /// Suspects by rank.
  struct tw_suspect suspects[TW_MAX_SUSPECTS];
  /// Number of suspects.
  uint32_t count;
} tw_diagnosis;

/// Gears that were tried, as masks of places in a list of gears: bit 0 is the first.
typedef struct tw_tried_gears {
  /// Under drive.
  uint32_t drive;
  /// While the vehicle drives the input.
  uint32_t coast;
} tw_tried_gears;

/// The gear to try next.
typedef struct tw_next_gear {
  /// What its outcome tells, bit: 1 halves the suspects.
  double information_bit;
  /// Place in the list of gears.
  uint32_t gear;
  /// Different outcomes among the suspects, 2 or more.
  uint32_t outcomes;
  /// Suspects with which the gear would tie up: try it standing, on the lift, or not at all.
  uint32_t tie_ups;
  /// Whether to look under drive or in coast.
  tw_load load;
} tw_next_gear;

/// Efficiencies of one mesh each. `practice` holds usual values to be taken by name.
typedef struct tw_mesh_efficiency {
  /// Two external gears: sun and planet, planet and planet.
  double external;
  /// Planet and ring.
  double internal;
} tw_mesh_efficiency;

/// Power in a gear without losses, per unit of input power.
typedef struct tw_power_flow {
  /// Power that each `tw_row` gives to its members (sun, ring or second sun, carrier); negative where it takes.
  double wheel_power[TW_MAX_ROWS][3];
  /// Power through the meshes of each set, seen from its carrier.
  double rolling_power[TW_MAX_SETS];
  /// Greatest power of a wheel or carrier. Above 1, power circulates.
  double largest;
  /// Mask of the rows whose torque the state leaves indeterminate; they count as 0.
  uint32_t indeterminate;
} tw_power_flow;

/// A gear with its mesh losses.
typedef struct tw_losses {
  /// Power that leaves at the driven side over the power that enters; 0 where the gear locks itself or jams.
  double efficiency;
  /// Torque of the output over torque of the input, with losses. Where the gear locks itself, its sign is wrong way round:
  /// the driven side would have to help.
  double torque_ratio;
  /// Power lost in each set per unit of driving power.
  double set_loss[TW_MAX_SETS];
  /// Power through the meshes of each set per unit of driving power, on the side where it enters.
  double rolling_power[TW_MAX_SETS];
  /// Rounds until the directions of power agreed with the losses they cause.
  uint32_t rounds;
  /// Whether they came to agree. If not, no direction of power balances: the gear jams, and the other figures are those of
  /// the last round.
  bool converged;
  /// Whether the losses exceed the driving power: this side cannot drive the gear.
  bool self_locking;
} tw_losses;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/// Version of the linked library, major × 1 000 000 + minor × 1000 + patch. Compare it with `TW_VERSION_MAJOR`,
/// `TW_VERSION_MINOR` and `TW_VERSION_PATCH` at start-up.
uint32_t tw_version(void);

/// A status in words: a static, zero-terminated text that is never null. Any number is accepted.
const char *tw_status_text(int32_t status);

/// Number of formula cards.
size_t tw_card_count(void);

/// The card at a position, from 0 to `tw_card_count()` - 1.
tw_status tw_card_at(size_t position, struct tw_card_text *out_card);

/// A symbol of the card at a position, from 0 to its number of symbols - 1.
tw_status tw_card_symbol_at(size_t position, size_t symbol, struct tw_symbol_text *out_symbol);

/// The worked explanation of a result in words that can be read out: the card with this id (zero-terminated, as
/// `clutch.capacity`), each symbol with the value of the field that its meaning names, and what else was given. A value named
/// `result` goes to the symbol that the equation is solved for. At most `TW_MAX_NAMED_VALUES`.
///
/// Writes UTF-8 with a terminating zero into `size` bytes, and its length without the zero; `TW_STATUS_COUNT` where it does
/// not fit. With a `size` of 0 only the length is written. `TW_STATUS_MISSING` where no card has this id.
tw_status tw_card_explain(const char *id,
                          const struct tw_named_value *values,
                          size_t count,
                          char *out_text,
                          size_t size,
                          size_t *out_length);

/// Area of one side of a ring, mm^2.
tw_status tw_clutch_area_mm2(const struct tw_annulus *ring, double *out_area_mm2);

/// Friction radius of a new lining, mm: uniform pressure.
tw_status tw_clutch_mean_radius_new_mm(const struct tw_annulus *lining, double *out_radius_mm);

/// Friction radius of a worn-in lining, mm: uniform wear.
tw_status tw_clutch_mean_radius_worn_mm(const struct tw_annulus *lining, double *out_radius_mm);

/// Inner radius, mm, that gives this outer radius most torque at a fixed peak lining pressure.
tw_status tw_clutch_best_inner_radius_mm(const struct tw_annulus *lining, double *out_radius_mm);

/// Clamp force, N, at which a worn-in lining reaches a peak pressure.
tw_status tw_clutch_clamp_at_peak_n(const struct tw_annulus *lining, double peak_mpa, double *out_clamp_n);

/// Peak pressure, MPa, of a worn-in lining under a clamp force.
tw_status tw_clutch_peak_at_clamp_mpa(const struct tw_annulus *lining, double clamp_n, double *out_peak_mpa);

/// Force of a set of return springs, N, at a fitted length.
tw_status tw_clutch_spring_force_n(const struct tw_return_springs *springs,
                                   double fitted_length_mm,
                                   double *out_force_n);

/// Axial force, N, of the oil that turns with a drum.
tw_status tw_clutch_head_force_n(const struct tw_head *head,
                                 double oil_density_kg_m3,
                                 double drum_speed_rpm,
                                 double *out_force_n);

/// Pressure, kPa, at a radius of the oil that turns with a drum.
tw_status tw_clutch_head_pressure_kpa(const struct tw_head *head,
                                      double radius_mm,
                                      double oil_density_kg_m3,
                                      double drum_speed_rpm,
                                      double *out_pressure_kpa);

/// How far, mm, the oil surface in an upright turning drum dips from wall to axis.
tw_status tw_clutch_surface_drop_mm(double radius_mm, double speed_rpm, double *out_drop_mm);

/// Faces of a pack of friction plates between steels: two for each.
tw_status tw_clutch_plate_faces(uint32_t friction_plates, uint32_t *out_faces);

/// Pairs of faces between alternating driving and driven discs: their sum less one.
tw_status tw_clutch_disc_faces(uint32_t driving_discs, uint32_t driven_discs, uint32_t *out_faces);

/// Torque, N m, of a lining whose friction changes with the radius.
tw_status tw_clutch_torque_by_radius_nm(const struct tw_lining_by_radius *lining, double *out_torque_nm);

/// Friction radius of a pack, mm, by the state of its lining.
tw_status tw_clutch_mean_radius_mm(const struct tw_pack *pack, double *out_radius_mm);

/// Capacity with everything that made it, with the strongest return spring. Not a rating.
tw_status tw_clutch_capacity(const struct tw_pack *pack,
                             const struct tw_applied *applied,
                             struct tw_capacity *out_capacity);

/// A pack in one oil, checked and reduced to the constants of its capacity: once, before many tw_clutch_capacity_nm.
tw_status tw_clutch_capacity_line(const struct tw_pack *pack,
                                  double oil_density_kg_m3,
                                  struct tw_capacity_line *out_line);

/// Capacity, N m, equal to that of tw_clutch_capacity bit for bit.
tw_status tw_clutch_capacity_nm(const struct tw_capacity_line *line,
                                double pressure_kpa,
                                double drum_speed_rpm,
                                double friction,
                                double *out_torque_nm);

/// Pressure at which a pack just holds a torque; the pressure in applied is not used.
tw_status tw_clutch_pressure_needed(const struct tw_pack *pack,
                                    double torque_nm,
                                    const struct tw_applied *applied,
                                    struct tw_pressure_needed *out_needed);

/// Friction coefficient at which a pack just holds a torque; the friction in applied is not used.
tw_status tw_clutch_friction_needed(const struct tw_pack *pack,
                                    double torque_nm,
                                    const struct tw_applied *applied,
                                    double *out_friction);

/// Drum speed, 1/min, at which the oil head of an open pack overcomes its weakest return spring.
tw_status tw_clutch_drag_speed_rpm(const struct tw_pack *pack, double oil_density_kg_m3, double *out_speed_rpm);

/// Whether a pack holds a torque: chance, verdict, and the pressure or friction that turns it.
tw_status tw_clutch_hold(const struct tw_pack *pack,
                         const struct tw_reading *need_nm,
                         const struct tw_working *working,
                         const struct tw_rule *rule,
                         struct tw_hold *out_hold);

/// Position of the least of count margins.
tw_status tw_clutch_governing(const double *margins, size_t count, uint32_t *out_position);

/// Capacity of each pack of a gear against the torque that the train puts on it.
tw_status tw_clutch_review(const struct tw_state *state,
                           const struct tw_element_pack *packs,
                           size_t pack_count,
                           const struct tw_duty *duty,
                           struct tw_gear_review *out_review);

/// Band with the servo at the slack end: self-energized.
tw_status tw_clutch_energized(const struct tw_band *band,
                              double servo_force_n,
                              double friction,
                              struct tw_band_torque *out_torque);

/// Band with the servo at the tight end: de-energized.
tw_status tw_clutch_deenergized(const struct tw_band *band,
                                double servo_force_n,
                                double friction,
                                struct tw_band_torque *out_torque);

/// Force of a servo on its band, N.
tw_status tw_clutch_servo_force_n(const struct tw_servo *servo, double pressure_kpa, double *out_force_n);

/// Slip between two inertias: time, common speed, energy; "never locks" is an answer.
tw_status tw_clutch_slip_end(const struct tw_slip *slip, struct tw_slip_end *out_end);

/// Slip while the input is held at constant speed.
tw_status tw_clutch_held_input_end(const struct tw_held_input *slip, struct tw_slip_end *out_end);

/// Inertia of a shaft, kg m^2, as a shaft feels it against which it turns speed_ratio times as fast.
tw_status tw_clutch_referred_inertia_kg_m2(double inertia_kg_m2, double speed_ratio, double *out_inertia_kg_m2);

/// Mean temperature rise of the steel plates, K.
tw_status tw_clutch_bulk_rise_k(double energy_j, double steel_mass_kg, double specific_heat_j_kg_k, double *out_rise_k);

/// Surface temperature rise under a constant heat flux; mind whether the plate counts as thick.
tw_status tw_clutch_surface_rise_constant(const struct tw_steel *steel,
                                          double flux_w_mm2,
                                          double time_s,
                                          struct tw_surface_rise *out_rise);

/// Highest surface temperature rise under a heat flux that falls linearly to zero.
tw_status tw_clutch_surface_rise_falling(const struct tw_steel *steel,
                                         double start_flux_w_mm2,
                                         double slip_time_s,
                                         struct tw_surface_rise *out_rise);

/// What one shift does to the steel plates.
tw_status tw_clutch_plate_heat(const struct tw_steel_plates *plates,
                               const struct tw_slip_end *slip,
                               struct tw_plate_heat *out_heat);

/// Speed ratio: turbine speed over impeller speed.
tw_status tw_converter_speed_ratio(double impeller_rpm, double turbine_rpm, double *out_ratio);

/// Efficiency: speed ratio times torque ratio; above 1 the two contradict each other.
tw_status tw_converter_efficiency(double speed_ratio, double torque_ratio, double *out_efficiency);

/// Capacity factor of the impeller side, 1/min per root of a newton-meter.
tw_status tw_converter_capacity_factor(double impeller_rpm, double impeller_nm, double *out_k_rpm_per_sqrt_nm);

/// Torque, N m, that the impeller takes at a speed.
tw_status tw_converter_impeller_torque_nm(double impeller_rpm, double k_rpm_per_sqrt_nm, double *out_impeller_nm);

/// Capacity factor of the impeller side from one of the output side; not at stall.
tw_status tw_converter_from_output_side(double k_output_rpm_per_sqrt_nm,
                                        double speed_ratio,
                                        double torque_ratio,
                                        double *out_k_rpm_per_sqrt_nm);

/// Capacity factor of the impeller side from the torque coefficient of T = coefficient density D^5 omega^2.
tw_status tw_converter_from_torque_coefficient(double torque_coefficient,
                                               double density_kg_m3,
                                               double diameter_mm,
                                               double *out_k_rpm_per_sqrt_nm);

/// An engine's torque against its speed, from as many speeds (rising) as torques.
tw_status tw_converter_engine_curve(const double *speed_rpm,
                                    const double *torque_nm,
                                    size_t points,
                                    double max_rpm,
                                    struct tw_engine_curve *out_engine);

/// Whether the curve can be used.
tw_status tw_converter_check_engine_curve(const struct tw_engine_curve *engine);

/// Torque of the engine, N m, at a speed of its curve.
tw_status tw_converter_torque_at_nm(const struct tw_engine_curve *engine, double speed_rpm, double *out_torque_nm);

/// A characteristic from as many speed ratios (rising) as torque ratios and capacity factors of the impeller side.
tw_status tw_converter_characteristic(const double *speed_ratio,
                                      const double *torque_ratio,
                                      const double *k_rpm_per_sqrt_nm,
                                      size_t points,
                                      struct tw_characteristic *out_converter);

/// Whether the characteristic can be one: ratios in range, speed ratios rising, no efficiency above 1.
tw_status tw_converter_check_characteristic(const struct tw_characteristic *converter);

/// Torque ratio at a speed ratio of the characteristic.
tw_status tw_converter_torque_ratio_at(const struct tw_characteristic *converter,
                                       double speed_ratio,
                                       double *out_torque_ratio);

/// Capacity factor of the impeller side, 1/min per root of a newton-meter, at a speed ratio of the characteristic.
tw_status tw_converter_capacity_factor_at(const struct tw_characteristic *converter,
                                          double speed_ratio,
                                          double *out_k_rpm_per_sqrt_nm);

/// Speed ratio from which the converter no longer multiplies torque.
tw_status tw_converter_coupling_point(const struct tw_characteristic *converter, double *out_ratio);

/// Every engine speed at which the engine gives just what the impeller takes, at a turbine speed (0 at stall).
tw_status tw_converter_operating_points(const struct tw_engine_curve *engine,
                                        const struct tw_engine_today *today,
                                        const struct tw_characteristic *converter,
                                        double turbine_rpm,
                                        struct tw_operating_points *out_points);

/// The one speed at which engine and converter settle, at a turbine speed (0 at stall).
tw_status tw_converter_operating_point(const struct tw_engine_curve *engine,
                                       const struct tw_engine_today *today,
                                       const struct tw_characteristic *converter,
                                       double turbine_rpm,
                                       struct tw_operating_point *out_point);

/// Whether SAE J1349 tests in such air.
tw_status tw_converter_in_test_range_j1349(const struct tw_inlet_air *air, bool *out_inside);

/// Torque of a naturally aspirated spark-ignition engine in reference air over that in this air. Not for turbocharged ones.
tw_status tw_converter_air_correction_j1349(const struct tw_inlet_air *air,
                                            double *out_correction);

/// Torque of a naturally aspirated spark-ignition engine in the air of the day over that in the air of its curve.
tw_status tw_converter_air_torque_factor(const struct tw_inlet_air *curve,
                                         const struct tw_inlet_air *today,
                                         double *out_factor);

/// Stall speed of an engine against a converter, with its uncertainty.
tw_status tw_converter_stall_speed(const struct tw_engine_curve *engine,
                                   const struct tw_characteristic *converter,
                                   const struct tw_stall_inputs *inputs,
                                   struct tw_stall_speed *out_stall);

/// What a measured stall speed says. A side is a suspicion, not proof.
tw_status tw_converter_judge_stall(const struct tw_engine_curve *engine,
                                   const struct tw_characteristic *converter,
                                   const struct tw_stall_inputs *inputs,
                                   const struct tw_measured_stall *measured,
                                   struct tw_stall_verdict *out_verdict);

/// Plans a stall test: `allowed` is false where a rating would be passed. No leave to test: that is the vehicle maker's.
tw_status tw_converter_plan_stall(const struct tw_operating_point *stall,
                                  const struct tw_state *state,
                                  const struct tw_stall_ratings *ratings,
                                  const struct tw_fluid_charge *charge,
                                  struct tw_stall_plan *out_plan);

/// Temperature rise, K, of the fluid in the converter during a stall: adiabatic bound.
tw_status tw_converter_rise_k(const struct tw_fluid_charge *charge, double heat_kw, double time_s, double *out_rise_k);

/// Seconds until the fluid in the converter is as hot as it may be; 0 where it is already.
tw_status tw_converter_heat_s(const struct tw_fluid_charge *charge, double heat_kw, double *out_seconds);

/// Torque, N m, on each closed element of a gear at a turbine torque.
tw_status tw_converter_element_torques(const struct tw_state *state,
                                       double turbine_nm,
                                       struct tw_element_torques *out_torques);

/// Slip of a lock-up clutch against the slip that its control aims at and the slip that is a fault.
tw_status tw_converter_lockup_slip(const struct tw_reading *engine_rpm,
                                   const struct tw_reading *turbine_rpm,
                                   const struct tw_slip_limits *limits,
                                   struct tw_lockup_slip *out_slip);

/// A signal that a screening of duty uses, by its number on its bus.
tw_status tw_duty_bus_signal(uint8_t network, uint32_t number, struct tw_bus_signal *out_signal);

/// What a raw value of a bus means: a physical value, or a mark that must not be computed with.
tw_status tw_duty_decode(const struct tw_bus_signal *of, uint32_t raw, struct tw_bus_value *out_value);

/// Whether a value that somebody scaled already is one, or a mark scaled by mistake.
tw_status tw_duty_classify(const struct tw_bus_signal *of, double value, struct tw_bus_value *out_value);

/// Greatest relative error that the steps of a signal put into a value.
tw_status tw_duty_step_error(const struct tw_bus_signal *of, double value, double *out_share);

/// Cycles of a history by rainflow counting, written one after the other to `out_cycles`; after a failure what stands there
/// has no meaning. `residue`: a `tw_residue_rule`. `stack` is memory for turning points: at most twice as many as the history has
/// different values, three times that where it repeats. NaN is a missing value.
tw_status tw_duty_rainflow(const double *values,
                           size_t count,
                           uint8_t residue,
                           double *stack,
                           size_t stack_size,
                           struct tw_cycle *out_cycles,
                           size_t size,
                           struct tw_cycle_count *out_count);

/// Time that a history spends in each of `edge_count` - 1 bins, with the time that nobody knows.
tw_status tw_duty_residence(const double *time_s,
                            const double *values,
                            size_t count,
                            const double *edges,
                            size_t edge_count,
                            double gap_limit_s,
                            double *out_seconds,
                            struct tw_residence *out_rest);

/// Line of damage of a gear set from the rating of its unit.
tw_status tw_duty_from_rating(double slope,
                              double reference_contacts,
                              double over_rated,
                              double worst_share,
                              double rated_nm,
                              struct tw_damage_line *out_line);

/// Damage that a duty of count stages collects. It ranks; it does not promise a life.
tw_status tw_duty_damage(const struct tw_damage_line *line,
                         const struct tw_duty_stage *stages,
                         size_t count,
                         struct tw_damage *out_damage);

/// Least and greatest damage of a duty where slope and reference are only known within limits.
tw_status tw_duty_damage_interval(const struct tw_duty_stage *stages,
                                  size_t count,
                                  const struct tw_damage_range *known,
                                  struct tw_damage_interval *out_interval);

/// A rule by which fluid ages twice as fast for each step of temperature.
tw_status tw_duty_halving(double reference_c, double halving_k, double least_factor, struct tw_aging_rule *out_rule);

/// A rule by which fluid ages at a reaction rate.
tw_status tw_duty_arrhenius(double reference_c, double activation_k, struct tw_aging_rule *out_rule);

/// How many times faster than at its reference temperature fluid ages.
tw_status tw_duty_aging_factor(const struct tw_aging_rule *by, double temp_c, double *out_factor);

/// Share of its life that fluid has used, from hours at temperature, and what is left in the same use.
tw_status tw_duty_fluid_life(const struct tw_fluid_bin *bins,
                             size_t count,
                             double unknown_h,
                             double life_h,
                             const struct tw_aging_rule *by,
                             struct tw_fluid_life *out_life);

/// How often each tooth of a planetary set meets a planet in a gear, and the torque of its wheel; a fraction with `den` 0 is open.
tw_status tw_duty_mesh_duty(const struct tw_train *train,
                            const struct tw_state *state,
                            uint8_t set,
                            struct tw_mesh_duty *out_duty);

/// Best and worst place of each of `count` trucks, given the intervals of their values.
tw_status tw_duty_rank_intervals(const double *lower,
                                 const double *upper,
                                 size_t count,
                                 struct tw_rank_interval *out_ranks);

/// A total that another year of the same use could have given, drawn from `count` periods.
tw_status tw_duty_resampled_total(const double *periods, size_t count, uint64_t seed, uint64_t draw, double *out_total);

/// Base (0 to 65 536) to an exponent (above 0 to 16) as the pass over rows forms it, within 2e-13 of the value.
tw_status tw_duty_screen_power(double base, double exponent, double *out_power);

/// Checks a truck and reduces it to the constants of a row.
tw_status tw_duty_screen_plan(const struct tw_screen_unit *unit, struct tw_screen_plan *out_plan);

/// One row of a truck. Bit n of given says that the data has the n-th column of the row; previous, the row of the truck before
/// it, may be null.
tw_status tw_duty_screen_row(const struct tw_screen_plan *plan,
                             uint32_t given,
                             const struct tw_screen_row *row,
                             const struct tw_screen_row *previous,
                             struct tw_screen_answer *out_answer);

/// Rows of one truck in their order: the answer of each. The first has no row before it.
tw_status tw_duty_screen_rows(const struct tw_screen_plan *plan,
                              uint32_t given,
                              const struct tw_screen_row *rows,
                              size_t count,
                              struct tw_screen_answer *out_answers);

/// What the rows of one truck, in their order, add up to.
tw_status tw_duty_screen_totals(const struct tw_screen_plan *plan,
                                uint32_t given,
                                const struct tw_screen_row *rows,
                                size_t count,
                                struct tw_screen_totals *out_totals);

/// Ratio of two speeds measured side by side, true over shown, with its uncertainty.
tw_status tw_duty_ratio_of(const double *true_values,
                           const double *shown_values,
                           size_t count,
                           const struct tw_ratio_rule *rule,
                           struct tw_speeds_ratio *out_ratio);

/// What another tire or axle than programmed does to the speed shown.
tw_status tw_duty_other_driveline(const struct tw_driveline *programmed,
                                  const struct tw_driveline *fitted,
                                  double weight,
                                  struct tw_ratio_cause *out_cause);

/// What another tooth count of the output speed sensor's wheel does to road speed and gear ratios.
tw_status tw_duty_other_teeth(uint32_t programmed, uint32_t fitted, double weight, struct tw_ratio_cause *out_cause);

/// Which of `count` changes explains a ratio of speeds, or none of them; `out_fits` receives how each fits.
tw_status tw_duty_weigh_causes(const struct tw_ratios_seen *measured,
                               const struct tw_ratio_cause *causes,
                               size_t count,
                               double enough,
                               double most_z,
                               struct tw_cause_fit *out_fits,
                               struct tw_cause_found *out_found);

/// Least and greatest clearance of a shaft in a bore, mm, and its class against the service limit (INFINITY for none).
tw_status tw_fit_clearance(const struct tw_limits *shaft_mm,
                           const struct tw_limits *bore_mm,
                           double limit_mm,
                           struct tw_clearance *out_clearance);

/// A part that was not measured, as a reading: the middle of its tolerance, with the tolerance as its uncertainty.
tw_status tw_fit_toleranced(const struct tw_limits *size_mm, tw_spread spread, struct tw_reading *out_reading);

/// Clearance of two parts known with their uncertainty, judged against the clearance wanted.
tw_status tw_fit_measured(const struct tw_reading *shaft_mm,
                          const struct tw_reading *bore_mm,
                          const struct tw_limits *wanted_mm,
                          const struct tw_rule *rule,
                          struct tw_measured_clearance *out_clearance);

/// Clearance of two parts at temperature, each with its own expansion, judged.
tw_status tw_fit_warm_clearance(const struct tw_warm_part *shaft,
                                const struct tw_warm_part *bore,
                                const struct tw_warmth *warmth,
                                const struct tw_limits *wanted_mm,
                                const struct tw_rule *rule,
                                struct tw_warm_clearance *out_clearance);

/// Size at 20 degC of a part measured warm, with an instrument of another temperature.
tw_status tw_fit_size_20c(const struct tw_warm_reading *reading, struct tw_size20 *out_size);

/// What a diametral interference, mm, does to two parts pressed together.
tw_status tw_fit_pressed(const struct tw_press_joint *joint, double interference_mm, struct tw_pressed *out_pressed);

/// Axial force and torque at which a pressed part begins to move under a pressure.
tw_status tw_fit_retention(const struct tw_press_joint *joint,
                           double pressure_mpa,
                           double length_mm,
                           double friction,
                           struct tw_retention *out_retention);

/// The seat of a bushing at a temperature; an interference of 0 or less means that it has let go.
tw_status tw_fit_bushing_at(const struct tw_pressed_bushing *bushing, double temp_c, struct tw_pressed *out_pressed);

/// Temperature, degC, at which a bushing has no interference left.
tw_status tw_fit_let_go_c(const struct tw_pressed_bushing *bushing, struct tw_reading *out_temp_c);

/// Torque and axial force at which a bushing moves, at a temperature.
tw_status tw_fit_bushing_held(const struct tw_pressed_bushing *bushing,
                              double temp_c,
                              double length_mm,
                              const struct tw_reading *friction,
                              struct tw_held_bushing *out_held);

/// Running clearance of a shaft in a pressed bushing at temperature, judged.
tw_status tw_fit_running_clearance(const struct tw_pressed_bushing *bushing,
                                   const struct tw_warm_part *shaft,
                                   const struct tw_warmth *warmth,
                                   const struct tw_limits *wanted_mm,
                                   const struct tw_rule *rule,
                                   struct tw_running_clearance *out_clearance);

/// Limits of a nominal size with a tolerance class: `H7` for a hole, `f7` for a shaft. length counts bytes, without a zero.
tw_status tw_fit_iso_limits(double nominal_mm,
                            const char *zone,
                            size_t length,
                            struct tw_iso_limits *out_limits);

/// Reads a size with its tolerance class: `25H7`. length counts bytes, without a zero.
tw_status tw_fit_iso_size(const char *size, size_t length, struct tw_iso_limits *out_limits);

/// Reads a fit: `25H7/f7`, hole first. length counts bytes, without a zero.
tw_status tw_fit_iso_fit(const char *fit_text, size_t length, struct tw_iso_fit *out_fit);

/// Unit load, sliding speed and their product for a plain bushing; speed of the shaft against the bushing.
tw_status tw_fit_bushing_load(double force_n,
                              double diameter_mm,
                              double length_mm,
                              double speed_rpm,
                              struct tw_bushing_load *out_load);

/// How much more an off-center shaft lets through than a centered one.
tw_status tw_fit_eccentricity_factor(double eccentricity, double *out_factor);

/// Flow of oil along the gap between a shaft and a bore.
tw_status tw_fit_gap_leak(const struct tw_gap *gap,
                          double pressure_drop_kpa,
                          double viscosity_mpa_s,
                          double density_kg_m3,
                          struct tw_gap_leak *out_leak);

/// How many times more a worn fit leaks than a new one, with its coverage interval.
tw_status tw_fit_leak_ratio(const struct tw_worn_gap *gap, double coverage, struct tw_leak_ratio *out_ratio);

/// Chance that a worn fit leaks more than so many times as much as when new.
tw_status tw_fit_chance_leaks_more(const struct tw_worn_gap *gap, double times, double *out_chance);

/// Checks an image: mark, version, length, checksum, and that every part can be read. `length` may reach beyond its end, to
/// the end of the flash page.
tw_status tw_flash_open(const uint8_t *bytes,
                        size_t length,
                        struct tw_flash_image *out_image);

/// What the unit is called.
tw_status tw_flash_title(const struct tw_flash_image *image, struct tw_text *out_title);

/// Name of a member of the train.
tw_status tw_flash_member_name(const struct tw_flash_image *image, uint8_t member, struct tw_text *out_name);

/// Name of an element of the train.
tw_status tw_flash_element_name(const struct tw_flash_image *image, uint8_t element, struct tw_text *out_name);

/// Name of a gear.
tw_status tw_flash_gear_name(const struct tw_flash_image *image, uint8_t gear, struct tw_text *out_name);

/// The gear train, ready for `tw_train_resolve`.
tw_status tw_flash_train(const struct tw_flash_image *image, struct tw_train *out_train);

/// Number of gears.
tw_status tw_flash_gear_count(const struct tw_flash_image *image, uint8_t *out_count);

/// A gear: what closes in it, and its efficiency.
tw_status tw_flash_gear(const struct tw_flash_image *image, uint8_t gear, struct tw_gear *out_gear);

/// Number of packs.
tw_status tw_flash_pack_count(const struct tw_flash_image *image, uint8_t *out_count);

/// A pack, with the element of the train that it is: collect them for `tw_clutch_review`.
tw_status tw_flash_pack(const struct tw_flash_image *image, uint8_t pack, struct tw_element_pack *out_pack);

/// Number of points of the shift schedule.
tw_status tw_flash_shift_count(const struct tw_flash_image *image, uint8_t *out_count);

/// A point of the shift schedule.
tw_status tw_flash_shift(const struct tw_flash_image *image, uint8_t shift, struct tw_shift *out_shift);

/// The gears as a live monitor takes them, for `gears` and `gear_count` of a `tw_live_unit`: ratio, and the elements that
/// could slip. `out_gears` has room for TW_MAX_LIVE_GEARS. TW_STATUS_MISSING where the image was written without them.
tw_status tw_flash_live_gears(const struct tw_flash_image *image,
                              struct tw_live_gear *out_gears,
                              uint8_t *out_count);

/// What heats the elements of the train, for `elements` and `element_count` of a `tw_live_unit`; zeros where the record does
/// not say. `out_elements` has room for TW_MAX_LIVE_ELEMENTS.
tw_status tw_flash_live_elements(const struct tw_flash_image *image,
                                 struct tw_live_element *out_elements,
                                 uint8_t *out_count);

/// Friction of the linings in the unit's fluid.
tw_status tw_flash_linings(const struct tw_flash_image *image, struct tw_linings *out_linings);

/// The maker's ratings.
tw_status tw_flash_ratings(const struct tw_flash_image *image, struct tw_ratings *out_ratings);

/// Axle and tire that the unit is programmed for.
tw_status tw_flash_driveline(const struct tw_flash_image *image, struct tw_driveline *out_driveline);

/// The fluid in the unit.
tw_status tw_flash_fluid(const struct tw_flash_image *image, struct tw_fluid *out_fluid);

/// Fill volumes, check window and sump.
tw_status tw_flash_fill(const struct tw_flash_image *image, struct tw_fill *out_fill);

/// How many variants, parts, marks, sizes and fits the image holds; TW_STATUS_MISSING without a family.
tw_status tw_flash_family(const struct tw_flash_image *image, struct tw_family_counts *out_counts);

/// Name of a variant.
tw_status tw_flash_variant_name(const struct tw_flash_image *image, uint8_t variant, struct tw_text *out_name);

/// Name of a part.
tw_status tw_flash_part_name(const struct tw_flash_image *image, uint8_t part, struct tw_text *out_name);

/// Name of a mark.
tw_status tw_flash_mark_name(const struct tw_flash_image *image, uint8_t mark, struct tw_text *out_name);

/// Name of a size.
tw_status tw_flash_size_name(const struct tw_flash_image *image, uint8_t size, struct tw_text *out_name);

/// Name of a fit.
tw_status tw_flash_fit_name(const struct tw_flash_image *image, uint8_t fit, struct tw_text *out_name);

/// Chance of a variant before anything is looked at.
tw_status tw_flash_prior(const struct tw_flash_image *image, uint8_t variant, double *out_chance);

/// Chance that a part came from another unit, before anything is looked at.
tw_status tw_flash_exchanged(const struct tw_flash_image *image, uint8_t part, double *out_chance);

/// A mark to look for.
tw_status tw_flash_mark(const struct tw_flash_image *image, uint8_t mark, struct tw_part_mark *out_mark);

/// Chance that an untouched unit of a variant shows a mark: collect them for `tw_identify_add_seen`.
tw_status tw_flash_mark_chance(const struct tw_flash_image *image, uint8_t mark, uint8_t variant, double *out_chance);

/// A size to measure.
tw_status tw_flash_size(const struct tw_flash_image *image, uint8_t size, struct tw_part_size *out_size);

/// Limits of a size in a variant, mm: collect them for `tw_identify_add_measured`.
tw_status tw_flash_size_limits(const struct tw_flash_image *image,
                               uint8_t size,
                               uint8_t variant,
                               struct tw_limits *out_limits_mm);

/// A fit: its parts, and the clearance wanted.
tw_status tw_flash_fit(const struct tw_flash_image *image, uint8_t fit, struct tw_part_fit *out_fit);

/// Diameter of the shaft of a fit in a variant, mm.
tw_status tw_flash_fit_shaft(const struct tw_flash_image *image,
                             uint8_t fit,
                             uint8_t variant,
                             struct tw_limits *out_shaft_mm);

/// Diameter of the bore of a fit in a variant, mm.
tw_status tw_flash_fit_bore(const struct tw_flash_image *image,
                            uint8_t fit,
                            uint8_t variant,
                            struct tw_limits *out_bore_mm);

/// Volume correction factor and density of a lubricating oil from its density at 15 degC (API MPMS 11.1).
tw_status tw_fluid_volume_correction(double density_15c_kg_m3,
                                     double temp_c,
                                     struct tw_volume_correction *out_correction);

/// The same from the density at 60 degF; the temperature is still in degC.
tw_status tw_fluid_volume_correction_60f(double density_60f_kg_m3,
                                         double temp_c,
                                         struct tw_volume_correction *out_correction);

/// Volume correction factor for a coefficient at base, whatever group of oils it comes from.
tw_status tw_fluid_correction_factor(double alpha_per_k, double rise_k, double *out_factor);

/// Density at 15 degC of a lubricating oil whose density was measured at another temperature.
tw_status tw_fluid_density_15c_from_observed(double density_kg_m3, double temp_c, double *out_density_15c_kg_m3);

/// Mean coefficient from 15 degC that says the same as one stated from another reference temperature.
tw_status tw_fluid_expansion_from_15c(double expansion_per_k, double reference_c, double *out_expansion_per_k);

/// Change of volume of a fluid, less the growth of its vessel.
tw_status tw_fluid_growth_ml(const struct tw_growth *growth, double *out_ml);

/// Whether every property of the fluid lies in the range of its source.
tw_status tw_fluid_check_properties(const struct tw_fluid *fluid);

/// Volume at a temperature over the volume at 15 degC.
tw_status tw_fluid_volume_factor(const struct tw_fluid *fluid, double temp_c, double *out_factor);

/// Temperature at which the volume is this many times the volume at 15 degC.
tw_status tw_fluid_temp_for_volume_factor(const struct tw_fluid *fluid, double factor, double *out_temp_c);

/// Density at a temperature, kg/m3.
tw_status tw_fluid_density(const struct tw_fluid *fluid, double temp_c, double *out_density_kg_m3);

/// Line through the viscosities of the fluid at 40 and 100 degC.
tw_status tw_fluid_viscosity_line(const struct tw_fluid *fluid, struct tw_viscosity_line *out_line);

/// Viscosity line through two points, 2 mm2/s and more (ASTM D341).
tw_status tw_fluid_through(const struct tw_viscosity_points *points, struct tw_viscosity_line *out_line);

/// Viscosity line of the older form, with 0.8 in place of 0.7.
tw_status tw_fluid_through_older(const struct tw_viscosity_points *points, struct tw_viscosity_line *out_line);

/// Viscosity line of the full form, 0.21 mm2/s and more; read it with tw_fluid_thin_viscosity_at.
tw_status tw_fluid_through_thin(const struct tw_viscosity_points *points, struct tw_viscosity_line *out_line);

/// Kinematic viscosity at a temperature, 2 mm2/s and more.
tw_status tw_fluid_viscosity_at(const struct tw_viscosity_line *line, double temp_c, double *out_viscosity_mm2_s);

/// Kinematic viscosity at a temperature, 0.21 mm2/s and more, on a line of the full form.
tw_status tw_fluid_thin_viscosity_at(const struct tw_viscosity_line *line, double temp_c, double *out_viscosity_mm2_s);

/// Temperature at which the fluid has this viscosity.
tw_status tw_fluid_temp_for_viscosity(const struct tw_viscosity_line *line, double viscosity_mm2_s, double *out_temp_c);

/// Dynamic viscosity, mPa s, from kinematic viscosity and density at one temperature.
tw_status tw_fluid_dynamic_viscosity(double kinematic_mm2_s, double density_kg_m3, double *out_dynamic_mpa_s);

/// Viscosity index (ASTM D2270), computed and as reported.
tw_status tw_fluid_viscosity_index(const struct tw_viscosity_pair *pair, struct tw_viscosity_index *out_index);

/// Viscosity at 100 degC of the oil with this viscosity at 40 degC and this index.
tw_status tw_fluid_viscosity_100c_for_index(double viscosity_40c_mm2_s, double index, double *out_viscosity_100c_mm2_s);

/// The mixture of some portions, as a fluid.
tw_status tw_fluid_blend(const struct tw_portion *portions, size_t count, struct tw_fluid *out_mixture);

/// Kinematic viscosity of a mixture, all at one temperature (ASTM D7152).
tw_status tw_fluid_blend_viscosity(const struct tw_viscosity_portion *portions,
                                   size_t count,
                                   double *out_viscosity_mm2_s);

/// Friction of a single portion; refused (TW_STATUS_NO_ANSWER) for more: friction does not mix.
tw_status tw_fluid_blend_friction(const struct tw_friction_portion *portions, size_t count, double *out_friction);

/// Share of the first fluid left after equal partial changes.
tw_status tw_fluid_old_share(double changed_fraction, uint32_t changes, double *out_share);

/// A sump from as many heights (mm above the overflow edge, ascending) as free areas (cm2).
tw_status tw_fluid_from_table(const double *height_mm,
                              const double *free_area_cm2,
                              size_t rows,
                              struct tw_sump *out_sump);

/// Whether the table of the sump can be used.
tw_status tw_fluid_check_table(const struct tw_sump *sump);

/// Free area at a height, cm2.
tw_status tw_fluid_free_area_at(const struct tw_sump *sump, double height_mm, double *out_area_cm2);

/// Volume between the overflow edge and a height, mL, negative below the edge.
tw_status tw_fluid_volume_to(const struct tw_sump *sump, double height_mm, double *out_volume_ml);

/// Level at which this volume stands between it and the overflow edge, mm.
tw_status tw_fluid_level_for(const struct tw_sump *sump, double volume_ml, double *out_level_mm);

/// Whether the fill can be used.
tw_status tw_fluid_check_fill(const struct tw_fill *fill);

/// Level at a temperature; `excess_ml` at the reference temperature is 0 for a right fill.
tw_status tw_fluid_level_at(const struct tw_fill *fill,
                            const struct tw_fluid *fluid,
                            double excess_ml,
                            double temp_c,
                            struct tw_level_at *out_level);

/// Volume to add or drain now, with its uncertainty, and the fill judged against the check window. Hot fluid burns.
tw_status tw_fluid_adjust_fill(const struct tw_fill *fill,
                               const struct tw_fluid *fluid,
                               const struct tw_level_check *check,
                               const struct tw_rule *rule,
                               struct tw_adjustment *out_adjustment);

/// Level with the engine stopped, when the drain-back has come into the sump.
tw_status tw_fluid_engine_off_level_mm(const struct tw_fill *fill, double running_level_mm, double *out_level_mm);

/// Temperature above which a rotating part dips.
tw_status tw_fluid_gear_dips_at_c(const struct tw_fill *fill,
                                  const struct tw_fluid *fluid,
                                  double excess_ml,
                                  double *out_temp_c);

/// Volume that may be lost, from this level, until the pickup draws air.
tw_status tw_fluid_loss_to_pickup_ml(const struct tw_fill *fill, double level_mm, double *out_loss_ml);

/// Volumes to pour for a dry, a service and a cooler fill, at the temperature of the fluid in the can.
tw_status tw_fluid_pour_volumes(const struct tw_fill *fill,
                                const struct tw_fluid *fluid,
                                double can_c,
                                struct tw_pour_volumes *out_volumes);

/// Level that a volume would reach in a sump with vertical sides.
tw_status tw_fluid_constant_area_level_mm(double above_edge_ml, double area_cm2, double *out_level_mm);

/// How much too high the level looks, away from the center of the sump, when the vehicle is not level.
tw_status tw_fluid_tilt_shift_mm(double offset_mm, double tilt_deg, double *out_shift_mm);

/// The words for a hazard, one of `TW_HAZARD_*`.
tw_status tw_hazard_caution(int32_t hazard, struct tw_hazard_text *out_text);

/// What the change of a figure is worth; better is a TW_BETTER_*, figures within same_within of each other are the same.
tw_status tw_hold_change(double before,
                         double after,
                         uint8_t better,
                         double same_within,
                         struct tw_change *out_change);

/// A needle thrust bearing against another, at the same load.
tw_status tw_hold_compare_needles(const struct tw_needle_thrust *before,
                                  const struct tw_needle_thrust *after,
                                  struct tw_needle_change *out_change);

/// A shaft against another, each at its own torque and both at the same.
tw_status tw_hold_compare_shafts(const struct tw_shaft *before,
                                 const struct tw_shaft *after,
                                 double torque_before_nm,
                                 double torque_after_nm,
                                 struct tw_shaft_change *out_change);

/// A clutch pack against another, at the same pressure and friction.
tw_status tw_hold_compare_packs(const struct tw_set_pack *before,
                                const struct tw_set_pack *after,
                                const struct tw_applied *applied,
                                struct tw_pack_change *out_change);

/// The sun of a planetary set against another, at the same torque.
tw_status tw_hold_compare_suns(const struct tw_helical_sun *before,
                               const struct tw_helical_sun *after,
                               double torque_nm,
                               struct tw_sun_change *out_change);

/// Pressure, width and shear stress of a line contact under a force.
tw_status tw_hold_pressed(const struct tw_line_contact *contact, double force_n, struct tw_line_pressure *out_pressure);

/// Force, N, at which a line contact reaches a peak pressure.
tw_status tw_hold_force_at_peak_n(const struct tw_line_contact *contact, double peak_mpa, double *out_force_n);

/// Force along the axis that a helical sun or ring brings into its thrust bearing.
tw_status tw_hold_axial_thrust(double torque_nm,
                               uint16_t teeth,
                               const struct tw_helical *helical,
                               struct tw_axial_thrust *out_thrust);

/// Force along the axis of a wheel of a planetary set in a gear of a train, and its speed against the carrier.
tw_status tw_hold_wheel_thrust(const struct tw_train *train,
                               const struct tw_state *state,
                               const struct tw_set_wheel *at,
                               double input_torque_nm,
                               double input_speed_rpm,
                               struct tw_wheel_thrust *out_thrust);

/// Forces and contact pressure of rollers or sprags under a torque.
tw_status tw_hold_wedged(const struct tw_wedge *wedge, double torque_nm, struct tw_wedge_load *out_load);

/// Torque, N m, at which rollers or sprags reach an allowed contact pressure. Not a rating.
tw_status tw_hold_wedge_capacity_nm(const struct tw_wedge *wedge, double allow_mpa, double *out_torque_nm);

/// Whether rollers or sprags hold a torque, with uncertainty.
tw_status tw_hold_wedge_hold(const struct tw_wedge *wedge,
                             const struct tw_reading *need_nm,
                             const struct tw_reading *allow_mpa,
                             double geometry_u_rel,
                             const struct tw_rule *rule,
                             struct tw_one_way_hold *out_hold);

/// Whether a wedge holds by itself: a roller or sprag, and the cone or roller that keeps a pawl in.
tw_status tw_hold_locks(double half_angle_deg,
                        const struct tw_reading *friction,
                        const struct tw_rule *rule,
                        struct tw_judgment *out_judgment);

/// Backlash of a ratchet, and how many struts drop in together.
tw_status tw_hold_ratchet_index(const struct tw_ratchet *ratchet, struct tw_ratchet_index *out_index);

/// Force along a strut and its stress under a torque.
tw_status tw_hold_strut_load(const struct tw_ratchet *ratchet, double torque_nm, struct tw_strut_load *out_load);

/// Torque, N m, at which the struts that carry reach an allowed stress. Not a rating.
tw_status tw_hold_strut_capacity_nm(const struct tw_ratchet *ratchet, double allow_mpa, double *out_torque_nm);

/// Whether struts hold a torque, with uncertainty.
tw_status tw_hold_strut_hold(const struct tw_ratchet *ratchet,
                             const struct tw_reading *need_nm,
                             const struct tw_reading *allow_mpa,
                             double geometry_u_rel,
                             const struct tw_rule *rule,
                             struct tw_one_way_hold *out_hold);

/// Speed and energy with which a backlash closes under a torque.
tw_status tw_hold_take_up(double backlash_deg, double torque_nm, double inertia_kg_m2, struct tw_take_up *out_take_up);

/// What the closed elements of a mask ask of a one-way clutch under a load of TW_LOAD_*.
tw_status tw_hold_one_way_duty(const struct tw_train *train,
                               uint8_t element,
                               uint32_t closed,
                               uint8_t load,
                               struct tw_one_way_duty *out_duty);

/// Torque at the park gear of a vehicle that only the park lock holds on a grade.
tw_status tw_hold_park_load(const struct tw_driveline *driveline,
                            double mass_kg,
                            double grade_pct,
                            double rocking_factor,
                            struct tw_park_load *out_load);

/// Stress at the root of a park-gear tooth under a torque at the output shaft.
tw_status tw_hold_tooth_stress(const struct tw_park_gear *gear,
                               double torque_nm,
                               double stress_factor,
                               struct tw_park_stress *out_stress);

/// Load and root stress of a vehicle on a grade in one.
tw_status tw_hold_stress_on_grade(const struct tw_park_gear *gear,
                                  const struct tw_parked *parked,
                                  double stress_factor,
                                  struct tw_park_stress *out_stress);

/// Grade, %, on which the root of a tooth reaches a stress; 100 for that or steeper. The grade in parked is not used.
tw_status tw_hold_largest_grade_pct(const struct tw_park_gear *gear,
                                    const struct tw_parked *parked,
                                    double allow_mpa,
                                    double stress_factor,
                                    double *out_grade_pct);

/// Whether the root stress stays below yield, with its uncertainty. Not a rating.
tw_status tw_hold_park_hold(const struct tw_park_gear *gear,
                            const struct tw_parked *parked,
                            const struct tw_tooth_strength *strength,
                            const struct tw_rule *rule,
                            struct tw_park_hold *out_hold);

/// How far a vehicle rolls before the pawl drops in at the latest, and the energy that the drive line then stops.
tw_status tw_hold_free_roll(const struct tw_park_gear *gear,
                            const struct tw_parked *parked,
                            struct tw_free_roll *out_roll);

/// Angle, degrees, that the gear turns while the pawl can drop in.
tw_status tw_hold_window_deg(const struct tw_park_gear *gear,
                             double space_mm,
                             double pawl_tip_mm,
                             double *out_window_deg);

/// What the second park gear gains in strength over the first, and costs in free roll.
tw_status tw_hold_compare_park_gears(const struct tw_park_gear *first,
                                     const struct tw_park_gear *second,
                                     double stress_factor,
                                     struct tw_park_comparison *out_comparison);

/// Force with which a loaded tooth pushes the pawl out.
tw_status tw_hold_ejection(const struct tw_pawl *pawl, double tooth_n, struct tw_ejection *out_ejection);

/// Contact pressure of the pawl on the flank of a loaded tooth.
tw_status tw_hold_tip_pressure(const struct tw_pawl *pawl,
                               const struct tw_line_contact *contact,
                               double tooth_n,
                               struct tw_line_pressure *out_pressure);

/// Speed above which the pawl skips over the teeth instead of dropping in.
tw_status tw_hold_latch(const struct tw_pawl *pawl,
                        const struct tw_driveline *driveline,
                        double window_deg,
                        struct tw_latch *out_latch);

/// Torque, N m, at the park gear at which the tires of the locked axle slide.
tw_status tw_hold_grip_nm(const struct tw_driveline *driveline,
                          double axle_load_kg,
                          double grade_pct,
                          double tire_friction,
                          double *out_torque_nm);

/// How far, mm, a light vehicle may move in Park by 49 CFR 571.114, on no more than 10 %. For comparison only.
tw_status tw_hold_roll_limits_49_cfr_571_114(double grade_pct, struct tw_limits *out_limits);

/// Stress in a round shaft under torque.
tw_status tw_hold_torsion(const struct tw_shaft *shaft, double torque_nm, struct tw_torsion *out_torsion);

/// Angle, degrees, by which a torque twists a length of shaft.
tw_status tw_hold_twist_deg(const struct tw_shaft *shaft,
                            double torque_nm,
                            double length_mm,
                            double shear_modulus_mpa,
                            double *out_twist_deg);

/// What a hollow shaft carries and weighs against a solid one of the same outside diameter.
tw_status tw_hold_hollow_over_solid(const struct tw_shaft *shaft, struct tw_hollow_over_solid *out_kept);

/// Whether a shaft stays below its yield in shear under a torque.
tw_status tw_hold_shaft_hold(const struct tw_shaft *shaft,
                             const struct tw_shaft_load *load,
                             const struct tw_rule *rule,
                             struct tw_shaft_hold *out_hold);

/// Bearing and shear stress of the teeth of a spline; carrying_share of them carry.
tw_status tw_hold_spline_load(const struct tw_spline *spline,
                              double torque_nm,
                              double carrying_share,
                              struct tw_spline_load *out_load);

/// Static and dynamic axial capacity of a needle thrust bearing. Not a maker's rating.
tw_status tw_hold_needle_capacity(const struct tw_needle_thrust *bearing, struct tw_needle_capacity *out_capacity);

/// Whether a needle thrust bearing stands a load at rest without lasting dents.
tw_status tw_hold_needle_hold(const struct tw_needle_thrust *bearing,
                              const struct tw_reading *load_n,
                              double least_static_factor,
                              const struct tw_rule *rule,
                              struct tw_needle_hold *out_hold);

/// Whether nine of ten needle thrust bearings reach a life, h, under a load.
tw_status tw_hold_needle_lasts(const struct tw_needle_thrust *bearing,
                               const struct tw_reading *load_n,
                               double speed_rpm,
                               double least_life_h,
                               const struct tw_rule *rule,
                               struct tw_needle_lasts *out_lasts);

/// Life that nine of ten bearings reach; exponent 3 for balls, 10/3 for rollers and needles.
tw_status tw_hold_rating_life(double capacity_n,
                              double load_n,
                              double exponent,
                              double speed_rpm,
                              struct tw_rating_life *out_life);

/// Constant load that wears a bearing as much as count stages of loads and speeds.
tw_status tw_hold_mean_load(const struct tw_load_stage *stages,
                            size_t count,
                            double exponent,
                            struct tw_mean_load *out_mean);

/// Lewis form factor of a 20 degree full-depth involute tooth, from 12 teeth up.
tw_status tw_hold_form_factor(uint32_t teeth, double *out_factor);

/// By what the tooth force of a running gear grows with its speed; the finish is one of TW_TOOTH_FINISH_*.
tw_status tw_hold_velocity_factor(double pitch_diameter_mm, double speed_rpm, uint8_t finish, double *out_factor);

/// Bending stress at the root of a spur tooth; the velocity factor of a gear that stands is 1.
tw_status tw_hold_tooth_bending(const struct tw_spur_tooth *tooth,
                                double force_n,
                                double velocity_factor,
                                struct tw_tooth_bending *out_bending);

/// Tangential force, N, at which the root of a spur tooth reaches a bending stress.
tw_status tw_hold_force_at_bending_n(const struct tw_spur_tooth *tooth,
                                     double bending_mpa,
                                     double velocity_factor,
                                     double *out_force_n);

/// Unit load, sliding speed and their product on the face of a thrust washer.
tw_status tw_hold_washer_load(const struct tw_thrust_washer *washer,
                              double load_n,
                              double speed_rpm,
                              struct tw_washer_load *out_load);

/// Flow from a volume and the time in which it ran.
tw_status tw_hydraulic_timed_flow(const struct tw_reading *volume_l,
                                  const struct tw_reading *time_s,
                                  struct tw_timed_flow *out_flow);

/// Flow that the same cooler would pass at another temperature of the fluid.
tw_status tw_hydraulic_flow_at_reference(const struct tw_reading *flow_l_min,
                                         const struct tw_fluid *fluid,
                                         const struct tw_reading *temp_c,
                                         double reference_c,
                                         struct tw_reading *out_flow_l_min);

/// Least flows of a cooler from their table.
tw_status tw_hydraulic_from_flows(const double *temperature_c,
                                  const double *least_flow_l_min,
                                  size_t rows,
                                  struct tw_cooler_limits *out_limits);

/// Least flow of a cooler at a temperature.
tw_status tw_hydraulic_least_flow_at(const struct tw_cooler_limits *limits,
                                     double temp_c,
                                     struct tw_least_flow *out_least);

/// Whether a cooler passes enough at the temperature that the fluid has.
tw_status tw_hydraulic_cooler_check(const struct tw_cooler_limits *limits,
                                    const struct tw_cooler_reading *reading,
                                    const struct tw_rule *rule,
                                    struct tw_cooler_check *out_check);

/// Flow of oil through a narrow slot, one wall of which may move.
tw_status tw_hydraulic_slot_flow(const struct tw_slot *slot,
                                 double pressure_drop_kpa,
                                 double viscosity_mpa_s,
                                 double density_kg_m3,
                                 double wall_speed_m_s,
                                 struct tw_slot_flow *out_flow);

/// Flow along the gap between a bore and a shaft or valve that slides in it.
tw_status tw_hydraulic_sliding_gap(const struct tw_gap *gap,
                                   double pressure_drop_kpa,
                                   double viscosity_mpa_s,
                                   double density_kg_m3,
                                   double wall_speed_m_s,
                                   struct tw_sliding_gap *out_flow);

/// Flow through an orifice; `turbulent` is false where the discharge of a sharp edge does not hold.
tw_status tw_hydraulic_orifice_flow(const struct tw_orifice *orifice,
                                    double pressure_drop_kpa,
                                    double density_kg_m3,
                                    double viscosity_mpa_s,
                                    struct tw_orifice_flow *out_flow);

/// Pressure, kPa, that an orifice takes at a flow.
tw_status tw_hydraulic_orifice_drop_kpa(const struct tw_orifice *orifice,
                                        double flow_l_min,
                                        double density_kg_m3,
                                        double *out_drop_kpa);

/// Hole, mm, that lets a flow through at a pressure.
tw_status tw_hydraulic_orifice_diameter_mm(double flow_l_min,
                                           double pressure_drop_kpa,
                                           double density_kg_m3,
                                           double discharge,
                                           double *out_diameter_mm);

/// Effective area, mm^2, of orifices side by side.
tw_status tw_hydraulic_in_parallel_mm2(const struct tw_orifice *orifices, size_t count, double *out_effective_area_mm2);

/// Effective area, mm^2, of orifices one after another.
tw_status tw_hydraulic_in_series_mm2(const struct tw_orifice *orifices, size_t count, double *out_effective_area_mm2);

/// Flow, L/min, through an effective area.
tw_status tw_hydraulic_passage_flow_l_min(double effective_area_mm2,
                                          double pressure_drop_kpa,
                                          double density_kg_m3,
                                          double *out_flow_l_min);

/// Force, N, with which the flow through a metering edge closes its valve.
tw_status tw_hydraulic_flow_force_n(const struct tw_metering *metering, double pressure_drop_kpa, double *out_force_n);

/// Pressure that a regulator valve holds, with the forces on it.
tw_status tw_hydraulic_regulated(const struct tw_regulator *regulator,
                                 double boost_pressure_kpa,
                                 struct tw_regulated *out_regulated);

/// Spring force, N, that gives a regulator valve its pressure, at the stroke where it regulates.
tw_status tw_hydraulic_spring_for_n(const struct tw_regulator *regulator,
                                    double pressure_kpa,
                                    double boost_pressure_kpa,
                                    double *out_spring_n);

/// Line pressure that a gear needs, against the gauge reading in duty and the most that the control can give (INFINITY where
/// that is not known).
tw_status tw_hydraulic_gear_pressure(const struct tw_state *state,
                                     const struct tw_element_pack *packs,
                                     size_t pack_count,
                                     const struct tw_duty *duty,
                                     double control_max_kpa,
                                     struct tw_gear_pressure *out_pressure);

/// How far each circuit would explain a pattern of pressure readings, the likeliest first. Suspects, not proof.
tw_status tw_hydraulic_suspect_circuits(const struct tw_pressure_reading *readings,
                                        size_t count,
                                        uint32_t elements,
                                        const struct tw_pattern_rule *rule,
                                        struct tw_pressure_suspects *out_suspects);

/// Which of some readings is expected to separate the suspects of these readings best.
tw_status tw_hydraulic_next_reading(const struct tw_pressure_reading *readings,
                                    size_t count,
                                    uint32_t elements,
                                    const struct tw_pattern_rule *rule,
                                    const struct tw_pressure_point *candidates,
                                    size_t candidate_count,
                                    struct tw_next_reading *out_next);

/// Displacement, cm3 per turn, of an external gear pump from tip and root diameter.
tw_status tw_hydraulic_external_gear_cm3_rev(double tip_diameter_mm,
                                             double root_diameter_mm,
                                             double face_mm,
                                             double *out_volume_cm3_rev);

/// Displacement, cm3 per turn, of an external gear pump from tip diameter and center distance.
tw_status tw_hydraulic_external_gear_by_centers_cm3_rev(double tip_diameter_mm,
                                                        double center_distance_mm,
                                                        double face_mm,
                                                        double *out_volume_cm3_rev);

/// Displacement of an internal gear pump from the areas of its largest and smallest chamber.
tw_status tw_hydraulic_chamber_displacement(const struct tw_internal_gear_pump *pump,
                                            struct tw_chamber_displacement *out_displacement);

/// Displacement, cm3 per turn, of a vane pump at an eccentricity.
tw_status tw_hydraulic_vane_cm3_rev(double cam_diameter_mm,
                                    double rotor_diameter_mm,
                                    double eccentricity_mm,
                                    double face_mm,
                                    double *out_volume_cm3_rev);

/// Displacement, cm3 per turn, of a gear pump by the rule of the trade. Common practice, no source.
tw_status tw_hydraulic_field_rule_cm3_rev(double bore_diameter_mm,
                                          double across_bores_mm,
                                          double face_mm,
                                          double *out_volume_cm3_rev);

/// Share of its displacement that a pump delivers.
tw_status tw_hydraulic_volumetric_efficiency(double delivered_l_min,
                                             double displacement_cm3_rev,
                                             double speed_rpm,
                                             double *out_efficiency);

/// Density and viscosity of a fluid at its temperature, with what an uncertain temperature does to them.
tw_status tw_hydraulic_oil_at(const struct tw_fluid *fluid, const struct tw_reading *temp_c, struct tw_oil_at *out_oil);

/// What a pump delivers against a pressure.
tw_status tw_hydraulic_pump_flow(const struct tw_pump *pump,
                                 double speed_rpm,
                                 double pressure_kpa,
                                 double viscosity_mpa_s,
                                 struct tw_pump_flow *out_flow);

/// Speed, 1/min, below which a pump can no longer hold the pressure.
tw_status tw_hydraulic_least_speed_rpm(const struct tw_pump *pump,
                                       double pressure_kpa,
                                       double viscosity_mpa_s,
                                       double demand_l_min,
                                       double *out_speed_rpm);

/// Whether a pump covers the demand, with its uncertainty. The worst case is a hot idle at the highest pressure.
tw_status tw_hydraulic_flow_margin(const struct tw_pump *pump,
                                   const struct tw_pump_duty *duty,
                                   const struct tw_rule *rule,
                                   struct tw_flow_margin *out_margin);

/// Fluid temperature, degC, above which a pump can no longer hold the pressure at a speed.
tw_status tw_hydraulic_hottest_c(const struct tw_pump *pump,
                                 const struct tw_fluid *fluid,
                                 double speed_rpm,
                                 double pressure_kpa,
                                 double demand_l_min,
                                 double *out_temp_c);

/// Whether a clearance of a pump is within its limit, and how many times more it leaks than when new.
tw_status tw_hydraulic_pump_clearance(const struct tw_reading *clearance_mm,
                                      const struct tw_reading *new_mm,
                                      double limit_mm,
                                      const struct tw_rule *rule,
                                      struct tw_pump_clearance *out_clearance);

/// Prior chance of each variant from how many of each came into the shop.
tw_status tw_identify_prior_of_counts(const uint32_t *counts, size_t variants, double *out_prior);

/// Logarithm of the probability density (1/mm) of a reading of a size that lies anywhere within its limits.
tw_status tw_identify_ln_density(const struct tw_reading *reading_mm,
                                 const struct tw_limits *size_mm,
                                 double *out_ln_density);

/// Adds a mark that is there or not to the row of its part. `chance` and the row have one number for each variant; on failure
/// the row stays as it was.
tw_status tw_identify_add_seen(const double *chance,
                               size_t variants,
                               bool seen,
                               double *ln_part);

/// Adds a measured size to the row of its part, and says which variant the reading comes nearest to. `size_mm` and the row
/// have one entry for each variant; on failure the row stays as it was.
tw_status tw_identify_add_measured(const struct tw_limits *size_mm,
                                   size_t variants,
                                   const struct tw_reading *reading_mm,
                                   double *ln_part,
                                   struct tw_nearest *out_nearest);

/// Chance of each variant. `out_variants` has room for as many as the evidence.
tw_status tw_identify_weigh(const struct tw_evidence *evidence,
                            struct tw_variant_finding *out_variants,
                            struct tw_weighed *out_weighed);

/// Where a part came from. `variants` as `tw_identify_weigh` filled them in; `out_origins` has room for as many.
tw_status tw_identify_part(const struct tw_evidence *evidence,
                           const struct tw_variant_finding *variants,
                           size_t part,
                           struct tw_origin *out_origins,
                           struct tw_part_finding *out_finding);

/// One variant, mixed, or not settled. `parts` holds the findings of the parts that were looked at.
tw_status tw_identify_conclude(const struct tw_weighed *weighed,
                               const struct tw_part_finding *parts,
                               size_t count,
                               const struct tw_rule *rule,
                               struct tw_conclusion *out_conclusion);

/// What looking for a mark would tell about the variant. `chance` has one number for each variant.
tw_status tw_identify_mark_worth(const struct tw_standing *standing,
                                 const double *chance,
                                 double minutes,
                                 struct tw_worth *out_worth);

/// What measuring a size would tell about the variant. `size_mm` has one entry for each variant.
tw_status tw_identify_size_worth(const struct tw_standing *standing,
                                 const struct tw_limits *size_mm,
                                 double u_mm,
                                 double minutes,
                                 struct tw_worth *out_worth);

/// Share of a land that lies on its bearing surface.
tw_status tw_interchange_cover_share(const struct tw_limits *land_mm,
                                     const struct tw_limits *surface_mm,
                                     double *out_share);

/// What comes of a joint whose first part is of one variant and whose second is of another, with the reason.
tw_status tw_interchange_meet(const struct tw_joint *joint,
                              const struct tw_sides *first_from,
                              const struct tw_sides *second_from,
                              struct tw_meeting *out_meeting);

/// Checks once that numbers, sizes and machining of a family fit together. What uses a family afterward refuses what it cannot
/// use, but does not look for more.
tw_status tw_interchange_check(const struct tw_part_family *family);

/// What comes of one joint of a family with its parts of these variants. Parts of one variant hold.
tw_status tw_interchange_meeting(const struct tw_part_family *family,
                                 uint16_t joint,
                                 uint8_t first_of,
                                 uint8_t second_of,
                                 struct tw_meeting *out_meeting);

/// What comes of a joint once a machining was done, with its first part of one variant and its second of another.
tw_status tw_interchange_machined(const struct tw_part_family *family,
                                  uint16_t machining,
                                  uint8_t first_of,
                                  uint8_t second_of,
                                  struct tw_meeting *out_meeting);

/// Every joint between a part of variant from and a unit of variant into, one tw_crossing for each joint: once, before any number
/// of tw_interchange_close_set and tw_interchange_answer for these two variants. On failure the crossings are of no use.
tw_status tw_interchange_crossings(const struct tw_part_family *family,
                                   uint8_t from,
                                   uint8_t into,
                                   size_t crossing_count,
                                   struct tw_crossing *out_crossings);

/// The smallest set of parts of the one variant that goes together with the rest of a unit of the other.
tw_status tw_interchange_close_set(const struct tw_part_family *family,
                                   const struct tw_crossing *crossings,
                                   size_t crossing_count,
                                   uint16_t part,
                                   struct tw_matched_set *out_set);

/// A joint between a matched set and the rest of the unit: what comes of it and the machining that mends it. A joint that is not
/// between the two holds.
tw_status tw_interchange_edge(const struct tw_matched_set *set,
                              const struct tw_part_family *family,
                              const struct tw_crossing *crossings,
                              size_t crossing_count,
                              uint16_t joint,
                              struct tw_passage *out_passage);

/// What a matched set costs with its machining; a list of prices may be empty. What is not known is counted, not taken as 0.
tw_status tw_interchange_price(const struct tw_matched_set *set,
                               const struct tw_part_family *family,
                               const struct tw_crossing *crossings,
                               size_t crossing_count,
                               const double *part_prices,
                               size_t part_price_count,
                               const double *machining_prices,
                               size_t machining_price_count,
                               struct tw_price *out_price);

/// How a part of variant from goes into a unit of variant into.
tw_status tw_interchange_answer(const struct tw_part_family *family,
                                const struct tw_crossing *crossings,
                                size_t crossing_count,
                                uint16_t part,
                                uint8_t from,
                                uint8_t into,
                                struct tw_answer *out_answer);

/// The answers for every part and every ordered pair of variants: parts * variants * (variants - 1) of them, by variant of the
/// part, then variant of the unit, then part. scratch has room for one crossing per joint. On failure the answers are of no use.
tw_status tw_interchange_matrix(const struct tw_part_family *family,
                                struct tw_crossing *scratch,
                                size_t scratch_count,
                                size_t answer_count,
                                struct tw_answer *out_answers);

/// The fewest parts, or the cheapest, that make every joint of a unit on the bench hold. For each part the variant to order, or
/// TW_AS_FOUND; for each joint its state as it would be. On failure both lists are of no use.
tw_status tw_interchange_order(const struct tw_part_family *family,
                               const struct tw_order_job *job,
                               uint8_t *out_parts,
                               size_t part_count,
                               struct tw_joint_state *out_states,
                               size_t state_count,
                               struct tw_order *out_order);

/// What comes of a part of some variant among parts of these variants, by tolerance and after what machining is permitted: the
/// outcome of its worst joint that no machining mends, and the first machining that it needs.
tw_status tw_interchange_put_in(const struct tw_part_family *family,
                                const uint8_t *variants,
                                size_t part_count,
                                uint16_t part,
                                uint8_t variant,
                                struct tw_passage *out_passage);

/// A value with its standard uncertainty as a fraction of it: 0.02 for 2 %.
tw_status tw_judge_relative(double value, double u_rel, struct tw_reading *out_reading);

/// Anywhere within +/- the half width with the same chance: u = a/sqrt(3).
tw_status tw_judge_rectangular(double value, double half_width, struct tw_reading *out_reading);

/// Within +/- the half width, more often near the middle: u = a/sqrt(6).
tw_status tw_judge_triangular(double value, double half_width, struct tw_reading *out_reading);

/// Swinging as a sine between +/- the half width: u = a/sqrt(2).
tw_status tw_judge_arcsine(double value, double half_width, struct tw_reading *out_reading);

/// Read from a display or counter that moves in steps of the quantum: u = q/sqrt(12).
tw_status tw_judge_quantized(double value, double quantum, struct tw_reading *out_reading);

/// Read on an instrument whose class is its greatest error in percent of full scale.
tw_status tw_judge_of_class(double value, double full_scale, double class_pct, struct tw_reading *out_reading);

/// Mean of repeated readings, its standard uncertainty and degrees of freedom.
tw_status tw_judge_mean_of(const double *values, size_t count, struct tw_repeated *out_repeated);

/// Inside is GO, outside is NO-GO; the uncertainty is not counted.
tw_status tw_judge_simple_acceptance(struct tw_rule *out_rule);

/// GO is proven from this chance of lying inside, NO-GO up to 1 minus it (ISO 14253-1:2017, usually 0.95).
tw_status tw_judge_conformance(double probability, struct tw_rule *out_rule);

/// A guard of k standard uncertainties on either side of a limit (ISO 14253-1 before 2017, usually 2).
tw_status tw_judge_expanded_guard(double k, struct tw_rule *out_rule);

/// GO from the chance `go`, above 0.5; NO-GO up to the chance `no_go`, below 0.5.
tw_status tw_judge_stated_chances(double go, double no_go, struct tw_rule *out_rule);

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
tw_status tw_judge_chance_inside(const struct tw_reading *reading, const struct tw_limits *limits, double *out_chance);

/// Decides whether the reading conforms to its limits: GO, NO-GO or NOT PROVEN, and what would settle it.
tw_status tw_judge_judge(const struct tw_reading *reading,
                         const struct tw_limits *limits,
                         const struct tw_rule *rule,
                         struct tw_judgment *out_judgment);

/// Combined standard uncertainty of independent inputs, and what each contributes.
tw_status tw_judge_combine(const struct tw_input *inputs, size_t count, struct tw_budget *out_budget);

/// Combined standard uncertainty of correlated inputs; `correlation` holds count x count coefficients, row by row.
tw_status tw_judge_combine_correlated(const struct tw_input *inputs,
                                      size_t count,
                                      const double *correlation,
                                      struct tw_budget *out_budget);

/// Effective degrees of freedom of the combined uncertainty of independent inputs (Welch-Satterthwaite).
tw_status tw_judge_effective_freedom(const struct tw_input *inputs, size_t count, double *out_freedom);

/// Expanded uncertainty and coverage interval for a stated probability.
tw_status tw_judge_expand(const struct tw_reading *reading,
                          double freedom,
                          double coverage,
                          struct tw_expanded *out_expanded);

/// The one input whose better measurement would decide the judged reading, and how good it must be. Pass the judgment as
/// `tw_judge_judge` wrote it.
tw_status tw_judge_settle(const struct tw_judgment *judgment,
                          const struct tw_budget *budget,
                          struct tw_settlement *out_settlement);

/// As `tw_judge_settle`, for the input at this position.
tw_status tw_judge_settle_by(const struct tw_judgment *judgment,
                             const struct tw_budget *budget,
                             uint32_t input,
                             struct tw_settlement *out_settlement);

/// A judgment in words: what was judged, the chance and the verdict, what would make it GO, and for each input of the budget
/// (its `count` is 0 where there is none) its sensitivity, its share of the variance and whether it alone would decide.
/// `inputs` names them in their order, `unit` is the sign of the reading's unit; all zero-terminated, the unit empty for a
/// pure number. Pass the judgment as `tw_judge_judge` wrote it.
///
/// Writes UTF-8 with a terminating zero into `size` bytes, and its length without the zero; `TW_STATUS_COUNT` where it does
/// not fit. With a `size` of 0 only the length is written.
tw_status tw_judge_explain(const struct tw_judgment *judgment,
                           const struct tw_budget *budget,
                           const char *const *inputs,
                           size_t count,
                           const char *unit,
                           char *out_text,
                           size_t size,
                           size_t *out_length);

/// Standard normal distribution function; z may be infinite.
tw_status tw_judge_normal_cdf(double z, double *out_probability);

/// Value that a standard normal variable stays below with the stated probability.
tw_status tw_judge_normal_quantile(double probability, double *out_z);

/// Student's t distribution function; `freedom` is 1 or more, infinite for the normal distribution.
tw_status tw_judge_student_cdf(double t, double freedom, double *out_probability);

/// Value that a Student's t variable stays below with the stated probability.
tw_status tw_judge_student_quantile(double probability, double freedom, double *out_t);

/// Factor from standard uncertainty to the half width that covers the stated probability.
tw_status tw_judge_coverage_factor(double coverage, double freedom, double *out_k);

/// A speed that comes as values on a bus, rounded to `step_rpm`. `noise_rpm` is the standard deviation of one value besides
/// its step; the same value for longer than `age_limit_s`, while the other speed moves, is no evidence; a value above
/// `greatest_rpm` is impossible.
tw_status tw_live_bus(float step_rpm,
                      float noise_rpm,
                      float age_limit_s,
                      float greatest_rpm,
                      struct tw_speed_sensor *out_sensor);

/// A speed that comes as pulses of a wheel with `teeth`, counted from sample to sample.
tw_status tw_live_counted(uint32_t teeth,
                          float noise_rpm,
                          float age_limit_s,
                          float greatest_rpm,
                          struct tw_speed_sensor *out_sensor);

/// A speed that comes as edges of a wheel with `teeth`, stamped by a timer with ticks of `tick_s`.
tw_status tw_live_edges(uint32_t teeth,
                        float tick_s,
                        float noise_rpm,
                        float age_limit_s,
                        float greatest_rpm,
                        struct tw_speed_sensor *out_sensor);

/// A reading from the 16 raw bits of a J1939 bus: what marks an error, a missing or a reserved value is no speed. `step_rpm`
/// is that of one bit.
tw_status tw_live_marked(uint16_t raw,
                         float step_rpm,
                         struct tw_speed_reading *out_reading);

/// The uncertainty of a sensor by its causes.
tw_status tw_live_spread(const struct tw_speed_sensor *from, struct tw_speed_spread *out_spread);

/// Standard uncertainty of the mean of `values` readings over a window, 1/min.
tw_status tw_live_u_rpm(const struct tw_speed_sensor *from,
                        float rpm,
                        float window_s,
                        uint32_t values,
                        float *out_u_rpm);

/// Greatest error that rounding to a step leaves in the mean of any number of values, 1/min.
tw_status tw_live_step_bias_rpm(float step_rpm, float noise_rpm, float *out_bias_rpm);

/// Shortest window whose ratio has the relative standard uncertainty `u_rel`, s.
tw_status tw_live_ratio_window_s(const struct tw_speed_pair *pair,
                                 float input_rpm,
                                 float ratio,
                                 float u_rel,
                                 float *out_window_s);

/// Average number of values until a one-sided cumulative sum alarms; all arguments in standard deviations.
tw_status tw_live_run_length(float threshold, float reference, float shift, float *out_run_length);

/// Threshold of a one-sided cumulative sum with a given average number of values to a false alarm.
tw_status tw_live_threshold_for(float run_length, float reference, float *out_threshold);

/// What heats an element, from its steel plates.
tw_status tw_live_of_plates(float steel_mass_kg,
                            float specific_heat_j_kg_k,
                            float cooling_s,
                            float limit_c,
                            struct tw_live_element *out_element);

/// Mean temperature of the steel plates of an element after `span_s` in which `energy_j` entered, °C.
tw_status tw_live_plate_after_c(const struct tw_live_element *element,
                                float plate_c,
                                float fluid_c,
                                float energy_j,
                                float span_s,
                                float *out_plate_c);

/// Shifts of the same energy, one every `pace_s`, until the plates reach their limit.
tw_status tw_live_shifts_to_limit(const struct tw_live_element *element,
                                  float plate_c,
                                  float fluid_c,
                                  float energy_j,
                                  float pace_s,
                                  struct tw_shifts_to_limit *out_shifts);

/// Checks a unit and reduces it to what a sample needs. Do this once; every monitor of such a unit shares the plan.
tw_status tw_live_unit_plan(const struct tw_live_unit *unit, struct tw_live_plan *out_plan);

/// A monitor that has seen nothing yet. Also the way to start again.
///
/// A monitor in firmware, as in ffi/examples/live_tool.c:
/// 1. Make the plan of the unit, once: gears and elements from the flash image (`tw_flash_live_gears`,
///    `tw_flash_live_elements`), a sensor for each speed (`tw_live_bus`, `tw_live_counted`, `tw_live_edges`), limits, then
///    `tw_live_unit_plan`. Best on a PC (ffi/examples/live_plan.c): the plan then lies in flash.
/// 2. `tw_live_start`, once for each unit that is watched. The monitor is a plain value: copy it, store it, forget it.
/// 3. For each new pair of speeds fill a `tw_live_sample`, what is not known as NAN (torque, temperature, pressure),
///    TW_GEAR_NOT_COMMANDED, -1 (lockup); a speed that did not come has the state TW_READING_STATE_MISSING. Raw values of a
///    J1939 bus go through `tw_live_marked`. Then `tw_live_push`, and act on the events.
/// 4. Whenever it is of use: `tw_live_last_shift`, `tw_live_ratio_of`, `tw_live_suspects_of`, `tw_live_counts_of`.
///
/// Gears are told by their place in the unit's list, elements by their number, times on the clock of the samples.
tw_status tw_live_start(const struct tw_live_plan *plan,
                        struct tw_live_monitor *out_monitor);

/// Takes the next sample. Afterward `out_events` holds what this sample showed (look at the first `count` of `events`), and
/// `out_state` the state after it.
///
/// Any sample is allowed: what cannot be used is counted and leaves the state as it was. Only a null pointer, or a reading
/// whose state is none of TW_READING_STATE_*, is refused, and then nothing changes.
tw_status tw_live_push(struct tw_live_monitor *monitor,
                       const struct tw_live_plan *plan,
                       const struct tw_live_sample *sample,
                       struct tw_live_events *out_events,
                       struct tw_live_state *out_state);

/// Chance of each gear by its place in the unit's list, into TW_MAX_LIVE_GEARS + 1 numbers; the last is that of none of them:
/// between two gears, neutral, slipping far.
tw_status tw_live_gear_chances(const struct tw_live_monitor *monitor,
                               const struct tw_live_plan *plan,
                               float *out_chances);

/// The elements that may be the ones that slip, ranked by the evidence over the gears, and the gear to observe next.
tw_status tw_live_suspects_of(const struct tw_live_monitor *monitor,
                              const struct tw_live_plan *plan,
                              struct tw_live_suspects *out_suspects);

/// Adds one value of slip under drive to the evidence of a gear: n_in less i·n_out over its standard deviation, and the
/// smallest slip that is wanted over the same. What is not a number adds nothing.
tw_status tw_live_add_slip(struct tw_gear_evidence *evidence,
                           float slip,
                           float wanted);

/// Odds of each element to be the one that slips, from the evidence of TW_MAX_LIVE_GEARS gears by their place in the unit's
/// list; all zeros for a gear that was not seen.
tw_status tw_live_weigh_suspects(const struct tw_live_plan *plan,
                                 const struct tw_gear_evidence *evidence,
                                 struct tw_live_suspects *out_suspects);

/// The last shift, or the one that is running as far as it is known. Look at it when an event of kind
/// TW_LIVE_EVENT_KIND_SHIFT_DONE comes.
tw_status tw_live_last_shift(const struct tw_live_monitor *monitor,
                             const struct tw_live_plan *plan,
                             struct tw_live_shift *out_shift);

/// What was counted since the start.
tw_status tw_live_counts_of(const struct tw_live_monitor *monitor, struct tw_live_counts *out_counts);

/// The ratio of a gear, by its place in the unit's list, as it was measured.
tw_status tw_live_ratio_of(const struct tw_live_monitor *monitor,
                           const struct tw_live_plan *plan,
                           uint8_t gear,
                           struct tw_live_ratio *out_ratio);

/// A kind of event, one of TW_LIVE_EVENT_KIND_*, in words.
tw_status tw_live_event_name(uint8_t kind, struct tw_text *out_name);

/// Road speed, km/h, of an output-shaft speed, 1/min.
tw_status tw_road_road_km_h(const struct tw_driveline *driveline, double output_rpm, double *out_road_km_h);

/// Output-shaft speed, 1/min, of a road speed, km/h.
tw_status tw_road_output_rpm(const struct tw_driveline *driveline, double road_km_h, double *out_output_rpm);

/// Every speed from the road to the engine, at a road speed, km/h.
tw_status tw_road_speeds_at_road(const struct tw_driveline *driveline,
                                 const struct tw_engaged *engaged,
                                 double road_km_h,
                                 struct tw_shaft_speeds *out_speeds);

/// Every speed from the road to the engine, at an output-shaft speed, 1/min.
tw_status tw_road_speeds_at_output(const struct tw_driveline *driveline,
                                   const struct tw_engaged *engaged,
                                   double output_rpm,
                                   struct tw_shaft_speeds *out_speeds);

/// Every speed from the road to the engine, at an engine speed, 1/min.
tw_status tw_road_speeds_at_engine(const struct tw_driveline *driveline,
                                   const struct tw_engaged *engaged,
                                   double engine_rpm,
                                   struct tw_shaft_speeds *out_speeds);

/// A shift point that keeps its output-shaft speed, 1/min, before and after a change of tire or axle.
tw_status tw_road_shift_at_output_speed(const struct tw_driveline *before,
                                        const struct tw_driveline *after,
                                        double output_rpm,
                                        struct tw_shift_point *out_shift);

/// A shift point that keeps its road speed, km/h, before and after a change of tire or axle.
tw_status tw_road_shift_at_road_speed(const struct tw_driveline *before,
                                      const struct tw_driveline *after,
                                      double road_km_h,
                                      struct tw_shift_point *out_shift);

/// Speed shown at a true road speed, km/h, when the programmed driveline is not the fitted one.
tw_status tw_road_speedometer(const struct tw_driveline *programmed,
                              const struct tw_driveline *fitted,
                              double true_km_h,
                              struct tw_speedometer *out_speedometer);

/// Speeds, km/h, that a speedometer may show at a true speed under UN Regulation 39.
tw_status tw_road_limits_un_r39(double true_km_h, struct tw_limits *out_limits);

/// Speeds, km/h, that the speedometer of a commercial vehicle may show at 80 km/h to 50 mph under 49 CFR 393.82.
tw_status tw_road_limits_49_cfr_393_82(double true_km_h, struct tw_limits *out_limits);

/// What to program, or to fit, after a change of tire, axle or transfer case.
tw_status tw_road_numbers_to_program(const struct tw_driveline *programmed,
                                     const struct tw_driveline *fitted,
                                     double pulses_per_rev,
                                     struct tw_numbers_to_program *out_numbers);

/// Tractive force and power that hold a steady speed, km/h, on a grade, %.
tw_status tw_road_road_load(const struct tw_combination *combination,
                            double air_density_kg_m3,
                            double speed_km_h,
                            double grade_pct,
                            struct tw_road_load *out_load);

/// The grade on which a tractive force, N, holds a steady speed, km/h. Not a rating: grip, brakes, cooling and the maker's
/// ratings come first.
tw_status tw_road_grade_held(const struct tw_combination *combination,
                             double air_density_kg_m3,
                             double speed_km_h,
                             double force_n,
                             struct tw_grade_held *out_held);

/// Force of the driven wheels, N, from a torque at the transmission output, N*m; efficiency of axle and transfer case.
tw_status tw_road_tractive_force_n(const struct tw_driveline *driveline,
                                   double output_torque_nm,
                                   double efficiency,
                                   double *out_force_n);

/// Torque at the transmission output, N*m, that a tractive force, N, takes.
tw_status tw_road_output_torque_nm(const struct tw_driveline *driveline,
                                   double force_n,
                                   double efficiency,
                                   double *out_output_torque_nm);

/// Coast-down coefficients from lbf, lbf/mph and lbf/mph^2.
tw_status tw_road_from_lbf_mph(double a_lbf,
                               double b_lbf_per_mph,
                               double c_lbf_per_mph2,
                               struct tw_coast_down *out_coast_down);

/// Force and power of a coast-down equation at a speed, km/h, on the level.
tw_status tw_road_coast_down_load(const struct tw_coast_down *coast_down,
                                  double speed_km_h,
                                  struct tw_coast_down_load *out_load);

/// Rolling coefficient of a car on a paved road by its speed, km/h.
tw_status tw_road_rolling_coefficient_at(double speed_km_h, double *out_rolling_coefficient);

/// Grade, %, of an angle, degrees.
tw_status tw_road_grade_pct(double grade_deg, double *out_grade_pct);

/// Angle, degrees, of a grade, %.
tw_status tw_road_grade_deg(double grade_pct, double *out_grade_deg);

/// Mean grade, %, of a climb of rise_m over distance_m along the road.
tw_status tw_road_mean_grade_pct(double rise_m, double distance_m, double *out_grade_pct);

/// Air of the standard atmosphere at an altitude, m.
tw_status tw_road_standard_air(double altitude_m, struct tw_air *out_air);

/// Density of dry air, kg/m^3, at an absolute pressure, kPa, and a temperature, degrees Celsius.
tw_status tw_road_density_of_air(double pressure_kpa_abs, double temp_c, double *out_density_kg_m3);

/// A part as made, not measured; `spread` is one of TW_SPREAD_*.
tw_status tw_stack_toleranced(double sensitivity,
                              const struct tw_limits *size_mm,
                              tw_spread spread,
                              struct tw_chain_link *out_link);

/// A measured part; `k` standard uncertainties count as its worst case.
tw_status tw_stack_measured(double sensitivity,
                            const struct tw_reading *size_mm,
                            double k,
                            struct tw_chain_link *out_link);

/// The size that a chain of parts leaves: nominal, worst case, root sum of squares, and with its uncertainty.
tw_status tw_stack_chain(const struct tw_chain_link *links, size_t count, struct tw_chain *out_chain);

/// What an end play gains from the reference temperature to a hot one, with its uncertainty.
tw_status tw_stack_grown(const struct tw_axial_growth *growth,
                         const struct tw_reading *temp_c,
                         const struct tw_reading *train_hotter_k,
                         struct tw_grown_play *out_grown);

/// Best estimate of what an end play gains, mm.
tw_status tw_stack_growth_mm(const struct tw_axial_growth *growth,
                             double temp_c,
                             double train_hotter_k,
                             double *out_growth_mm);

/// What one shim, ring or plate leaves, cold and hot, judged.
tw_status tw_stack_outcome(const struct tw_selection *selection,
                           const struct tw_piece *piece,
                           struct tw_piece_outcome *out_outcome);

/// Which shim, ring or plate to fit, by nearest target and by least risk. Not finding one is an answer: `found` is false.
tw_status tw_stack_choose(const struct tw_selection *selection,
                          const struct tw_piece *pieces,
                          size_t count,
                          struct tw_piece_choice *out_choice);

/// The piece that `tw_stack_choose` would fit, alone and without the judgments; TW_STATUS_NO_ANSWER where none lands inside.
tw_status tw_stack_pick(const struct tw_selection *selection,
                        const struct tw_piece *pieces,
                        size_t count,
                        struct tw_picked_piece *out_picked);

/// Mean of readings taken in steps, as with feelers, and its standard uncertainty.
tw_status tw_stack_mean_of_steps(const double *values,
                                 size_t count,
                                 double quantum,
                                 double u_of_one,
                                 struct tw_repeated *out_repeated);

/// Which input of a judged result to measure, the one that weighs most first; `u_measured` has one entry for each input.
tw_status tw_stack_what_to_measure(const struct tw_judgment *judgment,
                                   const struct tw_budget *budget,
                                   const double *u_measured,
                                   size_t count,
                                   struct tw_measure_plan *out_plan);

/// Room for the ring or plate of a pack, mm, from the clearance read with another one in place.
tw_status tw_stack_room_from_fitted(const struct tw_reading *clearance_mm,
                                    const struct tw_reading *fitted_mm,
                                    struct tw_reading *out_room_mm);

/// Room for the ring or plate of a pack, from the depth of the drum and the heights of what stands in it.
tw_status tw_stack_room_from_heights(const struct tw_pack_heights *heights, struct tw_pack_room *out_room);

/// Whether a piston closes its pack before its seal leaves its land.
tw_status tw_stack_piston_travel(const struct tw_piston_stroke *stroke,
                                 const struct tw_rule *rule,
                                 struct tw_piston_travel *out_travel);

/// Oil that a piston takes to close its pack, and how long a flow needs for it.
tw_status tw_stack_apply_fill(const struct tw_annulus *piston,
                              const struct tw_reading *travel_mm,
                              const struct tw_reading *flow_l_min,
                              struct tw_apply_fill *out_fill);

/// Reads a size designation of `length` bytes, such as 265/65R18 112T, LT235/85R16C, 35x12.50R17LT, 11R22.5 or 185R14.
/// What the text leaves out is 0 in the tire.
tw_status tw_tire_parse(const char *designation, size_t length, struct tw_tire *out_tire);

/// Reads what tw_tire_parse reads and also the shorthand 245/55/18, for which it assumes radial plies and says so in
/// plies_assumed.
tw_status tw_tire_parse_lenient(const char *designation, size_t length, struct tw_tire *out_tire);

/// The designation in its canonical spelling.
tw_status tw_tire_text(const struct tw_tire *tire, struct tw_designation *out_designation);

/// Metric size: service, one of TW_TIRE_SERVICE_*, section width in mm, aspect ratio in %, rim code.
tw_status tw_tire_metric(uint8_t service, double width_mm, double aspect_pct, double rim_in, struct tw_tire *out_tire);

/// Metric size without an aspect ratio: service, one of TW_TIRE_SERVICE_*, section width in mm, rim code.
tw_status tw_tire_no_aspect(uint8_t service, double width_mm, double rim_in, struct tw_tire *out_tire);

/// Flotation size: service, one of TW_TIRE_SERVICE_*, overall diameter, section width and rim code in inches.
tw_status tw_tire_flotation(uint8_t service,
                            double diameter_in,
                            double width_in,
                            double rim_in,
                            struct tw_tire *out_tire);

/// Inch size: service, one of TW_TIRE_SERVICE_*, section width and rim code in inches.
tw_status tw_tire_inch(uint8_t service, double width_in, double rim_in, struct tw_tire *out_tire);

/// The same tire with an aspect ratio, %, that the caller knows or assumes, for a size that does not state one.
tw_status tw_tire_with_aspect(const struct tw_tire *tire, double aspect_pct, struct tw_tire *out_tire);

/// Design outer diameter of the tire regulations, and what it is made of.
tw_status tw_tire_regulation_diameter(const struct tw_tire *tire, struct tw_regulation_diameter *out_diameter);

/// Outer diameter, mm, that the numbers of the name give, unrounded.
tw_status tw_tire_geometric_diameter_mm(const struct tw_tire *tire, double *out_diameter_mm);

/// Rolling circumference from the regulation diameter, mm, by a factor: TW_RADIAL_FACTOR or TW_DIAGONAL_FACTOR.
tw_status tw_tire_rolling_by_factor(double diameter_mm,
                                    const struct tw_reading *factor,
                                    struct tw_rolling *out_rolling);

/// Rolling circumference from the free outer diameter, mm, by the share that it is of the free circumference.
tw_status tw_tire_rolling_by_share(double diameter_mm, const struct tw_reading *share, struct tw_rolling *out_rolling);

/// Rolling circumference from revolutions counted over a distance, m.
tw_status tw_tire_rolling_by_count(const struct tw_reading *distance_m,
                                   const struct tw_reading *revolutions,
                                   struct tw_rolling *out_rolling);

/// Free, static loaded and effective rolling radius of one wheel; diameter in mm.
tw_status tw_tire_radii(double diameter_mm,
                        double static_over_diameter,
                        const struct tw_rolling *rolling,
                        struct tw_wheel_radii *out_radii);

/// Load, kg, that a load index of 0 to 279 stands for.
tw_status tw_tire_load_index_kg(uint16_t load_index, double *out_load_kg);

/// Load in whole pounds that a load index of 0 to 279 stands for.
tw_status tw_tire_load_index_lb(uint16_t load_index, double *out_load_lb);

/// The speed symbol with these letters, `length` bytes.
tw_status tw_tire_from_letters(const char *letters, size_t length, tw_speed_symbol *out_symbol);

/// Speed, km/h, that a speed symbol, one of TW_SPEED_SYMBOL_*, stands for.
tw_status tw_tire_symbol_km_h(uint8_t symbol, double *out_km_h);

/// Ply rating that a load range, one of TW_LOAD_RANGE_*, stands for. It states no load.
tw_status tw_tire_ply_rating(uint8_t load_range, uint16_t *out_ply_rating);

/// Temperature of the sump along a road of grades. `out_driven` takes one entry for each piece.
tw_status tw_tow_climb(const struct tw_rig *rig,
                       const struct tw_heat_model *heat,
                       double start_c,
                       const struct tw_road_piece *pieces,
                       size_t piece_count,
                       struct tw_driven_piece *out_driven,
                       struct tw_climb *out_climb);

/// Largest speed on a long grade at which a gear holds and the sump stays at its limit or below.
tw_status tw_tow_cool_speed(const struct tw_rig *rig,
                            const struct tw_heat_model *heat,
                            double grade_pct,
                            double speed_km_h,
                            struct tw_cool_pull *out_cool);

/// Elevation and grade along a drive from noisy elevations. `out_points` takes one entry for each point.
tw_status tw_tow_smooth(const double *distance_m,
                        const double *elevation_m,
                        size_t point_count,
                        double window_m,
                        const struct tw_elevation_noise *noise,
                        struct tw_slope_point *out_points);

/// What a drive climbs and falls in all, without counting noise.
tw_status tw_tow_total_climb(const double *elevation_m,
                             size_t point_count,
                             double dead_band_m,
                             struct tw_total_climb *out_climb);

/// Pieces of road of one length from smoothed elevations. With room 0 only their number is given.
tw_status tw_tow_pieces(const double *distance_m,
                        const double *elevation_m,
                        size_t point_count,
                        double piece_m,
                        double speed_km_h,
                        struct tw_road_piece *out_pieces,
                        size_t room,
                        uint32_t *out_piece_count);

/// What a published criterion, one of `TW_CRITERION_*`, asks of a vehicle: times in s, speeds in km/h, distances in m, grades
/// in %, angles in degrees.
tw_status tw_tow_criterion_limits(int32_t criterion,
                                  const struct tw_rated_for *rated,
                                  struct tw_limits *out_limits);

/// A result, measured or computed, against one of the published criteria; its value is NAN where there is none, and an
/// infinite time where the speed is never reached.
tw_status tw_tow_check_criterion(int32_t criterion,
                                 const struct tw_reading *value,
                                 const struct tw_rated_for *rated,
                                 const struct tw_rule *rule,
                                 struct tw_criterion_check *out_check);

/// Heat that a unit makes.
tw_status tw_tow_unit_loss(const struct tw_running *running, struct tw_unit_loss *out_loss);

/// Heat, kW, of a converter that is not locked.
tw_status tw_tow_converter_loss_kw(double engine_nm,
                                   double engine_rpm,
                                   double speed_ratio,
                                   double torque_ratio,
                                   double *out_loss_kw);

/// What a loss warms the oil that flows through.
tw_status tw_tow_through_flow_rise(double power_kw,
                                   double efficiency,
                                   double flow_l_min,
                                   double density_kg_m3,
                                   double specific_heat_j_kg_k,
                                   struct tw_through_flow *out_flow);

/// Heat that a flow carries for each kelvin, W/K.
tw_status tw_tow_flow_heat_w_k(double flow_l_min,
                               double density_kg_m3,
                               double specific_heat_j_kg_k,
                               double *out_heat_w_k);

/// Temperature of a sump after a time under a constant loss.
tw_status tw_tow_warmed(const struct tw_heat_node *node,
                        double start_c,
                        double loss_kw,
                        double time_s,
                        struct tw_warmed *out_warmed);

/// Time until a sump reaches a limit under a constant loss: the minutes left.
tw_status tw_tow_time_to(const struct tw_heat_node *node,
                         double start_c,
                         double loss_kw,
                         double limit_c,
                         struct tw_time_to *out_time);

/// Conductance, W/K, that the cooler must have for the sump to stay at a limit.
tw_status tw_tow_cooler_needed_w_k(const struct tw_heat_node *node,
                                   double loss_kw,
                                   double limit_c,
                                   double *out_conductance_w_k);

/// Share of the greatest possible heat that a cooler of an arrangement (`TW_ARRANGEMENT_...`) passes.
tw_status tw_tow_effectiveness(uint8_t arrangement,
                               double transfer_units,
                               double capacity_ratio,
                               double *out_effectiveness);

/// Transfer units for an effectiveness.
tw_status tw_tow_transfer_units(uint8_t arrangement,
                                double effectiveness,
                                double capacity_ratio,
                                double *out_transfer_units);

/// Heat that a cooler takes from oil of a temperature.
tw_status tw_tow_cooler_heat(const struct tw_cooler *cooler,
                             double oil_c,
                             double air_c,
                             struct tw_cooler_heat *out_heat);

/// Size of a cooler that brings oil from one temperature to another.
tw_status tw_tow_cooler_size(uint8_t arrangement,
                             double oil_w_k,
                             double air_w_k,
                             const struct tw_cooler_task *task,
                             struct tw_cooler_size *out_size);

/// Force of the driven wheels at stall against what it takes to move a combination up a grade. Not what may be pulled.
tw_status tw_tow_launch(const struct tw_launch *launch,
                        double grade_pct,
                        const struct tw_rule *rule,
                        struct tw_launch_force *out_force);

/// Force at which the tires of the driven rear axle slip on a grade, and the grade on which they do.
tw_status tw_tow_grip_on_grade(const struct tw_stance *stance,
                               double grade_pct,
                               double tire_friction,
                               double rolling_coefficient,
                               struct tw_launch_grip *out_grip);

/// Moment of inertia, kg·m², of a whole gear train in a gear, referred to its output; one inertia for each member in order.
tw_status tw_tow_output_inertia_kg_m2(const struct tw_state *state,
                                      const double *inertia_kg_m2,
                                      size_t members,
                                      double *out_inertia_kg_m2);

/// Mass that the force of the driven wheels accelerates, rotating parts counted.
tw_status tw_tow_equivalent_mass(double mass_kg,
                                 const struct tw_driveline *driveline,
                                 double wheel_inertia_kg_m2,
                                 double output_inertia_kg_m2,
                                 struct tw_equivalent_mass *out_mass);

/// Time and distance from one speed to another through the gears at full throttle.
tw_status tw_tow_run_up(const struct tw_run_up *run,
                        const struct tw_engine_curve *engine,
                        const struct tw_characteristic *converter,
                        const struct tw_run_up_gear *gears,
                        size_t gear_count,
                        double from_km_h,
                        double to_km_h,
                        struct tw_run_up_time *out_time);

/// A load of the combination against one rating, one of `TW_RATING_KIND_*`, and the trailer at which the two meet.
tw_status tw_tow_rating_check(const struct tw_coupled *coupled,
                              int32_t kind,
                              double rating_kg,
                              const struct tw_rule *rule,
                              struct tw_rating_check *out_check);

/// Every rating of the combination, and the one that governs; a rating is INFINITY where it is not known. Brakes, cooling,
/// frame, trailer sway and local law are not looked at: the vehicle maker's ratings and placards stand.
tw_status tw_tow_review_ratings(const struct tw_coupled *coupled,
                                const struct tw_tow_ratings *ratings,
                                const struct tw_rule *rule,
                                struct tw_rating_review *out_review);

/// A trailer of which the share that rests on the hitch is known.
tw_status tw_tow_by_share(const struct tw_reading *mass_kg,
                          const struct tw_reading *hitch_share,
                          struct tw_trailer *out_trailer);

/// Hitch loads, kg, that a band of shares allows a trailer.
tw_status tw_tow_share_band_kg(double mass_kg, const struct tw_limits *share, struct tw_limits *out_limits);

/// Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers. Without a
/// weight-distributing hitch its moment is 0 and its distance INFINITY.
tw_status tw_tow_axle_loads(const struct tw_axle_weights *weighed,
                            const struct tw_trailer *trailer,
                            const struct tw_levers *levers,
                            const struct tw_distribution *distribution,
                            struct tw_combination_loads *out_loads);

/// Moment, N·m, of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it.
tw_status tw_tow_restoring_moment_nm(double hitch_kg,
                                     const struct tw_levers *levers,
                                     double ball_to_axle_mm,
                                     double restored_share,
                                     double *out_moment_nm);

/// What a unit offers, from its gears and the ratings of its record.
tw_status tw_tow_gearing(const struct tw_offered_gear *gears,
                         size_t gear_count,
                         double rated_input_nm,
                         double rated_reverse_nm,
                         double rated_output_nm,
                         struct tw_gearing *out_gearing);

/// Speed and torque of every gear on a grade, lock-up clutch closed, and the gear that holds it. Not a rating.
tw_status tw_tow_pull(const struct tw_rig *rig, double grade_pct, double speed_km_h, struct tw_pull *out_pull);

/// As `tw_tow_pull`, slower by a step at a time until a gear holds with the reserve.
tw_status tw_tow_pull_slowed(const struct tw_rig *rig, double grade_pct, double speed_km_h, struct tw_pull *out_pull);

/// Largest speed at which a locked gear holds a grade with the reserve and, if asked, within the ratings.
tw_status tw_tow_largest_speed(const struct tw_rig *rig,
                               double grade_pct,
                               double at_most_km_h,
                               bool within_ratings,
                               struct tw_largest_speed *out_speed);

/// A gear on a grade with the lock-up clutch open: match of engine and converter, and the heat.
tw_status tw_tow_unlocked_pull(const struct tw_rig *rig,
                               const struct tw_characteristic *converter,
                               uint32_t gear,
                               double grade_pct,
                               double speed_km_h,
                               struct tw_unlocked_pull *out_pull);

/// Class of a truck by its gross vehicle weight rating in the United States, 1 to 8.
tw_status tw_tow_gvwr_class(double gvwr_kg, uint32_t *out_class);

/// Least gross vehicle weight rating, kg, that a maker may state.
tw_status tw_tow_gvwr_least_kg(double unloaded_kg, double cargo_kg, uint32_t seats, double *out_gvwr_kg);

/// Sum of the axle ratings over the gross vehicle weight rating, kg: below 0 the ratings contradict each other.
tw_status tw_tow_gawr_left_kg(double gvwr_kg, double gawr_front_kg, double gawr_rear_kg, double *out_left_kg);

/// What the tires of an axle carry together, kg; passenger tires on a truck or trailer are divided by 1.10.
tw_status tw_tow_axle_tires_kg(double tire_kg, uint32_t tires, bool passenger, double *out_axle_kg);

/// A train of `members` members without sets; `input`, `output` and `fixed` (the case) are numbers of three of them.
tw_status tw_train_new(uint8_t members, uint8_t input, uint8_t output, uint8_t fixed, struct tw_train *out_train);

/// Adds a planetary set after checking teeth and joins; on failure the train stays as it was.
tw_status tw_train_add_set(const struct tw_planetary_set *set, struct tw_train *train);

/// Adds a clutch, brake, one-way or dog clutch after checking what it joins; on failure the train stays as it was.
tw_status tw_train_add_element(const struct tw_element *element, struct tw_train *train);

/// Solves the engagement in which exactly the elements of the mask are closed, one-way clutches like any other.
tw_status tw_train_solve(const struct tw_train *train, uint32_t closed, struct tw_state *out_state);

/// As `tw_train_solve`, with the one-way clutches held or overrunning as the load, one of TW_LOAD_*, makes them.
tw_status tw_train_resolve(const struct tw_train *train, uint32_t closed, uint8_t load, struct tw_state *out_state);

/// Speeds of the planets of a set in a solved state of this train.
tw_status tw_train_planet_speeds(const struct tw_train *train,
                                 const struct tw_state *state,
                                 uint8_t set,
                                 struct tw_planet_speeds *out_speeds);

/// Slip of a closed element of a gear while it lets go and all others hold, per unit of slip at the input, which is the input
/// speed above ratio times output speed; `den` 0 where the two speeds do not show its slip.
tw_status tw_train_slip_per_input_slip(const struct tw_state *state,
                                       uint8_t element,
                                       struct tw_fraction *out_factor);

/// Whether anything reacts a torque at the input. Otherwise the input spins up, and no torque share is defined.
tw_status tw_train_carries_torque(const struct tw_state *state, bool *out_carries);

/// Whether the state drives the output faster than `output_per_input` times the input: a forbidden state.
tw_status tw_train_overspeeds(const struct tw_state *state, double output_per_input, bool *out_overspeeds);

/// Mask of the one-way clutches.
tw_status tw_train_one_way_mask(const struct tw_train *train, uint32_t *out_mask);

/// Mask of the elements that someone closes: all but the one-way clutches.
tw_status tw_train_applied_mask(const struct tw_train *train, uint32_t *out_mask);

/// The combination of closed elements after this one; the first after 0. TW_STATUS_NO_ANSWER after the last.
tw_status tw_train_next_engagement(const struct tw_train *train, uint32_t closed, uint32_t *out_closed);

/// Counts the kinds of state over every combination of closed elements, under a load of TW_LOAD_*.
tw_status tw_train_state_counts(const struct tw_train *train, uint8_t load, struct tw_state_counts *out_counts);

/// Whether a planetary set can be put together: axes, meshing places, room between neighbors. Joins are not looked at.
tw_status tw_train_assembly(const struct tw_planetary_set *set, struct tw_assembly *out_assembly);

/// Ratio and its standard uncertainty from pulses counted over one window.
tw_status tw_train_counted_ratio(const struct tw_pulse_count *count, struct tw_reading *out_ratio);

/// Ratio and its standard uncertainty from the times of pulse edges.
tw_status tw_train_timed_ratio(const struct tw_timed_edges *edges, struct tw_reading *out_ratio);

/// Whether a measured ratio fits the exact ratio of a candidate, with the stated coverage probability.
tw_status tw_train_fit_ratio(const struct tw_reading *measured,
                             const struct tw_fraction *candidate,
                             double coverage,
                             struct tw_ratio_fit *out_fit);

/// The gears of a list of up to 32 in which two trains with the same elements give different ratios: bit 0 is the first.
tw_status tw_train_gears_that_tell_trains(const struct tw_train *train,
                                          const struct tw_train *other,
                                          const struct tw_commanded *gears,
                                          size_t count,
                                          uint32_t *out_gears);

/// What a commanded gear does with a failed element, in drive and in coast.
tw_status tw_train_symptom(const struct tw_train *train,
                           const struct tw_commanded *commanded,
                           const struct tw_element_fault *fault,
                           struct tw_symptom *out_symptom);

/// What a fault does to each gear of a list of up to 32.
tw_status tw_train_signature(const struct tw_train *train,
                             const struct tw_commanded *gears,
                             size_t count,
                             const struct tw_element_fault *fault,
                             struct tw_signature *out_signature);

/// Ranks every element, dead and stuck, by how well it explains what was seen.
tw_status tw_train_diagnose(const struct tw_train *train,
                            const struct tw_observation *observations,
                            size_t count,
                            struct tw_diagnosis *out_diagnosis);

/// The gears of a list of up to 32 in which two faults show different things: bit 0 is the first gear.
tw_status tw_train_gears_that_tell_faults(const struct tw_train *train,
                                          const struct tw_commanded *gears,
                                          size_t count,
                                          const struct tw_element_fault *one,
                                          const struct tw_element_fault *other,
                                          uint32_t *out_gears);

/// What a ratio that was measured in a commanded gear, under drive and without slip, says about it.
tw_status tw_train_seen_ratio(const struct tw_train *train,
                              const struct tw_commanded *commanded,
                              const struct tw_reading *ratio,
                              struct tw_observation *out_observation);

/// The gear, of a list of up to 32, whose outcome tells most about 2 to 32 suspects; tw_train_symptom says what each shows there.
tw_status tw_train_next_gear(const struct tw_train *train,
                             const struct tw_commanded *gears,
                             size_t count,
                             const struct tw_tried_gears *tried,
                             const struct tw_element_fault *suspects,
                             size_t suspect_count,
                             struct tw_next_gear *out_next);

/// The efficiency from sun to ring of a simple set with its carrier standing, shared evenly by its two meshes.
tw_status tw_train_of_simple_set(double sun_to_ring, struct tw_mesh_efficiency *out_mesh);

/// Power that each member carries and that rolls through each set of a gear, without losses, per unit of input power.
tw_status tw_train_power_flow(const struct tw_train *train,
                              const struct tw_state *state,
                              struct tw_power_flow *out_flow);

/// Efficiency of a gear with mesh losses, under a load of TW_LOAD_DRIVE or TW_LOAD_COAST.
tw_status tw_train_losses(const struct tw_train *train,
                          const struct tw_state *state,
                          const struct tw_mesh_efficiency *mesh,
                          uint8_t load,
                          struct tw_losses *out_losses);

/// Inches to millimeters.
double tw_units_in_to_mm(double value);

/// Millimeters to inches.
double tw_units_mm_to_in(double value);

/// Thousandths of an inch to millimeters.
double tw_units_thou_to_mm(double value);

/// Millimeters to thousandths of an inch.
double tw_units_mm_to_thou(double value);

/// Miles to kilometers.
double tw_units_mile_to_km(double value);

/// Kilometers to miles.
double tw_units_km_to_mile(double value);

/// Miles per hour to km/h.
double tw_units_mph_to_km_h(double value);

/// km/h to miles per hour.
double tw_units_km_h_to_mph(double value);

/// Pounds to kilograms.
double tw_units_lb_to_kg(double value);

/// Kilograms to pounds.
double tw_units_kg_to_lb(double value);

/// Pounds-force to newtons.
double tw_units_lbf_to_n(double value);

/// Newtons to pounds-force.
double tw_units_n_to_lbf(double value);

/// Pound-force feet to newton-meters.
double tw_units_lbf_ft_to_nm(double value);

/// Newton-meters to pound-force feet.
double tw_units_nm_to_lbf_ft(double value);

/// Pounds-force per square inch to kilopascals.
double tw_units_psi_to_kpa(double value);

/// Kilopascals to pounds-force per square inch.
double tw_units_kpa_to_psi(double value);

/// US liquid quarts to liters.
double tw_units_quart_to_l(double value);

/// Liters to US liquid quarts.
double tw_units_l_to_quart(double value);

/// US liquid gallons to liters.
double tw_units_gallon_to_l(double value);

/// Liters to US liquid gallons.
double tw_units_l_to_gallon(double value);

/// Cubic inches to cubic centimeters.
double tw_units_in3_to_cm3(double value);

/// Cubic centimeters to cubic inches.
double tw_units_cm3_to_in3(double value);

/// Mechanical horsepower to kilowatts.
double tw_units_hp_to_kw(double value);

/// Kilowatts to mechanical horsepower.
double tw_units_kw_to_hp(double value);

/// Capacity factors of torque converters in 1/min per square root of a pound-force foot to 1/min per root of a newton-meter.
double tw_units_per_sqrt_lbf_ft_to_per_sqrt_nm(double value);

/// Capacity factors of torque converters in 1/min per square root of a newton-meter to 1/min per root of a pound-force foot.
double tw_units_per_sqrt_nm_to_per_sqrt_lbf_ft(double value);

/// Differences in degrees Fahrenheit to kelvin.
double tw_units_f_to_k_difference(double value);

/// Differences in kelvin to degrees Fahrenheit.
double tw_units_k_to_f_difference(double value);

/// Degrees Fahrenheit to degrees Celsius.
double tw_units_f_to_c(double temp_f);

/// Degrees Celsius to degrees Fahrenheit.
double tw_units_c_to_f(double temp_c);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* TRAINWRIGHT_H */
