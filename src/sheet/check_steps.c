#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/plan/network.h"
#include "bodkin/sheet/folder_check.h"

/// The order of the steps, as far as it could be read.
typedef BK_LIST(bk_network_link) links;

static bool find_step(const bk_folder_checking *checking, const char *piece, const char *key, size_t *row)
{
    return piece != NULL && key != NULL && bk_keys_find(checking->keys[BK_SHEET_STEPS], piece, key, row);
}

/// The key of the piece that is most like `key`, or NULL.
static const char *nearest_key(const bk_folder_checking *checking, const char *piece, const char *key)
{
    const bk_folder *folder = checking->reading->folder;
    const char **keys = bk_arena_take(checking->scratch, folder->steps.count * sizeof *keys);
    size_t count = 0;
    for (size_t i = 0; i < folder->steps.count; i++)
        if (folder->steps.items[i].piece == piece && folder->steps.items[i].key != NULL)
            keys[count++] = folder->steps.items[i].key;
    return bk_nearest(key, keys, count);
}

/// Where something is said of a step.
typedef struct mention {
    bk_sheet_number sheet;
    int line;
    const char *column;
} mention;

/// Notes that a piece has no such step, or that there is no such piece.
static void note_no_step(const bk_folder_checking *checking, mention at, const char *piece, const char *key)
{
    bk_sheet_reading *reading = checking->reading;
    size_t row = 0;
    if (reading->unreadable[BK_SHEET_STEPS] || reading->unreadable[BK_SHEET_PIECES])
        return;
    if (!bk_keys_find(checking->keys[BK_SHEET_PIECES], piece, NULL, &row)) {
        if (at.sheet == BK_SHEET_STEPS) // in the others the column "piece" tells it
            bk_folder_check_unknown(checking, at.sheet, at.line, at.column, piece, BK_SHEET_PIECES);
        return;
    }
    const char *advice = "; write the key of one of its steps in steps.csv";
    if (bk_faults_wanted(reading->faults, at.sheet, at.line, at.column)) {
        const char *nearest = nearest_key(checking, piece, key);
        if (nearest != NULL)
            advice = bk_arena_print(checking->scratch, "; did you mean %s?",
                                    bk_faults_quote(checking->scratch, nearest));
    }
    bk_faults_add(reading->faults, at.sheet, bk_sheets[at.sheet].file, at.line, at.column,
                  "piece %s has no step %s%s", bk_faults_quote(checking->scratch, piece),
                  bk_faults_quote(checking->scratch, key), advice);
}

// ------------------------------------------------------------------------------------------------- what comes after

/// The names of an item of `after`: KEY of the same piece, or PIECE/KEY.
static void split(const bk_folder_checking *checking, const bk_step *step, const char *item, size_t length,
                  const char **piece, const char **key)
{
    bk_names *names = checking->reading->names;
    const char *slash = memchr(item, '/', length);
    if (slash == NULL) {
        *piece = step->piece;
        *key = bk_names_keep(names, item, length);
        return;
    }
    *piece = bk_names_keep(names, item, (size_t)(slash - item));
    *key = bk_names_keep(names, slash + 1, length - (size_t)(slash - item) - 1);
}

static const char *step_name(const bk_folder_checking *checking, size_t row)
{
    const bk_step *step = &checking->reading->folder->steps.items[row];
    return bk_arena_print(checking->scratch, "%s/%s", step->piece, step->key);
}

/// Whether the links from `first` on hold one that comes from there already.
static bool linked(const links *all, size_t first, size_t from)
{
    for (size_t i = first; i < all->count; i++)
        if (all->items[i].from == from)
            return true;
    return false;
}

/// Links a step with each that it comes after.
static void check_after(const bk_folder_checking *checking, size_t row, links *all)
{
    const bk_step *step = &checking->reading->folder->steps.items[row];
    mention at = {BK_SHEET_STEPS, step->line, "after"};
    const char *rest = step->after, *item = NULL;
    size_t length = 0, first = all->count;
    while (bk_list_item(&rest, &item, &length)) {
        const char *piece = NULL, *key = NULL;
        size_t from = 0;
        split(checking, step, item, length, &piece, &key);
        if (piece == NULL)
            continue;
        if (!find_step(checking, piece, key, &from))
            note_no_step(checking, at, piece, key);
        else if (linked(all, first, from))
            bk_faults_add(checking->reading->faults, at.sheet, bk_sheets[at.sheet].file, at.line, at.column,
                          "names %s twice; write it once",
                          bk_faults_quote(checking->scratch, step_name(checking, from)));
        else
            bk_list_add(all, ((bk_network_link){.from = from, .to = row}));
    }
}

