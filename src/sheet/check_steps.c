#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/folder_check.h"

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

/// Whether the links from `first` on hold one that comes from there already.
static bool linked(const bk_step_links *all, size_t first, size_t from)
{
    for (size_t i = first; i < all->count; i++)
        if (all->items[i].from == from)
            return true;
    return false;
}

/// Links a step with each that it comes after.
static void check_after(const bk_folder_checking *checking, size_t row, bk_step_links *all)
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
                          bk_faults_quote(checking->scratch,
                                          bk_folder_check_step_name(checking, BK_SHEET_STEPS, from)));
        else
            bk_list_add(all, ((bk_network_link){.from = from, .to = row}));
    }
}

static bk_status check_order(const bk_folder_checking *checking, bk_error *error)
{
    const bk_folder *folder = checking->reading->folder;
    bk_status status = BK_OK;
    bk_step_links all = {0};
    for (size_t i = 0; i < folder->steps.count && status == BK_OK; i++) {
        if (folder->steps.items[i].after != NULL)
            check_after(checking, i, &all);
        status = bk_folder_check_progress(checking, BK_SHEET_STEPS, i, error);
    }
    bk_folder_check_circles(checking, BK_SHEET_STEPS, &all);
    bk_list_free(&all);
    return status;
}

// ------------------------------------------------------------------------------------------- needs, fittings, notes

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
        bk_faults_add(
            checking->reading->faults, at.sheet, bk_sheets[at.sheet].file, at.line, at.column,
            "%s is a step of kind %s; only a step of kind fit has fittings",
            bk_faults_quote(checking->scratch, bk_folder_check_step_name(checking, BK_SHEET_STEPS, row)),
            bk_word_text(&bk_kind_words, kind));
}

/// The step that a note became is one of the piece that the note is about.
static void check_note(const bk_folder_checking *checking, const bk_note *note)
{
    mention at = {BK_SHEET_NOTES, note->line, "step"};
    size_t row = 0;
    if (note->step == NULL)
        return;
    if (note->piece == NULL)
        bk_faults_add(checking->reading->faults, at.sheet, bk_sheets[at.sheet].file, at.line, at.column,
                      "%s is a step without its piece; write the piece too, in piece",
                      bk_faults_quote(checking->scratch, note->step));
    else if (!find_step(checking, note->piece, note->step, &row))
        note_no_step(checking, at, note->piece, note->step);
}

bk_status bk_folder_check_steps(bk_folder_checking *checking, bk_error *error)
{
    const bk_folder *folder = checking->reading->folder;
    bk_status status = check_order(checking, error);
    check_needs(checking);
    for (size_t i = 0; i < folder->fittings.count; i++)
        check_fitting(checking, &folder->fittings.items[i]);
    for (size_t i = 0; i < folder->notes.count; i++)
        check_note(checking, &folder->notes.items[i]);
    return status;
}
