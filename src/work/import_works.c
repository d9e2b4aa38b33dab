#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/work/import_match.h"
#include "bodkin/work/import_parts.h"

// Orders of work, known by name. One that came with the program gives way to the folder's as a whole and stands behind all
// others then, as if it were new; one of the workroom's own takes in what differs. Its list of steps is one thing: where
// the folder gives another, that is the list from then on.

static const bk_merge_field work_fields[] = {{"note", BK_MERGE_TEXT, offsetof(bk_work, note), false}};

// What two steps must have alike to be the same; their kind besides.
static const size_t step_texts[] = {offsetof(bk_work_step, key), offsetof(bk_work_step, title),
                                    offsetof(bk_work_step, after), offsetof(bk_work_step, measures),
                                    offsetof(bk_work_step, note)};
static const size_t step_numbers[] = {offsetof(bk_work_step, minutes), offsetof(bk_work_step, quickest),
                                      offsetof(bk_work_step, longest), offsetof(bk_work_step, hands),
                                      offsetof(bk_work_step, level),   offsetof(bk_work_step, rest_minutes),
                                      offsetof(bk_work_step, can_wait)};

#define COUNT(table) (sizeof(table) / sizeof *(table))

/// The steps of one order of work, in their order.
typedef BK_LIST(const bk_work_step *) step_list;

typedef struct works_state {
    bk_importing *importing;
    bk_rows known, known_steps;
    bk_index *at;         ///< name to place among the known
    bk_index *taken_in;   ///< names that are done
    bk_matches *rows;     ///< the folder's steps, by the name of their order of work
    bk_matches *own_rows; ///< the known ones
    int64_t last;         ///< position behind all orders of work
} works_state;

// ------------------------------------------------------------------------------------------------------- steps

static bool same_step(const bk_work_step *left, const bk_work_step *right)
{
    bool same = left->kind == right->kind;
    for (size_t i = 0; i < COUNT(step_texts); i++) {
        const char *const *one = (const void *)((const char *)left + step_texts[i]);
        const char *const *other = (const void *)((const char *)right + step_texts[i]);
        same = same && bk_same_text(*one, *other);
    }
    for (size_t i = 0; i < COUNT(step_numbers); i++) {
        const int64_t *one = (const void *)((const char *)left + step_numbers[i]);
        const int64_t *other = (const void *)((const char *)right + step_numbers[i]);
        same = same && *one == *other;
    }
    return same;
}

static bool same_steps(const step_list *left, const step_list *right)
{
    bool same = left->count == right->count;
    for (size_t i = 0; same && i < left->count; i++) {
        same = same_step(left->items[i], right->items[i]);
    }
    return same;
}

static bk_matches *match_steps(const bk_work_step *steps, size_t count)
{
    bk_matches *matches = bk_matches_new(count);
    for (size_t i = count; i-- > 0;) {
        bk_matches_put(matches, steps[i].work, i);
    }
    return matches;
}

static step_list take_steps(bk_matches *matches, const bk_work_step *steps, const char *work)
{
    step_list list = {0};
    for (long long i = bk_matches_take(matches, work); i != BK_NO_MATCH; i = bk_matches_take(matches, work)) {
        bk_list_add(&list, &steps[i]);
    }
    return list;
}

static const char *steps_text(bk_arena *arena, size_t count)
{
    return bk_arena_print(arena, "%zu step%s", count, count == 1 ? "" : "s");
}

static void note_steps(bk_importing *importing, const char *name, size_t was, size_t is)
{
    bk_arena *arena = importing->arena;
    const char *now = steps_text(arena, is);
    if (was == is) {
        now = bk_arena_print(arena, "%s that differ%s", now, is == 1 ? "s" : "");
    }
    bk_merge_note(&importing->notes, bk_arena_print(arena, "work_steps.csv: %s", name), "steps",
                  steps_text(arena, was), now, false);
}

static bk_status add_steps(bk_importing *importing, int64_t work, const step_list *steps)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < steps->count; i++) {
        bk_work_step step = *steps->items[i];
        step.work_id = work;
        status = bk_import_add(importing, BK_WORK_STEPS, &step, i, NULL);
    }
    return status;
}

/// Puts the folder's list of steps in the place of a known one, unless they are the same.
static bk_status replace_steps(bk_importing *importing, const bk_work *known, const step_list *steps,
                               const step_list *own)
{
    if (same_steps(steps, own)) {
        return BK_OK;
    }
    note_steps(importing, known->name, own->count, steps->count);
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < own->count; i++) {
        status = bk_store_remove(importing->store, BK_WORK_STEPS, own->items[i]->id, importing->error);
    }
    return status ? status : add_steps(importing, known->id, steps);
}

// ---------------------------------------------------------------------------------------------- orders of work

