#ifndef BODKIN_UI_HISTORY_DRAW_H
#define BODKIN_UI_HISTORY_DRAW_H

#include "bodkin/ui/history_view.h"

/// Draws the Measures screen, all but its bottom line. For the files of that screen only.
void bk_history_draw(bk_history_view *view, const bk_wall *wall, const bk_paint *paint);

#endif
