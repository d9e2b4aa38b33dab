#include "bodkin/trade/doubts_model.h"

#include <assert.h>
#include <float.h>
#include <math.h>

/// How bodies on a stage are spread beyond the survey, which took in soldiers: as factors of the variance.
static const double wider_height = 1.5, wider_bulk = 2;

/// Reading a tape, and standing: the deviation of a logarithm below which no measure is known.
static const double reading = .012;

/// How far towards the natural waist workrooms take it: 0 is the navel, 1 the natural waist.
static const double waist_mean = .4, waist_deviation = .6;

/// Logarithm of a child's height over a woman's, and how many bodies are of which kind.
static const double child_mean = -.3, child_deviation = .25, child_wider = 1.4;
static const double shares_of_kinds[BK_BODY_KINDS] = {.45, .45, .1};

/// A patient density: one value in ten has a deviation this much larger.
static const double loose_share = .1, loose_deviation = 2;

typedef double matrix[BK_BODY_MOST][BK_BODY_MOST];

static double deviation(const bk_body_measure *row, bk_body_kind kind)
{
    const bk_spread *spread = kind == BK_BODY_MAN ? &row->men : &row->women;
    return spread->deviation / spread->mean;
}

static double mean(const bk_body_measure *row, bk_body_kind kind)
{
    const bk_spread *spread = kind == BK_BODY_MAN ? &row->men : &row->women;
    double growth = kind == BK_BODY_CHILD ? child_mean * row->growth : 0;
    return log(spread->mean) + growth + waist_mean * row->natural_waist;
}

/// What bulk adds to height: the correlation with mass where height is the same. Height and mass go together by a half.
static double pure_bulk(const bk_body_measure *row)
{
    const double height_and_mass = .5;
    return (row->bulk - height_and_mass * row->height) / sqrt(1 - height_and_mass * height_and_mass);
}

/// The share of the variance that height and bulk leave open.
static double open_share(const bk_body_measure *row)
{
    double open = 1 - row->height * row->height - pure_bulk(row) * pure_bulk(row);
    return open > 0 ? open : 0;
}

static double shared(const bk_body_measure *left, const bk_body_measure *right)
{
    double sum = 0;
    for (size_t i = 0; i < BK_SHARES; i++) {
        sum += left->shares[i] * right->shares[i];
    }
    return sum * sqrt(open_share(left) * open_share(right));
}

static double covariance(const bk_body_measure *left, const bk_body_measure *right, bk_body_kind kind)
{
    bool same = left == right;
    double correlation = wider_height * left->height * right->height +
                         wider_bulk * pure_bulk(left) * pure_bulk(right) +
                         (same ? open_share(left) : shared(left, right));
    double sum = deviation(left, kind) * deviation(right, kind) * correlation +
                 left->natural_waist * right->natural_waist * waist_deviation * waist_deviation;
    if (kind == BK_BODY_CHILD) {
        sum = sum * child_wider + left->growth * right->growth * child_deviation * child_deviation;
    }
    return same ? sum + left->landmark * left->landmark + reading * reading : sum;
}

/// Turns a covariance matrix into its inverse where it stands (Gauss and Jordan; it is positive definite, so no pivot is
/// sought) and returns the logarithm of its determinant.
static double invert(matrix a, size_t count)
{
    double determinant = 0;
    for (size_t k = 0; k < count; k++) {
        double pivot = a[k][k];
        determinant += log(pivot);
        a[k][k] = 1;
        for (size_t j = 0; j < count; j++) {
            a[k][j] /= pivot;
        }
        for (size_t i = 0; i < count; i++) {
            double factor = a[i][k];
            if (i == k || factor == 0) {
                continue;
            }
            a[i][k] = 0;
            for (size_t j = 0; j < count; j++) {
                a[i][j] -= factor * a[k][j];
            }
        }
    }
    return determinant;
}

/// Logarithm of the normal density but for the factor that all have in common.
static double normal(double distance, double spread)
{
    return -.5 * distance * distance / (spread * spread) - log(spread);
}

/// What a body of that kind lets expect; `chances` gets the logarithm of how well the other measures go with the kind.
static void expect_of_kind(const bk_body_measure *const *rows, const double *logs, size_t count,
                           bk_body_kind kind, bk_expected *expected)
{
    matrix inverse;
    double apart[BK_BODY_MOST], pulled[BK_BODY_MOST], fit = 0;
    for (size_t i = 0; i < count; i++) {
        apart[i] = logs[i] - mean(rows[i], kind);
        for (size_t j = 0; j < count; j++) {
            inverse[i][j] = covariance(rows[i], rows[j], kind);
        }
    }
    double determinant = invert(inverse, count);
    for (size_t i = 0; i < count; i++) {
        pulled[i] = 0;
        for (size_t j = 0; j < count; j++) {
            pulled[i] += inverse[i][j] * apart[j];
        }
        fit += pulled[i] * apart[i];
    }
    for (size_t i = 0; i < count; i++) {
        double distance = pulled[i] / inverse[i][i];
        expected[i].means[kind] = logs[i] - distance;
        expected[i].deviations[kind] = sqrt(1 / inverse[i][i]);
        expected[i].chances[kind] =
            -.5 * (fit + determinant) - normal(distance, expected[i].deviations[kind]);
    }
}

/// Turns the logarithms of how well each kind goes with the measures into chances.
static void settle_chances(double chances[BK_BODY_KINDS])
{
    double best = chances[0], sum = 0;
    for (size_t kind = 1; kind < BK_BODY_KINDS; kind++) {
        best = fmax(best, chances[kind]);
    }
    for (size_t kind = 0; kind < BK_BODY_KINDS; kind++) {
        chances[kind] = shares_of_kinds[kind] * exp(chances[kind] - best);
        sum += chances[kind];
    }
    for (size_t kind = 0; kind < BK_BODY_KINDS; kind++) {
        chances[kind] /= sum;
    }
}

void bk_bodies_expect(const bk_body_measure *const *rows, const double *logs, size_t count,
                      bk_expected *expected)
{
    assert(count > 0 && count <= BK_BODY_MOST);
    for (bk_body_kind kind = BK_BODY_MAN; kind < BK_BODY_KINDS; kind++) {
        expect_of_kind(rows, logs, count, kind, expected);
    }
    for (size_t i = 0; i < count; i++) {
        settle_chances(expected[i].chances);
    }
}

/// Logarithm of the sum of two numbers that are given by their logarithms.
static double add_logs(double left, double right)
{
    return fmax(left, right) + log1p(exp(-fabs(left - right)));
}

double bk_expected_density(const bk_expected *expected, double value, bool patient)
{
    const double nothing = -1e6;
    double sum = nothing;
    for (size_t kind = 0; kind < BK_BODY_KINDS; kind++) {
        double distance = value - expected->means[kind], spread = expected->deviations[kind];
        double density = normal(distance, spread);
        if (patient) {
            density = add_logs(log(1 - loose_share) + density,
                               log(loose_share) + normal(distance, loose_deviation * spread));
        }
        sum = add_logs(sum, log(fmax(expected->chances[kind], DBL_MIN)) + density);
    }
    return sum;
}

void bk_expected_range(const bk_expected *expected, double *from, double *to)
{
    size_t likely = 0;
    for (size_t kind = 1; kind < BK_BODY_KINDS; kind++) {
        likely = expected->chances[kind] > expected->chances[likely] ? kind : likely;
    }
    double spread = 2 * expected->deviations[likely];
    *from = exp(expected->means[likely] - spread);
    *to = exp(expected->means[likely] + spread);
}
