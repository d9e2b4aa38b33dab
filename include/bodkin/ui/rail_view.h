#ifndef BODKIN_UI_RAIL_VIEW_H
#define BODKIN_UI_RAIL_VIEW_H

#include "bodkin/base/list.h"
#include "bodkin/ui/clock_line.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/narrow.h"
#include "bodkin/ui/rail_lines.h"
#include "bodkin/ui/tick_line.h"

/// What the Rail screen remembers, and which costumes it shows in which order; shared by its files only.

enum { BK_RAIL_NUMBER_ROOM = 64 };

typedef struct bk_rail_view {
    bk_cursor cursor;
    BK_LIST(size_t) shown; ///< which costumes of the rail, the most urgent first
    int only;              ///< a bk_wait_on, or BK_RAIL_SHOWS_ALL
    bk_query query;
    bool typing;           ///< the query, on the bottom line
    bk_findable *findable; ///< made when it is first needed after each reading
    bk_rail_layout layout;
    bk_tick_line tick;
    bk_clock_line clock;
    bool touched;      ///< a key was pressed: from then on the cursor stays on its costume
    int64_t chosen_id; ///< of the costume under the cursor, which a reading may move; 0: none yet
    char chosen[BK_RAIL_NUMBER_ROOM]; ///< its number, where it is brought in again with another id
} bk_rail_view;

/// The costume under the cursor; NULL where none is shown.
const bk_rail_costume *bk_rail_chosen(const bk_screen *screen);
void bk_rail_remember_chosen(const bk_screen *screen);

/// Whether not all are shown.
bool bk_rail_narrowed(const bk_screen *screen);

/// Gathers the costumes that are shown now; the cursor stays on its costume where that is one of them, else it goes to
/// line `at`.
void bk_rail_show_matching(bk_screen *screen, size_t at);

/// After a reading: the same, the cursor on a costume that was saved just now; before any key was pressed, on the most urgent.
void bk_rail_show_read(bk_screen *screen);

#endif
