#ifndef BODKIN_WORK_OUTLOOK_H
#define BODKIN_WORK_OUTLOOK_H

#include "bodkin/store/bench_rows.h"

/// How a step stands for whoever is about to mark it done: what is worth knowing then, none of which forbids it.

/// What a shelf that was counted does not have of what the step needs.
typedef struct bk_lack {
    bk_material material;
    bk_quantity quantity; ///< above 0
} bk_lack;

typedef struct bk_step_outlook {
    bool found;                 ///< false: it is no longer in the workroom, and nothing else is said
    bk_bench_step step;         ///< with the name of its piece
    const bk_step_name *before; ///< earlier steps that are still open
    size_t before_count;
    bk_piece piece; ///< with whom it is out, if it is
    const bk_lack *lacks;
    size_t lack_count;
    const char *runs_since; ///< since when the longest of its clocks runs (ISO 8601); NULL: none does
} bk_step_outlook;

/// Looks at a step as one reading; all of it lives in `arena`. It costs the same however large the workroom is.
bk_status bk_step_outlook_read(bk_store *store, int64_t step, bk_arena *arena, bk_step_outlook *outlook,
                               bk_error *error) BK_MUST_USE;

/// Whether it is done: marked so, or by a fitting that fits.
bool bk_step_outlook_done(const bk_step_outlook *outlook);

/// The minutes that a tick would keep at that moment (ISO 8601 with UTC offset) where nothing else is told: what its clocks
/// measured; BK_NOT_KNOWN: none did.
int64_t bk_step_outlook_took(const bk_step_outlook *outlook, const char *now);

#endif
