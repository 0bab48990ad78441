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

/// Most rows of a sump's table.
#define TW_SUMP_ROWS 16

/// Most inputs of one combination.
#define TW_MAX_INPUTS 16

/// Aspect ratio of a tire whose size does not state one (185R14). It meets the table of UN R30 within 5 mm of diameter; the
/// often quoted 82 is up to 5 mm of section height too much.
#define TW_ASPECT_NOT_STATED_PCT 80.0

/// Static loaded radius of a tire over its outer diameter: what a rule under the hub measures, standing still.
#define TW_STATIC_LOADED_RADIUS_OVER_DIAMETER 0.47

/// ETRTO factor of the rolling circumference of a radial tire over its regulation diameter (from memory of the ETRTO
/// Standards Manual, general notes).
#define TW_RADIAL_FACTOR 3.05

/// ETRTO factor of the rolling circumference of a diagonal tire over its regulation diameter (from memory, as above).
#define TW_DIAGONAL_FACTOR 2.99

/// Most members of a train, the fixed one included.
#define TW_MAX_MEMBERS 24

/// Most planetary sets of a train.
#define TW_MAX_SETS 8

/// Most rows of a train: one for each set, two for a two-sun set.
#define TW_MAX_ROWS 12

/// Most elements of a train.
#define TW_MAX_ELEMENTS 16

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
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_hazard tw_hazard;
#else
typedef int32_t tw_hazard;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
typedef struct tw_reading {
  /// Best estimate.
  double value;
  /// Standard uncertainty, 0 or more.
  double u;
} tw_reading;

/// Repeated readings in one: their mean and the degrees of freedom of its uncertainty.
typedef struct tw_repeated {
  /// Mean and its standard uncertainty.
  struct tw_reading reading;
  /// Standard deviation of a single reading.
  double deviation;
  /// Degrees of freedom, n − 1.
  double freedom;
} tw_repeated;

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

/// Tolerance limits; an open side is infinite.
typedef struct tw_limits {
  /// Least conforming value, or −∞.
  double lower;
  /// Greatest conforming value, or +∞.
  double upper;
} tw_limits;

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
  double to_lower;
  /// Distance of the value below the upper limit; negative when above it.
  double to_upper;
  /// Greatest standard uncertainty at which this same value is decided; 0 on a limit, infinite if any will do.
  double u_to_decide;
  /// Nearest value that is GO at this uncertainty; infinite if there is none.
  double value_to_go;
  /// GO, NO-GO or NOT PROVEN.
  tw_verdict verdict;
} tw_judgment;

/// What one input brings to a result.
typedef struct tw_input {
  /// Change of the result per unit of the input.
  double sensitivity;
  /// Standard uncertainty of the input, 0 or more.
  double u;
  /// Degrees of freedom of `u`, 1 or more; infinite where `u` is taken as certain.
  double freedom;
} tw_input;

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

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/// Version of the linked library, major × 1 000 000 + minor × 1000 + patch. Compare it with `TW_VERSION_MAJOR`,
/// `TW_VERSION_MINOR` and `TW_VERSION_PATCH` at start-up.
uint32_t tw_version(void);

/// A status in words: a static, zero-terminated text that is never null. Any number is accepted.
const char *tw_status_text(int32_t status);

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

/// A train of `members` members without sets; `input`, `output` and `fixed` (the case) are numbers of three of them.
tw_status tw_train_new(uint8_t members, uint8_t input, uint8_t output, uint8_t fixed, struct tw_train *out_train);

/// Adds a planetary set after checking teeth and joins; on failure the train stays as it was.
tw_status tw_train_add_set(const struct tw_planetary_set *set, struct tw_train *train);

/// Adds a clutch, brake, one-way or dog clutch after checking what it joins; on failure the train stays as it was.
tw_status tw_train_add_element(const struct tw_element *element, struct tw_train *train);

/// Solves the engagement in which exactly the elements of the mask are closed, one-way clutches like any other.
tw_status tw_train_solve(const struct tw_train *train, uint32_t closed, struct tw_state *out_state);

/// As `tw_train_solve`, with the one-way clutches held or overrunning as the load makes them.
tw_status tw_train_resolve(const struct tw_train *train, uint32_t closed, tw_load load, struct tw_state *out_state);

/// Speeds of the planets of a set in a solved state of this train.
tw_status tw_train_planet_speeds(const struct tw_train *train,
                                 const struct tw_state *state,
                                 uint8_t set,
                                 struct tw_planet_speeds *out_speeds);

/// Whether the state drives the output faster than `output_per_input` times the input: a forbidden state.
tw_status tw_train_overspeeds(const struct tw_state *state, double output_per_input, bool *out_overspeeds);

/// The combination of closed elements after this one; the first after 0. TW_STATUS_NO_ANSWER after the last.
tw_status tw_train_next_engagement(const struct tw_train *train, uint32_t closed, uint32_t *out_closed);

/// Counts the kinds of state over every combination of closed elements.
tw_status tw_train_state_counts(const struct tw_train *train, tw_load load, struct tw_state_counts *out_counts);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* TRAINWRIGHT_H */
