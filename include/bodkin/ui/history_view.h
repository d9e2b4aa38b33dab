#ifndef BODKIN_UI_HISTORY_VIEW_H
#define BODKIN_UI_HISTORY_VIEW_H

#include "bodkin/ui/cursor.h"
#include "bodkin/ui/screen.h"
#include "bodkin/work/history.h"

/// What the Measures screen remembers. For the files of that screen only; `self` of the screen is
/// a bk_history_view.

/// One measure of one sheet, as somebody began to change it or to take it away. Texts live in the view's `about` arena.
typedef struct bk_history_correction {
    bk_day on;
    const char *name;     ///< of the measure
    bk_measure_mark seen; ///< what stood there
} bk_history_correction;

typedef struct bk_history_view {
    int64_t performer;
    bk_unit unit;
    bk_arena *arena; ///< of what was read
    bk_history history;
    bool closed;    ///< only the maker sees values
    bool on_head;   ///< the cursor is on the days of the sheets
    size_t sheet;   ///< the column of the cursor
    size_t first;   ///< the first column that is seen
    bk_cursor rows; ///< the measures
    bk_arena *about;
    bk_history_correction correction;
} bk_history_view;

/// The measure and the sheet under the cursor; NULL where there is none, or the cursor is on the days.
const bk_history_row *bk_history_chosen_row(const bk_history_view *view);
const bk_history_sheet *bk_history_chosen_sheet(const bk_history_view *view);
const bk_history_cell *bk_history_chosen_cell(const bk_history_view *view);

/// Keeps what the cursor stands on in `correction`.
void bk_history_begin_correction(bk_history_view *view);

bk_history_view *bk_history_view_new(int64_t performer);
void bk_history_view_free(bk_history_view *view);

/// Reads the history again, the cursor staying on its measure and its sheet. BK_REFUSED as bk_history_read.
bk_status bk_history_view_read(bk_history_view *view, const bk_wall *wall, bk_error *error) BK_MUST_USE;

#endif
