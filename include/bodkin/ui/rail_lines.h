#ifndef BODKIN_UI_RAIL_LINES_H
#define BODKIN_UI_RAIL_LINES_H

#include "bodkin/sheet/forecast_words.h"
#include "bodkin/ui/columns.h"
#include "bodkin/ui/paint.h"

/// The table of the Rail screen: which columns there is room for, how wide each is, and one line for a costume.

enum { BK_RAIL_CELLS_MOST = 20 };

typedef struct bk_rail_layout {
    size_t wanted[BK_RAIL_CELLS_MOST]; ///< for each cell that rail_lines.c knows, by the texts of the rail
    bool dateless;                     ///< no day is known of any costume: the due days alone are told
    size_t count;                      ///< columns shown
    int cells[BK_COLUMNS_MOST];        ///< which ones, from the left
    size_t widths[BK_COLUMNS_MOST];    ///< how wide each of these is
    const bk_list_column *shapes;      ///< of all cells, for this width
} bk_rail_layout;

/// Measures what the texts of the whole rail want. `forecast` may be NULL; `reckons` says whether another one is on its way.
void bk_rail_layout_measure(bk_rail_layout *layout, const bk_rail *rail, const bk_forecast *forecast,
                            bool reckons);

/// Chooses the columns for a screen so wide, and shares the width out.
void bk_rail_layout_fit(bk_rail_layout *layout, size_t columns);

/// Draws the heads of the columns.
void bk_rail_draw_heads(const bk_paint *paint, const bk_rail_layout *layout, size_t row);

/// Draws a costume's line; `forecast` may be NULL.
void bk_rail_draw_line(const bk_paint *paint, const bk_rail_layout *layout, const bk_rail *rail,
                       const bk_forecast *forecast, const bk_rail_costume *costume, size_t row, bool chosen);

#endif
