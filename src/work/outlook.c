#include "bodkin/work/outlook.h"

#include "bodkin/store/one.h"
#include "bodkin/work/clock.h"

/// A step that is looked at.
typedef struct looking {
    bk_store *store;
    int64_t step;
    bk_arena *arena;
    bk_step_outlook *outlook;
    bk_error *error;
} looking;

static bk_status read_before(const looking *at)
{
    bk_rows names = {0};
    bk_status status = bk_store_step_open_before(at->store, at->step, at->arena, &names, at->error);
    at->outlook->before = names.items;
    at->outlook->before_count = status ? 0 : names.count;
    return status;
}

static bk_status read_piece(const looking *at)
{
    bool found = false;
    return bk_store_get(at->store, BK_PIECES, at->outlook->step.step.piece_id, at->arena, &at->outlook->piece,
                        &found, at->error);
}

static bk_status read_lacks(const looking *at)
{
    bk_rows rows = {0};
    bk_status status = bk_store_step_lacks(at->store, at->step, at->arena, &rows, at->error);
    if (status) {
        return status;
    }
    const bk_step_material *items = rows.items;
    bk_lack *lacks = bk_arena_clear(at->arena, rows.count, sizeof *lacks);
    bool found = false;
    for (size_t i = 0; !status && i < rows.count; i++) {
        lacks[i].quantity = items[i].quantity;
        status = bk_store_get(at->store, BK_MATERIALS, items[i].material_id, at->arena, &lacks[i].material,
                              &found, at->error);
    }
    at->outlook->lacks = lacks;
    at->outlook->lack_count = status ? 0 : rows.count;
    return status;
}

/// The earliest moment is that of the longest clock.
static bk_status read_clocks(const looking *at)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(at->store, BK_RUNNINGS, 0, at->arena, &rows, at->error);
    const bk_running *items = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        const char *since = at->outlook->runs_since;
        if (items[i].step_id == at->step && (!since || bk_minutes_between(items[i].started_at, since) > 0)) {
            at->outlook->runs_since = items[i].started_at;
        }
    }
    return status;
}

static bk_status read_step(const looking *at)
{
    bk_status status = bk_store_bench_step(at->store, at->step, at->arena, &at->outlook->step, at->error);
    at->outlook->found = !status;
    return status;
}

bk_status bk_step_outlook_read(bk_store *store, int64_t step, bk_arena *arena, bk_step_outlook *outlook,
                               bk_error *error)
{
    static bk_status (*const parts[])(const looking *at) = {read_step, read_before, read_piece, read_lacks,
                                                            read_clocks};
    const looking at = {store, step, arena, outlook, error};
    *outlook = (bk_step_outlook){.found = false};
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    for (size_t i = 0; !status && i < sizeof parts / sizeof *parts; i++) {
        status = parts[i](&at);
    }
    bk_store_read_end(store);
    return status == BK_REFUSED && !outlook->found ? BK_OK : status;
}

bool bk_step_outlook_done(const bk_step_outlook *outlook)
{
    return outlook->step.fits || outlook->step.step.done_on != BK_NO_DAY;
}

int64_t bk_step_outlook_took(const bk_step_outlook *outlook, const char *now)
{
    int64_t took = outlook->step.step.took;
    int64_t measured = outlook->runs_since ? bk_minutes_between(outlook->runs_since, now) : 0;
    if (took == BK_NOT_KNOWN) {
        return measured ? measured : BK_NOT_KNOWN;
    }
    return took + measured;
}
