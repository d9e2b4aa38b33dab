#include "bodkin/work/tick.h"

#include <stdio.h>

#include "bodkin/base/text.h"
#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/outlook_words.h"
#include "bodkin/work/productions.h"

// `tick` and `untick`: a step is done, or open again.

/// The step that the call names, in the production that it means.
static bk_status find_step(const bk_call *call, bk_store *store, bk_arena *arena, int64_t *step,
                           bk_error *error)
{
    bk_production production;
    bk_status status =
        bk_production_choose(store, call->production, bk_call_today(call), arena, &production, error);
    return status ? status : bk_step_find(store, &production, call->arguments[0], step, error);
}

/// What a tick went against goes to stderr, a line each; it is done all the same.
static void tell_remarks(const bk_step_outlook *outlook, bk_day today, bk_arena *arena)
{
    const char *remarks[BK_OUTLOOK_REMARKS];
    size_t count = bk_outlook_remarks(outlook, today, arena, remarks);
    for (size_t i = 0; i < count; i++) {
        fprintf(stderr, "%s\n", bk_text_safe(arena, remarks[i], bk_ascii_only()));
    }
}

static bk_status mark_done(const bk_call *call, bk_store *store, int64_t step, bk_arena *arena,
                           const char **sentence, bk_error *error)
{
    char now[BK_NOW_ROOM];
    bk_tick tick = {
        .done_on = call->on == BK_NO_DAY ? bk_call_today(call) : call->on,
        .done_by = call->by ? call->by : call->name,
        .took = call->took,
    };
    bk_step_outlook outlook;
    bk_status status = bk_step_outlook_read(store, step, arena, &outlook, error);
    if (!status) {
        status = bk_step_tick(store, step, &tick, bk_now(now), arena, sentence, error);
    }
    if (!status) {
        tell_remarks(&outlook, bk_call_today(call), arena);
    }
    return status;
}

static bk_status mark_open(const bk_call *call, bk_store *store, int64_t step, bk_arena *arena,
                           const char **sentence, bk_error *error)
{
    char now[BK_NOW_ROOM];
    return bk_step_untick(store, step, bk_call_today(call), bk_now(now), arena, sentence, error);
}

typedef bk_status step_marker(const bk_call *call, bk_store *store, int64_t step, bk_arena *arena,
                              const char **sentence, bk_error *error);

static bk_status mark(const bk_call *call, step_marker *marker, bk_error *error)
{
    bk_store *store;
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bk_arena *arena = bk_arena_new();
    const char *sentence = NULL;
    int64_t step = 0;
    status = find_step(call, store, arena, &step, error);
    if (!status) {
        status = marker(call, store, step, arena, &sentence, error);
    }
    bk_store_close(store);
    if (!status) {
        status = bk_print_sentence(sentence, error);
    }
    bk_arena_free(arena);
    return status;
}

bk_status bk_tick_command(const bk_call *call, bk_error *error)
{
    return mark(call, mark_done, error);
}

bk_status bk_untick_command(const bk_call *call, bk_error *error)
{
    return mark(call, mark_open, error);
}
