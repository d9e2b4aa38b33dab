#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/work/rail_gather.h"

/// The newest taking of one measure of one performer, asked of the store once.
static bk_status newest_taking(bk_store *store, bk_gathered *gathered, bk_index *asked, size_t performer,
                               const char *measure, bk_day *newest, bk_error *error)
{
    const char *key = bk_arena_print(gathered->arena, "%zu/%s", performer, measure);
    const long long *known = bk_index_find(asked, key);
    if (known) {
        *newest = (bk_day)*known;
        return BK_OK;
    }
    const bk_performer *performers = gathered->performers.items;
    bk_status status = bk_store_newest_taking(store, performers[performer].id, measure, newest, error);
    if (!status) {
        bk_index_put(asked, key, *newest);
    }
    return status;
}

static bk_status takings_of(bk_store *store, bk_gathered *gathered, bk_index *asked, size_t at,
                            bk_error *error)
{
    bk_wait_step *step = &gathered->wait_steps[at];
    const bk_indices *costumes = &gathered->wait_pieces[step->piece].costumes;
    BK_LIST(bk_wait_taking) takings = {0};
    const char *rest = ((const bk_step *)gathered->steps.items)[at].measures;
    const char *item;
    size_t length;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&rest, &item, &length)) {
        const char *measure = bk_arena_bytes(gathered->arena, item, length);
        for (size_t c = 0; !status && c < costumes->count; c++) {
            size_t performer = gathered->wait_costumes[costumes->items[c]].performer;
            if (performer != BK_NO_INDEX) {
                bk_wait_taking taking = {performer, BK_NO_DAY, measure};
                status = newest_taking(store, gathered, asked, performer, measure, &taking.newest, error);
                bk_list_add(&takings, taking);
            }
        }
    }
    bk_wait_taking *kept = bk_arena_clear(gathered->arena, takings.count, sizeof *kept);
    if (takings.count) {
        memcpy(kept, takings.items, takings.count * sizeof *kept);
    }
    step->takings = kept;
    step->taking_count = takings.count;
    bk_list_free(&takings);
    return status;
}

bk_status bk_gather_takings(bk_store *store, bk_gathered *gathered, bk_error *error)
{
    bk_wait_rows rows = bk_gathered_rows(gathered);
    bk_index *asked = bk_index_new();
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < rows.step_count; i++) {
        const bk_wait_step *step = &rows.steps[i];
        if (step->lists_measures && !rows.pieces[step->piece].fitting_held && bk_step_next(&rows, i)) {
            status = takings_of(store, gathered, asked, i, error);
        }
    }
    bk_index_free(asked);
    return status;
}