// ---------------------------------------------------------------------------------------------------------- circles

enum { CIRCLE_NAMED = 40 }; ///< steps of a circle that are named; of a longer one the rest is counted

static void note_circle(const bk_folder_checking *checking, const size_t *circle, size_t length)
{
    const bk_folder *folder = checking->reading->folder;
    bk_buffer text = {0};
    if (length == 1)
        bk_buffer_text(&text, "this step comes after itself: ");
    else
        bk_buffer_text(&text, "these steps come after one another in a circle: ");
    for (size_t i = 0; i < length && i < CIRCLE_NAMED; i++)
        bk_buffer_print(&text, "%s -> ", step_name(checking, circle[i]));
    if (length > CIRCLE_NAMED)
        bk_buffer_print(&text, "(%zu more) -> ", length - CIRCLE_NAMED);
    bk_buffer_print(&text, "%s; take %s", step_name(checking, circle[0]),
                    length == 1 ? "it out of its own after" : "one of them out of the after of the next");
    bk_faults_add(checking->reading->faults, BK_SHEET_STEPS, bk_sheets[BK_SHEET_STEPS].file,
                  folder->steps.items[circle[0]].line, "after", "%s", text.bytes);
    bk_buffer_free(&text);
}

/// Takes out all links of the steps of a circle, so that the next circle shares no step with it.
static void take_out(links *all, const size_t *circle, size_t length, bool *gone)
{
    for (size_t i = 0; i < length; i++)
        gone[circle[i]] = true;
    size_t kept = 0;
    for (size_t i = 0; i < all->count; i++)
        if (!gone[all->items[i].from] && !gone[all->items[i].to])
            all->items[kept++] = all->items[i];
    all->count = kept;
}

/// Tells the circles that share no step, up to as many as faults are told.
static void check_circles(const bk_folder_checking *checking, links *all)
{
    size_t steps = checking->reading->folder->steps.count;
    bool *gone = bk_arena_clear(checking->scratch, steps, sizeof *gone);
    size_t *circle = NULL;
    size_t length = 0;
    for (size_t told = 0; told < BK_FAULTS_TOLD; told++) {
        if (!bk_network_circle(steps, all->items, all->count, checking->scratch, &circle, &length))
            return;
        note_circle(checking, circle, length);
        take_out(all, circle, length, gone);
    }
}

static bk_status check_order(const bk_folder_checking *checking, bk_error *error)
{
    const bk_folder *folder = checking->reading->folder;
    bk_status status = BK_OK;
    links all = {0};
    for (size_t i = 0; i < folder->steps.count && status == BK_OK; i++) {
        if (folder->steps.items[i].after != NULL)
            check_after(checking, i, &all);
        status = bk_folder_check_progress(checking, BK_SHEET_STEPS, i, error);
    }
    check_circles(checking, &all);
    bk_list_free(&all);
    return status;
}

// ----------------------------------------------------------------------------------------------- needs and fittings

static void check_needs(const bk_folder_checking *checking)
{
    const bk_folder *folder = checking->reading->folder;
    size_t row = 0;
    for (size_t i = 0; i < folder->needs.count; i++) {
        const bk_need *need = &folder->needs.items[i];
        mention at = {BK_SHEET_NEEDS, need->line, "step"};
        if (need->piece != NULL && need->step != NULL && !find_step(checking, need->piece, need->step, &row))
            note_no_step(checking, at, need->piece, need->step);
    }
}

static void check_fitting(const bk_folder_checking *checking, const bk_fitting *fitting)
{
    const bk_folder *folder = checking->reading->folder;
    mention at = {BK_SHEET_FITTINGS, fitting->line, "step"};
    size_t row = 0;
    if (fitting->piece == NULL || fitting->step == NULL)
        return;
    if (!find_step(checking, fitting->piece, fitting->step, &row)) {
        note_no_step(checking, at, fitting->piece, fitting->step);
        return;
    }
    int kind = folder->steps.items[row].kind;
    if (kind != BK_FIT && kind != BK_NO_WORD)
        bk_faults_add(checking->reading->faults, at.sheet, bk_sheets[at.sheet].file, at.line, at.column,
                      "%s is a step of kind %s; only a step of kind fit has fittings",
                      bk_faults_quote(checking->scratch, step_name(checking, row)),
                      bk_word_text(&bk_kind_words, kind));
}

bk_status bk_folder_check_steps(bk_folder_checking *checking, bk_error *error)
{
    const bk_folder *folder = checking->reading->folder;
    bk_status status = check_order(checking, error);
    check_needs(checking);
    for (size_t i = 0; i < folder->fittings.count; i++)
        check_fitting(checking, &folder->fittings.items[i]);
    return status;
}
