#include "bodkin/work/sheet_names.h"

#include <stdlib.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"

// So few measures are no whole sheet: they were taken again, or one by one.
enum { FEWEST_OF_A_SHEET = 12 };

// Names that stand on sheets, each once.
typedef struct name_set {
    bk_index *seen;
    size_t count;
} name_set;

static void put(name_set *set, const char *name)
{
    if (!bk_index_find(set->seen, name))
        bk_index_put(set->seen, name, (long long)set->count++);
}

static bool holds(const name_set *set, const char *name)
{
    return bk_index_find(set->seen, name) != NULL;
}

static name_set set_of_history(const bk_history *history)
{
    name_set set = {bk_index_new(), 0};
    for (size_t i = 0; i < history->row_count; i++)
        put(&set, history->rows[i].name);
    return set;
}

static bk_status read_company(bk_store *store, int64_t production, bk_arena *arena, name_set *set,
                              bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, BK_MEASURES, production, arena, &rows, error);
    const bk_measure *measures = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++)
        put(set, measures[i].name);
    return status;
}

static int natural_order(const void *left, const void *right)
{
    return bk_natural_order(*(const char *const *)left, *(const char *const *)right);
}

// All names that are known: those of the trade in the order a sheet is taken, then the workroom's own.
static const char **all_names(const bk_rows *known, bk_arena *arena, size_t *count)
{
    const bk_named *named = known->items;
    const char **names = bk_arena_take(arena, (bk_measure_term_count + known->count) * sizeof *names);
    *count = bk_measure_term_count;
    for (size_t i = 0; i < bk_measure_term_count; i++)
        names[i] = bk_measure_terms[i].name;
    for (size_t i = 0; i < known->count; i++)
        if (!bk_measure_term_find(named[i].name))
            names[(*count)++] = named[i].name;
    qsort(names + bk_measure_term_count, *count - bk_measure_term_count, sizeof *names, natural_order);
    return names;
}

// Those of a set first; all of them where the set is no whole sheet.
static void order_names(const name_set *usual, const char *const *all, size_t count, bk_arena *arena,
                        bk_sheet_names *names)
{
    const char **ordered = bk_arena_take(arena, count * sizeof *ordered);
    size_t next = 0;
    bool whole = usual->count >= FEWEST_OF_A_SHEET;
    for (size_t i = 0; i < count; i++)
        if (!whole || holds(usual, all[i]))
            ordered[next++] = all[i];
    *names = (bk_sheet_names){.items = ordered, .count = count, .usual = next};
    for (size_t i = 0; i < count && next < count; i++)
        if (!holds(usual, all[i]))
            ordered[next++] = all[i];
}

bk_status bk_sheet_names_read(bk_store *store, int64_t production, const bk_history *history, bk_arena *arena,
                              bk_sheet_names *names, bk_error *error)
{
    bk_rows known = {0};
    name_set usual = set_of_history(history);
    bk_status status = bk_store_read(store, BK_MEASURE_NAMES, 0, arena, &known, error);
    if (!status && usual.count < FEWEST_OF_A_SHEET)
        status = read_company(store, production, arena, &usual, error);
    if (!status) {
        size_t count = 0;
        const char **all = all_names(&known, arena, &count);
        order_names(&usual, all, count, arena, names);
    }
    bk_index_free(usual.seen);
    return status;
}
