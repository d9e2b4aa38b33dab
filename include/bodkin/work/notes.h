#ifndef BODKIN_WORK_NOTES_H
#define BODKIN_WORK_NOTES_H

#include "bodkin/store/records_bench.h"
#include "bodkin/work/job.h"
#include "bodkin/work/noted_step.h"

/// Notes: from rehearsals, fittings, the parade ..., or about a costume, a piece, a step.

/// A note with the names of what it is about.
typedef struct bk_note_line {
    bk_note record;         ///< its costume, piece and step (the key) named as far as they are still there
    const char *step_title; ///< NULL without a step
    const char *step_piece; ///< name of the piece of that step, which the note itself need not name
    bool step_done;         ///< that step is done
    bool became_step;       ///< that step was made of it: it bears its text
} bk_note_line;

typedef struct bk_note_list {
    const bk_note_line *items; ///< in the order of notes.csv
    size_t count;
} bk_note_list;

/// Reads the notes of a production; everything lives in `arena`.
bk_status bk_notes_read(bk_store *store, int64_t production, bk_arena *arena, bk_note_list *list,
                        bk_error *error) BK_MUST_USE;

/// Adds a note at the end of the list: its production_id (0: the job's), what it is about by id, source, who, what; noted_on
/// BK_NO_DAY is today. "Noted: 4A-2: let out the side seams". BK_REFUSED where nothing is said, or what it is about is not of
/// the production. `*id` may be NULL.
bk_status bk_note_add(const bk_job *job, const bk_note *note, int64_t *id, const char **sentence,
                      bk_error *error) BK_MUST_USE;

/// A note is done with, or open again. Where it is so already nothing is written and `*sentence` is NULL.
bk_status bk_note_done(const bk_job *job, int64_t note, bool done, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// How a note becomes a step.
typedef struct bk_note_step {
    int64_t note_id;
    int64_t piece_id;
    int kind;        ///< bk_kind
    int64_t minutes; ///< BK_NOT_KNOWN: BK_NOTE_MINUTES
    int64_t
        before_id; ///< a step of the piece, which stands and comes after the new one; 0: none, it stands last
} bk_note_step;

/// A note becomes a step of a piece, as one change; the note names it from then on. "Step from a note: 4A-2 let out the side
/// seams". BK_REFUSED where it has become one already that is still there. `*step` may be NULL.
bk_status bk_note_to_step(const bk_job *job, const bk_note_step *wanted, int64_t *step, const char **sentence,
                          bk_error *error) BK_MUST_USE;

#endif
