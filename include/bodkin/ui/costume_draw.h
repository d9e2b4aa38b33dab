#ifndef BODKIN_UI_COSTUME_DRAW_H
#define BODKIN_UI_COSTUME_DRAW_H

#include "bodkin/ui/costume_lines.h"
#include "bodkin/ui/paint.h"

/// Drawing a costume's lines, and what is told below them of the place where the cursor stands.

/// What the lines are of; `forecast` may be NULL.
typedef struct bk_costume_sight {
    const bk_rail *rail;
    const bk_rail_costume *costume;
    const bk_costume_beside *beside;
    const bk_forecast *forecast;
} bk_costume_sight;

void bk_costume_line_draw(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_lines *lines,
                          size_t line, size_t row, bool chosen);

/// Tells what there is to say of a stop beyond its line, and what was noted of it, in `rows` rows.
void bk_costume_stop_draw(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_stop *stop,
                          size_t row, size_t rows);

#endif
