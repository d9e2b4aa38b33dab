#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/store/one.h"
#include "bodkin/work/change.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/noted_step.h"
#include "bodkin/work/players.h"
#include "bodkin/work/tick.h"

// What came of a fitting.

typedef struct fitting_recording {
    const bk_fitting_result *result;
    bk_fitting fitting;
    bk_bench_step step;
    bk_piece piece;
    const char *who;    ///< whose notes they are
    int64_t behind;     ///< the step behind which the next one stands, after one that fits
    size_t notes, made; ///< how many were kept, and how many of them became steps
} fitting_recording;

static bool is_done(const bk_bench_step *found)
{
    return found->fits || found->step.done_on != BK_NO_DAY;
}

// -------------------------------------------------------------------------------------------------- reading

static bk_status check(const bk_job *job, const fitting_recording *recording, bk_error *error)
{
    const bk_fitting_result *result = recording->result;
    if (result->outcome != BK_MISSED && result->held_on != BK_NO_DAY && result->held_on > job->today) {
        return bk_fail(error, BK_REFUSED, "%s is still to come; a fitting is recorded when it was held.",
                       bk_change_day(job, result->held_on));
    }
    if (result->outcome == BK_MISSED && recording->fitting.booked_at.day > job->today) {
        return bk_fail(error, BK_REFUSED, "The fitting is only on %s: move it or call it off.",
                       bk_change_moment(job, recording->fitting.booked_at));
    }
    return BK_OK;
}

static bk_status read_who(const bk_job *job, fitting_recording *recording, bk_error *error)
{
    bk_players players;
    bk_performer named;
    bool found = false;
    int64_t performer = recording->fitting.performer_id;
    bk_status status =
        bk_players_read(job->store, recording->fitting.production_id, job->arena, &players, error);
    if (!status && performer) {
        status = bk_store_get(job->store, BK_PERFORMERS, performer, job->arena, &named, &found, error);
    }
    const bk_performer *player = status ? NULL : bk_player_of(&players, recording->step.step.piece_id);
    recording->who = found ? named.name : (player ? player->name : job->who);
    return status;
}

static bk_status read_all(const bk_job *job, fitting_recording *recording, bk_error *error)
{
    bool found;
    bk_status status = bk_store_get(job->store, BK_FITTINGS, recording->result->fitting_id, job->arena,
                                    &recording->fitting, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This fitting is no longer in the workroom.");
    }
    if (!status) {
        status =
            bk_store_bench_step(job->store, recording->fitting.step_id, job->arena, &recording->step, error);
    }
    if (!status) {
        status = bk_store_get(job->store, BK_PIECES, recording->step.step.piece_id, job->arena,
                              &recording->piece, &found, error);
    }
    if (!status) {
        status = check(job, recording, error);
    }
    return status ? status : read_who(job, recording, error);
}

// -------------------------------------------------------------------------------------------------- outcome

static bk_day earlier(bk_day left, bk_day right)
{
    return left < right ? left : right;
}

static void set_outcome(const bk_job *job, fitting_recording *recording)
{
    const bk_fitting_result *result = recording->result;
    bk_fitting *fitting = &recording->fitting;
    bool held = result->outcome == BK_FITS || result->outcome == BK_AGAIN;
    fitting->outcome = result->outcome;
    fitting->held_on = !held                          ? BK_NO_DAY
                       : result->held_on != BK_NO_DAY ? result->held_on
                                                      : earlier(job->today, fitting->booked_at.day);
    fitting->note = result->note ? (bk_text_blank(result->note) ? NULL : result->note) : fitting->note;
}

/// The step became done by this, or open again: its materials and its clocks follow.
static bk_status follow(const bk_job *job, const fitting_recording *recording, bk_error *error)
{
    bk_bench_step now;
    int64_t id = recording->step.step.id;
    bk_status status = bk_store_bench_step(job->store, id, job->arena, &now, error);
    if (status || is_done(&now) == is_done(&recording->step)) {
        return status;
    }
    if (!is_done(&now)) {
        return bk_step_return_materials(job->store, id, job->today, error);
    }
    status = bk_running_end(job->store, &now.step, job->made_at, error);
    if (!status) {
        status = bk_store_put(job->store, BK_STEPS, &now.step, error);
    }
    return status ? status : bk_step_take_materials(job->store, id, recording->fitting.held_on, error);
}

