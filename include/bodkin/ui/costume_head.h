#ifndef BODKIN_UI_COSTUME_HEAD_H
#define BODKIN_UI_COSTUME_HEAD_H

#include "bodkin/ui/paint.h"
#include "bodkin/work/forecast.h"

/// The top of the Costume screen: number, title and due day, who wears it, how far it is, when it will be ready, its note.

typedef struct bk_costume_head {
    bool chosen;                         ///< the cursor stands on the costume itself
    const char *clock;                   ///< what is said of the clock; NULL: nothing
    const bk_costume_forecast *forecast; ///< of the costume; NULL: none yet
    const char *reckons;                 ///< how far the reckoning is; NULL: it is settled
} bk_costume_head;

/// Draws it from row 0 on; returns the rows used, with an empty one behind.
size_t bk_costume_head_draw(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                            bk_costume_head head);

#endif
