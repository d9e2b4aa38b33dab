#include "bodkin/work/use_work.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/record_fields.h"
#include "bodkin/work/record_kinds.h"

// ------------------------------------------------------------------------------------------------ one change

/// A job on the desk with what it is given.
typedef struct work_job {
    bk_desk desk;
    int64_t work, piece;     ///< from; 0: not asked
    const char *name, *note; ///< of the new order of work
    int64_t made;            ///< its id
    const char *sentence;
} work_job;

/// Does `act` as one change.
static bk_status as_change(work_job *doing, bk_status (*act)(work_job *), const char **sentence)
{
    const bk_job *job = doing->desk.job;
    bk_error *error = doing->desk.error;
    *sentence = NULL;
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        bk_desk_clear(&doing->desk);
        return status;
    }
    status = act(doing);
    bk_desk_clear(&doing->desk);
    if (status) {
        bk_store_change_drop(job->store);
        return status;
    }
    *sentence = doing->sentence;
    return bk_store_change_commit(job->store, job->made_at, doing->sentence, NULL, error);
}

static bk_status get(work_job *doing, bk_family family, int64_t id, bk_any_record *record)
{
    bool found = false;
    bk_status status = bk_desk_get(&doing->desk, family, id, record, &found);
    if (!status && !found) {
        status = bk_desk_refuse(&doing->desk, NULL, "This %s is no longer there: somebody has taken it away.",
                                family == BK_WORKS ? "order of work" : "piece");
    }
    return status;
}

static const char *steps_words(const work_job *doing, size_t count)
{
    return bk_arena_print(doing->desk.job->arena, "%zu step%s", count, count == 1 ? "" : "s");
}

/// The steps of the order of work that is asked for, as an array of pointers to its rows.
static bk_status work_steps(work_job *doing, const bk_work_step ***steps, size_t *count)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(&doing->desk, BK_WORK_STEPS, &rows);
    *steps = bk_arena_clear(doing->desk.scratch, rows.count, sizeof **steps);
    *count = 0;
    for (size_t i = 0; i < rows.count; i++) {
        const bk_work_step *step = (const bk_work_step *)rows.items + i;
        if (step->work_id == doing->work) {
            (*steps)[(*count)++] = step;
        }
    }
    return status;
}

/// The steps of the piece that is asked for.
static bk_status piece_steps(work_job *doing, const bk_step ***steps, size_t *count)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(&doing->desk, BK_STEPS, &rows);
    *steps = bk_arena_clear(doing->desk.scratch, rows.count, sizeof **steps);
    *count = 0;
    for (size_t i = 0; i < rows.count; i++) {
        const bk_step *step = (const bk_step *)rows.items + i;
        if (step->piece_id == doing->piece) {
            (*steps)[(*count)++] = step;
        }
    }
    return status;
}

// ------------------------------------------------------------------------------------------------------ using

/// The steps that a piece gets.
typedef struct work_using {
    work_job *doing;
    const bk_work_step **from;
    size_t count;
    bk_index *taken; ///< keys of the piece
    bk_index *made;  ///< key of the order of work to the new step's id
    int64_t production, position;
} work_using;

/// The key itself, or with the first number that makes it one of its own.
static const char *own_key(work_using *use, const char *key)
{
    const char *own = key;
    for (int number = 2; bk_index_find(use->taken, own); number++) {
        own = bk_arena_print(use->doing->desk.scratch, "%s%d", key, number);
    }
    bk_index_put(use->taken, own, 1);
    return own;
}

static bk_status add_step(work_using *use, const bk_work_step *from)
{
    bk_desk *desk = &use->doing->desk;
    int64_t id = 0;
    bk_step step = {
        .production_id = use->production,
        .piece_id = use->doing->piece,
        .key = own_key(use, from->key),
        .title = from->title,
        .kind = from->kind,
        .minutes = from->minutes,
        .quickest = from->quickest,
        .longest = from->longest,
        .hands = from->hands,
        .level = from->level,
        .rest_minutes = from->rest_minutes,
        .can_wait = from->can_wait,
        .measures = from->measures,
        .note = from->note,
        .done_on = BK_NO_DAY,
        .took = BK_NOT_KNOWN,
    };
    bk_status status = bk_store_add(desk->job->store, BK_STEPS, &step, use->position++, &id, desk->error);
    bk_index_put(use->made, from->key, id);
    return status;
}

