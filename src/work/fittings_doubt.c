#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/work/change.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/productions.h"
#include "bodkin/work/rail_gather.h"

// What speaks against a booking.

/// Somebody who is to be fitted.
typedef struct fitted_person {
    int64_t id;
    const char *name;
} fitted_person;

typedef struct doubting {
    const bk_job *job;
    const bk_fitting_booking *booking;
    const int64_t *moved; ///< fittings that the booking moves
    size_t moved_count;
    BK_LIST(fitted_person) people;
    BK_LIST(const char *) says;
    int64_t minutes; ///< of the call
} doubting;

static const char *name(const doubting *doubts, const char *text)
{
    return bk_change_name(doubts->job, text);
}

static const char *when(const doubting *doubts)
{
    return bk_change_day(doubts->job, doubts->booking->moment.day);
}

static bool is_fitted(const doubting *doubts, int64_t performer)
{
    for (size_t i = 0; i < doubts->people.count; i++) {
        if (doubts->people.items[i].id == performer) {
            return true;
        }
    }
    return false;
}

static void add_person(doubting *doubts, int64_t id, const char *called)
{
    if (id && !is_fitted(doubts, id)) {
        bk_list_add(&doubts->people, ((fitted_person){id, called}));
    }
}

static bool has_id(const int64_t *ids, size_t count, int64_t id)
{
    for (size_t i = 0; i < count; i++) {
        if (ids[i] == id) {
            return true;
        }
    }
    return false;
}

// -------------------------------------------------------------------------------------- its day, its people

/// Whoever is named, else who plays; the minutes of the call; and whether it comes too late for a piece.
static void weigh_step(doubting *doubts, const bk_gathered *gathered, const bk_wait_rows *rows, size_t at)
{
    const bk_step *step = (const bk_step *)gathered->steps.items + at;
    const bk_performer *performers = gathered->performers.items;
    size_t piece = rows->steps[at].piece;
    const bk_indices *costumes = &rows->pieces[piece].costumes;
    bk_day due = bk_piece_due(rows, piece);
    for (size_t i = 0; !doubts->booking->performer_id && i < costumes->count; i++) {
        size_t performer = rows->costumes[costumes->items[i]].performer;
        if (performer != BK_NO_INDEX) {
            add_person(doubts, performers[performer].id, performers[performer].name);
            break;
        }
    }
    if (doubts->booking->minutes == BK_NOT_KNOWN) {
        doubts->minutes += step->minutes;
    }
    if (due != BK_NO_DAY && due < doubts->booking->moment.day) {
        bk_list_add(&doubts->says,
                    bk_arena_print(doubts->job->arena, "%s is due before that, on %s.",
                                   name(doubts, rows->pieces[piece].name), bk_change_day(doubts->job, due)));
    }
}

static void weigh_aways(doubting *doubts, const bk_gathered *gathered)
{
    const bk_away *aways = gathered->aways.items;
    bk_day day = doubts->booking->moment.day;
    for (size_t i = 0; i < gathered->aways.count; i++) {
        if (aways[i].performer_id && is_fitted(doubts, aways[i].performer_id) && aways[i].from <= day &&
            day <= aways[i].to) {
            bk_list_add(&doubts->says,
                        bk_arena_print(doubts->job->arena, "%s is away on %s%s%s.",
                                       name(doubts, aways[i].who), when(doubts), aways[i].reason ? ": " : "",
                                       aways[i].reason ? name(doubts, aways[i].reason) : ""));
        }
    }
}

static void weigh_rows(doubting *doubts, const bk_gathered *gathered)
{
    bk_wait_rows rows = bk_gathered_rows(gathered);
    size_t named = bk_gathered_index(gathered->performer_at, doubts->booking->performer_id);
    const char *called = "";
    if (named != BK_NO_INDEX) {
        called = ((const bk_performer *)gathered->performers.items)[named].name;
    }
    add_person(doubts, doubts->booking->performer_id, called);
    for (size_t i = 0; i < doubts->booking->count; i++) {
        size_t at = bk_gathered_index(gathered->step_at, doubts->booking->steps[i]);
        if (at != BK_NO_INDEX) {
            weigh_step(doubts, gathered, &rows, at);
        }
    }
    weigh_aways(doubts, gathered);
}

