#include "bodkin/work/notes.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/store/one.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/change.h"

// -------------------------------------------------------------------------------------------------- reading

typedef struct note_reading {
    bk_rows notes, costumes, pieces, steps, fittings;
    bk_id_index *costume_at, *piece_at, *step_at, *fits_at; ///< the last: steps that a fitting makes done
} note_reading;

static bk_status read_rows(bk_store *store, int64_t production, bk_arena *arena, note_reading *reading,
                           bk_error *error)
{
    const struct {
        bk_family family;
        bk_rows *rows;
    } reads[] = {
        {BK_NOTES, &reading->notes},      {BK_COSTUMES, &reading->costumes}, {BK_PIECES, &reading->pieces},
        {BK_RAIL_STEPS, &reading->steps}, {BK_FITTINGS, &reading->fittings},
    };
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    for (size_t i = 0; !status && i < sizeof reads / sizeof *reads; i++) {
        status = bk_store_read(store, reads[i].family, production, arena, reads[i].rows, error);
    }
    bk_store_read_end(store);
    return status;
}

static void index_rows(note_reading *reading)
{
    const bk_fitting *fittings = reading->fittings.items;
    reading->costume_at =
        bk_id_index_of(reading->costumes.items, reading->costumes.count, sizeof(bk_costume));
    reading->piece_at = bk_id_index_of(reading->pieces.items, reading->pieces.count, sizeof(bk_piece));
    reading->step_at = bk_id_index_of(reading->steps.items, reading->steps.count, sizeof(bk_step));
    reading->fits_at = bk_id_index_new();
    for (size_t i = 0; i < reading->fittings.count; i++) {
        if (fittings[i].outcome == BK_FITS) {
            bk_id_index_put(reading->fits_at, fittings[i].step_id, 1);
        }
    }
}

static void free_indices(const note_reading *reading)
{
    bk_id_index_free(reading->costume_at);
    bk_id_index_free(reading->piece_at);
    bk_id_index_free(reading->step_at);
    bk_id_index_free(reading->fits_at);
}

static const char *piece_name(const note_reading *reading, int64_t piece)
{
    const long long *at = bk_id_index_find(reading->piece_at, piece);
    return at ? ((const bk_piece *)reading->pieces.items)[*at].name : NULL;
}

static void name_all(const note_reading *reading, bk_note_line *line, bk_arena *arena)
{
    bk_note *note = &line->record;
    const long long *costume = bk_id_index_find(reading->costume_at, note->costume_id);
    const long long *at = bk_id_index_find(reading->step_at, note->step_id);
    note->costume = costume ? ((const bk_costume *)reading->costumes.items)[*costume].number : NULL;
    note->piece = piece_name(reading, note->piece_id);
    if (at) {
        const bk_step *step = (const bk_step *)reading->steps.items + *at;
        note->step = step->key;
        line->step_title = step->title;
        line->step_piece = piece_name(reading, step->piece_id);
        line->became_step = bk_same_text(step->title, bk_noted_step_title(note->what, arena));
        line->step_done = step->done_on != BK_NO_DAY || bk_id_index_find(reading->fits_at, step->id);
    }
}

bk_status bk_notes_read(bk_store *store, int64_t production, bk_arena *arena, bk_note_list *list,
                        bk_error *error)
{
    note_reading reading = {0};
    bk_status status = read_rows(store, production, arena, &reading, error);
    if (status) {
        return status;
    }
    index_rows(&reading);
    const bk_note *notes = reading.notes.items;
    bk_note_line *lines = bk_arena_clear(arena, reading.notes.count, sizeof *lines);
    for (size_t i = 0; i < reading.notes.count; i++) {
        lines[i].record = notes[i];
        name_all(&reading, &lines[i], arena);
    }
    free_indices(&reading);
    *list = (bk_note_list){lines, reading.notes.count};
    return BK_OK;
}

// --------------------------------------------------------------------------------------- what a note is about

/// A note with the records that it is about.
typedef struct note_subject {
    bk_note note;
    bk_costume costume;
    bk_piece piece;
    bk_bench_step step;
    int64_t id;
} note_subject;

static bk_status refuse_other(const bk_job *job, const bk_note *note, const char *what, bk_error *error)
{
    return bk_fail(error, BK_REFUSED, "The %s of this note is not in its production: \"%s\".", what,
                   bk_change_text(job, note->what));
}

static bk_status find_costume(const bk_job *job, note_subject *subject, bk_error *error)
{
    bool found = true;
    bk_status status = BK_OK;
    if (subject->note.costume_id) {
        status = bk_store_get(job->store, BK_COSTUMES, subject->note.costume_id, job->arena,
                              &subject->costume, &found, error);
    }
    if (!status && (!found || (subject->note.costume_id &&
                               subject->costume.production_id != subject->note.production_id))) {
        return refuse_other(job, &subject->note, "costume", error);
    }
    return status;
}

static bk_status find_piece(const bk_job *job, note_subject *subject, bk_error *error)
{
    bool found = true;
    bk_status status = BK_OK;
    if (subject->note.piece_id) {
        status = bk_store_get(job->store, BK_PIECES, subject->note.piece_id, job->arena, &subject->piece,
                              &found, error);
    }
    if (!status &&
        (!found || (subject->note.piece_id && subject->piece.production_id != subject->note.production_id))) {
        return refuse_other(job, &subject->note, "piece", error);
    }
    return status;
}

/// A step is named with its piece.
static bk_status find_step(const bk_job *job, note_subject *subject, bk_error *error)
{
    if (!subject->note.step_id) {
        return BK_OK;
    }
    bk_status status =
        bk_store_bench_step(job->store, subject->note.step_id, job->arena, &subject->step, error);
    if (!status) {
        subject->note.piece_id = subject->step.step.piece_id;
    }
    return status;
}

