#include "bodkin/work/measures_check.h"

#include <stdlib.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/trade/doubts.h"

/// A measure sheet with its performer's name and its values.
typedef struct whole_sheet {
    const bk_sheet_day *record;
    const char *performer;
    bk_taken_sheet taken;
} whole_sheet;

typedef struct workroom_sheets {
    whole_sheet *items;
    size_t count;
} workroom_sheets;

/// Performers in natural order, then the oldest sheet first.
static int sheet_order(const void *left, const void *right)
{
    const whole_sheet *a = left, *b = right;
    int order = bk_natural_order(a->performer, b->performer);
    if (order) {
        return order;
    }
    if (a->record->performer_id != b->record->performer_id) {
        return a->record->performer_id < b->record->performer_id ? -1 : 1;
    }
    if (a->record->taken_on != b->record->taken_on) {
        return a->record->taken_on < b->record->taken_on ? -1 : 1;
    }
    return a->record->id < b->record->id ? -1 : a->record->id > b->record->id;
}

static const char *name_of(const bk_rows *performers, int64_t id)
{
    const bk_performer *items = performers->items;
    size_t low = 0, high = performers->count; // they come by id
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (items[middle].id < id) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low < performers->count && items[low].id == id ? items[low].name : "";
}

static bk_status read_values(bk_store *store, whole_sheet *sheet, bk_arena *arena, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, BK_MEASURES_OF_SHEET, sheet->record->id, arena, &rows, error);
    const bk_measure *measures = rows.items;
    bk_taken *items = bk_arena_clear(arena, rows.count, sizeof *items);
    for (size_t i = 0; i < rows.count; i++) {
        items[i] = (bk_taken){measures[i].name, measures[i].value};
    }
    sheet->taken = (bk_taken_sheet){items, rows.count, sheet->record->taken_on};
    return status;
}

static bk_status read_sheets(bk_store *store, bk_arena *arena, workroom_sheets *sheets, bk_error *error)
{
    bk_rows performers = {0}, days = {0};
    bk_status status = bk_store_read(store, BK_PERFORMERS, 0, arena, &performers, error);
    if (!status) {
        status = bk_store_read(store, BK_MEASURE_SHEETS, 0, arena, &days, error);
    }
    const bk_sheet_day *records = days.items;
    *sheets = (workroom_sheets){bk_arena_clear(arena, days.count, sizeof *sheets->items), 0};
    for (; !status && sheets->count < days.count; sheets->count++) {
        whole_sheet *sheet = &sheets->items[sheets->count];
        sheet->record = &records[sheets->count];
        sheet->performer = name_of(&performers, sheet->record->performer_id);
        status = read_values(store, sheet, arena, error);
    }
    if (sheets->count) {
        qsort(sheets->items, sheets->count, sizeof *sheets->items, sheet_order);
    }
    return status;
}

/// The sheet before it of the same performer, or NULL.
static const bk_taken_sheet *before(const workroom_sheets *sheets, size_t sheet)
{
    const whole_sheet *items = sheets->items;
    bool same = sheet && items[sheet - 1].record->performer_id == items[sheet].record->performer_id;
    return same ? &items[sheet - 1].taken : NULL;
}

typedef BK_LIST(bk_measure_doubt) doubt_list;

static void look_at(const workroom_sheets *sheets, size_t index, bk_arena *arena, doubt_list *list)
{
    const whole_sheet *sheet = &sheets->items[index];
    bk_unit unit = bk_unit_typed(&sheet->taken, BK_CM);
    bk_doubts found = bk_doubts_of_sheet(&sheet->taken, before(sheets, index), unit, arena);
    for (size_t i = 0; i < found.count; i++) {
        bk_measure_doubt doubt = {sheet->performer, sheet->record->taken_on,
                                  sheet->taken.items[found.items[i].item].measure, found.items[i].says};
        bk_list_add(list, doubt);
    }
}

/// All doubts; of one performer's sheets, which stand together, the newest first.
static void look_through(const workroom_sheets *sheets, bk_arena *arena, doubt_list *list)
{
    size_t first = 0;
    while (first < sheets->count) {
        size_t end = first + 1;
        while (end < sheets->count && before(sheets, end)) {
            end++;
        }
        for (size_t i = end; i > first; i--) {
            look_at(sheets, i - 1, arena, list);
        }
        first = end;
    }
}

bk_status bk_measures_check(bk_store *store, bk_arena *arena, bk_measure_doubts *doubts, bk_error *error)
{
    workroom_sheets sheets = {0};
    doubt_list list = {0};
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    status = read_sheets(store, arena, &sheets, error);
    bk_store_read_end(store);
    if (!status) {
        look_through(&sheets, arena, &list);
        doubts->items = bk_arena_clear(arena, list.count, sizeof *doubts->items);
        doubts->count = list.count;
        for (size_t i = 0; i < list.count; i++) {
            doubts->items[i] = list.items[i];
        }
    }
    bk_list_free(&list);
    return status;
}
