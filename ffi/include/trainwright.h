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

/// A measured or uncertain value with its standard uncertainty (k = 1), both in the same unit.
typedef struct tw_reading {
  /// Best estimate.
  double value;
  /// Standard uncertainty, 0 or more.
  double u;
} tw_reading;

/// Tolerance limits; an open side is infinite.
typedef struct tw_limits {
  /// Least conforming value, or −∞.
  double lower;
  /// Greatest conforming value, or +∞.
  double upper;
} tw_limits;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/// Version of the linked library, major × 1 000 000 + minor × 1000 + patch. Compare it with `TW_VERSION_MAJOR`,
/// `TW_VERSION_MINOR` and `TW_VERSION_PATCH` at start-up.
uint32_t tw_version(void);

/// A status in words: a static, zero-terminated text that is never null. Any number is accepted.
const char *tw_status_text(int32_t status);

/// Probability, 0 to 1, that the true value behind the reading lies within the limits.
tw_status tw_judge_chance_inside(const struct tw_reading *reading, const struct tw_limits *limits, double *out_chance);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* TRAINWRIGHT_H */
