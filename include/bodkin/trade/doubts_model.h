#ifndef BODKIN_TRADE_DOUBTS_MODEL_H
#define BODKIN_TRADE_DOUBTS_MODEL_H

#include <stdbool.h>

#include "bodkin/trade/doubts_bodies.h"

/// What the measures of one body say about each other. Everything is reckoned with logarithms of millimetres, which are
/// taken to be distributed normally together, once for men, once for women, once for children (women's proportions,
/// carried to any height by their growth); which of these a body is, the measures themselves say (Bayes). Source: the
/// textbook formulas of the multivariate normal distribution and its conditional distributions.

enum { BK_BODY_MOST = 64 }; ///< measures of one sheet, at most

typedef enum bk_body_kind { BK_BODY_MAN, BK_BODY_WOMAN, BK_BODY_CHILD, BK_BODY_KINDS } bk_body_kind;

/// What one measure is expected to be, by all the others of its sheet.
typedef struct bk_expected {
    double chances[BK_BODY_KINDS]; ///< of each kind of body, together 1
    double means[BK_BODY_KINDS], deviations[BK_BODY_KINDS];
} bk_expected;

/// Reckons for each of `count` measures (at least 1, at most BK_BODY_MOST, each of another row) what the others let
/// expect. `logs` are the logarithms of the values; `expected` has `count` items, the caller's.
void bk_bodies_expect(const bk_body_measure *const *rows, const double *logs, size_t count,
                      bk_expected *expected);

/// The logarithm of the chance density of `value`, itself a logarithm. `patient` takes it that one measure in ten is far
/// less sure than the table says, as real people's are.
double bk_expected_density(const bk_expected *expected, double value, bool patient);

/// From where to where the measure is expected to be (two deviations), in millimetres.
void bk_expected_range(const bk_expected *expected, double *from, double *to);

#endif