static bk_status link_step(work_using *use, const bk_work_step *from)
{
    bk_desk *desk = &use->doing->desk;
    const long long *id = bk_index_find(use->made, from->key);
    const char *rest = from->after ? from->after : "";
    const char *item;
    size_t length;
    int64_t position = 0;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&rest, &item, &length)) {
        const long long *earlier = bk_index_find(use->made, bk_arena_bytes(desk->scratch, item, length));
        if (earlier) {
            bk_link link = {.from_id = *id, .to_id = *earlier};
            status = bk_store_add(desk->job->store, BK_STEP_AFTERS, &link, position++, NULL, desk->error);
        }
    }
    return status;
}

static bk_status add_steps(work_using *use)
{
    bk_desk *desk = &use->doing->desk;
    const bk_step **steps = NULL;
    size_t count = 0;
    bk_status status = piece_steps(use->doing, &steps, &count);
    for (size_t i = 0; i < count; i++) {
        bk_index_put(use->taken, steps[i]->key, 1);
    }
    if (!status) {
        status =
            bk_store_last_place(desk->job->store, BK_STEPS, use->production, &use->position, desk->error);
    }
    for (size_t i = 0; !status && i < use->count; i++) {
        status = add_step(use, use->from[i]);
    }
    for (size_t i = 0; !status && i < use->count; i++) {
        status = link_step(use, use->from[i]);
    }
    return status;
}

static bk_status use_work(work_job *doing)
{
    bk_any_record work;
    bk_any_record piece;
    work_using use = {.doing = doing};
    bk_status status = get(doing, BK_WORKS, doing->work, &work);
    if (!status) {
        status = get(doing, BK_PIECES, doing->piece, &piece);
    }
    if (!status) {
        use.production = doing->desk.production = piece.piece.production_id;
        status = work_steps(doing, &use.from, &use.count);
    }
    if (!status && !use.count) {
        status = bk_desk_refuse(&doing->desk, "work", "The order of work \"%s\" has no steps yet.",
                                bk_desk_safe(&doing->desk, work.work.name));
    }
    if (status) {
        return status;
    }
    use.taken = bk_index_new();
    use.made = bk_index_new();
    status = add_steps(&use);
    bk_index_free(use.taken);
    bk_index_free(use.made);
    doing->sentence = bk_arena_print(doing->desk.job->arena, "Used: %s on %s: %s", work.work.name,
                                     piece.piece.name, steps_words(doing, use.count));
    return status;
}

bk_status bk_work_use(const bk_job *job, int64_t work, int64_t piece, const char **sentence, bk_error *error)
{
    work_job doing = {.desk = bk_desk_lay(job, error), .work = work, .piece = piece};
    return as_change(&doing, use_work, sentence);
}

// --------------------------------------------------------------------------------------------- a new one

/// Adds the new order of work, as the last.
static bk_status add_work(work_job *doing)
{
    bk_desk *desk = &doing->desk;
    int64_t position = 0;
    bk_work work = {.name = doing->name, .note = doing->note};
    bk_fields_tidy(BK_WORKS, &work, desk->scratch);
    bk_status status = bk_fields_check(desk, BK_WORKS, "an order of work", &work);
    if (!status) {
        status = bk_desk_check_name(desk, BK_WORKS, NULL, &work);
    }
    if (!status) {
        status = bk_store_last_place(desk->job->store, BK_WORKS, 0, &position, desk->error);
    }
    return status ? status
                  : bk_store_add(desk->job->store, BK_WORKS, &work, position, &doing->made, desk->error);
}

/// What a step of the piece comes after within the piece, as a list of keys.
static const char *keys_after(const work_job *doing, const bk_id_index *keys, const bk_step *const *steps,
                              const bk_rows *links, int64_t step)
{
    const char *list = NULL;
    for (size_t i = 0; i < links->count; i++) {
        const bk_link *link = (const bk_link *)links->items + i;
        const long long *at = link->from_id == step ? bk_id_index_find(keys, link->to_id) : NULL;
        if (at) {
            const char *key = steps[*at]->key;
            list = list ? bk_arena_print(doing->desk.scratch, "%s;%s", list, key) : key;
        }
    }
    return list;
}

