#ifndef BODKIN_UI_COSTUME_BESIDE_H
#define BODKIN_UI_COSTUME_BESIDE_H

#include "bodkin/store/records_bench.h"
#include "bodkin/work/rail.h"

/// What the Costume screen shows beside what the rail tells: what steps need, and what was noted.

typedef struct bk_costume_beside {
    const bk_need *needs; ///< of the production, in the order of needs.csv
    size_t need_count;
    const bk_material *materials; ///< all of the workroom
    size_t material_count;
    const bk_note *notes; ///< of the production, in their order
    size_t note_count;
} bk_costume_beside;

/// Reads them for a production (its id); they live in `arena`.
bk_status bk_costume_beside_read(bk_store *store, int64_t production, bk_arena *arena,
                                 bk_costume_beside *beside, bk_error *error) BK_MUST_USE;

/// "2.4 m of wool flannel"; in `arena`.
const char *bk_costume_need_words(const bk_costume_beside *beside, size_t need, bk_arena *arena);

/// "used 2.4 m of wool flannel, 12 hooks": what a done step (its id) took; empty where it needed nothing. In `arena`.
const char *bk_costume_used_words(const bk_costume_beside *beside, int64_t step, bk_arena *arena);

/// What was noted of a costume, a piece or a step (one id, the others 0), each as a paragraph: "Tue 2 Mar, tech, Ida: the hem
/// catches (done)"; empty where there is nothing. In `arena`.
const char *bk_costume_notes(const bk_costume_beside *beside, int64_t costume, int64_t piece, int64_t step,
                             bk_day today, bk_arena *arena);

#endif
