#include "bodkin/work/tick.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/work/clock.h"

// ------------------------------------------------------------------------------------------ finding a step

/// A name as it was given, taken apart.
typedef struct wanted_step {
    bk_store *store;
    const bk_production *production;
    const char *piece, *key;
    bk_arena *arena;
    bk_error *error;
} wanted_step;

static const char *safe(const wanted_step *wanted, const char *text)
{
    return bk_text_safe(wanted->arena, text, false);
}

static bk_status refuse_piece(const wanted_step *wanted, const bk_piece *pieces, size_t count)
{
    const char **names = bk_arena_clear(wanted->arena, count, sizeof *names);
    for (size_t i = 0; i < count; i++) {
        names[i] = pieces[i].name;
    }
    const char *near = bk_nearest(wanted->piece, names, count);
    return bk_fail(wanted->error, BK_REFUSED, "There is no piece \"%s\" in \"%s\"%s%s%s",
                   safe(wanted, wanted->piece), safe(wanted, wanted->production->name),
                   near ? "; did you mean " : ".", near ? safe(wanted, near) : "", near ? "?" : "");
}

/// The piece is there; tells the nearest of its steps, or all of them.
static bk_status refuse_key(const wanted_step *wanted, int64_t piece, const bk_step *steps, size_t count)
{
    const char **keys = bk_arena_clear(wanted->arena, count, sizeof *keys);
    const char *all = "";
    size_t own = 0;
    for (size_t i = 0; i < count; i++) {
        if (steps[i].piece_id == piece) {
            all = bk_arena_print(wanted->arena, "%s%s%s", all, own ? ", " : "", safe(wanted, steps[i].key));
            keys[own++] = steps[i].key;
        }
    }
    const char *near = bk_nearest(wanted->key, keys, own);
    const char *name = safe(wanted, wanted->piece);
    if (near) {
        return bk_fail(wanted->error, BK_REFUSED, "The piece %s has no step \"%s\"; did you mean %s/%s?",
                       name, safe(wanted, wanted->key), name, safe(wanted, near));
    }
    return bk_fail(wanted->error, BK_REFUSED, "The piece %s has no step \"%s\"; it has %s%s.", name,
                   safe(wanted, wanted->key), own ? "these: " : "no steps yet", all);
}

static bk_status refuse_name(const wanted_step *wanted)
{
    bk_rows pieces = {0};
    bk_rows steps = {0};
    int64_t production = wanted->production->id;
    bk_status status =
        bk_store_read(wanted->store, BK_PIECES, production, wanted->arena, &pieces, wanted->error);
    if (!status) {
        status =
            bk_store_read(wanted->store, BK_RAIL_STEPS, production, wanted->arena, &steps, wanted->error);
    }
    if (status) {
        return status;
    }
    const bk_piece *items = pieces.items;
    for (size_t i = 0; i < pieces.count; i++) {
        if (bk_same_text(items[i].name, wanted->piece)) {
            return refuse_key(wanted, items[i].id, steps.items, steps.count);
        }
    }
    return refuse_piece(wanted, items, pieces.count);
}

bk_status bk_step_find(bk_store *store, const bk_production *production, const char *name, int64_t *step,
                       bk_error *error)
{
    const char *slash = strchr(name, '/');
    bk_arena *arena = bk_arena_new();
    wanted_step wanted = {.store = store, .production = production, .arena = arena, .error = error};
    bk_status status = BK_OK;
    *step = 0;
    if (!slash || slash == name || !slash[1]) {
        status = bk_fail(error, BK_USAGE,
                         "A step is named by its piece and its key, such as 4A-2/hem, not \"%s\".",
                         safe(&wanted, name));
    } else {
        wanted.piece = bk_arena_bytes(arena, name, (size_t)(slash - name));
        wanted.key = slash + 1;
        status = bk_store_find_step(store, production->id, wanted.piece, wanted.key, step, error);
    }
    if (!status && !*step) {
        status = refuse_name(&wanted);
    }
    bk_arena_free(arena);
    return status;
}

// ------------------------------------------------------------------------------------------------ materials

static bk_status move(bk_store *store, enum bk_movement_kind kind, int64_t step,
                      const bk_step_material *material, bk_day on, bk_error *error)
{
    bk_movement movement = {
        .material_id = material->material_id,
        .kind = (int)kind,
        .quantity = kind == BK_MOVED_USE ? -material->quantity : material->quantity,
        .moved_on = on,
        .step_id = step,
    };
    return material->quantity ? bk_store_add(store, BK_MOVEMENTS, &movement, 0, NULL, error) : BK_OK;
}

bk_status bk_step_take_materials(bk_store *store, int64_t step, bk_day on, bk_error *error)
{
    bk_rows needs = {0};
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_store_step_needs(store, step, arena, &needs, error);
    const bk_step_material *items = needs.items;
    for (size_t i = 0; !status && i < needs.count; i++) {
        if (items[i].counted) {
            status = move(store, BK_MOVED_USE, step, &items[i], on, error);
        }
    }
    bk_arena_free(arena);
    return status;
}

static bool has_material(const bk_rows *rows, int64_t material)
{
    const bk_step_material *items = rows->items;
    for (size_t i = 0; i < rows->count; i++) {
        if (items[i].material_id == material) {
            return true;
        }
    }
    return false;
}

