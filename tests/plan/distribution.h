#ifndef BODKIN_TESTS_PLAN_DISTRIBUTION_H
#define BODKIN_TESTS_PLAN_DISTRIBUTION_H

#include "bodkin/plan/spread.h"

enum { DISTRIBUTION_LENGTH = 400 };

/// The chance of each number of minutes, worked out exactly and with nothing of what draws them.
typedef struct distribution {
    double at[DISTRIBUTION_LENGTH];
} distribution;

/// Beta-PERT rounded to whole minutes (half up).
distribution distribution_of(bk_estimate estimate);

/// Of the sum of two that know nothing of each other: their convolution.
distribution sum_of(const distribution *left, const distribution *right);

/// Of the later of two: the product of the chances to be done by then.
distribution later_of(const distribution *left, const distribution *right);

/// So many minutes later.
distribution moved(const distribution *from, int minutes);

/// Adds a share of one to another, for a mixture.
void add_share(distribution *to, const distribution *from, double share);

double done_by(const distribution *of, int minutes);
double mean_of(const distribution *of);
double variance_of(const distribution *of);

#endif
