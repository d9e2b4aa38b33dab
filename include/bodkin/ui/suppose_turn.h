#ifndef BODKIN_UI_SUPPOSE_TURN_H
#define BODKIN_UI_SUPPOSE_TURN_H

#include "bodkin/work/forecast.h"

/// How a costume turns out by what is supposed.

typedef enum bk_turn {
    BK_TURN_RIGHT,   ///< late, and then no longer
    BK_TURN_WORSE,   ///< more urgent, later, or less likely
    BK_TURN_BETTER,  ///< the other way round, and not from late to in time
    BK_TURN_DROPPED, ///< no longer made
    BK_TURN_SAME,    ///< much as before
    BK_TURNS
} bk_turn;

/// Compares a costume's forecast with that of what is supposed (NULL: it is in none). Chances count as another only beyond what the
/// number of trials lets waver: two standard errors of their difference (of two independent shares, from memory: the root of the sum of
/// their squares). Days count where a costume is late or tight; in one with time in hand the plan moves them about freely.
bk_turn bk_turn_of(const bk_costume_forecast *now, const bk_costume_forecast *then);

#endif
