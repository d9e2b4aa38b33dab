#include "bodkin/base/typed.h"
#include "bodkin/cmd/call_job.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/tick.h"

// `book`: a fitting, or one call for several pieces.

/// The steps that the call names: all arguments but the last.
static bk_status find_steps(const bk_call *call, const bk_job *job, const bk_production *production,
                            bk_fitting_booking *booking, bk_error *error)
{
    int64_t *steps = bk_arena_clear(job->arena, (size_t)call->argument_count, sizeof *steps);
    bk_status status = BK_OK;
    booking->steps = steps;
    booking->count = (size_t)call->argument_count - 1;
    for (size_t i = 0; !status && i < booking->count; i++) {
        status = bk_step_find(job->store, production, call->arguments[i], &steps[i], error);
    }
    return status;
}

static bk_status find_performer(const bk_call *call, const bk_job *job, int64_t *performer, bk_error *error)
{
    bk_rows rows = {0};
    *performer = 0;
    if (!call->performer) {
        return BK_OK;
    }
    bk_status status = bk_store_read(job->store, BK_PERFORMERS, 0, job->arena, &rows, error);
    const bk_performer *items = rows.items;
    const char **names = bk_arena_clear(job->arena, rows.count, sizeof *names);
    for (size_t i = 0; !status && i < rows.count; i++) {
        names[i] = items[i].name;
        if (bk_same_text(names[i], call->performer)) {
            *performer = items[i].id;
        }
    }
    if (status || *performer) {
        return status;
    }
    const char *near = bk_nearest(call->performer, names, rows.count);
    return bk_fail(error, BK_REFUSED, "There is no performer \"%s\" in the workroom%s%s%s",
                   bk_text_safe(job->arena, call->performer, false), near ? "; did you mean \"" : "",
                   near ? bk_text_safe(job->arena, near, false) : "", near ? "\"?" : ".");
}

static bk_status read_when(const bk_call *call, const bk_job *job, bk_moment *moment, bk_error *error)
{
    const char *text = call->arguments[call->argument_count - 1];
    if (bk_moment_typed(text, job->today, moment)) {
        return BK_OK;
    }
    return bk_fail(error, BK_USAGE,
                   "\"%s\" is no day: write it such as \"fri 14:30\", \"9 mar 2pm\", +3 or 2027-03-12T14:30.",
                   bk_text_safe(job->arena, text, false));
}

/// What speaks against it goes to stderr, a line each.
static void tell_doubts(const bk_fitting_doubts *doubts, bk_arena *arena)
{
    for (size_t i = 0; i < doubts->count; i++) {
        fprintf(stderr, "%s\n", bk_text_safe(arena, doubts->items[i], bk_ascii_only()));
    }
}

static bk_status read_booking(const bk_call *call, bk_job *job, bk_fitting_booking *booking, bk_error *error)
{
    bk_production production;
    bk_status status = bk_call_choose(call, job, &production, error);
    if (!status) {
        status = read_when(call, job, &booking->moment, error);
    }
    if (!status) {
        status = find_steps(call, job, &production, booking, error);
    }
    return status ? status : find_performer(call, job, &booking->performer_id, error);
}

static bk_status book(const bk_call *call, bk_job *job, bk_error *error)
{
    bk_fitting_booking booking = {.minutes = call->minutes};
    bk_fitting_doubts doubts = {0};
    const char *sentence = NULL;
    bk_status status = read_booking(call, job, &booking, error);
    if (!status) {
        status = bk_fitting_doubt(job, &booking, NULL, 0, &doubts, error);
    }
    if (!status) {
        status = bk_fitting_book(job, &booking, &sentence, error);
    }
    if (status) {
        return status;
    }
    tell_doubts(&doubts, job->arena);
    return bk_print_sentence(sentence, error);
}

bk_status bk_book_command(const bk_call *call, bk_error *error)
{
    return bk_call_job(call, book, error);
}
