#ifndef BODKIN_UI_RAIL_HEAD_H
#define BODKIN_UI_RAIL_HEAD_H

#include "bodkin/ui/paint.h"
#include "bodkin/work/forecast.h"

/// The top of the Rail screen: the production, when it will be ready and its countdown, by what the rail is narrowed, and how many
/// costumes are in which state and wait on what.

/// What waits are called there, and the key that shows only those costumes.
typedef struct bk_rail_filter {
    const char *key;    ///< NULL: none
    const char *word;   ///< in the counts: "fitting"
    const char *phrase; ///< in a sentence: "a fitting"
} bk_rail_filter;
extern const bk_rail_filter bk_rail_filters[BK_WAITS_ON];

enum { BK_RAIL_SHOWS_ALL = -1, BK_RAIL_HEAD_ROWS = 5 };

typedef struct bk_rail_shown {
    int only;                    ///< a bk_wait_on, or BK_RAIL_SHOWS_ALL
    const char *query;           ///< what it is narrowed to; empty: nothing
    size_t shown;                ///< costumes that are left
    size_t first, last;          ///< of these the ones in sight, from 1
    const char *clock;           ///< what is said of the clock that runs; NULL: none does
    const bk_forecast *forecast; ///< NULL: none yet
    const char *reckons;         ///< how far the reckoning is; NULL: it is settled
} bk_rail_shown;

/// Draws rows 0 to BK_RAIL_HEAD_ROWS - 1.
void bk_rail_draw_head(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown);

#endif
