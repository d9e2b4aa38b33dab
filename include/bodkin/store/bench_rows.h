#ifndef BODKIN_STORE_BENCH_ROWS_H
#define BODKIN_STORE_BENCH_ROWS_H

#include "bodkin/store/store.h"

/// What bench work asks of the store about one step, read by statements of its own so that a tick costs the
/// same however large the workroom is.

/// The step of a production's piece with that key; 0 where there is none.
bk_status bk_store_find_step(bk_store *store, int64_t production, const char *piece, const char *key,
                             int64_t *id, bk_error *error) BK_MUST_USE;

/// A step as it stands. Its `piece` is set, the lists are not; texts are in the arena.
typedef struct bk_bench_step {
    bk_step step;
    bool fits; ///< a fitting of it has the outcome `fits`, which makes it done
} bk_bench_step;

/// Reads one step; BK_REFUSED when it is no longer in the workroom.
bk_status bk_store_bench_step(bk_store *store, int64_t id, bk_arena *arena, bk_bench_step *step,
                              bk_error *error) BK_MUST_USE;

/// How much of one material a step needs, or took from the shelf.
typedef struct bk_step_material {
    int64_t material_id;
    bk_quantity quantity;
    int64_t counted; ///< 1 where the shelf of it is known: there is a movement of the material
} bk_step_material;

/// What a step needs: bk_step_material rows, one a material.
bk_status bk_store_step_needs(bk_store *store, int64_t step, bk_arena *arena, bk_rows *needs, bk_error *error)
    BK_MUST_USE;

/// What left the shelf for a step by movements of kind use since its last one of kind return:
/// bk_step_material rows.
bk_status bk_store_step_uses(bk_store *store, int64_t step, bk_arena *arena, bk_rows *uses, bk_error *error)
    BK_MUST_USE;

/// How much of what a step needs a shelf that was counted does not have: bk_step_material rows, one a material.
bk_status bk_store_step_lacks(bk_store *store, int64_t step, bk_arena *arena, bk_rows *lacks, bk_error *error)
    BK_MUST_USE;

typedef struct bk_step_name {
    const char *piece, *key;
} bk_step_name;

/// The steps that a step comes after and that are still open, in the order written: bk_step_name rows.
bk_status bk_store_step_open_before(bk_store *store, int64_t step, bk_arena *arena, bk_rows *names,
                                    bk_error *error) BK_MUST_USE;

#endif