static const char *subject_words(const bk_job *job, const note_subject *subject)
{
    if (subject->note.step_id) {
        return bk_arena_print(job->arena, "%s %s: ", subject->step.step.piece, subject->step.step.title);
    }
    if (subject->note.piece_id) {
        return bk_arena_print(job->arena, "%s: ", subject->piece.name);
    }
    return subject->note.costume_id ? bk_arena_print(job->arena, "%s: ", subject->costume.number) : "";
}

static bk_status add_note(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    note_subject *subject = context;
    bk_note *note = &subject->note;
    int64_t position = 0;
    if (bk_text_blank(note->what)) {
        return bk_fail(error, BK_REFUSED, "The note says nothing; write what is to be remembered.");
    }
    note->who = bk_text_blank(note->who) ? NULL : note->who;
    note->production_id = note->production_id ? note->production_id : job->production;
    note->noted_on = note->noted_on == BK_NO_DAY ? job->today : note->noted_on;
    bk_status status = find_step(job, subject, error);
    if (!status) {
        status = find_costume(job, subject, error);
    }
    if (!status) {
        status = find_piece(job, subject, error);
    }
    if (!status) {
        status = bk_store_last_place(job->store, BK_NOTES, note->production_id, &position, error);
    }
    if (!status) {
        status = bk_store_add(job->store, BK_NOTES, note, position, &subject->id, error);
    }
    *sentence = bk_arena_print(job->arena, "Noted: %s%s", subject_words(job, subject),
                               bk_change_text(job, note->what));
    return status;
}

bk_status bk_note_add(const bk_job *job, const bk_note *note, int64_t *id, const char **sentence,
                      bk_error *error)
{
    note_subject subject = {.note = *note};
    subject.note.id = 0;
    bk_status status = bk_change_run(job, add_note, &subject, sentence, error);
    if (!status && id) {
        *id = subject.id;
    }
    return status;
}

// ----------------------------------------------------------------------------------------------------- done

static bk_status get_note(const bk_job *job, int64_t id, bk_note *note, bk_error *error)
{
    bool found;
    bk_status status = bk_store_get(job->store, BK_NOTES, id, job->arena, note, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This note is no longer in the workroom.");
    }
    return status;
}

typedef struct note_marking {
    int64_t id;
    bool done;
} note_marking;

static bk_status mark_note(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    const note_marking *marking = context;
    bk_note note;
    bk_status status = get_note(job, marking->id, &note, error);
    if (status || (note.done_on != BK_NO_DAY) == marking->done) {
        return status;
    }
    note.done_on = marking->done ? job->today : BK_NO_DAY;
    *sentence = bk_arena_print(job->arena, "%s: %s", marking->done ? "Note done" : "Note open again",
                               bk_change_text(job, note.what));
    return bk_store_put(job->store, BK_NOTES, &note, error);
}

bk_status bk_note_done(const bk_job *job, int64_t note, bool done, const char **sentence, bk_error *error)
{
    note_marking marking = {note, done};
    return bk_change_run(job, mark_note, &marking, sentence, error);
}

// ------------------------------------------------------------------------------------------ becoming a step

typedef struct note_becoming {
    const bk_note_step *wanted;
    bk_note note;
    bk_piece piece;
    int64_t step;
} note_becoming;

/// Refuses a note that became a step already: its step bears its text.
static bk_status check_open(const bk_job *job, const bk_note *note, bk_error *error)
{
    bk_step step;
    bool found = false;
    bk_status status = BK_OK;
    if (note->step_id) {
        status = bk_store_get(job->store, BK_STEPS, note->step_id, job->arena, &step, &found, error);
    }
    if (!status && found && bk_same_text(step.title, bk_noted_step_title(note->what, job->arena))) {
        return bk_fail(error, BK_REFUSED, "This note has become a step already: %s.",
                       bk_change_name(job, step.key));
    }
    return status;
}

static bk_status become_step(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    note_becoming *becoming = context;
    const bk_note_step *wanted = becoming->wanted;
    bk_note *note = &becoming->note;
    bool found = false;
    bk_status status = get_note(job, wanted->note_id, note, error);
    if (!status) {
        status = check_open(job, note, error);
    }
    if (!status) {
        status = bk_store_get(job->store, BK_PIECES, wanted->piece_id, job->arena, &becoming->piece, &found,
                              error);
    }
    if (!status && (!found || becoming->piece.production_id != note->production_id)) {
        return refuse_other(job, note, "piece", error);
    }
    if (!status) {
        bk_noted_step step = {.piece = &becoming->piece,
                              .text = note->what,
                              .kind = wanted->kind,
                              .minutes = wanted->minutes,
                              .before_id = wanted->before_id};
        status = bk_noted_step_add(job, &step, &becoming->step, error);
    }
    if (status) {
        return status;
    }
    note->step_id = becoming->step;
    note->piece_id = wanted->piece_id;
    *sentence = bk_arena_print(job->arena, "Step from a note: %s %s", becoming->piece.name,
                               bk_change_text(job, bk_noted_step_title(note->what, job->arena)));
    return bk_store_put(job->store, BK_NOTES, note, error);
}

bk_status bk_note_to_step(const bk_job *job, const bk_note_step *wanted, int64_t *step, const char **sentence,
                          bk_error *error)
{
    note_becoming becoming = {.wanted = wanted};
    bk_status status = bk_change_run(job, become_step, &becoming, sentence, error);
    if (!status && step) {
        *step = becoming.step;
    }
    return status;
}
