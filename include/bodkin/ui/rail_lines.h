#ifndef BODKIN_UI_RAIL_LINES_H
#define BODKIN_UI_RAIL_LINES_H

#include "bodkin/ui/columns.h"
#include "bodkin/ui/paint.h"
#include "bodkin/work/rail.h"

/// The table of the Rail screen: which columns there is room for, how wide each is, and one line for a costume.

typedef struct bk_rail_layout {
    size_t
        wanted[BK_COLUMNS_MOST]; ///< for each column of the table in rail_lines.c, by the texts of the rail
    size_t count;                ///< columns shown
    int cells[BK_COLUMNS_MOST];  ///< which ones, from the left
    size_t widths[BK_COLUMNS_MOST]; ///< how wide each of these is
} bk_rail_layout;

/// Measures what the texts of the whole rail want.
void bk_rail_layout_measure(bk_rail_layout *layout, const bk_rail *rail);

/// Chooses the columns for a screen so wide, and shares the width out.
void bk_rail_layout_fit(bk_rail_layout *layout, size_t columns);

/// Draws the heads of the columns.
void bk_rail_draw_heads(const bk_paint *paint, const bk_rail_layout *layout, size_t row);

/// Draws a costume's line.
void bk_rail_draw_line(const bk_paint *paint, const bk_rail_layout *layout, const bk_rail *rail,
                       const bk_rail_costume *costume, size_t row, bool chosen);

#endif
