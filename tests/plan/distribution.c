#include "distribution.h"

#include <math.h>

enum { FINE = 40000 };

// Its density (C library's powers) summed up over fine steps after
// x = y^2 (3 - 2y), which takes the roots at its ends away.
distribution distribution_of(bk_estimate estimate)
{
    distribution made = {{0}};
    double width = (double)(estimate.longest - estimate.quickest), sum = 0;
    double alpha = 1 + 4 * (double)(estimate.usual - estimate.quickest) / width;
    for (int i = 0; i < FINE; i++) {
        double y = (i + 0.5) / FINE, x = y * y * (3 - 2 * y);
        double mass = pow(x, alpha - 1) * pow(1 - x, 5 - alpha) * y * (1 - y);
        made.at[(int)((double)estimate.quickest + width * x + 0.5)] += mass;
        sum += mass;
    }
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        made.at[i] /= sum;
    return made;
}

distribution sum_of(const distribution *left, const distribution *right)
{
    distribution made = {{0}};
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        for (int j = 0; left->at[i] > 0 && i + j < DISTRIBUTION_LENGTH; j++)
            made.at[i + j] += left->at[i] * right->at[j];
    return made;
}

distribution later_of(const distribution *left, const distribution *right)
{
    distribution made;
    double by_left = 0, by_right = 0, before = 0;
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++) {
        by_left += left->at[i];
        by_right += right->at[i];
        made.at[i] = by_left * by_right - before;
        before = by_left * by_right;
    }
    return made;
}

distribution moved(const distribution *from, int minutes)
{
    distribution made = {{0}};
    for (int i = minutes; i < DISTRIBUTION_LENGTH; i++)
        made.at[i] = from->at[i - minutes];
    return made;
}

void add_share(distribution *to, const distribution *from, double share)
{
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        to->at[i] += share * from->at[i];
}

double done_by(const distribution *of, int minutes)
{
    double sum = 0;
    for (int i = 0; i <= minutes && i < DISTRIBUTION_LENGTH; i++)
        sum += of->at[i];
    return sum;
}

double mean_of(const distribution *of)
{
    double sum = 0;
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        sum += i * of->at[i];
    return sum;
}

double variance_of(const distribution *of)
{
    double sum = 0, mean = mean_of(of);
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        sum += (i - mean) * (i - mean) * of->at[i];
    return sum;
}
