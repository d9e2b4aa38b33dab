#ifndef BODKIN_UI_MEASURING_DRAW_H
#define BODKIN_UI_MEASURING_DRAW_H

#include "bodkin/ui/measuring_lines.h"
#include "bodkin/ui/paint.h"

/// Draws a sheet while it is taken: its head, its lines, and below them how the measure at hand is taken and what is doubtful.
/// For the files of the Measuring screen only.
void bk_measuring_draw(bk_measuring *sheet, const bk_paint *paint);

/// Draws what there is to look at before it is saved.
void bk_measuring_draw_findings(bk_measuring *sheet, const bk_paint *paint);

#endif
