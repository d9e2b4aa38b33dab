#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/proportion.h"
#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/store/one.h"
#include "bodkin/work/change.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/players.h"

// Booking a call, moving it, calling it off, and marking it missed.

// ---------------------------------------------------------------------------------------------------- words

/// What the sentences about fittings are made of.
typedef struct fitting_words {
    const char *who;    ///< performers, "Ines Varga and Tomas Lind"; "" for nobody
    const char *pieces; ///< "4A-1 toile fitting, 4A-2 first fitting"
    const bk_performer *last;
} fitting_words;

static void add_piece(const bk_job *job, fitting_words *words, const bk_step *step)
{
    words->pieces = bk_arena_print(job->arena, "%s%s%s %s", words->pieces ? words->pieces : "",
                                   words->pieces ? ", " : "", step->piece, step->title);
}

/// Names each performer once, as far as they follow one another.
static void add_performer(const bk_job *job, fitting_words *words, const bk_performer *performer)
{
    if (!performer || (words->last && words->last->id == performer->id)) {
        return;
    }
    words->who = bk_arena_print(job->arena, "%s%s%s", words->who ? words->who : "", words->who ? " and " : "",
                                performer->name);
    words->last = performer;
}

static bk_status find_performer(const bk_job *job, const bk_players *players, int64_t performer,
                                int64_t piece, const bk_performer **found, bk_error *error)
{
    bk_performer *named = bk_arena_clear(job->arena, 1, sizeof *named);
    bool there;
    *found = performer ? NULL : bk_player_of(players, piece);
    if (!performer) {
        return BK_OK;
    }
    bk_status status = bk_store_get(job->store, BK_PERFORMERS, performer, job->arena, named, &there, error);
    if (!status && !there) {
        return bk_fail(error, BK_REFUSED, "This performer is no longer in the workroom.");
    }
    *found = named;
    return status;
}

/// "Booked: Ines Varga, Fri 12 Mar 14:30: 4A-1 toile fitting".
static const char *sentence_of(const bk_job *job, const char *done, const fitting_words *words,
                               const char *when)
{
    return bk_arena_print(job->arena, "%s: %s%s%s: %s", done, words->who ? words->who : "",
                          words->who ? ", " : "", when, words->pieces ? words->pieces : "");
}

// -------------------------------------------------------------------------------------------------- booking

typedef struct call_booking {
    const bk_fitting_booking *wanted;
    bk_bench_step *steps;
    size_t count;
    bk_rows fittings; ///< of the production
    bk_players players;
    fitting_words words;
} call_booking;

static bool has_step(const call_booking *booking, int64_t step)
{
    for (size_t i = 0; i < booking->count; i++) {
        if (booking->steps[i].step.id == step) {
            return true;
        }
    }
    return false;
}

static bk_status check_step(const bk_job *job, const bk_bench_step *found, bk_error *error)
{
    const bk_step *step = &found->step;
    const char *name = bk_change_name(job, bk_arena_print(job->arena, "%s/%s", step->piece, step->key));
    if (step->kind != BK_FIT) {
        return bk_fail(error, BK_REFUSED, "%s is a step of kind %s; only a step of kind fit is booked.", name,
                       bk_word_text(&bk_kind_words, step->kind));
    }
    if (found->fits || step->done_on != BK_NO_DAY) {
        return bk_fail(error, BK_REFUSED, "%s is done already; open it again to book it.", name);
    }
    if (step->production_id != job->production) {
        return bk_fail(error, BK_REFUSED, "%s is of another production.", name);
    }
    return BK_OK;
}

static bk_status read_steps(const bk_job *job, call_booking *booking, bk_error *error)
{
    const bk_fitting_booking *wanted = booking->wanted;
    bk_status status = BK_OK;
    booking->steps = bk_arena_clear(job->arena, wanted->count, sizeof *booking->steps);
    for (size_t i = 0; !status && i < wanted->count; i++) {
        if (!has_step(booking, wanted->steps[i])) {
            bk_bench_step *step = &booking->steps[booking->count++];
            status = bk_store_bench_step(job->store, wanted->steps[i], job->arena, step, error);
            status = status ? status : check_step(job, step, error);
        }
    }
    return status;
}

