/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every test needs: cmocka with the headers it wants first, comparisons that say what was
 * found, and numbers drawn at random but the same in every run. */
#pragma once

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

/* |found - expected| <= tolerance. A NAN is never near anything. */
#define assert_near(found, expected, tolerance)                                                    \
  do                                                                                               \
    {                                                                                              \
      double found_ = (found), expected_ = (expected), tolerance_ = (tolerance);                   \
      if (!(fabs (found_ - expected_) <= tolerance_))                                              \
        fail_msg ("%s: found %.17g, expected %.17g, off by %.3g, allowed %.3g", #found, found_,    \
                  expected_, found_ - expected_, tolerance_);                                      \
    }                                                                                              \
  while (0)

/* |found - expected| <= tolerance |expected|. */
#define assert_relative(found, expected, tolerance)                                                \
  assert_near (found, expected, (tolerance) *fabs ((double) (expected)))

#define assert_less(smaller, larger)                                                               \
  do                                                                                               \
    {                                                                                              \
      double smaller_ = (smaller), larger_ = (larger);                                             \
      if (!(smaller_ < larger_))                                                                   \
        fail_msg ("%s (%.17g) is not less than %s (%.17g)", #smaller, smaller_, #larger, larger_); \
    }                                                                                              \
  while (0)

/* A stream of random numbers; start it at any number but 0. */
typedef struct
{
  uint64_t state;
} TestRandom;

/* Evenly spread over low <= number < high. (xorshift64*, Vigna 2016.) */
static inline double
test_random (TestRandom *random, double low, double high)
{
  random->state ^= random->state >> 12;
  random->state ^= random->state << 25;
  random->state ^= random->state >> 27;
  return low + (high - low) * ((double) ((random->state * 2685821657736338717ULL) >> 11) * 0x1p-53);
}

/* Evenly spread in the logarithm; low > 0. */
static inline double
test_random_log (TestRandom *random, double low, double high)
{
  return exp (test_random (random, log (low), log (high)));
}

/* `count`, times the number in the environment variable LB_TEST_SCALE when that is set. At least
 * 1. */
static inline size_t
test_count (size_t count)
{
  const char *scale = getenv ("LB_TEST_SCALE");
  double scaled = (double) count * (scale != NULL ? strtod (scale, NULL) : 1);

  return scaled > 1 ? (size_t) scaled : 1;
}