// ---------------------------------------------------------------------------------------------------- notes

static bk_status make_step(const bk_job *job, fitting_recording *recording, const bk_fitting_note *note,
                           int64_t *step, bk_error *error)
{
    bool fits = recording->result->outcome == BK_FITS;
    bk_noted_step wanted = {
        .piece = &recording->piece,
        .text = note->text,
        .kind = note->kind,
        .minutes = note->minutes,
        .before_id = fits ? 0 : recording->step.step.id,
        .behind_id = fits ? recording->behind : 0,
        .after_id = fits ? recording->step.step.id : 0,
    };
    bk_status status = bk_noted_step_add(job, &wanted, step, error);
    recording->behind = *step;
    recording->made++;
    return status;
}

static bk_status keep_note(const bk_job *job, fitting_recording *recording, const bk_fitting_note *note,
                           bk_error *error)
{
    bk_note kept = {
        .production_id = recording->fitting.production_id,
        .piece_id = recording->piece.id,
        .noted_on = recording->fitting.held_on != BK_NO_DAY ? recording->fitting.held_on : job->today,
        .source = BK_FROM_FITTING,
        .who = recording->who,
        .what = note->text,
        .done_on = BK_NO_DAY,
    };
    int64_t position = 0;
    bk_status status = BK_OK;
    if (note->make_step) {
        status = make_step(job, recording, note, &kept.step_id, error);
    }
    if (!status) {
        status = bk_store_last_place(job->store, BK_NOTES, kept.production_id, &position, error);
    }
    recording->notes++;
    return status ? status : bk_store_add(job->store, BK_NOTES, &kept, position, NULL, error);
}

static bk_status keep_notes(const bk_job *job, fitting_recording *recording, bk_error *error)
{
    bk_status status = BK_OK;
    recording->behind = recording->step.step.id;
    for (size_t i = 0; !status && i < recording->result->note_count; i++) {
        const bk_fitting_note *note = &recording->result->notes[i];
        if (!bk_text_blank(note->text)) {
            status = keep_note(job, recording, note, error);
        }
    }
    return status;
}

// ------------------------------------------------------------------------------------------------- sentence

static const char *notes_words(const bk_job *job, const fitting_recording *recording)
{
    if (!recording->notes) {
        return "";
    }
    const char *made = "";
    if (recording->made) {
        made =
            bk_arena_print(job->arena, ", %zu step%s made", recording->made, recording->made == 1 ? "" : "s");
    }
    return bk_arena_print(job->arena, " (%zu note%s%s)", recording->notes, recording->notes == 1 ? "" : "s",
                          made);
}

/// "Fitted: 4A-1 toile fitting: again (2 notes, 1 step made)".
static const char *sentence_of(const bk_job *job, const fitting_recording *recording)
{
    const bk_step *step = &recording->step.step;
    int outcome = recording->result->outcome;
    const char *name = bk_arena_print(job->arena, "%s %s", step->piece, step->title);
    const char *notes = notes_words(job, recording);
    if (outcome == BK_NO_WORD) {
        return bk_arena_print(job->arena, "Taken back: what came of %s%s", name, notes);
    }
    if (outcome == BK_MISSED) {
        return bk_arena_print(job->arena, "Missed: %s%s", name, notes);
    }
    return bk_arena_print(job->arena, "Fitted: %s: %s%s", name, bk_word_text(&bk_outcome_words, outcome),
                          notes);
}

static bk_status record(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    fitting_recording *recording = context;
    bk_status status = read_all(job, recording, error);
    if (status) {
        return status;
    }
    set_outcome(job, recording);
    status = bk_store_put(job->store, BK_FITTINGS, &recording->fitting, error);
    if (!status) {
        status = follow(job, recording, error);
    }
    if (!status) {
        status = keep_notes(job, recording, error);
    }
    *sentence = sentence_of(job, recording);
    return status;
}

bk_status bk_fitting_record(const bk_job *job, const bk_fitting_result *result, const char **sentence,
                            bk_error *error)
{
    fitting_recording recording = {.result = result};
    return bk_change_run(job, record, &recording, sentence, error);
}