/// The booking of a step that is still to be held: for today or later, with nothing recorded.
static const bk_fitting *open_booking(const bk_job *job, const call_booking *booking, int64_t step)
{
    const bk_fitting *fittings = booking->fittings.items;
    const bk_fitting *found = NULL;
    for (size_t i = 0; i < booking->fittings.count; i++) {
        if (fittings[i].step_id == step && fittings[i].outcome == BK_NO_WORD &&
            fittings[i].held_on == BK_NO_DAY && fittings[i].booked_at.day >= job->today &&
            (!found || bk_moment_order(fittings[i].booked_at, found->booked_at) >= 0)) {
            found = &fittings[i];
        }
    }
    return found;
}

static bk_status book_step(const bk_job *job, const call_booking *booking, const bk_step *step,
                           int64_t minutes, bk_error *error)
{
    const bk_fitting *open = open_booking(job, booking, step->id);
    bk_fitting fitting = {
        .production_id = job->production, .step_id = step->id, .held_on = BK_NO_DAY, .outcome = BK_NO_WORD};
    int64_t position = 0;
    if (open) {
        fitting = *open;
    }
    fitting.performer_id = booking->wanted->performer_id;
    fitting.booked_at = booking->wanted->moment;
    fitting.minutes = minutes;
    if (open) {
        return bk_store_put(job->store, BK_FITTINGS, &fitting, error);
    }
    bk_status status = bk_store_last_place(job->store, BK_FITTINGS, job->production, &position, error);
    return status ? status : bk_store_add(job->store, BK_FITTINGS, &fitting, position, NULL, error);
}

/// What of the minutes of a call falls to its pieces up to `index`: in proportion to their steps, else evenly.
static int64_t minutes_up_to(const call_booking *booking, size_t index)
{
    int64_t all = 0;
    int64_t part = 0;
    for (size_t i = 0; i < booking->count; i++) {
        all += booking->steps[i].step.minutes;
        part += i < index ? booking->steps[i].step.minutes : 0;
    }
    return all ? bk_in_proportion(booking->wanted->minutes, part, all)
               : bk_in_proportion(booking->wanted->minutes, (int64_t)index, (int64_t)booking->count);
}

static bk_status book_steps(const bk_job *job, call_booking *booking, bk_error *error)
{
    bool known = booking->wanted->minutes != BK_NOT_KNOWN;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < booking->count; i++) {
        const bk_step *step = &booking->steps[i].step;
        const bk_performer *performer = NULL;
        status = find_performer(job, &booking->players, booking->wanted->performer_id, step->piece_id,
                                &performer, error);
        add_performer(job, &booking->words, performer);
        add_piece(job, &booking->words, step);
        if (!status) {
            status = book_step(
                job, booking, step,
                known ? minutes_up_to(booking, i + 1) - minutes_up_to(booking, i) : BK_NOT_KNOWN, error);
        }
    }
    return status;
}

static bk_status book(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    call_booking *booking = context;
    if (!booking->wanted->count) {
        return bk_fail(error, BK_REFUSED, "Say what is to be fitted: no step was named.");
    }
    if (booking->wanted->minutes != BK_NOT_KNOWN && booking->wanted->minutes < 0) {
        return bk_fail(error, BK_REFUSED, "A fitting takes no less than 0 minutes.");
    }
    bk_status status = read_steps(job, booking, error);
    if (!status) {
        status =
            bk_store_read(job->store, BK_FITTINGS, job->production, job->arena, &booking->fittings, error);
    }
    if (!status) {
        status = bk_players_read(job->store, job->production, job->arena, &booking->players, error);
    }
    if (!status) {
        status = book_steps(job, booking, error);
    }
    *sentence = sentence_of(job, "Booked", &booking->words, bk_change_moment(job, booking->wanted->moment));
    return status;
}

bk_status bk_fitting_book(const bk_job *job, const bk_fitting_booking *booking, const char **sentence,
                          bk_error *error)
{
    call_booking booked = {.wanted = booking};
    return bk_change_run(job, book, &booked, sentence, error);
}

// --------------------------------------------------------------------------------- moving, calling off, missed

/// Something done to bookings.
typedef struct booking_change {
    const int64_t *fittings;
    size_t count;
    bk_moment moment;
    const char *done; ///< "Moved"
    bk_status (*change)(const bk_job *job, const struct booking_change *changing, bk_fitting *fitting,
                        bk_error *error);
    fitting_words words;
    bk_moment was; ///< of the first
} booking_change;