static bk_status add_work(works_state *works, const bk_work *row, const step_list *steps)
{
    bk_work work = *row;
    int64_t id = 0;
    work.id = 0;
    work.ready = 0;
    bk_status status = bk_import_add(works->importing, BK_WORKS, &work, (size_t)works->last++, &id);
    return status ? status : add_steps(works->importing, id, steps);
}

/// Puts the folder's order of work in the place of one that came with the program. Its note gives way too where the folder
/// has a row for it (`listed`), and its steps where the folder says anything of steps.
static bk_status replace_ready(works_state *works, const bk_work *row, bool listed, bk_work *known,
                               const step_list *steps, const step_list *own)
{
    bk_importing *importing = works->importing;
    if (listed && !bk_same_text(row->note, known->note)) {
        const char *what = bk_arena_print(importing->arena, "works.csv: %s", row->name);
        bk_merge_note(&importing->notes, what, "note", known->note, row->note, false);
        known->note = row->note;
    }
    known->ready = 0;
    bk_status status = bk_store_put(importing->store, BK_WORKS, known, importing->error);
    if (!status) {
        status = bk_store_place(importing->store, BK_WORKS, known->id, works->last++, importing->error);
    }
    if (status || !importing->folder->work_steps.items) {
        return status;
    }
    return replace_steps(importing, known, steps, own);
}

static bk_status merge_work(bk_importing *importing, const bk_work *row, bk_work *known,
                            const step_list *steps, const step_list *own)
{
    const char *what = bk_arena_print(importing->arena, "works.csv: %s", row->name);
    bk_status status = BK_OK;
    if (bk_merge(work_fields, COUNT(work_fields), row, known, what, &importing->notes)) {
        status = bk_store_put(importing->store, BK_WORKS, known, importing->error);
    }
    return status || steps->count == 0 ? status : replace_steps(importing, known, steps, own);
}

/// Takes in an order of work with its steps; not `listed`: it has no row in works.csv, only steps.
static bk_status one_work(works_state *works, const bk_work *row, bool listed)
{
    bk_index_put(works->taken_in, row->name, 1);
    const long long *found = bk_index_find(works->at, row->name);
    bk_work *known = found ? (bk_work *)works->known.items + *found : NULL;
    step_list steps = take_steps(works->rows, works->importing->folder->work_steps.items, row->name);
    step_list own = take_steps(works->own_rows, works->known_steps.items, row->name);
    bk_status status = BK_OK;
    if (!known) {
        status = add_work(works, row, &steps);
    } else if (known->ready == 1) {
        status = replace_ready(works, row, listed, known, &steps, &own);
    } else {
        status = merge_work(works->importing, row, known, &steps, &own);
    }
    bk_list_free(&steps);
    bk_list_free(&own);
    return status;
}

static bk_status all_works(works_state *works)
{
    bk_importing *importing = works->importing;
    const bk_folder *folder = importing->folder;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < folder->works.count; i++) {
        status = one_work(works, &folder->works.items[i], true);
        if (!status) {
            status = bk_import_row(importing, "works.csv", i);
        }
    }
    if (!status) {
        status = bk_import_told(importing, "works.csv", folder->works.count);
    }
    for (size_t i = 0; !status && i < folder->work_steps.count; i++) {
        bk_work work = {.name = folder->work_steps.items[i].work};
        if (!bk_index_find(works->taken_in, work.name)) {
            status = one_work(works, &work, false);
        }
    }
    return status ? status : bk_import_told(importing, "work_steps.csv", folder->work_steps.count);
}

static bk_status read_known(works_state *works)
{
    bk_importing *importing = works->importing;
    bk_status status =
        bk_store_read(importing->store, BK_WORKS, 0, importing->arena, &works->known, importing->error);
    if (!status) {
        status = bk_store_read(importing->store, BK_WORK_STEPS, 0, importing->arena, &works->known_steps,
                               importing->error);
    }
    return status ? status
                  : bk_store_last_place(importing->store, BK_WORKS, 0, &works->last, importing->error);
}

bk_status bk_import_works(bk_importing *importing)
{
    const bk_folder *folder = importing->folder;
    works_state works = {.importing = importing};
    if (folder->works.count == 0 && folder->work_steps.count == 0) {
        return BK_OK;
    }
    bk_status status = read_known(&works);
    works.at = bk_index_new();
    works.taken_in = bk_index_new();
    works.rows = match_steps(folder->work_steps.items, folder->work_steps.count);
    works.own_rows = match_steps(works.known_steps.items, works.known_steps.count);
    for (size_t i = 0; i < works.known.count; i++) {
        bk_index_put(works.at, ((const bk_work *)works.known.items)[i].name, (long long)i);
    }
    if (!status) {
        status = all_works(&works);
    }
    bk_index_free(works.at);
    bk_index_free(works.taken_in);
    bk_matches_free(works.rows);
    bk_matches_free(works.own_rows);
    return status;
}
