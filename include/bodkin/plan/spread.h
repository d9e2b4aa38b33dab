#ifndef BODKIN_PLAN_SPREAD_H
#define BODKIN_PLAN_SPREAD_H

#include <stdint.h>

#include "bodkin/base/arena.h"

/// How long a step may take: quickest, usual and longest minutes as a beta-PERT distribution, with mean (a + 4m + b)/6
/// (Malcolm, Roseboom, Clark, Fazar 1959; the beta with shape 4: alpha = 1 + 4(m - a)/(b - a), beta = 1 + 4(b - m)/(b - a)).

typedef struct bk_estimate {
    int64_t quickest, usual, longest; ///< minutes, quickest <= usual <= longest
} bk_estimate;

/// The stated spread where a step has only its usual minutes: a quickest and a longest in thousandths of the usual. Common practice
/// of the trade, from the orders of work: about 0.6 to 1.75.
enum { BK_SPREAD_QUICKEST = 600, BK_SPREAD_LONGEST = 1750 };

/// Completes an estimate: `quickest` or `longest` BK_NOT_KNOWN (INT64_MIN) get the stated spread; both are brought to the right
/// side of the usual.
bk_estimate bk_estimate_complete(int64_t quickest, int64_t usual, int64_t longest);

double bk_estimate_mean(bk_estimate estimate);
/// The variance ((b - a)/6)^2 of the published three-estimate method.
double bk_estimate_variance(bk_estimate estimate);

/// The chance that a normal variable lies at or below `z` standard deviations above its mean.
double bk_normal_below(double z);

/// A table of the inverse distribution, for drawing quickly; immutable, may be shared.
typedef struct bk_spread bk_spread;

/// The spread of an estimate, in `arena`. Built from additions, multiplications, divisions and square roots alone, so that every
/// compiler and C library gives the same table.
const bk_spread *bk_spread_new(bk_estimate estimate, bk_arena *arena);

/// The minutes (rounded half up) below which lies the share `share`/2^32 of the distribution; it grows with `share`.
int32_t bk_spread_at(const bk_spread *spread, uint32_t share);

#endif