static bk_status refuse_held(const bk_job *job, const bk_fitting *fitting, const char *what, bk_error *error)
{
    bk_day day = fitting->held_on != BK_NO_DAY ? fitting->held_on : fitting->booked_at.day;
    return bk_fail(error, BK_REFUSED, "The fitting of %s %s; %s", bk_change_moment(job, fitting->booked_at),
                   fitting->outcome == BK_MISSED
                       ? "was missed"
                       : bk_arena_print(job->arena, "was held on %s", bk_change_day(job, day)),
                   what);
}

static bool still_open(const bk_fitting *fitting)
{
    return fitting->outcome == BK_NO_WORD && fitting->held_on == BK_NO_DAY;
}

static bk_status move(const bk_job *job, const booking_change *changing, bk_fitting *fitting, bk_error *error)
{
    if (!still_open(fitting)) {
        return refuse_held(job, fitting, "book another one.", error);
    }
    fitting->booked_at = changing->moment;
    return bk_store_put(job->store, BK_FITTINGS, fitting, error);
}

static bk_status call_off(const bk_job *job, const booking_change *changing, bk_fitting *fitting,
                          bk_error *error)
{
    (void)changing;
    if (!still_open(fitting)) {
        return refuse_held(job, fitting, "it stays on record.", error);
    }
    return bk_store_remove(job->store, BK_FITTINGS, fitting->id, error);
}

static bk_status miss(const bk_job *job, const booking_change *changing, bk_fitting *fitting, bk_error *error)
{
    (void)changing;
    if (!still_open(fitting)) {
        return refuse_held(job, fitting, "change what came of it instead.", error);
    }
    if (fitting->booked_at.day > job->today) {
        return bk_fail(error, BK_REFUSED, "The fitting is only on %s: move it or call it off.",
                       bk_change_moment(job, fitting->booked_at));
    }
    fitting->outcome = BK_MISSED;
    return bk_store_put(job->store, BK_FITTINGS, fitting, error);
}

/// Changes one booking, and adds it to the words.
static bk_status change_one(const bk_job *job, booking_change *changing, const bk_players *players,
                            int64_t id, bk_error *error)
{
    bk_fitting fitting;
    bk_bench_step step = {0};
    const bk_performer *performer = NULL;
    bool found;
    bk_status status = bk_store_get(job->store, BK_FITTINGS, id, job->arena, &fitting, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This fitting is no longer in the workroom.");
    }
    if (!status) {
        status = bk_store_bench_step(job->store, fitting.step_id, job->arena, &step, error);
    }
    if (!status) {
        status = find_performer(job, players, fitting.performer_id, step.step.piece_id, &performer, error);
    }
    if (status) {
        return status;
    }
    if (!changing->words.pieces) {
        changing->was = fitting.booked_at;
    }
    add_performer(job, &changing->words, performer);
    add_piece(job, &changing->words, &step.step);
    return changing->change(job, changing, &fitting, error);
}

static bk_status change_all(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    booking_change *changing = context;
    bk_players players;
    bk_status status = bk_players_read(job->store, job->production, job->arena, &players, error);
    for (size_t i = 0; !status && i < changing->count; i++) {
        status = change_one(job, changing, &players, changing->fittings[i], error);
    }
    if (status || !changing->count) {
        return status;
    }
    const char *when = bk_change_moment(job, changing->was);
    if (changing->change == move) {
        when = bk_arena_print(job->arena, "%s (it was %s)", bk_change_moment(job, changing->moment), when);
    }
    *sentence = sentence_of(job, changing->done, &changing->words, when);
    return BK_OK;
}

bk_status bk_fitting_move(const bk_job *job, const int64_t *fittings, size_t count, bk_moment moment,
                          const char **sentence, bk_error *error)
{
    booking_change changing = {
        .fittings = fittings, .count = count, .moment = moment, .done = "Moved", .change = move};
    return bk_change_run(job, change_all, &changing, sentence, error);
}

bk_status bk_fitting_call_off(const bk_job *job, const int64_t *fittings, size_t count, const char **sentence,
                              bk_error *error)
{
    booking_change changing = {
        .fittings = fittings, .count = count, .done = "Called off", .change = call_off};
    return bk_change_run(job, change_all, &changing, sentence, error);
}

bk_status bk_fitting_missed(const bk_job *job, const int64_t *fittings, size_t count, const char **sentence,
                            bk_error *error)
{
    booking_change changing = {.fittings = fittings, .count = count, .done = "Missed", .change = miss};
    return bk_change_run(job, change_all, &changing, sentence, error);
}