bk_status bk_step_return_materials(bk_store *store, int64_t step, bk_day on, bk_error *error)
{
    bk_rows uses = {0};
    bk_rows needs = {0};
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_store_step_uses(store, step, arena, &uses, error);
    if (!status) {
        status = bk_store_step_needs(store, step, arena, &needs, error);
    }
    const bk_step_material *used = uses.items;
    const bk_step_material *needed = needs.items;
    for (size_t i = 0; !status && i < uses.count; i++) {
        status = move(store, BK_MOVED_RETURN, step, &used[i], on, error);
    }
    for (size_t i = 0; !status && i < needs.count; i++) {
        if (needed[i].counted && !has_material(&uses, needed[i].material_id)) {
            status = move(store, BK_MOVED_RETURN, step, &needed[i], on, error);
        }
    }
    bk_arena_free(arena);
    return status;
}

// --------------------------------------------------------------------------------------------- done and open

/// A change of one step under way.
typedef struct step_marking {
    bk_store *store;
    bk_bench_step found;
    const bk_tick *tick; ///< NULL: open again
    bk_day on;
    const char *made_at;
    bk_arena *arena;
    bk_error *error;
} step_marking;

static const char *name_of(const step_marking *marking)
{
    const bk_step *step = &marking->found.step;
    return bk_text_safe(marking->arena, bk_arena_print(marking->arena, "%s/%s", step->piece, step->key),
                        false);
}

static bk_status refuse_done(const step_marking *marking)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_step *step = &marking->found.step;
    if (step->done_on == BK_NO_DAY) {
        return bk_fail(marking->error, BK_REFUSED, "%s is done already: its fitting fits.", name_of(marking));
    }
    return bk_fail(marking->error, BK_REFUSED, "%s is done already, on %s%s%s.", name_of(marking),
                   bk_day_words(step->done_on, marking->on, day), step->done_by ? " by " : "",
                   step->done_by ? bk_text_safe(marking->arena, step->done_by, false) : "");
}

/// Refuses to do what is done and to open what is open.
static bk_status check_state(const step_marking *marking)
{
    bool fits = marking->found.fits;
    bool done = fits || marking->found.step.done_on != BK_NO_DAY;
    if (marking->tick) {
        return done ? refuse_done(marking) : BK_OK;
    }
    if (fits) {
        return bk_fail(
            marking->error, BK_REFUSED,
            "%s is done because its fitting fits: to open it again, change what came of that fitting.",
            name_of(marking));
    }
    return done ? BK_OK : bk_fail(marking->error, BK_REFUSED, "%s is open already.", name_of(marking));
}

/// How long the step took: as told, else what a clock measured.
static bk_status settle_took(step_marking *marking)
{
    bk_step *step = &marking->found.step;
    if (!marking->tick) {
        step->took = BK_NOT_KNOWN;
        return BK_OK;
    }
    bk_status status = bk_running_end(marking->store, step, marking->made_at, marking->error);
    if (marking->tick->took != BK_NOT_KNOWN) {
        step->took = marking->tick->took;
    }
    return status;
}

static bk_status put_marks(step_marking *marking)
{
    bk_step *step = &marking->found.step;
    const bk_tick *tick = marking->tick;
    step->done_on = tick ? tick->done_on : BK_NO_DAY;
    step->done_by = tick ? tick->done_by : NULL;
    bk_status status = settle_took(marking);
    if (!status) {
        status = bk_store_put(marking->store, BK_STEPS, step, marking->error);
    }
    if (status) {
        return status;
    }
    return tick ? bk_step_take_materials(marking->store, step->id, marking->on, marking->error)
                : bk_step_return_materials(marking->store, step->id, marking->on, marking->error);
}

static bk_status mark(step_marking *marking, int64_t step, const char **sentence)
{
    bk_status status = bk_store_change_begin(marking->store, marking->error);
    if (status) {
        return status;
    }
    status = bk_store_bench_step(marking->store, step, marking->arena, &marking->found, marking->error);
    if (!status) {
        status = check_state(marking);
    }
    if (!status) {
        status = put_marks(marking);
    }
    if (status) {
        bk_store_change_drop(marking->store);
        return status;
    }
    *sentence = bk_arena_print(marking->arena, "%s: %s %s", marking->tick ? "Done" : "Open again",
                               marking->found.step.piece, marking->found.step.title);
    return bk_store_change_commit(marking->store, marking->made_at, *sentence, NULL, marking->error);
}

bk_status bk_step_tick(bk_store *store, int64_t step, const bk_tick *tick, const char *made_at,
                       bk_arena *arena, const char **sentence, bk_error *error)
{
    step_marking done = {
        .store = store,
        .tick = tick,
        .on = tick->done_on,
        .made_at = made_at,
        .arena = arena,
        .error = error,
    };
    return mark(&done, step, sentence);
}

bk_status bk_step_untick(bk_store *store, int64_t step, bk_day today, const char *made_at, bk_arena *arena,
                         const char **sentence, bk_error *error)
{
    step_marking open = {.store = store, .on = today, .made_at = made_at, .arena = arena, .error = error};
    return mark(&open, step, sentence);
}
