#ifndef BODKIN_WORK_NOTED_STEP_H
#define BODKIN_WORK_NOTED_STEP_H

#include "bodkin/work/job.h"

/// A step made of what somebody wrote: a note of a rehearsal or of a fitting that is to be worked on.

/// Its minutes where nobody says; a small alteration, our own guess.
enum { BK_NOTE_MINUTES = 15 };

typedef struct bk_noted_step {
    const bk_piece *piece;
    const char *text;  ///< its title, and what its key is made of
    int kind;          ///< bk_kind
    int64_t minutes;   ///< BK_NOT_KNOWN: BK_NOTE_MINUTES
    int64_t before_id; ///< a step of the piece, which stands and comes after it; 0: none
    int64_t behind_id; ///< a step of the piece, behind which it stands; 0: last, or right before `before_id`
    int64_t after_id;  ///< a step that it comes after; 0: none
} bk_noted_step;

/// Adds it, within a change of the caller's. Its key is made of the first words and is new in its piece; it is open. BK_REFUSED
/// where the text is blank, the kind none, the minutes below zero, or a step named is not of the piece.
bk_status bk_noted_step_add(const bk_job *job, const bk_noted_step *wanted, int64_t *step, bk_error *error)
    BK_MUST_USE;

/// The title that such a step gets: the first line of the text that says anything; in `arena`.
const char *bk_noted_step_title(const char *text, bk_arena *arena);

#endif
