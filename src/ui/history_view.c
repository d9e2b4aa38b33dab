#include "bodkin/ui/history_view.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/store/performer_rows.h"

bk_history_view *bk_history_view_new(int64_t performer)
{
    bk_history_view *view = bk_alloc_clear(1, sizeof *view);
    *view = (bk_history_view){
        .performer = performer, .arena = bk_arena_new(), .about = bk_arena_new(), .rows = {.seen = 1}};
    return view;
}

void bk_history_view_free(bk_history_view *view)
{
    bk_arena_free(view->arena);
    bk_arena_free(view->about);
    free(view);
}

// ---------------------------------------------------------------------------------------- under the cursor

const bk_history_row *bk_history_chosen_row(const bk_history_view *view)
{
    bool any = !view->on_head && view->rows.at < view->history.row_count;
    return any ? &view->history.rows[view->rows.at] : NULL;
}

const bk_history_sheet *bk_history_chosen_sheet(const bk_history_view *view)
{
    return view->sheet < view->history.sheet_count ? &view->history.sheets[view->sheet] : NULL;
}

const bk_history_cell *bk_history_chosen_cell(const bk_history_view *view)
{
    const bk_history_row *row = bk_history_chosen_row(view);
    return row && bk_history_chosen_sheet(view) ? &row->cells[view->sheet] : NULL;
}

void bk_history_begin_correction(bk_history_view *view)
{
    const bk_history_cell *cell = bk_history_chosen_cell(view);
    bk_arena_reset(view->about);
    view->correction = (bk_history_correction){
        .on = bk_history_chosen_sheet(view)->on,
        .name = cell ? bk_arena_text(view->about, bk_history_chosen_row(view)->name) : NULL,
        .seen = {.value = BK_NO_AMOUNT},
    };
    if (cell && cell->value != BK_NO_AMOUNT)
        view->correction.seen = (bk_measure_mark){cell->value, bk_arena_text(view->about, cell->over),
                                                  bk_arena_text(view->about, cell->taken_by)};
}

// ----------------------------------------------------------------------------------------------- reading

static size_t row_named(const bk_history *history, const char *name, size_t otherwise)
{
    for (size_t i = 0; name && i < history->row_count; i++)
        if (bk_same_text(history->rows[i].name, name))
            return i;
    return otherwise;
}

static size_t sheet_with(const bk_history *history, int64_t id, size_t otherwise)
{
    for (size_t i = 0; i < history->sheet_count; i++)
        if (history->sheets[i].id == id)
            return i;
    return history->sheet_count > 0 && otherwise >= history->sheet_count ? history->sheet_count - 1
                                                                         : otherwise;
}

bk_status bk_history_view_read(bk_history_view *view, const bk_wall *wall, bk_error *error)
{
    bk_history history = {0};
    const bk_history_row *row =
        view->rows.at < view->history.row_count ? &view->history.rows[view->rows.at] : NULL;
    const bk_history_sheet *sheet = bk_history_chosen_sheet(view);
    view->unit = wall->rail && wall->rail->production.unit == BK_INCH ? BK_INCH : BK_CM;
    view->closed = !bk_store_sees_measures(wall->store);
    if (view->closed)
        return BK_OK;
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_history_read(wall->store, view->performer, view->unit, arena, &history, error);
    if (status) {
        bk_arena_free(arena);
        return status;
    }
    size_t at = row_named(&history, row ? row->name : NULL, view->rows.at);
    view->sheet = sheet ? sheet_with(&history, sheet->id, view->sheet) : 0;
    bk_arena_free(view->arena);
    view->arena = arena;
    view->history = history;
    bk_cursor_fit(&view->rows, history.row_count, view->rows.seen);
    bk_cursor_put(&view->rows, at);
    view->on_head = view->on_head && history.sheet_count > 0;
    return BK_OK;
}