static bk_status keep_step(work_job *doing, const bk_step *from, const char *after, size_t position)
{
    bk_work_step step = {
        .work_id = doing->made,
        .key = from->key,
        .title = from->title,
        .kind = from->kind,
        .minutes = from->minutes,
        .quickest = from->quickest,
        .longest = from->longest,
        .after = after,
        .hands = from->hands,
        .level = from->level,
        .rest_minutes = from->rest_minutes,
        .can_wait = from->can_wait,
        .measures = from->measures,
        .note = from->note,
    };
    return bk_store_add(doing->desk.job->store, BK_WORK_STEPS, &step, (int64_t)position, NULL,
                        doing->desk.error);
}

static bk_status keep_steps(work_job *doing, const bk_step *const *steps, size_t count)
{
    bk_rows links;
    bk_status status = bk_desk_rows(&doing->desk, BK_STEP_AFTERS, &links);
    bk_id_index *keys = bk_id_index_new();
    for (size_t i = 0; i < count; i++) {
        bk_id_index_put(keys, steps[i]->id, (long long)i);
    }
    for (size_t i = 0; !status && i < count; i++) {
        status = keep_step(doing, steps[i], keys_after(doing, keys, steps, &links, steps[i]->id), i);
    }
    bk_id_index_free(keys);
    return status;
}

static bk_status keep_work(work_job *doing)
{
    bk_any_record piece;
    const bk_step **steps = NULL;
    size_t count = 0;
    bk_status status = get(doing, BK_PIECES, doing->piece, &piece);
    if (!status) {
        doing->desk.production = piece.piece.production_id;
        status = piece_steps(doing, &steps, &count);
    }
    if (!status && !count) {
        status = bk_desk_refuse(&doing->desk, NULL, "The piece %s has no steps yet to be kept.",
                                bk_desk_safe(&doing->desk, piece.piece.name));
    }
    if (!status) {
        status = add_work(doing);
    }
    if (!status) {
        status = keep_steps(doing, steps, count);
    }
    if (!status) {
        doing->sentence = bk_arena_print(doing->desk.job->arena, "Kept: order of work %s from %s: %s",
                                         doing->name, piece.piece.name, steps_words(doing, count));
    }
    return status;
}

bk_status bk_work_keep(const bk_job *job, int64_t piece, const char *name, const char *note, int64_t *work,
                       const char **sentence, bk_error *error)
{
    work_job doing = {.desk = bk_desk_lay(job, error), .piece = piece, .name = name, .note = note};
    bk_status status = as_change(&doing, keep_work, sentence);
    *work = status ? 0 : doing.made;
    return status;
}

static bk_status copy_work(work_job *doing)
{
    bk_any_record work;
    const bk_work_step **steps = NULL;
    size_t count = 0;
    bk_store *store = doing->desk.job->store;
    bk_status status = get(doing, BK_WORKS, doing->work, &work);
    if (!status) {
        doing->note = work.work.note;
        status = work_steps(doing, &steps, &count);
    }
    if (!status) {
        status = add_work(doing);
    }
    for (size_t i = 0; !status && i < count; i++) {
        bk_work_step step = *steps[i];
        step.id = 0;
        step.work_id = doing->made;
        status = bk_store_add(store, BK_WORK_STEPS, &step, (int64_t)i, NULL, doing->desk.error);
    }
    if (!status) {
        doing->sentence = bk_arena_print(doing->desk.job->arena, "Copied: order of work %s, now also %s",
                                         work.work.name, doing->name);
    }
    return status;
}

bk_status bk_work_copy(const bk_job *job, int64_t work, const char *name, int64_t *copy,
                       const char **sentence, bk_error *error)
{
    work_job doing = {.desk = bk_desk_lay(job, error), .work = work, .name = name};
    bk_status status = as_change(&doing, copy_work, sentence);
    *copy = status ? 0 : doing.made;
    return status;
}