static bk_status weigh_production(doubting *doubts, bk_error *error)
{
    const bk_job *job = doubts->job;
    bk_gathered gathered = {.arena = job->arena, .today = job->today};
    bk_status status = bk_store_read_begin(job->store, error);
    if (status) {
        return status;
    }
    status = bk_gather_rows(job->store, job->production, &gathered, error);
    bk_store_read_end(job->store);
    if (!status) {
        weigh_rows(doubts, &gathered);
    }
    bk_gathered_free(&gathered);
    return status;
}

// ----------------------------------------------------------------------------------------------- other calls

/// Whether all of a call is what the booking moves: those named, and open ones of the same steps.
static bool is_moved(const doubting *doubts, const bk_fitting_call *call)
{
    for (size_t i = 0; i < call->count; i++) {
        const bk_fitting_line *line = &call->fittings[i];
        bool open = line->state == BK_FITTING_TODAY || line->state == BK_FITTING_TO_COME;
        if (!has_id(doubts->moved, doubts->moved_count, line->id) &&
            !(open && has_id(doubts->booking->steps, doubts->booking->count, line->step_id))) {
            return false;
        }
    }
    return true;
}

/// Both have a time, on one day, and meet; a call of no known length takes a minute.
static bool meets(const doubting *doubts, const bk_fitting_call *call)
{
    bk_moment ours = doubts->booking->moment;
    if (ours.time == BK_NO_TIME || call->moment.time == BK_NO_TIME || ours.day != call->moment.day) {
        return false;
    }
    int64_t end = ours.time + (doubts->minutes ? doubts->minutes : 1);
    int64_t call_end = call->moment.time + (call->minutes ? call->minutes : 1);
    return ours.time < call_end && call->moment.time < end;
}

static void weigh_call(doubting *doubts, const bk_fitting_call *call, const char *elsewhere)
{
    bool same = is_fitted(doubts, call->performer_id);
    bool one_call = same && !elsewhere && !bk_moment_order(doubts->booking->moment, call->moment);
    if (!meets(doubts, call) || one_call || call->state == BK_FITTING_MISSED || is_moved(doubts, call)) {
        return;
    }
    bk_list_add(&doubts->says, bk_arena_print(doubts->job->arena, "%s %s: %s, %s (%s%s%s).",
                                              call->performer ? name(doubts, call->performer) : "Somebody",
                                              same ? "has another fitting then" : "is being fitted then",
                                              bk_change_moment(doubts->job, call->moment),
                                              bk_change_minutes(doubts->job, call->minutes),
                                              name(doubts, call->fittings[0].piece), elsewhere ? " of " : "",
                                              elsewhere ? name(doubts, elsewhere) : ""));
}

static bk_status weigh_calls(doubting *doubts, const bk_production *production, bk_error *error)
{
    const bk_job *job = doubts->job;
    bk_fitting_list list;
    bk_status status = bk_fittings_read(job->store, production->id, job->today, job->arena, &list, error);
    for (size_t i = 0; !status && i < list.call_count; i++) {
        weigh_call(doubts, &list.calls[i], production->id == job->production ? NULL : production->name);
    }
    return status;
}

static bk_status weigh_all_calls(doubting *doubts, bk_error *error)
{
    const bk_job *job = doubts->job;
    bk_production_list list;
    bk_status status = bk_productions_read(job->store, job->arena, &list, error);
    for (size_t i = 0; !status && i < list.count; i++) {
        if (list.items[i].put_away_on == BK_NO_DAY) {
            status = weigh_calls(doubts, &list.items[i], error);
        }
    }
    return status;
}

// --------------------------------------------------------------------------------------------------- public

bk_status bk_fitting_doubt(const bk_job *job, const bk_fitting_booking *booking, const int64_t *fittings,
                           size_t count, bk_fitting_doubts *doubts, bk_error *error)
{
    doubting weighing = {.job = job, .booking = booking, .moved = fittings, .moved_count = count};
    weighing.minutes = booking->minutes == BK_NOT_KNOWN ? 0 : booking->minutes;
    if (booking->moment.day < job->today) {
        bk_list_add(&weighing.says, bk_arena_print(job->arena, "%s is past.", when(&weighing)));
    }
    bk_status status = weigh_production(&weighing, error);
    if (!status) {
        status = weigh_all_calls(&weighing, error);
    }
    doubts->count = status ? 0 : weighing.says.count;
    doubts->items = bk_arena_clear(job->arena, weighing.says.count, sizeof *doubts->items);
    if (doubts->count) {
        memcpy(doubts->items, weighing.says.items, doubts->count * sizeof *doubts->items);
    }
    bk_list_free(&weighing.people);
    bk_list_free(&weighing.says);
    return status;
}
