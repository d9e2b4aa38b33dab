#include "bodkin/work/work_list.h"

#include "bodkin/base/list.h"
#include "bodkin/trade/words.h"

static void add_step(bk_work_line *line, const bk_work_step *step)
{
    int64_t usual = step->minutes == BK_NOT_KNOWN ? 0 : step->minutes;
    line->steps++;
    line->sum.usual += usual;
    line->sum.quickest += step->quickest == BK_NOT_KNOWN ? usual : step->quickest;
    line->sum.longest += step->longest == BK_NOT_KNOWN ? usual : step->longest;
    line->sum.hand += step->kind == BK_HAND ? usual : 0;
}

static bk_status read_rows(bk_store *store, bk_arena *arena, bk_rows *works, bk_rows *steps, bk_error *error)
{
    bk_status status = bk_store_read_begin(store, error);
    if (status)
        return status;
    status = bk_store_read(store, BK_WORKS, 0, arena, works, error);
    if (!status)
        status = bk_store_read(store, BK_WORK_STEPS, 0, arena, steps, error);
    bk_store_read_end(store);
    return status;
}

static bk_work_line *lines_of(const bk_rows *works, const bk_rows *steps, bk_arena *arena)
{
    const bk_work *records = works->items;
    const bk_work_step *rows = steps->items;
    bk_work_line *lines = bk_arena_clear(arena, works->count, sizeof *lines);
    bk_id_index *index = bk_id_index_of(works->items, works->count, sizeof(bk_work));
    for (size_t i = 0; i < works->count; i++)
        lines[i].record = records[i];
    for (size_t i = 0; i < steps->count; i++) {
        const long long *at = bk_id_index_find(index, rows[i].work_id);
        if (at)
            add_step(&lines[*at], &rows[i]);
    }
    bk_id_index_free(index);
    return lines;
}

bk_status bk_work_list_read(bk_store *store, bk_arena *arena, bk_work_list *list, bk_error *error)
{
    bk_rows works = {0}, steps = {0};
    bk_status status = read_rows(store, arena, &works, &steps, error);
    if (!status)
        *list = (bk_work_list){lines_of(&works, &steps, arena), works.count};
    return status;
}

bk_status bk_work_whole_read(bk_store *store, int64_t work, bk_arena *arena, bk_work_whole *whole,
                             bool *found, bk_error *error)
{
    bk_rows works = {0}, steps = {0};
    *found = false;
    bk_status status = read_rows(store, arena, &works, &steps, error);
    if (status)
        return status;
    const bk_work *records = works.items;
    const bk_work_step *rows = steps.items;
    bk_work_step *own = bk_arena_clear(arena, steps.count, sizeof *own);
    *whole = (bk_work_whole){.steps = own};
    for (size_t i = 0; i < works.count; i++)
        if (records[i].id == work) {
            whole->line.record = records[i];
            *found = true;
        }
    for (size_t i = 0; i < steps.count; i++)
        if (rows[i].work_id == work) {
            own[whole->line.steps] = rows[i];
            add_step(&whole->line, &rows[i]);
        }
    return BK_OK;
}
