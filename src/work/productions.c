#include "bodkin/work/productions.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"

static bool put_away(const bk_production *production)
{
    return production->put_away_on != BK_NO_DAY;
}

static int opening_order(const void *left, const void *right)
{
    const bk_production *a = left;
    const bk_production *b = right;
    if (put_away(a) != put_away(b)) {
        return put_away(a) ? 1 : -1;
    }
    if (a->opens != b->opens) {
        return a->opens < b->opens ? -1 : 1;
    }
    return bk_natural_order(a->name, b->name);
}

bk_status bk_productions_read(bk_store *store, bk_arena *arena, bk_production_list *list, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, BK_PRODUCTIONS, 0, arena, &rows, error);
    if (status) {
        return status;
    }
    if (rows.count) {
        qsort(rows.items, rows.count, sizeof(bk_production), opening_order);
    }
    *list = (bk_production_list){rows.items, rows.count};
    return BK_OK;
}

static const bk_production *by_name(const bk_production_list *list, const char *name)
{
    for (size_t i = 0; i < list->count; i++) {
        if (bk_same_text(list->items[i].name, name)) {
            return &list->items[i];
        }
    }
    return NULL;
}

static bk_status unknown_name(const bk_production_list *list, const char *name, bk_arena *arena,
                              bk_error *error)
{
    const char **names = bk_arena_clear(arena, list->count, sizeof *names);
    for (size_t i = 0; i < list->count; i++) {
        names[i] = list->items[i].name;
    }
    const char *near = bk_nearest(name, names, list->count);
    if (near) {
        return bk_fail(error, BK_REFUSED,
                       "There is no production \"%s\" in this workroom; did you mean \"%s\"?",
                       bk_text_safe(arena, name, false), bk_text_safe(arena, near, false));
    }
    return bk_fail(error, BK_REFUSED,
                   "There is no production \"%s\" in this workroom; leave out --production to see "
                   "the one that opens next.",
                   bk_text_safe(arena, name, false));
}

/// In a list that is in the order of openings, those in work first: the only one in work, which is also the next to open
/// or the latest; else the next to open, else the latest of those in work, else the latest of all.
static const bk_production *usual(const bk_production_list *list, bk_day today)
{
    size_t in_work = 0;
    while (in_work < list->count && !put_away(&list->items[in_work])) {
        in_work++;
    }
    for (size_t i = 0; i < in_work; i++) {
        if (list->items[i].opens >= today) {
            return &list->items[i];
        }
    }
    return in_work ? &list->items[in_work - 1] : &list->items[list->count - 1];
}

bk_status bk_production_choose(bk_store *store, const char *name, bk_day today, bk_arena *arena,
                               bk_production *chosen, bk_error *error)
{
    bk_production_list list;
    bk_status status = bk_productions_read(store, arena, &list, error);
    if (status) {
        return status;
    }
    if (!list.count) {
        return bk_fail(
            error, BK_REFUSED,
            "There is no production in this workroom yet; bring one in with: bodkin import FOLDER");
    }
    const bk_production *found = name ? by_name(&list, name) : usual(&list, today);
    if (!found) {
        return unknown_name(&list, name, arena, error);
    }
    *chosen = *found;
    return BK_OK;
}
